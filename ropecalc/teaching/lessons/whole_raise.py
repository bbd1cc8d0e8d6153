"""A whole guided raise: plan it, brief it, run it, and compare afterwards."""

from collections.abc import Mapping
from functools import cache

from ropecalc import cautions
from ropecalc.mechanics import guiding, redirects, strength
from ropecalc.mechanics import raise_limits as limits
from ropecalc.mechanics import tensioner_lines as lines_of
from ropecalc.mechanics.holding import Method, Point, Rig, hold
from ropecalc.mechanics.tensioner import NO_BACKUP
from ropecalc.mechanics.vectors import weight
from ropecalc.planning.raise_plan import BELAY, RaisePlan
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import PLAN_BOARD
from ropecalc.teaching.figures.plan_board import (
    BACK,
    LEAST_PLAY,
    LOWER,
    TAIL,
    Board,
    Row,
    compute,
)
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import tensioner as in_series
from ropecalc.teaching.questions.bank import whole_raise as asked
from ropecalc.units import Kind, Rounding, round_figures

_SETBACK, _TAIL = 8.0, 10.0
"""Of one track line (m): behind the directional, and beyond the grab."""


@cache
def _board(**changed: float | str) -> Board:
    """The plan board at its start, with some controls moved: the example of this lesson."""
    found: Board = compute(PLAN_BOARD.start | changed)
    return found


def _plan(board: Board) -> RaisePlan:
    assert board.plan is not None, board.trouble
    return board.plan


def _worst(board: Board) -> Row:
    row = board.governing
    assert row is not None and row.total is not None
    return row


def _number(value: float | None) -> float:
    assert value is not None
    return value


def _down(value: float | None) -> float:
    """Against the reader: two figures, rounded down."""
    return float(round_figures(_number(value), 2, Rounding.DOWN))


def _longest() -> float:
    return max(station.track_length for station in _plan(_board()).stations)


def _gap() -> float:
    """From grab to hub at the start: all the play, and what has to be left."""
    return _number(_plan(_board()).track_play) + LEAST_PLAY


def _line_stretch() -> float:
    """What the board's tensioner rope counts for the stretch of each line (m)."""
    board = _board()
    assert board.rope is not None
    return board.rope.through_device / (2 * board.count) - _number(_plan(board).track_play)


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    board = _board()
    row, plan = _worst(board), _plan(board)
    way, rig = row.station.way(Method.TRACK), plan.site.rig
    start = PLAN_BOARD.start
    return {
        "load": plan.load,
        "x": row.station.offset,
        "z": row.station.height,
        "x_D": rig.haul_directional.x,
        "z_D": rig.haul_directional.z,
        "x_B": rig.hub.x,
        "z_B": rig.hub.z,
        "haul_elevation": _number(way.haul_elevation),
        "track_elevation": _number(way.haul_elevation),
        "ground_depression": _number(way.ground_depression),
        "back_depression": BACK,
        "track_tension": _number(row.total),
        "efficiency": board.efficiency,
        "lines": float(board.count),
        "strength": start["line"],
        "component_load": _number(row.near),
        "load_uncertainty": board.uncertainty,
        "strength_uncertainty": 0.0,
        "margin": board.asked,
        "setback": _SETBACK,
        "track_length": _longest(),
        "gap": _gap(),
        "line_tail": _TAIL,
        "take_in": _number(plan.track_play),
        "least_play": LEAST_PLAY,
        "line_stretch": _line_stretch(),
        "tail": TAIL,
    }


def _example() -> Mapping[str, Quantity]:
    plan = _plan(_board())
    rig, litter, lift = plan.site.rig, plan.site.litter, plan.site.lift
    return {
        "mass": (litter.mass, Kind.MASS),
        "start": (lift.start_height, Kind.LENGTH),
        "ends": (lift.guidance_ends, Kind.LENGTH),
        "top": (rig.haul_directional.z, Kind.LENGTH),
        "hub": (rig.hub.x, Kind.LENGTH),
        "bridle": (litter.bridle, Kind.LENGTH),
        "body": (litter.height, Kind.LENGTH),
        "clearance": (litter.clearance, Kind.LENGTH),
    }


