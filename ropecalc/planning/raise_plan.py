"""The raise, station by station: where the litter must be, and what it takes to hold it there.

Statics only: at each height the litter is at rest, as far in as the rock allows. Forces in N,
lengths in m, angles in rad, all unrounded; :mod:`ropecalc.planning.report` rounds.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cached_property
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.friction import capstan_tension
from ropecalc.mechanics.guiding import straight_line_limit, tag_length, track_length
from ropecalc.mechanics.holding import (
    SENSITIVE_SHIFT,
    Hold,
    Method,
    Point,
    Reach,
    Rig,
    hold,
    too_shaky,
)
from ropecalc.mechanics.vectors import weight
from ropecalc.planning.clearing import Demand, HaulPath, all_demands, haul_path, most_room
from ropecalc.planning.problem import SiteError
from ropecalc.planning.profile import SAME, Array
from ropecalc.planning.site import Limits, Site

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
LEVEL_CLEARANCE = (
    "Clearances are measured level, straight out from the rock; square to a leaning line or a "
    "leaning wall there is less."
)
LEG_REACH = (
    "The outward push of an attendant is worked out even where the wall is out of reach of their "
    "legs; compare the offset with the wall."
)
BELAY = "The belay line and what happens if one line fails are not in this plan; plan them as well."


class Verdict(StrEnum):
    """A result compared with what the user entered; nothing is built in."""

    INSIDE = "inside the limit you entered"
    PARTLY = "inside the limit you entered where the litter is held, which is not everywhere"
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
    """The largest value of one result against the limit entered for it.

    ``partial``: some heights have no value to rely on (not held, or too sensitive), and the
    largest knows nothing of them.
    """

    name: str
    limit: float | None
    largest: Peak | None
    verdict: Verdict
    partial: bool


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
    guides it; the other methods are worked out on the same path. Clearances are measured level.
    Raises :class:`SiteError` for a site that leads where a result does not hold.
    """
    try:
        return _plan(site)
    except DomainError as error:
        raise SiteError(
            site.source,
            "",
            f"this site cannot be worked out. {error}",
            "Check the survey and the load.",
        ) from error


