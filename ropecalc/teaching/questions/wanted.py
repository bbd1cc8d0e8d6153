"""What has to hold of a rig: a result inside a band."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from ropecalc.derivation import Variable
from ropecalc.teaching.questions.applied import Applied
from ropecalc.units import Display


@dataclass(frozen=True)
class Wanted:
    """A result that has to lie in a band.

    ``steps`` are worked out one after the other; each may take the results before it, by the name
    of their quantity, and the last one has to lie between ``low`` and ``high``. These take all
    quantities, SI, by name, and may be arrays.
    """

    steps: tuple[Applied, ...]
    low: Callable[[Mapping[str, Any]], Any]
    high: Callable[[Mapping[str, Any]], Any]

    @property
    def result(self) -> Variable:
        """What has to lie in the band."""
        return self.steps[-1].derivation.result

    def known(self, values: Mapping[str, float]) -> dict[str, float]:
        """``values`` and every result. Raises ValueError where there is none."""
        known = dict(values)
        for step in self.steps:
            known[step.derivation.result.name] = step.value(known)
        return known

    def known_on_arrays(self, values: Mapping[str, Any]) -> dict[str, Any]:
        """The same for arrays, masked where there is no result."""
        known = dict(values)
        for step in self.steps:
            known[step.derivation.result.name] = step.masked(known)
        return known

    def holds(self, known: Mapping[str, Any], result: Any) -> Any:
        """Whether ``result`` lies in the band."""
        return (result >= self.low(known)) & (result <= self.high(known))


def outcome(wanted: Wanted, values: Mapping[str, float], display: Display) -> str:
    """What ``wanted`` comes to and whether it is in its band."""
    try:
        known = wanted.known(values)
    except ValueError as error:
        return f"There is no result here. {error}"
    result = wanted.result
    shown = display.show(known[result.name], result.kind)
    return f"{_capital(result.meaning)}: {shown}, {side(wanted, known)}."


def _capital(words: str) -> str:
    return words[0].upper() + words[1:]


def side(wanted: Wanted, known: Mapping[str, float]) -> str:
    """On which side of its band a result lies."""
    result = known[wanted.result.name]
    if result < wanted.low(known):
        return "too little"
    return "too much" if result > wanted.high(known) else "as wanted"
