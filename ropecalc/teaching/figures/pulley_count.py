"""The advantage of a pulley system, found twice: by counting tensions and by measuring travel.

Above the system with the tension of every strand, in multiples of the hand's pull; below the same
system after the load has risen a step, with how far the hand went. Both ways must agree.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from ropecalc import cautions
from ropecalc.mechanics.pulleys import (
    Role,
    System,
    Travel,
    common_system,
    count_tensions,
    travel,
)
from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.canvas import INK, Canvas
from ropecalc.teaching.drawing import (
    FAINT,
    HAUL,
    PUSH,
    WEIGHT,
    Arrow,
    Box,
    Label,
    Labels,
    Place,
    Rope,
    ScaleBar,
    Stroke,
)
from ropecalc.teaching.figures.free_body import neat_force
from ropecalc.teaching.figures.rope_diagram import (
    Layout,
    RopeDiagram,
    View,
    body_labels,
    lay_out,
    load_place,
    obstacles,
    stations_after,
    strand_middle,
)
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import Choice, Figure, Look, Outcome, Prediction, Table, Values
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind

_THROW, _GAP = 2.6, 1.0
_TO_EDGE = 2.7
"""From the last thing on the cliff top to the pulley at the edge (m)."""
_HANGS = 0.75
"""How far the litter hangs below that pulley at first (m)."""
MOST_RISE = 0.5
_ANCHOR = Stroke("#7a2e8e", 2.6)


@dataclass(frozen=True)
class Rigged:
    """A system, what each strand carries in multiples of the hand's pull, and how it moves.

    ``anchors`` are the pulls on each anchor in the same multiples, positive towards the load.
    """

    system: System
    layout: Layout
    travel: Travel
    multiples: tuple[int, ...]
    anchors: dict[str, int]
    edge: float

    @property
    def advantage(self) -> int:
        """Load over hand's pull, from the balance of the load's strand."""
        at_load = self.system.at(self.system.load.name)
        return sum(
            self.multiples[s.index] for a in at_load for s in (a.before, a.after) if s is not None
        )


@dataclass(frozen=True)
class Count:
    """One setting: what is rigged, its load (N) and a step of the load (m).

    ``hand_pull`` in N; ``hand_travel`` in m for the step.
    """

    name: str
    redirect: bool
    rigged: Rigged
    mass: float
    load: float
    rise: float
    hand_pull: float
    hand_travel: float

    @property
    def by_travel(self) -> float:
        """The advantage as the hand's travel over the load's."""
        return self.hand_travel / self.rise


@lru_cache(maxsize=64)
def rigged(name: str, redirect: bool) -> Rigged:
    """Count ``name`` without friction, and lay it out."""
    bare = common_system(name, redirect=redirect, throw=_THROW, gap=_GAP)
    reach = [b.station for b in bare.bodies if b.role is not Role.LOAD]
    moved = stations_after(bare, travel(bare), MOST_RISE)[bare.hand.name]
    edge = max(*reach, moved - 0.4, _THROW) + _TO_EDGE
    system = _stepped_aside(
        common_system(
            name, redirect=redirect, throw=_THROW, gap=_GAP, height=edge + _HANGS - _THROW
        )
    )
    counted = count_tensions(system, "hauling")
    free = {counted.symbols[e]: 1 for e in system.efficiencies}
    multiples = tuple(int(t.subs(free)) for t in counted.tensions)
    anchors = {
        b.name: sum(system.pull(s, b.name) * multiples[s.index] for s in system.strands)
        for b in system.bodies
        if b.role is Role.ANCHOR
    }
    return Rigged(system, lay_out(system), counted.travel, multiples, anchors, edge)


def _stepped_aside(system: System) -> System:
    """The same system; a hand that would stand under a traveller stands beside it."""
    stations = {b.station for b in system.bodies if b is not system.hand}
    if system.hand.station not in stations:
        return system
    hand = replace(system.hand, station=system.hand.station + 0.5)
    others = tuple(b for b in system.bodies if b is not system.hand)
    return replace(system, bodies=(*others, hand))


def compute(values: Values) -> Count:
    """Count one setting of the controls (SI)."""
    redirect = values["redirect"] == "on"
    made = rigged(values["system"], redirect)
    load = weight(mass=values["mass"])
    return Count(
        name=values["system"],
        redirect=redirect,
        rigged=made,
        mass=values["mass"],
        load=load,
        rise=values["rise"],
        hand_pull=load / made.advantage,
        hand_travel=float(made.travel.ratio) * values["rise"],
    )


# --- in words ---------------------------------------------------------------------------------


def summary(result: Count, display: Display) -> str:
    """Both counts and the anchors in plain sentences."""
    made = result.rigged
    redirect = "with a redirect" if result.redirect else "without a redirect"
    pulls = ", ".join(
        f"{name} {say(display, abs(n) * result.hand_pull, Kind.FORCE)}"
        for name, n in made.anchors.items()
    )
    held = f" Pull on the anchors: {pulls}." if pulls else " No anchor holds anything."
    return (
        f"{result.name} {redirect}, {say(display, result.mass, Kind.MASS)} of load, which weighs "
        f"{say(display, result.load, Kind.FORCE)}. By tensions: the load's strand carries "
        f"{made.advantage} times the hand's pull, so the hand pulls "
        f"{say(display, result.hand_pull, Kind.FORCE)} without friction. By travel: while the load "
        f"rises {say(display, result.rise, Kind.LENGTH)}, "
        f"{say(display, result.hand_travel, Kind.LENGTH)} of rope come through the hand, "
        f"{round(result.by_travel)} times as much.{held}"
    )


def table(result: Count, display: Display) -> Table:
    """Every strand and every anchor."""
    made = result.rigged
    rows: list[tuple[str, ...]] = [
        ("strand or anchor", "times the hand's pull", "force", "in this step")
    ]
    for strand, multiple, growth in zip(
        made.system.strands, made.multiples, made.travel.growth, strict=True
    ):
        change = float(growth) * result.rise
        moved = "stays as long"
        if change:
            longer = "longer" if change > 0 else "shorter"
            moved = f"{say(display, abs(change), Kind.LENGTH)} {longer}"
        if strand is made.system.hand_strand:
            moved = f"{say(display, result.hand_travel, Kind.LENGTH)} through the hand"
        force = say(display, multiple * result.hand_pull, Kind.FORCE)
        rows.append((strand.name, str(multiple), force, moved))
    for name, pull in made.anchors.items():
        force = say(display, abs(pull) * result.hand_pull, Kind.FORCE)
        rows.append((f"pull on {name}", str(abs(pull)), force, "stays"))
    return tuple(rows)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 676
_WIDE, _TALL = 908, 292
_LANE = 27  # pixels between strands
_ABOVE = 72  # pixels above the first lane, for an anchor's arrow and names
_GROUND = 1.5  # m from the hand's strand to the lower end of the view
_LITTER = _HANGS + 1.5  # m from the load's strand to the lower end of the view
_MOST_SCALE = 84.0  # pixels a metre
_LONGEST = 2.3  # m, the arrow of the largest force


class PulleyCountPicture:
    """Two diagrams, one above the other, to one scale."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._tensions = _Tensions(self.canvas)
        self._travelled = _Travelled(self.canvas)

    def update(self, result: Count, look: Look) -> None:
        """Follow ``result``."""
        self._tensions.update(result, look)
        self._travelled.update(result, look)


