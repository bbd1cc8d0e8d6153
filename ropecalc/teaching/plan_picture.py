"""A raise plan drawn to scale: the cross-section, a close view, and the effort by height."""

import io
import textwrap
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import matplotlib as mpl
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Polygon

from ropecalc import __version__, cautions
from ropecalc.mechanics.holding import Method, Point
from ropecalc.planning.raise_plan import RaisePlan, Station
from ropecalc.planning.report import EFFORT, SENSITIVE_MARK, Wording
from ropecalc.units import Display, Kind

FORMATS = ("png", "svg", "pdf")
_ROCK, _EDGE, _HAUL, _TRACK, _BODY, _PATH, _BAD = (
    "#d8d2c8",
    "#6b6358",
    "#0060a8",
    "#b34700",
    "#222222",
    "#00705a",
    "#b00020",
)
STYLE: Any = {
    "font.size": 9.0,
    "font.family": "DejaVu Sans",
    "svg.hashsalt": "ropecalc",
    "text.parse_math": False,  # a $ in what the surveyor wrote is a $
}
_INCHES_WIDE = 10.0
_SECTION = (0.62, 6.0)
"""Left edge and width of the cross-section on the page, in inches."""
_EFFORT = (7.35, 2.45)
"""Left edge and width of the graph of effort."""
_CLOSE = (0.43, 0.38)
"""Width and height of the close view, as parts of the cross-section's."""
_BELOW, _ABOVE = 1.25, 0.62
_SHORTEST, _TALLEST = 3.2, 7.5


def picture_format(path: str | Path) -> str:
    """The picture format that the file's ending asks for. Raises ValueError in words."""
    ending = Path(path).suffix.lower().removeprefix(".")
    if ending not in FORMATS:
        raise ValueError(
            f"{path}: a picture is written as .png, .svg or .pdf. End the file's name in one."
        )
    return ending


def picture(plan: RaisePlan, display: Display, file_format: str, dpi: int = 150) -> bytes:
    """The plan's picture as the bytes of a PNG, SVG or PDF file."""
    out = io.BytesIO()
    stamp: dict[str, dict[str, None]] = {"svg": {"Date": None}, "pdf": {"CreationDate": None}}
    with mpl.rc_context(STYLE):
        figure = draw_plan(plan, display)
        figure.savefig(out, format=file_format, dpi=dpi, metadata=stamp.get(file_format))
    return out.getvalue()


def draw_plan(plan: RaisePlan, display: Display) -> Figure:
    """The plan as a figure; the cross-section has one scale for widths and heights."""
    words = Wording(display)
    left, right, bottom, top = _extent(plan)
    tall = min(max(_SECTION[1] * (top - bottom) / (right - left), _SHORTEST), _TALLEST)
    scale = min(_SECTION[1] / (right - left), tall / (top - bottom))
    right, top = left + _SECTION[1] / scale, bottom + tall / scale
    page = _BELOW + tall + _ABOVE
    figure = Figure(figsize=(_INCHES_WIDE, page))

    def place(across: tuple[float, float]) -> Axes:
        return figure.add_axes(
            (across[0] / _INCHES_WIDE, _BELOW / page, across[1] / _INCHES_WIDE, tall / page)
        )

    factor = display.unit(Kind.LENGTH).factor
    section, effort = place(_SECTION), place(_EFFORT)
    for axes in (section, effort):
        axes.set_ylim(bottom / factor, top / factor)
    section.set_xlim(left / factor, right / factor)
    dotted = "dotted: the body's clearance"
    if plan.method is not Method.ATTENDANT:
        dotted += "; and the straight line from directional to hub"
    section.set_xlabel(f"offset ({words.metre})\n{dotted}")
    section.set_ylabel(f"height ({words.metre})")
    _draw_section(section, plan, factor, left, labels=True)
    _draw_close(figure, section, plan, factor, words)
    _draw_effort(effort, plan, display, words)
    figure.text(
        _SECTION[0] / _INCHES_WIDE,
        1 - 0.3 / page,
        f"{plan.site.name}: raise guided by {plan.method.value}",
        fontsize=12,
        fontweight="bold",
        parse_math=False,
    )
    small = (
        f"{cautions.STATIC} Made with ropecalc {__version__} from {Path(plan.site.source).name}. "
        "To be checked on site by a qualified person before use."
    )
    figure.text(
        _SECTION[0] / _INCHES_WIDE,
        0.1 / page,
        textwrap.fill(small, 150),
        fontsize=8,
        color="#333333",
        linespacing=1.35,
        parse_math=False,
    )
    return figure


