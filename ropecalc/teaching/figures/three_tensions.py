"""One load over an edge and through a pulley system, raised, held and lowered.

Ropes are drawn as thick as their tension. Held, the dark core is the least tension that friction
allows and the pale rim the most. Right below, the hand's pull all three ways.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from matplotlib.axes import Axes
from matplotlib.path import Path

from ropecalc import cautions
from ropecalc.mechanics.friction import Band, Direction, over_edge
from ropecalc.mechanics.pulleys import How, Role, Strand, System, common_system, forces
from ropecalc.mechanics.sheaves import over_sheave
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import DOTS_PER_INCH, INK, SOFT_INK, Canvas
from ropecalc.teaching.drawing import (
    FAINT,
    GROUND_FACE,
    HAUL,
    LIMIT,
    LITTER_FACE,
    PUSH,
    ROCK_FACE,
    THIN,
    WEIGHT,
    Arc,
    Area,
    Arrow,
    Box,
    Label,
    Labels,
    Litter,
    Person,
    Place,
    Rope,
    ScaleBar,
    Shape,
    Stroke,
    between,
)
from ropecalc.teaching.figures.free_body import neat_force
from ropecalc.teaching.figures.rope_diagram import Layout, lay_out
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import Choice, Figure, Look, Outcome, Prediction, Table, Values
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

BARE, PULLEY = "bare", "pulley"
_NAMES = {
    Direction.HAULING: "raise",
    Direction.HOLDING: "hold",
    Direction.LOWERING: "lower",
}
_DOING = {
    Direction.HAULING: "Raising",
    Direction.HOLDING: "Holding",
    Direction.LOWERING: "Lowering",
}


@dataclass(frozen=True)
class Way:
    """What is carried in one direction, in N: above the edge, by each strand, by the hand."""

    above: Band
    strands: tuple[Band, ...]
    hand: Band


@dataclass(frozen=True)
class ThreeTensions:
    """One setting worked out in all three directions; ``direction`` is the one that is shown."""

    direction: Direction
    edge: str
    name: str
    system: System
    mass: float
    load: float
    friction: float
    turn: float
    efficiency: float
    ways: Mapping[Direction, Way]

    @property
    def shown(self) -> Way:
        """The direction that is drawn."""
        return self.ways[self.direction]

    @property
    def most(self) -> float:
        """The largest tension in any direction (N): one scale serves all."""
        ways = self.ways.values()
        return max(self.load, *(band.high for w in ways for band in (w.above, *w.strands)))

    @property
    def without_friction(self) -> float:
        """The hand's pull without any friction (N)."""
        return float(self.load * _shares(self.name, Direction.HAULING, 1.0)[1].high)

    @property
    def reversal(self) -> float:
        """The hand's pull raising over lowering."""
        raised, lowered = self.ways[Direction.HAULING], self.ways[Direction.LOWERING]
        return float(raised.hand.high / lowered.hand.low)


@lru_cache(maxsize=32)
def _system(name: str) -> System:
    return common_system(name, throw=2.6, gap=1.2, height=1.8)


@lru_cache(maxsize=512)
def _shares(name: str, way: Direction, efficiency: float) -> tuple[tuple[Band, ...], Band]:
    """What each strand and the hand carry for a pull of 1 N on the system."""
    worked = forces(_system(name), way, load=1.0, efficiency=efficiency)
    return tuple(worked.strands.values()), worked.hand_pull


@lru_cache(maxsize=32)
def _layout(name: str) -> Layout:
    return lay_out(_system(name))


def compute(values: Values) -> ThreeTensions:
    """Work out one setting of the controls (SI)."""
    load = weight(mass=values["mass"])
    system = _system(values["system"])
    ways = {way: _way(way, load, values) for way in Direction}
    return ThreeTensions(
        direction=Direction(values["direction"]),
        edge=values["edge"],
        name=values["system"],
        system=system,
        mass=values["mass"],
        load=load,
        friction=values["friction"],
        turn=values["turn"],
        efficiency=values["efficiency"],
        ways=ways,
    )


