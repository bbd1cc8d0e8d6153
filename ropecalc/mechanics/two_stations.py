"""Two places of one raise compared: how tensions differ, and how much rope goes in or out.

::

    z   D,A
    |    *             D  haul directional, A  track directional
    |    2 .           1, 2  two places of the litter's master attachment point
    |   /     .        B  hub
    |  1 .      .
    |      ` ' . .
    +------------'-B- x
"""

from collections.abc import Mapping
from typing import Any

from ropecalc import cautions
from ropecalc.derivation import (
    ANY,
    NOT_NEGATIVE,
    POSITIVE,
    Argument,
    Condition,
    Range,
    Step,
    Variable,
    derive,
)
from ropecalc.mechanics import guiding
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.raise_limits import STATIONS
from ropecalc.units import Kind

(X_1, Z_1), (X_2, Z_2) = STATIONS[:2]
LOW_HEIGHT = named(q.Z, "z_1", "height of the litter at the lower place", "z_1")
HIGH_HEIGHT = named(q.Z, "z_2", "height of the litter at the higher place", "z_2")
TENSION_RATIO = Variable(
    "tension_ratio", r"q_\mathrm{T}", "tension at the second place over that at the first",
    Kind.RATIO, POSITIVE, Range(1, 15, 9),
)  # fmt: skip
MOVED_OUT = Variable(
    "moved_out", r"m_\mathrm{out}", "how far the directional is moved outward", Kind.LENGTH,
    NOT_NEGATIVE, Range(0.1, 1, 0.5),
)  # fmt: skip
NEW_PLACE = named(q.X_D, "new_x_D", "distance of the moved directional out from the wall", "x_D'")
TAKEN_IN = Variable(
    "taken_in", r"\Delta_\mathrm{T}", "length of each track line taken in between the two places",
    Kind.LENGTH, ANY, Range(-5, 25, 12),
)  # fmt: skip
PAID_OUT = Variable(
    "paid_out", r"\Delta_\mathrm{G}", "length of tag line paid out between the two places",
    Kind.LENGTH, ANY, Range(-5, 25, 12),
)  # fmt: skip
CLIFF = Variable(
    "cliff", r"h_\mathrm{top}", "height of the directional above the foot of the wall",
    Kind.LENGTH, POSITIVE, Range(10, 60, 30),
)  # fmt: skip
HUB_DISTANCE = Variable(
    "hub_distance", "d_B", "distance of the hub from the foot of the wall", Kind.LENGTH, POSITIVE,
    Range(15, 80, 40),
)  # fmt: skip

_STRAIGHT = ("Straight ropes that do not stretch.",)


def _slopes(number: int) -> tuple[Variable, Variable]:
    return (
        named(
            q.HAUL_SLOPE,
            f"haul_slope_{number}",
            f"slope of the haul leg at place {number}",
            f"u_{number}",
        ),
        named(
            q.GROUND_SLOPE,
            f"ground_slope_{number}",
            f"slope of the ground leg at place {number}",
            f"d_{number}",
        ),
    )


def _at_both(condition: Condition) -> Condition:
    """A condition on the litter's height, asked for at both."""

    def holds(v: Mapping[str, Any]) -> Any:
        low, high = (condition.holds({**v, "z": v[z.name]}) for z in (LOW_HEIGHT, HIGH_HEIGHT))
        return low & high

    return Condition(condition.sentence, condition.remedy, holds)


def _with_moved_directional(condition: Condition) -> Condition:
    def holds(v: Mapping[str, Any]) -> Any:
        return condition.holds({**v, "x_D": v["x_D"] + v["moved_out"]})

    return Condition(condition.sentence, condition.remedy, holds)


# --- tensions ----------------------------------------------------------------------------------


