"""What rescuers see, as artists that can be moved: rock, ropes, litter, frame, hub, arrows, labels.

Each class makes its artists once on a :class:`~ropecalc.teaching.canvas.Canvas` and has one
``place`` method (and ``hide``). Places are in the data coordinates of the axes (m: x out from
the wall, z up), lengths of heads and gaps in pixels. Colours differ in lightness, and every role
has a line style of its own, so that a grey print and a colour-blind reader lose nothing.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import RendererAgg
from matplotlib.lines import Line2D
from matplotlib.patches import PathPatch, Polygon
from matplotlib.path import Path
from matplotlib.text import Text
from matplotlib.transforms import Affine2D, IdentityTransform

from ropecalc.teaching.canvas import INK, SOFT_INK, Canvas
from ropecalc.teaching.placing import LINE_COST, best_place
from ropecalc.teaching.placing import Box as Box
from ropecalc.teaching.placing import Place as Place

ROCK_FACE, ROCK_EDGE = "#d9d2c5", "#6f6656"
GROUND_FACE = "#e6e2d6"
LITTER_FACE, PATIENT_FACE, SKIN = "#f4b63f", "#8fb3cc", "#e9c7a6"
CLOTHES = "#54606c"


@dataclass(frozen=True)
class Stroke:
    """How the lines of one role look everywhere."""

    color: str
    width: float
    style: Any = "-"


HAUL = Stroke("#0a3f7a", 3.0)
TRACK = Stroke("#c2520b", 2.0, (0, (9, 1.6, 1.6, 1.6)))
TAG = Stroke("#c2520b", 2.0, (0, (5, 2)))
BELAY = Stroke("#7d8f1e", 1.6, (0, (3, 1)))
PUSH = Stroke("#00735a", 2.6)
WEIGHT = Stroke(INK, 2.6)
THIN = Stroke(SOFT_INK, 0.9)
LIMIT = Stroke("#7a2e8e", 1.4, (0, (1.2, 2.2)))
WARNING = Stroke("#b00020", 2.6, (0, (2.5, 1.2)))
FAINT = Stroke("#8a919a", 1.0, (0, (2, 2)))


class Rope:
    """A line through any number of points."""

    def __init__(self, canvas: Canvas, axes: Axes, stroke: Stroke, zorder: float = 4) -> None:
        self._line = canvas.moving(
            Line2D([], [], solid_capstyle="round", dash_capstyle="butt", zorder=zorder)
        )
        axes.add_line(self._line)
        self.restyle(stroke)

    def restyle(self, stroke: Stroke) -> None:
        """Take another role's look."""
        self._line.set(color=stroke.color, linewidth=stroke.width, linestyle=stroke.style)

    def place(self, *points: Place) -> None:
        """Run through ``points``."""
        self._line.set_data([p[0] for p in points], [p[1] for p in points])
        self._line.set_visible(True)

    def trace(self, x: Any, z: Any) -> None:
        """Run through arrays of coordinates; the line breaks where one is masked or NaN."""
        self._line.set_data(x, z)
        self._line.set_visible(True)

    def hide(self) -> None:
        """Show nothing."""
        self._line.set_visible(False)


class Arrow:
    """An arrow from tail to tip, with a head whose size in pixels never changes."""

    HEAD, HALF_WIDTH = 12.0, 5.0

    def __init__(self, canvas: Canvas, axes: Axes, stroke: Stroke, zorder: float = 6) -> None:
        self._axes = axes
        self._shaft = canvas.moving(Line2D([], [], solid_capstyle="butt", zorder=zorder))
        axes.add_line(self._shaft)
        self._head = canvas.moving(Polygon([(0, 0)] * 3, closed=True, lw=0, zorder=zorder))
        axes.add_patch(self._head)
        self.restyle(stroke)

    def restyle(self, stroke: Stroke) -> None:
        """Take another role's look; the shaft stays solid, so that the head reads well."""
        self._shaft.set(color=stroke.color, linewidth=stroke.width)
        self._head.set_facecolor(stroke.color)

    def place(self, tail: Place, tip: Place) -> None:
        """Point from ``tail`` to ``tip``; nothing is shown for an arrow shorter than 2 pixels."""
        to_pixels = self._axes.transData
        start, end = to_pixels.transform([tail, tip])
        length = math.dist(start, end)
        if length < 2.0:
            self.hide()
            return
        along = (end - start) / length
        head = min(self.HEAD, 0.7 * length)
        neck = end - along * head
        side = np.array([-along[1], along[0]]) * self.HALF_WIDTH * head / self.HEAD
        back = to_pixels.inverted().transform([start, neck, neck + side, neck - side])
        self._shaft.set_data([back[0][0], back[1][0]], [back[0][1], back[1][1]])
        self._head.set_xy([tip, tuple(back[2]), tuple(back[3])])
        self._shaft.set_visible(True)
        self._head.set_visible(True)

    def hide(self) -> None:
        """Show nothing."""
        self._shaft.set_visible(False)
        self._head.set_visible(False)


