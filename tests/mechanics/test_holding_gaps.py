"""Verdicts are told apart: by number, by name and by sentence."""

import math

import pytest

from ropecalc.mechanics.holding import (
    SENSITIVE_SHIFT,
    Method,
    Point,
    Reach,
    Rig,
    hold,
    too_shaky,
)


def test_each_verdict_has_its_own_number_and_sentence() -> None:
    assert sorted(int(reach) for reach in Reach) == list(range(len(Reach.__members__)))
    sentences = [reach.sentence for reach in Reach]
    assert len(set(sentences)) == len(Reach.__members__)
    assert all(text[0].isupper() and text.endswith(".") for text in sentences)


def test_only_two_verdicts_are_possible() -> None:
    assert [reach for reach in Reach if reach.possible] == [Reach.HELD, Reach.PLUMB]


@pytest.mark.parametrize(("here", "shaky"), [(200.0, False), (200.5, True)])
def test_an_effort_that_ends_further_in_has_changed_by_all_of_itself(
    here: float, shaky: bool
) -> None:
    # further in nothing is needed any more; a tenth of the load is where that begins to matter
    assert bool(too_shaky(2000.0, here, here, math.nan)) is shaky


def test_the_litter_is_moved_by_a_step_that_a_team_could_make() -> None:
    assert 0.1 <= SENSITIVE_SHIFT <= 0.5


def test_at_the_very_height_of_the_directional_no_haul_line_lifts() -> None:
    """Also where a hub that is higher would open the angle at the litter."""
    rig = Rig(Point(0.3, 32.0), Point(0.3, 32.0), Point(40.0, 45.0))
    for method in (Method.TAG, Method.TRACK):
        assert hold(method, rig, 2000.0, 2.0, 32.0).reach is Reach.ABOVE_DIRECTIONAL
