"""The mock examination on the page: begin, answer against the clock, finish, look back."""

from collections.abc import Callable
from datetime import datetime
from html import escape
from pathlib import Path

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.teaching.buttons import button, row
from ropecalc.teaching.papers.blueprint import read_blueprint
from ropecalc.teaching.papers.paper import LETTERS, RIGHT, Item
from ropecalc.teaching.papers.paper_notebook import describe
from ropecalc.teaching.papers.paper_page import PaperItem
from ropecalc.teaching.practice import mock as mocks
from ropecalc.teaching.practice.mock import Mock
from ropecalc.teaching.questions.bank import BY_LESSON
from ropecalc.teaching.questions.diagrams import picture_of
from ropecalc.teaching.questions.diagrams.svg import beside
from ropecalc.teaching.questions.question_view import question_text, solution_html
from ropecalc.teaching.results.grading import ItemResult, PaperResult, Standing, standing
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown, close, status
from ropecalc.units import Display

Clock = Callable[[], datetime]
"""Says the time, aware of its zone."""
OVER = "The time is over. Press “Finish” to see your marks."
LATE = "The time was over: this was not kept. Press “Finish” to see your marks."
_STANDINGS = {
    Standing.REACHED: "The mark is reached.",
    Standing.BORDERLINE: "The mark is reached, but not everything that must be right is.",
    Standing.BELOW: "The mark is not reached.",
}


class MockItem(PaperItem):
    """A question of the mock: nothing that is typed after the time is kept."""

    def __init__(self, mock: Mock, number: int, session: Session, clock: Clock) -> None:
        self._in_time = lambda: mock.minutes_left(clock()) > 0
        described = describe(mock.paper)["items"][number - 1]
        super().__init__(number, described, mock.place(number), session)

    def _keep(self, text: str) -> None:
        if self._in_time():
            super()._keep(text)
        elif text != self._session.record.work(self._place).draft:
            self._said.value = status([LATE])


class MockView(Shown):
    """One mock after another; the last one stands here until the next begins."""

    def __init__(
        self, session: Session, course: Path, clock: Clock, finished: Callable[[], None]
    ) -> None:
        self._session = session
        self._course = course
        self._clock = clock
        self._finished = finished
        self._file = widgets.Text(
            description="Blueprint (file), or blank",
            placeholder="blank: questions from all lessons",
            layout={"width": "560px", "max_width": "100%"},
            style={"description_width": "190px"},
        )
        self._said = widgets.HTML()
        self._time_said = widgets.HTML()  # at the top; the other one stands below the questions
        self._review = widgets.HTMLMath()
        self._warned = False
        self._stays = (self._file, self._said, self._time_said, self._review)
        super().__init__([])
        self.add_class("ropecalc-mock")
        self.until_closed(session.on_units(lambda _: self._show_review()))
        self._show()

    def summary(self) -> str:
        """Whether a mock runs, and what came of the last one."""
        mock = self._mock()
        if mock is None:
            about = mocks.mixed_blueprint(BY_LESSON)
            return (
                f"No mock examination yet. One over all lessons has {about.count} questions and "
                f"{about.minutes} minutes."
            )
        if mock.finished is None:
            return f"{mock.paper.title}, number {mock.number}: begun, not finished."
        return "\n".join(self._verdict(mock, mocks.result(self._session.record, mock)))

    # --- what the learner does ---

    def _begin(self) -> None:
        running = self._mock()
        if running is not None and running.finished is None:  # begun on another page meanwhile
            self._show()
            return
        number = mocks.next_number(self._session.record)
        name = self._file.value.strip()
        try:
            source = self._course / Path(name).expanduser() if name else None
            blueprint = read_blueprint(source) if source else None
            made = mocks.begin(
                blueprint or mocks.mixed_blueprint(BY_LESSON, number),
                BY_LESSON,
                number,
                self._clock(),
                name,
            )
        except (ValueError, RuntimeError) as error:  # RuntimeError: "~" of nobody
            self._say(f"Not begun. {error}")
            return
        mocks.keep(self._session.record, made)
        self._show()

    def _tell_time(self) -> None:
        mock = self._mock()
        if mock is None or mock.finished is not None:
            self._show()
            return
        self._say(self._time(mock), *self._blank_words(mock))

    def _tell_time_above(self) -> None:
        mock = self._mock()
        if mock is None or mock.finished is not None:
            self._show()
            return
        self._time_said.value = status([self._time(mock)])

    def _finish(self) -> None:
        mock = self._mock()
        if mock is None or mock.finished is not None:
            self._show()
            return
        blank = self._blank_words(mock)
        if blank and not self._warned and mock.minutes_left(self._clock()):
            self._warned = True
            self._say(self._time(mock), *blank, "Press “Finish” once more to end all the same.")
            return
        mocks.finish(self._session.record, mock, self._clock())
        self._show()
        self._finished()

    # --- what the page shows ---

    def _mock(self) -> Mock | None:
        return mocks.kept(self._session.record)

    def _show(self) -> None:
        before = self.children
        self._put_up()
        close(*(widget for widget in before if widget not in self._stays))

    def _put_up(self) -> None:
        self._warned = False
        mock = self._mock()
        if mock is not None and mock.finished is None:
            numbers = range(1, len(mock.paper.items) + 1)
            items = [MockItem(mock, n, self._session, self._clock) for n in numbers]
            tools = row(
                button("How much time is left", self._tell_time, icon="clock-o"),
                button("Finish", self._finish, icon="check"),
            )
            head = widgets.HTML(
                f"<p><b>{escape(mock.paper.title)}, number {mock.number}.</b> "
                f"{len(items)} questions, {mock.paper.minutes} minutes. No hints; you see your "
                "marks after “Finish”. What you type is kept at once.</p>"
            )
            above = row(button("Time left now", self._tell_time_above, icon="clock-o"))
            self._time_said.value = status([self._time(mock)])
            self.children = (head, above, self._time_said, *items, tools, self._said)
            self._say()
            return
        self.children = (
            self._file,
            row(button("Begin a mock examination", self._begin, icon="play")),
            self._said,
            self._review,
        )
        self._say(*(self._verdict(mock, self._result(mock)) if mock else ()))
        self._show_review()

    def _result(self, mock: Mock) -> PaperResult:
        return mocks.result(self._session.record, mock)

    def _time(self, mock: Mock) -> str:
        left = mock.minutes_left(self._clock())
        return f"{_count(left, 'minute')} left of {mock.paper.minutes}." if left else OVER

    def _blank_words(self, mock: Mock) -> list[str]:
        found = mocks.answers(self._session.record, mock)
        blank = [str(number) for number, text in found.items() if not text]
        return [f"Not answered: {', '.join(blank)}."] if blank else []

    def _verdict(self, mock: Mock, result: PaperResult) -> list[str]:
        total = len(result.items)
        lines = [
            f"{mock.paper.title}, number {mock.number}: {result.marks} of {total} right. "
            f"Pass mark: {_needed(mock.pass_mark, total)} of {total}. "
            + _STANDINGS[standing(result, mock.pass_mark, None)]
        ]
        if result.missed:
            missed = ", ".join(map(str, result.missed))
            lines.append(f"These must be right and are not: {missed}.")
        return [*lines, *mistake_lines(mock, result), cautions.KNOWLEDGE_CHECK]

    def _show_review(self) -> None:
        mock = self._mock()
        if mock is None or mock.finished is None:
            self._review.value = ""
            return
        display = self._session.display
        pairs = zip(mock.paper.items, self._result(mock).items, strict=True)
        self._review.value = "".join(
            _reviewed(number, item, one, display) for number, (item, one) in enumerate(pairs, 1)
        )

    def _say(self, *lines: str) -> None:
        notice = self._session.record.notice
        self._said.value = status([*lines, *([notice] if notice else [])])


