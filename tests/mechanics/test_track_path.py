"""The way down on track lines: Newton's law solved afresh, a pendulum, and the rope's length."""

from math import pi, radians

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.holding import Method, Point, Rig, hold
from ropecalc.mechanics.track_path import OVERSHOOT, TrackPath, released_track_tension
from tests.mechanics.cases import CASE, CASE_LOAD, distance

SETTINGS = settings(derandomize=True, deadline=None, max_examples=60)
APART = Rig(Point(0.3, 32.0), Point(0.5, 33.0), Point(40.0, 0.5))


def newton(rig: Rig, load: float, x: float, z: float) -> tuple[float, np.ndarray]:
    """Track tension, and acceleration in g, of a litter let go from rest on a rope of fixed length.

    Three equations for the two accelerations and the tension: Newton's law, and that the rope's
    length, whose gradient is minus the sum of the legs' directions, does not begin to change.
    """
    here = np.array([x, z])
    legs = np.zeros(2)
    for end in (rig.track_directional, rig.hub):
        away = np.array([end.x, end.z]) - here
        legs += away / np.linalg.norm(away)
    system = np.block([[load * np.eye(2), -legs[:, None]], [legs[None, :], np.zeros((1, 1))]])
    *acceleration, tension = np.linalg.solve(system, [0.0, -load, 0.0])
    return float(tension), np.array(acceleration)


def angles(rig: Rig, x: float, z: float) -> dict[str, float]:
    top, hub = rig.track_directional, rig.hub
    return {
        "track_elevation": float(np.arctan2(top.z - z, x - top.x)),
        "ground_depression": float(np.arctan2(z - hub.z, hub.x - x)),
    }


@SETTINGS
@given(st.floats(0.6, 12.0), st.floats(2.0, 28.0), st.floats(-3.0, 20.0), st.booleans())
def test_newtons_law_just_after_the_loss(x: float, z: float, hub_z: float, apart: bool) -> None:
    top = APART.track_directional if apart else CASE.track_directional
    rig = Rig(CASE.haul_directional, top, Point(40.0, hub_z))
    held = hold(Method.TRACK, rig, CASE_LOAD, x, z)
    if held.line_tension is None:
        return
    tension, acceleration = newton(rig, CASE_LOAD, x, z)
    found = released_track_tension(load=CASE_LOAD, **angles(rig, x, z))
    assert found == pytest.approx(tension, rel=1e-9)
    assert found > held.line_tension
    assert acceleration[1] < 0
    if not apart:  # the haul line pulled along the track's upper leg
        assert found == pytest.approx(held.line_tension + held.haul_tension / 2, rel=1e-9)


def test_the_worked_case() -> None:
    found = released_track_tension(load=CASE_LOAD, **angles(CASE, 2.5, 27.0))
    before = hold(Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0).line_tension
    assert found == pytest.approx(2321.6, abs=0.1)
    assert found / before == pytest.approx(1.514, abs=1e-3)
    # both legs straight up (nearly): half the weight each
    up = released_track_tension(load=1000.0, track_elevation=pi / 2, ground_depression=-1.57)
    assert up == pytest.approx(500.0, abs=0.5)


def test_legs_that_cannot_hold_it_are_refused() -> None:
    with pytest.raises(DomainError, match=r"straight line .* Bring the litter closer in"):
        released_track_tension(load=1e3, track_elevation=0.5, ground_depression=0.5)
    with pytest.raises(DomainError, match=r"pull down more than .* Move the hub further out"):
        released_track_tension(
            load=1e3, track_elevation=radians(120), ground_depression=radians(60)
        )
    steep = released_track_tension(
        load=1e3, track_elevation=radians(120), ground_depression=radians(59)
    )
    assert steep > 0
    assert {OVERSHOOT, cautions.COMMON_HUB} <= set(released_track_tension.cautions)


@pytest.mark.parametrize("rig", [CASE, APART, Rig(Point(0, 25), Point(0, 25), Point(30, 26))])
@pytest.mark.parametrize(("x", "z"), [(2.5, 20.0), (6.0, 10.0)])
def test_the_rope_keeps_its_length_on_the_way_down(rig: Rig, x: float, z: float) -> None:
    path = TrackPath.through(rig, x, z)
    assert path.place(path.start) == pytest.approx((x, z), abs=1e-9)
    angle = np.linspace(path.start, 0.0, 200)
    at_x, at_z = path.place(angle)
    rope = distance(at_x, at_z, rig.track_directional) + distance(at_x, at_z, rig.hub)
    np.testing.assert_allclose(rope, rope[0], rtol=1e-12)
    assert (np.diff(at_x[:100]) > 0).all() and at_z[1] < z
    assert np.argmin(at_z) > 5  # it falls at first
    wide, high = at_x[-1] - rig.track_directional.x, at_z[-1] - rig.track_directional.z
    ends = rig.hub.x - rig.track_directional.x, rig.hub.z - rig.track_directional.z
    assert wide * ends[1] == pytest.approx(high * ends[0], abs=1e-9)  # it ends in line with both


def test_with_both_ends_in_one_place_it_is_a_pendulum_on_two_strands() -> None:
    path = TrackPath.through(Rig(Point(0, 10), Point(0, 10), Point(1e-7, 10.0)), 3.0, 6.0)
    assert path.half_long == pytest.approx(5.0) and path.half_short == pytest.approx(5.0)
    for angle, motion in ((path.start, 0.0), (path.start + 0.4, 700.0), (-pi / 2, 900.0)):
        x, z = path.place(angle)
        up = (10.0 - z) / 5.0  # cosine of the angle from plumb
        none = path.tension(angle, 1000.0, motion, (0.0, 0.0))
        assert 2 * none == pytest.approx(1000.0 * up + 2 * motion / 5.0, rel=1e-6)
        pull = (-120.0 * x / 5.0, 120.0 * up)  # 120 N towards the centre
        helped = path.tension(angle, 1000.0, motion, pull)
        assert 2 * (none - helped) == pytest.approx(120.0, rel=1e-6)


def test_places_and_tensions_as_arrays() -> None:
    path = TrackPath.through(CASE, 2.5, 27.0)
    angle = path.start + np.array([0.0, 0.2, 0.5])
    together = path.tension(angle, CASE_LOAD, np.array([0.0, 300.0, 900.0]), (0.0, 0.0))
    for i, motion in enumerate((0.0, 300.0, 900.0)):
        one = path.tension(float(angle[i]), CASE_LOAD, motion, (0.0, 0.0))
        assert together[i] == pytest.approx(float(one), rel=1e-12)
    assert together[0] == pytest.approx(newton(CASE, CASE_LOAD, 2.5, 27.0)[0], rel=1e-9)
