"""A question that asks for an order: which comes first, which next.

Each thing to be ordered has a value that a derivation gives for the drawn numbers; so the order is
worked out, never typed in. A mistake is an expression for each of them that puts them into another
order. On the page and on paper the things are lettered, and an answer is their letters in order.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from hashlib import sha256
from itertools import count, pairwise
from types import SimpleNamespace
from typing import Any, ClassVar

from ropecalc.derivation import Derivation, Variable
from ropecalc.teaching.keyed import by_key, find
from ropecalc.teaching.questions import explaining
from ropecalc.teaching.questions.applied import Applied
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.order_line import OrderLine
from ropecalc.teaching.questions.order_marking import mark_order
from ropecalc.teaching.questions.passage import Passage
from ropecalc.teaching.questions.question import Listeners, NamedMistake, Values, shown_givens
from ropecalc.teaching.questions.verdict import Marked
from ropecalc.units import Display

LETTERS = "ABCDEFGH"
_APART = 0.08
"""Neighbours nearer to each other than this share of the larger are in order by luck only."""
_WRONG_APART = 0.01
"""The same for a mistake's values: nearer ones give no order that somebody would write down."""


@dataclass(frozen=True)
class Ranked:
    """One of the things to be ordered: what it is called and what it is ordered by.

    ``words`` may have a ``{place}`` for the value of each drawn quantity.
    """

    words: str
    by: Applied


@dataclass(frozen=True)
class WrongOrder(NamedMistake):
    """A wrong order that people are known to give.

    ``wrong`` takes the drawn numbers as attributes (``v.load``, SI) and returns a number for each
    thing, in the order in which the question lists them: what they are mistakenly ordered by.
    """

    wrong: Callable[[Any], Sequence[float]]


