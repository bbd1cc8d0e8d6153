"""Oracles for the questions on friction: bodies in balance, and a rope cut into short pieces."""

from collections.abc import Callable, Mapping

import pytest

from ropecalc.mechanics.pulleys import common_system, forces
from ropecalc.teaching.questions.bank import friction
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.template import Template

Values = Mapping[str, float]
_PIECES = 100_000


def _simple(values: Values, direction: str, load: float) -> float:
    """Pull of the hand by the balance of every body."""
    system = common_system(f"simple {values['parts']:.0f}:1")
    found = forces(system, direction, load=load, efficiency=values["efficiency"])
    return float(found.hand_pull.high)


def _along(values: Values) -> float:
    """Growth of the tension over an edge, piece by piece (midpoint rule)."""
    half = values["friction"] * values["turn"] / _PIECES / 2
    return float(((1 + half) / (1 - half)) ** _PIECES)


def _stacked(values: Values) -> float:
    found = forces(common_system("9:1"), "hauling", load=1000.0, efficiency=values["efficiency"])
    return float(found.advantage.low)


def _better_of_both_orders(values: Values) -> float:
    system = common_system("3:1").with_own_efficiencies()
    names = system.efficiencies
    found = [
        forces(system, "hauling", load=1.0, efficiency=dict(zip(names, pair, strict=True)))
        for pair in (
            (values["near_efficiency"], values["far_efficiency"]),
            (values["far_efficiency"], values["near_efficiency"]),
        )
    ]
    return max(float(f.advantage.low) for f in found)


def _people(values: Values) -> float:
    """One person more until the team holds what is above the edge."""
    above = values["load"] * _along(values)
    people = 1
    while people * values["pull_per_person"] < _simple(values, "hauling", above):
        people += 1
    return people


ORACLES: dict[str, Callable[[Values], float]] = {
    "advantage-with-friction": lambda v: 1 / _simple(v, "hauling", 1.0),
    "three-to-one-raising": lambda v: _simple(v, "hauling", v["load"]),
    "three-to-one-lowering": lambda v: _simple(v, "lowering", v["load"]),
    "edge-raising": lambda v: v["tension_behind"] * _along(v),
    "edge-lowering": lambda v: v["tension_ahead"] / _along(v),
    "edge-turned-round": lambda v: _along(v) ** 2,
    "stacked-with-friction": _stacked,
    "good-pulley-first": _better_of_both_orders,
    "people-over-an-edge": _people,
}


def test_every_question_of_the_module_is_listed() -> None:
    assert {question.key for question in friction.QUESTIONS} == set(ORACLES)


@pytest.mark.parametrize(
    ("question", "more"),
    [
        (friction.RAISING, True),
        (friction.LOWERING, False),
        (friction.EDGE_RAISING, True),
        (friction.EDGE_LOWERING, False),
    ],
)
def test_leaving_friction_out_errs_to_one_side(question: Template, more: bool) -> None:
    drawn = draw(question, "sides")
    assert (drawn.answer > drawn.mistaken["no-friction"]) is more
