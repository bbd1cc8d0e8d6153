"""Two or three anchor legs under a pull that swings: who gains, and what statics cannot tell.

Left the anchor from the front, with bolts in the rock and the knot where the legs meet; right
the forces on the knot, head to tail, and below them what each leg carries of the pull. Three legs
that stand in space are seen from above instead: their forces lie in no one plane.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics import anchors
from ropecalc.mechanics.legs import redundant_legs, three_legs_at
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import INK, Canvas
from ropecalc.teaching.drawing import (
    FAINT,
    HAUL,
    PUSH,
    ROCK_FACE,
    THIN,
    TRACK,
    WEIGHT,
    Arc,
    Area,
    Arrow,
    Box,
    Dot,
    Label,
    Labels,
    Mark,
    Notice,
    Person,
    Place,
    Rope,
    ScaleBar,
    Stroke,
    along,
)
from ropecalc.teaching.figures.free_body import Pull, neat_force
from ropecalc.teaching.figures.head_to_tail import HeadToTail
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

LEG = 2.0
"""Length of each leg of the two-legged anchor (m)."""
FORCES = "Show the pulls on the knot"
_NAMES = ("left leg", "middle leg", "right leg", "back leg")
_STROKES = (HAUL, PUSH, Stroke(TRACK.color, 2.6), PUSH)
LEFT, MIDDLE, RIGHT, BACK = range(4)
_AROUND = {LEFT: math.radians(210), RIGHT: math.radians(-30), BACK: math.radians(90)}
"""Where legs in space stand around the pull, seen from above: from the right, turning backward."""


@dataclass(frozen=True)
class Leg:
    """One leg: its anchor (across, up; m from the knot of the unloaded rig) and what it carries.

    ``low`` and ``high`` are the ends of what it may carry where statics leaves a range (N);
    ``behind`` is how far the anchor lies behind the plane of the front view (m).
    """

    number: int
    anchor: Place
    tension: float
    low: float
    high: float
    behind: float = 0.0

    @property
    def name(self) -> str:
        """Which leg it is."""
        return _NAMES[self.number]

    @property
    def settled(self) -> bool:
        """Whether balance alone says what it carries."""
        return self.high - self.low <= 1e-6 * max(self.high, 1.0)


@dataclass(frozen=True)
class AnchorLegs:
    """One setting worked out. ``knot`` is where the legs meet (across, up; m).

    ``slack`` is the number of an outer leg that hangs slack because the pull points past the
    other one; the knot then hangs in line below that one's anchor. ``outside`` says that the pull
    points outside three legs in space, one of which would have to push: then no leg has a number.
    """

    values: Mapping[str, Any]
    legs: tuple[Leg, ...]
    knot: Place
    slack: int | None
    sunk: float
    outside: bool = False

    @property
    def in_space(self) -> bool:
        """Whether the legs stand around the pull and not in one plane."""
        return bool(self.values["third"] == "space")

    @property
    def pull(self) -> float:
        """The pull on the knot (N)."""
        return float(self.values["pull"])

    @property
    def way(self) -> Place:
        """The direction of the pull (across, up), of length 1."""
        swing = self.values["swing"]
        return (math.sin(swing), -math.cos(swing))


def compute(values: Values) -> AnchorLegs:
    """Work out one setting of the controls (SI)."""
    values = {**values, "pull": float(weight(mass=values["mass"]))}
    if values["third"] == "space":
        return _in_space(values)
    half, swing = values["angle"] / 2, values["swing"]
    places = {LEFT: (-LEG * math.sin(half), LEG * math.cos(half))}
    places[RIGHT] = (-places[LEFT][0], places[LEFT][1])
    if values["third"] == "middle":
        places[MIDDLE] = (0.0, places[LEFT][1])
    if abs(swing) >= half - 1e-9:
        return _past_a_leg(values, places)
    if values["third"] == "middle":
        return _three(values, places)
    given = {"load": values["pull"], "leg_angle": values["angle"], "pull_swing": abs(swing)}
    gains, loses = (
        float(tension(**given))
        for tension in (anchors.gaining_leg_tension, anchors.losing_leg_tension)
    )
    by_leg = {LEFT: gains, RIGHT: loses} if swing >= 0 else {LEFT: loses, RIGHT: gains}
    legs = tuple(Leg(n, places[n], by_leg[n], by_leg[n], by_leg[n]) for n in (LEFT, RIGHT))
    return AnchorLegs(dict(values), legs, (0.0, 0.0), None, 0.0)


def _past_a_leg(values: Values, places: Mapping[int, Place]) -> AnchorLegs:
    """The pull points along an outer leg or past it: that leg carries everything."""
    pull, swing = values["pull"], values["swing"]
    holds, slack = (LEFT, RIGHT) if swing >= 0 else (RIGHT, LEFT)
    at = places[holds]
    knot = (at[0] + LEG * math.sin(swing), at[1] - LEG * math.cos(swing))
    legs = tuple(
        Leg(n, places[n], *((pull,) * 3 if n == holds else (0.0,) * 3)) for n in sorted(places)
    )
    return AnchorLegs(dict(values), legs, knot, slack, 0.0)


def _three(values: Values, places: Mapping[int, Place]) -> AnchorLegs:
    numbers = sorted(places)
    swing, pull = values["swing"], values["pull"]
    shared = redundant_legs(
        (0.0, 0.0, 0.0),
        [(places[n][0], 0.0, places[n][1]) for n in numbers],
        (pull * math.sin(swing), 0.0, -pull * math.cos(swing)),
        stiffness=values["stiffness"],
        length_errors=[values["error"] if n == MIDDLE else 0.0 for n in numbers],
    )
    found = zip(numbers, shared.stretched, shared.least, shared.most, strict=True)
    # the knot sinks out of the place that the range is counted at, so the range has to take it in
    legs = tuple(
        Leg(n, places[n], now, min(low, now), max(high, now)) for n, now, low, high in found
    )
    return AnchorLegs(dict(values), legs, (0.0, 0.0), None, shared.sunk)


def _in_space(values: Values) -> AnchorLegs:
    """Three legs evenly around the pull, each half the control's angle from plumb."""
    lean, swing, pull = values["angle"] / 2, values["swing"], values["pull"]
    out, up = LEG * math.sin(lean), LEG * math.cos(lean)
    places = {n: (out * math.cos(t), out * math.sin(t), up) for n, t in sorted(_AROUND.items())}
    force = (pull * math.sin(swing), 0.0, -pull * math.cos(swing))
    try:
        tensions = three_legs_at((0.0, 0.0, 0.0), list(places.values()), force).tensions
    except DomainError:  # one leg would have to push; that is said in words
        tensions = None
    carried = (0.0,) * 3 if tensions is None else tuple(float(t) for t in tensions)
    legs = tuple(
        Leg(n, (x, z), now, now, now, y)
        for (n, (x, y, z)), now in zip(places.items(), carried, strict=True)
    )
    return AnchorLegs(dict(values), legs, (0.0, 0.0), None, 0.0, tensions is None)


