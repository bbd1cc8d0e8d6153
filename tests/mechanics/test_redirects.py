"""Redirects and the lean of a high directional, against published values and vectors."""

import math

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.redirects import head_lean, redirect_resultant


@pytest.mark.parametrize(
    ("angle", "factor"),
    [
        (0, 2.00), (10, 1.99), (20, 1.97), (30, 1.93), (40, 1.87), (45, 1.84), (50, 1.81),
        (60, 1.73), (70, 1.64), (80, 1.53), (90, 1.41), (100, 1.29), (110, 1.15), (120, 1.00),
        (130, 0.84), (135, 0.76), (140, 0.68), (150, 0.52), (160, 0.35), (170, 0.17), (180, 0.0),
    ],
)  # fmt: skip
def test_angle_factors_of_hoist_blocks(angle: float, factor: float) -> None:
    # "angle factor multipliers", a table printed alike in three block makers' catalogues; some
    # entries are truncated
    pull = redirect_resultant(strand_tension=1.0, strand_angle=math.radians(angle))
    assert pull == pytest.approx(factor, abs=0.01)


@pytest.mark.parametrize(
    ("tension", "angle", "pull", "tolerance"),
    [
        (1000, 50, 1810, 0.008), (1000, 135, 760, 0.008),  # the same catalogues, worked example
        (100, 0, 200, 1e-12), (150, 100, 193.4, 0.004),  # a marine block guide, kg
    ],
)  # fmt: skip
def test_block_loads(tension: float, angle: float, pull: float, tolerance: float) -> None:
    result = redirect_resultant(strand_tension=tension, strand_angle=math.radians(angle))
    assert result == pytest.approx(pull, rel=tolerance)


def test_the_head_of_the_worked_case() -> None:
    # an independent calculation made for this project: strands 85° and 30° below the horizontal
    front, back = math.radians(85), math.radians(30)
    lean = head_lean(front_depression=front, back_depression=back)
    pull = redirect_resultant(strand_tension=1.0, strand_angle=math.pi - front - back)
    assert math.degrees(lean) == pytest.approx(27.5, abs=1e-9)
    assert pull == pytest.approx(1.687, abs=5e-4)


def test_the_resultant_as_a_sum_of_vectors() -> None:
    """Inward is negative x. Both strands pull the head; their sum has the size and the lean."""
    rng = np.random.default_rng(43)
    front, back = rng.uniform(0.001, math.pi / 2, (2, 3000))
    tension = rng.uniform(500, 5000, 3000)
    out = tension * (np.cos(front) - np.cos(back))
    up = -tension * (np.sin(front) + np.sin(back))
    pull = redirect_resultant(strand_tension=tension, strand_angle=np.pi - front - back)
    np.testing.assert_allclose(pull, np.hypot(out, up), rtol=1e-9, atol=1e-9)
    lean = head_lean(front_depression=front, back_depression=back)
    np.testing.assert_allclose(lean, np.arctan2(-out, -up), atol=1e-12)


def test_the_resultant_halves_the_angle_between_any_two_strands() -> None:
    rng = np.random.default_rng(44)
    one, between = rng.uniform(0, 2 * math.pi, 2000), rng.uniform(0, math.pi, 2000)
    strands = np.exp(1j * one) + np.exp(1j * (one + between))
    pull = redirect_resultant(strand_tension=1.0, strand_angle=between)
    np.testing.assert_allclose(pull, np.abs(strands), atol=1e-12)


def test_strands_that_change_places_lean_the_other_way() -> None:
    front, back = np.random.default_rng(45).uniform(0.01, math.pi / 2, (2, 500))
    np.testing.assert_allclose(
        head_lean(front_depression=front, back_depression=back),
        -head_lean(front_depression=back, back_depression=front),
        atol=1e-15,
    )


def test_a_plumb_strand_against_a_level_one_leans_half_a_right_angle_inward() -> None:
    lean = head_lean(front_depression=math.pi / 2, back_depression=0.0)
    assert math.degrees(lean) == pytest.approx(45.0)


def test_a_rope_that_does_not_turn_is_refused() -> None:
    with pytest.raises(DomainError, match="must turn through the pulley"):
        head_lean(front_depression=0.0, back_depression=0.0)
    with pytest.raises(DomainError, match=r"strand_angle .* at most 180°"):
        redirect_resultant(strand_tension=1.0, strand_angle=3.2)
