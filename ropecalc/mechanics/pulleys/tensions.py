"""Tension counting: every strand in units of the hand's pull, sheave by sheave, symbolically.

Two rules are enough. Over a sheave the strand that the rope moves away from carries the
efficiency times the strand it moves towards; which is which follows from the rope's travel.
And the strands at every body that is free to move balance along the line. Each new strand is
worked out from those already known; only where no rule has a single unknown left are the
remaining ones solved together.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from ropecalc.derivation import (
    DomainError,
    Explanation,
    Range,
    Step,
    Variable,
)
from ropecalc.derivation.explanation import explain_steps
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.friction import Direction
from ropecalc.mechanics.pulleys.cautions import ASSUMPTIONS, CAUTIONS, SOURCE
from ropecalc.mechanics.pulleys.system import Role, System
from ropecalc.mechanics.pulleys.travel import Travel, travel
from ropecalc.units import Display, Kind


@dataclass(frozen=True)
class Rule:
    """One condition: the terms (coefficient, symbol) add up to nothing; ``equation`` says it."""

    sentence: str
    equation: Any
    terms: tuple[tuple[Any, Any], ...]


@dataclass(frozen=True)
class Count:
    """The tensions of a system while it moves one way, as sympy expressions.

    ``tensions`` are in units of the hand's pull, by strand index; ``advantage`` is load over
    hand's pull. Efficiencies are symbols named as in the system.
    """

    system: System
    direction: Direction
    travel: Travel
    tensions: tuple[Any, ...]
    advantage: Any
    steps: tuple[Step, ...]
    symbols: dict[str, Any]
    variables: tuple[Variable, ...]

    @property
    def ideal_advantage(self) -> Any:
        """The advantage without any friction (every efficiency 1)."""
        return self.advantage.subs({self.symbols[name]: 1 for name in self.system.efficiencies})

    @cached_property
    def efficiency(self) -> Any:
        """Work out over work in: the advantage over the travel ratio."""
        return self.advantage / self.travel.ratio

    def connector(self, which: int) -> Any:
        """Pull on the connector of ``system.attachments[which]``, in units of the hand's pull."""
        from sympy import cos, sqrt

        attachment = self.system.attachments[which]
        strands = [s for s in (attachment.before, attachment.after) if s is not None]
        pulls = [self.tensions[s.index] for s in strands]
        if len(pulls) == 1:
            return pulls[0]
        first, second = pulls
        if attachment.visit.angle is not None:
            between = cos(attachment.visit.angle)
            return sqrt(first**2 + second**2 + 2 * first * second * between)
        ways = [self.system.pull(s, attachment.visit.body) for s in strands]
        return first + second if ways[0] == ways[1] else ways[0] * first + ways[1] * second

    def explain(
        self,
        display: Display | None = None,
        *,
        load: float | None = None,
        efficiency: float | Mapping[str, float] | None = None,
    ) -> Explanation:
        """The count step by step; with ``load`` (N) and ``efficiency``, with their numbers."""
        display = display or Display()
        known: dict[str, float] = {}
        result = ""
        if load is not None:
            values = efficiencies(self.system, 1.0 if efficiency is None else efficiency)
            if any(not isinstance(v, float) for v in (*values.values(), load)):
                raise DomainError(
                    "an explanation takes single numbers, not arrays, for load and efficiency. "
                    "Choose one of each."
                )
            q.LOAD.check(load)
            at = {self.symbols[name]: value for name, value in values.items()}
            known = dict(values) | {q.LOAD.name: load}
            known[q.HAND_PULL.name] = load / float(self.advantage.subs(at))
            shown = display.show(known[q.HAND_PULL.name], Kind.FORCE)
            result = f"Pull of the hand, {self.direction}: {shown}"
        return Explanation(
            title=f"{self.system.name}: counting tensions, {self.direction}",
            assumptions=ASSUMPTIONS,
            meanings=tuple((v.symbol, v.meaning) for v in self.variables),
            lines=explain_steps(self.steps, self.symbols, self.variables, known, display),
            result=result,
            cautions=CAUTIONS,
            source=SOURCE,
        )


