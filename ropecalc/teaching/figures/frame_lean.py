"""Which way the frame under a high directional wants to fall, station by station of a raise.

A side view of the frame on the lip: the strands that run over its head, what they add up to, and
where the line of action of that pull meets the ground. The litter follows a planned path that
keeps haul line and litter clear of an outcrop.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.mechanics.frames import (
    FRAME,
    Footing,
    Standing,
    footing,
    guy_behind,
    guy_in_front,
    leg_compression,
)
from ropecalc.mechanics.friction import Direction
from ropecalc.mechanics.holding import Hold, Method, Point, Rig, hold
from ropecalc.mechanics.redirects import HeadLine, HeadLoad, head_load
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import INK, Canvas
from ropecalc.teaching.drawing import (
    BELAY,
    FAINT,
    HAUL,
    LIMIT,
    ROCK_FACE,
    THIN,
    TRACK,
    Arc,
    Area,
    Arrow,
    Dot,
    Label,
    Labels,
    Litter,
    Mark,
    Notice,
    Person,
    Place,
    Region,
    Rope,
    ScaleBar,
    Stroke,
    along,
)
from ropecalc.teaching.figures.free_body import neat_force
from ropecalc.teaching.figures.sensitivity import too_sensitive, too_sensitive_words
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import (
    LOCKED,
    Choice,
    Figure,
    Look,
    Outcome,
    Prediction,
    Table,
    Values,
)
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

LIP = 30.0
"""Height of the lip on which the front feet stand, at the wall's plumb line (m)."""
HUB = Point(40.0, 0.5)
WALL: tuple[Place, ...] = ((0, 0), (0, 23.5), (1.5, 25), (0, 26.2), (0, LIP))
PATH: tuple[Place, ...] = ((7.4, 1), (2.5, 22.4), (2.5, 27.3), (1.0, 29.5), (0.8, 30))
"""Places (out, up) of the litter's attachment point, straight in between."""
MASS = 200.0
"""Everything that hangs (kg): the example of the lesson."""
STATIONS = (2.0, 10.0, 20.0, 25.0, 27.0, 29.0)
LEG_HALF_SPREAD = math.radians(20)
"""Of a two-legged frame, seen from the front; an assumption of the figure."""


def planned(height: float) -> float:
    """How far out the litter is planned to be at ``height`` (m)."""
    return float(np.interp(height, [z for _, z in PATH], [x for x, _ in PATH]))


@dataclass(frozen=True)
class FrameAt:
    """The frame with the litter at one place.

    ``load`` is what the counted lines do to the head and ``footings`` what follows for each
    extreme of it; both are empty where the litter cannot be held or only too shakily.
    """

    place: Point
    held: Hold
    sensitive: bool
    load: HeadLoad | None
    footings: tuple[Footing, ...]

    @property
    def worst(self) -> Footing | None:
        """The extreme nearest to falling, or furthest past it."""
        return min(self.footings, key=lambda f: f.margin) if self.footings else None


@dataclass(frozen=True)
class FrameLean:
    """One setting worked out.

    ``guy`` is where a guy is rigged ("none", "front", "back"); ``guy_tension`` what it has to
    hold (N; None where it has nothing to hold or cannot). ``compression`` of each leg is known
    for a two-legged frame that a guy holds. ``largest`` is the pull of haul and track lines
    together, or that of the counted lines if it is larger: one scale serves several choices.
    """

    values: Mapping[str, Any]
    head: Point
    at: FrameAt
    guy: str
    guy_tension: float | None
    compression: float | None
    largest: float


def compute(values: Values) -> FrameLean:
    """Work out one setting of the controls (SI)."""
    at = frame_at(values, values["height"])
    tension = _guy_tension(values, at)
    loads = [at.load]
    if values["lines"] == "haul" and at.load is not None:
        loads.append(_pulled({**values, "lines": "track"}, at.held))
    return FrameLean(
        values=dict(values),
        head=_head(values),
        at=at,
        guy=values["guy"],
        guy_tension=tension,
        compression=_compression(values, at, tension),
        largest=max((one.pull.high for one in loads if one is not None), default=1.0),
    )


def _head(values: Values) -> Point:
    return Point(values["reach"], LIP + values["head_height"])


