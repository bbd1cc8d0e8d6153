"""Every figure can write its pictures for looking at."""

import sys
from pathlib import Path

import pytest

from ropecalc.teaching.figures import FIGURES
from ropecalc.teaching.figures.__main__ import main, settings


def test_start_and_ends_are_written_with_their_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    figure = FIGURES["three-ways"]
    monkeypatch.setattr(sys, "argv", ["figures", str(tmp_path / "new"), figure.key])
    main()
    names = [name for name, _ in settings(figure)]
    assert len(set(names)) == len(names) > 2 * len(figure.controls)
    for name in names:
        path = tmp_path / "new" / f"{figure.key}-{name}.png"
        assert path.read_bytes().startswith(b"\x89PNG")
        assert len(path.with_suffix(".txt").read_text(encoding="utf-8")) > 40
    assert f"{len(names)} pictures" in capsys.readouterr().out