def _way(way: Direction, load: float, values: Values) -> Way:
    efficiency, turn = values["efficiency"], values["turn"]
    if values["edge"] == BARE:
        above = over_edge(way, load_side=load, friction=values["friction"], turn=turn).team_side
    else:
        above = over_sheave(way, load_side=load, efficiency=efficiency, turn=turn).team_side
    strands, hand = _shares(values["system"], way, efficiency)

    def carried(share: Band) -> Band:
        return Band(above.low * share.low, above.high * share.high)

    return Way(above, tuple(map(carried, strands)), carried(hand))


# --- in words ---------------------------------------------------------------------------------


def _band(band: Band, display: Display) -> str:
    low, high = (say(display, v, Kind.FORCE) for v in (band.low, band.high))
    if low == high:
        return low
    number, _, unit = low.partition(" ")
    return f"{number if high.endswith(' ' + unit) else low} to {high}"


def summary(result: ThreeTensions, display: Display) -> str:
    """The setting, and what it takes in each direction."""
    shown = result.shown
    turn = say(display, result.turn, Kind.ANGLE)
    ratio = say(display, result.efficiency, Kind.RATIO)
    if result.edge == BARE:
        at_edge = f"over a bare edge with friction {say(display, result.friction, Kind.RATIO)}"
    else:
        at_edge = "over a pulley at the edge"
    sheaves = f"pulleys of efficiency {ratio}"
    if not result.system.sheaves:
        system = "The team pulls straight on the rope"
        system += f" (edge pulley of efficiency {ratio})" if result.edge == PULLEY else ""
    else:
        system = f"Through a {result.name} with {sheaves} the hand pulls"
    pulls = (
        f": {_band(shown.hand, display)}."
        if not result.system.sheaves
        else (f" {_band(shown.hand, display)}.")
    )
    hand = {name: _band(result.ways[way].hand, display) for way, name in _NAMES.items()}
    words = (
        f"{_DOING[result.direction]} {say(display, result.mass, Kind.MASS)}, which weighs "
        f"{say(display, result.load, Kind.FORCE)}. The rope turns {turn} {at_edge} and carries "
        f"{_band(shown.above, display)} above it. {system}{pulls} The hand's pull all three ways: "
        f"raise {hand['raise']}, hold {hand['hold']}, lower {hand['lower']}; without friction "
        f"{say(display, result.without_friction, Kind.FORCE)}. Raising takes "
        f"{say(display, result.reversal, Kind.RATIO)} times the pull of lowering."
    )
    if result.edge == PULLEY:
        words += (
            " At the edge the rope turns less than half round: what the pulley takes there lies "
            "between two models, so even a moving rope has a range."
        )
    return words


def table(result: ThreeTensions, display: Display) -> Table:
    """Every part in all three directions."""
    order = tuple(_NAMES)
    ways = [result.ways[way] for way in order]

    def row(words: str, bands: Sequence[Band]) -> tuple[str, ...]:
        return (words, *(_band(b, display) for b in bands))

    rows = [("", *_NAMES.values())]
    rows.append(row("above the edge", [w.above for w in ways]))
    for index, strand in enumerate(result.system.strands):
        if strand is not result.system.hand_strand:
            rows.append(row(strand.name, [w.strands[index] for w in ways]))
    rows.append(row("the hand's pull", [w.hand for w in ways]))
    worth = [Band(result.load / w.hand.high, result.load / w.hand.low) for w in ways]
    rows.append(("load over hand's pull", *(_ratio(b, display) for b in worth)))
    return tuple(rows)


def _ratio(band: Band, display: Display) -> str:
    low, high = (say(display, v, Kind.RATIO) for v in (band.low, band.high))
    return low if low == high else f"{low} to {high}"


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 560
_THICKEST = 15.0  # points, the largest tension of all
_ROPE = HAUL.color
_RIM = "#a9c6e8"
_PIECES = 12


