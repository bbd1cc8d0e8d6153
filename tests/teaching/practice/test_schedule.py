"""What practice asks next: what was wrong comes back, after growing gaps, and topics mix."""

from datetime import UTC, datetime, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ropecalc.teaching.practice.schedule import GAPS, Choice, Outcome, rest, schedule

START = datetime(2030, 1, 1, tzinfo=UTC)
MINUTE, HOUR, DAY = timedelta(minutes=1), timedelta(hours=1), timedelta(days=1)
PLAIN, OTHER, THIRD = Choice("plain", 1), Choice("other", 2), Choice("third", 3)
MUST = Choice("must", 4, must_pass=True)
ALL = (PLAIN, OTHER, THIRD, MUST)


def right(choice: Choice, after: timedelta) -> Outcome:
    return Outcome(choice.question, True, START + after)


def wrong(choice: Choice, after: timedelta) -> Outcome:
    return Outcome(choice.question, False, START + after)


def names(*choices_and_past: object, now: timedelta) -> list[str]:
    choices, past = choices_and_past
    return [c.question for c in schedule(choices, past, START + now)]  # type: ignore[arg-type]


def test_new_questions_begin_with_what_must_be_right_and_what_is_easy() -> None:
    hard, easy = Choice("hard", 1, 3), Choice("easy", 1, 1)
    assert names((hard, easy, MUST), (), now=HOUR) == ["must", "easy", "hard"]


def test_nothing_to_ask_from_is_no_fault() -> None:
    assert schedule((), (wrong(PLAIN, HOUR),), START) == ()


def test_what_was_wrong_comes_back_soon_but_not_at_once() -> None:
    past = (wrong(PLAIN, 0 * DAY), right(OTHER, MINUTE))
    assert names(ALL, past, now=1.5 * MINUTE)[0] in ("third", "must")  # it still rests
    assert names(ALL, past, now=3 * MINUTE)[0] == "plain"


def test_the_question_just_asked_is_asked_again_only_if_there_is_no_other() -> None:
    past = (wrong(PLAIN, 0 * DAY),)
    assert names(ALL, past, now=DAY)[-1] == "plain"
    assert names((PLAIN,), past, now=DAY) == ["plain"]


def test_after_a_mistake_the_gaps_grow_with_every_right_answer() -> None:
    past = [wrong(PLAIN, 0 * DAY)]
    gaps = []
    for _ in range(len(GAPS) + 1):
        found = rest(PLAIN, past)
        assert found is not None
        gaps.append(found.due - past[-1].at)
        past.append(Outcome(PLAIN.question, True, found.due))
    assert gaps == [*GAPS, GAPS[-1]]
    assert list(GAPS) == sorted(set(GAPS))


def test_a_new_mistake_begins_from_the_start() -> None:
    past = [wrong(PLAIN, 0 * DAY), right(PLAIN, HOUR), right(PLAIN, 3 * DAY), wrong(PLAIN, 9 * DAY)]
    found = rest(PLAIN, past)
    assert found is not None and (found.step, found.wrong) == (0, True)
    assert found.due == START + 9 * DAY + GAPS[0]


def test_right_at_the_first_try_rests_longer_than_right_after_a_mistake() -> None:
    first = rest(PLAIN, [right(PLAIN, HOUR)])
    second = rest(PLAIN, [wrong(PLAIN, 0 * DAY), right(PLAIN, HOUR)])
    assert first is not None and second is not None
    assert first.due > second.due > START + HOUR


def test_an_early_right_answer_neither_lifts_nor_shortens() -> None:
    once = rest(PLAIN, [right(PLAIN, 0 * DAY)])
    crammed = rest(PLAIN, [right(PLAIN, n * MINUTE) for n in range(9)])
    assert once is not None and crammed is not None
    assert crammed.step == once.step
    assert crammed.due == START + 8 * MINUTE + GAPS[once.step]


def test_what_must_be_right_comes_back_most_often() -> None:
    for past in ([False], [True], [False, True]):
        plain, must = (
            rest(c, [Outcome(c.question, r, START + n * DAY) for n, r in enumerate(past)])
            for c in (PLAIN, MUST)
        )
        assert plain is not None and must is not None
        last = START + (len(past) - 1) * DAY
        assert must.due - last == (plain.due - last) / 2


def test_ranks_wrong_then_must_then_due_then_new_then_resting() -> None:
    late, new, just = Choice("late", 5), Choice("new", 6), Choice("just", 7)
    past = (
        wrong(PLAIN, 0 * DAY),
        right(MUST, HOUR),
        right(OTHER, 2 * HOUR),
        right(late, 4 * DAY),
        right(just, 4 * DAY + MINUTE),
    )
    asked = (just, new, late, OTHER, MUST, PLAIN)
    assert names(asked, past, now=4 * DAY + HOUR) == [
        "plain",
        "must",
        "other",
        "new",
        "late",
        "just",
    ]


def test_topics_mix() -> None:
    choices = [Choice(f"{lesson}-{n}", lesson) for lesson in (1, 2, 3) for n in range(3)]
    past: list[Outcome] = []
    for minute in range(9):
        now = START + minute * MINUTE
        past.append(Outcome(schedule(choices, past, now)[0].question, True, now))
    lessons = [o.question[0] for o in past]
    assert lessons == ["1", "2", "3"] * 3
    assert len({o.question for o in past}) == 9


def test_what_is_still_at_rest_comes_soonest_due_first() -> None:
    past = (right(PLAIN, 3 * HOUR), right(OTHER, HOUR), right(THIRD, 2 * HOUR))
    assert names((PLAIN, OTHER, THIRD), past, now=4 * HOUR) == ["other", "third", "plain"]


PAST = st.lists(
    st.tuples(st.sampled_from([*ALL]), st.booleans(), st.integers(0, 10**5)), max_size=20
)


@given(PAST, st.integers(-(10**5), 10**5), st.randoms())
def test_whatever_was_answered_everything_is_asked_once_and_in_the_same_order(
    past: list[tuple[Choice, bool, int]], now: int, shuffle: object
) -> None:
    """Also with a clock that was set back, and however answers and questions are ordered."""
    unlike = {moment: (choice, good) for choice, good, moment in past}
    outcomes = [
        Outcome(choice.question, good, START + moment * MINUTE)
        for moment, (choice, good) in unlike.items()
    ]
    first = schedule(ALL, outcomes, START + now * MINUTE)
    assert sorted(c.question for c in first) == sorted(c.question for c in ALL)
    shuffle.shuffle(outcomes)  # type: ignore[attr-defined]
    assert schedule(ALL[::-1], outcomes, START + now * MINUTE) == first


@pytest.mark.parametrize("days", [1, 30, 400])
def test_a_month_of_practice_keeps_up_with_a_mistake(days: int) -> None:
    """Somebody who always errs on one question meets it again and again, the rest seldom."""
    past: list[Outcome] = []
    for step in range(60):
        now = START + step * 2 * MINUTE + (step // 20) * days * DAY
        question = schedule(ALL, past, now)[0].question
        past.append(Outcome(question, question != "plain", now))
    counts = {c.question: sum(o.question == c.question for o in past) for c in ALL}
    assert counts["plain"] == max(counts.values())
    assert not any(a.question == b.question for a, b in pairwise(past))
