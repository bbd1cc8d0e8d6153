"""Where along a raise the track lines pull hard: lines of equal tension on the cross-section.

Left the wall with one outcrop and the lines of equal tension; inset the haul line at the
outcrop; right, on the same height axis, what the path that just clears asks for.

The path: at each height the litter is out as little as the rock allows. Below the outcrop the
haul line and the belay have to clear its tip, at the outcrop the litter itself, above it the line
to the hub. The table tells how far out each number of lines reaches at the litter's height.
"""

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Any

import contourpy
import numpy as np
from matplotlib.ticker import MaxNLocator
from numpy.typing import NDArray

from ropecalc import cautions
from ropecalc.mechanics.guiding import (
    haul_clearance_offset,
    straight_line_limit,
    track_tension_apart,
)
from ropecalc.mechanics.guiding_limits import largest_offset
from ropecalc.mechanics.holding import Hold, Method, Point, Reach, Rig, hold, leg_angles
from ropecalc.mechanics.tensioner import effective_lines
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import INK, SOFT_INK, Canvas
from ropecalc.teaching.drawing import (
    BELAY,
    BRIDLE,
    GROUND_FACE,
    HALF_WIDTH,
    HAUL,
    LIMIT,
    REACH_DOWN,
    ROCK_FACE,
    TRACK,
    WARNING,
    Area,
    Arrow,
    Box,
    Dot,
    Frame,
    Hub,
    Label,
    Labels,
    Litter,
    Mark,
    Notice,
    Place,
    Region,
    Rope,
    ScaleBar,
    Stroke,
)
from ropecalc.teaching.figures.free_body import neat_force, pulls_on_litter
from ropecalc.teaching.figures.length_axes import wall_axes
from ropecalc.teaching.figures.sensitivity import too_sensitive, too_sensitive_words
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import LOCKED, Figure, Look, Outcome, Prediction, Table, Values
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

Array = NDArray[Any]

EDGE = 30.0
"""Height of the cliff's edge (m)."""
LOWEST, HIGHEST = 1.0, 31.0
"""Heights of the attachment point between which the raise is shown (m)."""
UNDERSIDE, TOP_FACE = 2.5, 1.5
"""The outcrop recedes to the wall this far below and above its tip (m)."""
EXAMPLE_LIMIT = 2000.0
"""The limit for a line with which the figure begins (N); an example, not a recommendation."""
LEVELS = (0.25, 0.5, 1.0, 2.0, 4.0)
"""Tensions of all track lines together, in multiples of the weight, that get a line."""
FURTHEST = 29.0
"""How far out the map is worked out (m)."""
MOST_LINES = 4
"""Of how many lines the table speaks."""
_HEIGHTS = np.linspace(LOWEST, HIGHEST, 61)
_SAME = 1e-9
_LEVEL = 1e-3  # rad; along the straight line both legs are equally steep, but for rounding


@dataclass(frozen=True, eq=False)
class Field:
    """Tension of all track lines together over the weight, on a grid that fits the reachable area.

    Rows are heights; along a row the points run from plumb to the straight line. ``share`` is
    T / (T + W): it stays between 0 and 1 where T grows without limit, so lines of equal tension
    can be traced right up to the edge. ``slack`` is negative where the track lines alone would
    carry the litter and the haul line would go slack: how much steeper (rad) the track's upper
    leg is than its ground leg.
    """

    x: Array
    z: Array
    share: Any
    slack: Array

    @cached_property
    def _tracer(self) -> Any:
        return _tracer(self.x, self.z, self.share)

    def lines(self, ratio: float) -> list[Array]:
        """The lines on which the tension is ``ratio`` times the weight."""
        return list(self._tracer.lines(ratio / (1.0 + ratio)))

    def up_to(self, ratio: float) -> list[Array]:
        """The closed outlines of the area where it is at most ``ratio`` times the weight."""
        return _outlines(self._tracer, -1.0, ratio / (1.0 + ratio))

    def where_slack(self) -> list[Array]:
        """The closed outlines of the area where the haul line would go slack."""
        if self.slack.min() >= -_LEVEL:
            return []
        return _outlines(_tracer(self.x, self.z, self.slack), -np.pi, -_LEVEL)


def _tracer(x: Array, z: Array, values: Any) -> Any:
    return contourpy.contour_generator(
        x=x, y=z, z=values, line_type="Separate", fill_type="OuterOffset"
    )


def _outlines(tracer: Any, low: float, high: float) -> list[Array]:
    outer, starts = tracer.filled(low, high)
    return [
        points[a:b]
        for points, offsets in zip(outer, starts, strict=True)
        for a, b in pairwise(offsets)
    ]


