"""The one place where numbers meet units.

Inside the library every number is SI: newtons, metres, kilograms, radians, metres per second,
seconds. A reader chooses display units once (:class:`Display`); this module turns SI into what is
shown and turns what was typed into SI. Mass and force are different kinds and never mix: "kg" on a
load cell is kgf here.
"""

import math
import re
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Decimal
from enum import StrEnum
from types import MappingProxyType

STANDARD_GRAVITY = 9.80665
"""Standard acceleration of free fall in m/s² (exact by definition, NIST SP 811)."""

POUND = 0.45359237
"""The avoirdupois pound in kg (exact by definition, NIST SP 811)."""


class Kind(StrEnum):
    """What a number measures. Two numbers of different kinds cannot be compared or converted."""

    FORCE = "force"
    LENGTH = "length"
    MASS = "mass"
    ANGLE = "angle"
    SPEED = "speed"
    TIME = "time"
    RATIO = "ratio"

    @property
    def phrase(self) -> str:
        """The kind with its article, as it stands in a sentence."""
        return f"an {self}" if self is Kind.ANGLE else f"a {self}"


@dataclass(frozen=True)
class Unit:
    """A unit of one kind; ``factor`` is how many SI units one of it is."""

    symbol: str
    kind: Kind
    factor: float
    words: str

    @property
    def latex(self) -> str:
        """The unit as it is typeset behind a number."""
        if self.symbol == "°":
            return r"^\circ"
        return rf"\,\mathrm{{{self.symbol}}}" if self.symbol else ""


_ALL = (
    Unit("N", Kind.FORCE, 1.0, "newtons"),
    Unit("kN", Kind.FORCE, 1000.0, "kilonewtons"),
    Unit("kgf", Kind.FORCE, STANDARD_GRAVITY, "kilograms-force"),
    Unit("lbf", Kind.FORCE, POUND * STANDARD_GRAVITY, "pounds-force"),
    Unit("m", Kind.LENGTH, 1.0, "metres"),
    Unit("cm", Kind.LENGTH, 0.01, "centimetres"),
    Unit("mm", Kind.LENGTH, 0.001, "millimetres"),
    Unit("ft", Kind.LENGTH, 0.3048, "feet"),
    Unit("in", Kind.LENGTH, 0.0254, "inches"),
    Unit("kg", Kind.MASS, 1.0, "kilograms"),
    Unit("lb", Kind.MASS, POUND, "pounds"),
    Unit("°", Kind.ANGLE, math.pi / 180.0, "degrees"),
    Unit("rad", Kind.ANGLE, 1.0, "radians"),
    Unit("m/s", Kind.SPEED, 1.0, "metres per second"),
    Unit("ft/s", Kind.SPEED, 0.3048, "feet per second"),
    Unit("s", Kind.TIME, 1.0, "seconds"),
    Unit("min", Kind.TIME, 60.0, "minutes"),
    Unit("", Kind.RATIO, 1.0, "plain number"),
    Unit("%", Kind.RATIO, 0.01, "per cent"),
)
UNITS = MappingProxyType({unit.symbol: unit for unit in _ALL})
_SPELLINGS = MappingProxyType(
    {unit.symbol.lower(): unit for unit in _ALL}
    | {unit.words: unit for unit in _ALL if unit.symbol}
    | {
        "deg": UNITS["°"],
        "degree": UNITS["°"],
        "newton": UNITS["N"],
        "kilonewton": UNITS["kN"],
        "metre": UNITS["m"],
        "meter": UNITS["m"],
        "meters": UNITS["m"],
        "foot": UNITS["ft"],
        "feet": UNITS["ft"],
        "inch": UNITS["in"],
        "lbs": UNITS["lb"],
        "kilogram": UNITS["kg"],
        "pound": UNITS["lb"],
        "meters per second": UNITS["m/s"],
        "second": UNITS["s"],
        "sec": UNITS["s"],
        "minute": UNITS["min"],
        "m/m": UNITS[""],
        "ft/ft": UNITS[""],
    }
)


class QuantityError(ValueError):
    """What was typed is not a quantity of the kind that was asked for. The text says why."""


