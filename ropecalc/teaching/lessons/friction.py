"""Friction at edges and pulleys: the side that the rope moves towards carries more."""

from collections.abc import Mapping
from functools import partial
from math import pi, radians

from ropecalc import cautions
from ropecalc.mechanics import friction, redirects, sheaves, vectors
from ropecalc.mechanics.pulleys import common_system, forces, formulas
from ropecalc.teaching.facts import Fact, FactTable, Quantity
from ropecalc.teaching.figures import THREE_TENSIONS
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import friction as bank
from ropecalc.teaching.shown import Table
from ropecalc.units import Display, Kind

_MASS = 200.0
_FRICTION, _TURN = 0.3, radians(90)
_EFFICIENCY, _POOR = 0.9, 0.7
_GOOD_PULLEY, _POOR_PULLEY = 0.95, 0.6
"""The example: one litter over a bare edge of the Lower Heron Wall and on a 3:1."""


def _load() -> float:
    return float(vectors.weight(mass=_MASS))


def _above(direction: str, load: float, turn: float = _TURN) -> friction.Band:
    return friction.over_edge(direction, load_side=load, friction=_FRICTION, turn=turn).team_side


def _advantage(name: str, efficiency: float, direction: str = "hauling") -> float:
    worked = forces(common_system(name), direction, load=1.0, efficiency=efficiency)
    return float(worked.advantage.low)


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    return {
        "load": _load(),
        "tension_behind": _load(),
        "friction": _FRICTION,
        "turn": _TURN,
        "efficiency": _EFFICIENCY,
        "parts": 3.0,
        "first_parts": 3.0,
        "second_parts": 3.0,
        "near_efficiency": _GOOD_PULLEY,
        "far_efficiency": _POOR_PULLEY,
    }


def _example() -> Mapping[str, Quantity]:
    return {
        "mass": (_MASS, Kind.MASS),
        "weight": (_load(), Kind.FORCE),
        "turn": (_TURN, Kind.ANGLE, 2),
        "friction": (_FRICTION, Kind.RATIO),
        "efficiency": (_EFFICIENCY, Kind.RATIO),
    }


def _at_the_edge() -> Mapping[str, Quantity]:
    up, down = (_above(way, _load()).low for way in ("hauling", "lowering"))
    return {
        "up": (up, Kind.FORCE),
        "down": (down, Kind.FORCE),
        "weight": (_load(), Kind.FORCE),
        "times": (up / down, Kind.RATIO),
    }


def _grows(turn: float) -> float:
    """How many times the tension behind the tension ahead is after so much turn."""
    return float(friction.capstan_tension(tension_behind=1.0, friction=_FRICTION, turn=turn))


def _tiny_turn() -> Mapping[str, Quantity]:
    tiny = radians(1)
    press = float(redirects.redirect_resultant(strand_tension=1.0, strand_angle=pi - tiny))
    factor = 1 + _FRICTION * press
    turns = round(_TURN / tiny)
    return {
        "open": (pi - tiny, Kind.ANGLE),
        "press": (100 * press, Kind.RATIO),
        "friction": (_FRICTION, Kind.RATIO),
        "share": (100 * _FRICTION * press, Kind.RATIO),
        "factor": (factor, Kind.RATIO, 5),
        "turns": (float(turns), Kind.RATIO),
        "together": (factor**turns, Kind.RATIO),
    }


def _in_one_go() -> Mapping[str, Quantity]:
    return {
        "turn": (_TURN, Kind.ANGLE, 2),
        "radians": (_TURN, Kind.RATIO),
        "friction": (_FRICTION, Kind.RATIO),
        "power": (_FRICTION * _TURN, Kind.RATIO),
        "times": (_grows(_TURN), Kind.RATIO),
        "weight": (_load(), Kind.FORCE),
        "up": (_above("hauling", _load()).low, Kind.FORCE),
        "down": (_above("lowering", _load()).low, Kind.FORCE),
    }


def _turn_by_turn(display: Display) -> Table:
    rows: list[tuple[str, ...]] = [
        ("turn so far", "factor so far", "above the edge, raising", "lowering")
    ]
    for degrees in (0, 15, 30, 45, 60, 75, 90):
        turn = radians(degrees)
        both = (_above(way, _load(), turn).low for way in ("hauling", "lowering"))
        rows.append(
            (
                say(display, turn, Kind.ANGLE),
                display.show(_grows(turn), Kind.RATIO),
                *(say(display, force, Kind.FORCE) for force in both),
            )
        )
    return tuple(rows)