@dataclass(frozen=True, eq=False)
class ContourMap:
    """One setting worked out. ``path`` is the least offset that clears at each of ``heights``.

    ``belay`` is the directional of the belay. ``furthest`` is how far out (m) one, two, ... lines
    reach at the station's height inside the limit; None where they reach nowhere, or where a place
    cannot be told so nearly.
    """

    rig: Rig
    belay: Point
    mass: float
    load: float
    tip: Point
    clearance: float
    lines: int
    efficiency: float
    limit: float
    effective: float
    heights: Array
    path: Array
    along: Hold
    shaky: Array
    least: float
    station: Point
    held: Hold
    sensitive: bool
    too_near: tuple[str, ...]
    furthest: tuple[float | None, ...]
    field: Field

    @property
    def reliable(self) -> bool:
        """Whether the station has numbers, and ones that can be printed."""
        return bool(self.held.reach.possible) and not self.sensitive

    @property
    def allowed(self) -> float:
        """Tension of all lines together (N) at which the worst line is at the entered limit."""
        return self.limit * self.effective

    @property
    def worst_line(self) -> float | None:
        """Tension (N) of the line nearest the device, which carries most while taking in."""
        return self.held.line_tension / self.effective if self.reliable else None

    @property
    def largest(self) -> tuple[float, float] | None:
        """The largest tension of all lines together on the path (N) and its height (m)."""
        good = self.printable
        if not good.any():
            return None
        tension = np.ma.filled(np.ma.masked_where(~good, self.along.line_tension), -1.0)
        most = int(np.argmax(tension))
        return float(tension[most]), float(self.heights[most])

    @property
    def limit_name(self) -> str:
        """What the limit is called: nobody has entered the one that the figure begins with."""
        return "the example limit" if self.limit == EXAMPLE_LIMIT else "the limit you entered"

    @property
    def printable(self) -> Array:
        """At which of ``heights`` the path has numbers."""
        possible = (self.along.reach == Reach.HELD) | (self.along.reach == Reach.PLUMB)
        return np.asarray(possible & ~self.shaky)


def rock(tip: Point) -> list[Place]:
    """The wall's outline with its one outcrop, from the foot up: (x, z)."""
    top = min(tip.z + TOP_FACE, EDGE)
    return [(0.0, -9.0), (0.0, tip.z - UNDERSIDE), (tip.x, tip.z), (0.0, top), (0.0, EDGE)]


def demands(
    rig: Rig, belay: Point, tip: Point, clearance: float, heights: Array
) -> dict[str, Array]:
    """How far out (m) each part asks the attachment point to be at ``heights``.

    The rules are those of :mod:`ropecalc.planning.clearing`, here for whole arrays of heights and
    for the rock that this figure is about, the one outcrop: the lines pass the edge of the cliff
    as they may. The belay, from the directional at ``belay``, asks for what the haul line would ask
    for from there. ``clearance`` is that of the lines, and of the litter's middle: half its width
    included. Minus infinity where a part asks for nothing.
    """
    return {
        "litter": _for_litter(tip, clearance, heights),
        "haul line": _for_line_above(rig.haul_directional, tip, clearance, heights),
        "belay": _for_line_above(belay, tip, clearance, heights),
        "track line": _for_track_line(rig, tip, clearance, heights),
    }


def least_offset(rig: Rig, belay: Point, tip: Point, clearance: float, heights: Array) -> Array:
    """The least offset (m) at ``heights`` at which everything clears; never further in than plumb.

    See :func:`demands`.
    """
    asked = demands(rig, belay, tip, clearance, heights).values()
    return np.maximum(rig.haul_directional.x, np.max(list(asked), axis=0))


def _for_litter(tip: Point, clearance: float, heights: Array) -> Array:
    """Rock and litter are straight between their corners, so one of these decides."""

    def asked(level: Any) -> Array:
        narrower = HALF_WIDTH * (1.0 - np.clip((heights - level) / BRIDLE, 0.0, 1.0))
        return np.asarray(_rock_at(tip, level) - narrower + clearance)

    levels = [heights, heights - BRIDLE, heights - REACH_DOWN]
    levels += [np.clip(z, heights - REACH_DOWN, heights) for _, z in rock(tip)]
    return np.asarray(np.max([asked(level) for level in levels], axis=0))


def _rock_at(tip: Point, heights: Any) -> Array:
    """How far out the rock reaches (m); as far as at the edge above it."""
    wall_x, wall_z = zip(*rock(tip), strict=True)
    return np.asarray(np.interp(heights, wall_z, wall_x))


def _for_line_above(top: Point, tip: Point, clearance: float, heights: Array) -> Array:
    """Where a line up to ``top`` begins, and at the tip while that is above the litter."""
    at_tip = haul_clearance_offset.masked(
        z=heights, x_D=top.x, z_D=top.z, x_O=tip.x, z_O=tip.z, clearance=clearance
    )
    return np.asarray(np.maximum(_rock_at(tip, heights) + clearance, at_tip.filled(-np.inf)))


def _for_track_line(rig: Rig, tip: Point, clearance: float, heights: Array) -> Array:
    """The leg to the hub: where it begins, and at the tip while that is between litter and hub.

    Its upper leg starts at or above the haul line's directional, so it stays outside that line.
    """
    hub, out = rig.hub, tip.x + clearance
    begins = _rock_at(tip, heights) + clearance
    if tip.z == hub.z:
        return begins
    at_tip = hub.x - (hub.x - out) * (heights - hub.z) / (tip.z - hub.z)
    between = (heights - tip.z) * (tip.z - hub.z) > 0
    return np.asarray(np.where(between, np.maximum(begins, at_tip), begins))


def _field(rig: Rig, load: float) -> Field:
    """The map's grid and the tension on it."""
    top, start, hub = rig.haul_directional, rig.track_directional, rig.hub
    heights = top.z - 0.02 - (top.z + 2.0) * np.linspace(0.0, 1.0, 72) ** 1.5
    straight = straight_line_limit(z=heights, x_D=start.x, z_D=start.z, x_B=hub.x, z_B=hub.z)
    ends = np.minimum(np.minimum(straight, hub.x), FURTHEST)
    along = 1.0 - (1.0 - np.linspace(0.0, 0.9998, 56)) ** 1.7
    x = top.x + 1e-6 + np.outer(ends - top.x, along)
    z = np.repeat(heights[:, None], along.size, axis=1)
    haul, up, down = leg_angles(rig, x, z)
    tension = track_tension_apart.masked(
        load=load, haul_elevation=haul, track_elevation=up, ground_depression=down
    )
    return Field(x, z, tension / (tension + load), up - abs(down))


