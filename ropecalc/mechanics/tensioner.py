"""Several track lines that are one rope in series, tensioned at one end: they share unequally.

::

      o----.   .----.   .---- made fast     o  sheaves; two of them, one at each end, lie
      |    |   |    |   |                      between neighbouring lines
     S_1  (o) (o)  (o) (o)
      |                                     S_1 the line at the tensioner, moving towards it:
    tensioner                                   the most loaded line while rope is taken in

A rope that moves over a sheave loses tension: behind it only the efficiency e of what is ahead.
"""

from ropecalc import cautions
from ropecalc.derivation import Argument, Domain, Range, Step, Variable, derive
from ropecalc.mechanics import quantities as q
from ropecalc.units import Kind

EFFICIENCY = Variable(
    "efficiency",
    "e",
    "efficiency of one sheave: tension behind it over tension ahead of it",
    Kind.RATIO,
    Domain(0.0, 1.0, low_open=True, high_open=True),
    Range(0.6, 0.97, 0.9),
)
LINES = Variable(
    "lines", "n", "number of track lines in series", Kind.RATIO, Domain(1.0, 20.0), Range(1, 4, 2)
)
EFFECTIVE_LINES = Variable(
    "effective_lines",
    r"n_\mathrm{eff}",
    "tension of all lines together over that of the most loaded line",
    Kind.RATIO,
    Domain(1.0, 20.0),
    Range(1, 4, 1.8),
)
WORST_LINE = Variable(
    "worst_line",
    "S_1",
    "tension of the line at the tensioner",
    Kind.FORCE,
    q.TRACK_TENSION.domain,
    Range(50, 5000, 900),
)


@derive(
    "Lines in series: how many lines' worth they are while rope is taken in",
    given=(EFFICIENCY, LINES),
    between=(WORST_LINE, q.TRACK_TENSION),
    result=EFFECTIVE_LINES,
    assumptions=(
        "The track lines are one rope, tensioned at one end and made fast at the other.",
        "The rope is moving towards the tensioner (taking in) at every sheave.",
        "Two sheaves of the same efficiency lie between neighbouring lines.",
        "The litter's own pulleys turn without friction.",
    ),
    cautions=(
        "When the rope moves the other way the lines share the other way round; at rest the shares "
        "lie anywhere in between.",
        cautions.COMMON_HUB,
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    source="derived here from the tension lost at each sheave",
)
def effective_lines(argument: Argument) -> Step:
    """All track lines together over the most loaded one, while rope is taken in.

    Between 1 and the number of lines; the most loaded line is the one at the tensioner. Between
    whole numbers of lines the formula merely joins them up. Holds while the rope moves towards
    the tensioner, and for efficiencies below 1; without friction it is the number of lines.
    """
    efficiency, lines, worst = argument.symbols(EFFICIENCY, LINES, WORST_LINE)
    together, effective = argument.symbols(q.TRACK_TENSION, EFFECTIVE_LINES)
    sp = argument.sympy
    index = sp.Symbol("k", integer=True, nonnegative=True)
    added = sp.summation(efficiency ** (2 * index), (index, 0, lines - 1))
    below_one = added.args[-1].expr  # the branch without friction comes first
    total = argument.law(
        "Each further line carries the square of the efficiency times the line before it: a "
        "geometric series, added up here.",
        together,
        worst * below_one,
    )
    ratio = argument.law(
        "Count all lines together in units of the most loaded one.", effective, together / worst
    )
    return argument.substitute("Put the sum in: its tension drops out.", ratio, total)
