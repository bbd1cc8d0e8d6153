"""One line goes: what the loss of one of two lines in series does, and of all of them."""

from dataclasses import replace
from math import hypot

from ropecalc import cautions
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import swing, tensioner
from ropecalc.mechanics.manners import named
from ropecalc.teaching.questions.bank import holding_off as off
from ropecalc.teaching.questions.bank import margins
from ropecalc.teaching.questions.bank import tensioner as lines
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.scenarios import places
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario, Source

_X = Given(q.X, 2.2, 2.8, 0.1, "m")
_Z = Given(q.Z, 26, 28, 0.5, "m")
_Z_LOW = Given(named(q.Z, "z_low", "height of the low place"), 5, 8, 1, "m")
_LOAD = Given(q.LOAD, 1.4, 2.5, 0.1, "kN")
_EFFICIENCY = Given(q.SHEAVE_EFFICIENCY, 0.80, 0.92, 0.01, "")
_TWO = Given(tensioner.LINES, 2, 2, 1, "")
_PLAY = Given(q.PLAY, 2, 4, 0.5, "m")
_SLIP = Given(q.SLIP, 0.15, 0.30, 0.05, "m")
_TOGETHER = Given(q.TRACK_TENSION, 0.6, 3.5, 0.01, "kN")
_LEG = Given(q.HAUL_LEG_LENGTH, 3.5, 7.5, 0.01, "m")
_LONG_LEG = Given(q.HAUL_LEG_LENGTH, 22, 30, 0.01, "m")
_OFF = Given(q.OFF_PLUMB, 1.5, 2.8, 0.1, "m")
_WALL = (places.X_D, places.Z_D, places.X_B, places.Z_B)
_ANGLES = (places.HAUL_ELEVATION, places.GROUND_DEPRESSION)


def _off_plumb(n: Values) -> float:
    return n["x"] - n["x_D"]


def _leg(n: Values) -> float:
    return hypot(_off_plumb(n), n["z_D"] - n["z"])


def _low_leg(n: Values) -> float:
    return hypot(_off_plumb(n), n["z_D"] - n["z_low"])


_HIGH: dict[str, Source] = {"off_plumb": _off_plumb, "haul_leg_length": _leg}
_LOW: dict[str, Source] = {"off_plumb": _off_plumb, "haul_leg_length": _low_leg}
_MEASURED: dict[str, Source] = {
    "haul_elevation": places.haul_leg(),
    "ground_depression": places.ground_leg(),
}

