"""Where a litter can be held and with what forces, against coordinates, work, limits, symmetry."""

import math
from dataclasses import fields, replace
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from ropecalc.derivation import DomainError
from ropecalc.mechanics import guiding
from ropecalc.mechanics.holding import Hold, Method, Point, Reach, Rig, hold, too_shaky
from ropecalc.mechanics.straight import FLAT
from tests.mechanics.cases import (
    CASE,
    CASE_LOAD,
    Trial,
    distance,
    pulls,
    solve_balance,
    toward,
    trials,
)

every_method = pytest.mark.parametrize("method", Method)
REPEATABLE = settings(deadline=None, derandomize=True, max_examples=150)
LAYOUTS = [(m, apart) for m in Method for apart in (False, True)]
every_layout = pytest.mark.parametrize(
    ("method", "apart"), LAYOUTS, ids=[f"{m.name}-{'apart' if a else 'one'}" for m, a in LAYOUTS]
)
NUMBERS = [f.name for f in fields(Hold) if f.name not in ("method", "reach")]


def force_off(held: Hold) -> Any:
    """The force that keeps the litter off: the push, or the tension of the line to the hub."""
    return held.push if held.method is Method.ATTENDANT else held.line_tension


def inside(trial: Trial, method: Method) -> Any:
    """Places between the wall side and the hub, below the directionals that lift."""
    rig, x, z = trial.rig, trial.x, trial.z
    top = rig.haul_directional.z
    if method is Method.TRACK:
        top = min(top, rig.track_directional.z)
    within = (x > rig.haul_directional.x) & (z < top)
    return within if method is Method.ATTENDANT else within & (x < rig.hub.x)


# --- balance of forces -----------------------------------------------------------------------


@every_layout
def test_forces_balance_in_coordinates(method: Method, apart: bool) -> None:
    checked = 0
    for trial in trials(60, 150, seed=1, apart=apart):
        held = hold(method, trial.rig, trial.load, trial.x, trial.z)
        ok = held.reach == Reach.HELD
        haul, other = pulls(method, trial.rig, trial.x[ok], trial.z[ok])
        one = np.ma.getdata(held.haul_tension)[ok]
        two = np.ma.getdata(force_off(held))[ok]
        left_over = one[:, None] * haul + two[:, None] * other - np.array([0.0, trial.load])
        size = np.maximum(np.maximum(one, two), trial.load)
        assert (np.abs(left_over).max(axis=1, initial=0.0) <= 1e-9 * size).all()
        assert (one >= 0).all() and (two > 0).all()
        checked += int(ok.sum())
    assert checked > 1500


@every_layout
def test_the_verdict_is_the_sign_of_the_balance(method: Method, apart: bool) -> None:
    seen = set()
    for trial in trials(60, 150, seed=2, apart=apart):
        held = hold(method, trial.rig, trial.load, trial.x, trial.z)
        one, two = solve_balance(method, trial.rig, trial.load, trial.x, trial.z)
        within = inside(trial, method)
        haul, other = pulls(method, trial.rig, trial.x, trial.z)
        apart_by = haul[:, 0] * other[:, 1] - haul[:, 1] * other[:, 0]
        told = np.abs(apart_by) > 1.001 * FLAT  # else the pulls lie in one line, or nearly
        clear = (np.abs(one) > 1e-6 * trial.load) & told & within
        assert not (held.reach[within & (np.abs(apart_by) < 0.999 * FLAT)] == Reach.HELD).any()
        possible = clear & (one > 0) & (two > 0)
        assert (held.reach[possible] == Reach.HELD).all()
        assert not (held.reach[clear & ~possible] == Reach.HELD).any()
        beyond = clear & (two < 0)
        assert (held.reach[beyond] == Reach.BEYOND_LINE).all()
        slack = clear & (two > 0) & (one < 0)
        assert (held.reach[slack] == Reach.HAUL_SLACK).all()
        seen |= set(np.unique(held.reach).tolist())
    expected = {Reach.HELD, Reach.ABOVE_DIRECTIONAL, Reach.INSIDE_PLUMB}
    if method is not Method.ATTENDANT:
        expected |= {Reach.BEYOND_HUB, Reach.BEYOND_LINE}
    if method is Method.TRACK:
        expected.add(Reach.HAUL_SLACK)
    assert seen == expected


