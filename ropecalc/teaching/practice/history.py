"""What the record says about each time a question was asked, on whatever page."""

from dataclasses import dataclass
from datetime import UTC, datetime

from ropecalc.teaching.confidence import LEVELS
from ropecalc.teaching.practice.schedule import Choice, Outcome
from ropecalc.teaching.questions.bank import BANK, BY_LESSON, LESSON_OF
from ropecalc.teaching.questions.marking import Verdict
from ropecalc.teaching.record import Answer, Place, Record

_HINT_COST = 0.25
_EARLIEST = datetime(1970, 1, 1, tzinfo=UTC)


@dataclass(frozen=True)
class Asked:
    """One question with one set of numbers, as the learner first answered it.

    ``right`` is whether the first readable answer was right, the solution not yet seen.
    ``credit`` is 1 for a right answer, less a quarter for each hint, and 0 for a wrong one.
    ``mistake`` is the first one that was recognised, ``level`` how sure they said they were; ""
    where there is none.
    """

    question: str
    right: bool
    credit: float
    at: datetime
    mistake: str = ""
    level: str = ""

    @property
    def lesson(self) -> int:
        """The number of the question's lesson."""
        return LESSON_OF[self.question]

    @property
    def outcome(self) -> Outcome:
        """The same as the schedule wants it."""
        return Outcome(self.question, self.right, self.at)


def asked(record: Record) -> tuple[Asked, ...]:
    """Everything the learner was asked and answered readably, in the order of the first answer.

    Questions that this release does not have are left out.
    """
    tries: dict[tuple[Place, int], list[Answer]] = {}
    for place, answer in record.history():
        if place.question in BANK and answer.verdict != Verdict.UNREADABLE:
            tries.setdefault((place, answer.draw), []).append(answer)
    levels = record.confidence()
    return tuple(_asked(key[0], all_, levels.get(key, "")) for key, all_ in tries.items())


def _asked(place: Place, answers: list[Answer], level: str) -> Asked:
    first = answers[0]
    right = first.verdict == Verdict.RIGHT and not first.solution_seen
    return Asked(
        place.question,
        right,
        max(0.0, 1 - _HINT_COST * first.hints) if right else 0.0,
        moment(first.at),
        next((answer.mistake for answer in answers if answer.mistake), ""),
        level if level in LEVELS else "",
    )


def moment(text: str) -> datetime:
    """The time that the record wrote as ``text``; long ago where it cannot be read."""
    try:
        found = datetime.fromisoformat(text)
    except ValueError:
        return _EARLIEST
    return found if found.tzinfo else found.replace(tzinfo=UTC)


def wrong_now(past: tuple[Asked, ...]) -> frozenset[str]:
    """The questions that were wrong the last time they were asked."""
    last = {one.question: one.right for one in past}
    return frozenset(question for question, right in last.items() if not right)


def choices(lesson: int | None = None, only: frozenset[str] | None = None) -> tuple[Choice, ...]:
    """What practice may ask: the bank, or one ``lesson`` of it, or ``only`` some questions."""
    return tuple(
        Choice(template.key, number, template.difficulty, template.must_pass)
        for number, templates in BY_LESSON.items()
        for template in templates
        if (lesson is None or number == lesson) and (only is None or template.key in only)
    )