class _Half:
    """Axes with one diagram, in metres along the ropes."""

    def __init__(self, canvas: Canvas, bottom: float, title: str) -> None:
        self.axes = canvas.blank(16, bottom, _WIDE, _TALL, title)
        self.diagram = RopeDiagram(canvas, self.axes)
        self.labels = Labels(canvas, self.axes, 24, 9)

    def look_at(self, result: Count) -> View:
        """Set the limits so that the system fits before and after the largest step."""
        made = result.rigged
        stations = {b.name: b.station for b in made.system.bodies}
        moved = stations_after(made.system, made.travel, MOST_RISE)
        reach = [v for s in (stations, moved) for n, v in s.items() if n != made.system.load.name]
        tips = [stations[name] + tip for name, _, tip in _pulls_on_free_parts(made)]
        left, right = min(*(v - 0.8 for v in reach), *(v - 0.2 for v in tips)), made.edge + 1.9
        layout, free = made.layout, _TALL - _ABOVE
        brow = layout.bodies[made.system.load.name][0]
        scale = min(
            _WIDE / (right - left),
            (free - _LANE * layout.hand) / _GROUND,
            (free - _LANE * brow) / _LITTER,
            _MOST_SCALE,
        )
        view = View(layout, _LANE / scale, made.edge)
        spare = _WIDE / scale - (right - left)
        self.axes.set_xlim(left - spare / 2, right + spare / 2)
        low = min(view.ground + 1.0 - _GROUND, view.brow - _LITTER)
        slack = (_ABOVE - low * scale) / _TALL  # the share of the axes' height that is needed
        low -= 0.4 * (1 - slack) * _TALL / scale
        self.axes.set_ylim(low, low + _TALL / scale)
        return view


