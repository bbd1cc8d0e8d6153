"""A litter on one rope, pulled aside: three forces that add to nothing, and how far it moves.

Left the wall true to scale, with the place that the same pull reaches on shorter and longer
ropes; right the litter close up and its three forces, head to tail.
"""

import math
from dataclasses import dataclass
from typing import Any

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.guiding import attendant_push
from ropecalc.mechanics.vectors import (
    lean_reach,
    level_part,
    slanted_pull_angle,
    slanted_pull_tension,
    upward_part,
    weight,
)
from ropecalc.teaching.canvas import Canvas
from ropecalc.teaching.drawing import (
    BRIDLE,
    FAINT,
    GROUND_FACE,
    HALF_WIDTH,
    HAUL,
    LIMIT,
    REACH_DOWN,
    ROCK_EDGE,
    ROCK_FACE,
    TAG,
    THIN,
    WEIGHT,
    Arc,
    Arrow,
    Frame,
    Label,
    Labels,
    Litter,
    Mark,
    Notice,
    Person,
    Place,
    Rope,
    ScaleBar,
)
from ropecalc.teaching.figures.free_body import Pull, neat_force
from ropecalc.teaching.figures.head_to_tail import HeadToTail, stepped
from ropecalc.teaching.figures.length_axes import LengthAxes, LengthAxis, every
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import LOCKED, Figure, Look, Outcome, Prediction, Table, Values
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

EDGE, TOP = 30.0, (0.3, 32.0)
"""The cliff's edge (m) and the haul directional (out, up; m) of the picture."""
MARKED = (5.0, 10.0, 20.0, 30.0)
"""Rope lengths at which the picture shows where the same pull would hold the litter (m)."""
COMPARED = (2.0, *MARKED)
"""Rope lengths in the table (m)."""
OFF = 1.0
"""How far off plumb the table asks for with a level pull (m)."""
FORCES = "Show the forces on the litter"


@dataclass(frozen=True)
class PulledAside:
    """One setting worked out.

    ``lean`` (rad from plumb), ``tension`` (N) and ``moved`` (m) are None where the pull lifts the
    load off: then ``refused`` is True. ``reaches`` are the ways off plumb on the ropes of
    ``COMPARED``, and ``pulls`` the level pulls that move the load by ``OFF`` there (N).
    """

    mass: float
    load: float
    pull: float
    elevation: float
    length: float
    lean: float | None
    tension: float | None
    moved: float | None
    reaches: tuple[float, ...]
    pulls: tuple[float, ...]

    @property
    def refused(self) -> bool:
        """Whether the load would not hang on its rope any more."""
        return self.lean is None

    @property
    def place(self) -> Place:
        """The master attachment point (out, up; m); plumb where there is no answer."""
        lean = self.lean or 0.0
        return _hanging(self.length, lean)

    @property
    def way(self) -> Place:
        """The direction of the pull (out, up), of length 1."""
        return (math.cos(self.elevation), math.sin(self.elevation))


def compute(values: Values) -> PulledAside:
    """Work out one setting of the controls (SI)."""
    load = weight(mass=values["mass"])
    given = {
        "load": load,
        "slanted_pull": values["pull"],
        "pull_elevation": values["elevation"],
    }
    lean: float | None = None
    tension: float | None = None
    try:
        lean = float(slanted_pull_angle(**given))
        tension = float(slanted_pull_tension(**given))
    except DomainError:
        pass  # the pull lifts the load; that is said in words
    reaches = () if lean is None else tuple(_reach(rope, lean) for rope in COMPARED)
    return PulledAside(
        mass=values["mass"],
        load=load,
        pull=values["pull"],
        elevation=values["elevation"],
        length=values["length"],
        lean=lean,
        tension=tension,
        moved=None if lean is None else _reach(values["length"], lean),
        reaches=reaches,
        pulls=tuple(_pull_for(load, rope) for rope in COMPARED),
    )


def _reach(rope: float, lean: float) -> float:
    """How far off plumb (m) a rope of this length ends."""
    return float(lean_reach(rope_above=rope, plumb_angle=lean))


