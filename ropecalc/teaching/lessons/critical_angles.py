"""Critical angles: every rig and every multiple has its own; loaded spans and their sag."""

import math
from collections.abc import Mapping

import numpy as np

from ropecalc import cautions
from ropecalc.mechanics import anchors, critical, vectors
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import CRITICAL_DIAL
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import critical_angles as bank
from ropecalc.units import Kind

_MASS, _SPAN, _SAG = 200.0, 40.0, 6.0
_DEPRESSION, _AT_LITTER = math.radians(10), math.radians(120)


def _load() -> float:
    return float(vectors.weight(mass=_MASS))


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    return {
        "load": _load(),
        "leg_angle": math.radians(120),
        "load_ratio": 1.0,
        "pull_ratio": 1.0,
        "span": _SPAN,
        "sag": _SAG,
        "sag_ratio": _SAG / _SPAN,
        "ground_depression": _DEPRESSION,
        "litter_angle": _AT_LITTER,
        "haul_elevation": math.pi - _AT_LITTER + _DEPRESSION,
        "first_sag_angle": math.radians(8),
        "second_sag_angle": math.radians(30),
    }


def _geometry(name: str, multiple: float) -> float:
    others = {"ground_depression": _DEPRESSION} if critical.rig(name).others else {}
    return float(critical.critical_geometry(name, multiple, **others))


def _one_multiple() -> Mapping[str, Quantity]:
    return {
        "legs": (_geometry("two equal legs", 1.0), Kind.ANGLE, 3),
        "three": (_geometry("three equal legs", 1.0), Kind.ANGLE, 2),
        "sag": (100 * _geometry("level span", 1.0), Kind.RATIO, 3),
        "line": (float(critical.critical_litter_angle(1.0, _DEPRESSION)), Kind.ANGLE, 3),
        "down": (_DEPRESSION, Kind.ANGLE, 2),
    }


def _steps() -> Mapping[str, Quantity]:
    angles = [math.radians(a) for a in (150, 160, 170)]
    ratios = [float(anchors.two_leg_ratio(leg_angle=a)) for a in angles]
    names = ("first", "second", "third")
    found: dict[str, Quantity] = {
        f"at_{n}": (a, Kind.ANGLE, 3) for n, a in zip(names, angles, strict=True)
    }
    return found | {n: (r, Kind.RATIO, 3) for n, r in zip(names, ratios, strict=True)}


def _sags() -> Mapping[str, Quantity]:
    shares = (0.15, 0.10, 0.05)
    ratios = [float(critical.span_ratio(sag_ratio=share)) for share in shares]
    names = ("deep", "tenth", "flat")
    found: dict[str, Quantity] = {
        f"{n}_sag": (100 * s, Kind.RATIO, 2) for n, s in zip(names, shares, strict=True)
    }
    return found | {n: (r, Kind.RATIO, 3) for n, r in zip(names, ratios, strict=True)}


def _span() -> Mapping[str, Quantity]:
    tension = float(critical.mid_span_tension(load=_load(), span=_SPAN, sag=_SAG))
    return {
        "mass": (_MASS, Kind.MASS),
        "span": (_SPAN, Kind.LENGTH),
        "sag": (_SAG, Kind.LENGTH),
        "tension": (tension, Kind.FORCE),
        "load": (_load(), Kind.FORCE),
    }


def _at_the_litter() -> Mapping[str, Quantity]:
    tension = float(
        critical.track_tension_at_litter_angle(
            load=_load(), litter_angle=_AT_LITTER, ground_depression=_DEPRESSION
        )
    )
    return {
        "angle": (_AT_LITTER, Kind.ANGLE, 3),
        "down": (_DEPRESSION, Kind.ANGLE, 2),
        "tension": (tension, Kind.FORCE),
        "load": (_load(), Kind.FORCE),
        "share": (100 * tension / _load(), Kind.RATIO, 3),
    }


