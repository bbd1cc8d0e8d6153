"""A paper on the screen: questions without help, answers kept at once, and handing in."""

import base64
import json
from collections.abc import Mapping
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.planning.files import write_whole
from ropecalc.teaching.buttons import button, row
from ropecalc.teaching.confidence import LEVELS, sure_box
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.papers.class_list import file_name
from ropecalc.teaching.papers.paper import (
    GOES_ON,
    LETTERS,
    LONGEST_TEXT,
    PaperScenario,
    by_hand,
    scenario_from,
)
from ropecalc.teaching.papers.paper_notebook import KIND, as_text, notebook_of
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.draw import restored
from ropecalc.teaching.questions.marking import mark
from ropecalc.teaching.questions.question import AnswerLine, Listeners
from ropecalc.teaching.questions.question_view import question_html, question_text
from ropecalc.teaching.record import Place, Record, Work
from ropecalc.teaching.scenarios import PARTS
from ropecalc.teaching.scenarios.content import Judged
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown, status

HANDED_IN = "handed-in-"
"""How the names of finished papers begin."""
Described = Mapping[str, Any]
"""A paper as its notebook carries it."""


def find_paper(code: str, folder: Path) -> Described:
    """What the notebook with ``code`` in ``folder`` carries. Raises :class:`PaperError`."""
    for path in sorted(folder.glob("*.ipynb")):
        try:
            ours = json.loads(path.read_text(encoding="utf-8"))["metadata"]["ropecalc"]
            if ours["kind"] == KIND and ours["paper"]["code"] == code:
                described: Described = ours["paper"]
                return described
        except (OSError, ValueError, KeyError, TypeError, RecursionError):
            continue
    raise PaperError("", f"the notebook of paper {code} is not in this folder any more.")


class PaperPage(CoursePage):
    """A paper for the student who writes it."""

    def __init__(self, described: Described, session: Session, folder: Path) -> None:
        super().__init__(session, (cautions.KNOWLEDGE_CHECK,))
        self._described = described
        self._folder = folder
        self._items: list[PaperItem] = []
        told = described.get("scenarios", ())
        self._scenarios = tuple(scenario_from(one) for one in told)
        self._open_questions = tuple(
            judged for one in self._scenarios for judged in one.scenario.judged
        )

    def question(self, number: int) -> "PaperItem":
        """Question ``number``, from 1."""
        view = PaperItem(
            number,
            self._described["items"][number - 1],
            self._place(number),
            self._session,
            goes_on=self._goes_on(number),
            confidence=bool(self._described.get("confidence", False)),
        )
        self._items.append(view)
        return view

    def scenario(self, number: int) -> "PaperStory":
        """The story of scenario ``number``, from 1."""
        return PaperStory(self._scenarios[number - 1], self._session)

    def open_question(self, number: int) -> "OpenItem":
        """The open question with this ``number``; they come after all others."""
        judged = self._open_questions[number - 1 - len(self._described["items"])]
        return OpenItem(number, judged, self._place(number), self._session)

    def hand_in(self) -> "HandIn":
        """The button that ends the paper."""
        return HandIn(self._described, self._answers, self._sure, self._unread, self._folder)

    def _goes_on(self, number: int) -> bool:
        return any(one.goes_on(number) for one in self._scenarios)

    def _place(self, number: int) -> Place:
        return Place(f"paper:{self._described['code']}", str(number))

    def _answers(self) -> dict[int, str]:
        record = self._session.record
        count = len(self._described["items"]) + len(self._open_questions)
        numbers = range(1, count + 1)
        return {number: record.work(self._place(number)).draft for number in numbers}

    def _unread(self) -> list[int]:
        """Which answers cannot be marked as they stand."""
        return sorted({view.number for view in self._items if view.unread})

    def _sure(self) -> dict[int, str]:
        """How sure the student is, where they said it."""
        said = self._session.record.confidence()
        numbers = range(1, len(self._described["items"]) + 1)
        keys = {number: (self._place(number), 0) for number in numbers}
        return {number: said[key] for number, key in keys.items() if key in said}


