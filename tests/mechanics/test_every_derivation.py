"""What must hold for each derivation of the mechanics, whatever it is about."""

import math
import re
from typing import Any

import numpy as np
import pytest
import sympy
from scipy.optimize import brentq
from sympy.core.function import AppliedUndef

from ropecalc import cautions
from ropecalc.derivation import Derivation, DomainError, Variable
from ropecalc.units import Display
from tests.mechanics.every import EVERY, draw, points

every = pytest.mark.parametrize("derivation", EVERY.values(), ids=EVERY.keys())
AMERICAN = Display(force="lbf", length="ft", mass="lb")
EXACT_CONSTANTS = {"9.80665"}
"""Numbers that an explanation may write out in full."""


def test_there_is_something_to_test() -> None:
    assert len(EVERY) >= 32


# --- the argument ----------------------------------------------------------------------------


def _functions_put_in(equations: list[Any]) -> list[Any]:
    """Equations with every unknown function replaced by the solution found further on."""
    for equation in equations:
        if isinstance(equation.lhs, AppliedUndef) and not equation.rhs.atoms(AppliedUndef):
            name = equation.lhs.func
            solution = sympy.Lambda(equation.lhs.args, equation.rhs)
            equations = [
                sympy.Eq(*(side.replace(name, solution).doit() for side in e.args), evaluate=False)
                for e in equations
            ]
    return equations


def _root(gap: Any, low: float, high: float) -> float:
    """A root of a function of one variable inside its domain, found without algebra."""
    if low > -math.inf and high < math.inf:
        grid = np.linspace(low, high, 2002)[1:-1]
    else:
        positive = np.geomspace(1e-6, 1e9, 2001)
        grid = np.concatenate([-positive[::-1], [0.0], positive])
        grid = grid[(grid >= low) & (grid <= high)]
    with np.errstate(all="ignore"):  # what is not a number there brackets nothing
        values = np.array([gap(x) for x in grid])
        change = np.flatnonzero(values[:-1] * values[1:] <= 0)
    for i in change:
        root = float(brentq(gap, grid[i], grid[i + 1], xtol=1e-300, rtol=1e-15))
        if abs(gap(root)) < 1e-6 * (1 + abs(values[i]) + abs(values[i + 1])):  # not a pole
            return root
    raise AssertionError("no root inside the domain")


def _solve_chain(derivation: Derivation, point: dict[str, float]) -> dict[Any, float]:
    """Numbers for every symbol: the given ones, the result as it is called, the rest from steps.

    A quantity that drops out (the load in a ratio) is free: it gets its teaching default.
    """
    known = {derivation.symbol(name): value for name, value in point.items()}
    known[derivation.symbol(derivation.result.name)] = derivation(**point)
    equations = _functions_put_in([step.equation for step in derivation.steps])
    variables = {derivation.symbol(v.name): v for v in derivation.variables}
    while True:
        missing = [(e, e.free_symbols - set(known)) for e in equations]
        if not any(symbols for _, symbols in missing):
            return known
        single = [(e, *symbols) for e, symbols in missing if len(symbols) == 1]
        for equation, symbol in single:
            gap = sympy.lambdify(symbol, (equation.lhs - equation.rhs).subs(known), "numpy")
            teaching = variables[symbol].teaching
            if abs(gap(teaching.high) - gap(teaching.low)) > 1e-9:  # else it drops out here
                domain = variables[symbol].domain
                known[symbol] = _root(gap, domain.low, domain.high)
                break
        else:
            free = next(s for s in variables if any(s in symbols for _, symbols in missing))
            known[free] = variables[free].teaching.default


@every
def test_every_step_holds_at_sampled_values(derivation: Derivation) -> None:
    equations = _functions_put_in([step.equation for step in derivation.steps])
    for point in points(draw(derivation, 8, seed=11)):
        numbers = _solve_chain(derivation, point)
        for equation in equations:
            left, right = (complex(side.subs(numbers).evalf()) for side in equation.args)
            size = max(abs(left), abs(right), _largest_term(equation, numbers))
            assert abs(left - right) <= 1e-9 * size, f"{equation} at {point}"


