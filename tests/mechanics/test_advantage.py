"""Advantage by simple rules, against counting every strand of whole systems and their travel."""

import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics import advantage
from ropecalc.mechanics.pulleys import common_system, count_tensions, forces, travel

LOAD = 2000.0


def counted(name: str, redirect: bool = False) -> float:
    """The advantage from the count of tensions, without friction."""
    return float(count_tensions(common_system(name, redirect=redirect), "hauling").ideal_advantage)


@pytest.mark.parametrize("pulleys", [1, 2, 3, 4])
@pytest.mark.parametrize("end", [0, 1])
def test_a_simple_system_has_what_a_count_finds(pulleys: int, end: int) -> None:
    # n:1 systems of one rope: odd with the end on the load's side, even with it at the anchor
    name = f"simple {2 * pulleys + end}:1"
    found = advantage.simple_advantage(travelling_pulleys=pulleys, end_at_load=end)
    assert found == pytest.approx(counted(name))
    assert found == pytest.approx(counted(name, redirect=True))  # a redirect adds nothing


@pytest.mark.parametrize("first", [2, 3, 4, 5])
@pytest.mark.parametrize("second", [2, 3, 5])
def test_advantages_multiply(first: int, second: int) -> None:
    found = advantage.compound_advantage(first_advantage=first, second_advantage=second)
    assert found == pytest.approx(counted(f"{first}:1 on {second}:1"))


def test_the_complex_system_is_a_fifth_by_virtual_work() -> None:
    ratio = float(travel(common_system("complex 5:1")).ratio)
    assert advantage.complex_hand_pull(load=LOAD) == pytest.approx(LOAD / ratio)
    assert advantage.complex_hand_pull(load=LOAD) == pytest.approx(400.0)


@pytest.mark.parametrize("name", ["2:1", "3:1", "6:1", "9:1", "complex 5:1"])
def test_rope_through_the_hands_is_what_the_strands_lose(name: str) -> None:
    moved = travel(common_system(name))
    found = advantage.rope_through_hands(rise=1.2, advantage=counted(name))
    assert found == pytest.approx(1.2 * float(moved.ratio))


@pytest.mark.parametrize("efficiency", [1.0, 0.9, 0.75])
def test_efficiency_from_a_pull_test_is_what_friction_leaves(efficiency: float) -> None:
    system = common_system("3:1")
    worked = forces(system, "hauling", load=LOAD, efficiency=efficiency)
    found = advantage.system_efficiency(
        load=LOAD, hand_pull=worked.hand_pull.high, rise=1.0, hand_travel=3.0
    )
    # over the traveller's sheave 1 to e, over the anchor's e to e²: 1 + e + e² instead of 3
    assert found == pytest.approx((1 + efficiency + efficiency**2) / 3)


def test_a_published_pull_test() -> None:
    # 0.74 kN through 3 m raise 2 kN by 1 m: an independent calculation made for this project
    found = advantage.system_efficiency(load=2000, hand_pull=740, rise=1, hand_travel=3)
    assert found == pytest.approx(0.901, abs=5e-4)


@pytest.mark.parametrize("parts", [2, 3, 4, 5])
def test_the_anchor_holds_the_sum_of_its_connectors(parts: int) -> None:
    for redirect, derivation in (
        (False, advantage.anchor_in_line),
        (True, advantage.anchor_redirected),
    ):
        system = common_system(f"{parts}:1", redirect=redirect)
        worked = forces(system, "hauling", load=LOAD, efficiency=1.0)
        found = derivation(load=LOAD, advantage=parts)
        assert found == pytest.approx(worked.anchors["anchor"].high)


def test_anchor_of_a_three_to_one() -> None:
    assert advantage.anchor_in_line(load=2000, advantage=3) == pytest.approx(4000 / 3)
    assert advantage.anchor_redirected(load=2000, advantage=3) == pytest.approx(8000 / 3)


def test_a_hand_that_pulls_harder_than_the_load_is_refused() -> None:
    with pytest.raises(DomainError, match="one or more"):
        advantage.anchor_in_line(load=LOAD, advantage=0.5)
