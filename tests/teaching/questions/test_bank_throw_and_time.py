"""Oracles for the questions on throws and time: raises walked through, ropes followed."""

from collections.abc import Callable, Mapping

import pytest

from ropecalc.teaching.questions.bank import throw_and_time
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.template import Template

Values = Mapping[str, float]


def _throws(v: Values) -> float:
    at, throws = 0.0, 0
    while at < v["raise_height"]:
        at += v["throw_rise"] - (v["reset_loss"] if throws else 0.0)
        throws += 1
    return throws


def _time(v: Values) -> float:
    """Second by second would do as well: every metre of hand rope takes its time."""
    rope = sum(v["advantage"] * v["reset_loss"] for _ in range(round(v["throws"]) - 1))
    rope += v["advantage"] * v["raise_height"]
    return rope / v["hand_speed"] + sum(v["reset_time"] for _ in range(round(v["throws"]) - 1))


def _rope(v: Values) -> float:
    parts = [v["raise_height"], v["edge_setback"]]
    parts += [v["throw_rise"]] * (round(v["advantage"]) - 1)
    return sum([*parts, v["haul_tail"]])


def _snag(v: Values) -> float:
    """Virtual work: the team moves the advantage times as far as the snag."""
    step = 0.01
    return v["people"] * v["burst_per_person"] * (v["advantage"] * step) / step


def _throw(v: Values) -> float:
    """Walk a thousandth of the way at a time, and stop at the anchor or at the end of the way."""
    step = v["clear_way"] / 1000
    risen = 0.0
    for _ in range(1000):
        risen = min(risen + step / v["advantage"], v["traveller_room"])
    return risen


ORACLES: dict[str, Callable[[Values], float]] = {
    "how-many-throws": _throws,
    "what-ends-a-throw": _throw,
    "time-of-a-raise": _time,
    "haul-rope-needed": _rope,
    "snagged-litter": _snag,
}


@pytest.mark.parametrize("template", throw_and_time.QUESTIONS, ids=lambda t: t.key)
def test_every_question_on_throws_has_its_oracle(template: Template) -> None:
    for number in range(20):
        drawn = draw(template, "throws", number)
        assert drawn.answer == pytest.approx(ORACLES[template.key](drawn.values), rel=1e-9)
