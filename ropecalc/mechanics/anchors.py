"""Two-leg anchors: equal legs, unequal legs, and the angle at which a leg reaches a limit.

::

        o         o          angles of unequal legs are measured from the line of pull
         \\ theta /           theta is between the two legs
          \\     /
           \\   /
             *
             |  W
"""

from ropecalc.derivation import Argument, Step, derive
from ropecalc.mechanics import quantities as q

ASSUMED = (
    "The pull acts at the point where the legs meet.",
    "The legs are free to take their own tension.",
)


@derive(
    "Two equal legs share a load",
    given=(q.LOAD, q.LEG_ANGLE),
    result=q.LEG_TENSION,
    assumptions=(*ASSUMED, "The pull lies on the bisector of the legs."),
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


@derive(
    "Two unequal legs: tension in leg 1",
    given=(q.LOAD, q.FIRST_LEG_ANGLE, q.SECOND_LEG_ANGLE),
    between=(q.SECOND_LEG,),
    result=q.FIRST_LEG,
    assumptions=_UNEQUAL,
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
)
def second_leg_tension(argument: Argument) -> Step:
    """Tension in N of leg 2; the leg nearer the line of pull carries more."""
    return _unequal_leg(argument, 1)
