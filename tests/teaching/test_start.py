"""The start page counts what was answered rightly, on every page of the course."""

from ropecalc.cautions import KNOWLEDGE_CHECK
from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.record import Answer, Place, Record
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.session import Session
from ropecalc.teaching.start import Start


def test_progress_counts_each_page_by_itself() -> None:
    record = Record.in_memory()
    progress = Start(Session(record)).progress()
    assert progress.summary().count("0 of") == len(LESSONS) + len(EXERCISES) + len(SCENARIOS)
    exercise = next(iter(EXERCISES.values()))
    place = Place(exercise.page, exercise.questions[0].key)
    record.keep_answer(place, Answer(draw=0, text="1 kN", reading="1 kN", verdict="wrong"))
    assert "1 of" not in progress.summary()
    record.keep_answer(place, Answer(draw=0, text="2 kN", reading="2 kN", verdict="right"))
    lines = progress.summary().splitlines()
    assert f"1 of {len(exercise.questions)} questions right" in lines[len(LESSONS)]
    assert "0 of" in lines[0]
    record.close()


def test_a_score_never_claims_to_be_more() -> None:
    record = Record.in_memory()
    assert KNOWLEDGE_CHECK in Start(Session(record)).progress().summary()
    record.close()


def test_the_page_says_where_the_answers_are() -> None:
    record = Record.in_memory("Nothing can be kept today.")
    progress = Start(Session(record)).progress()
    assert "Nothing can be kept today." in progress.children[0].value
    record.close()
