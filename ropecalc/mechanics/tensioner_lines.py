"""The 2:1 in series, formula by formula: lines, hub, rope, speed and the pull at the tail.

As in :mod:`~ropecalc.mechanics.tensioner` everything is counted from the device: line 1 is the near
line, strands 1 and 2 are the two sides of its travelling pulley. Each formula holds while rope is
taken in; let out, the efficiency stands upside down, and held the lines remember what moved last.
"""

from dataclasses import replace

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import (
    NOT_NEGATIVE,
    POSITIVE,
    Argument,
    Condition,
    Domain,
    Range,
    Step,
    Variable,
    derive,
)
from ropecalc.mechanics import guiding, tensioner
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS
from ropecalc.mechanics.tensioner import (
    COUNTED,
    DEVICE_PULL,
    EFFECTIVE_LINES,
    LINE_RATE,
    LINE_STRETCH,
    LINES,
    NEAR_LINE,
    NO_BACKUP,
    ROPE_TAIL,
    TAKE_IN,
)
from ropecalc.units import Kind

TAKING_IN = (
    "The tensioner rope is one rope, pulled at the device and tied off at its other end.",
    COUNTED,
    "The rope is moving towards the device (taking in) at every sheave.",
    "Every sheave has the same efficiency and both its strands are parallel.",
)
ROPE = (
    "Two strands of the tensioner rope run to each line's travelling pulley.",
    "Nothing slips at grabs or in the device.",
)
_CAUTIONS = (
    "Let out, the lines share the other way round; at rest the shares lie anywhere in between.",
    NO_BACKUP,
    cautions.COMMON_HUB,
    cautions.STATIC,
    cautions.AUTHORITY,
)
_ROPE_CAUTIONS = (
    "Rope that stretches, and a line that slips at its grab, ask for more than this.",
    cautions.STATIC,
    cautions.AUTHORITY,
)
_SOURCE = "derived here from the tension lost at each sheave"

LINE = Variable(
    "line", "i", "number of the line, counted from the device", Kind.RATIO,
    Domain(1.0, 20.0), Range(1, 4, 2),
)  # fmt: skip
LINE_TENSION = named(q.TRACK_TENSION, "line_tension", "tension of line number i", "T_i")
NEAR_STRAND = named(
    q.TRACK_TENSION,
    "near_strand",
    "strand on the device's side of the line's pulley",
    r"S_{2i-1}",
)
FAR_LINE = named(NEAR_LINE, "far_line", "tension of the far line, next to the tied-off end", "T_n")
FAR_RATIO = Variable(
    "far_ratio", r"q_\mathrm{far}", "tension of the far line over that of the near line",
    Kind.RATIO, Domain(0.0, 1.0, low_open=True), Range(0.2, 1, 0.8),
)  # fmt: skip
IDEAL_LINE = named(
    q.TRACK_TENSION, "ideal_line", "tension of each line without friction", r"T_\mathrm{ideal}"
)
LINE_LIMIT = Variable(
    "line_limit", r"T_\mathrm{lim}", "most that one line may carry", Kind.FORCE, POSITIVE,
    Range(1000, 5000, 2000),
)  # fmt: skip
RUBBING = replace(
    q.SHEAVE_EFFICIENCY,
    domain=Domain(0.0, 1.0, low_open=True, high_open=True),
    teaching=Range(0.6, 0.98, 0.9),
)
"""Without friction there is no limit to what lines in series share."""
EXACT_LINES = Variable(
    "exact_lines", r"n_\mathrm{just}", "number of lines that would just do, whole or not",
    Kind.RATIO, NOT_NEGATIVE, Range(0, 20, 2),
)  # fmt: skip
MOST_LINES = round(LINES.domain.high)
HUB_PULLEY = named(
    q.TRACK_TENSION, "hub_pulley", "load on the hub pulley next to the near line", "R_1"
)
THROUGH = named(TAKE_IN, "through", "rope that runs through the device", r"\ell_\mathrm{thr}")
NEEDED = named(TAKE_IN, "rope_needed", "length of the tensioner rope", r"\ell_\mathrm{rope}")
LEAST_PLAY = named(
    q.PLAY, "least_play", "least distance of a travelling pulley from the hub", r"d_\mathrm{min}"
)
HAUL_SPEED = named(LINE_RATE, "haul_speed", "speed at which the litter rises", r"v_\mathrm{h}")
DEVICE_SPEED = named(
    LINE_RATE, "device_speed", "speed of the rope through the device", r"v_\mathrm{dev}"
)
DEVICE_SHARE = Variable(
    "device_share", r"\eta_\mathrm{dev}",
    "what the device leaves of a pull on its tail while rope is pulled through",
    Kind.RATIO, Domain(0.0, 1.0, low_open=True), Range(0.4, 1, 0.6),
)  # fmt: skip
TAIL_ADVANTAGE = Variable(
    "tail_advantage", "a", "advantage of a further system on the tail (1: none)", Kind.RATIO,
    Domain(1.0, 20.0), Range(1, 3, 3),
)  # fmt: skip
HAND_PULL = Variable(
    "hand_pull", r"F_\mathrm{hand}", "pull of the hands on the tail", Kind.FORCE, POSITIVE,
    Range(50, 1500, 300),
)  # fmt: skip


