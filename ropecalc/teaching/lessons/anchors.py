"""Anchors of two and three legs: which leg carries what, who gains, and what nobody can tell."""

import math
from collections.abc import Mapping

from ropecalc import cautions
from ropecalc.mechanics import anchors, vectors
from ropecalc.mechanics.legs import redundant_legs
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import ANCHOR_LEGS
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import anchors as bank
from ropecalc.units import Kind

_MASS = 200.0
_APART, _SWING = math.radians(60), math.radians(10)
_STIFFNESS, _DEPTH = 50_000.0, 2.0
"""The example: the litter's anchor on the rim of the Lower Heron Wall."""


def _load() -> float:
    return float(vectors.weight(mass=_MASS))


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    return {
        "load": _load(),
        "leg_angle": _APART,
        "pull_swing": _SWING,
        "first_leg_angle": math.radians(20),
        "second_leg_angle": math.radians(45),
        "leg_plumb_angle": math.radians(30),
        "outer_leg_angle": math.radians(30),
        "load_ratio": 0.75,
    }


def _example() -> Mapping[str, Quantity]:
    return {
        "mass": (_MASS, Kind.MASS),
        "load": (_load(), Kind.FORCE),
        "apart": (_APART, Kind.ANGLE, 2),
    }


def _flatter() -> Mapping[str, Quantity]:
    def leg(degrees: float) -> float:
        angle = math.radians(degrees)
        return float(anchors.two_leg_anchor(load=_load(), leg_angle=angle))

    wide, wider, widest = (math.radians(a) for a in (90, 120, 150))
    return {
        "wide": (wide, Kind.ANGLE, 2),
        "wider": (wider, Kind.ANGLE, 3),
        "widest": (widest, Kind.ANGLE, 3),
        "at_wide": (leg(90), Kind.FORCE),
        "at_wider": (leg(120), Kind.FORCE),
        "at_widest": (leg(150), Kind.FORCE),
    }


def _unequal() -> Mapping[str, Quantity]:
    steep, flat = math.radians(20), math.radians(45)
    given = {"load": _load(), "first_leg_angle": steep, "second_leg_angle": flat}
    return {
        "steep": (steep, Kind.ANGLE, 2),
        "flat": (flat, Kind.ANGLE, 2),
        "steep_leg": (float(anchors.first_leg_tension(**given)), Kind.FORCE),
        "flat_leg": (float(anchors.second_leg_tension(**given)), Kind.FORCE),
    }


def _swings() -> Mapping[str, Quantity]:
    given = {"load": _load(), "leg_angle": _APART}
    straight = float(anchors.two_leg_anchor(**given))
    gains = float(anchors.gaining_leg_tension(**given, pull_swing=_SWING))
    return {
        "apart": (_APART, Kind.ANGLE, 2),
        "swing": (_SWING, Kind.ANGLE, 2),
        "straight": (straight, Kind.FORCE),
        "gains": (gains, Kind.FORCE),
        "loses": (float(anchors.losing_leg_tension(**given, pull_swing=_SWING)), Kind.FORCE),
        "more": (100 * (gains / straight - 1), Kind.RATIO, 2),
    }


def _in_line() -> Mapping[str, Quantity]:
    return {"half": (_APART / 2, Kind.ANGLE, 2), "load": (_load(), Kind.FORCE)}


def _shared(error: float) -> tuple[float, ...]:
    side = _DEPTH * math.tan(_APART / 2)
    places = [(-side, 0.0, _DEPTH), (0.0, 0.0, _DEPTH), (side, 0.0, _DEPTH)]
    errors = [0.0, error, 0.0]
    return redundant_legs(
        (0.0, 0.0, 0.0),
        places,
        (0.0, 0.0, -_load()),
        stiffness=_STIFFNESS,
        length_errors=errors,
    ).stretched


def _three_in_a_row() -> Mapping[str, Quantity]:
    taut, short, long = _shared(0.0)[1], _shared(-0.03)[1], _shared(0.03)[1]
    return {
        "stiffness": (_STIFFNESS, Kind.FORCE, 2),
        "depth": (_DEPTH, Kind.LENGTH),
        "error": (0.03, Kind.LENGTH, 1),
        "taut": (taut, Kind.FORCE),
        "short": (short, Kind.FORCE),
        "long": (long, Kind.FORCE),
    }


