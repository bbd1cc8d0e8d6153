"""What raising or lowering does while the tensioner stays locked: an ellipse, and two bounds.

Left the cross-section with the path of the litter, if its ropes stretch and if they do not, whole
and close up; right,
on the same height axis, the track and haul tension along that path, beside the track tension that
a tensioner worked along with the haul would have kept.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.ticker import MaxNLocator

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.holding import Hold, Method, Point, Reach, Rig, hold
from ropecalc.mechanics.locked import OUT_BEFORE_DOWN, Bound, Locked, move_locked
from ropecalc.mechanics.stretch import BOTH_BOUNDS, ELASTIC
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import INK, SOFT_INK, Canvas
from ropecalc.teaching.drawing import (
    FAINT,
    GROUND_FACE,
    HALF_WIDTH,
    HAUL,
    REACH_DOWN,
    ROCK_FACE,
    THIN,
    TRACK,
    Area,
    Arrow,
    Dot,
    Frame,
    Hub,
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
from ropecalc.teaching.figures.length_axes import wall_axes
from ropecalc.teaching.figures.sensitivity import too_sensitive, too_sensitive_words
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import LOCKED, Figure, Look, Outcome, Prediction, Table, Values
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind, Rounding

EDGE = 30.0
"""Height of the cliff's edge (m)."""
LOWEST = REACH_DOWN
"""The attachment point cannot be lower: the litter then stands on the ground (m)."""
_STEPS = 41  # along the way
_ROWS = 5  # of the table


@dataclass(frozen=True, eq=False)
class LockedMove:
    """One setting worked out. ``along`` goes from the start to the new height.

    It is None where the litter cannot be held at the start or at the new height; ``trouble`` then
    says why. ``worked`` is the litter kept as far out as at the start, by letting the tensioner out
    or taking it in. ``on_ground`` tells that the litter stood on the ground before it was as low as
    was asked for.
    """

    rig: Rig
    mass: float
    load: float
    lines: int
    each_stiffness: float
    start: Point
    new_z: float
    on_ground: bool
    along: Locked | None
    worked: Hold | None
    sensitive: bool
    trouble: str

    @property
    def reliable(self) -> bool:
        """Whether there are numbers, and ones that can be printed."""
        return self.along is not None and not self.sensitive

    @property
    def rises(self) -> bool:
        """Whether the litter is raised."""
        return self.new_z > self.start.z

    def at(self, index: int) -> tuple[float, Bound, Bound]:
        """Height (m), and the litter there if the ropes stretch and if nothing does."""
        assert self.along is not None
        return (
            float(self.along.z[index]),
            _one(self.along.elastic, index),
            _one(self.along.rigid, index),
        )


def _one(bound: Bound, index: int) -> Bound:
    """One place of a bound that holds arrays."""
    held = bound.forces
    parts = {
        name: None if np.ma.getmaskarray(value)[index] else float(np.ma.getdata(value)[index])
        for name, value in vars(held).items()
        if name not in ("method", "reach")
    }
    return Bound(float(bound.x[index]), Hold(held.method, Reach(int(held.reach[index])), **parts))


def compute(values: Values) -> LockedMove:
    """Work out one setting of the controls (SI)."""
    haul = Point(values["directional_x"], values["directional_z"])
    track = Point(haul.x, haul.z + values["track_extra"])
    rig = Rig(haul, track, Point(values["hub_x"], values["hub_z"]))
    start = Point(values["start_x"], values["start_z"])
    lines, each = round(values["lines"]), values["stiffness"]
    load = weight(mass=values["mass"])
    wanted = start.z + values["move"]
    new_z = max(wanted, min(LOWEST, start.z))
    heights = np.linspace(start.z, new_z, _STEPS)
    along, worked, trouble = None, None, ""
    try:
        along = move_locked(rig, load, start.x, start.z, new_z=heights, stiffness=lines * each)
        worked = hold(Method.TRACK, rig, load, np.full(_STEPS, start.x), heights)
    except DomainError as error:
        trouble = str(error)
    places = [(start.x, start.z)]
    if along is not None:
        places += [(float(bound.x[-1]), new_z) for bound in (along.rigid, along.elastic)]
    return LockedMove(
        rig=rig,
        mass=values["mass"],
        load=load,
        lines=lines,
        each_stiffness=each,
        start=start,
        new_z=new_z,
        on_ground=new_z > wanted,
        along=along,
        worked=worked,
        sensitive=any(bool(too_sensitive(Method.TRACK, rig, load, x, z)) for x, z in places),
        trouble=trouble,
    )


