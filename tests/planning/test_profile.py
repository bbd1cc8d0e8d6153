"""The wall: what it accepts, where its rock is, which corners stick out."""

import math

import pytest

from ropecalc.planning.profile import ProfileError, WallProfile
from tests.planning.building import outcrop


def test_rock_is_straight_between_corners() -> None:
    wall = WallProfile.through([(0, 0), (2, 10), (1, 20)])
    assert wall.rock_at(5) == pytest.approx(1.0)
    assert wall.rock_at(15) == pytest.approx(1.5)
    assert wall.rock_at(10) == 2


def test_there_is_no_rock_outside_the_survey() -> None:
    wall = WallProfile.through([(0, 0), (2, 10)])
    assert wall.rock_at(-0.1) == -math.inf
    assert wall.rock_at(10.1) == -math.inf


def test_a_roof_reaches_as_far_as_its_edge() -> None:
    wall = WallProfile.through([(0, 0), (0, 5), (2, 5), (2, 8)])
    assert wall.rock_at(5) == 2
    assert wall.rock_at(4.999) == pytest.approx(0)


def test_corners_that_stick_out() -> None:
    tips = [(p.offset, p.height) for p in WallProfile.through(outcrop(25)).outward_corners()]
    assert tips == [(1.7, 25.0), (0.0, 30.0)]
    roof = WallProfile.through([(0, 0), (0, 5), (2, 5), (2, 8), (0, 8), (0, 9)])
    assert [(p.offset, p.height) for p in roof.outward_corners()] == [(2, 5), (2, 8), (0, 9)]


def test_a_wall_that_leans_back_sticks_out_at_its_foot() -> None:
    wall = WallProfile.through([(1, 0), (0, 10)])
    assert [p.offset for p in wall.outward_corners()] == [1]


@pytest.mark.parametrize(
    ("points", "row", "words"),
    [
        ([], 0, "0 surveyed points"),
        ([(0, 0)], 0, "1 surveyed point,"),
        ([(0, 0), (0, 5), (1, 4)], 3, "folds back"),
        ([(0, 0), (math.nan, 5)], 2, "not a finite number"),
        ([(0, 0), (1, math.inf)], 2, "not a finite number"),
        ([(0, 3), (1, 3)], 0, "at one height"),
        ([(0, float(z)) for z in range(201)], 0, "201 surveyed points"),
    ],
)
def test_what_is_no_wall_is_refused(
    points: list[tuple[float, float]], row: int, words: str
) -> None:
    with pytest.raises(ProfileError, match=words) as refused:
        WallProfile.through(points)
    assert refused.value.row == row
    assert refused.value.remedy
