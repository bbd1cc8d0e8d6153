"""One symbol, one name, one meaning, through the whole library."""

import importlib
import pkgutil

import ropecalc.mechanics
from ropecalc.derivation import Variable


def quantities() -> set[Variable]:
    found = set()
    for module in pkgutil.walk_packages(ropecalc.mechanics.__path__, "ropecalc.mechanics."):
        contents = vars(importlib.import_module(module.name)).values()
        found |= {thing for thing in contents if isinstance(thing, Variable)}
    return found


def test_no_two_quantities_share_a_symbol() -> None:
    """A solver may narrow a meaning ("the load of this line"); the symbol stays with its name."""
    names: dict[str, set[str]] = {}
    for quantity in quantities():
        names.setdefault(quantity.symbol, set()).add(quantity.name)
    assert {symbol: used for symbol, used in names.items() if len(used) > 1} == {}
