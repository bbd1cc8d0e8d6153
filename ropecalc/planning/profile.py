"""The wall as it was surveyed: a chain of points from the foot up.

x is the offset out from the datum line, z the height, both in metres. Between neighbouring
points the rock is taken as straight. Heights never decrease along the chain; two points at one
height are a roof or a ledge.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

FEWEST_POINTS = 2
MOST_POINTS = 200
SAME = 1e-9
"""Two heights or offsets closer than this (m) are the same; it only absorbs rounding noise."""

Array = NDArray[np.float64]


@dataclass(frozen=True)
class RockPoint:
    """One surveyed point of the wall: offset and height in metres, and what was noted there."""

    offset: float
    height: float
    note: str = ""


class ProfileError(ValueError):
    """A chain of points that cannot be a wall. ``row`` counts from 1; 0 means the whole chain."""

    def __init__(self, row: int, problem: str, remedy: str) -> None:
        self.row = row
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{problem} {remedy}")


@dataclass(frozen=True)
class WallProfile:
    """The surveyed wall, from its foot to its lip.

    Raises :class:`ProfileError` for fewer than two points, a number that is not finite, or a
    chain that goes back down ("folds back").
    """

    points: tuple[RockPoint, ...]

    def __post_init__(self) -> None:
        count = len(self.points)
        if not FEWEST_POINTS <= count <= MOST_POINTS:
            raise ProfileError(
                0,
                f"the wall has {count} surveyed point{'' if count == 1 else 's'}, but a wall "
                f"needs between {FEWEST_POINTS} and {MOST_POINTS}.",
                "Survey at least the foot and the lip, and every corner in between.",
            )
        for row, point in enumerate(self.points, start=1):
            if not (math.isfinite(point.offset) and math.isfinite(point.height)):
                raise ProfileError(
                    row,
                    "an offset or height is not a finite number.",
                    "Write the measured offset and height in digits.",
                )
        for row, (below, above) in enumerate(
            zip(self.points, self.points[1:], strict=False), start=2
        ):
            if above.height < below.height - SAME:
                raise ProfileError(
                    row,
                    f"the wall folds back: its height {above.height:g} m is below the point "
                    f"before it ({below.height:g} m).",
                    "List the points from the foot up, each at least as high as the one before; "
                    "draw a roof as two points at one height.",
                )
        if self.top - self.foot <= SAME:
            raise ProfileError(
                0,
                "all surveyed points are at one height.",
                "Survey the wall from its foot up to its lip.",
            )

    @classmethod
    def through(cls, points: Iterable[tuple[float, float]]) -> "WallProfile":
        """A wall through (offset, height) pairs in metres, foot first."""
        return cls(tuple(RockPoint(offset, height) for offset, height in points))

    @cached_property
    def offsets(self) -> Array:
        """Offsets of the surveyed points (m), foot first."""
        return np.array([point.offset for point in self.points])

    @cached_property
    def heights(self) -> Array:
        """Heights of the surveyed points (m), foot first."""
        return np.array([point.height for point in self.points])

    @property
    def foot(self) -> float:
        """The lowest surveyed height (m)."""
        return self.points[0].height

    @property
    def top(self) -> float:
        """The highest surveyed height (m)."""
        return self.points[-1].height

    def rock_at(self, height: float) -> float:
        """How far out the rock reaches at ``height`` (m); minus infinity outside the survey.

        At a roof or a ledge it is the outermost of the offsets there.
        """
        if not self.foot - SAME <= height <= self.top + SAME:
            return -math.inf
        level = np.abs(self.heights - height) <= SAME
        if level.any():
            return float(self.offsets[level].max())
        return float(np.interp(height, self.heights, self.offsets))

    def outward_corners(self) -> tuple[RockPoint, ...]:
        """The points that stick out of the wall (outcrop tips, roof edges, the lip).

        A corner sticks out if the straight line between its neighbours passes inside it. The
        first and last points count when the wall leans back from them.
        """
        corners = []
        last = len(self.points) - 1
        for index, point in enumerate(self.points):
            below = self.points[max(index - 1, 0)]
            above = self.points[min(index + 1, last)]
            turn = (above.height - below.height) * (point.offset - below.offset) - (
                above.offset - below.offset
            ) * (point.height - below.height)
            leans_back = point.offset > above.offset if index == 0 else point.offset >= below.offset
            if turn > SAME if 0 < index < last else leans_back:
                corners.append(point)
        return tuple(corners)
