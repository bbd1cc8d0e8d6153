"""The angles of the two legs, from places measured on the cross-section.

::

    z      D             D  haul directional, P  master attachment point, B  hub
    |       *
    |      / alpha       alpha  haul elevation: rise over run from P to D
    |     P - - -        beta   ground depression: fall over run from P to B
    |       ' .  beta
    +-----------'-B- x
"""

from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, Condition, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS

_STRAIGHT = ("Straight ropes between the measured places.",)
_CAUTIONS = (cautions.STATIC, cautions.AUTHORITY)


@derive(
    "Haul elevation, from measured places",
    given=(q.X, q.Z, q.X_D, q.Z_D),
    between=(q.HAUL_SLOPE,),
    result=q.HAUL_ELEVATION,
    assumptions=_STRAIGHT,
    conditions=(
        Condition(
            "The litter must be further out than the haul directional.",
            "Move the litter or the directional.",
            lambda v: v["x"] > v["x_D"],
        ),
        Condition(
            f"The haul line must fall to the litter by more than {FLAT_WORDS}.",
            "Lower the litter or raise the directional.",
            lambda v: np.arctan2(v["z_D"] - v["z"], v["x"] - v["x_D"]) > FLAT,
        ),
    ),
    cautions=_CAUTIONS,
    source="derived here from rise over run",
)
def haul_elevation(argument: Argument) -> Step:
    """Elevation of the haul leg in rad above the horizontal, from coordinates in m."""
    x, z, x_d, z_d = argument.symbols(q.X, q.Z, q.X_D, q.Z_D)
    slope, angle = argument.symbols(q.HAUL_SLOPE, q.HAUL_ELEVATION)
    rise = argument.law(
        "Slope of the haul leg: its rise over its run.", slope, (z_d - z) / (x - x_d)
    )
    return _angle_of(argument, angle, slope, rise)


@derive(
    "Ground depression, from measured places",
    given=(q.X, q.Z, q.X_B, q.Z_B),
    between=(q.GROUND_SLOPE,),
    result=q.GROUND_DEPRESSION,
    assumptions=_STRAIGHT,
    conditions=(
        Condition(
            "The hub must be further out than the litter.",
            "Move the litter or the hub.",
            lambda v: v["x_B"] > v["x"],
        ),
    ),
    cautions=_CAUTIONS,
    source="derived here from fall over run",
)
def ground_depression(argument: Argument) -> Step:
    """Depression of the ground leg in rad below the horizontal; negative for a higher hub."""
    x, z, x_b, z_b = argument.symbols(q.X, q.Z, q.X_B, q.Z_B)
    slope, angle = argument.symbols(q.GROUND_SLOPE, q.GROUND_DEPRESSION)
    fall = argument.law(
        "Slope of the ground leg: its fall over its run.", slope, (z - z_b) / (x_b - x)
    )
    return _angle_of(argument, angle, slope, fall)


def _angle_of(argument: Argument, angle: Any, slope: Any, measured: Step) -> Step:
    """From a leg's slope, which ``measured`` gives by places, to its angle from the horizontal."""
    turned = argument.law(
        "The slope is the tangent of the angle.", argument.sympy.tan(angle), slope
    )
    put_in = argument.substitute("Put the places in.", turned, measured)
    return argument.solved(
        "Take the angle whose tangent that is.", angle, argument.sympy.atan(put_in.equation.rhs)
    )
