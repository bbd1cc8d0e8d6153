"""Questions on critical angles and loaded spans: each rig has its own."""

from math import radians

from sympy import Rational, acos, asin, cos, pi, sin, sqrt

from ropecalc.mechanics import anchors, critical
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_LOAD = Given(q.LOAD, 1.2, 2.8, 0.1, "kN")
_ONE_DEGREE = Tolerance(absolute=radians(1.0))
_ONE_AND_A_HALF = Tolerance(relative=0.015)

REDIRECT_LIMIT = Template(
    key="redirect-limit",
    title="How far must the strands open?",
    stem=(
        "The anchor of a redirect may be pulled with at most {pull_ratio} times the tension of the "
        "rope. What is the smallest angle between the two strands?"
    ),
    asked="Smallest angle between the strands",
    givens=(Given(q.REDIRECT_RATIO, 0.3, 1.9, 0.1, ""),),
    derivation=critical.critical_redirect_angle,
    tolerance=_ONE_DEGREE,
    mistakes=(
        Mistake(
            "half-angle-not-doubled",
            "Half the angle given for the whole",
            "The cosine belongs to the angle between one strand and the middle line.",
            lambda v: acos(v.pull_ratio / 2),
        ),
        Mistake(
            "one-angle-for-all",
            "120° for any limit",
            "At 120° the anchor is pulled with just the rope's tension. Another limit has another "
            "angle.",
            lambda v: 2 * pi / 3,
        ),
        Mistake(
            "sine-for-cosine",
            "Sine and cosine exchanged",
            "What lies along the middle line goes with the cosine of half the angle.",
            lambda v: 2 * asin(v.pull_ratio / 2),
        ),
    ),
    difficulty=2,
    objective="find the angle that keeps the anchor of a redirect below a limit",
)

FLATTER = Template(
    key="legs-pulled-flatter",
    title="Legs pulled flatter",
    stem=(
        "Two equal legs stand {angle_before} apart. To bring the load higher, they are tightened "
        "until they stand {angle_after} apart. How many times the tension of before does each leg "
        "carry then?"
    ),
    asked="Tension of a leg afterwards over its tension before (a plain number)",
    givens=(
        Given(anchors.ANGLE_BEFORE, 40, 100, 5, "°"),
        Given(anchors.ANGLE_AFTER, 120, 165, 5, "°"),
    ),
    derivation=anchors.leg_growth,
    tolerance=Tolerance(relative=0.02),
    mistakes=(
        Mistake(
            "in-proportion",
            "The tension taken to grow in proportion to the angle",
            "It grows slowly at first and then faster and faster: the cosine of half the angle "
            "counts.",
            lambda v: v.angle_after / v.angle_before,
        ),
        Mistake(
            "sine-for-cosine",
            "Sine and cosine exchanged",
            "What holds up goes with the cosine of half the angle between the legs.",
            lambda v: sin(v.angle_before / 2) / sin(v.angle_after / 2),
        ),
        Mistake(
            "upside-down",
            "The ratio turned upside down",
            "Flatter legs have to pull harder, so the number is larger than 1.",
            lambda v: cos(v.angle_after / 2) / cos(v.angle_before / 2),
        ),
    ),
    difficulty=2,
    objective="say what it costs to pull two legs flatter",
)

THREE_LEG_LIMIT = Template(
    key="three-leg-limit",
    title="How flat may three legs be?",
    stem=(
        "Three even legs hold a load, and none of them may carry more than {load_ratio} times the "
        "load. How far from plumb may they stand?"
    ),
    asked="Largest angle of a leg from plumb",
    givens=(Given(q.THREE_LEG_RATIO, 0.55, 2.0, 0.05, ""),),
    derivation=anchors.critical_three_leg_angle,
    tolerance=_ONE_DEGREE,
    mistakes=(
        Mistake(
            "rule-for-two-legs",
            "The rule for two legs",
            "Three legs hold up together: a third of the load each, not half.",
            lambda v: acos(1 / (2 * v.load_ratio)),
        ),
        Mistake(
            "sixty-degrees-for-all",
            "60° for any limit",
            "That is half of 120°, the angle for two legs and one multiple only.",
            lambda v: pi / 3,
        ),
        Mistake(
            "doubled",
            "The angle doubled",
            "From plumb the angle is counted on one side only.",
            lambda v: 2 * acos(1 / (3 * v.load_ratio)),
        ),
    ),
    difficulty=2,
    objective="find the angle that keeps three legs below a limit",
)

LOADED_SPAN = Template(
    key="loaded-span",
    title="A load in the middle of a span",
    stem=(
        "Across a side gully of Tamarack Gorge a rope spans {span}, its ends level. A load of "
        "{load} hangs from a pulley at the middle, {sag} below the line between the ends. What "
        "tension is in the rope?"
    ),
    asked="Tension of the rope",
    givens=(_LOAD, Given(q.SPAN, 20, 60, 2, "m"), Given(q.SAG, 3.0, 9.0, 0.5, "m")),
    derivation=critical.mid_span_tension,
    tolerance=_ONE_AND_A_HALF,
    mistakes=(
        Mistake(
            "sideways-part-only",
            "Only the sideways part of the tension",
            "The rope also rises: its tension is the slanted side of the triangle, not the level "
            "one.",
            lambda v: v.load * v.span / (4 * v.sag),
        ),
        Mistake(
            "half-each-whatever-the-angle",
            "Half the load for each side",
            "Each side holds up half, and to do so it pulls far harder along the rope.",
            lambda v: v.load / 2,
        ),
        Mistake(
            "a-half-lost",
            "The whole span used for the half",
            "Each side runs from the middle to one end: half the span.",
            lambda v: v.load * sqrt(v.span**2 + v.sag**2) / (2 * v.sag),
        ),
    ),
    difficulty=1,
    objective="find the tension of a loaded span from its sag",
    usable=lambda v: 0.12 <= v["sag"] / v["span"] <= 0.3,
)

