"""What a plan hands to the people who run it: rope for the track lines, and where to stop.

::

    tie-off ---- directional          One track line runs from its tie-off over the directional,
                     `.               past the litter and out towards the hub. It ends at its rope
                       P              grab, short of the hub by the gap; its tail goes on to an
                         ` . grab     anchor of its own.
                              ` - [] - hub
"""

from ropecalc import cautions
from ropecalc.derivation import NOT_NEGATIVE, Argument, Range, Step, Variable, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import strength
from ropecalc.mechanics.manners import named
from ropecalc.units import Kind

SETBACK = Variable(
    "setback", r"\ell_\mathrm{back}", "from the tie-off to the directional", Kind.LENGTH,
    NOT_NEGATIVE, Range(4, 20, 8),
)  # fmt: skip
GAP = Variable(
    "gap", r"\ell_\mathrm{gap}", "from the rope grab to the hub while the line is longest",
    Kind.LENGTH, NOT_NEGATIVE, Range(2, 15, 6),
)  # fmt: skip
LINE_TAIL = Variable(
    "line_tail", r"\ell_\mathrm{tail}", "tail beyond the rope grab", Kind.LENGTH,
    NOT_NEGATIVE, Range(4, 20, 10),
)  # fmt: skip
LINE_ROPE = named(q.TRACK_LENGTH, "line_rope", "length of rope for one line", r"\ell_\mathrm{line}")


@derive(
    "Rope for one track line",
    given=(SETBACK, q.TRACK_LENGTH, GAP, LINE_TAIL),
    result=LINE_ROPE,
    assumptions=(
        "The length past the litter is the longest of the whole raise.",
        "The rope grab takes the line at its longest; later it comes nearer to the hub.",
    ),
    cautions=(
        "Knots, bends and a tail that is tied back take rope as well.",
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    source="derived here by following the rope",
)
def track_rope(argument: Argument) -> Step:
    """Length in m of the rope for one track line, tail included."""
    back, past, gap, tail = argument.symbols(SETBACK, q.TRACK_LENGTH, GAP, LINE_TAIL)
    return argument.law(
        "Follow the rope: to the directional, past the litter towards the hub, but only up to the "
        "grab, and on to the end of its tail.",
        argument.symbol(LINE_ROPE),
        back + past - gap + tail,
    )


stop_value = strength.margin.solved_for("component_load")
"""The load in N of a component at which the margin that was asked for is used up."""
