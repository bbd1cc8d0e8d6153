"""Two places compared: balances solved as linear systems, and rope measured along its way."""

from math import dist, hypot

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.two_stations import (
    quick_play,
    tag_paid_out,
    tension_directional_moved,
    tension_ratio,
    track_taken_in,
)

RIG = {"x_D": 0.3, "z_D": 32.0, "x_B": 40.0, "z_B": 0.5}
WAY = {"x_1": 7.8, "z_1": 1.0, "x_2": 2.0, "z_2": 25.0}


def balance(x: float, z: float, directional: float = 0.3, load: float = 2000.0) -> float:
    """Tension to the hub: two unknown pulls, two equations."""
    up = np.array([directional - x, 32.0 - z])
    down = np.array([40.0 - x, 0.5 - z])
    legs = np.array([up / hypot(*up), down / hypot(*down)]).T
    return float(np.linalg.solve(legs, [0.0, load])[1])


@pytest.mark.parametrize(("low", "high"), [(6.0, 27.0), (3.0, 22.0), (10.0, 10.0)])
def test_the_same_distance_out_at_two_heights(low: float, high: float) -> None:
    ratio = tension_ratio(x=2.5, z_1=low, z_2=high, **RIG)
    assert ratio == pytest.approx(balance(2.5, high) / balance(2.5, low))


def test_an_independent_calculation_made_for_this_project() -> None:
    assert tension_ratio(x=2.5, z_1=6.0, z_2=27.0, **RIG) == pytest.approx(9.03, abs=0.005)
    moved = tension_directional_moved(load=2000.0, x=2.5, z=27.0, moved_out=0.5, **RIG)
    assert moved == pytest.approx(1100.0, abs=5.0)
    anchors = {"x_A": 0.3, "z_A": 32.0, "x_B": 40.0, "z_B": 0.5}
    assert track_taken_in(**WAY, **anchors) == pytest.approx(11.7, abs=0.05)
    assert quick_play(cliff=30.0, hub_distance=60.0) == pytest.approx(22.9, abs=0.05)
    assert tag_paid_out(**WAY, x_B=40.0, z_B=0.5) == pytest.approx(13.0, abs=0.05)


@pytest.mark.parametrize("moved", [0.0, 0.4, 1.0])
def test_a_directional_that_stands_elsewhere(moved: float) -> None:
    tension = tension_directional_moved(load=2000.0, x=2.5, z=27.0, moved_out=moved, **RIG)
    assert tension == pytest.approx(balance(2.5, 27.0, directional=0.3 + moved))


def test_a_directional_cannot_be_moved_past_the_litter() -> None:
    with pytest.raises(DomainError, match="further out than the haul directional"):
        tension_directional_moved(load=2000.0, x=2.5, z=27.0, moved_out=2.2, **RIG)


def test_both_heights_are_checked() -> None:
    for heights in ({"z_1": 6.0, "z_2": 31.0}, {"z_1": 31.0, "z_2": 6.0}):
        with pytest.raises(DomainError, match="inside the straight line"):
            tension_ratio(x=2.5, **heights, **RIG)


def test_rope_along_its_way() -> None:
    top, hub = (0.3, 33.0), (40.0, 0.5)
    taken = track_taken_in(**WAY, x_A=0.3, z_A=33.0, x_B=40.0, z_B=0.5)
    first = dist(top, (7.8, 1.0)) + dist((7.8, 1.0), hub)
    second = dist(top, (2.0, 25.0)) + dist((2.0, 25.0), hub)
    assert taken == pytest.approx(first - second)
    out = tag_paid_out(**WAY, x_B=40.0, z_B=0.5)
    assert out == pytest.approx(dist((2.0, 25.0), hub) - dist((7.8, 1.0), hub))


def test_there_and_back_is_nothing() -> None:
    back = {"x_1": 2.0, "z_1": 25.0, "x_2": 7.8, "z_2": 1.0}
    ends = {"x_B": 40.0, "z_B": 0.5}
    track = {"x_A": 0.3, "z_A": 32.0, **ends}
    assert track_taken_in(**WAY, **track) == pytest.approx(-track_taken_in(**back, **track))
    assert tag_paid_out(**WAY, **ends) == pytest.approx(-tag_paid_out(**back, **ends))


def test_the_quick_estimate_is_the_raise_from_foot_to_directional() -> None:
    ends = {"x_A": 0.0, "z_A": 28.0, "x_B": 45.0, "z_B": 0.0}
    whole = track_taken_in(x_1=0.0, z_1=0.0, x_2=0.0, z_2=28.0, **ends)
    assert quick_play(cliff=28.0, hub_distance=45.0) == pytest.approx(whole)
    assert quick_play(cliff=3.0, hub_distance=4.0) == pytest.approx(2.0)
