"""Load cells at named places: what each shows, how far it may be off, and what may be concluded.

Left the ropes with their cells, right what each cell shows. Below, the other way round: one
strand's reading, and the range in which a line's tension then lies for each history of the rope.
"""

from dataclasses import dataclass
from typing import Any

from ropecalc import cautions
from ropecalc.mechanics import measurement
from ropecalc.mechanics.friction import Band
from ropecalc.mechanics.holding import Hold, Method, Point, Reach, Rig, hold
from ropecalc.mechanics.measurement import (
    WRITE_DOWN,
    Agreement,
    CellPlace,
    LastMove,
    Tensioner,
    cell_reading,
    compare_readings,
    line_from_strand,
    total_from_strand,
)
from ropecalc.mechanics.tensioner import NO_BACKUP, line_name
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import INK, Canvas
from ropecalc.teaching.drawing import (
    HAUL,
    THIN,
    TRACK,
    Arrow,
    Dot,
    Hub,
    Label,
    Labels,
    Mark,
    Notice,
    Place,
    Rope,
    ScaleBar,
    Stroke,
)
from ropecalc.teaching.figures.free_body import neat_force
from ropecalc.teaching.figures.range_rows import RangeRows, say_range
from ropecalc.teaching.figures.sensitivity import too_sensitive, too_sensitive_words
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import LOCKED, Choice, Figure, Look, Outcome, Prediction, Table, Values
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

_TOP = Point(0.3, 32.0)
RIG = Rig(haul_directional=_TOP, track_directional=_TOP, hub=Point(40.0, 0.5))
"""The raise of this figure: haul and track line from one directional, hub out in front."""
MOST_LINES = 4
DEVICE, TIED = "device", "tied"
NEAR, FAR, ALL = "near", "far", "all"


@dataclass(frozen=True)
class Cell:
    """A cell: its ``letter`` on the picture, its ``name``, and what it shows (N)."""

    letter: str
    name: str
    place: CellPlace
    shows: Band


@dataclass(frozen=True)
class Readings:
    """One setting worked out; forces in N.

    ``cells`` is empty where there are no numbers to read. ``error`` is how far each cell may be
    off. ``inferred`` is the range of what is ``wanted`` by history, from ``reading`` alone;
    ``with_error`` the same with the cell's error.
    """

    system: Tensioner
    last_move: LastMove
    place: Point
    load: float
    held: Hold
    sensitive: bool
    cells: tuple[Cell, ...]
    full_scale: float
    share: float
    agreement: Agreement | None
    strand: str
    wanted: str
    reading: float
    inferred: dict[LastMove, Band]

    @property
    def error(self) -> float:
        """How far each cell may be off, either way (N)."""
        return self.full_scale * self.share

    @property
    def drowned(self) -> bool:
        """Whether the strand's reading is no larger than what its cell may be off."""
        return self.reading <= self.error

    def with_error(self, move: LastMove) -> Band:
        """The range of what is wanted, also for what the cell may be off."""
        band, off = self.inferred[move], self.error / self.reading
        return Band(band.low * max(0.0, 1 - off), band.high * (1 + off))

    def error_share(self, cell: Cell) -> float | None:
        """What the cell may be off as a share of its least reading; None beyond full scale."""
        if cell.shows.high > self.full_scale:
            return None
        found = measurement.full_scale_error(
            full_scale=self.full_scale, cell_error=self.share, reading=cell.shows.low
        )
        return float(found)


def compute(values: Values) -> Readings:
    """Work out one setting of the controls (SI)."""
    system = Tensioner(round(values["lines"]), values["efficiency"])
    move = LastMove.of(values["last_move"])
    place, load = Point(values["offset"], values["height"]), float(weight(mass=values["mass"]))
    held = hold(Method.TRACK, RIG, load, place.x, place.z)
    sensitive = bool(too_sensitive(Method.TRACK, RIG, load, place.x, place.z))
    readable = held.reach is Reach.HELD and not sensitive
    error = values["full_scale"] * values["cell_error"]
    return Readings(
        system=system,
        last_move=move,
        place=place,
        load=load,
        held=held,
        sensitive=sensitive,
        cells=_cells(system, held, move) if readable else (),
        full_scale=values["full_scale"],
        share=values["cell_error"],
        agreement=_agreement(load, held, error) if readable else None,
        strand=values["strand"],
        wanted=values["wanted"],
        reading=values["reading"],
        inferred={m: _inferred(system, values, m) for m in LastMove},
    )


