"""The form: what it takes, what it refuses, what it writes, and what it never overwrites."""

import datetime
import shutil
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
import tomli_w

from ropecalc.planning.fields import EDGE_FIELDS, FIELDS
from ropecalc.planning.site_file import parse_site, read_document, read_site
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.site_form import SiteForm, open_site_form
from ropecalc.units import find_unit

SITES = Path(__file__).parents[2] / "sites"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return Path(shutil.copytree(SITES, tmp_path / "sites"))


@pytest.fixture
def form(folder: Path) -> SiteForm:
    return SiteForm(folder, Session(Record.in_memory()))


def opened(form: SiteForm, name: str = "upper-heron-wall.toml") -> SiteForm:
    form.files.value = name
    form.open_button.click()
    return form


def test_an_empty_form_asks_for_what_is_missing(form: SiteForm) -> None:
    form.plan_button.click()
    assert "“Name of the site” is blank. Write for example Upper Heron Wall." in form.summary()


def test_every_entry_of_a_site_file_has_its_box_with_a_name(form: SiteForm) -> None:
    assert set(form.entries) == {field.path for field in FIELDS}
    for field in FIELDS:
        assert form.entries[field.path].description == field.label


def test_a_demo_site_is_opened_and_planned(form: SiteForm) -> None:
    opened(form).plan_button.click()
    assert "Largest track lines together: 1.2 kN at 26.60 m" in form.summary()


def test_a_plan_disappears_when_the_form_no_longer_says_the_same(form: SiteForm) -> None:
    opened(form).plan_button.click()
    form.entries["[load] mass"].value = "250 kg"
    assert "Largest" not in form.summary()
    assert "The form has changed" in form.summary()
    form.plan_button.click()
    assert "250 kg" in form.summary()


def test_typing_a_whole_site_gives_the_same_as_its_file(form: SiteForm, folder: Path) -> None:
    source = opened(SiteForm(folder, Session(Record.in_memory())))
    for path, box in source.entries.items():
        form.entries[path].value = box.value
    form.points.fill(source.points.values())
    form.file_name.value = "my-wall"
    form.save_button.click()
    assert "Saved as my-wall.toml" in form.summary()
    mine, theirs = read_site(folder / "my-wall.toml"), read_site(SITES / "upper-heron-wall.toml")
    assert (mine.wall, mine.rig, mine.litter, mine.lift) == (
        theirs.wall,
        theirs.rig,
        theirs.litter,
        theirs.lift,
    )


def test_a_saved_site_opens_again_as_it_was(form: SiteForm) -> None:
    opened(form)
    form.edges.fill([("25 m", "0,3")])
    form.entries["[limits] track_tension"].value = "6 kN"
    form.entries["[raise] guided_by"].value = "tag line"
    before = form.document()
    form.file_name.value = "again.toml"
    form.save_button.click()
    opened(form)
    opened(form, "again.toml")
    assert form.document() == before


def test_nothing_is_overwritten_without_being_told_to(form: SiteForm, folder: Path) -> None:
    path = folder / "upper-heron-wall.toml"
    before = path.read_bytes()
    opened(form)
    assert form.file_name.value == "my-upper-heron-wall.toml"
    form.file_name.value = path.name
    form.entries["[load] mass"].value = "150 kg"
    form.save_button.click()
    assert path.read_bytes() == before
    assert "nothing has been written" in form.summary()
    assert form.replace.layout.display == ""
    form.replace.value = True
    form.save_button.click()
    assert read_site(path).litter.mass == 150
    assert form.replace.value is False
    form.save_button.click()
    assert "nothing has been written" in form.summary()


def test_a_faulty_form_is_not_saved(form: SiteForm, folder: Path) -> None:
    opened(form)
    form.entries["[load] mass"].value = "200 kN"
    form.file_name.value = "bad.toml"
    form.save_button.click()
    said = form.summary()
    assert "“Mass of everything that hangs”: “200 kN” is a force, but a mass is asked for" in said
    assert "Write for example 200 kg." in said
    assert not (folder / "bad.toml").exists()


@pytest.mark.parametrize(
    "name", ["", "../up.toml", "a/b.toml", "/tmp/x.toml", ".toml", "a\\b", "~"]
)
def test_names_that_are_no_file_name(form: SiteForm, folder: Path, name: str) -> None:
    opened(form)
    form.file_name.value = name
    before = sorted(folder.rglob("*"))
    form.save_button.click()
    assert "Give the file a name" in form.summary()
    assert sorted(folder.rglob("*")) == before


