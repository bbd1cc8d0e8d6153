"""Drawings for what changes as the litter goes up: clearance, rope to take in, the hub, a lock."""

from ropecalc.teaching.canvas import SOFT_INK
from ropecalc.teaching.drawing import FAINT, PUSH, THIN, TRACK, WEIGHT, Stroke
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import along_the_raise as bank
from ropecalc.teaching.questions.bank import orderings
from ropecalc.teaching.questions.diagrams import legs, parts, section
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet
from ropecalc.teaching.questions.ordering import LETTERS, Ordering

_HEAD: Place = (16.0, 0.0)
_LOW = -186.0
"""About where the ground lies, below the directional."""
_EARLIER = Stroke("#8a919a", 1.4, (0, (5, 2)))
"""Ropes as they were before."""
_SLIM = Stroke(TRACK.color, 1.2)
_SMALL = 0.62


def _place(facts: Facts, sheet: Sheet, at: Place, x: str, z: str, what: str = "") -> None:
    """A measured place, to its right."""
    sheet.label(f"{what} {section.out_and_up(facts, x, z)}".strip(), at, (1, 0.5))


def _directional(facts: Facts, sheet: Sheet, at: Place, x: str = "x_D", z: str = "z_D") -> None:
    sheet.label(section.out_and_up(facts, x, z), (at[0] + 8, at[1]), (1, 0.4))


def _load(facts: Facts, sheet: Sheet, at: Place, size: float = section.LITTER) -> None:
    under = (at[0], at[1] - size * parts.LITTER_DEEP)
    tip = parts.arrow(sheet, under, DOWN, 26, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 8), (1, 0))


# --- the haul line and an outcrop ----------------------------------------------------------------


def _clear(facts: Facts, sheet: Sheet) -> str:
    below = facts.value("z_D") - facts.value("z_O")
    tip = (28 + 10 * facts.value("x_O"), -54 - 2.4 * below)
    passing = (tip[0] + 12 + 14 * facts.value("clearance"), tip[1])
    y = -158 + 1.6 * facts.value("z")
    at = (_HEAD[0] + (passing[0] - _HEAD[0]) * y / passing[1], y)
    section.wall(sheet, -204, at[0] + 70, behind=136)
    parts.outcrop(sheet, tip, -1)
    section.haul(sheet, _HEAD, at)
    section.head(sheet, _HEAD)
    parts.litter(sheet, at, section.LITTER)
    parts.dimension(sheet, tip, passing)
    sheet.label(f"clearance {facts.text('clearance')}", passing, (1, 0.2))
    sheet.label(section.out_and_up(facts, "x_O", "z_O"), (tip[0] - 20, tip[1] - 4), (-1, -0.3))
    _directional(facts, sheet, _HEAD)
    sheet.label(f"{facts.text('z')} up", at, (1, 0.3))
    parts.asked_length(sheet, (0, y), at, text="? out")
    sheet.not_to_scale()
    return (
        "The haul line leans from the directional past the tip of an outcrop, clear of it, down "
        "to the litter."
    )


# --- two legs at their angles --------------------------------------------------------------------


def _tracked(facts: Facts, sheet: Sheet) -> legs.Rig:
    rise, fall = facts.value("track_elevation"), facts.value("ground_depression")
    rig = legs.track(sheet, rise, fall)
    parts.level(sheet, legs.AT, -62)
    parts.level(sheet, legs.AT, 88)
    parts.angle(sheet, legs.AT, 40, BACK, BACK - rise, facts.text("track_elevation"))
    parts.angle(sheet, legs.AT, 66, OUT, -fall, facts.text("ground_depression"))
    return rig


def _take_in(facts: Facts, sheet: Sheet) -> str:
    rig = _tracked(facts, sheet)
    tip = parts.arrow(sheet, (40, 20), UP, 44, PUSH)
    sheet.label("height gained", (tip[0], tip[1] - 20), (1, 0))
    legs.ask_on_ground_leg(sheet, rig, "taken in ?", DOWN)
    return f"{legs.TRACK_RIG} The litter goes straight up."


