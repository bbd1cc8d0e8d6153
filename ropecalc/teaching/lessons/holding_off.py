"""Holding a litter off the rock: attendant, tag line and track lines, and where each is hard."""

import math
from collections.abc import Mapping

from ropecalc import cautions
from ropecalc.mechanics import guiding, vectors
from ropecalc.mechanics.holding import Hold, Method, Point, Rig, hold
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import THREE_WAYS
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import holding_off
from ropecalc.units import Kind

_TOP = Point(0.3, 32.0)
_RIG = Rig(haul_directional=_TOP, track_directional=_TOP, hub=Point(40.0, 0.5))
_MASS = 200.0
_OUT, _HIGH = 2.5, 27.0
"""The example of this lesson: one rig on the Upper Heron Wall, one litter at one place."""


def _held(method: Method, height: float, rig: Rig = _RIG) -> Hold:
    return hold(method, rig, vectors.weight(mass=_MASS), _OUT, height)


def _places() -> dict[str, float]:
    return {"x_D": _TOP.x, "z_D": _TOP.z, "x_B": _RIG.hub.x, "z_B": _RIG.hub.z}


def _example() -> Mapping[str, Quantity]:
    return {
        "mass": (_MASS, Kind.MASS),
        "weight": (vectors.weight(mass=_MASS), Kind.FORCE),
        "out": (_OUT, Kind.LENGTH),
        "high": (_HIGH, Kind.LENGTH),
        "top": (_TOP.z, Kind.LENGTH),
        "hub": (_RIG.hub.x, Kind.LENGTH),
    }


_ABOVE = 1.0
"""How far above the haul directional that of the track lines is, in the variation (m)."""
_TRACK_ABOVE = Rig(_TOP, Point(_TOP.x, _TOP.z + _ABOVE), _RIG.hub)
_ACROSS = Rig(_TOP, _TOP, Point(_RIG.hub.x, 40.0))
"""The variation with a hub across the gorge."""


def _at_the_rail() -> float:
    """Level part of the tag line's pull in the example (N)."""
    held = _held(Method.TAG, _HIGH)
    return float(held.line_tension * math.cos(held.ground_depression))


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    held = _held(Method.TRACK, _HIGH)
    return {
        "load": vectors.weight(mass=_MASS),
        "x": _OUT,
        "z": _HIGH,
        **_places(),
        "haul_elevation": held.haul_elevation,
        "track_elevation": _held(Method.TRACK, _HIGH, _TRACK_ABOVE).track_elevation,
        "ground_depression": held.ground_depression,
        "line_elevation": -_held(Method.TAG, _HIGH, _ACROSS).ground_depression,
        "side_pull": _at_the_rail(),
        "off_plumb": _OUT - _TOP.x,
        "drop": _TOP.z - _HIGH,
    }


def _pushes() -> Mapping[str, Quantity]:
    load, off, near, far = vectors.weight(mass=_MASS), 0.9, 4.0, 25.0
    return {
        "off": (off, Kind.LENGTH),
        "far": (far, Kind.LENGTH),
        "near": (near, Kind.LENGTH),
        "easy": (guiding.attendant_push(load=load, off_plumb=off, drop=far), Kind.FORCE),
        "hard": (guiding.attendant_push(load=load, off_plumb=off, drop=near), Kind.FORCE),
    }


def _one_triangle() -> Mapping[str, Quantity]:
    tag, track = _held(Method.TAG, _HIGH), _held(Method.TRACK, _HIGH)
    return {
        "tag": (tag.line_tension, Kind.FORCE),
        "track": (track.line_tension, Kind.FORCE),
        "against": (tag.haul_tension, Kind.FORCE),
        "beside": (track.haul_tension, Kind.FORCE),
        "gap": (tag.haul_tension - track.haul_tension, Kind.FORCE),
        "weight": (vectors.weight(mass=_MASS), Kind.FORCE),
    }


