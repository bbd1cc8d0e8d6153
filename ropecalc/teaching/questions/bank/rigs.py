"""Questions that ask for a rig: angles, distances, slack, people and tension to be set.

What is wanted is never an edge but a band: enough, and no more than needed.
"""

from collections.abc import Callable, Mapping
from typing import Any

import numpy as np

from ropecalc.mechanics import (
    anchors,
    critical,
    frames,
    guiding,
    guiding_limits,
    hauling,
    redirects,
    slip,
    tensioner,
    tensioner_lines,
)
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.pulleys import formulas
from ropecalc.teaching.questions.applied import Applied
from ropecalc.teaching.questions.bank.slips import legs_open
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.knob import Knob
from ropecalc.teaching.questions.setting import RigTask, WrongRelation
from ropecalc.teaching.questions.wanted import Wanted

_Bound = Callable[[Mapping[str, Any]], Any]

_LEG_LIMIT = named(q.LEG_TENSION, "leg_limit", "most that a leg may carry", r"L_\mathrm{max}")
_NEAREST = named(q.LANDING, "nearest", "least distance behind the front feet", r"x_\mathrm{least}")
_FURTHEST = named(
    q.LANDING, "furthest", "largest distance behind the front feet", r"x_\mathrm{most}"
)
_NEEDED = named(q.OFF_PLUMB, "needed", "distance off plumb that is needed", r"q_\mathrm{need}")
_LINE_LIMIT = named(q.LINE_TENSION, "line_limit", "most that a line may carry", r"T_\mathrm{max}")
_SPAN_LIMIT = named(
    q.SPAN_TENSION, "span_limit", "most that the span may carry", r"T_\mathrm{sp,max}"
)
_ROOM = named(q.INWARD_MOVEMENT, "room", "how far the litter may move in", r"d_\mathrm{room}")
_SNAG_LIMIT = named(
    hauling.SNAG, "snag_limit", "most that a snag may be pulled with", r"F_\mathrm{max}"
)
_HAND_LIMIT = named(q.HAND_PULL, "hand_limit", "what the team keeps up", r"F_\mathrm{keep}")


def _of(name: str, share: float = 1.0) -> _Bound:
    """A share of the quantity called ``name``."""
    return lambda v: share * v[name]


def _ends(name: str, share: float) -> tuple[_Bound, _Bound]:
    """From a share of the quantity called ``name`` up to it."""
    return _of(name, share), _of(name)


LEG_ANGLE = RigTask(
    key="set-leg-angle",
    title="How far may the legs spread?",
    stem=(
        "Two anchors on the Lower Heron Wall hold {load} with two equal legs, and no leg may carry "
        "more than {leg_limit}. Spread the legs as far as that allows: a leg should carry at least "
        "95 per cent of it."
    ),
    asked="Angle between the legs",
    givens=(
        Given(q.LOAD, 1.6, 2.4, 0.1, "kN"),
        Given(_LEG_LIMIT, 1.2, 2.4, 0.1, "kN"),
    ),
    knobs=(Knob(Given(q.LEG_ANGLE, 10, 160, 1, "°"), 10, "angle between the legs"),),
    words="The legs stand {leg_angle} apart.",
    wanted=(Wanted((Applied(anchors.two_leg_anchor),), *_ends("leg_limit", 0.95)),),
    turned=(Applied(anchors.two_leg_anchor.solved_for("leg_angle")),),
    mistakes=(
        WrongRelation(
            "half-angle-taken",
            "The angle counted from the line of pull",
            "Each leg makes half of the angle between them with the line of pull.",
            lambda v: v.load / (2 * np.cos(v.leg_angle)),
        ),
        WrongRelation(
            "sine-for-cosine",
            "The sine of the half angle taken",
            "Along the line of pull each leg gives the cosine of half the angle.",
            lambda v: v.load / (2 * np.sin(v.leg_angle / 2)),
        ),
        WrongRelation(
            "grows-evenly",
            "The tension taken to grow evenly with the angle",
            "It hardly grows at first, and then faster and faster.",
            lambda v: v.load / 2 * (1 + v.leg_angle / np.radians(120)),
        ),
    ),
    reason="A little wider still, and the legs would carry more than their limit.",
    difficulty=2,
    objective="spread the legs of an anchor as far as their limit allows",
)

