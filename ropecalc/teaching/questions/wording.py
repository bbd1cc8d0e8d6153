"""A drawn question in words: stem, given quantities, hints and worked solution.

Everything is built as :class:`~ropecalc.teaching.questions.passage.Passage` (words and typeset
formulas apart), so that the page gets HTML and the summary gets plain text from the same source.
"""

from ropecalc.teaching.questions.draw import Draw
from ropecalc.teaching.questions.passage import Passage
from ropecalc.teaching.questions.question import shown_givens
from ropecalc.units import Display


def stem(drawn: Draw, display: Display) -> str:
    """The question with its numbers, in the reader's units."""
    return drawn.template.stem.format(**shown_givens(drawn.template, drawn.values, display))


def givens(drawn: Draw, display: Display) -> tuple[tuple[str, str, str], ...]:
    """Symbol (LaTeX), meaning and shown value of each given quantity that the stem tells."""
    template = drawn.template
    shown = shown_givens(template, drawn.values, display)
    return tuple(
        (given.variable.symbol, given.variable.meaning, shown[given.name])
        for given in template.givens
        if f"{{{given.name}}}" in template.stem
    )


def particulars(drawn: Draw, display: Display) -> tuple[str, ...]:
    """Lines that belong to the question below its stem."""
    return drawn.template.particulars(drawn.values, display)


def hints(drawn: Draw, display: Display) -> tuple[Passage, ...]:
    """The way to the answer, a step at a time; the answer itself is in none of them."""
    return drawn.template.hints(drawn.values, display)


def solution(drawn: Draw, display: Display) -> tuple[Passage, ...]:
    """The worked solution: every step with the learner's numbers, then the result."""
    return drawn.template.solution(drawn.values, display)


def assumptions(drawn: Draw) -> str:
    """What the answer assumes."""
    return drawn.template.assumptions


def common_mistakes(drawn: Draw, display: Display) -> tuple[Passage, ...]:
    """Each mistake with what it would have given and the reason why it is wrong."""
    return drawn.template.common_mistakes(drawn.values, display)
