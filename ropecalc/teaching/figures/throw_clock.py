"""A raise against the clock: throws and resets as a staircase, and what the track team has to do.

Left the wall with a mark for every throw and the people it takes; right above the height against
the time, for the chosen system and, pale, for others; right below how fast rope has to come in at
the track team's device meanwhile.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.mechanics.holding import Method, Point, Rig, hold
from ropecalc.mechanics.pulleys import (
    Throws,
    common_system,
    forces,
    haulers,
    plan_throws,
    room,
    snag_force,
    travel,
)
from ropecalc.mechanics.tensioner_lines import device_speed
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import INK, SOFT_INK, Canvas
from ropecalc.teaching.drawing import (
    FAINT,
    HAUL,
    ROCK_EDGE,
    ROCK_FACE,
    TRACK,
    Dot,
    Label,
    Labels,
    Litter,
    Notice,
    Person,
    Place,
    Rope,
    Stroke,
)
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

SYSTEMS = ("2:1", "3:1", "5:1", "6:1", "9:1")
_LOAD = float(weight(mass=200.0))
LEAST_STRAND = 0.3
"""How near a traveller may come to its anchor (m)."""
OFFSET, HUB, ABOVE = 2.5, 40.0, 2.0
"""Of the example raise: litter out from the wall, hub out, directional above the edge (m)."""


@dataclass(frozen=True)
class Raise:
    """One system on this raise. ``ends`` says what ends a throw; ``people`` haul steadily.

    ``stairs`` are (time, height) at the corners of the staircase; ``snag`` is what the people in
    the figure could put into a snag for a moment (N).
    """

    name: str
    throws: Throws
    ends: str
    hand_pull: float
    people: int
    snag: float
    rope: float

    @property
    def stairs(self) -> list[Place]:
        """Up in throws, a little down at each reset."""
        plan = self.throws
        corners, time, height = [(0.0, 0.0)], 0.0, 0.0
        for throw in range(int(plan.throws)):
            step = min(plan.rise, plan.height - height)
            time += step * plan.ratio / plan.hand_speed
            height += step
            corners.append((time, height))
            if throw < plan.resets:
                time += plan.reset_time
                height -= plan.reset_loss
                corners.append((time, height))
        return corners


@dataclass(frozen=True)
class ThrowClock:
    """One setting worked out. ``feed`` are (time, speed) of the rope at the track team's device."""

    values: Mapping[str, Any]
    raises: tuple[Raise, ...]
    feed: list[Place]

    @property
    def chosen(self) -> Raise:
        """The system that is looked at."""
        return next(one for one in self.raises if one.name == self.values["system"])

    @property
    def fastest_feed(self) -> float:
        """The largest speed at the device (m/s)."""
        return max((speed for _, speed in self.feed), default=0.0)


def compute(values: Values) -> ThrowClock:
    """Work out one setting of the controls (SI)."""
    raises = tuple(_raise(name, values) for name in SYSTEMS)
    chosen = next(one for one in raises if one.name == values["system"])
    return ThrowClock(dict(values), raises, _feed(chosen, values))


@lru_cache(maxsize=2000)
def _hand_share(name: str, efficiency: float) -> float:
    """The hands' pull as a share of the load, hauling."""
    worked = forces(common_system(name), "hauling", load=1000.0, efficiency=efficiency)
    return float(worked.hand_pull.high) / 1000.0


@lru_cache
def _ratio(name: str) -> float:
    return float(travel(common_system(name)).ratio)


def _raise(name: str, values: Values) -> Raise:
    system = common_system(name, throw=values["room"] + LEAST_STRAND)
    space = room(system, clear=LEAST_STRAND, ground=values["field"])
    plan = plan_throws(
        height=values["height"],
        rise=max(space.rise, values["loss"] + 0.05),
        reset_loss=values["loss"],
        ratio=_ratio(name),
        hand_speed=values["speed"],
        reset_time=values["reset"],
    )
    pull = _LOAD * _hand_share(name, values["efficiency"])
    return Raise(
        name=name,
        throws=plan,
        ends=space.ends,
        hand_pull=float(pull),
        people=int(haulers(hand_pull=pull, per_person=values["steady"])),
        snag=float(
            snag_force(
                people=values["team"], burst_per_person=values["burst"], advantage=_LOAD / pull
            )
        ),
        rope=float(plan.rope_through_hands),
    )


