"""Every derivation of the mechanics, found rather than listed, and places to try it at."""

import importlib
import pkgutil
from typing import Any

import numpy as np

import ropecalc.mechanics
from ropecalc.derivation import Derivation


def _find() -> dict[str, Derivation]:
    found: dict[str, Derivation] = {}
    for module in pkgutil.walk_packages(ropecalc.mechanics.__path__, "ropecalc.mechanics."):
        for name, value in vars(importlib.import_module(module.name)).items():
            if isinstance(value, Derivation) and value not in found.values():
                found[f"{module.name.removeprefix('ropecalc.mechanics.')}.{name}"] = value
    return found


EVERY = _find()


def draw(
    derivation: Derivation, count: int, seed: int = 1, stretch: float = 0.0
) -> dict[str, np.ndarray[Any, Any]]:
    """Values of what is given, as arrays: uniform over the teaching ranges.

    ``stretch`` widens every range by that share of itself at both ends, to reach what a
    derivation must refuse. Without it only points that lie in every domain are kept.
    """
    rng = np.random.default_rng(seed)
    drawn = {}
    for variable in derivation.given:
        low, high = variable.teaching.low, variable.teaching.high
        more = stretch * (high - low)
        drawn[variable.name] = rng.uniform(low - more, high + more, size=20 * count)
    keep = np.ones(20 * count, bool) if stretch else derivation.valid(**drawn)
    return {name: values[keep][:count] for name, values in drawn.items()}


def points(values: dict[str, Any]) -> list[dict[str, float]]:
    """The same values one point at a time."""
    count = len(next(iter(values.values())))
    return [{name: float(column[i]) for name, column in values.items()} for i in range(count)]
