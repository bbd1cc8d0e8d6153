"""The 2:1 in series while rope is let out: the far line carries most.

Everything is counted from the device, as in :mod:`~ropecalc.mechanics.tensioner_lines`. Let out,
the rope moves away from the device, so each sheave on the way asks for more tension beyond it.
"""

from ropecalc import cautions
from ropecalc.derivation import Argument, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.tensioner import COUNTED, DEVICE_PULL, NO_BACKUP
from ropecalc.mechanics.tensioner_lines import LINE, LINE_TENSION, NEAR_STRAND


@derive(
    "One line of a tensioner while rope is let out",
    given=(DEVICE_PULL, q.SHEAVE_EFFICIENCY, LINE),
    between=(NEAR_STRAND,),
    result=LINE_TENSION,
    assumptions=(
        "The tensioner rope is one rope, held at the device and tied off at its other end.",
        COUNTED,
        "The rope is moving away from the device (letting out) at every sheave.",
        "Every sheave has the same efficiency and both its strands are parallel.",
    ),
    cautions=(
        "Taken in, the lines share the other way round; at rest the shares lie anywhere in "
        "between.",
        NO_BACKUP,
        cautions.COMMON_HUB,
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    source="derived here from the tension lost at each sheave",
)
def line_let_out(argument: Argument) -> Step:
    """Tension in N of line ``line``, from the strand at the device (N), while rope is let out."""
    pull, efficiency, line = argument.symbols(DEVICE_PULL, q.SHEAVE_EFFICIENCY, LINE)
    strand, tension = argument.symbols(NEAR_STRAND, LINE_TENSION)
    passed = argument.law(
        "Two sheaves lie between neighbouring lines: what a sheave lets through is only its part "
        "of what pulls beyond it.",
        strand,
        pull / efficiency ** (2 * (line - 1)),
    )
    both = argument.law(
        "The line carries both strands at its pulley; the second one, beyond that sheave, carries "
        "more.",
        tension,
        strand + strand / efficiency,
    )
    return argument.substitute("Put the strand in.", both, passed)