def _feed(one: Raise, values: Values) -> list[Place]:
    """How fast rope comes in at the device: fast low on the wall, nothing while the team resets."""
    times, heights, moving = [], [], []
    for (start, low), (end, high) in pairwise(one.stairs):
        for share in (0.0, 0.5, 1.0):
            times.append(start + share * (end - start))
            heights.append(max(low + share * (high - low), 0.5))
            moving.append(high > low)
    top = Point(0.3, values["height"] + ABOVE)
    held = hold(Method.TRACK, Rig(top, top, Point(HUB, 0.5)), _LOAD, OFFSET, np.array(heights))
    rates = device_speed.masked(
        lines=values["lines"],
        haul_speed=one.throws.hand_speed / one.throws.ratio,
        track_elevation=held.track_elevation,
        ground_depression=np.ma.clip(held.ground_depression, 0.0, None),
    )
    speeds = np.ma.where(moving, rates, 0.0)
    found = zip(times, speeds, strict=True)
    return [(time, float(speed)) for time, speed in found if speed is not np.ma.masked]


# --- in words ---------------------------------------------------------------------------------


def _minutes(seconds: float) -> str:
    whole = round(seconds / 60)
    return f"{whole} min" if whole >= 1 else "less than 1 min"


def _why(one: Raise) -> str:
    """What ends a throw; a strand by where it runs, for no two of them run alike here."""
    _, named, strand = one.ends.partition(": ")
    return f"the strand from {strand}" if named else one.ends


def summary(result: ThrowClock, display: Display) -> str:
    """The chosen system on this raise, and what the others would do."""
    one, values = result.chosen, result.values
    plan = one.throws
    team = say(display, values["burst"], Kind.FORCE)
    return (
        f"{say(display, plan.height, Kind.LENGTH)} with a {one.name}: "
        f"{plan.throws:.0f} throws of {say(display, plan.rise, Kind.LENGTH)} and "
        f"{plan.resets:.0f} resets take {_minutes(plan.time)}. A throw ends because {_why(one)}. "
        f"{say(display, one.rope, Kind.LENGTH)} of rope come through the hands, which pull with "
        f"{say(display, one.hand_pull, Kind.FORCE)}: work for {one.people} "
        f"{'people' if one.people > 1 else 'person'} at "
        f"{say(display, values['steady'], Kind.FORCE)} each. If the litter catches, "
        f"{values['team']:.0f} people who pull {team} each for a moment put "
        f"{say(display, one.snag, Kind.FORCE)} into the snag. At the track team's device rope "
        f"comes in with up to {display.show(result.fastest_feed, Kind.SPEED, 2)}, for "
        f"{values['lines']:.0f} track lines."
    )


def table(result: ThrowClock, display: Display) -> Table:
    """System by system."""
    rows: list[tuple[str, ...]] = [
        ("system", "throws", "time", "rope through the hands", "people", "into a snag")
    ]
    for one in result.raises:
        rows.append(
            (
                one.name,
                f"{one.throws.throws:.0f}",
                _minutes(one.throws.time),
                say(display, one.rope, Kind.LENGTH),
                f"{one.people}",
                say(display, one.snag, Kind.FORCE),
            )
        )
    return tuple(rows)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 560
_PALE = Stroke("#9aa7b5", 1.2)
_SHOWN_PEOPLE = 12