def _governing() -> Mapping[str, Quantity]:
    board = _board()
    row, plan = _worst(board), _plan(board)
    far = max(plan.stations, key=lambda station: station.offset)
    tip = max(plan.site.wall.points, key=lambda point: point.offset)
    return {
        "total": (_number(row.total), Kind.FORCE),
        "height": (row.station.height, Kind.LENGTH),
        "out": (row.station.offset, Kind.LENGTH),
        "tip": (tip.height, Kind.LENGTH),
        "furthest": (far.offset, Kind.LENGTH),
        "furthest_at": (far.height, Kind.LENGTH),
        "there": (_number(far.way(Method.TRACK).line_tension), Kind.FORCE),
    }


def _both_walls() -> Mapping[str, Quantity]:
    upper, lower = _worst(_board()), _worst(_board(site=LOWER))
    return {
        "upper": (_number(upper.total), Kind.FORCE),
        "lower": (_number(lower.total), Kind.FORCE),
        "lower_at": (lower.station.height, Kind.LENGTH),
        "times": (_number(upper.total) / _number(lower.total), Kind.RATIO, 2),
    }


def _margins() -> Mapping[str, Quantity]:
    board = _board()
    bare = _board(uncertainty=0.0)
    start = PLAN_BOARD.start
    return {
        "near": (_number(_worst(board).near), Kind.FORCE),
        "line": (start["line"], Kind.FORCE, 2),
        "holds": (start["holds"], Kind.FORCE, 2),
        "share": (100 * board.uncertainty, Kind.RATIO, 2),
        "bare": (_down(bare.line_margin), Kind.RATIO, 2),
        "margin": (_down(board.line_margin), Kind.RATIO, 2),
        "hub": (_down(board.hub_margin), Kind.RATIO, 2),
        "stop": (_down(board.line_stop), Kind.FORCE, 2),
    }


def _choices() -> Mapping[str, Quantity]:
    board = _board()
    out, further = _board(directional=0.9), _board(hub=60.0)
    more = _board(lines=3.0)
    return {
        "total": (_number(_worst(board).total), Kind.FORCE),
        "near": (_number(_worst(board).near), Kind.FORCE),
        "step": (0.5, Kind.LENGTH),
        "moved": (_number(_worst(out).total), Kind.FORCE),
        "away": (60.0, Kind.LENGTH),
        "further": (_number(_worst(further).total), Kind.FORCE),
        "third": (_number(_worst(more).near), Kind.FORCE),
    }


def _ropes() -> Mapping[str, Quantity]:
    board = _board()
    assert board.rope is not None
    line = limits.track_rope(setback=_SETBACK, track_length=_longest(), gap=_gap(), line_tail=_TAIL)
    return {
        "setback": (_SETBACK, Kind.LENGTH),
        "tail": (_TAIL, Kind.LENGTH),
        "line": (float(line), Kind.LENGTH),
        "tensioner": (board.rope.needed, Kind.LENGTH),
        "through": (board.rope.through_device, Kind.LENGTH),
        "times": (float(round_figures(_number(board.fastest), 2, Rounding.UP)), Kind.RATIO, 2),
    }


def _head() -> Mapping[str, Quantity]:
    head = _board().head
    assert head is not None
    row, load = head
    return {
        "pull": (load.pull.high, Kind.FORCE),
        "height": (row.station.height, Kind.LENGTH),
        "lean": (load.lean.high, Kind.ANGLE, 2),
        "back": (BACK, Kind.ANGLE, 2),
        "haul": (_number(row.haul), Kind.FORCE),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example: the Upper Heron Wall with {mass} on the ropes, raised from {start} to "
        "{ends}, where edge attendants take over. Directionals {top} up, hub {hub} out. The body "
        "hangs {bridle} below the master attachment point and is {body} high; {clearance} are "
        "kept to the rock.",
        _example,
    ),
    Fact(
        "governing",
        "The litter stands furthest out, {furthest}, at {furthest_at}; the track lines carry "
        "{there} there. They carry most, {total}, at {height}, {out} out. The tip of the outcrop "
        "is at {tip}: the body, which hangs lower, is just passing it.",
        _governing,
        after_prediction=True,
    ),
    Fact(
        "both-walls",
        "The Lower Heron Wall has the same outcrop low down. Its largest track tension is {lower}, "
        "at {lower_at}; on the Upper Heron Wall it is {upper}, {times} times as high.",
        _both_walls,
    ),
    Fact(
        "margins",
        "The most loaded line carries {near}. If its weakest part holds {line}, that looks like a "
        "margin of {bare}. Loads may be {share} % higher, so {margin} is what can be stated, "
        "rounded down. At the hub, which holds {holds} here, it is {hub}. With the margin that the "
        "board asks for, a line's cell says stop at {stop}.",
        _margins,
    ),
    Fact(
        "choices",
        "Against {total} of all lines and {near} in the worst one: directionals {step} further out "
        "bring the total to {moved}, a hub at {away} to {further}. A third line in series brings "
        "the worst line to {third}, and the hub carries as before.",
        _choices,
    ),
    Fact(
        "ropes",
        "With {setback} behind the directional and a tail of {tail}, each track line takes {line} "
        "of rope. The tensioner takes {tensioner}, of which {through} run through the device, at "
        "up to {times} times the speed of the litter.",
        _ropes,
    ),
    Fact(
        "head",
        "The head carries haul line and track lines. While the team hauls it is loaded most at "
        "{height}, with {pull}, {lean} inwards from plumb, if all lines fall {back} behind it; "
        "friction in the head's pulleys, too, is counted there. The haul line alone pulls with "
        "{haul} at the litter.",
        _head,
    ),
)