def test_a_folder_that_is_gone_is_said_so(form: SiteForm, folder: Path) -> None:
    opened(form)
    form.file_name.value = "mine.toml"
    shutil.rmtree(folder)
    form.save_button.click()
    assert "does not exist" in form.summary()


@pytest.mark.parametrize(
    ("row", "words"),
    [
        (("1.7 m", "25", ""), "its offset is “1.7 m”"),
        (("1.7", "2x", ""), "its height is “2x”"),
        (("1.7", "", ""), "its height is “”"),
        (("1,155.0", "25", ""), "its offset is “1,155.0”"),
        (("1.7", "20", ""), "folds back"),
    ],
)
def test_rows_that_cannot_be_read(form: SiteForm, row: tuple[str, ...], words: str) -> None:
    opened(form)
    rows = form.points.values()
    form.points.fill([*rows[:2], row, *rows[3:]])
    form.plan_button.click()
    assert words in form.summary()
    assert "point 3" in form.summary()


def test_decimal_commas_and_feet(form: SiteForm) -> None:
    opened(form)
    form.unit.value = "ft"
    form.points.fill([("0", "0", ""), ("0,5", "98,4", "lip")])
    assert form.document()["wall"] == {"unit": "ft", "points": [[0.0, 0.0], [0.5, 98.4, "lip"]]}
    form.plan_button.click()
    assert "Largest" in form.summary()


def test_rows_are_added_below_and_removed(form: SiteForm) -> None:
    form.points.fill([("0", "0", ""), ("0", "30", "")])
    first = form.points.children[0]
    _, _, _, _, below, _ = first.children
    below.click()
    assert form.points.values() == [("0", "0", ""), ("", "", ""), ("0", "30", "")]
    form.points.children[1].children[-1].click()
    assert form.points.values() == [("0", "0", ""), ("0", "30", "")]
    form.points.children[-1].children[0].click()
    assert len(form.points.values()) == 3


def test_empty_rows_count_for_nothing(form: SiteForm) -> None:
    opened(form)
    form.points.fill([*form.points.values(), ("", "", "")])
    form.edges.fill([("", "")] * 2)
    form.plan_button.click()
    assert "Largest" in form.summary()
    assert "protected_edge" not in form.document()


def test_a_damaged_file_leaves_the_form_alone(form: SiteForm, folder: Path) -> None:
    opened(form)
    before = form.document()
    (folder / "lower-heron-wall.toml").write_text("[site")
    opened(form, "lower-heron-wall.toml")
    assert "rules of TOML" in form.summary()
    assert form.document() == before


def test_the_empty_form_can_be_had_again(form: SiteForm) -> None:
    opened(form)
    opened(form, "")
    assert form.document() == {
        "wall": {"unit": "m", "points": []},
        "raise": {"guided_by": "track line"},
    }


def test_an_edge_names_all_its_columns(form: SiteForm) -> None:
    form.edges.fill([("25 m", "0.3")])
    boxes = form.edges.children[0].children[1:-2]
    assert [box.description for box in boxes] == [field.key for field in EDGE_FIELDS]


