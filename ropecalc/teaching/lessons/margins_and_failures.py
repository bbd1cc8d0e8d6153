"""Margins, cells and what they tell, stretch, and what happens when one thing lets go."""

from collections.abc import Mapping
from functools import cache
from math import radians

from ropecalc import cautions
from ropecalc.mechanics import measurement, slip, strength, stretch, swing, tensioner
from ropecalc.mechanics.holding import Hold, Method, Point, Rig, hold
from ropecalc.mechanics.measurement import LastMove
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import FAILURES, READINGS
from ropecalc.teaching.figures import failures as events
from ropecalc.teaching.figures import readings as cells
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import margins as asked
from ropecalc.units import Kind, Rounding, round_figures

_MASS, _OUT, _HIGH, _LOW = 200.0, 2.5, 27.0, 6.0
_LINE_LENGTH, _MORE = 60.0, 0.3
_ROPE, _KNOT, _GRAB, _DEVICE = 30_000.0, 0.7, 8000.0, 6000.0
"""What a learner might enter for rope, knot, grab and device; no strength is built in."""


@cache
def _event(**changed: float | str) -> events.Failure:
    """The figure of failures at its start, with some controls moved."""
    found: events.Failure = events.compute(FAILURES.start | changed)
    return found


@cache
def _read(**changed: float | str) -> cells.Readings:
    """The figure of readings at its start, with some controls moved."""
    found: cells.Readings = cells.compute(READINGS.start | changed)
    return found


@cache
def _held(height: float = _HIGH) -> Hold:
    return hold(Method.TRACK, events.RIG, weight(mass=_MASS), _OUT, height)


def _inward(found: events.Failure, elastic: bool = False) -> float:
    rest = found.elastic if elastic else found.rigid
    assert rest is not None
    return float(rest.inward)


def _worst_line() -> float:
    return max(float(c.shows.high) for c in _read().cells if c.letter in "BC")


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    held, start = _held(), FAILURES.start
    leg = float(((_OUT - 0.3) ** 2 + (32.0 - _HIGH) ** 2) ** 0.5)
    return {
        "load": float(weight(mass=_MASS)),
        "haul_tension": held.haul_tension,
        "track_tension": held.line_tension,
        "haul_elevation": held.haul_elevation,
        "ground_depression": held.ground_depression,
        "strength": _GRAB,
        "component_load": _worst_line(),
        "load_uncertainty": _MORE,
        "strength_uncertainty": 0.0,
        "full_scale": 40_000.0,
        "cell_error": 0.01,
        "reading": 1500.0,
        "strand_angle": radians(70),
        "efficiency": 0.9,
        "slip": start["moved"],
        "haul_leg_length": leg,
        "off_plumb": _OUT - 0.3,
        "belay_slack": start["belay_slack"],
        "belay_length": leg,
        "stiffness": start["stiffness"],
        "rope_tension": held.line_tension / 2,
        "rope_length": _LINE_LENGTH,
        "play": start["play"],
        "lines": 2.0,
    }


def _example() -> Mapping[str, Quantity]:
    return {
        "mass": (_MASS, Kind.MASS),
        "out": (_OUT, Kind.LENGTH),
        "high": (_HIGH, Kind.LENGTH),
        "haul": (_held().haul_tension, Kind.FORCE),
        "total": (_held().line_tension, Kind.FORCE),
    }


def _weakest() -> Mapping[str, Quantity]:
    line = _worst_line()
    strand = max(c.shows.high for c in _read().cells if c.name.startswith("strand"))
    rope = strength.terminated_strength(breaking_strength=_ROPE, termination=_KNOT)

    def times(holds: float, carries: float) -> Quantity:
        factor = strength.margin(
            strength=holds, component_load=carries, load_uncertainty=_MORE, strength_uncertainty=0.0
        )
        return (float(round_figures(float(factor), 2, Rounding.DOWN)), Kind.RATIO, 2)

    return {
        "line": (line, Kind.FORCE),
        "strand": (strand, Kind.FORCE),
        "rope": times(float(rope), line),
        "grab": times(_GRAB, line),
        "device": times(_DEVICE, strand),
        "hub": times(_GRAB, _held().line_tension),
        "holds": (_GRAB, Kind.FORCE, 2),
        "share": (100 * _MORE, Kind.RATIO, 2),
    }


def _opposite() -> Mapping[str, Quantity]:
    found = _read(lines=3.0, efficiency=0.85, wanted=cells.ALL)
    into, out = (found.inferred[m].low for m in (LastMove.TAKEN_IN, LastMove.LET_OUT))
    return {
        "reading": (found.reading, Kind.FORCE, 2),
        "efficiency": (0.85, Kind.RATIO),
        "into": (into, Kind.FORCE),
        "out": (out, Kind.FORCE),
        "times": (out / into, Kind.RATIO),
    }


def _large_cell() -> Mapping[str, Quantity]:
    share = measurement.full_scale_error(full_scale=40_000.0, cell_error=0.01, reading=1500.0)
    return {
        "full": (40_000.0, Kind.FORCE, 2),
        "share": (1.0, Kind.RATIO, 1),
        "reading": (1500.0, Kind.FORCE, 2),
        "off": (400.0, Kind.FORCE, 2),
        "error": (100 * float(share), Kind.RATIO, 2),
    }


