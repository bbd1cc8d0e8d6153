"""Drawings for throws, resets, time, rope and a snag."""

from ropecalc.teaching.drawing import ROCK_FACE, THIN
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import throw_and_time as bank
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, UP
from ropecalc.teaching.questions.diagrams.rigging import rig
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_TALL = 156.0
_EDGE: Place = (0.0, 0.0)


def _raise(
    sheet: Sheet, system: str, hangs: float = 92.0, wide: float = 96.0
) -> tuple[Place, Place]:
    """A wall with a team and its system on top, and a litter part of the way up.

    Gives back the system's middle and where the litter hangs.
    """
    parts.cliff(sheet, _EDGE, 172, _TALL)
    parts.ground(sheet, (-2, -_TALL), wide)
    head: Place = (12.0, 21.0)
    for foot in (-24, -6):
        sheet.line(parts.LEG, (foot, 0), head)
    litter = (head[0] + 11, -hangs)
    middle: Place = (-80.0, 32.0)
    sheet.line(parts.ROPE, (-156, 32), (head[0], 32), *parts.arc_points(head, 11, UP, 0), litter)
    parts.pulley(sheet, head, 9.5)
    parts.box(sheet, middle, 64, 26, system)
    for at in (-146, -130):
        parts.person(sheet, (at, 0), 27)
    parts.litter(sheet, litter)
    sheet.not_to_scale()
    return middle, litter


def _height(facts: Facts, sheet: Sheet, at: float = 84) -> None:
    parts.length(sheet, (at, -_TALL), (at, 0), facts.text("raise_height"), -1)
    sheet.line(parts.PLUMB, (4, 0), (at + 6, 0), ghost=True)


def _throws(facts: Facts, sheet: Sheet) -> str:
    _, (x, y) = _raise(sheet, "system", 96, 174)
    low = y - parts.LITTER_DEEP
    parts.length(sheet, (x + 32, low), (x + 32, low + 70), f"throw {facts.text('throw_rise')}", -1)
    lost = parts.arrow(sheet, (x + 48, low + 70), DOWN, 22, THIN)
    sheet.label(f"reset {facts.text('reset_loss')}", (lost[0], lost[1] + 12), (1, 0.4))
    _height(facts, sheet, 164)
    sheet.ask((-86, -16), (0, -1), "how many throws ?")
    return "A wall of the given height; the litter rises by a throw and sinks a little at a reset."


def _time(facts: Facts, sheet: Sheet) -> str:
    _raise(sheet, f"{facts.text('advantage')}:1", 92)
    _height(facts, sheet)
    parts.moving(sheet, (-158, 64), BACK)
    sheet.label(facts.text("hand_speed"), (-144, 64), (1, 0))
    for line, text in enumerate(
        (
            f"{facts.text('throws')} throws",
            f"each reset: {facts.text('reset_time')}",
            f"and {facts.text('reset_loss')} lost",
        )
    ):
        sheet.write(text, (-86, -20 - 17 * line))
    sheet.ask((-86, -70), (0, -1), "how long ?")
    return "A team with its system on top of a wall raises the litter over its whole height."


def _rope(facts: Facts, sheet: Sheet) -> str:
    (x, _), _ = _raise(sheet, f"{facts.text('advantage')}:1", 104)
    _height(facts, sheet)
    parts.post(sheet, (-116, 0), 40)
    parts.length(sheet, (-116, -16), (0, -16), facts.text("edge_setback"), -1)
    parts.length(sheet, (x - 32, 54), (x + 32, 54), facts.text("throw_rise"))
    sheet.line(parts.ROPE, (-156, 32), (-198, 32))
    parts.length(sheet, (-198, 62), (-156, 62), facts.text("haul_tail"))
    sheet.ask((-86, -60), (0, -1), "whole rope ?")
    return (
        "A system built in the tail of the haul rope, from its anchor back from the edge; the "
        "rope runs over the edge down to the litter at the foot of the wall, and a tail is kept "
        "beyond the hands."
    )


def _snag(facts: Facts, sheet: Sheet) -> str:
    _, (x, y) = _raise(sheet, f"{facts.text('advantage')}:1", 96)
    rail = y - parts.LITTER_HANGS
    outcrop = [(-2.5, y + 40), (x - 6, y + 6), (x - 11, y - 12), (0, y - 26)]
    sheet.area(ROCK_FACE, *outcrop)
    sheet.line(parts.EDGE, *outcrop)
    sheet.ask((x + 22, rail - 6), (1, 0), "snag ?")
    sheet.write(f"{facts.text('people')} people, each {facts.text('burst_per_person')}", (-86, -20))
    parts.moving(sheet, (-158, 64), BACK)
    return "A litter has caught under an outcrop of the wall while a team hauls on top."


def _what_ends(facts: Facts, sheet: Sheet) -> str:
    name = f"simple {facts.text('advantage')}:1"
    rigged = rig(sheet, name)
    anchor, traveller = (rigged.bodies[n][0] for n in ("anchor", "traveller"))
    top = max(y for _, y in rigged.sheaves) + 26
    parts.length(sheet, (anchor, top), (traveller, top), facts.text("traveller_room"))
    x, y = rigged.hand
    parts.length(sheet, (x - 74, y + 34), (x, y + 34), facts.text("clear_way"))
    parts.moving(sheet, (x - 34, y), BACK)
    rigged.name(sheet, name)
    x, y = rigged.litter
    sheet.ask((x, y - parts.LITTER_DEEP - 6), (0, -1), "rise ?")
    sheet.not_to_scale()
    return (
        "A simple system on the cliff top: the room from the traveller to the anchor, and the way "
        "behind the team that is clear to walk."
    )


DIAGRAMS: dict[str, Diagram] = {
    bank.THROW_ENDS.key: _what_ends,
    bank.THROWS.key: _throws,
    bank.TIME.key: _time,
    bank.ROPE.key: _rope,
    bank.SNAG.key: _snag,
}
"""What draws each question of this topic."""
