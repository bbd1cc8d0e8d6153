"""The way down a litter has on track lines once nothing else holds it: an ellipse.

::

     A                      The track rope from its directional A past the litter to the hub B
      `.                    keeps its length, so the litter runs on an ellipse about A and B. It
        P                   starts from rest square to n, which halves the angle between the two
       / `  n               legs. Across its path the track line alone now holds what the haul line
      v    - .              had helped to hold, and has to bend the path as well: its tension jumps.
              ' -  B
"""

from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import Argument, Condition, Step, derive
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.holding import Point, Rig
from ropecalc.mechanics.straight import FLAT, FLAT_WORDS

KEEPS_LENGTH = "The track rope keeps its length; nothing rubs or slips."
OVERSHOOT = (
    "A load that comes on at once makes a rope that stretches overshoot: up to twice the rise is "
    "allowed for."
)


@derive(
    "Track tension just after the haul line is lost",
    given=(q.LOAD, q.TRACK_ELEVATION, q.GROUND_DEPRESSION),
    result=q.TRACK_TENSION,
    assumptions=(
        KEEPS_LENGTH,
        "The litter is still at rest and nothing but the track line holds it.",
    ),
    conditions=(
        Condition(
            "The track's upper leg must be steeper than its ground leg by more than "
            f"{FLAT_WORDS}, or the two are on one straight line and no tension holds the litter "
            "there.",
            "Bring the litter closer in, or move the directional or the hub further out.",
            lambda v: v["track_elevation"] - v["ground_depression"] > FLAT,
        ),
        Condition(
            "The ground leg must not pull down more than the upper leg pulls up.",
            "Move the hub further out.",
            lambda v: v["track_elevation"] + v["ground_depression"] < np.pi,
        ),
    ),
    cautions=(OVERSHOOT, cautions.COMMON_HUB, cautions.STATIC, cautions.AUTHORITY),
    source="derived here from the balance across the litter's path",
)
def released_track_tension(argument: Argument) -> Step:
    """Tension in N of all track lines together when the haul line has just gone.

    It is more than while the haul line holds, because the haul line had carried its part of the
    weight across the path. Beside one directional for all it is more by half the haul tension.
    """
    load, up, down = argument.symbols(q.LOAD, q.TRACK_ELEVATION, q.GROUND_DEPRESSION)
    tension = argument.symbol(q.TRACK_TENSION)
    sin, cos = argument.sympy.sin, argument.sympy.cos
    across = argument.law(
        "The litter starts square to the line that halves the angle between the legs. Along that "
        "line nothing moves: both legs' parts balance the weight's.",
        2 * tension * sin((up - down) / 2),
        load * cos((up + down) / 2),
    )
    return argument.solve("Solve for the tension.", across, tension)


@dataclass(frozen=True)
class TrackPath:
    """The ellipse about ``first`` and ``second`` with these half axes (m), and where it starts.

    A place on it is an angle in rad, arrays too: from ``start`` it grows as the litter runs down
    and outward, past the lowest point, up to 0 behind ``second``.
    """

    first: Point
    second: Point
    half_long: float
    half_short: float
    start: float

    @classmethod
    def through(cls, rig: Rig, x: float, z: float) -> "TrackPath":
        """The path of a litter that starts at ``x``, ``z`` m below the track line's two ends."""
        first, second = rig.track_directional, rig.hub
        rope = np.hypot(x - first.x, z - first.z) + np.hypot(x - second.x, z - second.z)
        apart = np.hypot(second.x - first.x, second.z - first.z)
        path = cls(first, second, float(rope / 2), float(np.sqrt(rope**2 - apart**2) / 2), 0.0)
        off_x, off_z = x - (first.x + second.x) / 2, z - (first.z + second.z) / 2
        along, across = path._turned(off_x, off_z, back=True)
        begin = float(np.arctan2(across / path.half_short, along / path.half_long))
        return cls(first, second, path.half_long, path.half_short, begin)

    def _turned(self, along: Any, across: Any, *, back: bool = False) -> tuple[Any, Any]:
        """From the ellipse's own axes to x and z, or ``back``."""
        wide, high = self.second.x - self.first.x, self.second.z - self.first.z
        apart = np.hypot(wide, high)
        cos, sin = wide / apart, (-high if back else high) / apart
        return cos * along - sin * across, sin * along + cos * across

    def place(self, angle: Any) -> tuple[Any, Any]:
        """``x`` and ``z`` in m."""
        x, z = self._turned(self.half_long * np.cos(angle), self.half_short * np.sin(angle))
        return (self.first.x + self.second.x) / 2 + x, (self.first.z + self.second.z) / 2 + z

    def tension(self, angle: Any, load: float, motion: Any, pull: tuple[Any, Any]) -> Any:
        """Tension in N of all track lines together at ``angle``; negative where they are slack.

        ``load`` N is the weight, ``motion`` J the energy of motion, ``pull`` (N along x and z) is
        what else pulls the litter.
        """
        x, z = self.place(angle)
        along_x, along_z = self._turned(
            -self.half_long * np.sin(angle), self.half_short * np.cos(angle)
        )
        speed = np.hypot(along_x, along_z)  # of the place per rad
        in_x, in_z = -along_z / speed, along_x / speed
        bend = self.half_long * self.half_short / speed**3
        legs = sum(
            ((end.x - x) * in_x + (end.z - z) * in_z) / np.hypot(end.x - x, end.z - z)
            for end in (self.first, self.second)
        )
        return (load * in_z + 2 * motion * bend - pull[0] * in_x - pull[1] * in_z) / legs
