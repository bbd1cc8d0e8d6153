"""From a typed number to a verdict and a sentence that helps."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from ropecalc.teaching.questions.verdict import Marked, Verdict
from ropecalc.units import (
    Display,
    Kind,
    QuantityError,
    Unit,
    WrongUnitError,
    parse_quantity,
    units_of,
)

if TYPE_CHECKING:
    from ropecalc.teaching.questions.question import Values
    from ropecalc.teaching.questions.template import Template

_ROUNDED = 0.5
"""Share of the margin by which an accepted rougher result may be off by rounding."""
_LONGEST = 40  # characters; no answer needs more

_SKETCH = "Make a sketch with the given quantities in it, or take a hint."
_ADVICE = {
    Kind.FORCE: "Draw the forces at the point and balance them sideways and upward, or take a hint."
}


def mark_number(template: "Template", values: "Values", text: str, display: Display) -> Marked:
    """Mark ``text`` as the answer to ``template`` with ``values`` in it."""
    if len(text) > _LONGEST:
        return Marked(
            Verdict.UNREADABLE,
            f"That is {len(text)} characters long. Write one number and its unit.",
        )
    try:
        value, unit = parse_quantity(text, template.kind)
    except WrongUnitError as error:
        return Marked(Verdict.UNIT, str(error))
    except QuantityError as error:
        return Marked(Verdict.UNREADABLE, str(error))
    verdict, feedback, mistake = _judge(template, values, value, unit, display)
    return Marked(verdict, feedback, as_read(value, unit), mistake)


def as_read(value: float, unit: Unit) -> str:
    """An SI value as it was read, in the unit it was written with."""
    reading = f"{value / unit.factor:.10g}".replace("-", "−")
    return reading + ("" if unit.symbol in ("°", "") else " ") + unit.symbol


@dataclass(frozen=True)
class Window:
    """Answers that are taken alike: those within ``margin`` of ``middle``, SI."""

    middle: float
    margin: float
    verdict: Verdict
    feedback: str
    mistake: str = ""


def windows(
    template: "Template", values: "Values", unit: Unit, display: Display
) -> Iterator[Window]:
    """All that is known of answers written in ``unit``; the first window one lies in counts."""
    answer = template.answer(values)
    margin, shown = template.tolerance.margin(answer), display.show(answer, template.kind)
    yield Window(answer, margin, Verdict.RIGHT, f"Right. The balance gives {shown}.")
    for way, near in template.approximated(values):
        said = f"Right. {way.note} That gives {shown}."
        yield Window(near, _ROUNDED * margin, Verdict.RIGHT, said)
    for key, wrong in template.mistaken(values).items():
        mistake = template.mistake(key)
        said = f"Not right. Your number comes from this mistake: {mistake.named}. {mistake.why}"
        yield Window(wrong, template.window(answer, wrong), Verdict.MISTAKE, said, key)
    yield Window(-answer, margin, Verdict.SIGN, _sign(template.kind))
    for other in units_of(template.kind):
        if other is not unit:
            scale = unit.factor / other.factor
            yield Window(answer * scale, margin * scale, Verdict.UNIT, _unit(unit, other))


def _judge(
    template: "Template", values: "Values", value: float, unit: Unit, display: Display
) -> tuple[Verdict, str, str]:
    for window in windows(template, values, unit, display):
        if abs(value - window.middle) <= window.margin:
            return window.verdict, window.feedback, window.mistake
    said = "Not right, and the number does not tell where it went wrong."
    return Verdict.WRONG, f"{said} {_ADVICE.get(template.kind, _SKETCH)}", ""


def _sign(kind: Kind) -> str:
    return (
        f"The size of this {kind} is right, but its sign says the opposite direction. Read again "
        "which direction counts as positive."
    )


def _unit(typed: Unit, fitting: Unit) -> str:
    if fitting.kind is Kind.RATIO:
        forms = {"": "as a plain number", "%": "in per cent"}
        return f"The number would be right {forms[fitting.symbol]}, not {forms[typed.symbol]}."
    return (
        f"The number would be right in {fitting.words}, but you wrote {typed.symbol}. "
        f"Write it with {fitting.symbol}, or convert it."
    )
