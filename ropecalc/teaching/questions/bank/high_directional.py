"""Questions on redirects and on the frame under a high directional."""

from collections.abc import Mapping
from math import radians
from typing import Any

from sympy import Integer, cos, sin, sqrt, tan

from ropecalc.mechanics import frames, redirects
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_TWO_PER_CENT = Tolerance(relative=0.02)
_ONE_DEGREE = Tolerance(absolute=radians(1.0))
_GUY = Given(q.GUY_DEPRESSION, 20, 65, 1, "°")

REDIRECT = Template(
    key="redirect-pull",
    title="The anchor of a redirect",
    stem=(
        "A rope with a tension of {strand_tension} turns through a pulley on an anchor. The angle "
        "between its two strands is {strand_angle}. The pulley turns without friction. How hard is "
        "the anchor pulled?"
    ),
    asked="Pull on the anchor",
    givens=(
        Given(q.STRAND_TENSION, 0.8, 5.0, 0.1, "kN"),
        Given(q.STRAND_ANGLE, 25, 160, 5, "°"),
    ),
    derivation=redirects.redirect_resultant,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "redirect-doubles",
            "The tension doubled, whatever the angle",
            "That is so only where both strands run side by side. The wider they open, the less "
            "of them adds up.",
            lambda v: 2 * v.strand_tension,
        ),
        Mistake(
            "redirect-adds-nothing",
            "The anchor taken to hold just the tension of the rope",
            "Two strands pull on the pulley, not one.",
            lambda v: v.strand_tension,
        ),
        Mistake(
            "sine-for-cosine",
            "Sine and cosine exchanged",
            "Each strand lies half the angle from the middle line, and what lies along that line "
            "goes with the cosine.",
            lambda v: 2 * v.strand_tension * sin(v.strand_angle / 2),
        ),
    ),
    difficulty=1,
    objective="find the pull on the anchor of a redirect",
)

LEAN = Template(
    key="head-lean",
    title="Which way is the head pulled?",
    stem=(
        "At the high directional on the Lower Heron Wall the haul line leaves the pulley in two "
        "strands: down to the litter, {front_depression} below the horizontal, and back to the "
        "team, {back_depression} below the horizontal. The pulley turns without friction. How "
        "far from plumb does the pull on the head lean? Count inward, towards the team, as "
        "positive."
    ),
    asked="Lean of the pull, inward positive",
    givens=(
        Given(q.FRONT_DEPRESSION, 40, 88, 1, "°"),
        Given(q.BACK_DEPRESSION, 5, 60, 1, "°"),
    ),
    derivation=redirects.head_lean,
    tolerance=_ONE_DEGREE,
    mistakes=(
        Mistake(
            "pulled-straight-down",
            "The head taken to be pulled straight down",
            "It is, only when both strands fall equally steeply. The flatter strand pulls it over "
            "to its own side.",
            lambda v: Integer(0),
        ),
        Mistake(
            "difference-not-halved",
            "The difference of the angles not halved",
            "The pull lies in the middle between the strands, so half the difference counts.",
            lambda v: v.front_depression - v.back_depression,
        ),
        Mistake(
            "lean-to-the-wrong-side",
            "The lean taken to the other side",
            "The strand that runs flatter has the larger sideways part. It pulls the head to its "
            "side.",
            lambda v: (v.back_depression - v.front_depression) / 2,
        ),
    ),
    difficulty=1,
    objective="tell which way a high directional is pulled, and by how much",
    must_pass=True,
)

LANDING = Template(
    key="line-of-action-lands",
    title="Where the pull meets the ground",
    stem=(
        "The pulley of the frame is {head_height} above the ground and {head_reach} out past its "
        "front feet. The pull on it leans {lean} inward from plumb. How far behind the front feet "
        "does its line of action meet the ground? Count in front of them as negative."
    ),
    asked="Distance behind the front feet",
    givens=(
        Given(q.HEAD_HEIGHT, 1.5, 3.2, 0.1, "m"),
        Given(q.HEAD_REACH, 0.1, 0.6, 0.05, "m"),
        Given(q.LEAN, 4, 35, 1, "°"),
    ),
    derivation=frames.landing,
    tolerance=Tolerance(absolute=0.04),
    mistakes=(
        Mistake(
            "pulled-straight-down",
            "The pull taken as plumb",
            "It leans, and from that height the lean carries it far along the ground.",
            lambda v: -v.head_reach,
        ),
        Mistake(
            "lean-to-the-wrong-side",
            "The lean taken outward",
            "Inward is towards the team: the line of action runs back over the ground.",
            lambda v: -v.head_height * tan(v.lean) - v.head_reach,
        ),
        Mistake(
            "reach-forgotten",
            "The reach of the head forgotten",
            "The line of action starts out past the front feet and has to make up for that first.",
            lambda v: v.head_height * tan(v.lean),
        ),
        Mistake(
            "lean-doubled",
            "Twice the lean used",
            "The lean is measured from plumb, once.",
            lambda v: v.head_height * tan(2 * v.lean) - v.head_reach,
        ),
    ),
    difficulty=2,
    objective="find where the pull on a frame meets the ground",
)