def frame_at(values: Values, height: float) -> FrameAt:
    """The frame of these settings with the litter at ``height`` (m) of its path."""
    head, place = _head(values), Point(planned(height) + values["beyond"], height)
    rig, load = Rig(head, head, HUB), weight(mass=MASS)
    held = hold(Method.TRACK, rig, load, place.x, place.z)
    if not held.reach.possible:
        return FrameAt(place, held, False, None, ())
    if too_sensitive(Method.TRACK, rig, load, place.x, place.z):
        return FrameAt(place, held, True, None, ())
    pulled = _pulled(values, held)
    footings = tuple(
        footing(
            inward_pull=inward,
            downward_pull=down,
            head_height=values["head_height"],
            head_reach=values["reach"],
            back_foot=values["back_foot"],
        )
        for inward, down in pulled.corners
    )
    return FrameAt(place, held, False, pulled, footings)


def _pulled(values: Values, held: Hold) -> HeadLoad:
    return head_load(_lines(values, held), efficiency=values["efficiency"])


def _lines(values: Values, held: Hold) -> tuple[HeadLine, ...]:
    """The counted lines; haul and belay lie along the haul leg, as the upper track legs do.

    Track lines are made fast behind the head and stand still there; a belay that catches is
    drawn towards the litter, whichever way the haul line moved.
    """
    front, back, way = held.haul_elevation, values["back"], values["direction"]
    lines = [HeadLine("haul line", way, held.haul_tension, front, back)]
    if values["lines"] != "haul":
        lines.append(HeadLine("track lines", Direction.HOLDING, held.line_tension, front, back))
    if values["lines"] == "belay":
        lines.append(HeadLine("belay", Direction.LOWERING, values["belay"], front, back))
    return tuple(lines)


def _guy_tension(values: Values, at: FrameAt) -> float | None:
    """What the guy holds in the worst case; None where it has nothing to hold or cannot."""
    worst = at.worst
    if worst is None or at.load is None or worst.standing in (Standing.STANDS, Standing.LIMIT):
        return None
    inward, down = at.load.corners[at.footings.index(worst)]
    back = worst.standing is Standing.TIPS_BACK
    if values["guy"] != ("front" if back else "back"):
        return None
    pivot = values["back_foot"] if back else 0.0  # feet over which the frame would fall
    given = {
        "inward_pull": inward,
        "downward_pull": down,
        "head_height": values["head_height"],
        "head_reach": values["reach"] + pivot,
        "guy_depression": values["guy_angle"],
    }
    needed = guy_in_front if back else guy_behind
    return float(needed(**given)) if bool(needed.valid(**given)) else None


def _compression(values: Values, at: FrameAt, guy: float | None) -> float | None:
    if guy is None or at.worst is None or at.load is None or values["back_foot"] > 0:
        return None
    _, down = at.load.corners[at.footings.index(at.worst)]
    return float(
        leg_compression(
            downward_pull=down,
            guy_tension=guy,
            guy_depression=values["guy_angle"],
            head_height=values["head_height"],
            head_reach=values["reach"],
            leg_half_spread=LEG_HALF_SPREAD,
        )
    )


# --- in words ---------------------------------------------------------------------------------

_COUNTED = {
    "haul": "the haul line alone",
    "track": "haul line and track lines",
    "belay": "haul line, track lines and a belay that catches with {belay}",
}
_VERDICT = {
    Standing.STANDS: "stands",
    Standing.LIMIT: "is at its limit",
    Standing.TIPS_BACK: "falls back",
    Standing.TIPS_OUT: "falls out",
}


def band_words(low: float, high: float, kind: Kind, display: Display) -> str:
    """One number, or "from ... to ..." where friction leaves a band."""
    one, other = say(display, low, kind), say(display, high, kind)
    return one if one == other else f"{one} to {other}"


def lean_words(load: HeadLoad, display: Display) -> str:
    """The lean with its side."""
    low, high = load.lean.low, load.lean.high
    if low >= 0:
        return f"{band_words(low, high, Kind.ANGLE, display)} inward"
    if high <= 0:
        return f"{band_words(-high, -low, Kind.ANGLE, display)} outward"
    out, inward = say(display, -low, Kind.ANGLE), say(display, high, Kind.ANGLE)
    return f"between {out} outward and {inward} inward"


