"""The litter between haul leg and ground leg, both at their true angles: tag line, track lines.

The litter's master attachment point is the origin. The haul line rises from it to the left, over
the head of a frame on the cliff's edge and back to the team; the ground leg leaves it to the right.
"""

import math
from dataclasses import dataclass

from ropecalc.teaching.canvas import INK, SOFT_INK
from ropecalc.teaching.drawing import HAUL, ROCK_FACE, TAG, TRACK, WEIGHT
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.facts import Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

AT: Place = (0.0, 0.0)
TAG_RIG = (
    "The haul line rises from the litter to the head of a frame on the cliff's edge and runs back "
    "to the team; a tag line runs from the litter to the hub."
)
TRACK_RIG = (
    "Haul line and track lines rise side by side from the litter to the head of a frame on the "
    "cliff's edge; below a pulley at the litter the track lines run down and out to the hub."
)
_UPPER, _GROUND, _TO_TEAM = 108.0, 128.0, 84.0
_WHEEL, _INNER = 9.0, 4.0
_APART = _WHEEL - _INNER
_BACK = BACK + math.radians(8)
"""Towards the team."""
_FRAME = 38.0
_CLEAR = 14.0


@dataclass(frozen=True)
class Rig:
    """Directions from the litter, and where things are."""

    rise: float
    """Of the haul leg, from +x."""
    fall: float
    """Of the ground leg, from +x."""
    head: Place
    hub: Place
    team: Place


def tag(sheet: Sheet, rise: float, fall: float) -> Rig:
    """A tag line that falls to the hub (or rises, if ``fall`` is negative)."""
    rig = _rig(sheet, rise, fall, 0.0)
    sheet.line(TAG, AT, rig.hub)
    _finish(sheet, rig)
    return rig


def track(sheet: Sheet, rise: float, fall: float) -> Rig:
    """Track lines beside the haul line, through a pulley at the litter and on to the hub."""
    rig = _rig(sheet, rise, fall, _APART)
    up, down = rig.rise + UP, rig.fall - UP  # both to the lower left, where the line bends
    sheet.line(
        TRACK,
        parts.step(rig.team, _BACK + UP, _APART),
        *parts.arc_points(rig.head, _INNER, _BACK - UP, rig.rise - UP),
        parts.step(AT, up, _APART),
        *parts.arc_points(AT, _APART, up, down + math.tau),
        rig.hub,
    )
    _finish(sheet, rig)
    parts.pulley(sheet, AT, _APART - 0.5)
    return rig


def _rig(sheet: Sheet, rise: float, fall: float, aside: float) -> Rig:
    """The rock, the haul line and where everything is."""
    up, down = BACK - rise, -fall
    reach = _UPPER
    top = parts.step(AT, up, reach)
    head = parts.step(top, up + UP, _WHEEL)
    hub = parts.step(parts.step(AT, down - UP, aside), down, _GROUND)
    y = head[1] - _FRAME
    edge = min(head[0] - 18, -36.0)
    deep = y + parts.LITTER_DEEP + 10
    parts.cliff(sheet, (edge, y), 92, deep)
    over = parts.arc_points(head, _WHEEL, up - UP, _BACK - UP)
    team = parts.step(over[-1], _BACK, _TO_TEAM)
    sheet.line(HAUL, AT, *over, team)
    return Rig(up, down, head, hub, team)


def _finish(sheet: Sheet, rig: Rig) -> None:
    edge = min(rig.head[0] - 18, -36.0)
    parts.frame(sheet, rig.head, rig.head[1] - _FRAME, (edge - 30, edge - 4))
    parts.litter(sheet, AT)
    if rig.hub[1] > 0:  # across the gorge, on rock that the line clears
        x, y = rig.hub[0] - _CLEAR, rig.hub[1] - 11
        low, far = -parts.LITTER_DEEP - 10, rig.hub[0] + 42
        face = [(x, y), (x + 3, 0.3 * low), (x + 5, low)]
        sheet.area(ROCK_FACE, *face, (far, low), (far, y))
        sheet.line(parts.EDGE, *face)
        parts.hub(sheet, rig.hub, _CLEAR)
    else:
        parts.hub(sheet, rig.hub)
    sheet.label("team", rig.team, (-1, 0), SOFT_INK)
    sheet.label("hub", (rig.hub[0] + 8, rig.hub[1] - 20), (0, -1), SOFT_INK)


def load(facts: Facts, sheet: Sheet) -> None:
    """The weight of all that hangs."""
    tip = parts.arrow(sheet, (0, -parts.LITTER_DEEP), DOWN, 30, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 8), (-1, 0), INK)


def angles(facts: Facts, sheet: Sheet, fall: str = "ground_depression", sense: int = -1) -> None:
    """Both legs' angles from the level, the ground leg's downward or upward."""
    rise, low = facts.value("haul_elevation"), sense * facts.value(fall)
    parts.level(sheet, AT, -62)
    parts.level(sheet, AT, 88)
    parts.angle(sheet, AT, 40, BACK, BACK - rise, facts.text("haul_elevation"))
    parts.angle(sheet, AT, 66, OUT, low, facts.text(fall))


def tracked(facts: Facts, sheet: Sheet) -> Rig:
    """Track lines at the given haul elevation and ground depression."""
    rig = track(sheet, facts.value("haul_elevation"), facts.value("ground_depression"))
    angles(facts, sheet)
    return rig


def ask_on_haul(sheet: Sheet, rig: Rig) -> None:
    """Ask for the tension of the haul line."""
    sheet.ask(parts.step(AT, rig.rise, 0.6 * _UPPER), parts.way(rig.rise - UP), "haul ?")


def ask_on_ground_leg(sheet: Sheet, rig: Rig, text: str, side: float = UP) -> None:
    """Ask for the tension of what leaves the litter to the right, above it or below."""
    sheet.ask(parts.step(rig.hub, rig.fall, -44), parts.way(rig.fall + side), text)
