"""Two-leg anchors against published values and against legs drawn in coordinates."""

import math

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics import anchors
from ropecalc.mechanics.anchors import (
    critical_leg_angle,
    first_leg_tension,
    second_leg_tension,
    two_leg_anchor,
    two_leg_ratio,
)

# --- published values ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("included", "leg"), [(0, 0.5), (90, 0.7), (120, 1.0), (170, 5.7), (179, 57.2)]
)
def test_rescue_standard(included: float, leg: float) -> None:
    # NFPA 1670, annex A, as quoted in a rescue manual: 1 kN on two legs; printed to one decimal
    # or truncated
    result = two_leg_anchor(load=1000.0, leg_angle=math.radians(included)) / 1000
    assert result == pytest.approx(leg, rel=0.003 if leg > 10 else 0.013)


@pytest.mark.parametrize(
    ("from_horizontal", "factor"),
    [
        (90, 1.000), (85, 1.004), (80, 1.015), (75, 1.035), (70, 1.064), (65, 1.104), (60, 1.155),
        (55, 1.221), (50, 1.305), (45, 1.414), (40, 1.555), (35, 1.742), (30, 2.000),
    ],
)  # fmt: skip
def test_sling_chart(from_horizontal: float, factor: float) -> None:
    # lifting-equipment catalogue, "Effect of sling angle - tension factor chart", p. 93
    included = math.radians(180 - 2 * from_horizontal)
    assert 2 * two_leg_ratio(leg_angle=included) == pytest.approx(factor, abs=0.0015)


@pytest.mark.parametrize(
    ("from_horizontal", "pounds"), [(90, 5000), (60, 5775), (45, 7070), (30, 10000)]
)
def test_sling_loads(from_horizontal: float, pounds: float) -> None:
    # the same catalogue page: 10 000 lb on two legs
    leg = two_leg_anchor(load=10_000.0, leg_angle=math.radians(180 - 2 * from_horizontal))
    assert leg == pytest.approx(pounds, rel=5e-4)


@pytest.mark.parametrize(
    ("single", "at_60", "at_45", "at_30"),
    [(7100, 12300, 10000, 7100), (12000, 20800, 17000, 12000), (47700, 82600, 67400, 47700)],
)
def test_double_chain_slings(single: float, at_60: float, at_45: float, at_30: float) -> None:
    # a rating table for double-leg alloy chain slings: load at which each leg carries its rating
    for angle, rated in ((60, at_60), (45, at_45), (30, at_30)):
        ratio = two_leg_ratio(leg_angle=math.radians(180 - 2 * angle))
        assert single / ratio == pytest.approx(rated, rel=0.005)


@pytest.mark.parametrize(
    ("included", "factor"), [(0, 1.00), (30, 1.04), (60, 1.16), (90, 1.41), (120, 2.00)]
)
def test_mode_factors(included: float, factor: float) -> None:
    # a crane operator's reference with the lifting association's mode factors
    assert 2 * two_leg_ratio(leg_angle=math.radians(included)) == pytest.approx(factor, abs=0.007)


@pytest.mark.parametrize(
    ("included", "kilograms"), [(30, 1900), (60, 1730), (90, 1410), (120, 1000)]
)
def test_basket_ratings(included: float, kilograms: float) -> None:
    # data sheet to AS 1353 / AS 4497: 1000 kg sling in a basket; the first is rounded down
    assert 1000 / two_leg_ratio(leg_angle=math.radians(included)) == pytest.approx(
        kilograms, rel=0.017 if included == 30 else 0.004
    )


