"""Throws, time, rope and snags against a raise walked through step by step."""

import math

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics import hauling
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.pulleys import (
    common_system,
    forces,
    plan_throws,
    rope_needed,
    snag_force,
    throw,
)


def walked(height: float, rise: float, loss: float) -> tuple[int, float]:
    """Haul throw by throw until the top; how many throws, and how much was hauled."""
    at, throws, hauled = 0.0, 0, 0.0
    while at < height - 1e-9:
        if throws:
            at -= loss
        step = min(rise, height - at)
        at, throws, hauled = at + step, throws + 1, hauled + step
    return throws, hauled


@pytest.mark.parametrize("height", [3.0, 15.0, 29.0, 30.0, 61.5])
@pytest.mark.parametrize(("rise", "loss"), [(4.0, 0.4), (2.0, 0.3), (8.0, 0.0), (2.5, 0.6)])
def test_throws_and_time_are_those_of_a_raise_walked_through(
    height: float, rise: float, loss: float
) -> None:
    throws, hauled = walked(height, rise, loss)
    found = hauling.throws_needed(raise_height=height, throw_rise=rise, reset_loss=loss)
    assert found == throws
    time = hauling.raise_time(
        raise_height=height,
        advantage=3.0,
        hand_speed=0.3,
        throws=found,
        reset_loss=loss,
        reset_time=20.0,
    )
    assert time == pytest.approx(3.0 * hauled / 0.3 + (throws - 1) * 20.0)


def test_they_say_the_same_as_the_plan_of_a_whole_system() -> None:
    given = {"reset_loss": 0.3, "hand_speed": 0.4, "reset_time": 25.0}
    for ratio, rise in ((3, 4.0), (5, 2.4), (9, 1.5)):
        plan = plan_throws(height=29.0, rise=rise, ratio=ratio, **given)
        throws = hauling.throws_needed(raise_height=29.0, throw_rise=rise, reset_loss=0.3)
        assert throws == plan.throws
        time = hauling.raise_time(raise_height=29.0, advantage=ratio, throws=throws, **given)
        assert time == pytest.approx(plan.time)


@pytest.mark.parametrize("parts", [1, 3, 5])
def test_the_haul_rope_is_that_of_the_drawn_system(parts: int) -> None:
    height, setback, throw, tail = 30.0, 8.0, 4.0, 5.0
    system = common_system(f"{parts}:1", height=height + setback - throw, throw=throw, gap=1.0)
    (drawn,) = rope_needed(system, tail=tail).values()
    hands = 1.0  # from the last anchor to the hands, which the formula counts as tail
    found = hauling.main_rope(
        raise_height=height,
        edge_setback=setback,
        advantage=parts,
        throw_rise=throw,
        haul_tail=tail + (hands if parts > 1 else 0.0),
    )
    if parts == 1:
        assert found == pytest.approx(height + setback + tail)
    else:
        assert found == pytest.approx(drawn)


def test_a_snag_feels_what_the_system_makes_of_a_burst() -> None:
    system = common_system("3:1")
    worked = forces(system, "hauling", load=2000.0, efficiency=0.9)
    gain = 2000.0 / worked.hand_pull.high
    found = hauling.snag_pull(people=5.0, burst_per_person=350.0, advantage=gain)
    assert found == pytest.approx(snag_force(people=5, burst_per_person=350.0, advantage=gain))
    again = forces(system, "hauling", load=found, efficiency=0.9)
    assert again.hand_pull.high == pytest.approx(5 * 350.0)


def test_a_reset_that_loses_everything_is_refused() -> None:
    with pytest.raises(ValueError, match="lose less than a throw gains"):
        hauling.throws_needed(raise_height=30.0, throw_rise=0.4, reset_loss=0.4)


def test_arrays_and_one_throw() -> None:
    found = hauling.throws_needed(
        raise_height=np.array([0.1, 4.0, 4.1, 7.6]), throw_rise=4.0, reset_loss=0.4
    )
    assert found.tolist() == [1.0, 1.0, 2.0, 2.0]
    assert math.isclose(
        hauling.raise_time(
            raise_height=3.0,
            advantage=2.0,
            hand_speed=0.5,
            throws=1.0,
            reset_loss=0.4,
            reset_time=9.0,
        ),
        12.0,
    )