def _metre(made: Rigged) -> float:
    """Metres of arrow for the hand's pull once."""
    return _LONGEST / max(*made.multiples, *map(abs, made.anchors.values()), 1)


def _pulls_on_free_parts(made: Rigged) -> list[tuple[str, int, float]]:
    """Each pull on a part that moves with the load: the part, its strand, the arrow's reach (m)."""
    system = made.system
    return [
        (body.name, strand.index, way * _metre(made) * made.multiples[strand.index])
        for body in system.free_bodies
        if body is not system.load
        for strand in system.strands
        if (way := system.pull(strand, body.name))
    ]


def _body_boxes(view: View, stations: dict[str, float], system: System) -> list[Box]:
    """What labels must not cover: litter, person, wheels."""
    x, z = load_place(view, stations)
    hand = stations[system.hand.name]
    feet = view.z(view.layout.hand) - 1.0
    half = 0.6 * view.gap
    wheels = [
        (stations[s.visit.body], view.z(lane))
        for s, lane in zip(system.sheaves, view.layout.sheaves, strict=True)
    ]
    return [
        (x - 0.3, z - 1.24, x + 0.3, z),
        (hand - 0.3, feet, hand + 0.3, feet + 1.75),
        *((x - half, z - half, x + half, z + half) for x, z in wheels),
    ]


