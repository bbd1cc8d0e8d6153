"""Something lets go: where the litter was, where it goes, what it may meet and what then carries.

Left the litter before and after, close up, with the way between. Right what ropes carry before,
at rest afterwards and at the peak, and what the same event would do at other heights.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics import slip, swing
from ropecalc.mechanics.friction import Band
from ropecalc.mechanics.holding import Hold, Method, Point, Reach, Rig, hold
from ropecalc.mechanics.slip import Rest, Slipped
from ropecalc.mechanics.stretch import BOTH_BOUNDS, FAST
from ropecalc.mechanics.swing import HaulLost, LineLost, Swing, Tensioning
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import INK, Canvas
from ropecalc.teaching.drawing import (
    BELAY,
    BRIDLE,
    FAINT,
    HALF_WIDTH,
    HAUL,
    LIMIT,
    REACH_DOWN,
    ROCK_FACE,
    THIN,
    TRACK,
    WARNING,
    Area,
    Arrow,
    Frame,
    Label,
    Labels,
    Litter,
    Mark,
    Notice,
    Place,
    Rope,
    ScaleBar,
    Stroke,
)
from ropecalc.teaching.figures.free_body import neat_force, pulls_on_litter
from ropecalc.teaching.figures.length_axes import LengthAxes, LengthAxis, every
from ropecalc.teaching.figures.range_rows import RangeRows, say_range
from ropecalc.teaching.figures.sensitivity import too_sensitive, too_sensitive_words
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import LOCKED, Choice, Figure, Look, Outcome, Prediction, Table, Values
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

_TOP = Point(0.3, 32.0)
RIG = Rig(haul_directional=_TOP, track_directional=_TOP, hub=Point(40.0, 0.5))
"""The reference raise: haul and track lines from one directional, hub out in front."""
EDGE = 30.0
SLIP, CREEP = "slip", "creep"
SERIES, TIED, INDEPENDENT = "series", "tied", "independent"
ROPE, HAUL_LOST = "rope", "haul"
_EVENTS = {
    SLIP: "all grabs slip alike",
    CREEP: "the hub creeps in",
    SERIES: "a line goes: lines in series",
    TIED: "the same, tails tied back",
    INDEPENDENT: "a line goes: own tensioners",
    ROPE: "the tensioner's rope goes",
    HAUL_LOST: "the haul line goes",
}
_ONE_LINE = (SERIES, TIED, INDEPENDENT)
_HEIGHTS = np.linspace(1.0, 30.0, 30)


@dataclass(frozen=True)
class Carried:
    """What a rope carries (N): before, at rest afterwards (None: not at rest), and at its peak."""

    name: str
    before: float
    after: Band | None
    peak: float | None


@dataclass(frozen=True)
class Failure:
    """One event worked out. With ``trouble`` there are no numbers, and it says why.

    ``inward`` is the furthest movement towards the wall (m), the first swing counted; ``gap`` is
    the room between litter and rock. ``impact`` is the free swing to the rock, which bounds the
    speed there; it is None where the litter does not get there or nothing swings in. ``slack`` is
    what runs into each line (None where lines are lost together). ``elsewhere`` is the movement at
    other heights (masked where there is none).
    """

    event: str
    place: Point
    load: float
    rock: float
    trouble: str
    held: Hold
    rigid: Rest | None
    elastic: Rest | None
    inward: float
    slack: float | None
    impact: Swing | None
    haul: HaulLost | None
    carried: tuple[Carried, ...]
    elsewhere: Any

    @property
    def gap(self) -> float:
        """From the litter's side to the rock (m)."""
        return self.place.x - HALF_WIDTH - self.rock

    @property
    def meets_rock(self) -> bool:
        """Whether the litter can meet the rock."""
        return self.impact is not None

    @property
    def turned(self) -> Place:
        """Where the way ends: at the rock, where the swing turns, or where the belay is tight."""
        if self.haul is not None:
            return (self.haul.x, self.haul.z)
        in_by = min(self.inward, self.gap) if self.meets_rock else self.inward
        leg = float(np.hypot(self.place.x - _TOP.x, _TOP.z - self.place.z))
        off = self.place.x - _TOP.x - in_by
        return (_TOP.x + off, _TOP.z - float(np.sqrt(max(leg**2 - off**2, 0.0))))


