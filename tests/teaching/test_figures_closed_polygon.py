"""The side pull's figure: closed triangles, lengths by trigonometry, refusals in words."""

import math
from itertools import product
from typing import Any

import numpy as np
import pytest

from ropecalc.mechanics.vectors import weight
from ropecalc.teaching.figures import CLOSED_POLYGON
from ropecalc.teaching.figures.closed_polygon import COMPARED, PulledAside, _pulls, _Wall
from ropecalc.teaching.figures.head_to_tail import stepped
from ropecalc.teaching.panel import Look
from ropecalc.units import Display

START = CLOSED_POLYGON.start
TWO_KILONEWTONS = 2000 / 9.80665  # kg


def at(**values: Any) -> PulledAside:
    result: PulledAside = CLOSED_POLYGON.compute(START | values)
    return result


def test_the_reference_values_of_this_project() -> None:
    # 2 kN pulled aside by 0.5 kN: 14° from plumb, 1.2 m on 5 m of rope and 7.3 m on 30 m
    result = at(mass=TWO_KILONEWTONS)
    assert math.degrees(result.lean or 0.0) == pytest.approx(14.04, abs=0.005)
    assert result.moved == pytest.approx(1.213, abs=5e-4)
    assert result.reaches[COMPARED.index(30.0)] == pytest.approx(7.276, abs=5e-4)


def test_the_triangle_closes() -> None:
    closed = 0
    for mass, pull, slope in product((120, 200, 280), (0, 50, 500, 2500), (-0.69, 0.0, 0.3, 0.69)):
        result = at(mass=mass, pull=pull, elevation=slope)
        if result.refused:
            assert pull * math.sin(slope) >= weight(mass=mass)
            continue
        closed += 1
        total = sum(size * np.array(way) for _, size, way, _ in _pulls(result))
        assert np.linalg.norm(total) < 1e-9 * result.load
    assert closed > 40


def test_the_litter_hangs_where_its_rope_ends() -> None:
    result = at(pull=1200, length=12.5, elevation=-0.4)
    x, z = result.place
    assert math.hypot(x - 0.3, z - 32.0) == pytest.approx(12.5)
    assert x - 0.3 == pytest.approx(result.moved)


def test_the_table_holds_both_ways() -> None:
    result = at()
    for rope, moved, pull in zip(COMPARED, result.reaches, result.pulls, strict=True):
        slope = 500 / (200 * 9.80665)
        assert moved == pytest.approx(rope * slope / math.hypot(1, slope))
        # moments about the directional: the pull times its depth, the weight times one metre
        assert pull * math.sqrt(rope**2 - 1) == pytest.approx(200 * 9.80665 * 1.0)
    rows = CLOSED_POLYGON.table(result, Display()) if CLOSED_POLYGON.table else ()
    assert [row[1] for row in rows[1:]] == ["0.49 m", "1.24 m", "2.47 m", "4.94 m", "7.41 m"]


def test_a_pull_that_lifts_the_load_off_is_refused_in_words() -> None:
    result = at(mass=120, pull=2500, elevation=math.radians(40))
    assert result.refused
    words = CLOSED_POLYGON.summary(result, Display())
    assert "lift the load off its rope" in words
    assert "leans" not in words
    rows = CLOSED_POLYGON.table(result, Display()) if CLOSED_POLYGON.table else ()
    assert {row[1] for row in rows[1:]} == {"no number"}


def test_no_pull_leaves_it_plumb() -> None:
    result = at(pull=0)
    assert result.moved == 0
    assert result.tension == pytest.approx(result.load)
    assert "hangs plumb" in CLOSED_POLYGON.summary(result, Display())
    assert set(CLOSED_POLYGON.idle(START | {"pull": 0.0})) == {"elevation"}
    assert CLOSED_POLYGON.idle(START) == {}


def test_who_pulls_down_stands_on_the_ground(monkeypatch: pytest.MonkeyPatch) -> None:
    picture = CLOSED_POLYGON.picture()
    wall = next(part for part in vars(picture).values() if isinstance(part, _Wall))
    stood: list[tuple[float, float]] = []
    monkeypatch.setattr(wall._helper, "place", lambda x, z: stood.append((x, z)))
    picture.update(at(length=26, elevation=math.radians(-35), pull=1000), Look(Display()))
    picture.update(at(length=5), Look(Display()))  # level: the line leaves the picture
    assert len(stood) == 1
    assert stood[0][1] == 0.0


@pytest.mark.parametrize("value", [1e-3, 0.9, 1.0, 3.7, 1234.5])
def test_scales_stand_on_a_ladder(value: float) -> None:
    step = stepped(value)
    assert value <= step * (1 + 1e-9) < 1.22 * value
    assert stepped(step) == pytest.approx(step)
