"""Corners of an argument: strangers among the symbols, several joint solutions, signs."""

import math

import pytest
import sympy

from ropecalc.derivation import ANY, Argument, DerivationError, Domain, Range, Variable, samples
from ropecalc.units import Kind
from tests.derivation.toys import DEPTH, DIAGONAL, REST, SHIFT, WIDTH

AT_LEAST_HALF = Variable(
    "share", "k", "share that is never less than half", Kind.RATIO, Domain(0.5, 4), Range(1, 3, 2)
)


def test_a_solution_with_a_stranger_in_it_is_refused() -> None:
    argument = Argument((WIDTH, DIAGONAL))
    w, g = argument.symbols(WIDTH, DIAGONAL)
    stranger = sympy.Symbol("stranger", positive=True)
    law = argument.law("Somebody else's symbol.", g, w * stranger)
    with pytest.raises(DerivationError, match=r"0 of .* suit its domain"):
        argument.solve("Solve.", law, g)


def test_two_joint_solutions_are_refused() -> None:
    argument = Argument((SHIFT, DEPTH, WIDTH))
    s, d, w = argument.symbols(SHIFT, DEPTH, WIDTH)
    square = argument.law("A square.", s**2, w**2)
    other = argument.law("And a width.", d, 2 * w)
    with pytest.raises(DerivationError, match="expected one joint solution, sympy found 2"):
        argument.solve_together("Solve.", [square, other], s, d)


def test_a_symbol_knows_no_more_about_its_sign_than_its_domain_says() -> None:
    argument = Argument((AT_LEAST_HALF, REST, WIDTH, SHIFT))
    half, rest, width, shift = argument.symbols(AT_LEAST_HALF, REST, WIDTH, SHIFT)
    assert half.is_positive and width.is_positive
    assert rest.is_nonnegative and rest.is_positive is None
    assert shift.is_real and shift.is_nonnegative is None


def test_one_more_sample_leaves_the_earlier_ones_where_they_were() -> None:
    assert len(samples((WIDTH,))) == 5
    assert samples((WIDTH, SHIFT), 7)[:5] == samples((WIDTH, SHIFT), 5)


def test_a_solution_that_is_not_real_is_no_solution() -> None:
    anywhere = Variable("any", "a", "anything", Kind.LENGTH, ANY, Range(-math.e, math.e, 1))
    argument = Argument((WIDTH, anywhere))
    w, a = argument.symbols(WIDTH, anywhere)
    law = argument.law("A square that is negative.", a**2, -(w**2))
    with pytest.raises(DerivationError):
        argument.solve("Solve.", law, a)


def test_of_the_roots_of_a_cubic_the_real_one_is_taken() -> None:
    # sympy cannot tell which of its three roots are real; the numbers can
    argument = Argument((WIDTH, SHIFT))
    w, s = argument.symbols(WIDTH, SHIFT)
    root = argument.solve("Solve.", argument.law("A cubic.", s**3 + s, w), s)
    assert complex(root.equation.rhs.subs(w, 10)) == pytest.approx(2.0)
