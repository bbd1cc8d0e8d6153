"""Questions on the 2:1 in series: lines, hub, device, rope, and what is no backup."""

from collections.abc import Mapping
from math import log as logarithm
from math import radians

from sympy import Integer, ceiling, log, sin

from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import tensioner
from ropecalc.mechanics import tensioner_lines as lines_of
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_EFFICIENCY = Given(q.SHEAVE_EFFICIENCY, 0.70, 0.92, 0.01, "")
_LINES = Given(tensioner.LINES, 2, 4, 1, "")
_TWO = Given(tensioner.LINES, 2, 2, 1, "")
_PULL = Given(tensioner.DEVICE_PULL, 0.2, 1.2, 0.05, "kN")
_CLOSE = Tolerance(relative=0.015)
_TWO_PER_CENT = Tolerance(relative=0.02)


WITHOUT_FRICTION = Template(
    key="tensioner-without-friction",
    title="Each line if nothing rubs",
    stem=(
        "One rope tightens {lines} track lines in series, and the strand at the device is pulled "
        "with {device_pull}. If no sheave had friction, what tension would be in each track line?"
    ),
    asked="Tension of each track line, without friction",
    givens=(_PULL, _LINES),
    derivation=lines_of.ideal_line,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "all-lines-for-one",
            "What all lines carry together given to each of them",
            "The strands are spread over the lines: two run to each.",
            lambda v: 2 * v.lines * v.device_pull,
        ),
        Mistake(
            "pull-divided",
            "The pull divided among the lines",
            "Every strand of the one rope carries the whole pull, whichever line it runs to.",
            lambda v: 2 * v.device_pull / v.lines,
        ),
        Mistake(
            "one-strand",
            "One strand counted",
            "The line ends at a travelling pulley and carries both its strands.",
            lambda v: v.device_pull,
        ),
    ),
    difficulty=1,
    objective="find what each line of a tensioner would carry without friction",
)

ONE_LINE = Template(
    key="tensioner-one-line",
    title="One line while rope is taken in",
    stem=(
        "Rope is being taken in at a tensioner in series. The strand at the device carries "
        "{device_pull} and every sheave has an efficiency of {efficiency}. What tension is in line "
        "number {line}, counted from the device?"
    ),
    asked="Tension of that track line",
    givens=(_PULL, _EFFICIENCY, Given(lines_of.LINE, 2, 3, 1, "")),
    derivation=lines_of.line_taken_in,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "no-friction",
            "Every strand taken to carry the same",
            "Each sheave on the way takes its part. Two sheaves lie between neighbouring lines.",
            lambda v: 2 * v.device_pull,
        ),
        Mistake(
            "friction-turned-round",
            "Friction taken the other way round",
            "Taking in, the rope moves towards the device, so the strands further from it carry "
            "less. What you found is for letting out.",
            lambda v: v.device_pull * (1 + 1 / v.efficiency) * v.efficiency ** (-2 * (v.line - 1)),
        ),
        Mistake(
            "one-sheave-a-line",
            "One sheave counted from line to line",
            "There are two: the travelling pulley of the line and the pulley at the hub.",
            lambda v: v.device_pull * (1 + v.efficiency) * v.efficiency ** (v.line - 1),
        ),
    ),
    difficulty=2,
    objective="find the tension of any line of a tensioner while rope is taken in",
)

FAR_TO_NEAR = Template(
    key="tensioner-far-to-near",
    title="The far line beside the near line",
    stem=(
        "{lines} track lines in series have just been pulled in. Every sheave has an efficiency "
        "of {efficiency}. Which share of the tension of the near line, next to the device, does "
        "the far line, next to the tied-off end, carry?"
    ),
    asked="Tension of the far line over that of the near line",
    givens=(_EFFICIENCY, _LINES),
    derivation=lines_of.far_over_near,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "shared-equally",
            "All lines taken to carry the same",
            "They would without friction. After pulling in, the near line carries most.",
            lambda v: Integer(1),
        ),
        Mistake(
            "one-sheave-a-line",
            "One sheave counted from line to line",
            "There are two: the travelling pulley of the line and the pulley at the hub.",
            lambda v: v.efficiency ** (v.lines - 1),
        ),
        Mistake(
            "friction-turned-round",
            "Friction taken the other way round",
            "After pulling in, the near line carries most. Only after letting out is it the far "
            "line.",
            lambda v: v.efficiency ** (-2 * (v.lines - 1)),
        ),
    ),
    difficulty=2,
    objective="say which line of a tensioner carries most, and by how much",
    must_pass=True,
)

