"""The teaching notes: whole for each lesson, with computed readings in the reader's units."""

import html

import pytest

from ropecalc.teaching.instructor_page import OUTDOORS, InstructorPage
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.record import Record
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.session import Session

every_lesson = pytest.mark.parametrize("lesson", LESSONS.values(), ids=lambda lesson: lesson.key)


@every_lesson
def test_the_notes_of_a_lesson_are_whole(lesson) -> None:
    notes = lesson.notes
    assert 20 <= sum(minutes for minutes, _ in notes.timing) <= 60
    assert len(notes.board) >= 2
    assert notes.field
    for text in (*(what for _, what in notes.timing), *notes.board):
        assert text[0].isupper() and text.endswith((".", "?"))


def test_they_follow_the_units_and_carry_the_caution() -> None:
    session = Session(Record.in_memory())
    view = InstructorPage(session).notes()
    assert " kN" in view.summary()
    session.choose_unit("force", "lbf")
    session.choose_unit("length", "ft")
    session.choose_unit("mass", "lb")
    assert " kN" not in view.summary()
    assert " kN" not in "".join(part.value for part in view.children)
    assert view.summary().count(OUTDOORS) == len(LESSONS)


@every_lesson
def test_each_mistake_of_its_questions_is_named(lesson) -> None:
    summary = InstructorPage(Session(Record.in_memory())).notes().summary()
    for question in (*lesson.questions, *lesson.myths):
        line = next(x for x in summary.splitlines() if x.startswith(f"- “{question.title}”: "))
        for mistake in question.mistakes:
            assert mistake.named in line


def test_each_scenario_is_there_with_the_points_of_its_open_question() -> None:
    view = InstructorPage(Session(Record.in_memory())).scenarios()
    assert len(view.children) == len(SCENARIOS)
    for scenario, fold in zip(SCENARIOS.values(), view.children, strict=True):
        for text in (view.summary(), html.unescape(fold.value)):
            assert scenario.title in text
            for point in (point for judged in scenario.judged for point in judged.points):
                assert point in text
            for question in scenario.questions:
                assert all(mistake.named in text for mistake in question.mistakes)
