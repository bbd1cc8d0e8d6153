"""Forces along a raise: counted by hand, in their limits, and what must never get better."""

import itertools
import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ropecalc.derivation import DomainError
from ropecalc.mechanics.holding import Method, Reach
from ropecalc.planning.clearing import Cause
from ropecalc.planning.problem import SiteError
from ropecalc.planning.raise_plan import RaisePlan, Verdict, plan_raise
from ropecalc.planning.report import text_report
from ropecalc.planning.site import Limits, Site
from tests.planning.building import governing_demand, make_site, outcrop

WEIGHT = 200 * 9.80665


def peak(plan: RaisePlan) -> float:
    found = plan.summary().effort
    assert found is not None
    return found.value


def hardest(plan: RaisePlan) -> float:
    """The largest tension even where it is too sensitive to print."""
    assert plan.governing is not None
    tension = plan.governing.way(Method.TRACK).line_tension
    assert tension is not None
    return tension


def station_at(plan: RaisePlan, height: float):  # type: ignore[no-untyped-def]
    return min(plan.stations, key=lambda station: abs(station.height - height))


def test_a_plumb_wall_counted_by_hand() -> None:
    """At 20 m: haul leg 12 m up in 0.25 m, ground leg 19.5 m down in 39.35 m."""
    station = station_at(plan_raise(make_site()), 20.0)
    haul_slope, ground_slope = 12 / 0.25, 19.5 / 39.35
    sideways = WEIGHT / (haul_slope - ground_slope)
    tension = sideways * math.sqrt(1 + ground_slope**2)
    tag, track, attendant = (station.way(m) for m in (Method.TAG, Method.TRACK, Method.ATTENDANT))
    assert station.offset == pytest.approx(0.65)
    assert track.line_tension == pytest.approx(tension)
    assert tag.line_tension == pytest.approx(tension)
    assert tag.haul_tension == pytest.approx(sideways * math.sqrt(1 + haul_slope**2))
    assert track.haul_tension == pytest.approx(tag.haul_tension - tension)
    assert track.hub_uplift == pytest.approx(sideways * ground_slope)
    assert attendant.push == pytest.approx(WEIGHT / haul_slope)
    line = 0.4 + 39.6 * 12 / 31.5
    assert track.room == pytest.approx(line - 0.65)
    assert track.used == pytest.approx(0.25 / (line - 0.4))
    angle = math.pi - math.atan(haul_slope) + math.atan(ground_slope)
    assert track.litter_angle == pytest.approx(angle)
    assert track.haul_elevation == pytest.approx(math.atan(haul_slope))
    assert track.ground_depression == pytest.approx(math.atan(ground_slope))


def test_rope_is_the_change_of_length_since_the_station_below() -> None:
    plan = plan_raise(make_site())
    below, above = station_at(plan, 17.0), station_at(plan, 20.0)
    length = {z: math.hypot(0.25, 32 - z) + math.hypot(39.35, z - 0.5) for z in (17.0, 20.0)}
    assert above.take_in == pytest.approx(length[17.0] - length[20.0])
    assert above.pay_out == pytest.approx(math.hypot(39.35, 19.5) - math.hypot(39.35, 16.5))
    assert below.track_length == pytest.approx(length[17.0])
    assert plan.stations[0].take_in is None
    taken = sum(station.take_in or 0.0 for station in plan.stations)
    assert taken == pytest.approx(plan.stations[0].track_length - plan.stations[-1].track_length)


def test_plumb_under_the_directional_nothing_needs_to_pull() -> None:
    plan = plan_raise(make_site(haul=(1.0, 32.0)))
    for station in plan.stations:
        way = station.way(Method.TRACK)
        assert station.demand.cause is Cause.PLUMB
        assert way.reach is Reach.PLUMB
        assert way.line_tension == 0
        assert way.haul_tension == pytest.approx(WEIGHT)


def test_stations_include_every_critical_height() -> None:
    plan = plan_raise(make_site(outcrop(15.0)))
    heights = [station.height for station in plan.stations]
    assert heights == sorted(heights)
    assert heights[0] == 2.0
    assert heights[-1] == 29.0
    for critical in (15.0, 15.0 + 1.0 + 0.6, 5.0, 8.0):
        assert min(abs(h - critical) for h in heights) < 1e-3


def test_corners_that_never_govern_make_no_station() -> None:
    """A bump of a hand's width just below a large outcrop is never what decides."""
    bump = [(0.0, 0.0), (0.0, 12.0), (0.1, 12.1), (0.0, 12.2), *outcrop(15.0)[1:]]
    heights = [station.height for station in plan_raise(make_site(bump)).stations]
    plain = [station.height for station in plan_raise(make_site(outcrop(15.0))).stations]
    assert heights == pytest.approx(plain)


