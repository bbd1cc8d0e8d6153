"""What a course page may hold: one-line cells that ask the library, and prose."""

import ast
from pathlib import Path

import nbformat
import pytest

from ropecalc.teaching.notebooks import course_notebooks

COURSE = Path(__file__).parents[2]
PAGES = course_notebooks(COURSE)
KINDS = {"lessons": {"start", "lesson"}, "exercises": {"exercise"}, "solutions": {"solution"}}

MOST_LINES = 3
PROGRAMMING = (
    ast.FunctionDef,
    ast.AsyncFunctionDef,
    ast.ClassDef,
    ast.Lambda,
    ast.For,
    ast.While,
    ast.If,
    ast.IfExp,
    ast.comprehension,
    ast.With,
    ast.Try,
)
FORMULA = (ast.BinOp, ast.UnaryOp, ast.Compare, ast.BoolOp, ast.AugAssign)


def complaints(code: str) -> list[str]:
    """What is wrong with a cell's code, in words; a negative number is a number, no formula."""
    found = []
    if sum(1 for line in code.splitlines() if line.strip()) > MOST_LINES:
        found.append(f"more than {MOST_LINES} lines")
    for node in ast.walk(ast.parse(code)):
        if isinstance(node, PROGRAMMING):
            found.append(f"a {type(node).__name__}: programs belong in the library")
        elif isinstance(node, FORMULA) and not _negative_number(node):
            found.append(f"a {type(node).__name__}: formulas belong in the library")
        elif isinstance(node, ast.Import | ast.ImportFrom):
            found += [
                f"import of {name}: a page imports from ropecalc only"
                for name in _imported(node)
                if name.split(".")[0] != "ropecalc"
            ]
    return found


def _negative_number(node: ast.AST) -> bool:
    return (
        isinstance(node, ast.UnaryOp)
        and isinstance(node.op, ast.USub)
        and isinstance(node.operand, ast.Constant)
    )


def _imported(node: ast.Import | ast.ImportFrom) -> list[str]:
    if isinstance(node, ast.ImportFrom):
        return [node.module or "."]
    return [alias.name for alias in node.names]


def test_there_are_pages() -> None:
    assert COURSE / "lessons" / "00_start.ipynb" in PAGES


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_cells_only_ask_the_library(page: Path) -> None:
    cells = nbformat.read(page, as_version=4).cells
    found = {
        number: complaints(cell.source)
        for number, cell in enumerate(cells, start=1)
        if cell.cell_type == "code"
    }
    assert {number: wrong for number, wrong in found.items() if wrong} == {}


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_page_says_what_it_is(page: Path) -> None:
    """Without its kind a page would open as a bare notebook, code and all."""
    kind = nbformat.read(page, as_version=4).metadata.get("ropecalc", {}).get("kind")
    assert kind in KINDS[page.relative_to(COURSE).parts[0]]


@pytest.mark.parametrize(
    ("code", "part"),
    [
        ("a = 1\nb = 2\nc = 3\nd = 4", "more than 3 lines"),
        ("def f():\n    pass", "FunctionDef"),
        ("f = lambda x: x", "Lambda"),
        ("for a in b:\n    a", "For"),
        ("[a for a in b]", "comprehension"),
        ("weight = 2 * load", "BinOp"),
        ("load += 1", "AugAssign"),
        ("import numpy", "import of numpy"),
        ("from ipywidgets import IntSlider", "import of ipywidgets"),
    ],
)
def test_what_is_not_allowed_is_found(code: str, part: str) -> None:
    assert part in " ".join(complaints(code))


def test_what_is_allowed_is_left_alone() -> None:
    assert complaints("from ropecalc.teaching import x\n\npage = x('a', -1.5)\npage.show()") == []
