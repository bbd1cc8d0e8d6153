"""What every kind of question offers. Pages, papers and marking know no more of one than this.

A kind is a frozen dataclass in a module of its own: a number
(:class:`~ropecalc.teaching.questions.template.Template`), an order, a rig to be set. Its answer
travels as a text that a learner can type, write on paper or find in a table, and that one and the
same :meth:`Question.mark` reads wherever it comes from.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar, Protocol

from ropecalc.derivation import Variable
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.passage import Passage
from ropecalc.teaching.questions.verdict import Marked
from ropecalc.units import Display

Values = Mapping[str, float]
"""The drawn numbers of a question, SI, by the quantity's name."""


@dataclass(frozen=True)
class NamedMistake:
    """A way in which people are known to go wrong: what it is called and what it leaves out."""

    key: str
    title: str
    why: str

    @property
    def named(self) -> str:
        """The title as it stands inside a sentence."""
        return self.title[0].lower() + self.title[1:]


class AnswerLine(Protocol):
    """The widget in which an answer is given. ``value`` is its text, "" while there is none."""

    value: str

    def show(self, display: Display) -> None:
        """Follow the reader's units."""

    def settled(self, act: Callable[[], object]) -> None:
        """Call ``act`` when what the learner did last has come from the browser."""


@dataclass(frozen=True)
class Listeners:
    """Who wants to know: that the answer's text ``changed``, and that Enter was pressed in it."""

    changed: Callable[[str], object]
    entered: Callable[[], object] = lambda: None


class Question(Protocol):
    """A question before its numbers are drawn. ``values`` are always those of one draw.

    ``stem`` has a ``{place}`` for the value of each given quantity that it tells.
    """

    has_choice: ClassVar[bool]
    """Whether a paper may ask it as a choice among the right number and the mistaken ones."""

    @property
    def key(self) -> str:
        """Its name; it seeds its numbers and never changes."""

    @property
    def title(self) -> str:
        """What it is called on the page."""

    @property
    def stem(self) -> str:
        """The situation and the question."""

    @property
    def asked(self) -> str:
        """What is to be found."""

    @property
    def givens(self) -> tuple[Given, ...]:
        """The quantities that are drawn."""

    @property
    def mistakes(self) -> Sequence[NamedMistake]:
        """The mistakes that marking recognises."""

    @property
    def difficulty(self) -> int:
        """1 (one step), 2 (some steps, or a decision) or 3 (several steps)."""

    @property
    def objective(self) -> str:
        """Completes "After this you can ..."."""

    @property
    def must_pass(self) -> bool:
        """Whether nobody should get it wrong at the cliff."""

    def mistake(self, key: str) -> NamedMistake:
        """The mistake called ``key``."""

    # --- drawing and marking ---

    def suits(self, values: Values) -> bool:
        """Whether these numbers have an answer that is no luck and unlike every mistake's."""

    def answer(self, values: Values) -> Any:
        """What is right, in the kind's own terms (a number in SI, letters in order, ...)."""

    def mistaken(self, values: Values) -> Mapping[str, Any]:
        """What each mistake gives, in the same terms, by the mistake's key."""

    def mark(self, values: Values, text: str, display: Display, /) -> Marked:
        """Mark ``text`` as an answer; ``display`` is for the numbers in the feedback."""

    # --- in words ---

    def shown(self, values: Values, answer: Any, display: Display, /) -> str:
        """An answer (in the kind's own terms) as it would be written down."""

    def right(self, values: Values, display: Display, /) -> str:
        """What is right as a key tells it: :meth:`shown`, or one of many that are."""

    def particulars(self, values: Values, display: Display, /) -> tuple[str, ...]:
        """Lines that belong to the question below its stem; none for most numbers."""

    def how(self, display: Display, /) -> str:
        """A sentence that says how to write the answer down."""

    def on_paper(self, display: Display, /) -> str:
        """The same in a word or two, beside the place for it on an answer sheet; may be ""."""

    def hints(self, values: Values, display: Display, /) -> tuple[Passage, ...]:
        """The way to the answer, a step at a time; the answer itself is in none of them."""

    def solution(self, values: Values, display: Display, /) -> tuple[Passage, ...]:
        """The worked solution with these numbers; the last passage says the result."""

    def common_mistakes(self, values: Values, display: Display, /) -> tuple[Passage, ...]:
        """Each mistake with what it would have given and the reason why it is wrong."""

    @property
    def assumptions(self) -> str:
        """What the answer assumes."""

    @property
    def symbols(self) -> tuple[Variable, ...]:
        """The quantities whose symbols stand in hints and solution."""

    # --- on the screen ---

    def answer_line(
        self, values: Values, text: str, display: Display, listeners: Listeners, /
    ) -> AnswerLine:
        """A new widget to answer with, holding ``text``."""


def shown_givens(question: Question, values: Values, display: Display) -> dict[str, str]:
    """The value of each given quantity in the reader's units, by its name."""
    return {given.name: given.show(values[given.name], display) for given in question.givens}
