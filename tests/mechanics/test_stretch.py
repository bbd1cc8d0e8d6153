"""Stretch against published climbers, wires and rope standards, and a settled weight."""

from math import cos, pi, radians

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics import stretch as s
from ropecalc.mechanics.holding import Point
from tests.mechanics.settling import Rope, settle

SETTINGS = settings(derandomize=True, deadline=None, max_examples=60)
forces = st.floats(50, 2e4)
lengths = st.floats(1, 200)
stiffnesses = st.floats(5e3, 1e6)


def stiffness_of(modulus: float, diameter: float) -> float:
    """EA of a round bar; the modulus is an input of each published problem."""
    return modulus * pi * diameter**2 / 4


@pytest.mark.parametrize(
    ("tension", "length", "stiffness", "stretch", "within"),
    [
        # OpenStax, University Physics 1: climber of 65.0 kg on 35.0 m of 0.800 cm nylon, g 9.80
        (65.0 * 9.80, 35.0, stiffness_of(1.35e9, 0.008), 0.329, 0.0005),
        # OpenStax, College Physics 2e: the same climber with that book's modulus, to one figure
        (65.0 * 9.80, 35.0, stiffness_of(5e9, 0.008), 0.09, 0.005),
        # OpenStax, College Physics 2e, example 5.3: gondola cable, to two figures
        (3.0e6, 3020.0, stiffness_of(210e9, 0.056), 18.0, 0.5),
        # OpenStax, University Physics 1: tightrope wire of 0.50 cm between poles 15 m off, at 5.0°
        (3.94e3, 15.0 / cos(radians(5.0)), stiffness_of(2.1e11, 0.005), 0.0144, 0.00005),
    ],
)
def test_published_stretch(
    tension: float, length: float, stiffness: float, stretch: float, within: float
) -> None:
    found = s.stretch(rope_tension=tension, rope_length=length, stiffness=stiffness)
    assert found == pytest.approx(stretch, abs=within)


def test_published_modulus() -> None:
    # OpenStax, University Physics 1: 90 kg stretch 30.0 m of 1.0 cm rope by 25.0 cm: 1.35e9 Pa
    stiffness = s.stiffness_from_two_loads(load_step=90 * 9.80, elongation=0.25 / 30.0)
    assert stiffness / stiffness_of(1.0, 0.01) == pytest.approx(1.35e9, rel=0.002)


def test_rope_standards() -> None:
    # EN 1891:1998, as quoted in summaries of it: at most 5 % between 50 kg and 150 kg
    least = s.stiffness_from_two_loads(load_step=100 * 9.80665, elongation=0.05)
    assert least == pytest.approx(19_613, abs=1)
    # NFPA 1983, as quoted by gear makers: 1 % to 10 % at a tenth of the breaking strength
    for share, expected in ((0.01, 400e3), (0.10, 40e3)):
        quoted = s.stiffness_from_quoted_elongation(breaking_strength=40e3, quoted_elongation=share)
        assert quoted == pytest.approx(expected, rel=1e-12)


def test_independent_calculation_made_for_this_project() -> None:
    assert s.stretch(rope_tension=2000, rope_length=70, stiffness=50e3) == pytest.approx(2.8)
    stiffness = s.stiffness_from_quoted_elongation(breaking_strength=30e3, quoted_elongation=0.03)
    assert s.stretch(rope_tension=1200, rope_length=60, stiffness=stiffness) == pytest.approx(0.72)


def test_a_weight_that_settles_on_an_elastic_rope() -> None:
    for load, length, stiffness in ((800.0, 7.0, 20e3), (2600.0, 31.0, 90e3)):
        rope = Rope((Point(0.0, 40.0),), length, stiffness)
        rest = settle(load, (rope,), (0.5, 40.0 - length))
        expected = s.stretch(rope_tension=load, rope_length=length, stiffness=stiffness)
        assert 40.0 - rest.z == pytest.approx(length + expected, abs=1e-6)


