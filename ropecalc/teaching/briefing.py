"""A raise on one page for the people who run it, and afterwards: predicted against measured.

Both are about one setting of the plan board: its start, or what the figure on the same page shows.
Predicted readings are rounded up; the values at which the team asks and stops are rounded down, and
so low that a cell which shows too little still gets there in time.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from html import escape

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.mechanics.friction import Band
from ropecalc.mechanics.guiding import haul_tension_with_track
from ropecalc.mechanics.holding import Method
from ropecalc.mechanics.measurement import (
    WRITE_DOWN,
    LastMove,
    Tensioner,
    compare_readings,
    line_reading,
)
from ropecalc.mechanics.tensioner import line_name
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.buttons import button
from ropecalc.teaching.figures.plan_board import LET_OUT, PLAN_BOARD, Board, compute
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown
from ropecalc.units import Display, Kind, Rounding, parse_quantity

Settings = Callable[[], Mapping[str, object]]
"""What gives the plan board's values, SI by control."""

CELL_ERROR = 100.0
"""Error in N that a cell starts with; the learner enters their own."""
_BLANK = "______________"
_ROLES = (
    "controller",
    "edge attendants (they link the two teams)",
    "haul team lead",
    "belayer",
    "track team lead",
    "cell reader",
    "attendant at the litter",
    "safety officer",
    "medical lead",
)
_KEEP_OUT = (
    "under the litter and in the fall line",
    "inside the bight of the tensioner",
    "between hub and wall along the lines",
)
_RULES = (
    "Anybody may call stop, and everybody repeats it.",
    "Out before down: let the tensioner out before the litter goes down.",
    "In with up: the track team takes in while the haul team raises, and says when it cannot.",
    "Nobody raises or lowers against a locked tensioner.",
)
_IF = (
    ("The haul pulls harder and the litter stands still", "Stop. Look before anybody pulls again."),
    (
        "A line's cell drops, or the litter comes in",
        "Stop. Nobody moves before all cells are read.",
    ),
    ("The tensioner is stuck", "Stop the haul. Free the tensioner; do not go on against it."),
    ("The haul stops", "Hold the track lines where they are and tell the attendant."),
    ("The belay catches", "Stop both teams. Let the tensioner out before anything goes down."),
    ("Nobody hears the other team", "Stop. Use the signal that was agreed beforehand."),
)
AUTHORITY_FIRST = (
    "Prepared with a teaching model. A qualified person has to check it on site before use; the "
    "procedures of your authority come first. Stop if readings, geometry or conditions differ "
    "from this page."
)

Rows = Sequence[Sequence[str]]


def start_settings() -> Mapping[str, object]:
    """The plan board as it starts."""
    return PLAN_BOARD.start


def station_rows(board: Board, display: Display) -> Rows:
    """Heights with their offset and the tensioner rope taken in from the start to there."""
    rows = [("Height", "Out from the datum", "Tensioner rope in by here, without stretch", "Note")]
    together = 0.0
    for row in board.rows:
        together += row.feed or 0.0
        note = "takes most" if row is board.governing else ""
        if row.feed is not None and row.feed < 0:
            note = f"{LET_OUT}, to here"
        if not row.held:
            note = "not held"
        rows.append(
            (
                display.show(row.station.height, Kind.LENGTH),
                display.show(row.station.offset, Kind.LENGTH, 2, Rounding.UP),
                display.show(max(together, 0.0), Kind.LENGTH, 2),
                note,
            )
        )
    return rows


@dataclass(frozen=True)
class Cell:
    """One load cell at the governing station, forces in N.

    ``bands`` is what it carries by the last move, in the order of ``MOVES``. ``ask`` and ``stop``
    are readings: above ``ask`` the plan may be exceeded, at ``stop`` the margin may be used up,
    even if the cell shows too little. ``stop`` is None where no strength was entered.
    """

    name: str
    bands: tuple[Band, ...]
    ask: float
    stop: float | None

    @property
    def most(self) -> float:
        """What it is predicted to carry at most."""
        return max(band.high for band in self.bands)

    @property
    def too_coarse(self) -> bool:
        """Whether the team would have to ask where everything is as planned."""
        return 0 < self.most >= self.ask


