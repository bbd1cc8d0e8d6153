"""Bisection against functions whose roots are known."""

import numpy as np
import pytest

from ropecalc.mechanics.roots import bisected


def test_many_roots_at_once() -> None:
    wanted = np.linspace(-3.0, 5.0, 41)
    found = bisected(lambda x: wanted - x, -10.0, np.full(41, 7.0))
    np.testing.assert_allclose(found, wanted, atol=1e-14)


def test_a_single_number_stays_single() -> None:
    found = bisected(lambda x: 2.0 - x**2, 0.0, 3.0)
    assert np.ndim(found) == 0
    assert found == pytest.approx(np.sqrt(2.0), abs=1e-15)


@pytest.mark.parametrize(("level", "end"), [(5.0, 3.0), (-5.0, 1.0)])
def test_without_a_change_of_sign_it_ends_at_an_end(level: float, end: float) -> None:
    assert bisected(lambda x: level - 0 * x, 1.0, 3.0) == pytest.approx(end, abs=1e-15)


def test_zero_width() -> None:
    assert bisected(lambda x: x, 2.0, 2.0) == 2.0


def test_the_ends_are_left_as_they_were() -> None:
    low, high = np.zeros(3), np.ones(3)
    bisected(lambda x: 0.3 - x, low, high)
    assert low.tolist() == [0, 0, 0] and high.tolist() == [1, 1, 1]
