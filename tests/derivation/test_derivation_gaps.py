"""Corners of a derivation: masks that come in, names, and an inverse that holds only in part."""

import numpy as np
import pytest

from ropecalc.derivation import Argument, DomainError, Step, derive
from tests.derivation.toys import DEPTH, DIAGONAL, SHIFT, WIDTH


@derive("Sum of two sides", given=(WIDTH, DEPTH), result=DIAGONAL)
def total(argument: Argument) -> Step:
    """Width and depth together."""
    w, d, g = argument.symbols(WIDTH, DEPTH, DIAGONAL)
    return argument.law("Add.", g, w + d)


@derive("Root less three", given=(WIDTH,), result=SHIFT)
def root_less_three(argument: Argument) -> Step:
    """The root is never negative, so no width has a shift below -3 m."""
    w, s = argument.symbols(WIDTH, SHIFT)
    return argument.law("Less three.", s, argument.sympy.sqrt(w) - 3)


def _masked(values: list[float], mask: list[bool]) -> "np.ma.MaskedArray":
    return np.ma.masked_array(values, mask=mask)


def test_a_point_hidden_in_any_argument_stays_hidden() -> None:
    result = total.masked(
        width=_masked([1.0, 2.0, 3.0, 4.0], [False, True, True, False]),
        depth=_masked([1.0, 2.0, 3.0, 4.0], [False, False, True, True]),
    )
    assert np.ma.getmaskarray(result).tolist() == [False, True, True, True]
    assert result[0] == 2.0


def test_a_value_outside_any_domain_is_not_valid() -> None:
    width, depth = np.array([-1.0, 1.0, 1.0]), np.array([1.0, -1.0, 1.0])
    assert total.valid(width=width, depth=depth).tolist() == [False, False, True]
    assert total.valid(width=1.0, depth=1.0)


def test_names_that_are_missing_or_unknown_are_said_and_no_others() -> None:
    with pytest.raises(TypeError, match=r"^total takes width, depth; missing: depth$"):
        total(width=1.0)
    with pytest.raises(TypeError, match=r"^total takes width, depth; unknown: height$"):
        total(width=1.0, depth=1.0, height=1.0)
    with pytest.raises(TypeError, match=r"missing: depth, width; unknown: a, b$"):
        total(b=1.0, a=1.0)


@pytest.mark.parametrize("shift", [-3.5, -5.0, -6.0, -12.0])
def test_an_inverse_is_refused_where_the_original_does_not_return(shift: float) -> None:
    turned = root_less_three.solved_for("width")
    with pytest.raises(DomainError, match="there is no width of the plate"):
        turned(shift=shift)
    with pytest.raises(DomainError, match="there is no width of the plate"):
        turned(shift=np.array([1.0, shift]))
    assert turned.masked(shift=np.array([shift, 1.0])).tolist() == [None, 16.0]


def test_an_inverse_is_taken_where_the_original_returns_up_to_rounding() -> None:
    turned = root_less_three.solved_for("width")
    shifts = np.concatenate([np.linspace(-2.9, 4.9, 60), np.geomspace(1e-6, 1e6, 60), [0.0]])
    np.testing.assert_allclose(turned(shift=shifts), (shifts + 3) ** 2, rtol=1e-14)
    assert turned(shift=0.0) == 9.0


def test_an_explanation_states_a_result_only_for_values() -> None:
    assert total.explain(width=1.0, depth=2.0).result.endswith("3.00 m")
    assert total.explain().result == ""
    assert [v.name for v in total.variables] == ["width", "depth", "diagonal"]


@pytest.mark.parametrize("strange", [[1e3, 2e3], np.ones((2, 2)), "much", 1j, object()])
def test_what_is_told_and_what_is_looked_for_takes_one_number_at_a_time(strange: object) -> None:
    for call in (
        lambda: total.explain(width=strange, depth=1.0),
        lambda: total.find("width", strange, depth=1.0),
        lambda: total.find("width", 2.0, depth=strange),
    ):
        with pytest.raises(DomainError, match=r"one number at a time|must be a number"):
            call()
    with pytest.raises(DomainError, match="width is an array; give one number") as refusal:
        total.explain(width=[1.0], depth=1.0)
    assert refusal.value.keyword == "width"


def test_truth_and_whole_numbers_are_told_as_numbers() -> None:
    assert total.explain(width=True, depth=2) == total.explain(width=1.0, depth=2.0)
