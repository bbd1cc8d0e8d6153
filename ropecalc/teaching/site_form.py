"""A form for a site: type the survey in, see the plan, save the site file. No code needed.

The entries go through the same reader as a site file, so the form refuses exactly what the file
would, in the same words.
"""

import re
from collections.abc import Callable, Collection, Mapping
from decimal import Decimal
from functools import partial
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as widgets
import tomli_w

from ropecalc.mechanics.holding import Method
from ropecalc.planning.fields import EDGE_FIELDS, FIELDS, Field, Need
from ropecalc.planning.files import write_whole
from ropecalc.planning.problem import SiteError
from ropecalc.planning.profile import RockPoint
from ropecalc.planning.raise_plan import plan_raise
from ropecalc.planning.site import Site
from ropecalc.planning.site_file import parse_site, read_document, read_quantity
from ropecalc.teaching.plan_view import PlanView, find_file
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown
from ropecalc.units import Kind, QuantityError, find_unit, from_si, parse_number, units_of

THE_FORM = "the form, not saved"
"""What a plan says it was made from, while no file holds the same entries."""

_TITLES = {
    "site": "Site",
    "haul_directional": "Haul directional",
    "track_directional": "Track directional",
    "hub": "Hub",
    "load": "Load",
    "litter": "Litter",
    "raise": "Raise",
    "limits": "Limits (yours, if you want to compare)",
}
_HEADER = """\
# Written by the form of the course page "Plan a raise".
# Every length, mass and force carries its unit; offsets count outwards, heights upwards.

"""
_BLANK_ROWS = 4
_STYLE = "<style>.ropecalc-wrong .widget-label {color: #b00020; font-weight: bold;}</style>"
_WIDE = {"description_width": "400px"}


def open_site_form(folder: str | Path = "sites", session: Session | None = None) -> "SiteForm":
    """The form; it opens and saves site files in ``folder`` (below the course's folder)."""
    return SiteForm(find_file(folder), session or Session(Record.open()))


