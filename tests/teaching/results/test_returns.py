"""Returns as they really come: good ones read, broken and hostile ones told, none ever run."""

import json
from pathlib import Path
from typing import Any

import nbformat
import pytest

from ropecalc.teaching.papers.paper import Paper
from ropecalc.teaching.papers.paper_notebook import paper_notebook
from ropecalc.teaching.results.returns import LARGEST_FILE, find_returns, read_returns
from tests.teaching.papers.examples import issue

ISSUE = issue("ada", "bo", "cy")
ADA, BO, CY = ISSUE.papers
ANSWERS = {1: "B", 2: "1,5 kN", 3: "0.4 kN"}


def notebook(path: Path, paper: Paper = ADA, answers: Any = None) -> Path:
    nbformat.write(paper_notebook(paper, ANSWERS if answers is None else answers), path)
    return path


def saved(path: Path, **content: Any) -> Path:
    document = {"code": ADA.code, "answers": {str(n): t for n, t in ANSWERS.items()}}
    path.write_text(json.dumps(document | content), encoding="utf-8")
    return path


def table(path: Path, text: str, encoding: str = "utf-8") -> Path:
    path.write_bytes(text.encode(encoding))
    return path


def only_problem(path: Path) -> str:
    returns, problems = read_returns([path], ISSUE)
    assert not returns and len(problems) == 1
    return f"{problems[0].source}: {problems[0].sentence}"


def test_a_notebook_a_file_of_answers_and_a_table_say_the_same(tmp_path: Path) -> None:
    files = [
        notebook(tmp_path / "a.ipynb"),
        saved(tmp_path / "b.json", code=BO.code.lower(), student="bo"),
        table(tmp_path / "c.csv", f"code;student;1;2;3\n{CY.code};cy;B;1,5 kN;0.4 kN\n"),
    ]
    returns, problems = read_returns(files, ISSUE)
    assert problems == ()
    assert [r.paper for r in returns] == [ADA, BO, CY]
    assert all(r.answers == ANSWERS and r.notes == () for r in returns)


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16"])
def test_tables_from_any_spreadsheet(tmp_path: Path, delimiter: str, encoding: str) -> None:
    rows = [["Code", "1", "2"], [ADA.code, "B", "1.5 kN"], ["", "", ""], [BO.code, "", "2 kN"]]
    text = "\r\n".join(delimiter.join(row) for row in rows)
    returns, problems = read_returns([table(tmp_path / "t.csv", text, encoding)], ISSUE)
    assert problems == ()
    assert [dict(r.answers) for r in returns] == [{1: "B", 2: "1.5 kN"}, {1: "", 2: "2 kN"}]
    assert returns[1].source == "t.csv, line 4"


def test_a_table_in_an_old_encoding_is_read_and_said(tmp_path: Path) -> None:
    path = table(tmp_path / "t.csv", f"code,1,note\n{ADA.code},B,Stréet\n", "cp1252")
    (found,), _ = read_returns([path], ISSUE)
    assert "not saved as UTF-8" in found.notes[0]


@pytest.mark.parametrize(
    ("content", "part"),
    [
        ({"code": "2222-2222"}, "on no paper of"),
        ({"code": None}, "no code of a paper"),
        ({"code": BO.code, "student": "ada"}, "the code " + BO.code + " is on the paper of bo"),
        ({"answers": ["B"]}, "does not hold its answers"),
        ({"answers": {"one": "B"}}, "a question called “one”"),
        ({"answers": {"7": "B"}}, "answers question 7, but the paper has 6"),
        ({"answers": {"0": "B"}}, "answers question 0"),
    ],
)
def test_returns_that_do_not_fit_are_told(tmp_path: Path, content: Any, part: str) -> None:
    assert part in only_problem(saved(tmp_path / "a.json", **content))


@pytest.mark.parametrize("content", [b"", b"{", b"\xff\xfe\x00", b"[1]", b"3", b"[" * 200_000])
@pytest.mark.parametrize("ending", [".json", ".ipynb"])
def test_damaged_files_are_told(tmp_path: Path, content: bytes, ending: str) -> None:
    path = tmp_path / f"a{ending}"
    path.write_bytes(content)
    assert "a." in only_problem(path)


def test_a_row_that_ends_before_its_code_stops_no_other(tmp_path: Path) -> None:
    path = table(tmp_path / "t.csv", f"1,code\nB\nB,{ADA.code}\n", "utf-8")
    found, (problem,) = read_returns([path], ISSUE)
    assert [one.paper for one in found] == [ADA]
    assert problem.source == "t.csv, line 2"


@pytest.mark.parametrize("told", ["points {}", "sure {}"])
def test_numbers_of_thousands_of_digits_are_none(tmp_path: Path, told: str) -> None:
    heading = told.format("9" * 5000)
    path = table(tmp_path / "t.csv", f"code,1,{heading}\n{ADA.code},B,1\n", "utf-8")
    (found,), problems = read_returns([path], ISSUE)
    assert (found.answers, found.points, problems) == ({1: "B"}, {}, ())


