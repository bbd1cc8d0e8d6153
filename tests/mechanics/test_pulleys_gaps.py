"""A redirect at an angle that stands between two sheaves, where neither side is the hand's pull."""

import math

import pytest

from ropecalc.mechanics.pulleys import Body, Role, Rope, System, count_tensions, over, tied


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
    pull = float(counted.connector(which).subs(counted.symbols["e"], e))
    behind, ahead = e * e, e  # in units of the hand's pull, each sheave passes on its efficiency
    sides = behind + ahead * math.cos(angle), ahead * math.sin(angle)
    assert pull == pytest.approx(math.hypot(*sides))