class Arc(Rope):
    """An angle's arc."""

    def sweep(self, centre: Place, radius: float, start: float, end: float) -> None:
        """An arc of ``radius`` from angle ``start`` to ``end`` (rad, from +x towards +z)."""
        turn = np.linspace(start, end, 24)
        x, z = centre
        self._line.set_data(x + radius * np.cos(turn), z + radius * np.sin(turn))
        self._line.set_visible(True)


class Area:
    """A filled polygon that moves."""

    def __init__(
        self, canvas: Canvas, axes: Axes, face: str, edge: str = ROCK_EDGE, zorder: float = 2
    ) -> None:
        self._patch = canvas.moving(
            Polygon([(0, 0)] * 3, closed=True, facecolor=face, edgecolor=edge, lw=1.2)
        )
        self._patch.set_zorder(zorder)
        axes.add_patch(self._patch)

    def place(self, *corners: Place) -> None:
        """Fill between ``corners``."""
        self._patch.set_xy(list(corners))
        self._patch.set_visible(True)

    def hide(self) -> None:
        """Show nothing."""
        self._patch.set_visible(False)


class Region:
    """A filled shape of any number of pieces, some of which may be holes."""

    def __init__(
        self,
        canvas: Canvas,
        axes: Axes,
        face: str,
        zorder: float,
        hatch: str | None = None,
        edge: str = "none",
    ) -> None:
        self._patch = canvas.moving(
            PathPatch(Path(np.zeros((1, 2))), facecolor=face, edgecolor=edge, lw=0, hatch=hatch)
        )
        self._patch.set_zorder(zorder)
        axes.add_patch(self._patch)

    def fill(self, *pieces: Any) -> None:
        """Fill closed ``pieces``, each an array of (x, z) whose last point is its first."""
        paths = [Path(piece, closed=True) for piece in pieces]
        self._patch.set_visible(bool(paths))
        if paths:
            self._patch.set_path(Path.make_compound_path(*paths))

    def hide(self) -> None:
        """Show nothing."""
        self._patch.set_visible(False)


# --- people and things ---------------------------------------------------------------------------


def _circle(x: float, z: float, radius: float) -> Path:
    return Path.circle((x, z), radius)


def _outline(*corners: Place) -> Path:
    return Path([*corners, corners[0]], closed=True)


PERSON: tuple[Place, ...] = (
    (-0.18, 1.46),
    (0.18, 1.46),
    (0.27, 0.82),
    (0.19, 0.80),
    (0.14, 1.15),
    (0.17, 0.0),
    (0.03, 0.0),
    (0.0, 0.72),
    (-0.03, 0.0),
    (-0.17, 0.0),
    (-0.14, 1.15),
    (-0.19, 0.80),
    (-0.27, 0.82),
)
"""Somebody 1.75 m tall below the neck, feet at the origin."""
TRAY: tuple[Place, ...] = (
    (-0.3, 0.0),
    (-0.25, -0.24),
    (0.25, -0.24),
    (0.3, 0.0),
    (0.25, 0.0),
    (-0.25, 0.0),
)
"""A litter seen from its end, the middle of its rail at the origin."""
BLANKET: tuple[Place, ...] = tuple(
    (0.25 * math.cos(t), 0.17 * math.sin(t) - 0.02) for t in np.linspace(0, math.pi, 15)
)
"""The patient under a blanket in that litter."""

_PERSON = Path.make_compound_path(_circle(0.0, 1.62, 0.13), _outline(*PERSON))
_TRAY, _BLANKET = _outline(*TRAY), _outline(*BLANKET)
_HEAD = _circle(0.0, 0.18, 0.11)
_BRIDLE = Path([(-0.3, 0.0), (0.0, 1.0), (0.3, 0.0)])

