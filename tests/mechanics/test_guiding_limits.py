"""Two hubs, sag, sideways, sliding hubs and the furthest offset, against independent values."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from ropecalc.derivation import DomainError
from ropecalc.mechanics import guiding
from ropecalc.mechanics.guiding_limits import (
    end_angle,
    hub_sliding_tension,
    largest_offset,
    least_straight_tension,
    leg_sag,
    reach_off_plumb,
    side_force,
    two_hub_tension,
    two_hubs,
)
from ropecalc.mechanics.holding import Method, Point, Reach, Rig, hold
from tests.mechanics.cases import CASE, CASE_LOAD
from tests.mechanics.test_legs import finite_elements

often = settings(derandomize=True, deadline=None, max_examples=80)
ANGLES = {"haul_elevation": math.atan2(5.0, 2.2), "ground_depression": math.atan2(26.5, 37.5)}
LITTER, TOP = (2.5, 0.0, 27.0), (0.3, 0.0, 32.0)
WORKED = {"load": CASE_LOAD, "haul_directional": (0.3, 32.0), "hub": (40.0, 0.5)}


def hubs(spread: float, level: float = 37.5, z: float = 0.5):
    return [
        (2.5 + level * math.cos(side * spread), level * math.sin(side * spread), z)
        for side in (1, -1)
    ]


# --- two hubs ---------------------------------------------------------------------------------


@pytest.mark.parametrize(("degrees", "more"), [(0, 1.0), (20, 1.10), (30, 1.24)])
def test_spread_hubs_cost_tension(degrees: int, more: float) -> None:
    # an independent calculation made for this project: 1.904 kN at 30°, +10 % at 20°, +24 % at 30°
    spread = math.radians(degrees)
    found = two_hub_tension(load=CASE_LOAD, **ANGLES, hub_spread=spread)
    alone = guiding.tag_tension(load=CASE_LOAD, **ANGLES)
    assert found / alone == pytest.approx(more, abs=0.005)
    if degrees == 30:
        assert found / 1000 == pytest.approx(1.904, abs=5e-4)


@often
@given(st.floats(0.0, 0.7), st.floats(0.6, 1.5), st.floats(-0.3, 0.45))
def test_mirrored_hubs_in_space(spread, up, down) -> None:
    litter = np.array([2.5, 0.0, 10.0])
    top = litter + 6 * np.array([-math.cos(up), 0, math.sin(up)])
    ends = [
        litter
        + 30
        * np.array(
            [
                math.cos(down) * math.cos(spread),
                side * math.cos(down) * math.sin(spread),
                -math.sin(down),
            ]
        )
        for side in (1, -1)
    ]
    asked = {"load": 2000.0, "haul_elevation": up, "ground_depression": down, "hub_spread": spread}
    if math.cos(spread) * math.sin(up) * math.cos(down) <= math.sin(down) * math.cos(up) + 1e-9:
        return
    together = two_hub_tension(**asked)
    if spread < 0.01:
        return  # the two lines are one
    for track in (None, top):
        try:
            found = two_hubs(
                load=2000.0, litter=litter, haul_directional=top, hubs=ends, track_directional=track
            )
        except DomainError as refusal:
            assert track is not None and "haul line would have to push" in str(refusal)
            continue
        assert found.together == pytest.approx(together, rel=1e-7)
        assert found.line_tensions[0] == pytest.approx(found.line_tensions[1], rel=1e-7)


def test_hubs_anywhere_balance_and_agree_with_finite_elements() -> None:
    ends = [(38.0, 12.0, 1.0), (30.0, -15.0, -2.0)]
    found = two_hubs(load=CASE_LOAD, litter=LITTER, haul_directional=TOP, hubs=ends)
    expected = finite_elements(LITTER, [TOP, *ends], (0, 0, -CASE_LOAD))
    assert (found.haul_tension, *found.line_tensions) == pytest.approx(expected, rel=1e-5)
    above = (0.3, 0.4, 33.0)
    with_track = two_hubs(
        load=CASE_LOAD, litter=LITTER, haul_directional=TOP, hubs=ends, track_directional=above
    )
    total = np.array([0, 0, -CASE_LOAD])
    for place, tension in (
        (TOP, with_track.haul_tension),
        (ends[0], with_track.line_tensions[0]),
        (ends[1], with_track.line_tensions[1]),
        (above, with_track.together),
    ):
        way = np.array(place) - LITTER
        total = total + tension * way / np.linalg.norm(way)
    np.testing.assert_allclose(total, 0, atol=1e-8)
    told = with_track.explain()
    assert "lines together" in told.result and "pulls the litter sideways" in told.as_text()


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"hubs": [(38.0, 12.0, 1.0), (30.0, 5.0, 1.0)]}, "line to hub [12] would have to push"),
        ({"hubs": [(38.0, 0.0, 1.0), (30.0, 0.0, 1.0)]}, "lie in one plane"),
        ({"hubs": [(38.0, 1e-4, 1.0), (38.0, -1e-4, 1.0)]}, "one plane, or nearly, .* apart"),
        ({"hubs": [(38.0, 0.01, 1.0), (38.0, -0.01, 1.0)]}, "Move the hubs further apart"),
        ({"hubs": [hubs(0.5), hubs(0.5)]}, "at a time"),
        ({"litter": [LITTER, LITTER]}, "one litter, one directional, two hubs and one load"),
        ({"haul_directional": [TOP, TOP]}, "one litter, one directional, two hubs and one load"),
        ({"hubs": [(38.0, 5.0, 1.0), (38.0, -5.0, 1.0), (38.0, 0.0, 1.0)]}, "2 rows"),
        ({"hubs": [(38.0, 5.0), (38.0, -5.0)]}, "three finite numbers"),
        ({"haul_directional": LITTER}, "its end lies at the litter"),
        ({"track_directional": LITTER}, "its end lies at the litter"),
        ({"hubs": [(38.0, 0.0, 1.0)]}, "2 rows"),
        ({"hubs": [LITTER, (30.0, 5.0, 1.0)]}, "its end lies at the litter"),
        ({"load": 0.0}, "load"),
        ({"load": [1.0, 2.0]}, "at a time"),
        ({"litter": (2.5, 27.0)}, "litter must be three finite numbers"),
        ({"haul_directional": (-3.0, 0.0, 20.0)}, "would have to push"),
    ],
)
def test_hubs_that_do_not_hold_are_refused(change, words) -> None:
    asked = {
        "load": CASE_LOAD, "litter": LITTER, "haul_directional": TOP, "hubs": hubs(0.5),
    } | change  # fmt: skip
    with pytest.raises(DomainError, match=words):
        two_hubs(**asked)


def test_beyond_the_line_to_spread_hubs_nothing_holds() -> None:
    with pytest.raises(DomainError, match="not beyond the straight line to the hubs"):
        two_hub_tension(
            load=2000.0, haul_elevation=0.7, ground_depression=0.6, hub_spread=math.radians(40)
        )


def test_hubs_a_metre_apart_are_told_apart() -> None:
    found = two_hubs(
        load=CASE_LOAD, litter=LITTER, haul_directional=TOP,
        hubs=[(40.0, 0.5, 0.5), (40.0, -0.5, 0.5)],
    )  # fmt: skip
    alone = guiding.tag_tension(load=CASE_LOAD, **ANGLES)
    assert found.together == pytest.approx(alone, rel=1e-3)
    assert found.line_tensions[0] == pytest.approx(found.line_tensions[1], rel=1e-9)


# --- sag --------------------------------------------------------------------------------------


def catenary(weight_per_metre: float, span: float, fall: float, tension_along: float):
    """End angle off the chord and mid sag of a hanging rope, from its exact curve.

    The curve is z = a cosh((x - c)/a) + k; ``a`` is found so that the level force over the cosine
    of the chord is the tension along the chord.
    """
    chord = math.hypot(span, fall)
    a = tension_along * span / chord / weight_per_metre

    def height(c: float, x: float) -> float:
        return a * math.cosh((x - c) / a)

    c = brentq(lambda c: height(c, span) - height(c, 0.0) + fall, -50 * span, 50 * span)
    slope = math.atan(math.sinh((0.0 - c) / a))
    middle = max(
        (height(c, 0.0) - fall * x / span - height(c, x)) * span / chord
        for x in np.linspace(0, span, 2001)
    )
    length = a * (math.sinh((span - c) / a) + math.sinh(c / a))
    return abs(slope - math.atan2(-fall, span)), middle, length


def test_the_catenary_itself() -> None:
    # OpenStax, Calculus, example 6.51: y = 10 cosh(x/10) from -15 to 15 has length 42.586
    span = 30.0
    _, sag, length = catenary(1.0, span, 0.0, 10.0)
    assert length == pytest.approx(42.586, abs=5e-4)
    assert sag == pytest.approx(10 * math.cosh(1.5) - 10, rel=1e-6)


@pytest.mark.parametrize("down", [0.0, 0.3, 0.6])
@pytest.mark.parametrize("tension", [200.0, 400.0, 1500.0])
def test_sag_and_end_angle_of_the_exact_curve(down: float, tension: float) -> None:
    length, per_metre = 48.0, 0.075 * 9.80665
    span, fall = length * math.cos(down), length * math.sin(down)
    turned, sag, rope = catenary(per_metre, span, fall, tension)
    given_here = {
        "leg_rope_weight": per_metre * rope, "ground_depression": down, "line_tension": tension,
    }  # fmt: skip
    assert leg_sag(**given_here, ground_leg_length=length) == pytest.approx(sag, rel=0.01)
    # at the upper end the curve is steeper than the chord, at the lower end flatter; to first
    # order by the same angle
    assert end_angle(**given_here) == pytest.approx(turned, rel=0.06)


def test_a_slack_ground_leg() -> None:
    # an independent calculation made for this project: 48 m of 75 g/m at 0.2 kN: 1.1 m and 5°
    weight = 48 * 0.075 * 9.80665
    level = {"leg_rope_weight": weight, "ground_depression": 0.0}
    assert leg_sag(**level, line_tension=200.0, ground_leg_length=48.0) == pytest.approx(
        1.1, abs=0.05
    )
    angle = end_angle(**level, line_tension=200.0)
    assert math.degrees(angle) == pytest.approx(5, abs=0.1)
    assert least_straight_tension(**level, end_angle=angle) == pytest.approx(200.0)
    assert least_straight_tension(**level, end_angle=math.radians(2)) == pytest.approx(
        weight / 2 / math.sin(math.radians(2))
    )
    with pytest.raises(DomainError, match="tight enough to carry its own weight"):
        end_angle(**level, line_tension=weight / 2)


# --- sideways ---------------------------------------------------------------------------------


@pytest.mark.parametrize(("z", "per_metre"), [(6.0, 81), (27.0, 603)])
def test_sideways_stiffness(z: float, per_metre: float) -> None:
    # an independent calculation made for this project: 0.081 and 0.603 kN/m
    held = hold(Method.TRACK, CASE, CASE_LOAD, 2.5, z)
    found = side_force(
        haul_tension=held.haul_tension,
        track_tension=held.line_tension,
        haul_leg_length=math.hypot(2.2, 32 - z),
        ground_leg_length=math.hypot(37.5, z - 0.5),
        sideways=0.1,
    )
    assert found / 0.1 == pytest.approx(per_metre, abs=0.6)


def test_sideways_is_what_leaning_lines_pull_back() -> None:
    held = hold(Method.TRACK, CASE, CASE_LOAD, 2.5, 20.0)
    aside = 0.01
    at = np.array([2.5, aside, 20.0])
    back = 0.0
    for end, tension in (
        ((0.3, 0, 32.0), held.haul_tension + held.line_tension),
        ((40.0, 0, 0.5), held.line_tension),
    ):
        way = np.array(end) - at
        back -= tension * way[1] / np.linalg.norm(way)
    found = side_force(
        haul_tension=held.haul_tension,
        track_tension=held.line_tension,
        haul_leg_length=math.hypot(2.2, 12.0),
        ground_leg_length=math.hypot(37.5, 19.5),
        sideways=aside,
    )
    assert found == pytest.approx(back, rel=1e-5)
    assert (
        side_force(
            haul_tension=1.0,
            track_tension=1.0,
            haul_leg_length=1.0,
            ground_leg_length=1.0,
            sideways=0.0,
        )
        == 0.0
    )


# --- a hub that slides ------------------------------------------------------------------------


def test_a_sliding_hub_in_forces() -> None:
    rng = np.random.default_rng(91)
    mass, mu, down = (
        rng.uniform(300, 4000, 500),
        rng.uniform(0.1, 0.9, 500),
        rng.uniform(-0.3, 1, 500),
    )
    tension = hub_sliding_tension(hub_mass=mass, hub_friction=mu, ground_depression=down)
    pressed = mass * 9.80665 - tension * np.sin(down)
    np.testing.assert_allclose(tension * np.cos(down), mu * pressed, rtol=1e-9)
    assert (pressed > 0).all()


def test_uplift_makes_a_hub_slide_sooner() -> None:
    level = hub_sliding_tension(hub_mass=2000.0, hub_friction=0.6, ground_depression=0.0)
    steep = hub_sliding_tension(
        hub_mass=2000.0, hub_friction=0.6, ground_depression=math.radians(35)
    )
    assert level == pytest.approx(0.6 * 2000 * 9.80665)
    assert steep < level
    assert hub_sliding_tension(hub_mass=2000.0, hub_friction=0.0, ground_depression=0.3) == 0.0
    with pytest.raises(DomainError, match="must pull the hub along the ground"):
        hub_sliding_tension(hub_mass=2000.0, hub_friction=0.8, ground_depression=-1.2)


# --- the furthest offset ----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("lines", "offset"), [(1.0, 2.90), (1.810, 3.86), (2.466, 4.34), (2.998, 4.62)]
)
def test_more_lines_reach_further(lines: float, offset: float) -> None:
    # an independent calculation made for this project: 2.0 kN a line, one to four lines in series
    found = largest_offset(**WORKED, line_tension=2000.0 * lines, z=27.0)
    assert found == pytest.approx(offset, abs=0.006)


@often
@given(
    st.floats(50, 20000), st.floats(1, 29), st.floats(-0.8, 1.2), st.floats(0.0, 3.0), st.booleans()
)
def test_there_the_line_carries_just_that(tension, z, out, up, apart) -> None:
    track = (0.3 + out, 32.0 + up) if apart else None
    found = largest_offset(**WORKED, line_tension=tension, z=z, track_directional=track)
    rig = Rig(Point(0.3, 32.0), Point(*(track or (0.3, 32.0))), Point(40.0, 0.5))
    held = hold(Method.TRACK, rig, CASE_LOAD, np.array([found, found + 0.01]), z)
    if np.ma.getmaskarray(held.line_tension)[0]:
        return  # the haul line would be slack there
    assert held.line_tension[0] == pytest.approx(tension, rel=1e-5)
    beyond = held.line_tension[1]
    assert beyond is np.ma.masked or beyond > tension


def test_offsets_at_many_heights_stay_short_of_the_straight_line() -> None:
    z = np.linspace(1, 31, 40)
    found = largest_offset(**WORKED, line_tension=1e7, z=z)
    limit = guiding.straight_line_limit(z=z, x_D=0.3, z_D=32.0, x_B=40.0, z_B=0.5)
    assert found.shape == (40,) and (found < limit).all()
    np.testing.assert_allclose(found, limit, rtol=2e-3)
    held = hold(Method.TRACK, CASE, CASE_LOAD, found - 1e-6, z)
    assert not np.ma.getmaskarray(held.line_tension).any()  # however much, it can be held there
    assert type(largest_offset(**WORKED, line_tension=1e7, z=3.0)) is float
    assert largest_offset(**WORKED, line_tension=0.0, z=3.0) == pytest.approx(0.3)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"z": 32.0}, "at or above a directional"),
        ({"track_directional": (0.3, 26.0)}, "at or above a directional"),
        ({"hub": (0.2, 0.5)}, "The hub must be further out"),
        ({"load": -1.0}, "load"),
        ({"line_tension": -1.0}, "line_tension"),
    ],
)
def test_offsets_that_are_none_are_refused(change, words) -> None:
    with pytest.raises(DomainError, match=words):
        largest_offset(**{**WORKED, "line_tension": 2000.0, "z": 27.0, **change})


def test_a_line_that_never_carries_so_much_reaches_its_high_hub() -> None:
    """From below, a hub above the litter: short of the hub the line carries less than W."""
    places = {"haul_directional": (0.3, 32.0), "hub": (40.0, 20.0)}
    reach = largest_offset(load=1000.0, line_tension=1500.0, z=5.0, **places)
    assert reach == pytest.approx(40.0)
    top = Point(0.3, 32.0)
    rig = Rig(top, top, Point(40.0, 20.0))
    near = hold(Method.TAG, rig, 1000.0, 39.9, 5.0)
    assert near.line_tension is not None and near.line_tension < 1500.0
    assert hold(Method.TRACK, rig, 1000.0, 39.9, 5.0).reach is Reach.HAUL_SLACK


@pytest.mark.parametrize("tension", [300.0, 1500.0, 4000.0])
@pytest.mark.parametrize("down", [-20.0, 0.0, 20.0, 37.0])
def test_that_far_off_plumb_the_line_carries_just_that(tension: float, down: float) -> None:
    """Hold the litter there: two unit vectors, and how hard each has to pull."""
    drop, beta = 6.0, math.radians(down)
    off = reach_off_plumb(load=CASE_LOAD, line_tension=tension, drop=drop, ground_depression=beta)
    leg = math.hypot(off, drop)
    ways = np.array([[-off / leg, drop / leg], [math.cos(beta), -math.sin(beta)]]).T
    haul, line = np.linalg.solve(ways, [0.0, CASE_LOAD])
    assert line == pytest.approx(tension)
    assert haul > 0


def test_it_goes_together_with_the_offset_from_places() -> None:
    tension, z = 1500.0, 27.0
    x = largest_offset(
        load=CASE_LOAD, line_tension=tension, z=z, haul_directional=(0.3, 32.0), hub=(40.0, 0.5)
    )
    off = reach_off_plumb(
        load=CASE_LOAD,
        line_tension=tension,
        drop=32.0 - z,
        ground_depression=math.atan2(z - 0.5, 40.0 - x),
    )
    assert off == pytest.approx(x - 0.3, rel=1e-9)


def test_at_the_very_height_of_either_directional_nothing_is_lifted() -> None:
    place = {"haul_directional": (0.3, 32.0), "hub": (40.0, 0.5), "load": 2e3, "line_tension": 2e3}
    for track in ((0.3, 33.0), (0.3, 31.0), None):
        height = min(32.0, track[1] if track else 32.0)
        with pytest.raises(DomainError, match="at or above a directional"):
            largest_offset(**place, z=height, track_directional=track)
        assert largest_offset(**place, z=height - 0.1, track_directional=track) > 0.3
