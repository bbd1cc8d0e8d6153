"""Every question of the bank: its answer holds against an oracle, its draws suit, its words fit."""

from collections.abc import Callable, Mapping
from importlib import import_module
from math import atan2, cos, hypot, radians, sin
from pathlib import Path

import numpy as np
import pytest

from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.draw import candidate, draw, suits
from ropecalc.teaching.questions.template import Template
from ropecalc.units import Display, Kind
from tests.teaching.questions.every import TEMPLATES, every_template

AMERICAN = Display(force="lbf", length="ft", mass="lb")


# --- oracles: forces by a linear system, geometry by walking along lines; no derivation is used


def forces(pulls: list[tuple[float, float]], load: float) -> np.ndarray:
    """How hard each of two directions must pull to balance the load."""
    found = np.linalg.solve(np.array(pulls).T, [0.0, load])
    return np.asarray(found)


def inward(angle: float) -> tuple[float, float]:
    """A leg that leaves the litter towards the wall, ``angle`` above the horizontal."""
    return -cos(angle), sin(angle)


def outward(angle: float) -> tuple[float, float]:
    """A leg that leaves the litter away from the wall, ``angle`` above the horizontal."""
    return cos(angle), sin(angle)


def both(one: tuple[float, float], other: tuple[float, float]) -> tuple[float, float]:
    """One rope that runs both ways with equal tension."""
    return one[0] + other[0], one[1] + other[1]


def haul_and_line(v: Mapping[str, float], track: bool) -> np.ndarray:
    haul, ground = inward(v["haul_elevation"]), outward(-v["ground_depression"])
    return forces([haul, both(haul, ground) if track else ground], v["load"])


def attendant(v: Mapping[str, float]) -> np.ndarray:
    return forces([inward(atan2(v["drop"], v["off_plumb"])), (1.0, 0.0)], v["load"])


def tag_from_places(v: Mapping[str, float]) -> float:
    at = np.array([v["x"], v["z"]])
    legs = [np.array([v["x_D"], v["z_D"]]) - at, np.array([v["x_B"], v["z_B"]]) - at]
    units = [(leg / hypot(*leg)).tolist() for leg in legs]
    return float(forces(units, v["load"])[1])


def track_lift(v: Mapping[str, float]) -> float:
    rope = both(inward(v["haul_elevation"]), outward(-v["ground_depression"]))
    return v["track_tension"] * rope[1]


def along(start: tuple[float, float], through: tuple[float, float], height: float) -> float:
    """How far out the straight line from ``start`` through a point is at ``height``."""
    return float(np.interp(-height, [-start[1], -through[1]], [start[0], through[0]]))


def beyond(start: tuple[float, float], through: tuple[float, float], height: float) -> float:
    """The same below ``through``."""
    a, b = np.polyfit([start[1], through[1]], [start[0], through[0]], 1)
    return float(a * height + b)


def clearing(v: Mapping[str, float]) -> float:
    return beyond((v["x_D"], v["z_D"]), (v["x_O"] + v["clearance"], v["z_O"]), v["z"])


def taken_in(v: Mapping[str, float]) -> float:
    top = np.array(inward(v["track_elevation"])) * 20.0
    hub = np.array(outward(-v["ground_depression"])) * 50.0

    def length(rise: float) -> float:
        at = np.array([0.0, rise])
        return float(np.linalg.norm(top - at) + np.linalg.norm(hub - at))

    step = 1e-5
    return (length(-step) - length(step)) / (2 * step)


def tilt(v: Mapping[str, float]) -> float:
    down = v["load"] + v["side_pull"] / cos(v["ground_depression"]) * sin(v["ground_depression"])
    return atan2(v["side_pull"], down)


