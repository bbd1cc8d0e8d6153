"""Questions on margins, readings, stretch and what happens when something lets go."""

from math import radians

from sympy import Float, Min, cos, pi, sin, sqrt, tan

from ropecalc.mechanics import (
    guiding_limits,
    line_margin,
    litter_pulley,
    measurement,
    slip,
    stretch,
    swing,
    tensioner,
)
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.bank.slips import legs_open
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance
from ropecalc.units import STANDARD_GRAVITY

_TWO_PER_CENT = Tolerance(relative=0.02)
_THREE_PER_CENT = Tolerance(relative=0.03)
_LOAD = Given(q.LOAD, 1.2, 2.8, 0.1, "kN")
_UP = Given(q.HAUL_ELEVATION, 50, 66, 1, "°")
_DOWN = Given(q.GROUND_DEPRESSION, 10, 40, 1, "°")

_GRAVITY = Float(STANDARD_GRAVITY)

WEAKEST_PART = Template(
    key="margins-weakest-part",
    title="The weakest part of a line",
    stem=(
        "A track line has just been pulled in and carries {near_line}. Its rope breaks at "
        "{breaking_strength}, of which the knot leaves a share of {termination}. The rope grab "
        "holds {grab_strength}, the travelling pulley {pulley_strength} and the device "
        "{device_strength}. The device holds one strand of the pulley, whose sheave has an "
        "efficiency of {efficiency}. What is the smallest margin in this line?"
    ),
    asked="Smallest strength over load (a plain number)",
    givens=(
        Given(tensioner.NEAR_LINE, 0.8, 3.0, 0.1, "kN"),
        Given(q.BREAKING_STRENGTH, 22, 40, 1, "kN"),
        Given(q.TERMINATION, 0.60, 0.80, 0.05, ""),
        Given(line_margin.GRAB_STRENGTH, 5.0, 12.0, 0.5, "kN"),
        Given(line_margin.PULLEY_STRENGTH, 20, 44, 1, "kN"),
        Given(line_margin.DEVICE_STRENGTH, 3.0, 8.0, 0.5, "kN"),
        Given(q.SHEAVE_EFFICIENCY, 0.75, 0.95, 0.05, ""),
    ),
    derivation=line_margin.line_margin,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "rope-only",
            "The rope's breaking strength over the tension",
            "Rope is seldom the weakest part, and its knot takes some of its strength.",
            lambda v: v.breaking_strength / v.near_line,
        ),
        Mistake(
            "device-sees-the-line",
            "The device taken to carry the whole line",
            "The pulley has two strands, and the device holds one of them: each strength goes with "
            "its own load.",
            lambda v: (
                Min(
                    v.breaking_strength * v.termination,
                    v.grab_strength,
                    v.pulley_strength,
                    v.device_strength,
                )
                / v.near_line
            ),
        ),
        Mistake(
            "mean-of-the-parts",
            "The mean of the strengths taken",
            "The line is gone as soon as any of its parts is.",
            lambda v: (
                (
                    v.breaking_strength * v.termination
                    + v.grab_strength
                    + v.pulley_strength
                    + v.device_strength
                )
                / (4 * v.near_line)
            ),
        ),
    ),
    difficulty=2,
    objective="find the weakest part of a line, each part with its own load",
    must_pass=True,
)