@every_layout
def test_every_held_place_has_every_number_and_no_other_has_one(
    method: Method, apart: bool
) -> None:
    for trial in trials(20, 150, seed=3, apart=apart):
        held = hold(method, trial.rig, trial.load, trial.x, trial.z)
        possible = np.isin(held.reach, [Reach.HELD, Reach.PLUMB])
        for name in NUMBERS:
            values = getattr(held, name)
            if (method, name) == (Method.ATTENDANT, "litter_angle"):  # there is no ground leg
                assert np.ma.getmaskarray(values).all()
                continue
            assert (np.ma.getmaskarray(values) == ~possible).all(), name
            assert np.isfinite(np.ma.getdata(values)[possible]).all(), name


@every_layout
def test_angles_from_coordinates(method: Method, apart: bool) -> None:
    for trial in trials(20, 100, seed=4, apart=apart):
        held = hold(method, trial.rig, trial.load, trial.x, trial.z)
        ok = held.reach == Reach.HELD
        x, z = trial.x[ok], trial.z[ok]
        up = toward(x, z, trial.rig.haul_directional)
        leg = toward(x, z, trial.rig.track_directional)
        ground = toward(x, z, trial.rig.hub)
        if method is not Method.ATTENDANT:
            between = np.degrees(np.arccos(np.clip((up * ground).sum(axis=1), -1, 1)))
            shown = np.degrees(held.litter_angle[ok])
            if apart:  # beyond the haul directional's own straight line it passes 180°
                shown = np.minimum(shown, 360.0 - shown)
            np.testing.assert_allclose(shown, between, atol=1e-4)
            np.testing.assert_allclose(
                np.sin(held.ground_depression[ok]), -ground[:, 1], atol=1e-12
            )
            np.testing.assert_allclose(
                held.hub_uplift[ok], -held.line_tension[ok] * ground[:, 1], atol=1e-6, rtol=1e-9
            )
        np.testing.assert_allclose(np.sin(held.haul_elevation[ok]), up[:, 1], atol=1e-12)
        np.testing.assert_allclose(np.cos(held.haul_elevation[ok]), -up[:, 0], atol=1e-12)
        np.testing.assert_allclose(np.cos(held.track_elevation[ok]), -leg[:, 0], atol=1e-12)


@every_layout
def test_one_place_and_many_places_agree(method: Method, apart: bool) -> None:
    for trial in trials(4, 60, seed=5, apart=apart):
        many = hold(method, trial.rig, trial.load, trial.x, trial.z)
        for i, (x, z) in enumerate(zip(trial.x.tolist(), trial.z.tolist(), strict=True)):
            one = hold(method, trial.rig, trial.load, x, z)
            assert one.reach is Reach(int(many.reach[i]))
            for name in NUMBERS:
                value, array = getattr(one, name), getattr(many, name)
                absent = (method, name) == (Method.ATTENDANT, "litter_angle")
                if one.reach.possible and not absent:
                    assert value == pytest.approx(array[i], rel=1e-12, abs=1e-12), name
                else:
                    assert value is None and array[i] is np.ma.masked, name


def test_grids_broadcast() -> None:
    x, z = np.linspace(1, 5, 7), np.linspace(2, 30, 9)[:, None]
    held = hold(Method.TRACK, CASE, CASE_LOAD, x, z)
    assert held.reach.shape == held.haul_tension.shape == (9, 7)
    assert (
        held.line_tension[4, 3] == hold(Method.TRACK, CASE, CASE_LOAD, x[3], z[4, 0]).line_tension
    )
    listed = hold(Method.TAG, CASE, CASE_LOAD, [1, 2], 10)
    assert listed.haul_tension.shape == (2,)


# --- virtual work ----------------------------------------------------------------------------


def lengths(method: Method, rig: Rig, x: Any, z: Any) -> tuple[Any, Any]:
    """Rope length of the haul line, and of whatever holds off, in m."""
    other = distance(x, z, rig.hub)
    if method is Method.TRACK:
        track, hub = rig.track_directional, rig.hub
        other = guiding.track_length(x=x, z=z, x_A=track.x, z_A=track.z, x_B=hub.x, z_B=hub.z)
    return distance(x, z, rig.haul_directional), other


