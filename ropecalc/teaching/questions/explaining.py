"""A derivation told to a learner: a hint at a time, or worked through with the drawn numbers."""

from ropecalc.derivation import Derivation, Explanation, Line
from ropecalc.teaching.questions.passage import Passage

WIDEST = 700
"""Signs of LaTeX in a formula that a page still shows; above that it is several pages wide."""
TOO_WIDE = "The formula is too wide for a page; the steps before it give the same."


def in_words(explanation: Explanation) -> Passage:
    """The laws as sentences."""
    return Passage("The law, in words. " + " ".join(law.sentence for law in _laws(explanation)))


def as_equations(explanation: Explanation) -> Passage:
    """The laws as equations with symbols."""
    laws = _laws(explanation)
    return Passage(
        "As equations." if len(laws) > 1 else "As an equation.",
        tuple(line.latex for line in laws),
        tuple(line.text for line in laws),
    )


def with_numbers(derivation: Derivation, explanation: Explanation) -> Passage:
    """The laws with the given numbers, without the result's."""
    stated = {
        step.sentence
        for step in derivation.steps
        if step.equation.lhs == derivation.symbol(derivation.result.name)
    }
    lines = tuple(_open(line, stated) for line in _laws(explanation))
    return Passage("With your numbers.", lines)


def solved(derivation: Derivation, explanation: Explanation) -> tuple[Passage, ...]:
    """The last formula with symbols; nothing where a law states the result, or it is too wide."""
    last = explanation.lines[-1]
    if last.is_law or not _fits(last):
        return ()
    return (Passage(f"Solved for the {derivation.result.meaning}.", (last.latex,), (last.text,)),)


def step_by_step(explanation: Explanation) -> tuple[Passage, ...]:
    """Every step with the numbers; of a formula that is too wide, what it does."""
    return tuple(
        Passage(
            line.sentence,
            (line.latex, line.numbers) if line.numbers else (line.latex,),
            (line.text,),
        )
        if _fits(line)
        else Passage(f"{line.sentence} {TOO_WIDE}")
        for line in explanation.lines
    )


def _fits(line: Line) -> bool:
    return len(line.latex) <= WIDEST


def _laws(explanation: Explanation) -> list[Line]:
    return [line for line in explanation.lines if line.is_law]


def _open(line: Line, stating_the_result: set[str]) -> str:
    """A law with numbers; where it states the result itself, without the result's value.

    A law that has nothing to put numbers in stays as it is.
    """
    stated, _, value = line.numbers.rpartition(" = ")
    if line.sentence in stating_the_result and " = " in stated and value:
        return stated
    return line.numbers or line.latex
