"""One face, three ways: an attendant, a tag line and track lines at the same place."""

from dataclasses import replace

from ropecalc import cautions
from ropecalc.mechanics import guiding
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.teaching.questions.bank import forces
from ropecalc.teaching.questions.bank import holding_off as off
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance
from ropecalc.teaching.scenarios import places
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario, Source

_ATTENDED = Given(
    named(q.MASS, "mass_attended", "mass that hangs with an attendant"), 160, 240, 5, "kg"
)
_ALONE = Given(named(q.MASS, "mass_alone", "mass that hangs without"), 90, 140, 5, "kg")
_LOW = Given(named(q.Z, "z_low", "height of the low place"), 7, 9, 1, "m")
_HIGH = Given(named(q.Z, "z_high", "height of the high place"), 27, 28.5, 0.5, "m")
_LIMIT = Given(named(q.PUSH, "push_limit", "push that can be kept up"), 0.25, 0.35, 0.05, "kN")
_OFF = Given(q.OFF_PLUMB, 0.7, 1.1, 0.1, "m")
_LOAD_ALONE = Given(
    named(q.LOAD, "load_alone", "weight that hangs without an attendant"), 0.8, 1.5, 0.01, "kN"
)
_DROP = Given(q.DROP, 3, 25, 0.5, "m")
_PUSH = replace(
    off.ATTENDANT_PUSH,
    givens=(places.LOAD, _OFF, _DROP),
    must_pass=False,
    difficulty=2,
)


def _place(n: Values) -> Values:
    return {**n, "x": n["x_D"] + n["off_plumb"], "z": n["z_high"]}


_ANGLES: dict[str, Source] = {
    "haul_elevation": lambda n: places.haul_leg()(_place(n)),
    "ground_depression": lambda n: places.ground_leg()(_place(n)),
}
_MEASURED = (places.HAUL_ELEVATION, places.GROUND_DEPRESSION)
_ALONE_AT_HIGH = {"load": "load_alone", **_ANGLES}

_LIGHTEST, _HEAVIEST = 65.0, 115.0
"""What an attendant weighs with their equipment, kg."""


def _a_person_more(n: Values) -> bool:
    return _LIGHTEST <= n["mass_attended"] - n["mass_alone"] <= _HEAVIEST


_PUSH_ENDS = Template(
    key="one-face-push-ends",
    title="Where the push ends",
    stem=(
        "The attendant can keep up a push of {push} for the time it takes. The load weighs {load} "
        "and has to stay {off_plumb} off plumb. How far below the haul directional does this way "
        "of holding it off come to its end?"
    ),
    asked="Height of the directional above the master attachment point at that moment",
    givens=(places.LOAD, _OFF, Given(q.PUSH, 0.25, 0.35, 0.05, "kN")),
    derivation=guiding.attendant_push.solved_for("drop"),
    tolerance=Tolerance(relative=0.02),
    mistakes=(
        Mistake(
            "ratio-upside-down",
            "The ratio turned upside down",
            "A small push asks for a long haul line: the height is to the distance out as the "
            "weight is to the push.",
            lambda v: v.off_plumb * v.push / v.load,
        ),
        Mistake(
            "push-taken-off-the-weight",
            "The push taken off the weight",
            "A level push carries no weight: the haul line still holds all of it.",
            lambda v: v.off_plumb * (v.load - v.push) / v.push,
        ),
        Mistake(
            "half-the-weight",
            "The weight shared between rope and attendant",
            "A level push carries no weight; it only balances the sideways part of the haul line.",
            lambda v: v.off_plumb * v.load / (2 * v.push),
        ),
    ),
    difficulty=2,
    objective="say how high an attendant can go before the push becomes too much",
)

