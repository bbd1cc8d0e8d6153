"""How far a rope stretches under a steady tension, and how stiff the rope is.

Stiffness EA is the tension that would double the rope's length if it stayed linear. It is a
property of the rope alone; a longer piece of the same rope stretches more. Nothing is built in:
the stiffness comes from the rope's own test, and results that need it give both bounds, for ropes
that do not stretch and for ropes that do.
"""

from ropecalc import cautions
from ropecalc.derivation import Argument, Step, derive
from ropecalc.mechanics import quantities as q

ELASTIC = (
    "Real ropes stretch more when new or wet, keep some of it, and are softer at low tension than "
    "a stretch in proportion to the tension says."
)
"""What a result with stretching ropes says before the cautions of the model."""
FAST = (
    "An elongation is quoted for a slow pull. In a fast arrest a rope is stiffer than that, and "
    "the peak can be higher than given here."
)
BOTH_BOUNDS = (
    "Two bounds are given, for ropes that do not stretch and for ropes that do. Count on the "
    "larger force and on the smaller clearance of the two."
)
_LINEAR = "The rope stretches in proportion to its tension (Hooke)."
_CAUTIONS = (ELASTIC, BOTH_BOUNDS, cautions.STRETCHING, cautions.AUTHORITY)
_RATED = (
    "An elongation from a standard's test holds for a new, dry rope; measure your own where the "
    "result matters.",
    FAST,
    *_CAUTIONS,
)


@derive(
    "Stretch of a rope under a steady tension",
    given=(q.ROPE_TENSION, q.ROPE_LENGTH, q.STIFFNESS),
    result=q.STRETCH,
    assumptions=(_LINEAR, "The tension is the same along the whole length."),
    cautions=_CAUTIONS,
    source="Hooke's law",
)
def stretch(argument: Argument) -> Step:
    """Stretch in m of a rope of length l_0 m (without tension) and stiffness EA in N."""
    tension, length, stiffness, longer = argument.symbols(
        q.ROPE_TENSION, q.ROPE_LENGTH, q.STIFFNESS, q.STRETCH
    )
    hooke = argument.law(
        "Hooke: the tension is the stiffness times the stretch per length.",
        tension,
        stiffness * longer / length,
    )
    return argument.solve("Solve for the stretch.", hooke, longer)


@derive(
    "Length of a rope without its tension",
    given=(q.STRETCHED_LENGTH, q.ROPE_TENSION, q.STIFFNESS),
    between=(q.STRETCH,),
    result=q.ROPE_LENGTH,
    assumptions=(_LINEAR, "The tension is the same along the whole length."),
    cautions=_CAUTIONS,
    source="Hooke's law",
)
def unstretched_length(argument: Argument) -> Step:
    """Length in m that a rope measured at l_1 m under tension has without it."""
    measured, length, longer = argument.symbols(q.STRETCHED_LENGTH, q.ROPE_LENGTH, q.STRETCH)
    hooke = stretch.argue(argument)
    parts = argument.law(
        "What is measured is the rope without tension and its stretch.", measured, length + longer
    )
    put_in = argument.substitute("Put the stretch in.", parts, hooke)
    return argument.solve("Solve for the length without tension.", put_in, length)


@derive(
    "Stiffness from the elongation quoted at a tenth of the breaking strength",
    given=(q.BREAKING_STRENGTH, q.QUOTED_ELONGATION),
    between=(q.ROPE_TENSION, q.ROPE_LENGTH, q.STRETCH),
    result=q.STIFFNESS,
    assumptions=(_LINEAR, "The elongation is quoted at a tenth of the breaking strength."),
    cautions=_RATED,
    source="Hooke's law",
)
def stiffness_from_quoted_elongation(argument: Argument) -> Step:
    """Stiffness EA in N from the breaking strength in N and the elongation at a tenth of it."""
    breaking, quoted, stiffness = argument.symbols(
        q.BREAKING_STRENGTH, q.QUOTED_ELONGATION, q.STIFFNESS
    )
    tension, length, longer = argument.symbols(q.ROPE_TENSION, q.ROPE_LENGTH, q.STRETCH)
    hooke = stretch.argue(argument)
    tested = argument.law("In the test the tension is a tenth of it.", tension, breaking / 10)
    share = argument.law("The elongation is the stretch per length.", longer, quoted * length)
    put_in = argument.substitute("Put both into Hooke's law.", hooke, tested, share)
    return argument.solve("The length drops out. Solve for the stiffness.", put_in, stiffness)


@derive(
    "Stretch of a rope from its quoted elongation",
    given=(q.ROPE_TENSION, q.ROPE_LENGTH, q.BREAKING_STRENGTH, q.QUOTED_ELONGATION),
    between=(q.STIFFNESS,),
    result=q.STRETCH,
    assumptions=(
        _LINEAR,
        "The elongation is quoted at a tenth of the breaking strength.",
        "The tension is the same along the whole length.",
    ),
    cautions=_RATED,
    source="Hooke's law",
)
def stretch_from_quoted_elongation(argument: Argument) -> Step:
    """Stretch in m at a tension in N, for a rope whose elongation is quoted as a share."""
    tension, length, breaking = argument.symbols(q.ROPE_TENSION, q.ROPE_LENGTH, q.BREAKING_STRENGTH)
    quoted, stiffness, longer = argument.symbols(q.QUOTED_ELONGATION, q.STIFFNESS, q.STRETCH)
    tested = argument.law(
        "In the test a tenth of the breaking strength gave the quoted elongation (Hooke).",
        breaking / 10,
        stiffness * quoted,
    )
    stiff = argument.solve("So stiff is the rope.", tested, stiffness)
    hooke = argument.law(
        "At any other tension the stretch per length is that tension over the stiffness.",
        longer,
        length * tension / stiffness,
    )
    return argument.substitute("Put the stiffness in.", hooke, stiff)


@derive(
    "Stiffness from the elongation between two loads",
    given=(q.LOAD_STEP, q.ELONGATION),
    between=(q.STRETCH, q.ROPE_LENGTH),
    result=q.STIFFNESS,
    assumptions=(
        "The rope stretches in proportion to its tension between the two loads.",
        "The elongation is counted from the length under the smaller load.",
    ),
    cautions=_RATED,
    source="Hooke's law",
)
def stiffness_from_two_loads(argument: Argument) -> Step:
    """Stiffness EA in N from the force added in N and the elongation that it gave (a share)."""
    added, elongation, stiffness = argument.symbols(q.LOAD_STEP, q.ELONGATION, q.STIFFNESS)
    longer, length = argument.symbols(q.STRETCH, q.ROPE_LENGTH)
    hooke = argument.law(
        "Hooke, for the force that is added: it is the stiffness times the stretch per length.",
        added,
        stiffness * longer / length,
    )
    share = argument.law("The elongation is the stretch per length.", longer, elongation * length)
    put_in = argument.substitute("Put it in: the length drops out.", hooke, share)
    return argument.solve("Solve for the stiffness.", put_in, stiffness)
