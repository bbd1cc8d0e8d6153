"""Against a locked tensioner: a rope of the same length, found by search, and least energy."""

from math import dist

import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from ropecalc.derivation import DomainError
from ropecalc.mechanics.holding import Point, Rig
from ropecalc.mechanics.locked import move_locked
from ropecalc.mechanics.locked_moves import lowered_tension, raised_offset
from tests.mechanics.settling import Rope, settle

TOP, HUB = (0.3, 32.0), (40.0, 0.5)
RIG = {"x_D": 0.3, "z_D": 32.0, "x_B": 40.0, "z_B": 0.5}


def way(x: float, z: float) -> float:
    return dist(TOP, (x, z)) + dist((x, z), HUB)


FROM_TOP = {"hub_run": 39.7, "hub_fall": 31.5}
START = {"off_plumb": 2.2, "drop": 5.0, **FROM_TOP}


def searched(start: tuple[float, float], z: float) -> float:
    """The place on the wall's side where the rope is as long as at ``start``."""
    shortest = minimize_scalar(lambda x: way(x, z), bounds=(0.3, 40.0), method="bounded").x
    near, far = 0.3, float(shortest)
    for _ in range(100):
        middle = (near + far) / 2
        near, far = (middle, far) if way(middle, z) > way(*start) else (near, middle)
    return near


@pytest.mark.parametrize("raised", [0.5, 2.0, 4.0])
def test_raised_it_is_where_the_rope_is_as_long_again(raised: float) -> None:
    found = raised_offset(x_1=8.0, z_1=2.0, raised=raised, **RIG)
    assert found == pytest.approx(searched((8.0, 2.0), 2.0 + raised), abs=1e-6)
    assert 0.3 < found < 8.0


@pytest.mark.parametrize("lowered", [0.5, 2.0, 3.0])
def test_lowered_it_settles_where_the_energy_is_least(lowered: float) -> None:
    """Ropes that hardly stretch: haul line as long as the move makes it, track as before."""
    load, z = 2000.0, 27.0 - lowered
    x = searched((2.5, 27.0), z)
    stiff = 1e9
    ropes = (
        Rope((Point(*TOP),), dist(TOP, (x, z)), stiff),
        Rope((Point(*TOP), Point(*HUB)), way(2.5, 27.0), stiff),
    )
    rest = settle(load, ropes, (x, z))
    assert (rest.x, rest.z) == pytest.approx((x, z), abs=1e-3)
    tension = lowered_tension(load=load, lowered=lowered, **START)
    assert tension == pytest.approx(rest.tensions[1], rel=2e-3)


def test_an_independent_calculation_made_for_this_project() -> None:
    assert raised_offset(x_1=8.0, z_1=2.0, raised=4.0, **RIG) == pytest.approx(3.62, abs=0.005)
    load = 200 * 9.80665
    tension = lowered_tension(load=load, lowered=3.0, **START)
    assert tension == pytest.approx(2448.0, abs=1.0)


def test_the_same_as_the_solver_for_many_moves() -> None:
    rig = Rig(Point(*TOP), Point(*TOP), Point(*HUB))
    rng = np.random.default_rng(5)
    for _ in range(25):
        x, z, down = rng.uniform(1.5, 2.8), rng.uniform(25.0, 27.5), rng.uniform(0.5, 4.0)
        there = move_locked(rig, 2000.0, x, z, new_z=z - down, stiffness=50e3).rigid
        tension = lowered_tension(
            load=2000.0, off_plumb=x - 0.3, drop=32.0 - z, lowered=down, **FROM_TOP
        )
        assert tension == pytest.approx(there.forces.line_tension)


def test_what_the_rope_does_not_allow_is_refused() -> None:
    with pytest.raises(DomainError, match="hangs plumb"):
        raised_offset(x_1=8.0, z_1=2.0, raised=9.0, **RIG)
    with pytest.raises(DomainError, match="track line alone carries it"):
        lowered_tension(load=2000.0, lowered=27.3, **START)
    with pytest.raises(DomainError, match="inside the straight line"):
        lowered_tension(load=2000.0, lowered=1.0, **{**START, "off_plumb": 6.7})
    with pytest.raises(DomainError, match="not be as far out as the hub"):
        lowered_tension(load=2000.0, lowered=1.0, **{**START, "off_plumb": 40.0})
    with pytest.raises(DomainError, match="inside the straight line"):
        raised_offset(x_1=7.0, z_1=27.0, raised=1.0, **RIG)
    with pytest.raises(DomainError, match="before and afterwards"):
        raised_offset(x_1=1.0, z_1=29.0, raised=4.0, **RIG)


def test_right_below_the_directional_it_is_not_raised_against_anything() -> None:
    with pytest.raises(DomainError, match="further out than the directional"):
        raised_offset(x_1=0.3, z_1=20.0, raised=1.0, **RIG)


def test_the_same_as_the_solver_where_the_hub_is_near_below() -> None:
    """The rope is much longer than the hub is far out: it hangs down steeply on both sides."""
    rig = Rig(Point(0.0, 32.0), Point(0.0, 32.0), Point(14.0, 4.0))
    there = move_locked(rig, 2000.0, 3.0, 24.0, new_z=21.0, stiffness=50e3).rigid
    place = {"off_plumb": 3.0, "drop": 8.0, "hub_run": 14.0, "hub_fall": 28.0}
    tension = lowered_tension(load=2000.0, lowered=3.0, **place)
    assert tension == pytest.approx(there.forces.line_tension)
