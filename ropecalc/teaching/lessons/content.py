"""What a lesson is made of, besides its prose: figures, derivations, facts and questions."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from ropecalc.derivation import Derivation
from ropecalc.teaching.facts import Fact
from ropecalc.teaching.panel import Figure
from ropecalc.teaching.questions.template import Template


@dataclass(frozen=True)
class LessonContent:
    """Everything that a lesson's page may ask for by key.

    ``example`` gives the page's example, SI by quantity name, from which workings start;
    ``questions`` are the quick checks; ``myths`` are questions of which the lesson meets a
    mistake head-on.
    """

    key: str
    title: str
    example: Callable[[], Mapping[str, float]]
    figures: tuple[Figure, ...]
    derivations: tuple[Derivation, ...]
    facts: tuple[Fact, ...]
    questions: tuple[Template, ...]
    myths: tuple[Template, ...]
    cautions: tuple[str, ...]

    @property
    def page(self) -> str:
        """The name of this lesson's page in a learner's record."""
        return f"lesson:{self.key}"
