"""Drawings for margins, readings, stretch and what happens when something lets go."""

import math

from ropecalc.teaching.canvas import INK, SOFT_INK
from ropecalc.teaching.drawing import BELAY, FAINT, HAUL, PUSH, TRACK, WEIGHT, Stroke
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import margins as bank
from ropecalc.teaching.questions.diagrams import high_directional, legs, parts, series
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_MOVES = Stroke(PUSH.color, 2.0)
"""How the litter moves."""
_RISE, _FALL = math.radians(64), math.radians(20)
"""Angles of the legs where none are given."""

# --- one line, part by part ----------------------------------------------------------------------


def _weakest(facts: Facts, sheet: Sheet) -> str:
    left = -158.0
    rig = series.series(sheet, 1, radius=12, left=left)
    y = rig.lines[0][1]
    parts.bolt(sheet, (left - 12, y))
    sheet.line(parts.BAR, (left - 8, y), (left, y))
    parts.knot(sheet, (left + 2, y))
    sheet.label(f"knot leaves {facts.text('termination')}", (left + 4, y - 4), (0.3, -1))
    sheet.label(f"rope {facts.text('breaking_strength')}", (left + 62, y), (0, 1))
    sheet.label(f"grab {facts.text('grab_strength')}", (-34, y - 6), (0, -1))
    sheet.write(
        f"pulley {facts.text('pulley_strength')}, efficiency {facts.text('efficiency')}",
        (22, rig.top + 16),
    )
    sheet.label(
        f"device {facts.text('device_strength')}",
        (rig.device[0] - 8, rig.device[1] - 6),
        (-0.6, -1),
    )
    sheet.write(f"the line carries {facts.text('near_line')}", (left + 66, rig.top + 40))
    sheet.ask((left + 60, y - 30), (0, -1), "smallest margin ?")
    sheet.not_to_scale()
    return (
        "From left to right: a track line with its knot at an anchor, its rope, a rope grab and a "
        "travelling pulley; of the pulley's two strands one ends at the device, the other is tied "
        "off at the hub."
    )


# --- readings ------------------------------------------------------------------------------------


def _redirect(facts: Facts, sheet: Sheet) -> str:
    half = facts.value("strand_angle") / 2
    _, upper = high_directional.redirect(sheet, 2 * half, anchor=128)
    parts.display(sheet, (-66, 0), facts.text("reading"))
    parts.angle(sheet, (0, 0), 46, -half, half, facts.text("strand_angle"))
    sheet.label(f"efficiency {facts.text('efficiency')}", (-34, 12), (0, 1))
    for side, direction in ((-1, BACK - half), (1, half)):
        at = parts.step(parts.step((0, 0), side * half, 84), side * (half + UP), 24)
        parts.moving(sheet, at, direction)
    sheet.ask(upper, (1, 0))
    return (
        "A load cell sits between an anchor and a pulley, over which a rope turns. The rope comes "
        "in below and moves away along the upper strand."
    )


def _cell_error(facts: Facts, sheet: Sheet) -> str:
    parts.cell(sheet, (0, 0), facts.text("reading"))
    sheet.label(f"full scale {facts.text('full_scale')}", (38, 26), (1, 0))
    sheet.label(f"off by {facts.text('cell_error')} of full scale", (38, 4), (1, 0))
    sheet.ask((38, -20), (1, 0), "± ? of the reading")
    return "A load cell in a rope shows a number that may be off."


def _one_strand(facts: Facts, sheet: Sheet) -> str:
    rig = series.series(sheet, 2, radius=13, left=-62)
    parts.display(sheet, (rig.strand[0] - 10, rig.strand[1]), facts.text("reading"))
    series.name_parts(sheet, rig)
    sheet.label("far", rig.lines[-1], (-1, 0))
    sheet.label(
        f"sheave efficiency {facts.text('efficiency')}", (rig.strand[0], rig.top), (-0.6, 1)
    )
    sheet.ask(rig.lines[0], (-1, 0), "near: most ?")
    x, y = rig.tail
    parts.moving(sheet, (x + 8, y - 9), OUT)
    parts.moving(sheet, (x + 8, y - 19), BACK)
    sheet.label("not known", (x - 8, y - 14), (-1, -0.3), SOFT_INK)
    sheet.not_to_scale()
    return (
        "From above, two track lines on one tensioner in series, with a load cell in the strand "
        "at the device. Two arrows at the tail: whether rope went in or out last is not known."
    )


def _beside_haul(sheet: Sheet, rig: legs.Rig, text: str) -> None:
    sheet.label(text, parts.step(legs.AT, rig.rise, 74), parts.way(rig.rise - UP))