class _Thick:
    """A piece of rope as thick as its tension: a core for the least, a rim for the most."""

    def __init__(self, canvas: Canvas, axes: Axes) -> None:
        self._rim = Rope(canvas, axes, Stroke(_RIM, 1.0), 3.6)
        self._core = Rope(canvas, axes, Stroke(_ROPE, 1.0), 4)

    def place(self, tension: Band, per_newton: float, *points: Place) -> None:
        """Run through ``points`` with ``per_newton`` points of width for each newton."""
        core, rim = (max(v * per_newton, 0.6) for v in (tension.low, tension.high))
        self._core.restyle(Stroke(_ROPE, core))
        self._core.place(*points)
        self._rim.hide()
        if rim > core + 0.3:
            self._rim.restyle(Stroke(_RIM, rim))
            self._rim.place(*points)

    def hide(self) -> None:
        """Show nothing."""
        self._core.hide()
        self._rim.hide()


class ThreeTensionsPicture:
    """The artists of the figure."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._edge = _Edge(self.canvas)
        self._system = _SystemPanel(self.canvas)
        self._bars = _Bars(self.canvas)

    def update(self, result: ThreeTensions, look: Look) -> None:
        """Follow ``result``."""
        per_newton = _THICKEST / result.most
        self._edge.update(result, look, per_newton)
        self._system.update(result, look, per_newton)
        self._bars.update(result, look)


_RADIUS = 0.5  # m, of the edge or of the drawn pulley
_LEFT, _RIGHT = -3.1, 2.1
_LITTER_AT = -1.55
_LONGEST = 1.5  # m, the arrow of the largest tension


def _on_arc(angle: float, radius: float = _RADIUS) -> Place:
    return (radius * math.cos(angle), radius * math.sin(angle))


def _along(angle: float) -> Place:
    """The way the rope runs on, where it has turned through ``angle`` from straight up."""
    return (-math.sin(angle), math.cos(angle))


class _Edge:
    """The cliff's edge from the side: load below, rope round the rock or a pulley."""

    def __init__(self, canvas: Canvas) -> None:
        wide, tall = 424, 504
        self._axes = axes = canvas.blank(
            16, 16, wide, tall, "At the edge: the rope is as thick as its tension"
        )
        axes.set_xlim(_LEFT, _RIGHT)
        height = (_RIGHT - _LEFT) * tall / wide
        self._low = -3.1
        axes.set_ylim(self._low, self._low + height)
        self._rock = Area(canvas, axes, ROCK_FACE)
        self._person = Person(canvas, axes, 2.5)
        self._legs = Rope(canvas, axes, Stroke(INK, 2.2), 3)
        wheel = Path.circle((0.0, 0.0), 1.0)
        self._wheel = Shape(
            canvas, axes, wheel, 3.2, facecolor="white", edgecolor=INK, linewidth=1.4
        )
        self._axle = Shape(canvas, axes, wheel, 3.3, facecolor=INK)
        self._turn = Arc(canvas, axes, THIN, 5.5)
        self._rays = Rope(canvas, axes, FAINT)
        self._below, self._above = _Thick(canvas, axes), _Thick(canvas, axes)
        self._round = [_Thick(canvas, axes) for _ in range(_PIECES)]
        self._litter = Litter(canvas, axes)
        self._most = Arrow(canvas, axes, Stroke(SOFT_INK, 1.6))
        self._arrows = [Arrow(canvas, axes, WEIGHT, 7) for _ in range(3)]
        self._bar = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 8)
        self._stands: Place = (0.0, 0.0)

    def update(self, result: ThreeTensions, look: Look, per_newton: float) -> None:
        """Follow ``result``."""
        turn, above = result.turn, result.shown.above
        self._scene(result)
        leaves, way = _on_arc(turn), _along(turn)
        far = (leaves[0] + 6 * way[0], leaves[1] + 6 * way[1])
        load = Band(result.load, result.load)
        self._below.place(load, per_newton, (_RADIUS, _LITTER_AT), (_RADIUS, 0.0))
        self._above.place(above, per_newton, leaves, far)
        self._wrap(result, per_newton)
        self._litter.place(_RADIUS, _LITTER_AT)
        lines: list[list[Place]] = [
            [(_RADIUS, _LITTER_AT), (_RADIUS, 0.0)],
            [_on_arc(a) for a in np.linspace(0.0, turn, 9)],
            [leaves, far],
        ]
        labels: list[Label] = []
        if look.numbers:
            labels += self._turned(result, look.display, leaves)
            if not look.forces:
                labels += self._tensions(result, look.display, leaves, way)
        else:
            self._turn.hide()
            self._rays.hide()
            labels.append(Label("to the pulley system", _ahead(leaves, way, 1.4), INK, (0, 1)))
        labels += self._forces(result, look, leaves, way, lines)
        litter = (_RADIUS - 0.35, _LITTER_AT - 1.3, _RADIUS + 0.35, _LITTER_AT)
        x, z = self._stands
        self._labels.write(labels, lines, [litter, (x - 0.3, z, x + 0.3, z + 1.75)])

    def _scene(self, result: ThreeTensions) -> None:
        slope = _along(max(result.turn, math.pi / 2))
        if result.edge == BARE:
            inner = _RADIUS - 0.06
            corner = [
                _on_arc(a, inner) for a in np.linspace(0.0, max(result.turn, math.pi / 2), 24)
            ]
            for part in (self._legs, self._wheel, self._axle):
                part.hide()
        else:
            corner = [(_RADIUS - 0.3, -1.0)]
            self._wheel.place(0.0, 0.0, size=_RADIUS - 0.07)
            self._axle.place(0.0, 0.0, size=0.09)
            foot = _ahead(corner[0], slope, 1.1)
            self._legs.place(foot, (0.0, 0.0), (corner[0][0] - 0.05, corner[0][1]))
        last = corner[-1]
        face = corner[0][0] - (0.5 if result.edge == BARE else 0.1)
        self._rock.place(
            (face, -9.0), (face, -1.15), *corner, _ahead(last, slope, 9.0), (-9.0, -12.0)
        )
        self._stands = _ahead(last, slope, 2.0 + last[0])
        self._person.place(*self._stands)

    def _wrap(self, result: ThreeTensions, per_newton: float) -> None:
        """The rope round the edge: every bit of turn changes its tension by the same factor."""
        above, load, turn = result.shown.above, result.load, result.turn
        for index, piece in enumerate(self._round):
            if turn == 0.0:
                piece.hide()
                continue
            share = (index + 0.5) / _PIECES
            tension = Band(*(load * (v / load) ** share for v in (above.low, above.high)))
            ends = np.linspace(index, index + 1, 3) / _PIECES * turn
            piece.place(tension, per_newton, *(_on_arc(a) for a in ends))

    def _turned(self, result: ThreeTensions, display: Display, leaves: Place) -> list[Label]:
        """The angle through which the rope turns."""
        self._turn.hide()
        self._rays.hide()
        if result.turn == 0.0:
            words = "no turn: the rope runs free of the edge"
            return [Label(words, (_RADIUS, 0.0), INK, (-0.4, -1))]
        self._rays.place((_RADIUS, 0.0), (0.0, 0.0), leaves)
        self._turn.sweep((0.0, 0.0), 0.24, 0.0, result.turn)
        angle = say(display, result.turn, Kind.ANGLE)
        return [Label(f"turn {angle}", (-0.05, -0.1), INK, (-0.4, -1))]

    @staticmethod
    def _tensions(
        result: ThreeTensions, display: Display, leaves: Place, way: Place
    ) -> list[Label]:
        above = _band(result.shown.above, display)
        load = say(display, result.load, Kind.FORCE)
        out, right = (way[1], -way[0]), (1.0, 0.0)
        beside = _ahead(leaves, out, 0.13)  # half the thickest rope
        return [
            Label(f"above the edge\n{above}", _ahead(beside, way, 0.9), _ROPE, out, True),
            Label(f"load's side\n{load}", (_RADIUS + 0.13, _LITTER_AT + 0.5), _ROPE, right, True),
        ]

    def _forces(
        self,
        result: ThreeTensions,
        look: Look,
        leaves: Place,
        way: Place,
        lines: list[list[Place]],
    ) -> list[Label]:
        """The free body of the rope on the edge: both pulls, and what the edge adds."""
        for arrow in (self._most, *self._arrows):
            arrow.hide()
        self._bar.hide()
        if not (look.forces and look.numbers):
            return []
        above, turn, per_metre = result.shown.above, result.turn, result.most / _LONGEST
        aside = 0.34
        down = (_RADIUS + aside, -0.1)
        start = (leaves[0] + aside * way[1], leaves[1] - aside * way[0])
        load_tip = (down[0], down[1] - result.load / per_metre)
        least, most = (_ahead(start, way, v / per_metre) for v in (above.low, above.high))
        self._arrows[0].restyle(WEIGHT)
        self._arrows[0].place(down, load_tip)
        self._arrows[1].restyle(Stroke(_ROPE, 2.6))
        self._arrows[1].place(start, least)
        load = say(look.display, result.load, Kind.FORCE)
        team = _band(above, look.display)
        labels = [
            Label(f"load pulls\n{load}", between(down, load_tip), WEIGHT.color, (1, 0.2), True),
            Label(f"team pulls\n{team}", between(start, least), _ROPE, (way[1], -way[0]), True),
        ]
        lines += [[down, load_tip], [start, most]]
        if above.high > 1.01 * above.low:
            self._most.place(least, most)
        elif turn > 0.0:
            pull = np.array([0.0, -result.load]) + above.low * np.array(way)
            begin = np.array(_on_arc(turn / 2, _RADIUS + 0.14))
            tip = begin - pull / per_metre
            self._arrows[2].restyle(PUSH)
            self._arrows[2].place(tuple(begin), tuple(tip))
            lines.append([tuple(begin), tuple(tip)])
            name = "rock on rope" if result.edge == BARE else "pulley on rope"
            labels.append(Label(name, tuple(tip), PUSH.color, (1, 1), True))
        amount, words = neat_force(per_metre * 1.3, look.display)
        self._bar.place(_LEFT + 0.2, self._low + 0.15, amount / per_metre, 0.08, words)
        return labels


