"""The least offset at which everything clears, against hand counts and dense sampling."""

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from ropecalc.mechanics.guiding import haul_clearance_offset
from ropecalc.mechanics.holding import Method, Point
from ropecalc.planning.clearing import Cause, all_demands, haul_path
from ropecalc.planning.problem import SiteError
from ropecalc.planning.profile import ProfileError
from ropecalc.planning.site import Site
from tests.planning.building import governing_demand, make_site, outcrop


def offset_at(site: Site, height: float) -> float:
    return governing_demand(site, height, site.lift.guided_by).offset


def need(site: Site, height: float, cause: Cause) -> float:
    return max(d.offset for d in all_demands(site, height) if d.cause is cause)


def test_beside_a_plumb_wall_half_width_and_clearance_are_needed() -> None:
    for height in (2.0, 13.7, 29.0):
        demand = governing_demand(make_site(), height, Method.TRACK)
        assert demand.offset == pytest.approx(0.35 + 0.3)
        assert demand.cause is Cause.BODY


def test_level_with_a_tip_only_the_clearance_counts_and_the_width_along_the_bridle() -> None:
    site = make_site(outcrop(15.0))
    assert need(site, 15.0, Cause.BODY) == pytest.approx(1.7 + 0.3)
    assert need(site, 15.5, Cause.BODY) == pytest.approx(1.7 + 0.175 + 0.3)
    assert need(site, 16.0, Cause.BODY) == pytest.approx(1.7 + 0.35 + 0.3)


def test_the_offset_is_held_until_the_body_has_passed_the_tip() -> None:
    site = make_site(outcrop(15.0))
    assert need(site, 16.6, Cause.BODY) == pytest.approx(2.35)
    # 0.1 m higher the lowest part of the body is beside rock that has fallen back 0.17 m.
    assert need(site, 16.7, Cause.BODY) == pytest.approx(2.35 - 0.17)


def test_below_an_outcrop_the_haul_line_asks_for_most() -> None:
    site = make_site(outcrop(25.0))
    demand = governing_demand(site, 2.0, Method.TRACK)
    assert demand.cause is Cause.HAUL_LINE
    assert (demand.at.offset, demand.at.height) == (1.7, 25.0)
    # The line through (1.7 + 0.3, 25) from (0.4, 32): 1.6 m out in 7 m, so 30/7 of it in 30 m.
    assert demand.offset == pytest.approx(0.4 + 1.6 * 30 / 7)


def test_the_haul_line_demand_is_the_derived_one() -> None:
    site = make_site(outcrop(25.0))
    derived = haul_clearance_offset(z=2.0, x_D=0.4, z_D=32.0, x_O=1.7, z_O=25.0, clearance=0.3)
    assert need(site, 2.0, Cause.HAUL_LINE) == pytest.approx(derived)


def test_a_directional_further_out_than_everything_leaves_the_litter_plumb() -> None:
    demand = governing_demand(make_site(haul=(1.0, 32.0)), 10.0, Method.TRACK)
    assert (demand.cause, demand.offset) == (Cause.PLUMB, 1.0)


def test_a_protected_edge_spares_the_haul_line_but_not_the_body() -> None:
    bare = make_site(outcrop(25.0), guided_by=Method.TAG)
    padded = make_site(outcrop(25.0), guided_by=Method.TAG, edges=[(25.0, 0.3)])
    assert offset_at(bare, 2.0) > 7
    assert governing_demand(padded, 2.0, Method.TAG).cause is Cause.PLUMB
    assert offset_at(padded, 2.0) == pytest.approx(1.7)
    assert offset_at(padded, 26.6) == offset_at(bare, 26.6)


def test_a_protected_edge_does_not_spare_the_track_line() -> None:
    site = make_site(outcrop(25.0), edges=[(25.0, 0.3)])
    assert governing_demand(site, 2.0, Method.TRACK).cause is Cause.TRACK_LINE


def test_the_line_to_the_hub_must_clear_rock_below_the_litter() -> None:
    shelf = ((0.0, 0.0), (0.0, 4.0), (9.0, 4.0), (0.0, 4.5), (0.0, 30.0))
    site = make_site(shelf, hub=(12.0, 0.5))
    demand = governing_demand(site, 6.5, Method.TRACK)
    assert demand.cause is Cause.GROUND_LINE
    # From (12, 0.5) up through (9.3, 4): 2.7 m in for 3.5 m up, and 6 m up to the litter.
    assert demand.offset == pytest.approx(12 - 2.7 * 6 / 3.5)
    assert governing_demand(site, 6.5, Method.ATTENDANT).offset < demand.offset


def test_the_haul_line_bends_over_a_protected_edge() -> None:
    site = make_site(haul=(-1.0, 30.5), track=(0.5, 32.0), edges=[(30.0, 0.3)])
    path = haul_path(site, 20.0, 0.65)
    assert path.hangs_from == Point(0.0, 30.0)
    ((edge, turn),) = path.bends
    assert edge.height == 30.0
    assert turn == pytest.approx(math.atan2(1.0, 0.5) - math.atan2(0.65, 10.0))


