"""Two-leg anchors against published values and against legs drawn in coordinates."""

import math

import numpy as np
import pytest

from ropecalc.derivation import DomainError
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
    with pytest.raises(DomainError, match=r"leg_angle .* at least 0° and less than 180°"):
        two_leg_anchor(load=1000.0, leg_angle=angle)


def test_half_the_load_is_the_least_a_leg_can_carry() -> None:
    with pytest.raises(DomainError, match=r"load_ratio .* at least 0\.500"):
        critical_leg_angle(load_ratio=0.49)
