"""Drawings for anchors of two and three legs."""

import math

from ropecalc.teaching.canvas import SOFT_INK
from ropecalc.teaching.drawing import WEIGHT
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import anchors as bank
from ropecalc.teaching.questions.diagrams import parts
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import DOWN, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_LEG, _LEAST_RISE, _MOST_RUN = 104.0, 44.0, 125.0
_KNOT: Place = (0.0, 0.0)


def legs(sheet: Sheet, *from_plumb: float, size: float = 1.0) -> list[Place]:
    """Legs from the knot up to one height of rock, each so far from plumb (right is positive)."""
    steepest = max(abs(a) for a in from_plumb)
    rise = max(_LEAST_RISE, size * _LEG * math.cos(steepest))
    rise = min(rise, size * _MOST_RUN / math.tan(steepest))
    bolts = [(rise * math.tan(a), rise) for a in from_plumb]
    across = [x for x, _ in bolts]
    parts.ceiling(sheet, min(*across, -30) - 22, max(*across, 30) + 22, rise + 4)
    for at in bolts:
        parts.rope(sheet, _KNOT, at)
    for at in bolts:
        parts.bolt(sheet, at)
    parts.knot(sheet, _KNOT)
    return bolts


def pull(sheet: Sheet, text: str, direction: float = DOWN, reach: float = 54.0) -> None:
    """The load at the knot."""
    tip = parts.arrow(sheet, _KNOT, direction, reach, WEIGHT)
    sheet.label(text, parts.step(tip, direction, -12), parts.way(direction + UP))


def _ask_beside(sheet: Sheet, at: Place, text: str = "?") -> None:
    """Ask for the tension of the leg that ends at ``at``, on its lower side."""
    side = math.copysign(1.0, at[0])
    sheet.ask(
        parts.step(_KNOT, math.atan2(at[1], at[0]), 0.6 * math.hypot(*at)), (side, -0.4), text
    )


def _equal(facts: Facts, sheet: Sheet) -> str:
    half = facts.value("leg_angle") / 2
    bolts = legs(sheet, -half, half)
    pull(sheet, facts.text("load"))
    parts.angle(sheet, _KNOT, 26, UP - half, UP + half, facts.text("leg_angle"))
    for at in bolts:
        _ask_beside(sheet, at)
    return "Two equal legs run from a knot up to two anchors; the load pulls down at the knot."


def _largest(facts: Facts, sheet: Sheet) -> str:
    half = math.radians(50)
    bolts = legs(sheet, -half, half)
    pull(sheet, "load")
    parts.asked_angle(sheet, _KNOT, 26, UP - half, UP + half)
    limit = f"at most {facts.text('load_ratio')} × load"
    left, right = bolts
    sheet.label(limit, parts.step(right, -half - UP, 34), (1, -0.6))
    sheet.label("the same", parts.step(left, half - UP, 34), (-1, -0.6))
    sheet.not_to_scale()
    return "Two equal legs run from a knot up to two anchors; each has the same limit."


def _unequal(facts: Facts, sheet: Sheet) -> str:
    first, second = facts.value("first_leg_angle"), facts.value("second_leg_angle")
    left, right = legs(sheet, -first, second)
    parts.plumb(sheet, (0, left[1]), left[1])
    pull(sheet, facts.text("load"))
    parts.angle(sheet, _KNOT, 44, UP + first, UP, facts.text("first_leg_angle"))
    parts.angle(sheet, _KNOT, 52, UP - second, UP, facts.text("second_leg_angle"))
    _ask_beside(sheet, left, "leg 1 ?")
    sheet.label("leg 2", parts.middle_of(_KNOT, right), (1, -0.4))
    return "Leg 1 runs up to the left and leg 2 up to the right of a plumb line through the knot."


def _swinging(facts: Facts, sheet: Sheet) -> str:
    half, swing = facts.value("leg_angle") / 2, facts.value("pull_swing")
    bolts = legs(sheet, -half, half)
    rise = bolts[0][1]
    parts.plumb(sheet, (0, rise), rise + 74)
    direction = DOWN + swing
    tip = parts.arrow(sheet, _KNOT, direction, 66, WEIGHT)
    sheet.label(facts.text("load"), tip, (1, 0.3))
    parts.angle(sheet, _KNOT, 48, DOWN, direction, facts.text("pull_swing"))
    parts.angle(sheet, _KNOT, 26, UP - half, UP + half, facts.text("leg_angle"))
    sheet.ask((0, -74), (0, -1), "leg that gains ?")  # beside no leg: which one it is, is asked
    return (
        "Two equal legs run from a knot up to two anchors; the load pulls down and to the right "
        "of the line through the middle."
    )


