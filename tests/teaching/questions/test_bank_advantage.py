"""Oracles for the questions on advantage: whole systems, balanced body by body or moved."""

from collections.abc import Callable, Mapping

import pytest

from ropecalc.mechanics.pulleys import System, common_system, forces, travel
from ropecalc.teaching.questions.bank import advantage
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.template import Template

Values = Mapping[str, float]


def _balanced(system: System, load: float) -> float:
    """Pull of the hand by the balance of every body."""
    return float(forces(system, "hauling", load=load, efficiency=1.0).hand_pull.high)


def _strands(values: Values) -> float:
    parts = 2 * round(values["travelling_pulleys"]) + round(values["end_at_load"])
    return float(travel(common_system(f"simple {parts}:1")).ratio)


def _stages(values: Values) -> float:
    first, second = round(values["first_advantage"]), round(values["second_advantage"])
    return 1.0 / _balanced(common_system(f"{first}:1 on {second}:1"), 1.0)


def _through(values: Values) -> float:
    return values["rise"] * float(
        travel(common_system(f"simple {values['advantage']:.0f}:1")).ratio
    )


def _efficiency(values: Values) -> float:
    """The hand's pull without any loss, over what it really was."""
    lossless = values["load"] / (values["hand_travel"] / values["rise"])
    return lossless / values["hand_pull"]


def _anchor(values: Values, redirect: bool) -> float:
    system = common_system(f"{values['advantage']:.0f}:1", redirect=redirect)
    found = forces(system, "hauling", load=values["load"], efficiency=1.0)
    return float(found.anchors["anchor"].high)


ORACLES: dict[str, Callable[[Values], float]] = {
    "count-the-strands": _strands,
    "one-pulls-on-another": _stages,
    "complex-five-to-one": lambda v: _balanced(common_system("complex 5:1"), v["load"]),
    "rope-through-hands": _through,
    "efficiency-from-a-pull-test": _efficiency,
    "anchor-pulled-in-line": lambda v: _anchor(v, redirect=False),
    "anchor-with-redirect": lambda v: _anchor(v, redirect=True),
}


@pytest.mark.parametrize("template", advantage.QUESTIONS, ids=lambda t: t.key)
def test_every_question_on_advantage_has_its_oracle(template: Template) -> None:
    for number in range(20):
        drawn = draw(template, "advantage", number)
        assert drawn.answer == pytest.approx(ORACLES[template.key](drawn.values), rel=1e-9)


def test_the_pull_test_is_never_better_than_lossless() -> None:
    for number in range(60):
        assert 0.4 <= draw(advantage.PULL_TEST, "real", number).answer <= 0.95
