"""What a committed page must carry for its comparison with a new run to mean anything.

The comparison passes over cells that were never run and over pictures, so a page without saved
results would be compared with nothing and pass.
"""

from pathlib import Path
from typing import Any

import nbformat
import pytest

from ropecalc.teaching.notebooks import (
    MANIFEST,
    course_notebooks,
    delivered,
    in_one_form,
    manifest_of,
)

COURSE = Path(__file__).parents[2]
PAGES = course_notebooks(COURSE)
UNCOMPARED = {"image/png", "image/jpeg", "application/vnd.jupyter.widget-view+json"}


def complaints(page: Any) -> list[str]:
    """What is wrong with the saved results of a notebook, in words."""
    found = []
    if "widgets" in page.metadata:
        found.append("saved widget state: it shows dead sliders")
    code = [cell for cell in page.cells if cell.cell_type == "code"]
    counts = [cell.execution_count for cell in code]
    if counts != list(range(1, len(code) + 1)):
        found.append(f"cells numbered {counts}: not run once, in order")
    for number, cell in enumerate(code, start=1):
        for output in cell.outputs:
            if output.output_type == "error":
                found.append(f"code cell {number}: an error")
            data = set(output.get("data", ()))
            if data and data <= UNCOMPARED:
                found.append(f"code cell {number}: a picture or a widget without its text")
    return found


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_saved_results_can_be_compared(page: Path) -> None:
    assert complaints(nbformat.read(page, as_version=4)) == []


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_page_is_in_the_one_form(page: Path) -> None:
    """As `make notebooks` writes it: otherwise the next run changes the file for no reason."""
    text = page.read_text(encoding="utf-8")
    again = nbformat.writes(in_one_form(nbformat.reads(text, as_version=4)))
    assert text == again.rstrip("\n") + "\n"


def test_manifest_lists_the_pages_as_they_are() -> None:
    """Run `make notebooks` if this fails: pages not in the manifest do not start by themselves."""
    assert MANIFEST.exists()
    assert dict(delivered()) == manifest_of(COURSE)


def _page(**cell: Any) -> Any:
    code = nbformat.v4.new_code_cell("1", **{"execution_count": 1, **cell})
    return nbformat.v4.new_notebook(cells=[code])


def _shown(data: dict[str, str]) -> list[Any]:
    return [nbformat.v4.new_output("display_data", data=data)]


@pytest.mark.parametrize(
    ("page", "part"),
    [
        (_page(execution_count=None), "not run once"),
        (_page(execution_count=2), "not run once"),
        (_page(outputs=_shown({"image/png": "AAAA"})), "without its text"),
        (_page(outputs=[nbformat.v4.new_output("error", ename="E", evalue="")]), "an error"),
        (nbformat.v4.new_notebook(metadata={"widgets": {}}), "widget state"),
    ],
)
def test_what_cannot_be_compared_is_found(page: Any, part: str) -> None:
    assert part in " ".join(complaints(page))


def test_text_beside_a_picture_is_enough() -> None:
    both = _shown({"image/png": "AAAA", "text/plain": "a wall"})
    assert complaints(_page(outputs=both)) == []
