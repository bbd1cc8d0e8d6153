"""Plans for other programs: unrounded SI, and nothing that JSON or a spreadsheet cannot hold."""

import csv
import io
import json

import pytest

from ropecalc.mechanics.holding import Method
from ropecalc.planning.export import plan_as_csv, plan_as_data, plan_as_json
from ropecalc.planning.raise_plan import RaisePlan, plan_raise
from tests.planning.building import make_site, outcrop


@pytest.fixture(params=["possible", "partly", "never", "edge"], scope="module")
def plan(request: pytest.FixtureRequest) -> RaisePlan:
    sites = {
        "possible": make_site(outcrop(25.0)),
        "partly": make_site(outcrop(25.0, 4.0), hub=(14.0, 0.5)),
        "never": make_site(outcrop(25.0, 4.0), hub=(4.5, 0.5), guidance_ends=24.0),
        "edge": make_site(outcrop(25.0), edges=[(25.0, 0.3)], guided_by=Method.TAG),
    }
    return plan_raise(sites[request.param])


def test_json_comes_back_as_it_was(plan: RaisePlan) -> None:
    assert json.loads(plan_as_json(plan)) == plan_as_data(plan)


def test_numbers_are_unrounded(plan: RaisePlan) -> None:
    data = json.loads(plan_as_json(plan))
    for written, station in zip(data["stations"], plan.stations, strict=True):
        assert written["offset_m"] == station.offset
        assert written["track"]["line_tension_N"] == station.way(Method.TRACK).line_tension
        assert written["tag"]["haul_tension_N"] == station.way(Method.TAG).haul_tension


def test_what_is_not_held_has_no_number_but_a_reason(plan: RaisePlan) -> None:
    for station in json.loads(plan_as_json(plan))["stations"]:
        for key in ("track", "tag", "attendant"):
            way = station[key]
            assert way["verdict"]
            assert way["held"] or way["line_tension_N"] is None


def test_every_dimension_has_its_unit_in_its_name(plan: RaisePlan) -> None:
    plain = {"friction", "value", "part_of_way_to_straight_line"}

    def check(data: object, name: str = "") -> None:
        if isinstance(data, dict):
            for key, value in data.items():
                check(value, key)
        elif isinstance(data, list):
            for value in data:
                check(value, name)
        elif isinstance(data, float):
            assert name in plain or name.rsplit("_", 1)[-1] in {"m", "N", "kg", "rad"}, name

    check(plan_as_data(plan))


def test_csv_has_a_head_and_a_row_for_each_station(plan: RaisePlan) -> None:
    rows = list(csv.DictReader(io.StringIO(plan_as_csv(plan))))
    assert len(rows) == len(plan.stations)
    for row, station in zip(rows, plan.stations, strict=True):
        assert float(row["height_m"]) == station.height
        tension = station.way(Method.TRACK).line_tension
        assert row["track_line_tension_N"] == ("" if tension is None else repr(tension))
    assert "nan" not in plan_as_csv(plan).lower()