def _ahead(start: Place, way: Place, by: float) -> Place:
    return (start[0] + by * way[0], start[1] + by * way[1])


class _SystemPanel:
    """The pulley system, strands spread out; across the ropes not to scale."""

    _WIDE, _TALL, _TOP = 472, 262, 204
    _ROOM, _WIDEST, _STRAIGHT = 148.0, 52.0, 60.0

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(
            454, 258, self._WIDE, self._TALL, "In the pulley system (edge at the right)"
        )
        axes.set_xlim(0, self._WIDE)
        axes.set_ylim(0, self._TALL)
        self._ground = Area(canvas, axes, GROUND_FACE, zorder=1)
        self._posts = [Area(canvas, axes, "#b9ad97", zorder=2) for _ in range(3)]
        self._plates = [Rope(canvas, axes, Stroke(INK, 3.0), 3.0) for _ in range(6)]
        wheel = Path.circle((0.0, 0.0), 1.0)
        line = {"edgecolor": INK, "linewidth": 1.2}
        self._wheels = [
            Shape(canvas, axes, wheel, 3.2, facecolor="white", **line) for _ in range(8)
        ]
        self._strands = [_Thick(canvas, axes) for _ in range(10)]
        self._turns = [[_Thick(canvas, axes) for _ in range(2)] for _ in range(8)]
        grip = Path([(-1, -0.6), (1, -0.6), (1, 0.6), (-1, 0.6), (-1, -0.6)], closed=True)
        self._grips = [
            Shape(canvas, axes, grip, 4.6, facecolor=LITTER_FACE, **line) for _ in range(4)
        ]
        self._hand = Arrow(canvas, axes, Stroke(_ROPE, 2.6), 5)
        self._labels = Labels(canvas, axes, 16, 9)
        self._lane = self._WIDEST

    def update(self, result: ThreeTensions, look: Look, per_newton: float) -> None:
        """Follow ``result``."""
        system, layout = result.system, _layout(result.name)
        x, hand = self._across(system), system.hand_strand
        self._lane = min(self._WIDEST, self._ROOM / max(layout.lowest, 1.0))
        z = {s.index: self._z(layout.strands[s.index]) for s in system.strands}
        for index, rope in enumerate(self._strands):
            if index >= len(system.strands):
                rope.hide()
                continue
            strand = system.strands[index]
            ends = [(x[e.body], z[index]) for e in (strand.start, strand.end)]
            rope.place(result.shown.strands[index], per_newton, *ends)
        self._draw_turns(result, layout, x, per_newton)
        self._draw_bodies(system, layout, x)
        place = (x[system.hand.name], z[hand.index])
        way = -float(system.pull(hand, system.hand.name))
        self._hand.place(place, (place[0] + 34 * way, place[1]))
        labels = self._names(system, layout, x)
        if look.numbers:
            labels = [*self._pulls(result, look.display, x, z, per_newton), *labels]
        else:
            labels.append(Label("hand", place, _ROPE, (way, -1)))
        lines = [
            [(x[s.start.body], z[s.index]), (x[s.end.body], z[s.index])] for s in system.strands
        ]
        self._labels.write(labels, lines, self._boxes(system, layout, x))

    def _z(self, lane: float) -> float:
        return self._TOP - self._lane * lane

    def _across(self, system: System) -> dict[str, float]:
        """Bodies along the axes (pixels); the load's strand leaves at the right."""
        stations = {b.name: b.station for b in system.bodies}
        low, high = min(stations.values()), max(stations.values())
        left, right = 62.0, self._WIDE + 6.0
        if system.pull(system.hand_strand, system.hand.name) < 0:
            left, right = 40.0, self._WIDE + 6.0
        scale = (right - left) / (high - low)
        return {name: left + scale * (s - low) for name, s in stations.items()}

    def _draw_turns(
        self, result: ThreeTensions, layout: Layout, x: Mapping[str, float], per_newton: float
    ) -> None:
        system, radius = result.system, self._lane / 2
        for index, (wheel, halves) in enumerate(zip(self._wheels, self._turns, strict=True)):
            if index >= len(system.sheaves):
                wheel.hide()
                for half in halves:
                    half.hide()
                continue
            sheave = system.sheaves[index]
            assert sheave.before is not None and sheave.after is not None
            centre = (x[sheave.visit.body], self._z(layout.sheaves[index]))
            wheel.place(*centre, size=0.8 * radius)
            side = -1.0 if system.pull(sheave.before, sheave.visit.body) > 0 else 1.0
            for half, strand, (a, b) in zip(
                halves, (sheave.before, sheave.after), ((90, 0), (0, -90)), strict=True
            ):
                turns = np.radians(np.linspace(a, b, 7))
                half.place(
                    result.shown.strands[strand.index],
                    per_newton,
                    *(
                        (centre[0] + side * radius * math.cos(t), centre[1] + radius * math.sin(t))
                        for t in turns
                    ),
                )

    def _draw_bodies(self, system: System, layout: Layout, x: Mapping[str, float]) -> None:
        ground = self._z(layout.lowest) - (30 if system.sheaves else self._STRAIGHT)
        self._ground.place((-9, ground), (999, ground), (999, -99), (-9, -99))
        anchors = [b.name for b in system.bodies if b.role is Role.ANCHOR]
        for index, post in enumerate(self._posts):
            if index >= len(anchors):
                post.hide()
                continue
            at, top = x[anchors[index]], self._z(layout.bodies[anchors[index]][0]) + 16
            post.place((at - 5, ground), (at - 5, top), (at + 5, top), (at + 5, ground))
        parts = [b.name for b in system.bodies if b.role in (Role.GRAB, Role.PULLEY)]
        for index, plate in enumerate(self._plates):
            plate.hide()
            if index < len(parts):
                top, bottom = layout.bodies[parts[index]]
                plate.place((x[parts[index]], self._z(top)), (x[parts[index]], self._z(bottom)))
        grips = [a for a in system.attachments if a.visit.how is How.GRIPPED]
        for index, mark in enumerate(self._grips):
            mark.hide()
            if index < len(grips):
                before = grips[index].before
                assert before is not None
                lane = layout.strands[before.index]
                mark.place(x[grips[index].visit.body], self._z(lane), size=9.0)

    def _names(self, system: System, layout: Layout, x: Mapping[str, float]) -> list[Label]:
        labels = []
        for body in system.bodies:
            if body.role in (Role.LOAD, Role.HAND):
                continue
            top, _ = layout.bodies[body.name]
            at = (x[body.name], self._z(top) + 0.5 * self._lane)
            labels.append(Label(body.name, at, SOFT_INK, (0, 1), optional=True))
        return labels

    def _pulls(
        self,
        result: ThreeTensions,
        display: Display,
        x: Mapping[str, float],
        z: Mapping[int, float],
        per_newton: float,
    ) -> list[Label]:
        """The tension of every strand; the hand's first, because it matters most."""
        system, shown = result.system, result.shown
        hand, wide = system.hand_strand, per_newton * DOTS_PER_INCH / 72
        labels = [
            Label(
                f"hand pulls {_band(shown.hand, display)}",
                (_middle(x, hand), z[hand.index] - 0.5 * wide * shown.hand.high),
                _ROPE,
                (0, -1),
                True,
            )
        ]
        for strand in system.strands:
            if strand is hand:
                continue
            words = _band(shown.strands[strand.index], display)
            half = 0.5 * wide * shown.strands[strand.index].high
            at = (_middle(x, strand), z[strand.index] + half)
            labels.append(Label(words, at, _ROPE, (0, 1), optional=True))
        return labels

    def _boxes(self, system: System, layout: Layout, x: Mapping[str, float]) -> list[Box]:
        radius = self._lane / 2 + 3
        boxes: list[Box] = []
        for sheave, lane in zip(system.sheaves, layout.sheaves, strict=True):
            at, z = x[sheave.visit.body], self._z(lane)
            boxes.append((at - radius, z - radius, at + radius, z + radius))
        return boxes