def landing_words(place: float, display: Display) -> str:
    """Where the line of action meets the ground."""
    size = say(display, abs(place), Kind.LENGTH)
    return f"{size} behind the front feet" if place >= 0 else f"{size} in front of the front feet"


def summary(result: FrameLean, display: Display) -> str:
    """The setting, the pull, where it lands, and what holds the frame."""
    at, values = result.at, result.values
    opening = (
        f"Litter {say(display, at.place.x, Kind.LENGTH)} out at "
        f"{say(display, at.place.z, Kind.LENGTH)}, {say(display, MASS, Kind.MASS)}; back strands "
        f"{say(display, values['back'], Kind.ANGLE)} below the horizontal; head "
        f"{say(display, values['head_height'], Kind.LENGTH)} up and "
        f"{say(display, values['reach'], Kind.LENGTH)} out past the front feet."
    )
    worst, load = at.worst, at.load
    if worst is None or load is None:
        reason = too_sensitive_words(display) if at.sensitive else at.held.reach.sentence
        return f"{opening} {reason}"
    pull = band_words(load.pull.low, load.pull.high, Kind.FORCE, display)
    counted = _COUNTED[values["lines"]].format(belay=say(display, values["belay"], Kind.FORCE))
    feet = (
        f"back feet {say(display, values['back_foot'], Kind.LENGTH)} behind the front feet"
        if values["back_foot"] > 0
        else "a frame with two legs only"
    )
    return (
        f"{opening} Counting {counted}, {values['direction']}, the head is "
        f"pulled with {pull}, leaning {lean_words(load, display)}. With {feet}, the line of action "
        f"lands {landing_words(worst.landing, display)}. {_footing_words(result, worst, display)}"
    )


def _footing_words(result: FrameLean, worst: Footing, display: Display) -> str:
    if result.guy == "none":
        return worst.standing.sentence
    side = "out" if result.guy == "front" else "in"
    angle = say(display, result.values["guy_angle"], Kind.ANGLE)
    guy = f"The guy, led {side} at {angle} below the horizontal,"
    if worst.standing is Standing.LIMIT:
        return f"{worst.standing.sentence} {guy} takes hold when it moves."
    if worst.standing is Standing.STANDS:
        return f"{worst.standing.sentence} {guy} only steadies it."
    if result.guy_tension is None:
        return f"{worst.standing.sentence} {guy} cannot hold it."
    words = (
        f"Without the guy the frame {_VERDICT[worst.standing]}. {guy} has to hold "
        f"{say(display, result.guy_tension, Kind.FORCE)}."
    )
    if result.compression is not None:
        words += (
            f" Each of the two legs, spread {say(display, LEG_HALF_SPREAD, Kind.ANGLE)} to either "
            f"side, is pressed with {say(display, result.compression, Kind.FORCE)}."
        )
    return words


def table(result: FrameLean, display: Display) -> Table:
    """How the pull sweeps through the raise."""
    rows: list[tuple[str, ...]] = [("litter at", "pull on the head", "lean", "lands", "frame")]
    for at in (frame_at(result.values, height) for height in STATIONS):
        height = say(display, at.place.z, Kind.LENGTH)
        if at.load is None or at.worst is None:
            rows.append((height, "no number", "", "", ""))
            continue
        pull = band_words(at.load.pull.low, at.load.pull.high, Kind.FORCE, display)
        landing = landing_words(at.worst.landing, display)
        verdict = _VERDICT[at.worst.standing]
        rows.append((height, pull, lean_words(at.load, display), landing, verdict))
    return tuple(rows)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 520
_LEFT, _RIGHT, _LOW = -4.9, 3.3, -1.75
_WIDE, _TALL = 640, 452
_RESULTANT = Stroke("#7a2e8e", 3.4)
_GUY = Stroke(INK, 1.6, (0, (6, 2)))
_FOOTPRINT = "#e3b04b"
_LONGEST = 1.9  # m, the arrow of the largest pull
_APART = 0.13  # m between ropes that lie on each other
_ASIDE = (0.0, 1.0, -1.0)
_METRE = (_LEFT + 2.2, _LOW + 0.2)


