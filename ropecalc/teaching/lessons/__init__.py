"""What each lesson page can show, one module a lesson."""

from ropecalc.teaching.keyed import by_key
from ropecalc.teaching.lessons.along_the_raise import ALONG_THE_RAISE
from ropecalc.teaching.lessons.anchors import ANCHORS
from ropecalc.teaching.lessons.critical_angles import CRITICAL_ANGLES
from ropecalc.teaching.lessons.forces import FORCES
from ropecalc.teaching.lessons.friction import FRICTION
from ropecalc.teaching.lessons.high_directional import HIGH_DIRECTIONAL
from ropecalc.teaching.lessons.holding_off import HOLDING_OFF
from ropecalc.teaching.lessons.margins_and_failures import MARGINS_AND_FAILURES
from ropecalc.teaching.lessons.mechanical_advantage import MECHANICAL_ADVANTAGE
from ropecalc.teaching.lessons.tensioner import TENSIONER
from ropecalc.teaching.lessons.throw_and_time import THROW_AND_TIME
from ropecalc.teaching.lessons.whole_raise import WHOLE_RAISE

LESSONS = by_key(
    (
        FORCES,
        ANCHORS,
        HIGH_DIRECTIONAL,
        MECHANICAL_ADVANTAGE,
        FRICTION,
        THROW_AND_TIME,
        CRITICAL_ANGLES,
        HOLDING_OFF,
        ALONG_THE_RAISE,
        TENSIONER,
        MARGINS_AND_FAILURES,
        WHOLE_RAISE,
    )
)
"""Every lesson by its key, in the order of the course."""
