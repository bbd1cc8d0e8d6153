"""The statics against a litter that settles on elastic ropes by itself."""

from dataclasses import dataclass

import numpy as np
import pytest

from ropecalc.mechanics import guiding
from ropecalc.mechanics.holding import Method, Point, Reach, Rig, hold
from tests.mechanics.settling import Rest, Rope, settle


def length_to(x: float, z: float, *ends: Point) -> float:
    return sum(float(np.hypot(end.x - x, end.z - z)) for end in ends)


@dataclass(frozen=True)
class Drawn:
    """A random rig and the rope lengths that would just reach the place ``x``, ``z``."""

    rig: Rig
    load: float
    x: float
    z: float
    stiffness: float

    def ropes(self, method: Method) -> tuple[Rope, ...]:
        top, track, hub = self.rig.haul_directional, self.rig.track_directional, self.rig.hub
        haul = Rope((top,), length_to(self.x, self.z, top), self.stiffness)
        if method is Method.ATTENDANT:
            return (haul,)
        ends = (hub,) if method is Method.TAG else (track, hub)
        return haul, Rope(ends, length_to(self.x, self.z, *ends), self.stiffness)

    def settled(self, method: Method, push: float = 0.0) -> Rest:
        return settle(self.load, self.ropes(method), (self.x + 1.0, self.z + 2.0), push)


def drawn(rng: np.random.Generator, *, apart: bool, high_hub: bool = False) -> Drawn:
    top = Point(rng.uniform(0, 1.2), rng.uniform(15, 45))
    track = Point(top.x + rng.uniform(-0.5, 1), top.z + rng.uniform(0, 3)) if apart else top
    height = rng.uniform(1.1, 1.6) * top.z if high_hub else rng.uniform(-4, 0.6 * top.z)
    hub = Point(rng.uniform(12, 70), height)
    z = rng.uniform(0.5, 0.92 * top.z)
    return Drawn(
        rig=Rig(top, track, hub),
        load=rng.uniform(800, 3000),
        x=rng.uniform(0.5, 0.95) * hub.x
        if high_hub
        else top.x + rng.uniform(0.05, 0.6) * (top.z - z) * hub.x / (hub.x + top.z),
        z=z,
        stiffness=10 ** rng.uniform(4.5, 6.5),  # from a long soft rope to something like a bar
    )


@pytest.mark.parametrize("apart", [False, True], ids=["one directional", "two directionals"])
@pytest.mark.parametrize("method", [Method.TAG, Method.TRACK])
def test_where_it_settles_the_statics_give_the_ropes_tensions(method: Method, apart: bool) -> None:
    rng = np.random.default_rng(20 + apart)
    checked = 0
    for _ in range(60):
        case = drawn(rng, apart=apart)
        rest = case.settled(method)
        if min(rest.tensions) < 0.01 * case.load:
            continue  # a rope came to rest slack; see below
        held = hold(method, case.rig, case.load, rest.x, rest.z)
        assert held.reach is Reach.HELD
        haul, line = rest.tensions
        assert held.haul_tension == pytest.approx(haul, rel=1e-3, abs=2e-4 * case.load)
        assert held.line_tension == pytest.approx(line, rel=1e-3, abs=2e-4 * case.load)
        checked += 1
    assert checked >= 30


def test_an_attendants_steady_push() -> None:
    rng = np.random.default_rng(30)
    for _ in range(30):
        case = drawn(rng, apart=False)
        push = rng.uniform(50, 800)
        rest = case.settled(Method.ATTENDANT, push)
        held = hold(Method.ATTENDANT, case.rig, case.load, rest.x, rest.z)
        assert held.push == pytest.approx(push, rel=1e-3)
        assert held.haul_tension == pytest.approx(rest.tensions[0], rel=1e-3)


