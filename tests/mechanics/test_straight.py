"""Near the geometry that no tension holds, everything is refused before it grows out of hand."""

from math import degrees, pi
from typing import Any

import numpy as np
import pytest

from ropecalc.derivation import Derivation, DomainError
from ropecalc.mechanics import (
    anchors,
    critical,
    frames,
    guiding,
    guiding_limits,
    litter_pulley,
    locked,
    redirects,
    swing,
    tensioner_lines,
    track_path,
)
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS
from ropecalc.units import Kind

MODULES = (anchors, critical, guiding, guiding_limits, litter_pulley, redirects)
FORCES = {
    f"{module.__name__.rpartition('.')[2]}.{name}": value
    for module in MODULES
    for name, value in vars(module).items()
    if isinstance(value, Derivation)
    and value.given[0].name == "load"
    and value.result.kind is Kind.FORCE
}


def anywhere(derivation: Derivation, count: int) -> dict[str, np.ndarray[Any, Any]]:
    """Values from the middle of each domain to within 1e-15 of its ends."""
    rng = np.random.default_rng(93)
    drawn = {}
    for variable in derivation.given:
        low = max(variable.domain.low, variable.teaching.low - 50.0)
        high = min(variable.domain.high, variable.teaching.high + 50.0)
        near = 10.0 ** rng.uniform(-15, 0, count) * (high - low) / 2
        drawn[variable.name] = np.where(rng.random(count) < 0.5, low + near, high - near)
    drawn["load"] = np.full(count, 1.0)
    return drawn


@pytest.mark.parametrize("derivation", FORCES.values(), ids=FORCES.keys())
def test_no_force_is_more_than_a_thousand_loads_or_so(derivation: Derivation) -> None:
    values = derivation.masked(**anywhere(derivation, 100_000))
    assert values.count() > 50
    assert np.isfinite(values.compressed()).all()
    # two strands at one anchor, or a line beside a leaning one, may add up to a little more
    assert values.max() <= 2.001 / FLAT


def test_there_are_forces_to_test() -> None:
    assert len(FORCES) >= 25
    assert degrees(FLAT) < float(FLAT_WORDS.rstrip("°")) < degrees(FLAT) * 1.1


@pytest.mark.parametrize(
    ("derivation", "given", "name", "edge", "words"),
    [
        (anchors.two_leg_anchor, {"load": 1.0}, "leg_angle", pi, "in one straight line"),
        (anchors.two_leg_ratio, {}, "leg_angle", pi, "in one straight line"),
        (
            anchors.first_leg_tension, {"load": 1.0, "first_leg_angle": pi / 2},
            "second_leg_angle", pi / 2, "in one straight line",
        ),
        (
            anchors.gaining_leg_tension, {"load": 1.0, "pull_swing": 0.1}, "leg_angle", pi,
            "in one straight line",
        ),
        (anchors.three_leg_anchor, {"load": 1.0}, "leg_plumb_angle", pi / 2, "in one plane"),
        (
            guiding.tag_tension, {"load": 1.0, "haul_elevation": 0.7}, "ground_depression", 0.7,
            "no tension holds the litter there",
        ),
        (
            redirects.combined_head_pull,
            {"load": 1.0, "haul_elevation": 0.7, "back_depression": 0.5}, "ground_depression", 0.7,
            "no tension holds the litter there",
        ),
        (
            guiding.track_tension_apart,
            {"load": 1.0, "haul_elevation": 0.7, "track_elevation": 0.7}, "ground_depression", 0.7,
            "inside the straight line from the track directional",
        ),
        (
            track_path.released_track_tension, {"load": 1.0, "track_elevation": 0.7},
            "ground_depression", 0.7, "no tension holds the litter there",
        ),
    ],
)  # fmt: skip
def test_the_tolerance_is_an_angle(
    derivation: Derivation, given: dict[str, float], name: str, edge: float, words: str
) -> None:
    outside = derivation(**given, **{name: edge - 1.01 * FLAT})
    assert 100 < outside < 2.1 / FLAT
    for near in (0.99 * FLAT, 1e-7, 1e-12):
        with pytest.raises(DomainError, match=words):
            derivation(**given, **{name: edge - near})
    both = derivation.masked(**given, **{name: np.array([edge - 2 * FLAT, edge - FLAT / 2])})
    assert np.ma.getmaskarray(both).tolist() == [False, True]
    asked = {name: np.array([edge - 2 * FLAT, edge - FLAT / 2])}
    assert derivation.valid(**given, **asked).tolist() == [True, False]