def _swing_in(facts: Facts, sheet: Sheet) -> str:
    rig = _tracked(facts, sheet)
    corner = parts.arrow(sheet, (64, 20), UP, 44, PUSH)
    tip = parts.arrow(sheet, (64, 68), BACK, 44, PUSH)
    sheet.label("height gained", (corner[0], corner[1] - 20), (1, 0))
    sheet.ask((tip[0] + 18, tip[1]), (0, 1), "in ?")
    sheet.label("locked", parts.step(rig.hub, rig.fall, -30), parts.way(rig.fall - UP))
    return f"{legs.TRACK_RIG} The tensioner is locked; the litter is raised a little."


def _uplift(facts: Facts, sheet: Sheet) -> str:
    fall = facts.value("ground_depression")
    at: Place = (0.0, 0.0)
    along = BACK - fall
    sheet.area(section.SOIL, (-150, -20), (42, -20), (42, -36), (-150, -36))
    sheet.line(parts.EDGE, (-150, -20), (-26, -20), (-26, -11))
    for aside in (-4, 4):
        start = parts.step(at, along + UP, aside)
        sheet.line(TRACK, start, parts.step(start, along, 150))
    parts.hub(sheet, at)
    parts.level(sheet, at, -128)
    parts.angle(sheet, at, 84, BACK, along, facts.text("ground_depression"))
    tip = parts.arrow(sheet, (0, 7), UP, 62, PUSH)
    sheet.ask((tip[0], tip[1] - 20), (1, 0), "upward ?")
    sheet.label(
        f"all lines {facts.text('line_tension')}", parts.step(at, along, 120), parts.way(along - UP)
    )
    sheet.label("hub", (30, -20), (0, -1), SOFT_INK)
    return "All lines arrive at the hub from the upper left; an arrow at the hub points up."


# --- measured places -----------------------------------------------------------------------------


def _too_close(facts: Facts, sheet: Sheet) -> str:
    run = 20 + 16 * facts.value("x")
    drop = 52 + 3.2 * (facts.value("z_D") - facts.value("z"))
    at = (_HEAD[0] + run, -drop)
    hub = (_HEAD[0] + run * (_LOW + 8) / -drop, _LOW + 8)
    section.wall(sheet, hub[1] - 11, hub[0] + 42)
    section.haul(sheet, _HEAD, at)
    section.track(sheet, _HEAD, at, hub)
    section.head(sheet, _HEAD)
    section.carried(sheet, at, _SMALL)
    parts.hub(sheet, hub)
    _directional(facts, sheet, _HEAD)
    _place(facts, sheet, at, "x", "z")
    sheet.label(f"{facts.text('z_B')} up", (hub[0] + 36, hub[1]), (1, 0.4))
    parts.asked_length(sheet, (0, hub[1] - 40), (hub[0], hub[1] - 40), -1, "how far out ?")
    sheet.line(FAINT, (hub[0], hub[1] - 8), (hub[0], hub[1] - 44), ghost=True)
    sheet.line(FAINT, (0, hub[1] - 14), (0, hub[1] - 44), ghost=True)
    sheet.not_to_scale()
    return "Directional, litter and hub lie on one straight line."


def _two_outcrops(facts: Facts, sheet: Sheet) -> str:
    view = section.Section(facts.value("z_D"), 24.0)
    head = view.at(facts.value("x_D"), facts.value("z_D"))
    hub = view.hub(facts.value("z_B"))
    low, high = (view.at(facts.value("x"), facts.value(z)) for z in ("z_1", "z_2"))
    view.rock(sheet, hub, foot=26)
    for at in (low, high):
        parts.outcrop(sheet, (at[0] - 24, at[1] - 16), -1, 15)
    sheet.line(_EARLIER, head, low, hub)
    section.track(sheet, head, high, hub)
    section.haul(sheet, head, high)
    section.head(sheet, head)
    for at in (low, high):
        section.carried(sheet, at, _SMALL)
    _directional(facts, sheet, head)
    low_name = f"low: {section.out_and_up(facts, 'x', 'z_1')}"
    sheet.label(low_name, (low[0], low[1] - _SMALL * parts.LITTER_DEEP), (0.5, -1))
    sheet.label(f"high: {section.out_and_up(facts, 'x', 'z_2')}", high, (1, 0.5))
    section.name_hub(facts, sheet, hub)
    sheet.ask(parts.middle_of(high, hub), (0.6, 1), "? × the low tension")
    sheet.not_to_scale()
    return (
        "A litter passes a low outcrop and a high one, as far out at both; a track line runs from "
        "the directional past it to the hub."
    )


