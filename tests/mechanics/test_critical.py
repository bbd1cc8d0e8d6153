"""Critical geometry for any multiple of the load, and loaded spans, against independent values."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ropecalc.derivation import DomainError
from ropecalc.mechanics import critical
from ropecalc.mechanics.critical import (
    RIGS,
    critical_geometry,
    critical_litter_angle,
    free_trolley_tension,
    mid_span_tension,
    rig,
    trolley_control,
    trolley_tension,
)
from ropecalc.mechanics.holding import Point
from ropecalc.mechanics.straight import FLAT
from tests.mechanics.settling import Rope, settle

often = settings(derandomize=True, deadline=None, max_examples=100)
LEVEL = {"ground_depression": 0.0}

# --- the table --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "others", "at_one", "at_two"),
    [
        ("two equal legs", {}, 120.0, 151.0),
        ("three equal legs", {}, 70.5, 80.4),
        ("redirect", {}, 120.0, 0.0),
        ("tag or track line", LEVEL, 45.0, 26.6),
        ("haul line against a tag line", LEVEL, 90.0, 30.0),
    ],
)
def test_once_and_twice_the_load(name, others, at_one, at_two) -> None:
    # an independent calculation made for this project; 120° for two legs also NFPA 1670, annex A
    found = np.degrees(critical_geometry(name, [1.0, 2.0], **others))
    assert found == pytest.approx([at_one, at_two], abs=0.06)


def test_sag_once_and_twice_the_load() -> None:
    # an independent calculation made for this project: 28.9 % and 12.9 % of the span
    found = critical_geometry("level span", [1.0, 2.0])
    assert found == pytest.approx([0.289, 0.129], abs=5e-4)


@pytest.mark.parametrize(("share", "multiple"), [(0.10, 2.550), (0.05, 5.025)])
def test_sag_and_multiple(share: float, multiple: float) -> None:
    # an independent calculation made for this project
    assert critical.span_ratio(sag_ratio=share) == pytest.approx(multiple, abs=5e-4)
    assert critical_geometry("level span", multiple) == pytest.approx(share, abs=1e-4)


def test_less_deflection_costs_more_than_half_again() -> None:
    # NZ FITEC, Best Practice Guidelines for Cable Logging, quoted in a forestry note: 6 % against
    # 10 % deflection loads a level span "about 60 % higher"
    six, ten = critical.span_ratio(sag_ratio=np.array([0.06, 0.10]))
    assert six / ten == pytest.approx(1.6, abs=0.06)


def test_the_angle_at_the_litter_is_not_120() -> None:
    # an independent calculation made for this project: 135° + b/2 for k = 1; for k = 2 and a
    # level ground leg 153.4°
    assert math.degrees(critical_litter_angle(2.0, 0.0)) == pytest.approx(153.4, abs=0.05)
    down = np.radians([-20.0, 0.0, 10.0, 35.0])
    found = np.degrees(critical_litter_angle(1.0, down))
    np.testing.assert_allclose(found, 135 + np.degrees(down) / 2, rtol=1e-12)
    # at 120° and b = 10° a track line carries only 0.39 W
    up = math.radians(180 - 120 + 10)
    assert critical.line_ratio(
        haul_elevation=up, ground_depression=math.radians(10)
    ) == pytest.approx(0.39, abs=0.006)


@pytest.mark.parametrize("one", RIGS, ids=[r.name for r in RIGS])
def test_every_rig_turns_round(one) -> None:
    """The ratio at the critical geometry is k; further the worse way it is more."""
    domain = one.ratio.result.domain
    low = max(domain.low, 1.0 if "haul" in one.name else 0.0) + 0.02
    k = np.linspace(low, min(domain.high - 0.02, 6.0), 60)
    for down in (-0.1, 0.0, 0.4) if one.others else (None,):
        others = {} if down is None else {"ground_depression": down}
        place = critical_geometry(one.name, k, **others)
        np.testing.assert_allclose(one.ratio(**{one.geometry: place}, **others), k, rtol=1e-9)
        grows = np.diff(place) > 0
        assert grows.all() if one.more_is_worse else not grows.any()
    assert rig(one.name) is one
    assert {v.name for v in one.ratio.given} == {one.geometry, *one.others}
    assert one.critical.result.name == one.geometry


def test_the_rigs_are_those_of_the_table() -> None:
    assert [r.name for r in RIGS] == [
        "two equal legs", "three equal legs", "redirect", "level span", "tag or track line",
        "haul line against a tag line",
    ]  # fmt: skip


def test_what_is_never_reached_is_refused() -> None:
    with pytest.raises(DomainError, match="no rig called 'zip line'; choose one of: two equal leg"):
        critical_geometry("zip line", 1.0)
    with pytest.raises(DomainError):
        critical_geometry("redirect", 2.1)
    with pytest.raises(DomainError):
        critical_geometry("level span", 0.5)
    up = {"ground_depression": math.radians(-30)}
    with pytest.raises(DomainError, match="line never carries this multiple"):
        critical_geometry("tag or track line", 2.01, **up)
    assert critical_geometry("tag or track line", 1.99, **up) > 0
    with pytest.raises(DomainError, match="haul line never carries this multiple"):
        critical_geometry("haul line against a tag line", 1.74, **up)
    assert critical_geometry("haul line against a tag line", 1.73, **up) > 0
    with pytest.raises(DomainError, match="cannot carry so little"):
        critical_geometry("haul line against a tag line", 0.86, **up)
    assert critical_geometry("haul line against a tag line", 0.87, **up) > 0
    with pytest.raises(DomainError, match="unless it hangs plumb"):
        critical_geometry("haul line against a tag line", 1.0, ground_depression=0.3)
    assert math.degrees(
        critical_geometry("haul line against a tag line", 1.0001, ground_depression=0.3)
    ) == pytest.approx(90, abs=0.1)


def test_a_missing_ground_depression_is_asked_for() -> None:
    with pytest.raises(TypeError, match="missing: ground_depression"):
        critical_geometry("tag or track line", 1.0)


# --- spans ------------------------------------------------------------------------------------


def test_a_rope_pushed_aside_in_the_middle() -> None:
    # OpenStax, University Physics 1, section 5.6, check problem: 3.0 m rope, 0.25 m, 200.0 N;
    # 6.0e2 N (608 N when 3.0 m is taken as the span)
    tension = mid_span_tension(load=200.0, span=3.0, sag=0.25)
    assert tension == pytest.approx(608, abs=0.5)
    assert tension == pytest.approx(6.0e2, rel=0.02)


def test_a_tightrope_walker() -> None:
    # University Physics 1, example 5.13: 70.0 kg, 5.0° both sides, g = 9.80; 3900 N
    angle = math.radians(5.0)
    found = trolley_tension(load=70 * 9.80, first_sag_angle=angle, second_sag_angle=angle)
    assert found == pytest.approx(3900, rel=0.01)
    assert mid_span_tension(load=70 * 9.80, span=2.0, sag=math.tan(angle)) == pytest.approx(found)


@pytest.mark.parametrize(("sag", "tension", "ratio_to_plumb"), [(12.0, 1.89e-3, 2.41)])
def test_a_spider(sag: float, tension: float, ratio_to_plumb: float) -> None:
    # OpenStax, College Physics 2e: 8.00e-5 kg in mid-thread, 12° sag
    angle = math.radians(sag)
    load = 8.00e-5 * 9.80
    found = trolley_tension(load=load, first_sag_angle=angle, second_sag_angle=angle)
    assert found == pytest.approx(tension, rel=3e-3)
    assert found / load == pytest.approx(ratio_to_plumb, abs=0.006)


@often
@given(st.floats(0.02, 1.4), st.floats(-0.6, 1.4))
def test_a_trolley_balances_and_follows_the_cable_theorem(one, two) -> None:
    angles = {"first_sag_angle": one, "second_sag_angle": two}
    if math.sin(one) + math.sin(two) <= FLAT:
        with pytest.raises(DomainError, match="must lift the load"):
            trolley_tension(load=2000.0, **angles)
        return
    tension = trolley_tension(load=2000.0, **angles)
    control = trolley_control(load=2000.0, **angles)
    left = tension * np.array([-math.cos(one), math.sin(one)])
    right = tension * np.array([math.cos(two), math.sin(two)])
    total = left + right + [control, -2000.0]
    np.testing.assert_allclose(total, 0, atol=1e-9 * (tension + 2000))
    assert (control > 1e-9) == (two > one + 1e-12) or abs(two - one) < 1e-9


def test_the_general_cable_theorem() -> None:
    """Level force times sag is the bending moment of a plain beam (Udoeyo, Structural Analysis)."""
    rng = np.random.default_rng(69)
    load, span = rng.uniform(500, 3000, 300), rng.uniform(5, 60, 300)
    sag = span * rng.uniform(0.02, 0.4, 300)
    tension = mid_span_tension(load=load, span=span, sag=sag)
    level = tension * span / 2 / np.hypot(span / 2, sag)
    np.testing.assert_allclose(level * sag, load * span / 4, rtol=1e-12)


def test_a_skyline_without_its_own_weight() -> None:
    # a rigid-link form quoted with USFS Research Paper PNW-39: level force L(2P + W)/(8 s)
    tension = mid_span_tension(load=4000.0, span=100.0, sag=6.0)
    level = 100.0 * 2 * 4000.0 / (8 * 6.0)
    assert tension == pytest.approx(math.hypot(level, 2000.0))


def test_a_free_trolley_settles_where_a_stiff_rope_does() -> None:
    rng = np.random.default_rng(70)
    for _ in range(6):
        span, rise = rng.uniform(6, 20), rng.uniform(-3, 3)
        rope = math.hypot(span, rise) * rng.uniform(1.03, 1.4)
        ends = (Point(0.0, 20.0), Point(span, 20.0 + rise))
        rest = settle(2000.0, (Rope(ends, rope, 1e8),), (span / 2, 15.0))
        found = free_trolley_tension(load=2000.0, span=span, span_rise=rise, span_rope=rope)
        assert found == pytest.approx(rest.tensions[0], rel=2e-3)


def test_a_free_trolley_does_not_feel_the_rise_but_needs_the_rope() -> None:
    asked = {"load": 2000.0, "span": 30.0, "span_rope": 32.0}
    assert free_trolley_tension(span_rise=5.0, **asked) == free_trolley_tension(
        span_rise=0.0, **asked
    )
    level = free_trolley_tension(span_rise=0.0, **asked)
    sag = math.sqrt(16.0**2 - 15.0**2)
    assert level == pytest.approx(mid_span_tension(load=2000.0, span=30.0, sag=sag))
    with pytest.raises(DomainError, match="longer than the straight line"):
        free_trolley_tension(span_rise=-12.0, **asked)


def test_spans_warn_of_stretch() -> None:
    assert "Measure sag under load" in mid_span_tension.cautions[0]


@pytest.mark.parametrize("depression", [-10.0, 0.0, 10.0, 25.0])
@pytest.mark.parametrize("opened", [118.0, 120.0, 140.0, 160.0])
def test_tension_from_the_angle_at_the_litter_balances_forces(
    depression: float, opened: float
) -> None:
    """Both balances of the litter, solved as a linear system from drawn directions."""
    down, angle = np.radians(depression), np.radians(opened)
    up = np.pi + down - angle
    haul = np.array([-np.cos(up), np.sin(up)])
    ground = np.array([np.cos(down), -np.sin(down)])
    _, track = np.linalg.solve(np.array([haul, haul + ground]).T, [0.0, 2000.0])
    found = critical.track_tension_at_litter_angle(
        load=2000.0, litter_angle=angle, ground_depression=down
    )
    assert found == pytest.approx(track, rel=1e-9)


def test_a_hundred_and_twenty_degrees_at_the_litter_is_not_the_load() -> None:
    """An independent calculation made for this project: 0.395 of the load at 10 degrees."""
    found = critical.track_tension_at_litter_angle(
        load=1.0, litter_angle=np.radians(120), ground_depression=np.radians(10)
    )
    assert found == pytest.approx(0.395, abs=5e-4)


@pytest.mark.parametrize("opened", [99.0, 179.99, 180.0, 190.0])
def test_angles_at_the_litter_that_cannot_be_are_refused(opened: float) -> None:
    with pytest.raises(ValueError, match="angle at the litter"):
        critical.track_tension_at_litter_angle(
            load=2000.0, litter_angle=np.radians(opened), ground_depression=np.radians(10)
        )
