"""Attendant, tag line and track line hold one litter: the same closed polygon of forces.

Left the cross-section, close up and whole; right the forces, head to tail, to a stated scale.
Changing from tag line to track line from the same directional leaves the triangle as it is; only
the labels on its sides change.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.guiding import straight_line_limit
from ropecalc.mechanics.holding import Hold, Method, Point, Reach, Rig, hold
from ropecalc.mechanics.vectors import weight
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
    THIN,
    TRACK,
    Arc,
    Area,
    Arrow,
    Box,
    Dot,
    Frame,
    Hub,
    Label,
    Labels,
    Litter,
    Notice,
    Person,
    Place,
    Rope,
    ScaleBar,
)
from ropecalc.teaching.figures.free_body import Pull, line_stroke, neat_force, pulls_on_litter
from ropecalc.teaching.figures.head_to_tail import HeadToTail, stepped
from ropecalc.teaching.figures.length_axes import LengthAxes, LengthAxis, every
from ropecalc.teaching.figures.sensitivity import too_sensitive, too_sensitive_words
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import (
    LOCKED,
    Choice,
    Figure,
    Look,
    Outcome,
    Prediction,
    Values,
)
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

EDGE = 30.0
"""Height of the cliff's edge in the picture (m)."""
LEG_REACH = 1.2
"""How far the attendant's feet are drawn from the litter's side (m); an assumption of the drawing.

Where the rock is further away, the picture says that the legs do not reach it.
"""


@dataclass(frozen=True)
class ThreeWays:
    """One setting worked out. ``with_tag`` is the tag line's answer at the same place.

    ``limit`` is how far out no tension can hold the litter at this height (None for the
    attendant, and where there is no such place). ``largest`` is the largest force on the litter
    with any of the three methods that has numbers here: one scale serves them all.
    """

    method: Method
    rig: Rig
    place: Point
    mass: float
    load: float
    held: Hold
    with_tag: Hold
    sensitive: bool
    limit: float | None
    largest: float

    @property
    def legs_reach(self) -> bool:
        """Whether an attendant's feet stand on the rock in the drawing."""
        return _room_to_rock(self.place.x) <= LEG_REACH

    @property
    def reliable(self) -> bool:
        """Whether there are numbers, and ones that can be printed."""
        return bool(self.held.reach.possible) and not self.sensitive

    @property
    def line_start(self) -> Point:
        """Where the line past the litter starts: the track's directional, else the haul's."""
        track = self.method is Method.TRACK
        return self.rig.track_directional if track else self.rig.haul_directional

    @property
    def one_directional(self) -> bool:
        """Whether track and haul line start at the same place."""
        return self.rig.track_directional == self.rig.haul_directional


def compute(values: Values) -> ThreeWays:
    """Work out one setting of the controls (SI)."""
    haul = Point(values["directional_x"], values["directional_z"])
    track = Point(haul.x, haul.z + values["track_extra"])
    rig = Rig(haul, track, Point(values["hub_x"], values["hub_z"]))
    place = Point(values["offset"], values["height"])
    method = Method(values["method"])
    load = weight(mass=values["mass"])
    return ThreeWays(
        method=method,
        rig=rig,
        place=place,
        mass=values["mass"],
        load=load,
        held=hold(method, rig, load, place.x, place.z),
        with_tag=hold(Method.TAG, rig, load, place.x, place.z),
        sensitive=bool(too_sensitive(method, rig, load, place.x, place.z)),
        limit=_limit(method, rig, place.z),
        largest=_largest(rig, load, place),
    )


def _largest(rig: Rig, load: float, place: Point) -> float:
    sizes = [load]
    for method in Method:
        held = hold(method, rig, load, place.x, place.z)
        if held.reach.possible and not too_sensitive(method, rig, load, place.x, place.z):
            sizes += [size for _, size, _, _ in pulls_on_litter(load, held)]
    return max(sizes)


def _room_to_rock(offset: float) -> float:
    """From the wall to the litter's side (m)."""
    return offset - HALF_WIDTH


