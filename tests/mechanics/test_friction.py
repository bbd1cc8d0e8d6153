"""Rope over an edge, against published values and a rope cut into short pieces."""

import math

import numpy as np
import pytest

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.friction import (
    Band,
    Direction,
    banded,
    capstan_tension,
    capstan_tension_behind,
    edge_reversal,
    groove_tension,
    over_edge,
)
from ropecalc.units import Display, Kind


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


# --- hauling, lowering, holding --------------------------------------------------------------


def test_an_edge_both_ways() -> None:
    # an independent calculation made for this project: 90° at 0.3: 1.60 up, 0.62 down, 2.57 between
    edge = over_edge("hauling", load_side=2000.0, friction=0.3, turn=math.pi / 2)
    assert edge.team_side.low == edge.team_side.high == pytest.approx(3204, abs=1)
    down = over_edge("lowering", load_side=2000.0, friction=0.3, turn=math.pi / 2)
    assert down.team_side.low == down.team_side.high == pytest.approx(1248, abs=1)
    assert edge.reversal == pytest.approx(2.57, abs=0.005)
    held = over_edge("holding", load_side=2000.0, friction=0.3, turn=math.pi / 2)
    assert held.team_side == Band(down.team_side.low, edge.team_side.low)
    assert held.team_side.width == pytest.approx(3204 - 1248, abs=2)


def test_up_and_down_undo_each_other() -> None:
    rng = np.random.default_rng(63)
    load, mu, turn = rng.uniform(500, 5000, 500), rng.uniform(0, 0.8, 500), rng.uniform(0, 4, 500)
    up = over_edge(Direction.HAULING, load_side=load, friction=mu, turn=turn).team_side.low
    down = over_edge(Direction.LOWERING, load_side=load, friction=mu, turn=turn).team_side.high
    np.testing.assert_allclose(up * down, load**2, rtol=1e-12)
    assert (up >= load).all() and (down <= load).all()
    behind = capstan_tension_behind(tension_ahead=load, friction=mu, turn=turn)
    np.testing.assert_allclose(behind, down)


@pytest.mark.parametrize("direction", ["up", "", "Hauling", None])
def test_a_direction_has_to_be_said(direction) -> None:
    with pytest.raises(DomainError, match="must be hauling, lowering or holding"):
        over_edge(direction, load_side=2000.0, friction=0.3, turn=1.0)
    with pytest.raises(TypeError):
        over_edge(load_side=2000.0, friction=0.3, turn=1.0)


@pytest.mark.parametrize(
    ("name", "value"), [("load_side", 0.0), ("friction", -0.1), ("turn", -0.1), ("turn", "flat")]
)
def test_an_edge_out_of_range_is_refused(name, value) -> None:
    with pytest.raises(DomainError, match=name):
        over_edge("hauling", **{"load_side": 2000.0, "friction": 0.3, "turn": 1.0, name: value})


def test_an_edge_is_told() -> None:
    held = over_edge("holding", load_side=2000.0, friction=0.3, turn=math.pi / 2).explain()
    text = held.as_text()
    assert "Hauling, the rope moves towards the team: the team's side carries 3.20 kN." in text
    assert "Lowering, it moves towards the load: the team's side carries 1.25 kN." in text
    assert "anything from 1.25 kN to 3.20 kN" in text
    assert held.result == "holding: team's side 1.25 kN to 3.20 kN"
    assert held.lines[0].is_law and "A sharp edge is a matter of cutting" in text
    assert cautions.AUTHORITY in held.cautions and "measured" in held.cautions[0]
    up = over_edge("hauling", load_side=2000.0, friction=0.3, turn=math.pi / 2)
    assert up.explain(Display(force="N")).result.endswith("team's side 3200 N")