class FrameLeanPicture:
    """The frame close up, and the whole raise beside it."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._near = _OnTheLip(self.canvas)
        self._whole = _Raise(self.canvas)

    def update(self, result: FrameLean, look: Look) -> None:
        """Follow ``result``."""
        self._near.update(result, look)
        self._whole.update(result)


class _OnTheLip:
    """Heights are counted from the lip here."""

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(
            16, 40, _WIDE, _TALL, "The frame on the lip, from the side"
        )
        axes.set_xlim(_LEFT, _RIGHT)
        axes.set_ylim(_LOW, _LOW + _TALL / _WIDE * (_RIGHT - _LEFT))
        axes.fill([-9, 0, 0, -9], [0, 0, -9, -9], fc=ROCK_FACE, ec="#6f6656", lw=1.2)
        self._footprint = Area(canvas, axes, _FOOTPRINT, zorder=2.5)
        self._legs = Rope(canvas, axes, Stroke(INK, 3.0), 3)
        self._wheel = Mark(canvas, axes, "o", "white", 9, 7.5)
        self._ropes = [Rope(canvas, axes, HAUL) for _ in range(3)]
        self._litter = Litter(canvas, axes)
        self._team = Person(canvas, axes)
        self._guy = Rope(canvas, axes, _GUY, 3.5)
        self._plumb = Rope(canvas, axes, FAINT, 3)
        self._level = Rope(canvas, axes, FAINT, 3)
        self._fan = Region(canvas, axes, "#d9c2e3", 2.8)
        self._action = Rope(canvas, axes, LIMIT, 5)
        self._landing = Mark(canvas, axes, "X", "#7a2e8e", 10, 8)
        self._arcs = [Arc(canvas, axes, THIN, 5.5) for _ in range(3)]
        self._pull = Arrow(canvas, axes, _RESULTANT, 7)
        self._strands = [Arrow(canvas, axes, HAUL, 6.5) for _ in range(7)]
        self._bar = ScaleBar(canvas, axes)
        self._metre = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 14, 9.5)
        self._notice = Notice(canvas, axes, 0.45, 0.84, 46)

    def update(self, result: FrameLean, look: Look) -> None:
        """Follow ``result``."""
        values, at = result.values, result.at
        head = (values["reach"], values["head_height"])
        self._frame(head, values["back_foot"])
        unit, words = _unit(look.display)
        self._metre.place(*_METRE, unit, 0.1, words)
        labels, lines = self._run_ropes(result, head)
        self._clear()
        if at.load is None or at.worst is None:
            reason = too_sensitive_words(look.display) if at.sensitive else at.held.reach.sentence
            self._notice.say(LOCKED if not look.numbers else str(reason))
        else:
            self._notice.say("" if look.numbers else LOCKED)
            if look.numbers:
                labels = [*self._line_of_action(result, look, head, lines), *labels]
                labels = [*self._angles(result, look.display, head), *labels]
                if look.forces:
                    self._draw_strands(result, head, lines)
        depth = values["back_foot"]
        labels.append(Label("footprint", (-depth, -0.1), INK, (-1, -0.5)))
        boxes = [(-4.55, 0.0, -3.85, 1.75)]
        self._labels.write(labels, lines, boxes)

    def _frame(self, head: Place, depth: float) -> None:
        self._footprint.place((-depth - 0.07, -0.1), (0.0, -0.1), (0.0, 0.0), (-depth - 0.07, 0.0))
        self._legs.place(*([(-depth, 0.0)] if depth > 0 else []), head, (-0.05, 0.0))
        self._wheel.place(*head)
        self._team.place(-4.2, 0.0)

    def _run_ropes(self, result: FrameLean, head: Place) -> tuple[list[Label], list[list[Place]]]:
        """Ropes over the head, guy and litter; gives their labels and the lines to keep clear."""
        values, at = result.values, result.at
        for rope in (*self._ropes, self._guy):
            rope.hide()
        litter = (at.place.x, at.place.z - LIP)
        self._litter.place(*litter)
        back = (-math.cos(values["back"]), -math.sin(values["back"]))
        down = math.dist(litter, head)
        front = ((litter[0] - head[0]) / down, (litter[1] - head[1]) / down)
        far = min(7.0, head[1] / -back[1])
        labels: list[Label] = []
        lines: list[list[Place]] = [[head, (-values["back_foot"], 0.0)], [head, (0.0, 0.0)]]
        for rope, (name, stroke), aside in zip(
            self._ropes, _counted(values["lines"]), _ASIDE, strict=False
        ):
            shift = aside * _APART
            top = (head[0], head[1] + shift)
            before = along(litter, (-front[1], front[0]), shift)
            after = along((head[0] + far * back[0], head[1] + far * back[1]), (0.0, 1.0), shift)
            rope.restyle(stroke)
            rope.place(before, top, after)
            lines.append([before, top, after])
            seen = along(top, front, min(down, (top[1] - _LOW) / max(-front[1], 0.2)) * 0.72)
            labels.append(Label(name, seen, stroke.color, (1.0, 0.4 + 0.5 * aside)))
        if result.guy != "none":
            out = 1.0 if result.guy == "front" else -1.0
            way = (out * math.cos(values["guy_angle"]), -math.sin(values["guy_angle"]))
            reach = head[1] / -way[1] if out < 0 else 9.0
            end = along(head, way, reach)
            self._guy.place(head, end)
            lines.append([head, end])
            labels.append(Label("guy", along(head, way, min(reach * 0.6, 2.6)), INK, (out, 1.0)))
        return labels, lines

    def _clear(self) -> None:
        for arrow in (self._pull, *self._strands):
            arrow.hide()
        for line in (self._plumb, self._level, self._action, *self._arcs):
            line.hide()
        self._fan.hide()
        self._landing.hide()
        self._bar.hide()

    def _line_of_action(
        self, result: FrameLean, look: Look, head: Place, lines: list[list[Place]]
    ) -> list[Label]:
        at = result.at
        load, worst = at.load, at.worst
        assert load is not None and worst is not None  # only asked for then
        inward, down = load.corners[at.footings.index(worst)]
        size = math.hypot(inward, down)
        way = (-inward / size, -down / size)
        ground = along(head, way, head[1] / -way[1])
        past = along(head, way, (head[1] + 0.55) / -way[1])
        self._action.place(head, past)
        self._landing.place(ground[0], 0.0)
        per_metre = result.largest / _LONGEST
        tip = along(head, way, size / per_metre)
        self._pull.place(head, tip)
        if load.lean.width > 1e-9:
            ends = [head[0] - head[1] * math.tan(lean) for lean in (load.lean.low, load.lean.high)]
            self._fan.fill(np.array([head, (ends[0], 0.0), (ends[1], 0.0), head]))
        lines += [[head, past], [head, tip]]
        amount, words = neat_force(per_metre * 1.2, look.display)
        self._bar.place(_LEFT + 0.25, _LOW + 0.2, amount / per_metre, 0.1, words)
        low, high = load.pull.low, load.pull.high
        force = band_words(low, high, Kind.FORCE, look.display)
        place = say(look.display, abs(worst.landing), Kind.LENGTH)
        side = "behind" if worst.landing >= 0 else "in front of"
        outside = "" if worst.standing is Standing.STANDS else f": {_VERDICT[worst.standing]}"
        labels = [
            Label(f"pull {force}", (head[0], head[1] + 0.2), _RESULTANT.color, (0.0, 1.0), True),
            Label(f"lands {place} {side}\nthe front feet{outside}", (ground[0], -0.1),
                  _RESULTANT.color, (-0.5, -1.0), True),
        ]  # fmt: skip
        if result.guy_tension is not None:
            out = 1.0 if result.guy == "front" else -1.0
            angle = result.values["guy_angle"]
            guy = (out * math.cos(angle), -math.sin(angle))
            held = say(look.display, result.guy_tension, Kind.FORCE)
            labels.append(Label(f"guy holds {held}", along(head, guy, 1.5), INK, (out, 1.0), True))
        return labels

    def _angles(self, result: FrameLean, display: Display, head: Place) -> list[Label]:
        values, at = result.values, result.at
        assert at.load is not None and at.worst is not None  # only asked for then
        back, front = values["back"], at.held.haul_elevation
        inward, down = at.load.corners[at.footings.index(at.worst)]
        lean = math.atan2(inward, down)
        self._plumb.place(head, (head[0], -0.4))
        self._level.place((head[0] - 1.5, head[1]), (head[0] + 1.1, head[1]))
        turns = (
            (0.95, math.pi, math.pi + back, back),
            (0.7, -front, 0.0, front),
            (1.25, *sorted((-math.pi / 2, -math.pi / 2 - lean)), abs(lean)),
        )
        labels = []
        for arc, (radius, start, end, angle) in zip(self._arcs, turns, strict=True):
            arc.sweep(head, radius, start, end)
            middle = (start + end) / 2
            out = (math.cos(middle), math.sin(middle))
            words = say(display, angle, Kind.ANGLE)
            labels.append(Label(words, along(head, out, radius), THIN.color, out))
        return labels

    def _draw_strands(self, result: FrameLean, head: Place, lines: list[list[Place]]) -> None:
        """Every strand's pull on the head; under friction the larger of what it can be."""
        values, load = result.values, result.at.load
        assert load is not None  # only asked for then
        per_metre = result.largest / _LONGEST
        arrows = iter(self._strands)
        for line, tension, (_, stroke), aside in zip(
            load.lines, load.back_tensions, _counted(values["lines"]), _ASIDE, strict=False
        ):
            start = (head[0], head[1] + aside * _APART)
            pulls = (
                (line.front_tension, (math.cos(line.front_depression), line.front_depression)),
                (tension.high, (-math.cos(line.back_depression), line.back_depression)),
            )
            for size, (across, below) in pulls:
                arrow = next(arrows)
                arrow.restyle(stroke)
                tip = along(start, (across, -math.sin(below)), size / per_metre)
                arrow.place(start, tip)
                lines.append([start, tip])


