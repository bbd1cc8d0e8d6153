"""Drawings for critical angles and loaded spans."""

import math

from ropecalc.teaching.canvas import SOFT_INK
from ropecalc.teaching.drawing import FAINT, TAG, WEIGHT
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import critical_angles as bank
from ropecalc.teaching.questions.diagrams import anchors, high_directional, legs, parts, spans
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_AT: Place = (0.0, 0.0)
_HALF = 112.0
"""Half a span in a drawing."""
_STRANDS, _LEAN, _SAG = math.radians(70), math.radians(48), 0.2
"""What is drawn where it is asked."""
_FAR, _NEAR = 150.0, 106.0
"""A load off the middle: how far its two ends are drawn."""


def _redirect(facts: Facts, sheet: Sheet) -> str:
    lower, upper = high_directional.redirect(sheet, _STRANDS, 88)
    parts.asked_angle(sheet, _AT, 46, -_STRANDS / 2, _STRANDS / 2)
    for end in (lower, upper):
        sheet.label("tension", end, (1, 0))
    sheet.label(f"anchor at most {facts.text('pull_ratio')} × tension", (-52, 34), (0.3, 1))
    sheet.not_to_scale()
    return (
        "A rope turns through a pulley on an anchor; the anchor's limit is a multiple of its "
        "tension."
    )


def _flatter(facts: Facts, sheet: Sheet) -> str:
    left = 0.0
    for name, when in (("angle_before", "before"), ("angle_after", "after")):
        half, own = facts.value(name) / 2, Sheet()
        bolts = anchors.legs(own, -half, half, size=0.56)
        rise = bolts[1][1]
        anchors.pull(own, "load", reach=40)
        side = parts.middle_of(_AT, bolts[1])
        if when == "before":
            parts.angle(own, _AT, 18, UP - half, UP + half, facts.text(name))
            own.label("tension", side, (1, -0.6))
        else:  # too flat for words between the legs
            own.line(parts.ARC, *parts.arc_points(_AT, 0.6 * rise, UP - half, UP + half))
            own.label(facts.text(name), (0, rise + 16), (0, 1))
            own.ask(side, (1, -1), "? × tension")
        own.label(when, (0, rise - 112), (0, -1), SOFT_INK)
        picture = own.picture("")
        sheet.paste(picture, left, picture.height)
        left += picture.width + 8
    return "The same load on two equal legs: before, and after they were pulled flatter."


def _three(facts: Facts, sheet: Sheet) -> str:
    first, *_ = anchors.three_legs(sheet, _LEAN)
    anchors.pull(sheet, "load")
    parts.asked_angle(sheet, _AT, 40, UP - _LEAN, UP)
    limit = f"each at most {facts.text('load_ratio')} × load"
    sheet.label(limit, parts.middle_of(_AT, first), (1, -0.5))
    sheet.not_to_scale()
    return "Three equal legs, evenly spread in space; each has the same limit."


def middle(sheet: Sheet, sag: float) -> Place:
    """A span with a litter at its middle, so far down; gives back the litter's underside."""
    left, right = (-_HALF, sag), (_HALF, sag)
    hangs = spans.span(sheet, left, right, 72)
    parts.litter(sheet, hangs)
    sheet.line(parts.PLUMB, left, right)
    sheet.line(FAINT, (-34, 0), (0, 0), ghost=True)
    parts.dimension(sheet, (-_HALF, sag + 34), (_HALF, sag + 34))
    return (hangs[0], hangs[1] - parts.LITTER_DEEP)


def _loaded(facts: Facts, sheet: Sheet) -> str:
    sag = 2 * _HALF * facts.value("sag") / facts.value("span")
    below = middle(sheet, sag)
    span_text(sheet, sag, facts.text("span"))
    parts.length(sheet, (-26, 0), (-26, sag), facts.text("sag"), -1)
    weight(sheet, below, facts.text("load"))
    sheet.write("tension ?", (70, 34 * sag / _HALF - 15), bold=True, framed=True)
    return "A rope spans a gully, its ends level; the load hangs from a pulley at the middle."


def _sag(facts: Facts, sheet: Sheet) -> str:
    sag = 2 * _HALF * _SAG
    below = middle(sheet, sag)
    span_text(sheet, sag, "span")
    parts.asked_length(sheet, (-26, 0), (-26, sag), -1, "sag ?")
    weight(sheet, below, "load")
    limit = f"at most {facts.text('load_ratio')} × load"
    sheet.label(limit, (0.75 * _HALF, 0.75 * sag), (0.1, -1))
    sheet.not_to_scale()
    return (
        "A rope with level ends carries the load at its middle; its limit is a multiple of the "
        "load."
    )


def span_text(sheet: Sheet, sag: float, text: str) -> None:
    """How long the span is."""
    sheet.label(text, (0, sag + 34), (0, 1))


def weight(sheet: Sheet, below: Place, text: str, reach: float = 28.0) -> None:
    """The load, as an arrow from the litter's underside."""
    tip = parts.arrow(sheet, below, DOWN, reach, WEIGHT)
    sheet.label(text, (tip[0], tip[1] + 10), (1, 0))


def _trolley(facts: Facts, sheet: Sheet) -> str:
    flat, steep = facts.value("first_sag_angle"), facts.value("second_sag_angle")
    left: Place = (-_FAR, _FAR * math.tan(flat))
    right: Place = (_NEAR, _NEAR * math.tan(steep))
    hangs = spans.span(sheet, left, right, 86)
    parts.litter(sheet, hangs)
    sheet.line(TAG, hangs, (_NEAR, hangs[1]))
    parts.bolt(sheet, (_NEAR, hangs[1]))
    parts.level(sheet, _AT, -110)
    parts.level(sheet, _AT, 60)
    parts.angle(sheet, _AT, 92, BACK, BACK - flat, facts.text("first_sag_angle"))
    parts.angle(sheet, _AT, 40, OUT, steep, facts.text("second_sag_angle"))
    sheet.label("control line", (62, hangs[1]), (0, -1))
    weight(sheet, (hangs[0], hangs[1] - parts.LITTER_DEEP), facts.text("load"))
    sheet.ask((-60, 60 * math.tan(flat)), (-0.2, 1), "tension ?")
    return (
        "A load hangs from a pulley on a span, nearer to the right end; a level control line "
        "holds it there. The left side of the rope is flat, the right side steep."
    )


def _at_the_litter(facts: Facts, sheet: Sheet) -> str:
    fall = facts.value("ground_depression")
    rise = math.pi - facts.value("litter_angle") + fall
    rig = legs.track(sheet, rise, fall)
    parts.level(sheet, _AT, 84)
    parts.angle(sheet, _AT, 26, BACK - rise, -fall, facts.text("litter_angle"))
    parts.angle(sheet, _AT, 66, OUT, -fall, facts.text("ground_depression"))
    legs.load(facts, sheet)
    legs.ask_on_ground_leg(sheet, rig, "track ?")
    return legs.TRACK_RIG


DIAGRAMS: dict[str, Diagram] = {
    bank.REDIRECT_LIMIT.key: _redirect,
    bank.FLATTER.key: _flatter,
    bank.THREE_LEG_LIMIT.key: _three,
    bank.LOADED_SPAN.key: _loaded,
    bank.SAG_NEEDED.key: _sag,
    bank.OFF_THE_MIDDLE.key: _trolley,
    bank.ONE_TWENTY.key: _at_the_litter,
}
"""What draws each question of this topic."""
