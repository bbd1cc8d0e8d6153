"""The learner's whole record as files of their own: CSV, JSON, and a page to print."""

import csv
import io
import json
from dataclasses import asdict
from html import escape
from typing import Any

from ropecalc import __version__, cautions
from ropecalc.planning.files import UTF8_MARK
from ropecalc.teaching.confidence import LEVELS
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.practice.history import Asked, asked
from ropecalc.teaching.practice.mastery import last_mistakes, mastery, told
from ropecalc.teaching.questions.bank import BANK, LESSON_OF
from ropecalc.teaching.record import Record

COLUMNS = (
    "at", "page", "lesson", "question", "draw", "text", "reading", "verdict", "mistake", "hints",
    "solution_seen", "sure",
)  # fmt: skip
FORMAT = 1
"""Of the JSON file."""


def as_csv(record: Record) -> str:
    """Every answer, oldest first, one a line; no cell is one that a spreadsheet would run."""
    levels = record.confidence()
    out = io.StringIO(newline="")
    out.write(UTF8_MARK)
    lines = csv.writer(out)
    lines.writerow(COLUMNS)
    for place, one in record.history():
        cells = (
            one.at, place.page, LESSON_OF.get(place.question, ""), place.question, one.draw,
            one.text, one.reading, one.verdict, one.mistake, one.hints, int(one.solution_seen),
            levels.get((place, one.draw), ""),
        )  # fmt: skip
        lines.writerow([_harmless(cell) for cell in cells])
    return out.getvalue()


def _harmless(cell: object) -> object:
    risky = isinstance(cell, str) and cell[:1] in ("=", "+", "-", "@", "\t", "\r")
    return f"'{cell}" if risky else cell


def as_json(record: Record) -> str:
    """All that the record holds: settings, answers, unfinished work, how sure the learner was."""
    document: dict[str, Any] = {
        "format": FORMAT,
        "made_with": __version__,
        "settings": record.settings(),
        "answers": [asdict(place) | asdict(answer) for place, answer in record.history()],
        "work": [asdict(place) | asdict(work) for place, work in record.works()],
        "confidence": [
            asdict(place) | {"draw": draw, "level": level}
            for (place, draw), level in record.confidence().items()
        ],
    }
    return json.dumps(document, indent=1, ensure_ascii=False) + "\n"


def as_page(record: Record) -> str:
    """A summary that any browser prints, as an HTML file that needs nothing else."""
    past = asked(record)
    parts = [
        ("By lesson", mastery_lines(past)),
        ("My last mistakes", mistake_lines(past)),
        ("Sure, and right?", told_lines(past)),
    ]
    body = "".join(f"<h2>{escape(head)}</h2>{bullets(lines)}" for head, lines in parts)
    return (
        "<!doctype html><html lang='en'><meta charset='utf-8'><title>My progress</title>"
        "<style>body{font-family:sans-serif;max-width:45em;margin:2em auto;line-height:1.4}"
        "</style><h1>My progress</h1>"
        f"{body}<p>{escape(cautions.KNOWLEDGE_CHECK)}</p>"
        f"<p>Made with ropecalc {escape(__version__)}.</p></html>\n"
    )


def bullets(lines: list[str]) -> str:
    """Lines as an HTML list."""
    return f"<ul>{''.join(f'<li>{escape(line)}</li>' for line in lines)}</ul>"


def mastery_lines(past: tuple[Asked, ...]) -> list[str]:
    """One line a lesson: how far the learner is."""
    titles = {lesson.number: lesson.title for lesson in LESSONS.values()}
    return [
        f"Lesson {one.lesson}, {titles[one.lesson]}: {one.sentence()}." for one in mastery(past)
    ]


def mistake_lines(past: tuple[Asked, ...]) -> list[str]:
    """The last mistakes by name, each with its reason; youngest first."""
    lines = []
    for one in last_mistakes(past):
        template = BANK[one.question]
        mistake = template.mistake(one.mistake)
        lines.append(f"Lesson {one.lesson}, “{template.title}”: {mistake.named}. {mistake.why}")
    return lines or ["None yet that this course knows by name."]


def told_lines(past: tuple[Asked, ...]) -> list[str]:
    """How often answers were right, by lesson and by how sure the learner was."""
    return [
        f"Lesson {one.lesson}, {LEVELS[one.level]}: {one.right} of {one.asked} right."
        for one in told(past)
    ] or [NOT_SAID]


NOT_SAID = "You have not yet said how sure you are. Practice asks before you check."
