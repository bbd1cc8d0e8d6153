"""Holding a litter off the wall: attendant, tag line, track lines.

::

    z      D,A
    |       *            D  haul directional, A  track directional (often the same place)
    |      / alpha       P  master attachment point of the litter, weight W
    |     P - - -        alpha  haul elevation, beta  ground depression
    |       ' .  beta    B  hub
    +-----------'-B- x

The litter hangs from the haul line. Something has to supply the horizontal force that keeps it
off the rock: an attendant's legs, a tag line to the ground, or track lines that run from a
directional down through a pulley at the litter and out to the hub. Friction is left out here.
"""

from operator import sub, truediv

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, Condition, Step, Variable, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS

_LINES = (cautions.NEAR_DIRECTIONAL, cautions.COMMON_HUB)
_GUIDED = (*_LINES, *cautions.EVERY_RESULT)
_AT_P = "Haul line, guiding line and weight meet at the master attachment point."
_TAG = (_AT_P, "The tag line is straight and tied at that point.")
_TRACK = (
    _AT_P,
    "The track lines run freely through the litter's pulley: equal tension on both sides.",
    "Haul line and track lines come from the same high directional.",
)
LEGS_OPEN = Condition(
    f"The haul leg must be steeper than the ground leg by more than {FLAT_WORDS}, or the two are "
    "on one straight line and no tension holds the litter there.",
    "Bring the litter closer in, or move the directional or the hub further out.",
    lambda v: v["haul_elevation"] - v["ground_depression"] > FLAT,
)
HAUL_SLOPES = Condition(
    f"The haul line must fall to the litter by more than {FLAT_WORDS}; a level line lifts nothing.",
    "Lower the litter or raise the directional.",
    lambda v: np.arctan2(v["drop"], v["off_plumb"]) > FLAT,
)
_BELOW = Condition(
    "The litter must be below the haul directional.",
    "Lower the litter or raise the directional.",
    lambda v: v["z"] < v["z_D"],
)
_SIDES = Condition(
    "The litter must be further out than the haul directional and not as far out as the hub.",
    "Move the litter, the directional or the hub.",
    lambda v: (v["x"] > v["x_D"]) & (v["x"] < v["x_B"]),
)
_SHORT_OF_LINE = Condition(
    "The litter must be inside the straight line from the haul directional to the hub; no tension "
    f"holds it on that line, within {FLAT_WORDS} of it, or beyond.",
    "Bring the litter closer in, or move the directional or the hub further out.",
    lambda v: (
        np.arctan2(v["z_D"] - v["z"], v["x"] - v["x_D"])
        - np.arctan2(v["z"] - v["z_B"], v["x_B"] - v["x"])
        > FLAT
    ),
)


# --- attendant -----------------------------------------------------------------------------


def _attendant_balance(argument: Argument) -> tuple[Step, Step, Step]:
    load, off, drop = argument.symbols(q.LOAD, q.OFF_PLUMB, q.DROP)
    angle, tension, push = argument.symbols(q.PLUMB_ANGLE, q.HAUL_TENSION, q.PUSH)
    sin, cos, tan = argument.sympy.sin, argument.sympy.cos, argument.sympy.tan
    sideways = argument.law(
        "Sideways balance: the leaning haul line pulls in as hard as the attendant pushes out.",
        tension * sin(angle),
        push,
    )
    upward = argument.law(
        "Upward balance: the push is level, so the haul line carries the whole weight.",
        tension * cos(angle),
        load,
    )
    lean = argument.law(
        "The lean of the haul line: distance off plumb over the height of the directional above.",
        tan(angle),
        off / drop,
    )
    return sideways, upward, lean


_PUSHES = ("The attendant pushes level.", "The haul line is straight from the directional.")
_PUSH_CAUTIONS = (cautions.ATTENDANT_LIMITS, *cautions.EVERY_RESULT)


