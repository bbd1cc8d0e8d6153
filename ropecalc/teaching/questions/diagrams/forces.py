"""Drawings for weight, cells, parts and sums of pulls, and one rope pulled aside."""

import math

from ropecalc.teaching.canvas import INK
from ropecalc.teaching.drawing import PUSH, TAG, WEIGHT
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import forces as bank
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_LEANING = math.radians(32)
"""How far a rope leans in a drawing where the lean is not given."""


def _weight(facts: Facts, sheet: Sheet) -> str:
    top: Place = (0.0, 0.0)
    parts.ceiling(sheet, -60, 60, 4)
    parts.bolt(sheet, top)
    parts.rope(sheet, top, (0, -62))
    parts.litter(sheet, (0, -62))
    tip = parts.arrow(sheet, (0, -62 - parts.LITTER_DEEP), DOWN, 38, WEIGHT)
    sheet.label(facts.text("mass"), (24, -62 - parts.LITTER_HANGS), (1, 0))
    sheet.ask((tip[0], tip[1] + 16), (1, 0), "weight ?")
    return "A litter hangs still on one rope; an arrow for its weight points down."


def _pounds(facts: Facts, sheet: Sheet) -> str:
    parts.cell(sheet, (0, 0), f"{facts.text('pounds_force')} lbf")
    sheet.ask((34, 0), (1, 0), "= ? kN")
    return "A load cell in a rope shows a number of pounds-force."


def _kilograms(facts: Facts, sheet: Sheet) -> str:
    parts.cell(sheet, (0, 0), f"{facts.text('kilonewtons')} kN")
    parts.cell(sheet, (0, -96), "? kg", framed=True)
    return "Two load cells hang one below the other in the same rope; a load pulls at the end."


def _level_part(facts: Facts, sheet: Sheet) -> str:
    at: Place = (0.0, 0.0)
    rise = facts.value("rope_elevation")
    parts.litter(sheet, at)
    parts.level(sheet, at, 118)
    tip = parts.arrow(sheet, at, rise, 104, parts.ROPE)
    pulled = parts.arrow(sheet, at, OUT, 62, PUSH)
    parts.angle(sheet, at, 84, 0, rise, facts.text("rope_elevation"))
    sheet.label(facts.text("rope_tension"), tip, parts.way(rise + UP / 2))
    sheet.ask((pulled[0] - 12, 0), (0, -1), "level part ?")
    return "A rope pulls the litter up and out; an arrow shows the level part of its pull."


def _two_pulls(facts: Facts, sheet: Sheet) -> str:
    apart = facts.value("pull_angle")
    plate: Place = (0.0, 0.0)
    first = parts.arrow(sheet, plate, 0, 96, parts.ROPE)
    second = parts.arrow(sheet, plate, apart, 96, parts.ROPE)
    parts.plate(sheet, plate)
    parts.angle(sheet, plate, 34, 0, apart, facts.text("pull_angle"))
    sheet.label(facts.text("first_pull"), (first[0] - 8, 0), (0, -1))
    sheet.label(facts.text("second_pull"), second, parts.way(apart))
    sheet.ask((0, -8), (-0.6, -1), "together ?")
    sheet.not_to_scale()
    return "Two ropes pull on a rigging plate in two directions; the angle is drawn between them."


def _aside(sheet: Sheet, pull: float = 0.0) -> tuple[Place, Place, Place]:
    """A rope pulled aside in the direction ``pull``; gives directional, litter, arrow's tip."""
    top: Place = (0.0, 0.0)
    at = parts.step(top, DOWN + _LEANING, 132)
    parts.ceiling(sheet, -44, 44, 4)
    parts.plumb(sheet, top, 150)
    parts.rope(sheet, top, at)
    parts.bolt(sheet, top)
    parts.litter(sheet, at)
    tip = parts.arrow(sheet, at, pull, 66, TAG)
    sheet.not_to_scale()
    return top, at, tip


def _hanging_weight(facts: Facts, sheet: Sheet, at: Place) -> None:
    tip = parts.arrow(sheet, (at[0], at[1] - parts.LITTER_DEEP), DOWN, 32, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 12), (1, 0), INK)


_LEVEL = (
    "A litter hangs on one rope and a level arrow pulls it aside, so the rope leans from plumb."
)


def _lean(facts: Facts, sheet: Sheet) -> str:
    top, at, tip = _aside(sheet)
    _hanging_weight(facts, sheet, at)
    sheet.label(facts.text("side_pull"), (tip[0] - 20, tip[1]), (0, 1))
    parts.asked_angle(sheet, top, 62, DOWN, DOWN + _LEANING)
    return _LEVEL


def _moved(facts: Facts, sheet: Sheet) -> str:
    top, at, tip = _aside(sheet)
    _hanging_weight(facts, sheet, at)
    sheet.label(facts.text("side_pull"), (tip[0] - 20, tip[1]), (0, 1))
    parts.length(sheet, top, at, facts.text("rope_above"), 18)
    parts.asked_length(sheet, (0, at[1]), at)
    return _LEVEL


def _tension(facts: Facts, sheet: Sheet) -> str:
    top, at, tip = _aside(sheet)
    _hanging_weight(facts, sheet, at)
    sheet.label(facts.text("side_pull"), (tip[0] - 20, tip[1]), (0, 1))
    sheet.ask(parts.middle_of(top, at), parts.way(_LEANING))
    return _LEVEL


def _slanted(facts: Facts, sheet: Sheet) -> str:
    rise = facts.value("pull_elevation")
    top, at, tip = _aside(sheet, rise)
    _hanging_weight(facts, sheet, at)
    parts.level(sheet, at, 84)
    sheet.label(facts.text("slanted_pull"), tip, parts.way(rise))
    parts.angle(sheet, at, 42, 0, rise, facts.text("pull_elevation"))
    parts.asked_angle(sheet, top, 62, DOWN, DOWN + _LEANING)
    return "A litter hangs on one rope; an arrow pulls it aside and up, so the rope leans."


DIAGRAMS: dict[str, Diagram] = {
    bank.WEIGHT.key: _weight,
    bank.POUNDS.key: _pounds,
    bank.KILOGRAMS.key: _kilograms,
    bank.LEVEL_PART.key: _level_part,
    bank.TWO_PULLS.key: _two_pulls,
    bank.LEAN.key: _lean,
    bank.MOVED.key: _moved,
    bank.TENSION.key: _tension,
    bank.SLANTED.key: _slanted,
}
"""What draws each question of this topic."""