MOST_LOADED = Template(
    key="tensioner-most-loaded",
    title="The most loaded line",
    stem=(
        "The place of the litter asks for {track_tension} from all track lines together. {lines} "
        "lines in series have just been pulled in; every sheave has an efficiency of {efficiency}. "
        "What does the most loaded line carry?"
    ),
    asked="Tension of the most loaded line",
    givens=(Given(q.TRACK_TENSION, 1.0, 8.0, 0.1, "kN"), _EFFICIENCY, _LINES),
    derivation=lines_of.most_loaded_line,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "shared-equally",
            "The total divided by the number of lines",
            "Friction leaves less for every further line, so the near line carries more than that.",
            lambda v: v.track_tension / v.lines,
        ),
        Mistake(
            "every-line-carries-all",
            "Every line taken to carry the whole",
            "It is one rope, but each line takes only its own part of the total.",
            lambda v: v.track_tension,
        ),
        Mistake(
            "advantage-for-strength",
            "The 2:1 counted as strength",
            "The 2:1 halves what the device has to hold. The track line carries both its strands.",
            lambda v: v.track_tension / (2 * v.lines),
        ),
    ),
    difficulty=2,
    objective="find the most loaded line from what all lines have to carry",
)


def _lines_plain(values: Mapping[str, float]) -> bool:
    """Whether a little more tension would not change the number of lines, and few are enough."""
    squared = values["efficiency"] ** 2
    left = 1 - values["track_tension"] / values["line_limit"] * (1 - squared)
    if left <= 0:
        return False
    just = logarithm(left) / logarithm(squared)
    return just < 8 and 0.1 < just % 1 < 0.95


HOW_MANY = Template(
    key="tensioner-how-many-lines",
    title="How many lines does it take?",
    stem=(
        "The place of the litter asks for {track_tension} from all track lines together, and no "
        "line is to carry more than {line_limit}. Lines run in series, just pulled in; every "
        "sheave has an efficiency of {efficiency}. How many lines does it take at least?"
    ),
    asked="Number of lines (a whole number)",
    givens=(
        Given(q.TRACK_TENSION, 4.0, 7.0, 0.1, "kN"),
        Given(lines_of.LINE_LIMIT, 1.6, 2.6, 0.1, "kN"),
        Given(lines_of.RUBBING, 0.78, 0.90, 0.01, ""),
    ),
    derivation=lines_of.lines_for_limit,
    tolerance=Tolerance(absolute=0.02),
    mistakes=(
        Mistake(
            "shared-equally",
            "The total divided by what one line may carry",
            "Friction leaves less for every further line, so the near line carries more than an "
            "equal share.",
            lambda v: ceiling(v.track_tension / v.line_limit),
        ),
        Mistake(
            "not-rounded-up",
            "The number left as it came out",
            "There is no part of a line: only the next whole number keeps every line within the "
            "limit.",
            lambda v: (
                log(1 - v.track_tension / v.line_limit * (1 - v.efficiency**2))
                / (2 * log(v.efficiency))
            ),
        ),
        Mistake(
            "advantage-for-strength",
            "The 2:1 counted as strength",
            "The 2:1 halves what the device has to hold. The track line carries both its strands.",
            lambda v: ceiling(v.track_tension / (2 * v.line_limit)),
        ),
    ),
    difficulty=3,
    objective="find how many lines in series a limit on each of them asks for",
    usable=_lines_plain,
)