_FACTS = (
    Fact(
        "one-multiple",
        "Where the tension equals the load: two legs {legs} apart; three legs {three} from plumb; "
        "a span whose sag is {sag} % of its length; a tag or track line with {line} at the litter, "
        "if the ground leg falls {down}. Four rigs, four geometries.",
        _one_multiple,
        after_prediction=True,
    ),
    Fact(
        "each-step-costs-more",
        "Two legs carry {first} times the load each at {at_first}, {second} times at {at_second} "
        "and {third} times at {at_third}.",
        _steps,
    ),
    Fact(
        "the-span",
        "Across a gully {span} wide {mass} hang at the middle and the rope sags {sag}: it carries "
        "{tension}, while the load weighs {load}.",
        _span,
    ),
    Fact(
        "sag-and-tension",
        "With a sag of {deep_sag} % of the span the rope carries {deep} times the load, with "
        "{tenth_sag} % {tenth} times, with {flat_sag} % {flat} times.",
        _sags,
    ),
    Fact(
        "at-the-litter",
        "With {angle} at the litter and the ground leg {down} below the horizontal the track lines "
        "carry {tension}: {share} % of the load of {load}. The haul line holds most of the rest.",
        _at_the_litter,
        after_prediction=True,
    ),
)


def _cell_in_a_span() -> Mapping[str, Quantity]:
    mass, span = 80.0, 10.0
    load = float(vectors.weight(mass=mass))
    sags = np.array([2.0, 1.0])
    deep, flat = critical.mid_span_tension(load=load, span=span, sag=sags)
    return {
        "mass": (mass, Kind.MASS),
        "span": (span, Kind.LENGTH),
        "deep_sag": (float(sags[0]), Kind.LENGTH),
        "flat_sag": (float(sags[1]), Kind.LENGTH),
        "deep": (float(deep), Kind.FORCE, 2),
        "flat": (float(flat), Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "Ask everybody to write down what 120° means. Collect the papers; give them back."),
        (10, "Two legs, redirect and span on the board: where does the tension equal the load."),
        (10, "The figure: the prediction first, then one multiple after the other."),
        (10, "The quick checks, alone; then everybody corrects the paper of the beginning."),
    ),
    board=(
        "Two legs, a redirect and a span, each with its angle marked; no numbers.",
        "The multiple as a ladder: one half, one, two, five; the angle beside each step.",
        "The litter with three ropes: the haul line belongs into the balance.",
    ),
    field=(
        Fact(
            "cell-in-a-span",
            "Low over the ground, nobody under it: a rope over {span} with level ends, {mass} of "
            "test weight at the middle and a load cell at one end. With a loaded sag of {deep_sag} "
            "it should read {deep}; take in until the sag is {flat_sag}: {flat}. Measure the sag "
            "under load each time, because the rope stretches.",
            _cell_in_a_span,
        ),
    ),
)

CRITICAL_ANGLES = LessonContent(
    number=7,
    key="critical-angles",
    file="07_critical_angles",
    example=_known,
    title="Critical angles and loaded spans",
    figures=(CRITICAL_DIAL,),
    derivations=(
        anchors.two_leg_ratio,
        critical.critical_redirect_angle,
        critical.mid_span_tension,
        critical.span_ratio,
        critical.critical_line_elevation,
        critical.track_tension_at_litter_angle,
        critical.trolley_tension,
    ),
    facts=_FACTS,
    questions=(
        bank.REDIRECT_LIMIT,
        bank.THREE_LEG_LIMIT,
        bank.LOADED_SPAN,
        bank.SAG_NEEDED,
        bank.ONE_TWENTY,
    ),
    myths=(
        bank.ONE_TWENTY,
        bank.LOADED_SPAN,
        bank.SAG_NEEDED,
    ),
    words=("critical-angle", "multiple", "span", "sag", "haul-elevation", "ground-depression"),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        "Measure sag under load: stretch increases it. A rope taken as rigid gives too much "
        "tension and too little sag, so check clearance with stretch.",
        cautions.STATIC,
        cautions.FRICTIONLESS,
    ),
)