class WrongUnitError(QuantityError):
    """The number reads well but its unit is missing or measures something else."""


def units_of(kind: Kind) -> tuple[Unit, ...]:
    """Every unit of ``kind``, in the order in which they are offered."""
    return tuple(unit for unit in _ALL if unit.kind is kind)


def find_unit(text: str) -> Unit:
    """The unit that ``text`` spells, e.g. ``"kN"``, ``"deg"``, ``"feet"``.

    Raises :class:`QuantityError` that lists the known units if there is none.
    """
    unit = _SPELLINGS.get(text.strip().lower())
    if unit is None:
        known = ", ".join(u.symbol for u in _ALL if u.symbol)
        raise QuantityError(f"“{text}” is not a unit known here. Use one of: {known}.")
    return unit


def to_si(value: float, unit: str) -> float:
    """``value`` in the unit spelled ``unit``, as SI (N, m, kg, rad, m/s, s)."""
    return value * find_unit(unit).factor


def from_si(value: float, unit: str) -> float:
    """An SI ``value`` (N, m, kg, rad, m/s, s) in the unit spelled ``unit``."""
    return value / find_unit(unit).factor


_NUMBER = re.compile(r"(?P<number>[+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+))(?P<unit>\D*)")


def parse_number(text: str) -> tuple[float, str]:
    """Split ``"1,25 kN"`` into ``(1.25, "kN")``; the comma or the point is the decimal mark.

    Strict on purpose: thousands separators, fractions and exponents are refused in words
    rather than guessed, because ``1,155`` read as a thousand would be a thousandfold error.
    """
    match = _NUMBER.fullmatch(text.strip())
    if match is None:
        raise QuantityError(
            f"“{text.strip()}” cannot be read as one number. Write digits with at most one "
            "decimal comma or point, then the unit, for example 1.25 kN."
        )
    number = float(match["number"].replace("−", "-").replace(",", "."))
    if not math.isfinite(number):
        raise QuantityError("That number has more digits than can be reckoned with. Write fewer.")
    return number, match["unit"].strip()


def parse_quantity(text: str, kind: Kind) -> tuple[float, Unit]:
    """Read typed text as a quantity of ``kind``; returns the SI value and the unit used.

    A plain number is accepted only where no unit exists (ratios). Raises
    :class:`WrongUnitError` for a missing unit or a unit of another kind and
    :class:`QuantityError` for anything else that cannot be read.
    """
    if not text.strip():
        raise QuantityError("Nothing has been typed yet. Write a number and its unit.")
    number, unit_text = parse_number(text)
    offered = ", ".join(u.symbol for u in units_of(kind) if u.symbol)
    if not unit_text and kind is not Kind.RATIO:
        raise WrongUnitError(
            f"“{text.strip()}” has no unit. Add one of: {offered} (this is {kind.phrase})."
        )
    unit = find_unit(unit_text)
    if unit.kind is not kind:
        twin = {("kg", Kind.FORCE): "kgf", ("lb", Kind.FORCE): "lbf"}.get((unit.symbol, kind))
        hint = f" A scale or load cell that shows {unit.symbol} means {twin}." if twin else ""
        raise WrongUnitError(
            f"“{text.strip()}” is {unit.kind.phrase}, but {kind.phrase} is asked for."
            + (" Write a plain number or %." if kind is Kind.RATIO else f" Use one of: {offered}.")
            + hint
        )
    return number * unit.factor, unit


class Rounding(StrEnum):
    """Which way to round: NEAREST for lessons, UP or DOWN against the user in plans."""

    NEAREST = "nearest"
    UP = "up"
    DOWN = "down"


_MODES = {
    Rounding.NEAREST: ROUND_HALF_EVEN,
    Rounding.UP: ROUND_CEILING,
    Rounding.DOWN: ROUND_FLOOR,
}


