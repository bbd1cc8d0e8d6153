"""Every scenario, drawn a hundred times: usable, answerable, right by plain arithmetic."""

from math import radians

import pytest

from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.draw import Draw, candidate
from ropecalc.teaching.questions.marking import Verdict, mark
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.scenarios.content import Part, Scenario, on_grid
from ropecalc.teaching.scenarios.situation import Situation, draw_situation, suitable
from ropecalc.units import Display
from tests.teaching.scenarios.plain import ORACLES, TAKEN

DRAWS = 100
every_scenario = pytest.mark.parametrize("scenario", SCENARIOS.values(), ids=lambda s: s.key)
AMERICAN = Display(force="lbf", length="ft", mass="lb")


@pytest.fixture(scope="module")
def drawn() -> dict[str, list[Situation]]:
    return {
        scenario.key: [draw_situation(scenario, "test", number) for number in range(DRAWS)]
        for scenario in SCENARIOS.values()
    }


def parts(scenario: Scenario, situation: Situation) -> list[tuple[Part, Draw]]:
    return [(part, situation.part(part.key)) for part in scenario.parts]


@every_scenario
def test_most_numbers_can_be_used(scenario: Scenario) -> None:
    tries = [suitable(scenario, candidate(scenario, "share", 0, n)) for n in range(DRAWS)]
    assert sum(tries) >= 0.5 * DRAWS


@every_scenario
def test_every_part_is_answered_right_by_plain_arithmetic(
    scenario: Scenario, drawn: dict[str, list[Situation]]
) -> None:
    for situation in drawn[scenario.key]:
        for part, draw in parts(scenario, situation):
            expected = ORACLES[part.key](draw.values)
            assert draw.answer == pytest.approx(expected, rel=1e-6), part.key
            taken = TAKEN.get(part.key, lambda s: {})(situation.values)
            for given in part.question.givens:
                own = draw.values[given.name]
                if given.name in taken:
                    assert own == pytest.approx(on_grid(given, taken[given.name])), part.key
                elif given.name in situation.values and given.name not in part.take:
                    assert own == pytest.approx(situation.values[given.name]), part.key


@every_scenario
def test_what_is_carried_on_is_the_answer_as_shown(
    scenario: Scenario, drawn: dict[str, list[Situation]]
) -> None:
    for situation in drawn[scenario.key]:
        carried = {
            part.gives.name: (part.gives, situation.part(part.key).answer)
            for part in scenario.parts
            if part.gives
        }
        for part, draw in parts(scenario, situation):
            if any(callable(source) for source in part.take.values()):
                continue  # worked out from what is carried on: see TAKEN and the next test
            for name in part.after:
                given, answer = carried[name]
                assert on_grid(given, answer) in [pytest.approx(v) for v in draw.values.values()]


def test_geometry_and_stretch_come_in_together() -> None:
    situation = draw_situation(SCENARIOS["enough-rope"], "test")
    play, stretch, through = (
        situation.part(f"enough-rope-{name}") for name in ("play", "stretch", "through-the-device")
    )
    both = round(play.answer, 1) + round(stretch.answer, 1)
    assert through.values["take_in"] == pytest.approx(both)


@every_scenario
def test_answers_as_shown_are_right_and_mistakes_are_known(
    scenario: Scenario, drawn: dict[str, list[Situation]]
) -> None:
    for situation in drawn[scenario.key][:10]:
        for part, draw in parts(scenario, situation):
            right = mark(draw, draw.shown(draw.answer, Display()))
            assert right.verdict is Verdict.RIGHT, (part.key, right)
            for key, wrong in draw.mistaken.items():
                found = mark(draw, draw.shown(wrong, Display()))
                assert (found.verdict, found.mistake) == (Verdict.MISTAKE, key), part.key


@every_scenario
@pytest.mark.parametrize("display", [Display(), AMERICAN], ids=["metric", "american"])
def test_story_and_stems_are_whole_sentences(
    scenario: Scenario, display: Display, drawn: dict[str, list[Situation]]
) -> None:
    situation = drawn[scenario.key][0]
    texts = [situation.story(display)]
    texts += [wording.stem(draw, display) for _, draw in parts(scenario, situation)]
    for text in texts:
        assert not set("{}") & set(text)
        assert text[-1] in ".?"
        assert "  " not in text
    told = {name for name in (g.name for g in scenario.givens) if f"{{{name}}}" in scenario.story}
    assert told == {given.name for given in scenario.givens}


@every_scenario
def test_a_person_judges_at_least_one_part(scenario: Scenario) -> None:
    assert scenario.judged
    for judged in scenario.judged:
        assert len(judged.points) >= 3
        assert all(point.endswith(".") for point in judged.points)
        assert judged.question.endswith(("?", "."))


