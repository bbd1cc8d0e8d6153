"""A pulley system as data: bodies at stations along a line, and ropes that visit them.

Stations are metres along the line from the anchor towards the load; the load pulls towards
higher stations. Strands are parallel to the line.

::

    station  0         4                    30
           anchor   traveller              load          3:1, Z-shaped:
             o=========#--------------------[W]          rope: tied to the load, gripped by the
             \\________o                                  traveller, over the anchor, over the
    hand <-------------/                                  traveller, to the hand

A system that is inconsistent cannot be built: the error says in words what is missing.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from functools import cached_property
from math import isfinite, pi

from ropecalc.derivation import DomainError, as_number


class Role(StrEnum):
    """What a body is. Loads, pulleys and grabs are free to move along the line."""

    ANCHOR = "anchor"
    LOAD = "load"
    PULLEY = "moving pulley"
    GRAB = "grab"
    HAND = "hand"


class How(StrEnum):
    """What a rope does at a body."""

    TIED = "tied"
    OVER = "over"
    GRIPPED = "gripped"


@dataclass(frozen=True)
class Body:
    """Something at ``station`` (m along the line) that ropes visit.

    A grab may carry a pulley of its own: let another part of the rope go over it.
    """

    name: str
    role: Role
    station: float

    @property
    def free(self) -> bool:
        """Whether the body moves, so that the forces on it must balance."""
        return self.role not in (Role.ANCHOR, Role.HAND)


@dataclass(frozen=True)
class Visit:
    """A rope at a body. ``efficiency`` names the sheave's efficiency; equal names, equal values.

    ``angle`` (rad, 0 to π) is the angle between the two strands at an anchor's pulley; everything
    beyond it, towards the rope's last visit, is then laid out along a line of its own. Without it
    the strands are parallel and the stations say which way each of them points.
    """

    body: str
    how: How
    efficiency: str = "eta"
    angle: float | None = None


def tied(body: str) -> Visit:
    """The rope ends at ``body`` (for the hand: comes into it)."""
    return Visit(body, How.TIED)


def over(body: str, efficiency: str = "eta", angle: float | None = None) -> Visit:
    """The rope runs over a sheave of ``body``."""
    return Visit(body, How.OVER, efficiency, angle)


def gripped(body: str) -> Visit:
    """A grab holds the rope, which goes on beyond it."""
    return Visit(body, How.GRIPPED)


@dataclass(frozen=True)
class Rope:
    """A rope by the bodies it visits, end to end."""

    name: str
    visits: tuple[Visit, ...]


@dataclass(frozen=True)
class Strand:
    """The piece of rope between two neighbouring visits; ``index`` counts all strands."""

    index: int
    rope: str
    start: Visit
    end: Visit
    length: float

    @property
    def name(self) -> str:
        """Where it runs, e.g. ``"rope: load to traveller"``."""
        return f"{self.rope}: {self.start.body} to {self.end.body}"


@dataclass(frozen=True)
class Attachment:
    """One visit with the strands on both sides of it (None beyond an end)."""

    visit: Visit
    rope: str
    before: Strand | None
    after: Strand | None

    @property
    def name(self) -> str:
        """What holds the rope here, e.g. ``"rope over anchor"``."""
        what = {How.TIED: "tied to", How.OVER: "over", How.GRIPPED: "gripped by"}
        return f"{self.rope} {what[self.visit.how]} {self.visit.body}"


@dataclass(frozen=True)
class System:
    """Bodies and ropes that together hold one load with one hand.

    Raises :class:`DomainError` for anything inconsistent: unknown or doubled names, a rope that
    visits fewer than two bodies, a body nobody holds, a grab that grips no strand, strands of no
    length, strands that would have to push, too few or too many ropes to settle every tension.
    """

    name: str
    bodies: tuple[Body, ...]
    ropes: tuple[Rope, ...]

    def __post_init__(self) -> None:
        _check_bodies(self)
        for rope in self.ropes:
            _check_rope(self, rope)
        _check_together(self)
        _check_determined(self)

    def body(self, name: str) -> Body:
        """The body called ``name``; :class:`DomainError` lists the names if there is none."""
        for body in self.bodies:
            if body.name == name:
                return body
        raise DomainError(
            f"{self.name}: there is no body called {name!r}; there are "
            f"{', '.join(b.name for b in self.bodies)}. Correct the name or add the body."
        )

    @property
    def load(self) -> Body:
        """The one load."""
        return next(b for b in self.bodies if b.role is Role.LOAD)

    @property
    def hand(self) -> Body:
        """The hand: one person, a team or a descent-control device."""
        return next(b for b in self.bodies if b.role is Role.HAND)

    @property
    def free_bodies(self) -> tuple[Body, ...]:
        """Load, moving pulleys and grabs."""
        return tuple(b for b in self.bodies if b.free)

    @cached_property
    def strands(self) -> tuple[Strand, ...]:
        """Every strand, rope by rope."""
        found: list[Strand] = []
        for rope in self.ropes:
            for start, end in zip(rope.visits, rope.visits[1:], strict=False):
                length = abs(self.body(start.body).station - self.body(end.body).station)
                found.append(Strand(len(found), rope.name, start, end, length))
        return tuple(found)

    @cached_property
    def attachments(self) -> tuple[Attachment, ...]:
        """Every visit with its strands, rope by rope."""
        found, first = [], 0
        for rope in self.ropes:
            count = len(rope.visits) - 1
            strands: list[Strand | None] = [None, *self.strands[first : first + count], None]
            first += count
            found += [
                Attachment(visit, rope.name, strands[i], strands[i + 1])
                for i, visit in enumerate(rope.visits)
            ]
        return tuple(found)

    @cached_property
    def sheaves(self) -> tuple[Attachment, ...]:
        """The visits where rope runs over something, rope by rope."""
        return tuple(a for a in self.attachments if a.visit.how is How.OVER)

    @property
    def efficiencies(self) -> tuple[str, ...]:
        """The names of the sheaves' efficiencies, each once, in the order they are met."""
        return tuple(dict.fromkeys(a.visit.efficiency for a in self.sheaves))

    @cached_property
    def hand_strand(self) -> Strand:
        """The strand that comes into the hand."""
        return next(s for s in self.strands if self.hand.name in (s.start.body, s.end.body))

    def at(self, body: str) -> tuple[Attachment, ...]:
        """The visits to ``body``."""
        return tuple(a for a in self.attachments if a.visit.body == self.body(body).name)

    def pull(self, strand: Strand, body: str) -> int:
        """Which way ``strand`` pulls ``body``: +1 towards the load's side, -1 towards the anchor's.

        0 if it does not end there.
        """
        here = self.body(body).station
        for one, other in ((strand.start, strand.end), (strand.end, strand.start)):
            if one.body == body:
                return 1 if self.body(other.body).station > here else -1
        return 0

    def with_own_efficiencies(self) -> "System":
        """The same system, each sheave with an efficiency of its own: eta_1 at the hand, ..."""
        count = len(self.sheaves)
        names = iter([f"eta_{i}" for i in range(1, count + 1)])
        ropes = []
        for rope in reversed(self.ropes):
            toward_hand = rope.visits[0].body == self.hand.name
            visits = list(rope.visits if toward_hand else reversed(rope.visits))
            visits = [
                replace(v, efficiency=next(names)) if v.how is How.OVER else v for v in visits
            ]
            ropes.append(Rope(rope.name, tuple(visits if toward_hand else reversed(visits))))
        return System(self.name, self.bodies, tuple(reversed(ropes)))


