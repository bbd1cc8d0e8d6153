"""An exercise's page: its questions, and how far the learner is."""

import pytest

from ropecalc.teaching import open_exercise, open_solution
from ropecalc.teaching.exercise import Standing, standing
from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.exercises.content import ExerciseContent
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.marking import mark
from ropecalc.teaching.record import Answer, Place, Record
from ropecalc.units import Display

every_exercise = pytest.mark.parametrize("content", EXERCISES.values(), ids=lambda c: c.key)


def give(record: Record, content: ExerciseContent, text_of: dict[str, str], **help: object) -> None:
    """Mark and keep an answer to each question named."""
    for key, text in text_of.items():
        marked = mark(draw(content.question(key), content.page), text)
        answer = Answer(0, text, marked.reading, marked.verdict, marked.mistake, **help)  # type: ignore[arg-type]
        record.keep_answer(Place(content.page, key), answer)


def solutions(content: ExerciseContent) -> dict[str, str]:
    """The answers as the solution edition shows them."""
    return {
        question.key: drawn.shown(drawn.answer, Display())
        for question in content.questions
        for drawn in [draw(question, content.page)]
    }


@every_exercise
def test_an_untouched_exercise_scores_nothing(content: ExerciseContent) -> None:
    assert standing(content, Record.open()) == Standing(0, 0, len(content.questions))


@every_exercise
def test_the_solutions_score_full_marks(content: ExerciseContent) -> None:
    record = Record.open()
    shown = solutions(content)
    for key, text in shown.items():
        assert text in open_solution(content.key).question(key).summary()
    give(record, content, shown)
    total = len(content.questions)
    assert standing(content, record) == Standing(total, total, total)


@every_exercise
def test_mistakes_score_nothing(content: ExerciseContent) -> None:
    record = Record.open()
    for question in content.questions:
        drawn = draw(question, content.page)
        for wrong in drawn.mistaken.values():
            give(record, content, {question.key: drawn.shown(wrong, Display())})
    assert standing(content, record).right == 0
    assert standing(content, record).tried == len(content.questions)


@every_exercise
def test_what_cannot_be_read_is_no_try_and_a_copied_solution_not_right(
    content: ExerciseContent,
) -> None:
    record = Record.open()
    give(record, content, {key: "?" for key in solutions(content)})
    assert standing(content, record).tried == 0
    give(record, content, solutions(content), solution_seen=True)
    assert standing(content, record).right == 0


@every_exercise
def test_progress_follows_the_answers(content: ExerciseContent) -> None:
    exercise = open_exercise(content.key)
    progress = exercise.progress()
    first = content.questions[0]
    view = exercise.question(first.key)
    assert progress.summary().startswith(f"0 of {len(content.questions)} right, 0 tried.")
    view._entry.value = solutions(content)[first.key]
    view._answer()
    line = progress.children[0].value
    assert f"1 of {len(content.questions)} right, 1 tried." in line
    assert "not a certification" in line and 'role="status"' in line


@every_exercise
def test_questions_of_the_exercise_are_distinct(content: ExerciseContent) -> None:
    keys = [question.key for question in content.questions]
    assert len(set(keys)) == len(keys) >= 4


def test_an_unknown_question_is_named_with_those_there_are() -> None:
    with pytest.raises(KeyError, match="attendant-push"):
        open_exercise("holding-a-litter-off").question("nothing")


def test_units_and_cautions_stand_on_both_pages() -> None:
    for page in (open_exercise("holding-a-litter-off"), open_solution("holding-a-litter-off")):
        assert page.units().summary().startswith("Units: forces in kN")
        assert "authority having jurisdiction" in page.cautions().summary()