def test_with_a_high_hub_the_haul_line_comes_to_rest_slack() -> None:
    """Where the verdict is that the haul line goes slack, the litter swings off and it does."""
    rng = np.random.default_rng(31)
    checked = 0
    for _ in range(60):
        case = drawn(rng, apart=False, high_hub=True)
        verdict = hold(Method.TRACK, case.rig, case.load, case.x, case.z)
        if verdict.reach is not Reach.HAUL_SLACK:
            continue
        rest = case.settled(Method.TRACK)
        haul, line = rest.tensions
        if haul > 0:  # it stretched its way back to a place where the haul line carries
            held = hold(Method.TRACK, case.rig, case.load, rest.x, rest.z)
            assert held.haul_tension == pytest.approx(haul, rel=1e-3, abs=1e-3 * case.load)
            continue
        up = np.arctan2(
            case.rig.track_directional.z - rest.z, rest.x - case.rig.track_directional.x
        )
        alone = guiding.slack_haul_track_tension(load=case.load, haul_elevation=up)
        assert line == pytest.approx(alone, rel=1e-3)
        down = np.arctan2(rest.z - case.rig.hub.z, case.rig.hub.x - rest.x)
        assert down == pytest.approx(guiding.slack_haul_depression(haul_elevation=up), abs=2e-3)
        checked += 1
    assert checked >= 15


def test_beyond_the_straight_line_stiff_ropes_only_stretch() -> None:
    """Ropes too short to reach pull hard and still settle inside the line."""
    rng = np.random.default_rng(32)
    checked = 0
    for _ in range(40):
        case = drawn(rng, apart=False)
        top, hub = case.rig.haul_directional, case.rig.hub
        share = (top.z - case.z) / (top.z - hub.z)
        if not 0.1 < share < 0.9:
            continue
        limit = top.x + share * (hub.x - top.x)
        outside = Drawn(case.rig, case.load, limit + 0.5, case.z, case.stiffness)
        assert hold(Method.TAG, case.rig, case.load, outside.x, case.z).reach is Reach.BEYOND_LINE
        tight = tuple(Rope(r.ends, 0.97 * r.length, r.stiffness) for r in outside.ropes(Method.TAG))
        rest = settle(case.load, tight, (outside.x, case.z))
        held = hold(Method.TAG, case.rig, case.load, rest.x, rest.z)
        assert held.reach is Reach.HELD
        assert held.line_tension == pytest.approx(rest.tensions[1], rel=1e-3)
        assert held.haul_tension == pytest.approx(rest.tensions[0], rel=1e-3)
        checked += 1
    assert checked >= 15


def test_two_unequal_legs_and_a_loaded_span() -> None:
    """The same simulator under a plain two-leg anchor, whose legs are given by angles."""
    from ropecalc.mechanics.anchors import first_leg_tension, second_leg_tension

    rng = np.random.default_rng(33)
    for _ in range(30):
        left, right = Point(0.0, rng.uniform(9, 12)), Point(rng.uniform(4, 9), rng.uniform(9, 12))
        x, z = rng.uniform(0.8, right.x - 0.8), rng.uniform(2.0, 8.0)
        legs = tuple(Rope((end,), length_to(x, z, end), 1e5) for end in (left, right))
        rest = settle(2000.0, legs, (x, z))
        angles = {
            "first_leg_angle": float(np.arctan2(rest.x, left.z - rest.z)),
            "second_leg_angle": float(np.arctan2(right.x - rest.x, right.z - rest.z)),
        }
        one = first_leg_tension(load=2000.0, **angles)
        two = second_leg_tension(load=2000.0, **angles)
        assert (one, two) == pytest.approx(rest.tensions, rel=1e-3)


def test_the_simulator_knows_two_plain_answers() -> None:
    """A weight on one rope hangs plumb and stretches it by Hooke; a level span sags evenly."""
    rest = settle(1000.0, (Rope((Point(2.0, 10.0),), 5.0, 50_000.0),), (3.0, 6.0))
    assert (rest.x, rest.z) == pytest.approx((2.0, 10.0 - 5.1), abs=1e-6)
    assert rest.tensions[0] == pytest.approx(1000.0, rel=1e-6)
    span = settle(1000.0, (Rope((Point(0.0, 10.0), Point(8.0, 10.0)), 10.0, 1e7),), (1.0, 8.0))
    assert span.x == pytest.approx(4.0, abs=1e-5)
    assert span.z == pytest.approx(7.0, abs=1e-2)  # 3-4-5 triangles
    assert span.tensions[0] == pytest.approx(1000.0 * 5 / 6, rel=2e-3)
