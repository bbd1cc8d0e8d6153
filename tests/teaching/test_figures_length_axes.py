"""Axes in the reader's unit: round numbers at the right metres, rewritten when the unit changes."""

from itertools import pairwise

import pytest

from ropecalc.teaching.canvas import Canvas
from ropecalc.teaching.figures.length_axes import LengthAxes, LengthAxis, about, every, wall_axes
from ropecalc.units import Display

METRES, FEET = Display(), Display(length="ft")


def shown(axis) -> dict[float, str]:
    return dict(
        zip(axis.get_ticklocs(), (label.get_text() for label in axis.get_ticklabels()), strict=True)
    )


def test_numbers_follow_the_unit_and_stand_at_their_metres() -> None:
    canvas = Canvas(300, 200)
    axes = canvas.axes(40, 40, 200, 100)
    numbers = LengthAxes(canvas, axes, LengthAxis("out", 45.0, every(20, 50)))
    numbers.follow(METRES)
    assert shown(axes.xaxis) == {0.0: "0", 20.0: "20", 40.0: "40"}
    assert axes.get_xlabel() == "out (m)"
    numbers.follow(FEET)
    assert list(shown(axes.xaxis).values()) == ["0", "50", "100"]
    assert axes.xaxis.get_ticklocs()[1] == pytest.approx(50 * 0.3048)
    assert axes.get_xlabel() == "out (ft)"
    assert axes.get_ylabel() == ""


def test_the_background_is_drawn_anew_only_for_another_unit(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    canvas = Canvas(300, 200)
    numbers = wall_axes(canvas, canvas.axes(40, 40, 200, 100), 30.0, 33.0, 6)
    forgotten: list[None] = []
    monkeypatch.setattr(canvas, "forget_background", lambda: forgotten.append(None))
    for display in (METRES, METRES, FEET, FEET, METRES):
        numbers.follow(display)
    assert len(forgotten) == 3


@pytest.mark.parametrize(("high", "count"), [(33.0, 6), (108.3, 8), (10.0, 3)])
def test_about_so_many_round_numbers_below_the_highest(high: float, count: int) -> None:
    found = list(about(count)(high, "m"))
    steps = {round(b - a, 6) for a, b in pairwise(found)}
    assert found[0] == 0 and found[-1] < high and len(found) <= count + 1
    assert len(steps) == 1
    assert f"{steps.pop():.0e}"[0] in "125"


def test_a_sheet_counts_in_pixels() -> None:
    axes = Canvas(300, 200).sheet(10, 20, 120, 80, "title")
    assert (axes.get_xlim(), axes.get_ylim()) == ((0, 120), (0, 80))
    assert not len(axes.get_xticks()) and axes.get_title(loc="left") == "title"
