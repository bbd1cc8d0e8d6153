"""The interactive figures of the lessons, one module each."""

from ropecalc.teaching.figures.contour_map import CONTOUR_MAP
from ropecalc.teaching.figures.three_ways import THREE_WAYS

__all__ = ["CONTOUR_MAP", "THREE_WAYS"]