# --- in words ---------------------------------------------------------------------------------

OUTSIDE = (
    "The pull points outside the three legs: one of them hangs slack, and the knot swings over "
    "between the others. Swing less, or open the legs."
)


def summary(result: AnchorLegs, display: Display) -> str:
    """The setting, what each leg carries, and what is not known."""
    values = result.values
    swing = values["swing"]
    size = say(display, abs(swing), Kind.ANGLE)
    side = (
        "straight down the middle"
        if abs(swing) < 1e-9
        else (f"{size} to the {'right' if swing > 0 else 'left'} of the middle")
    )
    if result.in_space:
        lean = say(display, values["angle"] / 2, Kind.ANGLE)
        legs = f"Three legs spread evenly around the pull, each {lean} from plumb"
    else:
        legs = f"Outer legs {say(display, values['angle'], Kind.ANGLE)} apart"
    mass = say(display, values["mass"], Kind.MASS)
    opening = f"{legs}; {mass} pull with {say(display, result.pull, Kind.FORCE)} {side}."
    if result.outside:
        return f"{opening} {OUTSIDE}"
    if result.slack is not None:
        holds = next(leg for leg in result.legs if leg.tension > 0)
        return (
            f"{opening} The pull points along the {holds.name} or past it, so the knot swings over "
            f"and the {holds.name} carries everything: {say(display, result.pull, Kind.FORCE)}. "
            "The other side hangs slack."
        )
    carried = ", ".join(
        f"{leg.name} {say(display, leg.tension, Kind.FORCE)} "
        f"({_share(leg.tension, result.pull)} of the pull)"
        for leg in result.legs
    )
    if all(leg.settled for leg in result.legs):
        return f"{opening} Balance gives: {carried}."
    middle = next(leg for leg in result.legs if leg.number == MIDDLE)
    return (
        f"{opening} Balance alone leaves the middle leg anywhere from "
        f"{say(display, middle.low, Kind.FORCE)} to {say(display, middle.high, Kind.FORCE)}. With "
        f"these lengths and this stretch: {carried}. {_error_words(values['error'], display)}"
    )


