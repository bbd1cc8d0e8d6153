"""The tests that answer for a module.

A module's own tests are found by name: ``mechanics/x.py`` has ``tests/mechanics/test_x*.py``, in
the folder of the same name or above it. The modules of ``derivation`` build on each other and are
small, so all of ``tests/derivation`` answers for each. What every derivation must satisfy
(``test_every_derivation``), and that results are frozen, is part of what tests a mechanics module:
of these, the cases that bear the module's name are run after the module's own tests.
"""

from dataclasses import dataclass
from pathlib import Path, PurePosixPath

EVERY_DERIVATION = "tests/mechanics/test_every_derivation.py"
FROZEN = "tests/derivation/test_frozen.py"

ALSO = {
    "guiding": ("tests/mechanics/test_settling.py",),
    "holding": ("tests/mechanics/test_settling.py",),
}
"""Further files that check a module against physics rather than against itself."""


@dataclass(frozen=True)
class Suite:
    """Runs of pytest, as its arguments, one after the other until one fails."""

    files: tuple[str, ...]
    runs: tuple[tuple[str, ...], ...]


def suite(root: Path, module: str) -> Suite:
    """The tests of ``module`` (a path from ``root``)."""
    path = PurePosixPath(module)
    if path.parts[1] == "derivation":
        own = sorted(_names(root, "tests/derivation/test_*.py"))
        first = [f for f in own if PurePosixPath(f).name.startswith(f"test_{path.stem}")]
        files = (*first, *(f for f in own if f not in first))
        return Suite(files, (files,))
    own = sorted(_named_after(root, path))
    files = (*own, *ALSO.get(path.stem, ()))
    dotted = ".".join(path.with_suffix("").parts[2:])
    if path.stem == "quantities":
        return Suite((*files, EVERY_DERIVATION), ((*files, EVERY_DERIVATION),))
    every = (FROZEN, EVERY_DERIVATION, "-k", f"{dotted}.")
    return Suite((*files, FROZEN, EVERY_DERIVATION), (files, every) if files else (every,))


def _named_after(root: Path, path: PurePosixPath) -> set[str]:
    """Test files whose name starts with the module's, or with its package's if it has none."""
    inner = path.parts[2:-1]
    found: set[str] = set()
    for depth in range(len(inner), -1, -1):
        folder = "/".join(("tests/mechanics", *inner[:depth]))
        stem = "_".join((*inner[depth:], path.stem))
        found |= _names(root, f"{folder}/test_{path.stem}.py")
        found |= _names(root, f"{folder}/test_{path.stem}_*.py")
        found |= _names(root, f"{folder}/test_{stem}*.py")
    return found


def _names(root: Path, pattern: str) -> set[str]:
    return {p.relative_to(root).as_posix() for p in root.glob(pattern)}
