"""What it costs to count and explain a pulley system, over `sympy.solve` on the same equations.

Run as a plain script; it prints ratios and asserts nothing about time. Cold means: the system is
built and checked, its travel and tensions are worked out, and the whole count is explained with
numbers, all anew each time, against nothing but sympy's general solver on equations that lie ready.
(sympy's own cache is emptied before each run of either.) Answers are compared before anything is
timed.
"""

import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import sympy
from sympy.core.cache import clear_cache

sys.path.insert(0, str(Path(__file__).parents[2]))

from ropecalc.mechanics.pulleys import (
    System,
    common_system,
    common_systems,
    count_tensions,
    forces,
    series_tensioner_system,
)

REPEATS = 7
LOAD, EFFICIENCY = 2000.0, 0.9

BUILDERS: dict[str, Callable[[], System]] = {
    name: lambda name=name: common_system(name, redirect=True)  # type: ignore[misc]
    for name in (*common_systems(), "simple 10:1", "5:1 on 5:1")
} | {
    f"series tensioner on {n} lines": lambda n=n: series_tensioner_system(n)  # type: ignore[misc]
    for n in (2, 4)
}


def counted(build: Callable[[], System]) -> None:
    """Build, check, count and explain with numbers."""
    count_tensions(build(), "hauling").explain(load=LOAD, efficiency=EFFICIENCY)


def equations_of(system: System) -> tuple[list[Any], list[Any]]:
    """The laws that the count states, and the unknowns in them."""
    count = count_tensions(system, "hauling")
    laws = [step.equation for step in count.steps if step.operation == "law"]
    given = {count.symbols[n] for n in (*system.efficiencies, "hand_pull")}
    unknown = sorted({s for e in laws for s in e.free_symbols} - given, key=str)
    return laws, unknown


def seconds(call: Callable[[], Any]) -> float:
    """Wall time of one call with sympy's cache empty."""
    clear_cache()
    start = time.perf_counter()
    call()
    return time.perf_counter() - start


def main() -> None:
    """One line for each system, then the spread."""
    print(f"{'count and explain / sympy.solve, from cold':44}{'min':>7}{'median':>8}{'ms':>8}")
    medians = []
    for name, build in BUILDERS.items():
        laws, unknown = equations_of(build())
        solution = sympy.solve(laws, unknown, dict=True)[0]
        count = count_tensions(build(), "hauling")
        advantage = solution[count.symbols["advantage"]]
        assert sympy.simplify(advantage - count.advantage) == 0, name
        pairs = []
        for _ in range(REPEATS):  # in turn, so that whatever else runs hits both
            own = seconds(lambda b=build: counted(b))  # type: ignore[misc]
            general = seconds(lambda e=laws, u=unknown: sympy.solve(e, u, dict=True))  # type: ignore[misc]
            pairs.append((own, general))
        own_times, general_times = zip(*pairs, strict=True)
        least = min(own_times) / min(general_times)
        median = statistics.median(own_times) / statistics.median(general_times)
        medians.append(median)
        print(f"{name:44}{least:7.2f}{median:8.2f}{1000 * min(own_times):8.1f}")
    print(f"{'largest':44}{'':7}{max(medians):8.2f}")
    print(f"{'middle':44}{'':7}{statistics.median(medians):8.2f}")

    print("\nnumbers only (forces), ms")
    for name, build in BUILDERS.items():
        system = build()
        for way in ("hauling", "holding"):
            if way == "holding" and len(system.sheaves) > 10:
                continue
            times = [
                seconds(lambda s=system, w=way: forces(s, w, load=LOAD, efficiency=EFFICIENCY))  # type: ignore[misc]
                for _ in range(REPEATS)
            ]
            print(f"  {name:42}{way:10}{1000 * min(times):8.2f}")


if __name__ == "__main__":
    main()
