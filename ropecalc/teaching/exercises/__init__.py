"""What each exercise asks; both of its editions are made from it.

One exercise has a module of its own, because it joins two lessons in an order of its own; the
others are the bank's questions of their lesson.
"""

from ropecalc.teaching.exercises.by_lesson import exercise_of
from ropecalc.teaching.exercises.holding_a_litter_off import HOLDING_A_LITTER_OFF
from ropecalc.teaching.keyed import by_key
from ropecalc.teaching.lessons import LESSONS

_JOINED = 8
"""The lesson whose exercise is :data:`HOLDING_A_LITTER_OFF`."""

EXERCISES = by_key(
    HOLDING_A_LITTER_OFF if lesson.number == _JOINED else exercise_of(lesson)
    for lesson in LESSONS.values()
)
"""Every exercise by its key, in the order of the course."""
