"""The page for who studies alone: practice, a mock examination, progress."""

from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import TypeVar

from ropecalc import cautions
from ropecalc.teaching.course import find_course
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.practice.mock_view import MockView
from ropecalc.teaching.practice.practice_view import PracticeView
from ropecalc.teaching.practice.progress_view import (
    ConfidenceView,
    ExportView,
    Following,
    MasteryView,
    MistakesView,
)
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session

F = TypeVar("F", bound=Following)


def _now() -> datetime:
    return datetime.now(UTC)


class PracticePage(CoursePage):
    """Practice for one learner. ``clock`` says the time; what counts follows every answer."""

    def __init__(
        self, session: Session, course: Path, clock: Callable[[], datetime] = _now
    ) -> None:
        super().__init__(session, (cautions.KNOWLEDGE_CHECK, cautions.STATIC, cautions.AUTHORITY))
        self._course = course
        self._clock = clock
        self._followers: list[Following] = []

    def practice(self) -> PracticeView:
        """One question after another."""
        return PracticeView(self._session, self._clock, self._answered)

    def confidence(self) -> ConfidenceView:
        """How sure the learner was, against how right."""
        return self._following(ConfidenceView(self._session.record))

    def mock(self) -> MockView:
        """A mock examination against the clock."""
        return MockView(self._session, self._course, self._clock, self._answered)

    def progress(self) -> MasteryView:
        """How far the learner is with each lesson."""
        return self._following(MasteryView(self._session.record))

    def mistakes(self) -> MistakesView:
        """The last mistakes by name."""
        return self._following(MistakesView(self._session.record))

    def export(self) -> ExportView:
        """The record as files."""
        return self._following(ExportView(self._session.record))

    def _following(self, view: F) -> F:
        self._followers.append(view)
        return view

    def _answered(self) -> None:
        for view in self._followers:
            view.refresh()


def open_practice() -> PracticePage:
    """The page of practice for the learner of this machine."""
    return PracticePage(Session(Record.open()), find_course(None))