BRIDLE = 1.0
"""From the master attachment point down to the litter's rail (m)."""
HALF_WIDTH = 0.3
"""Half the litter's width, seen from its end (m)."""
REACH_DOWN = BRIDLE + 0.24
"""From the master attachment point down to the litter's underside (m)."""


class Shape:
    """One outline of fixed form that is moved, turned and never bent."""

    def __init__(self, canvas: Canvas, axes: Axes, path: Path, zorder: float, **style: Any) -> None:
        self._move = Affine2D()
        self._patch = canvas.moving(PathPatch(path, zorder=zorder, **style))
        axes.add_patch(self._patch)
        self._patch.set_transform(self._move + axes.transData)

    def place(self, x: float, z: float, turn: float = 0.0, size: float = 1.0) -> None:
        """Put the outline's origin at (x, z), turned by ``turn`` rad and scaled by ``size``."""
        self._move.clear().scale(size).rotate(turn).translate(x, z)
        self._patch.set_visible(True)

    def hide(self) -> None:
        """Show nothing."""
        self._patch.set_visible(False)


class Person(Shape):
    """Somebody 1.75 m tall, standing with their feet at the given place."""

    def __init__(self, canvas: Canvas, axes: Axes, zorder: float = 3) -> None:
        super().__init__(canvas, axes, _PERSON, zorder, facecolor=CLOTHES, edgecolor="none")


class Litter:
    """A litter seen from its end, with patient and bridle, hanging from the given place."""

    def __init__(self, canvas: Canvas, axes: Axes, zorder: float = 5) -> None:
        line = {"edgecolor": INK, "linewidth": 1.0}
        self._parts = (
            Shape(canvas, axes, _HEAD, zorder, facecolor=SKIN, **line),
            Shape(canvas, axes, _BLANKET, zorder + 0.1, facecolor=PATIENT_FACE, **line),
            Shape(canvas, axes, _TRAY, zorder + 0.2, facecolor=LITTER_FACE, **line),
            Shape(canvas, axes, _BRIDLE, zorder + 0.3, facecolor="none", **line),
        )

    def place(self, x: float, z: float) -> None:
        """Hang from the master attachment point (x, z)."""
        for part in self._parts:
            part.place(x, z - BRIDLE)

    def hide(self) -> None:
        """Show nothing."""
        for part in self._parts:
            part.hide()


class Frame:
    """The high directional: two legs on the cliff's edge, and a mast where the track line starts
    above the haul line."""

    def __init__(self, canvas: Canvas, axes: Axes, zorder: float = 3) -> None:
        self._legs = Rope(canvas, axes, Stroke(INK, 2.2), zorder)
        self._mast = Rope(canvas, axes, Stroke(INK, 2.2), zorder)
        self._wheels = canvas.moving(
            Line2D([], [], ls="none", marker="o", ms=5.5, mfc="white", mec=INK, mew=1.4)
        )
        self._wheels.set_zorder(zorder + 3)
        axes.add_line(self._wheels)

    def place(self, edge: float, haul: Place, track: Place) -> None:
        """Stand on the edge at height ``edge`` with pulleys at ``haul`` and ``track``."""
        self._legs.place((-1.3, edge), haul, (-0.15, edge))
        self._mast.place(haul, track)
        self._wheels.set_data([haul[0], track[0]], [haul[1], track[1]])

    def hide(self) -> None:
        """Show nothing."""
        self._legs.hide()
        self._mast.hide()
        self._wheels.set_data([], [])


class Mark:
    """A mark of the same size at any scale."""

    def __init__(
        self, canvas: Canvas, axes: Axes, marker: str, face: str, size: float, zorder: float = 6
    ) -> None:
        self._mark = canvas.moving(
            Line2D([], [], ls="none", marker=marker, ms=size, mfc=face, mec=INK, mew=1.5)
        )
        self._mark.set_zorder(zorder)
        axes.add_line(self._mark)

    def place(self, x: float, z: float) -> None:
        """Sit at (x, z)."""
        self._mark.set_data([x], [z])
        self._mark.set_visible(True)

    def hide(self) -> None:
        """Show nothing."""
        self._mark.set_visible(False)


