"""A formula as a numpy function that makes no more passes over its arrays than it must."""

from collections.abc import Callable, Sequence
from typing import Any

import numpy as np


def numpy_function(symbols: Sequence[Any], expression: Any) -> Callable[..., Any]:
    """``expression`` as a function of ``symbols`` in order, for floats and arrays alike.

    Common parts are worked out once where that saves operations, and positive terms are written
    first: ``z_D - z`` is one operation, ``-z + z_D`` would be two.
    """
    from sympy import Piecewise, count_ops, cse, lambdify
    from sympy.printing.numpy import NumPyPrinter

    class PositiveFirst(NumPyPrinter):
        def _as_ordered_terms(self, expr: Any, order: Any = None) -> list[Any]:
            terms = super()._as_ordered_terms(expr, order=order)
            return sorted(terms, key=lambda term: term.could_extract_minus_sign())

    parts, rest = cse(expression, list=False)
    saves = sum(count_ops(part) for _, part in parts) + count_ops(rest) < count_ops(expression)
    printer = PositiveFirst(
        {"fully_qualified_modules": False, "inline": True, "allow_unknown_functions": True}
    )
    function: Callable[..., Any] = lambdify(
        symbols, expression, modules="numpy", printer=printer, cse=saves
    )
    if not expression.has(Piecewise):
        return function
    # All cases are worked out before one is chosen: in those that are not, dividing by nothing
    # must not raise, as it would for plain floats.
    return lambda *values: function(*(np.asarray(value) for value in values))
