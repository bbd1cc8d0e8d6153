"""The start page: units, how far the learner has come, and where their record is kept."""

from html import escape

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.teaching.buttons import button
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.exercise import PageWithQuestions, standing
from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.record import Record, record_path
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown


class CourseProgress(Shown):
    """How many questions of each page have been answered rightly."""

    def __init__(self, record: Record) -> None:
        self._record = record
        self._table = widgets.HTML()
        super().__init__([self._table, button("Count again", self._refresh, icon="refresh")])
        self._refresh()

    def summary(self) -> str:
        """One line a page, then what a score is worth."""
        return "\n".join([*self._lines(), cautions.KNOWLEDGE_CHECK])

    def _lines(self) -> list[str]:
        pages: list[tuple[str, PageWithQuestions]]
        pages = [("Lesson", lesson) for lesson in LESSONS.values()]
        pages += [("Exercise", exercise) for exercise in EXERCISES.values()]
        lines = []
        for sort, page in pages:
            now = standing(page, self._record)
            lines.append(f"{sort} “{page.title}”: {now.right} of {now.total} questions right")
        return lines

    def _refresh(self) -> None:
        rows = "".join(f"<li>{escape(line)}</li>" for line in self._lines())
        kept = self._record.notice or (
            f"Your answers are kept in {record_path()}. Nothing leaves this computer."
        )
        after = "".join(f"<p>{escape(line)}</p>" for line in (cautions.KNOWLEDGE_CHECK, kept))
        self._table.value = f"<ul role='status'>{rows}</ul>{after}"


class Start(CoursePage):
    """The start page for one learner."""

    def __init__(self, session: Session) -> None:
        super().__init__(session, (cautions.AUTHORITY, cautions.STATIC))

    def progress(self) -> CourseProgress:
        """How far the learner has come."""
        return CourseProgress(self._session.record)


def open_start() -> Start:
    """The start page for the learner of this machine."""
    return Start(Session(Record.open()))
