"""What a lesson is made of, besides its prose: figures, derivations, facts and questions."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from ropecalc.derivation import Derivation
from ropecalc.teaching.facts import Fact, FactTable
from ropecalc.teaching.panel import Figure
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.questions.template import Template


@dataclass(frozen=True)
class TeachingNotes:
    """What an instructor needs to teach a lesson.

    ``timing`` are minutes and what they are for, ``board`` what to draw and in which order, and
    ``field`` an exercise outdoors with what the load cell should read, computed. Which question
    exposes which misconception is read from the lesson's own questions.
    """

    timing: tuple[tuple[int, str], ...]
    board: tuple[str, ...]
    field: tuple[Fact, ...]


@dataclass(frozen=True)
class LessonContent:
    """Everything that a lesson's page may ask for by key.

    ``number`` is its place in the course and ``file`` its notebook, without the ending.
    ``example`` gives the page's example, SI by quantity name, from which workings start, and
    ``elsewhere`` what a derivation, by name, begins with instead;
    ``questions`` are the quick checks; ``myths`` are questions of which the lesson meets a
    mistake head-on; ``words`` are the keys of the glossary's terms that it uses first or most.
    """

    number: int
    key: str
    file: str
    title: str
    example: Callable[[], Mapping[str, float]]
    figures: tuple[Figure, ...]
    derivations: tuple[Derivation, ...]
    facts: tuple[Fact, ...]
    questions: tuple[Question, ...]
    myths: tuple[Template, ...]
    words: tuple[str, ...]
    notes: TeachingNotes
    cautions: tuple[str, ...]
    elsewhere: Mapping[str, Mapping[str, float]] = field(default_factory=dict)
    tables: tuple[FactTable, ...] = ()

    @property
    def page(self) -> str:
        """The name of this lesson's page in a learner's record."""
        return f"lesson:{self.key}"