def _largest_term(equation: Any, numbers: dict[Any, float]) -> float:
    """What rounding is measured against when two large terms leave a small difference."""
    terms = [
        t for side in equation.args for t in sympy.Add.make_args(sympy.expand(side, deep=False))
    ]
    return max((abs(complex(t.subs(numbers).evalf())) for t in terms), default=0.0) + 1e-12


@every
def test_an_argument_starts_with_a_law_and_ends_in_the_result(derivation: Derivation) -> None:
    steps = derivation.steps
    assert steps[0].operation == "law"
    assert steps[-1].equation.lhs == derivation.symbol(derivation.result.name)
    assert steps[-1].equation.rhs == derivation.expression
    given = {derivation.symbol(v.name) for v in derivation.given}
    assert derivation.expression.free_symbols <= given
    for step in steps:
        assert step.sentence[0].isupper() and step.sentence.endswith("."), step.sentence


@every
def test_the_mathematics_names_only_what_is_explained(derivation: Derivation) -> None:
    symbols = {derivation.symbol(v.name) for v in derivation.variables}
    for step in derivation.steps:
        assert step.equation.free_symbols <= symbols
    assert len({v.symbol for v in derivation.variables}) == len(derivation.variables)
    assert len({v.name for v in derivation.variables}) == len(derivation.variables)


@every
def test_cautions_and_source_travel_with_the_result(derivation: Derivation) -> None:
    assert (cautions.STATIC in derivation.cautions) != (cautions.STRETCHING in derivation.cautions)
    assert cautions.AUTHORITY in derivation.cautions
    assert derivation.source and derivation.description and derivation.title


# --- numbers ---------------------------------------------------------------------------------


@every
def test_the_result_lies_in_its_domain(derivation: Derivation) -> None:
    results = derivation(**draw(derivation, 400, seed=2))
    assert len(results) >= 100
    assert derivation.result.domain.contains(results)


@every
def test_scalars_and_arrays_agree(derivation: Derivation) -> None:
    values = draw(derivation, 40, seed=3)
    together = derivation(**values)
    one_by_one = [derivation(**point) for point in points(values)]
    assert all(type(result) is float for result in one_by_one)
    np.testing.assert_allclose(together, one_by_one, rtol=1e-13)
    symbols = {derivation.symbol(name): value for name, value in points(values)[0].items()}
    assert one_by_one[0] == pytest.approx(float(derivation.expression.subs(symbols)), rel=1e-9)


@every
def test_values_broadcast(derivation: Derivation) -> None:
    values = draw(derivation, 200, seed=4)
    name = derivation.given[0].name
    rest = {n: float(v[0]) for n, v in values.items() if n != name}
    column = values[name].reshape(-1, 1)
    column = column[derivation.valid(**{name: column}, **rest).ravel()][:3]
    table = derivation(**{name: column}, **rest)
    assert table.shape == column.shape and len(column) == 3
    wide = derivation(**{name: column}, **{n: np.full(4, v) for n, v in rest.items()})
    assert wide.shape == (len(column), 4 if rest else 1)
    np.testing.assert_allclose(wide, np.broadcast_to(table, wide.shape), rtol=1e-14)


@every
def test_integers_and_lists_are_numbers_too(derivation: Derivation) -> None:
    point = points(draw(derivation, 1, seed=5))[0]
    listed = derivation(**{name: [value] for name, value in point.items()})
    assert listed.tolist() == pytest.approx([derivation(**point)], rel=1e-14)
    name = derivation.given[0].name
    whole = {**point, name: round(point[name])}
    if derivation.valid(**whole):
        assert derivation(**whole) == derivation(**{**whole, name: float(whole[name])})
        assert derivation(**{**whole, name: np.int64(whole[name])}) == derivation(**whole)


# --- refusals --------------------------------------------------------------------------------


@every
@pytest.mark.parametrize("bad", [math.nan, math.inf, -math.inf, None])
def test_what_is_not_finite_is_refused(derivation: Derivation, bad: float) -> None:
    point = points(draw(derivation, 1))[0]
    for variable in derivation.given:
        with pytest.raises(DomainError, match="not a finite number") as refusal:
            derivation(**{**point, variable.name: bad})
        assert variable.meaning in str(refusal.value)
        assert refusal.value.keyword == variable.name
        with pytest.raises(DomainError, match="not a finite number"):
            derivation(**{**point, variable.name: np.array([point[variable.name], np.nan])})
        assert not derivation.valid(**{**point, variable.name: bad})