class SiteForm(Shown):
    """The form, its buttons, a sentence that says what happened, and the plan."""

    def __init__(self, folder: Path, session: Session) -> None:
        self.folder = folder
        self._session = session
        self._result = widgets.VBox()
        self._status = widgets.HTML()
        self._above = widgets.HTML()
        self._said = ""
        self._stored: tuple[str, dict[str, Any]] = (THE_FORM, {})
        self._view: PlanView | None = None
        self.entries = {field.path: _entry(field) for field in FIELDS}
        self.unit = widgets.Dropdown(
            options=[(f"{u.words} ({u.symbol})", u.symbol) for u in units_of(Kind.LENGTH)],
            description="Unit of offsets and heights below",
            style=_WIDE,
            layout={"width": "640px"},
        )
        self.points = _Rows(("offset", "height", "note"), "Add a point", self._changed)
        self.edges = _Rows(
            tuple(field.key for field in EDGE_FIELDS), "Add a protected edge", self._changed
        )
        self.points.fill([("", "", "")] * _BLANK_ROWS)
        self.files = widgets.Dropdown(description="Start from", layout={"width": "420px"})
        self.open_button = _button("Open", self.open_chosen)
        self.plan_button = _button("Show the plan", self.show_plan, "primary")
        self.save_button = _button("Save", self.save)
        self.file_name = widgets.Text(
            description="Save as", placeholder="my-wall.toml", layout={"width": "420px"}
        )
        self.replace = widgets.Checkbox(
            description="Replace the file of that name", indent=False, layout={"display": "none"}
        )
        for entry in (*self.entries.values(), self.unit):
            entry.observe(self._changed, names="value")
        self._list_files()
        super().__init__(
            [
                self._above,
                widgets.HBox([self.files, self.open_button], layout={"flex_flow": "row wrap"}),
                *self._groups(),
                widgets.HBox([self.plan_button]),
                widgets.HBox(
                    [self.file_name, self.save_button, self.replace],
                    layout={"flex_flow": "row wrap"},
                ),
                self._status,
                self._result,
            ]
        )
        self._say("Fill in the form, or open a site, then choose “Show the plan”.")

    def _groups(self) -> list[widgets.Widget]:
        groups: list[widgets.Widget] = []
        for table, title in _TITLES.items():
            fields = [field for field in FIELDS if field.table == table]
            groups.append(widgets.HTML(f"<h4>{escape(title)}</h4>"))
            for field in fields:
                groups.append(self.entries[field.path])
                groups += [_help(field.help, indent=True)] if field.help else []
            if table == "site":
                groups += self._wall()
        return groups

    def _wall(self) -> list[widgets.Widget]:
        return [
            widgets.HTML("<h4>Wall</h4>"),
            _help(
                "The corners of the wall from its foot up to its lip, one in each row; the rock "
                "is straight in between. Two points at one height make a roof."
            ),
            self.unit,
            self.points,
            widgets.HTML("<h4>Protected edges</h4>"),
            _help(
                "Only if the haul line may bear on an edge: the height of that point of the wall, "
                "with its unit, and the friction coefficient on your edge protection."
            ),
            self.edges,
        ]

    # --- what the buttons do

    def open_chosen(self) -> None:
        """Fill the form from the chosen file."""
        if not self.files.value:
            self._blank()
            self._say("The form is empty.")
            return
        path = self.folder / self.files.value
        try:
            document = read_document(path)
            site = parse_site(document, str(path), path.parent)
        except ValueError as error:
            self._say(str(error), wrong=True)
            return
        self._fill(document, site)
        own = path.name if path.name.startswith("my-") else f"my-{path.name}"
        self.file_name.value = "-".join(own.split())
        self._stored = (path.name, self.document())
        self._mark(())
        tables = " and ".join(table.name for table in site.read_from)
        merged = f" The wall's points come from {tables}; saved, they stand in the site file."
        self._say(
            f"The form now holds {path.name}. The file itself has not been changed."
            + merged * bool(tables)
        )

    def show_plan(self) -> None:
        """Check the entries and show the plan, or say what is wrong."""
        site = self._checked()
        if site is None:
            return
        try:
            plan = plan_raise(site)
        except ValueError as error:
            self._result.children = ()
            self._say(
                self._in_words(error) if isinstance(error, SiteError) else str(error), wrong=True
            )
            return
        if self._view is None:
            self._view = PlanView(plan, self._session)
        else:
            self._view.show(plan)
        self._result.children = (self._view,)
        self._say("Below is the plan of what the form holds.")

    def save(self) -> None:
        """Check the entries and write the site file; never over another one unasked."""
        if self._checked() is None:
            return
        name = "-".join(self.file_name.value.split())
        name = name if not name or name.endswith(".toml") else f"{name}.toml"
        if not re.fullmatch(r"[\w][\w.-]*\.toml", name):
            self._say(
                "Give the file a name of letters, digits and hyphens, for example my-wall.toml.",
                wrong=True,
            )
            return
        path = self.folder / name
        if path.exists() and not self.replace.value:
            self.replace.layout.display = ""
            self._say(
                f"There is already a file {name}; nothing has been written. Choose another name, "
                "or tick “Replace the file of that name” and save again.",
                wrong=True,
            )
            return
        try:
            write_whole(path, _HEADER + tomli_w.dumps(self.document()))
        except ValueError as error:
            self._say(str(error), wrong=True)
            return
        self.replace.value = False
        self.replace.layout.display = "none"
        self.file_name.value = name
        self._list_files(name)
        self._stored = (name, self.document())
        self._say(f"Saved as {name} in the folder {self.folder.name}.")

    def document(self) -> dict[str, Any]:
        """The entries as the tables of a site file; what is blank is left out."""
        tables: dict[str, Any] = {}
        for field in FIELDS:
            text = self.entries[field.path].value.strip()
            if text:
                tables.setdefault(field.table, {})[field.key] = text
            if field.path == "[site] surveyed_on":  # the wall follows the site, as in a file
                tables["wall"] = {"unit": self.unit.value, "points": self._wall_points()}
        edges = [row for row in self.edges.values() if any(row)]
        if edges:
            keys = [field.key for field in EDGE_FIELDS]
            tables["protected_edge"] = [
                {key: text for key, text in zip(keys, row, strict=True) if text} for row in edges
            ]
        return tables

    def summary(self) -> str:
        """What the form says, and the plan if one is shown."""
        shown = f"\n{self._view.summary()}" if self._result.children and self._view else ""
        return f"A form for a site. {self._said}{shown}"

    # --- between the entries and the reader

    def _checked(self) -> Site | None:
        """The site that the entries describe; None, with every fault marked, if there is none."""
        found = self._faulty_entries()
        document = self.document()
        name, stored = self._stored
        site = None
        try:
            site = parse_site(document, name if document == stored else THE_FORM, self.folder)
        except SiteError as error:
            found.setdefault(error.where, self._in_words(error))
        self._mark(found)
        if found:
            self._result.children = ()
            self._say(*found.values(), wrong=True)
            return None
        return site

    def _faulty_entries(self) -> dict[str, str]:
        """What is wrong with each entry taken alone, by its path."""
        found = {}
        for field in FIELDS:
            text = self.entries[field.path].value.strip()
            try:
                if not text and field.need is Need.REQUIRED:
                    raise SiteError(THE_FORM, field.path, "", "")
                if text and field.kind is not None:
                    read_quantity(field, text, THE_FORM)
            except SiteError as error:
                found[field.path] = self._in_words(error)
        return found

    def _mark(self, faulty: Collection[str]) -> None:
        """A cross and another colour at the label of each faulty entry, and at no other."""
        for field in FIELDS:
            entry = self.entries[field.path]
            wrong = field.path in faulty
            entry.description = f"✗ {field.label}" if wrong else field.label
            (entry.add_class if wrong else entry.remove_class)("ropecalc-wrong")

    def _in_words(self, error: SiteError) -> str:
        """The reader's message, with the form's own name for the entry."""
        for field in FIELDS:
            if error.where == field.path:
                if not self.entries[field.path].value.strip():
                    return f"“{field.label}” is blank. Write for example {field.example}."
                return f"“{field.label}”: {error.problem} {error.remedy}"
        where = error.where.replace("[wall] points", "Wall").replace("[[protected_edge]]", "Edge")
        return f"{where}: {error.problem} {error.remedy}"

    def _changed(self, _: object) -> None:
        """A plan of other entries than those in the form must not stand below it."""
        if self._result.children:
            self._result.children = ()
            self._say("The form has changed: choose “Show the plan” again.")

    def _wall_points(self) -> list[list[object]]:
        rows = [row for row in self.points.values() if any(row)]
        return [
            [_plain(offset), _plain(height), *([note] if note else [])]
            for offset, height, note in rows
        ]

    def _fill(self, document: Mapping[str, Any], site: Site) -> None:
        for field in FIELDS:
            self.entries[field.path].value = _checked_text(site, field) or _typed(
                document.get(field.table, {}).get(field.key, "")
            )
        self.unit.value = find_unit(document["wall"]["unit"]).symbol
        self.points.fill([_row(point, self.unit.value) for point in site.wall.points])
        self.edges.fill(
            [
                tuple(_typed(edge.get(field.key, "")) for field in EDGE_FIELDS)
                for edge in document.get("protected_edge", [])
            ]
        )

    def _blank(self) -> None:
        for field in FIELDS:
            self.entries[field.path].value = _default(field)
        self.points.fill([("", "", "")] * _BLANK_ROWS)
        self.edges.fill([])
        self._mark(())
        self._result.children = ()

    def _list_files(self, chosen: str = "") -> None:
        names = sorted(path.name for path in self.folder.glob("*.toml"))
        self.files.options = [("an empty form", ""), *((name, name) for name in names)]
        self.files.value = chosen if chosen in names else ""

    def _say(self, *sentences: str, wrong: bool = False) -> None:
        """Say it below the buttons; what is wrong also above the form."""
        if len(sentences) > 1:
            sentences = (f"{len(sentences)} things to put right:", *sentences)
        self._said = " ".join(sentences)
        first, *others = (escape(sentence) for sentence in sentences)
        points = "".join(f"<li>{point}</li>" for point in others)
        said = f"{first}<ul>{points}</ul>" if points else first
        role = "alert" if wrong else "status"
        weight = "bold" if wrong else "normal"
        style = f"font-weight:{weight}; white-space:normal; line-height:1.4"
        self._status.value = f'<div role="{role}" style="{style}">{said}</div>'
        self._above.value = f'{_STYLE}<div style="{style}">{said}</div>' if wrong else ""


