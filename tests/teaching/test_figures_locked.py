"""Against a locked tensioner: the ellipse, the stretch, and what cannot be."""

from math import hypot
from typing import Any

import numpy as np
import pytest
from scipy.optimize import minimize

from ropecalc.teaching.drawing import REACH_DOWN
from ropecalc.teaching.figures import FIGURES
from ropecalc.teaching.figures.locked import LockedMove
from ropecalc.units import Display

FIGURE = FIGURES["locked-tensioner"]


def at(**values: Any) -> LockedMove:
    result: LockedMove = FIGURE.compute(FIGURE.start | values)
    return result


def words(**values: Any) -> str:
    return FIGURE.summary(at(**values), Display())


def test_the_reference_values_are_in_the_words() -> None:
    text = words()
    assert "lowered by 3.00 m to 24.0 m" in text
    assert "before: 1.53 kN" in text
    assert "4.38 m out, 1.81 kN (18 % more)" in text
    assert "5.17 m out, 2.45 kN (60 % more)" in text


@pytest.mark.parametrize(
    ("stiffness", "tension"), [(100e3, 1940.0), (50e3, 1810.0), (20e3, 1680.0)]
)
def test_the_softer_the_rope_the_less_the_tension_rises(stiffness: float, tension: float) -> None:
    _, elastic, rigid = at(stiffness=stiffness).at(-1)
    assert elastic.forces.line_tension == pytest.approx(tension, abs=6)
    assert rigid.forces.line_tension == pytest.approx(2448, abs=1)


def test_two_lines_are_as_stiff_as_one_of_twice_the_stiffness() -> None:
    two, one = at(lines=2, stiffness=50e3).at(-1)[1], at(lines=1, stiffness=100e3).at(-1)[1]
    assert two.x == pytest.approx(one.x)


def test_raising_swings_the_litter_in() -> None:
    _, elastic, rigid = at(start_x=8.0, start_z=2.0, move=4.0).at(-1)
    assert rigid.x == pytest.approx(3.62, abs=0.01)
    assert elastic.x == pytest.approx(3.95, abs=0.01)
    assert "hangs plumb" in words(start_x=8.0, start_z=2.0, move=10.0)
    assert "the litter is at the wall" in words(start_x=8.0, start_z=2.0, move=10.0)


@pytest.mark.parametrize("move", [-6.0, -3.0, 1.5])
@pytest.mark.parametrize("stiffness", [20e3, 80e3])
def test_where_a_stretching_line_settles_has_the_least_energy(
    move: float, stiffness: float
) -> None:
    """The haul line is stiff; litter and track line settle where their energy is least."""
    result = at(move=move, stiffness=stiffness)
    height, elastic, _ = result.at(-1)
    haul, hub = result.rig.haul_directional, result.rig.hub

    def rope(x: float, z: float) -> float:
        return hypot(x - haul.x, haul.z - z) + hypot(hub.x - x, z - hub.z)

    assert result.along is not None
    before = float(result.along.before.forces.line_tension)
    loose = rope(result.start.x, result.start.z) / (1 + before / stiffness)
    hauled = hypot(elastic.x - haul.x, haul.z - height)  # the haul line's length at the end

    def energy(angle: Any) -> float:
        x, z = haul.x + hauled * np.sin(angle[0]), haul.z - hauled * np.cos(angle[0])
        stretch = max(rope(x, z) - loose, 0.0)
        return float(result.load * z + stiffness * stretch**2 / (2 * loose))

    found = minimize(energy, [0.4], method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-9})
    assert haul.x + hauled * np.sin(found.x[0]) == pytest.approx(elastic.x, abs=0.003)


def test_the_ground_ends_the_way_down() -> None:
    result = at(start_z=6.0, start_x=2.5, move=-10.0)
    assert result.new_z == pytest.approx(REACH_DOWN)
    assert "stands on the ground" in words(start_z=6.0, start_x=2.5, move=-10.0)


def test_what_cannot_be_is_said_without_numbers() -> None:
    for values, part in (
        ({"start_x": 9.0, "start_z": 27.0}, "straight line"),
        ({"start_z": 27.0, "move": 6.0}, "at or above a directional"),
        ({"start_z": 30.0, "start_x": 2.5, "move": -1.0}, "Too sensitive here"),
    ):
        text = words(**values)
        assert part in text
        assert "Allow for" not in text
        assert FIGURE.table is not None
        assert FIGURE.table(at(**values), Display()) == ()


def test_the_table_goes_from_the_start_to_the_new_height() -> None:
    assert FIGURE.table is not None
    rows = FIGURE.table(at(), Display())
    assert rows[1] == ("27.0 m", "2.50 m", "1.53 kN", "2.50 m", "1.53 kN")
    assert rows[-1] == ("24.0 m", "4.38 m", "1.81 kN", "5.17 m", "2.45 kN")
    raised = FIGURE.table(at(start_x=8.0, start_z=2.0, move=10.0), Display())
    assert raised[-1][-1] == "slack"


def test_not_moved_is_as_before() -> None:
    assert "stays there" in words(move=0.0)
    assert "(as before)" in words(move=0.0)
