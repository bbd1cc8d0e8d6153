"""Questions on holding a litter off the rock: attendant, tag line, track lines."""

from math import radians
from typing import Any

from sympy import Integer, atan, cos, sin, sqrt, tan

from ropecalc.mechanics import guiding
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.bank.slips import HAUL_STAYS_THE_WEIGHT, legs_open, places_open
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_LOAD = Given(q.LOAD, 1.2, 2.8, 0.1, "kN")
_UP = Given(q.HAUL_ELEVATION, 50, 86, 1, "°")
_DOWN = Given(q.GROUND_DEPRESSION, 5, 38, 1, "°")
_TWO_PER_CENT = Tolerance(relative=0.02)

ATTENDANT_PUSH = Template(
    key="attendant-push",
    title="An attendant's push",
    stem=(
        "An attendant holds the litter {off_plumb} out from the plumb line below the haul "
        "directional, which is {drop} above the master attachment point. Everything that hangs "
        "weighs {load}. How hard must the attendant push, level and outward?"
    ),
    asked="Push of the attendant",
    givens=(
        _LOAD,
        Given(q.OFF_PLUMB, 0.4, 1.5, 0.1, "m"),
        Given(q.DROP, 3, 30, 1, "m"),
    ),
    derivation=guiding.attendant_push,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "ratio-upside-down",
            "The slope of the haul line turned upside down",
            "The push is to the weight as the distance out is to the height above: a long rope "
            "makes it small.",
            lambda v: v.load * v.drop / v.off_plumb,
        ),
        Mistake(
            "half-the-weight",
            "The weight shared between rope and attendant",
            "A level push carries no weight; it only balances the sideways part of the haul line.",
            lambda v: v.load / 2,
        ),
        Mistake(
            "push-is-the-weight",
            "The push taken to be the weight",
            "The haul line still carries the weight. The push only has to match the sideways part "
            "of the haul line's lean.",
            lambda v: v.load,
        ),
        Mistake(
            "shared-by-two-feet",
            "The push divided by two feet",
            "The push asked for is what the litter needs, both feet together.",
            lambda v: v.load * v.off_plumb / (2 * v.drop),
        ),
    ),
    difficulty=1,
    objective="work out the push that an attendant needs",
)

ATTENDANT_HAUL = Template(
    key="attendant-haul-tension",
    title="The haul line while an attendant pushes",
    stem=(
        "Near the top the haul directional is only {drop} above the master attachment point, and "
        "the attendant pushes the litter level outward until it is {off_plumb} off plumb. "
        "Everything that hangs weighs {load}. What tension is in the haul line?"
    ),
    asked="Tension of the haul line",
    givens=(
        Given(q.LOAD, 1.2, 2.0, 0.1, "kN"),  # more would take a push that nobody can give
        Given(q.OFF_PLUMB, 0.8, 1.2, 0.1, "m"),
        Given(q.DROP, 2.4, 3.4, 0.1, "m"),
    ),
    derivation=guiding.attendant_haul_tension,
    tolerance=Tolerance(relative=0.015),
    mistakes=(
        HAUL_STAYS_THE_WEIGHT,
        Mistake(
            "added-as-numbers",
            "Weight and push added as plain numbers",
            "They are at right angles: add them as the two sides of a right triangle.",
            lambda v: v.load + v.load * v.off_plumb / v.drop,
        ),
        Mistake(
            "attendant-lifts",
            "The push taken off the weight",
            "A level push lifts nothing. The haul line carries the whole weight and the push "
            "besides.",
            lambda v: v.load - v.load * v.off_plumb / v.drop,
        ),
    ),
    difficulty=2,
    objective="say what an attendant's push does to the haul line",
)


def _haul_slope(v: Any) -> Any:
    return (v.z_D - v.z) / (v.x - v.x_D)


def _ground_slope(v: Any) -> Any:
    return (v.z - v.z_B) / (v.x_B - v.x)


