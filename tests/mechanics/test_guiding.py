"""The formulas for holding a litter off, one by one, against published values and coordinates."""

import math
from typing import Any

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics import guiding as g
from tests.mechanics.cases import CASE, CASE_LOAD

Array = np.ndarray[Any, Any]


def directions(count: int, seed: int) -> tuple[Array, Array, Array, Array]:
    """Load, and unit vectors along haul leg (in, up), upper track leg and ground leg (out)."""
    rng = np.random.default_rng(seed)
    haul = np.stack([-rng.uniform(0.1, 5, count), rng.uniform(4, 20, count)])
    leg = np.stack([-rng.uniform(0.1, 5, count), rng.uniform(4, 20, count)])
    ground = np.stack([rng.uniform(15, 60, count), rng.uniform(-11, 3, count)])
    return (
        rng.uniform(600, 3200, count),
        haul / np.hypot(*haul),
        leg / np.hypot(*leg),
        ground / np.hypot(*ground),
    )


def elevation(inward: Array) -> Array:
    return np.asarray(np.arccos(-inward[0]) * np.sign(inward[1]))


def depression(outward: Array) -> Array:
    return np.asarray(-np.arcsin(outward[1]))


# --- balance from unit vectors ---------------------------------------------------------------


def test_attendant_in_coordinates() -> None:
    rng = np.random.default_rng(51)
    off, drop = rng.uniform(0.05, 6, 2000), rng.uniform(0.5, 40, 2000)
    load = rng.uniform(600, 3200, 2000)
    push = g.attendant_push(load=load, off_plumb=off, drop=drop)
    haul = g.attendant_haul_tension(load=load, off_plumb=off, drop=drop)
    length = np.hypot(off, drop)
    np.testing.assert_allclose(haul * off / length, push, rtol=1e-12)
    np.testing.assert_allclose(haul * drop / length, load, rtol=1e-12)


def test_attendant_values() -> None:
    # an independent calculation made for this project: 1 m off plumb under 200 kg
    for drop, newtons in ((30.0, 65.0), (4.0, 490.0)):
        push = g.attendant_push(load=CASE_LOAD, off_plumb=1.0, drop=drop)
        assert push == pytest.approx(newtons, abs=0.6)


def test_tag_line_in_coordinates() -> None:
    load, haul, _, ground = directions(3000, 52)
    angles = {"haul_elevation": elevation(haul), "ground_depression": depression(ground)}
    tag = g.tag_tension(load=load, **angles)
    back = g.haul_tension_with_tag(load=load, **angles)
    total = (tag * ground + back * haul) / load
    np.testing.assert_allclose(total[0], 0.0, atol=1e-12)
    np.testing.assert_allclose(total[1], 1.0, rtol=1e-12)


def test_track_line_in_coordinates() -> None:
    load, haul, _, ground = directions(3000, 53)
    angles = {"haul_elevation": elevation(haul), "ground_depression": depression(ground)}
    track = g.track_tension(load=load, **angles)
    back = g.haul_tension_with_track(load=load, **angles)
    total = (track * (ground + haul) + back * haul) / load
    np.testing.assert_allclose(total[0], 0.0, atol=1e-12)
    np.testing.assert_allclose(total[1], 1.0, rtol=1e-12)


def test_track_line_of_its_own_in_coordinates() -> None:
    load, haul, leg, ground = directions(3000, 54)
    angles = {
        "haul_elevation": elevation(haul),
        "track_elevation": elevation(leg),
        "ground_depression": depression(ground),
    }
    ok = g.haul_tension_with_track_apart.valid(load=load, **angles)
    assert ok.sum() > 2000
    angles = {n: v[ok] for n, v in angles.items()}
    track = g.track_tension_apart(load=load[ok], **angles)
    back = g.haul_tension_with_track_apart(load=load[ok], **angles)
    total = (track * (ground + leg)[:, ok] + back * haul[:, ok]) / load[ok]
    np.testing.assert_allclose(total[0], 0.0, atol=1e-11)
    np.testing.assert_allclose(total[1], 1.0, rtol=1e-11)