def _limit(method: Method, rig: Rig, height: float) -> float | None:
    if method is Method.ATTENDANT:
        return None
    top = rig.track_directional if method is Method.TRACK else rig.haul_directional
    places = {"z": height, "x_D": top.x, "z_D": top.z, "x_B": rig.hub.x, "z_B": rig.hub.z}
    try:
        return float(straight_line_limit(**places))
    except DomainError:
        return None


# --- in words ---------------------------------------------------------------------------------

_NAMES = {
    Method.ATTENDANT: "Attendant",
    Method.TAG: "Tag line",
    Method.TRACK: "Track line",
}


def summary(result: ThreeWays, display: Display) -> str:
    """The setting and its numbers in plain sentences."""
    length, force = _shows(display, Kind.LENGTH), _shows(display, Kind.FORCE)
    held = result.held
    opening = (
        f"{_NAMES[result.method]}, {say(display, result.mass, Kind.MASS)}, litter "
        f"{length(result.place.x)} out at {length(result.place.z)}, hub {length(result.rig.hub.x)} "
        "out."
    )
    if not held.reach.possible:
        return f"{opening} {held.reach.sentence}{_limit_words(result, display)}"
    if result.sensitive:
        return f"{opening} {too_sensitive_words(display)}{_limit_words(result, display)}"
    parts = [f"haul tension {force(held.haul_tension)}"]
    if result.method is Method.ATTENDANT:
        parts.append(f"outward push {force(held.push)}")
    else:
        parts.append(f"{result.method.value} tension {force(held.line_tension)}")
        way = "upward" if held.hub_uplift >= 0 else "downward"
        parts.append(f"{way} pull on the hub {force(abs(held.hub_uplift))}")
        parts.append(f"angle at the litter {say(display, held.litter_angle, Kind.ANGLE)}")
    words = f"{opening} {_sentence(', '.join(parts))}{_limit_words(result, display)}"
    if held.reach is Reach.PLUMB:
        words += f" {held.reach.sentence}"
    if result.method is Method.ATTENDANT:
        reach = "reach" if result.legs_reach else "do not reach"
        words += (
            " The push acts level at the attachment point, and the attendant's own weight has to "
            f"be in the mass. The drawing lets legs reach {length(LEG_REACH)} from the litter's "
            f"side to the rock: here they {reach}."
        )
    if result.method is Method.TRACK:
        words += _same_as_tag(result, force)
    return words


def _same_as_tag(result: ThreeWays, force: Callable[[float], str]) -> str:
    tag = result.with_tag
    if not tag.reach.possible:
        return ""
    compared = (
        f" A tag line here: tag tension {force(tag.line_tension)}, haul tension "
        f"{force(tag.haul_tension)}"
    )
    if result.one_directional:
        return f"{compared}; the triangle of forces is the same."
    return f"{compared}."


def _limit_words(result: ThreeWays, display: Display) -> str:
    if result.limit is None:
        return ""
    limit = say(display, result.limit, Kind.LENGTH)
    return f" No tension holds it {limit} out or more at this height."


def _shows(display: Display, kind: Kind, figures: int = 3) -> Callable[[float], str]:
    return lambda si: say(display, si, kind, figures)


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:] + "."


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 550
_NEAR_LEFT, _NEAR_RIGHT = -1.5, 8.5
_ARROW_ROOM = 2.0  # m of the close-up for the longest arrow
_TALL_AS = 1.75  # m, the attendant
_LABELLED_FROM = 16  # pixels of arrow
_BYSTANDER = 6.85  # m out; somebody on the ground to compare sizes with
_FOOT = -0.3  # the ground at the foot of the wall; the litter at 1 m height just hangs free