class _Rows(widgets.VBox):
    """A small table of text entries: rows can be added below any row, and removed."""

    def __init__(
        self, columns: tuple[str, ...], add: str, changed: Callable[[object], None]
    ) -> None:
        self._columns = columns
        self._changed = changed
        self._add = _button(add, lambda: self._insert(len(self._rows)))
        self._rows: list[tuple[widgets.Text, ...]] = []
        super().__init__()
        self.fill([])

    def fill(self, rows: list[tuple[str, ...]]) -> None:
        """Show exactly these rows."""
        self._rows = [self._boxes(row) for row in rows]
        self._lay_out()

    def values(self) -> list[tuple[str, ...]]:
        """What stands in each row, top first."""
        return [tuple(box.value.strip() for box in row) for row in self._rows]

    def _boxes(self, texts: tuple[str, ...]) -> tuple[widgets.Text, ...]:
        boxes = tuple(
            widgets.Text(
                value=text,
                description=column,
                style={"description_width": "55px"},
                layout={"width": "230px" if column == "note" else "170px"},
            )
            for column, text in zip(self._columns, texts, strict=True)
        )
        for box in boxes:
            box.observe(self._changed, names="value")
        return boxes

    def _insert(self, index: int) -> None:
        self._rows.insert(index, self._boxes(("",) * len(self._columns)))
        self._lay_out()

    def _remove(self, row: tuple[widgets.Text, ...]) -> None:
        self._rows = [other for other in self._rows if other is not row]
        self._lay_out()

    def _lay_out(self) -> None:
        lines = []
        for number, row in enumerate(self._rows, start=1):
            remove = _button("Remove", partial(self._remove, row))
            below = _button("Add below", partial(self._insert, number))
            remove.tooltip, below.tooltip = f"Remove row {number}", f"Add a row below {number}"
            label = widgets.Label(str(number), layout={"width": "24px"})
            lines.append(
                widgets.HBox([label, *row, below, remove], layout={"flex_flow": "row wrap"})
            )
        self.children = (*lines, widgets.HBox([self._add]))
        self._changed(None)


