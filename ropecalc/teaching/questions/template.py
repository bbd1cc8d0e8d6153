"""A question that asks for a number: what is given, what is asked, how people go wrong.

A template holds no answer. The answer is what its derivation gives for the drawn numbers, and
each mistake is an expression in the derivation's own symbols.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from types import SimpleNamespace
from typing import Any, ClassVar

import numpy as np

from ropecalc.derivation import Derivation, Explanation, Variable
from ropecalc.teaching.keyed import by_key, find
from ropecalc.teaching.questions import explaining
from ropecalc.teaching.questions.entry import Entry
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.number_marking import mark_number
from ropecalc.teaching.questions.passage import Passage
from ropecalc.teaching.questions.question import Listeners, NamedMistake, Values
from ropecalc.teaching.questions.verdict import Marked
from ropecalc.units import Display, Kind

_WINDOW = 0.015
"""How near an answer must come to a mistake's value, as a share of it, to be taken for it."""
_WINDOW_OF_NOTHING = 0.25
"""The least such window, as a share of the answer's margin; it serves mistakes that give zero."""
_APART = 0.03
"""Two mistakes nearer to each other than this share of the larger cannot be told apart."""


@dataclass(frozen=True)
class Tolerance:
    """How far an answer may be off by rounding: a share of it, or so much in SI units."""

    relative: float = 0.0
    absolute: float = 0.0

    def margin(self, answer: float) -> float:
        """The tolerance around ``answer``, SI."""
        return self.relative * abs(answer) + self.absolute


@dataclass(frozen=True)
class Mistake(NamedMistake):
    """A wrong answer that people are known to give.

    ``wrong`` takes the derivation's sympy symbols as attributes (``v.load``) and returns the
    mistaken expression in the given ones; ``title`` names the mistake and ``why`` tells the
    learner what it leaves out.
    """

    wrong: Callable[[Any], Any]


@dataclass(frozen=True)
class Approximation:
    """A rougher way to the answer that counts as right, with a ``note`` that says what was rough.

    ``value`` takes the derivation's symbols, as a mistake's ``wrong`` does.
    """

    note: str
    value: Callable[[Any], Any]


