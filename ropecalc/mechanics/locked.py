"""A track line whose tensioner is locked: the litter can only move on an ellipse.

::

     A                       The rope from the track directional A past the litter to the hub B
      `.                     keeps its length: the litter moves on an ellipse about A and B.
        P   - .              Raising against it swings the litter in, lowering swings it out. That
      /         ' - .  B     is certain; how far depends on how much the rope stretches.
     '  ' - . . . - '

Where guiding is hardest, near the directional, lowering raises the track tension and raising lets
the track line go slack. Far out and low down the tension changes the other way. Never lower
against a locked tensioner, and never raise far against one if the litter needs its distance out.
"""

from dataclasses import dataclass
from operator import sub
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, Condition, DomainError, Explanation, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import stretch
from ropecalc.mechanics.holding import Hold, Method, Reach, Rig, hold
from ropecalc.mechanics.manners import account, checked, named, one_case, said
from ropecalc.mechanics.roots import bisected
from ropecalc.mechanics.slip import line_length, outward_balance
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS
from ropecalc.mechanics.stretch import BOTH_BOUNDS, ELASTIC
from ropecalc.units import Display, Kind, Rounding

OUT_BEFORE_DOWN = (
    "Let the tensioner out before lowering. Lowering against a locked tensioner swings the litter "
    "out and, near the directional, raises the track tension."
)
_NEAR = (OUT_BEFORE_DOWN, cautions.NEAR_DIRECTIONAL, cautions.COMMON_HUB)
_CAUTIONS = (*_NEAR, *cautions.EVERY_RESULT)
_STRETCHING = (
    ELASTIC,
    BOTH_BOUNDS,
    *_NEAR,
    cautions.STRETCHING,
    cautions.FRICTIONLESS,
    cautions.AUTHORITY,
)
_RIGID = (
    "The tensioner is locked: the track rope from its directional to the hub keeps its length.",
    "Straight ropes that do not stretch.",
)
_FOCI = (q.TRACK_LENGTH, q.Z, q.X_A, q.Z_A, q.X_B, q.Z_B)
_LONG_ENOUGH = Condition(
    "The track rope must be longer than the straight way from its directional to the hub, and its "
    f"two legs not lie within {FLAT_WORDS} of one straight line.",
    "Give more rope, or move the directional or the hub.",
    lambda v: (
        np.hypot(v["x_B"] - v["x_A"], v["z_A"] - v["z_B"]) < v["track_length"] * np.cos(FLAT / 2)
    ),
)
_IN_REACH = Condition(
    "The litter cannot be at this height: the track line alone carries it before it gets there.",
    "Change the height, or let the tensioner out.",
    lambda v: (
        (2 * v["z"] - v["z_A"] - v["z_B"]) ** 2
        <= v["track_length"] ** 2 - (v["x_B"] - v["x_A"]) ** 2
    ),
)
_STEPS_ON_THE_WAY = 101
UPPER_LEG = named(
    q.HAUL_LEG_LENGTH, "upper_leg_length", "length of the track's upper leg", r"\ell_\mathrm{u}"
)


@derive(
    "Locked tensioner: where the litter is at a height",
    given=_FOCI,
    between=(UPPER_LEG, q.GROUND_LEG_LENGTH),
    result=q.X,
    assumptions=(*_RIGID, "The track line is tight."),
    conditions=(_LONG_ENOUGH, _IN_REACH),
    cautions=_CAUTIONS,
    source="derived here from Pythagoras: the ellipse about the track directional and the hub",
)
def locked_offset(argument: Argument) -> Step:
    """Distance x in m out from the wall at height z while the track rope keeps its length.

    The side of the ellipse that faces the wall. An answer further in than the haul directional
    means that the track line is slack and the litter hangs plumb.
    """
    length, z, x_a, z_a, x_b, z_b = argument.symbols(*_FOCI)
    x, upper, ground = argument.symbols(q.X, UPPER_LEG, q.GROUND_LEG_LENGTH)
    sp = argument.sympy
    above = argument.law("The upper leg (Pythagoras).", upper**2, (x - x_a) ** 2 + (z_a - z) ** 2)
    below = argument.law("The ground leg (Pythagoras).", ground**2, (x_b - x) ** 2 + (z - z_b) ** 2)
    rope = argument.law("Both legs are one rope whose length is locked.", ground, length - upper)
    put_in = argument.substitute("Put the ground leg in.", below, rope)
    apart = argument.combine(
        "Subtract the upper leg's equation: its square drops out on the left.",
        lambda one, other: sp.expand(one - other),
        put_in,
        above,
        called="subtract",
    )
    leg = argument.solve("Solve for the upper leg.", apart, upper)
    square = argument.substitute("Put it into the upper leg's equation.", above, leg)
    inner = argument.solved(
        "A quadratic equation for x. Its smaller root lies on the side that faces the wall.",
        x,
        _smaller(argument, sp.solve(square.equation, x)),
    )
    wide, high = x_b - x_a, z_a - z_b
    off_middle = 2 * z - z_a - z_b
    root = sp.sqrt((length**2 - wide**2 - high**2) * (length**2 - wide**2 - off_middle**2))
    return argument.rewrite(
        "Gather it around the middle between directional and hub.",
        inner,
        (x_a + x_b) / 2 - (wide * high * off_middle + length * root) / (2 * (length**2 - wide**2)),
    )


