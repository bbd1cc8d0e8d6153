"""The small drawing beside each question, made from the question's own numbers."""

from collections.abc import Mapping

from ropecalc.teaching.questions.diagrams import (
    advantage,
    along_the_raise,
    anchors,
    critical_angles,
    forces,
    friction,
    high_directional,
    holding_off,
    margins,
    orders,
    rigs,
    tensioner,
    throw_and_time,
    whole_raise,
)
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.likeness import LIKE
from ropecalc.teaching.questions.diagrams.picture import Picture
from ropecalc.teaching.questions.diagrams.sheet import Sheet
from ropecalc.teaching.questions.draw import Draw
from ropecalc.units import Display

DIAGRAMS: Mapping[str, Diagram] = {
    **forces.DIAGRAMS,
    **anchors.DIAGRAMS,
    **high_directional.DIAGRAMS,
    **advantage.DIAGRAMS,
    **friction.DIAGRAMS,
    **throw_and_time.DIAGRAMS,
    **critical_angles.DIAGRAMS,
    **holding_off.DIAGRAMS,
    **along_the_raise.DIAGRAMS,
    **tensioner.DIAGRAMS,
    **margins.DIAGRAMS,
    **whole_raise.DIAGRAMS,
    **orders.DIAGRAMS,
    **rigs.DIAGRAMS,
}
"""What draws each question, by the question's key."""


def picture_of(drawn: Draw, display: Display) -> Picture | None:
    """The drawing for ``drawn`` in the reader's units; None for a question without one."""
    key = drawn.template.key
    diagram = DIAGRAMS.get(LIKE.get(key, key))
    if diagram is None:
        return None
    facts, sheet = Facts(drawn, display), Sheet()
    described = diagram(facts, sheet)
    return sheet.picture(f"Drawing. {described} {facts.listed()}")
