"""An outcrop near the top: what it asks of the lines, and what each remedy is worth."""

from dataclasses import replace
from math import radians

from sympy import asin, atan

from ropecalc import cautions
from ropecalc.mechanics import leg_angles, tensioner, two_stations
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.teaching.questions.bank import along_the_raise as along
from ropecalc.teaching.questions.bank import holding_off as off
from ropecalc.teaching.questions.bank import tensioner as lines
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance
from ropecalc.teaching.scenarios import places
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario

_X = Given(q.X, 2.2, 2.8, 0.1, "m")
_Z = Given(q.Z, 26, 28, 0.5, "m")
_LOAD = Given(q.LOAD, 1.4, 2.5, 0.1, "kN")
_MOVED = Given(two_stations.MOVED_OUT, 0.4, 0.6, 0.1, "m")
_TWO = Given(tensioner.LINES, 2, 2, 1, "")
_EFFICIENCY = Given(q.SHEAVE_EFFICIENCY, 0.8, 0.95, 0.01, "")
_FAR_HUB = Given(
    named(q.X_B, "x_B_far", "distance of the far hub out from the wall"), 55, 65, 1, "m"
)
_TOGETHER = Given(q.TRACK_TENSION, 0.8, 3.0, 0.01, "kN")
_HALF_DEGREE = Tolerance(absolute=radians(0.5))
_WHERE = (_X, _Z, places.X_D, places.Z_D, places.X_B, places.Z_B)
_ANGLES = (places.HAUL_ELEVATION, places.GROUND_DEPRESSION)
_CARRIED = ("haul_elevation", "ground_depression")
_FAR_HUB_MISTAKES = (
    replace(
        off.TAG_FROM_PLACES.mistake("ground-leg-level"),
        title="The ground legs treated as level",
        why="They run down to the hub and pull the litter down too: that takes more tension.",
    ),
    off.TAG_FROM_PLACES.mistake("slopes-added"),
    replace(
        off.TAG_FROM_PLACES.mistake("ratio-upside-down"),
        why="A steep haul leg needs little to hold it off; the steeper it is, the smaller the "
        "tension of the track lines.",
    ),
)

_HAUL_LEG = Template(
    key="high-outcrop-haul-leg",
    title="The haul leg's angle",
    stem=(
        "The master attachment point is {x} out and {z} up, the haul directional {x_D} out and "
        "{z_D} up. At what angle above the horizontal does the haul leg rise from the litter?"
    ),
    asked="Haul leg, above the horizontal",
    givens=(_X, _Z, places.X_D, places.Z_D),
    derivation=leg_angles.haul_elevation,
    tolerance=_HALF_DEGREE,
    mistakes=(
        Mistake(
            "measured-from-plumb",
            "The angle from plumb instead of from the horizontal",
            "Rise over run gives the angle above the horizontal; run over rise that from plumb.",
            lambda v: atan((v.x - v.x_D) / (v.z_D - v.z)),
        ),
        Mistake(
            "run-from-the-wall",
            "The run measured from the wall",
            "The haul leg ends at the directional, which stands out from the wall itself.",
            lambda v: atan((v.z_D - v.z) / v.x),
        ),
        Mistake(
            "rise-from-the-ground",
            "The height above the ground taken for the rise",
            "The leg rises from the litter to the directional: take the difference of the two.",
            lambda v: atan(v.z / (v.x - v.x_D)),
        ),
    ),
    difficulty=1,
    objective="find a leg's angle from measured places",
)

_GROUND_LEG = Template(
    key="high-outcrop-ground-leg",
    title="The ground leg's angle",
    stem=(
        "The hub is {x_B} out and {z_B} up, the master attachment point {x} out and {z} up. At "
        "what angle below the horizontal does the ground leg fall from the litter?"
    ),
    asked="Ground leg, below the horizontal",
    givens=(_X, _Z, places.X_B, places.Z_B),
    derivation=leg_angles.ground_depression,
    tolerance=_HALF_DEGREE,
    mistakes=(
        Mistake(
            "measured-from-plumb",
            "The angle from plumb instead of from the horizontal",
            "Fall over run gives the angle below the horizontal; run over fall that from plumb.",
            lambda v: atan((v.x_B - v.x) / (v.z - v.z_B)),
        ),
        Mistake(
            "run-from-the-wall",
            "The run measured from the wall",
            "The ground leg begins at the litter, which already is out from the wall.",
            lambda v: atan((v.z - v.z_B) / v.x_B),
        ),
        Mistake(
            "sine-for-tangent",
            "The sine used instead of the tangent",
            "Fall and run are the two short sides of the triangle: their ratio is the tangent.",
            lambda v: asin((v.z - v.z_B) / (v.x_B - v.x)),
        ),
    ),
    difficulty=1,
    objective="find a leg's angle from measured places",
)