def _angles() -> Mapping[str, Quantity]:
    held, off = _held(), radians(2)
    band = measurement.tension_band(
        load=weight(mass=_MASS),
        haul_elevation=held.haul_elevation,
        ground_depression=held.ground_depression,
        haul_error=off,
        ground_error=off,
    )
    assert band.most is not None
    return {
        "off": (off, Kind.ANGLE, 1),
        "total": (band.nominal, Kind.FORCE),
        "least": (band.least, Kind.FORCE),
        "most": (band.most, Kind.FORCE),
    }


def _slips() -> Mapping[str, Quantity]:
    return {
        "slip": (FAILURES.start["moved"], Kind.LENGTH),
        "low": (_LOW, Kind.LENGTH),
        "there": (_inward(_event(height=_LOW)), Kind.LENGTH, 2),
        "high": (28.0, Kind.LENGTH),
        "here": (_inward(_event(height=28.0)), Kind.LENGTH, 2),
    }


def _one_grab() -> Mapping[str, Quantity]:
    slip_of_one, lines = float(FAILURES.start["moved"]), 2
    shared = slip_of_one / lines  # the tensioner's rope: what one pulley runs, the others give back
    return {
        "slip": (slip_of_one, Kind.LENGTH),
        "all": (_inward(_event()), Kind.LENGTH, 2),
        "each": (shared, Kind.LENGTH),
        "shared": (_inward(_event(moved=shared)), Kind.LENGTH, 2),
    }


def _one_line() -> Mapping[str, Quantity]:
    series, tied = _event(event=events.SERIES), _event(event=events.TIED)
    own = _event(event=events.INDEPENDENT)
    after = own.carried[0].after
    assert series.slack is not None and tied.slack is not None and after is not None
    return {
        "slack": (series.slack, Kind.LENGTH),
        "all": (_inward(series), Kind.LENGTH, 2),
        "tied": (tied.slack, Kind.LENGTH, 1),
        "little": (_inward(tied), Kind.LENGTH, 2),
        "more": (_inward(tied, elastic=True), Kind.LENGTH, 2),
        "own": (_inward(own, elastic=True), Kind.LENGTH, 2),
        "before": (own.carried[0].before, Kind.FORCE),
        "soft": (after.low, Kind.FORCE),
        "stiff": (after.high, Kind.FORCE),
    }


def _swings() -> Mapping[str, Quantity]:
    high, low = (_event(event=events.ROPE, height=z, rock=0.0).impact for z in (_HIGH, _LOW))
    assert high is not None and low is not None
    return {
        "high": (_HIGH, Kind.LENGTH),
        "fall": (high.fall, Kind.LENGTH, 2),
        "speed": (high.speed, Kind.SPEED, 2),
        "peak": (high.peak, Kind.FORCE),
        "before": (_held().haul_tension, Kind.FORCE),
        "low": (_LOW, Kind.LENGTH),
        "slow": (low.speed, Kind.SPEED, 2),
    }


def _haul_lost() -> Mapping[str, Quantity]:
    found = _event(event=events.HAUL_LOST).haul
    assert found is not None
    return {
        "slack": (found.belay_slack, Kind.LENGTH),
        "fall": (found.fall, Kind.LENGTH, 2),
        "belay": (found.peak, Kind.FORCE),
        "before": (found.before.line_tension, Kind.FORCE),
        "track": (found.track_peak, Kind.FORCE),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example: {mass} held {out} out at {high} on the Upper Heron Wall. The haul line "
        "carries {haul}, two track lines in series {total} together.",
        _example,
    ),
    Fact(
        "weakest",
        "The worst line carries {line}, the strand at the device {strand}. With loads that may be "
        "{share} % higher, and rounded down, the example's knotted rope has a margin of {rope}, "
        "its grab {grab}, its device {device}. A part of the hub that holds {holds}, as the grab "
        "does, carries both lines and has a margin of {hub}.",
        _weakest,
    ),
    Fact(
        "opposite-moves",
        "Three lines, sheaves of {efficiency}: a cell at the device shows {reading}. All lines "
        "together carry {into} if rope was just taken in, {out} if it was just let out. That is "
        "{times} times as much, at the same reading.",
        _opposite,
        after_prediction=True,
    ),
    Fact(
        "large-cell",
        "A cell of {full} that may be off by {share} % of full scale may be off by {off}. Where it "
        "shows {reading} that is {error} % of the reading.",
        _large_cell,
    ),
    Fact(
        "angles",
        "If both angles at the litter may be off by {off}, the {total} of the track lines may be "
        "anything from {least} to {most}.",
        _angles,
    ),
    Fact(
        "slips",
        "A slip of {slip} moves the litter in by {there} at {low} and by {here} at {high}, if "
        "nothing stretches.",
        _slips,
        after_prediction=True,
    ),
    Fact(
        "one-grab",
        "Here all grabs slip alike: {slip} in each line takes the litter {all} in. If only one of "
        "two slips by that, lines in series share it through the tensioner's rope, and it counts "
        "as {each} in each: {shared}. Until that rope has run round, the other line carries more. "
        "With a tensioner for each line nothing is shared: the other line takes over, up to what "
        "it carries when the first one is lost.",
        _one_grab,
        after_prediction=True,
    ),
    Fact(
        "one-line",
        "One of two lines in series goes: {slack} of slack run into the other, and the litter is "
        "{all} further in. With tails tied back with {tied} of slack it is {little}, or {more} if "
        "the lines stretch. With a tensioner for each line it is {own}, and the other line goes "
        "from {before} to {soft}, or to {stiff} if nothing stretches.",
        _one_line,
    ),
    Fact(
        "swings",
        "All track lines slack at {high}: the litter falls {fall} on its way to plumb, which gives "
        "{speed}, and the haul line goes from {before} to {peak}. At {low} the same distance out "
        "gives {slow}.",
        _swings,
    ),
    Fact(
        "haul-lost",
        "The haul line goes, with {slack} of slack in the belay: the litter falls up to {fall}, "
        "the belay peaks at up to {belay}, and the track lines go from {before} to up to {track}.",
        _haul_lost,
    ),
)


