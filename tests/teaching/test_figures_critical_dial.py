"""The figure of critical angles: the trade's table, rigs that never get there, the litter."""

import math
from typing import Any

import pytest

from ropecalc.teaching.figures import CRITICAL_DIAL
from ropecalc.teaching.figures.critical_dial import (
    HAULED,
    LEGS,
    REDIRECT,
    SPAN,
    THREE,
    TRACKED,
    CriticalDial,
    compute,
    summary,
    table,
)
from ropecalc.units import Display


def at(multiple: float, depression: float = 0.0) -> CriticalDial:
    return compute({"multiple": multiple, "depression": math.radians(depression)})


def geometry(result: CriticalDial, name: str) -> float | None:
    return next(rig.geometry for rig in result.rigs if rig.name == name)


@pytest.mark.parametrize(
    ("multiple", "name", "expected"),
    [
        (1.0, LEGS, 120.0),
        (2.0, LEGS, 151.0),
        (1.0, THREE, 70.5),
        (2.0, THREE, 80.4),
        (1.0, REDIRECT, 120.0),
        (2.0, REDIRECT, 0.0),
        (1.0, TRACKED, 45.0),
        (2.0, TRACKED, 26.6),
        (2.0, HAULED, 30.0),
    ],
)
def test_angles_of_the_trade(multiple: float, name: str, expected: float) -> None:
    """An independent calculation made for this project; 120° for two legs is common practice."""
    found = geometry(at(multiple), name)
    assert found is not None
    assert math.degrees(found) == pytest.approx(expected, abs=0.06)


@pytest.mark.parametrize(("multiple", "expected"), [(1.0, 28.9), (2.0, 12.9), (2.55, 10.0)])
def test_sags(multiple: float, expected: float) -> None:
    found = geometry(at(multiple), SPAN)
    assert found is not None
    assert 100 * found == pytest.approx(expected, abs=0.06)


@pytest.mark.parametrize(
    ("multiple", "name", "why"),
    [
        (0.35, LEGS, "always carries more"),
        (0.35, SPAN, "always carries more"),
        (3.0, REDIRECT, "never carries so much"),
        (0.9, HAULED, "always carries more"),
    ],
)
def test_a_rig_that_never_gets_there_says_why(multiple: float, name: str, why: str) -> None:
    result = at(multiple, 10.0)
    one = next(rig for rig in result.rigs if rig.name == name)
    assert one.geometry is None and why in one.why
    assert "never" in summary(result, Display())


def test_the_angle_at_the_litter() -> None:
    """135° and half the ground depression for the load itself; 0.395 of it at 120° and 10°."""
    for depression in (0.0, 10.0, 20.0):
        angle = at(1.0, depression).litter_angle
        assert angle is not None
        assert math.degrees(angle) == pytest.approx(135 + depression / 2)
    assert at(1.0, 10.0).at_120 == pytest.approx(0.395, abs=5e-4)
    assert "carries 0.395 times the load" in summary(at(1.0, 10.0), Display())


def test_the_table_has_every_rig_at_one_and_two() -> None:
    rows: Any = table(at(1.5, 10.0), Display())
    assert rows[0][2:] == ("1.5 times", "1 times", "2 times")
    assert rows[1][3:] == ("120°", "151°")
    assert len(rows) == 7
    once: Any = table(at(1.0, 10.0), Display())
    assert once[0][2:] == ("1 times", "2 times")
    assert once[1][2:] == ("120°", "151°")


def test_the_prediction_is_computed() -> None:
    outcome = CRITICAL_DIAL.prediction.outcome(Display())
    assert outcome.right == 0 and "0.395" in outcome.sentence
