"""Drawings for a whole raise: stations, margins that can be stated, rope for a line."""

import math

from ropecalc.teaching.canvas import SOFT_INK
from ropecalc.teaching.drawing import FAINT, HAUL, LITTER_FACE, THIN, TRACK, Stroke
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import whole_raise as bank
from ropecalc.teaching.questions.diagrams import legs, parts, section
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_RISE = math.radians(62)
"""Of the haul leg, where it is not given."""

# --- margins -------------------------------------------------------------------------------------

_WEAK: Place = (74.0, 0.0)


def _weak_line(sheet: Sheet) -> None:
    """A track line with its weakest part, which is pulled both ways."""
    sheet.line(TRACK, (-104, 0), _WEAK)
    sheet.line(parts.BAR, _WEAK, (124, 0))
    parts.head(sheet, (-110, 0), BACK, TRACK.color)
    parts.head(sheet, (130, 0), OUT, "#17202a")
    parts.grab(sheet, _WEAK)
    sheet.label("weakest part", (_WEAK[0], 6), (0, 1), SOFT_INK)


_LOAD_END, _MORE, _LESS, _STRENGTH_END = -16.0, 22.0, 96.0, 130.0
_BAR_LEFT, _BAR_HIGH = -104.0, 12.0


def _bar(sheet: Sheet, y: float, end: float, fill: str, edge: Stroke = parts.OUTLINE) -> None:
    corners = [(_BAR_LEFT, y), (end, y), (end, y + _BAR_HIGH), (_BAR_LEFT, y + _BAR_HIGH)]
    sheet.thing(fill, *corners, edge=edge)


def _honest(facts: Facts, sheet: Sheet) -> str:
    _weak_line(sheet)
    _bar(sheet, -48, _MORE, "#ffffff", FAINT)
    _bar(sheet, -48, _LOAD_END, "#e9a877")
    _bar(sheet, -92, _STRENGTH_END, "#ffffff", FAINT)
    _bar(sheet, -92, _LESS, LITTER_FACE)
    sheet.write(f"carries {facts.text('component_load')}", (-62, -26))
    sheet.write(f"{facts.text('load_uncertainty')} more", (58, -42))
    sheet.write(f"holds {facts.text('strength')}", (-62, -70))
    sheet.write(f"{facts.text('strength_uncertainty')} less", (108, -70))
    sheet.ask((0, -98), (0, -1), "margin ?")
    sheet.not_to_scale()
    return (
        "A track line with its weakest part; below it a bar for what that part carries, which may "
        "be more, and a longer one for what it holds, which may be less."
    )


def _stop(facts: Facts, sheet: Sheet) -> str:
    _weak_line(sheet)
    parts.display(sheet, (-42, 0), "stop at ?", framed=True)
    rows = (
        f"it holds {facts.text('strength')}, or {facts.text('strength_uncertainty')} less",
        f"it carries what is read, or {facts.text('load_uncertainty')} more",
        f"margin of {facts.text('margin')} wanted",
    )
    for row, text in enumerate(rows):
        sheet.write(text, (10, -34 - 18 * row))
    return "A load cell in a track line; further on is the weakest part of the line."


# --- rope for one line ---------------------------------------------------------------------------

_TOP: Place = (30.0, 40.0)
_AT: Place = (68.0, -60.0)
_HUB: Place = (204.0, -132.0)
_TIE: Place = (-92.0, 12.0)


def _shifted(at: Place, dx: float, dy: float) -> Place:
    return (at[0] + dx, at[1] + dy)


def _track_rope(facts: Facts, sheet: Sheet) -> str:
    parts.cliff(sheet, (0, 0), 112, 152)
    parts.post(sheet, (_TIE[0], 0), 18)
    ground = math.atan2(_HUB[1] - _AT[1], _HUB[0] - _AT[0])
    grab = parts.step(_HUB, ground, -60)
    over = parts.arc_points(_TOP, 8.0, math.atan2(_AT[1] - _TOP[1], _AT[0] - _TOP[0]) + UP, UP)
    sheet.line(HAUL, _AT, *over, (-20, 48))
    sheet.line(TRACK, _TIE, _TOP, _AT, grab)
    sheet.line(parts.BAR, grab, _HUB)
    tail = [_shifted(grab, -4, -4), _shifted(grab, -14, -12), _shifted(grab, -40, -14)]
    sheet.line(TRACK, *tail)
    parts.frame(sheet, _TOP, 0, (-34, -8))
    parts.litter(sheet, _AT, 0.8)
    parts.pulley(sheet, _AT, 4)
    parts.grab(sheet, grab)
    parts.hub(sheet, _HUB)
    _whole_way(facts, sheet)
    y = -20.0
    sheet.line(FAINT, (_TIE[0], 0), (_TIE[0], y - 4), ghost=True)
    sheet.line(FAINT, (_TOP[0], 32), (_TOP[0], y - 4), ghost=True)
    parts.length(sheet, (_TIE[0], y), (_TOP[0], y), facts.text("setback"), -1)
    parts.length(sheet, grab, _HUB, f"gap {facts.text('gap')}", -14)
    sheet.label(f"tail {facts.text('line_tail')}", tail[-1], (-1, 0))
    sheet.write("tie-off", (_TIE[0] + 6, 34))
    sheet.label("hub", _shifted(_HUB, 8, -20), (0, -1), SOFT_INK)
    sheet.ask((-44, 22), (0, 1), "rope of the line ?")
    sheet.not_to_scale()
    return (
        "A track line runs from its tie-off behind the cliff's edge over the directional, past the "
        "litter, to a rope grab short of the hub; its tail hangs behind the grab."
    )