_FEET = (Applied(redirects.head_lean), Applied(frames.landing))
_TURNED_BACK = (
    Applied(frames.landing.solved_for("lean")),
    Applied(redirects.head_lean.solved_for("back_depression")),
)


def _lands(v: Any, lean: Any) -> Any:
    return v.head_height * np.tan(lean) - v.head_reach


HAUL_BACK = RigTask(
    key="set-haul-back",
    title="Turn the haul back until the frame stands",
    stem=(
        "A frame's head is {head_height} above its feet and {head_reach} out past the front ones. "
        "The haul line comes up from the litter at {front_depression} below the horizontal, turns "
        "over a free pulley at the head and runs down to the team behind. Choose how steeply it "
        "runs down there, so that the pull on the head meets the ground {nearest} to {furthest} "
        "behind the front feet."
    ),
    asked="Angle of the haul line behind the head, below the horizontal",
    givens=(
        Given(q.HEAD_HEIGHT, 1.8, 3.0, 0.1, "m"),
        Given(q.HEAD_REACH, 0.2, 0.5, 0.05, "m"),
        Given(q.FRONT_DEPRESSION, 64, 86, 1, "°"),
        Given(_NEAREST, 0.2, 0.5, 0.1, "m"),
        Given(_FURTHEST, 0.5, 0.8, 0.1, "m"),
    ),
    knobs=(
        Knob(Given(q.BACK_DEPRESSION, 0, 80, 1, "°"), 80, "angle of the haul line behind the head"),
    ),
    words="Behind the head the haul line runs down at {back_depression} below the horizontal.",
    wanted=(Wanted(_FEET, _of("nearest"), _of("furthest")),),
    turned=_TURNED_BACK,
    mistakes=(
        WrongRelation(
            "lean-not-halved",
            "The difference of the angles taken for the lean",
            "The pull lies midway between the two strands, so it leans by half the difference.",
            lambda v: _lands(v, v.front_depression - v.back_depression),
        ),
        WrongRelation(
            "back-from-plumb",
            "The angle behind the head counted from plumb",
            "Both strands are measured from the horizontal here.",
            lambda v: _lands(v, (v.front_depression - np.pi / 2 + v.back_depression) / 2),
        ),
    ),
    reason=(
        "The flatter it runs, the further back the pull lands; the steeper, the nearer to the "
        "front feet, and at last out past them."
    ),
    difficulty=3,
    objective="lead a haul line so that its frame stands",
    usable=lambda v: v["furthest"] - v["nearest"] > 0.15,
)

_TO_LINES = (
    Applied(guiding.line_tension_from_places),
    Applied(tensioner_lines.most_loaded_line, {"track_tension": "line_tension"}),
)

HUB_DISTANCE = RigTask(
    key="set-hub-distance",
    title="How far out must the hub be?",
    stem=(
        "At a high outcrop {load} has to be held {x} out at a height of {z}. Haul and track "
        "directional are {x_D} out and {z_D} up; the hub will be {z_B} up. The track lines, "
        "{lines} of them, hang on one tensioner in series; each of its pulleys passes on "
        "{efficiency}, and rope was taken in last. No line may carry more than {line_limit}. Put "
        "the hub out far enough, but no further than needed: the most loaded line should carry at "
        "least 88 per cent of that."
    ),
    asked="Distance of the hub out from the wall",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        Given(q.X, 2.0, 3.0, 0.1, "m"),
        Given(q.Z, 25, 28, 1, "m"),
        Given(q.X_D, 0.1, 0.5, 0.1, "m"),
        Given(q.Z_D, 31.5, 33.0, 0.5, "m"),
        Given(q.Z_B, 0.5, 2.0, 0.5, "m"),
        Given(tensioner.LINES, 2, 3, 1, ""),
        Given(q.SHEAVE_EFFICIENCY, 0.75, 0.92, 0.01, ""),
        Given(_LINE_LIMIT, 1.1, 2.0, 0.1, "kN"),
    ),
    knobs=(Knob(Given(q.X_B, 16, 100, 0.5, "m"), 100, "distance of the hub out from the wall"),),
    words="The hub stands {x_B} out from the wall.",
    wanted=(Wanted(_TO_LINES, *_ends("line_limit", 0.88)),),
    mistakes=(
        WrongRelation(
            "shared-alike",
            "The lines taken to share alike",
            "Every pulley takes its part: while rope is taken in, the near line carries most.",
            lambda v: v.line_tension / v.lines,
        ),
        WrongRelation(
            "one-line-carries-all",
            "One line taken to carry everything",
            "The lines share the tension; only the hub holds all of it.",
            lambda v: v.line_tension,
        ),
    ),
    reason="Nearer in, the ground leg is steeper: it pulls the litter down as well as out.",
    difficulty=3,
    objective="place a hub so that no track line exceeds its limit",
)

