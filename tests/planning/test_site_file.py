"""Reading site files: what they mean, and what is said about those that mean nothing."""

import datetime
import os
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import tomli_w
from hypothesis import given
from hypothesis import strategies as st

from ropecalc.mechanics.holding import Method, Point
from ropecalc.planning.problem import SiteError
from ropecalc.planning.site_file import parse_site, read_site

DEMO = Path(__file__).parents[2] / "sites" / "upper-heron-wall.toml"
HERE = Path("nowhere")


def demo() -> dict[str, Any]:
    return tomllib.loads(DEMO.read_text(encoding="utf-8"))


def test_the_demo_site_in_si() -> None:
    site = read_site(DEMO)
    assert site.name == "Upper Heron Wall"
    assert site.surveyed_on == "2026-05-14"
    assert site.rig.haul_directional == Point(0.4, 32.0)
    assert site.rig.hub == Point(40.0, 0.5)
    assert site.litter.mass == 200.0
    assert site.litter.bridle == 1.0
    assert site.lift.guided_by is Method.TRACK
    assert site.wall.points[2].note == "outcrop"


def test_units_are_those_written() -> None:
    document = demo()
    document["hub"] = {"offset": "131.25 ft", "height": "50 cm"}
    document["load"]["mass"] = "440,9 lb"
    document["wall"] = {"unit": "ft", "points": [[0, 0], [0, 100]]}
    site = parse_site(document, "x", HERE)
    assert site.rig.hub.x == pytest.approx(131.25 * 0.3048)
    assert site.rig.hub.z == pytest.approx(0.5)
    assert site.litter.mass == pytest.approx(440.9 * 0.45359237)
    assert site.wall.top == pytest.approx(30.48)


def test_the_track_line_may_run_through_the_haul_directional() -> None:
    document = demo()
    del document["track_directional"]
    site = parse_site(document, "x", HERE)
    assert site.rig.track_directional == site.rig.haul_directional


def test_the_wall_may_stand_in_a_table_beside_the_file(tmp_path: Path) -> None:
    document = demo()
    document["wall"] = {"unit": "m", "file": "wall.csv"}
    (tmp_path / "wall.csv").write_text("offset;height\n0;0\n0;23,5\n1,7;25\n0;26\n0;30\n")
    (tmp_path / "site.toml").write_text("\ufeff" + tomli_w.dumps(document), encoding="utf-8")
    site = read_site(tmp_path / "site.toml")
    assert list(site.wall.offsets) == list(read_site(DEMO).wall.offsets)
    assert list(site.wall.heights) == list(read_site(DEMO).wall.heights)


def test_protected_edges_and_limits() -> None:
    document = demo()
    document["protected_edge"] = [
        {"height": "30 m", "friction": "0,3"},
        {"height": "25 m", "friction": 0.25},
    ]
    document["limits"] = {"track_tension": "6 kN", "push": "30 kgf"}
    site = parse_site(document, "x", HERE)
    assert [(e.offset, e.height, e.friction) for e in site.edges] == [(1.7, 25, 0.25), (0, 30, 0.3)]
    assert site.limits.track_tension == pytest.approx(6000)
    assert site.limits.push == pytest.approx(30 * 9.80665)
    assert site.limits.haul_tension is None


def put(table: str, key: str, value: object) -> Callable[[dict[str, Any]], None]:
    def change(document: dict[str, Any]) -> None:
        document.setdefault(table, {})[key] = value

    return change


def drop(table: str, key: str | None = None) -> Callable[[dict[str, Any]], None]:
    def change(document: dict[str, Any]) -> None:
        if key is None:
            del document[table]
        else:
            del document[table][key]

    return change


def points(*pairs: list[Any]) -> Callable[[dict[str, Any]], None]:
    return put("wall", "points", list(pairs))


FOOT, LIP = [0.0, 0.0], [0.0, 30.0]
NAN, INF = float("nan"), float("inf")

