"""Drawings for questions that ask for an order: one small drawing for each lettered thing."""

from collections.abc import Callable

from ropecalc.teaching.drawing import FAINT, WEIGHT
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.bank import orderings as bank
from ropecalc.teaching.questions.diagrams import anchors, high_directional, parts, spans
from ropecalc.teaching.questions.diagrams.facts import Diagram, Facts
from ropecalc.teaching.questions.diagrams.parts import DOWN, UP
from ropecalc.teaching.questions.diagrams.sheet import Sheet
from ropecalc.teaching.questions.ordering import LETTERS, Ordering, Ranked

_Small = Callable[[Facts, Sheet], None]
_COLUMNS = 2
_BETWEEN = 8.0
_LETTER = 14.0


def _gallery(
    small: _Small, described: str, shared: Callable[[Facts], str] | None = None
) -> Diagram:
    """A drawing of each thing, lettered as the question letters them, in two columns.

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
        top = 0.0
        for row in range(0, len(made), _COLUMNS):
            for column, picture in enumerate(made[row : row + _COLUMNS]):
                left = column * wide
                letter = LETTERS[row + column]
                sheet.write(letter, (left + _LETTER / 2, top - _LETTER), bold=True)
                sheet.paste(picture, left + _LETTER, top)
            top -= max(picture.height for picture in made[row : row + _COLUMNS]) + _BETWEEN
        if shared is not None:
            for line in shared(facts).splitlines():
                sheet.write(line, (wide, top - _LETTER))
                top -= _LETTER + _BETWEEN
        sheet.write("in which order ?", (wide, top - _LETTER), bold=True, framed=True)
        sheet.not_to_scale()
        return described

    return diagram


def _of(facts: Facts, thing: Ranked) -> Facts:
    return Facts(facts.drawn, facts.display, thing.by.draws)


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
}
"""What draws each question of this kind."""
