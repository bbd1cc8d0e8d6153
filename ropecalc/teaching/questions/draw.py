"""The numbers of a question, drawn so that any later release draws the same again.

For each given quantity of a question the SHA-256 digest of the text
``seed|question's key|draw number|attempt|quantity's name`` (UTF-8) is taken; its first eight bytes,
read as one big-endian integer, modulo the number of grid points of that quantity, are the index
on its grid. Attempts count from 0; the first whose numbers suit the question is the draw.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from hashlib import sha256
from types import MappingProxyType
from typing import Any, Protocol

from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Question, Values
from ropecalc.units import Display

_ATTEMPTS = 1000


class WithGivens(Protocol):
    """What numbers can be drawn for."""

    @property
    def key(self) -> str:
        """It seeds the numbers."""

    @property
    def givens(self) -> tuple[Given, ...]:
        """What is drawn."""


class DrawError(ValueError):
    """No suitable numbers were found; the template's ranges do not fit its conditions."""


@dataclass(frozen=True)
class Draw:
    """A question with numbers in it: ``values`` are SI, by the quantity's name."""

    template: Question
    number: int
    values: Values

    @property
    def answer(self) -> Any:
        """The right answer, in the terms of the question's kind; a number is SI."""
        return self.template.answer(self.values)

    @property
    def mistaken(self) -> Mapping[str, Any]:
        """What each known mistake gives, in the same terms, by its key."""
        return self.template.mistaken(self.values)

    def right(self, display: Display) -> str:
        """What is right, as a key tells it."""
        return self.template.right(self.values, display)

    def shown(self, answer: Any, display: Display) -> str:
        """An answer (the right one, a mistaken one) as it would be written down."""
        return self.template.shown(self.values, answer, display)


def draw(template: Question, seed: str, number: int = 0) -> Draw:
    """Draw number ``number`` (0, 1, 2, ...) of ``template`` for ``seed``."""
    for attempt in range(_ATTEMPTS):
        values = candidate(template, seed, number, attempt)
        if suits(template, values):
            return Draw(template, number, MappingProxyType(values))
    raise DrawError(f"{template.key}: none of {_ATTEMPTS} attempts gave suitable numbers")


def restored(template: Question, values: Values) -> Draw:
    """The draw of ``template`` whose ``values`` (SI, by name) were kept, as a file has them."""
    kept = {given.name: float(values[given.name]) for given in template.givens}
    return Draw(template, 0, MappingProxyType(kept))


def candidate(template: WithGivens, seed: str, number: int, attempt: int) -> dict[str, float]:
    """The numbers of one attempt, suitable or not."""
    return {
        given.name: given.value(_index(f"{seed}|{template.key}|{number}|{attempt}", given))
        for given in template.givens
    }


def suits(template: Question, values: Values) -> bool:
    """Whether there is an answer here that teaches well and is unlike every mistake's."""
    return template.suits(values)


def _index(text: str, given: Given) -> int:
    digest = sha256(f"{text}|{given.name}".encode()).digest()
    return int.from_bytes(digest[:8], "big") % given.count