class _Tensions(_Half):
    """The first count: every strand's tension, and the forces on the parts that move."""

    def __init__(self, canvas: Canvas) -> None:
        super().__init__(
            canvas, 358, "First count: tensions, as multiples of the hand's pull (no friction)"
        )
        self._arrows = [Arrow(canvas, self.axes, HAUL, 7) for _ in range(24)]
        self._pulls = [Arrow(canvas, self.axes, _ANCHOR, 7) for _ in range(3)]
        self._bar = ScaleBar(canvas, self.axes)

    def update(self, result: Count, look: Look) -> None:
        """Follow ``result``."""
        view, made = self.look_at(result), result.rigged
        system = made.system
        stations = {b.name: b.station for b in system.bodies}
        self.diagram.place(view, stations)
        for arrow in (*self._arrows, *self._pulls):
            arrow.hide()
        self._bar.hide()
        labels = body_labels(view, stations)
        lines = obstacles(view, stations)
        boxes = _body_boxes(view, stations, system)
        if look.numbers:
            labels = [*self._multiples(view, stations, made), *labels]
            labels += self._named(view, stations, result, look.display)
            if look.forces:
                labels += self._forces(view, stations, result, look.display, lines)
        else:
            labels += [
                Label("load", load_place(view, stations), INK, (1, 0)),
                Label("hand", _feet(view, stations, system), INK, (0, -1)),
            ]
        self.labels.write(labels, lines, boxes)

    def _multiples(self, view: View, stations: dict[str, float], made: Rigged) -> list[Label]:
        return [
            Label(f"{n}×", strand_middle(view, stations, i), INK, (0, 1), True)
            for i, n in enumerate(made.multiples)
        ]

    def _named(
        self, view: View, stations: dict[str, float], result: Count, display: Display
    ) -> list[Label]:
        load = say(display, result.load, Kind.FORCE)
        pull = say(display, result.hand_pull, Kind.FORCE)
        x, z = load_place(view, stations)
        return [
            Label(f"load\n{load}", (x + 0.3, z - 1.1), WEIGHT.color, (1, 0), True),
            Label(
                f"hand pulls {pull}",
                _feet(view, stations, result.rigged.system),
                HAUL.color,
                (0, -1),
                True,
            ),
        ]

    def _forces(
        self,
        view: View,
        stations: dict[str, float],
        result: Count,
        display: Display,
        lines: list[list[Place]],
    ) -> list[Label]:
        """Arrows on every part that moves, and one at each anchor."""
        made = result.rigged
        metre = _metre(made)
        for arrow, (name, strand, reach) in zip(
            self._arrows, _pulls_on_free_parts(made), strict=False
        ):
            start = (stations[name], view.z(view.layout.strands[strand]))
            arrow.restyle(PUSH)
            arrow.place(start, (start[0] + reach, start[1]))
        labels = []
        for arrow, (name, pull) in zip(self._pulls, made.anchors.items(), strict=False):
            start = (stations[name], view.z(view.layout.top_lane(name) - 1.25))
            end = (start[0] + metre * pull, start[1])
            arrow.place(start, end)
            lines.append([start, end])
            words = f"on {name}: {abs(pull)}×"
            middle = (start[0] + 0.5 * (end[0] - start[0]), start[1])
            labels.append(Label(words, middle, _ANCHOR.color, (0, 1), True))
        per_metre = result.hand_pull / metre
        amount, words = neat_force(per_metre * 1.6, display)
        left = self.axes.get_xlim()[0] + 0.25
        low = self.axes.get_ylim()[0] + 0.12
        self._bar.place(left, low, amount / per_metre, 0.08, words)
        lines.append([(left, low + 0.3), (left + amount / per_metre, low + 0.3)])  # its words
        return labels


def _feet(view: View, stations: dict[str, float], system: System) -> Place:
    return (stations[system.hand.name], view.z(view.layout.hand) - 1.0)


class _Travelled(_Half):
    """The second count: the system a step later."""

    def __init__(self, canvas: Canvas) -> None:
        super().__init__(
            canvas, 30, "Second count: the same system after the step, and how far it took the hand"
        )
        self._ticks = [Rope(canvas, self.axes, FAINT) for _ in range(2)]
        self._hand = Arrow(canvas, self.axes, HAUL, 7)
        self._load = Arrow(canvas, self.axes, WEIGHT, 7)

    def update(self, result: Count, look: Look) -> None:
        """Follow ``result``."""
        view, made = self.look_at(result), result.rigged
        system = made.system
        first = {b.name: b.station for b in system.bodies}
        stations = stations_after(system, made.travel, result.rise)
        self.diagram.place(view, stations)
        lines = obstacles(view, stations)
        boxes = _body_boxes(view, stations, system)
        labels = body_labels(view, stations)
        was, now = _feet(view, first, system), _feet(view, stations, system)
        level = view.z(view.layout.hand) - 0.3
        self._hand.place((was[0], level), (now[0], level))
        for tick, x in zip(self._ticks, (was[0], now[0]), strict=True):
            tick.place((x, level - 0.15), (x, view.z(view.layout.hand)))
        old, new = load_place(view, first), load_place(view, stations)
        beside = new[0] + 0.55
        self._load.place((beside, old[1] - 1.0), (beside, new[1] - 1.0))
        lines.append([(beside, old[1] - 1.0), (beside, new[1] - 1.0)])
        lines.append([(was[0], level), (now[0], level)])
        display = look.display
        if look.numbers:
            hand = say(display, result.hand_travel, Kind.LENGTH)
            rose = say(display, result.rise, Kind.LENGTH)
            middle = ((was[0] + now[0]) / 2, level)
            labels.append(Label(f"hand went {hand}", middle, HAUL.color, (0, -1), True))
            labels.append(Label(f"rose {rose}", (beside, new[1] - 1.0), WEIGHT.color, (0, 1), True))
        else:
            labels.append(Label("load", new, INK, (1, 0)))
        self.labels.write(labels, lines, boxes)


