"""Formulas for pulley systems against a balance of every body, which uses none of them."""

import pytest

from ropecalc.mechanics.pulleys import common_system, forces, formulas

EFFICIENCIES = (0.5, 0.7, 0.9, 0.98, 1.0)


@pytest.mark.parametrize("parts", range(1, 10))
@pytest.mark.parametrize("efficiency", EFFICIENCIES)
def test_a_simple_system_as_its_bodies_balance(parts: int, efficiency: float) -> None:
    system = common_system(f"simple {parts}:1")
    values = {"load": 2000.0, "efficiency": efficiency}
    hauled, lowered = (forces(system, way, **values) for way in ("hauling", "lowering"))
    assert formulas.simple_pull_hauling(parts=parts, **values) == pytest.approx(
        hauled.hand_pull.high
    )
    assert formulas.simple_pull_lowering(parts=parts, **values) == pytest.approx(
        lowered.hand_pull.low
    )
    advantage = formulas.simple_advantage(parts=parts, efficiency=efficiency)
    assert advantage == pytest.approx(hauled.advantage.low)


@pytest.mark.parametrize("first", range(2, 6))
@pytest.mark.parametrize("second", range(2, 6))
@pytest.mark.parametrize("efficiency", EFFICIENCIES)
def test_stacked_systems_as_their_bodies_balance(
    first: int, second: int, efficiency: float
) -> None:
    system = common_system(f"{second}:1 on {first}:1")
    counted = forces(system, "hauling", load=1000.0, efficiency=efficiency).advantage.low
    assert formulas.stacked_advantage(
        efficiency=efficiency, first_parts=first, second_parts=second
    ) == pytest.approx(counted)


@pytest.mark.parametrize(("near", "far"), [(0.95, 0.6), (0.6, 0.95), (1.0, 0.5), (0.8, 0.8)])
def test_where_the_good_pulley_goes(near: float, far: float) -> None:
    system = common_system("3:1").with_own_efficiencies()
    names = {a.visit.efficiency: a.visit.body for a in system.sheaves}
    given = {name: near if body == "traveller" else far for name, body in names.items()}
    counted = forces(system, "hauling", load=1000.0, efficiency=given).advantage.low
    assert formulas.two_pulley_advantage(near_efficiency=near, far_efficiency=far) == (
        pytest.approx(counted)
    )


def test_values_worked_by_hand() -> None:
    assert formulas.simple_advantage(efficiency=0.9, parts=3) == pytest.approx(1 + 0.9 + 0.81)
    assert formulas.simple_advantage(efficiency=0.7, parts=5) == pytest.approx(2.7731)
    pull = formulas.simple_pull_lowering(load=2000.0, efficiency=0.9, parts=3)
    assert pull == pytest.approx(2000 / (1 + 1 / 0.9 + 1 / 0.81))
    assert formulas.two_pulley_advantage(near_efficiency=0.95, far_efficiency=0.6) == (
        pytest.approx(2.52)
    )
    assert formulas.two_pulley_advantage(near_efficiency=0.6, far_efficiency=0.95) == (
        pytest.approx(2.17)
    )