def _error_words(error: float, display: Display) -> str:
    if abs(error) < 1e-9:
        return "All three legs are just taut before the pull comes on."
    size = display.show(abs(error), Kind.LENGTH, 2)
    return f"The middle leg is {size} {'longer' if error > 0 else 'shorter'} than just taut."


def _share(tension: float, pull: float) -> str:
    return f"{100 * tension / pull:.0f} %"


def table(result: AnchorLegs, display: Display) -> Table:
    """Leg by leg: what it carries and what it may have to carry."""
    rows: list[tuple[str, ...]] = [("leg", "carries", "of the pull", "may have to carry")]
    if result.outside:
        return (rows[0], *((leg.name, "no number", "", "") for leg in result.legs))
    for leg in result.legs:
        most = "the same" if leg.settled else f"up to {say(display, leg.high, Kind.FORCE)}"
        carried = say(display, leg.tension, Kind.FORCE)
        rows.append((leg.name, carried, _share(leg.tension, result.pull), most))
    return tuple(rows)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 560
_WIDE, _TALL = 520, 504
_LEFT, _LOW = -3.1, -2.75
_LEDGE = -2.45
_LONGEST = 1.5  # m, the arrow of the largest force
_PULL = Stroke(INK, 3.0)
_BESIDE = (552, 242, 372, 286)
"""Left, bottom, width and height of what stands right of the front view (pixels)."""


