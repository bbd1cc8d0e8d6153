"""Redirects and the lean of a high directional, against published values and vectors."""

import math
from dataclasses import replace

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.friction import Direction
from ropecalc.mechanics.redirects import (
    HeadLine,
    combined_head_pull,
    hauled_redirect_pull,
    head_lean,
    head_load,
    redirect_resultant,
    unequal_head_lean,
    unequal_redirect_pull,
)
from ropecalc.units import Display


@pytest.mark.parametrize(
    ("angle", "factor"),
    [
        (0, 2.00), (10, 1.99), (20, 1.97), (30, 1.93), (40, 1.87), (45, 1.84), (50, 1.81),
        (60, 1.73), (70, 1.64), (80, 1.53), (90, 1.41), (100, 1.29), (110, 1.15), (120, 1.00),
        (130, 0.84), (135, 0.76), (140, 0.68), (150, 0.52), (160, 0.35), (170, 0.17), (180, 0.0),
    ],
)  # fmt: skip
def test_angle_factors_of_hoist_blocks(angle: float, factor: float) -> None:
    # "angle factor multipliers", a table printed alike in three block makers' catalogues; some
    # entries are truncated
    pull = redirect_resultant(strand_tension=1.0, strand_angle=math.radians(angle))
    assert pull == pytest.approx(factor, abs=0.01)


@pytest.mark.parametrize(
    ("tension", "angle", "pull", "tolerance"),
    [
        (1000, 50, 1810, 0.008), (1000, 135, 760, 0.008),  # the same catalogues, worked example
        (100, 0, 200, 1e-12), (150, 100, 193.4, 0.004),  # a marine block guide, kg
    ],
)  # fmt: skip
def test_block_loads(tension: float, angle: float, pull: float, tolerance: float) -> None:
    result = redirect_resultant(strand_tension=tension, strand_angle=math.radians(angle))
    assert result == pytest.approx(pull, rel=tolerance)


def test_the_head_of_the_worked_case() -> None:
    # an independent calculation made for this project: strands 85° and 30° below the horizontal
    front, back = math.radians(85), math.radians(30)
    lean = head_lean(front_depression=front, back_depression=back)
    pull = redirect_resultant(strand_tension=1.0, strand_angle=math.pi - front - back)
    assert math.degrees(lean) == pytest.approx(27.5, abs=1e-9)
    assert pull == pytest.approx(1.687, abs=5e-4)


def test_the_resultant_as_a_sum_of_vectors() -> None:
    """Inward is negative x. Both strands pull the head; their sum has the size and the lean."""
    rng = np.random.default_rng(43)
    front, back = rng.uniform(0.001, math.pi / 2, (2, 3000))
    tension = rng.uniform(500, 5000, 3000)
    out = tension * (np.cos(front) - np.cos(back))
    up = -tension * (np.sin(front) + np.sin(back))
    pull = redirect_resultant(strand_tension=tension, strand_angle=np.pi - front - back)
    np.testing.assert_allclose(pull, np.hypot(out, up), rtol=1e-9, atol=1e-9)
    lean = head_lean(front_depression=front, back_depression=back)
    np.testing.assert_allclose(lean, np.arctan2(-out, -up), atol=1e-12)


def test_the_resultant_halves_the_angle_between_any_two_strands() -> None:
    rng = np.random.default_rng(44)
    one, between = rng.uniform(0, 2 * math.pi, 2000), rng.uniform(0, math.pi, 2000)
    strands = np.exp(1j * one) + np.exp(1j * (one + between))
    pull = redirect_resultant(strand_tension=1.0, strand_angle=between)
    np.testing.assert_allclose(pull, np.abs(strands), atol=1e-12)


def test_strands_that_change_places_lean_the_other_way() -> None:
    front, back = np.random.default_rng(45).uniform(0.01, math.pi / 2, (2, 500))
    np.testing.assert_allclose(
        head_lean(front_depression=front, back_depression=back),
        -head_lean(front_depression=back, back_depression=front),
        atol=1e-15,
    )


def test_a_plumb_strand_against_a_level_one_leans_half_a_right_angle_inward() -> None:
    lean = head_lean(front_depression=math.pi / 2, back_depression=0.0)
    assert math.degrees(lean) == pytest.approx(45.0)


