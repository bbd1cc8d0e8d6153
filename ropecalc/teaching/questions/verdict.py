"""How an answer was taken, with the sentence that helps."""

from dataclasses import dataclass
from enum import StrEnum


class Verdict(StrEnum):
    """How an answer was taken."""

    RIGHT = "right"
    MISTAKE = "mistake"
    SIGN = "sign"
    UNIT = "unit"
    WRONG = "wrong"
    UNREADABLE = "unreadable"


@dataclass(frozen=True)
class Marked:
    """A verdict with its reasons. ``reading`` is "" where nothing could be read.

    ``feedback`` may repeat what was typed: escape it before it goes into a page.
    """

    verdict: Verdict
    feedback: str
    reading: str = ""
    mistake: str = ""
