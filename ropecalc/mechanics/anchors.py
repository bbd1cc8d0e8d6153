"""Anchors of two and three legs, flat and in space, and legs that share one load.

::

        o         o          angles of unequal legs are measured from the line of pull
         \\ theta /           theta is between the two legs
          \\     /
           \\   /
             *
             |  W

In space: x out from the wall, y along the wall, z up. Three legs that do not lie in one plane, or
two in a plane, are settled by statics. One leg more and statics alone leaves a range.
"""

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import POSITIVE, Argument, Condition, Range, Step, Variable, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS
from ropecalc.units import Kind

ASSUMED = (
    "The pull acts at the point where the legs meet.",
    "The legs are free to take their own tension.",
)
_NO_LIMIT = f"in line, or within {FLAT_WORDS} of it, their tension has no limit."
_BENT = Condition(
    f"The two legs must not lie in one straight line: {_NO_LIMIT}",
    "Bring the legs closer together.",
    lambda v: np.pi - v["leg_angle"] > FLAT,
)


@derive(
    "Two equal legs share a load",
    given=(q.LOAD, q.LEG_ANGLE),
    result=q.LEG_TENSION,
    assumptions=(*ASSUMED, "The pull lies on the bisector of the legs."),
    conditions=(_BENT,),
)
def two_leg_anchor(argument: Argument) -> Step:
    """Tension L in N of each of two equal legs, the angle theta (0 to below π rad) apart."""
    load, angle, tension = argument.symbols(q.LOAD, q.LEG_ANGLE, q.LEG_TENSION)
    balance = argument.law(
        "Balance along the pull: each leg gives the part of its tension that points along it.",
        2 * tension * argument.sympy.cos(angle / 2),
        load,
    )
    return argument.solve("Divide by what stands beside the tension.", balance, tension)


@derive(
    "The leg tension as a multiple of the load",
    given=(q.LEG_ANGLE,),
    between=(q.LOAD, q.LEG_TENSION),
    result=q.LOAD_RATIO,
    assumptions=(*ASSUMED, "The pull lies on the bisector of the legs."),
    conditions=(_BENT,),
)
def two_leg_ratio(argument: Argument) -> Step:
    """Ratio k of leg tension to load for two equal legs. Solved for the angle it is critical."""
    load, angle, tension, ratio = argument.symbols(q.LOAD, q.LEG_ANGLE, q.LEG_TENSION, q.LOAD_RATIO)
    balance = argument.law(
        "Balance along the pull.", 2 * tension * argument.sympy.cos(angle / 2), load
    )
    multiple = argument.law("Call the multiple of the load k.", tension, ratio * load)
    put_in = argument.substitute("Put it in.", balance, multiple)
    return argument.solve("The load drops out.", put_in, ratio)


critical_leg_angle = two_leg_ratio.solved_for("leg_angle")
"""Angle between two equal legs at which each carries k times the load (k = 1: 120°)."""

ANGLE_BEFORE = named(
    q.LEG_ANGLE, "angle_before", "angle between the two legs before", r"\theta_\mathrm{before}"
)
ANGLE_AFTER = named(
    q.LEG_ANGLE, "angle_after", "angle between the two legs afterwards", r"\theta_\mathrm{after}"
)
_LEG_BEFORE = named(q.LEG_TENSION, "leg_before", "tension in each leg before", r"L_\mathrm{before}")
_LEG_AFTER = named(
    q.LEG_TENSION, "leg_after", "tension in each leg afterwards", r"L_\mathrm{after}"
)
LEG_GROWTH = Variable(
    "leg_growth", "g_L", "tension of a leg afterwards over its tension before", Kind.RATIO,
    POSITIVE, Range(0.5, 6, 2),
)  # fmt: skip