def compute(values: Values) -> Failure:
    """Work out one setting of the controls (SI)."""
    place, event = Point(values["offset"], values["height"]), values["event"]
    load = float(weight(mass=values["mass"]))
    held = hold(Method.TRACK, RIG, load, place.x, place.z)
    none = Failure(
        event=event,
        place=place,
        load=load,
        rock=values["rock"],
        trouble=_trouble(held, load, place, values["rock"]),
        held=held,
        rigid=None,
        elastic=None,
        inward=0.0,
        slack=None,
        impact=None,
        haul=None,
        carried=(),
        elsewhere=np.ma.masked_all(len(_HEIGHTS)),
    )
    if none.trouble:
        return none
    try:
        return _WORKED[event](none, values)
    except DomainError as error:
        return replace(none, trouble=str(error))


def _trouble(held: Hold, load: float, place: Point, rock: float) -> str:
    if held.reach is not Reach.HELD:
        return str(held.reach.sentence)
    if bool(too_sensitive(Method.TRACK, RIG, load, place.x, place.z)):
        return _SENSITIVE
    if place.x - HALF_WIDTH - rock < 0.05:
        return "The litter already stands against the rock. Move it further out."
    return ""


_SENSITIVE = "sensitive"


def _leg(place: Point) -> float:
    return float(np.hypot(place.x - _TOP.x, _TOP.z - place.z))


def _free_swing(one: Failure) -> Swing:
    """The free swing to the rock, or to plumb where that comes first."""
    off = one.place.x - _TOP.x
    contact = max(0.0, one.rock + HALF_WIDTH - _TOP.x)
    return swing.swing(
        load=one.load, haul_leg_length=_leg(one.place), off_plumb=off, contact=min(contact, off)
    )


def _peak_without_rock(one: Failure, at_rest: Band) -> float:
    """The haul line's peak if nothing stops the swing, and no less than what it then carries."""
    free = swing.swing(
        load=one.load,
        haul_leg_length=_leg(one.place),
        off_plumb=one.place.x - _TOP.x,
        contact=0.0,
    )
    return float(max(free.peak, at_rest.high))


def _slipped(one: Failure, values: Values) -> Failure:
    """The grabs slip, or the hub creeps in, which gives the lines as much slack."""
    rig, amount = RIG, values["moved"]
    if one.event == CREEP:
        rig = replace(RIG, hub=Point(RIG.hub.x - amount, RIG.hub.z))
        there = (Method.TRACK, RIG, one.place.x, one.place.z)
        here = (Method.TRACK, rig, one.place.x, one.place.z)
        amount = float(slip.line_length(*there) - slip.line_length(*here))
    stiffness = values["lines"] * values["stiffness"]
    found: Slipped = slip.slipped(
        Method.TRACK, rig, one.load, one.place.x, one.place.z, slip=amount, stiffness=stiffness
    )
    lines = Carried(
        "all track lines",
        one.held.line_tension,
        _between(found.rigid.line_tension, found.elastic.line_tension),
        found.turn.line_tension,
    )
    return _moved(one, found.rigid, found.elastic, float(found.inward), amount, lines)


def _line_lost(one: Failure, values: Values) -> Failure:
    """One of the track lines goes."""
    series = one.event != INDEPENDENT
    asked: dict[str, Any] = {}
    if series:
        asked = {"play": values["play"], "efficiency": values["efficiency"]}
        asked["tie_back_slack"] = values["tie_back"] if one.event == TIED else None
    found: LineLost = swing.line_lost(
        RIG,
        one.load,
        one.place.x,
        one.place.z,
        lines=round(values["lines"]),
        tensioning=Tensioning.SERIES if series else Tensioning.INDEPENDENT,
        stiffness=values["stiffness"],
        **asked,
    )
    worst = Carried(
        "worst line left",
        found.survivor_before,
        _between(found.survivor_rigid, found.survivor_elastic),
        found.survivor_peak,
    )
    return _moved(one, found.rigid, found.elastic, found.inward, found.slack, worst)


