"""Questions on margins, readings, stretch and what happens when something lets go."""

from sympy import cos, sin, sqrt

from ropecalc.mechanics import measurement, slip, stretch, swing
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.bank.slips import legs_open
from ropecalc.teaching.questions.template import Given, Mistake, Template, Tolerance

_TWO_PER_CENT = Tolerance(relative=0.02)
_THREE_PER_CENT = Tolerance(relative=0.03)
_LOAD = Given(q.LOAD, 1.2, 2.8, 0.1, "kN")
_UP = Given(q.HAUL_ELEVATION, 50, 66, 1, "°")
_DOWN = Given(q.GROUND_DEPRESSION, 10, 40, 1, "°")

REDIRECT_CELL = Template(
    key="margins-redirect-cell",
    title="A cell behind a redirect",
    stem=(
        "A load cell sits between a redirect and its anchor and shows {reading}. The two strands "
        "of the rope stand {strand_angle} apart, and the sheave has an efficiency of {efficiency}. "
        "How much does the strand carry that the rope runs towards?"
    ),
    asked="Tension of that strand",
    givens=(
        Given(q.READING, 0.8, 5.0, 0.1, "kN"),
        Given(q.STRAND_ANGLE, 20, 140, 5, "°"),
        Given(q.SHEAVE_EFFICIENCY, 0.8, 0.95, 0.05, ""),
    ),
    derivation=measurement.rope_ahead_of_redirect,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "reading-is-the-rope",
            "The reading taken for the tension of the rope",
            "The cell carries both strands together, not one of them.",
            lambda v: v.reading,
        ),
        Mistake(
            "half-the-reading",
            "Half the reading taken",
            "Half is right only for parallel strands without friction.",
            lambda v: v.reading / 2,
        ),
        Mistake(
            "sine-for-cosine",
            "The sine of half the angle taken",
            "The closer the strands are together, the more of each the cell carries.",
            lambda v: v.reading / (2 * sin(v.strand_angle / 2)),
        ),
    ),
    difficulty=3,
    objective="say what a cell at a named place reads",
)

CELL_ERROR = Template(
    key="margins-cell-error",
    title="A large cell, a small force",
    stem=(
        "A load cell has a full scale of {full_scale} and may be off by a share of {cell_error} of "
        "that. It shows {reading}. By which share of the reading may it be off?"
    ),
    asked="Error as a share of the reading",
    givens=(
        Given(q.FULL_SCALE, 10, 50, 5, "kN"),
        Given(q.CELL_ERROR, 0.002, 0.02, 0.001, ""),
        Given(q.READING, 0.5, 4.0, 0.1, "kN"),
    ),
    derivation=measurement.full_scale_error,
    tolerance=_THREE_PER_CENT,
    mistakes=(
        Mistake(
            "share-of-the-reading",
            "The share of full scale taken for a share of the reading",
            "The error in newtons is the same anywhere on the scale, so it weighs more low down.",
            lambda v: v.cell_error,
        ),
        Mistake(
            "upside-down",
            "Reading and full scale exchanged",
            "A larger cell makes the error of a small force larger, not smaller.",
            lambda v: v.cell_error * v.reading / v.full_scale,
        ),
        Mistake(
            "kilonewtons-as-share",
            "The error in kilonewtons taken for a share",
            "Divide the error by the reading; only then is it a share.",
            lambda v: v.cell_error * v.full_scale / 1000,
        ),
    ),
    difficulty=2,
    objective="say how far a reading may be off",
)

