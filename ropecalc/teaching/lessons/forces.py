"""Forces, units and one rope pulled aside: what the whole course is made of."""

import math
from collections.abc import Mapping

from ropecalc import cautions
from ropecalc.mechanics import vectors
from ropecalc.mechanics.guiding import attendant_push
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import CLOSED_POLYGON
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import forces as bank
from ropecalc.units import STANDARD_GRAVITY, Kind, from_si

_MASS, _PULL = 200.0, 500.0
_SHORT, _LONG = 5.0, 30.0
_ROPE, _SLOPE = 3000.0, math.radians(35)
_ONE, _OTHER, _BETWEEN = 2000.0, 3000.0, math.radians(60)
"""The example: a litter on the Upper Heron Wall, a pull aside, and ropes on one plate."""


def _load() -> float:
    return float(vectors.weight(mass=_MASS))


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    return {
        "mass": _MASS,
        "load": _load(),
        "side_pull": _PULL,
        "slanted_pull": _PULL,
        "pull_elevation": -math.radians(20),
        "rope_above": _SHORT,
        "rope_tension": _ROPE,
        "rope_elevation": _SLOPE,
        "first_pull": _ONE,
        "second_pull": _OTHER,
        "pull_angle": _BETWEEN,
        "pounds_force": 600.0,
        "kilonewtons": 4.0,
    }


def _example() -> Mapping[str, Quantity]:
    return {
        "mass": (_MASS, Kind.MASS),
        "load": (_load(), Kind.FORCE),
        "short": (_SHORT, Kind.LENGTH),
        "pull": (_PULL, Kind.FORCE),
    }


def _kilonewton() -> Mapping[str, Quantity]:
    return {
        "kgf": (from_si(1000.0, "kgf"), Kind.RATIO),
        "lbf": (from_si(1000.0, "lbf"), Kind.RATIO),
    }


def _cell_in_kilograms() -> Mapping[str, Quantity]:
    reading = 400.0
    return {
        "reading": (reading, Kind.RATIO),
        "force": (reading * STANDARD_GRAVITY, Kind.FORCE),
    }


def _worked_out() -> Mapping[str, Quantity]:
    return {
        "kilograms": (_MASS, Kind.RATIO),
        "each": (STANDARD_GRAVITY, Kind.RATIO),
        "newtons": (_load(), Kind.RATIO),
        "load": (_load(), Kind.FORCE),
    }


def _ten() -> Mapping[str, Quantity]:
    return {"over": (100 * (10 / STANDARD_GRAVITY - 1), Kind.RATIO, 1)}


def _parts() -> Mapping[str, Quantity]:
    given = {"rope_tension": _ROPE, "rope_elevation": _SLOPE}
    return {
        "tension": (_ROPE, Kind.FORCE),
        "slope": (_SLOPE, Kind.ANGLE, 2),
        "level": (float(vectors.level_part(**given)), Kind.FORCE),
        "upward": (float(vectors.upward_part(**given)), Kind.FORCE),
    }


def _two_pulls() -> Mapping[str, Quantity]:
    given = {"first_pull": _ONE, "second_pull": _OTHER}
    together = vectors.resultant_of_two(**given, pull_angle=_BETWEEN)
    apart = vectors.resultant_of_two(**given, pull_angle=math.radians(120))
    return {
        "one": (_ONE, Kind.FORCE),
        "other": (_OTHER, Kind.FORCE),
        "between": (_BETWEEN, Kind.ANGLE, 2),
        "wide": (math.radians(120), Kind.ANGLE, 3),
        "together": (float(together), Kind.FORCE),
        "apart": (float(apart), Kind.FORCE),
        "plain": (_ONE + _OTHER, Kind.FORCE),
    }


