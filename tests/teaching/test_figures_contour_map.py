"""The map's lines lie where the tension is; the path clears, and only just."""

from itertools import pairwise
from typing import Any

import numpy as np
import pytest

from ropecalc.mechanics.holding import Method, Point, Reach, hold
from ropecalc.mechanics.tensioner import effective_lines
from ropecalc.planning.clearing import Cause, all_demands
from ropecalc.planning.profile import WallProfile
from ropecalc.planning.site import Litter, Raise, Site
from ropecalc.teaching.drawing import BRIDLE, HALF_WIDTH, REACH_DOWN
from ropecalc.teaching.figures import CONTOUR_MAP
from ropecalc.teaching.figures.contour_map import (
    _STRIPS,
    LEVELS,
    ContourMap,
    _beyond_strip,
    demands,
    rock,
)
from ropecalc.teaching.panel import Look
from ropecalc.units import Display, Kind

START = CONTOUR_MAP.start


def at(**values: Any) -> ContourMap:
    result: ContourMap = CONTOUR_MAP.compute(START | values)
    return result


@pytest.mark.parametrize(
    "values",
    [{}, {"track_extra": 2.0}, {"hub_z": 20.0}, {"hub_x": 15.0}, {"hub_x": 80.0, "hub_z": -2.0}],
)
def test_on_every_line_the_tension_is_what_its_label_says(values: dict[str, float]) -> None:
    result = at(**values)
    for ratio in LEVELS:
        points = np.concatenate(result.field.lines(ratio))
        tension = hold(Method.TRACK, result.rig, result.load, points[:, 0], points[:, 1])
        share = tension.line_tension / (tension.line_tension + result.load)
        expected = ratio / (1 + ratio)
        if not result.field.where_slack():
            assert share.count() > 0.95 * len(points)
        assert share.count() > 10
        # Between the grid's points the field is taken as straight.
        assert np.ma.median(abs(share - expected)) < 0.003
        ends = [result.rig.haul_directional, result.rig.hub]  # where all lines run together
        clear = [np.hypot(points[:, 0] - p.x, points[:, 1] - p.z) > 3.0 for p in ends]
        assert abs(share - expected)[clear[0] & clear[1]].max() < 0.02


def test_the_shaded_area_is_inside_the_limit() -> None:
    from matplotlib.path import Path

    result = at(lines=2, limit=1500.0)
    outlines = [Path(piece) for piece in result.field.up_to(result.allowed / result.load)]
    x, z = np.meshgrid(np.linspace(0.5, 20, 40), np.linspace(1, 29, 40))
    tension = hold(Method.TRACK, result.rig, result.load, x, z).line_tension
    shaded = sum(p.contains_points(np.c_[x.ravel(), z.ravel()]) for p in outlines) % 2 == 1
    clearly_in = np.ma.filled(tension < 0.97 * result.allowed, False).ravel()
    clearly_out = np.ma.filled(tension > 1.03 * result.allowed, True).ravel()
    assert clearly_in.sum() > 200
    assert shaded[clearly_in].all()
    assert not shaded[clearly_out].any()


def test_where_the_haul_line_would_be_slack() -> None:
    from matplotlib.path import Path

    assert at().field.where_slack() == []
    result = at(hub_z=20.0, hub_x=30.0)
    outlines = [Path(piece) for piece in result.field.where_slack()]
    x, z = np.meshgrid(np.linspace(1, 28, 30), np.linspace(0.0, 18, 30))
    reach = hold(Method.TRACK, result.rig, result.load, x, z).reach.ravel()
    grey = sum(p.contains_points(np.c_[x.ravel(), z.ravel()]) for p in outlines) % 2 == 1
    slack = reach == Reach.HAUL_SLACK
    assert slack.sum() > 20
    assert (grey != slack).mean() < 0.02  # between the grid's points the border is straight


def gap_to_rock(result: ContourMap, station: Point) -> float:
    """The least horizontal room of litter, haul line and ground leg, by brute force (m).

    The litter's is measured from its middle, as if it were as wide all the way up its bridle.
    """
    wall_x, wall_z = zip(*rock(result.tip), strict=True)
    top, hub = result.rig.haul_directional, result.rig.hub
    body = np.linspace(station.z - 1.24, station.z, 2001)
    narrower = HALF_WIDTH * (1 - np.minimum(1.0, (station.z - body) / BRIDLE))
    room = float(np.min(station.x - np.interp(body, wall_z, wall_x) + narrower))
    room = min(room, station.x - float(np.interp(station.z, wall_z, wall_x)))  # where lines begin
    for end in (top, hub):
        share = (result.tip.z - station.z) / (end.z - station.z)
        if 0 < share < 1:
            room = min(room, station.x + share * (end.x - station.x) - result.tip.x)
    return room


