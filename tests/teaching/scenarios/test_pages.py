"""Both pages of every scenario as they are delivered: one tells nothing, the other everything."""

import re
from pathlib import Path

import nbformat
import pytest

from ropecalc.teaching import editions
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.questions import wording
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.scenarios.content import Scenario
from ropecalc.teaching.scenarios.situation import draw_situation
from ropecalc.units import Display

ROOT = Path(__file__).parents[3]
every_scenario = pytest.mark.parametrize("scenario", SCENARIOS.values(), ids=lambda s: s.key)


def page_of(folder: str, scenario: Scenario) -> str:
    return (ROOT / folder / f"{scenario.file}.ipynb").read_text(encoding="utf-8")


def said(folder: str, scenario: Scenario) -> str:
    page = nbformat.reads(page_of(folder, scenario), as_version=4)
    outputs = (output for cell in page.cells for output in cell.get("outputs", ()))
    return "\n".join(output.data["text/plain"] for output in outputs)


@every_scenario
def test_the_page_to_work_on_tells_no_answer_and_no_point(scenario: Scenario) -> None:
    text = page_of("exercises", scenario)
    situation = draw_situation(scenario, scenario.page)
    told = {
        shown
        for part in scenario.parts
        if not part.after
        for _, _, shown in wording.givens(situation.part(part.key), Display())
    }
    numbers = set(re.findall(r"[\d.]+(?: ?[a-zA-Z°/]+)?", said("exercises", scenario)))
    for part in scenario.parts:
        draw = situation.part(part.key)
        shown = draw.shown(draw.answer, Display())
        if shown not in told and len(re.sub(r"[^\d]", "", shown).lstrip("0")) > 2:
            assert shown not in numbers, (part.key, shown)
        for mistake in part.question.mistakes:
            assert mistake.why not in text
    assert not any(point in text for judged in scenario.judged for point in judged.points)


@every_scenario
def test_the_worked_page_tells_every_answer_and_point(scenario: Scenario) -> None:
    found = said("solutions", scenario)
    situation = draw_situation(scenario, scenario.page)
    for part in scenario.parts:
        draw = situation.part(part.key)
        assert wording.solution(draw, Display())[-1].words in found
        for passage in wording.common_mistakes(draw, Display()):
            assert passage.words in found
    assert all(point in found for judged in scenario.judged for point in judged.points)


@every_scenario
def test_each_part_stands_once_in_both_and_the_lessons_are_linked(scenario: Scenario) -> None:
    for cells in (editions.scenario_cells(scenario), editions.scenario_solution_cells(scenario)):
        sources = "\n".join(source for _, source in cells)
        asked = re.findall(r'(?:part|judged)\("([^"]+)"\)', sources)
        assert asked == list(scenario.keys)
        for lesson in LESSONS.values():
            assert (f"lessons/{lesson.file}.ipynb" in sources) == (
                lesson.number in scenario.lessons
            )
