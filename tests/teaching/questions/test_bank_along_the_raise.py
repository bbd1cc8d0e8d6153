"""Oracles of the questions on the way up that test_bank.py does not have."""

from collections.abc import Callable, Mapping
from math import cos, hypot, sin


def swung_in(v: Mapping[str, float]) -> float:
    """Raise a litter a little between two fixed ends, and look where the rope is as long again."""
    top = (-20 * cos(v["track_elevation"]), 20 * sin(v["track_elevation"]))
    hub = (50 * cos(v["ground_depression"]), -50 * sin(v["ground_depression"]))

    def rope(x: float, z: float) -> float:
        return hypot(top[0] - x, top[1] - z) + hypot(hub[0] - x, hub[1] - z)

    def out(rise: float) -> float:
        near, far = -1.0, 1.0
        for _ in range(200):
            middle = (near + far) / 2
            near, far = (middle, far) if rope(middle, rise) > rope(0, 0) else (near, middle)
        return near

    step = 1e-4
    return (out(-step) - out(step)) / (2 * step)


ORACLES: dict[str, Callable[[Mapping[str, float]], float]] = {"locked-swing-in": swung_in}