def test_a_rope_that_does_not_turn_is_refused() -> None:
    with pytest.raises(DomainError, match="must turn through the pulley"):
        head_lean(front_depression=0.0, back_depression=0.0)
    with pytest.raises(DomainError, match="at most 180°"):
        redirect_resultant(strand_tension=1.0, strand_angle=3.2)


# --- several lines, and friction -------------------------------------------------------------

CASE_LINES = (
    HeadLine("Haul line", "hauling", 1576.2, math.radians(66.251), math.radians(28)),
    HeadLine("Track lines", "hauling", 1533.5, math.radians(66.251), math.radians(28)),
)


def moving(direction: str, lines: tuple[HeadLine, ...] = CASE_LINES) -> tuple[HeadLine, ...]:
    return tuple(replace(line, direction=direction) for line in lines)


def kept(efficiency: float, turn: float) -> float:
    """Share of the tension that an axle leaves: the loss in proportion to its pull, bisected."""
    share = (1 - efficiency) / (1 + efficiency)  # parallel strands, where the efficiency is known
    low, high = efficiency, 1.0
    for _ in range(100):
        ratio = (low + high) / 2
        pull = abs(1 - ratio * np.exp(1j * turn))
        low, high = (ratio, high) if 1 - ratio > share * pull else (low, ratio)
    return low


def test_the_combined_head_of_the_worked_case() -> None:
    # an independent calculation made for this project: 4.56 kN with the track, 2.31 kN without
    angles = {
        "haul_elevation": math.radians(66.251),
        "ground_depression": math.radians(35.248),
        "back_depression": math.radians(28),
    }
    pull = combined_head_pull(load=200 * 9.80665, **angles)
    assert pull / 1000 == pytest.approx(4.56, abs=0.005)
    haul_only = redirect_resultant(
        strand_tension=1576.2, strand_angle=math.pi - math.radians(66.251 + 28)
    )
    assert haul_only / 1000 == pytest.approx(2.31, abs=0.005)
    with pytest.raises(DomainError, match="steeper than the ground leg"):
        combined_head_pull(load=2000.0, **{**angles, "ground_depression": 1.2})


def test_the_combined_head_as_a_sum_of_vectors() -> None:
    """Balance at the litter in unit vectors, then all four strands at the head."""
    rng = np.random.default_rng(64)
    up, down = rng.uniform(0.7, 1.5, 500), rng.uniform(-0.3, 0.6, 500)
    back, load = rng.uniform(0, 1.2, 500), rng.uniform(600, 3000, 500)
    haul, ground = np.exp(1j * (np.pi - up)), np.exp(-1j * down)
    track = load * np.cos(up) / np.sin(up - down)
    rest = 1j * load - track * (haul + ground)
    line = (rest / haul).real
    np.testing.assert_allclose(rest, line * haul, atol=1e-9 * load.max())
    strands = (line + track) * (-haul + np.exp(1j * (np.pi + back)))
    pull = combined_head_pull(
        load=load, haul_elevation=up, ground_depression=down, back_depression=back
    )
    np.testing.assert_allclose(pull, np.abs(strands), rtol=1e-9)


def test_unequal_strands_as_vectors() -> None:
    rng = np.random.default_rng(65)
    one, two = rng.uniform(1, 5000, (2, 2000))
    front, back = rng.uniform(0.01, math.pi / 2, (2, 2000))
    asked = {
        "front_tension": one,
        "back_tension": two,
        "front_depression": front,
        "back_depression": back,
    }
    total = one * np.exp(-1j * front) + two * np.exp(1j * (np.pi + back))
    np.testing.assert_allclose(unequal_redirect_pull(**asked), np.abs(total), rtol=1e-7)
    lean = np.arctan2(-total.real, -total.imag)
    np.testing.assert_allclose(unequal_head_lean(**asked), lean, atol=1e-12)


def test_equal_strands_are_a_free_pulley() -> None:
    front, back = 1.3, 0.4
    asked = {"front_depression": front, "back_depression": back}
    even = {"front_tension": 900.0, "back_tension": 900.0, **asked}
    assert unequal_head_lean(**even) == pytest.approx(head_lean(**asked))
    assert unequal_redirect_pull(**even) == pytest.approx(
        redirect_resultant(strand_tension=900.0, strand_angle=math.pi - front - back)
    )
    with pytest.raises(DomainError, match="together must pull the head downward"):
        unequal_head_lean(**{**even, "front_depression": 0.0, "back_depression": 0.0})


