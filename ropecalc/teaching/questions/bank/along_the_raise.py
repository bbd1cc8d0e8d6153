"""Questions on what changes as the litter goes up: clearance, rope to take in, the hub, a lock."""

from sympy import Integer, cos, sin, tan

from ropecalc.mechanics import guiding, locked
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.template import Given, Mistake, Template, Tolerance

_DIRECTIONAL = (Given(q.X_D, 0.1, 0.6, 0.1, "m"), Given(q.Z_D, 31.0, 34.0, 0.5, "m"))
_TWO_PER_CENT = Tolerance(relative=0.02)

CLEAR_THE_LINE = Template(
    key="clear-the-haul-line",
    title="Keeping the haul line off an outcrop",
    stem=(
        "The tip of an outcrop is {x_O} out and {z_O} up. The haul directional is {x_D} out and "
        "{z_D} up, and the litter's master attachment point is still only {z} up. How far out "
        "must it be for the haul line to pass the tip with a clearance of {clearance}, measured "
        "level?"
    ),
    asked="Distance out from the wall",
    givens=(
        Given(q.Z_LOW, 1, 14, 1, "m"),
        *_DIRECTIONAL,
        Given(q.X_O, 0.8, 2.5, 0.1, "m"),
        Given(q.Z_O, 15, 27, 1, "m"),
        Given(q.CLEARANCE, 0.3, 0.8, 0.1, "m"),
    ),
    derivation=guiding.haul_clearance_offset,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "same-at-every-height",
            "The same distance at every height",
            "The haul line leans: what keeps it clear at the tip puts the litter further out the "
            "lower it is.",
            lambda v: v.x_O + v.clearance,
        ),
        Mistake(
            "ratio-upside-down",
            "The ratio turned upside down",
            "The litter is further below the directional than the tip is, so it is further out.",
            lambda v: v.x_D + (v.x_O + v.clearance - v.x_D) * (v.z_D - v.z_O) / (v.z_D - v.z),
        ),
        Mistake(
            "scaled-from-the-ground",
            "Scaled from the ground",
            "The haul line is straight from the directional: measure heights down from there.",
            lambda v: (v.x_O + v.clearance) * (v.z_O - v.z) / v.z_O,
        ),
    ),
    difficulty=2,
    objective="find where a litter has to start so that its haul line clears an outcrop",
    must_pass=True,
)

TAKE_IN = Template(
    key="take-in-rate",
    title="Track rope to take in",
    stem=(
        "The litter goes straight up. At this moment the upper legs of the track lines rise "
        "{track_elevation} above the horizontal and their ground legs fall {ground_depression} "
        "below it. How much of each track line has to be taken in for each unit of height gained? "
        "Taking in counts as positive, paying out as negative."
    ),
    asked="Rope taken in for each unit of height (a plain number)",
    givens=(
        Given(q.TRACK_ELEVATION, 60, 84, 1, "°"),
        Given(q.GROUND_DEPRESSION, 6, 36, 1, "°"),
    ),
    derivation=guiding.take_in_rate,
    tolerance=Tolerance(absolute=0.02),
    mistakes=(
        Mistake(
            "length-unchanged",
            "The length taken to stay the same",
            "The upper leg gets shorter faster than the ground leg gets longer.",
            lambda v: Integer(0),
        ),
        Mistake(
            "track-like-a-tag",
            "The track lines handled like a tag line",
            "A tag line is paid out. A track line also has an upper leg, which shortens by more.",
            lambda v: -sin(v.ground_depression),
        ),
        Mistake(
            "as-much-as-the-height",
            "As much rope as height gained",
            "The upper leg leans and the ground leg lengthens: both make it less.",
            lambda v: Integer(1),
        ),
        Mistake(
            "angles-added",
            "Both legs taken to shorten",
            "The ground leg gets longer as the litter rises.",
            lambda v: sin(v.track_elevation) + sin(v.ground_depression),
        ),
    ),
    difficulty=2,
    objective="tell how much track rope comes in as the litter goes up",
    must_pass=True,
)

