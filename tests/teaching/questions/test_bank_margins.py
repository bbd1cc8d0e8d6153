"""Oracles for the questions on readings and failures: vectors, small steps, energy."""

from collections.abc import Callable, Mapping
from math import cos, sin

import numpy as np
from scipy.optimize import brentq

from ropecalc.teaching.questions.bank import margins
from ropecalc.units import STANDARD_GRAVITY

Values = Mapping[str, float]


def _ahead(v: Values) -> float:
    one = np.array([1.0, 0.0])
    other = v["efficiency"] * np.array([cos(v["strand_angle"]), sin(v["strand_angle"])])
    return v["reading"] / float(np.hypot(*(one + other)))


def _weight(v: Values) -> float:
    legs = v["haul_tension"] + v["track_tension"]
    up = legs * np.array([-cos(v["haul_elevation"]), sin(v["haul_elevation"])])
    down = v["track_tension"] * np.array(
        [cos(v["ground_depression"]), -sin(v["ground_depression"])]
    )
    return float((up + down)[1])


def _along(v: Values) -> float:
    """A very small step square to the haul leg, and how much longer the ground leg gets."""
    leg = 1e4 * np.array([cos(v["ground_depression"]), -sin(v["ground_depression"])])
    step = 1e-3 * np.array([-sin(v["haul_elevation"]), -cos(v["haul_elevation"])])
    longer = float(np.hypot(*(leg - step)) - np.hypot(*leg))
    return v["slip"] * 1e-3 / longer


def _fall(v: Values) -> float:
    angle = float(brentq(lambda a: v["haul_leg_length"] * sin(a) - v["off_plumb"], 0, np.pi / 2))
    return v["haul_leg_length"] * (1 - cos(angle))


def _swing_peak(v: Values) -> float:
    mass = v["load"] / STANDARD_GRAVITY
    squared = 2 * STANDARD_GRAVITY * _fall(v)
    return v["load"] + mass * squared / v["haul_leg_length"]


def _arrest(v: Values) -> float:
    spring = v["stiffness"] / v["belay_length"]

    def left(longer: float) -> float:
        return v["load"] * (v["belay_slack"] + longer) - spring * longer**2 / 2

    return spring * float(brentq(left, v["load"] / spring, 1e3, xtol=1e-12))


ORACLES: dict[str, Callable[[Values], float]] = {
    "margins-redirect-cell": _ahead,
    "margins-cell-error": lambda v: v["full_scale"] * v["cell_error"] / v["reading"],
    "margins-weigh": _weight,
    "margins-small-slip": _along,
    "margins-stretch": lambda v: v["rope_length"] * (v["rope_tension"] / v["stiffness"]),
    "margins-swing-fall": _fall,
    "margins-swing-peak": _swing_peak,
    "margins-arrest": _arrest,
}


def test_every_question_of_the_module_is_listed() -> None:
    assert {question.key for question in margins.QUESTIONS} == set(ORACLES)
