"""Scenarios on papers: parts under one story, an open question with its points, marked by hand."""

import csv
import io
import json
from pathlib import Path

import ipywidgets as widgets
import nbformat
import pytest

from ropecalc.teaching.papers.blueprint import parse_blueprint
from ropecalc.teaching.papers.choosing import choose_scenarios
from ropecalc.teaching.papers.issue import read_issue
from ropecalc.teaching.papers.making import WRITTEN, forget, make_issue, write_papers
from ropecalc.teaching.papers.paper import GOES_ON, LONGEST_TEXT, Paper, make_paper
from ropecalc.teaching.papers.paper_notebook import describe, foreign_code, paper_notebook
from ropecalc.teaching.papers.paper_page import PaperPage
from ropecalc.teaching.papers.printing import key_pdf, paper_pdf
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.marking import Verdict
from ropecalc.teaching.record import Record
from ropecalc.teaching.results.grading import grade
from ropecalc.teaching.results.tables import (
    grades_table,
    mark_returns,
    questions_table,
    report,
    write_results,
)
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.scenarios.situation import draw_for_paper
from ropecalc.teaching.session import Session
from ropecalc.units import Display
from tests.teaching.papers.examples import DOCUMENT, blueprint
from tests.teaching.papers.test_printing import text

NAMED = "high-outcrop"
SCENARIO = SCENARIOS[NAMED]
PLAN = blueprint(scenarios=[NAMED])
ISSUE = make_issue(PLAN, ("Ada", "Ben"))
PAPER = ISSUE.papers[0]
(TOLD,) = PAPER.scenarios
OPEN = len(PAPER.items) + 1
every_scenario = pytest.mark.parametrize("scenario", SCENARIOS.values(), ids=lambda s: s.key)


def right_answers(paper: Paper) -> dict[int, str]:
    return {
        n: item.right_letter or item.drawn.shown(item.drawn.answer, Display())
        for n, item in enumerate(paper.items, 1)
    }


def test_a_blueprint_names_scenarios_or_says_how_many() -> None:
    assert [s.key for s in choose_scenarios(PLAN, SCENARIOS)] == [NAMED]
    for count in (0, 1, 3):
        chosen = choose_scenarios(blueprint(scenarios=count), SCENARIOS)
        assert len(chosen) == count
        assert chosen == choose_scenarios(blueprint(scenarios=count), SCENARIOS)
        assert [s.number for s in chosen] == sorted(s.number for s in chosen)
    seeds = {
        choose_scenarios(blueprint(scenarios=1, seed=f"seed {n}"), SCENARIOS)[0].key
        for n in range(30)
    }
    assert len(seeds) > 5


@pytest.mark.parametrize("value", [-1, 6, 1.5, True, "high-outcrop", [1]])
def test_other_values_are_refused_in_words(value: object) -> None:
    with pytest.raises(PaperError, match="scenarios"):
        parse_blueprint(DOCUMENT | {"scenarios": value}, "example.toml")


def test_a_scenario_that_is_not_known_or_not_judged_is_said() -> None:
    with pytest.raises(
        PaperError, match=r"there is no “high-outcrops”\. Did you mean high-outcrop"
    ):
        choose_scenarios(blueprint(scenarios=["high-outcrops"]), SCENARIOS)
    with pytest.raises(PaperError, match="names a scenario twice"):
        blueprint(scenarios=[NAMED, NAMED])
    with pytest.raises(PaperError, match="not judged"):
        choose_scenarios(blueprint(scenarios=[NAMED], judged={"take-in-rate": 0.6}), SCENARIOS)


def test_a_paper_without_scenarios_keeps_its_code() -> None:
    """The code was made before papers had scenarios."""
    plan = blueprint()
    chosen = tuple(item.template for item in PAPER.items if item.template.key in BANK)
    without = make_paper(plan, chosen, "Ada")
    assert "scenarios" not in describe(without)
    for before, now in zip(without.items, PAPER.items, strict=False):
        assert before.drawn.values == now.drawn.values
    assert without.code != PAPER.code


@every_scenario
def test_no_answer_stands_in_a_later_part(scenario) -> None:
    for number in range(20):
        situation = draw_for_paper(scenario, f"seed|{number}")
        for part in scenario.parts:
            if not part.gives:
                continue
            told = part.gives.show(situation.carried[part.gives.name], Display())
            draw = situation.part(part.key)
            assert draw.template.mark(draw.values, told, Display()).verdict is not Verdict.RIGHT
            for later in scenario.parts:
                if part.gives.name in later.after and not any(map(callable, later.take.values())):
                    carried = situation.carried[part.gives.name]
                    own = situation.part(later.key).values
                    assert any(abs(v - carried) < 1e-6 * abs(carried) for v in own.values())