def compute(values: Values) -> ContourMap:
    """Work out one setting of the controls (SI)."""
    haul = Point(values["directional_x"], values["directional_z"])
    track = Point(haul.x, haul.z + values["track_extra"])
    rig = Rig(haul, track, Point(values["hub_x"], values["hub_z"]))
    tip = Point(values["tip_x"], values["tip_z"])
    belay = Point(values["belay_x"], values["belay_z"])
    clearance = values["clearance"]
    load = weight(mass=values["mass"])
    lines = round(values["lines"])
    path = least_offset(rig, belay, tip, clearance, _HEIGHTS)
    only = np.array([values["height"]], float)
    least = float(least_offset(rig, belay, tip, clearance, only)[0])
    station = Point(least + values["further"], values["height"])
    asked = demands(rig, belay, tip, clearance, only).items()
    limit, efficiency = values["limit"], values["efficiency"]
    return ContourMap(
        rig=rig,
        belay=belay,
        mass=values["mass"],
        load=load,
        tip=tip,
        clearance=clearance,
        lines=lines,
        efficiency=efficiency,
        limit=limit,
        effective=effective_lines(efficiency=efficiency, lines=lines),
        heights=_HEIGHTS,
        path=path,
        along=hold(Method.TRACK, rig, load, path, _HEIGHTS),
        shaky=too_sensitive(Method.TRACK, rig, load, path, _HEIGHTS),
        least=least,
        station=station,
        held=hold(Method.TRACK, rig, load, station.x, station.z),
        sensitive=bool(too_sensitive(Method.TRACK, rig, load, station.x, station.z)),
        too_near=tuple(part for part, offset in asked if station.x < offset[0] - _SAME),
        furthest=tuple(
            furthest_out(
                rig, load, station.z, limit * effective_lines(efficiency=efficiency, lines=n)
            )
            for n in range(1, MOST_LINES + 1)
        ),
        field=_field(rig, load),
    )


def furthest_out(rig: Rig, load: float, height: float, allowed: float) -> float | None:
    """How far out (m) ``allowed`` N of all track lines together reach at ``height``.

    None where they reach nowhere, where the haul line goes slack first, and where a small error of
    place would change the tension too much.
    """
    top, start, hub = ((p.x, p.z) for p in (rig.haul_directional, rig.track_directional, rig.hub))
    if height >= min(top[1], start[1]):
        return None
    at = float(
        largest_offset(
            load=load,
            line_tension=allowed,
            z=height,
            haul_directional=top,
            hub=hub,
            track_directional=start,
        )
    )
    held = hold(Method.TRACK, rig, load, at, height)
    shaky = bool(too_sensitive(Method.TRACK, rig, load, at, height))
    return at if held.reach.possible and not shaky else None


# --- in words ---------------------------------------------------------------------------------


def summary(result: ContourMap, display: Display) -> str:
    """The station, its numbers and the raise as a whole in plain sentences."""
    held, station, tip = result.held, result.station, result.tip

    def length(si: float) -> str:
        return say(display, si, Kind.LENGTH)

    def force(si: float) -> str:
        return say(display, si, Kind.FORCE)

    words = [
        _path_words(result, display),
        f"Outcrop tip {length(tip.x)} out at {length(tip.z)}, clearance "
        f"{length(result.clearance)}, {say(display, result.mass, Kind.MASS)}. At "
        f"{length(station.z)} the litter must be {length(result.least)} out to clear; it is "
        f"{length(station.x)} out.",
    ]
    if result.too_near:
        words.append(f"Too near the rock: {' and '.join(result.too_near)}.")
    if not held.reach.possible:
        words.append(held.reach.sentence)
    elif result.sensitive:
        words.append(too_sensitive_words(display))
    else:
        rope = "take in" if held.take_in_rate >= 0 else "pay out"
        way = "upward" if held.hub_uplift >= 0 else "downward"
        words.append(
            f"Track lines together {force(held.line_tension)}, haul line "
            f"{force(held.haul_tension)}, {way} pull on the hub {force(abs(held.hub_uplift))}, "
            f"{rope} {abs(held.take_in_rate):.2f} of the height raised on each track line."
        )
        words.append(_limit_words(result, display))
        if held.reach is Reach.PLUMB:
            words.append(held.reach.sentence)
    return " ".join(words)


def _limit_words(result: ContourMap, display: Display) -> str:
    worst = result.worst_line
    assert worst is not None
    side = "inside" if worst <= result.limit else "outside"
    which = "The one line"
    if result.lines > 1:
        which = (
            f"Of {result.lines} lines tensioned by one rope in series, the one nearest the device"
        )
    return (
        f"{which} carries {say(display, worst, Kind.FORCE)} here while taking in: {side} "
        f"{result.limit_name} of {say(display, result.limit, Kind.FORCE)}."
    )


def _path_words(result: ContourMap, display: Display) -> str:
    """The whole path judged by the largest tension on it, and what cannot be told."""
    largest = result.largest
    if largest is None:
        return "Nowhere on the path that clears is there a number to rely on."
    tension, height = largest
    worst = tension / result.effective
    together = say(display, tension, Kind.FORCE)
    if result.lines == 1:
        which = f"the track line carries {together}"
    else:
        which = f"the track lines together carry {together}, the one nearest the device "
        which += say(display, worst, Kind.FORCE)
    side = "inside" if worst <= result.limit else "outside"
    words = (
        f"Largest on the path that just clears, at {say(display, height, Kind.LENGTH)}: {which}. "
        f"That is {side} {result.limit_name} of {say(display, result.limit, Kind.FORCE)} for a "
        "line"
    )
    good = result.printable
    if good.all():
        return f"{words}."
    bad = result.heights[~good]
    low, high = (say(display, float(h), Kind.LENGTH) for h in (bad.min(), bad.max()))
    where = f"at {low}" if low == high else f"at heights between {low} and {high}"
    return f"{words}, as far as can be told: {where} it is impossible or too sensitive."


