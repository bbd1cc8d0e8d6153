"""Marking one returned paper: each answer against this student's own numbers."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum

from ropecalc.teaching.papers.paper import LETTERS, RIGHT, Item, Paper
from ropecalc.teaching.questions.marking import Verdict, mark


@dataclass(frozen=True)
class ItemResult:
    """One answer marked. ``verdict`` is None where nothing was answered.

    ``mistake`` is the key of the mistake that the answer comes from, "" if none is known.
    ``sure`` is how sure the student said they were, "" where they did not.
    """

    text: str
    verdict: Verdict | None
    mistake: str = ""
    sure: str = ""

    @property
    def right(self) -> bool:
        """Whether it earns its mark."""
        return self.verdict is Verdict.RIGHT


@dataclass(frozen=True)
class PaperResult:
    """One paper marked: one mark for each right answer."""

    paper: Paper
    items: tuple[ItemResult, ...]

    @property
    def marks(self) -> int:
        """How many are right."""
        return sum(item.right for item in self.items)

    @property
    def share(self) -> float:
        """Marks as a share of all."""
        return self.marks / len(self.items)

    @property
    def missed(self) -> tuple[int, ...]:
        """The numbers (from 1) of the questions that had to be right and are not."""
        pairs = zip(self.paper.items, self.items, strict=True)
        return tuple(
            n for n, (item, result) in enumerate(pairs, 1) if item.must_pass > result.right
        )


class Standing(StrEnum):
    """Where a result lies against the pass mark."""

    REACHED = "reached the mark"
    BORDERLINE = "borderline"
    BELOW = "below the mark"


def grade(
    paper: Paper, answers: Mapping[int, str], sure: Mapping[int, str] | None = None
) -> PaperResult:
    """Mark ``answers`` (by question number from 1) to ``paper``; what is missing is blank.

    ``sure`` is how sure the student said they were; it changes no mark.
    """
    levels = sure or {}
    marked = ((n, _item(i, answers.get(n, "").strip())) for n, i in enumerate(paper.items, 1))
    return PaperResult(paper, tuple(replace(one, sure=levels.get(n, "")) for n, one in marked))


def _item(item: Item, text: str) -> ItemResult:
    if not text:
        return ItemResult("", None)
    if not item.options:
        marked = mark(item.drawn, text)
        return ItemResult(text, marked.verdict, marked.mistake)
    letter = text.strip(" .()").upper()
    place = LETTERS.find(letter) if len(letter) == 1 else -1
    if not 0 <= place < len(item.options):
        return ItemResult(text, Verdict.UNREADABLE)
    option = item.options[place]
    if option == RIGHT:
        return ItemResult(text, Verdict.RIGHT)
    return ItemResult(text, Verdict.MISTAKE, option)


def standing(result: PaperResult, pass_mark: float, error: float | None) -> Standing:
    """Where ``result`` lies; ``error`` is the standard error of a score in marks, None if unknown.

    Within one such error of the mark, on either side, a result is borderline: a talk or a
    practical decides, not the paper. So it is, too, where the mark is reached but a question that
    had to be right is not.
    """
    wanted = pass_mark * len(result.items)
    if error is not None and abs(result.marks - wanted) <= error:
        return Standing.BORDERLINE
    if result.marks < wanted - 1e-9:
        return Standing.BELOW
    return Standing.BORDERLINE if result.missed else Standing.REACHED