@pytest.mark.parametrize(
    ("kilograms", "below", "newtons", "tolerance"),
    [
        (70.0, 5.0, 3.94e3, 5.0),  # OpenStax, University Physics 1, section 5.6, tightrope walker
        (0.026, 5.0, 1.5, 0.05),  # the same section's exercise: a bird at mid-span
        (0.026, 0.5, 15.0, 0.5),
        (8.00e-5, 12.0, 1.89e-3, 5e-6),  # OpenStax, College Physics 2e: a spider on its thread
    ],
)
def test_a_load_at_the_middle_of_a_taut_line(
    kilograms: float, below: float, newtons: float, tolerance: float
) -> None:
    # g = 9.80 in these books; the legs stand 180° less twice the sag angle apart
    angle = math.radians(180 - 2 * below)
    assert two_leg_anchor(load=kilograms * 9.80, leg_angle=angle) == pytest.approx(
        newtons, abs=tolerance
    )


def test_a_rope_pushed_aside_in_the_middle() -> None:
    # University Physics 1, section 5.6, check problem: 3.0 m rope, 0.25 m aside, 200.0 N; 6.0e2 N
    angle = 2 * math.acos(0.25 / 1.5)
    assert two_leg_anchor(load=200.0, leg_angle=angle) == pytest.approx(600.0, rel=1e-9)


@pytest.mark.parametrize(("sag", "ratio"), [(0.10, 2.550), (0.05, 5.025)])
def test_sag_of_a_level_span(sag: float, ratio: float) -> None:
    # an independent calculation made for this project: mid-span sag as a share of the span
    assert two_leg_ratio(leg_angle=2 * math.atan(0.5 / sag)) == pytest.approx(ratio, abs=5e-4)


def test_thirty_degrees_off_plumb() -> None:
    # University Physics 1, section 6.1, exercise: 30.0 kg, two ropes 30.0° off plumb; 170 N each
    assert two_leg_anchor(load=30 * 9.80, leg_angle=math.radians(60)) == pytest.approx(170, abs=0.5)


@pytest.mark.parametrize(
    ("load", "one", "two", "first", "second", "tolerance"),
    [
        # University Physics 1, example 6.1: 15.0 kg, wires 30° and 45° above horizontal, g = 9.80
        (15 * 9.80, 60, 45, 108.0, 132.0, 0.5),
        # an independent calculation made for this project
        (2.0, 20, 45, 1.5604, 0.7548, 5e-5),
    ],
)
def test_two_unequal_legs(
    load: float, one: float, two: float, first: float, second: float, tolerance: float
) -> None:
    angles = {"first_leg_angle": math.radians(one), "second_leg_angle": math.radians(two)}
    assert first_leg_tension(load=load, **angles) == pytest.approx(first, abs=tolerance)
    assert second_leg_tension(load=load, **angles) == pytest.approx(second, abs=tolerance)


def test_strings_that_meet_at_a_right_angle() -> None:
    # University Physics 1, example 12.2: strings of 5.0 and 10.0 cm, breaking at 2.80 N, pan 42.0 g
    short, long = math.atan2(5.0, 10.0), math.atan2(10.0, 5.0)  # from plumb, crossed over
    angles = {"first_leg_angle": short, "second_leg_angle": long}
    one, two = first_leg_tension(load=1.0, **angles), second_leg_tension(load=1.0, **angles)
    assert one == pytest.approx(2 * two, rel=1e-12)
    assert 2.80 / one / 9.80 - 0.042 == pytest.approx(0.277, abs=5e-4)


@pytest.mark.parametrize(("ratio", "angle"), [(1.0, 120.0), (2.0, 151.0), (0.7, 88.8), (0.5, 0.0)])
def test_critical_angles(ratio: float, angle: float) -> None:
    # 120° for k = 1 is published (NFPA 1670, annex A); the others from an independent calculation
    # made for this project
    assert math.degrees(critical_leg_angle(load_ratio=ratio)) == pytest.approx(angle, abs=0.06)


# --- coordinates, limits, symmetry -----------------------------------------------------------


