"""An examination's folder: written once, one paper again byte for byte, one student removed."""

import json
from pathlib import Path

import pytest

from ropecalc.teaching.papers.issue import read_issue
from ropecalc.teaching.papers.making import (
    HANDOUTS,
    KEYS,
    RETURNS,
    Wishes,
    export_package,
    forget,
    make_issue,
    write_again,
    write_papers,
)
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.bank import BANK
from tests.teaching.papers.examples import BANK as SMALL
from tests.teaching.papers.examples import blueprint

SCREEN_ONLY = Wishes(printed=False)
ISSUE = make_issue(blueprint(), ("Ada B.", "bo"), SMALL)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    write_papers(ISSUE, tmp_path / "exam", SCREEN_ONLY)
    return tmp_path / "exam"


def names(folder: Path) -> set[str]:
    return {str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file()}


def test_everybody_gets_a_paper_and_the_instructor_the_keys(tmp_path: Path) -> None:
    told: list[tuple[int, int]] = []
    write_papers(ISSUE, tmp_path, Wishes("letter"), lambda *done: told.append(done))
    assert names(tmp_path) == {
        "issue.json",
        *(f"{HANDOUTS}/paper-{who}.{end}" for who in ("ada-b", "bo") for end in ("pdf", "ipynb")),
        *(f"{KEYS}/key-{who}.pdf" for who in ("ada-b", "bo")),
    }
    assert told == [(1, 2), (2, 2)]
    assert read_issue(tmp_path, BANK) == ISSUE


def test_papers_in_students_hands_are_not_overwritten(folder: Path) -> None:
    before = (folder / "issue.json").read_bytes()
    with pytest.raises(PaperError, match="holds papers already"):
        write_papers(make_issue(blueprint(seed="x"), ("cy",), SMALL), folder, SCREEN_ONLY)
    assert (folder / "issue.json").read_bytes() == before


def test_a_folder_that_cannot_be_made_is_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(PaperError, match="cannot be made"):
        write_papers(ISSUE, tmp_path / "file" / "exam", SCREEN_ONLY)


def test_one_paper_again_is_the_same_as_before(tmp_path: Path) -> None:
    write_papers(ISSUE, tmp_path)
    before = {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()}
    for path in before:
        if "ada-b" in path.name:
            path.unlink()
    files = write_again(tmp_path, "Ada B.", Wishes())
    assert len(files) == 3
    assert {path: path.read_bytes() for path in before} == before
    with pytest.raises(PaperError, match="nobody called “cy”"):
        write_again(tmp_path, "cy", Wishes())


def test_packages_for_a_platform_lie_beside_the_keys_and_go_with_the_student(folder: Path) -> None:
    everybody, ada = export_package(folder), export_package(folder, "Ada B.")
    assert names(folder) >= {f"{KEYS}/class-platform.zip", f"{KEYS}/platform-ada-b.zip"}
    before = everybody.read_bytes()
    assert export_package(folder).read_bytes() == before
    ada.rename(folder / RETURNS / "renamed.zip")
    export_package(folder, "Ada B.")
    forget(folder, "Ada B.")
    assert names(folder) & {f"{KEYS}/platform-ada-b.zip", f"{RETURNS}/renamed.zip"} == set()
    with pytest.raises(PaperError, match="nobody called “Ada"):
        export_package(folder, "Ada B.")
    forget(folder, "bo")
    with pytest.raises(PaperError, match="no paper left"):
        export_package(folder)


def test_a_student_is_forgotten_everywhere_and_nobody_else(folder: Path) -> None:
    ada, bo = ISSUE.papers
    returns = folder / RETURNS
    (returns / "x.json").write_text(json.dumps({"code": ada.code, "answers": {}}))
    (returns / "y.json").write_text(json.dumps({"code": bo.code, "answers": {}}))
    (returns / "typed.csv").write_text(f"code;1\n{ada.code};B\n{bo.code};C\n", encoding="utf-8-sig")
    (folder / "results").mkdir()
    (folder / "results" / "grades.csv").write_text("student,marks\nAda B.,3\nbo,4\n")
    (folder / "results" / "report.txt").write_text("Ada B. missed")
    changed = forget(folder, "Ada B.")
    everything = "".join(
        path.read_text(encoding="utf-8-sig") for path in folder.rglob("*") if path.is_file()
    )
    assert "Ada B." not in everything and ada.code not in everything
    assert bo.code in (returns / "typed.csv").read_text()
    assert (returns / "typed.csv").read_text(encoding="utf-8").startswith("\ufeffcode;1")
    assert "bo,4" in (folder / "results" / "grades.csv").read_text()
    assert (returns / "y.json").exists() and not (returns / "x.json").exists()
    assert read_issue(folder, BANK).papers == (bo,)
    assert {path.name for path in changed} >= {"x.json", "typed.csv", "grades.csv", "issue.json"}
    with pytest.raises(PaperError, match="nobody called"):
        forget(folder, "Ada B.")