@pytest.mark.parametrize("direction", [0.0, 37.0, 90.0, 151.0, 270.0])
@every_layout
def test_rope_work_equals_weight_work(method: Method, apart: bool, direction: float) -> None:
    """Along a small displacement, tension times rope taken in adds up to weight times rise."""
    if method is Method.ATTENDANT:
        return  # its push is along x by definition; the balance above is all there is
    step = 1e-5
    out, up = step * math.cos(math.radians(direction)), step * math.sin(math.radians(direction))
    for trial in trials(30, 60, seed=6, apart=apart):
        held = hold(method, trial.rig, trial.load, trial.x, trial.z)
        ok = (held.reach == Reach.HELD) & (np.ma.filled(held.line_tension, 1e9) < 20 * trial.load)
        ok &= distance(trial.x, trial.z, trial.rig.haul_directional) > 1.0
        ok &= distance(trial.x, trial.z, trial.rig.track_directional) > 1.0
        x, z = trial.x[ok], trial.z[ok]
        before, after = (lengths(method, trial.rig, x + s * out, z + s * up) for s in (-1.0, 1.0))
        work = held.haul_tension[ok] * (before[0] - after[0])
        work = work + held.line_tension[ok] * (before[1] - after[1])
        np.testing.assert_allclose(work, 2 * up * trial.load, atol=1e-5 * step * trial.load * 20)


@every_layout
def test_rope_to_take_in_is_what_the_length_changes(method: Method, apart: bool) -> None:
    for trial in trials(30, 60, seed=7, apart=apart):
        held = hold(method, trial.rig, trial.load, trial.x, trial.z)
        ok = held.reach == Reach.HELD
        ok &= distance(trial.x, trial.z, trial.rig.track_directional) > 0.5
        if method is Method.ATTENDANT:
            assert (held.take_in_rate[ok] == 0).all()
            continue
        x, z, step = trial.x[ok], trial.z[ok], 1e-5
        lower, upper = (lengths(method, trial.rig, x, z + s * step)[1] for s in (-1, 1))
        np.testing.assert_allclose(held.take_in_rate[ok], (lower - upper) / (2 * step), atol=1e-7)


def test_the_take_in_rate_is_the_share_the_track_lifts() -> None:
    for trial in trials(20, 60, seed=8, apart=False):
        held = hold(Method.TRACK, trial.rig, trial.load, trial.x, trial.z)
        ok = held.reach == Reach.HELD
        lift = guiding.track_lift(
            track_tension=np.ma.getdata(held.line_tension)[ok],
            haul_elevation=np.ma.getdata(held.haul_elevation)[ok],
            ground_depression=np.ma.getdata(held.ground_depression)[ok],
        )
        np.testing.assert_allclose(lift, held.take_in_rate[ok] * held.line_tension[ok], atol=1e-6)
        up = toward(trial.x[ok], trial.z[ok], trial.rig.haul_directional)[:, 1]
        np.testing.assert_allclose(lift + held.haul_tension[ok] * up, trial.load, rtol=1e-9)


@pytest.mark.parametrize("method", [Method.TAG, Method.TRACK])
@pytest.mark.parametrize("track_top", [Point(0.3, 32.0), Point(0.8, 33.5)])
def test_work_over_a_whole_raise(method: Method, track_top: Point) -> None:
    """Haul work and tensioner work along a bent path add up to the weight's rise, by quadrature."""
    rig = replace(CASE, track_directional=track_top)
    leg = np.linspace(0.0, 1.0, 4001)
    x = np.concatenate([7.8 + leg * (2.0 - 7.8), 2.0 + leg[1:] * (0.8 - 2.0)])
    z = np.concatenate([1.0 + leg * 24.0, 25.0 + leg[1:] * 5.0])
    held = hold(method, rig, CASE_LOAD, x, z)
    assert (held.reach == Reach.HELD).all()
    work = []
    for tension, rope in zip(
        (held.haul_tension, held.line_tension), lengths(method, rig, x, z), strict=True
    ):
        mean = 0.5 * (tension[1:] + tension[:-1])
        work.append(float((mean * -np.diff(rope)).sum()))
    assert sum(work) == pytest.approx(CASE_LOAD * 29.0, rel=2e-6)
    if track_top == CASE.track_directional:
        # an independent calculation made for this project, in kJ
        expected = (49.6, 7.3) if method is Method.TRACK else (67.1, -10.2)
        assert [w / 1000 for w in work] == pytest.approx(expected, abs=0.06)


# --- values of the worked case: an independent calculation made for this project ---------------