def test_the_haul_line_passes_a_protected_edge_that_is_not_in_its_way() -> None:
    site = make_site(edges=[(30.0, 0.3)])
    path = haul_path(site, 20.0, 0.65)
    assert path.hangs_from == Point(0.4, 32.0)
    assert path.bends == ()


# --- against dense sampling -------------------------------------------------------------------

STEPS = st.lists(st.tuples(st.floats(0.5, 6.0), st.floats(-1.0, 2.5)), min_size=2, max_size=7)


@st.composite
def walls(draw: st.DrawFn) -> Site:
    """Any wall below its lip at 30 m, directional and hub in the open, now and then an edge."""
    rises, offsets = zip(*draw(STEPS), strict=True)
    heights = np.concatenate([[0.0], np.cumsum(rises)])
    heights *= 30.0 / heights[-1]
    points = [(0.0, 0.0), *zip(map(float, offsets), map(float, heights[1:]), strict=True)]
    edges = [(height, 0.3) for _, height in points if draw(st.integers(0, 5)) == 0 and height > 0]
    try:
        return make_site(
            points,
            haul=(draw(st.floats(-0.5, 1.5)), draw(st.floats(31.0, 35.0))),
            track=(draw(st.floats(-0.5, 1.5)), draw(st.floats(31.0, 36.0))),
            guided_by=draw(st.sampled_from(Method)),
            edges=edges,
        )
    except (SiteError, ProfileError):
        assume(False)
        raise


def sampled_rock(site: Site) -> tuple[np.ndarray, np.ndarray]:
    """Points along the wall every centimetre or so, its corners among them."""
    part = np.linspace(0, 1, 600)
    x, z = site.wall.offsets, site.wall.heights
    return (
        np.concatenate([x[i] + part * (x[i + 1] - x[i]) for i in range(len(x) - 1)]),
        np.concatenate([z[i] + part * (z[i + 1] - z[i]) for i in range(len(z) - 1)]),
    )


def outer_chain(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """The taut string past (offset, height) points: their outer convex chain, lowest first."""
    chain: list[tuple[float, float]] = []
    for x, z in sorted(points, key=lambda point: point[1]):
        while len(chain) > 1:
            (x1, z1), (x2, z2) = chain[-2:]
            if (x2 - x1) * (z - z1) > (x - x1) * (z2 - z1):
                break
            chain.pop()
        chain.append((x, z))
    return chain


def clears(site: Site, height: float, offset: float, rock: tuple[np.ndarray, np.ndarray]) -> bool:
    """Whether everything clears with the litter there, sample by sample."""
    x, z = rock
    litter, lift, rig = site.litter, site.lift, site.rig
    depth = height - z
    beside = (depth >= 0) & (depth <= litter.bridle + litter.height)
    half = litter.half_width * np.clip(depth / litter.bridle, 0, 1)
    if np.any(offset - half[beside] - litter.clearance < x[beside]):
        return False
    haul = rig.haul_directional
    padded = [(e.offset, e.height) for e in site.edges if height < e.height < haul.z]
    if any(offset < edge[0] for edge in padded) or offset < haul.x:
        return False

    def free(chain: list[tuple[float, float]], protected: bool) -> bool:
        xs, zs = (
            np.array(values) for values in zip(*sorted(chain, key=lambda p: p[1]), strict=True)
        )
        passed = (z >= zs[0]) & (z <= zs[-1])
        if protected:
            # Rock beside a protected corner slopes up to the line; only open corners must clear.
            corners = np.isin(z, site.wall.heights) & ~np.isin(z, [e.height for e in site.edges])
            passed &= corners if site.edges else passed
        gap = np.interp(z[passed], zs, xs) - x[passed]
        return bool(np.all(gap >= lift.line_clearance))

    at = (offset, height)
    if not free(outer_chain([at, *padded, (haul.x, haul.z)]), protected=True):
        return False
    if lift.guided_by is Method.ATTENDANT:
        return True
    track = rig.track_directional
    if lift.guided_by is Method.TRACK and not free([at, (track.x, track.z)], protected=False):
        return False
    return free([at, (rig.hub.x, rig.hub.z)], protected=False)


@given(site=walls(), height=st.floats(2.0, 29.0))
def test_the_offset_is_the_least_that_clears_every_sample(site: Site, height: float) -> None:
    rock = sampled_rock(site)
    exact = offset_at(site, height)
    assert clears(site, height, exact + 1e-6, rock)
    assert not clears(site, height, exact - 0.06 * max(1.0, exact), rock)


@given(site=walls(), height=st.floats(2.0, 29.0), more=st.floats(0.0, 1.0))
def test_more_clearance_never_needs_less_room(site: Site, height: float, more: float) -> None:
    from dataclasses import replace

    wider = replace(site, litter=replace(site.litter, clearance=site.litter.clearance + more))
    lines = replace(site, lift=replace(site.lift, line_clearance=0.3 + more))
    assert offset_at(wider, height) >= offset_at(site, height)
    assert offset_at(lines, height) >= offset_at(site, height)
