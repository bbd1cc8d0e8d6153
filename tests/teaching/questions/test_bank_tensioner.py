"""Oracles for the questions on the tensioner: a walk along its rope, and lengths that are added."""

from collections.abc import Callable, Mapping
from itertools import accumulate
from math import cos, hypot, sin

from ropecalc.teaching.questions.bank import tensioner
from ropecalc.teaching.questions.draw import draw

Values = Mapping[str, float]


def _strands(v: Values, pull: float, count: int) -> list[float]:
    """From the device on, while rope is taken in: every sheave leaves its share."""
    return list(accumulate([pull] + [v["efficiency"]] * (count - 1), lambda s, e: s * e))


def _lines(v: Values, count: int, pull: float = 1.0) -> list[float]:
    rope = _strands(v, pull, 2 * count)
    return [rope[2 * i] + rope[2 * i + 1] for i in range(count)]


def _of_all(v: Values) -> list[float]:
    return _lines(v, int(v["lines"]))


def _hub_pulley(v: Values) -> float:
    rope = _strands(v, v["device_pull"], 4)
    return rope[1] + rope[2]


def _rope(v: Values) -> float:
    start = v["least_play"] + v["take_in"] + v["line_stretch"]
    return sum(start for _ in range(2 * int(v["lines"]))) + v["tail"]


def _slack(v: Values) -> float:
    """Rope of both pulleys together stays the same; the lost line's pulley comes to the hub."""
    strands_before = 2 * v["play"] + 2 * 10.0
    return strands_before / 2 - 10.0


def _hands(v: Values) -> float:
    per_hand = v["tail_advantage"] * v["device_share"]
    return v["far_line"] / _lines(v, int(v["lines"]), per_hand)[-1]


def _feed(v: Values) -> float:
    """Legs of 20 m and 50 m, before and after a small rise."""
    up, down, rise = v["track_elevation"], v["ground_depression"], 1e-6

    def legs(z: float) -> float:
        upper = hypot(20 * cos(up), 20 * sin(up) - z)
        return upper + hypot(50 * cos(down), 50 * sin(down) + z)

    return 2 * v["lines"] * v["haul_speed"] * (legs(-rise) - legs(rise)) / (2 * rise)


def _all_from_near(v: Values) -> float:
    lines = _of_all(v)
    return v["near_line"] * sum(lines) / lines[0]


def _how_many(v: Values) -> float:
    """One line more until the near line keeps to the limit."""
    count = 1
    while v["track_tension"] * _lines(v, count)[0] / sum(_lines(v, count)) > v["line_limit"]:
        count += 1
    return count


ORACLES: dict[str, Callable[[Values], float]] = {
    "tensioner-without-friction": lambda v: _lines(
        {"efficiency": 1.0}, int(v["lines"]), v["device_pull"]
    )[-1],
    "tensioner-how-many-lines": _how_many,
    "tensioner-one-line": lambda v: _lines(v, int(v["line"]), v["device_pull"])[-1],
    "tensioner-far-to-near": lambda v: _of_all(v)[-1] / _of_all(v)[0],
    "tensioner-most-loaded": lambda v: v["track_tension"] * _of_all(v)[0] / sum(_of_all(v)),
    "tensioner-hub-load": _all_from_near,
    "tensioner-device": lambda v: v["near_line"] / _lines(v, 1)[0],
    "tensioner-hub-pulley": _hub_pulley,
    "tensioner-rope-through": lambda v: sum(v["take_in"] for _ in range(2 * int(v["lines"]))),
    "tensioner-rope-length": _rope,
    "tensioner-lost-line": _slack,
    "tensioner-hand-pull": _hands,
    "tensioner-feed-speed": _feed,
    "tensioner-second-line": _all_from_near,
}


def test_every_question_of_the_module_is_listed() -> None:
    assert {question.key for question in tensioner.QUESTIONS} == set(ORACLES)


def test_friction_turned_round_errs_to_the_other_side() -> None:
    for question in (tensioner.ONE_LINE, tensioner.FAR_TO_NEAR):
        drawn = draw(question, "sides")
        assert drawn.mistaken["friction-turned-round"] > drawn.answer
