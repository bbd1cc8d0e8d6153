"""The labelled sketch of a guided raise: which point is called what, and where angles are measured.

It is drawn so that everything can be read, not to scale.
"""

import math

import ipywidgets as widgets
from matplotlib.axes import Axes

from ropecalc.teaching.canvas import INK, SOFT_INK, Canvas
from ropecalc.teaching.drawing import (
    FAINT,
    HAUL,
    ROCK_EDGE,
    ROCK_FACE,
    TRACK,
    Arc,
    Arrow,
    Frame,
    Hub,
    Litter,
    Place,
    Rope,
)
from ropecalc.teaching.shown import Shown

_TOP: Place = (0.5, 9.0)
_LITTER: Place = (3.2, 5.4)
_HUB: Place = (14.0, 0.2)
_WALL = ((-2.0, 0), (0, 0), (0, 4.4), (1.5, 5.6), (0, 6.6), (0, 7.8), (-2.0, 7.8))
_WIDTH, _HEIGHT = 940, 520

IN_WORDS = (
    "The sketch, not to scale. The wall is on the left, with an outcrop. D is the high directional "
    "above its edge: the haul line comes down from there to P, the master attachment point, from "
    "which the litter hangs on its bridle. Here the track line comes from D as well, runs through "
    "a pulley at P and goes out to B, the hub on the ground in front. The haul leg makes the angle "
    "α above the horizontal at P, on the side of the wall; the ground leg makes the angle β below "
    "it, on the side of the hub. x is the distance of P out from the wall, z its height."
)


class SketchView(Shown):
    """The sketch with its description in words."""

    def __init__(self) -> None:
        picture = widgets.Image(
            value=sketch(), format="png", layout={"width": f"{_WIDTH}px", "max_width": "100%"}
        )
        words = widgets.HTML(f'<p class="ropecalc-alternative">{IN_WORDS}</p>')
        super().__init__([picture, words])

    def summary(self) -> str:
        """What the sketch shows."""
        return IN_WORDS


def sketch() -> bytes:
    """The sketch as a PNG."""
    canvas = Canvas(_WIDTH, _HEIGHT)
    axes = canvas.axes(4, 4, _WIDTH - 8, _HEIGHT - 8)
    axes.set(xlim=(-2.0, 16.0), ylim=(-0.6, 9.6), xticks=[], yticks=[])
    axes.fill(*zip(*_WALL, strict=True), facecolor=ROCK_FACE, edgecolor=ROCK_EDGE)
    axes.axhspan(-0.6, 0.0, facecolor=ROCK_FACE, edgecolor="none")
    _lines(canvas, axes)
    _angles(canvas, axes)
    _distances(canvas, axes)
    _names(axes)
    return canvas.png()


def _lines(canvas: Canvas, axes: Axes) -> None:
    Frame(canvas, axes).place(7.8, _TOP, _TOP)
    Rope(canvas, axes, HAUL).place(_TOP, _LITTER)
    beside = 0.16
    Rope(canvas, axes, TRACK).place(
        (_TOP[0] + beside, _TOP[1]), (_LITTER[0] + beside, _LITTER[1]), _HUB
    )
    Litter(canvas, axes).place(*_LITTER)
    Hub(canvas, axes).place(*_HUB)


def _angles(canvas: Canvas, axes: Axes) -> None:
    x, z = _LITTER
    Rope(canvas, axes, FAINT).place((x - 2.2, z), (x + 3.4, z))
    up = math.atan2(_TOP[1] - z, _TOP[0] - x)
    down = math.atan2(_HUB[1] - z, _HUB[0] - x)
    Arc(canvas, axes, FAINT).sweep(_LITTER, 1.3, up, math.pi)
    Arc(canvas, axes, FAINT).sweep(_LITTER, 2.4, down, 0.0)
    axes.text(x - 1.75, z + 0.62, r"$\alpha$", fontsize=15, ha="center", va="center", color=INK)
    axes.text(x + 2.85, z - 0.62, r"$\beta$", fontsize=15, ha="center", va="center", color=INK)


def _distances(canvas: Canvas, axes: Axes) -> None:
    x, z = _LITTER
    stroke = FAINT
    low = 2.2
    Rope(canvas, axes, stroke).place((x, z - 1.4), (x, 0.0))
    for tail, tip in (((0.0, low), (x, low)), ((x, low), (0.0, low))):
        Arrow(canvas, axes, stroke).place(tail, tip)
    for tail, tip in (((6.4, 0.0), (6.4, z)), ((6.4, z), (6.4, 0.0))):
        Arrow(canvas, axes, stroke).place(tail, tip)
    axes.text(x / 2, low + 0.12, "$x$", fontsize=14, ha="center", va="bottom", color=INK)
    axes.text(6.55, 1.5, "$z$", fontsize=14, ha="left", va="center", color=INK)


def _names(axes: Axes) -> None:
    def name(place: Place, text: str, side: str = "left") -> None:
        axes.text(*place, text, fontsize=11.5, ha=side, va="center", color=INK)

    name((1.0, 9.15), "D  high directional")
    name((3.75, 5.75), "P  master attachment point")
    name((14.0, 0.75), "B  hub", "center")
    name((2.25, 7.45), "haul line, and beside it the track line's upper leg")
    name((9.4, 3.25), "ground leg of the track line")
    name((-1.85, 8.15), "edge")
    name((-1.85, 2.6), "wall")
    axes.text(15.8, -0.35, "not to scale", fontsize=9, ha="right", va="center", color=SOFT_INK)
