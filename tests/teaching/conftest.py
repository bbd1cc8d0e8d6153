"""What the tests of the pages share."""

import logging
from collections.abc import Iterator

import pytest


@pytest.fixture
def no_faults(caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    """Fail a test in which a page hid an exception behind a sentence and put it into its log."""
    yield
    found = [
        record.getMessage()
        for when in ("setup", "call")
        for record in caplog.get_records(when)
        if record.name.startswith("ropecalc") and record.levelno >= logging.ERROR
    ]
    assert not found, found
