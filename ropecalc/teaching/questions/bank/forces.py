"""Questions on mass and weight, units of force, parts and sums of pulls, and one rope aside."""

import math
from collections.abc import Callable, Mapping
from math import radians
from typing import Any

from sympy import Abs, Float, Integer, asin, atan, cos, pi, sin, sqrt

from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import vectors
from ropecalc.teaching.questions.bank.slips import HAUL_STAYS_THE_WEIGHT
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Approximation, Mistake, Template, Tolerance
from ropecalc.units import POUND, STANDARD_GRAVITY

_LOAD = Given(q.LOAD, 1.2, 2.8, 0.1, "kN")
_ONE_PER_CENT = Tolerance(relative=0.01)
_TWO_PER_CENT = Tolerance(relative=0.02)
_HALF_A_DEGREE = Tolerance(absolute=radians(0.5))
_GRAVITY, _POUND = Float(STANDARD_GRAVITY), Float(POUND)
_KILO = Integer(1000)


def _with_ten(value: Callable[[Any], Any]) -> Approximation:
    """Ten for gravity is near enough where only the weight itself is asked for."""
    return Approximation("You took 10 for g; this course takes 9.80665.", value)


WEIGHT = Template(
    key="weight-of-a-mass",
    title="From mass to weight",
    stem=(
        "Litter, patient, attendant and kit together have a mass of {mass}. With what force do "
        "they pull on the rope while they hang still?"
    ),
    asked="Weight of everything that hangs",
    givens=(Given(q.MASS, 120, 280, 5, "kg"),),
    derivation=vectors.weight,
    tolerance=_ONE_PER_CENT,
    mistakes=(
        Mistake(
            "newtons-called-kilonewtons",
            "Newtons written down as kilonewtons",
            "Mass times 9.80665 gives newtons. A kilonewton is a thousand of them.",
            lambda v: v.mass * _GRAVITY * _KILO,
        ),
        Mistake(
            "divided-by-gravity",
            "The mass divided by 9.81 instead of multiplied",
            "Each kilogram is pulled with nearly ten newtons, so multiply. In kilonewtons the "
            "number is then about a hundredth of that of the kilograms.",
            lambda v: v.mass / _GRAVITY * _KILO,
        ),
        Mistake(
            "kilograms-for-newtons",
            "Kilograms taken for newtons",
            "Mass and force are different things: a newton is about the weight of a tenth of a "
            "kilogram.",
            lambda v: v.mass,
        ),
        Mistake(
            "factor-of-another-unit",
            "The factor for pounds-force used on kilograms",
            "225 is how many pounds-force make a kilonewton. For kilograms it is 102.",
            lambda v: v.mass / 225 * _KILO,
        ),
    ),
    difficulty=1,
    objective="turn a mass into the force with which it hangs",
    must_pass=True,
    accepted=(_with_ten(lambda v: v.mass * 10),),
)

POUNDS = Template(
    key="pounds-force-on-a-cell",
    title="A cell set to pounds-force",
    stem=(
        "A load cell is set to pounds-force and shows {pounds_force}. How many kilonewtons is "
        "that? Write the number alone."
    ),
    asked="Number of kilonewtons",
    givens=(Given(q.POUNDS_FORCE, 150, 1500, 10, ""),),
    derivation=vectors.pounds_into_kilonewtons,
    tolerance=_ONE_PER_CENT,
    mistakes=(
        Mistake(
            "stopped-at-kilograms-force",
            "Stopped at kilograms-force",
            "A pound is less than half a kilogram, but this number counts kilograms-force. It "
            "takes 102 of those to make a kilonewton.",
            lambda v: v.pounds_force * _POUND,
        ),
        Mistake(
            "thousand-kilograms-force",
            "A thousand kilograms-force called a kilonewton",
            "A kilonewton is a thousand newtons, and that is only 102 kilograms-force.",
            lambda v: v.pounds_force * _POUND / 1000,
        ),
        Mistake(
            "gravity-once-more",
            "Multiplied by gravity",
            "A pound-force is a force already. Gravity comes in only where a mass is given.",
            lambda v: v.pounds_force * _GRAVITY / 1000,
        ),
    ),
    difficulty=1,
    objective="read a load cell that is set to pounds-force",
    accepted=(_with_ten(lambda v: v.pounds_force * _POUND * 10 / 1000),),
)