@derive(
    "The same distance out at two heights",
    given=(q.X, LOW_HEIGHT, HIGH_HEIGHT, q.X_D, q.Z_D, q.X_B, q.Z_B),
    between=(*_slopes(1), *_slopes(2)),
    result=TENSION_RATIO,
    assumptions=guiding.line_tension_from_places.assumptions,
    conditions=tuple(map(_at_both, guiding.line_tension_from_places.conditions)),
    cautions=guiding.line_tension_from_places.cautions,
    source="derived here from the tension at measured places",
)
def tension_ratio(argument: Argument) -> Step:
    """How many times the tension at the lower place is needed at the higher, as far out: a number.

    Of a tag line, or of track lines from the haul directional. The weight drops out.
    """
    x, low, high, x_d, z_d, x_b, z_b = argument.symbols(
        q.X, LOW_HEIGHT, HIGH_HEIGHT, q.X_D, q.Z_D, q.X_B, q.Z_B
    )
    slopes, shares = [], []
    for number, z in ((1, low), (2, high)):
        up, down = argument.symbols(*_slopes(number))
        slopes += [
            argument.law(
                f"Place {number}: the haul leg's rise over its run.", up, (z_d - z) / (x - x_d)
            ),
            argument.law(
                f"Place {number}: the ground leg's fall over its run.", down, (z - z_b) / (x_b - x)
            ),
        ]
        shares.append(argument.sympy.sqrt(1 + down**2) / (up - down))
    compared = argument.law(
        "Each place asks for a share of the weight that its slopes give (see tension from measured "
        "places). Compare the higher with the lower: the weight drops out.",
        argument.symbol(TENSION_RATIO),
        shares[1] / shares[0],
    )
    return argument.substitute("Put the slopes in.", compared, *slopes)


@derive(
    "Tension after the directional is moved outward",
    given=(q.LOAD, q.X, q.Z, q.X_D, MOVED_OUT, q.Z_D, q.X_B, q.Z_B),
    between=(NEW_PLACE, q.HAUL_SLOPE, q.GROUND_SLOPE),
    result=q.LINE_TENSION,
    assumptions=(
        *guiding.line_tension_from_places.assumptions,
        "Haul line and track lines move with the directional.",
    ),
    conditions=tuple(map(_with_moved_directional, guiding.line_tension_from_places.conditions)),
    cautions=(
        "A head that reaches further out tips over more readily.",
        *guiding.line_tension_from_places.cautions,
    ),
    source="derived here from the tension at measured places",
)
def tension_directional_moved(argument: Argument) -> Step:
    """Tension in N of the line to the hub once the directional stands ``moved_out`` m further out.

    The litter stays at the same place: it is then less far out from plumb below the directional.
    """
    load, x, z, z_d, x_b, z_b = argument.symbols(q.LOAD, q.X, q.Z, q.Z_D, q.X_B, q.Z_B)
    place, up, down = argument.symbols(NEW_PLACE, q.HAUL_SLOPE, q.GROUND_SLOPE)
    moved = argument.law(
        "The directional stands further out by as much as it is moved.",
        place,
        argument.symbol(q.X_D) + argument.symbol(MOVED_OUT),
    )
    above = argument.law(
        "Slope of the haul leg: its rise over its new run.", up, (z_d - z) / (x - place)
    )
    below = argument.law(
        "Slope of the ground leg: its fall over its run.", down, (z - z_b) / (x_b - x)
    )
    tension = argument.law(
        "The tension that these slopes give (see tension from measured places).",
        argument.symbol(q.LINE_TENSION),
        load * argument.sympy.sqrt(1 + down**2) / (up - down),
    )
    put_in = argument.substitute("Put the slopes in.", tension, above, below)
    return argument.substitute("Put the moved directional in.", put_in, moved)


# --- rope --------------------------------------------------------------------------------------


def _leg(number: int, of: str) -> Variable:
    return named(
        q.TRACK_LENGTH if of == "track line" else q.TAG_LENGTH,
        f"length_{number}",
        f"length of the {of} at place {number}",
        rf"\ell_{number}",
    )