def test_line_to_a_high_hub_in_coordinates() -> None:
    rng = np.random.default_rng(55)
    haul = np.stack([-rng.uniform(0.1, 5, 2000), rng.uniform(4, 20, 2000)])
    line = np.stack([rng.uniform(5, 60, 2000), rng.uniform(0.0, 20, 2000)])
    haul, line = haul / np.hypot(*haul), line / np.hypot(*line)
    rise = np.arcsin(line[1])
    up = elevation(haul)
    tag = g.tension_to_high_hub(load=2000.0, haul_elevation=up, line_elevation=rise)
    back = tag * line[0] / -haul[0]  # sideways balance
    np.testing.assert_allclose(tag * line[1] + back * haul[1], 2000.0, rtol=1e-12)
    same = g.tag_tension(load=2000.0, haul_elevation=up, ground_depression=-rise)
    np.testing.assert_allclose(tag, same, rtol=1e-12)


def test_what_the_track_lifts_in_coordinates() -> None:
    load, haul, _, ground = directions(2000, 56)
    angles = {"haul_elevation": elevation(haul), "ground_depression": depression(ground)}
    lift = g.track_lift(track_tension=load, **angles)
    np.testing.assert_allclose(lift, load * (haul[1] + ground[1]), atol=1e-9)


def test_pull_on_the_hub_in_coordinates() -> None:
    load, _, _, ground = directions(2000, 57)
    uplift = g.hub_uplift(line_tension=load, ground_depression=depression(ground))
    np.testing.assert_allclose(uplift, load * -ground[1], atol=1e-9)


def test_tilt_of_a_bridle_in_coordinates() -> None:
    """The bridle lies along what it carries: the weight and the line's pull on the litter."""
    load, _, _, ground = directions(2000, 58)
    pull = np.random.default_rng(58).uniform(0, 1500, 2000)
    tension = pull / ground[0]
    carried = np.stack([tension * ground[0], tension * ground[1] - load])
    ok = carried[1] < 0
    tilt = g.bridle_tilt(
        load=load[ok], side_pull=pull[ok], ground_depression=depression(ground)[ok]
    )
    np.testing.assert_allclose(tilt, np.arctan2(carried[0], -carried[1])[ok], atol=1e-12)


# --- published values ------------------------------------------------------------------------


def test_a_string_that_pulls_down_and_to_the_wall() -> None:
    # OpenStax, University Physics 1, additional exercise after section 6.4: 5.50 kg held by string
    # 1 (40° below horizontal) and string 2 (40° from plumb), g = 9.80; string 1 carries 199 N. The
    # same two strings hold a litter off with a tag line.
    tag = g.tag_tension(
        load=5.50 * 9.80, haul_elevation=math.radians(50), ground_depression=math.radians(40)
    )
    assert tag == pytest.approx(199, abs=0.6)


def test_a_corner_pole_and_its_guy_are_a_level_pull_and_a_leaning_rope() -> None:
    # Baker & Haynes, Engineering Statics, section 3.4, example "Utility Pole": six lines of
    # 10.0 kN, 76° from the symmetry axis; level part of the guy 14.5 kN, guy 38° from plumb 23.6 kN
    level = 6 * 10.0 * math.cos(math.radians(76.0))
    assert level == pytest.approx(14.5, abs=0.05)
    down = level / math.tan(math.radians(38.0))  # what the pole presses on the ground
    push = g.attendant_push(load=down, off_plumb=math.tan(math.radians(38.0)), drop=1.0)
    guy = g.attendant_haul_tension(load=down, off_plumb=math.tan(math.radians(38.0)), drop=1.0)
    assert push == pytest.approx(14.515, abs=0.001)
    assert guy == pytest.approx(23.6, abs=0.05)


def test_two_wires_from_above_are_a_tag_line_to_a_high_hub() -> None:
    # University Physics 1, example 6.1: 15.0 kg, wires 30° and 45° above horizontal, g = 9.80
    up, rise, load = math.radians(45), math.radians(30), 15 * 9.80
    one = g.tension_to_high_hub(load=load, haul_elevation=up, line_elevation=rise)
    assert one == pytest.approx(108, abs=0.5)
    assert g.haul_tension_with_tag(
        load=load, haul_elevation=up, ground_depression=-rise
    ) == pytest.approx(132, abs=0.5)


@pytest.mark.parametrize(
    ("haul", "ground", "tag", "back"),
    [(26.565, 0.0, 2.0, 2.236), (45.0, 0.0, 1.0, 1.414), (30.0, 0.0, 1.732, 2.0)],
)
def test_critical_angles_with_a_level_line(
    haul: float, ground: float, tag: float, back: float
) -> None:
    # an independent calculation made for this project, in multiples of the load
    angles = {"haul_elevation": math.radians(haul), "ground_depression": math.radians(ground)}
    assert g.tag_tension(load=1.0, **angles) == pytest.approx(tag, abs=1e-3)
    assert g.haul_tension_with_tag(load=1.0, **angles) == pytest.approx(back, abs=1e-3)


