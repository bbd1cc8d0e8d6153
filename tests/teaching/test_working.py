"""The unfolding argument: steps on request, the reader's numbers, the reader's units."""

from collections.abc import Iterator

import pytest

from ropecalc.derivation import Line
from ropecalc.mechanics import guiding
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.working import Working, _line
from ropecalc.units import Kind


@pytest.fixture
def session() -> Iterator[Session]:
    record = Record.in_memory()
    yield Session(record)
    record.close()


def page_of(working: Working) -> str:
    return str(working.children[0].value)


def test_it_opens_with_the_first_step_and_unfolds_one_at_a_time(session: Session) -> None:
    working = Working(guiding.tag_tension, session)
    steps = len(guiding.tag_tension.steps)
    for shown in range(1, steps + 1):
        assert page_of(working).count("<li>") == shown
        working._next.click()
    assert page_of(working).count("<li>") == steps
    assert working._next.disabled


def test_folded_it_shows_what_is_assumed_and_no_step_until_asked(session: Session) -> None:
    working = Working(guiding.tag_tension, session, folded=True)
    assert guiding.tag_tension.assumptions[0] in page_of(working)
    assert "<li>" not in page_of(working)
    assert working._all.layout.display == "none"
    working._with_numbers.value = True
    assert "kN" in page_of(working)  # the result alone
    working._next.click()
    assert page_of(working).count("<li>") == 1
    assert working._next.description == "Next step"
    working._all.click()
    assert page_of(working).count("<li>") == len(guiding.tag_tension.steps)


def test_a_tick_writes_the_readers_numbers_into_every_step(session: Session) -> None:
    working = Working(guiding.attendant_push, session)
    working._all.click()
    assert r"\mathrm{kN}" not in page_of(working)
    working._with_numbers.value = True
    before = page_of(working)
    expected = guiding.attendant_push(
        **{v.name: v.teaching.default for v in guiding.attendant_push.given}
    )
    assert session.display.show(expected, Kind.FORCE) in before
    working._sliders["off_plumb"].slider.value = 2.0
    assert page_of(working) != before
    changed = {v.name: v.teaching.default for v in guiding.attendant_push.given}
    doubled = guiding.attendant_push(**(changed | {"off_plumb": 2.0}))
    assert session.display.show(doubled, Kind.FORCE) in page_of(working)


def test_units_follow_the_session_and_move_no_value(session: Session) -> None:
    working = Working(guiding.attendant_push, session)
    values = dict(working._values)
    session.choose_unit("force", "lbf")
    session.choose_unit("length", "ft")
    assert working._values == pytest.approx(values, rel=1e-9)
    assert "(lbf)" in working._sliders["load"].slider.description
    assert "(ft)" in working._sliders["drop"].slider.description
    assert "lbf" in working.summary()


@pytest.mark.parametrize("derivation", [guiding.tag_tension, guiding.haul_tension_with_track])
def test_impossible_values_give_a_sentence_and_keep_the_page(derivation, session: Session) -> None:
    working = Working(derivation, session)
    working._sliders["haul_elevation"].slider.value = 45.0
    working._sliders["ground_depression"].slider.value = 38.0
    assert "<ol>" in page_of(working)
    working._values["ground_depression"] = working._values["haul_elevation"]
    working._refresh()
    assert "steeper than the ground leg" in page_of(working)
    assert "steeper than the ground leg" in working.summary()


def test_the_summary_tells_every_step(session: Session) -> None:
    summary = Working(guiding.straight_line_limit, session).summary()
    for step in guiding.straight_line_limit.steps:
        assert step.sentence in summary


def test_a_sliders_stops_are_round_in_every_unit_and_moving_it_stays_in_the_range(
    session: Session,
) -> None:
    session.choose_unit("length", "ft")
    working = Working(guiding.attendant_push, session)
    slider = working._sliders["off_plumb"].slider
    assert slider.min / slider.step == pytest.approx(round(slider.min / slider.step))
    teaching = guiding.attendant_push.variable("off_plumb").teaching
    for end, expected in ((slider.min, teaching.low), (slider.max, teaching.high)):
        slider.value = end
        assert working._values["off_plumb"] == pytest.approx(expected)


def test_a_start_beyond_the_usual_range_is_kept(session: Session) -> None:
    beyond = 2 * guiding.attendant_push.variable("drop").teaching.high
    working = Working(guiding.attendant_push, session, {"drop": beyond})
    session.choose_unit("length", "ft")
    assert working._values["drop"] == beyond
    shown = working._sliders["drop"].slider
    assert shown.max >= shown.value
    assert shown.value == pytest.approx(session.display.value(beyond, Kind.LENGTH), rel=5e-3)


def test_mathematics_cannot_break_the_page() -> None:
    line = Line("a < b", r"a < b", r"1 < \mathrm{m} & 2", "a < b", True, frozenset())
    shown = _line(line, numbers=True)
    assert shown == (r"<li>a &lt; b$$a &lt; b$$$$1 &lt; \mathrm{m} &amp; 2$$</li>")


def test_what_was_assumed_further_up_is_folded_away(session: Session) -> None:
    first, second = guiding.tag_tension.assumptions
    every = Working(guiding.tag_tension, session)
    assert "<details>" not in page_of(every)
    some = page_of(Working(guiding.tag_tension, session, said={first}))
    opened, folded = some.split("<details>")
    assert second in opened and first not in opened
    assert first in folded
    none = page_of(Working(guiding.tag_tension, session, said={first, second}))
    assert "<b>Assumed:</b>" not in none
    assert all(each in none for each in (first, second))
    assert (
        first in every.summary()
        and first in Working(guiding.tag_tension, session, said={first}).summary()
    )
