"""A short argument: laws first, then operations that sympy carries out.

A step cannot be wrong on its own: apart from the physical laws at the start, no equation is
written down. Each is obtained from earlier ones by a recorded operation, and where an author
wants a neater form (:meth:`Argument.rewrite`), sympy has to confirm that it is the same.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from ropecalc.derivation.variable import Variable

_PROOF_DIGITS = 30


class DerivationError(ValueError):
    """An argument does not lead where its author says it does."""


@dataclass(frozen=True)
class Step:
    """One line of an argument: a sentence, an equation (``sympy.Eq``) and how it was obtained.

    ``operation`` is ``"law"`` for what is taken from physics or geometry and otherwise names
    what sympy did.
    """

    sentence: str
    equation: Any
    operation: str


class Argument:
    """Collects the steps of one derivation. Used only while a derivation is being carried out."""

    def __init__(self, variables: Sequence[Variable]) -> None:
        import sympy

        self.sympy = sympy
        self.variables = tuple(variables)
        self._symbols = {v.name: _symbol(v) for v in variables}
        if len({v.symbol for v in variables}) < len(self._symbols):
            names = ", ".join(f"{v.name} {v.symbol}" for v in variables)
            raise DerivationError(f"two quantities share a symbol: {names}")
        self.steps: list[Step] = []

    def symbol(self, variable: Variable) -> Any:
        """The sympy symbol of ``variable``."""
        return self._symbols[variable.name]

    def symbols(self, *variables: Variable) -> tuple[Any, ...]:
        """The sympy symbols of several variables, in order."""
        return tuple(self.symbol(v) for v in variables)

    def law(self, sentence: str, left: Any, right: Any) -> Step:
        """State a physical law or a geometrical fact: ``left = right``."""
        return self._add(sentence, left, right, "law")

    def solve(self, sentence: str, step: Step, wanted: Any) -> Step:
        """Solve ``step`` for the symbol ``wanted``, on the branch that lies in its domain."""
        solutions = self.sympy.solve(step.equation, wanted)
        return self._add(sentence, wanted, self._branch(wanted, solutions), "solve")

    def solved(self, sentence: str, wanted: Any, solution: Any) -> Step:
        """Record a solution whose branch the caller has already chosen among sympy's."""
        return self._add(sentence, wanted, solution, "solve")

    def solve_together(self, sentence: str, steps: Sequence[Step], *wanted: Any) -> list[Step]:
        """Solve several steps at once for as many symbols; one new step each."""
        solutions = self.sympy.solve([s.equation for s in steps], list(wanted), dict=True)
        if len(solutions) != 1:
            raise DerivationError(f"expected one joint solution, sympy found {len(solutions)}")
        return [self._add(sentence, w, solutions[0][w], "solve together") for w in wanted]

    def substitute(self, sentence: str, step: Step, *known: Step) -> Step:
        """Put earlier results (each ``symbol = expression``) into ``step``."""
        for k in known:
            if not k.equation.lhs.is_Symbol:
                raise DerivationError(f"only 'symbol = expression' can be put in, not {k.equation}")
        values = [(k.equation.lhs, k.equation.rhs) for k in known]
        left, right = (side.subs(values) for side in step.equation.args)
        return self._add(sentence, left, right, "substitute")

    def combine(
        self, sentence: str, operation: Callable[..., Any], *steps: Step, called: str = "combine"
    ) -> Step:
        """Do the same to both sides: ``operation(left sides) = operation(right sides)``.

        Covers adding, subtracting, dividing, squaring: what holds for equals holds for the
        same function of equals.
        """
        left = operation(*(s.equation.lhs for s in steps))
        right = operation(*(s.equation.rhs for s in steps))
        return self._add(sentence, left, right, called)

    def differentiate(self, sentence: str, step: Step, by: Any, name: Any) -> Step:
        """The derivative of a ``symbol = expression`` step, given the symbol ``name``."""
        return self._add(sentence, name, self.sympy.diff(step.equation.rhs, by), "differentiate")

    def apply(self, sentence: str, step: Step, operation: Callable[[Any], Any]) -> Step:
        """Apply one sympy operation (``expand``, ``trigsimp``, ...) to the right-hand side."""
        name = getattr(operation, "__name__", "transform")
        result = operation(step.equation.rhs)
        self._must_equal(step.equation.rhs, result)
        return self._add(sentence, step.equation.lhs, result, name)

    def rewrite(self, sentence: str, step: Step, right: Any = None, *, left: Any = None) -> Step:
        """Write one side or both in another form; refused unless sympy finds them the same."""
        old_left, old_right = step.equation.args
        new_left = old_left if left is None else self.sympy.sympify(left)
        new_right = old_right if right is None else self.sympy.sympify(right)
        self._must_equal(old_left, new_left)
        self._must_equal(old_right, new_right)
        if (new_left, new_right) == (old_left, old_right):
            return step  # sympy had already put it this way
        return self._add(sentence, new_left, new_right, "rewrite")

    def _add(self, sentence: str, left: Any, right: Any, operation: str) -> Step:
        equation = self.sympy.Eq(left, right, evaluate=False)
        step = Step(sentence, equation, operation)
        self.steps.append(step)
        return step

    def _branch(self, wanted: Any, solutions: Sequence[Any]) -> Any:
        """The one solution that stays inside the domain of ``wanted`` over the teaching range."""
        variable = next(v for v in self.variables if self._symbols[v.name] == wanted)
        inside, tried = list(solutions), False
        for point in samples(self.variables):
            values = {self._symbols[name]: value for name, value in point.items()}
            kept = [s for s in inside if _lies_in(variable, s.subs(values))]
            if kept:  # otherwise these values do not go together and say nothing
                inside, tried = kept, True
        if not tried or len(inside) != 1:
            count = len(inside) if tried else 0
            raise DerivationError(f"{wanted}: {count} of {solutions} suit its domain")
        return inside[0]

    def _must_equal(self, one: Any, other: Any) -> None:
        difference = one - other
        for point in samples(self.variables):
            values = {self._symbols[name]: value for name, value in point.items()}
            size = abs(one.subs(values).evalf(_PROOF_DIGITS))
            gap = abs(difference.subs(values).evalf(_PROOF_DIGITS, maxn=200))
            allowed = (1 + size) * self.sympy.Float(10) ** (10 - _PROOF_DIGITS)
            if not (gap.is_number and gap.is_finite and gap <= allowed):
                raise DerivationError(f"not the same: {one} and {other}")