class ThreeWaysPicture:
    """The artists of the figure."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._near = _CloseUp(self.canvas)
        self._whole = _Whole(self.canvas)
        title = "Forces on the litter, head to tail"
        self._polygon = HeadToTail(self.canvas, 524, 40, 396, 480, title)

    def update(self, result: ThreeWays, look: Look) -> None:
        """Follow ``result``."""
        self._near.update(result, look)
        self._whole.update(result, look)
        sentence = _instead_of_forces(result, look)
        if sentence:
            self._polygon.say(sentence)
            return
        pulls = pulls_on_litter(result.load, result.held)
        self._polygon.draw(pulls, look.display, _compared(result), "with a tag line")


def _ground(hub: Point) -> list[Place]:
    """The ground from the foot of the wall to the hub: level, then the bank the hub stands on."""
    bank = hub.x - 0.4 * hub.z if hub.z > 0 else 0.0
    return [(0.0, _FOOT), (bank, _FOOT), (hub.x, hub.z - 0.1), (90.0, hub.z - 0.1)]


def _level_at(hub: Point, x: float) -> float:
    """Height of the ground at ``x``."""
    corners = _ground(hub)
    return float(np.interp(x, [c[0] for c in corners], [c[1] for c in corners]))


class _CloseUp:
    """The litter and its lines, near enough to see angles; follows the litter's height."""

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(52, 288, 450, 232, "Close up at the litter")
        axes.set_xlim(_NEAR_LEFT, _NEAR_RIGHT)
        self._tall = 232 / 450 * (_NEAR_RIGHT - _NEAR_LEFT)
        axes.set_ylim(-0.58 * self._tall, 0.42 * self._tall)  # heights relative to the litter
        self._ground = Area(canvas, axes, GROUND_FACE, zorder=1)
        self._rock = Area(canvas, axes, ROCK_FACE)
        self._frame = Frame(canvas, axes)
        self._haul = Rope(canvas, axes, HAUL)
        self._upper = Rope(canvas, axes, TRACK)
        self._ground_leg = Rope(canvas, axes, TRACK)
        self._level = Rope(canvas, axes, FAINT)
        self._limit = Rope(canvas, axes, LIMIT)
        self._litter = Litter(canvas, axes)
        self._attendant = Person(canvas, axes, zorder=4.5)
        self._short = Rope(canvas, axes, FAINT)
        self._at_edge, self._at_foot = Person(canvas, axes), Person(canvas, axes)
        self._arcs = [Arc(canvas, axes, THIN, 5.5) for _ in range(2)]
        self._arrows = [Arrow(canvas, axes, HAUL) for _ in range(4)]
        self._force_bar = ScaleBar(canvas, axes)
        self._length_bar = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 8)
        self._notice = Notice(canvas, axes, 0.58, 0.14, 54)

    def update(self, result: ThreeWays, look: Look) -> None:
        """Follow ``result``."""
        place, rig, held = result.place, result.rig, result.held
        here = (place.x, 0.0)
        self._scene(result)
        display = look.display
        unit = 1.0 if display.length == "m" else display.si(5.0, Kind.LENGTH)
        low = self._axes.get_ylim()[0]
        self._length_bar.place(
            _NEAR_RIGHT - unit - 0.25, low + 0.2, unit, 0.1, display.show(unit, Kind.LENGTH, 1)
        )
        labels: list[Label] = []
        lines: list[list[Place]] = [
            [here, (rig.haul_directional.x, rig.haul_directional.z - place.z)]
        ]
        if result.method is not Method.ATTENDANT:
            lines.append([here, (rig.hub.x, rig.hub.z - place.z)])
        arrows = self._draw_arrows(result, look, labels, lines)
        if look.numbers and held.reach is Reach.HELD:
            labels = [*self._draw_angles(result, display, arrows), *labels]
        else:
            self._hide_angles()
        boxes = [(place.x - HALF_WIDTH, -REACH_DOWN, place.x + HALF_WIDTH, -0.1)]
        if result.method is Method.ATTENDANT:
            boxes.append(self._draw_attendant(result, labels))
        self._labels.write(labels, lines, boxes)
        self._notice.say("" if result.reliable or not look.numbers else "No numbers: see right.")

    def _scene(self, result: ThreeWays) -> None:
        place, rig, method = result.place, result.rig, result.method
        z = place.z
        low, high = self._axes.get_ylim()
        top = min(EDGE - z, high + 1)
        self._rock.place((-9, low - 1), (0, low - 1), (0, top), (-9, top))
        self._ground.place(
            *((x, level - z) for x, level in _ground(rig.hub)), (90, low - 9), (0, low - 9)
        )
        self._at_edge.place(-0.75, EDGE - z)
        self._at_foot.place(_BYSTANDER, _level_at(rig.hub, _BYSTANDER) - z)
        here = (place.x, 0.0)
        haul, track = ((p.x, p.z - z) for p in (rig.haul_directional, result.line_start))
        self._frame.place(EDGE - z, haul, track)
        self._haul.place(here, haul)
        self._upper.hide()
        if method is Method.TRACK:
            aside = _aside(result)
            end = track + aside if result.one_directional else track
            self._upper.place(tuple(here + aside), tuple(end))
        if method is Method.ATTENDANT:
            self._ground_leg.hide()
            self._limit.hide()
        else:
            self._ground_leg.restyle(line_stroke(method))
            self._ground_leg.place(here, (rig.hub.x, rig.hub.z - z))
            self._limit.place(track, (rig.hub.x, rig.hub.z - z))
            self._attendant.hide()
            self._short.hide()
        self._litter.place(*here)

    def _hide_angles(self) -> None:
        for arc in self._arcs:
            arc.hide()
        self._level.hide()

    def _draw_angles(
        self, result: ThreeWays, display: Display, arrows: dict[str, float]
    ) -> list[Label]:
        """``arrows`` are the lengths of the drawn arrows (m) by name; the arcs keep off heads."""
        held, here = result.held, (result.place.x, 0.0)
        self._hide_angles()
        up, radius = math.pi - held.haul_elevation, _clear_of(arrows.get("haul"), 0.8)
        self._level.place((here[0] - radius - 0.4, 0.0), (here[0] - 0.1, 0.0))
        self._arcs[0].sweep(here, radius, up, math.pi)
        above = _angle_label(display, held.haul_elevation, here, radius, (up + math.pi) / 2)
        if result.method is Method.ATTENDANT:
            return [above]
        name = pulls_on_litter(result.load, held)[1][0]
        down, radius_down = -held.ground_depression, _clear_of(arrows.get(name), 1.35)
        self._level.place((here[0] - radius - 0.4, 0.0), (here[0] + radius_down + 0.4, 0.0))
        self._arcs[1].sweep(here, radius_down, down, 0.0)
        return [above, _angle_label(display, held.ground_depression, here, radius_down, down / 2)]

    def _draw_attendant(self, result: ThreeWays, labels: list[Label]) -> Box:
        """The attendant at the inner rail; gives the place that they take up."""
        feet, level, turn = _attendant_stance(result.place.x)
        self._attendant.place(feet, level, turn)
        self._short.hide()
        if not result.legs_reach:
            self._short.place((0.0, level), (feet, level))
            words = "legs do not reach"
            labels.append(Label(words, (feet / 2, level), THIN.color, (0, 1)))
        side = _room_to_rock(result.place.x)
        return (feet, level, side, -BRIDLE)

    def _draw_arrows(
        self, result: ThreeWays, look: Look, labels: list[Label], lines: list[list[Place]]
    ) -> dict[str, float]:
        """Draw the forces; gives how far the head of each is from the litter (m), by name."""
        for arrow in self._arrows:
            arrow.hide()
        self._force_bar.hide()
        if not (look.forces and result.reliable):
            return {}
        pulls = pulls_on_litter(result.load, result.held)
        per_metre = stepped(result.largest / _ARROW_ROOM)
        lengths = {name: size / per_metre for name, size, _, _ in pulls}
        here = np.array([result.place.x, 0.0])
        for arrow, (name, _, direction, stroke) in zip(self._arrows, pulls, strict=False):
            arrow.restyle(stroke)
            reach = np.array(direction) * lengths[name]
            begins = here
            if name == "track, upper leg":
                begins = here + _aside(result) + _staggered(lengths) * np.array(direction)
            tip = begins + reach
            arrow.place(tuple(begins), tuple(tip))
            pixels = math.hypot(*reach) * self._axes.bbox.width / (_NEAR_RIGHT - _NEAR_LEFT)
            if pixels < _LABELLED_FROM:  # the polygon names it
                continue
            lines.append([tuple(begins), tuple(tip)])
            outward = _side(name, direction, result.method)
            labels.append(Label(name, tuple(tip - 0.3 * reach), stroke.color, outward, True))
        amount, words = neat_force(per_metre * 1.3, look.display)
        low = self._axes.get_ylim()[0]
        self._force_bar.place(_NEAR_RIGHT - 3.3, low + 0.2, amount / per_metre, 0.1, words)
        return lengths