def test_the_governing_station_is_the_true_peak_between_the_stations() -> None:
    """Against a search ten times as fine that looks at each height alone."""
    site = make_site(outcrop(20.0), station_spacing=9.0)
    plan = plan_raise(site)
    assert plan.governing is not None
    fine = np.linspace(2.0, 29.0, 5401)
    best = max(plan_raise_at(site, float(height)) for height in fine[(fine > 20) & (fine < 23)])
    assert peak(plan) >= best - 1e-9
    assert peak(plan) == pytest.approx(best, rel=1e-3)
    assert plan.governing.way(Method.TRACK).line_tension == pytest.approx(peak(plan))
    assert plan.governing.height == pytest.approx(20.0 + 1.6, abs=1e-3)


def plan_raise_at(site: Site, height: float) -> float:
    from ropecalc.mechanics.holding import hold

    offset = governing_demand(site, height, Method.TRACK).offset
    return float(hold(Method.TRACK, site.rig, WEIGHT, offset, height).line_tension)


def test_a_place_beyond_the_straight_line_is_impossible_and_says_why() -> None:
    plan = plan_raise(make_site(outcrop(25.0, tip=4.0), hub=(14.0, 0.5)))
    summary = plan.summary()
    assert summary.gaps
    gap = summary.gaps[-1]
    assert gap.reach is Reach.BEYOND_LINE
    assert gap.demand.at.height == pytest.approx(25.0)
    stopped = [s for s in plan.stations if gap.low <= s.height <= gap.high]
    assert stopped
    for station in stopped:
        way = station.way(Method.TRACK)
        assert not way.held
        assert way.effort is None
        assert way.haul_tension is None
        assert way.room is None
    for before, after in zip(plan.stations, plan.stations[1:], strict=False):
        held = before.way(Method.TRACK).held and after.way(Method.TRACK).held
        assert (after.take_in is not None) == held
    attendant = plan.summary(Method.ATTENDANT)
    assert not attendant.gaps


def test_a_raise_that_is_impossible_throughout_has_no_governing_station() -> None:
    plan = plan_raise(make_site(outcrop(25.0, tip=4.0), hub=(4.5, 0.5), guidance_ends=24.0))
    assert plan.governing is None
    assert plan.summary().effort is None
    assert plan.track_play is None
    assert not any(station.way(Method.TRACK).held for station in plan.stations)
    assert plan.summary().comparisons[0].verdict is Verdict.NO_LIMIT


def test_near_the_directional_the_result_is_too_sensitive() -> None:
    plan = plan_raise(make_site(guidance_ends=31.5))
    assert plan.stations[-1].way(Method.TRACK).sensitive
    assert not station_at(plan, 11.0).way(Method.TRACK).sensitive
    assert plan.summary().sensitive
    largest = plan.summary().effort
    assert largest is not None
    assert largest.height < 31.5


def test_sensitive_means_what_it_says() -> None:
    plan = plan_raise(make_site(outcrop(25.0, tip=2.5), guidance_ends=31.0))
    for station in plan.stations:
        for way in station.ways:
            if way.held and not way.sensitive:
                assert way.effort is not None
                assert way.effort_further is not None
                change = way.effort_further - way.effort
                assert change <= 0.5 * way.effort or change <= 0.1 * WEIGHT


def test_a_bearing_edge_adds_friction_above_it() -> None:
    site = make_site(
        haul=(-1.0, 30.5),
        track=(0.5, 32.0),
        edges=[(30.0, 0.3)],
        guided_by=Method.TAG,
        guidance_ends=27.0,
    )
    station = station_at(plan_raise(site), 20.0)
    way = station.way(Method.TAG)
    turn = math.atan2(1.0, 0.5) - math.atan2(0.65, 10.0)
    # Below the edge the line hangs from the edge: 10 m up in 0.65 m.
    haul_slope, ground_slope = 10 / 0.65, 19.5 / 39.35
    sideways = WEIGHT / (haul_slope - ground_slope)
    assert way.haul_tension == pytest.approx(sideways * math.sqrt(1 + haul_slope**2))
    assert way.haul_above == pytest.approx(way.haul_tension * math.exp(0.3 * turn))
    largest = plan_raise(site).summary().haul
    assert largest is not None
    assert largest.value >= way.haul_above


