"""The cells disagree: three readings, a known weight, and what can be concluded."""

from dataclasses import replace
from math import sin

from ropecalc import cautions
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import tensioner
from ropecalc.mechanics.manners import named
from ropecalc.teaching.questions.bank import forces, margins
from ropecalc.teaching.questions.bank import holding_off as off
from ropecalc.teaching.questions.bank import tensioner as lines
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.scenarios import places
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario
from ropecalc.units import STANDARD_GRAVITY

_HAUL = Given(q.HAUL_TENSION, 1.54, 1.70, 0.02, "kN")
_FAR = Given(named(q.READING, "far_reading", "reading of the far line"), 0.84, 0.92, 0.01, "kN")
_NEAR = Given(named(q.READING, "near_reading", "reading of the near line"), 0.68, 0.74, 0.01, "kN")
_UP = Given(q.HAUL_ELEVATION, 64, 68, 1, "°")
_DOWN = Given(q.GROUND_DEPRESSION, 33, 37, 1, "°")
_SCALE = Given(q.FULL_SCALE, 30, 50, 5, "kN")
_ERROR = Given(q.CELL_ERROR, 0.005, 0.015, 0.001, "")
_EFFICIENCY = Given(q.SHEAVE_EFFICIENCY, 0.86, 0.92, 0.01, "")
_TWO = Given(tensioner.LINES, 2, 2, 1, "")
_MASS = Given(q.MASS, 190, 215, 5, "kg")
_WEIGHED = Given(q.LOAD, 1.8, 2.2, 0.01, "kN")
_ALIKE = 0.06
_TRACK = Given(q.TRACK_TENSION, 1.5, 1.7, 0.01, "kN")


def _consistent(n: Values) -> bool:
    """Whether the readings balance what was weighed, to a few per cent."""
    track = n["far_reading"] + n["near_reading"]
    up, down = sin(n["haul_elevation"]), sin(n["ground_depression"])
    lifted = (n["haul_tension"] + track) * up - track * down
    return abs(lifted / (n["mass"] * STANDARD_GRAVITY) - 1) < _ALIKE


CELLS_DISAGREE = Scenario(
    key="cells-disagree",
    number=8,
    title="The cells disagree",
    story=(
        "The litter hangs still past an outcrop of the Upper Heron Wall in Tamarack Gorge. The "
        "haul cell reads {haul_tension}. Of the {lines} track lines in series the far one reads "
        "{far_reading}, the near one, next to the device, {near_reading}. The haul leg is "
        "{haul_elevation} above the horizontal, the ground legs are {ground_depression} below it. "
        "Each cell has a full scale of {full_scale} and may be off by a share of {cell_error} of "
        "that. The sheaves of the tensioner have an efficiency of {efficiency}. At the start the "
        "load was weighed: {mass}. Nobody wrote down which way the tensioner rope moved last."
    ),
    givens=(
        _HAUL,
        _FAR,
        _NEAR,
        _UP,
        _DOWN,
        _SCALE,
        _ERROR,
        _EFFICIENCY,
        _TWO,
        _MASS,
    ),
    parts=(
        Part(
            replace(
                margins.WEIGH,
                key="cells-disagree-weight-from-readings",
                title="What the readings say it weighs",
                stem=(
                    "The haul line shows {haul_tension}, the two track lines together "
                    "{track_tension}. The haul leg stands {haul_elevation} above the horizontal, "
                    "the ground legs go {ground_depression} below it; all come from one "
                    "directional. What would the load weigh?"
                ),
                givens=(_HAUL, _TRACK, _UP, _DOWN),
                must_pass=False,
            ),
            take={"track_tension": lambda n: n["far_reading"] + n["near_reading"]},
        ),
        Part(
            replace(
                lines.FAR_TO_NEAR,
                key="cells-disagree-ratio",
                title="If the last move had been in",
                stem=(
                    "Suppose that rope had been taken in last, on {lines} lines with sheaves of "
                    "efficiency {efficiency}. What would the far line carry over what the near "
                    "line carries?"
                ),
                givens=(_EFFICIENCY, _TWO),
                must_pass=False,
            ),
        ),
        Part(
            replace(
                forces.WEIGHT,
                key="cells-disagree-weight-from-mass",
                title="What it weighed at the start",
                stem="At the start {mass} were weighed. What force is that?",
                asked="Weight of the load",
                givens=(_MASS,),
                must_pass=False,
            ),
            gives=_WEIGHED,
        ),
        Part(
            replace(
                off.TRACK_TENSION,
                key="cells-disagree-from-geometry",
                title="What the place asks for",
                stem=(
                    "A load of {load} hangs with the haul leg at {haul_elevation} and the ground "
                    "legs at {ground_depression}. What would the track lines have to carry "
                    "together?"
                ),
                givens=(_WEIGHED, _UP, _DOWN),
                must_pass=False,
            ),
            after=("load",),
        ),
        Part(
            replace(
                places.without(margins.CELL_ERROR, "upside-down"),
                key="cells-disagree-error",
                title="How far the near cell may be off",
                stem=(
                    "A cell with a full scale of {full_scale} may be off by a share of "
                    "{cell_error} of that. In the near line it reads {reading}. By which share of "
                    "the reading may it be off?"
                ),
                givens=(_SCALE, _ERROR, Given(q.READING, 0.68, 0.74, 0.01, "kN")),
                must_pass=False,
            ),
            take={"reading": "near_reading"},
        ),
    ),
    judged=(
        Judged(
            key="cells-disagree-conclude",
            title="What may be concluded?",
            question=(
                "Put the results together: weight, ratio of the lines, the sum of the lines and "
                "the error of a cell. What may the team conclude from the cells, what not, and "
                "what would you do?"
            ),
            points=(
                "Within the error of the cells, weight and sum fit what was weighed and the "
                "geometry: nothing here speaks of a snag or of friction somewhere.",
                "The far line reads more than the near one, which is what letting out leaves "
                "behind; taking in would leave the opposite.",
                "The cells cannot prove it: at this range the error of each is as large as the "
                "difference between the lines.",
                "Smaller cells, or the same cells swapped between the lines, would tell; a reading "
                "that is averaged for longer helps only against noise.",
                "Nobody takes in or lets out to make the numbers alike: the lines are not "
                "corrected to match an error.",
                "From now on the last direction of the rope is written down with each reading.",
            ),
        ),
    ),
    lessons=(10, 11),
    usable=_consistent,
    cautions=(cautions.AUTHORITY, cautions.STATIC, cautions.COMMON_HUB),
)
