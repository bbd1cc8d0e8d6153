"""Which question comes next in practice: spaced return, decided from past outcomes alone.

Nothing here looks at a clock or draws at random: the same past and the same ``now`` give the same
order.

Each question stands on a step, which :data:`GAPS` turns into the time until it is due again. A
wrong answer puts it on step 0. A right one, given once the question was due, lifts it by one
step; a right one given earlier than that proves little and leaves it where it is. A question that
was never wrong starts a step higher. Those that must be right come back after half the time.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

GAPS = (
    timedelta(minutes=2),
    timedelta(minutes=20),
    timedelta(days=1),
    timedelta(days=3),
    timedelta(days=7),
    timedelta(days=16),
    timedelta(days=35),
)
"""How long a question rests on each step."""
MUST_PASS_SHARE = 0.5
"""The part of its gap after which a question that must be right comes back."""
_FIRST_STEP = 2  # ... of a question that was right at the first try
_NEVER = datetime.min.replace(tzinfo=UTC)


@dataclass(frozen=True)
class Choice:
    """A question that practice may ask."""

    question: str
    lesson: int
    difficulty: int = 1
    must_pass: bool = False


@dataclass(frozen=True)
class Outcome:
    """What came of asking ``question`` once: right at the first try or not, and when (aware)."""

    question: str
    right: bool
    at: datetime


@dataclass(frozen=True)
class Rest:
    """Where a question stands: its step, when it is due again, and whether it went wrong last."""

    step: int
    due: datetime
    wrong: bool


def schedule(
    choices: Sequence[Choice], outcomes: Iterable[Outcome], now: datetime
) -> tuple[Choice, ...]:
    """``choices`` in the order in which they should be asked; the first one is next.

    First what was wrong and is due, then what must be right and is due, then whatever else is
    due, then what is new (lessons in turn, what must be right and what is easy first), and at the
    end what still rests, soonest due first. Inside a rank the lesson whose last question lies
    longest back goes first, so that topics mix. The question just asked comes last of all: even
    a single mistake is not asked twice on end while there is another question.
    """
    past = sorted(outcomes, key=lambda outcome: outcome.at)
    known = {choice.question: choice for choice in choices}
    rests = {
        choice.question: rest(choice, [o for o in past if o.question == choice.question])
        for choice in choices
    }
    lately = {known[o.question].lesson: o.at for o in past if o.question in known}
    last = past[-1].question if past else ""

    def order(choice: Choice) -> tuple[object, ...]:
        resting = rests[choice.question]
        return (
            choice.question == last,
            *_rank(choice, resting, lately.get(choice.lesson, _NEVER), now),
            choice.lesson,
        )

    return tuple(sorted(choices, key=order))


def _rank(
    choice: Choice, resting: Rest | None, lately: datetime, now: datetime
) -> tuple[int, datetime, bool, float]:
    if resting is None:
        return 3, lately, not choice.must_pass, choice.difficulty
    if resting.due > now:
        return 4, resting.due, not choice.must_pass, 0
    overdue = (resting.due - now).total_seconds()
    rank = 0 if resting.wrong else 1 if choice.must_pass else 2
    return rank, lately, not choice.must_pass, overdue


def rest(choice: Choice, outcomes: Sequence[Outcome]) -> Rest | None:
    """Where ``choice`` stands after its own ``outcomes``, oldest first; None if it is new."""
    found: Rest | None = None
    for outcome in outcomes:
        found = _after(choice, found, outcome)
    return found


def _after(choice: Choice, before: Rest | None, outcome: Outcome) -> Rest:
    if not outcome.right:
        step = 0
    elif before is None:
        step = _FIRST_STEP
    else:
        step = min(before.step + (outcome.at >= before.due), len(GAPS) - 1)
    gap = GAPS[step] * (MUST_PASS_SHARE if choice.must_pass else 1.0)
    due = outcome.at + gap
    if before is not None and outcome.right:  # an early right answer never shortens the rest
        due = max(due, before.due)
    return Rest(step, due, not outcome.right)
