"""Finding the course and saying in one line why it does not open."""

import json
import socket
from pathlib import Path

import pytest

from ropecalc.teaching import course
from ropecalc.teaching.course import START, find_course, open_course, settings

LAB = Path(course.__file__).parent / "lab"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    page = tmp_path / "course" / START
    page.parent.mkdir(parents=True)
    page.write_text("{}")
    return tmp_path / "course"


def test_named_folder_is_taken(folder: Path) -> None:
    assert find_course(str(folder)) == folder


def test_course_is_found_from_inside(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(folder / "lessons")
    assert find_course(None) == folder


def test_named_folder_without_a_course(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match=r"no course in .*--folder"):
        find_course(str(tmp_path))


def test_taken_port(folder: Path) -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        port = other.getsockname()[1]
        with pytest.raises(ValueError, match=f"port {port} is taken"):
            open_course(str(folder), port=port, browser=False)


@pytest.mark.parametrize("port", [0, -1, 65536])
def test_impossible_port(folder: Path, port: int) -> None:
    with pytest.raises(ValueError, match="no port"):
        open_course(str(folder), port=port, browser=False)


def test_course_listens_on_this_machine_only(folder: Path) -> None:
    options = settings(folder, None, False, "workspace")
    assert "--ServerApp.ip=127.0.0.1" in options
    assert not any("token" in option or "password" in option for option in options)


def test_what_is_handed_to_jupyterlab_is_there() -> None:
    """The files are found by name when the course starts: none may be missing or malformed."""
    for name in ("default_setting_overrides", "page_config"):
        assert json.loads((LAB / "config" / "labconfig" / f"{name}.json").read_text())
    extension = LAB / "labextensions" / "ropecalc-lab"
    build = json.loads((extension / "package.json").read_text())["jupyterlab"]["_build"]
    assert (extension / build["load"]).is_file()
