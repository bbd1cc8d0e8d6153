"""The geometry at which a rig's tension reaches a chosen multiple k of its load, and loaded spans.

There is no critical angle as such: there is one for every rig and every k. 120° belongs to two
equal legs, and to a free redirect, with k = 1. Each is found here by turning the rig's own
derivation round.

::

      o-__            __-o        sigma_1, sigma_2: how steeply the span rises from the load
          --__    __--            to each side (negative where it falls)
      sigma_1 --*- sigma_2        f: sag under the level line between the ends
                W
"""

from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, Condition, Derivation, DomainError, Step, derive
from ropecalc.mechanics import anchors, guiding, redirects
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS

_SPANS = (
    "Measure sag under load: stretch increases it. A rope taken as rigid gives too much tension "
    "and too little sag, so check clearance with stretch.",
    *cautions.EVERY_RESULT,
)

# --- ratios of the rigs that have none yet ----------------------------------------------------


@derive(
    "Redirect: pull on its anchor as a multiple of the rope's tension",
    given=(q.STRAND_ANGLE,),
    between=(q.STRAND_TENSION, q.REDIRECT_PULL),
    result=q.REDIRECT_RATIO,
    assumptions=redirects.redirect_resultant.assumptions,
)
def redirect_ratio(argument: Argument) -> Step:
    """Ratio k of the pull on a free pulley's anchor to the rope's tension: 2 at 0, 0 at 180°."""
    tension, pull, ratio = argument.symbols(q.STRAND_TENSION, q.REDIRECT_PULL, q.REDIRECT_RATIO)
    found = redirects.redirect_resultant.argue(argument)
    return _multiple(argument, found, pull, ratio, tension)


@derive(
    "Tag or track line: its tension as a multiple of the load",
    given=(q.HAUL_ELEVATION, q.GROUND_DEPRESSION),
    between=(q.LOAD, q.HAUL_TENSION, q.TAG_TENSION),
    result=q.LINE_RATIO,
    assumptions=guiding.tag_tension.assumptions,
    conditions=guiding.tag_tension.conditions,
    cautions=guiding.tag_tension.cautions,
)
def line_ratio(argument: Argument) -> Step:
    """Ratio k of tag (or track) tension to load; haul and track from one directional."""
    load, tag, ratio = argument.symbols(q.LOAD, q.TAG_TENSION, q.LINE_RATIO)
    found = guiding.tag_tension.argue(argument)
    return _multiple(argument, found, tag, ratio, load)


@derive(
    "Haul line against a tag line: its tension as a multiple of the load",
    given=(q.HAUL_ELEVATION, q.GROUND_DEPRESSION),
    between=(q.LOAD, q.HAUL_TENSION, q.TAG_TENSION),
    result=q.HAUL_RATIO,
    assumptions=guiding.haul_tension_with_tag.assumptions,
    conditions=guiding.haul_tension_with_tag.conditions,
    cautions=guiding.haul_tension_with_tag.cautions,
)
def haul_ratio(argument: Argument) -> Step:
    """Ratio k of haul tension to load while a tag line pulls against it."""
    load, haul, ratio = argument.symbols(q.LOAD, q.HAUL_TENSION, q.HAUL_RATIO)
    found = guiding.haul_tension_with_tag.argue(argument)
    return _multiple(argument, found, haul, ratio, load)


def _multiple(argument: Argument, found: Step, force: Any, ratio: Any, unit: Any) -> Step:
    called = argument.law("Call the multiple k.", force, ratio * unit)
    both = argument.combine("Both are the same force.", lambda a, b: a - b, found, called)
    return argument.solve("Solve for the multiple; the load drops out.", both, ratio)


# --- loaded spans -----------------------------------------------------------------------------

_MIDDLE = (
    "The load hangs at the middle of a span whose ends are level.",
    "Straight, weightless rope.",
)
_LEVEL_ROPE = f"at {FLAT_WORDS} or less from level a rope lifts nothing."


