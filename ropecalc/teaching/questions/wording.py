"""A drawn question in words: stem, given quantities, hints and worked solution.

Everything is built as :class:`Passage` (words and typeset formulas apart), so that the page gets
HTML and the summary gets plain text from the same source.
"""

from dataclasses import dataclass
from html import escape

from ropecalc.derivation import Explanation, Line
from ropecalc.teaching.questions.draw import Draw
from ropecalc.units import Display


@dataclass(frozen=True)
class Passage:
    """A sentence, then formulas: each one as LaTeX (without dollar signs) and as plain text."""

    words: str
    latex: tuple[str, ...] = ()
    text: tuple[str, ...] = ()

    def as_html(self) -> str:
        """For a page that typesets ``$$...$$``."""
        return escape(self.words) + "".join(f"$${escape(line)}$$" for line in self.latex)

    def as_text(self) -> str:
        """For a summary or a screen reader."""
        return " ".join((self.words, *self.text))


def stem(drawn: Draw, display: Display) -> str:
    """The question with its numbers, in the reader's units."""
    return drawn.template.stem.format(**_shown(drawn, display))


def givens(drawn: Draw, display: Display) -> tuple[tuple[str, str, str], ...]:
    """Symbol (LaTeX), meaning and shown value of each given quantity."""
    shown = _shown(drawn, display)
    return tuple(
        (g.variable.symbol, g.variable.meaning, shown[g.name]) for g in drawn.template.givens
    )


def hints(drawn: Draw, display: Display) -> tuple[Passage, ...]:
    """The way to the answer, a step at a time; the answer itself is in none of them."""
    derivation = drawn.template.derivation
    lines = _explained(drawn, display).lines
    laws = [line for line in lines if line.is_law]
    stated = {
        s.sentence
        for s in derivation.steps
        if s.equation.lhs == derivation.symbol(derivation.result.name)
    }
    in_words = Passage("The law, in words. " + " ".join(line.sentence for line in laws))
    as_equations = Passage(
        "As equations." if len(laws) > 1 else "As an equation.",
        tuple(line.latex for line in laws),
        tuple(line.text for line in laws),
    )
    with_numbers = Passage("With your numbers.", tuple(_open(line, stated) for line in laws))
    last = lines[-1]
    if last.is_law:
        return in_words, as_equations, with_numbers
    solved = Passage(f"Solved for the {derivation.result.meaning}.", (last.latex,), (last.text,))
    return in_words, as_equations, with_numbers, solved


def solution(drawn: Draw, display: Display) -> tuple[Passage, ...]:
    """The worked solution: every step with the learner's numbers, then the result."""
    explanation = _explained(drawn, display)
    steps = tuple(
        Passage(
            line.sentence,
            (line.latex, line.numbers) if line.numbers else (line.latex,),
            (line.text,),
        )
        for line in explanation.lines
    )
    return (*steps, Passage(f"{explanation.result}."))


def assumptions(drawn: Draw) -> str:
    """What the answer assumes."""
    return " ".join(drawn.template.derivation.assumptions)


def common_mistakes(drawn: Draw, display: Display) -> tuple[Passage, ...]:
    """Each mistake with the number it would have given and the reason why it is wrong."""
    kind = drawn.template.kind
    return tuple(
        Passage(
            f"{mistake.title}: {display.show(drawn.mistaken[mistake.key], kind)}. {mistake.why}"
        )
        for mistake in drawn.template.mistakes
    )


def _shown(drawn: Draw, display: Display) -> dict[str, str]:
    return {g.name: g.show(drawn.values[g.name], display) for g in drawn.template.givens}


def _explained(drawn: Draw, display: Display) -> Explanation:
    return drawn.template.derivation.explain(display, **drawn.values)


def _open(line: Line, stating_the_result: set[str]) -> str:
    """A law with numbers; where it states the result itself, without the result's value.

    A law that has nothing to put numbers in stays as it is.
    """
    stated, _, value = line.numbers.rpartition(" = ")
    if line.sentence in stating_the_result and " = " in stated and value:
        return stated
    return line.numbers or line.latex
