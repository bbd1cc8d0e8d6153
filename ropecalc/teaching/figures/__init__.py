"""The interactive figures of the lessons, one module each."""

from ropecalc.teaching.figures.contour_map import CONTOUR_MAP
from ropecalc.teaching.figures.three_ways import THREE_WAYS
from ropecalc.teaching.keyed import by_key

FIGURES = by_key((THREE_WAYS, CONTOUR_MAP))
"""Every figure by its key; what is listed here is driven over its ranges by the tests."""

__all__ = ["CONTOUR_MAP", "FIGURES", "THREE_WAYS"]
