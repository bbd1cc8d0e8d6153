"""The series tensioner from above: follow one rope from the device to its tied-off end.

Strands are drawn as wide as they pull. Beside the plan stands the memory: the near line's tension
against the far line's while rope is moved back and forth, a loop. Below, what each line and each
part of the hub carries, and what a further line would still be worth.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from ropecalc import cautions
from ropecalc.mechanics import tensioner_memory
from ropecalc.mechanics.friction import Band, Direction
from ropecalc.mechanics.tensioner import (
    NO_BACKUP,
    LostLine,
    effective_lines,
    line_name,
    lines_ceiling,
    lost_line,
    series_tensioner,
)
from ropecalc.mechanics.tensioner_memory import Path, Ropes, moved_back
from ropecalc.teaching.canvas import INK, Canvas
from ropecalc.teaching.drawing import (
    FAINT,
    GROUND_FACE,
    HAUL,
    LIMIT,
    THIN,
    TRACK,
    WARNING,
    Area,
    Arrow,
    Label,
    Labels,
    Mark,
    Notice,
    Place,
    Rope,
    ScaleBar,
    Stroke,
)
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import (
    LOCKED,
    Choice,
    Figure,
    Look,
    Outcome,
    Prediction,
    Table,
    Values,
)
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

MOST_LINES = 4
LONGEST_BACK = 1.5
"""The furthest that rope can be moved back with the slider (m); the loop is drawn so far."""
IN, OUT = "taking in", "letting out"
EASED, RETAKEN = "taken in, then let out", "let out, then taken in"
UNKNOWN = "held, nobody knows"
_MOVING = {IN: Direction.HAULING, OUT: Direction.LOWERING, UNKNOWN: Direction.HOLDING}
_FIRST = {EASED: Direction.HAULING, RETAKEN: Direction.LOWERING}
_WORTH_OF = range(1, 7)


@dataclass(frozen=True)
class Tensioned:
    """One setting worked out, everything counted from the device; forces in N.

    ``strands``, ``lines``, ``pulleys`` (at the hub) and ``total`` are bands, one value each unless
    the history is unknown. ``path`` is the way back after the first move, as far as the slider
    goes, and ``here`` the part of it that was gone. ``lost`` says what a lost line sets free
    (None: no line lost, or the only one), ``cut`` which line that is. ``worth`` counts 1, 2, ...
    lines in near lines' worth.
    """

    history: str
    count: int
    efficiency: float
    device_pull: float
    back: float
    play: float
    grab: float
    cut: int | None
    lost: LostLine | None
    strands: tuple[Band, ...]
    shares: tuple[Band, ...]
    path: Path | None
    here: Path | None
    worth: tuple[float, ...]
    ceiling: float

    @property
    def slack(self) -> bool:
        """Whether nothing is left in the lines."""
        return self.cut is not None or (self.here is not None and self.here.slack)

    @property
    def lines(self) -> tuple[Band, ...]:
        """What each track line carries."""
        pairs = zip(self.strands[0::2], self.strands[1::2], strict=True)
        return tuple(_added(one, other) for one, other in pairs)

    @property
    def pulleys(self) -> tuple[Band, ...]:
        """What each hub pulley carries, from the device on."""
        pairs = zip(self.strands[1:-1:2], self.strands[2::2], strict=True)
        return tuple(_added(one, other) for one, other in pairs)

    @property
    def total(self) -> Band:
        """All lines together, which is the pull on the hub."""
        return _added(*self.lines)

    @property
    def moving(self) -> int:
        """1 while rope runs to the device, -1 while it runs away from it, 0 when held."""
        return {IN: 1, OUT: -1}.get(self.history, 0)

    @property
    def equal_after(self) -> float | None:
        """How far rope must be moved back until near and far line carry the same (m), if at all."""
        if self.path is None or self.count < 2:
            return None
        gap = self.path.lines[:, 0] - self.path.lines[:, -1]
        turn = np.flatnonzero(gap[:-1] * gap[1:] < 0)
        if not len(turn):
            return None
        i = int(turn[0])
        step = self.path.moved[i + 1] - self.path.moved[i]
        return float(self.path.moved[i] + step * gap[i] / (gap[i] - gap[i + 1]))


def _added(*parts: Band) -> Band:
    return Band(sum(p.low for p in parts), sum(p.high for p in parts))


def compute(values: Values) -> Tensioned:
    """Work out one setting of the controls (SI)."""
    history, count = values["history"], round(values["lines"])
    efficiency, pull = values["efficiency"], values["device_pull"]
    path = here = None
    if history in _FIRST:
        ropes = Ropes(count, efficiency, values["stiffness"], values["line_length"], values["play"])
        first = _FIRST[history]
        path = moved_back(ropes, first=first, device_pull=pull, moved=LONGEST_BACK)
        here = moved_back(ropes, first=first, device_pull=pull, moved=values["back"])
        strands = tuple(Band(float(s), float(s)) for s in here.end)
        shares = _shares(here)
    else:
        found = series_tensioner(
            _MOVING[history], device_pull=pull, lines=count, efficiency=efficiency
        )
        strands, shares = found.strands, found.shares
    cut = {"near": 1, "far": count}.get(values["cut"])
    return Tensioned(
        history=history,
        count=count,
        efficiency=efficiency,
        device_pull=pull,
        back=values["back"],
        play=values["play"],
        grab=values["grab"],
        cut=cut,
        lost=lost_line(count, play=values["play"]) if cut and count > 1 else None,
        strands=strands,
        shares=shares,
        path=path,
        here=here,
        worth=tuple(
            float(effective_lines(efficiency=efficiency, lines=float(n))) for n in _WORTH_OF
        ),
        ceiling=float(lines_ceiling(efficiency=efficiency)),
    )


def _shares(path: Path) -> tuple[Band, ...]:
    lines = path.lines[-1]
    total = float(lines.sum())
    if total <= 0 or path.slack:
        return tuple(Band(0.0, 0.0) for _ in lines)
    return tuple(Band(float(t) / total, float(t) / total) for t in lines)


# --- in words ---------------------------------------------------------------------------------


def _shows(display: Display, kind: Kind, figures: int = 3) -> Callable[[float], str]:
    return lambda si: say(display, si, kind, figures)


def _band(band: Band, display: Display, kind: Kind = Kind.FORCE, figures: int = 3) -> str:
    low, high = say(display, band.low, kind, figures), say(display, band.high, kind, figures)
    return low if low == high else f"{low} to {high}"


def _percent(share: Band) -> str:
    low, high = f"{100 * share.low:.0f}", f"{100 * share.high:.0f}"
    return f"{low} %" if low == high else f"{low} to {high} %"


def _counted(count: int) -> str:
    return "one track line" if count == 1 else f"{count} track lines in series"


def _opening(result: Tensioned, display: Display) -> str:
    force, length = _shows(display, Kind.FORCE), _shows(display, Kind.LENGTH)
    pull, back = force(result.device_pull), length(result.back)
    what = {
        IN: f"taking in with {pull} at the device",
        OUT: f"letting out with {pull} at the device",
        EASED: f"taken in until the device held {pull}, then {back} of rope let out",
        RETAKEN: f"let out until the device held {pull}, then {back} of rope taken in",
        UNKNOWN: f"held with {pull} at the device, and nobody knows what moved last",
    }[result.history]
    counted = _counted(result.count)
    return (
        f"{counted[:1].upper()}{counted[1:]}, sheave efficiency "
        f"{display.show(result.efficiency, Kind.RATIO, 2)}, travelling pulleys "
        f"{length(result.play)} from the hub: {what}."
    )


def summary(result: Tensioned, display: Display) -> str:
    """The setting and its numbers in plain sentences."""
    opening = _opening(result, display)
    if result.cut is not None:
        return f"{opening} {_loss(result, display)}"
    if result.slack:
        return f"{opening} All lines are slack: so much rope was let out that nothing holds."
    parts = [
        f"{line_name(i, result.count)} carries {_band(t, display)}" for i, t in _numbered(result)
    ]
    named = ", ".join(parts)
    words = f"{opening} {named[:1].upper()}{named[1:]}. The hub carries all of it"
    if result.count > 1:
        worth = Band(
            1 / max(s.high for s in result.shares), 1 / max(max(s.low for s in result.shares), 1e-9)
        )
        worth = Band(worth.low, min(worth.high, float(result.count)))
        words += (
            f", {_band(result.total, display)}, which is "
            f"{_band(worth, display, Kind.RATIO, 2)} times the most loaded line."
        )
    else:
        words += f", {_band(result.total, display)}."
    words += f" The device holds {_band(result.strands[0], display)}, "
    words += f"the tied-off end {_band(result.strands[-1], display)}."
    words += _remembers(result, display) + _grab_words(result, display)
    return words + (
        f" For each length that every line comes in, {2 * result.count} times as much rope runs "
        f"through the device. No number of lines is worth more than "
        f"{display.show(result.ceiling, Kind.RATIO, 2)} near lines."
    )


def _numbered(result: Tensioned) -> list[tuple[int, Band]]:
    return list(enumerate(result.lines, 1))


def _remembers(result: Tensioned, display: Display) -> str:
    after = result.equal_after
    if result.path is None or result.count < 2:
        return ""
    way = "let out" if result.history == EASED else "taken in"
    if after is None:
        return " Near line and far line do not come to carry the same within this slider's range."
    return (
        f" Near line and far line carry the same once about {say(display, after, Kind.LENGTH, 2)} "
        f"of rope has been {way}; further on, the imbalance turns round."
    )


def _grab_words(result: Tensioned, display: Display) -> str:
    most = max(t.high for t in result.lines)
    limit = say(display, result.grab, Kind.FORCE)
    if most >= result.grab:
        return (
            f" A grab that slips at {limit} does not hold that: the most loaded line slips until "
            "it carries no more."
        )
    return f" A grab that slips at {limit} holds in every line."


def _loss(result: Tensioned, display: Display) -> str:
    length = _shows(display, Kind.LENGTH)
    if result.lost is None:
        return "The only line is lost: nothing holds the litter off any more."
    name = line_name(result.cut or 1, result.count)
    words = (
        f"{name[:1].upper()}{name[1:]} is lost. Its pulley runs to the hub and sets "
        f"{length(result.lost.runs_in)} of tensioner rope free."
    )
    if result.count == 2:
        words += f" The other line gains {length(result.lost.slack)} of slack"
    else:
        words += (
            f" Each other line gains {length(result.lost.slack)} of slack if they share the rope, "
            f"and a single one up to {length(result.lost.most)} if the rest take nothing"
        )
    return (
        f"{words}: all lines go slack until the litter has swung in so far. Lines in series do "
        "not back each other up."
    )


def table(result: Tensioned, display: Display) -> Table:
    """Every part with its load and, for lines, its share."""
    if result.slack:
        return ()
    rows = [("Part", "Load", "Share of all lines")]
    for (number, tension), share in zip(_numbered(result), result.shares, strict=True):
        name = line_name(number, result.count)
        rows.append((name[:1].upper() + name[1:], _band(tension, display), _percent(share)))
    rows.append(("Device", _band(result.strands[0], display), ""))
    rows += [(f"Hub pulley {i}", _band(p, display), "") for i, p in enumerate(result.pulleys, 1)]
    rows.append(("Tied-off end", _band(result.strands[-1], display), ""))
    rows.append(("Hub, all together", _band(result.total, display), ""))
    return tuple(rows)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 640
_TENSIONER = Stroke(HAUL.color, 2.0)
_THINNEST, _WIDEST = 1.0, 8.0
_APART = 0.27  # of a row, from a line to each strand of its pulley
_SCALES = (4.0, 8.0, 16.0, 32.0)  # m between hub and the left end of the plan's pulleys
_BAR, _BAND_FACE = "#c2520b", "#f0c9ac"
_HUB_BAR, _HUB_BAND = "#0a3f7a", "#b7c9de"


class TensionerPicture:
    """The artists of the figure."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._plan = _Plan(self.canvas)
        self._memory = _Memory(self.canvas)
        self._bars = _Bars(self.canvas)
        self._worth = _Worth(self.canvas)

    def update(self, result: Tensioned, look: Look) -> None:
        """Follow ``result``."""
        self._plan.update(result, look)
        self._memory.update(result, look)
        self._bars.update(result, look)
        self._worth.update(result, look)


