"""Rope over an edge, against published values and a rope cut into short pieces."""

import math

import numpy as np
import pytest

from ropecalc.mechanics.friction import capstan_tension


@pytest.mark.parametrize(
    ("behind", "friction", "turn", "ahead", "tolerance"),
    [
        # Baker & Haynes, Engineering Statics, section 9.5, example "Rope Friction": 100 lb held by
        # 0.15 lb with 4.5 turns at 0.23
        (0.15, 0.23, 4.5 * 2 * math.pi, 100.0, 0.1),
        # Engineering Mechanics 1, exercise 27: 100 kg, 0.2, three quarter turns, g = 9.81
        (382.26, 0.2, 1.5 * math.pi, 981.0, 0.01),
        # an encyclopedia article on the capstan equation: five turns at 0.6
        (1.0, 0.6, 10 * math.pi, 153_552_935, 1.0),
        # 55 lb just lifts 25 lb over half a turn: a worked coefficient of 0.251 from a public
        # physics forum
        (25.0, 0.251, math.pi, 55.0, 0.02),
        # an independent calculation made for this project
        (1.0, 0.3, math.pi / 2, 1.602, 5e-4),
    ],
)
def test_published_values(
    behind: float, friction: float, turn: float, ahead: float, tolerance: float
) -> None:
    result = capstan_tension(tension_behind=behind, friction=friction, turn=turn)
    assert result == pytest.approx(ahead, abs=tolerance)


@pytest.mark.parametrize(
    ("turns", "factors"),
    [
        # a table in the same encyclopedia article, from memory and therefore never the only check
        (1, (1.9, 3.5, 6.6, 12, 23)),
        (2, (3.5, 12, 43, 152, 535)),
        (3, (6.6, 43, 286, 1881, 12392)),
    ],
)  # fmt: skip
def test_the_remembered_table(turns: int, factors: tuple[float, ...]) -> None:
    friction = np.array([0.1, 0.2, 0.3, 0.4, 0.5])
    result = capstan_tension(tension_behind=1.0, friction=friction, turn=turns * 2 * math.pi)
    np.testing.assert_allclose(result, factors, rtol=0.03)


def test_a_rope_in_short_pieces() -> None:
    """Balance each of many straight pieces on a polygon: pressure from the turn, then friction."""
    behind, friction, turn, pieces = 1500.0, 0.35, 1.8, 200_000
    half = turn / pieces / 2
    # the two tensions at a corner balance a normal force and a friction force on the bisector
    factor = (math.cos(half) + friction * math.sin(half)) / (
        math.cos(half) - friction * math.sin(half)
    )
    assert capstan_tension(tension_behind=behind, friction=friction, turn=turn) == pytest.approx(
        behind * factor**pieces, rel=1e-8
    )


def test_turns_add_up_and_there_and_back_is_a_hysteresis() -> None:
    rng = np.random.default_rng(48)
    for one, two in rng.uniform(0, 2, (50, 2)):
        at_once = capstan_tension(tension_behind=900.0, friction=0.3, turn=one + two)
        between = capstan_tension(tension_behind=900.0, friction=0.3, turn=one)
        assert capstan_tension(tension_behind=between, friction=0.3, turn=two) == pytest.approx(
            at_once, rel=1e-12
        )
        assert at_once >= 900.0  # the side it moves towards never carries less


def test_a_smooth_edge_or_no_turn_changes_nothing() -> None:
    assert capstan_tension(tension_behind=1200.0, friction=0.0, turn=2.0) == 1200.0
    assert capstan_tension(tension_behind=1200.0, friction=0.4, turn=0.0) == 1200.0
