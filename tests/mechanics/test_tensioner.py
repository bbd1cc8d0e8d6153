"""Lines in series against tensions followed from sheave to sheave."""

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.tensioner import effective_lines


def followed(efficiency: float, lines: int, at_tensioner: float) -> list[float]:
    """The tension of every line, one sheave at a time, starting at the tensioner."""
    tensions, tension = [], at_tensioner
    for _ in range(lines):
        tensions.append(tension)
        for _sheave in range(2):
            tension = tension * efficiency
    return tensions


@pytest.mark.parametrize("efficiency", [0.6, 0.75, 0.9, 0.97, 0.999])
@pytest.mark.parametrize("lines", [1, 2, 3, 4, 7])
def test_all_lines_over_the_worst_one(efficiency: float, lines: int) -> None:
    tensions = followed(efficiency, lines, at_tensioner=1700.0)
    expected = sum(tensions) / max(tensions)
    assert effective_lines(efficiency=efficiency, lines=lines) == pytest.approx(expected, rel=1e-12)


def test_hand_worked_case() -> None:
    # 0.9 squared is 0.81: two lines are worth 1.81, three 1.81 + 0.6561
    assert effective_lines(efficiency=0.9, lines=2) == pytest.approx(1.81)
    assert effective_lines(efficiency=0.9, lines=3) == pytest.approx(2.4661)


def test_limits() -> None:
    assert effective_lines(efficiency=1 - 1e-7, lines=4) == pytest.approx(4, rel=1e-5)
    assert effective_lines(efficiency=0.01, lines=4) == pytest.approx(1, rel=1e-3)


def test_more_lines_are_always_worth_more_but_never_their_number() -> None:
    for efficiency in np.linspace(0.3, 0.97, 12):
        worth = effective_lines(efficiency=efficiency, lines=np.arange(1, 8))
        assert (np.diff(worth) > 0).all()
        assert (worth[1:] < np.arange(2, 8)).all()


def test_without_any_loss_or_without_lines_it_is_refused() -> None:
    with pytest.raises(DomainError, match="efficiency"):
        effective_lines(efficiency=0.0, lines=2)
    with pytest.raises(DomainError, match="lines"):
        effective_lines(efficiency=0.9, lines=0)
