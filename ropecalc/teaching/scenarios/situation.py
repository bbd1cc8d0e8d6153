"""A scenario with numbers in it, drawn as questions are, so that any later release finds them.

The situation's own quantities are drawn; those of its parts follow from them. The first numbers
that suit every part are taken. On a paper, where all parts lie open at once, what later parts go
on with is drawn as well: the answer to one part must not stand in the next.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from types import MappingProxyType

from ropecalc.teaching.questions.draw import Draw, DrawError, candidate
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.questions.verdict import Verdict
from ropecalc.teaching.scenarios.content import Part, Scenario, on_grid
from ropecalc.units import Display

_ATTEMPTS = 1000


@dataclass(frozen=True)
class Situation:
    """A scenario whose own quantities have the ``values`` (SI, by name) of draw ``number``."""

    scenario: Scenario
    number: int
    values: Values
    carried: Values = field(default_factory=dict)
    """What later parts go on with in place of the answers; for papers."""

    def story(self, display: Display) -> str:
        """The story with its numbers, in the reader's units."""
        shown = {g.name: g.show(self.values[g.name], display) for g in self.scenario.givens}
        return self.scenario.story.format(**shown)

    def part(self, key: str) -> Draw:
        """The part called ``key`` with its numbers."""
        return self._draws[key]

    def carried_on(self, part: Part, display: Display) -> str:
        """What later parts go on with after ``part``, as they show it; "" if none do."""
        if part.gives is None:
            return ""
        return part.gives.show(on_grid(part.gives, self.part(part.key).answer), display)

    @cached_property
    def _draws(self) -> Mapping[str, Draw]:
        return {
            part.key: Draw(part.question, self.number, MappingProxyType(values))
            for part, values in _worked(self.scenario, self.values, self.carried)
        }


def draw_situation(scenario: Scenario, seed: str, number: int = 0) -> Situation:
    """Draw number ``number`` (0, 1, 2, ...) of ``scenario`` for ``seed``."""
    for attempt in range(_ATTEMPTS):
        values = candidate(scenario, seed, number, attempt)
        if suitable(scenario, values):
            return Situation(scenario, number, MappingProxyType(values))
    raise DrawError(f"{scenario.key}: none of {_ATTEMPTS} attempts gave suitable numbers")


def suitable(scenario: Scenario, values: Values) -> bool:
    """Whether every part has an answer with these numbers, unlike those of its mistakes."""
    if not scenario.usable(values):
        return False
    try:
        return all(part.question.suits(own) for part, own in _worked(scenario, values))
    except ValueError:  # one of the quantities has no value here
        return False


def draw_for_paper(scenario: Scenario, seed: str) -> Situation:
    """The situation on a paper: what parts go on with is drawn, and is not an earlier answer."""
    to_carry = _ToCarry(scenario)
    for attempt in range(_ATTEMPTS):
        values = candidate(scenario, seed, 0, attempt)
        carried = candidate(to_carry, seed, 0, attempt)
        if suitable(scenario, values) and _tells_nothing(scenario, values, carried):
            return Situation(scenario, 0, MappingProxyType(values), MappingProxyType(carried))
    raise DrawError(f"{scenario.key}: none of {_ATTEMPTS} attempts gave numbers for a paper")


@dataclass(frozen=True)
class _ToCarry:
    """What the parts of a scenario carry on, as something that is drawn."""

    scenario: Scenario

    @property
    def key(self) -> str:
        return f"{self.scenario.key}|carried"

    @property
    def givens(self) -> tuple[Given, ...]:
        return tuple(part.gives for part in self.scenario.parts if part.gives)


def _tells_nothing(scenario: Scenario, values: Values, carried: Values) -> bool:
    """Whether every part suits with what it goes on with, and nothing of that is an answer."""
    try:
        for part, own in _worked(scenario, values, carried):
            if not part.question.suits(own):
                return False
            if part.gives:
                shown = part.gives.show(carried[part.gives.name], Display())
                if part.question.mark(own, shown, Display()).verdict is Verdict.RIGHT:
                    return False
    except ValueError:
        return False
    return True


def _worked(
    scenario: Scenario, values: Values, instead: Values = MappingProxyType({})
) -> Iterator[tuple[Part, dict[str, float]]]:
    """Each part with its own numbers, in order; it gets no more of earlier ones than it names.

    What stands in ``instead`` is carried on in place of the answer.
    """
    carried: dict[str, float] = {}
    for part in scenario.parts:
        own = part.values({**values, **{name: carried[name] for name in part.after}})
        yield part, own
        if part.gives:
            name = part.gives.name
            carried[name] = instead.get(name, on_grid(part.gives, part.question.answer(own)))
