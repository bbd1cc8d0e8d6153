"""The interactive figures of the lessons, one module each."""

from ropecalc.teaching.figures.three_ways import THREE_WAYS

__all__ = ["THREE_WAYS"]