def _cells(system: Tensioner, held: Hold, move: LastMove) -> tuple[Cell, ...]:
    lines, strands = system.lines, system.strands
    placed: list[tuple[str, CellPlace, int | None]] = [("haul line", CellPlace.HAUL_LINE, None)]
    for line in sorted({1, lines}):
        placed.append((line_name(line, lines).removeprefix("the "), CellPlace.TRACK_LINE, line))
    placed += [
        ("hub, all lines", CellPlace.HUB, None),
        ("strand at the device", CellPlace.STRAND, 1),
        ("tied-off strand", CellPlace.STRAND, strands),
    ]
    tensions: dict[str, Any] = {
        "haul_tension": held.haul_tension,
        "track_tension": held.line_tension,
        "last_move": move,
    }
    return tuple(
        Cell(letter, name, where, cell_reading(where, system, number=number, **tensions))
        for letter, (name, where, number) in zip("ABCDEF", placed, strict=False)
    )


def _agreement(load: float, held: Hold, error: float) -> Agreement:
    return compare_readings(
        load=load,
        haul_reading=held.haul_tension,
        track_reading=held.line_tension,
        haul_elevation=held.haul_elevation,
        ground_depression=held.ground_depression,
        haul_cell_error=error,
        track_cell_error=error,
    )


def _inferred(system: Tensioner, values: Values, move: LastMove) -> Band:
    cell: dict[str, Any] = {
        "reading": values["reading"],
        "strand": 1 if values["strand"] == DEVICE else system.strands,
        "last_move": move,
    }
    if values["wanted"] == ALL:
        return total_from_strand(system, **cell).band
    line = 1 if values["wanted"] == NEAR else system.lines
    return line_from_strand(system, line=line, **cell).band


# --- in words ---------------------------------------------------------------------------------


def _percent(share: float) -> str:
    return f"{100 * share:.0f} %" if share >= 0.1 else f"{100 * share:.1f} %"


def _off(result: Readings, cell: Cell) -> str:
    share = result.error_share(cell)
    if share is None:
        return "beyond its full scale"
    return "more than it reads" if share >= 1 else _percent(share)


def _no_numbers(result: Readings, display: Display) -> str:
    if result.held.reach is not Reach.HELD:
        return str(result.held.reach.sentence)
    return too_sensitive_words(display) if result.sensitive else ""


def _wanted(result: Readings) -> str:
    if result.wanted == ALL:
        return "all lines together"
    return line_name(1 if result.wanted == NEAR else result.system.lines, result.system.lines)


def _strand(result: Readings) -> str:
    return "strand at the device" if result.strand == DEVICE else "tied-off strand"


_HISTORY = {
    LastMove.TAKEN_IN: "taken in, hand still on it",
    LastMove.HANDED_OVER: "taken in, then handed over",
    LastMove.LET_OUT: "let out last",
    LastMove.NOT_RECORDED: "nobody wrote it down",
}


def summary(result: Readings, display: Display) -> str:
    """The setting and its numbers in plain sentences."""
    count = result.system.lines
    counted = "one track line" if count == 1 else f"{count} track lines in series"
    words = (
        f"{counted[:1].upper()}{counted[1:]}, litter {say(display, result.place.x, Kind.LENGTH)} "
        f"out at {say(display, result.place.z, Kind.LENGTH)}, load "
        f"{say(display, result.load, Kind.FORCE)}. {result.last_move.why} "
    )
    if not result.cells:
        words += f"{_no_numbers(result, display)} So nothing is said of what the cells show. "
    else:
        shown = "; ".join(
            f"{c.letter} {c.name} {say_range(c.shows, display)}" for c in result.cells
        )
        words += (
            f"The cells show: {shown}. Each may be off by "
            f"{say(display, result.error, Kind.FORCE, 2)} either way. "
            f"{_over(result)}{_weighed(result, display)} "
        )
    return words + _concluded(result, display)


def _over(result: Readings) -> str:
    over = [c.letter for c in result.cells if result.error_share(c) is None]
    if not over:
        return ""
    cells, is_ = ("Cell", "is") if len(over) == 1 else ("Cells", "are")
    return f"{cells} {', '.join(over)} {is_} loaded beyond full scale: use a larger one. "


def _weighed(result: Readings, display: Display) -> str:
    if result.agreement is None:
        return ""
    if _over(result):
        return "With a cell beyond its full scale the weight cannot be checked."
    return (
        "Haul line and hub together weigh the load: with these cells they go with anything from "
        f"{say_range(result.agreement.band, display)}."
    )