@pytest.mark.timeout(30)
@pytest.mark.parametrize(
    "claim",
    [
        {"open_questions": 10**8},
        {"open_questions": float("inf")},
        {"open_questions": "many"},
        {"items": [None] * 300_000},
    ],
)
def test_a_paper_that_claims_to_ask_too_much_is_not_built(
    tmp_path: Path, claim: dict[str, Any]
) -> None:
    page = paper_notebook(ADA, ANSWERS)
    page.metadata["ropecalc"]["paper"].update(claim)
    path = tmp_path / "a.ipynb"
    path.write_text(json.dumps(page))
    (found,), problems = read_returns([path], ISSUE)
    assert problems == ()
    assert "code that this course did not write" in found.notes[0]


def test_a_huge_file_is_not_read(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    with path.open("wb") as stream:
        stream.truncate(LARGEST_FILE + 1)
    assert "too large" in only_problem(path)


def test_a_table_without_codes_is_told(tmp_path: Path) -> None:
    assert "no column called “code”" in only_problem(table(tmp_path / "t.csv", "name,1\nada,B\n"))
    long = "code,1\n" + "x" * 200_000 + ",B\n"
    assert "no table that can be read" in only_problem(table(tmp_path / "u.csv", long))


def test_a_file_that_is_gone_is_told(tmp_path: Path) -> None:
    assert "cannot be read" in only_problem(tmp_path / "gone.json")


def test_another_notebook_is_no_paper(tmp_path: Path) -> None:
    path = tmp_path / "a.ipynb"
    nbformat.write(nbformat.v4.new_notebook(), path)
    assert "is no paper" in only_problem(path)


def test_code_put_into_a_notebook_is_told_and_not_run(tmp_path: Path) -> None:
    page = paper_notebook(ADA, ANSWERS)
    trap = tmp_path / "sprung"
    page.cells.insert(1, nbformat.v4.new_code_cell(f"open({str(trap)!r}, 'w')"))
    path = tmp_path / "a.ipynb"
    nbformat.write(page, path)
    (found,), problems = read_returns([path], ISSUE)
    assert problems == ()
    assert found.answers == ANSWERS
    assert "code that this course did not write" in found.notes[0]
    assert not trap.exists()


def test_code_hidden_in_the_papers_own_code_is_found(tmp_path: Path) -> None:
    page = paper_notebook(ADA, ANSWERS)
    evil = f'{ADA.code}"); import os  #'
    page.metadata["ropecalc"]["paper"]["code"] = evil
    page.cells[1].source = page.cells[1].source.replace(ADA.code, evil)
    path = tmp_path / "a.ipynb"
    nbformat.write(page, path)
    assert "on no paper" in only_problem(path)


def test_the_same_paper_twice(tmp_path: Path) -> None:
    one = notebook(tmp_path / "a.ipynb")
    same = saved(tmp_path / "b.json", answers={"1": " B", "2": "1,5 kN", "3": "0.4 kN", "4": ""})
    (found,), problems = read_returns([one, same], ISSUE)
    assert problems == ()
    assert "came more than once, the same: a.ipynb, b.json" in found.notes[0]
    other = saved(tmp_path / "c.json", answers={"1": "C"})
    returns, (problem,) = read_returns([one, notebook(tmp_path / "d.ipynb", BO), other], ISSUE)
    assert [r.paper for r in returns] == [BO]
    assert problem.source == "a.ipynb, c.json"
    assert "the paper of ada came more than once, with different answers" in problem.sentence


def test_one_bad_return_stops_no_other(tmp_path: Path) -> None:
    (tmp_path / "sub").mkdir()
    saved(tmp_path / "sub" / "ada.json")
    (tmp_path / "broken.json").write_text("{")
    (tmp_path / "photo.jpg").write_text("not a return")
    (tmp_path / ".ipynb_checkpoints").mkdir()
    (tmp_path / ".ipynb_checkpoints" / "ada-checkpoint.json").write_text("{")
    files = find_returns(tmp_path)
    assert [f.name for f in files] == ["broken.json", "photo.jpg", "ada.json"]
    returns, problems = read_returns(files, ISSUE)
    assert len(returns) == 1
    assert [problem.source for problem in problems] == ["broken.json", "photo.jpg"]
    assert "no kind of file that can be marked" in problems[1].sentence


def test_long_answers_are_cut_and_odd_ones_kept_as_text(tmp_path: Path) -> None:
    path = saved(tmp_path / "a.json", answers={"1": "x" * 9999, "2": 3.5, "3": None})
    (found,), _ = read_returns([path], ISSUE)
    assert len(found.answers[1]) == 200
    assert found.answers[2] == "3.5"
    assert found.answers[3] == ""
