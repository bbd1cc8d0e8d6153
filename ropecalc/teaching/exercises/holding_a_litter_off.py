"""Exercise: holding a litter off the rock, and what changes along the raise."""

from ropecalc import cautions
from ropecalc.teaching.exercises.content import ExerciseContent, Section
from ropecalc.teaching.questions.bank import along_the_raise as along
from ropecalc.teaching.questions.bank import holding_off as off

HOLDING_A_LITTER_OFF = ExerciseContent(
    key="holding-a-litter-off",
    file="08_09_holding_a_litter_off",
    title="Holding a litter off the rock",
    words=(
        "Draw the forces at the master attachment point before you calculate. Type a number with "
        "its unit, with a decimal comma or a point, and press Enter or **Check**. Where a wrong "
        "answer comes from a common mistake, the page says which. Hints come one step at a time."
    ),
    lesson="08_holding_a_litter_off",
    sections=(
        Section(
            "An attendant",
            "Somebody stands with their feet on the wall and pushes the litter out.",
            (off.ATTENDANT_PUSH, off.ATTENDANT_HAUL),
        ),
        Section(
            "One line to the ground",
            "A tag line is tied at the master attachment point and pulls the litter out and down, "
            "or up where its hub is higher.",
            (off.TAG_FROM_PLACES, off.HAUL_AGAINST_TAG, off.HIGH_HUB, off.TAG_ON_THE_RAIL),
        ),
        Section(
            "Track lines",
            "Track lines run from the haul directional down through a pulley at the litter and out "
            "to the hub.",
            (off.TRACK_TENSION, off.HAUL_BESIDE_TRACK, off.TRACK_LIFT),
        ),
        Section(
            "Along the raise",
            "Where the litter can be, where it has to be, and what happens at the hub.",
            (
                off.OUT_OF_REACH,
                along.HUB_TOO_CLOSE,
                along.CLEAR_THE_LINE,
                along.TAKE_IN,
                along.HUB_UPLIFT,
            ),
        ),
    ),
    cautions=(
        cautions.AUTHORITY,
        cautions.STATIC,
        cautions.FRICTIONLESS,
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
        cautions.ATTENDANT_LIMITS,
    ),
)
