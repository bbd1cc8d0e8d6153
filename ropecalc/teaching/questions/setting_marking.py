"""From a setting written down, or set on the screen, to a verdict and a sentence that helps."""

import re
from typing import TYPE_CHECKING

from ropecalc.derivation import DomainError
from ropecalc.teaching.questions.number_marking import as_read
from ropecalc.teaching.questions.verdict import Marked, Verdict
from ropecalc.teaching.questions.wanted import side
from ropecalc.units import Display, QuantityError, Unit, WrongUnitError, parse_quantity

if TYPE_CHECKING:
    from ropecalc.teaching.questions.knob import Knob
    from ropecalc.teaching.questions.question import Values
    from ropecalc.teaching.questions.setting import RigTask

_BETWEEN = re.compile(r"\s*(?:[;/|\n]|\band\b)\s*")
_LONGEST = 80  # characters
_REACH = 1e-6
"""How far beyond a slider's end a value may lie by rounding, as a share of its range."""


class OutOfReachError(QuantityError):
    """A value that the control cannot be set to."""


def mark_setting(task: "RigTask", values: "Values", text: str, display: Display) -> Marked:
    """Mark ``text`` as the answer to ``task`` with ``values`` in it."""
    try:
        setting, reading = read_setting(task, text, display)
    except WrongUnitError as error:
        return Marked(Verdict.UNIT, str(error))
    except QuantityError as error:
        return Marked(Verdict.UNREADABLE, str(error))
    try:
        if task.is_right(values, setting):
            said = f"Right. {task.tried(values, setting, display)} {task.reason}"
            return Marked(Verdict.RIGHT, said, reading)
    except DomainError as error:
        said = f"Not right: at this setting there is no result. {error.in_units(display)}"
        return Marked(Verdict.WRONG, said, reading)
    mistakes = task.mistakes_at(values, setting)
    if len(mistakes) == 1:
        [mistake] = mistakes
        said = f"Not right. Your setting comes from this mistake: {mistake.named}. {mistake.why}"
        return Marked(Verdict.MISTAKE, said, reading, mistake.key)
    return Marked(Verdict.WRONG, f"Not right. {_off(task, values, setting)}", reading)


def read_setting(task: "RigTask", text: str, display: Display) -> tuple[dict[str, float], str]:
    """The setting in ``text``, SI by name, and how it was read. Raises QuantityError in words."""
    how = task.how_to_write(display)
    if len(text) > _LONGEST:
        raise QuantityError(f"That is {len(text)} characters long. {how}")
    parts = [part for part in _BETWEEN.split(text.strip()) if part]
    if len(parts) != len(task.knobs):
        count = len(task.knobs)
        wanted = "one value" if count == 1 else f"{count} values, with a semicolon between them"
        raise QuantityError(f"“{text.strip()}” is not {wanted}. {how}")
    setting, read = {}, []
    for knob, part in zip(task.knobs, parts, strict=True):
        value, unit = parse_quantity(part, knob.grid.variable.kind)
        setting[knob.name] = _within(knob, value, unit, display)
        read.append(as_read(value, unit))
    return setting, "; ".join(read)


def _within(knob: "Knob", value: float, unit: Unit, display: Display) -> float:
    control = knob.control
    spare = _REACH * (control.high - control.low)
    if unit.symbol != knob.grid.unit:
        spare += control.step  # a slider's ends in another unit are whole steps just outside
    if knob.counts and value != round(value):
        raise OutOfReachError(f"{knob.label[0].upper()}{knob.label[1:]}: write a whole number.")
    if not control.low - spare <= value <= control.high + spare:
        low, high = knob.show(control.low, display), knob.show(control.high, display)
        raise OutOfReachError(
            f"{knob.label[0].upper()}{knob.label[1:]} can be set from {low} to {high} only."
        )
    return min(max(value, control.low), control.high)


def _off(task: "RigTask", values: "Values", setting: dict[str, float]) -> str:
    """Which results lie outside their bands, and on which side; no numbers: it stays a task."""
    said = []
    for wanted in task.wanted:
        known = wanted.known({**values, **setting})
        where = side(wanted, known)
        if where != "as wanted":
            said.append(f"{where.capitalize()} here: {wanted.result.meaning}.")
    return " ".join(said)
