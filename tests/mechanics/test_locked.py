"""A locked tensioner against the ellipse itself, energy, and balances from coordinates."""

from math import radians

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.holding import Method, Point, Reach, Rig, hold
from ropecalc.mechanics.locked import OUT_BEFORE_DOWN, locked_offset, move_locked, swing_in_rate
from ropecalc.mechanics.slip import outward_balance
from ropecalc.mechanics.stretch import BOTH_BOUNDS, ELASTIC
from ropecalc.units import Display
from tests.mechanics.cases import CASE, CASE_LOAD, distance, solve_balance
from tests.mechanics.settling import Rope, settle

SETTINGS = settings(derandomize=True, deadline=None, max_examples=50)
NEAR_OUTCROP = (CASE, CASE_LOAD, 2.5, 27.0)
FAR_OUT = (CASE, CASE_LOAD, 8.0, 2.0)


def way(rig: Rig, x: float, z: float) -> float:
    """Track rope from its directional past the litter to the hub."""
    return float(distance(x, z, rig.track_directional) + distance(x, z, rig.hub))


@st.composite
def starts(draw: st.DrawFn) -> tuple[Rig, float, float, float]:
    number = lambda low, high: draw(st.floats(low, high))  # noqa: E731
    top = Point(number(0, 1), number(18, 45))
    track = top
    if draw(st.booleans()):
        track = Point(top.x + number(0, 0.3), top.z + number(0, 2))
    hub = Point(number(20, 70), number(-4, 0.3 * top.z))
    z = number(hub.z + 5.5, 0.9 * top.z)
    limit = (hub.x - top.x) * (top.z - z) / (top.z - hub.z)
    x = top.x + number(0.15, 0.8) * limit
    load = number(800, 3000)
    rig = Rig(top, track, hub)
    assume(hold(Method.TRACK, rig, load, x, z).reach is Reach.HELD)
    return rig, load, x, z


# --- the ellipse -----------------------------------------------------------------------------


@SETTINGS
@given(starts())
def test_the_same_height_is_the_same_place(start: tuple[Rig, float, float, float]) -> None:
    rig, _, x, z = start
    found = locked_offset(
        track_length=way(rig, x, z),
        z=z,
        x_A=rig.track_directional.x,
        z_A=rig.track_directional.z,
        x_B=rig.hub.x,
        z_B=rig.hub.z,
    )
    assert found == pytest.approx(x, abs=1e-6)


def test_the_rope_keeps_its_length_at_every_height() -> None:
    rng = np.random.default_rng(7)
    for _ in range(50):
        track = Point(rng.uniform(-1, 2), rng.uniform(20, 40))
        hub = Point(rng.uniform(20, 70), rng.uniform(-5, 30))
        straight = np.hypot(hub.x - track.x, hub.z - track.z)
        length = straight * rng.uniform(1.001, 1.4)
        half = 0.5 * np.sqrt(length**2 - (hub.x - track.x) ** 2)
        z = 0.5 * (track.z + hub.z) + half * np.linspace(-0.999, 0.999, 21)
        x = locked_offset(track_length=length, z=z, x_A=track.x, z_A=track.z, x_B=hub.x, z_B=hub.z)
        total = distance(x, z, track) + distance(x, z, hub)
        np.testing.assert_allclose(total, length, rtol=1e-11)
        outer = 2 * (x.mean() - x) + x  # the other crossing lies further out at the same height
        assert (x <= np.maximum(outer, x)).all()
        inside = track.x + (hub.x - track.x) * (track.z - z) / (track.z - hub.z)
        between = (z < max(track.z, hub.z)) & (z > min(track.z, hub.z))
        assert (x[between] < inside[between]).all()  # on the wall's side of the straight line


def test_a_circle_where_both_ends_are_one() -> None:
    found = locked_offset(track_length=10.0, z=3.0, x_A=1.0, z_A=0.0, x_B=1.0 + 1e-9, z_B=0.0)
    assert found == pytest.approx(1.0 - 4.0, abs=1e-6)  # radius 5, a 3-4-5 triangle