@every
@pytest.mark.parametrize("bad", ["2000", "two", 1 + 2j, 10**400, [[1.0], [1.0, 2.0]], object()])
def test_what_is_no_number_is_refused(derivation: Derivation, bad: Any) -> None:
    point = points(draw(derivation, 1))[0]
    for variable in derivation.given:
        with pytest.raises(DomainError, match="must be a number or an array of numbers in SI") as r:
            derivation(**{**point, variable.name: bad})
        assert str(r.value).startswith(variable.name) and len(str(r.value)) < 250


@every
def test_values_outside_a_domain_are_refused_in_words(derivation: Derivation) -> None:
    point = points(draw(derivation, 1))[0]
    for variable in derivation.given:
        domain = variable.domain
        outside = []
        if domain.low > -math.inf:
            outside.append(domain.low - 1e-9 - (1e-9 * abs(domain.low)))
            outside += [domain.low] if domain.low_open else []
        if domain.high < math.inf:
            outside.append(domain.high + 1e-9 * abs(domain.high))
            outside += [domain.high] if domain.high_open else []
        for value in outside:
            with pytest.raises(DomainError) as refusal:
                derivation(**{**point, variable.name: value})
            text = str(refusal.value)
            assert text.startswith(f"The {variable.meaning} is ")
            assert "it must be " in text and text.endswith("Change it.")
            assert refusal.value.keyword == variable.name


def _ends(variable: Variable, seed: int) -> list[float]:
    """The ends of a domain (0 for one without), and places of which many are right next to them."""
    domain, teaching = variable.domain, variable.teaching
    ends = [end if abs(end) < math.inf else 0.0 for end in (domain.low, domain.high)]
    low = domain.low if domain.low > -math.inf else teaching.low
    high = domain.high if domain.high < math.inf else teaching.high
    inside = [math.nextafter(low, math.inf), math.nextafter(high, -math.inf), teaching.default]
    return ends + np.random.default_rng(seed).choice(inside, 60).tolist()


@every
def test_each_condition_refuses_with_its_remedy(derivation: Derivation) -> None:
    values = {
        v.name: np.append(column, _ends(v, seed))
        for seed, (v, column) in enumerate(
            zip(derivation.given, draw(derivation, 3000, seed=6, stretch=3.0).values(), strict=True)
        )
    }
    inside = np.ones(len(next(iter(values.values()))), bool)
    for variable in derivation.given:
        inside &= variable.domain.mask(values[variable.name])
    for condition in derivation.conditions:
        with np.errstate(all="ignore"):  # outside the domains
            holds = condition.holds(values)
        broken = np.flatnonzero(inside & ~holds)
        assert len(broken), f"never broken: {condition.sentence}"
        point = {name: float(column[broken[0]]) for name, column in values.items()}
        with pytest.raises(DomainError) as refusal:
            derivation(**point)
        assert str(refusal.value) == f"{condition.sentence} {condition.remedy}"
        inside &= holds


@every
def test_names_are_checked(derivation: Derivation) -> None:
    point = points(draw(derivation, 1))[0]
    first, *others = point
    with pytest.raises(TypeError, match=f"takes .*missing: {first}"):
        derivation(**{name: point[name] for name in others})
    with pytest.raises(TypeError, match="unknown: weather"):
        derivation(**point, weather=1.0)
    with pytest.raises(TypeError, match="unknown: weather"):
        derivation.masked(**point, weather=1.0)


@every
def test_masked_results_hide_exactly_what_is_refused(derivation: Derivation) -> None:
    values = draw(derivation, 10, seed=7, stretch=1.0)
    inside = draw(derivation, 100, seed=8)
    values = {name: np.concatenate([values[name], inside[name]]) for name in values}
    masked = derivation.masked(**values)
    hidden = np.ma.getmaskarray(masked)
    for i, point in enumerate(points(values)):
        try:
            expected = derivation(**point)
        except DomainError:
            assert hidden[i], point
        else:
            assert not hidden[i], point
            assert masked[i] == pytest.approx(expected, rel=1e-13)
            assert derivation.valid(**point)
    assert not hidden[-100:].any()


