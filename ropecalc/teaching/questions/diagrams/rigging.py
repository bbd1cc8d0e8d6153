"""Any pulley system in a drawing, on the cliff top, with its litter over the edge.

The system and its lanes are those of the course's rope diagram; here it is small and to no scale.
"""

import math
from dataclasses import dataclass
from functools import lru_cache
from statistics import fmean

from ropecalc.mechanics.pulleys import How, Role, System, common_system
from ropecalc.teaching.drawing import Stroke
from ropecalc.teaching.figures.rope_diagram import Layout, lay_out, rope_strokes
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_METRE, _LANE = 26.0, 19.0
_RADIUS = _LANE / 2
_THROW, _GAP = 3.8, 1.7
_TO_EDGE = 76.0
_HANDS = 30.0
"""Height of the hands above the ground."""
_HANGS = 26.0


@dataclass(frozen=True)
class Rig:
    """Where the parts of a drawn system are: bodies by name, middles of strands by their index.

    ``rock`` is from where to where the ground below it reaches.
    """

    layout: Layout
    bodies: dict[str, Place]
    strands: tuple[Place, ...]
    sheaves: tuple[Place, ...]
    litter: Place
    ground: float
    rock: tuple[float, float]

    def name(self, sheet: Sheet, *lines: str) -> None:
        """Write on the rock below the system."""
        middle = sum(self.rock) / 2
        for row, line in enumerate(lines):
            sheet.write(line, (middle, self.ground - 13 - 16 * row))

    @property
    def hand(self) -> Place:
        """Where the hands hold the rope."""
        return self.bodies[self.layout.system.hand.name]


@lru_cache(maxsize=64)
def _laid_out(name: str, redirect: bool) -> Layout:
    return lay_out(common_system(name, redirect=redirect, throw=_THROW, gap=_GAP))


def rig(sheet: Sheet, name: str, redirect: bool = False, metre: float = _METRE) -> Rig:
    """Draw the system called ``name``, such as "simple 3:1".

    ``metre`` is in pixels, along the ropes.
    """
    layout = _laid_out(name, redirect)
    system = layout.system
    x = {b.name: metre * b.station for b in system.bodies}
    load, hand = system.load.name, system.hand.name
    edge = max(v for k, v in x.items() if k != load) + _TO_EDGE
    if redirect:
        x[hand] = min(x[hand], edge - 80)
    brow = _y(layout.bodies[load][0])
    ground = min(_y(layout.hand) - _HANDS, _y(layout.lowest) - 16)
    litter = (edge + _RADIUS, brow - _RADIUS - _HANGS)
    left = min(v for k, v in x.items() if k != load) - 34
    parts.cliff(sheet, (edge - 34, ground), edge - 34 - left, 40.0)
    head = (edge, brow - _RADIUS)
    for foot in (edge - 66, edge - 40):
        sheet.line(parts.LEG, (foot, ground), head)
    _posts(sheet, layout, x, ground)
    middles = _strands(sheet, layout, x, head, litter)
    sheaves = _sheaves(sheet, layout, x)
    parts.pulley(sheet, head, _RADIUS * 0.86)
    _holds(sheet, layout, x)
    parts.litter(sheet, litter)
    parts.person(sheet, (x[hand], ground), 28.0)
    places = {b.name: (x[b.name], _y(fmean(layout.bodies[b.name]))) for b in system.bodies}
    places[hand] = (x[hand], _y(layout.hand))
    places[load] = litter
    return Rig(layout, places, tuple(middles), tuple(sheaves), litter, ground, (left, edge - 34))


def _y(lane: float) -> float:
    return -_LANE * lane


def _posts(sheet: Sheet, layout: Layout, x: dict[str, float], ground: float) -> None:
    for body in layout.system.bodies:
        if body.role is Role.ANCHOR:
            top = _y(layout.bodies[body.name][0]) + 12
            parts.post(sheet, (x[body.name], ground), top - ground)


def _strands(
    sheet: Sheet, layout: Layout, x: dict[str, float], head: Place, litter: Place
) -> list[Place]:
    system, strokes = layout.system, _strokes(layout.system)
    middles = []
    for strand in system.strands:
        y = _y(layout.strands[strand.index])
        ends = [strand.start.body, strand.end.body]
        if system.load.name in ends:
            other = x[next(name for name in ends if name != system.load.name)]
            turn = parts.arc_points(head, _RADIUS, parts.UP, 0.0)
            sheet.line(strokes[strand.rope], (other, y), *turn, litter)
            middles.append(((other + head[0]) / 2, y))
        else:
            one, two = (x[name] for name in ends)
            sheet.line(strokes[strand.rope], (one, y), (two, y))
            middles.append(((one + two) / 2, y))
    return middles


def _strokes(system: System) -> dict[str, Stroke]:
    """The colours of the rope diagram, slimmer."""
    return {name: Stroke(s.color, parts.ROPE.width) for name, s in rope_strokes(system).items()}


def _sheaves(sheet: Sheet, layout: Layout, x: dict[str, float]) -> list[Place]:
    system, strokes = layout.system, _strokes(layout.system)
    centres = []
    for sheave, lane in zip(system.sheaves, layout.sheaves, strict=True):
        centre = (x[sheave.visit.body], _y(lane))
        centres.append(centre)
        parts.pulley(sheet, centre, _RADIUS * 0.86)
        assert sheave.before is not None and sheave.after is not None
        way = system.pull(sheave.before, sheave.visit.body)
        if way == system.pull(sheave.after, sheave.visit.body):
            first = parts.UP if way > 0 else -parts.UP
            sheet.line(
                strokes[sheave.rope], *parts.arc_points(centre, _RADIUS, first, first + math.pi)
            )
    return centres


def _holds(sheet: Sheet, layout: Layout, x: dict[str, float]) -> None:
    """Plates that hold a body's parts together, grabs, and knots."""
    system = layout.system
    for body in system.bodies:
        top, bottom = layout.bodies[body.name]
        if body.role not in (Role.LOAD, Role.HAND) and top < bottom:
            sheet.line(parts.BAR, (x[body.name], _y(top)), (x[body.name], _y(bottom)))
    for attachment in system.attachments:
        body = system.body(attachment.visit.body)
        strand = attachment.before or attachment.after
        assert strand is not None
        at = (x[body.name], _y(layout.strands[strand.index]))
        if attachment.visit.how is How.GRIPPED:
            parts.grab(sheet, at)
        elif attachment.visit.how is How.TIED and body.role not in (Role.LOAD, Role.HAND):
            parts.knot(sheet, at)