def _pull_for(load: float, rope: float) -> float:
    """The level pull (N) that holds a load ``OFF`` from plumb on a rope of this length."""
    drop = math.sqrt(rope**2 - OFF**2)
    return float(attendant_push(load=load, off_plumb=OFF, drop=drop))


def _hanging(length: float, lean: float) -> Place:
    """Where a rope of this length ends that hangs from the directional and leans outward."""
    return (TOP[0] + length * math.sin(lean), TOP[1] - length * math.cos(lean))


# --- in words ---------------------------------------------------------------------------------


def _slope_words(result: PulledAside, display: Display) -> str:
    if abs(result.elevation) < 1e-9:
        return "level"
    way = "above" if result.elevation > 0 else "below"
    return f"{say(display, abs(result.elevation), Kind.ANGLE)} {way} level"


def summary(result: PulledAside, display: Display) -> str:
    """The setting and its numbers in plain sentences."""
    force, length = Kind.FORCE, Kind.LENGTH
    opening = (
        f"{say(display, result.mass, Kind.MASS)} weigh {say(display, result.load, force)} and hang "
        f"on {say(display, result.length, length)} of rope."
    )
    if result.pull == 0:
        return (
            f"{opening} Nothing pulls it aside: the rope hangs plumb and carries just the weight."
        )
    pull = (
        f"A pull of {say(display, result.pull, force)}, {_slope_words(result, display)}, "
        f"{_parts(result, display)}"
    )
    if result.lean is None or result.tension is None or result.moved is None:
        return f"{opening} {pull}. {REFUSED}"
    return (
        f"{opening} {pull}. The rope leans {say(display, result.lean, Kind.ANGLE)} from plumb and "
        f"carries {say(display, result.tension, force)}; the litter hangs "
        f"{say(display, result.moved, length)} off plumb. The lean is the same on any length of "
        "rope, the way off plumb is not."
    )


REFUSED = (
    "That would lift the load off its rope: the pull's upward part is no smaller than the weight. "
    "Pull less, or at a lower angle."
)


def _parts(result: PulledAside, display: Display) -> str:
    """What the pull does out and what it does up or down."""
    if abs(result.elevation) < 1e-9:
        return "pulls only outward"
    angle = abs(result.elevation)
    out = level_part(rope_tension=result.pull, rope_elevation=angle)
    up = upward_part(rope_tension=result.pull, rope_elevation=angle)
    way = "up" if result.elevation > 0 else "down"
    return f"pulls {say(display, out, Kind.FORCE)} out and {say(display, up, Kind.FORCE)} {way}"


def table(result: PulledAside, display: Display) -> Table:
    """The same pull on ropes of several lengths, and the pull that moves the load a set way."""
    off = display.show(OFF, Kind.LENGTH, 1 if display.length == "m" else 2)
    head = ("Rope above the litter", "This pull moves it", f"A level pull moves it {off} with")
    rows = [
        (
            say(display, rope, Kind.LENGTH),
            say(display, result.reaches[row], Kind.LENGTH) if result.reaches else "no number",
            say(display, result.pulls[row], Kind.FORCE),
        )
        for row, rope in enumerate(COMPARED)
    ]
    return (head, *rows)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 560
_LEFT, _LOW = -3.0, -1.6
_WIDE, _TALL = 440, 500
_METRE = 12.8  # pixels
_NEAR = 2.6  # m, half the close-up's width
_ARROW_ROOM = 1.5  # m of the close-up for the longest arrow