@every
def test_a_mask_that_comes_in_goes_out(derivation: Derivation) -> None:
    values = draw(derivation, 5, seed=9)
    name = derivation.given[-1].name
    veiled = np.ma.masked_array(values[name], mask=[False, True, False, False, True])
    result = derivation.masked(**{**values, name: veiled})
    assert np.ma.getmaskarray(result).tolist() == [False, True, False, False, True]
    with pytest.raises(DomainError, match="masked points"):
        derivation(**{**values, name: veiled})


# --- explanations ----------------------------------------------------------------------------

LONG = re.compile(r"(?<![\d.])\d+\.?\d*(?:e[-+]?\d+)?")


def _too_long(text: str) -> list[str]:
    """Numbers with more than three figures, apart from whole ones that end in zeros."""
    numbers = LONG.findall(text)
    figures = {n: n.lower().split("e")[0].replace(".", "").lstrip("0") for n in numbers}
    return [
        n
        for n, f in figures.items()
        if n not in EXACT_CONSTANTS and len(f if "." in n else f.rstrip("0")) > 3
    ]


def test_the_search_for_long_numbers_finds_them() -> None:
    assert _too_long("1234 and 0.12345 and 1.0000 and 1.23456e-5") == [
        "1234", "0.12345", "1.0000", "1.23456e-5",
    ]  # fmt: skip
    assert _too_long("2460 and 0.00123 and 12.3 and 120 and 1.00") == []


@every
@pytest.mark.parametrize("display", [Display(), AMERICAN, Display(force="kgf", length="cm")])
def test_explanations_carry_three_figures_at_most(derivation: Derivation, display: Display) -> None:
    for point in points(draw(derivation, 3, seed=10)):
        explanation = derivation.explain(display, **point)
        answer = derivation(**point)
        shown = display.show(answer, derivation.result.kind)
        assert explanation.result.endswith(f": {shown}")
        for line in explanation.lines:
            assert _too_long(line.numbers) == [], line.numbers
            assert _too_long(line.text) == [] and _too_long(line.latex) == []
            assert not re.search(r"nan|inf(?!t)|zoo|oo\b", line.numbers)
            assert line.latex.count("{") == line.latex.count("}")
            assert line.numbers.count("{") == line.numbers.count("}")
            assert line.numbers.count(r"\left(") == line.numbers.count(r"\right)")
            assert "**" not in line.text and "Derivative" not in line.numbers
            assert not line.numbers.lstrip().startswith("="), line.numbers
            assert r"\frac{d}{d" not in line.numbers


@every
def test_the_last_line_gives_the_result(derivation: Derivation) -> None:
    point = points(draw(derivation, 1, seed=12))[0]
    for display in (Display(), AMERICAN):
        last = derivation.explain(display, **point).lines[-1].numbers
        answer = derivation(**point)
        if derivation.result.in_si:
            continue
        assert last.endswith("= " + display.latex(answer, derivation.result.kind))


@every
def test_without_numbers_the_argument_stays_symbolic(derivation: Derivation) -> None:
    explanation = derivation.explain()
    assert explanation.result == ""
    assert all(line.numbers == "" for line in explanation.lines)
    assert len(explanation.lines) == len(derivation.steps)
    text = explanation.as_text()
    assert text.startswith(derivation.title) and "\\" not in text
    assert explanation.cautions == derivation.cautions and explanation.source == derivation.source
    assert {s for s, _ in explanation.meanings} == {v.symbol for v in derivation.variables}


# --- turned round ----------------------------------------------------------------------------


@every
def test_a_value_that_is_found_gives_the_target(derivation: Derivation) -> None:
    found = 0
    for point in points(draw(derivation, 3, seed=13)):
        target = derivation(**point)
        for name in point:
            others = {n: v for n, v in point.items() if n != name}
            try:
                value = derivation.find(name, target, **others)
            except DomainError as refusal:
                assert "is reached" in str(refusal)
                continue
            found += 1
            size = abs(target) + 1e-9
            assert derivation(**{name: value}, **others) == pytest.approx(target, abs=1e-9 * size)
    assert found or derivation.expression.has(sympy.ceiling)  # which jumps over its targets