HUB_TOTAL = Template(
    key="tensioner-hub-load",
    title="What the hub carries",
    stem=(
        "A load cell in the near line reads {near_line} just after pulling in, before the strand "
        "is handed over. {lines} lines run in series to one hub; every sheave has an efficiency of "
        "{efficiency}. What do all lines together put on the hub?"
    ),
    asked="Load on the hub",
    givens=(Given(tensioner.NEAR_LINE, 0.5, 3.0, 0.1, "kN"), _EFFICIENCY, _LINES),
    derivation=lines_of.all_lines,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "one-line-for-all",
            "The tension of one line taken for the load on the hub",
            "Every line ends at the hub: their tensions add up there.",
            lambda v: v.near_line,
        ),
        Mistake(
            "shared-equally",
            "The near line multiplied by the number of lines",
            "The other lines carry less than the near line after pulling in.",
            lambda v: v.lines * v.near_line,
        ),
        Mistake(
            "device-for-hub",
            "The device's strand taken for the hub",
            "The device is one of several parts at the hub, and carries about half of one line.",
            lambda v: v.near_line / (1 + v.efficiency),
        ),
    ),
    difficulty=2,
    objective="find the load on the hub from a reading in one line",
    must_pass=True,
)

DEVICE = Template(
    key="tensioner-device",
    title="What the device holds",
    stem=(
        "Two or more lines in series have just been pulled in and the strand is still held by "
        "hand. The near line carries {near_line}, and every sheave has an efficiency of "
        "{efficiency}. What tension is in the strand at the device?"
    ),
    asked="Tension of the strand at the device",
    givens=(Given(tensioner.NEAR_LINE, 0.5, 4.0, 0.1, "kN"), _EFFICIENCY),
    derivation=lines_of.device_strand,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "device-sees-the-line",
            "The device taken to hold the whole line",
            "The line's pulley has two strands, and the device holds one of them.",
            lambda v: v.near_line,
        ),
        Mistake(
            "no-friction",
            "Half of the line taken",
            "Pulled in, the device's strand is ahead of the sheave and carries more than half.",
            lambda v: v.near_line / 2,
        ),
        Mistake(
            "friction-turned-round",
            "Friction taken the other way round",
            "That is the strand behind the sheave, or the device's strand after letting out.",
            lambda v: v.near_line * v.efficiency / (1 + v.efficiency),
        ),
    ),
    difficulty=2,
    objective="find what the device of a tensioner has to hold",
)

HUB_PULLEY = Template(
    key="tensioner-hub-pulley",
    title="The pulley at the hub",
    stem=(
        "Rope is being taken in with {device_pull} at the device of a tensioner on two lines. "
        "Every sheave has an efficiency of {efficiency}. What does the pulley at the hub, between "
        "the two lines, carry?"
    ),
    asked="Load on the hub pulley",
    givens=(_PULL, _EFFICIENCY),
    derivation=lines_of.hub_pulley_load,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "no-friction",
            "Both its strands taken to carry what the device holds",
            "One strand lies behind one sheave, the other behind two.",
            lambda v: 2 * v.device_pull,
        ),
        Mistake(
            "near-line-for-pulley",
            "The near line taken for the hub pulley",
            "The near line carries the device's strand; the hub pulley's strands lie further on.",
            lambda v: v.device_pull * (1 + v.efficiency),
        ),
        Mistake(
            "one-strand",
            "One strand counted",
            "A pulley carries both its strands.",
            lambda v: v.device_pull,
        ),
    ),
    difficulty=2,
    objective="find the load on each part of the hub",
)

ROPE_THROUGH = Template(
    key="tensioner-rope-through",
    title="Rope through the device",
    stem=(
        "The geometry of a raise asks each of {lines} track lines in series to come in by "
        "{take_in}. How much tensioner rope runs through the device?"
    ),
    asked="Rope through the device",
    givens=(_LINES, Given(tensioner.TAKE_IN, 0.5, 15.0, 0.5, "m")),
    derivation=lines_of.rope_through_device,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "one-line-only",
            "The rope of one line counted",
            "One rope runs to every line, and all of them come in.",
            lambda v: 2 * v.take_in,
        ),
        Mistake(
            "tied-off-strand-left-out",
            "The tied-off strand left out",
            "It does not run, but it grows shorter: its rope moves on over the pulley.",
            lambda v: (2 * v.lines - 1) * v.take_in,
        ),
        Mistake(
            "line-for-rope",
            "The line's own way taken",
            "Two strands run to each line's pulley: the rope runs further than the line.",
            lambda v: v.take_in,
        ),
    ),
    difficulty=1,
    objective="find how much rope runs through the device",
)

