"""Returned papers as they come: notebooks, files of answers, a table typed in from paper.

Files are read as data; nothing in them is run. Whatever cannot be used is reported with its
source and a sentence, and never stops the others.
"""

import csv
import io
import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any

from ropecalc.teaching.confidence import read_level
from ropecalc.teaching.papers.class_list import separator
from ropecalc.teaching.papers.issue import Issue
from ropecalc.teaching.papers.paper import LONGEST_TEXT, Paper
from ropecalc.teaching.papers.paper_notebook import foreign_code

LARGEST_FILE = 5_000_000
LONGEST_ANSWER = 200
_MOST_DIGITS = 6
_POINTS = "points "
"""How the heading of a column begins that holds points for an open question: "points 9"."""
_SURE = "sure "
"""... and one that says how sure the student was: "sure 3"."""
ENDINGS = (".ipynb", ".json", ".csv")


@dataclass(frozen=True)
class Return:
    """One returned paper. ``notes`` are what the instructor should know about it.

    ``points`` are what the instructor gave for open questions, by their number. ``sure`` is how
    sure the student was of an answer, where they said it.
    """

    source: str
    paper: Paper
    answers: Mapping[int, str]
    notes: tuple[str, ...] = ()
    points: Mapping[int, int] = field(default_factory=dict)
    sure: Mapping[int, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Problem:
    """A return that could not be used, and why."""

    source: str
    sentence: str


class _UnusableError(ValueError):
    pass


def find_returns(folder: Path) -> tuple[Path, ...]:
    """What was put into ``folder`` (and below), sorted; hidden files are no returns."""
    found = (path for path in folder.rglob("*") if path.is_file())
    return tuple(sorted(p for p in found if not _hidden(p.relative_to(folder))))


def _hidden(path: Path) -> bool:
    return any(part.startswith(".") for part in path.parts)


def read_returns(
    paths: Iterable[Path], issue: Issue
) -> tuple[tuple[Return, ...], tuple[Problem, ...]]:
    """Every usable return in the files, and a problem for each that is not.

    A paper that came twice with the same answers counts once; with different answers, or with
    different points for one question, neither counts.
    """
    returns: list[Return] = []
    problems: list[Problem] = []
    papers = {paper.code: paper for paper in issue.papers}
    for path in paths:
        try:
            parts = _parts(path)
        except _UnusableError as error:
            problems.append(Problem(path.name, str(error)))
            continue
        for source, read in parts:
            try:
                returns.append(_checked(source, read(), papers, issue.title))
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
    points: Mapping[int, str] = field(default_factory=dict)
    sure: Mapping[int, str] = field(default_factory=dict)


def _parts(path: Path) -> list[tuple[str, Callable[[], _Found]]]:
    """The returns in a file, each with its name and what reads it; a table has one a line."""
    ending = path.suffix.lower()
    if ending not in ENDINGS:
        raise _UnusableError(
            "is no kind of file that can be marked: hand in a notebook (.ipynb), saved answers "
            "(.json) or a table (.csv)."
        )
    content = _content(path)
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
        answers, sure = course.get("answers", {}), course.get("sure")
        document = {**_table(course.get("paper")), "answers": answers, "sure": sure}
    if not isinstance(document, dict) or not isinstance(document.get("code"), str):
        raise _UnusableError("has no code of a paper in it.")
    return _Found(
        document["code"],
        str(document.get("student", "")),
        _answers(_table(document.get("answers"))),
        notes,
        sure=_levels(document.get("sure")),
    )


def _levels(value: Any) -> dict[int, str]:
    """What was said of how sure somebody is; whatever is none of it is left out."""
    said = value.items() if isinstance(value, dict) else ()
    found = {int(key): read_level(text) for key, text in said if _is_number(str(key))}
    return {number: level for number, level in found.items() if level}


def _is_number(text: str) -> bool:
    """Whether it is a whole number of a length that questions and points have."""
    return text.isdecimal() and len(text) <= _MOST_DIGITS


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
        found[number] = "" if value is None else str(value)[:LONGEST_TEXT]
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
    points = {
        int(key.removeprefix(_POINTS)): text.strip()
        for key, text in row.items()
        if key.startswith(_POINTS) and _is_number(key.removeprefix(_POINTS)) and text.strip()
    }
    sure = {k.removeprefix(_SURE): text for k, text in row.items() if k.startswith(_SURE)}
    code, student = row.get("code", ""), row.get("student", "")
    return _Found(code, student, _answers(numbered), notes, points, _levels(sure))


# --- against what was handed out --------------------------------------------------------------


def _checked(source: str, found: _Found, papers: Mapping[str, Paper], title: str) -> Return:
    """The return of one of the ``papers`` (by code) of the examination called ``title``."""
    code = found.code.strip().upper().replace(" ", "")
    paper = papers.get(code)
    if paper is None:
        raise _UnusableError(
            f"has the code “{found.code[:20]}”, which is on no paper of “{title}”."
        )
    student = " ".join(found.student.split())
    if student and student != paper.student:
        raise _UnusableError(
            f"comes from “{student[:40]}”, but the code {code} is on the paper of {paper.student}."
        )
    count = len(paper.items) + len(paper.open_questions)
    extra = sorted(n for n in found.answers if not 1 <= n <= count)
    if extra:
        raise _UnusableError(f"answers question {extra[0]}, but the paper has {count} questions.")
    points = {n: _in_points(n, text, paper) for n, text in found.points.items()}
    answers = {
        n: text if n > len(paper.items) else text[:LONGEST_ANSWER]
        for n, text in found.answers.items()
    }
    return Return(source, paper, answers, found.notes, points, found.sure)


def _in_points(number: int, text: str, paper: Paper) -> int:
    """What was given by hand for open question ``number``."""
    place = number - 1 - len(paper.items)
    if not 0 <= place < len(paper.open_questions):
        raise _UnusableError(f"gives points for question {number}, which is no open question.")
    most = len(paper.open_questions[place].points)
    if not (_is_number(text) and int(text) <= most):
        raise _UnusableError(
            f"gives “{text[:20]}” points for question {number}. Write a whole number up to {most}."
        )
    return int(text)


def _points_alone(one: Return) -> bool:
    """Whether this is no paper but the instructor's points for one."""
    return bool(one.points) and not any(text.strip() for text in one.answers.values())


def _once_each(returns: list[Return]) -> tuple[tuple[Return, ...], list[Problem]]:
    by_code: dict[str, list[Return]] = {}
    for one in returns:
        by_code.setdefault(one.paper.code, []).append(one)
    kept, problems = [], []
    for same in by_code.values():
        told = {pair for one in same for pair in one.points.items()}
        points = dict(told)
        same = [one for one in same if not _points_alone(one)] or same[:1]
        first, *more = same
        given = [{n: t.strip() for n, t in one.answers.items() if t.strip()} for one in same]
        sources = ", ".join(one.source for one in same)
        fault = ""
        if any(answers != given[0] for answers in given[1:]):
            fault = "came more than once, with different answers"
        elif len(points) < len(told):
            fault = "was given different points for one question"
        if fault:
            said = f"the paper of {first.paper.student} {fault}. None was marked: take the wrong "
            problems.append(Problem(sources, f"{said}ones away."))
            continue
        notes = first.notes + ((f"came more than once, the same: {sources}.",) if more else ())
        kept.append(replace(first, notes=notes, points=points))
    return tuple(kept), problems