class _Plan:
    """Hub on the right, lines to the litter on the left, near line at the bottom."""

    _ROWS = MOST_LINES + 0.9

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(
            24, 330, 560, 282, "From above: lengths to scale, lines drawn apart"
        )
        axes.set_ylim(0.0, self._ROWS)
        axes.set_facecolor(GROUND_FACE)
        self._plate = Area(canvas, axes, "#c9cdd3", INK, 2)
        self._lines = [Rope(canvas, axes, TRACK, 3) for _ in range(MOST_LINES)]
        self._ends = [Rope(canvas, axes, TRACK, 3) for _ in range(MOST_LINES)]
        self._strands = [Rope(canvas, axes, _TENSIONER) for _ in range(2 * MOST_LINES)]
        self._tail = Rope(canvas, axes, _TENSIONER)
        size = 2 * _APART * 282 / self._ROWS * 0.72
        self._pulleys = [Mark(canvas, axes, "o", "white", size) for _ in range(MOST_LINES)]
        self._hubs = [Mark(canvas, axes, "o", "white", 0.85 * size) for _ in range(MOST_LINES - 1)]
        self._grabs = [Mark(canvas, axes, "s", "#f4b63f", 7) for _ in range(MOST_LINES)]
        self._device = Mark(canvas, axes, "s", "#54606c", 12)
        self._knot = Mark(canvas, axes, "D", "#54606c", 9)
        self._arrows = [Arrow(canvas, axes, Stroke(INK, 1.4), 6) for _ in range(2 * MOST_LINES)]
        self._bar = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 18, 9)

    def update(self, result: Tensioned, look: Look) -> None:
        """Follow ``result``."""
        count = result.count
        out = [self._distance(result, i) for i in range(1, count + 1)]
        scale = next(s for s in _SCALES if max(out) <= s or s == _SCALES[-1])
        scale = max(scale, 1.02 * max(out))
        self._axes.set_xlim(-1.5 * scale, 0.36 * scale)
        wide = 0.04 * scale
        rows = [(self._ROWS - count) / 2 + 0.5 + i for i in range(count)]
        self._plate.place(
            (0, rows[0] - 0.45), (wide, rows[0] - 0.45), (wide, rows[-1] + 0.45),
            (0, rows[-1] + 0.45),
        )  # fmt: skip
        self._rig(result, rows, out, scale)
        self._rope_moves(result, rows, out, scale)
        self._write(result, look, rows, out, scale)
        unit = 1.0 if look.display.length == "m" else look.display.si(5.0, Kind.LENGTH)
        self._bar.place(-1.46 * scale, 0.12, unit, 0.1, look.display.show(unit, Kind.LENGTH, 1))

    @staticmethod
    def _distance(result: Tensioned, number: int) -> float:
        """Of a travelling pulley from the hub (m), after the loss of a line if there is one."""
        if result.cut is None:
            return result.play
        if number == result.cut:
            return 0.35
        return float(result.play + (result.lost.slack if result.lost else 0.0))

    def _rig(self, result: Tensioned, rows: list[float], out: list[float], scale: float) -> None:
        most = max(s.high for s in result.strands) or 1.0
        for parts in (self._lines, self._ends, self._strands, self._pulleys, self._hubs):
            for part in parts:
                part.hide()
        for grab in self._grabs:
            grab.hide()
        for i, (row, far) in enumerate(zip(rows, out, strict=True)):
            for side in (0, 1):
                strand = self._strands[2 * i + side]
                width = max(_THINNEST, _WIDEST * result.strands[2 * i + side].high / most)
                loose = result.slack
                strand.restyle(FAINT if loose else Stroke(HAUL.color, width))
                level = row + (_APART if side else -_APART)
                strand.place((0.0, level), (-far, level))
            self._pulleys[i].place(-far, row)
            broken = result.cut == i + 1
            grip = -far - 0.09 * scale
            self._grabs[i].place(grip, row)
            self._lines[i].restyle(WARNING if broken else FAINT if result.slack else TRACK)
            if broken:
                self._lines[i].place((-far, row), (grip - 0.1 * scale, row + 0.12))
                self._ends[i].restyle(WARNING)
                self._ends[i].place((-1.5 * scale, row), (-1.2 * scale, row - 0.12))
            elif result.slack:
                x = np.linspace(-1.5 * scale, grip, 60)
                self._lines[i].trace(x, row + 0.1 * np.sin(x * 22 / scale))
                self._ends[i].restyle(FAINT)
                self._ends[i].place((-far, row), (grip, row))
            else:
                self._lines[i].place((-far, row), (-1.5 * scale, row))
        for i, hub in enumerate(self._hubs[: len(rows) - 1]):
            hub.place(0.0, rows[i] + 0.5)
        self._device.place(0.0, rows[0] - _APART)
        self._knot.place(0.0, rows[-1] + _APART)
        self._tail.restyle(_TENSIONER)
        self._tail.place((0.0, rows[0] - _APART), (0.34 * scale, rows[0] - _APART))

    def _rope_moves(
        self, result: Tensioned, rows: list[float], out: list[float], scale: float
    ) -> None:
        """Arrows along the strands, the way the rope runs; the tied-off strand stands still."""
        for arrow in self._arrows:
            arrow.hide()
        if result.cut is not None or not result.moving:
            return
        for i, (row, far) in enumerate(zip(rows, out, strict=True)):
            for side in (0, 1):
                number = 2 * i + side
                if number == 2 * result.count - 1:
                    continue
                way = result.moving * (1 if side == 0 else -1)
                level = row + (_APART if side else -_APART) + (0.13 if side else -0.13)
                middle = -0.82 * far
                reach = 0.05 * scale * way
                self._arrows[number].place((middle - reach, level), (middle + reach, level))

    def _write(
        self,
        result: Tensioned,
        look: Look,
        rows: list[float],
        out: list[float],
        scale: float,
    ) -> None:
        labels = [
            Label("device", (0.03 * scale, rows[0] - _APART - 0.08), towards=(0.7, -1)),
            Label("tied-off end", (0.05 * scale, rows[-1] + _APART), towards=(1, 0.5)),
        ]
        boxes = [
            (-far - 0.11 * scale, row - 0.13, -far + 0.05 * scale, row + 0.13)
            for row, far in zip(rows, out, strict=True)
        ]
        tail = rows[0] - _APART
        lines: list[list[Place]] = [
            [(0.0, rows[0] - 0.45), (0.0, rows[-1] + 0.45)],
            [(0.0, tail), (0.34 * scale, tail)],
        ]
        show = look.forces and look.numbers and not result.slack
        for i, (row, far) in enumerate(zip(rows, out, strict=True)):
            name = line_name(i + 1, result.count)
            words = name.removeprefix("the ")
            if result.cut == i + 1:
                words += ", lost"
            elif result.slack:
                words += ", slack"
            elif show:
                words += " " + _band(result.lines[i], look.display, figures=2)
            at = (-1.27 * scale, row)
            lines.append([(-1.5 * scale, row), (-far, row)])
            labels.append(Label(words, at, TRACK.color, (0, 1), True))
            for side in (0, 1):
                level = row + (_APART if side else -_APART)
                lines.append([(0.0, level), (-far, level)])
                if show:
                    shown = _band(result.strands[2 * i + side], look.display, figures=2)
                    at = (-0.42 * far, level)
                    labels.append(
                        Label(shown, at, HAUL.color, (0, 1 if side else -1), optional=True)
                    )
        grip = (-out[0] - 0.09 * scale, rows[0] - 0.06)
        labels.append(Label("rope grab", grip, THIN.color, (-0.3, -1), optional=True))
        middle = (0.04 * scale, sum(rows) / len(rows))
        labels.append(Label("hub", middle, INK, (1, 0), optional=True))
        self._labels.write(labels, lines, boxes)


