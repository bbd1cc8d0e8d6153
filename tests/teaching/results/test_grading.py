"""One returned paper: right, wrong, blank, odd; letters and numbers; where it stands."""

from dataclasses import replace

import pytest

from ropecalc.teaching.papers.paper import RIGHT, Paper
from ropecalc.teaching.questions.marking import Verdict
from ropecalc.teaching.results.grading import Standing, grade, standing
from ropecalc.units import Display
from tests.teaching.papers.examples import issue

PAPER = issue("ada").papers[0]
MUST = next(n for n, item in enumerate(PAPER.items, 1) if item.must_pass)
CHOICE = next(n for n, item in enumerate(PAPER.items, 1) if item.options)
NUMBER = next(n for n, item in enumerate(PAPER.items, 1) if not item.options)


def right_answers(paper: Paper) -> dict[int, str]:
    display = Display()
    return {
        n: item.right_letter or display.show(item.drawn.answer, item.template.kind)
        for n, item in enumerate(paper.items, 1)
    }


def test_the_key_scores_full_marks_and_nothing_scores_nothing() -> None:
    full = grade(PAPER, right_answers(PAPER))
    assert (full.marks, full.share, full.missed) == (len(PAPER.items), 1.0, ())
    empty = grade(PAPER, {})
    assert (empty.marks, empty.missed) == (0, (MUST,))
    assert {item.verdict for item in empty.items} == {None}
    assert grade(PAPER, {1: "  ", 99: "B"}) == empty


@pytest.mark.parametrize("number", range(1, len(PAPER.items) + 1))
def test_every_mistake_is_told_by_name(number: int) -> None:
    item = PAPER.items[number - 1]
    for key, value in item.drawn.mistaken.items():
        text = Display().show(value, item.template.kind, 5)
        if item.options:
            text = "ABCDEFGH"[item.options.index(key)]
        result = grade(PAPER, {number: text}).items[number - 1]
        assert (result.verdict, result.mistake) == (Verdict.MISTAKE, key)


@pytest.mark.parametrize("form", ["{}", " {} ", "({})", "{}.", "{}) "])
def test_letters_are_read_as_people_write_them(form: str) -> None:
    letter = PAPER.items[CHOICE - 1].right_letter
    for text in (letter, letter.lower()):
        assert grade(PAPER, {CHOICE: form.format(text)}).items[CHOICE - 1].right


@pytest.mark.parametrize("text", ["Z", "AB", "1", "1.5 kN", "=1+1", "", "H"])
def test_what_is_no_option_scores_nothing(text: str) -> None:
    result = grade(PAPER, {CHOICE: text}).items[CHOICE - 1]
    assert not result.right
    assert result.verdict is (Verdict.UNREADABLE if text else None)


@pytest.mark.parametrize("text", ["A", "much", "1 kN and 2 kN", "9" * 500, "<script>"])
def test_what_is_no_number_scores_nothing(text: str) -> None:
    assert grade(PAPER, {NUMBER: text}).items[NUMBER - 1].verdict is Verdict.UNREADABLE


def test_a_question_that_must_be_right_is_missed_by_its_number() -> None:
    answers = right_answers(PAPER) | {MUST: ""}
    assert grade(PAPER, answers).missed == (MUST,)


def marked(right: int) -> Standing:
    answers = {n: text for n, text in right_answers(EASY).items() if n <= right}
    return standing(grade(EASY, answers), 0.5, 1.0)


EASY = replace(PAPER, items=tuple(replace(item, must_pass=False) for item in PAPER.items))


def test_the_band_on_both_sides_of_the_mark_is_borderline() -> None:
    assert len(EASY.items) == 6
    found = [marked(right) for right in range(7)]
    below, border, reached = Standing.BELOW, Standing.BORDERLINE, Standing.REACHED
    assert found == [below, below, border, border, border, reached, reached]


def test_without_a_known_error_only_the_mark_counts() -> None:
    answers = right_answers(EASY)
    three = grade(EASY, {n: answers[n] for n in (1, 2, 3)})
    assert standing(three, 0.5, None) is Standing.REACHED
    assert standing(three, 0.51, None) is Standing.BELOW


def test_full_marks_but_for_what_must_be_right_are_borderline() -> None:
    result = grade(PAPER, right_answers(PAPER) | {MUST: "0 kN"})
    assert standing(result, 0.5, None) is Standing.BORDERLINE


def test_the_right_option_is_where_the_paper_says() -> None:
    item = PAPER.items[CHOICE - 1]
    assert item.options["ABCDEFGH".index(item.right_letter)] == RIGHT