def test_what_the_rope_cannot_do_is_refused() -> None:
    ends = {"x_A": 0.0, "z_A": 30.0, "x_B": 40.0, "z_B": 0.0}  # 50 m apart
    with pytest.raises(DomainError, match="longer than the straight way"):
        locked_offset(track_length=50.0, z=20.0, **ends)
    lowest = 15 - 0.5 * np.sqrt(51.0**2 - 40.0**2)
    assert locked_offset(track_length=51.0, z=lowest + 1e-6, **ends) < 40
    with pytest.raises(DomainError, match="track line alone carries it"):
        locked_offset(track_length=51.0, z=lowest - 1e-6, **ends)


@SETTINGS
@given(starts())
def test_swing_in_rate_is_the_slope_of_the_ellipse(start: tuple[Rig, float, float, float]) -> None:
    rig, load, x, z = start
    at = hold(Method.TRACK, rig, load, x, z)
    rate = swing_in_rate(track_elevation=at.track_elevation, ground_depression=at.ground_depression)
    step = 1e-4
    ends = {
        "x_A": rig.track_directional.x, "z_A": rig.track_directional.z,
        "x_B": rig.hub.x, "z_B": rig.hub.z,
    }  # fmt: skip
    low, high = locked_offset(track_length=way(rig, x, z), z=np.array([z - step, z + step]), **ends)
    assert rate == pytest.approx((low - high) / (2 * step), rel=1e-4)
    assert rate > 0


def test_swing_in_rate_needs_a_steeper_upper_leg() -> None:
    assert swing_in_rate(track_elevation=1.0, ground_depression=-0.99) > 100
    for down in (-1.0, 1.0):
        with pytest.raises(DomainError, match="steeper than its ground leg"):
            swing_in_rate(track_elevation=1.0, ground_depression=down)


# --- raising and lowering ---------------------------------------------------------------------


def test_independent_calculation_made_for_this_project() -> None:
    lowered = move_locked(*NEAR_OUTCROP, new_z=24.0, stiffness=50e3)
    assert lowered.rigid.x == pytest.approx(5.174, abs=5e-4)
    assert lowered.rigid.forces.line_tension == pytest.approx(2448, abs=0.5)
    assert lowered.elastic.x == pytest.approx(4.38, abs=0.005)
    assert lowered.elastic.forces.line_tension == pytest.approx(1810, abs=5)
    raised = move_locked(*FAR_OUT, new_z=6.0, stiffness=50e3)
    assert raised.rigid.x == pytest.approx(3.62, abs=0.005)
    assert raised.rigid.forces.line_tension == pytest.approx(260, abs=5)
    assert raised.elastic.x == pytest.approx(3.9, abs=0.05)
    far = move_locked(*FAR_OUT, new_z=10.0, stiffness=50e3)
    assert far.rigid.forces.reach is Reach.PLUMB and far.rigid.x == CASE.haul_directional.x
    assert far.elastic.x == pytest.approx(0.7, abs=0.05)
    for stiffness, rise in ((100e3, 1.27), (50e3, 1.18), (20e3, 1.10)):
        softer = move_locked(*NEAR_OUTCROP, new_z=24.0, stiffness=stiffness)
        more = softer.elastic.forces.line_tension / softer.before.forces.line_tension
        assert more == pytest.approx(rise, abs=0.01)