def efficiencies(system: System, given: Any) -> dict[str, Any]:
    """One value for every efficiency of ``system``: the same for all, or by name.

    Raises :class:`DomainError` for values outside 0 to 1 and for names that are missing or
    unknown.
    """
    from ropecalc.mechanics.manners import checked, named

    names = system.efficiencies
    if isinstance(given, Mapping):
        if set(given) != set(names):
            raise DomainError(
                f"{system.name}: efficiencies were given for {', '.join(given) or 'no sheave'}; "
                f"they must be given for {', '.join(names) or 'no sheave'}. Give each once."
            )
        pairs = [(named(q.SHEAVE_EFFICIENCY, n, f"efficiency {n}"), given[n]) for n in names]
        return dict(zip(names, checked(*pairs), strict=True))
    (value,) = checked((q.SHEAVE_EFFICIENCY, given))
    return dict.fromkeys(names, value)


def count_tensions(system: System, direction: str) -> Count:
    """Count the tensions of ``system`` while it is hauled or lowered.

    Raises :class:`DomainError` for an unknown direction, and for holding: at rest the tensions lie
    anywhere between the two (ask :func:`~ropecalc.mechanics.pulleys.loads.forces`).
    """
    way = Direction.of(direction)
    if way is Direction.HOLDING:
        raise DomainError(
            "direction is holding; a count needs the rope to move, hauling or lowering. At rest "
            "every tension lies in a band: ask forces() for it."
        )
    return _Counting(system, way).count()


def _written(name: str) -> str:
    """The LaTeX symbol of an efficiency's name: eta and eta_2 are Greek, any other is itself."""
    return f"\\{name}" if re.fullmatch(r"eta(_\d+)?", name) else name


