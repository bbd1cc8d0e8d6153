"""What the plane picture of a guided litter leaves out, and how far it may be pushed.

Two hubs to the left and right, lines that sag under their own weight, what holds a litter from
swinging along the wall, a hub that slides, and the furthest offset for a given tension.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import (
    NOT_NEGATIVE,
    Argument,
    Condition,
    DomainError,
    Explanation,
    Range,
    Step,
    Variable,
    derive,
)
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.legs import ROUNDING, pair_of, places_of, vectors_of
from ropecalc.mechanics.manners import account, checked, said
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS
from ropecalc.units import STANDARD_GRAVITY, Display, Kind

_ANGLES = (q.LOAD, q.HAUL_ELEVATION, q.GROUND_DEPRESSION)
_LINES = (cautions.NEAR_DIRECTIONAL, cautions.COMMON_HUB)
_GUIDED = (*_LINES, *cautions.EVERY_RESULT)
_AT_P = "Haul line, guiding line and weight meet at the master attachment point."

# --- two hubs ---------------------------------------------------------------------------------


@derive(
    "Two hubs, to the left and to the right: tension of all lines together",
    given=(*_ANGLES, q.HUB_SPREAD),
    between=(q.FRONT_TOGETHER,),
    result=q.LINE_TENSION,
    assumptions=(
        _AT_P,
        "Two equal lines, or groups of lines, mirrored about the plane of the raise; each falls at "
        "the ground depression.",
    ),
    conditions=(
        Condition(
            "The lines must pull the litter out, and not beyond the straight line to the hubs or "
            f"within {FLAT_WORDS} of it.",
            "Bring the hubs closer together or further out, or the litter closer in.",
            lambda v: (
                np.cos(v["hub_spread"]) * np.sin(v["haul_elevation"])
                * np.cos(v["ground_depression"])
                - np.sin(v["ground_depression"]) * np.cos(v["haul_elevation"])
                > FLAT
            ),
        ),
    ),
    cautions=_GUIDED,
)  # fmt: skip
def two_hub_tension(argument: Argument) -> Step:
    """Tension in N of the lines to both hubs together (tag lines, or the track's ground legs)."""
    load, up, down, spread = argument.symbols(*_ANGLES, q.HUB_SPREAD)
    line, together = argument.symbols(q.LINE_TENSION, q.FRONT_TOGETHER)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    outward = argument.law(
        "Balance out from the wall: only the part of each line that points straight out counts; "
        "along the wall the two cancel. Everything to the directional pulls in.",
        together * cos(up),
        line * cos(down) * cos(spread),
    )
    upward = argument.law("Upward balance.", together * sin(up) - line * sin(down), load)
    expressed = argument.solve("Express what pulls in by the lines.", outward, together)
    put_in = argument.substitute("Put it into the upward balance.", upward, expressed)
    found = argument.solve("Solve for the lines.", put_in, line)
    return argument.rewrite(
        "Clear the fraction.",
        found,
        load * cos(up) / (cos(spread) * cos(down) * sin(up) - sin(down) * cos(up)),
    )


@dataclass(frozen=True)
class TwoHubs:
    """Tensions in N with two hubs anywhere: haul line, and the line (or lines) to each hub."""

    haul_tension: float
    line_tensions: tuple[float, float]
    cautions: tuple[str, ...] = (
        "Static model with straight, weightless, inextensible ropes and no friction. Left out: "
        "starts, stops and snags, wind, edge damage, anchor quality, people.",
        *_LINES,
        cautions.AUTHORITY,
    )

    @property
    def together(self) -> float:
        """The lines to both hubs together."""
        return sum(self.line_tensions)

    def explain(self, display: Display | None = None) -> Explanation:
        """The balance in space, in words."""
        display = display or Display()
        first, second = (display.show(t, Kind.FORCE) for t in self.line_tensions)
        return account(
            "Two hubs",
            (
                said(
                    "Three balances (out, along the wall, upward) settle the haul line and the "
                    "lines to the two hubs. A hub off to one side pulls the litter sideways; the "
                    "other has to pull it back.",
                    law=True,
                ),
                said(f"The line to hub 1 carries {first}, the line to hub 2 {second}."),
            ),
            f"haul tension {display.show(self.haul_tension, Kind.FORCE)}, lines together "
            f"{display.show(self.together, Kind.FORCE)}",
            assumptions=(_AT_P,),
            cautions=self.cautions,
        )


def two_hubs(
    *, load: float, litter: Any, haul_directional: Any, hubs: Any, track_directional: Any = None
) -> TwoHubs:
    """Haul tension and the tensions of lines to two hubs, from places in space.

    Places (x out, y along the wall, z up) in m, two rows for ``hubs``; ``load`` in N. With a
    ``track_directional`` the lines run from there through the litter's pulley (equal tension on
    both sides), without one they are tag lines. Raises :class:`DomainError` when a line would have
    to push or places fall together.
    """
    (weight,) = checked((q.LOAD, load))
    at, top = vectors_of("litter", litter), vectors_of("haul_directional", haul_directional)
    ends = places_of(hubs, 2)
    if at.ndim != 1 or top.ndim != 1 or ends.ndim != 2 or np.ndim(weight):
        raise DomainError("Give one litter, one directional, two hubs and one load at a time.")

    def unit(place: Any) -> Any:
        way = place - at
        size = np.linalg.norm(way)
        if not size > 0:
            raise DomainError("A line has no length: its end lies at the litter. Check the places.")
        return way / size

    upper = 0.0
    if track_directional is not None:
        upper = unit(vectors_of("track_directional", track_directional))
    columns = np.array([unit(top), unit(ends[0]) + upper, unit(ends[1]) + upper]).T
    if not abs(np.linalg.det(columns)) > FLAT:
        raise DomainError(
            "Haul line and both hub lines lie in one plane, or nearly, so statics cannot share "
            "between the hubs, or no tension holds the litter there. Move the hubs further apart, "
            "or bring the litter closer in."
        )
    tensions = np.linalg.solve(columns, [0.0, 0.0, weight])
    for name, tension in zip(
        ("haul line", "line to hub 1", "line to hub 2"), tensions, strict=True
    ):
        if tension < -ROUNDING * weight:
            raise DomainError(
                f"The {name} would have to push, so the litter does not stay there. Move the "
                "litter, a hub or the directional."
            )
    haul, first, second = (max(0.0, float(t)) for t in tensions)
    return TwoHubs(haul, (first, second))


# --- where the straight line fails, and what holds sideways -------------------------------------

_SAGGING = (
    "The rope's weight is spread evenly and the line is tight enough to sag little.",
    "The tension is the one along the straight line between the ends.",
)


@derive(
    "How far a line's own weight turns its ends off the straight line",
    given=(q.LEG_ROPE_WEIGHT, q.GROUND_DEPRESSION, q.LINE_TENSION),
    result=q.END_ANGLE,
    assumptions=_SAGGING,
    conditions=(
        Condition(
            "The line must be tight enough to carry its own weight.",
            "Use more tension or a lighter rope.",
            lambda v: 2 * v["line_tension"] > v["leg_rope_weight"] * np.cos(v["ground_depression"]),
        ),
    ),
    cautions=_GUIDED,
)
def end_angle(argument: Argument) -> Step:
    """Angle in rad between the sagging line's end and the straight line: an error of the angles."""
    weight, down, tension = argument.symbols(q.LEG_ROPE_WEIGHT, q.GROUND_DEPRESSION, q.LINE_TENSION)
    angle = argument.symbol(q.END_ANGLE)
    sin, cos, asin = argument.sympy.sin, argument.sympy.cos, argument.sympy.asin
    across = argument.law(
        "Balance across the straight line: each end carries half of the weight's part that points "
        "across it.",
        tension * sin(angle),
        weight * cos(down) / 2,
    )
    slope = argument.combine(
        "Divide by the tension.", lambda side: side / tension, across, called="divide"
    )
    return argument.solved("Take the angle whose sine that is.", angle, asin(slope.equation.rhs))


least_straight_tension = end_angle.solved_for("line_tension")
"""Tension in N below which the line's ends are further off the straight line than a given angle.

Below it, angles measured from places, and every tension computed from them, are not to be relied
on."""


@derive(
    "How far a line sags under its own weight",
    given=(q.LEG_ROPE_WEIGHT, q.GROUND_DEPRESSION, q.LINE_TENSION, q.GROUND_LEG_LENGTH),
    result=q.LEG_SAG,
    assumptions=_SAGGING,
    cautions=_GUIDED,
)
def leg_sag(argument: Argument) -> Step:
    """Sag in m of the middle of a leg off the straight line between its ends."""
    weight, down, tension, length = argument.symbols(
        q.LEG_ROPE_WEIGHT, q.GROUND_DEPRESSION, q.LINE_TENSION, q.GROUND_LEG_LENGTH
    )
    sag = argument.symbol(q.LEG_SAG)
    moments = argument.law(
        "Cut the line in the middle. About one end the tension there has the sag as its arm, and "
        "half of the weight's cross part has a quarter of the length.",
        tension * sag,
        weight * argument.sympy.cos(down) / 2 * length / 4,
    )
    return argument.solve("Solve for the sag.", moments, sag)


@derive(
    "What brings a litter back from sideways",
    given=(
        q.HAUL_TENSION,
        q.TRACK_TENSION,
        q.HAUL_LEG_LENGTH,
        q.GROUND_LEG_LENGTH,
        q.SIDEWAYS,
    ),
    result=q.SIDE_FORCE,
    assumptions=(
        "The litter is a little way sideways, small beside the length of every leg, and the "
        "tensions stay what they were.",
        "Haul line and track lines come from the same high directional.",
    ),
    cautions=_GUIDED,
)
def side_force(argument: Argument) -> Step:
    """Force in N along the wall that returns a litter held by track lines from sideways."""
    haul, track, upper, ground, aside = argument.symbols(
        q.HAUL_TENSION, q.TRACK_TENSION, q.HAUL_LEG_LENGTH, q.GROUND_LEG_LENGTH, q.SIDEWAYS
    )
    total = argument.law(
        "Each leg leans sideways by the distance over its length and pulls back with that share of "
        "its tension: haul line and upper track leg together, and the ground leg.",
        argument.symbol(q.SIDE_FORCE),
        (haul + track) * aside / upper + track * aside / ground,
    )
    return argument.apply("Take the distance out.", total, argument.sympy.factor)


@derive(
    "Tension at which a hub held only by its weight slides",
    given=(q.HUB_MASS, q.HUB_FRICTION, q.GROUND_DEPRESSION),
    result=q.LINE_TENSION,
    assumptions=(
        "The ground is level, and nothing but weight and friction holds the hub.",
        "The hub does not tip or roll.",
    ),
    conditions=(
        Condition(
            "The line must pull the hub along the ground.",
            "A line this steep, downward, presses it on; check the angle.",
            lambda v: (
                np.cos(v["ground_depression"]) + v["hub_friction"] * np.sin(v["ground_depression"])
                > FLAT
            ),
        ),
    ),
    cautions=_GUIDED,
    source="derived here from dry friction; standard gravity from NIST SP 811",
)
def hub_sliding_tension(argument: Argument) -> Step:
    """Tension in N of all lines together at which a vehicle or boulder as hub begins to slide."""
    mass, mu, down = argument.symbols(q.HUB_MASS, q.HUB_FRICTION, q.GROUND_DEPRESSION)
    tension = argument.symbol(q.LINE_TENSION)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    gravity = argument.sympy.Float(repr(STANDARD_GRAVITY), 8)
    limit = argument.law(
        "At the limit the level pull equals the friction, and the upward pull takes away from the "
        "weight that presses the hub on.",
        tension * cos(down),
        mu * (gravity * mass - tension * sin(down)),
    )
    return argument.solve("Solve for the tension.", limit, tension)


REACH_OUT = Variable(
    "reach_out", r"q_\mathrm{max}", "furthest that the litter can be held off plumb", Kind.LENGTH,
    NOT_NEGATIVE, Range(0, 10, 2),
)  # fmt: skip


@derive(
    "How far off plumb so much tension holds the litter",
    given=(q.LOAD, q.LINE_TENSION, q.DROP, q.GROUND_DEPRESSION),
    result=REACH_OUT,
    assumptions=(
        _AT_P,
        "A tag line, or track lines from the haul directional; pulleys turn without friction.",
        "The ground depression is that at the place that is reached.",
    ),
    conditions=(
        Condition(
            "A line that rises to its hub must not lift the litter.",
            "Enter less tension or a lower hub.",
            lambda v: v["load"] + v["line_tension"] * np.sin(v["ground_depression"]) > 0,
        ),
    ),
    cautions=_GUIDED,
)
def reach_off_plumb(argument: Argument) -> Step:
    """Distance in m off plumb at which the line (or lines together) carry the tension in N."""
    load, tension, drop, down = argument.symbols(
        q.LOAD, q.LINE_TENSION, q.DROP, q.GROUND_DEPRESSION
    )
    out = argument.symbol(REACH_OUT)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    turning = argument.law(
        "About the directional the weight and the pull of the ground leg turn equally; all other "
        "pulls pass through it.",
        load * out,
        tension * (drop * cos(down) - out * sin(down)),
    )
    return argument.solve("Solve for the distance off plumb.", turning, out)


# --- turned round: how far out with so much tension? ------------------------------------------


def largest_offset(
    *, load: Any, line_tension: Any, z: Any, haul_directional: tuple[float, float],
    hub: tuple[float, float], track_directional: tuple[float, float] | None = None,
) -> Any:  # fmt: skip
    """Distance out in m at which the line to the hub carries ``line_tension`` (N, all together).

    Further out it would carry more. Where a line to a hub above the litter never carries so much,
    that is the hub's own distance; whether the haul line beside track lines stays taut is for
    :func:`~ropecalc.mechanics.holding.hold` to say. ``load`` N and ``z`` m, scalars
    or arrays; places (x, z) in m. A tag line, or track lines from the haul directional unless
    ``track_directional`` says otherwise. Raises :class:`DomainError` for heights at
    or above a directional.
    """
    weight, tension, height = checked((q.LOAD, load), (q.LINE_TENSION, line_tension), (q.Z, z))
    x_d, z_d = pair_of("haul_directional", haul_directional)
    x_b, z_b = pair_of("hub", hub)
    x_a, z_a = x_d, z_d
    if track_directional is not None:
        x_a, z_a = pair_of("track_directional", track_directional)
    if not (np.all(height < z_d) and np.all(height < z_a)):
        raise DomainError(
            "z is at or above a directional, whose line cannot lift the litter there. Lower z or "
            "raise the directional."
        )
    if not x_d < x_b:
        raise DomainError(
            "The hub must be further out than the haul directional. Move the hub or the "
            "directional."
        )
    weight, tension, height = np.broadcast_arrays(weight, tension, height)
    low, high = np.full(height.shape, x_d), np.full(height.shape, x_b)
    for _ in range(80):
        middle = (low + high) / 2
        up, leg = np.arctan2(z_d - height, middle - x_d), np.arctan2(z_a - height, middle - x_a)
        down = np.arctan2(height - z_b, x_b - middle)
        lever = np.sin(up - down) + np.sin(leg - up)
        inside = (lever > FLAT) & (weight * np.cos(up) < tension * lever)
        low, high = np.where(inside, middle, low), np.where(inside, high, middle)
    return float(low) if low.ndim == 0 else low