def _concluded(result: Readings, display: Display) -> str:
    reading = say(display, result.reading, Kind.FORCE)
    opening = f"The other way round: the {_strand(result)} reads {reading}. "
    if result.reading > result.full_scale:
        return f"{opening}That is beyond the full scale of the cell: use a larger one."
    if result.drowned:
        return f"{opening}The cell may be off by as much: it tells nothing. Use a smaller cell."
    band = say_range(result.inferred[result.last_move], display)
    wide = say_range(result.with_error(result.last_move), display)
    into, out = result.inferred[LastMove.TAKEN_IN].low, result.inferred[LastMove.LET_OUT].low
    times = display.show(max(into, out) / min(into, out), Kind.RATIO, 3)
    who = _wanted(result)
    carry = "carry" if result.wanted == ALL else "carries"
    return (
        f"{opening}Then {who} {carry} {band}; with the cell's error, {wide}. Between taken in "
        f"and let out the same reading means loads that differ {times} times."
    )


def table(result: Readings, display: Display) -> Table:
    """Every cell: what it shows and how far it may be off."""
    head = ("Cell", "It sits", "It shows", "May be off by", "As a share of the least reading")
    error = say(display, result.error, Kind.FORCE, 2)
    rows = tuple(
        (
            f"{c.letter} {c.name}",
            str(c.place),
            say_range(c.shows, display),
            error,
            _off(result, c),
        )
        for c in result.cells
    )
    return (head, *rows) if rows else ()


# --- the picture ------------------------------------------------------------------------------

_CELL = "#fff3b0"


class ReadingsPicture:
    """The artists of the figure."""

    def __init__(self) -> None:
        self.canvas = Canvas(940, 560)
        self._ropes = _Ropes(self.canvas)
        self._shown = _Shown(self.canvas)
        self._concluded = _Concluded(self.canvas)

    def update(self, result: Readings, look: Look) -> None:
        """Follow ``result``."""
        self._ropes.update(result, look)
        self._shown.update(result, look)
        self._concluded.update(result, look)


class _Ropes:
    """Litter, track lines, tensioner and hub from above, and where the cells are built in."""

    _WIDE, _TALL = 420, 268
    _LITTER, _PULLEY, _HUB, _ANCHOR = (40.0, 150.0), 180.0, 270.0, 322.0

    def __init__(self, canvas: Canvas) -> None:
        axes = canvas.sheet(20, 264, self._WIDE, self._TALL, "Where the cells sit (not to scale)")
        self._haul = Rope(canvas, axes, HAUL)
        self._lines = [Rope(canvas, axes, TRACK) for _ in range(MOST_LINES)]
        self._rope = Rope(canvas, axes, Stroke("#4b4f9e", 1.8))
        self._plate = Rope(canvas, axes, Stroke(INK, 5.0), 3)
        self._to_anchor = Rope(canvas, axes, Stroke(INK, 2.4), 3)
        self._pulleys = [Mark(canvas, axes, "o", "white", 13, 5) for _ in range(MOST_LINES)]
        self._litter, self._hub = Dot(canvas, axes), Hub(canvas, axes)
        self._cells = [Mark(canvas, axes, "s", _CELL, 9, 7) for _ in range(6)]
        self._arrows = [Arrow(canvas, axes, TRACK, 6) for _ in range(6)]
        self._bar = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 10, 9)

    def update(self, result: Readings, look: Look) -> None:
        """Follow ``result``."""
        count = result.system.lines
        rows = [150.0 + 46.0 * (i - (count - 1) / 2) for i in range(count)]
        litter, pulley, hub = self._LITTER, self._PULLEY, self._HUB
        top = (litter[0], self._TALL - 8.0)
        self._haul.place(litter, top)
        self._litter.place(*litter)
        path: list[Place] = []
        for i in range(MOST_LINES):
            if i >= count:
                self._lines[i].hide()
                self._pulleys[i].hide()
                continue
            self._lines[i].place(litter, (pulley - 78, rows[i]), (pulley, rows[i]))
            self._pulleys[i].place(pulley, rows[i])
            path += [(hub, rows[i] - 9), (pulley, rows[i] - 9), (pulley, rows[i] + 9),
                     (hub, rows[i] + 9)]  # fmt: skip
        self._rope.place(*path)
        self._plate.place((hub, rows[0] - 20), (hub, rows[-1] + 20))
        self._to_anchor.place((hub, 150.0), (self._ANCHOR, 150.0))
        self._hub.place(self._ANCHOR, 150.0)
        spots = self._spots(rows)
        lines: list[list[Place]] = [[litter, top], path, [(hub, 150.0), (self._ANCHOR, 150.0)]]
        lines += [[litter, (pulley - 78, row), (pulley, row)] for row in rows]
        boxes = []
        labels = []
        for mark in self._cells:
            mark.hide()
        for mark, letter, (spot, towards) in zip(self._cells, "ABCDEF", spots, strict=False):
            mark.place(*spot)
            boxes.append((spot[0] - 7, spot[1] - 7, spot[0] + 7, spot[1] + 7))
            labels.append(Label(letter, spot, INK, towards, True))
        labels += [
            Label("litter", litter, THIN.color, (-0.2, -1)),
            Label("haul line", (litter[0] + 14, 205.0), HAUL.color, (1, 0)),
            Label("hub", (self._ANCHOR, 150.0), INK, (0.3, -1)),
            Label("device", (hub, rows[0] - 20), INK, (0.6, -1)),
        ]
        self._draw_forces(result, look, [spot for spot, _ in spots])
        self._labels.write(labels, lines, boxes)

    def _spots(self, rows: list[float]) -> list[tuple[Place, Place]]:
        """Place of every cell, and where its letter would rather stand."""
        along, in_strand = self._PULLEY - 50, self._PULLEY + 24
        spots: list[tuple[Place, Place]] = [((self._LITTER[0], 172.0), (-1, 0))]
        spots += [
            ((along, rows[i]), (0, 1 if i or len(rows) == 1 else -1))
            for i in sorted({0, len(rows) - 1})
        ]
        spots.append((((self._HUB + self._ANCHOR) / 2, 150.0), (0, 1)))
        spots.append(((in_strand, rows[0] - 9), (0, -1)))
        return [*spots, ((in_strand, rows[-1] + 9), (0, 1))]

    def _draw_forces(self, result: Readings, look: Look, spots: list[Place]) -> None:
        """Pulls at the cells, each to the same scale; the middle of a range."""
        for arrow in self._arrows:
            arrow.hide()
        self._bar.hide()
        if not (result.cells and look.forces and look.numbers):
            return
        most = max(c.shows.high for c in result.cells)
        along = max(c.shows.high for c in result.cells if c.place is CellPlace.TRACK_LINE)
        per_pixel = max(most / 84.0, along / 40.0)  # no arrow runs into a pulley
        for arrow, cell, (x, z) in zip(self._arrows, result.cells, spots, strict=False):
            size = (cell.shows.low + cell.shows.high) / 2 / per_pixel
            arrow.restyle(_STROKE[cell.place])
            if cell.place is CellPlace.HAUL_LINE:
                arrow.place((x + 9, z), (x + 9, min(z + size, self._TALL - 3)))
            else:
                level = z + (12 if cell.place is CellPlace.HUB else 0)
                arrow.place((x, level), (x + size, level))
        amount, words = neat_force(60 * per_pixel, look.display)
        self._bar.place(12, 10, amount / per_pixel, 4, words)


