"""A scenario on the page: the story, its parts one after the other, and the open question."""

from collections.abc import Sequence
from html import escape

import ipywidgets as widgets

from ropecalc.teaching.buttons import button, row
from ropecalc.teaching.questions.question_view import QuestionView, SolutionView
from ropecalc.teaching.record import Answer, Work
from ropecalc.teaching.scenarios.content import Judged, Part
from ropecalc.teaching.scenarios.desk import ScenarioDesk
from ropecalc.teaching.scenarios.situation import Situation
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown, status

COMPARED = "compared"
"""The record's word for an open answer that its writer has compared with the points."""
_NO_MARKS = (
    "This is judged by people: here by you, on a paper by your instructor. It earns no marks on "
    "this page."
)
_EMPTY = "Nothing has been written yet. Write your own answer first, then compare."


class SituationView(Shown):
    """The story with its numbers, and the button for other ones."""

    def __init__(self, desk: ScenarioDesk, session: Session, *, renewable: bool) -> None:
        self._desk = desk
        self._session = session
        self._story = widgets.HTML()
        again = [row(button("New numbers", desk.take_new_numbers, icon="refresh"))]
        super().__init__([self._story, *(again if renewable else [])])
        self.add_class("ropecalc-situation")
        self.until_closed(session.on_units(lambda _: self._refresh()))
        desk.on_numbers(lambda _: self._refresh())
        self._refresh()

    def summary(self) -> str:
        """The story."""
        return self._desk.situation.story(self._session.display)

    def _refresh(self) -> None:
        self._story.value = f"<p>{escape(self.summary())}</p>"


class PartView(Shown):
    """One part. It opens when the parts whose numbers it goes on with are behind the learner."""

    def __init__(self, part: Part, desk: ScenarioDesk, session: Session) -> None:
        self._part = part
        self._desk = desk
        self._session = session
        self._question: QuestionView | None = None
        self._closed = widgets.HTML()
        self._go_on = widgets.HTML()
        self._head = widgets.HTML(f"<p><b>Part {desk.letter(part.key)}</b></p>")
        super().__init__([self._head, self._closed])
        self.until_closed(session.on_units(lambda _: self._refresh()))
        desk.on_change(self._refresh)
        desk.on_numbers(self._renew)
        self._refresh()

    def summary(self) -> str:
        """The question as it stands, or what it waits for."""
        told = [f"Part {self._desk.letter(self._part.key)}"]
        if self._question is None:
            told.append(self._waits())
        else:
            told += [self._question.summary(), self._carried_on()]
        return "\n".join(line for line in told if line)

    def _waits(self) -> str:
        return waits(self._part, self._desk)

    def _carried_on(self) -> str:
        if not self._desk.behind(self._part):
            return ""
        return carried_on(self._desk.situation, self._part, self._session)

    def _renew(self, number: int) -> None:
        if self._desk.waits_for(self._part):
            self._question = None
        elif self._question is not None:
            self._question.take_numbers(number)

    def _refresh(self) -> None:
        if self._question is None and not self._desk.waits_for(self._part):
            self._question = QuestionView(
                self._part.question,
                self._session,
                self._desk.scenario.page,
                checked=self._desk.changed,
                numbers=self._desk.numbers(self._part),
            )
        if self._question is None:
            self._closed.value = f"<p>{escape(self._waits())}</p>"
            self.children = [self._head, self._closed]
        else:
            self._go_on.value = status(line for line in (self._carried_on(),) if line)
            self.children = [self._head, self._question, self._go_on]


class PartSolved(Shown):
    """One part with its worked solution and what later parts go on with."""

    def __init__(self, part: Part, desk: ScenarioDesk, session: Session) -> None:
        self._part = part
        self._desk = desk
        self._session = session
        self._solution = SolutionView(desk.situation_of(0).part(part.key), session)
        self._go_on = widgets.HTML()
        head = widgets.HTML(f"<p><b>Part {desk.letter(part.key)}</b></p>")
        super().__init__([head, self._solution, self._go_on])
        self.until_closed(session.on_units(lambda _: self._refresh()))
        self._refresh()

    def summary(self) -> str:
        """The question, its solution, and what is carried on."""
        lines = [f"Part {self._desk.letter(self._part.key)}", self._solution.summary(), self._on()]
        return "\n".join(line for line in lines if line)

    def _on(self) -> str:
        return carried_on(self._desk.situation_of(0), self._part, self._session)

    def _refresh(self) -> None:
        self._go_on.value = f"<p>{escape(self._on())}</p>"