@SETTINGS
@given(starts(), st.floats(-0.5, 0.25), st.floats(4.3, 6.0))
def test_both_bounds_balance_and_the_elastic_one_obeys_hooke(
    start: tuple[Rig, float, float, float], share: float, stiff: float
) -> None:
    rig, load, x, z = start
    stiffness = 10**stiff
    room = z - rig.hub.z if share < 0 else rig.haul_directional.z - z
    new_z = z + share * room
    moved = move_locked(*start, new_z=new_z, stiffness=stiffness)
    assert moved.track_length == pytest.approx(way(rig, x, z), rel=1e-12)
    for bound in (moved.rigid, moved.elastic):
        if bound.forces.reach is Reach.PLUMB:
            assert bound.x == rig.haul_directional.x
            continue
        haul, line = solve_balance(Method.TRACK, rig, load, bound.x, new_z)
        assert bound.forces.haul_tension == pytest.approx(float(haul), rel=1e-7)
        assert bound.forces.line_tension == pytest.approx(float(line), rel=1e-7)
    if moved.rigid.forces.reach is Reach.HELD:
        assert way(rig, moved.rigid.x, new_z) == pytest.approx(moved.track_length, rel=1e-11)
    else:
        assert way(rig, moved.rigid.x, new_z) <= moved.track_length * (1 + 1e-9)
    loose = moved.track_length / (1 + moved.before.forces.line_tension / stiffness)
    stretched = stiffness * (way(rig, moved.elastic.x, new_z) / loose - 1)
    if moved.elastic.forces.reach is Reach.HELD:
        tension = moved.elastic.forces.line_tension
        assert tension == pytest.approx(stretched, rel=1e-5, abs=1e-6 * stiffness)
    else:
        assert stretched <= 1e-6 * stiffness


@SETTINGS
@given(starts(), st.floats(0.02, 0.5), st.floats(4.3, 6.0))
def test_lowering_swings_out_and_raising_swings_in_whatever_the_stretch(
    start: tuple[Rig, float, float, float], share: float, stiff: float
) -> None:
    rig, _, x, z = start
    lower = move_locked(*start, new_z=z - share * (z - rig.hub.z), stiffness=10**stiff)
    higher = move_locked(
        *start, new_z=z + 0.5 * share * (rig.haul_directional.z - z), stiffness=10**stiff
    )
    assert lower.rigid.x > x and lower.elastic.x > x - 1e-9
    assert higher.rigid.x < x and higher.elastic.x < x + 1e-9
    for moved in (lower, higher):
        before = moved.before.forces.line_tension
        rigid, elastic = moved.rigid.forces.line_tension, moved.elastic.forces.line_tension
        # stretch goes half the way to where it was: less rise of the tension, or less fall
        assert min(before, rigid) - 1e-6 <= elastic <= max(before, rigid) + 1e-6
        assert moved.largest_track_tension >= max(before, rigid, elastic) - 1e-6
        assert moved.least_x == min(moved.rigid.x, moved.elastic.x)


def test_far_out_and_low_down_the_tension_changes_the_other_way() -> None:
    """Lowering always swings out, but it does not raise the tension everywhere."""
    rig = Rig(Point(0.0, 18.0), Point(0.0, 18.0), Point(20.0, 0.0))
    lowered = move_locked(rig, 800.0, 10.0, 6.0, new_z=3.0, stiffness=1e5)
    assert lowered.rigid.x > 10.0
    before = lowered.before.forces.line_tension
    assert lowered.rigid.forces.line_tension < before
    assert before <= lowered.largest_track_tension < 1.01 * before
    assert lowered.elastic.x > lowered.rigid.x


def test_the_largest_tension_may_lie_on_the_way() -> None:
    rig = Rig(Point(0.0, 18.0), Point(0.0, 18.0), Point(20.0, 0.0))
    far = move_locked(rig, 800.0, 4.0, 13.0, new_z=1.0, stiffness=1e5)
    heights = np.linspace(13.0, 1.0, 4000)
    path = move_locked(rig, 800.0, 4.0, 13.0, new_z=heights, stiffness=1e5).rigid
    largest = path.forces.line_tension.max()
    assert largest > 1.1 * max(far.before.forces.line_tension, far.rigid.forces.line_tension)
    assert far.largest_track_tension == pytest.approx(float(largest), rel=1e-3)


def test_near_the_directional_lowering_tightens_the_line() -> None:
    for drop in (0.5, 1.0, 2.0, 3.0, 5.0):
        moved = move_locked(*NEAR_OUTCROP, new_z=27.0 - drop, stiffness=50e3)
        before = moved.before.forces.line_tension
        assert before < moved.elastic.forces.line_tension < moved.rigid.forces.line_tension
        assert moved.largest_track_tension == moved.rigid.forces.line_tension


