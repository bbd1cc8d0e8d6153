"""One sheet with the formulas of every lesson, made from the lessons' own derivations."""

from collections.abc import Iterable
from html import escape

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.derivation import Derivation
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.lessons.content import LessonContent
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown


class FormulasView(Shown):
    """The results of the lessons' derivations, what their letters mean and what they assume."""

    def __init__(self, lessons: Iterable[LessonContent]) -> None:
        self._lessons = tuple(lessons)
        parts = (
            f"<h3>{escape(_heading(lesson))}</h3>" + "".join(map(_row, lesson.derivations))
            for lesson in self._lessons
        )
        super().__init__([widgets.HTMLMath(part) for part in parts])
        self.add_class("ropecalc-formulas")

    def summary(self) -> str:
        """One line a formula, below its lesson's title."""
        lines = []
        for lesson in self._lessons:
            lines += [_heading(lesson), *map(_as_text, lesson.derivations)]
        return "\n".join(lines)


def _heading(lesson: LessonContent) -> str:
    return f"{lesson.number}. {lesson.title}"


def _as_text(derivation: Derivation) -> str:
    return f"{derivation.title}: {derivation.explain().lines[-1].text}"


def _row(derivation: Derivation) -> str:
    told = derivation.explain()
    used = told.lines[-1].uses
    meanings = ", ".join(
        f"${escape(symbol)}$ {escape(meaning)}"
        for symbol, meaning in told.meanings
        if symbol in used
    )
    assumed = f" <i>{escape(' '.join(told.assumptions))}</i>" if told.assumptions else ""
    return (
        f"<p><b>{escape(told.title)}</b></p>$${escape(told.lines[-1].latex)}$$"
        f"<p><small>{meanings}.{assumed}</small></p>"
    )


class FormulaSheet(CoursePage):
    """The page of formulas for one learner."""

    def __init__(self, session: Session) -> None:
        super().__init__(session, (cautions.AUTHORITY, cautions.STATIC))

    def formulas(self) -> FormulasView:
        """The formulas of every lesson."""
        return FormulasView(LESSONS.values())


def open_formula_sheet() -> FormulaSheet:
    """The formula sheet for the learner of this machine."""
    return FormulaSheet(Session(Record.open()))
