"""Every solver, given what nobody meant to give it: it refuses in words or answers with numbers.

The derivations face the same in ``test_every_derivation``. Each parameter of each solver takes each
strange value in turn, beside values that are in order.
"""

import math
import warnings
from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

import numpy as np
import pytest

from ropecalc.derivation import DomainError, Explanation
from ropecalc.mechanics import (
    critical,
    frames,
    friction,
    guiding_limits,
    legs,
    litter_pulley,
    locked,
    measurement,
    pulleys,
    raise_work,
    redirects,
    sheaves,
    slip,
    strength,
    swing,
    tensioner,
    tensioner_memory,
)
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.holding import Method, Point, Rig, hold, leg_angles
from tests.mechanics.cases import CASE, CASE_LOAD

ARRAY = np.array([0.5, 1.0])
STRANGE: Mapping[str, Any] = {
    "an array": ARRAY,
    "a long list": [1.0, 2.0, 3.0],
    "a table": np.ones((2, 2)),
    "an empty list": [],
    "no number": math.nan,
    "infinite": math.inf,
    "minus infinite": -math.inf,
    "an array with no number in it": np.array([1.0, math.nan]),
    "negative": -1.0,
    "zero": 0.0,
    "huge": 1e300,
    "tiny": 1e-300,
    "beyond any float": 10**400,
    "text": "heavy",
    "digits as text": "2",
    "nothing": None,
    "complex": 1 + 2j,
    "masked": np.ma.masked_array([1.0, 2.0], mask=[False, True]),
    "an object": object(),
}

PLACE = {"rig": CASE, "load": CASE_LOAD, "x": 2.5, "z": 27.0}
TENSIONER = measurement.Tensioner(3, 0.9)
SIMPLE = pulleys.common_system("3:1")
SERIES = {"lines": 3, "tensioning": "one rope in series", "stiffness": 5e4}
ANCHORS = [(-1.0, 0.0, 2.0), (1.0, 0.0, 2.0), (0.0, 1.0, 2.0)]
HEAD, FEET = (0.3, 0.0, 2.0), [(0.0, -0.7, 0.0), (0.0, 0.7, 0.0)]
DOWN = (0.0, 0.0, -2000.0)
OPTIONAL = {"ground", "required", "number", "tie_back_slack"}
"""Parameters that may be left out; those of a solver that needs them are refused by name."""


def _rig(**place: Any) -> Any:
    """The verdict in a rig, one of whose places is strange."""
    ends = [Point(place[f"x_{end}"], place[f"z_{end}"]) for end in "DAB"]
    return hold(Method.TRACK, Rig(*ends), CASE_LOAD, 2.5, 27.0)


def _one_line(**values: Any) -> Any:
    line = redirects.HeadLine("main", "hauling", **{k: values[k] for k in values.keys() - {"eta"}})
    return redirects.head_load([line], efficiency=values["eta"])


def _one_component(**values: Any) -> Any:
    part = strength.Component("grab", values.pop("strength"), values.pop("load"))
    return strength.weakest_link([part], **values)


def _tensioner(lines: Any, efficiency: Any) -> Any:
    system = measurement.Tensioner(lines, efficiency)
    return measurement.line_reading(system, track_tension=1e3, line=1, last_move="taken in")


def _memory(first: str, device_pull: Any, moved: Any, **ropes: Any) -> Any:
    here = tensioner_memory.Ropes(**ropes)
    return tensioner_memory.moved_back(here, first=first, device_pull=device_pull, moved=moved)