def _field() -> Mapping[str, Quantity]:
    mass, off, up, drop, hub = 100.0, 2.5, 2.0, 8.0, 15.0
    load = float(weight(mass=mass))
    top = Point(0.0, up + drop)
    held = hold(Method.TRACK, Rig(top, top, Point(hub, 0.0)), load, off, up)
    near = lines_of.most_loaded_line(track_tension=held.line_tension, efficiency=0.9, lines=2.0)
    return {
        "mass": (mass, Kind.MASS),
        "off": (off, Kind.LENGTH),
        "up": (up, Kind.LENGTH),
        "drop": (drop, Kind.LENGTH),
        "hub": (hub, Kind.LENGTH),
        "efficiency": (0.9, Kind.RATIO),
        "near": (float(near), Kind.FORCE, 2),
        "total": (held.line_tension, Kind.FORCE, 2),
        "haul": (held.haul_tension, Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "Each team marks on the profile where it will be hardest, and keeps the sheet."),
        (20, "The board: hub, directional, lines. Each change is said with its price."),
        (15, "Each team writes its briefing card and briefs the others in five minutes."),
        (15, "Debrief after the half day outdoors: predicted against measured."),
    ),
    board=(
        "The profile with the outcrop, the body's outline at three heights, no numbers.",
        "The path of the master attachment point, and where the body still hangs below the tip.",
        "Station table: height, out, rope in, all lines, worst line, haul, uplift, head.",
        "Three columns for each cell: taken in, handed over, let out. Then where to ask and to "
        "stop, with what the cell may show too little.",
        "What no plan knows: survey, sheaves, weather, people; and what to do when it differs.",
    ),
    field=(
        Fact(
            "a-small-raise",
            "Raise {mass} of test weight, nobody near it, from a directional {drop} above a point "
            "{up} off the ground, held {off} off plumb by two track lines in series to a hub "
            "{hub} out. Just taken in, with sheaves of efficiency {efficiency}, the near line "
            "should read about {near}, all lines at the hub {total}, the haul line {haul}. Enter "
            "what the cells show in the debrief.",
            _field,
        ),
    ),
)

WHOLE_RAISE = LessonContent(
    number=12,
    key="whole-raise",
    file="12_whole_raise",
    title="A whole raise: plan, brief, run, debrief",
    example=_known,
    figures=(PLAN_BOARD,),
    derivations=(
        guiding.line_tension_from_places,
        lines_of.most_loaded_line,
        strength.margin,
        limits.stop_value,
        limits.track_rope,
        lines_of.rope_needed,
        redirects.combined_head_pull,
    ),
    facts=_FACTS,
    questions=(
        asked.GOVERNING,
        asked.HONEST_MARGIN,
        asked.STOP_VALUE,
        asked.TRACK_ROPE,
        in_series.SECOND_LINE,
    ),
    myths=(asked.GOVERNING, asked.HONEST_MARGIN, in_series.SECOND_LINE),
    words=(
        "attachment-point",
        "bridle",
        "high-directional",
        "hub",
        "station",
        "governing-station",
        "margin",
        "stop-value",
        "guidance-ends",
        "tensioner",
        "near-line",
    ),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        BELAY,
        NO_BACKUP,
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
        cautions.REHEARSE,
        cautions.STATIC,
    ),
)
