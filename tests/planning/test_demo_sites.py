"""The two demo walls, alike but for the height of their outcrop."""

from pathlib import Path

import pytest

from ropecalc.mechanics.holding import Method
from ropecalc.planning.raise_plan import RaisePlan, plan_raise
from ropecalc.planning.site import Site
from ropecalc.planning.site_file import read_site

SITES = Path(__file__).parents[2] / "sites"


@pytest.fixture(scope="module")
def sites() -> tuple[Site, Site]:
    return (
        read_site(SITES / "lower-heron-wall.toml"),
        read_site(SITES / "upper-heron-wall.toml"),
    )


@pytest.fixture(scope="module")
def plans(sites: tuple[Site, Site]) -> tuple[RaisePlan, RaisePlan]:
    lower, upper = sites
    return plan_raise(lower), plan_raise(upper)


def test_only_the_outcrops_height_differs(sites: tuple[Site, Site]) -> None:
    lower, upper = sites
    assert (lower.rig, lower.litter, lower.lift) == (upper.rig, upper.litter, upper.lift)
    shift = [b.height - a.height for a, b in zip(lower.wall.points, upper.wall.points, strict=True)]
    assert shift == [0, 19, 19, 19, 0]
    assert list(lower.wall.offsets) == list(upper.wall.offsets)


def test_both_can_be_held_all_the_way(plans: tuple[RaisePlan, RaisePlan]) -> None:
    for plan in plans:
        for method in Method:
            assert plan.summary(method).gaps == ()
        assert not plan.summary().sensitive


def test_the_high_outcrop_needs_clearly_more_and_comes_nearer_to_its_limit(
    plans: tuple[RaisePlan, RaisePlan],
) -> None:
    """Common practice, no published source: outcrops high on a wall are the hard ones.

    Compared up to the height where guidance ends, the same for both.
    """
    lower, upper = (plan.summary(Method.TRACK) for plan in plans)
    assert lower.effort is not None
    assert upper.effort is not None
    assert lower.nearest_line is not None
    assert upper.nearest_line is not None
    assert upper.effort.value > 2 * lower.effort.value
    assert upper.nearest_line.value > 2 * lower.nearest_line.value


def test_the_crux_is_above_the_outcrop_not_level_with_it(
    plans: tuple[RaisePlan, RaisePlan],
) -> None:
    upper = plans[1]
    assert upper.governing is not None
    assert upper.governing.height == pytest.approx(25.0 + 1.0 + 0.6)
    level = min(upper.stations, key=lambda station: abs(station.height - 25.0))
    here, there = (s.way(Method.TRACK).line_tension for s in (upper.governing, level))
    assert here is not None
    assert there is not None
    assert here > 1.5 * there


@pytest.mark.parametrize("path", sorted(SITES.glob("*.toml")), ids=lambda path: path.stem)
def test_demo_files_explain_themselves_and_enter_no_limit(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert "Tamarack Gorge" in text
    assert text.count("#") > 20
    site = read_site(path)
    assert set(vars(site.limits).values()) == {None}
