"""A question on the page: numbers, a line to answer in, a reason for every wrong answer, hints."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from html import escape

import ipywidgets as widgets

from ropecalc.teaching.buttons import button
from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.diagrams import picture_of
from ropecalc.teaching.questions.diagrams.svg import beside
from ropecalc.teaching.questions.draw import Draw, draw
from ropecalc.teaching.questions.marking import Marked, Verdict, mark
from ropecalc.teaching.questions.passage import Passage
from ropecalc.teaching.questions.question import AnswerLine, Listeners, Question
from ropecalc.teaching.record import Answer, Place, Work
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown, close, status
from ropecalc.units import Display

_SIGNS = {
    Verdict.RIGHT: "✓",
    Verdict.MISTAKE: "✗",
    Verdict.SIGN: "✗",
    Verdict.WRONG: "✗",
}


def _nothing() -> None:
    """What happens elsewhere on the page after an answer, if nobody wants to know."""


class QuestionView(Shown):
    """One question for one learner; where they left off is restored from their record.

    ``page`` names the page in the record and seeds the numbers, so that everyone practises with
    the same ones. Where the numbers belong to something larger, ``numbers`` gives those of each
    draw, and new ones come with :meth:`take_numbers` only. ``checked`` is called after every
    answer, and when the solution is shown.
    """

    def __init__(
        self,
        template: Question,
        session: Session,
        page: str,
        checked: Callable[[], None] = _nothing,
        numbers: Callable[[int], Draw] | None = None,
    ) -> None:
        self._template = template
        self._session = session
        self._place = Place(page, template.key)
        self._checked = checked
        self._numbers = numbers or (lambda number: draw(template, page, number))
        self._work = session.record.work(self._place)
        self._drawn = self._numbers(self._work.draw)
        self._marked: Marked | None = self._last_marked()

        self._stem = widgets.HTMLMath()
        self._check = button("Check", lambda: self._entry.settled(self._answer))
        self._line = widgets.HBox(layout={"flex_flow": "row wrap", "overflow": "visible"})
        self._line.children = self._answer_row()
        self._feedback = widgets.HTML()
        self._hint = button("Hint", self._next_hint)
        self._solve = button("", self._show_solution)
        self._new = button("New numbers", self._next_numbers)
        self._help = widgets.HTMLMath()
        helps = [self._hint, self._solve, *([] if numbers else [self._new])]
        super().__init__(
            [
                self._stem,
                self._line,
                self._feedback,
                widgets.HBox(helps, layout={"flex_flow": "row wrap"}),
                self._help,
            ]
        )
        self.add_class("ropecalc-question")
        self.until_closed(session.on_units(lambda _: self._in_other_units()))
        self._refresh()

    def summary(self) -> str:
        """The question with its numbers, and how the last answer was taken."""
        parts = [question_text(self._drawn, self._session.display)]
        if self._marked is not None:
            parts.append(self._marked.feedback)
        return "\n".join(parts)

    # --- what the learner does ---

    def _answer(self) -> None:
        text = self._entry.value.strip()
        if not text:
            self._say(f"Nothing has been answered yet. {self._how()}")
            return
        marked = mark(self._drawn, text, self._session.display)
        self._marked = marked
        self._session.record.keep_answer(
            self._place,
            Answer(
                draw=self._work.draw,
                text=text,
                reading=marked.reading,
                verdict=marked.verdict,
                mistake=marked.mistake,
                hints=self._work.hints,
                solution_seen=self._work.solution_seen,
            ),
        )
        self._refresh()
        self._checked()

    def _next_hint(self) -> None:
        self._keep(hints=min(self._work.hints + 1, len(self._hints())))
        self._refresh()

    def _show_solution(self) -> None:
        self._keep(solution_seen=True)
        self._refresh()
        self._checked()

    def _next_numbers(self) -> None:
        self.take_numbers(self._work.draw + 1)

    def take_numbers(self, number: int) -> None:
        """Begin the question anew with the numbers of draw ``number``."""
        self._work = Work(draw=number)
        self._drawn = self._numbers(number)
        self._marked = None
        self._session.record.keep_work(self._place, self._work)
        before = self._entry
        self._line.children = self._answer_row()
        close(before)
        self._refresh()

    # --- what the page shows ---

    def _answer_row(self) -> tuple[widgets.Widget, ...]:
        """A new line to answer in, with its button."""
        self._entry: AnswerLine = self._template.answer_line(
            self._drawn.values,
            self._work.draft,
            self._session.display,
            Listeners(lambda text: self._keep(draft=text), self._answer),
        )
        return self._entry, self._check

    def _how(self) -> str:
        return self._template.how(self._session.display)

    def _keep(self, **changes: object) -> None:
        changed = replace(self._work, **changes)  # type: ignore[arg-type]
        if changed != self._work:
            self._work = changed
            self._session.record.keep_work(self._place, changed)

    def _last_marked(self) -> Marked | None:
        answers = self._session.record.answers(self._place, self._work.draw)
        if not answers:
            return None
        return mark(self._drawn, answers[-1].text, self._session.display)

    def _hints(self) -> tuple[Passage, ...]:
        return wording.hints(self._drawn, self._session.display)

    def _in_other_units(self) -> None:
        self._marked = self._last_marked()
        self._refresh()

    def _refresh(self) -> None:
        display = self._session.display
        self._stem.value = question_html(self._drawn, display)
        self._entry.show(display)
        tried = self._marked is not None and self._marked.verdict is not Verdict.UNREADABLE
        self._solve.description = (
            "Show the worked solution" if tried else "Give up and show the solution"
        )
        self._solve.disabled = self._work.solution_seen
        self._say_marked()
        hints = self._hints() if self._work.hints else ()
        self._hint.disabled = bool(hints) and self._work.hints >= len(hints)
        self._help.value = _hints_html(self._drawn, hints, self._work.hints) + (
            solution_html(self._drawn, display) if self._work.solution_seen else ""
        )

    def _say_marked(self) -> None:
        if self._marked is None:
            self._say("")
            return
        read = f"Read as {self._marked.reading}. " if self._marked.reading else ""
        sign = _SIGNS.get(self._marked.verdict, "")
        self._say(f"{sign} {read}{self._marked.feedback}".strip())

    def _say(self, sentence: str) -> None:
        lines = [line for line in (sentence, self._session.record.notice) if line]
        self._feedback.value = status(lines)


class SolutionView(Shown):
    """A question with its worked solution and the mistakes people make, nothing to answer."""

    def __init__(self, drawn: Draw, session: Session) -> None:
        self._drawn = drawn
        self._session = session
        self._body = widgets.HTMLMath()
        super().__init__([self._body])
        self.add_class("ropecalc-question")
        self.until_closed(session.on_units(lambda _: self._refresh()))
        self._refresh()

    def summary(self) -> str:
        """The question, every step, the result and the common mistakes, as text."""
        display = self._session.display
        steps = [p.as_text() for p in wording.solution(self._drawn, display)]
        slips = [p.as_text() for p in wording.common_mistakes(self._drawn, display)]
        return "\n".join([question_text(self._drawn, display), *steps, "Common mistakes:", *slips])

    def _refresh(self) -> None:
        display = self._session.display
        self._body.value = question_html(self._drawn, display) + solution_html(self._drawn, display)


def question_text(drawn: Draw, display: Display) -> str:
    """Title, stem, what belongs to it and what is asked, as plain text."""
    lines = [drawn.template.title, wording.stem(drawn, display)]
    lines += wording.particulars(drawn, display)
    return "\n".join([*lines, f"Asked: {drawn.template.asked}"])


def question_html(drawn: Draw, display: Display) -> str:
    """Title, stem, given quantities and what belongs to them for the page."""
    template = drawn.template
    listed = "; ".join(
        f"{escape(meaning)} ${escape(symbol)}$ = {escape(value)}"
        for symbol, meaning, value in wording.givens(drawn, display)
    )
    lines = "".join(
        f"<p style='margin-left: 1em'>{escape(line)}</p>"
        for line in wording.particulars(drawn, display)
    )
    words = (
        f"<p>{escape(wording.stem(drawn, display))}</p>"
        + (f"<p>Given: {listed}.</p>" if listed else "")
        + f"{lines}<p>Asked: <b>{escape(template.asked)}</b>.</p>"
    )
    return f"<h4>{escape(template.title)}</h4>" + beside(words, picture_of(drawn, display))


def solution_html(drawn: Draw, display: Display) -> str:
    """Assumptions, worked steps and common mistakes for the page."""
    assumed = wording.assumptions(drawn)
    return (
        "<p><b>Worked solution</b></p>"
        + (f"<p>Assumed: {escape(assumed)}</p>" if assumed else "")
        + _meanings(drawn)
        + _ordered(wording.solution(drawn, display))
        + "<p><b>Common mistakes</b></p><ul>"
        + "".join(f"<li>{p.as_html()}</li>" for p in wording.common_mistakes(drawn, display))
        + "</ul>"
    )


def _ordered(passages: Sequence[Passage]) -> str:
    steps = "".join(f"<li>{p.as_html()}</li>" for p in passages[:-1])
    return f"<ol>{steps}</ol><p><b>{passages[-1].as_html()}</b></p>"


def _hints_html(drawn: Draw, hints: Sequence[Passage], shown: int) -> str:
    told = "".join(
        f"<p><b>Hint {number} of {len(hints)}.</b> {passage.as_html()}</p>"
        for number, passage in enumerate(hints[:shown], 1)
    )
    formulas = any(passage.latex for passage in hints[:shown])
    return told + (_meanings(drawn) if formulas else "")


def _meanings(drawn: Draw) -> str:
    listed = ", ".join(f"${escape(v.symbol)}$ {escape(v.meaning)}" for v in drawn.template.symbols)
    return f"<p>Symbols: {listed}.</p>"