def test_legs_in_coordinates_balance_the_load() -> None:
    """Two anchor points and a knot: unit vectors to the points, times the tensions, carry W."""
    rng = np.random.default_rng(41)
    left = np.stack([-rng.uniform(0.05, 8, 3000), rng.uniform(0.5, 9, 3000)])
    right = np.stack([rng.uniform(0.05, 8, 3000), rng.uniform(0.5, 9, 3000)])
    angles = {
        "first_leg_angle": np.arctan2(-left[0], left[1]),
        "second_leg_angle": np.arctan2(right[0], right[1]),
    }
    load = rng.uniform(500, 5000, 3000)
    total = first_leg_tension(load=load, **angles) * left / np.hypot(*left)
    total = total + second_leg_tension(load=load, **angles) * right / np.hypot(*right)
    np.testing.assert_allclose(total[0] / load, 0.0, atol=1e-12)
    np.testing.assert_allclose(total[1] / load, 1.0, rtol=1e-12)


def test_equal_legs_are_the_unequal_ones_with_equal_angles() -> None:
    angle = np.linspace(0.01, 1.5, 500)
    equal = two_leg_anchor(load=1700.0, leg_angle=2 * angle)
    for leg in (first_leg_tension, second_leg_tension):
        both = leg(load=1700.0, first_leg_angle=angle, second_leg_angle=angle)
        np.testing.assert_allclose(both, equal, rtol=1e-12)


def test_legs_change_names_with_their_angles() -> None:
    rng = np.random.default_rng(42)
    one, two = rng.uniform(0.05, 1.5, (2, 1000))
    first = first_leg_tension(load=900.0, first_leg_angle=one, second_leg_angle=two)
    second = second_leg_tension(load=900.0, first_leg_angle=two, second_leg_angle=one)
    np.testing.assert_allclose(first, second, rtol=1e-13)
    steeper_carries_more = (first > second_leg_tension(
        load=900.0, first_leg_angle=one, second_leg_angle=two
    )) == (one < two)  # fmt: skip
    assert steeper_carries_more.all()


def test_a_plumb_leg_beside_a_slanting_one_carries_everything() -> None:
    tiny = 1e-9
    angles = {"first_leg_angle": tiny, "second_leg_angle": 0.7}
    assert first_leg_tension(load=1000.0, **angles) == pytest.approx(1000.0, rel=1e-8)
    assert second_leg_tension(load=1000.0, **angles) == pytest.approx(0.0, abs=1e-5)


def test_wider_legs_always_carry_more() -> None:
    tension = two_leg_anchor(load=1000.0, leg_angle=np.linspace(0, 3.1, 400))
    assert (np.diff(tension) > 0).all()
    assert tension[0] == 500.0


def test_the_critical_angle_turns_the_ratio_round() -> None:
    ratio = np.linspace(0.5, 40, 2000)
    np.testing.assert_allclose(
        two_leg_ratio(leg_angle=critical_leg_angle(load_ratio=ratio)), ratio, rtol=1e-9
    )


@pytest.mark.parametrize("angle", [math.pi, 3.5, -0.1])
def test_legs_in_one_line_hold_nothing(angle: float) -> None:
    with pytest.raises(DomainError, match="at least 0° and less than 180°"):
        two_leg_anchor(load=1000.0, leg_angle=angle)


def test_half_the_load_is_the_least_a_leg_can_carry() -> None:
    with pytest.raises(DomainError, match=r"at least 0\.500"):
        critical_leg_angle(load_ratio=0.49)


# --- the pull off the bisector ---------------------------------------------------------------


def test_a_swing_of_ten_degrees_costs_more_than_a_quarter() -> None:
    # an independent calculation made for this project: legs 60° apart; 0.74 W instead of 0.58 W
    swung = anchors.gaining_leg_tension(
        load=1.0, leg_angle=math.radians(60), pull_swing=math.radians(10)
    )
    even = two_leg_anchor(load=1.0, leg_angle=math.radians(60))
    assert swung == pytest.approx(0.74, abs=0.005) and even == pytest.approx(0.58, abs=0.005)
    assert swung / even - 1 == pytest.approx(0.29, abs=0.005)