def three_legs(sheet: Sheet, lean: float) -> list[Place]:
    """Three legs, evenly spread in space, so far from plumb; the first is drawn at its true angle.

    The others are seen at a slant.
    """
    up = min(104.0, 84.0 / math.tan(lean)) if lean > math.radians(30) else 34.0 / math.tan(lean)
    up = max(up, 36.0)
    out = up * math.tan(lean)
    bolts = [
        (out * math.cos(turn), up + 0.42 * out * math.sin(turn))
        for turn in (0.0, 2 * math.pi / 3, -2 * math.pi / 3)
    ]
    ring = [(out * math.cos(t), up + 0.42 * out * math.sin(t)) for t in _turns()]
    sheet.line(parts.PLUMB, *ring, ghost=True)
    parts.plumb(sheet, (0, up), up)
    for at in bolts:
        parts.rope(sheet, _KNOT, at)
    for at in bolts:
        parts.bolt(sheet, at)
    parts.knot(sheet, _KNOT)
    return bolts


def _three_even(facts: Facts, sheet: Sheet) -> str:
    lean = facts.value("leg_plumb_angle")
    bolts = three_legs(sheet, lean)
    pull(sheet, facts.text("load"))
    parts.angle(sheet, _KNOT, 34, UP - lean, UP, facts.text("leg_plumb_angle"))
    sheet.ask(bolts[0], (1, -0.2), "each leg ?")
    return "Three equal legs, evenly spread in space, run from a knot up to three anchors."


def _turns() -> list[float]:
    return [math.tau * i / 36 for i in range(37)]


def _middle(facts: Facts, sheet: Sheet) -> str:
    outer = facts.value("outer_leg_angle")
    _, middle, _ = legs(sheet, -outer, 0.0, outer)
    pull(sheet, facts.text("load"))
    for side in (1, -1):
        parts.angle(sheet, _KNOT, 40, UP - side * outer, UP, facts.text("outer_leg_angle"))
    sheet.ask((0, 0.72 * middle[1]), (1, 0))
    return "Three legs in one plane run up from a knot: one plumb, one to each side of it."


def _two_back(facts: Facts, sheet: Sheet) -> str:
    front, back = facts.value("front_leg_angle"), facts.value("back_leg_angle")
    half = facts.value("half_spread")
    left, right = legs(sheet, -back, front)
    parts.plumb(sheet, (0, left[1]), left[1])
    pull(sheet, facts.text("load"))
    parts.angle(sheet, _KNOT, 40, UP + back, UP, facts.text("back_leg_angle"))
    parts.angle(sheet, _KNOT, 48, UP - front, UP, facts.text("front_leg_angle"))
    sheet.label("front", right, (0.3, 1))
    sheet.label("back", left, (-0.3, 1))
    _from_above(sheet, (max(right[0], 30) + 120, 22), half, facts.text("half_spread"))
    return (
        "From the side, one leg runs up to the front and two to the back of a plumb line through "
        "the knot; beside it, from above, the two back legs spread to either side of the line "
        "straight back."
    )


def _from_above(sheet: Sheet, knot: Place, half: float, text: str) -> None:
    """The three legs in plan, back to the left."""
    x, y = knot
    parts.level(sheet, knot, -86)
    ends = [parts.step(knot, math.pi - side * half, 76) for side in (1, -1)]
    for end in (*ends, (x + 44, y)):
        parts.rope(sheet, knot, end)
        parts.bolt(sheet, end)
    parts.knot(sheet, knot)
    for end, side in zip(ends, (1, -1), strict=True):
        parts.angle(sheet, knot, 46, math.pi - side * half, math.pi, text)
        sheet.ask(parts.middle_of(knot, end), (0.5, side))
    sheet.label("from above", (x + 10, y - 58), (0, -1), SOFT_INK)
    sheet.label("from the side", (0, -54), (0, -1), SOFT_INK)


DIAGRAMS: dict[str, Diagram] = {
    bank.EQUAL_LEGS.key: _equal,
    bank.LARGEST_ANGLE.key: _largest,
    bank.UNEQUAL_LEGS.key: _unequal,
    bank.SWINGING_PULL.key: _swinging,
    bank.THREE_EVEN.key: _three_even,
    bank.MIDDLE_LEG.key: _middle,
    bank.BACK_LEGS.key: _two_back,
}
"""What draws each question of this topic."""