def _moved(
    one: Failure, rigid: Rest, elastic: Rest, inward: float, slack: float, lines: Carried
) -> Failure:
    at_rest = _between(rigid.haul_tension, elastic.haul_tension)
    peak = _peak_without_rock(one, at_rest)
    haul = Carried("haul line", one.held.haul_tension, at_rest, peak)
    met = inward >= one.gap
    return replace(
        one,
        rigid=rigid,
        elastic=elastic,
        inward=inward,
        slack=slack,
        impact=_free_swing(one) if met else None,
        carried=(lines, haul),
        elsewhere=_movements(one.load, one.place.x, slack),
    )


def _rope_lost(one: Failure, _: Values) -> Failure:
    """The tensioner's rope goes: all track lines are slack, and the litter swings in freely."""
    free = _free_swing(one)
    off = one.place.x - _TOP.x
    return replace(
        one,
        inward=off,
        impact=free,
        carried=(
            Carried("all track lines", one.held.line_tension, Band(0.0, 0.0), None),
            Carried("haul line", one.held.haul_tension, Band(one.load, one.load), free.peak),
        ),
        elsewhere=_falls(one.place.x),
    )


def _haul_lost(one: Failure, values: Values) -> Failure:
    """The haul line goes: the track lines hold the litter out while it drops into the belay."""
    found: HaulLost = swing.haul_lost(
        RIG,
        one.load,
        one.place.x,
        one.place.z,
        belay_slack=values["belay_slack"],
        belay_length=_leg(one.place),
        stiffness=values["stiffness"],
    )
    return replace(
        one,
        haul=found,
        carried=(
            Carried("haul line", one.held.haul_tension, Band(0.0, 0.0), None),
            Carried("belay", 0.0, None, found.peak),
            Carried("all track lines", one.held.line_tension, None, found.track_peak),
        ),
    )


_WORKED: Mapping[str, Callable[[Failure, Values], Failure]] = {
    SLIP: _slipped,
    CREEP: _slipped,
    SERIES: _line_lost,
    TIED: _line_lost,
    INDEPENDENT: _line_lost,
    ROPE: _rope_lost,
    HAUL_LOST: _haul_lost,
}


def _between(one: float, other: float) -> Band:
    return Band(float(min(one, other)), float(max(one, other)))


@cache
def _movements(load: float, offset: float, slack: float) -> Any:
    """How far the same slack moves the litter in at each height, if nothing stretches."""
    found = np.ma.masked_all(len(_HEIGHTS))
    for i, z in enumerate(_HEIGHTS):
        held = hold(Method.TRACK, RIG, load, offset, float(z))
        if held.reach is Reach.HELD:
            arc = slip.Arc.from_place(Method.TRACK, RIG, load, offset, float(z))
            found[i] = arc.rigid(slack).inward
    return found


@cache
def _falls(offset: float) -> Any:
    """The height lost in a free swing to plumb from each height."""
    leg = np.hypot(offset - _TOP.x, _TOP.z - _HEIGHTS)
    return swing.swing_fall.masked(haul_leg_length=leg, off_plumb=offset - _TOP.x)


# --- in words ---------------------------------------------------------------------------------


def _sentence(result: Failure, display: Display) -> str:
    return too_sensitive_words(display) if result.trouble == _SENSITIVE else result.trouble