def round_figures(value: float, figures: int, rounding: Rounding = Rounding.NEAREST) -> Decimal:
    """``value`` to ``figures`` significant figures, as an exact decimal.

    UP means towards plus infinity and DOWN towards minus infinity. Noise in the twelfth digit
    does not tip a number over, so 1.2000000000000002 rounded UP to two figures is 1.2.
    """
    if not math.isfinite(value):
        raise ValueError(f"cannot round {value!r}: a finite number is needed")
    if value == 0.0:
        return Decimal(0)
    clean = Decimal(f"{value:.11e}")
    rounded = _quantize(clean, clean.adjusted() - figures + 1, rounding)
    if rounded and rounded.adjusted() > clean.adjusted():  # 0.9996 became 1.000: one digit too many
        rounded = _quantize(clean, rounded.adjusted() - figures + 1, rounding)
    return rounded


def _quantize(number: Decimal, exponent: int, rounding: Rounding) -> Decimal:
    return number.quantize(Decimal(1).scaleb(exponent), rounding=_MODES[rounding])


def plain(number: Decimal) -> str:
    """A decimal without exponent, with a true minus sign."""
    return f"{number:f}".replace("-", "−")


def _written(shown: float, kind: Kind, figures: int, rounding: Rounding) -> str:
    """A rounded number; a plain one that is whole stays whole: 3 strands, not 3.00."""
    if kind is Kind.RATIO and shown and abs(shown) < 10**figures and shown == round(shown):
        return plain(Decimal(round(shown)))
    return plain(round_figures(shown, figures, rounding))


@dataclass(frozen=True)
class Display:
    """The units a reader chose, one for each kind; every screen and paper reads this.

    Speeds follow the unit of length, in feet per second for feet and inches; times are in seconds.

    >>> Display().show(1533.5, Kind.FORCE)
    '1.53 kN'
    >>> Display(force="lbf").show(1533.5, Kind.FORCE, figures=2, rounding=Rounding.UP)
    '350 lbf'
    """

    force: str = "kN"
    length: str = "m"
    mass: str = "kg"
    angle: str = "°"

    def __post_init__(self) -> None:
        for kind in (Kind.FORCE, Kind.LENGTH, Kind.MASS, Kind.ANGLE):
            unit = find_unit(getattr(self, kind.value))
            if unit.kind is not kind:
                raise QuantityError(f"{unit.symbol} is {unit.kind.phrase}, not {kind.phrase}.")

    def unit(self, kind: Kind) -> Unit:
        """The unit in which this reader sees numbers of ``kind``."""
        if kind is Kind.SPEED:
            return UNITS["ft/s" if find_unit(self.length).symbol in ("ft", "in") else "m/s"]
        if kind is Kind.TIME:
            return UNITS["s"]
        return UNITS[""] if kind is Kind.RATIO else find_unit(getattr(self, kind.value))

    def value(self, si_value: float, kind: Kind) -> float:
        """An SI value in the reader's unit, unrounded."""
        return si_value / self.unit(kind).factor

    def si(self, shown_value: float, kind: Kind) -> float:
        """A value in the reader's unit as SI."""
        return shown_value * self.unit(kind).factor

    def number(
        self,
        si_value: float,
        kind: Kind,
        figures: int = 3,
        rounding: Rounding = Rounding.NEAREST,
    ) -> str:
        """The rounded number alone, without its unit."""
        return _written(self.value(si_value, kind), kind, figures, rounding)

    def unit_at(self, si_value: float, kind: Kind) -> Unit:
        """The reader's unit for one value: newtons where kilonewtons would begin with 0.0."""
        unit = self.unit(kind)
        return UNITS["N"] if unit.symbol == "kN" and 0.0 < abs(si_value) < 100.0 else unit

    def show(
        self,
        si_value: float,
        kind: Kind,
        figures: int = 3,
        rounding: Rounding = Rounding.NEAREST,
    ) -> str:
        """The rounded number with its unit, as text."""
        unit = self.unit_at(si_value, kind)
        gap = "" if unit.symbol in ("°", "") else " "
        number = _written(si_value / unit.factor, kind, figures, rounding)
        return number + gap + unit.symbol

    def latex(self, si_value: float, kind: Kind, figures: int = 3) -> str:
        """The rounded number with its unit, typeset."""
        unit = self.unit_at(si_value, kind)
        number = _written(si_value / unit.factor, kind, figures, Rounding.NEAREST)
        return number.replace("−", "-") + unit.latex
