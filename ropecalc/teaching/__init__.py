"""The course's pages: what a notebook's lines ask for."""

from ropecalc.teaching.exercise import open_exercise, open_solution

__all__ = ["open_exercise", "open_solution"]
