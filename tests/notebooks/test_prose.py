"""The prose of lessons: short enough to be read, and free of typed-in results."""

import re
from pathlib import Path

import nbformat
import pytest

from ropecalc.teaching.notebooks import course_notebooks

COURSE = Path(__file__).parents[2]
LESSONS = [p for p in course_notebooks(COURSE) if p.parent.name == "lessons"]
FEWEST_WORDS, MOST_WORDS = 400, 700

# A number with a unit, a percentage, an angle or a factor. What is given is shown by a fact, too.
RESULT = re.compile(r"\d[\d.,]*\s*(?:kN|N\b|kgf|lbf|kg\b|lb\b|m\b|ft\b|%|°|degrees|times\b|×)")


def prose(page: Path) -> str:
    cells = nbformat.read(page, as_version=4).cells
    return "\n".join(cell.source for cell in cells if cell.cell_type == "markdown")


def kind(page: Path) -> str:
    return str(nbformat.read(page, as_version=4).metadata["ropecalc"]["kind"])


@pytest.mark.parametrize("page", LESSONS, ids=lambda page: page.stem)
def test_no_result_is_typed_into_prose(page: Path) -> None:
    assert RESULT.findall(prose(page)) == []


def test_the_search_for_typed_in_results_finds_them() -> None:
    for line in ("the pull is 1.53 kN", "at 149°", "60 % more", "9 times as much", "2,5 m out"):
        assert RESULT.search(line), line
    assert not RESULT.search("Allow half an hour; the second figure, step 3.")


@pytest.mark.parametrize(
    "page", [p for p in LESSONS if re.match(r"(?!00)\d\d_", p.name)], ids=lambda page: page.stem
)
def test_a_lesson_has_a_readable_length(page: Path) -> None:
    words = len(re.findall(r"[^\W\d_]+", prose(page)))
    assert FEWEST_WORDS <= words <= MOST_WORDS
    assert kind(page) == "lesson"
