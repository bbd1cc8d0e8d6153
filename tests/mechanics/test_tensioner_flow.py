"""The series tensioner against an elastic rope that sticks and slips over its sheaves."""

import pytest

from ropecalc.mechanics.pulleys import series_tensioner_system
from ropecalc.mechanics.tensioner import equalise, series_tensioner
from tests.mechanics.rope_flow import RopeFlow

LOAD = 2000.0


def tensioned(lines: int, efficiency: float, *, stiff_lines: bool) -> RopeFlow:
    """The tensioner's rope on track lines whose far ends do not move; or whose pulleys do not."""
    system = series_tensioner_system(lines, play=6.0, height=20.0)
    flow = RopeFlow.of(system, load=0.0, efficiency=efficiency, start=200.0)
    for number, body in enumerate(system.bodies):
        if body.name == "load" or (stiff_lines and body.name.startswith("travelling pulley")):
            flow.hold_still(number)
    flow.settle()
    return flow


def line_tensions(flow: RopeFlow, lines: int) -> list[float]:
    """Both strands at each travelling pulley together, near line first; they come first."""
    return [flow.tension(2 * i) + flow.tension(2 * i + 1) for i in range(lines)]


def until(flow: RopeFlow, pull: float, step: float = 2e-4) -> None:
    """Take in or ease in small steps until the strand at the device carries ``pull``."""
    way = 1 if flow.tension(flow.hand) < pull else -1
    while way * (pull - flow.tension(flow.hand)) > 0:
        flow.take_in(way * step)


@pytest.mark.parametrize(("lines", "efficiency"), [(2, 0.9), (3, 0.8)])
def test_lines_in_series_in_and_out_and_what_they_remember(lines: int, efficiency: float) -> None:
    flow = tensioned(lines, efficiency, stiff_lines=False)
    flow.take_in(0.8)
    pulled = series_tensioner(
        "hauling", device_pull=flow.tension(flow.hand), lines=lines, efficiency=efficiency
    )
    assert line_tensions(flow, lines) == pytest.approx([t.low for t in pulled.lines], rel=2e-3)
    flow.take_in(-0.01)  # a small ease: the near line drops, the far one rises a few per cent
    eased = line_tensions(flow, lines)
    assert eased[0] < 0.99 * pulled.lines[0].low
    assert 1.0 <= eased[-1] / pulled.lines[-1].low <= 1.03
    held = series_tensioner(
        "holding", device_pull=flow.tension(flow.hand), lines=lines, efficiency=efficiency
    )
    for tension, band in zip(eased, held.lines, strict=True):
        assert band.low * (1 - 2e-3) <= tension <= band.high * (1 + 2e-3)
    while flow.tension(flow.hand) > 120.0:
        flow.take_in(-0.004)
    out = series_tensioner(
        "lowering", device_pull=flow.tension(flow.hand), lines=lines, efficiency=efficiency
    )
    assert line_tensions(flow, lines) == pytest.approx([t.low for t in out.lines], rel=3e-3)


@pytest.mark.parametrize(
    ("lines", "efficiency"), [(1, 0.9), (2, 0.9), (2, 0.75), (3, 0.9), (4, 0.9)]
)
def test_equalised_by_over_pull_and_ease(lines: int, efficiency: float) -> None:
    """While the travelling pulleys stay where they are, each line ends at the wanted tension."""
    plan = equalise(lines, each_line_tension=1000.0, efficiency=efficiency)
    flow = tensioned(lines, efficiency, stiff_lines=True)
    until(flow, plan.device_pulls[0])
    near = line_tensions(flow, lines)[0]
    assert near / 1000.0 - 1 == pytest.approx(plan.over_pull.high, abs=0.01)
    for number, pull in enumerate(plan.device_pulls[1:], 2):
        until(flow, pull)
        assert line_tensions(flow, lines)[-number:] == pytest.approx([1000.0] * number, rel=0.01)


@pytest.mark.parametrize("efficiency", [0.75, 0.9])
def test_over_pull_lies_between_lines_that_stay_and_a_litter_that_gives_way(
    efficiency: float,
) -> None:
    plan = equalise(2, each_line_tension=1000.0, efficiency=efficiency)
    for gives_way in (False, True):
        if gives_way:
            system = series_tensioner_system(2, play=6.0, height=20.0)
            flow = RopeFlow.of(system, load=LOAD, efficiency=efficiency, start=200.0)
            flow.settle()
        else:
            flow = tensioned(2, efficiency, stiff_lines=False)
        flow.take_in(1.2)
        near, far = line_tensions(flow, 2)
        peak = near
        while near > far:
            flow.take_in(-2e-3)
            near, far = line_tensions(flow, 2)
        over = peak / near - 1
        assert plan.over_pull.low - 5e-3 <= over <= plan.over_pull.high + 5e-3
        if gives_way:
            assert over == pytest.approx(plan.over_pull.low, abs=5e-3)
            assert far == pytest.approx(LOAD / 2, rel=6e-3)
            assert flow.tension(flow.hand) == pytest.approx(plan.device_pulls[-1], rel=1e-2)
        else:
            assert plan.over_pull.low + 0.02 < over < plan.over_pull.high - 0.02