def _counted(lines: str) -> tuple[tuple[str, Stroke], ...]:
    """The counted lines by name, with their look."""
    every = (("haul line", HAUL), ("track lines", TRACK), ("belay", BELAY))
    return every[: {"haul": 1, "track": 2, "belay": 3}[lines]]


def _unit(display: Display) -> tuple[float, str]:
    """Length (m) and words of the bar that tells the scale."""
    unit = 1.0 if display.length == "m" else display.si(3.0, Kind.LENGTH)
    return unit, display.show(unit, Kind.LENGTH, 1)


class _Raise:
    """The whole wall, the planned path, and where the litter is."""

    def __init__(self, canvas: Canvas) -> None:
        axes = canvas.blank(676, 40, 248, _TALL, "The raise")
        axes.set_xlim(-4.5, -4.5 + 248 * 36.5 / _TALL)
        axes.set_ylim(-1.5, 35.0)
        rock = [(-9, -9), (0, -9), *WALL, (-9, LIP)]
        axes.fill(*zip(*rock, strict=True), fc=ROCK_FACE, ec="#6f6656", lw=1.2)
        axes.plot([0, 99], [-0.3, -0.3], color="#6f6656", lw=1.2)
        path = [(x, z) for x, z in PATH]
        axes.plot(*zip(*path, strict=True), color=THIN.color, lw=1.0, ls=(0, (1.5, 2.5)))
        self._legs = Rope(canvas, axes, Stroke(INK, 1.6), 3)
        self._ropes = [Rope(canvas, axes, stroke) for stroke in (HAUL, TRACK, TRACK)]
        self._litter = Dot(canvas, axes)
        self._labels = Labels(canvas, axes, 4, 9)

    def update(self, result: FrameLean) -> None:
        """Follow ``result``."""
        head, place = (result.head.x, result.head.z), (result.at.place.x, result.at.place.z)
        hub = (HUB.x, HUB.z)
        self._legs.place((-result.values["back_foot"], LIP), head, (0.0, LIP))
        self._ropes[0].place(place, head)
        self._ropes[1].place(along(place, (1.0, 0.0), 0.35), along(head, (1.0, 0.0), 0.35))
        self._ropes[2].place(place, hub)
        self._litter.place(*place)
        planned_low = (planned(6.0), 6.0)
        at = 17.0  # m out, where the ground leg leaves the picture
        leaves = (at, place[1] + (hub[1] - place[1]) * (at - place[0]) / (hub[0] - place[0]))
        self._labels.write(
            [
                Label("litter", place, INK, (0.4, 1)),
                Label("planned path", planned_low, THIN.color, (1, 0)),
                Label("to the hub", along(leaves, (-1.0, 0.0), 2.0), TRACK.color, (-0.3, -1)),
            ],
            [[place, head], [place, hub], list(PATH)],
            [(-9, -9, 0, LIP)],
        )


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Control("height", "Litter, height on its path", Kind.LENGTH, 1, 30, 0.5, 27),
    Choice(
        "lines",
        "Lines counted",
        (("haul", "haul line"), ("track", "+ track lines"), ("belay", "+ belay that catches")),
        "haul",
    ),
    Control(
        "back", "Back strands, below level", Kind.ANGLE, math.radians(5), math.radians(60),
        math.radians(1), math.radians(28),
    ),
    Control("back_foot", "Back feet, behind the front", Kind.LENGTH, 0, 3, 0.1, 1.5),
    Choice(
        "guy",
        "Guy",
        (("none", "none"), ("front", "out, on the cliff side"), ("back", "in, on the team's side")),
        "none",
    ),
    Control(
        "guy_angle", "Guy, below the horizontal", Kind.ANGLE, math.radians(20), math.radians(65),
        math.radians(1), math.radians(40),
    ),
    Control("head_height", "Head above the feet", Kind.LENGTH, 1.5, 3.2, 0.1, 2.0),
    Control("reach", "Head, out past the feet", Kind.LENGTH, 0, 1, 0.05, 0.3),
    Control("beyond", "Litter, beyond its path", Kind.LENGTH, 0, 1.5, 0.1, 0),
    Choice(
        "direction",
        "Haul line is",
        tuple((way.value, way.value) for way in Direction),
        Direction.HAULING.value,
    ),
    Control("efficiency", "Pulleys, efficiency", Kind.RATIO, 0.7, 1.0, 0.01, 1.0),
    Control("belay", "Belay tension in a catch", Kind.FORCE, 500, 6000, 100, 2000),
)  # fmt: skip


