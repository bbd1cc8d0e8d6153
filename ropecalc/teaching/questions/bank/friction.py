"""Questions on friction: pulleys and edges while hauling and while lowering."""

from collections.abc import Mapping
from math import exp as exponential
from typing import Any

from sympy import ceiling, exp

from ropecalc.mechanics import friction, hauling
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.pulleys import formulas
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_LOAD = Given(q.LOAD, 1.2, 2.8, 0.1, "kN")
_EFFICIENCY = Given(q.SHEAVE_EFFICIENCY, 0.70, 0.95, 0.01, "")
_THREE = Given(q.PARTS, 3, 3, 1, "")
_FRICTION = Given(q.FRICTION, 0.10, 0.50, 0.02, "")
_TURN = Given(q.TURN, 30, 110, 5, "°")
_CLOSE = Tolerance(relative=0.015)
_TWO_PER_CENT = Tolerance(relative=0.02)


def _series(ratio: Any, parts: Any) -> Any:
    """1 + r + r² + ... with ``parts`` terms."""
    return (1 - ratio**parts) / (1 - ratio)


ADVANTAGE = Template(
    key="advantage-with-friction",
    title="What a simple system is worth",
    stem=(
        "A simple {parts}:1 has its haul strand at the travelling pulley, and every pulley has an "
        "efficiency of {efficiency}. What is its actual advantage while the team hauls?"
    ),
    asked="Load over the pull of the hand",
    givens=(_EFFICIENCY, Given(q.PARTS, 4, 6, 1, "")),
    derivation=formulas.simple_advantage,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "efficiency-once",
            "The ideal advantage multiplied by the efficiency once",
            "Each strand lies behind one more pulley than the strand before it: add them up one by "
            "one.",
            lambda v: v.parts * v.efficiency,
        ),
        Mistake(
            "all-pulleys-on-every-strand",
            "The loss of all pulleys charged to every strand",
            "Only the last strand lies behind all pulleys. The hand's own strand lies behind none.",
            lambda v: v.parts * v.efficiency ** (v.parts - 1),
        ),
        Mistake(
            "no-friction",
            "Friction left out",
            "That is the ideal advantage. No team gets it.",
            lambda v: v.parts,
        ),
    ),
    difficulty=1,
    objective="find the actual advantage of a system from the efficiency of its pulleys",
)

RAISING = Template(
    key="three-to-one-raising",
    title="Raising with a 3:1",
    stem=(
        "A {parts}:1 whose haul strand leaves the travelling pulley raises a litter that weighs "
        "{load}. Every pulley has an efficiency of {efficiency}. How hard must the team pull?"
    ),
    asked="Pull of the haul team",
    givens=(_LOAD, _EFFICIENCY, _THREE),
    derivation=formulas.simple_pull_hauling,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "no-friction",
            "Friction left out",
            "Hauling, every pulley costs some of the pull, so it takes more than the ideal share.",
            lambda v: v.load / v.parts,
        ),
        Mistake(
            "all-pulleys-on-every-strand",
            "The loss of both pulleys charged to every strand",
            "The hand's strand lies behind no pulley, the next behind one, only the last behind "
            "both.",
            lambda v: v.load / (v.parts * v.efficiency ** (v.parts - 1)),
        ),
        Mistake(
            "wrong-direction",
            "The pull for lowering instead of raising",
            "Hauling, the rope moves towards the hand, so the hand's strand carries most.",
            lambda v: v.load / _series(1 / v.efficiency, v.parts),
        ),
    ),
    difficulty=1,
    objective="find the pull of the haul team while it raises",
)

LOWERING = Template(
    key="three-to-one-lowering",
    title="Easing down with a 3:1",
    stem=(
        "A {parts}:1 whose haul strand leaves the travelling pulley lets a litter down under "
        "control. It weighs {load}, and every pulley has an efficiency of {efficiency}. How "
        "hard does the team pull while it eases?"
    ),
    asked="Pull of the haul team",
    givens=(_LOAD, _EFFICIENCY, _THREE),
    derivation=formulas.simple_pull_lowering,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "no-friction",
            "Friction left out",
            "Lowering, friction helps to hold: the team feels less than the ideal share.",
            lambda v: v.load / v.parts,
        ),
        Mistake(
            "wrong-direction",
            "The pull for raising instead of lowering",
            "Lowering, the rope moves away from the hand, so the hand's strand carries least.",
            lambda v: v.load / _series(v.efficiency, v.parts),
        ),
        Mistake(
            "all-pulleys-on-every-strand",
            "The help of both pulleys credited to every strand",
            "Both pulleys lie between the hand and the furthest strand, but only one between "
            "neighbouring strands.",
            lambda v: v.load * v.efficiency ** (v.parts - 1) / v.parts,
        ),
    ),
    difficulty=2,
    objective="say what the same rig asks of the hands on the way down",
    must_pass=True,
)

