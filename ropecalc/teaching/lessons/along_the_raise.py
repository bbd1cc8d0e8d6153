"""The track lines along a whole raise: path, tension, rope, hub, and a tensioner that is locked."""

from collections.abc import Mapping
from math import hypot

from ropecalc import cautions
from ropecalc.mechanics import guiding, guiding_limits, locked, vectors
from ropecalc.mechanics.holding import Hold, Method, Point, Rig, hold
from ropecalc.mechanics.locked import OUT_BEFORE_DOWN, move_locked
from ropecalc.mechanics.raise_work import raise_work
from ropecalc.mechanics.tensioner import effective_lines
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import CONTOUR_MAP, LOCKED_TENSIONER
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import along_the_raise as bank
from ropecalc.units import Kind

_TOP, _HUB = Point(0.3, 32.0), Point(40.0, 0.5)
_RIG = Rig(haul_directional=_TOP, track_directional=_TOP, hub=_HUB)
_MASS, _UNATTENDED = 200.0, 115.0
_OUT, _HIGH, _LOW = 2.5, 27.0, 6.0
_START, _END = Point(2.5, 1.5), Point(1.0, 31.0)
_EFFICIENCY, _STIFFNESS = 0.9, 50_000.0
"""The example of this lesson: one rig on the Upper Heron Wall, an outcrop low down or high up."""


_TIP = {"x_O": 1.5, "z_O": 25.0, "clearance": 0.5}
"""An outcrop's tip, and what the haul line keeps off it."""


def _held(
    height: float = _HIGH, *, top: Point = _TOP, hub: Point = _HUB, mass: float = _MASS
) -> Hold:
    return hold(Method.TRACK, Rig(top, top, hub), vectors.weight(mass=mass), _OUT, height)


def _ends() -> dict[str, float]:
    return {"x_A": _TOP.x, "z_A": _TOP.z, "x_B": _HUB.x, "z_B": _HUB.z}


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    held = _held()
    return {
        "load": vectors.weight(mass=_MASS),
        "x": _OUT,
        "z": _LOW,
        "x_D": _TOP.x,
        "z_D": _TOP.z,
        **_ends(),
        **_TIP,
        "line_tension": held.line_tension,
        "haul_elevation": held.haul_elevation,
        "track_elevation": held.track_elevation,
        "ground_depression": held.ground_depression,
    }


def _example() -> Mapping[str, Quantity]:
    return {
        "mass": (_MASS, Kind.MASS),
        "out": (_OUT, Kind.LENGTH),
        "low": (_LOW, Kind.LENGTH),
        "high": (_HIGH, Kind.LENGTH),
        "top": (_TOP.z, Kind.LENGTH),
        "hub": (_HUB.x, Kind.LENGTH),
    }


def _low_and_high() -> Mapping[str, Quantity]:
    low, high = (_held(z).line_tension for z in (_LOW, _HIGH))
    return {
        "out": (_OUT, Kind.LENGTH),
        "low_height": (_LOW, Kind.LENGTH),
        "high_height": (_HIGH, Kind.LENGTH),
        "low": (low, Kind.FORCE),
        "high": (high, Kind.FORCE),
        "times": (high / low, Kind.RATIO, 1),
    }


def _clear() -> Mapping[str, Quantity]:
    out = guiding.haul_clearance_offset(z=_LOW, x_D=_TOP.x, z_D=_TOP.z, **_TIP)
    return {
        "start": (_LOW, Kind.LENGTH),
        "tip": (_TIP["x_O"], Kind.LENGTH),
        "tip_height": (_TIP["z_O"], Kind.LENGTH),
        "clearance": (_TIP["clearance"], Kind.LENGTH),
        "out": (out, Kind.LENGTH),
    }


def _hardest() -> Mapping[str, Quantity]:
    level = CONTOUR_MAP.compute(CONTOUR_MAP.start | {"height": _HIGH})
    most, height = level.largest
    return {
        "tip": (level.tip.x, Kind.LENGTH),
        "height": (_HIGH, Kind.LENGTH),
        "at_tip": (level.held.line_tension, Kind.FORCE),
        "most": (most, Kind.FORCE),
        "above": (height - level.tip.z, Kind.LENGTH),
    }


