"""Any pulley system as a diagram: bodies at their stations, strands side by side in lanes.

The layout is worked out from the system's data alone. A rope keeps its lane until it turns over a
sheave; there it goes on in the next lane below, so no two strands lie on each other. Along the
ropes the drawing is to scale (m); across them strands are spread so that each can be seen.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import fmean

import numpy as np
from matplotlib.axes import Axes
from matplotlib.path import Path

from ropecalc.mechanics.pulleys import Attachment, How, Role, Rope, System, Travel
from ropecalc.teaching import drawing
from ropecalc.teaching.canvas import INK, Canvas
from ropecalc.teaching.drawing import (
    GROUND_FACE,
    HAUL,
    LITTER_FACE,
    ROCK_EDGE,
    Area,
    Label,
    Litter,
    Person,
    Place,
    Shape,
    Stroke,
)

OTHER_ROPE = Stroke("#5f93c9", 3.0)
_FRAME = Stroke(INK, 2.2)
_HANDS_UP = 1.0
"""Height of a standing person's hands (m)."""
_POST_WIDTH = 0.22


@dataclass(frozen=True)
class Layout:
    """Where everything of ``system`` lies across the ropes; lanes count downwards from 0.

    ``strands`` by the strand's index, ``sheaves`` (the sheave's middle) by its place in
    ``system.sheaves``, ``bodies`` from the highest to the lowest lane that a body touches.
    """

    system: System
    strands: tuple[float, ...]
    sheaves: tuple[float, ...]
    bodies: Mapping[str, tuple[float, float]]

    @property
    def lowest(self) -> float:
        """The lane furthest down."""
        return max(self.strands)

    def top_lane(self, body: str) -> float:
        """The highest lane of a strand that ends at ``body``."""
        at = self.system.at(body)
        return min(self.strands[index] for attachment in at for index in _beside(attachment))

    @property
    def hand(self) -> float:
        """The lane of the hand's strand."""
        return self.strands[self.system.hand_strand.index]


def lay_out(system: System) -> Layout:
    """Lanes for every strand of ``system``.

    Ropes that meet at a body are aligned there: a rope tied to a traveller leads to the middle of
    the traveller's sheaves.
    """
    lanes: dict[int, float] = {}
    centres: dict[str, float] = {}
    for rope in system.ropes:
        of_rope = [a for a in system.attachments if a.rope == rope.name]
        own = _relative(rope, of_rope)
        met = {name: _centre(of_rope, own, name) for name in _free_names(system, of_rope)}
        known = next((name for name in met if name in centres), None)
        if known is not None:
            shift = centres[known] - met[known]
        else:
            shift = max(lanes.values()) + 1.0 if lanes else 0.0
        lanes |= {index: lane + shift for index, lane in own.items()}
        for name, centre in met.items():
            centres.setdefault(name, centre + shift)
    top = min(lanes.values())
    placed = tuple(lanes[s.index] - top for s in system.strands)
    return Layout(system, placed, _sheave_lanes(system, placed), _spans(system, placed))


def _relative(rope: Rope, attachments: Sequence[Attachment]) -> dict[int, float]:
    """Lanes of one rope's strands, counted from its first."""
    lanes, lane = {}, 0.0
    for visit, attachment in zip(rope.visits, attachments, strict=True):
        lane += visit.how is How.OVER
        if attachment.after is not None:
            lanes[attachment.after.index] = lane
    return lanes


def _free_names(system: System, attachments: Sequence[Attachment]) -> list[str]:
    """The moving bodies, but for the load, at which a rope is tied or turns."""
    movers = {b.name for b in system.free_bodies if b is not system.load}
    at = (a.visit.body for a in attachments if a.visit.how is not How.GRIPPED)
    return [name for name in dict.fromkeys(at) if name in movers]


def _beside(attachment: Attachment) -> list[int]:
    return [s.index for s in (attachment.before, attachment.after) if s is not None]


def _centre(attachments: Sequence[Attachment], lanes: Mapping[int, float], name: str) -> float:
    at = [a for a in attachments if a.visit.body == name and a.visit.how is not How.GRIPPED]
    turning = [a for a in at if a.visit.how is How.OVER] or at
    return fmean(lanes[index] for a in turning for index in _beside(a))


def _sheave_lanes(system: System, lanes: Sequence[float]) -> tuple[float, ...]:
    return tuple(fmean(lanes[index] for index in _beside(a)) for a in system.sheaves)


def _spans(system: System, lanes: Sequence[float]) -> dict[str, tuple[float, float]]:
    spans = {}
    for body in system.bodies:
        touched = [
            fmean(lanes[index] for index in _beside(a)) for a in system.at(body.name)
        ]  # a sheave is held at its middle
        spans[body.name] = (min(touched), max(touched))
    return spans


def stations_after(system: System, travel: Travel, rise: float) -> dict[str, float]:
    """Every body's station (m) once the load has risen by ``rise`` m and the hand walked along."""
    after = {body.name: body.station for body in system.bodies}
    for name, moved in travel.rise.items():
        after[name] -= float(moved) * rise
    hand = system.hand.name
    away = -system.pull(system.hand_strand, hand)
    after[hand] += away * float(travel.ratio) * rise
    return after