def _one_lean() -> Mapping[str, Quantity]:
    given = {"load": _load(), "side_pull": _PULL}
    near, far = (
        float(vectors.side_pull_offset(**given, rope_above=rope)) for rope in (_SHORT, _LONG)
    )
    return {
        "pull": (_PULL, Kind.FORCE),
        "lean": (float(vectors.side_pull_angle(**given)), Kind.ANGLE),
        "short": (_SHORT, Kind.LENGTH),
        "long": (_LONG, Kind.LENGTH),
        "near": (near, Kind.LENGTH),
        "far": (far, Kind.LENGTH),
    }


def _pull_for(rope: float, off: float, load: float) -> float:
    """The level pull (N) that holds a load ``off`` plumb on so much rope."""
    return float(attendant_push(load=load, off_plumb=off, drop=math.sqrt(rope**2 - off**2)))


def _hold_it_out() -> Mapping[str, Quantity]:
    off = 1.5
    return {
        "off": (off, Kind.LENGTH),
        "short": (_SHORT, Kind.LENGTH),
        "long": (_LONG, Kind.LENGTH),
        "hard": (_pull_for(_SHORT, off, _load()), Kind.FORCE),
        "easy": (_pull_for(_LONG, off, _load()), Kind.FORCE, 2),
    }


def _hardly_more() -> Mapping[str, Quantity]:
    load = _load()
    return {
        "pull": (_PULL, Kind.FORCE),
        "load": (load, Kind.FORCE),
        "little": (float(vectors.side_pull_tension(load=load, side_pull=_PULL)), Kind.FORCE),
        "much": (float(vectors.side_pull_tension(load=load, side_pull=load)), Kind.FORCE),
    }


def _up_or_down() -> Mapping[str, Quantity]:
    slope = math.radians(30)

    def rope(elevation: float) -> tuple[float, float]:
        given = {"load": _load(), "slanted_pull": _PULL, "pull_elevation": elevation}
        return (
            float(vectors.slanted_pull_angle(**given)),
            float(vectors.slanted_pull_tension(**given)),
        )

    (rising, light), (falling, heavy) = rope(slope), rope(-slope)
    return {
        "pull": (_PULL, Kind.FORCE),
        "slope": (slope, Kind.ANGLE, 2),
        "rising": (rising, Kind.ANGLE),
        "falling": (falling, Kind.ANGLE),
        "light": (light, Kind.FORCE),
        "heavy": (heavy, Kind.FORCE),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example on this page: litter, patient, attendant and kit, {mass} in all, hang on one "
        "rope, {short} below the haul directional. They weigh {load}. Somebody pulls them aside "
        "with {pull}.",
        _example,
    ),
    Fact(
        "a-kilonewton",
        "A kilonewton is {kgf} kilograms-force or {lbf} pounds-force, to three figures.",
        _kilonewton,
    ),
    Fact(
        "what-a-cell-calls-kg",
        "A load cell feels force and no mass. One that says {reading} “kg” means kilograms-force: "
        "{force}.",
        _cell_in_kilograms,
    ),
    Fact(
        "in-newtons",
        "Worked out: {kilograms} kilograms times {each} newtons make {newtons} newtons. A thousand "
        "newtons are one kilonewton. So the example weighs {load}.",
        _worked_out,
    ),
    Fact(
        "ten-will-do",
        "For an estimate take ten newtons for each kilogram: that is only {over} % too high. On "
        "this page the weight of a mass, worked with ten, counts as right.",
        _ten,
    ),
    Fact(
        "parts-of-a-pull",
        "A rope that rises {slope} and carries {tension} pulls with {level} to the side and with "
        "{upward} upward. The two parts do not add up to the tension as numbers; at right angles "
        "they do.",
        _parts,
    ),
    Fact(
        "two-pulls",
        "Pulls of {one} and {other} on one plate, {between} apart, make {together}; at {wide} they "
        "make {apart}. Never {plain}, unless both pull the same way.",
        _two_pulls,
    ),
    Fact(
        "one-lean",
        "A level pull of {pull} leans the example's rope {lean} from plumb. On {short} of rope the "
        "litter hangs {near} off plumb, on {long} it hangs {far} off.",
        _one_lean,
        after_prediction=True,
    ),
    Fact(
        "hold-it-out",
        "Turned round: to hold the litter {off} off plumb takes {hard} with {short} of rope above "
        "it and {easy} with {long}.",
        _hold_it_out,
        after_prediction=True,
    ),
    Fact(
        "hardly-more",
        "The rope hardly notices a small pull: with {pull} aside its tension goes from {load} to "
        "{little}. A pull as large as the weight, {load}, brings it to {much}.",
        _hardly_more,
    ),
    Fact(
        "up-or-down",
        "A pull of {pull} that rises {slope} leans the rope {rising} and leaves {light} in it. The "
        "same pull falling {slope} leans it {falling} and puts {heavy} in it.",
        _up_or_down,
    ),
)


