"""Drawings for holding a litter off the rock: attendant, tag line, track lines."""

import math

from ropecalc.teaching.drawing import CLOTHES, FAINT, HAUL, LIMIT, PUSH, TAG, WEIGHT, Stroke
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import holding_off as bank
from ropecalc.teaching.questions.diagrams import legs, parts, section
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

# --- an attendant --------------------------------------------------------------------------------

_HEAD: Place = (34.0, 0.0)
_EDGE: Place = (0.0, -36.0)
_SIZE = 26.0
_ARM = Stroke(CLOTHES, 3.6)
_ATTENDANT = (
    "A litter hangs from the head of a frame on the cliff's edge; an attendant with feet on the "
    "wall pushes it level outward, so that the haul line leans from the plumb line."
)


def _attendant(facts: Facts, sheet: Sheet, at: Place) -> Place:
    """The litter pushed off to ``at``; gives back the tip of the push."""
    x, y = at
    rail = y - parts.LITTER_HANGS
    under = y - parts.LITTER_DEEP
    low = under - 48
    parts.cliff(sheet, _EDGE, 60, _EDGE[1] - low)
    parts.plumb(sheet, _HEAD, -low + 6)
    over = parts.arc_points(_HEAD, 8.0, math.atan2(y, x - _HEAD[0]) + UP, UP)
    sheet.line(HAUL, at, *over, (-60, 8))
    parts.frame(sheet, _HEAD, _EDGE[1], (-36, -8))
    feet, lean = (-1.0, rail - 12), math.radians(54)
    shoulder = parts.step(feet, UP - lean, 1.4 * _SIZE)
    parts.person(sheet, feet, _SIZE, lean)
    sheet.line(_ARM, shoulder, (x - parts.LITTER_HALF_WIDE, rail + 1))
    parts.litter(sheet, at)
    pushed = parts.arrow(sheet, (x + 24, rail), OUT, 46, PUSH)
    tip = parts.arrow(sheet, (x, under), DOWN, 28, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 10), (1, 0))
    sheet.line(FAINT, (x, under - 32), (x, low - 4), ghost=True)
    parts.length(sheet, (_HEAD[0], low), (x, low), facts.text("off_plumb"), -1)
    side = x + 92
    for height, start in ((0.0, _HEAD[0] + 12), (y, x + 8)):
        sheet.line(FAINT, (start, height), (side + 6, height), ghost=True)
    parts.length(sheet, (side, 0), (side, y), facts.text("drop"), 1)
    return pushed


def _push(facts: Facts, sheet: Sheet) -> str:
    at = (_HEAD[0] + 22 + 22 * facts.value("off_plumb"), -96 - facts.value("drop"))
    tip = _attendant(facts, sheet, at)
    sheet.ask((tip[0] - 24, tip[1]), (0, -1), "push ?")
    sheet.not_to_scale()
    return _ATTENDANT


def _haul_of_attendant(facts: Facts, sheet: Sheet) -> str:
    drop = 118.0
    at = (_HEAD[0] + drop * facts.value("off_plumb") / facts.value("drop"), -drop)
    tip = _attendant(facts, sheet, at)
    sheet.label("push", (tip[0] - 24, tip[1]), (0, -1))
    sheet.ask(parts.middle_of(_HEAD, at), (1, 0.3), "haul ?")
    return _ATTENDANT


# --- legs at their angles ------------------------------------------------------------------------


def _tagged(facts: Facts, sheet: Sheet) -> legs.Rig:
    rig = legs.tag(sheet, facts.value("haul_elevation"), facts.value("ground_depression"))
    legs.angles(facts, sheet)
    return rig


def _against_tag(facts: Facts, sheet: Sheet) -> str:
    rig = _tagged(facts, sheet)
    legs.load(facts, sheet)
    legs.ask_on_haul(sheet, rig)
    return legs.TAG_RIG


def _beside_track(facts: Facts, sheet: Sheet) -> str:
    rig = legs.tracked(facts, sheet)
    legs.load(facts, sheet)
    legs.ask_on_haul(sheet, rig)
    return legs.TRACK_RIG


def _track_tension(facts: Facts, sheet: Sheet) -> str:
    rig = legs.tracked(facts, sheet)
    legs.load(facts, sheet)
    legs.ask_on_ground_leg(sheet, rig, "track ?")
    return legs.TRACK_RIG


def _lift(facts: Facts, sheet: Sheet) -> str:
    rig = legs.tracked(facts, sheet)
    tip = parts.arrow(sheet, (40, 16), UP, 46, PUSH)
    sheet.ask((tip[0], tip[1] - 22), (1, 0), "upward ?")
    sheet.label(
        facts.text("track_tension"),
        parts.step(rig.hub, rig.fall, -44),
        parts.way(rig.fall - UP),
    )
    return f"{legs.TRACK_RIG} An arrow beside the litter points up."


def _high_hub(facts: Facts, sheet: Sheet) -> str:
    rise, up = facts.value("haul_elevation"), facts.value("line_elevation")
    rig = legs.tag(sheet, rise, -up)
    legs.angles(facts, sheet, "line_elevation", 1)
    legs.load(facts, sheet)
    legs.ask_on_ground_leg(sheet, rig, "tag ?", UP)
    return (
        "The haul line rises from the litter to the head of a frame on the cliff's edge; a tag "
        "line rises to a hub on the other side of the gorge."
    )


