"""A lesson's page: each line of its notebook asks the lesson for one thing to show."""

from collections.abc import Iterable
from typing import Protocol, TypeVar

from ropecalc.teaching.facts import FactView
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.lessons.content import Content
from ropecalc.teaching.myths import MythView
from ropecalc.teaching.page import CautionsView, UnitsView
from ropecalc.teaching.panel import Panel
from ropecalc.teaching.questions.question_view import QuestionView
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.sketch import SketchView
from ropecalc.teaching.working import Working


class _Keyed(Protocol):
    @property
    def key(self) -> str: ...


_T = TypeVar("_T", bound=_Keyed)


class Lesson:
    """One lesson for one learner."""

    def __init__(self, content: Content, session: Session) -> None:
        self._content = content
        self._session = session

    def units(self) -> UnitsView:
        """The choice of units."""
        return UnitsView(self._session)

    def sketch(self) -> SketchView:
        """Which point and which angle is called what."""
        return SketchView()

    def figure(self, key: str) -> Panel:
        """The interactive figure called ``key``."""
        return Panel(_find(self._content.figures, key), self._session)

    def working(self, name: str) -> Working:
        """The derivation called ``name``, unfolding step by step."""
        for derivation in self._content.derivations:
            if derivation.name == name:
                return Working(derivation, self._session, self._content.example())
        names = ", ".join(d.name for d in self._content.derivations)
        raise KeyError(f"this lesson has no derivation {name!r}; it has {names}")

    def fact(self, key: str) -> FactView:
        """The sentence called ``key``, with its numbers computed."""
        return FactView(_find(self._content.facts, key), self._session)

    def myth(self, question: str, mistake: str) -> MythView:
        """A misconception beside the truth: the number it gives and the number balance gives."""
        return MythView(_find(self._content.myths, question), mistake, self._session)

    def question(self, key: str) -> QuestionView:
        """A quick check; wrong answers are told why."""
        return QuestionView(_find(self._content.questions, key), self._session, self._content.page)

    def cautions(self) -> CautionsView:
        """What this lesson leaves out and to whom it defers."""
        return CautionsView(self._content.cautions)


def open_lesson(key: str) -> Lesson:
    """The lesson called ``key`` for the learner of this machine."""
    return Lesson(LESSONS[key], Session(Record.open()))


def _find(things: Iterable[_T], key: str) -> _T:
    known = {thing.key: thing for thing in things}
    if key not in known:
        raise KeyError(f"this lesson has nothing called {key!r}; it has {', '.join(known)}")
    return known[key]