def table(result: ContourMap, display: Display) -> Table:
    """How far out each number of lines reaches at the litter's height."""
    limit = say(display, result.limit, Kind.FORCE)
    rows = [
        (
            "Track lines in series",
            "Worth, in lines",
            f"Furthest out at {say(display, result.station.z, Kind.LENGTH)} with {limit} in the "
            "worst line",
        )
    ]
    for lines, furthest in enumerate(result.furthest, start=1):
        worth = effective_lines(efficiency=result.efficiency, lines=lines)
        far = "no number to rely on" if furthest is None else say(display, furthest, Kind.LENGTH)
        rows.append((f"{lines}", say(display, worth, Kind.RATIO), far))
    return tuple(rows)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 570
_LOW, _HIGH = -3.0, 37.0
_TALL = 456
_SCALE = _TALL / (_HIGH - _LOW)  # pixels per m
_MAP_LEFT, _MAP_WIDE, _BOTTOM = 56, 350, 58
_NEAR_SIZE, _NEAR_SPAN = 150, 6.2
_MOST_SHOWN = 27.5  # m out, right edge of the map
_CONTOURS = (
    Stroke("#7fb2d6", 1.0),
    Stroke("#4f8fc0", 1.3),
    Stroke("#2a6aa3", 1.7),
    Stroke("#174a7c", 2.2),
    Stroke("#0b2a4d", 2.8),
)
_WEIGHT_LONG = 4.0  # m of the map for the arrow of the weight
_WITHIN = "#d8ecd9"
_OUT_OF_REACH = "#ececef"
_PATH = Stroke(INK, 1.7, (0, (1, 1.8)))
_STATION = Stroke("#00735a", 1.2)