def solve_exactly(
    matrix: Sequence[Sequence[int | Fraction]], right: Sequence[int | Fraction]
) -> list[Fraction] | None:
    """The solution of a square linear system in exact fractions; None if there is not just one."""
    rows = [
        [Fraction(x) for x in row] + [Fraction(b)] for row, b in zip(matrix, right, strict=True)
    ]
    size = len(rows)
    for column in range(size):
        pivot = next((r for r in range(column, size) if rows[r][column]), None)
        if pivot is None:
            return None
        rows[column], rows[pivot] = rows[pivot], rows[column]
        rows[column] = [x / rows[column][column] for x in rows[column]]
        for r in range(size):
            factor = rows[r][column]
            if r != column and factor:
                rows[r] = [x - factor * y for x, y in zip(rows[r], rows[column], strict=True)]
    return [row[-1] for row in rows]


def _check_bodies(system: System) -> None:
    names = [b.name for b in system.bodies]
    for what, listed in (("bodies", names), ("ropes", [r.name for r in system.ropes])):
        for name in listed:
            if listed.count(name) > 1:
                raise DomainError(
                    f"{system.name}: two {what} are called {name!r}. Give each a name of its own."
                )
    for role in (Role.LOAD, Role.HAND):
        count = sum(b.role is role for b in system.bodies)
        if count != 1:
            raise DomainError(
                f"{system.name}: there must be one {role}, not {count}. Make other loads moving "
                "pulleys or grabs that a rope ties to the one load."
            )
    for body in system.bodies:
        if not isfinite(as_number(f"the station of {body.name}", body.station)):
            raise DomainError(
                f"{system.name}: the station of {body.name} is {body.station}; it must be a finite "
                "number of metres from the anchor towards the load."
            )