REDIRECT_CELL = Template(
    key="margins-redirect-cell",
    title="A cell behind a redirect",
    stem=(
        "A load cell sits between a redirect and its anchor and shows {reading} while the rope "
        "moves. The two strands of the rope stand {strand_angle} apart, and the sheave has an "
        "efficiency of {efficiency}. How much does the strand carry towards which the rope "
        "moves?"
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

ONE_STRAND = Template(
    key="margins-one-strand",
    title="A cell in one strand",
    stem=(
        "The cell in the strand at the device of a tensioner shows {reading}. Nobody wrote down "
        "whether rope went in or out last. Every sheave has an efficiency of {efficiency}. What is "
        "the most that the near track line may be carrying?"
    ),
    asked="Largest tension that the near line may have",
    givens=(
        Given(q.READING, 0.4, 1.5, 0.05, "kN"),
        Given(q.SHEAVE_EFFICIENCY, 0.70, 0.92, 0.01, ""),
    ),
    derivation=measurement.line_let_out,
    tolerance=Tolerance(relative=0.015),
    mistakes=(
        Mistake(
            "twice-the-reading",
            "Twice the reading taken",
            "That is so without friction. The other strand may carry more than the cell's.",
            lambda v: 2 * v.reading,
        ),
        Mistake(
            "least-for-most",
            "The least tension given instead of the largest",
            "That is the line after taking in. If rope went out last, the strand beyond the pulley "
            "carries more than the cell's.",
            lambda v: v.reading * (1 + v.efficiency),
        ),
        Mistake(
            "reading-is-the-line",
            "The reading taken for the line",
            "The line carries both strands of its travelling pulley; the cell is in one.",
            lambda v: v.reading,
        ),
    ),
    difficulty=3,
    objective="say what one strand's reading allows when nobody knows what moved last",
    must_pass=True,
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

ANGLE_ERROR = Template(
    key="margins-angle-error",
    title="An angle read a little wrong",
    stem=(
        "The tension of the track lines is worked out from two angles: the haul leg stands "
        "{haul_elevation} above level, the ground legs go {ground_depression} below it. The first "
        "angle may be off by {angle_error}, the second is right. By about which share may the "
        "tension be off?"
    ),
    asked="Share by which the tension may be off",
    givens=(
        Given(q.HAUL_ELEVATION, 50, 75, 1, "°"),
        Given(q.GROUND_DEPRESSION, 10, 38, 1, "°"),
        Given(measurement.ANGLE_ERROR, 1.0, 3.0, 0.5, "°"),
    ),
    derivation=measurement.error_from_angle,
    tolerance=Tolerance(relative=0.05),
    mistakes=(
        Mistake(
            "share-of-the-angle",
            "The share of the angle taken",
            "The tension does not follow the angle in proportion: near the straight line a degree "
            "changes it a lot.",
            lambda v: v.angle_error / v.haul_elevation,
        ),
        Mistake(
            "straight-line-forgotten",
            "Only the haul leg's own part counted",
            "The angle also stands in the sine of the difference: the nearer to one straight line, "
            "the more that part counts.",
            lambda v: tan(v.haul_elevation) * v.angle_error,
        ),
        Mistake(
            "share-of-a-right-angle",
            "The share of a right angle taken",
            "How much a degree counts depends on where the two legs stand.",
            lambda v: v.angle_error / (pi / 2),
        ),
    ),
    difficulty=3,
    objective="say how far a tension may be off when an angle is read wrong",
    usable=lambda v: v["haul_elevation"] - v["ground_depression"] >= radians(14),
)

UP_AND_DOWN = Template(
    key="margins-haul-up-and-down",
    title="The same litter, two haul readings",
    stem=(
        "The ground legs of the track lines carry {track_tension} together. Going up, friction "
        "at the litter's pulley leaves their upper legs a share of {leg_ratio} of that; coming "
        "down, it acts as strongly the other way. Haul and track lines come from one "
        "directional. How much more does the haul cell show going up than coming down past the "
        "same place?"
    ),
    asked="Haul tension going up less haul tension going down",
    givens=(
        Given(q.TRACK_TENSION, 1.0, 4.0, 0.1, "kN"),
        Given(q.LEG_RATIO, 0.88, 0.96, 0.01, ""),
    ),
    derivation=litter_pulley.haul_difference,
    tolerance=Tolerance(relative=0.03),
    mistakes=(
        Mistake(
            "no-friction",
            "No difference expected",
            "The haul line makes up for what the upper legs lose to friction, and loses what they "
            "gain.",
            lambda v: 0 * v.track_tension,
        ),
        Mistake(
            "going-up-only",
            "Only the friction of going up counted",
            "Going down it acts as well, the other way round: both count.",
            lambda v: v.track_tension * (1 - v.leg_ratio),
        ),
        Mistake(
            "going-down-only",
            "Only the friction of going down counted",
            "Going up it acts as well, the other way round: both count.",
            lambda v: v.track_tension * (1 / v.leg_ratio - 1),
        ),
    ),
    difficulty=3,
    objective="tell friction at the litter from a change of load",
)

SMALL_SLIP = Template(
    key="margins-small-slip",
    title="A slip and where it takes the litter",
    stem=(
        "The haul leg stands {haul_elevation} above level, the ground legs go "
        "{ground_depression} below it. The grabs slip: {slip} of rope runs into the ground "
        "legs, and the haul line keeps its length. About how far does the litter move, measured "
        "along its arc about the directional?"
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

QUOTED_STRETCH = Template(
    key="margins-quoted-stretch",
    title="Stretch from what the maker quotes",
    stem=(
        "A rope that breaks at {breaking_strength} is quoted to stretch by a share of "
        "{quoted_elongation} of its length at a tenth of that force. {rope_length} of it are a "
        "track line with a tension of {rope_tension}. By how much does the line stretch, if it "
        "does so in proportion?"
    ),
    asked="Stretch",
    givens=(
        Given(q.ROPE_TENSION, 0.5, 2.2, 0.1, "kN"),
        Given(q.ROPE_LENGTH, 40, 90, 5, "m"),
        Given(q.BREAKING_STRENGTH, 25, 40, 1, "kN"),
        Given(q.QUOTED_ELONGATION, 0.015, 0.06, 0.005, ""),
    ),
    derivation=stretch.stretch_from_quoted_elongation,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "quoted-as-it-is",
            "The quoted share taken as it is",
            "It belongs to a tenth of the breaking strength. This line carries less than that.",
            lambda v: v.quoted_elongation * v.rope_length,
        ),
        Mistake(
            "tenth-forgotten",
            "The quoted share taken for the breaking strength",
            "It is quoted at a tenth of it; at the whole it would be ten times as much.",
            lambda v: v.quoted_elongation * v.rope_length * v.rope_tension / v.breaking_strength,
        ),
        Mistake(
            "no-stretch",
            "A low-stretch rope taken not to stretch",
            "Low is not none: over the length of a track line it is a lot.",
            lambda v: 0 * v.rope_tension,
        ),
    ),
    difficulty=2,
    objective="turn a quoted elongation into the stretch of a line",
)

LINES_LEFT = Template(
    key="margins-lines-left",
    title="One of several lines is lost",
    stem=(
        "The litter hangs on {independent_lines} track lines, each with a tensioner of its own and "
        "each with {line_before}. One parts. Suppose the others are so stiff that the litter stays "
        "where it is. Once all is at rest, what does each of the lines that are left carry?"
    ),
    asked="Tension of each line that is left",
    givens=(
        Given(swing.INDEPENDENT_LINES, 2, 4, 1, ""),
        Given(swing.LINE_BEFORE, 0.5, 3.0, 0.1, "kN"),
    ),
    derivation=swing.survivor_at_rest,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "same-as-before",
            "The others taken to carry what they did",
            "The litter's place asks for the same pull from all lines together, with one fewer to "
            "share it.",
            lambda v: v.line_before,
        ),
        Mistake(
            "shared-among-all",
            "The lost line's part shared among as many lines as before",
            "Only the lines that are left can take it over.",
            lambda v: v.line_before * (1 + 1 / v.independent_lines),
        ),
        Mistake(
            "upside-down",
            "The ratio turned upside down",
            "Fewer lines for the same pull: each carries more, not less.",
            lambda v: v.line_before * (v.independent_lines - 1) / v.independent_lines,
        ),
    ),
    difficulty=1,
    objective="say what the lines carry that are left when one is lost",
)

HUB_SLIDES = Template(
    key="margins-hub-slides",
    title="A vehicle as the hub",
    stem=(
        "A parked vehicle of {hub_mass} serves as the hub; only its weight holds it on level "
        "ground, with a coefficient of friction of {hub_friction}. The lines come down to it from "
        "the litter, {ground_depression} above the horizontal at the hub. At which tension of all "
        "lines together does it begin to slide?"
    ),
    asked="Tension of all lines together",
    givens=(
        Given(q.HUB_MASS, 1200, 4000, 100, "kg"),
        Given(q.HUB_FRICTION, 0.30, 0.70, 0.05, ""),
        Given(q.GROUND_DEPRESSION, 8, 40, 1, "°"),
    ),
    derivation=guiding_limits.hub_sliding_tension,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "weight-for-hold",
            "The weight taken for what holds",
            "Friction holds only a share of the weight, and the lines pull mostly level.",
            lambda v: v.hub_mass * _GRAVITY,
        ),
        Mistake(
            "uplift-left-out",
            "The upward part of the lines left out",
            "What the lines lift no longer presses the vehicle on the ground.",
            lambda v: v.hub_friction * v.hub_mass * _GRAVITY / cos(v.ground_depression),
        ),
        Mistake(
            "pressed-down",
            "The lines taken to press the vehicle down",
            "They come from above and lift it: friction gets less, not more.",
            lambda v: (
                v.hub_friction
                * v.hub_mass
                * _GRAVITY
                / (cos(v.ground_depression) - v.hub_friction * sin(v.ground_depression))
            ),
        ),
    ),
    difficulty=2,
    objective="say what a hub holds that only its weight holds down",
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

