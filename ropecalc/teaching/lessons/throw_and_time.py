"""Throws and resets, rope, people and time; and what a snag would feel."""

from collections.abc import Mapping

from ropecalc import cautions
from ropecalc.mechanics import hauling, vectors
from ropecalc.mechanics.pulleys import common_system, forces, haulers, plan_throws, travel
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import THROW_CLOCK
from ropecalc.teaching.figures.throw_clock import ThrowClock
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import throw_and_time as bank
from ropecalc.units import Kind

_MASS, _EFFICIENCY = 200.0, 0.9
_HEIGHT, _RISE, _LOSS, _SPEED, _RESET = 30.0, 4.0, 0.4, 0.3, 20.0
_STEADY, _BURST, _TEAM = 200.0, 350.0, 5
"""The example: the raise on the Lower Heron Wall."""


def _load() -> float:
    return float(vectors.weight(mass=_MASS))


def _pull(name: str) -> float:
    worked = forces(common_system(name), "hauling", load=_load(), efficiency=_EFFICIENCY)
    return float(worked.hand_pull.high)


def _throws() -> float:
    return float(hauling.throws_needed(raise_height=_HEIGHT, throw_rise=_RISE, reset_loss=_LOSS))


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    return {
        "raise_height": _HEIGHT,
        "throw_rise": _RISE,
        "reset_loss": _LOSS,
        "throws": _throws(),
        "advantage": 3.0,
        "hand_speed": _SPEED,
        "reset_time": _RESET,
        "edge_setback": 8.0,
        "haul_tail": 5.0,
        "people": float(_TEAM),
        "burst_per_person": _BURST,
    }


def _example() -> Mapping[str, Quantity]:
    return {
        "height": (_HEIGHT, Kind.LENGTH),
        "rise": (_RISE, Kind.LENGTH),
        "loss": (_LOSS, Kind.LENGTH),
        "speed": (_SPEED, Kind.SPEED, 1),
        "reset": (_RESET, Kind.TIME, 2),
        "mass": (_MASS, Kind.MASS),
    }


def _counted() -> Mapping[str, Quantity]:
    plan = plan_throws(
        height=_HEIGHT,
        rise=_RISE,
        reset_loss=_LOSS,
        ratio=3.0,
        hand_speed=_SPEED,
        reset_time=_RESET,
    )
    return {
        "height": (_HEIGHT, Kind.LENGTH),
        "throws": (plan.throws, Kind.RATIO),
        "resets": (plan.resets, Kind.RATIO),
        "hauled": (plan.hauled, Kind.LENGTH),
        "rope": (plan.rope_through_hands, Kind.LENGTH),
        "time": (plan.time, Kind.TIME),
        "walking": (plan.rope_through_hands / _SPEED, Kind.TIME),
    }


def _people() -> Mapping[str, Quantity]:
    found: dict[str, Quantity] = {"steady": (_STEADY, Kind.FORCE)}
    for key, name in (("low", "3:1"), ("high", "9:1")):
        pull = _pull(name)
        found[f"{key}_pull"] = (pull, Kind.FORCE)
        found[f"{key}_people"] = (haulers(hand_pull=pull, per_person=_STEADY), Kind.RATIO)
    return found


def _snags() -> Mapping[str, Quantity]:
    found: dict[str, Quantity] = {
        "team": (float(_TEAM), Kind.RATIO),
        "burst": (_BURST, Kind.FORCE),
        "weight": (_load(), Kind.FORCE),
    }
    for key, name in (("low", "3:1"), ("high", "9:1")):
        gain = _load() / _pull(name)
        snag = hauling.snag_pull(people=float(_TEAM), burst_per_person=_BURST, advantage=gain)
        found[key] = (float(snag), Kind.FORCE)
    return found


def _rope() -> Mapping[str, Quantity]:
    known = _known()
    names = ("raise_height", "edge_setback", "advantage", "throw_rise", "haul_tail")
    needed = float(hauling.main_rope(**{name: known[name] for name in names}))
    return {
        "rope": (needed, Kind.LENGTH),
        "height": (_HEIGHT, Kind.LENGTH),
        "setback": (known["edge_setback"], Kind.LENGTH),
        "tail": (known["haul_tail"], Kind.LENGTH),
    }


