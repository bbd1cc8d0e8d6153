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
            for name in part.after:
                given, answer = carried[name]
                assert on_grid(given, answer) in [pytest.approx(v) for v in draw.values.values()]


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
}


@pytest.mark.parametrize("key", PUBLISHED)
def test_reference_values(key: str) -> None:
    values, expected = PUBLISHED[key]
    scenario = SCENARIOS[key]
    assert set(values) == {given.name for given in scenario.givens}
    situation = Situation(scenario, 0, values)
    for part, (value, margin) in expected.items():
        assert situation.part(part).answer == pytest.approx(value, abs=margin), part