class PaperItem(Shown):
    """One question of a paper; what is typed or chosen is kept at once and not marked here."""

    def __init__(
        self,
        number: int,
        item: Described,
        place: Place,
        session: Session,
        goes_on: bool = False,
        confidence: bool = False,
    ) -> None:
        key = item["question"]
        template = BANK[key] if key in BANK else PARTS[key]
        self._before = GOES_ON if goes_on else ""
        self._number = number
        self._drawn = restored(template, item["values"])
        self._options = [float(value) for value in item["options"]]
        self._place = place
        self._session = session
        self._stem = widgets.HTMLMath()
        kept = session.record.work(place).draft
        self._answer: Any = self._choice(kept) if self._options else self._line(kept)
        self._said = widgets.HTML()
        asked = [self._confidence()] if confidence else []
        super().__init__([self._stem, self._answer, *asked, self._said])
        self.add_class("ropecalc-question")
        self.until_closed(session.on_units(lambda _: self._refresh()))
        self._refresh()

    def summary(self) -> str:
        """The question, its options, and what has been answered."""
        lines = [f"Question {self._number}", *([self._before] if self._before else [])]
        lines += [question_text(self._drawn, self._session.display), *self._labels()]
        answer = self._session.record.work(self._place).draft
        return "\n".join([*lines, f"Answered: {answer}" if answer else "Not answered."])

    @property
    def number(self) -> int:
        """Its number on the paper."""
        return self._number

    @property
    def unread(self) -> str:
        """Why what is kept cannot be read: no unit, no number. Tells nothing of right and wrong."""
        answer = self._session.record.work(self._place).draft
        if not answer.strip() or self._options:
            return ""
        marked = mark(self._drawn, answer, self._session.display)
        return "" if marked.reading else marked.feedback

    def _labels(self) -> list[str]:
        display = self._session.display
        return [
            f"{letter}. {self._drawn.shown(value, display)}"
            for letter, value in zip(LETTERS, self._options, strict=False)
        ]

    def _line(self, kept: str) -> AnswerLine:
        drawn = self._drawn
        listeners = Listeners(self._keep)
        return drawn.template.answer_line(drawn.values, kept, self._session.display, listeners)

    def _choice(self, kept: str) -> widgets.RadioButtons:
        letters = list(LETTERS[: len(self._options)])
        box = widgets.RadioButtons(
            options=list(zip(self._labels(), letters, strict=True)),
            value=kept if kept in letters else None,
            layout={"width": "auto"},
        )
        box.observe(lambda change: self._keep(change["new"] or ""), names="value")
        return box

    def _keep(self, text: str) -> None:
        self._session.record.keep_work(self._place, Work(draft=text))
        self._say()

    def _confidence(self) -> widgets.RadioButtons:
        box = sure_box("How sure are you? (if you like; it earns and costs nothing)")
        box.value = self._session.record.confidence().get((self._place, 0))
        box.observe(lambda change: self._keep_level(change["new"]), names="value")
        return box

    def _keep_level(self, level: str | None) -> None:
        if level is not None:
            self._session.record.keep_confidence(self._place, 0, level)
            self._say()

    def _refresh(self) -> None:
        display = self._session.display
        head = f"<p><b>Question {self._number}</b> {self._before}</p>"
        self._stem.value = head + question_html(self._drawn, display)
        if self._options:
            kept = self._session.record.work(self._place).draft
            letters = list(LETTERS[: len(self._options)])
            self._answer.options = list(zip(self._labels(), letters, strict=True))
            self._answer.value = kept if kept in letters else None
        else:
            self._answer.show(display)
        self._say()

    def _say(self) -> None:
        answer = self._session.record.work(self._place).draft
        words = f"Kept: {answer}" if answer else "Not answered yet."
        level = self._session.record.confidence().get((self._place, 0))
        if level in LEVELS:
            words += f" How sure you are is kept: {LEVELS[level]}."
        unread = [f"It cannot be marked like this: {self.unread}"] if self.unread else []
        notice = [self._session.record.notice] if self._session.record.notice else []
        self._said.value = status([words, *unread, *notice])


class PaperStory(Shown):
    """What the questions of a scenario are about."""

    def __init__(self, told: PaperScenario, session: Session) -> None:
        self._told = told
        self._session = session
        self._text = widgets.HTML()
        super().__init__([self._text])
        self.add_class("ropecalc-situation")
        self.until_closed(session.on_units(lambda _: self._refresh()))
        self._refresh()

    def summary(self) -> str:
        """Which questions it belongs to, and the story."""
        return f"{self._head()}\n{self._told.story(self._session.display)}"

    def _head(self) -> str:
        told = self._told
        return f"{told.scenario.title}: questions {told.first} to {told.last} are about this."

    def _refresh(self) -> None:
        story = self._told.story(self._session.display)
        self._text.value = f"<p><b>{escape(self._head())}</b></p><p>{escape(story)}</p>"


