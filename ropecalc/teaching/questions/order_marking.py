"""From letters in order to a verdict and a sentence that helps."""

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from ropecalc.teaching.questions.verdict import Marked, Verdict
from ropecalc.units import Display

if TYPE_CHECKING:
    from ropecalc.teaching.questions.ordering import Ordering
    from ropecalc.teaching.questions.question import Values

BLANK = "_"
"""Stands where nothing has been chosen yet."""
_BETWEEN = re.compile(r"[\s,;./|<→–()\-]+|\bthen\b|\band\b")
_LONGEST = 80  # characters


class _UnreadableError(ValueError):
    pass


def mark_order(question: "Ordering", values: "Values", text: str, display: Display) -> Marked:
    """Mark ``text`` as the answer to ``question`` with ``values`` in it."""
    right = question.answer(values).split()
    try:
        letters = read_order(text, sorted(right), question.first)
    except _UnreadableError as error:
        return Marked(Verdict.UNREADABLE, str(error))
    read = " ".join(letters)
    if letters == right:
        said = f"Right. {question.in_order(values, display)} {question.reason}"
        return Marked(Verdict.RIGHT, said, read)
    for key, wrong in question.mistaken(values).items():
        if letters == wrong.split():
            mistake = question.mistake(key)
            said = f"Not right. Your order comes from this mistake: {mistake.named}. {mistake.why}"
            return Marked(Verdict.MISTAKE, said, read, key)
    if letters == right[::-1]:
        said = f"The order is right, but the wrong way round: the {question.first} comes first."
        return Marked(Verdict.SIGN, said, read)
    return Marked(Verdict.WRONG, f"Not right. {_advice(letters, right)}", read)


def read_order(text: str, known: Sequence[str], first: str) -> list[str]:
    """The letters in ``text``, each of ``known`` once; commas, spaces and the like are welcome."""
    wanted = " ".join([*known[1:], *known[:1]])
    how = f"Write each letter once, the {first} first, for example {wanted}."
    if len(text) > _LONGEST:
        raise _UnreadableError(f"That is {len(text)} characters long. {how}")
    if ">" in text:
        raise _UnreadableError(f"“>” can be read in two ways. {how}")
    letters = list(_BETWEEN.sub("", text.lower()).upper())
    if BLANK in letters:
        raise _UnreadableError(f"Nothing stands at place {letters.index(BLANK) + 1} yet. {how}")
    strange = [letter for letter in letters if letter not in known]
    if strange:
        raise _UnreadableError(f"There is no “{strange[0]}” among the letters. {how}")
    for letter in known:
        times = letters.count(letter)
        if times != 1:
            fault = f"{letter} is missing" if not times else f"{letter} stands {times} times"
            raise _UnreadableError(f"{fault}. {how}")
    return letters


def _advice(letters: Sequence[str], right: Sequence[str]) -> str:
    """Which neighbours are exchanged, if that is all that is wrong."""
    for place, (one, other) in enumerate(pairwise(letters)):
        exchanged = [*letters[:place], other, one, *letters[place + 2 :]]
        if exchanged == list(right):
            return f"Only {one} and {other} are exchanged; the rest of the order is right."
    return "Work out the value of each one, or take a hint."
