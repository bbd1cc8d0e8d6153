"""What an exercise is made of: prose, and the questions in their order."""

from dataclasses import dataclass

from ropecalc.teaching.keyed import by_key, find
from ropecalc.teaching.questions.question import Question


@dataclass(frozen=True)
class Section:
    """A heading, some words (Markdown) and the questions under them."""

    heading: str
    words: str
    questions: tuple[Question, ...]


@dataclass(frozen=True)
class ExerciseContent:
    """One exercise. ``file`` is the name of both notebooks, without the ending.

    ``lesson`` is the file of the lesson that it goes with.
    """

    key: str
    file: str
    title: str
    words: str
    lesson: str
    sections: tuple[Section, ...]
    cautions: tuple[str, ...]

    @property
    def page(self) -> str:
        """The name of the page in the learner's record, and the seed of its numbers."""
        return f"exercise:{self.key}"

    @property
    def questions(self) -> tuple[Question, ...]:
        """Every question of the exercise, in order."""
        return tuple(question for section in self.sections for question in section.questions)

    def question(self, key: str) -> Question:
        """The question called ``key``."""
        return find(by_key(self.questions), key, "question")
