"""Pulley systems against work: rope conservation knows no force, yet must agree with the count.

The systems are hundreds that nobody designed, and compound ones whose ratio is a product.
"""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ropecalc.derivation import DomainError
from ropecalc.mechanics.pulleys import System, count_tensions, forces, travel
from ropecalc.mechanics.pulleys.system import frictionless_tensions, solve_exactly
from tests.mechanics.pulley_systems import staged, wild

WILD = tuple(wild(400, seed=3))
TAUT = tuple(s for s in WILD if min(frictionless_tensions(s) or [0]) > 0)
"""Those in which every strand carries something."""


def test_there_is_variety() -> None:
    ratios = {travel(s).ratio for s in WILD}
    assert len(ratios) >= 10 and len(TAUT) >= 80
    assert any(r.denominator > 1 for r in ratios) and max(ratios) >= 5 and min(ratios) < 1


@pytest.mark.parametrize("part", range(4))
def test_without_friction_advantage_equals_travel(part: int) -> None:
    """Virtual work, exactly: hand pull times rope through the hand is load times rise."""
    for system in WILD[part::4]:
        shares = frictionless_tensions(system)
        assert shares is not None
        moved = travel(system)
        assert shares[system.hand_strand.index] * moved.ratio == 1
        result = forces(system, "hauling", load=1234.5, efficiency=1.0)
        assert result.hand_pull.low == pytest.approx(1234.5 / float(moved.ratio), rel=1e-12)
        assert result.advantage.low == pytest.approx(result.ideal_advantage, rel=1e-12)


@pytest.mark.parametrize("way", ["hauling", "lowering"])
def test_what_work_is_missing_was_lost_at_the_sheaves(way: str) -> None:
    """Hand's work less load's work: tension dropped at each sheave times rope passed there."""
    sign = 1 if way == "hauling" else -1
    tried = 0
    for system in TAUT:
        values = {n: 0.98 - 0.02 * i for i, n in enumerate(system.efficiencies)}
        moved = travel(system)
        try:
            result = forces(system, way, load=1000.0, efficiency=values)
        except DomainError as refusal:
            assert "can lock" in str(refusal)
            continue
        tensions = [band.low for band in result.strands.values()]
        lost = 0.0
        for sheave, flow in zip(system.sheaves, moved.flow, strict=True):
            if flow == 0:
                continue
            assert sheave.before is not None and sheave.after is not None
            drop = tensions[sheave.after.index] - tensions[sheave.before.index]
            here = sign * drop * float(flow)  # the strand the rope moves into carries more
            assert here >= 0
            assert min(tensions[sheave.after.index], tensions[sheave.before.index]) == (
                pytest.approx(
                    values[sheave.visit.efficiency]
                    * max(tensions[sheave.after.index], tensions[sheave.before.index])
                )
            )
            lost += here
        if 0 in moved.flow:
            continue  # a band; see below
        extra = result.hand_pull.low * float(moved.ratio) - 1000.0
        assert sign * extra == pytest.approx(lost, rel=1e-9, abs=1e-6)
        tried += 1
    assert tried >= 60


def test_the_count_agrees_with_the_linear_solve_on_systems_nobody_designed() -> None:
    for system in [s for s in TAUT if 0 not in travel(s).flow][:40]:
        values = {n: 0.97 - 0.01 * i for i, n in enumerate(system.efficiencies)}
        for way in ("hauling", "lowering"):
            counted = count_tensions(system, way)
            at = {counted.symbols[n]: v for n, v in values.items()}
            result = forces(system, way, load=1.0, efficiency=values)
            assert float(counted.advantage.subs(at)) == pytest.approx(result.advantage.low)
            assert counted.ideal_advantage == counted.travel.ratio


def test_lowering_is_hauling_with_every_efficiency_turned_over() -> None:
    for system in TAUT[:40]:
        up = count_tensions(system, "hauling")
        down = count_tensions(system, "lowering")
        values = {n: 0.95 - 0.01 * i for i, n in enumerate(system.efficiencies)}
        over_one = {up.symbols[n]: 1 / v for n, v in values.items()}
        below_one = {up.symbols[n]: v for n, v in values.items()}
        expected = float(up.advantage.subs(over_one))
        assert float(down.advantage.subs(below_one)) == pytest.approx(expected, rel=1e-9)


def test_no_rope_changes_its_length() -> None:
    """Move every body by what was worked out and measure the ropes again."""
    for system in WILD:
        moved = travel(system)
        step = Fraction(1, 1000)
        for rope in system.ropes:
            before = after = Fraction(0)
            strands = [s for s in system.strands if s.rope == rope.name]
            for strand in strands:
                ends = [strand.start.body, strand.end.body]
                here = [Fraction(system.body(e).station) for e in ends]
                there = [
                    x - step * moved.rise.get(e, Fraction(0))
                    for x, e in zip(here, ends, strict=True)
                ]
                before += abs(here[0] - here[1])
                after += abs(there[0] - there[1])
                growth = moved.growth[strand.index] * step
                assert abs(there[0] - there[1]) - abs(here[0] - here[1]) == growth
            taken = moved.ratio * step if system.hand_strand in strands else 0
            assert before - after == taken


@given(staged(), st.floats(0.6, 1.0), st.floats(100.0, 9000.0))
@settings(derandomize=True, deadline=None, max_examples=150)
def test_compound_systems(built: tuple[System, int], efficiency: float, load: float) -> None:
    system, ratio = built
    moved = travel(system)
    assert moved.ratio == ratio
    up = forces(system, "hauling", load=load, efficiency=efficiency)
    down = forces(system, "lowering", load=load, efficiency=efficiency)
    free = forces(system, "hauling", load=load, efficiency=1.0)
    assert free.advantage.low == pytest.approx(ratio)
    assert up.hand_pull.low >= free.hand_pull.low * (1 - 1e-12)
    assert down.hand_pull.low <= free.hand_pull.low * (1 + 1e-12)
    assert 0 < up.efficiency.low <= 1 + 1e-12
    twice = forces(system, "hauling", load=2 * load, efficiency=efficiency)
    for one, other in zip(up.connectors.values(), twice.connectors.values(), strict=True):
        assert other.low == pytest.approx(2 * one.low)
    worse = forces(system, "hauling", load=load, efficiency=0.95 * efficiency)
    assert worse.hand_pull.low >= up.hand_pull.low


@given(st.integers(1, 5), st.integers(0, 10_000))
@settings(derandomize=True, deadline=None, max_examples=60)
def test_exact_solution(size: int, seed: int) -> None:
    rng = np.random.default_rng(seed)
    matrix = rng.integers(-3, 4, (size, size))
    right = [int(x) for x in rng.integers(-5, 6, size)]
    rows = [[int(x) for x in row] for row in matrix]
    solution = solve_exactly(rows, right)
    if round(float(np.linalg.det(matrix))) == 0:
        assert solution is None
        return
    assert solution is not None
    for row, value in zip(rows, right, strict=True):
        assert sum(a * x for a, x in zip(row, solution, strict=True)) == value