_STROKE = {
    CellPlace.HAUL_LINE: HAUL,
    CellPlace.TRACK_LINE: Stroke(TRACK.color, 2.4),
    CellPlace.HUB: Stroke(INK, 2.8),
    CellPlace.STRAND: Stroke("#4b4f9e", 2.4),
}


class _Shown:
    """What every cell shows, with the range that friction leaves and the cell's own error."""

    _WIDE, _TALL = 462, 268

    def __init__(self, canvas: Canvas) -> None:
        axes = canvas.sheet(458, 264, self._WIDE, self._TALL, "What each cell shows")
        self._rows = RangeRows(canvas, axes, 6, 166, self._WIDE - 150)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 50)

    def update(self, result: Readings, look: Look) -> None:
        """Follow ``result``."""
        self._notice.say(_no_numbers(result, look.display) if look.numbers else LOCKED)
        if not (result.cells and look.numbers):
            self._rows.hide()
            return
        step = (self._TALL - 30) / len(result.cells)
        levels = [self._TALL - 15 - step * (i + 0.5) for i in range(len(result.cells))]
        rows = []
        for cell in result.cells:
            wide = Band(max(0.0, cell.shows.low - result.error), cell.shows.high + result.error)
            words = say_range(cell.shows, look.display, 2)
            off = _off(result, cell)
            words += f"\n{off}" if result.error_share(cell) is None else f"\nmay be off: {off}"
            rows.append((f"{cell.letter} {cell.name}", cell.shows, wide, words, False))
        self._rows.draw(rows, levels, 9, result.full_scale)


