"""A scenario on the page: parts open in turn, numbers change together, people judge the last."""

import ipywidgets as widgets
import pytest

from ropecalc.teaching.exercise import Standing, standing
from ropecalc.teaching.record import Place, Record, Work
from ropecalc.teaching.scenario_page import ScenarioPage, ScenarioSolution
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.scenarios.content import Scenario
from ropecalc.teaching.scenarios.situation import draw_situation
from ropecalc.teaching.scenarios.views import COMPARED, PartView
from ropecalc.teaching.session import Session
from ropecalc.units import Display

SCENARIO = SCENARIOS["high-outcrop"]
HAUL, GROUND, BETWEEN = (part.key for part in SCENARIO.parts[:3])
JUDGED = SCENARIO.judged[0]
every_scenario = pytest.mark.parametrize("scenario", SCENARIOS.values(), ids=lambda s: s.key)


@pytest.fixture
def session() -> Session:
    return Session(Record.open())


def everything_on(view: widgets.Widget) -> list[widgets.Widget]:
    found = [view]
    for child in getattr(view, "children", ()):
        found += everything_on(child)
    return found


def of_kind(view: widgets.Widget, kind: type) -> list:
    return [widget for widget in everything_on(view) if isinstance(widget, kind)]


def press(view: widgets.Widget, words: str) -> None:
    (found,) = (b for b in of_kind(view, widgets.Button) if words in b.description)
    found.click()


def page_text(view: widgets.Widget) -> str:
    return " ".join(w.value for w in of_kind(view, widgets.HTML | widgets.HTMLMath))


def right(key: str, number: int = 0) -> str:
    draw = draw_situation(SCENARIO, SCENARIO.page, number).part(key)
    return draw.shown(draw.answer, Display())


def answer(view: PartView, text: str) -> None:
    of_kind(view, widgets.Text)[0].value = text
    press(view, "Check")


def test_a_part_opens_when_those_it_goes_on_with_are_behind(session: Session) -> None:
    page = ScenarioPage(SCENARIO, session)
    haul, ground, between = (page.part(key) for key in (HAUL, GROUND, BETWEEN))
    assert of_kind(between, widgets.Text) == []
    assert "result of part a and b" in between.summary()
    assert "result of part a and b" in page_text(between)
    answer(haul, "1°")
    assert "go on with" not in haul.summary()
    answer(haul, right(HAUL))
    assert f"go on with {right(HAUL)}" in haul.summary()
    assert f"go on with {right(HAUL)}" in page_text(haul)
    assert "result of part b" in between.summary()
    press(ground, "Give up")
    assert right(GROUND) in between.summary()
    answer(between, right(BETWEEN))
    assert "Right." in between.summary()


def test_the_learners_own_number_is_never_carried_on(session: Session) -> None:
    """A rounded answer that is taken as right does not change what follows."""
    page = ScenarioPage(SCENARIO, session)
    haul, between = page.part(HAUL), page.part(BETWEEN)
    press(page.part(GROUND), "Give up")
    near = round(float(right(HAUL).removesuffix("°")) + 0.3, 1)
    answer(haul, f"{near}°")
    assert "Right." in haul.summary()
    assert f"{near}°" not in between.summary()
    assert right(HAUL) in between.summary()


def test_what_was_done_is_there_when_the_page_is_opened_again(session: Session) -> None:
    first = ScenarioPage(SCENARIO, session)
    answer(first.part(HAUL), right(HAUL))
    press(first.part(GROUND), "Give up")
    again = ScenarioPage(SCENARIO, Session(session.record))
    assert of_kind(again.part(BETWEEN), widgets.Text)
    assert "Right." in again.part(HAUL).summary()


def test_new_numbers_are_new_for_every_part(session: Session) -> None:
    page = ScenarioPage(SCENARIO, session)
    story = page.situation()
    haul, ground, between = (page.part(key) for key in (HAUL, GROUND, BETWEEN))
    judged = page.judged(JUDGED.key)
    of_kind(judged, widgets.Textarea)[0].value = "Something."
    answer(haul, right(HAUL))
    press(ground, "Give up")
    answer(between, right(BETWEEN))
    before = story.summary()
    press(story, "New numbers")
    assert story.summary() != before
    assert of_kind(between, widgets.Text) == []
    assert of_kind(judged, widgets.Textarea)[0].value == ""
    answer(haul, right(HAUL, 1))
    assert "Right." in haul.summary()
    press(ground, "Give up")
    assert right(GROUND, 1) in between.summary()
    again = ScenarioPage(SCENARIO, Session(session.record))
    assert again.situation().summary() == story.summary()


