"""The plan of a paper: how many questions of which lessons and levels, what must be right.

A blueprint is a TOML file that an instructor writes. It is checked whole before anything is
made from it, and everything that is wrong with it is said at once.
"""

import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from ropecalc.teaching.papers.trouble import PaperError

LEVELS = ("easy", "medium", "hard")
"""Names of the difficulties 1, 2 and 3."""
MOST_QUESTIONS, MOST_MINUTES, MOST_SCENARIOS = 100, 600, 5
_KEYS = {
    "title",
    "minutes",
    "seed",
    "pass_mark",
    "must_pass",
    "as_choice",
    "formula_sheet",
    "confidence",
    "scenarios",
    "topic",
    "judged",
}
_TOPIC_KEYS = {"title", "lessons", *LEVELS}


@dataclass(frozen=True)
class Topic:
    """Some lessons, and how many questions of each level are taken from them together."""

    title: str
    lessons: tuple[int, ...]
    counts: tuple[int, int, int]


@dataclass(frozen=True)
class Blueprint:
    """The plan of one paper.

    ``seed`` decides which questions are taken and each student's numbers: the same seed gives the
    same papers. ``pass_mark`` is a share of all marks; where ``judged`` gives for each question
    the chance that somebody who is just competent gets it right, their mean is the pass mark
    instead. ``as_choice`` questions are asked as a choice among numbers. ``scenarios`` are so many,
    or those named; their parts come on top of the topics' questions. With ``confidence`` students
    may say for each question how sure they are.
    """

    title: str
    minutes: int
    seed: str
    topics: tuple[Topic, ...]
    pass_mark: float | None = None
    must_pass: tuple[str, ...] = ()
    as_choice: int = 0
    scenarios: int | tuple[str, ...] = 0
    formula_sheet: bool = True
    confidence: bool = True
    judged: Mapping[str, float] = field(default_factory=dict)

    @property
    def count(self) -> int:
        """How many questions the paper has."""
        return sum(sum(topic.counts) for topic in self.topics)


def read_blueprint(path: str | Path) -> Blueprint:
    """The blueprint in the file at ``path``. Raises :class:`PaperError` with all that is wrong."""
    try:
        document = tomllib.loads(Path(path).read_bytes().decode("utf-8-sig"))
    except OSError as error:
        raise PaperError(str(path), f"cannot be read ({error.strerror}).") from None
    except UnicodeDecodeError:
        raise PaperError(str(path), "is not a text in UTF-8. Save it again as UTF-8.") from None
    except tomllib.TOMLDecodeError as error:
        raise PaperError(
            str(path), f"does not follow the rules of TOML: {error}. Start from the example."
        ) from None
    return parse_blueprint(document, str(path))


def parse_blueprint(document: Mapping[str, Any], source: str) -> Blueprint:
    """The blueprint in ``document``; ``source`` is what complaints call it."""
    entries = _Entries(document)
    topics = tuple(entries.topics())
    made = Blueprint(
        title=entries.text("title", "What the paper is called."),
        minutes=entries.whole("minutes", 1, MOST_MINUTES),
        seed=entries.text("seed", "Any words; keep them to yourself until the paper is written."),
        topics=topics,
        pass_mark=entries.share("pass_mark"),
        must_pass=entries.texts("must_pass"),
        as_choice=entries.whole("as_choice", 0, MOST_QUESTIONS, 0),
        scenarios=entries.scenarios(),
        formula_sheet=entries.yes("formula_sheet", True),
        confidence=entries.yes("confidence", True),
        judged=entries.judged(),
    )
    entries.refuse_others()
    lessons = [lesson for topic in topics for lesson in topic.lessons]
    for lesson in sorted({lesson for lesson in lessons if lessons.count(lesson) > 1}):
        entries.complain(f"lesson {lesson} is in the topics twice.")
    if made.pass_mark is None and not made.judged:
        entries.complain(
            "pass_mark is missing. Write for example  pass_mark = 0.75  or judge the questions "
            "under [judged]."
        )
    if not 1 <= made.count <= MOST_QUESTIONS:
        entries.complain(
            f"the topics ask for {made.count} questions together; a paper has 1 to "
            f"{MOST_QUESTIONS}."
        )
    elif made.as_choice > made.count:
        entries.complain(
            f"as_choice is {made.as_choice}, but the paper has only {made.count} questions."
        )
    if entries.complaints:
        raise PaperError(source, *entries.complaints)
    return made


