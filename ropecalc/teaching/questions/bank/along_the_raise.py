"""Questions on what changes as the litter goes up: clearance, rope to take in, the hub, a lock."""

from collections.abc import Mapping
from typing import Any

from sympy import Integer, cos, sin, sqrt, tan

from ropecalc.mechanics import guiding, locked, locked_moves, two_stations
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.bank.slips import places_open
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_DIRECTIONAL = (Given(q.X_D, 0.1, 0.6, 0.1, "m"), Given(q.Z_D, 31.0, 34.0, 0.5, "m"))
_TWO_PER_CENT = Tolerance(relative=0.02)

CLEAR_THE_LINE = Template(
    key="clear-the-haul-line",
    title="Keeping the haul line off an outcrop",
    stem=(
        "The tip of an outcrop is {x_O} out and {z_O} up. The haul directional is {x_D} out and "
        "{z_D} up, and the litter's master attachment point is still only {z} up. How far out "
        "must that point be for the haul line to pass the tip with a clearance of {clearance}, "
        "measured level?"
    ),
    asked="Distance out from the wall",
    givens=(
        Given(q.Z_LOW, 1, 14, 1, "m"),
        *_DIRECTIONAL,
        Given(q.X_O, 0.8, 2.5, 0.1, "m"),
        Given(q.Z_O, 15, 27, 1, "m"),
        Given(q.CLEARANCE, 0.3, 0.8, 0.1, "m"),
    ),
    derivation=guiding.haul_clearance_offset,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "same-at-every-height",
            "The same distance at every height",
            "The haul line leans: what keeps it clear at the tip puts the litter further out the "
            "lower it is.",
            lambda v: v.x_O + v.clearance,
        ),
        Mistake(
            "ratio-upside-down",
            "The ratio turned upside down",
            "The litter is further below the directional than the tip is, so it is further out.",
            lambda v: v.x_D + (v.x_O + v.clearance - v.x_D) * (v.z_D - v.z_O) / (v.z_D - v.z),
        ),
        Mistake(
            "scaled-from-the-ground",
            "Scaled from the ground",
            "The haul line is straight from the directional: measure heights down from there.",
            lambda v: (v.x_O + v.clearance) * (v.z_O - v.z) / v.z_O,
        ),
    ),
    difficulty=2,
    objective="find where a litter has to start so that its haul line clears an outcrop",
    must_pass=True,
)

TAKE_IN = Template(
    key="take-in-rate",
    title="Track rope to take in",
    stem=(
        "The litter goes straight up. At this moment the upper legs of the track lines rise "
        "{track_elevation} above the horizontal and their ground legs fall {ground_depression} "
        "below it. How much of each track line has to be taken in for each unit of height gained? "
        "Taking in counts as positive, paying out as negative."
    ),
    asked="Rope taken in for each unit of height (a plain number)",
    givens=(
        Given(q.TRACK_ELEVATION, 60, 84, 1, "°"),
        Given(q.GROUND_DEPRESSION, 6, 36, 1, "°"),
    ),
    derivation=guiding.take_in_rate,
    tolerance=Tolerance(absolute=0.02),
    mistakes=(
        Mistake(
            "length-unchanged",
            "The length taken to stay the same",
            "The upper leg gets shorter faster than the ground leg gets longer.",
            lambda v: Integer(0),
        ),
        Mistake(
            "track-like-a-tag",
            "The track lines handled like a tag line",
            "A tag line is paid out. A track line also has an upper leg, which shortens by more.",
            lambda v: -sin(v.ground_depression),
        ),
        Mistake(
            "as-much-as-the-height",
            "As much rope as height gained",
            "The upper leg leans and the ground leg lengthens: both make it less.",
            lambda v: Integer(1),
        ),
        Mistake(
            "angles-added",
            "Both legs taken to shorten",
            "The ground leg gets longer as the litter rises.",
            lambda v: sin(v.track_elevation) + sin(v.ground_depression),
        ),
    ),
    difficulty=2,
    objective="tell how much track rope comes in as the litter goes up",
    must_pass=True,
)

