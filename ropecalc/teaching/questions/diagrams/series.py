"""Track lines on one tensioner in series, from above: lines on the left, the hub on the right.

The near line lies at the bottom, next to the device; one rope runs from the device over the first
line's travelling pulley, back round a pulley at the hub, over the next line's and so on to its
tied-off end. All pulleys are equally large, so that the strands lie side by side.
"""

from dataclasses import dataclass

from ropecalc.teaching.canvas import INK, SOFT_INK
from ropecalc.teaching.drawing import CLOTHES, TRACK, Stroke
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.parts import UP
from ropecalc.teaching.questions.diagrams.picture import extent
from ropecalc.teaching.questions.diagrams.sheet import SIZE, Sheet

STRAND = Stroke(parts.ROPE.color, 2.0)
"""The tensioner rope."""
HUB_WHEELS = 112.0
"""Where the centres of the pulleys at the hub lie (x); the travelling ones lie at 0."""
_PLATE, _PICKETS = HUB_WHEELS + 18, HUB_WHEELS + 50
_GRAB, _LEFT = -34.0, -84.0


@dataclass(frozen=True)
class Series:
    """Where the parts of a drawn tensioner are.

    ``lines`` are places on the track lines, left of their grabs, near line first; ``wheels`` are
    the travelling pulleys, ``hub_wheels`` those at the hub, ``strand`` lies on the strand at the
    device.
    """

    lines: tuple[Place, ...]
    wheels: tuple[Place, ...]
    hub_wheels: tuple[Place, ...]
    strand: Place
    device: Place
    tail: Place
    tied: Place
    hub: Place
    top: float


def series(
    sheet: Sheet,
    count: int,
    *,
    radius: float = 9.0,
    left: float | None = None,
    play: float = HUB_WHEELS,
    some_left_out: bool = False,
) -> Series:
    """Draw ``count`` lines; ``play`` is from pulley to hub, ``left`` where they come from (x).

    With ``some_left_out`` the lines between the near and the far one are only dots: how many there
    are is not told.
    """
    travelling = HUB_WHEELS - play
    grab = travelling + _GRAB
    left = travelling + _LEFT if left is None else left
    shown = 3 if some_left_out else count
    apart = 2 * radius
    strands = [apart * k for k in range(2 * shown)]
    drawn = [i for i in range(shown) if not some_left_out or i in (0, shown - 1)]
    heights = {i: (strands[2 * i] + strands[2 * i + 1]) / 2 for i in drawn}
    top = strands[-1]
    _hub(sheet, -radius - 6, top + radius + 6)
    device, tied = (HUB_WHEELS, strands[0]), (HUB_WHEELS, top)
    for i in drawn:
        wheel = (travelling, heights[i])
        sheet.line(TRACK, (left, heights[i]), (grab, heights[i]))
        sheet.line(parts.BAR, (grab, heights[i]), wheel)
        parts.grab(sheet, (grab, heights[i]))
        for k in (2 * i, 2 * i + 1):
            sheet.line(STRAND, (travelling, strands[k]), (HUB_WHEELS, strands[k]))
        parts.pulley(sheet, wheel, radius - 1)
        sheet.line(STRAND, *parts.arc_points(wheel, radius, UP, 3 * UP))
    between = [(HUB_WHEELS, strands[2 * i + 1] + radius) for i in range(shown - 1)]
    for number, wheel in enumerate(between):
        sheet.line(parts.BAR, wheel, (_PLATE, wheel[1]))
        parts.pulley(sheet, wheel, radius - 1)
        sheet.line(STRAND, *parts.arc_points(wheel, radius, -UP, UP))
        if some_left_out:
            y = strands[2] if number == 0 else strands[3]
            sheet.line(STRAND, (HUB_WHEELS - 34, y), (HUB_WHEELS, y))
    if some_left_out:
        for k in (-1, 0, 1):
            sheet.disc(((travelling + HUB_WHEELS) / 2 - 16, top / 2 + 8 * k), 1.8, INK)
    tail = _ends(sheet, device, tied)
    return Series(
        lines=tuple((left, heights[i]) for i in drawn),
        wheels=tuple((travelling, heights[i]) for i in drawn),
        hub_wheels=tuple(between),
        strand=((travelling + HUB_WHEELS) / 2, strands[0]),
        device=device,
        tail=tail,
        tied=tied,
        hub=(_PLATE, top / 2),
        top=top + radius,
    )


def _hub(sheet: Sheet, low: float, high: float) -> None:
    """A plate held by two pickets."""
    middle = (low + high) / 2
    for y in (middle - 14, middle + 14):
        sheet.line(parts.BAR, (_PLATE, middle), (_PICKETS, y))
        sheet.disc((_PICKETS, y), 5.0, "#b9ad97", parts.EDGE)
    half = 5.0
    corners = [(_PLATE + u, y) for u, y in ((-half, low), (half, low), (half, high), (-half, high))]
    sheet.thing("#c9cdd3", *corners, edge=parts.OUTLINE)


def _ends(sheet: Sheet, device: Place, tied: Place) -> Place:
    """The device with the tail, and the tied-off end; gives back the tail's end."""
    x, y = device
    tail = (_PICKETS + 4, y - 22)
    sheet.line(parts.BAR, device, (_PLATE, y))
    sheet.line(STRAND, device, (x + 4, y - 14), (x + 12, y - 22), tail)
    corners = [(x + 11 * u, y + 6.5 * v) for u, v in ((-1, -1), (1, -1), (1, 1), (-1, 1))]
    sheet.thing(CLOTHES, *corners, edge=parts.OUTLINE)
    sheet.line(parts.BAR, tied, (_PLATE, tied[1]))
    parts.knot(sheet, tied)
    return tail


def name_parts(sheet: Sheet, rig: Series, device: str = "device") -> None:
    """Write where the rope begins, and where the hub is."""
    sheet.label(device, (rig.device[0] - 4, rig.device[1] - 6), (-0.7, -1), SOFT_INK)
    sheet.label("hub", (rig.hub[0], rig.top + 5), (0.6, 1), SOFT_INK)


def name_lines(sheet: Sheet, rig: Series) -> None:
    """Write which line is which; the words end left of the line."""
    for text, (x, y) in (("near", rig.lines[0]), ("far", rig.lines[-1])):
        sheet.write(text, (x - 6 - extent(text, SIZE)[0] / 2, y))


def taken_in(sheet: Sheet, rig: Series) -> None:
    """An arrow beside the tail: rope comes in."""
    parts.moving(sheet, (rig.tail[0] - 22, rig.tail[1] - 8), 0.0)
