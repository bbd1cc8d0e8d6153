"""Lines in series against tensions followed from sheave to sheave."""

from itertools import product

import numpy as np
import pytest

from ropecalc.derivation import DomainError, Variable
from ropecalc.mechanics import measurement, quantities, tensioner
from ropecalc.mechanics.pulleys import throw
from ropecalc.mechanics.tensioner import (
    NO_BACKUP,
    device_feed,
    effective_lines,
    equalise,
    lines_ceiling,
    lost_line,
    released_slack,
    series_tensioner,
    tensioner_rope,
)


def followed(efficiency: float, lines: int, at_tensioner: float) -> list[float]:
    """The tension of every line, one sheave at a time, starting at the tensioner."""
    tensions, tension = [], at_tensioner
    for _ in range(lines):
        tensions.append(tension)
        for _sheave in range(2):
            tension = tension * efficiency
    return tensions


@pytest.mark.parametrize("efficiency", [0.6, 0.75, 0.9, 0.97, 0.999])
@pytest.mark.parametrize("lines", [1, 2, 3, 4, 7])
def test_all_lines_over_the_worst_one(efficiency: float, lines: int) -> None:
    tensions = followed(efficiency, lines, at_tensioner=1700.0)
    expected = sum(tensions) / max(tensions)
    assert effective_lines(efficiency=efficiency, lines=lines) == pytest.approx(expected, rel=1e-12)


def test_hand_worked_case() -> None:
    # 0.9 squared is 0.81: two lines are worth 1.81, three 1.81 + 0.6561
    assert effective_lines(efficiency=0.9, lines=2) == pytest.approx(1.81)
    assert effective_lines(efficiency=0.9, lines=3) == pytest.approx(2.4661)


def test_limits() -> None:
    assert effective_lines(efficiency=1 - 1e-7, lines=4) == pytest.approx(4, rel=1e-5)
    assert effective_lines(efficiency=0.01, lines=4) == pytest.approx(1, rel=1e-3)


@pytest.mark.parametrize("lines", [1, 2, 3, 20])
def test_without_friction_every_line_counts_in_full(lines: int) -> None:
    """As the whole tensioner does, strand by strand; and coming near to it nothing jumps."""
    assert effective_lines(efficiency=1.0, lines=lines) == lines
    whole = series_tensioner("hauling", device_pull=1.0, lines=lines, efficiency=1.0)
    assert whole.effective.low == pytest.approx(lines)
    near = 1 - 10.0 ** -np.arange(4.0, 16.0)
    followed_up = np.sum(near ** (2 * np.arange(lines)[:, None]), axis=0)
    assert effective_lines(efficiency=near, lines=lines) == pytest.approx(followed_up, rel=1e-8)
    assert effective_lines(efficiency=np.array([0.9, 1.0]), lines=lines)[1] == lines


def test_one_line_is_worth_one_whatever_the_rounding() -> None:
    many = np.random.default_rng(0).uniform(0.9, 1.0, 20_000)
    assert effective_lines(efficiency=many, lines=np.ones(20_000)) == pytest.approx(1.0, rel=1e-9)


def test_without_friction_there_is_no_ceiling() -> None:
    with pytest.raises(DomainError) as refusal:
        lines_ceiling(efficiency=1.0)
    assert str(refusal.value) == (
        "With an efficiency of 1 there is no ceiling: every further line counts in full. Enter an "
        "efficiency less than 1."
    )
    assert lines_ceiling(efficiency=1 - 1e-9) == pytest.approx(5e8)


def test_more_lines_are_always_worth_more_but_never_their_number() -> None:
    for efficiency in np.linspace(0.3, 0.97, 12):
        worth = effective_lines(efficiency=efficiency, lines=np.arange(1, 8))
        assert (np.diff(worth) > 0).all()
        assert (worth[1:] < np.arange(2, 8)).all()


def test_without_any_loss_or_without_lines_it_is_refused() -> None:
    with pytest.raises(DomainError, match="efficiency"):
        effective_lines(efficiency=0.0, lines=2)
    for lines in (0, 0.99, 20.01, 21):
        with pytest.raises(DomainError, match="lines"):
            effective_lines(efficiency=0.9, lines=lines)


def test_a_name_of_the_catalogue_means_here_what_it_means_there() -> None:
    """What each line carries and what all carry together, for one, must not share a name."""
    catalogue = {v.name: v for v in vars(quantities).values() if isinstance(v, Variable)}
    for module in (tensioner, throw, measurement):
        for variable in vars(module).values():
            if isinstance(variable, Variable) and variable.symbol != variable.name:
                assert catalogue.get(variable.name, variable) == variable
    with pytest.raises(TypeError, match="line_tension"):
        equalise(2, line_tension=1000.0, efficiency=0.9)  # type: ignore[call-arg]