@SETTINGS
@given(forces, lengths, stiffnesses)
def test_there_and_back(tension: float, length: float, stiffness: float) -> None:
    grown = length + s.stretch(rope_tension=tension, rope_length=length, stiffness=stiffness)
    back = s.unstretched_length(stretched_length=grown, rope_tension=tension, stiffness=stiffness)
    assert back == pytest.approx(length, rel=1e-12)


@SETTINGS
@given(forces, lengths, stiffnesses, st.floats(0.1, 0.9))
def test_two_pieces_in_a_row_and_two_ropes_side_by_side(
    tension: float, length: float, stiffness: float, share: float
) -> None:
    whole = s.stretch(rope_tension=tension, rope_length=length, stiffness=stiffness)
    pieces = [
        s.stretch(rope_tension=tension, rope_length=part * length, stiffness=stiffness)
        for part in (share, 1 - share)
    ]
    assert sum(pieces) == pytest.approx(whole, rel=1e-12)
    half = s.stretch(rope_tension=tension / 2, rope_length=length, stiffness=stiffness)
    double = s.stretch(rope_tension=tension, rope_length=length, stiffness=2 * stiffness)
    assert half == pytest.approx(whole / 2, rel=1e-12)
    assert double == pytest.approx(whole / 2, rel=1e-12)


def test_both_tests_of_a_rope_agree_for_a_linear_rope() -> None:
    quoted = s.stiffness_from_quoted_elongation(breaking_strength=30e3, quoted_elongation=0.03)
    loads = s.stiffness_from_two_loads(load_step=3000.0, elongation=0.03)
    assert quoted == pytest.approx(loads, rel=1e-12)


def test_refusals_and_cautions() -> None:
    with pytest.raises(DomainError, match="rope_tension"):
        s.stretch(rope_tension=0.0, rope_length=10, stiffness=5e4)
    with pytest.raises(DomainError, match="quoted_elongation"):
        s.stiffness_from_quoted_elongation(breaking_strength=3e4, quoted_elongation=0.0)
    with pytest.raises(DomainError, match="elongation"):
        s.stiffness_from_two_loads(load_step=1000.0, elongation=1.01)
    assert s.stretch.cautions[:2] == (s.ELASTIC, s.BOTH_BOUNDS)
    for tested in (s.stiffness_from_quoted_elongation, s.stiffness_from_two_loads):
        assert "new, dry rope" in tested.cautions[0]
        assert s.ELASTIC in tested.cautions and s.FAST in tested.cautions
    assert s.FAST not in s.stretch.cautions and "peak can be higher" in s.FAST
    assert cautions.STRETCHING in s.stretch.cautions
    assert "in proportion to their tension; all others keep" in cautions.STRETCHING
    assert "larger force" in s.BOTH_BOUNDS and "smaller clearance" in s.BOTH_BOUNDS


@pytest.mark.parametrize("tension", [500.0, 1200.0, 3000.0])
def test_stretch_from_the_quoted_elongation_metre_by_metre(tension: float) -> None:
    """Sixty pieces of a metre, each longer in proportion to the test's tension."""
    breaking, quoted = 30_000.0, 0.03
    each = quoted * tension / (0.1 * breaking)
    found = s.stretch_from_quoted_elongation(
        rope_tension=tension,
        rope_length=60.0,
        breaking_strength=breaking,
        quoted_elongation=quoted,
    )
    assert found == pytest.approx(sum([each] * 60))
    stiffness = s.stiffness_from_quoted_elongation(
        breaking_strength=breaking, quoted_elongation=quoted
    )
    settled = settle(tension, (Rope((Point(0.0, 100.0),), 60.0, stiffness),), (0.0, 39.0))
    assert found == pytest.approx(100.0 - settled.z - 60.0, rel=1e-4)


def test_a_tenth_of_the_breaking_strength_is_taken_exactly() -> None:
    stiffness = s.stiffness_from_quoted_elongation(
        breaking_strength=30_007.0, quoted_elongation=0.03
    )
    assert stiffness == pytest.approx(3000.7 / 0.03, rel=1e-12)
