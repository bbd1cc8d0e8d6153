"""What all tests share: a learner's record of their own, and pictures without a screen."""

import os
from pathlib import Path

import pytest
from hypothesis import settings

os.environ.setdefault("MPLBACKEND", "Agg")
# A deadline for each example fails on a busy machine and says nothing about the code.
settings.register_profile("ropecalc", deadline=None)
settings.load_profile("ropecalc")


@pytest.fixture(autouse=True)
def fresh_record(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A learner's record that is this test's own and does not exist yet."""
    record = tmp_path / "record.sqlite"
    monkeypatch.setenv("ROPECALC_RECORD", str(record))
    return record