WEIGH = Template(
    key="margins-weigh",
    title="Two cells weigh the load",
    stem=(
        "The litter hangs still. The haul line shows {haul_tension}, all track lines together "
        "{track_tension}. The haul leg stands {haul_elevation} above level, the ground legs go "
        "{ground_depression} below it. Haul and track line come from one directional. What weighs "
        "the load?"
    ),
    asked="Weight of the load",
    givens=(
        Given(q.HAUL_TENSION, 1.0, 2.0, 0.1, "kN"),
        Given(q.TRACK_TENSION, 0.5, 2.5, 0.1, "kN"),
        _UP,
        _DOWN,
    ),
    derivation=measurement.weight_from_readings,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "readings-added",
            "Both readings added",
            "The ropes lean: only the upward part of each lifts.",
            lambda v: v.haul_tension + v.track_tension,
        ),
        Mistake(
            "ground-leg-forgotten",
            "The ground legs forgotten",
            "The track lines lift on one side of the litter and pull down on the other.",
            lambda v: (v.haul_tension + v.track_tension) * sin(v.haul_elevation),
        ),
        Mistake(
            "haul-line-alone",
            "The haul line taken alone",
            "The upper legs of the track lines lift, too.",
            lambda v: v.haul_tension * sin(v.haul_elevation),
        ),
    ),
    difficulty=2,
    objective="check the weight with the haul cell and the hub cell",
    usable=legs_open,
)

SMALL_SLIP = Template(
    key="margins-small-slip",
    title="A slip and where it takes the litter",
    stem=(
        "The haul leg stands {haul_elevation} above level, the ground legs go "
        "{ground_depression} below it. The grabs slip: {slip} of rope runs into the ground legs, "
        "and the haul line keeps its length. About how far does the litter move along its arc?"
    ),
    asked="Movement along the arc",
    givens=(Given(q.SLIP, 0.2, 0.5, 0.05, "m"), _UP, _DOWN),
    derivation=slip.slip_along_arc,
    tolerance=_THREE_PER_CENT,
    mistakes=(
        Mistake(
            "slip-is-movement",
            "The slip taken for the movement",
            "The litter has to go further until the line is long enough: what multiplies force "
            "multiplies slip.",
            lambda v: v.slip,
        ),
        Mistake(
            "multiplied",
            "Multiplied by the sine instead of divided",
            "Near the straight line a little slip moves the litter far, not less.",
            lambda v: v.slip * sin(v.haul_elevation - v.ground_depression),
        ),
        Mistake(
            "cosine-for-sine",
            "The cosine taken",
            "The litter moves square to its haul leg; the ground leg sees the sine of that.",
            lambda v: v.slip / cos(v.haul_elevation - v.ground_depression),
        ),
    ),
    difficulty=2,
    objective="say how far a slip moves the litter",
    usable=legs_open,
    must_pass=True,
)

SWING_FALL = Template(
    key="margins-swing-fall",
    title="How high a swing falls",
    stem=(
        "A litter is held {off_plumb} off plumb on {haul_leg_length} of haul line. All lines that "
        "hold it off go slack at once. How much height has it lost when it is plumb?"
    ),
    asked="Height lost",
    givens=(
        Given(q.HAUL_LEG_LENGTH, 3.0, 15.0, 0.5, "m"),
        Given(q.OFF_PLUMB, 1.0, 2.8, 0.1, "m"),
    ),
    derivation=swing.swing_fall,
    tolerance=_THREE_PER_CENT,
    mistakes=(
        Mistake(
            "offset-as-drop",
            "The distance off plumb taken for the drop",
            "It moves mostly sideways. What counts for its speed is the height it loses.",
            lambda v: v.off_plumb,
        ),
        Mistake(
            "twice-the-drop",
            "A factor of two lost on the way",
            "The height is about half the square of the distance over the length of the haul leg.",
            lambda v: v.off_plumb**2 / v.haul_leg_length,
        ),
        Mistake(
            "whole-leg",
            "The whole height below the directional taken",
            "It had most of that already: only the difference to plumb is lost.",
            lambda v: sqrt(v.haul_leg_length**2 - v.off_plumb**2),
        ),
    ),
    difficulty=2,
    objective="tell the speed of a swing as a drop",
)

