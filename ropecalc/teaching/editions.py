"""Both editions of every exercise, the one to work on and the worked solutions, from one source.

`python -m ropecalc.teaching.editions` writes the notebooks whose cells differ from their source,
without outputs; `make notebooks` does this first and then runs them. A test compares what is in
the repository.
"""

import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from ropecalc.planning.files import write_whole
from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.exercises.content import ExerciseContent

Cell = tuple[str, str]
"""A cell's type ("markdown" or "code") and its source."""


def exercise_cells(content: ExerciseContent) -> Iterator[Cell]:
    """The edition to work on."""
    yield "markdown", f"# {content.title}: exercise\n\n{content.words} {_lesson_link(content)}"
    yield from _opening("exercise", content)
    yield from _sections("exercise", content)
    yield (
        "markdown",
        "## How far you are\n\nYour answers are kept; you can close this page and come back. The "
        f"[worked solutions](../solutions/{content.file}.ipynb) use the numbers that stand here "
        "at first.",
    )
    yield "code", "exercise.progress()"
    yield "code", "exercise.cautions()"


def solution_cells(content: ExerciseContent) -> Iterator[Cell]:
    """The edition with the worked solutions."""
    yield (
        "markdown",
        f"# {content.title}: worked solutions\n\nThe same questions as in the "
        f"[exercise](../exercises/{content.file}.ipynb), with the numbers that stand there at "
        "first. Try each one there before you read on: working it out is what stays. "
        f"{_lesson_link(content)}",
    )
    yield from _opening("solution", content)
    yield from _sections("solution", content)
    yield "markdown", "## What these answers leave out"
    yield "code", "solution.cautions()"


def _lesson_link(content: ExerciseContent) -> str:
    return f"It goes with [this lesson](../lessons/{content.lesson}.ipynb)."


def _opening(kind: str, content: ExerciseContent) -> Iterator[Cell]:
    yield (
        "code",
        f'from ropecalc.teaching import open_{kind}\n{kind} = open_{kind}("{content.key}")',
    )
    yield "code", f"{kind}.units()"


def _sections(kind: str, content: ExerciseContent) -> Iterator[Cell]:
    for section in content.sections:
        yield "markdown", f"## {section.heading}\n\n{section.words}"
        for question in section.questions:
            yield "code", f'{kind}.question("{question.key}")'


_EDITIONS: dict[str, tuple[str, Callable[[ExerciseContent], Iterator[Cell]]]] = {
    "exercises": ("exercise", exercise_cells),
    "solutions": ("solution", solution_cells),
}


def notebook(kind: str, cells: Iterator[Cell]) -> Any:
    """An unrun notebook of the course. Its cell ids are counted, so that they never change."""
    from nbformat import v4

    page = v4.new_notebook(metadata={"ropecalc": {"kind": kind}})
    for number, (cell_type, source) in enumerate(cells):
        make = v4.new_markdown_cell if cell_type == "markdown" else v4.new_code_cell
        page.cells.append(make(source, id=f"cell-{number:02d}"))
    return page


def same_source(one: Any, other: Any) -> bool:
    """Whether two notebooks have the same cells and kind, whatever their outputs."""
    return _source(one) == _source(other)


def _source(page: Any) -> Any:
    cells = [(cell.id, cell.cell_type, cell.source) for cell in page.cells]
    return page.metadata.get("ropecalc"), cells


def editions() -> dict[str, Any]:
    """Every exercise and solution notebook, unrun, by its path in the course's folder."""
    return {
        f"{folder}/{content.file}.ipynb": notebook(kind, cells(content))
        for content in EXERCISES.values()
        for folder, (kind, cells) in _EDITIONS.items()
    }


def write(folder: Path) -> list[str]:
    """Write the notebooks in ``folder`` that are missing or differ; return their paths."""
    import nbformat

    written = []
    for name, page in editions().items():
        path = folder / name
        if path.exists() and same_source(nbformat.read(path, as_version=4), page):
            continue
        path.parent.mkdir(exist_ok=True)
        write_whole(path, nbformat.writes(page) + "\n")
        written.append(name)
    return written


def main() -> int:
    """Write what differs into the current folder and say so."""
    for name in write(Path.cwd()):
        print(f"{name}: written from its source, not run yet")
    return 0


if __name__ == "__main__":
    sys.exit(main())
