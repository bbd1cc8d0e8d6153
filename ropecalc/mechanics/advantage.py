"""Advantage by counting strands, by travel, and from both sides of one balance: the anchor.

The simple rules behind any system that :mod:`ropecalc.mechanics.pulleys` counts strand by strand.
Pulleys are free of friction here and strands parallel.
"""

from ropecalc.derivation import Argument, Condition, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.pulleys.cautions import CAUTIONS

_FREE = (
    "Pulleys turn without friction, strands are parallel, ropes and pulleys weigh nothing.",
    "Grabs and knots do not slip.",
)
_ONE_ANCHOR = (
    *_FREE,
    "Everything is held by one anchor, the load and the hands.",
)
_SOURCE = "derived here from balance and from each rope's length"


@derive(
    "Advantage of a simple system",
    given=(q.TRAVELLING_PULLEYS, q.END_AT_LOAD),
    between=(q.LOAD, q.HAND_PULL),
    result=q.ADVANTAGE,
    assumptions=(*_FREE, "The haul strand leaves a pulley that travels with the load."),
    cautions=CAUTIONS,
    source=_SOURCE,
)
def simple_advantage(argument: Argument) -> Step:
    """Load over hand's pull of one rope round pulleys that travel with the load."""
    pulleys, end = argument.symbols(q.TRAVELLING_PULLEYS, q.END_AT_LOAD)
    load, hand, advantage = argument.symbols(q.LOAD, q.HAND_PULL, q.ADVANTAGE)
    balance = argument.law(
        "Without friction the whole rope carries the hand's pull. Cut all strands that pull on "
        "the load's side: two at each travelling pulley, one more where the rope's end is tied.",
        load,
        2 * pulleys * hand + end * hand,
    )
    ratio = argument.law("The advantage is the load over the hand's pull.", advantage, load / hand)
    put_in = argument.substitute("Put the load in.", ratio, balance)
    return argument.rewrite("The hand's pull drops out.", put_in, 2 * pulleys + end)


@derive(
    "Advantage of one system pulling on another",
    given=(q.FIRST_ADVANTAGE, q.SECOND_ADVANTAGE),
    between=(q.LOAD, q.HAND_PULL, q.JOINING_TENSION),
    result=q.ADVANTAGE,
    assumptions=_FREE,
    cautions=CAUTIONS,
    source=_SOURCE,
)
def compound_advantage(argument: Argument) -> Step:
    """Load over hand's pull where the first system's load is the second one's haul strand."""
    first, second = argument.symbols(q.FIRST_ADVANTAGE, q.SECOND_ADVANTAGE)
    load, hand, join, advantage = argument.symbols(
        q.LOAD, q.HAND_PULL, q.JOINING_TENSION, q.ADVANTAGE
    )
    near = argument.law(
        "The system in the hands turns their pull into a larger one on its own load.",
        join,
        first * hand,
    )
    far = argument.law(
        "That load is the haul strand of the next system, which does the same again.",
        load,
        second * join,
    )
    whole = argument.substitute("Put the one into the other.", far, near)
    ratio = argument.law("The advantage is the load over the hand's pull.", advantage, load / hand)
    return argument.substitute("So the advantages multiply.", ratio, whole)


@derive(
    "Hand's pull on a complex 5:1",
    given=(q.LOAD,),
    between=(q.GRIPPED_TENSION,),
    result=q.HAND_PULL,
    assumptions=(
        *_FREE,
        "A 3:1 whose haul strand turns back at a pulley, held by a grab on the strand between "
        "anchor and traveller.",
    ),
    cautions=CAUTIONS,
    source=_SOURCE,
)
def complex_hand_pull(argument: Argument) -> Step:
    """Pull E in N of the hand on a complex 5:1."""
    load, gripped, hand = argument.symbols(q.LOAD, q.GRIPPED_TENSION, q.HAND_PULL)
    grab = argument.law(
        "The second grab in balance: the strand towards the anchor holds the strand towards the "
        "traveller and both strands of the pulley on the grab.",
        gripped,
        hand + 2 * hand,
    )
    traveller = argument.law(
        "The traveller in balance: the same rope comes back over the anchor with that tension, and "
        "the traveller's own pulley adds two strands.",
        load,
        gripped + 2 * hand,
    )
    counted = argument.substitute("Put the gripped strand in.", traveller, grab)
    return argument.solve("Solve for the hand's pull.", counted, hand)


