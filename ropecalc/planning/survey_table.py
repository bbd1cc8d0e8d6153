"""Reading a wall's points from a spreadsheet table (CSV).

Columns ``offset`` and ``height``, and ``note`` if wanted, named in the first row. Fields are
separated by commas, or by semicolons or tabs; with those two a decimal comma is understood.
"""

import csv
import io
import math
from pathlib import Path

from ropecalc.planning.problem import SiteError
from ropecalc.planning.profile import MOST_POINTS, RockPoint

LARGEST_FILE = 2_000_000
_REQUIRED = ("offset", "height")
_COLUMNS = (*_REQUIRED, "note")


def read_text(path: Path) -> str:
    """The text of a small UTF-8 file, with or without a byte order mark.

    Raises :class:`SiteError` in words for a file that is missing, too big, not text or not UTF-8.
    """
    name = str(path)
    try:
        if path.is_dir():
            raise SiteError(name, "", "this is a folder, not a file.", "Name the file itself.")
        if path.exists() and not path.is_file():  # reading a pipe could wait for ever
            raise SiteError(
                name, "", "this is not an ordinary file.", "Save it as a file and name that."
            )
        with path.open("rb") as stream:  # never more than that, whatever the name leads to
            data = stream.read(LARGEST_FILE + 1)
    except FileNotFoundError:
        raise SiteError(
            name, "", "there is no such file.", "Check the name and the folder."
        ) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise SiteError(
            name, "", f"the file cannot be read ({reason}).", "Check that you may open it."
        ) from None
    if len(data) > LARGEST_FILE:
        raise SiteError(
            name,
            "",
            f"the file is larger than {LARGEST_FILE // 1_000_000} MB, which no survey needs.",
            "Check that this is the right file.",
        )
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise SiteError(
            name, "", "the file is saved as UTF-16 text.", "Save it again as UTF-8 text."
        )
    if b"\0" in data:
        raise SiteError(
            name,
            "",
            "this is not a text file.",
            "Save a spreadsheet as CSV (UTF-8), a site file as plain text.",
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise SiteError(
            name,
            f"line {line}",
            "a character is not saved as UTF-8.",
            "Save the file again and choose the encoding UTF-8.",
        ) from None


def read_survey_table(path: Path, unit_factor: float) -> tuple[RockPoint, ...]:
    """The wall's points from the table at ``path``, in metres, in the order of its rows.

    ``unit_factor`` is how many metres one unit of the table is. Raises :class:`SiteError` that
    names the file, row and column.
    """
    text = read_text(path)
    source = str(path)
    header, _, _ = text.lstrip("\r\n").partition("\n")
    separator = next((mark for mark in ";\t" if mark in header), ",")
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    columns: list[str] = []
    points: list[RockPoint] = []
    try:
        for row in reader:
            cells = [cell.strip() for cell in row]
            if not any(cells):
                continue
            if not columns:
                columns = _columns(cells, source)
                continue
            points.append(
                _point(cells, columns, separator, unit_factor, source, f"row {reader.line_num}")
            )
            if len(points) > MOST_POINTS:
                raise SiteError(
                    source,
                    f"row {reader.line_num}",
                    f"the table has more than {MOST_POINTS} points.",
                    "Keep the corners of the wall; straight stretches need no points between.",
                )
    except csv.Error as error:
        raise SiteError(
            source,
            f"row {reader.line_num}",
            f"the row cannot be read as a table ({error}).",
            "Check its quotation marks, or save the table from the spreadsheet again.",
        ) from None
    if not columns:
        raise SiteError(
            source,
            "",
            "the table is empty.",
            "Begin with a row that reads offset,height and put one point of the wall in each row.",
        )
    return tuple(points)


def _columns(cells: list[str], source: str) -> list[str]:
    names = [cell.lower() for cell in cells]
    wrong = [name for name in names if name not in _COLUMNS]
    missing = [name for name in _REQUIRED if name not in names]
    if wrong or missing or len(set(names)) != len(names):
        arrived = ", ".join(f"“{cell}”" for cell in cells)
        raise SiteError(
            source,
            "row 1",
            f"the first row names the columns {arrived}, but offset and height are expected, "
            "and note if you like.",
            "Name the columns offset, height (and note); the unit belongs in the site file: "
            '[wall] unit = "m".',
        )
    return names


def _point(
    cells: list[str],
    columns: list[str],
    separator: str,
    unit_factor: float,
    source: str,
    row: str,
) -> RockPoint:
    if len(cells) != len(columns):
        hint = (
            "If the decimals are written with commas, separate the columns with semicolons."
            if separator == "," and len(cells) > len(columns)
            else "Fill in one cell for each column."
        )
        raise SiteError(
            source, row, f"there are {len(cells)} cells under {len(columns)} columns.", hint
        )
    named = dict(zip(columns, cells, strict=True))
    offset, height = (
        _number(named[column], separator, source, f"{row}, column {column}") for column in _REQUIRED
    )
    return RockPoint(offset * unit_factor, height * unit_factor, named.get("note", ""))


def _number(cell: str, separator: str, source: str, where: str) -> float:
    text = cell.replace("−", "-")
    if separator != ",":
        text = text.replace(",", ".") if "." not in text else text
    try:
        number = float(text) if text.isascii() and "_" not in text else math.nan
    except ValueError:
        number = math.nan
    if not math.isfinite(number):
        arrived = f"“{cell}” is not a plain number." if cell else "the cell is empty."
        raise SiteError(
            source,
            where,
            arrived,
            "Write digits with at most one decimal mark and no unit (the unit is [wall] unit).",
        )
    return number
