"""The board shows the planner's own plan; margins, rope and head by sums that are done here."""

import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from ropecalc.mechanics.holding import Method, Point, Rig
from ropecalc.planning.raise_plan import RaisePlan, Verdict, plan_raise
from ropecalc.planning.site_file import read_site
from ropecalc.teaching.figures import PLAN_BOARD
from ropecalc.teaching.figures.plan_board import BACK, LOWER, Board
from ropecalc.teaching.panel import Look
from ropecalc.units import Display

START = PLAN_BOARD.start
SITES = Path(__file__).parents[2] / "sites"


def at(**values: Any) -> Board:
    result: Board = PLAN_BOARD.compute(START | values)
    return result


def words(**values: Any) -> str:
    return PLAN_BOARD.summary(at(**values), Display())


def plan_of(board: Board) -> RaisePlan:
    assert board.plan is not None
    return board.plan


def test_at_the_start_it_is_the_plan_of_the_site_file() -> None:
    for key in ("upper-heron-wall", LOWER):
        plain = plan_raise(read_site(SITES / f"{key}.toml"))
        found = plan_of(at(site=key))
        assert found.stations == plain.stations
        assert found.summaries == plain.summaries


def test_sliders_stand_in_for_the_survey() -> None:
    site = read_site(SITES / "upper-heron-wall.toml")
    top = Point(1.0, 32.0)
    changed = replace(
        site,
        rig=Rig(top, top, Point(55.0, 0.5)),
        litter=replace(site.litter, mass=150.0, clearance=0.5),
        lift=replace(site.lift, line_clearance=0.5),
    )
    found = plan_of(at(directional=1.0, hub=55.0, mass=150.0, clearance=0.5))
    assert found.stations == plan_raise(changed).stations


def test_margins_rope_and_head_at_the_governing_station() -> None:
    board = at(lines=3, efficiency=0.8, line=9000.0, holds=12_000.0, uncertainty=0.25)
    assert board.peak is not None and board.line_margin is not None
    total = board.peak.value
    strands = [0.8**k for k in range(6)]
    near = total * (strands[0] + strands[1]) / sum(strands)
    assert board.line_margin == pytest.approx(9000.0 / (near * 1.25))
    assert board.hub_margin == pytest.approx(12_000.0 / (total * 1.25))
    assert board.allowed * near / total == pytest.approx(9000.0 / (board.asked * 1.25))
    row = board.governing
    assert row is not None and row.near == pytest.approx(near, rel=1e-6)
    assert row.head is not None and row.haul is not None and row.total is not None
    up = row.station.way(Method.TRACK).haul_elevation
    assert up is not None
    front, back = row.haul + row.total, (row.haul + row.total) / 0.8
    inward = back * math.cos(BACK) - front * math.cos(up)
    down = back * math.sin(BACK) + front * math.sin(up)
    assert row.head.pull.high == pytest.approx(math.hypot(inward, down))
    assert board.rope is not None
    play = plan_of(board).track_play
    assert play is not None
    assert board.rope.through_device > 6 * play
    assert board.rope.needed == pytest.approx(board.rope.through_device + 6 * 1.0 + 6.0)


def test_rope_in_the_table_adds_up_to_the_change_of_length() -> None:
    board = at()
    moved = sum(row.feed for row in board.rows if row.feed is not None)
    stations = plan_of(board).stations
    assert moved == pytest.approx(4 * (stations[0].track_length - stations[-1].track_length))
    assert any(row.feed is not None and row.feed < 0 for row in board.rows)
    assert "let out, slowly" in words()
    table = PLAN_BOARD.table
    assert table is not None
    slowly = [row for row in table(board, Display()) if row[-1] == "let out, slowly"]
    assert [row[2].startswith("out ") for row in slowly] == [True]


def test_limits_are_the_learners() -> None:
    assert at().verdict(at().line_margin) is Verdict.INSIDE
    outside = at(margin=12.0)
    assert outside.verdict(outside.line_margin) is Verdict.OUTSIDE
    assert "outside the limit you entered" in words(margin=12.0)
    assert "outside" in str(PLAN_BOARD.table and PLAN_BOARD.table(outside, Display()))
    for text in (words(), words(margin=12.0)):
        assert "safe" not in text.lower()


def test_a_hub_too_close_is_too_sensitive_not_a_number() -> None:
    board = at(hub=15.0)
    assert plan_of(board).summary().sensitive
    text = words(hub=15.0, margin=1.0, line=20_000.0, holds=30_000.0)
    assert "too sensitive" in text.lower()
    table = PLAN_BOARD.table
    assert table is not None
    shaky = [row for row in table(board, Display()) if row[-1] == "too sensitive"]
    assert shaky
    assert all(not cell for row in shaky for cell in row[3:-1])


def test_a_litter_that_hangs_plumb_all_the_way_asks_for_nothing() -> None:
    """No slider leads there; a survey with a great overhang does."""
    board = at(directional=8.0)
    assert board.peak is not None and board.peak.value == 0
    assert board.rope is not None and board.line_margin is None
    assert "do the track lines have to hold anything off" in words(directional=8.0)
    picture = PLAN_BOARD.picture()
    picture.update(board, Look(Display()))
    assert picture.canvas.png()


def test_the_height_that_is_looked_at() -> None:
    board = at(look=10.0)
    assert board.here is not None and board.held is not None
    assert board.here.height == pytest.approx(10.0, abs=0.03)
    assert board.held.line_tension == pytest.approx(board.here.effort)


def test_what_cannot_be_planned_says_why(monkeypatch: pytest.MonkeyPatch) -> None:
    """No slider leads there; a site file that is gone or broken does."""
    from ropecalc.planning.problem import SiteError
    from ropecalc.teaching.figures import plan_board

    def broken(*_: object) -> RaisePlan:
        raise SiteError("upper-heron-wall.toml", "", "there is no such file.", "Look for it.")

    monkeypatch.setattr(plan_board, "_planned", broken)
    board = at()
    assert board.plan is None
    text = PLAN_BOARD.summary(board, Display())
    assert "cannot be planned" in text
    assert "Look for it" in text


def test_the_prediction_is_the_body_just_past_the_tip() -> None:
    outcome = PLAN_BOARD.prediction.outcome(Display())
    assert outcome.right == 2
    assert "26.6 m" in outcome.sentence