@derive(
    "Attendant: push needed to hold the litter off",
    given=(q.LOAD, q.OFF_PLUMB, q.DROP),
    between=(q.PLUMB_ANGLE, q.HAUL_TENSION),
    result=q.PUSH,
    assumptions=_PUSHES,
    conditions=(HAUL_SLOPES,),
    cautions=_PUSH_CAUTIONS,
)
def attendant_push(argument: Argument) -> Step:
    """Push N in N, level and outward, that holds the load W a distance q off plumb."""
    angle, push = argument.symbols(q.PLUMB_ANGLE, q.PUSH)
    sideways, upward, lean = _attendant_balance(argument)
    ratio = argument.combine(
        "Divide the first by the second: the haul tension drops out.", truediv, sideways, upward
    )
    slope = argument.rewrite(
        "Sine over cosine is the tangent.", ratio, left=argument.sympy.tan(angle)
    )
    both = argument.combine("Both describe the same lean.", sub, slope, lean, called="subtract")
    return argument.solve("Solve for the push.", both, push)


@derive(
    "Attendant: tension of the haul line",
    given=(q.LOAD, q.OFF_PLUMB, q.DROP),
    between=(q.PLUMB_ANGLE, q.PUSH),
    result=q.HAUL_TENSION,
    assumptions=_PUSHES,
    conditions=(HAUL_SLOPES,),
    cautions=_PUSH_CAUTIONS,
)
def attendant_haul_tension(argument: Argument) -> Step:
    """Haul tension in N while an attendant holds the load a distance q off plumb."""
    off, drop = argument.symbols(q.OFF_PLUMB, q.DROP)
    angle, tension = argument.symbols(q.PLUMB_ANGLE, q.HAUL_TENSION)
    atan = argument.sympy.atan
    _, upward, _ = _attendant_balance(argument)
    turned = argument.solved("So the angle of lean is known.", angle, atan(off / drop))
    carried = argument.solve("The haul tension follows from the upward balance.", upward, tension)
    return argument.substitute("Put the lean in.", carried, turned)


# --- one line to the ground ------------------------------------------------------------------


def _tag_balance(argument: Argument) -> list[Step]:
    load, up, down = argument.symbols(q.LOAD, q.HAUL_ELEVATION, q.GROUND_DEPRESSION)
    haul, tag = argument.symbols(q.HAUL_TENSION, q.TAG_TENSION)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    sideways = argument.law(
        "Sideways balance: the haul line pulls in as hard as the tag line pulls out.",
        haul * cos(up),
        tag * cos(down),
    )
    upward = argument.law(
        "Upward balance: the haul line carries the weight and the tag line's downward pull.",
        haul * sin(up) - tag * sin(down),
        load,
    )
    return [sideways, upward]


def _eliminate(argument: Argument, balances: list[Step], wanted: Variable, other: Variable) -> Step:
    """Express ``other`` by ``wanted`` with the sideways balance and put it into the upward one."""
    sideways, upward = balances
    expressed = argument.solve(
        f"Express the {other.meaning} by the {wanted.meaning}.", sideways, argument.symbol(other)
    )
    put_in = argument.substitute("Put it into the upward balance.", upward, expressed)
    return argument.solve(f"Solve for the {wanted.meaning}.", put_in, argument.symbol(wanted))


_ANGLES = (q.LOAD, q.HAUL_ELEVATION, q.GROUND_DEPRESSION)


@derive(
    "Tag line: its tension",
    given=_ANGLES,
    between=(q.HAUL_TENSION,),
    result=q.TAG_TENSION,
    assumptions=_TAG,
    conditions=(LEGS_OPEN,),
    cautions=_GUIDED,
)
def tag_tension(argument: Argument) -> Step:
    """Tag tension in N that holds the litter where the two legs make these angles."""
    load, up, down = argument.symbols(*_ANGLES)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    found = _eliminate(argument, _tag_balance(argument), q.TAG_TENSION, q.HAUL_TENSION)
    return argument.rewrite(
        "Bring the fractions together (sine of a difference).",
        found,
        load * cos(up) / sin(up - down),
    )


