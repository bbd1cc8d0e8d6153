"""From the record to outcomes, mastery, and confidence against correctness."""

import pytest

from ropecalc.teaching.practice.history import asked, choices, moment, wrong_now
from ropecalc.teaching.practice.mastery import (
    ENOUGH,
    FADES,
    last_mistakes,
    mastery,
    told,
    weighted,
)
from ropecalc.teaching.questions.bank import BANK, BY_LESSON
from ropecalc.teaching.record import Answer, Place, Record

WEIGHT, TWO_LEGS, LOWERING = "weight-of-a-mass", "two-equal-legs", "three-to-one-lowering"


@pytest.fixture
def record() -> Record:
    return Record.in_memory()


def give(
    record: Record, question: str, verdict: str, *, draw: int = 0, page: str = "practice", **more
) -> None:
    more.setdefault("at", "2030-01-01T00:00:00+00:00")
    record.keep_answer(Place(page, question), Answer(draw, "1", "1", verdict, **more))


def test_only_the_first_answer_to_each_set_of_numbers_counts(record: Record) -> None:
    give(record, WEIGHT, "unreadable")
    give(record, WEIGHT, "wrong")
    give(record, WEIGHT, "right")
    give(record, WEIGHT, "right", draw=1)
    give(record, WEIGHT, "right", page="exercise:forces")
    give(record, TWO_LEGS, "unreadable")
    assert [(one.question, one.right) for one in asked(record)] == [
        (WEIGHT, False),
        (WEIGHT, True),
        (WEIGHT, True),
    ]


def test_help_costs_credit_and_a_solution_all_of_it(record: Record) -> None:
    for draw, hints in enumerate((0, 1, 3)):
        give(record, WEIGHT, "right", draw=draw, hints=hints)
    give(record, WEIGHT, "right", draw=3, solution_seen=True)
    give(record, WEIGHT, "wrong", draw=4)
    assert [one.credit for one in asked(record)] == [1, 0.75, 0.25, 0, 0]
    assert [one.right for one in asked(record)] == [True, True, True, False, False]


def test_questions_of_another_release_are_left_out(record: Record) -> None:
    give(record, "no-such-question", "wrong")
    assert asked(record) == () and wrong_now(asked(record)) == frozenset()


def test_what_went_wrong_is_what_was_wrong_last(record: Record) -> None:
    give(record, WEIGHT, "wrong")
    give(record, TWO_LEGS, "wrong")
    give(record, TWO_LEGS, "right", draw=1)
    assert wrong_now(asked(record)) == {WEIGHT}
    assert [c.question for c in choices(only=wrong_now(asked(record)))] == [WEIGHT]


def test_practice_may_ask_the_bank_or_one_lesson_of_it() -> None:
    assert [c.question for c in choices()] == list(BANK)
    assert [c.question for c in choices(5)] == [t.key for t in BY_LESSON[5]]
    assert {c.question for c in choices() if c.must_pass} == {
        key for key, t in BANK.items() if t.must_pass
    }


def test_a_time_that_cannot_be_read_lies_long_ago() -> None:
    assert moment("nonsense") < moment("1999-01-01T00:00:00") < moment("1999-01-01T01:00:00+00:00")


def test_young_answers_weigh_more() -> None:
    assert weighted([]) == 0
    assert weighted([1, 1, 1]) == pytest.approx(1)
    assert weighted([0, 1]) == pytest.approx(1 / (1 + FADES))
    assert weighted([0, 0, 1, 1]) > 0.5 > weighted([1, 1, 0, 0])


def learn(record: Record, lesson: int, *, but: tuple[str, ...] = ()) -> None:
    for template in BY_LESSON[lesson]:
        give(record, template.key, "wrong" if template.key in but else "right")


def test_a_lesson_is_mastered_by_many_questions_right_and_none_open_that_must_be(
    record: Record,
) -> None:
    assert {one.sentence() for one in mastery(())} == {"not begun"}
    learn(record, 5)
    five = mastery(asked(record))[4]
    assert five.mastered and (five.lesson, five.share) == (5, pytest.approx(1))
    assert five.sentence().startswith("mastered: ")
    give(record, LOWERING, "wrong", draw=1)
    for draw in range(9):
        give(record, BY_LESSON[5][0].key, "right", draw=1 + draw)
    five = mastery(asked(record))[4]
    assert five.share > 0.8 and not five.mastered
    assert BANK[LOWERING].title in five.sentence()


def test_few_questions_are_not_mastery(record: Record) -> None:
    must = [template.key for template in BY_LESSON[1] if template.must_pass]
    for draw in range(20):
        give(record, must[draw % len(must)], "right", draw=draw)
    assert len(must) < ENOUGH and not mastery(asked(record))[0].mastered
    assert not mastery(asked(record))[0].open_must_pass


def test_what_is_said_is_never_rounded_up(record: Record) -> None:
    lost = []
    for draw in range(12):
        give(record, WEIGHT, "wrong" if draw < 3 else "right", draw=draw)
        one = mastery(asked(record))[0]
        shown = int(one.sentence().split("of late ")[1].split()[0])
        lost.append(100 * one.share - shown)
    assert all(-1e-6 <= less < 1 for less in lost) and max(lost) > 0.5


def test_confidence_against_correctness(record: Record) -> None:
    for draw, (verdict, level) in enumerate(
        [("right", "sure"), ("wrong", "sure"), ("wrong", "guess"), ("right", "")]
    ):
        give(record, WEIGHT, verdict, draw=draw)
        if level:
            record.keep_confidence(Place("practice", WEIGHT), draw, level)
    give(record, TWO_LEGS, "right")
    record.keep_confidence(Place("practice", TWO_LEGS), 0, "unsure")
    found = [(t.lesson, t.level, t.right, t.asked) for t in told(asked(record))]
    assert found == [(1, "sure", 1, 2), (1, "guess", 0, 1), (2, "unsure", 1, 1)]


def test_the_last_mistakes_by_name_youngest_first(record: Record) -> None:
    keys = [mistake.key for mistake in BANK[WEIGHT].mistakes]
    for draw in range(7):
        give(record, WEIGHT, "mistake", draw=draw, mistake=keys[draw % len(keys)])
    give(record, WEIGHT, "mistake", draw=7, mistake="of-another-release")
    found = [one.mistake for one in last_mistakes(asked(record))]
    assert found == [keys[draw % len(keys)] for draw in (6, 5, 4, 3, 2)]
