"""Oracles for the questions on readings and failures: vectors, small steps, energy."""

from collections.abc import Callable, Mapping
from math import cos, sin

import numpy as np
from scipy.optimize import brentq

from ropecalc.teaching.questions.bank import margins
from ropecalc.units import STANDARD_GRAVITY

Values = Mapping[str, float]


def _ahead(v: Values) -> float:
    one = np.array([1.0, 0.0])
    other = v["efficiency"] * np.array([cos(v["strand_angle"]), sin(v["strand_angle"])])
    return v["reading"] / float(np.hypot(*(one + other)))


def _weight(v: Values) -> float:
    legs = v["haul_tension"] + v["track_tension"]
    up = legs * np.array([-cos(v["haul_elevation"]), sin(v["haul_elevation"])])
    down = v["track_tension"] * np.array(
        [cos(v["ground_depression"]), -sin(v["ground_depression"])]
    )
    return float((up + down)[1])


def _along(v: Values) -> float:
    """A very small step square to the haul leg, and how much longer the ground leg gets."""
    leg = 1e4 * np.array([cos(v["ground_depression"]), -sin(v["ground_depression"])])
    step = 1e-3 * np.array([-sin(v["haul_elevation"]), -cos(v["haul_elevation"])])
    longer = float(np.hypot(*(leg - step)) - np.hypot(*leg))
    return v["slip"] * 1e-3 / longer


def _fall(v: Values) -> float:
    angle = float(brentq(lambda a: v["haul_leg_length"] * sin(a) - v["off_plumb"], 0, np.pi / 2))
    return v["haul_leg_length"] * (1 - cos(angle))


def _swing_peak(v: Values) -> float:
    mass = v["load"] / STANDARD_GRAVITY
    squared = 2 * STANDARD_GRAVITY * _fall(v)
    return v["load"] + mass * squared / v["haul_leg_length"]


def _arrest(v: Values) -> float:
    spring = v["stiffness"] / v["belay_length"]

    def left(longer: float) -> float:
        return v["load"] * (v["belay_slack"] + longer) - spring * longer**2 / 2

    return spring * float(brentq(left, v["load"] / spring, 1e3, xtol=1e-12))


def _weakest(v: Values) -> float:
    """How far the tension may be multiplied before the first part is at its strength."""
    device = v["near_line"] / (1 + v["efficiency"])
    parts = [
        (v["breaking_strength"] * v["termination"], v["near_line"]),
        (v["grab_strength"], v["near_line"]),
        (v["pulley_strength"], v["near_line"]),
        (v["device_strength"], device),
    ]
    return min(held / carried for held, carried in parts)


def _one_strand(v: Values) -> float:
    """The strands that friction allows beside the cell's, tried one by one."""
    strand, e = v["reading"], v["efficiency"]
    return max(strand + other for other in np.linspace(strand * e, strand / e, 1001))


def _held(v: Values, error: float) -> float:
    up, down = v["haul_elevation"] + error, v["ground_depression"]
    legs = np.array([[-cos(up), sin(up)], [cos(down), -sin(down)]]).T
    return float(np.linalg.solve(legs, [0.0, 1.0])[1])


def _share_off(v: Values) -> float:
    """From a very small error to the one that is given."""
    step = 1e-5
    share = (_held(v, -step) - _held(v, step)) / 2 / _held(v, 0.0)
    return share * v["angle_error"] / step


def _up_and_down(v: Values) -> float:
    """The haul line of any such place: both balances, once for either direction."""
    up, down = 1.1, 0.5
    hauls = []
    for upper in (v["leg_ratio"], 1 / v["leg_ratio"]):
        level = v["track_tension"] * (cos(down) - upper * cos(up))
        hauls.append(level / cos(up))
    return hauls[0] - hauls[1]


def _quoted(v: Values) -> float:
    """As a spring that the maker's test has measured."""
    per_newton = v["rope_length"] * v["quoted_elongation"] / (v["breaking_strength"] / 10)
    return per_newton * v["rope_tension"]


def _left(v: Values) -> float:
    """Equal springs: what the lost one held is spread over the others."""
    others = round(v["independent_lines"]) - 1
    return v["line_before"] + v["line_before"] / others


def _slides(v: Values) -> float:
    def more(tension: float) -> float:
        pressed = v["hub_mass"] * STANDARD_GRAVITY - tension * sin(v["ground_depression"])
        return v["hub_friction"] * pressed - tension * cos(v["ground_depression"])

    return float(brentq(more, 0.0, 1e6))


def _speed(v: Values) -> float:
    """Half a swing in small steps (velocity Verlet)."""
    leg, rate, step = v["haul_leg_length"], 0.0, 1e-3
    angle = float(np.arcsin(v["off_plumb"] / leg))
    while True:
        pull = -STANDARD_GRAVITY / leg * sin(angle)
        new = angle + rate * step + pull * step**2 / 2
        new_rate = rate + (pull - STANDARD_GRAVITY / leg * sin(new)) * step / 2
        if new <= 0:
            break
        angle, rate = new, new_rate
    energy = rate**2 / 2 * leg**2 + STANDARD_GRAVITY * leg * (1 - cos(angle))
    return float(np.sqrt(2 * energy))


ORACLES: dict[str, Callable[[Values], float]] = {
    "margins-weakest-part": _weakest,
    "margins-one-strand": _one_strand,
    "margins-angle-error": _share_off,
    "margins-haul-up-and-down": _up_and_down,
    "margins-quoted-stretch": _quoted,
    "margins-lines-left": _left,
    "margins-hub-slides": _slides,
    "margins-swing-speed": _speed,
    "margins-redirect-cell": _ahead,
    "margins-cell-error": lambda v: v["full_scale"] * v["cell_error"] / v["reading"],
    "margins-weigh": _weight,
    "margins-small-slip": _along,
    "margins-stretch": lambda v: v["rope_length"] * (v["rope_tension"] / v["stiffness"]),
    "margins-swing-fall": _fall,
    "margins-swing-peak": _swing_peak,
    "margins-arrest": _arrest,
}


def test_every_question_of_the_module_is_listed() -> None:
    assert {question.key for question in margins.QUESTIONS} == set(ORACLES)
