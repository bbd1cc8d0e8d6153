"""The frame under a high directional: where its load lands, guys, leg compression, tipping.

::

        inward  <-   o head          h_F  height of the head above the feet
                    /|\\             x_F  distance of the head out past the front feet
      guy (in)     / | \\  guy (out)
                  /  |  \\           the pull on the head: R_x inward, R_z down
     ------------'---+---'-- > out   a guy makes the angle gamma_G below the horizontal; negative
       back foot   front feet        when it rises, as to a tree

A frame stands on its own while the line of action of the pull meets the ground between its feet.
Beyond them it tips unless a guy holds it, and a guy adds to the load on the legs.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, Condition, DomainError, Explanation, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.legs import ROUNDING, places_of, vectors_of
from ropecalc.mechanics.manners import account, checked, named, said
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS
from ropecalc.units import Display, Kind

FRAME = (
    "Only the balance of the frame in its own plane. Left out: sideways lean, feet that slip or "
    "sink, legs that buckle, the frame's own rating and its anchors.",
    *cautions.EVERY_RESULT,
)
_PLANE = (
    "The front feet act as a hinge on level ground; they are held against slipping.",
    "All pulls on the head meet in one point.",
)
_GUYED = (q.INWARD_PULL, q.DOWNWARD_PULL, q.HEAD_HEIGHT, q.HEAD_REACH, q.GUY_DEPRESSION)


@derive(
    "Where the pull on a head meets the ground",
    given=(q.HEAD_HEIGHT, q.HEAD_REACH, q.LEAN),
    result=q.LANDING,
    assumptions=("The ground at the feet is level.",),
    cautions=FRAME,
    source="derived here from the slope of the line of action",
)
def landing(argument: Argument) -> Step:
    """Distance in m behind the front feet where the line of action lands; negative is out front."""
    height, reach, lean = argument.symbols(q.HEAD_HEIGHT, q.HEAD_REACH, q.LEAN)
    run = argument.symbol(q.LANDING)
    slope = argument.law(
        "From the head down to the ground the line of action runs inward by the tangent of its "
        "lean times the height; it starts out past the feet by the reach.",
        run + reach,
        height * argument.sympy.tan(lean),
    )
    return argument.solve("Solve for the distance behind the feet.", slope, run)


def _guyed(argument: Argument, outward: bool) -> Step:
    inward, down, height, reach, angle = argument.symbols(*_GUYED)
    guy = argument.symbol(q.GUY_TENSION)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    tipping = height * inward - reach * down
    if outward:
        moments = argument.law(
            "Moments about the front feet: the inward pull tips the frame back with the height as "
            "its arm, the downward pull tips it out with the reach; the guy in front holds with "
            "both of its parts.",
            guy * cos(angle) * height + guy * sin(angle) * reach,
            tipping,
        )
    else:
        moments = argument.law(
            "Moments about the front feet: the downward pull tips the frame out with the reach as "
            "its arm, the inward pull tips it back with the height; the level part of the guy "
            "behind holds, and its downward part tips out too.",
            guy * cos(angle) * height - guy * sin(angle) * reach,
            -tipping,
        )
    return argument.solve("Solve for the tension of the guy.", moments, guy)


def _lever(values: Mapping[str, Any], side: int) -> Any:
    """Sine of the angle at the head between guy and feet; side 1 for a guy in front, -1 behind."""
    height, reach, angle = (values[v.name] for v in _GUYED[2:])
    return (height * np.cos(angle) + side * reach * np.sin(angle)) / np.hypot(height, reach)


@derive(
    "Guy in front of a frame that would fall back",
    given=_GUYED,
    result=q.GUY_TENSION,
    assumptions=(*_PLANE, "The guy runs from the head straight out, away from the team."),
    conditions=(
        Condition(
            "The pull must tip the frame back, towards the team.",
            "If it tips the frame out, ask for the guy behind it.",
            lambda v: v["head_height"] * v["inward_pull"] >= v["head_reach"] * v["downward_pull"],
        ),
        Condition(
            f"The guy must pass in front of the feet, seen from the head more than {FLAT_WORDS} "
            "away from them, or it cannot hold the frame.",
            "Lead it flatter or further out.",
            lambda v: _lever(v, 1) > FLAT,
        ),
    ),
    cautions=FRAME,
    source="derived here from moments about the feet",
)
def guy_in_front(argument: Argument) -> Step:
    """Tension G in N of a guy on the cliff side; with the head above its feet it is R_x / cos."""
    return _guyed(argument, True)


@derive(
    "Guy behind a frame that would fall out",
    given=_GUYED,
    result=q.GUY_TENSION,
    assumptions=(*_PLANE, "The guy runs from the head straight in, towards the team."),
    conditions=(
        Condition(
            "The pull must tip the frame out, away from the team.",
            "If it tips the frame back, ask for the guy in front of it.",
            lambda v: v["head_height"] * v["inward_pull"] <= v["head_reach"] * v["downward_pull"],
        ),
        Condition(
            f"The guy must pass behind the feet, seen from the head more than {FLAT_WORDS} away "
            "from them, or it cannot hold the frame.",
            "Lead it flatter or further back.",
            lambda v: _lever(v, -1) > FLAT,
        ),
    ),
    cautions=FRAME,
    source="derived here from moments about the feet",
)
def guy_behind(argument: Argument) -> Step:
    """Tension G in N of a guy on the team's side."""
    return _guyed(argument, False)