def _clear_of(arrow: float | None, usual: float) -> float:
    """The radius (m) of an arc on whose line an arrow of length ``arrow`` has its head."""
    return usual if arrow is None or abs(arrow - usual) > 0.4 else arrow + 0.4


def _staggered(lengths: dict[str, float]) -> float:
    """How far up its line (m) the upper leg's arrow begins, to keep its head off the haul's."""
    apart = lengths["haul"] - lengths["track, upper leg"]
    return 0.6 if abs(apart) < 0.5 else 0.0


def _aside(result: ThreeWays) -> Any:
    """By how much the track's upper leg is drawn outside a haul line that it would lie upon."""
    if result.held.haul_elevation is None:
        return np.zeros(2)
    up = result.held.haul_elevation
    return 0.18 * np.array([math.sin(up), math.cos(up)])


def _attendant_stance(offset: float) -> tuple[float, float, float]:
    """Feet (x, z relative to the attachment point) and turn of an attendant at the inner rail.

    Feet on the rock where the legs reach it, else as near to it as they reach.
    """
    side = _room_to_rock(offset)
    spread = min(max(side - 0.1, 0.0), LEG_REACH - 0.1)
    tilt = math.acos(spread / _TALL_AS)
    return side - 0.1 - spread, -BRIDLE - 0.1 - _TALL_AS * math.sin(tilt), tilt - math.pi / 2