@derive(
    "Two equal legs pulled further apart",
    given=(ANGLE_BEFORE, ANGLE_AFTER),
    between=(q.LOAD, _LEG_BEFORE, _LEG_AFTER),
    result=LEG_GROWTH,
    assumptions=(*ASSUMED, "The pull lies on the bisector of the legs, and stays the same."),
    conditions=(
        Condition(
            _BENT.sentence,
            _BENT.remedy,
            lambda v: (np.pi - v["angle_before"] > FLAT) & (np.pi - v["angle_after"] > FLAT),
        ),
    ),
)
def leg_growth(argument: Argument) -> Step:
    """How many times its tension before a leg carries once the legs are pulled further apart."""
    load, cos = argument.symbol(q.LOAD), argument.sympy.cos
    tensions = []
    for when, angle, leg in (
        ("before", ANGLE_BEFORE, _LEG_BEFORE),
        ("afterwards", ANGLE_AFTER, _LEG_AFTER),
    ):
        between, tension = argument.symbols(angle, leg)
        balance = argument.law(
            f"Balance along the pull, {when}.", 2 * tension * cos(between / 2), load
        )
        tensions.append(argument.solve(f"The leg {when}.", balance, tension))
    before, after = argument.symbols(_LEG_BEFORE, _LEG_AFTER)
    ratio = argument.law("Compare the two.", argument.symbol(LEG_GROWTH), after / before)
    return argument.substitute("Put both in: the load drops out.", ratio, *tensions)


def _balances(argument: Argument) -> list[Step]:
    load, one, two = argument.symbols(q.LOAD, q.FIRST_LEG_ANGLE, q.SECOND_LEG_ANGLE)
    first, second = argument.symbols(q.FIRST_LEG, q.SECOND_LEG)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    across = argument.law(
        "Balance across the pull: the legs pull apart equally.",
        first * sin(one),
        second * sin(two),
    )
    along = argument.law(
        "Balance along the pull: together they carry the load.",
        first * cos(one) + second * cos(two),
        load,
    )
    return [across, along]


def _unequal_leg(argument: Argument, mine: int) -> Step:
    legs = argument.symbols(q.FIRST_LEG, q.SECOND_LEG)
    angles = argument.symbols(q.FIRST_LEG_ANGLE, q.SECOND_LEG_ANGLE)
    load = argument.symbol(q.LOAD)
    sin = argument.sympy.sin
    across, along = _balances(argument)
    other = argument.solve("Express the other leg by this one.", across, legs[1 - mine])
    put_in = argument.substitute("Put it into the second balance.", along, other)
    tension = argument.solve("Solve for the tension.", put_in, legs[mine])
    return argument.rewrite(
        "Bring the fractions together (sine of a sum).",
        tension,
        load * sin(angles[1 - mine]) / sin(angles[0] + angles[1]),
    )


_UNEQUAL = (*ASSUMED, "The legs lie on opposite sides of the line of pull.")
_UNEQUAL_BENT = Condition(
    f"The two legs must not lie in one straight line: {_NO_LIMIT}",
    "Bring a leg closer to the line of pull.",
    lambda v: np.pi - v["first_leg_angle"] - v["second_leg_angle"] > FLAT,
)


@derive(
    "Two unequal legs: tension in leg 1",
    given=(q.LOAD, q.FIRST_LEG_ANGLE, q.SECOND_LEG_ANGLE),
    between=(q.SECOND_LEG,),
    result=q.FIRST_LEG,
    assumptions=_UNEQUAL,
    conditions=(_UNEQUAL_BENT,),
)
def first_leg_tension(argument: Argument) -> Step:
    """Tension in N of leg 1; the leg nearer the line of pull carries more."""
    return _unequal_leg(argument, 0)


@derive(
    "Two unequal legs: tension in leg 2",
    given=(q.LOAD, q.FIRST_LEG_ANGLE, q.SECOND_LEG_ANGLE),
    between=(q.FIRST_LEG,),
    result=q.SECOND_LEG,
    assumptions=_UNEQUAL,
    conditions=(_UNEQUAL_BENT,),
)
def second_leg_tension(argument: Argument) -> Step:
    """Tension in N of leg 2; the leg nearer the line of pull carries more."""
    return _unequal_leg(argument, 1)


# --- the pull off the bisector ---------------------------------------------------------------

_SWUNG = Condition(
    "The pull must stay between the two legs, and the legs must stand apart.",
    "Use a smaller swing or a wider angle; beyond the leg one leg carries all and the other is "
    "slack.",
    lambda v: (v["leg_angle"] > 0) & (2 * v["pull_swing"] <= v["leg_angle"]),
)
_SWINGS = (
    *ASSUMED,
    "The legs are fixed in length, so the knot stays where it is when the pull swings.",
    "The pull swings into line with the gaining leg: it points away from that leg's anchor.",
)