@derive(
    "Compression of a frame's legs",
    given=(
        q.DOWNWARD_PULL,
        q.GUY_TENSION,
        q.GUY_DEPRESSION,
        q.HEAD_HEIGHT,
        q.HEAD_REACH,
        q.LEG_HALF_SPREAD,
    ),
    between=(q.FRAME_FORCE,),
    result=q.LEG_COMPRESSION,
    assumptions=(
        *_PLANE,
        "Two equal legs and one guy whose tension balances the frame; the pull is in its plane.",
    ),
    conditions=(
        Condition(
            "Pull and guy together must press the frame down.",
            "A guy that rises must not carry more than the downward pull.",
            lambda v: v["downward_pull"] + v["guy_tension"] * np.sin(v["guy_depression"]) > 0,
        ),
        Condition(
            f"The legs must stand up by more than {FLAT_WORDS}: legs that lie flat carry nothing.",
            "Raise the head, or set the feet closer together.",
            lambda v: (
                (np.arctan2(v["head_height"], abs(v["head_reach"])) > FLAT)
                & (np.pi / 2 - v["leg_half_spread"] > FLAT)
            ),
        ),
    ),
    cautions=FRAME,
    source="derived here from balance at the head",
)
def leg_compression(argument: Argument) -> Step:
    """Compression in N of each of two legs; the guy, in front or behind, adds to it."""
    down, guy, angle, height, reach, half = argument.symbols(
        q.DOWNWARD_PULL,
        q.GUY_TENSION,
        q.GUY_DEPRESSION,
        q.HEAD_HEIGHT,
        q.HEAD_REACH,
        q.LEG_HALF_SPREAD,
    )
    frame, leg = argument.symbols(q.FRAME_FORCE, q.LEG_COMPRESSION)
    sp = argument.sympy
    upward = argument.law(
        "Upward balance at the head: the frame pushes along its own line, and the share of its "
        "push that points up carries the downward pull and the downward part of the guy.",
        frame * height / sp.sqrt(height**2 + reach**2),
        down + guy * sp.sin(angle),
    )
    found = argument.solve("Solve for the force along the frame.", upward, frame)
    shared = argument.law(
        "The two legs stand at half their angle to the frame's line and share its force.",
        2 * leg * sp.cos(half),
        frame,
    )
    each = argument.solve("Solve for one leg.", shared, leg)
    return argument.substitute("Put the force in.", each, found)


