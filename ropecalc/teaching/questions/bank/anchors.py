"""Questions on anchor legs: equal and unequal, under a pull that swings, three of them."""

from math import radians

from sympy import Integer, Rational, acos, asin, cos, cot, pi, sin

from ropecalc.mechanics import anchors
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_LOAD = Given(q.LOAD, 1.2, 2.8, 0.1, "kN")
_TWO_PER_CENT = Tolerance(relative=0.02)
_ONE_DEGREE = Tolerance(absolute=radians(1.0))

EQUAL_LEGS = Template(
    key="two-equal-legs",
    title="Two equal legs",
    stem=(
        "Two equal legs, {leg_angle} apart, hold a load of {load} straight down the middle. What "
        "tension is in each leg?"
    ),
    asked="Tension in each leg",
    givens=(_LOAD, Given(q.LEG_ANGLE, 40, 150, 2, "°")),
    derivation=anchors.two_leg_anchor,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "half-each-whatever-the-angle",
            "The load halved, whatever the angle",
            "Each leg holds up half the load and besides pulls sideways against the other. The "
            "flatter the legs, the more.",
            lambda v: v.load / 2,
        ),
        Mistake(
            "sine-for-cosine",
            "Sine and cosine exchanged",
            "Half the angle lies between a leg and plumb, so the part that holds up goes with its "
            "cosine.",
            lambda v: v.load / (2 * sin(v.leg_angle / 2)),
        ),
        Mistake(
            "grows-evenly",
            "The tension taken to grow evenly with the angle",
            "It grows slowly at first and then faster and faster.",
            lambda v: v.load / 2 * (1 + v.leg_angle / (2 * pi / 3)),
        ),
    ),
    difficulty=1,
    objective="find the tension in two equal legs",
)

LARGEST_ANGLE = Template(
    key="largest-leg-angle",
    title="How far apart may they be?",
    stem=(
        "Neither of two equal legs may carry more than {load_ratio} times the load. What is the "
        "largest angle between them?"
    ),
    asked="Largest angle between the legs",
    givens=(Given(q.LOAD_RATIO, 0.55, 2.5, 0.05, ""),),
    derivation=anchors.critical_leg_angle,
    tolerance=_ONE_DEGREE,
    mistakes=(
        Mistake(
            "half-angle-not-doubled",
            "Half the angle given for the whole",
            "The cosine belongs to the angle from plumb, half of what lies between the legs.",
            lambda v: acos(1 / (2 * v.load_ratio)),
        ),
        Mistake(
            "one-angle-for-all",
            "The angle for a leg equal to the load, whatever the limit",
            "At 120° a leg carries as much as the load. Another limit has another angle.",
            lambda v: 2 * pi / 3,
        ),
        Mistake(
            "sine-for-cosine",
            "Sine and cosine exchanged",
            "Half the angle lies between a leg and plumb, so the part that holds up goes with its "
            "cosine.",
            lambda v: 2 * asin(1 / (2 * v.load_ratio)),
        ),
    ),
    difficulty=2,
    objective="find the angle that keeps a leg below a limit",
)


UNEQUAL_LEGS = Template(
    key="unequal-legs",
    title="One leg steeper than the other",
    stem=(
        "Leg 1 stands {first_leg_angle} from plumb and leg 2 {second_leg_angle} from plumb on the "
        "other side. Together they hold {load}. What tension is in leg 1?"
    ),
    asked="Tension in leg 1",
    givens=(
        _LOAD,
        Given(q.FIRST_LEG_ANGLE, 10, 60, 1, "°"),
        Given(q.SECOND_LEG_ANGLE, 10, 60, 1, "°"),
    ),
    derivation=anchors.first_leg_tension,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "flatter-leg-carries-more",
            "The two legs exchanged",
            "Sideways the two balance, so the steeper leg, which pulls little sideways, has to "
            "pull harder.",
            lambda v: v.load * sin(v.first_leg_angle) / sin(v.first_leg_angle + v.second_leg_angle),
        ),
        Mistake(
            "taken-as-equal",
            "Both legs taken as equal, with the same angle between them",
            "That holds only where both stand equally far from plumb.",
            lambda v: v.load / (2 * cos((v.first_leg_angle + v.second_leg_angle) / 2)),
        ),
        Mistake(
            "half-each-whatever-the-angle",
            "The load halved, whatever the angles",
            "The legs also pull sideways against each other, and not equally hard.",
            lambda v: v.load / 2,
        ),
    ),
    difficulty=2,
    objective="find the tension in two unequal legs, and say which carries more",
    usable=lambda v: abs(v["first_leg_angle"] - v["second_leg_angle"]) >= radians(6),
)