@derive(
    "Tag line: tension of the haul line that works against it",
    given=_ANGLES,
    between=(q.TAG_TENSION,),
    result=q.HAUL_TENSION,
    assumptions=_TAG,
    conditions=(LEGS_OPEN,),
    cautions=_GUIDED,
)
def haul_tension_with_tag(argument: Argument) -> Step:
    """Haul tension in N against a tag line; never below the weight while the hub is lower."""
    load, up, down = argument.symbols(*_ANGLES)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    found = _eliminate(argument, _tag_balance(argument), q.HAUL_TENSION, q.TAG_TENSION)
    return argument.rewrite(
        "Bring the fractions together (sine of a difference).",
        found,
        load * cos(down) / sin(up - down),
    )


# --- track lines from the same directional ---------------------------------------------------


def _track_balance(argument: Argument, track_leg: Variable = q.HAUL_ELEVATION) -> list[Step]:
    load, up, down = argument.symbols(*_ANGLES)
    leg = argument.symbol(track_leg)
    haul, track = argument.symbols(q.HAUL_TENSION, q.TRACK_TENSION)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    sideways = argument.law(
        "Sideways balance: haul line and upper track leg pull in, the ground leg pulls out.",
        haul * cos(up) + track * cos(leg),
        track * cos(down),
    )
    upward = argument.law(
        "Upward balance: haul line and upper track leg lift, the ground leg pulls down.",
        haul * sin(up) + track * sin(leg) - track * sin(down),
        load,
    )
    return [sideways, upward]


@derive(
    "Track lines: their tension together",
    given=_ANGLES,
    between=(q.HAUL_TENSION,),
    result=q.TRACK_TENSION,
    assumptions=_TRACK,
    conditions=(LEGS_OPEN,),
    cautions=_GUIDED,
)
def track_tension(argument: Argument) -> Step:
    """Tension in N of all track lines together, for legs at these angles."""
    load, up, down = argument.symbols(*_ANGLES)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    found = _eliminate(argument, _track_balance(argument), q.TRACK_TENSION, q.HAUL_TENSION)
    return argument.rewrite(
        "Bring the fractions together (sine of a difference).",
        found,
        load * cos(up) / sin(up - down),
    )


@derive(
    "Track lines: tension of the haul line beside them",
    given=_ANGLES,
    between=(q.TRACK_TENSION,),
    result=q.HAUL_TENSION,
    assumptions=_TRACK,
    conditions=(
        LEGS_OPEN,
        Condition(
            "The hub must not be higher above the litter than the directional is, measured as "
            "angles; there the haul line would go slack.",
            "Lower the hub or the litter.",
            lambda v: v["haul_elevation"] + v["ground_depression"] >= 0,
        ),
    ),
    cautions=_GUIDED,
)
def haul_tension_with_track(argument: Argument) -> Step:
    """Haul tension in N beside track lines; never above the weight."""
    load, up, down = argument.symbols(*_ANGLES)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    found = _eliminate(argument, _track_balance(argument), q.HAUL_TENSION, q.TRACK_TENSION)
    return argument.rewrite(
        "Halve the angles: sum and difference become products, and most of it cancels.",
        found,
        load * sin((up + down) / 2) / cos((up - down) / 2),
    )


# --- track directional apart from the haul directional ----------------------------------------

_APART = (*_TRACK[:2], "Haul line and track lines come from directionals in different places.")
_APART_ANGLES = (q.LOAD, q.HAUL_ELEVATION, q.TRACK_ELEVATION, q.GROUND_DEPRESSION)


TRACK_OPEN = Condition(
    "The litter must be inside the straight line from the track directional to the hub; no tension "
    f"holds it on that line, within {FLAT_WORDS} of it, or beyond.",
    "Bring the litter closer in, or move a directional or the hub further out.",
    lambda v: (
        np.sin(v["haul_elevation"] - v["ground_depression"])
        + np.sin(v["track_elevation"] - v["haul_elevation"])
        > FLAT
    ),
)
HAUL_TAUT = Condition(
    "The track's upper leg must be at least as steep as its ground leg; beyond that the haul line "
    "would go slack.",
    "Lower the hub or the litter, or bring the litter closer in.",
    lambda v: abs(v["ground_depression"]) <= v["track_elevation"],
)


