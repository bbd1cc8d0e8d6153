"""Drawings for questions that ask for an order: one small drawing for each lettered thing."""

from collections.abc import Callable
from math import asin

from ropecalc.teaching.drawing import FAINT, PUSH, TRACK, WEIGHT, Stroke
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import orderings as bank
from ropecalc.teaching.questions.diagrams import anchors, high_directional, parts, series, spans
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, DOWN, OUT, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet
from ropecalc.teaching.questions.ordering import LETTERS, Ordering, Ranked

_Small = Callable[[Facts, Sheet], None]
_BETWEEN = 8.0
_LETTER = 14.0
_LINE = Stroke(TRACK.color, 1.6)
"""A track line, plain so that it reads in a small drawing."""


def _gallery(
    small: _Small,
    described: str,
    shared: Callable[[Facts], str] | None = None,
    columns: int = 2,
) -> Diagram:
    """A drawing of each thing, lettered as the question letters them, in columns.

    ``shared`` says below them, in a line or more, what holds for all.
    """

    def diagram(facts: Facts, sheet: Sheet) -> str:
        question = facts.drawn.template
        assert isinstance(question, Ordering)
        made = []
        for thing in question.offered(facts.drawn.values):
            own = Sheet()
            small(_of(facts, thing), own)
            made.append(own.picture(""))
        wide = max(picture.width for picture in made) + _LETTER + _BETWEEN
        top, middle = 0.0, wide * min(columns, len(made)) / 2
        for row in range(0, len(made), columns):
            for column, picture in enumerate(made[row : row + columns]):
                left = column * wide
                letter = LETTERS[row + column]
                sheet.write(letter, (left + _LETTER / 2, top - _LETTER), bold=True)
                sheet.paste(picture, left + _LETTER, top)
            top -= max(picture.height for picture in made[row : row + columns]) + _BETWEEN
        if shared is not None:
            for line in shared(facts).splitlines():
                sheet.write(line, (middle, top - _LETTER / 2))
                top -= _LETTER + 4
        sheet.write("in which order ?", (middle, top - 10), bold=True, framed=True)
        sheet.not_to_scale()
        return described

    return diagram


def _of(facts: Facts, thing: Ranked) -> Facts:
    return Facts(facts.drawn, facts.display, thing.by.draws, thing.by.fixed)


def _level_pull(facts: Facts, sheet: Sheet) -> None:
    at: Place = (0.0, 0.0)
    rise = facts.value("rope_elevation")
    parts.knot(sheet, at)
    parts.level(sheet, at, 84)
    tip = parts.arrow(sheet, at, rise, 84, parts.ROPE)
    parts.angle(sheet, at, 48, 0, rise, facts.text("rope_elevation"))
    sheet.label(facts.text("rope_tension"), tip, parts.way(rise + UP / 2))


def _legs(facts: Facts, sheet: Sheet) -> None:
    half = facts.value("leg_angle") / 2
    anchors.legs(sheet, -half, half, size=0.46)
    anchors.pull(sheet, facts.text("load"), reach=34)
    parts.angle(sheet, (0, 0), 18, UP - half, UP + half, facts.text("leg_angle"))


def _redirect(facts: Facts, sheet: Sheet) -> None:
    half = facts.value("strand_angle") / 2
    lower, _ = high_directional.redirect(sheet, 2 * half, 44)
    parts.angle(sheet, (0, 0), 26, -half, half, facts.text("strand_angle"))
    sheet.label(facts.text("strand_tension"), lower, (1, 0))


def _team(sheet: Sheet, system: str) -> Place:
    """Somebody who pulls on a system; gives back where its rope to the load ends."""
    parts.ground(sheet, (-24, -30), 148, 9)
    sheet.line(parts.ROPE, (-2, 0), (124, 0))
    parts.person(sheet, (-4, -30), 28)
    parts.box(sheet, (62, 0), 74, 24, system)
    return (124, 0)


def _travel(facts: Facts, sheet: Sheet) -> None:
    end = _team(sheet, f"{facts.text('advantage')}:1")
    sheet.label(f"rise {facts.text('rise')}", (end[0] - 30, 14), (0, 1))


