"""Weight and its units, the parts of a pull, one rope pulled aside, two pulls added."""

from operator import truediv
from typing import Any

import numpy as np

from ropecalc.derivation import Argument, Condition, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.units import STANDARD_GRAVITY, find_unit


@derive("Weight of a mass", given=(q.MASS,), result=q.LOAD)
def weight(argument: Argument) -> Step:
    """Weight W in N of a mass m in kg under standard gravity (NIST SP 811)."""
    m, load = argument.symbols(q.MASS, q.LOAD)
    gravity = argument.sympy.Float(repr(STANDARD_GRAVITY), 8)
    return argument.law(
        "Gravity pulls each kilogram with 9.80665 newtons. A thousand newtons make a kilonewton.",
        load,
        m * gravity,
    )


@derive(
    "A hanging load pulled aside: how far the rope leans",
    given=(q.LOAD, q.SIDE_PULL),
    between=(q.ROPE_TENSION,),
    result=q.PLUMB_ANGLE,
    assumptions=("The pull is horizontal.", "One rope carries the load."),
)
def side_pull_angle(argument: Argument) -> Step:
    """Angle from plumb, in rad, of a rope that carries W while a horizontal pull Q acts."""
    load, pull, tension, angle = argument.symbols(
        q.LOAD, q.SIDE_PULL, q.ROPE_TENSION, q.PLUMB_ANGLE
    )
    sin, cos, tan, atan = (getattr(argument.sympy, n) for n in ("sin", "cos", "tan", "atan"))
    sideways = argument.law(
        "Sideways balance: the leaning rope pulls back as hard as we pull aside.",
        tension * sin(angle),
        pull,
    )
    upward = argument.law(
        "Upward balance: the rope carries the weight.", tension * cos(angle), load
    )
    ratio = argument.combine(
        "Divide the first by the second: the tension drops out.", truediv, sideways, upward
    )
    slope = argument.rewrite("Sine over cosine is the tangent.", ratio, left=tan(angle))
    return argument.solved("Take the angle whose tangent that is.", angle, atan(slope.equation.rhs))


@derive(
    "A hanging load pulled aside: tension of the rope",
    given=(q.LOAD, q.SIDE_PULL),
    between=(q.PLUMB_ANGLE,),
    result=q.ROPE_TENSION,
    assumptions=("The pull is horizontal.", "One rope carries the load."),
)
def side_pull_tension(argument: Argument) -> Step:
    """Tension S in N of a rope that carries W while a horizontal pull Q acts."""
    load, pull, angle, tension = argument.symbols(
        q.LOAD, q.SIDE_PULL, q.PLUMB_ANGLE, q.ROPE_TENSION
    )
    sin, cos = argument.sympy.sin, argument.sympy.cos
    sideways = argument.law("Sideways balance.", tension * sin(angle), pull)
    upward = argument.law("Upward balance.", tension * cos(angle), load)
    squares = argument.combine("Square both and add.", lambda a, b: a**2 + b**2, sideways, upward)
    one = argument.rewrite("The squares of sine and cosine make one.", squares, left=tension**2)
    return argument.solve("Take the root.", one, tension)


@derive(
    "Resultant of two pulls",
    given=(q.FIRST_PULL, q.SECOND_PULL, q.PULL_ANGLE),
    between=(q.ALONG, q.ACROSS),
    result=q.RESULTANT,
    assumptions=("Both pulls act at one point.", "The angle is between the pulling directions."),
)
def resultant_of_two(argument: Argument) -> Step:
    """Size R in N of the sum of two pulls whose directions are an angle apart (0 to π rad)."""
    one, two, angle = argument.symbols(q.FIRST_PULL, q.SECOND_PULL, q.PULL_ANGLE)
    along, across, total = argument.symbols(q.ALONG, q.ACROSS, q.RESULTANT)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    a = argument.law("Add the parts along the first pull.", along, one + two * cos(angle))
    c = argument.law("Add the parts across it.", across, two * sin(angle))
    square = argument.law(
        "The two parts stand at right angles (Pythagoras).",
        total,
        argument.sympy.sqrt(along**2 + across**2),
    )
    put_in = argument.substitute("Put the parts in.", square, a, c)
    neat = argument.sympy.sqrt(one**2 + two**2 + 2 * one * two * cos(angle))
    return argument.rewrite("The squares of sine and cosine make one.", put_in, neat)