@pytest.mark.parametrize(
    ("derivation", "given", "name", "outside", "inside", "words"),
    [
        # slopes of a thousandth and a little, at lengths of ten and a hundred metres
        (guiding.hub_limit, {"x": 10.3, "x_D": 0.3, "z_D": 32.0, "z_B": 0.5}, "z",
         31.9899, 31.9901, "must be below the haul directional"),
        (guiding.hub_limit, {"x": -9.7, "x_D": 0.3, "z_D": 32.0, "z_B": 0.5}, "z",
         31.9899, 31.9901, "must be below the haul directional"),
        (guiding.straight_line_limit, {"z": 1.0, "x_D": 0.3, "z_D": 32.0, "x_B": 100.3}, "z_B",
         31.899, 31.901, "The directional must be above the hub"),
        (guiding.straight_line_limit, {"z": 1.0, "x_D": 0.3, "z_D": 32.0, "x_B": -99.7}, "z_B",
         31.899, 31.901, "The directional must be above the hub"),
        (guiding.attendant_push, {"load": 1.0, "off_plumb": 10.0}, "drop", 0.0101, 0.0099,
         "a level line lifts nothing"),
        (guiding.attendant_haul_tension, {"load": 1.0, "off_plumb": 10.0}, "drop", 0.0101, 0.0099,
         "a level line lifts nothing"),
        (guiding.line_tension_from_places,
         {"load": 1.0, "z": 16.0, "x_D": 0.0, "z_D": 32.0, "x_B": 32.0, "z_B": 0.0}, "x",
         15.983, 15.985, "inside the straight line from the haul directional"),
        (guiding.slack_haul_track_tension, {"load": 1.0}, "haul_elevation", 0.00101, 0.00099,
         "level lines lift nothing"),
        (guiding.tension_to_high_hub, {"load": 1.0, "line_elevation": 0.0005}, "haul_elevation",
         0.00051, 0.00049, "level lines lift nothing"),
        (critical.mid_span_tension, {"load": 1.0, "span": 100.0}, "sag", 0.0501, 0.0499,
         "The span must sag"),
        (critical.span_ratio, {}, "sag_ratio", 0.000501, 0.000499, "The span must sag"),
        (critical.trolley_tension, {"load": 1.0, "second_sag_angle": -0.5}, "first_sag_angle",
         0.5012, 0.5011, "together must lift the load"),
        (critical.free_trolley_tension, {"load": 1.0, "span": 100.0, "span_rise": 0.0}, "span_rope",
         100.000051, 100.000049, "longer than the straight line"),
        (anchors.bridle_leg_tension, {"load": 1.0, "leg_length": 100.0}, "anchor_spacing",
         199.99997, 199.99998, "not lie in one straight line"),
        (anchors.back_leg_tension,
         {"load": 1.0, "front_leg_angle": pi / 2 - 0.0005, "half_spread": 0.0}, "back_leg_angle",
         pi / 2 - 0.00051, pi / 2 - 0.00049, "must not all lie level"),
        (guiding_limits.hub_sliding_tension, {"hub_mass": 1.0, "hub_friction": 1.0},
         "ground_depression", -pi / 4 + 0.00072, -pi / 4 + 0.0007, "along the ground"),
        (litter_pulley.sticking_leg_ratio, {"ground_depression": 0.3}, "haul_elevation",
         pi / 2 - 0.00101, pi / 2 - 0.00099, "nothing makes the litter stick"),
    ],
)  # fmt: skip
def test_the_same_tolerance_everywhere(
    derivation: Derivation, given: dict[str, float], name: str, outside: float, inside: float,
    words: str,
) -> None:  # fmt: skip
    assert np.isfinite(derivation(**given, **{name: outside}))
    with pytest.raises(DomainError, match=words):
        derivation(**given, **{name: inside})