# --- in words ---------------------------------------------------------------------------------


def _moved_words(result: LockedMove, display: Display) -> str:
    by = abs(result.new_z - result.start.z)
    if by == 0:
        return "stays there"
    way = "raised" if result.rises else "lowered"
    height = say(display, result.new_z, Kind.LENGTH)
    return f"is {way} by {say(display, by, Kind.LENGTH)} to {height}"


def _change(before: float, after: float) -> str:
    per_cent = 100 * (after / before - 1)
    if abs(per_cent) < 0.5:
        return "as before"
    return f"{abs(per_cent):.0f} % {'more' if per_cent > 0 else 'less'}"


def summary(result: LockedMove, display: Display) -> str:
    """The move and its two bounds in plain sentences."""
    lines = "1 track line" if result.lines == 1 else f"{result.lines} track lines"
    each = "" if result.lines == 1 else " each"
    opening = (
        f"The tensioner is locked with the litter {say(display, result.start.x, Kind.LENGTH)} out "
        f"at {say(display, result.start.z, Kind.LENGTH)}; then it "
        f"{_moved_words(result, display)}. {say(display, result.mass, Kind.MASS)}, {lines} of EA "
        f"{say(display, result.each_stiffness, Kind.FORCE)}{each}, hub "
        f"{say(display, result.rig.hub.x, Kind.LENGTH)} out."
    )
    if result.on_ground:
        opening += " It goes no lower: the litter stands on the ground."
    if result.along is None:
        return f"{opening} {result.trouble}"
    if result.sensitive:
        return f"{opening} {too_sensitive_words(display)}"
    along = result.along
    before = float(along.before.forces.line_tension)
    _, elastic, rigid = result.at(-1)
    words = [
        opening,
        f"Track lines together before: {say(display, before, Kind.FORCE)}.",
        _bound_words("After, if they stretch", elastic, before, display),
        _bound_words("If nothing stretches", rigid, before, display),
    ]
    worked = _worked_tension(result)
    if worked is not None:
        kept = say(display, result.start.x, Kind.LENGTH)
        words.append(
            f"With the tensioner worked so that the litter stays {kept} out: "
            f"{say(display, worked, Kind.FORCE)}."
        )
    most = display.show(float(along.largest_track_tension[-1]), Kind.FORCE, rounding=Rounding.UP)
    least = min(elastic.x, rigid.x)
    count = display.show(least, Kind.LENGTH, rounding=Rounding.DOWN)
    words.append(
        f"Allow for {most} in the track lines; for distance from the wall count on {count}."
    )
    if least <= HALF_WIDTH + 0.05:
        words.append("There the litter is at the wall.")
    return " ".join(words)


def _bound_words(name: str, bound: Bound, before: float, display: Display) -> str:
    where = say(display, bound.x, Kind.LENGTH)
    if bound.forces.reach is Reach.PLUMB:
        return f"{name}: the track lines are slack and the litter hangs plumb, {where} out."
    tension = bound.forces.line_tension
    return (
        f"{name}: {where} out, {say(display, tension, Kind.FORCE)} "
        f"({_change(before, tension)}), haul line "
        f"{say(display, bound.forces.haul_tension, Kind.FORCE)}."
    )


def _worked_tension(result: LockedMove) -> float | None:
    assert result.worked is not None
    last = result.worked.line_tension[-1]
    shaky = too_sensitive(Method.TRACK, result.rig, result.load, result.start.x, result.new_z)
    return None if last is np.ma.masked or bool(shaky) else float(last)


def table(result: LockedMove, display: Display) -> Table:
    """Some heights on the way."""
    if not result.reliable:
        return ()
    rows = [("Height", "Out, stretching", "Tension", "Out, not stretching", "Tension")]
    for index in np.linspace(0, _STEPS - 1, _ROWS).astype(int):
        height, elastic, rigid = result.at(int(index))
        cells = [say(display, height, Kind.LENGTH)]
        for bound in (elastic, rigid):
            slack = bound.forces.reach is Reach.PLUMB
            tension = say(display, bound.forces.line_tension, Kind.FORCE)
            cells += [say(display, bound.x, Kind.LENGTH), "slack" if slack else tension]
        rows.append((cells[0], cells[1], cells[2], cells[3], cells[4]))
    return tuple(rows)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 550
