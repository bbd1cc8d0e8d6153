"""Drawings for redirects and for the frame under a high directional."""

import math

from ropecalc.teaching.canvas import SOFT_INK
from ropecalc.teaching.drawing import FAINT, ROCK_FACE, TAG, TRACK, WEIGHT
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import high_directional as bank
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_WHEEL = 11.0
_HEAD: Place = (0.0, 0.0)


# --- redirects -----------------------------------------------------------------------------------


def redirect(
    sheet: Sheet, apart: float, strand: float = 104.0, anchor: float = 52.0
) -> tuple[Place, Place]:
    """A pulley on an anchor, so far to the left, its strands ``apart``; gives back their ends.

    The first strand is the lower one. The anchor lies behind the pulley, on the line that halves
    the angle, as a free pulley settles.
    """
    half = apart / 2
    rock = [(-anchor - 20, -34), (-anchor, -34), (-anchor, 34), (-anchor - 20, 34)]
    sheet.area(ROCK_FACE, *rock)
    sheet.line(parts.EDGE, (-anchor, -34), (-anchor, 34))
    sheet.line(parts.BAR, (-anchor, 0), _HEAD)
    parts.bolt(sheet, (-anchor, 0))
    turn = parts.arc_points(_HEAD, _WHEEL, UP + half, 3 * UP - half)
    ends = []
    for side in (-1, 1):
        start = parts.step(_HEAD, side * (half + UP), _WHEEL)
        ends.append(parts.step(start, side * half, strand))
        sheet.line(parts.ROPE, start, ends[-1])
    parts.pulley(sheet, _HEAD, _WHEEL)
    sheet.line(parts.ROPE, *turn)
    return ends[0], ends[1]


def _redirect_pull(facts: Facts, sheet: Sheet) -> str:
    half = facts.value("strand_angle") / 2
    lower, upper = redirect(sheet, 2 * half)
    parts.angle(sheet, _HEAD, 46, -half, half, facts.text("strand_angle"))
    for end in (lower, upper):
        sheet.label(facts.text("strand_tension"), end, (1, 0))
    sheet.ask((-30, 0), (0, 1))
    return "A rope turns through a pulley on an anchor; the angle lies between its two strands."


def _hauled(facts: Facts, sheet: Sheet) -> str:
    half = facts.value("strand_angle") / 2
    lower, upper = redirect(sheet, 2 * half)
    parts.angle(sheet, _HEAD, 46, -half, half, facts.text("strand_angle"))
    sheet.label(f"load's strand {facts.text('front_tension')}", lower, (1, 0))
    sheet.label("to the team", upper, (1, 0))
    for side, direction in ((-1, BACK - half), (1, half)):
        at = parts.step(parts.step(_HEAD, side * half, 84), side * (half + UP), 24)
        parts.moving(sheet, at, direction)
    sheet.label(f"efficiency {facts.text('efficiency')}", (0, _WHEEL), (-0.2, 1))
    sheet.ask((-30, 0), (0, -1))
    return (
        "A rope turns through a pulley on an anchor; it comes up from the load and moves towards "
        "the team."
    )


# --- the frame -----------------------------------------------------------------------------------


def _head_strand(sheet: Sheet, direction: float, length: float) -> Place:
    """A strand from the top of the head's pulley; gives back its end."""
    start = parts.step(_HEAD, direction + math.copysign(UP, math.cos(direction)), 8.0)
    end = parts.step(start, direction, length)
    sheet.line(parts.ROPE, start, end)
    return end


def _over_the_head(front: float, back: float, sheet: Sheet) -> tuple[Place, Place]:
    """A frame on the cliff's edge; strands fall by ``front`` to the litter and ``back`` to the
    team. Gives back both ends."""
    deep = 74.0
    parts.cliff(sheet, (-16, -deep), 150, 76)
    reach = min(132.0, (deep - 14) / math.sin(back)) if back > 0 else 132.0
    team = _head_strand(sheet, BACK + back, reach)
    down = _head_strand(sheet, OUT - front, 98)
    parts.frame(sheet, _HEAD, -deep, (-36, -20))
    sheet.line(
        parts.ROPE,
        *parts.arc_points(_HEAD, 8.0, UP - front, UP + back),
    )
    return down, team