def test_a_head_without_friction_is_the_combined_head() -> None:
    for direction in Direction:
        found = head_load(moving(direction), efficiency=1.0)
        assert found.pull.low / 1000 == pytest.approx(4.56, abs=0.005)
        assert found.pull.high == pytest.approx(found.pull.low, rel=1e-9)
        lean = head_lean(front_depression=math.radians(66.251), back_depression=math.radians(28))
        assert (found.lean.low, found.lean.high) == pytest.approx((lean, lean))


def test_friction_at_the_head_by_direction() -> None:
    lines = (*CASE_LINES, HeadLine("Belay", "hauling", 300.0, 1.5, 0.2))

    def total(factors):
        return sum(
            line.front_tension
            * (
                np.array([-math.cos(line.front_depression), math.sin(line.front_depression)])
                + factor
                * np.array([math.cos(line.back_depression), math.sin(line.back_depression)])
            )
            for line, factor in zip(lines, factors, strict=True)
        )

    turns = [line.front_depression + line.back_depression for line in lines]
    for direction, power in (("hauling", -1), ("lowering", 1)):
        found = head_load(moving(direction, lines), efficiency=0.8)
        # all lost by bending, or all at the axle: the two bounds
        sides = sorted([total([0.8**power] * 3), total([kept(0.8, t) ** power for t in turns])],
                       key=lambda side: side[0])  # fmt: skip
        assert (found.inward.low, found.inward.high) == pytest.approx([s[0] for s in sides])
        assert (found.downward.low, found.downward.high) == pytest.approx([s[1] for s in sides])
        sizes = [math.hypot(*side) for side in sides]
        assert found.pull.high == pytest.approx(max(sizes))
        assert found.pull.low == pytest.approx(min(sizes), rel=1e-6)
        for line, turn, back in zip(lines, turns, found.back_tensions, strict=True):
            ends = sorted(line.front_tension * r**power for r in (0.8, kept(0.8, turn)))
            assert (back.low, back.high) == pytest.approx(ends)
        assert len(found.corners) == 8


def test_each_line_moves_its_own_way() -> None:
    """Lowering past track lines that stand still: their back strands may pull as in hauling."""
    haul, track = CASE_LINES
    lowered = replace(haul, direction="lowering")
    found = head_load([lowered, replace(track, direction="holding")], efficiency=0.8)
    together = head_load(moving("lowering"), efficiency=0.8)
    # arrows with the inward part as real and the downward part as imaginary part
    fronts = sum(
        line.front_tension * complex(-math.cos(line.front_depression),
                                     math.sin(line.front_depression))
        for line in CASE_LINES
    )  # fmt: skip
    backs = (1576.2 * kept(0.8, math.radians(94.251)) + 1533.5 / 0.8) * np.exp(
        1j * math.radians(28)
    )
    assert found.pull.high == pytest.approx(abs(fronts + backs), rel=1e-9)
    assert found.pull.high > 1.08 * together.pull.high
    up = head_load([lowered, replace(track, direction="hauling")], efficiency=0.8)
    assert found.pull.high == pytest.approx(up.pull.high)
    assert found.pull.low < together.pull.high < up.pull.low
    assert found.lines[0].direction == "lowering" and found.lines[1].direction == "holding"


def test_a_line_without_tension_adds_nothing() -> None:
    slack = HeadLine("Belay", "holding", 0.0, 1.2, 0.4)
    alone = head_load(CASE_LINES, efficiency=0.8)
    with_it = head_load([*CASE_LINES, slack], efficiency=0.8)
    assert with_it.pull.high == alone.pull.high
    assert (with_it.back_tensions[2].low, with_it.back_tensions[2].high) == (0.0, 0.0)


def test_held_it_is_everything_friction_allows() -> None:
    rng = np.random.default_rng(66)
    for _ in range(25):
        lines = tuple(
            HeadLine(
                f"line {i}",
                "holding",
                rng.uniform(300, 3000),
                rng.uniform(0.2, 1.5),
                rng.uniform(0, 1),
            )
            for i in range(rng.integers(1, 4))
        )
        found = head_load(lines, efficiency=0.6)
        assert len(found.corners) == 2 ** len(lines)
        for _ in range(200):
            inward, down = 0.0, 0.0
            for line in lines:
                back = line.front_tension * rng.uniform(0.6, 1 / 0.6)
                inward += back * math.cos(line.back_depression)
                inward -= line.front_tension * math.cos(line.front_depression)
                down += back * math.sin(line.back_depression)
                down += line.front_tension * math.sin(line.front_depression)
            assert found.inward.low <= inward <= found.inward.high
            assert found.downward.low <= down <= found.downward.high
            assert found.pull.low * (1 - 1e-9) <= math.hypot(inward, down) <= found.pull.high
            assert found.lean.low <= math.atan2(inward, down) <= found.lean.high