class _Memory:
    """Near line against far line: two straight lines for the moving rope, and the way between."""

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(640, 350, 276, 262, "What the lines remember")
        axes.set_xlim(0, 1)
        axes.set_ylim(0, 1)
        axes.set_xlabel("tension of the near line", fontsize=9, labelpad=3)
        axes.set_ylabel("tension of the far line", fontsize=9, labelpad=3)
        self._region = Area(canvas, axes, "#ece7f3", "none", 1)
        self._equal = Rope(canvas, axes, FAINT, 2)
        self._in, self._out = Rope(canvas, axes, THIN, 2), Rope(canvas, axes, THIN, 2)
        self._loop = Rope(canvas, axes, LIMIT, 3)
        self._gone = Rope(canvas, axes, Stroke(LIMIT.color, 2.6), 4)
        self._dot = Mark(canvas, axes, "o", "#f4b63f", 8)
        self._labels = Labels(canvas, axes, 5, 9)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 30)

    def update(self, result: Tensioned, look: Look) -> None:
        """Follow ``result``."""
        for part in (self._region, self._loop, self._gone, self._dot):
            part.hide()
        for line in (self._equal, self._in, self._out):
            line.hide()
        self._labels.write([])
        self._notice.say(self._sentence(result, look))
        if result.count < 2 or result.cut is not None or not look.numbers:
            return
        ratio = result.efficiency ** (2 * (result.count - 1))
        near, far = self._extent(result)
        room = 1.12 * max(near, far)
        if room <= 0:
            return
        self._equal.place((0, 0), (1, 1))
        self._in.place((0, 0), (1, ratio))
        self._out.place((0, 0), (ratio, 1))
        lines = [[(0.0, 0.0), (1.0, 1.0)], [(0.0, 0.0), (1.0, ratio)], [(0.0, 0.0), (ratio, 1.0)]]
        labels = []
        if result.path is not None and result.here is not None:
            whole, gone = result.path.lines / room, result.here.lines / room
            self._loop.trace(whole[:, 0], whole[:, -1])
            self._gone.trace(gone[:, 0], gone[:, -1])
            lines.append([(float(p[0]), float(p[-1])) for p in whole])
            at = (float(gone[-1][0]), float(gone[-1][-1]))
            self._dot.place(*at)
            start = (float(whole[0][0]), float(whole[0][-1]))
            if math.dist(at, start) > 0.06:
                labels.append(Label("first move ended", start, LIMIT.color, (0, 1), optional=True))
        elif result.history == UNKNOWN:
            one, other = result.lines[0], result.lines[-1]
            low, high = (one.low / room, other.low / room), (one.high / room, other.high / room)
            self._region.place(low, (high[0], low[1]), high, (low[0], high[1]))
            labels.append(Label("anywhere in here", high, INK, (-1, -0.4)))
        else:
            at = (result.lines[0].low / room, result.lines[-1].low / room)
            self._dot.place(*at)
        labels += [
            Label("taking in", (0.3, 0.3 * ratio), THIN.color, (0.5, -1), optional=True),
            Label("letting out", (0.3 * ratio, 0.3), THIN.color, (-1, 0.5), optional=True),
            Label("equal", (0.18, 0.18), FAINT.color, (1, 0.2), optional=True),
        ]
        self._labels.write(labels, lines)

    @staticmethod
    def _extent(result: Tensioned) -> tuple[float, float]:
        if result.path is not None:
            return float(result.path.lines[:, 0].max()), float(result.path.lines[:, -1].max())
        return result.lines[0].high, result.lines[-1].high

    @staticmethod
    def _sentence(result: Tensioned, look: Look) -> str:
        if not look.numbers:
            return LOCKED
        if result.cut is not None:
            return "A line is lost: nothing pulls."
        if result.count < 2:
            return "A single line has no other to share with."
        return ""


