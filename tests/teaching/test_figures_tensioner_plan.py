"""The tensioner from above: its numbers against a walk along the rope, and what it says."""

from itertools import accumulate
from typing import Any

import pytest

from ropecalc.mechanics.friction import Band
from ropecalc.teaching.figures import TENSIONER_PLAN
from ropecalc.teaching.figures.tensioner_plan import EASED, IN, OUT, RETAKEN, UNKNOWN, Tensioned
from ropecalc.units import Display

START = TENSIONER_PLAN.start


def at(**values: Any) -> Tensioned:
    result: Tensioned = TENSIONER_PLAN.compute(START | values)
    return result


def words(**values: Any) -> str:
    return TENSIONER_PLAN.summary(at(**values), Display())


def walked(pull: float, ratio: float, strands: int) -> list[float]:
    return list(accumulate([pull] + [ratio] * (strands - 1), lambda s, r: s * r))


@pytest.mark.parametrize(("history", "power"), [(IN, 1), (OUT, -1)])
@pytest.mark.parametrize("lines", [1, 2, 3, 4])
def test_a_walk_along_the_moving_rope(history: str, power: int, lines: int) -> None:
    result = at(history=history, lines=lines, efficiency=0.85, device_pull=500.0)
    rope = walked(500.0, 0.85**power, 2 * lines)
    assert [s.low for s in result.strands] == pytest.approx(rope)
    pairs = [rope[2 * i] + rope[2 * i + 1] for i in range(lines)]
    assert [t.low for t in result.lines] == pytest.approx(pairs)
    hub = [rope[2 * i + 1] + rope[2 * i + 2] for i in range(lines - 1)]
    assert [p.low for p in result.pulleys] == pytest.approx(hub)
    together = rope[0] + sum(hub) + rope[-1]  # what pulls on the hub's parts
    assert result.total.low == pytest.approx(together)
    assert sum(s.low for s in result.shares) == pytest.approx(1.0)


def test_known_shares_and_worth() -> None:
    result = at(history=IN, lines=3, efficiency=0.9)
    assert [round(100 * s.low) for s in result.shares] == [41, 33, 27]
    assert result.worth[2] == pytest.approx(2.466, abs=1e-3)
    assert result.ceiling == pytest.approx(5.263, abs=1e-3)
    assert at(history=IN, lines=4, efficiency=0.5).worth[3] == pytest.approx(1.328, abs=1e-3)


@pytest.mark.parametrize(("history", "moving"), [(EASED, IN), (RETAKEN, OUT)])
def test_nothing_moved_back_is_the_first_move(history: str, moving: str) -> None:
    one, other = at(history=history, back=0.0), at(history=moving)
    assert [t.low for t in one.lines] == pytest.approx([t.low for t in other.lines])


def test_the_loop_turns_the_imbalance_round() -> None:
    def gap(back: float) -> float:
        near, far = at(back=back).lines
        return float(near.low - far.low)

    after = at().equal_after
    assert after is not None
    assert gap(0.0) > 0
    assert gap(after) == pytest.approx(0.0, abs=1e-6)
    assert gap(1.0) < 0
    eased = at(back=1.0)
    assert eased.lines[1].low / eased.lines[0].low == pytest.approx(1 / 0.9**2)


def test_held_it_lies_within_what_friction_allows() -> None:
    unknown = at(history=UNKNOWN)
    for history in (IN, OUT):
        for band, tension in zip(unknown.lines, at(history=history).lines, strict=True):
            assert band.low - 1e-9 <= tension.low <= band.high + 1e-9
    assert unknown.lines[1].width > unknown.lines[0].width > 0
    assert " to " in words(history=UNKNOWN)


def test_a_lost_line_lets_the_others_go() -> None:
    result = at(cut="near", play=3.0)
    assert result.slack
    assert result.lost is not None
    assert result.lost.slack == pytest.approx(3.0)
    text = words(cut="near", play=3.0)
    assert "6.00 m of tensioner rope" in text
    assert "gains 3.00 m of slack" in text
    assert "kN" not in text.split(":", 1)[1].split("let out. ")[1]
    assert "1.50 m" in words(cut="far", play=3.0, lines=3)
    assert "only line is lost" in words(cut="far", lines=1)
    assert TENSIONER_PLAN.table is not None
    assert TENSIONER_PLAN.table(result, Display()) == ()


def test_too_much_let_out_says_so() -> None:
    result = at(device_pull=200.0, back=1.5, stiffness=200_000.0)
    assert result.slack
    text = words(device_pull=200.0, back=1.5, stiffness=200_000.0)
    assert "slack" in text


def test_the_weakest_grab_is_named() -> None:
    assert "does not hold" in words(history=IN, grab=900.0)
    assert "holds in every line" in words(history=IN, grab=1000.0)


def test_the_table_lists_every_part_once() -> None:
    assert TENSIONER_PLAN.table is not None
    rows = TENSIONER_PLAN.table(at(lines=3), Display())
    names = [row[0] for row in rows[1:]]
    assert names == [
        "The near line",
        "Line 2",
        "The far line",
        "Device",
        "Hub pulley 1",
        "Hub pulley 2",
        "Tied-off end",
        "Hub, all together",
    ]
    assert len(set(map(len, rows))) == 1


def test_what_does_nothing_is_said() -> None:
    assert set(TENSIONER_PLAN.idle(START)) == set()
    assert "back" in TENSIONER_PLAN.idle(START | {"history": IN})
    for key in TENSIONER_PLAN.idle(START | {"history": IN}):
        moved = 2 * START[key]
        same = at(history=IN, **{key: moved}).strands
        assert same == at(history=IN).strands
    assert isinstance(at().total, Band)


def test_the_prediction_is_the_near_line() -> None:
    outcome = TENSIONER_PLAN.prediction.outcome(Display())
    assert outcome.right == 0
    assert "0.95" in outcome.sentence
