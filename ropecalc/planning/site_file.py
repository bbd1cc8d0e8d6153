"""Reading a site file (TOML) into a :class:`~ropecalc.planning.site.Site`.

The form in the notebook sends its entries through the same reader, so that a site means the
same whether it was typed into a form or a file.
"""

import datetime
import math
import os
import re
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import replace
from decimal import Decimal
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from ropecalc.mechanics.holding import Method, Point, Rig
from ropecalc.planning.fields import (
    EDGE_FIELDS,
    FIELDS,
    TABLES,
    WALL_KEYS,
    Field,
    Need,
    Sign,
    field_at,
)
from ropecalc.planning.problem import SiteError
from ropecalc.planning.profile import ProfileError, RockPoint, WallProfile
from ropecalc.planning.site import Limits, Litter, ProtectedEdge, Raise, Site, protect
from ropecalc.planning.survey_table import read_survey_table, read_text
from ropecalc.units import Kind, QuantityError, find_unit, parse_quantity, units_of

Document = Mapping[str, object]

_LARGEST = {Kind.LENGTH: 5_000.0, Kind.MASS: 10_000.0, Kind.FORCE: 1e6, Kind.RATIO: 2.0}
"""Beyond these (SI) a number is a slip of the pen, not a raise."""


def read_site(path: str | Path) -> Site:
    """The site described by the file at ``path``. Raises :class:`SiteError` in words."""
    path = Path(path)
    site = parse_site(read_document(path), str(path), path.parent)
    return replace(site, read_from=(path, *site.read_from))


def read_document(path: Path) -> dict[str, Any]:
    """The tables of the site file at ``path``, not yet checked. Raises :class:`SiteError`."""
    text = read_text(path)
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise SiteError(
            str(path),
            "",
            f"{_broken_line(text, str(error))} does not follow the rules of TOML, in which site "
            "files are written.",
            'Each entry reads  key = "value unit"  under its [table]; start from a demo site.',
        ) from None
    except (RecursionError, ValueError):
        raise SiteError(
            str(path), "", "the file cannot be taken apart.", "Start again from a demo site."
        ) from None


def _broken_line(text: str, message: str) -> str:
    """The line that TOML's reader complains of, by number and text; the last if it names none."""
    lines = text.rstrip().splitlines() or [""]
    named = re.search(r"at line (\d+)", message)
    number = min(int(named[1]), len(lines)) if named else len(lines)
    return f"line {number} ({_shown(lines[number - 1])})"


def parse_site(document: Document, source: str, folder: Path) -> Site:
    """The site in ``document`` (tables of entries); a wall's table file is sought in ``folder``.

    ``source`` is what error messages call the document. Raises :class:`SiteError`.
    """
    reader = _Reader(document, source, folder)
    reader.check_names()
    name = reader.text("site", "name")
    wall = reader.wall()
    return Site(
        name=name,
        datum=reader.text("site", "datum"),
        surveyed_on=reader.text("site", "surveyed_on"),
        wall=wall,
        rig=reader.rig(),
        litter=Litter(
            mass=reader.number("load", "mass"),
            **{
                key: reader.number("litter", key)
                for key in ("bridle", "half_width", "height", "clearance")
            },
        ),
        lift=Raise(
            **{
                key: reader.number("raise", key)
                for key in ("start_height", "guidance_ends", "station_spacing", "line_clearance")
            },
            guided_by=reader.method(),
        ),
        edges=reader.edges(wall),
        limits=Limits(
            **{
                field.key: reader.optional_number("limits", field.key)
                for field in FIELDS
                if field.table == "limits"
            }
        ),
        source=source,
        read_from=tuple(reader.read_from),
    )


