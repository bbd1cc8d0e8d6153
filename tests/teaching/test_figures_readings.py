"""Cells at named places: what they show against a walk along the rope, and what it can mean."""

from typing import Any

import numpy as np
import pytest

from ropecalc.mechanics.measurement import LastMove
from ropecalc.teaching.figures import READINGS
from ropecalc.teaching.figures.readings import ALL, FAR, TIED, Readings
from ropecalc.units import Display

START = READINGS.start


def at(**values: Any) -> Readings:
    result: Readings = READINGS.compute(START | values)
    return result


def words(**values: Any) -> str:
    return READINGS.summary(at(**values), Display())


def shown(result: Readings) -> dict[str, tuple[float, float]]:
    return {c.name: (c.shows.low, c.shows.high) for c in result.cells}


def test_the_reference_raise() -> None:
    """Two lines in series, sheaves of 0.9, 2.5 m out at 27 m: an independent calculation."""
    cells = shown(at())
    assert cells["haul line"][0] == pytest.approx(1580, rel=0.01)
    assert cells["near line"] == pytest.approx((690, 850), rel=0.01)
    assert cells["hub, all lines"][0] == pytest.approx(1530, rel=0.01)


@pytest.mark.parametrize(("move", "power"), [(LastMove.TAKEN_IN, 1), (LastMove.LET_OUT, -1)])
@pytest.mark.parametrize("lines", [1, 2, 3, 4])
def test_a_walk_along_the_rope(move: LastMove, power: int, lines: int) -> None:
    result = at(last_move=move.value, lines=float(lines), efficiency=0.8)
    strands = 0.8 ** (power * np.arange(2.0 * lines))
    strands *= result.held.line_tension / strands.sum()
    cells = shown(result)
    near = "only line" if lines == 1 else "near line"
    assert cells[near] == pytest.approx((strands[:2].sum(),) * 2)
    assert cells["strand at the device"] == pytest.approx((strands[0],) * 2)
    assert cells["tied-off strand"] == pytest.approx((strands[-1],) * 2)


def test_every_history_that_friction_allows_lies_in_the_range() -> None:
    rng = np.random.default_rng(11)
    result = at(lines=3.0, efficiency=0.85, strand=TIED, wanted=FAR, reading=700.0)
    band = result.inferred[LastMove.NOT_RECORDED]
    found = []
    for _ in range(300):
        steps = 0.85 ** rng.uniform(-1, 1, 5)
        strands = np.cumprod(np.concatenate([[1.0], steps]))
        strands *= 700.0 / strands[-1]
        found.append(strands[-2:].sum())
    assert band.low <= min(found) and max(found) <= band.high
    assert max(found) - min(found) > 0.9 * (band.high - band.low)


def test_the_same_reading_after_opposite_moves() -> None:
    """Three lines, sheaves of 0.85: all lines together differ by 0.85 to the fifth."""
    result = at(lines=3.0, efficiency=0.85, wanted=ALL)
    into, out = (result.inferred[m].low for m in (LastMove.TAKEN_IN, LastMove.LET_OUT))
    assert out / into == pytest.approx(2.25, abs=0.005)


def test_a_large_cell_tells_little_of_a_small_force() -> None:
    result = at(full_scale=40_000.0, cell_error=0.01)
    hub = next(c for c in result.cells if c.name.startswith("hub"))
    assert result.error_share(hub) == pytest.approx(400 / hub.shows.low)
    wide = result.with_error(LastMove.HANDED_OVER)
    assert wide.low == pytest.approx(400 * 1.9)  # 800 N read, 400 N off
    assert "tells nothing" in words(full_scale=50_000.0, cell_error=0.02)


def test_haul_line_and_hub_weigh_the_load() -> None:
    result = at()
    assert result.agreement is not None
    assert result.agreement.band.low < result.load < result.agreement.band.high
    assert result.agreement.implied == pytest.approx(result.load)


def test_what_cannot_be_read_is_said() -> None:
    assert "no tension" in words(height=31.0)
    assert at(height=31.0).cells == ()
    assert "beyond full scale" in words(full_scale=2000.0, mass=290.0, height=28.0)
    assert "beyond the full scale" in words(full_scale=2000.0, reading=2500.0)
