"""Rope slips out of the line that holds a litter off: how far the litter moves in.

::

         D                    The haul line keeps its length, so the litter swings in on an arc
        /|                    about the haul directional. The line to the hub has to grow by the
       / |                    slip; near the straight line D-P-B a long way along the arc makes
      P'-P - -.               little difference to it, so a little slip moves the litter far.
                ' - B         What multiplies force multiplies slip.

First-order results are derivations; :func:`slipped` gives the places themselves, for ropes that
do not stretch and for a line that does. The haul line is taken not to stretch. At rest that lets
the litter move in a little further than a stretching one; in a jerk, less far (``HAUL_KEEPS``).
"""

from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, DomainError, Explanation, Step, derive
from ropecalc.mechanics import guiding, stretch
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.holding import Method, Reach, Rig, hold
from ropecalc.mechanics.manners import account, checked, named, one_case, said
from ropecalc.mechanics.roots import bisected
from ropecalc.mechanics.stretch import BOTH_BOUNDS, ELASTIC
from ropecalc.units import Display, Kind, Rounding

MOVES = (
    "What a slip does is worked out at rest, before and after. A sudden slip lets the litter swing "
    "further, and a snag or a jerk can start the next slip."
)
JERK = (
    "A sudden slip ends with a jerk that pulls harder than the line does at rest, and that or a "
    "snag can start the next slip."
)
_CAUTIONS = (MOVES, cautions.NEAR_DIRECTIONAL, cautions.STATIC, cautions.AUTHORITY)
_STRETCHING = (
    ELASTIC,
    BOTH_BOUNDS,
    JERK,
    cautions.NEAR_DIRECTIONAL,
    cautions.STRETCHING,
    cautions.AUTHORITY,
)
_SMALL = (
    "The slip is so small that the angles of the legs stay as they are.",
    "The haul line keeps its length.",
    "The track lines come from the same high directional as the haul line, or it is a tag line.",
)
_GIVEN = (q.SLIP, q.HAUL_ELEVATION, q.GROUND_DEPRESSION)


@derive(
    "A small slip: how far the litter moves along its arc",
    given=_GIVEN,
    result=q.ARC_MOVEMENT,
    assumptions=_SMALL,
    conditions=(guiding.LEGS_OPEN,),
    cautions=_CAUTIONS,
    source="derived here from the change of the ground leg",
)
def slip_along_arc(argument: Argument) -> Step:
    """Distance d_s in m that the litter moves along its arc when s m of rope slip out."""
    slip, up, down, moved = argument.symbols(*_GIVEN, q.ARC_MOVEMENT)
    grown = argument.law(
        "The litter moves square to the haul leg. Of that movement only the part along the ground "
        "leg makes the ground leg longer: the sine of the angle between the two legs' lines.",
        slip,
        moved * argument.sympy.sin(up - down),
    )
    return argument.solve("Solve for the movement.", grown, moved)


@derive(
    "A small slip: how far the litter moves towards the wall",
    given=_GIVEN,
    between=(q.ARC_MOVEMENT,),
    result=q.INWARD_MOVEMENT,
    assumptions=_SMALL,
    conditions=(guiding.LEGS_OPEN,),
    cautions=_CAUTIONS,
    source="derived here from the change of the ground leg",
)
def slip_inward(argument: Argument) -> Step:
    """Distance d_x in m, level, that the litter moves towards the wall when s m slip out."""
    up, moved, inward = argument.symbols(q.HAUL_ELEVATION, q.ARC_MOVEMENT, q.INWARD_MOVEMENT)
    along = slip_along_arc.argue(argument)
    level = argument.law(
        "The arc falls towards the plumb line; its level part is the sine of the haul elevation.",
        inward,
        moved * argument.sympy.sin(up),
    )
    return argument.substitute("Put the movement in.", level, along)


# --- the places themselves -------------------------------------------------------------------