def _three_to_one(direction: str, display: Display) -> Table:
    """A 3:1 strand by strand: in words, in multiples of the strand that carries most, as forces."""
    worked = forces(common_system("3:1"), direction, load=_load(), efficiency=_EFFICIENCY)
    far, near, hand = (list(worked.strands.values())[i].low for i in (1, 2, 3))
    strands = [("the hand's strand", hand), ("the next strand", near), ("the furthest strand", far)]
    if direction == "lowering":
        strands.reverse()
    most = strands[0][1]
    symbols = ("1", "η", "η · η")
    rows: list[tuple[str, ...]] = [
        ("strand", "share", f"with η = {_EFFICIENCY:g}", "in the example")
    ]
    for (name, force), symbol in zip(strands, symbols, strict=True):
        share = display.show(force / most, Kind.RATIO)
        rows.append((name, symbol, share, say(display, force, Kind.FORCE)))
    whole = display.show(_load() / most, Kind.RATIO)
    rows.append(("together", "1 + η + η · η", whole, say(display, _load(), Kind.FORCE)))
    return tuple(rows)


def _three_pulls() -> Mapping[str, Quantity]:
    system = common_system("3:1")
    up, down = (
        forces(system, way, load=_load(), efficiency=_EFFICIENCY).hand_pull.low
        for way in ("hauling", "lowering")
    )
    return {
        "up": (up, Kind.FORCE),
        "down": (down, Kind.FORCE),
        "ideal": (_load() / 3, Kind.FORCE),
    }


def _worth() -> Mapping[str, Quantity]:
    worth = _advantage("3:1", _EFFICIENCY)
    return {
        "weight": (_load(), Kind.FORCE),
        "hand": (_load() / worth, Kind.FORCE),
        "worth": (worth, Kind.RATIO),
        "efficiency": (_EFFICIENCY, Kind.RATIO),
    }


def _stages() -> Mapping[str, Quantity]:
    one = _advantage("3:1", _EFFICIENCY)
    return {
        "one": (one, Kind.RATIO),
        "both": (_advantage("9:1", _EFFICIENCY), Kind.RATIO),
        "counted": (9.0, Kind.RATIO),
    }


def _edge_and_system() -> Mapping[str, Quantity]:
    up, down = (
        _above(way, _load()).low / _advantage("3:1", _EFFICIENCY, way)
        for way in ("hauling", "lowering")
    )
    return {
        "up": (up, Kind.FORCE),
        "down": (down, Kind.FORCE),
        "times": (up / down, Kind.RATIO),
    }


def _ladder() -> Mapping[str, Quantity]:
    good, poor = _EFFICIENCY, _POOR
    return {
        "good": (good, Kind.RATIO),
        "poor": (poor, Kind.RATIO),
        "three": (_advantage("3:1", good), Kind.RATIO),
        "five": (_advantage("5:1", good), Kind.RATIO),
        "nine": (_advantage("9:1", good), Kind.RATIO),
        "three_poor": (_advantage("3:1", poor), Kind.RATIO),
        "five_poor": (_advantage("5:1", poor), Kind.RATIO),
        "nine_poor": (_advantage("9:1", poor), Kind.RATIO),
        "complex": (_advantage("complex 5:1", good), Kind.RATIO),
        "complex_poor": (_advantage("complex 5:1", poor), Kind.RATIO),
        "simple_poor": (_advantage("5:1", poor), Kind.RATIO),
    }


def _order() -> Mapping[str, Quantity]:
    good, poor = _GOOD_PULLEY, _POOR_PULLEY
    return {
        "good": (good, Kind.RATIO),
        "poor": (poor, Kind.RATIO),
        "right": (
            formulas.two_pulley_advantage(near_efficiency=good, far_efficiency=poor),
            Kind.RATIO,
        ),
        "wrong": (
            formulas.two_pulley_advantage(near_efficiency=poor, far_efficiency=good),
            Kind.RATIO,
        ),
    }


