"""What each exercise asks, one module an exercise; both of its editions are made from it."""

from ropecalc.teaching.exercises.holding_a_litter_off import HOLDING_A_LITTER_OFF

EXERCISES = {exercise.key: exercise for exercise in (HOLDING_A_LITTER_OFF,)}
"""Every exercise by its key, in the order of the course."""