def test_two_bearing_edges_add_up_their_turns() -> None:
    """Down a convex brow: each edge turns the line further, and each adds its friction."""
    brow = ((0.5, 0.0), (0.5, 28.0), (0.0, 29.0), (-1.0, 30.0))
    site = make_site(
        brow,
        haul=(-3.0, 30.5),
        track=(1.0, 33.0),
        edges=[(28.0, 0.2), (29.0, 0.4), (30.0, 0.3)],
        guided_by=Method.TAG,
        guidance_ends=26.0,
    )
    station = station_at(plan_raise(site), 14.0)
    leans = [
        math.atan2(station.offset - 0.5, 28.0 - station.height),
        math.atan2(0.5, 1.0),
        math.atan2(1.0, 1.0),
        math.atan2(2.0, 0.5),
    ]
    turns = [b - a for a, b in itertools.pairwise(leans)]
    assert [turn for _, turn in station.haul.bends] == pytest.approx(turns)
    way = station.way(Method.TAG)
    rubbed = sum(mu * turn for mu, turn in zip((0.2, 0.4, 0.3), turns, strict=True))
    assert way.haul_above == pytest.approx(way.haul_tension * math.exp(rubbed))


def test_without_edges_the_haul_line_has_one_tension() -> None:
    for station in plan_raise(make_site(outcrop(25.0))).stations:
        for way in station.ways:
            assert way.haul_above == way.haul_tension


def test_the_other_ways_are_told_when_the_path_leaves_them_no_room() -> None:
    """Padding serves the tag line's haul line, but a track line would touch the outcrop."""
    plan = plan_raise(make_site(outcrop(25.0), guided_by=Method.TAG, edges=[(25.0, 0.3)]))
    way = plan.stations[0].way(Method.TRACK)
    assert not way.held
    assert way.unmet is not None
    assert way.unmet.cause is Cause.TRACK_LINE
    assert plan.summary(Method.TRACK).gaps[0].unmet is not None


@pytest.mark.parametrize("method", list(Method))
def test_limits_are_compared_only_if_entered(method: Method) -> None:
    free = plan_raise(make_site(outcrop(25.0), guided_by=method))
    assert {c.verdict for s in free.summaries for c in s.comparisons} == {Verdict.NO_LIMIT}
    largest = peak(free)
    name = {"track line": "track_tension", "tag line": "tag_tension", "attendant": "push"}[method]
    for limit, verdict in ((largest * 1.01, Verdict.INSIDE), (largest * 0.99, Verdict.OUTSIDE)):
        site = make_site(outcrop(25.0), guided_by=method, limits=Limits(**{name: limit}))
        assert plan_raise(site).summary().comparisons[0].verdict is verdict


def test_a_limit_is_not_called_kept_where_the_result_is_too_sensitive() -> None:
    site = make_site(guidance_ends=31.5, limits=Limits(track_tension=1e5))
    assert plan_raise(site).summary().comparisons[0].verdict is Verdict.TOO_SENSITIVE


def test_the_plan_names_all_three_ways_its_own_first() -> None:
    for method in Method:
        plan = plan_raise(make_site(guided_by=method))
        assert plan.summaries[0].method is method
        assert {summary.method for summary in plan.summaries} == set(Method)


def test_the_trace_follows_the_stations() -> None:
    plan = plan_raise(make_site(outcrop(25.0)))
    heights = [place.height for place in plan.trace]
    offsets = [place.offset for place in plan.trace]
    for station in plan.stations:
        assert np.interp(station.height, heights, offsets) == pytest.approx(
            station.offset, abs=0.03
        )


# --- what must never get better ---------------------------------------------------------------

few = settings(max_examples=15)
TIP_HEIGHTS, TIPS = st.floats(3.0, 26.0), st.floats(0.5, 3.0)


@few
@given(low=TIP_HEIGHTS, high=TIP_HEIGHTS, tip=TIPS)
def test_a_higher_outcrop_never_needs_less_tension(low: float, high: float, tip: float) -> None:
    """True while the body passes the whole outcrop below the height where guidance ends.

    At one offset the tension grows with height, and the haul line's demand below the tip grows
    with the tip's height; so every place the low outcrop asks for has one of more tension.
    """
    low, high = sorted((low, high))
    peaks = []
    for height in (low, high):
        plan = plan_raise(make_site(outcrop(height, tip)))
        assert not plan.summary().gaps
        peaks.append(hardest(plan))
    assert peaks[1] >= peaks[0] * (1 - 1e-6)