# --- does it stand? ---------------------------------------------------------------------------


class Standing(StrEnum):
    """What a frame does under a pull when no guy holds it."""

    STANDS = "stands"
    LIMIT = "is at its limit"
    TIPS_BACK = "tips back"
    TIPS_OUT = "tips out"

    @property
    def sentence(self) -> str:
        """The verdict in plain words, with what to change."""
        return _SENTENCES[self]


_SENTENCES = {
    Standing.STANDS: (
        "The line of action lands between the feet: the frame stands by itself in this plane."
    ),
    Standing.LIMIT: (
        "The line of action lands on the edge of the feet, or within a hair of it: the frame is at "
        "its limit, and the least change makes it fall. Guy it."
    ),
    Standing.TIPS_BACK: (
        "The line of action lands behind the back feet, so the frame falls back, towards the team. "
        "Guy it on the cliff side, set its back feet further back, or lead the lines in steeper."
    ),
    Standing.TIPS_OUT: (
        "The line of action lands in front of the front feet, so the frame falls out, over the "
        "edge. Guy it on the team's side, bring its head in, or lead the lines in flatter."
    ),
}


@dataclass(frozen=True)
class Footing:
    """Where the pull on a frame's head lands, and what follows.

    ``landing`` m behind the front feet; ``margin`` m from the nearer edge of the footprint
    (negative outside it); ``tipping_moment`` N m about the edge it tips over (0 where it stands).
    It is at its limit where the margin, seen from the head, is lost in an error of measurement.
    """

    standing: Standing
    landing: float
    margin: float
    tipping_moment: float
    back_foot: float
    cautions: tuple[str, ...] = FRAME

    def explain(self, display: Display | None = None) -> Explanation:
        """Landing, footprint, verdict."""
        display = display or Display()
        where = display.show(abs(self.landing), Kind.LENGTH)
        side = "behind" if self.landing >= 0 else "in front of"
        depth = display.show(self.back_foot, Kind.LENGTH)
        return account(
            "Where does the frame want to fall?",
            (
                said(
                    f"The line of action meets the ground {where} {side} the front feet.",
                    r"x_\mathrm{land} = h_F \tan(\lambda) - x_F",
                    law=True,
                ),
                said(f"The feet cover the ground from 0 to {depth} behind the front feet."),
            ),
            self.standing.sentence,
            assumptions=_PLANE[1:],
            cautions=self.cautions,
        )


def footing(
    *, inward_pull: float, downward_pull: float, head_height: float, head_reach: float,
    back_foot: float,
) -> Footing:  # fmt: skip
    """Whether a frame stands under a pull on its head (N; inward positive, down positive).

    ``head_height`` m above the feet, ``head_reach`` m out past the front feet, ``back_foot`` m
    from the front feet back to the back feet (0 for a two-legged frame: at best at its limit).
    """
    back = named(q.ANCHOR_SPACING, "back_foot", "distance of the back feet behind the front feet")
    inward, down, height, reach, depth = checked(
        (q.INWARD_PULL, inward_pull),
        (q.DOWNWARD_PULL, downward_pull),
        (q.HEAD_HEIGHT, head_height),
        (q.HEAD_REACH, head_reach),
        (back, back_foot),
    )
    if any(np.ndim(value) for value in (inward, down, height, reach, depth)):
        raise DomainError("footing takes single numbers; give one case at a time.")
    place = landing(head_height=height, head_reach=reach, lean=float(np.arctan2(inward, down)))
    margin = min(place, depth - place)
    if abs(margin) <= FLAT * height:
        standing = Standing.LIMIT
    elif margin > 0:
        standing = Standing.STANDS
    else:
        standing = Standing.TIPS_OUT if place < 0 else Standing.TIPS_BACK
    return Footing(standing, place, margin, down * max(0.0, -margin), depth)