def _beside_ground_leg(sheet: Sheet, rig: legs.Rig, text: str) -> None:
    sheet.label(text, parts.step(rig.hub, rig.fall, -44), parts.way(rig.fall - UP))


def _weigh(facts: Facts, sheet: Sheet) -> str:
    rig = legs.tracked(facts, sheet)
    _beside_haul(sheet, rig, f"haul {facts.text('haul_tension')}")
    _beside_ground_leg(sheet, rig, f"track {facts.text('track_tension')}")
    tip = parts.arrow(sheet, (0, -parts.LITTER_DEEP), DOWN, 30, WEIGHT)
    sheet.ask((tip[0], tip[1] + 10), (-1, 0), "weight ?")
    return f"{legs.TRACK_RIG} An arrow for the weight points down."


def _angle_error(facts: Facts, sheet: Sheet) -> str:
    rig = legs.tracked(facts, sheet)
    around = parts.arc_points(legs.AT, 78, rig.rise - 0.2, rig.rise + 0.2)
    sheet.line(parts.ARC, *around, ghost=True)
    for end, turn in ((around[0], -UP), (around[-1], UP)):
        parts.head(sheet, end, math.atan2(end[1], end[0]) + turn, SOFT_INK, 0.6)
    sheet.label(f"± {facts.text('angle_error')}", around[0], parts.way(rig.rise - UP))
    legs.ask_on_ground_leg(sheet, rig, "off by ?", -UP)
    sheet.not_to_scale()
    return f"{legs.TRACK_RIG} An arc across the haul leg shows that its angle may be off."


def _up_and_down(facts: Facts, sheet: Sheet) -> str:
    rig = legs.track(sheet, _RISE, _FALL)
    _beside_ground_leg(sheet, rig, facts.text("track_tension"))
    for x, direction in ((36.0, UP), (52.0, DOWN)):
        parts.moving(sheet, (x, 6), direction)
    sheet.write("upper track legs", (78, 62))
    sheet.write(f"going up: × {facts.text('leg_ratio')}", (78, 44))
    sheet.ask(parts.step(legs.AT, rig.rise, 98), parts.way(rig.rise - UP), "haul: up less down ?")
    sheet.not_to_scale()
    return f"{legs.TRACK_RIG} Two arrows beside the litter: it goes up, and it comes down."


# --- slips ---------------------------------------------------------------------------------------


def _inward(sheet: Sheet, rig: legs.Rig, sweep: float) -> Place:
    """An arrow from the litter along its arc about the directional, inward; gives back its tip."""
    (x, y), reach = rig.head, math.hypot(*rig.head)
    start = math.atan2(-y, -x)
    points = parts.arc_points(rig.head, reach, start, start - sweep)
    sheet.line(_MOVES, *points)
    (x0, y0), (x1, y1) = points[-2:]
    parts.head(sheet, points[-1], math.atan2(y1 - y0, x1 - x0), PUSH.color)
    return points[-1]


def _slip(facts: Facts, sheet: Sheet) -> str:
    rig = legs.tracked(facts, sheet)
    tip = _inward(sheet, rig, 0.34)
    sheet.ask(tip, (-1, 0), "moves ?")
    at = parts.step(parts.step(rig.hub, rig.fall, -58), rig.fall - UP, 12)
    parts.moving(sheet, at, rig.fall + math.pi)
    sheet.label(
        f"slip {facts.text('slip')}", parts.step(at, rig.fall - UP, 4), parts.way(rig.fall - UP)
    )
    return (
        f"{legs.TRACK_RIG} Rope slips into the ground legs, and the litter moves inward along an "
        "arc about the head."
    )


# --- stretch -------------------------------------------------------------------------------------

_LONG, _LONGER = 206.0, 244.0


def _stretching(facts: Facts, sheet: Sheet) -> None:
    """A line without tension, and the same with it below."""
    for y, end in ((0.0, _LONG), (-46.0, _LONGER)):
        parts.bolt(sheet, (0, y))
        sheet.line(TRACK, (4, y), (end, y))
        parts.knot(sheet, (end, y))
    parts.length(sheet, (0, 10), (_LONG, 10), facts.text("rope_length"), 8)
    tip = parts.arrow(sheet, (_LONGER, -46), OUT, 44, parts.ROPE)
    sheet.label(facts.text("rope_tension"), (tip[0] - 18, tip[1]), (0, 1))
    sheet.line(FAINT, (_LONG, 0), (_LONG, -70), ghost=True)
    sheet.line(FAINT, (_LONGER, -46), (_LONGER, -70), ghost=True)
    parts.asked_length(sheet, (_LONG, -66), (_LONGER, -66), -1, "stretch ?")
    sheet.not_to_scale()


_STRETCH = "A line lies without tension; below it, pulled, the same line is longer."


