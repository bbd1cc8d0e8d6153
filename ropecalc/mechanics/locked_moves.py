"""Raised or lowered against a locked tensioner: where the litter ends, and the tension there.

::

     D                       Haul line and track line come from one directional D. The track rope
      `.                     past the litter to the hub B keeps its length, so the litter moves on
        2   - .              an ellipse about D and B: in while it is raised, out while it is
       1      ' - .  B       lowered. Ropes do not stretch here; a rope that does moves the litter
        '  ' - . . . - '     less and carries less.
"""

from collections.abc import Mapping
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import POSITIVE, Argument, Condition, Range, Step, Variable, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.locked import OUT_BEFORE_DOWN
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS
from ropecalc.mechanics.two_stations import X_1, Z_1
from ropecalc.units import Kind

RAISED = named(q.RISE, "raised", "height by which the litter is raised", r"r_\mathrm{up}")
LOWERED = named(q.RISE, "lowered", "height by which the litter is lowered", r"r_\mathrm{down}")
HUB_RUN = Variable(
    "hub_run", "b", "distance of the hub out from plumb below the directional", Kind.LENGTH,
    POSITIVE, Range(30, 80, 40),
)  # fmt: skip
HUB_FALL = Variable(
    "hub_fall", r"f_\mathrm{hub}", "depth of the hub below the directional", Kind.LENGTH, POSITIVE,
    Range(25, 36, 31),
)  # fmt: skip
NEW_DROP = named(q.DROP, "new_drop", "height of the directional above the litter afterwards", "h_2")
NEW_OFF_PLUMB = named(
    q.OFF_PLUMB, "new_off_plumb", "distance of the litter out from plumb afterwards", "q_2"
)
NEW_X = named(q.X, "x_2", "distance of the litter out from the wall afterwards", "x_2")
NEW_Z = named(q.Z, "z_2", "height of the litter afterwards", "z_2")
_ENDS = (q.X_D, q.Z_D, q.X_B, q.Z_B)
_LOCKED = (
    "The tensioner is locked: the track rope from its directional to the hub keeps its length.",
    "Haul line and track line come from the same directional.",
    "Straight ropes that do not stretch.",
)
_CAUTIONS = (
    OUT_BEFORE_DOWN,
    "A rope that stretches moves the litter less and carries less: the direction is sure, the "
    "size is not.",
    cautions.NEAR_DIRECTIONAL,
    cautions.COMMON_HUB,
    *cautions.EVERY_RESULT,
)


def _far(v: Mapping[str, Any], x: Any, z: Any) -> Any:
    """Track rope in m that a litter at ``x``, ``z`` needs."""
    return np.hypot(x - v["x_D"], v["z_D"] - z) + np.hypot(v["x_B"] - x, z - v["z_B"])


def _locked_length(v: Mapping[str, Any]) -> Any:
    return _far(v, v["x_1"], v["z_1"])


def _lower(v: Mapping[str, Any]) -> Any:
    return v["drop"] + v["lowered"]


def _length(v: Mapping[str, Any]) -> Any:
    """The locked track rope in m, from places measured from the directional."""
    off, drop = v["off_plumb"], v["drop"]
    return np.hypot(off, drop) + np.hypot(v["hub_run"] - off, v["hub_fall"] - drop)


def _new_height(v: Mapping[str, Any]) -> Any:
    return v["z_1"] + v["raised"]


_SIDES = Condition(
    "The litter must be further out than the directional and not as far out as the hub.",
    "Move the litter, the directional or the hub.",
    lambda v: (v["x_1"] > v["x_D"]) & (v["x_1"] < v["x_B"]),
)
_BELOW = Condition(
    "The litter must be below the directional, before and afterwards.",
    "Change the height or the directional.",
    lambda v: np.maximum(v["z_1"], _new_height(v)) < v["z_D"],
)
_HELD = Condition(
    "The litter must be inside the straight line from the directional to the hub; no tension holds "
    f"it on that line, within {FLAT_WORDS} of it, or beyond.",
    "Bring the litter closer in, or move the directional or the hub further out.",
    lambda v: (
        np.arctan2(v["z_D"] - v["z_1"], v["x_1"] - v["x_D"])
        - np.arctan2(v["z_1"] - v["z_B"], v["x_B"] - v["x_1"])
        > FLAT
    ),
)
_TIGHT = Condition(
    "So far up the track line is slack and the litter hangs plumb.",
    "Raise it less, or take in.",
    lambda v: _far(v, v["x_D"], _new_height(v)) > _locked_length(v),
)
_SHORT_OF_LINE = Condition(
    "Before it is lowered the litter must be inside the straight line from the directional to the "
    f"hub; no tension holds it on that line, within {FLAT_WORDS} of it, or beyond.",
    "Bring the litter closer in, or move the directional or the hub further out.",
    lambda v: (
        np.arctan2(v["drop"], v["off_plumb"])
        - np.arctan2(v["hub_fall"] - v["drop"], v["hub_run"] - v["off_plumb"])
        > FLAT
    ),
)
_HUB_BEYOND = Condition(
    "The litter must not be as far out as the hub.",
    "Move the litter or the hub.",
    lambda v: v["off_plumb"] < v["hub_run"],
)
_IN_REACH = Condition(
    "The litter cannot be lowered so far: the track line alone carries it before it gets there.",
    "Lower it less, or let the tensioner out.",
    lambda v: (2 * _lower(v) - v["hub_fall"]) ** 2 < _length(v) ** 2 - v["hub_run"] ** 2,
)


