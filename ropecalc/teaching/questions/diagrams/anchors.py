"""Drawings for anchors of two and three legs."""

import math

from ropecalc.teaching.drawing import WEIGHT
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import anchors as bank
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import DOWN, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_LEG = 96.0
_KNOT: Place = (0.0, 0.0)


def _legs(sheet: Sheet, *from_plumb: float) -> list[Place]:
    """Legs from the knot up to a ceiling, each so far from plumb (right is positive)."""
    rise = _LEG * min(math.cos(a) for a in from_plumb)
    rise = max(rise, 34.0)
    bolts = [(rise * math.tan(a), rise) for a in from_plumb]
    left, right = min(x for x, _ in bolts), max(x for x, _ in bolts)
    parts.ceiling(sheet, min(left, -10) - 24, max(right, 10) + 24, rise + 4)
    for at in bolts:
        parts.rope(sheet, _KNOT, at)
    for at in bolts:
        parts.bolt(sheet, at)
    parts.knot(sheet, _KNOT)
    return bolts


def _pull(sheet: Sheet, text: str, direction: float = DOWN, reach: float = 54) -> None:
    """The load at the knot."""
    tip = parts.arrow(sheet, _KNOT, direction, reach, WEIGHT)
    sheet.label(text, parts.step(tip, direction, -14), (1, 0))


def _equal(facts: Facts, sheet: Sheet) -> str:
    half = facts.value("leg_angle") / 2
    left, right = _legs(sheet, -half, half)
    _pull(sheet, facts.text("load"))
    parts.angle(sheet, _KNOT, 26, UP - half, UP + half, facts.text("leg_angle"))
    for at, side in ((left, -1), (right, 1)):
        sheet.ask(parts.middle_of(_KNOT, at), (side * math.cos(half), -math.sin(half)))
    return "Two equal legs run from a knot up to two anchors; the load pulls down at the knot."


DIAGRAMS: dict[str, Diagram] = {
    bank.EQUAL_LEGS.key: _equal,
}
"""What draws each question of this topic."""