@pytest.mark.parametrize(
    ("method", "track_top", "haul", "line"),
    [
        (Method.TAG, 32.0, 3.1097, 1.5335),
        (Method.TRACK, 32.0, 1.5762, 1.5335),
        (Method.TRACK, 33.0, 1.6028, 1.3664),
    ],
)
def test_the_worked_case(method: Method, track_top: float, haul: float, line: float) -> None:
    rig = replace(CASE, track_directional=Point(0.3, track_top))
    held = hold(method, rig, CASE_LOAD, 2.5, 27.0)
    assert held.haul_tension / 1000 == pytest.approx(haul, abs=5e-5)
    assert held.line_tension / 1000 == pytest.approx(line, abs=5e-5)
    assert math.degrees(held.haul_elevation) == pytest.approx(66.251, abs=5e-4)
    assert math.degrees(held.ground_depression) == pytest.approx(35.248, abs=5e-4)
    assert math.degrees(held.litter_angle) == pytest.approx(149.0, abs=0.05)


@pytest.mark.parametrize(
    ("z", "share", "angle", "limit"),
    [
        (3, 0.08, 98, 36.9), (6, 0.09, 103, 33.1), (10, 0.11, 110, 28.0), (15, 0.15, 118, 21.7),
        (20, 0.23, 128, 15.4), (25, 0.47, 141, 9.1), (27, 0.78, 149, 6.6), (28, 1.14, 155, 5.3),
        (29, 2.08, 164, 4.1),
    ],
)  # fmt: skip
def test_the_profile_of_the_worked_case(z: float, share: float, angle: float, limit: float) -> None:
    held = hold(Method.TRACK, CASE, CASE_LOAD, 2.5, z)
    assert held.line_tension / CASE_LOAD == pytest.approx(share, abs=0.006)
    assert math.degrees(held.litter_angle) == pytest.approx(angle, abs=0.6)
    low, high = 0.31, 39.9
    for _ in range(60):
        middle = 0.5 * (low + high)
        reach = hold(Method.TRACK, CASE, CASE_LOAD, middle, z).reach
        low, high = (middle, high) if reach is Reach.HELD else (low, middle)
    assert low == pytest.approx(limit, abs=0.06)


@pytest.mark.parametrize(
    ("change", "line", "haul"),
    [
        ({"top": (0.8, 32.0)}, 1.07, 2.73), ({"top": (1.3, 32.0)}, 0.69, 2.43),
        ({"top": (0.3, 33.0)}, 1.19, 2.82), ({"hub": 60.0}, 1.19, 2.69),
        ({"hub": 20.0}, 4.69, 6.42),
        ({"mass": 115.0}, 0.88, 1.79),
    ],
)  # fmt: skip
def test_remedies_of_the_worked_case(change: dict[str, Any], line: float, haul: float) -> None:
    top = Point(*change.get("top", (0.3, 32.0)))
    rig = Rig(top, top, Point(change.get("hub", 40.0), 0.5))
    load = change.get("mass", 200.0) * 9.80665
    track = hold(Method.TRACK, rig, load, 2.5, 27.0)
    tag = hold(Method.TAG, rig, load, 2.5, 27.0)
    assert track.line_tension / 1000 == pytest.approx(line, abs=0.006)
    assert tag.haul_tension / 1000 == pytest.approx(haul, abs=0.006)


@pytest.mark.parametrize(("z", "rate"), [(2, 0.957), (10, 0.749), (20, 0.522), (27, 0.338)])
def test_take_in_of_the_worked_case(z: float, rate: float) -> None:
    assert hold(Method.TRACK, CASE, CASE_LOAD, 2.5, z).take_in_rate == pytest.approx(rate, abs=6e-4)


# --- how the methods are related --------------------------------------------------------------


def test_tag_and_track_pull_alike_and_the_track_relieves_the_haul_line_by_its_tension() -> None:
    for trial in trials(40, 80, seed=9, apart=False):
        tag = hold(Method.TAG, trial.rig, trial.load, trial.x, trial.z)
        track = hold(Method.TRACK, trial.rig, trial.load, trial.x, trial.z)
        ok = track.reach == Reach.HELD
        assert (tag.reach[ok] == Reach.HELD).all()
        np.testing.assert_allclose(track.line_tension[ok], tag.line_tension[ok], rtol=1e-9)
        np.testing.assert_allclose(track.hub_uplift[ok], tag.hub_uplift[ok], rtol=1e-9, atol=1e-9)
        relief = tag.haul_tension[ok] - tag.line_tension[ok]
        np.testing.assert_allclose(
            track.haul_tension[ok], relief, atol=1e-9 * tag.haul_tension.max()
        )
        assert (track.haul_tension[ok] <= trial.load * (1 + 1e-9)).all()
        low_hub = ok & (trial.z >= trial.rig.hub.z)
        assert (tag.haul_tension[low_hub] >= trial.load * (1 - 1e-9)).all()