def summary(result: Failure, display: Display) -> str:
    """The event and its numbers in plain sentences."""

    def length(value: float) -> str:
        return say(display, value, Kind.LENGTH)

    def force(value: float) -> str:
        return say(display, value, Kind.FORCE)

    event = _EVENTS[result.event]
    words = (
        f"{event[:1].upper()}{event[1:]}; litter {length(result.place.x)} out at "
        f"{length(result.place.z)}, load {force(result.load)}."
    )
    if result.trouble:
        return f"{words} {_sentence(result, display)}"
    words += (
        f" Before: haul line {force(result.held.haul_tension)}, all track lines "
        f"{force(result.held.line_tension)}, {length(result.gap)} of room to the rock."
    )
    if result.haul is not None:
        return words + _dropped(result.haul, display)
    if result.slack is not None and result.rigid is not None and result.elastic is not None:
        words += _swung(result, result.slack, result.rigid, result.elastic, display)
    else:
        words += " All track lines are slack at once, and the litter swings in freely."
    if result.impact is not None:
        words += (
            f" It can meet the rock, at {say(display, result.impact.speed, Kind.SPEED)} at most: as"
            f" if dropped from {length(result.impact.fall)}."
        )
        if result.elastic is not None:
            words += " What is said of the rest afterwards and of peaks counts the rock as absent."
    else:
        words += " It does not get to the rock."
    for rope in result.carried:
        words += f" {rope.name[:1].upper()}{rope.name[1:]}: {_carried(rope, display)}."
    return words


def _swung(result: Failure, slack: float, rigid: Rest, elastic: Rest, display: Display) -> str:
    def length(value: float) -> str:
        return say(display, value, Kind.LENGTH)

    return (
        f" Slack that runs into the lines: {length(slack)}. At rest the litter is "
        f"{length(rigid.inward)} further in if nothing stretches, {length(elastic.inward)} if the "
        f"lines do. On the first swing it goes in up to {length(result.inward)}."
    )


def _dropped(found: HaulLost, display: Display) -> str:
    def length(value: float) -> str:
        return say(display, value, Kind.LENGTH)

    def force(value: float) -> str:
        return say(display, value, Kind.FORCE)

    return (
        f" The track lines still hold the litter out. It runs down and {length(found.outward)} "
        f"further out, falling {length(found.fall)} at most, until the belay has stopped it. Just "
        f"after the loss the track lines carry {force(found.track_after)}, on the way "
        f"{force(found.track_peak)} at most; the belay peaks at {force(found.peak)} at most, at up "
        f"to {say(display, found.speed, Kind.SPEED)}."
    )


def _carried(rope: Carried, display: Display) -> str:
    words = f"before {say(display, rope.before, Kind.FORCE)}"
    if rope.after is not None:
        words += f", at rest {say_range(rope.after, display)}"
    if rope.peak is not None:
        words += f", at its peak {say(display, rope.peak, Kind.FORCE)}"
    return words


def table(result: Failure, display: Display) -> Table:
    """Before and after: each rope, and the litter's place."""
    if result.trouble:
        return ()

    def force(value: float | None) -> str:
        return "–" if value is None else say(display, value, Kind.FORCE)

    def length(value: float) -> str:
        return say(display, value, Kind.LENGTH)

    rows = [
        (
            rope.name,
            force(rope.before),
            "–" if rope.after is None else say_range(rope.after, display),
            force(rope.peak),
        )
        for rope in result.carried
    ]
    x, z = result.turned
    out, height = ("–", "–")
    if result.elastic is not None and result.rigid is not None:
        ends = (result.rigid, result.elastic)
        out = _from_to(sorted(float(rest.x) for rest in ends), display)
        height = _from_to(sorted(float(rest.z) for rest in ends), display)
    rows.append(("litter, out from the wall", length(result.place.x), out, length(x)))
    rows.append(("litter, height", length(result.place.z), height, length(z)))
    return (("", "Before", "At rest afterwards", "Peak, or end of the swing"), *rows)


def _from_to(ends: Sequence[float], display: Display) -> str:
    """Where the litter may come to rest, between nothing that stretches and lines that do."""
    low, high = (say(display, end, Kind.LENGTH) for end in ends)
    return low if low == high else f"{low} to {high}"


