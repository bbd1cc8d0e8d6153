"""Something lets go: places and forces against calculations of their own."""

from math import hypot, sqrt
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq

from ropecalc.teaching.figures import FAILURES
from ropecalc.teaching.figures.failures import (
    CREEP,
    HAUL_LOST,
    INDEPENDENT,
    ROPE,
    SERIES,
    SLIP,
    TIED,
    Failure,
)
from ropecalc.units import STANDARD_GRAVITY, Display

START = FAILURES.start


def at(**values: Any) -> Failure:
    result: Failure = FAILURES.compute(START | values)
    return result


def words(**values: Any) -> str:
    return FAILURES.summary(at(**values), Display())


def inward(slack: float, height: float, hub_x: float = 40.0) -> float:
    """The litter's way in on its arc until track line and hub are so much further apart."""
    top, start = np.array([0.3, 32.0]), np.array([2.5, height])
    leg = hypot(*(start - top))
    first = leg + hypot(*(np.array([40.0, 0.5]) - start)) + slack

    def too_short(x: float) -> float:
        z = top[1] - sqrt(leg**2 - (x - top[0]) ** 2)
        return leg + hypot(hub_x - x, 0.5 - z) - first

    return 2.5 - float(brentq(too_short, 0.3, 2.5))


@pytest.mark.parametrize("height", [6.0, 15.0, 27.0, 28.0])
def test_a_slip(height: float) -> None:
    found = at(height=height).rigid
    assert found is not None
    assert found.inward == pytest.approx(inward(0.2, height), abs=1e-6)


def test_a_hub_that_creeps() -> None:
    found = at(event=CREEP, moved=0.4).rigid
    assert found is not None
    assert found.inward == pytest.approx(inward(0.0, 27.0, hub_x=39.6), abs=1e-6)


def test_the_same_slip_goes_further_up_high() -> None:
    low, high = at(height=6.0).rigid, at(height=28.0).rigid
    assert low is not None and high is not None
    assert high.inward > 1.5 * low.inward


def test_one_of_two_lines_with_a_tensioner_each() -> None:
    """An independent energy minimisation: in by 0.46 m, the survivor from 0.77 to 1.04 kN."""
    found = at(event=INDEPENDENT)
    assert found.elastic is not None
    assert found.elastic.inward == pytest.approx(0.46, abs=0.01)
    line = found.carried[0]
    assert line.after is not None
    assert line.before == pytest.approx(767, rel=0.01)
    assert (line.after.low, line.after.high) == pytest.approx((1040, 1530), rel=0.01)


def test_lines_in_series_lose_everything_and_tails_keep_some() -> None:
    series, tied = at(event=SERIES), at(event=TIED)
    assert series.slack == pytest.approx(3.0)
    assert tied.slack == pytest.approx(0.2)
    assert series.elastic is not None and tied.elastic is not None
    assert series.elastic.inward == pytest.approx(2.2)
    assert tied.elastic.inward == pytest.approx(0.59, abs=0.015)


def test_a_free_swing() -> None:
    found = at(event=ROPE, rock=0.0)
    leg = hypot(2.2, 5.0)
    assert found.impact is not None
    assert found.impact.fall == pytest.approx(leg - 5.0)
    assert found.impact.speed == pytest.approx(sqrt(2 * STANDARD_GRAVITY * (leg - 5.0)))
    assert found.impact.peak == pytest.approx(found.load * (3 - 2 * 5.0 / leg))


def test_the_belay_takes_the_haul_lines_place() -> None:
    found = at(event=HAUL_LOST)
    assert found.haul is not None
    spring = 50_000 / hypot(2.2, 5.0)

    def left(longer: float) -> float:  # of the energy of a straight fall
        return found.load * (0.5 + longer) - spring * longer**2 / 2

    assert found.haul.peak == pytest.approx(spring * float(brentq(left, 0.01, 5.0)))
    x, z = found.turned
    assert hypot(x - 0.3, 32.0 - z) == pytest.approx(hypot(2.2, 5.0) + 0.5)
    assert x > 2.5


def test_rock_in_the_way_is_said() -> None:
    assert "does not get to the rock" in words(event=SLIP)
    assert "can meet the rock" in words(event=SERIES)
    assert "stands against the rock" in words(offset=1.5, rock=2.0)
    assert "no tension" in words(height=30.0, offset=4.0)


@pytest.mark.parametrize("event", [SERIES, TIED])
@pytest.mark.parametrize("rock", [0.0, 1.0, 1.4, 2.0])
@pytest.mark.parametrize("height", [6.0, 20.0, 27.0])
def test_the_haul_lines_peak_counts_no_rock_and_is_no_less_than_what_follows(
    event: str, rock: float, height: float
) -> None:
    """Energy of the free swing to plumb: the weight times 3 - 2 cos of the lean."""
    result = at(event=event, rock=rock, height=height)
    haul = next(one for one in result.carried if one.name == "haul line")
    lean = (result.place.x - 0.3) / hypot(result.place.x - 0.3, 32.0 - height)
    free = result.load * (3 - 2 * sqrt(1 - lean**2))
    assert haul.peak == pytest.approx(max(free, haul.after.high))
    assert haul.peak >= haul.after.high