# --- the same force in other units ------------------------------------------------------------


def _in_a_kilonewton(argument: Argument, unit: str) -> Any:
    """How many of a ``unit`` of force make a kilonewton, to the three figures that one learns."""
    return argument.sympy.Integer(round(find_unit("kN").factor / find_unit(unit).factor))


@derive(
    "Pounds-force into kilonewtons",
    given=(q.POUNDS_FORCE,),
    result=q.KILONEWTONS,
    assumptions=("The factor is rounded to three figures.",),
)
def pounds_into_kilonewtons(argument: Argument) -> Step:
    """Number of kilonewtons for a number of pounds-force, good to one part in a thousand."""
    pounds, kilonewtons = argument.symbols(q.POUNDS_FORCE, q.KILONEWTONS)
    same = argument.law(
        "Both numbers name one force, and it takes 225 pounds-force to make a kilonewton.",
        pounds,
        kilonewtons * _in_a_kilonewton(argument, "lbf"),
    )
    return argument.solve("Divide.", same, kilonewtons)


@derive(
    "Kilonewtons into kilograms-force",
    given=(q.KILONEWTONS,),
    result=q.KILOGRAMS_FORCE,
    assumptions=("The factor is rounded to three figures.",),
)
def kilonewtons_into_kilograms(argument: Argument) -> Step:
    """Number of kilograms-force for a number of kilonewtons, good to one part in a thousand."""
    kilonewtons, kilograms = argument.symbols(q.KILONEWTONS, q.KILOGRAMS_FORCE)
    return argument.law(
        "Both numbers name one force, and it takes 102 kilograms-force to make a kilonewton.",
        kilograms,
        kilonewtons * _in_a_kilonewton(argument, "kgf"),
    )


# --- the parts of one pull --------------------------------------------------------------------


@derive(
    "The level part of a rope's pull",
    given=(q.ROPE_TENSION, q.ROPE_ELEVATION),
    result=q.LEVEL_PART,
    assumptions=("The angle is measured from the horizontal.",),
)
def level_part(argument: Argument) -> Step:
    """Level part in N of a tension S in a rope that rises at an angle above the horizontal."""
    tension, angle, level = argument.symbols(q.ROPE_TENSION, q.ROPE_ELEVATION, q.LEVEL_PART)
    return argument.law(
        "Draw the pull as the slanted side of a right triangle: the level side lies at the angle, "
        "so it goes with the cosine.",
        level,
        tension * argument.sympy.cos(angle),
    )


@derive(
    "The upward part of a rope's pull",
    given=(q.ROPE_TENSION, q.ROPE_ELEVATION),
    result=q.UPWARD_PART,
    assumptions=("The angle is measured from the horizontal.",),
)
def upward_part(argument: Argument) -> Step:
    """Upward part in N of a tension S in a rope that rises at an angle above the horizontal."""
    tension, angle, upward = argument.symbols(q.ROPE_TENSION, q.ROPE_ELEVATION, q.UPWARD_PART)
    return argument.law(
        "In the same triangle the upright side lies opposite the angle, so it goes with the sine.",
        upward,
        tension * argument.sympy.sin(angle),
    )


# --- how far a side pull moves a load ---------------------------------------------------------


@derive(
    "A hanging load pulled aside: how far it moves",
    given=(q.LOAD, q.SIDE_PULL, q.ROPE_ABOVE),
    between=(q.ROPE_TENSION, q.PLUMB_ANGLE),
    result=q.MOVED_ASIDE,
    assumptions=side_pull_angle.assumptions,
)
def side_pull_offset(argument: Argument) -> Step:
    """Distance off plumb, in m, of a load W on a rope of given length while Q pulls level."""
    load, pull, length = argument.symbols(q.LOAD, q.SIDE_PULL, q.ROPE_ABOVE)
    angle, moved = argument.symbols(q.PLUMB_ANGLE, q.MOVED_ASIDE)
    lean = side_pull_angle.argue(argument)
    aside = argument.law(
        "A leaning rope reaches sideways by the sine of its lean for each unit of its length.",
        moved,
        length * argument.sympy.sin(angle),
    )
    put_in = argument.substitute(
        "Put the lean in: the length of rope did not matter for it.", aside, lean
    )
    return argument.rewrite(
        "Write the sine as one side over the long side of the triangle of forces.",
        put_in,
        length * pull / argument.sympy.sqrt(load**2 + pull**2),
    )