def test_a_swinging_pull_in_coordinates() -> None:
    """Knot at the origin, anchors up left and up right; the pull swings to the left."""
    rng = np.random.default_rng(61)
    angle = rng.uniform(0.1, 3.0, 2000)
    swing = rng.uniform(0, 1, 2000) * np.minimum(angle / 2, 1.5)
    load = rng.uniform(500, 5000, 2000)
    asked = {"load": load, "leg_angle": angle, "pull_swing": swing}
    right = np.exp(1j * (math.pi / 2 - angle / 2))  # the pull to the left lines up with this leg
    left = np.exp(1j * (math.pi / 2 + angle / 2))
    pull = load * np.exp(1j * (-math.pi / 2 - swing))
    total = (
        anchors.gaining_leg_tension(**asked) * right
        + anchors.losing_leg_tension(**asked) * left
        + pull
    )
    np.testing.assert_allclose(np.abs(total) / load, 0.0, atol=1e-10)


def test_at_half_the_angle_one_leg_carries_all() -> None:
    asked = {"load": 900.0, "leg_angle": math.radians(60), "pull_swing": math.radians(30)}
    assert anchors.gaining_leg_tension(**asked) == pytest.approx(900.0)
    assert anchors.losing_leg_tension(**asked) == pytest.approx(0.0, abs=1e-9)
    for leg in (anchors.gaining_leg_tension, anchors.losing_leg_tension):
        with pytest.raises(DomainError, match="must stay between the two legs"):
            leg(load=900.0, leg_angle=math.radians(60), pull_swing=math.radians(30.1))
        with pytest.raises(DomainError, match="legs must stand apart"):
            leg(load=900.0, leg_angle=0.0, pull_swing=0.0)


def test_without_a_swing_the_legs_are_equal() -> None:
    for leg in (anchors.gaining_leg_tension, anchors.losing_leg_tension):
        assert leg(load=900.0, leg_angle=1.3, pull_swing=0.0) == pytest.approx(
            two_leg_anchor(load=900.0, leg_angle=1.3)
        )


# --- three legs ------------------------------------------------------------------------------


@pytest.mark.parametrize(("ratio", "degrees"), [(1.0, 70.5288), (2.0, 80.4059), (1 / 3, 0.0)])
def test_critical_angle_of_three_legs(ratio: float, degrees: float) -> None:
    # an independent calculation made for this project
    angle = anchors.critical_three_leg_angle(load_ratio=ratio)
    assert math.degrees(angle) == pytest.approx(degrees, abs=5e-5)
    assert anchors.three_leg_anchor(load=1.0, leg_plumb_angle=angle) == pytest.approx(ratio)


def test_between_three_critical_legs_there_are_109_degrees() -> None:
    # an independent calculation made for this project; the angle between two of three even legs
    phi = anchors.critical_three_leg_angle(load_ratio=1.0)
    turn = np.radians([0, 120])
    one, two = (
        np.array([np.sin(phi) * np.cos(t), np.sin(phi) * np.sin(t), np.cos(phi)]) for t in turn
    )
    assert math.degrees(math.acos(one @ two)) == pytest.approx(109.4712, abs=5e-5)


def test_fewer_than_a_third_no_leg_can_carry() -> None:
    with pytest.raises(DomainError, match=r"at least 0\.333"):
        anchors.critical_three_leg_angle(load_ratio=0.3)


def test_two_back_and_one_front_in_coordinates() -> None:
    rng = np.random.default_rng(62)
    front_angle, back_angle = rng.uniform(0.02, 1.5, (2, 2000))
    spread, load = rng.uniform(0, 1.5, 2000), rng.uniform(500, 5000, 2000)
    asked = {
        "load": load,
        "front_leg_angle": front_angle,
        "back_leg_angle": back_angle,
        "half_spread": spread,
    }
    front = anchors.front_leg_tension(**asked)
    back = anchors.back_leg_tension(**asked)
    total = front * np.array([np.sin(front_angle), 0 * load, np.cos(front_angle)])
    for side in (1, -1):
        total = total + back * np.array(
            [
                -np.sin(back_angle) * np.cos(spread),
                side * np.sin(back_angle) * np.sin(spread),
                np.cos(back_angle),
            ]
        )
    np.testing.assert_allclose(
        total / load, np.array([0 * load, 0 * load, 1 + 0 * load]), atol=1e-12
    )