def _middle(x: Mapping[str, float], strand: Strand) -> float:
    return 0.5 * (x[strand.start.body] + x[strand.end.body])


class _Bars:
    """The hand's pull in all three directions, side by side."""

    _WIDE, _TALL = 472, 196
    _LEFT, _RIGHT = 66.0, 340.0

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(
            454, 16, self._WIDE, self._TALL, "The hand's pull, all three ways"
        )
        axes.set_xlim(0, self._WIDE)
        axes.set_ylim(0, self._TALL)
        self._bars = [Area(canvas, axes, _ROPE, "none", 3) for _ in range(3)]
        self._pale = [Area(canvas, axes, _RIM, "none", 2) for _ in range(3)]
        self._marks = [Rope(canvas, axes, Stroke(INK, 1.6), 4) for _ in range(3)]
        self._zero = Rope(canvas, axes, THIN, 4)
        self._ideal = Rope(canvas, axes, LIMIT, 5)
        self._labels = Labels(canvas, axes, 8, 9.5)

    def update(self, result: ThreeTensions, look: Look) -> None:
        """Follow ``result``."""
        most = max(way.hand.high for way in result.ways.values())
        scale = (self._RIGHT - self._LEFT) / most
        self._zero.place((self._LEFT, 28), (self._LEFT, self._TALL - 12))
        labels, boxes = [], []
        for row, (direction, name) in enumerate(_NAMES.items()):
            hand, z = result.ways[direction].hand, self._TALL - 42 - 46 * row
            here = direction is result.direction
            words = f"▸ {name}" if here else name
            labels.append(Label(words, (self._LEFT - 3, z), INK, (-1, 0), here))
            for part in (self._bars[row], self._pale[row], self._marks[row]):
                part.hide()
            if not look.numbers:
                continue
            low, high = (self._LEFT + scale * v for v in (hand.low, hand.high))
            self._bars[row].place(*_block(self._LEFT, low, z, 11))
            self._pale[row].place(*_block(low, high, z, 11))
            boxes.append((self._LEFT, z - 11, high, z + 11))
            if here:
                self._marks[row].place(*_block(self._LEFT, high, z, 14), (self._LEFT, z - 14))
            text = _band(hand, look.display)
            labels.append(Label(text, (high + 3, z), _ROPE, (1, 0), here))
        self._ideal.hide()
        if look.numbers:
            ideal = self._LEFT + scale * result.without_friction
            self._ideal.place((ideal, 26), (ideal, self._TALL - 12))
            text = f"without friction {say(look.display, result.without_friction, Kind.FORCE)}"
            labels.append(Label(text, (ideal, 26), LIMIT.color, (0, -1)))
        self._labels.write(labels, [], boxes)


