"""Papers from the command line: made, made again, marked, a student forgotten."""

import json
from pathlib import Path

import pytest

from ropecalc.cli import main

BLUEPRINT = """
title = "Check"
minutes = 20
seed = "rain"
pass_mark = 0.5
[[topic]]
title = "Holding off"
lessons = [8]
easy = 1
medium = 1
"""


@pytest.fixture
def exam(tmp_path: Path) -> Path:
    (tmp_path / "plan.toml").write_text(BLUEPRINT)
    (tmp_path / "class.csv").write_text("student\nada\nbo\n")
    arguments = [str(tmp_path / name) for name in ("plan.toml", "class.csv", "exam")]
    assert main(["papers", *arguments, "--no-pdf"]) == 0
    return tmp_path / "exam"


def test_from_blueprint_to_grades(exam: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert (exam / "handouts" / "paper-ada.ipynb").is_file()
    code = json.loads((exam / "issue.json").read_text())["papers"][0]["code"]
    (exam / "returns" / "t.csv").write_text(f"code,1,2\n{code},1 kN,2 kN\n")
    assert main(["mark", str(exam)]) == 0
    out = capsys.readouterr().out
    assert "1 of 2 papers came back" in out and "not a certification" in out
    assert "ada" in (exam / "results" / "grades.csv").read_text()
    (exam / "bad.json").write_text("{")
    assert main(["mark", str(exam), str(exam / "bad.json")]) == 1
    assert "bad.json is damaged" in capsys.readouterr().out


def test_one_paper_again_and_one_student_gone(
    exam: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (exam / "handouts" / "paper-bo.ipynb").unlink()
    assert main(["paper-again", str(exam), "bo", "--paper", "letter"]) == 0
    assert (exam / "handouts" / "paper-bo.pdf").read_bytes().startswith(b"%PDF")
    assert main(["forget", str(exam), "bo"]) == 0
    assert "bo" not in "".join(path.name for path in exam.rglob("*"))
    assert main(["forget", str(exam), "bo"]) == 2
    assert "nobody called “bo”" in capsys.readouterr().err


def test_packages_for_a_learning_platform(exam: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["export", str(exam)]) == 0
    assert main(["export", str(exam), "bo", "--units", "lbf,ft,lb"]) == 0
    told = capsys.readouterr().out
    for name in ("class-platform.zip", "platform-bo.zip"):
        assert (exam / "keys" / name).read_bytes().startswith(b"PK")
        assert f"Wrote {exam / 'keys' / name}." in told
    assert main(["export", str(exam), "nobody"]) == 2
    assert "nobody called “nobody”" in capsys.readouterr().err


def test_what_is_wrong_is_a_sentence(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "plan.toml").write_text(BLUEPRINT.replace("easy = 1", "easy = 50"))
    (tmp_path / "class.csv").write_text("ada\n")
    arguments = [str(tmp_path / name) for name in ("plan.toml", "class.csv", "exam")]
    assert main(["papers", *arguments]) == 2
    assert "50 easy questions are wanted" in capsys.readouterr().err
    assert not (tmp_path / "exam").exists()
    assert main(["mark", str(tmp_path)]) == 2
    assert main(["papers", *arguments, "--units", "stone"]) == 2
