"""A whole raise in numbers: six stations, what governs, rope, margin and hub."""

from dataclasses import replace

from ropecalc import cautions
from ropecalc.mechanics import guiding, tensioner
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import tensioner_lines as lines_of
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.raise_limits import STATIONS
from ropecalc.teaching.questions.bank import along_the_raise as along
from ropecalc.teaching.questions.bank import holding_off as off
from ropecalc.teaching.questions.bank import margins, whole_raise
from ropecalc.teaching.questions.bank import tensioner as lines
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.scenarios import places
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario, Source

_GRIDS = (
    ((8.2, 9.0, 0.2), (1.0, 2.0, 0.5)),
    ((5.8, 6.2, 0.2), (9.0, 11.0, 0.5)),
    ((3.7, 4.1, 0.1), (17.0, 19.0, 0.5)),
    ((2.2, 2.4, 0.1), (24.5, 25.5, 0.5)),
    ((1.2, 1.4, 0.1), (29.0, 29.5, 0.5)),
    ((0.5, 0.6, 0.1), (31.0, 31.0, 0.5)),
)
"""Of each station the distance out and the height: lowest, highest, step, in metres."""


def _station(number: int) -> tuple[Given, Given]:
    out, up = _GRIDS[number - 1]
    return (
        Given(named(q.X, f"x_{number}", f"distance out at station {number}"), *out, "m"),
        Given(named(q.Z, f"z_{number}", f"height at station {number}"), *up, "m"),
    )


_PLACES = tuple(given for number in range(1, 7) for given in _station(number))
_LOAD = Given(q.LOAD, 1.4, 2.5, 0.1, "kN")
_EFFICIENCY = Given(q.SHEAVE_EFFICIENCY, 0.82, 0.92, 0.01, "")
_TWO = Given(tensioner.LINES, 2, 2, 1, "")
_LEAST = Given(lines_of.LEAST_PLAY, 1.0, 1.5, 0.5, "m")
_STRETCH = Given(tensioner.LINE_STRETCH, 0.8, 1.4, 0.2, "m")
_TAIL = Given(tensioner.ROPE_TAIL, 5, 7, 1, "m")
_STRENGTH = Given(q.COMPONENT_STRENGTH, 6, 10, 0.5, "kN")
_HIGHER = Given(q.LOAD_UNCERTAINTY, 0.2, 0.4, 0.05, "")
_WEAKER = Given(q.STRENGTH_UNCERTAINTY, 0.05, 0.15, 0.05, "")
_HUB_MASS = Given(q.HUB_MASS, 2000, 3000, 100, "kg")
_HUB_FRICTION = Given(q.HUB_FRICTION, 0.4, 0.6, 0.05, "")
_TOGETHER = Given(q.TRACK_TENSION, 0.6, 2.5, 0.01, "kN")
_TAKE_IN = Given(tensioner.TAKE_IN, 8, 18, 0.1, "m")
_WORST = Given(q.COMPONENT_LOAD, 0.3, 1.5, 0.01, "kN")
_Z_D = Given(q.Z_D, 32.0, 33.0, 0.5, "m")
_WALL = (places.X_D, _Z_D, places.X_B, places.Z_B)
_CLEARLY = 1.05
_ANGLES = (places.HAUL_ELEVATION, places.GROUND_DEPRESSION)
_MEASURED: dict[str, Source] = {
    "haul_elevation": places.haul_leg("x_5", "z_5"),
    "ground_depression": places.ground_leg("x_5", "z_5"),
}


def _fifth_governs(n: Values) -> bool:
    """Whether the lines together carry clearly most at the fifth station."""
    fixed = {name: n[name] for name in ("load", "x_D", "z_D", "x_B", "z_B")}
    tensions = [
        guiding.line_tension_from_places(x=n[f"x_{i}"], z=n[f"z_{i}"], **fixed) for i in range(1, 7)
    ]
    fifth = tensions.pop(4)
    return bool(fifth > _CLEARLY * max(tensions))