EDGE = {"direction": "hauling", "load_side": 2000.0, "friction": 0.3, "turn": 1.5}
SHEAVE = {"direction": "holding", "load_side": 2000.0, "efficiency": 0.9, "turn": 1.5}
READ = {"system": TENSIONER, "last_move": "taken in"}
CALLS: Mapping[str, tuple[Callable[..., Any], Mapping[str, Any]]] = {
    "hold": (hold, {"method": "track line"} | PLACE),
    "hold in a rig": (
        _rig, {"x_D": 0.3, "z_D": 32.0, "x_A": 0.3, "z_A": 32.0, "x_B": 40.0, "z_B": 0.5},
    ),
    "leg_angles": (leg_angles, {"rig": CASE, "x": 2.5, "z": 27.0}),
    "common_system": (
        pulleys.common_system, {"name": "3:1", "height": 30.0, "throw": 4.0, "gap": 1.0},
    ),
    "series_tensioner_system": (
        pulleys.series_tensioner_system, {"lines": 3, "play": 6.0, "height": 30.0},
    ),
    "forces": (
        pulleys.forces,
        {"system": SIMPLE, "direction": "hauling", "load": 2000.0, "efficiency": 0.9},
    ),
    "room": (pulleys.room, {"system": SIMPLE, "clear": 0.3, "ground": 12.0}),
    "rope_needed": (pulleys.rope_needed, {"system": SIMPLE, "tail": 2.0}),
    "plan_throws": (
        pulleys.plan_throws,
        {
            "height": 30.0, "rise": 4.0, "reset_loss": 0.4, "ratio": 3.0, "hand_speed": 0.3,
            "reset_time": 20.0,
        },
    ),
    "haulers": (pulleys.haulers, {"hand_pull": 700.0, "per_person": 200.0}),
    "snag_force": (
        pulleys.snag_force, {"people": 5.0, "burst_per_person": 500.0, "advantage": 3.0},
    ),
    "over_sheave": (sheaves.over_sheave, SHEAVE),
    "series_tensioner": (
        tensioner.series_tensioner,
        {"direction": "hauling", "device_pull": 500.0, "lines": 3, "efficiency": 0.9},
    ),
    "tensioner_rope": (
        tensioner.tensioner_rope,
        {"lines": 3, "least_play": 1.0, "take_in": 5.0, "line_stretch": 0.5, "tail": 2.0},
    ),
    "device_feed": (tensioner.device_feed, {"lines": 3, "line_rate": 0.4}),
    "equalise": (
        tensioner.equalise, {"lines": 3, "each_line_tension": 900.0, "efficiency": 0.9},
    ),
    "lost_line": (tensioner.lost_line, {"lines": 3, "play": 3.0}),
    "moved_back": (
        _memory,
        {
            "first": "hauling", "device_pull": 800.0, "moved": 0.2, "lines": 3, "efficiency": 0.8,
            "stiffness": 5e4, "line_length": 20.0, "play": 6.0,
        },
    ),
    "slipped": (
        slip.slipped, {"method": "track line", "slip": 0.2, "stiffness": 5e4} | PLACE,
    ),
    "slip_to_reach": (slip.slip_to_reach, {"method": "tag line", "inward": 0.4} | PLACE),
    "line_length": (
        slip.line_length, {"method": "track line", "rig": CASE, "x": 2.5, "z": 27.0},
    ),
    "outward_balance": (
        slip.outward_balance, {"method": "track line", "tension": 1e3} | PLACE,
    ),
    "move_locked": (locked.move_locked, {"new_z": 25.0, "stiffness": 5e4} | PLACE),
    "swing": (
        swing.swing,
        {"load": 2000.0, "haul_leg_length": 5.5, "off_plumb": 2.0, "contact": 0.5},
    ),
    "impact_speed": (swing.impact_speed, {"fall": 0.5}),
    "haul_lost": (
        swing.haul_lost, {"belay_slack": 0.5, "belay_length": 15.0, "stiffness": 5e4} | PLACE,
    ),
    "line_lost in series": (
        swing.line_lost, SERIES | {"play": 3.0, "efficiency": 0.9, "tie_back_slack": 0.3} | PLACE,
    ),
    "line_lost alone": (
        swing.line_lost,
        {"lines": 3, "tensioning": "a tensioner for each line", "stiffness": 5e4} | PLACE,
    ),
    "raise_work": (
        raise_work.raise_work,
        {"method": Method.TRACK, "rig": CASE, "load": 2e3, "path": [(2.5, 20.0), (2.5, 27.0)]},
    ),
    "weakest_link": (
        _one_component,
        {
            "strength": 2e4, "load": 2e3, "load_uncertainty": 0.3, "strength_uncertainty": 0.1,
            "required": 5.0,
        },
    ),
    "a tensioner": (_tensioner, {"lines": 3, "efficiency": 0.9}),
    "line_from_strand": (
        measurement.line_from_strand, READ | {"reading": 800.0, "strand": 1, "line": 1},
    ),
    "total_from_strand": (measurement.total_from_strand, READ | {"reading": 800.0, "strand": 1}),
    "strand_reading": (measurement.strand_reading, READ | {"track_tension": 3e3, "strand": 1}),
    "line_reading": (measurement.line_reading, READ | {"track_tension": 3e3, "line": 2}),
    "across_sheave": (
        measurement.across_sheave, {"reading": 1e3, "efficiency": 0.9, "last_move": "let out"},
    ),
    "cell_reading": (
        measurement.cell_reading,
        READ
        | {
            "place": measurement.CellPlace.STRAND, "haul_tension": 2e3, "track_tension": 3e3,
            "number": 1,
        },
    ),
    "tension_band": (
        measurement.tension_band,
        {
            "load": 2e3, "haul_elevation": 1.1, "ground_depression": 0.5, "haul_error": 0.02,
            "ground_error": 0.02,
        },
    ),
    "compare_readings": (
        measurement.compare_readings,
        {
            "load": 2e3, "haul_reading": 1200.0, "track_reading": 900.0, "haul_elevation": 1.1,
            "ground_depression": 0.5, "haul_cell_error": 50.0, "track_cell_error": 50.0,
        },
    ),
    "over_edge": (friction.over_edge, EDGE),
    "three_legs": (legs.three_legs, {"directions": ANCHORS, "pull": DOWN}),
    "three_legs_at": (
        legs.three_legs_at, {"knot": (0.0, 0.2, 0.0), "anchor_places": ANCHORS, "pull": DOWN},
    ),
    "three_legs_of_lengths": (
        legs.three_legs_of_lengths,
        {"anchor_places": ANCHORS, "lengths": [3.0, 3.0, 3.0], "pull": DOWN},
    ),
    "redundant_legs": (
        legs.redundant_legs,
        {
            "knot": (0.0, 0.3, 0.0), "anchor_places": ANCHORS, "pull": DOWN, "stiffness": 5e4,
            "length_errors": 0.0,
        },
    ),
    "bridle": (
        legs.bridle,
        {
            "first": (0.0, 3.0), "second": (2.0, 3.0), "first_length": 2.0, "second_length": 2.0,
            "load": 2e3,
        },
    ),
    "head_load": (
        _one_line,
        {"front_tension": 2e3, "front_depression": 1.2, "back_depression": 0.5, "eta": 0.9},
    ),
    "footing": (
        frames.footing,
        {
            "inward_pull": 500.0, "downward_pull": 3e3, "head_height": 2.0, "head_reach": 0.3,
            "back_foot": 1.5,
        },
    ),
    "frame_in_space": (
        frames.frame_in_space,
        {"head": HEAD, "feet": FEET, "pull": (-1500.0, 0.0, -3e3), "guys": [(3.0, 0.0, 0.0)]},
    ),
    "critical_litter_angle": (
        critical.critical_litter_angle, {"load_ratio": 1.0, "ground_depression": 0.5},
    ),
    "litter_pulley": (
        litter_pulley.litter_pulley,
        {
            "direction": "hauling", "load": 2e3, "haul_elevation": 1.1, "ground_depression": 0.5,
            "efficiency": 0.9,
        },
    ),
    "two_hubs": (
        guiding_limits.two_hubs,
        {
            "load": 2e3, "litter": (2.5, 0.0, 27.0), "haul_directional": (0.3, 0.0, 32.0),
            "hubs": [(40.0, -10.0, 0.5), (40.0, 10.0, 0.5)],
        },
    ),
    "largest_offset": (
        guiding_limits.largest_offset,
        {
            "load": 2e3, "line_tension": 2e3, "z": 27.0, "haul_directional": (0.3, 32.0),
            "hub": (40.0, 0.5),
        },
    ),
} | {
    f"critical {rig.name}": (
        critical.critical_geometry,
        {"name": rig.name, "load_ratio": 2.0} | dict.fromkeys(rig.others, 0.3),
    )
    for rig in critical.RIGS
}  # fmt: skip
WORDS = {
    "method", "rig", "name", "system", "direction", "first", "tensioning", "last_move", "place",
}  # fmt: skip
"""Parameters that take no number; what they refuse is tested with their modules."""
CASES = [(call, name) for call in CALLS for name in CALLS[call][1] if name not in WORDS]


