"""Questions that ask for an order, over the lessons: loads, angles and places compared.

Several things of one kind draw the same quantities, numbered from 1 in the order in which they
stand here; the letters that a learner sees are given out when the numbers are drawn.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from math import hypot, radians, sin
from typing import Any

from ropecalc.derivation import Derivation, Variable
from ropecalc.mechanics import (
    advantage,
    anchors,
    critical,
    guiding,
    hauling,
    redirects,
    slip,
    swing,
    tensioner,
    tensioner_let_out,
    tensioner_lines,
    vectors,
)
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.pulleys import formulas
from ropecalc.teaching.questions.applied import Applied
from ropecalc.teaching.questions.bank.slips import places_open
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.ordering import Ordering, Ranked, WrongOrder


def _number(variable: Variable, number: int | str) -> Variable:
    name, symbol = f"{variable.name}_{number}", rf"{variable.symbol}_\mathrm{{{number}}}"
    return named(variable, name, f"{variable.meaning} ({number})", symbol)


def _each(count: int, spread: Given, *free: Given) -> tuple[Given, ...]:
    """The quantities of ``count`` things: each one's own part of ``spread``, and all of ``free``.

    So no two things have the same value of ``spread``, and nobody can order by it in two ways.
    """
    part = spread.count // count
    givens = []
    for number in range(1, count + 1):
        low = spread.low + (number - 1) * part * spread.step
        own = replace(spread, low=round(low, 6), high=round(low + (part - 1) * spread.step, 6))
        givens += [replace(one, variable=_number(one.variable, number)) for one in (own, *free)]
    return tuple(givens)


def _alike(count: int, words: str, derivation: Derivation, *own: Variable) -> tuple[Ranked, ...]:
    """``count`` things with the same ``words``, each with ``own`` quantities of its own."""
    return tuple(
        Ranked(
            words.format(**{v.name: f"{{{v.name}_{number}}}" for v in own}),
            Applied(derivation, {v.name: f"{v.name}_{number}" for v in own}),
        )
        for number in range(1, count + 1)
    )


def _by(
    formula: Callable[..., float], count: int, *own: Variable
) -> Callable[[Any], Sequence[float]]:
    """The numbers of ``count`` things by a mistaken ``formula`` of their own quantities."""

    def numbers(drawn: Any) -> list[float]:
        return [
            formula(*(getattr(drawn, f"{v.name}_{number}") for v in own))
            for number in range(1, count + 1)
        ]

    return numbers


# --- forces and anchors ------------------------------------------------------------------------

_ROPE = (q.ROPE_TENSION, q.ROPE_ELEVATION)
_LEG = (q.LOAD, q.LEG_ANGLE)
_STRAND = (q.STRAND_TENSION, q.STRAND_ANGLE)

LEVEL_PULLS = Ordering(
    key="order-level-pulls",
    title="Which rope pulls outward most?",
    stem=(
        "Four ropes could hold a litter off the Lower Heron Wall, one at a time. Each leaves it "
        "upward and outward, at the angle above the horizontal that stands with it. Put them in "
        "order by how hard they pull outward, level."
    ),
    asked="The letters by level pull, smallest first",
    givens=_each(
        4,
        Given(q.ROPE_ELEVATION, 10, 76, 2, "°"),
        Given(q.ROPE_TENSION, 0.8, 3.6, 0.05, "kN"),
    ),
    things=_alike(4, "{rope_tension} at {rope_elevation}", vectors.level_part, *_ROPE),
    reason="A flat rope gives most of its tension outward, a steep one most of it upward.",
    mistakes=(
        WrongOrder(
            "upward-part",
            "Ordered by the upward part",
            "The sine gives what lifts. Level is the cosine of an angle above the horizontal.",
            _by(lambda tension, up: tension * sin(up), 4, *_ROPE),
        ),
        WrongOrder(
            "tension-alone",
            "Ordered by the tension alone",
            "A steep rope spends its tension on lifting. The angle counts as much as the tension.",
            _by(lambda tension, up: tension, 4, *_ROPE),
        ),
        WrongOrder(
            "angle-alone",
            "Ordered by the angle alone",
            "A flat rope gives a larger share, but a share of a smaller tension can be less.",
            _by(lambda tension, up: -up, 4, *_ROPE),
        ),
    ),
    difficulty=1,
    objective="compare ropes by the part of their tension that acts level",
)

LEG_TENSIONS = Ordering(
    key="order-leg-tensions",
    title="Which anchor loads its legs most?",
    stem=(
        "Four anchors each have two equal legs, and each holds a load of its own. Put them in "
        "order by the tension in one leg."
    ),
    asked="The letters by tension in a leg, smallest first",
    givens=_each(
        4,
        Given(q.LEG_ANGLE, 20, 138, 2, "°"),
        Given(q.LOAD, 1.0, 3.0, 0.05, "kN"),
    ),
    things=_alike(4, "{load} on two legs {leg_angle} apart", anchors.two_leg_anchor, *_LEG),
    reason="Up to about 60° the angle adds little; beyond 90° it adds more and more.",
    mistakes=(
        WrongOrder(
            "half-the-load",
            "Half the load taken for each leg",
            "Legs that spread pull against each other as well as holding the load.",
            _by(lambda load, angle: load / 2, 4, *_LEG),
        ),
        WrongOrder(
            "angle-alone",
            "Ordered by the angle alone",
            "The angle multiplies the load; a small load at a wide angle can still be less.",
            _by(lambda load, angle: angle, 4, *_LEG),
        ),
        WrongOrder(
            "sine-for-cosine",
            "The sine of the half angle taken",
            "Along the line of pull each leg gives the cosine of half the angle. With the sine, "
            "legs side by side would carry most.",
            _by(lambda load, angle: load / (2 * sin(angle / 2)), 4, *_LEG),
        ),
    ),
    difficulty=2,
    objective="compare anchors by what their legs carry",
)

REDIRECT_PULLS = Ordering(
    key="order-redirect-pulls",
    title="Which redirect pulls hardest on its anchor?",
    stem=(
        "Four ropes each turn through a pulley that runs freely. With each stand its tension and "
        "the angle between its two strands. Put them in order by the pull on the pulley's anchor."
    ),
    asked="The letters by pull on the anchor, smallest first",
    givens=_each(
        4,
        Given(q.STRAND_ANGLE, 20, 150, 5, "°"),
        Given(q.STRAND_TENSION, 0.8, 3.0, 0.05, "kN"),
    ),
    things=_alike(
        4, "{strand_tension}, strands {strand_angle} apart", redirects.redirect_resultant, *_STRAND
    ),
    reason="Strands side by side pull with twice the tension; at 120° with as much as one strand.",
    mistakes=(
        WrongOrder(
            "twice-the-tension",
            "Twice the tension taken, whatever the angle",
            "That holds for strands side by side only. As they open, they pull less and less "
            "together.",
            _by(lambda tension, angle: 2 * tension, 4, *_STRAND),
        ),
        WrongOrder(
            "sine-for-cosine",
            "The sine of the half angle taken",
            "The strands add along the bisector, and there each gives the cosine of half the "
            "angle.",
            _by(lambda tension, angle: 2 * tension * sin(angle / 2), 4, *_STRAND),
        ),
        WrongOrder(
            "angle-alone",
            "Ordered by the angle alone",
            "The angle says how many times the tension the anchor feels; the tension counts too.",
            _by(lambda tension, angle: -angle, 4, *_STRAND),
        ),
    ),
    difficulty=1,
    objective="compare redirects by what their anchors hold",
)

# --- hauling -----------------------------------------------------------------------------------

_PULL = (q.ADVANTAGE, q.RISE)
_SYSTEM = (q.SHEAVE_EFFICIENCY, q.PARTS)
_TEAM = (hauling.PEOPLE, q.ADVANTAGE)

HAND_TRAVEL = Ordering(
    key="order-hand-travel",
    title="Who walks furthest?",
    stem=(
        "Four teams raise a litter, each with a system of its own and to a height of its own. "
        "Pulleys turn without friction. Put the teams in order by the rope that runs through "
        "their hands."
    ),
    asked="The letters by rope through the hands, smallest first",
    givens=_each(4, Given(q.ADVANTAGE, 2, 9, 1, ""), Given(q.RISE, 0.5, 4.0, 0.05, "m")),
    things=_alike(4, "{advantage}:1, to raise {rise}", advantage.rope_through_hands, *_PULL),
    reason="What the hands save in force they walk in length: the advantage times the rise.",
    mistakes=(
        WrongOrder(
            "divided-instead",
            "The rise divided by the advantage",
            "The advantage divides the force. The rope it costs is that many times the rise.",
            _by(lambda gain, rise: rise / gain, 4, *_PULL),
        ),
        WrongOrder(
            "rise-alone",
            "Ordered by the rise alone",
            "Every strand that holds the load has to grow shorter by the rise.",
            _by(lambda gain, rise: rise, 4, *_PULL),
        ),
        WrongOrder(
            "advantage-alone",
            "Ordered by the advantage alone",
            "A strong system over a small rise can still take less rope.",
            _by(lambda gain, rise: gain, 4, *_PULL),
        ),
    ),
    difficulty=1,
    objective="compare hauls by the rope that runs through the hands",
)

HAND_PULLS = Ordering(
    key="order-hand-pulls",
    title="Which system asks most of the hands?",
    stem=(
        "Three simple systems could raise the same load of {load}. With each stands how much of "
        "the tension every one of its pulleys passes on. The haul strand leaves a pulley that "
        "travels with the load. Put them in order by the pull of the hands while raising."
    ),
    asked="The letters by pull of the hands, smallest first",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        *_each(3, Given(q.PARTS, 2, 7, 1, ""), Given(q.SHEAVE_EFFICIENCY, 0.50, 0.96, 0.01, "")),
    ),
    things=_alike(
        3,
        "{parts} strands on the load, each pulley passes on {efficiency}",
        formulas.simple_pull_hauling,
        *_SYSTEM,
    ),
    reason="Each further strand brings less than the one before it, on poor pulleys much less.",
    mistakes=(
        WrongOrder(
            "friction-left-out",
            "Friction left out",
            "The load divided by the strands holds for pulleys that pass on everything.",
            _by(lambda passed, strands: 1 / strands, 3, *_SYSTEM),
        ),
        WrongOrder(
            "better-pulleys-always-win",
            "Ordered by the pulleys alone",
            "Good pulleys help, but strands that carry the load count as well.",
            _by(lambda passed, strands: -passed, 3, *_SYSTEM),
        ),
    ),
    difficulty=3,
    objective="compare systems by what the hands have to pull, friction counted",
)

SNAGS = Ordering(
    key="order-snag-pulls",
    title="Which team can break most?",
    stem=(
        "Something catches under the outcrop while a team pulls, and everybody pulls as hard as "
        "they can: {burst_per_person} each. Put four teams in order by the force they put into "
        "the snag."
    ),
    asked="The letters by force at the snag, smallest first",
    givens=(
        Given(hauling.BURST, 0.25, 0.45, 0.05, "kN"),
        *_each(4, Given(hauling.PEOPLE, 2, 9, 1, ""), Given(q.ADVANTAGE, 2.4, 8.0, 0.2, "")),
    ),
    things=_alike(
        4,
        "{people} people on a system that multiplies {advantage} times",
        hauling.snag_pull,
        *_TEAM,
    ),
    reason="People and advantage multiply: few hands on a strong system can do more than many.",
    mistakes=(
        WrongOrder(
            "people-alone",
            "Ordered by the number of people alone",
            "The system multiplies what they pull; that is what it is for.",
            _by(lambda people, gain: people, 4, *_TEAM),
        ),
        WrongOrder(
            "advantage-alone",
            "Ordered by the advantage alone",
            "It multiplies what the people pull, and that grows with their number.",
            _by(lambda people, gain: gain, 4, *_TEAM),
        ),
    ),
    difficulty=1,
    objective="say which haul team could do most harm to a snagged litter",
)

# --- spans -------------------------------------------------------------------------------------

_SPAN = (q.LOAD, q.SPAN, q.SAG)

SPANS = Ordering(
    key="order-span-tensions",
    title="Which span is loaded most?",
    stem=(
        "Four level spans each carry a load at the middle; the sag was measured with the load on. "
        "Put them in order by the tension of the rope."
    ),
    asked="The letters by tension, smallest first",
    givens=_each(
        4,
        Given(q.SPAN, 20, 59, 1, "m"),
        Given(q.SAG, 1.5, 6.0, 0.1, "m"),
        Given(q.LOAD, 1.0, 2.8, 0.05, "kN"),
    ),
    things=_alike(
        4, "{load} on a span of {span} that sags {sag}", critical.mid_span_tension, *_SPAN
    ),
    reason="What counts is the sag as a share of the span, and the load.",
    mistakes=(
        WrongOrder(
            "span-alone",
            "Ordered by the length of the span",
            "A long span with much sag carries no more than a short one with little.",
            _by(lambda load, span, sag: span, 4, *_SPAN),
        ),
        WrongOrder(
            "sag-alone",
            "Ordered by the sag in metres",
            "The same sag is much for a short span and little for a long one.",
            _by(lambda load, span, sag: -sag, 4, *_SPAN),
        ),
        WrongOrder(
            "load-alone",
            "Ordered by the load alone",
            "Each half carries half the load upward, but it pulls along a rope that is nearly "
            "level.",
            _by(lambda load, span, sag: load, 4, *_SPAN),
        ),
    ),
    difficulty=2,
    objective="compare loaded spans",
)

# --- along the raise ---------------------------------------------------------------------------

_STATION = (q.X, q.Z)
_HEAD = (
    Given(q.X_D, 0.1, 0.5, 0.1, "m"),
    Given(q.Z_D, 31.5, 33.0, 0.5, "m"),
)
_HUB = (
    Given(q.X_B, 35, 70, 5, "m"),
    Given(q.Z_B, 0.5, 2.0, 0.5, "m"),
)
_STATIONS = (
    ((5.0, 8.0), (1, 6)),
    ((2.0, 6.0), (8, 20)),
    ((1.6, 3.0), (22, 27)),
    ((0.8, 1.6), (28, 30)),
)


def _stations_open(values: Mapping[str, float]) -> bool:
    """Whether no station lies near the straight line."""
    return all(
        places_open({**values, "x": values[f"x_{n}"], "z": values[f"z_{n}"]}) for n in range(1, 5)
    )


STATIONS = Ordering(
    key="order-stations",
    title="Which station asks most of the track lines?",
    stem=(
        "A raise on the Upper Heron Wall passes four stations, given by how far out and how high "
        "the master attachment point is there. Haul and track directional are {x_D} out and {z_D} "
        "up, the hub is {x_B} out and {z_B} up, and {load} hangs. Put the stations in order by "
        "the tension of the track lines together."
    ),
    asked="The letters by track tension, smallest first",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        *(
            Given(_number(variable, n), low, high, step, "m")
            for n, (across, up) in enumerate(_STATIONS, 1)
            for variable, (low, high), step in ((q.X, across, 0.2), (q.Z, up, 1))
        ),
        *_HEAD,
        *_HUB,
    ),
    things=_alike(4, "{x} out and {z} up", guiding.line_tension_from_places, *_STATION),
    reason="Distance out counts against how far the directional still is above the litter.",
    mistakes=(
        WrongOrder(
            "distance-out-alone",
            "Ordered by the distance out from the wall",
            "Low down a long haul leg holds the litter far out with little; near the top little "
            "distance takes much.",
            _by(lambda x, z: x, 4, *_STATION),
        ),
        WrongOrder(
            "height-alone",
            "Ordered by the height",
            "At the top the litter may hang almost plumb, and then hardly anything is needed.",
            _by(lambda x, z: z, 4, *_STATION),
        ),
    ),
    difficulty=3,
    objective="find the hardest station of a raise before working out each one",
    usable=_stations_open,
)

_FURTHER = _number(q.X_B, "far")
_OUTER = _number(q.X_D, "out")
_HIGHER = _number(q.Z_D, "high")
_TO_HUB = guiding.line_tension_from_places


def _line(v: Any, x_d: float, z_d: float, x_b: float) -> float:
    """The tension of the line to the hub, with the directional and the hub at these places."""
    up, down = (z_d - v.z) / (v.x - x_d), (v.z - v.z_B) / (x_b - v.x)
    return float(v.load / (up - down) * hypot(1, down))


def _remedies(v: Any) -> list[float]:
    return [
        _line(v, v.x_D, v.z_D, v.x_B_far),
        _line(v, v.x_D_out, v.z_D, v.x_B),
        _line(v, v.x_D, v.z_D_high, v.x_B),
        _line(v, v.x_D, v.z_D, v.x_B),
    ]


def _second_line_halves(v: Any) -> list[float]:
    *others, same = _remedies(v)
    return [*others, same / 2]


def _longer_is_worse(v: Any) -> list[float]:
    _, outer, higher, same = _remedies(v)
    return [same * v.x_B_far / v.x_B, outer, higher, same]


def _both_open(values: Mapping[str, float]) -> bool:
    return places_open(values) and values["x_D_out"] > values["x_D"]


REMEDIES = Ordering(
    key="order-remedies-by-hub-load",
    title="What helps the hub at a high outcrop?",
    stem=(
        "At a high outcrop {load} has to be held {x} out at a height of {z}. Haul and track "
        "directional are {x_D} out and {z_D} up, the hub {x_B} out and {z_B} up, and one track "
        "line is rigged. Four changes are proposed, one at a time. Put them in order by the load "
        "on the hub afterwards."
    ),
    asked="The letters by load on the hub, smallest first",
    givens=(
        Given(q.LOAD, 1.2, 2.8, 0.1, "kN"),
        Given(q.X, 2.0, 3.0, 0.1, "m"),
        Given(q.Z, 24, 28, 1, "m"),
        *_HEAD,
        Given(q.X_B, 25, 40, 5, "m"),
        Given(q.Z_B, 0.5, 2.0, 0.5, "m"),
        Given(_FURTHER, 45, 90, 5, "m"),
        Given(_OUTER, 0.6, 1.4, 0.1, "m"),
        Given(_HIGHER, 33.5, 36.0, 0.5, "m"),
    ),
    things=(
        Ranked("the hub {x_B_far} out from the wall", Applied(_TO_HUB, {"x_B": "x_B_far"})),
        Ranked("the directional {x_D_out} out from the wall", Applied(_TO_HUB, {"x_D": "x_D_out"})),
        Ranked("the directional {z_D_high} up", Applied(_TO_HUB, {"z_D": "z_D_high"})),
        Ranked("a second track line to the same hub, everything else as it is", Applied(_TO_HUB)),
    ),
    reason=(
        "A second line shares the tension but brings it all to the same hub; only the geometry "
        "makes it less."
    ),
    mistakes=(
        WrongOrder(
            "second-line-halves-the-hub-load",
            "The second line taken to halve the load on the hub",
            "Each line carries less, but the hub holds all of them.",
            _second_line_halves,
        ),
        WrongOrder(
            "further-hub-pulls-more",
            "A hub further out taken to pull more",
            "Further out the ground leg is flatter: it pulls less downward, and the tension falls.",
            _longer_is_worse,
        ),
    ),
    difficulty=3,
    objective="choose what relieves the hub at a high outcrop",
    usable=_both_open,
)

# --- tensioner ---------------------------------------------------------------------------------

_IN = _number(tensioner.DEVICE_PULL, "in")
_OUT = _number(tensioner.DEVICE_PULL, "out")
_NEAR, _FAR = 1.0, 3.0


def _in(v: Any, pull: float, line: float) -> float:
    return float(pull * (1 + v.efficiency) * v.efficiency ** (2 * (line - 1)))


def _out(v: Any, pull: float, line: float) -> float:
    return float(pull * (1 + 1 / v.efficiency) / v.efficiency ** (2 * (line - 1)))


Share = Callable[[Any, float, float], float]


def _lines(first: Share, then: Share) -> Callable[[Any], Sequence[float]]:
    """The four lines, the ``first`` two shared as one function says, the others as ``then``."""

    def numbers(v: Any) -> list[float]:
        return [
            share(v, pull, line)
            for share, pull in ((first, v.device_pull_in), (then, v.device_pull_out))
            for line in (_NEAR, _FAR)
        ]

    return numbers


def _line_of(words: str, derivation: Derivation, pull: Variable, line: float) -> Ranked:
    return Ranked(words, Applied(derivation, {"device_pull": pull.name}, {"line": line}))


TENSIONER = Ordering(
    key="order-tensioner-lines",
    title="Near line, far line, in and out",
    stem=(
        "Three track lines hang on one tensioner in series; every pulley passes on {efficiency} "
        "of the tension. The cell on the strand at the device reads {device_pull_in} just after "
        "rope was taken in, and {device_pull_out} just after some was let out again. The near "
        "line is next to the device. Put the four in order by their tension."
    ),
    asked="The letters by tension, smallest first",
    givens=(
        Given(q.SHEAVE_EFFICIENCY, 0.75, 0.92, 0.01, ""),
        Given(_IN, 0.4, 1.2, 0.05, "kN"),
        Given(_OUT, 0.2, 0.8, 0.05, "kN"),
    ),
    things=tuple(
        _line_of(f"the {name} line just after {when}", derivation, pull, line)
        for when, derivation, pull in (
            ("taking in", tensioner_lines.line_taken_in, _IN),
            ("letting out", tensioner_let_out.line_let_out, _OUT),
        )
        for name, line in (("near", _NEAR), ("far", _FAR))
    ),
    reason=(
        "Taken in, the near line carries most; let out, the far line does, and more than the "
        "device shows."
    ),
    mistakes=(
        WrongOrder(
            "always-taken-in",
            "Taken as if rope always came in",
            "Let out, the rope runs the other way over every pulley: the far line carries most.",
            _lines(_in, _in),
        ),
        WrongOrder(
            "always-let-out",
            "Taken as if rope always went out",
            "Taken in, every pulley leaves less behind it: the far line carries least.",
            _lines(_out, _out),
        ),
        WrongOrder(
            "directions-swapped",
            "Taking in and letting out exchanged",
            "Friction works against the movement: what lies behind a pulley, as the rope runs, "
            "carries less.",
            _lines(_out, _in),
        ),
    ),
    difficulty=3,
    objective="tell which line of a tensioner carries most after it was moved",
    must_pass=True,
)

# --- when something lets go --------------------------------------------------------------------

_SWUNG = (q.HAUL_LEG_LENGTH, q.OFF_PLUMB)
_SLIPPED = (q.SLIP, q.HAUL_ELEVATION, q.GROUND_DEPRESSION)

SWINGS = Ordering(
    key="order-swings",
    title="Which swing hits fastest?",
    stem=(
        "All lines that hold a litter off go slack at once, and it swings in to plumb. Four places "
        "of a raise are compared, by the length of the haul leg and the distance off plumb. Put "
        "them in order by the speed at plumb."
    ),
    asked="The letters by speed, slowest first",
    givens=_each(
        4,
        Given(q.HAUL_LEG_LENGTH, 4, 27, 1, "m"),
        Given(q.OFF_PLUMB, 0.5, 3.2, 0.05, "m"),
    ),
    things=_alike(
        4, "haul leg {haul_leg_length}, {off_plumb} off plumb", swing.swing_speed, *_SWUNG
    ),
    reason="Fast is a short haul leg far off plumb: it falls furthest on its way in.",
    first="slowest",
    last="fastest",
    mistakes=(
        WrongOrder(
            "distance-alone",
            "Ordered by the distance off plumb",
            "From the same distance a long haul leg brings the litter in nearly level: it hardly "
            "falls.",
            _by(lambda leg, off: off, 4, *_SWUNG),
        ),
        WrongOrder(
            "longer-is-faster",
            "Ordered by the length of the haul leg",
            "A longer pendulum swings more slowly from the same distance; it falls less.",
            _by(lambda leg, off: leg, 4, *_SWUNG),
        ),
    ),
    difficulty=2,
    objective="compare places of a raise by what a swing would do there",
)

SLIPS = Ordering(
    key="order-slips",
    title="Which slip moves the litter most?",
    stem=(
        "A rope grab on the track line lets some rope slip; the haul line keeps its length. Put "
        "four places in order by how far the litter moves towards the wall."
    ),
    asked="The letters by movement towards the wall, smallest first",
    givens=_each(
        4,
        Given(q.GROUND_DEPRESSION, 6, 45, 1, "°"),
        Given(q.SLIP, 0.10, 0.41, 0.01, "m"),
        Given(q.HAUL_ELEVATION, 55, 80, 1, "°"),
    ),
    things=_alike(
        4,
        "{slip} slip, haul leg {haul_elevation} above and ground leg {ground_depression} below "
        "the horizontal",
        slip.slip_inward,
        *_SLIPPED,
    ),
    reason="The nearer the two legs are to one straight line, the further a slip lets it move.",
    mistakes=(
        WrongOrder(
            "slip-is-the-movement",
            "The slip taken for the movement",
            "The litter moves further than the rope slips, and the more so the straighter the "
            "legs.",
            _by(lambda slid, up, down: slid, 4, *_SLIPPED),
        ),
        WrongOrder(
            "multiplied-by-the-sine",
            "Multiplied by the sine instead of divided",
            "Only a part of the movement makes the ground leg longer, so the movement is larger "
            "than the slip.",
            _by(lambda slid, up, down: slid * sin(up - down), 4, *_SLIPPED),
        ),
        WrongOrder(
            "angles-alone",
            "Ordered by the legs alone",
            "The legs say how many times the slip the litter moves; how much slips counts too.",
            _by(lambda slid, up, down: down - up, 4, *_SLIPPED),
        ),
    ),
    difficulty=2,
    objective="say where a slip of a grab would matter most",
    usable=lambda v: all(
        v[f"haul_elevation_{n}"] - v[f"ground_depression_{n}"] >= radians(12) for n in range(1, 5)
    ),
)

BY_LESSON: Mapping[int, tuple[Ordering, ...]] = {
    1: (LEVEL_PULLS,),
    2: (LEG_TENSIONS,),
    3: (REDIRECT_PULLS,),
    4: (HAND_TRAVEL,),
    5: (HAND_PULLS,),
    6: (SNAGS,),
    7: (SPANS,),
    9: (STATIONS,),
    10: (REMEDIES, TENSIONER),
    11: (SWINGS, SLIPS),
}
"""The orderings of each lesson."""
