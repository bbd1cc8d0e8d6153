"""Oracles for the questions on a whole raise: trial loads, and rope followed piece by piece."""

from collections.abc import Callable, Mapping

import numpy as np
from scipy.optimize import brentq

from ropecalc.teaching.questions.bank import whole_raise

Values = Mapping[str, float]


def _times_that_fit(v: Values, load: float) -> float:
    """How many times the largest load fits into the least strength."""
    least = v["strength"] - v["strength_uncertainty"] * v["strength"]
    return least / (load + v["load_uncertainty"] * load)


def _stop(v: Values) -> float:
    root = brentq(lambda load: _times_that_fit(v, load) - v["margin"], 1.0, 1e6, xtol=1e-9)
    return float(root)


def _rope(v: Values) -> float:
    grab = v["setback"] + (v["track_length"] - v["gap"])
    return grab + v["line_tail"]


def _held_at(v: Values, number: int) -> float:
    """Unit vectors along both legs, and how hard each must pull against the weight."""
    here = np.array([v[f"x_{number}"], v[f"z_{number}"]])
    legs = [np.array([v["x_D"], v["z_D"]]) - here, np.array([v["x_B"], v["z_B"]]) - here]
    ways = np.array([leg / np.hypot(*leg) for leg in legs]).T
    return float(np.linalg.solve(ways, [0.0, v["load"]])[1])


def _out(v: Values) -> float:
    """Further out until the line would have to pull harder than it may."""

    def too_much(off: float) -> float:
        up, down = np.arctan2(v["drop"], off), v["ground_depression"]
        ways = np.array([[-np.cos(up), np.sin(up)], [np.cos(down), -np.sin(down)]]).T
        return float(np.linalg.solve(ways, [0.0, v["load"]])[1]) - v["line_tension"]

    edge = v["drop"] / np.tan(v["ground_depression"])
    return float(brentq(too_much, 1e-6, 0.999 * edge, xtol=1e-12))


ORACLES: dict[str, Callable[[Values], float]] = {
    "raise-governing-station": lambda v: max(_held_at(v, i) for i in (1, 2, 3)),
    "raise-honest-margin": lambda v: _times_that_fit(v, v["component_load"]),
    "raise-stop-value": _stop,
    "raise-reach-off-plumb": _out,
    "raise-track-rope": _rope,
}


def test_every_question_of_the_module_is_listed() -> None:
    assert {question.key for question in whole_raise.QUESTIONS} == set(ORACLES)
