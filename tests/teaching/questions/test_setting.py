"""A rig that is set: how a setting is read and marked, how it is found, and how it looks."""

import asyncio
from dataclasses import replace

import ipywidgets as widgets
import pytest

from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.bank import rigs
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.marking import Verdict, mark
from ropecalc.teaching.questions.question import Listeners
from ropecalc.teaching.questions.question_view import QuestionView, SolutionView
from ropecalc.teaching.questions.setting import RigTask, WrongRelation
from ropecalc.teaching.questions.setting_line import SettingLine
from ropecalc.teaching.questions.setting_marking import read_setting
from ropecalc.teaching.record import Place, Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.sliders import QuantitySlider
from ropecalc.units import Display, from_si
from tests.teaching.questions.every import every_rig_task

LEGS = rigs.LEG_ANGLE
TEAM = rigs.TEAM
HUB = rigs.HUB_DISTANCE
DRAWN = draw(LEGS, "here")
PAGE = "exercise:test"


@pytest.mark.parametrize("text", ["42,5 m", " 42.5 m ", "42.5 metres"])
def test_one_value_is_read_kindly(text: str) -> None:
    setting, reading = read_setting(HUB, text, Display())
    assert setting == {"x_B": 42.5} and reading == "42.5 m"


def test_a_sliders_end_in_another_unit_may_lie_a_step_outside() -> None:
    setting, reading = read_setting(HUB, "329 ft", Display())
    assert setting == {"x_B": 100.0} and reading == "329 ft"


@pytest.mark.parametrize("text", ["4; 3", "4 ; 3", "4/3", "4 and 3", "4;3;"])
def test_two_values_are_read_kindly(text: str) -> None:
    setting, reading = read_setting(TEAM, text, Display())
    assert setting == {"people": 4.0, "parts": 3.0} and reading == "4; 3"


@pytest.mark.parametrize(
    ("task", "text", "verdict", "told"),
    [
        (HUB, "42.5", Verdict.UNIT, "has no unit"),
        (HUB, "42.5 kN", Verdict.UNIT, "a length is asked for"),
        (HUB, "far", Verdict.UNREADABLE, "cannot be read"),
        (HUB, "40 m; 50 m", Verdict.UNREADABLE, "is not one value"),
        (HUB, "300 m", Verdict.UNREADABLE, "from 16.0 m to 100.0 m only"),
        (HUB, "100.4 m", Verdict.UNREADABLE, "from 16.0 m to 100.0 m only"),
        (TEAM, "10; 3", Verdict.UNREADABLE, "from 1 to 9 only"),
        (TEAM, "0; 3", Verdict.UNREADABLE, "from 1 to 9 only"),
        (TEAM, "3.5; 3", Verdict.UNREADABLE, "People who haul: write a whole number"),
        (HUB, "x" * 100, Verdict.UNREADABLE, "100 characters"),
        (TEAM, "4", Verdict.UNREADABLE, "2 values, with a semicolon"),
        (TEAM, "", Verdict.UNREADABLE, "9; 7"),
    ],
)
def test_what_is_no_setting_is_said(task: RigTask, text: str, verdict: Verdict, told: str) -> None:
    marked = mark(draw(task, "here"), text)
    assert marked.verdict is verdict and told in marked.feedback


@every_rig_task
def test_right_and_mistaken_settings_are_recognised(task: RigTask) -> None:
    for number in range(8):
        drawn = draw(task, "marks", number)
        marked = mark(drawn, drawn.shown(drawn.answer, Display()))
        assert marked.verdict is Verdict.RIGHT
        assert "as wanted" in marked.feedback and task.reason in marked.feedback
        for key, setting in drawn.mistaken.items():
            marked = mark(drawn, drawn.shown(setting, Display()))
            assert (marked.verdict, marked.mistake) == (Verdict.MISTAKE, key)
            assert task.mistake(key).why in marked.feedback