def _field() -> Mapping[str, Quantity]:
    top, hub = Point(0.0, 10.0), Point(15.0, 0.0)
    held = hold(Method.TRACK, Rig(top, top, hub), weight(mass=100.0), 2.5, 4.0)
    system = measurement.Tensioner(2, 0.9)
    full, share = READINGS.start["full_scale"], READINGS.start["cell_error"]
    into, out = (
        measurement.strand_reading(
            system, track_tension=held.line_tension, strand=1, last_move=move
        ).band.low
        for move in (LastMove.TAKEN_IN, LastMove.LET_OUT)
    )
    return {
        "mass": (100.0, Kind.MASS),
        "off": (2.5, Kind.LENGTH),
        "drop": (6.0, Kind.LENGTH),
        "up": (4.0, Kind.LENGTH),
        "hub": (15.0, Kind.LENGTH),
        "efficiency": (0.9, Kind.RATIO),
        "total": (held.line_tension, Kind.FORCE, 2),
        "into": (into, Kind.FORCE, 2),
        "out": (out, Kind.FORCE, 2),
        "full": (full, Kind.FORCE, 2),
        "share": (100 * share, Kind.RATIO, 1),
        "error": (full * share, Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "Everybody writes down what a cell at the device shows, before any figure."),
        (10, "The cells: one reading, four histories. Who writes down the last move?"),
        (15, "One thing gives way: each team takes an event and says what to do against it."),
        (10, "Quick checks, then the tie-back on the real tensioner, without load."),
    ),
    board=(
        "The chain from rope to hub, each part with its own load beside its own strength.",
        "Tensioner with strands; mark where the cell sits and which way rope went last.",
        "Haul leg and arc; the ground leg before and after a slip.",
        "The swing: a right triangle, and the little height between the arc and its chord.",
        "A table of events: what holds next, what moves, what peaks, what we do.",
    ),
    field=(
        Fact(
            "two-histories",
            "Hold {mass} of test weight, nobody near it, {off} off plumb and {up} up, from a "
            "directional {drop} above it, by two track lines in series to a hub {hub} out. With "
            "sheaves of efficiency {efficiency} the cell at the hub should show {total} both "
            "times. The cell at the device should show about {into} while rope is taken in and "
            "{out} while it is let out. Take a small cell there: one of {full} that may be off by "
            "{share} % of full scale may be off by {error}, and tells the class nothing.",
            _field,
        ),
    ),
)

MARGINS_AND_FAILURES = LessonContent(
    number=11,
    key="margins-and-failures",
    file="11_margins_and_failures",
    title="Margins, cells and what happens if",
    example=_known,
    figures=(READINGS, FAILURES),
    derivations=(
        strength.margin,
        measurement.weight_from_readings,
        measurement.full_scale_error,
        measurement.rope_ahead_of_redirect,
        slip.slip_along_arc,
        stretch.stretch,
        swing.swing_fall,
        swing.swing_peak,
        swing.arrest_peak,
        tensioner.released_slack,
    ),
    facts=_FACTS,
    questions=(
        asked.CELL_ERROR,
        asked.WEIGH,
        asked.SMALL_SLIP,
        asked.SWING_FALL,
        asked.ARREST,
    ),
    myths=(asked.CELL_ERROR, asked.SMALL_SLIP, asked.SWING_FALL),
    words=(
        "margin",
        "full-scale",
        "strand",
        "near-line",
        "hand-over",
        "hub",
        "belay",
        "slack",
        "stretch",
        "plumb",
    ),
    notes=_NOTES,
    cautions=(
        measurement.WRITE_DOWN,
        tensioner.NO_BACKUP,
        swing.MOVING,
        cautions.REHEARSE,
        cautions.COMMON_HUB,
        cautions.NEAR_DIRECTIONAL,
        cautions.STRETCHING,
        cautions.AUTHORITY,
    ),
)