@derive(
    "One line of a tensioner while rope is taken in",
    given=(DEVICE_PULL, q.SHEAVE_EFFICIENCY, LINE),
    between=(NEAR_STRAND,),
    result=LINE_TENSION,
    assumptions=TAKING_IN,
    cautions=_CAUTIONS,
    source=_SOURCE,
)
def line_taken_in(argument: Argument) -> Step:
    """Tension in N of line ``line``, from the strand at the device (N), while rope is taken in."""
    pull, efficiency, line = argument.symbols(DEVICE_PULL, q.SHEAVE_EFFICIENCY, LINE)
    strand, tension = argument.symbols(NEAR_STRAND, LINE_TENSION)
    passed = argument.law(
        "Two sheaves lie between neighbouring lines: each takes its part of the tension.",
        strand,
        pull * efficiency ** (2 * (line - 1)),
    )
    both = argument.law(
        "The line carries both strands at its pulley; the second one is behind that sheave.",
        tension,
        strand + efficiency * strand,
    )
    return argument.substitute("Put the strand in.", both, passed)


@derive(
    "One line of a tensioner without friction",
    given=(DEVICE_PULL, LINES),
    between=(q.TRACK_TENSION,),
    result=IDEAL_LINE,
    assumptions=(
        TAKING_IN[0],
        "Every sheave turns without friction and both its strands are parallel.",
    ),
    cautions=(cautions.FRICTIONLESS, *_CAUTIONS),
    source="derived here by counting strands",
)
def ideal_line(argument: Argument) -> Step:
    """Tension in N of each line, from the strand at the device (N), if nothing rubs."""
    pull, lines = argument.symbols(DEVICE_PULL, LINES)
    together, tension = argument.symbols(q.TRACK_TENSION, IDEAL_LINE)
    strands = argument.law(
        "Without friction every strand of the one rope carries the same, and two strands run to "
        "each line.",
        together,
        2 * lines * pull,
    )
    each = argument.law("All lines carry alike.", tension, together / lines)
    return argument.substitute("Put all lines in: their number drops out.", each, strands)


@derive(
    "The far line beside the near line",
    given=(q.SHEAVE_EFFICIENCY, LINES),
    between=(NEAR_LINE, FAR_LINE),
    result=FAR_RATIO,
    assumptions=TAKING_IN,
    cautions=_CAUTIONS,
    source=_SOURCE,
)
def far_over_near(argument: Argument) -> Step:
    """Tension of the far line over that of the near line, while rope is taken in: at most 1."""
    efficiency, lines, near, far = argument.symbols(q.SHEAVE_EFFICIENCY, LINES, NEAR_LINE, FAR_LINE)
    lost = argument.law(
        "Between the near line and the far line lie two sheaves for each further line.",
        far,
        near * efficiency ** (2 * (lines - 1)),
    )
    ratio = argument.law(
        "Compare the far line with the near line.", argument.symbol(FAR_RATIO), far / near
    )
    return argument.substitute("Put the far line in: the tension drops out.", ratio, lost)


def _worth(argument: Argument) -> Step:
    return argument.law(
        "Lines in series are worth this many times the near line (see lines in series).",
        argument.symbol(EFFECTIVE_LINES),
        tensioner.effective_lines.expression,
    )


def _all_lines(argument: Argument) -> Step:
    together, near, worth = argument.symbols(q.TRACK_TENSION, NEAR_LINE, EFFECTIVE_LINES)
    return argument.law("All lines together are so many near lines' worth.", together, near * worth)


