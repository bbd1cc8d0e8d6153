"""Questions on a whole raise: margins that can be stated, where to stop, rope for the lines."""

from collections.abc import Mapping
from math import cos as cosine
from math import sin as sine
from typing import Any

from sympy import cos, sin, sqrt

from ropecalc.mechanics import guiding_limits, raise_limits, strength
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.bank.slips import places_open
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_TWO_PER_CENT = Tolerance(relative=0.02)
_HIGHER = Given(q.LOAD_UNCERTAINTY, 0.1, 0.6, 0.05, "")
_WEAKER = Given(q.STRENGTH_UNCERTAINTY, 0.0, 0.2, 0.05, "")
_STRENGTH = Given(q.COMPONENT_STRENGTH, 4.0, 15.0, 0.5, "kN")

HONEST_MARGIN = Template(
    key="raise-honest-margin",
    title="A margin that can be stated",
    stem=(
        "The weakest part of a track line holds {strength}. At the governing station it is "
        "computed to carry {component_load}, and the load may be higher by a share of "
        "{load_uncertainty}, the strength lower by a share of {strength_uncertainty}. What margin "
        "can be stated?"
    ),
    asked="Margin, both uncertainties counted",
    givens=(_STRENGTH, Given(q.COMPONENT_LOAD, 0.8, 3.0, 0.1, "kN"), _HIGHER, _WEAKER),
    derivation=strength.margin,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "uncertainty-left-out",
            "The uncertainty left out",
            "Then the margin is one that the load may already have used up.",
            lambda v: v.strength / v.component_load,
        ),
        Mistake(
            "uncertainty-on-the-wrong-side",
            "The uncertainty counted in favour",
            "An error makes the load higher or the strength lower, whichever is worse.",
            lambda v: v.strength * (1 + v.load_uncertainty) / v.component_load,
        ),
        Mistake(
            "share-taken-off-the-margin",
            "The share taken off the margin",
            "The share belongs to the load: multiply the load by it, then divide.",
            lambda v: v.strength / v.component_load - v.load_uncertainty - v.strength_uncertainty,
        ),
    ),
    difficulty=3,
    objective="state a margin that counts what you do not know",
)

STOP_VALUE = Template(
    key="raise-stop-value",
    title="Where to stop",
    stem=(
        "The weakest part of a track line holds {strength}; it may be weaker by a share of "
        "{strength_uncertainty}. You ask for a margin of {margin}, and what the line carries may "
        "be higher than the cell shows by a share of {load_uncertainty}. At which reading in that "
        "line do you stop?"
    ),
    asked="Reading at which to stop",
    givens=(_STRENGTH, _HIGHER, _WEAKER, Given(q.MARGIN, 3.0, 8.0, 0.5, "")),
    derivation=raise_limits.stop_value,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "uncertainty-left-out",
            "The uncertainty left out",
            "The line may carry more than the cell shows, and hold less than you think.",
            lambda v: v.strength / v.margin,
        ),
        Mistake(
            "stop-at-the-strength",
            "The strength itself taken, with the uncertainty off",
            "At that reading nothing of the margin is left.",
            lambda v: v.strength * (1 - v.strength_uncertainty) / (1 + v.load_uncertainty),
        ),
        Mistake(
            "uncertainty-on-the-wrong-side",
            "The uncertainty counted in favour",
            "Stop earlier for what you do not know, not later.",
            lambda v: v.strength * (1 + v.load_uncertainty) / v.margin,
        ),
    ),
    difficulty=2,
    objective="say at which reading to stop",
)

TRACK_ROPE = Template(
    key="raise-track-rope",
    title="Rope for one track line",
    stem=(
        "A track line runs {setback} from its tie-off to the directional. Over the whole raise the "
        "longest way from the directional past the litter to the hub is {track_length}; at that "
        "moment the rope grab is {gap} from the hub. A tail of {line_tail} is to be tied back. How "
        "much rope does the line need?"
    ),
    asked="Length of rope for the line",
    givens=(
        Given(raise_limits.SETBACK, 4, 20, 1, "m"),
        Given(q.TRACK_LENGTH, 45, 90, 1, "m"),
        Given(raise_limits.GAP, 2, 15, 1, "m"),
        Given(raise_limits.LINE_TAIL, 5, 20, 1, "m"),
    ),
    derivation=raise_limits.track_rope,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "setback-forgotten",
            "The piece behind the directional forgotten",
            "The line is tied off behind the edge, and that piece is rope, too.",
            lambda v: v.track_length - v.gap + v.line_tail,
        ),
        Mistake(
            "gap-added",
            "The gap to the hub added",
            "The line ends at its grab. From there to the hub runs the tensioner, not the line.",
            lambda v: v.setback + v.track_length + v.gap + v.line_tail,
        ),
        Mistake(
            "no-tail",
            "The tail forgotten",
            "Without a tail nothing can be tied back.",
            lambda v: v.setback + v.track_length - v.gap,
        ),
    ),
    difficulty=2,
    objective="find how long a track line has to be",
)