def test_the_level_tag_line_is_the_attendants_push() -> None:
    rng = np.random.default_rng(10)
    for x, z in zip(rng.uniform(1, 10, 50), rng.uniform(1, 31, 50), strict=True):
        rig = replace(CASE, hub=Point(40.0, z))
        tag = hold(Method.TAG, rig, CASE_LOAD, x, z)
        push = hold(Method.ATTENDANT, rig, CASE_LOAD, x, z)
        assert tag.line_tension == pytest.approx(push.push, rel=1e-12)
        assert tag.haul_tension == pytest.approx(push.haul_tension, rel=1e-12)
        assert push.line_tension == 0 and tag.push == 0


@pytest.mark.parametrize("way", [(1.0, 0.0), (0.0, 1.0), (-0.6, 0.8), (0.6, -0.8)])
def test_bringing_the_track_directional_to_the_haul_directional(way: tuple[float, float]) -> None:
    x, z = np.linspace(0.8, 5, 9), np.linspace(2, 26, 9)
    together = hold(Method.TRACK, CASE, CASE_LOAD, x, z)
    gaps = []
    for apart in (1e-2, 1e-4, 1e-6):
        top = Point(0.3 + apart * way[0], 32.0 + apart * way[1])
        near = hold(Method.TRACK, replace(CASE, track_directional=top), CASE_LOAD, x, z)
        gaps.append(
            max(
                float(np.abs(getattr(near, n) - getattr(together, n)).max())
                for n in ("haul_tension", "line_tension", "hub_uplift", "take_in_rate")
            )
        )
    assert gaps[1] < 0.02 * gaps[0] and gaps[2] < 0.02 * gaps[1] and gaps[2] < 0.02
    angles = {
        "haul_elevation": np.ma.getdata(together.haul_elevation),
        "ground_depression": np.ma.getdata(together.ground_depression),
    }
    np.testing.assert_allclose(
        together.line_tension, guiding.track_tension(load=CASE_LOAD, **angles), rtol=1e-12
    )
    np.testing.assert_allclose(
        together.haul_tension, guiding.haul_tension_with_track(load=CASE_LOAD, **angles), rtol=1e-9
    )


# --- limits -----------------------------------------------------------------------------------


def held_up_to(method: Method, rig: Rig, z: float, low: float, high: float) -> float:
    """How far out ``hold`` says yes, by bisection on its verdict."""
    for _ in range(80):
        middle = 0.5 * (low + high)
        if hold(method, rig, 2000.0, middle, z).reach is Reach.HELD:
            low = middle
        else:
            high = middle
    return low


@pytest.mark.parametrize("method", [Method.TAG, Method.TRACK])
def test_the_straight_line_is_where_the_verdict_turns(method: Method) -> None:
    rng = np.random.default_rng(12)
    for _ in range(40):
        top = Point(rng.uniform(0, 1.5), rng.uniform(15, 50))
        hub = Point(rng.uniform(15, 80), rng.uniform(-3, 10))
        z = rng.uniform(hub.z + 0.5, top.z - 0.5)
        edge = held_up_to(method, Rig(top, top, hub), z, top.x + 1e-3, hub.x - 1e-9)
        share = (top.z - z) / (top.z - hub.z)  # the straight line, by similar triangles
        limit = guiding.straight_line_limit(z=z, x_D=top.x, z_D=top.z, x_B=hub.x, z_B=hub.z)
        assert limit == pytest.approx(top.x + share * (hub.x - top.x), rel=1e-12)
        up, ground = toward(edge, z, top), toward(edge, z, hub)
        turn = ground[0] * up[1] - ground[1] * up[0]
        assert turn == pytest.approx(FLAT, rel=1e-5) and edge < limit  # two centimetres or so
        nearest = guiding.hub_limit(x=limit, z=z, x_D=top.x, z_D=top.z, z_B=hub.z)
        assert nearest == pytest.approx(hub.x, rel=1e-9)