EDGE_RAISING = Template(
    key="edge-raising",
    title="Raising over a bare edge",
    stem=(
        "A rope turns through {turn} over a smooth, rounded edge of the Lower Heron Wall without "
        "any protection. The coefficient of friction is {friction}, and the load's side carries "
        "{tension_behind}. What tension is above the edge while the team raises?"
    ),
    asked="Tension above the edge",
    givens=(Given(q.TENSION_BEHIND, 1.2, 2.8, 0.1, "kN"), _FRICTION, _TURN),
    derivation=friction.capstan_tension,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "wrong-direction",
            "The tension for lowering instead of raising",
            "Raising, the rope moves towards the team: the team's side carries more.",
            lambda v: v.tension_behind * exp(-v.friction * v.turn),
        ),
        Mistake(
            "coefficient-added",
            "The coefficient simply added to one",
            "Friction acts on every bit of the turn, and on a tension that has already grown. A "
            "larger turn costs more.",
            lambda v: v.tension_behind * (1 + v.friction),
        ),
        Mistake(
            "no-friction",
            "Friction left out",
            "The rope slides over rock. Both sides would be alike only on a perfect roller.",
            lambda v: v.tension_behind,
        ),
    ),
    difficulty=2,
    objective="find the tension above an edge while raising",
)

EDGE_LOWERING = Template(
    key="edge-lowering",
    title="Lowering over a bare edge",
    stem=(
        "A litter is lowered over a smooth, rounded edge at which the rope turns through {turn}. "
        "The coefficient of friction is {friction}, and the load's side carries {tension_ahead}. "
        "What tension is above the edge while the rope runs out?"
    ),
    asked="Tension above the edge",
    givens=(_FRICTION, _TURN, Given(q.TENSION_AHEAD, 1.2, 2.8, 0.1, "kN")),
    derivation=friction.capstan_tension_behind,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "wrong-direction",
            "The tension for raising instead of lowering",
            "Lowering, the rope moves towards the load: the load's side carries more.",
            lambda v: v.tension_ahead * exp(v.friction * v.turn),
        ),
        Mistake(
            "coefficient-taken-off",
            "The coefficient simply taken off one",
            "Friction acts on every bit of the turn, and on the tension that is left there.",
            lambda v: v.tension_ahead * (1 - v.friction),
        ),
        Mistake(
            "no-friction",
            "Friction left out",
            "The rock carries a part of the load while the rope slides over it.",
            lambda v: v.tension_ahead,
        ),
    ),
    difficulty=2,
    objective="find the tension above an edge while lowering",
)

TURNED_ROUND = Template(
    key="edge-turned-round",
    title="From lowering to raising",
    stem=(
        "A litter has been lowered over a bare, rounded edge: the rope turns through {turn}, the "
        "coefficient of friction is {friction}. Now it has to come up again. By what factor does "
        "the tension above the edge change?"
    ),
    asked="Tension above the edge, raising over lowering",
    givens=(_FRICTION, _TURN),
    derivation=friction.edge_reversal,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "one-direction-only",
            "Friction counted once",
            "It has to be lost on the way up, and its help on the way down is gone as well.",
            lambda v: exp(v.friction * v.turn),
        ),
        Mistake(
            "same-load-same-tension",
            "Same load, so the same tension",
            "The load stays the same. What the rock adds or takes turns round with the rope.",
            lambda v: v.friction**0,
        ),
        Mistake(
            "added-instead-of-multiplied",
            "Friction times turn added to one",
            "Every bit of turn multiplies the tension. Both directions together multiply it twice.",
            lambda v: 1 + v.friction * v.turn,
        ),
    ),
    difficulty=2,
    objective="say by how much the tension changes when a lowering becomes a raise",
    must_pass=True,
)

STACKED = Template(
    key="stacked-with-friction",
    title="A 3:1 on a 3:1",
    stem=(
        "A simple {second_parts}:1 pulls on the haul strand of a simple {first_parts}:1. All "
        "pulleys have an efficiency of {efficiency}. What is the actual advantage while hauling?"
    ),
    asked="Load over the pull of the hand",
    givens=(
        _EFFICIENCY,
        Given(formulas.FIRST_STAGE, 3, 3, 1, ""),
        Given(formulas.SECOND_STAGE, 3, 3, 1, ""),
    ),
    derivation=formulas.stacked_advantage,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "efficiency-once",
            "The ideal advantage multiplied by the efficiency once",
            "Four pulleys lose something, not one. Take each stage by itself, then multiply.",
            lambda v: v.first_parts * v.second_parts * v.efficiency,
        ),
        Mistake(
            "all-pulleys-on-every-strand",
            "The loss of all pulleys charged to every strand",
            "In each stage the first strand lies behind no pulley of that stage.",
            lambda v: v.first_parts * v.second_parts * v.efficiency**4,
        ),
        Mistake(
            "stages-added",
            "The two stages added",
            "The second stage pulls with what the first one gives: they multiply.",
            lambda v: _series(v.efficiency, v.first_parts) + _series(v.efficiency, v.second_parts),
        ),
    ),
    difficulty=2,
    objective="find the actual advantage of one system on another",
)

