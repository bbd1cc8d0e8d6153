"""Drawings for track lines on one tensioner in series."""

from ropecalc.teaching.canvas import SOFT_INK
from ropecalc.teaching.drawing import FAINT, PUSH
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import tensioner as bank
from ropecalc.teaching.questions.diagrams import legs, parts, series
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import BACK, OUT, UP
from ropecalc.teaching.questions.diagrams.series import Series
from ropecalc.teaching.questions.diagrams.sheet import Sheet

_LINES = (
    "From above, track lines come from the left, each with a rope grab and a travelling pulley; "
    "one rope runs from the device at the hub over all pulleys in series to its tied-off end. "
    "The near line lies at the bottom, next to the device."
)


def _lines(facts: Facts, sheet: Sheet, count: int | None = None) -> Series:
    """The lines in series, as many as are given, with what every sheave passes on."""
    count = round(facts.value("lines")) if count is None else count
    rig = series.series(sheet, count)
    _told(facts, sheet, rig)
    return rig


def _told(facts: Facts, sheet: Sheet, rig: Series) -> None:
    """Names, and what is written above the lines."""
    series.name_lines(sheet, rig)
    _names(facts, sheet, rig)


def _names(facts: Facts, sheet: Sheet, rig: Series, device: str = "device") -> None:
    words = []
    names = {given.name for given in facts.drawn.template.givens}
    if "lines" in names:
        words.append(f"{facts.text('lines')} lines")
    if "efficiency" in names:
        words.append(f"sheave efficiency {facts.text('efficiency')}")
    if "take_in" in names:
        words.append(f"each comes in by {facts.text('take_in')}")
    if words:
        sheet.write(", ".join(words), (rig.strand[0] - 40, rig.top + 14))
    series.name_parts(sheet, rig, device)
    sheet.not_to_scale()


def _all_together(sheet: Sheet, rig: Series) -> Place:
    """A bracket over all lines; gives back its middle."""
    (x, low), high = rig.lines[0], rig.lines[-1][1]
    x -= 46
    sheet.line(parts.OUTLINE, (x + 5, low - 5), (x, low - 5), (x, high + 5), (x + 5, high + 5))
    return (x, (low + high) / 2)


def _strand(facts: Facts, sheet: Sheet, rig: Series) -> None:
    """The pull in the strand at the device."""
    sheet.label(facts.text("device_pull"), (rig.strand[0] - 22, rig.strand[1]), (0, -1))


def _without_friction(facts: Facts, sheet: Sheet) -> str:
    rig = _lines(facts, sheet)
    _strand(facts, sheet, rig)
    series.taken_in(sheet, rig)
    sheet.ask(_all_together(sheet, rig), (-1, 0), "each ?")
    return _LINES


def _one_line(facts: Facts, sheet: Sheet) -> str:
    asked = round(facts.value("line"))
    rig = series.series(sheet, 3)
    for number, at in enumerate(rig.lines, 1):
        if number == asked:
            sheet.ask(at, (-1, 0), f"line {facts.text('line')} ?")
        else:
            sheet.label(f"line {number}", at, (-1, 0), SOFT_INK)
    _names(facts, sheet, rig)
    _strand(facts, sheet, rig)
    series.taken_in(sheet, rig)
    return f"{_LINES} Rope is being taken in."


def _far_to_near(facts: Facts, sheet: Sheet) -> str:
    rig = _lines(facts, sheet)
    series.taken_in(sheet, rig)
    sheet.ask(_all_together(sheet, rig), (-1, 0), "far / near ?")
    return f"{_LINES} They have just been pulled in."


def _most_loaded(facts: Facts, sheet: Sheet) -> str:
    rig = _lines(facts, sheet)
    series.taken_in(sheet, rig)
    x, y = _all_together(sheet, rig)
    sheet.label(f"all {facts.text('track_tension')}", (x, y + 14), (-1, 0.2))
    sheet.ask((x, y - 14), (-1, -0.2), "largest ?")
    return f"{_LINES} They have just been pulled in."