def test_time_and_rope_go_by_travel_and_not_by_the_pull() -> None:
    """With friction the pull's advantage is smaller; counted with it the plan would be short."""
    system = common_system("3:1")
    hauled = forces(system, "hauling", load=2000.0, efficiency=0.8)
    known = {"hand_speed": 0.3, "reset_time": 20.0, "reset_loss": 0.4}
    plan = plan_throws(height=30.0, rise=4.0, ratio=float(hauled.travel.ratio), **known)
    asked = {"raise_height": 30.0, "throws": plan.throws, **known}
    assert hauling.raise_time(advantage=hauled.ideal_advantage, **asked) == pytest.approx(plan.time)
    assert hauling.raise_time(advantage=hauled.advantage.low, **asked) < 0.9 * plan.time
    for derivation in (hauling.raise_time, hauling.main_rope):
        assert derivation.cautions[0].startswith("Give the advantage without friction")
    assert "without friction bounds the force" in hauling.snag_pull.cautions[0]


@pytest.mark.parametrize(("way", "room", "parts"), [(12.0, 6.0, 3), (30.0, 5.0, 3), (9.0, 2.0, 5)])
def test_a_throw_walked_in_small_steps_ends_where_the_first_limit_is(
    way: float, room: float, parts: int
) -> None:
    step, walked, risen = 1e-3, 0.0, 0.0
    while walked + step <= way + 1e-9 and risen + step / parts <= room + 1e-9:
        walked, risen = walked + step, risen + step / parts
    found = hauling.rise_in_a_throw(clear_way=way, traveller_room=room, advantage=float(parts))
    assert found == pytest.approx(risen, abs=2e-3)


@pytest.mark.parametrize("efficiency", [0.75, 0.85, 1.0])
@pytest.mark.parametrize("each", [150.0, 200.0, 290.0])
def test_people_over_an_edge_counted_piece_by_piece(efficiency: float, each: float) -> None:
    """The edge as ten thousand short bends, the system strand by strand, then one person more."""
    load, friction, turn, bends = 2000.0, 0.24, math.radians(80), 10_000
    above = load
    for _ in range(bends):
        above *= 1 + friction * turn / bends
    people, pull = 0, 0.0
    while pull < above:
        people += 1
        strand = people * each
        pull = 0.0
        for _ in range(3):
            pull += strand
            strand *= efficiency
    found = hauling.people_needed(
        load=load,
        friction=friction,
        turn=turn,
        efficiency=efficiency,
        parts=3.0,
        pull_per_person=each,
    )
    assert found == people


def test_people_that_a_reference_gives() -> None:
    """A worked case of this project's own check values: six people."""
    found = hauling.people_needed(
        load=2000.0,
        friction=0.24,
        turn=math.radians(80),
        efficiency=0.85,
        parts=3.0,
        pull_per_person=200.0,
    )
    assert found == 6


def test_one_quantity_is_one_variable_for_formulas_and_for_whole_systems() -> None:
    for asked, quantity in (
        (throw.HEIGHT, hauling.RAISE_HEIGHT),
        (throw.RISE, hauling.THROW_RISE),
        (throw.RATIO, hauling.TRAVEL_ADVANTAGE),
        (throw.PER_PERSON, hauling.STEADY_PULL),
    ):
        assert asked == named(quantity, asked.name, quantity.meaning, asked.name)


def test_advantage_by_travel_is_not_load_over_pull() -> None:
    """With friction the two differ; a raise's time and rope go by travel, a snag by force."""
    by_travel = {
        v
        for d in (hauling.rise_in_a_throw, hauling.raise_time, hauling.main_rope)
        for v in d.given
        if v.name == "advantage"
    }
    (in_a_snag,) = (v for v in hauling.snag_pull.given if v.name == "advantage")
    assert by_travel == {q.TRAVEL_ADVANTAGE} and in_a_snag == q.ADVANTAGE
    assert q.TRAVEL_ADVANTAGE.symbol != q.ADVANTAGE.symbol
    assert "rope through the hands" in q.TRAVEL_ADVANTAGE.meaning


@pytest.mark.parametrize("loss", [4.0, 4.5, 40.0])
def test_a_reset_that_loses_a_throw_or_more_gets_nowhere(loss: float) -> None:
    with pytest.raises(DomainError, match="must lose less than a throw gains"):
        hauling.throws_needed(raise_height=30.0, throw_rise=4.0, reset_loss=loss)