class _Entries:
    """A document's entries, each checked as it is taken; what is wrong is collected."""

    def __init__(self, document: Mapping[str, Any]) -> None:
        self._document = document
        self.complaints: list[str] = []

    def complain(self, complaint: str) -> None:
        self.complaints.append(complaint)

    def text(self, key: str, meaning: str) -> str:
        value = self._document.get(key)
        if isinstance(value, str) and value.strip() and len(value) <= 200:
            return value.strip()
        self.complain(f'{key} is missing or no text. Write  {key} = "..."  ({meaning})')
        return ""

    def whole(self, key: str, low: int, high: int, default: int | None = None) -> int:
        return _whole(self._document, key, low, high, default, self.complain)

    def share(self, key: str) -> float | None:
        value = self._document.get(key)
        if value is None or (_is_number(value) and 0 < value <= 1):
            return value
        self.complain(f"{key} is {value!r}. Write a share of the marks, for example 0.75.")
        return None

    def yes(self, key: str, default: bool) -> bool:
        value = self._document.get(key, default)
        if isinstance(value, bool):
            return value
        self.complain(f"{key} is {value!r}. Write true or false.")
        return default

    def texts(self, key: str, what: str = "question") -> tuple[str, ...]:
        value = self._document.get(key, [])
        if isinstance(value, list) and all(isinstance(v, str) for v in value):
            if len(set(value)) < len(value):
                self.complain(f"{key} names a {what} twice.")
            return tuple(value)
        self.complain(f'{key} is no list of {what}s. Write  {key} = ["...", "..."]')
        return ()

    def scenarios(self) -> int | tuple[str, ...]:
        value = self._document.get("scenarios", 0)
        if isinstance(value, list):
            return self.texts("scenarios", "scenario")
        if type(value) is int and 0 <= value <= MOST_SCENARIOS:
            return value
        self.complain(
            f'scenarios is {value!r}. Write how many, 0 to {MOST_SCENARIOS}, or which: ["..."]'
        )
        return 0

    def judged(self) -> Mapping[str, float]:
        value = self._document.get("judged", {})
        if not isinstance(value, dict):
            self.complain("judged is no table. Write  [judged]  and below it  question = 0.6")
            return {}
        for key, chance in value.items():
            if not (_is_number(chance) and 0 <= chance <= 1):
                self.complain(f"judged: {key} is {chance!r}. Write a chance from 0 to 1.")
        return value

    def topics(self) -> Iterator[Topic]:
        tables = self._document.get("topic", [])
        if not isinstance(tables, list) or not tables:
            self.complain("there is no topic. Write  [[topic]]  and below it its lessons.")
            return
        for number, table in enumerate(tables, 1):
            yield self._topic(table, number)

    def _topic(self, table: Any, number: int) -> Topic:
        name = f"topic {number}"
        if not isinstance(table, dict):
            self.complain(f"{name} is no table.")
            return Topic(name, (), (0, 0, 0))
        title = table.get("title", name)
        lessons = table.get("lessons")
        if not isinstance(title, str):
            self.complain(f"{name}: its title is no text.")
        if not (isinstance(lessons, list) and lessons and all(type(x) is int for x in lessons)):
            self.complain(f"{name}: lessons is {lessons!r}. Write for example  lessons = [8, 9]")
            lessons = []
        self._others(table, _TOPIC_KEYS, name)
        easy, medium, hard = (
            _whole(
                table, level, 0, MOST_QUESTIONS, 0, lambda words: self.complain(f"{name}: {words}")
            )
            for level in LEVELS
        )
        return Topic(str(title), tuple(lessons), (easy, medium, hard))

    def refuse_others(self) -> None:
        self._others(self._document, _KEYS, "")

    def _others(self, table: Mapping[str, Any], known: Iterable[str], name: str) -> None:
        for key in table:
            if key not in known:
                near = get_close_matches(key, known, 1)
                hint = f" Did you mean {near[0]}?" if near else ""
                self.complain(
                    f"{name}{': ' if name else ''}{key} is no entry of a blueprint.{hint}"
                )


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _whole(
    table: Mapping[str, Any],
    key: str,
    low: int,
    high: int,
    default: int | None,
    complain: Any,
) -> int:
    value = table.get(key, default)
    if type(value) is int and low <= value <= high:
        return value
    complain(f"{key} is {value!r}. Write a whole number from {low} to {high}.")
    return low
