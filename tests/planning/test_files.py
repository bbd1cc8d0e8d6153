"""A file is written whole or not at all."""

import os
import stat
from pathlib import Path

import pytest

from ropecalc.planning import files
from ropecalc.planning.files import check_destination, write_whole


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