def _idle(values: Values) -> dict[str, str]:
    """What changes nothing at these settings."""
    idle = {}
    if values["guy"] == "none":
        idle["guy_angle"] = "There is no guy: choose one."
    if values["lines"] != "belay":
        idle["belay"] = "The belay is not counted: choose it among the lines."
    return idle


def _outcome(display: Display) -> Outcome:
    """Which way the head is pulled at the start of the figure."""
    start = {control.key: control.default for control in CONTROLS}
    one, both = (compute(start | {"lines": key}).at.load for key in ("haul", "track"))
    assert one is not None and both is not None  # the start is a place that can be held
    lean = one.lean.low
    straight = abs(lean) < math.radians(2)
    return Outcome(
        right=1 if straight else (2 if lean > 0 else 0),
        sentence=(
            f"The pull leans {lean_words(one, display)}. It is "
            f"{say(display, one.pull.high, Kind.FORCE)} from the haul line alone and "
            f"{say(display, both.pull.high, Kind.FORCE)} with the track lines."
        ),
    )


FRAME_LEAN = Figure(
    key="frame-lean",
    title="Where does it want to fall?",
    alternative=(
        "Side view of a frame on the lip of a cliff, with the pull on its head, the line of action "
        "of that pull and the ground its feet cover; beside it the raise"
    ),
    prediction=Prediction(
        question=(
            "the litter hangs over the cliff, out in front of the frame, and the haul line runs "
            "over the head back to the team. The pull on the head goes …"
        ),
        choices=(
            "down and out, over the edge",
            "straight down",
            "down and in, towards the team",
        ),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=FrameLeanPicture,
    summary=summary,
    table=table,
    cautions=(
        "Count every line that runs through the head: haul line, track lines and, for the catch, "
        "the belay. How hard a belay pulls in a catch is for you to enter.",
        *FRAME[:1],
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    forces_label="Show the pull of every strand on the head",
    reading=(
        "The thick violet arrow is the sum of all strands at the head. Follow its dotted line of "
        "action down to the ground: between the feet the frame stands, outside it falls.",
        "With friction, track lines stand still over the head and may help or hinder; a belay that "
        "catches is drawn towards the litter. Where the pull lands is then a shaded band.",
    ),
    first=("height", "lines", "back", "back_foot", "guy", "guy_angle"),
    idle=_idle,
)