class ClosedPolygonPicture:
    """The wall, the litter close up, and the triangle of forces."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._wall = _Wall(self.canvas)
        self._near = _CloseUp(self.canvas)
        title = "The same forces, head to tail"
        self._polygon = HeadToTail(self.canvas, 524, 30, 396, 246, title, 3)

    def update(self, result: PulledAside, look: Look) -> None:
        """Follow ``result``."""
        self._wall.update(result, look)
        self._near.update(result, look)
        if not look.numbers:
            self._polygon.say(LOCKED)
        elif result.refused:
            self._polygon.say(REFUSED)
        elif not look.forces:
            self._polygon.say(f"Forces are hidden: tick “{FORCES}”.")
        else:
            self._polygon.draw(_pulls(result), look.display)


def _pulls(result: PulledAside) -> list[Pull]:
    """The forces on the litter in the order of their polygon."""
    pulls: list[Pull] = [("weight", result.load, (0.0, -1.0), WEIGHT)]
    pulls.append(("side pull", result.pull, result.way, TAG))
    if result.lean is not None and result.tension is not None:
        up = (-math.sin(result.lean), math.cos(result.lean))
        pulls.append(("rope", result.tension, up, HAUL))
    return pulls


class _Wall:
    """The whole wall with the rope, and where the same pull leads on other lengths."""

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.axes(52, 34, _WIDE, _TALL)
        axes.set_xlim(_LEFT, _LEFT + _WIDE / _METRE)
        axes.set_ylim(_LOW, _LOW + _TALL / _METRE)
        axes.set_title("The rope on the wall, true to scale", fontsize=10.5, loc="left")
        axes.fill([0, 90, 90, 0], [0, 0, -9, -9], fc=GROUND_FACE, ec=ROCK_EDGE, lw=1.2)
        axes.fill([-9, 0, 0, -9], [-9, -9, EDGE, EDGE], fc=ROCK_FACE, ec=ROCK_EDGE, lw=1.2)
        self._numbers = LengthAxes(
            canvas,
            axes,
            LengthAxis("out from the wall", 30.01, every(5, 20)),
            LengthAxis("height", 36.0, every(5, 20)),
        )
        self._frame = Frame(canvas, axes)
        self._plumb = Rope(canvas, axes, FAINT, 3)
        self._reach = Rope(canvas, axes, LIMIT, 3.2)
        self._marks = [Mark(canvas, axes, "o", "white", 5.0, 4.5) for _ in MARKED]
        self._rope = Rope(canvas, axes, HAUL)
        self._line = Rope(canvas, axes, TAG)
        self._helper = Person(canvas, axes)
        self._bystander = Person(canvas, axes)
        self._litter = Litter(canvas, axes)
        self._offset = Rope(canvas, axes, THIN, 5.6)
        self._labels = Labels(canvas, axes, 8, 9)

    def update(self, result: PulledAside, look: Look) -> None:
        """Follow ``result``."""
        self._numbers.follow(look.display)
        here = result.place
        self._frame.place(EDGE, TOP, TOP)
        self._bystander.place(-1.1, EDGE)
        self._plumb.place(TOP, (TOP[0], 0.0))
        self._rope.place(here, TOP)
        self._litter.place(*here)
        lines = [[TOP, (TOP[0], 0.0)], [here, TOP]]
        lines += self._side_line(result)
        labels = [Label("plumb", (TOP[0], 1.2), THIN.color, (1, 0.3))]
        labels += self._way_off(result, look)
        labels += self._reaches(result, look, lines)
        boxes = [
            (here[0] - HALF_WIDTH, here[1] - REACH_DOWN, here[0] + HALF_WIDTH, here[1]),
            (_LEFT, _LOW, 0.0, EDGE),
        ]
        self._labels.write(labels, lines, boxes)

    def _side_line(self, result: PulledAside) -> list[list[Place]]:
        """The line that pulls, to the ground or out of the picture, and who holds it there."""
        self._line.hide()
        self._helper.hide()
        if result.pull == 0 or result.refused:
            return []
        (x, z), (out, up) = result.place, result.way
        right = _LEFT + _WIDE / _METRE
        reach = (right + 1.0 - x) / out
        hand = 1.0
        if up < 0 and (z - hand) / -up < reach:
            reach = max((z - hand) / -up, 0.0)
            self._helper.place(x + reach * out + 0.2, 0.0)
        end = (x + reach * out, z + reach * up)
        self._line.place((x, z), end)
        return [[(x, z), end]]

    def _reaches(self, result: PulledAside, look: Look, lines: list[list[Place]]) -> list[Label]:
        """The same lean carried on: ropes of other lengths end on this line."""
        self._reach.hide()
        for mark in self._marks:
            mark.hide()
        if result.lean is None or result.pull == 0 or not look.numbers:
            return []
        end = _hanging(MARKED[-1], result.lean)
        self._reach.place(result.place, end)
        lines.append([result.place, end])
        labels = []
        aside = (math.cos(result.lean), math.sin(result.lean))
        for mark, rope in zip(self._marks, MARKED, strict=True):
            if abs(rope - result.length) < 0.5:
                continue
            at = _hanging(rope, result.lean)
            mark.place(*at)
            moved = say(look.display, at[0] - TOP[0], Kind.LENGTH)
            shown = say(look.display, rope, Kind.LENGTH)
            words = f"{shown} of rope: {moved}"
            labels.append(Label(words, at, LIMIT.color, aside))
        return labels

    def _way_off(self, result: PulledAside, look: Look) -> list[Label]:
        """The level way from the plumb line to the litter, with its size."""
        self._offset.hide()
        x, z = result.place
        if not look.numbers or result.moved is None or result.moved * _METRE < 6:
            return []
        level = z - REACH_DOWN - 0.5
        if level < 0.1:
            level = z + 0.5
        self._offset.place((TOP[0], level), (x, level))
        words = say(look.display, result.moved, Kind.LENGTH)
        at = ((TOP[0] + x) / 2, level)
        return [Label(words, at, bold=True, towards=(0.0 if x > 4.0 else 1.0, -1))]


class _CloseUp:
    """The litter cut free: what pulls on its master attachment point."""

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(524, 306, 396, 228, "Close up at the litter")
        axes.set_xlim(-_NEAR, _NEAR)
        tall = 2 * _NEAR * 228 / 396
        axes.set_ylim(-0.56 * tall, 0.44 * tall)
        self._low = -0.56 * tall
        self._plumb = Rope(canvas, axes, FAINT, 3)
        self._level = Rope(canvas, axes, FAINT, 3)
        self._rope = Rope(canvas, axes, HAUL)
        self._line = Rope(canvas, axes, TAG)
        self._litter = Litter(canvas, axes)
        self._arcs = [Arc(canvas, axes, THIN, 5.5) for _ in range(2)]
        self._arrows = [Arrow(canvas, axes, HAUL) for _ in range(3)]
        self._bar = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 5)
        self._notice = Notice(canvas, axes, 0.8, 0.16, 16)

    def update(self, result: PulledAside, look: Look) -> None:
        """Follow ``result``."""
        for rope in (self._line, self._level, *self._arcs):
            rope.hide()
        for arrow in self._arrows:
            arrow.hide()
        self._bar.hide()
        lean = result.lean or 0.0
        far = 3 * _NEAR
        up = (-far * math.sin(lean), far * math.cos(lean))
        self._plumb.place((0.0, 0.0), (0.0, far))
        self._rope.place((0.0, 0.0), up)
        self._litter.place(0.0, 0.0)
        lines: list[list[Place]] = [[(0.0, 0.0), up], [(0.0, 0.0), (0.0, far)]]
        self._notice.say("No numbers: see below." if result.refused and look.numbers else "")
        if result.pull > 0:
            end = (far * result.way[0], far * result.way[1])
            self._line.place((0.0, 0.0), end)
            lines.append([(0.0, 0.0), end])
        labels = [Label("litter", (-HALF_WIDTH, -BRIDLE), THIN.color, (-1, -0.4))]
        if look.numbers and not result.refused:
            labels = [*self._angles(result, look.display), *labels]
            if look.forces:
                labels += self._draw_arrows(result, look.display, lines)
        box = (-HALF_WIDTH, -REACH_DOWN, HALF_WIDTH, -0.5)
        self._labels.write(labels, lines, [box])

    def _angles(self, result: PulledAside, display: Display) -> list[Label]:
        labels = []
        lean, slope = result.lean or 0.0, result.elevation
        up = math.pi / 2
        if lean > math.radians(0.5):
            self._arcs[0].sweep((0.0, 0.0), 0.95, up, up + lean)
            labels.append(_angle(display, lean, 0.95, up + lean / 2))
        if result.pull > 0 and abs(slope) > 1e-9:
            self._level.place((0.0, 0.0), (_NEAR, 0.0))
            self._arcs[1].sweep((0.0, 0.0), 1.75, min(slope, 0.0), max(slope, 0.0))
            labels.append(_angle(display, abs(slope), 1.75, slope / 2))
        return labels

    def _draw_arrows(
        self, result: PulledAside, display: Display, lines: list[list[Place]]
    ) -> list[Label]:
        pulls = _pulls(result)
        per_metre = stepped(max(size for _, size, _, _ in pulls) / _ARROW_ROOM)
        sides = {"weight": (1.0, -0.2), "side pull": (0.3, -1.0), "rope": (-1.0, 0.2)}
        labels = []
        for arrow, (name, size, way, stroke) in zip(self._arrows, pulls, strict=True):
            tip = (way[0] * size / per_metre, way[1] * size / per_metre)
            arrow.restyle(stroke)
            arrow.place((0.0, 0.0), tip)
            if math.hypot(*tip) < 0.15:
                continue
            lines.append([(0.0, 0.0), tip])
            at = (0.75 * tip[0], 0.75 * tip[1])
            labels.append(Label(name, at, stroke.color, sides[name], True))
        amount, words = neat_force(1.3 * per_metre, display)
        self._bar.place(-_NEAR + 0.15, self._low + 0.12, amount / per_metre, 0.07, words)
        return labels


def _angle(display: Display, angle: float, radius: float, middle: float) -> Label:
    out = (math.cos(middle), math.sin(middle))
    words = say(display, angle, Kind.ANGLE)
    return Label(words, (radius * out[0], radius * out[1]), THIN.color, out)


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Control("mass", "Mass that hangs", Kind.MASS, 120, 280, 5, 200),
    Control("pull", "Side pull", Kind.FORCE, 0, 2500, 50, 500),
    Control(
        "elevation",
        "Pull, above level",
        Kind.ANGLE,
        math.radians(-40),
        math.radians(40),
        math.radians(1),
        0.0,
        help="Negative: the pull goes down, as a line to the ground does.",
    ),
    Control("length", "Rope above the litter", Kind.LENGTH, 2, 30, 0.5, 5),
)


def _idle(values: Values) -> dict[str, str]:
    """Without a pull there is no direction of it."""
    return {} if values["pull"] > 0 else {"elevation": "There is no pull: set one first."}


def _outcome(display: Display) -> Outcome:
    """Compare the figure's rope with one six times as long."""
    start: dict[str, Any] = {control.key: control.default for control in CONTROLS}
    times = 6
    short, long = (compute(start | {"length": n * start["length"]}) for n in (1, times))
    assert short.moved is not None and long.moved is not None and short.lean is not None
    ratio = long.moved / short.moved
    right = next(n for n, most in enumerate((0.98, 1.02, math.inf)) if ratio < most)

    def length(si: float) -> str:
        return say(display, si, Kind.LENGTH)

    return Outcome(
        right=right,
        sentence=(
            f"A level pull of {say(display, short.pull, Kind.FORCE)} leans the rope "
            f"{say(display, short.lean, Kind.ANGLE)} from plumb, whatever its length. On "
            f"{length(short.length)} of rope that is {length(short.moved)}, on "
            f"{length(long.length)} it is {length(long.moved)}."
        ),
    )


CLOSED_POLYGON = Figure(
    key="closed-polygon",
    title="One pull, short rope and long rope",
    alternative=(
        "Cross-section of a wall with a litter on one rope, pulled aside, and the closed triangle "
        "of the three forces on it"
    ),
    prediction=Prediction(
        question=(
            "somebody pulls a hanging litter aside with a steady level pull. Lower down on the "
            "wall, with six times as much rope above the litter, the same pull moves it …"
        ),
        choices=("less far", "just as far", "about six times as far"),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=ClosedPolygonPicture,
    summary=summary,
    table=table,
    forces_label=FORCES,
    reading=(
        "The dotted line carries the rope on at the same lean: there the same pull would hold the "
        "litter on a rope of that length.",
    ),
    cautions=(cautions.NEAR_DIRECTIONAL, *cautions.EVERY_RESULT),
    idle=_idle,
)
