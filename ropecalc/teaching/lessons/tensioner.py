"""The 2:1 in series on several track lines: unequal lines, the hub, rope, and what is no backup."""

from collections.abc import Mapping
from functools import cache

from ropecalc import cautions
from ropecalc.mechanics import tensioner as series
from ropecalc.mechanics import tensioner_lines as lines_of
from ropecalc.mechanics.guiding import track_length
from ropecalc.mechanics.holding import Hold, Method, Point, Rig, hold
from ropecalc.mechanics.stretch import stretch
from ropecalc.mechanics.tensioner_memory import Ropes, moved_back
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import TENSIONER_PLAN
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import tensioner as asked
from ropecalc.units import Kind

_TOP = Point(0.3, 32.0)
_HUB = Point(40.0, 0.5)
_RIG = Rig(haul_directional=_TOP, track_directional=_TOP, hub=_HUB)
_MASS, _OUT, _LOW, _HIGH = 200.0, 2.5, 2.0, 28.0
_LINES, _EFFICIENCY = 2, 0.9
_STIFFNESS, _PLAY, _LEAST, _TAIL = 50_000.0, 6.0, 1.0, 6.0
_SPEED, _DEVICE_SHARE, _ON_TAIL = 0.1, 0.6, 3.0
"""The example of this lesson: the rig of the Upper Heron Wall with two track lines in series."""


@cache
def _held(height: float) -> Hold:
    return hold(Method.TRACK, _RIG, weight(mass=_MASS), _OUT, height)


def _length(height: float) -> float:
    return float(track_length(x=_OUT, z=height, x_A=_TOP.x, z_A=_TOP.z, x_B=_HUB.x, z_B=_HUB.z))


def _pulled_in() -> series.SeriesTensioner:
    """The example at its highest station, just pulled in."""
    near = lines_of.most_loaded_line(
        track_tension=_held(_HIGH).line_tension, efficiency=_EFFICIENCY, lines=float(_LINES)
    )
    pull = lines_of.device_strand(near_line=near, efficiency=_EFFICIENCY)
    return series.series_tensioner(
        "hauling", device_pull=pull, lines=_LINES, efficiency=_EFFICIENCY
    )


def _longer() -> float:
    """Stretch of the near line at the highest station, in m."""
    near = _pulled_in().lines[0].low
    return float(stretch(rope_tension=near, rope_length=_length(_HIGH), stiffness=_STIFFNESS))


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    pulled, high = _pulled_in(), _held(_HIGH)
    return {
        "efficiency": _EFFICIENCY,
        "lines": float(_LINES),
        "line": 2.0,
        "device_pull": pulled.device_pull,
        "near_line": pulled.lines[0].low,
        "far_line": pulled.lines[-1].low,
        "track_tension": pulled.total.low,
        "take_in": _length(_LOW) - _length(_HIGH),
        "least_play": _LEAST,
        "line_stretch": _longer(),
        "tail": _TAIL,
        "play": _PLAY,
        "haul_speed": _SPEED,
        "track_elevation": high.track_elevation,
        "ground_depression": high.ground_depression,
        "device_share": _DEVICE_SHARE,
        "tail_advantage": _ON_TAIL,
    }


def _example() -> Mapping[str, Quantity]:
    return {
        "mass": (_MASS, Kind.MASS),
        "out": (_OUT, Kind.LENGTH),
        "high": (_HIGH, Kind.LENGTH),
        "total": (_held(_HIGH).line_tension, Kind.FORCE),
        "efficiency": (_EFFICIENCY, Kind.RATIO),
    }


def _in_and_out() -> Mapping[str, Quantity]:
    pulled = _pulled_in()
    out = series.series_tensioner(
        "lowering", device_pull=pulled.device_pull, lines=_LINES, efficiency=_EFFICIENCY
    )
    share = out.shares[-1].low * pulled.total.low
    return {
        "total": (pulled.total.low, Kind.FORCE),
        "half": (pulled.total.low / _LINES, Kind.FORCE),
        "near": (pulled.lines[0].low, Kind.FORCE),
        "far": (pulled.lines[-1].low, Kind.FORCE),
        "near_out": (pulled.total.low - share, Kind.FORCE),
        "far_out": (share, Kind.FORCE),
    }


def _worth() -> Mapping[str, Quantity]:
    def worth(lines: int, efficiency: float) -> Quantity:
        found = series.effective_lines(efficiency=efficiency, lines=float(lines))
        return (float(found), Kind.RATIO, 3)

    poor = 0.7
    return {
        "good": (_EFFICIENCY, Kind.RATIO),
        "two": worth(2, _EFFICIENCY),
        "three": worth(3, _EFFICIENCY),
        "four": worth(4, _EFFICIENCY),
        "ceiling": (float(series.lines_ceiling(efficiency=_EFFICIENCY)), Kind.RATIO, 3),
        "poor": (poor, Kind.RATIO),
        "poor_three": worth(3, poor),
        "poor_four": worth(4, poor),
        "poor_ceiling": (float(series.lines_ceiling(efficiency=poor)), Kind.RATIO, 3),
    }