@derive(
    "Track lines from a directional of their own: their tension together",
    given=_APART_ANGLES,
    between=(q.HAUL_TENSION,),
    result=q.TRACK_TENSION,
    assumptions=_APART,
    conditions=(TRACK_OPEN,),
    cautions=_GUIDED,
)
def track_tension_apart(argument: Argument) -> Step:
    """Tension in N of all track lines together when their directional stands elsewhere."""
    load, up, leg, down = argument.symbols(*_APART_ANGLES)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    balances = _track_balance(argument, q.TRACK_ELEVATION)
    found = _eliminate(argument, balances, q.TRACK_TENSION, q.HAUL_TENSION)
    return argument.rewrite(
        "Bring the fractions together (sines of differences).",
        found,
        load * cos(up) / (sin(up - down) + sin(leg - up)),
    )


@derive(
    "Track lines from a directional of their own: tension of the haul line",
    given=_APART_ANGLES,
    between=(q.TRACK_TENSION,),
    result=q.HAUL_TENSION,
    assumptions=_APART,
    conditions=(
        TRACK_OPEN,
        HAUL_TAUT,
    ),
    cautions=_GUIDED,
)
def haul_tension_with_track_apart(argument: Argument) -> Step:
    """Haul tension in N beside track lines whose directional stands elsewhere."""
    load, up, leg, down = argument.symbols(*_APART_ANGLES)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    balances = _track_balance(argument, q.TRACK_ELEVATION)
    found = _eliminate(argument, balances, q.HAUL_TENSION, q.TRACK_TENSION)
    return argument.rewrite(
        "Bring the fractions together (sines of differences).",
        found,
        load * (cos(down) - cos(leg)) / (sin(up - down) + sin(leg - up)),
    )


# --- the same from places on the cross-section ------------------------------------------------

_PLACES = (q.LOAD, q.X, q.Z, q.X_D, q.Z_D, q.X_B, q.Z_B)


@derive(
    "Tension of the line to the hub, from measured places",
    given=_PLACES,
    between=(q.HAUL_SLOPE, q.GROUND_SLOPE, q.LEVEL_PART, q.GROUND_DEPRESSION),
    result=q.LINE_TENSION,
    assumptions=(
        _AT_P,
        "A tag line, or track lines from the haul directional: the line to the hub is the same.",
    ),
    conditions=(_BELOW, _SIDES, _SHORT_OF_LINE),
    cautions=_GUIDED,
)
def line_tension_from_places(argument: Argument) -> Step:
    """Tension in N of a tag line, or of the track lines together, from coordinates in m."""
    load, x, z, x_d, z_d, x_b, z_b = argument.symbols(*_PLACES)
    haul_slope, ground_slope, level = argument.symbols(q.HAUL_SLOPE, q.GROUND_SLOPE, q.LEVEL_PART)
    tension = argument.symbol(q.LINE_TENSION)
    sqrt = argument.sympy.sqrt
    up = argument.law(
        "Slope of the haul leg: its rise over its run.", haul_slope, (z_d - z) / (x - x_d)
    )
    down = argument.law(
        "Slope of the ground leg: its fall over its run.", ground_slope, (z - z_b) / (x_b - x)
    )
    upward = argument.law(
        "Upward balance. Both legs have the same level part; the upward part of each is that times "
        "its slope, up at the haul leg and down at the ground leg.",
        level * haul_slope - level * ground_slope,
        load,
    )
    found = argument.solve("Solve for the level part.", upward, level)
    level_part = argument.rewrite(
        "Write the difference the way round that is positive.",
        found,
        load / (haul_slope - ground_slope),
    )
    length = argument.law(
        "The whole pull of the ground leg is longer than its level part (Pythagoras).",
        tension,
        level * sqrt(1 + ground_slope**2),
    )
    put_in = argument.substitute("Put the level part in.", length, level_part)
    return argument.substitute("Put the slopes in.", put_in, up, down)