def _numbers(value: Any) -> Iterator[Any]:
    """Every number in a result, however deep."""
    if is_dataclass(value) and not isinstance(value, Rig):
        for field in fields(value):
            yield from _numbers(getattr(value, field.name))
    elif isinstance(value, Mapping):
        for one in value.values():
            yield from _numbers(one)
    elif isinstance(value, tuple | list):
        for one in value:
            yield from _numbers(one)
    elif isinstance(value, float | int | np.ndarray | np.number):
        yield value


def _in_order(value: Any) -> bool:
    return all(
        not np.any(np.isnan(np.ma.compressed(np.ma.asarray(number))))
        for number in _numbers(value)
        if np.asarray(number).dtype.kind == "f"
    )


def _told(result: Any) -> None:
    if hasattr(result, "explain"):
        told = result.explain()
        assert isinstance(told, Explanation)
        assert "nan" not in told.as_text().split()


@pytest.mark.parametrize("call", CALLS)
def test_what_is_in_order_is_answered_and_told(call: str) -> None:
    function, values = CALLS[call]
    result = function(**values)
    assert _in_order(result)
    _told(result)


@pytest.mark.parametrize(("call", "parameter"), CASES)
def test_strange_values_are_refused_in_words_or_answered_with_numbers(
    call: str, parameter: str
) -> None:
    function, values = CALLS[call]
    for strange in STRANGE.values():
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            try:
                result = function(**{**values, parameter: strange})
                assert _in_order(result), strange
                _told(result)
            except DomainError as refusal:
                assert str(refusal)[-1] in ".)", str(refusal)