def _how_many(facts: Facts, sheet: Sheet) -> str:
    rig = series.series(sheet, 2, some_left_out=True)
    _told(facts, sheet, rig)
    series.taken_in(sheet, rig)
    x, y = _all_together(sheet, rig)
    sheet.label(f"all {facts.text('track_tension')}", (x, y + 28), (-1, 0))
    sheet.label(f"each ≤ {facts.text('line_limit')}", (x, y), (-1, 0))
    sheet.ask((x, y - 30), (-1, 0), "how many ?")
    return f"{_LINES} How many lines lie between the near and the far one is left open."


def _hub_total(facts: Facts, sheet: Sheet) -> str:
    rig = series.series(sheet, round(facts.value("lines")), left=-140)
    _told(facts, sheet, rig)
    parts.display(sheet, (-92, rig.lines[0][1]), facts.text("near_line"))
    series.taken_in(sheet, rig)
    sheet.ask((rig.hub[0] + 36, rig.hub[1]), (1, 0), "hub ?")
    return f"{_LINES} A load cell is in the near line, just pulled in."


def _device(facts: Facts, sheet: Sheet) -> str:
    rig = _lines(facts, sheet, 2)
    series.taken_in(sheet, rig)
    x, y = rig.lines[0]
    sheet.label(facts.text("near_line"), (x + 18, y), (0, -1))
    sheet.ask((rig.strand[0] - 22, rig.strand[1]), (0, -1))
    return f"{_LINES} They have just been pulled in."


def _hub_pulley(facts: Facts, sheet: Sheet) -> str:
    rig = _lines(facts, sheet, 2)
    series.taken_in(sheet, rig)
    _strand(facts, sheet, rig)
    sheet.ask((rig.hub[0] + 36, rig.hub[1]), (1, 0), "hub pulley ?")
    return f"{_LINES} Rope is being taken in."


def _through(facts: Facts, sheet: Sheet) -> str:
    rig = _lines(facts, sheet)
    for x, y in rig.wheels:
        parts.moving(sheet, (x + 28, y), OUT)
    series.taken_in(sheet, rig)
    sheet.ask(rig.tail, (1, 0), "rope ?")
    return f"{_LINES} Each travelling pulley comes in towards the hub."


_PIECE = 58.0
_PIECES = (("take_in", "come in"), ("line_stretch", "stretch"), ("least_play", "at least"))


def _rope_length(facts: Facts, sheet: Sheet) -> str:
    rig = series.series(sheet, round(facts.value("lines")), play=3 * _PIECE + 9)
    series.name_parts(sheet, rig)
    y = rig.top + 16
    x = rig.wheels[-1][0] + 9
    sheet.line(FAINT, (x, rig.wheels[-1][1] + 9), (x, y + 4), ghost=True)
    for name, word in (
        ("take_in", "come in"),
        ("line_stretch", "stretch"),
        ("least_play", "at least"),
    ):
        sheet.label(f"{facts.text(name)}", parts.dimension(sheet, (x, y), (x + _PIECE, y)), (0, 1))
        sheet.label(word, (x + _PIECE / 2, y + 18), (0, 1), SOFT_INK)
        x += _PIECE
    x, y = rig.lines[-1]
    sheet.label(f"{facts.text('lines')} lines", (x + 20, y + 2), (0, 1))
    sheet.label(f"tail {facts.text('tail')}", rig.tail, (1, 0))
    sheet.ask((rig.strand[0] - 62, rig.strand[1]), (0, -1), "tensioner rope ?")
    sheet.not_to_scale()
    return (
        f"{_LINES} Above them stands how far each travelling pulley has to come in, for geometry "
        "and for stretch, and how far it must stay from the hub."
    )


