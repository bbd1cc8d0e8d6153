"""The figure of anchor legs: published ratios, balance, the swing past a leg, the undecided leg."""

import math
from typing import Any

import numpy as np
import pytest

from ropecalc.teaching.figures import ANCHOR_LEGS
from ropecalc.teaching.figures.anchor_legs import (
    LEG,
    AnchorLegs,
    compute,
    summary,
    table,
)
from ropecalc.units import Display

START = ANCHOR_LEGS.start
PULL = 200 * 9.80665


def at(**changes: Any) -> AnchorLegs:
    degrees = {
        key: math.radians(value) if key in ("angle", "swing") else value
        for key, value in changes.items()
    }
    return compute(START | degrees)


def tensions(result: AnchorLegs) -> list[float]:
    return [leg.tension for leg in result.legs]


def residual(result: AnchorLegs) -> float:
    """What is left over when all forces on the knot are added (N)."""
    total = np.array(result.way) * result.pull
    for leg in result.legs:
        away = np.array(leg.anchor) - np.array(result.knot)
        total = total + leg.tension * away / np.hypot(*away)
    return float(np.hypot(*total))


@pytest.mark.parametrize("angle", [20, 60, 90, 120, 150])
@pytest.mark.parametrize("swing", [-40, -15, 0, 9, 30])
def test_the_forces_on_the_knot_balance(angle: float, swing: float) -> None:
    assert residual(at(angle=angle, swing=swing)) < 1e-6 * PULL


def test_three_stretched_legs_balance_where_the_knot_has_settled() -> None:
    """Within the stretch: the figure draws the legs where they were before the pull came on."""
    for error in (-0.05, 0.0, 0.05):
        result = at(third="middle", error=error, swing=8)
        assert residual(result) < 0.06 * PULL
        assert 0 < result.sunk < 0.3


def test_common_ratios() -> None:
    """Common practice, no source: at 120 degrees each of two legs carries the load."""
    assert tensions(at(angle=120)) == pytest.approx([PULL, PULL])
    assert tensions(at(angle=60)) == pytest.approx([PULL / math.sqrt(3)] * 2)


def test_the_leg_away_from_which_the_pull_swings_gains() -> None:
    """An independent calculation made for this project: 0.742 and 0.395 of the pull."""
    left, right = tensions(at(swing=10))
    assert [left / PULL, right / PULL] == pytest.approx([0.742, 0.395], abs=5e-4)
    assert tensions(at(swing=-10)) == pytest.approx([right, left])


@pytest.mark.parametrize(("swing", "side"), [(30, -1), (40, -1), (-35, 1)])
def test_past_a_leg_the_knot_swings_over_below_its_anchor(swing: float, side: int) -> None:
    result = at(swing=swing)
    holds = next(leg for leg in result.legs if leg.tension > 0)
    assert math.copysign(1, holds.anchor[0]) == side
    assert holds.tension == pytest.approx(PULL)
    assert math.dist(holds.anchor, result.knot) == pytest.approx(LEG)
    slack = next(leg for leg in result.legs if leg.number == result.slack)
    assert math.dist(slack.anchor, result.knot) <= LEG + 1e-9
    assert "carries everything" in summary(result, Display())


def test_a_third_leg_in_the_plane_is_a_range_with_one_stretched_answer() -> None:
    """The middle leg of three alike: 1/(1 + 2 cos^3) of the load, to first order in the stretch."""
    result = at(third="middle", stiffness=200_000)
    middle = result.legs[1]
    assert (middle.low, middle.high) == pytest.approx((0.0, PULL), abs=1e-6 * PULL)
    lengths = LEG, LEG * math.cos(math.radians(30))
    # legs of one rope: stiffness EA over length, here the outer ones LEG and the middle shorter
    springs = [1 / lengths[0], 1 / lengths[1]]
    sink = 1 / (springs[1] + 2 * springs[0] * math.cos(math.radians(30)) ** 2)
    assert middle.tension / PULL == pytest.approx(springs[1] * sink, rel=0.02)
    assert "anywhere from 0 kN to 1.96 kN" in summary(result, Display())
    shorter, longer = (at(third="middle", error=e).legs[1].tension for e in (-0.05, 0.05))
    assert shorter > 1.3 * middle.tension and longer < 0.05 * PULL


def test_the_table_says_what_a_leg_may_have_to_carry() -> None:
    rows = table(at(third="middle"), Display())
    assert [row[0] for row in rows[1:]] == ["left leg", "middle leg", "right leg"]
    assert rows[2][3] == "up to 1.96 kN"
    assert {row[3] for row in table(at(), Display())[1:]} == {"the same"}


@pytest.mark.parametrize("error", [-0.05, 0.0, 0.05])
@pytest.mark.parametrize("swing", [0, 10, 25])
def test_what_a_leg_carries_lies_in_what_it_may_have_to_carry(error: float, swing: float) -> None:
    for leg in at(third="middle", error=error, swing=swing, stiffness=20_000).legs:
        assert leg.low <= leg.tension <= leg.high


# --- three legs in space ----------------------------------------------------------------------


def total_in_space(result: AnchorLegs) -> float:
    """What is left over when all forces on the knot are added in three directions (N)."""
    total = PULL * np.array([result.way[0], 0.0, result.way[1]])
    for leg in result.legs:
        away = np.array([leg.anchor[0], leg.behind, leg.anchor[1]])
        assert np.linalg.norm(away) == pytest.approx(LEG)
        total = total + leg.tension * away / LEG
    return float(np.linalg.norm(total))


@pytest.mark.parametrize(("angle", "swing"), [(60, 0), (60, 15), (60, -15), (100, 30), (150, -40)])
def test_three_legs_in_space_balance(angle: float, swing: float) -> None:
    assert total_in_space(at(third="space", angle=angle, swing=swing)) < 1e-6 * PULL


def test_even_legs_in_space_carry_a_third_over_the_cosine_of_their_lean() -> None:
    result = at(third="space", angle=60)
    assert tensions(result) == pytest.approx([PULL / 3 / math.cos(math.radians(30))] * 3)
    assert "each 30° from plumb" in summary(result, Display())
    assert {row[3] for row in table(result, Display())[1:]} == {"the same"}


def test_a_pull_outside_the_three_legs_is_told_in_words() -> None:
    """The edge opposite to a leg is half as far from the middle as the anchors are."""
    steepest = math.degrees(math.atan(math.tan(math.radians(30)) / 2 / math.cos(math.radians(30))))
    assert not at(third="space", swing=steepest - 0.1).outside
    beyond = at(third="space", swing=steepest + 0.1)
    assert beyond.outside
    assert "hangs slack" in summary(beyond, Display())
    assert {row[1] for row in table(beyond, Display())[1:]} == {"no number"}


def test_the_prediction_is_computed() -> None:
    outcome = ANCHOR_LEGS.prediction.outcome(Display())
    assert outcome.right == 2
    assert "29 % more" in outcome.sentence