@derive(
    "Track rope taken in between two places",
    given=(X_1, Z_1, X_2, Z_2, q.X_A, q.Z_A, q.X_B, q.Z_B),
    between=(_leg(1, "track line"), _leg(2, "track line")),
    result=TAKEN_IN,
    assumptions=_STRAIGHT,
    cautions=("A line that stretches needs more to be taken in.", *cautions.EVERY_RESULT),
    source="derived here from Pythagoras",
)
def track_taken_in(argument: Argument) -> Step:
    """Length in m of each track line taken in from place 1 to place 2; negative: paid out.

    That is the play of each line. How the litter gets from one place to the other does not matter.
    """
    x_a, z_a, x_b, z_b = argument.symbols(q.X_A, q.Z_A, q.X_B, q.Z_B)
    sqrt = argument.sympy.sqrt
    lengths = []
    for number, place in ((1, (X_1, Z_1)), (2, (X_2, Z_2))):
        x, z = argument.symbols(*place)
        lengths.append(
            argument.law(
                f"Place {number}: upper leg and ground leg together (Pythagoras).",
                argument.symbol(_leg(number, "track line")),
                sqrt((x_a - x) ** 2 + (z_a - z) ** 2) + sqrt((x_b - x) ** 2 + (z_b - z) ** 2),
            )
        )
    shorter = argument.law(
        "What is no longer needed has to be taken in.",
        argument.symbol(TAKEN_IN),
        argument.symbol(_leg(1, "track line")) - argument.symbol(_leg(2, "track line")),
    )
    return argument.substitute("Put both lengths in.", shorter, *lengths)


@derive(
    "Quick estimate of the track rope to take in",
    given=(CLIFF, HUB_DISTANCE),
    result=TAKEN_IN,
    assumptions=(
        *_STRAIGHT,
        "The litter starts at the foot of the wall and ends at the directional.",
        "The hub is level with the foot of the wall, the directional plumb above it.",
    ),
    cautions=("A line that stretches needs more to be taken in.", *cautions.EVERY_RESULT),
    source="derived here from Pythagoras",
)
def quick_play(argument: Argument) -> Step:
    """Length in m of each track line taken in over a whole raise up a plumb wall."""
    cliff, hub, taken_in = argument.symbols(CLIFF, HUB_DISTANCE, TAKEN_IN)
    return argument.law(
        "At the foot the rope runs down the wall and along the ground; at the directional it runs "
        "straight to the hub (Pythagoras). Two sides of a triangle less the third.",
        taken_in,
        cliff + hub - argument.sympy.sqrt(cliff**2 + hub**2),
    )


@derive(
    "Tag line paid out between two places",
    given=(X_1, Z_1, X_2, Z_2, q.X_B, q.Z_B),
    between=(_leg(1, "tag line"), _leg(2, "tag line")),
    result=PAID_OUT,
    assumptions=_STRAIGHT,
    source="derived here from Pythagoras",
)
def tag_paid_out(argument: Argument) -> Step:
    """Length in m of tag line paid out from place 1 to place 2; negative: pulled in."""
    x_b, z_b = argument.symbols(q.X_B, q.Z_B)
    lengths = []
    for number, place in ((1, (X_1, Z_1)), (2, (X_2, Z_2))):
        x, z = argument.symbols(*place)
        lengths.append(
            argument.law(
                f"Place {number}: one straight leg to the hub (Pythagoras).",
                argument.symbol(_leg(number, "tag line")),
                argument.sympy.sqrt((x_b - x) ** 2 + (z_b - z) ** 2),
            )
        )
    longer = argument.law(
        "What is needed more has to be paid out.",
        argument.symbol(PAID_OUT),
        argument.symbol(_leg(2, "tag line")) - argument.symbol(_leg(1, "tag line")),
    )
    return argument.substitute("Put both lengths in.", longer, *lengths)
