"""What a raise asks of the haul team: throws, rope, time, and what a snag would feel.

The same counts as :mod:`ropecalc.mechanics.pulleys.throw` makes for whole systems, one formula
each.
"""

from ropecalc import cautions
from ropecalc.derivation import (
    NOT_NEGATIVE,
    POSITIVE,
    Argument,
    Condition,
    Range,
    Step,
    Variable,
    derive,
)
from ropecalc.derivation.variable import Domain
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.pulleys import formulas
from ropecalc.units import Kind

RAISE_HEIGHT, THROW_RISE, RESET_LOSS = q.RAISE_HEIGHT, q.THROW_RISE, q.RESET_LOSS
HAND_SPEED, RESET_TIME, TRAVEL_ADVANTAGE = q.HAND_SPEED, q.RESET_TIME, q.TRAVEL_ADVANTAGE
PEOPLE, BURST, STEADY_PULL = q.PEOPLE, q.BURST, q.STEADY_PULL
THROWS = Variable(
    "throws",
    r"N_\mathrm{throw}",
    "number of throws",
    Kind.RATIO,
    Domain(1, float("inf")),
    Range(2, 20, 9),
)
RAISE_TIME = Variable(
    "raise_time", r"t_\mathrm{raise}", "time of the whole raise", Kind.TIME, POSITIVE,
    Range(100, 3000, 480),
)  # fmt: skip
EDGE_SETBACK = Variable(
    "edge_setback", r"\ell_\mathrm{edge}", "from the anchor to the edge", Kind.LENGTH,
    NOT_NEGATIVE, Range(4, 20, 8),
)  # fmt: skip
HAUL_TAIL = Variable(
    "haul_tail", r"\ell_\mathrm{end}", "rope kept beyond the hands", Kind.LENGTH, NOT_NEGATIVE,
    Range(3, 10, 5),
)  # fmt: skip
MAIN_ROPE = Variable(
    "main_rope", r"\ell_\mathrm{main}", "length of the haul rope", Kind.LENGTH, POSITIVE,
    Range(20, 120, 60),
)  # fmt: skip
CLEAR_WAY = Variable(
    "clear_way", r"\ell_\mathrm{walk}", "way that the haul team can walk in one go", Kind.LENGTH,
    POSITIVE, Range(6, 30, 12),
)  # fmt: skip
TRAVELLER_ROOM = Variable(
    "traveller_room", r"s_\mathrm{room}", "room of the travelling pulley", Kind.LENGTH, POSITIVE,
    Range(2, 8, 5),
)  # fmt: skip
SNAG = named(q.LOAD, "snag_pull", "force that the team can put into a snag", r"F_\mathrm{snag}")

_GAINS = Condition(
    "A reset must lose less than a throw gains.",
    "Make longer throws, or reset with less loss.",
    lambda v: v["throw_rise"] > v["reset_loss"],
)
_ADVANTAGE = Condition(
    "An advantage is at least 1.",
    "Give the load over the pull of the hands.",
    lambda v: v["advantage"] >= 1,
)
_SOURCE = "derived here by counting rise, loss and rope"
_STEADY = "Steady speed, and every reset like the other."
_CAUTIONS = (
    "A team tires, changes and stops; plan with time to spare.",
    cautions.STATIC,
    cautions.AUTHORITY,
)

_BY_TRAVEL = (
    "Give the advantage without friction: it is the rope through the hands for each length of "
    "rise. With friction the team pulls harder, but not less rope.",
    *_CAUTIONS,
)


@derive(
    "Throws for a raise",
    given=(RAISE_HEIGHT, THROW_RISE, RESET_LOSS),
    result=THROWS,
    assumptions=("Every throw is a whole one, and every reset loses the same.",),
    conditions=(_GAINS,),
    cautions=_CAUTIONS,
    source=_SOURCE,
)
def throws_needed(argument: Argument) -> Step:
    """Number N of throws; between N throws lie N − 1 resets, and each gives some height back."""
    high, gain, loss = argument.symbols(RAISE_HEIGHT, THROW_RISE, RESET_LOSS)
    ceiling, largest = argument.sympy.ceiling, argument.sympy.Max
    return argument.law(
        "N throws gain N times the rise, and the N − 1 resets between them lose some of it: take "
        "the next whole number that covers the height.",
        argument.symbol(THROWS),
        largest(1, ceiling((high - loss) / (gain - loss))),
    )


@derive(
    "Rise of the load in one throw",
    given=(CLEAR_WAY, TRAVELLER_ROOM, TRAVEL_ADVANTAGE),
    result=THROW_RISE,
    assumptions=(
        "The team walks straight away with the haul strand.",
        "The travelling pulley moves as far as the load.",
    ),
    conditions=(_ADVANTAGE,),
    cautions=_BY_TRAVEL,
    source=_SOURCE,
)
def rise_in_a_throw(argument: Argument) -> Step:
    """Rise in m of the load in one throw: what runs out first, the team's way or the room."""
    way, room, n = argument.symbols(CLEAR_WAY, TRAVELLER_ROOM, TRAVEL_ADVANTAGE)
    return argument.law(
        "The team's way lifts the load by its share of it, and the travelling pulley cannot move "
        "further than its room: the smaller of the two ends the throw.",
        argument.symbol(THROW_RISE),
        argument.sympy.Min(way / n, room),
    )


