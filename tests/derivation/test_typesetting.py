"""How equations are written: sums begin with what is added, numbers are no longer than they are."""

import pytest
import sympy

from ropecalc.derivation.typesetting import as_latex, as_plain

a, b = sympy.symbols("a b", positive=True)


@pytest.mark.parametrize(
    ("number", "written"),
    [
        ("0.123456789", "0.123"),
        ("1234.56789123", "1.23e+3"),
        ("0.1000004", "0.1"),
        ("9.80665", "9.80665"),
        ("0.45359", "0.45359"),
        ("2.5", "2.5"),
        ("225.0", "225.0"),
    ],
)
def test_a_number_that_was_worked_out_has_three_figures_and_a_constant_its_own(
    number: str, written: str
) -> None:
    value = sympy.Float(number, 8 if len(number) < 9 else 15)
    assert as_plain(value * a) == f"{written}*a"


def test_a_sum_begins_with_what_is_added() -> None:
    assert as_plain(b - a) == "b - a" and as_plain(a - b) == "a - b"
    assert as_latex(b - a) == "b - a" and as_plain(a**2) == "a^2"
