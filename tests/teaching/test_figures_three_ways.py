"""The forces that are drawn balance, whatever draws them; limits and refusals are said."""

import math
from typing import Any

import numpy as np
import pytest

from ropecalc.mechanics.holding import Method, Reach
from ropecalc.teaching.figures import THREE_WAYS
from ropecalc.teaching.figures.free_body import Pull, pulls_on_litter
from ropecalc.teaching.figures.three_ways import ThreeWays, _attendant_stance
from ropecalc.units import Display

START = THREE_WAYS.start


def at(**values: Any) -> ThreeWays:
    result: ThreeWays = THREE_WAYS.compute(START | values)
    return result


def forces(result: ThreeWays) -> list[Pull]:
    return pulls_on_litter(result.load, result.held)


@pytest.mark.parametrize("method", list(Method))
@pytest.mark.parametrize("track_extra", [0.0, 1.5])
@pytest.mark.parametrize("hub_z", [-2.0, 0.5, 20.0])
def test_the_polygon_closes(method: Method, track_extra: float, hub_z: float) -> None:
    checked = 0
    for offset in np.linspace(0.4, 6, 9):
        for height in np.linspace(1, 31, 11):
            result = at(
                method=method.value,
                track_extra=track_extra,
                hub_z=hub_z,
                offset=float(offset),
                height=float(height),
            )
            if not result.held.reach.possible:
                continue
            checked += 1
            total = sum(size * np.array(direction) for _, size, direction, _ in forces(result))
            assert np.allclose(
                total,
                0.0,
                atol=1e-9 * result.load + 1e-9 * sum(size for _, size, _, _ in forces(result)),
            )
            for _, size, direction, _ in forces(result):
                assert size >= 0.0
                assert math.hypot(*direction) == pytest.approx(1.0)
    assert checked > 40


def test_the_lines_are_drawn_the_way_they_run() -> None:
    result = at(method="track line", track_extra=1.5)
    x, z = result.place.x, result.place.z
    targets = {
        "haul": result.rig.haul_directional,
        "track, upper leg": result.rig.track_directional,
        "track, ground leg": result.rig.hub,
    }
    drawn = {name: direction for name, _, direction, _ in forces(result)}
    for name, target in targets.items():
        way = np.array([target.x - x, target.z - z])
        assert np.allclose(drawn[name], way / math.hypot(*way))


def test_from_tag_to_track_the_triangle_stays() -> None:
    tag, track = at(method="tag line"), at(method="track line")
    corners = []
    for result in (tag, track):
        steps = [size * np.array(direction) for _, size, direction, _ in forces(result)]
        corners.append(np.cumsum(steps, axis=0))
    assert np.allclose(corners[0][:2], corners[1][:2])  # weight and line to the hub
    upper, haul = (
        size for name, size, _, _ in forces(track) if name in ("track, upper leg", "haul")
    )
    assert upper + haul == pytest.approx(tag.held.haul_tension)


def test_a_hand_worked_case() -> None:
    # 5 m below and 2.2 m out from the directional: slopes 5/2.2 and 26.5/37.5.
    result = at(method="tag line")
    sideways = 200 * 9.80665 / (5 / 2.2 - 26.5 / 37.5)
    assert result.held.line_tension == pytest.approx(sideways * math.hypot(1, 26.5 / 37.5))
    assert result.held.haul_tension == pytest.approx(sideways * math.hypot(1, 5 / 2.2))
    assert result.limit == pytest.approx(0.3 + 39.7 * 5 / 31.5)


def test_what_cannot_be_is_said_without_numbers() -> None:
    result = at(height=31.0)
    assert result.held.reach is Reach.BEYOND_LINE
    words = THREE_WAYS.summary(result, Display())
    assert "kN" not in words
    assert str(result.held.reach.sentence) in words


def test_too_sensitive_close_to_the_line() -> None:
    result = at(offset=6.0)
    assert result.held.reach is Reach.HELD
    assert result.sensitive
    words = THREE_WAYS.summary(result, Display())
    assert "kN" not in words
    assert "Too sensitive" in words
    assert "0.2 m" in words


def test_a_small_pull_near_plumb_is_not_too_sensitive() -> None:
    assert not at(offset=0.5, height=5.0).sensitive


def test_plumb_needs_nothing() -> None:
    result = at(offset=0.5, directional_x=0.5, method="track line")
    assert result.held.reach is Reach.PLUMB
    assert result.held.haul_tension == pytest.approx(result.load)
    assert "straight below" in THREE_WAYS.summary(result, Display())


def test_the_attendant_is_told_about_legs_and_weight() -> None:
    words = THREE_WAYS.summary(at(method="attendant"), Display())
    assert "legs" in words
    assert "outward push" in words


def test_a_hub_above_the_litter_is_pulled_down() -> None:
    words = THREE_WAYS.summary(at(method="track line", hub_z=20.0, height=10.0), Display())
    assert "downward pull on the hub" in words
    assert "−" not in words


@pytest.mark.parametrize(("offset", "reach"), [(0.4, True), (1.5, True), (1.6, False), (6, False)])
def test_feet_stand_on_the_rock_or_it_is_said_that_they_do_not(offset: float, reach: bool) -> None:
    result = at(method="attendant", offset=offset)
    assert result.legs_reach is reach
    feet, below, _ = _attendant_stance(offset)
    assert below < -1.0
    assert (feet <= 1e-9) is reach
    words = THREE_WAYS.summary(result, Display())
    assert ("do not reach" in words) is not reach
    assert "acts level at the attachment point" in words


@pytest.mark.parametrize("place", [{}, {"height": 6.0}, {"offset": 1.0, "track_extra": 1.0}])
def test_all_methods_have_one_scale_at_the_same_place(place: dict[str, float]) -> None:
    results = [at(method=m.value, **place) for m in Method]
    assert len({result.largest for result in results}) == 1
    sizes = [size for result in results for _, size, _, _ in forces(result)]
    assert results[0].largest == max(sizes)


def test_what_a_method_does_without_cannot_be_moved() -> None:
    idle = {m: set(THREE_WAYS.idle(START | {"method": m.value})) for m in Method}
    assert idle == {
        Method.ATTENDANT: {"hub_x", "hub_z", "track_extra"},
        Method.TAG: {"track_extra"},
        Method.TRACK: set(),
    }
    for method, keys in idle.items():
        for key in keys:
            moved = START[key] + 1.0
            one, other = at(method=method.value), at(method=method.value, **{key: moved})
            assert [p[:3] for p in forces(one)] == [p[:3] for p in forces(other)]
