"""The figure's numbers against independent ones: a rope in short pieces, strands added by hand."""

import math
from typing import Any

import pytest

from ropecalc.mechanics.friction import Direction
from ropecalc.teaching.figures.three_tensions import THREE_TENSIONS, ThreeTensions
from ropecalc.units import Display

START = THREE_TENSIONS.start
WEIGHT = 200 * 9.80665


def at(**values: Any) -> ThreeTensions:
    result: ThreeTensions = THREE_TENSIONS.compute(START | values)
    return result


def test_the_start_is_a_right_angle_and_a_three_to_one() -> None:
    result = at()
    up, down = (result.ways[way] for way in (Direction.HAULING, Direction.LOWERING))
    assert up.above.high / WEIGHT == pytest.approx(1.602, abs=1e-3)
    assert down.above.low / WEIGHT == pytest.approx(0.624, abs=1e-3)
    assert up.above.high / down.above.low == pytest.approx(2.57, abs=0.01)
    assert up.hand.high == pytest.approx(up.above.high / 2.71)
    assert down.hand.low == pytest.approx(down.above.low / (1 + 1 / 0.9 + 1 / 0.81))


@pytest.mark.parametrize("system", ["1:1", "2:1", "3:1", "5:1", "6:1", "9:1", "complex 5:1"])
@pytest.mark.parametrize("edge", ["bare", "pulley"])
def test_held_lies_between_lowering_and_raising(system: str, edge: str) -> None:
    result = at(system=system, edge=edge)
    held, up, down = (
        result.ways[way].hand for way in (Direction.HOLDING, Direction.HAULING, Direction.LOWERING)
    )
    assert held.low == pytest.approx(down.low)
    assert held.high == pytest.approx(up.high)
    assert held.low < result.without_friction < held.high


@pytest.mark.parametrize(("turn", "axle"), [(30, 0.973), (60, 0.949), (90, 0.928)])
def test_an_edge_pulley_keeps_between_two_models(turn: float, axle: float) -> None:
    up = at(edge="pulley", turn=math.radians(turn)).ways[Direction.HAULING].above
    assert up.low == pytest.approx(WEIGHT / axle, rel=1e-3)
    assert up.high == pytest.approx(WEIGHT / 0.9)


def test_without_a_turn_the_edge_takes_nothing() -> None:
    result = at(turn=0.0)
    assert all(way.above.low == way.above.high == result.load for way in result.ways.values())


def test_poor_pulleys_make_the_complex_system_the_worse_one() -> None:
    simple, tangled = (at(system=s, efficiency=0.7, turn=0.0) for s in ("5:1", "complex 5:1"))
    assert tangled.ways[Direction.HAULING].hand.high > simple.ways[Direction.HAULING].hand.high


@pytest.mark.parametrize(("direction", "word"), [("hauling", "Raising"), ("holding", "Holding")])
def test_the_words_say_which_way(direction: str, word: str) -> None:
    words = THREE_TENSIONS.summary(at(direction=direction), Display())
    assert words.startswith(word)
    assert "raise 1.16 kN, hold 0.366 to 1.16 kN, lower 0.366 kN" in words


def test_the_table_has_a_row_for_every_strand() -> None:
    result = at(system="9:1")
    assert THREE_TENSIONS.table is not None
    rows = THREE_TENSIONS.table(result, Display())
    assert rows[0] == ("", "raise", "hold", "lower")
    assert len(rows) == len(result.system.strands) + 3


def test_what_changes_nothing_cannot_be_moved() -> None:
    assert "friction" in THREE_TENSIONS.idle(START | {"edge": "pulley"})
    assert "efficiency" in THREE_TENSIONS.idle(START | {"system": "1:1"})
    assert THREE_TENSIONS.idle(START) == {}
