"""Each derived formula against the same one written by hand, which measurements compare it with."""

import numpy as np
import pytest

from tests.bench.bench_numeric import BY_HAND
from tests.mechanics.every import EVERY, draw


def test_every_derivation_has_its_formula_by_hand() -> None:
    """What is missing is named: write it into BY_HAND in tests/bench/bench_numeric.py."""
    missing, gone = EVERY.keys() - BY_HAND.keys(), BY_HAND.keys() - EVERY.keys()
    assert not missing, f"without a formula by hand: {', '.join(sorted(missing))}"
    assert not gone, f"by hand, but derived no more: {', '.join(sorted(gone))}"


@pytest.mark.parametrize("name", sorted(BY_HAND))
def test_the_derived_formula_is_the_one_by_hand(name: str) -> None:
    values = draw(EVERY[name], 200, seed=17)
    found = EVERY[name](**values)
    np.testing.assert_allclose(found, BY_HAND[name](**values), rtol=1e-9, atol=1e-9)