def _check_rope(system: System, rope: Rope) -> None:
    where = f"{system.name}, {rope.name}"
    if len(rope.visits) < 2:
        raise DomainError(
            f"{where}: the rope visits {len(rope.visits)} bodies; it must visit at least two. "
            "Say where both its ends are."
        )
    for i, visit in enumerate(rope.visits):
        body = system.body(visit.body)
        is_end = i in (0, len(rope.visits) - 1)
        if is_end != (visit.how is How.TIED):
            fix = "tie its ends" if is_end else "let it run over the body or be gripped there"
            raise DomainError(
                f"{where}: the rope is {visit.how} at {body.name} "
                f"{'at an end' if is_end else 'on its way'}; {fix}."
            )
        if body.role is Role.HAND and not is_end:
            raise DomainError(f"{where}: the hand takes an end of the rope. Put it there.")
        if visit.how is How.GRIPPED and body.role is not Role.GRAB:
            raise DomainError(
                f"{where}: {body.name} is {_a(body.role)} and cannot grip. Make it a grab, or tie "
                "the rope to it."
            )
        if visit.angle is not None:
            _check_angle(where, visit, body)
    for one, other in zip(rope.visits, rope.visits[1:], strict=False):
        if system.body(one.body).station == system.body(other.body).station:
            raise DomainError(
                f"{where}: {one.body} and {other.body} are at the same station, so the strand "
                "between them has no direction. Move one of them."
            )


def _check_angle(where: str, visit: Visit, body: Body) -> None:
    angle = visit.angle
    if visit.how is not How.OVER or body.role is not Role.ANCHOR:
        raise DomainError(
            f"{where}: an angle between strands is only for a pulley at an anchor; {body.name} "
            f"is {_a(body.role)}. Leave the angle out there."
        )
    if angle is None or not 0.0 <= as_number(f"the angle at {body.name}", angle) <= pi:
        raise DomainError(
            f"{where}: the angle between the strands at {body.name} is {angle} rad; it must be "
            "from 0 (both the same way) to π (straight through)."
        )


def _check_together(system: System) -> None:
    for body in system.bodies:
        visits = system.at(body.name)
        if not visits:
            raise DomainError(
                f"{system.name}: no rope visits {body.name}, so nobody holds it. Lead a rope to it "
                "or leave it out."
            )
        if body.role is Role.GRAB and not any(a.visit.how is How.GRIPPED for a in visits):
            raise DomainError(
                f"{system.name}: the grab {body.name} grips no strand. Let a rope be gripped by "
                "it, or make it a moving pulley."
            )
        if body.role is Role.HAND and len(visits) > 1:
            raise DomainError(
                f"{system.name}: {len(visits)} rope ends come into the hand; only one can be "
                "counted from. Tie the others to an anchor or a body."
            )


def _check_determined(system: System) -> None:
    tensions = len(system.strands)
    sheaves, free = len(system.sheaves), len(system.free_bodies)
    counted = (
        f"{tensions} strand tensions face {sheaves + free} conditions ({sheaves} sheaves, {free} "
        "bodies to balance)"
    )
    if tensions > sheaves + free:
        raise DomainError(
            f"{system.name} is under-determined: {counted}. Ropes share a load in a way that "
            "only their stretch decides; leave one out."
        )
    if tensions < sheaves + free:
        raise DomainError(
            f"{system.name} is over-determined: {counted}. Some body is not held; add a rope to "
            "it or make two bodies one."
        )
    forces = frictionless_tensions(system)
    if forces is None:
        raise DomainError(
            f"{system.name} does not settle: a body can run off while another part is held twice. "
            "Check which bodies each rope visits."
        )
    for strand, force in zip(system.strands, forces, strict=True):
        if force < 0:
            raise DomainError(
                f"{system.name}: {strand.name} would have to push, which no rope can. Check the "
                "stations and which side of its body the strand leaves."
            )
    if forces[system.hand_strand.index] == 0:
        raise DomainError(
            f"{system.name}: the hand holds nothing; the anchors carry the load whatever it does. "
            "Lead its rope to the load."
        )


def balance_row(system: System, body: Body) -> list[int]:
    """What every strand adds to the balance of ``body`` along the line."""
    return [system.pull(s, body.name) for s in system.strands]


def frictionless_tensions(system: System) -> list[Fraction] | None:
    """Every strand's share of the load without friction, exactly; None if they do not settle."""
    matrix: list[list[int]] = []
    for sheave in system.sheaves:
        row = [0] * len(system.strands)
        assert sheave.before is not None and sheave.after is not None  # checked: never an end
        row[sheave.before.index], row[sheave.after.index] = 1, -1
        matrix.append(row)
    matrix += [balance_row(system, body) for body in system.free_bodies]
    loads = [0] * len(system.sheaves) + [-(b.role is Role.LOAD) for b in system.free_bodies]
    return solve_exactly(matrix, loads)


def _a(role: Role) -> str:
    return f"{'an' if role[0] in 'aeiou' else 'a'} {role}"
