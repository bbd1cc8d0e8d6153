"""Oracles for the questions on critical angles: roots of balances, lines drawn and measured."""

from collections.abc import Callable, Mapping
from math import cos, hypot, pi, sin

import numpy as np
import pytest
from scipy.optimize import brentq

from ropecalc.teaching.questions.bank import critical_angles
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.template import Template

Values = Mapping[str, float]


def _redirect(v: Values) -> float:
    def gap(angle: float) -> float:
        return hypot(1 + cos(angle), sin(angle)) - v["pull_ratio"]

    return float(brentq(gap, 1e-6, pi - 1e-6))


def _three(v: Values) -> float:
    def gap(lean: float) -> float:
        turn = np.array([0, 2, 4]) * pi / 3
        legs = np.array([sin(lean) * np.cos(turn), sin(lean) * np.sin(turn), [cos(lean)] * 3])
        return float(np.linalg.solve(legs, [0.0, 0.0, 1.0])[0]) - v["load_ratio"]

    return float(brentq(gap, 1e-3, pi / 2 - 1e-6))


def _leg(angle: float) -> float:
    """Each of two legs that hold a unit load."""
    legs = np.array([[-sin(angle / 2), sin(angle / 2)], [cos(angle / 2), cos(angle / 2)]])
    return float(np.linalg.solve(legs, [0.0, 1.0])[0])


def _span_tension(load: float, span: float, sag: float) -> float:
    """Two strands drawn from the load to the ends, and a linear system."""
    ends = np.array([[-span / 2, sag], [span / 2, sag]])
    units = (ends.T / np.hypot(*ends.T)).T
    return float(np.linalg.solve(units.T, [0.0, load])[0])


def _sag(v: Values) -> float:
    return float(brentq(lambda r: _span_tension(1.0, 1.0, r) - v["load_ratio"], 1e-3, 10.0))


def _off(v: Values) -> float:
    """Tension and control pull as the two unknowns."""
    one, two = v["first_sag_angle"], v["second_sag_angle"]
    system = np.array([[cos(two) - cos(one), 1.0], [sin(one) + sin(two), 0.0]])
    return float(np.linalg.solve(system, [0.0, v["load"]])[0])


def _guided(v: Values) -> float:
    down = v["ground_depression"]
    up = pi + down - v["litter_angle"]
    haul = np.array([-cos(up), sin(up)])
    both = haul + np.array([cos(down), -sin(down)])
    return float(np.linalg.solve(np.array([haul, both]).T, [0.0, v["load"]])[1])


ORACLES: dict[str, Callable[[Values], float]] = {
    "redirect-limit": _redirect,
    "legs-pulled-flatter": lambda v: _leg(v["angle_after"]) / _leg(v["angle_before"]),
    "three-leg-limit": _three,
    "loaded-span": lambda v: _span_tension(v["load"], v["span"], v["sag"]),
    "sag-needed": _sag,
    "off-the-middle": _off,
    "angle-at-the-litter": _guided,
}


@pytest.mark.parametrize("template", critical_angles.QUESTIONS, ids=lambda t: t.key)
def test_every_question_on_critical_angles_has_its_oracle(template: Template) -> None:
    for number in range(20):
        drawn = draw(template, "critical", number)
        assert drawn.answer == pytest.approx(ORACLES[template.key](drawn.values), rel=1e-7)
