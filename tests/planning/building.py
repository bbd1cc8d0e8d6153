"""Sites made of a few numbers, for tests. Metres, kilograms."""

from collections.abc import Sequence
from dataclasses import replace

from ropecalc.mechanics.holding import Method, Point, Rig
from ropecalc.planning.clearing import Demand, all_demands, most_room
from ropecalc.planning.profile import WallProfile
from ropecalc.planning.site import Limits, Litter, Raise, Site, protect

STRAIGHT = ((0.0, 0.0), (0.0, 30.0))


def outcrop(tip_height: float, tip: float = 1.7) -> tuple[tuple[float, float], ...]:
    """A plumb wall of 30 m with one outcrop, 1.5 m of it below the tip and 1 m above."""
    return (
        (0.0, 0.0),
        (0.0, tip_height - 1.5),
        (tip, tip_height),
        (0.0, tip_height + 1.0),
        (0.0, 30.0),
    )


def make_site(
    wall: Sequence[tuple[float, float]] = STRAIGHT,
    haul: tuple[float, float] = (0.4, 32.0),
    track: tuple[float, float] | None = None,
    hub: tuple[float, float] = (40.0, 0.5),
    mass: float = 200.0,
    guided_by: Method = Method.TRACK,
    edges: Sequence[tuple[float, float]] = (),
    limits: Limits | None = None,
    clearance: float = 0.3,
    **lift: float,
) -> Site:
    """A site like the demo walls, changed by what is given; edges as (height, friction)."""
    profile = WallProfile.through(wall)
    heights = Raise(2.0, 29.0, 3.0, 0.3, guided_by)
    return Site(
        name="Trial wall",
        wall=profile,
        rig=Rig(Point(*haul), Point(*(track or haul)), Point(*hub)),
        litter=Litter(mass, bridle=1.0, half_width=0.35, height=0.6, clearance=clearance),
        lift=replace(heights, **lift),
        edges=tuple(protect(profile, *edge) for edge in edges),
        limits=limits or Limits(),
    )


def governing_demand(site: Site, height: float, method: Method) -> Demand:
    """The demand that asks for most room at ``height``."""
    return most_room(all_demands(site, height), method)