def test_near_the_straight_line_tension_grows_and_the_haul_line_of_a_track_does_not() -> None:
    limit = 0.3 + (40 - 0.3) * (32.0 - 20.0) / (32.0 - 0.5)
    tensions = []
    for short in (0.3, 0.1, 0.02):
        held = hold(Method.TRACK, CASE, CASE_LOAD, limit - short, 20.0)
        tensions.append(held.line_tension)
        slope = math.atan2(31.5, 39.7)  # of the straight line itself
        assert held.haul_tension == pytest.approx(CASE_LOAD * math.sin(slope), abs=11 * short)
        assert math.degrees(held.litter_angle) == pytest.approx(180, abs=3 * short)
    ratios = [b / a for a, b in pairwise(tensions)]
    assert ratios == pytest.approx([3, 5], rel=0.02)  # inversely with the distance left
    for beyond in (limit - 0.019, limit - 1e-9, limit, limit + 1e-9, limit + 5):
        assert hold(Method.TRACK, CASE, CASE_LOAD, beyond, 20.0).reach is Reach.BEYOND_LINE


@every_method
def test_near_plumb_the_haul_line_carries_the_weight_alone(method: Method) -> None:
    for off in (1e-2, 1e-4, 1e-6):
        held = hold(method, CASE, CASE_LOAD, 0.3 + off, 20.0)
        assert held.haul_tension == pytest.approx(CASE_LOAD, abs=300 * off)
        outward = force_off(held) * (1.0 if method is Method.ATTENDANT else 39.7 / 44.231)
        assert outward == pytest.approx(CASE_LOAD * off / 12.0, rel=0.002)
    plumb = hold(method, CASE, CASE_LOAD, 0.3, 20.0)
    assert plumb.reach is Reach.PLUMB and plumb.haul_tension == CASE_LOAD
    assert plumb.line_tension == plumb.push == plumb.hub_uplift == 0
    assert math.degrees(plumb.haul_elevation) == 90


def test_the_haul_line_goes_slack_where_both_track_legs_rise_alike() -> None:
    """Bisect the hub's height for the last verdict, then compare with a load on a bare span."""
    for x, z in [(2.5, 27.0), (4.0, 20.0), (10.0, 8.0)]:
        low, high = z, 300.0
        for _ in range(80):
            middle = 0.5 * (low + high)
            rig = replace(CASE, hub=Point(40.0, middle))
            held = hold(Method.TRACK, rig, CASE_LOAD, x, z).reach is Reach.HELD
            low, high = (middle, high) if held else (low, middle)
        rise = (low - z) / (40.0 - x)
        assert rise == pytest.approx((32.0 - z) / (x - 0.3), rel=1e-9)
        last = hold(Method.TRACK, replace(CASE, hub=Point(40.0, low - 1e-7)), CASE_LOAD, x, z)
        assert last.haul_tension == pytest.approx(0, abs=1e-4)
        up = toward(x, z, CASE.haul_directional)[1]
        assert last.line_tension == pytest.approx(CASE_LOAD / (2 * up), rel=1e-6)


# --- symmetry, scaling, order -----------------------------------------------------------------


def test_two_lines_from_above_can_change_places() -> None:
    """Mirror the picture: with the hub above the litter, tag line and haul line swap tensions."""
    rng = np.random.default_rng(13)
    for _ in range(200):
        top, hub = Point(0.5, rng.uniform(20, 40)), Point(rng.uniform(20, 60), rng.uniform(20, 40))
        x, z = rng.uniform(1, hub.x - 0.5), rng.uniform(1, 19)
        here = hold(Method.TAG, Rig(top, top, hub), 2000.0, x, z)
        width = top.x + hub.x
        seen = Rig(Point(width - hub.x, hub.z), Point(0, 50), Point(width - top.x, top.z))
        there = hold(Method.TAG, seen, 2000.0, width - x, z)
        assert here.haul_tension == pytest.approx(there.line_tension, rel=1e-10)
        assert here.line_tension == pytest.approx(there.haul_tension, rel=1e-10)


def moved(rig: Rig, scale: float, x: float, z: float) -> Rig:
    """The rig enlarged and shifted."""
    return Rig(
        *(
            Point(scale * p.x + x, scale * p.z + z)
            for p in (rig.haul_directional, rig.track_directional, rig.hub)
        )
    )