def test_a_part_left_behind_by_the_situation_is_brought_along(session: Session) -> None:
    session.record.keep_work(Place(SCENARIO.page, HAUL), Work(draw=4, draft="1"))
    view = ScenarioPage(SCENARIO, session).part(HAUL)
    answer(view, right(HAUL, 0))
    assert "Right." in view.summary()


def test_progress_counts_marked_parts_only(session: Session) -> None:
    page = ScenarioPage(SCENARIO, session)
    progress = page.progress()
    total = len(SCENARIO.parts)
    assert standing(SCENARIO, session.record) == Standing(0, 0, total)
    judged = page.judged(JUDGED.key)
    of_kind(judged, widgets.Textarea)[0].value = "A second line spares the lines."
    press(judged, "Compare")
    assert progress.summary().startswith(f"0 of {total} right, 0 tried")
    answer(page.part(HAUL), right(HAUL))
    assert progress.summary().startswith(f"1 of {total} right, 1 tried")
    assert progress.summary() in page_text(progress)


def test_points_are_shown_after_an_own_answer_and_ticks_are_kept(session: Session) -> None:
    judged = ScenarioPage(SCENARIO, session).judged(JUDGED.key)
    press(judged, "Compare")
    assert "Write your own answer first" in page_text(judged)
    assert of_kind(judged, widgets.Checkbox) == []
    assert JUDGED.points[0] not in judged.summary()
    of_kind(judged, widgets.Textarea)[0].value = "A second line spares the lines."
    press(judged, "Compare")
    boxes = of_kind(judged, widgets.Checkbox)
    assert [box.description for box in boxes] == list(JUDGED.points)
    boxes[1].value = True
    boxes[3].value = True
    assert "2 of 5 points ticked" in page_text(judged)
    kept = session.record.answers(Place(SCENARIO.page, JUDGED.key))
    assert [(one.text, one.verdict) for one in kept] == [
        ("A second line spares the lines.", COMPARED)
    ]
    again = ScenarioPage(SCENARIO, Session(session.record)).judged(JUDGED.key)
    assert [box.value for box in of_kind(again, widgets.Checkbox)] == [
        False, True, False, True, False,
    ]  # fmt: skip
    assert f"✓ {JUDGED.points[1]}" in again.summary()
    assert "earns no marks" in again.summary()


def test_numbers_follow_the_units(session: Session) -> None:
    page = ScenarioPage(SCENARIO, session)
    views = [page.situation(), page.part(HAUL), page.part(SCENARIO.parts[6].key)]
    session.choose_unit("length", "ft")
    session.choose_unit("force", "lbf")
    for view in views:
        assert " m " not in view.summary() and " kN" not in view.summary()
        assert " ft" in view.summary()


@every_scenario
def test_the_solutions_answer_every_part_and_tell_every_point(
    scenario: Scenario, session: Session
) -> None:
    page = ScenarioSolution(scenario, session)
    situation = draw_situation(scenario, scenario.page)
    assert page.situation().summary() == situation.story(Display())
    for part in scenario.parts:
        draw = situation.part(part.key)
        view = page.part(part.key)
        assert draw.shown(draw.answer, Display()) in view.summary()
        if part.gives:
            assert situation.carried_on(part, Display()) in page_text(view)
    for judged in scenario.judged:
        view = page.judged(judged.key)
        assert all(point in view.summary() for point in judged.points)
    assert not session.record.history()


@every_scenario
def test_every_part_can_be_worked_through_in_order(scenario: Scenario, session: Session) -> None:
    page = ScenarioPage(scenario, session)
    situation = draw_situation(scenario, scenario.page)
    views = [page.part(part.key) for part in scenario.parts]
    for part, view in zip(scenario.parts, views, strict=True):
        draw = situation.part(part.key)
        answer(view, draw.shown(draw.answer, Display()))
        assert "Right." in view.summary(), part.key
    total = len(scenario.parts)
    assert standing(scenario, session.record) == Standing(total, total, total)
