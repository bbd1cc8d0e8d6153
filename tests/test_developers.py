"""DEVELOPERS.md lists every derivation with its parameters, as the code has them."""

import importlib
import pkgutil
from pathlib import Path

import ropecalc.mechanics
from ropecalc.derivation import Derivation

_TEXT = (Path(__file__).parent.parent / "DEVELOPERS.md").read_text(encoding="utf-8")


def listed_rows() -> list[str]:
    """One table row for each derivation that a mechanics module defines."""
    rows = []
    for module in pkgutil.walk_packages(ropecalc.mechanics.__path__, "ropecalc.mechanics."):
        contents = vars(importlib.import_module(module.name))
        for name, thing in contents.items():
            if isinstance(thing, Derivation):
                given = ", ".join(v.name for v in thing.given)
                short = module.name.removeprefix("ropecalc.mechanics.")
                rows.append(f"| `{short}.{name}({given})` | {thing.result.name} |")
    return rows


def test_every_derivation_is_listed_with_its_parameters() -> None:
    missing = [row for row in listed_rows() if row not in _TEXT]
    assert not missing, "add to DEVELOPERS.md:\n" + "\n".join(missing)
