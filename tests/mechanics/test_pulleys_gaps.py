"""A redirect at an angle that stands between two sheaves, where neither side is the hand's pull."""

import itertools
import math
import re

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.pulleys import (
    Body,
    Role,
    Rope,
    System,
    common_system,
    count_tensions,
    forces,
    over,
    plan_throws,
    room,
    series_tensioner_system,
    tied,
    travel,
)


def test_a_connector_between_two_sheaves_carries_the_sum_of_its_own_strands() -> None:
    angle, e = 1.1, 0.8
    system = System(
        name="two redirects",
        bodies=(
            Body("load", Role.LOAD, 10.0),
            Body("edge", Role.ANCHOR, 0.0),
            Body("far", Role.ANCHOR, 12.0),
            Body("hand", Role.HAND, 2.0),
        ),
        ropes=(Rope("rope", (tied("load"), over("edge", angle=angle), over("far"), tied("hand"))),),
    )
    counted = count_tensions(system, "hauling")
    which = next(
        i for i, a in enumerate(system.attachments) if a.visit.body == "edge" and a.visit.angle
    )
    pull = float(counted.connector(which).subs(counted.symbols["eta"], e))
    behind, ahead = e * e, e  # in units of the hand's pull, each sheave passes on its efficiency
    sides = behind + ahead * math.cos(angle), ahead * math.sin(angle)
    assert pull == pytest.approx(math.hypot(*sides))


def test_where_bodies_are_when_no_length_is_given() -> None:
    """30 m of height, 4 m of throw, a gap of 1 m; travelling pulleys 6 m from the hub."""
    compound = {body.name: body.station for body in common_system("6:1").bodies}
    assert compound == {
        "load": 34.0, "anchor 1": 0.0, "traveller 1": 4.0, "anchor 2": -5.0, "traveller 2": -1.0,
        "hand": -6.0,
    }  # fmt: skip
    assert room(common_system("3:1"), clear=0.5).rise == pytest.approx(3.5)
    tensioner = {body.name: body.station for body in series_tensioner_system(1).bodies}
    assert tensioner == {"hub": 0.0, "load": 36.0, "travelling pulley 1": 6.0, "device": -1.0}


def test_one_to_one_is_a_rope_and_nothing_else() -> None:
    plain = common_system("1:1")
    assert [body.name for body in plain.bodies] == ["load", "hand"]
    assert not plain.sheaves and travel(plain).ratio == 1
    turned = common_system("1:1", redirect=True)
    assert [body.name for body in turned.bodies] == ["load", "anchor", "hand"]
    assert len(turned.sheaves) == 1 and travel(turned).ratio == 1
    assert turned.name == "1:1 with a redirect"


@pytest.mark.parametrize(
    "name", ["simple 0:1", "simple 11:1", "1:1 on 3:1", "3:1 on 1:1", "10:1 on 2:1", "3:1 on 3", ""]
)
def test_names_that_nearly_are_one(name: str) -> None:
    with pytest.raises(DomainError, match="is not the name of a common system; known are"):
        common_system(name)


def test_play_and_height_of_a_tensioner_are_lengths() -> None:
    for name, words in (("play", "travelling pulley from the hub"), ("height", "of the load")):
        with pytest.raises(DomainError, match=words):
            series_tensioner_system(2, **{name: 0.0})


def test_strands_from_the_tenth_on_and_a_single_sheave_are_written_well() -> None:
    long = count_tensions(common_system("simple 10:1"), "hauling").explain()
    latex = " ".join(line.latex for line in long.lines)
    assert "S_{10}" in latex and "S_{9}" in latex
    one = count_tensions(common_system("2:1"), "hauling").explain()
    assert (r"\eta", "efficiency of the sheave (haul rope over traveller)") in one.meanings


def test_a_throw_of_nothing_but_time() -> None:
    values = {"height": 30.0, "rise": 4.0, "reset_loss": 0.4, "ratio": 3.0, "reset_time": 0.0}
    told = plan_throws(hand_speed=0.3, **values)
    assert [line.is_law for line in told.explain().lines] == [True, False, False, False, False]
    assert told.time == pytest.approx(332.0)
    varied = plan_throws(hand_speed=np.array([0.3, 0.6]), **values)
    assert varied.time.tolist() == pytest.approx([332.0, 166.0]) and varied.throws == 9.0
    with pytest.raises(DomainError, match="single numbers, not arrays"):
        varied.explain()


def test_forces_for_arrays_of_efficiencies_do_not_explain_themselves() -> None:
    system = common_system("3:1")
    for values in (
        {"load": 1000.0, "efficiency": np.array([0.8, 0.9])},
        {"load": np.array([1000.0, 2000.0]), "efficiency": 0.9},
    ):
        with pytest.raises(DomainError, match="single numbers, not arrays"):
            forces(system, "hauling", **values).explain()


def test_forces_of_one_case_are_plain_numbers() -> None:
    found = forces(common_system("3:1"), "hauling", load=2000.0, efficiency=0.9)
    bands = [found.hand_pull]
    for named in (found.strands, found.connectors, found.anchors, found.grabs):
        bands += named.values()
    assert {type(end) for band in bands for end in (band.low, band.high)} == {float}


def test_strands_are_numbered_from_the_hand_along_its_rope_whatever_ropes_are_called() -> None:
    given_names = common_system("piggy-back 4:1")
    for order in itertools.permutations(("a rope", "m rope", "z rope")):
        names = dict(zip((rope.name for rope in given_names.ropes), order, strict=True))
        ropes = tuple(Rope(names[rope.name], rope.visits) for rope in given_names.ropes)
        counted = count_tensions(System("renamed", given_names.bodies, ropes), "hauling")
        hand = counted.system.hand_strand
        numbers = {
            int(str(counted.symbols[f"strand_{s.index}"]).removeprefix("S_")): s
            for s in counted.system.strands
        }
        own = [s for s in counted.system.strands if s.rope == hand.rope]
        assert numbers[1] == hand
        assert {numbers[n + 1].rope for n in range(len(own))} == {hand.rope}


def test_a_strand_with_two_figures_keeps_them_together_below_the_line() -> None:
    counted = count_tensions(series_tensioner_system(4), "hauling")
    symbols = {str(counted.symbols[f"strand_{s.index}"]) for s in counted.system.strands}
    assert {"S_9", "S_{10}", "S_{11}"} <= symbols
    assert not any(re.fullmatch(r"S_\d\d+|S_\{\d\}", symbol) for symbol in symbols)