def test_every_setting_in_the_band_is_right_and_none_outside() -> None:
    right, _ = LEGS._on_grid(DRAWN.values)
    [knob] = LEGS.knobs
    verdicts = [
        mark(DRAWN, knob.show(stop, Display())).verdict is Verdict.RIGHT for stop in knob.stops
    ]
    assert verdicts == right.tolist() and 2 <= sum(verdicts) < 20


def test_a_wrong_setting_is_told_the_side_and_no_number() -> None:
    degrees = round(from_si(DRAWN.answer["leg_angle"], "°"))
    plain = replace(LEGS, mistakes=())
    drawn = replace(DRAWN, template=plain)
    marked = mark(drawn, f"{degrees + 20}°")
    assert marked.verdict is Verdict.WRONG
    assert marked.feedback == "Not right. Too much here: tension in each leg."
    assert "Too little" in mark(drawn, f"{degrees - 20}°").feedback


def test_a_setting_without_a_result_is_wrong_and_says_why() -> None:
    drawn = draw(HUB, "here")
    values = {**drawn.values, "x": 3.0, "z": 28.0, "x_D": 0.1, "z_D": 31.5}
    marked = mark(replace(drawn, values=values), "16 m")
    assert marked.verdict is Verdict.WRONG
    assert "no result" in marked.feedback and "straight line" in marked.feedback


def test_luck_shared_mistakes_and_a_right_start_are_refused() -> None:
    values = dict(DRAWN.values)

    def one(key: str, share: float) -> WrongRelation:
        return WrongRelation(key, "T", "W.", lambda v: v.leg_tension * share)

    [knob] = LEGS.knobs

    def made(*mistakes: WrongRelation, **changes: object) -> RigTask:
        return replace(LEGS, mistakes=mistakes, **changes)  # type: ignore[arg-type]

    assert made(one("a", 0.7)).suits(values)
    assert not made(one("a", 0.99)).suits(values), "is right nearly everywhere"
    assert not made(one("a", 0.7), one("b", 0.7)).suits(values)
    assert not made(one("a", 50.0)).suits(values), "leads nowhere"
    right = round(from_si(DRAWN.answer["leg_angle"], "°"))
    assert not made(one("a", 0.7), knobs=(replace(knob, start=right),)).suits(values)
    [wanted] = LEGS.wanted
    wide = replace(wanted, low=lambda v: 0.0)
    assert not made(one("a", 0.7), wanted=(wide,)).suits(values), "right by luck"


def test_a_task_must_draw_or_set_what_it_needs() -> None:
    with pytest.raises(ValueError, match="neither draws nor sets"):
        replace(LEGS, givens=LEGS.givens[1:])


@every_rig_task
def test_hints_and_solution(task: RigTask) -> None:
    for number in range(4):
        drawn = draw(task, "hints", number)
        display = Display()
        hints = wording.hints(drawn, display)
        assert len(hints) == 3 and not hints[0].latex and hints[1].latex
        assert "Where it stands at first" in hints[2].words and "as wanted" not in hints[2].words
        written = drawn.shown(drawn.answer, display)
        *steps, last = wording.solution(drawn, display)
        assert last.words.startswith(f"For example {written}.") and "as wanted" in last.words
        assert len(steps) >= 3
        common = wording.common_mistakes(drawn, display)
        assert [p.words.partition(":")[0] for p in common] == [m.title for m in task.mistakes]
    assert wording.assumptions(drawn) and task.symbols


def test_the_solution_turns_the_formula_round_or_tries() -> None:
    turned = " ".join(p.words for p in wording.solution(DRAWN, Display()))
    assert "Aim at the middle of what is wanted" in turned and "solve for" in turned
    tried = [p.words for p in wording.solution(draw(HUB, "here"), Display())]
    assert sum("The hub stands" in words for words in tried) >= 3
    assert any("too much" in words for words in tried)


# --- on the page -------------------------------------------------------------------------------