class Hub(Mark):
    """The ground anchor out in front: a square standing on its corner."""

    def __init__(self, canvas: Canvas, axes: Axes) -> None:
        super().__init__(canvas, axes, "D", "white", 6.5)


class Dot(Mark):
    """The litter where the scale is too small to draw it."""

    def __init__(self, canvas: Canvas, axes: Axes) -> None:
        super().__init__(canvas, axes, "o", LITTER_FACE, 6.0)


class ScaleBar:
    """A bar of stated length, for forces or lengths."""

    def __init__(self, canvas: Canvas, axes: Axes) -> None:
        self._bar = Rope(canvas, axes, Stroke(INK, 1.4), 8)
        self._labels = Labels(canvas, axes, 1, 8.5)

    def place(self, left: float, z: float, length: float, tick: float, text: str) -> None:
        """From (left, z) to the right by ``length``, with ends ``tick`` high, under ``text``."""
        right, top = left + length, z + tick
        self._bar.place((left, top), (left, z), (right, z), (right, top))
        self._labels.write([Label(text, ((left + right) / 2, top), towards=(0, 1))])

    def hide(self) -> None:
        """Show nothing."""
        self._bar.hide()
        self._labels.write([])


class Notice:
    """A sentence in the middle of axes, in place of numbers that do not exist."""

    def __init__(self, canvas: Canvas, axes: Axes, x: float, y: float, columns: int) -> None:
        self._columns = columns
        self._text = canvas.moving(
            Text(
                x,
                y,
                "",
                transform=axes.transAxes,
                ha="center",
                va="center",
                fontsize=10,
                color=INK,
                linespacing=1.35,
                bbox={"boxstyle": "round,pad=0.6", "fc": "#fff6d8", "ec": "#8a6d00", "lw": 1.2},
            )
        )
        self._text.set_zorder(12)
        axes.add_artist(self._text)
        self._text.set_clip_on(False)

    def say(self, sentence: str) -> None:
        """Show ``sentence``; an empty one hides the notice."""
        from textwrap import fill

        self._text.set(text=fill(sentence, self._columns), visible=bool(sentence))


# --- labels that keep out of each other's way -----------------------------------------------------


class Stamp(Artist):
    """Words on a pale ground, typeset once and then stamped: a slider's every move shows many."""

    _KEPT = 400

    def __init__(self, canvas: Canvas, size: float) -> None:
        super().__init__()
        self._canvas, self._size = canvas, size
        self._made: dict[tuple[str, str, bool], Any] = {}
        self._image: Any = None
        self._corner = (0.0, 0.0)

    def extent(self, text: str, color: str, bold: bool) -> Place:
        """Width and height in pixels."""
        height, width = self._press(text, color, bold).shape[:2]
        return float(width), float(height)

    def place(self, text: str, color: str, bold: bool, middle: Place) -> None:
        """Stand with the middle at ``middle`` (pixels)."""
        self._image = self._press(text, color, bold)
        height, width = self._image.shape[:2]
        self._corner = (round(middle[0] - width / 2), round(middle[1] - height / 2))
        self.set_visible(True)

    def draw(self, renderer: Any) -> None:
        """Put the words on the canvas."""
        if self._image is not None:
            renderer.draw_image(renderer.new_gc(), *self._corner, self._image)

    def _press(self, text: str, color: str, bold: bool) -> Any:
        key = (text, color, bold)
        if key not in self._made:
            if len(self._made) >= self._KEPT:
                self._made.clear()
            self._made[key] = self._typeset(*key)
        return self._made[key]

    def _typeset(self, text: str, color: str, bold: bool) -> Any:
        words = Text(0, 0, text, fontsize=self._size, color=color, ha="left", va="bottom")
        words.set(fontweight="bold" if bold else "normal", multialignment="center")
        words.set_figure(self._canvas.figure)
        box = words.get_window_extent(self._canvas.renderer)
        width, height = math.ceil(box.width) + 4, math.ceil(box.height) + 4
        sheet = RendererAgg(width, height, self._canvas.figure.dpi)
        words.set_position((2 - box.x0, 2 - box.y0))
        words.set_transform(IdentityTransform())
        words.draw(sheet)
        ink = np.asarray(sheet.buffer_rgba()).astype(float)
        letters = ink[..., 3:] / 255.0
        ground = 0.82
        cover = letters + ground * (1.0 - letters)
        color_sum = ink[..., :3] * letters + 255.0 * ground * (1.0 - letters)
        image = np.concatenate([color_sum / cover, 255.0 * cover], axis=-1).round()
        return np.ascontiguousarray(image[::-1].astype(np.uint8))  # stamped from the bottom row up


