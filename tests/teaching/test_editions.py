"""Both editions in the repository are what their source makes, and one of them tells nothing."""

import json
import re
from pathlib import Path

import nbformat
import pytest

from ropecalc.teaching import editions
from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.exercises.content import ExerciseContent
from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.question_view import question_text
from ropecalc.teaching.questions.template import Template
from ropecalc.units import UNITS, Display, units_of

ROOT = Path(__file__).parents[2]
every_exercise = pytest.mark.parametrize("content", EXERCISES.values(), ids=lambda c: c.key)


@pytest.mark.parametrize("name", editions.editions())
def test_the_repository_holds_what_the_source_makes(name: str) -> None:
    committed = nbformat.read(ROOT / name, as_version=4)
    assert editions.same_source(committed, editions.editions()[name]), (
        f"{name} differs from its source: run python -m ropecalc.teaching.editions"
    )


def test_no_edition_is_left_over() -> None:
    expected = set(editions.editions())
    found = {
        path.relative_to(ROOT).as_posix()
        for folder in ("exercises", "solutions")
        for path in (ROOT / folder).glob("*.ipynb")
    }
    assert found == expected


def test_missing_and_changed_editions_are_written_and_others_left(tmp_path: Path) -> None:
    names = list(editions.editions())
    assert editions.write(tmp_path) == names
    assert editions.write(tmp_path) == []
    first = tmp_path / names[0]
    first.write_text(first.read_text().replace("exercise", "exorcise"))
    assert editions.write(tmp_path) == [names[0]]
    nbformat.validate(nbformat.read(first, as_version=4))


@every_exercise
def test_no_answer_survives_in_the_exercise_edition(content: ExerciseContent) -> None:
    text = (ROOT / "exercises" / f"{content.file}.ipynb").read_text(encoding="utf-8")
    numbers = set(re.findall(r"\d+[.,]?\d*", text))
    told = {
        number
        for other in content.questions
        for number in re.findall(r"[\d.]+", question_text(draw(other, content.page), Display()))
    }
    for question in content.questions:
        drawn = draw(question, content.page)
        if isinstance(question, Template):
            for unit in units_of(question.kind) or (UNITS[""],):
                for figures in (2, 3, 4, 5):
                    shown = f"{drawn.answer / unit.factor:.{figures}g}"
                    if shown not in told and len(shown.replace(".", "").lstrip("0")) > 2:
                        assert shown not in numbers, f"{question.key}: {shown}"
        else:
            assert drawn.right(Display()) not in text
        for passage in wording.solution(drawn, Display()):
            for formula in passage.text:
                assert json.dumps(formula)[1:-1] not in text
        for mistake in question.mistakes:
            assert mistake.title not in text and mistake.why not in text


@every_exercise
def test_the_solution_edition_tells_everything(content: ExerciseContent) -> None:
    page = nbformat.read(ROOT / "solutions" / f"{content.file}.ipynb", as_version=4)
    said = "\n".join(
        output.data["text/plain"]
        for cell in page.cells
        if cell.cell_type == "code"
        for output in cell.outputs
    )
    for question in content.questions:
        drawn = draw(question, content.page)
        assert wording.solution(drawn, Display())[-1].words in said
        for passage in wording.common_mistakes(drawn, Display()):
            assert passage.words in said


@every_exercise
def test_each_question_stands_once_in_both(content: ExerciseContent) -> None:
    for cells in (editions.exercise_cells(content), editions.solution_cells(content)):
        asked = re.findall(r'question\("([^"]+)"\)', "\n".join(source for _, source in cells))
        assert asked == [question.key for question in content.questions]
