"""What an instructor gets: tables for a spreadsheet and a page to read first."""

import csv
import json
from dataclasses import replace
from pathlib import Path

from ropecalc.teaching.papers.issue import Issue
from ropecalc.teaching.papers.paper import LETTERS, Paper
from ropecalc.teaching.results.tables import (
    grades_table,
    mark_returns,
    mistakes_table,
    questions_table,
    report,
    write_results,
)
from ropecalc.units import Display
from tests.teaching.papers.examples import issue


def answers(paper: Paper, wrong: dict[int, int]) -> dict[str, str]:
    """The right answer to each question but those that give mistake number n."""
    found = {}
    for number, item in enumerate(paper.items, 1):
        key = item.template.mistakes[wrong[number]].key if number in wrong else ""
        shown = Display().show(item.option_value(key), item.template.kind, 5)
        found[str(number)] = LETTERS[item.options.index(key)] if item.options else shown
    return found


def returned(folder: Path, made: Issue, wrong: dict[int, int], students: slice) -> None:
    for number, paper in enumerate(made.papers[students]):
        content = {"code": paper.code, "answers": answers(paper, wrong)}
        (folder / f"{paper.student}-{number}.json").write_text(json.dumps(content))


def files(folder: Path) -> list[Path]:
    return sorted(folder.iterdir())


def test_a_small_class_from_returns_to_tables(tmp_path: Path) -> None:
    made = issue("ada", "bo", "cy")
    returned(tmp_path, made, {}, slice(0, 1))
    returned(tmp_path, made, {2: 0, 3: 0}, slice(1, 2))
    (tmp_path / "junk.json").write_text("{")
    marked = mark_returns(made, files(tmp_path))
    head, ada, bo, cy = grades_table(marked)
    assert head[6:] == ["1", "2", "3", "4", "5", "6"]
    assert ada[:6] == ["ada", made.papers[0].code, 6, 6, "reached the mark", ""]
    assert bo[2:6] == [4, 6, "below the mark", "2"]
    first = made.papers[0].items[1].template.mistakes[0]
    assert bo[7] == first.key
    assert cy[0] == "cy" and cy[4] == "not returned"
    text = report(marked)
    assert "2 of 3 papers came back" in text
    assert "Not returned or not usable: cy." in text
    assert "! junk.json is damaged" in text
    assert "bo missed what must be right: question 2." in text
    assert "too small for shares" in text
    assert f"- 1 of 2, question 2: {first.title}" in text
    assert text.endswith("assessed by your authority.")
    assert questions_table(marked)[2][5:10] == [2, 1, 0, "", ""]


def test_a_whole_class_gets_figures_and_a_borderline(tmp_path: Path) -> None:
    made = issue(*(f"s{n:02}" for n in range(20)))
    for number in range(20):
        wrong = dict.fromkeys([(3, 4, 5, 6, 1)[q] for q in range(number % 5)], 0)
        returned(tmp_path, made, wrong, slice(number, number + 1))
    marked = mark_returns(made, files(tmp_path))
    assert marked.figures is not None and marked.figures.error is not None
    text = report(marked)
    assert "Reliability 0." in text and "Borderline: " in text
    assert mistakes_table(marked)[1][0] == 16
    row = questions_table(marked)[1]
    assert row[8] == 1.0 and str(row[10]).startswith("nearly all got it right")


def test_nothing_came_back(tmp_path: Path) -> None:
    marked = mark_returns(issue("ada"), [])
    assert "0 of 1 papers came back" in report(marked)
    assert [row[4] for row in grades_table(marked)[1:]] == ["not returned"]
    assert len(questions_table(marked)) == len(mistakes_table(marked)) == 1
    assert len(write_results(marked, tmp_path / "new")) == 4


def test_a_spreadsheet_reads_a_name_as_it_is_written(tmp_path: Path) -> None:
    write_results(mark_returns(issue("Börge"), []), tmp_path)
    for name in ("grades.csv", "questions.csv", "mistakes.csv"):
        assert (tmp_path / name).read_bytes().startswith(b"\xef\xbb\xbf"), name
    assert "Börge" in (tmp_path / "grades.csv").read_text(encoding="utf-8-sig")


def test_no_name_becomes_a_formula_in_a_spreadsheet(tmp_path: Path) -> None:
    made = issue("ada")
    made = replace(made, papers=(replace(made.papers[0], student="=1+1"),))
    marked = mark_returns(made, [])
    write_results(marked, tmp_path)
    rows = list(csv.reader((tmp_path / "grades.csv").open(encoding="utf-8-sig")))
    assert rows[1][0] == "'=1+1"