_LOW, _HIGH = -3.0, 37.0
_LEFT, _WIDE, _TALL, _BOTTOM = 56, 500, 446, 52
_SCALE = _TALL / (_HIGH - _LOW)  # pixels per m
_MOST_SHOWN = _WIDE / _SCALE - 4.0
_WEIGHT_LONG = 5.0  # m of the picture for the arrow of the weight
_RIGID = Stroke("#7a2e8e", 1.5, (0, (4, 2)))
_ELASTIC = Stroke("#c2520b", 2.4)
_WORKED = Stroke(SOFT_INK, 1.5, (0, (1, 1.6)))
_STRIPS = (("Track lines\ntogether", 5000.0), ("Haul line\n", 3000.0))


class LockedPicture:
    """The artists of the figure."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._scene = _Scene(self.canvas)
        self._near = _CloseUp(self.canvas)
        self._strips = [
            _Strip(self.canvas, self._scene.axes, index) for index in range(len(_STRIPS))
        ]
        self.canvas.figure.text(
            (_LEFT + _WIDE + 18) / _WIDTH,
            12 / _HEIGHT,
            "Solid: stretching. Dashed: not. Dotted: tensioner worked.",
            fontsize=8.5,
            color=SOFT_INK,
        )
        self._notice = Notice(self.canvas, self._scene.axes, 0.55, 0.3, 46)

    def update(self, result: LockedMove, look: Look) -> None:
        """Follow ``result``."""
        self._scene.update(result, look)
        self._near.update(result, look)
        for strip in self._strips:
            strip.update(result, look)
        self._notice.say(_notice(result, look))


def _notice(result: LockedMove, look: Look) -> str:
    if not look.numbers:
        return LOCKED
    if result.along is None:
        return result.trouble
    return too_sensitive_words(look.display) if result.sensitive else ""


class _Scene:
    """Wall, ropes, and the litter's way with a locked tensioner."""

    def __init__(self, canvas: Canvas) -> None:
        self.axes = axes = canvas.axes(_LEFT, _BOTTOM, _WIDE, _TALL)
        axes.set_xlim(-4.0, _MOST_SHOWN)
        axes.set_ylim(_LOW, _HIGH)
        axes.set_title("The way of the litter, tensioner locked", fontsize=10.5, loc="left")
        self._numbers = wall_axes(canvas, axes, _MOST_SHOWN, _HIGH, 8)
        axes.fill([-9, 0, 0, -9], [-9, -9, EDGE, EDGE], fc=ROCK_FACE, ec="#6f6656", lw=1.2)
        self._ground = Area(canvas, axes, GROUND_FACE, zorder=1.5)
        self._frame = Frame(canvas, axes)
        self._old = Rope(canvas, axes, FAINT, 2.5)
        self._rigid = Rope(canvas, axes, _RIGID, 3.5)
        self._elastic = Rope(canvas, axes, _ELASTIC, 3.4)
        self._haul = Rope(canvas, axes, HAUL)
        self._track = Rope(canvas, axes, TRACK)
        self._begin = Mark(canvas, axes, "o", "white", 6, 5.2)
        self._end = Mark(canvas, axes, "s", "white", 6, 5.2)
        self._litter = Litter(canvas, axes)
        self._dot = Dot(canvas, axes)
        self._hub = Hub(canvas, axes)
        self._arrows = [Arrow(canvas, axes, HAUL, 5.8) for _ in range(4)]
        self._scale = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 6, 9)

    def update(self, result: LockedMove, look: Look) -> None:
        """Follow ``result``."""
        self._numbers.follow(look.display)
        rig, start = result.rig, result.start
        haul, track, hub = (
            (p.x, p.z) for p in (rig.haul_directional, rig.track_directional, rig.hub)
        )
        bank = hub[0] - 0.4 * hub[1] if hub[1] > 0 else 0.0
        self._ground.place(
            (0, -0.05), (bank, -0.05), (hub[0], hub[1] - 0.1), (99, hub[1] - 0.1), (99, -9), (0, -9)
        )
        self._frame.place(EDGE, haul, track)
        self._hub.place(*hub)
        begin = (start.x, start.z)
        shown = look.numbers and result.reliable
        self._begin.place(*begin)
        here = begin
        for part in (self._rigid, self._elastic, self._old, self._end):
            part.hide()
        labels = [_hub_label(begin, hub)]
        if shown:
            here = self._way(result, begin, track, hub)
        self._haul.place(here, haul)
        self._track.place(track, here, hub)
        self._litter.place(*here)
        self._dot.place(*here)
        lines = [[here, haul], [here, hub]]
        self._draw_forces(result, look, here, shown, lines)
        body = (here[0] - 0.5, here[1] - REACH_DOWN, here[0] + 0.5, here[1])
        self._labels.write(labels, lines, [body])

    def _way(self, result: LockedMove, begin: Place, track: Place, hub: Place) -> Place:
        """Draw both paths; gives where the litter is if the ropes stretch."""
        assert result.along is not None
        along = result.along
        self._rigid.trace(along.rigid.x, along.z)
        self._elastic.trace(along.elastic.x, along.z)
        self._old.place(track, begin, hub)
        self._end.place(float(along.rigid.x[-1]), result.new_z)
        return float(along.elastic.x[-1]), result.new_z

    def _draw_forces(
        self,
        result: LockedMove,
        look: Look,
        here: Place,
        shown: bool,
        lines: list[list[Place]],
    ) -> None:
        for arrow in self._arrows:
            arrow.hide()
        self._scale.hide()
        if not (shown and look.forces):
            return
        _, elastic, _ = result.at(-1)
        per_metre = result.load / _WEIGHT_LONG
        for arrow, (_, size, direction, stroke) in zip(
            self._arrows, pulls_on_litter(result.load, elastic.forces), strict=True
        ):
            arrow.restyle(stroke)
            tip = (
                here[0] + direction[0] * size / per_metre,
                here[1] + direction[1] * size / per_metre,
            )
            arrow.place(here, tip)
            lines.append([here, tip])
        amount, words = neat_force(per_metre * 5.5, look.display)
        self._scale.place(26.0, _LOW + 0.4, amount / per_metre, 0.3, words)