class ContourMapPicture:
    """The artists of the figure."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._map = _Map(self.canvas)
        self._near = _AtTheOutcrop(self.canvas)
        self._strips = _Strips(self.canvas, self._map.axes)

    def update(self, result: ContourMap, look: Look) -> None:
        """Follow ``result``."""
        self._map.update(result, look)
        self._near.update(result, look)
        self._strips.update(result, look)


class _Map:
    """Rock, ropes, lines of equal tension, the area inside the entered limit."""

    def __init__(self, canvas: Canvas) -> None:
        self.axes = axes = canvas.axes(_MAP_LEFT, _BOTTOM, _MAP_WIDE, _TALL)
        axes.set_xlim(_MOST_SHOWN - _MAP_WIDE / _SCALE, _MOST_SHOWN)
        axes.set_ylim(_LOW, _HIGH)
        axes.set_title(
            "Equal tension of all track lines together\n(multiples of the weight W)",
            fontsize=10,
            loc="left",
        )
        self._numbers = wall_axes(canvas, axes, _MOST_SHOWN, _HIGH, 6)
        self._within = Region(canvas, axes, _WITHIN, 1)
        self._slack = Region(canvas, axes, _OUT_OF_REACH, 1.65)
        self._beyond = Area(canvas, axes, _OUT_OF_REACH, "none", 1.1)
        self._ground = Area(canvas, axes, GROUND_FACE, zorder=2)
        self._rock = Area(canvas, axes, ROCK_FACE, zorder=2.2)
        self._contours = [Rope(canvas, axes, stroke, 1.5) for stroke in _CONTOURS]
        self._bound = Rope(canvas, axes, Stroke(_STATION.color, 1.4, (0, (6, 1.5))), 1.6)
        self._straight = Rope(canvas, axes, LIMIT, 1.7)
        self._path = Rope(canvas, axes, _PATH, 3)
        self._level = Rope(canvas, axes, _STATION, 2.9)
        self._frame = Frame(canvas, axes)
        self._belay = Rope(canvas, axes, BELAY, 3.9)
        self._belay_wheel = Mark(canvas, axes, "o", "white", 4.5, 6)
        self._haul = Rope(canvas, axes, HAUL)
        self._track = Rope(canvas, axes, TRACK)
        self._litter = Litter(canvas, axes)
        self._dot = Dot(canvas, axes)
        self._hub = Hub(canvas, axes)
        self._arrows = [Arrow(canvas, axes, HAUL, 5.8) for _ in range(4)]
        self._scale = ScaleBar(canvas, axes)
        self._struck = Mark(canvas, axes, "X", WARNING.color, 9, 7)
        self._labels = Labels(canvas, axes, 12, 9)

    def update(self, result: ContourMap, look: Look) -> None:
        """Follow ``result``."""
        self._numbers.follow(look.display)
        rig, station = result.rig, result.station
        here = (station.x, station.z)
        haul = (rig.haul_directional.x, rig.haul_directional.z)
        track = (rig.track_directional.x, rig.track_directional.z)
        hub = (rig.hub.x, rig.hub.z)
        self._ground.place(*_ground(rig.hub), (90, -9), (0, -9))
        self._rock.place(*rock(result.tip), (-9, EDGE), (-9, -9))
        self._frame.place(EDGE, haul, track)
        self._haul.restyle(WARNING if "haul line" in result.too_near else HAUL)
        self._track.restyle(WARNING if "track line" in result.too_near else TRACK)
        self._belay.restyle(WARNING if "belay" in result.too_near else BELAY)
        self._belay.place(here, (result.belay.x, result.belay.z))
        self._belay_wheel.place(result.belay.x, result.belay.z)
        self._haul.place(here, haul)
        self._track.place(track, here, hub)
        self._litter.place(*here)
        self._dot.place(*here)
        self._hub.place(*hub)
        self._straight.place(track, hub)
        self._beyond.place(track, hub, (90, hub[1]), (90, 50), (-9, 50), (-9, track[1]))
        self._path.trace(result.path, result.heights)
        self._struck.place(result.tip.x, result.tip.z)
        if not result.too_near:
            self._struck.hide()
        labels = [Label("litter", (station.x, station.z - REACH_DOWN), towards=(0.4, -1))]
        lines = [[here, haul], [here, hub]]
        labels.append(_hub_label(station, hub))
        labels.append(_path_label(result))
        labels.append(_beyond_label(track, hub))
        self._draw_tension(result, look, labels)
        self._draw_forces(result, look, lines)
        wide, high = _NEAR_SIZE / _SCALE, _NEAR_SIZE / _SCALE
        inset: Box = (_MOST_SHOWN - wide - 1.0, _HIGH - high - 2.0, _MOST_SHOWN, _HIGH)
        body: Box = (station.x - 0.4, station.z - REACH_DOWN, station.x + 0.4, station.z)
        self._labels.write(labels, lines, [inset, body])

    def _draw_tension(self, result: ContourMap, look: Look, labels: list[Label]) -> None:
        parts: list[Rope | Region] = [*self._contours, self._bound, self._level]
        parts += [self._within, self._slack]
        if not look.numbers:
            for part in parts:
                part.hide()
            return
        for rope, stroke, ratio in zip(self._contours, _CONTOURS, LEVELS, strict=True):
            pieces = result.field.lines(ratio)
            _trace(rope, pieces)
            at = _lowest_in_view(pieces, result.rig.hub)
            if at is not None:
                color = stroke.color if ratio >= 1 else _CONTOURS[2].color
                labels.append(Label(f"{ratio:g} W", at, color, (-0.4, 1), optional=True))
        allowed = result.allowed / result.load
        self._within.fill(*result.field.up_to(allowed))
        _trace(self._bound, result.field.lines(allowed))
        self._level.place((result.station.x, result.station.z), (90, result.station.z))
        slack = result.field.where_slack()
        self._slack.fill(*slack)
        if slack:
            labels.append(_slack_label(slack))
        inside = _within_label(result)
        if inside is not None:
            labels.append(inside)

    def _draw_forces(self, result: ContourMap, look: Look, lines: list[list[Place]]) -> None:
        for arrow in self._arrows:
            arrow.hide()
        self._scale.hide()
        if not (look.forces and look.numbers and result.reliable):
            return
        per_metre = result.load / _WEIGHT_LONG
        here = np.array([result.station.x, result.station.z])
        for arrow, (_, size, direction, stroke) in zip(
            self._arrows, pulls_on_litter(result.load, result.held), strict=True
        ):
            arrow.restyle(stroke)
            tip = here + np.array(direction) * size / per_metre
            arrow.place(tuple(here), tuple(tip))
            lines.append([tuple(here), tuple(tip)])
        amount, words = neat_force(per_metre * 4.5, look.display)
        self._scale.place(1.0, _LOW + 0.3, amount / per_metre, 0.3, words)


def _hub_label(station: Point, hub: Place) -> Label:
    """The hub's name beside it, or where its line leaves the map."""
    edge = _MOST_SHOWN - 0.3
    if hub[0] <= edge:
        return Label("hub", hub, towards=(-0.5, -1))
    share = (edge - station.x) / (hub[0] - station.x)
    return Label(
        "to the hub →",
        (edge, station.z + share * (hub[1] - station.z)),
        TRACK.color,
        (-1, -0.6),
    )


def _beyond_label(track: Place, hub: Place) -> Label:
    """What the grey area is, on its border."""
    x = track[0] + 3.0
    z = track[1] + 3.0 * (hub[1] - track[1]) / (hub[0] - track[0])
    return Label("no tension\nholds it here", (x, z), LIMIT.color, (0.7, 1), optional=True)


def _slack_label(outlines: list[Array]) -> Label:
    """What the other grey area is, where it begins."""
    points = np.concatenate(outlines)
    x, z = points[np.argmin(points[:, 0] + abs(points[:, 1] - 4.0))]
    return Label("haul line\nslack here", (float(x), float(z)), LIMIT.color, (1, 0), optional=True)


def _path_label(result: ContourMap) -> Label:
    """The path's name, beside its lower part."""
    low = int(np.searchsorted(result.heights, min(5.0, result.tip.z)))
    at = (float(result.path[low]), float(result.heights[low]))
    return Label("path that\njust clears", at, INK, (1, 0.2))


def _within_label(result: ContourMap) -> Label | None:
    """Words in the shaded area, low on the map where it is wide."""
    pieces = result.field.up_to(result.allowed / result.load)
    if not pieces:
        return None
    words = f"inside\n{result.limit_name}"
    return Label(words, (0.8, 7.0), _STATION.color, (1, 0.3))


def _ground(hub: Point) -> list[Place]:
    """The ground from the foot of the wall to the hub: level, then the bank the hub stands on."""
    bank = hub.x - 0.4 * hub.z if hub.z > 0 else 0.0
    return [(0.0, -0.3), (bank, -0.3), (hub.x, hub.z - 0.1), (90.0, hub.z - 0.1)]


