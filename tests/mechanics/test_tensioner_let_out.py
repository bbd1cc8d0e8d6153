"""A tensioner that is let out, against a walk along its rope and against taking in."""

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.tensioner_let_out import line_let_out
from ropecalc.mechanics.tensioner_lines import line_taken_in


def strands(lines: int, efficiency: float, pull: float) -> list[float]:
    """Walk along the rope from the device; each sheave leaves its share of what pulls beyond."""
    found = [pull]
    while len(found) < 2 * lines:
        found.append(found[-1] / efficiency)
    return found


@pytest.mark.parametrize(("lines", "efficiency"), [(2, 0.9), (3, 0.85), (4, 0.7)])
def test_each_line_carries_its_two_strands(lines: int, efficiency: float) -> None:
    rope = strands(lines, efficiency, 500.0)
    for number in range(1, lines + 1):
        found = line_let_out(device_pull=500.0, efficiency=efficiency, line=float(number))
        assert found == pytest.approx(rope[2 * number - 2] + rope[2 * number - 1])


def test_a_published_case() -> None:
    lines = np.array([3.0, 2.0, 1.0])
    found = line_let_out(device_pull=648.65, efficiency=0.85, line=lines) / 1000
    assert found == pytest.approx([2.70, 1.95, 1.41], abs=0.006)
    assert found.sum() == pytest.approx(6.07, abs=0.006)


def test_without_friction_it_makes_no_difference_which_way_the_rope_last_went() -> None:
    for line in (1.0, 3.0):
        values = {"device_pull": 700.0, "efficiency": 1.0, "line": line}
        assert line_let_out(**values) == pytest.approx(line_taken_in(**values))
    assert line_let_out(device_pull=700.0, efficiency=0.8, line=2.0) > line_taken_in(
        device_pull=700.0, efficiency=0.8, line=2.0
    )


def test_what_makes_no_sense_is_refused() -> None:
    with pytest.raises(DomainError):
        line_let_out(device_pull=700.0, efficiency=1.1, line=2.0)
    with pytest.raises(DomainError):
        line_let_out(device_pull=700.0, efficiency=0.9, line=0.0)
