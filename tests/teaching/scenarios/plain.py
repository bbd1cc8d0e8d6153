"""What each part's answer is, by plain arithmetic: no derivation and no sympy is used.

``ORACLES`` takes a part's own numbers (SI, by name); ``TAKEN`` takes the situation's numbers and
tells what a part must have been given of them.
"""

from collections.abc import Callable, Mapping
from math import atan2, cos, hypot, pi, sin, sqrt

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


def taken_in_for_a_little(v: Values) -> float:
    """By how much both legs together get shorter while the litter rises a little, per length."""
    legs = [
        (20.0 * cos(v["track_elevation"]), 20.0 * sin(v["track_elevation"])),
        (30.0 * cos(v["ground_depression"]), -30.0 * sin(v["ground_depression"])),
    ]
    step = 1e-5
    lengths = [sum(hypot(x, z - rise) for x, z in legs) for rise in (-step, step)]
    return (lengths[0] - lengths[1]) / (2 * step)


def largest(v: Values) -> float:
    return max(line_at(v, v[f"x_{n}"], v[f"z_{n}"]) for n in (1, 2, 3))


def tensioner_rope(v: Values) -> float:
    play = v["least_play"] + v["take_in"] + v["line_stretch"]
    return sum([play] * 2 * round(v["lines"])) + v["tail"]


def head_pull(v: Values, tension: float) -> tuple[float, float]:
    """What front and back strands of ``tension`` do to the head: inward and downward."""
    front, back = v["haul_elevation"], v["back_depression"]
    return tension * (cos(back) - cos(front)), tension * (sin(back) + sin(front))


def lean(v: Values) -> float:
    inward_part, down = head_pull({**v, "haul_elevation": v["front_depression"]}, 1.0)
    return atan2(inward_part, down)


def landing(v: Values) -> float:
    """Follow the pull down from the head."""
    return -v["head_reach"] + v["head_height"] * sin(v["lean"]) / cos(v["lean"])


def over_the_edge(tension: float, friction: float, turn: float) -> float:
    """Bit by bit around the edge, each bit adding its share."""
    bits = 200_000
    return tension * (1 + friction * turn / bits) ** bits


def throws(v: Values) -> float:
    count, height = 1, v["throw_rise"]
    while height < v["raise_height"]:
        count, height = count + 1, height + v["throw_rise"] - v["reset_loss"]
    return float(count)


def raise_time(v: Values) -> float:
    way = v["raise_height"] + (v["throws"] - 1) * v["reset_loss"]
    return way * v["advantage"] / v["hand_speed"] + (v["throws"] - 1) * v["reset_time"]


def fall(v: Values) -> float:
    return v["haul_leg_length"] - sqrt(v["haul_leg_length"] ** 2 - v["off_plumb"] ** 2)


def arc_for_slip(v: Values) -> float:
    """How far along its arc a litter goes for each length of rope that runs in, times the slip."""
    step, up, down = 1e-5, v["haul_elevation"], v["ground_depression"]
    along = (-sin(up) * step, -cos(up) * step)
    hub = (30.0 * cos(down), -30.0 * sin(down))
    longer = hypot(hub[0] - along[0], hub[1] - along[1]) - 30.0
    return v["slip"] * step / longer


