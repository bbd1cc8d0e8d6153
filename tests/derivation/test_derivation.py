"""A derivation as an object: when it is argued, what it refuses, how it is turned round."""

import dataclasses
import math
from typing import Any

import numpy as np
import pytest

from ropecalc.derivation import (
    Argument,
    Condition,
    Derivation,
    DerivationError,
    Domain,
    DomainError,
    Step,
    derive,
)
from ropecalc.mechanics import anchors, guiding, vectors
from tests.derivation.toys import DEPTH, DIAGONAL, LEAN, PULL, REST, SHARE, SHIFT, TURNED, WIDTH


@derive("Diagonal of a plate", given=(WIDTH, DEPTH), result=DIAGONAL)
def diagonal(argument: Argument) -> Step:
    """Pythagoras, with a root to choose."""
    w, d, g = argument.symbols(WIDTH, DEPTH, DIAGONAL)
    return argument.solve("Root.", argument.law("Pythagoras.", g**2, w**2 + d**2), g)


@derive(
    "What is left over",
    given=(WIDTH, DEPTH),
    result=REST,
    conditions=(Condition("Not square.", "Change one side.", lambda v: v["width"] != v["depth"]),),
)
def rest(argument: Argument) -> Step:
    """Width less depth; negative results lie outside the domain of the result."""
    w, d, r = argument.symbols(WIDTH, DEPTH, REST)
    return argument.law("Take away.", r, w - d)


def test_calling_and_its_docstring() -> None:
    assert diagonal(width=3.0, depth=4.0) == 5.0
    assert diagonal.name == "diagonal" and diagonal.title == "Diagonal of a plate"
    assert diagonal.description == "Pythagoras, with a root to choose."


def test_it_is_argued_once_and_only_when_needed() -> None:
    calls = []

    def argue(argument: Argument) -> Step:
        calls.append(1)
        return argument.law("Given.", argument.symbol(REST), argument.symbol(WIDTH))

    lazy = Derivation("lazy", "Lazy", given=(WIDTH,), result=REST, argue=argue)
    assert lazy.variables == (WIDTH, REST) and calls == []
    for _ in range(3):
        assert lazy(width=2.0) == 2.0 and len(lazy.steps) == 1
    assert calls == [1]


def test_it_cannot_be_changed() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        diagonal.title = "Another"  # type: ignore[misc]
    assert hash(diagonal) == hash(diagonal)


def test_it_must_end_in_its_result() -> None:
    def stops_early(argument: Argument) -> Step:
        w, d, _ = argument.symbols(WIDTH, DEPTH, REST)
        return argument.law("Not the result.", w, d)

    def keeps_an_unknown(argument: Argument) -> Step:
        return argument.law("Unknown kept.", argument.symbol(REST), argument.symbol(DEPTH))

    for argue in (stops_early, keeps_an_unknown):
        bad = Derivation("bad", "Bad", given=(WIDTH,), between=(DEPTH,), result=REST, argue=argue)
        with pytest.raises(DerivationError, match="bad must end in r = something in"):
            bad(width=1.0)


def test_a_result_outside_its_domain_is_refused_in_words() -> None:
    assert rest(width=3.0, depth=1.0) == 2.0
    with pytest.raises(DomainError) as refusal:
        rest(width=1.0, depth=3.0)
    assert str(refusal.value) == (
        "What is left over: with these values there is no what is left over that is "
        "at least 0 m. Change the width of the plate or the depth of the plate."
    )
    with pytest.raises(DomainError):
        rest(width=np.array([3.0, 1.0]), depth=2.0)
    assert rest.masked(width=np.array([3.0, 1.0]), depth=2.0).tolist() == [1.0, None]


def test_a_condition_is_refused_with_its_remedy_and_masked() -> None:
    with pytest.raises(DomainError, match=r"^Not square\. Change one side\.$"):
        rest(width=np.array([1.0, 2.0]), depth=np.array([0.5, 2.0]))
    sides = np.array([2.0, 3.0, 4.0])
    assert rest.valid(width=sides, depth=3.0).tolist() == [True, False, True]
    assert rest.masked(width=sides, depth=3.0).tolist() == [None, None, 1.0]