def _cell_in_the_side_line() -> Mapping[str, Quantity]:
    mass, off, short, long = 80.0, 1.0, 3.0, 9.0
    load = float(vectors.weight(mass=mass))
    pull = _pull_for(short, off, load)
    return {
        "mass": (mass, Kind.MASS),
        "off": (off, Kind.LENGTH),
        "short": (short, Kind.LENGTH),
        "long": (long, Kind.LENGTH),
        "near": (pull, Kind.FORCE, 2),
        "rope": (float(vectors.side_pull_tension(load=load, side_pull=pull)), Kind.FORCE, 2),
        "far": (_pull_for(long, off, load), Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "A load cell and a known mass: what does it read in each unit? Write all three down."),
        (10, "The parts of one pull with a set square; then two pulls, head to tail."),
        (10, "The figure: guess first, then the rope's length, then the direction of the pull."),
        (10, "The quick checks, alone; then where on your own cliff holding off will be hard."),
    ),
    board=(
        "The litter's point cut free: weight down, rope up, pull aside; no numbers.",
        "The same three arrows head to tail, to a scale that the class chooses.",
        "The triangle of ropes beside the triangle of forces: the same shape. That is the proof.",
        "A long rope and a short one with the same lean, and how far each reaches.",
    ),
    field=(
        Fact(
            "cell-in-the-side-line",
            "Hang {mass} of test weight low over the ground on {short} of rope, nobody under it, "
            "and pull it {off} aside with a level line. The cell in that line should read about "
            "{near}, a cell in the rope {rope}.",
            _cell_in_the_side_line,
        ),
        Fact(
            "the-same-on-a-long-rope",
            "Now with {long} of rope, and {off} aside again: about {far}. Let the class pull both "
            "by hand before they read the cell.",
            _cell_in_the_side_line,
        ),
    ),
)

FORCES = LessonContent(
    number=1,
    key="forces",
    file="01_forces",
    example=_known,
    title="Forces, and one rope pulled aside",
    figures=(CLOSED_POLYGON,),
    derivations=(
        vectors.weight,
        vectors.pounds_into_kilonewtons,
        vectors.kilonewtons_into_kilograms,
        vectors.level_part,
        vectors.upward_part,
        vectors.resultant_of_two,
        vectors.side_pull_angle,
        vectors.side_pull_tension,
        vectors.side_pull_offset,
        vectors.slanted_pull_angle,
        vectors.slanted_pull_tension,
    ),
    facts=_FACTS,
    questions=(
        bank.WEIGHT,
        bank.POUNDS,
        bank.LEVEL_PART,
        bank.TWO_PULLS,
        bank.MOVED,
    ),
    myths=(
        bank.WEIGHT,
        bank.TWO_PULLS,
        bank.LEAN,
    ),
    words=(
        "mass",
        "force",
        "load",
        "tension",
        "plumb",
        "side-pull",
        "free-body",
        "balance",
        "resultant",
    ),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        "A working load limit and a breaking strength are different things, even when both are "
        "printed in kilonewtons. Never put them in one column.",
        "A load cell tells one strand at one moment. Say which strand and which unit whenever you "
        "call out a reading.",
        cautions.STATIC,
        cautions.FRICTIONLESS,
    ),
)