def _two_teams() -> Mapping[str, Quantity]:
    ratio = float(travel(common_system("3:1")).ratio)
    at_start: ThrowClock = THROW_CLOCK.compute(THROW_CLOCK.start)
    return {
        "litter": (_SPEED / ratio, Kind.SPEED, 2),
        "hands": (_SPEED, Kind.SPEED, 1),
        "lines": (THROW_CLOCK.start["lines"], Kind.RATIO),
        "device": (at_start.fastest_feed, Kind.SPEED, 2),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example: {mass} are raised {height}. The system gains {rise} in a throw, each reset "
        "gives {loss} back and takes {reset}, and the team walks {speed}.",
        _example,
    ),
    Fact(
        "counted",
        "The example takes {throws} throws with {resets} resets between them. The load is pulled "
        "up {hauled} altogether, and {rope} of rope come through the hands. Walking alone takes "
        "{walking}; with the resets it is {time}.",
        _counted,
    ),
    Fact(
        "rope-for-the-raise",
        "A 3:1 in the tail of the haul rope, {setback} from edge to anchor and {tail} beyond the "
        "hands: {rope} of rope for {height} of raise.",
        _rope,
    ),
    Fact(
        "how-many-people",
        "With pulleys as in the example the hands pull {low_pull} on a 3:1 and {high_pull} on a "
        "9:1. At {steady} each, steadily, that is work for {low_people} people or for "
        "{high_people}.",
        _people,
        after_prediction=True,
    ),
    Fact(
        "into-a-snag",
        "The litter weighs {weight}. If it catches, {team} people who pull {burst} each for a "
        "moment put {low} into the snag through a 3:1, and {high} through a 9:1.",
        _snags,
        after_prediction=True,
    ),
    Fact(
        "two-teams",
        "While the hands walk {hands} on a 3:1, the litter rises {litter}. With {lines} track "
        "lines the rope at the tensioner's device has to come in with up to {device}, low on the "
        "wall: as fast as the hands, or faster.",
        _two_teams,
    ),
)


def _clock_and_cell() -> Mapping[str, Quantity]:
    mass, height, rise = 80.0, 6.0, 2.0
    load = float(vectors.weight(mass=mass))
    worked = forces(common_system("3:1"), "hauling", load=load, efficiency=0.85)
    throws = hauling.throws_needed(raise_height=height, throw_rise=rise, reset_loss=0.3)
    return {
        "mass": (mass, Kind.MASS),
        "height": (height, Kind.LENGTH),
        "rise": (rise, Kind.LENGTH),
        "loss": (0.3, Kind.LENGTH),
        "efficiency": (0.85, Kind.RATIO, 2),
        "throws": (float(throws), Kind.RATIO),
        "pull": (float(worked.hand_pull.high), Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "Everybody guesses how long a raise of the example's height takes. Keep the guesses."),
        (10, "The staircase on the board, with one reset too many; the class finds the mistake."),
        (10, "The figure: the prediction, then the systems one after the other."),
        (10, "The quick checks, alone; then the guesses of the beginning, and the snag."),
    ),
    board=(
        "Height against time: up, down a little, up again; throws and resets counted apart.",
        "The haul rope followed from the litter to the tail, with every strand of the system.",
        "Two columns, 3:1 and 9:1: people, time, rope, and what a snag feels.",
    ),
    field=(
        Fact(
            "clock-and-cell",
            "Raise {mass} of test weight by {height} with a 3:1 and room for {rise}, a load cell "
            "where the hands are. With pulleys of efficiency {efficiency} (illustrative: measure "
            "yours) it should read about {pull} while the weight moves. If a reset loses {loss}, "
            "count {throws} throws; time each part, and plan with your own numbers from then on.",
            _clock_and_cell,
        ),
    ),
)

THROW_AND_TIME = LessonContent(
    number=6,
    key="throw-and-time",
    file="06_throw_and_time",
    example=_known,
    elsewhere={"snag_pull": {"advantage": _load() / _pull("3:1")}},
    title="Throws, rope, people and time",
    figures=(THROW_CLOCK,),
    derivations=(
        hauling.throws_needed,
        hauling.raise_time,
        hauling.main_rope,
        hauling.snag_pull,
    ),
    facts=_FACTS,
    questions=(
        bank.THROWS,
        bank.TIME,
        bank.ROPE,
        bank.SNAG,
    ),
    myths=(
        bank.THROWS,
        bank.TIME,
        bank.SNAG,
    ),
    words=("throw", "reset", "progress-capture", "traveller", "snag", "haul-line"),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        "What people pull and how fast they walk are planning numbers. Teams overshoot them in "
        "bursts and fall short of them in time: measure your own.",
        "Each reset parks the load on the progress capture: check that it holds before letting go.",
        cautions.STATIC,
    ),
)
