"""Draws are the same in every release, lie on their grid, and are refused where they mislead."""

from dataclasses import replace
from hashlib import sha256

import pytest

from ropecalc.mechanics import guiding
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.bank import along_the_raise, holding_off
from ropecalc.teaching.questions.draw import DrawError, candidate, draw, suits
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance
from ropecalc.units import Display, from_si
from tests.teaching.questions.every import every_question


def test_the_algorithm_is_pinned() -> None:
    """Papers that were handed out are drawn again from their seed: these must never change."""
    digest = sha256(b"class of 2031|attendant-push|4|0|load").hexdigest()
    assert digest == "b9f43625f6bd7213873034e50ac50e1fb909dd66ffbad82063683a8f6992bc5b"
    drawn = candidate(holding_off.ATTENDANT_PUSH, "class of 2031", 4, 0)
    assert drawn == pytest.approx({"load": 1200.0, "off_plumb": 0.5, "drop": 10.0})
    drawn = candidate(along_the_raise.TAKE_IN, "é", 0, 1)
    assert {n: round(from_si(v, "°")) for n, v in drawn.items()} == {
        "track_elevation": 72,
        "ground_depression": 19,
    }


@every_question
def test_draws_repeat_and_lie_on_the_grid(question: Question) -> None:
    for number in range(20):
        drawn = draw(question, "grid", number)
        assert drawn == draw(question, "grid", number)
        for given in question.givens:
            shown = from_si(drawn.values[given.name], given.unit)
            assert given.low - 1e-9 <= shown <= given.high + 1e-9
            steps = (shown - given.low) / given.step
            assert steps == pytest.approx(round(steps), abs=1e-6)


def test_seed_number_and_question_all_matter() -> None:
    push = holding_off.ATTENDANT_PUSH
    values = [draw(push, "a", n).values for n in range(30)]
    assert len({tuple(v.items()) for v in values}) > 20
    assert draw(push, "a").values != draw(push, "b").values
    ends = [given for given in push.givens]
    for given in ends:
        seen = {
            round(from_si(draw(push, "s", n).values[given.name], given.unit), 6) for n in range(400)
        }
        assert {given.low, given.high} <= seen, "the whole grid is used"


def hub_uplift_with(*mistakes: Mistake, **changes: object) -> Template:
    return replace(along_the_raise.HUB_UPLIFT, mistakes=mistakes, **changes)  # type: ignore[arg-type]


def wrong(key: str, factor: float) -> Mistake:
    return Mistake(key, "T", "W.", lambda v: v.line_tension * factor)


def test_a_mistake_too_near_the_answer_is_refused() -> None:
    values = {"line_tension": 1000.0, "ground_depression": 0.5235987755982988}  # sin = 0.5
    assert suits(hub_uplift_with(wrong("far", 0.525)), values)
    assert not suits(hub_uplift_with(wrong("near", 0.515)), values)
    assert not suits(hub_uplift_with(wrong("same", 0.5)), values)


def test_two_mistakes_too_near_each_other_are_refused() -> None:
    values = {"line_tension": 1000.0, "ground_depression": 0.5235987755982988}
    assert suits(hub_uplift_with(wrong("one", 0.80), wrong("two", 0.84)), values)
    assert not suits(hub_uplift_with(wrong("one", 0.80), wrong("two", 0.82)), values)


def test_a_mistake_that_gives_no_number_is_refused() -> None:
    nothing = Mistake("none", "T", "W.", lambda v: v.line_tension / (v.line_tension - 1000))
    values = {"line_tension": 1000.0, "ground_depression": 0.5}
    assert not suits(hub_uplift_with(nothing), values)


def test_a_question_whose_numbers_never_suit_is_an_error() -> None:
    with pytest.raises(DrawError, match="hub-uplift"):
        draw(hub_uplift_with(usable=lambda values: False), "s")


def test_templates_must_draw_what_their_derivation_needs() -> None:
    with pytest.raises(ValueError, match="needs"):
        Template("k", "T", "S", "A", (), guiding.hub_uplift, Tolerance(0.02), (), 1, "do it")
    with pytest.raises(ValueError, match="no mass"):
        Given(q.LOAD, 100, 200, 1, "kg")


def test_numbers_are_shown_as_fine_as_their_grid() -> None:
    load = Given(q.LOAD, 1.2, 2.8, 0.1, "kN")
    assert load.show(2000.0, Display()) == "2.0 kN"
    assert load.show(2000.0, Display(force="lbf")) == "450 lbf"
    assert Given(q.HAUL_ELEVATION, 50, 86, 1, "°").show(1.0471975511965976, Display()) == "60°"
    assert Given(q.X_B, 30, 80, 5, "m").show(40.0, Display()) == "40 m"
