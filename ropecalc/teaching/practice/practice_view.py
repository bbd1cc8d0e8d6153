"""Practice on the page: one question at a time, how sure one is, and the next that is due."""

from collections.abc import Callable
from datetime import datetime
from html import escape

import ipywidgets as widgets

from ropecalc.teaching.buttons import button, row
from ropecalc.teaching.confidence import sure_box
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.practice.history import Asked, asked, choices, wrong_now
from ropecalc.teaching.practice.schedule import Choice, schedule
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.questions.question_view import QuestionView
from ropecalc.teaching.record import Answer, Place, Record, Work
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown, close

PAGE = "practice"
"""The name of practice in the record, and the seed of its numbers."""
GIVEN_UP = "given up"
"""Verdict of a question whose solution was read instead of answering."""
MIXED, WRONG = "mixed", "wrong"
_WHAT, _WHICH = "practice.what", "practice.question"  # settings
NOTHING_WRONG = "Nothing stands wrong. Choose all lessons, or one of them."


def place_of(question: str) -> Place:
    """Where practice keeps ``question``."""
    return Place(PAGE, question)


def next_choice(
    what: str, past: tuple[Asked, ...], now: datetime, passed_over: frozenset[str] = frozenset()
) -> Choice | None:
    """What to ask next of ``what``: :data:`MIXED`, :data:`WRONG` or a lesson's number.

    Questions in ``passed_over`` wait until there is nothing else. None if there is nothing.
    """
    lesson = int(what) if what.isdigit() else None
    only = wrong_now(past) if what == WRONG else None
    order = schedule(choices(lesson, only), [one.outcome for one in past], now)
    fresh = [choice for choice in order if choice.question not in passed_over]
    return next(iter([*fresh, *order]), None)


def begin(record: Record, question: str) -> None:
    """Make ``question`` the one that practice asks, with numbers that were not answered yet."""
    place = place_of(question)
    work = record.work(place)
    if work.solution_seen or record.answers(place, work.draw):
        record.keep_work(place, Work(draw=work.draw + 1))
    record.keep_setting(_WHICH, question)


def leave(record: Record, question: str) -> bool:
    """Leave ``question``; True if something came of it.

    Who read the solution and answered nothing has not known it: that is kept as well.
    """
    place = place_of(question)
    work = record.work(place)
    if record.answers(place, work.draw):
        return True
    if work.solution_seen:
        given_up = Answer(work.draw, "", "", GIVEN_UP, hints=work.hints, solution_seen=True)
        record.keep_answer(place, given_up)
    return work.solution_seen


class PracticeQuestion(QuestionView):
    """A question that tells when it takes new numbers."""

    def __init__(
        self,
        template: Question,
        session: Session,
        checked: Callable[[], None],
        renewed: Callable[[], None],
    ) -> None:
        self._renewed = renewed
        super().__init__(template, session, PAGE, checked)

    def _next_numbers(self) -> None:
        leave(self._session.record, self._template.key)
        super()._next_numbers()
        self._renewed()


class PracticeView(Shown):
    """Practice for one learner; the question they left is there again."""

    def __init__(
        self, session: Session, clock: Callable[[], datetime], answered: Callable[[], None]
    ) -> None:
        self._session = session
        self._clock = clock
        self._answered = answered
        self._passed_over: frozenset[str] = frozenset()
        self._question: PracticeQuestion | None = None
        self._what = widgets.Dropdown(
            options=_subjects(),
            value=self._kept_subject(),
            description="Practise",
            layout={"width": "560px", "max_width": "100%"},
            style={"description_width": "75px"},
        )
        self._said = widgets.HTML()
        self._sure = sure_box("How sure are you? (say it before you check, if you like)")
        self._next = row(button("Next question", self._go_on, icon="arrow-right"))
        super().__init__([])
        self.add_class("ropecalc-practice")
        self._what.observe(self._chosen, names="value")
        self._sure.observe(self._keep_level, names="value")
        self._restore()

    def summary(self) -> str:
        """Why this question is asked, and the question."""
        if self._question is None:
            return NOTHING_WRONG
        return f"{self._why()}\n{self._question.summary()}"

    # --- what the learner does ---

    def _chosen(self, change: dict[str, str]) -> None:
        self._session.record.keep_setting(_WHAT, change["new"])
        self._go_on()

    def _go_on(self) -> None:
        record = self._session.record
        current = record.setting(_WHICH) if self._question is not None else None
        if current in BANK:
            came_of_it = leave(record, str(current))
            self._passed_over = frozenset() if came_of_it else self._passed_over | {str(current)}
        choice = next_choice(self._what.value, asked(record), self._clock(), self._passed_over)
        if choice is None:
            self._show(None)
            return
        if choice.question in self._passed_over:  # everything was passed over: once more round
            self._passed_over = frozenset()
        begin(record, choice.question)
        self._show(choice.question)

    def _keep_level(self, change: dict[str, str | None]) -> None:
        level, question = change["new"], self._asked_now()
        if level is None or question is None:
            return
        place = place_of(question)
        draw = self._session.record.work(place).draw
        if not self._session.record.answers(place, draw):
            self._session.record.keep_confidence(place, draw, level)

    def _checked(self) -> None:
        self._show_level()
        self._answered()

    # --- what the page shows ---

    def _kept_subject(self) -> str:
        kept = self._session.record.setting(_WHAT)
        known = [value for _, value in _subjects()]
        return kept if kept in known else MIXED

    def _restore(self) -> None:
        kept = self._session.record.setting(_WHICH)
        if kept in BANK:
            self._show(kept)
        else:
            self._go_on()

    def _show(self, question: str | None) -> None:
        before, self._question = self._question, self._made(question)
        if self._question is None:
            self._say(NOTHING_WRONG)
            self.children = [self._what, self._said, self._next]
        else:
            self._say(self._why())
            self._show_level()
            self.children = [self._what, self._said, self._sure, self._question, self._next]
        if before is not None:
            close(before)

    def _made(self, question: str | None) -> PracticeQuestion | None:
        if question is None:
            return None
        return PracticeQuestion(BANK[question], self._session, self._checked, self._show_level)

    def _asked_now(self) -> str | None:
        return None if self._question is None else self._session.record.setting(_WHICH)

    def _show_level(self) -> None:
        """The level as the record has it; once something was checked it stays."""
        question = self._asked_now()
        if question is None:
            return
        record, place = self._session.record, place_of(question)
        draw = record.work(place).draw
        self._sure.value = record.confidence().get((place, draw))
        self._sure.disabled = bool(record.answers(place, draw))

    def _why(self) -> str:
        question = str(self._asked_now())
        must = " It must be right." if BANK[question].must_pass else ""
        past = [one for one in asked(self._session.record) if one.question == question]
        draw = self._session.record.work(place_of(question)).draw
        if self._session.record.answers(place_of(question), draw):
            return f"You have answered this one.{must}"
        if not past:
            return f"A new question.{must}"
        back = "was right" if past[-1].right else "went wrong"
        return f"Back with new numbers; last time it {back}.{must}"

    def _say(self, words: str) -> None:
        self._said.value = f'<p role="status" aria-live="polite">{escape(words)}</p>'


def _subjects() -> list[tuple[str, str]]:
    lessons = [(f"Lesson {one.number}: {one.title}", str(one.number)) for one in LESSONS.values()]
    return [("All lessons, mixed", MIXED), ("What went wrong", WRONG), *lessons]
