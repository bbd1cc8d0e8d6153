"""How a derivation is told: step by step, without formulas that are pages wide."""

import pytest

from ropecalc.derivation import Explanation
from ropecalc.mechanics import guiding, locked_moves
from ropecalc.teaching.questions import explaining
from ropecalc.units import Display


def told(derivation) -> Explanation:
    values = {v.name: v.teaching.default for v in derivation.given}
    explanation: Explanation = derivation.explain(Display(), **values)
    return explanation


@pytest.mark.parametrize("derivation", [guiding.tag_tension, locked_moves.lowered_tension])
def test_every_step_is_told_and_no_formula_is_pages_wide(derivation) -> None:
    explanation = told(derivation)
    passages = explaining.step_by_step(explanation)
    assert len(passages) == len(explanation.lines)
    for passage, line in zip(passages, explanation.lines, strict=True):
        assert passage.words.startswith(line.sentence)
        wide = len(line.latex) > explaining.WIDEST
        assert (passage.latex == ()) == wide == passage.words.endswith(explaining.TOO_WIDE)
        assert (line.text in passage.text) != wide


def test_a_result_too_wide_to_show_was_given_by_a_step_before() -> None:
    explanation = told(locked_moves.lowered_tension)
    narrow = [line for line in explanation.lines if len(line.latex) <= explaining.WIDEST]
    assert len(narrow) < len(explanation.lines)
    value = explanation.lines[-1].numbers.rpartition(" = ")[2]
    assert narrow[-1].numbers.endswith(f" = {value}")
    assert explaining.solved(locked_moves.lowered_tension, explanation) == ()
    assert explaining.solved(guiding.tag_tension, told(guiding.tag_tension))
