"""Questions on mechanical advantage: strands, stages, travel, efficiency and the anchor."""

from collections.abc import Mapping

from ropecalc.mechanics import advantage
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_LOAD = Given(q.LOAD, 1.2, 2.8, 0.1, "kN")
_PARTS = Given(q.ADVANTAGE, 2, 5, 1, "")
_EXACT = Tolerance(absolute=0.02)
_TWO_PER_CENT = Tolerance(relative=0.02)

COUNT_STRANDS = Template(
    key="count-the-strands",
    title="Strands, not pulleys",
    stem=(
        "One rope runs between an anchor and a traveller that is tied to the load's rope. Pulleys "
        "on the traveller: {travelling_pulleys}. Rope ends held by the traveller: {end_at_load} "
        "(0 means that the end is tied at the anchor). The haul strand leaves a pulley of the "
        "traveller and goes to the team, away from the load. Pulleys turn without friction. What "
        "is the advantage?"
    ),
    asked="Advantage: load over the hand's pull",
    givens=(
        Given(q.TRAVELLING_PULLEYS, 1, 4, 1, ""),
        Given(q.END_AT_LOAD, 0, 1, 1, ""),
    ),
    derivation=advantage.simple_advantage,
    tolerance=_EXACT,
    mistakes=(
        Mistake(
            "pulleys-counted",
            "All pulleys counted",
            "A pulley pulls with two strands, and only strands on the traveller help. Pulleys at "
            "the anchor turn the rope and no more.",
            lambda v: 2 * v.travelling_pulleys - 1 + v.end_at_load,
        ),
        Mistake(
            "travelling-pulleys-counted",
            "The travelling pulleys counted",
            "Each of them hangs on two strands, and both pull.",
            lambda v: v.travelling_pulleys,
        ),
        Mistake(
            "one-for-the-team",
            "One more counted for the strand in the hands",
            "The strand in the hands is one of those that leave the traveller. It is counted "
            "already.",
            lambda v: 2 * v.travelling_pulleys + v.end_at_load + 1,
        ),
    ),
    difficulty=1,
    objective="count the advantage of a simple system by its strands",
)

STAGES = Template(
    key="one-pulls-on-another",
    title="One system pulls on another",
    stem=(
        "The team holds a {first_advantage}:1. Its load is the haul strand of a "
        "{second_advantage}:1, which holds the litter. Pulleys turn without friction. What is the "
        "advantage of both together?"
    ),
    asked="Advantage of both together",
    givens=(
        Given(q.FIRST_ADVANTAGE, 2, 5, 1, ""),
        Given(q.SECOND_ADVANTAGE, 2, 5, 1, ""),
    ),
    derivation=advantage.compound_advantage,
    tolerance=_EXACT,
    mistakes=(
        Mistake(
            "stages-added",
            "The two advantages added",
            "The second system multiplies what it is given, and it is given the pull that the "
            "first one has already multiplied.",
            lambda v: v.first_advantage + v.second_advantage,
        ),
        Mistake(
            "added-less-the-join",
            "Added, less one for the shared strand",
            "No strand is shared out: the strand between the two carries the whole pull of the "
            "first system.",
            lambda v: v.first_advantage + v.second_advantage - 1,
        ),
        Mistake(
            "one-lost-at-the-join",
            "Multiplied, less one lost where they join",
            "Where they join, the tension is passed on whole.",
            lambda v: v.first_advantage * v.second_advantage - 1,
        ),
    ),
    difficulty=1,
    objective="find the advantage of one system that pulls on another",
)

COMPLEX = Template(
    key="complex-five-to-one",
    title="A haul strand that turns back on itself",
    stem=(
        "A 3:1 holds a load that weighs {load}. Its haul strand turns back at a pulley, which a "
        "rope grab holds on the strand between anchor and traveller, so the team pulls towards the "
        "edge. Count strand by strand, without friction. How hard does the team pull?"
    ),
    asked="Pull of the team",
    givens=(Given(q.LOAD, 1.2, 2.8, 0.05, "kN"),),
    derivation=advantage.complex_hand_pull,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "pulley-taken-for-redirect",
            "The extra pulley taken for a redirect",
            "A redirect hangs on an anchor. This one hangs on a rope of the system and pulls it "
            "towards the load's side.",
            lambda v: v.load / 3,
        ),
        Mistake(
            "taken-as-stages",
            "Taken as a 2:1 that pulls on a 3:1",
            "That would be a second system pulling on the haul strand. Here the second grab sits "
            "on another strand and moves the other way.",
            lambda v: v.load / 6,
        ),
        Mistake(
            "one-more-strand",
            "One strand added to the 3:1",
            "Count the gripped strand: beyond the grab it carries three times the hand's pull, not "
            "two.",
            lambda v: v.load / 4,
        ),
    ),
    difficulty=2,
    objective="count a system that no simple rule fits, strand by strand",
)