@pytest.fixture
def session() -> Session:
    return Session(Record.open())


def everything_on(view: widgets.Widget) -> list[widgets.Widget]:
    return [view, *(w for child in getattr(view, "children", ()) for w in everything_on(child))]


def sliders(view: widgets.Widget) -> list[QuantitySlider]:
    return [w for w in everything_on(view) if isinstance(w, QuantitySlider)]


def page_text(view: widgets.Widget) -> str:
    return " ".join(
        w.value for w in everything_on(view) if isinstance(w, widgets.HTML | widgets.HTMLMath)
    )


def press(view: widgets.Widget, words: str) -> None:
    for found in everything_on(view):
        if isinstance(found, widgets.Button) and words in found.description:
            found.click()


def test_a_rig_is_set_told_in_words_kept_and_marked(session: Session) -> None:
    view = QuestionView(LEGS, session, PAGE)
    drawn = draw(LEGS, PAGE)
    assert "The legs stand 10° apart. Nothing is set yet." in page_text(view)
    press(view, "Check")
    assert "Nothing has been answered yet. Move a slider" in page_text(view)
    assert session.record.answers(Place(PAGE, LEGS.key)) == ()
    degrees = round(from_si(drawn.answer["leg_angle"], "°"))
    [slider] = sliders(view)
    slider.slider.value = float(degrees)
    assert f"The legs stand {degrees}° apart.<" in page_text(view)
    assert "kN:" not in page_text(view), "the result is not told while setting"
    again = QuestionView(LEGS, Session(Record.open()), PAGE)
    assert sliders(again)[0].slider.value == degrees
    press(again, "Check")
    assert f"Read as {degrees}°. Right." in page_text(again)
    [kept] = Record.open().answers(Place(PAGE, LEGS.key))
    assert (kept.text, kept.verdict) == (f"{degrees}°", "right")


def test_units_move_nothing_and_leave_what_was_written(session: Session) -> None:
    view = QuestionView(HUB, session, PAGE)
    sliders(view)[0].move(42.5)
    session.choose_unit("length", "ft")
    assert view._entry.value == "42.5 m"
    assert sliders(view)[0].quantity == 42.5
    assert "The hub stands 139.4 ft out" in page_text(view) or "139 ft" in page_text(view)


def test_new_numbers_put_the_sliders_back(session: Session) -> None:
    view = QuestionView(TEAM, session, PAGE)
    sliders(view)[0].move(4.0)
    assert view._entry.value == "4; 7"
    press(view, "New numbers")
    assert [s.quantity for s in sliders(view)] == [9.0, 7.0]
    assert view._entry.value == "" and session.record.work(Place(PAGE, TEAM.key)).draft == ""


def test_a_check_waits_for_the_move_that_is_still_on_its_way(session: Session) -> None:
    """The browser lets a press on a button overtake the last move of a slider."""
    view = QuestionView(HUB, session, PAGE)
    sliders(view)[0].move(50.0)

    async def pressed_too_early() -> None:
        press(view, "Check")
        sliders(view)[0].move(42.5)
        for _ in range(100):
            if not session.record.answers(Place(PAGE, HUB.key)):
                await asyncio.sleep(0.02)

    asyncio.run(pressed_too_early())
    assert [a.text for a in session.record.answers(Place(PAGE, HUB.key))] == ["42.5 m"]


def test_a_strange_draft_is_nothing_set() -> None:
    heard: list[str] = []
    line = SettingLine(TEAM, "<b>", Display(), Listeners(heard.append))
    assert line.value == "" and heard == []
    line.value = "4; 3"
    assert line.value == "4; 3" and heard == ["4; 3"]
    assert [s.quantity for s in sliders(line)] == [4.0, 3.0]


def test_the_solution_edition_tells_a_setting(session: Session) -> None:
    view = SolutionView(draw(LEGS, PAGE), session)
    assert "For example" in view.summary() and "as wanted" in view.summary()
