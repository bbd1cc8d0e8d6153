"""`ropecalc plan` and `ropecalc survey-sheet`, as a user meets them."""

import csv
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from ropecalc.cli import main

SITES = Path(__file__).parents[1] / "sites"
DEMO = SITES / "upper-heron-wall.toml"


def test_a_plan_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", str(DEMO)]) == 0
    out, err = capsys.readouterr()
    assert "Raise plan: Upper Heron Wall" in out
    assert str(DEMO) in " ".join(out.split())
    assert err == ""


def test_units_are_chosen(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", str(DEMO), "--units", "lbf,ft,lb"]) == 0
    out = capsys.readouterr().out
    assert "lbf" in out
    assert " kN" not in out


def test_json_goes_to_the_standard_output_alone(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", str(DEMO), "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["site"]["name"] == "Upper Heron Wall"
    assert data["governing_height_m"] == pytest.approx(26.6)
    assert data["cautions"]


@pytest.mark.parametrize(
    ("ending", "start"), [("png", b"\x89PNG"), ("svg", b"<?xml"), ("pdf", b"%PDF")]
)
def test_table_and_picture_are_written(tmp_path: Path, ending: str, start: bytes) -> None:
    table, drawn = tmp_path / "plan.csv", tmp_path / f"plan.{ending}"
    assert main(["plan", str(DEMO), "--csv", str(table), "--picture", str(drawn)]) == 0
    assert drawn.read_bytes().startswith(start)
    with table.open(newline="") as stream:
        rows = list(csv.DictReader(stream))
    assert float(rows[0]["height_m"]) == 2.0
    assert sorted(p.name for p in tmp_path.iterdir()) == sorted([table.name, drawn.name])


def test_the_same_plan_is_the_same_file(tmp_path: Path) -> None:
    for name in ("a.svg", "b.svg"):
        main(["plan", str(DEMO), "--picture", str(tmp_path / name)])
    assert (tmp_path / "a.svg").read_bytes() == (tmp_path / "b.svg").read_bytes()


TROUBLES = {
    "no file": (None, "no such file"),
    "not TOML": ("[site", "rules of TOML"),
    "empty": ("", "[site] name: this entry is missing"),
    "binary": ("\0\0", "not a text file"),
    "wrong unit": (DEMO.read_text().replace('"200 kg"', '"200 kN"'), "[load] mass"),
    "wrong number": (
        DEMO.read_text().replace('"200 kg"', '"2x0 kg"'),
        "decimal comma or point, then the unit. Write for example 200 kg.",
    ),
    "no wall": ('[site]\nname = "x"\n', "there is no [wall] table"),
    "line": (DEMO.read_text() + "\n[limits\n\n", "(“[limits”) does not follow the rules"),
    "buried": (
        DEMO.read_text().replace(
            'offset = "0.4 m"\nheight = "32 m"', 'offset = "0 m"\nheight = "25 m"', 1
        ),
        "is inside the rock",
    ),
    "typing error": (DEMO.read_text().replace("bridle =", "bridel ="), "Did you mean bridle?"),
    "fold": (DEMO.read_text().replace("[0.0, 26.0]", "[0.0, 24.0]"), "folds back"),
    "table": (
        DEMO.read_text().replace('unit = "m"', 'unit = "m"\nfile = "w.csv"'),
        "both points and file",
    ),
}


@pytest.mark.parametrize("name", TROUBLES)
def test_trouble_is_one_message_and_no_file(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    content, words = TROUBLES[name]
    site, out = tmp_path / "my-site.toml", tmp_path / "out"
    out.mkdir()
    if content is not None:
        site.write_text(content)
    code = main(
        ["plan", str(site), "--json", "--csv", str(out / "p.csv"), "--picture", str(out / "p.svg")]
    )
    printed, err = capsys.readouterr()
    assert code == 2
    assert printed == ""
    assert err.count("\n") == 1
    assert "my-site.toml" in err
    assert words in err
    assert "Traceback" not in err
    assert list(out.iterdir()) == []


@pytest.mark.parametrize(
    ("extra", "words"),
    [
        (["--csv", "none/p.csv"], "does not exist"),
        (["--picture", "none/p.png"], "does not exist"),
        (["--picture", "p.gif"], "End the file's name in one"),
        (["--picture", "p"], "End the file's name in one"),
        (["--csv", "."], "this is a folder"),
        (["--csv", str(DEMO)], "is read from this file"),
        (["--csv", "plan.csv", "--picture", "plan.csv"], "End the file's name in one"),
        (["--csv", "plan.png", "--picture", "./plan.png"], "name one file"),
        (["--csv", "/dev/null"], "not an ordinary file"),
        (["--units", "stone"], "not a unit known here"),
        (["--units", ""], "a unit is missing"),
        (["--units", "kN,lbf"], "two units of force"),
    ],
)
def test_wishes_that_cannot_be_met(
    extra: list[str],
    words: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    before = DEMO.read_bytes()
    assert main(["plan", str(DEMO), *extra]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert words in err
    assert list(tmp_path.glob("**/p*")) == []
    assert DEMO.read_bytes() == before


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_survey_sheet_is_one_page(
    paper: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "sheet.pdf"
    assert main(["survey-sheet", str(path), "--paper", paper]) == 0
    data = path.read_bytes()
    assert data.startswith(b"%PDF")
    assert data.count(b"/Type /Page ") == 1
    width = {"a4": b"595.", "letter": b"612 "}[paper]
    assert b"/MediaBox [ 0 0 " + width in data
    assert str(path) in capsys.readouterr().out


def test_a_raise_that_can_be_held_nowhere_is_a_finding(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = DEMO.read_text(encoding="utf-8").replace("[1.7, 25.0", "[4.0, 25.0")
    text = text.replace('offset = "40 m"', 'offset = "4.5 m"').replace('"29 m"', '"24 m"')
    (tmp_path / "site.toml").write_text(text, encoding="utf-8")
    assert main(["plan", str(tmp_path / "site.toml")]) == 1
    assert "There is no height at which" in capsys.readouterr().out


@pytest.mark.parametrize("name", ["x.png", "sheet", "pdf"])
def test_a_survey_sheet_is_a_pdf_by_name_too(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["survey-sheet", str(tmp_path / name)]) == 2
    assert "End the file's name in .pdf" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_survey_sheet_needs_a_folder(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["survey-sheet", "none/sheet.pdf"]) == 2
    assert "does not exist" in capsys.readouterr().err


def start(*arguments: str) -> subprocess.Popen[bytes]:
    return subprocess.Popen(
        [sys.executable, "-m", "ropecalc.cli", *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )


def test_a_reader_who_leaves_is_no_trouble() -> None:
    process = start("plan", str(DEMO), "--json")
    assert process.stdout is not None
    assert process.stderr is not None
    process.stdout.close()
    assert process.stderr.read() == b""
    assert process.wait(60) == 0
    process.stderr.close()


def test_stopping_it_is_quiet(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def stopped(_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("ropecalc.planning.raise_plan.plan_raise", stopped)
    assert main(["plan", str(DEMO)]) == 130
    assert capsys.readouterr() == ("", "")


@pytest.mark.skipif(os.name == "nt", reason="pipes have no names in folders on Windows")
def test_a_pipe_is_not_waited_for(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    os.mkfifo(tmp_path / "site.toml")
    assert main(["plan", str(tmp_path / "site.toml")]) == 2
    assert "not an ordinary file" in capsys.readouterr().err


def survey(folder: Path) -> tuple[Path, Path]:
    """A site file and the table that its wall is read from."""
    text = DEMO.read_text(encoding="utf-8")
    start, end = text.index("[wall]"), text.index("[haul_directional]")
    site, table = folder / "site.toml", folder / "wall.csv"
    wall = '[wall]\nunit = "m"\nfile = "wall.csv"\n\n'
    site.write_text(text[:start] + wall + text[end:], encoding="utf-8")
    table.write_text("offset,height\n0,0\n0,23.5\n1.7,25\n0,26\n0,30\n")
    return site, table


@pytest.mark.parametrize("option", ["--csv", "--picture"])
@pytest.mark.parametrize("how", ["same", "link", "hard link"])
def test_what_a_plan_is_read_from_is_not_written_over(
    option: str, how: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    site, table = survey(tmp_path)
    before = (site.read_bytes(), table.read_bytes())
    for source in (site, table):
        name = tmp_path / f"{source.stem}.png" if option == "--picture" else source
        if how == "link":
            name = tmp_path / f"link-{source.stem}.png"
            name.symlink_to(source)
        elif how == "hard link" or name != source:
            name = tmp_path / f"hard-{source.stem}.png"
            name.hardlink_to(source)
        assert main(["plan", str(site), option, str(name)]) == 2
        assert "is read from this file" in capsys.readouterr().err
    assert (site.read_bytes(), table.read_bytes()) == before


def test_a_picture_that_fails_leaves_no_table(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    site, _ = survey(tmp_path)
    (tmp_path / "plan.csv").write_text("old")
    filled = 0

    def full(_: int) -> None:
        nonlocal filled
        filled += 1
        if filled == 2:
            raise OSError(28, "No space left on device")

    monkeypatch.setattr("ropecalc.planning.files.os.fsync", full)
    names = [str(tmp_path / "plan.csv"), str(tmp_path / "plan.png")]
    assert main(["plan", str(site), "--csv", names[0], "--picture", names[1]]) == 2
    assert "plan.png: cannot be written (No space left" in capsys.readouterr().err
    assert (tmp_path / "plan.csv").read_text() == "old"
    assert sorted(p.name for p in tmp_path.iterdir()) == ["plan.csv", "site.toml", "wall.csv"]


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_a_plan_prints_on_any_terminal(encoding: str) -> None:
    process = subprocess.run(
        [sys.executable, "-m", "ropecalc.cli", "plan", str(DEMO)],
        env=os.environ | {"PYTHONIOENCODING": encoding},
        capture_output=True,
        timeout=60,
        check=False,
    )
    assert process.returncode == 0
    assert process.stderr == b""
    assert b"Raise plan" in process.stdout
