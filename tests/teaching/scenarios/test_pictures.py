"""The drawing beside a part of a scenario: as readable as a question's, at every size it gets."""

import pytest

from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.diagrams import picture_of
from ropecalc.teaching.questions.diagrams.likeness import LIKE
from ropecalc.teaching.questions.draw import Draw
from ropecalc.teaching.questions.template import Template
from ropecalc.teaching.scenarios import PARTS, SCENARIOS
from ropecalc.teaching.scenarios.situation import draw_for_paper, draw_situation
from ropecalc.units import Display
from tests.teaching.questions.test_diagrams import _TALLEST, _WIDEST, _overlap, _shown

DRAWS = 15
every_likeness = pytest.mark.parametrize("key", LIKE)


@pytest.fixture(scope="module")
def drawn() -> dict[str, list[Draw]]:
    found: dict[str, list[Draw]] = {key: [] for key in PARTS}
    for scenario in SCENARIOS.values():
        for number in range(DRAWS):
            for situation in (
                draw_situation(scenario, "picture", number),
                draw_for_paper(scenario, f"picture {number}"),
            ):
                for part in scenario.parts:
                    found[part.key].append(situation.part(part.key))
    return found


@every_likeness
def test_it_is_made_from_a_question_with_the_same_quantities(key: str) -> None:
    part, question = PARTS[key], BANK[LIKE[key]]
    assert isinstance(part, Template) and isinstance(question, Template)
    assert part.derivation is question.derivation


@every_likeness
def test_it_shows_its_givens_hides_its_answer_and_can_be_read(
    key: str, drawn: dict[str, list[Draw]]
) -> None:
    for draw in drawn[key]:
        picture = picture_of(draw, Display())
        assert picture is not None
        shown = _shown(picture)
        givens = {given.show(draw.values[given.name], Display()) for given in draw.template.givens}
        missing = {value for value in givens if value not in shown}
        assert not missing, (missing, shown)
        answer = draw.shown(draw.answer, Display())
        assert answer not in {words.text for words in picture.words} - givens
        assert picture.width <= _WIDEST and picture.height <= _TALLEST
        for place, one in enumerate(picture.words):
            left, bottom, right, top = one.box
            assert left >= 0 and bottom >= 0, one
            assert right <= picture.width and top <= picture.height, one
            for other in picture.words[:place]:
                assert not _overlap(one.box, other.box), (draw.values, one.text, other.text)