def _limit() -> Mapping[str, Quantity]:
    limit = guiding.straight_line_limit(z=_HIGH, **_places())
    return {"high": (_HIGH, Kind.LENGTH), "limit": (limit, Kind.LENGTH)}


def _slack() -> Mapping[str, Quantity]:
    high = _held(Method.TRACK, _HIGH)
    tension = guiding.slack_haul_track_tension(
        load=vectors.weight(mass=_MASS), haul_elevation=high.haul_elevation
    )
    return {
        "angle": (high.haul_elevation, Kind.ANGLE),
        "tension": (tension, Kind.FORCE),
    }


def _track_above() -> Mapping[str, Quantity]:
    before, after = _held(Method.TRACK, _HIGH), _held(Method.TRACK, _HIGH, _TRACK_ABOVE)
    return {
        "step": (_ABOVE, Kind.LENGTH),
        "before": (before.line_tension, Kind.FORCE),
        "after": (after.line_tension, Kind.FORCE),
        "haul_before": (before.haul_tension, Kind.FORCE),
        "haul_after": (after.haul_tension, Kind.FORCE),
    }


def _hub_above() -> Mapping[str, Quantity]:
    low, high = (_held(Method.TAG, _HIGH, rig) for rig in (_RIG, _ACROSS))
    return {
        "height": (_ACROSS.hub.z, Kind.LENGTH),
        "low": (low.line_tension, Kind.FORCE),
        "high": (high.line_tension, Kind.FORCE),
        "low_haul": (low.haul_tension, Kind.FORCE),
        "high_haul": (high.haul_tension, Kind.FORCE),
    }


def _tilt() -> Mapping[str, Quantity]:
    held = _held(Method.TAG, _HIGH)
    tilt = guiding.bridle_tilt(
        load=vectors.weight(mass=_MASS),
        side_pull=_at_the_rail(),
        ground_depression=held.ground_depression,
    )
    return {"tag": (held.line_tension, Kind.FORCE), "tilt": (tilt, Kind.ANGLE)}


_FACTS = (
    Fact(
        "the-example",
        "The example on this page: {mass} hang on the ropes, which weighs {weight}. The litter has "
        "to stand {out} out from the wall when it is {high} up. The directional is {top} up and "
        "the hub {hub} out.",
        _example,
    ),
    Fact(
        "push-low-and-high",
        "Holding the litter {off} off plumb takes a push of {easy} with {far} of haul line above "
        "it, and {hard} with {near}.",
        _pushes,
    ),
    Fact(
        "one-triangle",
        "In the example the tag line carries {tag} and the track lines together carry {track}. "
        "The haul team feels {against} against the tag line, {beside} beside the track lines. The "
        "difference, {gap}, is the tension of the line itself. The weight is {weight}: the tag "
        "plan hauls more than that, the track plan less.",
        _one_triangle,
        after_prediction=True,
    ),
    Fact(
        "straight-line",
        "At a height of {high} the straight line from directional to hub passes {limit} out from "
        "the wall. No tension, and no number of lines, holds the litter there or beyond.",
        _limit,
    ),
    Fact(
        "slack-haul",
        "If the haul line goes slack during a raise, stop: the litter has caught on the rock, "
        "stands on a ledge, or hangs on the belay. Tension in the track lines alone does not do "
        "it. For that the hub would have to be so far above the litter that the ground leg rises "
        "as steeply as the haul leg ({angle} here); the track lines would then carry {tension}.",
        _slack,
    ),
    Fact(
        "track-directional-above",
        "With the track directional {step} above the haul directional, the track lines need "
        "{after} instead of {before} for the same place. The haul line takes {haul_after} instead "
        "of {haul_before}.",
        _track_above,
    ),
    Fact(
        "hub-above",
        "A hub across the gorge, as far out but {height} up, changes the tag line from {low} to "
        "{high} and the haul line from {low_haul} to {high_haul}: the tag line lifts instead of "
        "pulling down.",
        _hub_above,
    ),
    Fact(
        "tilt-at-the-rail",
        "Tied to the litter's rail, the same tag line of {tag} would tilt the bridle by {tilt}; "
        "tied at the master attachment point it tilts nothing.",
        _tilt,
    ),
)