@derive(
    "Raised against a locked tensioner",
    given=(X_1, Z_1, RAISED, *_ENDS),
    between=(q.TRACK_LENGTH, NEW_Z),
    result=NEW_X,
    assumptions=_LOCKED,
    conditions=(_SIDES, _BELOW, _HELD, _TIGHT),
    cautions=_CAUTIONS,
    source="derived here from Pythagoras: the ellipse about directional and hub",
)
def raised_offset(argument: Argument) -> Step:
    """Distance in m out from the wall once the litter is raised against a locked tensioner.

    Always less than before, and less than for a rope that stretches. So this is what clearance
    from the wall may count on.
    """
    x_1, z_1, x_d, z_d, x_b, z_b = argument.symbols(X_1, Z_1, *_ENDS)
    length, x, z = argument.symbols(q.TRACK_LENGTH, NEW_X, NEW_Z)
    sqrt = argument.sympy.sqrt
    rope = argument.law(
        "The track rope at the place where the tensioner is locked: both legs (Pythagoras).",
        length,
        sqrt((x_1 - x_d) ** 2 + (z_d - z_1) ** 2) + sqrt((x_b - x_1) ** 2 + (z_1 - z_b) ** 2),
    )
    height = argument.law("The height afterwards.", z, z_1 + argument.symbol(RAISED))
    argument.law(
        "Both legs afterwards are as long together as before.",
        sqrt((x - x_d) ** 2 + (z_d - z) ** 2) + sqrt((x_b - x) ** 2 + (z - z_b) ** 2),
        length,
    )
    wide, high, off_middle = x_b - x_d, z_d - z_b, 2 * z - z_d - z_b
    root = sqrt((length**2 - wide**2 - high**2) * (length**2 - wide**2 - off_middle**2))
    out = argument.solved(
        "Solve for the distance out, on the side that faces the wall (see where the litter is at a "
        "height, tensioner locked).",
        x,
        (x_d + x_b) / 2 - (wide * high * off_middle + length * root) / (2 * (length**2 - wide**2)),
    )
    return argument.substitute("Put the height and the rope's length in.", out, height, rope)


@derive(
    "Track tension, lowered against a locked tensioner",
    given=(q.LOAD, q.OFF_PLUMB, q.DROP, LOWERED, HUB_RUN, HUB_FALL),
    between=(q.TRACK_LENGTH, NEW_DROP, NEW_OFF_PLUMB, q.GROUND_LEG_LENGTH),
    result=q.TRACK_TENSION,
    assumptions=_LOCKED,
    conditions=(_HUB_BEYOND, _SHORT_OF_LINE, _IN_REACH),
    cautions=_CAUTIONS,
    source="derived here from the ellipse about directional and hub, and from moments",
)
def lowered_tension(argument: Argument) -> Step:
    """Tension in N of the track lines once the litter is lowered against a locked tensioner.

    All places are measured from the directional. An upper bound where the tension rises: a rope
    that stretches carries less.
    """
    off, drop, wide, high = argument.symbols(q.OFF_PLUMB, q.DROP, HUB_RUN, HUB_FALL)
    length, ground = argument.symbols(q.TRACK_LENGTH, q.GROUND_LEG_LENGTH)
    low, out = argument.symbols(NEW_DROP, NEW_OFF_PLUMB)
    sqrt = argument.sympy.sqrt
    rope = argument.law(
        "The track rope at the place where the tensioner is locked: both legs (Pythagoras).",
        length,
        sqrt(off**2 + drop**2) + sqrt((wide - off) ** 2 + (high - drop) ** 2),
    )
    lower = argument.law(
        "Afterwards the litter is lower by as much.", low, drop + argument.symbol(LOWERED)
    )
    leg = argument.law(
        "The ground leg afterwards (Pythagoras).",
        ground,
        sqrt((wide - out) ** 2 + (high - low) ** 2),
    )
    argument.law(
        "With the upper leg it is as long as the rope was before.",
        sqrt(out**2 + low**2) + ground,
        length,
    )
    room, off_middle = length**2 - wide**2, 2 * low - high
    place = argument.solved(
        "Solve for the distance out, on the side that faces the wall (see where the litter is at a "
        "height, tensioner locked).",
        out,
        wide / 2
        + (wide * high * off_middle - length * sqrt((room - high**2) * (room - off_middle**2)))
        / (2 * room),
    )
    turning = argument.law(
        "The pull along the ground leg and the weight turn equally about the directional, through "
        "which the other pulls pass. Both sides are multiplied by the ground leg.",
        argument.symbol(q.TRACK_TENSION) * (wide * low - high * out),
        argument.symbol(q.LOAD) * out * ground,
    )
    tension = argument.solve("Solve for the tension.", turning, argument.symbol(q.TRACK_TENSION))
    legs = argument.substitute("Put the ground leg in.", tension, leg)
    placed = argument.substitute("Put the distance out in.", legs, place)
    return argument.substitute("Put the drop and the rope's length in.", placed, lower, rope)
