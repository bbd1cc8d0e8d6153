"""Oracles for the questions on anchor legs: unit vectors, a linear system, stretch by energy."""

from collections.abc import Callable, Mapping
from math import cos, degrees, sin

import numpy as np
import pytest
from scipy.optimize import brentq

from ropecalc.teaching.questions.bank import anchors
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.template import Template

Values = Mapping[str, float]


def _plane(*angles: float) -> np.ndarray:
    """Legs that lean by ``angles`` from plumb, to the right positive: one column each."""
    return np.array([[sin(a), cos(a)] for a in angles]).T


def _two(one: float, other: float, pull: tuple[float, float]) -> np.ndarray:
    return np.asarray(np.linalg.solve(_plane(one, other), [-pull[0], -pull[1]]))


def _equal(v: Values) -> float:
    half = v["leg_angle"] / 2
    return float(_two(-half, half, (0.0, -v["load"]))[0])


def _largest(v: Values) -> float:
    def beyond(angle: float) -> float:
        return float(_two(-angle / 2, angle / 2, (0.0, -1.0))[0]) - v["load_ratio"]

    return float(brentq(beyond, 1e-6, np.pi - 1e-6))


def _unequal(v: Values) -> float:
    return float(_two(-v["first_leg_angle"], v["second_leg_angle"], (0.0, -v["load"]))[0])


def _swung(v: Values) -> float:
    half, swing = v["leg_angle"] / 2, v["pull_swing"]
    return float(max(_two(-half, half, (v["load"] * sin(swing), -v["load"] * cos(swing)))))


def _even(v: Values) -> float:
    turn = np.array([0, 2, 4]) * np.pi / 3
    lean = sin(v["leg_plumb_angle"])
    legs = [lean * np.cos(turn), lean * np.sin(turn), np.full(3, cos(v["leg_plumb_angle"]))]
    return float(np.linalg.solve(np.array(legs), [0.0, 0.0, v["load"]])[0])


def _middle(v: Values) -> float:
    """The knot sinks by u; each leg gives the same stiffness per length. Balance decides u."""
    depth, angle = 1.0, v["outer_leg_angle"]
    outer = depth / cos(angle)

    def forces(u: float) -> tuple[float, float]:
        longer = np.hypot(depth * np.tan(angle), depth + u)
        return u / depth, (longer - outer) / outer * (depth + u) / longer

    tiny = 1e-7
    middle, up = forces(tiny)
    return float(v["load"] * middle / (middle + 2 * up))


def _back(v: Values) -> float:
    front, back, spread = v["front_leg_angle"], v["back_leg_angle"], v["half_spread"]
    legs = [[sin(front), 0.0, cos(front)]]
    legs += [
        [-sin(back) * cos(spread), side * sin(back) * sin(spread), cos(back)] for side in (1, -1)
    ]
    found = np.linalg.solve(np.array(legs).T, [0.0, 0.0, v["load"]])
    assert found[1] == pytest.approx(found[2])
    return float(found[1])


ORACLES: dict[str, Callable[[Values], float]] = {
    "two-equal-legs": _equal,
    "largest-leg-angle": _largest,
    "unequal-legs": _unequal,
    "pull-off-the-middle": _swung,
    "three-even-legs": _even,
    "middle-leg": _middle,
    "two-back-one-front": _back,
}


@pytest.mark.parametrize("template", anchors.QUESTIONS, ids=lambda t: t.key)
def test_every_question_on_anchors_has_its_oracle(template: Template) -> None:
    for number in range(20):
        drawn = draw(template, "anchors", number)
        assert drawn.answer == pytest.approx(ORACLES[template.key](drawn.values), rel=1e-5)


def test_the_angle_for_a_leg_equal_to_the_load_is_common_knowledge() -> None:
    """Common practice, no source: two legs 120 degrees apart each carry the load."""
    assert degrees(_largest({"load_ratio": 1.0})) == pytest.approx(120.0)
    assert degrees(anchors.LARGEST_ANGLE.answer({"load_ratio": 1.0})) == pytest.approx(120.0)