REAL_REDIRECT = Template(
    key="redirect-while-hauling",
    title="A redirect with a real pulley",
    stem=(
        "A load is hauled over a redirect. The strand that comes up from the load carries "
        "{front_tension}; the pulley's efficiency is {efficiency}, measured at this turn; the two "
        "strands stand {strand_angle} apart. How hard is the redirect's anchor pulled while the "
        "rope moves towards the team?"
    ),
    asked="Pull on the anchor while hauling",
    givens=(
        Given(q.FRONT_TENSION, 0.8, 4.0, 0.1, "kN"),
        Given(q.SHEAVE_EFFICIENCY, 0.6, 0.9, 0.02, ""),
        Given(q.STRAND_ANGLE, 30, 120, 5, "°"),
    ),
    derivation=redirects.hauled_redirect_pull,
    tolerance=Tolerance(relative=0.015),
    mistakes=(
        Mistake(
            "friction-left-out",
            "The pulley taken to be free of friction",
            "The team's strand has to carry more than the load's, and so the anchor feels more.",
            lambda v: 2 * v.front_tension * cos(v.strand_angle / 2),
        ),
        Mistake(
            "direction-reversed",
            "Friction taken as if the load were lowered",
            "The side the rope moves towards carries more. While hauling that is the team's side.",
            lambda v: (
                v.front_tension * sqrt(1 + v.efficiency**2 + 2 * v.efficiency * cos(v.strand_angle))
            ),
        ),
        Mistake(
            "tensions-simply-added",
            "The two tensions simply added",
            "They pull in different directions, so they add up as arrows.",
            lambda v: v.front_tension * (1 + 1 / v.efficiency),
        ),
    ),
    difficulty=3,
    objective="find the pull on a redirect with friction, in the right direction",
)


def _tips_back(values: Mapping[str, float]) -> bool:
    """Plainly, not just so."""
    tipping = values["head_height"] * values["inward_pull"]
    return tipping > 1.3 * values["head_reach"] * values["downward_pull"]


GUY = Template(
    key="guy-tension",
    title="A guy that keeps a frame from falling back",
    stem=(
        "A frame with two legs is hinged at its feet. Its head is {head_height} up and "
        "{head_reach} out past the feet. The ropes pull the head with {inward_pull} inward, "
        "towards the team, and {downward_pull} down. A guy runs from the head out on the cliff "
        "side, {guy_depression} below the horizontal. How hard does the guy have to pull to "
        "hold the frame?"
    ),
    asked="Tension of the guy",
    givens=(
        Given(q.INWARD_PULL, 0.8, 2.5, 0.1, "kN"),
        Given(q.DOWNWARD_PULL, 1.5, 5.0, 0.1, "kN"),
        Given(q.HEAD_HEIGHT, 1.8, 3.2, 0.1, "m"),
        Given(q.HEAD_REACH, 0.1, 0.4, 0.05, "m"),
        _GUY,
    ),
    derivation=frames.guy_in_front,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "guy-is-the-inward-pull",
            "The guy taken to hold just the inward pull",
            "It runs down as well, so only a part of its tension is level; and its moment about "
            "the feet counts, not its level part alone.",
            lambda v: v.inward_pull,
        ),
        Mistake(
            "reach-forgotten",
            "The head taken to stand right over the feet",
            "Out past the feet, the downward pull tips the frame out and helps the guy.",
            lambda v: v.inward_pull / cos(v.guy_depression),
        ),
        Mistake(
            "sine-for-cosine",
            "Sine and cosine exchanged",
            "The angle is measured from the horizontal, so the level part goes with the cosine.",
            lambda v: v.inward_pull / sin(v.guy_depression),
        ),
    ),
    difficulty=3,
    objective="find the tension of a guy by moments about the feet",
    usable=_tips_back,
)

