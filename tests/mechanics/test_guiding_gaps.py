"""Where directionals apart can hold a litter that one directional could not."""

from math import radians

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.guiding import (
    bridle_tilt,
    haul_tension_with_track_apart,
    track_tension_apart,
)

LOAD = 2000.0


@pytest.mark.parametrize(
    ("haul", "track", "ground"),
    [(20.0, 60.0, 10.0), (20.0, 60.0, 25.0), (60.0, 30.0, 10.0), (45.0, 45.0, -20.0)],
)
def test_forces_balance_wherever_the_condition_lets_them(
    haul: float, track: float, ground: float
) -> None:
    given = {
        "load": LOAD,
        "haul_elevation": radians(haul),
        "track_elevation": radians(track),
        "ground_depression": radians(ground),
    }
    held, line = haul_tension_with_track_apart(**given), track_tension_apart(**given)
    a, t, b = radians(haul), radians(track), radians(ground)
    # all strands lean back to the wall, except the ground leg, which runs out and down
    inward = held * np.cos(a) + line * np.cos(t) - line * np.cos(b)
    upward = held * np.sin(a) + line * np.sin(t) - line * np.sin(b) - LOAD
    assert inward == pytest.approx(0.0, abs=1e-9 * LOAD)
    assert upward == pytest.approx(0.0, abs=1e-9 * LOAD)
    assert line > 0


def test_beyond_the_line_from_track_directional_to_hub_nothing_holds() -> None:
    with pytest.raises(DomainError, match="inside the straight line"):
        track_tension_apart(
            load=LOAD,
            haul_elevation=radians(60.0),
            track_elevation=radians(32.0),
            ground_depression=radians(33.0),
        )


def test_a_line_to_a_high_hub_may_lift_almost_the_weight_but_no_more() -> None:
    # a pull of half the weight aside lifts all of it where the line rises at a slope of two
    almost, too_much = -np.arctan([1.99, 2.01])
    tilt = bridle_tilt(load=LOAD, side_pull=LOAD / 2, ground_depression=almost)
    assert np.tan(tilt) == pytest.approx(0.5 / (1 - 0.5 * 1.99))
    with pytest.raises(DomainError, match="must not lift more than the weight"):
        bridle_tilt(load=LOAD, side_pull=LOAD / 2, ground_depression=too_much)