@derive(
    "How far out no tension can hold the litter",
    given=(q.Z, q.X_D, q.Z_D, q.X_B, q.Z_B),
    result=q.LIMIT_OFFSET,
    assumptions=("Straight ropes.",),
    conditions=(
        _BELOW,
        Condition(
            "The directional must be above the hub, and the line between them fall by more than "
            f"{FLAT_WORDS}.",
            "Check the two heights.",
            lambda v: np.arctan2(v["z_D"] - v["z_B"], abs(v["x_B"] - v["x_D"])) > FLAT,
        ),
    ),
    cautions=_GUIDED,
    source="derived here from the straight line between directional and hub",
)
def straight_line_limit(argument: Argument) -> Step:
    """Distance out in m of the straight line from directional to hub at the height z."""
    z, x_d, z_d, x_b, z_b = argument.symbols(q.Z, q.X_D, q.Z_D, q.X_B, q.Z_B)
    limit = argument.symbol(q.LIMIT_OFFSET)
    line = argument.law(
        "A tight line is straight at most: run over fall is the same for the part above the "
        "litter and for the whole.",
        (limit - x_d) / (z_d - z),
        (x_b - x_d) / (z_d - z_b),
    )
    found = argument.solve("Solve for the distance.", line, limit)
    return argument.rewrite(
        "Write it as a start and a share.",
        found,
        x_d + (x_b - x_d) * (z_d - z) / (z_d - z_b),
    )


@derive(
    "How near the hub may not be",
    given=(q.X, q.Z, q.X_D, q.Z_D, q.Z_B),
    result=q.HUB_LIMIT,
    assumptions=("Straight ropes.",),
    conditions=(
        Condition(
            "The litter must be below the haul directional, and the haul line fall to it by more "
            f"than {FLAT_WORDS}.",
            "Lower the litter or raise the directional.",
            lambda v: np.arctan2(v["z_D"] - v["z"], abs(v["x"] - v["x_D"])) > FLAT,
        ),
    ),
    cautions=_GUIDED,
    source="derived here from the straight line between directional and hub",
)
def hub_limit(argument: Argument) -> Step:
    """Hub distance in m at which directional, litter and hub are in one line."""
    x, z, x_d, z_d, z_b = argument.symbols(q.X, q.Z, q.X_D, q.Z_D, q.Z_B)
    limit = argument.symbol(q.HUB_LIMIT)
    line = argument.law(
        "In one straight line, run over fall is the same above the litter and for the whole.",
        (x - x_d) / (z_d - z),
        (limit - x_d) / (z_d - z_b),
    )
    found = argument.solve("Solve for the hub's distance.", line, limit)
    return argument.rewrite(
        "Write it as a start and a share.",
        found,
        x_d + (x - x_d) * (z_d - z_b) / (z_d - z),
    )