SWING_SPEED = Template(
    key="margins-swing-speed",
    title="How fast a swing is",
    stem=(
        "A litter is held {off_plumb} off plumb on {haul_leg_length} of haul line. All lines that "
        "hold it off go slack at once, and the wall is plumb below the directional. How fast is "
        "the litter when it gets there?"
    ),
    asked="Speed at the wall",
    givens=(
        Given(q.HAUL_LEG_LENGTH, 3.0, 25.0, 0.5, "m"),
        Given(q.OFF_PLUMB, 1.0, 2.8, 0.1, "m"),
    ),
    derivation=swing.swing_speed,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "offset-as-drop",
            "The distance off plumb taken for the drop",
            "It moves mostly sideways. What counts for its speed is the height it loses.",
            lambda v: sqrt(2 * _GRAVITY * v.off_plumb),
        ),
        Mistake(
            "whole-leg",
            "The whole haul leg taken for the drop",
            "It hung almost that far down already: only the difference to plumb is lost.",
            lambda v: sqrt(2 * _GRAVITY * v.haul_leg_length),
        ),
        Mistake(
            "factor-of-two-lost",
            "A factor of two lost on the way",
            "Half the square of the speed is gravity times the height.",
            lambda v: sqrt(
                _GRAVITY * (v.haul_leg_length - sqrt(v.haul_leg_length**2 - v.off_plumb**2))
            ),
        ),
    ),
    difficulty=2,
    objective="find how fast a litter swings to the wall",
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
    WEAKEST_PART,
    REDIRECT_CELL,
    CELL_ERROR,
    ONE_STRAND,
    WEIGH,
    ANGLE_ERROR,
    UP_AND_DOWN,
    SMALL_SLIP,
    ROPE_STRETCH,
    QUOTED_STRETCH,
    LINES_LEFT,
    HUB_SLIDES,
    SWING_FALL,
    SWING_SPEED,
    SWING_PEAK,
    ARREST,
)
"""This module's questions, in the order of the lesson."""
