"""A lesson's page: each line of its notebook asks the lesson for one thing to show."""

from ropecalc.teaching.briefing import BriefingCard, Debrief, Settings
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.facts import FactTableView, FactView
from ropecalc.teaching.figures import PLAN_BOARD
from ropecalc.teaching.glossary_page import WordsBox
from ropecalc.teaching.keyed import by_key, find
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.lessons.content import LessonContent
from ropecalc.teaching.myths import MythView
from ropecalc.teaching.panel import Panel
from ropecalc.teaching.questions.question_view import QuestionView
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.sketch import SketchView
from ropecalc.teaching.working import Working


class Lesson(CoursePage):
    """One lesson for one learner."""

    def __init__(self, content: LessonContent, session: Session) -> None:
        super().__init__(session, content.cautions)
        self._content = content
        self._panels: dict[str, Panel] = {}
        self._first_said: dict[str, str] = {}  # an assumption, and the derivation that said it

    def words(self) -> WordsBox:
        """The terms that the lesson uses, with the team's own words for them."""
        return WordsBox(self._content.words, self._session.record)

    def sketch(self) -> SketchView:
        """Which point and which angle is called what."""
        return SketchView()

    def figure(self, key: str) -> Panel:
        """The interactive figure called ``key``."""
        panel = Panel(find(by_key(self._content.figures), key, "figure"), self._session)
        self._panels[key] = panel
        return panel

    def briefing(self) -> BriefingCard:
        """A raise on one page; it can take over what the plan board on this page shows."""
        return BriefingCard(self._session, self._board_settings())

    def debrief(self) -> Debrief:
        """Readings beside what is predicted for the plan board on this page."""
        return Debrief(self._session, self._board_settings())

    def _board_settings(self) -> Settings | None:
        panel = self._panels.get(PLAN_BOARD.key)
        return None if panel is None else lambda: panel.values

    def working(self, name: str, *, folded: bool = False) -> Working:
        """The derivation called ``name``, unfolding step by step.

        ``folded`` shows no step at first, where the page has argued the result in plain words.
        """
        derivations = {derivation.name: derivation for derivation in self._content.derivations}
        found = find(derivations, name, "derivation")
        for assumption in found.assumptions:
            self._first_said.setdefault(assumption, name)
        said = {each for each, by in self._first_said.items() if by != name}
        start = {**self._content.example(), **self._content.elsewhere.get(name, {})}
        return Working(found, self._session, start, said, folded=folded)

    def fact(self, key: str) -> FactView:
        """The sentence called ``key``, with its numbers computed."""
        return FactView(find(by_key(self._content.facts), key, "fact"), self._session)

    def table(self, key: str) -> FactTableView:
        """The short table called ``key``, with its numbers computed."""
        return FactTableView(find(by_key(self._content.tables), key, "table"), self._session)

    def myth(self, question: str, mistake: str) -> MythView:
        """A misconception beside the truth: the number it gives and the number balance gives."""
        return MythView(
            find(by_key(self._content.myths), question, "question with a myth"),
            mistake,
            self._session,
        )

    def question(self, key: str) -> QuestionView:
        """A quick check; wrong answers are told why."""
        return QuestionView(
            find(by_key(self._content.questions), key, "question"),
            self._session,
            self._content.page,
        )


def open_lesson(key: str) -> Lesson:
    """The lesson called ``key`` for the learner of this machine."""
    return Lesson(find(LESSONS, key, "lesson"), Session(Record.open()))