HUB_UPLIFT = Template(
    key="hub-uplift",
    title="What lifts the hub",
    stem=(
        "All lines together pull on the hub with {line_tension}, and arrive there rising "
        "{ground_depression} above the horizontal. With what upward force do they pull at the hub?"
    ),
    asked="Upward pull on the hub",
    givens=(
        Given(q.LINE_TENSION, 0.5, 6.0, 0.1, "kN"),
        Given(q.GROUND_DEPRESSION, 5, 38, 1, "°"),
    ),
    derivation=guiding.hub_uplift,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "hub-pulled-level",
            "The hub taken to be pulled level",
            "The lines rise towards the litter; the higher it is, the more they lift the hub.",
            lambda v: Integer(0),
        ),
        Mistake(
            "cosine-for-sine",
            "The level part instead of the upward part",
            "The angle is measured from the horizontal, so the upward part goes with its sine.",
            lambda v: v.line_tension * cos(v.ground_depression),
        ),
        Mistake(
            "direction-ignored",
            "The whole pull taken as upward",
            "Only a part of the pull is upward; the rest drags the hub towards the wall.",
            lambda v: v.line_tension,
        ),
    ),
    difficulty=1,
    objective="find how hard the lines lift the ground anchor",
)

HUB_TOO_CLOSE = Template(
    key="hub-too-close",
    title="A hub too close to the wall",
    stem=(
        "The master attachment point must get to a place {x} out and {z} up. The haul directional "
        "is {x_D} out and {z_D} up, and the hub will stand {z_B} up. At which distance of the hub "
        "from the wall would directional, litter and hub be on one straight line, so that no "
        "tension could hold it there?"
    ),
    asked="Distance of the hub from the wall",
    givens=(
        Given(q.X, 1.5, 3.0, 0.1, "m"),
        Given(q.Z, 22, 28, 1, "m"),
        *_DIRECTIONAL,
        Given(q.Z_B, 0.5, 2.0, 0.5, "m"),
    ),
    derivation=guiding.hub_limit,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "twice-the-offset",
            "Twice as far out as the litter",
            "How far depends on the heights: run over fall is the same above the litter and for "
            "the whole line.",
            lambda v: 2 * v.x,
        ),
        Mistake(
            "half-right-angle-rule",
            "As far out as the directional is high",
            "That would be a line at 45°. The line has to pass through the litter.",
            lambda v: v.z_D,
        ),
        Mistake(
            "measured-from-the-hub",
            "The litter's height above the hub used in the ratio",
            "The slope is known above the litter: count how far the litter is below the "
            "directional.",
            lambda v: v.x_D + (v.x - v.x_D) * (v.z_D - v.z_B) / (v.z - v.z_B),
        ),
    ),
    difficulty=2,
    objective="find how near to the wall a hub may not stand",
)

SWING_IN = Template(
    key="locked-swing-in",
    title="A small raise against a locked tensioner",
    stem=(
        "The tensioner is locked. At the litter the upper legs of the track lines rise "
        "{track_elevation} above the horizontal and their ground legs fall {ground_depression} "
        "below it. The haul team now raises the litter by a hand's breadth. How far does the "
        "litter swing in towards the wall for each unit of height gained?"
    ),
    asked="Swing in for each unit of height (a plain number)",
    givens=(
        Given(q.TRACK_ELEVATION, 52, 80, 1, "°"),
        Given(q.GROUND_DEPRESSION, 4, 36, 1, "°"),
    ),
    derivation=locked.swing_in_rate,
    tolerance=Tolerance(absolute=0.02),
    mistakes=(
        Mistake(
            "lock-keeps-the-distance",
            "The lock taken to keep the litter's distance out",
            "The lock keeps the length of the rope. Higher up, that rope lets the litter hang "
            "nearer to the wall.",
            lambda v: Integer(0),
        ),
        Mistake(
            "along-the-haul-line",
            "The litter taken to slide up along the haul line",
            "The track rope decides the way: the litter moves square to the line that halves the "
            "angle between the two legs.",
            lambda v: 1 / tan(v.track_elevation),
        ),
        Mistake(
            "take-in-for-swing",
            "The rope to take in given instead of the swing",
            "That is what the tensioner would have to take in. Locked, the litter swings in until "
            "the rope is as long as before.",
            lambda v: sin(v.track_elevation) - sin(v.ground_depression),
        ),
    ),
    difficulty=3,
    objective="say what a locked tensioner does to the litter's distance out",
    must_pass=True,
)


