"""A slider's stops are round numbers in every unit, and its ends hide nothing of the range."""

import ipywidgets as widgets
import pytest

from ropecalc.teaching.figures import FIGURES
from ropecalc.teaching.sliders import Control, QuantitySlider
from ropecalc.units import Display, Kind

DISPLAYS = (Display(), Display(force="lbf", length="ft", mass="lb"), Display(force="kgf"))
CONTROLS = [
    *(c for figure in FIGURES.values() for c in figure.controls if isinstance(c, Control)),
    Control("trial", "Trial", Kind.ANGLE, 0.01, 1.55, 0.005, 0.7),
    Control("quarter", "Quarter", Kind.LENGTH, 0.3, 31, 0.25, 24),
]


def placed(control: Control, display: Display, value: float | None = None) -> widgets.FloatSlider:
    start = control.default if value is None else value
    return QuantitySlider(control, start, display, lambda _: None).slider


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


def test_a_slider_shows_its_nearest_stop_and_names_the_unit() -> None:
    slider = placed(CONTROLS[-1], DISPLAYS[1], 3.3)
    assert slider.value == 10.8
    assert slider.description == "Quarter (ft)"


def test_a_quarter_is_shown_in_full() -> None:
    assert placed(CONTROLS[-1], Display()).readout_format == ".2f"


@pytest.mark.parametrize("display", DISPLAYS, ids=lambda d: d.force)
@pytest.mark.parametrize("control", CONTROLS, ids=lambda c: c.key)
def test_the_default_is_shown_to_three_figures_and_without_noise(
    control: Control, display: Display
) -> None:
    slider = placed(control, display)
    exact = display.value(control.default, control.kind)
    assert slider.value == round(slider.value, 9)
    finest = {"ft": 0.1, "lb": 1.0, "lbf": 1.0, "kgf": 1.0}.get(display.unit(control.kind).symbol)
    if finest is None:
        finest = 0.1 if control.kind is Kind.ANGLE else 0.01
    assert abs(slider.value - exact) <= max(0.006 * abs(exact), 0.51 * finest)


def test_all_lengths_in_one_unit_have_the_same_decimals() -> None:
    """Those in centimetres apart: they need a digit more."""
    lengths = [c for c in CONTROLS if c.kind is Kind.LENGTH and c.step >= 0.05]
    for display in DISPLAYS:
        assert len({placed(c, display).readout_format for c in lengths}) == 1


def test_other_units_bring_a_new_slider_and_move_nothing() -> None:
    control, told = CONTROLS[-1], list[float]()
    made = QuantitySlider(control, 3.3, DISPLAYS[0], told.append)
    seen = [made.slider]
    for display in (DISPLAYS[1], DISPLAYS[0], DISPLAYS[1]):
        made.place(made.quantity, display)
        seen.append(made.slider)
        assert made.children[0] is made.slider
        assert made.quantity == 3.3
    assert len(set(map(id, seen))) == 4
    assert told == []


def test_the_browsers_report_of_a_stop_moves_nothing_but_a_key_press_does() -> None:
    told = list[float]()
    made = QuantitySlider(CONTROLS[-1], 3.3, DISPLAYS[1], told.append)
    made.slider.value = 10.800000000000001
    assert made.quantity == 3.3
    assert told == []
    made.slider.value = 10.9
    assert made.quantity == pytest.approx(10.9 * 0.3048)
    assert told == [made.quantity]


def test_an_old_sliders_late_report_is_not_heard() -> None:
    told = list[float]()
    made = QuantitySlider(CONTROLS[-1], 3.3, DISPLAYS[0], told.append)
    old = made.slider
    made.place(3.3, DISPLAYS[1])
    old.value = 31.0
    assert made.quantity == 3.3
    assert told == []


def test_help_and_note_stand_under_the_slider() -> None:
    control = Control("a", "A", Kind.RATIO, 0.0, 4.0, 1.0, 1.0, "What it is.")
    made = QuantitySlider(control, 1.0, Display(), lambda _: None)
    made.note("Not <now>.")
    assert "What it is. Not &lt;now&gt;." in made.children[1].value
    made.disable(True)
    assert made.slider.disabled
