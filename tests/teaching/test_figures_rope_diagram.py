"""The layout of any pulley system: no strand on another, bodies where their ropes are."""

import math

import pytest

from ropecalc.mechanics.pulleys import (
    How,
    System,
    common_system,
    common_systems,
    series_tensioner_system,
    travel,
)
from ropecalc.teaching.figures.rope_diagram import View, lay_out, stations_after, strand_points

NAMES = (*common_systems(), "4:1 on 3:1", "3:1 on 4:1", "simple 7:1")
SYSTEMS = [
    *(common_system(name, redirect=redirect) for name in NAMES for redirect in (False, True)),
    *(series_tensioner_system(lines) for lines in (1, 2, 3)),
]
every = pytest.mark.parametrize("system", SYSTEMS, ids=lambda s: s.name)


@every
def test_no_strand_lies_on_another(system: System) -> None:
    layout = lay_out(system)
    ends = [sorted(system.body(v.body).station for v in (s.start, s.end)) for s in system.strands]
    for one in range(len(ends)):
        for other in range(one):
            if abs(layout.strands[one] - layout.strands[other]) < 0.4:
                apart = max(ends[one][0], ends[other][0]) - min(ends[one][1], ends[other][1])
                assert apart >= 0, (system.strands[one].name, system.strands[other].name)


@every
def test_a_rope_changes_lane_at_sheaves_only(system: System) -> None:
    layout = lay_out(system)
    for attachment in system.attachments:
        if attachment.before is None or attachment.after is None:
            continue
        step = layout.strands[attachment.after.index] - layout.strands[attachment.before.index]
        assert step == pytest.approx(1.0 if attachment.visit.how is How.OVER else 0.0)
    assert min(layout.strands) == 0.0


def test_a_rope_leads_to_the_middle_of_the_sheaves_it_is_tied_to() -> None:
    layout = lay_out(common_system("4:1"))
    assert layout.strands[0] == pytest.approx(sum(layout.strands[1:]) / 4)


@every
def test_after_a_step_no_rope_has_grown(system: System) -> None:
    """Measured between the stations as drawn, with the hand that walked."""
    step = 0.1
    first = {b.name: b.station for b in system.bodies}
    after = stations_after(system, travel(system), step)
    assert first[system.load.name] - after[system.load.name] == pytest.approx(step)

    def length(rope: str, stations: dict[str, float]) -> float:
        return sum(
            abs(stations[s.start.body] - stations[s.end.body])
            for s in system.strands
            if s.rope == rope
        )

    for rope in system.ropes:
        assert length(rope.name, after) == pytest.approx(length(rope.name, first))


def test_the_load_hangs_as_far_down_as_its_station_is_beyond_the_edge() -> None:
    system = common_system("3:1", height=6.0, throw=2.0)
    view = View(lay_out(system), 0.3, 5.0)
    points = strand_points(view, {b.name: b.station for b in system.bodies}, 0)
    assert points[0] == (2.0, 0.0)
    bend, end = points[-2], points[-1]
    assert bend[0] == pytest.approx(end[0])  # plumb below the pulley
    assert bend[1] - end[1] == pytest.approx(8.0 - 5.0)
    assert end[0] > 5.0 > points[1][0] - 1e-9
    assert math.dist(points[1], (5.0, 0.0)) < 1e-9
