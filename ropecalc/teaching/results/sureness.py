"""How sure a class was, against how right: what is wrong and nobody doubts comes first."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ropecalc.teaching.confidence import LEVELS
from ropecalc.teaching.results.grading import ItemResult, PaperResult


@dataclass(frozen=True)
class Sureness:
    """Answers given at one ``level`` ("" where nobody said): how many, and how many right.

    What was left blank is no answer.
    """

    level: str
    answered: int
    right: int


@dataclass(frozen=True)
class SureMistake:
    """A mistake that ``students`` made in question ``number`` (from 1) and were sure of.

    ``mistake`` is its key, "" for wrong answers that come from no known mistake.
    """

    students: int
    number: int
    mistake: str


def sureness(answers: Iterable[ItemResult]) -> tuple[Sureness, ...]:
    """One entry for each level that a student can say, and the last for "not said"."""
    given = [one for one in answers if one.verdict is not None]
    return tuple(_at(level, given) for level in (*LEVELS, ""))


def _at(level: str, given: Sequence[ItemResult]) -> Sureness:
    there = [one for one in given if one.sure == level]
    return Sureness(level, len(there), sum(one.right for one in there))


def anything_said(results: Iterable[PaperResult]) -> bool:
    """Whether anybody said how sure they were."""
    return any(one.sure for result in results for one in result.items)


def sure_mistakes(results: Iterable[PaperResult]) -> tuple[SureMistake, ...]:
    """Everything that was wrong although its writer was sure, the most frequent first."""
    counts = Counter(
        (number, one.mistake)
        for result in results
        for number, one in enumerate(result.items, 1)
        if one.sure == "sure" and one.verdict is not None and not one.right
    )
    found = [SureMistake(count, number, key) for (number, key), count in counts.items()]
    return tuple(sorted(found, key=lambda one: (-one.students, one.number, one.mistake)))