HIGH_OUTCROP = Scenario(
    key="high-outcrop",
    number=3,
    title="An outcrop near the top",
    story=(
        "On the Upper Heron Wall in Tamarack Gorge an outcrop near the top forces the master "
        "attachment point {x} out at a height of {z}. Haul and track directional are {x_D} out and "
        "{z_D} up, the hub is {x_B} out and {z_B} up, and the load weighs {load}. The team "
        "talks about four remedies: to set the directional {moved_out} further out, to add a "
        "second line in series on sheaves of efficiency {efficiency}, to use a hub {x_B_far} out, "
        "or to come closer in with the hub."
    ),
    givens=(*_WHERE, _LOAD, _MOVED, _EFFICIENCY, _FAR_HUB),
    parts=(
        Part(_HAUL_LEG, gives=places.HAUL_ELEVATION),
        Part(_GROUND_LEG, gives=places.GROUND_DEPRESSION),
        Part(
            replace(
                places.BETWEEN,
                key="high-outcrop-angle-between",
                title="The angle between the legs",
                stem=(
                    "The haul leg rises {haul_elevation} above the horizontal, back towards the "
                    "wall, and the ground leg falls {ground_depression} below it, out towards the "
                    "hub. What angle do they make at the litter?"
                ),
                givens=_ANGLES,
            ),
            after=_CARRIED,
        ),
        Part(
            replace(
                places.without(off.TRACK_TENSION, "angles-added"),
                key="high-outcrop-track-lines",
                title="The track lines together",
                stem=(
                    "With the haul leg at {haul_elevation} and the ground legs at "
                    "{ground_depression}, what tension must the track lines carry together to hold "
                    "{load} there?"
                ),
                givens=(places.LOAD, *_ANGLES),
                must_pass=False,
            ),
            after=_CARRIED,
            gives=_TOGETHER,
        ),
        Part(
            replace(
                off.HAUL_AGAINST_TAG,
                key="high-outcrop-haul-against-tag",
                title="The haul line, if it were a tag line",
                stem=(
                    "A tag line to the same hub would make the same angles: the haul leg "
                    "{haul_elevation}, the tag line {ground_depression}. What would the haul line "
                    "have to carry with the load of {load}?"
                ),
                asked="Tension of the haul line against a tag line",
                givens=(places.LOAD, *_ANGLES),
                must_pass=False,
            ),
            after=_CARRIED,
        ),
        Part(
            replace(
                off.HAUL_BESIDE_TRACK,
                key="high-outcrop-haul-beside-track",
                title="The haul line beside the track lines",
                stem=(
                    "Back to the track lines. The haul leg is at {haul_elevation}, the ground legs "
                    "are at {ground_depression}, the load weighs {load}. What is left for the haul "
                    "line?"
                ),
                asked="Tension of the haul line beside track lines",
                givens=(places.LOAD, *_ANGLES),
                must_pass=False,
            ),
            after=_CARRIED,
        ),
        Part(
            replace(
                along.DIRECTIONAL_OUT,
                key="high-outcrop-directional-out",
                title="Remedy 1: the directional further out",
                stem=(
                    "The directional is set {moved_out} further out than {x_D}; its height stays "
                    "{z_D}. The litter is {x} out and {z} up and weighs {load}, the hub is {x_B} "
                    "out and {z_B} up. What do the track lines carry together then?"
                ),
                givens=(places.LOAD, *_WHERE, _MOVED),
                must_pass=False,
            ),
        ),
        Part(
            replace(
                lines.MOST_LOADED,
                key="high-outcrop-second-line",
                title="Remedy 2: a second line in series",
                stem=(
                    "Nothing is moved, but {lines} lines in series now carry {track_tension} "
                    "together. They have just been pulled in over sheaves of efficiency "
                    "{efficiency}. What does the most loaded line carry?"
                ),
                givens=(_TOGETHER, _EFFICIENCY, _TWO),
                must_pass=False,
            ),
            take={"lines": lambda n: 2.0},
            after=("track_tension",),
        ),
        Part(
            replace(
                off.TAG_FROM_PLACES,
                key="high-outcrop-far-hub",
                title="Remedy 3: a hub further out",
                stem=(
                    "The hub is moved {x_B} out from the wall, at the same height of {z_B}. The "
                    "litter stays {x} out and {z} up, the directional {x_D} out and {z_D} up, the "
                    "weight {load}. What do the track lines carry together now?"
                ),
                asked="Tension of the track lines together with the far hub",
                mistakes=_FAR_HUB_MISTAKES,
                givens=(
                    places.LOAD,
                    _X,
                    _Z,
                    places.X_D,
                    places.Z_D,
                    Given(q.X_B, 55, 65, 1, "m"),
                    places.Z_B,
                ),
                must_pass=False,
            ),
            take={"x_B": "x_B_far"},
        ),
        Part(
            replace(
                along.HUB_TOO_CLOSE,
                key="high-outcrop-nearest-hub",
                title="Remedy 4: a hub closer in?",
                stem=(
                    "Somebody wants the hub closer to the wall, at the same height of {z_B}. With "
                    "the litter {x} out and {z} up and the directional {x_D} out and {z_D} up, at "
                    "which distance would hub, litter and directional be on one straight line?"
                ),
                givens=(_X, _Z, places.X_D, places.Z_D, places.Z_B),
                must_pass=False,
            ),
        ),
    ),
    judged=(
        Judged(
            key="high-outcrop-rank",
            title="Three rankings",
            question=(
                "Rank the remedies three times: by the most loaded line, by what the hub has to "
                "hold, and by the pull on the head. Which would you choose here, and what would "
                "you have to know first?"
            ),
            points=(
                "A second line in series spares each line but not the hub and not the head: they "
                "carry the same sum as before.",
                "A directional further out makes line, hub and head all smaller, and it is the "
                "only remedy that does so where the rock is; it asks for a frame that can stand "
                "there.",
                "A hub further out makes line and hub smaller and pulls it less upward; it takes "
                "more rope, and there must be an anchor.",
                "A hub closer in makes everything larger, without limit towards the straight line.",
                "Close to the directional small errors of position change every number, so the "
                "places are measured before any remedy is chosen.",
            ),
        ),
    ),
    lessons=(8, 9, 10),
    cautions=(
        cautions.AUTHORITY,
        cautions.STATIC,
        cautions.FRICTIONLESS,
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
    ),
)