def _hub_label(litter: Place, hub: Place) -> Label:
    """The hub's name beside it, or where its line leaves the picture."""
    edge = _MOST_SHOWN - 0.3
    if hub[0] <= edge:
        return Label("hub", hub, towards=(-0.5, 1))
    share = (edge - litter[0]) / (hub[0] - litter[0])
    at = (edge, litter[1] + share * (hub[1] - litter[1]))
    return Label("to the hub →", at, TRACK.color, (-1, 1))


_NEAR_WIDE, _NEAR_TALL = 236, 158
_SPANS = (6.0, 8.0, 12.0, 18.0, 27.0, 40.0)  # m across the close-up


class _CloseUp:
    """The same way, near enough to see how far apart its two bounds are."""

    def __init__(self, canvas: Canvas) -> None:
        left = _LEFT + _WIDE - _NEAR_WIDE - 8
        bottom = _BOTTOM + _TALL - _NEAR_TALL - 24
        self._axes = axes = canvas.inset(left, bottom, _NEAR_WIDE, _NEAR_TALL, "close up")
        self._rock = Area(canvas, axes, ROCK_FACE)
        self._haul = Rope(canvas, axes, HAUL)
        self._upper = Rope(canvas, axes, TRACK)
        self._down = Rope(canvas, axes, TRACK)
        self._rigid = Rope(canvas, axes, _RIGID, 3.5)
        self._elastic = Rope(canvas, axes, _ELASTIC, 3.4)
        self._begin = Mark(canvas, axes, "o", "white", 6, 5.2)
        self._end = Mark(canvas, axes, "s", "white", 6, 5.2)
        self._litter = Litter(canvas, axes)
        self._labels = Labels(canvas, axes, 3, 8.5)

    def update(self, result: LockedMove, look: Look) -> None:
        """Follow ``result``."""
        rig, start = result.rig, result.start
        begin = (start.x, start.z)
        here = end = begin
        for part in (self._rigid, self._elastic, self._end):
            part.hide()
        shown = look.numbers and result.reliable
        if shown:
            assert result.along is not None
            along = result.along
            here = (float(along.elastic.x[-1]), result.new_z)
            end = (float(along.rigid.x[-1]), result.new_z)
        self._frame(begin, here, end)
        haul, track, hub = (
            (p.x, p.z) for p in (rig.haul_directional, rig.track_directional, rig.hub)
        )
        self._rock.place((0, -20), (0, EDGE), (-40, EDGE), (-40, -20))
        self._haul.place(here, haul)
        aside = 0.008 * (self._axes.get_xlim()[1] - self._axes.get_xlim()[0])
        self._upper.place((here[0] + aside, here[1]), (track[0] + aside, track[1]))
        self._down.place(here, hub)
        self._litter.place(*here)
        self._begin.place(*begin)
        labels = [Label("start", begin, towards=(-1, 0.5))]
        if shown:
            self._rigid.trace(along.rigid.x, along.z)
            self._elastic.trace(along.elastic.x, along.z)
            self._end.place(*end)
            side = 1.0 if end[0] >= here[0] else -1.0
            body = (here[0], here[1] - REACH_DOWN)
            labels.append(Label("nothing\nstretches", end, _RIGID.color, (side, 0.7)))
            labels.append(Label("lines\nstretch", body, _ELASTIC.color, (-side, -0.6)))
        box = (here[0] - 0.35, here[1] - REACH_DOWN, here[0] + 0.35, here[1])
        self._labels.write(labels, [[here, haul], [here, hub]], [box])

    def _frame(self, *places: Place) -> None:
        """Show all ``places`` with room around them, on one of a few scales."""
        x, z = zip(*places, strict=True)
        wide, high = max(x) - min(x) + 3.5, max(z) - min(z) + 2.5
        needed = max(wide, high * _NEAR_WIDE / _NEAR_TALL)
        span = next((s for s in _SPANS if s >= needed), needed)
        tall = span * _NEAR_TALL / _NEAR_WIDE
        middle_x, middle_z = (min(x) + max(x)) / 2, (min(z) + max(z) - 0.8) / 2
        self._axes.set_xlim(middle_x - span / 2, middle_x + span / 2)
        self._axes.set_ylim(middle_z - tall / 2, middle_z + tall / 2)


