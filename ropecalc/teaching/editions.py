"""Both editions of every exercise and scenario, to work on and worked, from one source.

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
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.scenarios.content import Scenario

Cell = tuple[str, str]
"""A cell's type ("markdown" or "code") and its source."""
_SOLUTION_ENDING: tuple[Cell, ...] = (
    ("markdown", "## What these answers leave out"),
    ("code", "solution.cautions()"),
)


def exercise_cells(content: ExerciseContent) -> Iterator[Cell]:
    """The edition to work on."""
    yield "markdown", f"# {content.title}: exercise\n\n{content.words} {_lesson_link(content)}"
    yield from _opening("exercise", "exercise", content.key)
    yield from _sections("exercise", content)
    yield from _ending("exercise", content.file)


def solution_cells(content: ExerciseContent) -> Iterator[Cell]:
    """The edition with the worked solutions."""
    yield (
        "markdown",
        f"# {content.title}: worked solutions\n\nThe same questions as in the "
        f"[exercise](../exercises/{content.file}.ipynb), with the numbers that stand there at "
        "first. Try each one there before you read on: working it out is what stays. "
        f"{_lesson_link(content)}",
    )
    yield from _opening("solution", "solution", content.key)
    yield from _sections("solution", content)
    yield from _SOLUTION_ENDING


def _ending(name: str, file: str) -> Iterator[Cell]:
    """How far the learner is, where the solutions are, and the cautions."""
    yield (
        "markdown",
        "## How far you are\n\nYour answers are kept; you can close this page and come back. The "
        f"[worked solutions](../solutions/{file}.ipynb) use the numbers that stand here at first.",
    )
    yield "code", f"{name}.progress()"
    yield "code", f"{name}.cautions()"


def _lesson_link(content: ExerciseContent) -> str:
    return f"It goes with [this lesson](../lessons/{content.lesson}.ipynb)."


def scenario_cells(scenario: Scenario) -> Iterator[Cell]:
    """A scenario to work on."""
    yield (
        "markdown",
        f"# {scenario.title}: a scenario\n\nOne situation, and several questions about it. All "
        "parts share the numbers of the story, and some go on with a result of an earlier part: "
        "that part tells you the number to go on with, so a slip costs nothing later. The last "
        f"part asks for your judgement. {_lesson_links(scenario)}",
    )
    yield from _opening("scenario", "scenario", scenario.key)
    yield from _scenario_parts("scenario", scenario)
    yield from _ending("scenario", scenario.file)


def scenario_solution_cells(scenario: Scenario) -> Iterator[Cell]:
    """A scenario, worked."""
    yield (
        "markdown",
        f"# {scenario.title}: worked solutions\n\nThe same parts as in the "
        f"[scenario](../exercises/{scenario.file}.ipynb), with the numbers that stand there at "
        "first. Try each one there before you read on: working it out is what stays. "
        f"{_lesson_links(scenario)}",
    )
    yield from _opening("scenario_solution", "solution", scenario.key)
    yield from _scenario_parts("solution", scenario)
    yield from _SOLUTION_ENDING


def _scenario_parts(name: str, scenario: Scenario) -> Iterator[Cell]:
    yield "markdown", "## The situation"
    yield "code", f"{name}.situation()"
    yield "markdown", "## To be worked out"
    for part in scenario.parts:
        yield "code", f'{name}.part("{part.key}")'
    yield "markdown", "## To be judged"
    for judged in scenario.judged:
        yield "code", f'{name}.judged("{judged.key}")'


def _lesson_links(scenario: Scenario) -> str:
    drawn_on = (lesson for lesson in LESSONS.values() if lesson.number in scenario.lessons)
    links = [f"[{lesson.title}](../lessons/{lesson.file}.ipynb)" for lesson in drawn_on]
    return f"It draws on {'; '.join(links)}."


def _opening(opened: str, name: str, key: str) -> Iterator[Cell]:
    yield (
        "code",
        f'from ropecalc.teaching import open_{opened}\n{name} = open_{opened}("{key}")',
    )
    yield "code", f"{name}.units()"


def _sections(kind: str, content: ExerciseContent) -> Iterator[Cell]:
    for section in content.sections:
        yield "markdown", f"## {section.heading}\n\n{section.words}"
        for question in section.questions:
            yield "code", f'{kind}.question("{question.key}")'


_EDITIONS: dict[
    str,
    tuple[
        str,
        Callable[[ExerciseContent], Iterator[Cell]],
        Callable[[Scenario], Iterator[Cell]],
    ],
] = {
    "exercises": ("exercise", exercise_cells, scenario_cells),
    "solutions": ("solution", solution_cells, scenario_solution_cells),
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
    found: dict[str, Any] = {}
    for folder, (kind, of_exercise, of_scenario) in _EDITIONS.items():
        for content in EXERCISES.values():
            found[f"{folder}/{content.file}.ipynb"] = notebook(kind, of_exercise(content))
        for scenario in SCENARIOS.values():
            found[f"{folder}/{scenario.file}.ipynb"] = notebook(kind, of_scenario(scenario))
    return found


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
