"""Advantage and hand's pull of the usual systems as formulas, for pulleys with friction.

A simple system is one chain of strands: the rope passes from strand to strand over sheaves that
all turn while it moves. Hauling, the hand's strand carries most and every strand further from it
the efficiency times the one before. Lowering, it is the other way round. Any other system is
counted strand by strand: see :func:`~ropecalc.mechanics.pulleys.tensions.count_tensions`.
"""

from typing import Any

from ropecalc.derivation import POSITIVE, Argument, Range, Step, Variable, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.pulleys.cautions import CAUTIONS
from ropecalc.units import Kind

SOURCE = "derived here from the tension lost at each sheave"
MOVING = "The rope moves over every sheave; at rest the pull lies between hauling and lowering."
ALIKE = "Every sheave has the same efficiency, and all strands are parallel."
ADVANTAGE_IS = "The advantage says how many times the hand's pull the load is."
SIMPLE = (
    "A simple system: one rope, whose hand's strand leaves a pulley that travels with the load.",
    ALIKE,
    MOVING,
)
FAR_STRAND = Variable(
    "far_strand",
    r"S_\mathrm{far}",
    "tension of the strand furthest from the hand",
    Kind.FORCE,
    POSITIVE,
    Range(100, 2000, 600),
)
FIRST_STAGE = Variable(
    "first_parts",
    r"n_1",
    "strands of the stage at the load",
    Kind.RATIO,
    q.PARTS.domain,
    Range(1, 6, 3),
)
SECOND_STAGE = Variable(
    "second_parts",
    r"n_2",
    "strands of the stage that pulls on it",
    Kind.RATIO,
    q.PARTS.domain,
    Range(1, 6, 3),
)
BETWEEN_STAGES = Variable(
    "between_stages",
    r"S_\mathrm{m}",
    "tension of the strand between the stages",
    Kind.FORCE,
    POSITIVE,
    Range(100, 2000, 700),
)
NEAR_EFFICIENCY = Variable(
    "near_efficiency",
    r"\eta_1",
    "efficiency of the pulley nearest the haulers",
    Kind.RATIO,
    q.SHEAVE_EFFICIENCY.domain,
    Range(0.6, 1.0, 0.95),
)
FAR_EFFICIENCY = Variable(
    "far_efficiency",
    r"\eta_2",
    "efficiency of the other pulley",
    Kind.RATIO,
    q.SHEAVE_EFFICIENCY.domain,
    Range(0.5, 1.0, 0.6),
)


def _added(argument: Argument, efficiency: Any, parts: Any) -> Any:
    """1 + η + η² + ... with ``parts`` terms; without friction, simply their number."""
    sp = argument.sympy
    index = sp.Symbol("k", integer=True, nonnegative=True)
    return sp.summation(efficiency**index, (index, 0, parts - 1))


@derive(
    "Simple system while hauling: its actual advantage",
    given=(q.SHEAVE_EFFICIENCY, q.PARTS),
    between=(q.LOAD, q.HAND_PULL),
    result=q.ADVANTAGE,
    assumptions=SIMPLE,
    cautions=CAUTIONS,
    source=SOURCE,
)
def simple_advantage(argument: Argument) -> Step:
    """Load over hand's pull while a simple system of ``parts`` strands (1 or more) is hauled.

    Between whole numbers of strands the formula merely joins them up.
    """
    efficiency, parts = argument.symbols(q.SHEAVE_EFFICIENCY, q.PARTS)
    load, pull, advantage = argument.symbols(q.LOAD, q.HAND_PULL, q.ADVANTAGE)
    carried = argument.law(
        "The hand's strand carries the pull, and each further strand the efficiency times the one "
        "before it. Together they carry the load: a geometric series, added up here.",
        load,
        pull * _added(argument, efficiency, parts),
    )
    ratio = argument.law(ADVANTAGE_IS, load, advantage * pull)
    both = argument.substitute("Put the load in.", ratio, carried)
    return argument.solve("Divide by the pull: it drops out.", both, advantage)


@derive(
    "Simple system while hauling: the pull of the hand",
    given=(q.LOAD, q.SHEAVE_EFFICIENCY, q.PARTS),
    result=q.HAND_PULL,
    assumptions=SIMPLE,
    cautions=CAUTIONS,
    source=SOURCE,
)
def simple_pull_hauling(argument: Argument) -> Step:
    """Pull in N with which a simple system of ``parts`` strands raises ``load`` N."""
    efficiency, parts = argument.symbols(q.SHEAVE_EFFICIENCY, q.PARTS)
    load, pull = argument.symbols(q.LOAD, q.HAND_PULL)
    carried = argument.law(
        "Hauling, the hand's strand carries most: each further strand carries the efficiency "
        "times the one before it. Together they carry the load.",
        pull * _added(argument, efficiency, parts),
        load,
    )
    return argument.solve("Divide by what stands beside the pull.", carried, pull)