# --- the artists ------------------------------------------------------------------------------


@dataclass(frozen=True)
class View:
    """How a layout is put on axes: the gap between lanes (m) and where the load's rope turns down.

    ``edge`` is the station (m) of the pulley above the cliff's edge.
    """

    layout: Layout
    gap: float
    edge: float

    def z(self, lane: float) -> float:
        """Height of a lane on the axes."""
        return -lane * self.gap

    @property
    def brow(self) -> float:
        """Height at which the load's rope runs level up to the pulley at the edge."""
        return self.z(self.layout.bodies[self.layout.system.load.name][0])

    @property
    def ground(self) -> float:
        """Height of the ground on which the hands stand."""
        return min(self.z(self.layout.hand) - _HANDS_UP, self.z(self.layout.lowest) - 0.4)


class RopeDiagram:
    """The artists of one diagram, for systems of up to so many parts."""

    STRANDS, SHEAVES, BODIES = 16, 12, 6

    def __init__(self, canvas: Canvas, axes: Axes) -> None:
        line = {"edgecolor": INK, "linewidth": 1.4}
        self._ground = Area(canvas, axes, GROUND_FACE, zorder=1)
        self._posts = [Area(canvas, axes, "#b9ad97", zorder=2) for _ in range(self.BODIES)]
        self._plates = [drawing.Rope(canvas, axes, Stroke(INK, 3.4), 3.2) for _ in self._posts]
        self._strands = [drawing.Rope(canvas, axes, HAUL) for _ in range(self.STRANDS)]
        self._turns = [drawing.Arc(canvas, axes, HAUL) for _ in range(self.SHEAVES)]
        wheel = Path.circle((0.0, 0.0), 1.0)
        self._wheels = [
            Shape(canvas, axes, wheel, 3.5, facecolor="white", **line) for _ in self._turns
        ]
        self._axles = [Shape(canvas, axes, wheel, 3.6, facecolor=INK) for _ in self._turns]
        grip = Path([(-1, -0.6), (1, -0.6), (1, 0.6), (-1, 0.6), (-1, -0.6)], closed=True)
        self._grips = [
            Shape(canvas, axes, grip, 4.6, facecolor=LITTER_FACE, **line) for _ in self._posts
        ]
        self._knots = [Shape(canvas, axes, wheel, 4.5, facecolor=INK) for _ in self._posts]
        self._legs = drawing.Rope(canvas, axes, _FRAME, 3)
        self._head = Shape(canvas, axes, wheel, 3.5, facecolor="white", **line)
        self._litter = Litter(canvas, axes)
        self._person = Person(canvas, axes, zorder=2.5)

    def place(self, view: View, stations: Mapping[str, float]) -> None:
        """Draw ``view`` with its bodies at ``stations`` (m)."""
        self._scene(view, stations)
        self._draw_strands(view, stations)
        self._draw_sheaves(view, stations)
        self._draw_holds(view, stations)

    def _scene(self, view: View, stations: Mapping[str, float]) -> None:
        system, ground = view.layout.system, view.ground
        head, (back, front) = _frame(view)
        face = front[0] + 0.1
        self._ground.place((-99, ground), (face, ground), (face, -99), (-99, -99))
        self._legs.place(back, head, front)
        self._head.place(*head, size=_WHEEL * view.gap)
        self._litter.place(*load_place(view, stations))
        self._person.place(stations[system.hand.name], view.z(view.layout.hand) - _HANDS_UP)
        anchors = [b for b in system.bodies if b.role is Role.ANCHOR]
        for index, post in enumerate(self._posts):
            if index >= len(anchors):
                post.hide()
                continue
            x = stations[anchors[index].name]
            left, right = x - _POST_WIDTH / 2, x + _POST_WIDTH / 2
            top = view.z(view.layout.bodies[anchors[index].name][0]) + 0.6 * view.gap
            post.place((left, ground), (left, top), (right, top), (right, ground))

    def _draw_strands(self, view: View, stations: Mapping[str, float]) -> None:
        system = view.layout.system
        strokes = rope_strokes(system)
        for index, rope in enumerate(self._strands):
            if index >= len(system.strands):
                rope.hide()
                continue
            strand = system.strands[index]
            rope.restyle(strokes[strand.rope])
            rope.place(*strand_points(view, stations, index))

    def _draw_sheaves(self, view: View, stations: Mapping[str, float]) -> None:
        system, layout = view.layout.system, view.layout
        strokes = rope_strokes(system)
        radius = view.gap / 2
        for index, (turn, wheel, axle) in enumerate(
            zip(self._turns, self._wheels, self._axles, strict=True)
        ):
            if index >= len(system.sheaves):
                turn.hide()
                wheel.hide()
                axle.hide()
                continue
            sheave = system.sheaves[index]
            centre = (stations[sheave.visit.body], view.z(layout.sheaves[index]))
            wheel.place(*centre, size=0.86 * radius)
            axle.place(*centre, size=0.2 * radius)
            turn.restyle(strokes[sheave.rope])
            assert sheave.before is not None and sheave.after is not None
            way = system.pull(sheave.before, sheave.visit.body)
            if way != system.pull(sheave.after, sheave.visit.body):
                turn.hide()  # the rope goes straight on beside the wheel
            elif way > 0:
                turn.sweep(centre, radius, math.pi / 2, 1.5 * math.pi)
            else:
                turn.sweep(centre, radius, -math.pi / 2, math.pi / 2)

    def _draw_holds(self, view: View, stations: Mapping[str, float]) -> None:
        """Plates that hold a body's parts together, grabs, and knots."""
        system, layout = view.layout.system, view.layout
        for plate in self._plates:
            plate.hide()
        for mark in (*self._grips, *self._knots):
            mark.hide()
        parts = [b for b in system.bodies if b.role not in (Role.LOAD, Role.HAND)]
        for plate, body in zip(self._plates, parts, strict=False):
            top, bottom = layout.bodies[body.name]
            if top < bottom:
                x = stations[body.name]
                plate.place((x, view.z(top)), (x, view.z(bottom)))
        grips = [a for a in system.attachments if a.visit.how is How.GRIPPED]
        for mark, grip in zip(self._grips, grips, strict=False):
            lane = layout.strands[_beside(grip)[0]]
            mark.place(stations[grip.visit.body], view.z(lane), size=0.3 * view.gap)
        names = {b.name for b in parts}
        knots = [a for a in system.attachments if a.visit.how is How.TIED and a.visit.body in names]
        for mark, knot in zip(self._knots, knots, strict=False):
            lane = layout.strands[_beside(knot)[0]]
            mark.place(stations[knot.visit.body], view.z(lane), size=0.16 * view.gap)