@dataclass(frozen=True)
class Ordering:
    """One question that is answered with an order, the ``first`` (smallest, slowest) one first.

    ``reason`` is a sentence that says what the order shows; the other fields are those of a
    :class:`~ropecalc.teaching.questions.template.Template`.
    """

    has_choice: ClassVar[bool] = False

    key: str
    title: str
    stem: str
    asked: str
    givens: tuple[Given, ...]
    things: tuple[Ranked, ...]
    reason: str
    mistakes: tuple[WrongOrder, ...]
    difficulty: int
    objective: str
    first: str = "smallest"
    last: str = "largest"
    usable: Callable[[Values], bool] = lambda values: True
    must_pass: bool = False

    def __post_init__(self) -> None:
        drawn = {given.name for given in self.givens}
        needed = {name for thing in self.things for name in thing.by.draws.values()}
        if drawn != needed:
            raise ValueError(f"{self.key} draws {sorted(drawn)} but needs {sorted(needed)}")
        if not 3 <= len(self.things) <= len(LETTERS):
            raise ValueError(f"{self.key} orders {len(self.things)} things; 3 to {len(LETTERS)}")

    def mistake(self, key: str) -> WrongOrder:
        """The mistake called ``key``."""
        return find(by_key(self.mistakes), key, "mistake")

    # --- drawing and marking ---

    def suits(self, values: Values) -> bool:
        """Whether neighbours lie apart, and no mistake gives the right order or another's."""
        holds = all(bool(t.by.derivation.valid(**t.by.numbers(values))) for t in self.things)
        if not (holds and self.usable(values)):
            return False
        try:
            clear = _apart(self._numbers(values), _APART)
        except ValueError:  # a derivation itself finds no result here
            return False
        wrong = self._wrong_numbers(values).values()
        orders = {_order(numbers) for numbers in (*wrong, self._numbers(values))}
        return (
            clear
            and all(_apart(numbers, _WRONG_APART) for numbers in wrong)
            and len(orders) == 1 + len(self.mistakes)
        )

    def answer(self, values: Values) -> str:
        """The letters in the right order."""
        return self._letters(_order(self._numbers(values)), values)

    def mistaken(self, values: Values) -> dict[str, str]:
        """The letters in each mistake's order, by the mistake's key."""
        wrong = self._wrong_numbers(values)
        return {key: self._letters(_order(numbers), values) for key, numbers in wrong.items()}

    def mark(self, values: Values, text: str, display: Display) -> Marked:
        """Mark letters in order."""
        return mark_order(self, values, text, display)

    def offered(self, values: Values) -> tuple[Ranked, ...]:
        """The things as they are lettered: shuffled, and never in the right order."""
        return tuple(self.things[place] for place in self._shuffled(values))

    def _numbers(self, values: Values) -> list[float]:
        return [thing.by.value(values) for thing in self.things]

    def _wrong_numbers(self, values: Values) -> dict[str, list[float]]:
        drawn = SimpleNamespace(**values)
        return {m.key: [float(number) for number in m.wrong(drawn)] for m in self.mistakes}

    def _shuffled(self, values: Values) -> tuple[int, ...]:
        """Places in ``things`` as they are offered; they follow from the numbers alone."""
        told = "|".join(f"{name}={values[name]:.9g}" for name in sorted(values))
        right = _order(self._numbers(values))
        shuffles = (_shuffle(f"{self.key}|{told}|{n}", len(self.things)) for n in count())
        return next(offered for offered in shuffles if offered != right)

    def _letters(self, order: Sequence[int], values: Values) -> str:
        offered = self._shuffled(values)
        return " ".join(LETTERS[offered.index(place)] for place in order)

    # --- in words ---

    def shown(self, _values: Values, answer: Any, _display: Display) -> str:
        """The letters."""
        return str(answer)

    def right(self, values: Values, _display: Display) -> str:
        """The answer."""
        return self.answer(values)

    def particulars(self, values: Values, display: Display) -> tuple[str, ...]:
        """Each thing with its letter."""
        words = self.offered_words(values, display)
        return tuple(f"{letter}. {said}" for letter, said in zip(LETTERS, words, strict=False))

    def offered_words(self, values: Values, display: Display) -> tuple[str, ...]:
        """Each thing in words with its numbers, as they are lettered."""
        shown = shown_givens(self, values, display)
        return tuple(thing.words.format(**shown) for thing in self.offered(values))

    def in_order(self, values: Values, display: Display) -> str:
        """The values in the right order, as a sentence."""
        kind = self.things[0].by.derivation.result.kind
        *most, last = (display.show(value, kind) for value in sorted(self._numbers(values)))
        return f"In that order they are {', '.join(most)} and {last}."

    def how(self, _display: Display) -> str:
        """The letters in order."""
        return f"Choose one for each place, the {self.first} first, then check."

    def on_paper(self, _display: Display) -> str:
        """Letters."""
        return "letters in order"

    def hints(self, values: Values, display: Display) -> tuple[Passage, ...]:
        """The laws in words, as equations, and with the numbers of the first thing."""
        laws = [derivation.explain(display) for derivation in self._derivations]
        first = self.offered(values)[0].by
        numbers = explaining.with_numbers(first.derivation, first.told(values, display))
        return (
            Passage(" ".join(explaining.in_words(told).words for told in laws)),
            _joined([explaining.as_equations(told) for told in laws]),
            Passage("With the numbers of A. Do the same for the others.", numbers.latex),
        )

    def solution(self, values: Values, display: Display) -> tuple[Passage, ...]:
        """The formulas, then each thing's value, then the order."""
        passages = [
            passage
            for derivation in self._derivations
            for passage in explaining.step_by_step(derivation.explain(display))
        ]
        words = self.offered_words(values, display)
        for letter, said, thing in zip(LETTERS, words, self.offered(values), strict=False):
            told = thing.by.told(values, display)
            last = told.lines[-1]
            passages.append(
                Passage(f"{letter}. {said}: {told.result}.", (last.numbers or last.latex,))
            )
        order = f"In order, the {self.first} first: {self.answer(values)}."
        said = f"{order} {self.in_order(values, display)} {self.reason}"
        return (*passages, Passage(said))

    def common_mistakes(self, values: Values, _display: Display) -> tuple[Passage, ...]:
        """Each mistake with the order it would have given."""
        mistaken = self.mistaken(values)
        return tuple(
            Passage(f"{one.title}: {mistaken[one.key]}. {one.why}") for one in self.mistakes
        )

    @property
    def assumptions(self) -> str:
        """Those of all derivations, each once."""
        told = [sentence for d in self._derivations for sentence in d.assumptions]
        return " ".join(dict.fromkeys(told))

    @property
    def symbols(self) -> tuple[Variable, ...]:
        """Those of all derivations, each once."""
        return tuple(dict.fromkeys(v for d in self._derivations for v in d.variables))

    @property
    def _derivations(self) -> tuple[Derivation, ...]:
        by_name = {thing.by.derivation.name: thing.by.derivation for thing in self.things}
        return tuple(by_name.values())

    # --- on the screen ---

    def answer_line(
        self, values: Values, text: str, display: Display, listeners: Listeners
    ) -> OrderLine:
        """A list to choose from for each place."""
        return OrderLine(self, values, text, display, listeners)


def _shuffle(text: str, size: int) -> tuple[int, ...]:
    """The places 0, 1, ... in an order that follows from ``text``."""

    def rank(place: int) -> bytes:
        return sha256(f"{text}|{place}".encode()).digest()

    return tuple(sorted(range(size), key=rank))


def _order(numbers: Sequence[float]) -> tuple[int, ...]:
    """The places of ``numbers``, smallest first."""
    return tuple(sorted(range(len(numbers)), key=lambda place: numbers[place]))


def _apart(numbers: Sequence[float], share: float) -> bool:
    """Whether all are finite and neighbours in order differ by more than ``share``."""
    if not all(math.isfinite(number) for number in numbers):
        return False
    pairs = pairwise(sorted(numbers))
    return all(high - low > share * max(abs(low), abs(high)) for low, high in pairs)


def _joined(passages: Sequence[Passage]) -> Passage:
    latex = tuple(line for passage in passages for line in passage.latex)
    text = tuple(line for passage in passages for line in passage.text)
    return Passage("As equations." if len(latex) > 1 else "As an equation.", latex, text)
