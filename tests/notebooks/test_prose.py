"""The prose of lessons: short and plain enough, spelled well, and free of typed-in results."""

import re
from collections.abc import Iterator
from pathlib import Path

import nbformat
import pyphen
import pytest
from spellchecker import SpellChecker

from ropecalc.teaching.notebooks import course_notebooks

COURSE = Path(__file__).parents[2]
PAGES = course_notebooks(COURSE)
LESSONS = [p for p in PAGES if p.parent.name == "lessons"]
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


# --- spelling and reading level ---------------------------------------------------------------

WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*")
NOT_PROSE = re.compile(r"\$[^$]*\$|\]\([^)]*\)|`[^`]*`|\S+/\S+")
OUR_WORDS = frozenset((Path(__file__).parent / "words.txt").read_text(encoding="utf-8").split())
SHORTEST_CHECKED = 4  # letters; shorter ones are units and symbols as often as words
HARDEST_GRADE, LONGEST_SENTENCE = 8.0, 40
SYLLABLES = pyphen.Pyphen(lang="en_GB")
SPELLER = SpellChecker(language="en")


def misspelled(text: str) -> set[str]:
    found = (word.lower().replace("’", "'") for word in WORD.findall(NOT_PROSE.sub(" ", text)))
    words = {word.removesuffix("'s") for word in found}
    long = {word for word in words if len(word) >= SHORTEST_CHECKED}
    return SPELLER.unknown(long) - OUR_WORDS


def everything_said(page: Path) -> Iterator[str]:
    """Prose, and the words of everything that the page shows."""
    for cell in nbformat.read(page, as_version=4).cells:
        if cell.cell_type == "markdown":
            yield cell.source
        for output in cell.get("outputs", ()):
            yield output.get("data", {}).get("text/plain", "")


def sentences(page: Path) -> list[list[str]]:
    lines = (line for line in prose(page).splitlines() if not line.startswith("#"))
    parts = re.split(r"[.!?;:](?:\s|$)|\n", NOT_PROSE.sub(" ", "\n".join(lines)))
    return [words for part in parts if (words := WORD.findall(part))]


def grade(parts: list[list[str]]) -> float:
    """Years at school that a text asks for (Flesch and Kincaid), from sentences of words.

    Hyphenation finds fewer syllables than a speaker, so the limit is set low.
    """
    words = [word for part in parts for word in part]
    syllables = sum(len(SYLLABLES.positions(word)) + 1 for word in words)
    return 0.39 * len(words) / len(parts) + 11.8 * syllables / len(words) - 15.59


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_spelling(page: Path) -> None:
    """A word of the trade that the dictionary lacks goes into words.txt."""
    assert set().union(*map(misspelled, everything_said(page))) == set()


@pytest.mark.parametrize("page", LESSONS, ids=lambda page: page.stem)
def test_a_page_is_easy_to_read(page: Path) -> None:
    parts = sentences(page)
    assert grade(parts) <= HARDEST_GRADE
    assert [" ".join(words) for words in parts if len(words) > LONGEST_SENTENCE] == []


def test_misspelled_and_heavy_words_are_found() -> None:
    assert misspelled("The tensoin of the haul line is $tensoin$.") == {"tensoin"}
    assert grade([["The", "rope", "holds"]]) < 3
    assert grade([["Electromagnetic", "considerations", "notwithstanding"] * 5]) > 15
