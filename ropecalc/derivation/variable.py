"""What a symbol stands for: its meaning, its unit, where it is defined and where it is taught."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc.units import Display, Kind


class DomainError(ValueError):
    """A value lies outside the range in which a result holds. The text says how to fix it.

    ``words`` is that text, or how it reads in a reader's units; :meth:`in_units` gives it to a
    page, ``str`` in the units of a new reader. ``keyword`` is the Python name of the value that
    was refused ("" if it is not one alone); a traceback shows it as a note.
    """

    def __init__(self, words: str | Callable[[Display], str], keyword: str = "") -> None:
        self._words = words
        self.keyword = keyword
        super().__init__(self.in_units(Display()))
        if keyword:
            self.add_note(f"The keyword is {keyword}.")

    def in_units(self, display: Display) -> str:
        """The text in the reader's units."""
        return self._words if isinstance(self._words, str) else self._words(display)


def as_numbers(name: str, value: Any) -> Any:
    """``value`` as a float or as an array of floats.

    Raises :class:`DomainError` for text, complex numbers and points that a mask hides: reading
    on would turn them silently into numbers nobody entered.
    """
    if isinstance(value, float):
        return value
    if np.ma.is_masked(value):
        raise DomainError(f"{name} has masked points; leave them out, or ask for masked results.")
    try:
        array = np.asarray(value)
        if array.dtype.kind not in "biufO":
            raise TypeError
        array = array.astype(float, copy=False)
    except (TypeError, ValueError, OverflowError):
        shown = repr(value) if len(repr(value)) <= 60 else f"a {type(value).__name__}"
        raise DomainError(
            f"{name} is {shown}; it must be a number or an array of numbers in SI units."
        ) from None
    return float(array) if array.ndim == 0 else array


def as_number(name: str, value: Any) -> float:
    """``value`` as one float; :class:`DomainError` for arrays and for what is no number."""
    number = as_numbers(name, value)
    if np.ndim(number):
        raise DomainError(f"{name} is an array; give one number at a time.", name)
    return float(number)


@dataclass(frozen=True)
class Domain:
    """An interval of SI values; each end is open (excluded) or closed (included)."""

    low: float
    high: float
    low_open: bool = False
    high_open: bool = False

    def mask(self, value: Any) -> Any:
        """True where ``value`` (scalar or array) lies inside. NaN and infinities never do."""
        above = value > self.low if self.low_open else value >= self.low
        below = value < self.high if self.high_open else value <= self.high
        return above & below & (abs(value) < math.inf)

    def contains(self, value: Any) -> bool:
        """Whether every element lies inside; costs two passes over an array, no copies."""
        if isinstance(value, np.ndarray) and value.size:  # plain floats compare faster than numpy's
            return self.contains(float(value.min())) and self.contains(float(value.max()))
        if isinstance(value, float):
            return bool(self.mask(value))
        return bool(np.all(self.mask(value)))

    def describe(self, kind: Kind, display: Display) -> str:
        """The interval in words and in the reader's units."""
        parts = []
        if self.low > -math.inf:
            how = "more than" if self.low_open else "at least"
            parts.append(f"{how} {display.show(self.low, kind)}")
        if self.high < math.inf:
            how = "less than" if self.high_open else "at most"
            parts.append(f"{how} {display.show(self.high, kind)}")
        return " and ".join(parts) or "a finite number"


ANY = Domain(-math.inf, math.inf)
POSITIVE = Domain(0.0, math.inf, low_open=True)
NOT_NEGATIVE = Domain(0.0, math.inf)


@dataclass(frozen=True)
class Range:
    """Where lessons move a variable: low, high and where it starts, all SI."""

    low: float
    high: float
    default: float


@dataclass(frozen=True)
class Variable:
    """One quantity of the course.

    ``name`` is the Python keyword, ``symbol`` the LaTeX symbol, ``meaning`` a phrase that reads
    well after "the". ``in_si`` marks what a formula takes in SI only (an angle used as a length
    of arc, a mass beside the number of gravity): inside formulas its value is shown in SI
    whatever the reader chose.
    """

    name: str
    symbol: str
    meaning: str
    kind: Kind
    domain: Domain
    teaching: Range
    in_si: bool = False

    def __post_init__(self) -> None:
        for value in (self.teaching.low, self.teaching.default, self.teaching.high):
            if not self.domain.contains(value):
                raise ValueError(f"{self.name}: teaching value {value} lies outside its domain")

    def check(self, value: Any) -> None:
        """Raise :class:`DomainError` unless every element of ``value`` is in the domain."""
        if self.domain.contains(value):
            return
        flat = np.atleast_1d(np.asarray(value, dtype=float)).ravel()
        bad = float(flat[~np.asarray(self.domain.mask(flat))][0])

        def words(display: Display) -> str:
            shown = "not a finite number"
            if math.isfinite(bad):
                shown = display.show(bad, self.kind, figures=4)
            return (
                f"The {self.meaning} is {shown}; it must be "
                f"{self.domain.describe(self.kind, display)}. Change it."
            )

        raise DomainError(words, self.name)

    def plain_symbol(self) -> str:
        """The symbol as plain text for screen readers and text summaries."""
        return (
            self.symbol.replace("\\mathrm", "").replace("{", "").replace("}", "").replace("\\", "")
        )