@derive(
    "Load at the middle of a level span",
    given=(q.LOAD, q.SPAN, q.SAG),
    between=(q.FIRST_SAG_ANGLE,),
    result=q.SPAN_TENSION,
    assumptions=_MIDDLE,
    conditions=(
        Condition(
            f"The span must sag: {_LEVEL_ROPE}",
            "Give the sag under load, or pay out rope.",
            lambda v: np.arctan2(2 * v["sag"], v["span"]) > FLAT,
        ),
    ),
    cautions=_SPANS,
)
def mid_span_tension(argument: Argument) -> Step:
    """Tension in N of a level span with the load at its middle, from span and loaded sag in m."""
    load, span, sag = argument.symbols(q.LOAD, q.SPAN, q.SAG)
    angle, tension = argument.symbols(q.FIRST_SAG_ANGLE, q.SPAN_TENSION)
    sin, sqrt = argument.sympy.sin, argument.sympy.sqrt
    balance = argument.law(
        "Upward balance: both halves lift alike.", 2 * tension * sin(angle), load
    )
    slope = argument.law(
        "Each half falls by the sag over half the span (Pythagoras gives its length).",
        sin(angle),
        sag / sqrt((span / 2) ** 2 + sag**2),
    )
    found = argument.solve("Solve for the tension.", balance, tension)
    return argument.combine(
        "Put the slope in.",
        lambda side, _: side.subs(sin(angle), slope.equation.rhs),
        found,
        slope,
        called="substitute",
    )


@derive(
    "Level span: its tension as a multiple of the load",
    given=(q.SAG_RATIO,),
    between=(q.LOAD, q.SPAN, q.SAG, q.FIRST_SAG_ANGLE, q.SPAN_TENSION),
    result=q.SPAN_RATIO,
    assumptions=_MIDDLE,
    conditions=(
        Condition(
            f"The span must sag: {_LEVEL_ROPE}",
            "Give the sag under load, or pay out rope.",
            lambda v: np.arctan(2 * v["sag_ratio"]) > FLAT,
        ),
    ),
    cautions=_SPANS,
)
def span_ratio(argument: Argument) -> Step:
    """Ratio k of tension to load for a mid-span sag that is the share r of the span."""
    load, span, sag, share = argument.symbols(q.LOAD, q.SPAN, q.SAG, q.SAG_RATIO)
    tension, ratio = argument.symbols(q.SPAN_TENSION, q.SPAN_RATIO)
    found = mid_span_tension.argue(argument)
    sagging = argument.law("The sag is a share of the span.", sag, share * span)
    put_in = argument.substitute("Put it in.", found, sagging)
    multiple = _multiple(argument, put_in, tension, ratio, load)
    sqrt = argument.sympy.sqrt
    return argument.rewrite("The span drops out.", multiple, sqrt(1 + 4 * share**2) / (4 * share))


_SIDES = (q.LOAD, q.FIRST_SAG_ANGLE, q.SECOND_SAG_ANGLE)
_LIFTS = Condition(
    f"The two sides together must lift the load: {_LEVEL_ROPE}",
    "At least one side must rise from the load more steeply than the other falls.",
    lambda v: np.sin(v["first_sag_angle"]) + np.sin(v["second_sag_angle"]) > FLAT,
)
_TROLLEY = (
    "The load hangs from a pulley that runs freely: equal tension on both sides.",
    "A level control line holds it where it would not rest by itself.",
    "Straight, weightless rope.",
)


def _trolley(argument: Argument) -> tuple[Step, Step]:
    load, one, two = argument.symbols(*_SIDES)
    tension, control = argument.symbols(q.SPAN_TENSION, q.CONTROL_PULL)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    upward = argument.law(
        "Upward balance: each side lifts by the sine of its rise.",
        tension * sin(one) + tension * sin(two),
        load,
    )
    level = argument.law(
        "Level balance: the flatter side pulls harder sideways; the control line holds the "
        "difference.",
        control,
        tension * cos(one) - tension * cos(two),
    )
    return upward, level


