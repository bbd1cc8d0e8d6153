"""Drawings for questions that ask for a rig to be set: what is to be set is drawn at some place."""

import math

from ropecalc.teaching.canvas import SOFT_INK
from ropecalc.teaching.drawing import FAINT, HAUL, LIMIT, PUSH, WEIGHT, Stroke
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import rigs as bank
from ropecalc.teaching.questions.diagrams import (
    anchors,
    critical_angles,
    high_directional,
    legs,
    parts,
    section,
)
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_AT: Place = (0.0, 0.0)
_HALF, _BACK_FALL, _SAG = math.radians(40), math.radians(20), 46.0
"""What is drawn where it is to be set."""
_STEEPEST, _FLATTEST = math.radians(72), math.radians(56)


def _leg_angle(facts: Facts, sheet: Sheet) -> str:
    bolts = anchors.legs(sheet, -_HALF, _HALF)
    anchors.pull(sheet, facts.text("load"))
    parts.asked_angle(sheet, _AT, 26, UP - _HALF, UP + _HALF)
    for at, side in zip(bolts, (-1, 1), strict=True):
        sheet.label(f"at most {facts.text('leg_limit')}", parts.middle_of(_AT, at), (side, -0.5))
    sheet.not_to_scale()
    return "Two equal legs run from a knot up to two anchors; each has the same limit."


def _haul_back(facts: Facts, sheet: Sheet) -> str:
    front = facts.value("front_depression")
    high_directional.on_its_feet(facts, sheet)
    foot = high_directional.FOOT
    over = parts.arc_points(_AT, 9.0, UP - front, UP + _BACK_FALL)
    litter, team = parts.step(over[0], -front, 104), parts.step(over[-1], BACK + _BACK_FALL, 116)
    sheet.line(HAUL, litter, *over, team)
    parts.level(sheet, _AT, 60)
    parts.angle(sheet, _AT, 40, OUT, -front, facts.text("front_depression"))
    parts.asked_angle(sheet, _AT, 92, BACK, BACK + _BACK_FALL)
    near, far = foot[0] - 18, foot[0] - 52
    sheet.line(LIMIT, _AT, ((near + far) / 2, foot[1]))
    sheet.line(Stroke(PUSH.color, 5.0), (near, foot[1] - 2), (far, foot[1] - 2))
    band = f"{facts.text('nearest')} to {facts.text('furthest')} behind the feet"
    sheet.label(band, ((near + far) / 2, foot[1] - 4), (-0.3, -1))
    sheet.label("litter", litter, (0.6, -1), SOFT_INK)
    sheet.label("team", team, (-0.3, 1), SOFT_INK)
    return (
        "The haul line comes up from the litter over the head of a frame and runs down to the team "
        "on the left; a dotted line shows the pull on the head meeting the ground behind the front "
        "feet."
    )


def _team(facts: Facts, sheet: Sheet) -> str:
    edge, head = 92.0, (110.0, 40.0)
    parts.cliff(sheet, (edge, 0), 212, 92)
    at = (head[0] + 8, -20.0)
    over = parts.arc_points(head, 8.0, OUT, UP)
    sheet.line(HAUL, at, *over, (52, 48))
    sheet.line(parts.ROPE, (-24, 48), (-112, 36))
    parts.frame(sheet, head, 0, (edge - 40, edge - 8))
    parts.post(sheet, (14, 0), 34)
    parts.box(sheet, (14, 48), 78, 28, "strands ?")
    for x in (-106, -82, -58):
        parts.person(sheet, (x, 0), 25)
    parts.litter(sheet, at)
    tip = parts.arrow(sheet, (at[0], at[1] - parts.LITTER_DEEP), DOWN, 28, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 10), (1, 0))
    sheet.ask((-82, 46), (0, 1), "people ?")
    for row, text in enumerate(
        (
            f"each keeps up {facts.text('pull_per_person')}",
            f"for a moment {facts.text('burst_per_person')}",
            f"pulleys pass on {facts.text('efficiency')}",
        )
    ):
        sheet.write(text, (-38, -18 - 18 * row))
    sheet.label(f"snag at most {facts.text('snag_limit')}", (at[0], 8), (1, 0.2))
    sheet.not_to_scale()
    return "A team pulls on a system on the cliff top, whose rope runs over a frame to the litter."


def _sag(facts: Facts, sheet: Sheet) -> str:
    below = critical_angles.middle(sheet, _SAG)
    critical_angles.span_text(sheet, _SAG, facts.text("span"))
    parts.asked_length(sheet, (-26, 0), (-26, _SAG), -1, "sag ?")
    critical_angles.weight(sheet, below, facts.text("load"))
    sheet.label(f"at most {facts.text('span_limit')}", (84, 0.75 * _SAG), (0.1, -1))
    sheet.not_to_scale()
    return "A rope with level ends carries the load at its middle; its tension has a limit."