_SAME_ANGLE = 1e-12
"""Angles in rad that differ by less are the same: what is left is the noise of the search."""
_NOWHERE = float(np.finfo(float).tiny)
"""Length in m of a line that has none: it has no direction, and nothing is divided by it."""


@dataclass(frozen=True)
class Rest:
    """Where the litter comes to rest (m), how far it moved (m), and the tensions there (N)."""

    x: Any
    z: Any
    along_arc: Any
    inward: Any
    haul_tension: Any
    line_tension: Any


HAUL_KEEPS = (
    "The haul line does not stretch. One that does can let a sudden swing go further: by a "
    "twentieth if it takes at least three times the force to stretch the haul leg by a metre that "
    "it takes for the track lines; by half as much again and more where it takes less."
)


@dataclass(frozen=True)
class Turn:
    """Where a swing turns back (m), how far towards the wall that is (m), and the tension (N).

    For a haul line that keeps its length; :data:`HAUL_KEEPS` says by how much one that stretches
    can go further.
    """

    x: Any
    z: Any
    inward: Any
    line_tension: Any


@dataclass(frozen=True)
class Arc:
    """The litter held at one place, and the arc about the haul directional on which it moves."""

    method: Method
    rig: Rig
    load: float
    x: float
    z: float
    line_tension: float
    haul_tension: float

    @classmethod
    def from_place(cls, method: str, rig: Rig, load: float, x: float, z: float) -> "Arc":
        """The arc through ``x``, ``z`` (m, single values) where ``method`` holds ``load`` N.

        Raises :class:`DomainError` for an attendant, who holds no line, and with the verdict's
        sentence where the litter cannot be held.
        """
        method = Method.of(method)
        if method is Method.ATTENDANT:
            raise DomainError(
                "method is an attendant, who holds no line that could slip. Choose a tag line or "
                "track lines."
            )
        held = hold(method, rig, load, x, z)
        if np.ndim(held.reach):
            raise DomainError("x or z is an array; give one place where the litter is held.")
        if held.reach is not Reach.HELD:
            raise DomainError(held.reach.sentence)
        return cls(method, rig, load, x, z, held.line_tension, held.haul_tension)

    @property
    def radius(self) -> float:
        """Length of the haul leg in m."""
        return float(self.distance(self.x, self.z))

    @property
    def start(self) -> float:
        """Angle of the haul leg from plumb in rad, before anything moves."""
        top = self.rig.haul_directional
        return float(np.arctan2(self.x - top.x, top.z - self.z))

    def distance(self, x: Any, z: Any) -> Any:
        """How far in m a place is from the haul directional."""
        top = self.rig.haul_directional
        return np.hypot(x - top.x, z - top.z)

    def place(self, angle: Any) -> tuple[Any, Any]:
        """``x`` and ``z`` in m where the haul leg is ``angle`` rad from plumb."""
        top = self.rig.haul_directional
        return top.x + self.radius * np.sin(angle), top.z - self.radius * np.cos(angle)

    def line_length(self, angle: Any) -> Any:
        """Length in m of the holding line from its directional (or the litter) to the hub."""
        return line_length(self.method, self.rig, *self.place(angle))

    @property
    def room(self) -> float:
        """Slack in m with which the litter just hangs plumb and its whole distance out is lost."""
        return float(self.line_length(0.0) - self.line_length(self.start))

    def at(self, angle: Any) -> Rest:
        """The litter at rest with its haul leg ``angle`` rad from plumb."""
        x, z = self.place(angle)
        angle, x, z = (
            _as_given(np.where(np.abs(angle - self.start) < _SAME_ANGLE, exact, found))
            for exact, found in ((self.start, angle), (self.x, x), (self.z, z))
        )
        held = hold(self.method, self.rig, self.load, x, z)
        return Rest(
            x=x,
            z=z,
            along_arc=self.radius * (self.start - angle),
            inward=self.x - x,
            haul_tension=_plain(held.haul_tension),
            line_tension=_plain(held.line_tension),
        )

    def rigid(self, slack: Any) -> Rest:
        """At rest after ``slack`` m has run into a line that does not stretch."""
        wanted = self.line_length(self.start) + slack
        angle = bisected(lambda a: self.line_length(a) - wanted, 0.0 * wanted, self.start)
        return self.at(_as_given(np.where(slack >= self.room, 0.0, angle)))

    def elastic(self, slack: Any, before: float, after: float) -> Rest:
        """The same for a line that stretches.

        ``before`` and ``after`` are the stiffness in N of all the lines that hold, together,
        before and after the event: less after it when a line is lost.
        """
        length = self._loose(slack, before)

        def pulls_out(angle: Any) -> Any:
            x, z = self.place(angle)
            longer = np.maximum(self.line_length(angle) - length, 0.0)
            return outward_balance(self.method, self.rig, self.load, x, z, after * longer / length)

        angle = bisected(pulls_out, 0.0 * length, self.start)
        slack_when_plumb = self.line_length(0.0) <= length
        return self.at(_as_given(np.where(slack_when_plumb, 0.0, angle)))

    def swung_in(self, slack: Any, before: float, after: float) -> Turn:
        """Where the litter turns back when the slack comes at once and it swings in from rest.

        The line stretches as in :meth:`elastic`; nothing takes energy away, and no rock is in the
        way: the litter may swing past plumb.
        """
        length = self._loose(slack, before)

        def stretched(angle: Any) -> Any:
            return np.maximum(self.line_length(angle) - length, 0.0)

        def energy(angle: Any) -> Any:
            return self.load * self.place(angle)[1] + 0.5 * after / length * stretched(angle) ** 2

        given = energy(self.start)
        angle = bisected(lambda a: energy(a) - given, 0.0 * length - self.start, self.start)
        x, z = self.place(angle)
        return Turn(
            x=_as_given(x),
            z=_as_given(z),
            inward=_as_given(self.x - x),
            line_tension=_as_given(after / length * stretched(angle)),
        )

    def _loose(self, slack: Any, stiffness: float) -> Any:
        """Length in m of the line without its tension, with the slack that has run in."""
        return slack + stretch.unstretched_length(
            stretched_length=self.line_length(self.start),
            rope_tension=self.line_tension,
            stiffness=stiffness,
        )


