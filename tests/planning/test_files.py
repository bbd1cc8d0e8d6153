"""A file is written whole or not at all."""

import os
import stat
from pathlib import Path

import pytest

from ropecalc.planning import files
from ropecalc.planning.files import check_destination, write_all, write_whole


def test_content_arrives_whole_and_nothing_else(tmp_path: Path) -> None:
    write_whole(tmp_path / "a.txt", "Höhe\n")
    write_whole(tmp_path / "b.bin", b"\x00\x01")
    assert (tmp_path / "a.txt").read_bytes() == "Höhe\n".encode()
    assert (tmp_path / "b.bin").read_bytes() == b"\x00\x01"
    assert sorted(p.name for p in tmp_path.iterdir()) == ["a.txt", "b.bin"]


def test_a_failure_leaves_the_old_file_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "plan.csv"
    path.write_text("old")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(files.os, "fsync", full)
    with pytest.raises(ValueError, match="No space left"):
        write_whole(path, "new")
    assert path.read_text() == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["plan.csv"]


@pytest.mark.skipif(os.name == "nt", reason="access rights are those of POSIX")
def test_access_rights_are_those_of_any_new_file(tmp_path: Path) -> None:
    (tmp_path / "usual").write_text("")
    write_whole(tmp_path / "ours", "")
    modes = {stat.S_IMODE((tmp_path / n).stat().st_mode) for n in ("usual", "ours")}
    assert len(modes) == 1


def test_a_missing_folder_is_named_before_any_work(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="does not exist"):
        check_destination(tmp_path / "none" / "plan.csv")
    with pytest.raises(ValueError, match="this is a folder"):
        check_destination(tmp_path)


@pytest.mark.parametrize("name", ["con.toml", "NUL", "Aux.csv", "com1.png", "lpt9.tar.gz"])
def test_names_of_devices_are_refused(name: str, tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="Windows keeps this name"):
        check_destination(tmp_path / name)
    assert check_destination(tmp_path / f"my-{name}").name == f"my-{name}"


@pytest.mark.skipif(os.name == "nt", reason="devices have no paths on Windows")
def test_a_device_is_not_replaced(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.csv")
    for path in (Path("/dev/null"), tmp_path / "pipe.csv"):
        with pytest.raises(ValueError, match="not an ordinary file"):
            write_whole(path, "")


@pytest.mark.skipif(os.name == "nt", reason="links need rights on Windows")
def test_a_link_stays_a_link_and_an_old_file_keeps_its_rights(tmp_path: Path) -> None:
    (tmp_path / "kept").mkdir()
    (tmp_path / "kept" / "real").write_text("old")
    (tmp_path / "kept" / "real").chmod(0o640)
    (tmp_path / "link").symlink_to(tmp_path / "kept" / "real")
    write_whole(tmp_path / "link", "new")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "kept" / "real").read_text() == "new"
    assert stat.S_IMODE((tmp_path / "kept" / "real").stat().st_mode) == 0o640


def test_several_files_need_several_names(tmp_path: Path) -> None:
    first, second = tmp_path / "a.csv", tmp_path / "b.png"
    write_all({first: "one", second: b"two"})
    assert (first.read_text(), second.read_text()) == ("one", "two")
    with pytest.raises(ValueError, match="two results would go into this file"):
        write_all({f"{tmp_path}/a.csv": "x", f"{tmp_path}/./a.csv": "y"})
    assert first.read_text() == "one"


def test_temporary_files_follow_the_usual_mask(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Changing the mask for a moment would change it for every thread of the kernel."""

    def mask(_: int) -> int:
        raise AssertionError("the mask is the process's, not ours")

    monkeypatch.setattr(files.os, "umask", mask)
    write_whole(tmp_path / "a", "")
    assert (tmp_path / "a").exists()
