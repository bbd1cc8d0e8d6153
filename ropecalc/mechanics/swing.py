"""What happens when something lets go: swing to the wall, arrest by the belay, loss of a line.

::

       D                     A litter held q off plumb on a haul leg of length l_D falls h_f while
       | \\                   it swings to plumb. What it had in height it has in speed there, and
       |  \\  l_D             the haul line has to bend its path as well as carry it.
       |   \\
       |    P  - - -  h_f
       P' - - - - - -

These results take the worst that their assumptions allow: no friction, no device that slips,
nothing that takes energy away. Use them to compare plans, not to foretell an injury.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import (
    NOT_NEGATIVE,
    Argument,
    Condition,
    Domain,
    DomainError,
    Explanation,
    Range,
    Step,
    Variable,
    derive,
)
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import tensioner
from ropecalc.mechanics.holding import Method, Reach, Rig, hold
from ropecalc.mechanics.manners import account, checked, named, one_case, said, single
from ropecalc.mechanics.roots import bisected
from ropecalc.mechanics.slip import HAUL_KEEPS, Arc, Rest, Turn
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS
from ropecalc.mechanics.stretch import BOTH_BOUNDS, ELASTIC, FAST
from ropecalc.mechanics.track_path import KEEPS_LENGTH, OVERSHOOT, TrackPath
from ropecalc.units import STANDARD_GRAVITY, Display, Kind, Rounding

MOVING = (
    "Beyond the static model in one respect: things move here. Rock shape, spin and people are "
    "left out. Use it to compare plans, not to foretell an injury."
)
_SWING = (MOVING, cautions.REHEARSE, cautions.STATIC, cautions.AUTHORITY)
_STRETCHING = (ELASTIC, MOVING, cautions.REHEARSE, cautions.STRETCHING, cautions.AUTHORITY)
_ARREST = (
    "A device that slips or a rope that runs over an edge makes the peak smaller but the fall "
    "longer. Strength of anchors and people is left out.",
    FAST,
    *_STRETCHING,
)
_FREE = (
    "All lines that hold the litter off go slack at once; it starts from rest.",
    "The haul line keeps its length and nothing rubs.",
    "The litter swings as far as the plumb line below the haul directional.",
)
SWING_SPEED = Variable(
    "swing_speed", r"v_\mathrm{plumb}", "speed of the litter when it is plumb", Kind.SPEED,
    NOT_NEGATIVE, Range(0.5, 8, 3),
)  # fmt: skip
INDEPENDENT_LINES = Variable(
    "independent_lines", r"n_\mathrm{ind}", "number of track lines, each with its own tensioner",
    Kind.RATIO, Domain(2.0, 20.0), Range(2, 4, 3),
)  # fmt: skip
LINE_BEFORE = named(
    q.TRACK_TENSION, "line_before", "tension of each line before", r"T_\mathrm{before}"
)
LINE_LEFT = named(
    q.TRACK_TENSION, "line_left", "tension of each line that is left", r"T_\mathrm{left}"
)
_STEPS_DOWN = 4001
_STEPS_OF_SLACK = 101
_REACHES = Condition(
    "The haul leg must be longer than the litter's distance off plumb, and fall to the litter by "
    f"more than {FLAT_WORDS}; a level line lifts nothing.",
    "Give a longer haul leg or a smaller distance.",
    lambda v: v["off_plumb"] < v["haul_leg_length"] * np.cos(FLAT),
)


@derive(
    "Swing to plumb: height fallen",
    given=(q.HAUL_LEG_LENGTH, q.OFF_PLUMB),
    between=(q.DROP,),
    result=q.FALL,
    assumptions=_FREE,
    conditions=(_REACHES,),
    cautions=_SWING,
    source="derived here from Pythagoras",
)
def swing_fall(argument: Argument) -> Step:
    """Height h_f in m that the litter loses while it swings from q m off plumb to plumb."""
    leg, off, drop, fall = argument.symbols(q.HAUL_LEG_LENGTH, q.OFF_PLUMB, q.DROP, q.FALL)
    square = argument.law("The haul leg before (Pythagoras).", leg**2, off**2 + drop**2)
    before = argument.solve(
        "So this is the height of the directional above the litter.", square, drop
    )
    lost = argument.law("At plumb the litter is a whole haul leg below it.", fall, leg - drop)
    return argument.substitute("Put the height in.", lost, before)


@derive(
    "Swing to plumb: speed",
    given=(q.HAUL_LEG_LENGTH, q.OFF_PLUMB),
    between=(q.DROP, q.FALL),
    result=SWING_SPEED,
    assumptions=_FREE,
    conditions=(_REACHES,),
    cautions=_SWING,
    source="derived here from the energy of the fall; standard gravity from NIST SP 811",
)
def swing_speed(argument: Argument) -> Step:
    """Speed in m/s of the litter when it has swung from q m off plumb to plumb."""
    speed, height = argument.symbols(SWING_SPEED, q.FALL)
    gravity = argument.sympy.Float(repr(STANDARD_GRAVITY), 8)
    fall = swing_fall.argue(argument)
    energy = argument.law(
        "What it lost in height it has in speed (energy, per mass).", speed**2 / 2, gravity * height
    )
    fast = argument.solve("Solve for the speed.", energy, speed)
    return argument.substitute("Put the height in.", fast, fall)


@derive(
    "Swing to plumb: peak of the haul tension",
    given=(q.LOAD, q.HAUL_LEG_LENGTH, q.OFF_PLUMB),
    between=(q.DROP, q.FALL),
    result=q.HAUL_TENSION,
    assumptions=_FREE,
    conditions=(_REACHES,),
    cautions=_SWING,
    source="derived here from the energy of the fall",
)
def swing_peak(argument: Argument) -> Step:
    """Haul tension in N at the bottom of the swing: from W up to 3 W."""
    load, leg, peak = argument.symbols(q.LOAD, q.HAUL_LEG_LENGTH, q.HAUL_TENSION)
    fall = swing_fall.argue(argument)
    bent = argument.law(
        "At the bottom the haul line carries the weight and bends the path. Bending it takes twice "
        "the energy of motion over the haul leg, and that energy is what the fall gave.",
        peak,
        load + 2 * load * argument.symbol(q.FALL) / leg,
    )
    put_in = argument.substitute("Put the fall in.", bent, fall)
    off, sqrt = argument.symbol(q.OFF_PLUMB), argument.sympy.sqrt
    return argument.rewrite("Gather it.", put_in, load * (3 - 2 * sqrt(leg**2 - off**2) / leg))


@derive(
    "Peak of the belay's tension when slack runs out",
    given=(q.LOAD, q.BELAY_SLACK, q.BELAY_LENGTH, q.STIFFNESS),
    between=(q.STRETCH,),
    result=q.ARREST_PEAK,
    assumptions=(
        "The load falls straight down, freely, through the slack and then on while the rope "
        "stretches.",
        "The belay rope stretches in proportion to its tension (Hooke); nothing slips or rubs.",
    ),
    cautions=_ARREST,
    source="derived here from the energy of the fall",
)
def arrest_peak(argument: Argument) -> Step:
    """Largest belay tension in N after a free fall through s_b m of slack; 2 W without slack."""
    load, slack, length, stiffness = argument.symbols(
        q.LOAD, q.BELAY_SLACK, q.BELAY_LENGTH, q.STIFFNESS
    )
    longer, peak = argument.symbols(q.STRETCH, q.ARREST_PEAK)
    sp = argument.sympy
    energy = argument.law(
        "At the lowest point all the height lost is in the stretched rope: weight times slack and "
        "stretch is half the rope's tension times its stretch.",
        load * (slack + longer),
        stiffness * longer**2 / (2 * length),
    )
    most = argument.solve("Solve for the largest stretch.", energy, longer)
    hooke = argument.law(
        "Hooke: the tension is the stiffness times the stretch per length.",
        peak,
        stiffness * longer / length,
    )
    put_in = argument.substitute("Put the largest stretch in.", hooke, most)
    return argument.rewrite(
        "Gather it: even without slack the peak is twice the weight.",
        put_in,
        load * (1 + sp.sqrt(1 + 2 * stiffness * slack / (load * length))),
    )


@derive(
    "Fall into a belay: free fall that is as fast as it gets",
    given=(q.LOAD, q.BELAY_SLACK, q.BELAY_LENGTH, q.STIFFNESS),
    between=(q.STRETCH,),
    result=q.FALL,
    assumptions=arrest_peak.assumptions,
    cautions=_ARREST,
    source="derived here from the energy of the fall",
)
def fastest_fall(argument: Argument) -> Step:
    """Height in m of a free fall at whose end the speed is the largest of a fall into the belay.

    More than the slack, because the litter still gains speed when the belay begins to stretch.
    """
    load, slack, length, stiffness = argument.symbols(
        q.LOAD, q.BELAY_SLACK, q.BELAY_LENGTH, q.STIFFNESS
    )
    longer, fall = argument.symbols(q.STRETCH, q.FALL)
    fastest = argument.law(
        "The litter gains speed as long as the belay pulls less than the weight. It is fastest "
        "where both are the same.",
        load,
        stiffness * longer / length,
    )
    there = argument.solve("This is how far the belay has stretched there.", fastest, longer)
    energy = argument.law(
        "What it lost in height up to there is in the stretched belay and in its speed: as much as "
        "a free fall from some height would give.",
        load * (slack + longer),
        stiffness * longer**2 / (2 * length) + load * fall,
    )
    put_in = argument.substitute("Put the stretch in.", energy, there)
    return argument.solve("Solve for that height.", put_in, fall)


# --- swing -----------------------------------------------------------------------------------


@dataclass(frozen=True)
class Swing:
    """A litter that swings in freely until it meets the rock, or to plumb.

    ``fall`` m lost up to there, ``speed`` m/s on meeting it; haul tension in N at the release and
    at its peak, which is at the contact.
    """

    load: Any
    haul_leg_length: Any
    off_plumb: Any
    contact: Any
    fall: Any
    speed: Any
    haul_at_release: Any
    peak: Any
    cautions: tuple[str, ...] = _SWING

    def explain(self, display: Display | None = None) -> Explanation:
        """The swing in words, for single values (not arrays)."""
        one_case(self.peak, self.speed)
        display = display or Display()
        fall = display.show(self.fall, Kind.LENGTH)
        lines = (
            said(
                "The litter starts from rest on an arc about the haul directional, "
                f"{display.show(self.off_plumb, Kind.LENGTH)} off plumb on "
                f"{display.show(self.haul_leg_length, Kind.LENGTH)} of haul line."
            ),
            said(
                f"Up to the contact it falls {fall}: as fast as if it had been dropped from that "
                f"height, {display.show(self.speed, Kind.SPEED)}.",
                r"v^2 = 2 \cdot g \cdot h_\mathrm{f}",
                law=True,
            ),
            said(
                "Whatever it was before, the haul tension is "
                f"{display.show(self.haul_at_release, Kind.FORCE)} at the release and rises to "
                f"{display.show(self.peak, Kind.FORCE)} at the contact."
            ),
        )
        return account(
            "A swing to the wall",
            lines,
            f"meets the rock as if dropped from {fall}",
            assumptions=_FREE[:2],
            cautions=self.cautions,
            source="worked out here from the energy of the fall",
        )


def swing(*, load: Any, haul_leg_length: Any, off_plumb: Any, contact: Any) -> Swing:
    """Free swing from ``off_plumb`` m to where rock is met, ``contact`` m off plumb (0: at plumb).

    ``load`` N, ``haul_leg_length`` m from directional to litter; scalars or arrays. Raises
    :class:`DomainError` where the contact is not between plumb and start, or the leg is too short.
    """
    contact_variable = named(q.SLIP, "contact", "distance off plumb at which rock is met")
    load, leg, off, contact = checked(
        (q.LOAD, load),
        (q.HAUL_LEG_LENGTH, haul_leg_length),
        (q.OFF_PLUMB, off_plumb),
        (contact_variable, contact),
    )
    if not np.all(_REACHES.holds({"off_plumb": off, "haul_leg_length": leg})):
        raise DomainError(f"{_REACHES.sentence} {_REACHES.remedy}")
    if np.any(contact >= off):
        raise DomainError(
            "The rock must be met nearer to plumb than the litter is. Change one of the two.",
            "contact",
        )
    start, end = np.sqrt(1 - (off / leg) ** 2), np.sqrt(1 - (contact / leg) ** 2)  # cosines
    fall = leg * (end - start)
    return Swing(
        load=load,
        haul_leg_length=leg,
        off_plumb=off,
        contact=contact,
        fall=_as_given(fall),
        speed=impact_speed(fall),
        haul_at_release=_as_given(load * start),
        peak=_as_given(load * (3 * end - 2 * start)),
    )


def impact_speed(fall: Any) -> Any:
    """Speed in m/s of what has lost ``fall`` m of height without friction."""
    (fall,) = checked((q.FALL, fall))
    return _as_given(np.sqrt(2 * STANDARD_GRAVITY * fall))


# --- the haul line is lost ---------------------------------------------------------------------


@dataclass(frozen=True)
class HaulLost:
    """A litter on track lines after its haul line is lost, until the belay stops it.

    ``before`` is at rest before the loss; the belay comes tight at ``x``, ``z`` (m). By the time it
    has stopped the litter for the first time, the litter has fallen ``fall`` m at most and has come
    about ``outward`` m further out. ``speed`` in m/s and the belay's ``peak`` in N are upper bounds
    on the way; ``run_on`` in m is how far the belay stretches at that peak. ``track_after`` (just
    after the loss) and ``track_peak`` in N are tensions of all track lines together, and so what
    the hub carries; the peak is an upper bound, also for track lines that stretch.
    """

    rig: Rig
    load: float
    belay_slack: float
    before: Rest
    x: float
    z: float
    fall: float
    outward: float
    speed: float
    peak: float
    run_on: float
    track_after: float
    track_peak: float
    cautions: tuple[str, ...] = (
        "The track line holds the litter out while it runs down: look at what is below and further "
        "out, not at the wall. Track lines that stretch or go slack let it come further out than "
        "given here.",
        "Counted until the belay has stopped the litter for the first time. Rebounding, it can let "
        "a track line go slack and come tight again with a snatch that is not counted.",
        cautions.COMMON_HUB,
        *_ARREST,
    )

    def explain(self, display: Display | None = None) -> Explanation:
        """The event in words."""
        display = display or Display()

        def most(value: float, kind: Kind) -> str:
            return display.show(value, kind, rounding=Rounding.UP)

        def about(value: float, kind: Kind = Kind.LENGTH) -> str:
            return display.show(value, kind)

        belay, track = most(self.peak, Kind.FORCE), most(self.track_peak, Kind.FORCE)
        fall = most(self.fall, Kind.LENGTH)
        lower, outward = about(self.before.z - self.z), about(self.x - self.before.x)
        lines = (
            said(
                "Without the haul line the track line still holds the litter out; it runs down and "
                "outward along an ellipse until the belay stops it.",
                law=True,
            ),
            said(
                "What the haul line had held across that path now hangs on the track lines and the "
                f"hub: {about(self.before.line_tension, Kind.FORCE)} before, "
                f"{most(self.track_after, Kind.FORCE)} just after, {track} at most on the way."
            ),
            said(
                f"With {about(self.belay_slack)} of slack the belay comes tight {lower} lower and "
                f"{outward} further out."
                if self.belay_slack
                else "Without slack the belay takes over at once."
            ),
            said(
                f"Until it has stopped the litter, that falls {fall} at most, at "
                f"{most(self.speed, Kind.SPEED)} at most, and comes about "
                f"{most(self.outward, Kind.LENGTH)} further out."
            ),
            said(
                f"The belay peaks at {belay} at most and stretches by "
                f"{most(self.run_on, Kind.LENGTH)}."
            ),
        )
        return account(
            "The haul line is lost",
            lines,
            f"belay: allow for {belay}; track lines and hub: allow for {track}; keep {fall} clear "
            "below the litter",
            assumptions=(
                "The belay comes from the haul directional and hangs with this slack at the start.",
                KEEPS_LENGTH,
                "Bounds: fall, speed and the belay's peak count as if it fell freely and straight "
                "down.",
                OVERSHOOT,
            ),
            cautions=self.cautions,
        )


def haul_lost(
    rig: Rig,
    load: float,
    x: float,
    z: float,
    *,
    belay_slack: float,
    belay_length: float,
    stiffness: float,
) -> HaulLost:
    """The haul line is lost while track lines hold a litter of ``load`` N at ``x``, ``z`` m.

    ``belay_slack`` m, ``belay_length`` m of belay rope that stretches and its ``stiffness`` EA in
    N. Raises :class:`DomainError` where the litter is not held, and where the slack is so long that
    the track line alone stops the litter first.
    """
    slack, length, stiffness = single(
        (q.BELAY_SLACK, belay_slack), (q.BELAY_LENGTH, belay_length), (q.STIFFNESS, stiffness)
    )
    arc, path = Arc.from_place(Method.TRACK, rig, load, x, z), TrackPath.through(rig, x, z)
    steps = np.linspace(path.start, 0.0, _STEPS_DOWN)
    stretched = arc.distance(*path.place(steps)) - arc.radius - slack
    tight = np.flatnonzero(stretched >= 0)
    held = None
    if len(tight):
        i = int(tight[0])
        angle = bisected(
            lambda a: arc.radius + slack - arc.distance(*path.place(a)),
            steps[max(i - 1, 0)],
            steps[i],
        )
        at_x, at_z = (float(v) for v in path.place(angle))
        held = hold(Method.TRACK, rig, load, at_x, at_z)
    if held is None or not Reach(held.reach).possible:
        raise DomainError(
            "With that much slack the track line alone stops the litter before the belay comes "
            "tight. Give less belay slack."
        )
    asked = {"load": load, "belay_slack": slack, "belay_length": length, "stiffness": stiffness}
    peak = arrest_peak(**asked)
    run_on = peak * length / stiffness
    tensions = _track_tensions(arc, path, steps, np.maximum(stretched, 0.0), stiffness / length)
    before = arc.at(arc.start)
    return HaulLost(
        rig=rig,
        load=load,
        belay_slack=slack,
        before=before,
        x=at_x,
        z=at_z,
        fall=slack + run_on,
        outward=float(np.max(path.place(steps[stretched <= run_on])[0])) - x,
        speed=impact_speed(fastest_fall(**asked)),
        peak=peak,
        run_on=run_on,
        track_after=float(tensions[0]),
        track_peak=2 * float(np.max(tensions)) - before.line_tension,
    )


def _track_tensions(arc: Arc, path: TrackPath, angles: Any, stretched: Any, spring: float) -> Any:
    """Track tension in N at ``angles`` down the path, from the release to where the litter stops.

    The belay is ``stretched`` (m) there and pulls with ``spring`` N per m of it.
    """
    x, z = path.place(angles)
    motion = arc.load * (arc.z - z) - 0.5 * spring * stretched**2
    moving = np.cumsum(motion[1:] < 0) == 0
    top = arc.rig.haul_directional
    belay = spring * stretched / arc.distance(x, z)
    pull = belay * (top.x - x), belay * (top.z - z)
    return path.tension(angles, arc.load, motion, pull)[np.append(True, moving)]


# --- one track line is lost ---------------------------------------------------------------------


@derive(
    "One of several independent track lines is lost",
    given=(INDEPENDENT_LINES, LINE_BEFORE),
    result=LINE_LEFT,
    assumptions=(
        "Each line has a tensioner of its own, and all carry alike.",
        "The lines are so stiff that the litter stays where it is.",
        "The litter is at rest again.",
    ),
    cautions=(
        "Lines tensioned by one rope are not independent: there, slack runs into those that are "
        "left.",
        "A loss comes on at once and the lines that are left peak higher than this; see line_lost.",
        cautions.COMMON_HUB,
        cautions.REHEARSE,
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    source="derived here from equilibrium",
)
def survivor_at_rest(argument: Argument) -> Step:
    """Tension in N of each line that is left, at rest, if the litter does not move."""
    lines, before, left = argument.symbols(INDEPENDENT_LINES, LINE_BEFORE, LINE_LEFT)
    same = argument.law(
        "The litter's place asks for the same pull as before, from one line fewer.",
        (lines - 1) * left,
        lines * before,
    )
    return argument.solve("Solve for the lines that are left.", same, left)


class Tensioning(StrEnum):
    """How the track lines get their tension."""

    SERIES = "one rope in series"
    INDEPENDENT = "a tensioner for each line"

    @classmethod
    def of(cls, value: str) -> "Tensioning":
        """The one spelled ``value``; :class:`DomainError` names the choices if none is."""
        try:
            return cls(value)
        except ValueError:
            raise DomainError(
                f"tensioning is {value!r}; it must be '{cls.SERIES}' or '{cls.INDEPENDENT}'. Say "
                "how the lines are tensioned."
            ) from None


@dataclass(frozen=True)
class LineLost:
    """A litter on track lines after one of them is lost; tensions in N, lengths in m.

    ``slack`` runs into each of the other lines. Tensions are those of the most loaded line that is
    left: ``survivor_rigid`` at ``rigid``, where the litter comes to rest if nothing stretches, and
    ``survivor_elastic`` at ``elastic``, where it does if the lines stretch. Before it rests it
    swings in as far as ``turn``. ``survivor_peak`` is the largest on the way, whatever part of the
    slack has run in when the lines come tight, and without slack however stiff they are; with slack
    stiffer lines than given peak higher. ``swing`` is the free swing to plumb, the worst if the
    others do not hold either.
    """

    tensioning: Tensioning
    lines: int
    slack: float
    before: Rest
    survivor_before: float
    survivor_rigid: float
    survivor_elastic: float
    survivor_peak: float
    rigid: Rest
    elastic: Rest
    turn: Turn
    swing: Swing
    cautions: tuple[str, ...] = (
        "Lines tensioned by one rope are not independent: they share the load but do not back each "
        "other up.",
        "Lines with a tensioner each are taken to be alike and to carry equal shares.",
        BOTH_BOUNDS,
        FAST,
        *_STRETCHING,
    )

    @property
    def inward(self) -> float:
        """The furthest movement towards the wall in m, the first swing too: for clearance."""
        return max(self.rigid.inward, self.turn.inward)

    def explain(self, display: Display | None = None) -> Explanation:
        """The event in words."""
        display = display or Display()

        def length(value: float) -> str:
            return display.show(value, Kind.LENGTH)

        def force(value: float) -> str:
            return display.show(value, Kind.FORCE)

        left = self.lines - 1
        line = "the line that is left" if left == 1 else "the most loaded of the lines left"
        allowed = display.show(self.inward, Kind.LENGTH, rounding=Rounding.UP)
        peak = display.show(self.survivor_peak, Kind.FORCE, rounding=Rounding.UP)
        turn = display.show(self.turn.inward, Kind.LENGTH, rounding=Rounding.UP)
        past = ", past plumb" if self.turn.inward > self.swing.off_plumb else ""
        stiffer = " Stiffer lines than given peak higher." if self.slack else ""
        lines = (
            said(
                f"Of {self.lines} track lines with {self.tensioning} one may carry "
                f"{force(self.survivor_before)}. One is lost; {left} "
                f"{'is' if left == 1 else 'are'} left."
            ),
            said(f"Slack that runs into each line that is left: {length(self.slack)}."),
            said(
                f"If nothing stretches the litter comes to rest {length(self.rigid.inward)} nearer "
                f"to the wall; if the lines stretch, {length(self.elastic.inward)}."
            ),
            said(
                f"At rest {line} carries {force(self.survivor_rigid)} if nothing stretches and "
                f"{force(self.survivor_elastic)} if the lines do."
            ),
            said(
                "Before it rests it swings in further, because the height it has lost is in speed: "
                f"{turn} towards the wall{past}, if no rock is met. {line.capitalize()} peaks at "
                f"{peak} on the way.{stiffer}",
                law=True,
            ),
            said(
                "If the others do not hold either, the litter swings to plumb as if dropped from "
                f"{length(self.swing.fall)}."
            ),
        )
        return account(
            "A track line is lost",
            lines,
            f"movement towards the wall: allow {allowed}; each line that is left: allow for {peak}",
            assumptions=(
                HAUL_KEEPS,
                "The line is lost and the slack runs in at once, from rest; nothing takes energy "
                "from the swing.",
                "In series, one line carries the largest share that friction at the sheaves can "
                "keep on it at rest, whichever line is lost.",
            ),
            cautions=self.cautions,
        )


def line_lost(
    rig: Rig,
    load: float,
    x: float,
    z: float,
    *,
    lines: int,
    tensioning: str,
    stiffness: float,
    play: float | None = None,
    efficiency: float | None = None,
    tie_back_slack: float | None = None,
) -> LineLost:
    """One of ``lines`` track lines that hold a litter of ``load`` N at ``x``, ``z`` m is lost.

    ``stiffness`` EA in N is that of one line. In series, ``play`` m is the distance of the lost
    line's travelling pulley from the hub, ``efficiency`` that of each sheave of the tensioner;
    ``tie_back_slack`` m is the slack in the tails where these are tied back (None: they are not).
    Raises :class:`DomainError` for values outside their domains, for a single line, and for
    ``play`` or ``efficiency`` missing in series or given without need.
    """
    if isinstance(lines, bool) or not isinstance(lines, int) or not 2 <= lines <= 20:
        raise DomainError(
            f"lines is {lines!r}; it must be a whole number from 2 to 20. With one line its loss "
            "is a free swing."
        )
    (stiffness,) = single((q.STIFFNESS, stiffness))
    how = Tensioning.of(tensioning)
    left = lines - 1
    if how is Tensioning.SERIES:
        slack = _slack_in_series(lines, play, tie_back_slack)
        most_before, most_after = _largest_shares(lines, efficiency)
    else:
        _refuse_in_vain(play=play, efficiency=efficiency, tie_back_slack=tie_back_slack)
        slack, most_before, most_after = 0.0, 1 / lines, 1 / left
    arc = Arc.from_place(Method.TRACK, rig, load, x, z)
    rigid, elastic = arc.rigid(slack), arc.elastic(slack, lines * stiffness, left * stiffness)
    whole, rest = lines * stiffness, left * stiffness
    on_the_way = arc.swung_in(np.linspace(0.0, slack, _STEPS_OF_SLACK), whole, rest)
    # without slack what is missing comes on at once: however stiff the lines, the rise is doubled
    sudden = arc.line_tension * (1 + 1 / lines)
    return LineLost(
        tensioning=how,
        lines=lines,
        slack=slack,
        before=arc.at(arc.start),
        survivor_before=arc.line_tension * most_before,
        survivor_rigid=rigid.line_tension * most_after,
        survivor_elastic=elastic.line_tension * most_after,
        survivor_peak=max(float(np.max(on_the_way.line_tension)), sudden) * most_after,
        rigid=rigid,
        elastic=elastic,
        turn=arc.swung_in(slack, whole, rest),
        swing=swing(
            load=load,
            haul_leg_length=arc.radius,
            off_plumb=x - rig.haul_directional.x,
            contact=0.0,
        ),
    )


def _refuse_in_vain(**given: float | None) -> None:
    if any(value is not None for value in given.values()):
        raise DomainError(
            f"{', '.join(given)} belong to lines in series; leave them out for lines with a "
            "tensioner each."
        )


def _slack_in_series(lines: int, play: float | None, tie_back_slack: float | None) -> float:
    if play is None:
        raise DomainError(
            "play is missing: for lines in series give the distance of the lost line's travelling "
            "pulley from the hub."
        )
    (play,) = single((q.PLAY, play))
    slack: float = tensioner.released_slack(play=play, lines=lines)
    if tie_back_slack is None:
        return slack
    (tied,) = single((named(q.SLIP, "tie_back_slack", "slack in the tied-back tails"),
                       tie_back_slack))  # fmt: skip
    return min(slack, tied)


def _largest_shares(lines: int, efficiency: float | None) -> tuple[float, float]:
    """Largest share of all lines' tension that one line can carry at rest, before and after."""
    if efficiency is None:
        raise DomainError(
            "efficiency is missing: for lines in series give that of each sheave of the tensioner; "
            "it decides how unequally the lines share."
        )
    (efficiency,) = single((q.SHEAVE_EFFICIENCY, efficiency))
    # The last line on either side carries most, and each further one the square of the efficiency
    # times the line before it. If its neighbour is lost, the sheaves there are still in between.
    worth: float = tensioner.effective_lines(efficiency=efficiency, lines=lines)
    return 1 / worth, 1 / (worth - efficiency**2)


def _as_given(value: Any) -> Any:
    return float(value) if np.ndim(value) == 0 else value