ROPE_LENGTH = Template(
    key="tensioner-rope-length",
    title="How long the tensioner rope must be",
    stem=(
        "During a raise each of {lines} track lines in series comes in by {take_in} for the "
        "geometry and {line_stretch} for the stretch. A travelling pulley must stay {least_play} "
        "from the hub, and {tail} of tail is wanted beyond the device. How long must the tensioner "
        "rope be?"
    ),
    asked="Length of the tensioner rope",
    givens=(
        _LINES,
        Given(lines_of.LEAST_PLAY, 0.5, 2.0, 0.5, "m"),
        Given(tensioner.TAKE_IN, 3.0, 15.0, 0.5, "m"),
        Given(tensioner.LINE_STRETCH, 0.4, 2.4, 0.2, "m"),
        Given(tensioner.ROPE_TAIL, 4, 12, 1, "m"),
    ),
    derivation=lines_of.rope_needed,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "one-line-only",
            "The rope of one line counted",
            "Two strands run to every line.",
            lambda v: 2 * (v.least_play + v.take_in + v.line_stretch) + v.tail,
        ),
        Mistake(
            "geometry-only",
            "Stretch and the least distance forgotten",
            "The lines have to come in for their stretch too, and must not run into the hub.",
            lambda v: 2 * v.lines * v.take_in + v.tail,
        ),
        Mistake(
            "tied-off-strand-left-out",
            "The tied-off strand left out",
            "It is rope as well, as long as the others.",
            lambda v: (2 * v.lines - 1) * (v.least_play + v.take_in + v.line_stretch) + v.tail,
        ),
    ),
    difficulty=2,
    objective="find how long the tensioner rope must be",
)

LOST_LINE = Template(
    key="tensioner-lost-line",
    title="One line of a pair is lost",
    stem=(
        "Of {lines} track lines in series one parts while its travelling pulley is {play} from the "
        "hub; the device stays locked. How much slack does the other line gain?"
    ),
    asked="Slack of the other line",
    givens=(Given(q.PLAY, 1, 8, 0.5, "m"), _TWO),
    derivation=tensioner.released_slack,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "series-as-backup",
            "The other line taken to hold as before",
            "One rope tightens both. The lost line's pulley runs to the hub and its rope runs into "
            "the other line.",
            lambda v: Integer(0),
        ),
        Mistake(
            "rope-for-slack",
            "The rope that runs in taken for the slack",
            "The other line's pulley takes it with two strands, so it moves by half of that.",
            lambda v: 2 * v.play,
        ),
        Mistake(
            "halved-twice",
            "Half of the pulley's distance taken",
            "Both strands of the lost line run in, and both strands of the other one take them up.",
            lambda v: v.play / 2,
        ),
    ),
    difficulty=2,
    objective="say why lines in series do not back each other up",
    must_pass=True,
)

HANDS = Template(
    key="tensioner-hand-pull",
    title="Hands on the tail",
    stem=(
        "Each line has to reach at least {far_line}. {lines} lines are tightened in series with "
        "sheaves of efficiency {efficiency}. While rope is pulled through, the device leaves "
        "{device_share} of the pull on its tail, and a {tail_advantage}:1 without friction pulls "
        "on the tail. What pull of the hands brings the far line to that?"
    ),
    asked="Pull of the hands",
    givens=(
        Given(lines_of.FAR_LINE, 0.4, 2.0, 0.1, "kN"),
        Given(q.SHEAVE_EFFICIENCY, 0.75, 0.92, 0.01, ""),
        _LINES,
        Given(lines_of.DEVICE_SHARE, 0.4, 0.8, 0.05, ""),
        Given(lines_of.TAIL_ADVANTAGE, 2, 3, 1, ""),
    ),
    derivation=lines_of.hand_pull,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "no-friction",
            "Friction left out",
            "Sheaves and device take their part of every pull.",
            lambda v: v.far_line / (2 * v.tail_advantage),
        ),
        Mistake(
            "advantage-of-all-lines",
            "The advantage over all lines given to one line",
            "The pull at the device makes about twice itself in each line, however many there are.",
            lambda v: v.far_line / (2 * v.lines * v.tail_advantage),
        ),
        Mistake(
            "device-helps",
            "The device's drag taken the wrong way",
            "Pulling through the device costs: the hands pull more than the strand behind it.",
            lambda v: (
                v.far_line
                * v.device_share
                / (v.efficiency ** (2 * (v.lines - 1)) * (1 + v.efficiency) * v.tail_advantage)
            ),
        ),
    ),
    difficulty=3,
    objective="find the pull of the hands that tightens the lines",
)


