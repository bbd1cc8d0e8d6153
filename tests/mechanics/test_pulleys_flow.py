"""Pulley systems against elastic ropes that stick and slip over their sheaves."""

import pytest

from ropecalc.mechanics.pulleys import (
    common_system,
    forces,
    travel,
)
from tests.mechanics.rope_flow import RopeFlow
from tests.mechanics.test_pulleys import equaliser

LOAD = 2000.0


@pytest.mark.parametrize(
    ("name", "efficiency"),
    [
        ("1:1", 0.8), ("2:1", 0.9), ("3:1", 0.9), ("3:1", 0.6), ("4:1", 0.85),
        ("piggy-back 4:1", 0.9), ("6:1", 0.9), ("9:1", 0.92), ("complex 5:1", 0.9),
    ],
)  # fmt: skip
@pytest.mark.parametrize("redirect", [False, True])
def test_pulled_in_let_out_and_stopped_on_the_way(
    name: str, efficiency: float, redirect: bool
) -> None:
    system = common_system(name, height=4.0, redirect=redirect)
    ratio = float(travel(system).ratio)
    flow = RopeFlow.of(system, load=LOAD, efficiency=efficiency, start=700.0)
    flow.settle()
    flow.take_in(0.25 * ratio, step=5e-4 * ratio)
    up = forces(system, "hauling", load=LOAD, efficiency=efficiency)
    assert flow.tension(flow.hand) == pytest.approx(up.hand_pull.low, rel=2e-3)
    for number, band in enumerate(up.strands.values()):
        assert flow.tension(number) == pytest.approx(band.low, rel=3e-3)

    held = forces(system, "holding", load=LOAD, efficiency=efficiency)
    for _ in range(8):  # let out a little at a time: still held by friction, somewhere in between
        flow.take_in(-0.002 * ratio, step=5e-4 * ratio)
        for number, band in enumerate(held.strands.values()):
            assert band.low * (1 - 3e-3) <= flow.tension(number) <= band.high * (1 + 3e-3)

    flow.take_in(-0.25 * ratio, step=5e-4 * ratio)
    down = forces(system, "lowering", load=LOAD, efficiency=efficiency)
    assert flow.tension(flow.hand) == pytest.approx(down.hand_pull.low, rel=2e-3)
    for number, band in enumerate(down.strands.values()):
        assert flow.tension(number) == pytest.approx(band.low, rel=3e-3)


def test_the_simulator_knows_a_plain_answer() -> None:
    """A load on one rope carries itself and stretches by Hooke; taking in rope lifts it."""
    flow = RopeFlow.of(common_system("1:1", height=4.0), load=1000.0, efficiency=0.9, start=50.0)
    flow.settle()
    assert flow.tension(0) == pytest.approx(1000.0, abs=1e-3)
    before = flow.stations[0]
    flow.take_in(0.5)
    assert before - flow.stations[0] == pytest.approx(0.5 * (1 + 1000.0 / 2e5), rel=1e-6)


def test_a_sheave_at_rest_keeps_what_it_was_given() -> None:
    flow = RopeFlow.of(equaliser(), load=LOAD, efficiency=0.8, start=700.0)
    flow.take_in(0.1)
    band = forces(equaliser(), "hauling", load=LOAD, efficiency=0.8).strands["loop: bar to pulley"]
    assert band.low < flow.tension(1) < band.high
    assert flow.tension(1) + flow.tension(2) == pytest.approx(LOAD, abs=1e-2)
