"""Results as arguments: variables, laws, steps that sympy carries out, and their explanation."""

from ropecalc.derivation.argument import Argument, DerivationError, Step, samples
from ropecalc.derivation.derivation import Condition, Derivation, derive
from ropecalc.derivation.explanation import Explanation, Line
from ropecalc.derivation.variable import (
    ANY,
    NOT_NEGATIVE,
    POSITIVE,
    Domain,
    DomainError,
    Range,
    Variable,
    as_number,
    as_numbers,
)

__all__ = [
    "ANY",
    "NOT_NEGATIVE",
    "POSITIVE",
    "Argument",
    "Condition",
    "Derivation",
    "DerivationError",
    "Domain",
    "DomainError",
    "Explanation",
    "Line",
    "Range",
    "Step",
    "Variable",
    "as_number",
    "as_numbers",
    "derive",
    "samples",
]
