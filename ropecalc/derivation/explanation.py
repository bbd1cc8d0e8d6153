"""An argument made readable: sentences and mathematics, with symbols or with numbers."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import pi
from typing import Any

from ropecalc.derivation.argument import Step
from ropecalc.derivation.variable import Variable
from ropecalc.units import Display, Kind

_SI = Display(force="N", length="m", mass="kg", angle="rad")


@dataclass(frozen=True)
class Line:
    """One step as it is shown: what is done, the equation, and the same with numbers.

    ``latex`` and ``numbers`` are LaTeX without dollar signs (``numbers`` is empty when no
    values were given or when they change nothing); ``text`` is the equation for screen readers;
    ``uses`` names the quantities that stand in the equation, by their LaTeX symbols.
    """

    sentence: str
    latex: str
    numbers: str
    text: str
    is_law: bool
    uses: frozenset[str]


@dataclass(frozen=True)
class Explanation:
    """The whole argument of a result, ready for a screen or a sheet of paper."""

    title: str
    assumptions: tuple[str, ...]
    meanings: tuple[tuple[str, str], ...]
    lines: tuple[Line, ...]
    result: str
    cautions: tuple[str, ...]
    source: str

    def as_text(self) -> str:
        """Plain text: one numbered line a step, then the result."""
        parts = [self.title, *(f"Assumed: {a}" for a in self.assumptions)]
        parts += [f"{i}. {line.sentence} {line.text}" for i, line in enumerate(self.lines, 1)]
        return "\n".join(parts + ([self.result] if self.result else []))


def explain_steps(
    steps: Sequence[Step],
    symbols: Mapping[str, Any],
    variables: Sequence[Variable],
    known: Mapping[str, float],
    display: Display,
) -> tuple[Line, ...]:
    """Turn ``steps`` into lines. ``known`` holds SI values by variable name.

    Given values are written into every step; a quantity that a step has just found is
    evaluated and appended, and used from the next step on.
    """
    from ropecalc.derivation.typesetting import as_latex

    by_symbol = {symbols[v.name]: v for v in variables}
    plain_names = {s: v.plain_symbol() for s, v in by_symbol.items()}
    values = {symbols[name]: value for name, value in known.items()}
    lines = []
    for step in steps:
        found = step.equation.lhs if step.equation.lhs in by_symbol else None
        value = _value(step.equation.rhs, values) if found is not None else None
        numbers = _with_numbers(step.equation, found, values, by_symbol, display)
        if found is not None and value is not None:
            if numbers:
                numbers += " = " + _typeset(by_symbol[found], value, display)
            values = {found: value} | values
        lines.append(
            Line(
                step.sentence,
                as_latex(step.equation),
                numbers,
                _plain(step.equation, plain_names),
                step.operation == "law",
                frozenset(by_symbol[s].symbol for s in step.equation.free_symbols),
            )
        )
    return tuple(lines)


def _value(expression: Any, values: Mapping[Any, float]) -> float | None:
    """The number an expression stands for, or None while something in it is still unknown."""
    from sympy import Float
    from sympy.core.function import AppliedUndef

    known = bool(values) and expression.free_symbols <= set(values)
    if not known or expression.atoms(AppliedUndef):
        return None
    return float(expression.xreplace({symbol: Float(value) for symbol, value in values.items()}))


def _with_numbers(
    equation: Any,
    found: Any,
    values: Mapping[Any, float],
    by_symbol: Mapping[Any, Variable],
    display: Display,
) -> str:
    """The equation with numbers for what is known; what a step finds stays a symbol on its left."""
    from sympy import Derivative, Dummy

    from ropecalc.derivation.typesetting import as_latex

    known = {s: v for s, v in values.items() if s != found}
    equation = _case_that_holds(equation, known)
    half_turn = Dummy("half_turn")
    if not equation.free_symbols & set(known) or equation.has(Derivative):
        return ""  # nothing to put in, or a rate of change, which has no place for a number
    names = {
        s: _inside(by_symbol[s], v, display, _is_raised(equation, s)) for s, v in known.items()
    }
    shown = _angles_beside(equation, known, by_symbol, half_turn)
    names[half_turn] = display.latex(pi, Kind.ANGLE)
    return as_latex(shown, symbol_names=names, mul_symbol="times")


def _angles_beside(
    equation: Any, known: Mapping[Any, float], by_symbol: Mapping[Any, Variable], half_turn: Any
) -> Any:
    """The equation with ``half_turn`` for π where π stands in a sum with angles in display units.

    A half-turn beside 66° is 180°, not 3.14.
    """
    from sympy import pi as half

    angles = {s for s in known if by_symbol[s].kind is Kind.ANGLE and not by_symbol[s].in_si}

    def beside_angles(part: Any) -> bool:
        return bool(part.is_Add and part.has(half) and part.free_symbols & angles)

    return equation.replace(beside_angles, lambda part: part.xreplace({half: half_turn}))


def _case_that_holds(equation: Any, known: Mapping[Any, float]) -> Any:
    """The equation with only the case that ``known`` values meet, where it tells cases apart."""
    from sympy import Float, Piecewise, false, true

    values = {symbol: Float(value) for symbol, value in known.items()}

    def chosen(cases: Any) -> Any:
        for expression, when in cases.args:
            met = when.xreplace(values)
            if met is true:
                return expression
            if met is not false:  # something in the condition is still unknown
                break
        return cases

    return equation.replace(lambda part: isinstance(part, Piecewise), chosen)


def _typeset(variable: Variable, value: float, display: Display) -> str:
    return (_SI if variable.in_si else display).latex(value, variable.kind)


def _inside(variable: Variable, value: float, display: Display, raised: bool) -> str:
    """A value as it stands inside a formula: in brackets where a sign or a power could mislead."""
    text = _typeset(variable, value, display)
    return rf"\left({text}\right)" if raised or value < 0 else text


def _is_raised(equation: Any, symbol: Any) -> bool:
    from sympy import Pow

    return any(power.base == symbol and power.exp != -1 for power in equation.atoms(Pow))


def _plain(equation: Any, names: Mapping[Any, str]) -> str:
    from sympy import Symbol

    from ropecalc.derivation.typesetting import as_plain

    plain = {symbol: Symbol(name) for symbol, name in names.items()}
    left, right = (as_plain(side.xreplace(plain)) for side in equation.args)
    return f"{left} = {right}"
