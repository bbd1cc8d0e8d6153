"""The scenarios of the course: one situation each, several parts, and a judgement at the end."""

from ropecalc.teaching.keyed import by_key
from ropecalc.teaching.scenarios.cells_disagree import CELLS_DISAGREE
from ropecalc.teaching.scenarios.enough_rope import ENOUGH_ROPE
from ropecalc.teaching.scenarios.follow_the_rope import FOLLOW_THE_ROPE
from ropecalc.teaching.scenarios.four_people import FOUR_PEOPLE
from ropecalc.teaching.scenarios.high_outcrop import HIGH_OUTCROP
from ropecalc.teaching.scenarios.low_outcrop import LOW_OUTCROP
from ropecalc.teaching.scenarios.one_face import ONE_FACE
from ropecalc.teaching.scenarios.one_line_goes import ONE_LINE_GOES
from ropecalc.teaching.scenarios.raise_in_numbers import RAISE_IN_NUMBERS
from ropecalc.teaching.scenarios.which_way import WHICH_WAY

SCENARIOS = by_key(
    (
        ONE_FACE,
        LOW_OUTCROP,
        HIGH_OUTCROP,
        FOLLOW_THE_ROPE,
        ENOUGH_ROPE,
        WHICH_WAY,
        FOUR_PEOPLE,
        CELLS_DISAGREE,
        ONE_LINE_GOES,
        RAISE_IN_NUMBERS,
    )
)
"""Every scenario by its key, in the order of the lessons."""

PARTS = by_key(question for scenario in SCENARIOS.values() for question in scenario.questions)
"""Every marked part of them by its key."""
