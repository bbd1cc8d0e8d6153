"""A question before its numbers are drawn: what is given, what is asked, how people go wrong.

A template holds no answer. The answer is what its derivation gives for the drawn numbers, and
each mistake is an expression in the derivation's own symbols.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from types import SimpleNamespace
from typing import Any

import numpy as np

from ropecalc.derivation import Derivation, Variable
from ropecalc.teaching.keyed import by_key, find
from ropecalc.units import Display, Kind, find_unit, plain, to_si

_WINDOW = 0.015
"""How near an answer must come to a mistake's value, as a share of it, to be taken for it."""
_WINDOW_OF_NOTHING = 0.25
"""The least such window, as a share of the answer's margin; it serves mistakes that give zero."""
_APART = 0.03
"""Two mistakes nearer to each other than this share of the larger cannot be told apart."""


@dataclass(frozen=True)
class Given:
    """A quantity that is drawn from the grid ``low``, ``low + step``, ... ``high`` in ``unit``."""

    variable: Variable
    low: float
    high: float
    step: float
    unit: str

    def __post_init__(self) -> None:
        if find_unit(self.unit).kind is not self.variable.kind:
            raise ValueError(f"{self.variable.name} is no {find_unit(self.unit).kind}")
        for end in (self.low, self.high):
            self.variable.check(to_si(end, self.unit))

    @property
    def name(self) -> str:
        """The variable's name."""
        return self.variable.name

    @property
    def count(self) -> int:
        """How many values the grid has."""
        return round((self.high - self.low) / self.step) + 1

    def value(self, index: int) -> float:
        """The grid's value number ``index`` (from 0), SI."""
        exact = Decimal(str(self.low)) + index * Decimal(str(self.step))
        return to_si(float(exact), self.unit)

    def show(self, value: float, display: Display) -> str:
        """An SI value in the reader's unit: exact in the grid's own, else to a tenth of a step."""
        kind = self.variable.kind
        unit = display.unit(kind)
        if unit.symbol == self.unit:
            last = Decimal(str(self.step)).normalize()
        else:
            tenth = to_si(self.step, self.unit) / unit.factor / 10
            last = Decimal(1).scaleb(min(0, math.floor(math.log10(tenth))))
        number = Decimal(f"{value / unit.factor:.9f}").quantize(last)
        return plain(number) + ("" if unit.symbol in ("°", "") else " ") + unit.symbol


@dataclass(frozen=True)
class Tolerance:
    """How far an answer may be off by rounding: a share of it, or so much in SI units."""

    relative: float = 0.0
    absolute: float = 0.0

    def margin(self, answer: float) -> float:
        """The tolerance around ``answer``, SI."""
        return self.relative * abs(answer) + self.absolute


@dataclass(frozen=True)
class Mistake:
    """A wrong answer that people are known to give.

    ``wrong`` takes the derivation's sympy symbols as attributes (``v.load``) and returns the
    mistaken expression in the given ones; ``title`` names the mistake and ``why`` tells the
    learner what it leaves out.
    """

    key: str
    title: str
    why: str
    wrong: Callable[[Any], Any]

    @property
    def named(self) -> str:
        """The title as it stands inside a sentence."""
        return self.title[0].lower() + self.title[1:]


@dataclass(frozen=True)
class Template:
    """One question. ``stem`` has a ``{place}`` for each given quantity's value.

    ``difficulty`` is 1 (one step), 2 (some steps, or a decision on direction) or 3 (several
    steps); ``objective`` completes "After this you can ...". ``usable`` turns down numbers that
    are allowed but teach badly. ``must_pass`` marks what nobody should get wrong at the cliff:
    practice brings it back most often, and an instructor may demand it of everybody.
    """

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
    usable: Callable[[Mapping[str, float]], bool] = lambda values: True
    must_pass: bool = False

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

    def answer(self, values: Mapping[str, float]) -> float:
        """What the derivation gives for ``values`` (SI)."""
        return float(self.derivation(**values))

    def mistaken(self, values: Mapping[str, float]) -> dict[str, float]:
        """What each mistake gives for ``values`` (SI), by the mistake's key; inf or nan if none."""
        ordered = [np.float64(values[v.name]) for v in self.derivation.given]
        with np.errstate(all="ignore"):
            return {key: float(function(*ordered)) for key, function in self._functions.items()}

    @cached_property
    def _functions(self) -> dict[str, Callable[..., Any]]:
        symbols = SimpleNamespace(**self.derivation.symbols)
        return {m.key: self.derivation.numeric(m.wrong(symbols)) for m in self.mistakes}

    def window(self, answer: float, mistaken: float) -> float:
        """How near an answer must come to the value ``mistaken`` to be taken for that mistake."""
        return max(_WINDOW * abs(mistaken), _WINDOW_OF_NOTHING * self.tolerance.margin(answer))

    def tells_apart(self, values: Mapping[str, float]) -> bool:
        """Whether with these numbers every mistake differs from the answer and from the others."""
        answer = self.answer(values)
        wrong = list(self.mistaken(values).values())
        clear = 2 * self.tolerance.margin(answer)
        for index, one in enumerate(wrong):
            if not math.isfinite(one) or abs(one - answer) <= clear:
                return False
            for other in wrong[:index]:
                windows = self.window(answer, one) + self.window(answer, other)
                if abs(one - other) <= max(windows, _APART * max(abs(one), abs(other))):
                    return False
        return True