@every_layout
def test_forces_follow_the_load_and_not_the_size_or_the_place(method: Method, apart: bool) -> None:
    for trial in trials(15, 40, seed=14, apart=apart):
        first = hold(method, trial.rig, trial.load, trial.x, trial.z)
        ok = first.reach == Reach.HELD
        tripled = hold(method, trial.rig, 3 * trial.load, trial.x, trial.z)
        assert (tripled.reach == first.reach).all()
        larger = hold(
            method, moved(trial.rig, 2.5, 7.0, -11.0), trial.load,
            2.5 * trial.x + 7.0, 2.5 * trial.z - 11.0,
        )  # fmt: skip
        for name in ("haul_tension", "line_tension", "push", "hub_uplift"):
            value = np.ma.getdata(getattr(first, name))[ok]
            np.testing.assert_allclose(
                getattr(tripled, name)[ok], 3 * value, rtol=1e-12, atol=1e-12
            )
            close = np.ma.filled(first.line_tension, 1e9)[ok] < 100 * trial.load
            np.testing.assert_allclose(
                np.ma.getdata(getattr(larger, name))[ok][close], value[close], rtol=1e-8, atol=1e-7
            )


PLACES = st.tuples(st.floats(0.4, 12.0), st.floats(1.0, 31.5))


@given(PLACES, st.floats(1.01, 2.0))
@REPEATABLE
def test_further_out_pulls_harder(place: tuple[float, float], factor: float) -> None:
    x, z = place
    for method in Method:
        near, far = (hold(method, CASE, CASE_LOAD, v, z) for v in (x, 0.3 + factor * (x - 0.3)))
        assume(near.reach is Reach.HELD and far.reach is Reach.HELD)
        assert force_off(far) > force_off(near)
        if method is Method.TRACK:
            assert far.haul_tension < near.haul_tension
        else:
            assert far.haul_tension > near.haul_tension


@given(PLACES, st.floats(0.5, 30.0))
@REPEATABLE
def test_a_hub_further_out_pulls_less(place: tuple[float, float], more: float) -> None:
    x, z = place
    far = replace(CASE, hub=Point(40.0 + more, 0.5))
    for method in (Method.TAG, Method.TRACK):
        one, two = hold(method, CASE, CASE_LOAD, x, z), hold(method, far, CASE_LOAD, x, z)
        assume(one.reach is Reach.HELD)
        assert two.reach is Reach.HELD
        assert two.line_tension < one.line_tension
        assert two.haul_tension < one.haul_tension
        assert two.hub_uplift < one.hub_uplift


@given(PLACES, st.floats(0.1, 4.0))
@REPEATABLE
def test_a_higher_directional_pulls_less(place: tuple[float, float], more: float) -> None:
    x, z = place
    for method in Method:
        top = Point(0.3, 32.0 + more)
        one = hold(method, CASE, CASE_LOAD, x, z)
        two = hold(method, Rig(top, top, CASE.hub), CASE_LOAD, x, z)
        assume(one.reach is Reach.HELD)
        assert two.reach is Reach.HELD and force_off(two) < force_off(one)


@given(PLACES, st.floats(0.1, 4.0))
@REPEATABLE
def test_a_higher_track_directional_relieves_the_track(
    place: tuple[float, float], more: float
) -> None:
    x, z = place
    one = hold(Method.TRACK, CASE, CASE_LOAD, x, z)
    assume(one.reach is Reach.HELD)
    higher = replace(CASE, track_directional=Point(0.3, 32.0 + more))
    two = hold(Method.TRACK, higher, CASE_LOAD, x, z)
    assert two.reach is Reach.HELD and two.line_tension < one.line_tension


# --- refusals and words -----------------------------------------------------------------------


@pytest.mark.parametrize("bad", [math.nan, math.inf, "2", None, 1j, [1.0, math.nan]])
def test_places_that_are_no_numbers_are_refused(bad: Any) -> None:
    for x, z in ((bad, 20.0), (2.0, bad)):
        with pytest.raises(DomainError):
            hold(Method.TAG, CASE, CASE_LOAD, x, z)


@pytest.mark.parametrize("bad", [0.0, -5.0, math.nan, math.inf, "2000", [2000.0, 1000.0]])
def test_loads_that_are_no_load_are_refused(bad: Any) -> None:
    with pytest.raises(DomainError, match="load"):
        hold(Method.TAG, CASE, bad, 2.0, 20.0)


