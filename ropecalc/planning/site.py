"""A surveyed site: the wall, the rig, the load and the raise that is asked for. All SI.

x is the offset out from the datum line, z the height; both in metres. A :class:`Site` that
exists has been checked: its anchors are in the open and its heights are in order.
"""

from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

from ropecalc.mechanics.holding import Method, Point, Rig
from ropecalc.planning.problem import SiteError
from ropecalc.planning.profile import SAME, RockPoint, WallProfile

MOST_STATIONS = 400
"""More stations than this would not fit any sheet; the spacing is then a slip of the pen."""


@dataclass(frozen=True)
class Litter:
    """The load as a body. Lengths in metres, mass in kg.

    ``bridle`` reaches from the master attachment point down to the body, which is
    ``2 half_width`` wide and ``height`` high; ``clearance`` is kept between it and the rock.
    """

    mass: float
    bridle: float
    half_width: float
    height: float
    clearance: float

    @property
    def reach_down(self) -> float:
        """From the master attachment point down to the body's lowest part (m)."""
        return self.bridle + self.height

    def half_width_at(self, depth: float) -> float:
        """Half width (m) at ``depth`` below the master attachment point, clearance left out.

        It grows evenly along the bridle from nothing to the body's half width.
        """
        return self.half_width * min(1.0, max(0.0, depth) / self.bridle)


@dataclass(frozen=True)
class ProtectedEdge:
    """A surveyed point on which the haul line may bear, and the friction coefficient there."""

    offset: float
    height: float
    friction: float

    @property
    def point(self) -> Point:
        """Where the line bears."""
        return Point(self.offset, self.height)


@dataclass(frozen=True)
class Limits:
    """What the user allows, in N; None where nothing was entered. Nothing is built in."""

    track_tension: float | None = None
    tag_tension: float | None = None
    haul_tension: float | None = None
    hub_uplift: float | None = None
    push: float | None = None


@dataclass(frozen=True)
class Raise:
    """What the raise asks for: heights of the master attachment point (m) and the method."""

    start_height: float
    guidance_ends: float
    station_spacing: float
    line_clearance: float
    guided_by: Method = Method.TRACK


@dataclass(frozen=True)
class Site:
    """Everything a plan needs. ``source`` names the file it came from.

    ``read_from`` lists every file that it was read from, so that none is written over.

    Raises :class:`SiteError` if the parts contradict each other.
    """

    name: str
    wall: WallProfile
    rig: Rig
    litter: Litter
    lift: Raise
    edges: tuple[ProtectedEdge, ...] = ()
    limits: Limits = Limits()
    datum: str = ""
    surveyed_on: str = ""
    source: str = "site"
    read_from: tuple[Path, ...] = field(default=(), compare=False)

    def __post_init__(self) -> None:
        _check_anchors(self)
        _check_heights(self)

    @cached_property
    def open_rock(self) -> tuple[RockPoint, ...]:
        """The surveyed points that the haul line must keep clear of (not protected)."""
        protected = [edge.height for edge in self.edges]
        return tuple(
            point
            for point in self.wall.points
            if all(abs(point.height - height) > SAME for height in protected)
        )


def protect(wall: WallProfile, height: float, friction: float) -> ProtectedEdge:
    """The protected edge at the surveyed point at ``height`` (within 1 mm).

    Raises ValueError in words if no surveyed point is there.
    """
    near = min(wall.points, key=lambda point: (abs(point.height - height), -point.offset))
    if abs(near.height - height) > 0.001:
        raise ValueError(
            f"no surveyed point of the wall is at {height:g} m; the nearest is at "
            f"{near.height:g} m."
        )
    return ProtectedEdge(wall.rock_at(near.height), near.height, friction)


def _check_heights(site: Site) -> None:
    lift, wall, litter = site.lift, site.wall, site.litter

    def refuse(key: str, problem: str, remedy: str) -> None:
        raise SiteError(site.source, key, problem, remedy)

    if lift.guidance_ends <= lift.start_height:
        refuse(
            "[raise] guidance_ends",
            f"guidance ends at {lift.guidance_ends:g} m, which is not above the start at "
            f"{lift.start_height:g} m.",
            "Give the height of the master attachment point where edge attendants take over.",
        )
    for key, directional in (
        ("haul_directional", site.rig.haul_directional),
        ("track_directional", site.rig.track_directional),
    ):
        if lift.guidance_ends >= directional.z:
            refuse(
                "[raise] guidance_ends",
                f"guidance ends at {lift.guidance_ends:g} m, but [{key}] is at "
                f"{directional.z:g} m.",
                "End the guidance below both directionals; edge attendants take over there.",
            )
    count = (lift.guidance_ends - lift.start_height) / lift.station_spacing
    if count > MOST_STATIONS:
        refuse(
            "[raise] station_spacing",
            f"stations every {lift.station_spacing:g} m make {count:.0f} of them, more than "
            f"{MOST_STATIONS}.",
            "Space the stations wider.",
        )
    bottom = lift.start_height - litter.reach_down
    if bottom < wall.foot - SAME:
        refuse(
            "[raise] start_height",
            f"at the start the body's lowest part would be at {bottom:.2f} m, below the lowest "
            f"surveyed point of the wall ({wall.foot:g} m).",
            f"Start at {wall.foot + litter.reach_down:.2f} m or higher, or survey the wall "
            "further down.",
        )
    if lift.start_height >= wall.top:
        refuse(
            "[raise] start_height",
            f"the raise starts at {lift.start_height:g} m, not below the wall's highest surveyed "
            f"point ({wall.top:g} m).",
            "Survey the wall up to its lip, or start lower.",
        )


def _check_anchors(site: Site) -> None:
    rig, wall = site.rig, site.wall
    for key, anchor in (
        ("haul_directional", rig.haul_directional),
        ("track_directional", rig.track_directional),
        ("hub", rig.hub),
    ):
        rock = wall.rock_at(anchor.z)
        if anchor.x < rock - SAME:
            raise SiteError(
                site.source,
                f"[{key}] offset",
                f"at {anchor.z:g} m the rock reaches {rock:.2f} m out, so a point "
                f"{anchor.x:.2f} m out is inside the rock.",
                "Measure it from the same datum as the wall's points.",
            )
    furthest = max(rig.haul_directional.x, rig.track_directional.x, *wall.offsets)
    if rig.hub.x <= furthest:
        raise SiteError(
            site.source,
            "[hub] offset",
            f"the hub is {rig.hub.x:g} m out, not in front of the wall and the directionals, "
            f"which reach {furthest:g} m out.",
            "The hub is the ground anchor out in front: give its distance from the datum line.",
        )