# --- the whole tensioner -----------------------------------------------------------------------


@pytest.mark.parametrize("efficiency", [0.5, 0.7, 0.8, 0.85, 0.9, 0.95])
@pytest.mark.parametrize("lines", [1, 2, 3, 4])
def test_strand_by_strand(efficiency: float, lines: int) -> None:
    """From the device outwards, one sheave at a time, both ways."""
    for way, ratio in (("hauling", efficiency), ("lowering", 1 / efficiency)):
        strands = [500.0]
        for _ in range(2 * lines - 1):
            strands.append(strands[-1] * ratio)
        result = series_tensioner(way, device_pull=500.0, lines=lines, efficiency=efficiency)
        pairs = [strands[2 * i] + strands[2 * i + 1] for i in range(lines)]
        assert [b.low for b in result.strands] == pytest.approx(strands)
        assert [b.low for b in result.lines] == pytest.approx(pairs)
        assert [b.high for b in result.lines] == pytest.approx(pairs)
        assert [b.low for b in result.shares] == pytest.approx([p / sum(pairs) for p in pairs])
        assert [b.low for b in result.hub_pulleys] == pytest.approx(
            [strands[2 * i + 1] + strands[2 * i + 2] for i in range(lines - 1)]
        )
        assert result.tie_off.low == pytest.approx(strands[-1])
        assert result.total.low == pytest.approx(sum(strands))
        hub = result.tie_off.low + sum(b.low for b in result.hub_pulleys) + 500.0
        assert hub == pytest.approx(result.total.low)
        effective = effective_lines(efficiency=efficiency, lines=lines)
        assert result.effective.low == pytest.approx(effective)
        assert result.effective.high == pytest.approx(effective)
        assert effective < lines_ceiling(efficiency=efficiency)


def test_numbers_of_an_independent_calculation_made_for_this_project() -> None:
    taken = series_tensioner("hauling", device_pull=1200 / 1.85, lines=3, efficiency=0.85)
    assert [b.low for b in taken.lines] == pytest.approx([1200.0, 867.0, 626.4], abs=0.1)
    assert taken.total.low == pytest.approx(2693.4, abs=0.1)
    out = series_tensioner("lowering", device_pull=1200 / 1.85, lines=3, efficiency=0.85)
    assert [b.low for b in out.lines] == pytest.approx([1411.8, 1954.0, 2704.5], abs=0.2)
    assert out.total.low == pytest.approx(6070.2, abs=0.3)
    for lines, worth in ((2, 1.810), (3, 2.466), (4, 2.998)):
        assert effective_lines(efficiency=0.9, lines=lines) == pytest.approx(worth, abs=5e-4)
    table = {
        0.95: (10.3, (37, 33, 30)), 0.90: (5.26, (41, 33, 27)), 0.85: (3.60, (45, 32, 23)),
        0.80: (2.78, (49, 31, 20)), 0.70: (1.96, (58, 28, 14)), 0.50: (1.33, (76, 19, 5)),
    }  # fmt: skip
    for efficiency, (ceiling, shares) in table.items():
        assert lines_ceiling(efficiency=efficiency) == pytest.approx(ceiling, rel=5e-3)
        result = series_tensioner("hauling", device_pull=1.0, lines=3, efficiency=efficiency)
        assert [100 * b.low for b in result.shares] == pytest.approx(shares, abs=0.51)


def test_the_ceiling_is_what_many_lines_come_near_to() -> None:
    for efficiency in (0.3, 0.6, 0.8):
        many = effective_lines(efficiency=efficiency, lines=20)
        assert lines_ceiling(efficiency=efficiency) == pytest.approx(many, rel=1e-3)


@pytest.mark.parametrize("lines", [1, 2, 3, 4])
def test_held_bands_are_those_of_every_mixture(lines: int) -> None:
    """All combinations of friction fully one way or the other, and random ones in between."""
    e = 0.85
    held = series_tensioner("holding", device_pull=1.0, lines=lines, efficiency=e)
    sheaves = 2 * lines - 1
    rng = np.random.default_rng(3)
    corners = [np.array(c) for c in product((e, 1 / e), repeat=sheaves)]
    inside = [rng.uniform(e, 1 / e, sheaves) for _ in range(200)]
    found = []
    for ratios in [*corners, *inside]:
        strands = np.concatenate([[1.0], np.cumprod(ratios)])
        pairs = strands.reshape(lines, 2).sum(axis=1)
        found.append([*strands, *pairs, *(pairs / pairs.sum()), pairs.sum() / pairs.max()])
    low, high = np.min(found, axis=0), np.max(found, axis=0)
    bands = [*held.strands, *held.lines, *held.shares]
    assert [b.low for b in bands] == pytest.approx(low[:-1])
    assert [b.high for b in bands] == pytest.approx(high[:-1])
    assert held.effective.low == pytest.approx(low[-1])
    assert held.effective.high == lines >= high[-1] - 1e-12


