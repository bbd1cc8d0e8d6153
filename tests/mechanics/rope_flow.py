"""Elastic rope that sticks and slips over sheaves: an independent oracle for pulley systems.

What the library knows about a system comes from counting: one ratio at each sheave, one balance at
each body, solved once. Nothing of that is used here. A strand is a length between two bodies with
some unstretched rope in it; its tension is Hooke's. A body with a resultant force moves a little
along it. Rope passes a sheave only while one side pulls more than friction can hold, and only as
much as brings it back to that limit. The hand takes in or lets out rope in small steps, and after
each everything moves until nothing moves any more. Which way friction points, what is held, and
what the rope remembers come out by themselves.
"""

from dataclasses import dataclass, field

from ropecalc.mechanics.pulleys import How, Role, System

STIFFNESS = 2e5
"""Force in N that would double a strand's length; all strands alike."""
_STILL = 1e-3
"""Forces in N that count as none."""


@dataclass
class Piece:
    """A strand: the numbers of the bodies at its ends and the unstretched rope between them."""

    one: int
    other: int
    rope: float


@dataclass
class RopeFlow:
    """A system that moves by itself. ``load`` N pulls the load towards higher stations."""

    stations: list[float]
    pieces: list[Piece]
    sheaves: list[tuple[int, int]]
    free: list[int]
    pulls: dict[int, float]
    hand: int
    efficiency: float
    at: dict[int, list[tuple[int, float]]] = field(default_factory=dict)

    @classmethod
    def of(cls, system: System, *, load: float, efficiency: float, start: float) -> "RopeFlow":
        """The simulation of ``system``, with ``start`` N in every strand at first."""
        names = [body.name for body in system.bodies]
        flow = cls(
            stations=[body.station for body in system.bodies],
            pieces=[],
            sheaves=[],
            free=[i for i, b in enumerate(system.bodies) if b.role not in (Role.ANCHOR, Role.HAND)],
            pulls={names.index(b.name): load for b in system.bodies if b.role is Role.LOAD},
            hand=-1,
            efficiency=efficiency,
        )
        for rope in system.ropes:
            for number, (here, there) in enumerate(zip(rope.visits, rope.visits[1:], strict=False)):
                one, other = names.index(here.body), names.index(there.body)
                length = abs(flow.stations[one] - flow.stations[other])
                if here.how is How.OVER and number > 0:
                    flow.sheaves.append((len(flow.pieces) - 1, len(flow.pieces)))
                if Role.HAND in (system.bodies[one].role, system.bodies[other].role):
                    flow.hand = len(flow.pieces)
                flow.pieces.append(Piece(one, other, length / (1 + start / STIFFNESS)))
        for number, piece in enumerate(flow.pieces):
            up = 1.0 if flow.stations[piece.other] > flow.stations[piece.one] else -1.0
            flow.at.setdefault(piece.one, []).append((number, up))
            flow.at.setdefault(piece.other, []).append((number, -up))
        return flow

    def hold_still(self, body: int) -> None:
        """Fix a body where it is."""
        self.free.remove(body)

    def tension(self, number: int) -> float:
        """Tension of a strand in N; slack is 0."""
        piece = self.pieces[number]
        length = abs(self.stations[piece.one] - self.stations[piece.other])
        return max(0.0, STIFFNESS * (length / piece.rope - 1))

    def stiffness(self, number: int) -> float:
        piece = self.pieces[number]
        return STIFFNESS / piece.rope

    def take_in(self, rope: float, step: float = 0.004) -> None:
        """Take in ``rope`` m at the hand (negative: let out), in small steps."""
        steps = max(1, round(abs(rope) / step))
        for _ in range(steps):
            self.pieces[self.hand].rope -= rope / steps
            self.settle()

    def settle(self, sweeps: int = 20_000) -> None:
        """Let bodies and rope move until nothing moves any more."""
        for _ in range(sweeps):
            worst = max(self._slip(), self._move())
            if worst < _STILL:
                return
        raise AssertionError(f"does not come to rest: {worst} N left")

    def _slip(self) -> float:
        worst = 0.0
        for pair in self.sheaves:
            for low, high in (pair, pair[::-1]):
                excess = self.efficiency * self.tension(high) - self.tension(low)
                if excess > 0:
                    give = self.stiffness(low) + self.efficiency * self.stiffness(high)
                    self.pieces[low].rope -= excess / give
                    self.pieces[high].rope += excess / give
                    worst = max(worst, excess)
        return worst

    def _move(self) -> float:
        worst = 0.0
        for body in self.free:
            force, give = self.pulls.get(body, 0.0), 0.0
            for number, way in self.at[body]:
                force += way * self.tension(number)
                give += self.stiffness(number)
            self.stations[body] += force / give
            worst = max(worst, abs(force))
        return worst
