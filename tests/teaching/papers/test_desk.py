"""The instructor's desk, from blueprint to report by buttons alone."""

import shutil
from collections.abc import Iterator
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as widgets
import pytest

from ropecalc.teaching.papers.blueprint import LEVELS
from ropecalc.teaching.papers.desk import DeskPage
from ropecalc.teaching.papers.issue import read_issue
from ropecalc.teaching.questions.bank import BANK, BY_LESSON
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session

COURSE = Path(__file__).parents[3]


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[DeskPage]:
    """The desk of a course in a folder of its own, with the example files."""
    (tmp_path / "exercises").mkdir()
    for name in ("knowledge-check.toml", "class.csv"):
        shutil.copy(COURSE / "exercises" / name, tmp_path / "exercises" / name)
    record = Record.in_memory()
    yield DeskPage(Session(record), tmp_path)
    record.close()


def press(view: Any) -> str:
    next(w for w in view.children if isinstance(w, widgets.HBox)).children[0].click()
    return str(view.children[-1].value)


def fill(view: Any, label: str, value: Any) -> None:
    next(w for w in view.children if getattr(w, "description", "") == label).value = value


def test_the_examples_make_papers_that_can_be_marked(desk: DeskPage, tmp_path: Path) -> None:
    make = desk.make()
    fill(make, "also as PDF to print", False)
    said = press(make)
    assert "“Knowledge check: holding a litter off”: 3 papers in" in said
    assert 'role="status"' in said
    assert "holds papers already" in press(make)
    issue = read_issue(tmp_path / "exam-1", BANK)
    code = issue.papers[0].code
    (tmp_path / "exam-1" / "returns" / "t.csv").write_text(f"code,1\n{code},1 kN\n")
    marked = press(desk.mark())
    assert "1 of 3 papers came back" in marked and "grades.csv" in marked


def test_papers_are_written_of_the_blueprint_that_was_saved(desk: DeskPage) -> None:
    form, make = desk.blueprint(), desk.make()
    form._open()
    fill(form, "File", "exercises/mine.toml")
    fill(form, "Title", "")
    form._save()
    assert make._blueprint.value == "exercises/knowledge-check.toml"  # nothing was saved
    fill(form, "Title", "Group 2")
    form._save()
    fill(make, "also as PDF to print", False)
    assert "“Group 2”: 3 papers in" in press(make)


def test_packages_for_a_learning_platform(desk: DeskPage, tmp_path: Path) -> None:
    make = desk.make()
    fill(make, "also as PDF to print", False)
    press(make)
    export = desk.export()
    assert "class-platform.zip" in press(export)
    fill(export, "Student (empty: all)", "heron-2")
    said = press(export)
    assert "platform-heron-2.zip" in said and "hand it to nobody" in said
    assert (tmp_path / "exam-1" / "keys" / "platform-heron-2.zip").is_file()
    fill(export, "Student (empty: all)", "nobody")
    assert "Not done." in press(export)


def test_one_paper_again_with_its_pdf(desk: DeskPage, tmp_path: Path) -> None:
    make = desk.make()
    fill(make, "also as PDF to print", False)
    press(make)
    again = desk.again()
    fill(again, "Student", "heron-2")
    assert press(again).count("Written:") == 3
    assert (tmp_path / "exam-1" / "keys" / "key-heron-2.pdf").is_file()
    fill(again, "Student", "nobody")
    assert "Not done." in press(again)


def test_a_student_is_removed_only_when_named_twice(desk: DeskPage, tmp_path: Path) -> None:
    make = desk.make()
    fill(make, "also as PDF to print", False)
    press(make)
    view = desk.forget()
    fill(view, "Student", "heron-1")
    assert "into both lines" in press(view)
    fill(view, "The name again", "heron-1")
    assert "Deleted" in press(view)
    assert len(read_issue(tmp_path / "exam-1", BANK).papers) == 2


def test_what_is_missing_is_a_sentence(desk: DeskPage) -> None:
    assert "Not done." in press(desk.mark())
    make = desk.make()
    fill(make, "Class list (file)", " ")
    assert "“Class list (file)” is empty." in press(make)
    fill(make, "Class list (file)", "<b>.csv")
    assert "&lt;b&gt;.csv: cannot be read" in press(make)


def test_the_bank_is_listed_by_lesson(desk: DeskPage) -> None:
    bank = desk.bank()
    lines = bank.summary().splitlines()
    assert len(lines) == len(BY_LESSON)
    page = bank.children[0].value
    for template in BANK.values():
        assert f"{escape(template.title)} ({LEVELS[template.difficulty - 1]})" in page
    for line, (lesson, templates) in zip(lines, sorted(BY_LESSON.items()), strict=True):
        assert line.startswith(f"Lesson {lesson}, ")
        assert all(template.key in line for template in templates)
    for view in (desk.make(), desk.again(), desk.export(), desk.mark(), desk.forget()):
        assert view.summary().endswith(".")
