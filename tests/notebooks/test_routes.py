"""The time that a lesson asks for, against a rule of thumb for what stands on its page."""

import re
from collections import defaultdict
from pathlib import Path

import nbformat
import pytest

LESSONS = sorted((Path(__file__).parents[2] / "lessons").glob("[01][0-9]_*.ipynb"))
TIMED = [page for page in LESSONS if page.stem[:2] in {"08", "09", "10", "11", "12"}]

WORDS_A_MINUTE = 130
MINUTES = {"figure": 6.0, "myth": 1.0, "question": 2.5, "words": 0.5, "sketch": 0.5,
           "briefing": 5.0, "debrief": 4.0}  # fmt: skip
A_WORKING, A_STEP = 1.0, 0.3
SPARE = 1.25
"""How far the stated time and the rule of thumb may be apart."""


def minutes(cell: nbformat.NotebookNode) -> float:
    """What one cell asks for: reading, trying out, unfolding, answering."""
    if cell.cell_type == "markdown":
        return len(re.findall(r"[^\W\d_]+", cell.source)) / WORDS_A_MINUTE
    said = "".join(output.get("data", {}).get("text/plain", "") for output in cell.outputs)
    asked = re.search(r"lesson\.(\w+)\(", cell.source.splitlines()[-1])
    what = asked.group(1) if asked else ""
    if what == "working":
        return A_WORKING + A_STEP * len(re.findall(r"^\d+\. ", said, re.MULTILINE))
    if what == "fact":
        return len(said.split()) / WORDS_A_MINUTE
    return MINUTES.get(what, 0.0)


def parts(page: Path) -> dict[str, float]:
    """Minutes of each part of a lesson, by its heading; the opening is under ""."""
    found: dict[str, float] = defaultdict(float)
    heading = ""
    for cell in nbformat.read(page, as_version=4).cells:
        headed = re.match(r"## (.*)", cell.source) if cell.cell_type == "markdown" else None
        heading = headed.group(1) if headed else heading
        found[heading] += minutes(cell)
    return found


def opening(page: Path) -> str:
    return str(nbformat.read(page, as_version=4).cells[0].source)


@pytest.mark.parametrize("page", TIMED, ids=lambda page: page.stem)
def test_the_whole_page_takes_about_as_long_as_it_says(page: Path) -> None:
    stated = re.search(r"Allow (\d+) minutes", opening(page))
    assert stated
    assert 1 / SPARE < sum(parts(page).values()) / float(stated.group(1)) < SPARE


def test_the_short_way_through_lesson_9_is_short() -> None:
    page = next(page for page in LESSONS if page.stem.startswith("09"))
    way = re.search(r"\*\*Short of time\?\*\* In about (\d+) minutes take (.*?)\. ", opening(page))
    assert way
    found = parts(page)
    names = re.findall(r"\*(.+?)\*", way.group(2))
    taken = [part for part in found for name in names if part.startswith(name)]
    assert len(names) == len(taken) >= 3
    assert "Check yourself" in taken
    short = sum(found[part] for part in ("", "The situation", *taken))
    assert 1 / SPARE < short / float(way.group(1)) < SPARE
    assert short < 0.85 * sum(found.values())


def test_lesson_11_falls_into_the_two_sittings_that_it_names() -> None:
    page = next(page for page in LESSONS if page.stem.startswith("11"))
    said = re.search(
        r"two sittings: as far as \*(.+?)\*, with the first two checks, about (\d+); the rest "
        r"about (\d+)",
        opening(page),
    )
    assert said
    found = parts(page)
    names = list(found)
    first = sum(found[part] for part in names[: names.index(said.group(1)) + 1])
    first += 2 * MINUTES["question"]
    rest = sum(found.values()) - first
    assert 1 / SPARE < first / float(said.group(2)) < SPARE
    assert 1 / SPARE < rest / float(said.group(3)) < SPARE