@dataclass(frozen=True)
class Template:
    """A question that is answered with a number and its unit.

    ``stem`` has a ``{place}`` for each given quantity's value. ``difficulty`` is 1 (one step), 2
    (some steps, or a decision on direction) or 3 (several steps); ``objective`` completes "After
    this you can ...". ``usable`` turns down numbers that are allowed but teach badly.
    ``must_pass`` marks what nobody should get wrong at the cliff: practice brings it back most
    often, and an instructor may demand it of everybody. ``accepted`` are rougher ways that count
    as right although they come out further off than ``tolerance``.
    """

    has_choice: ClassVar[bool] = True

    key: str
    title: str
    stem: str
    asked: str
    givens: tuple[Given, ...]
    derivation: Derivation
    tolerance: Tolerance
    mistakes: tuple[Mistake, ...]
    difficulty: int
    objective: str
    usable: Callable[[Values], bool] = lambda values: True
    must_pass: bool = False
    accepted: tuple[Approximation, ...] = ()

    def __post_init__(self) -> None:
        drawn = {given.name for given in self.givens}
        needed = {variable.name for variable in self.derivation.given}
        if drawn != needed:
            raise ValueError(f"{self.key} draws {sorted(drawn)} but needs {sorted(needed)}")

    @property
    def kind(self) -> Kind:
        """What the answer measures."""
        return self.derivation.result.kind

    def mistake(self, key: str) -> Mistake:
        """The mistake called ``key``."""
        return find(by_key(self.mistakes), key, "mistake")

    def answer(self, values: Values) -> float:
        """What the derivation gives for ``values`` (SI)."""
        return float(self.derivation(**values))

    def mistaken(self, values: Values) -> dict[str, float]:
        """What each mistake gives for ``values`` (SI), by the mistake's key; inf or nan if none."""
        return {key: self._at(values, function) for key, function in self._functions.items()}

    def approximated(self, values: Values) -> tuple[tuple[Approximation, float], ...]:
        """What each accepted way gives for ``values`` (SI)."""
        return tuple(
            (way, self._at(values, function)) for way, function in self._accepted_functions
        )

    def _at(self, values: Values, function: Callable[..., Any]) -> float:
        with np.errstate(all="ignore"):
            return float(function(*(np.float64(values[v.name]) for v in self.derivation.given)))

    @cached_property
    def _functions(self) -> dict[str, Callable[..., Any]]:
        return {mistake.key: self._numeric(mistake.wrong) for mistake in self.mistakes}

    @cached_property
    def _accepted_functions(self) -> tuple[tuple[Approximation, Callable[..., Any]], ...]:
        return tuple((way, self._numeric(way.value)) for way in self.accepted)

    def _numeric(self, expression: Callable[[Any], Any]) -> Callable[..., Any]:
        return self.derivation.numeric(expression(SimpleNamespace(**self.derivation.symbols)))

    def window(self, answer: float, mistaken: float) -> float:
        """How near an answer must come to the value ``mistaken`` to be taken for that mistake."""
        return max(_WINDOW * abs(mistaken), _WINDOW_OF_NOTHING * self.tolerance.margin(answer))

    def suits(self, values: Values) -> bool:
        """Whether the result holds here, teaches well, and no mistake comes near it."""
        if not (bool(self.derivation.valid(**values)) and self.usable(values)):
            return False
        try:
            return self.tells_apart(values)
        except ValueError:  # the derivation itself finds no result here
            return False

    def tells_apart(self, values: Values) -> bool:
        """Whether with these numbers every mistake differs from what is right and the others."""
        answer = self.answer(values)
        right = (answer, *(value for _, value in self.approximated(values)))
        wrong = list(self.mistaken(values).values())
        clear = 2 * self.tolerance.margin(answer)
        for index, one in enumerate(wrong):
            if not math.isfinite(one) or any(abs(one - value) <= clear for value in right):
                return False
            for other in wrong[:index]:
                windows = self.window(answer, one) + self.window(answer, other)
                if abs(one - other) <= max(windows, _APART * max(abs(one), abs(other))):
                    return False
        return True

    def mark(self, values: Values, text: str, display: Display) -> Marked:
        """Mark a typed number with its unit."""
        return mark_number(self, values, text, display)

    # --- in words ---

    def shown(self, _values: Values, answer: Any, display: Display) -> str:
        """A number (SI) with its unit."""
        return display.show(answer, self.kind)

    def right(self, values: Values, display: Display) -> str:
        """The answer."""
        return self.shown(values, self.answer(values), display)

    def particulars(self, _values: Values, _display: Display) -> tuple[str, ...]:
        """None: the stem says it all."""
        return ()

    def how(self, _display: Display) -> str:
        """A number and its unit."""
        return "Write a number and its unit, then check."

    def on_paper(self, _display: Display) -> str:
        """Whether there is no unit to write."""
        return "none" if self.kind is Kind.RATIO else ""

    def hints(self, values: Values, display: Display) -> tuple[Passage, ...]:
        """The laws in words, as equations, with the numbers, and solved."""
        told = self._explained(values, display)
        return (
            explaining.in_words(told),
            explaining.as_equations(told),
            explaining.with_numbers(self.derivation, told),
            *explaining.solved(self.derivation, told),
        )

    def solution(self, values: Values, display: Display) -> tuple[Passage, ...]:
        """Every step of the derivation, then the result."""
        told = self._explained(values, display)
        return (*explaining.step_by_step(told), Passage(f"{told.result}."))

    def common_mistakes(self, values: Values, display: Display) -> tuple[Passage, ...]:
        """Each mistake with the number it would have given."""
        mistaken = self.mistaken(values)
        return tuple(
            Passage(f"{one.title}: {display.show(mistaken[one.key], self.kind)}. {one.why}")
            for one in self.mistakes
        )

    @property
    def assumptions(self) -> str:
        """Those of the derivation."""
        return " ".join(self.derivation.assumptions)

    @property
    def symbols(self) -> tuple[Variable, ...]:
        """Those of the derivation."""
        return self.derivation.variables

    def _explained(self, values: Values, display: Display) -> Explanation:
        return self.derivation.explain(display, **values)

    # --- on the screen ---

    def answer_line(
        self, _values: Values, text: str, display: Display, listeners: Listeners
    ) -> Entry:
        """A line to type in."""
        return Entry(text, self.kind, display, listeners)
