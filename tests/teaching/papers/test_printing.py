"""Papers and keys on paper: readable text of each PDF, the same bytes again, nothing leaked."""

import re
import subprocess
from dataclasses import replace
from shutil import which

import pytest
from reportlab.platypus import Paragraph

from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.papers.print_formula import FormulaError, PrintedFormula
from ropecalc.teaching.papers.printing import _or_text, key_pdf, paper_pdf
from ropecalc.units import Display
from tests.teaching.papers.examples import blueprint, issue

PAPER = issue("Ada B.").papers[0]
AMERICAN = Display(force="lbf", length="ft", mass="lb")


def pages(pdf: bytes) -> int:
    return len(re.findall(rb"/Type /Page\b", pdf))


def sizes(pdf: bytes) -> set[bytes]:
    return set(re.findall(rb"/MediaBox \[ ([^\]]*) \]", pdf))


def text(pdf: bytes) -> str:
    """What a reader finds, by a tool that is not ours; words may be broken over lines."""
    return " ".join(leaves(pdf))


def leaves(pdf: bytes) -> list[str]:
    """The same, page by page."""
    if which("pdftotext") is None:
        pytest.skip("pdftotext is not on this machine; the other tests of this file remain")
    run = subprocess.run(
        ["pdftotext", "-", "-"], input=pdf, capture_output=True, check=True, timeout=60
    )
    return [" ".join(leaf.split()) for leaf in run.stdout.decode("utf-8").split("\f")]


def test_a_paper_asks_everything_and_gives_nothing_away() -> None:
    found = text(paper_pdf(PAPER))
    assert PAPER.code in found and "Ada B." in found and "not a certification" in found
    assert blueprint().seed not in found
    for number, item in enumerate(PAPER.items, 1):
        assert f"{number}. {item.template.title}" in found
        if not item.options:
            shown = Display().show(item.drawn.answer, item.template.kind)
            assert shown not in found
            assert not any(m.title in found for m in item.template.mistakes)
    assert "Answer sheet" in found and "Formulas" in found


def test_a_key_has_every_answer_with_its_way_and_the_mistakes() -> None:
    found = text(key_pdf(PAPER))
    for item in PAPER.items:
        shown = Display().show(item.drawn.answer, item.template.kind)
        assert shown in found
        assert all(mistake.title in found for mistake in item.template.mistakes)
        if item.options:
            assert f"{item.right_letter}: {shown}" in found
    assert "must be right" in found


@pytest.mark.parametrize("display", [Display(), AMERICAN], ids=["si", "american"])
@pytest.mark.parametrize("size", ["a4", "letter"])
def test_no_heading_in_a_key_stands_alone_at_the_foot_of_a_page(size, display) -> None:
    found = leaves(key_pdf(PAPER, size, display))
    for number, item in enumerate(PAPER.items, 1):
        heading = f"{number}. {item.template.title}"
        (leaf,) = (leaf for leaf in found if heading in leaf)
        assert "Assumed:" in leaf.partition(heading)[2]


def test_the_same_bytes_whenever_it_is_printed() -> None:
    assert paper_pdf(PAPER) == paper_pdf(PAPER)
    assert key_pdf(PAPER) == key_pdf(PAPER)


def test_paper_sizes_and_units() -> None:
    (a4,), (letter,) = (sizes(paper_pdf(PAPER, size)) for size in ("a4", "LETTER"))
    assert letter == b"0 0 612 792"
    assert a4.startswith(b"0 0 595.27")
    found = text(paper_pdf(PAPER, "letter", AMERICAN))
    assert " lbf" in found and " kN" not in found
    with pytest.raises(ValueError, match="“a3” is no paper known here"):
        paper_pdf(PAPER, "a3")


def test_the_formula_sheet_can_be_left_out() -> None:
    bare = replace(PAPER, formula_sheet=False)
    assert pages(paper_pdf(bare)) < pages(paper_pdf(PAPER))
    assert "Formulas" not in text(paper_pdf(bare))


def test_names_are_printed_as_they_are_and_never_as_markup() -> None:
    odd = replace(PAPER, student="<b>Å & 王", title="A < B")
    assert b"%PDF" in paper_pdf(odd) and b"%PDF" in key_pdf(odd)
    assert "<b>Å &" in text(paper_pdf(odd))


@pytest.mark.parametrize("lesson", LESSONS.values(), ids=lambda lesson: lesson.key)
def test_every_formula_of_the_course_can_be_printed(lesson) -> None:
    for derivation in lesson.derivations:
        for line in derivation.explain().lines:
            printed = _or_text(line.latex, line.text)
            wide, high = printed.wrap(400.0, 700.0)
            assert 0 < wide <= 400.0 and 5 < high < 120.0


def test_a_formula_is_made_to_fit_and_a_strange_one_becomes_text() -> None:
    formula = PrintedFormula(r"\frac{a}{b} + " * 60 + "c")
    assert formula.natural_width > 500
    assert formula.wrap(300.0, 700.0)[0] <= 300.0
    with pytest.raises(FormulaError):
        PrintedFormula(r"\begin{cases} a \end{cases}")
    assert isinstance(_or_text(r"\begin{cases} a \end{cases}", "a"), Paragraph)
