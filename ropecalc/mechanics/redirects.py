"""A rope that turns through a pulley: what the pulley's anchor feels, and which way it leans.

::

               o head          alpha_1: front strand below the horizontal (towards the litter)
    alpha_2  .   \\  alpha_1    alpha_2: back strand below the horizontal (towards the haul team)
          .       \\            lean: from plumb, positive inward (towards the haul team)
"""

from ropecalc.derivation import Argument, Condition, Step, derive
from ropecalc.mechanics import quantities as q

_FREE_PULLEY = ("The pulley turns without friction, so both strands carry the same tension.",)


@derive(
    "Pull on a redirect's anchor",
    given=(q.STRAND_TENSION, q.STRAND_ANGLE),
    result=q.REDIRECT_PULL,
    assumptions=_FREE_PULLEY,
)
def redirect_resultant(argument: Argument) -> Step:
    """Pull R in N on the anchor of a free pulley; 2S at 0, S at 120°, nothing at 180°."""
    tension, angle, pull = argument.symbols(q.STRAND_TENSION, q.STRAND_ANGLE, q.REDIRECT_PULL)
    part = tension * argument.sympy.cos(angle / 2)
    return argument.law(
        "Each strand lies half the angle from the bisector. Across it the two cancel; along it "
        "they add up to the pull on the anchor.",
        pull,
        part + part,
    )


@derive(
    "Which way a high directional is pulled",
    given=(q.FRONT_DEPRESSION, q.BACK_DEPRESSION),
    between=(q.STRAND_TENSION, q.INWARD_PULL, q.DOWNWARD_PULL),
    result=q.LEAN,
    assumptions=_FREE_PULLEY,
    conditions=(
        Condition(
            "The two strands must turn through the pulley.",
            "Make at least one of them point below the horizontal.",
            lambda v: v["front_depression"] + v["back_depression"] > 0,
        ),
    ),
)
def head_lean(argument: Argument) -> Step:
    """Lean in rad, inward positive, of the resultant at a high directional."""
    front, back, tension = argument.symbols(q.FRONT_DEPRESSION, q.BACK_DEPRESSION, q.STRAND_TENSION)
    inward, down, lean = argument.symbols(q.INWARD_PULL, q.DOWNWARD_PULL, q.LEAN)
    sin, cos, tan, atan = (getattr(argument.sympy, n) for n in ("sin", "cos", "tan", "atan"))
    sideways = argument.law(
        "Add the inward parts: the back strand pulls in, the front strand out.",
        inward,
        tension * cos(back) - tension * cos(front),
    )
    downward = argument.law(
        "Add the downward parts.", down, tension * sin(front) + tension * sin(back)
    )
    slope = argument.law(
        "The lean is the angle whose tangent is inward over down.", tan(lean), inward / down
    )
    put_in = argument.substitute("Put the parts in.", slope, sideways, downward)
    half = argument.rewrite(
        "The tension drops out and half the difference of the angles remains.",
        put_in,
        tan((front - back) / 2),
    )
    return argument.rewrite(
        "Compare the angles.",
        argument.solved("Take the angle whose tangent that is.", lean, atan(half.equation.rhs)),
        (front - back) / 2,
    )