@derive(
    "The most loaded line of a tensioner",
    given=(q.TRACK_TENSION, q.SHEAVE_EFFICIENCY, LINES),
    between=(EFFECTIVE_LINES,),
    result=NEAR_LINE,
    assumptions=TAKING_IN,
    cautions=_CAUTIONS,
    source=_SOURCE,
)
def most_loaded_line(argument: Argument) -> Step:
    """Tension in N of the near line, which carries most, from all lines together (N)."""
    every = _all_lines(argument)
    near = argument.solve("Solve for the near line.", every, argument.symbol(NEAR_LINE))
    return argument.substitute("Put in what the lines are worth.", near, _worth(argument))


@derive(
    "Lines in series for a limit on each line",
    given=(q.TRACK_TENSION, LINE_LIMIT, RUBBING),
    between=(EXACT_LINES,),
    result=LINES,
    assumptions=TAKING_IN,
    conditions=(
        Condition(
            f"{MOST_LINES} lines are not enough: friction takes more from each further line than "
            "from the one before.",
            "Make the tension smaller: move the directional or the hub, or use better pulleys.",
            lambda v: (
                v["track_tension"] * (1 - v["efficiency"] ** 2)
                <= v["line_limit"] * (1 - v["efficiency"] ** (2 * MOST_LINES))
            ),
        ),
    ),
    cautions=_CAUTIONS,
    source=_SOURCE,
)
def lines_for_limit(argument: Argument) -> Step:
    """Least number of lines at which the most loaded one carries no more than the limit in N."""
    together, limit, efficiency = argument.symbols(q.TRACK_TENSION, LINE_LIMIT, RUBBING)
    exact, lines = argument.symbols(EXACT_LINES, LINES)
    sp = argument.sympy
    series = argument.law(
        "With the near line at its limit, all lines together carry so many near lines' worth (see "
        "lines in series).",
        together,
        limit * (1 - efficiency ** (2 * exact)) / (1 - efficiency**2),
    )
    just = argument.solve("Solve for the number of lines that just does.", series, exact)
    whole = argument.law(
        "Take the next whole number, and one at least.", lines, sp.Max(1, sp.ceiling(exact))
    )
    return argument.substitute("Put it in.", whole, just)


@derive(
    "All lines of a tensioner on one hub",
    given=(NEAR_LINE, q.SHEAVE_EFFICIENCY, LINES),
    between=(EFFECTIVE_LINES,),
    result=q.TRACK_TENSION,
    assumptions=TAKING_IN,
    cautions=_CAUTIONS,
    source=_SOURCE,
)
def all_lines(argument: Argument) -> Step:
    """Tension in N of all lines together, which is the load on the hub, from the near line (N)."""
    return argument.substitute(
        "Put in what the lines are worth.", _all_lines(argument), _worth(argument)
    )


@derive(
    "What the device of a tensioner holds",
    given=(NEAR_LINE, q.SHEAVE_EFFICIENCY),
    result=DEVICE_PULL,
    assumptions=(*TAKING_IN, "The strand has not been handed over to the progress capture yet."),
    cautions=_CAUTIONS,
    source=_SOURCE,
)
def device_strand(argument: Argument) -> Step:
    """Tension in N of the strand at the device, from the near line (N), while rope is taken in."""
    near, efficiency, pull = argument.symbols(NEAR_LINE, q.SHEAVE_EFFICIENCY, DEVICE_PULL)
    both = argument.law(
        "The near line carries the device's strand and the one behind its pulley.",
        near,
        pull + efficiency * pull,
    )
    return argument.solve("Solve for the device's strand.", both, pull)


@derive(
    "The hub pulley next to the near line",
    given=(DEVICE_PULL, q.SHEAVE_EFFICIENCY),
    result=HUB_PULLEY,
    assumptions=(*TAKING_IN, "There is a further line beside the near line."),
    cautions=_CAUTIONS,
    source=_SOURCE,
)
def hub_pulley_load(argument: Argument) -> Step:
    """Load in N of the first hub pulley, from the strand at the device (N), taking in."""
    pull, efficiency, load = argument.symbols(DEVICE_PULL, q.SHEAVE_EFFICIENCY, HUB_PULLEY)
    return argument.law(
        "One of its strands lies one sheave from the device, the other two: add both.",
        load,
        pull * efficiency + pull * efficiency**2,
    )


@derive(
    "Rope through the device",
    given=(LINES, TAKE_IN),
    result=THROUGH,
    assumptions=ROPE,
    cautions=_ROPE_CAUTIONS,
    source="derived here from the strands that grow shorter",
)
def rope_through_device(argument: Argument) -> Step:
    """Rope in m through the device when every line comes in by ``take_in`` m."""
    lines, in_by, through = argument.symbols(LINES, TAKE_IN, THROUGH)
    return argument.law(
        "Each line's two strands grow shorter by what the line comes in, and all of that leaves "
        "through the device.",
        through,
        2 * lines * in_by,
    )