class _Concluded:
    """One strand's reading, and what is wanted for each history."""

    _WIDE, _TALL = 900, 196

    def __init__(self, canvas: Canvas) -> None:
        self._axes = canvas.sheet(20, 24, self._WIDE, self._TALL, "What one reading tells")
        self._rows = RangeRows(canvas, self._axes, 4, 215, self._WIDE - 190)
        self._heading = Labels(canvas, self._axes, 1, 9.5)
        self._notice = Notice(canvas, self._axes, 0.5, 0.5, 70)

    def update(self, result: Readings, look: Look) -> None:
        """Follow ``result``."""
        self._heading.write([])
        self._rows.hide()
        sentence = self._sentence(result) if look.numbers else LOCKED
        self._notice.say(sentence)
        if sentence:
            return
        reading = say(look.display, result.reading, Kind.FORCE, 2)
        heading = (
            f"The {_strand(result)} reads {reading}. Tension of {_wanted(result)}, if rope was"
        )
        self._heading.write([Label(heading, (12, self._TALL - 4), INK, (1, -0.3))])
        rows = []
        for move in LastMove:
            here = move is result.last_move
            words = say_range(result.inferred[move], look.display, 2)
            rows.append(
                (_HISTORY[move], result.inferred[move], result.with_error(move), words, here)
            )
        levels = [self._TALL - 50 - 37.0 * i for i in range(4)]
        self._rows.draw(rows, levels, 9)

    @staticmethod
    def _sentence(result: Readings) -> str:
        if result.reading > result.full_scale:
            return "The reading is beyond the full scale of the cell: use a larger one."
        if result.drowned:
            return "The cell may be off by as much as it reads: it tells nothing."
        return ""


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Choice(
        "last_move",
        "Tensioner rope was last",
        tuple((m.value, _HISTORY[m]) for m in LastMove),
        LastMove.HANDED_OVER.value,
    ),
    Choice(
        "strand",
        "One cell alone sits in",
        ((DEVICE, "the strand at the device"), (TIED, "the tied-off strand")),
        DEVICE,
    ),
    Choice(
        "wanted",
        "You want to know",
        ((NEAR, "the near line"), (FAR, "the far line"), (ALL, "all lines together")),
        NEAR,
    ),
    Control("reading", "That cell reads", Kind.FORCE, 200, 3000, 50, 800),
    Control("lines", "Track lines", Kind.RATIO, 1, MOST_LINES, 1, 2),
    Control("efficiency", "Efficiency of each sheave", Kind.RATIO, 0.6, 0.98, 0.01, 0.9),
    Control("full_scale", "Full scale of the cells", Kind.FORCE, 2000, 50_000, 1000, 20_000),
    Control("cell_error", "Error, share of full scale", Kind.RATIO, 0.001, 0.02, 0.001, 0.005),
    Control("offset", "Litter, out from the wall", Kind.LENGTH, 0.4, 6, 0.1, 2.5),
    Control("height", "Litter, height", Kind.LENGTH, 1, 31, 0.5, 27),
    Control("mass", "Mass that hangs", Kind.MASS, 110, 290, 5, 200),
)


def _outcome(display: Display) -> Outcome:
    """All lines from the same reading, taken in and let out."""
    start: dict[str, Any] = {control.key: control.default for control in CONTROLS}
    found = compute(start | {"lines": 3.0, "wanted": ALL})
    into, out = found.inferred[LastMove.TAKEN_IN].low, found.inferred[LastMove.LET_OUT].low
    same = abs(into - out) < 1e-6 * into
    return Outcome(
        right=1 if same else (0 if into > out else 2),
        sentence=(
            f"Reading {say(display, found.reading, Kind.FORCE)}: all lines carry "
            f"{say(display, into, Kind.FORCE)} after taking in and "
            f"{say(display, out, Kind.FORCE)} after letting out."
        ),
    )


READINGS = Figure(
    key="readings",
    title="What the cells say, and what they do not",
    alternative=(
        "Load cells in haul line, track lines, hub and tensioner, what each shows with its error, "
        "and the range of a line's tension that one strand's reading leaves"
    ),
    prediction=Prediction(
        question=(
            "three track lines in series, and a cell in the strand at the device. It shows the "
            "same reading just after rope was taken in and, later, just after some was let out. "
            "All lines together carry …"
        ),
        choices=("more after taking in", "the same both times", "more after letting out"),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=ReadingsPicture,
    summary=summary,
    table=table,
    cautions=(
        WRITE_DOWN,
        "Sheave efficiency varies with rope, load, water and dirt: enter what you measured.",
        "A cell that samples slowly misses peaks, and its error is a share of its full scale, not "
        "of its reading.",
        NO_BACKUP,
        cautions.NEAR_DIRECTIONAL,
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    forces_label="Show the pull at every cell",
    reading=(
        "Dark bar: at least so much. Pale bar: the range that friction leaves. Thin line with "
        "ends: what the cell itself may be off as well.",
    ),
    first=("last_move", "strand", "wanted", "reading", "lines", "efficiency"),
)
