"""The figure of throws: the example walked through, what ends a throw, two teams on one clock."""

import math
from typing import Any

import pytest

from ropecalc.teaching.figures import THROW_CLOCK
from ropecalc.teaching.figures.throw_clock import SYSTEMS, ThrowClock, compute, summary, table
from ropecalc.units import Display


def at(**changes: Any) -> ThrowClock:
    return compute(THROW_CLOCK.start | changes)


def test_the_example_is_that_of_a_raise_walked_through() -> None:
    """An independent calculation made for this project: 9 throws and 492 s."""
    plan = at().chosen.throws
    assert plan.throws == 9
    assert plan.time == pytest.approx(492.0, abs=0.5)


@pytest.mark.parametrize("name", SYSTEMS)
def test_the_staircase_ends_at_the_top_when_the_plan_does(name: str) -> None:
    one = at(system=name, height=41.0).chosen
    stairs = one.stairs
    assert stairs[-1][1] == pytest.approx(41.0)
    assert stairs[-1][0] == pytest.approx(one.throws.time)
    times = [time for time, _ in stairs]
    assert times == sorted(times)
    assert max(height for _, height in stairs) <= 41.0 + 1e-9


@pytest.mark.parametrize(
    ("name", "room", "field", "rise"),
    [
        ("3:1", 4.0, 30.0, 4.0),
        ("3:1", 8.0, 12.0, 4.0),
        ("9:1", 8.0, 9.0, 1.0),
        ("2:1", 4.0, 6.0, 3.0),
    ],
)
def test_room_or_ground_ends_a_throw(name: str, room: float, field: float, rise: float) -> None:
    """The ground over the advantage, or the traveller's room: whichever is less."""
    one = at(system=name, room=room, field=field).chosen
    assert one.throws.rise == pytest.approx(rise)
    ground = rise * float(name[0]) >= field - 1e-9
    assert ("ground to walk" in one.ends) == ground


def test_hands_and_snag_are_what_the_advantage_makes_of_them() -> None:
    """Simple systems by the sum of powers: 1 + e + e^2 for the 3:1, hauling."""
    one = at(efficiency=0.9).chosen
    gain = 1 + 0.9 + 0.81
    assert one.hand_pull == pytest.approx(200 * 9.80665 / gain)
    assert one.people == math.ceil(one.hand_pull / 200)
    assert one.snag == pytest.approx(5 * 350 * gain)


def test_the_track_team_has_to_keep_pace_low_on_the_wall() -> None:
    """Straight up at 2.5 m the two legs shorten by sin a - sin b; two strands a line, two lines."""
    result = at()
    speed = 0.3 / 3
    up = math.atan2(32.0 - 0.5, 2.5 - 0.3)
    down = math.atan2(0.5 - 0.5, 40 - 2.5)
    expected = 2 * 2 * speed * (math.sin(up) - math.sin(down))
    assert result.fastest_feed == pytest.approx(expected, rel=1e-6)
    resting = [speed for _, speed in result.feed if speed == 0]
    assert len(resting) == 3 * result.chosen.throws.resets


def test_words_and_table() -> None:
    text = summary(at(system="9:1"), Display())
    assert "with a 9:1" in text and "32 throws" in text
    rows = table(at(), Display())
    assert [row[0] for row in rows[1:]] == list(SYSTEMS)
    assert rows[2][1:3] == ("9", "8 min")


def test_the_prediction_is_computed() -> None:
    outcome = THROW_CLOCK.prediction.outcome(Display())
    assert outcome.right == 2 and "4.74 kN and 12.9 kN" in outcome.sentence