TAG_FROM_PLACES = Template(
    key="tag-tension",
    title="A tag line, from measured places",
    stem=(
        "On the cross-section of the Upper Heron Wall in Tamarack Gorge the haul directional is "
        "{x_D} out and {z_D} up, the master attachment point of the litter {x} out and {z} up, and "
        "the ground anchor of the tag line {x_B} out and {z_B} up. The load weighs {load}. What "
        "tension is in the tag line?"
    ),
    asked="Tension of the tag line",
    givens=(
        _LOAD,
        Given(q.X, 1.5, 4.0, 0.1, "m"),
        Given(q.Z, 16, 27, 1, "m"),
        Given(q.X_D, 0.1, 0.8, 0.1, "m"),
        Given(q.Z_D, 31.0, 34.0, 0.5, "m"),
        Given(q.X_B, 30, 80, 5, "m"),
        Given(q.Z_B, 0.5, 4.0, 0.5, "m"),
    ),
    derivation=guiding.line_tension_from_places,
    tolerance=Tolerance(relative=0.03),
    mistakes=(
        Mistake(
            "ground-leg-level",
            "The tag line treated as level",
            "It runs down to its anchor and pulls the litter down too, so the haul line has more "
            "to hold and so has the tag line.",
            lambda v: v.load / _haul_slope(v),
        ),
        Mistake(
            "slopes-added",
            "The two slopes added",
            "The haul leg pulls up and the ground leg pulls down: in the upward balance the "
            "ground leg's slope is taken away.",
            lambda v: (
                v.load * sqrt(1 + _ground_slope(v) ** 2) / (_haul_slope(v) + _ground_slope(v))
            ),
        ),
        Mistake(
            "ratio-upside-down",
            "Multiplied by the difference of the slopes instead of divided",
            "A steep haul leg needs little to hold it off; the steeper it is, the smaller the tag "
            "tension.",
            lambda v: (
                v.load * (_haul_slope(v) - _ground_slope(v)) / sqrt(1 + _ground_slope(v) ** 2)
            ),
        ),
    ),
    difficulty=3,
    objective="find a tag line's tension from a measured cross-section",
    usable=places_open,
)

HAUL_AGAINST_TAG = Template(
    key="haul-against-tag",
    title="Hauling against a tag line",
    stem=(
        "A tag line holds the litter off the wall. At the master attachment point the haul line "
        "rises {haul_elevation} above the horizontal and the tag line falls {ground_depression} "
        "below it. The load weighs {load}. What tension is in the haul line?"
    ),
    asked="Tension of the haul line",
    givens=(_LOAD, _UP, _DOWN),
    derivation=guiding.haul_tension_with_tag,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        HAUL_STAYS_THE_WEIGHT,
        Mistake(
            "ground-leg-level",
            "The tag line treated as level",
            "It also pulls down, and the haul line has to carry that besides the weight.",
            lambda v: v.load / sin(v.haul_elevation),
        ),
        Mistake(
            "angles-added",
            "The two angles added",
            "One leg rises and the other falls. Both balances together bring in the sine of the "
            "difference.",
            lambda v: (
                v.load * cos(v.ground_depression) / sin(v.haul_elevation + v.ground_depression)
            ),
        ),
    ),
    difficulty=2,
    objective="say why a tag line makes the haul heavier, and by how much",
    usable=legs_open,
)

HAUL_BESIDE_TRACK = Template(
    key="haul-beside-track",
    title="Hauling beside track lines",
    stem=(
        "Track lines come down from the same directional as the haul line, run freely through a "
        "pulley at the litter and go out to the hub. At the litter haul line and upper track legs "
        "rise {haul_elevation} above the horizontal; the ground legs fall {ground_depression} "
        "below it. The load weighs {load}. What tension is left in the haul line?"
    ),
    asked="Tension of the haul line",
    givens=(_LOAD, _UP, _DOWN),
    derivation=guiding.haul_tension_with_track,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "tag-formula-for-track",
            "The formula for a tag line used for track lines",
            "That is the pull of both together. The upper track legs run alongside the haul line "
            "and take over as much as their own tension.",
            lambda v: (
                v.load * cos(v.ground_depression) / sin(v.haul_elevation - v.ground_depression)
            ),
        ),
        HAUL_STAYS_THE_WEIGHT,
        Mistake(
            "track-carries-all",
            "The track lines taken to carry everything",
            "They lift only a part. With the hub below the litter the haul line never goes slack "
            "by itself.",
            lambda v: Integer(0),
        ),
    ),
    difficulty=3,
    objective="find what track lines leave for the haul line",
    usable=legs_open,
    must_pass=True,
)

