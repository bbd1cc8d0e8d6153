"""The survey sheet as one printable page: a sketch with letters, and blanks to fill in."""

import io
import textwrap
from typing import Any

import matplotlib as mpl
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Polygon

from ropecalc import __version__
from ropecalc.planning.survey_sheet import (
    SHEET_CAUTIONS,
    STEPS,
    WALL_ROWS,
    SheetGroup,
    SheetRow,
    sheet_groups,
)

PAPERS = {"a4": (210 / 25.4, 297 / 25.4), "letter": (8.5, 11.0)}
"""Width and height in inches."""
_MARGIN, _GAP = 0.5, 0.25
STYLE: Any = {"font.family": "DejaVu Sans", "font.size": 7.5, "pdf.fonttype": 42}
_GREY = "#666666"


def paper_name(paper: str) -> str:
    """The paper as people write it."""
    return paper.upper() if paper == "a4" else paper.capitalize()


def survey_page(paper: str = "a4") -> bytes:
    """The sheet as a PDF. Raises ValueError for a paper that is not known."""
    out = io.BytesIO()
    with mpl.rc_context(STYLE):
        draw_survey_page(paper).savefig(out, format="pdf", metadata={"CreationDate": None})
    return out.getvalue()


def draw_survey_page(paper: str = "a4") -> Figure:
    """The sheet as a figure of the paper's size."""
    if paper.lower() not in PAPERS:
        raise ValueError(f"“{paper}” is no paper known here. Use one of: {', '.join(PAPERS)}.")
    wide, high = PAPERS[paper.lower()]
    figure = Figure(figsize=(wide, high))
    page = figure.add_axes((0, 0, 1, 1))
    page.set_xlim(0, wide)
    page.set_ylim(high, 0)
    page.axis("off")
    top = _draw_head(page, wide)
    bottom = high - _MARGIN - 0.62
    column = (wide - 2 * _MARGIN - _GAP) * 0.52
    _draw_fields(page, sheet_groups(), _MARGIN, top, column, bottom)
    left = _MARGIN + column + _GAP
    sketch_high = 3.0
    sketch = figure.add_axes(
        (
            left / wide,
            1 - (top + sketch_high) / high,
            (wide - _MARGIN - left) / wide,
            sketch_high / high,
        )
    )
    _draw_sketch(sketch)
    _draw_wall(page, left, top + sketch_high + 0.15, wide - _MARGIN, bottom)
    _draw_foot(page, wide, high)
    return figure


def _draw_head(page: Axes, wide: float) -> float:
    """Title and steps; returns where the columns begin (inches from the top)."""
    page.text(_MARGIN, 0.62, "Survey of a raise", fontsize=15, fontweight="bold")
    page.text(
        wide - _MARGIN,
        0.62,
        "surveyed by ______________________   checked by ______________________",
        ha="right",
    )
    at = 0.85
    for number, step in enumerate(STEPS, start=1):
        lines = textwrap.wrap(f"{number}. {step}", 132)
        page.text(_MARGIN, at, "\n".join(lines), va="top", linespacing=1.3)
        at += 0.145 * len(lines) + 0.03
    return at + 0.1


def _draw_fields(
    page: Axes,
    groups: tuple[SheetGroup, ...],
    left: float,
    top: float,
    column: float,
    bottom: float,
) -> None:
    rows = sum(len(group.rows) for group in groups)
    step = (bottom - top) / (rows + 0.95 * len(groups) + 0.6)
    right = left + column
    value, within = right - 1.72, right - 0.55
    page.text(left, top + 0.1, "* may stay blank", color=_GREY)
    page.text(value, top + 0.1, "value and unit", color=_GREY)
    page.text(right, top + 0.1, "within ±", color=_GREY, ha="right")
    at = top + 0.6 * step
    for group in groups:
        at += 0.95 * step
        page.text(left, at - 0.25 * step, group.title, fontweight="bold", fontsize=8.5)
        for row in group.rows:
            at += step
            _draw_row(page, row, left, at - 0.25 * step, value, within, right)


def _draw_row(
    page: Axes, row: SheetRow, left: float, base: float, value: float, within: float, right: float
) -> None:
    page.text(left, base, row.letter, fontweight="bold")
    page.text(left + 0.2, base, row.label + " *" * row.optional)
    end = within - 0.08 if row.measured else right
    page.plot([value, end], [base + 0.03] * 2, color="black", linewidth=0.6)
    if row.measured:
        page.plot([within, right], [base + 0.03] * 2, color="black", linewidth=0.6)


