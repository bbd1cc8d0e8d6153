"""What each lesson page can show, one module a lesson."""

from ropecalc.teaching.lessons.holding_off import HOLDING_OFF

LESSONS = {lesson.key: lesson for lesson in (HOLDING_OFF,)}
"""Every lesson by its key, in the order of the course."""