def _partial_turns() -> Mapping[str, Quantity]:
    def most(degrees: float) -> Quantity:
        kept = sheaves.bearing_ratio(efficiency=_EFFICIENCY, turn=radians(degrees))
        return (float(kept), Kind.RATIO)

    return {
        "efficiency": (_EFFICIENCY, Kind.RATIO),
        "small": (radians(30), Kind.ANGLE, 2),
        "right": (radians(90), Kind.ANGLE, 2),
        "most_small": most(30),
        "most_right": most(90),
    }


def _edge_pulley() -> Mapping[str, Quantity]:
    up = sheaves.over_sheave(
        "hauling", load_side=_load(), efficiency=_EFFICIENCY, turn=_TURN
    ).team_side
    return {
        "bare": (_above("hauling", _load()).high, Kind.FORCE),
        "low": (up.low, Kind.FORCE),
        "high": (up.high, Kind.FORCE),
        "turn": (_TURN, Kind.ANGLE, 2),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example on this page: {mass} hang on the rope, which weighs {weight}. The rope turns "
        "{turn} over a bare, rounded edge with a coefficient of friction of {friction}. The "
        "pulleys have an efficiency of {efficiency}. Both are illustrative: measure your own.",
        _example,
    ),
    Fact(
        "at-the-edge",
        "With {weight} on the load's side, the rope above the edge carries {down} while lowering "
        "and {up} while raising: {times} times as much, and the load has not changed.",
        _at_the_edge,
        after_prediction=True,
    ),
    Fact(
        "tiny-turn",
        "Take one degree at a time. Two strands that open to {open} press on the rock with {press} "
        "% of their tension, as on a redirect. With a coefficient of {friction} that is {share} % "
        "of friction: one degree makes the tension {factor} times as large. Do that {turns} times "
        "over, {factor} times {factor} and so on, and you come to {together}.",
        _tiny_turn,
    ),
    Fact(
        "in-one-go",
        "In one go: {turn} are {radians} in radians (degrees times π, over 180). {friction} times "
        "{radians} is {power}, and the key eˣ turns {power} into {times}. Raising, the "
        "team's side carries {weight} times {times}, which is {up}; lowering, {weight} over "
        "{times}, which is {down}.",
        _in_one_go,
    ),
    Fact(
        "worth",
        "So the hand pulls {weight} over {worth}, which is {hand}: with these pulleys the 3:1 is "
        "worth {worth}. A 5:1 has two more strands, each {efficiency} times the one before it.",
        _worth,
    ),
    Fact(
        "stages-multiply",
        "A 3:1 on a 3:1 is worth {one} times {one}, which is {both}, and not {counted}.",
        _stages,
    ),
    Fact(
        "three-pulls",
        "The same 3:1 in three states: raising takes {up}, easing down takes {down}, and to hold "
        "it anything in between will do. Without friction all three would be {ideal}.",
        _three_pulls,
    ),
    Fact(
        "edge-and-system",
        "With the bare edge in front of the 3:1 the hand pulls {down} while lowering and {up} "
        "while raising: {times} times as much.",
        _edge_and_system,
    ),
    Fact(
        "ladder",
        "With pulleys of {good} a simple 3:1 is worth {three}, a simple 5:1 {five} and a 9:1 "
        "{nine}. With poor ones of {poor} they are worth {three_poor}, {five_poor} and "
        "{nine_poor}. The complex 5:1 goes from {complex} to {complex_poor}: with good pulleys it "
        "beats the simple 5:1, with poor ones it falls behind its {simple_poor}.",
        _ladder,
    ),
    Fact(
        "good-pulley",
        "One pulley of {good} and one of {poor} for a 3:1: with the good one nearest the haulers "
        "it is worth {right}, the other way round {wrong}.",
        _order,
    ),
    Fact(
        "partial-turns",
        "A pulley of efficiency {efficiency} at a half-turn keeps at least that, whatever the "
        "turn. If its axle takes it all, it keeps {most_right} at {right} and {most_small} at "
        "{small}. The truth lies between.",
        _partial_turns,
    ),
    Fact(
        "edge-pulley",
        "Raising the example over the bare edge takes {bare} above it. A pulley of the same turn, "
        "{turn}, brings that down to between {low} and {high}.",
        _edge_pulley,
    ),
)