def line_length(method: str, rig: Rig, x: Any, z: Any) -> Any:
    """Length in m of the holding line: litter to hub, for track lines from their directional on."""
    x, z = checked((q.X, x), (q.Z, z))
    ground = np.hypot(rig.hub.x - x, rig.hub.z - z)
    if Method.of(method) is Method.TAG:
        return ground
    return ground + np.hypot(rig.track_directional.x - x, rig.track_directional.z - z)


def outward_balance(method: str, rig: Rig, load: float, x: Any, z: Any, tension: Any) -> Any:
    """Force in N that drives the litter outward, square to the haul leg; 0 where it rests.

    ``tension`` N is the holding line's, of all lines together. A line whose end is at the litter
    pulls nowhere.
    """
    load, x, z, tension = checked((q.LOAD, load), (q.X, x), (q.Z, z), (q.LINE_TENSION, tension))
    top = rig.haul_directional
    out = np.arctan2(x - top.x, top.z - z)
    ends = [rig.hub] if Method.of(method) is Method.TAG else [rig.hub, rig.track_directional]
    pull = 0.0
    for end in ends:
        distance = np.maximum(np.hypot(end.x - x, end.z - z), _NOWHERE)
        pull = pull + ((end.x - x) * np.cos(out) + (end.z - z) * np.sin(out)) / distance
    return tension * pull - load * np.sin(out)