def read_quantity(field: Field, arrived: object, source: str, where: str = "") -> float:
    """The SI value of one entry, checked against its field. Raises :class:`SiteError`."""
    assert field.kind is not None
    where = where or field.path
    ask = f"Write for example {field.example}."
    quoted = f'Write for example {field.key} = "{field.example}".'
    if not isinstance(arrived, str):
        if field.kind is Kind.RATIO and _is_number(arrived):
            arrived = f"{Decimal(repr(arrived)):f}"
        elif _is_number(arrived):
            units = ", ".join(unit.symbol for unit in units_of(field.kind))
            raise SiteError(
                source,
                where,
                f"{arrived} has no unit; a {field.kind} needs one of: {units}.",
                quoted,
            )
        else:
            raise SiteError(
                source,
                where,
                f"{_shown(arrived)} is not a {field.kind} in quotation marks.",
                quoted,
            )
    try:
        value, _ = parse_quantity(arrived, field.kind)
    except QuantityError as error:
        # Its own example, which may be of another kind, gives way to the field's.
        problem, example, _ = _cut(str(error), 300).partition(", for example")
        raise SiteError(source, where, problem + "." * bool(example), ask) from None
    largest = _LARGEST[field.kind]
    if not abs(value) <= largest:
        unit = {Kind.LENGTH: " m", Kind.MASS: " kg", Kind.FORCE: " N"}.get(field.kind, "")
        raise SiteError(
            source,
            where,
            f"“{_cut(arrived)}” is out of range: at most {largest:g}{unit} is expected.",
            "Check the digits and the unit.",
        )
    too_small = {Sign.POSITIVE: value <= 0, Sign.NOT_NEGATIVE: value < 0, Sign.ANY: False}
    if too_small[field.sign]:
        raise SiteError(
            source, where, f"“{arrived}” arrived, but {field.sign.value} is expected.", ask
        )
    return value