WRONG: dict[str, tuple[Callable[[dict[str, Any]], None], tuple[str, ...]]] = {
    "missing key": (drop("hub", "height"), ("[hub] height", "missing", 'height = "0.5 m"')),
    "missing table": (drop("load"), ("[load] mass", "missing", 'mass = "200 kg"')),
    "missing name": (drop("site", "name"), ("[site] name", "missing")),
    "missing wall": (drop("wall"), ("[wall]", "there is no [wall] table")),
    "misspelt key": (put("litter", "bridel", "1 m"), ("[litter] bridel", "Did you mean bridle?")),
    "misspelt table": (put("hubb", "offset", "1 m"), ("[hubb]", "Did you mean hub?")),
    "unknown key": (put("load", "zzz", "1 m"), ("[load] zzz", "Known: mass")),
    "missing unit": (put("load", "mass", "200"), ("[load] mass", "has no unit", "kg, lb")),
    "bare number": (put("hub", "offset", 40), ("[hub] offset", "has no unit", '"40 m"')),
    "bare nan": (put("hub", "offset", NAN), ("[hub] offset", "has no unit")),
    "kilograms for a force": (
        put("limits", "track_tension", "600 kg"),
        ("[limits] track_tension", "is a mass, but a force", "kgf"),
    ),
    "force for a mass": (put("load", "mass", "2 kN"), ("[load] mass", "is a force, but a mass")),
    "unknown unit": (put("hub", "offset", "40 yards"), ("[hub] offset", "not a unit known here")),
    "nan": (put("hub", "offset", "nan m"), ("[hub] offset", "cannot be read as one number")),
    "infinite": (put("hub", "offset", "inf m"), ("[hub] offset", "cannot be read as one number")),
    "more digits than a float": (
        put("load", "mass", "9" * 400 + " kg"),
        ("[load] mass", "more digits"),
    ),
    "a mountain of a length": (
        put("hub", "offset", "9000 m"),
        ("[hub] offset", "out of range", "at most 5000 m", "Check the digits"),
    ),
    "thousands": (put("hub", "offset", "1,000.0 m"), ("[hub] offset", "cannot be read as one")),
    "empty": (put("hub", "offset", " "), ("[hub] offset", "Nothing has been typed")),
    "negative mass": (put("load", "mass", "-5 kg"), ("[load] mass", "more than zero")),
    "zero mass": (put("load", "mass", "0 kg"), ("[load] mass", "“0 kg”", "more than zero")),
    "negative clearance": (
        put("litter", "clearance", "-0.1 m"),
        ("[litter] clearance", "zero or more"),
    ),
    "zero spacing": (put("raise", "station_spacing", "0 m"), ("station_spacing", "more than zero")),
    "a list for a length": (put("hub", "offset", [1]), ("[hub] offset", "quotation marks")),
    "true for a length": (put("hub", "offset", True), ("[hub] offset", "quotation marks")),
    "a number for a name": (put("site", "name", 5), ("[site] name", "not text")),
    "blank name": (put("site", "name", "  "), ("[site] name", "nothing is written")),
    "unprintable name": (put("site", "name", "a\x1b[31m"), ("[site] name", "cannot be printed")),
    "a value for a table": (
        lambda document: document.update(hub="40 m"),
        ("[hub]", "is not a table"),
    ),
    "unknown method": (
        put("raise", "guided_by", "balloon"),
        ("[raise] guided_by", "“balloon”", "track line"),
    ),
    "half a track directional": (
        drop("track_directional", "height"),
        ("[track_directional] height", "height is missing"),
    ),
    "wall unit missing": (drop("wall", "unit"), ("[wall] unit", 'unit = "m"')),
    "wall unit of mass": (put("wall", "unit", "kg"), ("[wall] unit", "not a unit of length")),
    "wall unit a number": (put("wall", "unit", 1), ("[wall] unit", "not a unit of length")),
    "points and file": (put("wall", "file", "w.csv"), ("[wall]", "both points and file")),
    "neither": (drop("wall", "points"), ("[wall]", "neither points nor file")),
    "file name a number": (
        lambda document: document.update(wall={"unit": "m", "file": 3}),
        ("[wall] file", "not a file name"),
    ),
    "too few points": (points(FOOT), ("[wall] points", "1 surveyed point")),
    "no points": (points(), ("[wall] points", "0 surveyed points")),
    "folds back": (
        points(FOOT, [1.0, 20.0], [2.0, 19.0], LIP),
        ("point 3", "folds back", "as high as the one before"),
    ),
    "a point that is no pair": (points(FOOT, [1.0], LIP), ("point 2", "not [offset, height]")),
    "a point in words": (points(FOOT, [0, "30 m"]), ("point 2", "its height is “30 m”")),
    "a nan point": (points(FOOT, [NAN, 30.0]), ("point 2", "offset", "not finite")),
    "an infinite point": (points(FOOT, [0.0, INF]), ("point 2", "height", "not finite")),
    "a huge whole number": (points(FOOT, [0, 10**400]), ("point 2", "height", "at most 5000 m")),
    "points in words": (put("wall", "points", "0,0"), ("[wall] points", "not a list of points")),
    "directional inside the rock": (
        lambda document: document.update(
            {
                "haul_directional": {"offset": "0.4 m", "height": "25 m"},
                "raise": document["raise"] | {"guidance_ends": "20 m"},
            }
        ),
        ("[haul_directional] offset", "inside the rock"),
    ),
    "hub inside the rock": (
        lambda document: document["hub"].update(offset="-1 m", height="2 m"),
        ("[hub] offset", "inside the rock"),
    ),
    "hub behind the wall": (put("hub", "offset", "1 m"), ("[hub] offset", "not in front of")),
    "guidance above the directional": (
        put("raise", "guidance_ends", "33 m"),
        ("[raise] guidance_ends", "[haul_directional] is at 32 m"),
    ),
    "guidance below the start": (
        put("raise", "guidance_ends", "1 m"),
        ("[raise] guidance_ends", "not above the start"),
    ),
    "start below the survey": (
        put("raise", "start_height", "1 m"),
        ("[raise] start_height", "-0.60 m, below the lowest", "1.60 m or higher"),
    ),
    "start above the lip": (
        lambda document: document["raise"].update(start_height="30.5 m", guidance_ends="31 m"),
        ("[raise] start_height", "lip"),
    ),
    "too many stations": (
        put("raise", "station_spacing", "1 cm"),
        ("[raise] station_spacing", "2700 of them", "wider"),
    ),
    "edge not on the wall": (
        lambda document: document.update(protected_edge=[{"height": "24 m", "friction": "0.3"}]),
        ("[[protected_edge]] 1, height", "no surveyed point", "nearest is at 23.5 m"),
    ),
    "edge without friction": (
        lambda document: document.update(protected_edge=[{"height": "25 m"}]),
        ("[[protected_edge]] 1, friction", "missing", '"0.3"'),
    ),
    "edge with a misspelt key": (
        lambda document: document.update(protected_edge=[{"height": "25 m", "frictoin": "0.3"}]),
        ("[[protected_edge]] 1 frictoin", "Did you mean friction?"),
    ),
    "edge with a unit of friction": (
        lambda document: document.update(protected_edge=[{"height": "25 m", "friction": "0.3 m"}]),
        ("[[protected_edge]] 1, friction", "is a length, but a ratio"),
    ),
    "edge named twice": (
        lambda document: document.update(
            protected_edge=[{"height": "25 m", "friction": "0.3"}] * 2
        ),
        ("[[protected_edge]] 2, height", "named twice"),
    ),
    "edge as one table": (
        lambda document: document.update(protected_edge={"height": "25 m"}),
        ("[[protected_edge]]", "double brackets"),
    ),
}
"""What is done to the demo site, and what its message must hold."""