_HUB = (Given(q.X_B, 35, 70, 5, "m"), Given(q.Z_B, 0.0, 2.0, 0.5, "m"))
_HEAD = (Given(q.X_D, 0.1, 0.5, 0.1, "m"), Given(q.Z_D, 31.5, 33.0, 0.5, "m"))
_BY_CHANCE = 0.03
_THREE_PER_CENT = Tolerance(relative=0.03)
_FIRST = (
    Given(two_stations.X_1, 2.0, 9.0, 0.5, "m"),
    Given(two_stations.Z_1, 1.0, 4.0, 0.5, "m"),
)
_SECOND = (
    Given(two_stations.X_2, 0.6, 2.4, 0.2, "m"),
    Given(two_stations.Z_2, 22.0, 29.0, 0.5, "m"),
)


def _tension(v: Any, x: Any, z: Any, directional: Any) -> Any:
    """The line to the hub with the litter at ``x``, ``z``."""
    down = (z - v.z_B) / (v.x_B - x)
    return v.load * sqrt(1 + down**2) / ((v.z_D - z) / (x - directional) - down)


def _comparable(values: Mapping[str, float]) -> bool:
    """Both places are well inside, and no slope on the way is the answer by chance."""
    answer = float(two_stations.tension_ratio(**values))
    run = values["x"] - values["x_D"]
    slopes = [(values["z_D"] - values[z]) / run for z in ("z_1", "z_2")]
    return all(places_open({**values, "z": values[z]}) for z in ("z_1", "z_2")) and all(
        abs(slope / answer - 1) > _BY_CHANCE for slope in slopes
    )


HIGH_AND_LOW = Template(
    key="high-and-low-outcrop",
    title="A high outcrop against a low one",
    stem=(
        "Past a low outcrop the litter has to be {x} out from the wall at a height of {z_1}; past "
        "a high one it has to be as far out at {z_2}. Haul and track directional are {x_D} out "
        "and {z_D} up, the hub is {x_B} out and {z_B} up. How many times the track tension at the "
        "low outcrop is needed at the high one?"
    ),
    asked="Tension at the high outcrop over tension at the low one (a plain number)",
    givens=(
        Given(q.X, 1.5, 3.0, 0.1, "m"),
        Given(two_stations.LOW_HEIGHT, 3, 10, 1, "m"),
        Given(two_stations.HIGH_HEIGHT, 22, 27, 1, "m"),
        *_HEAD,
        *_HUB,
    ),
    derivation=two_stations.tension_ratio,
    tolerance=_THREE_PER_CENT,
    mistakes=(
        Mistake(
            "same-distance-same-tension",
            "The same tension for the same distance out",
            "High up the haul leg leans far more for the same distance out, and the ground leg "
            "pulls down more.",
            lambda v: Integer(1),
        ),
        Mistake(
            "in-proportion-to-height",
            "The tension taken to grow with the height",
            "What counts is how far the litter is below the directional, not how far above the "
            "ground.",
            lambda v: v.z_2 / v.z_1,
        ),
        Mistake(
            "ground-leg-level",
            "The ground leg taken to be level",
            "The ground leg falls to the hub. Its slope takes away from that of the haul leg, "
            "most of all high up.",
            lambda v: (v.z_D - v.z_1) / (v.z_D - v.z_2),
        ),
    ),
    difficulty=3,
    objective="compare what a high and a low outcrop ask of the track lines",
    usable=_comparable,
)

