"""The numbers of a question, drawn so that any later release draws the same again.

For each given quantity of a template the SHA-256 digest of the text
``seed|template key|draw number|attempt|quantity's name`` (UTF-8) is taken; its first eight bytes,
read as one big-endian integer, modulo the number of grid points of that quantity, are the index
on its grid. Attempts count from 0; the first whose numbers suit the question is the draw.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from hashlib import sha256
from types import MappingProxyType

from ropecalc.teaching.questions.template import Given, Template

_ATTEMPTS = 1000


class DrawError(ValueError):
    """No suitable numbers were found; the template's ranges do not fit its conditions."""


@dataclass(frozen=True)
class Draw:
    """A template with numbers in it: ``values`` are SI, by the quantity's name."""

    template: Template
    number: int
    values: Mapping[str, float]

    @property
    def answer(self) -> float:
        """The right answer, SI."""
        return self.template.answer(self.values)

    @property
    def mistaken(self) -> Mapping[str, float]:
        """What each known mistake gives, SI, by its key."""
        return self.template.mistaken(self.values)


def draw(template: Template, seed: str, number: int = 0) -> Draw:
    """Draw number ``number`` (0, 1, 2, ...) of ``template`` for ``seed``."""
    for attempt in range(_ATTEMPTS):
        values = candidate(template, seed, number, attempt)
        if suits(template, values):
            return Draw(template, number, MappingProxyType(values))
    raise DrawError(f"{template.key}: none of {_ATTEMPTS} attempts gave suitable numbers")


def restored(template: Template, values: Mapping[str, float]) -> Draw:
    """The draw of ``template`` whose ``values`` (SI, by name) were kept, as a file has them."""
    kept = {given.name: float(values[given.name]) for given in template.givens}
    return Draw(template, 0, MappingProxyType(kept))


def candidate(template: Template, seed: str, number: int, attempt: int) -> dict[str, float]:
    """The numbers of one attempt, suitable or not."""
    return {
        given.name: given.value(_index(f"{seed}|{template.key}|{number}|{attempt}", given))
        for given in template.givens
    }


def suits(template: Template, values: Mapping[str, float]) -> bool:
    """Whether the result holds here, teaches well, and tells every mistake from the answer."""
    if not (bool(template.derivation.valid(**values)) and template.usable(values)):
        return False
    try:
        return template.tells_apart(values)
    except ValueError:  # the derivation itself finds no result here
        return False


def _index(text: str, given: Given) -> int:
    digest = sha256(f"{text}|{given.name}".encode()).digest()
    return int.from_bytes(digest[:8], "big") % given.count
