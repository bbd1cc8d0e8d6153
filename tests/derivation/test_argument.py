"""An argument takes only steps that hold, and says so when one does not."""

import math
from operator import add, truediv
from typing import Any

import pytest
import sympy

from ropecalc.derivation import Argument, DerivationError, Variable, samples
from tests.derivation.toys import DEPTH, DIAGONAL, LEAN, PULL, REST, SHIFT, WIDTH


def begin(*variables: Variable) -> tuple[Argument, tuple[Any, ...]]:
    argument = Argument(variables)
    return argument, argument.symbols(*variables)


def test_every_step_is_kept_with_its_origin() -> None:
    argument, (w, d, g) = begin(WIDTH, DEPTH, DIAGONAL)
    square = argument.law("Pythagoras.", g**2, w**2 + d**2)
    argument.solve("Take the root.", square, g)
    assert [s.operation for s in argument.steps] == ["law", "solve"]
    assert [s.sentence for s in argument.steps] == ["Pythagoras.", "Take the root."]
    assert argument.steps[1].equation == sympy.Eq(g, sympy.sqrt(w**2 + d**2))


def test_a_step_that_says_nothing_is_kept_as_an_equation() -> None:
    argument, (w,) = begin(WIDTH)
    assert argument.law("Trivial.", w, w).equation.args == (w, w)


def test_symbols_know_their_sign() -> None:
    _, (w, r, s) = begin(WIDTH, REST, SHIFT)
    assert w.is_positive and r.is_nonnegative and s.is_real and s.is_positive is None


# --- solving ---------------------------------------------------------------------------------


def test_the_branch_in_the_domain_is_taken() -> None:
    argument, (shift, lean) = begin(SHIFT, LEAN)
    law = argument.law("Two angles, one of them negative.", lean**2, 1 + shift**2 / 100)
    root = argument.solve("Take the root that is an angle of lean.", law, lean)
    assert root.equation.rhs.subs(shift, 0) == 1


def test_two_branches_in_the_domain_are_refused() -> None:
    argument, (w, g) = begin(WIDTH, DIAGONAL)
    square = argument.law("Two answers.", (g - 50) ** 2, w**2)
    with pytest.raises(DerivationError, match=r"2 of .* suit its domain"):
        argument.solve("Which one?", square, g)


def test_a_branch_outside_the_domain_is_refused() -> None:
    argument, (w, g) = begin(WIDTH, DIAGONAL)
    below = argument.law("A length that would be negative.", g + w, sympy.Integer(0))
    with pytest.raises(DerivationError, match="suit its domain"):
        argument.solve("Solve.", below, g)


def test_a_lone_branch_is_not_taken_on_trust() -> None:
    # beyond 180° sympy, which knows only signs, does not object; only the domain can
    argument, (lean, shift) = begin(LEAN, SHIFT)
    law = argument.law("An angle that is never in its domain.", lean, 4 + shift**2)
    with pytest.raises(DerivationError, match=r"0 of .* suit its domain"):
        argument.solve("Solve.", law, lean)


def test_no_solution_is_refused() -> None:
    argument, (w, g) = begin(WIDTH, DIAGONAL)
    with pytest.raises(DerivationError):
        argument.solve("Solve.", argument.law("g is not here.", w, w + 1), g)


def test_several_equations_at_once() -> None:
    argument, (w, d, s) = begin(WIDTH, DEPTH, SHIFT)
    one = argument.law("Sum.", w + d, 3 * s)
    two = argument.law("Difference.", w - d, s)
    both = argument.solve_together("Solve both.", [one, two], w, d)
    assert [step.equation.rhs for step in both] == [2 * s, s]
    parallel = argument.law("The same again.", 2 * w + 2 * d, 6 * s + 2)
    with pytest.raises(DerivationError, match="expected one joint solution, sympy found 0"):
        argument.solve_together("Solve.", [one, parallel], w, d)


# --- rewriting -------------------------------------------------------------------------------


def test_a_true_rewriting_is_taken() -> None:
    argument, (lean, p) = begin(LEAN, PULL)
    law = argument.law("A law.", p, sympy.sin(lean) ** 2 + sympy.cos(lean) ** 2)
    assert argument.rewrite("One.", law, sympy.Integer(1)).equation.rhs == 1
    assert argument.steps[-1].operation == "rewrite"