ONE_LINE_GOES = Scenario(
    key="one-line-goes",
    number=9,
    title="One line goes",
    story=(
        "Past a high outcrop of the Upper Heron Wall in Tamarack Gorge the master attachment point "
        "is held {x} out at {z}. Haul and track directional are {x_D} out and {z_D} up, the hub "
        "{x_B} out and {z_B} up, the load weighs {load}. On sheaves of efficiency {efficiency} "
        "{lines} track lines in series have just been pulled in; their travelling pulleys are "
        "{play} from the hub. The tails of the lines are tied back with {slip} of slack. You ask "
        "what happens if one line goes, or all; and also how it would be low down, at {z_low}."
    ),
    givens=(_X, _Z, _Z_LOW, _LOAD, _EFFICIENCY, _TWO, _PLAY, _SLIP, *_WALL),
    parts=(
        Part(
            replace(
                places.without(off.TRACK_TENSION, "angles-added"),
                key="one-line-goes-together",
                title="Before: the lines together",
                stem=(
                    "The haul leg is {haul_elevation} above the horizontal, the ground legs are "
                    "{ground_depression} below it, the load weighs {load}. What do the track lines "
                    "carry together?"
                ),
                givens=(places.LOAD, *_ANGLES),
            ),
            take=_MEASURED,
            gives=_TOGETHER,
        ),
        Part(
            replace(
                lines.MOST_LOADED,
                key="one-line-goes-worst",
                title="Before: the most loaded line",
                stem=(
                    "{lines} lines in series carry {track_tension} together and have just been "
                    "pulled in; every sheave has an efficiency of {efficiency}. What does the most "
                    "loaded one carry?"
                ),
                givens=(_TOGETHER, _EFFICIENCY, _TWO),
                must_pass=False,
            ),
            after=("track_tension",),
        ),
        Part(
            replace(
                lines.LOST_LINE,
                key="one-line-goes-slack",
                title="One line goes: the slack",
                stem=(
                    "Of {lines} lines in series one parts while its travelling pulley is {play} "
                    "from the hub; the device stays locked. How much slack does the other line "
                    "gain?"
                ),
                givens=(_PLAY, _TWO),
                must_pass=False,
            ),
        ),
        Part(
            replace(
                margins.SWING_FALL,
                key="one-line-goes-fall",
                title="All slack: how far it falls",
                stem=(
                    "That slack is more than the litter needs to swing to plumb. It is held "
                    "{off_plumb} off plumb on {haul_leg_length} of haul line. How much height does "
                    "it lose on the way?"
                ),
                givens=(_LEG, _OFF),
                must_pass=False,
            ),
            take=_HIGH,
        ),
        Part(
            replace(
                margins.SWING_SPEED,
                key="one-line-goes-speed",
                title="All slack: how fast it is",
                stem=(
                    "How fast is the litter when it comes to plumb, if it started {off_plumb} off "
                    "plumb on {haul_leg_length} of haul line?"
                ),
                givens=(_LEG, _OFF),
                must_pass=False,
            ),
            take=_HIGH,
        ),
        Part(
            replace(
                margins.SWING_PEAK,
                key="one-line-goes-peak",
                title="All slack: the haul line",
                stem=(
                    "What does the haul line carry when the load of {load} comes to plumb, having "
                    "started {off_plumb} off plumb on {haul_leg_length} of haul line?"
                ),
                givens=(places.LOAD, _LEG, _OFF),
                must_pass=False,
            ),
            take=_HIGH,
        ),
        Part(
            replace(
                margins.SWING_SPEED,
                key="one-line-goes-speed-low",
                title="The same low down",
                stem=(
                    "Low down the litter is just as far off plumb, {off_plumb}, on "
                    "{haul_leg_length} of haul line. How fast is it at plumb there?"
                ),
                givens=(_LONG_LEG, _OFF),
                must_pass=False,
            ),
            take=_LOW,
        ),
        Part(
            replace(
                margins.SMALL_SLIP,
                key="one-line-goes-tied-back",
                title="With the tails tied back",
                stem=(
                    "The tails are tied back: only {slip} of rope runs into the ground legs, and "
                    "then the tails hold. The haul leg stands {haul_elevation} above the "
                    "horizontal, the ground legs go {ground_depression} below it. About how far "
                    "does the litter move along its arc?"
                ),
                givens=(_SLIP, *_ANGLES),
                must_pass=False,
            ),
            take=_MEASURED,
        ),
    ),
    judged=(
        Judged(
            key="one-line-goes-design",
            title="Series, independent, or tied back?",
            question=(
                "Compare this tensioner with two that are independent of each other, and say how "
                "you would tie back the tails. What does each solution cost?"
            ),
            points=(
                "In series the loss of one line gives the other slack of the whole play: it is no "
                "backup, and the litter swings in.",
                "With independent tensioners the other line stays tight and takes over the whole "
                "tension; the litter moves only as far as that line stretches.",
                "Independent tensioners cost two devices and two operators, and their tensions "
                "have to be matched by hand and by cell.",
                "Tails are tied back to an anchor that does not depend on the tensioner, with as "
                "little slack as the work allows, and retied as the lines come in.",
                "Even a short slack moves the litter farther than its own length, because the legs "
                "are near a straight line, and stretch adds to it.",
                "Low down the same distance off plumb does far less: what is protected, and how, "
                "may differ along the raise.",
            ),
        ),
    ),
    lessons=(10, 11),
    cautions=(
        cautions.AUTHORITY,
        cautions.STATIC,
        swing.MOVING,
        cautions.REHEARSE,
        tensioner.NO_BACKUP,
    ),
)