@derive(
    "Length of the tensioner rope",
    given=(LINES, LEAST_PLAY, TAKE_IN, LINE_STRETCH, ROPE_TAIL),
    between=(q.PLAY,),
    result=NEEDED,
    assumptions=(
        *ROPE,
        "Nobody resets a grab during the raise: all the play is there from the start.",
    ),
    cautions=_ROPE_CAUTIONS,
    source="derived here from the strands at the start of the raise",
)
def rope_needed(argument: Argument) -> Step:
    """Length in m of the tensioner rope: strands at the start of the raise, and the tail."""
    lines, least, in_by, longer = argument.symbols(LINES, LEAST_PLAY, TAKE_IN, LINE_STRETCH)
    tail, play, needed = argument.symbols(ROPE_TAIL, q.PLAY, NEEDED)
    start = argument.law(
        "At the start a travelling pulley stands as far out as it will come in, for the geometry "
        "and for the stretch, and still ends clear of the hub.",
        play,
        least + in_by + longer,
    )
    rope = argument.law(
        "Two strands run to each line's pulley, and a tail remains beyond the device.",
        needed,
        2 * lines * play + tail,
    )
    return argument.substitute("Put the play at the start in.", rope, start)


@derive(
    "Speed of the rope through the device",
    given=(LINES, HAUL_SPEED, q.TRACK_ELEVATION, q.GROUND_DEPRESSION),
    between=(q.TAKE_IN_RATE,),
    result=DEVICE_SPEED,
    assumptions=(*ROPE, "The litter goes straight up.", "Straight ropes that do not stretch."),
    conditions=(
        Condition(
            "The track lines have to come in: their upper legs are steeper than the ground legs "
            f"fall, by more than {FLAT_WORDS}.",
            "Bring the litter closer in, or move the hub further out.",
            lambda v: (
                (v["track_elevation"] - v["ground_depression"] > FLAT)
                & (v["track_elevation"] + v["ground_depression"] <= np.pi)
            ),
        ),
    ),
    cautions=_ROPE_CAUTIONS,
    source="derived here from the change of the two legs",
)
def device_speed(argument: Argument) -> Step:
    """Speed in m/s of the rope at the device while the litter goes straight up."""
    lines, speed, rate = argument.symbols(LINES, HAUL_SPEED, q.TAKE_IN_RATE)
    legs = argument.law(
        "Each line comes in by this share of the height raised (see track rope to take in).",
        rate,
        guiding.take_in_rate.expression,
    )
    rope = argument.law(
        "Two strands of each line pass that on to the device.",
        argument.symbol(DEVICE_SPEED),
        2 * lines * rate * speed,
    )
    return argument.substitute("Put the legs in.", rope, legs)


@derive(
    "Pull of the hands on the tail",
    given=(FAR_LINE, q.SHEAVE_EFFICIENCY, LINES, DEVICE_SHARE, TAIL_ADVANTAGE),
    between=(NEAR_LINE, DEVICE_PULL),
    result=HAND_PULL,
    assumptions=(*TAKING_IN, "The further system on the tail turns without friction."),
    cautions=_CAUTIONS,
    source=_SOURCE,
)
def hand_pull(argument: Argument) -> Step:
    """Pull in N on the tail that brings the far line to ``far_line`` N, through the device."""
    far, efficiency, lines = argument.symbols(FAR_LINE, q.SHEAVE_EFFICIENCY, LINES)
    share, advantage, hand = argument.symbols(DEVICE_SHARE, TAIL_ADVANTAGE, HAND_PULL)
    near, pull = argument.symbols(NEAR_LINE, DEVICE_PULL)
    worth = argument.law(
        "The near line is the far line before the sheaves between them took their part.",
        near,
        far / efficiency ** (2 * (lines - 1)),
    )
    both = argument.law(
        "The near line carries the device's strand and the one behind its pulley.",
        near,
        pull + efficiency * pull,
    )
    drag = argument.law(
        "The further system multiplies the hands' pull and the device takes its part of that.",
        pull,
        advantage * share * hand,
    )
    strand = argument.solve("Solve for the device's strand.", both, pull)
    hands = argument.solve("Solve for the hands' pull.", drag, hand)
    tail = argument.substitute("Put the device's strand in.", hands, strand)
    return argument.substitute("Put the near line in.", tail, worth)
