"""Friction at the litter's pulley against vectors, virtual work and independent values."""

import math

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics import guiding
from ropecalc.mechanics.friction import Direction
from ropecalc.mechanics.litter_pulley import (
    haul_difference,
    haul_tension_with_friction,
    litter_pulley,
    sticking_leg_ratio,
    track_tension_with_friction,
)
from ropecalc.units import Display
from tests.mechanics.cases import CASE_LOAD

CASE = {
    "load": CASE_LOAD,
    "haul_elevation": math.atan2(5.0, 2.2),
    "ground_depression": math.atan2(26.5, 37.5),
}


def random_case(seed: int, count: int = 2000):
    rng = np.random.default_rng(seed)
    return {
        "load": rng.uniform(600, 3200, count),
        "haul_elevation": rng.uniform(0.8, 1.5, count),
        "ground_depression": rng.uniform(-0.3, 0.65, count),
    }


def test_the_worked_case_both_ways() -> None:
    # an independent calculation made for this project: ratio 0.9 and its reciprocal
    up = haul_tension_with_friction(**CASE, leg_ratio=0.9)
    down = haul_tension_with_friction(**CASE, leg_ratio=1 / 0.9)
    assert (up / 1000, down / 1000) == pytest.approx((1.730, 1.406), abs=6e-4)
    track = track_tension_with_friction(**CASE)
    assert track / 1000 == pytest.approx(1.534, abs=5e-4)
    assert up - down == pytest.approx(track * (1 / 0.9 - 0.9))


def test_legs_with_friction_balance_as_vectors() -> None:
    case = random_case(81)
    ratio = np.random.default_rng(82).uniform(0.6, 1.05, 2000)
    haul = np.exp(1j * (np.pi - case["haul_elevation"]))
    ground = np.exp(-1j * case["ground_depression"])
    tension = haul_tension_with_friction(**case, leg_ratio=ratio)
    track = track_tension_with_friction(**case)
    total = tension * haul + ratio * track * haul + track * ground - 1j * case["load"]
    np.testing.assert_allclose(np.abs(total) / case["load"], 0.0, atol=1e-12)


def test_without_friction_it_is_the_free_pulley() -> None:
    case = random_case(83)
    np.testing.assert_allclose(
        haul_tension_with_friction(**case, leg_ratio=1.0),
        guiding.haul_tension_with_track(**case),
        rtol=1e-9,
        atol=1e-6,
    )
    np.testing.assert_allclose(
        track_tension_with_friction(**case), guiding.track_tension(**case), rtol=1e-12
    )


def test_where_the_litter_sticks_nothing_is_left_for_the_haul_line() -> None:
    angles = {k: v for k, v in CASE.items() if k != "load"}
    ratio = sticking_leg_ratio(**angles)
    assert haul_tension_with_friction(**CASE, leg_ratio=ratio * (1 - 1e-12)) == pytest.approx(
        0, abs=1e-6
    )
    with pytest.raises(DomainError, match="let the litter stick on the track lines"):
        haul_tension_with_friction(**CASE, leg_ratio=ratio * 1.001)
    # going down the constant ratio is 1/e: stuck when cos a is at least e cos b
    assert 1 / ratio == pytest.approx(
        math.cos(CASE["haul_elevation"]) / math.cos(CASE["ground_depression"])
    )


def test_directions() -> None:
    up = litter_pulley("hauling", **CASE, efficiency=0.9)
    down = litter_pulley("lowering", **CASE, efficiency=0.9)
    held = litter_pulley("holding", **CASE, efficiency=0.9)
    free = guiding.haul_tension_with_track(**CASE)
    assert up.leg_ratio.low == 0.9 and down.leg_ratio.high == pytest.approx(1 / 0.9)
    # an independent calculation made for this project: at a turn of 30° and an efficiency of 0.90
    # at a half-turn, a pulley that loses at its axle keeps 0.973 (31.0° here)
    assert up.leg_ratio.high == pytest.approx(0.972, abs=6e-4)
    assert down.leg_ratio.low == pytest.approx(1 / up.leg_ratio.high)
    assert up.haul_tension.high / 1000 == pytest.approx(1.730, abs=6e-4)
    assert down.haul_tension.low / 1000 == pytest.approx(1.406, abs=6e-4)
    assert down.haul_tension.high < free < up.haul_tension.low
    for ratio, haul in (
        (up.leg_ratio.high, up.haul_tension.low),
        (down.leg_ratio.low, down.haul_tension.high),
    ):
        assert haul_tension_with_friction(**CASE, leg_ratio=ratio) == pytest.approx(haul)
    assert (held.haul_tension.low, held.haul_tension.high) == (
        down.haul_tension.low,
        up.haul_tension.high,
    )
    assert (held.leg_ratio.low, held.leg_ratio.high) == (up.leg_ratio.low, down.leg_ratio.high)
    for found in (up, down, held):
        assert found.track_tension == pytest.approx(guiding.track_tension(**CASE))
        assert found.turn == pytest.approx(math.radians(31.0), abs=1e-3)
        assert not found.may_stick