def _smaller(argument: Argument, roots: list[Any]) -> Any:
    place = {argument.symbol(v): v.teaching.default for v in (q.Z, q.X_A, q.Z_A, q.X_B, q.Z_B)}
    place[argument.symbol(q.TRACK_LENGTH)] = 60.0
    return min(roots, key=lambda root: float(root.subs(place)))


@derive(
    "Locked tensioner: swing in while the litter is raised",
    given=(q.TRACK_ELEVATION, q.GROUND_DEPRESSION),
    between=(q.TAKE_IN_RATE,),
    result=q.SWING_IN_RATE,
    assumptions=(*_RIGID, "The litter is raised by a short distance."),
    conditions=(
        Condition(
            f"The track's upper leg must be steeper than its ground leg, by more than {FLAT_WORDS} "
            "up or down.",
            "Lower the hub, or bring the litter closer in.",
            lambda v: v["track_elevation"] - np.abs(v["ground_depression"]) > FLAT,
        ),
        Condition(
            "The ground leg must not fall more steeply than the upper leg rises; raising would "
            "swing the litter out.",
            "Move the hub further out.",
            lambda v: v["track_elevation"] + v["ground_depression"] < np.pi,
        ),
    ),
    cautions=_CAUTIONS,
    source="derived here from the change of the two legs",
)
def swing_in_rate(argument: Argument) -> Step:
    """Distance the litter swings in per length raised against a locked tensioner, m per m.

    Always positive: raising swings it in. Lowering swings it out by as much.
    """
    up, down, rate, inward = argument.symbols(
        q.TRACK_ELEVATION, q.GROUND_DEPRESSION, q.TAKE_IN_RATE, q.SWING_IN_RATE
    )
    sin, cos, tan = argument.sympy.sin, argument.sympy.cos, argument.sympy.tan
    slack = argument.law(
        "Straight up, both legs together would shorten by the difference of the sines.",
        rate,
        sin(up) - sin(down),
    )
    taken = argument.law(
        "Straight in, they lengthen by the difference of the cosines for each length. The swing "
        "in takes up what the rise gives, for the rope keeps its length.",
        rate,
        inward * (cos(down) - cos(up)),
    )
    both = argument.combine("Both are the same.", sub, slack, taken, called="subtract")
    found = argument.solve("Solve for the swing in.", both, inward)
    return argument.rewrite(
        "Half-angle form: it depends on the mean of the two angles only.",
        found,
        1 / tan((up + down) / 2),
    )


# --- forces at the new height ----------------------------------------------------------------


@dataclass(frozen=True)
class Bound:
    """Where the litter is at its new height (x in m), and the forces that hold it there.

    ``forces.reach`` is :attr:`Reach.PLUMB` where the track line has gone slack.
    """

    x: Any
    forces: Hold


@dataclass(frozen=True)
class Locked:
    """A litter raised or lowered while the tensioner stays locked; x in m, forces in N.

    ``before`` is the start; ``rigid`` and ``elastic`` are the two bounds at the new height ``z``.
    ``largest_track_tension`` is the largest from the start to the new height: what forces have to
    allow for. It is that of ropes that do not stretch: a rope that stretches, and carries more than
    at the start, is longer than that and carries less.
    """

    rig: Rig
    load: float
    z_before: float
    z: Any
    stiffness: float
    track_length: float
    before: Bound
    rigid: Bound
    elastic: Bound
    largest_track_tension: Any
    cautions: tuple[str, ...] = _STRETCHING

    @property
    def least_x(self) -> Any:
        """The smaller of the two distances out in m: what clearance from the wall counts on."""
        return np.minimum(self.rigid.x, self.elastic.x)

    def explain(self, display: Display | None = None) -> Explanation:
        """What raising or lowering did, in words, for a single height (not an array)."""
        one_case(self.z, self.elastic.x)
        display = display or Display()

        def bound(name: str, at: Bound) -> str:
            distance = display.show(at.x, Kind.LENGTH)
            if at.forces.reach is Reach.PLUMB:
                return (
                    f"{name}: the track line has gone slack and the litter hangs plumb, {distance} "
                    "out from the wall."
                )
            tension = display.show(at.forces.line_tension, Kind.FORCE)
            return f"{name}: {distance} out from the wall, track tension {tension}."

        if self.z == self.z_before:
            what = "Neither raised nor lowered: the litter stays where it is."
        else:
            how, way = ("Raising", "in") if self.z > self.z_before else ("Lowering", "out")
            what = (
                f"{how} against a locked tensioner swings the litter {way}: the rope keeps its "
                "length."
            )
        lines = (
            said(what, law=True),
            said(bound("Before", self.before)),
            said(bound("At the new height, if nothing stretches", self.rigid)),
            said(bound("At the new height, if the track line stretches", self.elastic)),
        )
        largest = display.show(self.largest_track_tension, Kind.FORCE, rounding=Rounding.UP)
        least = display.show(self.least_x, Kind.LENGTH, rounding=Rounding.DOWN)
        return account(
            "A locked tensioner",
            lines,
            f"track tension: allow for {largest}; distance out: count on {least}",
            assumptions=(
                "The tensioner is locked and the haul line alone changes its length.",
                "Only the rope between directional and hub stretches; more rope under tension "
                "makes the line softer.",
            ),
            cautions=self.cautions,
        )