TRACK_TENSION = Template(
    key="track-tension",
    title="Track lines, from two angles",
    stem=(
        "Track lines come down from the same directional as the haul line, run freely through a "
        "pulley at the litter and go out to the hub. At the litter the upper legs rise "
        "{haul_elevation} above the horizontal and the ground legs fall {ground_depression} below "
        "it. The load weighs {load}. What tension do the track lines carry together?"
    ),
    asked="Tension of the track lines together",
    givens=(_LOAD, _UP, _DOWN),
    derivation=guiding.track_tension,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "anchor-rule",
            "The rule for two equal anchor legs",
            "The load does not hang in the middle of the track lines: the haul line pulls as well, "
            "and the legs are not placed evenly about the plumb line.",
            lambda v: v.load / (2 * sin((v.haul_elevation - v.ground_depression) / 2)),
        ),
        Mistake(
            "angles-added",
            "The two angles added",
            "One leg rises and the other falls. Both balances together bring in the sine of the "
            "difference.",
            lambda v: v.load * cos(v.haul_elevation) / sin(v.haul_elevation + v.ground_depression),
        ),
        Mistake(
            "ground-leg-level",
            "The ground legs treated as level",
            "They also pull down, and that takes more tension to hold.",
            lambda v: v.load / tan(v.haul_elevation),
        ),
    ),
    difficulty=2,
    objective="find the tension of track lines from the angles at the litter",
    usable=legs_open,
)

TRACK_LIFT = Template(
    key="track-lift",
    title="What track lines lift",
    stem=(
        "Track lines carry {track_tension} together. At the litter their upper legs rise "
        "{haul_elevation} above the horizontal and their ground legs fall {ground_depression} "
        "below it; they run freely through the litter's pulley. What upward force do they put on "
        "the litter? Count upward as positive."
    ),
    asked="Upward force of the track lines on the litter",
    givens=(Given(q.TRACK_TENSION, 0.5, 4.0, 0.1, "kN"), _UP, _DOWN),
    derivation=guiding.track_lift,
    tolerance=Tolerance(relative=0.02, absolute=5.0),
    mistakes=(
        Mistake(
            "track-lifts-nothing",
            "The track lines taken to lift nothing",
            "The upper legs pull up more steeply than the ground legs pull down.",
            lambda v: Integer(0),
        ),
        Mistake(
            "track-like-a-tag",
            "The track lines treated as a tag line",
            "A tag line has only the ground leg, which pulls down. Track lines have upper legs as "
            "well, with the same tension.",
            lambda v: -v.track_tension * sin(v.ground_depression),
        ),
        Mistake(
            "angles-added",
            "Both legs taken to lift",
            "The ground legs fall away from the litter, so their part is taken off.",
            lambda v: v.track_tension * (sin(v.haul_elevation) + sin(v.ground_depression)),
        ),
    ),
    difficulty=2,
    objective="tell what part of the weight the track lines carry",
)

HIGH_HUB = Template(
    key="hub-across-the-gorge",
    title="A hub above the litter",
    stem=(
        "The tag line runs across Tamarack Gorge to a hub on the other side, higher than the "
        "litter. At the master attachment point the haul line rises {haul_elevation} above the "
        "horizontal towards the wall, and the tag line rises {line_elevation} above it away "
        "from the wall. The load weighs {load}. What tension is in the tag line?"
    ),
    asked="Tension of the tag line",
    givens=(
        _LOAD,
        Given(q.HAUL_ELEVATION, 55, 82, 1, "°"),
        Given(q.LINE_ELEVATION, 8, 30, 1, "°"),
    ),
    derivation=guiding.tension_to_high_hub,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "hub-taken-as-lower",
            "The line treated as if it fell to the hub",
            "Here the line rises and helps to carry the weight, so the sum of the angles counts.",
            lambda v: v.load * cos(v.haul_elevation) / sin(v.haul_elevation - v.line_elevation),
        ),
        Mistake(
            "line-taken-as-level",
            "The line treated as level",
            "A rising line lifts as well as pulls out.",
            lambda v: v.load / tan(v.haul_elevation),
        ),
        Mistake(
            "sine-for-cosine",
            "Sine and cosine exchanged",
            "The sideways part of the haul line goes with the cosine of its angle above the "
            "horizontal.",
            lambda v: v.load * sin(v.haul_elevation) / sin(v.haul_elevation + v.line_elevation),
        ),
    ),
    difficulty=3,
    objective="say what changes when the hub is higher than the litter",
)