@dataclass(frozen=True)
class Slipped:
    """A litter after some rope of its holding line has slipped out.

    ``before`` is at rest before the slip, ``rigid`` after it with ropes that do not stretch,
    ``elastic`` with a line that does. After a sudden slip it first swings in as far as ``turn``.
    ``room`` is the slip in m that loses the whole distance out.
    """

    method: Method
    slip: Any
    stiffness: float
    before: Rest
    rigid: Rest
    elastic: Rest
    turn: Turn
    room: float
    cautions: tuple[str, ...] = _STRETCHING

    @property
    def inward(self) -> Any:
        """The furthest movement towards the wall in m, the first swing too: for clearance."""
        return np.maximum(self.rigid.inward, self.turn.inward)

    def explain(self, display: Display | None = None) -> Explanation:
        """The event in words, for single values (not arrays)."""
        one_case(self.inward)
        display = display or Display()

        def length(value: float) -> str:
            return display.show(value, Kind.LENGTH)

        room = display.show(self.room, Kind.LENGTH, rounding=Rounding.DOWN)
        allowed = display.show(self.inward, Kind.LENGTH, rounding=Rounding.UP)
        turn = display.show(self.turn.inward, Kind.LENGTH, rounding=Rounding.UP)
        lines = (
            said(
                f"The {self.method} carries {display.show(self.before.line_tension, Kind.FORCE)}; "
                f"{length(self.slip)} of it slips out."
            ),
            said(
                "The haul line keeps its length, so the litter swings in on an arc about the haul "
                "directional until the line is long enough again.",
                law=True,
            ),
            said(
                f"If nothing stretches it moves {length(self.rigid.along_arc)} along the arc, "
                f"{length(self.rigid.inward)} of it towards the wall."
            ),
            said(
                f"If the line stretches it moves {length(self.elastic.along_arc)} along the arc, "
                f"{length(self.elastic.inward)} of it towards the wall."
            ),
            said(
                f"If it slips at once the litter swings in up to {turn} towards the wall before it "
                "comes to rest."
            ),
            said(f"A slip of {room} would lose the whole distance out."),
        )
        return account(
            "Rope slips out of the holding line",
            lines,
            f"movement towards the wall: allow {allowed}",
            assumptions=(
                HAUL_KEEPS,
                "A line that stretches takes no energy from the first swing.",
            ),
            cautions=self.cautions,
        )


def slipped(
    method: str, rig: Rig, load: float, x: float, z: float, *, slip: Any, stiffness: float
) -> Slipped:
    """A litter of weight ``load`` N held at ``x``, ``z`` m after ``slip`` m of rope slips out.

    ``slip`` may be an array. ``stiffness`` EA in N is that of all track lines together, or of the
    tag line. Raises :class:`DomainError` where the litter is not held at all, and for values
    outside their domains.
    """
    slip, stiffness = checked((q.SLIP, slip), (q.STIFFNESS, stiffness))
    arc = Arc.from_place(method, rig, load, x, z)
    return Slipped(
        method=arc.method,
        slip=slip,
        stiffness=stiffness,
        before=arc.at(arc.start),
        rigid=arc.rigid(slip),
        elastic=arc.elastic(slip, stiffness, stiffness),
        turn=arc.swung_in(slip, stiffness, stiffness),
        room=arc.room,
    )


def slip_to_reach(method: str, rig: Rig, load: float, x: float, z: float, *, inward: Any) -> Any:
    """Slip in m after which the litter has moved ``inward`` m towards the wall (exact, rigid).

    Raises :class:`DomainError` for a movement past the plumb line below the haul directional.
    """
    (inward,) = checked((named(q.INWARD_MOVEMENT, "inward", q.INWARD_MOVEMENT.meaning), inward))
    arc = Arc.from_place(method, rig, load, x, z)
    off = x - rig.haul_directional.x
    if np.any(inward > off):

        def words(display: Display) -> str:
            return (
                f"The litter is {display.show(off, Kind.LENGTH)} off plumb, and slack brings it no "
                "further in than plumb. Give a smaller movement."
            )

        raise DomainError(words, "inward")
    angle = np.arcsin((off - inward) / arc.radius)
    return _as_given(arc.line_length(angle) - arc.line_length(arc.start))


def _plain(value: Any) -> Any:
    return np.asarray(value) if np.ndim(value) else float(value)


def _as_given(value: Any) -> Any:
    return float(value) if np.ndim(value) == 0 else value