@pytest.mark.parametrize("ground", [-15.0, 0.0, 10.0, 35.0])
def test_line_and_load_are_equal_at_135_degrees_and_half_the_depression(ground: float) -> None:
    # an independent calculation made for this project
    haul = 45 + ground / 2
    angles = {"haul_elevation": math.radians(haul), "ground_depression": math.radians(ground)}
    assert g.track_tension(load=700.0, **angles) == pytest.approx(700.0, rel=1e-12)
    assert math.degrees(g.litter_angle(**angles)) == pytest.approx(135 + ground / 2)


def test_at_120_degrees_a_track_line_carries_far_less_than_the_load() -> None:
    # an independent calculation made for this project: 0.39 W with the ground leg 10° down
    angles = {"haul_elevation": math.radians(70), "ground_depression": math.radians(10)}
    assert math.degrees(g.litter_angle(**angles)) == pytest.approx(120)
    assert g.track_tension(load=1.0, **angles) == pytest.approx(0.39, abs=0.006)


# --- from places -----------------------------------------------------------------------------


def test_line_tension_from_places_in_coordinates() -> None:
    rng = np.random.default_rng(59)
    places = {
        "x": rng.uniform(0.5, 9, 4000), "z": rng.uniform(0, 30, 4000),
        "x_D": rng.uniform(-0.5, 1.5, 4000), "z_D": rng.uniform(28, 40, 4000),
        "x_B": rng.uniform(12, 80, 4000), "z_B": rng.uniform(-5, 25, 4000),
    }  # fmt: skip
    ok = g.line_tension_from_places.valid(load=2000.0, **places)
    assert 1500 < ok.sum() < 4000
    places = {n: v[ok] for n, v in places.items()}
    line = g.line_tension_from_places(load=2000.0, **places)
    haul = np.stack([places["x_D"] - places["x"], places["z_D"] - places["z"]])
    ground = np.stack([places["x_B"] - places["x"], places["z_B"] - places["z"]])
    haul, ground = haul / np.hypot(*haul), ground / np.hypot(*ground)
    back = line * ground[0] / -haul[0]
    size = np.maximum(line, 2000.0)
    assert (np.abs(line * ground[1] + back * haul[1] - 2000.0) <= 1e-9 * size).all()


def test_straight_line_and_hub_limit_lie_on_one_line() -> None:
    """Directional, limit and hub: the triangle they span has no area."""
    rng = np.random.default_rng(60)
    x_d, z_d = rng.uniform(-1, 2, 1000), rng.uniform(20, 40, 1000)
    x_b, z_b, z = rng.uniform(10, 80, 1000), rng.uniform(-5, 10, 1000), rng.uniform(-4, 19, 1000)
    x = g.straight_line_limit(z=z, x_D=x_d, z_D=z_d, x_B=x_b, z_B=z_b)
    area = (x_b - x_d) * (z - z_d) - (z_b - z_d) * (x - x_d)
    np.testing.assert_allclose(area, 0.0, atol=1e-9)
    out = rng.uniform(2, 8, 1000)
    hub = g.hub_limit(x=out, z=z, x_D=x_d, z_D=z_d, z_B=z_b)
    area = (hub - x_d) * (z - z_d) - (z_b - z_d) * (out - x_d)
    np.testing.assert_allclose(area, 0.0, atol=1e-9)


def test_limits_of_the_worked_case() -> None:
    # an independent calculation made for this project: 6.60 m at a height of 27 m, hub 14.2 m
    top, hub = CASE.haul_directional, CASE.hub
    limit = g.straight_line_limit(z=27.0, x_D=top.x, z_D=top.z, x_B=hub.x, z_B=hub.z)
    assert limit == pytest.approx(6.60, abs=0.005)
    nearest = g.hub_limit(x=2.5, z=27.0, x_D=top.x, z_D=top.z, z_B=hub.z)
    assert nearest == pytest.approx(14.2, abs=0.05)


