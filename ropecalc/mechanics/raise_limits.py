"""What a plan hands to the people who run it: rope for the track lines, and where to stop.

::

    tie-off ---- directional          One track line runs from its tie-off over the directional,
                     `.               past the litter and out towards the hub. It ends at its rope
                       P              grab, short of the hub by the gap; its tail goes on to an
                         ` . grab     anchor of its own.
                              ` - [] - hub
"""

from collections.abc import Mapping
from typing import Any

from ropecalc import cautions
from ropecalc.derivation import (
    NOT_NEGATIVE,
    Argument,
    Condition,
    Range,
    Step,
    Variable,
    derive,
)
from ropecalc.mechanics import guiding, strength
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.units import Kind

SETBACK = Variable(
    "setback", r"\ell_\mathrm{back}", "from the tie-off to the directional", Kind.LENGTH,
    NOT_NEGATIVE, Range(4, 20, 8),
)  # fmt: skip
GAP = Variable(
    "gap", r"\ell_\mathrm{gap}", "from the rope grab to the hub while the line is longest",
    Kind.LENGTH, NOT_NEGATIVE, Range(2, 15, 6),
)  # fmt: skip
LINE_TAIL = Variable(
    "line_tail", r"\ell_\mathrm{tail}", "tail beyond the rope grab", Kind.LENGTH,
    NOT_NEGATIVE, Range(4, 20, 10),
)  # fmt: skip
LINE_ROPE = named(q.TRACK_LENGTH, "line_rope", "length of rope for one line", r"\ell_\mathrm{line}")


@derive(
    "Rope for one track line",
    given=(SETBACK, q.TRACK_LENGTH, GAP, LINE_TAIL),
    result=LINE_ROPE,
    assumptions=(
        "The length past the litter is the longest of the whole raise.",
        "The rope grab takes the line at its longest; later it comes nearer to the hub.",
    ),
    cautions=(
        "Knots, bends and a tail that is tied back take rope as well.",
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    source="derived here by following the rope",
)
def track_rope(argument: Argument) -> Step:
    """Length in m of the rope for one track line, tail included."""
    back, past, gap, tail = argument.symbols(SETBACK, q.TRACK_LENGTH, GAP, LINE_TAIL)
    return argument.law(
        "Follow the rope: to the directional, past the litter towards the hub, but only up to the "
        "grab, and on to the end of its tail.",
        argument.symbol(LINE_ROPE),
        back + past - gap + tail,
    )


stop_value = strength.margin.solved_for("component_load")
"""The load in N of a component at which the margin that was asked for is used up."""


# --- the station that governs ------------------------------------------------------------------

_NUMBERS = (1, 2, 3)
STATIONS = tuple(
    (
        named(q.X, f"x_{i}", f"offset of the litter at station {i}", f"x_{i}"),
        named(q.Z, f"z_{i}", f"height of the litter at station {i}", f"z_{i}"),
    )
    for i in _NUMBERS
)
"""Offset and height of the litter at each of three stations."""
_SLOPES = tuple(
    (
        named(q.HAUL_SLOPE, f"haul_slope_{i}", f"slope of the haul leg at station {i}", f"u_{i}"),
        named(
            q.GROUND_SLOPE, f"ground_slope_{i}", f"slope of the ground leg at station {i}", f"d_{i}"
        ),
    )
    for i in _NUMBERS
)
GOVERNING = named(q.LINE_TENSION, "governing", "largest tension of all stations", r"T_\mathrm{gov}")


def _at_each(condition: Condition) -> Condition:
    """A condition on the litter's place, asked for at every station."""

    def holds(v: Mapping[str, Any]) -> Any:
        met = [condition.holds({**v, "x": v[x.name], "z": v[z.name]}) for x, z in STATIONS]
        return met[0] & met[1] & met[2]

    return Condition(condition.sentence, condition.remedy, holds)


@derive(
    "The station that governs, of three",
    given=(
        q.LOAD,
        *(place for station in STATIONS for place in station),
        q.X_D,
        q.Z_D,
        q.X_B,
        q.Z_B,
    ),
    between=tuple(slope for pair in _SLOPES for slope in pair),
    result=GOVERNING,
    assumptions=guiding.line_tension_from_places.assumptions,
    conditions=tuple(map(_at_each, guiding.line_tension_from_places.conditions)),
    cautions=guiding.line_tension_from_places.cautions,
    source="derived here from the tension at measured places",
)
def governing_tension(argument: Argument) -> Step:
    """Largest tension in N of the line to the hub over three stations of a raise."""
    load, x_d, z_d, x_b, z_b = argument.symbols(q.LOAD, q.X_D, q.Z_D, q.X_B, q.Z_B)
    legs, tensions = [], []
    for number, (place, slopes) in enumerate(zip(STATIONS, _SLOPES, strict=True), 1):
        x, z = argument.symbols(*place)
        up, down = argument.symbols(*slopes)
        legs += [
            argument.law(f"Station {number}: the haul leg.", up, (z_d - z) / (x - x_d)),
            argument.law(f"Station {number}: the ground leg.", down, (z - z_b) / (x_b - x)),
        ]
        tensions.append(load * argument.sympy.sqrt(1 + down**2) / (up - down))

    def larger(a: Any, b: Any) -> Any:
        """Half of their sum and half of their difference."""
        return (a + b + argument.sympy.Abs(a - b)) / 2

    first, second, third = tensions
    largest = argument.law(
        "Each station asks for the tension that its slopes give (see tension from measured "
        "places). Everything has to hold the largest.",
        argument.symbol(GOVERNING),
        larger(larger(first, second), third),
    )
    return argument.substitute("Put the slopes in.", largest, *legs)