class _Strip:
    """One tension along the way, against height."""

    _EACH = 172

    def __init__(self, canvas: Canvas, beside: Any, index: int) -> None:
        self._canvas, self._index, self._force = canvas, index, ""
        self._title, self._high = _STRIPS[index]
        left = _LEFT + _WIDE + 18 + index * (self._EACH + 14)
        self._axes = axes = canvas.axes(left, _BOTTOM, self._EACH, _TALL, share_height=beside)
        axes.set_xlim(0.0, self._high)
        axes.tick_params(labelleft=False, left=False)
        axes.grid(axis="x", color="#e3e6ea", lw=0.8)
        self._worked = Rope(canvas, axes, _WORKED, 3)
        self._rigid = Rope(canvas, axes, _RIGID, 3.5)
        self._elastic = Rope(canvas, axes, _ELASTIC if index == 0 else HAUL, 3.4)
        self._begin = Mark(canvas, axes, "o", "white", 6, 5.2)
        self._end = Mark(canvas, axes, "s", "white", 6, 5.2)
        self._dot = Dot(canvas, axes)
        self._level = Rope(canvas, axes, THIN, 2)
        self._labels = Labels(canvas, axes, 4, 9)

    def update(self, result: LockedMove, look: Look) -> None:
        """Follow ``result``."""
        self._ticks(look.display)
        parts: list[Rope | Mark] = [self._worked, self._rigid, self._elastic, self._level]
        for part in (*parts, self._begin, self._end, self._dot):
            part.hide()
        if not (look.numbers and result.reliable):
            self._labels.write([])
            return
        along, worked = result.along, result.worked
        assert along is not None
        assert worked is not None
        elastic, rigid, kept = (
            self._of(f) for f in (along.elastic.forces, along.rigid.forces, worked)
        )
        self._elastic.trace(elastic, along.z)
        self._rigid.trace(rigid, along.z)
        self._level.place((0.0, result.new_z), (self._high, result.new_z))
        self._begin.place(self._inside(elastic[0]), result.start.z)
        self._end.place(self._inside(rigid[-1]), result.new_z)
        self._dot.place(self._inside(elastic[-1]), result.new_z)
        down = -1.0 if not result.rises else 1.0
        color = _ELASTIC.color if self._index == 0 else HAUL.color
        labels = [
            self._label(elastic[-1], result.new_z, color, (-1.0, down), look.display),
            self._label(rigid[-1], result.new_z, _RIGID.color, (1.0, down), look.display),
            self._label(elastic[0], result.start.z, INK, (-0.4, -down), look.display),
        ]
        if self._index == 0:
            self._worked.trace(kept, along.z)
        self._labels.write(labels, [self._line(c, along.z) for c in (elastic, rigid, kept)])

    def _line(self, values: Any, heights: Any) -> list[Place]:
        """The part of a curve that is in the strip, for labels to keep off."""
        return [
            (self._inside(value), float(z))
            for value, z in zip(values[::4], heights[::4], strict=True)
            if np.isfinite(value)
        ] or [(0.0, 0.0)]

    def _of(self, held: Hold) -> Any:
        values = held.line_tension if self._index == 0 else held.haul_tension
        return np.ma.filled(np.ma.asarray(values, float), np.nan)

    def _inside(self, value: float) -> float:
        return float(min(value, self._high))

    def _label(
        self, value: float, height: float, color: str, towards: Place, display: Display
    ) -> Label:
        beyond = " →" if value > self._high else ""
        words = f"{say(display, float(value), Kind.FORCE, 2)}{beyond}"
        return Label(words, (self._inside(value), height), color, towards, True)

    def _ticks(self, display: Display) -> None:
        if display.force == self._force:
            return
        self._force = display.force
        unit = display.unit(Kind.FORCE)
        top = 0.92 * self._high / unit.factor
        shown = [v for v in MaxNLocator(3).tick_values(0, top) if 0 <= v <= top]
        self._axes.xaxis.set_ticks([v * unit.factor for v in shown], [f"{v:g}" for v in shown])
        self._axes.set_title(f"{self._title} ({unit.symbol})".replace("\n ", "\n"), fontsize=9.5)
        self._canvas.forget_background()


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Control("start_x", "Litter at first, out", Kind.LENGTH, 0.5, 9, 0.1, 2.5),
    Control("start_z", "Litter at first, height", Kind.LENGTH, 2, 30, 0.5, 27),
    Control(
        "move",
        "Then raised by",
        Kind.LENGTH,
        -10,
        10,
        0.5,
        -3,
        "Below zero it is lowered. The tensioner stays locked all the way.",
    ),
    Control(
        "stiffness",
        "EA of each track line",
        Kind.FORCE,
        20e3,
        100e3,
        5e3,
        50e3,
        "The stiffness of a rope: its tension over its stretch, as a share of its length. The "
        "start is an example: use the maker's figure or measure.",
    ),
    Control("lines", "Track lines", Kind.RATIO, 1, 4, 1, 1),
    Control("mass", "Mass that hangs", Kind.MASS, 110, 290, 5, 200),
    Control("directional_x", "Haul directional, out", Kind.LENGTH, 0, 1.5, 0.1, 0.3),
    Control("directional_z", "Haul directional, height", Kind.LENGTH, 31, 35, 0.25, 32),
    Control("track_extra", "Track directional, above it", Kind.LENGTH, 0, 2, 0.25, 0),
    Control("hub_x", "Hub, out from the wall", Kind.LENGTH, 15, 80, 1, 40),
    Control("hub_z", "Hub, height", Kind.LENGTH, -2, 20, 0.5, 0.5),
)

