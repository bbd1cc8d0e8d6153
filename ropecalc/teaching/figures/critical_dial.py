"""Six rigs, each drawn where its tension reaches the same multiple of its load.

Above the rigs at their own critical geometry; below the multiple against the angle between the
strands, on a scale on which each further step is a doubling.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.anchors import two_leg_ratio
from ropecalc.mechanics.critical import (
    CriticalRig,
    critical_litter_angle,
    line_ratio,
    rig,
)
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import INK, SOFT_INK, Canvas
from ropecalc.teaching.drawing import (
    FAINT,
    GROUND_FACE,
    HAUL,
    LIMIT,
    LITTER_FACE,
    ROCK_EDGE,
    ROCK_FACE,
    TAG,
    THIN,
    TRACK,
    Arc,
    Area,
    Dot,
    Label,
    Labels,
    Mark,
    Notice,
    Place,
    Rope,
    Stroke,
)
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import LOCKED, Figure, Look, Outcome, Prediction, Table, Values
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

LEGS, THREE, REDIRECT, SPAN, TRACKED, HAULED = (
    "two equal legs",
    "three equal legs",
    "redirect",
    "level span",
    "tag or track line",
    "haul line against a tag line",
)
NAMES = (LEGS, THREE, REDIRECT, SPAN, TRACKED, HAULED)
_MEASURED = {
    LEGS: "between the legs",
    THREE: "of each leg from plumb",
    REDIRECT: "between the strands",
    SPAN: "sag of the span",
    TRACKED: "of the haul leg above level",
    HAULED: "of the haul leg above level",
}
_OF_WHAT = {REDIRECT: "the anchor against the rope", HAULED: "the haul line against the load"}
ONE_TWENTY = math.radians(120)


@dataclass(frozen=True)
class AtMultiple:
    """One rig at the multiple. ``geometry`` is an angle (rad) or the sag over the span, or None.

    None where the rig never reaches the multiple; ``why`` then says so.
    """

    name: str
    geometry: float | None
    why: str = ""


@dataclass(frozen=True)
class CriticalDial:
    """One setting worked out.

    ``litter_angle`` is the angle at the litter at which the line reaches the multiple (None if
    never), ``at_120`` the multiple of the line where the angle at the litter is 120°.
    """

    multiple: float
    depression: float
    rigs: tuple[AtMultiple, ...]
    litter_angle: float | None
    at_120: float


def compute(values: Values) -> CriticalDial:
    """Work out one setting of the controls (SI)."""
    multiple, depression = values["multiple"], values["depression"]
    rigs = tuple(_at(rig(name), multiple, depression) for name in NAMES)
    reached = rigs[NAMES.index(TRACKED)].geometry is not None
    return CriticalDial(
        multiple,
        depression,
        rigs,
        float(critical_litter_angle(multiple, depression)) if reached else None,
        _at_litter_angle(ONE_TWENTY, depression),
    )


def _at(one: CriticalRig, multiple: float, depression: float) -> AtMultiple:
    given = {one.ratio.result.name: multiple}
    if one.others:
        given["ground_depression"] = depression
    try:
        return AtMultiple(one.name, float(one.critical(**given)))
    except DomainError:
        more = _least(one.name, depression) >= multiple
        return AtMultiple(
            one.name, None, "this rig always carries more" if more else "it never carries so much"
        )


def _least(name: str, depression: float) -> float:
    """The smallest multiple that a rig can have."""
    least = {LEGS: 0.5, THREE: 1 / 3, REDIRECT: 0.0, SPAN: 0.5, TRACKED: 0.0}
    return least.get(name, 1.0 if depression > 0 else 0.0)


def _at_litter_angle(angle: float, depression: float) -> float:
    """The multiple of a tag or track line whose legs make ``angle`` at the litter."""
    return float(
        line_ratio(haul_elevation=math.pi - angle + depression, ground_depression=depression)
    )


# --- in words ---------------------------------------------------------------------------------


def _shown(at: AtMultiple, display: Display) -> str:
    if at.geometry is None:
        return "never"
    if at.name == SPAN:
        return f"{display.show(100 * at.geometry, Kind.RATIO, 3)} % of the span"
    return say(display, at.geometry, Kind.ANGLE)


def _multiple(display: Display, value: float) -> str:
    return display.show(value, Kind.RATIO, 3).rstrip("0").rstrip(".")


def summary(result: CriticalDial, display: Display) -> str:
    """Each rig's geometry at the multiple, and what 120° means at the litter."""
    found = "; ".join(
        f"{at.name}: "
        + (f"{_shown(at, display)} {_MEASURED[at.name]}" if at.geometry is not None else "never")
        for at in result.rigs
    ).replace(" of the span sag of the span", " of the span as sag")
    words = (
        f"Where the tension is {_multiple(display, result.multiple)} times the load (for the "
        f"redirect: the pull on the anchor that many times the rope's tension): {found}. Ground "
        f"leg {say(display, result.depression, Kind.ANGLE)} below level."
    )
    if result.litter_angle is not None:
        angle = say(display, result.litter_angle, Kind.ANGLE)
        words += f" The angle at the litter is {angle} then."
    share = _multiple(display, result.at_120)
    return (
        f"{words} With {say(display, ONE_TWENTY, Kind.ANGLE)} at the litter the line carries "
        f"{share} times the load: the haul line holds most of it."
    )


