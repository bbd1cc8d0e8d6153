"""The exercise of a lesson: every question of the bank that belongs to it, easy ones first."""

from ropecalc.teaching.exercises.content import ExerciseContent, Section
from ropecalc.teaching.lessons.content import LessonContent
from ropecalc.teaching.questions.bank import BY_LESSON

_WORDS = (
    "Make a sketch before you calculate. Type a number with its unit, with a decimal comma or a "
    "point, and press Enter or **Check**. Where an order is asked, choose one thing for each "
    "place; where a rig is to be set, move its sliders. Where a wrong answer comes from a common "
    "mistake, the page says which. Hints come one step at a time."
)
_LEVELS = (
    (1, "One step", "One balance, one count or one ratio answers each of these."),
    (2, "A decision first", "Decide on a direction, or take two steps."),
    (3, "Several steps", "Draw the free body, write both balances, then calculate."),
)


def exercise_of(lesson: LessonContent) -> ExerciseContent:
    """All questions of ``lesson``, by level."""
    questions = BY_LESSON[lesson.number]
    sections = (
        Section(heading, words, tuple(q for q in questions if q.difficulty == level))
        for level, heading, words in _LEVELS
    )
    return ExerciseContent(
        key=lesson.key,
        file=lesson.file,
        title=lesson.title,
        words=_WORDS,
        lesson=lesson.file,
        sections=tuple(section for section in sections if section.questions),
        cautions=lesson.cautions,
    )
