"""Friction at the litter's pulley, over which the track lines turn.

Going up, rope runs from the upper leg to the ground leg, so the ground leg carries more; going
down the other way round. With haul line and track lines from one directional the ground leg does
not notice: a load cell at the hub tells the geometry, one in the haul line tells the friction.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, Condition, Explanation, Step, Variable, derive
from ropecalc.mechanics import guiding, sheaves
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.friction import Band, Direction
from ropecalc.mechanics.manners import account, checked, named, one_case, said
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS
from ropecalc.units import Display, Kind

_ANGLES = (q.LOAD, q.HAUL_ELEVATION, q.GROUND_DEPRESSION)
_RUBBING = (
    guiding.tag_tension.assumptions[0],
    "The pulley at the litter has friction: its upper track leg carries the ratio rho times the "
    "ground leg. Going up rho is below 1, going down above 1.",
    "Haul line and track lines come from the same high directional; the track lines are made fast "
    "there and taken in at the hub, so going up their rope runs past the litter towards the hub.",
)
_RUBBED = (
    "How much a pulley rubs at a small turn is known only between bounds, and changes with dirt "
    "and water.",
    cautions.NEAR_DIRECTIONAL,
    cautions.COMMON_HUB,
    cautions.STATIC,
    cautions.AUTHORITY,
)

UPPER_RAISING = named(
    q.TRACK_TENSION, "upper_raising", "tension of the upper legs going up", r"T_\mathrm{u,up}"
)
UPPER_LOWERING = named(
    q.TRACK_TENSION, "upper_lowering", "tension of the upper legs going down", r"T_\mathrm{u,down}"
)
HAUL_DIFFERENCE = named(
    q.HAUL_TENSION,
    "haul_difference",
    "haul tension going up less haul tension going down",
    r"\Delta T_\mathrm{h}",
)


def _rubbing_balance(argument: Argument) -> list[Step]:
    load, up, down = argument.symbols(*_ANGLES)
    haul, track, ratio = argument.symbols(q.HAUL_TENSION, q.TRACK_TENSION, q.LEG_RATIO)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    sideways = argument.law(
        "Sideways balance: haul line and upper track leg pull in, the ground leg pulls out.",
        haul * cos(up) + ratio * track * cos(up),
        track * cos(down),
    )
    upward = argument.law(
        "Upward balance: haul line and upper track leg lift, the ground leg pulls down.",
        haul * sin(up) + ratio * track * sin(up) - track * sin(down),
        load,
    )
    return [sideways, upward]


def _eliminate(argument: Argument, wanted: Variable, other: Variable) -> Step:
    sideways, upward = _rubbing_balance(argument)
    expressed = argument.solve(
        f"Express the {other.meaning} by the {wanted.meaning}.", sideways, argument.symbol(other)
    )
    put_in = argument.substitute("Put it into the upward balance.", upward, expressed)
    return argument.solve(f"Solve for the {wanted.meaning}.", put_in, argument.symbol(wanted))


@derive(
    "Track lines with friction at the litter: tension of the ground leg",
    given=_ANGLES,
    between=(q.LEG_RATIO, q.HAUL_TENSION),
    result=q.TRACK_TENSION,
    assumptions=_RUBBING,
    conditions=guiding.tag_tension.conditions,
    cautions=_RUBBED,
)
def track_tension_with_friction(argument: Argument) -> Step:
    """Tension in N of the ground legs together: friction at the litter's pulley changes nothing."""
    load, up, down = argument.symbols(*_ANGLES)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    found = _eliminate(argument, q.TRACK_TENSION, q.HAUL_TENSION)
    return argument.rewrite(
        "The friction drops out: it only moves tension between haul line and upper leg, which lie "
        "in one line.",
        found,
        load * cos(up) / sin(up - down),
    )


@derive(
    "Track lines with friction at the litter: tension of the haul line",
    given=(*_ANGLES, q.LEG_RATIO),
    between=(q.TRACK_TENSION,),
    result=q.HAUL_TENSION,
    assumptions=_RUBBING,
    conditions=(
        *guiding.tag_tension.conditions,
        Condition(
            "The haul line would go slack: going down, so much friction would let the litter stick "
            "on the track lines.",
            "Use a pulley that turns more easily, or less tension in the track lines.",
            lambda v: (
                np.cos(v["ground_depression"]) >= v["leg_ratio"] * np.cos(v["haul_elevation"])
            ),
        ),
    ),
    cautions=_RUBBED,
)
def haul_tension_with_friction(argument: Argument) -> Step:
    """Haul tension in N beside track lines whose pulley at the litter rubs."""
    load, up, down = argument.symbols(*_ANGLES)
    ratio = argument.symbol(q.LEG_RATIO)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    found = _eliminate(argument, q.HAUL_TENSION, q.TRACK_TENSION)
    return argument.rewrite(
        "Bring the fractions together (sine of a difference).",
        found,
        load * (cos(down) - ratio * cos(up)) / sin(up - down),
    )