_TILT = math.radians(24)
_BIG = 1.3


def _on_the_rail(facts: Facts, sheet: Sheet) -> str:
    fall = facts.value("ground_depression")
    at: Place = (0.0, 0.0)
    hangs, half = _BIG * parts.LITTER_HANGS, _BIG * parts.LITTER_HALF_WIDE
    axis = DOWN + _TILT
    rail = parts.step(parts.step(at, axis, hangs), _TILT, half)
    sheet.line(HAUL, at, parts.step(at, UP + math.radians(14), 46))
    parts.plumb(sheet, at, 128)
    sheet.line(parts.PLUMB, at, parts.step(at, axis, 128))
    parts.litter(sheet, at, _BIG, _TILT)
    parts.knot(sheet, at)
    end = parts.step(rail, -fall, 150)
    sheet.line(TAG, rail, end)
    parts.knot(sheet, rail)
    level = parts.arrow(sheet, rail, OUT, 96, PUSH)
    sheet.label(f"level part {facts.text('side_pull')}", (level[0] - 30, level[1]), (0, 1))
    parts.angle(sheet, rail, 66, OUT, -fall, facts.text("ground_depression"))
    under = parts.step(at, axis, _BIG * parts.LITTER_DEEP)
    tip = parts.arrow(sheet, under, DOWN, 30, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 8), (1, 0))
    parts.asked_angle(sheet, at, 118, DOWN, axis, "tilt ?")
    sheet.label("master attachment point", at, (1, 0.4))
    sheet.label("tag line", end, (0.4, -1))
    sheet.not_to_scale()
    return (
        "A litter hangs by its bridle from the master attachment point; a tag line tied to its "
        "rail pulls it out and down, so the bridle tilts from the plumb line."
    )


# --- measured places -----------------------------------------------------------------------------


def _from_places(facts: Facts, sheet: Sheet) -> str:
    view = section.Section(facts.value("z_D"))
    head = view.at(facts.value("x_D"), facts.value("z_D"))
    at = view.at(facts.value("x"), facts.value("z"))
    hub = view.hub(facts.value("z_B"))
    view.rock(sheet, hub)
    section.tag(sheet, at, hub)
    section.haul(sheet, head, at)
    section.head(sheet, head)
    parts.litter(sheet, at, section.LITTER)
    sheet.label(section.out_and_up(facts, "x_D", "z_D"), (head[0] + 8, head[1]), (1, 0.4))
    sheet.label(section.out_and_up(facts, "x", "z"), at, (1, 0.5))
    section.name_hub(facts, sheet, hub)
    _load(facts, sheet, at)
    sheet.ask(parts.middle_of(at, hub), (-0.6, -1), "tag ?")
    sheet.not_to_scale()
    return legs.TAG_RIG


def _load(facts: Facts, sheet: Sheet, at: Place) -> None:
    under = (at[0], at[1] - section.LITTER * parts.LITTER_DEEP)
    tip = parts.arrow(sheet, under, DOWN, 26, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 8), (1, 0))


def _out_of_reach(facts: Facts, sheet: Sheet) -> str:
    view = section.Section(facts.value("z_D"))
    head = view.at(facts.value("x_D"), facts.value("z_D"))
    hub = view.hub(facts.value("z_B"))
    y = view.height(facts.value("z"))
    limit = (head[0] + (hub[0] - head[0]) * (y - head[1]) / (hub[1] - head[1]), y)
    at = (max(0.5 * limit[0], 34.0), y)
    view.rock(sheet, hub)
    sheet.line(LIMIT, head, hub)
    section.track(sheet, head, at, hub)
    section.haul(sheet, head, at)
    section.head(sheet, head)
    section.carried(sheet, at, 0.6)
    parts.dimension(sheet, (0, y), limit)
    parts.knot(sheet, limit)
    sheet.ask(limit, (1, 0.7), "how far out ?")
    sheet.line(FAINT, (limit[0] + 6, y), (hub[0] + 40, y))
    sheet.label(f"{facts.text('z')} up", (hub[0] + 26, y), (0, -1))
    sheet.label(section.out_and_up(facts, "x_D", "z_D"), (head[0] + 8, head[1]), (1, 0.4))
    section.name_hub(facts, sheet, hub)
    sheet.not_to_scale()
    return (
        "Haul line and track line hold a litter; a dotted straight line runs from the directional "
        "to the hub, and the level of the litter meets it further out."
    )


DIAGRAMS: dict[str, Diagram] = {
    bank.ATTENDANT_PUSH.key: _push,
    bank.ATTENDANT_HAUL.key: _haul_of_attendant,
    bank.TAG_FROM_PLACES.key: _from_places,
    bank.HAUL_AGAINST_TAG.key: _against_tag,
    bank.HAUL_BESIDE_TRACK.key: _beside_track,
    bank.TRACK_TENSION.key: _track_tension,
    bank.TRACK_LIFT.key: _lift,
    bank.HIGH_HUB.key: _high_hub,
    bank.TAG_ON_THE_RAIL.key: _on_the_rail,
    bank.OUT_OF_REACH.key: _out_of_reach,
}
"""What draws each question of this topic."""