@dataclass(frozen=True)
class Label:
    """Words at a place. ``towards`` is the direction (x, z) in which they would rather stand.

    An ``optional`` label is left out where there is no free place close by.
    """

    text: str
    at: Place
    color: str = INK
    towards: Place = (1.0, 1.0)
    bold: bool = False
    optional: bool = False


class Labels:
    """Places labels beside their points so that they hide neither lines nor each other.

    Every label tries places around its point, nearest and most wanted first, and takes the
    first that is free; if none is, the one that hides least. A label that ends up far from its
    point gets a thin line to it.
    """

    _GAPS = (5.0, 12.0, 20.0, 30.0, 42.0, 56.0)
    _LEADER_FROM = 24.0

    def __init__(self, canvas: Canvas, axes: Axes, slots: int, size: float = 9.5) -> None:
        self._axes = axes
        self._stamps = [Stamp(canvas, size) for _ in range(slots)]
        for stamp in self._stamps:
            stamp.set_zorder(9)
            axes.add_artist(canvas.moving(stamp))
        self._leaders = [Rope(canvas, axes, THIN, 6.5) for _ in range(slots)]

    def write(
        self,
        labels: Sequence[Label],
        lines: Sequence[Sequence[Place]] = (),
        boxes: Sequence[Box] = (),
    ) -> None:
        """Show ``labels`` clear of ``lines`` (points) and ``boxes``, all in data coordinates."""
        view = self._axes.bbox
        frame: Box = (view.x0 + 2, view.y0 + 2, view.x1 - 2, view.y1 - 2)
        to_pixels = self._axes.transData.transform
        segments = [
            (float(p[0]), float(p[1]), float(q[0]), float(q[1]))
            for line in lines
            for p, q in pairwise(to_pixels(list(line)))
        ]
        taken = [
            (float(low[0]), float(low[1]), float(high[0]), float(high[1]))
            for low, high in (to_pixels([b[:2], b[2:]]) for b in boxes)
        ]
        for index, (stamp, leader) in enumerate(zip(self._stamps, self._leaders, strict=True)):
            leader.hide()
            if index >= len(labels):
                stamp.set_visible(False)
                continue
            label = labels[index]
            at = to_pixels(label.at)
            point = (float(at[0]), float(at[1]))
            best = self._best(label, point, frame, segments, taken)
            if best is None:
                stamp.set_visible(False)
                continue
            box, gap = best
            taken.append(box)
            middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
            stamp.place(label.text, label.color, label.bold, middle)
            if gap >= self._LEADER_FROM:
                near = (
                    min(max(point[0], box[0]), box[2]),
                    min(max(point[1], box[1]), box[3]),
                )
                ends = self._axes.transData.inverted().transform([point, near])
                leader.place(tuple(ends[0]), tuple(ends[1]))

    def _best(
        self,
        label: Label,
        point: Place,
        frame: Box,
        segments: Sequence[Box],
        taken: Sequence[Box],
    ) -> tuple[Box, float] | None:
        cost, box, gap = best_place(
            point,
            self._stamps[0].extent(label.text, label.color, label.bold),
            label.towards,
            self._GAPS[:2] if label.optional else self._GAPS,
            frame=frame,
            segments=segments,
            taken=taken,
        )
        if label.optional and cost > LINE_COST:
            return None
        return box, gap


def along(start: Place, way: Place, reach: float) -> Place:
    """The place ``reach`` from ``start`` in the direction ``way``, of length 1."""
    return (start[0] + reach * way[0], start[1] + reach * way[1])


def between(one: Place, other: Place) -> Place:
    """The middle of two places."""
    return ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)


def neat(value: float) -> float:
    """The largest of 1, 2, 5 times a power of ten that is not above ``value`` (positive)."""
    power: float = 10.0 ** math.floor(math.log10(value))
    return next(m * power for m in (5.0, 2.0, 1.0) if m * power <= value * (1 + 1e-9))