# --- the figure -------------------------------------------------------------------------------

SYSTEMS = (
    ("1:1", "1:1, straight pull"),
    ("2:1", "2:1"),
    ("3:1", "3:1"),
    ("4:1", "4:1, simple"),
    ("5:1", "5:1, simple"),
    ("piggy-back 4:1", "4:1, a 2:1 on a 2:1"),
    ("6:1", "6:1, a 2:1 on a 3:1"),
    ("3:1 on 2:1", "6:1, a 3:1 on a 2:1"),
    ("9:1", "9:1, a 3:1 on a 3:1"),
    ("complex 5:1", "5:1, complex"),
)
CONTROLS = (
    Choice("system", "System", SYSTEMS, "3:1"),
    Choice("redirect", "Redirect at the end", (("off", "no"), ("on", "yes")), "off"),
    Control("mass", "Mass that hangs", Kind.MASS, 110, 290, 5, 200),
    Control("rise", "Step: the load rises", Kind.LENGTH, 0.1, MOST_RISE, 0.05, 0.3),
)


def _outcome(display: Display) -> Outcome:
    """Compare a 3:1 with and without a redirect."""
    start = {control.key: control.default for control in CONTROLS}
    plain, turned = (compute(start | {"redirect": on}) for on in ("off", "on"))
    anchor = [abs(c.rigged.anchors["anchor"]) * c.hand_pull for c in (plain, turned)]
    if turned.rigged.advantage != plain.rigged.advantage:
        right = 0
    else:
        right = 1 if anchor[1] > anchor[0] else 2
    return Outcome(
        right=right,
        sentence=(
            f"The hand pulls {say(display, plain.hand_pull, Kind.FORCE)} without the redirect and "
            f"{say(display, turned.hand_pull, Kind.FORCE)} with it. The pull on the anchor goes "
            f"from {say(display, anchor[0], Kind.FORCE)} to "
            f"{say(display, anchor[1], Kind.FORCE)}."
        ),
    )


PULLEY_COUNT = Figure(
    key="pulley-count",
    title="Count it twice",
    alternative=(
        "A pulley system on a cliff top with the tension of every strand, and below it the same "
        "system after the load has risen a step"
    ),
    prediction=Prediction(
        question=(
            "a 3:1 is pulled away from the edge. You turn its haul strand round one more pulley at "
            "the same anchor, so that the team can pull towards the edge. What changes?"
        ),
        choices=(
            "it becomes a 4:1",
            "only the anchor feels more",
            "nothing at all",
        ),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=PulleyCountPicture,
    summary=summary,
    table=table,
    cautions=(
        "More advantage hides a snag better: the same hands pull harder into it.",
        *cautions.EVERY_RESULT,
    ),
    forces_label="Show the forces on every part that moves, and on the anchors",
    reading=(
        "Along the ropes everything is to scale; across them the strands are spread so that each "
        "can be seen. A rope keeps its tension over every pulley; yellow blocks are rope grabs.",
    ),
)