@pytest.mark.parametrize("tip_z", [2.0, 12.0, 27.0, 29.0])
@pytest.mark.parametrize("tip_x", [0.3, 1.7, 3.0])
@pytest.mark.parametrize("hub_x", [15.0, 40.0])
def test_the_path_clears_and_only_just(tip_x: float, tip_z: float, hub_x: float) -> None:
    for height in np.linspace(1.0, 30.5, 24):
        result = at(tip_x=tip_x, tip_z=tip_z, hub_x=hub_x, height=float(height))
        assert not result.too_near
        assert gap_to_rock(result, result.station) >= result.clearance - 1e-6
        closer = Point(result.least - 0.02, result.station.z)
        plumb = result.least <= result.rig.haul_directional.x + 1e-9
        assert plumb or gap_to_rock(result, closer) < result.clearance


def test_too_near_is_said() -> None:
    result = at(height=20.0, further=-0.5)
    assert result.too_near == ("haul line", "belay")
    assert "Too near the rock: haul line and belay." in CONTOUR_MAP.summary(result, Display())
    assert at(height=28.0, further=-0.5).too_near == ("litter",)


def planned(result: ContourMap) -> Site:
    """The same wall as the planner would have it, up to where the outcrop ends."""
    corners = rock(result.tip)[:-1]  # the cliff's edge is protected
    body = result.clearance - HALF_WIDTH
    return Site(
        name="trial",
        wall=WallProfile.through(corners),
        rig=result.rig,
        litter=Litter(200.0, BRIDLE, HALF_WIDTH, REACH_DOWN - BRIDLE, body),
        lift=Raise(corners[0][1] + REACH_DOWN, 30.0, 1.0, result.clearance),
    )


RIGS = [{}, {"hub_x": 15.0, "hub_z": 20.0}, {"hub_z": -2.0, "track_extra": 2.0}]
RIGS += [{"directional_x": 0.0, "directional_z": 31.0}, {"directional_x": 1.5, "hub_x": 80.0}]


@pytest.mark.parametrize("moved", RIGS, ids=str)
@pytest.mark.parametrize("tip_z", [2.0, 12.5, 20.0, 29.0])
@pytest.mark.parametrize(("tip_x", "clearance"), [(0.3, 0.3), (1.7, 0.8), (3.0, 1.2)])
def test_every_part_asks_for_what_the_planner_says(
    tip_x: float, tip_z: float, clearance: float, moved: dict[str, float]
) -> None:
    result = at(tip_x=tip_x, tip_z=tip_z, clearance=clearance, **moved)
    site = planned(result)
    end = site.wall.points[-1]
    compared = 0
    for height in np.linspace(1.0, end.height, 37):
        mine = {
            part: float(offset[0])
            for part, offset in demands(
                result.rig, result.belay, result.tip, clearance, np.array([height])
            ).items()
        }
        theirs = {demand.cause: demand for demand in all_demands(site, float(height))}
        for part, cause in (
            ("litter", Cause.BODY),
            ("haul line", Cause.HAUL_LINE),
            ("track line", Cause.GROUND_LINE),
        ):
            demand = theirs.get(cause)
            if demand is None:  # they ask for nothing where the line already clears
                continue
            if demand.at.height == end.height and demand.at.height > height:
                # The rock goes on above: for the map it is only the way to the cliff's edge.
                assert demand.offset >= mine[part] - 1e-9
                continue
            assert mine[part] == pytest.approx(demand.offset, abs=1e-9), (part, height)
            compared += 1
        if Cause.TRACK_LINE in theirs and theirs[Cause.TRACK_LINE].at.height != end.height:
            assert theirs[Cause.TRACK_LINE].offset <= mine["haul line"] + 1e-9
    assert compared > 80


def test_a_hand_worked_path() -> None:
    # The line through (2.5, 27) from (0.3, 32): 2.2 m out in 5 m; 31 m down it is 13.64 m further.
    assert at(height=1.0).least == pytest.approx(0.3 + 2.2 * 31 / 5)
    assert at(height=27.0).least == pytest.approx(2.5)
    assert at(height=28.0).least == pytest.approx(2.5)
    assert at(height=30.5).least == pytest.approx(0.8)


def test_a_belay_that_starts_further_in_or_lower_touches_before_the_haul_line() -> None:
    further_out = at(height=20.0, belay_x=1.5)
    assert further_out.least == at(height=20.0).least
    lower = at(height=20.0, belay_z=30.5)
    # From (0.6, 30.5) through (2.5, 27): 1.9 m out in 3.5 m; 10.5 m down it is 5.7 m further out.
    assert lower.least == pytest.approx(0.6 + 1.9 * 10.5 / 3.5)
    assert at(height=20.0, belay_z=30.5, further=-0.3).too_near == ("belay",)


def test_how_far_out_lines_reach_is_where_the_worst_line_is_at_the_limit() -> None:
    result = at(height=27.0)
    assert result.furthest == pytest.approx((2.90, 3.86, 4.34, 4.62), abs=0.006)
    for lines, far in enumerate(result.furthest, start=1):
        there = at(height=27.0, lines=lines, further=far - result.least)
        assert there.worst_line == pytest.approx(result.limit, rel=1e-3)
    rows = CONTOUR_MAP.table(result, Display())  # type: ignore[misc]
    assert rows[0][2] == "Furthest out at 27.0 m with 2.00 kN in the worst line"
    assert rows[3] == ("3", "2.47", "4.34 m")


