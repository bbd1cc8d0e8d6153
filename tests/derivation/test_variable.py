"""Domains, variables, and what counts as a number."""

import math

import numpy as np
import pytest

from ropecalc.derivation import (
    ANY,
    NOT_NEGATIVE,
    POSITIVE,
    Domain,
    DomainError,
    Range,
    Variable,
    as_numbers,
)
from ropecalc.units import Display, Kind
from tests.derivation.toys import LEAN, WIDTH

HALF_OPEN = Domain(0.0, 2.0, low_open=True)


@pytest.mark.parametrize(
    ("domain", "value", "inside"),
    [
        (HALF_OPEN, 0.0, False), (HALF_OPEN, 1e-300, True), (HALF_OPEN, 2.0, True),
        (HALF_OPEN, math.nextafter(2.0, 3.0), False), (Domain(0, 2, high_open=True), 2.0, False),
        (Domain(0, 2), 0.0, True), (ANY, -1e300, True), (ANY, math.inf, False),
        (ANY, -math.inf, False), (ANY, math.nan, False), (POSITIVE, 0.0, False),
        (POSITIVE, math.inf, False), (NOT_NEGATIVE, -0.0, True), (NOT_NEGATIVE, -1e-300, False),
    ],
)  # fmt: skip
def test_the_ends_of_a_domain(domain: Domain, value: float, inside: bool) -> None:
    assert domain.contains(value) is inside
    assert domain.contains(np.array([1.0, value])) is inside
    assert domain.mask(np.array([1.0, value])).tolist() == [True, inside]


def test_one_bad_element_anywhere_is_enough() -> None:
    for place in range(5):
        values = np.linspace(0.5, 1.5, 5)
        for bad in (-1.0, 5.0, math.nan, math.inf):
            values[place] = bad
            assert not HALF_OPEN.contains(values)
            assert HALF_OPEN.mask(values).sum() == 4
    assert HALF_OPEN.contains(np.array([]))


def test_a_domain_in_words() -> None:
    assert HALF_OPEN.describe(Kind.LENGTH, Display()) == "more than 0 m and at most 2.00 m"
    assert Domain(0, math.pi, high_open=True).describe(Kind.ANGLE, Display()) == (
        "at least 0° and less than 180°"
    )
    assert Domain(0.3048, math.inf).describe(Kind.LENGTH, Display(length="ft")) == (
        "at least 1.00 ft"
    )
    assert ANY.describe(Kind.FORCE, Display()) == "a finite number"


def test_a_refusal_says_what_arrived_what_was_expected_and_what_to_do() -> None:
    with pytest.raises(DomainError) as refusal:
        WIDTH.check(-0.25)
    assert str(refusal.value) == (
        "The width of the plate is −0.2500 m; it must be more than 0 m. Change it."
    )
    assert refusal.value.in_units(Display(length="ft")) == (
        "The width of the plate is −0.8202 ft; it must be more than 0 ft. Change it."
    )
    assert refusal.value.keyword == "width"
    assert refusal.value.__notes__ == ["The keyword is width."]
    with pytest.raises(DomainError, match=r"The angle of lean is 200.0°; .* at most 180°"):
        LEAN.check(np.array([0.5, math.radians(200.0), math.radians(300.0)]))
    with pytest.raises(DomainError, match="is not a finite number; it must be more than 0 m"):
        WIDTH.check(math.nan)
    WIDTH.check(np.array([0.1, 5.0]))


def test_a_domain_error_is_a_value_error() -> None:
    assert issubclass(DomainError, ValueError)
    plain = DomainError("Too much. Take less.")
    assert str(plain) == plain.in_units(Display(length="ft")) == "Too much. Take less."
    assert plain.keyword == "" and not hasattr(plain, "__notes__")


@pytest.mark.parametrize("teaching", [Range(-1, 2, 1), Range(1, 2, -1), Range(1, math.inf, 1)])
def test_a_teaching_range_must_lie_in_the_domain(teaching: Range) -> None:
    with pytest.raises(ValueError, match=r"teaching value .* lies outside its domain"):
        Variable("a", "a", "a thing", Kind.LENGTH, POSITIVE, teaching)


def test_symbols_as_plain_text() -> None:
    def plain(symbol: str) -> str:
        return Variable("a", symbol, "a", Kind.LENGTH, ANY, Range(0, 1, 0)).plain_symbol()

    assert plain(r"T_\mathrm{h}") == "T_h"
    assert plain(r"x_{B,\mathrm{lim}}") == "x_B,lim"
    assert plain(r"\alpha_A") == "alpha_A"


def test_numbers_come_through_as_floats() -> None:
    assert as_numbers("a", 2) == 2.0 and type(as_numbers("a", 2)) is float
    assert type(as_numbers("a", np.int64(3))) is float
    assert type(as_numbers("a", np.array(3))) is float
    assert as_numbers("a", (1, 2)).dtype == float
    given = np.array([1.0, 2.0])
    assert as_numbers("a", given) is given
    unveiled = np.ma.masked_array([1.0, 2.0], mask=False)
    assert as_numbers("a", unveiled).tolist() == [1.0, 2.0]


@pytest.mark.parametrize("bad", ["1", b"1", 1j, [1, "2"], {"a": 1}, 10**400, [[1], [1, 2]]])
def test_what_is_no_number_is_named(bad: object) -> None:
    with pytest.raises(DomainError, match=r"^depth is .*; it must be a number or an array"):
        as_numbers("depth", bad)