def table(result: CriticalDial, display: Display) -> Table:
    """Rig by rig at the multiple, at one and at two; no multiple twice."""
    fixed = [k for k in (1.0, 2.0) if abs(k - result.multiple) > 1e-9]
    multiples = [_multiple(display, k) for k in (result.multiple, *fixed)]
    rows: list[tuple[str, ...]] = [("rig", "measured", *(f"{k} times" for k in multiples))]
    for at in result.rigs:
        one = rig(at.name)
        others = (_shown(_at(one, k, result.depression), display) for k in fixed)
        rows.append((at.name, _MEASURED[at.name], _shown(at, display), *others))
    return tuple(rows)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 640
_WIDE, _TALL = 296, 168
_LEG = Stroke(HAUL.color, 2.4)


class CriticalDialPicture:
    """Six small rigs and the curve."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._minis = [
            _Mini(self.canvas, name, 16 + 306 * (place % 3), 432 - 206 * (place // 3))
            for place, name in enumerate(NAMES)
        ]
        self._curve = _Curve(self.canvas)

    def update(self, result: CriticalDial, look: Look) -> None:
        """Follow ``result``."""
        for mini, at in zip(self._minis, result.rigs, strict=True):
            mini.update(at, result.depression, look)
        self._curve.update(result, look)


class _Mini:
    """One rig in a frame from −1.75 to 1.75 across and −1 to 1 upward."""

    def __init__(self, canvas: Canvas, name: str, left: int, bottom: int) -> None:
        self._axes = axes = canvas.axes(left, bottom, _WIDE, _TALL)
        axes.set_xlim(-1.76, 1.76)
        axes.set_ylim(-1, 1)
        axes.set_xticks([])
        axes.set_yticks([])
        axes.set_title(name[0].upper() + name[1:], fontsize=10, loc="left")
        self._rock = Area(canvas, axes, ROCK_FACE, ROCK_EDGE, 1)
        self._ground = Area(canvas, axes, GROUND_FACE, ROCK_EDGE, 1)
        self._ropes = [Rope(canvas, axes, stroke) for stroke in (_LEG, _LEG, FAINT)]
        self._load = Rope(canvas, axes, Stroke(INK, 2.0), 4.2)
        self._box = Area(canvas, axes, LITTER_FACE, INK, 5)
        self._bolts = [Mark(canvas, axes, "o", "#e8e8e8", 7, 7) for _ in range(3)]
        self._knot = Dot(canvas, axes)
        self._arc = Arc(canvas, axes, THIN, 5.5)
        self._level = Rope(canvas, axes, FAINT, 3)
        self._labels = Labels(canvas, axes, 2, 9.5)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 30)
        self._draw: dict[str, Callable[[float, float], list[list[Place]]]] = {
            LEGS: self._two_legs,
            THREE: self._three_legs,
            REDIRECT: self._redirect,
            SPAN: self._span,
            TRACKED: self._line,
            HAULED: self._line,
        }

    def update(self, at: AtMultiple, depression: float, look: Look) -> None:
        """Follow ``at``."""
        self._hide()
        self._labels.write([])
        hidden = not look.numbers
        self._notice.say(
            ""
            if at.geometry is not None and not hidden
            else ("?" if hidden else at.why[0].upper() + at.why[1:] + ".")
        )
        if at.geometry is None or hidden:
            return
        if at.name == HAULED:
            self._ropes[0].restyle(HAUL)
            self._ropes[1].restyle(TAG)
        elif at.name == TRACKED:
            self._ropes[0].restyle(TRACK)
            self._ropes[1].restyle(TRACK)
        lines = self._draw[at.name](at.geometry, depression)
        if not look.forces:
            self._arc.hide()
            return
        words = _shown(at, look.display)
        place, towards = self._label_at
        self._labels.write([Label(words, place, INK, towards, True)], lines)

    def _hide(self) -> None:
        for rope in (*self._ropes, self._load, self._arc, self._level):
            rope.hide()
        for area in (self._rock, self._ground, self._box):
            area.hide()
        for bolt in self._bolts:
            bolt.hide()
        self._knot.hide()

    def _hang(self, knot: Place, drop: float = 0.45) -> None:
        """A load below ``knot``."""
        x, z = knot
        self._knot.place(x, z)
        self._load.place(knot, (x, z - drop))
        top, half = z - drop, 0.2
        self._box.place(
            (x - half, top), (x + half, top), (x + half, top - 0.22), (x - half, top - 0.22)
        )

    def _two_legs(self, angle: float, _: float) -> list[list[Place]]:
        half, knot = angle / 2, (0.0, -0.2)
        reach = min(1.0, 1.5 / max(math.sin(half), 0.1))
        ends = [(s * reach * math.sin(half), knot[1] + reach * math.cos(half)) for s in (-1, 1)]
        for rope, bolt, end in zip(self._ropes, self._bolts, ends, strict=False):
            rope.place(end, knot)
            bolt.place(*end)
        self._arc.sweep(knot, 0.4, math.pi / 2 - half, math.pi / 2 + half)
        self._hang(knot)
        self._label_at = ((0.0, knot[1] + 0.4), (0.0, 1.0))
        return [[end, knot] for end in ends]

    def _three_legs(self, lean: float, _: float) -> list[list[Place]]:
        """Seen from the front: two legs aside and back, the third towards the reader."""
        knot = (0.0, -0.2)
        side, up = 0.87 * math.sin(lean), math.cos(lean)
        ends = [(-side, knot[1] + up), (side, knot[1] + up), (0.0, knot[1] + up)]
        for rope, bolt, end in zip(self._ropes, self._bolts, ends, strict=True):
            rope.place(end, knot)
            bolt.place(*end)
        self._ropes[2].restyle(Stroke(HAUL.color, 1.6, (0, (4, 2))))
        self._hang(knot)
        seen = math.atan2(side, up)  # from plumb, as it looks from the front
        self._arc.sweep(knot, 0.4, math.pi / 2 - seen, math.pi / 2)
        out = (math.sin(seen / 2), math.cos(seen / 2))
        self._label_at = ((0.4 * out[0], knot[1] + 0.4 * out[1]), out)
        return [[end, knot] for end in ends]

    def _redirect(self, angle: float, _: float) -> list[list[Place]]:
        half, pulley = angle / 2, (0.0, 0.45)
        ends = [(s * 1.2 * math.sin(half), pulley[1] - 1.2 * math.cos(half)) for s in (-1, 1)]
        for rope, end in zip(self._ropes, ends, strict=False):
            rope.place(end, pulley)
        self._load.place(pulley, (0.0, 0.92))
        self._bolts[0].place(0.0, 0.92)
        self._knot.place(*pulley)
        self._arc.sweep(pulley, 0.4, -math.pi / 2 - half, -math.pi / 2 + half)
        self._label_at = ((0.0, pulley[1] - 0.4), (0.0, -1.0))
        return [[end, pulley] for end in ends]

    def _span(self, sag: float, _: float) -> list[list[Place]]:
        width = min(3.0, 1.1 / max(sag, 0.01))
        high = 0.6
        knot = (0.0, high - sag * width)
        ends = [(-width / 2, high), (width / 2, high)]
        for rope, bolt, end in zip(self._ropes, self._bolts, ends, strict=False):
            rope.place(end, knot)
            bolt.place(*end)
        self._level.place(*ends)
        self._hang(knot, 0.3)
        self._label_at = ((0.0, high), (0.0, 1.0))
        return [[end, knot] for end in ends]

    def _line(self, elevation: float, depression: float) -> list[list[Place]]:
        """The litter off a wall at the left; both legs as steep as they are."""
        litter = (-0.25, -0.1)
        up = (-math.cos(elevation), math.sin(elevation))
        down = (math.cos(depression), -math.sin(depression))
        top = _until(litter, up, (-1.3, 0.85))
        hub = _until(litter, down, (1.6, -0.9))
        self._rock.place((-1.9, -1.1), (-1.45, -1.1), (-1.45, 0.55), (-1.9, 0.55))
        self._ropes[0].place(top, litter)
        self._ropes[1].place(litter, hub)
        self._bolts[0].place(*top)
        self._bolts[1].place(*hub)
        self._hang(litter, 0.3)
        self._level.place((litter[0] - 0.8, litter[1]), litter)
        self._arc.sweep(litter, 0.5, math.pi - elevation, math.pi)
        middle = math.pi - elevation / 2
        at = (litter[0] + 0.5 * math.cos(middle), litter[1] + 0.5 * math.sin(middle))
        self._label_at = (at, (-1.0, 0.4))
        return [[top, litter], [litter, hub]]


def _until(start: Place, way: Place, corner: Place) -> Place:
    """Along ``way`` from ``start`` to the first of two sides that meet in ``corner``."""
    reaches = [
        (corner[i] - start[i]) / way[i] for i in (0, 1) if (corner[i] - start[i]) * way[i] > 1e-9
    ]
    reach = min(reaches)
    return (start[0] + reach * way[0], start[1] + reach * way[1])


_LOWEST, _HIGHEST = 0.1, 10.0


class _Curve:
    """The multiple against the angle between the two strands at the load."""

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.axes(64, 40, 860, 152)
        axes.set_xlim(0, 180)
        axes.set_yscale("log")
        axes.set_ylim(_LOWEST, _HIGHEST)
        axes.set_yticks([0.1, 0.5, 1, 2, 5, 10], ["0.1", "0.5", "1", "2", "5", "10"])
        axes.minorticks_off()
        axes.set_xticks(range(0, 181, 30), [f"{d}°" for d in range(0, 181, 30)])
        axes.set_xlabel("angle between the two strands at the load", fontsize=9, labelpad=1)
        axes.set_title("Times the load, step by step", fontsize=10.5, loc="left")
        axes.grid(True, color="#e3e6ea", lw=0.8)
        self._legs = Rope(canvas, axes, _LEG)
        self._track = Rope(canvas, axes, TRACK)
        self._level = Rope(canvas, axes, FAINT, 3)
        self._at_120 = Rope(canvas, axes, LIMIT, 3)
        self._dots = [Mark(canvas, axes, "o", LITTER_FACE, 8, 7) for _ in range(3)]
        self._labels = Labels(canvas, axes, 5, 9)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 60)

    def update(self, result: CriticalDial, look: Look) -> None:
        """Follow ``result``."""
        for rope in (self._legs, self._track, self._level, self._at_120):
            rope.hide()
        for dot in self._dots:
            dot.hide()
        self._labels.write([])
        self._notice.say("" if look.numbers else LOCKED)
        if not look.numbers:
            return
        angles = np.linspace(1, 179, 240)
        legs = two_leg_ratio.masked(leg_angle=np.radians(angles))
        track = line_ratio.masked(
            haul_elevation=np.pi - np.radians(angles) + result.depression,
            ground_depression=np.full(angles.shape, result.depression),
        )
        self._legs.trace(angles, legs.filled(np.nan))
        self._track.trace(angles, track.filled(np.nan))
        self._level.place((0, result.multiple), (180, result.multiple))
        self._at_120.place((120, _LOWEST), (120, _HIGHEST))
        curve = [(float(a), float(k)) for a, k in zip(angles, legs, strict=True)]
        other = [
            (float(a), float(k))
            for a, k in zip(angles, track, strict=True)
            if k is not np.ma.masked
        ]
        labels = [
            Label("legs, span", curve[70], _LEG.color, (0, 1), True),
            Label("120°", (120.0, 0.14), LIMIT.color, (-1, 0)),
        ]
        inside = [p for p in other if _LOWEST < p[1] < _HIGHEST]
        if inside:
            labels.append(
                Label("tag or track line", inside[len(inside) // 3], TRACK.color, (1, -1), True)
            )
        marks: list[Place] = [(120.0, result.at_120)]
        legs_at = result.rigs[0].geometry
        if legs_at is not None:
            marks.append((math.degrees(legs_at), result.multiple))
        if result.litter_angle is not None:
            marks.append((math.degrees(result.litter_angle), result.multiple))
        for dot, place in zip(self._dots, marks, strict=False):
            if _LOWEST < place[1] < _HIGHEST:
                dot.place(*place)
        if look.forces:
            share = look.display.show(result.at_120, Kind.RATIO)
            words = f"{share} of the load"
            labels.append(Label(words, marks[0], SOFT_INK, (-1, -0.4), True))
        self._labels.write(labels, [curve[::12], inside[::12] or [(0.0, 1.0), (0.0, 1.0)]])


# --- the figure -------------------------------------------------------------------------------

_DEGREE = math.radians(1)
_LOAD = float(weight(mass=200.0))
_START, _MOST = 10 * _DEGREE, 28 * _DEGREE  # beyond 30° no haul leg makes 120° at the litter

CONTROLS = (
    Control("multiple", "Times the load", Kind.RATIO, 0.35, 5.0, 0.05, 1.0),
    Control("depression", "Ground leg, below level", Kind.ANGLE, 0.0, _MOST, _DEGREE, _START),
)


def _outcome(display: Display) -> Outcome:
    """What a track line carries where it shows 120° at the litter, at the figure's start."""
    start: Mapping[str, Any] = {control.key: control.default for control in CONTROLS}
    share = compute(start).at_120
    depression = say(display, start["depression"], Kind.ANGLE)
    return Outcome(
        right=0 if share < 0.75 else 1 if share < 1.5 else 2,
        sentence=(
            f"With the ground leg {depression} below level it carries "
            f"{_multiple(display, share)} times the load, "
            f"{say(display, share * _LOAD, Kind.FORCE)} of {say(display, _LOAD, Kind.FORCE)}."
        ),
    )


CRITICAL_DIAL = Figure(
    key="critical-dial",
    title="One multiple, six geometries",
    alternative=(
        "Six small rigs, each drawn where its tension is the chosen multiple of its load, and that "
        "multiple against the angle at the load"
    ),
    prediction=Prediction(
        question=(
            "a track line guides the litter, and its two legs open to 120° at the litter. The haul "
            "line is on. The track line carries …"
        ),
        choices=("far less than the load", "about the load", "far more than the load"),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=CriticalDialPicture,
    summary=summary,
    table=table,
    cautions=(
        "A critical angle belongs to one rig and one multiple. Which multiple matters is for your "
        "limits and your authority to say.",
        *cautions.EVERY_RESULT,
    ),
    forces_label="Show the angles",
    reading=(
        "Every rig above is drawn true to its angles. Below, the dots show where the chosen "
        "multiple is reached, and what the track line carries at 120°.",
    ),
)