class _Bars:
    """What the lines and the parts of the hub carry."""

    _WIDE, _TALL = 560, 236

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.sheet(
            24,
            40,
            self._WIDE,
            self._TALL,
            "What lines and hub carry",
        )
        most = 2 * MOST_LINES + 1
        self._spans = [Area(canvas, axes, _BAND_FACE, "none", 2) for _ in range(MOST_LINES)]
        self._bars = [Area(canvas, axes, _BAR, "none", 3) for _ in range(MOST_LINES)]
        self._hub_spans = [Area(canvas, axes, _HUB_BAND, "none", 2) for _ in range(most)]
        self._hub_bars = [Area(canvas, axes, _HUB_BAR, "none", 3) for _ in range(most)]
        self._ground = Rope(canvas, axes, Stroke(INK, 1.2), 4)
        self._limit = Rope(canvas, axes, WARNING, 5)
        self._labels = Labels(canvas, axes, 2 * most + 1, 8.5)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 50)

    def update(self, result: Tensioned, look: Look) -> None:
        """Follow ``result``."""
        for bars in (self._spans, self._bars, self._hub_spans, self._hub_bars):
            for bar in bars:
                bar.hide()
        self._limit.hide()
        self._ground.hide()
        self._labels.write([])
        self._notice.say(self._sentence(result, look))
        if result.slack or not look.numbers:
            return
        self._draw(result, look.display)

    @staticmethod
    def _sentence(result: Tensioned, look: Look) -> str:
        if not look.numbers:
            return LOCKED
        if result.cut is not None:
            return (
                "All lines are slack until the litter has swung in."
                if result.lost
                else "The only line is lost: nothing holds the litter off."
            )
        return "So much rope was let out that all lines are slack." if result.slack else ""

    def _draw(self, result: Tensioned, display: Display) -> None:
        hub = [("device", result.strands[0])]
        hub += [(f"pulley {i}", p) for i, p in enumerate(result.pulleys, 1)]
        hub.append(("tied off", result.strands[-1]))
        lines = [(line_name(i, result.count).removeprefix("the "), t) for i, t in _numbered(result)]
        most = max(band.high for _, band in (*lines, *hub))
        shows_limit = result.grab <= 1.6 * most
        scale = (self._TALL - 84) / max(most, result.grab if shows_limit else 0.0)
        step = (self._WIDE - 60) / (len(lines) + len(hub))
        floor, labels = 26.0, []
        self._ground.place((8, floor), (self._WIDE - 8, floor))
        solid = (self._bars, self._hub_bars)
        pale = (self._spans, self._hub_spans)
        for group, parts in enumerate((lines, hub)):
            begin = 16 + group * (len(lines) * step + 28)
            for i, (name, band) in enumerate(parts):
                left, right = begin + i * step + 0.16 * step, begin + (i + 1) * step - 0.16 * step
                low, high = floor + scale * band.low, floor + scale * band.high
                solid[group][i].place((left, floor), (right, floor), (right, low), (left, low))
                if band.width > 0:
                    pale[group][i].place((left, low), (right, low), (right, high), (left, high))
                middle = (left + right) / 2
                value = _band(band, display, figures=2).replace(" to ", "\nto ")
                if group == 0 and result.count > 1 and (band.width == 0 or result.count < 3):
                    value += "\n" + _percent(result.shares[i])
                labels.append(Label(name, (middle, floor), INK, (0, -1)))
                labels.append(Label(value, (middle, high), INK, (0, 1)))
        rows: list[list[Place]] = []
        if shows_limit:
            level, right = floor + scale * result.grab, 16 + len(lines) * step
            self._limit.place((8, level), (right, level))
            rows.append([(8.0, level), (right, level)])
            labels.append(Label("a grab slips", (right, level), WARNING.color, (1, 0)))
        self._labels.write(labels, rows)


