"""Throws, resets, room, rope, time, crew and snags, against a raise played step by step."""

import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from ropecalc.derivation import DomainError
from ropecalc.mechanics.pulleys import (
    Throws,
    common_system,
    common_systems,
    forces,
    haulers,
    plan_throws,
    room,
    rope_needed,
    series_tensioner_system,
    snag_force,
    travel,
)
from ropecalc.units import Display


def plan(**changed: object) -> Throws:
    values: dict[str, object] = {
        "height": 30.0, "rise": 4.0, "reset_loss": 0.4, "ratio": 3.0, "hand_speed": 0.3,
        "reset_time": 20.0,
    }  # fmt: skip
    return plan_throws(**(values | changed))


def played(height: float, rise: float, loss: float) -> tuple[int, float]:
    """Throws and metres hauled when a raise is played out, until the load is up."""
    at, throws, hauled = 0.0, 0, 0.0
    while True:
        throws += 1
        up = min(rise, height - at)
        at, hauled = at + up, hauled + up
        if at >= height - 1e-9:
            return throws, hauled
        at -= loss


@given(st.floats(0.5, 60.0), st.floats(0.5, 12.0), st.floats(0.0, 0.9))
@settings(derandomize=True, deadline=None, max_examples=300)
def test_a_raise_played_out(height: float, rise: float, share: float) -> None:
    loss = share * rise
    exact = (height - loss) / (rise - loss)
    assume(abs(exact - round(exact)) > 1e-6)
    throws, hauled = played(height, rise, loss)
    planned = plan(height=height, rise=rise, reset_loss=loss)
    assert planned.throws == throws and planned.resets == throws - 1
    assert planned.hauled == pytest.approx(hauled)
    assert planned.rope_through_hands == pytest.approx(3 * hauled)
    assert planned.time == pytest.approx(3 * hauled / 0.3 + 20 * (throws - 1))


def test_hand_worked_raises() -> None:
    nine = plan()  # 29.6 over 3.6 is 8.2
    assert (nine.throws, nine.resets) == (9, 8)
    assert nine.hauled == pytest.approx(30 + 8 * 0.4)
    assert nine.time == pytest.approx(3 * 33.2 / 0.3 + 160)
    assert plan(height=4.0).throws == 1 and plan(height=4.001).throws == 2
    assert plan(height=0.2).throws == 1 and plan(height=0.2).hauled == pytest.approx(0.2)
    # exactly on a whole number of throws: 0.4 + 7 times 3.6, in spite of rounding
    assert plan(height=0.4 + 7 * 3.6).throws == 7
    assert plan(reset_loss=0.0, height=32.0).throws == 8
    with_arrays = plan(height=np.array([4.0, 30.0]))
    assert with_arrays.throws.tolist() == [1.0, 9.0]


def test_it_says_how_it_got_there() -> None:
    text = plan().explain().as_text()
    assert "A throw gains 4.00 m and a reset loses 0.400 m" in text
    assert "Between 9 throws lie 8 resets." in text
    assert "pulled up 33.2 m altogether; 99.6 m of rope come through the hands" in text
    assert text.endswith("9 throws, 8 resets, 492 s")
    assert "13.1 ft" in plan().explain(Display(length="ft")).as_text()
    assert (
        "At 0.984 ft/s, and 20.0 s for each reset" in plan().explain(Display(length="ft")).as_text()
    )
    assert plan(height=120.0).explain().result.endswith(" 33 resets, 1990 s")  # 1332 and 660
    with pytest.raises(DomainError, match="single numbers, not arrays"):
        plan(height=np.array([4.0, 30.0])).explain()
    assert plan().cautions


@pytest.mark.parametrize("name", ["height", "rise", "ratio", "hand_speed"])
def test_nothing_or_less_is_refused(name: str) -> None:
    for value in (0.0, -1.0, math.nan):
        with pytest.raises(DomainError, match=name):
            plan(**{name: value})


def test_losses_are_checked() -> None:
    for name in ("reset_loss", "reset_time"):
        plan(**{name: 0.0})
        with pytest.raises(DomainError, match=name):
            plan(**{name: -0.1})
    for loss in (4.0, 5.0):
        with pytest.raises(DomainError, match="each reset loses all that a throw gains"):
            plan(reset_loss=loss)


# --- room --------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", common_systems())
def test_at_the_end_of_a_throw_one_strand_is_as_short_as_allowed(name: str) -> None:
    system = common_system(name)
    found = room(system, clear=0.3, ground=500.0)
    moved = travel(system)
    left = [
        strand.length + float(growth) * found.rise
        for strand, growth in zip(system.strands, moved.growth, strict=True)
        if strand is not system.hand_strand and growth < 0
    ]
    if name == "1:1":
        assert found.ends == "the haul team has no more ground to walk" and found.rise == 500.0
        return
    assert min(left) == pytest.approx(0.3)
    assert found.ends.endswith("has run in")