class OpenItem(Shown):
    """An open question of a paper: room to write; the instructor gives points for it by hand."""

    def __init__(self, number: int, judged: Judged, place: Place, session: Session) -> None:
        self._number = number
        self._judged = judged
        self._place = place
        self._session = session
        self._text = widgets.Textarea(
            value=session.record.work(place).draft,
            description="Your answer",
            continuous_update=False,
            layout={"width": "98%", "height": "180px"},
            style={"description_width": "initial"},
        )
        self._said = widgets.HTML()
        self._text.observe(lambda change: self._keep(change["new"]), names="value")
        super().__init__([widgets.HTML(self._html()), self._text, self._said])
        self.add_class("ropecalc-question")
        self._say()

    def summary(self) -> str:
        """The question, and what was written."""
        lines = [f"Question {self._number}", self._judged.title, self._judged.question]
        answer = self._session.record.work(self._place).draft
        lines += [by_hand(self._judged), f"Written: {answer}" if answer else "Nothing written yet."]
        return "\n".join(lines)

    def _html(self) -> str:
        judged = self._judged
        return (
            f"<p><b>Question {self._number}</b></p><h4>{escape(judged.title)}</h4>"
            f"<p>{escape(judged.question)}</p><p>{escape(by_hand(judged))}</p>"
        )

    def _keep(self, text: str) -> None:
        self._session.record.keep_work(self._place, Work(draft=text[:LONGEST_TEXT]))
        self._say()

    def _say(self) -> None:
        kept = self._session.record.work(self._place).draft
        words = "What you wrote is kept." if kept else "Nothing written yet."
        if len(kept) >= LONGEST_TEXT:
            words = f"Only the first {LONGEST_TEXT} characters are kept. Write it shorter."
        notice = self._session.record.notice
        self._said.value = status([words, *([notice] if notice else [])])


class HandIn(Shown):
    """The end of a paper: a copy of the notebook with the answers in it, and the same as a file."""

    def __init__(
        self, described: Described, answers: Any, sure: Any, unread: Any, folder: Path
    ) -> None:
        self._described = described
        self._answers = answers
        self._sure = sure
        self._unread = unread
        self._folder = folder
        self._said = widgets.HTML()
        super().__init__([row(button("Hand in", self._hand_in, icon="check")), self._said])
        self.add_class("ropecalc-hand-in")

    def summary(self) -> str:
        """What handing in does."""
        return (
            "“Hand in” writes a copy of this paper with your answers, to give to your instructor."
        )

    def _hand_in(self) -> None:
        answers = self._answers()
        code, student = str(self._described["code"]), str(self._described["student"])
        path = self._folder / f"{HANDED_IN}{file_name(student)}-{code}.ipynb"
        try:
            write_whole(path, as_text(notebook_of(self._described, answers, self._sure())))
            written = f"Written: {path.name}, beside this page. Give it to your instructor."
        except ValueError as error:
            written = f"{error} Save the file below instead."
        blank = [str(number) for number, text in answers.items() if not text.strip()]
        still = f"Not answered: {', '.join(blank)}." if blank else "Everything is answered."
        unread = ", ".join(map(str, self._unread()))
        if unread:
            still += (
                f" Without a unit, or not to be read: {unread}. Put that right and hand in again."
            )
        self._said.value = (
            f'<div role="status" aria-live="polite"><p>{escape(still)}</p>'
            f"<p>{escape(written)}</p>{self._link(answers)}"
            f"<p>{escape(cautions.KNOWLEDGE_CHECK)}</p></div>"
        )

    def _link(self, answers: Mapping[int, str]) -> str:
        content = {
            "code": self._described["code"],
            "student": self._described["student"],
            "answers": {str(number): text for number, text in answers.items()},
            "sure": {str(number): level for number, level in self._sure().items()},
        }
        data = base64.b64encode(json.dumps(content).encode("utf-8")).decode("ascii")
        name = f"answers-{self._described['code']}.json"
        return (
            f"<p><a download='{escape(name)}' href='data:application/json;base64,{data}'>"
            "Save the answers alone</a></p>"
        )


def open_paper(code: str) -> PaperPage:
    """The paper with ``code`` whose notebook lies in the present folder."""
    folder = Path.cwd()
    return PaperPage(find_paper(code, folder), Session(Record.open()), folder)