@derive(
    "How far out the litter must be for the haul line to clear an outcrop above it",
    given=(q.Z_LOW, q.X_D, q.Z_D, q.X_O, q.Z_O, q.CLEARANCE),
    result=q.CLEAR_OFFSET,
    assumptions=(
        "The haul line is straight from the directional to the litter.",
        "The clearance is measured level; at right angles to the rope it is less: times the sine "
        "of the haul elevation.",
    ),
    conditions=(
        Condition(
            "The outcrop must lie between the litter and the directional.",
            "Check the three heights; above the outcrop the litter itself is what has to clear.",
            lambda v: (v["z"] < v["z_O"]) & (v["z_O"] < v["z_D"]),
        ),
    ),
    cautions=_GUIDED,
    source="derived here from similar triangles",
)
def haul_clearance_offset(argument: Argument) -> Step:
    """Distance out in m of the litter at which the haul line passes an outcrop with clearance.

    The clearance c in m is level; at right angles to the rope it is c sin(alpha).
    """
    z, x_d, z_d, x_o, z_o = argument.symbols(q.Z_LOW, q.X_D, q.Z_D, q.X_O, q.Z_O)
    clear, out = argument.symbols(q.CLEARANCE, q.CLEAR_OFFSET)
    line = argument.law(
        "The haul line is straight: run over fall is the same down to the litter as down to the "
        "point that keeps the clearance off the tip.",
        (out - x_d) / (z_d - z),
        (x_o + clear - x_d) / (z_d - z_o),
    )
    found = argument.solve("Solve for the distance.", line, out)
    return argument.rewrite(
        "Write it as a start and a share.",
        found,
        x_d + (x_o + clear - x_d) * (z_d - z) / (z_d - z_o),
    )


# --- what follows from angles and tension -----------------------------------------------------


@derive(
    "Angle at the litter",
    given=(q.HAUL_ELEVATION, q.GROUND_DEPRESSION),
    result=q.LITTER_ANGLE,
    cautions=_GUIDED,
    source="derived here from the angles at one point",
)
def litter_angle(argument: Argument) -> Step:
    """Angle in rad from haul leg over the top to ground leg; 180° is the straight line.

    Past it only track lines from a directional of their own can hold the litter.
    """
    up, down = argument.symbols(q.HAUL_ELEVATION, q.GROUND_DEPRESSION)
    angle = argument.symbol(q.LITTER_ANGLE)
    straight = argument.law(
        "Turn from level towards the wall, over the top, to the ground leg: haul elevation and "
        "angle at the litter together make half a turn plus the ground depression.",
        angle + up,
        argument.sympy.pi + down,
    )
    return argument.solve("Solve for the angle at the litter.", straight, angle)


_TENSION_AND_LEGS = (q.TRACK_TENSION, q.HAUL_ELEVATION, q.GROUND_DEPRESSION)


@derive(
    "What the track lines lift",
    given=_TENSION_AND_LEGS,
    result=q.TRACK_LIFT,
    assumptions=_TRACK[1:],
    cautions=_GUIDED,
)
def track_lift(argument: Argument) -> Step:
    """Upward force in N of the track lines on the litter: upper leg up, ground leg down."""
    track, up, down = argument.symbols(*_TENSION_AND_LEGS)
    lift = argument.symbol(q.TRACK_LIFT)
    sin = argument.sympy.sin
    total = argument.law(
        "The upper leg lifts; the ground leg pulls down.", lift, track * sin(up) - track * sin(down)
    )
    return argument.apply("Take the tension out.", total, argument.sympy.factor)


@derive(
    "Upward pull on the hub",
    given=(q.LINE_TENSION, q.GROUND_DEPRESSION),
    result=q.HUB_UPLIFT,
    assumptions=("The line to the hub is straight.",),
    cautions=_GUIDED,
)
def hub_uplift(argument: Argument) -> Step:
    """Upward pull in N of all lines together on the hub."""
    tension, down, up = argument.symbols(q.LINE_TENSION, q.GROUND_DEPRESSION, q.HUB_UPLIFT)
    return argument.law(
        "The line arrives at the hub as steeply as it leaves the litter; its upward part lifts "
        "the hub.",
        up,
        tension * argument.sympy.sin(down),
    )