def _three_highest() -> tuple[Given, ...]:
    """The three highest stations under the names of the question's three."""
    found = []
    for (x, z), (across, up) in zip(STATIONS, _GRIDS[3:], strict=True):
        found += [Given(x, *across, "m"), Given(z, *up, "m")]
    return tuple(found)


def _from_start() -> tuple[Given, ...]:
    """The first and the last station under the names of the question's two."""
    found = []
    for (x, z), (across, up) in zip(STATIONS[:2], (_GRIDS[0], _GRIDS[5]), strict=True):
        found += [Given(x, *across, "m"), Given(z, *up, "m")]
    return tuple(found)


RAISE_IN_NUMBERS = Scenario(
    key="whole-raise-in-numbers",
    number=10,
    title="A whole raise in numbers",
    story=(
        "You plan a raise on the Upper Heron Wall in Tamarack Gorge. The survey gives six stations "
        "for the master attachment point: {x_1} out at {z_1}, {x_2} out at {z_2}, {x_3} out at "
        "{z_3}, {x_4} out at {z_4}, {x_5} out at {z_5}, and {x_6} out at {z_6}. Haul and track "
        "directional are {x_D} out and {z_D} up, the hub is {x_B} out and {z_B} up; the load "
        "weighs {load}. {lines} track lines run in series on sheaves of efficiency {efficiency}. "
        "For the tensioner you want {least_play} of least distance from the hub, {line_stretch} "
        "for the stretch and {tail} of tail. The weakest part of a line holds {strength}, perhaps "
        "less by a share of {strength_uncertainty}; the load may be higher by a share of "
        "{load_uncertainty}. The hub is a vehicle of {hub_mass} on level ground with a coefficient "
        "of friction of {hub_friction}."
    ),
    givens=(
        *_PLACES,
        _LOAD,
        *_WALL,
        _TWO,
        _EFFICIENCY,
        _LEAST,
        _STRETCH,
        _TAIL,
        _STRENGTH,
        _WEAKER,
        _HIGHER,
        _HUB_MASS,
        _HUB_FRICTION,
    ),
    parts=(
        Part(
            replace(
                places.without(whole_raise.GOVERNING, "highest-station"),
                key="whole-raise-governing",
                title="What governs",
                stem=(
                    "The three highest stations are {x_1} out at {z_1}, {x_2} out at {z_2} and "
                    "{x_3} out at {z_3}; further down the tension is smaller. Haul and track "
                    "directional are {x_D} out and {z_D} up, the hub is {x_B} out and {z_B} up, "
                    "the load weighs {load}. What is the largest tension that the track lines "
                    "together reach?"
                ),
                givens=(places.LOAD, *_three_highest(), *_WALL),
                usable=lambda _: True,
            ),
            take={f"{axis}_{n}": f"{axis}_{n + 3}" for axis in "xz" for n in (1, 2, 3)},
            gives=_TOGETHER,
        ),
        Part(
            replace(
                off.HAUL_BESIDE_TRACK,
                key="whole-raise-haul-line",
                title="The haul line there",
                stem=(
                    "At the fifth station the haul leg is {haul_elevation} above the horizontal, "
                    "the ground legs are {ground_depression} below it, the load weighs {load}. "
                    "What tension is in the haul line?"
                ),
                givens=(places.LOAD, *_ANGLES),
                must_pass=False,
            ),
            take=_MEASURED,
        ),
        Part(
            replace(
                along.PLAY,
                key="whole-raise-play",
                title="Rope of each line",
                stem=(
                    "From the first station, {x_1} out at {z_1}, to the last, {x_2} out at {z_2}: "
                    "how much of each track line is taken in? The directional is {x_A} out and "
                    "{z_A} up, the hub {x_B} out and {z_B} up."
                ),
                givens=(
                    *_from_start(),
                    Given(q.X_A, 0.2, 0.4, 0.1, "m"),
                    Given(q.Z_A, 32.0, 33.0, 0.5, "m"),
                    places.X_B,
                    places.Z_B,
                ),
                must_pass=False,
            ),
            take={"x_2": "x_6", "z_2": "z_6", "x_A": "x_D", "z_A": "z_D"},
            gives=_TAKE_IN,
        ),
        Part(
            replace(
                lines.ROPE_LENGTH,
                key="whole-raise-tensioner-rope",
                title="The tensioner rope",
                stem=(
                    "Each of {lines} lines comes in by {take_in} for the geometry and by "
                    "{line_stretch} for the stretch, a travelling pulley stays {least_play} from "
                    "the hub, and {tail} of tail are wanted. How long must the tensioner rope be?"
                ),
                givens=(_TWO, _LEAST, _TAKE_IN, _STRETCH, _TAIL),
                must_pass=False,
            ),
            after=("take_in",),
        ),
        Part(
            replace(
                lines.MOST_LOADED,
                key="whole-raise-worst-line",
                title="The most loaded line",
                stem=(
                    "At the governing station {lines} lines in series carry {track_tension} "
                    "together and have just been pulled in; every sheave has an efficiency of "
                    "{efficiency}. What does the most loaded line carry?"
                ),
                givens=(_TOGETHER, _EFFICIENCY, _TWO),
                must_pass=False,
            ),
            after=("track_tension",),
            gives=_WORST,
        ),
        Part(
            replace(
                places.without(whole_raise.HONEST_MARGIN, "share-taken-off-the-margin"),
                key="whole-raise-margin",
                title="A margin that can be stated",
                stem=(
                    "The weakest part of that line holds {strength}, perhaps less by a share of "
                    "{strength_uncertainty}. It carries {component_load}, perhaps more by a share "
                    "of {load_uncertainty}. What margin can be stated?"
                ),
                givens=(_STRENGTH, _WORST, _HIGHER, _WEAKER),
                must_pass=False,
            ),
            after=("component_load",),
        ),
        Part(
            replace(
                along.HUB_UPLIFT,
                key="whole-raise-uplift",
                title="What lifts the hub",
                stem=(
                    "At the governing station the lines pull with {line_tension} and arrive at the "
                    "hub rising {ground_depression} above the horizontal. With what upward force "
                    "do they pull there?"
                ),
                givens=(
                    Given(q.LINE_TENSION, 0.6, 2.5, 0.01, "kN"),
                    places.GROUND_DEPRESSION,
                ),
                must_pass=False,
            ),
            take={"line_tension": "track_tension", **_MEASURED},
            after=("track_tension",),
        ),
        Part(
            replace(
                margins.HUB_SLIDES,
                key="whole-raise-hub-slides",
                title="When the hub would slide",
                stem=(
                    "The vehicle of {hub_mass} stands on level ground with a coefficient of "
                    "friction of {hub_friction}; nothing else holds it. The lines rise "
                    "{ground_depression} above the horizontal at the hub. At which tension of all "
                    "lines together does it begin to slide?"
                ),
                givens=(_HUB_MASS, _HUB_FRICTION, places.GROUND_DEPRESSION),
                must_pass=False,
            ),
            take=_MEASURED,
        ),
    ),
    judged=(
        Judged(
            key="whole-raise-plan",
            title="The plan",
            question=(
                "Write the plan for this raise on one page: who does what at which station, what "
                "each cell may read before the haul stops, and what happens if something goes "
                "wrong."
            ),
            points=(
                "It names the governing station with its tension, and says where the lines are "
                "eased because the litter comes close below the directional.",
                "It gives each cell a value at which the haul stops, with the margin and what is "
                "not known counted, and says who reads it.",
                "It says for each stretch whether track rope comes in, and how much, and it shows "
                "that tensioner rope and haul rope are long enough.",
                "It says what holds the hub and compares that with the largest pull and its upward "
                "part, not only with the weight of the vehicle.",
                "It has an answer for a snag, a line that slips or goes, a device that jams, and "
                "the loss of the haul line, each with a person and a first step.",
                "The briefing has roles, commands and a stop that anybody may call, and names the "
                "authority whose rules apply.",
            ),
        ),
    ),
    lessons=(9, 10, 11, 12),
    usable=_fifth_governs,
    cautions=(
        cautions.AUTHORITY,
        cautions.STATIC,
        cautions.FRICTIONLESS,
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
    ),
)
