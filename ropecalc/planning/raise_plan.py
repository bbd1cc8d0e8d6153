"""The raise, station by station: where the litter must be, and what it takes to hold it there.

Statics only: at each height the litter is at rest, as far in as the rock allows. Forces in N,
lengths in m, angles in rad, all unrounded; :mod:`ropecalc.planning.report` rounds.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.mechanics.friction import capstan_tension
from ropecalc.mechanics.guiding import straight_line_limit, track_length
from ropecalc.mechanics.holding import Hold, Method, Point, Reach, Rig, hold
from ropecalc.mechanics.vectors import weight
from ropecalc.planning.clearing import Demand, HaulPath, all_demands, haul_path, most_room
from ropecalc.planning.profile import SAME, Array
from ropecalc.planning.site import Limits, Site

SENSITIVE_SHIFT = 0.2
"""How far the litter is moved (m) to see whether a tension can be relied on."""
SENSITIVE_CHANGE = 0.5
"""A tension that changes by more than this part of itself is too sensitive to print."""
NEGLIGIBLE_CHANGE = 0.1
"""... unless the change is less than this part of the load: near plumb, small pulls double."""
_FINEST_GRID, _GRID_SIZE = 0.05, 1000

EDGE_FRICTION = (
    "At protected edges the haul tension above is what the haul team feels while hauling; while "
    "lowering it is less, at rest anything in between. Lines move sideways on edges as the "
    "litter moves."
)
SURVEY_ONLY = (
    "The plan knows only the surveyed points and straight rock between them, and no rock above "
    "the highest or below the lowest of them."
)
LEG_REACH = (
    "The outward push of an attendant is worked out even where the wall is out of reach of their "
    "legs; compare the offset with the wall."
)
BELAY = "The belay line and what happens if one line fails are not in this plan; plan them as well."


class Verdict(StrEnum):
    """A result compared with what the user entered; nothing is built in."""

    INSIDE = "inside the limit you entered"
    OUTSIDE = "outside the limit you entered"
    TOO_SENSITIVE = "too sensitive to compare"
    NO_LIMIT = "no limit entered"
    NOTHING = "nothing to compare"


@dataclass(frozen=True)
class Guided:
    """One way of holding the litter at one station. A number is None where it is not held.

    ``line_tension`` is the tag line's, or all track lines' together; ``haul_tension`` is the
    haul line's at the litter and ``haul_above`` beyond the last edge it bears on, hauling.
    ``effort_further`` is what holds the litter off if it is 0.2 m further out. ``room`` is what
    is left, in m, up to the straight line from directional to hub, and ``used`` the part of the
    way from the directional's plumb line to it (both None where there is no such line).
    Not held, either ``reach`` says what stands in the way, or ``unmet`` is a demand of this
    method alone that the path of the plan's method does not meet.
    """

    method: Method
    reach: Reach
    unmet: Demand | None = None
    haul_tension: float | None = None
    haul_above: float | None = None
    line_tension: float | None = None
    push: float | None = None
    hub_uplift: float | None = None
    haul_elevation: float | None = None
    ground_depression: float | None = None
    litter_angle: float | None = None
    effort_further: float | None = None
    room: float | None = None
    used: float | None = None
    sensitive: bool = False

    @property
    def held(self) -> bool:
        """Whether this method holds the litter here."""
        return self.reach.possible and self.unmet is None

    @property
    def effort(self) -> float | None:
        """What holds the litter off: the line's tension, or the attendant's push (N)."""
        return self.push if self.method is Method.ATTENDANT else self.line_tension


@dataclass(frozen=True)
class Station:
    """One height of the raise; heights and offsets are the master attachment point's.

    ``take_in`` is the length of each track line taken in since the last station, ``pay_out``
    that of a tag line paid out; negative the other way, None where one end is not held.
    """

    height: float
    offset: float
    demand: Demand
    haul: HaulPath
    ways: tuple[Guided, ...]
    track_length: float
    tag_length: float
    take_in: float | None = None
    pay_out: float | None = None

    def way(self, method: Method) -> Guided:
        """How the litter is held here by ``method``."""
        return next(way for way in self.ways if way.method == method)


@dataclass(frozen=True)
class Place:
    """One of the closely spaced places between the stations, for drawing the path (m, N)."""

    height: float
    offset: float
    effort: float | None
    effort_further: float | None


@dataclass(frozen=True)
class Peak:
    """The largest value over the raise, and the height where it occurs."""

    value: float
    height: float


@dataclass(frozen=True)
class Gap:
    """A stretch of heights over which a method cannot hold the litter, and why at its foot.

    ``demand`` is what the plan's path asks for there; ``reach`` and ``unmet`` as
    in :class:`Guided`.
    """

    low: float
    high: float
    reach: Reach
    demand: Demand
    unmet: Demand | None


@dataclass(frozen=True)
class Comparison:
    """The largest value of one result against the limit entered for it."""

    name: str
    limit: float | None
    largest: Peak | None
    verdict: Verdict


@dataclass(frozen=True)
class Summary:
    """One method over the whole raise: its largest results (None: none to rely on) and its gaps.

    Places that are too sensitive are left out of the largest forces; ``sensitive`` says that
    there are some. ``nearest_line`` is the largest part used of the way to the straight line.
    """

    method: Method
    effort: Peak | None
    haul: Peak | None
    hub_uplift: Peak | None
    nearest_line: Peak | None
    gaps: tuple[Gap, ...]
    sensitive: bool
    comparisons: tuple[Comparison, ...]


@dataclass(frozen=True)
class RaisePlan:
    """A site's raise. ``governing`` is the station with the largest effort of the plan's method.

    ``trace`` follows the path closely, for pictures. ``track_play`` is the longest minus the
    shortest track line over all places where the plan's method holds the litter (m); None if
    there are none.
    """

    site: Site
    load: float
    stations: tuple[Station, ...]
    governing: Station | None
    trace: tuple[Place, ...]
    summaries: tuple[Summary, ...]
    track_play: float | None
    cautions: tuple[str, ...]

    @property
    def method(self) -> Method:
        """The method that the plan is for."""
        return self.site.lift.guided_by

    def summary(self, method: Method | None = None) -> Summary:
        """The whole raise by ``method`` (default: the plan's)."""
        wanted = method or self.method
        return next(summary for summary in self.summaries if summary.method == wanted)


def plan_raise(site: Site) -> RaisePlan:
    """The plan of the raise that ``site`` asks for.

    At each height the litter is at the least offset that clears the rock for the method that
    guides it; the other methods are worked out on the same path.
    """
    load = float(weight(mass=site.litter.mass))
    method = site.lift.guided_by
    regular = _regular_heights(site)
    grid = _merged(_grid(site), regular)
    sweep = _Sweep(site, load, grid)
    critical = _critical_heights(site, sweep.demands)
    grid = _merged(grid, critical)
    peak = _refined_peak(site, load, sweep)
    if peak is not None:
        grid = _merged(grid, [peak])
        sweep = _Sweep(site, load, grid)
    chosen = _merged(regular, critical, [] if peak is None else [peak])
    stations = _stations(site, load, chosen)
    governing = None
    if peak is not None:
        governing = min(stations, key=lambda station: abs(station.height - peak))
    summaries = tuple(
        _summary(site, load, sweep, way) for way in sorted(Method, key=lambda m: m != method)
    )
    lengths = sweep.track_lengths[sweep.forces[method].held]
    return RaisePlan(
        site=site,
        load=load,
        stations=stations,
        governing=governing,
        trace=_trace(site, load, sweep),
        summaries=summaries,
        track_play=float(np.ptp(lengths)) if len(lengths) else None,
        cautions=_cautions(site),
    )


# --- heights ----------------------------------------------------------------------------------


def _regular_heights(site: Site) -> list[float]:
    lift = site.lift
    steps = math.floor((lift.guidance_ends - lift.start_height) / lift.station_spacing + 1e-9)
    regular = [lift.start_height + step * lift.station_spacing for step in range(steps + 1)]
    return [*regular, lift.guidance_ends]


def _critical_heights(site: Site, demands: Sequence[Demand]) -> list[float]:
    """Where the litter is level with a corner that sticks out, and where its body has passed it.

    Only corners that govern the offset somewhere: at the others nothing about the path changes.
    """
    litter, lift = site.litter, site.lift
    governing = {(demand.at.offset, demand.at.height) for demand in demands}
    heights = [
        corner.height + past
        for corner in site.wall.outward_corners()
        if (corner.offset, corner.height) in governing
        for past in (0.0, litter.reach_down)
    ]
    return [h for h in heights if lift.start_height < h < lift.guidance_ends]


def _grid(site: Site) -> list[float]:
    """Heights close enough together to find the peaks between the stations."""
    lift, litter = site.lift, site.litter
    rise = lift.guidance_ends - lift.start_height
    count = math.ceil(rise / max(_FINEST_GRID, rise / _GRID_SIZE))
    even = np.linspace(lift.start_height, lift.guidance_ends, count + 1)
    corners = [
        point.height + past
        for point in site.wall.points
        for past in (0.0, litter.bridle, litter.reach_down)
    ]
    return [*even, *(h for h in corners if lift.start_height < h < lift.guidance_ends)]


def _merged(*groups: Sequence[float]) -> list[float]:
    """All heights in order, those within a millimetre taken as one (the later group's)."""
    ranked = sorted((float(h), rank) for rank, group in enumerate(groups) for h in group)
    merged: list[tuple[float, int]] = []
    for height, rank in ranked:
        if merged and height - merged[-1][0] <= 1e-3:
            if rank > merged[-1][1]:
                merged[-1] = (height, rank)
        else:
            merged.append((height, rank))
    return [height for height, _ in merged]


# --- forces along the path ----------------------------------------------------------------------


class _Sweep:
    """Every method worked out at each of ``heights``, on the path of the site's method."""

    def __init__(self, site: Site, load: float, heights: Sequence[float]) -> None:
        self.site = site
        self.heights = np.array(heights)
        found = [all_demands(site, float(height)) for height in heights]
        self.demands = [most_room(there, site.lift.guided_by) for there in found]
        self.offsets = np.array([demand.offset for demand in self.demands])
        self.forces = {
            method: _Forces(
                site,
                load,
                method,
                self.offsets,
                self.heights,
                [
                    _unmet(there, method, demand)
                    for there, demand in zip(found, self.demands, strict=True)
                ],
            )
            for method in Method
        }

    @property
    def track_lengths(self) -> Array:
        """The length of one track line at each height (m)."""
        return _lengths(self.site.rig, self.offsets, self.heights)[0]


class _Forces:
    """One method's forces at many places at once; NaN where the litter is not held.

    ``needs`` are demands of this method alone that the places do not meet; it cannot hold there.
    """

    def __init__(
        self,
        site: Site,
        load: float,
        method: Method,
        offsets: Array,
        heights: Array,
        needs: Sequence[Demand | None] | None = None,
    ) -> None:
        self.method = method
        self.haul_paths = [
            haul_path(site, float(z), float(x)) for x, z in zip(offsets, heights, strict=True)
        ]
        self.needs = needs or [None] * len(heights)
        size = len(heights)
        self.reach = np.empty(size, dtype=object)
        angles = ("haul_elevation", "ground_depression", "litter_angle")
        names = ("haul_tension", "line_tension", "push", "hub_uplift", *angles)
        self.values = {name: np.full(size, np.nan) for name in names}
        starts = [path.hangs_from for path in self.haul_paths]
        for start in dict.fromkeys(starts):
            here = np.array([other == start for other in starts])
            rig = Rig(start, site.rig.track_directional, site.rig.hub)
            held = hold(method, rig, load, offsets[here], heights[here])
            self.reach[here] = [Reach(int(reach)) for reach in held.reach]
            for name in names:
                self.values[name][here] = _numbers(held, name)
        self.held = np.array(
            [
                reach.possible and need is None
                for reach, need in zip(self.reach, self.needs, strict=True)
            ]
        )
        for values in self.values.values():
            values[~self.held] = np.nan
        self.haul_above = np.array(
            [
                _above_edges(tension, path)
                for tension, path in zip(self.values["haul_tension"], self.haul_paths, strict=True)
            ]
        )
        plumb, line = _straight_line(site, method, starts, heights)
        self.room = np.where(self.held, line - offsets, np.nan)
        self.used = np.where(self.held, (offsets - plumb) / (line - plumb), np.nan)

    @property
    def effort(self) -> Array:
        """Line tension, or the attendant's push."""
        return self.values["push" if self.method is Method.ATTENDANT else "line_tension"]


def _numbers(held: Hold, name: str) -> Array:
    return np.ma.filled(np.ma.asarray(getattr(held, name), dtype=float), np.nan)


def _unmet(found: Sequence[Demand], method: Method, met: Demand) -> Demand | None:
    """What this method would need beyond the demand that the path meets; None if nothing."""
    most = most_room(found, method)
    return most if most.offset > met.offset + SAME else None


def _above_edges(tension: float, path: HaulPath) -> float:
    """The haul tension beyond all edges while hauling: each edge adds its friction."""
    for edge, turn in path.bends:
        if tension > 0:
            tension = float(
                capstan_tension(tension_behind=tension, friction=edge.friction, turn=turn)
            )
    return tension


def _straight_line(
    site: Site, method: Method, hangs_from: Sequence[Point], heights: Array
) -> tuple[Array, Array]:
    """Offsets of the directional and of its straight line to the hub; NaN where there is none."""
    none = np.full(len(heights), np.nan)
    if method is Method.ATTENDANT:
        return none, none
    track, hub = site.rig.track_directional, site.rig.hub
    tops = [track] * len(heights) if method is Method.TRACK else hangs_from
    plumb = np.array([top.x for top in tops])
    limit = straight_line_limit.masked(
        z=heights,
        x_D=plumb,
        z_D=np.array([top.z for top in tops]),
        x_B=np.full(len(heights), hub.x),
        z_B=np.full(len(heights), hub.z),
    )
    return plumb, np.ma.filled(limit, np.nan)


def _lengths(rig: Rig, offsets: Array, heights: Array) -> tuple[Array, Array]:
    """The lengths of one track line and of a tag line (m)."""
    top, hub = rig.track_directional, rig.hub
    track: Any = track_length(x=offsets, z=heights, x_A=top.x, z_A=top.z, x_B=hub.x, z_B=hub.z)
    return np.asarray(track), np.hypot(hub.x - offsets, hub.z - heights)


def _refined_peak(site: Site, load: float, sweep: _Sweep) -> float | None:
    """The height of the largest effort, searched on ever finer grids; None if never held."""
    heights = sweep.heights
    effort = sweep.forces[site.lift.guided_by].effort
    if not np.isfinite(effort).any():
        return None
    for _ in range(2):
        at = int(np.nanargmax(effort))
        low, high = heights[max(at - 1, 0)], heights[min(at + 1, len(heights) - 1)]
        heights = np.unique(np.append(np.linspace(low, high, 41), heights[at]))
        effort = _Sweep(site, load, list(heights)).forces[site.lift.guided_by].effort
    return float(heights[int(np.nanargmax(effort))])


# --- stations and summaries -----------------------------------------------------------------------


def _stations(site: Site, load: float, heights: Sequence[float]) -> tuple[Station, ...]:
    sweep = _Sweep(site, load, heights)
    track, tag = _lengths(site.rig, sweep.offsets, sweep.heights)
    moved = {method: _moved(site, load, sweep, method) for method in Method}
    stations: list[Station] = []
    for index, height in enumerate(heights):
        ways = tuple(_guided(sweep, method, index, moved[method]) for method in Method)
        forces = sweep.forces
        along = index > 0 and all(
            forces[site.lift.guided_by].held[place] for place in (index - 1, index)
        )
        stations.append(
            Station(
                height=float(height),
                offset=float(sweep.offsets[index]),
                demand=sweep.demands[index],
                haul=forces[site.lift.guided_by].haul_paths[index],
                ways=ways,
                track_length=float(track[index]),
                tag_length=float(tag[index]),
                take_in=float(track[index - 1] - track[index]) if along else None,
                pay_out=float(tag[index] - tag[index - 1]) if along else None,
            )
        )
    return tuple(stations)


def _trace(site: Site, load: float, sweep: _Sweep) -> tuple[Place, ...]:
    method = site.lift.guided_by
    effort, further = sweep.forces[method].effort, _moved(site, load, sweep, method).further
    return tuple(
        Place(float(z), float(x), *(None if math.isnan(f) else float(f) for f in forces))
        for z, x, *forces in zip(sweep.heights, sweep.offsets, effort, further, strict=True)
    )


def _guided(sweep: _Sweep, method: Method, index: int, moved: "_Moved") -> Guided:
    forces = sweep.forces[method]
    if not forces.held[index]:
        return Guided(method, forces.reach[index], forces.needs[index])

    def number(values: Array) -> float | None:
        return None if math.isnan(values[index]) else float(values[index])

    return Guided(
        method=method,
        reach=forces.reach[index],
        haul_tension=number(forces.values["haul_tension"]),
        haul_above=number(forces.haul_above),
        line_tension=number(forces.values["line_tension"]),
        push=number(forces.values["push"]),
        hub_uplift=number(forces.values["hub_uplift"]),
        haul_elevation=number(forces.values["haul_elevation"]),
        ground_depression=number(forces.values["ground_depression"]),
        litter_angle=number(forces.values["litter_angle"]),
        effort_further=number(moved.further),
        room=number(forces.room),
        used=number(forces.used),
        sensitive=bool(moved.sensitive[index]),
    )


@dataclass(frozen=True)
class _Moved:
    """The effort with the litter 0.2 m further out, and where it cannot be relied on."""

    further: Array
    sensitive: "np.ndarray[Any, Any]"


def _moved(site: Site, load: float, sweep: _Sweep, method: Method) -> _Moved:
    here = sweep.forces[method]
    further, nearer = (
        _Forces(site, load, method, sweep.offsets + shift, sweep.heights)
        for shift in (SENSITIVE_SHIFT, -SENSITIVE_SHIFT)
    )
    less = np.nan_to_num(nearer.effort, nan=0.0)
    change = np.maximum(further.effort - here.effort, here.effort - less)
    much = (change > SENSITIVE_CHANGE * here.effort) & (change > NEGLIGIBLE_CHANGE * load)
    return _Moved(further.effort, here.held & (~further.held | much))


def _summary(site: Site, load: float, sweep: _Sweep, method: Method) -> Summary:
    forces, heights = sweep.forces[method], sweep.heights
    shaky = _moved(site, load, sweep, method).sensitive

    def largest(values: Array) -> Peak | None:
        return _peak(np.where(shaky, np.nan, values), heights)

    effort, haul = largest(forces.effort), largest(forces.haul_above)
    attended = method is Method.ATTENDANT
    uplift = None if attended else largest(forces.values["hub_uplift"])
    return Summary(
        method=method,
        effort=effort,
        haul=haul,
        hub_uplift=uplift,
        nearest_line=_peak(forces.used, heights),
        gaps=tuple(_gaps(forces, sweep)),
        sensitive=bool(shaky.any()),
        comparisons=_comparisons(site.limits, method, effort, haul, uplift, bool(shaky.any())),
    )


def _peak(values: Array, heights: Array) -> Peak | None:
    if not np.isfinite(values).any():
        return None
    at = int(np.nanargmax(values))
    return Peak(float(values[at]), float(heights[at]))


def _gaps(forces: _Forces, sweep: _Sweep) -> list[Gap]:
    """Neighbouring places that are not held for the same reason, as one stretch each."""
    gaps: list[Gap] = []
    last: object = None
    for index, height in enumerate(sweep.heights):
        if forces.held[index]:
            last = None
            continue
        demand, unmet = sweep.demands[index], forces.needs[index]
        reason = (forces.reach[index], (unmet or demand).cause, unmet is None)
        if reason == last:
            gaps[-1] = replace(gaps[-1], high=float(height))
        else:
            gaps.append(Gap(float(height), float(height), forces.reach[index], demand, unmet))
        last = reason
    return gaps


def _comparisons(
    limits: Limits,
    method: Method,
    effort: Peak | None,
    haul: Peak | None,
    uplift: Peak | None,
    shaky: bool,
) -> tuple[Comparison, ...]:
    first = {
        Method.TRACK: ("track lines together", limits.track_tension),
        Method.TAG: ("tag line", limits.tag_tension),
        Method.ATTENDANT: ("outward push", limits.push),
    }[method]
    rows = [(*first, effort), ("haul line", limits.haul_tension, haul)]
    if method is not Method.ATTENDANT:
        rows.append(("upward pull on the hub", limits.hub_uplift, uplift))
    return tuple(
        Comparison(name, limit, largest, _verdict(limit, largest, shaky))
        for name, limit, largest in rows
    )


def _verdict(limit: float | None, largest: Peak | None, shaky: bool) -> Verdict:
    if limit is None:
        return Verdict.NO_LIMIT
    if largest is not None and largest.value > limit:
        return Verdict.OUTSIDE
    if shaky:
        return Verdict.TOO_SENSITIVE
    return Verdict.NOTHING if largest is None else Verdict.INSIDE


def _cautions(site: Site) -> tuple[str, ...]:
    found = [cautions.STATIC, cautions.FRICTIONLESS, SURVEY_ONLY, LEG_REACH, BELAY]
    if site.edges:
        found.append(EDGE_FRICTION)
    if site.lift.guided_by is Method.ATTENDANT:
        found.append(cautions.ATTENDANT_LIMITS)
    else:
        found.append(cautions.COMMON_HUB)
    return (*found, cautions.NEAR_DIRECTIONAL, cautions.AUTHORITY)