@derive(
    "Tilt of a litter whose tag line is tied to its rail",
    given=(q.LOAD, q.SIDE_PULL, q.GROUND_DEPRESSION),
    between=(q.ROPE_TENSION,),
    result=q.BRIDLE_TILT,
    assumptions=("The bridle is straight and the line pulls at the litter, not at its apex.",),
    conditions=(
        Condition(
            "The line must not lift more than the weight.",
            "Use a smaller pull or a lower hub.",
            lambda v: v["load"] + v["side_pull"] * np.tan(v["ground_depression"]) > 0,
        ),
    ),
    cautions=_GUIDED,
)
def bridle_tilt(argument: Argument) -> Step:
    """Tilt in rad of the bridle from plumb when the tag line is tied to the litter's rail."""
    load, pull, down = argument.symbols(q.LOAD, q.SIDE_PULL, q.GROUND_DEPRESSION)
    tension, tilt = argument.symbols(q.ROPE_TENSION, q.BRIDLE_TILT)
    sin, cos, tan, atan = (getattr(argument.sympy, n) for n in ("sin", "cos", "tan", "atan"))
    sideways = argument.law("Sideways balance at the litter.", tension * sin(tilt), pull)
    upward = argument.law(
        "Upward balance: the bridle carries the weight and the line's downward part.",
        tension * cos(tilt),
        load + pull * tan(down),
    )
    ratio = argument.combine("Divide: the bridle's tension drops out.", truediv, sideways, upward)
    slope = argument.rewrite("Sine over cosine is the tangent.", ratio, left=tan(tilt))
    return argument.solved("Take the angle whose tangent that is.", tilt, atan(slope.equation.rhs))


# --- rope taken in ----------------------------------------------------------------------------

_TRACK_PLACES = (q.X, q.Z, q.X_A, q.Z_A, q.X_B, q.Z_B)


@derive(
    "Length of one track line",
    given=_TRACK_PLACES,
    result=q.TRACK_LENGTH,
    assumptions=("Straight ropes that do not stretch.",),
    source="derived here from Pythagoras",
)
def track_length(argument: Argument) -> Step:
    """Length in m from the track directional past the litter to the hub."""
    x, z, x_a, z_a, x_b, z_b = argument.symbols(*_TRACK_PLACES)
    sqrt = argument.sympy.sqrt
    return argument.law(
        "Add the two straight legs (Pythagoras).",
        argument.symbol(q.TRACK_LENGTH),
        sqrt((x_a - x) ** 2 + (z_a - z) ** 2) + sqrt((x_b - x) ** 2 + (z_b - z) ** 2),
    )


@derive(
    "Track rope to take in while the litter goes straight up",
    given=(q.TRACK_ELEVATION, q.GROUND_DEPRESSION),
    result=q.TAKE_IN_RATE,
    assumptions=("Straight ropes that do not stretch.", "The litter goes straight up."),
    source="derived here from the change of the two legs",
)
def take_in_rate(argument: Argument) -> Step:
    """Length of each track line to take in per length raised: a plain number, m per m."""
    up, down = argument.symbols(q.TRACK_ELEVATION, q.GROUND_DEPRESSION)
    sin = argument.sympy.sin
    return argument.law(
        "For each short rise the upper leg shortens by the sine of its elevation and the ground "
        "leg lengthens by the sine of its depression.",
        argument.symbol(q.TAKE_IN_RATE),
        sin(up) - sin(down),
    )


@derive(
    "Length of a tag line",
    given=(q.X, q.Z, q.X_B, q.Z_B),
    result=q.TAG_LENGTH,
    assumptions=("A straight rope that does not stretch.",),
    source="derived here from Pythagoras",
)
def tag_length(argument: Argument) -> Step:
    """Length in m from the litter to the hub."""
    x, z, x_b, z_b = argument.symbols(q.X, q.Z, q.X_B, q.Z_B)
    return argument.law(
        "One straight leg (Pythagoras).",
        argument.symbol(q.TAG_LENGTH),
        argument.sympy.sqrt((x_b - x) ** 2 + (z_b - z) ** 2),
    )


@derive(
    "Tag line to pay out while the litter goes straight up",
    given=(q.GROUND_DEPRESSION,),
    result=q.PAY_OUT_RATE,
    assumptions=("A straight rope that does not stretch.", "The litter goes straight up."),
    source="derived here from the change of the leg",
)
def tag_pay_out_rate(argument: Argument) -> Step:
    """Length of tag line to pay out per length raised: a plain number, m per m."""
    return argument.law(
        "For each short rise the ground leg lengthens by the sine of its depression.",
        argument.symbol(q.PAY_OUT_RATE),
        argument.sympy.sin(argument.symbol(q.GROUND_DEPRESSION)),
    )


