"""A formula on paper: the outlines of its letters, drawn as one flowing piece of a page."""

import re
from functools import lru_cache
from typing import Any

from matplotlib.font_manager import FontProperties
from matplotlib.path import Path
from matplotlib.textpath import TextPath
from reportlab.platypus import Flowable

_FONT = FontProperties(family="DejaVu Sans", math_fontfamily="dejavusans")
_ABOVE, _BELOW = 2.0, 3.0  # points
_CASES = re.compile(
    r"\\begin\{cases\}(?P<first>.*?)& \\text\{for\}\\:(?P<when>.*?)\\\\"
    r"(?P<left>.*?)& \\text\{otherwise\} \\end\{cases\}"
)


class FormulaError(ValueError):
    """This LaTeX is more than matplotlib typesets; say it in words instead."""


class PrintedFormula(Flowable):
    """One line of LaTeX (without dollar signs), made narrower where the page is.

    Raises :class:`FormulaError` for LaTeX that cannot be typeset.
    """

    def __init__(self, latex: str, size: float = 10.0, indent: float = 0.0) -> None:
        super().__init__()
        self._path = _outline(latex, size)
        self._indent = indent
        box = self._path.get_extents()
        self._left, self._bottom = box.x0, box.y0
        self._wide, self._high = box.width, box.height
        self._scale = 1.0

    @property
    def natural_width(self) -> float:
        """Its width in points where there is room."""
        return self._indent + self._wide

    def wrap(self, available: float, _: float) -> tuple[float, float]:
        """The room it takes (points)."""
        room = max(available - self._indent, 1.0)
        self._scale = min(1.0, room / max(self._wide, 1e-9))
        self.width = min(available, self.natural_width)
        self.height = self._high * self._scale + _ABOVE + _BELOW
        return self.width, self.height

    def draw(self) -> None:
        """Draw it on the page's canvas."""
        page = self.canv
        page.saveState()
        page.translate(self._indent, _BELOW)
        page.scale(self._scale, self._scale)
        page.translate(-self._left, -self._bottom)
        page.drawPath(_traced(page.beginPath(), self._path), stroke=0, fill=1)
        page.restoreState()


def beside_each_other(latex: str) -> str:
    """A formula that tells two cases apart, as two formulas in one line: the general one first.

    For matplotlib knows no brace over lines. LaTeX without cases, or with cases of more than one
    condition, comes back as it is.
    """
    conditions = {found["when"].strip() for found in _CASES.finditer(latex)}
    if len(conditions) != 1:
        return latex
    general, special = (
        _CASES.sub(lambda found, part=part: found[part].strip(), latex)  # type: ignore[misc]
        for part in ("left", "first")
    )
    return rf"{general} \qquad {conditions.pop()}{{:}}\; {special}"


@lru_cache(maxsize=2000)
def _outline(latex: str, size: float) -> Path:
    try:
        tall = beside_each_other(latex).replace(r"\frac", r"\dfrac")
        return TextPath((0, 0), f"${tall}$", size=size, prop=_FONT)
    except ValueError:
        raise FormulaError(latex) from None


def _traced(pen: Any, path: Path) -> Any:
    """``path`` drawn with ``pen``; curves of second order become ones of third."""
    at = (0.0, 0.0)
    for points, code in path.iter_segments(simplify=False, curves=True):
        pairs = [(points[i], points[i + 1]) for i in range(0, len(points), 2)]
        if code == Path.MOVETO:
            pen.moveTo(*pairs[0])
        elif code == Path.LINETO:
            pen.lineTo(*pairs[0])
        elif code == Path.CURVE3:
            (cx, cy), (x, y) = pairs
            first = (at[0] + 2 / 3 * (cx - at[0]), at[1] + 2 / 3 * (cy - at[1]))
            second = (x + 2 / 3 * (cx - x), y + 2 / 3 * (cy - y))
            pen.curveTo(*first, *second, x, y)
        elif code == Path.CURVE4:
            pen.curveTo(*pairs[0], *pairs[1], *pairs[2])
        elif code == Path.CLOSEPOLY:
            pen.close()
            continue
        at = pairs[-1]
    return pen