def _track_tension(facts: Facts, sheet: Sheet) -> str:
    fall = facts.value("ground_depression")
    lean = math.atan2(facts.value("drop"), facts.value("needed"))
    rise = min(max(lean, _FLATTEST), _STEEPEST)
    rig = legs.track(sheet, rise, fall)
    x, y = rig.head
    passing = parts.step(_AT, rig.rise, 42)
    parts.outcrop(sheet, (passing[0] - 14, passing[1]), min(x - 18, -36.0), 13)
    sheet.line(FAINT, (x, y + 10), (x, y + 32), ghost=True)
    sheet.line(FAINT, (0, 8), (0, y + 32), ghost=True)
    parts.length(sheet, (x, y + 28), (0, y + 28), f"at least {facts.text('needed')}")
    side = 64.0
    sheet.line(FAINT, (x + 12, y), (side + 6, y), ghost=True)
    parts.level(sheet, _AT, 92)
    parts.length(sheet, (side, y), (side, 0), facts.text("drop"), 1)
    parts.angle(sheet, _AT, 76, OUT, -fall, facts.text("ground_depression"))
    legs.load(facts, sheet)
    legs.ask_on_ground_leg(sheet, rig, "track ?")
    sheet.not_to_scale()
    return f"{legs.TRACK_RIG} The haul line passes the tip of an outcrop."


def _hub_distance(facts: Facts, sheet: Sheet) -> str:
    view = section.Section(facts.value("z_D"))
    head = view.at(facts.value("x_D"), facts.value("z_D"))
    at = view.at(facts.value("x"), facts.value("z"))
    hub = view.hub(facts.value("z_B"))
    foot = hub[1] - 11
    section.wall(sheet, foot, hub[0] + 42)
    section.track(sheet, head, at, hub)
    section.haul(sheet, head, at)
    section.head(sheet, head)
    section.carried(sheet, at)
    parts.hub(sheet, hub)
    under = (at[0], at[1] - section.LITTER * parts.LITTER_DEEP)
    tip = parts.arrow(sheet, under, DOWN, 24, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 8), (-1, 0))
    sheet.label(section.out_and_up(facts, "x_D", "z_D"), (head[0] + 8, head[1]), (1, 0.4))
    sheet.label(section.out_and_up(facts, "x", "z"), at, (1, 0.5))
    sheet.label(f"{facts.text('z_B')} up", (hub[0] + 36, hub[1]), (1, 0.4))
    parts.asked_length(sheet, (0, foot - 44), (hub[0], foot - 44), -1, "how far out ?")
    for x, y in ((0.0, foot), (hub[0], hub[1] - 8)):
        sheet.line(FAINT, (x, y), (x, foot - 48), ghost=True)
    row = f"{facts.text('lines')} lines, each at most {facts.text('line_limit')}"
    sheet.write(row, (hub[0] / 2, foot - 13))
    sheet.write(f"pulleys pass on {facts.text('efficiency')}", (hub[0] / 2, foot - 29))
    sheet.not_to_scale()
    return (
        "Haul and track lines hold a litter near the top; the track lines run on to the hub, where "
        "they hang on one tensioner."
    )


def _slack(facts: Facts, sheet: Sheet) -> str:
    rise, fall = facts.value("haul_elevation"), facts.value("ground_depression")
    rig = legs.track(sheet, rise, fall)
    parts.level(sheet, _AT, -62)
    parts.level(sheet, _AT, 88)
    parts.angle(sheet, _AT, 40, BACK, BACK - rise, facts.text("haul_elevation"))
    parts.angle(sheet, _AT, 66, OUT, -fall, facts.text("ground_depression"))
    grab = parts.step(rig.hub, rig.fall, -34)
    parts.grab(sheet, grab, rig.fall)
    sheet.line(parts.ROPE, *_loop(grab, rig.hub, 30.0))
    sheet.ask((grab[0] + 14, grab[1] + 26), (0.2, 1), "slack ?")
    tip = parts.arrow(sheet, (74, 44), BACK, 44, PUSH)
    sheet.label(f"in at most {facts.text('room')}", (tip[0] + 16, tip[1]), (0.3, 1))
    return f"{legs.TRACK_RIG} A rope grab holds them there, and its tail is tied back with slack."


def _loop(start: Place, end: Place, high: float) -> list[Place]:
    """Points of a slack rope that stands up between its ends."""
    shares = [i / 16 for i in range(17)]
    return [
        (
            start[0] + (end[0] - start[0]) * t,
            start[1] + (end[1] - start[1]) * t + high * math.sin(math.pi * t) ** 0.8,
        )
        for t in shares
    ]


DIAGRAMS: dict[str, Diagram] = {
    bank.LEG_ANGLE.key: _leg_angle,
    bank.HAUL_BACK.key: _haul_back,
    bank.TEAM.key: _team,
    bank.SAG.key: _sag,
    bank.TRACK_TENSION.key: _track_tension,
    bank.HUB_DISTANCE.key: _hub_distance,
    bank.SLACK.key: _slack,
}
"""What draws each question of this kind."""
