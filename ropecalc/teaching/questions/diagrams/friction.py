"""Drawings for friction: pulley systems in motion, and a rope over a bare edge."""

import math

from ropecalc.teaching.drawing import ROCK_FACE
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import friction as bank
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.advantage import ask_hand, weigh
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.rigging import Rig, rig
from ropecalc.teaching.questions.diagrams.sheet import Sheet


def _system(facts: Facts, sheet: Sheet, name: str, metre: float = 26.0) -> Rig:
    """A system whose pulleys all have the same efficiency."""
    rigged = rig(sheet, name, metre=metre)
    rigged.name(sheet, name, f"efficiency {facts.text('efficiency')} each")
    return rigged


def _hauling(sheet: Sheet, rigged: Rig) -> None:
    x, y = rigged.hand
    parts.moving(sheet, (x - 30, y), BACK)
    parts.moving(sheet, (rigged.litter[0] + 34, rigged.litter[1] - 30), UP)


def _advantage(facts: Facts, sheet: Sheet) -> str:
    rigged = _system(facts, sheet, f"simple {facts.text('parts')}:1")
    _hauling(sheet, rigged)
    ask_hand(sheet, rigged, "advantage ?")
    return "A simple system on the cliff top; the team walks back and the litter rises."


def _raising(facts: Facts, sheet: Sheet) -> str:
    rigged = _system(facts, sheet, f"simple {facts.text('parts')}:1")
    _hauling(sheet, rigged)
    weigh(sheet, rigged.litter, facts.text("load"))
    ask_hand(sheet, rigged)
    return "A simple system on the cliff top; the team walks back and the litter rises."


def _lowering(facts: Facts, sheet: Sheet) -> str:
    rigged = _system(facts, sheet, f"simple {facts.text('parts')}:1")
    x, y = rigged.hand
    parts.moving(sheet, (x - 30, y), OUT)
    parts.moving(sheet, (rigged.litter[0] + 34, rigged.litter[1] - 30), DOWN)
    weigh(sheet, rigged.litter, facts.text("load"))
    ask_hand(sheet, rigged)
    return "A simple system on the cliff top; the team lets rope go and the litter sinks."


def _stacked(facts: Facts, sheet: Sheet) -> str:
    name = f"{facts.text('second_parts')}:1 on {facts.text('first_parts')}:1"
    rigged = _system(facts, sheet, name, 17.0)
    _hauling(sheet, rigged)
    ask_hand(sheet, rigged, "advantage ?")
    return "One system pulls on the haul strand of another, which holds the litter."


def _good_pulley(facts: Facts, sheet: Sheet) -> str:
    rigged = rig(sheet, "simple 3:1")
    good, poor = facts.text("near_efficiency"), facts.text("far_efficiency")
    rigged.name(sheet, f"a pulley of {good}", f"and one of {poor}")
    _hauling(sheet, rigged)
    ask_hand(sheet, rigged, "advantage ?")
    return "A simple 3:1 with two pulleys, one at the anchor and one at the traveller."


# --- over an edge --------------------------------------------------------------------------------

_ROUND = 46.0
"""Radius of the rounded edge."""
_MIDDLE: Place = (0.0, 0.0)


def _over_edge(facts: Facts, sheet: Sheet) -> Place:
    """A rope over a rounded edge that turns as given; gives back its upper end.

    The load's strand hangs plumb; how steeply the other one leaves follows from the turn.
    """
    turn = facts.value("turn")
    upper = parts.step(parts.step(_MIDDLE, turn, _ROUND), turn + UP, 108)
    litter: Place = (_ROUND, -62.0)
    last = max(turn, UP)
    brow = parts.arc_points(_MIDDLE, _ROUND - 2, math.radians(-42), last)
    top = parts.step(brow[-1], last + UP + 0.06, 128)
    surface = [(14.0, -128.0), *brow, top]
    sheet.area(ROCK_FACE, *surface, (top[0], -128))
    sheet.line(parts.EDGE, *surface)
    sheet.line(parts.ROPE, upper, *parts.arc_points(_MIDDLE, _ROUND, turn, 0.0), litter)
    for ray in (0.0, turn):
        sheet.line(parts.PLUMB, _MIDDLE, parts.step(_MIDDLE, ray, _ROUND - 3))
    parts.angle(sheet, _MIDDLE, 17, 0.0, turn, facts.text("turn"))
    parts.litter(sheet, litter)
    sheet.label(f"friction {facts.text('friction')}", (-20, -34), (-1, -1))
    return upper


