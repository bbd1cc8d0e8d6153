"""Oracles of the questions on the way up that test_bank.py does not have."""

from collections.abc import Callable, Mapping
from math import cos, dist, hypot, sin

import numpy as np
from scipy.optimize import brentq

from ropecalc.teaching.questions.bank import along_the_raise
from ropecalc.teaching.questions.draw import draw

Values = Mapping[str, float]
Place = tuple[float, float]


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


def _top(v: Values, moved: float = 0.0) -> Place:
    return v["x_D"] + moved, v["z_D"]


def _hub(v: Values) -> Place:
    return v["x_B"], v["z_B"]


def _balance(at: Place, top: Place, hub: Place, load: float) -> float:
    """The pull towards the hub, from two equations in two unknown pulls."""
    legs = [np.subtract(end, at) / dist(end, at) for end in (top, hub)]
    return float(np.linalg.solve(np.array(legs).T, [0.0, load])[1])


def _way(at: Place, top: Place, hub: Place) -> float:
    return dist(at, top) + dist(at, hub)


def _compared(v: Values) -> float:
    high, low = (_balance((v["x"], v[z]), _top(v), _hub(v), 1.0) for z in ("z_2", "z_1"))
    return high / low


def _both(v: Values) -> tuple[Place, Place]:
    return (v["x_1"], v["z_1"]), (v["x_2"], v["z_2"])


def _taken_in(v: Values) -> float:
    top = (v["x_A"], v["z_A"])
    first, second = (_way(at, top, _hub(v)) for at in _both(v))
    return first - second


def _paid_out(v: Values) -> float:
    first, second = (dist(at, _hub(v)) for at in _both(v))
    return second - first


def _quick(v: Values) -> float:
    top, hub = (0.0, v["cliff"]), (v["hub_distance"], 0.0)
    return _way((0.0, 0.0), top, hub) - _way(top, top, hub)


def _at_length(v: Values, z: float, length: float) -> float:
    """Between plumb and the straight line: where the rope is just so long."""
    share = (v["z_D"] - z) / (v["z_D"] - v["z_B"])
    line = v["x_D"] + share * (v["x_B"] - v["x_D"])
    top, hub = _top(v), _hub(v)
    return float(brentq(lambda x: _way((x, z), top, hub) - length, v["x_D"], line, xtol=1e-13))


def _raised(v: Values) -> float:
    length = _way((v["x_1"], v["z_1"]), _top(v), _hub(v))
    return _at_length(v, v["z_1"] + v["raised"], length)


def _lowered(v: Values) -> float:
    rig = {"x_D": 0.0, "z_D": 0.0, "x_B": v["hub_run"], "z_B": -v["hub_fall"]}
    top, hub, z = _top(rig), _hub(rig), -v["drop"] - v["lowered"]
    x = _at_length(rig, z, _way((v["off_plumb"], -v["drop"]), top, hub))
    return _balance((x, z), top, hub, v["load"])


ORACLES: dict[str, Callable[[Values], float]] = {
    "locked-swing-in": swung_in,
    "high-and-low-outcrop": _compared,
    "play-of-a-raise": _taken_in,
    "quick-play": _quick,
    "tag-paid-out": _paid_out,
    "directional-further-out": lambda v: _balance(
        (v["x"], v["z"]), _top(v, v["moved_out"]), _hub(v), v["load"]
    ),
    "locked-raised": _raised,
    "locked-lowered": _lowered,
}


def test_lowered_against_the_lock_the_tension_rises() -> None:
    for number in range(30):
        drawn = draw(along_the_raise.LOWERED_LOCKED, "rises", number)
        assert drawn.answer > drawn.mistaken["lock-keeps-the-tension"]
        assert drawn.answer > drawn.mistaken["lock-keeps-the-distance"]


def test_raised_against_the_lock_the_litter_comes_in() -> None:
    for number in range(30):
        drawn = draw(along_the_raise.RAISED_LOCKED, "comes-in", number)
        assert drawn.values["x_D"] < drawn.answer < drawn.values["x_1"]
