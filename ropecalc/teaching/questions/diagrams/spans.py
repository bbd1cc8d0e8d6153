"""A span with a load on it, as several drawings need it."""

from ropecalc.teaching.drawing import ROCK_FACE
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.sheet import Sheet

LEFT, RIGHT = -1.0, 1.0
_WHEEL = 7.0
_BELOW = 16.0
_BANK = 24.0


def bank(sheet: Sheet, end: Place, side: float, deep: float) -> None:
    """The rock to one side (:data:`LEFT` or :data:`RIGHT`) in which a span ends."""
    x, y = end
    brow, far = (x + side * 2, y + 12), x + side * _BANK
    face = [(far, y + 12), brow, (x - side * 1.5, y - 0.4 * deep), (x + side * 2, y - deep)]
    sheet.area(ROCK_FACE, *face, (far, y - deep))
    sheet.line(parts.EDGE, *face)


def span(sheet: Sheet, left: Place, right: Place, deep: float) -> Place:
    """A rope from bank to bank over the wheel of a load at the origin; gives back where it hangs.

    The rope is drawn straight to the origin, where its two sides meet.
    """
    for end, side in ((left, LEFT), (right, RIGHT)):
        bank(sheet, end, side, deep + end[1])
    parts.rope(sheet, left, (0.0, 0.0), right)
    for end in (left, right):
        parts.bolt(sheet, end)
    parts.pulley(sheet, (0.0, _WHEEL + 1.0), _WHEEL)
    hangs = (0.0, -_BELOW)
    sheet.line(parts.BAR, (0.0, _WHEEL), hangs)
    return hangs