def _trace(rope: Rope, pieces: list[Array]) -> None:
    """One line through several pieces, with gaps between them."""
    if not pieces:
        rope.hide()
        return
    gap = np.full((1, 2), np.nan)
    joined = np.concatenate([part for piece in pieces for part in (piece, gap)])
    rope.trace(joined[:, 0], joined[:, 1])


def _lowest_in_view(pieces: list[Array], hub: Point) -> Place | None:
    """The lowest point of a line that is on the map, above the ground and clear of the edges."""
    if not pieces:
        return None
    points = np.concatenate(pieces)
    ground_x, ground_z = zip(*_ground(hub), strict=True)
    ground = np.interp(points[:, 0], ground_x, ground_z)
    seen = points[(points[:, 0] < _MOST_SHOWN - 1.5) & (points[:, 1] > ground + 2.3)]
    if not len(seen):
        return None
    x, z = seen[np.argmin(seen[:, 1])]
    return float(x), float(z)


class _AtTheOutcrop:
    """The outcrop's tip, near enough to see the clearance."""

    def __init__(self, canvas: Canvas) -> None:
        left = _MAP_LEFT + _MAP_WIDE - _NEAR_SIZE - 6
        self._axes = axes = canvas.inset(
            left, _BOTTOM + _TALL - _NEAR_SIZE - 20, _NEAR_SIZE, _NEAR_SIZE, "clearance"
        )
        axes.set_xlim(-1.0, _NEAR_SPAN - 1.0)
        axes.set_ylim(-_NEAR_SPAN / 2, _NEAR_SPAN / 2)  # heights relative to the tip
        self._rock = Area(canvas, axes, ROCK_FACE)
        self._frame = Frame(canvas, axes)
        self._belay = Rope(canvas, axes, BELAY, 3.9)
        self._belay_wheel = Mark(canvas, axes, "o", "white", 4.5, 6)
        self._haul = Rope(canvas, axes, HAUL)
        self._upper = Rope(canvas, axes, TRACK)
        self._down = Rope(canvas, axes, TRACK)
        self._litter = Litter(canvas, axes)
        self._gap = Rope(canvas, axes, Stroke(INK, 1.3), 7)
        self._labels = Labels(canvas, axes, 2, 8.5)

    def update(self, result: ContourMap, look: Look) -> None:
        """Follow ``result``."""
        tip, rig, station = result.tip, result.rig, result.station

        def seen(x: float, z: float) -> Place:
            return (x, z - tip.z)

        here = seen(station.x, station.z)
        haul = seen(rig.haul_directional.x, rig.haul_directional.z)
        track = seen(rig.track_directional.x, rig.track_directional.z)
        hub = seen(rig.hub.x, rig.hub.z)
        outline = [seen(*place) for place in rock(tip)]
        self._rock.place(*outline, (-9, outline[-1][1]), (-9, -40))
        self._frame.place(EDGE - tip.z, haul, track)
        self._haul.restyle(WARNING if "haul line" in result.too_near else HAUL)
        down = WARNING if "track line" in result.too_near else TRACK
        self._down.restyle(down)
        self._belay.restyle(WARNING if "belay" in result.too_near else BELAY)
        self._belay.place(here, seen(result.belay.x, result.belay.z))
        self._belay_wheel.place(*seen(result.belay.x, result.belay.z))
        self._haul.place(here, haul)
        self._upper.place((here[0] + 0.14, here[1]), (track[0] + 0.14, track[1]))
        self._down.place(here, hub)
        self._litter.place(*here)
        right = tip.x + result.clearance
        self._gap.place(
            (tip.x, 0.12), (tip.x, -0.12), (tip.x, 0.0), (right, 0.0), (right, 0.12), (right, -0.12)
        )
        words = say(look.display, result.clearance, Kind.LENGTH, 2)
        self._axes.title.set_text(f"clearance {words}")
        labels = []
        if result.too_near:
            text = f"too near:\n{' and '.join(result.too_near)}"
            labels.append(Label(text, (3.6, 2.2), WARNING.color, (0, 0), True))
        self._labels.write(labels, [[here, haul], [here, hub]])


@dataclass(frozen=True)
class _Strip:
    """One quantity against height."""

    title: str
    kind: Kind
    low: float
    high: float
    stroke: Stroke


_STRIPS = (
    _Strip("Track lines\ntogether", Kind.FORCE, 0.0, 6000.0, TRACK),
    _Strip("Haul line\n", Kind.FORCE, 0.0, 3500.0, HAUL),
    _Strip("Take in\n", Kind.RATIO, -0.5, 2.0, Stroke("#5b3f8c", 2.0)),
    _Strip("Hub, upward\npull", Kind.FORCE, -1000.0, 5000.0, Stroke(INK, 1.8, (0, (4, 1.5)))),
)


def _profiles(held: Hold) -> tuple[Any, Any, Any, Any]:
    return held.line_tension, held.haul_tension, held.take_in_rate, held.hub_uplift


_TICK_ROOM = 0.1  # of a strip's width stays free of numbers, which would run into the next strip


