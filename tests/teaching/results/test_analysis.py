"""The figures of a class, against textbook formulas computed another way."""

from collections.abc import Sequence

import numpy as np
import pytest
from scipy import stats

from ropecalc.teaching.papers.paper import LETTERS, RIGHT, Paper
from ropecalc.teaching.results.analysis import SMALL_CLASS, analyse
from ropecalc.teaching.results.grading import PaperResult, grade
from ropecalc.units import Display
from tests.teaching.papers.examples import issue

PAPERS = issue(*(f"s{n}" for n in range(40))).papers
QUESTIONS = len(PAPERS[0].items)


def answered(paper: Paper, right: Sequence[int], mistake: int = 0) -> PaperResult:
    """A paper with the questions numbered ``right`` (from 0) right, the others one mistake."""
    answers = {}
    for place, item in enumerate(paper.items):
        key = RIGHT if place in right else item.template.mistakes[mistake].key
        answers[place + 1] = (
            LETTERS[item.options.index(key)]
            if item.options
            else Display().show(item.option_value(key), item.template.kind, 5)
        )
    return grade(paper, answers)


def random_class(seed: int) -> tuple[list[PaperResult], np.ndarray]:
    rng = np.random.default_rng(seed)
    skill = rng.normal(size=(len(PAPERS), 1))
    marks = rng.normal(size=(len(PAPERS), QUESTIONS)) * 0.8 < skill + rng.normal(size=QUESTIONS)
    results = [
        answered(paper, np.flatnonzero(row).tolist())
        for paper, row in zip(PAPERS, marks, strict=True)
    ]
    return results, marks.astype(float)


@pytest.mark.parametrize("seed", range(1, 5))
def test_figures_agree_with_scipy_and_the_covariance_form(seed: int) -> None:
    results, marks = random_class(seed)
    figures = analyse(results)
    covariance = np.cov(marks, rowvar=False)  # Cronbach's form; equal to formula 20 for 0 and 1
    alpha = QUESTIONS / (QUESTIONS - 1) * (1 - np.trace(covariance) / covariance.sum())
    assert figures.reliability == pytest.approx(alpha)
    spread = stats.tstd(marks.sum(axis=1))
    assert figures.error == pytest.approx(spread * (1 - alpha) ** 0.5)
    assert figures.mean == pytest.approx(marks.sum() / len(results))
    for place, item in enumerate(figures.items):
        assert item.right == marks[:, place].sum()
        assert item.facility == pytest.approx(marks[:, place].mean())
        rest = np.delete(marks, place, axis=1).sum(axis=1)
        wanted = stats.pointbiserialr(marks[:, place], rest).statistic
        assert item.discrimination == pytest.approx(wanted)


def test_an_example_small_enough_to_do_by_hand() -> None:
    """Half the class everything, half nothing: each question tells as much as can be told."""
    results = [answered(p, range(QUESTIONS) if n % 2 else []) for n, p in enumerate(PAPERS)]
    figures = analyse(results)
    assert figures.reliability == pytest.approx(1.0)
    assert figures.error == pytest.approx(0.0, abs=1e-6)
    assert all(item.discrimination == pytest.approx(1.0) for item in figures.items)


def test_scores_that_tell_nothing_have_no_reliability_above_nothing() -> None:
    equal = analyse([answered(p, [n % QUESTIONS]) for n, p in enumerate(PAPERS[:36])])
    assert equal.reliability is None and equal.error is None
    nobody = analyse([answered(p, [0]) for p in PAPERS])
    assert all(item.discrimination is None for item in nobody.items)
    opposed = [answered(p, [0, 1, 2] if n % 2 else [3, 4, 5, 0]) for n, p in enumerate(PAPERS)]
    assert analyse(opposed).reliability == 0.0


def test_small_classes_get_counts_only() -> None:
    results = [answered(p, [0]) for p in PAPERS[: SMALL_CLASS - 1]]
    figures = analyse(results)
    assert figures.small and figures.reliability is None
    assert all(
        i.facility is None and i.discrimination is None and not i.flags for i in figures.items
    )
    assert figures.items[0].right == SMALL_CLASS - 1
    assert not analyse([answered(p, [0]) for p in PAPERS[:SMALL_CLASS]]).small


def test_mistakes_are_counted_by_name() -> None:
    results = [answered(p, [], mistake=0 if n < 30 else 1) for n, p in enumerate(PAPERS)]
    results[39] = grade(PAPERS[39], {})
    item = analyse(results).items[1]
    first, second = (m.key for m in PAPERS[0].items[1].template.mistakes[:2])
    assert item.mistakes == ((first, 30), (second, 9))
    assert (item.asked, item.right, item.blank) == (40, 0, 1)


def flags(results: list[PaperResult], place: int) -> str:
    return "; ".join(analyse(results).items[place].flags)


def test_suspect_questions_are_flagged() -> None:
    rows = [list(range(QUESTIONS)) if n < 20 else [0] for n in range(40)]
    strong_wrong = [[q for q in row if q != 1] for row in rows]
    results = [answered(p, row) for p, row in zip(PAPERS, strong_wrong, strict=True)]
    assert "nearly all got it right" in flags(results, 0)
    assert "few got it right" in flags(results, 1)
    assert "most strong students made the same mistake" in flags(results, 1)
    assert flags(results, 2).find("same mistake") == -1
    choice = next(n for n, item in enumerate(PAPERS[0].items) if item.options)
    assert "options nobody took" in flags(results, choice)
    turned = [
        answered(p, [q for q in row if q != 2] if len(row) > 2 else [*row, 2])
        for p, row in zip(PAPERS, rows, strict=True)
    ]
    assert "strong and weak students did alike" in flags(turned, 2)


def test_papers_that_differ_are_not_thrown_together() -> None:
    other = issue("x", seed="another").papers[0]
    with pytest.raises(ValueError, match="different questions"):
        analyse([answered(PAPERS[0], []), answered(other, [])])
    with pytest.raises(ValueError, match="no paper"):
        analyse([])
