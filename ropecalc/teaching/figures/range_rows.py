"""Bars in rows: a value or a range, how far it may be off, and words beside it."""

from typing import Any

from ropecalc.mechanics.friction import Band
from ropecalc.teaching.canvas import INK, Canvas
from ropecalc.teaching.drawing import WARNING, Area, Label, Labels, Rope, Stroke
from ropecalc.teaching.figures.words import say
from ropecalc.units import Display, Kind

_BAR, _BAND_FACE = "#5d7ea6", "#c3d2e4"
_ERROR = Stroke(INK, 1.3)


def say_range(band: Band, display: Display, figures: int = 3) -> str:
    """A range of forces, or one force where both ends read the same."""
    low, high = (say(display, v, Kind.FORCE, figures) for v in (band.low, band.high))
    return low if low == high else f"{low} to {high}"


class RangeRows:
    """Rows of a name, a bar from nothing to a range, its error as a whisker, and words."""

    def __init__(self, canvas: Canvas, axes: Any, count: int, left: float, right: float) -> None:
        self._left, self._right = left, right
        self._names = Labels(canvas, axes, count, 9)
        self._values = Labels(canvas, axes, count, 9)
        self._solid = [Area(canvas, axes, _BAR, "none", 3) for _ in range(count)]
        self._pale = [Area(canvas, axes, _BAND_FACE, "none", 2) for _ in range(count)]
        self._errors = [Rope(canvas, axes, _ERROR, 5) for _ in range(count)]
        self._ends = [Rope(canvas, axes, _ERROR, 5) for _ in range(2 * count)]
        self._zero = Rope(canvas, axes, Stroke(INK, 1.0), 4)
        self._limit = Rope(canvas, axes, WARNING, 4)

    def hide(self) -> None:
        """Show nothing."""
        self._names.write([])
        self._values.write([])
        for area in (*self._solid, *self._pale):
            area.hide()
        for line in (*self._errors, *self._ends, self._zero, self._limit):
            line.hide()

    def draw(
        self,
        rows: list[tuple[str, Band, Band, str, bool]],
        levels: list[float],
        half: float,
        limit: float | None = None,
    ) -> None:
        """Rows of name, range, range with error, words and whether it stands out."""
        self.hide()
        scale = (self._right - self._left) / max(wide.high for _, _, wide, _, _ in rows)

        def at(force: float) -> float:
            return self._left + scale * max(0.0, force)

        names, values = [], []
        self._zero.place((self._left, levels[-1] - half - 3), (self._left, levels[0] + half + 3))
        if limit is not None and at(limit) <= self._right:
            self._limit.place((at(limit), levels[-1] - half - 3), (at(limit), levels[0] + half + 3))
        for i, (name, band, wide, words, bold) in enumerate(rows):
            level, low, high = levels[i], at(band.low), at(band.high)
            bottom, top = level - half, level + half
            self._solid[i].place((self._left, bottom), (low, bottom), (low, top), (self._left, top))
            if band.high > band.low:
                self._pale[i].place((low, bottom), (high, bottom), (high, top), (low, top))
            begin, end = at(wide.low), at(wide.high)
            self._errors[i].place((begin, level), (end, level))
            for tick, x in zip(self._ends[2 * i : 2 * i + 2], (begin, end), strict=True):
                tick.place((x, level - 4), (x, level + 4))
            names.append(Label(name, (self._left - 2, level), INK, (-1, 0), bold))
            values.append(Label(words, (end, level), INK, (1, 0), bold))
        self._names.write(names)
        self._values.write(values)
