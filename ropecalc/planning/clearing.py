"""How far out the litter must be held at each height, and which rock demands it.

Each demand is a least offset of the master attachment point: for the body, for the lines, and
for hanging plumb. Clearances are measured level. Rock and lines are straight between their
corners, so every demand is exact: it is the largest of a few candidates, not the result of a
search.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from ropecalc.mechanics.holding import Method, Point
from ropecalc.planning.profile import SAME, RockPoint
from ropecalc.planning.site import ProtectedEdge, Site


class Cause(StrEnum):
    """What needs the room."""

    BODY = "body"
    HAUL_LINE = "haul line"
    TRACK_LINE = "track line above the litter"
    GROUND_LINE = "line to the hub"
    PLUMB = "plumb"


@dataclass(frozen=True)
class Demand:
    """The litter must be at least ``offset`` (m) out, because of ``cause`` ``at`` a point.

    ``at`` is the rock that would be touched; for plumb, the point that the litter hangs below.
    """

    offset: float
    cause: Cause
    at: RockPoint


@dataclass(frozen=True)
class HaulPath:
    """How the haul line runs from the litter up: the point it hangs from, and bent edges.

    ``bends`` lists the protected edges on which it bears, lowest first, with the angle in
    radians through which the line turns on each.
    """

    hangs_from: Point
    bends: tuple[tuple[ProtectedEdge, float], ...]


def all_demands(site: Site, height: float) -> list[Demand]:
    """Every demand on the offset of a litter at ``height``, whichever way it is guided."""
    found = [
        _plumb(site, height),
        _body(site, height),
        _haul_line(site, height),
        _line_to(site, height, site.rig.track_directional, Cause.TRACK_LINE),
        _line_to(site, height, site.rig.hub, Cause.GROUND_LINE),
    ]
    return [demand for demand in found if demand is not None]


def most_room(found: Sequence[Demand], method: Method) -> Demand:
    """Of all demands at a height, the one that asks most of a litter guided by ``method``."""
    spared = {
        Method.TRACK: (),
        Method.TAG: (Cause.TRACK_LINE,),
        Method.ATTENDANT: (Cause.TRACK_LINE, Cause.GROUND_LINE),
    }[method]
    concerned = [demand for demand in found if demand.cause not in spared]
    return max(concerned, key=lambda demand: demand.offset)


def _plumb(site: Site, height: float) -> Demand:
    """The litter can be held out from plumb, not in: it hangs below the outermost point."""
    directional = site.rig.haul_directional
    candidates = [RockPoint(directional.x, directional.z)]
    candidates += [RockPoint(edge.offset, edge.height) for edge in _edges_above(site, height)]
    outermost = max(candidates, key=lambda point: point.offset)
    return Demand(outermost.offset, Cause.PLUMB, outermost)


def _body(site: Site, height: float) -> Demand | None:
    """The body with its clearance stays outside the rock over all heights it spans.

    Rock offset plus half width is straight between the corners of the two, so the largest value
    is at one of them or at an end of the span.
    """
    litter, wall = site.litter, site.wall
    depths = height - wall.heights
    spanned = (depths >= -SAME) & (depths <= litter.reach_down + SAME)
    rock = [point for point, inside in zip(wall.points, spanned, strict=True) if inside]
    for depth in (0.0, litter.bridle, litter.reach_down):
        reach = wall.rock_at(height - depth)
        if math.isfinite(reach):
            rock.append(RockPoint(reach, height - depth))
    if not rock:
        return None
    needs = [
        point.offset + litter.half_width_at(height - point.height) + litter.clearance
        for point in rock
    ]
    most = int(np.argmax(needs))
    return Demand(needs[most], Cause.BODY, rock[most])


def _haul_line(site: Site, height: float) -> Demand | None:
    """The haul line clears all open rock above the litter; it may bear on protected edges.

    The taut line is the outermost of all straight chords between two of its points (litter,
    edges, directional). So it clears a corner as soon as one chord does: the least demand over
    the points above the corner that the chord from the litter may lead to.
    """
    directional = site.rig.haul_directional
    anchors = [directional, *(edge.point for edge in _edges_above(site, height))]
    clearance = site.lift.line_clearance
    most: Demand | None = None
    for corner in _rock_between(site, site.open_rock, height, directional.z):
        room = corner.offset + clearance
        above = [anchor for anchor in anchors if anchor.z > corner.height + SAME]
        below = [anchor for anchor in anchors if anchor.z <= corner.height + SAME]
        if any(_chord(low, high, corner.height) >= room for low in below for high in above):
            continue
        offset = min(_reach(anchor, corner.height, room, height) for anchor in above)
        if most is None or offset > most.offset:
            most = Demand(offset, Cause.HAUL_LINE, corner)
    return most


def _line_to(site: Site, height: float, anchor: Point, cause: Cause) -> Demand | None:
    """The straight line from the litter to ``anchor`` clears all rock; no protection counts."""
    if abs(anchor.z - height) <= SAME:
        return None
    most: Demand | None = None
    for corner in _rock_between(site, site.wall.points, height, anchor.z):
        room = corner.offset + site.lift.line_clearance
        offset = _reach(anchor, corner.height, room, height)
        if most is None or offset > most.offset:
            most = Demand(offset, cause, corner)
    return most


def _reach(anchor: Point, level: float, room: float, height: float) -> float:
    """Offset at ``height`` of the straight line from ``anchor`` through ``room`` at ``level``.

    ``level`` lies between the two and differs from the anchor's height.
    """
    return anchor.x + (room - anchor.x) * (height - anchor.z) / (level - anchor.z)


def _chord(low: Point, high: Point, level: float) -> float:
    """Offset at ``level`` of the straight line between two points at different heights."""
    return low.x + (high.x - low.x) * (level - low.z) / (high.z - low.z)


def _rock_between(
    site: Site, corners: Sequence[RockPoint], start: float, end: float
) -> list[RockPoint]:
    """The rock that a line passes on its way from the litter's height to an anchor's.

    The given corners between the two, and the rock level with the litter, where the line begins;
    the rock is straight in between, and so is the line.
    """
    low, high = sorted((start, end))
    between = [
        point
        for point in corners
        if low - SAME <= point.height <= high + SAME and abs(point.height - end) > SAME
    ]
    level = site.wall.rock_at(start)
    if math.isfinite(level) and all(abs(edge.height - start) > SAME for edge in site.edges):
        between.append(RockPoint(level, start))
    return between


def _edges_above(site: Site, height: float) -> list[ProtectedEdge]:
    """The protected edges between the litter and the haul directional, lowest first."""
    top = site.rig.haul_directional.z
    return [edge for edge in site.edges if height + SAME < edge.height < top - SAME]


def haul_path(site: Site, height: float, offset: float) -> HaulPath:
    """How the haul line runs above a litter at (``offset``, ``height``).

    From each point it goes to the protected edge or directional that leans it inwards least.
    """
    directional = site.rig.haul_directional
    above = _edges_above(site, height)
    at = Point(offset, height)
    steps: list[tuple[Point, ProtectedEdge | None, float]] = []
    while True:
        lean, nearest, edge = _lean(at, directional), directional, None
        for candidate in above:
            if _lean(at, candidate.point) < lean - SAME:
                lean, nearest, edge = _lean(at, candidate.point), candidate.point, candidate
        steps.append((nearest, edge, lean))
        if edge is None:
            break
        at = nearest
        above = [candidate for candidate in above if candidate.height > edge.height + SAME]
    bends = tuple(
        # three points in one straight line may turn by less than nothing in the last digit
        (edge, max(0.0, steps[index + 1][2] - lean))
        for index, (_, edge, lean) in enumerate(steps)
        if edge is not None
    )
    return HaulPath(steps[0][0], bends)


def _lean(low: Point, high: Point) -> float:
    """How far the line from ``low`` up to ``high`` leans inwards from plumb (rad)."""
    return math.atan2(low.x - high.x, high.z - low.z)