def move_locked(
    rig: Rig, load: float, x: float, z: float, *, new_z: Any, stiffness: float
) -> Locked:
    """A litter of weight ``load`` N held by track lines at ``x``, ``z`` m, moved to ``new_z`` m.

    ``new_z`` may be an array. ``stiffness`` EA in N is that of all track lines together. Raises
    :class:`DomainError` where the litter is not held at the start, for heights at or above a
    directional, and for heights that it cannot be lowered to because the track line alone
    carries it first.
    """
    new_z, stiffness = checked((named(q.Z, "new_z", "new height of the litter"), new_z),
                               (q.STIFFNESS, stiffness))  # fmt: skip
    start = hold(Method.TRACK, rig, load, x, z)
    if np.ndim(start.reach):
        raise DomainError("x or z is an array; give one place to start from.")
    if start.reach is not Reach.HELD:
        raise DomainError(start.reach.sentence)
    top, track, hub = rig.haul_directional, rig.track_directional, rig.hub
    if np.any(new_z >= min(top.z, track.z)):
        raise DomainError(Reach.ABOVE_DIRECTIONAL.sentence)
    length = float(line_length(Method.TRACK, rig, x, z))
    ends = {"x_A": track.x, "z_A": track.z, "x_B": hub.x, "z_B": hub.z}
    on_ellipse = np.maximum(locked_offset(track_length=length, z=new_z, **ends), top.x)
    loose = stretch.unstretched_length(
        stretched_length=length, rope_tension=start.line_tension, stiffness=stiffness
    )

    def pulls_out(at: Any) -> Any:
        longer = np.maximum(line_length(Method.TRACK, rig, at, new_z) - loose, 0.0)
        tension = stiffness * longer / loose
        return outward_balance(Method.TRACK, rig, load, at, new_z, tension)

    # where the track would be shortest at this height: on the straight line to the hub, or below
    # a hub that is higher, where both legs rise alike and the haul line would go slack
    share = (track.z - new_z) / (track.z - new_z + np.abs(new_z - hub.z))
    furthest = np.maximum(track.x + (hub.x - track.x) * share, top.x)
    if np.any((furthest > top.x) & (pulls_out(furthest) > 0)):
        raise DomainError(Reach.HAUL_SLACK.sentence)
    slack = line_length(Method.TRACK, rig, top.x, new_z) <= loose
    settled = np.where(slack, top.x, bisected(pulls_out, top.x, furthest))
    return Locked(
        rig=rig,
        load=float(load),
        z_before=float(z),
        z=new_z,
        stiffness=stiffness,
        track_length=length,
        before=Bound(float(x), start),
        rigid=_bound(rig, load, on_ellipse, new_z),
        elastic=_bound(rig, load, settled, new_z),
        largest_track_tension=_largest_on_the_way(rig, load, length, z, new_z, ends),
    )


def _largest_on_the_way(
    rig: Rig, load: float, length: float, z: float, new_z: Any, ends: dict[str, float]
) -> Any:
    """Largest track tension in N between the two heights, for a rope that does not stretch."""
    share = np.linspace(0.0, 1.0, _STEPS_ON_THE_WAY).reshape(-1, *[1] * np.ndim(new_z))
    heights = z + share * (new_z - z)
    x = np.maximum(locked_offset(track_length=length, z=heights, **ends), rig.haul_directional.x)
    largest = np.max(hold(Method.TRACK, rig, load, x, heights).line_tension, axis=0)
    return largest if np.ndim(new_z) else float(largest)


def _bound(rig: Rig, load: float, x: Any, z: Any) -> Bound:
    x = x if np.ndim(x) else float(x)
    forces = hold(Method.TRACK, rig, load, x, z)
    for reach in np.unique(forces.reach):
        if not Reach(int(reach)).possible:
            raise DomainError(Reach(int(reach)).sentence)
    return Bound(x, forces)