def _extent(plan: RaisePlan) -> tuple[float, float, float, float]:
    """Left, right, bottom and top of the cross-section (m), with room for labels."""
    site = plan.site
    points = [site.rig.haul_directional, site.rig.track_directional]
    if plan.method is not Method.ATTENDANT:
        points.append(site.rig.hub)
    points += [Point(p.offset, p.height) for p in site.wall.points]
    points += [Point(min(s.offset, site.rig.hub.x), s.height) for s in plan.stations]
    wide = max(p.x for p in points) - min(p.x for p in points)
    high = max(p.z for p in points) - min(p.z for p in points)
    return (
        min(p.x for p in points) - 0.08 * wide - 0.5,
        max(p.x for p in points) + 0.06 * wide,
        min(p.z for p in points) - 0.05 * high,
        max(p.z for p in points) + 0.08 * high,
    )


def _draw_section(axes: Axes, plan: RaisePlan, factor: float, left: float, labels: bool) -> None:
    site = plan.site

    def line(points: Sequence[Point], **how: Any) -> None:
        axes.plot([p.x / factor for p in points], [p.z / factor for p in points], **how)

    wall = site.wall.points
    rock = [(p.offset / factor, p.height / factor) for p in wall]
    back = [(left / factor, wall[-1].height / factor), (left / factor, wall[0].height / factor)]
    axes.add_patch(Polygon([*rock, *back], facecolor=_ROCK, edgecolor="none", zorder=0))
    axes.plot(*zip(*rock, strict=True), color=_EDGE, linewidth=1.6, zorder=1)
    for edge in site.edges:
        line([edge.point], marker="s", markersize=7, markerfacecolor="none", color=_HAUL, zorder=5)

    rig, method = site.rig, plan.method
    if method is not Method.ATTENDANT:
        top = rig.track_directional if method is Method.TRACK else rig.haul_directional
        line([top, rig.hub], color="#777777", linewidth=0.9, linestyle=(0, (2, 3)), zorder=1)
    line([Point(p.offset, p.height) for p in plan.trace], color=_PATH, linewidth=1.2, zorder=3)
    stops = [Point(s.offset, s.height) for s in plan.stations]
    line(stops, color=_PATH, marker="o", markersize=3.2, linewidth=0, zorder=3)
    bad = [Point(s.offset, s.height) for s in plan.stations if not s.way(method).held]
    if bad:
        line(bad, color=_BAD, marker="x", markersize=8, linewidth=0, markeredgewidth=2, zorder=6)
    shown = plan.governing or plan.stations[0]
    _draw_lines(axes, plan, shown, factor)
    _draw_body(axes, plan, shown, factor)
    if labels:
        _label_section(axes, plan, factor)


def _draw_lines(axes: Axes, plan: RaisePlan, station: Station, factor: float) -> None:
    rig, at = plan.site.rig, Point(station.offset, station.height)
    haul = [at, *(edge.point for edge, _ in station.haul.bends), rig.haul_directional]

    def rope(points: Sequence[Point], colour: str, **how: Any) -> None:
        axes.plot(
            [p.x / factor for p in points],
            [p.z / factor for p in points],
            color=colour,
            zorder=4,
            **how,
        )

    track = plan.method is Method.TRACK
    # Where haul and track line share their way, the wider line shows on both sides of the other.
    rope(haul, _HAUL, linewidth=4.2 if track else 2.0)
    if track:
        rope([rig.track_directional, at, rig.hub], _TRACK, linewidth=1.6, linestyle=(0, (6, 2)))
    elif plan.method is Method.TAG:
        rope([at, rig.hub], _TRACK, linewidth=1.6, linestyle=(0, (6, 2)))


