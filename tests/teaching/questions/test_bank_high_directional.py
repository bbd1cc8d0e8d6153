"""Oracles for the questions on heads and frames: vectors added, moments about the feet."""

from collections.abc import Callable, Mapping
from math import atan2, cos, hypot, sin

import numpy as np
import pytest

from ropecalc.teaching.questions.bank import high_directional
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.template import Template

Values = Mapping[str, float]


def _front(angle: float) -> np.ndarray:
    """A strand that leaves the head outward, ``angle`` below the horizontal (x out, z up)."""
    return np.array([cos(angle), -sin(angle)])


def _back(angle: float) -> np.ndarray:
    return np.array([-cos(angle), -sin(angle)])


def _redirect(v: Values) -> float:
    pull = np.array([1.0, 0.0]) + np.array([cos(v["strand_angle"]), sin(v["strand_angle"])])
    return v["strand_tension"] * hypot(*pull)


def _lean(v: Values) -> float:
    out, up = _front(v["front_depression"]) + _back(v["back_depression"])
    return atan2(-out, -up)


def _hauled(v: Values) -> float:
    """Both strands as arrows; the team's carries more by what the pulley costs."""
    front = np.array([v["front_tension"], 0.0])
    angle = v["strand_angle"]
    back = v["front_tension"] / v["efficiency"] * np.array([cos(angle), sin(angle)])
    return float(hypot(*(front + back)))


def _head(v: Values) -> float:
    """Balance of the litter for both lines, then every strand at the head."""
    to_head = -_front(v["haul_elevation"])  # from the litter up and in
    to_hub = _front(v["ground_depression"])
    legs = np.array([to_head, to_head + to_hub]).T
    haul, track = np.linalg.solve(legs, [0.0, v["load"]])
    return float((haul + track) * hypot(*(-to_head + _back(v["back_depression"]))))


def _landing(v: Values) -> float:
    """Walk down the line of action in small steps until the ground."""
    head = np.array([v["head_reach"], v["head_height"]])
    way = np.array([-sin(v["lean"]), -cos(v["lean"])])
    foot = head + way * (v["head_height"] / -way[1])
    assert abs(foot[1]) < 1e-12
    return float(-foot[0])


def _moment(arm: np.ndarray, force: np.ndarray) -> float:
    return float(arm[0] * force[1] - arm[1] * force[0])


def _guy(v: Values) -> float:
    head = np.array([v["head_reach"], v["head_height"]])
    pull = np.array([-v["inward_pull"], -v["downward_pull"]])
    return -_moment(head, pull) / _moment(head, _front(v["guy_depression"]))


def _legs(v: Values) -> float:
    """Two legs in space, and a level force at the head that keeps the frame in its place."""
    across = np.tan(v["leg_half_spread"]) * hypot(v["head_height"], v["head_reach"])
    head = np.array([v["head_reach"], 0.0, v["head_height"]])
    feet = np.array([[0.0, -across, 0.0], [0.0, across, 0.0]])
    pushes = [(head - foot) / np.linalg.norm(head - foot) for foot in feet]
    level = np.array([1.0, 0.0, 0.0])
    down = v["downward_pull"] + v["guy_tension"] * sin(v["guy_depression"])
    found = np.linalg.solve(np.array([*pushes, level]).T, [0.0, 0.0, down])
    assert found[0] == pytest.approx(found[1])
    return float(found[0])


ORACLES: dict[str, Callable[[Values], float]] = {
    "redirect-pull": _redirect,
    "head-lean": _lean,
    "redirect-while-hauling": _hauled,
    "head-with-track-lines": _head,
    "line-of-action-lands": _landing,
    "guy-tension": _guy,
    "leg-compression": _legs,
}


@pytest.mark.parametrize("template", high_directional.QUESTIONS, ids=lambda t: t.key)
def test_every_question_on_heads_has_its_oracle(template: Template) -> None:
    for number in range(20):
        drawn = draw(template, "heads", number)
        assert drawn.answer == pytest.approx(ORACLES[template.key](drawn.values), rel=1e-9)