# --- frames in space --------------------------------------------------------------------------


@dataclass(frozen=True)
class FrameForces:
    """Forces in N along the members of a frame in space: legs pushed, guys pulled.

    ``compressions`` of the legs and ``guy_tensions`` are positive; ``head`` and ``pull`` as given.
    """

    compressions: tuple[float, ...]
    guy_tensions: tuple[float, ...]
    head: tuple[float, ...]
    pull: tuple[float, ...]
    cautions: tuple[str, ...] = (
        "Left out: feet that slip or sink, legs that buckle, the frame's own rating, its anchors.",
        cautions.AUTHORITY,
    )

    def explain(self, display: Display | None = None) -> Explanation:
        """The balance at the head, member by member."""
        display = display or Display()
        told = [
            said(
                "Three straight members meet at the head and balance the pull: out, along the wall "
                "and upward make three equations.",
                r"\sum N_i \vec{u}_i + \vec{F} = 0",
                law=True,
            )
        ]
        for what, forces in (("Leg", self.compressions), ("Guy", self.guy_tensions)):
            does = "is pressed with" if what == "Leg" else "pulls with"
            told += [
                said(f"{what} {number} {does} {display.show(force, Kind.FORCE)}.")
                for number, force in enumerate(forces, 1)
            ]
        worst = display.show(max(self.compressions), Kind.FORCE)
        return account(
            "A frame in space",
            told,
            f"most loaded leg: {worst}",
            assumptions=("Members hinge at both ends; feet and guy anchors do not move.",),
            cautions=self.cautions,
        )


def frame_in_space(head: Any, feet: Any, pull: Any, *, guys: Any = ()) -> FrameForces:
    """Forces in three members that meet at ``head``: legs to ``feet``, guys to their anchors.

    Places in m (x out, y along the wall, z up), ``pull`` on the head in N (x, y, z). Three feet, or
    two feet and one guy. Raises :class:`DomainError`, with what it would do, when a leg would be
    pulled off the ground, a guy would have to push, or the members lie in one plane.
    """
    at, force, ground = vectors_of("head", head), vectors_of("pull", pull), places_of(feet, None)
    held = np.empty((0, 3)) if np.size(guys) == 0 else places_of(guys, None)
    if at.ndim != 1 or force.ndim != 1 or ground.ndim != 2 or held.ndim != 2:
        raise DomainError("Give one head, one pull, and one row for each foot and guy.")
    if len(ground) + len(held) != 3 or len(ground) < 2:
        raise DomainError(
            f"{len(ground)} legs and {len(held)} guys: statics settles three members. Give three "
            "legs, or two legs and one guy."
        )
    ways = np.concatenate([ground, held]) - at
    length = np.linalg.norm(ways, axis=1, keepdims=True)
    size = float(np.linalg.norm(force))
    if not np.all(length > 0) or not size > 0:
        raise DomainError("A member has no length, or the pull no size; check the places.")
    units = ways / length
    if not abs(np.linalg.det(units)) > FLAT:
        raise DomainError(
            "The three members lie in one plane, or nearly: the frame falls over sideways to it. "
            "Spread the feet, or lead the guy out of the plane of the legs."
        )
    along = np.linalg.solve(units.T, -force)
    along[np.abs(along) < ROUNDING * size] = 0.0
    legs, tied = -along[: len(ground)], along[len(ground) :]
    for number, push in enumerate(legs, 1):
        if push < 0:
            raise DomainError(
                f"Leg {number} would be pulled off the ground, so the frame tips over. Change the "
                f"lead of the lines or the guy, or set foot {number} further out."
            )
    if np.any(tied < 0):
        raise DomainError(
            "The guy would have to push: the frame falls towards it. Put the guy on the other side."
        )
    return FrameForces(
        tuple(map(float, legs)), tuple(map(float, tied)), tuple(map(float, at)),
        tuple(map(float, force)),
    )  # fmt: skip
