"""Corners of an explanation: what counts as a law, and which numbers stand in brackets."""

from ropecalc.derivation import Argument, Step, derive
from tests.derivation.toys import DEPTH, DIAGONAL, PULL, SHIFT, WIDTH


@derive("A quotient", given=(WIDTH, DEPTH, SHIFT), result=DIAGONAL, between=(PULL,))
def quotient(argument: Argument) -> Step:
    """Every kind of step once."""
    w, d, s, g, p = argument.symbols(WIDTH, DEPTH, SHIFT, DIAGONAL, PULL)
    one = argument.law("A law.", p, w * (w + d))
    opened = argument.apply("Multiply out.", one, argument.sympy.expand)
    argument.differentiate("Slope.", opened, w, s)
    argument.combine("Double both sides.", lambda side: 2 * side, one)
    return argument.law("A quotient with a shift.", g, w / d + d**2 + s)


def test_only_laws_are_laws() -> None:
    lines = quotient.explain().lines
    assert [line.is_law for line in lines] == [True, False, False, False, True]


def test_a_power_stands_in_brackets_and_a_zero_does_not() -> None:
    explained = quotient.explain(width=2.0, depth=4.0, shift=0.0).lines[-1].numbers
    assert r"\left(4.00\,\mathrm{m}\right)^{2}" in explained
    assert r"\left(0" not in explained
    below = quotient.explain(width=2.0, depth=4.0, shift=-1.0).lines[-1].numbers
    assert r"\left(-1.00\,\mathrm{m}\right)" in below


def test_a_plain_denominator_has_no_brackets() -> None:
    @derive("Only a quotient", given=(WIDTH, DEPTH), result=DIAGONAL)
    def only(argument: Argument) -> Step:
        w, d, g = argument.symbols(WIDTH, DEPTH, DIAGONAL)
        return argument.law("A quotient.", g, w / d)

    assert only.explain(width=2.0, depth=4.0).lines[0].numbers == (
        r"g = \frac{2.00\,\mathrm{m}}{4.00\,\mathrm{m}} = 0.500\,\mathrm{m}"
    )


def test_cases_are_told_in_words() -> None:
    @derive("With a case apart", given=(WIDTH, DEPTH), result=DIAGONAL)
    def apart(argument: Argument) -> Step:
        w, d, g = argument.symbols(WIDTH, DEPTH, DIAGONAL)
        cases = argument.sympy.Piecewise((d, argument.sympy.Eq(w, 1)), (w + d, True))
        return argument.law("Two cases.", g, cases)

    assert apart.explain().lines[0].text == "g = (d if w = 1, otherwise d + w)"
    one, other = (apart.explain(width=w, depth=4.0).lines[0].numbers for w in (1.0, 2.0))
    assert one == r"g = 4.00\,\mathrm{m} = 4.00\,\mathrm{m}"
    assert other == r"g = 4.00\,\mathrm{m} + 2.00\,\mathrm{m} = 6.00\,\mathrm{m}"
