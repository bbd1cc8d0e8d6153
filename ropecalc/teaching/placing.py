"""Where words stand beside what they name: clear of lines and of each other, and close by.

Everything is in pixels; a box is left, bottom, right, top.
"""

import math
from collections.abc import Sequence

Place = tuple[float, float]
Box = tuple[float, float, float, float]
"""Left, bottom, right, top; of a segment, its first point and its last."""

LINE_COST = 8.0
"""What a line under the words costs; less than words on words."""
EVERYWHERE: Box = (-math.inf, -math.inf, math.inf, math.inf)
_MARGIN = 3.0  # pixels between words and a line's middle
_TURNS = (0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6, 7, -7, 8)


def best_place(
    point: Place,
    size: Place,
    towards: Place,
    gaps: Sequence[float],
    *,
    frame: Box,
    segments: Sequence[Box],
    taken: Sequence[Box],
) -> tuple[float, Box, float]:
    """The best box of ``size`` beside ``point``: what it costs, the box, and its gap.

    Tries the nearest gap and the wanted direction first, and takes the first place that is free;
    if none is, the one that hides least.
    """
    wanted = math.atan2(towards[1], towards[0])
    best: tuple[float, Box, float] | None = None
    for gap in gaps:
        for turn in _TURNS:
            box = _beside(point, wanted + turn * math.pi / 8, gap, *size)
            cost = _cost(box, frame, segments, taken)
            if cost == 0.0:
                return cost, box, gap
            if best is None or cost < best[0]:
                best = (cost, box, gap)
    assert best is not None, "no gaps to try"
    return best


def _beside(point: Place, angle: float, gap: float, width: float, height: float) -> Box:
    """The box of the given size whose nearest side is ``gap`` away from ``point``."""
    across, up = math.cos(angle), math.sin(angle)
    x = point[0] + across * (gap + width / 2)
    y = point[1] + up * (gap + height / 2)
    return (x - width / 2, y - height / 2, x + width / 2, y + height / 2)


def _cost(box: Box, frame: Box, segments: Sequence[Box], taken: Sequence[Box]) -> float:
    """How bad a place is: outside the frame is worst, then other boxes, then lines."""
    outside = (
        max(0.0, frame[0] - box[0])
        + max(0.0, box[2] - frame[2])
        + max(0.0, frame[1] - box[1])
        + max(0.0, box[3] - frame[3])
    )
    cost = 60.0 * outside
    for other in taken:
        wide = min(box[2], other[2]) - max(box[0], other[0])
        high = min(box[3], other[3]) - max(box[1], other[1])
        if wide > 0 and high > 0:
            cost += 20.0 + wide * high
    room = (box[0] - _MARGIN, box[1] - _MARGIN, box[2] + _MARGIN, box[3] + _MARGIN)
    return cost + sum(LINE_COST for segment in segments if _crosses(segment, room))


def _crosses(segment: Box, box: Box) -> bool:
    """Whether a segment (x0, y0, x1, y1) enters a box: clip it against each side in turn."""
    x0, y0, x1, y1 = segment
    dx, dy = x1 - x0, y1 - y0
    enter, leave = 0.0, 1.0
    for step, room in (
        (-dx, x0 - box[0]),
        (dx, box[2] - x0),
        (-dy, y0 - box[1]),
        (dy, box[3] - y0),
    ):
        if step == 0.0:
            if room < 0.0:
                return False
            continue
        where = room / step
        if step < 0.0:
            enter = max(enter, where)
        else:
            leave = min(leave, where)
        if enter > leave:
            return False
    return True
