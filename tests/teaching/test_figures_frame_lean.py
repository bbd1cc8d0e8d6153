"""Where the pull on a frame lands, against vectors added by hand; what cannot be is said."""

import math
from typing import Any

import numpy as np
import pytest

from ropecalc.mechanics.frames import Standing
from ropecalc.teaching.figures import FRAME_LEAN
from ropecalc.teaching.figures.frame_lean import LIP, PATH, STATIONS, WALL, FrameLean, planned
from ropecalc.units import Display

START = FRAME_LEAN.start
WEIGHT = 200 * 9.80665


def at(**values: Any) -> FrameLean:
    result: FrameLean = FRAME_LEAN.compute(START | values)
    return result


def lean(result: FrameLean) -> float:
    assert result.at.load is not None
    return math.degrees(result.at.load.lean.low)


def pull(result: FrameLean) -> float:
    assert result.at.load is not None
    return float(result.at.load.pull.high)


def by_vectors(out: float, up: float, back: float, track: bool) -> tuple[float, float]:
    """Inward and downward pull on the head at (0.3, 32), from the balance of the litter."""
    litter, head, hub = np.array([out, up]), np.array([0.3, 32.0]), np.array([40.0, 0.5])
    to_head, to_hub = ((place - litter) / np.linalg.norm(place - litter) for place in (head, hub))
    haul, line = np.linalg.solve(np.array([to_head, to_head + to_hub]).T, [0.0, WEIGHT])
    tension = haul + line if track else haul
    behind = np.array([-math.cos(math.radians(back)), -math.sin(math.radians(back))])
    total = tension * (behind - to_head)
    return float(-total[0]), float(-total[1])


@pytest.mark.parametrize("height", [2.0, 14.0, 24.0, 27.0, 29.0])
@pytest.mark.parametrize("lines", ["haul", "track"])
@pytest.mark.parametrize("back", [10, 28, 55])
def test_pull_and_landing_by_vectors(height: float, lines: str, back: int) -> None:
    result = at(height=height, lines=lines, back=math.radians(back))
    inward, down = by_vectors(planned(height), height, back, lines == "track")
    assert pull(result) == pytest.approx(math.hypot(inward, down))
    assert result.at.worst is not None
    assert result.at.worst.landing == pytest.approx(2.0 * inward / down - 0.3)


def test_the_reference_case_at_the_outcrop() -> None:
    # 200 kg at (2.5, 27), head at (0.3, 32), hub at (40, 0.5): this project's own calculation
    assert pull(at()) == pytest.approx(2310, abs=5)
    assert pull(at(lines="track")) == pytest.approx(4560, abs=5)
    assert lean(at()) == pytest.approx(19.1, abs=0.05)
    worst = at().at.worst
    assert worst is not None and worst.landing == pytest.approx(0.39, abs=0.005)


def test_counting_the_track_lines_doubles_the_pull_but_not_the_lean() -> None:
    alone, both = at(), at(lines="track")
    assert 1.9 < pull(both) / pull(alone) < 2.1
    assert lean(both) == pytest.approx(lean(alone))


def test_the_head_is_pulled_inward_all_the_way_and_least_at_the_outcrop() -> None:
    leans = {z: lean(at(height=z)) for z in STATIONS}
    assert min(leans.values()) == leans[27.0] > 15
    assert max(leans.values()) < 30


def test_with_back_feet_it_stands_and_on_two_legs_it_falls_back() -> None:
    for height in STATIONS:
        for depth, standing in ((1.5, Standing.STANDS), (0.0, Standing.TIPS_BACK)):
            worst = at(height=height, back_foot=depth).at.worst
            assert worst is not None and worst.standing is standing


def test_an_outward_lean_needs_a_front_strand_flatter_than_the_back_strand() -> None:
    result = at(height=29, beyond=1.0, back=math.radians(60))
    assert result.at.held.haul_elevation < math.radians(60)
    assert lean(result) < 0
    assert "outward" in FRAME_LEAN.summary(result, Display())
    assert result.at.worst is not None and result.at.worst.standing is Standing.TIPS_OUT