def test_what_ends_the_throw_first() -> None:
    system = common_system("3:1", throw=4.0)
    assert room(system, clear=0.0).rise == pytest.approx(4.0)
    assert room(system, clear=0.5).ends == "main rope: traveller to anchor has run in" or (
        room(system, clear=0.5).ends == "main rope: anchor to traveller has run in"
    )
    assert room(system, clear=0.5).rise == pytest.approx(3.5)
    short = room(system, clear=0.5, ground=6.0)
    assert short.rise == pytest.approx(2.0) and "ground to walk" in short.ends
    assert room(system, clear=0.5, ground=12.0).rise == pytest.approx(3.5)
    with pytest.raises(
        DomainError, match=r"no room for a throw, because .* has run in from the st"
    ):
        room(system, clear=4.0)
    with pytest.raises(DomainError, match=r"nothing ends the throw\. Say how far the haul team"):
        room(common_system("1:1"), clear=0.3)
    with pytest.raises(DomainError, match="clear"):
        room(system, clear=-0.1)
    with pytest.raises(DomainError, match="ground"):
        room(system, clear=0.1, ground=0.0)
    # complex: both grabs close on each other, at twice the load's speed
    assert room(common_system("complex 5:1", throw=4.0), clear=0.2).rise == pytest.approx(1.7)


# --- rope, crew, snag --------------------------------------------------------------------------


def test_rope_by_hand() -> None:
    """A 3:1 in the main rope's own tail: the height, up to the anchor and twice the throw more."""
    system = common_system("3:1", height=30.0, throw=4.0, gap=2.0)
    # load to anchor 34, back to the traveller 4, past the anchor to the hand 6, tail 3
    assert rope_needed(system, tail=3.0) == {"main rope": pytest.approx(34 + 4 + 6 + 3)}
    two = rope_needed(common_system("2:1", height=30.0, throw=4.0, gap=2.0), tail=0.0)
    assert two == {"main rope": pytest.approx(30.0), "haul rope": pytest.approx(4.0 + 6.0)}
    with pytest.raises(DomainError, match="tail"):
        rope_needed(system, tail=-1.0)


def test_rope_of_the_series_tensioner() -> None:
    system = series_tensioner_system(3, play=5.0)
    assert rope_needed(system, tail=2.0)["tensioner rope"] == pytest.approx(6 * 5.0 + 1.0 + 2.0)


def test_haulers_are_whole_people() -> None:
    assert haulers(hand_pull=738.0, per_person=200.0) == 4
    assert haulers(hand_pull=800.0, per_person=200.0) == 4
    assert haulers(hand_pull=800.1, per_person=200.0) == 5
    assert haulers(hand_pull=0.3, per_person=0.1) == 3  # 0.3 / 0.1 is a little less than 3
    assert isinstance(haulers(hand_pull=738.0, per_person=200.0), int)
    assert haulers(hand_pull=np.array([1.0, 801.0]), per_person=200.0).tolist() == [1, 5]
    assert haulers(hand_pull=0.0, per_person=200.0) == 0
    for name, value in (("hand_pull", -1.0), ("per_person", 0.0)):
        with pytest.raises(DomainError, match=name):
            haulers(**{"hand_pull": 700.0, "per_person": 200.0, name: value})


def test_the_same_hands_put_more_into_a_snag_with_more_advantage() -> None:
    """An independent calculation made for this project: five at 0.35 kN, 4.7 and 12.9 kN."""
    for name, expected in (("3:1", 4.7e3), ("9:1", 12.9e3)):
        gain = forces(common_system(name), "hauling", load=1.0, efficiency=0.9).advantage.low
        force = snag_force(people=5, burst_per_person=350.0, advantage=gain)
        assert force == pytest.approx(expected, abs=50)
        # what the snag carries, the same system needs those hands for
        again = forces(common_system(name), "hauling", load=force, efficiency=0.9)
        assert again.hand_pull.low == pytest.approx(5 * 350.0)
    values = {"people": 5, "burst_per_person": 350.0, "advantage": 3.0}
    for name in values:
        with pytest.raises(DomainError, match=name):
            snag_force(**{**values, name: 0.0})
    with pytest.raises(DomainError, match="most that one person pulls for a moment"):
        snag_force(**{**values, "burst_per_person": -1.0})
    assert any("for a moment people pull much harder" in c for c in plan().cautions)


def test_a_burst_goes_further_than_the_steady_pull_that_people_are_counted_by() -> None:
    """The crew a raise needs, at twice its steady pull: the bound is the work it does in a jerk."""
    system = common_system("3:1")
    raised = forces(system, "hauling", load=2000.0, efficiency=0.9)
    crew = haulers(hand_pull=raised.hand_pull.low, per_person=200.0)
    bound = float(travel(system).ratio)  # hand's work over load's work, without friction
    for efficiency in (0.8, 0.9, 1.0):
        gain = forces(system, "hauling", load=1.0, efficiency=efficiency).advantage.low
        snag = snag_force(people=crew, burst_per_person=400.0, advantage=gain)
        assert 2000.0 < snag <= crew * 400.0 * bound * (1 + 1e-12)
    assert snag == pytest.approx(crew * 400.0 * bound)
    many = snag_force(people=np.array([1, 2]), burst_per_person=400.0, advantage=3.0)
    assert many.tolist() == [1200.0, 2400.0]