def _legs_apart(values: Mapping[str, float]) -> bool:
    return values["track_elevation"] - values["ground_depression"] >= radians(30)


FEED = Template(
    key="tensioner-feed-speed",
    title="How fast the rope runs",
    stem=(
        "The haul team raises the litter straight up at {haul_speed}. At the litter the upper "
        "track legs rise {track_elevation} above the horizontal, the ground legs fall "
        "{ground_depression} below it, and {lines} lines run in series. How fast must rope run "
        "through the device to keep the lines tight?"
    ),
    asked="Speed of the rope at the device",
    givens=(
        _LINES,
        Given(lines_of.HAUL_SPEED, 0.05, 0.25, 0.01, "m/s"),
        Given(q.TRACK_ELEVATION, 60, 88, 1, "°"),
        Given(q.GROUND_DEPRESSION, 5, 35, 1, "°"),
    ),
    derivation=lines_of.device_speed,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "litter-speed",
            "The speed of the litter taken",
            "Each line comes in by its own share of the rise, and two strands of each feed the "
            "device.",
            lambda v: v.haul_speed,
        ),
        Mistake(
            "one-line-only",
            "The strands of one line counted",
            "The strands of all lines grow shorter together.",
            lambda v: 2 * (sin(v.track_elevation) - sin(v.ground_depression)) * v.haul_speed,
        ),
        Mistake(
            "lines-come-in-with-the-rise",
            "Every line taken to come in by the whole rise",
            "The ground leg grows longer while the upper leg grows shorter: less comes in.",
            lambda v: 2 * v.lines * v.haul_speed,
        ),
    ),
    difficulty=2,
    objective="find how fast rope has to run through the device",
    usable=_legs_apart,
)

SECOND_LINE = Template(
    key="tensioner-second-line",
    title="What the second line buys",
    stem=(
        "No line may carry more than {near_line}, and a single line carries that already. A "
        "further line is added, so that {lines} run in series; every sheave has an efficiency "
        "of {efficiency}. How much may all lines together carry now, just pulled in?"
    ),
    asked="Tension of all lines together",
    givens=(Given(tensioner.NEAR_LINE, 1.0, 4.0, 0.1, "kN"), _EFFICIENCY, _TWO),
    derivation=lines_of.all_lines,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "twice-the-line",
            "Twice the limit of one line taken",
            "The near line reaches the limit first, while the other one still carries less.",
            lambda v: v.lines * v.near_line,
        ),
        Mistake(
            "one-sheave-a-line",
            "One sheave counted between the lines",
            "There are two: the travelling pulley of the line and the pulley at the hub.",
            lambda v: v.near_line * (1 + v.efficiency),
        ),
        Mistake(
            "nothing-gained",
            "The limit of one line taken",
            "The further line does carry, only less than the near line.",
            lambda v: v.near_line,
        ),
    ),
    difficulty=2,
    objective="say what a further line in series is worth",
)

QUESTIONS = (
    WITHOUT_FRICTION,
    ONE_LINE,
    FAR_TO_NEAR,
    MOST_LOADED,
    HOW_MANY,
    HUB_TOTAL,
    DEVICE,
    HUB_PULLEY,
    ROPE_THROUGH,
    ROPE_LENGTH,
    LOST_LINE,
    HANDS,
    FEED,
    SECOND_LINE,
)
"""This module's questions, in the order of the lesson."""