def _draw_body(axes: Axes, plan: RaisePlan, station: Station, factor: float) -> None:
    """The bridle and the body, with its clearance as a dotted line on the wall's side."""
    litter = plan.site.litter
    x, z, w = station.offset, station.height, litter.half_width
    upper, lower = z - litter.bridle, z - litter.reach_down
    body = [(x - w, upper), (x + w, upper), (x + w, lower), (x - w, lower)]
    axes.add_patch(
        Polygon(
            [(a / factor, b / factor) for a, b in body],
            facecolor="#ffffff",
            edgecolor=_BODY,
            linewidth=1.2,
            zorder=5,
        )
    )
    for side in (-w, w):
        axes.plot(
            [x / factor, (x + side) / factor],
            [z / factor, upper / factor],
            color=_BODY,
            linewidth=0.9,
            zorder=5,
        )
    inner = [(x, z), (x - w, upper), (x - w, lower)]
    axes.plot(
        [(a - litter.clearance) / factor for a, _ in inner],
        [b / factor for _, b in inner],
        color=_BODY,
        linewidth=0.9,
        linestyle=":",
        zorder=5,
    )


def _label_section(axes: Axes, plan: RaisePlan, factor: float) -> None:
    rig, lift = plan.site.rig, plan.site.lift
    same = rig.track_directional == rig.haul_directional
    names = [(rig.haul_directional, "haul directional" if not same else "directionals", 8, 4)]
    if not same and plan.method is Method.TRACK:
        below = rig.track_directional.z <= rig.haul_directional.z
        names.append((rig.track_directional, "track directional", 8, -10 if below else 6))
    if plan.method is not Method.ATTENDANT:
        names.append((rig.hub, "hub", 0, 9))
    for point, name, right, up in names:
        axes.plot(point.x / factor, point.z / factor, marker="o", color=_BODY, markersize=5)
        axes.annotate(
            name,
            (point.x / factor, point.z / factor),
            xytext=(right, up),
            textcoords="offset points",
            ha="center" if name == "hub" else "left",
        )
    axes.axhline(lift.guidance_ends / factor, color="#777777", linewidth=0.8, linestyle="-.")
    axes.annotate(
        "guidance ends",
        (0.28, lift.guidance_ends / factor),
        xycoords=("axes fraction", "data"),
        xytext=(0, 3),
        textcoords="offset points",
        fontsize=8,
        color="#444444",
    )
    start = plan.stations[0]
    axes.annotate(
        "start",
        (start.offset / factor, start.height / factor),
        xytext=(7, -3),
        textcoords="offset points",
        color=_PATH,
    )


def _draw_close(
    figure: Figure, section: Axes, plan: RaisePlan, factor: float, words: Wording
) -> None:
    """A close view of the shown station, in the empty corner above the lines."""
    shown = plan.governing or plan.stations[0]
    litter = plan.site.litter
    close = section.inset_axes(_close_place(section, plan, factor))
    box = section.get_position()
    wide, high = figure.get_size_inches()
    shape = (_CLOSE[0] * box.width * wide) / (_CLOSE[1] * box.height * high)
    half = max(1.5 * litter.reach_down, litter.half_width + litter.clearance + 1.0)
    middle = shown.height - litter.reach_down / 2
    x = shown.offset - 0.25 * half * shape
    close.set_xlim((x - half * shape) / factor, (x + half * shape) / factor)
    close.set_ylim((middle - half) / factor, (middle + half) / factor)
    left = min(x - half * shape, float(plan.site.wall.offsets.min())) - 1.0
    _draw_section(close, plan, factor, left, labels=False)
    close.tick_params(labelsize=7.5)
    name = "Where it takes most" if plan.governing else "At the start"
    close.set_title(
        f"{name}: {words.height(shown.height)} {words.metre}", fontsize=9, loc="left", pad=3
    )
    close.annotate(
        "haul line",
        xy=(0.03, 0.94),
        xycoords="axes fraction",
        color=_HAUL,
        fontsize=8,
        va="top",
    )
    if plan.method is not Method.ATTENDANT:
        close.annotate(
            plan.method.value,
            xy=(0.97, 0.05),
            xycoords="axes fraction",
            color=_TRACK,
            fontsize=8,
            ha="right",
        )