@derive(
    "Load off the middle of a span, held by a control line",
    given=_SIDES,
    between=(q.CONTROL_PULL,),
    result=q.SPAN_TENSION,
    assumptions=_TROLLEY,
    conditions=(_LIFTS,),
    cautions=_SPANS,
)
def trolley_tension(argument: Argument) -> Step:
    """Tension in N, the same on both sides, of a span that rises from the load at two angles.

    Level and inclined spans alike; an angle is negative where that side falls from the load.
    """
    tension = argument.symbol(q.SPAN_TENSION)
    upward, _ = _trolley(argument)
    return argument.solve("Solve for the tension.", upward, tension)


@derive(
    "Pull of the control line on a load off the middle",
    given=_SIDES,
    between=(q.SPAN_TENSION,),
    result=q.CONTROL_PULL,
    assumptions=_TROLLEY,
    conditions=(_LIFTS,),
    cautions=_SPANS,
)
def trolley_control(argument: Argument) -> Step:
    """Level pull in N of the control line, towards side 2 positive (when side 2 is the steeper)."""
    load, one, two = argument.symbols(*_SIDES)
    upward, level = _trolley(argument)
    found = argument.solve("Solve for the tension.", upward, argument.symbol(q.SPAN_TENSION))
    put_in = argument.substitute("Put it into the level balance.", level, found)
    return argument.rewrite(
        "Halve the angles: sum and difference become products.",
        put_in,
        load * argument.sympy.tan((two - one) / 2),
    )


@derive(
    "Load that rolls freely along a span",
    given=(q.LOAD, q.SPAN, q.SPAN_RISE, q.SPAN_ROPE),
    between=(q.TROLLEY_ANGLE,),
    result=q.SPAN_TENSION,
    assumptions=(_TROLLEY[0], "Nothing holds it along the span.", _TROLLEY[2]),
    conditions=(
        Condition(
            f"The rope must be longer than the straight line between the ends: {_LEVEL_ROPE}",
            "Give the length under load, or pay out more rope.",
            lambda v: (
                (v["span_rope"] ** 2 > v["span"] ** 2 + v["span_rise"] ** 2)
                & (v["span"] < v["span_rope"] * np.cos(FLAT))
            ),
        ),
    ),
    cautions=_SPANS,
)
def free_trolley_tension(argument: Argument) -> Step:
    """Tension in N where a free load comes to rest; the ends' difference of height drops out.

    ``span`` level and ``span_rise`` upward between the ends, ``span_rope`` along the rope, m.
    """
    load, span, _, rope = argument.symbols(q.LOAD, q.SPAN, q.SPAN_RISE, q.SPAN_ROPE)
    angle, tension = argument.symbols(q.TROLLEY_ANGLE, q.SPAN_TENSION)
    sin, cos, sqrt = argument.sympy.sin, argument.sympy.cos, argument.sympy.sqrt
    level = argument.law(
        "At rest both sides pull sideways alike with the same tension, so both rise at the same "
        "angle, and the whole rope covers the span at that angle.",
        rope * cos(angle),
        span,
    )
    upward = argument.law("Upward balance.", 2 * tension * sin(angle), load)
    turned = argument.solved(
        "So the angle is known.", angle, argument.sympy.acos(level.equation.rhs / rope)
    )
    found = argument.solve("Solve for the tension.", upward, tension)
    put_in = argument.substitute("Put the angle in.", found, turned)
    return argument.rewrite(
        "Sine from cosine.", put_in, load * rope / (2 * sqrt(rope**2 - span**2))
    )


