"""The interactive figures of the lessons, one module each."""

from ropecalc.teaching.figures.anchor_legs import ANCHOR_LEGS
from ropecalc.teaching.figures.closed_polygon import CLOSED_POLYGON
from ropecalc.teaching.figures.contour_map import CONTOUR_MAP
from ropecalc.teaching.figures.critical_dial import CRITICAL_DIAL
from ropecalc.teaching.figures.failures import FAILURES
from ropecalc.teaching.figures.frame_lean import FRAME_LEAN
from ropecalc.teaching.figures.locked import LOCKED_TENSIONER
from ropecalc.teaching.figures.plan_board import PLAN_BOARD
from ropecalc.teaching.figures.pulley_count import PULLEY_COUNT
from ropecalc.teaching.figures.readings import READINGS
from ropecalc.teaching.figures.tensioner_plan import TENSIONER_PLAN
from ropecalc.teaching.figures.three_tensions import THREE_TENSIONS
from ropecalc.teaching.figures.three_ways import THREE_WAYS
from ropecalc.teaching.figures.throw_clock import THROW_CLOCK
from ropecalc.teaching.keyed import by_key

FIGURES = by_key(
    (
        CLOSED_POLYGON,
        ANCHOR_LEGS,
        FRAME_LEAN,
        PULLEY_COUNT,
        THREE_TENSIONS,
        THROW_CLOCK,
        CRITICAL_DIAL,
        THREE_WAYS,
        CONTOUR_MAP,
        LOCKED_TENSIONER,
        TENSIONER_PLAN,
        READINGS,
        FAILURES,
        PLAN_BOARD,
    )
)
"""Every figure by its key; what is listed here is driven over its ranges by the tests."""

__all__ = [
    "ANCHOR_LEGS",
    "CLOSED_POLYGON",
    "CONTOUR_MAP",
    "CRITICAL_DIAL",
    "FAILURES",
    "FIGURES",
    "FRAME_LEAN",
    "LOCKED_TENSIONER",
    "PLAN_BOARD",
    "PULLEY_COUNT",
    "READINGS",
    "TENSIONER_PLAN",
    "THREE_TENSIONS",
    "THREE_WAYS",
    "THROW_CLOCK",
]
