"""Where on the cross-section a litter can be held, and with what forces.

A small solver over the derivations of :mod:`ropecalc.mechanics.guiding`: places in, angles and
tensions out, for one point or for whole grids. Where a method cannot hold the litter it says
which limit stands in the way instead of giving a number.
"""

from dataclasses import dataclass
from enum import IntEnum, StrEnum
from typing import Any

import numpy as np

from ropecalc.derivation import DomainError
from ropecalc.mechanics import guiding
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import checked, single


class Method(StrEnum):
    """What keeps the litter off the wall."""

    ATTENDANT = "attendant"
    TAG = "tag line"
    TRACK = "track line"

    @classmethod
    def of(cls, value: str) -> "Method":
        """The method spelled ``value``; :class:`DomainError` names the choices if none is."""
        try:
            return cls(value)
        except ValueError:
            raise DomainError(
                f"method is {value!r}; it must be attendant, tag line or track line. Say what "
                "keeps the litter off."
            ) from None


class Reach(IntEnum):
    """Whether a litter can be held at a point, and if not, what stands in the way."""

    HELD = 0
    PLUMB = 1
    ABOVE_DIRECTIONAL = 2
    INSIDE_PLUMB = 3
    BEYOND_HUB = 4
    BEYOND_LINE = 5
    HAUL_SLACK = 6

    @property
    def possible(self) -> bool:
        """Whether the litter can be there at all."""
        return self in (Reach.HELD, Reach.PLUMB)

    @property
    def sentence(self) -> str:
        """The verdict in plain words, with what to change."""
        return _SENTENCES[self]


_SENTENCES = {
    Reach.HELD: "The litter can be held here.",
    Reach.PLUMB: "The litter hangs straight below the haul directional; nothing needs to pull.",
    Reach.ABOVE_DIRECTIONAL: (
        "The litter is at or above a directional, or so near its height that the line cannot lift "
        "it. Lower the litter or raise the directional."
    ),
    Reach.INSIDE_PLUMB: (
        "The litter is further in than the haul directional, so it would swing out by itself. "
        "Move the litter out or the directional in."
    ),
    Reach.BEYOND_HUB: (
        "The litter is at or beyond the hub, so the line to the hub would pull it inward. Move the "
        "hub further out."
    ),
    Reach.BEYOND_LINE: (
        "The litter is on or beyond the straight line from directional to hub, or right next to "
        "it: no tension, and no number of lines, holds it there. Bring it closer in, or move the "
        "directional or the hub further out."
    ),
    Reach.HAUL_SLACK: (
        "The haul line would go slack: the track lines alone would carry the litter, and it would "
        "not stay here. Lower the hub or the litter, or bring the litter closer in."
    ),
}


@dataclass(frozen=True)
class Point:
    """A place on the cross-section: x out from the wall, z up, both in m."""

    x: float
    z: float


@dataclass(frozen=True)
class Rig:
    """Where the lines start and end: two high directionals (often the same) and the hub."""

    haul_directional: Point
    track_directional: Point
    hub: Point


@dataclass(frozen=True)
class Hold:
    """Angles (rad) and forces (N) at one point or at many.

    For one point every field is a float, or None where the litter cannot be held. For arrays
    every field is a masked array, masked there. ``reach`` is a :class:`Reach` or an array of
    its integer values. ``line_tension`` is the tag line's, or that of all track lines together;
    the attendant has none (0). ``litter_angle`` is measured from the haul leg over the top to the
    ground leg, which the attendant does not have (masked); it passes 180° where a track directional
    of its own holds the litter beyond the line from haul directional to hub. ``take_in_rate`` is
    rope to take in (negative: to pay out) per length raised straight up, for each track line or
    for the tag line.
    """

    method: Method
    reach: Any
    haul_elevation: Any
    track_elevation: Any
    ground_depression: Any
    litter_angle: Any
    haul_tension: Any
    line_tension: Any
    push: Any
    hub_uplift: Any
    take_in_rate: Any


def leg_angles(rig: Rig, x: Any, z: Any) -> tuple[Any, Any, Any]:
    """Haul elevation, track elevation and ground depression (rad) at ``x``, ``z`` (m; arrays too).

    The elevations are above, the depression is below the horizontal at the litter, which lies
    between the directionals' and the hub's plumb lines.
    """
    x, z = checked((q.X, x), (q.Z, z))
    haul, track, hub = rig.haul_directional, rig.track_directional, rig.hub
    return (
        np.arctan2(haul.z - z, x - haul.x),
        np.arctan2(track.z - z, x - track.x),
        np.arctan2(z - hub.z, hub.x - x),
    )


