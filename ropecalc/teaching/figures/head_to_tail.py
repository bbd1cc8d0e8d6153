"""Forces on one point drawn head to tail: the polygon closes when the point is at rest.

::

    canvas pixels inside the axes; the scale is chosen so that the polygon fills them, and a bar
    says what it is
"""

import math
from collections.abc import Sequence
from typing import Any

import numpy as np

from ropecalc.teaching.canvas import Canvas
from ropecalc.teaching.drawing import (
    FAINT,
    HAUL,
    THIN,
    Arrow,
    Label,
    Labels,
    Notice,
    Place,
    Rope,
    ScaleBar,
)
from ropecalc.teaching.figures.free_body import Pull, neat_force
from ropecalc.teaching.figures.words import say
from ropecalc.units import Display, Kind

_BESIDE, _ABOVE = 170.0, 86.0  # pixels left free for labels and for the bar
_SHORTEST = 6.0  # pixels; a shorter side has no room for its label's direction


def stepped(value: float) -> float:
    """The next of a ladder of 12 steps to a tenfold at or above ``value`` (positive).

    Scales that stand still while a slider moves a little.
    """
    return float(10.0 ** (math.ceil(12 * math.log10(value) - 1e-9) / 12))


class HeadToTail:
    """The polygon in axes of its own at ``left``, ``bottom`` of a canvas (pixels)."""

    def __init__(
        self,
        canvas: Canvas,
        left: float,
        bottom: float,
        wide: float,
        tall: float,
        title: str,
        sides: int = 4,
    ) -> None:
        self._wide, self._tall = wide, tall
        self._canvas = canvas
        self._axes = axes = canvas.sheet(left, bottom, wide, tall, title)
        self._compared = Rope(canvas, axes, FAINT)
        self._arrows = [Arrow(canvas, axes, HAUL) for _ in range(sides)]
        self._bar = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, sides + 1, 10)
        self._notice = Notice(canvas, axes, 0.5, 0.55, int(wide / 9))

    def give_way(self, hidden: bool) -> None:
        """Leave the place to another picture that stands there, or take it again."""
        self._clear()
        if self._axes.get_visible() == hidden:
            self._axes.set_visible(not hidden)
            self._canvas.forget_background()

    def say(self, sentence: str) -> None:
        """A sentence in place of the polygon."""
        self._clear()
        self._notice.say(sentence)

    def draw(
        self, pulls: Sequence[Pull], display: Display, compared: Sequence[Pull] = (), name: str = ""
    ) -> None:
        """The polygon of ``pulls`` in their order; those of no size are left out.

        ``compared`` is another polygon from the same start, drawn faint and called ``name``.
        """
        self._clear()
        pulls = [pull for pull in pulls if pull[1] > 0]
        corners, others = _corners(pulls), _corners(compared)
        every = np.concatenate([corners, others])
        low, high = every.min(axis=0), every.max(axis=0)
        room = np.array([self._wide - _BESIDE, self._tall - _ABOVE])
        scale = 1.0 / stepped(float(max((high - low) / room)))
        middle = np.array([0.5 * self._wide, 0.5 * self._tall + 14])
        shift = middle - scale * (low + high) / 2
        placed, faint = ([_place(shift + scale * c) for c in cs] for cs in (corners, others))
        for arrow, tail, tip, pull in zip(
            self._arrows, placed[:-1], placed[1:], pulls, strict=False
        ):
            arrow.restyle(pull[3])
            arrow.place(tail, tip)
        labels = _labels(pulls, placed, display)
        if compared:
            self._compared.place(*faint)
            labels.append(Label(name, faint[-2], THIN.color, (0, -1)))
        self._labels.write(labels, [placed, faint] if compared else [placed])
        amount, words = neat_force(min(110.0, 0.35 * self._wide) / scale, display)
        self._bar.place(14, 14, amount * scale, 5, words)

    def _clear(self) -> None:
        for arrow in self._arrows:
            arrow.hide()
        self._bar.hide()
        self._compared.hide()
        self._labels.write([])
        self._notice.say("")


def _corners(pulls: Sequence[Pull]) -> Any:
    """Where the arrows begin and end, in newtons from the start of the first."""
    return np.cumsum([np.zeros(2), *(p[1] * np.array(p[2]) for p in pulls)], axis=0)


def _place(point: Any) -> Place:
    return (float(point[0]), float(point[1]))


def _labels(pulls: Sequence[Pull], corners: Sequence[Place], display: Display) -> list[Label]:
    """A label outside each side of the polygon."""
    centre = np.mean(corners[:-1], axis=0)
    labels = []
    for (name, size, _, stroke), tail, tip in zip(pulls, corners[:-1], corners[1:], strict=True):
        along = (tip[0] - tail[0], tip[1] - tail[1])
        if math.hypot(*along) < _SHORTEST:
            continue
        middle = ((tail[0] + tip[0]) / 2, (tail[1] + tip[1]) / 2)
        away = (along[1], -along[0])
        inside = (centre[0] - middle[0]) * away[0] + (centre[1] - middle[1]) * away[1]
        if inside > 1e-6:
            away = (-away[0], -away[1])
        words = f"{name}\n{say(display, size, Kind.FORCE)}"
        labels.append(Label(words, middle, stroke.color, away, True))
    return labels