def _hub() -> Mapping[str, Quantity]:
    pulled = _pulled_in()
    return {
        "device": (pulled.device_pull, Kind.FORCE),
        "pulley": (pulled.hub_pulleys[0].low, Kind.FORCE),
        "tied": (pulled.tie_off.low, Kind.FORCE),
        "total": (pulled.total.low, Kind.FORCE),
        "uplift": (_held(_HIGH).hub_uplift, Kind.FORCE),
    }


def _rope() -> Mapping[str, Quantity]:
    take_in, longer = _length(_LOW) - _length(_HIGH), _longer()
    rope = series.tensioner_rope(
        _LINES, least_play=_LEAST, take_in=take_in, line_stretch=longer, tail=_TAIL
    )
    return {
        "low": (_LOW, Kind.LENGTH),
        "high": (_HIGH, Kind.LENGTH),
        "take_in": (take_in, Kind.LENGTH),
        "stretch": (longer, Kind.LENGTH, 2),
        "least": (_LEAST, Kind.LENGTH),
        "tail": (_TAIL, Kind.LENGTH),
        "through": (rope.through_device, Kind.LENGTH),
        "needed": (rope.needed, Kind.LENGTH),
    }


def _feed() -> Mapping[str, Quantity]:
    high = _held(_HIGH)
    feed = lines_of.device_speed(
        lines=float(_LINES),
        haul_speed=_SPEED,
        track_elevation=high.track_elevation,
        ground_depression=high.ground_depression,
    )
    low = _held(_LOW)
    at_foot = lines_of.device_speed(
        lines=float(_LINES),
        haul_speed=_SPEED,
        track_elevation=low.track_elevation,
        ground_depression=low.ground_depression,
    )
    return {
        "haul": (_SPEED, Kind.SPEED, 2),
        "low": (_LOW, Kind.LENGTH),
        "at_foot": (at_foot, Kind.SPEED, 2),
        "high": (_HIGH, Kind.LENGTH),
        "feed": (feed, Kind.SPEED, 2),
    }


def _equal() -> Mapping[str, Quantity]:
    wanted = _held(_HIGH).line_tension / _LINES
    moves = series.equalise(_LINES, each_line_tension=wanted, efficiency=_EFFICIENCY)
    return {
        "wanted": (wanted, Kind.FORCE),
        "first": (moves.device_pulls[0], Kind.FORCE),
        "second": (moves.device_pulls[1], Kind.FORCE),
        "least": (100 * moves.over_pull.low, Kind.RATIO, 2),
        "most": (100 * moves.over_pull.high, Kind.RATIO, 2),
    }


def _handed_over() -> Mapping[str, Quantity]:
    pulled = _pulled_in()
    back = 0.1
    ropes = Ropes(_LINES, _EFFICIENCY, _STIFFNESS, _length(_HIGH), _PLAY)
    path = moved_back(ropes, first="hauling", device_pull=pulled.device_pull, moved=back)
    near, far = (float(t) for t in path.lines[-1])
    return {
        "stiffness": (_STIFFNESS, Kind.FORCE),
        "back": (back, Kind.LENGTH),
        "near_before": (pulled.lines[0].low, Kind.FORCE),
        "near": (near, Kind.FORCE),
        "far_before": (pulled.lines[-1].low, Kind.FORCE),
        "far": (far, Kind.FORCE),
    }


def _lost() -> Mapping[str, Quantity]:
    lost = series.lost_line(_LINES, play=_PLAY)
    return {
        "play": (_PLAY, Kind.LENGTH),
        "runs_in": (lost.runs_in, Kind.LENGTH),
        "slack": (lost.slack, Kind.LENGTH),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example on this page: {mass} hang on the ropes and stand {out} out at {high}. The "
        "track lines together have to carry {total} there. Two lines run in series, and every "
        "sheave has an efficiency of {efficiency}.",
        _example,
    ),
    Fact(
        "in-and-out",
        "Half of {total} would be {half}. Pulled in, the near line carries {near} and the far line "
        "{far}. Had the rope been let out last, it would be the other way round: near line "
        "{near_out}, far line {far_out}.",
        _in_and_out,
        after_prediction=True,
    ),
    Fact(
        "worth",
        "With an efficiency of {good} two lines are worth {two} near lines, three {three} and four "
        "{four}; no number of lines exceeds {ceiling}. With {poor} three are worth {poor_three}, "
        "four {poor_four}, and the ceiling is {poor_ceiling}: the fourth line buys next to "
        "nothing.",
        _worth,
    ),
    Fact(
        "hub",
        "In the example the device holds {device}, the hub pulley carries {pulley} and the "
        "tied-off end {tied}. Together that is {total}: all of both lines, and {uplift} of it "
        "lifts the hub.",
        _hub,
    ),
    Fact(
        "rope",
        "Going straight up from {low} to {high}, each line comes in by {take_in}, and about "
        "{stretch} more for its stretch. With {least} left to the hub and {tail} of tail the "
        "tensioner rope has to be {needed} long, and {through} of it run through the device.",
        _rope,
    ),
    Fact(
        "feed",
        "If the haul team raises at {haul}, the rope at the device has to run at {at_foot} when "
        "the litter is {low} up and at {feed} at {high}.",
        _feed,
    ),
    Fact(
        "equal",
        "To bring both lines to {wanted}, take in until the device holds {first}; the far line is "
        "then right. Ease until it holds {second}; then the near line is right, too. In between "
        "the near line is {least} to {most} % above that, so look at its limit first.",
        _equal,
    ),
    Fact(
        "handed-over",
        "Handing the strand over to the progress capture lets a little rope back. With ropes of "
        "stiffness {stiffness}, {back} of it takes the near line from {near_before} to {near}, "
        "while the far line goes from {far_before} to {far}.",
        _handed_over,
    ),
    Fact(
        "lost-line",
        "If one of two lines is lost while its pulley stands {play} from the hub, {runs_in} of "
        "rope run in and the other line gains {slack} of slack. The litter swings in before "
        "anything holds again.",
        _lost,
    ),
)


