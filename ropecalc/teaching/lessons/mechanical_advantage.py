"""Mechanical advantage: counted by tensions, checked by travel, and what the anchor feels."""

from collections.abc import Mapping

from ropecalc import cautions
from ropecalc.mechanics import advantage, vectors
from ropecalc.mechanics.pulleys import common_system, forces, travel
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures import PULLEY_COUNT
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import advantage as bank
from ropecalc.units import Kind

_MASS, _RISE = 200.0, 1.2
"""The example of this lesson: one litter on the Lower Heron Wall, hauled from the cliff top."""


def _weight() -> float:
    return float(vectors.weight(mass=_MASS))


def _pull(name: str, load: float) -> float:
    """The hand's pull on a frictionless system."""
    worked = forces(common_system(name), "hauling", load=load, efficiency=1.0)
    return float(worked.hand_pull.high)


def _anchor(name: str, redirect: bool, load: float, efficiency: float = 1.0) -> float:
    system = common_system(name, redirect=redirect)
    worked = forces(system, "hauling", load=load, efficiency=efficiency)
    return float(worked.anchors["anchor"].high)


def _example() -> Mapping[str, Quantity]:
    return {
        "mass": (_MASS, Kind.MASS),
        "weight": (_weight(), Kind.FORCE),
        "rise": (_RISE, Kind.LENGTH),
    }


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    return {
        "load": _weight(),
        "advantage": 3.0,
        "travelling_pulleys": 1.0,
        "end_at_load": 1.0,
        "first_advantage": 3.0,
        "second_advantage": 3.0,
        "rise": _RISE,
        "hand_travel": 3.0 * _RISE,
        "hand_pull": _tested()["pull"][0],
    }


def _two_counts() -> Mapping[str, Quantity]:
    ratio = float(travel(common_system("3:1")).ratio)
    return {
        "weight": (_weight(), Kind.FORCE),
        "pull": (_pull("3:1", _weight()), Kind.FORCE),
        "by_force": (_weight() / _pull("3:1", _weight()), Kind.RATIO),
        "rise": (_RISE, Kind.LENGTH),
        "rope": (ratio * _RISE, Kind.LENGTH),
        "by_travel": (ratio, Kind.RATIO),
        "before": (_anchor("3:1", False, _weight()), Kind.FORCE),
        "after": (_anchor("3:1", True, _weight()), Kind.FORCE),
    }


def _gripped() -> Mapping[str, Quantity]:
    return {
        "weight": (_weight(), Kind.FORCE),
        "pull": (_pull("complex 5:1", _weight()), Kind.FORCE),
        "wrong": (_pull("3:1", _weight()), Kind.FORCE),
    }


def _paid() -> Mapping[str, Quantity]:
    height = 30.0
    low, high = (float(travel(common_system(name)).ratio) for name in ("3:1", "9:1"))
    return {
        "height": (height, Kind.LENGTH),
        "low": (low * height, Kind.LENGTH),
        "high": (high * height, Kind.LENGTH),
        "low_pull": (_pull("3:1", _weight()), Kind.FORCE),
        "high_pull": (_pull("9:1", _weight()), Kind.FORCE),
    }


def _tested() -> Mapping[str, tuple[float, Kind]]:
    """A pull test on the example's 3:1 with pulleys of the efficiency in the field exercise."""
    worked = forces(common_system("3:1"), "hauling", load=_weight(), efficiency=_PULLEY)
    return {"pull": (float(worked.hand_pull.high), Kind.FORCE)}


def _efficiency() -> Mapping[str, Quantity]:
    pull, _ = _tested()["pull"]
    rope = 3.0 * _RISE
    share = advantage.system_efficiency(
        load=_weight(), hand_pull=pull, rise=_RISE, hand_travel=rope
    )
    return {
        "pull": (pull, Kind.FORCE),
        "rope": (rope, Kind.LENGTH),
        "weight": (_weight(), Kind.FORCE),
        "rise": (_RISE, Kind.LENGTH),
        "actual": (_weight() / pull, Kind.RATIO, 2),
        "share": (100.0 * share, Kind.RATIO, 2),
    }


