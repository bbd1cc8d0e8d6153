"""Frames: what is assumed is said, and stacks of feet or guys are refused."""

import math
from typing import Any

import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.frames import footing, frame_in_space, leg_compression

FEET = [(0.0, 1.0, 0.0), (0.0, -1.0, 0.0)]
GUY = [(3.0, 0.0, 0.0)]


def test_where_the_pull_lands_assumes_that_all_pulls_meet() -> None:
    told = footing(
        inward_pull=500.0, downward_pull=3000.0, head_height=2.0, head_reach=0.3, back_foot=1.5
    ).explain()
    assert told.assumptions == ("All pulls on the head meet in one point.",)


@pytest.mark.parametrize("change", [{"feet": [FEET]}, {"guys": [GUY]}])
def test_stacks_are_refused(change: dict[str, Any]) -> None:
    asked = {"head": (0.3, 0.0, 2.0), "feet": FEET, "pull": (-1500, 0, -3000), "guys": GUY}
    with pytest.raises(DomainError, match="one row for each foot and guy"):
        frame_in_space(**(asked | change))


def test_legs_spread_until_they_lie_flat_carry_nothing() -> None:
    stands = {
        "downward_pull": 3000.0, "guy_tension": 500.0, "guy_depression": 0.5, "head_height": 2.0,
        "head_reach": 0.3,
    }  # fmt: skip
    with pytest.raises(DomainError, match="legs that lie flat carry nothing"):
        leg_compression(**stands, leg_half_spread=math.pi / 2 - 1e-4)
    assert leg_compression(**stands, leg_half_spread=math.pi / 2 - 0.01) > 1e5
