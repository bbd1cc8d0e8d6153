"""The weakest link of one track line that ends in a tensioner.

::

    rope with its knot -- rope grab -- (o)= strand - device      Rope, grab and travelling pulley
                                        `-= strand - hub         carry the whole line, the device
                                                                 one of the pulley's two strands.
"""

from ropecalc import cautions
from ropecalc.derivation import Argument, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import strength, tensioner_lines
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.tensioner import DEVICE_PULL, NEAR_LINE

GRAB_STRENGTH = named(
    q.COMPONENT_STRENGTH, "grab_strength", "what the rope grab holds", r"B_\mathrm{grab}"
)
PULLEY_STRENGTH = named(
    q.COMPONENT_STRENGTH,
    "pulley_strength",
    "what the travelling pulley holds",
    r"B_\mathrm{pulley}",
)
DEVICE_STRENGTH = named(
    q.COMPONENT_STRENGTH, "device_strength", "what the device holds", r"B_\mathrm{dev}"
)


@derive(
    "Margin of the weakest part of one track line",
    given=(
        NEAR_LINE,
        q.BREAKING_STRENGTH,
        q.TERMINATION,
        GRAB_STRENGTH,
        PULLEY_STRENGTH,
        DEVICE_STRENGTH,
        q.SHEAVE_EFFICIENCY,
    ),
    between=(q.COMPONENT_STRENGTH, DEVICE_PULL),
    result=q.MARGIN,
    assumptions=(
        *tensioner_lines.TAKING_IN,
        "The strand has not been handed over to the progress capture yet.",
        "Strengths and loads are taken as they stand, without an uncertainty.",
    ),
    cautions=(cautions.COMMON_HUB, *strength.LIMITS),
    source="the definition of a static factor",
)
def line_margin(argument: Argument) -> Step:
    """Least strength over load of rope, grab, travelling pulley and device: a plain number."""
    line, grab, pulley, device = argument.symbols(
        NEAR_LINE, GRAB_STRENGTH, PULLEY_STRENGTH, DEVICE_STRENGTH
    )
    rope, pull = argument.symbols(q.COMPONENT_STRENGTH, DEVICE_PULL)
    knotted = strength.terminated_strength.argue(argument)
    strand = tensioner_lines.device_strand.argue(argument)
    least = argument.law(
        "Divide each strength by what that part carries. Rope, grab and travelling pulley carry "
        "the line, the device its own strand. The smallest is the margin.",
        argument.symbol(q.MARGIN),
        argument.sympy.Min(rope / line, grab / line, pulley / line, device / pull),
    )
    return argument.substitute("Put the rope's strength and the strand in.", least, knotted, strand)