def _remedies() -> Mapping[str, Quantity]:
    further = Point(_TOP.x + 0.5, _TOP.z)
    higher = Point(_TOP.x, _TOP.z + 1.0)
    one = _held().line_tension
    return {
        "out": (_OUT, Kind.LENGTH),
        "high": (_HIGH, Kind.LENGTH),
        "one": (one, Kind.FORCE),
        "series": (one / effective_lines(efficiency=_EFFICIENCY, lines=2), Kind.FORCE, 2),
        "efficiency": (_EFFICIENCY, Kind.RATIO),
        "step_out": (0.5, Kind.LENGTH),
        "moved": (_held(top=further).line_tension, Kind.FORCE),
        "step_up": (1.0, Kind.LENGTH),
        "raised": (_held(top=higher).line_tension, Kind.FORCE),
        "alone_mass": (_UNATTENDED, Kind.MASS),
        "alone": (_held(mass=_UNATTENDED).line_tension, Kind.FORCE),
    }


def _hub_moved() -> Mapping[str, Quantity]:
    near, far = 20.0, 60.0
    ends = {"x": _OUT, "z": _HIGH, "x_D": _TOP.x, "z_D": _TOP.z, "z_B": _HUB.z}
    return {
        "now": (_HUB.x, Kind.LENGTH),
        "now_tension": (_held().line_tension, Kind.FORCE),
        "far": (far, Kind.LENGTH),
        "far_tension": (_held(hub=Point(far, _HUB.z)).line_tension, Kind.FORCE),
        "near": (near, Kind.LENGTH),
        "near_tension": (_held(hub=Point(near, _HUB.z)).line_tension, Kind.FORCE),
        "limit": (float(guiding.hub_limit(**ends)), Kind.LENGTH),
    }


def _take_in() -> Mapping[str, Quantity]:
    return {
        "low_height": (_LOW, Kind.LENGTH),
        "high_height": (_HIGH, Kind.LENGTH),
        "low": (100 * _held(_LOW).take_in_rate, Kind.RATIO, 2),
        "high": (100 * _held(_HIGH).take_in_rate, Kind.RATIO, 2),
    }


def _whole_raise() -> Mapping[str, Quantity]:
    track = [guiding.track_length(x=p.x, z=p.z, **_ends()) for p in (_START, _END)]
    tag = [guiding.tag_length(x=p.x, z=p.z, x_B=_HUB.x, z_B=_HUB.z) for p in (_START, _END)]
    return {
        "start": (_START.z, Kind.LENGTH),
        "end": (_END.z, Kind.LENGTH),
        "gained": (_END.z - _START.z, Kind.LENGTH),
        "in_": (track[0] - track[1], Kind.LENGTH),
        "paid_out": (tag[1] - tag[0], Kind.LENGTH),
    }


def _work() -> Mapping[str, Quantity]:
    path = ((7.8, 1.0), (2.0, 25.0), (0.8, 30.0))
    load = float(vectors.weight(mass=_MASS))
    track, tag = (raise_work(method, _RIG, load, path) for method in (Method.TRACK, Method.TAG))
    return {
        "share": (100 * track.tensioner / track.lift, Kind.RATIO, 2),
        "more": (100 * (tag.haul / track.haul - 1), Kind.RATIO, 2),
        "burnt": (100 * tag.burnt / tag.haul, Kind.RATIO, 2),
    }


def _uplift() -> Mapping[str, Quantity]:
    low, high = _held(_LOW), _held(_HIGH)
    return {
        "low_height": (_LOW, Kind.LENGTH),
        "high_height": (_HIGH, Kind.LENGTH),
        "line": (high.line_tension, Kind.FORCE),
        "low": (low.hub_uplift, Kind.FORCE),
        "high": (high.hub_uplift, Kind.FORCE),
    }


def _boulder() -> Mapping[str, Quantity]:
    mass, mu = 400.0, 0.5
    high = _held()

    def slides(angle: float) -> float:
        return float(
            guiding_limits.hub_sliding_tension(
                hub_mass=mass, hub_friction=mu, ground_depression=angle
            )
        )

    return {
        "mass": (mass, Kind.MASS),
        "mu": (mu, Kind.RATIO),
        "level": (slides(0.0), Kind.FORCE),
        "steep": (slides(high.ground_depression), Kind.FORCE),
        "high_height": (_HIGH, Kind.LENGTH),
        "line": (high.line_tension, Kind.FORCE),
    }