@pytest.mark.parametrize("which", ["haul_directional", "track_directional", "hub"])
@pytest.mark.parametrize("bad", [Point(math.nan, 1.0), Point(1.0, math.inf)])
def test_a_rig_without_finite_places_is_refused(which: str, bad: Point) -> None:
    with pytest.raises(DomainError, match="not a finite number"):
        hold(Method.ATTENDANT, replace(CASE, **{which: bad}), CASE_LOAD, 2.0, 20.0)


def test_each_verdict_at_a_place_made_for_it() -> None:
    high_hub = replace(CASE, hub=Point(6.0, 40.0))
    low_track = replace(CASE, track_directional=Point(0.3, 25.0))
    table = [
        (Method.TRACK, CASE, 2.5, 20.0, Reach.HELD), (Method.TAG, CASE, 0.3, 20.0, Reach.PLUMB),
        (Method.ATTENDANT, CASE, 2.0, 32.0, Reach.ABOVE_DIRECTIONAL),
        (Method.ATTENDANT, CASE, 10.3, 31.9901, Reach.ABOVE_DIRECTIONAL),
        (Method.ATTENDANT, CASE, 10.3, 31.9899, Reach.HELD),
        (Method.TRACK, low_track, 2.0, 26.0, Reach.ABOVE_DIRECTIONAL),
        (Method.TAG, low_track, 2.0, 26.0, Reach.HELD),
        (Method.TAG, CASE, 0.2, 20.0, Reach.INSIDE_PLUMB),
        (Method.TRACK, CASE, 40.0, -5.0, Reach.BEYOND_HUB),
        (Method.ATTENDANT, CASE, 45.0, -5.0, Reach.HELD),
        (Method.TAG, CASE, 30.0, 20.0, Reach.BEYOND_LINE),
        (Method.TRACK, CASE, 30.0, 20.0, Reach.BEYOND_LINE),
        (Method.TRACK, high_hub, 4.0, 20.0, Reach.HAUL_SLACK),
        (Method.TAG, high_hub, 4.0, 20.0, Reach.HELD),
    ]  # fmt: skip
    for method, rig, x, z, verdict in table:
        held = hold(method, rig, CASE_LOAD, x, z)
        assert held.reach is verdict, (method, x, z)
        assert (held.haul_tension is None) is not verdict.possible
    assert {row[-1] for row in table} == set(Reach)


def test_every_verdict_speaks() -> None:
    sentences = {reach.sentence for reach in Reach}
    assert len(sentences) == len(Reach)
    for reach in Reach:
        assert reach.sentence.endswith(".")
        if not reach.possible:
            assert any(w in reach.sentence for w in ("Move", "Lower", "Bring")), reach


# --- how much a small error of place matters ----------------------------------------------------


@pytest.mark.parametrize(
    ("here", "further", "nearer", "shaky"),
    [
        (1000.0, 1499.0, 700.0, False),
        (1000.0, 1501.0, 700.0, True),  # more than half as much again further out
        (1000.0, 1100.0, 499.0, True),  # more than half gone further in
        (100.0, 290.0, 0.0, False),  # doubles and more, but by less than a tenth of the load
        (100.0, 310.0, 0.0, True),
        (1000.0, math.nan, 700.0, True),  # further out nothing holds it
        (400.0, 500.0, math.nan, True),  # further in it needs no holding: all of it is gone
        (math.nan, 500.0, 400.0, False),  # not held here, so there is nothing to rely on
    ],
)
def test_where_an_effort_cannot_be_relied_on(
    here: float, further: float, nearer: float, shaky: bool
) -> None:
    assert bool(too_shaky(2000.0, here, further, nearer)) is shaky
    both = too_shaky(2000.0, np.array([here, 1.0]), np.array([further, 1.0]), np.array([nearer, 1]))
    assert both.tolist() == [shaky, False]


def test_a_method_may_be_given_by_its_words_but_not_by_others() -> None:
    """Words that are not a member must not count as track lines."""
    tag = hold("tag line", CASE, CASE_LOAD, 2.5, 27.0)
    assert tag == hold(Method.TAG, CASE, CASE_LOAD, 2.5, 27.0) and tag.method is Method.TAG
    assert (
        tag.haul_tension > CASE_LOAD > hold("track line", CASE, CASE_LOAD, 2.5, 27.0).haul_tension
    )
    with pytest.raises(DomainError, match="must be attendant, tag line or track line"):
        hold("rope", CASE, CASE_LOAD, 2.5, 27.0)