MOVES = (LastMove.TAKEN_IN, LastMove.HANDED_OVER, LastMove.LET_OUT)


def cells(board: Board, cell_error: float) -> tuple[Cell, ...]:
    """The cells at the governing station, each off by ``cell_error`` (N) at most.

    The plan counts on loads that are higher by the board's uncertainty. What a cell shows may be
    too little by its error, so a reading and that error together stay within what is counted on.
    Empty where no number can be relied on.
    """
    row = board.governing
    if row is None or row.total is None or row.haul is None:
        return ()
    system = Tensioner(board.count, board.efficiency)
    found: list[tuple[str, tuple[Band, ...], float | None]] = []
    for number in dict.fromkeys((1, board.count)):
        bands = tuple(
            line_reading(system, track_tension=row.total, line=number, last_move=move).band
            for move in MOVES
        )
        found.append((line_name(number, board.count), bands, board.line_stop))
    found.append(("all lines, at the hub", (Band(row.total, row.total),) * 3, board.hub_allowed))
    found.append(("haul line, at the litter", (Band(row.haul, row.haul),) * 3, None))
    higher = 1.0 + board.uncertainty
    return tuple(
        Cell(
            name,
            bands,
            max(0.0, max(band.high for band in bands) * higher - cell_error),
            None if stop is None else max(0.0, min(stop, stop * higher - cell_error)),
        )
        for name, bands, stop in found
    )


def cell_rows(found: Sequence[Cell], display: Display) -> Rows:
    """What each cell should show, by the last move, and where to ask and to stop."""
    if not found:
        return ()

    def up(value: float) -> str:
        return display.show(value, Kind.FORCE, 2, Rounding.UP)

    def down(value: float) -> str:
        return display.show(value, Kind.FORCE, 2, Rounding.DOWN)

    def shown(band: Band) -> str:
        return up(band.high) if band.width < 1e-9 else f"{down(band.low)} to {up(band.high)}"

    head = ("Cell in", "Taken in", "Handed over", "Let out", "Ask above", "Stop at")
    rows = [
        (
            cell.name,
            *(shown(band) for band in cell.bands),
            down(cell.ask),
            _BLANK if cell.stop is None else down(cell.stop),
        )
        for cell in found
    ]
    return (head, *rows)


def about_cells(
    found: Sequence[Cell], board: Board, cell_error: float, display: Display
) -> tuple[str, ...]:
    """How to read the cells, and what their limits count."""
    if not found:
        return ("No tension here can be relied on: plan anew.",)
    off = display.show(cell_error, Kind.FORCE, 2, Rounding.UP)
    more = f"{100 * board.uncertainty:.0f} %"
    counted = (
        f"Readings are rounded up, limits down. A cell may be off by {off}. Above “ask above” the "
        f"line may carry more than planned and {more} on top, if the cell shows too little. "
        f"At “stop at” the margin you asked for is still there if the line carries {more} or {off} "
        "more than its cell shows, whichever is worse."
    )
    coarse = [cell.name for cell in found if cell.too_coarse]
    if not coarse:
        return (WRITE_DOWN, counted)
    return (
        WRITE_DOWN,
        counted,
        f"Too coarse a cell for such a plan: {', '.join(coarse)}. Its error is as large as what "
        "the plan allows for. Use a smaller cell.",
    )