ONE_FACE = Scenario(
    key="one-face-three-ways",
    number=1,
    title="One face, three ways",
    story=(
        "The Lower Heron Wall in Tamarack Gorge falls away near the top, and all the way up the "
        "litter has to be held {off_plumb} off the plumb line below the haul directional. The "
        "directional is {x_D} out and {z_D} up, the only hub {x_B} out and {z_B} up. With an "
        "attendant {mass_attended} hang on the haul line, without one {mass_alone}. You look at "
        "two places of the master attachment point: a low one {z_low} up, a high one {z_high} up. "
        "Nobody can push more than {push_limit} for minutes."
    ),
    givens=(
        _ATTENDED,
        _ALONE,
        _OFF,
        _LOW,
        _HIGH,
        _LIMIT,
        places.X_D,
        places.Z_D,
        places.X_B,
        places.Z_B,
    ),
    parts=(
        Part(
            replace(
                forces.WEIGHT,
                key="one-face-weight-attended",
                title="The weight with an attendant",
                stem="With an attendant, {mass} hang on the haul line. What do they weigh?",
                asked="Weight with an attendant",
                givens=(Given(q.MASS, 160, 240, 5, "kg"),),
                must_pass=False,
            ),
            take={"mass": "mass_attended"},
            gives=places.LOAD,
        ),
        Part(
            replace(
                forces.WEIGHT,
                key="one-face-weight-alone",
                title="The weight without an attendant",
                stem="Without an attendant, {mass} hang on the haul line. What do they weigh?",
                asked="Weight without an attendant",
                givens=(Given(q.MASS, 90, 140, 5, "kg"),),
                must_pass=False,
            ),
            take={"mass": "mass_alone"},
            gives=_LOAD_ALONE,
        ),
        Part(
            replace(
                _PUSH,
                key="one-face-push-low",
                title="The attendant's push, low down",
                stem=(
                    "At the low place the haul directional is {drop} above the master attachment "
                    "point. The load weighs {load}. How hard must the attendant push, level and "
                    "outward, to hold it {off_plumb} off plumb?"
                ),
                asked="Push of the attendant at the low place",
            ),
            take={"drop": lambda n: n["z_D"] - n["z_low"]},
            after=("load",),
        ),
        Part(
            replace(
                _PUSH,
                key="one-face-push-high",
                title="The attendant's push, high up",
                stem=(
                    "At the high place only {drop} are left between the master attachment point "
                    "and the haul directional. The load weighs {load}, and it still has to be "
                    "{off_plumb} off plumb. How hard must the attendant push now?"
                ),
                asked="Push of the attendant at the high place",
            ),
            take={"drop": lambda n: n["z_D"] - n["z_high"]},
            after=("load",),
        ),
        Part(_PUSH_ENDS, take={"push": "push_limit"}, after=("load",)),
        Part(
            replace(
                places.without(off.TAG_FROM_PLACES, "slopes-added"),
                key="one-face-tag-line",
                title="A tag line instead",
                stem=(
                    "At the high place a tag line is to hold the litter and its attendant off "
                    "instead. The master attachment point is {x} out and {z} up, the haul "
                    "directional {x_D} out and {z_D} up, the hub {x_B} out and {z_B} up, the "
                    "weight {load}. What tension is in the tag line?"
                ),
                givens=(
                    places.LOAD,
                    Given(q.X, 0.9, 1.5, 0.1, "m"),
                    Given(q.Z, 27, 28.5, 0.5, "m"),
                    places.X_D,
                    places.Z_D,
                    places.X_B,
                    places.Z_B,
                ),
                must_pass=False,
            ),
            take={"x": lambda n: n["x_D"] + n["off_plumb"], "z": "z_high"},
            after=("load",),
        ),
        Part(
            replace(
                places.without(off.HAUL_AGAINST_TAG, "ground-leg-level"),
                key="one-face-haul-against-tag",
                title="The haul line against the tag line",
                stem=(
                    "With the tag line at the high place, somebody measures the haul leg "
                    "{haul_elevation} above and the tag line {ground_depression} below the "
                    "horizontal. The load weighs {load}. What tension is in the haul line?"
                ),
                givens=(places.LOAD, *_MEASURED),
                must_pass=False,
            ),
            take=_ANGLES,
            after=("load",),
        ),
        Part(
            replace(
                places.without(off.TRACK_TENSION, "angles-added"),
                key="one-face-track-lines",
                title="Track lines, and nobody beside the litter",
                stem=(
                    "Now the litter goes up without an attendant, on track lines from the haul "
                    "directional to the hub. At the high place it weighs {load}; the haul leg is "
                    "{haul_elevation} above the horizontal and the ground legs are "
                    "{ground_depression} below it. What tension do the track lines carry together?"
                ),
                givens=(places.LOAD, *_MEASURED),
                must_pass=False,
            ),
            take=_ALONE_AT_HIGH,
            after=("load_alone",),
        ),
        Part(
            replace(
                off.HAUL_BESIDE_TRACK,
                key="one-face-haul-beside-track",
                title="The haul line beside the track lines",
                stem=(
                    "At the same moment, with {load} on the haul line at {haul_elevation} and "
                    "track lines whose ground legs fall {ground_depression}: what tension is in "
                    "the haul line?"
                ),
                givens=(places.LOAD, *_MEASURED),
                must_pass=False,
            ),
            take=_ALONE_AT_HIGH,
            after=("load_alone",),
        ),
    ),
    judged=(
        Judged(
            key="one-face-which-way",
            title="Which way, and where",
            question=(
                "Which of the three ways would you use on which part of this wall, and why? What "
                "does a raise without an attendant buy you besides a smaller tension, and what "
                "does it cost?"
            ),
            points=(
                "Low down the attendant's push is small, and there is a wall to push on: the "
                "attendant alone will do there.",
                "Above the place where the push ends, or where the wall falls away and there is "
                "nothing to stand on, a line has to hold the litter off.",
                "The tag line adds to the haul line, the track lines take some of it off: haul "
                "tension and the pull on the head are compared, not only the line to the hub.",
                "Less weight makes every one of them smaller: haul line, head, hub and team, not "
                "only the track lines.",
                "Without an attendant nobody looks after the patient or frees the litter; whether "
                "that is right is decided by the patient's state and the local authority.",
            ),
        ),
    ),
    lessons=(1, 8),
    usable=_a_person_more,
    cautions=(
        cautions.AUTHORITY,
        cautions.STATIC,
        cautions.FRICTIONLESS,
        cautions.NEAR_DIRECTIONAL,
        cautions.ATTENDANT_LIMITS,
    ),
)
