"""Sliders in the reader's units: they stop at round numbers, whichever unit is chosen."""

import math
from dataclasses import dataclass
from decimal import Decimal

import ipywidgets as widgets

from ropecalc.teaching.drawing import neat
from ropecalc.units import Display, Kind

_ROUNDING = 1e-9


@dataclass(frozen=True)
class Control:
    """A slider. ``low``, ``high``, ``step`` and ``default`` are SI (step in SI units, too)."""

    key: str
    label: str
    kind: Kind
    low: float
    high: float
    step: float
    default: float

    def value(self, shown: float, display: Display) -> float:
        """The SI value (within the range) of a slider that shows ``shown``."""
        return min(max(display.si(shown, self.kind), self.low), self.high)


def place_slider(
    slider: widgets.FloatSlider, control: Control, value: float, display: Display
) -> None:
    """Put a slider on its range in the reader's units, at ``value`` (SI), which does not move.

    Both ends are whole steps, the nearest outside the range, so that every key press from an end
    gives a round number.
    """
    unit = display.unit(control.kind)
    step = control.step if unit.factor == 1.0 else neat(control.step / unit.factor)
    low, high = (display.value(end, control.kind) for end in (control.low, control.high))
    with slider.hold_trait_notifications():
        slider.description = f"{control.label} ({unit.symbol})" if unit.symbol else control.label
        slider.step = step
        slider.readout_format = f".{_decimals(step)}f"
        slider.min = round(math.floor(low / step + _ROUNDING) * step, 9)
        slider.max = round(math.ceil(high / step - _ROUNDING) * step, 9)
        slider.value = display.value(value, control.kind)


def _decimals(step: float) -> int:
    """How many decimals show every multiple of ``step`` apart and in full."""
    exponent = Decimal(f"{step:.6g}").normalize().as_tuple().exponent
    return max(0, -int(exponent))