# --- when the haul line would go slack --------------------------------------------------------


@derive(
    "Where the haul line goes slack",
    given=(q.HAUL_ELEVATION,),
    between=(q.LOAD, q.TRACK_TENSION, q.HAUL_TENSION),
    result=q.GROUND_DEPRESSION,
    assumptions=_TRACK,
    cautions=_GUIDED,
)
def slack_haul_depression(argument: Argument) -> Step:
    """Ground depression in rad at which nothing is left for the haul line: minus the elevation."""
    haul, down = argument.symbols(q.HAUL_TENSION, q.GROUND_DEPRESSION)
    tension = haul_tension_with_track.argue(argument)
    slack = argument.law("A slack haul line carries nothing.", haul, argument.sympy.S.Zero)
    nothing = argument.substitute("Put that in.", tension, slack)
    return argument.solve(
        "The fraction is nothing where the sine above is: the ground leg rises as steeply as the "
        "upper leg.",
        nothing,
        down,
    )


@derive(
    "Track tension where the haul line goes slack",
    given=(q.LOAD, q.HAUL_ELEVATION),
    between=(q.GROUND_DEPRESSION,),
    result=q.TRACK_TENSION,
    assumptions=_TRACK,
    conditions=(
        Condition(
            f"The track lines must rise from the litter by more than {FLAT_WORDS}; level lines "
            "lift nothing.",
            "Lower the litter or raise the directional.",
            lambda v: v["haul_elevation"] > FLAT,
        ),
    ),
    cautions=_GUIDED,
)
def slack_haul_track_tension(argument: Argument) -> Step:
    """Tension in N of all track lines together when they alone carry the load."""
    load, up, down = argument.symbols(*_ANGLES)
    track = argument.symbol(q.TRACK_TENSION)
    sin = argument.sympy.sin
    level = argument.law(
        "With a slack haul line the ground leg rises as steeply as the upper leg.", down, -up
    )
    upward = argument.law("Upward balance.", track * sin(up) - track * sin(down), load)
    put_in = argument.substitute("Put the ground leg in.", upward, level)
    return argument.solve("Solve for the tension.", put_in, track)


# --- a hub above the litter -------------------------------------------------------------------


@derive(
    "Tag line to a hub above the litter: its tension",
    given=(q.LOAD, q.HAUL_ELEVATION, q.LINE_ELEVATION),
    between=(q.HAUL_TENSION,),
    result=q.TAG_TENSION,
    assumptions=_TAG,
    conditions=(
        Condition(
            f"The two lines together must rise from the litter by more than {FLAT_WORDS}; level "
            "lines lift nothing.",
            "Lower the litter, or raise the directional or the hub.",
            lambda v: v["haul_elevation"] + v["line_elevation"] > FLAT,
        ),
    ),
    cautions=_GUIDED,
)
def tension_to_high_hub(argument: Argument) -> Step:
    """Tag tension in N when the line rises to its hub, as across a gorge: both legs lift."""
    load, up, rise = argument.symbols(q.LOAD, q.HAUL_ELEVATION, q.LINE_ELEVATION)
    haul, tag = argument.symbols(q.HAUL_TENSION, q.TAG_TENSION)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    sideways = argument.law(
        "Sideways balance: the haul line pulls in as hard as the tag line pulls out.",
        haul * cos(up),
        tag * cos(rise),
    )
    upward = argument.law(
        "Upward balance: both lines rise from the litter, so both carry a part of the weight.",
        haul * sin(up) + tag * sin(rise),
        load,
    )
    found = _eliminate(argument, [sideways, upward], q.TAG_TENSION, q.HAUL_TENSION)
    return argument.rewrite(
        "Bring the fractions together (sine of a sum).", found, load * cos(up) / sin(up + rise)
    )