TAG_ON_THE_RAIL = Template(
    key="tag-on-the-rail",
    title="A tag line tied to the litter's rail",
    stem=(
        "The tag line is tied to the litter's rail and not to the master attachment point. The "
        "level part of its pull is {side_pull}, and it falls {ground_depression} below the "
        "horizontal; the litter weighs {load}. How far does the bridle tilt from plumb?"
    ),
    asked="Tilt of the bridle from plumb",
    givens=(
        _LOAD,
        Given(q.SIDE_PULL, 0.5, 1.4, 0.1, "kN"),
        Given(q.GROUND_DEPRESSION, 15, 38, 1, "°"),
    ),
    derivation=guiding.bridle_tilt,
    tolerance=Tolerance(absolute=radians(1.0)),
    mistakes=(
        Mistake(
            "tag-only-moves-the-litter",
            "The tag line taken to move the litter without tilting it",
            "Tied at the master attachment point it would; tied to the rail it pulls the litter "
            "out from under that point.",
            lambda v: Integer(0),
        ),
        Mistake(
            "ground-leg-level",
            "The downward part of the tag line left out",
            "It adds to the weight below the bridle and so makes the tilt smaller.",
            lambda v: atan(v.side_pull / v.load),
        ),
        Mistake(
            "ratio-upside-down",
            "The ratio turned upside down",
            "From plumb, the tangent is what pulls aside over what pulls down.",
            lambda v: atan(v.load / v.side_pull),
        ),
    ),
    difficulty=2,
    objective="say why a tag line belongs at the master attachment point",
)

OUT_OF_REACH = Template(
    key="out-of-reach",
    title="Further out than any tension reaches",
    stem=(
        "The haul directional is {x_D} out and {z_D} up, the hub {x_B} out and {z_B} up. With the "
        "litter {z} up, how far out from the wall is the point that no tension, and no number of "
        "lines, can reach?"
    ),
    asked="Distance out from the wall",
    givens=(
        Given(q.Z, 8, 29, 1, "m"),
        Given(q.X_D, 0.1, 0.8, 0.1, "m"),
        Given(q.Z_D, 31.0, 34.0, 0.5, "m"),
        Given(q.X_B, 30, 80, 5, "m"),
        Given(q.Z_B, 0.5, 4.0, 0.5, "m"),
    ),
    derivation=guiding.straight_line_limit,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "any-offset",
            "Every point up to the hub taken to be within reach",
            "A tight line is straight at most. The litter can come up to the straight line from "
            "directional to hub and not beyond.",
            lambda v: v.x_B,
        ),
        Mistake(
            "measured-from-the-hub",
            "The share of the height measured up from the hub",
            "The straight line starts at the directional: count how far the litter is below that.",
            lambda v: v.x_D + (v.x_B - v.x_D) * (v.z - v.z_B) / (v.z_D - v.z_B),
        ),
        Mistake(
            "half-right-angle-rule",
            "As far out as it is below the directional",
            "That would be a line at 45°. The line's slope is that from directional to hub.",
            lambda v: v.x_D + v.z_D - v.z,
        ),
    ),
    difficulty=2,
    objective="find how far out a litter can be held at most",
)


QUESTIONS = (
    ATTENDANT_PUSH,
    ATTENDANT_HAUL,
    TAG_FROM_PLACES,
    HAUL_AGAINST_TAG,
    HAUL_BESIDE_TRACK,
    TRACK_TENSION,
    TRACK_LIFT,
    HIGH_HUB,
    TAG_ON_THE_RAIL,
    OUT_OF_REACH,
)
"""This module's questions, in the order of the lesson."""