SWINGING_PULL = Template(
    key="pull-off-the-middle",
    title="The pull swings off the middle",
    stem=(
        "Two equal legs of fixed length stand {leg_angle} apart. A load of {load} pulls on "
        "them, but {pull_swing} off the middle line, so that one leg gains tension and the "
        "other loses some. What tension is in the leg that gains?"
    ),
    asked="Tension in the leg that gains",
    givens=(
        _LOAD,
        Given(q.LEG_ANGLE, 40, 110, 2, "°"),
        Given(q.PULL_SWING, 6, 25, 1, "°"),
    ),
    derivation=anchors.gaining_leg_tension,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "still-down-the-middle",
            "The pull taken to run down the middle",
            "The leg in line with the pull gains what the other one loses, and more.",
            lambda v: v.load / (2 * cos(v.leg_angle / 2)),
        ),
        Mistake(
            "the-other-leg",
            "The leg that is relieved",
            "The pull swings away from the leg opposite it: that one is in line and gains.",
            lambda v: v.load * sin(v.leg_angle / 2 - v.pull_swing) / sin(v.leg_angle),
        ),
        Mistake(
            "half-each-whatever-the-angle",
            "The load halved",
            "The legs pull sideways against each other, and the swing adds to one of them.",
            lambda v: v.load / 2,
        ),
    ),
    difficulty=2,
    objective="say which leg gains when the pull swings, and by how much",
    must_pass=True,
)

THREE_EVEN = Template(
    key="three-even-legs",
    title="Three even legs",
    stem=(
        "Three equal legs, evenly spread around a load of {load}, each stand {leg_plumb_angle} "
        "from plumb. What tension is in each?"
    ),
    asked="Tension in each leg",
    givens=(_LOAD, Given(q.LEG_PLUMB_ANGLE, 15, 70, 1, "°")),
    derivation=anchors.three_leg_anchor,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "a-third-each",
            "The load divided by three, whatever the angle",
            "Each leg holds up a third and besides pulls outward against the other two.",
            lambda v: v.load / 3,
        ),
        Mistake(
            "rule-for-two-legs",
            "The rule for two legs",
            "Three legs hold up together: three times the upward part of one.",
            lambda v: v.load / (2 * cos(v.leg_plumb_angle)),
        ),
        Mistake(
            "sine-for-cosine",
            "Sine and cosine exchanged",
            "The angle is counted from plumb, so the part that holds up goes with its cosine.",
            lambda v: v.load / (3 * sin(v.leg_plumb_angle)),
        ),
    ),
    difficulty=2,
    objective="find the tension in three even legs",
)

MIDDLE_LEG = Template(
    key="middle-leg",
    title="A third leg in the same plane",
    stem=(
        "Three legs of the same rope hang from bolts at one height: one is plumb, the other two "
        "stand {outer_leg_angle} from plumb, one to either side. All were just taut before "
        "{load} came on, and they stretch alike. What tension is in the middle leg?"
    ),
    asked="Tension in the middle leg",
    givens=(_LOAD, Given(q.OUTER_LEG_ANGLE, 15, 60, 1, "°")),
    derivation=anchors.middle_leg_tension,
    tolerance=Tolerance(relative=0.03),
    mistakes=(
        Mistake(
            "a-third-each",
            "The load divided by three",
            "The middle leg is shorter and stands in line with the load: it is stretched most and "
            "carries most.",
            lambda v: v.load / 3,
        ),
        Mistake(
            "same-tension-in-all",
            "The same tension in all three",
            "Balance would allow it, but the knot sinks and stretches the middle leg more than "
            "the others.",
            lambda v: v.load / (1 + 2 * cos(v.outer_leg_angle)),
        ),
        Mistake(
            "middle-takes-all",
            "Everything given to the middle leg",
            "It does so only if the others are a little too long.",
            lambda v: v.load * Integer(1),
        ),
    ),
    difficulty=3,
    objective="say why statics cannot share a load among three legs in one plane",
)


BACK_LEGS = Template(
    key="two-back-one-front",
    title="Two legs back, one to the front",
    stem=(
        "A load of {load} hangs from three legs: one to the front, {front_leg_angle} from plumb, "
        "and two to the back, {back_leg_angle} from plumb. Seen from above, each back leg runs "
        "{half_spread} off the line straight back. What tension is in each back leg?"
    ),
    asked="Tension in each back leg",
    givens=(
        _LOAD,
        Given(q.FRONT_LEG_ANGLE, 15, 50, 1, "°"),
        Given(q.BACK_LEG_ANGLE, 20, 60, 1, "°"),
        Given(q.HALF_SPREAD, 15, 50, 1, "°"),
    ),
    derivation=anchors.back_leg_tension,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "seen-from-the-side-only",
            "The spread seen from above left out",
            "The two back legs also pull sideways against each other; only part of each pulls "
            "straight back.",
            lambda v: (
                v.load
                / (2 * cos(v.back_leg_angle) + 2 * sin(v.back_leg_angle) * cot(v.front_leg_angle))
            ),
        ),
        Mistake(
            "a-third-each",
            "A third of the load for each leg",
            "The legs stand at different angles, and front and back have to balance.",
            lambda v: v.load / (3 * cos(v.back_leg_angle)),
        ),
        Mistake(
            "front-leg-forgotten",
            "The front leg forgotten",
            "It holds up part of the load, and without it nothing balances the pull to the back.",
            lambda v: v.load * Rational(1, 2) / cos(v.back_leg_angle),
        ),
    ),
    difficulty=3,
    objective="solve an anchor of three legs in space",
)

QUESTIONS = (
    EQUAL_LEGS,
    LARGEST_ANGLE,
    UNEQUAL_LEGS,
    SWINGING_PULL,
    THREE_EVEN,
    MIDDLE_LEG,
    BACK_LEGS,
)
"""This module's questions, in the order of the lesson."""
