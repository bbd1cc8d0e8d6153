"""The scenarios of the course: one situation each, several parts, and a judgement at the end."""

from ropecalc.teaching.keyed import by_key
from ropecalc.teaching.scenarios.high_outcrop import HIGH_OUTCROP
from ropecalc.teaching.scenarios.one_face import ONE_FACE

SCENARIOS = by_key((ONE_FACE, HIGH_OUTCROP))
"""Every scenario by its key, in the order of the lessons."""