# --- the picture ------------------------------------------------------------------------------

_WIDE, _TALL = 470, 500
_LEFT, _RIGHT = -1.6, 6.9
_UP = 4.2


class FailuresPicture:
    """The artists of the figure."""

    def __init__(self) -> None:
        self.canvas = Canvas(940, 550)
        self._scene = _Scene(self.canvas)
        self._carried = _Carried(self.canvas)
        self._elsewhere = _Elsewhere(self.canvas)

    def update(self, result: Failure, look: Look) -> None:
        """Follow ``result``."""
        self._scene.update(result, look)
        self._carried.update(result, look)
        self._elsewhere.update(result, look)


class _Scene:
    """The litter before and after, the way between, and the rock."""

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(20, 24, _WIDE, _TALL, "Before and after, close up")
        self._high = _TALL / _WIDE * (_RIGHT - _LEFT)
        axes.set_xlim(_LEFT, _RIGHT)
        axes.set_ylim(_UP - self._high, _UP)
        self._rock = Area(canvas, axes, ROCK_FACE)
        self._frame = Frame(canvas, axes)
        self._faint = [Rope(canvas, axes, FAINT) for _ in range(2)]
        self._haul, self._track = Rope(canvas, axes, HAUL), Rope(canvas, axes, TRACK)
        self._belay = Rope(canvas, axes, BELAY)
        self._way = Rope(canvas, axes, LIMIT, 6)
        self._was = Mark(canvas, axes, "o", "white", 8)
        self._before, self._after = Litter(canvas, axes, 4), Litter(canvas, axes, 5)
        self._meets = Mark(canvas, axes, "X", WARNING.color, 11, 8)
        self._arrows = [Arrow(canvas, axes, HAUL) for _ in range(4)]
        self._bar, self._force_bar = ScaleBar(canvas, axes), ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 10, 9)
        self._notice = Notice(canvas, axes, 0.6, 0.12, 42)

    def update(self, result: Failure, look: Look) -> None:
        """Follow ``result``; heights are counted from the litter's place before."""
        place, rock = result.place, result.rock
        low = _UP - self._high
        top, shelf = EDGE - place.z, min(0.5, EDGE - place.z)
        self._rock.place((-9, low - 9), (rock, low - 9), (rock, shelf - 0.4), (0, shelf),
                         (0, top), (-9, top))  # fmt: skip
        here: Place = (place.x, 0.0)
        directional: Place = (_TOP.x, _TOP.z - place.z)
        hub: Place = (RIG.hub.x, RIG.hub.z - place.z)
        self._frame.place(top, directional, directional)
        for part in (self._haul, self._track, self._belay, self._way, *self._faint):
            part.hide()
        for arrow in self._arrows:
            arrow.hide()
        self._after.hide()
        self._meets.hide()
        self._was.hide()
        self._force_bar.hide()
        self._before.place(*here)
        unit = 1.0 if look.display.length == "m" else look.display.si(5.0, Kind.LENGTH)
        self._bar.place(
            _RIGHT - unit - 0.3, low + 0.25, unit, 0.1, look.display.show(unit, Kind.LENGTH, 1)
        )
        self._notice.say(_sentence(result, look.display) if look.numbers else "")
        if result.trouble and look.numbers:
            self._bar.hide()
        lines: list[list[Place]] = [[here, directional], [here, hub]]
        labels = [Label("before", here, THIN.color, (1, 0.6))]
        boxes = [_body(here)]
        if result.trouble or not look.numbers:
            self._haul.place(here, directional)
            self._track.place(here, hub)
        else:
            end = result.turned
            there: Place = (end[0], end[1] - place.z)
            self._draw_after(result, here, there, directional, hub)
            lines += [[there, directional], [there, hub], [here, there]]
            boxes.append(_body(there))
            if result.meets_rock:
                x, z = there[0] - HALF_WIDTH, there[1] - BRIDLE
                boxes.append((x - 0.16, z - 0.16, x + 0.16, z + 0.16))
            self._name(result, look.display, there, labels)
            if look.forces:
                lines += self._draw_forces(result, look, labels)
        self._labels.write(labels, lines, boxes)

    def _draw_after(
        self, result: Failure, here: Place, there: Place, directional: Place, hub: Place
    ) -> None:
        self._was.place(*here)
        self._after.place(*there)
        self._faint[1].place(here, hub)
        if result.haul is not None:
            self._track.place((directional[0] + 0.12, directional[1]), there, hub)
            self._belay.place((there[0] - 0.1, there[1]), (directional[0] - 0.1, directional[1]))
            self._way.place(here, there)
            return
        self._faint[0].place(here, directional)
        self._haul.place(there, directional)
        if result.event != ROPE:
            self._track.place((directional[0] + 0.12, directional[1]), there, hub)
        off = np.linspace(here[0] - _TOP.x, there[0] - _TOP.x, 40)
        leg = _leg(result.place)
        self._way.trace(_TOP.x + off, directional[1] - np.sqrt(leg**2 - off**2))
        if result.meets_rock:
            self._meets.place(there[0] - HALF_WIDTH, there[1] - BRIDLE)

    @staticmethod
    def _name(result: Failure, display: Display, there: Place, labels: list[Label]) -> None:
        if result.haul is not None:
            lower = say(display, result.place.z - result.haul.z, Kind.LENGTH, 2)
            words = f"belay tight, {lower} lower"
            labels.append(Label(words, there, INK, (1, -0.4), True))
            return
        if result.impact is not None:
            fall = say(display, result.impact.fall, Kind.LENGTH, 2)
            speed = say(display, result.impact.speed, Kind.SPEED, 2)
            at = (there[0] - HALF_WIDTH, there[1] - BRIDLE)
            words = f"meets the rock\nat most {speed},\nas if dropped {fall}"
            labels.append(Label(words, at, WARNING.color, (-1, -0.6), True))
            return
        words = f"furthest in: {say(display, result.inward, Kind.LENGTH, 2)}"
        labels.append(Label(words, there, INK, (-1, 0.4), True))

    def _draw_forces(self, result: Failure, look: Look, labels: list[Label]) -> list[list[Place]]:
        """The free body before the event, named; returns its arrows as lines."""
        lines: list[list[Place]] = []
        pulls = pulls_on_litter(result.load, result.held)
        per_metre = max(size for _, size, _, _ in pulls) / 1.6
        for arrow, (name, size, direction, stroke) in zip(self._arrows, pulls, strict=False):
            reach = np.array(direction) * size / per_metre
            begin = np.array([result.place.x, 0.0])
            if name == "track, upper leg":
                begin = begin + np.array([0.16, 0.03])
            arrow.restyle(stroke)
            tail: Place = (float(begin[0]), float(begin[1]))
            tip: Place = (float(begin[0] + reach[0]), float(begin[1] + reach[1]))
            arrow.place(tail, tip)
            lines.append([tail, tip])
            # the ropes afterwards crowd the haul line's arrow: its name may stand further off
            haul = name == "haul"
            labels.append(Label(name, tip, stroke.color, (-1, 0.3) if haul else (1, 0.3),
                                optional=not haul))  # fmt: skip
        amount, words = neat_force(per_metre, look.display)
        low = _UP - self._high
        self._force_bar.place(_RIGHT - 3.6, low + 0.25, amount / per_metre, 0.1, words)
        return lines


