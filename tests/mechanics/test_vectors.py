"""Weight, a rope pulled aside and the sum of two pulls, against published values and vectors."""

import math

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.vectors import (
    kilonewtons_into_kilograms,
    lean_reach,
    level_part,
    pounds_into_kilonewtons,
    resultant_of_two,
    side_pull_angle,
    side_pull_offset,
    side_pull_tension,
    slanted_pull_angle,
    slanted_pull_tension,
    upward_part,
    weight,
)
from ropecalc.units import from_si


def test_weight() -> None:
    # NIST SP 811: standard gravity 9.80665 m/s², one kilogram-force is 9.80665 N
    assert weight(mass=1.0) == 9.80665
    assert from_si(weight(mass=200.0), "kgf") == pytest.approx(200.0, rel=1e-15)
    assert from_si(weight(mass=0.45359237 * 441), "lbf") == pytest.approx(441.0, rel=1e-15)


@pytest.mark.parametrize(
    ("one", "two", "angle", "resultant", "tolerance"),
    [
        (400.0, 300.0, 30.0, 676.6, 0.05),  # OpenStax, University Physics 1, section 5.1, exercise
        (3.0, 4.0, 90.0, 5.0, 1e-12),
        (2.0, 3.0, 60.0, 4.36, 0.005),  # an independent calculation made for this project
    ],
)
def test_two_pulls(
    one: float, two: float, angle: float, resultant: float, tolerance: float
) -> None:
    result = resultant_of_two(first_pull=one, second_pull=two, pull_angle=math.radians(angle))
    assert result == pytest.approx(resultant, abs=tolerance)


def test_three_pulls_on_one_ring() -> None:
    # University Physics 1, example 2.10: 160.0 N at -55°, 200.0 N at 30°, 140.0 N at 145°; the
    # balancing pull is 158.1 N (158.16 unrounded)
    pulls = [(160.0, -55.0), (200.0, 30.0), (140.0, 145.0)]
    first = resultant_of_two(first_pull=160.0, second_pull=200.0, pull_angle=math.radians(85.0))
    x, z = (sum(p * f(math.radians(a)) for p, a in pulls[:2]) for f in (math.cos, math.sin))
    turn = math.radians(145.0) - math.atan2(z, x)
    total = resultant_of_two(first_pull=first, second_pull=140.0, pull_angle=turn)
    assert total == pytest.approx(158.1, abs=0.1)


def test_two_forces_at_given_directions() -> None:
    # Baker & Haynes, Engineering Statics, section 2.6, example "Vector Addition": 200 N at 45°,
    # 300 N at 70° from the y axis (160° from the x axis); 281.6 N
    angle = math.radians(160.0 - 45.0)
    result = resultant_of_two(first_pull=200.0, second_pull=300.0, pull_angle=angle)
    assert result == pytest.approx(281.6, abs=0.05)


def test_any_two_pulls_as_vectors() -> None:
    rng = np.random.default_rng(46)
    one, two = rng.uniform(1, 5000, (2, 3000))
    turn, between = rng.uniform(0, 2 * math.pi, 3000), rng.uniform(0, math.pi, 3000)
    total = one * np.exp(1j * turn) + two * np.exp(1j * (turn + between))
    result = resultant_of_two(first_pull=one, second_pull=two, pull_angle=between)
    np.testing.assert_allclose(result, np.abs(total), rtol=1e-7, atol=1e-6)


def test_pulls_along_and_against_each_other() -> None:
    assert resultant_of_two(first_pull=3.0, second_pull=2.0, pull_angle=0.0) == 5.0
    against = resultant_of_two(first_pull=3.0, second_pull=2.0, pull_angle=math.pi)
    assert against == pytest.approx(1.0, rel=1e-12)


def test_a_horizontal_pull_that_holds_two_ropes_off_plumb() -> None:
    # University Physics 1, section 6.1, exercise: 30.0 kg; a rope 30.0° off plumb carries 170 N
    # of each half; with a level pull of W tan 30° the tension is W / cos 30°
    load = 30.0 * 9.80 / 2
    pull = load * math.tan(math.radians(30.0))
    assert math.degrees(side_pull_angle(load=load, side_pull=pull)) == pytest.approx(30.0)
    assert side_pull_tension(load=load, side_pull=pull) == pytest.approx(170, abs=0.5)