def _entry(field: Field) -> Any:
    if field.path == "[raise] guided_by":
        return widgets.Dropdown(
            options=[method.value for method in reversed(Method)],
            description=field.label,
            style=_WIDE,
            layout={"width": "640px"},
        )
    return widgets.Text(
        description=field.label,
        placeholder=(
            "blank, or your own figure"
            if field.table == "limits"
            else f"for example {field.example}"
        ),
        tooltip=field.help or field.label,
        style=_WIDE,
        layout={"width": "640px"},
    )


def _default(field: Field) -> str:
    return Method.TRACK.value if field.path == "[raise] guided_by" else ""


def _help(text: str, indent: bool = False) -> widgets.HTML:
    left = 410 if indent else 0
    return widgets.HTML(
        f"<p style='margin:0 0 6px {left}px; line-height:1.3; color:#555; font-size:90%'>"
        f"{escape(text)}</p>"
    )


def _button(label: str, act: Callable[[], object], style: str = "") -> widgets.Button:
    button = widgets.Button(description=label, button_style=style, layout={"width": "auto"})
    button.on_click(lambda _: act())
    return button


def _plain(text: str) -> object:
    """A number, if the text is one; otherwise the text, for the reader to refuse."""
    try:
        number, unit = parse_number(text)
    except QuantityError:
        return text
    return text if unit else number


def _checked_text(site: Site, field: Field) -> str:
    """What the reader made of an entry that is words, not a quantity; "" for a quantity."""
    if field.path == "[raise] guided_by":
        return site.lift.guided_by.value
    return str(getattr(site, field.key)) if field.table == "site" else ""


def _typed(value: object) -> str:
    """A quantity from a file as it is typed into a form: no exponent, no line break."""
    if isinstance(value, int | float):
        return f"{Decimal(repr(value)):f}"
    return " ".join(str(value).split())


def _row(point: RockPoint, unit: str) -> tuple[str, str, str]:
    offset, height = (
        f"{Decimal(f'{round(from_si(value, unit), 6):.10g}'):f}"
        for value in (point.offset, point.height)
    )
    return offset, height, " ".join(point.note.split())
