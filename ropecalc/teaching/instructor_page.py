"""For the instructor: how to teach each lesson, outdoors too, and which question exposes what."""

from collections.abc import Iterable
from html import escape

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.keyed import by_key
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.lessons.content import LessonContent
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.record import Record
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.scenarios.content import Scenario
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown
from ropecalc.units import Display

OUTDOORS = (
    "Outdoors: no person on the load, nobody under it, an independent belay, and only what your "
    "authority allows. Stop if a cell reads more than you planned for."
)


class NotesView(Shown):
    """The teaching notes, one fold a lesson; computed readings follow the units."""

    def __init__(self, lessons: Iterable[LessonContent], session: Session) -> None:
        self._lessons = tuple(lessons)
        self._session = session
        self._texts = [widgets.HTML() for _ in self._lessons]
        super().__init__(self._texts)
        self.add_class("ropecalc-notes")
        self.until_closed(session.on_units(lambda _: self._refresh()))
        self._refresh()

    def summary(self) -> str:
        """The notes, one line each."""
        lines = []
        for lesson in self._lessons:
            lines.append(_heading(lesson))
            for heading, notes in _parts(lesson, self._session.display):
                lines += [heading, *(f"- {note}" for note in notes)]
        return "\n".join(lines)

    def _refresh(self) -> None:
        for text, lesson in zip(self._texts, self._lessons, strict=True):
            text.value = _as_html(lesson, self._session.display)


def _heading(lesson: LessonContent) -> str:
    minutes = sum(minutes for minutes, _ in lesson.notes.timing)
    return f"{lesson.number}. {lesson.title}: {minutes} minutes"


def _parts(lesson: LessonContent, display: Display) -> tuple[tuple[str, list[str]], ...]:
    notes = lesson.notes
    return (
        ("Timing", [f"{minutes} min: {what}" for minutes, what in notes.timing]),
        ("On the board", list(notes.board)),
        ("Outdoors, with load cells", [*(f.text(display) for f in notes.field), OUTDOORS]),
        ("Which question exposes which mistake", _mistakes(lesson)),
    )


def _as_html(lesson: LessonContent, display: Display) -> str:
    return _fold(_heading(lesson), _parts(lesson, display))


def _fold(heading: str, parts: Iterable[tuple[str, list[str]]]) -> str:
    """A heading that opens, with a list under each heading of its own."""
    body = ""
    for title, notes in parts:
        items = "".join(f"<li>{escape(note)}</li>" for note in notes)
        body += f"<h5>{escape(title)}</h5><ul>{items}</ul>"
    return f"<details><summary><b>{escape(heading)}</b></summary>{body}</details>"


def _mistakes(lesson: LessonContent) -> list[str]:
    return _exposed(by_key((*lesson.questions, *lesson.myths)).values())


def _exposed(questions: Iterable[Question]) -> list[str]:
    """Each question with the mistakes that it exposes."""
    return [
        f"“{question.title}”: " + "; ".join(mistake.named for mistake in question.mistakes) + "."
        for question in questions
        if question.mistakes
    ]


class ScenarioNotes(Shown):
    """The scenarios, one fold each: what they draw on, what exposes which mistake, the points."""

    def __init__(self, scenarios: Iterable[Scenario]) -> None:
        self._scenarios = tuple(scenarios)
        super().__init__([widgets.HTML(_scenario_html(one)) for one in self._scenarios])
        self.add_class("ropecalc-notes")

    def summary(self) -> str:
        """The notes, one line each."""
        lines = []
        for scenario in self._scenarios:
            lines.append(_scenario_heading(scenario))
            for heading, notes in _scenario_parts(scenario):
                lines += [heading, *(f"- {note}" for note in notes)]
        return "\n".join(lines)


def _scenario_heading(scenario: Scenario) -> str:
    lessons = ", ".join(map(str, scenario.lessons))
    parts = len(scenario.parts)
    return f"{scenario.number}. {scenario.title}: {parts} parts and a judgement, lessons {lessons}"


def _scenario_parts(scenario: Scenario) -> list[tuple[str, list[str]]]:
    found = [("Which part exposes which mistake", _exposed(scenario.questions))]
    for judged in scenario.judged:
        found.append((f"To be judged: {judged.question}", list(judged.points)))
    return found


def _scenario_html(scenario: Scenario) -> str:
    return _fold(_scenario_heading(scenario), _scenario_parts(scenario))


class InstructorPage(CoursePage):
    """The instructor's page."""

    def __init__(self, session: Session) -> None:
        super().__init__(session, (cautions.AUTHORITY, cautions.STATIC))

    def notes(self) -> NotesView:
        """The teaching notes of every lesson."""
        return NotesView(LESSONS.values(), self._session)

    def scenarios(self) -> ScenarioNotes:
        """What each scenario is for, and what a good answer to its open question says."""
        return ScenarioNotes(SCENARIOS.values())


def open_instructor_page() -> InstructorPage:
    """The instructor's page on this machine."""
    return InstructorPage(Session(Record.open()))
