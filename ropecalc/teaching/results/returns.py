"""Returned papers as they come: notebooks, files of answers, a table typed in from paper.

Files are read as data; nothing in them is run. Whatever cannot be used is reported with its
source and a sentence, and never stops the others.
"""

import csv
import io
import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import Any

from ropecalc.teaching.papers.class_list import separator
from ropecalc.teaching.papers.issue import Issue
from ropecalc.teaching.papers.paper import Paper
from ropecalc.teaching.papers.paper_notebook import foreign_code

LARGEST_FILE = 5_000_000
LONGEST_ANSWER = 200
ENDINGS = (".ipynb", ".json", ".csv")


@dataclass(frozen=True)
class Return:
    """One returned paper. ``notes`` are what the instructor should know about it."""

    source: str
    paper: Paper
    answers: Mapping[int, str]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Problem:
    """A return that could not be used, and why."""

    source: str
    sentence: str


class _UnusableError(ValueError):
    pass


def find_returns(folder: Path) -> tuple[Path, ...]:
    """The files in ``folder`` (and below) that may hold answers, sorted."""
    found = (path for path in folder.rglob("*") if path.suffix.lower() in ENDINGS)
    return tuple(sorted(p for p in found if p.is_file() and ".ipynb_checkpoints" not in p.parts))


def read_returns(
    paths: Iterable[Path], issue: Issue
) -> tuple[tuple[Return, ...], tuple[Problem, ...]]:
    """Every usable return in the files, and a problem for each that is not.

    A paper that came twice with the same answers counts once; with different answers neither
    counts.
    """
    returns: list[Return] = []
    problems: list[Problem] = []
    for path in paths:
        try:
            parts = _parts(path)
        except _UnusableError as error:
            problems.append(Problem(path.name, str(error)))
            continue
        for source, read in parts:
            try:
                returns.append(_checked(source, read(), issue))
            except _UnusableError as error:
                problems.append(Problem(source, str(error)))
    kept, twice = _once_each(returns)
    return kept, (*problems, *twice)


@dataclass(frozen=True)
class _Found:
    code: str
    student: str
    answers: Mapping[int, str]
    notes: tuple[str, ...] = ()


def _parts(path: Path) -> list[tuple[str, Callable[[], _Found]]]:
    """The returns in a file, each with its name and what reads it; a table has one a line."""
    content = _content(path)
    ending = path.suffix.lower()
    if ending != ".csv":
        return [(path.name, partial(_from_json, content, ending))]
    text, notes = _text(content)
    return [
        (f"{path.name}, line {number}", partial(_from_row, row, notes))
        for number, row in _rows(text)
    ]


def _content(path: Path) -> bytes:
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise _UnusableError("is too large for answers.")
        return path.read_bytes()
    except OSError as error:
        raise _UnusableError(f"cannot be read ({error.strerror}).") from None


# --- notebooks and files of answers -----------------------------------------------------------


def _from_json(content: bytes, ending: str) -> _Found:
    try:
        document = json.loads(content.decode("utf-8-sig"))
    except (UnicodeDecodeError, ValueError, RecursionError):
        raise _UnusableError("is damaged: it cannot be read as a file of this kind.") from None
    notes: tuple[str, ...] = ()
    if ending == ".ipynb":
        own = document.get("metadata") if isinstance(document, dict) else None
        course = own.get("ropecalc") if isinstance(own, dict) else None
        if not isinstance(course, dict) or course.get("kind") != "paper":
            raise _UnusableError("is no paper of this course.")
        if foreign_code(document):
            notes = (
                "holds code that this course did not write. Nothing of it was run; the answers "
                "were read.",
            )
        document = {**_table(course.get("paper")), "answers": course.get("answers", {})}
    if not isinstance(document, dict) or not isinstance(document.get("code"), str):
        raise _UnusableError("has no code of a paper in it.")
    return _Found(
        document["code"],
        str(document.get("student", "")),
        _answers(_table(document.get("answers"))),
        notes,
    )


def _table(value: Any) -> dict[str, Any]:
    if not isinstance(value, dict):
        raise _UnusableError("does not hold its answers as this course writes them.")
    return value


def _answers(table: Mapping[Any, Any]) -> dict[int, str]:
    found = {}
    for key, value in table.items():
        try:
            number = int(str(key).strip())
        except ValueError:
            raise _UnusableError(f"answers a question called “{str(key)[:20]}”.") from None
        found[number] = "" if value is None else str(value)[:LONGEST_ANSWER]
    return found


# --- tables typed in from paper ---------------------------------------------------------------


def _text(content: bytes) -> tuple[str, tuple[str, ...]]:
    encoding = "utf-16" if content[:2] in (b"\xff\xfe", b"\xfe\xff") else "utf-8-sig"
    try:
        return content.decode(encoding), ()
    except UnicodeDecodeError:
        note = "was not saved as UTF-8; letters with accents may be wrong."
        return content.decode("cp1252", errors="replace"), (note,)


def _rows(text: str) -> Iterator[tuple[int, dict[str, str]]]:
    """Each row under its headings, with the line it stands on."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator(text))
    try:
        headings = [cell.strip().lower() for cell in next(reader, [])]
        if "code" not in headings:
            raise _UnusableError("has no column called “code”. Its first line names the columns.")
        for row in reader:
            if any(cell.strip() for cell in row):
                yield reader.line_num, dict(zip(headings, row, strict=False))
    except csv.Error as error:
        raise _UnusableError(f"is no table that can be read ({error}).") from None


def _from_row(row: Mapping[str, str], notes: tuple[str, ...]) -> _Found:
    numbered = {key: value for key, value in row.items() if key.isdecimal()}
    return _Found(row["code"], row.get("student", ""), _answers(numbered), notes)


# --- against what was handed out --------------------------------------------------------------


def _checked(source: str, found: _Found, issue: Issue) -> Return:
    code = found.code.strip().upper().replace(" ", "")
    paper = next((p for p in issue.papers if p.code == code), None)
    if paper is None:
        raise _UnusableError(
            f"has the code “{found.code[:20]}”, which is on no paper of “{issue.title}”."
        )
    student = " ".join(found.student.split())
    if student and student != paper.student:
        raise _UnusableError(
            f"comes from “{student[:40]}”, but the code {code} is on the paper of {paper.student}."
        )
    extra = sorted(n for n in found.answers if not 1 <= n <= len(paper.items))
    if extra:
        raise _UnusableError(
            f"answers question {extra[0]}, but the paper has {len(paper.items)} questions."
        )
    return Return(source, paper, found.answers, found.notes)


def _once_each(returns: list[Return]) -> tuple[tuple[Return, ...], list[Problem]]:
    by_code: dict[str, list[Return]] = {}
    for one in returns:
        by_code.setdefault(one.paper.code, []).append(one)
    kept, problems = [], []
    for same in by_code.values():
        first, *more = same
        given = [{n: t.strip() for n, t in one.answers.items() if t.strip()} for one in same]
        sources = ", ".join(one.source for one in same)
        if any(answers != given[0] for answers in given[1:]):
            problems.append(
                Problem(
                    sources,
                    f"the paper of {first.paper.student} came more than once, with different "
                    "answers. None was marked: take the wrong ones away.",
                )
            )
            continue
        notes = first.notes + ((f"came more than once, the same: {sources}.",) if more else ())
        kept.append(replace(first, notes=notes))
    return tuple(kept), problems
