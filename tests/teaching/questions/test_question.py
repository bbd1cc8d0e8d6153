"""What every question offers, whatever its kind: pages and papers count on it."""

from html import escape

import pytest

from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.draw import draw, restored
from ropecalc.teaching.questions.marking import Verdict, mark
from ropecalc.teaching.questions.question import Listeners, Question
from ropecalc.teaching.questions.question_view import question_html, question_text, solution_html
from ropecalc.units import Display
from tests.teaching.questions.every import QUESTIONS, every_question

AMERICAN = Display(force="lbf", length="ft", mass="lb")


def test_keys_are_there_once_over_all_kinds() -> None:
    keys = [question.key for question in QUESTIONS]
    assert len(set(keys)) == len(keys)


@every_question
@pytest.mark.parametrize("display", [Display(), AMERICAN], ids=["metric", "american"])
def test_what_it_says_is_right_is_marked_right(question: Question, display: Display) -> None:
    for number in range(4):
        drawn = draw(question, "right", number)
        again = restored(question, dict(drawn.values))
        marked = mark(again, drawn.shown(drawn.answer, display), display)
        assert marked.verdict is Verdict.RIGHT and marked.reading and not marked.mistake
        assert drawn.shown(drawn.answer, display) in drawn.right(display)


@every_question
def test_what_a_mistake_gives_is_known_for_it(question: Question) -> None:
    drawn = draw(question, "wrong")
    assert set(drawn.mistaken) == {mistake.key for mistake in question.mistakes}
    for key, wrong in drawn.mistaken.items():
        marked = mark(drawn, drawn.shown(wrong, Display()))
        assert (marked.verdict, marked.mistake) == (Verdict.MISTAKE, key)
        assert question.mistake(key).named in marked.feedback


@every_question
@pytest.mark.parametrize("text", ["", "?", "<b>1</b>", "x" * 500, "1;2;3;4", "\n", "A B"])
def test_nonsense_is_told_and_never_right(question: Question, text: str) -> None:
    marked = mark(draw(question, "nonsense"), text)
    assert marked.verdict in (Verdict.UNREADABLE, Verdict.UNIT)
    assert marked.feedback.endswith(".") and len(marked.feedback) < 400


@every_question
def test_page_and_summary_say_the_same_and_not_the_answer(question: Question) -> None:
    drawn = draw(question, "words")
    said = question_text(drawn, Display())
    page = question_html(drawn, Display())
    for line in (question.title, *wording.particulars(drawn, Display()), question.asked):
        assert line in said and escape(line) in page
    assert "{" not in said
    assert question.how(Display()).endswith(".") and len(question.on_paper(Display())) < 30
    assert "Worked solution" in solution_html(drawn, AMERICAN)
    for mistake in question.mistakes:
        assert mistake.title not in said


@every_question
def test_an_answer_line_holds_a_text_and_tells_of_none(question: Question) -> None:
    drawn = draw(question, "line")
    heard: list[str] = []
    right = drawn.shown(drawn.answer, Display())
    line = question.answer_line(drawn.values, right, Display(), Listeners(heard.append))
    assert line.value == right and heard == []
    line.show(AMERICAN)
    assert line.value == right, "what was answered stays as it was answered"
    called: list[bool] = []
    line.settled(lambda: called.append(True))
    assert called == [True]
    empty = question.answer_line(drawn.values, "", Display(), Listeners(heard.append))
    assert empty.value == ""