_NEAR = named(
    q.LEG_ANGLE,
    "near_angle",
    "angle of the gaining leg from the line of pull",
    r"\theta_\mathrm{g}",
)
_FAR = named(
    q.LEG_ANGLE,
    "far_angle",
    "angle of the other leg from the line of pull",
    r"\theta_\mathrm{l}",
)


def _swung(argument: Argument, gains: bool) -> Step:
    load, angle, swing = argument.symbols(q.LOAD, q.LEG_ANGLE, q.PULL_SWING)
    gaining, losing = argument.symbols(q.GAINING_LEG, q.LOSING_LEG)
    near, far = argument.symbols(_NEAR, _FAR)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    nearer = argument.law(
        "The gaining leg is nearer to the line of pull by the swing.", near, angle / 2 - swing
    )
    further = argument.law("The other is further from it.", far, angle / 2 + swing)
    across = argument.law(
        "Balance across the pull: the legs pull apart equally.",
        gaining * sin(near),
        losing * sin(far),
    )
    along = argument.law(
        "Balance along the pull: together they carry the load.",
        gaining * cos(near) + losing * cos(far),
        load,
    )
    mine, other = (gaining, losing) if gains else (losing, gaining)
    expressed = argument.solve("Express the other leg by this one.", across, other)
    put_in = argument.substitute("Put it into the second balance.", along, expressed)
    tension = argument.solve("Solve for the tension.", put_in, mine)
    gathered = argument.rewrite(
        "Bring the fractions together (sine of a sum).",
        tension,
        load * sin(far if gains else near) / sin(near + far),
    )
    return argument.substitute(
        "Put the angles in: the two add up to the whole.", gathered, nearer, further
    )


@derive(
    "The pull swings off the bisector: the leg that gains",
    given=(q.LOAD, q.LEG_ANGLE, q.PULL_SWING),
    between=(_NEAR, _FAR, q.LOSING_LEG),
    result=q.GAINING_LEG,
    assumptions=_SWINGS,
    conditions=(_SWUNG, _BENT),
)
def gaining_leg_tension(argument: Argument) -> Step:
    """Tension in N of the leg the pull swings into line with (a pull to the left: the right leg).

    Up to a swing of half the leg angle, where this leg carries everything.
    """
    return _swung(argument, True)


@derive(
    "The pull swings off the bisector: the leg that is relieved",
    given=(q.LOAD, q.LEG_ANGLE, q.PULL_SWING),
    between=(_NEAR, _FAR, q.GAINING_LEG),
    result=q.LOSING_LEG,
    assumptions=_SWINGS,
    conditions=(_SWUNG, _BENT),
)
def losing_leg_tension(argument: Argument) -> Step:
    """Tension in N of the other leg; nothing at a swing of half the leg angle."""
    return _swung(argument, False)


# --- three legs ------------------------------------------------------------------------------

_THREE = (*ASSUMED, "The three legs are alike and stand evenly around the line of pull.")
_STEEP = Condition(
    f"The legs must not lie in one plane across the pull: {_NO_LIMIT}",
    "Bring the legs closer to the line of pull.",
    lambda v: np.pi / 2 - v["leg_plumb_angle"] > FLAT,
)


@derive(
    "Three equal legs share a load",
    given=(q.LOAD, q.LEG_PLUMB_ANGLE),
    result=q.LEG_TENSION,
    assumptions=_THREE,
    conditions=(_STEEP,),
)
def three_leg_anchor(argument: Argument) -> Step:
    """Tension L in N of each of three even legs, phi (0 to below π/2 rad) from the line of pull."""
    load, angle, tension = argument.symbols(q.LOAD, q.LEG_PLUMB_ANGLE, q.LEG_TENSION)
    balance = argument.law(
        "Balance along the pull: across it the three even legs cancel.",
        3 * tension * argument.sympy.cos(angle),
        load,
    )
    return argument.solve("Divide by what stands beside the tension.", balance, tension)


@derive(
    "Three equal legs: the leg tension as a multiple of the load",
    given=(q.LEG_PLUMB_ANGLE,),
    between=(q.LOAD, q.LEG_TENSION),
    result=q.THREE_LEG_RATIO,
    assumptions=_THREE,
    conditions=(_STEEP,),
)
def three_leg_ratio(argument: Argument) -> Step:
    """Ratio k of leg tension to load for three even legs."""
    load, tension, ratio = argument.symbols(q.LOAD, q.LEG_TENSION, q.THREE_LEG_RATIO)
    found = three_leg_anchor.argue(argument)
    multiple = argument.law("Call the multiple of the load k.", tension, ratio * load)
    both = argument.combine(
        "Both are the same tension.", lambda one, other: one - other, found, multiple
    )
    return argument.solve("The load drops out.", both, ratio)