_STILL_HANGS = Condition(
    "The upward part of the pull must stay below the weight, so that the load hangs on its rope.",
    "Pull less, or at a lower angle.",
    lambda v: v["slanted_pull"] * np.sin(v["pull_elevation"]) < v["load"],
)


_SLANTED_GIVEN = (q.LOAD, q.SLANTED_PULL, q.PULL_ELEVATION)


def _slanted(argument: Argument) -> tuple[Step, Step]:
    load, pull, elevation = argument.symbols(*_SLANTED_GIVEN)
    tension, angle = argument.symbols(q.ROPE_TENSION, q.PLUMB_ANGLE)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    sideways = argument.law(
        "Sideways balance: only the level part of the pull moves the load aside.",
        tension * sin(angle),
        pull * cos(elevation),
    )
    upward = argument.law(
        "Upward balance: the rope carries what the pull does not lift.",
        tension * cos(angle),
        load - pull * sin(elevation),
    )
    return sideways, upward


@derive(
    "A pull along a slope: how far the rope leans",
    given=_SLANTED_GIVEN,
    between=(q.ROPE_TENSION,),
    result=q.PLUMB_ANGLE,
    assumptions=("One rope carries the load.",),
    conditions=(_STILL_HANGS,),
)
def slanted_pull_angle(argument: Argument) -> Step:
    """Angle from plumb, in rad, of a rope that carries W while a pull acts above or below level."""
    tan, atan = argument.sympy.tan, argument.sympy.atan
    angle = argument.symbol(q.PLUMB_ANGLE)
    sideways, upward = _slanted(argument)
    ratio = argument.combine(
        "Divide the first by the second: the tension drops out.", truediv, sideways, upward
    )
    slope = argument.rewrite("Sine over cosine is the tangent.", ratio, left=tan(angle))
    return argument.solved("Take the angle whose tangent that is.", angle, atan(slope.equation.rhs))


@derive(
    "A pull along a slope: tension of the rope",
    given=_SLANTED_GIVEN,
    between=(q.PLUMB_ANGLE,),
    result=q.ROPE_TENSION,
    assumptions=("One rope carries the load.",),
    conditions=(_STILL_HANGS,),
)
def slanted_pull_tension(argument: Argument) -> Step:
    """Tension S in N of a rope that carries W while a pull acts above or below level."""
    load, pull, elevation = argument.symbols(*_SLANTED_GIVEN)
    tension = argument.symbol(q.ROPE_TENSION)
    sideways, upward = _slanted(argument)
    squares = argument.combine("Square both and add.", lambda a, b: a**2 + b**2, sideways, upward)
    one = argument.rewrite(
        "The squares of sine and cosine make one.",
        squares,
        load**2 + pull**2 - 2 * load * pull * argument.sympy.sin(elevation),
        left=tension**2,
    )
    return argument.solve("Take the root.", one, tension)


@derive(
    "How far a leaning rope reaches sideways",
    given=(q.ROPE_ABOVE, q.PLUMB_ANGLE),
    result=q.MOVED_ASIDE,
    assumptions=("The rope is straight.",),
)
def lean_reach(argument: Argument) -> Step:
    """Distance off plumb, in m, of the end of a rope of given length that leans from plumb."""
    length, angle, moved = argument.symbols(q.ROPE_ABOVE, q.PLUMB_ANGLE, q.MOVED_ASIDE)
    return argument.law(
        "The rope is the long side of a right triangle; the way off plumb lies opposite the lean.",
        moved,
        length * argument.sympy.sin(angle),
    )
