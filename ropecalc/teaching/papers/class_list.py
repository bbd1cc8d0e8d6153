"""The class: one student a line, by name or by a pseudonym of the instructor's choice."""

import csv
import re
from pathlib import Path

from ropecalc.teaching.papers.trouble import PaperError

LONGEST_NAME = 60
MOST_STUDENTS = 5000
LARGEST_FILE = 1_000_000
_HEADINGS = {"student", "students", "name", "id", "pseudonym", "number"}


def read_class_list(path: str | Path) -> tuple[str, ...]:
    """The students in the file at ``path``: a text with one a line, or a CSV's first column.

    Raises :class:`PaperError` with everything that is wrong.
    """
    source = str(path)
    try:
        content = Path(path).read_bytes()
    except OSError as error:
        raise PaperError(source, f"cannot be read ({error.strerror}).") from None
    if len(content) > LARGEST_FILE:
        raise PaperError(source, "is too large for a class list.")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise PaperError(source, "is not a text in UTF-8. Save it again as UTF-8.") from None
    return parse_class_list(text, source)


def parse_class_list(text: str, source: str) -> tuple[str, ...]:
    """The students in ``text``; ``source`` is what complaints call it."""
    delimiter = ";" if text.count(";") > text.count(",") else ","
    rows = csv.reader(text.splitlines(), delimiter=delimiter)
    names = [" ".join(row[0].split()) for row in rows if row and row[0].strip()]
    if names and names[0].lower() in _HEADINGS:
        names = names[1:]
    complaints = list(_complaints(names))
    if complaints:
        raise PaperError(source, *complaints)
    return tuple(names)


def _complaints(names: list[str]) -> list[str]:
    found = []
    if not names:
        found.append("names nobody. Write one student a line.")
    if len(names) > MOST_STUDENTS:
        found.append(f"names {len(names)} students; at most {MOST_STUDENTS} are taken at once.")
    seen: dict[str, str] = {}
    for name in names:
        if len(name) > LONGEST_NAME or not name.isprintable():
            found.append(f"“{name[:20]}…” is no name: at most {LONGEST_NAME} letters on one line.")
        same = seen.get(file_name(name))
        if same is not None:
            found.append(f"“{name}” is there twice, or too like “{same}” for a file's name.")
        seen.setdefault(file_name(name), name)
    return found


def separator(table: str) -> str:
    """What stands between the cells of a table, by its first line: semicolon, comma or tab."""
    return max(";,\t", key=table.partition("\n")[0].count)


def file_name(student: str) -> str:
    """The student as part of a file's name: letters, digits and hyphens, lower case."""
    return re.sub(r"[^\w]+", "-", student.casefold()).strip("-_") or "student"