class BriefingCard(Shown):
    """One page to brief from: names to fill in, computed numbers, rules and what to do if."""

    def __init__(self, session: Session, settings: Settings | None = None) -> None:
        self._session = session
        self._settings = settings or start_settings
        self._page = widgets.HTML()
        self._error = CELL_ERROR
        self._entry = widgets.Text(
            description="A cell may be off by",
            continuous_update=False,
            style={"description_width": "150px"},
            layout={"width": "270px"},
        )
        self._entry.observe(lambda _: self._refresh(), names="value")
        renew = button("Take over the figure's settings", self._refresh, icon="refresh")
        row = widgets.HBox([renew, self._entry], layout={"flex_flow": "row wrap"})
        super().__init__([row, self._page])
        self.add_class("ropecalc-briefing")
        self.until_closed(session.on_units(lambda _: self._relabel()))
        self._relabel()

    def enter_error(self, text: str) -> None:
        """Put ``text`` into the field for the cells' error, as the learner would."""
        self._entry.value = text

    def summary(self) -> str:
        """The card's numbers in plain text."""
        lines = [heading for heading, _, _ in self._parts()]
        for heading, sentences, rows in self._parts():
            lines.append(f"{heading}:")
            lines += [*sentences, *(" | ".join(row) for row in rows)]
        return "\n".join(lines[len(self._parts()) :])

    def _parts(self) -> list[tuple[str, Sequence[str], Rows]]:
        display = self._session.display
        board = compute(dict(self._settings()))
        if board.plan is None:
            return [("No plan", (board.trouble,), ())]
        site = board.plan.site
        lines = "one track line" if board.count == 1 else f"{board.count} track lines in series"
        about = (
            f"{site.name}: {display.show(site.litter.mass, Kind.MASS)} on the ropes, directionals "
            f"{display.show(site.rig.haul_directional.x, Kind.LENGTH, 2)} out, hub "
            f"{display.show(site.rig.hub.x, Kind.LENGTH)} out, {lines}.",
            f"Purpose and aims of the training: {_BLANK}{_BLANK}",
            f"Guidance ends at {display.show(site.lift.guidance_ends, Kind.LENGTH)}; from there "
            "the edge attendants take over.",
        )
        found = cells(board, self._error)
        names = [f"{role}: {_BLANK}" for role in _ROLES]
        return [
            ("Raise", about, ()),
            ("Who", names, ()),
            ("Keep out", _KEEP_OUT, ()),
            ("Calls and rules", _RULES, ()),
            ("Stations", (), station_rows(board, display)),
            (
                "Cells, where it takes most",
                (*self._trouble, *about_cells(found, board, self._error, display)),
                cell_rows(found, display),
            ),
            ("If", (), (("What happens", "What to do"), *_IF)),
            ("Patient and attendant", (f"Who talks to them: {_BLANK}", f"Weather: {_BLANK}"), ()),
            ("Debrief", (f"Where and when: {_BLANK}",), ()),
            ("Before use", (AUTHORITY_FIRST, f"Checked by, and when: {_BLANK}{_BLANK}"), ()),
        ]

    def _relabel(self) -> None:
        """The field in the reader's units; what it means does not change."""
        self._entry.value = self._session.display.show(self._error, Kind.FORCE)
        self._refresh()

    def _read_error(self) -> None:
        """The cells' error from its field; what cannot be read is said, and the last one kept."""
        self._trouble: tuple[str, ...] = ()
        try:
            typed = parse_quantity(self._entry.value, Kind.FORCE)[0]
        except ValueError as error:
            self._trouble = (f"A cell may be off by: {error}",)
            return
        if typed < 0:
            self._trouble = ("A cell may be off by: write it without a sign.",)
            return
        self._error = typed

    def _refresh(self) -> None:
        self._read_error()
        parts = []
        for heading, sentences, rows in self._parts():
            items = "".join(f"<li>{escape(sentence)}</li>" for sentence in sentences)
            columns = 2 if len(sentences) > 2 and max(map(len, sentences)) < 90 else 1
            listed = f'<ul style="columns: {columns}; margin: 0">{items}</ul>' if items else ""
            title = f'<h4 style="margin: 6px 0 2px">{escape(heading)}</h4>'
            parts.append(f"{title}{listed}{_table(rows)}")
        self._page.value = f'<div style="font-size: 90%; line-height: 1.3">{"".join(parts)}</div>'


def _table(rows: Rows) -> str:
    if not rows:
        return ""
    heads = "".join(f'<th scope="col">{escape(cell)}</th>' for cell in rows[0])
    body = "".join(
        "<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>" for row in rows[1:]
    )
    return (
        '<div class="ropecalc-table" style="overflow-x: auto"><table><thead><tr>'
        f"{heads}</tr></thead><tbody>{body}</tbody></table></div>"
    )