def hold(method: str, rig: Rig, load: float, x: Any, z: Any) -> Hold:
    """Forces that hold the weight ``load`` (N) at ``x``, ``z`` (m; scalars or arrays).

    ``method`` is a :class:`Method` or its words. Raises :class:`DomainError` for an unknown one, a
    load outside its domain or places that are not finite numbers.
    """
    method = Method.of(method)
    haul_top, track_top, hub = rig.haul_directional, rig.track_directional, rig.hub
    if np.ndim(load):
        raise DomainError("load is an array; give one load, and places as arrays.")
    load, x, z = checked((q.LOAD, load), (q.X, x), (q.Z, z))
    single(
        (q.X_D, haul_top.x),
        (q.Z_D, haul_top.z),
        (q.X_A, track_top.x),
        (q.Z_A, track_top.z),
        (q.X_B, hub.x),
        (q.Z_B, hub.z),
    )
    place_x, place_z = np.broadcast_arrays(x, z)
    scalar = place_x.ndim == 0
    place_x, place_z = np.atleast_1d(place_x), np.atleast_1d(place_z)

    haul, track, ground = leg_angles(rig, place_x, place_z)
    reach = _reach(method, rig, place_x, place_z, haul, track, ground)
    out = (reach != Reach.HELD) & (reach != Reach.PLUMB)

    def only_where_held(values: Any) -> Any:
        masked = np.ma.masked_where(out | np.ma.getmaskarray(values), np.ma.getdata(values))
        if not scalar:
            return masked
        return None if np.ma.getmaskarray(masked)[0] else float(masked[0])

    angles = {"haul_elevation": haul, "ground_depression": ground}
    haul_tension, line, push = _forces(method, rig, load, place_x, place_z, angles, track)
    plumb = reach == Reach.PLUMB
    line = np.ma.where(plumb, 0.0, line)
    push = np.ma.where(plumb, 0.0, push)
    haul_tension = np.ma.where(plumb, load, haul_tension)
    uplift: Any = guiding.hub_uplift.masked(line_tension=line, ground_depression=ground)
    rate: Any = guiding.take_in_rate.masked(track_elevation=track, ground_depression=ground)
    turn: Any = guiding.litter_angle.masked(**angles)
    if method is Method.TAG:
        rate = -guiding.tag_pay_out_rate.masked(ground_depression=ground)
    elif method is Method.ATTENDANT:
        uplift = rate = np.zeros_like(ground)
        turn = np.ma.masked_all(ground.shape)
    return Hold(
        method=method,
        reach=Reach(int(reach[0])) if scalar else reach,
        haul_elevation=only_where_held(haul),
        track_elevation=only_where_held(track),
        ground_depression=only_where_held(ground),
        litter_angle=only_where_held(turn),
        haul_tension=only_where_held(haul_tension),
        line_tension=only_where_held(line),
        push=only_where_held(push),
        hub_uplift=only_where_held(uplift),
        take_in_rate=only_where_held(rate),
    )


def _reach(
    method: Method, rig: Rig, x: Any, z: Any, haul: Any, track: Any, ground: Any
) -> "np.ndarray[Any, np.dtype[np.int64]]":
    """The verdict at each point; later lines overrule earlier ones."""
    reach = np.full(x.shape, int(Reach.HELD))
    legs = {"haul_elevation": haul, "track_elevation": track, "ground_depression": ground}
    if method is Method.TRACK:
        reach[~guiding.HAUL_TAUT.holds(legs)] = Reach.HAUL_SLACK
        reach[~guiding.TRACK_OPEN.holds(legs)] = Reach.BEYOND_LINE
    elif method is Method.TAG:
        reach[~guiding.LEGS_OPEN.holds(legs)] = Reach.BEYOND_LINE
    else:
        fall = {"drop": rig.haul_directional.z - z, "off_plumb": x - rig.haul_directional.x}
        reach[~guiding.HAUL_SLOPES.holds(fall)] = Reach.ABOVE_DIRECTIONAL
    reach[x == rig.haul_directional.x] = Reach.PLUMB
    if method is not Method.ATTENDANT:
        reach[x >= rig.hub.x] = Reach.BEYOND_HUB
    reach[x < rig.haul_directional.x] = Reach.INSIDE_PLUMB
    top = rig.haul_directional.z
    if method is Method.TRACK:
        top = min(top, rig.track_directional.z)
    reach[z >= top] = Reach.ABOVE_DIRECTIONAL
    return reach


def _forces(
    method: Method, rig: Rig, load: float, x: Any, z: Any, angles: dict[str, Any], track: Any
) -> tuple[Any, Any, Any]:
    """Haul tension, tension of the line to the hub, push; masked where a derivation refuses."""
    zero = np.zeros_like(x)
    if method is Method.ATTENDANT:
        places = {"off_plumb": x - rig.haul_directional.x, "drop": rig.haul_directional.z - z}
        haul = guiding.attendant_haul_tension.masked(load=load, **places)
        return haul, zero, guiding.attendant_push.masked(load=load, **places)
    if method is Method.TAG:
        haul = guiding.haul_tension_with_tag.masked(load=load, **angles)
        return haul, guiding.tag_tension.masked(load=load, **angles), zero
    apart = {"load": load, **angles, "track_elevation": track}
    haul = guiding.haul_tension_with_track_apart.masked(**apart)
    return haul, guiding.track_tension_apart.masked(**apart), zero


# --- how much a small error of place matters ----------------------------------------------------

SENSITIVE_SHIFT = 0.2
"""How far the litter is moved (m) to see whether a tension can be relied on."""
SENSITIVE_CHANGE = 0.5
"""A tension that changes by more than this part of itself is too sensitive to print."""
NEGLIGIBLE_CHANGE = 0.1
"""... unless the change is less than this part of the load: near plumb, small pulls double."""


def too_shaky(load: float, here: Any, further: Any, nearer: Any) -> Any:
    """Where an effort cannot be relied on, from the efforts (N) here and moved out and in.

    Arrays, NaN where the litter is not held. It cannot if the litter, moved out by
    :data:`SENSITIVE_SHIFT`, is not held any more, or if the change is more than
    :data:`SENSITIVE_CHANGE` of the effort and :data:`NEGLIGIBLE_CHANGE` of the load. False where
    it is not held here: there is nothing to rely on.
    """
    held = np.isfinite(here)
    change = np.fmax(further - here, here - np.nan_to_num(nearer, nan=0.0))
    much = (change > SENSITIVE_CHANGE * here) & (change > NEGLIGIBLE_CHANGE * load)
    return held & (~np.isfinite(further) | much)