def test_scenarios_belong_to_lessons_and_no_key_is_used_twice() -> None:
    numbers = {lesson.number for lesson in LESSONS.values()}
    keys = list(BANK)
    for scenario in SCENARIOS.values():
        assert set(scenario.lessons) <= numbers
        keys += scenario.keys
        assert not any(question.must_pass for question in scenario.questions)
    assert len(keys) == len(set(keys))
    order = [scenario.number for scenario in SCENARIOS.values()]
    assert order == sorted(order)


def test_a_part_goes_on_only_with_what_an_earlier_one_gives() -> None:
    scenario = SCENARIOS["high-outcrop"]
    with pytest.raises(ValueError, match="which nothing gives"):
        Scenario(**{**vars(scenario), "parts": scenario.parts[::-1]})


# --- reference values: published for the same givens, to the figures published --------------------

WALL = {"x_D": 0.3, "z_D": 32.0, "x_B": 40.0, "z_B": 0.5}
PUBLISHED: dict[str, tuple[dict[str, float], dict[str, tuple[float, float]]]] = {
    "one-face-three-ways": (
        {
            **WALL,
            "mass_attended": 200.0,
            "mass_alone": 115.0,
            "off_plumb": 0.9,
            "z_low": 8.0,
            "z_high": 28.0,
            "push_limit": 300.0,
        },
        {
            "one-face-weight-attended": (1960, 5),
            "one-face-weight-alone": (1130, 5),
            "one-face-push-low": (70, 5),
            "one-face-push-high": (440, 5),
            "one-face-push-ends": (32.0 - 26.1, 0.05),
            "one-face-tag-line": (640, 5),
            "one-face-haul-against-tag": (2390, 10),
            "one-face-track-lines": (370, 5),
            "one-face-haul-beside-track": (1010, 5),
        },
    ),
    "high-outcrop": (
        {
            **WALL,
            "x": 2.5,
            "z": 27.0,
            "load": 200 * 9.80665,
            "moved_out": 0.5,
            "efficiency": 0.9,
            "x_B_far": 60.0,
        },
        {
            "high-outcrop-haul-leg": (radians(66.3), radians(0.06)),
            "high-outcrop-ground-leg": (radians(35.2), radians(0.06)),
            "high-outcrop-angle-between": (radians(149), radians(0.5)),
            "high-outcrop-track-lines": (1530, 5),
            "high-outcrop-haul-against-tag": (3110, 10),
            "high-outcrop-haul-beside-track": (1580, 10),
            "high-outcrop-directional-out": (1070, 5),
            "high-outcrop-second-line": (850, 5),
            "high-outcrop-far-hub": (1190, 5),
            "high-outcrop-nearest-hub": (14.2, 0.05),
        },
    ),
    "low-outcrop": (
        {
            **WALL,
            "x_tip": 1.8,
            "z_tip": 5.0,
            "clearance": 0.7,
            "z_start": 1.5,
            "x_middle": 1.0,
            "z_middle": 20.0,
            "x_top": 0.8,
            "z_top": 29.0,
            "load": 200 * 9.80665,
        },
        {
            "low-outcrop-at-the-tip": (163, 1),
            "low-outcrop-angle-at-the-litter": (radians(102), radians(0.6)),
            "low-outcrop-governing": (460, 5),
            "low-outcrop-play": (16.6, 0.05),
        },
    ),
    "follow-the-rope": (
        {
            "lines": 3.0,
            "near_line": 1200.0,
            "efficiency": 0.85,
            "device_share": 0.6,
            "tail_advantage": 3.0,
        },
        {
            "follow-the-rope-device": (649, 1),
            "follow-the-rope-far-line": (630, 5),
            "follow-the-rope-hub": (2690, 5),
            "follow-the-rope-hub-pulley": (1020, 5),
            "follow-the-rope-let-out": (2700, 6),
            "follow-the-rope-hands": (360, 5),
        },
    ),
    "enough-rope": (
        {
            "lines": 2.0,
            "x_1": 7.8,
            "z_1": 1.0,
            "x_2": 2.0,
            "z_2": 25.0,
            "x_3": 0.8,
            "z_3": 30.0,
            "x_A": 0.3,
            "z_A": 32.0,
            "x_B": 40.0,
            "z_B": 0.5,
            "line_carries": 800.0,
            "stiffness": 50_000.0,
            "least_play": 1.0,
            "tail": 6.0,
            "rope_at_hand": 50.0,
        },
        {
            "enough-rope-track-length": (64.1, 0.05),
            "enough-rope-play": (13.0, 0.05),
            "enough-rope-stretch": (1.02, 0.01),
            "enough-rope-tensioner": (66, 0.5),
            "enough-rope-through-the-device": (56, 0.5),
            "enough-rope-tag-line": (13.0, 0.05),
        },
    ),
    "which-way-it-falls": (
        {
            **WALL,
            "x": 2.5,
            "z_high": 27.0,
            "z_low": 2.0,
            "z_near": 31.2,
            "load": 200 * 9.80665,
            "back_depression": radians(28),
            "head_height": 2.0,
            "head_reach": 0.3,
        },
        {
            "which-way-pull-on-the-head": (4560, 20),
            "which-way-lean-high": (radians(19.1), radians(0.06)),
            "which-way-lands-high": (0.39, 0.008),
            "which-way-lean-low": (radians(28.9), radians(0.06)),
            "which-way-track-lines-forgotten": (2310, 8),
        },
    ),
    "four-people": (
        {
            "haul_tension": 1580.0,
            "friction": 0.24,
            "turn": radians(60),
            "efficiency": 0.9,
            "raise_height": 29.0,
            "long_throw": 4.0,
            "short_throw": 2.0,
            "reset_loss": 0.3,
            "hand_speed": 0.3,
            "reset_time": 20.0,
            "people": 5.0,
            "burst_per_person": 350.0,
        },
        {
            "four-people-edge-raising": (2030, 5),
            "four-people-edge-lowering": (1230, 5),
            "four-people-hands-3": (750, 5),
            "four-people-throws-3": (8, 0),
            "four-people-throws-9": (17, 0),
            "four-people-time-3": (450, 25),
            "four-people-time-9": (1330, 5),
            "four-people-snag": (12900, 60),
        },
    ),
    "cells-disagree": (
        {
            "haul_tension": 1620.0,
            "far_reading": 880.0,
            "near_reading": 720.0,
            "haul_elevation": radians(66),
            "ground_depression": radians(35),
            "full_scale": 40_000.0,
            "cell_error": 0.01,
            "efficiency": 0.9,
            "lines": 2.0,
            "mass": 200.0,
        },
        {
            "cells-disagree-weight-from-readings": (2020, 5),
            "cells-disagree-ratio": (1 / 1.23, 0.005),
            "cells-disagree-weight-from-mass": (1960, 5),
            "cells-disagree-from-geometry": (1550, 5),
            "cells-disagree-error": (0.56, 0.005),
        },
    ),
    "one-line-goes": (
        {
            **WALL,
            "x": 2.5,
            "z": 27.0,
            "z_low": 6.0,
            "load": 200 * 9.80665,
            "efficiency": 0.9,
            "lines": 2.0,
            "play": 3.0,
            "slip": 0.2,
        },
        {
            "one-line-goes-worst": (850, 5),
            "one-line-goes-slack": (3.0, 0.01),
            "one-line-goes-fall": (0.46, 0.005),
            "one-line-goes-speed": (3.0, 0.05),
            "one-line-goes-peak": (2290, 6),
            "one-line-goes-speed-low": (1.3, 0.05),
        },
    ),
    "whole-raise-in-numbers": (
        {
            **WALL,
            **{f"x_{n}": x for n, x in enumerate((8.6, 6.0, 3.9, 2.3, 1.3, 0.6), 1)},
            **{f"z_{n}": z for n, z in enumerate((1.5, 10.0, 18.0, 25.0, 29.0, 31.0), 1)},
            "load": 200 * 9.80665,
            "lines": 2.0,
            "efficiency": 0.88,
            "least_play": 1.0,
            "line_stretch": 1.0,
            "tail": 6.0,
            "strength": 8000.0,
            "strength_uncertainty": 0.0,
            "load_uncertainty": 0.3,
            "hub_mass": 2500.0,
            "hub_friction": 0.5,
        },
        {
            "whole-raise-governing": (1080, 5),
            "whole-raise-haul-line": (1660, 10),
            "whole-raise-play": (12.2, 0.05),
            "whole-raise-tensioner-rope": (63, 0.5),
            "whole-raise-worst-line": (610, 6),
            "whole-raise-margin": (10.1, 0.1),
            "whole-raise-uplift": (640, 30),
            "whole-raise-hub-slides": (11_100, 60),
        },
    ),
}


@pytest.mark.parametrize("key", PUBLISHED)
def test_reference_values(key: str) -> None:
    values, expected = PUBLISHED[key]
    scenario = SCENARIOS[key]
    assert set(values) == {given.name for given in scenario.givens}
    situation = Situation(scenario, 0, values)
    for part, (value, margin) in expected.items():
        assert situation.part(part).answer == pytest.approx(value, abs=margin), part