def test_without_friction_all_lines_are_alike() -> None:
    result = series_tensioner("holding", device_pull=500.0, lines=3, efficiency=1.0)
    assert all((b.low, b.high) == (1000.0, 1000.0) for b in result.lines)
    assert result.total.high == 3000.0 and result.effective.low == pytest.approx(3.0)


def test_arrays() -> None:
    pulls, efficiencies = np.array([[300.0], [600.0]]), np.array([0.8, 0.9])
    for way in ("hauling", "lowering", "holding"):
        whole = series_tensioner(way, device_pull=pulls, lines=3, efficiency=efficiencies)
        one = series_tensioner(way, device_pull=600.0, lines=3, efficiency=0.9)
        assert whole.lines[0].high[1, 1] == pytest.approx(one.lines[0].high)
        assert whole.shares[1].low[1] == pytest.approx(one.shares[1].low)
        assert isinstance(one.shares[1].low, float) and isinstance(one.effective.low, float)
    with pytest.raises(DomainError, match="single numbers"):
        whole.explain()


@pytest.mark.parametrize("lines", [0, 21, 2.0, True, None])
def test_lines_are_a_whole_number(lines: object) -> None:
    with pytest.raises(DomainError, match="whole number of track lines from 1 to 20"):
        series_tensioner("hauling", device_pull=1.0, lines=lines, efficiency=0.9)  # type: ignore[arg-type]
    assert series_tensioner("hauling", device_pull=1.0, lines=20, efficiency=0.9)


def test_values_are_checked() -> None:
    with pytest.raises(DomainError, match="hauling, lowering or holding"):
        series_tensioner("in", device_pull=1.0, lines=2, efficiency=0.9)
    with pytest.raises(DomainError, match="device_pull"):
        series_tensioner("hauling", device_pull=-1.0, lines=2, efficiency=0.9)
    with pytest.raises(DomainError, match="efficiency"):
        series_tensioner("hauling", device_pull=1.0, lines=2, efficiency=1.01)


def test_it_explains_itself() -> None:
    def told(way: str) -> str:
        result = series_tensioner(way, device_pull=500.0, lines=2, efficiency=0.9)
        assert NO_BACKUP in result.explain().cautions
        return result.explain().as_text()

    taken = told("hauling")
    assert taken.startswith("Series tensioner on 2 lines")
    assert "Taking in, the rope moves towards the device" in taken
    assert "The near line carries both strands at its pulley: 0.950 kN, 55 % of all l" in taken
    assert "The far line carries both strands at its pulley: 0.770 kN, 45 % of all lines." in taken
    assert "T_2 = S_3 + S_4" in taken
    assert "The tied-off end carries 0.364 kN." in taken
    assert "The hub pulley between the near line and the far line carries 0.855 kN." in taken
    assert "the near line is line 1, next to the device; the far line is next to the tied" in taken
    assert "the hub: 1.72 kN; worth 1.81 times the most loaded line." in taken
    assert taken.endswith("hauling: all lines together 1.72 kN")
    assert "Letting out, the rope moves away from the device" in told("lowering")
    held = told("holding")
    assert "the lines remember what moved last" in held
    assert "45 to 55 % of all lines" in held
    assert "worth 1.81 to 2 times" in held
    three = series_tensioner("hauling", device_pull=500.0, lines=3, efficiency=0.9).explain()
    assert "Line 2 carries both strands" in three.as_text()
    assert "between line 2 and the far line" in three.as_text()
    one = series_tensioner("hauling", device_pull=500.0, lines=1, efficiency=0.9).explain()
    assert "The only line carries both strands" in one.as_text()


def test_rope_and_feed() -> None:
    """Two lines, 12 m to come in, 1 m of stretch, never closer than 1 m, 6 m of tail."""
    rope = tensioner_rope(2, least_play=1.0, take_in=12.0, line_stretch=1.0, tail=6.0)
    assert rope.through_device == pytest.approx(52.0)
    assert rope.needed == pytest.approx(4 * 14.0 + 6.0)
    assert device_feed(2, line_rate=0.05) == pytest.approx(0.2)
    assert device_feed(3, line_rate=np.array([0.0, 0.1])).tolist() == pytest.approx([0.0, 0.6])
    values = {"least_play": 1.0, "take_in": 12.0, "line_stretch": 1.0, "tail": 6.0}
    for name in values:
        with pytest.raises(DomainError, match=name):
            tensioner_rope(2, **(values | {name: -0.1}))
    with pytest.raises(DomainError, match="line_rate"):
        device_feed(2, line_rate=-0.1)
    with pytest.raises(DomainError, match="whole number"):
        tensioner_rope(0, **values)


