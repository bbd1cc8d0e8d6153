"""From what was typed to a verdict and a sentence that helps. Nothing is shown or kept here."""

import math
from dataclasses import dataclass
from enum import StrEnum

from ropecalc.teaching.questions.draw import Draw
from ropecalc.units import (
    Display,
    Kind,
    QuantityError,
    Unit,
    WrongUnitError,
    parse_quantity,
    units_of,
)

_LONGEST = 40  # characters; no answer needs more

_SKETCH = "Make a sketch with the given quantities in it, or take a hint."
_ADVICE = {
    Kind.FORCE: "Draw the forces at the point and balance them sideways and upward, or take a hint."
}


class Verdict(StrEnum):
    """How an answer was taken."""

    RIGHT = "right"
    MISTAKE = "mistake"
    SIGN = "sign"
    UNIT = "unit"
    WRONG = "wrong"
    UNREADABLE = "unreadable"


@dataclass(frozen=True)
class Marked:
    """A verdict with its reasons. ``reading`` is "" where nothing could be read.

    ``feedback`` may repeat what was typed: escape it before it goes into a page.
    """

    verdict: Verdict
    feedback: str
    reading: str = ""
    mistake: str = ""


def mark(drawn: Draw, text: str, display: Display | None = None) -> Marked:
    """Mark ``text`` as the answer to ``drawn``; ``display`` is for the numbers in the feedback."""
    display = display or Display()
    if len(text) > _LONGEST:
        return Marked(
            Verdict.UNREADABLE,
            f"That is {len(text)} characters long. Write one number and its unit.",
        )
    try:
        value, unit = parse_quantity(text, drawn.template.kind)
    except WrongUnitError as error:
        return Marked(Verdict.UNIT, str(error))
    except QuantityError as error:
        return Marked(Verdict.UNREADABLE, str(error))
    reading = f"{value / unit.factor:.10g}".replace("-", "−")
    reading += ("" if unit.symbol in ("°", "") else " ") + unit.symbol
    verdict, feedback, mistake = _judge(drawn, value, unit, display)
    return Marked(verdict, feedback, reading, mistake)


def _judge(drawn: Draw, value: float, unit: Unit, display: Display) -> tuple[Verdict, str, str]:
    template, answer = drawn.template, drawn.answer
    margin = template.tolerance.margin(answer)
    if abs(value - answer) <= margin:
        shown = display.show(answer, template.kind)
        return Verdict.RIGHT, f"Right. The balance gives {shown}.", ""
    for key, wrong in drawn.mistaken.items():
        if abs(value - wrong) <= template.window(answer, wrong):
            mistake = template.mistake(key)
            said = f"Not right. Your number comes from this mistake: {mistake.named}. {mistake.why}"
            return Verdict.MISTAKE, said, key
    if abs(value + answer) <= margin:
        return Verdict.SIGN, _sign(template.kind), ""
    other = _fitting_unit(value / unit.factor, template.kind, answer, margin)
    if other is not None:
        return Verdict.UNIT, _unit(unit, other), ""
    said = "Not right, and not one of the mistakes this page knows."
    return Verdict.WRONG, f"{said} {_ADVICE.get(template.kind, _SKETCH)}", ""


def _sign(kind: Kind) -> str:
    return (
        f"The size of this {kind} is right, but its sign says the opposite direction. Read again "
        "which direction counts as positive."
    )


def _fitting_unit(number: float, kind: Kind, answer: float, margin: float) -> Unit | None:
    """The unit in which the typed number would have been right."""
    for unit in units_of(kind):
        if math.isclose(number * unit.factor, answer, rel_tol=0.0, abs_tol=margin):
            return unit
    return None


def _unit(typed: Unit, fitting: Unit) -> str:
    if fitting.kind is Kind.RATIO:
        forms = {"": "as a plain number", "%": "in per cent"}
        return f"The number would be right {forms[fitting.symbol]}, not {forms[typed.symbol]}."
    return (
        f"The number would be right in {fitting.words}, but you wrote {typed.symbol}. "
        f"Write it with {fitting.symbol}, or convert it."
    )
