"""What every solver does alike: check what it is asked, and tell what it found.

What it tells has the form in which a derivation explains itself.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import numpy as np

from ropecalc import cautions as caution
from ropecalc.derivation import DomainError, Explanation, Line, Variable, as_number, as_numbers


def named(variable: Variable, name: str, meaning: str, symbol: str | None = None) -> Variable:
    """``variable`` with the name, the meaning and, if given, the symbol of another use of it."""
    return replace(variable, name=name, meaning=meaning, symbol=symbol or variable.symbol)


def checked(*pairs: tuple[Variable, Any]) -> list[Any]:
    """The values as numbers, each inside the domain of its variable.

    Raises :class:`DomainError` for what is no number or lies outside.
    """
    values = [as_numbers(variable.name, value) for variable, value in pairs]
    for (variable, _), value in zip(pairs, values, strict=True):
        variable.check(value)
    return values


def single(*pairs: tuple[Variable, Any]) -> list[float]:
    """The same for what takes one number at a time; :class:`DomainError` for arrays."""
    return [as_number(v.name, value) for (v, _), value in zip(pairs, checked(*pairs), strict=True)]


def one_case(*values: Any) -> None:
    """Raise :class:`DomainError` for arrays: words tell of one case at a time."""
    if any(np.ndim(value) for value in values):
        raise DomainError(
            "an explanation takes single numbers, not arrays. Choose one case for it."
        )


def said(sentence: str, latex: str = "", numbers: str = "", *, law: bool = False) -> Line:
    """One sentence of an account, with an equation where one helps (LaTeX without dollars)."""
    return Line(sentence, latex, numbers, _plain(latex), law, frozenset())


def account(
    title: str,
    lines: Sequence[Line],
    result: str,
    *,
    assumptions: Sequence[str] = (),
    cautions: Sequence[str] = caution.EVERY_RESULT,
    source: str = "worked out here from equilibrium",
) -> Explanation:
    """An :class:`Explanation` from sentences; the quantities are named in the sentences."""
    return Explanation(title, tuple(assumptions), (), tuple(lines), result, tuple(cautions), source)


def _plain(latex: str) -> str:
    """The equation for screen readers: LaTeX without its commands' backslashes and braces."""
    for command, plain in (
        (r"\,", ""),
        (r"\mathrm", ""),
        (r"\vec", ""),
        (r"\cdot", "*"),
        (r"\sum", "sum of"),
        ("\\", ""),
    ):
        latex = latex.replace(command, plain)
    return latex.replace("{", "").replace("}", "")