SWING_PEAK = Template(
    key="margins-swing-peak",
    title="The haul line at the bottom of a swing",
    stem=(
        "A load of {load} is held {off_plumb} off plumb on {haul_leg_length} of haul line. All "
        "lines that hold it off go slack at once, and it swings to plumb. What does the haul line "
        "carry there?"
    ),
    asked="Peak of the haul tension",
    givens=(
        _LOAD,
        Given(q.HAUL_LEG_LENGTH, 3.0, 8.0, 0.5, "m"),
        Given(q.OFF_PLUMB, 1.5, 2.8, 0.1, "m"),
    ),
    derivation=swing.swing_peak,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "just-the-weight",
            "Just the weight taken",
            "The rope also bends the path of what is moving.",
            lambda v: v.load,
        ),
        Mistake(
            "statics",
            "The tension at the release taken",
            "Things move here; that is the least on the way, not the most.",
            lambda v: v.load * sqrt(v.haul_leg_length**2 - v.off_plumb**2) / v.haul_leg_length,
        ),
        Mistake(
            "three-times",
            "Three times the weight taken",
            "That is a swing from level with the directional.",
            lambda v: 3 * v.load,
        ),
    ),
    difficulty=3,
    objective="say what a swing does to the haul line",
)

ROPE_STRETCH = Template(
    key="margins-stretch",
    title="A line that stretches",
    stem=(
        "A track line is {rope_length} long without tension and has a stiffness EA of {stiffness}. "
        "By how much does it stretch at a tension of {rope_tension}?"
    ),
    asked="Stretch",
    givens=(
        Given(q.ROPE_TENSION, 0.5, 2.5, 0.1, "kN"),
        Given(q.ROPE_LENGTH, 40, 90, 5, "m"),
        Given(q.STIFFNESS, 20, 100, 5, "kN"),
    ),
    derivation=stretch.stretch,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "length-forgotten",
            "The length forgotten",
            "Every metre stretches: a longer piece gives more.",
            lambda v: v.rope_tension / v.stiffness,
        ),
        Mistake(
            "one-tenth",
            "The stretch at a tenth of that tension taken",
            "The stretch goes with the tension that is there.",
            lambda v: v.rope_tension * v.rope_length / (10 * v.stiffness),
        ),
        Mistake(
            "no-stretch",
            "A low-stretch rope taken not to stretch",
            "Low is not none: over the length of a track line it is a lot.",
            lambda v: 0 * v.rope_tension,
        ),
    ),
    difficulty=1,
    objective="say how far a line stretches",
)

ARREST = Template(
    key="margins-arrest",
    title="Slack in the belay",
    stem=(
        "A load of {load} falls through {belay_slack} of slack into a belay. {belay_length} of "
        "belay rope stretch; its stiffness EA is {stiffness}, and nothing slips. What is the peak?"
    ),
    asked="Peak of the belay's tension",
    givens=(
        _LOAD,
        Given(q.BELAY_SLACK, 0.2, 1.5, 0.1, "m"),
        Given(q.BELAY_LENGTH, 5, 35, 5, "m"),
        Given(q.STIFFNESS, 20, 60, 5, "kN"),
    ),
    derivation=swing.arrest_peak,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "twice-the-weight",
            "Twice the weight taken",
            "That is what comes on without any slack.",
            lambda v: 2 * v.load,
        ),
        Mistake(
            "weight-left-out",
            "The weight itself left out",
            "While the rope stretches the load goes on falling.",
            lambda v: v.load * sqrt(2 * v.stiffness * v.belay_slack / (v.load * v.belay_length)),
        ),
        Mistake(
            "slack-over-length",
            "Slack over length added to the weight",
            "The stiffness of the rope decides how hard the fall is stopped.",
            lambda v: v.load * (1 + v.belay_slack / v.belay_length),
        ),
    ),
    difficulty=3,
    objective="say what slack in the belay costs",
    must_pass=True,
)

QUESTIONS = (
    REDIRECT_CELL,
    CELL_ERROR,
    WEIGH,
    SMALL_SLIP,
    ROPE_STRETCH,
    SWING_FALL,
    SWING_PEAK,
    ARREST,
)
"""This module's questions, in the order of the lesson."""
