"""A pytest plugin for nbval: each notebook runs with a learner's record of its own.

The notebooks were committed as a first visit shows them, so no page may see another's answers.
"""

import os
import tempfile
from pathlib import Path

import pytest

_PLACE = tempfile.TemporaryDirectory(prefix="ropecalc-records-", ignore_cleanup_errors=True)


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """Name the record before the notebook's kernel starts and inherits the name."""
    name = f"{item.path.parent.name}-{item.path.stem}.sqlite"
    os.environ["ROPECALC_RECORD"] = str(Path(_PLACE.name) / name)
