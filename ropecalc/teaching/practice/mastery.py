"""How far a learner is with each lesson, and how well they know what they know."""

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ropecalc.teaching.confidence import LEVELS
from ropecalc.teaching.practice.history import Asked, wrong_now
from ropecalc.teaching.questions.bank import BANK, BY_LESSON

FADES = 0.8
"""What an answer weighs against the next younger one of its lesson."""
MASTERED = 0.8
"""The weighted share of credit from which a lesson can be mastered."""
ENOUGH = 5
"""... once so many different questions of it were answered, or all it has."""


@dataclass(frozen=True)
class LessonMastery:
    """One lesson: different questions answered, of how many, and the weighted share of credit.

    ``open_must_pass`` are the keys of those that must be right and are wrong, or not yet asked.
    """

    lesson: int
    answered: int
    total: int
    share: float
    open_must_pass: tuple[str, ...]

    @property
    def mastered(self) -> bool:
        """Enough of it answered, well enough of late, and nothing wrong that must be right."""
        enough = self.answered >= min(ENOUGH, self.total)
        return enough and self.share >= MASTERED and not self.open_must_pass

    def sentence(self) -> str:
        """The same in words."""
        if not self.answered:
            return "not begun"
        answered = f"{self.answered} of {self.total} questions answered"
        said = f"{answered}, of late {_percent(self.share)} right"
        if self.mastered:
            return f"mastered: {said}"
        titles = ", ".join(f"“{BANK[key].title}”" for key in self.open_must_pass)
        return f"on the way: {said}" + (f"; must still be right: {titles}" if titles else "")


def _percent(share: float) -> str:
    """Rounded down: nobody is shown more than they have."""
    return f"{math.floor(100 * share + 1e-9)} %"


def mastery(past: Sequence[Asked]) -> tuple[LessonMastery, ...]:
    """Every lesson in the order of the course. ``past`` is oldest first."""
    wrong = wrong_now(tuple(past))
    met = {one.question for one in past}
    return tuple(
        LessonMastery(
            lesson,
            len({t.key for t in templates} & met),
            len(templates),
            weighted([one.credit for one in past if one.lesson == lesson]),
            tuple(t.key for t in templates if t.must_pass and (t.key in wrong or t.key not in met)),
        )
        for lesson, templates in BY_LESSON.items()
    )


def weighted(credits: Sequence[float]) -> float:
    """The mean of ``credits`` (oldest first) in which each weighs 1/:data:`FADES` of the one
    before it; 0 if there are none."""
    if not credits:
        return 0.0
    weights = [FADES**age for age in reversed(range(len(credits)))]
    return sum(w * c for w, c in zip(weights, credits, strict=True)) / sum(weights)


@dataclass(frozen=True)
class Told:
    """How often answers given at one ``level`` of confidence in one ``lesson`` were right."""

    lesson: int
    level: str
    right: int
    asked: int


def told(past: Iterable[Asked]) -> tuple[Told, ...]:
    """Confidence against correctness, by lesson and level; only where something was said."""
    pairs = [(one.lesson, one.level, one.right) for one in past if one.level]
    counts = Counter((lesson, level) for lesson, level, _ in pairs)
    rights = Counter((lesson, level) for lesson, level, right in pairs if right)
    return tuple(
        Told(lesson, level, rights[lesson, level], counts[lesson, level])
        for lesson in BY_LESSON
        for level in LEVELS
        if counts[lesson, level]
    )


def last_mistakes(past: Sequence[Asked], count: int = 5) -> tuple[Asked, ...]:
    """The last ``count`` answers that came from a known mistake, youngest first."""
    known = [one for one in past if any(m.key == one.mistake for m in BANK[one.question].mistakes)]
    return tuple(reversed(known[-count:]))