def test_clearance_of_the_haul_line_by_walking_along_it() -> None:
    """Measure from the outcrop's tip to many points of the rope; never trust one formula."""
    rng = np.random.default_rng(61)
    for _ in range(200):
        top = rng.uniform(0, 0.8), rng.uniform(30, 40)
        tip = rng.uniform(1.0, 3.0), rng.uniform(14, 27)
        z, clear = rng.uniform(0, 13), rng.uniform(0.1, 1.2)
        x = g.haul_clearance_offset(
            z=z, x_D=top[0], z_D=top[1], x_O=tip[0], z_O=tip[1], clearance=clear
        )
        t = np.linspace(0, 1, 40_001)
        rope_x, rope_z = top[0] + t * (x - top[0]), top[1] + t * (z - top[1])
        level = float(np.interp(-tip[1], -rope_z, rope_x)) - tip[0]
        assert level == pytest.approx(clear, abs=1e-6)
        nearest = float(np.hypot(rope_x - tip[0], rope_z - tip[1]).min())
        steepness = (top[1] - z) / math.hypot(x - top[0], top[1] - z)
        assert nearest == pytest.approx(clear * steepness, abs=1e-5)
        assert nearest <= clear


def test_at_right_angles_to_the_rope_the_clearance_is_less() -> None:
    """Distance of the tip from the straight rope, from coordinates."""
    out = g.haul_clearance_offset(z=5.0, x_D=0.3, z_D=32.0, x_O=1.5, z_O=25.0, clearance=0.5)
    rope = np.array([out - 0.3, 5.0 - 32.0])
    across = abs(rope[0] * (25.0 - 32.0) - rope[1] * (1.5 - 0.3)) / np.hypot(*rope)
    assert across == pytest.approx(0.5 * math.sin(math.atan2(27.0, out - 0.3)), rel=1e-12)
    said = " ".join(g.haul_clearance_offset.assumptions)
    assert "measured level; at right angles to the rope it is less: times the sine of the" in said


def test_clearance_of_the_worked_case() -> None:
    # an independent calculation made for this project: outcrop 1.5 m out at 25 m, 0.5 m clearance
    values = {"x_D": 0.3, "z_D": 32.0, "x_O": 1.5, "z_O": 25.0, "clearance": 0.5}
    assert g.haul_clearance_offset(z=0.0, **values) == pytest.approx(8.07, abs=0.01)
    assert g.haul_clearance_offset(z=1.0, **values) == pytest.approx(7.8, abs=0.05)
    assert g.haul_clearance_offset(z=2.0, **values) == pytest.approx(7.59, abs=0.005)


# --- rope ------------------------------------------------------------------------------------


def test_track_length_in_coordinates() -> None:
    rng = np.random.default_rng(62)
    p, a, b = rng.uniform(0, 40, (3, 2, 1000))
    length = g.track_length(x=p[0], z=p[1], x_A=a[0], z_A=a[1], x_B=b[0], z_B=b[1])
    np.testing.assert_allclose(length, np.abs(complex_(p) - complex_(a)) + np.abs(
        complex_(p) - complex_(b)
    ), rtol=1e-12)  # fmt: skip


def complex_(place: Array) -> Array:
    return np.asarray(place[0] + 1j * place[1])


def test_track_rope_over_the_whole_raise() -> None:
    # an independent calculation made for this project: 17.4 m from (2.5, 1.5) to (1, 31)
    top, hub = CASE.track_directional, CASE.hub
    low, high = (
        g.track_length(x=x, z=z, x_A=top.x, z_A=top.z, x_B=hub.x, z_B=hub.z)
        for x, z in ((2.5, 1.5), (1.0, 31.0))
    )
    assert low - high == pytest.approx(17.4, abs=0.05)


def test_take_in_rate_is_a_numeric_derivative_of_the_length() -> None:
    rng = np.random.default_rng(63)
    x, z = rng.uniform(1, 8, 500), rng.uniform(1, 28, 500)
    places = {"x_A": 0.4, "z_A": 33.0, "x_B": 45.0, "z_B": 1.0}
    lower, upper = (g.track_length(x=x, z=z + step, **places) for step in (-1e-5, 1e-5))
    rate = g.take_in_rate(
        track_elevation=np.arctan2(33.0 - z, x - 0.4), ground_depression=np.arctan2(z - 1.0, 45 - x)
    )
    np.testing.assert_allclose(rate, (lower - upper) / 2e-5, atol=1e-8)