def test_no_reach_is_told_where_no_number_holds() -> None:
    assert at(height=31.0).furthest[-1] is None
    assert at(directional_z=31.0, height=31.0).furthest == (None,) * 4
    assert at(height=3.0, hub_z=20.0, hub_x=15.0).furthest == (None,) * 4
    rows = CONTOUR_MAP.table(at(height=31.0), Display())  # type: ignore[misc]
    assert rows[-1][2] == "no number to rely on"


def test_series_lines_share_as_derived() -> None:
    result = at(lines=3, efficiency=0.8)
    assert result.worst_line is not None
    assert result.worst_line == pytest.approx(
        result.held.line_tension / effective_lines(efficiency=0.8, lines=3)
    )
    assert result.worst_line > result.held.line_tension / 3
    words = CONTOUR_MAP.summary(result, Display())
    assert "Of 3 lines tensioned by one rope in series, the one nearest the device carries" in words
    assert "The one line carries" in CONTOUR_MAP.summary(at(lines=1), Display())


def test_inside_and_outside_the_entered_limit() -> None:
    assert ": inside the limit you entered of" in CONTOUR_MAP.summary(at(limit=6000.0), Display())
    assert ": outside the limit you entered of" in CONTOUR_MAP.summary(at(limit=1000.0), Display())


def test_the_largest_tension_is_judged_first_even_where_the_station_is_inside() -> None:
    result = at()
    assert result.largest is not None
    tension, height = result.largest
    assert tension == pytest.approx(max(result.along.line_tension[result.printable]))
    assert result.worst_line is not None
    assert result.worst_line < result.limit < tension
    words = CONTOUR_MAP.summary(result, Display())
    first, second = words.split(". ")[:2]
    assert first.startswith("Largest on the path that just clears")
    assert Display().show(tension, Kind.FORCE) in first
    assert Display().show(height, Kind.LENGTH) in first
    assert second.startswith("That is outside the example limit of 2.00 kN")


def test_several_lines_are_judged_by_the_one_that_carries_most() -> None:
    words = CONTOUR_MAP.summary(at(lines=2), Display())
    assert "That is inside the example limit" in words
    assert "the one nearest the device" in words.split(". ")[0]


def test_nobody_entered_the_example() -> None:
    assert "you entered" not in CONTOUR_MAP.summary(at(), Display())
    assert "example" not in CONTOUR_MAP.summary(at(limit=2100.0), Display())


def test_a_curve_that_leaves_its_strip_says_how_far() -> None:
    strip = _STRIPS[0]
    result = at(tip_x=3.0)
    assert result.largest is not None
    shown = np.ma.filled(result.along.line_tension.astype(float), np.nan)
    shown = np.where(result.printable, shown, np.nan)
    [label] = _beyond_strip(strip, shown, result.heights, Display())
    assert label.text == "6.4 kN →"
    assert label.at == (strip.high, result.largest[1])
    assert _beyond_strip(strip, np.minimum(shown, strip.high), result.heights, Display()) == []
    [low] = _beyond_strip(strip, -shown, result.heights, Display())
    assert low.text.startswith("← −")
    assert _beyond_strip(strip, np.full(61, np.nan), result.heights, Display()) == []


def test_numbers_under_neighbouring_strips_do_not_meet() -> None:
    picture = CONTOUR_MAP.picture()
    for force in ("kN", "kgf", "lbf"):
        picture.update(at(), Look(Display(force=force)))
        picture.canvas.png()
        texts = [
            tick.label1.get_window_extent(picture.canvas.renderer)
            for axes in picture._strips._axes
            for tick in axes.xaxis.get_major_ticks()
        ]
        for one, other in pairwise(sorted(texts, key=lambda box: float(box.x0))):
            assert one.x1 + 4 < other.x0


def test_the_efficiency_waits_for_a_second_line() -> None:
    assert set(CONTOUR_MAP.idle(START)) == {"efficiency"}
    assert CONTOUR_MAP.idle(START | {"lines": 2}) == {}
    assert at(efficiency=0.6).worst_line == at(efficiency=0.9).worst_line


def test_the_settings_that_matter_first_are_few() -> None:
    assert 5 <= len(CONTOUR_MAP.first) <= 6
    assert set(CONTOUR_MAP.first) < set(START)
    assert "W is the weight" in CONTOUR_MAP.reading[0]


def test_shaky_heights_carry_no_numbers() -> None:
    result = at()
    assert result.shaky[-1]
    assert not result.printable[-1]
    words = CONTOUR_MAP.summary(at(height=31.0), Display())
    assert "Too sensitive here" in words
    assert "Track lines together" not in words