@derive(
    "Track lines with friction at the litter: haul line going up and going down",
    given=(q.TRACK_TENSION, q.LEG_RATIO),
    between=(UPPER_RAISING, UPPER_LOWERING),
    result=HAUL_DIFFERENCE,
    assumptions=(
        *_RUBBING[1:],
        "The same litter at the same place, once going up and once going down, at steady speed.",
        "Going down the friction is as large as going up, the other way round.",
    ),
    conditions=(
        Condition(
            "Going up the upper leg carries no more than the ground leg.",
            "Enter the ratio of going up, 1 or less.",
            lambda v: v["leg_ratio"] <= 1.0,
        ),
    ),
    cautions=_RUBBED,
)
def haul_difference(argument: Argument) -> Step:
    """How much more in N the haul line carries going up than going down."""
    ground, ratio = argument.symbols(q.TRACK_TENSION, q.LEG_RATIO)
    up, down, difference = argument.symbols(UPPER_RAISING, UPPER_LOWERING, HAUL_DIFFERENCE)
    raising = argument.law(
        "Going up, the upper leg carries the ratio times the ground leg.", up, ratio * ground
    )
    lowering = argument.law(
        "Going down, it carries the ground leg over the ratio.", down, ground / ratio
    )
    apart = argument.law(
        "Haul line and upper leg lie in one line and together carry what the place asks for, "
        "whatever rubs: what the upper leg gains going down, the haul line loses.",
        difference,
        down - up,
    )
    put_in = argument.substitute("Put both in.", apart, raising, lowering)
    return argument.rewrite("Take the ground leg out.", put_in, ground * (1 / ratio - ratio))


@derive(
    "Friction at which the litter sticks on the track lines going down",
    given=(q.HAUL_ELEVATION, q.GROUND_DEPRESSION),
    between=(q.LOAD, q.HAUL_TENSION, q.TRACK_TENSION),
    result=q.LEG_RATIO,
    assumptions=_RUBBING,
    conditions=(
        *guiding.tag_tension.conditions,
        Condition(
            f"The haul line must lean, by more than {FLAT_WORDS}: below its directional nothing "
            "makes the litter stick.",
            "Move the litter further out.",
            lambda v: np.pi / 2 - v["haul_elevation"] > FLAT,
        ),
    ),
    cautions=_RUBBED,
)
def sticking_leg_ratio(argument: Argument) -> Step:
    """Ratio of upper to ground leg at which nothing is left for the haul line; 1/η going down."""
    haul, ratio = argument.symbols(q.HAUL_TENSION, q.LEG_RATIO)
    sideways, _ = _rubbing_balance(argument)
    slack = argument.law("A slack haul line carries nothing.", haul, argument.sympy.S.Zero)
    nothing = argument.substitute("Put that into the sideways balance.", sideways, slack)
    return argument.solve("Solve for the ratio; the tension drops out.", nothing, ratio)


@dataclass(frozen=True)
class LitterPulley:
    """What friction at the litter's pulley does (N, rad; scalars or arrays).

    ``leg_ratio`` and ``haul_tension`` are bands: from a pulley that loses the same share at any
    turn to one that loses only at its axle, and, held, all that lies between going up and going
    down. ``track_tension`` is the ground legs' together, whatever the friction. ``may_stick`` says
    whether the haul line could go slack within the band; its lower end is then 0.
    """

    direction: Direction
    turn: Any
    leg_ratio: Band
    track_tension: Any
    haul_tension: Band
    may_stick: Any
    cautions: tuple[str, ...] = _RUBBED

    def explain(self, display: Display | None = None) -> Explanation:
        """What changes and what does not, for single values (not arrays)."""
        one_case(self.turn, self.track_tension, self.haul_tension.low)
        display = display or Display()
        told = [
            said(
                f"At the litter the track lines turn by {display.show(self.turn, Kind.ANGLE)}.",
                r"\gamma = \alpha - \beta",
                law=True,
            ),
            said(
                "The side the rope moves towards carries more: going up the ground leg, going down "
                f"the upper leg. While {self.direction} the upper leg carries "
                f"{self.leg_ratio.outwards(Kind.RATIO, display)} times the ground leg."
            ),
            said(
                "The ground legs carry "
                f"{display.show(self.track_tension, Kind.FORCE)} together whatever the friction; "
                "what the upper leg does not lift the haul line has to."
            ),
        ]
        if self.may_stick:
            told.append(
                said(
                    "Within these bounds the haul line could go slack: the litter would stick on "
                    "the track lines and then run. Do not lower like this."
                )
            )
        return account(
            "Friction at the litter's pulley",
            told,
            f"haul tension {self.haul_tension.outwards(Kind.FORCE, display)}",
            assumptions=_RUBBING,
            cautions=self.cautions,
        )


def litter_pulley(
    direction: str, *, load: Any, haul_elevation: Any, ground_depression: Any, efficiency: Any
) -> LitterPulley:
    """Haul and track tension with a litter pulley of the given ``efficiency`` (at a half-turn).

    Angles in rad, load in N; scalars or arrays; track lines from the haul directional. Raises
    :class:`DomainError` where no tension holds the litter, and for an unknown direction.
    """
    way = Direction.of(direction)
    (weight, up, down, share) = checked(
        (q.LOAD, load),
        (q.HAUL_ELEVATION, haul_elevation),
        (q.GROUND_DEPRESSION, ground_depression),
        (q.SHEAVE_EFFICIENCY, efficiency),
    )
    track = track_tension_with_friction(load=weight, haul_elevation=up, ground_depression=down)
    turn = up - down
    axle = sheaves.bearing_ratio(efficiency=share, turn=turn)
    rising = Band(np.minimum(share, axle), np.maximum(share, axle))
    falling = Band(1 / rising.high, 1 / rising.low)
    ratio = {
        Direction.HAULING: rising,
        Direction.LOWERING: falling,
        Direction.HOLDING: Band(rising.low, falling.high),
    }[way]

    def haul(rho: Any) -> Any:
        return weight * (np.cos(down) - rho * np.cos(up)) / np.sin(up - down)

    least, most = haul(ratio.high), haul(ratio.low)
    return LitterPulley(
        way, turn, ratio, track, Band(np.maximum(least, 0.0), np.maximum(most, 0.0)), least <= 0
    )