def test_staying_where_it_is_changes_nothing() -> None:
    moved = move_locked(*NEAR_OUTCROP, new_z=27.0, stiffness=50e3)
    for bound in (moved.before, moved.rigid, moved.elastic):
        assert bound.x == pytest.approx(2.5, abs=1e-9)
        assert bound.forces.line_tension == pytest.approx(1533.5, abs=0.1)


def test_a_very_stiff_line_is_the_rigid_one() -> None:
    for new_z in (24.0, 29.0):
        moved = move_locked(*NEAR_OUTCROP, new_z=new_z, stiffness=1e11)
        assert moved.elastic.x == pytest.approx(moved.rigid.x, abs=1e-4)


@pytest.mark.parametrize(("start", "new_z"), [(NEAR_OUTCROP, 24.0), (FAR_OUT, 6.0)])
@pytest.mark.parametrize("stiffness", [20e3, 100e3])
def test_a_litter_that_settles_by_itself(
    start: tuple[Rig, float, float, float], new_z: float, stiffness: float
) -> None:
    moved = move_locked(*start, new_z=new_z, stiffness=stiffness)
    rig, load, x, z = start
    haul_stiffness = 1e5  # its length is chosen so that the litter rests at the new height
    leg = distance(moved.elastic.x, new_z, rig.haul_directional)
    haul = Rope(
        (rig.haul_directional,),
        leg / (1 + moved.elastic.forces.haul_tension / haul_stiffness),
        haul_stiffness,
    )
    loose = way(rig, x, z) / (1 + moved.before.forces.line_tension / stiffness)
    rest = settle(
        load, (haul, Rope((rig.track_directional, rig.hub), loose, stiffness)), (x, new_z)
    )
    assert (rest.x, rest.z) == pytest.approx((moved.elastic.x, new_z), abs=1e-3)
    assert rest.tensions[1] == pytest.approx(moved.elastic.forces.line_tension, rel=2e-3)


def test_a_high_hub_lets_the_track_line_carry_all() -> None:
    """As across a gorge: lowered far enough, the haul line goes slack and it goes no further."""
    rig = Rig(Point(0.0, 30.0), Point(0.0, 30.0), Point(40.0, 36.0))
    moved = move_locked(rig, 2000.0, 6.0, 22.0, new_z=21.0, stiffness=50e3)
    assert moved.elastic.x < moved.rigid.x
    with pytest.raises(DomainError, match="track line alone carries it"):
        move_locked(rig, 2000.0, 6.0, 22.0, new_z=1.0, stiffness=50e3)
    lowest = 33 - 0.5 * np.sqrt(moved.track_length**2 - 1600)
    near = move_locked(rig, 2000.0, 6.0, 22.0, new_z=lowest + 1e-3, stiffness=1e7)
    assert near.rigid.forces.haul_tension < 0.02 * 2000


def test_many_heights_are_the_single_ones() -> None:
    heights = np.array([[20.0, 24.0], [27.0, 29.5]])
    together = move_locked(*NEAR_OUTCROP, new_z=heights, stiffness=50e3)
    assert together.largest_track_tension.shape == together.least_x.shape == heights.shape
    for index, height in np.ndenumerate(heights):
        one = move_locked(*NEAR_OUTCROP, new_z=float(height), stiffness=50e3)
        for name in ("rigid", "elastic"):
            bound, single = getattr(together, name), getattr(one, name)
            assert bound.x[index] == pytest.approx(single.x, abs=1e-9)
            assert type(single.x) is float
            tension = bound.forces.line_tension[index]
            assert tension == pytest.approx(single.forces.line_tension, abs=1e-6)
        assert together.least_x[index] == pytest.approx(one.least_x, abs=1e-9)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"x": 9.0}, "straight line from directional to hub"),
        ({"x": 0.3}, "straight below the haul directional"),
        ({"x": np.array([2.0, 2.5])}, "give one place to start from"),
        ({"new_z": 32.0}, "at or above a directional"),
        ({"new_z": float("nan")}, "new height of the litter is not a finite"),
        ({"stiffness": 0.0}, "stiffness .* must be more than"),
    ],
)
def test_refusals(change: dict[str, object], words: str) -> None:
    values = {
        "rig": CASE, "load": CASE_LOAD, "x": 2.5, "z": 27.0, "new_z": 24.0, "stiffness": 5e4
    }  # fmt: skip
    with pytest.raises(DomainError, match=words):
        move_locked(**{**values, **change})  # type: ignore[arg-type]


