"""An outcrop near the ground: little tension there, and what governs is somewhere else."""

from dataclasses import replace

from ropecalc import cautions
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.raise_limits import STATIONS
from ropecalc.teaching.questions.bank import along_the_raise as along
from ropecalc.teaching.questions.bank import holding_off as off
from ropecalc.teaching.questions.bank import whole_raise
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.questions.template import Mistake
from ropecalc.teaching.scenarios import places
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario, Source

_TIP = Given(named(q.X_O, "x_tip", "distance of the tip out from the wall"), 1.6, 2.0, 0.1, "m")
_TIP_HEIGHT = Given(named(q.Z_O, "z_tip", "height of the tip"), 4.0, 6.0, 0.5, "m")
_CLEARANCE = Given(q.CLEARANCE, 0.6, 0.8, 0.1, "m")
_START = Given(named(q.Z, "z_start", "height at the start"), 1.0, 2.0, 0.5, "m")
_X_MIDDLE = Given(named(q.X, "x_middle", "distance out half way"), 0.9, 1.2, 0.1, "m")
_Z_MIDDLE = Given(named(q.Z, "z_middle", "height half way"), 18, 22, 1, "m")
_X_TOP = Given(named(q.X, "x_top", "distance out near the top"), 0.7, 0.9, 0.1, "m")
_Z_TOP = Given(named(q.Z, "z_top", "height near the top"), 28.5, 29.5, 0.5, "m")
_LOAD = Given(q.LOAD, 1.4, 2.5, 0.1, "kN")
_ALL = {
    given.name: Given(variable, given.low, given.high, given.step, "m")
    for given, variable in zip(
        (_X_MIDDLE, _Z_MIDDLE, _X_TOP, _Z_TOP), (*STATIONS[1], *STATIONS[2]), strict=True
    )
}
_X_OUT, _Z_OUT = (
    Given(STATIONS[0][0], 2.2, 2.8, 0.1, "m"),
    Given(STATIONS[0][1], 1.0, 6.0, 0.5, "m"),
)
_PLACES = (places.X_D, places.Z_D, places.X_B, places.Z_B)


def _out(n: Values) -> float:
    return n["x_tip"] + n["clearance"]


def _at_the_tip(n: Values) -> Values:
    return {**n, "x": _out(n), "z": n["z_tip"]}


_MEASURED: dict[str, Source] = {
    "haul_elevation": lambda n: places.haul_leg()(_at_the_tip(n)),
    "track_elevation": lambda n: places.haul_leg()(_at_the_tip(n)),
    "ground_depression": lambda n: places.ground_leg()(_at_the_tip(n)),
}
_GOVERNING = replace(
    places.without(whole_raise.GOVERNING, "highest-station"),
    key="low-outcrop-governing",
    title="What governs the raise",
    stem=(
        "Three stations for the master attachment point: past the tip {x_1} out at {z_1}, half way "
        "{x_2} out at {z_2}, near the top {x_3} out at {z_3}. Haul and track directional are "
        "{x_D} out and {z_D} up, the hub {x_B} out and {z_B} up, the load weighs {load}. What is "
        "the largest tension that the track lines together reach at these stations?"
    ),
    givens=(places.LOAD, _X_OUT, _Z_OUT, *_ALL.values(), *_PLACES),
)