@derive(
    "Track lines: their tension from the angle at the litter",
    given=(q.LOAD, q.LITTER_ANGLE, q.GROUND_DEPRESSION),
    between=(q.HAUL_TENSION, q.HAUL_ELEVATION),
    result=q.TRACK_TENSION,
    assumptions=guiding.track_tension.assumptions,
    conditions=(
        Condition(
            "The angle at the litter must leave the haul leg no steeper than plumb and no flatter "
            "than a rising ground leg, where the haul line would go slack; the legs must not lie "
            f"in one straight line: at {FLAT_WORDS} or less from it no tension holds the litter.",
            "Measure the angle again, over the top from the haul leg to the ground leg.",
            lambda v: (
                (v["litter_angle"] >= np.pi / 2 + v["ground_depression"])
                & (v["litter_angle"] <= np.pi + 2 * np.minimum(v["ground_depression"], 0.0))
                & (np.sin(v["litter_angle"]) > FLAT)
            ),
        ),
    ),
    cautions=guiding.track_tension.cautions,
)
def track_tension_at_litter_angle(argument: Argument) -> Step:
    """Tension in N of all track lines whose legs make ``litter_angle`` (rad) at the litter."""
    known = guiding.litter_angle.argue(argument)
    up = argument.symbol(q.HAUL_ELEVATION)
    turned = argument.solve("So the haul elevation is known.", known, up)
    found = guiding.track_tension.argue(argument)
    return argument.substitute(
        "Put it in. Half a turn changes the sign of the cosine; beyond a right angle the cosine is "
        "negative, so the tension is not.",
        found,
        turned,
    )


# --- the critical geometry of any rig for any k -----------------------------------------------

critical_redirect_angle = redirect_ratio.solved_for("strand_angle")
"""Angle between strands at which a redirect's anchor feels k times the rope's tension."""
critical_sag_ratio = span_ratio.solved_for("sag_ratio")
"""Mid-span sag over span at which a level span carries k times the load."""


_REACHED = Condition(
    "The hub is so high that the haul line never carries this multiple of the load.",
    "Choose a smaller multiple or a lower hub.",
    lambda v: np.cos(v["ground_depression"]) + v["load_ratio"] * np.sin(v["ground_depression"]) > 0,
)


@derive(
    "Tag or track line: the haul elevation at which it carries k times the load",
    given=(q.GROUND_DEPRESSION, q.LINE_RATIO),
    between=(q.LOAD, q.HAUL_TENSION, q.TAG_TENSION, q.HAUL_SLOPE),
    result=q.HAUL_ELEVATION,
    assumptions=guiding.tag_tension.assumptions,
    conditions=(
        Condition(
            "The hub is so high that the line never carries this multiple of the load.",
            "Choose a smaller multiple or a lower hub.",
            lambda v: 1 + v["load_ratio"] * np.sin(v["ground_depression"]) > 0,
        ),
    ),
    cautions=guiding.tag_tension.cautions,
)
def critical_line_elevation(argument: Argument) -> Step:
    """Haul elevation in rad at which a tag or track line carries k times the load.

    With the hub so high that its line rises, the line never carries more than a certain k.
    """
    up, down = argument.symbols(q.HAUL_ELEVATION, q.GROUND_DEPRESSION)
    slope = argument.symbol(q.HAUL_SLOPE)
    sin, cos, tan, atan = (getattr(argument.sympy, n) for n in ("sin", "cos", "tan", "atan"))
    found = line_ratio.argue(argument)
    turned = argument.combine("Turn both sides over.", lambda side: 1 / side, found)
    spread = argument.rewrite(
        "Sine of a difference, divided by the cosine.", turned, tan(up) * cos(down) - sin(down)
    )
    named = argument.law(
        "The slope of the haul leg is the tangent of its elevation.", slope, tan(up)
    )
    sloped = argument.combine(
        "Put the slope in.",
        lambda side, _: side.subs(tan(up), slope),
        spread,
        named,
        called="substitute",
    )
    known = argument.solve("Solve for the slope.", sloped, slope)
    return argument.solved("Take the angle whose tangent that is.", up, atan(known.equation.rhs))


