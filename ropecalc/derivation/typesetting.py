"""How equations are written: a - b, never -b + a. Importing this imports sympy."""

from typing import Any

from sympy.printing.latex import LatexPrinter
from sympy.printing.str import StrPrinter

_DECIMALS = 5
"""As many as the constant with most of them has, standard gravity."""


class _PositiveFirst:
    """Sums begin with a term that is added, if they have one."""

    def _as_ordered_terms(self, expr: Any, order: Any = None) -> Any:
        terms = super()._as_ordered_terms(expr, order)  # type: ignore[misc]
        return sorted(terms, key=lambda term: bool(term.could_extract_minus_sign()))

    def _print_Float(self, expr: Any) -> Any:
        """A number that was worked out is shown to three figures; a constant as it is known."""
        value = float(expr)
        worked_out = abs(value - round(value, _DECIMALS)) > 10 ** -(_DECIMALS + 2)
        return super()._print_Float(expr.n(3) if worked_out else expr)  # type: ignore[misc]


class _Latex(_PositiveFirst, LatexPrinter):
    pass


class _Plain(_PositiveFirst, StrPrinter):
    def _print_Piecewise(self, expr: Any) -> str:
        """Cases in words; the last one is what is left."""
        *cases, (left, _) = expr.args
        said = [
            f"{self._print(value)} if {self._print(when.lhs)} = {self._print(when.rhs)}"
            for value, when in cases
        ]
        return f"({', '.join(said)}, otherwise {self._print(left)})"


def as_latex(expression: Any, **settings: Any) -> str:
    """LaTeX without dollar signs; inverse functions as on a calculator's keys."""
    return str(_Latex({"inv_trig_style": "power", **settings}).doprint(expression))


def as_plain(expression: Any) -> str:
    """Plain text on one line, powers with ``^``."""
    return str(_Plain().doprint(expression)).replace("**", "^")