ORACLES: dict[str, Callable[[Mapping[str, float]], float]] = {
    "attendant-push": lambda v: float(attendant(v)[1]),
    "attendant-haul-tension": lambda v: float(attendant(v)[0]),
    "tag-tension": tag_from_places,
    "haul-against-tag": lambda v: float(haul_and_line(v, track=False)[0]),
    "haul-beside-track": lambda v: float(haul_and_line(v, track=True)[0]),
    "track-tension": lambda v: float(haul_and_line(v, track=True)[1]),
    "track-lift": track_lift,
    "hub-across-the-gorge": lambda v: float(
        forces([inward(v["haul_elevation"]), outward(v["line_elevation"])], v["load"])[1]
    ),
    "tag-on-the-rail": tilt,
    "out-of-reach": lambda v: along((v["x_D"], v["z_D"]), (v["x_B"], v["z_B"]), v["z"]),
    "clear-the-haul-line": clearing,
    "take-in-rate": taken_in,
    "hub-uplift": lambda v: v["line_tension"] * outward(v["ground_depression"])[1],
    "hub-too-close": lambda v: beyond((v["x_D"], v["z_D"]), (v["x"], v["z"]), v["z_B"]),
}
for _mirror in sorted(Path(__file__).parent.glob("test_bank_*.py")):
    ORACLES |= getattr(import_module(f"tests.teaching.questions.{_mirror.stem}"), "ORACLES", {})
"""Those of this file, and those of the files beside it that mirror other modules of numbers."""


def test_keys_are_there_once_and_each_has_an_oracle() -> None:
    keys = [template.key for template in TEMPLATES]
    assert len(set(keys)) == len(keys) >= 10
    assert set(ORACLES) == set(keys)


@every_template
def test_answers_hold_against_the_oracle(template: Template) -> None:
    for number in range(60):
        drawn = draw(template, "oracle", number)
        assert drawn.answer == pytest.approx(ORACLES[template.key](drawn.values), rel=1e-6)


@every_template
def test_enough_draws_suit_and_all_that_suit_are_clear(template: Template) -> None:
    attempts = 250
    good = 0
    for attempt in range(attempts):
        values = candidate(template, "acceptance", 0, attempt)
        if not suits(template, values):
            continue
        good += 1
        answer, wrong = template.answer(values), list(template.mistaken(values).values())
        margin = template.tolerance.margin(answer)
        assert margin > 0
        for index, mistaken in enumerate(wrong):
            assert abs(mistaken - answer) > 2 * margin
            for other in wrong[:index]:
                assert abs(mistaken - other) > 0.03 * max(abs(mistaken), abs(other))
        if {"haul_elevation", "ground_depression"} <= set(values):
            assert values["haul_elevation"] - values["ground_depression"] >= radians(12)
    assert good >= 0.3 * attempts


@every_template
@pytest.mark.parametrize("display", [Display(), AMERICAN], ids=["metric", "american"])
def test_what_is_shown_is_exact_enough_to_be_marked_right(
    template: Template, display: Display
) -> None:
    """Who calculates with the rounded numbers on the page must still be right."""
    from ropecalc.units import parse_quantity

    for number in range(40):
        drawn = draw(template, "shown", number)
        read = {
            given.name: parse_quantity(
                given.show(drawn.values[given.name], display), given.variable.kind
            )[0]
            for given in template.givens
        }
        margin = template.tolerance.margin(drawn.answer)
        assert abs(template.answer(read) - drawn.answer) <= 0.75 * margin


@every_template
def test_words_are_complete(template: Template) -> None:
    drawn = draw(template, "words")
    stem = wording.stem(drawn, Display())
    assert "{" not in stem and "}" not in stem
    for given in template.givens:
        assert given.show(drawn.values[given.name], Display()) in stem
    assert template.difficulty in (1, 2, 3)
    assert 3 <= len(template.mistakes) <= 4
    assert len({m.key for m in template.mistakes}) == len(template.mistakes)
    for mistake in template.mistakes:
        assert mistake.key == mistake.key.lower().replace(" ", "-")
        assert mistake.why.endswith(".") and not mistake.title.endswith(".")


@every_template
def test_hints_lead_on_without_the_answer(template: Template) -> None:
    for number in range(10):
        drawn = draw(template, "hints", number)
        display = Display()
        hints = wording.hints(drawn, display)
        assert len(hints) in (3, 4)
        assert not hints[0].latex, "the first hint is words only"
        assert hints[1].latex
        answer = display.latex(drawn.answer, template.kind)
        for hint in hints:
            assert not any(line.endswith(f"= {answer}") for line in hint.latex)
            assert all("= " in line for line in hint.latex)
        solved = wording.solution(drawn, display)[-1].words
        assert solved.endswith(f"{display.show(drawn.answer, template.kind)}.")


def test_ratios_have_no_unit_and_angles_are_in_degrees() -> None:
    kinds = {template.key: template.kind for template in TEMPLATES}
    assert kinds["take-in-rate"] is Kind.RATIO
    assert kinds["tag-on-the-rail"] is Kind.ANGLE
