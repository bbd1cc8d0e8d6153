"""The wall, the hub and the litter's place, as several scenarios give them."""

from collections.abc import Callable
from dataclasses import replace

from ropecalc.mechanics import leg_angles
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.questions.template import Template

LOAD = Given(q.LOAD, 1.2, 2.6, 0.01, "kN")
X_D = Given(q.X_D, 0.2, 0.4, 0.1, "m")
Z_D = Given(q.Z_D, 31.5, 32.5, 0.5, "m")
X_B = Given(q.X_B, 35, 45, 1, "m")
Z_B = Given(q.Z_B, 0.0, 1.0, 0.5, "m")
HAUL_ELEVATION = Given(q.HAUL_ELEVATION, 50, 86, 0.1, "°")
GROUND_DEPRESSION = Given(q.GROUND_DEPRESSION, 5, 38, 0.1, "°")


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
    kept = tuple(mistake for mistake in question.mistakes if mistake.key not in keys)
    return replace(question, mistakes=kept, must_pass=False)