@derive(
    "Haul line against a tag line: the elevation at which it carries k times the load",
    given=(q.GROUND_DEPRESSION, q.HAUL_RATIO),
    between=(q.LOAD, q.HAUL_TENSION, q.TAG_TENSION),
    result=q.HAUL_ELEVATION,
    assumptions=guiding.haul_tension_with_tag.assumptions,
    conditions=(
        Condition(
            "The haul line cannot carry so little against this tag line: with the hub below the "
            "litter it carries more than the load unless it hangs plumb.",
            "Choose a larger multiple.",
            lambda v: (
                np.where(v["ground_depression"] > 0, v["load_ratio"] > 1, True)
                & (v["load_ratio"] >= np.cos(v["ground_depression"]))
            ),
        ),
        _REACHED,
    ),
    cautions=guiding.haul_tension_with_tag.cautions,
)
def critical_haul_elevation(argument: Argument) -> Step:
    """Haul elevation in rad at which the haul line against a tag line carries k times the load."""
    up, down, ratio = argument.symbols(q.HAUL_ELEVATION, q.GROUND_DEPRESSION, q.HAUL_RATIO)
    sin, asin = argument.sympy.sin, argument.sympy.asin
    found = haul_ratio.argue(argument)
    opened = argument.combine(
        "Multiply by the sine and divide by the multiple.",
        lambda side: side * sin(up - down) / ratio,
        found,
    )
    return argument.solved(
        "Take the angle whose sine that is, and add the ground depression.",
        up,
        down + asin(opened.equation.rhs),
    )


@dataclass(frozen=True)
class CriticalRig:
    """A rig whose tension ratio depends on its geometry.

    ``ratio`` gives k from the geometry called ``geometry``; ``critical`` turns it round.
    ``more_is_worse`` says whether the ratio grows with that quantity. ``others`` are the names of
    what else has to be given.
    """

    name: str
    ratio: Derivation
    critical: Derivation
    geometry: str
    more_is_worse: bool
    others: tuple[str, ...] = ()


RIGS = (
    CriticalRig(
        "two equal legs", anchors.two_leg_ratio, anchors.critical_leg_angle, "leg_angle", True
    ),
    CriticalRig(
        "three equal legs",
        anchors.three_leg_ratio,
        anchors.critical_three_leg_angle,
        "leg_plumb_angle",
        True,
    ),
    CriticalRig("redirect", redirect_ratio, critical_redirect_angle, "strand_angle", False),
    CriticalRig("level span", span_ratio, critical_sag_ratio, "sag_ratio", False),
    CriticalRig(
        "tag or track line",
        line_ratio,
        critical_line_elevation,
        "haul_elevation",
        False,
        ("ground_depression",),
    ),
    CriticalRig(
        "haul line against a tag line",
        haul_ratio,
        critical_haul_elevation,
        "haul_elevation",
        False,
        ("ground_depression",),
    ),
)


def rig(name: str) -> CriticalRig:
    """The rig called ``name``; :class:`DomainError` lists the names if there is none."""
    for one in RIGS:
        if one.name == name:
            return one
    raise DomainError(
        f"There is no rig called {name!r}; choose one of: {', '.join(r.name for r in RIGS)}."
    )


def critical_geometry(name: str, load_ratio: Any, **others: Any) -> Any:
    """The geometry (rad, or a plain ratio for sag) at which the rig reaches k = ``load_ratio``.

    Scalars or arrays. ``others`` as the rig's ``others`` say (the tag and track lines need
    ``ground_depression``). Raises :class:`DomainError` where the rig never reaches that k.
    """
    one = rig(name)
    return one.critical(**{one.ratio.result.name: load_ratio}, **others)


def critical_litter_angle(load_ratio: Any, ground_depression: Any) -> Any:
    """Angle in rad at the litter at which the line to the hub carries k times the load.

    For k = 1 it is 135° plus half the ground depression, not 120°.
    """
    elevation = critical_line_elevation(load_ratio=load_ratio, ground_depression=ground_depression)
    return guiding.litter_angle(
        haul_elevation=elevation, ground_depression=np.asarray(ground_depression, float)[()]
    )