@derive(
    "Time of a raise",
    given=(RAISE_HEIGHT, TRAVEL_ADVANTAGE, HAND_SPEED, THROWS, RESET_LOSS, RESET_TIME),
    result=RAISE_TIME,
    assumptions=(_STEADY,),
    conditions=(_ADVANTAGE,),
    cautions=_BY_TRAVEL,
    source=_SOURCE,
)
def raise_time(argument: Argument) -> Step:
    """Time in s of a raise in N throws; what a reset loses is hauled once more.

    The advantage is the one without friction, as for the rope through the hands.
    """
    high, n, speed, throws, loss, pause = argument.symbols(
        RAISE_HEIGHT, TRAVEL_ADVANTAGE, HAND_SPEED, THROWS, RESET_LOSS, RESET_TIME
    )
    return argument.law(
        "The hands walk the advantage times what is hauled, which is the height and once more "
        "what each reset lost; and each reset takes its time.",
        argument.symbol(RAISE_TIME),
        n * (high + (throws - 1) * loss) / speed + (throws - 1) * pause,
    )


@derive(
    "Haul rope with the system in its own tail",
    given=(RAISE_HEIGHT, EDGE_SETBACK, TRAVEL_ADVANTAGE, THROW_RISE, HAUL_TAIL),
    result=MAIN_ROPE,
    assumptions=("A simple system, built in the tail of the haul rope.",),
    conditions=(_ADVANTAGE,),
    cautions=_BY_TRAVEL,
    source="derived here by following the rope",
)
def main_rope(argument: Argument) -> Step:
    """Length in m of a haul rope that has a simple n:1 in its own tail, pulled out for a throw."""
    high, back, n, throw, tail = argument.symbols(
        RAISE_HEIGHT, EDGE_SETBACK, TRAVEL_ADVANTAGE, THROW_RISE, HAUL_TAIL
    )
    return argument.law(
        "Follow the rope: up the wall, back to the anchor, then once more through the length of a "
        "throw for every part of the system after the first, and the tail.",
        argument.symbol(MAIN_ROPE),
        high + back + (n - 1) * throw + tail,
    )


@derive(
    "People for a raise over an edge",
    given=(q.LOAD, q.FRICTION, q.TURN, q.SHEAVE_EFFICIENCY, q.PARTS, STEADY_PULL),
    between=(q.TENSION_AHEAD, q.HAND_PULL),
    result=PEOPLE,
    assumptions=(
        "The rope slides over the edge and runs over every sheave, towards the team.",
        "A simple system, whose haul strand leaves a pulley that travels with the load.",
        "Everybody pulls alike.",
    ),
    cautions=_CAUTIONS,
    source="derived here from the capstan equation and from the tension lost at each sheave",
)
def people_needed(argument: Argument) -> Step:
    """Number of people that raise ``load`` N over an edge with a simple system of ``parts``."""
    load, mu, turn, each = argument.symbols(q.LOAD, q.FRICTION, q.TURN, STEADY_PULL)
    above, hand = argument.symbols(q.TENSION_AHEAD, q.HAND_PULL)
    edge = argument.law(
        "Raising, the edge costs tension: above it the rope carries more than the load (see rope "
        "over an edge).",
        above,
        load * argument.sympy.exp(mu * turn),
    )
    strand = argument.law(
        "The system holds that with this pull at its haul strand (see simple system while "
        "hauling).",
        hand,
        formulas.simple_pull_hauling.expression.subs(load, above),
    )
    team = argument.law(
        "Divide by what one person keeps up, and take the next whole number.",
        argument.symbol(PEOPLE),
        argument.sympy.ceiling(hand / each),
    )
    shared = argument.substitute("Put the haul strand in.", team, strand)
    return argument.substitute("Put the tension above the edge in.", shared, edge)


@derive(
    "What a team can put into a snag",
    given=(PEOPLE, BURST, q.ADVANTAGE),
    result=SNAG,
    assumptions=("Everybody pulls as hard as they can for a moment.",),
    conditions=(_ADVANTAGE,),
    cautions=(
        "Pulleys may be better on the day than what you measured: the advantage without friction "
        "bounds the force.",
        "People who are stopped jerk harder than they haul; measure it, or take it high.",
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    source="derived here from the advantage",
)
def snag_pull(argument: Argument) -> Step:
    """Force in N at the load's side if something catches while the team pulls."""
    people, each, gain = argument.symbols(PEOPLE, BURST, q.ADVANTAGE)
    return argument.law(
        "Everybody together pulls on the haul strand, and the system multiplies it.",
        argument.symbol(SNAG),
        people * each * gain,
    )