class _Reader:
    """Takes one document apart; every method raises :class:`SiteError` in words."""

    def __init__(self, document: Document, source: str, folder: Path) -> None:
        self.document = document
        self.source = source
        self.folder = folder
        self.read_from: list[Path] = []

    def refuse(self, where: str, problem: str, remedy: str) -> SiteError:
        return SiteError(self.source, where, problem, remedy)

    def check_names(self) -> None:
        """Refuse tables and keys that nobody reads: most are misspelt."""
        self._check_keys(self.document, TABLES, "")
        for table in TABLES:
            if table == "protected_edge":
                for row, entry in enumerate(self._edge_tables(), start=1):
                    known = [field.key for field in EDGE_FIELDS]
                    self._check_keys(entry, known, f"[[protected_edge]] {row}")
            elif table in self.document:
                keys = [field.key for field in FIELDS if field.table == table]
                self._check_keys(self.table(table), keys or WALL_KEYS, f"[{table}]")

    def _check_keys(self, entries: Document, known: Iterable[str], where: str) -> None:
        known = list(known)
        for key in entries:
            if key not in known:
                close = get_close_matches(key, known, n=1)
                guess = f"Did you mean {close[0]}?" if close else f"Known: {', '.join(known)}."
                place = f"{where} {_cut(key)}".strip() if where else f"[{_cut(key)}]"
                raise self.refuse(place, "there is no such entry in a site file.", guess)

    def table(self, name: str) -> Document:
        """The entries of ``[name]``; empty if it is not there."""
        entries = self.document.get(name, {})
        if not isinstance(entries, Mapping):
            raise self.refuse(
                f"[{name}]",
                f"{_shown(entries)} is not a table.",
                f"Write [{name}] on a line of its own and its entries below it.",
            )
        return entries

    def entry(self, field: Field) -> object | None:
        """What was written for ``field``; None if it was left out and may be."""
        arrived = self.table(field.table).get(field.key)
        if arrived is None and field.need is Need.REQUIRED:
            raise self.refuse(
                field.path,
                f"this entry is missing ({field.label}).",
                f'Add under [{field.table}]:  {field.key} = "{field.example}".',
            )
        return arrived

    def number(self, table: str, key: str) -> float:
        """The SI value of a required entry."""
        field = field_at(table, key)
        return read_quantity(field, self.entry(field), self.source)

    def optional_number(self, table: str, key: str) -> float | None:
        """The SI value of an entry that may be left out."""
        field = field_at(table, key)
        arrived = self.entry(field)
        return None if arrived is None else read_quantity(field, arrived, self.source)

    def text(self, table: str, key: str) -> str:
        """A line of text; empty if it was left out and may be. Dates are taken as text."""
        field = field_at(table, key)
        arrived = self.entry(field)
        if arrived is None:
            return ""
        if isinstance(arrived, datetime.date):
            return arrived.isoformat()
        if not isinstance(arrived, str):
            raise self.refuse(
                field.path,
                f"{_shown(arrived)} is not text in quotation marks.",
                f'Write for example {key} = "{field.example}".',
            )
        line = " ".join(arrived.split())
        if not line and field.need is Need.REQUIRED:
            raise self.refuse(field.path, "nothing is written here.", f"Write {field.label}.")
        if not line.isprintable() or len(line) > 300:
            raise self.refuse(
                field.path,
                "the text is longer than 300 characters or holds signs that cannot be printed.",
                "Shorten it to one plain line.",
            )
        return line

    def method(self) -> Method:
        """How the litter is guided."""
        text = self.text("raise", "guided_by") or Method.TRACK.value
        known = [method.value for method in Method]
        if text.lower() not in known:
            raise self.refuse(
                "[raise] guided_by",
                f"“{_cut(text)}” is no way of guiding known here.",
                f"Write one of: {', '.join(known)}.",
            )
        return Method(text.lower())

    def rig(self) -> Rig:
        """The directionals and the hub; the track directional is the haul directional if absent."""
        haul = self.point("haul_directional")
        separate = bool(self.table("track_directional"))
        track = self._track_directional() if separate else haul
        return Rig(haul_directional=haul, track_directional=track, hub=self.point("hub"))

    def _track_directional(self) -> Point:
        entries = self.table("track_directional")
        for key, other in (("offset", "height"), ("height", "offset")):
            if key not in entries:
                raise self.refuse(
                    f"[track_directional] {key}",
                    f"{other} is given, but {key} is missing.",
                    "Give both, or neither if the track line runs through the haul directional.",
                )
        return self.point("track_directional")

    def point(self, table: str) -> Point:
        """The offset and height of an anchor."""
        return Point(self.number(table, "offset"), self.number(table, "height"))

    def wall(self) -> WallProfile:
        """The wall, from points in the site file or from a survey table beside it."""
        entries = self.table("wall")
        if "wall" not in self.document:
            raise self.refuse(
                "[wall]",
                "there is no [wall] table.",
                'Add [wall] with unit = "m" and points = [[offset, height], ...] below it.',
            )
        factor = self._wall_unit(entries)
        if ("points" in entries) == ("file" in entries):
            both = "points" in entries
            raise self.refuse(
                "[wall]",
                "both points and file are given."
                if both
                else "the wall's points are missing: neither points nor file is given.",
                "Give points = [[offset, height], ...] or file = "
                f'"wall.csv"{", not both" if both else ""}.',
            )
        if "points" in entries:
            source, where = self.source, "[wall] points"
            points = self._inline_points(entries["points"], factor)
        else:
            path = self._table_path(entries["file"])
            source, where = str(path), ""
            self.read_from.append(path)
            points = read_survey_table(path, factor)
        try:
            return WallProfile(points)
        except ProfileError as error:
            row = f"point {error.row} from the foot" if error.row else ""
            place = ", ".join(part for part in (where, row) if part)
            raise SiteError(source, place, error.problem, error.remedy) from None

    def _wall_unit(self, entries: Document) -> float:
        arrived = entries.get("unit")
        ask = 'Write unit = "m" or unit = "ft" under [wall].'
        if arrived is None:
            raise self.refuse("[wall] unit", "the unit of the wall's points is missing.", ask)
        try:
            unit = find_unit(arrived) if isinstance(arrived, str) else None
        except QuantityError:
            unit = None
        if unit is None or unit.kind is not Kind.LENGTH:
            raise self.refuse("[wall] unit", f"{_shown(arrived)} is not a unit of length.", ask)
        return unit.factor

    def _inline_points(self, arrived: object, factor: float) -> tuple[RockPoint, ...]:
        ask = "Write points = [[offset, height], [offset, height], ...] from the foot up."
        if not isinstance(arrived, list):
            raise self.refuse("[wall] points", f"{_shown(arrived)} is not a list of points.", ask)
        points = []
        for row, pair in enumerate(arrived, start=1):
            where = f"[wall] points, point {row}"
            numbers = pair[:2] if isinstance(pair, list) and len(pair) in (2, 3) else []
            note = pair[2] if isinstance(pair, list) and len(pair) == 3 else ""
            if len(numbers) != 2 or not isinstance(note, str):
                raise self.refuse(where, f"{_shown(pair)} is not [offset, height].", ask)
            for column, number in zip(("offset", "height"), numbers, strict=True):
                limit = _LARGEST[Kind.LENGTH]
                if not _is_number(number) or not -limit <= _as_float(number) * factor <= limit:
                    raise self.refuse(
                        where,
                        f"its {column} is {_shown(number)}, but a plain number of the wall's "
                        f"unit, at most {limit:g} m, is expected.",
                        "Write digits without quotation marks and without a unit.",
                    )
            offset, height = (float(number) * factor for number in numbers)
            points.append(RockPoint(offset, height, note))
        return tuple(points)

    def _table_path(self, arrived: object) -> Path:
        if not isinstance(arrived, str) or not arrived.strip():
            raise self.refuse(
                "[wall] file",
                f"{_shown(arrived)} is not a file name.",
                'Write the name of the survey table, for example file = "wall.csv".',
            )
        path = self.folder / arrived.strip()
        # Opening a site file that somebody sent must not read files elsewhere.
        if "\0" in arrived or not _inside(path, self.folder):
            raise self.refuse(
                "[wall] file",
                f"{_shown(arrived)} lies outside the site file's folder.",
                "Put the survey table beside the site file and write its name alone.",
            )
        return path

    def _edge_tables(self) -> list[Document]:
        tables = self.document.get("protected_edge", [])
        if not isinstance(tables, list) or not all(isinstance(t, Mapping) for t in tables):
            raise self.refuse(
                "[[protected_edge]]",
                "protected edges are written as tables with double brackets.",
                "Write [[protected_edge]] on a line of its own, with height and friction below.",
            )
        return tables

    def edges(self, wall: WallProfile) -> tuple[ProtectedEdge, ...]:
        """The protected edges, lowest first, each at a surveyed point of the wall."""
        found: dict[float, ProtectedEdge] = {}
        for row, entries in enumerate(self._edge_tables(), start=1):
            values = {}
            for field in EDGE_FIELDS:
                where = f"[[protected_edge]] {row}, {field.key}"
                if field.key not in entries:
                    raise self.refuse(
                        where,
                        f"this entry is missing ({field.label}).",
                        f'Add  {field.key} = "{field.example}".',
                    )
                values[field.key] = read_quantity(field, entries[field.key], self.source, where)
            try:
                edge = protect(wall, **values)
            except ValueError as error:
                raise self.refuse(
                    f"[[protected_edge]] {row}, height",
                    str(error),
                    "Name the height of a surveyed point, or add that point to the wall.",
                ) from None
            if edge.height in found:
                raise self.refuse(
                    f"[[protected_edge]] {row}, height",
                    f"the edge at {edge.height:g} m is named twice.",
                    "Keep one of them.",
                )
            found[edge.height] = edge
        return tuple(found[height] for height in sorted(found))


def _inside(path: Path, folder: Path) -> bool:
    """Whether ``path``, all links followed, lies in ``folder`` or below it."""
    return Path(os.path.realpath(path)).is_relative_to(os.path.realpath(folder))


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _as_float(number: int | float) -> float:
    """A number as a float; one that is too large becomes infinite."""
    try:
        return float(number)
    except OverflowError:
        return math.inf


def _shown(value: object) -> str:
    if isinstance(value, float) and not math.isfinite(value):
        return "a number that is not finite"
    return f"“{_cut(str(value))}”"


def _cut(text: str, longest: int = 60) -> str:
    """One line of at most so many signs."""
    line = " ".join(text.split())
    return line if len(line) <= longest else line[: longest - 3] + "..."