critical_three_leg_angle = three_leg_ratio.solved_for("leg_plumb_angle")
"""Angle from the line of pull at which each of three even legs carries k times the load."""


_BACK_AND_FRONT = (
    *ASSUMED,
    "The pull is plumb; two equal legs run back, mirrored, and one runs straight to the front.",
)
_BACK_FRONT_GIVEN = (q.LOAD, q.FRONT_LEG_ANGLE, q.BACK_LEG_ANGLE, q.HALF_SPREAD)
_BACK_AND_FRONT_STEEP = Condition(
    f"The legs must not all lie level: {_NO_LIMIT}",
    "Bring the legs closer to plumb.",
    lambda v: (
        np.cos(v["back_leg_angle"])
        + np.sin(v["back_leg_angle"]) * np.cos(v["half_spread"]) / np.tan(v["front_leg_angle"])
        > FLAT
    ),
)


def _back_and_front(argument: Argument) -> list[Step]:
    load, front_angle, back_angle, spread = argument.symbols(*_BACK_FRONT_GIVEN)
    front, back = argument.symbols(q.FRONT_LEG, q.BACK_LEG)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    level = argument.law(
        "Level balance, front to back: only the part of each back leg that points straight back "
        "counts; sideways the two cancel.",
        front * sin(front_angle),
        2 * back * sin(back_angle) * cos(spread),
    )
    upward = argument.law(
        "Upward balance.", front * cos(front_angle) + 2 * back * cos(back_angle), load
    )
    return [level, upward]


@derive(
    "Two legs back and one to the front: each back leg",
    given=_BACK_FRONT_GIVEN,
    between=(q.FRONT_LEG,),
    result=q.BACK_LEG,
    assumptions=_BACK_AND_FRONT,
    conditions=(_BACK_AND_FRONT_STEEP,),
)
def back_leg_tension(argument: Argument) -> Step:
    """Tension in N of each of two back legs; angles from plumb, the spread in plan."""
    load, front_angle, back_angle, spread = argument.symbols(*_BACK_FRONT_GIVEN)
    front, back = argument.symbols(q.FRONT_LEG, q.BACK_LEG)
    sin, cos, cot = argument.sympy.sin, argument.sympy.cos, argument.sympy.cot
    level, upward = _back_and_front(argument)
    expressed = argument.solve("Express the front leg by a back leg.", level, front)
    put_in = argument.substitute("Put it into the upward balance.", upward, expressed)
    found = argument.solve("Solve for the tension.", put_in, back)
    return argument.rewrite(
        "Write it by cosines and one cotangent.",
        found,
        load / (2 * cos(back_angle) + 2 * sin(back_angle) * cos(spread) * cot(front_angle)),
    )


@derive(
    "Two legs back and one to the front: the front leg",
    given=_BACK_FRONT_GIVEN,
    between=(q.BACK_LEG,),
    result=q.FRONT_LEG,
    assumptions=_BACK_AND_FRONT,
    conditions=(_BACK_AND_FRONT_STEEP,),
)
def front_leg_tension(argument: Argument) -> Step:
    """Tension in N of the front leg; angles from plumb, the spread in plan."""
    front, back = argument.symbols(q.FRONT_LEG, q.BACK_LEG)
    level, upward = _back_and_front(argument)
    expressed = argument.solve("Express a back leg by the front leg.", level, back)
    put_in = argument.substitute("Put it into the upward balance.", upward, expressed)
    return argument.solve("Solve for the tension.", put_in, front)


# --- three legs in one plane -----------------------------------------------------------------

_SHARING = (
    "How several legs share depends on their lengths to the millimetre, on knots that settle and "
    "on stretch. Take each leg's whole range as possible.",
    *cautions.EVERY_RESULT,
)
_ROW = (
    *ASSUMED,
    "Three legs in one plane, the outer ones mirrored, from anchors in one row.",
    "All are of the same material and just taut before the load comes on; they stretch little.",
)