@derive(
    "Rope through the hands",
    given=(q.RISE, q.ADVANTAGE),
    between=(q.LOAD, q.HAND_PULL),
    result=q.HAND_TRAVEL,
    assumptions=(*_FREE, "Ropes do not stretch."),
    cautions=CAUTIONS,
    source="derived here from virtual work",
)
def rope_through_hands(argument: Argument) -> Step:
    """Rope in m that comes through the hands while the load rises."""
    rise, advantage = argument.symbols(q.RISE, q.ADVANTAGE)
    load, hand, travel = argument.symbols(q.LOAD, q.HAND_PULL, q.HAND_TRAVEL)
    work = argument.law(
        "Nothing is lost, so the work of the hand is the work on the load: pull times travel on "
        "both sides.",
        hand * travel,
        load * rise,
    )
    lifted = argument.law(
        "The advantage says how many times the hand's pull the load is.", load, advantage * hand
    )
    put_in = argument.substitute("Put the load in.", work, lifted)
    return argument.solve("What is won in force is paid for in rope.", put_in, travel)


@derive(
    "Efficiency of a whole system, from a pull test",
    given=(q.LOAD, q.HAND_PULL, q.RISE, q.HAND_TRAVEL),
    result=q.SYSTEM_EFFICIENCY,
    assumptions=("Pull and load are steady, and both travels are measured over the same move.",),
    cautions=CAUTIONS,
    source="definition: useful work over the work put in",
)
def system_efficiency(argument: Argument) -> Step:
    """Work on the load over work of the hand, a share."""
    load, hand, rise, travel = argument.symbols(q.LOAD, q.HAND_PULL, q.RISE, q.HAND_TRAVEL)
    return argument.law(
        "Useful work is the load times its rise; put in is the hand's pull times the rope pulled.",
        argument.symbol(q.SYSTEM_EFFICIENCY),
        (load * rise) / (hand * travel),
    )


_AT_LEAST_ONE = Condition(
    "The hand must pull no harder than the load.",
    "Give an advantage of one or more.",
    lambda v: v["advantage"] >= 1,
)


@derive(
    "Anchor of a system that is pulled away from the load",
    given=(q.LOAD, q.ADVANTAGE),
    between=(q.HAND_PULL,),
    result=q.ANCHOR_PULL,
    assumptions=_ONE_ANCHOR,
    conditions=(_AT_LEAST_ONE,),
    cautions=CAUTIONS,
    source=_SOURCE,
)
def anchor_in_line(argument: Argument) -> Step:
    """Pull A in N on the one anchor when the hands pull away from the load."""
    load, advantage, hand, anchor = argument.symbols(
        q.LOAD, q.ADVANTAGE, q.HAND_PULL, q.ANCHOR_PULL
    )
    whole = argument.law(
        "Cut the whole system free: anchor and hands pull one way, the load the other.",
        anchor + hand,
        load,
    )
    share = argument.law("The advantage gives the hand's pull.", hand, load / advantage)
    left = argument.solve("What the hands do not hold, the anchor holds.", whole, anchor)
    return argument.substitute("Put the hand's pull in.", left, share)


@derive(
    "Anchor of a system that is pulled towards the load",
    given=(q.LOAD, q.ADVANTAGE),
    between=(q.HAND_PULL,),
    result=q.ANCHOR_PULL,
    assumptions=(*_ONE_ANCHOR, "The haul strand turns at a redirect on the same anchor."),
    conditions=(_AT_LEAST_ONE,),
    cautions=CAUTIONS,
    source=_SOURCE,
)
def anchor_redirected(argument: Argument) -> Step:
    """Pull A in N on the one anchor when a redirect on it lets the hands pull towards the load."""
    load, advantage, hand, anchor = argument.symbols(
        q.LOAD, q.ADVANTAGE, q.HAND_PULL, q.ANCHOR_PULL
    )
    whole = argument.law(
        "Cut the whole system free: load and hands pull the same way, and only the anchor is left "
        "to hold both.",
        anchor,
        load + hand,
    )
    share = argument.law("The advantage gives the hand's pull.", hand, load / advantage)
    return argument.substitute("Put the hand's pull in.", whole, share)