class _Counting:
    """Collects the steps of one count; used only while it is carried out."""

    def __init__(self, system: System, direction: Direction) -> None:
        import sympy

        self.sp = sympy
        self.system, self.direction = system, direction
        self.travel = travel(system)
        self.pull, self.load = sympy.symbols("E W", positive=True)
        self.effs = {n: sympy.Symbol(_written(n), positive=True) for n in system.efficiencies}
        hand = system.hand_strand
        order = sorted(
            system.strands, key=lambda s: (s.rope != hand.rope, abs(s.index - hand.index))
        )  # numbered from the hand along its rope, then rope by rope
        numbers = {strand.index: place for place, strand in enumerate(order, 1)}
        self.strand = [
            sympy.Symbol(f"S_{{{numbers[i]}}}" if numbers[i] > 9 else f"S_{numbers[i]}")
            for i in range(len(system.strands))
        ]
        self.known: dict[Any, Any] = {}
        self.steps: list[Step] = []

    def count(self) -> Count:
        hand = self.system.hand_strand.index
        self._add("Count from the hand: the haul strand carries its pull.", self.strand[hand],
                  self.pull, "law")  # fmt: skip
        self.known[self.strand[hand]] = self.pull
        rules = [self._sheave(i) for i in range(len(self.system.sheaves))]
        rules += [self._balance(body.name) for body in self.system.free_bodies]
        while rules:
            rule = next((r for r in rules if len(self._unknown(r)) == 1), None)
            if rule is None:
                self._solve_together(rules)
                break
            self._follow(rule)
            rules.remove(rule)
        advantage = self.sp.expand(self.known[self.load] / self.pull)
        (k,) = self.sp.symbols((q.ADVANTAGE.symbol,), positive=True)
        self._add(
            "The advantage is the load over the hand's pull.", k, self.load / self.pull, "law"
        )
        self._add("The hand's pull drops out.", k, advantage, "substitute")
        self._add("So this is what the hand pulls.", self.pull, self.load / advantage, "solve")
        symbols, variables = self._named(k)
        tensions = tuple(self.sp.expand(self.known[s] / self.pull) for s in self.strand)
        return Count(
            self.system, self.direction, self.travel, tensions, advantage, tuple(self.steps),
            symbols, variables,
        )  # fmt: skip

    def _named(self, advantage: Any) -> tuple[dict[str, Any], tuple[Variable, ...]]:
        symbols = {q.LOAD.name: self.load, q.HAND_PULL.name: self.pull}
        symbols[q.ADVANTAGE.name] = advantage
        variables = [q.LOAD, q.HAND_PULL, q.ADVANTAGE]
        for name, symbol in self.effs.items():
            symbols[name] = symbol
            sheaves = [a.name for a in self.system.sheaves if a.visit.efficiency == name]
            meaning = f"efficiency of the sheave{'s' * (len(sheaves) > 1)} ({'; '.join(sheaves)})"
            variables.append(
                Variable(name, _written(name), meaning, Kind.RATIO, q.SHEAVE_EFFICIENCY.domain,
                         q.SHEAVE_EFFICIENCY.teaching)
            )  # fmt: skip
        for strand, symbol in zip(self.system.strands, self.strand, strict=True):
            name = f"strand_{strand.index}"
            symbols[name] = symbol
            variables.append(
                Variable(name, str(symbol), f"tension of {strand.name}", Kind.FORCE,
                         q.HAND_PULL.domain, Range(0, 4000, 700))
            )  # fmt: skip
        return symbols, tuple(variables)

    def _sheave(self, which: int) -> Rule:
        sheave, flow = self.system.sheaves[which], self.travel.flow[which]
        assert sheave.before is not None and sheave.after is not None
        ahead, behind = sheave.after, sheave.before
        if (flow < 0) != (self.direction is Direction.LOWERING):
            ahead, behind = behind, ahead
        s_ahead, s_behind = self.strand[ahead.index], self.strand[behind.index]
        where = f"{sheave.visit.body} ({sheave.rope})"
        if flow == 0:
            sentence = (
                f"Over {where} no rope moves; friction there may help either way. Count it as "
                "without friction."
            )
            return Rule(sentence, self._eq(s_behind, s_ahead), ((1, s_behind), (-1, s_ahead)))
        e = self.effs[sheave.visit.efficiency]
        sentence = (
            f"Over {where} the rope moves into {ahead.name}: the strand behind carries the "
            "efficiency times the strand ahead."
        )
        return Rule(sentence, self._eq(s_behind, e * s_ahead), ((1, s_behind), (-e, s_ahead)))

    def _balance(self, name: str) -> Rule:
        ways = {1: 0, -1: 0}
        terms = []
        for strand in self.system.strands:
            way = self.system.pull(strand, name)
            if way:
                symbol = self.strand[strand.index]
                ways[way] += symbol
                terms.append((way, symbol))
        if self.system.body(name).role is Role.LOAD:
            ways[1] += self.load
            terms.append((1, self.load))
        sentence = f"{name} is in balance: what pulls it one way equals what pulls it the other."
        return Rule(sentence, self._eq(ways[-1], ways[1]), tuple(terms))

    def _unknown(self, rule: Rule) -> set[Any]:
        return {symbol for _, symbol in rule.terms} - set(self.known)

    def _follow(self, rule: Rule) -> None:
        """Work out the one unknown of ``rule``."""
        (wanted,) = self._unknown(rule)
        (factor,) = (c for c, s in rule.terms if s == wanted)
        rest = sum(c * self.known[s] for c, s in rule.terms if s != wanted)
        value = self.sp.expand(-rest / factor)
        self.known[wanted] = value
        self.steps.append(Step(rule.sentence, rule.equation, "law"))
        if (wanted, value) != rule.equation.args:
            self._add("In terms of the hand's pull.", wanted, value, "substitute")

    def _solve_together(self, rules: list[Rule]) -> None:
        wanted = sorted(set().union(*(self._unknown(r) for r in rules)), key=str)
        for rule in rules:
            self.steps.append(Step(rule.sentence, rule.equation, "law"))
        sums = [sum(c * self.known.get(symbol, symbol) for c, symbol in r.terms) for r in rules]
        solutions = list(self.sp.linsolve(sums, wanted))
        for symbol, value in zip(wanted, solutions[0], strict=True):
            self.known[symbol] = self.sp.cancel(value)
            self._add("These have to be solved together.", symbol, self.known[symbol], "solve")

    def _eq(self, left: Any, right: Any) -> Any:
        return self.sp.Eq(left, right, evaluate=False)

    def _add(self, sentence: str, left: Any, right: Any, operation: str) -> None:
        self.steps.append(Step(sentence, self._eq(left, right), operation))