PLAY = Template(
    key="play-of-a-raise",
    title="Track rope for a whole raise",
    stem=(
        "A track line runs from a directional {x_A} out and {z_A} up, past the litter, to a hub "
        "{x_B} out and {z_B} up. The litter starts {x_1} out and {z_1} up and ends {x_2} out "
        "and {z_2} up. How much of the track line has to be taken in from start to end?"
    ),
    asked="Length of each track line taken in",
    givens=(
        *_FIRST,
        *_SECOND,
        Given(q.X_A, 0.0, 0.5, 0.1, "m"),
        Given(q.Z_A, 32.0, 35.0, 0.5, "m"),
        *_HUB,
    ),
    derivation=two_stations.track_taken_in,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "length-unchanged",
            "The length taken to stay the same",
            "The upper leg gets shorter by more than the ground leg gets longer.",
            lambda v: Integer(0),
        ),
        Mistake(
            "as-much-as-the-height",
            "As much rope as height gained",
            "Measure both legs at both places: the ground leg gets longer meanwhile.",
            lambda v: v.z_2 - v.z_1,
        ),
        Mistake(
            "ground-leg-only",
            "Only the ground leg counted",
            "That is what a tag line pays out. A track line also has an upper leg.",
            lambda v: (
                sqrt((v.x_B - v.x_2) ** 2 + (v.z_2 - v.z_B) ** 2)
                - sqrt((v.x_B - v.x_1) ** 2 + (v.z_1 - v.z_B) ** 2)
            ),
        ),
    ),
    difficulty=2,
    objective="find how much play the tensioner needs for a raise",
)

QUICK_PLAY = Template(
    key="quick-play",
    title="Play, estimated on the spot",
    stem=(
        "You stand at the foot of a plumb wall. The directional will be {cliff} above you, the hub "
        "{hub_distance} out on level ground. Estimate how much of each track line has to be taken "
        "in over a raise from the foot of the wall to the directional."
    ),
    asked="Length of each track line taken in",
    givens=(
        Given(two_stations.CLIFF, 15, 50, 1, "m"),
        Given(two_stations.HUB_DISTANCE, 15, 80, 1, "m"),
    ),
    derivation=two_stations.quick_play,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "as-much-as-the-height",
            "As much rope as height gained",
            "At the end the rope still has to reach from the directional to the hub, and that way "
            "is longer than the one along the ground.",
            lambda v: v.cliff,
        ),
        Mistake(
            "ground-leg-only",
            "Only the ground leg counted",
            "That is what a tag line pays out. The upper leg gets shorter by the whole height.",
            lambda v: sqrt(v.cliff**2 + v.hub_distance**2) - v.hub_distance,
        ),
        Mistake(
            "longest-less-the-height",
            "The slanting side less the height",
            "At the start the rope lies along the wall and along the ground: add these two, then "
            "take off the slanting side.",
            lambda v: sqrt(v.cliff**2 + v.hub_distance**2) - v.cliff,
        ),
    ),
    difficulty=1,
    objective="estimate the play of a raise with two distances",
)

