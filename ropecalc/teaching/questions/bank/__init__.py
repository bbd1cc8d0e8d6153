"""The questions and the lesson that each belongs to.

Those that ask for a number stand in one module a topic, the other kinds in one module each.
"""

from collections.abc import Mapping

from ropecalc.teaching.keyed import by_key
from ropecalc.teaching.questions.bank import (
    advantage,
    along_the_raise,
    anchors,
    critical_angles,
    forces,
    friction,
    high_directional,
    holding_off,
    margins,
    orderings,
    rigs,
    tensioner,
    throw_and_time,
    whole_raise,
)
from ropecalc.teaching.questions.question import Question

_NUMBERS: Mapping[int, tuple[Question, ...]] = {
    1: forces.QUESTIONS,
    2: anchors.QUESTIONS,
    3: high_directional.QUESTIONS,
    4: advantage.QUESTIONS,
    5: friction.QUESTIONS,
    6: throw_and_time.QUESTIONS,
    7: critical_angles.QUESTIONS,
    8: holding_off.QUESTIONS,
    9: along_the_raise.QUESTIONS,
    10: tensioner.QUESTIONS,
    11: margins.QUESTIONS,
    12: whole_raise.QUESTIONS,
}

BY_LESSON: Mapping[int, tuple[Question, ...]] = {
    lesson: (
        *numbers,
        *orderings.BY_LESSON.get(lesson, ()),
        *rigs.BY_LESSON.get(lesson, ()),
    )
    for lesson, numbers in _NUMBERS.items()
}
"""Every question by the number of its lesson."""

LESSON_OF: Mapping[str, int] = {
    question.key: lesson for lesson, questions in BY_LESSON.items() for question in questions
}
"""The number of each question's lesson, by the question's key."""

BANK: Mapping[str, Question] = by_key(
    question for questions in BY_LESSON.values() for question in questions
)
"""Every question by its key, in the order of the course."""
