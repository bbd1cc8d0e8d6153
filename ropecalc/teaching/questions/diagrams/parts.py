"""What the drawings are put together from: rock, ropes, pulleys, litter, people, arrows, angles.

Places and lengths are in pixels, y up; x runs out from the wall. Directions are in rad, from +x
towards +y. Looks are those of the course's figures.
"""

import math

from ropecalc.teaching.canvas import INK, SOFT_INK
from ropecalc.teaching.drawing import (
    BLANKET,
    CLOTHES,
    FAINT,
    LITTER_FACE,
    PATIENT_FACE,
    PERSON,
    ROCK_EDGE,
    ROCK_FACE,
    SKIN,
    THIN,
    TRAY,
    Stroke,
    along,
    between,
)
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.diagrams.picture import extent
from ropecalc.teaching.questions.diagrams.sheet import SIZE, Sheet

EDGE = Stroke(ROCK_EDGE, 1.4)
OUTLINE = Stroke(INK, 1.2)
BAR = Stroke(INK, 2.2)
LEG = Stroke("#8a919a", 4.0)
PLUMB = Stroke("#8a919a", 1.1, (0, (4, 3)))
ROPE = Stroke("#0a3f7a", 2.4)
ARC = Stroke(SOFT_INK, 1.1)
METAL = "#d5d9de"
DOWN, UP, OUT, BACK = -math.pi / 2, math.pi / 2, 0.0, math.pi
_HEAD, _HALF_HEAD = 10.0, 4.5
_PERSON_SIZE, _LITTER_SIZE = 30.0, 70.0
LITTER_HANGS = 30.0
"""From the point at which a litter hangs down to its rail."""
LITTER_DEEP = LITTER_HANGS + 0.24 * _LITTER_SIZE
"""From that point down to its underside."""
LITTER_HALF_WIDE = 0.3 * _LITTER_SIZE
"""From its middle to the end of its rail."""


def way(direction: float) -> Place:
    """The direction as a step of length 1."""
    return math.cos(direction), math.sin(direction)


def step(start: Place, direction: float, reach: float) -> Place:
    """The place ``reach`` away from ``start``."""
    return along(start, way(direction), reach)


# --- rock and ground -----------------------------------------------------------------------------


def cliff(sheet: Sheet, edge: Place, back: float, down: float) -> None:
    """Level ground that ends at ``edge``, reaching ``back`` to the left, and the wall below it."""
    x, y = edge
    face = [(x, y), (x - 3, y - 0.3 * down), (x + 2, y - 0.55 * down), (x - 2, y - down)]
    sheet.area(ROCK_FACE, (x - back, y), *face, (x - back, y - down))
    sheet.line(EDGE, (x - back, y), *face)


def ground(sheet: Sheet, left: Place, length: float, deep: float = 12.0) -> None:
    """Level ground from ``left`` to the right."""
    x, y = left
    sheet.area(ROCK_FACE, left, (x + length, y), (x + length, y - deep), (x, y - deep))
    sheet.line(EDGE, left, (x + length, y))


def ceiling(sheet: Sheet, left: float, right: float, y: float, high: float = 14.0) -> None:
    """Rock to anchor in, above the height ``y``."""
    sheet.area(ROCK_FACE, (left, y), (right, y), (right, y + high), (left, y + high))
    sheet.line(EDGE, (left, y), (right, y))


def bolt(sheet: Sheet, at: Place) -> None:
    """An anchor point in rock."""
    sheet.disc(at, 4.0, "#ffffff", Stroke(INK, 1.6))


def post(sheet: Sheet, foot: Place, high: float) -> None:
    """An anchor that stands in the ground."""
    x, y = foot
    sheet.thing("#b9ad97", (x - 4, y), (x - 4, y + high), (x + 4, y + high), (x + 4, y), edge=EDGE)


def outcrop(sheet: Sheet, tip: Place, wall: float, high: float = 26.0) -> None:
    """Rock that juts out from the wall at ``wall`` (x) to its ``tip``."""
    x, y = tip
    face = [(wall, y + high), (x - 3, y + 5), tip, (x - 9, y - 7), (wall, y - high)]
    within = wall - 6  # covers the wall's edge
    sheet.area(ROCK_FACE, (within, y + high), *face, (within, y - high))
    sheet.line(EDGE, *face)


def hub(sheet: Sheet, at: Place, before: float = 26.0) -> None:
    """The ground anchor out in front: a plate held by two pickets, on ground of its own.

    The ground starts so many pixels ``before`` the plate.
    """
    x, y = at
    ground(sheet, (x - before, y - 11), before + 42, 9)
    for foot in (20, 32):
        top = (x + foot + 5, y + 4)
        sheet.line(Stroke(EDGE.color, 4.0), (x + foot, y - 12), top)
        sheet.line(BAR, at, (x + foot + 3, y - 3))
    sheet.disc(at, 7.0, "#ffffff", BAR)
    sheet.disc(at, 2.0, INK)


# --- ropes and what they run over ----------------------------------------------------------------


