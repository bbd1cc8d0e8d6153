"""How sure a class was and how right, counted by hand."""

import csv
import json
from pathlib import Path

import pytest

from ropecalc.teaching.confidence import read_level
from ropecalc.teaching.papers.issue import read_issue, write_issue
from ropecalc.teaching.papers.paper_notebook import describe
from ropecalc.teaching.results.returns import read_returns
from ropecalc.teaching.results.sureness import SureMistake, Sureness, sure_mistakes, sureness
from ropecalc.teaching.results.tables import mark_returns, mistakes_table, report, write_results
from tests.teaching.papers.examples import BANK, issue
from tests.teaching.results.test_tables import answers, files

QUESTIONS = {template.key: template for lesson in BANK.values() for template in lesson}
CLASS = {  # which are wrong (by the first mistake), and what was said
    "ada": ((), {1: "sure", 2: "sure", 3: "guess"}),
    "bo": ((2, 3), {2: "sure", 3: "unsure"}),
    "cy": ((2,), {2: "sure", 4: "no idea", 99: "sure"}),
}


def returned(folder: Path) -> None:
    made = issue(*CLASS)
    for paper in made.papers:
        wrong, sure = CLASS[paper.student]
        told = answers(paper, dict.fromkeys(wrong, 0))
        if paper.student == "cy":
            del told["1"]
        content = {"code": paper.code, "answers": told, "sure": sure}
        (folder / f"{paper.student}.json").write_text(json.dumps(content))


def test_counts_by_level_and_what_was_sure_and_wrong(tmp_path: Path) -> None:
    returned(tmp_path)
    made = issue(*CLASS)
    marked = mark_returns(made, files(tmp_path))
    assert marked.problems == ()
    told = sureness(one for result in marked.results for one in result.items)
    assert told == (
        Sureness("sure", 4, 2),
        Sureness("unsure", 1, 0),
        Sureness("guess", 1, 1),
        Sureness("", 11, 11),
    )
    mistake = made.papers[0].items[1].template.mistakes[0]
    assert sure_mistakes(marked.results) == (SureMistake(2, 2, mistake.key),)
    text = report(marked)
    assert "sure 2 of 4, not sure 0 of 1, guessing 1 of 1." in text
    assert f"- 2, question 2: {mistake.title}" in text.split("Sure and wrong")[1]
    head, *rows = mistakes_table(marked)
    assert head[-1] == "of them sure"
    assert {(row[1], row[-1]) for row in rows} == {(2, 2), (3, 0)}
    write_results(marked, tmp_path / "results")
    with (tmp_path / "results" / "confidence.csv").open(encoding="utf-8-sig", newline="") as table:
        second = list(csv.DictReader(table))[1]
    assert (second["sure, right"], second["sure, wrong"], second["not said, right"]) == (
        "1",
        "2",
        "0",
    )


def test_nobody_said_anything_as_in_old_returns(tmp_path: Path) -> None:
    made = issue("ada")
    content = {"code": made.papers[0].code, "answers": answers(made.papers[0], {2: 0})}
    (tmp_path / "ada.json").write_text(json.dumps(content))
    marked = mark_returns(made, files(tmp_path))
    assert "how sure" not in report(marked)
    write_results(marked, tmp_path / "results")
    assert not (tmp_path / "results" / "confidence.csv").exists()


def test_a_table_typed_in_says_it_in_words(tmp_path: Path) -> None:
    made = issue("ada")
    path = tmp_path / "typed.csv"
    path.write_text(f"code,1,2,sure 1,sure 2\n{made.papers[0].code},1,2,Not sure,\n")
    (found,), problems = read_returns([path], made)
    assert (problems, found.sure) == ((), {1: "unsure"})


@pytest.mark.parametrize("sure", [None, [], "sure", {"x": "sure"}, {"1": ["sure"]}, {"1": None}])
def test_what_says_nothing_about_being_sure_is_left_out(tmp_path: Path, sure: object) -> None:
    made = issue("ada")
    (tmp_path / "a.json").write_text(
        json.dumps({"code": made.papers[0].code, "answers": {"1": "2"}, "sure": sure})
    )
    (found,), problems = read_returns(files(tmp_path), made)
    assert (problems, found.sure, found.answers) == ((), {}, {1: "2"})


def test_levels_are_read_as_people_write_them() -> None:
    said = ("sure", " Not  sure", "guessing", "guess", "unsure", "very", "")
    assert [read_level(text) for text in said] == [
        "sure", "unsure", "guess", "guess", "unsure", "", "",
    ]  # fmt: skip


def test_whether_papers_ask_is_kept_and_the_code_is_the_same(tmp_path: Path) -> None:
    asks, quiet = issue("ada"), issue("ada", confidence=False)
    assert asks.papers[0].confidence and not quiet.papers[0].confidence
    assert asks.papers[0].code == quiet.papers[0].code
    assert describe(asks.papers[0])["confidence"] is True
    assert "confidence" not in describe(quiet.papers[0])
    for made in (asks, quiet):
        write_issue(made, tmp_path)
        assert read_issue(tmp_path, QUESTIONS) == made