def _hand_pull(facts: Facts, sheet: Sheet) -> None:
    end = _team(sheet, f"{facts.text('parts')} strands")
    sheet.label(f"passes on {facts.text('efficiency')}", (end[0] - 52, 14), (0, 1))


def _snag(facts: Facts, sheet: Sheet) -> None:
    _team(sheet, f"× {facts.text('advantage')}")
    sheet.label(f"{facts.text('people')} people", (10, 22), (0, 1))


def _span(facts: Facts, sheet: Sheet) -> None:
    half = 58.0
    sag = 2 * half * facts.value("sag") / facts.value("span")
    left, right = (-half, sag), (half, sag)
    spans.span(sheet, left, right, 26)
    sheet.line(parts.PLUMB, left, right)
    parts.length(sheet, (-half, sag + 20), (half, sag + 20), facts.text("span"))
    sheet.line(FAINT, (-22, 0), (0, 0), ghost=True)
    sheet.label(facts.text("sag"), parts.dimension(sheet, (-16, 0), (-16, sag)), (-0.7, -1))
    tip = parts.arrow(sheet, (0, -6), DOWN, 34, WEIGHT)
    sheet.label(facts.text("load"), (tip[0], tip[1] + 8), (1, 0))


_REMEDY_HEAD: Place = (0.0, 58.0)
_REMEDY_LITTER: Place = (30.0, 30.0)
_REMEDY_HUB: Place = (80.0, 0.0)


def _remedy(facts: Facts, sheet: Sheet) -> None:
    """The rig with what is changed, where it was in faint lines, and the new value."""
    now = [name for name, drawn in facts.called.items() if name != drawn]
    changed = now[0] if now else ""
    head, at, hub = _REMEDY_HEAD, _REMEDY_LITTER, _REMEDY_HUB
    parts.cliff(sheet, (-14, 40), 16, 40)
    if changed == "x_B":
        hub = (106.0, 0.0)
    elif changed == "x_D":
        head = (16.0, 58.0)
    elif changed == "z_D":
        head = (0.0, 72.0)
    if changed:
        sheet.line(FAINT, _REMEDY_HEAD, at, _REMEDY_HUB, ghost=True)
    sheet.line(parts.LEG, (-20, 40), head)
    for shift in (0.0,) if changed else (-2.5, 2.5):
        sheet.line(_LINE, (head[0] + shift, head[1]), (at[0] + shift, at[1]))
        sheet.line(_LINE, (at[0], at[1] + shift), (hub[0], hub[1] + shift))
    parts.pulley(sheet, head, 6)
    parts.litter(sheet, at, 0.45)
    parts.ground(sheet, (hub[0] - 14, -8), 28, 6)
    sheet.disc(hub, 5.0, "#ffffff", parts.BAR)
    if changed == "x_B":
        sheet.write(f"{facts.text(changed)} out", (hub[0] - 2, 25))
    elif changed:
        side = "out" if changed == "x_D" else "up"
        sheet.label(f"{facts.text(changed)} {side}", (head[0] + 6, head[1]), (1, 0.2))
    else:
        sheet.label("2 track lines", parts.middle_of(head, at), (1, 0.6))


def _as_it_is(facts: Facts) -> str:
    def place(x: str, z: str) -> str:
        return f"{facts.text(x)} out, {facts.text(z)} up"

    return (
        f"directionals {place('x_D', 'z_D')}; hub {place('x_B', 'z_B')}\n"
        f"litter {place('x', 'z')}; one track line; load {facts.text('load')}"
    )


def _tensioned(facts: Facts, sheet: Sheet) -> None:
    """Three lines on a tensioner: the one in question is marked, and so is what moved last."""
    rig = series.series(sheet, 3, radius=5, left=20.0, play=44.0)
    line = round(facts.value("line"))
    sheet.ask(rig.lines[line - 1], (-1, 0))
    taken_in = facts.called["device_pull"].endswith("_in")
    parts.moving(sheet, (rig.tail[0] - 14, rig.tail[1] + 8), OUT if taken_in else BACK)
    name, last = "near" if line == 1 else "far", "taken in" if taken_in else "let out"
    sheet.write(f"{name} line, {last}", (rig.strand[0] - 22, rig.top + 12))
    sheet.label(facts.text("device_pull"), (rig.strand[0] - 6, rig.strand[1]), (-0.2, -1))


