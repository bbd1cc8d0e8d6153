"""Whatever the library hands out cannot be changed behind its back."""

import dataclasses
import importlib
import inspect
import pkgutil

import pytest

import ropecalc.derivation
import ropecalc.mechanics


def _dataclasses() -> dict[str, type]:
    """Every public dataclass of the derivations and the mechanics, under its module's name."""
    found = {}
    for package in (ropecalc.derivation, ropecalc.mechanics):
        for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
            for name, thing in vars(importlib.import_module(module.name)).items():
                own = inspect.isclass(thing) and thing.__module__ == module.name
                if own and dataclasses.is_dataclass(thing) and not name.startswith("_"):
                    found[f"{module.name.split('.', 2)[2]}.{name}"] = thing
    return found


FOUND = _dataclasses()


def test_there_is_something_to_test() -> None:
    assert {"variable.Variable", "derivation.Derivation", "holding.Rig"} <= set(FOUND)


@pytest.mark.parametrize("kind", FOUND.values(), ids=FOUND.keys())
def test_every_dataclass_is_frozen(kind: type) -> None:
    assert kind.__dataclass_params__.frozen  # type: ignore[attr-defined]