@pytest.mark.parametrize("guy", [frames.guy_in_front, frames.guy_behind])
def test_a_guy_that_passes_the_feet_too_closely_is_refused(guy: Derivation) -> None:
    """Its arm about the feet is what the sine of the angle leaves of the frame's length."""
    side = 1.0 if guy is frames.guy_in_front else -1.0
    frame = {"head_height": 2.0, "head_reach": -side * 1.5, "downward_pull": 1000.0}
    along = np.arctan2(2.0, 1.5)  # the guy runs down along the frame
    asked = {**frame, "inward_pull": side * 1000.0 - 750.0 * side + side * 250.0}
    tension = guy(**asked, guy_depression=along - 1.01 * FLAT)
    moment = abs(2.0 * asked["inward_pull"] - frame["head_reach"] * 1000.0)
    assert tension == pytest.approx(moment / (2.5 * np.sin(1.01 * FLAT)), rel=1e-9)
    with pytest.raises(DomainError, match="or it cannot hold the frame"):
        guy(**asked, guy_depression=along - 0.99 * FLAT)


@pytest.mark.parametrize(
    "change",
    [{"leg_half_spread": pi / 2 - FLAT / 2}, {"head_height": 0.0009}, {"head_height": 1e-9}],
)
def test_legs_that_lie_flat_are_refused(change: dict[str, float]) -> None:
    asked = {
        "downward_pull": 1000.0, "guy_tension": 0.0, "guy_depression": 0.5, "head_height": 2.0,
        "head_reach": 1.0, "leg_half_spread": 0.3,
    }  # fmt: skip
    with pytest.raises(DomainError, match="legs that lie flat carry nothing"):
        frames.leg_compression(**(asked | change))


def test_a_plumb_haul_line_never_sticks() -> None:
    with pytest.raises(DomainError, match="nothing makes the litter stick"):
        litter_pulley.sticking_leg_ratio(haul_elevation=pi / 2, ground_depression=0.3)


TRACK = {"z": 20.0, "x_A": 0.0, "z_A": 32.0, "x_B": 40.0, "z_B": 2.0}
DEVICE = {"lines": 2, "haul_speed": 0.1, "track_elevation": 0.7}


@pytest.mark.parametrize(
    ("derivation", "given", "name", "edge", "words"),
    [
        (locked.swing_in_rate, {"track_elevation": 0.7}, "ground_depression", 0.7, "steeper"),
        (locked.swing_in_rate, {"track_elevation": 0.7}, "ground_depression", -0.7, "steeper"),
        (tensioner_lines.device_speed, DEVICE, "ground_depression", 0.7, "have to come in"),
    ],
)
def test_legs_in_one_straight_line_swing_and_come_in_nowhere(
    derivation: Derivation, given: dict[str, float], name: str, edge: float, words: str
) -> None:
    inwards = -np.sign(edge)
    assert derivation(**given, **{name: edge + inwards * 1.01 * FLAT}) > 0
    for near in (0.99 * FLAT, 1e-12, 0.0):
        with pytest.raises(DomainError, match=words):
            derivation(**given, **{name: edge + inwards * near})


def test_a_track_rope_that_is_all_but_straight_is_refused() -> None:
    """Its two legs turn at the litter by twice the angle of either: half the tolerance each."""
    straight = np.hypot(40.0, 30.0)
    assert np.isfinite(locked.locked_offset(track_length=straight / np.cos(0.51 * FLAT), **TRACK))
    with pytest.raises(DomainError, match="longer than the straight way"):
        locked.locked_offset(track_length=straight / np.cos(0.49 * FLAT), **TRACK)


def test_a_litter_does_not_start_its_swing_on_a_level_line() -> None:
    leg = {"haul_leg_length": 5.0}
    assert swing.swing_fall(**leg, off_plumb=5.0 * np.cos(1.01 * FLAT)) < 5.0
    start = 5.0 * np.cos(0.99 * FLAT)
    with pytest.raises(DomainError, match="a level line lifts nothing"):
        swing.swing_fall(**leg, off_plumb=start)
    with pytest.raises(DomainError, match="a level line lifts nothing"):
        swing.swing_peak(load=1000.0, **leg, off_plumb=start)
    with pytest.raises(DomainError, match="a level line lifts nothing"):
        swing.swing(load=1000.0, **leg, off_plumb=start, contact=0.0)


def test_a_track_directional_far_out_does_not_turn_a_speed_round() -> None:
    """Past plumb, the upper leg can rise less steeply than the ground leg falls."""
    past = {"track_elevation": 2.8, "ground_depression": 0.7}
    with pytest.raises(DomainError, match="swing the litter out"):
        locked.swing_in_rate(**past)
    with pytest.raises(DomainError, match="have to come in"):
        tensioner_lines.device_speed(lines=2, haul_speed=0.1, **past)