def test_back_legs_side_by_side_are_one_leg() -> None:
    asked = {"load": 2000.0, "front_leg_angle": 0.4, "back_leg_angle": 0.7, "half_spread": 0.0}
    angles = {"first_leg_angle": 0.4, "second_leg_angle": 0.7}
    assert anchors.front_leg_tension(**asked) == pytest.approx(
        first_leg_tension(load=2000.0, **angles)
    )
    assert 2 * anchors.back_leg_tension(**asked) == pytest.approx(
        second_leg_tension(load=2000.0, **angles)
    )


# --- three legs in one plane, and legs by their lengths --------------------------------------


def test_a_row_at_sixty_degrees() -> None:
    # an independent calculation made for this project: 0.80 and 0.20 W, not a third each
    asked = {"load": 1.0, "outer_leg_angle": math.radians(60)}
    assert anchors.middle_leg_tension(**asked) == pytest.approx(0.80)
    assert anchors.outer_leg_tension(**asked) == pytest.approx(0.20)


def test_a_row_balances_and_bundled_legs_share_evenly() -> None:
    angle = np.linspace(0, 1.5, 200)
    middle = anchors.middle_leg_tension(load=2000.0, outer_leg_angle=angle)
    outer = anchors.outer_leg_tension(load=2000.0, outer_leg_angle=angle)
    np.testing.assert_allclose(middle + 2 * outer * np.cos(angle), 2000.0, rtol=1e-12)
    assert middle[0] == pytest.approx(2000 / 3) and outer[0] == pytest.approx(2000 / 3)
    assert (np.diff(middle) > 0).all() and (np.diff(outer) < 0).all()


def test_legs_by_their_lengths_are_legs_by_their_angle() -> None:
    angle = np.linspace(0, 3.0, 100)
    spacing = 2 * 1.7 * np.sin(angle / 2)
    tension = anchors.bridle_leg_tension(load=900.0, leg_length=1.7, anchor_spacing=spacing)
    np.testing.assert_allclose(tension, two_leg_anchor(load=900.0, leg_angle=angle), rtol=1e-9)
    with pytest.raises(DomainError, match="together must be longer than the anchors are apart"):
        anchors.bridle_leg_tension(load=900.0, leg_length=1.0, anchor_spacing=2.0)


def test_legs_that_share_say_so() -> None:
    for leg in (anchors.middle_leg_tension, anchors.outer_leg_tension):
        assert "whole range" in leg.cautions[0]


@pytest.mark.parametrize(("before", "after"), [(40, 120), (90, 150), (100, 165), (120, 60)])
def test_legs_pulled_apart_by_two_balances(before: float, after: float) -> None:
    def leg(angle: float) -> float:
        half = math.radians(angle) / 2
        legs = np.array([[-math.sin(half), math.sin(half)], [math.cos(half), math.cos(half)]])
        return float(np.linalg.solve(legs, [0.0, 1000.0])[0])

    found = anchors.leg_growth(angle_before=math.radians(before), angle_after=math.radians(after))
    assert found == pytest.approx(leg(after) / leg(before))


def test_legs_that_all_lie_level_are_refused_wherever_they_point() -> None:
    """Back legs that lie level and straight aside give the front leg nothing to pull against."""
    level = math.pi / 2 - 1e-4
    asked = {"load": 2000.0, "front_leg_angle": 0.8, "back_leg_angle": level, "half_spread": level}
    for derivation in (anchors.front_leg_tension, anchors.back_leg_tension):
        with pytest.raises(DomainError, match="must not all lie level"):
            derivation(**asked)