KILOGRAMS = Template(
    key="kilonewtons-into-kilograms-force",
    title="A cell that says “kg”",
    stem=(
        "Two cells hang in one rope. The first shows {kilonewtons} kilonewtons, the second is set "
        "to “kg”, which on a cell means kilograms-force. What does the second one show? Write the "
        "number alone."
    ),
    asked="Number of kilograms-force",
    givens=(Given(q.KILONEWTONS, 1, 12, 0.1, ""),),
    derivation=vectors.kilonewtons_into_kilograms,
    tolerance=_ONE_PER_CENT,
    mistakes=(
        Mistake(
            "factor-of-another-unit",
            "The factor for pounds-force used",
            "225 is for pounds-force. A kilonewton is 102 kilograms-force.",
            lambda v: v.kilonewtons * 225,
        ),
        Mistake(
            "multiplied-by-gravity",
            "Multiplied by gravity instead of divided",
            "A kilogram-force is larger than a newton, nearly ten of them: divide the newtons by "
            "9.80665.",
            lambda v: v.kilonewtons * _GRAVITY,
        ),
        Mistake(
            "newtons-called-kilograms-force",
            "Newtons called kilograms-force",
            "A thousand newtons make a kilonewton; of kilograms-force it takes only 102.",
            lambda v: v.kilonewtons * 1000,
        ),
    ),
    difficulty=1,
    objective="compare cells that are set to different units",
    must_pass=True,
    accepted=(_with_ten(lambda v: v.kilonewtons * 100),),
)

LEVEL_PART = Template(
    key="level-part-of-a-pull",
    title="How much of it pulls sideways",
    stem=(
        "A rope leaves the litter at {rope_elevation} above the horizontal with a tension of "
        "{rope_tension}. With what force does it pull the litter sideways, that is, level?"
    ),
    asked="Level part of the pull",
    givens=(
        Given(q.ROPE_TENSION, 0.8, 6, 0.1, "kN"),
        Given(q.ROPE_ELEVATION, 15, 80, 1, "°"),
    ),
    derivation=vectors.level_part,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "sine-for-cosine",
            "Sine and cosine exchanged",
            "That is the upward part. The level side lies at the angle, so it goes with the "
            "cosine: a steep rope pulls little sideways.",
            lambda v: v.rope_tension * sin(v.rope_elevation),
        ),
        Mistake(
            "calculator-in-radians",
            "The calculator set to radians",
            "Set it to degrees. A quick test is the cosine of 60°, which is a half.",
            lambda v: Abs(v.rope_tension * cos(v.rope_elevation * 180 / pi)),
        ),
        Mistake(
            "divided-by-the-cosine",
            "Divided by the cosine",
            "A part is never more than the whole. Multiply by the cosine.",
            lambda v: v.rope_tension / cos(v.rope_elevation),
        ),
    ),
    difficulty=1,
    objective="split a pull into a level and an upward part",
)


def _both_parts_count(values: Mapping[str, float]) -> bool:
    """Neither part of the sum is nearly all of it, so that the way to the answer is not it."""
    angle, second = values["pull_angle"], values["second_pull"]
    along, across = values["first_pull"] + second * math.cos(angle), second * math.sin(angle)
    return math.hypot(along, across) > 1.01 * max(abs(along), across)


TWO_PULLS = Template(
    key="resultant-of-two-pulls",
    title="Two pulls on one plate",
    stem=(
        "Two ropes pull on one rigging plate, with {first_pull} and with {second_pull}. The "
        "directions in which they pull are {pull_angle} apart. With what force do they pull "
        "together?"
    ),
    asked="Resultant of the two pulls",
    givens=(
        Given(q.FIRST_PULL, 0.8, 4, 0.1, "kN"),
        Given(q.SECOND_PULL, 0.8, 4, 0.1, "kN"),
        Given(q.PULL_ANGLE, 30, 150, 5, "°"),
    ),
    derivation=vectors.resultant_of_two,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "added-as-numbers",
            "The two pulls added as plain numbers",
            "That holds only for pulls in one direction. Draw them head to tail and measure from "
            "the start to the end.",
            lambda v: v.first_pull + v.second_pull,
        ),
        Mistake(
            "angle-in-the-triangle",
            "The angle inside the triangle taken for that between the pulls",
            "Drawn head to tail, the corner between the arrows has 180° less the angle between "
            "the pulls, so the sign of the last term turns round.",
            lambda v: sqrt(
                v.first_pull**2
                + v.second_pull**2
                - 2 * v.first_pull * v.second_pull * cos(v.pull_angle)
            ),
        ),
        Mistake(
            "taken-as-a-right-angle",
            "The two taken to stand at right angles",
            "Only then does Pythagoras do without the last term.",
            lambda v: sqrt(v.first_pull**2 + v.second_pull**2),
        ),
    ),
    difficulty=2,
    objective="add two pulls that point in different directions",
    usable=_both_parts_count,
)

LEAN = Template(
    key="lean-of-a-rope-pulled-aside",
    title="How far the rope leans",
    stem=(
        "A litter that weighs {load} hangs on one rope and is held aside by a level pull of "
        "{side_pull}. How far from plumb does the rope lean?"
    ),
    asked="Angle of the rope from plumb",
    givens=(_LOAD, Given(q.SIDE_PULL, 0.5, 1.8, 0.1, "kN")),
    derivation=vectors.side_pull_angle,
    tolerance=_HALF_A_DEGREE,
    mistakes=(
        Mistake(
            "ratio-upside-down",
            "The ratio turned upside down",
            "From plumb, the tangent is what pulls aside over what pulls down. The other way "
            "round it is the angle above the horizontal.",
            lambda v: atan(v.load / v.side_pull),
        ),
        Mistake(
            "left-in-radians",
            "The angle left in radians",
            "Set the calculator to degrees: a lean that one can see is no fraction of a degree.",
            lambda v: atan(v.side_pull / v.load) * pi / 180,
        ),
        Mistake(
            "weight-taken-for-the-long-side",
            "The weight taken for the long side of the triangle",
            "The long side is the rope's tension. Weight and side pull stand at right angles, so "
            "their ratio is a tangent, not a sine.",
            lambda v: asin(v.side_pull / v.load),
        ),
    ),
    difficulty=2,
    objective="say how far a side pull makes a rope lean",
)