def rope(sheet: Sheet, *points: Place, stroke: Stroke = ROPE) -> None:
    """A rope through ``points``."""
    sheet.line(stroke, *points)


def parted(sheet: Sheet, at: Place, gap: float = 16.0) -> None:
    """A level rope that has parted: its ends stand apart."""
    x, y = at
    half = gap / 2
    sheet.area("#ffffff", *_corners(at, gap, 8))
    for side in (-1, 1):
        end = x + side * half
        sheet.line(THIN, (end, y), (end - side * 5, y + 5))
        sheet.line(THIN, (end, y), (end - side * 5, y - 5))


def knot(sheet: Sheet, at: Place) -> None:
    """Where ropes are tied together."""
    sheet.disc(at, 3.5, INK)


def plate(sheet: Sheet, at: Place) -> None:
    """A rigging plate."""
    sheet.disc(at, 9.0, "#ffffff", BAR)
    sheet.disc(at, 2.2, INK)


def pulley(sheet: Sheet, centre: Place, radius: float = 11.0) -> None:
    """A pulley's wheel; the rope's turn is :func:`turn_over`."""
    sheet.disc(centre, radius, "#ffffff", Stroke(INK, 1.4))
    sheet.disc(centre, 2.2, INK)


def arc_points(centre: Place, radius: float, start: float, end: float) -> list[Place]:
    """Points along an arc, dense enough to look round."""
    count = max(3, math.ceil(abs(end - start) * (4 + radius / 10)))
    return [step(centre, start + (end - start) * i / count, radius) for i in range(count + 1)]


def grab(sheet: Sheet, at: Place, direction: float = OUT) -> None:
    """A rope grab on a rope that runs in ``direction``."""
    x, y = at
    across, up = (7.0, 5.0) if abs(math.cos(direction)) > 0.7 else (5.0, 7.0)
    sheet.thing(
        LITTER_FACE,
        (x - across, y - up),
        (x + across, y - up),
        (x + across, y + up),
        (x - across, y + up),
        edge=OUTLINE,
    )


def frame(sheet: Sheet, head: Place, ground_y: float, feet: tuple[float, float]) -> None:
    """A high directional: two legs from ``feet`` (x) up to its head, with a pulley."""
    for x in feet:
        sheet.line(LEG, (x, ground_y), head)
    pulley(sheet, head, 8.0)


# --- load cells ----------------------------------------------------------------------------------


def cell(sheet: Sheet, middle: Place, text: str, framed: bool = False) -> None:
    """A load cell in a plumb rope, with its display."""
    x, y = middle
    rope(sheet, (x, y + 56), (x, y + 32))
    rope(sheet, (x, y - 32), (x, y - 56))
    sheet.thing(METAL, *_corners(middle, 24, 56), edge=OUTLINE)
    for end in (30, -30):
        sheet.disc((x, y + end), 5.0, "#ffffff", BAR)
    sheet.thing("#ffffff", *_corners(middle, 72, 26), edge=BAR)
    sheet.write(text, middle, bold=True, framed=framed)


def display(sheet: Sheet, middle: Place, text: str, framed: bool = False) -> None:
    """A load cell that is small in its drawing: hardly more than its display."""
    wide = extent(text, SIZE)[0] * (1.1 if framed else 1.0) + 14
    x, y = middle
    for side in (-1, 1):
        sheet.disc((x + side * wide / 2, y), 4.0, METAL, OUTLINE)
    sheet.thing("#ffffff", *_corners(middle, wide, 21), edge=BAR)
    sheet.write(text, middle, bold=True, framed=framed)


# --- loads and people ----------------------------------------------------------------------------


def litter(sheet: Sheet, at: Place, size: float = 1.0, tilt: float = 0.0) -> None:
    """A litter with its patient, seen from its end, hanging from ``at``.

    ``tilt`` turns it about ``at``, so that it hangs further out.
    """
    long, hangs = size * _LITTER_SIZE, size * LITTER_HANGS

    def put(dx: float, dz: float) -> Place:
        return _turned(at, long * dx, long * dz - hangs, tilt)

    rail = [put(-0.3, 0.0), put(0.3, 0.0)]
    sheet.disc(put(0.0, 0.18), 0.11 * long, SKIN, OUTLINE)
    sheet.thing(PATIENT_FACE, *(put(*p) for p in BLANKET), edge=OUTLINE)
    sheet.thing(LITTER_FACE, *(put(*p) for p in TRAY), edge=OUTLINE)
    sheet.line(OUTLINE, rail[0], at, rail[1])
    sheet.avoid([rail[0], at, rail[1]])


def person(sheet: Sheet, feet: Place, size: float = _PERSON_SIZE, lean: float = 0.0) -> None:
    """Somebody standing at ``feet``, leaning to the right; ``size`` is in pixels a metre."""
    sheet.thing(CLOTHES, *(_turned(feet, size * dx, size * dz, -lean) for dx, dz in PERSON))
    sheet.disc(_turned(feet, 0.0, 1.62 * size, -lean), 0.13 * size, CLOTHES)