@every_scenario
def test_every_scenario_can_be_written_and_is_marked(scenario) -> None:
    (paper,) = make_issue(blueprint(scenarios=[scenario.key]), ("Ada",)).papers
    result = grade(paper, right_answers(paper))
    assert result.marks == len(paper.items) == len(result.items)
    parts = [item.template.key for item in paper.items[-len(scenario.parts) :]]
    assert parts == [part.key for part in scenario.parts]


def test_each_student_has_other_numbers_and_the_same_parts() -> None:
    ada, ben = ISSUE.papers
    assert ada.scenarios[0].values != ben.scenarios[0].values
    assert [i.template.key for i in ada.items] == [i.template.key for i in ben.items]
    assert ada.code != ben.code


def test_what_is_kept_gives_the_same_papers(tmp_path: Path) -> None:
    write_papers(ISSUE, tmp_path)
    again = read_issue(tmp_path, BANK)
    assert [p.code for p in again.papers] == [p.code for p in ISSUE.papers]
    assert again.papers[0].scenarios == PAPER.scenarios
    document = json.loads((tmp_path / "issue.json").read_text())
    document["papers"][0]["scenarios"][0]["values"]["x"] += 0.1
    (tmp_path / "issue.json").write_text(json.dumps(document))
    with pytest.raises(PaperError, match="was altered"):
        read_issue(tmp_path, BANK)
    document["papers"][0]["scenarios"][0]["first"] -= 1
    (tmp_path / "issue.json").write_text(json.dumps(document))
    with pytest.raises(PaperError, match="as this release does not have it"):
        read_issue(tmp_path, BANK)


def test_the_print_tells_the_story_once_and_leaves_room_to_write() -> None:
    said = text(paper_pdf(PAPER))
    assert said.count(" ".join(TOLD.story(Display()).split())) == 1
    assert f"questions {TOLD.first} to {TOLD.last}" in said
    goes_on = sum(bool(part.after) for part in SCENARIO.parts)
    assert said.count(GOES_ON) == goes_on
    judged = SCENARIO.judged[0]
    assert judged.question in said
    assert "Marked by hand" in said and "leave empty" in said
    assert not any(point in said for point in judged.points)


def test_the_key_has_the_points() -> None:
    said = text(key_pdf(PAPER))
    judged = SCENARIO.judged[0]
    assert "marked by hand" in said
    for point in judged.points:
        assert " ".join(point.split()) in said
    for number, shown in right_answers(PAPER).items():
        if number >= TOLD.first:
            assert shown in said


def test_on_the_screen_every_part_is_open_and_what_is_written_is_kept(tmp_path: Path) -> None:
    page = paper_notebook(PAPER)
    sources = [cell.source for cell in page.cells if cell.cell_type == "code"]
    assert sources.index("paper.scenario(1)") + 1 == sources.index(f"paper.question({TOLD.first})")
    assert sources[-2:] == [f"paper.open_question({OPEN})", "paper.hand_in()"]
    assert not foreign_code(json.loads(nbformat.writes(page)))
    session = Session(Record.open())
    paper = PaperPage(describe(PAPER), session, tmp_path)
    story = paper.scenario(1)
    assert TOLD.story(Display()) in story.summary()
    part = next(n for n in range(TOLD.first, TOLD.last + 1) if TOLD.goes_on(n))
    assert GOES_ON in paper.question(part).summary()
    assert GOES_ON not in paper.question(TOLD.first).summary()
    view = paper.open_question(OPEN)
    assert "Marked by hand" in view.summary()
    (area,) = (w for w in view.children if isinstance(w, widgets.Textarea))
    area.value = "A hub further out needs more rope.\nThat is all."
    paper.hand_in().children[0].children[0].click()
    (handed,) = tmp_path.glob("handed-in-*.ipynb")
    answers = nbformat.read(handed, as_version=4).metadata["ropecalc"]["answers"]
    assert answers[str(OPEN)] == area.value
    again = PaperPage(describe(PAPER), Session(session.record), tmp_path).open_question(OPEN)
    assert "needs more rope" in again.summary()
    area.value = "x" * (LONGEST_TEXT + 5)
    assert f"Only the first {LONGEST_TEXT}" in view.children[-1].value


def test_an_altered_number_of_open_questions_is_foreign() -> None:
    document = json.loads(nbformat.writes(paper_notebook(PAPER)))
    document["metadata"]["ropecalc"]["paper"]["open_questions"] = 2
    assert foreign_code(document)
    document["metadata"]["ropecalc"]["paper"]["open_questions"] = "many"
    assert foreign_code(document)


def returned(folder: Path, points: str = "") -> list[Path]:
    """Ada's paper as a notebook, Ben's typed in, and perhaps a table of points."""
    ada, ben = ISSUE.papers
    page = folder / "ada.ipynb"
    written = {OPEN: "It spares the lines, not the hub."}
    nbformat.write(paper_notebook(ada, right_answers(ada) | written), page)
    numbers = right_answers(ben)
    table = folder / "ben.csv"
    head = ",".join(["code", *map(str, numbers), f"points {OPEN}"])
    table.write_text(f"{head}\n{','.join([ben.code, *numbers.values(), '4'])}\n")
    if not points:
        return [page, table]
    given = folder / "points.csv"
    given.write_text(f"code,points {OPEN}\n{ada.code},{points}\n")
    return [page, table, given]