TRACK_TENSION = RigTask(
    key="set-track-tension",
    title="Take the haul line off the tip",
    stem=(
        "The litter with {load} hangs {drop} below the haul directional, and track lines from the "
        "same directional run to a hub, {ground_depression} below the horizontal. The haul line "
        "clears the tip of an outcrop once the litter is {needed} off plumb. Take in the track "
        "lines until it is, but no more than a tenth further."
    ),
    asked="Tension of the track lines together",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        Given(q.DROP, 4, 16, 1, "m"),
        Given(q.GROUND_DEPRESSION, 14, 38, 1, "°"),
        Given(_NEEDED, 1.2, 3.6, 0.1, "m"),
    ),
    knobs=(
        Knob(
            Given(q.LINE_TENSION, 0.05, 4.0, 0.01, "kN"),
            0.05,
            "tension of the track lines together",
        ),
    ),
    words="The track lines together are taken in to {line_tension}.",
    wanted=(Wanted((Applied(guiding_limits.reach_off_plumb),), _of("needed"), _of("needed", 1.1)),),
    turned=(Applied(guiding_limits.reach_off_plumb.solved_for("line_tension")),),
    mistakes=(
        WrongRelation(
            "ground-leg-level",
            "The ground leg taken to be level",
            "It falls to the hub: it pulls down as well, and less of it pulls outward.",
            lambda v: v.drop * v.line_tension / v.load,
        ),
        WrongRelation(
            "sine-and-cosine-exchanged",
            "Level and downward part exchanged",
            "The angle is measured from the horizontal, so the level part is the cosine.",
            lambda v: (
                v.drop
                * v.line_tension
                * np.sin(v.ground_depression)
                / (v.load + v.line_tension * np.cos(v.ground_depression))
            ),
        ),
        WrongRelation(
            "downward-pull-left-out",
            "The downward pull of the ground leg left out",
            "What pulls down besides the load makes the haul line hang steeper.",
            lambda v: v.drop * v.line_tension * np.cos(v.ground_depression) / v.load,
        ),
    ),
    reason="The last bit takes most: the ground leg pulls down ever harder as well.",
    difficulty=2,
    objective="set the track tension that keeps the haul line off an outcrop",
)

SAG = RigTask(
    key="set-sag",
    title="How much must the span sag?",
    stem=(
        "A level span of {span} carries {load} at its middle, and its rope may carry no more than "
        "{span_limit}. Let it sag enough, but no more than needed: the rope should carry at least "
        "90 per cent of that."
    ),
    asked="Sag at the middle, with the load on",
    givens=(
        Given(q.LOAD, 1.2, 2.4, 0.1, "kN"),
        Given(q.SPAN, 20, 40, 2, "m"),
        Given(_SPAN_LIMIT, 2.5, 6.0, 0.25, "kN"),
    ),
    knobs=(Knob(Given(q.SAG, 0.5, 14.0, 0.05, "m"), 14.0, "sag at the middle"),),
    words="With the load on, the span sags {sag} at the middle.",
    wanted=(Wanted((Applied(critical.mid_span_tension),), *_ends("span_limit", 0.9)),),
    turned=(Applied(critical.mid_span_tension.solved_for("sag")),),
    mistakes=(
        WrongRelation(
            "slope-of-the-whole-span",
            "The sag set against the whole span",
            "Each half rises over half the span, so its slope is twice as large.",
            lambda v: v.load / (2 * np.sin(np.arctan(v.sag / v.span))),
        ),
        WrongRelation(
            "load-spread-out",
            "The load taken to be spread along the span",
            "A rope under its own weight hangs in a curve. One load at the middle makes two "
            "straight halves and twice the tension.",
            lambda v: v.load * v.span / (8 * v.sag),
        ),
    ),
    reason="Half the sag would nearly double the tension.",
    difficulty=2,
    objective="choose the sag of a loaded span",
)