def test_the_form_is_found_from_the_lessons_folder(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    lessons = folder.parent / "lessons"
    lessons.mkdir()
    monkeypatch.chdir(lessons)
    form = open_site_form()
    assert "upper-heron-wall.toml" in dict(form.files.options).values()


def rewritten(folder: Path, **tables: object) -> Path:
    """The demo site with other tables, as ``mine.toml``."""
    document = tomllib.loads((folder / "upper-heron-wall.toml").read_text(encoding="utf-8"))
    path = folder / "mine.toml"
    path.write_text(tomli_w.dumps(document | tables), encoding="utf-8")
    return path


@pytest.mark.parametrize("unit", ["m", "cm", "mm", "ft", "in", "feet", "Metres"])
def test_a_wall_stays_in_the_unit_it_was_surveyed_in(folder: Path, unit: str) -> None:
    size = find_unit(unit).factor
    heights = ((0.0, 0.0), (-0.123, 24.0), (1.7, 25.0), (0.0, 30.5))
    points = [[round(x / size, 3), round(z / size, 3)] for x, z in heights]
    path = rewritten(folder, wall={"unit": unit, "points": points}, protected_edge=[])
    site = read_site(path)
    form = SiteForm(folder, Session(Record.in_memory()))
    opened(form, "mine.toml")
    assert form.unit.value == find_unit(unit).symbol
    assert form.document()["wall"] == {"unit": form.unit.value, "points": points}
    assert parse_site(form.document(), "form", folder).wall == site.wall


def test_a_wall_from_a_table_keeps_its_unit_and_the_form_says_so(folder: Path) -> None:
    (folder / "wall.csv").write_text("offset,height\n0,0\n0,98.5\n")
    rewritten(folder, wall={"unit": "ft", "file": "wall.csv"}, protected_edge=[])
    form = opened(SiteForm(folder, Session(Record.in_memory())), "mine.toml")
    assert "wall's points come from wall.csv" in form.summary()
    assert form.document()["wall"] == {"unit": "ft", "points": [[0.0, 0.0], [0.0, 98.5]]}


def test_entries_as_odd_as_a_file_allows_come_into_the_form(folder: Path) -> None:
    document = tomllib.loads((folder / "upper-heron-wall.toml").read_text(encoding="utf-8"))
    site = document["site"] | {"name": "Two\n lines", "surveyed_on": datetime.date(2026, 5, 14)}
    lift = document["raise"] | {"guided_by": " Tag Line"}
    edges = [{"height": " 25  m", "friction": 0.00001}]
    rewritten(folder, site=site, protected_edge=edges, **{"raise": lift})
    form = opened(SiteForm(folder, Session(Record.in_memory())), "mine.toml")
    assert form.entries["[site] name"].value == "Two lines"
    assert form.entries["[site] surveyed_on"].value == "2026-05-14"
    assert form.entries["[raise] guided_by"].value == "tag line"
    assert form.edges.values() == [("25 m", "0.00001")]
    assert parse_site(form.document(), "form", folder) == replace(
        read_site(folder / "mine.toml"), source="form"
    )


def test_a_file_is_read_once(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    form = SiteForm(folder, Session(Record.in_memory()))
    read: list[Path] = []

    def counted(path: Path) -> dict[str, object]:
        read.append(path)
        return read_document(path)

    monkeypatch.setattr("ropecalc.teaching.site_form.read_document", counted)
    opened(form)
    assert [path.name for path in read] == ["upper-heron-wall.toml"]
    assert form.entries["[site] name"].value == "Upper Heron Wall"


def test_all_faults_are_listed_and_marked_until_put_right(form: SiteForm) -> None:
    opened(form)
    mass, bridle = form.entries["[load] mass"], form.entries["[litter] bridle"]
    mass.value, bridle.value = "200 kN", ""
    rows = form.points.values()
    form.points.fill([*rows[:2], ("1.7 m", "25", ""), *rows[3:]])
    form.plan_button.click()
    said = form.summary()
    assert "3 things to put right" in said
    for words in ("“200 kN” is a force", "“Bridle: master", "its offset is “1.7 m”"):
        assert words in said
    assert mass.description == "✗ Mass of everything that hangs"
    assert bridle.description.startswith("✗ ")
    assert sum(entry.description.startswith("✗") for entry in form.entries.values()) == 2
    assert "is a force" in form.children[0].value
    mass.value, bridle.value = "200 kg", "1 m"
    form.points.fill(rows)
    form.plan_button.click()
    assert "Largest" in form.summary()
    assert not any(entry.description.startswith("✗") for entry in form.entries.values())
    assert form.children[0].value == ""


def test_a_plan_says_whether_a_file_holds_what_it_was_made_from(form: SiteForm) -> None:
    opened(form).plan_button.click()
    assert "from upper-heron-wall.toml" in form._view.children[-1].value
    form.entries["[load] mass"].value = "150 kg"
    form.plan_button.click()
    assert "from the form, not saved" in form._view.children[-1].value
    form.file_name.value = " my  own wall"
    form.save_button.click()
    assert "Saved as my-own-wall.toml" in form.summary()
    form.plan_button.click()
    assert "from my-own-wall.toml" in form._view.children[-1].value


def test_names_that_windows_keeps_for_devices(form: SiteForm, folder: Path) -> None:
    opened(form)
    form.file_name.value = "con"
    form.save_button.click()
    assert "Windows keeps this name for a device" in form.summary()
    assert not (folder / "con.toml").exists()