@pytest.mark.parametrize(
    "wrong",
    [
        lambda w, s: sympy.cos(w) * s,  # sine for cosine
        lambda w, s: -sympy.sin(w) * s,
        lambda w, s: sympy.sin(w) * abs(s),  # right for positive shifts only
        lambda w, s: sympy.sin(w) * s * (1 + sympy.Rational(1, 10**12)),  # right to twelve digits
        lambda w, s: sympy.nan,
        lambda w, s: sympy.zoo,
        lambda w, s: sympy.sin(w) * s + sympy.Symbol("stranger"),
        lambda w, s: sympy.Function("f")(w),
    ],
)
def test_a_wrong_rewriting_is_refused(wrong: Any) -> None:
    argument, (w, s, p) = begin(WIDTH, SHIFT, PULL)
    law = argument.law("A law.", p, sympy.sin(w) * s)
    with pytest.raises(DerivationError, match="not the same"):
        argument.rewrite("Rewrite.", law, wrong(w, s))
    assert len(argument.steps) == 1
    backwards = argument.law("The other way round.", sympy.sin(w) * s, p)
    with pytest.raises(DerivationError, match="not the same"):
        argument.rewrite("Rewrite.", backwards, left=wrong(w, s))


def test_rewriting_to_the_same_adds_no_step() -> None:
    argument, (w, d) = begin(WIDTH, DEPTH)
    law = argument.law("A law.", w, 2 * d)
    assert argument.rewrite("Nothing new.", law, d + d) is law
    assert len(argument.steps) == 1


def test_an_operation_of_sympy_is_checked_too() -> None:
    argument, (w, d, p) = begin(WIDTH, DEPTH, PULL)
    law = argument.law("A law.", p, w * (w + d))
    opened = argument.apply("Multiply out.", law, sympy.expand)
    assert opened.equation.rhs == w**2 + w * d and opened.operation == "expand"
    with pytest.raises(DerivationError, match="not the same"):
        argument.apply("Not an identity.", law, lambda e: e + 1)


# --- the other operations --------------------------------------------------------------------


def test_substituting_earlier_results() -> None:
    argument, (w, d, p) = begin(WIDTH, DEPTH, PULL)
    known = argument.law("The width.", w, 3 * d)
    law = argument.law("A law.", p * w, w**2)
    put_in = argument.substitute("Put it in.", law, known)
    assert put_in.equation.args == (3 * d * p, 9 * d**2)
    with pytest.raises(DerivationError, match="only 'symbol = expression' can be put in"):
        argument.substitute("Put in an equation.", known, law)


def test_the_same_to_both_sides() -> None:
    argument, (w, d, p) = begin(WIDTH, DEPTH, PULL)
    one = argument.law("One.", w, 2 * d)
    two = argument.law("Two.", p, d)
    assert argument.combine("Divide.", truediv, one, two).equation.args == (w / p, 2)
    total = argument.combine("Add.", add, one, two, called="add")
    assert total.equation.args == (w + p, 3 * d) and total.operation == "add"


def test_derivatives() -> None:
    argument, (w, s, d) = begin(WIDTH, SHIFT, DEPTH)
    law = argument.law("A curve.", d, sympy.sin(w))
    assert argument.differentiate("Its slope.", law, w, s).equation.args == (s, sympy.cos(w))


# --- the places where it is tried ------------------------------------------------------------


def test_samples_are_exact_spread_and_repeatable() -> None:
    variables = (WIDTH, SHIFT, LEAN, PULL)
    drawn = samples(variables, 12)
    assert drawn == samples(variables, 12)
    for variable in variables:
        values = [point[variable.name] for point in drawn]
        low, high = variable.teaching.low, variable.teaching.high
        assert all(isinstance(v, sympy.Rational) and low <= v <= high for v in values)
        assert len(set(values)) == 12
        assert max(values) - min(values) > 0.6 * (high - low)
    fractions = [(float(p["width"]) - 1) / 3 - (float(p["shift"]) + 5) / 10 for p in drawn]
    assert max(fractions) - min(fractions) > 0.5  # the variables do not move together
    assert not any(math.isclose(f, 0, abs_tol=1e-6) for f in fractions)