class ThrowClockPicture:
    """The wall, the staircase and the speed at the device."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._wall = _Wall(self.canvas)
        self._stairs = _Stairs(self.canvas)
        self._feed = _Feed(self.canvas)

    def update(self, result: ThrowClock, look: Look) -> None:
        """Follow ``result``."""
        self._wall.update(result, look)
        longest = max(one.throws.time for one in result.raises)
        self._stairs.update(result, look, longest)
        self._feed.update(result, look, longest)


class _Wall:
    """The raise from the side, with a mark for every throw; people stand at the top."""

    _TALL = 504

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(16, 24, 220, self._TALL, "The raise, throw by throw")
        axes.set_xlim(-12, 8)
        axes.set_ylim(-3, -3 + 20 * self._TALL / 220)
        self._scale = 0.0
        self._rock = Rope(canvas, axes, Stroke(ROCK_EDGE, 1.4), 2)
        self._face = axes.fill([0, 0, 0], [0, 0, 0], fc=ROCK_FACE, ec="none")[0]
        canvas.moving(self._face)
        self._haul = Rope(canvas, axes, HAUL)
        self._marks = [Rope(canvas, axes, Stroke(SOFT_INK, 1.2), 4) for _ in range(60)]
        self._people = [Person(canvas, axes) for _ in range(_SHOWN_PEOPLE)]
        self._litter = Litter(canvas, axes)
        self._labels = Labels(canvas, axes, 4, 9)

    def update(self, result: ThrowClock, look: Look) -> None:
        """Follow ``result``; 40 m of picture for every height of raise."""
        one = result.chosen
        scale = 36.0 / 60.0
        top = scale * one.throws.height
        self._face.set_xy([(-12, -3), (0, -3), (0, top), (-12, top)])
        self._rock.place((0, -3), (0, top), (-12, top))
        self._haul.place((-6, top + 1.0), (0.6, top + 1.6), (1.6, 1.6))
        self._litter.place(1.6, 1.6)
        for mark in self._marks:
            mark.hide()
        for person in self._people:
            person.hide()
        self._labels.write([])
        if not look.numbers:
            return
        heights = [z for _, z in one.stairs][1::2]
        for mark, height in zip(self._marks, heights, strict=False):
            mark.place((-0.9, scale * height), (0.9, scale * height))
        count = min(one.people, _SHOWN_PEOPLE)
        for place, person in enumerate(self._people[:count]):
            person.place(-2.4 - 0.8 * place, top)
        people = f"{one.people} {'people' if one.people > 1 else 'person'}"
        labels = [Label(people, (-2.4 - 0.4 * count, top + 2.0), INK, (0, 1), True)]
        if look.forces:
            pull, snag = (
                say(look.display, force, Kind.FORCE) for force in (one.hand_pull, one.snag)
            )
            words = f"hands pull\n{pull}\ninto a snag\n{snag}"
            labels.append(Label(words, (-6, top - 0.6), HAUL.color, (0, -1), True))
        labels.append(
            Label(f"{one.throws.throws:.0f} throws", (0.9, scale * heights[0]), INK, (1, 0), True)
        )
        self._labels.write(labels, [[(1.6, 1.6), (0.6, top + 1.6)], [(0, 0), (0, top)]])


def _coarse(points: list[Place]) -> list[Place]:
    """About a dozen of them: enough to keep words off a line."""
    return [*points[:: max(1, len(points) // 12)], points[-1]]


def _time_ticks(axes: Any, longest: float) -> None:
    step = next(s for s in (60, 120, 300, 600, 1200, 1800, 3600) if longest / s <= 8 or s == 3600)
    shown = [step * i for i in range(int(longest / step) + 2)]
    axes.set_xticks(shown, [f"{t // 60}" for t in shown])


class _Stairs:
    """Height against time, for all systems; the chosen one stands out."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._axes = axes = canvas.axes(300, 266, 620, 262)
        axes.set_title("Height against time", fontsize=10.5, loc="left")
        self._scaled: tuple[Any, ...] = ()
        self._pale = [Rope(canvas, axes, _PALE, 3) for _ in SYSTEMS]
        self._line = Rope(canvas, axes, HAUL)
        self._end = Dot(canvas, axes)
        self._labels = Labels(canvas, axes, len(SYSTEMS) + 1, 9)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 50)

    def update(self, result: ThrowClock, look: Look, longest: float) -> None:
        """Follow ``result``."""
        self._fit(result.chosen.throws.height, longest, look.display)
        for line in (*self._pale, self._line):
            line.hide()
        self._end.hide()
        self._labels.write([])
        self._notice.say("" if look.numbers else LOCKED)
        if not look.numbers:
            return
        labels = []
        for line, one in zip(self._pale, result.raises, strict=True):
            stairs = one.stairs
            last = stairs[-1]
            chosen = one is result.chosen
            (self._line if chosen else line).place(*stairs)
            if chosen:
                self._end.place(*last)
            words = f"{one.name}\n{_minutes(one.throws.time)}" if chosen else one.name
            color = HAUL.color if chosen else _PALE.color
            labels.append(Label(words, last, color, (0, 1) if not chosen else (1, 0.4), chosen))
        self._labels.write(labels, [_coarse(result.chosen.stairs)])

    def _fit(self, height: float, longest: float, display: Display) -> None:
        scaled = (_ladder(height), _ladder(longest), display.length)
        if scaled == self._scaled:
            return
        self._scaled = scaled
        unit = display.unit(Kind.LENGTH).factor
        self._axes.set_xlim(0, 1.08 * scaled[1])
        self._axes.set_ylim(0, 1.2 * scaled[0])
        _time_ticks(self._axes, scaled[1])
        step = next(s for s in (5, 10, 20, 50, 100) if scaled[0] / unit / s <= 8)
        shown = [step * i for i in range(int(1.15 * scaled[0] / unit / step) + 1)]
        self._axes.set_yticks([h * unit for h in shown], [str(h) for h in shown])
        self._axes.set_ylabel(f"height ({display.length})", fontsize=9, labelpad=2)
        self._canvas.forget_background()


def _ladder(value: float) -> float:
    """The next of six steps to a tenfold at or above ``value``: scales that do not fidget."""
    return float(10.0 ** (math.ceil(6 * math.log10(value) - 1e-9) / 6))


