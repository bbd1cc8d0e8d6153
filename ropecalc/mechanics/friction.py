"""Rope over an edge or through a groove: the side the rope moves towards carries more.

Friction has no direction of its own: it works against the movement. So every result here asks
whether the load is being hauled, lowered or held. At rest the tensions do not go back to what
they would be without friction; they lie anywhere between lowering and hauling.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import (
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
from ropecalc.mechanics.manners import account, checked, named, one_case, said
from ropecalc.units import Display, Kind, Rounding


class Direction(StrEnum):
    """Which way the rope moves, or that it stands still. There is no default anywhere."""

    HAULING = "hauling"
    LOWERING = "lowering"
    HOLDING = "holding"

    @classmethod
    def of(cls, value: str) -> "Direction":
        """The direction spelled ``value``; :class:`DomainError` names the choices if none is."""
        try:
            return cls(value)
        except ValueError:
            raise DomainError(
                f"direction is {value!r}; it must be hauling, lowering or holding. Say which way "
                "the rope moves: friction works against it."
            ) from None


@dataclass(frozen=True)
class Band:
    """The lowest and the highest value something can have; equal where there is only one."""

    low: Any
    high: Any

    @property
    def width(self) -> Any:
        """How far apart the two are."""
        return self.high - self.low

    def show(self, kind: Kind, display: Display) -> str:
        """The band in words and in the reader's units (one value only, not an array)."""
        low, high = display.show(self.low, kind), display.show(self.high, kind)
        return low if low == high else f"{low} to {high}"

    def outwards(self, kind: Kind, display: Display) -> str:
        """The same with the ends rounded outwards, so that what may come lies inside."""
        if self.width <= 1e-9 * abs(self.high):  # one value
            return display.show(self.high, kind)
        low = display.show(self.low, kind, rounding=Rounding.DOWN)
        return f"{low} to {display.show(self.high, kind, rounding=Rounding.UP)}"


_CAPSTAN_CAUTIONS = (
    "Friction varies with rope, rock, water and dirt: enter values that you measured, and expect "
    "others on the day.",
    cautions.STATIC,
    cautions.AUTHORITY,
)
_SLIDES = (
    "The rope slides, or is just about to, over a smooth rounded edge.",
    "A sharp edge is a matter of cutting, not of friction.",
)


_MOST = 600.0
"""Friction times turn over the groove's sine up to which the growth is a number at all."""


@derive(
    "Rope over a rounded edge",
    given=(q.TENSION_BEHIND, q.FRICTION, q.TURN),
    result=q.TENSION_AHEAD,
    assumptions=_SLIDES,
    cautions=_CAPSTAN_CAUTIONS,
    source="Euler and Eytelwein's belt friction, derived here from a short piece of rope",
)
def capstan_tension(argument: Argument) -> Step:
    """Tension in N on the side the rope moves towards, from the tension on the other side.

    Hauling: the load's side is behind, the team's side ahead. Lowering: the other way round.
    """
    mu, turn = argument.symbols(q.FRICTION, q.TURN)
    return _grown(
        argument,
        "A short piece of rope presses on the edge with its tension times its small turn; "
        "friction adds that pressure times the coefficient to the tension.",
        mu,
        turn,
    )


capstan_tension_behind = capstan_tension.solved_for("tension_behind")
"""Tension in N on the side the rope comes from: lowering, the team's side."""


REVERSAL = Variable(
    "reversal",
    r"k_\mathrm{r}",
    "tension on the team's side while hauling over that while lowering",
    Kind.RATIO,
    Domain(1.0, float("inf")),
    Range(1.0, 8.0, 2.6),
)
LOAD_SIDE = named(q.TENSION_BEHIND, "load_side", "tension on the load's side", r"T_\mathrm{load}")
HAULED_SIDE = named(q.TENSION_AHEAD, "hauled", "team's side while hauling", r"S_\mathrm{up}")
LOWERED_SIDE = named(q.TENSION_AHEAD, "lowered", "team's side while lowering", r"S_\mathrm{down}")


@derive(
    "From lowering to hauling over an edge",
    given=(q.FRICTION, q.TURN),
    between=(LOAD_SIDE, HAULED_SIDE, LOWERED_SIDE),
    result=REVERSAL,
    assumptions=_SLIDES,
    cautions=_CAPSTAN_CAUTIONS,
    source=capstan_tension.source,
)
def edge_reversal(argument: Argument) -> Step:
    """By how much the team's tension grows from lowering to hauling, the load being the same."""
    mu, turn = argument.symbols(q.FRICTION, q.TURN)
    load, up, down, ratio = argument.symbols(LOAD_SIDE, HAULED_SIDE, LOWERED_SIDE, REVERSAL)
    growth = argument.sympy.exp(mu * turn)
    hauled = argument.law(
        "Hauling, the rope moves towards the team: the team's side carries more than the load.",
        up,
        load * growth,
    )
    lowered = argument.law(
        "Lowering, it moves towards the load: now the load's side carries more, by the same "
        "factor.",
        load,
        down * growth,
    )
    both = argument.law("Compare the team's side both ways.", ratio, up / down)
    with_load = argument.substitute("Put the hauling side in.", both, hauled)
    return argument.substitute("Put the load in: friction counts twice.", with_load, lowered)