@pytest.mark.parametrize("name", WRONG)
def test_what_is_wrong_is_named_with_its_remedy(name: str) -> None:
    change, fragments = WRONG[name]
    document = demo()
    change(document)
    with pytest.raises(SiteError) as refused:
        parse_site(document, "site.toml", HERE)
    text = str(refused.value)
    assert text.startswith("site.toml, ")
    for fragment in fragments:
        assert fragment in text
    assert "\n" not in text
    assert len(text) < 500
    assert refused.value.remedy


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"[site\nname=1", "rules of TOML"),
        (b"name = = 2", "line 1"),
        (b'[site]\nname = "a"\nname = "b"', "rules of TOML"),
        (b"\x00\x01\x02", "not a text file"),
        ("name = 'Höhe'".encode("latin-1"), "UTF-8"),
        ("[site]".encode("utf-16"), "UTF-16"),
        (b"x = " + b"9" * 5000, "taken apart"),
        (b"x = " + b"[" * 5000, "TOML|taken apart"),
        (b"", "missing"),
    ],
)
def test_files_that_are_no_site_file(tmp_path: Path, content: bytes, words: str) -> None:
    path = tmp_path / "site.toml"
    path.write_bytes(content)
    with pytest.raises(SiteError, match=words) as refused:
        read_site(path)
    assert "site.toml" in str(refused.value)