LEGS = Template(
    key="leg-compression",
    title="What a guy does to the legs",
    stem=(
        "A frame with two legs stands with its head {head_height} up and {head_reach} out past "
        "its feet; each leg stands {leg_half_spread} off the middle line between the two. The "
        "ropes pull the head down with {downward_pull}. A guy from the head, {guy_depression} "
        "below the horizontal, holds the frame with {guy_tension}. How hard is each leg "
        "pressed?"
    ),
    asked="Compression of each leg",
    givens=(
        Given(q.DOWNWARD_PULL, 1.5, 6.0, 0.1, "kN"),
        Given(q.GUY_TENSION, 0.8, 3.0, 0.1, "kN"),
        _GUY,
        Given(q.HEAD_HEIGHT, 1.8, 3.2, 0.1, "m"),
        Given(q.HEAD_REACH, 0.0, 0.5, 0.1, "m"),
        Given(q.LEG_HALF_SPREAD, 15, 35, 1, "°"),
    ),
    derivation=frames.leg_compression,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "guy-adds-nothing",
            "The guy taken to add nothing to the legs",
            "It pulls the head down as well as sideways, and the legs have to hold that too.",
            lambda v: _leg(v, v.downward_pull),
        ),
        Mistake(
            "whole-guy-added",
            "The whole tension of the guy added",
            "Only its downward part presses on the legs.",
            lambda v: _leg(v, v.downward_pull + v.guy_tension),
        ),
        Mistake(
            "not-shared",
            "Not shared between two legs",
            "There are two legs, and each takes half.",
            lambda v: 2 * _leg(v, v.downward_pull + v.guy_tension * sin(v.guy_depression)),
        ),
    ),
    difficulty=3,
    objective="find what a guy adds to the legs of a frame",
)


def _leg(v: Any, down: Any) -> Any:
    """One leg under a downward pull at the head, for the mistakes' expressions."""
    slant = sqrt(v.head_height**2 + v.head_reach**2) / v.head_height
    return down * slant / (2 * cos(v.leg_half_spread))


HEAD_WITH_TRACK = Template(
    key="head-with-track-lines",
    title="All lines in one head",
    stem=(
        "Haul line and track lines leave the litter together, rising {haul_elevation} above the "
        "horizontal to the head, and run back from it {back_depression} below the horizontal. "
        "The ground legs of the track lines fall {ground_depression} below the horizontal at "
        "the litter. Everything that hangs weighs {load}; pulleys turn without friction. How "
        "hard is the head pulled?"
    ),
    asked="Pull on the head",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        Given(q.HAUL_ELEVATION, 55, 80, 1, "°"),
        Given(q.GROUND_DEPRESSION, 10, 38, 1, "°"),
        Given(q.BACK_DEPRESSION, 10, 45, 1, "°"),
    ),
    derivation=redirects.combined_head_pull,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "haul-line-alone",
            "Only the haul line counted",
            "The track lines run over the same head, and they carry what they take off the haul "
            "line.",
            lambda v: _head(v, v.load * (cos(v.ground_depression) - cos(v.haul_elevation))),
        ),
        Mistake(
            "front-strands-only",
            "Only the strands on the cliff side counted",
            "Every line has a strand on either side of its pulley, and both pull on the head.",
            lambda v: (
                v.load * cos(v.ground_depression) / sin(v.haul_elevation - v.ground_depression)
            ),
        ),
        Mistake(
            "twice-the-weight",
            "Twice the weight taken",
            "The lines together carry more than the weight, because the ground legs pull down; and "
            "the strands do not run side by side.",
            lambda v: 2 * v.load,
        ),
    ),
    difficulty=3,
    objective="count every line that runs through the head",
    usable=lambda v: v["haul_elevation"] - v["ground_depression"] >= radians(20),
)


def _head(v: Any, fronts: Any) -> Any:
    """Pull of front strands of tension fronts over the sine of the angle between the legs."""
    angle = (v.haul_elevation + v.back_depression) / 2
    return 2 * fronts * sin(angle) / sin(v.haul_elevation - v.ground_depression)


QUESTIONS = (REDIRECT, LEAN, REAL_REDIRECT, HEAD_WITH_TRACK, LANDING, GUY, LEGS)
"""This module's questions, in the order of the lesson."""
