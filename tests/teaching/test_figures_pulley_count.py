"""Both counts agree with the name of the system; anchors balance the whole."""

from typing import Any

import pytest

from ropecalc.teaching.figures import PULLEY_COUNT
from ropecalc.teaching.figures.pulley_count import SYSTEMS, Count
from ropecalc.units import Display

START = PULLEY_COUNT.start
ADVANTAGE = {"piggy-back 4:1": 4, "3:1 on 2:1": 6, "complex 5:1": 5}
every_system = pytest.mark.parametrize("name", [key for key, _ in SYSTEMS])
both = pytest.mark.parametrize("redirect", ["off", "on"])


def at(**values: Any) -> Count:
    result: Count = PULLEY_COUNT.compute(START | values)
    return result


@every_system
@both
def test_both_counts_give_what_the_name_says(name: str, redirect: str) -> None:
    result = at(system=name, redirect=redirect, rise=0.45)
    wanted = ADVANTAGE.get(name) or int(name.partition(":")[0])
    assert result.rigged.advantage == wanted
    assert result.by_travel == pytest.approx(wanted)
    assert result.hand_pull == pytest.approx(200 * 9.80665 / wanted)


@every_system
@both
def test_everything_together_is_in_balance(name: str, redirect: str) -> None:
    """Cut the whole system free: load, hand and anchors along the line."""
    made = at(system=name, redirect=redirect).rigged
    hand = made.system.pull(made.system.hand_strand, made.system.hand.name)
    assert made.advantage == sum(made.anchors.values()) + hand


def test_pulls_on_the_anchor_of_a_three_to_one() -> None:
    weight = 2000 / 9.80665
    for redirect, share in (("off", 2 / 3), ("on", 4 / 3)):
        result = at(redirect=redirect, mass=weight)
        pull = result.rigged.anchors["anchor"] * result.hand_pull
        assert pull == pytest.approx(2000 * share)


def test_the_gripped_strand_of_the_complex_system_carries_three() -> None:
    made = at(system="complex 5:1").rigged
    carried = {s.name: n for s, n in zip(made.system.strands, made.multiples, strict=True)}
    assert carried["main rope: anchor to second grab"] == 3
    assert carried["main rope: load to traveller"] == 5
    assert carried["main rope: second grab to hand"] == 1


def test_words_and_table_say_the_same() -> None:
    result = at(system="9:1", rise=0.5, mass=290)
    words = PULLEY_COUNT.summary(result, Display())
    assert "9 times" in words and "4.50 m of rope" in words
    assert PULLEY_COUNT.table is not None
    rows = PULLEY_COUNT.table(result, Display())
    assert len(rows) == 1 + len(result.rigged.system.strands) + len(result.rigged.anchors)
    assert {len(row) for row in rows} == {4}
    assert rows[1][1] == "9" and "2.84 kN" in rows[1][2]


def test_nobody_walks_over_the_edge_or_through_the_wall() -> None:
    from ropecalc.teaching.figures.pulley_count import MOST_RISE
    from ropecalc.teaching.figures.rope_diagram import stations_after

    for name, _ in SYSTEMS:
        for redirect in ("off", "on"):
            made = at(system=name, redirect=redirect).rigged
            after = stations_after(made.system, made.travel, MOST_RISE)
            for body in made.system.bodies:
                if body is not made.system.load:
                    assert after[body.name] < made.edge - 1.5
            assert after[made.system.load.name] > made.edge  # still below the pulley


def test_the_redirect_changes_the_anchor_only() -> None:
    outcome = PULLEY_COUNT.prediction.outcome(Display())
    assert outcome.right == 1
    assert "1.31 kN" in outcome.sentence and "2.62 kN" in outcome.sentence
