"""Rope that is followed piece by piece, and a load at which nothing of the margin is left."""

import pytest

from ropecalc.mechanics.guiding import line_tension_from_places
from ropecalc.mechanics.raise_limits import governing_tension, stop_value, track_rope
from ropecalc.mechanics.strength import margin


def test_a_line_followed_piece_by_piece() -> None:
    to_the_grab = (3.0**2 + 4.0**2) ** 0.5 + (30.0**2 + 40.0**2) ** 0.5 - 7.0
    rope = track_rope(setback=9.0, track_length=55.0, gap=7.0, line_tail=12.0)
    assert rope == pytest.approx(9.0 + to_the_grab + 12.0)


def test_at_the_stop_value_the_margin_is_just_kept() -> None:
    uncertain = {"load_uncertainty": 0.3, "strength_uncertainty": 0.1}
    stop = stop_value(strength=8000.0, margin=4.0, **uncertain)
    assert 1.3 * stop * 4.0 == pytest.approx(0.9 * 8000.0)
    assert margin(strength=8000.0, component_load=stop, **uncertain) == pytest.approx(4.0)


@pytest.mark.parametrize("turn", [0, 1, 2])
def test_the_largest_of_three_in_any_order(turn: int) -> None:
    rig = {"load": 2000.0, "x_D": 0.3, "z_D": 32.0, "x_B": 40.0, "z_B": 0.5}
    stations = [(8.0, 2.0), (2.2, 26.5), (1.0, 29.0)]
    stations = stations[turn:] + stations[:turn]
    places = {
        f"{n}_{i}": value
        for i, at in enumerate(stations, 1)
        for n, value in zip("xz", at, strict=True)
    }
    largest = max(line_tension_from_places(x=x, z=z, **rig) for x, z in stations)
    assert governing_tension(**rig, **places) == pytest.approx(largest)
    assert largest == pytest.approx(1100.0, abs=1.0)
