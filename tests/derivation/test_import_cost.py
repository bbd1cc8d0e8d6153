"""Loading the library stays cheap: sympy comes with the first derivation that is used."""

import subprocess
import sys

import pytest

IMPORT_ALL = """
import importlib, pkgutil, sys
import ropecalc.mechanics
for module in pkgutil.walk_packages(ropecalc.mechanics.__path__, "ropecalc.mechanics."):
    importlib.import_module(module.name)
"""


def run(code: str) -> str:
    return subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    ).stdout


def loaded_after(code: str) -> set[str]:
    return set(run(code + "\nimport sys; print(*sys.modules)").split())


@pytest.mark.parametrize("unwanted", ["sympy", "scipy", "matplotlib", "ipywidgets", "IPython"])
def test_importing_all_mechanics_loads_nothing_heavy(unwanted: str) -> None:
    loaded = loaded_after(IMPORT_ALL)
    assert "ropecalc.mechanics.guiding" in loaded
    assert unwanted not in loaded


def test_importing_the_package_loads_nothing_of_it() -> None:
    loaded = loaded_after("import ropecalc; assert ropecalc.__version__")
    assert not loaded & {"numpy", "sympy", "matplotlib", "ipywidgets", "ropecalc.units"}


def test_the_first_use_brings_sympy() -> None:
    code = """
from ropecalc.mechanics.anchors import critical_leg_angle, two_leg_anchor
import sys
two_leg_anchor.variables, two_leg_anchor.title, critical_leg_angle.given
assert "sympy" not in sys.modules
print(two_leg_anchor(load=1000.0, leg_angle=0.0))
assert "sympy" in sys.modules
"""
    assert run(code) == "500.0\n"


def test_values_are_refused_before_anything_is_derived() -> None:
    code = """
from ropecalc.mechanics.anchors import two_leg_anchor
import sys
for bad in ({"load": -1.0, "leg_angle": 1.0}, {"load": 1.0}):
    try:
        two_leg_anchor(**bad)
    except (ValueError, TypeError) as refusal:
        print(type(refusal).__name__)
assert "sympy" not in sys.modules
"""
    assert run(code).split() == ["DomainError", "TypeError"]


def test_the_same_argument_in_a_fresh_process() -> None:
    code = """
from ropecalc.mechanics.guiding import haul_tension_with_track_apart as d
print(*(step.equation for step in d.steps), sep="\\n")
"""
    assert run(code) == run(code)