def _lost_line(facts: Facts, sheet: Sheet) -> str:
    rig = series.series(sheet, 2)
    x, y = rig.lines[-1]
    parts.parted(sheet, (x + 22, y))
    sheet.label("parts", (x + 22, y + 5), (0, 1), SOFT_INK)
    wheel = rig.wheels[-1]
    top = rig.top + 14
    parts.length(sheet, (wheel[0], top), (series.HUB_WHEELS + 13, top), facts.text("play"))
    sheet.line(FAINT, (wheel[0], wheel[1] + 9), (wheel[0], top + 4), ghost=True)
    series.name_parts(sheet, rig)
    sheet.write(f"{facts.text('lines')} lines", (x - 22, top))
    sheet.ask(rig.lines[0], (-1, 0), "slack ?")
    sheet.not_to_scale()
    return f"{_LINES} One of the two lines has parted; the device stays locked."


def _hands(facts: Facts, sheet: Sheet) -> str:
    rig = series.series(sheet, round(facts.value("lines")))
    _names(facts, sheet, rig, f"device leaves {facts.text('device_share')}")
    x, y = rig.lines[-1]
    sheet.label("far", (x, y), (-1, 0))
    sheet.label(f"at least {facts.text('far_line')}", (x + 20, y - 2), (0, -1))
    x, y = rig.tail
    parts.box(sheet, (x + 12, y), 38, 22, f"{facts.text('tail_advantage')}:1")
    parts.arrow(sheet, (x + 31, y), OUT, 34, PUSH)
    sheet.ask((x + 26, y - 13), (0, -1), "hands ?")
    return (
        f"{_LINES} Hands pull on a further system on the tail of the rope, which runs through the "
        "device."
    )


def _feed(facts: Facts, sheet: Sheet) -> str:
    rise, fall = facts.value("track_elevation"), facts.value("ground_depression")
    rig = legs.track(sheet, rise, fall)
    at = legs.AT
    parts.level(sheet, at, -62)
    parts.level(sheet, at, 92)
    parts.angle(sheet, at, 40, BACK, BACK - rise, facts.text("track_elevation"))
    parts.angle(sheet, at, 70, OUT, -fall, facts.text("ground_depression"))
    tip = parts.arrow(sheet, (26, 6), UP, 44, PUSH)
    sheet.label(facts.text("haul_speed"), (tip[0], tip[1] - 14), (1, 0.3))
    sheet.label(f"{facts.text('lines')} lines", parts.step(rig.hub, rig.fall, -50), (0.4, 1))
    sheet.ask((rig.hub[0] + 10, rig.hub[1] - 24), (0, -1), "rope at the device ?")
    return f"{legs.TRACK_RIG} An arrow shows how fast the litter rises."


def _second_line(facts: Facts, sheet: Sheet) -> str:
    rig = _lines(facts, sheet)
    series.taken_in(sheet, rig)
    x, y = rig.lines[0]
    sheet.label(f"at most {facts.text('near_line')}", (x + 10, y), (0, -1))
    sheet.ask(_all_together(sheet, rig), (-1, 0), "all ?")
    return f"{_LINES} They have just been pulled in; the near line carries the most that it may."


DIAGRAMS: dict[str, Diagram] = {
    bank.WITHOUT_FRICTION.key: _without_friction,
    bank.ONE_LINE.key: _one_line,
    bank.FAR_TO_NEAR.key: _far_to_near,
    bank.MOST_LOADED.key: _most_loaded,
    bank.HOW_MANY.key: _how_many,
    bank.HUB_TOTAL.key: _hub_total,
    bank.DEVICE.key: _device,
    bank.HUB_PULLEY.key: _hub_pulley,
    bank.ROPE_THROUGH.key: _through,
    bank.ROPE_LENGTH.key: _rope_length,
    bank.LOST_LINE.key: _lost_line,
    bank.HANDS.key: _hands,
    bank.FEED.key: _feed,
    bank.SECOND_LINE.key: _second_line,
}
"""What draws each question of this topic."""
