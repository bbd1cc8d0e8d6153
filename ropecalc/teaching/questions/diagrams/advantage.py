"""Drawings for mechanical advantage: strands, stages, travel, work and the anchor."""

from ropecalc.teaching.drawing import WEIGHT
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import advantage as bank
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT
from ropecalc.teaching.questions.diagrams.rigging import Rig, rig
from ropecalc.teaching.questions.diagrams.sheet import Sheet


def weigh(sheet: Sheet, at: Place, text: str) -> None:
    """The load's arrow below a litter that hangs from ``at``."""
    tip = parts.arrow(sheet, (at[0], at[1] - parts.LITTER_DEEP), DOWN, 28, WEIGHT)
    sheet.label(text, (at[0], tip[1] + 10), (1, 0))


def ask_hand(sheet: Sheet, rigged: Rig, text: str = "?") -> None:
    """The pull of the team, asked at the strand in its hands."""
    x, y = rigged.hand
    sheet.ask((x, y + 24), (-0.3, 1), text)


def _count(facts: Facts, sheet: Sheet) -> str:
    pulleys, ends = (round(facts.value(n)) for n in ("travelling_pulleys", "end_at_load"))
    rigged = rig(sheet, f"simple {2 * pulleys + ends}:1")
    x = rigged.bodies["traveller"][0]
    top = max(y for _, y in rigged.sheaves)
    sheet.write(f"pulleys on the traveller: {facts.text('travelling_pulleys')}", (x, top + 40))
    sheet.write(f"rope ends held by it: {facts.text('end_at_load')}", (x, top + 24))
    sheet.ask((x, rigged.ground - 4), (0, -1), "load over hand's pull ?")
    return "One rope runs back and forth between an anchor and the traveller on the load's rope."


def _chain(sheet: Sheet, *names: str) -> list[Place]:
    """A team, systems by their names one after another, and the litter over the edge.

    Gives back the hands, the middles of the systems, and where the litter hangs.
    """
    wide, gap = 58.0, 44.0
    hands: Place = (0.0, 0.0)
    middles = [(gap + wide / 2 + i * (wide + gap), 0.0) for i in range(len(names))]
    edge = middles[-1][0] + wide / 2 + gap + 30
    parts.cliff(sheet, (edge - 26, -30), edge + 4, 40)
    head = (edge, -11.0)
    for foot in (edge - 42, edge - 28):
        sheet.line(parts.LEG, (foot, -30), head)
    litter = (edge + 11, -44.0)
    sheet.line(parts.ROPE, hands, (edge, 0), *parts.arc_points(head, 11, parts.UP, 0), litter)
    parts.pulley(sheet, head, 9.5)
    for middle, name in zip(middles, names, strict=True):
        parts.box(sheet, middle, wide, 26, name)
    parts.person(sheet, (-2, -30), 28)
    parts.litter(sheet, litter)
    return [hands, *middles, litter]


def _stages(facts: Facts, sheet: Sheet) -> str:
    first, second = facts.text("first_advantage"), facts.text("second_advantage")
    places = _chain(sheet, f"{first}:1", f"{second}:1")
    sheet.ask(parts.middle_of(places[1], places[2]), (0, 1), "both together ?")
    return (
        "The team pulls on a first system, whose load is the haul strand of a second one; that "
        "one holds the litter."
    )


def _complex(facts: Facts, sheet: Sheet) -> str:
    rigged = rig(sheet, "complex 5:1")
    weigh(sheet, rigged.litter, facts.text("load"))
    ask_hand(sheet, rigged)
    return (
        "A system of one rope: from the litter to a grab on the traveller, round a pulley at the "
        "anchor, past a second grab, round the traveller's pulley, and round a pulley on the "
        "second grab to the team, which pulls towards the edge."
    )


def _travelling(facts: Facts, sheet: Sheet, name: str) -> tuple[Place, Place]:
    """A system in the haul rope, with the litter's rise; hands and litter."""
    hands, _, litter = _chain(sheet, name)
    x, y = litter
    low = y - parts.LITTER_DEEP
    parts.length(sheet, (x + 34, low), (x + 34, low + 40), facts.text("rise"), -1)
    parts.moving(sheet, (x + 34, low + 58), parts.UP)
    return hands, litter


def _rope_through(facts: Facts, sheet: Sheet) -> str:
    hands, _ = _travelling(facts, sheet, f"{facts.text('advantage')}:1")
    parts.asked_length(sheet, (hands[0] - 64, 30), (hands[0], 30), text="rope pulled ?")
    parts.moving(sheet, (hands[0] - 30, 0), BACK)
    return "The team pulls rope out of a system while the litter rises."


def _pull_test(facts: Facts, sheet: Sheet) -> str:
    hands, litter = _travelling(facts, sheet, "?")
    parts.length(sheet, (hands[0] - 70, 34), (hands[0], 34), facts.text("hand_travel"))
    tip = parts.arrow(sheet, (hands[0] - 14, 0), BACK, 56, WEIGHT)
    sheet.label(facts.text("hand_pull"), (tip[0] + 18, 0), (0, -1))
    weigh(sheet, litter, facts.text("load"))
    return "The team pulls rope out of a system with a steady force while the load rises."


def _anchored(facts: Facts, sheet: Sheet, redirect: bool) -> None:
    rigged = rig(sheet, f"simple {facts.text('advantage')}:1", redirect)
    weigh(sheet, rigged.litter, facts.text("load"))
    name = next(n for n in rigged.bodies if n.startswith("anchor"))
    x = rigged.bodies[name][0]
    sheet.ask((x, max(y for _, y in rigged.strands) + 14), (-0.6, 1), "pull on the anchor ?")
    parts.moving(sheet, (rigged.hand[0], rigged.ground - 27), OUT if redirect else BACK)
    rigged.name(sheet, f"simple {facts.text('advantage')}:1")


def _in_line(facts: Facts, sheet: Sheet) -> str:
    _anchored(facts, sheet, redirect=False)
    return "A simple system on one anchor; the team stands behind it and pulls away from the load."


def _redirected(facts: Facts, sheet: Sheet) -> str:
    _anchored(facts, sheet, redirect=True)
    return (
        "A simple system on one anchor; the haul strand turns at one more pulley there, and the "
        "team pulls towards the edge."
    )


DIAGRAMS: dict[str, Diagram] = {
    bank.COUNT_STRANDS.key: _count,
    bank.STAGES.key: _stages,
    bank.COMPLEX.key: _complex,
    bank.ROPE_THROUGH.key: _rope_through,
    bank.PULL_TEST.key: _pull_test,
    bank.ANCHOR_IN_LINE.key: _in_line,
    bank.ANCHOR_REDIRECTED.key: _redirected,
}
"""What draws each question of this topic."""