def _block(left: float, right: float, z: float, half: float) -> tuple[Place, ...]:
    return ((left, z - half), (right, z - half), (right, z + half), (left, z + half))


# --- the figure -------------------------------------------------------------------------------

SYSTEMS = (
    ("1:1", "1:1, straight pull"),
    ("2:1", "2:1"),
    ("3:1", "3:1"),
    ("4:1", "4:1, simple"),
    ("5:1", "5:1, simple"),
    ("6:1", "6:1, a 2:1 on a 3:1"),
    ("9:1", "9:1, a 3:1 on a 3:1"),
    ("complex 5:1", "5:1, complex"),
)
CONTROLS = (
    Choice(
        "direction",
        "The team is to",
        tuple((way.value, name) for way, name in _NAMES.items()),
        Direction.LOWERING.value,
    ),
    Choice("edge", "At the edge", ((BARE, "bare rock"), (PULLEY, "a pulley")), BARE),
    Choice("system", "Pulley system", SYSTEMS, "3:1"),
    Control("friction", "Friction, rope on rock", Kind.RATIO, 0.05, 0.6, 0.05, 0.3),
    Control(
        "turn",
        "Turn at the edge",
        Kind.ANGLE,
        0.0,
        math.radians(120),
        math.radians(5),
        math.radians(90),
    ),
    Control("efficiency", "Efficiency of every pulley", Kind.RATIO, 0.5, 0.98, 0.02, 0.9),
    Control("mass", "Mass that hangs", Kind.MASS, 110, 290, 5, 200),
)