_START = {control.key: control.default for control in CONTROLS}


def _outcome(display: Display) -> Outcome:
    """The figure's start, at its new height."""
    result = compute(_START)
    assert result.along is not None
    before = float(result.along.before.forces.line_tension)
    _, elastic, rigid = result.at(-1)
    after = elastic.forces.line_tension
    return Outcome(
        right=1 if abs(after / before - 1) < 0.02 else 0 if after < before else 2,
        sentence=(
            f"Track lines together: {say(display, before, Kind.FORCE)} before; "
            f"{say(display, after, Kind.FORCE)} after if they stretch, "
            f"{say(display, rigid.forces.line_tension, Kind.FORCE)} if nothing does. The litter "
            f"swings from {say(display, result.start.x, Kind.LENGTH)} to "
            f"{say(display, elastic.x, Kind.LENGTH)} out."
        ),
    )


LOCKED_TENSIONER = Figure(
    key="locked-tensioner",
    title="Moving against a locked tensioner",
    alternative=(
        "Cross-section with the arc on which the litter moves while the tensioner is locked, and "
        "beside it the tensions along that arc against height"
    ),
    prediction=Prediction(
        question=(
            "the litter hangs beside the high outcrop. The tensioner is locked. The haul team "
            "lowers a few metres, because somebody called for it. The tension of the track line …"
        ),
        choices=("falls", "stays the same", "rises"),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=LockedPicture,
    summary=summary,
    table=table,
    cautions=(
        OUT_BEFORE_DOWN,
        ELASTIC,
        BOTH_BOUNDS,
        "The outcrop is not drawn here, and the tensioner's own rope is taken not to stretch.",
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
        cautions.STRETCHING,
        cautions.FRICTIONLESS,
        cautions.AUTHORITY,
    ),
    reading=(
        "The litter is drawn where it is if the lines stretch; the square shows where it would be "
        "if they did not. The dotted curve is the tension that the "
        "track lines would have had with the tensioner worked along.",
    ),
    first=("start_x", "start_z", "move", "stiffness", "lines", "hub_x"),
)
