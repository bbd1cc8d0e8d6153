"""What a scenario is made of: one situation with numbers of its own, and what is asked about it.

A part is a question of the usual kind whose numbers are not drawn but follow from the situation:
read off it, worked out from it (a height below the directional, an angle that somebody measures)
or carried on from an earlier part. What is carried on is the library's answer, never the
learner's, so that a slip in one part costs nothing in the next.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from ropecalc.teaching.keyed import by_key, find
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Question, Values
from ropecalc.units import find_unit, to_si

Source = str | Callable[[Values], float]
"""Where a part's quantity comes from: a number of the situation by its name, or worked out."""


@dataclass(frozen=True)
class Part:
    """One question about the situation.

    ``take`` says for a quantity of the question where it comes from; one that is not in it has the
    same name in the situation. ``gives`` names what the answer is called for later parts, and how
    finely it is carried on; ``after`` names what this part takes over from earlier ones.
    """

    question: Question
    take: Mapping[str, Source] = field(default_factory=dict)
    gives: Given | None = None
    after: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """The question's key."""
        return self.question.key

    def values(self, known: Values) -> dict[str, float]:
        """The question's numbers from the situation's, each as finely as it is shown."""
        return {g.name: on_grid(g, self._source(g.name, known)) for g in self.question.givens}

    def _source(self, name: str, known: Values) -> float:
        source = self.take.get(name, name)
        return known[source] if isinstance(source, str) else source(known)


@dataclass(frozen=True)
class Judged:
    """An open question, answered in sentences and judged by a person, never by this program.

    ``points`` are what a good answer says, a sentence each: for the instructor, and for the
    learner once their own answer is written.
    """

    key: str
    title: str
    question: str
    points: tuple[str, ...]


@dataclass(frozen=True)
class Scenario:
    """One situation and its parts. ``story`` has a ``{place}`` for each given quantity it tells.

    ``lessons`` are the numbers of those it draws on; ``usable`` turns down numbers that teach
    badly.
    """

    key: str
    number: int
    title: str
    story: str
    givens: tuple[Given, ...]
    parts: tuple[Part, ...]
    judged: tuple[Judged, ...]
    lessons: tuple[int, ...]
    cautions: tuple[str, ...]
    usable: Callable[[Values], bool] = lambda values: True

    def __post_init__(self) -> None:
        known = {given.name for given in self.givens}
        for part in self.parts:
            unknown = set(part.after) - known
            if unknown:
                raise ValueError(f"{part.key} goes on with {sorted(unknown)}, which nothing gives")
            known |= {part.gives.name} if part.gives else set()

    @property
    def file(self) -> str:
        """The name of its notebooks, without the ending."""
        return f"scenario_{self.number:02d}_{self.key.replace('-', '_')}"

    @property
    def page(self) -> str:
        """The name of its page in the learner's record, and the seed of its numbers."""
        return f"scenario:{self.key}"

    @property
    def questions(self) -> tuple[Question, ...]:
        """What is marked by the course, in order."""
        return tuple(part.question for part in self.parts)

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys of all parts, then those of the open questions."""
        return (*(part.key for part in self.parts), *(open_.key for open_ in self.judged))

    def part(self, key: str) -> Part:
        """The part whose question is called ``key``."""
        return find(by_key(self.parts), key, "part")

    def open_question(self, key: str) -> Judged:
        """The open question called ``key``."""
        return find(by_key(self.judged), key, "open question")

    def giver(self, name: str) -> Part | None:
        """The part whose answer is carried on under ``name``; None for the situation's own."""
        return next((p for p in self.parts if p.gives and p.gives.name == name), None)


def on_grid(given: Given, value: float) -> float:
    """``value`` (SI) to the last figure in which ``given`` is shown."""
    step = Decimal(str(given.step))
    shown = Decimal(f"{value / find_unit(given.unit).factor:.9f}")
    return to_si(float((shown / step).to_integral_value() * step), given.unit)