def _stretch(facts: Facts, sheet: Sheet) -> str:
    _stretching(facts, sheet)
    sheet.label(f"EA {facts.text('stiffness')}", (_LONG / 2, -46), (0, -1))
    return _STRETCH


def _quoted(facts: Facts, sheet: Sheet) -> str:
    _stretching(facts, sheet)
    sheet.label(f"breaks at {facts.text('breaking_strength')}", (78, -48), (0, -1))
    sheet.label(f"{facts.text('quoted_elongation')} at a tenth of that", (78, -66), (0, -1))
    return _STRETCH


# --- losing a line, or the hub -------------------------------------------------------------------

_ROW = 30.0


def _lines_left(facts: Facts, sheet: Sheet) -> str:
    count = round(facts.value("independent_lines"))
    top = _ROW * (count - 1)
    for row in range(count):
        y = _ROW * row
        sheet.line(TRACK, (0, y), (150, y))
        parts.box(sheet, (188, y), 76, 21, "tensioner")
        parts.bolt(sheet, (240, y))
        sheet.line(parts.BAR, (226, y), (236, y))
        if row == count - 1:
            parts.parted(sheet, (92, y), 20)
            sheet.label("parts", (92, y + 5), (0, 1), SOFT_INK)
        else:
            sheet.ask((92, y), (0, 1))
    sides = [(-8, -12), (0, -12), (0, top + 12), (-8, top + 12)]
    sheet.thing("#c9cdd3", *sides, edge=parts.OUTLINE)
    sheet.label("litter", (-8, top / 2), (-1, 0), SOFT_INK)
    before = f"{facts.text('independent_lines')} lines, before: each {facts.text('line_before')}"
    sheet.write(before, (110, top + 34))
    sheet.not_to_scale()
    return (
        "From above, track lines run from the litter on the left to the right, each to a tensioner "
        "and an anchor of its own; one of them has parted."
    )


_WHEEL = 13.0


def _vehicle(sheet: Sheet, left: float) -> Place:
    """A parked vehicle on level ground, from its ``left`` end; gives back its hitch."""
    base = _WHEEL
    outline = [(0, base), (0, 42), (62, 42), (74, 68), (112, 68), (122, 42), (138, 38), (138, base)]
    sheet.thing("#c9cdd3", *((left + x, y) for x, y in outline), edge=parts.OUTLINE)
    glass = [(78, 45), (84, 62), (107, 62), (114, 45)]
    sheet.area("#ffffff", *((left + x, y) for x, y in glass), edge=parts.OUTLINE)
    for x in (30.0, 108.0):
        sheet.disc((left + x, _WHEEL), _WHEEL, "#54606c", parts.OUTLINE)
        sheet.disc((left + x, _WHEEL), 5.0, "#ffffff", parts.OUTLINE)
    return (left, 22.0)


def _hub_slides(facts: Facts, sheet: Sheet) -> str:
    fall = facts.value("ground_depression")
    parts.ground(sheet, (-128, 0), 300)
    hitch = _vehicle(sheet, 0.0)
    up = BACK - fall
    parts.level(sheet, hitch, -112)
    sheet.line(TRACK, hitch, parts.step(hitch, up, 126))
    parts.angle(sheet, hitch, 74, BACK, up, facts.text("ground_depression"))
    tip = parts.step(hitch, up, 126)
    sheet.ask(tip, (0.5, 1), "slides at ?")
    sheet.write(facts.text("hub_mass"), (32, 32))
    sheet.label(f"coefficient of friction {facts.text('hub_friction')}", (69, -14), (0, -1))
    sheet.label("to the litter", tip, (-0.6, -1), SOFT_INK)
    return "A vehicle stands on level ground; the lines run from it up to the left, to the litter."


# --- falling and swinging ------------------------------------------------------------------------

_HEAD: Place = (30.0, 0.0)
_EDGE_Y = -36.0
_LEG = 150.0