def _side(name: str, direction: Place, method: Method) -> Place:
    """Where a label beside an arrow would rather stand: where the other arrows are not."""
    x, z = direction
    if name == "weight":
        return (1.0, 0.0) if method is Method.ATTENDANT else (-1.0, 0.0)
    if name == "haul" and method is Method.TRACK:
        return (-z, x)
    if x > 0:  # below the line to the hub, or beside the push
        return (0.3, -1.0) if method is not Method.ATTENDANT else (0.3, 1.0)
    return (z, -x)


def _angle_label(
    display: Display, angle: float, centre: Place, radius: float, middle: float
) -> Label:
    out = (math.cos(middle), math.sin(middle))
    at = (centre[0] + radius * out[0], centre[1] + radius * out[1])
    return Label(say(display, angle, Kind.ANGLE), at, THIN.color, out)


class _Whole:
    """The whole cross-section, true to scale, with the hub."""

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.axes(52, 40, 450, 212)
        axes.set_xlim(-5, 84)
        axes.set_ylim(-4, -4 + 89 * 212 / 450)
        axes.set_title("The whole raise, true to scale", fontsize=10.5, loc="left")
        self._numbers = LengthAxes(
            canvas,
            axes,
            LengthAxis("out from the wall", 84.0, every(20, 50)),
            LengthAxis("height", 38.0, every(10, 20)),
        )
        axes.fill([-9, 0, 0, -9], [-9, -9, EDGE, EDGE], fc=ROCK_FACE, ec=ROCK_EDGE, lw=1.2)
        self._ground = Area(canvas, axes, GROUND_FACE, zorder=1)
        self._frame = Frame(canvas, axes)
        self._haul = Rope(canvas, axes, HAUL)
        self._line = Rope(canvas, axes, TRACK)
        self._limit = Rope(canvas, axes, LIMIT)
        self._litter = Dot(canvas, axes)
        self._hub = Hub(canvas, axes)
        self._labels = Labels(canvas, axes, 4, 9)

    def update(self, result: ThreeWays, look: Look) -> None:
        """Follow ``result``."""
        rig, place, method = result.rig, result.place, result.method
        self._numbers.follow(look.display)
        self._ground.place(*_ground(rig.hub), (90, -9), (0, -9))
        here = (place.x, place.z)
        haul, track = ((p.x, p.z) for p in (rig.haul_directional, result.line_start))
        hub = (rig.hub.x, rig.hub.z)
        self._frame.place(EDGE, haul, track)
        self._haul.place(here, haul)
        self._line.restyle(line_stroke(method))
        self._litter.place(*here)
        labels = [Label("litter", here, towards=(0.6, -1))]
        lines = [[here, haul], [haul, hub]]
        if method is Method.ATTENDANT:
            for unused in (self._line, self._limit, self._hub):
                unused.hide()
        else:
            self._hub.place(*hub)
            labels.append(Label("hub", hub, towards=(0.3, 1)))
            self._line.place(*([track] if method is Method.TRACK else []), here, hub)
            self._limit.place(track, hub)
            lines.append([here, hub])
            at = (track[0] + 0.55 * (hub[0] - track[0]), track[1] + 0.55 * (hub[1] - track[1]))
            labels.append(Label("straight line: no tension reaches it", at, THIN.color, (1, 1)))
        self._labels.write(labels, lines, [(-9, -9, 0, EDGE)])