def slides(v: Values) -> float:
    """The tension at which the level pull equals what friction holds of what is left of weight."""
    level, down = outward_down(v["ground_depression"])
    return v["hub_friction"] * v["hub_mass"] * G / (level - v["hub_friction"] * down)


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
    # an outcrop near the ground
    "low-outcrop-at-the-tip": lambda v: line_at(v, v["x"], v["z"]),
    "low-outcrop-angle-at-the-litter": lambda v: pi - v["haul_elevation"] + v["ground_depression"],
    "low-outcrop-take-in-rate": taken_in_for_a_little,
    "low-outcrop-governing": largest,
    "low-outcrop-play": lambda v: (
        track_length(v, v["x_1"], v["z_1"]) - track_length(v, v["x_2"], v["z_2"])
    ),
    # follow the rope
    "follow-the-rope-device": lambda v: v["near_line"] / line_sums(1.0, v["efficiency"], 1)[0],
    "follow-the-rope-far-line": lambda v: line_sums(v["device_pull"], v["efficiency"], v["line"])[
        -1
    ],
    "follow-the-rope-hub": lambda v: (
        v["near_line"]
        * sum(line_sums(1.0, v["efficiency"], v["lines"]))
        / line_sums(1.0, v["efficiency"], 1)[0]
    ),
    "follow-the-rope-hub-pulley": lambda v: sum(strands(v["device_pull"], v["efficiency"], 2)[1:3]),
    "follow-the-rope-let-out": lambda v: line_sums(
        v["device_pull"], v["efficiency"], v["line"], taking_in=False
    )[-1],
    "follow-the-rope-hands": lambda v: (
        v["far_line"]
        / line_sums(1.0, v["efficiency"], v["lines"])[-1]
        / v["device_share"]
        / v["tail_advantage"]
    ),
    # enough rope
    "enough-rope-track-length": lambda v: track_length(v, v["x"], v["z"]),
    "enough-rope-play": lambda v: (
        track_length(v, v["x_1"], v["z_1"]) - track_length(v, v["x_2"], v["z_2"])
    ),
    "enough-rope-stretch": lambda v: v["rope_length"] * v["rope_tension"] / v["stiffness"],
    "enough-rope-tensioner": tensioner_rope,
    "enough-rope-through-the-device": lambda v: sum([v["take_in"]] * 2 * round(v["lines"])),
    "enough-rope-tag-line": lambda v: (
        hypot(v["x_B"] - v["x_2"], v["z_B"] - v["z_2"])
        - hypot(v["x_B"] - v["x_1"], v["z_B"] - v["z_1"])
    ),
    "enough-rope-short-rope": lambda v: (
        (v["rope_needed"] - v["tail"]) / 4 - v["least_play"] - v["line_stretch"]
    ),
    # which way will it fall
    "which-way-pull-on-the-head": lambda v: hypot(*head_pull(v, sum(track(v)))),
    "which-way-lean-high": lean,
    "which-way-lands-high": landing,
    "which-way-lean-low": lean,
    "which-way-lands-low": landing,
    "which-way-haul-line": lambda v: track(v)[0],
    "which-way-track-lines-forgotten": lambda v: (
        v["strand_tension"] * hypot(1 + cos(v["strand_angle"]), sin(v["strand_angle"]))
    ),
    "which-way-out-of-reach": lambda v: float(
        np.interp(v["z"], [v["z_B"], v["z_D"]], [v["x_B"], v["x_D"]])
    ),
    # four people
    "four-people-edge-raising": lambda v: over_the_edge(
        v["tension_behind"], v["friction"], v["turn"]
    ),
    "four-people-edge-lowering": lambda v: over_the_edge(
        v["tension_ahead"], -v["friction"], v["turn"]
    ),
    "four-people-hands-3": lambda v: simple_pull(v["load"], v["efficiency"], v["parts"]),
    "four-people-advantage-9": lambda v: (
        1 / simple_pull(simple_pull(1, v["efficiency"], 3), v["efficiency"], 3)
    ),
    "four-people-throws-3": throws,
    "four-people-throws-9": throws,
    "four-people-time-3": raise_time,
    "four-people-time-9": raise_time,
    "four-people-snag": lambda v: v["people"] * v["burst_per_person"] * v["advantage"],
    # the cells disagree
    "cells-disagree-weight-from-readings": lambda v: (
        v["haul_tension"] * sin(v["haul_elevation"])
        + v["track_tension"] * (sin(v["haul_elevation"]) - sin(v["ground_depression"]))
    ),
    "cells-disagree-ratio": lambda v: (
        line_sums(1.0, v["efficiency"], 2)[1] / line_sums(1.0, v["efficiency"], 2)[0]
    ),
    "cells-disagree-weight-from-mass": lambda v: v["mass"] * G,
    "cells-disagree-from-geometry": lambda v: track(v)[1],
    "cells-disagree-error": lambda v: v["full_scale"] * v["cell_error"] / v["reading"],
    # one line goes
    "one-line-goes-together": lambda v: track(v)[1],
    "one-line-goes-worst": most_loaded,
    "one-line-goes-slack": lambda v: 2 * v["play"] / 2,
    "one-line-goes-fall": lambda v: fall(v),
    "one-line-goes-speed": lambda v: sqrt(2 * G * fall(v)),
    "one-line-goes-peak": lambda v: v["load"] * (1 + 2 * fall(v) / v["haul_leg_length"]),
    "one-line-goes-speed-low": lambda v: sqrt(2 * G * fall(v)),
    "one-line-goes-tied-back": arc_for_slip,
    # a whole raise in numbers
    "whole-raise-governing": largest,
    "whole-raise-haul-line": lambda v: track(v)[0],
    "whole-raise-play": lambda v: (
        track_length(v, v["x_1"], v["z_1"]) - track_length(v, v["x_2"], v["z_2"])
    ),
    "whole-raise-tensioner-rope": tensioner_rope,
    "whole-raise-worst-line": most_loaded,
    "whole-raise-margin": lambda v: (
        v["strength"]
        * (1 - v["strength_uncertainty"])
        / (v["component_load"] * (1 + v["load_uncertainty"]))
    ),
    "whole-raise-uplift": lambda v: -v["line_tension"] * outward_down(v["ground_depression"])[1],
    "whole-raise-hub-slides": slides,
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