class _Strips:
    """What the path that just clears asks for, beside the map at the same heights."""

    _WIDE, _GAP = 118, 12

    def __init__(self, canvas: Canvas, beside: Any) -> None:
        self._canvas, self._units = canvas, ("", "")
        self._axes, self._curves, self._bad, self._dots, self._labels = [], [], [], [], []
        left = _MAP_LEFT + _MAP_WIDE + 18
        for index, strip in enumerate(_STRIPS):
            place = left + index * (self._WIDE + self._GAP)
            axes = canvas.axes(place, _BOTTOM, self._WIDE, _TALL, share_height=beside)
            axes.set_xlim(strip.low, strip.high)
            axes.tick_params(labelleft=False, left=False)
            axes.grid(axis="x", color="#e3e6ea", lw=0.8)
            axes.axvline(0.0, color="#b4bac2", lw=0.8)
            self._axes.append(axes)
            self._bad.append(Region(canvas, axes, "#e9e9ee", 1.0, "////", "#9aa0aa"))
            self._curves.append(Rope(canvas, axes, strip.stroke, 4))
            self._dots.append(Dot(canvas, axes))
            self._labels.append(Labels(canvas, axes, 4, 9))
        self._levels = [Rope(canvas, axes, _STATION, 2.5) for axes in self._axes]
        self._limit = Rope(canvas, self._axes[0], Stroke(_STATION.color, 1.4, (0, (6, 1.5))), 3)
        self._notice = Notice(canvas, self._axes[1], 1.05, 0.5, 34)
        canvas.figure.text(
            left / _WIDTH,
            12 / _HEIGHT,
            "Curves: along the path that just clears. Hatched: impossible or too sensitive.",
            fontsize=8.5,
            color=SOFT_INK,
        )

    def update(self, result: ContourMap, look: Look) -> None:
        """Follow ``result``."""
        self._ticks(look.display)
        self._notice.say("" if look.numbers else LOCKED)
        if not look.numbers:
            parts: list[Rope | Region | Dot] = [*self._curves, *self._levels, self._limit]
            for part in (*parts, *self._dots, *self._bad):
                part.hide()
            for labels in self._labels:
                labels.write([])
            return
        good = result.printable
        bands = _bands(result.heights, ~good)
        station = result.station.z
        for index, (strip, values, value) in enumerate(
            zip(_STRIPS, _profiles(result.along), _profiles(result.held), strict=True)
        ):
            shown = np.ma.filled(np.ma.masked_where(~good, values).astype(float), np.nan)
            self._curves[index].trace(shown, result.heights)
            self._bad[index].fill(*(_band(strip, low, high) for low, high in bands))
            self._levels[index].place((strip.low, station), (strip.high, station))
            beyond = _beyond_strip(strip, shown, result.heights, look.display)
            self._mark(index, strip, result, value, look.display, beyond)
        self._limit.place((result.allowed, LOWEST), (result.allowed, HIGHEST))

    def _mark(
        self,
        index: int,
        strip: _Strip,
        result: ContourMap,
        value: Any,
        display: Display,
        beyond: list[Label],
    ) -> None:
        """The station's value, or the lack of one; then what lies beyond the strip's edges."""
        station = result.station.z
        dot, labels = self._dots[index], list[Label]()
        middle = (strip.low + strip.high) / 2
        if result.reliable:
            at = min(max(value, strip.low), strip.high)
            dot.place(at, station)
            words = say(display, value, strip.kind, 2)
            labels.append(Label(words, (at, station), strip.stroke.color, (1, 1), True))
        else:
            dot.hide()
            words = "too sensitive" if result.held.reach.possible else "impossible"
            labels.append(Label(words, (middle, station), WARNING.color, (0, -1), True))
        if index == 0 and result.allowed < 0.97 * strip.high:
            labels.append(Label("limit", (result.allowed, 3.0), _STATION.color, (1, 0)))
        self._labels[index].write([*labels, *beyond])

    def _ticks(self, display: Display) -> None:
        if (display.force, display.length) == self._units:
            return
        self._units = (display.force, display.length)
        for strip, axes in zip(_STRIPS, self._axes, strict=True):
            unit = display.unit(strip.kind).symbol or f"{display.length} per {display.length}"
            high = strip.high - _TICK_ROOM * (strip.high - strip.low)
            _set_ticks(axes.xaxis, strip.low, high, display, strip.kind, 3)
            axes.set_title(f"{strip.title} ({unit})".replace("\n ", "\n"), fontsize=9.5)
        self._canvas.forget_background()


def _beyond_strip(strip: _Strip, shown: Array, heights: Array, display: Display) -> list[Label]:
    """An arrow and the largest number at an edge of the strip that the curve leaves."""
    if np.isnan(shown).all():
        return []
    labels = []
    most, least = int(np.nanargmax(shown)), int(np.nanargmin(shown))
    if shown[most] > strip.high:
        words = f"{say(display, float(shown[most]), strip.kind, 2)} →"
        labels.append(
            Label(words, (strip.high, float(heights[most])), strip.stroke.color, (-1, 1), True)
        )
    if shown[least] < strip.low:
        words = f"← {say(display, float(shown[least]), strip.kind, 2)}"
        labels.append(
            Label(words, (strip.low, float(heights[least])), strip.stroke.color, (1, 1), True)
        )
    return labels


def _bands(heights: Array, bad: Array) -> list[tuple[float, float]]:
    """The stretches of height in which ``bad`` holds, each half a step wider at both ends."""
    half = (heights[1] - heights[0]) / 2
    edges = np.flatnonzero(np.diff(np.concatenate([[False], bad, [False]]).astype(int)))
    return [
        (float(heights[a] - half), float(heights[b - 1] + half))
        for a, b in zip(edges[::2], edges[1::2], strict=True)
    ]


def _band(strip: _Strip, low: float, high: float) -> list[Place]:
    return [
        (strip.low, low),
        (strip.high, low),
        (strip.high, high),
        (strip.low, high),
        (strip.low, low),
    ]