MOVED = Template(
    key="moved-by-a-side-pull",
    title="How far the litter moves",
    stem=(
        "A litter that weighs {load} hangs on {rope_above} of rope below the directional. A "
        "level pull of {side_pull} holds it aside. How far off plumb does it hang?"
    ),
    asked="Distance off plumb",
    givens=(
        _LOAD,
        Given(q.SIDE_PULL, 0.5, 1.8, 0.1, "kN"),
        Given(q.ROPE_ABOVE, 4, 30, 1, "m"),
    ),
    derivation=vectors.side_pull_offset,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "tangent-for-sine",
            "The whole rope taken for the height above the litter",
            "The tangent belongs to the height. The rope is the long side, so its sine counts.",
            lambda v: v.rope_above * v.side_pull / v.load,
        ),
        Mistake(
            "cosine-for-sine",
            "Sine and cosine exchanged",
            "That is how far the litter hangs below the directional.",
            lambda v: v.rope_above * v.load / sqrt(v.load**2 + v.side_pull**2),
        ),
        Mistake(
            "added-as-numbers",
            "Weight and pull added as plain numbers",
            "They stand at right angles: the rope's tension is the long side of their triangle.",
            lambda v: v.rope_above * v.side_pull / (v.load + v.side_pull),
        ),
    ),
    difficulty=2,
    objective="say how far a side pull moves a litter, high up and low down",
)

TENSION = Template(
    key="tension-of-a-rope-pulled-aside",
    title="What the rope carries now",
    stem=(
        "A litter that weighs {load} hangs on one rope and is held aside by a level pull of "
        "{side_pull}. What tension is in the rope?"
    ),
    asked="Tension of the rope",
    givens=(_LOAD, Given(q.SIDE_PULL, 0.8, 2.0, 0.1, "kN")),
    derivation=vectors.side_pull_tension,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        HAUL_STAYS_THE_WEIGHT,
        Mistake(
            "added-as-numbers",
            "Weight and pull added as plain numbers",
            "They stand at right angles: add their squares and take the root.",
            lambda v: v.load + v.side_pull,
        ),
        Mistake(
            "pull-takes-weight-off",
            "The pull taken to carry a part of the weight",
            "A level pull lifts nothing. The rope still carries the whole weight and pulls back "
            "sideways besides.",
            lambda v: v.load - v.side_pull / 2,
        ),
    ),
    difficulty=2,
    objective="say what a side pull does to the tension of the rope",
)

SLANTED = Template(
    key="pull-from-above",
    title="A pull that also lifts",
    stem=(
        "A line from a ledge across the gorge pulls on a litter that weighs {load}. The pull is "
        "{slanted_pull}, {pull_elevation} above the horizontal. How far from plumb does the rope "
        "lean?"
    ),
    asked="Angle of the rope from plumb",
    givens=(
        Given(q.LOAD, 1.4, 2.8, 0.1, "kN"),
        Given(q.SLANTED_PULL, 0.5, 1.4, 0.1, "kN"),
        Given(q.PULL_ELEVATION, 20, 60, 2, "°"),
    ),
    derivation=vectors.slanted_pull_angle,
    tolerance=_HALF_A_DEGREE,
    mistakes=(
        Mistake(
            "taken-as-level",
            "The pull treated as level",
            "Only its level part pulls the litter aside, and its upward part takes weight off "
            "the rope.",
            lambda v: atan(v.slanted_pull / v.load),
        ),
        Mistake(
            "lift-left-out",
            "What the pull lifts left out",
            "The upward part of the pull carries some of the weight; the rope has only the rest.",
            lambda v: atan(v.slanted_pull * cos(v.pull_elevation) / v.load),
        ),
        Mistake(
            "lift-taken-as-a-load",
            "The upward part added to the weight",
            "A pull that rises lifts. It would add to the weight if it fell away to the ground.",
            lambda v: atan(
                v.slanted_pull
                * cos(v.pull_elevation)
                / (v.load + v.slanted_pull * sin(v.pull_elevation))
            ),
        ),
    ),
    difficulty=3,
    objective="balance a pull that points neither level nor straight up",
)

QUESTIONS = (
    WEIGHT,
    POUNDS,
    KILOGRAMS,
    LEVEL_PART,
    TWO_PULLS,
    LEAN,
    MOVED,
    TENSION,
    SLANTED,
)
"""This module's questions, in the order of the lesson."""
