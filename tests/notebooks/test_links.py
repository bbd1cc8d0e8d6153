"""Where a page leads: every link arrives, and no page of the course is left out."""

import re
from pathlib import Path

import nbformat
import pytest

from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.notebooks import course_notebooks

COURSE = Path(__file__).parents[2]
PAGES = course_notebooks(COURSE)
LINK = re.compile(r"\]\(([^)#]+)\)")
START = COURSE / "lessons" / "00_start.ipynb"
EVERYWHERE = {"glossary.ipynb", "formula_sheet.ipynb", "00_start.ipynb"}


def links(page: Path) -> list[str]:
    cells = nbformat.read(page, as_version=4).cells
    prose = "\n".join(cell.source for cell in cells if cell.cell_type == "markdown")
    return LINK.findall(prose)


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_every_link_arrives(page: Path) -> None:
    for link in links(page):
        assert (page.parent / link).resolve().is_file(), link


def test_the_start_page_leads_to_every_page() -> None:
    found = {(START.parent / link).resolve() for link in links(START)}
    assert {page.resolve() for page in PAGES} - {START.resolve()} - found == set()


def test_there_are_twelve_lessons_in_their_order() -> None:
    assert [lesson.number for lesson in LESSONS.values()] == list(range(1, 13))
    for lesson in LESSONS.values():
        assert (START.parent / f"{lesson.file}.ipynb").is_file()
        assert lesson.file.startswith(f"{lesson.number:02}_")


def test_the_path_names_lessons_by_their_titles() -> None:
    cells = nbformat.read(START, as_version=4).cells
    prose = "\n".join(cell.source for cell in cells if cell.cell_type == "markdown")
    for lesson in LESSONS.values():
        assert f"[{lesson.title}]({lesson.file}.ipynb)" in prose


@pytest.mark.parametrize("lesson", LESSONS.values(), ids=lambda lesson: lesson.key)
def test_a_lesson_leads_on(lesson) -> None:
    files = [one.file for one in LESSONS.values()]
    page = START.parent / f"{lesson.file}.ipynb"
    place = files.index(lesson.file)
    following = {f"{files[place + 1]}.ipynb"} if place + 1 < len(files) else set()
    assert EVERYWHERE | following <= set(links(page))


@pytest.mark.parametrize("lesson", LESSONS.values(), ids=lambda lesson: lesson.key)
def test_a_lesson_has_its_parts(lesson) -> None:
    """Each of its figures, facts, checks and myths is asked for, and the words of the trade."""
    cells = nbformat.read(START.parent / f"{lesson.file}.ipynb", as_version=4).cells
    code = "\n".join(cell.source for cell in cells if cell.cell_type == "code")
    wanted = ["lesson.words()", "lesson.cautions()", "lesson.units()"]
    wanted += [f'lesson.figure("{figure.key}")' for figure in lesson.figures]
    wanted += [f'lesson.fact("{fact.key}")' for fact in lesson.facts]
    wanted += [f'lesson.question("{question.key}")' for question in lesson.questions]
    assert [line for line in wanted if line not in code] == []
    assert len(re.findall(r"lesson\.myth\(", code)) >= 2
    assert code.count("lesson.working(") >= 3
    assert 3 <= len(lesson.questions) <= 5