class _Worth:
    """Near lines' worth of one, two, three ... lines, and the ceiling."""

    _MOST = float(_WORTH_OF[-1])

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.axes(640, 62, 276, 214)
        axes.set_xlim(0.5, self._MOST + 0.5)
        axes.set_ylim(0, self._MOST + 0.4)
        axes.set_title("What a further line is worth", fontsize=10.5, loc="left")
        axes.set_xlabel("track lines in series, moving", fontsize=9, labelpad=2)
        axes.set_ylabel("near lines' worth", fontsize=9, labelpad=2)
        self._ideal = Rope(canvas, axes, FAINT, 2)
        self._ceiling = Rope(canvas, axes, LIMIT, 3)
        self._curve = Rope(canvas, axes, Stroke(TRACK.color, 1.2), 3)
        self._dots = [Mark(canvas, axes, "o", "white", 6) for _ in _WORTH_OF]
        self._here = Mark(canvas, axes, "o", "#f4b63f", 9)
        self._labels = Labels(canvas, axes, 4, 9)

    def update(self, result: Tensioned, look: Look) -> None:
        """Follow ``result``."""
        self._ideal.place((0.5, 0.5), (self._MOST + 0.5, self._MOST + 0.5))
        for line in (self._ceiling, self._curve):
            line.hide()
        for dot in (*self._dots, self._here):
            dot.hide()
        labels = [Label("without friction", (4.6, 4.6), FAINT.color, (-1, 0.6))]
        lines: list[list[Place]] = [[(0.5, 0.5), (6.5, 6.5)]]
        if look.numbers:
            places = [(float(n), w) for n, w in zip(_WORTH_OF, result.worth, strict=True)]
            self._curve.place(*places)
            for dot, place in zip(self._dots, places, strict=True):
                dot.place(*place)
            here = places[result.count - 1]
            self._here.place(*here)
            lines.append(places)
            worth = look.display.show(result.worth[result.count - 1], Kind.RATIO, 2)
            labels.append(Label(worth, here, INK, (0.4, -1), True))
            if result.ceiling < self._MOST + 0.2:
                self._ceiling.place((0.5, result.ceiling), (self._MOST + 0.5, result.ceiling))
                lines.append([(0.5, result.ceiling), (6.5, result.ceiling)])
                said = f"ceiling {look.display.show(result.ceiling, Kind.RATIO, 2)}"
                labels.append(Label(said, (5.6, result.ceiling), LIMIT.color, (0, 1)))
        self._labels.write(labels, lines)


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Choice(
        "history",
        "The rope at the device",
        (
            (IN, "is being taken in"),
            (OUT, "is being let out"),
            (EASED, "taken in, then let out a bit"),
            (RETAKEN, "let out, then taken in a bit"),
            (UNKNOWN, "held; last move unknown"),
        ),
        EASED,
    ),
    Control("back", "Rope moved back", Kind.LENGTH, 0, LONGEST_BACK, 0.01, 0.2),
    Control("lines", "Track lines", Kind.RATIO, 1, MOST_LINES, 1, 2),
    Control("efficiency", "Efficiency of each sheave", Kind.RATIO, 0.5, 0.98, 0.01, 0.9),
    Control("device_pull", "Device held at first", Kind.FORCE, 200, 1500, 50, 500),
    Choice(
        "cut",
        "A line is lost",
        (("none", "none"), ("near", "the near line"), ("far", "the far line")),
        "none",
    ),
    Control("play", "Travelling pulleys to hub", Kind.LENGTH, 1, 15, 0.5, 6),
    Control("grab", "A grab slips at", Kind.FORCE, 500, 10_000, 100, 4000),
    Control("line_length", "Length of a track line", Kind.LENGTH, 20, 100, 5, 60),
    Control("stiffness", "Stiffness of the ropes EA", Kind.FORCE, 20_000, 200_000, 5000, 50_000),
)


