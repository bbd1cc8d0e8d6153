"""What each part's answer is, by plain arithmetic: no derivation and no sympy is used.

``ORACLES`` takes a part's own numbers (SI, by name); ``TAKEN`` takes the situation's numbers and
tells what a part must have been given of them.
"""

from collections.abc import Callable, Mapping
from math import atan2, cos, hypot, pi, sin

import numpy as np

Values = Mapping[str, float]
G = 9.80665


def balance(pulls: list[tuple[float, float]], load: float) -> list[float]:
    """How hard each of two directions must pull to balance ``load``."""
    return [float(f) for f in np.linalg.solve(np.array(pulls).T, [0.0, load])]


def inward(angle: float) -> tuple[float, float]:
    return -cos(angle), sin(angle)


def outward_down(angle: float) -> tuple[float, float]:
    return cos(angle), -sin(angle)


def push(v: Values) -> float:
    return balance([inward(atan2(v["drop"], v["off_plumb"])), (1.0, 0.0)], v["load"])[1]


def tag(v: Values) -> list[float]:
    """Haul line and tag line."""
    legs = [inward(v["haul_elevation"]), outward_down(v["ground_depression"])]
    return balance(legs, v["load"])


def track(v: Values) -> list[float]:
    """Haul line and track lines together."""
    up, down = inward(v["haul_elevation"]), outward_down(v["ground_depression"])
    return balance([up, (up[0] + down[0], up[1] + down[1])], v["load"])


def unit(start: tuple[float, float], end: tuple[float, float]) -> tuple[float, float]:
    x, z = end[0] - start[0], end[1] - start[1]
    return x / hypot(x, z), z / hypot(x, z)


def line_at(v: Values, x: float, z: float) -> float:
    """The line to the hub with the litter at ``x``, ``z``."""
    legs = [unit((x, z), (v["x_D"], v["z_D"])), unit((x, z), (v["x_B"], v["z_B"]))]
    return balance(legs, v["load"])[1]


def track_length(v: Values, x: float, z: float) -> float:
    return hypot(x - v["x_A"], z - v["z_A"]) + hypot(x - v["x_B"], z - v["z_B"])


def strands(pull: float, efficiency: float, lines: float, *, taking_in: bool = True) -> list[float]:
    """The strands of a tensioner from the device on, sheave by sheave."""
    found = [pull]
    while len(found) < 2 * round(lines):
        found.append(found[-1] * efficiency if taking_in else found[-1] / efficiency)
    return found


def line_sums(
    pull: float, efficiency: float, lines: float, *, taking_in: bool = True
) -> list[float]:
    rope = strands(pull, efficiency, lines, taking_in=taking_in)
    return [rope[i] + rope[i + 1] for i in range(0, len(rope), 2)]


def most_loaded(v: Values) -> float:
    sums = line_sums(1.0, v["efficiency"], v["lines"])
    return v["track_tension"] * sums[0] / sum(sums)


def simple_pull(load: float, efficiency: float, parts: float) -> float:
    """The pull of the hand on a simple system while hauling."""
    return load / sum(efficiency**strand for strand in range(round(parts)))


ORACLES: dict[str, Callable[[Values], float]] = {
    # one face, three ways
    "one-face-weight-attended": lambda v: v["mass"] * G,
    "one-face-weight-alone": lambda v: v["mass"] * G,
    "one-face-push-low": push,
    "one-face-push-high": push,
    "one-face-push-ends": lambda v: v["load"] * v["off_plumb"] / v["push"],
    "one-face-tag-line": lambda v: line_at(v, v["x"], v["z"]),
    "one-face-haul-against-tag": lambda v: tag(v)[0],
    "one-face-track-lines": lambda v: track(v)[1],
    "one-face-haul-beside-track": lambda v: track(v)[0],
    # an outcrop near the top
    "high-outcrop-haul-leg": lambda v: atan2(v["z_D"] - v["z"], v["x"] - v["x_D"]),
    "high-outcrop-ground-leg": lambda v: atan2(v["z"] - v["z_B"], v["x_B"] - v["x"]),
    "high-outcrop-angle-between": lambda v: pi - v["haul_elevation"] + v["ground_depression"],
    "high-outcrop-track-lines": lambda v: track(v)[1],
    "high-outcrop-haul-against-tag": lambda v: tag(v)[0],
    "high-outcrop-haul-beside-track": lambda v: track(v)[0],
    "high-outcrop-directional-out": lambda v: line_at(
        {**v, "x_D": v["x_D"] + v["moved_out"]}, v["x"], v["z"]
    ),
    "high-outcrop-second-line": most_loaded,
    "high-outcrop-far-hub": lambda v: line_at(v, v["x"], v["z"]),
    "high-outcrop-nearest-hub": lambda v: (
        v["x_D"] + (v["x"] - v["x_D"]) / (v["z_D"] - v["z"]) * (v["z_D"] - v["z_B"])
    ),
}


def haul_angle(s: Values, x: float, z: float) -> float:
    return atan2(s["z_D"] - z, x - s["x_D"])


def ground_angle(s: Values, x: float, z: float) -> float:
    return atan2(z - s["z_B"], s["x_B"] - x)


def _one_face_angles(s: Values) -> dict[str, float]:
    x = s["x_D"] + s["off_plumb"]
    return {
        "haul_elevation": haul_angle(s, x, s["z_high"]),
        "ground_depression": ground_angle(s, x, s["z_high"]),
    }


TAKEN: dict[str, Callable[[Values], dict[str, float]]] = {
    "one-face-push-low": lambda s: {"drop": s["z_D"] - s["z_low"]},
    "one-face-push-high": lambda s: {"drop": s["z_D"] - s["z_high"]},
    "one-face-tag-line": lambda s: {"x": s["x_D"] + s["off_plumb"], "z": s["z_high"]},
    "one-face-haul-against-tag": _one_face_angles,
    "one-face-track-lines": _one_face_angles,
    "one-face-haul-beside-track": _one_face_angles,
    "high-outcrop-far-hub": lambda s: {"x_B": s["x_B_far"]},
    "high-outcrop-second-line": lambda s: {"efficiency": s["efficiency"], "lines": 2.0},
}
