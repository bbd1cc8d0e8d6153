"""Formulas on paper: two cases stand beside each other, and what cannot be typeset is refused."""

import pytest

from ropecalc.teaching.papers.print_formula import (
    FormulaError,
    PrintedFormula,
    beside_each_other,
)

CASES = (
    r"\begin{cases} n & \text{for}\: \eta = 1 \\"
    r"\frac{1 - \eta^{n}}{1 - \eta} & \text{otherwise} \end{cases}"
)


def test_two_cases_stand_in_one_line_the_general_one_first() -> None:
    said = beside_each_other(rf"W = E \left({CASES}\right)")
    general = r"W = E \left(\frac{1 - \eta^{n}}{1 - \eta}\right)"
    assert said == general + r" \qquad \eta = 1{:}\; W = E \left(n\right)"


def test_the_same_condition_twice_is_said_once() -> None:
    said = beside_each_other(f"k = {CASES} + {CASES}")
    assert said.count(r"\eta = 1{:}") == 1 and said.endswith("k = n + n")
    assert PrintedFormula(f"k = {CASES} + {CASES}").natural_width > 0


def test_without_cases_or_with_two_conditions_nothing_is_changed() -> None:
    assert beside_each_other(r"\frac{W}{2}") == r"\frac{W}{2}"
    mixed = f"k = {CASES} + {CASES.replace('= 1', '= 2')}"
    assert beside_each_other(mixed) == mixed
    with pytest.raises(FormulaError):
        PrintedFormula(mixed)
