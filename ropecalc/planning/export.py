"""A plan for other programs: unrounded SI numbers as JSON or CSV, the unit in each name."""

import csv
import io
import json
from dataclasses import asdict
from typing import Any

from ropecalc import __version__
from ropecalc.mechanics.holding import Method
from ropecalc.planning.clearing import Demand
from ropecalc.planning.raise_plan import Gap, Guided, Peak, RaisePlan, Station, Summary
from ropecalc.planning.report import Wording
from ropecalc.units import Display

_NAMES = {Method.TRACK: "track", Method.TAG: "tag", Method.ATTENDANT: "attendant"}


def plan_as_data(plan: RaisePlan) -> dict[str, Any]:
    """The plan as plain lists and numbers; None where there is no value."""
    return {
        "made_with": f"ropecalc {__version__}",
        "units": "SI; each name ends in its unit: m, kg, N, rad",
        "site": _site(plan),
        "guided_by": plan.method.value,
        "weight_N": plan.load,
        "stations": [station_as_data(station) for station in plan.stations],
        "governing_height_m": None if plan.governing is None else plan.governing.height,
        "track_play_m": plan.track_play,
        "methods": {_NAMES[s.method]: _summary(s) for s in plan.summaries},
        "cautions": list(plan.cautions),
    }


def plan_as_json(plan: RaisePlan) -> str:
    """The plan as JSON text."""
    return json.dumps(plan_as_data(plan), indent=2, allow_nan=False) + "\n"


def plan_as_csv(plan: RaisePlan) -> str:
    """The stations as CSV text, lowest first, one row each; empty where there is no value."""
    rows = [_flat(station_as_data(station)) for station in plan.stations]
    out = io.StringIO()
    writer = csv.DictWriter(out, fieldnames=list(rows[0]), lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


def station_as_data(station: Station) -> dict[str, Any]:
    """One station as plain numbers."""
    return {
        "height_m": station.height,
        "offset_m": station.offset,
        "needed_for": station.demand.cause.value,
        "needed_at_offset_m": station.demand.at.offset,
        "needed_at_height_m": station.demand.at.height,
        "haul_line_hangs_from_offset_m": station.haul.hangs_from.x,
        "haul_line_hangs_from_height_m": station.haul.hangs_from.z,
        "track_length_m": station.track_length,
        "tag_length_m": station.tag_length,
        "take_in_m": station.take_in,
        "pay_out_m": station.pay_out,
        **{_NAMES[way.method]: _way(way, station.demand) for way in station.ways},
    }


def _verdict(why: Guided | Gap, demand: Demand) -> str:
    if why.reach.possible and why.unmet is None:
        return why.reach.sentence
    return Wording(Display()).why_not(why, demand)


def _way(way: Guided, demand: Demand) -> dict[str, Any]:
    return {
        "held": way.held,
        "too_sensitive": way.sensitive,
        "line_tension_N": way.line_tension,
        "push_N": way.push,
        "haul_tension_N": way.haul_tension,
        "haul_above_edges_N": way.haul_above,
        "hub_uplift_N": way.hub_uplift,
        "haul_elevation_rad": way.haul_elevation,
        "ground_depression_rad": way.ground_depression,
        "litter_angle_rad": way.litter_angle,
        "effort_0.2_m_further_N": way.effort_further,
        "room_to_straight_line_m": way.room,
        "part_of_way_to_straight_line": way.used,
        "verdict": _verdict(way, demand),
    }


def _flat(data: dict[str, Any]) -> dict[str, Any]:
    flat: dict[str, Any] = {}
    for name, value in data.items():
        if isinstance(value, dict):
            flat |= {f"{name}_{key}": inner for key, inner in value.items()}
        else:
            flat[name] = value
    return flat


def _peak(peak: Peak | None, unit: str) -> dict[str, float] | None:
    return None if peak is None else {f"value{unit}": peak.value, "height_m": peak.height}


def _summary(summary: Summary) -> dict[str, Any]:
    return {
        "largest_effort": _peak(summary.effort, "_N"),
        "largest_haul_tension": _peak(summary.haul, "_N"),
        "largest_hub_uplift": _peak(summary.hub_uplift, "_N"),
        "nearest_to_straight_line": _peak(summary.nearest_line, ""),
        "some_heights_too_sensitive": summary.sensitive,
        "not_possible": [
            {"from_height_m": gap.low, "to_height_m": gap.high, "why": _verdict(gap, gap.demand)}
            for gap in summary.gaps
        ],
        "limits": [
            {
                "of": comparison.name,
                "limit_N": comparison.limit,
                "largest_N": None if comparison.largest is None else comparison.largest.value,
                "some_heights_left_out": comparison.partial,
                "verdict": comparison.verdict.value,
            }
            for comparison in summary.comparisons
        ],
    }


def _site(plan: RaisePlan) -> dict[str, Any]:
    site, rig = plan.site, plan.site.rig
    return {
        "name": site.name,
        "file": site.source,
        "datum": site.datum,
        "surveyed_on": site.surveyed_on,
        "wall": [
            {"offset_m": point.offset, "height_m": point.height, "note": point.note}
            for point in site.wall.points
        ],
        **{
            key: {"offset_m": point.x, "height_m": point.z}
            for key, point in (
                ("haul_directional", rig.haul_directional),
                ("track_directional", rig.track_directional),
                ("hub", rig.hub),
            )
        },
        "mass_kg": site.litter.mass,
        "litter": {
            f"{key}_m": value for key, value in asdict(site.litter).items() if key != "mass"
        },
        "raise": {
            f"{key}_m": value for key, value in asdict(site.lift).items() if key != "guided_by"
        },
        "protected_edges": [
            {"offset_m": edge.offset, "height_m": edge.height, "friction": edge.friction}
            for edge in site.edges
        ],
        "limits": {f"{key}_N": value for key, value in asdict(site.limits).items()},
    }
