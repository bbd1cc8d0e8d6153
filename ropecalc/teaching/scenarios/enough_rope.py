"""Enough rope? The lengths of a whole raise, for the lines and for the tensioner."""

from dataclasses import replace

from sympy import sqrt

from ropecalc import cautions
from ropecalc.mechanics import guiding, tensioner
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import tensioner_lines as lines_of
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.raise_limits import STATIONS
from ropecalc.teaching.questions.bank import along_the_raise as along
from ropecalc.teaching.questions.bank import margins
from ropecalc.teaching.questions.bank import tensioner as bank
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance
from ropecalc.teaching.scenarios import places
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario

(_X1, _Z1), (_X2, _Z2), (_X3, _Z3) = STATIONS
_START = (Given(_X1, 7.4, 8.2, 0.2, "m"), Given(_Z1, 0.5, 1.5, 0.5, "m"))
_MIDDLE = (Given(_X2, 1.8, 2.2, 0.1, "m"), Given(_Z2, 24, 26, 0.5, "m"))
_END = (Given(_X3, 0.7, 0.9, 0.1, "m"), Given(_Z3, 29.5, 30.5, 0.5, "m"))
_AT_END = (Given(_X2, 0.7, 0.9, 0.1, "m"), Given(_Z2, 29.5, 30.5, 0.5, "m"))
_FROM = (Given(q.X_A, 0.2, 0.4, 0.1, "m"), Given(q.Z_A, 32.0, 33.0, 0.5, "m"))
_HUB = (places.X_B, places.Z_B)
_TWO = Given(tensioner.LINES, 2, 2, 1, "")
_LEAST = Given(lines_of.LEAST_PLAY, 1.0, 1.5, 0.5, "m")
_TAIL = Given(tensioner.ROPE_TAIL, 5, 7, 1, "m")
_LENGTH = Given(q.TRACK_LENGTH, 50, 80, 0.1, "m")
_STRETCH = Given(tensioner.LINE_STRETCH, 0.4, 2.0, 0.1, "m")
_TAKE_IN = Given(tensioner.TAKE_IN, 8, 18, 0.1, "m")
_TENSION = Given(named(q.ROPE_TENSION, "line_carries", "tension of one line"), 0.6, 1.0, 0.1, "kN")
_STIFFNESS = Given(q.STIFFNESS, 40, 60, 5, "kN")
_AT_HAND = Given(
    named(lines_of.NEEDED, "rope_at_hand", "length of the rope at hand"), 46, 54, 1, "m"
)

_TRACK_LENGTH = Template(
    key="enough-rope-track-length",
    title="One line at the start",
    stem=(
        "At the start the master attachment point is {x} out and {z} up. A track line runs from "
        "the directional {x_A} out and {z_A} up, past the litter, to the hub {x_B} out and {z_B} "
        "up. How long is it between directional and hub?"
    ),
    asked="Length of one track line at the start",
    givens=(Given(q.X, 7.4, 8.2, 0.2, "m"), Given(q.Z, 0.5, 1.5, 0.5, "m"), *_FROM, *_HUB),
    derivation=guiding.track_length,
    tolerance=Tolerance(relative=0.01),
    mistakes=(
        Mistake(
            "straight-to-the-hub",
            "The straight way from directional to hub",
            "The line goes past the litter: add the way down to it and the way on to the hub.",
            lambda v: sqrt((v.x_B - v.x_A) ** 2 + (v.z_A - v.z_B) ** 2),
        ),
        Mistake(
            "height-and-distance",
            "Height and distance added",
            "The line takes the slanting way, not first down the wall and then along the ground.",
            lambda v: v.z_A - v.z_B + v.x_B - v.x_A,
        ),
        Mistake(
            "upper-leg-only",
            "Only the upper leg counted",
            "From the litter the line goes on to the hub.",
            lambda v: sqrt((v.x - v.x_A) ** 2 + (v.z_A - v.z) ** 2),
        ),
        Mistake(
            "ground-leg-only",
            "Only the ground leg counted",
            "Above the litter the line goes up to the directional.",
            lambda v: sqrt((v.x_B - v.x) ** 2 + (v.z - v.z_B) ** 2),
        ),
    ),
    difficulty=2,
    objective="find how long a track line is with the litter at a place",
)

_USABLE = Template(
    key="enough-rope-short-rope",
    title="A shorter rope",
    stem=(
        "The tensioner rope at hand is only {rope_needed} long. With {lines} lines in series, a "
        "travelling pulley at least {least_play} from the hub, {line_stretch} for the stretch and "
        "a tail of {tail}, how far can each line come in?"
    ),
    asked="How far each line can come in, without its stretch",
    givens=(
        Given(lines_of.NEEDED, 46, 54, 1, "m"),
        _TWO,
        _LEAST,
        _STRETCH,
        _TAIL,
    ),
    derivation=lines_of.rope_needed.solved_for("take_in"),
    tolerance=Tolerance(absolute=0.15),
    mistakes=(
        Mistake(
            "divided-by-the-lines",
            "Divided by the number of lines only",
            "Two strands run to each line: half of that is left for the play.",
            lambda v: (v.rope_needed - v.tail) / v.lines - v.least_play - v.line_stretch,
        ),
        Mistake(
            "tail-forgotten",
            "The tail forgotten",
            "The tail lies beyond the device and is not there for the play.",
            lambda v: v.rope_needed / (2 * v.lines) - v.least_play - v.line_stretch,
        ),
        Mistake(
            "whole-play-counted",
            "The whole play counted",
            "A part of the play is left to the least distance from the hub and to the stretch.",
            lambda v: (v.rope_needed - v.tail) / (2 * v.lines),
        ),
    ),
    difficulty=2,
    objective="find what raise a given tensioner rope allows",
)