@derive(
    "Rope in a groove that wedges it",
    given=(q.TENSION_BEHIND, q.FRICTION, q.TURN, q.GROOVE_ANGLE),
    result=q.TENSION_AHEAD,
    assumptions=(
        "The rope slides, or is just about to, and lies on both flanks of the groove alike.",
        "The groove is straight-sided; a half-turn between the flanks is a flat surface.",
    ),
    conditions=(
        Condition(
            "In so narrow a groove the coefficient of friction times the turn in radians, over the "
            f"sine of half the groove's angle, must be at most {_MOST:.0f}; beyond that nothing "
            "slides any more.",
            "Enter a smaller coefficient, less turn or a wider groove.",
            lambda v: v["friction"] * v["turn"] <= _MOST * np.sin(v["groove_angle"] / 2),
        ),
    ),
    cautions=_CAPSTAN_CAUTIONS,
    source=(
        "derived here from a short piece of rope; the form is that of the V-belt in Baker and "
        "Haynes, Engineering Statics, section 9.5"
    ),
)
def groove_tension(argument: Argument) -> Step:
    """Tension in N ahead of a V-shaped groove or crack with flanks kappa (0 to π rad) apart."""
    mu, turn, groove = argument.symbols(q.FRICTION, q.TURN, q.GROOVE_ANGLE)
    return _grown(
        argument,
        "A short piece of rope is carried by two flanks. Only the part of each push that points "
        "out of the groove balances the rope's small turn, so the pushes together are larger than "
        "on a flat edge by the sine of half the groove's angle; friction adds them times the "
        "coefficient to the tension.",
        mu / argument.sympy.sin(groove / 2),
        turn,
    )


def _grown(argument: Argument, sentence: str, per_turn: Any, turn: Any) -> Step:
    """Tension ahead when every bit of turn adds ``per_turn`` of the tension."""
    behind, ahead = argument.symbols(q.TENSION_BEHIND, q.TENSION_AHEAD)
    sp = argument.sympy
    along = sp.Function("S")
    law = argument.law(sentence, sp.Derivative(along(turn), turn), per_turn * along(turn))
    solution = sp.dsolve(law.equation, along(turn), ics={along(0): behind})
    grown = argument.solved(
        "Add up all the pieces, starting from the tension behind.", along(turn), solution.rhs
    )
    named = argument.law("After the whole turn this is the tension ahead.", ahead, along(turn))
    return argument.solved(
        "So the tension grows with every bit of turn.",
        ahead,
        named.equation.rhs.subs(along(turn), grown.equation.rhs),
    )


@dataclass(frozen=True)
class EdgeTension:
    """What the team's side of an edge carries, in N, for a given load side and direction.

    While the rope moves the band is one value; held, it is everything from lowering to hauling.
    """

    direction: Direction
    load_side: Any
    friction: Any
    turn: Any
    team_side: Band
    cautions: tuple[str, ...] = _CAPSTAN_CAUTIONS

    @property
    def held(self) -> Band:
        """The team's side while the rope is held: from lowering to hauling."""
        values = {"load_side": self.load_side, "friction": self.friction, "turn": self.turn}
        return over_edge(Direction.HOLDING, **values).team_side

    @property
    def reversal(self) -> Any:
        """Hauling over lowering: by how much turning round changes the team's side."""
        return self.held.high / self.held.low

    def explain(self, display: Display | None = None) -> Explanation:
        """The three cases in words, for single values (not arrays)."""
        one_case(self.team_side.low)
        display = display or Display()
        up, down = (display.show(v, Kind.FORCE) for v in (self.held.high, self.held.low))
        lines = (
            said(
                "The side the rope moves towards carries more, by the same factor either way.",
                r"S_\mathrm{a} = S_\mathrm{b}\, e^{\mu \gamma}",
                law=True,
            ),
            said(f"Hauling, the rope moves towards the team: the team's side carries {up}."),
            said(f"Lowering, it moves towards the load: the team's side carries {down}."),
            said(f"Held, friction may help either way: anything from {down} to {up}."),
        )
        result = f"{self.direction}: team's side {self.team_side.show(Kind.FORCE, display)}"
        return account(
            "Both sides of an edge",
            lines,
            result,
            assumptions=_SLIDES,
            cautions=self.cautions,
            source=capstan_tension.source,
        )


def over_edge(direction: str, *, load_side: Any, friction: Any, turn: Any) -> EdgeTension:
    """Tension on the team's side of a rounded edge (scalars or arrays).

    ``load_side`` N on the load's side, ``friction`` the coefficient, ``turn`` rad through which
    the rope turns. Raises :class:`DomainError` for an unknown direction or values out of range.
    """
    way = Direction.of(direction)
    load, mu, gamma = checked(
        (named(q.TENSION_BEHIND, "load_side", "tension on the load's side"), load_side),
        (q.FRICTION, friction),
        (q.TURN, turn),
    )
    hauled = capstan_tension(tension_behind=load, friction=mu, turn=gamma)
    lowered = capstan_tension_behind(tension_ahead=load, friction=mu, turn=gamma)
    return EdgeTension(way, load, mu, gamma, banded(way, hauled=hauled, lowered=lowered))


def banded(direction: Direction, *, hauled: Any, lowered: Any) -> Band:
    """One value while the rope moves; held, all that lies between the two."""
    if direction is Direction.HAULING:
        return Band(hauled, hauled)
    if direction is Direction.LOWERING:
        return Band(lowered, lowered)
    return Band(np.minimum(hauled, lowered), np.maximum(hauled, lowered))