def _field() -> Mapping[str, Quantity]:
    near, play = 1000.0, 3.0
    pull = float(lines_of.device_strand(near_line=near, efficiency=_EFFICIENCY))
    pulled = series.series_tensioner(
        "hauling", device_pull=pull, lines=_LINES, efficiency=_EFFICIENCY
    )
    out = series.series_tensioner("lowering", device_pull=1.0, lines=_LINES, efficiency=_EFFICIENCY)
    return {
        "near": (near, Kind.FORCE, 2),
        "play": (play, Kind.LENGTH),
        "efficiency": (_EFFICIENCY, Kind.RATIO),
        "far": (pulled.lines[1].low, Kind.FORCE, 2),
        "hub": (pulled.total.low, Kind.FORCE, 2),
        "ratio": (out.lines[1].low / out.lines[0].low, Kind.RATIO, 3),
        "ratio_in": (pulled.lines[1].low / near, Kind.RATIO, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "The guess: which of two lines carries more? Everybody writes it down."),
        (10, "Strand by strand on the board, taking in; then turn every arrow round."),
        (10, "The figure: the loop, then the efficiency, then a lost line."),
        (15, "Outdoors: two cells, in and out, and what the hand-over does."),
        (10, "Rope and speed for your own raise, and the quick checks."),
    ),
    board=(
        "The hub from above with two travelling pulleys; one rope in one colour, no numbers.",
        "Number the strands from the device. Mark the near line and the far line.",
        "Arrows for the rope taken in. At each sheave write the efficiency; the strand behind it "
        "carries less. Add the two strands of each line.",
        "Rub the arrows out, turn them round, and ask which line is the heavy one now.",
        "Cut the near line. Follow the rope with a finger.",
    ),
    field=(
        Fact(
            "two-cells",
            "Between two strong anchors on the ground build two lines in series with the "
            "travelling pulleys {play} from the hub, nobody on them, and one load cell in each "
            "line and one at the hub. Take in until the near cell reads {near}. With sheaves of "
            "efficiency {efficiency} the far cell should read about {far} and the hub cell {hub}.",
            _field,
        ),
        Fact(
            "and-back",
            "Ease slowly and read both line cells. The far cell should hardly move at first, then "
            "carry more than the near one: its share goes from {ratio_in} to {ratio} of the near "
            "line. From the readings while taking in, the class finds the efficiency of its own "
            "sheaves.",
            _field,
        ),
    ),
)

TENSIONER = LessonContent(
    number=10,
    key="tensioner",
    file="10_tensioner",
    title="One rope for several track lines",
    example=_known,
    figures=(TENSIONER_PLAN,),
    derivations=(
        lines_of.line_taken_in,
        lines_of.far_over_near,
        series.effective_lines,
        series.lines_ceiling,
        lines_of.most_loaded_line,
        lines_of.all_lines,
        lines_of.device_strand,
        lines_of.hub_pulley_load,
        lines_of.rope_through_device,
        lines_of.rope_needed,
        lines_of.device_speed,
        lines_of.hand_pull,
        series.released_slack,
    ),
    facts=_FACTS,
    questions=(
        asked.FAR_TO_NEAR,
        asked.HUB_TOTAL,
        asked.ROPE_LENGTH,
        asked.DEVICE,
        asked.LOST_LINE,
    ),
    myths=(asked.MOST_LOADED, asked.ONE_LINE, asked.LOST_LINE, asked.HUB_TOTAL),
    words=(
        "hub",
        "track-line",
        "tensioner",
        "near-line",
        "far-line",
        "travelling-pulley",
        "device",
        "play",
        "hand-over",
    ),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        series.NO_BACKUP,
        cautions.COMMON_HUB,
        cautions.REHEARSE,
        cautions.STATIC,
    ),
)
