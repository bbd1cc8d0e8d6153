"""Practice on the page: the next question, how sure, and what is there after an interruption."""

from datetime import UTC, datetime

import pytest

from ropecalc.teaching.practice.history import asked
from ropecalc.teaching.practice.practice_view import (
    NOTHING_WRONG,
    WRONG,
    PracticeView,
    place_of,
)
from ropecalc.teaching.questions.bank import LESSON_OF
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from tests.teaching.practice.pages import Clock, button, mistaken, page_text, right

pytestmark = pytest.mark.usefixtures("no_faults")


@pytest.fixture
def session() -> Session:
    return Session(Record.in_memory())


def practice(session: Session, clock: Clock | None = None) -> PracticeView:
    return PracticeView(session, clock or Clock(), lambda: None)


def key(view: PracticeView) -> str:
    assert view._question is not None
    return view._question._template.key


def answer(view: PracticeView, text: str) -> None:
    assert view._question is not None
    view._question._entry.value = text
    button(view, "Check").click()


def go_on(view: PracticeView) -> None:
    button(view, "Next question").click()


def test_a_fresh_record_begins_the_same_for_everybody(session: Session) -> None:
    assert practice(session).summary() == practice(Session(Record.in_memory())).summary()


def test_the_question_that_was_left_is_there_again(session: Session) -> None:
    view = practice(session)
    answer(view, right(view._question._drawn))
    go_on(view)
    second = key(view)
    view._question._entry.value = "2,5"
    again = practice(session)
    assert key(again) == second and again._question._entry.value == "2,5"


def test_topics_mix_and_nothing_new_is_asked_twice(session: Session) -> None:
    view, met = practice(session, Clock(datetime.now(UTC))), []
    for _ in range(12):
        met.append(key(view))
        answer(view, right(view._question._drawn))
        go_on(view)
    assert len(set(met)) == 12
    assert len({LESSON_OF[k] for k in met}) == 12


def test_what_was_wrong_comes_back_with_other_numbers(session: Session) -> None:
    """The record stamps answers with its own time, so the clock here must lie after it."""
    view = practice(session)
    first, before = key(view), dict(view._question._drawn.values)
    answer(view, mistaken(view._question._drawn)[0])
    go_on(view)
    answer(view, right(view._question._drawn))
    go_on(view)
    assert key(view) == first
    assert dict(view._question._drawn.values) != before
    assert "went wrong" in page_text(view)


def test_a_question_passed_over_waits(session: Session) -> None:
    view = practice(session)
    met = []
    for _ in range(4):
        met.append(key(view))
        go_on(view)
    assert len(set(met)) == 4
    assert asked(session.record) == ()


def test_who_reads_the_solution_and_answers_nothing_has_not_known_it(session: Session) -> None:
    view = practice(session)
    first = key(view)
    button(view, "Give up").click()
    go_on(view)
    (one,) = asked(session.record)
    assert (one.question, one.right) == (first, False)
    assert session.record.work(place_of(first)).draw == 0
    view._what.value = WRONG
    assert key(view) == first and session.record.work(place_of(first)).draw == 1


def test_new_numbers_after_the_solution_count_as_well(session: Session) -> None:
    view = practice(session)
    view._sure.value = "sure"
    button(view, "Give up").click()
    button(view, "New numbers").click()
    assert [one.right for one in asked(session.record)] == [False]
    assert view._sure.value is None and not view._sure.disabled


def test_one_lesson_only_and_remembered(session: Session) -> None:
    view = practice(session)
    view._what.value = "10"
    for _ in range(4):
        assert LESSON_OF[key(view)] == 10
        answer(view, right(view._question._drawn))
        go_on(view)
    assert practice(session)._what.value == "10"


def test_where_nothing_went_wrong_it_says_so_and_goes_on_afterwards(session: Session) -> None:
    view = practice(session)
    view._what.value = WRONG
    assert view.summary() == NOTHING_WRONG and NOTHING_WRONG in page_text(view)
    go_on(view)
    assert NOTHING_WRONG in page_text(view)
    view._what.value = "3"
    assert LESSON_OF[key(view)] == 3


def test_how_sure_is_kept_before_the_check_and_fixed_by_it(session: Session) -> None:
    view = practice(session)
    view._sure.value = "guess"
    view._sure.value = "sure"
    place = place_of(key(view))
    assert session.record.confidence() == {(place, 0): "sure"}
    assert practice(session)._sure.value == "sure"
    answer(view, mistaken(view._question._drawn)[0])
    assert view._sure.disabled
    view._sure.value = "guess"
    assert session.record.confidence() == {(place, 0): "sure"}
    (one,) = asked(session.record)
    assert (one.level, one.right) == ("sure", False)


def test_one_need_not_say_how_sure_one_is(session: Session) -> None:
    view = practice(session)
    answer(view, right(view._question._drawn))
    assert session.record.confidence() == {}
    go_on(view)
    assert view._sure.value is None and not view._sure.disabled


def test_a_setting_of_another_release_does_no_harm(session: Session) -> None:
    session.record.keep_setting("practice.what", "99")
    session.record.keep_setting("practice.question", "no-such-question")
    assert key(practice(session)) == key(practice(Session(Record.in_memory())))
