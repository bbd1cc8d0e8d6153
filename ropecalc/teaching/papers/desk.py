"""The instructor's desk: papers written, one again, returns marked, a student removed."""

from collections.abc import Sequence
from html import escape
from pathlib import Path

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.teaching.buttons import button, row
from ropecalc.teaching.course import find_course
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.papers.blueprint import LEVELS, read_blueprint
from ropecalc.teaching.papers.blueprint_form import BlueprintForm
from ropecalc.teaching.papers.class_list import read_class_list
from ropecalc.teaching.papers.issue import read_issue
from ropecalc.teaching.papers.making import (
    HANDOUTS,
    KEYS,
    RESULTS,
    RETURNS,
    Wishes,
    export_package,
    forget,
    make_issue,
    write_again,
    write_papers,
)
from ropecalc.teaching.questions.bank import BANK, BY_LESSON
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.record import Record
from ropecalc.teaching.results.returns import find_returns
from ropecalc.teaching.results.tables import mark_returns, report, write_results
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown, status
from ropecalc.teaching.survey_page import PAPERS, paper_name

EXAMPLE = "exercises/knowledge-check.toml"
CLASS = "exercises/class.csv"
FOLDER = "exam-1"


class DeskPage(CoursePage):
    """The page of papers, for an instructor."""

    def __init__(self, session: Session, course: Path) -> None:
        super().__init__(session, (cautions.KNOWLEDGE_CHECK, cautions.AUTHORITY))
        self._course = course
        self._makers: list[MakeDesk] = []

    def bank(self) -> "BankView":
        """How many questions of each lesson and level there are, and their names."""
        return BankView()

    def blueprint(self) -> BlueprintForm:
        """A form for a blueprint."""
        return BlueprintForm(self._course, EXAMPLE, self._use)

    def make(self) -> "MakeDesk":
        """Writing papers for a class."""
        maker = MakeDesk(self._session, self._course)
        self._makers.append(maker)
        return maker

    def _use(self, blueprint: str) -> None:
        """Papers are wanted of the blueprint that was just saved."""
        for maker in self._makers:
            maker.use(blueprint)

    def again(self) -> "AgainDesk":
        """One student's paper once more."""
        return AgainDesk(self._session, self._course)

    def export(self) -> "ExportDesk":
        """Papers for a learning platform."""
        return ExportDesk(self._session, self._course)

    def mark(self) -> "MarkDesk":
        """Marking what came back."""
        return MarkDesk(self._course)

    def forget(self) -> "ForgetDesk":
        """Removing a student."""
        return ForgetDesk(self._course)


def open_desk() -> DeskPage:
    """The instructor's desk on this machine."""
    return DeskPage(Session(Record.open()), find_course(None))


class BankView(Shown):
    """The bank's questions by lesson and level; the names are what a blueprint may ask for."""

    def __init__(self) -> None:
        parts = (f"<p><b>{escape(head)}</b></p>{_items(asked)}" for head, asked in _bank())
        inside = "".join(parts)
        super().__init__(
            [widgets.HTML(f"<details><summary>The questions by lesson</summary>{inside}</details>")]
        )

    def summary(self) -> str:
        """One line a lesson."""
        return "\n".join(f"{head} {', '.join(t.key for t in asked)}." for head, asked in _bank())


def _bank() -> list[tuple[str, Sequence[Question]]]:
    found: list[tuple[str, Sequence[Question]]] = []
    for lesson, templates in sorted(BY_LESSON.items()):
        levels = [sum(t.difficulty == n for t in templates) for n in range(1, len(LEVELS) + 1)]
        counts = ", ".join(f"{n} {level}" for n, level in zip(levels, LEVELS, strict=True))
        found.append((f"Lesson {lesson}, {counts}:", templates))
    return found


def _items(asked: Sequence[Question]) -> str:
    """Each question's title, which an instructor knows from the exercises, and its name."""
    lines = (
        f"<li>{escape(t.title)} ({LEVELS[t.difficulty - 1]}): <code>{escape(t.key)}</code></li>"
        for t in asked
    )
    return f"<ul>{''.join(lines)}</ul>"


class _Desk(Shown):
    """Some lines to fill in, a button, and what came of it."""

    what = ""

    def __init__(self, course: Path, label: str, *inputs: widgets.Widget) -> None:
        self._course = course
        self._bar = widgets.IntProgress(value=0, layout={"display": "none"})
        self._said = widgets.HTML()
        super().__init__([*inputs, row(button(label, self._press)), self._bar, self._said])
        self.add_class("ropecalc-desk")

    def summary(self) -> str:
        """What the button does."""
        return self.what

    def _press(self) -> None:
        self._bar.value = 0
        self._say("Working…")
        try:
            self._say(self._do())
        except ValueError as error:
            self._say(f"Not done. {error}")
        self._bar.layout.display = "none"

    def _do(self) -> str:
        raise NotImplementedError

    def _progress(self, done: int, total: int) -> None:
        self._bar.layout.display = ""
        self._bar.max, self._bar.value = total, done

    def _say(self, text: str) -> None:
        self._said.value = status(text.split("\n"))

    def _at(self, box: widgets.Text) -> Path:
        """What a box names, from the course's folder."""
        if not box.value.strip():
            raise ValueError(f"“{box.description}” is empty.")
        return self._course / Path(box.value.strip()).expanduser()