def test_the_least_pull_need_not_be_a_corner() -> None:
    """Nearly straight through: at one back tension in between the pull is least."""
    line = HeadLine("flat", "holding", 1000.0, 0.1, 0.1)
    found = head_load([line], efficiency=0.6)
    assert found.pull.low == pytest.approx(1000 * math.sin(0.2), rel=1e-6)
    assert found.pull.low < min(math.hypot(*corner) for corner in found.corners)


def test_a_head_is_told() -> None:
    told = head_load(CASE_LINES, efficiency=0.9).explain()
    text = told.as_text()
    assert "Haul line: 1.58 kN in front, 1.70 kN to 1.76 kN at the back while hauling." in text
    assert told.result == "pull 4.74 kN to 4.82 kN, lean 21.1° to 22.0° (inward positive)"
    held = head_load(moving("holding"), efficiency=0.9).explain(Display(force="kN"))
    assert "lean 16.3° to 22.0°" in held.result
    assert any("belay" in caution for caution in told.cautions)


@pytest.mark.parametrize(
    ("lines", "efficiency", "words"),
    [
        ((), 0.9, "No lines run through the head"),
        (CASE_LINES, 0.0, "efficiency"),
        (CASE_LINES, 1.01, "efficiency"),
        (
            [HeadLine("level", "hauling", 1000.0, 0.0, 0.0)],
            0.9,
            "together must pull the head downward",
        ),
        ([HeadLine("up", "hauling", 1000.0, -0.1, 0.5)], 0.9, "front_depression"),
        ([HeadLine("many", "hauling", np.array([1.0, 2.0]), 0.5, 0.5)], 0.9, "one case at a time"),
    ],
)
def test_a_head_that_is_none_is_refused(lines, efficiency, words) -> None:
    with pytest.raises(DomainError, match=words):
        head_load(lines, efficiency=efficiency)


def test_a_head_needs_a_direction() -> None:
    with pytest.raises(DomainError, match="direction is 'up'"):
        head_load(moving("up"), efficiency=0.9)


@pytest.mark.parametrize("efficiency", [0.7, 0.85, 1.0])
@pytest.mark.parametrize("angle", [0, 45, 70, 120, 175])
def test_hauling_over_a_redirect_by_arrows(efficiency: float, angle: int) -> None:
    front = np.array([0.0, -2000.0])
    turned = math.radians(angle)
    back = 2000.0 / efficiency * np.array([-math.sin(turned), -math.cos(turned)])
    found = hauled_redirect_pull(front_tension=2000.0, efficiency=efficiency, strand_angle=turned)
    assert found == pytest.approx(float(np.linalg.norm(front + back)))


def test_hauling_over_a_redirect_at_given_numbers() -> None:
    # 2 kN, efficiency 0.8, strands 70 degrees apart: an independent calculation for this project
    found = hauled_redirect_pull(
        front_tension=2000.0, efficiency=0.8, strand_angle=math.radians(70)
    )
    assert found == pytest.approx(3700, abs=5)


def test_the_least_pull_stays_within_what_friction_allows() -> None:
    """One back strand pulls against both fronts: the more the better, up to what friction holds."""
    lines = [
        HeadLine("first", "holding", 1000.0, 0.1, 0.1),
        HeadLine("second", "holding", 1000.0, 0.1, 1.4),
    ]
    found = head_load(lines, efficiency=0.8)
    bands = found.back_tensions
    fronts = 2000.0 * np.array([-math.cos(0.1), math.sin(0.1)])
    sizes = [
        np.linalg.norm(
            fronts
            + one * np.array([math.cos(0.1), math.sin(0.1)])
            + two * np.array([math.cos(1.4), math.sin(1.4)])
        )
        for one in np.linspace(bands[0].low, bands[0].high, 60)
        for two in np.linspace(bands[1].low, bands[1].high, 60)
    ]
    assert found.pull.low == pytest.approx(min(sizes), rel=1e-6)
