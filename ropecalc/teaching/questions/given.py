"""A quantity that a question draws, and how its value is shown."""

import math
from dataclasses import dataclass
from decimal import Decimal

from ropecalc.derivation import Variable
from ropecalc.units import Display, find_unit, plain, to_si


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