def test_masked_single_values_and_nothing_valid() -> None:
    assert rest.masked(width=3.0, depth=1.0).item() == 2.0
    assert np.ma.getmaskarray(rest.masked(width=math.nan, depth=1.0)).all()
    assert np.ma.getmaskarray(rest.masked(width=[-1.0, -2.0], depth=1.0)).all()


def test_a_constant_result_takes_the_shape_of_what_is_given() -> None:
    @derive("Constant", given=(WIDTH,), result=REST)
    def constant(argument: Argument) -> Step:
        return argument.law("Always two.", argument.symbol(REST), argument.sympy.Integer(2))

    assert constant(width=1.0) == 2.0
    table = constant(width=np.ones((2, 3)))
    assert table.shape == (2, 3) and (table == 2.0).all()
    table[0, 0] = 7.0  # its own memory, not a view of one number
    assert table.sum() == 17.0


def test_other_expressions_in_the_same_quantities() -> None:
    w, d = diagonal.symbol("width"), diagonal.symbol("depth")
    assert diagonal.numeric(w + d)(3.0, 4.0) == 7.0
    assert set(diagonal.symbols) == {"width", "depth", "diagonal"}
    with pytest.raises(DerivationError, match="has no quantity called 'height'; it has width, d"):
        diagonal.variable("height")


# --- turned round ----------------------------------------------------------------------------


def test_turned_round_on_the_right_branch() -> None:
    width = diagonal.solved_for("width")
    assert width(depth=4.0, diagonal=5.0) == pytest.approx(3.0)
    assert width.name == "diagonal_for_width" and width.result is WIDTH
    assert [v.name for v in width.given] == ["depth", "diagonal"]
    assert width.steps[:-1] == diagonal.steps
    with pytest.raises(DomainError, match="there is no width of the plate"):
        width(depth=4.0, diagonal=3.0)
    mixed = width.masked(depth=4.0, diagonal=np.array([5.0, 3.0, 4.0]))
    assert mixed[0] == pytest.approx(3.0) and mixed[1] is np.ma.masked and mixed[2] is np.ma.masked


def test_turned_round_obeys_the_conditions_of_the_original() -> None:
    width = rest.solved_for("width")
    assert width(depth=2.0, rest=1.0) == 3.0
    with pytest.raises(DomainError):
        width(depth=2.0, rest=0.0)  # square, which the original refuses
    assert width.masked(depth=2.0, rest=np.array([0.0, 1.0])).tolist() == [None, 3.0]


def test_turned_round_where_no_branch_can_be_proved() -> None:
    impossible = dataclasses.replace(
        rest, conditions=(Condition("Never.", "-", lambda v: v["width"] < 0),)
    )
    with pytest.raises(DerivationError, match="use find"):
        impossible.solved_for("width")(depth=1.0, rest=1.0)


def test_turned_round_where_there_is_no_formula() -> None:
    @derive("No formula", given=(TURNED,), result=SHIFT)
    def transcendental(argument: Argument) -> Step:
        t, s = argument.symbols(TURNED, SHIFT)
        return argument.law("Mixed.", s, t + argument.sympy.cos(t) * t**2)

    with pytest.raises(DerivationError, match="no formula for turned; use find"):
        transcendental.solved_for("turned")(shift=1.0)
    target = transcendental(turned=0.7)
    assert transcendental.find("turned", target) == pytest.approx(0.7, rel=1e-9)


CASES: list[tuple[Derivation, str, dict[str, float]]] = [
    (anchors.two_leg_anchor, "leg_angle", {"load": 2000.0, "leg_angle": 1.3}),
    (anchors.two_leg_anchor, "load", {"load": 2000.0, "leg_angle": 1.3}),
    (anchors.two_leg_ratio, "leg_angle", {"leg_angle": 2.0}),
    (vectors.side_pull_angle, "side_pull", {"load": 2000.0, "side_pull": 400.0}),
    (vectors.side_pull_tension, "side_pull", {"load": 2000.0, "side_pull": 400.0}),
    (vectors.weight, "mass", {"mass": 180.0}),
    (guiding.attendant_push, "drop", {"load": 2000.0, "off_plumb": 1.5, "drop": 7.0}),
    (guiding.attendant_haul_tension, "off_plumb", {"load": 2000.0, "off_plumb": 1.5, "drop": 7.0}),
    (
        guiding.tag_tension,
        "load",
        {"load": 2000.0, "haul_elevation": 1.1, "ground_depression": 0.4},
    ),
    (guiding.hub_limit, "x", {"x": 2.0, "z": 20.0, "x_D": 0.3, "z_D": 32.0, "z_B": 0.5}),
    (guiding.litter_angle, "haul_elevation", {"haul_elevation": 1.1, "ground_depression": 0.4}),
]