_WHEEL = 0.43
"""Radius of the pulley above the edge, in gaps between lanes."""


def rope_strokes(system: System) -> dict[str, Stroke]:
    """How each rope looks, by its name: those that start at a traveller's pulley are paler."""
    return {
        rope.name: HAUL if index % 2 == 0 else OTHER_ROPE for index, rope in enumerate(system.ropes)
    }


def _frame(view: View) -> tuple[Place, tuple[Place, Place]]:
    """The pulley above the edge, and the feet of the frame that holds it."""
    head = (view.edge, view.brow - _WHEEL * view.gap)
    return head, ((view.edge - 1.4, view.ground), (view.edge - 0.6, view.ground))


def load_place(view: View, stations: Mapping[str, float]) -> Place:
    """Where the load hangs: as far below the pulley at the edge as its station is beyond it."""
    beyond = stations[view.layout.system.load.name] - view.edge
    return (view.edge + _WHEEL * view.gap, view.brow - _WHEEL * view.gap - beyond)


def strand_points(view: View, stations: Mapping[str, float], index: int) -> list[Place]:
    """The line along which a strand runs; what leads to the load turns down at the edge."""
    system = view.layout.system
    strand, z = system.strands[index], view.z(view.layout.strands[index])
    ends = [strand.start.body, strand.end.body]
    if system.load.name not in ends:
        return [(stations[name], z) for name in ends]
    other = next(name for name in ends if name != system.load.name)
    radius = _WHEEL * view.gap
    turn = [
        (view.edge + radius * math.sin(t), z - radius + radius * math.cos(t))
        for t in np.linspace(0.0, math.pi / 2, 7)
    ]
    return [(stations[other], z), *turn, load_place(view, stations)]


def strand_middle(view: View, stations: Mapping[str, float], index: int) -> Place:
    """A point near the middle of a strand's level part, for a label beside it."""
    points = strand_points(view, stations, index)
    one, other = points[0], points[1]
    return ((one[0] + other[0]) / 2, one[1])


def obstacles(view: View, stations: Mapping[str, float]) -> list[list[Place]]:
    """Lines that labels should keep clear of."""
    layout = view.layout
    lines = [strand_points(view, stations, i) for i in range(len(layout.strands))]
    head, feet = _frame(view)
    lines += [[foot, head] for foot in feet]
    for name, (top, bottom) in layout.bodies.items():
        x = stations[name]
        if name not in (layout.system.load.name, layout.system.hand.name):
            anchored = layout.system.body(name).role is Role.ANCHOR
            low = view.ground if anchored else view.z(bottom + 0.5)
            lines.append([(x, view.z(top - 0.5)), (x, low)])
    return lines


def body_labels(view: View, stations: Mapping[str, float]) -> list[Label]:
    """The name of every anchor, traveller and grab, above it."""
    labels = []
    for body in view.layout.system.bodies:
        if body.role in (Role.LOAD, Role.HAND):
            continue
        top, _ = view.layout.bodies[body.name]
        x = stations[body.name]
        if body.role is Role.ANCHOR:
            labels.append(Label(body.name, (x, view.ground), ROCK_EDGE, (0, -1)))
        else:
            labels.append(Label(body.name, (x, view.z(top) + 0.3 * view.gap), INK, (0, 1)))
    return labels
