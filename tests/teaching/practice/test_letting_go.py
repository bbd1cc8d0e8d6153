"""However long somebody practises, the page holds what it shows and no more."""

from pathlib import Path

from ipywidgets.widgets.widget import _instances

from ropecalc.teaching.practice.mock_view import MockView
from ropecalc.teaching.practice.practice_view import PracticeView
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from tests.teaching.practice.pages import Clock, button


def observers(session: Session) -> int:
    return len(session._trait_notifiers["display"]["change"])


def alive() -> int:
    return len(_instances)


def test_fifty_questions_leave_no_more_observers_than_one() -> None:
    session, clock = Session(Record.in_memory()), Clock()
    view = PracticeView(session, clock, lambda: None)
    begun = observers(session)
    assert begun
    button(view, "Next question").click()
    counts = []
    for _ in range(50):
        clock.turn(1)
        button(view, "Give up").click()
        button(view, "Next question").click()
        assert observers(session) == begun
        counts.append(alive())
    assert max(counts) - min(counts) < 100  # kinds differ; one question has about 25 widgets
    session.record.close()


def test_new_numbers_leave_nothing_behind() -> None:
    session, clock = Session(Record.in_memory()), Clock()
    view = PracticeView(session, clock, lambda: None)
    begun, there = observers(session), alive()
    for _ in range(10):
        button(view, "New numbers").click()
    assert (observers(session), alive()) == (begun, there)
    session.record.close()


def test_a_mock_that_is_over_lets_go_of_its_questions(tmp_path: Path) -> None:
    session, clock = Session(Record.in_memory()), Clock()
    view = MockView(session, tmp_path, clock, lambda: None)
    begun = observers(session)
    seen = set()
    for _ in range(3):
        button(view, "Begin").click()
        assert observers(session) > begun
        button(view, "Finish").click()
        button(view, "Finish").click()
        assert observers(session) == begun
        seen.add(alive())
    assert len(seen) == 1
    session.record.close()
