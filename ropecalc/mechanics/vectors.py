"""Weight, one rope pulled aside, and the resultant of two pulls."""

from operator import truediv

from ropecalc.derivation import Argument, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.units import STANDARD_GRAVITY


@derive("Weight of a mass", given=(q.MASS,), result=q.LOAD)
def weight(argument: Argument) -> Step:
    """Weight W in N of a mass m in kg under standard gravity (NIST SP 811)."""
    m, load = argument.symbols(q.MASS, q.LOAD)
    gravity = argument.sympy.Float(repr(STANDARD_GRAVITY), 8)
    return argument.law("Gravity pulls each kilogram with 9.80665 newtons.", load, m * gravity)


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
