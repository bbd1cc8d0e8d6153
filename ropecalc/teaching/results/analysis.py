"""What a class's answers say about the questions: how hard, how telling, and which mistakes.

Every question is worth one mark. Facility is the share of right answers. Discrimination is the
correlation of a question with the rest of the paper (without itself). Reliability is
Kuder and Richardson's formula 20, and the standard error of a score follows from it.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ropecalc.teaching.results.grading import PaperResult

SMALL_CLASS = 10
"""Below so many papers shares and correlations mislead; counts are shown instead."""
HARD, EASY, BLUNT = 0.30, 0.90, 0.15
_TOP = 0.27
"""The share of the class, best scores first, that counts as its strong students."""


@dataclass(frozen=True)
class ItemFigures:
    """What the class did with one question.

    ``facility`` and ``discrimination`` are None for small classes, and the latter where everybody
    or nobody was right. ``mistakes`` counts the known mistakes, the most frequent first.
    """

    key: str
    title: str
    asked: int
    right: int
    blank: int
    facility: float | None
    discrimination: float | None
    mistakes: tuple[tuple[str, int], ...]
    flags: tuple[str, ...]


@dataclass(frozen=True)
class ClassFigures:
    """The whole class: ``reliability`` and ``error`` (in marks) are None where undefined."""

    papers: int
    mean: float
    reliability: float | None
    error: float | None
    items: tuple[ItemFigures, ...]

    @property
    def small(self) -> bool:
        """Whether only counts mean something."""
        return self.papers < SMALL_CLASS


def analyse(results: Sequence[PaperResult]) -> ClassFigures:
    """The figures of a class whose papers have the same questions in the same order.

    Raises ValueError for no papers at all or for papers that differ.
    """
    if not results:
        raise ValueError("there is no paper to analyse")
    keys = [item.template.key for item in results[0].paper.items]
    if any([i.template.key for i in r.paper.items] != keys for r in results):
        raise ValueError("these papers ask different questions; analyse each examination alone")
    marks = np.array([[item.right for item in r.items] for r in results], dtype=float)
    small = len(results) < SMALL_CLASS
    reliability = None if small else _reliability(marks)
    error = None
    if reliability is not None:
        error = float(np.std(marks.sum(axis=1), ddof=1) * np.sqrt(1 - reliability))
    items = tuple(_item(results, marks, place, small) for place in range(len(keys)))
    return ClassFigures(len(results), float(marks.sum(axis=1).mean()), reliability, error, items)


def _reliability(marks: "np.ndarray") -> float | None:
    """Kuder-Richardson 20; None for one question or a class of equal scores."""
    questions = marks.shape[1]
    spread = float(marks.sum(axis=1).var())
    if questions < 2 or spread == 0:
        return None
    facility = marks.mean(axis=0)
    alone = float((facility * (1 - facility)).sum())
    # Below nothing it says only that the paper tells nothing; the error is then the whole spread.
    return max(0.0, questions / (questions - 1) * (1 - alone / spread))


def _discrimination(marks: "np.ndarray", place: int) -> float | None:
    own = marks[:, place]
    rest = marks.sum(axis=1) - own
    if own.std() == 0 or rest.std() == 0:
        return None
    return float(np.corrcoef(own, rest)[0, 1])


def _item(
    results: Sequence[PaperResult], marks: "np.ndarray", place: int, small: bool
) -> ItemFigures:
    template = results[0].paper.items[place].template
    answers = [result.items[place] for result in results]
    counts = Counter(answer.mistake for answer in answers if answer.mistake)
    facility = None if small else float(marks[:, place].mean())
    discrimination = None if small else _discrimination(marks, place)
    return ItemFigures(
        key=template.key,
        title=template.title,
        asked=len(results),
        right=int(marks[:, place].sum()),
        blank=sum(answer.verdict is None for answer in answers),
        facility=facility,
        discrimination=discrimination,
        mistakes=tuple(sorted(counts.items(), key=lambda pair: (-pair[1], pair[0]))),
        flags=() if small else tuple(_flags(results, place, facility, discrimination, counts)),
    )


def _flags(
    results: Sequence[PaperResult],
    place: int,
    facility: float | None,
    discrimination: float | None,
    counts: Counter[str],
) -> list[str]:
    found = []
    if facility is not None and facility < HARD:
        found.append("few got it right")
    if facility is not None and facility > EASY:
        found.append("nearly all got it right")
    if discrimination is not None and discrimination < BLUNT:
        found.append("strong and weak students did alike")
    options = results[0].paper.items[place].options
    unused = [m.key for m in results[0].paper.items[place].template.mistakes if not counts[m.key]]
    if options and unused:
        found.append(f"options nobody took: {', '.join(unused)}")
    strong = sorted(results, key=lambda r: -r.marks)[: max(1, round(_TOP * len(results)))]
    same = Counter(r.items[place].mistake for r in strong if r.items[place].mistake)
    if same and (most := same.most_common(1)[0])[1] > len(strong) / 2:
        found.append(f"most strong students made the same mistake ({most[0]}): check the key")
    return found