def _body(point: Place) -> tuple[float, float, float, float]:
    """The room that the litter takes up, hanging from ``point``."""
    return (point[0] - HALF_WIDTH, point[1] - REACH_DOWN, point[0] + HALF_WIDTH, point[1] - 0.1)


class _Carried:
    """Every rope before, at rest afterwards and at its peak."""

    _W, _T = 408, 284

    def __init__(self, canvas: Canvas) -> None:
        axes = canvas.sheet(512, 240, self._W, self._T, "What the ropes carry")
        self._rows = RangeRows(canvas, axes, 8, 150, self._W - 120)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 44)

    def update(self, result: Failure, look: Look) -> None:
        """Follow ``result``."""
        words = ("No numbers: see left." if result.trouble else "") if look.numbers else LOCKED
        self._notice.say(words)
        if words:
            self._rows.hide()
            return
        rows = []
        levels = []
        level = self._T - 24.0
        for rope in result.carried:
            kinds = [(rope.name, Band(rope.before, rope.before), True)]
            if rope.after is not None:
                kinds.append(("at rest after", rope.after, False))
            if rope.peak is not None:
                kinds.append(("peak on the way", Band(rope.peak, rope.peak), False))
            for name, band, bold in kinds:
                shown = say_range(band, look.display, 2)
                rows.append((name, band, band, shown, bold))
                levels.append(level)
                level -= 31.0
            level -= 15.0
        self._rows.draw(rows, levels, 8)