def _close_place(
    section: Axes, plan: RaisePlan, factor: float
) -> tuple[float, float, float, float]:
    """Above the line to the hub, or below it where the hub lies high."""
    bottom, top = section.get_ylim()
    high = plan.method is not Method.ATTENDANT and (
        plan.site.rig.hub.z / factor > (bottom + top) / 2
    )
    return (0.55, 0.1 if high else 0.5, *_CLOSE)


def _draw_effort(axes: Axes, plan: RaisePlan, display: Display, words: Wording) -> None:
    """What holds the litter off, by height, and what it would be 0.2 m further out."""
    factor, force = display.unit(Kind.LENGTH).factor, display.unit(Kind.FORCE).factor
    heights = [place.height / factor for place in plan.trace]
    effort = [_in_unit(place.effort, force) for place in plan.trace]
    further = [_in_unit(place.effort_further, force) for place in plan.trace]
    axes.fill_betweenx(heights, effort, further, color=_TRACK, alpha=0.2, linewidth=0)
    axes.plot(effort, heights, color=_TRACK, linewidth=1.6)
    stops = [s.way(plan.method).effort for s in plan.stations]
    axes.plot(
        [_in_unit(stop, force) for stop in stops],
        [s.height / factor for s in plan.stations],
        color=_TRACK,
        marker="o",
        markersize=3.2,
        linewidth=0,
    )
    limit = plan.summary().comparisons[0].limit
    if limit is not None:
        axes.axvline(limit / force, color=_BAD, linewidth=1.2, linestyle="--")
        axes.annotate(
            "limit you entered",
            (limit / force, 0.98),
            xycoords=("data", "axes fraction"),
            xytext=(-3, 0),
            textcoords="offset points",
            rotation=90,
            ha="right",
            va="top",
            fontsize=8,
            color=_BAD,
        )
    axes.set_xlim(left=0)
    axes.set_xlabel(
        f"{EFFORT[plan.method]} ({words.newton})\nshaded: up to {words.shift} further out"
    )
    axes.grid(color="#dddddd", linewidth=0.6)
    axes.set_axisbelow(True)
    bad = [s.height / factor for s in plan.stations if not s.way(plan.method).held]
    if bad:
        axes.plot(
            [0.03] * len(bad),
            bad,
            transform=axes.get_yaxis_transform(),
            color=_BAD,
            marker="x",
            markersize=7,
            markeredgewidth=2,
            linewidth=0,
        )
        axes.set_title("× not held", fontsize=9, color=_BAD, loc="left")
    if plan.governing is not None:
        way = plan.governing.way(plan.method)
        assert way.effort is not None
        text = SENSITIVE_MARK if way.sensitive else words.force_with_unit(way.effort)
        axes.annotate(
            text,
            (way.effort / force, plan.governing.height / factor),
            xytext=(0, 8),
            textcoords="offset points",
            ha="right" if way.effort / force > axes.get_xlim()[1] / 2 else "left",
            fontweight="bold",
            color=_TRACK,
        )


def _in_unit(newtons: float | None, unit: float) -> float:
    return float("nan") if newtons is None else newtons / unit


__all__ = ["FORMATS", "draw_plan", "picture", "picture_format"]