def test_bands() -> None:
    assert banded(Direction.HAULING, hauled=2.0, lowered=1.0) == Band(2.0, 2.0)
    assert banded(Direction.LOWERING, hauled=2.0, lowered=1.0) == Band(1.0, 1.0)
    assert banded(Direction.HOLDING, hauled=2.0, lowered=1.0) == Band(1.0, 2.0)
    assert banded(Direction.HOLDING, hauled=1.0, lowered=2.0) == Band(1.0, 2.0)
    assert Band(1234.0, 1235.0).show(Kind.FORCE, Display()) == "1.23 kN to 1.24 kN"
    assert Band(1234.0, 1234.1).show(Kind.FORCE, Display()) == "1.23 kN"


# --- grooves ---------------------------------------------------------------------------------


def test_a_flat_groove_is_an_edge() -> None:
    # Baker & Haynes, Engineering Statics, section 9.5: the V-belt with 180° is the flat belt
    flat = groove_tension(tension_behind=900.0, friction=0.3, turn=2.0, groove_angle=math.pi)
    edge = capstan_tension(tension_behind=900.0, friction=0.3, turn=2.0)
    assert flat == pytest.approx(edge, rel=1e-12)


def test_a_rope_wedged_in_short_pieces() -> None:
    """Two flanks carry each short piece; friction acts on both pushes."""
    behind, mu, turn, groove, pieces = 800.0, 0.25, 1.4, math.radians(50), 200_000
    tension, small = behind, turn / pieces
    flank = np.array([math.sin(groove / 2), math.cos(groove / 2)])  # out of the groove, across it
    for _ in range(pieces // 1000):
        push = tension * (small * 1000) / (2 * flank[0])
        step = mu * 2 * push
        tension += step + step * mu * small * 1000 / (2 * flank[0])  # the mean over the piece
    result = groove_tension(tension_behind=behind, friction=mu, turn=turn, groove_angle=groove)
    assert result == pytest.approx(tension, rel=1e-4)


def test_a_narrow_groove_holds_more() -> None:
    angle = np.linspace(0.3, math.pi, 200)
    ahead = groove_tension(tension_behind=900.0, friction=0.2, turn=1.5, groove_angle=angle)
    assert (np.diff(ahead) < 0).all()
    with pytest.raises(DomainError, match="groove_angle"):
        groove_tension(tension_behind=900.0, friction=0.2, turn=1.5, groove_angle=0.0)


@pytest.mark.parametrize(
    ("friction", "turn"), [(0.3, 90.0), (0.1, 30.0), (0.5, 110.0), (0.0, 90.0)]
)
def test_turning_round_is_two_passes_over_the_same_edge(friction: float, turn: float) -> None:
    pieces = 200_000
    step = 1 + friction * math.radians(turn) / pieces
    there, back = step**pieces, 1 / step**pieces
    found = edge_reversal(friction=friction, turn=math.radians(turn))
    assert found == pytest.approx(there / back, rel=1e-5)


def test_the_ends_of_a_band_are_rounded_outwards() -> None:
    display = Display()
    assert Band(1614.0, 1726.0).outwards(Kind.FORCE, display) == "1.61 kN to 1.73 kN"
    assert Band(1616.0, 1721.0).outwards(Kind.FORCE, display) == "1.61 kN to 1.73 kN"
    assert Band(1616.0, 1616.0).outwards(Kind.FORCE, display) == "1.62 kN"  # one value is no band
    assert Band(1616.0, 1616.0 * (1 + 1e-10)).outwards(Kind.FORCE, display) == "1.62 kN"
    assert Band(1616.0, 1616.1).outwards(Kind.FORCE, display) == "1.61 kN to 1.62 kN"
    assert Band(-0.2, -0.1).outwards(Kind.RATIO, display) == "−0.200 to −0.100"
    assert Band(0.0, 0.0).outwards(Kind.FORCE, display) == "0 kN"


def test_every_result_with_friction_says_that_friction_varies() -> None:
    for derivation in (capstan_tension, capstan_tension_behind, edge_reversal, groove_tension):
        assert derivation.cautions[0].startswith("Friction varies"), derivation.title
