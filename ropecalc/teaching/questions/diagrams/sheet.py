"""A sheet to draw on: marks at once, words at the end, where they hide nothing.

Places are in pixels, y up, from wherever a drawing likes to count; the frame is put around what
has been drawn, so nothing can lie outside it.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise

from ropecalc.teaching.canvas import INK, SOFT_INK
from ropecalc.teaching.drawing import THIN, Stroke
from ropecalc.teaching.placing import EVERYWHERE, Box, Place, best_place
from ropecalc.teaching.questions.diagrams.picture import Disc, Picture, Trace, Words, extent

SIZE = 12.0
_SMALL = 10.0
_MARGIN = 6.0
_GAPS = (4.0, 9.0, 15.0, 22.0, 30.0, 42.0, 56.0, 72.0)
_LEADER_FROM = 20.0


@dataclass(frozen=True)
class _Label:
    text: str
    at: Place
    towards: Place
    color: str
    bold: bool
    framed: bool


class Sheet:
    """Collects a drawing; :meth:`picture` frames it."""

    def __init__(self) -> None:
        self._marks: list[Trace | Disc] = []
        self._written: list[Words] = []
        self._labels: list[_Label] = []
        self._segments: list[Box] = []
        self._taken: list[Box] = []
        self._to_scale = True

    def line(self, stroke: Stroke, *points: Place, ghost: bool = False) -> None:
        """A line through ``points``; words may cross it only if it is a ``ghost``."""
        self._marks.append(Trace(points, stroke))
        if not ghost:
            self._segments += [(*p, *q) for p, q in pairwise(points)]

    def area(self, fill: str, *corners: Place, edge: Stroke | None = None) -> None:
        """A filled area, which words may cover."""
        self._marks.append(Trace(corners, edge, fill, closed=True))

    def thing(self, fill: str, *corners: Place, edge: Stroke | None = None) -> None:
        """A filled outline that words keep clear of."""
        self.area(fill, *corners, edge=edge)
        self.avoid(corners)

    def disc(self, centre: Place, radius: float, fill: str, edge: Stroke | None = None) -> None:
        """A filled circle that words keep clear of."""
        self._marks.append(Disc(centre, radius, edge, fill))
        x, y = centre
        self.avoid([(x - radius, y - radius), (x + radius, y + radius)])

    def avoid(self, corners: Iterable[Place]) -> None:
        """Keep words out of the box around ``corners``."""
        self._taken.append(_around(corners))

    def label(
        self,
        text: str,
        at: Place,
        towards: Place = (1.0, 0.0),
        color: str = INK,
        bold: bool = False,
    ) -> None:
        """Words beside ``at``, on the side of ``towards`` if there is room."""
        self._labels.append(_Label(text, at, towards, color, bold, framed=False))

    def ask(self, at: Place, towards: Place = (1.0, 0.0), text: str = "?") -> None:
        """What is asked, in its frame."""
        self._labels.append(_Label(text, at, towards, INK, bold=True, framed=True))

    def write(self, text: str, middle: Place, *, bold: bool = False, framed: bool = False) -> None:
        """Words exactly at ``middle``; labels keep clear of them."""
        words = Words(text, middle, SIZE, INK, bold, framed)
        self._written.append(words)
        self._taken.append(words.box)

    def paste(self, picture: Picture, left: float, top: float) -> None:
        """Put a finished picture down with its upper left corner there."""
        dx, dy = left, top - picture.height
        self._marks += [_moved(mark, dx, dy) for mark in picture.marks]
        self._written += [_shifted(words, dx, dy) for words in picture.words]
        self._taken.append((left, dy, left + picture.width, top))

    def not_to_scale(self) -> None:
        """Say so below the drawing."""
        self._to_scale = False

    def picture(self, alternative: str) -> Picture:
        """Everything drawn, with its labels, on the smallest frame that holds it."""
        words, leaders = self._place_labels()
        marks = [*self._marks, *leaders]
        left, bottom, right, top = _union([*map(_mark_box, marks), *(w.box for w in words)])
        if not self._to_scale:
            wide, high = extent("not to scale", _SMALL)
            right = max(right, left + wide)
            words.append(
                Words("not to scale", (left + wide / 2, bottom - 4 - high / 2), _SMALL, SOFT_INK)
            )
            bottom -= 4 + high
        dx, dy = _MARGIN - left, _MARGIN - bottom
        return Picture(
            right - left + 2 * _MARGIN,
            top - bottom + 2 * _MARGIN,
            tuple(_moved(mark, dx, dy) for mark in marks),
            tuple(_shifted(w, dx, dy) for w in words),
            alternative if self._to_scale else f"{alternative} The drawing is not to scale.",
        )

    def _place_labels(self) -> tuple[list[Words], list[Trace]]:
        words, leaders, taken = list(self._written), [], list(self._taken)
        for label in self._labels:
            size = extent(label.text, SIZE, label.bold, label.framed)
            _, box, gap = best_place(
                label.at,
                size,
                label.towards,
                _GAPS,
                frame=EVERYWHERE,
                segments=self._segments,
                taken=taken,
            )
            taken.append(box)
            middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
            words.append(Words(label.text, middle, SIZE, label.color, label.bold, label.framed))
            if gap >= _LEADER_FROM:
                x, y = label.at
                near = (min(max(x, box[0]), box[2]), min(max(y, box[1]), box[3]))
                leaders.append(Trace((label.at, near), THIN))
        return words, leaders


def _mark_box(mark: Trace | Disc) -> Box:
    half = mark.stroke.width / 2 if mark.stroke else 0.0
    if isinstance(mark, Disc):
        half += mark.radius
        return _grown(_around([mark.centre]), half)
    return _grown(_around(mark.points), half)


def _shifted(words: Words, dx: float, dy: float) -> Words:
    return replace(words, middle=(words.middle[0] + dx, words.middle[1] + dy))


def _moved(mark: Trace | Disc, dx: float, dy: float) -> Trace | Disc:
    if isinstance(mark, Disc):
        x, y = mark.centre
        return Disc((x + dx, y + dy), mark.radius, mark.stroke, mark.fill)
    points = tuple((x + dx, y + dy) for x, y in mark.points)
    return Trace(points, mark.stroke, mark.fill, mark.closed)


def _around(points: Iterable[Place]) -> Box:
    across, up = zip(*points, strict=True)
    return (min(across), min(up), max(across), max(up))


def _grown(box: Box, by: float) -> Box:
    return (box[0] - by, box[1] - by, box[2] + by, box[3] + by)


def _union(boxes: Iterable[Box]) -> Box:
    lefts, bottoms, rights, tops = zip(*boxes, strict=True)
    return (min(lefts), min(bottoms), max(rights), max(tops))