_SWING_LEG, _SWING_MORE = 44.0, 46.0


def _swing(facts: Facts, sheet: Sheet) -> None:
    """A litter off plumb; haul leg and distance grow with what is given."""
    leg = _SWING_LEG + _SWING_MORE * facts.value("haul_leg_length") / 27.0
    off = 16.0 + 8.0 * facts.value("off_plumb")
    head: Place = (0.0, 0.0)
    lean = asin(off / leg)
    at = parts.step(head, DOWN + lean, leg)
    parts.plumb(sheet, head, leg + 12)
    sheet.line(parts.ROPE, head, at)
    parts.bolt(sheet, head)
    parts.litter(sheet, at, 0.4)
    way_in = parts.arc_points(head, leg, DOWN + lean, DOWN + 0.08)
    sheet.line(FAINT, *way_in, ghost=True)
    parts.head(sheet, way_in[-1], BACK, PUSH.color, 0.7)
    sheet.label(facts.text("haul_leg_length"), parts.middle_of(head, at), parts.way(lean))
    low = -leg - 22
    sheet.line(FAINT, (at[0], at[1] - 18), (at[0], low - 3), ghost=True)
    sheet.line(FAINT, (0, -leg - 12), (0, low - 3), ghost=True)
    parts.length(sheet, (0, low), (at[0], low), facts.text("off_plumb"), -1)


def _slip(facts: Facts, sheet: Sheet) -> None:
    """The litter between its two legs, at their angles, and the rope that slips."""
    rise, fall = facts.value("haul_elevation"), facts.value("ground_depression")
    at: Place = (0.0, 0.0)
    end = parts.step(at, -fall, 62)
    sheet.line(parts.ROPE, at, parts.step(at, BACK - rise, 40))
    sheet.line(_LINE, at, end)
    parts.litter(sheet, at, 0.45)
    parts.level(sheet, at, -44)
    parts.level(sheet, at, 64)
    parts.angle(sheet, at, 26, BACK, BACK - rise, facts.text("haul_elevation"))
    parts.angle(sheet, at, 44, OUT, -fall, facts.text("ground_depression"))
    sheet.disc(end, 5.0, "#ffffff", parts.BAR)
    sheet.label(f"slip {facts.text('slip')}", end, (-0.4, -1))


DIAGRAMS: dict[str, Diagram] = {
    bank.LEVEL_PULLS.key: _gallery(
        _level_pull, "Four ropes, each with its tension, at its angle above the horizontal."
    ),
    bank.LEG_TENSIONS.key: _gallery(_legs, "Four anchors of two equal legs, each with its load."),
    bank.REDIRECT_PULLS.key: _gallery(
        _redirect, "Four ropes, each turning through a pulley on an anchor."
    ),
    bank.HAND_TRAVEL.key: _gallery(_travel, "Four teams, each with its system and its rise."),
    bank.HAND_PULLS.key: _gallery(
        _hand_pull,
        "Three systems, each with its number of strands on the load and its pulleys.",
        lambda facts: f"each raises {facts.text('load')}",
    ),
    bank.SPANS.key: _gallery(
        _span, "Four spans with level ends, each with its load on a pulley at the middle."
    ),
    bank.SNAGS.key: _gallery(
        _snag,
        "Four teams, each with its number of people and its system.",
        lambda facts: f"each person {facts.text('burst_per_person')}",
    ),
    bank.REMEDIES.key: _gallery(
        _remedy,
        "Four times wall, directional, litter and hub with what is changed; faint lines show it as "
        "it is.",
        _as_it_is,
    ),
    bank.TENSIONER.key: _gallery(
        _tensioned,
        "Four times three track lines on one tensioner in series, with the line in question and "
        "what was moved last.",
        lambda facts: f"every sheave passes on {facts.text('efficiency')}",
    ),
    bank.SWINGS.key: _gallery(
        _swing,
        "Four litters off plumb, each with its haul leg and its distance off plumb.",
        columns=4,
    ),
    bank.SLIPS.key: _gallery(
        _slip, "Four litters between haul leg and ground leg, each with the rope that slips."
    ),
}
"""What draws each question of this kind."""