def _plan(site: Site) -> RaisePlan:
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
    summaries = tuple(_summary(sweep, way) for way in sorted(Method, key=lambda m: m != method))
    stated = _stated_heights(summaries[0])
    chosen = _merged(regular, critical, stated, [] if peak is None else [peak])
    stations = _stations(_Sweep(site, load, chosen))
    governing = None
    if peak is not None:
        governing = min(stations, key=lambda station: abs(station.height - peak))
    lengths = sweep.lengths[0][sweep.guided.held]
    return RaisePlan(
        site=site,
        load=load,
        stations=stations,
        governing=governing,
        trace=_trace(sweep),
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


def _stated_heights(summary: Summary) -> list[float]:
    """Where the largest results lie that a plan states, so that each stands in its table."""
    peaks = (summary.effort, summary.haul, summary.hub_uplift)
    return [peak.height for peak in peaks if peak is not None]


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
    """Every method worked out at each of ``heights``, on the path of the site's method.

    What is asked for is worked out once, when it is first needed.
    """

    def __init__(self, site: Site, load: float, heights: Sequence[float]) -> None:
        self.site = site
        self.load = load
        self.heights = np.array(heights)
        self._found = [all_demands(site, float(height)) for height in heights]
        self.demands = [most_room(there, site.lift.guided_by) for there in self._found]
        self.offsets = np.array([demand.offset for demand in self.demands])
        self._forces: dict[tuple[Method, float], _Forces] = {}
        self._paths: dict[float, list[HaulPath]] = {}
        self._moved: dict[Method, _Moved] = {}

    def forces(self, method: Method) -> "_Forces":
        """What ``method`` takes on the path."""
        return self._forces_at(method, 0.0)

    def moved(self, method: Method) -> "_Moved":
        """What ``method`` takes with the litter a little further out or in."""
        if method not in self._moved:
            here, further, nearer = (
                self._forces_at(method, shift).effort
                for shift in (0.0, SENSITIVE_SHIFT, -SENSITIVE_SHIFT)
            )
            self._moved[method] = _Moved(further, too_shaky(self.load, here, further, nearer))
        return self._moved[method]

    @property
    def guided(self) -> "_Forces":
        """What the site's own method takes on the path."""
        return self.forces(self.site.lift.guided_by)

    @property
    def haul_paths(self) -> "list[HaulPath]":
        """How the haul line runs from each place on the path."""
        return self._paths_at(0.0)

    @cached_property
    def lengths(self) -> tuple[Array, Array]:
        """The lengths of one track line and of a tag line at each height (m)."""
        top, hub = self.site.rig.track_directional, self.site.rig.hub
        here = {"x": self.offsets, "z": self.heights, "x_B": hub.x, "z_B": hub.z}
        track, tag = track_length(**here, x_A=top.x, z_A=top.z), tag_length(**here)
        return np.asarray(track), np.asarray(tag)

    def _forces_at(self, method: Method, shift: float) -> "_Forces":
        if (method, shift) not in self._forces:
            needs = [
                None if shift else _unmet(there, method, demand)
                for there, demand in zip(self._found, self.demands, strict=True)
            ]
            self._forces[method, shift] = _Forces(
                self.site,
                self.load,
                method,
                self.offsets + shift,
                self.heights,
                self._paths_at(shift),
                needs,
            )
        return self._forces[method, shift]

    def _paths_at(self, shift: float) -> list[HaulPath]:
        if shift not in self._paths:
            self._paths[shift] = [
                haul_path(self.site, float(z), float(x) + shift)
                for x, z in zip(self.offsets, self.heights, strict=True)
            ]
        return self._paths[shift]


@dataclass(frozen=True)
class _Moved:
    """The effort with the litter 0.2 m further out, and where it cannot be relied on."""

    further: Array
    sensitive: "np.ndarray[Any, Any]"


class _Forces:
    """One method's forces at many places at once; NaN where the litter is not held.

    ``paths`` are the haul line's at these places; ``needs`` are demands of this method alone
    that the places do not meet, so that it cannot hold there.
    """

    def __init__(
        self,
        site: Site,
        load: float,
        method: Method,
        offsets: Array,
        heights: Array,
        paths: Sequence[HaulPath],
        needs: Sequence[Demand | None],
    ) -> None:
        self.method = method
        self.needs = needs
        size = len(heights)
        self.reach = np.empty(size, dtype=object)
        angles = ("haul_elevation", "ground_depression", "litter_angle")
        names = ("haul_tension", "line_tension", "push", "hub_uplift", *angles)
        self.values = {name: np.full(size, np.nan) for name in names}
        starts = [path.hangs_from for path in paths]
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
                for tension, path in zip(self.values["haul_tension"], paths, strict=True)
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


def _refined_peak(site: Site, load: float, sweep: _Sweep) -> float | None:
    """The height of the largest effort, searched on ever finer grids; None if never held."""
    heights = sweep.heights
    effort = sweep.guided.effort
    if not np.isfinite(effort).any():
        return None
    for _ in range(2):
        at = int(np.nanargmax(effort))
        low, high = heights[max(at - 1, 0)], heights[min(at + 1, len(heights) - 1)]
        heights = np.unique(np.append(np.linspace(low, high, 41), heights[at]))
        effort = _Sweep(site, load, list(heights)).guided.effort
    return float(heights[int(np.nanargmax(effort))])


# --- stations and summaries -----------------------------------------------------------------------


def _stations(sweep: _Sweep) -> tuple[Station, ...]:
    track, tag = sweep.lengths
    held = sweep.guided.held
    stations: list[Station] = []
    for index, height in enumerate(sweep.heights):
        along = index > 0 and bool(held[index - 1] and held[index])
        stations.append(
            Station(
                height=float(height),
                offset=float(sweep.offsets[index]),
                demand=sweep.demands[index],
                haul=sweep.haul_paths[index],
                ways=tuple(_guided(sweep, method, index) for method in Method),
                track_length=float(track[index]),
                tag_length=float(tag[index]),
                take_in=float(track[index - 1] - track[index]) if along else None,
                pay_out=float(tag[index] - tag[index - 1]) if along else None,
            )
        )
    return tuple(stations)


def _trace(sweep: _Sweep) -> tuple[Place, ...]:
    effort, further = sweep.guided.effort, sweep.moved(sweep.guided.method).further
    return tuple(
        Place(float(z), float(x), *(None if math.isnan(f) else float(f) for f in forces))
        for z, x, *forces in zip(sweep.heights, sweep.offsets, effort, further, strict=True)
    )


def _guided(sweep: _Sweep, method: Method, index: int) -> Guided:
    forces, moved = sweep.forces(method), sweep.moved(method)
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


def _summary(sweep: _Sweep, method: Method) -> Summary:
    forces, heights = sweep.forces(method), sweep.heights
    shaky = sweep.moved(method).sensitive

    def largest(values: Array) -> Peak | None:
        return _peak(np.where(shaky, np.nan, values), heights)

    effort, haul = largest(forces.effort), largest(forces.haul_above)
    attended = method is Method.ATTENDANT
    uplift = None if attended else largest(forces.values["hub_uplift"])
    gaps = tuple(_gaps(forces, sweep))
    return Summary(
        method=method,
        effort=effort,
        haul=haul,
        hub_uplift=uplift,
        nearest_line=_peak(forces.used, heights),
        gaps=gaps,
        sensitive=bool(shaky.any()),
        comparisons=_comparisons(
            sweep.site.limits, method, effort, haul, uplift, bool(shaky.any()), bool(gaps)
        ),
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
    gaps: bool,
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
        Comparison(name, limit, largest, _verdict(limit, largest, shaky, gaps), shaky or gaps)
        for name, limit, largest in rows
    )


def _verdict(limit: float | None, largest: Peak | None, shaky: bool, gaps: bool) -> Verdict:
    if limit is None:
        return Verdict.NO_LIMIT
    if largest is not None and largest.value > limit:
        return Verdict.OUTSIDE
    if shaky:
        return Verdict.TOO_SENSITIVE
    if largest is None:
        return Verdict.NOTHING
    return Verdict.PARTLY if gaps else Verdict.INSIDE


def _cautions(site: Site) -> tuple[str, ...]:
    found = [cautions.STATIC, cautions.FRICTIONLESS, SURVEY_ONLY, LEVEL_CLEARANCE, LEG_REACH, BELAY]
    if site.edges:
        found.append(EDGE_FRICTION)
    if site.lift.guided_by is Method.ATTENDANT:
        found.append(cautions.ATTENDANT_LIMITS)
    else:
        found.append(cautions.COMMON_HUB)
    return (*found, cautions.NEAR_DIRECTIONAL, cautions.AUTHORITY)
