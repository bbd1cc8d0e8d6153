"""What a drawing may know of a question: its given quantities, never its answer."""

from collections.abc import Callable
from dataclasses import dataclass

from ropecalc.teaching.questions.diagrams.sheet import Sheet
from ropecalc.teaching.questions.draw import Draw
from ropecalc.units import Display


@dataclass(frozen=True)
class Facts:
    """The drawn quantities of one question for one reader."""

    drawn: Draw
    display: Display

    def value(self, name: str) -> float:
        """A given quantity, SI."""
        return self.drawn.values[name]

    def text(self, name: str) -> str:
        """A given quantity as the question shows it."""
        given = next(g for g in self.drawn.template.givens if g.name == name)
        return given.show(self.value(name), self.display)

    def listed(self) -> str:
        """Every given quantity with its meaning, and what is asked."""
        template = self.drawn.template
        given = "; ".join(f"{g.variable.meaning}: {self.text(g.name)}" for g in template.givens)
        return f"Given: {given}. Asked: {template.asked}."


Diagram = Callable[[Facts, Sheet], str]
"""Draws one question on the sheet and says in a sentence what is to be seen there."""