class JudgedView(Shown):
    """The open question: first the learner's own words, then the points, to be ticked."""

    def __init__(self, judged: Judged, desk: ScenarioDesk, session: Session) -> None:
        self._judged = judged
        self._desk = desk
        self._session = session
        self._place = desk.place(judged.key)
        self._ticks_place = desk.place(f"{judged.key}:points")
        self._text = widgets.Textarea(
            description="Your answer",
            continuous_update=False,
            layout={"width": "98%", "height": "140px"},
            style={"description_width": "initial"},
        )
        self._comparing = button("Compare with what a good answer says", self._compared)
        self._said = widgets.HTML()
        self._points = widgets.VBox()
        question = widgets.HTML(judged_html(judged, desk.letter(judged.key)))
        super().__init__([question, self._text, row(self._comparing), self._said, self._points])
        self.add_class("ropecalc-question")
        self._restore()
        self._text.observe(lambda change: self._keep(change["new"]), names="value")
        desk.on_numbers(lambda _: self._restore())

    def summary(self) -> str:
        """The question, what was written, and the points once they may be seen."""
        work = self._session.record.work(self._place)
        lines = [judged_text(self._judged, self._desk.letter(self._judged.key))]
        lines.append(f"Written: {work.draft}" if work.draft else "Nothing written yet.")
        if work.solution_seen:
            lines += [
                f"{'✓' if number in self._ticked() else '–'} {point}"
                for number, point in enumerate(self._judged.points, 1)
            ]
        return "\n".join([*lines, _NO_MARKS])

    def _restore(self) -> None:
        work = self._session.record.work(self._place)
        self._text.value = work.draft
        self._show_points(work.solution_seen)
        self._say()

    def _keep(self, text: str) -> None:
        work = self._session.record.work(self._place)
        if text != work.draft:
            self._session.record.keep_work(
                self._place, Work(draw=work.draw, draft=text, solution_seen=work.solution_seen)
            )

    def _compared(self) -> None:
        record, text = self._session.record, self._text.value.strip()
        if not text:
            self._said.value = status([_EMPTY])
            return
        draw = self._desk.situation.number
        record.keep_work(self._place, Work(draw=draw, draft=text, solution_seen=True))
        record.keep_answer(self._place, Answer(draw, text, "", COMPARED))
        self._show_points(True)
        self._say()

    def _show_points(self, shown: bool) -> None:
        if not shown:
            self._points.children = []
            return
        ticked = self._ticked()
        boxes = [
            _point(point, number in ticked) for number, point in enumerate(self._judged.points, 1)
        ]
        for box in boxes:
            box.observe(lambda _: self._keep_ticks(boxes), names="value")
        self._points.children = [
            widgets.HTML("<p><b>Tick what your answer says, too.</b></p>"),
            *boxes,
        ]

    def _ticked(self) -> set[int]:
        work = self._session.record.work(self._ticks_place)
        if work.draw != self._desk.situation.number:
            return set()
        return {int(word) for word in work.draft.split()}

    def _keep_ticks(self, boxes: Sequence[widgets.Checkbox]) -> None:
        ticked = " ".join(str(n) for n, box in enumerate(boxes, 1) if box.value)
        draw = self._desk.situation.number
        self._session.record.keep_work(self._ticks_place, Work(draw=draw, draft=ticked))
        self._say()

    def _say(self) -> None:
        lines = [_NO_MARKS]
        if self._session.record.work(self._place).solution_seen:
            lines.insert(0, f"{len(self._ticked())} of {len(self._judged.points)} points ticked.")
        notice = self._session.record.notice
        self._said.value = status([*lines, *([notice] if notice else [])])


class JudgedSolved(Shown):
    """The open question with the points of a good answer."""

    def __init__(self, judged: Judged, letter: str) -> None:
        self._text = judged_text(judged, letter)
        self._points = judged.points
        items = "".join(f"<li>{escape(point)}</li>" for point in judged.points)
        super().__init__(
            [
                widgets.HTML(
                    f"{judged_html(judged, letter)}<p><b>A good answer says:</b></p>"
                    f"<ul>{items}</ul><p>{escape(_NO_MARKS)}</p>"
                )
            ]
        )
        self.add_class("ropecalc-question")

    def summary(self) -> str:
        """The question and its points."""
        points = [f"- {point}" for point in self._points]
        return "\n".join([self._text, "A good answer says:", *points, _NO_MARKS])


def waits(part: Part, desk: ScenarioDesk) -> str:
    """What ``part`` waits for, in a sentence."""
    letters = " and ".join(desk.letter(giver.key) for giver in desk.waits_for(part))
    return (
        f"This part goes on with the result of part {letters}. It opens when that is answered "
        "right, or given up."
    )


def carried_on(situation: Situation, part: Part, session: Session) -> str:
    """The number to go on with after ``part``, in a sentence; "" if no later part needs it."""
    shown = situation.carried_on(part, session.display)
    if not shown or part.gives is None:
        return ""
    return f"For what follows, go on with {shown}."


def judged_text(judged: Judged, letter: str) -> str:
    """The open question as plain text."""
    return f"Part {letter}\n{judged.title}\n{judged.question}"


def judged_html(judged: Judged, letter: str) -> str:
    """The open question for the page."""
    return (
        f"<p><b>Part {letter}</b></p><h4>{escape(judged.title)}</h4>"
        f"<p>{escape(judged.question)}</p>"
    )


def _point(point: str, ticked: bool) -> widgets.Checkbox:
    box = widgets.Checkbox(
        value=ticked, description=point, indent=False, layout={"width": "98%", "height": "auto"}
    )
    box.add_class("ropecalc-point")
    return box
