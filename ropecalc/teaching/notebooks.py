"""The course's notebooks as files: run, written in one form, and listed with their hashes.

`python -m ropecalc.teaching.notebooks [NOTEBOOK ...]` runs the notebooks named (all of them by
default), writes their outputs into them, and writes the manifest: the list of the notebooks the
course was delivered with, by which `ropecalc course` tells them from altered ones.

A committed notebook holds what its cells print, as text. It holds no live widget (a slider
without its kernel is dead), no timing and no version of anything, so that a second run changes
a file only if a result has changed.
"""

import hashlib
import json
import os
import sys
import tempfile
from collections.abc import Iterable, Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

from ropecalc.planning.files import write_whole
from ropecalc.teaching.record import PATH_VARIABLE

PLACES = ("lessons", "exercises", "solutions")
"""The folders of the course that hold notebooks."""

MANIFEST = Path(__file__).parent / "lab" / "manifest.json"

_WIDGET = "application/vnd.jupyter.widget-view+json"
_KERNEL = {"display_name": "Python 3 (ipykernel)", "language": "python", "name": "python3"}
_CELL_SECONDS = 120


def course_notebooks(folder: Path) -> list[Path]:
    """Every notebook of the course in `folder`, sorted; Jupyter's checkpoints left out."""
    found = (path for place in PLACES for path in (folder / place).rglob("*.ipynb"))
    return sorted(path for path in found if ".ipynb_checkpoints" not in path.parts)


def fingerprint(notebook: Path) -> str:
    """SHA-256 (hex) of a notebook's bytes, the same whichever line ends a checkout wrote."""
    return _hash(notebook.read_bytes())


def _hash(content: bytes) -> str:
    return hashlib.sha256(content.replace(b"\r\n", b"\n")).hexdigest()


def manifest_of(folder: Path) -> dict[str, str]:
    """The fingerprint of each course notebook in `folder`, by its path from there."""
    return {
        path.relative_to(folder).as_posix(): fingerprint(path) for path in course_notebooks(folder)
    }


def delivered() -> Mapping[str, str]:
    """The manifest the package was delivered with (empty if it has none)."""
    if not MANIFEST.exists():
        return {}
    manifest: dict[str, str] = json.loads(MANIFEST.read_text(encoding="utf-8"))
    return manifest


def write_manifest(folder: Path) -> None:
    """Write the manifest of the notebooks in `folder` into the package."""
    write_whole(MANIFEST, json.dumps(manifest_of(folder), indent=1) + "\n")


def sign_delivered(folder: Path) -> int:
    """Tell Jupyter to trust the notebooks in `folder` that are as delivered; return how many.

    A notebook that was altered keeps whatever trust its reader has given it: none, as a rule.
    """
    import nbformat

    genuine = set(delivered().values())
    signer = notary()
    signed = 0
    for path in course_notebooks(folder):
        content = path.read_bytes()  # once: what is signed is what was compared
        if _hash(content) in genuine:
            signer.sign(nbformat.reads(content.decode("utf-8"), as_version=4))
            signed += 1
    return signed


def notary() -> Any:
    """What signs notebooks for this user's Jupyter."""
    from jupyter_core.paths import jupyter_data_dir
    from nbformat.sign import NotebookNotary

    # On a new machine it is not there yet, and older notaries do not make it.
    Path(jupyter_data_dir()).mkdir(parents=True, exist_ok=True)
    return NotebookNotary()


def run(notebook: Path) -> bool:
    """Run `notebook` with a fresh learner's record and write it back; True if it has changed.

    Raises `ValueError` in words if a cell fails (with the cell's own message) or takes too long,
    or if the kernel stops.
    """
    import nbformat
    from nbclient import NotebookClient
    from nbclient.exceptions import CellExecutionError, CellTimeoutError, DeadKernelError

    before = notebook.read_text(encoding="utf-8")
    page = nbformat.reads(before, as_version=4)
    client = NotebookClient(
        page,
        timeout=_CELL_SECONDS,
        kernel_name="python3",
        resources={"metadata": {"path": str(notebook.parent)}},
        store_widget_state=False,
        record_timing=False,
    )
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as place:
        record = str(Path(place) / "record.sqlite")
        try:
            client.execute(env={**os.environ, PATH_VARIABLE: record})
        except CellExecutionError as error:
            raise ValueError(f"{notebook}: a cell fails\n{error}") from None
        except CellTimeoutError:
            raise ValueError(f"{notebook}: a cell takes longer than {_CELL_SECONDS} s") from None
        except DeadKernelError:
            raise ValueError(
                f"{notebook}: its kernel stopped while a cell ran (out of memory, perhaps)"
            ) from None
    after = nbformat.writes(in_one_form(page)).rstrip("\n") + "\n"
    if after != before:
        write_whole(notebook, after)
    return after != before


def in_one_form(page: Any) -> Any:
    """Strip from a notebook that was run all that differs between two runs; returns `page`."""
    ours = page.metadata.get("ropecalc")
    page.metadata.clear()
    page.metadata.update(kernelspec=_KERNEL, language_info={"name": "python"})
    if ours is not None:
        page.metadata["ropecalc"] = ours
    for cell in page.cells:
        for passing in ("execution", "trusted", "editable", "deletable"):
            cell.metadata.pop(passing, None)
        for output in cell.get("outputs", ()):
            if "text/plain" in output.get("data", {}):
                output.data.pop(_WIDGET, None)
            if "metadata" in output:
                output.metadata.clear()
    return page


def main(arguments: Iterable[str] = ()) -> int:
    """Run the notebooks named, or all of them, and write the manifest; return the exit code."""
    folder = Path.cwd()
    notebooks = [Path(name) for name in arguments] or course_notebooks(folder)
    failed = False
    for notebook, outcome in zip(notebooks, _run_all(notebooks), strict=True):
        print(f"{notebook.name}: {outcome}")
        failed = failed or outcome not in _FINE
    if not failed:
        write_manifest(folder)
    return int(failed)


_FINE = ("as it was", "written anew")


def _run_all(notebooks: list[Path]) -> Iterator[str]:
    with ProcessPoolExecutor() as pool:
        yield from pool.map(_outcome, notebooks)


def _outcome(notebook: Path) -> str:
    try:
        return _FINE[run(notebook)]
    except ValueError as error:
        return str(error)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