ENOUGH_ROPE = Scenario(
    key="enough-rope",
    number=5,
    title="Enough rope?",
    story=(
        "A litter goes up the Lower Heron Wall in Tamarack Gorge on {lines} track lines in series. "
        "Its master attachment point starts {x_1} out at {z_1}, passes a place {x_2} out at {z_2}, "
        "and ends {x_3} out at {z_3}. The track directional is {x_A} out and {z_A} up, the hub "
        "{x_B} out and {z_B} up. One line carries about {line_carries}; its stiffness EA is "
        "{stiffness}. A travelling pulley has to stay {least_play} from the hub, and {tail} of "
        "tail are wanted. The tensioner rope in the bag is {rope_at_hand} long."
    ),
    givens=(
        _TWO,
        *_START,
        *_MIDDLE,
        *_END,
        *_FROM,
        *_HUB,
        _TENSION,
        _STIFFNESS,
        _LEAST,
        _TAIL,
        _AT_HAND,
    ),
    parts=(
        Part(_TRACK_LENGTH, take={"x": "x_1", "z": "z_1"}, gives=_LENGTH),
        Part(
            replace(
                along.PLAY,
                key="enough-rope-play",
                title="What comes in",
                stem=(
                    "From the start, {x_1} out at {z_1}, to the end, {x_2} out at {z_2}: how much "
                    "of each line has to be taken in? The directional is {x_A} out and {z_A} up, "
                    "the hub {x_B} out and {z_B} up."
                ),
                givens=(*_START, *_AT_END, *_FROM, *_HUB),
                must_pass=False,
            ),
            take={"x_2": "x_3", "z_2": "z_3"},
            gives=_TAKE_IN,
        ),
        Part(
            replace(
                margins.ROPE_STRETCH,
                key="enough-rope-stretch",
                title="What stretches",
                stem=(
                    "A line {rope_length} long with a stiffness EA of {stiffness} carries "
                    "{rope_tension}. By how much does it stretch?"
                ),
                givens=(
                    Given(q.ROPE_TENSION, 0.6, 1.0, 0.1, "kN"),
                    Given(q.ROPE_LENGTH, 50, 80, 0.1, "m"),
                    _STIFFNESS,
                ),
                must_pass=False,
            ),
            take={"rope_length": "track_length", "rope_tension": "line_carries"},
            after=("track_length",),
            gives=_STRETCH,
        ),
        Part(
            replace(
                bank.ROPE_LENGTH,
                key="enough-rope-tensioner",
                title="The tensioner rope",
                stem=(
                    "Each of {lines} lines comes in by {take_in} for the geometry and by "
                    "{line_stretch} for the stretch. A travelling pulley stays {least_play} from "
                    "the hub, and {tail} of tail are wanted. How long must the tensioner rope be?"
                ),
                givens=(_TWO, _LEAST, _TAKE_IN, _STRETCH, _TAIL),
                must_pass=False,
            ),
            after=("take_in", "line_stretch"),
        ),
        Part(
            replace(
                bank.ROPE_THROUGH,
                key="enough-rope-through-the-device",
                title="Through the device",
                stem=(
                    "Geometry and stretch together ask each of {lines} lines to come in by "
                    "{take_in}. How much rope runs through the device?"
                ),
                givens=(_TWO, _TAKE_IN),
                must_pass=False,
            ),
            take={"take_in": lambda n: n["take_in"] + n["line_stretch"]},
            after=("take_in", "line_stretch"),
        ),
        Part(
            replace(
                along.TAG_OUT,
                key="enough-rope-tag-line",
                title="A tag line instead",
                stem=(
                    "A tag line from the hub {x_B} out and {z_B} up would be tied to the litter "
                    "itself. How much of it is paid out from the start, {x_1} out at {z_1}, to the "
                    "place {x_2} out at {z_2}? Paying out counts as positive."
                ),
                givens=(*_START, *_MIDDLE, *_HUB),
                must_pass=False,
            ),
        ),
        Part(_USABLE, take={"rope_needed": "rope_at_hand"}, after=("line_stretch",)),
    ),
    judged=(
        Judged(
            key="enough-rope-ways-out",
            title="Two ways out",
            question=(
                "The rope in the bag is too short for this raise. Give two ways out and say what "
                "each of them costs."
            ),
            points=(
                "Reset on the way: the lines are held elsewhere while the grabs are moved, which "
                "takes time and a second set of hands, and nobody moves the litter meanwhile.",
                "Take the slack in by hand at the start, before there is tension, so that the "
                "tensioner only has to do the rest.",
                "A hub nearer to the wall needs less rope and pulls harder: the tension of line, "
                "hub and head goes up.",
                "Begin to guide later: the start is then nearer to plumb, if the haul line stays "
                "clear of the rock until then.",
                "One line instead of two needs half of the rope and carries the whole tension "
                "alone.",
            ),
        ),
    ),
    lessons=(9, 10, 11),
    cautions=(cautions.AUTHORITY, cautions.STATIC, tensioner.NO_BACKUP),
)
