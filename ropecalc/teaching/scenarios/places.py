"""The wall, the hub and the litter's place, as several scenarios give them."""

from collections.abc import Callable
from dataclasses import replace
from math import radians

from sympy import pi

from ropecalc.mechanics import guiding, leg_angles
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

LOAD = Given(q.LOAD, 1.2, 2.6, 0.01, "kN")
X_D = Given(q.X_D, 0.2, 0.4, 0.1, "m")
Z_D = Given(q.Z_D, 31.5, 32.5, 0.5, "m")
X_B = Given(q.X_B, 35, 45, 1, "m")
Z_B = Given(q.Z_B, 0.0, 1.0, 0.5, "m")
HAUL_ELEVATION = Given(q.HAUL_ELEVATION, 50, 86, 0.1, "°")
GROUND_DEPRESSION = Given(q.GROUND_DEPRESSION, 5, 38, 0.1, "°")


BETWEEN = Template(
    key="angle-between-the-legs",
    title="The angle between the legs",
    stem=(
        "The haul leg rises {haul_elevation} above the horizontal, back towards the wall, and the "
        "ground leg falls {ground_depression} below it, out towards the hub. What angle do they "
        "make with each other at the litter?"
    ),
    asked="Angle between haul leg and ground leg",
    givens=(HAUL_ELEVATION, GROUND_DEPRESSION),
    derivation=guiding.litter_angle,
    tolerance=Tolerance(absolute=radians(0.5)),
    mistakes=(
        Mistake(
            "angles-added",
            "The two angles added",
            "They lie on opposite sides of the litter. From one leg to the other it is half a "
            "turn, less the haul leg's angle, and the ground leg's on top.",
            lambda v: v.haul_elevation + v.ground_depression,
        ),
        Mistake(
            "difference-of-angles",
            "The difference of the two angles",
            "That is how far the two are from one straight line. The angle between them is what "
            "is left of half a turn.",
            lambda v: v.haul_elevation - v.ground_depression,
        ),
        Mistake(
            "ground-leg-taken-off",
            "The ground leg's angle taken off",
            "The ground leg falls below the horizontal: that opens the angle.",
            lambda v: pi - v.haul_elevation - v.ground_depression,
        ),
    ),
    difficulty=2,
    objective="judge from the angle at the litter how near to a straight line the legs are",
)
"""The question for the angle at the litter; each scenario gives it a key and words of its own."""


def haul_leg(x: str = "x", z: str = "z") -> Callable[[Values], float]:
    """The haul leg's angle that somebody measures with the litter at the places so called."""

    def measured(n: Values) -> float:
        return float(leg_angles.haul_elevation(x=n[x], z=n[z], x_D=n["x_D"], z_D=n["z_D"]))

    return measured


def ground_leg(x: str = "x", z: str = "z") -> Callable[[Values], float]:
    """The ground leg's angle that somebody measures with the litter at the places so called."""

    def measured(n: Values) -> float:
        return float(leg_angles.ground_depression(x=n[x], z=n[z], x_B=n["x_B"], z_B=n["z_B"]))

    return measured


def without(question: Template, *keys: str) -> Template:
    """``question`` without the mistakes so called: here they would give what others give."""
    return replace(question, mistakes=mistakes_of(question, *keys), must_pass=False)


def mistakes_of(question: Template, *but: str) -> tuple[Mistake, ...]:
    """The mistakes of ``question`` but for those so called."""
    return tuple(mistake for mistake in question.mistakes if mistake.key not in but)