ROPE_THROUGH = Template(
    key="rope-through-hands",
    title="Rope through the hands",
    stem=(
        "A system of {advantage}:1 raises the litter by {rise}. Ropes do not stretch and grabs do "
        "not slip. How much rope has come through the hands of the team?"
    ),
    asked="Rope pulled through the hands",
    givens=(Given(q.ADVANTAGE, 2, 9, 1, ""), Given(q.RISE, 0.5, 4.0, 0.1, "m")),
    derivation=advantage.rope_through_hands,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "divided",
            "The rise divided by the advantage",
            "What is won in force is paid for in rope: more advantage takes more rope, not less.",
            lambda v: v.rise / v.advantage,
        ),
        Mistake(
            "same-as-the-load",
            "As much rope as the load rises",
            "That is so on a single rope. Here every strand of the system has to lose its share.",
            lambda v: v.rise,
        ),
        Mistake(
            "one-strand-left-out",
            "One strand left out",
            "Every strand that pulls on the traveller gets shorter, the team's too.",
            lambda v: (v.advantage - 1) * v.rise,
        ),
    ),
    difficulty=1,
    objective="tell how much rope a system takes",
)


def _believable(values: Mapping[str, float]) -> bool:
    """Some loss, and not more than pulleys have."""
    share = values["load"] * values["rise"] / (values["hand_pull"] * values["hand_travel"])
    return 0.4 <= share <= 0.95


PULL_TEST = Template(
    key="efficiency-from-a-pull-test",
    title="Efficiency from a pull test",
    stem=(
        "In a test a steady pull of {hand_pull} over {hand_travel} of rope raised {load} by "
        "{rise}. What is the efficiency of the whole system?"
    ),
    asked="Efficiency of the whole system",
    givens=(
        Given(q.HAND_PULL, 0.6, 1.2, 0.02, "kN"),
        _LOAD,
        Given(q.HAND_TRAVEL, 2.5, 5.0, 0.1, "m"),
        Given(q.RISE, 0.8, 1.3, 0.05, "m"),
    ),
    derivation=advantage.system_efficiency,
    tolerance=Tolerance(absolute=0.02),
    mistakes=(
        Mistake(
            "load-over-pull",
            "The load over the pull",
            "That is the advantage that was really there. The efficiency compares work, so the two "
            "travels belong in it.",
            lambda v: v.load / v.hand_pull,
        ),
        Mistake(
            "travel-only",
            "The rise over the rope pulled",
            "That compares only the travels; without the forces it says nothing about losses.",
            lambda v: v.rise / v.hand_travel,
        ),
        Mistake(
            "pull-over-load",
            "The pull over the load",
            "That compares only the forces, and upside down.",
            lambda v: v.hand_pull / v.load,
        ),
    ),
    difficulty=2,
    objective="tell efficiency from advantage, and find it from a pull test",
    usable=_believable,
)

ANCHOR_REDIRECTED = Template(
    key="anchor-with-redirect",
    title="The anchor of a redirected system",
    stem=(
        "A simple {advantage}:1 holds a load that weighs {load}. The haul strand turns at one more "
        "pulley on the same anchor, so that the team can pull towards the edge. Strands are "
        "parallel and pulleys free of friction. What does the anchor hold?"
    ),
    asked="Pull on the anchor",
    givens=(_LOAD, _PARTS),
    derivation=advantage.anchor_redirected,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "anchor-sees-the-load",
            "The anchor taken to hold just the load",
            "The team pulls the same way as the load here, and the anchor is all that holds both.",
            lambda v: v.load,
        ),
        Mistake(
            "redirect-forgotten",
            "The redirect left out",
            "Pulled away from the load, the team would hold a share. Behind the redirect it adds "
            "one.",
            lambda v: v.load - v.load / v.advantage,
        ),
        Mistake(
            "redirects-double",
            "The load doubled for the redirect",
            "The redirect doubles only its own strand, which carries the hand's pull.",
            lambda v: 2 * v.load,
        ),
    ),
    difficulty=3,
    objective="find what a redirect adds to the pull on the anchor",
)

ANCHOR_IN_LINE = Template(
    key="anchor-pulled-in-line",
    title="The anchor of a system pulled away from the load",
    stem=(
        "A simple {advantage}:1 on one anchor holds a load that weighs {load}. The team pulls away "
        "from the load, in line with it. Pulleys turn without friction. What does the anchor hold?"
    ),
    asked="Pull on the anchor",
    givens=(_LOAD, _PARTS),
    derivation=advantage.anchor_in_line,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "anchor-sees-the-load",
            "The anchor taken to hold the whole load",
            "Anchor and team pull the same way and share the load between them.",
            lambda v: v.load,
        ),
        Mistake(
            "team-added",
            "The team's pull added to the load",
            "That is so behind a redirect. Here the team pulls away from the load and helps to "
            "hold it.",
            lambda v: v.load + v.load / v.advantage,
        ),
        Mistake(
            "anchor-holds-one-strand",
            "One strand's tension taken for the anchor",
            "Add up every strand that ends or turns at the anchor.",
            lambda v: v.load / v.advantage,
        ),
    ),
    difficulty=2,
    objective="find the pull on the anchor of a whole system from one balance",
)


QUESTIONS = (
    COUNT_STRANDS,
    STAGES,
    COMPLEX,
    ROPE_THROUGH,
    PULL_TEST,
    ANCHOR_IN_LINE,
    ANCHOR_REDIRECTED,
)
"""This module's questions, in the order of the lesson."""