@pytest.mark.parametrize(("derivation", "name", "point"), CASES)
def test_turning_round_gives_back(
    derivation: Derivation, name: str, point: dict[str, float]
) -> None:
    target = derivation(**point)
    others = {n: v for n, v in point.items() if n != name}
    turned = derivation.solved_for(name)
    assert turned(**others, **{derivation.result.name: target}) == pytest.approx(
        point[name], rel=1e-9
    )
    assert turned.explain(**others, **{derivation.result.name: target}).result
    assert derivation.find(name, target, **others) == pytest.approx(point[name], rel=1e-6)


# --- searching -------------------------------------------------------------------------------


@derive("A hump", given=(LEAN,), result=SHIFT)
def hump(argument: Argument) -> Step:
    """Rises and falls, so most values are reached twice."""
    lean, shift = argument.symbols(LEAN, SHIFT)
    return argument.law("Sine.", shift, argument.sympy.sin(lean))


def test_a_target_reached_twice_or_never_is_said_so() -> None:
    with pytest.raises(DomainError, match="reached 2 times"):
        hump.find("lean", 0.5)
    with pytest.raises(DomainError, match="reached nowhere"):
        hump.find("lean", 1.5)
    with pytest.raises(DomainError, match="reached nowhere"):
        hump.find("lean", math.nan)
    assert hump.find("lean", 0.12) == pytest.approx(math.asin(0.12))


def test_a_jump_across_the_target_is_not_the_target() -> None:
    @derive("A pole", given=(LEAN,), result=SHIFT)
    def tangent(argument: Argument) -> Step:
        return argument.law(
            "Tangent.", argument.symbol(SHIFT), argument.sympy.tan(*argument.symbols(LEAN))
        )

    for target in (0.5, -0.5, 40.0, 0.12):
        assert tangent.find("lean", target) == pytest.approx(math.atan(target) % math.pi)

    @derive("Two branches", given=(SHARE,), result=SHIFT)
    def hyperbola(argument: Argument) -> Step:
        share, shift = argument.symbols(SHARE, SHIFT)
        return argument.law("One over.", shift, 1 / (3 * share - 1))

    with pytest.raises(DomainError, match="reached nowhere"):
        hyperbola.find("share", 0.0)


def test_a_target_exactly_on_the_search_grid_counts_once() -> None:
    @derive("Itself", given=(SHARE,), result=REST)
    def itself(argument: Argument) -> Step:
        return argument.law("The same.", argument.symbol(REST), argument.symbol(SHARE))

    for target in (0.0, 0.25, 0.5, 1.0, 0.3):
        assert itself.find("share", target) == pytest.approx(target, abs=1e-12)


def test_the_other_values_are_checked_in_a_search() -> None:
    with pytest.raises(TypeError, match="missing: depth"):
        diagonal.find("width", 5.0)
    with pytest.raises(DomainError, match="reached nowhere"):
        diagonal.find("width", 5.0, depth=-1.0)


def test_a_search_does_not_step_over_what_is_refused() -> None:
    # tag tension grows without limit towards the straight line and is refused beyond it
    found = guiding.tag_tension.find(
        "ground_depression", 6000.0, load=2000.0, haul_elevation=math.radians(46.0)
    )
    assert found < math.radians(46.0)
    assert guiding.tag_tension(
        load=2000.0, haul_elevation=math.radians(46.0), ground_depression=found
    ) == pytest.approx(6000.0)


def test_domains_of_toys_are_what_the_tests_say() -> None:
    assert Domain(0, 1) == SHARE.domain
    assert PULL.domain.low_open
    values: dict[str, Any] = {"width": 1.0, "depth": 1.0}
    assert diagonal(**values) == math.sqrt(2)
