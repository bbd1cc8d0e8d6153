"""A derivation applied to the quantities that a question draws."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from ropecalc.derivation import Derivation, Explanation
from ropecalc.units import Display


@dataclass(frozen=True)
class Applied:
    """``derivation``, and where it takes its given quantities from.

    ``taken`` names the question's quantity for one of the derivation's, where that has another
    name; ``fixed`` (SI) is what is neither drawn nor set.
    """

    derivation: Derivation
    taken: Mapping[str, str] = field(default_factory=dict)
    fixed: Mapping[str, float] = field(default_factory=dict)

    @property
    def draws(self) -> dict[str, str]:
        """The question's quantity behind each of the derivation's that is not fixed."""
        names = (variable.name for variable in self.derivation.given)
        return {name: self.taken.get(name, name) for name in names if name not in self.fixed}

    def numbers(self, values: Mapping[str, Any]) -> dict[str, Any]:
        """What the derivation takes, SI, by the names it knows."""
        return {name: values[own] for name, own in self.draws.items()} | dict(self.fixed)

    def value(self, values: Mapping[str, float]) -> float:
        """What it gives, SI. Raises ValueError where there is no result."""
        return float(self.derivation(**self.numbers(values)))

    def masked(self, values: Mapping[str, Any]) -> Any:
        """What it gives for arrays, masked where there is no result."""
        return self.derivation.masked(**self.numbers(values))

    def told(self, values: Mapping[str, float], display: Display) -> Explanation:
        """It explained with these numbers."""
        return self.derivation.explain(display, **self.numbers(values))
