"""What the tensioner remembers, against an elastic rope that is moved in small steps."""

import numpy as np
import pytest

from ropecalc.derivation import DomainError
from ropecalc.mechanics.pulleys import series_tensioner_system
from ropecalc.mechanics.tensioner import equalise, series_tensioner
from ropecalc.mechanics.tensioner_memory import Path, Ropes, moved_back
from tests.mechanics.rope_flow import STIFFNESS, RopeFlow


def ropes(lines: int = 2, efficiency: float = 0.9) -> Ropes:
    return Ropes(lines, efficiency, stiffness=50_000.0, line_length=60.0, play=6.0)


def at(path: Path, moved: float) -> np.ndarray:
    """The strands where rope was moved by ``moved``, between the corners along straight lines."""
    return np.array([np.interp(moved, path.moved, column) for column in path.strands.T])


@pytest.mark.parametrize(("lines", "efficiency"), [(1, 0.8), (2, 0.9), (3, 0.8)])
@pytest.mark.parametrize("first", ["hauling", "lowering"])
def test_step_by_step_with_an_elastic_rope(lines: int, efficiency: float, first: str) -> None:
    system = series_tensioner_system(lines, play=6.0, height=20.0)
    flow = RopeFlow.of(system, load=0.0, efficiency=efficiency, start=200.0)
    for number, body in enumerate(system.bodies):
        if body.name == "load":
            flow.hold_still(number)
    flow.settle()
    flow.take_in(1.2 * lines / 2)
    if first == "lowering":
        flow.take_in(-0.35 * lines)
    count = 2 * lines
    here = Ropes(lines, efficiency, STIFFNESS, line_length=20.0, play=6.0)
    pull = flow.tension(flow.hand)
    path = moved_back(here, first=first, device_pull=pull, moved=0.2)
    sign = -1.0 if first == "hauling" else 1.0
    last = 0.0
    for done in (0.01, 0.03, 0.06, 0.1, 0.2):
        flow.take_in(sign * (done - last), step=0.002)
        last = done
        found = np.array([flow.tension(i) for i in range(count)])
        assert at(path, done) == pytest.approx(found, rel=0.03)


@pytest.mark.parametrize("first", ["hauling", "lowering"])
@pytest.mark.parametrize(("lines", "efficiency"), [(2, 0.9), (3, 0.8), (4, 0.95)])
def test_it_starts_and_ends_as_if_it_moved_one_way(
    lines: int, efficiency: float, first: str
) -> None:
    far = 4.0 if first == "hauling" else 30.0
    path = moved_back(ropes(lines, efficiency), first=first, device_pull=800.0, moved=far)
    other = "lowering" if first == "hauling" else "hauling"
    for way, row in ((first, 0), (other, -1)):
        moving = series_tensioner(
            way, device_pull=float(path.strands[row, 0]), lines=lines, efficiency=efficiency
        )
        assert path.lines[row] == pytest.approx([t.low for t in moving.lines], rel=1e-6)


def test_every_sheave_stays_within_what_friction_allows() -> None:
    path = moved_back(ropes(4, 0.7), first="hauling", device_pull=900.0, moved=1.5)
    ratio = path.strands[:, 1:] / path.strands[:, :-1]
    assert ratio.min() >= 0.7 - 1e-9
    assert ratio.max() <= 1 / 0.7 + 1e-9


def test_rope_and_springs_agree() -> None:
    """What went out at the device is what the lines and the strands gave."""
    here = ropes(3, 0.85)
    path = moved_back(here, first="hauling", device_pull=900.0, moved=0.6)
    lines, strands = path.lines[-1] - path.lines[0], path.strands[-1] - path.strands[0]
    came_in = 2 * lines.sum() / here.line_spring + strands.sum() / here.strand_spring
    assert came_in == pytest.approx(-path.moved[-1])


def test_the_lines_meet_where_they_are_equalised() -> None:
    path = moved_back(ropes(), first="hauling", device_pull=500.0, moved=1.0)
    gap = path.lines[:, 0] - path.lines[:, 1]
    meet = float(np.interp(0.0, -gap, path.moved))
    strands = at(path, meet)
    each = strands[:2].sum()
    assert strands[2:].sum() == pytest.approx(each)
    pulls = equalise(2, each_line_tension=each, efficiency=0.9).device_pulls
    assert strands[0] == pytest.approx(pulls[-1], rel=1e-6)


def test_let_out_too_far_goes_slack_and_says_so() -> None:
    path = moved_back(ropes(), first="hauling", device_pull=200.0, moved=8.0)
    assert path.slack
    assert path.end == pytest.approx(0.0, abs=1e-3)
    assert path.moved[-1] < 8.0
    assert not moved_back(ropes(), first="lowering", device_pull=200.0, moved=8.0).slack


def test_nothing_moved_changes_nothing() -> None:
    path = moved_back(ropes(), first="hauling", device_pull=500.0, moved=0.0)
    assert path.end == pytest.approx([500.0, 450.0, 405.0, 364.5])


def test_refusals_say_what_to_change() -> None:
    with pytest.raises(DomainError, match="holding"):
        moved_back(ropes(), first="holding", device_pull=500.0, moved=0.1)
    with pytest.raises(DomainError, match="nothing to remember"):
        ropes(2, 1.0)
    with pytest.raises(DomainError, match="moved_back"):
        moved_back(ropes(), first="hauling", device_pull=500.0, moved=-0.1)