def test_the_ratio_by_the_pull_on_the_axle() -> None:
    """The tension lost is a fixed share of the vector sum, the share fixed by the half-turn."""
    for e in (0.6, 0.8, 0.95):
        found = litter_pulley("hauling", **CASE, efficiency=e)
        ratio, share = found.leg_ratio.high, (1 - e) / (1 + e)
        axle = abs(1 - ratio * np.exp(1j * found.turn))
        assert 1 - ratio == pytest.approx(share * axle, rel=1e-9)


def test_a_constant_ratio_may_predict_a_stuck_litter() -> None:
    near = {**CASE, "haul_elevation": math.radians(50), "ground_depression": math.radians(34)}
    down = litter_pulley("lowering", **near, efficiency=0.6)
    assert down.may_stick and down.haul_tension.low == 0.0 and down.haul_tension.high > 0
    assert "would stick on the track lines" in down.explain().as_text()
    up = litter_pulley("hauling", **near, efficiency=0.6)
    assert not up.may_stick and "would stick" not in up.explain().as_text()


def test_many_places_at_once() -> None:
    case = random_case(84, 50)
    for direction in Direction:
        together = litter_pulley(direction, **case, efficiency=0.85)
        for i in range(50):
            one = litter_pulley(
                direction, **{k: float(v[i]) for k, v in case.items()}, efficiency=0.85
            )
            assert together.haul_tension.low[i] == pytest.approx(one.haul_tension.low, rel=1e-9)
            assert together.haul_tension.high[i] == pytest.approx(one.haul_tension.high, rel=1e-9)
            assert bool(together.may_stick[i]) == bool(one.may_stick)


def test_work_that_goes_in_covers_the_lift_and_what_the_pulley_rubs_away() -> None:
    """A little straight up: rope of the upper leg runs past the pulley, taken in at the hub."""
    case = random_case(85, 500)
    up, down = case["haul_elevation"], case["ground_depression"]
    found = litter_pulley("hauling", **case, efficiency=0.8)
    track = found.track_tension
    rate = guiding.take_in_rate(track_elevation=up, ground_depression=down)
    work = found.haul_tension.high * np.sin(up) + track * rate
    run = np.sin(up)  # by what the upper leg shortens
    np.testing.assert_allclose(work - case["load"], (track - 0.8 * track) * run, rtol=1e-6)
    assert (work > case["load"]).all()


def test_it_is_told() -> None:
    told = litter_pulley("hauling", **CASE, efficiency=0.9).explain(Display())
    text = told.as_text()
    assert "the track lines turn by 31.0°" in text
    assert "While hauling the upper leg carries 0.900 to 0.973 times the ground leg." in text
    assert "carry 1.53 kN together whatever the friction" in text
    assert told.result == "haul tension 1.61 kN to 1.73 kN"  # outwards
    assert "between bounds" in told.cautions[0]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"efficiency": 0.0}, "efficiency"),
        ({"efficiency": 1.1}, "efficiency"),
        ({"ground_depression": 1.3}, "steeper than the ground leg"),
        ({"load": -1.0}, "load"),
    ],
)
def test_what_is_out_of_range_is_refused(change, words) -> None:
    with pytest.raises(DomainError, match=words):
        litter_pulley("hauling", **{**CASE, "efficiency": 0.9, **change})
    with pytest.raises(DomainError, match="direction is 'sideways'"):
        litter_pulley("sideways", **CASE, efficiency=0.9)


@pytest.mark.parametrize("ratio", [0.88, 0.92, 0.97, 1.0])
def test_haul_line_up_and_down_by_two_balances(ratio: float) -> None:
    """Solve both balances for either direction of motion and compare."""
    up, down = math.radians(66), math.radians(35)

    def solved(upper_over_ground: float) -> np.ndarray:
        haul = [-math.cos(up), math.sin(up)]
        track = [
            math.cos(down) - upper_over_ground * math.cos(up),
            upper_over_ground * math.sin(up) - math.sin(down),
        ]
        return np.linalg.solve(np.array([haul, track]).T, [0.0, CASE_LOAD])

    raising, lowering = solved(ratio), solved(1 / ratio)
    assert raising[1] == pytest.approx(lowering[1])
    found = haul_difference(track_tension=raising[1], leg_ratio=ratio)
    assert found == pytest.approx(raising[0] - lowering[0], abs=1e-9)
