"""A small drawing as data: lines, areas and words in pixels, y up, on a frame that holds them all.

It is made once and put out twice: on the screen (``svg``) and on paper (``flowable``).
"""

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import matplotlib as mpl
from matplotlib.ft2font import FT2Font

from ropecalc.teaching.canvas import INK
from ropecalc.teaching.drawing import Stroke
from ropecalc.teaching.placing import Box, Place

_ABOVE, _BELOW = 0.78, 0.24
"""How far letters reach above and below the line they stand on, as shares of their size."""
_MEASURED = 100.0


@dataclass(frozen=True)
class Trace:
    """A line through ``points``, or the area that they enclose, or both."""

    points: tuple[Place, ...]
    stroke: Stroke | None = None
    fill: str | None = None
    closed: bool = False


@dataclass(frozen=True)
class Disc:
    """A circle, filled or not."""

    centre: Place
    radius: float
    stroke: Stroke | None = None
    fill: str | None = None


@dataclass(frozen=True)
class Words:
    """One line of text around ``middle``; what is asked stands in a frame of its own."""

    text: str
    middle: Place
    size: float
    color: str = INK
    bold: bool = False
    framed: bool = False

    @property
    def box(self) -> Box:
        """The room that the words take."""
        wide, high = extent(self.text, self.size, self.bold, self.framed)
        x, y = self.middle
        return (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)

    @property
    def start(self) -> Place:
        """Where the first letter stands on its line."""
        wide, _ = extent(self.text, self.size, self.bold)
        return (
            self.middle[0] - wide / 2,
            self.middle[1] - (_ABOVE - _BELOW) / 2 * self.size,
        )


@dataclass(frozen=True)
class Picture:
    """Marks and words, the first ones behind, inside ``width`` by ``height`` pixels.

    ``alternative`` tells everything that is to be seen.
    """

    width: float
    height: float
    marks: tuple[Trace | Disc, ...]
    words: tuple[Words, ...]
    alternative: str


def extent(text: str, size: float, bold: bool = False, framed: bool = False) -> Place:
    """Width and height in pixels of one line of text."""
    room = 0.5 * size if framed else 0.0
    wide = _width(text, bold) * size / _MEASURED
    return wide + room, (_ABOVE + _BELOW) * size + room / 2


@lru_cache(maxsize=4096)
def _width(text: str, bold: bool) -> float:
    """The sum of the letters' widths at the size :data:`_MEASURED`."""
    return sum(_advance(letter, bold) for letter in text)


@lru_cache(maxsize=512)
def _advance(letter: str, bold: bool) -> float:
    return float(_font(bold).load_char(ord(letter)).linearHoriAdvance) / 65536


@lru_cache(maxsize=2)
def _font(bold: bool) -> FT2Font:
    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    font = FT2Font(str(Path(mpl.get_data_path()) / "fonts" / "ttf" / name))
    font.set_size(_MEASURED, 72)
    return font