def _beside_rope(facts: Facts, upper: Place, away: float) -> Place:
    """A place above the upper strand, ``away`` from its end."""
    back = facts.value("turn") - UP
    return parts.step(parts.step(upper, back, away), facts.value("turn"), 14)


def _edge(facts: Facts, sheet: Sheet, known: str, hauling: bool) -> None:
    upper = _over_edge(facts, sheet)
    back = facts.value("turn") - UP
    parts.moving(sheet, _beside_rope(facts, upper, 74), back + math.pi if hauling else back)
    parts.moving(sheet, (_ROUND + 16, -18), UP if hauling else DOWN)
    sheet.label(facts.text(known), (_ROUND, -50), (1, 0))
    sheet.ask(parts.step(upper, back, 20), parts.way(facts.value("turn")))


def _edge_raising(facts: Facts, sheet: Sheet) -> str:
    _edge(facts, sheet, "tension_behind", hauling=True)
    return "A rope runs over a rounded edge of rock; arrows show that the litter is raised."


def _edge_lowering(facts: Facts, sheet: Sheet) -> str:
    _edge(facts, sheet, "tension_ahead", hauling=False)
    return "A rope runs over a rounded edge of rock; arrows show that the litter is lowered."


def _turned_round(facts: Facts, sheet: Sheet) -> str:
    upper = _over_edge(facts, sheet)
    turn = facts.value("turn")
    for away, way, text in ((84.0, turn - UP, "first"), (34.0, turn + UP, "then")):
        parts.moving(sheet, _beside_rope(facts, upper, away), way, text)
    sheet.ask(parts.step(upper, turn - UP, 8), parts.way(turn), "then over first ?")
    return (
        "A rope runs over a rounded edge of rock; arrows show that the litter is first lowered, "
        "then raised."
    )


def _people(facts: Facts, sheet: Sheet) -> str:
    upper = _over_edge(facts, sheet)
    turn = facts.value("turn")
    parts.moving(sheet, _beside_rope(facts, upper, 74), turn + UP)
    parts.moving(sheet, (_ROUND + 16, -18), UP)
    sheet.label(facts.text("load"), (_ROUND, -50), (1, 0))
    x, y = upper
    parts.box(sheet, (x - 30, y), 60, 26, f"{facts.text('parts')}:1")
    sheet.label(f"efficiency {facts.text('efficiency')} each", (x - 30, y + 13), (-1, 1))
    sheet.label(f"one person {facts.text('pull_per_person')}", (x - 30, y + 29), (-1, 1))
    sheet.ask((x - 60, y), (-1, 0), "people ?")
    return (
        "A rope runs up over a rounded edge of rock and into a system, on which the team pulls; "
        "the litter is raised."
    )


DIAGRAMS: dict[str, Diagram] = {
    bank.ADVANTAGE.key: _advantage,
    bank.RAISING.key: _raising,
    bank.LOWERING.key: _lowering,
    bank.EDGE_RAISING.key: _edge_raising,
    bank.EDGE_LOWERING.key: _edge_lowering,
    bank.TURNED_ROUND.key: _turned_round,
    bank.PEOPLE.key: _people,
    bank.STACKED.key: _stacked,
    bank.GOOD_PULLEY.key: _good_pulley,
}
"""What draws each question of this topic."""