def _stages() -> Mapping[str, Quantity]:
    return {
        "pull": (_pull("9:1", _weight()), Kind.FORCE),
        "join": (_pull("3:1", _weight()), Kind.FORCE),
        "weight": (_weight(), Kind.FORCE),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example on this page: {mass} hang on the ropes, which weighs {weight}, and the load "
        "is to rise by {rise}. The team first rigs a 3:1.",
        _example,
    ),
    Fact(
        "two-counts",
        "With the 3:1 the hand pulls {pull} and the load weighs {weight}: {by_force} times as "
        "much. While the load rises {rise}, {rope} of rope come through the hands: {by_travel} "
        "times as much. "
        "The redirect changes neither. It takes the pull on the anchor from {before} to {after}.",
        _two_counts,
        after_prediction=True,
    ),
    Fact(
        "stages",
        "A 3:1 on a 3:1: the hand pulls {pull}, the strand that joins the two carries {join}, and "
        "that strand is the haul strand of the second 3:1, which holds {weight}.",
        _stages,
    ),
    Fact(
        "gripped-strand",
        "In the complex system the hand pulls {pull}. Who takes the extra pulley for a redirect "
        "expects {wrong}.",
        _gripped,
    ),
    Fact(
        "paid-in-rope",
        "Over a raise of {height} a 3:1 takes {low} of rope through the hands and a 9:1 takes "
        "{high}. The pull falls from {low_pull} to {high_pull}, before friction.",
        _paid,
    ),
    Fact(
        "pull-test",
        "A test on the 3:1: a steady pull of {pull} over {rope} of rope raises {weight} by {rise}. "
        "The load is {actual} times the pull, and the efficiency is {share} %. The first number is "
        "the advantage that was really there. The second is work out over work in.",
        _efficiency,
    ),
    Fact(
        "anchor",
        "The load of {weight} on one anchor: {before} while the team pulls away from the load, "
        "{after} behind a redirect on the same anchor.",
        _two_counts,
    ),
)

_FIELD_MASS, _PULLEY = 80.0, 0.85
"""The field exercise: a test weight, and an illustrative efficiency of each of its pulleys."""


def _cells() -> Mapping[str, Quantity]:
    load = float(vectors.weight(mass=_FIELD_MASS))
    worked = forces(common_system("3:1"), "hauling", load=load, efficiency=_PULLEY)
    return {
        "mass": (_FIELD_MASS, Kind.MASS),
        "free": (_pull("3:1", load), Kind.FORCE, 2),
        "real": (float(worked.hand_pull.high), Kind.FORCE, 2),
        "efficiency": (_PULLEY, Kind.RATIO, 2),
    }


def _anchor_cells() -> Mapping[str, Quantity]:
    load = float(vectors.weight(mass=_FIELD_MASS))
    return {
        "plain": (_anchor("3:1", False, load, _PULLEY), Kind.FORCE, 2),
        "turned": (_anchor("3:1", True, load, _PULLEY), Kind.FORCE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "A 3:1 on the floor with a short rope: everybody guesses what a redirect changes."),
        (10, "The figure: count the strands aloud from the hand to the load, then the travel."),
        (10, "Complex system with a real rope and two grabs; each group counts it on paper."),
        (10, "The quick checks, alone; then two groups compare how they counted the anchor."),
    ),
    board=(
        "A 3:1 as one line of rope, no numbers. Write 1 at the hand.",
        "Follow the rope: over each pulley the same number. At the traveller cut all strands and "
        "add.",
        "Beside it the same picture a step later; mark what each strand has lost. Add again.",
        "A closed line round the whole system. What crosses it? Load, hands, anchor.",
    ),
    field=(
        Fact(
            "cell-in-the-haul-strand",
            "Raise {mass} of test weight steadily with a 3:1 and a load cell in the haul strand, "
            "nobody below. Without friction it would read {free}. With pulleys of efficiency "
            "{efficiency} (an illustrative value: measure yours) it should read about {real} while "
            "the weight rises, and less while it is lowered.",
            _cells,
        ),
        Fact(
            "cell-at-the-anchor",
            "Move the cell to the anchor and raise again: about {plain} while the team pulls away "
            "from the load, about {turned} with a redirect on the same anchor.",
            _anchor_cells,
        ),
    ),
)

MECHANICAL_ADVANTAGE = LessonContent(
    number=4,
    key="mechanical-advantage",
    file="04_mechanical_advantage",
    example=_known,
    title="Mechanical advantage",
    figures=(PULLEY_COUNT,),
    derivations=(
        advantage.simple_advantage,
        advantage.compound_advantage,
        advantage.complex_hand_pull,
        advantage.rope_through_hands,
        advantage.anchor_in_line,
        advantage.anchor_redirected,
        advantage.system_efficiency,
    ),
    facts=_FACTS,
    questions=(
        bank.COUNT_STRANDS,
        bank.COMPLEX,
        bank.ROPE_THROUGH,
        bank.PULL_TEST,
        bank.ANCHOR_IN_LINE,
    ),
    myths=(
        bank.COUNT_STRANDS,
        bank.STAGES,
        bank.ANCHOR_REDIRECTED,
    ),
    words=(
        "haul-line",
        "strand",
        "traveller",
        "rope-grab",
        "advantage",
        "compound-system",
        "complex-system",
        "redirect",
    ),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        "Which advantage may be used, and with how many people on it, is a matter for your "
        "authority and your team: more advantage hides a snag better.",
        cautions.STATIC,
        cautions.FRICTIONLESS,
    ),
)