def _line(label: str, value: str = "") -> widgets.Text:
    return widgets.Text(
        value=value,
        description=label,
        layout={"width": "560px", "max_width": "100%"},
        style={"description_width": "190px"},
    )


def _paper_size() -> widgets.Dropdown:
    return widgets.Dropdown(
        options=[(paper_name(paper), paper) for paper in PAPERS],
        description="Paper",
        layout={"width": "340px"},
        style={"description_width": "190px"},
    )


class MakeDesk(_Desk):
    """Papers and keys for everybody in a class list."""

    what = "“Write the papers” writes a paper and a key for each student into a new folder."

    def __init__(self, session: Session, course: Path) -> None:
        self._session = session
        self._blueprint = _line("Blueprint (file)", EXAMPLE)
        self._class = _line("Class list (file)", CLASS)
        self._folder = _line("New folder", FOLDER)
        self._size = _paper_size()
        self._printed = widgets.Checkbox(
            value=True, description="also as PDF to print", indent=False
        )
        inputs = (self._blueprint, self._class, self._folder, self._size, self._printed)
        super().__init__(course, "Write the papers", *inputs)

    def use(self, blueprint: str) -> None:
        """Write of this file from now on."""
        self._blueprint.value = blueprint

    def _do(self) -> str:
        source = self._at(self._blueprint)
        blueprint = read_blueprint(source)
        students = read_class_list(self._at(self._class))
        issue = make_issue(blueprint, students, source=str(source))
        folder = self._at(self._folder)
        wishes = Wishes(self._size.value, self._printed.value, self._session.display)
        write_papers(issue, folder, wishes, self._progress)
        return (
            f"“{blueprint.title}”: {len(issue.papers)} papers in {folder / HANDOUTS}, "
            f"keys in {folder / KEYS}.\n"
            "Keep the folder: papers are marked and written again from it. Returns go into its "
            f"folder “{RETURNS}”."
        )


class AgainDesk(_Desk):
    """One student's files once more, from what was kept."""

    what = "“Write it again” writes one student's paper and key as they were."

    def __init__(self, session: Session, course: Path) -> None:
        self._session = session
        self._folder = _line("Folder of the papers", FOLDER)
        self._student = _line("Student")
        self._size = _paper_size()
        super().__init__(course, "Write it again", self._folder, self._student, self._size)

    def _do(self) -> str:
        wishes = Wishes(self._size.value, display=self._session.display)
        files = write_again(self._at(self._folder), self._student.value.strip(), wishes)
        return "\n".join(f"Written: {path}" for path in files)


class ExportDesk(_Desk):
    """A package for a learning platform, of the class or of one student."""

    what = "“Write the package” writes a QTI 2.1 package of papers for a learning platform."

    def __init__(self, session: Session, course: Path) -> None:
        self._session = session
        self._folder = _line("Folder of the papers", FOLDER)
        self._student = _line("Student (empty: all)")
        super().__init__(course, "Write the package", self._folder, self._student)

    def _do(self) -> str:
        student = self._student.value.strip()
        path = export_package(self._at(self._folder), student, self._session.display)
        return (
            f"Written: {path}\n"
            "It holds the answers: import it into the platform yourself and hand it to nobody."
        )


class MarkDesk(_Desk):
    """Marks all returns and says what the class got wrong."""

    what = "“Mark the returns” marks what lies in the folder of returns and writes tables."

    def __init__(self, course: Path) -> None:
        self._folder = _line("Folder of the papers", FOLDER)
        super().__init__(course, "Mark the returns", self._folder)

    def _do(self) -> str:
        folder = self._at(self._folder)
        marked = mark_returns(read_issue(folder, BANK), find_returns(folder / RETURNS))
        files = write_results(marked, folder / RESULTS)
        return "\n".join([report(marked), "", *(f"Written: {path}" for path in files)])


class ForgetDesk(_Desk):
    """Removes one student from an examination's folder; asks for the name twice."""

    what = "“Remove this student” deletes everything about one student from a folder of papers."

    def __init__(self, course: Path) -> None:
        self._folder = _line("Folder of the papers", FOLDER)
        self._student = _line("Student")
        self._sure = _line("The name again")
        inputs = (self._folder, self._student, self._sure)
        super().__init__(course, "Remove this student", *inputs)

    def _do(self) -> str:
        student = self._student.value.strip()
        if not student or student != self._sure.value.strip():
            raise ValueError("Write the same name into both lines.")
        changed = forget(self._at(self._folder), student)
        self._sure.value = ""
        return "\n".join(f"Deleted, or taken out of: {path}" for path in changed)
