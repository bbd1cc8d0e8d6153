"""A measured cross-section: wall, high directional, litter, hub, each with how far out and up.

Places are spread so that each can be seen: the hub stands nearer than it is, and heights are drawn
more openly near the top. So nothing can be measured off, and every drawing says so.
"""

import math
from dataclasses import dataclass

from ropecalc.teaching.canvas import SOFT_INK
from ropecalc.teaching.drawing import HAUL, ROCK_FACE, TAG, THIN, TRACK
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.facts import Facts
from ropecalc.teaching.questions.diagrams.parts import OUT, UP
from ropecalc.teaching.questions.diagrams.picture import extent
from ropecalc.teaching.questions.diagrams.sheet import SIZE, Sheet

_TALL, _HIGHEST = 178.0, 34.0
_FOOT, _FAR = 14.0, 218.0
_BROW = 36.0
"""How far the cliff's edge is below the directional."""
_BEHIND = 52.0
_BEYOND = 42.0
"""How far the ground reaches beyond the hub."""
_WHEEL, _SMALL_WHEEL = 8.0, 4.0
SOIL = ROCK_FACE
LITTER = 0.8
"""The size of a litter in a cross-section."""


@dataclass(frozen=True)
class Section:
    """Where measured places stand in the drawing; ``top`` (m) is the directional's height."""

    top: float
    metre: float = 18.0
    """Of distance out from the wall, in pixels."""

    def height(self, z: float) -> float:
        """Where the height ``z`` (m) is drawn."""
        return -_TALL * math.sqrt(max(self.top - z, 0.0) / _HIGHEST)

    def at(self, x: float, z: float) -> Place:
        """Where a place near the wall is drawn."""
        return (_FOOT + self.metre * x, self.height(z))

    def hub(self, z: float) -> Place:
        """Where the hub is drawn."""
        return (_FAR, self.height(z))

    def rock(self, sheet: Sheet, hub: Place, foot: float = 9.0) -> None:
        """Wall, ground and hub; the wall's foot is so many pixels below the height 0."""
        y = self.height(0.0) - foot
        wall(sheet, y, hub[0] + _BEYOND, (hub[0] - 26, hub[1] - 11))
        for direction, text in ((UP, "up"), (OUT, "out")):
            tip = parts.step((-24, y - 10), direction, 36)
            sheet.line(THIN, (-24, y - 10), tip, ghost=True)
            parts.head(sheet, tip, direction, SOFT_INK, 0.6)
            sheet.label(text, tip, parts.way(direction), SOFT_INK)
        parts.hub(sheet, hub)


def wall(
    sheet: Sheet, foot: float, far: float, rises: Place | None = None, behind: float = _BEHIND
) -> None:
    """The wall (at x = 0), its foot at the height ``foot``, and ground as far out as ``far``.

    Level ground, or ground that ``rises`` to a place and is level from there.
    """
    brow = rises if rises is not None else (far, foot)
    deep = min(foot, brow[1]) - 34
    parts.cliff(sheet, (0.0, -_BROW), behind, -_BROW - foot)
    sheet.area(
        SOIL, (-behind, foot), (0.0, foot), brow, (far, brow[1]), (far, deep), (-behind, deep)
    )
    sheet.line(parts.EDGE, (-2.0, foot), brow, (far, brow[1]))


def out_and_up(facts: Facts, x: str, z: str) -> str:
    """A measured place in words."""
    return f"{facts.text(x)} out, {facts.text(z)} up"


def name_hub(facts: Facts, sheet: Sheet, hub: Place) -> None:
    """How far out and up the hub is, in the ground below it."""
    text = out_and_up(facts, "x_B", "z_B")
    sheet.write(text, (hub[0] + _BEYOND - extent(text, SIZE)[0] / 2, hub[1] - 22))


def head(sheet: Sheet, at: Place) -> None:
    """The frame that holds the directional."""
    parts.frame(sheet, at, -_BROW, (-36.0, -8.0))


def _towards(at: Place, end: Place) -> float:
    return math.atan2(end[1] - at[1], end[0] - at[0])


def haul(sheet: Sheet, at: Place, litter: Place) -> None:
    """The haul line from the litter over the directional at ``at`` and back to the team."""
    down = _towards(at, litter)
    over = parts.arc_points(at, _WHEEL, down + UP, UP)
    sheet.line(HAUL, litter, *over, (-_BEHIND, over[-1][1]))


def tag(sheet: Sheet, litter: Place, hub: Place) -> None:
    """A tag line from the litter to the hub."""
    sheet.line(TAG, litter, hub)


def track(sheet: Sheet, at: Place, litter: Place, hub: Place) -> None:
    """A track line over the directional at ``at``, round a pulley at the litter, to the hub."""
    down = _towards(at, litter)
    ground = _towards(litter, hub)
    over = parts.arc_points(at, _SMALL_WHEEL, UP, down + UP)
    sheet.line(
        TRACK,
        (-_BEHIND, over[0][1]),
        *over,
        *parts.arc_points(litter, _SMALL_WHEEL, down - UP, ground - UP),
        hub,
    )


def carried(sheet: Sheet, litter: Place, size: float = LITTER) -> None:
    """The litter on a track line, with its pulley."""
    parts.litter(sheet, litter, size)
    parts.pulley(sheet, litter, _SMALL_WHEEL)