def test_equalising_two_lines() -> None:
    plan = equalise(2, each_line_tension=1000.0, efficiency=0.9)
    # at the end the strands at each line pulley are T / (1 + e) and e times that
    assert plan.device_pulls == pytest.approx((1000 / 1.9 / 0.81, 900 / 1.9))
    assert plan.over_pull.high == pytest.approx(1 / 0.81 - 1)
    assert plan.over_pull.low == pytest.approx(2 / 1.81 - 1)
    text = plan.explain().as_text()
    assert (
        "1. Take in until the device carries 0.650 kN: the far line carries what is wanted." in text
    )
    assert (
        "2. Ease until the device carries 0.474 kN: the near line carries what is wanted." in text
    )
    # 10.497 % down and 23.457 % up
    assert text.endswith("first pulled 10 to 24 % above the wanted tension: allow for 24 % there")
    alone = equalise(1, each_line_tension=1000.0, efficiency=0.9).explain()
    assert alone.result == "no over-pull is needed"
    smooth = equalise(3, each_line_tension=1000.0, efficiency=1.0)
    assert smooth.explain().result == "no over-pull is needed"
    assert smooth.device_pulls == pytest.approx((500.0, 500.0, 500.0))
    assert "until the device carries 0.526 kN: the only line carries" in alone.as_text()
    assert any("small ease" in c for c in plan.explain().cautions)
    assert "stretchy lines" in text
    with pytest.raises(DomainError, match="each_line_tension"):
        equalise(2, each_line_tension=0.0, efficiency=0.9)
    three = equalise(3, each_line_tension=1000.0, efficiency=0.9)
    # far line, line 2, near line; each device pull from its line's near strand, back to the device
    assert three.device_pulls == pytest.approx(
        (1000 / 1.9 / 0.9**4, 1000 / (1 + 1 / 0.9) * 0.9**2, 1000 / 1.9)
    )
    assert three.over_pull.low == pytest.approx(3 / 2.4661 - 1)
    assert three.over_pull.high == pytest.approx(1 / 0.9**4 - 1)
    moves = three.explain().lines
    assert [m.sentence.split(" until")[0] for m in moves] == ["Take in", "Ease", "Take in"]
    assert [m.sentence.split(": ")[1].split(" carries")[0] for m in moves] == [
        "the far line", "line 2", "the near line",
    ]  # fmt: skip
    arrays = equalise(3, each_line_tension=np.array([1.0, 2.0]), efficiency=0.9)
    assert arrays.device_pulls[2].shape == (2,)
    with pytest.raises(DomainError, match="single numbers"):
        arrays.explain()


def test_a_lost_line_lets_its_rope_run_in() -> None:
    """Rope conservation: a pulley that moves out by d takes 2 d of rope."""
    lost = lost_line(2, play=3.0)
    assert lost.runs_in == 6.0 and lost.slack == lost.most == 3.0
    shared = lost_line(4, play=np.array([3.0, 6.0]))
    assert shared.runs_in.tolist() == [6.0, 12.0] and shared.most.tolist() == [3.0, 6.0]
    assert shared.slack.tolist() == pytest.approx([1.0, 2.0])
    with pytest.raises(DomainError, match="nothing is left to gain slack"):
        lost_line(1, play=3.0)
    with pytest.raises(DomainError, match="play"):
        lost_line(2, play=-1.0)


def test_rope_of_a_tensioner_in_series_counted_strand_by_strand() -> None:
    rng = np.random.default_rng(3)
    for lines in (2, 3, 4, 7):
        plays = rng.uniform(1, 8, lines)  # travelling pulleys from the hub
        rope = 2 * plays.sum()
        slack = released_slack(play=float(plays[0]), lines=lines)
        after = np.concatenate([[0.0], plays[1:] + slack])
        assert 2 * after.sum() == pytest.approx(rope)
    for lines in (1, 1.9):
        with pytest.raises(DomainError, match="At least one line must be left"):
            released_slack(play=3.0, lines=lines)
    assert any("not independent" in text for text in released_slack.cautions)


def test_the_case_without_friction_is_told_as_an_efficiency_of_one() -> None:
    text = effective_lines.explain().as_text()
    assert "n if eta = 1, otherwise" in text and "eta^2 = 1" not in text