def _sideways() -> Mapping[str, Quantity]:
    aside = 0.5

    def back(height: float) -> float:
        held = _held(height)
        return float(
            guiding_limits.side_force(
                haul_tension=held.haul_tension,
                track_tension=held.line_tension,
                haul_leg_length=hypot(_OUT - _TOP.x, _TOP.z - height),
                ground_leg_length=hypot(_HUB.x - _OUT, height - _HUB.z),
                sideways=aside,
            )
        )

    return {
        "aside": (aside, Kind.LENGTH),
        "low_height": (_LOW, Kind.LENGTH),
        "high_height": (_HIGH, Kind.LENGTH),
        "low": (back(_LOW), Kind.FORCE, 2),
        "high": (back(_HIGH), Kind.FORCE, 2),
    }


def _lowered() -> Mapping[str, Quantity]:
    by = 3.0
    moved = move_locked(
        _RIG,
        vectors.weight(mass=_MASS),
        _OUT,
        _HIGH,
        new_z=_HIGH - by,
        stiffness=_STIFFNESS,
    )
    return {
        "by": (by, Kind.LENGTH),
        "out": (_OUT, Kind.LENGTH),
        "before": (moved.before.forces.line_tension, Kind.FORCE),
        "elastic": (moved.elastic.forces.line_tension, Kind.FORCE),
        "rigid": (moved.rigid.forces.line_tension, Kind.FORCE),
        "elastic_out": (moved.elastic.x, Kind.LENGTH),
        "rigid_out": (moved.rigid.x, Kind.LENGTH),
        "stiffness": (_STIFFNESS, Kind.FORCE),
    }


def _raised() -> Mapping[str, Quantity]:
    out, start, by = 8.0, 2.0, 4.0
    load = vectors.weight(mass=_MASS)
    moved = move_locked(_RIG, load, out, start, new_z=start + by, stiffness=_STIFFNESS)
    return {
        "out": (out, Kind.LENGTH),
        "start": (start, Kind.LENGTH),
        "by": (by, Kind.LENGTH),
        "rigid_out": (moved.rigid.x, Kind.LENGTH),
        "elastic_out": (moved.elastic.x, Kind.LENGTH),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example on this page: {mass} on the ropes, {out} out from the wall, at {low} up or at "
        "{high} up. Haul line and track line start at the same directional, {top} up; the hub "
        "stands {hub} out. Rope stiffness and pulley efficiency are examples: measure your own.",
        _example,
    ),
    Fact(
        "low-and-high",
        "Holding the litter {out} out takes {low} of track tension at {low_height} and {high} at "
        "{high_height}: about {times} times as much for the same outcrop higher up.",
        _low_and_high,
        after_prediction=True,
    ),
    Fact(
        "clear-the-line",
        "An outcrop {tip} out at {tip_height}: to keep the haul line {clearance} off its tip, the "
        "litter has to stand {out} out while it is still only {start} up.",
        _clear,
    ),
    Fact(
        "hardest-place",
        "On the map's path at first, the attachment point level with the tip ({height}) takes "
        "{at_tip}. The body still has to pass: {above} above the tip it takes {most}.",
        _hardest,
        after_prediction=True,
    ),
    Fact(
        "remedies",
        "{out} out at {high}, one line carries {one}. A second line in series (pulleys of "
        "efficiency {efficiency}) leaves the worst line with {series}, but hub and directional "
        "still take the whole. The directional {step_out} further out: {moved}. The directional "
        "{step_up} higher: {raised}. Without the attendant, {alone_mass}: {alone}. These also "
        "unload the hub.",
        _remedies,
    ),
    Fact(
        "hub-moved",
        "The hub at {far} instead of {now}: {far_tension} instead of {now_tension}, for more rope. "
        "At {near}: {near_tension}. At {limit} directional, litter and hub are on one line, and no "
        "tension is enough.",
        _hub_moved,
    ),
    Fact(
        "take-in",
        "Going straight up, each track line has to be taken in by about {low} % of the height "
        "raised at {low_height}, and by about {high} % at {high_height}. A tag line has only the "
        "ground leg, which grows longer on the way up: it would have to be paid out.",
        _take_in,
    ),
    Fact(
        "whole-raise",
        "From {start} up to {end} up, a rise of {gained}, each track line comes in by {in_}. A tag "
        "line in its place would go out by {paid_out}.",
        _whole_raise,
    ),
    Fact(
        "work",
        "On the way from the ground out and past the outcrop to the edge the track team does "
        "{share} % of the lifting at its tensioner. With a tag line the haul team has {more} % "
        "more work to do than beside track lines, and {burnt} % of all its work is turned into "
        "heat in the tag line's device.",
        _work,
    ),
    Fact(
        "uplift",
        "At {low_height} the lines lift the hub with {low}. At {high_height} they pull on it with "
        "{line}, and {high} of that is upward.",
        _uplift,
    ),
    Fact(
        "hub-slides",
        "A boulder of {mass} as the hub, with a coefficient of friction of {mu} as an example, "
        "slides at {level} if the line pulls level, and at {steep} with the litter {high_height} "
        "up. The lines carry {line} there.",
        _boulder,
    ),
    Fact(
        "sideways",
        "Pushed {aside} sideways, the litter is brought back with about {low} at {low_height} and "
        "{high} at {high_height}. Low on the wall, wind or a hand moves it a long way.",
        _sideways,
    ),
    Fact(
        "lowering-locked",
        "Lowered by {by} from the high outcrop with the tensioner locked, the track line goes from "
        "{before} to {elastic} if its EA is {stiffness}, and to {rigid} if nothing stretches. The "
        "litter swings from {out} to {elastic_out} or {rigid_out} out.",
        _lowered,
        after_prediction=True,
    ),
    Fact(
        "raising-locked",
        "Raised by {by} against a locked tensioner, a litter {out} out at {start} swings in to "
        "{rigid_out} ({elastic_out} if the line stretches).",
        _raised,
        after_prediction=True,
    ),
)


