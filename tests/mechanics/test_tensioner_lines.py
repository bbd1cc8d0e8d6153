"""The tensioner's formulas against pulley systems that are counted strand by strand."""

from math import radians, sin

import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics import tensioner_lines as lines_of
from ropecalc.mechanics.pulleys import forces, rope_needed, series_tensioner_system
from tests.mechanics.rope_flow import RopeFlow

CASES = pytest.mark.parametrize(("lines", "e"), [(2, 0.9), (3, 0.85), (4, 0.7)])


def strands(lines: int, e: float, pull: float) -> list[float]:
    """Walk along the rope from the device; every sheave leaves the efficiency's share."""
    found = [pull]
    while len(found) < 2 * lines:
        found.append(e * found[-1])
    return found


def line_sums(lines: int, e: float, pull: float) -> list[float]:
    rope = strands(lines, e, pull)
    return [rope[2 * i] + rope[2 * i + 1] for i in range(lines)]


@CASES
def test_lines_hub_and_device(lines: int, e: float) -> None:
    sums = line_sums(lines, e, 500.0)
    for number, tension in enumerate(sums, 1):
        found = lines_of.line_taken_in(device_pull=500.0, efficiency=e, line=float(number))
        assert found == pytest.approx(tension)
    count = float(lines)
    assert lines_of.far_over_near(efficiency=e, lines=count) == pytest.approx(sums[-1] / sums[0])
    together = lines_of.all_lines(near_line=sums[0], efficiency=e, lines=count)
    assert together == pytest.approx(sum(sums))
    most = lines_of.most_loaded_line(track_tension=sum(sums), efficiency=e, lines=count)
    assert most == pytest.approx(sums[0])
    assert lines_of.device_strand(near_line=sums[0], efficiency=e) == pytest.approx(500.0)
    rope = strands(lines, e, 500.0)
    pulley = lines_of.hub_pulley_load(device_pull=500.0, efficiency=e)
    assert pulley == pytest.approx(rope[1] + rope[2])


def test_a_general_pulley_system_gives_the_same() -> None:
    system = series_tensioner_system(3, play=6.0, height=20.0)
    counted = forces(system, "hauling", load=3000.0, efficiency=0.9)
    near = lines_of.most_loaded_line(track_tension=3000.0, efficiency=0.9, lines=3.0)
    device = lines_of.device_strand(near_line=near, efficiency=0.9)
    assert device == pytest.approx(counted.hand_pull.low)


def test_without_friction_every_line_counts_in_full() -> None:
    near = lines_of.most_loaded_line(track_tension=3000.0, efficiency=1.0, lines=3.0)
    assert near == pytest.approx(1000.0)


def test_rope_against_a_system_that_is_measured() -> None:
    system = series_tensioner_system(3, play=7.5, height=20.0)
    measured = rope_needed(system, tail=4.0)["tensioner rope"]
    needed = lines_of.rope_needed(
        lines=3.0, least_play=1.0, take_in=6.0, line_stretch=0.5, tail=4.0
    )
    assert needed + 1.0 == pytest.approx(measured)  # the device stands 1 m behind the hub
    assert lines_of.rope_through_device(lines=3.0, take_in=6.0) == pytest.approx(36.0)


def test_speed_by_a_small_rise() -> None:
    """Legs of 20 m and 50 m; the litter rises a hundredth of a millimetre in a second."""
    up, down, rise = radians(70.0), radians(20.0), 1e-5

    def length(z: float) -> float:
        upper = complex(20.0 * sin(radians(20.0)), 20.0 * sin(up) - z)
        ground = complex(50.0 * sin(radians(70.0)), 50.0 * sin(down) + z)
        return abs(upper) + abs(ground)

    feed = lines_of.device_speed(
        lines=2.0, haul_speed=rise, track_elevation=up, ground_depression=down
    )
    assert feed == pytest.approx(4 * (length(0.0) - length(rise)), rel=1e-5)
    with pytest.raises(DomainError, match="track"):
        lines_of.device_speed(lines=2.0, haul_speed=0.1, track_elevation=0.2, ground_depression=0.5)


def test_hands_on_the_tail() -> None:
    hand = lines_of.hand_pull(
        far_line=800.0, efficiency=0.9, lines=2.0, device_share=0.6, tail_advantage=3.0
    )
    assert line_sums(2, 0.9, hand * 3 * 0.6)[-1] == pytest.approx(800.0)


def test_the_sheaves_of_an_elastic_rope_settle_to_the_same() -> None:
    system = series_tensioner_system(2, play=6.0, height=20.0)
    flow = RopeFlow.of(system, load=0.0, efficiency=0.9, start=200.0)
    for number, body in enumerate(system.bodies):
        if body.name == "load":
            flow.hold_still(number)
    flow.settle()
    flow.take_in(0.8)
    pull = flow.tension(flow.hand)
    far = lines_of.line_taken_in(device_pull=pull, efficiency=0.9, line=2.0)
    assert flow.tension(2) + flow.tension(3) == pytest.approx(far, rel=2e-3)


@pytest.mark.parametrize("lines", [1, 2, 3, 4])
def test_without_friction_each_line_carries_two_strands(lines: int) -> None:
    sums = line_sums(lines, 1.0, 500.0)
    found = lines_of.ideal_line(device_pull=500.0, lines=float(lines))
    assert [found] * lines == pytest.approx(sums)


@pytest.mark.parametrize("e", [0.75, 0.85, 0.93])
@pytest.mark.parametrize("together", [2000.0, 3100.0, 4300.0])
@pytest.mark.parametrize("limit", [2000.0, 3100.0])
def test_lines_for_a_limit_by_trying_one_more(e: float, together: float, limit: float) -> None:
    for lines in range(1, 20):
        sums = line_sums(lines, e, 1.0)
        if together * sums[0] / sum(sums) <= limit:
            break
    else:
        pytest.fail("pick a case that has an answer")
    found = lines_of.lines_for_limit(track_tension=together, line_limit=limit, efficiency=e)
    assert found == lines


def test_where_no_number_of_lines_is_enough_it_is_said() -> None:
    sums = line_sums(400, 0.85, 1.0)
    ceiling = sum(sums) / sums[0]
    with pytest.raises(DomainError, match="20 lines are not enough"):
        lines_of.lines_for_limit(
            track_tension=1.001 * ceiling * 2000.0, line_limit=2000.0, efficiency=0.85
        )


@pytest.mark.parametrize(("together", "efficiency"), [(10_000.0, 0.9), (5400.0, 0.8)])
def test_close_to_the_limit_of_what_lines_can_share(together: float, efficiency: float) -> None:
    """Line by line, each carrying the square of the efficiency times the one before it."""
    limit, carried, count = 2000.0, 0.0, 0
    while carried < together:
        carried += limit * efficiency ** (2 * count)
        count += 1
    found = lines_of.lines_for_limit(
        track_tension=together, line_limit=limit, efficiency=efficiency
    )
    assert found == count <= 20