_STATIONS = (
    ((6, 9, 0.5), (1, 3, 0.5)),
    ((1.8, 2.6, 0.1), (24, 27, 0.5)),
    ((0.8, 1.2, 0.1), (28.0, 29.5, 0.5)),
)
"""Offset and height of each: lowest, highest, step, in metres."""


def _at(v: Any, number: int) -> Any:
    """The tension at one of the stations."""
    x, z = getattr(v, f"x_{number}"), getattr(v, f"z_{number}")
    up, down = (v.z_D - z) / (x - v.x_D), (z - v.z_B) / (v.x_B - x)
    return v.load * sqrt(1 + down**2) / (up - down)


def _all_open(values: Mapping[str, float]) -> bool:
    return all(
        places_open({**values, "x": values[f"x_{i}"], "z": values[f"z_{i}"]}) for i in (1, 2, 3)
    )


GOVERNING = Template(
    key="raise-governing-station",
    title="The station that governs",
    stem=(
        "A raise on the Upper Heron Wall in Tamarack Gorge has three stations for the master "
        "attachment point: {x_1} out and {z_1} up, {x_2} out and {z_2} up, and {x_3} out and "
        "{z_3} up. Haul and track directional are {x_D} out and {z_D} up, the hub {x_B} out and "
        "{z_B} up; the load weighs {load}. What is the largest tension that the track lines "
        "together reach?"
    ),
    asked="Largest tension of the track lines together",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        *(
            given
            for (x, z), (across, up) in zip(raise_limits.STATIONS, _STATIONS, strict=True)
            for given in (Given(x, *across, "m"), Given(z, *up, "m"))
        ),
        Given(q.X_D, 0.1, 0.5, 0.1, "m"),
        Given(q.Z_D, 31.5, 33.0, 0.5, "m"),
        Given(q.X_B, 35, 70, 5, "m"),
        Given(q.Z_B, 0.5, 2.0, 0.5, "m"),
    ),
    derivation=raise_limits.governing_tension,
    tolerance=Tolerance(relative=0.03),
    mistakes=(
        Mistake(
            "widest-station",
            "The station furthest out taken for the worst",
            "Low down the haul leg is long and little holds it off. Work out every station.",
            lambda v: _at(v, 1),
        ),
        Mistake(
            "highest-station",
            "The highest station taken for the worst",
            "It is near the directional, but the litter hangs almost plumb there.",
            lambda v: _at(v, 3),
        ),
        Mistake(
            "mean-of-stations",
            "The mean of the stations taken",
            "Everything has to hold at the worst station, not on average.",
            lambda v: (_at(v, 1) + _at(v, 2) + _at(v, 3)) / 3,
        ),
    ),
    difficulty=3,
    objective="find the station that governs a raise",
    usable=_all_open,
)


def _within_a_rig(values: Mapping[str, float]) -> bool:
    """Whether it is a place that a litter passes, and the ground legs take off part of the load."""
    tension, down = values["line_tension"], values["ground_depression"]
    lifted = tension * sine(down)
    out = tension * values["drop"] * cosine(down) / (values["load"] + lifted)
    return 0.6 <= out <= 6.0 and lifted < 0.8 * values["load"]


REACH = Template(
    key="raise-reach-off-plumb",
    title="How far out can it be held there?",
    stem=(
        "The track lines together may pull with {line_tension} at most. They come from the haul "
        "directional, which is {drop} above the master attachment point, and their ground legs "
        "fall {ground_depression} below the horizontal there. The load weighs {load}. How far out "
        "from the plumb line below the directional can the litter be held at most?"
    ),
    asked="Distance off plumb",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        Given(q.LINE_TENSION, 0.6, 3.0, 0.1, "kN"),
        Given(q.DROP, 4.0, 12.0, 0.5, "m"),
        Given(q.GROUND_DEPRESSION, 20, 38, 1, "°"),
    ),
    derivation=guiding_limits.reach_off_plumb,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "ground-leg-level",
            "The ground legs treated as level",
            "They also pull down, and that brings the litter nearer to plumb.",
            lambda v: v.drop * v.line_tension / v.load,
        ),
        Mistake(
            "ground-leg-lifts",
            "The ground legs taken to lift",
            "They fall away from the litter: what they pull down adds to the weight.",
            lambda v: (
                v.drop
                * v.line_tension
                * cos(v.ground_depression)
                / (v.load - v.line_tension * sin(v.ground_depression))
            ),
        ),
        Mistake(
            "ratio-upside-down",
            "Tension and weight exchanged",
            "More tension reaches further out, more weight less far.",
            lambda v: v.drop * v.load / v.line_tension,
        ),
    ),
    difficulty=3,
    objective="find how far out a limit on the lines lets you hold a litter",
    usable=_within_a_rig,
)

QUESTIONS = (GOVERNING, HONEST_MARGIN, STOP_VALUE, REACH, TRACK_ROPE)
"""This module's questions, in the order of the lesson."""