def _row(argument: Argument) -> tuple[Step, Step]:
    angle, middle, outer = argument.symbols(q.OUTER_LEG_ANGLE, q.MIDDLE_LEG, q.OUTER_LEG)
    load, stiff = argument.symbols(q.LOAD, q.LEG_STIFFNESS)
    sink, depth = argument.symbols(q.KNOT_SINK, q.KNOT_DEPTH)
    cos = argument.sympy.cos
    straight = argument.law(
        "The knot sinks a little: the middle leg stretches by just that (Hooke).",
        middle,
        stiff * sink / depth,
    )
    slanted = argument.law(
        "An outer leg is longer, and stretches only by the part of the sinking that lies along it.",
        outer,
        stiff * sink * cos(angle) / (depth / cos(angle)),
    )
    share = argument.combine(
        "Divide: stiffness, sinking and depth drop out.",
        lambda one, other: one / other,
        slanted,
        straight,
    )
    balance = argument.law(
        "Balance along the pull; alone it leaves a free choice.",
        middle + 2 * outer * cos(angle),
        load,
    )
    return share, balance


@derive(
    "Three legs in a row of equal stiffness: the middle leg",
    given=(q.LOAD, q.OUTER_LEG_ANGLE),
    between=(q.OUTER_LEG, q.LEG_STIFFNESS, q.KNOT_SINK, q.KNOT_DEPTH),
    result=q.MIDDLE_LEG,
    assumptions=_ROW,
    cautions=_SHARING,
)
def middle_leg_tension(argument: Argument) -> Step:
    """Tension in N of the middle one of three coplanar legs that stretch alike."""
    middle, outer = argument.symbols(q.MIDDLE_LEG, q.OUTER_LEG)
    share, balance = _row(argument)
    expressed = argument.solve("Express an outer leg by the middle one.", share, outer)
    put_in = argument.substitute("Put it into the balance.", balance, expressed)
    return argument.solve("Solve for the tension.", put_in, middle)


@derive(
    "Three legs in a row of equal stiffness: each outer leg",
    given=(q.LOAD, q.OUTER_LEG_ANGLE),
    between=(q.MIDDLE_LEG, q.LEG_STIFFNESS, q.KNOT_SINK, q.KNOT_DEPTH),
    result=q.OUTER_LEG,
    assumptions=_ROW,
    cautions=_SHARING,
)
def outer_leg_tension(argument: Argument) -> Step:
    """Tension in N of each outer one of three coplanar legs that stretch alike."""
    middle, outer = argument.symbols(q.MIDDLE_LEG, q.OUTER_LEG)
    share, balance = _row(argument)
    expressed = argument.solve("Express the middle leg by an outer one.", share, middle)
    put_in = argument.substitute("Put it into the balance.", balance, expressed)
    return argument.solve("Solve for the tension.", put_in, outer)


# --- a bridle by its lengths -----------------------------------------------------------------


@derive(
    "Two equal legs, from their length and the anchors' spacing",
    given=(q.LOAD, q.LEG_LENGTH, q.ANCHOR_SPACING),
    between=(q.KNOT_DEPTH,),
    result=q.LEG_TENSION,
    assumptions=(*ASSUMED, "The anchors are level and the pull is plumb between them."),
    conditions=(
        Condition(
            "The two legs together must be longer than the anchors are apart, and not lie in one "
            f"straight line: {_NO_LIMIT}",
            "Use longer legs or anchors closer together.",
            lambda v: v["anchor_spacing"] < 2 * v["leg_length"] * np.cos(FLAT / 2),
        ),
    ),
)
def bridle_leg_tension(argument: Argument) -> Step:
    """Tension L in N of each of two legs whose length and anchor spacing were measured (m)."""
    load, length, spacing = argument.symbols(q.LOAD, q.LEG_LENGTH, q.ANCHOR_SPACING)
    depth, tension = argument.symbols(q.KNOT_DEPTH, q.LEG_TENSION)
    below = argument.law(
        "The knot hangs below the middle, at a right angle (Pythagoras).",
        depth,
        argument.sympy.sqrt(length**2 - (spacing / 2) ** 2),
    )
    balance = argument.law(
        "Upward balance: of each leg's tension the share that its depth is of its length.",
        2 * tension * depth / length,
        load,
    )
    found = argument.solve("Solve for the tension.", balance, tension)
    return argument.substitute("Put the depth in.", found, below)