def _moves(facts: Facts, sheet: Sheet, view: section.Section, hub: Place) -> tuple[Place, Place]:
    """Where a litter starts and ends; both are named."""
    start, end = (view.at(facts.value(f"x_{n}"), facts.value(f"z_{n}")) for n in (1, 2))
    start = (start[0], start[1] + 8)
    view.rock(sheet, hub, foot=24)
    return start, end


def _named(facts: Facts, sheet: Sheet, head: Place, start: Place, end: Place) -> None:
    """Name both places, the upper one beyond the line that runs down past it to the lower."""
    under = (start[0], start[1] - 0.5 * parts.LITTER_DEEP)
    sheet.label(f"start {section.out_and_up(facts, 'x_1', 'z_1')}", under, (0.4, -1))
    passing = head[0] + (start[0] - head[0]) * (end[1] - head[1]) / (start[1] - head[1])
    beyond = (max(passing, end[0]) + 5, end[1])
    sheet.line(THIN, (end[0] + 5, end[1]), beyond)
    _place(facts, sheet, beyond, "x_2", "z_2", "end")


def _play(facts: Facts, sheet: Sheet) -> str:
    view = section.Section(facts.value("z_A"), 10.0)
    head = view.at(facts.value("x_A"), facts.value("z_A"))
    hub = view.hub(facts.value("z_B"))
    start, end = _moves(facts, sheet, view, hub)
    sheet.line(_EARLIER, head, start, hub)
    section.track(sheet, head, end, hub)
    section.head(sheet, head)
    for at in (start, end):
        section.carried(sheet, at, 0.5)
    _directional(facts, sheet, head, "x_A", "z_A")
    _named(facts, sheet, head, start, end)
    section.name_hub(facts, sheet, hub)
    sheet.ask((hub[0], hub[1] + 8), (0.3, 1), "taken in ?")
    sheet.not_to_scale()
    return (
        "A track line runs from a directional past the litter to the hub, with the litter at the "
        "start, low down, and at the end, high up."
    )


def _tag_out(facts: Facts, sheet: Sheet) -> str:
    view = section.Section(34.0, 10.0)
    head = view.at(0.2, 34.0)
    hub = view.hub(facts.value("z_B"))
    start, end = _moves(facts, sheet, view, hub)
    sheet.line(_EARLIER, head, start, hub)
    section.haul(sheet, head, end)
    section.tag(sheet, end, hub)
    section.head(sheet, head)
    for at in (start, end):
        parts.litter(sheet, at, 0.5)
    _named(facts, sheet, head, start, end)
    section.name_hub(facts, sheet, hub)
    sheet.ask((hub[0], hub[1] + 8), (0.3, 1), "paid out ?")
    sheet.not_to_scale()
    return (
        "The haul line raises a litter from the start, low down, to the end, high up; a tag line "
        "runs from it to the hub."
    )


