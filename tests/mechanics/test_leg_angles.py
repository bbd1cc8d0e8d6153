"""The legs' angles against directions between places, without any formula for a slope."""

import cmath
from math import degrees, pi

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.leg_angles import ground_depression, haul_elevation

PLACES = pytest.mark.parametrize(
    ("x", "z", "x_d", "z_d", "x_b", "z_b"),
    [
        (2.5, 27.0, 0.3, 32.0, 40.0, 0.5),
        (7.8, 1.0, 0.3, 32.0, 60.0, 3.5),
        (1.0, 8.0, 0.1, 9.0, 9.0, 9.0),
    ],
)


@PLACES
def test_the_legs_point_where_the_places_are(
    x: float, z: float, x_d: float, z_d: float, x_b: float, z_b: float
) -> None:
    """The directions from the litter as complex numbers: their arguments are the angles."""
    litter = complex(x, z)
    to_directional, to_hub = complex(x_d, z_d) - litter, complex(x_b, z_b) - litter
    up = haul_elevation(x=x, z=z, x_D=x_d, z_D=z_d)
    down = ground_depression(x=x, z=z, x_B=x_b, z_B=z_b)
    assert up == pytest.approx(pi - cmath.phase(to_directional))
    assert down == pytest.approx(-cmath.phase(to_hub))


def test_a_published_case() -> None:
    assert degrees(haul_elevation(x=2.5, z=27.0, x_D=0.3, z_D=32.0)) == pytest.approx(
        66.3, abs=0.05
    )
    down = ground_depression(x=2.5, z=27.0, x_B=40.0, z_B=0.5)
    assert degrees(down) == pytest.approx(35.2, abs=0.05)


def test_beyond_the_places_that_make_sense() -> None:
    with pytest.raises(DomainError, match="further out than the haul directional"):
        haul_elevation(x=0.3, z=27.0, x_D=0.3, z_D=32.0)
    with pytest.raises(DomainError, match="fall to the litter"):
        haul_elevation(x=2.0, z=32.0, x_D=0.3, z_D=32.0)
    with pytest.raises(DomainError, match="hub must be further out"):
        ground_depression(x=40.0, z=27.0, x_B=40.0, z_B=0.5)
    heights = np.array([10.0, 27.0])
    masked = haul_elevation.masked(x=2.5, z=np.array([10.0, 33.0]), x_D=0.3, z_D=32.0)
    assert list(np.ma.getmaskarray(masked)) == [False, True]
    assert np.all(np.diff(ground_depression(x=2.5, z=heights, x_B=40.0, z_B=0.5)) > 0)


def test_a_nearly_level_haul_line_is_refused_also_from_a_directional_at_the_wall() -> None:
    """2 cm on 30 m; the directional is where distances are counted from."""
    with pytest.raises(DomainError, match="must fall to the litter"):
        haul_elevation(x=30.0, z=31.98, x_D=0.0, z_D=32.0)
    assert haul_elevation(x=30.0, z=31.9, x_D=0.0, z_D=32.0) == pytest.approx(0.1 / 30, rel=1e-4)
