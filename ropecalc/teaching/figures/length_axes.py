"""Axes of a cross-section: metres inside, round numbers in the reader's unit along them."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.ticker import MaxNLocator

from ropecalc.teaching.canvas import Canvas
from ropecalc.units import Display, Kind

Numbers = Callable[[float, str], Sequence[float]]
"""The numbers from nought up to, but without, a highest one in a unit of that name."""


def every(metres: float, feet: float) -> Numbers:
    """A number at every so many metres, or feet."""

    def numbers(high: float, unit: str) -> Sequence[float]:
        return [float(v) for v in np.arange(0, high, metres if unit == "m" else feet)]

    return numbers


def about(count: int) -> Numbers:
    """At most ``count`` steps between round numbers."""
    locator = MaxNLocator(count, steps=[1, 2, 5, 10])

    def numbers(high: float, _: str) -> Sequence[float]:
        return [float(v) for v in locator.tick_values(0, high) if 0 <= v < high]

    return numbers


@dataclass(frozen=True)
class LengthAxis:
    """What an axis measures, how far up it is numbered (m), and at which numbers."""

    name: str
    high: float
    numbers: Numbers


class LengthAxes:
    """Keeps the ticks and names of ``axes`` in the reader's unit; without ``up``, only across.

    They are part of the background, so they are written anew only when the unit changes.
    """

    def __init__(
        self, canvas: Canvas, axes: Axes, across: LengthAxis, up: LengthAxis | None = None
    ) -> None:
        self._canvas, self._axes, self._across, self._up = canvas, axes, across, up
        self._unit = ""

    def follow(self, display: Display) -> None:
        """Number the axes in the unit of ``display``."""
        if display.length == self._unit:
            return
        self._unit = display.length
        _number(self._axes.xaxis, self._across, display)
        if self._up is not None:
            _number(self._axes.yaxis, self._up, display)
        self._canvas.forget_background()


def wall_axes(canvas: Canvas, axes: Axes, out: float, high: float, count: int) -> LengthAxes:
    """Those of a section through a wall in which the master attachment point is placed."""
    return LengthAxes(
        canvas,
        axes,
        LengthAxis("out from the wall", out, about(count)),
        LengthAxis("height of the attachment point", high, about(count)),
    )


def _number(axis: Any, measured: LengthAxis, display: Display) -> None:
    unit = display.unit(Kind.LENGTH).factor
    shown = measured.numbers(measured.high / unit, display.length)
    axis.set_ticks([v * unit for v in shown], [f"{v:g}" for v in shown])
    axis.set_label_text(f"{measured.name} ({display.length})", fontsize=9)
    axis.labelpad = 1
