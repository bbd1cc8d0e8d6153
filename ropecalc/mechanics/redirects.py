"""A rope that turns through a pulley: what the pulley's anchor feels, and which way it leans.

::

               o head          alpha_1: front strand below the horizontal (towards the litter)
    alpha_2  .   \\  alpha_1    alpha_2: back strand below the horizontal (towards the haul team)
          .       \\            lean: from plumb, positive inward (towards the haul team)
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, Condition, DomainError, Explanation, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.friction import Band, Direction
from ropecalc.mechanics.guiding import LEGS_OPEN
from ropecalc.mechanics.manners import account, checked, said
from ropecalc.mechanics.sheaves import over_sheave
from ropecalc.units import Display, Kind

_FREE_PULLEY = ("The pulley turns without friction, so both strands carry the same tension.",)
_HEAD = (
    "Count every line that runs through the head: haul line, track lines and, for the catch, the "
    "belay.",
    *cautions.EVERY_RESULT,
)
_ROUGH = (
    "An efficiency varies with rope, load, water and dirt: enter values that you measured.",
    _HEAD[0],
    cautions.STATIC,
    cautions.AUTHORITY,
)


@derive(
    "Pull on a redirect's anchor",
    given=(q.STRAND_TENSION, q.STRAND_ANGLE),
    result=q.REDIRECT_PULL,
    assumptions=_FREE_PULLEY,
)
def redirect_resultant(argument: Argument) -> Step:
    """Pull R in N on the anchor of a free pulley; 2S at 0, S at 120°, nothing at 180°."""
    tension, angle, pull = argument.symbols(q.STRAND_TENSION, q.STRAND_ANGLE, q.REDIRECT_PULL)
    part = tension * argument.sympy.cos(angle / 2)
    return argument.law(
        "Each strand lies half the angle from the bisector. Across it the two cancel; along it "
        "they add up to the pull on the anchor.",
        pull,
        part + part,
    )


@derive(
    "Which way a high directional is pulled",
    given=(q.FRONT_DEPRESSION, q.BACK_DEPRESSION),
    between=(q.STRAND_TENSION, q.INWARD_PULL, q.DOWNWARD_PULL),
    result=q.LEAN,
    assumptions=_FREE_PULLEY,
    conditions=(
        Condition(
            "The two strands must turn through the pulley.",
            "Make at least one of them point below the horizontal.",
            lambda v: v["front_depression"] + v["back_depression"] > 0,
        ),
    ),
)
def head_lean(argument: Argument) -> Step:
    """Lean in rad, inward positive, of the resultant at a high directional."""
    front, back, tension = argument.symbols(q.FRONT_DEPRESSION, q.BACK_DEPRESSION, q.STRAND_TENSION)
    inward, down, lean = argument.symbols(q.INWARD_PULL, q.DOWNWARD_PULL, q.LEAN)
    sin, cos, tan, atan = (getattr(argument.sympy, n) for n in ("sin", "cos", "tan", "atan"))
    sideways = argument.law(
        "Add the inward parts: the back strand pulls in, the front strand out.",
        inward,
        tension * cos(back) - tension * cos(front),
    )
    downward = argument.law(
        "Add the downward parts.", down, tension * sin(front) + tension * sin(back)
    )
    slope = argument.law(
        "The lean is the angle whose tangent is inward over down.", tan(lean), inward / down
    )
    put_in = argument.substitute("Put the parts in.", slope, sideways, downward)
    half = argument.rewrite(
        "The tension drops out and half the difference of the angles remains.",
        put_in,
        tan((front - back) / 2),
    )
    return argument.rewrite(
        "Compare the angles.",
        argument.solved("Take the angle whose tangent that is.", lean, atan(half.equation.rhs)),
        (front - back) / 2,
    )


@derive(
    "Pull on a head through which haul line and track lines run",
    given=(q.LOAD, q.HAUL_ELEVATION, q.GROUND_DEPRESSION, q.BACK_DEPRESSION),
    between=(q.FRONT_TOGETHER, q.LINE_TENSION, q.STRAND_ANGLE),
    result=q.REDIRECT_PULL,
    assumptions=(
        *_FREE_PULLEY,
        "Haul line and track lines leave the same head and run back side by side.",
    ),
    conditions=(LEGS_OPEN,),
    cautions=_HEAD,
)
def combined_head_pull(argument: Argument) -> Step:
    """Pull R in N on a head that carries haul and track lines (more than the haul line alone).

    The front strands lie along the haul elevation, the back strands ``back_depression`` below the
    horizontal.
    """
    load, up, down, back = argument.symbols(
        q.LOAD, q.HAUL_ELEVATION, q.GROUND_DEPRESSION, q.BACK_DEPRESSION
    )
    together, line, angle, pull = argument.symbols(
        q.FRONT_TOGETHER, q.LINE_TENSION, q.STRAND_ANGLE, q.REDIRECT_PULL
    )
    sin, cos = argument.sympy.sin, argument.sympy.cos
    sideways = argument.law(
        "Sideways balance at the litter: all strands to the head together pull in as hard as the "
        "ground leg pulls out.",
        together * cos(up),
        line * cos(down),
    )
    upward = argument.law(
        "Upward balance at the litter.", together * sin(up) - line * sin(down), load
    )
    expressed = argument.solve("Express the ground leg by the strands.", sideways, line)
    put_in = argument.substitute("Put it into the upward balance.", upward, expressed)
    strands = argument.solve("Solve for the strands together.", put_in, together)
    neat = argument.rewrite(
        "Bring the fractions together (sine of a difference).",
        strands,
        load * cos(down) / sin(up - down),
    )
    between = argument.law(
        "The angle between front and back strands is what the two leave of half a turn.",
        angle,
        argument.sympy.pi - up - back,
    )
    half = argument.law(
        "Front and back strands carry the same; they add up along their bisector.",
        pull,
        2 * together * cos(angle / 2),
    )
    return argument.rewrite(
        "Write the cosine as a sine.",
        argument.substitute("Put strands and angle in.", half, neat, between),
        2 * load * cos(down) * sin((up + back) / 2) / sin(up - down),
    )


# --- with friction, and with any number of lines ----------------------------------------------

_TENSIONS = (q.FRONT_TENSION, q.BACK_TENSION, q.FRONT_DEPRESSION, q.BACK_DEPRESSION)
_SOME_DOWN = Condition(
    "The strands together must pull the head downward.",
    "Make at least one strand with tension point below the horizontal.",
    lambda v: (
        v["front_tension"] * np.sin(v["front_depression"])
        + v["back_tension"] * np.sin(v["back_depression"])
        > 0
    ),
)


def _parts(argument: Argument) -> tuple[Step, Step]:
    front, back, front_angle, back_angle = argument.symbols(*_TENSIONS)
    inward, down = argument.symbols(q.INWARD_PULL, q.DOWNWARD_PULL)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    sideways = argument.law(
        "Add the inward parts: the back strand pulls in, the front strand out.",
        inward,
        back * cos(back_angle) - front * cos(front_angle),
    )
    downward = argument.law(
        "Add the downward parts.", down, front * sin(front_angle) + back * sin(back_angle)
    )
    return sideways, downward


@derive(
    "Pull on a redirect whose strands carry different tensions",
    given=_TENSIONS,
    between=(q.INWARD_PULL, q.DOWNWARD_PULL),
    result=q.REDIRECT_PULL,
    assumptions=("Both strands are straight and lie in one plane.",),
    cautions=_ROUGH,
)
def unequal_redirect_pull(argument: Argument) -> Step:
    """Pull R in N on the anchor of a pulley with friction, from both strand tensions."""
    front, back, front_angle, back_angle = argument.symbols(*_TENSIONS)
    inward, down, pull = argument.symbols(q.INWARD_PULL, q.DOWNWARD_PULL, q.REDIRECT_PULL)
    sqrt, cos = argument.sympy.sqrt, argument.sympy.cos
    sideways, downward = _parts(argument)
    square = argument.law(
        "The two parts stand at right angles (Pythagoras).", pull, sqrt(inward**2 + down**2)
    )
    put_in = argument.substitute("Put the parts in.", square, sideways, downward)
    return argument.rewrite(
        "The squares of sine and cosine make one; the angles meet in one cosine.",
        put_in,
        sqrt(front**2 + back**2 - 2 * front * back * cos(front_angle + back_angle)),
    )


@derive(
    "Which way a head with friction is pulled",
    given=_TENSIONS,
    between=(q.INWARD_PULL, q.DOWNWARD_PULL),
    result=q.LEAN,
    assumptions=("Both strands are straight and lie in one plane.",),
    conditions=(_SOME_DOWN,),
    cautions=_ROUGH,
)
def unequal_head_lean(argument: Argument) -> Step:
    """Lean in rad, inward positive, of the pull of two strands with different tensions."""
    inward, down, lean = argument.symbols(q.INWARD_PULL, q.DOWNWARD_PULL, q.LEAN)
    sideways, downward = _parts(argument)
    slope = argument.law(
        "The lean is the angle whose tangent is inward over down.",
        argument.sympy.tan(lean),
        inward / down,
    )
    put_in = argument.substitute("Put the parts in.", slope, sideways, downward)
    return argument.solved(
        "Take the angle whose tangent that is.", lean, argument.sympy.atan(put_in.equation.rhs)
    )


@derive(
    "Pull on a redirect with friction, while hauling",
    given=(q.FRONT_TENSION, q.SHEAVE_EFFICIENCY, q.STRAND_ANGLE),
    between=(q.BACK_TENSION,),
    result=q.REDIRECT_PULL,
    assumptions=(
        "Both strands are straight and lie in one plane.",
        "The efficiency was measured at this turn of the rope.",
    ),
    cautions=_ROUGH,
)
def hauled_redirect_pull(argument: Argument) -> Step:
    """Pull R in N on the anchor of a pulley over which a load is hauled."""
    front, efficiency, angle = argument.symbols(
        q.FRONT_TENSION, q.SHEAVE_EFFICIENCY, q.STRAND_ANGLE
    )
    back, pull = argument.symbols(q.BACK_TENSION, q.REDIRECT_PULL)
    sqrt, cos = argument.sympy.sqrt, argument.sympy.cos
    behind = argument.law(
        "Hauling, the rope moves towards the team: the front strand is behind and carries the "
        "efficiency times what the team's strand carries.",
        front,
        efficiency * back,
    )
    ahead = argument.solve("So this is on the team's side.", behind, back)
    summed = argument.law(
        "Add both strands as arrows, with the angle between them.",
        pull,
        sqrt(front**2 + back**2 + 2 * front * back * cos(angle)),
    )
    return argument.substitute("Put the team's side in.", summed, ahead)


@dataclass(frozen=True)
class HeadLine:
    """A line, or several alike, through a head.

    ``direction`` is this line's own: hauling while its rope runs over the head towards the team,
    lowering while it runs towards the litter, holding while it stands still, as a track line does
    that is made fast behind the head while the litter is raised or lowered. ``front_tension`` N
    of the strand towards the litter; both depressions in rad below the horizontal (front towards
    the litter, back towards the team), 0 to π/2. ``name`` as it is called on the page.
    """

    name: str
    direction: str
    front_tension: float
    front_depression: float
    back_depression: float


@dataclass(frozen=True)
class HeadLoad:
    """What several lines do to one head: forces in N, lean in rad, each as a band.

    ``inward`` (towards the team) and ``downward`` are the parts of the pull, ``pull`` its size,
    ``lean`` its angle from plumb (inward positive). ``back_tensions`` of a line that moves span
    what its pulley may lose at this turn (see :mod:`ropecalc.mechanics.sheaves`); of one that is
    held, everything that friction allows. ``corners`` holds the (inward, downward) pulls of the
    extreme cases.
    """

    lines: tuple[HeadLine, ...]
    back_tensions: tuple[Band, ...]
    inward: Band
    downward: Band
    pull: Band
    lean: Band
    corners: tuple[tuple[float, float], ...]
    cautions: tuple[str, ...] = _ROUGH

    def explain(self, display: Display | None = None) -> Explanation:
        """Line by line, then the sum."""
        display = display or Display()
        told = [
            said(
                "At the pulley the side the rope moves towards carries more; behind it is only a "
                "share of the tension ahead: the efficiency, or more where the rope turns little.",
                r"S_\mathrm{b} = \eta_\gamma S_\mathrm{a}",
                law=True,
            )
        ]
        for line, back in zip(self.lines, self.back_tensions, strict=True):
            told.append(
                said(
                    f"{line.name}: {display.show(line.front_tension, Kind.FORCE)} in front, "
                    f"{back.outwards(Kind.FORCE, display)} at the back while {line.direction}."
                )
            )
        told.append(
            said(
                "Add all strands as arrows: inward "
                f"{self.inward.outwards(Kind.FORCE, display)}, down "
                f"{self.downward.outwards(Kind.FORCE, display)}."
            )
        )
        return account(
            "Several lines in one head",
            told,
            f"pull {self.pull.outwards(Kind.FORCE, display)}, lean "
            f"{self.lean.outwards(Kind.ANGLE, display)} (inward positive)",
            assumptions=(
                "All lines lie in one plane and turn over pulleys of one efficiency, measured with "
                "parallel strands.",
            ),
            cautions=self.cautions,
        )


def head_load(lines: Sequence[HeadLine], *, efficiency: float) -> HeadLoad:
    """The vector sum of all lines through one head, with the friction of its pulleys.

    ``efficiency`` of each sheave (0 to 1), measured with parallel strands; how much is lost at each
    line's turn is known only between two bounds. Each line has its own direction. Count every
    line: haul, track and, for the catch, belay. Raises :class:`DomainError` for no lines, values
    out of range, or lines that do not pull the head down.
    """
    (share,) = checked((q.SHEAVE_EFFICIENCY, efficiency))
    if not lines:
        raise DomainError("No lines run through the head; give at least one.")
    values, backs = [], []
    for line in lines:
        way = Direction.of(line.direction)
        tension, front, back = checked(
            (q.FRONT_TENSION, line.front_tension),
            (q.FRONT_DEPRESSION, line.front_depression),
            (q.BACK_DEPRESSION, line.back_depression),
        )
        if any(np.ndim(value) for value in (share, tension, front, back)):
            raise DomainError("head_load takes single numbers; give one case at a time.")
        values.append((tension, front, back))
        backs.append(_back_tension(way, tension, front + back, share))
    fixed = sum(s * np.array([-np.cos(a), np.sin(a)]) for s, a, _ in values)
    ways = [np.array([np.cos(b), np.sin(b)]) for _, _, b in values]
    corners = [
        fixed + sum(tension * unit for tension, unit in zip(chosen, ways, strict=True))
        for chosen in product(*({back.low, back.high} for back in backs))
    ]
    inward, down = np.array(corners).T
    if not np.all(down > 0):
        raise DomainError(f"{_SOME_DOWN.sentence} {_SOME_DOWN.remedy}")
    sizes, leans = np.hypot(inward, down), np.arctan2(inward, down)
    least = _least_pull(fixed, ways, backs) if len(corners) > 1 else float(sizes[0])
    return HeadLoad(
        tuple(lines),
        tuple(backs),
        inward=_over(inward),
        downward=_over(down),
        pull=Band(least, float(max(sizes))),
        lean=_over(leans),
        corners=tuple((float(i), float(d)) for i, d in zip(inward, down, strict=True)),
    )


def _back_tension(way: Direction, front: float, turn: float, share: float) -> Band:
    """What the strand towards the team may carry, by both models of a pulley that turns."""
    if front == 0.0:
        return Band(0.0, 0.0)
    return over_sheave(way, load_side=front, efficiency=share, turn=turn).team_side


def _over(values: Any) -> Band:
    return Band(float(min(values)), float(max(values)))


def _least_pull(fixed: Any, ways: Sequence[Any], backs: Sequence[Band]) -> float:
    """The smallest pull over all back tensions that friction allows (it need not be a corner)."""
    from scipy.optimize import lsq_linear

    scale = max(back.high for back in backs) or 1.0
    low = np.array([back.low for back in backs]) / scale
    high = np.array([back.high for back in backs]) / scale
    room = np.maximum(high, low + 1e-12)
    found = lsq_linear(np.array(ways).T, -fixed / scale, bounds=(low, room), tol=1e-14)
    return float(np.linalg.norm(found.fun)) * scale