@pytest.mark.parametrize(("call", "parameter"), CASES)
def test_what_is_no_number_is_never_taken_for_one(call: str, parameter: str) -> None:
    function, values = CALLS[call]
    for kind in ("text", "digits as text", "nothing", "complex", "an object", "beyond any float"):
        if kind != "nothing" or parameter not in OPTIONAL:
            with pytest.raises(DomainError):
                function(**{**values, parameter: STRANGE[kind]})


def test_an_explanation_tells_of_one_case() -> None:
    edge = friction.over_edge("hauling", load_side=[1e3, 2e3], friction=0.3, turn=1.0)
    with pytest.raises(DomainError, match=r"single numbers, not arrays\. Choose one case for it"):
        edge.explain()


@pytest.mark.parametrize(
    ("name", "call", "words"),
    [
        ("efficiency", "over_sheave", "at least 0.0100 and at most 1"),
        ("friction", "over_edge", "at least 0 and at most 3"),
        ("turn", "over_edge", "at least 0° and at most 5760°"),
    ],
)
def test_what_would_grow_past_all_reckoning_is_refused_by_its_own_name(
    name: str, call: str, words: str
) -> None:
    function, values = CALLS[call]
    with pytest.raises(DomainError, match=words) as refusal:
        function(**{**values, name: 1e-300 if name == "efficiency" else 1e300})
    assert refusal.value.keyword == name


def test_at_the_ends_of_friction_the_numbers_still_fit() -> None:
    most = {"friction": q.FRICTION.domain.high, "turn": q.TURN.domain.high}
    assert math.isfinite(friction.edge_reversal(**most))
    assert math.isfinite(friction.capstan_tension(tension_behind=1e5, **most))
    worst = tensioner.series_tensioner("holding", device_pull=1e4, lines=20, efficiency=0.01)
    assert _in_order(worst) and math.isfinite(worst.total.high)
    with pytest.raises(DomainError, match="In so narrow a groove"):
        friction.groove_tension(tension_behind=1e3, **most, groove_angle=0.5)
    assert math.isfinite(friction.groove_tension(tension_behind=1e3, friction=3.0, turn=100.0,
                                                 groove_angle=math.pi))  # fmt: skip


@pytest.mark.parametrize("strange", STRANGE.values(), ids=STRANGE)
def test_a_system_with_a_strange_place_or_angle_is_refused_in_words(strange: Any) -> None:
    """What is a place, the negative and the tiny among them, gives a system or a reason."""

    def built(station: Any, angle: Any) -> pulleys.System:
        bodies = (
            pulleys.Body("load", pulleys.Role.LOAD, 10.0),
            pulleys.Body("anchor", pulleys.Role.ANCHOR, station),
            pulleys.Body("hand", pulleys.Role.HAND, 8.0),
        )
        way = (pulleys.tied("load"), pulleys.over("anchor", angle=angle), pulleys.tied("hand"))
        return pulleys.System("whip", bodies, (pulleys.Rope("rope", way),))

    for station, angle in ((strange, None), (0.0, strange)):
        try:
            system = built(station, angle)
        except DomainError as refusal:
            assert str(refusal).endswith(".")
        else:
            assert math.isfinite(system.bodies[1].station)


@pytest.mark.parametrize("strange", [3, None, 1.5, ["3:1"]])
def test_a_system_by_something_that_is_no_name_is_refused_in_words(strange: Any) -> None:
    with pytest.raises(DomainError, match="is not the name of a common system"):
        pulleys.common_system(strange)