def _outcome(display: Display) -> Outcome:
    """Near and far line at the start of the figure, while rope is taken in."""
    start = {control.key: control.default for control in CONTROLS}
    near, far = (t.low for t in (compute(start | {"history": IN}).lines))
    eased_near, eased_far = (t.low for t in compute(start).lines)
    show = _shows(display, Kind.FORCE)
    return Outcome(
        right=0 if near > far else 1 if near == far else 2,
        sentence=(
            f"Taking in: near line {show(near)}, far line {show(far)}. After a little has been let "
            f"out again: {show(eased_near)} and {show(eased_far)}."
        ),
    )


def _idle(values: Values) -> dict[str, str]:
    idle = {}
    if values["cut"] != "none":
        reason = "Nothing pulls once a line is lost: choose “none” above."
        idle = dict.fromkeys(("device_pull", "grab"), reason)
    if values["history"] not in _FIRST:
        reason = "Only where rope was moved one way and then back: choose that above."
        idle |= dict.fromkeys(("back", "line_length", "stiffness"), reason)
    return idle


TENSIONER_PLAN = Figure(
    key="tensioner-plan",
    title="One rope, several lines: what each strand carries",
    alternative=(
        "A tensioner in series seen from above, the tension of its lines and hub as bars, and the "
        "near line's tension against the far line's as rope is moved back"
    ),
    prediction=Prediction(
        question=(
            "two track lines are tightened by one rope in series. Rope is being taken in at the "
            "device. The near line, next to the device, carries …"
        ),
        choices=("more than the far line", "the same", "less than the far line"),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=TensionerPicture,
    summary=summary,
    table=table,
    cautions=(
        NO_BACKUP,
        "Sheave efficiency varies with rope, load, water and dirt: enter what you measured.",
        *tensioner_memory.CAUTIONS[:1],
        cautions.COMMON_HUB,
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    forces_label="Show the tension of every strand",
    reading=(
        "A strand is drawn the wider, the more it carries beside the others. Thin lines in the "
        "loop: where the lines stand while the rope moves. The dot is where they stand now.",
    ),
    first=("history", "back", "lines", "efficiency", "device_pull", "cut"),
    idle=_idle,
)
