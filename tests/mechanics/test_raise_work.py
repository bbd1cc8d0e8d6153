"""Work along a path against the energy that the load gains, and an independent calculation."""

import numpy as np
import pytest

from ropecalc.mechanics.holding import Method, Point, Rig
from ropecalc.mechanics.raise_work import raise_work
from ropecalc.mechanics.vectors import weight

TOP = Point(0.3, 32.0)
RIG = Rig(TOP, TOP, Point(40.0, 0.5))
LOAD = float(weight(mass=200.0))
PATH = [(7.8, 1.0), (2.0, 25.0), (0.8, 30.0)]


def test_an_independent_calculation_made_for_this_project() -> None:
    """kJ: 56.9 of lift; 49.6 and 7.3 with track lines; 67.1 and 10.2 with a tag line."""
    track, tag = (raise_work(method, RIG, LOAD, PATH) for method in (Method.TRACK, Method.TAG))
    assert track.lift == pytest.approx(56.9e3, abs=50)
    assert (track.haul, track.tensioner, track.burnt) == pytest.approx((49.6e3, 7.3e3, 0), abs=60)
    assert (tag.haul, tag.tensioner, tag.burnt) == pytest.approx((67.1e3, 0, 10.2e3), abs=60)


@pytest.mark.parametrize("seed", range(5))
def test_nothing_is_won_or_lost(seed: int) -> None:
    """Energy: what the teams put in is what the load gains and the tag device burns."""
    rng = np.random.default_rng(seed)
    heights = np.sort(rng.uniform(1, 27, 4))
    path = [(float(rng.uniform(0.8, 3.5)), float(z)) for z in heights]
    for method in (Method.TRACK, Method.TAG):
        found = raise_work(method, RIG, LOAD, path)
        assert found.haul + found.tensioner - found.burnt == pytest.approx(found.lift, rel=2e-3)


def test_there_and_back_is_nothing() -> None:
    found = raise_work(Method.TRACK, RIG, LOAD, [*PATH, *PATH[-2::-1]])
    assert found.haul == pytest.approx(0, abs=1) and found.lift == 0


def test_words_and_refusals() -> None:
    text = raise_work(Method.TAG, RIG, LOAD, PATH).explain().as_text()
    assert "57 kJ" in text or "56.9 kJ" in text
    assert "heat" in text and "work of the haul team: 67" in text
    track = raise_work(Method.TRACK, RIG, LOAD, PATH).explain().as_text()
    assert "at the tensioner 7.26" in track
    with pytest.raises(ValueError, match="at least two places, each with x and z"):
        raise_work(Method.TAG, RIG, LOAD, PATH[:1])
    with pytest.raises(ValueError, match="no line to the ground"):
        raise_work(Method.ATTENDANT, RIG, LOAD, PATH)
    with pytest.raises(ValueError, match=r"cannot be held 20 m out at 28 m"):
        raise_work(Method.TAG, RIG, LOAD, [(20.0, 28.0), (1.0, 29.0)])
    assert raise_work("track line", RIG, LOAD, PATH) == raise_work(Method.TRACK, RIG, LOAD, PATH)
    with pytest.raises(ValueError, match="at least two places, each with x and z"):
        raise_work(Method.TAG, RIG, LOAD, [(1.0, 2.0, 3.0)] * 2)
    apart = Rig(TOP, Point(0.3, 33.0), RIG.hub)
    with pytest.raises(ValueError, match="from one directional"):
        raise_work(Method.TRACK, apart, LOAD, PATH)
