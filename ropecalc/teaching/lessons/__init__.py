"""What each lesson page can show, one module a lesson."""

from ropecalc.teaching.keyed import by_key
from ropecalc.teaching.lessons.holding_off import HOLDING_OFF

LESSONS = by_key((HOLDING_OFF,))
"""Every lesson by its key, in the order of the course."""