def _turned(about: Place, dx: float, dz: float, turn: float) -> Place:
    """The place ``dx``, ``dz`` away from ``about``, turned about it."""
    along, up = way(turn)
    return about[0] + dx * along - dz * up, about[1] + dx * up + dz * along


def box(sheet: Sheet, middle: Place, wide: float, high: float, text: str) -> None:
    """Something that is not drawn in full, by its name."""
    corners = _corners(middle, wide, high)
    sheet.area("#ffffff", *corners, edge=OUTLINE)
    sheet.avoid(corners)
    sheet.write(text, middle, bold=True, framed="?" in text)


def _corners(middle: Place, wide: float, high: float) -> list[Place]:
    x, y = middle
    signs = ((-1, -1), (1, -1), (1, 1), (-1, 1))
    return [(x + wide / 2 * u, y + high / 2 * v) for u, v in signs]


# --- forces, angles and lengths ------------------------------------------------------------------


def head(sheet: Sheet, tip: Place, direction: float, color: str = INK, size: float = 1.0) -> None:
    """An arrow's head."""
    neck = step(tip, direction, -_HEAD * size)
    half = _HALF_HEAD * size
    sheet.thing(color, tip, step(neck, direction + UP, half), step(neck, direction - UP, half))


def arrow(sheet: Sheet, tail: Place, direction: float, length: float, stroke: Stroke) -> Place:
    """A force; gives back its tip. Its shaft is drawn through, so that the head reads well."""
    tip = step(tail, direction, length)
    sheet.line(Stroke(stroke.color, stroke.width), tail, step(tip, direction, -_HEAD * 0.8))
    head(sheet, tip, direction, stroke.color)
    return tip


def moving(sheet: Sheet, middle: Place, direction: float, text: str = "") -> None:
    """A slim open arrow beside a rope: this way it moves."""
    tail, tip = step(middle, direction, -13), step(middle, direction, 13)
    sheet.line(THIN, tail, tip)
    head(sheet, tip, direction, SOFT_INK, 0.7)
    if text:
        side = direction + math.copysign(UP, math.cos(direction))
        sheet.label(text, middle, way(side), SOFT_INK)


def plumb(sheet: Sheet, top: Place, length: float) -> None:
    """A thin broken line straight down, to measure angles from."""
    sheet.line(PLUMB, top, (top[0], top[1] - length))


def level(sheet: Sheet, start: Place, length: float) -> None:
    """The same, level; to the left if ``length`` is negative."""
    sheet.line(PLUMB, start, (start[0] + length, start[1]))


def _sector(
    sheet: Sheet, centre: Place, radius: float, start: float, end: float, wide: float
) -> tuple[Place, Place]:
    """An angle's arc; gives back where words of so many pixels stand, and on which side.

    Where they do not fit in between, they stand beyond the side from which the angle starts.
    """
    sheet.line(ARC, *arc_points(centre, radius, start, end))
    middle = (start + end) / 2
    if abs(end - start) * (radius + 14) > wide + 10:
        return step(centre, middle, radius), way(middle)
    return step(centre, start, radius), way(start - math.copysign(UP, end - start))


def angle(sheet: Sheet, centre: Place, radius: float, start: float, end: float, text: str) -> None:
    """An angle's arc with its value; if it is narrow, the value stands beyond ``start``."""
    at, side = _sector(sheet, centre, radius, start, end, extent(text, SIZE)[0])
    sheet.label(text, at, side)


def asked_angle(
    sheet: Sheet, centre: Place, radius: float, start: float, end: float, text: str = "?"
) -> None:
    """The arc of the angle that is asked."""
    at, side = _sector(sheet, centre, radius, start, end, extent(text, SIZE)[0])
    sheet.ask(at, side, text)


def dimension(sheet: Sheet, one: Place, other: Place, aside: float = 0.0) -> Place:
    """A line with a head at either end, ``aside`` to the left of the way from one to the other,
    and thin lines out to it; gives back its middle."""
    run = math.atan2(other[1] - one[1], other[0] - one[0])
    first, last = step(one, run + UP, aside), step(other, run + UP, aside)
    if aside:
        for start, end in ((one, first), (other, last)):
            sheet.line(FAINT, start, end, ghost=True)
    sheet.line(THIN, first, last)
    head(sheet, first, run + math.pi, SOFT_INK, 0.6)
    head(sheet, last, run, SOFT_INK, 0.6)
    return between(first, last)


def length(sheet: Sheet, one: Place, other: Place, text: str, aside: float = 0.0) -> None:
    """A dimension line with its value."""
    run = math.atan2(other[1] - one[1], other[0] - one[0])
    side = UP if aside >= 0 else DOWN
    sheet.label(text, dimension(sheet, one, other, aside), way(run + side))


def asked_length(
    sheet: Sheet, one: Place, other: Place, aside: float = 0.0, text: str = "?"
) -> None:
    """The dimension line of the length that is asked."""
    run = math.atan2(other[1] - one[1], other[0] - one[0])
    side = UP if aside >= 0 else DOWN
    sheet.ask(dimension(sheet, one, other, aside), way(run + side), text)


def middle_of(one: Place, other: Place) -> Place:
    """Halfway."""
    return between(one, other)