def _quick(facts: Facts, sheet: Sheet) -> str:
    wide = min(max(3.2 * facts.value("hub_distance"), 120.0), 226.0)
    tall = min(max(4.0 * facts.value("cliff"), 116.0), 176.0)
    at, hub = (50.0, 38.0 - tall), (wide, 11.0 - tall)
    section.wall(sheet, -tall, wide + 42)
    section.track(sheet, _HEAD, at, hub)
    section.head(sheet, _HEAD)
    section.carried(sheet, at, 0.7)
    parts.hub(sheet, hub)
    parts.person(sheet, (15, -tall), 20)
    parts.arrow(sheet, (64, 48 - tall), UP, 34, PUSH)
    sheet.line(FAINT, (6, 0), (-84, 0), ghost=True)
    parts.length(sheet, (-74, -tall), (-74, 0), facts.text("cliff"), 1)
    parts.length(sheet, (0, -tall - 40), (wide, -tall - 40), facts.text("hub_distance"), -1)
    sheet.line(FAINT, (wide, -tall - 14), (wide, -tall - 44), ghost=True)
    sheet.line(FAINT, (0, -tall), (0, -tall - 44), ghost=True)
    sheet.label("you", (15, 34 - tall), (-1, 0.6), SOFT_INK)
    sheet.ask((hub[0], hub[1] + 8), (0.3, 1), "taken in ?")
    sheet.not_to_scale()
    return (
        "A litter stands at the foot of a wall; a track line comes down to it from the directional "
        "and runs out to the hub. The litter goes up."
    )


def _moved_out(facts: Facts, sheet: Sheet) -> str:
    view = section.Section(facts.value("z_D"), 24.0)
    before = view.at(facts.value("x_D"), facts.value("z_D"))
    head = (before[0] + 16 + 16 * facts.value("moved_out"), before[1])
    at = view.at(facts.value("x") + 0.8, facts.value("z"))
    hub = view.hub(facts.value("z_B"))
    view.rock(sheet, hub)
    sheet.line(_EARLIER, before, at)
    sheet.disc(before, 8.0, "#ffffff", _EARLIER)
    section.track(sheet, head, at, hub)
    section.haul(sheet, head, at)
    section.head(sheet, head)
    section.carried(sheet, at)
    parts.length(sheet, (before[0], 24), (head[0], 24), facts.text("moved_out"))
    for x in (before[0], head[0]):
        sheet.line(FAINT, (x, 10), (x, 28), ghost=True)
    sheet.label(f"at first {section.out_and_up(facts, 'x_D', 'z_D')}", (head[0] + 8, 4), (1, 0.3))
    _place(facts, sheet, at, "x", "z")
    section.name_hub(facts, sheet, hub)
    _load(facts, sheet, at)
    sheet.ask(parts.middle_of(at, hub), (-0.6, -1), "track ?")
    sheet.not_to_scale()
    return (
        "The directional of haul and track lines has been set further out; the litter and the hub "
        "are where they were."
    )


def _stations(facts: Facts, sheet: Sheet) -> str:
    question = facts.drawn.template
    assert isinstance(question, Ordering)
    view = section.Section(facts.value("z_D"), 13.0)
    head = view.at(facts.value("x_D"), facts.value("z_D"))
    hub = view.hub(facts.value("z_B"))
    view.rock(sheet, hub)
    stations = [
        Facts(facts.drawn, facts.display, thing.by.draws)
        for thing in question.offered(facts.drawn.values)
    ]
    places = [view.at(own.value("x"), own.value("z")) for own in stations]
    for at in places:
        sheet.line(_SLIM, head, at, hub)
    section.head(sheet, head)
    column = hub[0] + 8
    for row, (letter, own, at) in enumerate(zip(LETTERS, stations, places, strict=False), 1):
        section.carried(sheet, at, 0.26)
        sheet.label(letter, (at[0] - 4, at[1] - 3), (-1, 0), bold=True)
        place = section.out_and_up(own, "x", "z")
        sheet.write(f"{letter}: {place}", (column, head[1] - 6 - 18 * row))
    section.name_hub(facts, sheet, hub)
    _directional(facts, sheet, head)
    sheet.write(f"load {facts.text('load')}", (column, head[1] + 16))
    sheet.write("in which order ?", (column, head[1] - 102), bold=True, framed=True)
    sheet.not_to_scale()
    return (
        "Wall, high directional and hub with four lettered stations of the litter; for each the "
        "track line runs from the directional to the litter and on to the hub."
    )


# --- locked --------------------------------------------------------------------------------------


