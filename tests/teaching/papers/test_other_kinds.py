"""Orders and rigs on papers: drawn, kept, shown, printed, handed in, marked, and told of."""

import csv
import io
import json
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import nbformat
import pytest

from ropecalc.teaching.papers.blueprint import parse_blueprint
from ropecalc.teaching.papers.choosing import choose
from ropecalc.teaching.papers.issue import Issue, pass_mark, read_issue, write_issue
from ropecalc.teaching.papers.paper import Paper, item_as_document, item_from, make_paper
from ropecalc.teaching.papers.paper_notebook import describe, foreign_code, paper_notebook
from ropecalc.teaching.papers.paper_page import PaperPage
from ropecalc.teaching.papers.printing import key_pdf, paper_pdf
from ropecalc.teaching.practice import mock as mocks
from ropecalc.teaching.practice.export import as_csv, mistake_lines
from ropecalc.teaching.practice.history import asked
from ropecalc.teaching.practice.mock_view import MockView
from ropecalc.teaching.questions.bank import BANK, orderings, rigs
from ropecalc.teaching.questions.marking import Verdict
from ropecalc.teaching.questions.order_line import OrderLine
from ropecalc.teaching.questions.setting_line import SettingLine
from ropecalc.teaching.record import Record, Work
from ropecalc.teaching.results.grading import grade
from ropecalc.teaching.results.returns import read_returns
from ropecalc.teaching.results.tables import mark_returns, mistakes_table, questions_table, report
from ropecalc.teaching.session import Session
from ropecalc.units import Display
from tests.teaching.papers.test_printing import text
from tests.teaching.practice.pages import Clock, page_text

SMALL_BANK = {
    2: (orderings.LEG_TENSIONS, rigs.LEG_ANGLE),
    6: (orderings.SNAGS, rigs.TEAM),
}
PLAN = parse_blueprint(
    {
        "title": "Orders and rigs",
        "minutes": 20,
        "seed": "larch",
        "pass_mark": 0.5,
        "as_choice": 4,
        "topic": [{"lessons": [2, 6], "easy": 1, "medium": 2, "hard": 1}],
    },
    "here",
)
CHOSEN = choose(PLAN, SMALL_BANK)
AMERICAN = Display(force="lbf", length="ft", mass="lb")


def issue(*students: str) -> Issue:
    papers = tuple(make_paper(PLAN, CHOSEN, student) for student in students)
    return Issue(PLAN.title, pass_mark(PLAN, CHOSEN), papers)


ADA = issue("Ada B.").papers[0]


def right_answers(paper: Paper, display: Display | None = None) -> dict[int, str]:
    return {
        number: item.drawn.shown(item.drawn.answer, display or Display())
        for number, item in enumerate(paper.items, 1)
    }


def wrong_answers(paper: Paper) -> dict[int, str]:
    """Everybody's first known mistake."""
    return {
        number: item.drawn.shown(item.drawn.mistaken[item.template.mistakes[0].key], Display())
        for number, item in enumerate(paper.items, 1)
    }


def test_a_blueprint_takes_them_and_offers_none_of_them_as_a_choice() -> None:
    assert {q.key for q in CHOSEN} == {q.key for qs in SMALL_BANK.values() for q in qs}
    assert not any(item.options for item in ADA.items)


def test_a_kept_paper_is_the_same_paper(tmp_path: Path) -> None:
    write_issue(issue("Ada B.", "Bo"), tmp_path)
    kept = read_issue(tmp_path, BANK).paper("Ada B.")
    assert kept.code == ADA.code
    assert right_answers(kept) == right_answers(ADA)
    for item in ADA.items:
        document = json.loads(json.dumps(item_as_document(item)))
        assert item_from(document, item.template).drawn.mistaken == item.drawn.mistaken


def test_right_and_mistaken_answers_are_graded() -> None:
    for display in (Display(), AMERICAN):
        assert grade(ADA, right_answers(ADA, display)).marks == 4
    result = grade(ADA, wrong_answers(ADA))
    assert result.marks == 0
    assert [one.mistake for one in result.items] == [i.template.mistakes[0].key for i in ADA.items]
    assert [one.verdict for one in grade(ADA, {}).items] == [None] * 4


def test_the_paper_asks_and_the_key_tells() -> None:
    paper, key = text(paper_pdf(ADA)), text(key_pdf(ADA, "letter", AMERICAN))
    for item in ADA.items:
        drawn = item.drawn
        assert item.template.title in paper and item.template.title in key
        for line in drawn.template.particulars(drawn.values, Display()):
            assert line.split(". ", 1)[-1][:20] in paper
        assert drawn.right(AMERICAN) in key
        assert not any(mistake.title in paper for mistake in item.template.mistakes)
        assert all(mistake.title in key for mistake in item.template.mistakes)
    assert "letters in order" in paper and "like 9; 7" in paper
    assert "for example" in key and "In order, the smallest first" in key


# --- on the screen -----------------------------------------------------------------------------