def test_half_a_kilonewton_beside_two() -> None:
    # an independent calculation made for this project: 14° off plumb
    assert math.degrees(side_pull_angle(load=2000.0, side_pull=500.0)) == pytest.approx(14, abs=0.1)


def test_the_leaning_rope_in_coordinates() -> None:
    rng = np.random.default_rng(47)
    load, pull = rng.uniform(500, 4000, 2000), rng.uniform(0, 4000, 2000)
    lean = side_pull_angle(load=load, side_pull=pull)
    tension = side_pull_tension(load=load, side_pull=pull)
    np.testing.assert_allclose(tension * np.exp(1j * lean), load + 1j * pull, rtol=1e-12)


def test_no_pull_no_lean() -> None:
    assert side_pull_angle(load=2000.0, side_pull=0.0) == 0.0
    assert side_pull_tension(load=2000.0, side_pull=0.0) == 2000.0


def test_the_same_force_in_other_units() -> None:
    # NIST SP 811, appendix B.8: 1 lbf = 4.448222 N, 1 kgf = 9.80665 N
    assert pounds_into_kilonewtons(pounds_force=1000.0) == pytest.approx(4.448222, rel=1e-3)
    assert kilonewtons_into_kilograms(kilonewtons=0.980665) == pytest.approx(100.0, rel=1e-3)


def test_the_parts_of_a_pull_make_it_up_again() -> None:
    # 300 N at 30°: a half-equilateral triangle
    assert upward_part(rope_tension=300.0, rope_elevation=math.pi / 6) == pytest.approx(150.0)
    assert level_part(rope_tension=300.0, rope_elevation=math.pi / 6) == pytest.approx(259.80762)


def test_a_slanted_pull_is_balanced_by_the_rope() -> None:
    rng = np.random.default_rng(8)
    load = rng.uniform(1200, 3000, 500)
    pull = rng.uniform(0, 1100, 500)
    up = rng.uniform(-0.7, 0.7, 500)
    given = {"load": load, "slanted_pull": pull, "pull_elevation": up}
    rope, lean = slanted_pull_tension(**given), slanted_pull_angle(**given)
    forces = pull * np.exp(1j * up) - 1j * load + rope * 1j * np.exp(1j * lean)
    assert np.max(np.abs(forces)) < 1e-8


def test_a_level_pull_is_a_slanted_pull_of_no_slope() -> None:
    level = {"load": 2000.0, "side_pull": 500.0}
    slanted = {"load": 2000.0, "slanted_pull": 500.0, "pull_elevation": 0.0}
    assert slanted_pull_angle(**slanted) == pytest.approx(side_pull_angle(**level))
    assert slanted_pull_tension(**slanted) == pytest.approx(side_pull_tension(**level))


def test_what_the_pull_lifts_off_its_rope_is_refused() -> None:
    with pytest.raises(DomainError, match="lower angle"):
        slanted_pull_angle(load=600.0, slanted_pull=1300.0, pull_elevation=math.pi / 6)


@pytest.mark.parametrize(("length", "moved"), [(5.0, 1.2), (30.0, 7.3)])
def test_how_far_half_a_kilonewton_moves_two(length: float, moved: float) -> None:
    # worked out for this project, apart from the library; also by energy, which is least at rest
    given = {"load": 2000.0, "side_pull": 500.0}
    result = side_pull_offset(rope_above=length, **given)
    assert result == pytest.approx(moved, abs=0.05)
    assert result == pytest.approx(lean_reach(rope_above=length, plumb_angle=math.atan2(1, 4)))

    def energy(x: float) -> float:
        return -2000.0 * math.sqrt(length**2 - x**2) - 500.0 * x

    assert energy(result) < min(energy(result - 1e-3), energy(result + 1e-3))
