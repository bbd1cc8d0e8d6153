"""A control of a rig: a quantity on a slider."""

from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.sliders import Control, Scale
from ropecalc.units import Display, Kind, to_si


@dataclass(frozen=True)
class Knob:
    """A quantity that the learner sets: the grid of its slider, and where it stands at first.

    ``label`` is the slider's; ``start`` is in the grid's unit.
    """

    grid: Given
    start: float
    label: str

    @property
    def name(self) -> str:
        """The variable's name."""
        return self.grid.name

    @property
    def counts(self) -> bool:
        """Whether it is a number of things, of which there are whole ones only."""
        return self.grid.variable.kind is Kind.RATIO and float(self.grid.step).is_integer()

    @property
    def control(self) -> Control:
        """The slider."""
        last = self.grid.count - 1
        return Control(
            self.name,
            self.label,
            self.grid.variable.kind,
            self.grid.value(0),
            self.grid.value(last),
            to_si(self.grid.step, self.grid.unit),
            self.grid.value(round((self.start - self.grid.low) / self.grid.step)),
        )

    @property
    def stops(self) -> "np.ndarray":
        """Every value of the grid, SI."""
        return np.array([self.grid.value(index) for index in range(self.grid.count)])

    def show(self, value: float, display: Display) -> str:
        """An SI value as the slider shows it, with its unit."""
        unit = display.unit(self.grid.variable.kind)
        step = Decimal(f"{Scale.of(self.control, display).step:.6g}").normalize()
        decimals = max(0, -int(step.as_tuple().exponent))
        gap = "" if unit.symbol in ("°", "") else " "
        return f"{value / unit.factor:.{decimals}f}{gap}{unit.symbol}"