class _Feed:
    """Speed of the rope at the track team's device."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._axes = axes = canvas.axes(300, 44, 620, 158)
        axes.set_title("Rope at the track team's device", fontsize=10.5, loc="left")
        axes.set_xlabel("minutes", fontsize=9, labelpad=1)
        self._scaled: tuple[Any, ...] = ()
        self._line = Rope(canvas, axes, Stroke(TRACK.color, 2.2))
        self._zero = Rope(canvas, axes, FAINT, 3)
        self._labels = Labels(canvas, axes, 1, 9)

    def update(self, result: ThrowClock, look: Look, longest: float) -> None:
        """Follow ``result``."""
        self._fit(result, longest, look.display)
        self._labels.write([])
        self._line.hide()
        self._zero.place((0, 0), (10 * longest, 0))
        if not look.numbers or not result.feed:
            return
        self._line.place(*result.feed)
        at = max(result.feed, key=lambda point: point[1])
        words = f"up to {look.display.show(at[1], Kind.SPEED, 2)}"
        self._labels.write([Label(words, at, TRACK.color, (1, 0.6), True)], [_coarse(result.feed)])

    def _fit(self, result: ThrowClock, longest: float, display: Display) -> None:
        unit = display.unit(Kind.SPEED)
        scaled = (_ladder(max(result.fastest_feed, 0.01)), _ladder(longest), unit.symbol)
        if scaled == self._scaled:
            return
        self._scaled = scaled
        self._axes.set_xlim(0, 1.08 * scaled[1])
        self._axes.set_ylim(-0.05 * scaled[0], 1.25 * scaled[0])
        _time_ticks(self._axes, scaled[1])
        most = scaled[0] / unit.factor
        step = next(s for s in (0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10) if most / s <= 5)
        shown = [step * i for i in range(int(1.2 * most / step) + 1)]
        self._axes.set_yticks([v * unit.factor for v in shown], [f"{v:g}" for v in shown])
        self._axes.set_ylabel(f"speed ({unit.symbol})", fontsize=9, labelpad=2)
        self._canvas.forget_background()


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Choice("system", "System", tuple((name, name) for name in SYSTEMS), "3:1"),
    Control("height", "Height of the raise", Kind.LENGTH, 15, 60, 1, 30),
    Control("room", "Room of the traveller", Kind.LENGTH, 2, 8, 0.25, 4),
    Control("field", "Way the team can walk", Kind.LENGTH, 6, 30, 1, 12),
    Control("loss", "Lost at each reset", Kind.LENGTH, 0.2, 0.6, 0.05, 0.4),
    Control("speed", "Speed of the team", Kind.SPEED, 0.2, 0.6, 0.05, 0.3),
    Control("reset", "Time of a reset", Kind.TIME, 10, 40, 1, 20),
    Control("efficiency", "Efficiency of each sheave", Kind.RATIO, 0.5, 0.98, 0.01, 0.9),
    Control("steady", "Steady pull of one person", Kind.FORCE, 150, 300, 10, 200),
    Control("team", "People on the rope", Kind.RATIO, 2, 10, 1, 5),
    Control("burst", "Pull of one for a moment", Kind.FORCE, 200, 600, 10, 350),
    Control("lines", "Track lines", Kind.RATIO, 1, 4, 1, 2),
)


def _outcome(display: Display) -> Outcome:
    """The 9:1 against the 3:1 at the start of the figure."""
    start = {control.key: control.default for control in CONTROLS}
    raises = {one.name: one for one in compute(start).raises}
    low, high = raises["3:1"], raises["9:1"]
    times = high.throws.time / low.throws.time
    return Outcome(
        right=0 if times < 1.5 else 1 if times < 3 else 2,
        sentence=(
            f"{low.people} people and {_minutes(low.throws.time)} with the 3:1, {high.people} and "
            f"{_minutes(high.throws.time)} with the 9:1. Into a snag {start['team']:.0f} people "
            f"could put {say(display, low.snag, Kind.FORCE)} and "
            f"{say(display, high.snag, Kind.FORCE)}."
        ),
    )


THROW_CLOCK = Figure(
    key="throw-clock",
    title="A raise against the clock",
    alternative=(
        "A wall with a mark for every throw, the height of the litter against time for several "
        "systems, and the speed of the rope at the track team's device"
    ),
    prediction=Prediction(
        question=(
            "a team changes from a 3:1 to a 9:1, because too few people came. The raise takes …"
        ),
        choices=("about as long", "about twice as long", "about four times as long"),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=ThrowClockPicture,
    summary=summary,
    table=table,
    cautions=(
        "What a person pulls, how fast a team walks and how long a reset takes differ from team to "
        "team and from hour to hour: measure your own.",
        "A system that makes hauling easy also hides a snag.",
        *cautions.EVERY_RESULT,
    ),
    forces_label="Show the pull of the hands",
    reading=("Pale lines: the other systems on the same raise.",),
    first=("system", "height", "room", "field", "loss", "speed", "reset"),
)
