"""The unit of the library: a result together with the argument that leads to it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

import numpy as np

from ropecalc import cautions as caution
from ropecalc.derivation.argument import Argument, DerivationError, Step, samples
from ropecalc.derivation.explanation import Explanation, explain_steps
from ropecalc.derivation.numeric import numpy_function
from ropecalc.derivation.variable import DomainError, Variable, as_number, as_numbers
from ropecalc.units import Display


@dataclass(frozen=True)
class Condition:
    """Something that several values must satisfy together.

    ``holds`` takes the given values by name (scalars or arrays) and returns true where the
    condition is met; ``sentence`` says what is required and ``remedy`` what to change.
    """

    sentence: str
    remedy: str
    holds: Callable[[Mapping[str, Any]], Any]


@dataclass(frozen=True)
class Derivation:
    """A result in statics: variables, assumptions, steps, and the numbers that follow.

    Calling it evaluates it (keywords, SI, scalars or arrays that broadcast)::

        >>> from ropecalc.mechanics.anchors import two_leg_anchor
        >>> from math import radians
        >>> round(two_leg_anchor(load=1000.0, leg_angle=radians(120)))
        1000

    ``argue`` builds the steps with an :class:`Argument` and returns the one that states the
    result; it runs when it is first needed, so importing a derivation does not import sympy.
    """

    name: str
    title: str
    given: tuple[Variable, ...]
    result: Variable
    argue: Callable[[Argument], Step]
    between: tuple[Variable, ...] = ()
    assumptions: tuple[str, ...] = ()
    conditions: tuple[Condition, ...] = ()
    cautions: tuple[str, ...] = caution.EVERY_RESULT
    source: str = "derived here from equilibrium"
    description: str = ""
    inverse_of: "Derivation | None" = None

    @property
    def variables(self) -> tuple[Variable, ...]:
        """Given quantities, those met on the way, and the result."""
        return (*self.given, *self.between, self.result)

    def variable(self, name: str) -> Variable:
        """The variable called ``name``; a :class:`DerivationError` lists the names if none is."""
        for variable in self.variables:
            if variable.name == name:
                return variable
        raise DerivationError(
            f"{self.name} has no quantity called {name!r}; it has "
            f"{', '.join(v.name for v in self.variables)}"
        )

    @cached_property
    def _argument(self) -> tuple[Argument, Step]:
        argument = Argument(self.variables)
        last = self.argue(argument)
        wanted = argument.symbol(self.result)
        allowed = {argument.symbol(v) for v in self.given}
        if last.equation.lhs != wanted or not last.equation.rhs.free_symbols <= allowed:
            raise DerivationError(
                f"{self.name} must end in {wanted} = something in {allowed}, not {last.equation}"
            )
        return argument, last

    @property
    def steps(self) -> tuple[Step, ...]:
        """The argument, first law to result."""
        return tuple(self._argument[0].steps)

    @property
    def expression(self) -> Any:
        """The result as a sympy expression in the given symbols."""
        return self._argument[1].equation.rhs

    def symbol(self, name: str) -> Any:
        """The sympy symbol of the variable called ``name``."""
        return self._argument[0].symbol(self.variable(name))

    @property
    def symbols(self) -> dict[str, Any]:
        """All sympy symbols by variable name."""
        return {v.name: self.symbol(v.name) for v in self.variables}

    @cached_property
    def _function(self) -> Callable[..., Any]:
        return self.numeric(self.expression)

    def numeric(self, expression: Any) -> Callable[..., Any]:
        """Any expression in the given symbols as a numpy function of the given values, in order."""
        return numpy_function([self.symbol(v.name) for v in self.given], expression)

    def __call__(self, **values: Any) -> Any:
        """Evaluate at SI values. A float for scalars, otherwise an array of the common shape.

        Raises :class:`DomainError` (a ``ValueError``) when a value or a combination of values
        lies where the result does not hold, and ``TypeError`` for missing or unknown names.
        """
        ready = self._named(values)
        for variable in self.given:
            variable.check(ready[variable.name])
        for condition in self.conditions:
            if not np.all(condition.holds(ready)):
                raise DomainError(f"{condition.sentence} {condition.remedy}")
        answer = self._evaluate(ready)
        returns = self.inverse_of is None or np.all(self._returns(ready, answer))
        if not returns or not self.result.domain.contains(answer):
            raise DomainError(self._no_answer)
        return answer

    def _no_answer(self, display: Display) -> str:
        return (
            f"{self.title}: with these values there is no {self.result.meaning} that is "
            f"{self.result.domain.describe(self.result.kind, display)}. "
            f"Change the {' or the '.join(v.meaning for v in self.given)}."
        )

    def _returns(self, ready: Mapping[str, Any], answer: Any) -> Any:
        """For a derivation turned round: where does the original, at the answer, return the given?

        True throughout for a derivation that is none.
        """
        original = self.inverse_of
        if original is None:
            return np.bool_(True)
        values = {v.name: ready.get(v.name, answer) for v in original.given}
        good: Any = np.bool_(True)
        for condition in original.conditions:
            good = good & condition.holds(values)
        if not self._proven_inverse:
            target = ready[original.result.name]
            gap = abs(original._evaluate(values) - target)
            good = good & (gap <= 1e-6 * abs(target) + 1e-8)
        return good

    @cached_property
    def _proven_inverse(self) -> bool:
        """Whether sympy proves that the original, at this result, gives back what was given.

        Where it does, no number has to be put back to find out.
        """
        from sympy import simplify

        original = self.inverse_of
        assert original is not None
        back = original.expression.subs(original.symbol(self.result.name), self.expression)
        return bool(simplify(back - original.symbol(original.result.name)) == 0)

    def valid(self, **values: Any) -> Any:
        """True where the values lie inside every domain and meet every condition."""
        ready = self._named(values)
        good: Any = np.bool_(True)
        for variable in self.given:
            good = good & variable.domain.mask(ready[variable.name])
        for condition in self.conditions:
            with np.errstate(all="ignore"):
                good = good & condition.holds(ready)
        return good

    def masked(self, **values: Any) -> "np.ma.MaskedArray[Any, Any]":
        """Evaluate on arrays, masking the points where the result does not hold.

        Points that are masked in an argument stay masked.
        """
        hidden: Any = np.bool_(False)
        for value in values.values():
            hidden = hidden | np.ma.getmaskarray(value)
        ready = self._named({name: np.ma.getdata(value) for name, value in values.items()})
        shape = np.broadcast_shapes(*(np.shape(value) for value in ready.values()))
        good = np.broadcast_to(self.valid(**ready) & ~hidden, shape)
        out = np.ma.masked_all(shape)
        if good.any():
            inside = {name: np.broadcast_to(value, shape)[good] for name, value in ready.items()}
            answer = np.asarray(self._evaluate(inside))
            fits = self.result.domain.mask(answer) & self._returns(inside, answer)
            out[good] = np.ma.masked_where(~fits, answer)
        return out

    def _evaluate(self, ready: Mapping[str, Any]) -> Any:
        arguments = [ready[v.name] for v in self.given]
        with np.errstate(all="ignore"):  # what is not finite is caught by the result's domain
            answer = self._function(*arguments)
        shape = np.broadcast_shapes(*(np.shape(a) for a in arguments))
        if shape == ():
            return float(answer)
        return answer if np.shape(answer) == shape else np.broadcast_to(answer, shape).copy()

    def _named(self, values: Mapping[str, Any]) -> dict[str, Any]:
        expected = {v.name for v in self.given}
        if set(values) != expected:
            missing, extra = sorted(expected - set(values)), sorted(set(values) - expected)
            raise TypeError(
                f"{self.name} takes {', '.join(v.name for v in self.given)}"
                + (f"; missing: {', '.join(missing)}" if missing else "")
                + (f"; unknown: {', '.join(extra)}" if extra else "")
            )
        return {name: as_numbers(name, value) for name, value in values.items()}

    def explain(self, display: Display | None = None, **values: float) -> Explanation:
        """The argument in words and mathematics; with ``values`` (SI), with those numbers in it."""
        display = display or Display()
        values = {name: as_number(name, value) for name, value in values.items()}
        result = ""
        if values:
            answer = self(**values)
            meaning = self.result.meaning
            shown = display.show(answer, self.result.kind)
            result = f"{meaning[0].upper()}{meaning[1:]}: {shown}"
        return Explanation(
            title=self.title,
            assumptions=self.assumptions,
            meanings=tuple((v.symbol, v.meaning) for v in self.variables),
            lines=explain_steps(self.steps, self.symbols, self.variables, values, display),
            result=result,
            cautions=self.cautions,
            source=self.source,
        )

    def solved_for(self, wanted: str) -> "Derivation":
        """The same argument carried one step further, to one of the given quantities.

        The branch is the one that gives back the quantity at sampled values. Raises
        :class:`DerivationError` if sympy finds no such branch; use :meth:`find` then.
        """
        target = self.variable(wanted)

        def argue(argument: Argument) -> Step:
            last = self.argue(argument)
            symbol = argument.symbol(target)
            sentence = f"Turn it round: solve for the {target.meaning}."
            try:
                candidates = argument.sympy.solve(last.equation, symbol)
            except NotImplementedError:  # sympy's word for "no method known"
                candidates = []
            for candidate in candidates:
                if self._gives_back(candidate, argument, last, target):
                    return argument.solved(sentence, symbol, candidate)
            raise DerivationError(f"{self.name}: no formula for {wanted}; use find() instead")

        return replace(
            self,
            name=f"{self.name}_for_{wanted}",
            title=f"{self.title}, solved for the {target.meaning}",
            given=(*(v for v in self.given if v.name != wanted), self.result),
            result=target,
            argue=argue,
            conditions=(),
            inverse_of=self,
        )

    def _gives_back(self, candidate: Any, argument: Argument, last: Step, target: Variable) -> bool:
        tried = False
        for point in samples(self.given):
            if not bool(np.all(self.valid(**{n: float(v) for n, v in point.items()}))):
                continue
            values = {argument.symbol(self.variable(n)): v for n, v in point.items()}
            result = last.equation.rhs.subs(values).evalf(30)
            known = {s: v for s, v in values.items() if s != argument.symbol(target)}
            back = complex(candidate.subs({**known, argument.symbol(self.result): result}))
            if abs(back - complex(point[target.name])) > 1e-9 * (1 + abs(back)):
                return False
            tried = True
        return tried

    def find(self, wanted: str, target: float, **others: float) -> float:
        """The value of a given quantity at which the result is ``target``, found numerically.

        Searches the teaching range of ``wanted``. Raises :class:`DomainError` when the target
        is not reached there, or is reached more than once (both are said in words). Where the
        result jumps across the target, as at a pole, it is not reached.
        """
        variable = self.variable(wanted)
        target = as_number(self.result.name, target)
        others = {name: as_number(name, value) for name, value in others.items()}
        grid = np.linspace(variable.teaching.low, variable.teaching.high, 2001)
        gap = self.masked(**{wanted: grid}, **others) - target
        hits = np.flatnonzero(np.ma.filled(gap == 0.0, False))
        crossings = np.flatnonzero(np.ma.filled(gap[:-1] * gap[1:] < 0.0, False))
        roots = [float(grid[at]) for at in hits]
        for at in crossings:
            roots += self._crossing(wanted, target, grid[at], grid[at + 1], others)
        times = len(roots)
        if times != 1:
            how = "nowhere" if not times else f"{times} times"
            raise DomainError(
                f"{self.title}: within the range of {variable.meaning} that is taught here the "
                f"wanted result is reached {how}. Change the wanted result or another value."
            )
        return roots[0]

    def _crossing(
        self, wanted: str, target: float, low: float, high: float, others: Mapping[str, float]
    ) -> list[float]:
        """Where the result is ``target`` between two values that lie on either side; or nowhere."""
        from scipy.optimize import brentq

        def gap(value: float) -> float:
            return float(self(**{wanted: value}, **others)) - target

        try:
            root: float = brentq(gap, low, high)
            left = abs(gap(root))
        except DomainError:  # between the two there is no result at all
            return []
        step = max(abs(gap(low)), abs(gap(high)))  # a smooth result leaves next to nothing of it
        return [root] if left <= 1e-6 * max(step, abs(target)) else []


def derive(
    title: str,
    *,
    given: tuple[Variable, ...],
    result: Variable,
    between: tuple[Variable, ...] = (),
    assumptions: tuple[str, ...] = (),
    conditions: tuple[Condition, ...] = (),
    cautions: tuple[str, ...] = caution.EVERY_RESULT,
    source: str = "derived here from equilibrium",
) -> Callable[[Callable[[Argument], Step]], Derivation]:
    """Make a :class:`Derivation` from a function that argues it; its docstring is kept."""

    def wrap(argue: Callable[[Argument], Step]) -> Derivation:
        return Derivation(
            name=argue.__name__,
            title=title,
            given=given,
            result=result,
            argue=argue,
            between=between,
            assumptions=assumptions,
            conditions=conditions,
            cautions=cautions,
            source=source,
            description=(argue.__doc__ or "").strip(),
        )

    return wrap