def _whole_way(facts: Facts, sheet: Sheet) -> None:
    """The way from the directional past the litter to the hub, drawn beside it."""
    run = [_shifted(_TOP, 20, 6), _shifted(_AT, 16, 14), _shifted(_HUB, 4, 17)]
    sheet.line(THIN, *run)
    first = math.atan2(run[0][1] - run[1][1], run[0][0] - run[1][0])
    last = math.atan2(run[2][1] - run[1][1], run[2][0] - run[1][0])
    parts.head(sheet, run[0], first, SOFT_INK, 0.6)
    parts.head(sheet, run[2], last, SOFT_INK, 0.6)
    sheet.label(f"in all {facts.text('track_length')}", run[1], (1, 0.8))


# --- stations ------------------------------------------------------------------------------------

_SLIM = Stroke(TRACK.color, 1.0, TRACK.style)


def _governing(facts: Facts, sheet: Sheet) -> str:
    view = section.Section(facts.value("z_D"))
    head = view.at(facts.value("x_D"), facts.value("z_D"))
    hub = view.hub(facts.value("z_B"))
    view.rock(sheet, hub)
    places = [view.at(facts.value(f"x_{i}"), facts.value(f"z_{i}")) for i in (1, 2, 3)]
    for at in places:
        sheet.line(_SLIM, head, at, hub)
    section.head(sheet, head)
    for number, at in enumerate(places, 1):
        section.carried(sheet, at, 0.26)
        sheet.label(str(number), (at[0] - 4, at[1] - 3), (-1, 0), bold=True)
        place = section.out_and_up(facts, f"x_{number}", f"z_{number}")
        sheet.write(f"{number}: {place}", (hub[0], head[1] - 20 * number))
    sheet.label(section.out_and_up(facts, "x_D", "z_D"), (head[0] + 8, head[1]), (1, 0.4))
    sheet.label(section.out_and_up(facts, "x_B", "z_B"), (hub[0], hub[1] - 14), (-0.3, -1))
    sheet.write(f"load {facts.text('load')}", (hub[0], head[1]))
    sheet.write("largest track ?", (hub[0], head[1] - 82), bold=True, framed=True)
    sheet.not_to_scale()
    return (
        "Wall, high directional and hub with three stations of the litter; for each the track line "
        "runs from the directional to the litter and on to the hub."
    )


def _reach(facts: Facts, sheet: Sheet) -> str:
    fall = facts.value("ground_depression")
    rig = legs.track(sheet, _RISE, fall)
    x, y = rig.head
    low = -parts.LITTER_DEEP - 14
    sheet.line(parts.PLUMB, (x, y - 8), (x, low - 5))
    parts.level(sheet, legs.AT, 88)
    parts.angle(sheet, legs.AT, 66, OUT, -fall, facts.text("ground_depression"))
    sheet.line(FAINT, (x + 12, y), (46, y), ghost=True)
    parts.length(sheet, (40, y), (40, 0), facts.text("drop"), 1)
    sheet.line(FAINT, (0, -parts.LITTER_DEEP), (0, low - 5), ghost=True)
    parts.asked_length(sheet, (x, low), (0, low), -1, "off plumb ?")
    tip = parts.arrow(sheet, (28, -parts.LITTER_HANGS), DOWN, 34, parts.BAR)
    sheet.label(facts.text("load"), tip, (1, -0.2))
    at = parts.step(rig.hub, rig.fall, -44)
    sheet.label(f"at most {facts.text('line_tension')}", at, parts.way(rig.fall + UP))
    sheet.not_to_scale()
    return f"{legs.TRACK_RIG} A plumb line hangs from the head; the litter is to the right of it."


DIAGRAMS: dict[str, Diagram] = {
    bank.GOVERNING.key: _governing,
    bank.HONEST_MARGIN.key: _honest,
    bank.STOP_VALUE.key: _stop,
    bank.REACH.key: _reach,
    bank.TRACK_ROPE.key: _track_rope,
}
"""What draws each question of this topic."""
