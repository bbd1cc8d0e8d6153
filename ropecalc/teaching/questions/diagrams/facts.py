"""What a drawing may know of a question: its given quantities, never its answer."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from ropecalc.teaching.questions.diagrams.sheet import Sheet
from ropecalc.teaching.questions.draw import Draw
from ropecalc.teaching.questions.wording import givens, particulars
from ropecalc.units import Display


@dataclass(frozen=True)
class Facts:
    """The drawn quantities of one question for one reader."""

    drawn: Draw
    display: Display
    called: Mapping[str, str] = field(default_factory=dict)
    """The drawn quantity behind a name, where it is called otherwise."""
    fixed: Mapping[str, float] = field(default_factory=dict)
    """What is not drawn, SI."""

    def value(self, name: str) -> float:
        """A given or fixed quantity, SI."""
        if name in self.fixed:
            return self.fixed[name]
        return self.drawn.values[self.called.get(name, name)]

    def text(self, name: str) -> str:
        """A given quantity as the question shows it."""
        drawn_name = self.called.get(name, name)
        given = next(g for g in self.drawn.template.givens if g.name == drawn_name)
        return given.show(self.value(name), self.display)

    def listed(self) -> str:
        """Every given quantity with its meaning, what belongs to the question, what is asked."""
        given = [f"{meaning}: {shown}" for _, meaning, shown in givens(self.drawn, self.display)]
        sentences = [f"Given: {'; '.join(given)}."] if given else []
        return " ".join(
            (
                *sentences,
                *(f"{line.rstrip('.')}." for line in particulars(self.drawn, self.display)),
                f"Asked: {self.drawn.template.asked}.",
            )
        )


Diagram = Callable[[Facts, Sheet], str]
"""Draws one question on the sheet and says in a sentence what is to be seen there."""
