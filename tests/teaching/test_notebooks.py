"""Running, writing and trusting the course's notebooks."""

import json
from pathlib import Path
from typing import Any

import nbformat
import pytest
from nbformat.sign import NotebookNotary
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook, new_output

from ropecalc.teaching import notebooks
from ropecalc.teaching.notebooks import (
    course_notebooks,
    delivered,
    fingerprint,
    in_one_form,
    manifest_of,
    run,
    sign_delivered,
)


def write(path: Path, *sources: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    cells = [new_code_cell(source, id=f"cell-{n}") for n, source in enumerate(sources)]
    nbformat.write(new_notebook(cells=cells, metadata={"ropecalc": {"kind": "lesson"}}), path)
    return path


def test_running_writes_results_once(tmp_path: Path) -> None:
    page = write(tmp_path / "page.ipynb", "1 + 1", "print('two')")
    assert run(page) is True
    first = page.read_bytes()
    assert run(page) is False
    assert page.read_bytes() == first
    cells = nbformat.read(page, as_version=4).cells
    assert [cell.execution_count for cell in cells] == [1, 2]
    assert cells[0].outputs[0].data["text/plain"] == "2"


def test_each_run_has_a_fresh_record(tmp_path: Path, fresh_record: Path) -> None:
    fresh_record.write_text("someone's answers")
    page = write(
        tmp_path / "page.ipynb",
        "import os, pathlib\npathlib.Path(os.environ['ROPECALC_RECORD']).exists()",
    )
    run(page)
    assert nbformat.read(page, as_version=4).cells[0].outputs[0].data["text/plain"] == "False"


def test_failing_cell_names_the_page(tmp_path: Path) -> None:
    page = write(tmp_path / "page.ipynb", "1 / 0")
    before = page.read_bytes()
    with pytest.raises(ValueError, match=r"(?s)page\.ipynb.*ZeroDivisionError"):
        run(page)
    assert page.read_bytes() == before


def test_a_cell_that_never_ends_is_a_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(notebooks, "_CELL_SECONDS", 1)
    page = write(tmp_path / "page.ipynb", "import time\ntime.sleep(60)")
    with pytest.raises(ValueError, match=r"page\.ipynb: a cell takes longer than 1 s"):
        run(page)


def test_a_kernel_that_stops_is_a_sentence(tmp_path: Path) -> None:
    page = write(tmp_path / "page.ipynb", "import os\nos._exit(1)")
    with pytest.raises(ValueError, match=r"page\.ipynb: its kernel stopped"):
        run(page)


def test_what_is_signed_is_what_was_compared(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A page that is exchanged between two readings would be signed as the other one."""
    monkeypatch.setenv("JUPYTER_DATA_DIR", str(tmp_path / "data"))
    page = write(tmp_path / "lessons" / "page.ipynb", "1")
    manifest = tmp_path / "manifest.json"
    manifest.write_text(json.dumps(manifest_of(tmp_path)))
    monkeypatch.setattr(notebooks, "MANIFEST", manifest)
    read = Path.read_bytes

    def read_and_exchange(path: Path) -> bytes:
        content = read(path)
        if path == page:
            write(page, "2")
        return content

    monkeypatch.setattr(Path, "read_bytes", read_and_exchange)
    assert sign_delivered(tmp_path) == 1
    assert not NotebookNotary().check_signature(nbformat.read(page, as_version=4))


def test_one_form_keeps_text_and_drops_what_passes() -> None:
    shown = {"text/plain": "20 kN", "application/vnd.jupyter.widget-view+json": {"model_id": "x"}}
    page: Any = new_notebook(
        metadata={"ropecalc": {"kind": "lesson"}, "widgets": {}, "signature": "x"},
        cells=[
            new_markdown_cell("text", metadata={"tags": ["keep"]}),
            new_code_cell(
                "x",
                metadata={"execution": {"iopub.status.busy": "now"}, "trusted": True},
                outputs=[new_output("display_data", data=shown)],
            ),
        ],
    )
    page = in_one_form(page)
    assert page.metadata["ropecalc"] == {"kind": "lesson"}
    assert page.metadata["language_info"] == {"name": "python"}
    assert "widgets" not in page.metadata
    assert page.cells[0].metadata == {"tags": ["keep"]}
    assert page.cells[1].metadata == {}
    assert page.cells[1].outputs[0].data == {"text/plain": "20 kN"}


def test_fingerprint_does_not_depend_on_line_ends(tmp_path: Path) -> None:
    page = write(tmp_path / "page.ipynb", "1")
    before = fingerprint(page)
    page.write_bytes(page.read_bytes().replace(b"\n", b"\r\n"))
    assert fingerprint(page) == before
    page.write_bytes(page.read_bytes() + b" ")
    assert fingerprint(page) != before


def test_checkpoints_are_no_pages(tmp_path: Path) -> None:
    page = write(tmp_path / "lessons" / "page.ipynb", "1")
    write(tmp_path / "lessons" / ".ipynb_checkpoints" / "page-checkpoint.ipynb", "1")
    write(tmp_path / "elsewhere" / "page.ipynb", "1")
    assert course_notebooks(tmp_path) == [page]
    assert list(manifest_of(tmp_path)) == ["lessons/page.ipynb"]


def test_only_pages_as_delivered_are_trusted(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("JUPYTER_DATA_DIR", str(tmp_path / "data"))
    genuine = write(tmp_path / "lessons" / "genuine.ipynb", "1")
    altered = write(tmp_path / "lessons" / "altered.ipynb", "2")
    manifest = tmp_path / "manifest.json"
    manifest.write_text(json.dumps(manifest_of(tmp_path)))
    monkeypatch.setattr(notebooks, "MANIFEST", manifest)
    write(altered, "3")
    assert sign_delivered(tmp_path) == 1
    notary = NotebookNotary()
    assert notary.check_signature(nbformat.read(genuine, as_version=4))
    assert not notary.check_signature(nbformat.read(altered, as_version=4))


def test_without_a_manifest_nothing_is_trusted(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(notebooks, "MANIFEST", tmp_path / "none.json")
    write(tmp_path / "lessons" / "page.ipynb", "1")
    assert delivered() == {}
    assert sign_delivered(tmp_path) == 0
