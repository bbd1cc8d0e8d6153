"""Mistakes that several questions share, and where numbers are too touchy to teach with."""

from collections.abc import Mapping
from math import atan2, radians

from ropecalc.teaching.questions.template import Mistake

_LEAST_ANGLE = radians(12)
"""Below this angle between the haul leg and the straight line a rounded angle costs too much."""

HAUL_STAYS_THE_WEIGHT = Mistake(
    "haul-stays-the-weight",
    "The haul line taken to carry just the weight",
    "The haul line leans, and whatever holds the litter off changes its pull as well.",
    lambda v: v.load,
)


def legs_open(values: Mapping[str, float]) -> bool:
    """Haul leg and ground leg stand far enough from one straight line (angles given)."""
    return values["haul_elevation"] - values["ground_depression"] >= _LEAST_ANGLE


def places_open(values: Mapping[str, float]) -> bool:
    """Haul leg and ground leg stand far enough from one straight line (places given)."""
    up = atan2(values["z_D"] - values["z"], values["x"] - values["x_D"])
    down = atan2(values["z"] - values["z_B"], values["x_B"] - values["x"])
    return up - down >= _LEAST_ANGLE
