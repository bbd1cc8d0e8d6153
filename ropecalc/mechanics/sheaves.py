"""One sheave at full and at partial turns: two models between which real pulleys lie.

A pulley loses tension in two ways. Bending the rope costs the same share however far it turns;
rubbing at the axle costs in proportion to the pull on the axle, which is small when the rope
turns little. An efficiency measured with a half-turn (both strands parallel) can be due to either,
so at any smaller turn the truth is a band between the two. The turn is pi minus the angle between
the strands. A rope that slides over something that does not turn is a matter of friction, not of
sheaves: see :mod:`ropecalc.mechanics.friction`.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, Explanation, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.friction import Band, Direction
from ropecalc.mechanics.manners import account, checked, named, one_case, said
from ropecalc.units import Display, Kind

_CAUTIONS = (
    "Efficiencies differ with pulley, rope, load, water and dirt: enter values you measured, and "
    "expect others on the day.",
    "The two models are bounds, not measurements, for pulleys that turn.",
    cautions.STATIC,
    cautions.AUTHORITY,
)
_BEARING = (
    "All that is lost is lost at the axle, in proportion to the pull of the rope on it.",
    "The efficiency was measured with both strands parallel (a half-turn).",
)


@derive(
    "Sheave that loses at its axle, at any turn",
    given=(q.SHEAVE_EFFICIENCY, q.SHEAVE_TURN),
    between=(q.TENSION_BEHIND, q.TENSION_AHEAD, q.SHEAVE_PULL, q.BEARING_SHARE),
    result=q.SHEAVE_RATIO,
    assumptions=_BEARING,
    cautions=_CAUTIONS,
    source="derived here from a loss in proportion to the pull on the axle",
)
def bearing_ratio(argument: Argument) -> Step:
    """Tension behind over tension ahead at turn gamma (0 to π rad); η at a half-turn, 1 at none."""
    e, turn = argument.symbols(q.SHEAVE_EFFICIENCY, q.SHEAVE_TURN)
    behind, ahead, pull, share, ratio = argument.symbols(
        q.TENSION_BEHIND, q.TENSION_AHEAD, q.SHEAVE_PULL, q.BEARING_SHARE, q.SHEAVE_RATIO
    )
    sp = argument.sympy
    kept = argument.law(
        "The strand behind keeps a share of the tension ahead; how much depends on the turn.",
        behind,
        ratio * ahead,
    )
    half_turn = argument.law(
        "With parallel strands the axle carries both tensions, and the tension lost is its share "
        "of that.",
        ahead - e * ahead,
        share * (ahead + e * ahead),
    )
    known_share = argument.solve("So the share follows from the efficiency.", half_turn, share)
    axle = argument.law(
        "At any turn the axle carries the vector sum of both tensions.",
        pull**2,
        ahead**2 + behind**2 - 2 * ahead * behind * sp.cos(turn),
    )
    lost = argument.law("The tension lost is the same share of it.", ahead - behind, share * pull)
    squared = argument.combine("Square.", lambda side: side**2, lost, called="square")
    balance = argument.solved(
        "Put the axle's pull in.",
        squared.equation.lhs,
        squared.equation.rhs.subs(pull**2, axle.equation.rhs),
    )
    quadratic = argument.substitute("Put the share that is kept in.", balance, kept)
    quadratic = argument.combine(
        "Divide by the tension ahead, squared.",
        lambda side: sp.expand(side / ahead**2),
        quadratic,
        called="divide",
    )
    solved = argument.solve(
        "A quadratic: of its two answers the one that does not gain tension.", quadratic, ratio
    )
    in_e = argument.substitute("Put the share in.", solved, known_share)
    short, away = 1 - e, 1 - sp.cos(turn)
    root = sp.sqrt(away * (2 * (1 + e) ** 2 - short**2 * (1 + sp.cos(turn))))
    return argument.rewrite(
        "Write it as what is lost of the whole.",
        in_e,
        1 - short * (root - short * away) / (4 * e),
    )


@derive(
    "A seaman's rule: a tenth of the load for every sheave",
    given=(q.LOAD, q.SHEAVES, q.PARTS),
    result=q.HAND_PULL,
    assumptions=(
        "A rule of thumb, not mechanics: every sheave adds a tenth of the load, wherever it is.",
        "The strands that carry the load share what comes out equally.",
    ),
    cautions=_CAUTIONS,
    source="a rule of seamanship manuals (Nicholls's Seamanship and Nautical Knowledge)",
)
def tenth_rule(argument: Argument) -> Step:
    """Pull in N on a tackle by the rule of a tenth; for comparison with a count of tensions."""
    load, sheaves, parts, pull = argument.symbols(q.LOAD, q.SHEAVES, q.PARTS, q.HAND_PULL)
    rule = argument.law(
        "The strands together pull the load and a tenth of it for every sheave.",
        parts * pull,
        load + sheaves * load / 10,
    )
    return argument.solve("Divide by the number of strands.", rule, pull)


@dataclass(frozen=True)
class SheaveTension:
    """The team's side of one sheave in N, by each model and as the band between them.

    ``bending`` and ``axle`` are one value each while the rope moves; held, everything friction
    allows by that model. ``team_side`` spans both.
    """

    direction: Direction
    load_side: Any
    efficiency: Any
    turn: Any
    bending: Band
    axle: Band
    cautions: tuple[str, ...] = _CAUTIONS

    @property
    def team_side(self) -> Band:
        """From the lower to the higher of the two models."""
        return Band(
            _plain(np.minimum(self.bending.low, self.axle.low)),
            _plain(np.maximum(self.bending.high, self.axle.high)),
        )

    def explain(self, display: Display | None = None) -> Explanation:
        """Both models in words, for single values (not arrays)."""
        one_case(self.team_side.low, self.team_side.high)
        display = display or Display()
        moves = {
            Direction.HAULING: "Hauling, the team's side carries more than the load's side.",
            Direction.LOWERING: "Lowering, the team's side carries less than the load's side.",
            Direction.HOLDING: "Held, friction may help either way.",
        }
        lines = (
            said(moves[self.direction], r"S_\mathrm{b} = \eta_\gamma S_\mathrm{a}", law=True),
            said(
                "If bending the rope costs it all, the turn makes no difference: the team's side "
                f"carries {self.bending.show(Kind.FORCE, display)}.",
                r"\eta_\gamma = \eta",
            ),
            said(
                "If the axle costs it all, a smaller turn costs less: the team's side carries "
                f"{self.axle.show(Kind.FORCE, display)}.",
                r"S_\mathrm{a} - S_\mathrm{b} = c_\mathrm{p} R_\mathrm{p}",
            ),
        )
        return account(
            f"One sheave at a turn of {display.show(self.turn, Kind.ANGLE)}",
            lines,
            f"{self.direction}: team's side {self.team_side.show(Kind.FORCE, display)}",
            assumptions=("The sheave turns; efficiency measured with parallel strands.",),
            cautions=self.cautions,
            source=bearing_ratio.source,
        )


def over_sheave(direction: str, *, load_side: Any, efficiency: Any, turn: Any) -> SheaveTension:
    """Tension on the team's side of one sheave (scalars or arrays).

    ``load_side`` N on the load's side, ``efficiency`` (0.01 to 1) measured with parallel strands,
    ``turn`` rad (0 to π) through which the rope turns. Raises :class:`DomainError` for an unknown
    direction or values out of range.
    """
    way = Direction.of(direction)
    load, e, gamma = checked(
        (named(q.TENSION_BEHIND, "load_side", "tension on the load's side"), load_side),
        (q.SHEAVE_EFFICIENCY, efficiency),
        (q.SHEAVE_TURN, turn),
    )
    bent = np.broadcast_arrays(load, e, gamma)[1]
    axle = bearing_ratio(efficiency=e, turn=gamma)
    return SheaveTension(way, load, e, gamma, _side(way, load, bent), _side(way, load, axle))


def _side(way: Direction, load: Any, ratio: Any) -> Band:
    low = load / ratio if way is Direction.HAULING else load * ratio
    high = load * ratio if way is Direction.LOWERING else load / ratio
    return Band(_plain(low), _plain(high))


def _plain(values: Any) -> Any:
    return float(values) if np.ndim(values) == 0 else values