SAG_NEEDED = Template(
    key="sag-needed",
    title="How much must it sag?",
    stem=(
        "A rope with level ends carries a load at its middle. Its tension may be at most "
        "{load_ratio} times the load. How large must the sag be, as a share of the span?"
    ),
    asked="Sag over span",
    givens=(Given(q.SPAN_RATIO, 0.8, 2.0, 0.1, ""),),
    derivation=critical.critical_sag_ratio,
    tolerance=_ONE_AND_A_HALF,
    mistakes=(
        Mistake(
            "sideways-part-only",
            "Only the sideways part of the tension",
            "That serves for flat spans only. The tension is the slanted side of the triangle.",
            lambda v: 1 / (4 * v.load_ratio),
        ),
        Mistake(
            "a-half-lost",
            "A half lost on the way",
            "Two sides hold the load, each over half the span.",
            lambda v: 1 / (2 * v.load_ratio),
        ),
        Mistake(
            "one-sag-for-all",
            "A tenth of the span for any limit",
            "A rule of thumb belongs to one multiple: at a tenth the rope carries two and a half "
            "times the load.",
            lambda v: Rational(1, 10),
        ),
    ),
    difficulty=2,
    objective="turn a limit of tension into a sag",
)

OFF_THE_MIDDLE = Template(
    key="off-the-middle",
    title="A load off the middle",
    stem=(
        "A load of {load} hangs from a pulley on a span and is held off the middle by a level "
        "control line. From the load one side of the rope rises {first_sag_angle}, the other "
        "{second_sag_angle}. What tension is in the rope?"
    ),
    asked="Tension of the rope",
    givens=(
        _LOAD,
        Given(q.FIRST_SAG_ANGLE, 5, 14, 1, "°"),
        Given(q.SECOND_SAG_ANGLE, 18, 40, 1, "°"),
    ),
    derivation=critical.trolley_tension,
    tolerance=_ONE_AND_A_HALF,
    mistakes=(
        Mistake(
            "half-each-whatever-the-angle",
            "Half the load for each side",
            "Both sides have the same tension, and together they lift the load by their slopes.",
            lambda v: v.load / 2,
        ),
        Mistake(
            "steep-side-only",
            "Both sides taken as steep as the steeper one",
            "The flatter side lifts less, so the tension has to be larger.",
            lambda v: v.load / (2 * sin(v.second_sag_angle)),
        ),
        Mistake(
            "flat-side-only",
            "Both sides taken as flat as the flatter one",
            "The steeper side lifts more, so the tension is smaller.",
            lambda v: v.load / (2 * sin(v.first_sag_angle)),
        ),
    ),
    difficulty=3,
    objective="find the tension of a span with the load off its middle",
)

ONE_TWENTY = Template(
    key="angle-at-the-litter",
    title="What an angle at the litter means",
    stem=(
        "Track lines from the haul directional guide a load of {load}. At the litter their upper "
        "legs and ground legs make {litter_angle}, and the ground legs fall {ground_depression} "
        "below the horizontal. The haul line carries its share. What tension do the track lines "
        "carry together?"
    ),
    asked="Tension of the track lines together",
    givens=(
        _LOAD,
        Given(q.LITTER_ANGLE, 118, 126, 2, "°"),
        Given(q.GROUND_DEPRESSION, 0, 22, 1, "°"),
    ),
    derivation=critical.track_tension_at_litter_angle,
    tolerance=Tolerance(relative=0.02),
    mistakes=(
        Mistake(
            "leg-rule-at-the-litter",
            "The rule for two equal anchor legs",
            "It knows no haul line. Here the haul line carries most of the load.",
            lambda v: v.load / (2 * cos(v.litter_angle / 2)),
        ),
        Mistake(
            "half-each-whatever-the-angle",
            "The load halved",
            "How much the lines carry depends on how steep they are.",
            lambda v: v.load / 2,
        ),
        Mistake(
            "haul-and-track-together",
            "Haul line and track lines together",
            "That is what pulls on the head. The track lines alone carry less.",
            lambda v: v.load * cos(v.ground_depression) / sin(v.litter_angle),
        ),
    ),
    difficulty=3,
    objective="say what an angle at the litter does and does not mean",
    must_pass=True,
)

QUESTIONS = (
    REDIRECT_LIMIT,
    FLATTER,
    THREE_LEG_LIMIT,
    LOADED_SPAN,
    SAG_NEEDED,
    OFF_THE_MIDDLE,
    ONE_TWENTY,
)
"""This module's questions, in the order of the lesson."""
