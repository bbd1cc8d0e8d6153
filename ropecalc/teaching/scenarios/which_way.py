"""Which way will it fall? The head of a frame with haul and track lines, litter high and low."""

from dataclasses import replace
from math import pi

from ropecalc import cautions
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.teaching.questions.bank import high_directional as head
from ropecalc.teaching.questions.bank import holding_off as off
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.scenarios import places
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario, Source

_X = Given(q.X, 2.2, 2.8, 0.1, "m")
_Z_HIGH = Given(named(q.Z, "z_high", "height of the litter's high place"), 26, 28, 0.5, "m")
_Z_LOW = Given(named(q.Z, "z_low", "height of the litter's low place"), 1.5, 3, 0.5, "m")
_Z_NEAR = Given(named(q.Z, "z_near", "height close below the head"), 30.8, 31.1, 0.1, "m")
_LOAD = Given(q.LOAD, 1.4, 2.5, 0.1, "kN")
_BACK = Given(q.BACK_DEPRESSION, 24, 32, 1, "°")
_HEIGHT = Given(q.HEAD_HEIGHT, 1.8, 2.4, 0.1, "m")
_REACH = Given(q.HEAD_REACH, 0.2, 0.4, 0.1, "m")
_LEAN = Given(q.LEAN, 10, 35, 0.1, "°")
_LEAN_LOW = Given(named(q.LEAN, "lean_low", "lean with the litter low"), 20, 40, 0.1, "°")
_HAUL = Given(q.HAUL_TENSION, 0.8, 2.4, 0.01, "kN")
_FRONT = Given(q.FRONT_DEPRESSION, 50, 89, 0.1, "°")
_WALL = (places.X_D, places.Z_D, places.X_B, places.Z_B)


def _between_strands(n: Values) -> float:
    """From the front strand, down and outward, to the back strand, down and inward."""
    return pi - places.haul_leg(z="z_high")(n) - n["back_depression"]


def _asks_too_much(n: Values) -> bool:
    """Whether close below the head the litter would have to hang beyond the straight line."""
    run = (n["x_B"] - n["x_D"]) / (n["z_D"] - n["z_B"]) * (n["z_D"] - n["z_near"])
    return n["x_D"] + run < n["x"]


_MEASURED: dict[str, Source] = {
    "haul_elevation": places.haul_leg(z="z_high"),
    "ground_depression": places.ground_leg(z="z_high"),
}
_ANGLES = (places.HAUL_ELEVATION, places.GROUND_DEPRESSION)