def _raised(facts: Facts, sheet: Sheet) -> str:
    view = section.Section(facts.value("z_D"), 10.0)
    head = view.at(facts.value("x_D"), facts.value("z_D"))
    hub = view.hub(facts.value("z_B"))
    at = (view.at(facts.value("x_1"), 0.0)[0], -152 + 4 * facts.value("z_1"))
    above = at[1] + 30 + 6 * facts.value("raised")
    view.rock(sheet, hub)
    section.track(sheet, head, at, hub)
    section.haul(sheet, head, at)
    section.head(sheet, head)
    section.carried(sheet, at, _SMALL)
    parts.level(sheet, (0, above), at[0] + 116)
    side = at[0] + 18
    parts.length(sheet, (side, above), (side, at[1]), facts.text("raised"), 1)
    sheet.ask((side + 40, above), (0.5, 1), "how far out then ?")
    _directional(facts, sheet, head)
    sheet.label(section.out_and_up(facts, "x_1", "z_1"), at, (1, -0.3))
    section.name_hub(facts, sheet, hub)
    sheet.label("locked", (hub[0] + 38, hub[1] + 2), (1, 0.3))
    sheet.not_to_scale()
    return (
        "Haul line and a locked track line hold a litter low down; a broken line shows the level "
        "to which it is raised."
    )


def _lowered(facts: Facts, sheet: Sheet) -> str:
    head, hub = (22.0, 0.0), (226.0, -158.0)
    drop = 34 + 7.5 * facts.value("drop")
    at = (head[0] + 8 + 20 * facts.value("off_plumb"), -drop)
    below = at[1] - 22 - 6 * facts.value("lowered")
    section.wall(sheet, hub[1] - 11, hub[0] + 42)
    parts.plumb(sheet, head, 208)
    section.track(sheet, head, at, hub)
    section.haul(sheet, head, at)
    section.head(sheet, head)
    section.carried(sheet, at, _SMALL)
    parts.hub(sheet, hub)
    side, far = at[0] + 58, hub[0] + 56
    sheet.line(FAINT, (head[0] + 12, 0), (far + 8, 0), ghost=True)
    sheet.line(FAINT, (at[0] + 8, at[1]), (side + 6, at[1]), ghost=True)
    parts.level(sheet, (head[0], below), side + 6 - head[0])
    parts.length(sheet, (side, 0), (side, at[1]), facts.text("drop"), 1)
    parts.length(sheet, (side, at[1]), (side, below), facts.text("lowered"), 1)
    parts.length(sheet, (head[0], 24), (at[0], 24), facts.text("off_plumb"))
    sheet.line(FAINT, (at[0], at[1] + 8), (at[0], 28), ghost=True)
    sheet.line(FAINT, (head[0], 10), (head[0], 28), ghost=True)
    parts.length(sheet, (head[0], -204), (hub[0], -204), facts.text("hub_run"), -1)
    sheet.line(FAINT, (hub[0], hub[1] - 8), (hub[0], -208), ghost=True)
    parts.length(sheet, (far, 0), (far, hub[1]), facts.text("hub_fall"), 1)
    sheet.label("locked", (hub[0] + 4, hub[1] + 7), (0.4, 1))
    sheet.label(facts.text("load"), (at[0], at[1] - _SMALL * parts.LITTER_DEEP), (0, -1))
    sheet.ask(parts.middle_of(at, hub), (0.7, 1), "track then ?")
    sheet.not_to_scale()
    return (
        "Haul line and a locked track line hold a litter near the top; a broken line shows the "
        "level to which it is lowered."
    )


DIAGRAMS: dict[str, Diagram] = {
    bank.CLEAR_THE_LINE.key: _clear,
    bank.TAKE_IN.key: _take_in,
    bank.HUB_UPLIFT.key: _uplift,
    bank.HUB_TOO_CLOSE.key: _too_close,
    bank.SWING_IN.key: _swing_in,
    bank.HIGH_AND_LOW.key: _two_outcrops,
    bank.PLAY.key: _play,
    bank.QUICK_PLAY.key: _quick,
    bank.TAG_OUT.key: _tag_out,
    bank.DIRECTIONAL_OUT.key: _moved_out,
    orderings.STATIONS.key: _stations,
    bank.RAISED_LOCKED.key: _raised,
    bank.LOWERED_LOCKED.key: _lowered,
}
"""What draws each question of this topic."""
