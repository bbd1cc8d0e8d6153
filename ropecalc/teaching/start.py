"""The start page: units, how far the learner has come, and where their record is kept."""

from html import escape
from pathlib import Path

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.teaching.buttons import button, row
from ropecalc.teaching.course import find_course
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.exercise import PageWithQuestions, standing
from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.papers.paper_page import HANDED_IN
from ropecalc.teaching.papers.trust import FOLDER, papers_in, sign_papers
from ropecalc.teaching.record import Record, record_path
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown


class CourseProgress(Shown):
    """How many questions of each page have been answered rightly."""

    def __init__(self, record: Record) -> None:
        self._record = record
        self._table = widgets.HTML()
        again = button("Count again", self._refresh, icon="refresh")
        super().__init__([self._table, row(again)])
        self._refresh()

    def summary(self) -> str:
        """One line a page, then what a score is worth."""
        return "\n".join([*self._lines(), cautions.KNOWLEDGE_CHECK])

    def _lines(self) -> list[str]:
        pages: list[tuple[str, PageWithQuestions]]
        pages = [("Lesson", lesson) for lesson in LESSONS.values()]
        pages += [("Exercise", exercise) for exercise in EXERCISES.values()]
        pages += [("Scenario", scenario) for scenario in SCENARIOS.values()]
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


class PapersView(Shown):
    """The papers that lie in the course's folder for them, made ready to be opened."""

    def __init__(self, course: Path) -> None:
        self._course = course
        self._list = widgets.HTML()
        again = button("Look again", self._refresh, icon="refresh")
        super().__init__([self._list, row(again)])
        self._refresh()

    def summary(self) -> str:
        """Which papers can be written, and which are not as an instructor makes them."""
        return "\n".join(self._lines())

    def _lines(self) -> list[str]:
        ready = set(sign_papers(self._course))
        lines = [
            f"{path.name}: " + ("ready to be opened." if path in ready else NOT_PLAIN)
            for path in papers_in(self._course)
            if not path.name.startswith(HANDED_IN)
        ]
        return lines or [f"There is no paper in the folder “{FOLDER}”."]

    def _refresh(self) -> None:
        items = "".join(f"<li>{escape(line)}</li>" for line in self._lines())
        self._list.value = f"<ul role='status'>{items}</ul>"


NOT_PLAIN = "not as an instructor hands it out. Ask for a fresh copy."


class Start(CoursePage):
    """The start page for one learner."""

    def __init__(self, session: Session) -> None:
        super().__init__(session, (cautions.AUTHORITY, cautions.STATIC))

    def progress(self) -> CourseProgress:
        """How far the learner has come."""
        return CourseProgress(self._session.record)

    def papers(self) -> PapersView:
        """Papers from an instructor, to be written on this machine."""
        return PapersView(find_course(None))


def open_start() -> Start:
    """The start page for the learner of this machine."""
    return Start(Session(Record.open()))