class AnchorLegsPicture:
    """The anchor on the rock, the closed polygon or the legs from above, and the shares."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._front = _Front(self.canvas)
        title = "Forces on the knot, head to tail"
        self._polygon = HeadToTail(self.canvas, *_BESIDE, title)
        self._above = _FromAbove(self.canvas)
        self._bars = _Bars(self.canvas)

    def update(self, result: AnchorLegs, look: Look) -> None:
        """Follow ``result``."""
        self._front.update(result, look)
        self._polygon.give_way(result.in_space)
        self._above.update(result, look)
        self._bars.update(result, look)
        if result.in_space:
            return
        if not look.numbers:
            self._polygon.say(LOCKED)
        elif not look.forces:
            self._polygon.say(f"Forces are hidden: tick “{FORCES}”.")
        else:
            self._polygon.draw(_forces(result), look.display)


def _forces(result: AnchorLegs) -> list[Pull]:
    """Everything that pulls on the knot: name, size (N), direction in the front view, look.

    A leg in space points partly backward, so what is seen of its direction is shorter than 1.
    """
    forces: list[Pull] = [("pull", result.pull, result.way, WEIGHT)]
    for leg in result.legs:
        across, up = leg.anchor[0] - result.knot[0], leg.anchor[1] - result.knot[1]
        size = math.hypot(across, up, leg.behind)
        if leg.tension > 1e-6 * result.pull:
            unit = (across / size, up / size)
            forces.append((leg.name, leg.tension, unit, _STROKES[leg.number]))
    return forces


class _Front:
    """The anchor seen from the front, true to scale."""

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(
            16, 24, _WIDE, _TALL, "The anchor from the front, true to scale"
        )
        axes.set_xlim(_LEFT, -_LEFT)
        axes.set_ylim(_LOW, _LOW - 2 * _LEFT * _TALL / _WIDE)
        axes.set_facecolor(ROCK_FACE)
        axes.fill([-9, 9, 9, -9], [_LEDGE, _LEDGE, -9, -9], fc="#c4bbaa", ec="#6f6656", lw=1.2)
        self._person = Person(canvas, axes)
        self._legs = [Rope(canvas, axes, stroke) for stroke in _STROKES]
        self._slack = [Rope(canvas, axes, FAINT, 3.5) for _ in range(2)]
        self._load = Rope(canvas, axes, _PULL, 3.8)
        self._middle = Rope(canvas, axes, FAINT, 3)
        self._bolts = [Mark(canvas, axes, "o", "#e8e8e8", 9, 7) for _ in _STROKES]
        self._knot = Dot(canvas, axes)
        self._arcs = [Arc(canvas, axes, THIN, 5.5) for _ in range(2)]
        self._arrows = [Arrow(canvas, axes, WEIGHT) for _ in range(4)]
        self._force_bar = ScaleBar(canvas, axes)
        self._length_bar = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 9)

    def update(self, result: AnchorLegs, look: Look) -> None:
        """Follow ``result``."""
        for rope in (*self._legs, *self._arcs, *self._slack, self._middle):
            rope.hide()
        for bolt in self._bolts:
            bolt.hide()
        for arrow in self._arrows:
            arrow.hide()
        self._force_bar.hide()
        self._person.place(2.6, _LEDGE)
        display = look.display
        unit = 1.0 if display.length == "m" else display.si(2.0, Kind.LENGTH)
        shown = display.show(unit, Kind.LENGTH, 1)
        self._length_bar.place(_LEFT + 0.2, _LOW + 0.12, unit, 0.08, shown)
        lines = self._ropes(result)
        labels: list[Label] = []
        if look.numbers:
            labels += self._angles(result, display)
        if look.numbers and look.forces and not result.outside:
            labels += self._pulls(result, display)
        self._labels.write(labels, lines)

    def _ropes(self, result: AnchorLegs) -> list[list[Place]]:
        knot, end = result.knot, along(result.knot, result.way, 3.2)
        lines = [[knot, end]]
        for leg in result.legs:
            self._bolts[leg.number].place(*leg.anchor)
            if leg.tension > 0 or result.outside:
                self._legs[leg.number].place(leg.anchor, knot)
                lines.append([leg.anchor, knot])
        loose = [leg.anchor for leg in result.legs if not (leg.tension > 0 or result.outside)]
        for rope, anchor in zip(self._slack, loose, strict=False):
            sag = ((anchor[0] + knot[0]) / 2, min(anchor[1], knot[1]) - 0.35)
            if result.slack is None:  # a little longer than the straight way, and no more
                sag = ((anchor[0] + knot[0]) / 2, (anchor[1] + knot[1]) / 2 - 0.2)
            rope.place(anchor, sag, knot)
            lines.append([anchor, sag, knot])
        self._load.place(knot, end)
        self._knot.place(*knot)
        return lines

    def _angles(self, result: AnchorLegs, display: Display) -> list[Label]:
        if result.slack is not None:
            return []
        half, swing = result.values["angle"] / 2, result.values["swing"]
        up, down = math.pi / 2, -math.pi / 2
        labels = []
        if not result.in_space:  # seen from the front, angles in space are not true
            radius = min(max(0.5, 0.3 / math.sin(half)), 1.6)  # room for the words between legs
            self._arcs[0].sweep(result.knot, radius, up - half, up + half)
            words = say(display, 2 * half, Kind.ANGLE)
            labels.append(Label(words, (0.0, radius), THIN.color, (0.15, 1), optional=True))
        if abs(swing) > 1e-9:
            self._middle.place(result.knot, (0.0, -1.6))
            self._arcs[1].sweep(result.knot, 1.15, min(down, down + swing), max(down, down + swing))
            at = along(result.knot, (math.sin(swing / 2), -math.cos(swing / 2)), 1.15)
            words = say(display, abs(swing), Kind.ANGLE)
            labels.append(Label(words, at, THIN.color, (math.sin(swing / 2), -1)))
        return labels

    def _pulls(self, result: AnchorLegs, display: Display) -> list[Label]:
        forces = _forces(result)
        scale = _LONGEST / max(size for _, size, _, _ in forces)
        labels = []
        for arrow, (name, size, way, stroke) in zip(self._arrows, forces, strict=False):
            tip = along(result.knot, way, scale * size)
            arrow.restyle(stroke)
            arrow.place(result.knot, tip)
            side = (1.0, 0.2) if way[0] >= 0 else (-1.0, 0.2)
            at = along(result.knot, way, max(0.85 * scale * size, 0.6))
            labels.append(Label(name, at, stroke.color, side, True))
        amount, words = neat_force(1.2 / scale, display)
        self._force_bar.place(_LEFT + 1.8, _LOW + 0.12, amount * scale, 0.08, words)
        return labels


class _FromAbove:
    """Three legs in space from above, where the front view shows them one before the other."""

    _REACH = 1.75  # m, half the width

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._axes = axes = canvas.blank(*_BESIDE, "The legs from above, true to scale")
        wide, tall = _BESIDE[2:]
        axes.set_xlim(-self._REACH * wide / tall, self._REACH * wide / tall)
        axes.set_ylim(-self._REACH, self._REACH)
        axes.set_facecolor(ROCK_FACE)
        axes.set_visible(False)
        self._ropes = {n: Rope(canvas, axes, _STROKES[n]) for n in _AROUND}
        self._bolts = [Mark(canvas, axes, "o", "#e8e8e8", 9, 7) for _ in _AROUND]
        self._pull = Arrow(canvas, axes, WEIGHT)
        self._knot = Dot(canvas, axes)
        self._bar = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 4, 9)

    def update(self, result: AnchorLegs, look: Look) -> None:
        """Follow ``result``; nothing is shown where the legs lie in one plane."""
        if self._axes.get_visible() != result.in_space:
            self._axes.set_visible(result.in_space)
            self._canvas.forget_background()
        for rope in self._ropes.values():
            rope.hide()
        for bolt in self._bolts:
            bolt.hide()
        self._pull.hide()
        self._knot.hide()
        self._bar.hide()
        self._labels.write([])
        if not result.in_space:
            return
        scale = min(1.0, 1.25 / (LEG * math.sin(result.values["angle"] / 2)))
        lines: list[list[Place]] = []
        boxes: list[Box] = []
        labels = []
        for leg, bolt in zip(result.legs, self._bolts, strict=True):
            at = (scale * leg.anchor[0], scale * leg.behind)
            boxes.append((at[0] - 0.08, at[1] - 0.08, at[0] + 0.08, at[1] + 0.08))
            self._ropes[leg.number].place((0.0, 0.0), at)
            bolt.place(*at)
            lines.append([(0.0, 0.0), at])
            words = leg.name
            if look.numbers and not result.outside:
                words += f"\n{say(look.display, leg.tension, Kind.FORCE)}"
            away = (at[0] if leg.number != BACK else 1.0, 0.0)
            labels.append(Label(words, at, _STROKES[leg.number].color, away, True))
        self._knot.place(0.0, 0.0)
        swung = result.way[0]
        if abs(swung) > 1e-9:
            tip = (1.6 * swung, 0.0)
            self._pull.place((0.0, 0.0), tip)
            lines.append([(0.0, 0.0), tip])
            labels.append(Label("pull swings", tip, INK, (swung, 0.0), True))
        unit = 0.5 if look.display.length == "m" else look.display.si(1.0, Kind.LENGTH)
        words = look.display.show(unit, Kind.LENGTH, 1)
        low = -self._REACH
        self._bar.place(low * _BESIDE[2] / _BESIDE[3] + 0.1, low + 0.1, scale * unit, 0.07, words)
        self._labels.write(labels, lines, boxes)


class _Bars:
    """What each leg carries of the pull; a pale bar is the range that balance leaves."""

    _WIDE, _TALL = 372, 168

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(
            552, 24, self._WIDE, self._TALL, "Each leg's share of the pull"
        )
        axes.set_xlim(0, self._WIDE)
        axes.set_ylim(0, self._TALL)
        self._ranges = [Area(canvas, axes, "#dfe6ee", "#8a919a", 2) for _ in _STROKES]
        self._bars = [Area(canvas, axes, s.color, "none", 3) for s in _STROKES]
        self._whole = Rope(canvas, axes, FAINT, 4)
        self._labels = Labels(canvas, axes, 8, 9)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 40)

    def update(self, result: AnchorLegs, look: Look) -> None:
        """Follow ``result``."""
        self._notice.say(OUTSIDE if result.outside and look.numbers else "")
        for area in (*self._ranges, *self._bars):
            area.hide()
        self._whole.hide()
        self._labels.write([])
        if not look.numbers or result.outside:
            return
        floor = 26.0
        most = max(1.0, *(leg.high / result.pull for leg in result.legs))
        scale = (self._TALL - floor - 30) / most
        whole = floor + scale
        self._whole.place((4, whole), (self._WIDE - 4, whole))
        labels = [Label("the pull", (self._WIDE - 30, whole), FAINT.color, (0, -1))]
        for leg in result.legs:
            middle = self._WIDE * (0.2, 0.47, 0.74, 0.47)[leg.number]
            self._bar(self._bars[leg.number], middle, floor, scale * leg.tension / result.pull)
            if not leg.settled:
                self._bar(
                    self._ranges[leg.number], middle, floor, scale * leg.high / result.pull, 32
                )
            top = floor + scale * leg.tension / result.pull
            share = _share(leg.tension, result.pull)
            labels.append(Label(share, (middle, top), _STROKES[leg.number].color, (0, 1), True))
            labels.append(Label(leg.name, (middle, floor), INK, (0, -1)))
        self._labels.write(labels)

    @staticmethod
    def _bar(area: Area, middle: float, floor: float, high: float, half: float = 22.0) -> None:
        left, right = middle - half, middle + half
        area.place((left, floor), (right, floor), (right, floor + high), (left, floor + high))


# --- the figure -------------------------------------------------------------------------------

_DEGREE = math.radians(1)

CONTROLS = (
    Control(
        "angle",
        "Angle between outer legs",
        Kind.ANGLE,
        20 * _DEGREE,
        150 * _DEGREE,
        _DEGREE,
        60 * _DEGREE,
        "In space, each leg stands half of it from plumb.",
    ),
    Control(
        "swing",
        "Pull swings to the right",
        Kind.ANGLE,
        -40 * _DEGREE,
        40 * _DEGREE,
        _DEGREE,
        0 * _DEGREE,
    ),
    Control("mass", "Mass that pulls on the knot", Kind.MASS, 100, 600, 10, 200),
    Choice(
        "third",
        "A third leg",
        (
            ("none", "none"),
            ("middle", "in one plane"),
            ("space", "in space, spread evenly"),
        ),
        "none",
    ),
    Control(
        "error",
        "Middle leg longer than taut",
        Kind.LENGTH,
        -0.05,
        0.05,
        0.01,
        0.0,
        "To the left of nothing it is shorter.",
    ),
    Control("stiffness", "Stiffness of the legs EA", Kind.FORCE, 20_000, 200_000, 5000, 50_000),
)


def _outcome(display: Display) -> Outcome:
    """How much more the gaining leg carries for a swing of ten degrees."""
    start = {control.key: control.default for control in CONTROLS}
    straight, swung = (
        max(leg.tension for leg in compute(start | {"swing": math.radians(s)}).legs)
        for s in (0, 10)
    )
    more = swung / straight - 1
    force = Kind.FORCE
    return Outcome(
        right=0 if more < 0.075 else 1 if more < 0.2 else 2,
        sentence=(
            f"{say(display, straight, force)} in each leg become {say(display, swung, force)} in "
            f"the leg that gains: {100 * more:.0f} % more."
        ),
    )


def _idle(values: Values) -> dict[str, str]:
    if values["third"] == "middle":
        return {}
    why = "It changes nothing where balance alone settles the tensions."
    return dict.fromkeys(("error", "stiffness"), why)


ANCHOR_LEGS = Figure(
    key="anchor-legs",
    title="An anchor while the pull swings",
    alternative=(
        "Two or three anchor legs seen from the front, the closed polygon of the forces on their "
        "knot (or the legs from above, where they stand in space), and each leg's share of the pull"
    ),
    prediction=Prediction(
        question=(
            "two legs stand sixty degrees apart and share a pull straight down the middle. The "
            "pull swings ten degrees to one side. The leg that gains carries …"
        ),
        choices=("about a twentieth more", "about a tenth more", "over a quarter more"),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=AnchorLegsPicture,
    summary=summary,
    table=table,
    cautions=(
        "Statics says nothing about how good an anchor is, nor about the shock when one leg lets "
        "go and the others are moved.",
        *cautions.EVERY_RESULT,
    ),
    forces_label=FORCES,
    reading=("A pale bar is what a leg may carry where balance alone does not settle it.",),
    first=("angle", "swing", "mass", "third", "error"),
    idle=_idle,
)