def _in_space() -> Mapping[str, Quantity]:
    lean = math.radians(30)
    three = float(anchors.three_leg_anchor(load=_load(), leg_plumb_angle=lean))
    two = float(anchors.two_leg_anchor(load=_load(), leg_angle=2 * lean))
    return {
        "lean": (lean, Kind.ANGLE, 2),
        "three": (three, Kind.FORCE),
        "two": (two, Kind.FORCE),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example on this page: {mass}, which weighs {load}, hangs from two legs {apart} apart.",
        _example,
    ),
    Fact(
        "flatter-and-flatter",
        "In the example each leg would carry {at_wide} at {wide}, {at_wider} at {wider} and "
        "{at_widest} at {widest}: the last step costs far more than the one before.",
        _flatter,
    ),
    Fact(
        "steeper-carries-more",
        "One leg {steep} from plumb and the other {flat}: the steep leg carries {steep_leg}, the "
        "flat one {flat_leg}.",
        _unequal,
    ),
    Fact(
        "ten-degrees",
        "Two legs {apart} apart carry {straight} each. A swing of {swing} makes that {gains} and "
        "{loses}: {more} % more in the leg that gains.",
        _swings,
        after_prediction=True,
    ),
    Fact(
        "one-leg-has-it-all",
        "A swing of {half}, half the angle between the legs, puts the pull in line with one leg. "
        "It carries all {load}, and the other nothing.",
        _in_line,
    ),
    Fact(
        "three-in-a-row",
        "Three legs in one plane, bolts {depth} above the knot, rope of stiffness {stiffness}: the "
        "middle leg carries {taut} if all were just taut (the knot sinks as they stretch, hence "
        "the small difference), {short} if it is {error} shorter and {long} if it is {error} "
        "longer. Your knots are not that exact.",
        _three_in_a_row,
    ),
    Fact(
        "legs-in-space",
        "Three legs evenly spread around the load, each {lean} from plumb, carry {three} each; two "
        "legs at the same slope carry {two}.",
        _in_space,
    ),
)


def _cell_in_a_leg() -> Mapping[str, Quantity]:
    mass, apart, swing = 80.0, math.radians(90), math.radians(15)
    load = float(vectors.weight(mass=mass))
    given = {"load": load, "leg_angle": apart}
    return {
        "mass": (mass, Kind.MASS),
        "apart": (apart, Kind.ANGLE, 2),
        "swing": (swing, Kind.ANGLE, 2),
        "straight": (float(anchors.two_leg_anchor(**given)), Kind.FORCE, 2),
        "gains": (float(anchors.gaining_leg_tension(**given, pull_swing=swing)), Kind.FORCE, 2),
        "loses": (float(anchors.losing_leg_tension(**given, pull_swing=swing)), Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "Two students hold a bucket between them and walk apart until one lets go. Ask why."),
        (10, "The knot cut free on the board; the two balances, by the class."),
        (10, "The figure: guess, then swing the pull, then add the third leg."),
        (10, "The quick checks, alone; then the rule of thumb that each of them will keep."),
    ),
    board=(
        "The knot and three arrows, pull down and two legs up; no numbers.",
        "Each leg taken apart into what holds up and what pulls sideways.",
        "The same with the pull swung to one side; the class says which arrow grows.",
        "Three legs in a row, and beside them two equations for three unknowns.",
    ),
    field=(
        Fact(
            "cell-in-a-leg",
            "Hang {mass} of test weight low over the ground from two legs {apart} apart, with a "
            "load cell in each. Both should read {straight}. Then pull the rope below the knot "
            "aside by {swing}, over a redirect, with the legs left as they are: {gains} in the "
            "leg that gains, {loses} in the other.",
            _cell_in_a_leg,
        ),
        Fact(
            "third-leg-by-hand",
            "Add a leg in the middle, tie it as exactly as you can, and read its cell three times "
            "with the knot tied afresh. The readings may lie anywhere between nothing and the "
            "whole weight, with {mass} as before. Let the class say what that means for their "
            "anchors.",
            _cell_in_a_leg,
        ),
    ),
)

ANCHORS = LessonContent(
    number=2,
    key="anchors",
    file="02_anchors",
    example=_known,
    title="Anchors: legs that share a load",
    figures=(ANCHOR_LEGS,),
    derivations=(
        anchors.two_leg_anchor,
        anchors.critical_leg_angle,
        anchors.first_leg_tension,
        anchors.gaining_leg_tension,
        anchors.three_leg_anchor,
        anchors.middle_leg_tension,
    ),
    facts=_FACTS,
    questions=(
        bank.EQUAL_LEGS,
        bank.LARGEST_ANGLE,
        bank.UNEQUAL_LEGS,
        bank.SWINGING_PULL,
        bank.THREE_EVEN,
    ),
    myths=(
        bank.EQUAL_LEGS,
        bank.UNEQUAL_LEGS,
        bank.MIDDLE_LEG,
    ),
    words=("anchor", "leg", "bisector", "plumb", "balance", "resultant", "redundant"),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        "Statics says nothing about how good an anchor is, nor about the shock when one leg lets "
        "go and the rest is moved.",
        "A knot or sling that adjusts itself has friction: it does not share evenly.",
        cautions.STATIC,
        cautions.FRICTIONLESS,
    ),
)