def _instead_of_forces(result: ThreeWays, look: Look) -> str:
    """Why there is no polygon; nothing if there is one."""
    if not look.numbers:
        return LOCKED
    if not result.held.reach.possible:
        return str(result.held.reach.sentence)
    if result.sensitive:
        return too_sensitive_words(look.display)
    return "" if look.forces else "Forces are hidden: tick “Show the forces on the litter”."


def _compared(result: ThreeWays) -> list[Pull]:
    """The tag line's forces at the same place, beside an attendant's, unless they are too large."""
    tag = result.with_tag
    if result.method is not Method.ATTENDANT or tag.reach is not Reach.HELD:
        return []
    return [] if tag.line_tension > 4 * result.load else pulls_on_litter(result.load, tag)


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Choice(
        "method",
        "Held off by",
        tuple((m.value, _NAMES[m]) for m in Method),
        Method.TAG.value,
    ),
    Control("mass", "Mass that hangs", Kind.MASS, 110, 290, 5, 200),
    Control("offset", "Litter, out from the wall", Kind.LENGTH, 0.4, 6, 0.1, 2.5),
    Control("height", "Litter, height", Kind.LENGTH, 1, 31, 0.5, 27),
    Control("directional_x", "Haul directional, out", Kind.LENGTH, 0, 1.5, 0.1, 0.3),
    Control("directional_z", "Haul directional, height", Kind.LENGTH, 31, 35, 0.25, 32),
    Control("track_extra", "Track directional, above it", Kind.LENGTH, 0, 2, 0.25, 0),
    Control("hub_x", "Hub, out from the wall", Kind.LENGTH, 15, 80, 1, 40),
    Control("hub_z", "Hub, height", Kind.LENGTH, -2, 20, 0.5, 0.5),
)


def _outcome(display: Display) -> Outcome:
    """Compare tag line and track line at the start of the figure."""
    start = {control.key: control.default for control in CONTROLS}
    tag, track = (compute(start | {"method": m.value}).held for m in (Method.TAG, Method.TRACK))
    change = track.line_tension - tag.line_tension
    same = abs(change) < 1e-6 * tag.line_tension
    show = _shows(display, Kind.FORCE)
    return Outcome(
        right=1 if same else (0 if change < 0 else 2),
        sentence=(
            f"Line to the hub: {show(tag.line_tension)} as a tag line, {show(track.line_tension)} "
            f"as a track line. Haul line: {show(tag.haul_tension)} and "
            f"{show(track.haul_tension)}."
        ),
    )


def _idle(values: Values) -> dict[str, str]:
    """What the chosen method does without."""
    method = Method(values["method"])
    idle = {}
    if method is not Method.TRACK:
        idle["track_extra"] = "Only a track line has one: choose “Track line” above."
    if method is Method.ATTENDANT:
        for key in ("hub_x", "hub_z"):
            idle[key] = "An attendant needs no hub: choose a line above."
    return idle


THREE_WAYS = Figure(
    key="three-ways",
    title="One triangle, three labels",
    alternative=(
        "Cross-section of a litter held off a rock wall, and the closed polygon of the forces on it"
    ),
    prediction=Prediction(
        question=(
            "a tag line holds the litter off. You replace it by a track line from the haul "
            "directional, past the litter, to the same hub; the litter stays where it is. The "
            "tension in the line to the hub …"
        ),
        choices=("falls", "stays the same", "rises"),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=ThreeWaysPicture,
    summary=summary,
    cautions=(
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
        cautions.ATTENDANT_LIMITS,
        *cautions.EVERY_RESULT,
    ),
    idle=_idle,
)