def test_a_table_in_trouble_is_named_itself(tmp_path: Path) -> None:
    document = demo()
    document["wall"] = {"unit": "m", "file": "wall.csv"}
    with pytest.raises(SiteError, match=r"wall\.csv: there is no such file"):
        parse_site(document, "site.toml", tmp_path)
    (tmp_path / "wall.csv").write_text("offset,height\n0,0\n1,20\n1,19\n")
    with pytest.raises(SiteError, match=r"wall\.csv, point 3 from the foot: the wall folds back"):
        parse_site(document, "site.toml", tmp_path)


def test_dates_may_be_dates_or_text() -> None:
    for written in (datetime.date(2026, 5, 14), "2026-05-14"):
        document = demo()
        document["site"]["surveyed_on"] = written
        assert parse_site(document, "x", HERE).surveyed_on == "2026-05-14"


ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3)
    ),
    max_leaves=6,
)


@given(where=st.sampled_from(sorted(demo())), value=ANYTHING)
def test_no_table_whatever_brings_anything_but_a_sentence(where: str, value: object) -> None:
    document = demo()
    document[where] = value
    try:
        parse_site(document, "x", HERE)
    except SiteError as error:
        assert str(error)


@given(data=st.data(), value=ANYTHING)
def test_no_entry_whatever_brings_anything_but_a_sentence(
    data: st.DataObject, value: object
) -> None:
    document = demo()
    table = data.draw(st.sampled_from(sorted(document)))
    document[table][data.draw(st.sampled_from(sorted(document[table])))] = value
    try:
        parse_site(document, "x", HERE)
    except SiteError as error:
        assert str(error)


def test_a_site_remembers_every_file_it_was_read_from(tmp_path: Path) -> None:
    document = demo()
    document["wall"] = {"unit": "m", "file": "wall.csv"}
    path, table = tmp_path / "site.toml", tmp_path / "wall.csv"
    path.write_text(tomli_w.dumps(document))
    table.write_text("offset,height\n0,0\n0,30\n")
    assert read_site(path).read_from == (path, table)
    assert read_site(DEMO).read_from == (DEMO,)


@pytest.mark.parametrize("name", ["../wall.csv", "sub/../../wall.csv", "/etc/hostname", "link.csv"])
def test_a_survey_table_elsewhere_is_not_read(name: str, tmp_path: Path) -> None:
    folder = tmp_path / "sites"
    (folder / "sub").mkdir(parents=True)
    (tmp_path / "wall.csv").write_text("offset,height\n0,0\n0,30\n")
    (folder / "link.csv").symlink_to(tmp_path / "wall.csv")
    document = demo()
    document["wall"] = {"unit": "m", "file": name}
    with pytest.raises(SiteError, match="outside the site file's folder"):
        parse_site(document, "site", folder)
    (folder / "sub" / "wall.csv").write_text("offset,height\n0,0\n0,30\n")
    document["wall"]["file"] = "sub/wall.csv"
    assert parse_site(document, "site", folder).wall.top == 30.0


@pytest.mark.skipif(os.name == "nt", reason="pipes have no names in folders on Windows")
def test_pipes_and_devices_are_not_read(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "site.toml")
    for path in (tmp_path / "site.toml", Path("/dev/zero")):
        with pytest.raises(SiteError, match="not an ordinary file"):
            read_site(path)


def test_a_small_friction_is_a_number_like_any_other() -> None:
    document = demo()
    document["protected_edge"] = [{"height": "25 m", "friction": 0.00001}]
    assert parse_site(document, "site", HERE).edges[0].friction == 0.00001
