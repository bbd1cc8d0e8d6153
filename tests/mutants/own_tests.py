"""The tests that answer for a module.

A module's own tests are found by name: ``mechanics/x.py`` and the modules of a package
``mechanics/x/`` have ``tests/mechanics/test_x.py`` and ``test_x_*.py``. The modules of
``derivation`` are small and build on each other: all of ``tests/derivation`` answers for each. What
every derivation must satisfy
(``test_every_derivation``), and that results are frozen, is part of what tests a mechanics module:
of these, the cases that bear the module's name are run after the module's own tests.
"""

from dataclasses import dataclass
from pathlib import Path, PurePosixPath

EVERY_DERIVATION = "tests/mechanics/test_every_derivation.py"
CATALOGUE = "quantities"
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
    files = (*sorted(_named_after(root, path)), *ALSO.get(path.stem, ()))
    if path.stem == CATALOGUE:
        return Suite(files, (files,))
    dotted = ".".join(path.with_suffix("").parts[2:])
    every = (FROZEN, EVERY_DERIVATION, "-k", f"{dotted}.")
    return Suite((*files, FROZEN, EVERY_DERIVATION), (files, every) if files else (every,))


def _named_after(root: Path, path: PurePosixPath) -> set[str]:
    """Test files with the module's name or its package's, but not those of a longer name."""
    stem = path.parts[2].removesuffix(".py")
    others = {p.stem for p in (root / "ropecalc/mechanics").glob("*.py")} - {stem}
    longer = tuple(f"test_{other}" for other in others if other.startswith(f"{stem}_"))
    found = _names(root, f"tests/mechanics/test_{stem}.py")
    found |= _names(root, f"tests/mechanics/test_{stem}_*.py")
    return {file for file in found if not PurePosixPath(file).name.startswith(longer)}


def _names(root: Path, pattern: str) -> set[str]:
    return {p.relative_to(root).as_posix() for p in root.glob(pattern)}