class _Elsewhere:
    """What the same event does at other heights."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._axes = axes = canvas.axes(560, 56, 360, 146)
        axes.set_xlim(0, 31)
        axes.set_ylim(0, 1)
        axes.set_title("The same at other heights", fontsize=10.5, loc="left")
        self._numbers = LengthAxes(
            canvas, axes, LengthAxis("height of the litter", 31.0, every(10, 20))
        )
        axes.set_yticks([])
        axes.set_ylabel("how far", fontsize=9, labelpad=4)
        self._curve = Rope(canvas, axes, Stroke(LIMIT.color, 2.0))
        self._gap = Rope(canvas, axes, WARNING, 3)
        self._dot = Mark(canvas, axes, "o", "#f4b63f", 8)
        self._labels = Labels(canvas, axes, 3, 9)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 42)

    def update(self, result: Failure, look: Look) -> None:
        """Follow ``result``."""
        self._numbers.follow(look.display)
        for part in (self._curve, self._gap, self._dot):
            part.hide()
        self._labels.write([])
        words = self._words(result) if look.numbers else LOCKED
        self._notice.say(words)
        if words:
            return
        found = result.elsewhere
        top = 1.25 * max(float(found.max()), 1e-3)
        self._curve.trace(_HEIGHTS, np.ma.filled(found / top, np.nan))
        lines = [[(float(z), float(v) / top) for z, v in zip(_HEIGHTS, found, strict=True)
                  if v is not np.ma.masked]]  # fmt: skip
        labels = []
        here = float(np.interp(result.place.z, _HEIGHTS[~found.mask], found.compressed()))
        self._dot.place(result.place.z, here / top)
        what = "falls" if result.event == ROPE else "moves in"
        shown = say(look.display, here, Kind.LENGTH, 2)
        labels.append(Label(f"here: {what} {shown}", (result.place.z, here / top), INK, (-1, 1),
                            True))  # fmt: skip
        if result.event != ROPE and result.gap < top:
            self._gap.place((0, result.gap / top), (31, result.gap / top))
            lines.append([(0.0, result.gap / top), (31.0, result.gap / top)])
            labels.append(Label("room to the rock", (6.0, result.gap / top), WARNING.color, (0, 1)))
        self._labels.write(labels, lines)

    @staticmethod
    def _words(result: Failure) -> str:
        if result.trouble:
            return "No numbers: see left."
        if result.event == HAUL_LOST:
            return "Without the haul line the litter is held out: it drops, it does not swing in."
        if result.event == INDEPENDENT:
            return "No slack runs in: only stretch lets the litter move."
        return ""


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Choice("event", "What lets go", tuple(_EVENTS.items()), SLIP),
    Control("moved", "Slip, or creep of the hub", Kind.LENGTH, 0.05, 0.6, 0.05, 0.2),
    Control("play", "Travelling pulleys to hub", Kind.LENGTH, 1, 10, 0.5, 3),
    Control("tie_back", "Slack in tied-back tails", Kind.LENGTH, 0, 1, 0.05, 0.2),
    Control("belay_slack", "Slack in the belay", Kind.LENGTH, 0.2, 1.5, 0.1, 0.5),
    Control("height", "Litter, height", Kind.LENGTH, 1, 30, 0.5, 27),
    Control("stiffness", "Stiffness of a rope EA", Kind.FORCE, 20_000, 100_000, 5000, 50_000),
    Control("rock", "Rock beside the litter, out", Kind.LENGTH, 0, 2, 0.1, 1.4),
    Control("offset", "Litter, out from the wall", Kind.LENGTH, 0.8, 4, 0.1, 2.5),
    Control("lines", "Track lines", Kind.RATIO, 2, 4, 1, 2),
    Control("efficiency", "Efficiency of each sheave", Kind.RATIO, 0.6, 0.98, 0.01, 0.9),
    Control("mass", "Mass that hangs", Kind.MASS, 110, 290, 5, 200),
)


def _idle(values: Values) -> dict[str, str]:
    event, idle = values["event"], {}
    if event not in (SLIP, CREEP):
        idle["moved"] = "Only where grabs slip or the hub creeps: choose that above."
    if event not in (SERIES, TIED):
        for key in ("play", "efficiency"):
            idle[key] = "Only where a line in series is lost: choose that above."
    if event != TIED:
        idle["tie_back"] = "Only with tails tied back: choose that above."
    if event != HAUL_LOST:
        idle["belay_slack"] = "Only where the haul line is lost: choose that above."
    if event in (ROPE, HAUL_LOST):
        idle["lines"] = "All lines together count here, however many there are."
    if event == ROPE:
        idle["stiffness"] = "Nothing is left to stretch: the litter swings freely."
    return idle


def _outcome(display: Display) -> Outcome:
    """The same slip low down and high up."""
    start: dict[str, Any] = {control.key: control.default for control in CONTROLS}
    low, high = (compute(start | {"height": z}).rigid for z in (6.0, 28.0))
    assert low is not None and high is not None
    ratio = high.inward / low.inward
    return Outcome(
        right=0 if ratio < 0.9 else 1 if ratio < 1.1 else 2,
        sentence=(
            f"A slip of {say(display, start['moved'], Kind.LENGTH)} moves the litter in by "
            f"{say(display, low.inward, Kind.LENGTH)} at {say(display, 6.0, Kind.LENGTH)} and by "
            f"{say(display, high.inward, Kind.LENGTH)} at {say(display, 28.0, Kind.LENGTH)}, if "
            f"nothing stretches. The lines carry {say(display, low.line_tension, Kind.FORCE)} and "
            f"{say(display, high.line_tension, Kind.FORCE)} afterwards."
        ),
    )


FAILURES = Figure(
    key="failures",
    title="One thing gives way",
    alternative=(
        "Cross-section of a litter before and after something lets go, what the ropes carry, and "
        "how far the same event moves the litter at other heights"
    ),
    prediction=Prediction(
        question=(
            "the same little slip of the track lines, once with the litter near the foot of the "
            "wall, once just below the directional. Just below the directional the litter moves "
            "towards the rock …"
        ),
        choices=("less", "about as far", "more"),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=FailuresPicture,
    summary=summary,
    table=table,
    cautions=(
        swing.MOVING,
        BOTH_BOUNDS,
        FAST,
        cautions.REHEARSE,
        cautions.COMMON_HUB,
        cautions.NEAR_DIRECTIONAL,
        cautions.STRETCHING,
        cautions.AUTHORITY,
    ),
    forces_label="Show the forces on the litter before",
    forces_first=False,
    reading=(
        "Dotted: the way of the master attachment point. Grey lines: the ropes before. A cross: "
        "where the litter can meet the rock.",
    ),
    first=("event", "moved", "play", "tie_back", "belay_slack", "height"),
    idle=_idle,
)