TAG_OUT = Template(
    key="tag-paid-out",
    title="Tag line for a whole raise",
    stem=(
        "A tag line, not a track line, runs from the litter to a hub {x_B} out and {z_B} up. "
        "The litter starts {x_1} out and {z_1} up and ends {x_2} out and {z_2} up. How much tag "
        "line is paid out from start to end? Paying out counts as positive, pulling in as "
        "negative."
    ),
    asked="Length of tag line paid out",
    givens=(*_FIRST, *_SECOND, *_HUB),
    derivation=two_stations.tag_paid_out,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "tag-like-a-track",
            "The tag line handled like a track line",
            "A track line is taken in. A tag line has no upper leg: the litter only moves away "
            "from the hub.",
            lambda v: (
                sqrt((v.x_B - v.x_1) ** 2 + (v.z_1 - v.z_B) ** 2)
                - sqrt((v.x_B - v.x_2) ** 2 + (v.z_2 - v.z_B) ** 2)
            ),
        ),
        Mistake(
            "length-unchanged",
            "The length taken to stay the same",
            "Measure from the hub to both places: the second is further away.",
            lambda v: Integer(0),
        ),
        Mistake(
            "as-much-as-the-height",
            "As much rope as height gained",
            "The hub stands far out: going up changes the slanting distance by less than the "
            "height.",
            lambda v: v.z_2 - v.z_1,
        ),
    ),
    difficulty=2,
    objective="say how a tag line is handled during a raise, and how much of it is needed",
)

DIRECTIONAL_OUT = Template(
    key="directional-further-out",
    title="Move the directional, or live with it?",
    stem=(
        "A litter of weight {load} has to pass {x} out at a height of {z}. Haul and track "
        "directional are {x_D} out and {z_D} up, the hub {x_B} out and {z_B} up. The team can set "
        "the directional {moved_out} further out. What is the track tension then?"
    ),
    asked="Track tension with the directional moved",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        Given(q.X, 2.0, 3.0, 0.1, "m"),
        Given(q.Z, 25, 28, 1, "m"),
        Given(q.X_D, 0.1, 0.5, 0.1, "m"),
        Given(two_stations.MOVED_OUT, 0.3, 1.0, 0.1, "m"),
        Given(q.Z_D, 31.5, 33.0, 0.5, "m"),
        *_HUB,
    ),
    derivation=two_stations.tension_directional_moved,
    tolerance=_THREE_PER_CENT,
    mistakes=(
        Mistake(
            "moving-changes-nothing",
            "The directional taken not to matter",
            "The tension depends on how far the litter is out from plumb below the directional.",
            lambda v: _tension(v, v.x, v.z, v.x_D),
        ),
        Mistake(
            "in-proportion",
            "The tension taken off in proportion",
            "It falls by more than the distance does: the haul leg gets steeper while the ground "
            "leg stays as it is.",
            lambda v: _tension(v, v.x, v.z, v.x_D) * (1 - v.moved_out / (v.x - v.x_D)),
        ),
        Mistake(
            "moved-the-wrong-way",
            "The directional moved inward",
            "Further out means nearer to the plumb line through the litter: a smaller run.",
            lambda v: _tension(v, v.x, v.z, v.x_D - v.moved_out),
        ),
    ),
    difficulty=3,
    objective="judge what a directional further out is worth",
    usable=lambda v: places_open(v) and places_open({**v, "x_D": v["x_D"] - v["moved_out"]}),
)

RAISED_LOCKED = Template(
    key="locked-raised",
    title="Raised against a locked tensioner",
    stem=(
        "Haul and track directional are {x_D} out and {z_D} up, the hub is {x_B} out and {z_B} up. "
        "The tensioner is locked while the litter is {x_1} out at a height of {z_1}. The haul team "
        "raises it by {raised}. Nothing stretches. How far out is the litter then? Look for the "
        "place where both legs together are as long as before, to two decimals."
    ),
    asked="Distance out from the wall afterwards",
    givens=(
        Given(two_stations.X_1, 5.0, 9.0, 0.5, "m"),
        Given(two_stations.Z_1, 1.0, 4.0, 0.5, "m"),
        Given(locked_moves.RAISED, 1.0, 4.0, 0.5, "m"),
        *_HEAD,
        *_HUB,
    ),
    derivation=locked_moves.raised_offset,
    tolerance=Tolerance(absolute=0.15),
    mistakes=(
        Mistake(
            "lock-keeps-the-distance",
            "The lock taken to keep the litter's distance out",
            "The lock keeps the length of the rope. Higher up, that rope lets the litter hang "
            "nearer to the wall.",
            lambda v: v.x_1,
        ),
        Mistake(
            "along-the-haul-line",
            "The litter taken to slide up along the haul line",
            "The track rope decides the way, not the haul line.",
            lambda v: v.x_D + (v.x_1 - v.x_D) * (v.z_D - v.z_1 - v.raised) / (v.z_D - v.z_1),
        ),
        Mistake(
            "swings-out",
            "The litter taken to swing out",
            "Going up, it needs less rope at the same distance out. The rope is not shorter, so it "
            "comes in.",
            lambda v: 2 * v.x_1 - locked_moves.raised_offset.expression,
        ),
    ),
    difficulty=3,
    objective="find how much distance a raise against a locked tensioner costs",
)