def _draw_wall(page: Axes, left: float, top: float, right: float, bottom: float) -> None:
    page.text(
        left, top + 0.1, "Wall: its corners, from the foot up", fontweight="bold", fontsize=8.5
    )
    page.text(left, top + 0.27, "Unit of length: ________", color="black")
    head = top + 0.5
    columns = [left, left + 0.28, left + 0.98, left + 1.68, left + 2.2, right]
    for x, name in zip(columns, ("", "offset", "height", "within ±", "note"), strict=False):
        page.text(x + 0.04, head - 0.05, name, color=_GREY)
    step = (bottom - head) / WALL_ROWS
    for line in range(WALL_ROWS + 1):
        page.plot([left, right], [head + line * step] * 2, color="black", linewidth=0.5)
        if line < WALL_ROWS:
            page.text(left + 0.06, head + (line + 0.68) * step, str(line + 1), color=_GREY)
    for x in columns:
        page.plot([x, x], [head, bottom], color="black", linewidth=0.5)


def _draw_foot(page: Axes, wide: float, high: float) -> None:
    text = " ".join((*SHEET_CAUTIONS, f"Sheet made with ropecalc {__version__}."))
    page.text(
        _MARGIN,
        high - _MARGIN - 0.42,
        textwrap.fill(text, 148),
        va="top",
        fontsize=7,
        linespacing=1.3,
    )
    page.plot([_MARGIN, wide - _MARGIN], [high - _MARGIN - 0.5] * 2, color=_GREY, linewidth=0.6)


def _draw_sketch(axes: Axes) -> None:
    """A wall with an outcrop, the litter beside it and every length that has a letter."""
    axes.set_xlim(-2.2, 15.2)
    axes.set_ylim(-1.4, 15.4)
    axes.set_aspect("equal")
    axes.axis("off")
    wall = [(0, 0), (0, 6.5), (2.2, 8), (0.2, 9.6), (0.2, 12.4)]
    axes.add_patch(Polygon([*wall, (-2.2, 12.4), (-2.2, 0)], facecolor="#e2ddd4", edgecolor="none"))
    axes.plot(*zip(*wall, strict=True), color="black", linewidth=1.2)
    for number, (x, z) in enumerate(wall, start=1):
        axes.text(x - 0.25, z, str(number), ha="right", va="center")
        axes.plot(x, z, marker="o", color="black", markersize=2.5)
    axes.plot([-2.2, 15], [0, 0], color=_GREY, linewidth=0.8)
    axes.plot([0, 0], [-0.8, 14.6], color=_GREY, linewidth=0.7, linestyle="--")
    axes.text(0, -0.85, "datum", ha="center", va="top", color=_GREY)

    place, top, hub = (4.2, 9.4), (0.9, 14.2), (14.2, 0.5)
    axes.plot(*zip(top, place, strict=True), color="black", linewidth=1.2)
    axes.plot(*zip(place, hub, strict=True), color="black", linewidth=1.0, linestyle=(0, (5, 2)))
    body_top, body_low, half = 7.7, 6.6, 1.0
    body = [
        (place[0] + s * half, z)
        for s, z in ((-1, body_top), (1, body_top), (1, body_low), (-1, body_low))
    ]
    axes.add_patch(Polygon(body, facecolor="white", edgecolor="black", linewidth=1.1, zorder=3))
    for side in (-half, half):
        axes.plot([place[0], place[0] + side], [place[1], body_top], color="black", linewidth=0.7)

    for (x, z), name, dx, dz in (
        (top, "D, A", 0.35, 0.25),
        (hub, "B", 0.1, 0.5),
        (place, "P", 0.35, 0.2),
    ):
        axes.plot(x, z, marker="o", color="black", markersize=4, zorder=4)
        axes.text(x + dx, z + dz, name, fontweight="bold", fontsize=8.5)
    x = place[0] + half + 0.55
    _measure(axes, (x, place[1]), (x, body_top), "a", (0.25, 0))
    _measure(axes, (x, body_top), (x, body_low), "h", (0.25, 0))
    _measure(axes, (place[0] - half, body_low - 0.4), (place[0], body_low - 0.4), "w", (0, -0.45))
    _measure(axes, (2.2, 8.0), (place[0] - half, 8.0), "c", (-0.1, 0.45))
    _measure(axes, (0.2, 12.4), (2.05, 12.4), "r", (-0.25, 0.4))
    axes.plot([-2.2, 15], [11.6, 11.6], color=_GREY, linewidth=0.7, linestyle="-.")
    axes.text(14.9, 11.75, "E  guidance ends", ha="right", color="black")


def _measure(
    axes: Axes,
    start: tuple[float, float],
    end: tuple[float, float],
    name: str,
    shift: tuple[float, float],
) -> None:
    """A double arrow with its letter beside the middle."""
    axes.annotate(
        "",
        xy=start,
        xytext=end,
        arrowprops={"arrowstyle": "<->", "linewidth": 0.7, "shrinkA": 0, "shrinkB": 0},
    )
    axes.text(
        (start[0] + end[0]) / 2 + shift[0],
        (start[1] + end[1]) / 2 + shift[1],
        name,
        va="center",
        fontweight="bold",
        fontsize=8.5,
        zorder=6,
        bbox={"facecolor": "white", "edgecolor": "none", "pad": 0.6},
    )