WHICH_WAY = Scenario(
    key="which-way-it-falls",
    number=6,
    title="Which way will it fall?",
    story=(
        "A frame stands at the edge of the Upper Heron Wall in Tamarack Gorge. Its head is "
        "{head_height} above the ground and reaches {head_reach} out past the front feet. Haul "
        "line and track lines run over it and back to their anchors, {back_depression} below the "
        "horizontal. On the cross-section of the wall the head is {x_D} out and {z_D} up, the hub "
        "{x_B} out and {z_B} up. The load weighs {load} and is held {x} out all the way, from "
        "{z_low} to {z_high}. Somebody asks to hold it just as far out at {z_near}."
    ),
    givens=(_X, _Z_LOW, _Z_HIGH, _Z_NEAR, _LOAD, _BACK, _HEIGHT, _REACH, *_WALL),
    parts=(
        Part(
            replace(
                places.without(head.HEAD_WITH_TRACK, "twice-the-weight"),
                key="which-way-pull-on-the-head",
                title="All lines in one head",
                stem=(
                    "At the high place haul line and track lines rise together at {haul_elevation} "
                    "to the head and run back from it at {back_depression} below the horizontal; "
                    "the ground legs fall {ground_depression} at the litter. The load weighs "
                    "{load}. How hard is the head pulled?"
                ),
                givens=(places.LOAD, *_ANGLES, _BACK),
                must_pass=False,
            ),
            take=_MEASURED,
        ),
        Part(
            replace(
                head.LEAN,
                key="which-way-lean-high",
                title="Which way, with the litter high",
                stem=(
                    "With the litter at the high place all front strands fall {front_depression} "
                    "below the horizontal at the head, all back strands {back_depression}. How far "
                    "from plumb does the pull on the head lean? Inward, towards the anchors, "
                    "counts as positive."
                ),
                givens=(_FRONT, _BACK),
                must_pass=False,
            ),
            take={"front_depression": places.haul_leg(z="z_high")},
            gives=_LEAN,
        ),
        Part(
            replace(
                head.LANDING,
                key="which-way-lands-high",
                title="Where that pull lands",
                stem=(
                    "The head is {head_height} above the ground and {head_reach} out past the "
                    "front feet, and the pull on it leans {lean} inward. How far behind the front "
                    "feet does its line of action meet the ground?"
                ),
                givens=(_HEIGHT, _REACH, _LEAN),
                must_pass=False,
            ),
            after=("lean",),
        ),
        Part(
            replace(
                head.LEAN,
                key="which-way-lean-low",
                title="Which way, with the litter low",
                stem=(
                    "With the litter at the low place the front strands fall {front_depression} "
                    "below the horizontal at the head; the back strands stay at {back_depression}. "
                    "How far from plumb does the pull lean now, inward positive?"
                ),
                givens=(_FRONT, _BACK),
                must_pass=False,
            ),
            take={"front_depression": places.haul_leg(z="z_low")},
            gives=_LEAN_LOW,
        ),
        Part(
            replace(
                head.LANDING,
                key="which-way-lands-low",
                title="Where that pull lands",
                stem=(
                    "The head is {head_height} above the ground and {head_reach} out past the "
                    "front feet, and with the litter low the pull leans {lean} inward. How far "
                    "behind the front feet does it meet the ground now?"
                ),
                givens=(_HEIGHT, _REACH, Given(q.LEAN, 20, 40, 0.1, "°")),
                must_pass=False,
            ),
            take={"lean": "lean_low"},
            after=("lean_low",),
        ),
        Part(
            replace(
                off.HAUL_BESIDE_TRACK,
                key="which-way-haul-line",
                title="The haul line alone",
                stem=(
                    "At the high place, with the haul leg at {haul_elevation}, the ground legs at "
                    "{ground_depression} and a load of {load}: what tension is in the haul line "
                    "beside the track lines?"
                ),
                givens=(places.LOAD, *_ANGLES),
                must_pass=False,
            ),
            take=_MEASURED,
            gives=_HAUL,
        ),
        Part(
            replace(
                places.without(head.REDIRECT, "sine-for-cosine"),
                key="which-way-track-lines-forgotten",
                title="If the track lines are forgotten",
                stem=(
                    "Somebody counts only the haul line, which carries {strand_tension} and turns "
                    "at the head with {strand_angle} between its strands. What pull on the head do "
                    "they find?"
                ),
                asked="Pull on the head from the haul line alone",
                givens=(
                    Given(q.STRAND_TENSION, 0.8, 2.4, 0.01, "kN"),
                    Given(q.STRAND_ANGLE, 60, 110, 0.1, "°"),
                ),
                must_pass=False,
            ),
            take={"strand_tension": "haul_tension", "strand_angle": _between_strands},
            after=("haul_tension",),
        ),
        Part(
            replace(
                places.without(off.OUT_OF_REACH, "measured-from-the-hub"),
                key="which-way-out-of-reach",
                title="Close below the head",
                stem=(
                    "At a height of {z}, with the head {x_D} out and {z_D} up and the hub {x_B} "
                    "out and {z_B} up: how far out from the wall is the point that no tension can "
                    "reach?"
                ),
                givens=(Given(q.Z, 30.8, 31.1, 0.1, "m"), *_WALL),
                must_pass=False,
            ),
            take={"z": "z_near"},
        ),
    ),
    judged=(
        Judged(
            key="which-way-guys",
            title="Guys and feet",
            question=(
                "How would you set up and hold this frame, and for which moment of the raise is "
                "each measure? What do you answer the one who wants the litter held out close "
                "below the head?"
            ),
            points=(
                "The pull leans inward all the way and most while the litter is low, so the frame "
                "wants to fall backward, towards the anchors, and not over the edge.",
                "Lean the frame or move its back feet so that the line of action lands well inside "
                "the feet, also with the litter low, and keep the feet from sliding.",
                "A front guy holds against falling backward only if there is something in front "
                "to anchor it to; a back guy holds against falling forward, near the lip and when "
                "people pull the litter in.",
                "The head carries the track lines as well as the haul line; who counts the haul "
                "line alone misses a third of the pull or more.",
                "Close below the head no tension holds the litter that far out: ease the track "
                "lines before, and change the method there.",
                "What the head gets when the belay catches is a case of its own, with another "
                "direction, and is looked at by itself.",
            ),
        ),
    ),
    lessons=(3, 8),
    usable=_asks_too_much,
    cautions=(
        cautions.AUTHORITY,
        cautions.STATIC,
        cautions.FRICTIONLESS,
        cautions.NEAR_DIRECTIONAL,
    ),
)