GOOD_PULLEY = Template(
    key="good-pulley-first",
    title="Where the good pulley goes",
    stem=(
        "For a 3:1 there is a good pulley with an efficiency of {near_efficiency} and a poor one "
        "with {far_efficiency}. Put the good one where it helps most. What is the actual advantage "
        "while hauling?"
    ),
    asked="Load over the pull of the hand",
    givens=(
        Given(formulas.NEAR_EFFICIENCY, 0.88, 0.97, 0.01, ""),
        Given(formulas.FAR_EFFICIENCY, 0.50, 0.75, 0.01, ""),
    ),
    derivation=formulas.two_pulley_advantage,
    tolerance=_CLOSE,
    mistakes=(
        Mistake(
            "poor-pulley-first",
            "The poor pulley put nearest the haulers",
            "All the rope's other strands lie behind the pulley nearest the haulers, so its loss "
            "counts twice.",
            lambda v: 1 + v.far_efficiency + v.far_efficiency * v.near_efficiency,
        ),
        Mistake(
            "average-efficiency",
            "Both pulleys given the average efficiency",
            "The order matters: the pulley nearest the haulers acts on two strands, the other on "
            "one.",
            lambda v: (
                1
                + (v.near_efficiency + v.far_efficiency) / 2
                + ((v.near_efficiency + v.far_efficiency) / 2) ** 2
            ),
        ),
        Mistake(
            "all-pulleys-on-every-strand",
            "The loss of both pulleys charged to every strand",
            "The hand's strand lies behind no pulley, the next behind one, only the last behind "
            "both.",
            lambda v: 3 * v.near_efficiency * v.far_efficiency,
        ),
    ),
    difficulty=2,
    objective="put the better pulley where it helps most",
)


def _not_on_the_edge(values: Mapping[str, float]) -> bool:
    """Whether a little more friction would not change the number of people."""
    above = values["load"] * exponential(values["friction"] * values["turn"])
    hand = above / _series(values["efficiency"], values["parts"])
    return 0.15 < hand / values["pull_per_person"] % 1 < 0.9


PEOPLE = Template(
    key="people-over-an-edge",
    title="How many people have to haul?",
    stem=(
        "A litter that weighs {load} is raised over a bare, rounded edge: the rope turns through "
        "{turn} there, the coefficient of friction is {friction}. Behind the edge a simple "
        "{parts}:1 pulls, with its haul strand at the travelling pulley and an efficiency of "
        "{efficiency} at each pulley. One person keeps up {pull_per_person}. How many people does "
        "it take?"
    ),
    asked="Number of people (a whole number)",
    givens=(
        Given(q.LOAD, 1.6, 2.8, 0.1, "kN"),
        Given(q.FRICTION, 0.20, 0.36, 0.02, ""),
        Given(q.TURN, 60, 100, 5, "°"),
        Given(q.SHEAVE_EFFICIENCY, 0.75, 0.95, 0.01, ""),
        _THREE,
        Given(hauling.STEADY_PULL, 0.16, 0.26, 0.02, "kN"),
    ),
    derivation=hauling.people_needed,
    tolerance=Tolerance(absolute=0.02),
    mistakes=(
        Mistake(
            "no-friction",
            "Friction left out",
            "Edge and pulleys both take their part while the team raises.",
            lambda v: ceiling(v.load / (v.parts * v.pull_per_person)),
        ),
        Mistake(
            "edge-helps",
            "The edge taken to help",
            "That is so while lowering. Raising, the rope moves towards the team, and the team's "
            "side carries more.",
            lambda v: ceiling(
                v.load
                * exp(-v.friction * v.turn)
                / (_series(v.efficiency, v.parts) * v.pull_per_person)
            ),
        ),
        Mistake(
            "advantage-left-out",
            "The system's advantage left out",
            "The people pull on the haul strand, which carries only a share of what the rope above "
            "the edge does.",
            lambda v: ceiling(v.load * exp(v.friction * v.turn) / v.pull_per_person),
        ),
    ),
    difficulty=3,
    objective="find how many people a raise over an edge takes",
    usable=_not_on_the_edge,
)

QUESTIONS = (
    ADVANTAGE,
    RAISING,
    LOWERING,
    EDGE_RAISING,
    EDGE_LOWERING,
    TURNED_ROUND,
    STACKED,
    GOOD_PULLEY,
    PEOPLE,
)
"""This module's questions, in the order of the lesson."""