def _well_inside(values: Mapping[str, float]) -> bool:
    return places_open(
        {
            "x": values["off_plumb"],
            "z": -values["drop"],
            "x_D": 0.0,
            "z_D": 0.0,
            "x_B": values["hub_run"],
            "z_B": -values["hub_fall"],
        }
    )


def _from_directional(v: Any, drop: Any) -> Any:
    """The tension as far out as before, ``drop`` below the directional."""
    down = (v.hub_fall - drop) / (v.hub_run - v.off_plumb)
    return v.load * sqrt(1 + down**2) / (drop / v.off_plumb - down)


LOWERED_LOCKED = Template(
    key="locked-lowered",
    title="Lowered against a locked tensioner",
    stem=(
        "A litter of weight {load} hangs near the top: {drop} below the directional of haul and "
        "track lines, and {off_plumb} out from the plumb line below it. The hub is {hub_run} "
        "out from that plumb line and {hub_fall} below the directional. The tensioner is "
        "locked, and somebody lowers the litter by {lowered}. Nothing stretches. What is the "
        "track tension then? Look first for the place where both legs together are as long as "
        "before, to two decimals."
    ),
    asked="Track tension afterwards, an upper bound",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        Given(q.OFF_PLUMB, 1.2, 2.6, 0.1, "m"),
        Given(q.DROP, 4.0, 7.0, 0.5, "m"),
        Given(locked_moves.LOWERED, 1.0, 4.0, 0.5, "m"),
        Given(locked_moves.HUB_RUN, 35, 70, 5, "m"),
        Given(locked_moves.HUB_FALL, 30, 33, 0.5, "m"),
    ),
    derivation=locked_moves.lowered_tension,
    tolerance=_THREE_PER_CENT,
    mistakes=(
        Mistake(
            "lock-keeps-the-tension",
            "The lock taken to keep the tension",
            "The lock keeps the length. The litter swings out, and there it takes more tension to "
            "hold.",
            lambda v: _from_directional(v, v.drop),
        ),
        Mistake(
            "lock-keeps-the-distance",
            "The lock taken to keep the litter's distance out",
            "Lower down, the same rope lets the litter swing further out.",
            lambda v: _from_directional(v, v.drop + v.lowered),
        ),
        Mistake(
            "goes-slack",
            "The track line taken to go slack",
            "It would if the litter were raised. Lowered, it hangs on the rope more and more.",
            lambda v: Integer(0),
        ),
    ),
    difficulty=3,
    objective="say what lowering against a locked tensioner does to the track lines",
    usable=_well_inside,
    must_pass=True,
)


QUESTIONS = (
    CLEAR_THE_LINE,
    TAKE_IN,
    HUB_UPLIFT,
    HUB_TOO_CLOSE,
    SWING_IN,
    HIGH_AND_LOW,
    PLAY,
    QUICK_PLAY,
    TAG_OUT,
    DIRECTIONAL_OUT,
    RAISED_LOCKED,
    LOWERED_LOCKED,
)
"""This module's questions, in the order of the lesson."""