def test_a_guy_balances_moments_about_the_feet() -> None:
    result = at(lines="track", back_foot=0.0, guy="front", guy_angle=math.radians(40))
    inward, down = by_vectors(2.5, 27.0, 28, True)
    arm = 2.0 * math.cos(math.radians(40)) + 0.3 * math.sin(math.radians(40))
    assert result.guy_tension == pytest.approx((2.0 * inward - 0.3 * down) / arm)
    assert result.compression is not None and result.compression > down / 2


def test_a_guy_for_back_feet_balances_moments_about_those() -> None:
    result = at(back_foot=0.3, guy="front", guy_angle=math.radians(40))
    inward, down = by_vectors(2.5, 27.0, 28, False)
    arm = 2.0 * math.cos(math.radians(40)) + 0.6 * math.sin(math.radians(40))
    assert result.guy_tension == pytest.approx((2.0 * inward - 0.6 * down) / arm)
    assert result.compression is None  # how four legs share it is not settled by balance


def test_a_guy_on_the_wrong_side_holds_nothing() -> None:
    result = at(back_foot=0.0, guy="back")
    assert result.guy_tension is None
    assert "cannot hold it" in FRAME_LEAN.summary(result, Display())


def test_without_friction_direction_says_nothing_and_with_it_hauling_leans_further_in() -> None:
    free = [lean(at(direction=way)) for way in ("hauling", "holding", "lowering")]
    assert free == pytest.approx([free[0]] * 3)
    hauled, lowered = (lean(at(direction=way, efficiency=0.8)) for way in ("hauling", "lowering"))
    assert hauled > free[0] > lowered
    held = at(direction="holding", efficiency=0.8).at.load
    assert held is not None and held.lean.width > 0
    assert " to " in FRAME_LEAN.summary(at(direction="holding", efficiency=0.8), Display())


def test_a_catch_adds_what_was_entered_for_it() -> None:
    results = [at(lines="belay", belay=force) for force in (1000.0, 4000.0)]
    added = (pull(results[1]) - pull(results[0])) / 3000
    turn = math.pi - results[0].at.held.haul_elevation - math.radians(28)
    assert added == pytest.approx(2 * math.cos(turn / 2))


def test_close_to_the_straight_line_no_number_is_said() -> None:
    result = at(height=30.0)
    assert result.at.sensitive and result.at.worst is None
    words = FRAME_LEAN.summary(result, Display())
    assert "Too sensitive" in words and "kN" not in words


def test_what_cannot_be_held_is_said_in_words() -> None:
    result = at(height=30.0, beyond=1.5, head_height=1.5)
    assert not result.at.held.reach.possible
    words = FRAME_LEAN.summary(result, Display())
    assert str(result.at.held.reach.sentence) in words and "kN" not in words


def test_the_planned_path_keeps_haul_line_and_litter_off_the_outcrop() -> None:
    tip = max(WALL)
    for height in np.linspace(PATH[0][1], 30.0, 60):
        out = planned(float(height))
        if height < tip[1]:
            at_tip = 0.3 + (out - 0.3) * (32.0 - tip[1]) / (32.0 - height)
            assert at_tip - tip[0] >= 0.3
        rail, under = height - 1.0, height - 1.24
        rock = np.interp([rail, under], [z for _, z in WALL], [x for x, _ in WALL])
        if rail < LIP:
            assert out - 0.3 > max(rock)


def test_the_table_follows_the_raise() -> None:
    assert FRAME_LEAN.table is not None
    rows = FRAME_LEAN.table(at(), Display())
    assert len(rows) == 1 + len(STATIONS)
    assert {len(row) for row in rows} == {5}
    assert rows[5][2] == "19° inward" and rows[5][4] == "stands"
