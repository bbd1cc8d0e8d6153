"""Parts are found by key, and who asks for another is told which there are."""

import pytest

from ropecalc.teaching import open_exercise, open_lesson, open_solution
from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.keyed import find
from ropecalc.teaching.lessons import LESSONS


def test_what_is_there_is_found() -> None:
    assert find({"a": 1, "b": 2}, "b", "number") == 2


@pytest.mark.parametrize(
    ("things", "said"),
    [
        ({"a": 1, "b": 2}, "there is no number 'c'; there is a, b"),
        ({}, "there is no number 'c'; there is none"),
    ],
)
def test_what_is_not_there_is_answered_with_what_is(things: dict[str, int], said: str) -> None:
    with pytest.raises(KeyError, match=said):
        find(things, "c", "number")


@pytest.mark.parametrize(
    ("opens", "known"),
    [(open_lesson, LESSONS), (open_exercise, EXERCISES), (open_solution, EXERCISES)],
)
def test_an_unknown_page_is_answered_with_the_known_ones(opens, known) -> None:
    with pytest.raises(KeyError) as error:
        opens("nonsense")
    for key in known:
        assert key in str(error.value)