LOW_OUTCROP = Scenario(
    key="low-outcrop",
    number=2,
    title="An outcrop near the ground",
    story=(
        "At the foot of the Lower Heron Wall in Tamarack Gorge a ledge sticks out: its tip is "
        "{x_tip} out and {z_tip} up. The litter starts at a height of {z_start}, just as far out "
        "as it has to be at the tip, and passes it with a clearance of {clearance}, measured "
        "level. Above, the wall is nearly plumb: half way, at {z_middle}, the litter is to be "
        "{x_middle} out, and near the top, at {z_top}, {x_top} out. All heights are those of the "
        "master attachment point. Haul and track directional are {x_D} out and {z_D} up, the hub "
        "is {x_B} out and {z_B} up, the load weighs {load}."
    ),
    givens=(
        _TIP,
        _TIP_HEIGHT,
        _CLEARANCE,
        _START,
        _X_MIDDLE,
        _Z_MIDDLE,
        _X_TOP,
        _Z_TOP,
        _LOAD,
        *_PLACES,
    ),
    parts=(
        Part(
            replace(
                off.TAG_FROM_PLACES,
                key="low-outcrop-at-the-tip",
                title="Past the tip",
                stem=(
                    "Past the tip the master attachment point is {x} out and {z} up. The "
                    "directional is {x_D} out and {z_D} up, the hub {x_B} out and {z_B} up, the "
                    "load weighs {load}. What tension do the track lines carry together there?"
                ),
                asked="Tension of the track lines together at the tip",
                givens=(
                    places.LOAD,
                    Given(q.X, 2.2, 2.8, 0.1, "m"),
                    Given(q.Z, 4.0, 6.0, 0.5, "m"),
                    *_PLACES,
                ),
                must_pass=False,
                mistakes=(
                    Mistake(
                        "as-far-out-as-from-the-wall",
                        "The distance measured from the wall",
                        "What counts is how far the litter is off plumb below the directional.",
                        lambda v: v.load * v.x / (v.z_D - v.z),
                    ),
                    Mistake(
                        "scaled-by-the-whole-height",
                        "Distance out over the height above the ground",
                        "The haul leg leans by its run over its own rise: count down from the "
                        "directional.",
                        lambda v: v.load * (v.x - v.x_D) / v.z,
                    ),
                    Mistake(
                        "slope-of-the-ground-leg",
                        "The ground leg's slope taken for the haul leg's",
                        "Each leg has its own slope. The haul leg's decides how hard it pulls in.",
                        lambda v: v.load * (v.z - v.z_B) / (v.x_B - v.x),
                    ),
                ),
            ),
            take={"x": _out, "z": "z_tip"},
        ),
        Part(
            replace(
                places.BETWEEN,
                key="low-outcrop-angle-at-the-litter",
                title="The angle at the litter",
                stem=(
                    "Past the tip the haul leg rises {haul_elevation} above the horizontal, back "
                    "towards the wall, and the ground leg falls {ground_depression} below it, out "
                    "towards the hub. What angle do they make at the litter?"
                ),
                givens=(
                    Given(q.HAUL_ELEVATION, 80, 88, 0.1, "°"),
                    Given(q.GROUND_DEPRESSION, 4, 12, 0.1, "°"),
                ),
            ),
            take=_MEASURED,
        ),
        Part(
            replace(
                places.without(along.TAKE_IN, "as-much-as-the-height"),
                key="low-outcrop-take-in-rate",
                title="Rope to take in, past the tip",
                stem=(
                    "Past the tip the litter goes straight up. The upper legs of the track lines "
                    "rise {track_elevation} above the horizontal, the ground legs fall "
                    "{ground_depression} below it. How much of each line has to be taken in for "
                    "each unit of height? Taking in counts as positive."
                ),
                givens=(
                    Given(q.TRACK_ELEVATION, 80, 88, 0.1, "°"),
                    Given(q.GROUND_DEPRESSION, 4, 12, 0.1, "°"),
                ),
            ),
            take=_MEASURED,
        ),
        Part(
            replace(
                _GOVERNING,
                mistakes=(
                    *_GOVERNING.mistakes,
                    Mistake(
                        "ground-leg-level",
                        "The ground legs taken to be level",
                        "High up the ground legs fall steeply, and that takes more tension.",
                        lambda v: v.load * (v.x_3 - v.x_D) / (v.z_D - v.z_3),
                    ),
                ),
            ),
            take={
                "x_1": _out,
                "z_1": "z_tip",
                "x_2": "x_middle",
                "z_2": "z_middle",
                "x_3": "x_top",
                "z_3": "z_top",
            },
        ),
        Part(
            replace(
                along.PLAY,
                key="low-outcrop-play",
                title="Track rope for the whole raise",
                stem=(
                    "A track line runs from the directional {x_A} out and {z_A} up, past the "
                    "litter, to the hub {x_B} out and {z_B} up. The litter starts {x_1} out at "
                    "{z_1} and ends {x_2} out at {z_2}. How much of each line is taken in?"
                ),
                must_pass=False,
                givens=(
                    _X_OUT,
                    Given(STATIONS[0][1], 1.0, 2.0, 0.5, "m"),
                    Given(STATIONS[1][0], 0.7, 0.9, 0.1, "m"),
                    Given(STATIONS[1][1], 28.5, 29.5, 0.5, "m"),
                    Given(q.X_A, 0.2, 0.4, 0.1, "m"),
                    Given(q.Z_A, 31.5, 32.5, 0.5, "m"),
                    places.X_B,
                    places.Z_B,
                ),
            ),
            take={
                "x_1": _out,
                "z_1": "z_start",
                "x_2": "x_top",
                "z_2": "z_top",
                "x_A": "x_D",
                "z_A": "z_D",
            },
        ),
    ),
    judged=(
        Judged(
            key="low-outcrop-above",
            title="Once the tip is behind",
            question=(
                "The litter has passed the tip. How would you run the rest of this raise: what do "
                "you do with the track lines, how many do you need, and what do you watch?"
            ),
            points=(
                "Above the tip there is nothing to be held off from: ease the track lines and let "
                "the litter ride towards plumb, rather than haul it up the wall far out.",
                "The largest tension comes near the top, a short way below the directional, so "
                "the lines are eased well before that.",
                "The tensions are small all the way: one line is enough for the load on it, "
                "unless a second one is wanted as a backup.",
                "Low down the haul leg is long: the litter swings sideways easily and a small pull "
                "moves it far, so somebody watches it past the tip.",
                "The line is taken in nearly as fast as the litter rises, so the tensioner team "
                "has to keep up from the first metre.",
            ),
        ),
    ),
    lessons=(8, 9),
    cautions=(
        cautions.AUTHORITY,
        cautions.STATIC,
        cautions.FRICTIONLESS,
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
    ),
)