def _cell_on_the_tag_line() -> Mapping[str, Quantity]:
    mass, off, up, drop, hub = 80.0, 1.5, 2.0, 8.0, 12.0
    load = vectors.weight(mass=mass)
    top = Point(0.0, up + drop)
    rig = Rig(top, top, Point(hub, 0.0))
    tag, track = (hold(method, rig, load, off, up) for method in (Method.TAG, Method.TRACK))
    return {
        "mass": (mass, Kind.MASS),
        "off": (off, Kind.LENGTH),
        "drop": (drop, Kind.LENGTH),
        "up": (up, Kind.LENGTH),
        "hub": (hub, Kind.LENGTH),
        "cell": (tag.line_tension, Kind.FORCE, 2),
        "tag_haul": (tag.haul_tension, Kind.FORCE, 2),
        "track_haul": (track.haul_tension, Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "The outcrop on the board; everybody marks where it will be hardest, and keeps it."),
        (10, "The figure on the screen: guess, then tag line, then track line, same place."),
        (15, "The three balances, by the class, with the pieces you drew beforehand."),
        (10, "The quick checks, alone; then the outcrop on the board again."),
    ),
    board=(
        "The wall from the side with directional, litter and hub; no numbers.",
        "The litter's point cut free: weight down, haul leg up and in, ground leg down and out.",
        "The same three forces head to tail. Then cut the long side in two: haul line and track "
        "line. Nothing else changes.",
        "The straight line from directional to hub, with what lies beyond it hatched.",
    ),
    field=(
        Fact(
            "cell-on-the-tag-line",
            "Hang {mass} of test weight from a directional {drop} above it, {up} off the ground, "
            "nobody under it. Pull it {off} off plumb with a tag line to a hub {hub} out, with one "
            "load cell in the tag line and one in the haul line. The tag cell should read about "
            "{cell} and the haul cell {tag_haul}.",
            _cell_on_the_tag_line,
        ),
        Fact(
            "cell-on-the-track-line",
            "Now run the same line through a pulley at the weight and up to the directional, and "
            "pull the weight to the same place: {cell} again in the line, but about {track_haul} "
            "in the haul line. Pulleys with friction move the haul cell, hardly the other.",
            _cell_on_the_tag_line,
        ),
    ),
)

HOLDING_OFF = LessonContent(
    number=8,
    key="holding-off",
    file="08_holding_a_litter_off",
    example=_known,
    title="Holding a litter off the rock",
    figures=(THREE_WAYS,),
    derivations=(
        guiding.attendant_push,
        guiding.tag_tension,
        guiding.haul_tension_with_tag,
        guiding.track_tension,
        guiding.haul_tension_with_track,
        guiding.straight_line_limit,
        guiding.slack_haul_depression,
        guiding.track_tension_apart,
        guiding.tension_to_high_hub,
        guiding.bridle_tilt,
    ),
    facts=_FACTS,
    questions=(
        holding_off.ATTENDANT_PUSH,
        holding_off.TAG_FROM_PLACES,
        holding_off.HAUL_BESIDE_TRACK,
        holding_off.TAG_ON_THE_RAIL,
    ),
    myths=(
        holding_off.HAUL_AGAINST_TAG,
        holding_off.HAUL_BESIDE_TRACK,
        holding_off.TRACK_TENSION,
    ),
    words=(
        "attachment-point",
        "plumb",
        "high-directional",
        "hub",
        "tag-line",
        "track-line",
        "haul-elevation",
        "ground-depression",
    ),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        cautions.STATIC,
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
        cautions.ATTENDANT_LIMITS,
    ),
)
