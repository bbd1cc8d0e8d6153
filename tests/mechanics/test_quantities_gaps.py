"""Where each quantity is defined, said in words: the ends of its domain and why they are there."""

import math

import pytest

from ropecalc.derivation import ANY, NOT_NEGATIVE, POSITIVE, Domain, Variable
from ropecalc.mechanics import quantities as q
from ropecalc.units import Display

DOMAINS = {
    # At a right angle from the line of pull a leg or a rope carries no part of the load.
    "at least 0° and less than 90.0°": (
        q.PLUMB_ANGLE, q.LINE_ELEVATION, q.BRIDLE_TILT, q.LEG_PLUMB_ANGLE, q.HALF_SPREAD,
        q.PULL_SWING, q.OUTER_LEG_ANGLE, q.LEG_HALF_SPREAD, q.HUB_SPREAD, q.END_ANGLE,
    ),
    # A leg in the line of pull takes all and leaves the other leg nothing to balance.
    "more than 0° and at most 90.0°": (
        q.FIRST_LEG_ANGLE, q.SECOND_LEG_ANGLE, q.HAUL_ELEVATION, q.ROPE_ELEVATION,
    ),
    "more than 0° and less than 90.0°": (q.FRONT_LEG_ANGLE, q.BACK_LEG_ANGLE, q.TROLLEY_ANGLE),
    "at least 0° and at most 90.0°": (q.FRONT_DEPRESSION, q.BACK_DEPRESSION),
    # Up or down, but never straight up or down.
    "more than −90.0° and less than 90.0°": (
        q.LEAN, q.GROUND_DEPRESSION, q.GUY_DEPRESSION, q.FIRST_SAG_ANGLE, q.SECOND_SAG_ANGLE,
        q.PULL_ELEVATION,
    ),
    # Two strands may lie side by side or pull straight against each other.
    "at least 0° and at most 180°": (q.PULL_ANGLE, q.STRAND_ANGLE, q.SHEAVE_TURN),
    # Two legs that pull straight against each other carry no load.
    "at least 0° and less than 180°": (q.LEG_ANGLE,),
    "more than 0° and less than 180°": (q.TRACK_ELEVATION,),
    # A groove that is open all the way is a flat surface.
    "more than 0° and at most 180°": (q.GROOVE_ANGLE,),
    # Two legs side by side carry half each, three a third each; a level span never gets there.
    "at least 0.500": (q.LOAD_RATIO,),
    "at least 0.333": (q.THREE_LEG_RATIO,),
    "more than 0.500": (q.SPAN_RATIO,),
    # Two strands side by side pull twice.
    "at least 0 and at most 2": (q.REDIRECT_RATIO,),
    # No pulley gives back more than it takes, no knot makes a rope stronger.
    "more than 0 and at most 1": (
        q.SHEAVE_RATIO, q.TERMINATION, q.ELONGATION, q.QUOTED_ELONGATION,
    ),
    # So bad a pulley that nobody calls it one; over forty of them the numbers still fit.
    "at least 0.0100 and at most 1": (q.SHEAVE_EFFICIENCY,),
    # Rubber on dry rock rubs less, and sixteen turns are more than a bollard takes.
    "at least 0 and at most 3": (q.FRICTION,),
    "at least 0° and at most 5760°": (q.TURN,),
    "at least 0 and less than 1": (q.STRENGTH_UNCERTAINTY, q.BEARING_SHARE),
    "at least 0 and at most 1": (q.CELL_ERROR, q.END_AT_LOAD),
    "at least 1": (q.PARTS, q.TRAVELLING_PULLEYS),
}  # fmt: skip
PAIRS = [(words, variable) for words, variables in DOMAINS.items() for variable in variables]


@pytest.mark.parametrize(("words", "variable"), PAIRS, ids=[v.name for _, v in PAIRS])
def test_the_ends_of_a_domain_are_those_of_the_thing(words: str, variable: Variable) -> None:
    assert variable.domain.describe(variable.kind, Display()) == words


def test_ends_are_exact() -> None:
    ends = {end for _, v in PAIRS for end in (v.domain.low, v.domain.high)}
    known = {0.0, 0.01, 0.5, 1 / 3, 1.0, 2.0, 3.0, math.inf}
    known |= {math.pi / 2, -math.pi / 2, math.pi, 32 * math.pi}
    assert ends == known


def test_every_other_quantity_has_one_of_the_three_plain_domains() -> None:
    listed = {variable.name for _, variable in PAIRS}
    whole_turn = {Domain(0.0, 2 * math.pi)}  # the litter's angle, counted over the top
    for variable in vars(q).values():
        if isinstance(variable, Variable) and variable.name not in listed:
            plain = {ANY, POSITIVE, NOT_NEGATIVE} | whole_turn
            assert variable.domain in plain, variable.name


def test_a_force_that_can_vanish_and_one_that_cannot() -> None:
    assert q.LOAD.domain == POSITIVE and q.TAG_TENSION.domain == NOT_NEGATIVE
    assert q.DROP.domain == POSITIVE and q.PUSH.domain == NOT_NEGATIVE
    assert q.X.domain == ANY and q.TRACK_LIFT.domain == ANY


def test_what_a_formula_takes_in_si_only_is_marked() -> None:
    """An angle that is multiplied, a mass beside the number of gravity."""
    for variable in (q.MASS, q.TURN, q.HUB_MASS):
        assert variable.in_si, variable.name
    assert not q.LOAD.in_si and not q.HAUL_ELEVATION.in_si and not q.SHEAVE_TURN.in_si
