"""A slider's stops are round numbers in every unit, and its ends hide nothing of the range."""

import ipywidgets as widgets
import pytest

from ropecalc.teaching.figures import FIGURES
from ropecalc.teaching.sliders import Control, place_slider
from ropecalc.units import Display, Kind

DISPLAYS = (Display(), Display(force="lbf", length="ft", mass="lb"), Display(force="kgf"))
CONTROLS = [
    *(c for figure in FIGURES.values() for c in figure.controls if isinstance(c, Control)),
    Control("trial", "Trial", Kind.ANGLE, 0.01, 1.55, 0.005, 0.7),
    Control("quarter", "Quarter", Kind.LENGTH, 0.3, 31, 0.25, 24),
]


def placed(control: Control, display: Display, value: float | None = None) -> widgets.FloatSlider:
    slider = widgets.FloatSlider()
    place_slider(slider, control, control.default if value is None else value, display)
    return slider


@pytest.mark.parametrize("display", DISPLAYS, ids=lambda d: d.force)
@pytest.mark.parametrize("control", CONTROLS, ids=lambda c: c.key)
def test_stops_are_round_and_cover_the_range(control: Control, display: Display) -> None:
    slider = placed(control, display)
    low, high = (display.value(end, control.kind) for end in (control.low, control.high))
    assert low - slider.step < slider.min <= low + 1e-9
    assert high - 1e-9 <= slider.max < high + slider.step
    for stop in (slider.min, slider.max, slider.min + slider.step):
        assert stop / slider.step == pytest.approx(round(stop / slider.step), abs=1e-6)
        assert float(f"{stop:{slider.readout_format}}") == pytest.approx(stop, abs=1e-9)


@pytest.mark.parametrize("display", DISPLAYS, ids=lambda d: d.force)
@pytest.mark.parametrize("control", CONTROLS, ids=lambda c: c.key)
def test_what_a_slider_says_stays_in_the_range(control: Control, display: Display) -> None:
    slider = placed(control, display)
    assert control.value(slider.min, display) == pytest.approx(control.low)
    assert control.value(slider.max, display) == pytest.approx(control.high)
    for shown in (slider.min, slider.max):
        assert control.low <= control.value(shown, display) <= control.high


def test_the_value_does_not_move_with_the_unit() -> None:
    control = CONTROLS[-1]
    slider = placed(control, DISPLAYS[1], 3.3)
    assert slider.value == pytest.approx(3.3 / 0.3048)
    assert slider.description == "Quarter (ft)"


def test_a_quarter_is_shown_in_full() -> None:
    assert placed(CONTROLS[-1], Display()).readout_format == ".2f"