def samples(variables: Sequence[Variable], count: int = 5) -> list[dict[str, Any]]:
    """``count`` well-spread points of the teaching ranges, as exact rationals.

    The points are those of an additive recurrence with square roots of primes, so any number
    of variables gets fractions that are in no simple relation to each other.
    """
    from sympy import Rational, prime

    def fraction(index: int, which: int) -> float:
        return float((0.5 + index * float(prime(which + 1)) ** 0.5) % 1.0)

    return [
        {
            v.name: Rational(
                f"{v.teaching.low + (v.teaching.high - v.teaching.low) * fraction(i, j):.12g}"
            )
            for j, v in enumerate(variables)
        }
        for i in range(1, count + 1)
    ]


def _symbol(variable: Variable) -> Any:
    from sympy import Symbol

    low = variable.domain.low
    if low > 0 or (low == 0 and variable.domain.low_open):
        return Symbol(variable.symbol, positive=True)
    return (
        Symbol(variable.symbol, nonnegative=True)
        if low == 0
        else Symbol(variable.symbol, real=True)
    )


def _lies_in(variable: Variable, value: Any) -> bool:
    if not value.is_number or not value.is_finite:
        return False
    number = complex(value)
    return abs(number.imag) < 1e-9 and variable.domain.contains(number.real)
