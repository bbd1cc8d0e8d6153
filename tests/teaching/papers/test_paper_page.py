"""Writing a paper on the screen: kept at once, no help, and handed in with what was answered."""

import base64
import json
import re
from collections.abc import Iterator
from pathlib import Path

import nbformat
import pytest

from ropecalc.teaching.papers import paper_page
from ropecalc.teaching.papers.paper_notebook import describe, foreign_code, paper_notebook
from ropecalc.teaching.papers.paper_page import PaperPage, find_paper
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.record import Record
from ropecalc.teaching.results.grading import grade
from ropecalc.teaching.results.returns import read_returns
from ropecalc.teaching.session import Session
from ropecalc.units import Display
from tests.teaching.papers.examples import issue

ISSUE = issue("Ada B.")
PAPER = ISSUE.papers[0]
CHOICE = next(n for n, item in enumerate(PAPER.items, 1) if item.options)
NUMBER = next(n for n, item in enumerate(PAPER.items, 1) if not item.options)


@pytest.fixture
def session() -> Iterator[Session]:
    record = Record.in_memory()
    yield Session(record)
    record.close()


@pytest.fixture
def page(session: Session, tmp_path: Path) -> PaperPage:
    return PaperPage(describe(PAPER), session, tmp_path)


def said(page: PaperPage) -> str:
    view = page.hand_in()
    view._hand_in()
    return str(view.children[1].value)


def test_a_question_shows_this_papers_numbers_and_no_help(page: PaperPage) -> None:
    view = page.question(NUMBER)
    drawn = PAPER.items[NUMBER - 1].drawn
    assert drawn.template.title in view.summary()
    assert not re.search("Hint|solution|Check", view.summary())
    assert len(view.children) == 4  # the question, a line, how sure, what is kept


def test_how_sure_somebody_is_is_kept_and_handed_in(
    page: PaperPage, session: Session, tmp_path: Path
) -> None:
    view = page.question(NUMBER)
    box = view.children[2]
    assert [level for _, level in box.options] == ["sure", "unsure", "guess"]
    assert box.value is None
    box.value = "unsure"
    assert "How sure you are is kept: not sure." in view.children[-1].value
    again = PaperPage(describe(PAPER), session, tmp_path).question(NUMBER)
    assert again.children[2].value == "unsure"
    text = said(page)
    (path,) = tmp_path.glob("handed-in-*.ipynb")
    link = re.search(r"base64,([^']+)'", text)
    assert link
    (tmp_path / "answers.json").write_bytes(base64.b64decode(link[1]))
    for file in (path, tmp_path / "answers.json"):
        (found,), problems = read_returns([file], ISSUE)
        assert (problems, found.sure) == ((), {NUMBER: "unsure"})
    assert not foreign_code(json.loads(path.read_text(encoding="utf-8")))


def test_an_old_paper_does_not_ask_how_sure_one_is(session: Session, tmp_path: Path) -> None:
    old = {key: value for key, value in describe(PAPER).items() if key != "confidence"}
    page = PaperPage(old, session, tmp_path)
    assert len(page.question(NUMBER).children) == 3
    said(page)
    (path,) = tmp_path.glob("handed-in-*.ipynb")
    assert "sure" not in json.loads(path.read_text(encoding="utf-8"))["metadata"]["ropecalc"]


def test_what_cannot_be_read_is_said_to_be_so_and_what_is_wrong_is_not(page: PaperPage) -> None:
    view = page.question(NUMBER)
    page.question(CHOICE).children[1].value = "A"
    drawn = PAPER.items[NUMBER - 1].drawn
    right = Display().show(drawn.answer, drawn.template.kind)
    for text, unread in (("12.5", True), ("much", True), (right, False), ("0.001 N", False)):
        view._keep(text)
        assert ("It cannot be marked like this" in view.children[-1].value) is unread, text
        assert (f"Without a unit, or not to be read: {NUMBER}." in said(page)) is unread, text
    assert not re.search("(?i)right|wrong", view.children[-1].value)


def test_options_stand_in_the_papers_order(page: PaperPage, session: Session) -> None:
    view, item = page.question(CHOICE), PAPER.items[CHOICE - 1]
    shown = [Display().show(item.option_value(o), item.template.kind) for o in item.options]
    assert [label.partition(". ")[2] for label, _ in view._answer.options] == shown
    view._answer.value = "B"
    session.choose_unit("force", "lbf")
    session.choose_unit("length", "ft")
    assert view._answer.value == "B"
    assert "Answered: B" in view.summary()
    assert "kN" not in view.summary()


def test_an_answer_is_there_again_after_a_crash(page: PaperPage, session: Session) -> None:
    page.question(NUMBER)._answer.value = "1,5 kN"
    page.question(CHOICE)._answer.value = "C"
    again = PaperPage(describe(PAPER), session, page._folder)
    assert again.question(NUMBER)._answer.value == "1,5 kN"
    assert again.question(CHOICE)._answer.value == "C"


def test_what_is_handed_in_is_marked_as_answered(page: PaperPage, tmp_path: Path) -> None:
    page.question(CHOICE)._answer.value = PAPER.items[CHOICE - 1].right_letter
    text = said(page)
    assert "Not answered: " in text and f" {CHOICE}," not in text
    (path,) = tmp_path.glob("handed-in-*.ipynb")
    assert path.name == f"handed-in-ada-b-{PAPER.code}.ipynb"
    assert not foreign_code(json.loads(path.read_text(encoding="utf-8")))
    (found,), problems = read_returns([path], ISSUE)
    assert problems == ()
    assert grade(found.paper, found.answers).marks == 1


def test_the_answers_alone_are_the_same(page: PaperPage, tmp_path: Path) -> None:
    page.question(NUMBER)._answer.value = "2 kN <b>"
    link = re.search(r"base64,([^']+)'", said(page))
    assert link
    path = tmp_path / "answers.json"
    path.write_bytes(base64.b64decode(link[1]))
    (found,), _ = read_returns([path], ISSUE)
    assert found.answers[NUMBER] == "2 kN <b>"


def test_where_nothing_can_be_written_the_link_is_left(session: Session, tmp_path: Path) -> None:
    page = PaperPage(describe(PAPER), session, tmp_path / "gone")
    text = said(page)
    assert "Save the file below instead" in text and "base64," in text


def test_a_paper_is_found_by_its_code_among_anything(tmp_path: Path) -> None:
    (tmp_path / "a.ipynb").write_text("{")
    (tmp_path / "b.ipynb").write_text("[]")
    (tmp_path / "c.ipynb").write_bytes(b"\xff")
    nbformat.write(nbformat.v4.new_notebook(), tmp_path / "d.ipynb")
    nbformat.write(paper_notebook(PAPER), tmp_path / "e.ipynb")
    assert find_paper(PAPER.code, tmp_path) == describe(PAPER)
    with pytest.raises(PaperError, match="is not in this folder"):
        find_paper("2222-2222", tmp_path)


def test_a_page_opens_its_own_paper(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("ROPECALC_RECORD", str(tmp_path / "record.sqlite"))
    monkeypatch.chdir(tmp_path)
    nbformat.write(paper_notebook(PAPER), tmp_path / "paper.ipynb")
    page = paper_page.open_paper(PAPER.code)
    assert PAPER.items[0].template.title in page.question(1).summary()
    assert "not a certification" in page.cautions().summary()