def _swinging(facts: Facts, sheet: Sheet, wall: float = 0.0) -> tuple[Place, Place]:
    """A litter off plumb, and its way in; gives back where it starts and where it gets to."""
    off = math.asin(min(facts.value("off_plumb") / facts.value("haul_leg_length"), 1.0))
    lean = min(max(off, math.radians(22)), math.radians(40))
    at = parts.step(_HEAD, DOWN + lean, _LEG)
    bottom = (_HEAD[0], _HEAD[1] - _LEG)
    low = bottom[1] - parts.LITTER_DEEP - 34
    parts.cliff(sheet, (wall, _EDGE_Y), 60 + wall, _EDGE_Y - low)
    parts.plumb(sheet, _HEAD, -low)
    over = parts.arc_points(_HEAD, 8.0, DOWN + lean + UP, UP)
    sheet.line(HAUL, at, *over, (-60, 8))
    parts.frame(sheet, _HEAD, _EDGE_Y, (-36, -8))
    way_in = parts.arc_points(_HEAD, _LEG, DOWN + lean, DOWN + 0.06)
    sheet.line(_MOVES, *way_in)
    parts.head(sheet, way_in[-1], BACK, PUSH.color)
    parts.litter(sheet, at)
    parts.length(sheet, _HEAD, at, facts.text("haul_leg_length"), 16)
    y = min(at[1] - parts.LITTER_DEEP, bottom[1]) - 16
    sheet.line(FAINT, (at[0], at[1] - parts.LITTER_DEEP), (at[0], y), ghost=True)
    parts.length(sheet, (_HEAD[0], y), (at[0], y), facts.text("off_plumb"), -1)
    sheet.not_to_scale()
    return at, bottom


_SWING = (
    "A litter hangs on the haul line to the right of the plumb line below the head of a frame; an "
    "arrow along an arc leads in to plumb."
)


def _swing_fall(facts: Facts, sheet: Sheet) -> str:
    at, bottom = _swinging(facts, sheet)
    x = at[0] + 52
    for y, start in ((at[1], at[0] + 4), (bottom[1], bottom[0])):
        sheet.line(FAINT, (start, y), (x + 6, y), ghost=True)
    parts.asked_length(sheet, (x, at[1]), (x, bottom[1]), 1, "height lost ?")
    return _SWING


def _swing_speed(facts: Facts, sheet: Sheet) -> str:
    _, bottom = _swinging(facts, sheet, _HEAD[0] - 1)
    sheet.ask((bottom[0] - 8, bottom[1]), (-1, 0.3), "speed ?")
    return f"{_SWING} The wall is plumb below the head."


def _swing_peak(facts: Facts, sheet: Sheet) -> str:
    at, bottom = _swinging(facts, sheet)
    tip = parts.arrow(sheet, (at[0] + 24, at[1] - parts.LITTER_HANGS), DOWN, 34, WEIGHT)
    sheet.label(facts.text("load"), tip, (1, 0.3), INK)
    sheet.ask((bottom[0], bottom[1] + 44), (-1, 0), "haul there ?")
    return _SWING


def _arrest(facts: Facts, sheet: Sheet) -> str:
    top: Place = (0.0, 0.0)
    hangs, falls = 92.0, 40.0
    at = (0.0, -hangs)
    parts.ceiling(sheet, -70, 70, 4)
    loop = [
        (-22 * math.sin(math.pi * s / 12), -(hangs + 26) * s / 12 + 26 * (s / 12) ** 6)
        for s in range(13)
    ]
    sheet.line(Stroke(BELAY.color, 2.0), *loop)
    parts.bolt(sheet, top)
    parts.litter(sheet, at)
    parts.length(sheet, (-58, -hangs), (-58, 0), facts.text("belay_length"), 1)
    sheet.line(FAINT, (-64, -hangs), (70, -hangs), ghost=True)
    sheet.line(FAINT, (26, -hangs - falls), (70, -hangs - falls), ghost=True)
    parts.length(sheet, (62, -hangs), (62, -hangs - falls), f"slack {facts.text('belay_slack')}", 1)
    sheet.label(f"EA {facts.text('stiffness')}", (0, -hangs / 2), (1, 0))
    tip = parts.arrow(sheet, (0, -hangs - parts.LITTER_DEEP), DOWN, 32, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 8), (1, 0))
    sheet.ask((4, -10), (1, -0.4), "peak ?")
    sheet.not_to_scale()
    return "A litter hangs from nothing but a slack belay rope; an arrow shows how far it falls."


DIAGRAMS: dict[str, Diagram] = {
    bank.WEAKEST_PART.key: _weakest,
    bank.REDIRECT_CELL.key: _redirect,
    bank.CELL_ERROR.key: _cell_error,
    bank.ONE_STRAND.key: _one_strand,
    bank.WEIGH.key: _weigh,
    bank.ANGLE_ERROR.key: _angle_error,
    bank.UP_AND_DOWN.key: _up_and_down,
    bank.SMALL_SLIP.key: _slip,
    bank.ROPE_STRETCH.key: _stretch,
    bank.QUOTED_STRETCH.key: _quoted,
    bank.LINES_LEFT.key: _lines_left,
    bank.HUB_SLIDES.key: _hub_slides,
    bank.SWING_FALL.key: _swing_fall,
    bank.SWING_SPEED.key: _swing_speed,
    bank.SWING_PEAK.key: _swing_peak,
    bank.ARREST.key: _arrest,
}
"""What draws each question of this topic."""