def _set_ticks(
    axis: Any, low: float, high: float, display: Display, kind: Kind, count: int
) -> None:
    """Round numbers in the reader's unit along an axis in SI."""
    unit = display.unit(kind).factor
    shown = MaxNLocator(count, steps=[1, 2, 5, 10]).tick_values(low / unit, high / unit)
    shown = [v for v in shown if low / unit - _SAME <= v < high / unit - _SAME]
    axis.set_ticks([v * unit for v in shown], [f"{v:g}".replace("-", "−") for v in shown])


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Control("tip_x", "Outcrop tip, out from wall", Kind.LENGTH, 0.3, 3, 0.1, 1.7),
    Control("tip_z", "Outcrop tip, height", Kind.LENGTH, 2, 29, 0.5, 27),
    Control(
        "clearance",
        "Clearance with half a litter",
        Kind.LENGTH,
        0.3,
        1.2,
        0.05,
        0.8,
        "From the rock to the middle of the litter: half its width and the room you want "
        "beside it. The ropes keep as far from the outcrop's tip.",
    ),
    Control("height", "Litter, height", Kind.LENGTH, LOWEST, HIGHEST, 0.25, 24),
    Control(
        "further",
        "Litter, further than needed",
        Kind.LENGTH,
        -1,
        3,
        0.1,
        0,
        "How much further out than the least that clears. Below zero it is too near the rock.",
    ),
    Control("mass", "Mass that hangs", Kind.MASS, 110, 290, 5, 200),
    Control("directional_x", "Haul directional, out", Kind.LENGTH, 0, 1.5, 0.1, 0.3),
    Control("directional_z", "Haul directional, height", Kind.LENGTH, 31, 35, 0.25, 32),
    Control("track_extra", "Track directional, above it", Kind.LENGTH, 0, 2, 0.25, 0),
    Control("belay_x", "Belay directional, out", Kind.LENGTH, 0, 1.5, 0.1, 0.6),
    Control("belay_z", "Belay directional, height", Kind.LENGTH, 30.5, 35, 0.25, 32),
    Control("hub_x", "Hub, out from the wall", Kind.LENGTH, 15, 80, 1, 40),
    Control("hub_z", "Hub, height", Kind.LENGTH, -2, 20, 0.5, 0.5),
    Control(
        "lines",
        "Track lines, one tensioner",
        Kind.RATIO,
        1,
        4,
        1,
        1,
        "How many track lines, each a rope of its own, one tensioner rope pulls on in "
        "series: it runs over a pulley at the end of each, one line after the other.",
    ),
    Control(
        "efficiency",
        "Efficiency of a sheave",
        Kind.RATIO,
        0.6,
        0.97,
        0.01,
        0.9,
        "How much of the tension is left behind a pulley over which the rope moves: 1 would "
        "be no friction. It shares the tension unequally among the lines.",
    ),
    Control(
        "limit",
        "Limit for each line",
        Kind.FORCE,
        1000,
        6000,
        100,
        EXAMPLE_LIMIT,
        "For each track line. It begins with an example: set your own.",
    ),
)

_START = {control.key: control.default for control in CONTROLS}
_LOW_TIP, _HIGH_TIP = 6.0, 27.0
_CHOICES = ("about the same", "two or three times as much", "more than five times as much")


def _outcome(display: Display) -> Outcome:
    """The same outcrop low and high, with the attachment point level with its tip."""
    low, high = (
        compute(_START | {"tip_z": tip, "height": tip}).held.line_tension
        for tip in (_LOW_TIP, _HIGH_TIP)
    )
    times = high / low
    return Outcome(
        right=0 if times < 1.5 else 1 if times < 4 else 2,
        sentence=(
            f"Track lines together, level with the tip: {say(display, low, Kind.FORCE)} at "
            f"{say(display, _LOW_TIP, Kind.LENGTH)}, {say(display, high, Kind.FORCE)} at "
            f"{say(display, _HIGH_TIP, Kind.LENGTH)}: about {times:.0f} times as much."
        ),
    )


def _idle(values: Values) -> dict[str, str]:
    if round(values["lines"]) > 1:
        return {}
    return {"efficiency": "One line shares with no other: choose two or more lines."}


_BRIDLE = " or ".join(Display(length=unit).show(BRIDLE, Kind.LENGTH, 2) for unit in ("m", "ft"))

CONTOUR_MAP = Figure(
    key="contour-map",
    title="Where the track lines pull hard",
    alternative=(
        "Cross-section of the wall with lines of equal track tension, and beside it four curves "
        "of tension and rope against height"
    ),
    prediction=Prediction(
        question=(
            "an outcrop sticks out low on the wall. Another of the same size sits high up, close "
            "below the edge. The litter passes each with the same clearance. At the upper one, the "
            "track lines pull …"
        ),
        choices=_CHOICES,
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=ContourMapPicture,
    summary=summary,
    table=table,
    cautions=(
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
        f"The body hangs {_BRIDLE} below its attachment point here. Only this one outcrop is "
        "drawn; a real wall has more than one edge: survey it.",
        "The lines are ropes of their own, tensioned by one rope in series. They share as while "
        "taking in, when the one nearest the device carries most; while letting out the far one "
        "does, and after a line has failed they share differently again. The limit is the one you "
        "entered; until then it is an example.",
        *cautions.EVERY_RESULT,
    ),
    forces_first=False,
    reading=(
        "How to read the map: along each blue line, a litter held there takes the same tension of "
        "all track lines together; W is the weight that hangs, so 0.5 W is half of it.",
        "The dotted line is the path on which litter, haul line, belay and track line just clear "
        "the rock; the four curves on the right tell what it takes at each height. The thin green "
        "line is the belay. A rope that is too near the rock turns red.",
    ),
    first=("tip_x", "tip_z", "height", "hub_x", "lines", "limit"),
    idle=_idle,
)