def _outcome(display: Display) -> Outcome:
    """Above the bare edge at the start of the figure: raising over lowering."""
    start = {control.key: control.default for control in CONTROLS}
    ways = compute(start).ways
    up, down = ways[Direction.HAULING].above.high, ways[Direction.LOWERING].above.low
    factor = up / down
    return Outcome(
        right=0 if factor < 1.1 else 1 if factor < 2.0 else 2,
        sentence=(
            f"Above the edge the rope carries {say(display, down, Kind.FORCE)} while lowering and "
            f"{say(display, up, Kind.FORCE)} while raising: "
            f"{say(display, factor, Kind.RATIO)} times as much, with the same load."
        ),
    )


def _idle(values: Values) -> dict[str, str]:
    """What the chosen edge and system do without."""
    idle = {}
    if values["edge"] == PULLEY:
        idle["friction"] = "A pulley turns with the rope: choose “bare rock” above."
    elif values["system"] == "1:1":
        idle["efficiency"] = "There is no pulley here: choose a system above."
    return idle


THREE_TENSIONS = Figure(
    key="three-tensions",
    title="Same load, three tensions",
    alternative=(
        "A rope over a cliff's edge and through a pulley system, drawn as thick as its tension, "
        "and the hand's pull while raising, holding and lowering"
    ),
    prediction=Prediction(
        question=(
            "the team lowers a litter over a bare edge at which the rope turns a right angle. Then "
            "it is told to raise. What happens to the tension above the edge?"
        ),
        choices=(
            "it stays: the load is the same",
            "it grows by about half",
            "it more than doubles",
        ),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=ThreeTensionsPicture,
    summary=summary,
    table=table,
    cautions=(
        "Friction and efficiency are illustrative values for exercises. They change with rope, "
        "rock, pulley, load, water and dirt: measure your own.",
        "A sharp edge cuts: that is a matter of protection, not of friction.",
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    forces_label="Show the forces on the rope at the edge",
    reading=(
        "Thick rope, high tension. Where friction leaves a choice, the dark core is the least "
        "tension and the pale rim the most.",
    ),
    idle=_idle,
)