def test_it_tells_both_bounds_in_words() -> None:
    lowered = move_locked(*NEAR_OUTCROP, new_z=24.0, stiffness=50e3)
    text = lowered.explain().as_text()
    assert "Lowering against a locked tensioner swings the litter out: the rope keeps" in text
    assert "Before: 2.50 m out from the wall, track tension 1.53 kN." in text
    assert "if nothing stretches: 5.17 m out from the wall, track tension 2.45 kN." in text
    assert "if the track line stretches: 4.38 m out from the wall, track tension 1.81 kN." in text
    assert text.endswith("track tension: allow for 2.45 kN; distance out: count on 4.38 m")
    further = move_locked(*NEAR_OUTCROP, new_z=23.5, stiffness=50e3)  # 2.5729 kN, 4.7268 m
    assert further.explain().result == (
        "track tension: allow for 2.58 kN; distance out: count on 4.72 m"
    )
    assert "550 lbf" in lowered.explain(Display(force="lbf")).as_text()
    raised = move_locked(*FAR_OUT, new_z=10.0, stiffness=50e3).explain()
    assert "Raising against a locked tensioner swings the litter in: the rope keeps" in str(raised)
    assert "gone slack and the litter hangs plumb, 0.300 m out from the wall." in str(raised)
    assert raised.cautions == lowered.cautions
    assert lowered.cautions[:3] == (ELASTIC, BOTH_BOUNDS, OUT_BEFORE_DOWN)
    assert OUT_BEFORE_DOWN in locked_offset.cautions
    assert cautions.STRETCHING in lowered.cautions and cautions.STATIC not in lowered.cautions
    assert {cautions.FRICTIONLESS, cautions.AUTHORITY} <= set(lowered.cautions)
    assert OUT_BEFORE_DOWN.startswith("Let the tensioner out before lowering.")
    assert raised.lines[0].is_law and not raised.lines[1].is_law


def test_level_track_and_mirrored_legs() -> None:
    """With legs that slope alike the litter swings in as the half-angle form says: 45°, 1 to 1."""
    rate = swing_in_rate(track_elevation=radians(60), ground_depression=radians(30))
    assert rate == pytest.approx(1.0)


def test_at_the_height_of_the_hub_nothing_is_divided_by_nothing() -> None:
    """Furthest out at that height is the hub itself, where the ground leg has no direction."""
    with np.errstate(all="raise"):
        found = move_locked(CASE, CASE_LOAD, 2.5, 27.0, new_z=[CASE.hub.z, 26.0], stiffness=5e4)
        alone = move_locked(CASE, CASE_LOAD, 2.5, 27.0, new_z=CASE.hub.z + 1e-9, stiffness=5e4)
        pull = outward_balance(Method.TRACK, CASE, CASE_LOAD, CASE.hub.x, CASE.hub.z, 0.0)
    assert found.elastic.x[0] == pytest.approx(alone.elastic.x, abs=1e-6)
    assert found.rigid.x[0] == pytest.approx(alone.rigid.x, abs=1e-6)
    assert pull < 0


def test_without_a_move_it_says_so() -> None:
    found = move_locked(CASE, CASE_LOAD, 2.5, 27.0, new_z=27.0, stiffness=5e4)
    text = found.explain().as_text()
    assert "Neither raised nor lowered: the litter stays where it is." in text
    assert "Lowering against" not in text and "Raising against" not in text
    assert found.rigid.x == pytest.approx(2.5) and found.elastic.x == pytest.approx(2.5)