def _needed(share: float, total: int) -> str:
    """The fewest right answers that reach ``share`` of ``total``."""
    return str(next(n for n in range(total + 1) if n >= share * total - 1e-9))


def _count(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"


def mistake_lines(mock: Mock, result: PaperResult) -> list[str]:
    """The mistakes that were recognised, each by its name and with the questions it was made in."""
    found: dict[str, list[str]] = {}
    for number, (item, one) in enumerate(zip(mock.paper.items, result.items, strict=True), 1):
        if one.mistake:
            found.setdefault(item.template.mistake(one.mistake).title, []).append(str(number))
    return [f"Mistake in question {', '.join(n)}: {title}." for title, n in found.items()]


def _reviewed(number: int, item: Item, one: ItemResult, display: Display) -> str:
    right = item.drawn.right(display)
    sign = "✓ right, 1 mark" if one.right else "✗ 0 marks"
    answered = f"You answered: {_as_read(item, one, display)}." if one.text else "Not answered."
    lines = [answered, f"Right answer: {right}."]
    if one.mistake:
        mistake = item.template.mistake(one.mistake)
        lines.append(f"It comes from this mistake: {mistake.named}. {mistake.why}")
    words = "".join(f"<p>{escape(line)}</p>" for line in _stem_lines(item, display))
    stem = beside(words, picture_of(item.drawn, display))
    return (
        f"<details><summary>Question {number}, {escape(item.template.title)}: {sign}"
        f"{' (must be right)' if item.must_pass else ''}</summary>{stem}"
        + "".join(f"<p>{escape(line)}</p>" for line in lines)
        + f"{solution_html(item.drawn, display)}</details>"
    )


def _stem_lines(item: Item, display: Display) -> list[str]:
    return question_text(item.drawn, display).split("\n")[1:]


def _as_read(item: Item, one: ItemResult, display: Display) -> str:
    """The answer as typed; for a choice the number that stood at the letter."""
    if not item.options or one.text not in LETTERS[: len(item.options)]:
        return one.text
    option = item.options[LETTERS.index(one.text)]
    assert option == RIGHT or option in item.drawn.mistaken
    return f"{one.text}. {item.drawn.shown(item.option_value(option), display)}"