def test_the_pay_out_rate_is_a_numeric_derivative_of_the_tag_line_s_length() -> None:
    rng = np.random.default_rng(64)
    x, z = rng.uniform(1, 8, 500), rng.uniform(-8, 28, 500)
    assert g.tag_length(x=1.0, z=4.0, x_B=4.0, z_B=0.0) == pytest.approx(5.0, rel=1e-15)
    lower, upper = (g.tag_length(x=x, z=z + step, x_B=45.0, z_B=1.0) for step in (-1e-5, 1e-5))
    rate = g.tag_pay_out_rate(ground_depression=np.arctan2(z - 1.0, 45 - x))
    np.testing.assert_allclose(rate, (upper - lower) / 2e-5, atol=1e-8)
    assert (rate[z < 1.0] < 0).all() and (rate[z > 1.0] > 0).all()


def test_the_angle_at_the_litter_passes_half_a_turn_beyond_the_straight_line() -> None:
    angle = g.litter_angle(haul_elevation=math.radians(50), ground_depression=math.radians(60))
    assert math.degrees(angle) == pytest.approx(190)


# --- slack -----------------------------------------------------------------------------------


def test_where_the_haul_line_goes_slack_the_track_legs_are_mirror_images() -> None:
    up = np.linspace(0.1, 1.55, 300)
    down = g.slack_haul_depression(haul_elevation=up)
    np.testing.assert_allclose(down, -up, rtol=1e-14)
    alone = g.slack_haul_track_tension(load=2000.0, haul_elevation=up)
    both_legs = alone * (np.exp(1j * (np.pi - up)) + np.exp(1j * -down))
    np.testing.assert_allclose(both_legs, 2000.0j, atol=1e-9)
    angles = {"haul_elevation": up, "ground_depression": down}
    np.testing.assert_allclose(g.track_tension(load=2000.0, **angles), alone, rtol=1e-12)
    left = g.haul_tension_with_track(load=2000.0, **angles)
    np.testing.assert_allclose(left, 0.0, atol=1e-9)


def test_a_track_never_makes_the_haul_line_carry_more_than_the_load() -> None:
    up, down = np.meshgrid(np.linspace(0.02, math.pi / 2, 200), np.linspace(-1.5, 1.5, 200))
    values = g.haul_tension_with_track.masked(load=1.0, haul_elevation=up, ground_depression=down)
    assert values.count() > 10_000 and values.max() <= 1 + 1e-12 and values.min() >= 0


# --- refusals --------------------------------------------------------------------------------


@pytest.mark.parametrize("formula", [g.tag_tension, g.haul_tension_with_tag, g.track_tension])
def test_on_the_straight_line_no_tension_is_enough(formula: Any) -> None:
    for haul, ground in ((0.5, 0.5), (0.5, 0.6)):
        with pytest.raises(DomainError, match="no tension holds the litter there"):
            formula(load=2000.0, haul_elevation=haul, ground_depression=ground)


def test_a_slack_haul_line_is_refused() -> None:
    with pytest.raises(DomainError, match="haul line would go slack"):
        g.haul_tension_with_track(load=2000.0, haul_elevation=0.5, ground_depression=-0.6)
    with pytest.raises(DomainError, match="haul line would go slack"):
        g.haul_tension_with_track_apart(
            load=2000.0, haul_elevation=0.5, track_elevation=0.55, ground_depression=-0.6
        )


def test_places_that_do_not_go_together_are_refused() -> None:
    good = {"load": 2000.0, "x": 2.5, "z": 27.0, "x_D": 0.3, "z_D": 32.0, "x_B": 40.0, "z_B": 0.5}
    assert g.line_tension_from_places(**good) > 0
    for change, words in (
        ({"z": 32.0}, "below the haul directional"),
        ({"x": 0.3}, "further out than the haul directional"),
        ({"x": 40.0, "z": 1.0}, "not as far out as the hub"),
        ({"x": 7.0}, "inside the straight line"),
    ):
        with pytest.raises(DomainError, match=words):
            g.line_tension_from_places(**{**good, **change})
    with pytest.raises(DomainError, match="directional must be above the hub"):
        g.straight_line_limit(z=1.0, x_D=0.3, z_D=5.0, x_B=40.0, z_B=6.0)
    with pytest.raises(DomainError, match="outcrop must lie between"):
        g.haul_clearance_offset(z=26.0, x_D=0.3, z_D=32.0, x_O=1.5, z_O=25.0, clearance=0.5)
