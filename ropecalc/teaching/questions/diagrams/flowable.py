"""A picture as a flowable for the printed page, drawn with lines and letters."""

from typing import Any

from reportlab.lib.colors import HexColor
from reportlab.platypus import Flowable

from ropecalc.teaching.drawing import Stroke
from ropecalc.teaching.questions.diagrams.picture import Disc, Picture, Trace, Words
from ropecalc.teaching.questions.diagrams.svg import FRAME_EDGE, FRAME_FACE, dashes

POINTS = 0.72
"""Points on paper for a pixel on the screen."""
_WIDEST = 228.0
"""Points; a wider picture is printed a little smaller."""


class PrintedPicture(Flowable):
    """``picture`` at ``scale`` points a pixel or less.

    ``fonts`` are the names of plain and of bold type.
    """

    def __init__(self, picture: Picture, fonts: tuple[str, str], scale: float = POINTS) -> None:
        super().__init__()
        scale = min(scale, _WIDEST / picture.width)
        self._picture, self._fonts, self._scale = picture, fonts, scale
        self.width, self.height = picture.width * scale, picture.height * scale

    def wrap(self, *_: float) -> tuple[float, float]:
        """Its size does not depend on the room there is."""
        return self.width, self.height

    def draw(self) -> None:
        """Put marks and words on the canvas."""
        page = self.canv
        page.saveState()
        page.scale(self._scale, self._scale)
        page.setLineJoin(1)
        for mark in self._picture.marks:
            _mark(page, mark)
        for words in self._picture.words:
            self._write(page, words)
        page.restoreState()

    def _write(self, page: Any, words: Words) -> None:
        if words.framed:
            left, bottom, right, top = words.box
            page.setDash()
            page.setLineWidth(1)
            page.setStrokeColor(HexColor(FRAME_EDGE))
            page.setFillColor(HexColor(FRAME_FACE))
            page.roundRect(left, bottom, right - left, top - bottom, 4, stroke=1, fill=1)
        page.setFillColor(HexColor(words.color))
        page.setFont(self._fonts[words.bold], words.size)
        page.drawString(*words.start, words.text)


def _mark(page: Any, mark: Trace | Disc) -> None:
    filled, stroked = mark.fill is not None, mark.stroke is not None
    if mark.fill is not None:
        page.setFillColor(HexColor(mark.fill))
    if mark.stroke is not None:
        _pen(page, mark.stroke)
    if isinstance(mark, Disc):
        page.circle(*mark.centre, mark.radius, stroke=stroked, fill=filled)
        return
    path = page.beginPath()
    path.moveTo(*mark.points[0])
    for point in mark.points[1:]:
        path.lineTo(*point)
    if mark.closed:
        path.close()
    page.drawPath(path, stroke=stroked, fill=filled)


def _pen(page: Any, stroke: Stroke) -> None:
    page.setStrokeColor(HexColor(stroke.color))
    page.setLineWidth(stroke.width)
    page.setDash(list(dashes(stroke)))