def test_parts_are_marked_and_points_stand_beside_the_marks(tmp_path: Path) -> None:
    marked = mark_returns(ISSUE, returned(tmp_path, "3"))
    assert not marked.problems
    head, ada, ben = grades_table(marked)
    column = head.index(f"points {OPEN} (of {len(SCENARIO.judged[0].points)})")
    assert (ada[column], ben[column]) == (3, 4)
    total = len(PAPER.items)
    assert [row[head.index("marks")] for row in (ada, ben)] == [total, total]
    assert [row[head.index("of")] for row in (ada, ben)] == [total, total]
    said = report(marked)
    assert f"Question {OPEN}" in said and "marked by hand" in said
    assert "Without points" not in said


def test_what_is_still_to_be_marked_is_said_and_written_down(tmp_path: Path) -> None:
    marked = mark_returns(ISSUE, returned(tmp_path))
    assert "Without points: Ada." in report(marked)
    results = tmp_path / "results"
    write_results(marked, results)
    written = (results / WRITTEN).read_text()
    assert "--- Ada\nIt spares the lines, not the hub." in written
    assert all(point in written for point in SCENARIO.judged[0].points)
    rows = list(csv.reader(io.StringIO((results / "grades.csv").read_text())))
    assert rows[1][-1] == "" and rows[2][-1] == "4"
    questions = (results / "questions.csv").read_text()
    for part in SCENARIO.parts:
        assert part.key in questions


def test_the_table_of_questions_says_what_each_row_is(tmp_path: Path) -> None:
    head, *rows = questions_table(mark_returns(ISSUE, returned(tmp_path, "3")))
    named = [dict(zip(head, row, strict=True)) for row in rows]
    assert [row["number"] for row in named] == list(range(1, OPEN + 1))
    for row in named:
        inside = row["number"] >= TOLD.first
        assert row["part of"] == (SCENARIO.title if inside else "")
        assert row["title"]
    assert {row["answered with"] for row in named} >= {"letter", "number", "sentences"}
    last = named[-1]
    assert (last["question"], last["right"]) == (SCENARIO.judged[0].key, "")
    assert (last["asked"], last["blank"]) == (2, 1)  # Ben's table has no sentences
    assert last["flags"] == "marked by hand: 2 of 2"
    assert last["facility"] == ""  # of two papers counts alone are told


def test_the_mean_share_of_points_of_a_whole_class(tmp_path: Path) -> None:
    made = make_issue(PLAN, tuple(f"s{number:02}" for number in range(12)))
    lines = [f"code,{OPEN},points {OPEN}"]
    lines += [f"{p.code},words,{5 if n % 2 else 2}" for n, p in enumerate(made.papers)]
    (tmp_path / "all.csv").write_text("\n".join(lines) + "\n")
    head, *rows = questions_table(mark_returns(made, [tmp_path / "all.csv"]))
    assert rows[-1][head.index("facility")] == 0.7
    assert rows[-1][head.index("blank")] == 0


@pytest.mark.parametrize("points", ["6", "-1", "two", "2.5"])
def test_points_that_cannot_be_are_said(tmp_path: Path, points: str) -> None:
    marked = mark_returns(ISSUE, returned(tmp_path, points))
    (problem,) = marked.problems
    assert "Write a whole number up to 5" in problem.sentence
    assert len(marked.results) == 2


def test_different_points_for_one_question_are_told(tmp_path: Path) -> None:
    paths = returned(tmp_path, "3")
    again = tmp_path / "again.csv"
    again.write_text(f"code,points {OPEN}\n{PAPER.code},4\n")
    marked = mark_returns(ISSUE, [*paths, again])
    assert [r.paper.student for r in marked.results] == ["Ben"]
    (problem,) = marked.problems
    assert "different points for one question" in problem.sentence


def test_points_for_a_question_that_is_not_open_are_refused(tmp_path: Path) -> None:
    table = tmp_path / "points.csv"
    table.write_text(f"code,points 1\n{PAPER.code},3\n")
    (problem,) = mark_returns(ISSUE, [table]).problems
    assert "no open question" in problem.sentence


def test_who_is_forgotten_is_in_no_written_answer(tmp_path: Path) -> None:
    write_papers(ISSUE, tmp_path)
    paths = returned(tmp_path / "returns", "3")
    write_results(mark_returns(ISSUE, paths), tmp_path / "results")
    forget(tmp_path, "Ada")
    left = [path for path in tmp_path.rglob("*") if path.is_file()]
    assert WRITTEN not in [path.name for path in left]
    assert not [path for path in left if PAPER.code.encode() in path.read_bytes()]