@few
@given(near=st.floats(20.0, 60.0), more=st.floats(0.0, 40.0), tip_height=TIP_HEIGHTS)
def test_a_hub_further_out_never_needs_more_tension(
    near: float, more: float, tip_height: float
) -> None:
    wall = outcrop(tip_height)
    closer, further = (plan_raise(make_site(wall, hub=(x, 0.5))) for x in (near, near + more))
    assert hardest(further) <= hardest(closer) * (1 + 1e-6)


@few
@given(tip_height=TIP_HEIGHTS, tip=TIPS, factor=st.floats(0.3, 3.0))
def test_forces_grow_in_step_with_the_load(tip_height: float, tip: float, factor: float) -> None:
    wall = outcrop(tip_height, tip)
    one, other = (plan_raise(make_site(wall, mass=m)) for m in (100.0, 100.0 * factor))
    assert hardest(other) == pytest.approx(hardest(one) * factor, rel=1e-6)
    assert other.track_play == pytest.approx(one.track_play)


@few
@given(tip_height=TIP_HEIGHTS, out=st.floats(0.0, 1.0))
def test_a_directional_further_out_never_needs_more_tension_at_a_place(
    tip_height: float, out: float
) -> None:
    base = make_site(outcrop(tip_height))
    moved = make_site(outcrop(tip_height), haul=(0.4 + out, 32.0))
    assert hardest(plan_raise(moved)) <= hardest(plan_raise(base)) * (1 + 1e-6)


def test_a_tag_line_and_a_track_line_from_one_directional_pull_alike() -> None:
    plan = plan_raise(make_site(outcrop(25.0)))
    for station in plan.stations:
        tag, track = station.way(Method.TAG), station.way(Method.TRACK)
        assert tag.line_tension == pytest.approx(track.line_tension)
        assert tag.haul_tension == pytest.approx(track.haul_tension + track.line_tension)


def test_a_site_is_not_changed_by_planning_it() -> None:
    site = make_site(outcrop(25.0))
    copy = replace(site)
    plan_raise(site)
    assert site == copy


def test_three_points_of_the_haul_line_in_one_line_are_no_turn_inwards() -> None:
    wall = ((0, 0), (-1, 8), (2, 10), (2, 20), (0, 25), (0, 30))
    edges = [(height, 0.3) for height in (8.0, 10.0, 20.0, 25.0)]
    site = make_site(wall, haul=(1.0, 32.0), edges=edges, guided_by=Method.ATTENDANT)
    plan = plan_raise(site)
    assert min(turn for s in plan.stations for _, turn in s.haul.bends) >= 0.0


coordinates = st.floats(-4, 6).map(lambda x: round(x, 1))


@st.composite
def any_sites(draw: st.DrawFn) -> Site:
    """Walls of any shape from foot to lip, any corners of them protected, any way of guiding."""
    heights = sorted(draw(st.lists(st.integers(1, 29), min_size=0, max_size=5, unique=True)))
    wall = [(draw(coordinates), float(z)) for z in (0, *heights, 30)]
    protected = [(float(z), draw(st.sampled_from((0.0, 0.3, 1.0)))) for z in heights]
    chosen = draw(st.sets(st.sampled_from(protected))) if protected else set()
    return make_site(
        wall,
        haul=(draw(coordinates), draw(st.sampled_from((29.5, 32.0, 40.0)))),
        track=draw(st.sampled_from((None, (0.8, 33.0)))),
        hub=(
            draw(st.sampled_from((9.0, 14.0, 40.0))),
            draw(st.sampled_from((-5.0, 0.5, 20.0, 45.0))),
        ),
        guided_by=draw(st.sampled_from(tuple(Method))),
        edges=sorted(chosen),
        guidance_ends=29.0,
        station_spacing=9.0,
    )


@settings(deadline=None, derandomize=True, max_examples=40)
@given(data=st.data())
def test_any_wall_has_a_plan_or_a_sentence(data: st.DataObject) -> None:
    try:
        plan = plan_raise(data.draw(any_sites()))
    except SiteError as error:
        assert len(str(error)) > 40
        return
    assert plan.stations and text_report(plan)
    for station in plan.stations:
        assert all(turn >= 0 for _, turn in station.haul.bends)


def test_what_the_derivations_refuse_is_said_in_a_sentence(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def refuse(**_: float) -> float:
        raise DomainError("The friction is too great. Take less.")

    monkeypatch.setattr("ropecalc.planning.raise_plan.capstan_tension", refuse)
    site = make_site(outcrop(20.0), edges=[(20.0, 0.3)], guided_by=Method.ATTENDANT)
    with pytest.raises(SiteError, match=r"cannot be worked out\. The friction is too great"):
        plan_raise(site)