def _cell_at_two_heights() -> Mapping[str, Quantity]:
    mass, off, top_height, hub = 80.0, 1.5, 10.0, 12.0
    load = vectors.weight(mass=mass)
    top = Point(0.0, top_height)
    rig = Rig(top, top, Point(hub, 0.0))
    low, high = (hold(Method.TRACK, rig, load, off, z).line_tension for z in (2.0, 6.0))
    return {
        "mass": (mass, Kind.MASS),
        "off": (off, Kind.LENGTH),
        "top": (top_height, Kind.LENGTH),
        "hub": (hub, Kind.LENGTH),
        "low_height": (2.0, Kind.LENGTH),
        "high_height": (6.0, Kind.LENGTH),
        "low": (low, Kind.FORCE, 2),
        "high": (high, Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "Two outcrops on the board, one low, one high; everybody guesses the ratio."),
        (15, "The map: move the outcrop, then the directional, then the hub; read the table."),
        (10, "The rope that comes in, by the class: upper leg shorter, ground leg longer."),
        (10, "The locked tensioner: guess, lower, then change the stiffness."),
        (10, "The quick checks, alone; then who calls what, before lowering."),
    ),
    board=(
        "The wall from the side with two outcrops, directional and hub; no numbers.",
        "The straight line from directional to hub, and lines of equal tension crowding to it.",
        "The haul line past the upper outcrop's tip, prolonged to the ground: there it starts.",
        "A loop of string on two pins draws the arc of a locked track line.",
    ),
    field=(
        Fact(
            "cell-at-two-heights",
            "Hang {mass} of test weight on a haul line and a track line from a directional {top} "
            "up, nobody under it, with a load cell at the hub {hub} out. Hold it {off} out at "
            "{low_height}: the cell should read about {low}. Haul to {high_height} and take in "
            "until it is {off} out again: about {high}. Friction at the litter's pulley hardly "
            "moves this cell; stop and let it settle before each reading.",
            _cell_at_two_heights,
        ),
    ),
)

ALONG_THE_RAISE = LessonContent(
    number=9,
    key="along-the-raise",
    file="09_along_the_raise",
    title="The track lines along the raise",
    example=_known,
    figures=(CONTOUR_MAP, LOCKED_TENSIONER),
    derivations=(
        guiding.haul_clearance_offset,
        guiding.hub_limit,
        guiding.track_length,
        guiding.take_in_rate,
        guiding.hub_uplift,
        locked.swing_in_rate,
    ),
    facts=_FACTS,
    questions=(
        bank.HIGH_AND_LOW,
        bank.CLEAR_THE_LINE,
        bank.TAKE_IN,
        bank.HUB_UPLIFT,
        bank.LOWERED_LOCKED,
    ),
    myths=(bank.CLEAR_THE_LINE, bank.TAKE_IN, bank.SWING_IN),
    words=(
        "attachment-point",
        "plumb",
        "haul-line",
        "belay",
        "track-line",
        "hub",
        "tensioner",
        "ground-depression",
    ),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        OUT_BEFORE_DOWN,
        cautions.NEAR_DIRECTIONAL,
        cautions.COMMON_HUB,
        cautions.STATIC,
        cautions.FRICTIONLESS,
    ),
    elsewhere={guiding.hub_limit.name: {"z": _HIGH}},
)
