"""Sliders in the reader's units: they stop at round numbers, whichever unit is chosen."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from html import escape
from typing import Any

import ipywidgets as widgets

from ropecalc.teaching.drawing import neat
from ropecalc.units import Display, Kind

_ROUNDING = 1e-9
_FIGURES = 3
_DECIMALS = {"m": 2, "ft": 1, "kN": 2, "°": 1, "m/s": 2, "ft/s": 2}
"""Decimals of every slider in a unit; others have none, plain numbers what their step needs."""


@dataclass(frozen=True)
class Control:
    """A slider. ``low``, ``high``, ``step`` and ``default`` are SI (step in SI units, too).

    ``help`` is a sentence or two under the slider, for a label that needs one.
    """

    key: str
    label: str
    kind: Kind
    low: float
    high: float
    step: float
    default: float
    help: str = ""

    def value(self, shown: float, display: Display) -> float:
        """The SI value (within the range) of a slider that shows ``shown``."""
        return min(max(display.si(shown, self.kind), self.low), self.high)


@dataclass(frozen=True)
class Scale:
    """A control's stops in one unit: multiples of ``step`` from ``low`` to ``high``.

    Both ends are whole steps, the nearest outside the range, so that every key press from an end
    gives a round number.
    """

    low: float
    high: float
    step: float
    decimals: int

    @classmethod
    def of(cls, control: Control, display: Display) -> "Scale":
        """The stops of ``control``; fine enough for three figures of its default."""
        unit = display.unit(control.kind)
        low, high, default, step = (
            si / unit.factor for si in (control.low, control.high, control.default, control.step)
        )
        if unit.factor != 1.0:
            step = neat(step)
        if abs(default / step - round(default / step)) > 1e-6:
            step = min(step, _digit(default, unit.symbol))
        needed = max(0, -int(Decimal(f"{step:.6g}").normalize().as_tuple().exponent))
        return cls(
            low=round(math.floor(low / step + _ROUNDING) * step, 9),
            high=round(math.ceil(high / step - _ROUNDING) * step, 9),
            step=step,
            decimals=max(needed, _DECIMALS.get(unit.symbol, 0)),
        )

    def stop(self, shown: float) -> float:
        """The stop nearest to ``shown``, in the same unit."""
        nearest = round(round(shown / self.step) * self.step, 9)
        return min(max(nearest, self.low), self.high)


def _digit(shown: float, unit: str) -> float:
    """What one is worth in the last of three figures, but nothing finer than the unit shows."""
    exponent = math.floor(math.log10(abs(shown))) + 1 - _FIGURES
    return float(10.0 ** max(exponent, -_DECIMALS.get(unit, 2 if unit == "" else 0)))


class QuantitySlider(widgets.VBox):
    """A quantity on a slider; ``quantity`` (SI) is the truth and the slider shows its nearest stop.

    A browser reports back what it makes of a slider's new ends, one after the other, and it lets
    a handle rest on stops only. So other units bring a new slider in the old one's place, and the
    report of the stop that was put there moves nothing; ``moved`` is called for all others.
    """

    def __init__(
        self,
        control: Control,
        value: float,
        display: Display,
        moved: Callable[[float], object],
        **look: Any,
    ) -> None:
        self._control, self._told, self._look = control, moved, look
        self._disabled = False
        self._notes = widgets.HTML(layout={"display": "none"})
        self._notes.add_class("ropecalc-control-note")
        self._display, self._quantity = display, value
        self._slider = self._new()
        super().__init__([self._slider, self._notes])
        self._note = ""
        self.note("")

    @property
    def quantity(self) -> float:
        """The value in SI."""
        return self._quantity

    @property
    def slider(self) -> widgets.FloatSlider:
        """The slider that shows it now."""
        return self._slider

    def place(self, value: float, display: Display) -> None:
        """Show ``value`` (SI) in the reader's units; ``moved`` is not called."""
        kind = self._control.kind
        same_unit = display.unit(kind) == self._display.unit(kind)
        self._quantity, self._display = value, display
        if same_unit:
            self._stop = self._scale.stop(display.value(value, kind))
            self._slider.value = self._stop
        else:
            old, self._slider = self._slider, self._new()
            self.children = (self._slider, self._notes)
            old.unobserve_all()
            old.close()
        self.note(self._note)

    def move(self, value: float) -> None:
        """Set the quantity (SI) exactly, as a learner who types it; ``moved`` is called."""
        self.place(value, self._display)
        self._told(value)

    def disable(self, disabled: bool) -> None:
        """Take no moves, or take them again."""
        self._disabled = self._slider.disabled = disabled

    def note(self, text: str) -> None:
        """Say ``text`` under the slider, after the control's own help."""
        self._note = text
        words = " ".join(part for part in (self._control.help, text) if part)
        self._notes.value = _small(words) if words else ""
        self._notes.layout.display = "" if words else "none"

    def _new(self) -> widgets.FloatSlider:
        control, display = self._control, self._display
        self._scale = scale = Scale.of(control, display)
        self._stop = scale.stop(display.value(self._quantity, control.kind))
        unit = display.unit(control.kind).symbol
        made = widgets.FloatSlider(
            min=scale.low,
            max=scale.high,
            step=scale.step,
            value=self._stop,
            readout_format=f".{scale.decimals}f",
            description=f"{control.label} ({unit})" if unit else control.label,
            description_allow_html=False,
            disabled=self._disabled,
            **self._look,
        )
        made.observe(lambda change: self._reported(change["new"]), names="value")
        return made

    def _reported(self, shown: float) -> None:
        shown = round(shown, 9)
        if abs(shown - self._stop) < 1e-6 * self._scale.step:
            return
        self._stop = shown
        self._quantity = self._control.value(shown, self._display)
        self._told(self._quantity)


def _small(words: str) -> str:
    return f'<p style="margin: 0; line-height: 1.35"><small>{escape(words)}</small></p>'