SLACK = RigTask(
    key="set-tie-back-slack",
    title="How much slack may a tie-back have?",
    stem=(
        "The tails of the track lines are tied back, so that a slipping grab lets out no more than "
        "the slack in them. The haul leg is {haul_elevation} above the horizontal, the ground leg "
        "{ground_depression} below it, and the litter may move in by {room} at most. Leave as much "
        "slack as that allows: at least 85 per cent of it should be used."
    ),
    asked="Slack in the tied-back tails",
    givens=(
        Given(q.HAUL_ELEVATION, 52, 76, 1, "°"),
        Given(q.GROUND_DEPRESSION, 10, 38, 1, "°"),
        Given(_ROOM, 0.3, 1.0, 0.05, "m"),
    ),
    knobs=(Knob(Given(q.SLIP, 0.02, 1.6, 0.02, "m"), 0.02, "slack in the tails"),),
    words="The tails are tied back with {slip} of slack.",
    wanted=(Wanted((Applied(slip.slip_inward),), *_ends("room", 0.85)),),
    turned=(Applied(slip.slip_inward.solved_for("slip")),),
    mistakes=(
        WrongRelation(
            "slack-is-the-movement",
            "The slack taken for the movement",
            "The litter moves further than the rope slips, and the more so the straighter the "
            "legs.",
            lambda v: v.slip,
        ),
        WrongRelation(
            "multiplied-by-the-sine",
            "Multiplied by the sine instead of divided",
            "Only a part of the movement makes the ground leg longer, so the movement is larger "
            "than the slack.",
            lambda v: v.slip * np.sin(v.haul_elevation - v.ground_depression),
        ),
    ),
    reason="What multiplies the force also multiplies what slips.",
    difficulty=2,
    objective="tie back a tail so that a slip stays small enough",
    usable=legs_open,
)
_SNAGGED = (
    Applied(formulas.simple_advantage),
    Applied(hauling.snag_pull),
)

TEAM = RigTask(
    key="set-haul-team",
    title="Strong enough to haul, too weak to break",
    stem=(
        "A simple system, whose haul strand leaves a pulley that travels with the load, has to "
        "raise {load}; every pulley passes on {efficiency}. Choose how many people haul and how "
        "many strands hold the load. Each keeps up {pull_per_person}. If something catches, each "
        "pulls {burst_per_person} for a moment, and the snag must not feel more than {snag_limit}."
    ),
    asked="People, and strands on the load",
    givens=(
        Given(q.LOAD, 1.4, 2.8, 0.1, "kN"),
        Given(q.SHEAVE_EFFICIENCY, 0.60, 0.88, 0.01, ""),
        Given(hauling.STEADY_PULL, 0.15, 0.25, 0.01, "kN"),
        Given(hauling.BURST, 0.30, 0.40, 0.01, "kN"),
        Given(_SNAG_LIMIT, 4.0, 8.0, 0.25, "kN"),
    ),
    knobs=(
        Knob(Given(hauling.PEOPLE, 1, 9, 1, ""), 9, "people who haul"),
        Knob(Given(q.PARTS, 2, 7, 1, ""), 7, "strands on the load"),
    ),
    words="People who haul: {people}. Strands that hold the load: {parts}.",
    wanted=(
        Wanted(
            _SNAGGED,
            lambda v: v["load"] * v["burst_per_person"] / v["pull_per_person"],
            _of("snag_limit"),
        ),
    ),
    mistakes=(
        WrongRelation(
            "friction-left-out",
            "Friction left out",
            "On real pulleys every further strand brings less than the one before it.",
            lambda v: v.people * v.burst_per_person * v.parts,
        ),
        WrongRelation(
            "every-sheave-on-every-strand",
            "All pulleys counted against every strand",
            "Only the strand furthest from the hands has all pulleys before it.",
            lambda v: v.people * v.burst_per_person * v.parts * v.efficiency ** (v.parts - 1),
        ),
    ),
    reason=(
        "A team that can just raise the load puts as many times the load into a snag as a burst "
        "is more than what each keeps up. Less could not raise it; more could break something "
        "before anybody notices."
    ),
    difficulty=3,
    objective="choose a haul team that can raise the load and break nothing",
)

BY_LESSON: Mapping[int, tuple[RigTask, ...]] = {
    2: (LEG_ANGLE,),
    3: (HAUL_BACK,),
    6: (TEAM,),
    7: (SAG,),
    9: (TRACK_TENSION,),
    10: (HUB_DISTANCE,),
    11: (SLACK,),
}
"""The tasks of each lesson."""
