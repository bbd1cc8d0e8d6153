"""Oracles for the questions on forces: complex numbers for arrows, moments, published factors."""

import cmath
from collections.abc import Callable, Mapping
from math import atan2, hypot, pi

import pytest
from scipy.optimize import brentq

from ropecalc.teaching.questions.bank import forces
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.template import Template

Values = Mapping[str, float]

POUND_FORCE, KILOGRAM_FORCE = 4.448222, 9.80665
"""Newtons, NIST SP 811, appendix B.8."""


def _rope(v: Values) -> complex:
    """The pull of the rope on the litter that balances weight and side pull (x out, z up)."""
    return -(v["side_pull"] - 1j * v["load"])


def _moved(v: Values) -> float:
    """Moments about the directional: the weight at its way out, the pull at its depth."""
    length = v["rope_above"]

    def moment(x: float) -> float:
        return float(v["load"] * x - v["side_pull"] * (length**2 - x**2) ** 0.5)

    return float(brentq(moment, 0.0, length, xtol=1e-12))


def _slanted(v: Values) -> float:
    rope = -(cmath.rect(v["slanted_pull"], v["pull_elevation"]) - 1j * v["load"])
    return cmath.phase(rope) - pi / 2


ORACLES: dict[str, Callable[[Values], float]] = {
    "weight-of-a-mass": lambda v: v["mass"] * KILOGRAM_FORCE,
    "pounds-force-on-a-cell": lambda v: v["pounds_force"] / round(1000 / POUND_FORCE),
    "kilonewtons-into-kilograms-force": lambda v: v["kilonewtons"] * round(1000 / KILOGRAM_FORCE),
    "level-part-of-a-pull": lambda v: cmath.rect(v["rope_tension"], v["rope_elevation"]).real,
    "resultant-of-two-pulls": lambda v: abs(
        v["first_pull"] + cmath.rect(v["second_pull"], v["pull_angle"])
    ),
    "lean-of-a-rope-pulled-aside": lambda v: atan2(-_rope(v).real, _rope(v).imag),
    "moved-by-a-side-pull": _moved,
    "tension-of-a-rope-pulled-aside": lambda v: hypot(_rope(v).real, _rope(v).imag),
    "pull-from-above": _slanted,
}


@pytest.mark.parametrize("template", forces.QUESTIONS, ids=lambda t: t.key)
def test_every_question_on_forces_has_its_oracle(template: Template) -> None:
    for number in range(20):
        drawn = draw(template, "forces", number)
        assert drawn.answer == pytest.approx(ORACLES[template.key](drawn.values), rel=1e-6)


def test_ten_for_gravity_is_near_enough_to_be_told_and_no_further() -> None:
    for template in (forces.WEIGHT, forces.POUNDS, forces.KILOGRAMS):
        drawn = draw(template, "ten")
        ((_, rough),) = template.approximated(drawn.values)
        margin = template.tolerance.margin(drawn.answer)
        assert margin < abs(rough - drawn.answer) < 2.2 * margin


@pytest.mark.parametrize(
    ("template", "factor"),
    [(forces.POUNDS, POUND_FORCE / 1000), (forces.KILOGRAMS, 1000 / KILOGRAM_FORCE)],
    ids=["pounds", "kilograms"],
)
def test_the_exact_factor_is_marked_right(template: Template, factor: float) -> None:
    drawn = draw(template, "exact")
    (given,) = drawn.values.values()
    assert abs(factor * given - drawn.answer) < 0.2 * template.tolerance.margin(drawn.answer)
