"""A mock examination: what it asks, what is kept of it in the record, and what came of it.

The learner's answers are kept one by one as they are typed, the rest under one setting, so a
mock that was interrupted at any moment goes on where it was. The time runs from the start that is
kept, whether a page is open or not.
"""

import json
import math
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from ropecalc.teaching.papers.blueprint import Blueprint, Topic
from ropecalc.teaching.papers.choosing import Bank, choose
from ropecalc.teaching.papers.issue import pass_mark
from ropecalc.teaching.papers.paper import Paper, item_as_document, item_from, make_paper
from ropecalc.teaching.practice.history import moment
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.marking import mark
from ropecalc.teaching.record import Answer, Place, Record
from ropecalc.teaching.results.grading import PaperResult, grade

SETTING = "mock"
MINUTES = (2, 3, 4)
"""Minutes that the built-in mock gives for an easy, a medium and a hard question."""
PASS_MARK = 0.75


def mixed_blueprint(bank: Bank, number: int = 1) -> Blueprint:
    """A blueprint over every lesson of ``bank``: two questions each where it has them.

    One is of medium level, the other easy and hard by turns. What must be right takes turns with
    ``number`` where a lesson has more of it than the mock asks.
    """
    topics = tuple(
        Topic(f"Lesson {lesson}", (lesson,), _counts(lesson, _levels(bank, lesson)))
        for lesson in sorted(bank)
    )
    asked = [sum(topic.counts[level] for topic in topics) for level in range(3)]
    return Blueprint(
        title="Mock examination, all lessons",
        minutes=sum(n * minutes for n, minutes in zip(asked, MINUTES, strict=True)),
        seed="",
        topics=topics,
        pass_mark=PASS_MARK,
        must_pass=tuple(
            key
            for topic in topics
            for level in (1, 2, 3)
            for key in _turns(bank, topic, level, number)
        ),
    )


def _levels(bank: Bank, lesson: int) -> tuple[int, ...]:
    return tuple(sum(t.difficulty == level for t in bank[lesson]) for level in (1, 2, 3))


def _counts(lesson: int, there: tuple[int, ...]) -> tuple[int, int, int]:
    """Two of what is there: a medium one first, then easy (odd lessons) or hard, then any."""
    second = (0, 2) if lesson % 2 else (2, 0)
    counts = [0, 0, 0]
    for level in (1, *second, 1):
        if sum(counts) < 2 and counts[level] < there[level]:
            counts[level] += 1
    return counts[0], counts[1], counts[2]


def _turns(bank: Bank, topic: Topic, level: int, number: int) -> tuple[str, ...]:
    keys = [
        t.key
        for lesson in topic.lessons
        for t in bank[lesson]
        if t.must_pass and t.difficulty == level
    ]
    count = min(topic.counts[level - 1], len(keys))
    return tuple(keys[(number + place) % len(keys)] for place in range(count))


@dataclass(frozen=True)
class Mock:
    """One mock examination: its number in this record, its paper, when it began and ended."""

    number: int
    paper: Paper
    pass_mark: float
    started: datetime
    finished: datetime | None = None

    @property
    def page(self) -> str:
        """Its name in the record."""
        return f"mock:{self.number}"

    def place(self, number: int) -> Place:
        """Where the answer to question ``number`` (from 1) is kept."""
        return Place(self.page, str(number))

    def minutes_left(self, now: datetime) -> int:
        """Whole minutes that are left, a begun one counted; 0 once the time is over."""
        left = self.started + timedelta(minutes=self.paper.minutes) - now
        return min(self.paper.minutes, max(0, math.ceil(left / timedelta(minutes=1))))


def begin(blueprint: Blueprint, bank: Bank, number: int, now: datetime, source: str = "") -> Mock:
    """Mock number ``number`` against ``blueprint``; each number has questions of its own.

    The blueprint's own seed is not used: a mock never shows an instructor's paper. Where the
    blueprint has no pass mark, the mean of what was judged is taken. Raises
    :class:`~ropecalc.teaching.papers.trouble.PaperError` for a blueprint that does not fit.
    """
    if blueprint.judged:
        judged = [BANK[key] for key in blueprint.judged if key in BANK]
        wanted = pass_mark(blueprint, judged) if judged else blueprint.pass_mark or PASS_MARK
        blueprint = replace(blueprint, judged={}, pass_mark=wanted)
    seeded = replace(blueprint, seed=f"mock {number}", confidence=False)
    chosen = choose(seeded, bank, source)
    return Mock(number, make_paper(seeded, chosen, ""), pass_mark(seeded, chosen), now)


def keep(record: Record, mock: Mock) -> None:
    """Keep ``mock`` in the record in place of the one before it."""
    document = {
        "number": mock.number,
        "title": mock.paper.title,
        "minutes": mock.paper.minutes,
        "pass_mark": mock.pass_mark,
        "started": mock.started.isoformat(),
        "finished": mock.finished.isoformat() if mock.finished else "",
        "items": [item_as_document(item) for item in mock.paper.items],
    }
    record.keep_setting(SETTING, json.dumps(document))


def kept(record: Record) -> Mock | None:
    """The mock in the record; None if there is none, or none that this release can show."""
    text = record.setting(SETTING)
    if text is None:
        return None
    try:
        one = json.loads(text)
        items = tuple(item_from(item, BANK[item["question"]]) for item in one["items"])
        paper = Paper(one["title"], "", int(one["minutes"]), items)
        return Mock(
            int(one["number"]),
            paper,
            float(one["pass_mark"]),
            moment(one["started"]),
            moment(one["finished"]) if one["finished"] else None,
        )
    except (ValueError, KeyError, TypeError):
        return None


def next_number(record: Record) -> int:
    """The number of the next mock: one more than any that the record has a trace of."""
    pages = {place.page for place, _ in (*record.works(), *record.history())}
    numbers = [int(n) for p in pages for kind, _, n in [p.partition(":")] if _is_mock(kind, n)]
    before = kept(record)
    return 1 + max([*numbers, before.number if before else 0], default=0)


def _is_mock(kind: str, number: str) -> bool:
    return kind == SETTING and number.isascii() and number.isdigit()


def answers(record: Record, mock: Mock) -> dict[int, str]:
    """What has been answered, by the question's number from 1; "" where nothing was."""
    numbers = range(1, len(mock.paper.items) + 1)
    return {number: record.work(mock.place(number)).draft.strip() for number in numbers}


def result(record: Record, mock: Mock) -> PaperResult:
    """The answers marked."""
    return grade(mock.paper, answers(record, mock))


def finish(record: Record, mock: Mock, now: datetime) -> Mock:
    """End ``mock``: every answer goes marked among the learner's answers, once.

    May be called again after an interruption; what was already taken over is not taken twice.
    """
    marked = result(record, mock)
    for item, one in zip(mock.paper.items, marked.items, strict=True):
        place = Place(mock.page, item.template.key)
        if one.verdict is None or record.answers(place):
            continue
        reading = "" if item.options else mark(item.drawn, one.text).reading
        answer = Answer(
            0, one.text, reading, one.verdict, one.mistake, at=now.isoformat(timespec="seconds")
        )
        record.keep_answer(place, answer)
    ended = replace(mock, finished=now)
    keep(record, ended)
    return ended
