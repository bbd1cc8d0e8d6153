"""Random rigs and places, and statics written once more from coordinates alone.

Nothing here uses an angle, a formula or a function of the library's mechanics: forces are unit
vectors between places, and verdicts are the signs of a solved 2 x 2 system.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc.mechanics.holding import Method, Point, Rig

Array = np.ndarray[Any, Any]

CASE = Rig(Point(0.3, 32.0), Point(0.3, 32.0), Point(40.0, 0.5))
"""The worked case of the course: 32 m of directional height, hub 40 m out."""
CASE_LOAD = 200 * 9.80665


@dataclass(frozen=True)
class Trial:
    """A rig, a load, and places to try: some can be held, some cannot."""

    rig: Rig
    load: float
    x: Array
    z: Array


def trials(count: int, places: int, seed: int, *, apart: bool) -> Iterator[Trial]:
    """``count`` random rigs with ``places`` each; hubs below and above, directionals in and out."""
    rng = np.random.default_rng(seed)
    for _ in range(count):
        top = Point(rng.uniform(-0.5, 1.5), rng.uniform(12, 60))
        track = top
        if apart:
            track = Point(top.x + rng.uniform(-1.0, 1.5), top.z + rng.uniform(-1.0, 3.0))
        hub = Point(top.x + rng.uniform(6, 90), rng.uniform(-10, 1.1 * top.z))
        near = rng.uniform(0, 1, places) ** 2  # more places near the wall, where work is done
        x = top.x - 0.5 + near * (hub.x - top.x + 1.5)
        z = rng.uniform(min(hub.z, 0.0) - 2.0, top.z + 2.0, places)
        yield Trial(Rig(top, track, hub), rng.uniform(600, 3200), x, z)


def toward(x: Any, z: Any, place: Point) -> Array:
    """Unit vectors from places ``x``, ``z`` towards ``place``; last axis is (out, up)."""
    line = np.stack([place.x - np.asarray(x, float), place.z - np.asarray(z, float)], axis=-1)
    return np.asarray(line / np.linalg.norm(line, axis=-1, keepdims=True))


def distance(x: Any, z: Any, place: Point) -> Any:
    """Straight distance in m from ``x``, ``z`` to ``place``."""
    return np.hypot(place.x - np.asarray(x, float), place.z - np.asarray(z, float))


def pulls(method: Method, rig: Rig, x: Any, z: Any) -> tuple[Array, Array]:
    """What one newton in the haul line, and one in whatever holds off, does to the litter."""
    haul = toward(x, z, rig.haul_directional)
    if method is Method.ATTENDANT:
        return haul, np.broadcast_to([1.0, 0.0], haul.shape)
    other = toward(x, z, rig.hub)
    if method is Method.TRACK:
        other = other + toward(x, z, rig.track_directional)
    return haul, other


def solve_balance(method: Method, rig: Rig, load: float, x: Any, z: Any) -> tuple[Array, Array]:
    """The two forces in N that balance the weight, by Cramer's rule; negative is impossible."""
    haul, other = pulls(method, rig, x, z)
    size = haul[..., 0] * other[..., 1] - haul[..., 1] * other[..., 0]
    with np.errstate(divide="ignore", invalid="ignore"):
        return -load * other[..., 0] / size, load * haul[..., 0] / size