# --- predicted against measured -----------------------------------------------------------------

_FIELDS = (
    ("mass", "Mass on the ropes", Kind.MASS),
    ("haul", "Reading in the haul line", Kind.FORCE),
    ("track", "Reading of all track lines", Kind.FORCE),
    ("up", "Haul leg, above the horizontal", Kind.ANGLE),
    ("down", "Ground leg, below it", Kind.ANGLE),
    ("haul_error", "Error of the haul cell", Kind.FORCE),
    ("track_error", "Error of the track cells", Kind.FORCE),
)


class Debrief(Shown):
    """Readings typed in beside what balance asks for; does the weight go with them?"""

    def __init__(self, session: Session, settings: Settings | None = None) -> None:
        self._session = session
        self._settings = settings or start_settings
        self._entries = {
            key: widgets.Text(
                description=label,
                continuous_update=False,
                style={"description_width": "245px"},
                layout={"width": "440px"},
            )
            for key, label, _ in _FIELDS
        }
        self._answer = widgets.HTML()
        row = widgets.HBox(
            [
                button("Compare", self._refresh, icon="check"),
                button("Fill in what is predicted", self.fill_in, icon="undo"),
            ]
        )
        super().__init__([*self._entries.values(), row, self._answer])
        self.add_class("ropecalc-debrief")
        self.until_closed(session.on_units(lambda _: self.fill_in()))
        self.fill_in()

    def fill_in(self) -> None:
        """What is predicted for the governing station, into the fields."""
        display = self._session.display
        board = compute(dict(self._settings()))
        row = board.governing
        if board.plan is None or row is None or row.total is None:
            for entry in self._entries.values():
                entry.value = ""
        else:
            way = row.station.way(Method.TRACK)
            predicted = (
                board.plan.site.litter.mass,
                way.haul_tension,
                way.line_tension,
                way.haul_elevation,
                way.ground_depression,
                CELL_ERROR,
                CELL_ERROR,
            )
            for (key, _, kind), value in zip(_FIELDS, predicted, strict=True):
                self._entries[key].value = display.show(value or 0.0, kind)
        self._refresh()

    def type_in(self, key: str, text: str) -> None:
        """Put ``text`` into a field, as the learner would, and compare."""
        self._entries[key].value = text
        self._refresh()

    def summary(self) -> str:
        """The comparison in plain words."""
        return "\n".join(self._lines())

    def _lines(self) -> list[str]:
        values: dict[str, float] = {}
        for key, label, kind in _FIELDS:
            try:
                values[key] = parse_quantity(self._entries[key].value, kind)[0]
            except ValueError as error:
                return [f"{label}: {error}"]
        load = float(weight(mass=values["mass"]))
        angles = {"haul_elevation": values["up"], "ground_depression": values["down"]}
        try:
            found = compare_readings(
                load=load,
                haul_reading=values["haul"],
                track_reading=values["track"],
                haul_cell_error=values["haul_error"],
                track_cell_error=values["track_error"],
                **angles,
            )
            should = float(haul_tension_with_track(load=load, **angles))
        except ValueError as error:
            return [str(error)]
        display = self._session.display
        told = found.explain(display)
        more = 100 * (values["haul"] / should - 1) if should > 0 else 0.0
        beside = (
            f"With these angles and this weight, balance asks for "
            f"{display.show(should, Kind.FORCE)} in the haul line; its cell shows "
            f"{display.show(values['haul'], Kind.FORCE)}, {_beside(more)}."
        )
        return [beside, *(line.sentence for line in told.lines), told.result, cautions.STATIC]

    def _refresh(self) -> None:
        """Show the comparison of what stands in the fields now."""
        lines = "".join(f"<p>{escape(line)}</p>" for line in self._lines())
        self._answer.value = f'<div role="status">{lines}</div>'


def _beside(more: float) -> str:
    """A difference in per cent, in words."""
    if abs(more) < 0.5:
        return "which is the same"
    return f"which is {abs(more):.0f} % {'more' if more > 0 else 'less'}"