def _past_the_tip(s: Values) -> dict[str, float]:
    x = s["x_tip"] + s["clearance"]
    up = haul_angle(s, x, s["z_tip"])
    return {
        "haul_elevation": up,
        "track_elevation": up,
        "ground_depression": ground_angle(s, x, s["z_tip"]),
    }


def _held(s: Values) -> dict[str, float]:
    return {
        "haul_elevation": haul_angle(s, s["x"], s["z"]),
        "ground_depression": ground_angle(s, s["x"], s["z"]),
    }


def _fifth(s: Values) -> dict[str, float]:
    return {
        "haul_elevation": haul_angle(s, s["x_5"], s["z_5"]),
        "ground_depression": ground_angle(s, s["x_5"], s["z_5"]),
    }


def _swing_high(s: Values) -> dict[str, float]:
    off = s["x"] - s["x_D"]
    return {"off_plumb": off, "haul_leg_length": hypot(off, s["z_D"] - s["z"])}


TAKEN: dict[str, Callable[[Values], dict[str, float]]] = {
    "one-face-push-low": lambda s: {"drop": s["z_D"] - s["z_low"]},
    "one-face-push-high": lambda s: {"drop": s["z_D"] - s["z_high"]},
    "one-face-tag-line": lambda s: {"x": s["x_D"] + s["off_plumb"], "z": s["z_high"]},
    "one-face-haul-against-tag": _one_face_angles,
    "one-face-track-lines": _one_face_angles,
    "one-face-haul-beside-track": _one_face_angles,
    "high-outcrop-far-hub": lambda s: {"x_B": s["x_B_far"]},
    "high-outcrop-second-line": lambda s: {"efficiency": s["efficiency"], "lines": 2.0},
    "low-outcrop-at-the-tip": lambda s: {"x": s["x_tip"] + s["clearance"], "z": s["z_tip"]},
    "low-outcrop-angle-at-the-litter": _past_the_tip,
    "low-outcrop-take-in-rate": _past_the_tip,
    "low-outcrop-governing": lambda s: {
        "x_1": s["x_tip"] + s["clearance"],
        "z_1": s["z_tip"],
        "x_2": s["x_middle"],
        "z_2": s["z_middle"],
        "x_3": s["x_top"],
        "z_3": s["z_top"],
    },
    "low-outcrop-play": lambda s: {
        "x_1": s["x_tip"] + s["clearance"],
        "z_1": s["z_start"],
        "x_2": s["x_top"],
        "z_2": s["z_top"],
        "x_A": s["x_D"],
        "z_A": s["z_D"],
    },
    "follow-the-rope-far-line": lambda s: {"line": s["lines"]},
    "follow-the-rope-let-out": lambda s: {"line": s["lines"]},
    "enough-rope-track-length": lambda s: {"x": s["x_1"], "z": s["z_1"]},
    "enough-rope-play": lambda s: {"x_2": s["x_3"], "z_2": s["z_3"]},
    "enough-rope-stretch": lambda s: {"rope_tension": s["line_carries"]},
    "enough-rope-short-rope": lambda s: {"rope_needed": s["rope_at_hand"]},
    "which-way-pull-on-the-head": lambda s: {
        "haul_elevation": haul_angle(s, s["x"], s["z_high"]),
        "ground_depression": ground_angle(s, s["x"], s["z_high"]),
    },
    "which-way-lean-high": lambda s: {"front_depression": haul_angle(s, s["x"], s["z_high"])},
    "which-way-lean-low": lambda s: {"front_depression": haul_angle(s, s["x"], s["z_low"])},
    "which-way-haul-line": lambda s: {
        "haul_elevation": haul_angle(s, s["x"], s["z_high"]),
        "ground_depression": ground_angle(s, s["x"], s["z_high"]),
    },
    "which-way-track-lines-forgotten": lambda s: {
        "strand_angle": pi - haul_angle(s, s["x"], s["z_high"]) - s["back_depression"]
    },
    "which-way-out-of-reach": lambda s: {"z": s["z_near"]},
    "four-people-edge-raising": lambda s: {"tension_behind": s["haul_tension"]},
    "four-people-edge-lowering": lambda s: {"tension_ahead": s["haul_tension"]},
    "four-people-hands-3": lambda _: {"parts": 3.0},
    "four-people-advantage-9": lambda _: {"first_parts": 3.0, "second_parts": 3.0},
    "four-people-throws-3": lambda s: {"throw_rise": s["long_throw"]},
    "four-people-throws-9": lambda s: {"throw_rise": s["short_throw"]},
    "four-people-time-3": lambda _: {"advantage": 3.0},
    "four-people-time-9": lambda _: {"advantage": 9.0},
    "cells-disagree-weight-from-readings": lambda s: {
        "track_tension": s["far_reading"] + s["near_reading"]
    },
    "cells-disagree-error": lambda s: {"reading": s["near_reading"]},
    "one-line-goes-together": _held,
    "one-line-goes-tied-back": _held,
    "one-line-goes-fall": _swing_high,
    "one-line-goes-speed": _swing_high,
    "one-line-goes-peak": _swing_high,
    "one-line-goes-speed-low": lambda s: {
        "off_plumb": s["x"] - s["x_D"],
        "haul_leg_length": hypot(s["x"] - s["x_D"], s["z_D"] - s["z_low"]),
    },
    "whole-raise-governing": lambda s: {
        f"{axis}_{n}": s[f"{axis}_{n + 3}"] for axis in "xz" for n in (1, 2, 3)
    },
    "whole-raise-haul-line": _fifth,
    "whole-raise-play": lambda s: {
        "x_2": s["x_6"],
        "z_2": s["z_6"],
        "x_A": s["x_D"],
        "z_A": s["z_D"],
    },
    "whole-raise-uplift": lambda s: {"ground_depression": _fifth(s)["ground_depression"]},
    "whole-raise-hub-slides": lambda s: {"ground_depression": _fifth(s)["ground_depression"]},
}