def _lean(facts: Facts, sheet: Sheet) -> str:
    front, back = facts.value("front_depression"), facts.value("back_depression")
    down, team = _over_the_head(front, back, sheet)
    parts.level(sheet, _HEAD, 74)
    parts.level(sheet, _HEAD, -110)
    parts.angle(sheet, _HEAD, 46, 0, -front, facts.text("front_depression"))
    parts.angle(sheet, _HEAD, 74, BACK, BACK + back, facts.text("back_depression"))
    sheet.label("litter", down, (0, -1))
    sheet.label("team", team, (-1, 0))
    sheet.ask((0, 10), (0, 1), "lean of the pull ?")
    return (
        "The haul line falls from the pulley of a high directional to the litter on the cliff "
        "side, and to the team on the other side."
    )


def _track(facts: Facts, sheet: Sheet) -> str:
    rise, fall = facts.value("haul_elevation"), facts.value("ground_depression")
    back = facts.value("back_depression")
    down, team = _over_the_head(rise, back, sheet)
    at = parts.step(down, -rise, 6)
    hub = parts.step(at, -fall, 104)
    sheet.line(TRACK, at, hub)
    parts.litter(sheet, at)
    parts.level(sheet, at, 74)
    parts.level(sheet, at, -46)
    parts.level(sheet, _HEAD, -110)
    parts.angle(sheet, at, 34, BACK, BACK - rise, facts.text("haul_elevation"))
    parts.angle(sheet, at, 62, 0, -fall, facts.text("ground_depression"))
    parts.angle(sheet, _HEAD, 74, BACK, BACK + back, facts.text("back_depression"))
    tip = parts.arrow(sheet, (at[0], at[1] - parts.LITTER_DEEP), DOWN, 30, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 10), (1, 0))
    sheet.label("team", team, (-1, 0))
    sheet.label("hub", hub, (1, 0))
    sheet.ask((0, 10), (0.4, 1), "pull on the head ?")
    return (
        "Haul line and track lines rise together from the litter to the head of a high "
        "directional and run back to the team; the ground legs of the track lines fall from the "
        "litter to the hub."
    )


_UP, _OUT = 122.0, 36.0
"""Height and reach of a frame's head where it is drawn from the side, not to scale."""
FOOT: Place = (-_OUT, -_UP)
"""Where its front feet stand; its head is the origin."""


def _from_the_side(facts: Facts, sheet: Sheet, behind: float = 92.0) -> None:
    """A frame's front legs on the cliff's edge, with height and reach of its head.

    The height is measured ``behind`` the head.
    """
    parts.cliff(sheet, (FOOT[0] + 6, -_UP), behind + 18, 36)
    sheet.line(parts.LEG, FOOT, _HEAD)
    sheet.disc(FOOT, 3.5, "#ffffff", parts.OUTLINE)
    parts.pulley(sheet, _HEAD, 8.0)
    parts.length(sheet, (-behind, -_UP), (-behind, 0), facts.text("head_height"))
    sheet.line(FAINT, (-behind - 6, 0), (-8, 0), ghost=True)
    parts.length(sheet, (FOOT[0], -_UP - 50), (0, -_UP - 50), facts.text("head_reach"), -1)
    sheet.line(FAINT, (0, -8), (0, -_UP - 54))
    sheet.line(FAINT, (FOOT[0], -_UP - 34), (FOOT[0], -_UP - 54), ghost=True)
    sheet.not_to_scale()


def on_its_feet(facts: Facts, sheet: Sheet) -> None:
    """The frame from the side, with its back legs."""
    _from_the_side(facts, sheet, 168.0)
    back: Place = (-146.0, -_UP)
    sheet.line(parts.LEG, back, _HEAD)
    sheet.disc(back, 3.5, "#ffffff", parts.OUTLINE)
    parts.pulley(sheet, _HEAD, 8.0)