_TABLES = (
    FactTable(
        "turn-by-turn",
        "The same factor with every bit of turn, the example's rope over the bare edge:",
        _turn_by_turn,
    ),
    FactTable(
        "three-to-one-raising",
        "The example on a 3:1 without an edge, raising:",
        partial(_three_to_one, "hauling"),
    ),
    FactTable(
        "three-to-one-lowering",
        "The same 3:1 while the load is eased down:",
        partial(_three_to_one, "lowering"),
    ),
)


def _cells_at_an_edge() -> Mapping[str, Quantity]:
    mass, turn, mu = 80.0, radians(90), _FRICTION
    load = vectors.weight(mass=mass)
    up, down = (
        friction.over_edge(way, load_side=load, friction=mu, turn=turn).team_side.low
        for way in ("hauling", "lowering")
    )
    return {
        "mass": (mass, Kind.MASS),
        "turn": (turn, Kind.ANGLE, 2),
        "mu": (mu, Kind.RATIO),
        "up": (up, Kind.FORCE, 2),
        "down": (down, Kind.FORCE, 2),
    }


def _cells_on_the_system() -> Mapping[str, Quantity]:
    mass = 80.0
    load = vectors.weight(mass=mass)
    up, down = (
        forces(common_system("3:1"), way, load=load, efficiency=_EFFICIENCY).hand_pull.low
        for way in ("hauling", "lowering")
    )
    return {
        "mass": (mass, Kind.MASS),
        "efficiency": (_EFFICIENCY, Kind.RATIO),
        "up": (up, Kind.FORCE, 2),
        "down": (down, Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "Rope over a chair's back, a bag on it: raise, hold, lower with one finger each."),
        (10, "The figure: guess, then lower, hold and raise over the bare edge."),
        (10, "The 3:1 strand by strand on the board, raising; then the class does lowering."),
        (10, "The quick checks, alone. Each time ask first which way the rope moves."),
    ),
    board=(
        "One edge, one rope, two tensions. Which side is larger? Only an arrow for the way the "
        "rope moves settles it.",
        "Turn the arrow round. Cross out the answer and write the other one.",
        "A 3:1 with 1 at the hand, then the efficiency, then its square. Add up.",
        "The same 3:1 with the arrow turned round: now the furthest strand is the largest.",
        "Two pulleys, one good, one poor. Try both places; write both sums.",
    ),
    field=(
        Fact(
            "cells-at-an-edge",
            "Hang {mass} of test weight over a smooth, rounded edge with a turn of {turn}, a load "
            "cell above the edge, nobody below. Haul slowly, then let out slowly, and read while "
            "the rope moves. With a coefficient of {mu} the cell reads about {up} and {down}. Work "
            "back from your own two readings: their ratio gives your coefficient.",
            _cells_at_an_edge,
        ),
        Fact(
            "cells-on-the-system",
            "The same {mass} on a 3:1 with a cell in the haul strand: about {up} while it rises "
            "and {down} while it is eased, with pulleys of {efficiency}. Stop, and watch the cell "
            "wander between the two while nothing moves.",
            _cells_on_the_system,
        ),
    ),
)

FRICTION = LessonContent(
    number=5,
    key="friction",
    file="05_friction",
    example=_known,
    title="Friction: direction decides",
    tables=_TABLES,
    figures=(THREE_TENSIONS,),
    derivations=(
        friction.capstan_tension,
        friction.edge_reversal,
        formulas.simple_advantage,
        formulas.simple_pull_hauling,
        formulas.simple_pull_lowering,
        formulas.stacked_advantage,
        formulas.two_pulley_advantage,
        sheaves.bearing_ratio,
    ),
    facts=_FACTS,
    questions=(
        bank.ADVANTAGE,
        bank.LOWERING,
        bank.EDGE_RAISING,
        bank.TURNED_ROUND,
        bank.GOOD_PULLEY,
    ),
    myths=(
        bank.TURNED_ROUND,
        bank.EDGE_RAISING,
        bank.ADVANTAGE,
    ),
    words=(
        "friction-coefficient",
        "turn",
        "efficiency",
        "actual-advantage",
        "ahead-behind",
        "held-band",
        "advantage",
        "strand",
    ),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        "Friction and efficiency change with rope, rock, pulley, load, water and dirt. The values "
        "here are illustrative: enter values you measured, and expect others on the day.",
        "The law of the edge is for a rope that slides over a smooth, rounded rock. A sharp edge "
        "cuts: protect it, whatever the friction.",
        cautions.STATIC,
    ),
)