@derive(
    "Simple system while lowering: the pull of the hand",
    given=(q.LOAD, q.SHEAVE_EFFICIENCY, q.PARTS),
    between=(FAR_STRAND,),
    result=q.HAND_PULL,
    assumptions=SIMPLE,
    cautions=CAUTIONS,
    source=SOURCE,
)
def simple_pull_lowering(argument: Argument) -> Step:
    """Pull in N with which a simple system of ``parts`` strands lets ``load`` N down."""
    efficiency, parts = argument.symbols(q.SHEAVE_EFFICIENCY, q.PARTS)
    load, pull, far = argument.symbols(q.LOAD, q.HAND_PULL, FAR_STRAND)
    carried = argument.law(
        "Lowering, the rope moves away from the hand: the strand furthest from it carries most, "
        "and each nearer one the efficiency times that. Together they carry the load.",
        far * _added(argument, efficiency, parts),
        load,
    )
    hand = argument.law(
        "The hand's strand is the last of the chain: all sheaves lie between.",
        far * efficiency ** (parts - 1),
        pull,
    )
    most = argument.solve("First the furthest strand.", carried, far)
    found = argument.substitute("From it the pull of the hand.", hand, most)
    return argument.solved("So the hand pulls this.", pull, found.equation.lhs)


@derive(
    "One system pulling on another, while hauling",
    given=(q.SHEAVE_EFFICIENCY, FIRST_STAGE, SECOND_STAGE),
    between=(q.LOAD, BETWEEN_STAGES, q.HAND_PULL),
    result=q.ADVANTAGE,
    assumptions=(
        "Two simple systems: the second pulls on the hand's strand of the first.",
        ALIKE,
        MOVING,
    ),
    cautions=CAUTIONS,
    source=SOURCE,
)
def stacked_advantage(argument: Argument) -> Step:
    """Load over hand's pull while a simple system that pulls on another one is hauled."""
    efficiency, one, two = argument.symbols(q.SHEAVE_EFFICIENCY, FIRST_STAGE, SECOND_STAGE)
    load, middle, pull = argument.symbols(q.LOAD, BETWEEN_STAGES, q.HAND_PULL)
    advantage = argument.symbol(q.ADVANTAGE)
    first = argument.law(
        "The stage at the load carries it with a chain of strands that begins between the stages.",
        load,
        middle * _added(argument, efficiency, one),
    )
    second = argument.law(
        "The other stage pulls with a chain of its own that begins at the hand.",
        middle,
        pull * _added(argument, efficiency, two),
    )
    ratio = argument.law(ADVANTAGE_IS, load, advantage * pull)
    whole = argument.substitute("Put the load in.", ratio, first)
    whole = argument.substitute("Put the strand between in: the stages multiply.", whole, second)
    return argument.solve("Divide by the pull: it drops out.", whole, advantage)


@derive(
    "A 3:1 with one good and one poor pulley",
    given=(NEAR_EFFICIENCY, FAR_EFFICIENCY),
    between=(q.LOAD, q.HAND_PULL),
    result=q.ADVANTAGE,
    assumptions=(
        "A simple 3:1: hand, travelling pulley, pulley at the anchor, rope grab on the load's "
        "strand.",
        "The rope moves towards the hand; all strands are parallel.",
    ),
    cautions=CAUTIONS,
    source=SOURCE,
)
def two_pulley_advantage(argument: Argument) -> Step:
    """Load over hand's pull of a hauled 3:1 whose two pulleys differ."""
    near, far = argument.symbols(NEAR_EFFICIENCY, FAR_EFFICIENCY)
    load, pull, advantage = argument.symbols(q.LOAD, q.HAND_PULL, q.ADVANTAGE)
    carried = argument.law(
        "Three strands carry the load: the hand's, the one behind the pulley nearest the haulers, "
        "and the one behind both pulleys.",
        load,
        pull + near * pull + near * far * pull,
    )
    ratio = argument.law(ADVANTAGE_IS, load, advantage * pull)
    both = argument.substitute("Put the load in.", ratio, carried)
    return argument.solve(
        "Divide by the pull: it drops out. The near pulley counts twice, the other one once.",
        both,
        advantage,
    )