def _landing(facts: Facts, sheet: Sheet) -> str:
    on_its_feet(facts, sheet)
    lean = facts.value("lean")
    tip = parts.arrow(sheet, _HEAD, DOWN - lean, 84, WEIGHT)
    parts.angle(sheet, _HEAD, 60, DOWN, DOWN - lean, facts.text("lean"))
    sheet.label("pull", tip, parts.way(DOWN - lean))
    sheet.ask((-98, -_UP - 6), (0, -1), "lands how far back ?")
    sheet.label("front feet", (FOOT[0] - 4, -_UP), (-1, 0.5))
    return (
        "A frame stands on the cliff's edge with its head out past the front feet; an arrow for "
        "the pull on the head leans inward, towards the team on the left."
    )


def _guy_line(facts: Facts, sheet: Sheet) -> Place:
    """The guy from the head out and down; gives back its middle."""
    fall = facts.value("guy_depression")
    end = parts.step(_HEAD, -fall, 112)
    sheet.line(TAG, parts.step(_HEAD, -fall, 8), end)
    parts.knot(sheet, end)
    parts.level(sheet, (8, 0), 84)
    parts.angle(sheet, _HEAD, 52, 0, -fall, facts.text("guy_depression"))
    return parts.step(_HEAD, -fall, 78)


def _guy(facts: Facts, sheet: Sheet) -> str:
    _from_the_side(facts, sheet)
    at = _guy_line(facts, sheet)
    inward = parts.arrow(sheet, (-8, 0), BACK, 62, WEIGHT)
    down = parts.arrow(sheet, (0, -8), DOWN, 60, WEIGHT)
    sheet.label(facts.text("inward_pull"), inward, (-0.2, 1))
    sheet.label(facts.text("downward_pull"), (0, down[1] + 14), (-1, -0.4))
    sheet.ask(at, parts.way(-facts.value("guy_depression") + UP), "guy ?")
    return (
        "A frame of two legs, seen from the side, is hinged at its feet on the cliff's edge; the "
        "ropes pull its head in to the left and down, and a guy runs out to the right and down."
    )


def _legs(facts: Facts, sheet: Sheet) -> str:
    _from_the_side(facts, sheet)
    at = _guy_line(facts, sheet)
    down = parts.arrow(sheet, (0, -8), DOWN, 60, WEIGHT)
    sheet.label(facts.text("downward_pull"), (0, down[1] + 14), (-1, -0.4))
    sheet.label(
        f"guy {facts.text('guy_tension')}", at, parts.way(-facts.value("guy_depression") + UP)
    )
    _from_the_front(facts, sheet, (164, -28))
    return (
        "A frame of two legs, from the side: the ropes pull its head down, a guy runs out to the "
        "right and down. Beside it, from the front, its legs spread to either side of plumb."
    )


def _from_the_front(facts: Facts, sheet: Sheet, head: Place) -> None:
    half = facts.value("leg_half_spread")
    x, y = head
    tall = 92.0
    run = tall * math.tan(half)
    parts.ground(sheet, (x - run - 14, y - tall), 2 * run + 28)
    parts.plumb(sheet, head, tall)
    for side in (-1, 1):
        foot = (x + side * run, y - tall)
        sheet.line(parts.LEG, head, foot)
        sheet.disc(foot, 3.5, "#ffffff", parts.OUTLINE)
        sheet.ask(parts.middle_of(head, foot), (side, 0.3))
    parts.pulley(sheet, head, 8.0)
    parts.angle(sheet, head, 58, DOWN, DOWN + half, facts.text("leg_half_spread"))
    sheet.label("from the front", (x, y - tall - 14), (0, -1), SOFT_INK)


DIAGRAMS: dict[str, Diagram] = {
    bank.REDIRECT.key: _redirect_pull,
    bank.REAL_REDIRECT.key: _hauled,
    bank.LEAN.key: _lean,
    bank.HEAD_WITH_TRACK.key: _track,
    bank.LANDING.key: _landing,
    bank.GUY.key: _guy,
    bank.LEGS.key: _legs,
}
"""What draws each question of this topic."""