@pytest.fixture
def session() -> Iterator[Session]:
    record = Record.in_memory()
    yield Session(record)
    record.close()


def number_of(question: str) -> int:
    return next(n for n, item in enumerate(ADA.items, 1) if item.template.key == question)


def test_both_are_answered_on_the_screen_and_handed_in(session: Session, tmp_path: Path) -> None:
    page = PaperPage(describe(ADA), session, tmp_path)
    order = page.question(number_of("order-leg-tensions"))
    rig = page.question(number_of("set-leg-angle"))
    assert isinstance(order._answer, OrderLine) and isinstance(rig._answer, SettingLine)
    assert order.summary().endswith("Not answered.") and "A. " in order.summary()
    for box, letter in zip(order._answer.children, "CABD", strict=True):
        box.value = letter
    rig._answer._sliders["leg_angle"].move(1.5707963)
    session.choose_unit("force", "lbf")
    assert order._answer.value == "C A B D" and "lbf" in order.summary()
    page.hand_in()._hand_in()
    [path] = tmp_path.glob("*.ipynb")
    assert not foreign_code(json.loads(path.read_text(encoding="utf-8")))
    (found,), problems = read_returns([path], issue("Ada B."))
    assert problems == ()
    assert found.answers[number_of("order-leg-tensions")] == "C A B D"
    assert found.answers[number_of("set-leg-angle")] == "90°"
    again = PaperPage(describe(ADA), session, tmp_path)
    assert again.question(number_of("order-leg-tensions"))._answer.value == "C A B D"
    assert "The legs stand 90° apart" in page_text(again.question(number_of("set-leg-angle")))


def test_notebook_file_and_table_are_marked_alike(tmp_path: Path) -> None:
    whole = issue("Ada B.", "Bo", "Cy")
    ada, bo, cy = whole.papers
    nbformat.write(paper_notebook(ada, right_answers(ada)), tmp_path / "a.ipynb")
    answers = {str(n): t for n, t in wrong_answers(bo).items()}
    saved = json.dumps({"code": bo.code, "answers": answers})
    (tmp_path / "b.json").write_text(saved, encoding="utf-8")
    out = io.StringIO()
    kind = csv.writer(out, delimiter=";")
    typed = right_answers(cy)
    kind.writerow(["code", *typed])
    kind.writerow([cy.code, *(t.lower().replace(".", ",") for t in typed.values())])
    (tmp_path / "c.csv").write_text(out.getvalue(), encoding="utf-8")
    marked = mark_returns(whole, [tmp_path / name for name in ("a.ipynb", "b.json", "c.csv")])
    assert marked.problems == ()
    assert [result.marks for result in marked.results] == [4, 0, 4]
    rows = mistakes_table(marked)[1:]
    assert {row[2] for row in rows} == {item.template.key for item in bo.items}
    for row in rows:
        assert row[4] == BANK[str(row[2])].mistake(str(row[3])).title
    assert "The most frequent mistakes" in report(marked)


def test_a_mock_asks_reviews_and_the_record_tells_of_them(session: Session, tmp_path: Path) -> None:
    clock = Clock()
    made = mocks.begin(PLAN, SMALL_BANK, 1, clock(), "here")
    mocks.keep(session.record, made)
    wrong = wrong_answers(made.paper)
    for number, answer in wrong.items():
        session.record.keep_work(made.place(number), Work(draft=answer))
    view = MockView(session, tmp_path, clock, lambda: None)
    assert "0 of 4 right" not in page_text(view)
    mocks.finish(session.record, made, clock())
    view = MockView(session, tmp_path, clock, lambda: None)
    shown = page_text(view)
    for item in made.paper.items:
        assert f"Right answer: {item.drawn.right(Display())}." in shown
        assert item.template.mistakes[0].why.split(".")[0][:30] in shown
    kept = {a.text: a for _, a in session.record.history()}
    assert set(kept) == set(wrong.values())
    assert all(a.verdict == Verdict.MISTAKE and a.reading for a in kept.values())
    assert len(mistake_lines(asked(session.record))) == 4
    assert all(answer in as_csv(session.record) for answer in wrong.values())


def test_the_code_follows_what_is_asked() -> None:
    other = replace(ADA, items=ADA.items[::-1])
    assert other.code != ADA.code
    assert make_paper(PLAN, CHOSEN, "Ada B.").code == ADA.code


def test_the_table_of_questions_says_how_each_is_answered(tmp_path: Path) -> None:
    made = issue("ada")
    content = {"code": made.papers[0].code, "answers": {"1": "C B A"}}
    (tmp_path / "ada.json").write_text(json.dumps(content))
    head, *rows = questions_table(mark_returns(made, [tmp_path / "ada.json"]))
    told = {row[head.index("question")]: row[head.index("answered with")] for row in rows}
    for item in made.papers[0].items:
        expected = item.template.on_paper(Display()) or "number"
        assert told[item.template.key] == expected
    assert told[orderings.LEG_TENSIONS.key] != told[rigs.LEG_ANGLE.key]