HUB_UPLIFT = Template(
    key="hub-uplift",
    title="What lifts the hub",
    stem=(
        "All lines together pull on the hub with {line_tension}, and arrive there rising "
        "{ground_depression} above the horizontal. With what upward force do they pull at the hub?"
    ),
    asked="Upward pull on the hub",
    givens=(
        Given(q.LINE_TENSION, 0.5, 6.0, 0.1, "kN"),
        Given(q.GROUND_DEPRESSION, 5, 38, 1, "°"),
    ),
    derivation=guiding.hub_uplift,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "hub-pulled-level",
            "The hub taken to be pulled level",
            "The lines rise towards the litter; the higher it is, the more they lift the hub.",
            lambda v: Integer(0),
        ),
        Mistake(
            "cosine-for-sine",
            "The level part instead of the upward part",
            "The angle is measured from the horizontal, so the upward part goes with its sine.",
            lambda v: v.line_tension * cos(v.ground_depression),
        ),
        Mistake(
            "direction-ignored",
            "The whole pull taken as upward",
            "Only a part of the pull is upward; the rest drags the hub towards the wall.",
            lambda v: v.line_tension,
        ),
    ),
    difficulty=1,
    objective="find how hard the lines lift the ground anchor",
)

HUB_TOO_CLOSE = Template(
    key="hub-too-close",
    title="A hub too close to the wall",
    stem=(
        "The master attachment point must get to a place {x} out and {z} up. The haul directional "
        "is {x_D} out and {z_D} up, and the hub will stand {z_B} up. At which distance of the hub "
        "from the wall would directional, litter and hub be on one straight line, so that no "
        "tension could hold it there?"
    ),
    asked="Distance of the hub from the wall",
    givens=(
        Given(q.X, 1.5, 3.0, 0.1, "m"),
        Given(q.Z, 22, 28, 1, "m"),
        *_DIRECTIONAL,
        Given(q.Z_B, 0.5, 2.0, 0.5, "m"),
    ),
    derivation=guiding.hub_limit,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "twice-the-offset",
            "Twice as far out as the litter",
            "How far depends on the heights: run over fall is the same above the litter and for "
            "the whole line.",
            lambda v: 2 * v.x,
        ),
        Mistake(
            "half-right-angle-rule",
            "As far out as the directional is high",
            "That would be a line at 45°. The line has to pass through the litter.",
            lambda v: v.z_D,
        ),
        Mistake(
            "measured-from-the-hub",
            "The litter's height above the hub used in the ratio",
            "The slope is known above the litter: count how far the litter is below the "
            "directional.",
            lambda v: v.x_D + (v.x - v.x_D) * (v.z_D - v.z_B) / (v.z - v.z_B),
        ),
    ),
    difficulty=2,
    objective="find how near to the wall a hub may not stand",
)

SWING_IN = Template(
    key="locked-swing-in",
    title="Raising against a locked tensioner",
    stem=(
        "The tensioner is locked. At the litter the upper legs of the track lines rise "
        "{track_elevation} above the horizontal and their ground legs fall {ground_depression} "
        "below it. The haul team now raises the litter by a hand's breadth. How far does the "
        "litter swing in towards the wall for each unit of height gained?"
    ),
    asked="Swing in for each unit of height (a plain number)",
    givens=(
        Given(q.TRACK_ELEVATION, 52, 80, 1, "°"),
        Given(q.GROUND_DEPRESSION, 4, 36, 1, "°"),
    ),
    derivation=locked.swing_in_rate,
    tolerance=Tolerance(absolute=0.02),
    mistakes=(
        Mistake(
            "lock-keeps-the-distance",
            "The lock taken to keep the litter's distance out",
            "The lock keeps the length of the rope. Higher up, that rope lets the litter hang "
            "nearer to the wall.",
            lambda v: Integer(0),
        ),
        Mistake(
            "along-the-haul-line",
            "The litter taken to slide up along the haul line",
            "The track rope decides the way: the litter moves square to the line that halves the "
            "angle between the two legs.",
            lambda v: 1 / tan(v.track_elevation),
        ),
        Mistake(
            "take-in-for-swing",
            "The rope to take in given instead of the swing",
            "That is what the tensioner would have to take in. Locked, the litter swings in until "
            "the rope is as long as before.",
            lambda v: sin(v.track_elevation) - sin(v.ground_depression),
        ),
    ),
    difficulty=3,
    objective="say what a locked tensioner does to the litter's distance out",
    must_pass=True,
)


QUESTIONS = (
    CLEAR_THE_LINE,
    TAKE_IN,
    HUB_UPLIFT,
    HUB_TOO_CLOSE,
    SWING_IN,
)
"""This module's questions, in the order of the lesson."""
