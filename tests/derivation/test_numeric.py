"""Formulas as numpy functions: the same numbers, no needless passes."""

import inspect
import math

import numpy as np
import pytest
import sympy

from ropecalc.derivation.numeric import numpy_function

a, b, c = sympy.symbols("a b c", positive=True)


@pytest.mark.parametrize(
    "expression",
    [
        b - a,
        -a - b,
        sympy.sin(a - b) / sympy.cos(b - a) + sympy.exp(-a * b),
        sympy.sqrt((a - b) ** 2 + c**2) * sympy.atan((a - b) / c),
        c * sympy.sqrt(1 + (a - b) ** 2 / (c - b) ** 2) / ((a - b) / (c - b) - a),
        sympy.acos(a / (a + b)) + sympy.pi - sympy.Rational(1, 3) * c,
        sympy.Float("9.80665", 8) * a,
    ],
)
def test_it_gives_what_the_expression_gives(expression: sympy.Expr) -> None:
    function = numpy_function([a, b, c], expression)
    places = np.random.default_rng(3).uniform(0.1, 0.9, (3, 20))
    for one, two, three in places.T:
        exact = float(expression.subs({a: one, b: two, c: three}))
        assert function(one, two, three) == pytest.approx(exact, rel=1e-9)
        assert function(one, two, three) == pytest.approx(
            function(*(np.array([v]) for v in (one, two, three)))[0], rel=1e-15
        )


def test_a_difference_is_one_operation() -> None:
    source = inspect.getsource(numpy_function([a, b, c], (b - a) * (c - a)))
    assert "-a" not in source.replace(" ", "").replace("b-a", "").replace("c-a", "")


def test_common_parts_are_worked_out_once() -> None:
    angle = a * sympy.sin(b)
    source = inspect.getsource(numpy_function([a, b], sympy.sqrt(angle) + sympy.exp(angle)))
    assert source.count("sin(") == 1
    assert math.isclose(numpy_function([a, b], angle + angle**2)(2.0, 0.0), 0.0)
    longer = a * sympy.sin(b + c)
    three_times = sympy.sqrt(longer) + sympy.exp(longer) + sympy.cos(longer)
    assert inspect.getsource(numpy_function([a, b, c], three_times)).count("sin(") == 1


def test_a_case_in_which_nothing_is_divided_by_nothing() -> None:
    ratio = sympy.Piecewise((c, sympy.Eq(a, 1)), ((1 - a**c) / (1 - a), True))
    function = numpy_function([a, c], ratio)
    with np.errstate(all="ignore"):
        assert function(1.0, 3.0) == 3.0 and function(0.5, 3.0) == pytest.approx(1.75)
        both = function(np.array([1.0, 0.5]), np.array([[3.0], [2.0]]))
    assert both.tolist() == [[3.0, 1.75], [2.0, 1.5]]
