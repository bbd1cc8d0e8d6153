"""An exercise's page and its solutions' page, for one learner."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.exercises.content import ExerciseContent
from ropecalc.teaching.keyed import find
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.marking import Verdict
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.questions.question_view import QuestionView, SolutionView
from ropecalc.teaching.record import Place, Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown


class PageWithQuestions(Protocol):
    """A lesson's or an exercise's content: its name in the record, and its questions."""

    @property
    def title(self) -> str:
        """The title, as the learner sees it."""

    @property
    def page(self) -> str: ...

    @property
    def questions(self) -> tuple[Question, ...]: ...


@dataclass(frozen=True)
class Standing:
    """How far a learner is with a page: questions right, questions tried, all questions."""

    right: int
    tried: int
    total: int

    def sentence(self) -> str:
        """The standing in words."""
        return f"{self.right} of {self.total} right, {self.tried} tried. {cautions.KNOWLEDGE_CHECK}"


def standing(content: PageWithQuestions, record: Record) -> Standing:
    """Where the learner of ``record`` stands.

    A question counts as right once it was answered right before its worked solution was opened
    (for the numbers that were asked), and as tried once anything readable was answered.
    """
    right = tried = 0
    for question in content.questions:
        answers = record.answers(Place(content.page, question.key))
        tried += any(a.verdict != Verdict.UNREADABLE for a in answers)
        right += any(a.verdict == Verdict.RIGHT and not a.solution_seen for a in answers)
    return Standing(right, tried, len(content.questions))


class ExerciseProgress(Shown):
    """One line that says how many questions are right; it follows every answer on the page."""

    def __init__(self, content: PageWithQuestions, session: Session) -> None:
        self._content = content
        self._session = session
        self._line = widgets.HTML()
        super().__init__([self._line])
        self.add_class("ropecalc-progress")
        self.refresh()

    def summary(self) -> str:
        """The standing in words."""
        return standing(self._content, self._session.record).sentence()

    def refresh(self) -> None:
        """Show the standing as it is now."""
        self._line.value = f'<p role="status" aria-live="polite">{self.summary()}</p>'


class Exercise(CoursePage):
    """One exercise for one learner."""

    def __init__(self, content: ExerciseContent, session: Session) -> None:
        super().__init__(session, content.cautions)
        self._content = content
        self._followers: list[Callable[[], None]] = []

    def question(self, key: str) -> QuestionView:
        """The question called ``key``, to be answered."""
        template = self._content.question(key)
        return QuestionView(template, self._session, self._content.page, self._answered)

    def progress(self) -> ExerciseProgress:
        """How many are right."""
        view = ExerciseProgress(self._content, self._session)
        self._followers.append(view.refresh)
        return view

    def _answered(self) -> None:
        for follow in self._followers:
            follow()


class Solution(CoursePage):
    """The worked solutions of one exercise, for the numbers that everyone gets first."""

    def __init__(self, content: ExerciseContent, session: Session) -> None:
        super().__init__(session, content.cautions)
        self._content = content

    def question(self, key: str) -> SolutionView:
        """The question called ``key`` with its worked solution and common mistakes."""
        drawn = draw(self._content.question(key), self._content.page)
        return SolutionView(drawn, self._session)


def open_exercise(key: str) -> Exercise:
    """The exercise called ``key`` for the learner of this machine."""
    return Exercise(find(EXERCISES, key, "exercise"), Session(Record.open()))


def open_solution(key: str) -> Solution:
    """The worked solutions of the exercise called ``key``."""
    return Solution(find(EXERCISES, key, "exercise"), Session(Record.open()))
