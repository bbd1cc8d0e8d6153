"""The question on the page: what the learner does, what they see, and what is kept."""

import asyncio
from pathlib import Path

import ipywidgets as widgets
import pytest

from ropecalc.teaching.questions.bank import holding_off
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.question_view import QuestionView, SolutionView
from ropecalc.teaching.record import Place, Record
from ropecalc.teaching.session import Session
from ropecalc.units import Display, Kind
from tests.teaching.questions.every import every_question

PAGE = "exercise:test"
TEMPLATE = holding_off.TRACK_TENSION
PLACE = Place(PAGE, TEMPLATE.key)


@pytest.fixture
def session() -> Session:
    return Session(Record.open())


def everything_on(view: widgets.Widget) -> list[widgets.Widget]:
    found = [view]
    for child in getattr(view, "children", ()):
        found += everything_on(child)
    return found


def entry(view: QuestionView) -> widgets.Text:
    (found,) = (w for w in everything_on(view) if isinstance(w, widgets.Text))
    return found


def button(view: QuestionView, words: str) -> widgets.Button:
    (found,) = (
        w for w in everything_on(view) if isinstance(w, widgets.Button) and words in w.description
    )
    return found


def page_text(view: widgets.Widget) -> str:
    return " ".join(
        w.value for w in everything_on(view) if isinstance(w, widgets.HTML | widgets.HTMLMath)
    )


def answer(view: QuestionView, text: str) -> None:
    entry(view).value = text
    button(view, "Check").click()


def right_answer(number: int = 0) -> str:
    return Display().show(draw(TEMPLATE, PAGE, number).answer, Kind.FORCE)


def test_a_fresh_question_shows_numbers_and_no_answer(session: Session) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    assert right_answer() not in view.summary() + page_text(view)
    assert view.summary() == QuestionView(TEMPLATE, session, PAGE).summary()
    assert view.summary().endswith("Asked: Tension of the track lines together")
    bundle = view._repr_mimebundle_()
    assert bundle["text/plain"] == view.summary()


def test_right_and_wrong_answers_are_told_and_kept(session: Session) -> None:
    calls: list[int] = []
    view = QuestionView(TEMPLATE, session, PAGE, lambda: calls.append(1))
    mistaken = draw(TEMPLATE, PAGE).mistaken["anchor-rule"]
    answer(view, f"{mistaken / 1000:.4f} kN")
    assert "two equal anchor legs" in page_text(view)
    answer(view, right_answer().replace(".", ","))
    assert "Right." in page_text(view) and f"Read as {right_answer()}" in page_text(view)
    kept = session.record.answers(PLACE)
    assert [(a.verdict, a.mistake) for a in kept] == [("mistake", "anchor-rule"), ("right", "")]
    assert len(calls) == 2


def test_enter_checks_and_leaving_the_line_does_not(session: Session) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    entry(view).value = right_answer()
    assert session.record.answers(PLACE) == ()
    assert session.record.work(PLACE).draft == right_answer()
    entry(view)._handle_custom_msg({"event": "submit"}, [])
    assert [a.verdict for a in session.record.answers(PLACE)] == ["right"]


def test_enter_waits_for_the_text_that_is_still_on_its_way(session: Session) -> None:
    """The browser announces Enter before it sends the text, or sends no text if it is the same."""

    view = QuestionView(TEMPLATE, session, PAGE)

    def kept() -> list[str]:
        return [a.text for a in session.record.answers(PLACE)]

    async def enter(text: str, until: int) -> None:
        entry(view)._handle_custom_msg({"event": "submit"}, [])
        assert len(kept()) < until
        entry(view).value = text
        for _ in range(100):
            if len(kept()) < until:
                await asyncio.sleep(0.02)

    asyncio.run(enter("99 kN", until=1))
    assert kept() == ["99 kN"]
    asyncio.run(enter("99 kN", until=2))
    assert kept() == ["99 kN", "99 kN"]


def test_an_empty_answer_is_no_answer(session: Session) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    answer(view, "   ")
    assert "Nothing has been answered" in page_text(view)
    assert session.record.answers(PLACE) == ()


@pytest.mark.parametrize("text", ["<script>alert(1)</script>", "<img src=x onerror=alert(1)> kN"])
def test_what_is_typed_never_becomes_part_of_the_page(session: Session, text: str) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    drawings = page_text(view).count("<img")
    answer(view, text)
    for page in (page_text(view), page_text(QuestionView(TEMPLATE, Session(Record.open()), PAGE))):
        assert text not in page
        assert "<script" not in page and page.count("<img") == drawings


def test_a_verdict_follows_the_units(session: Session) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    answer(view, f"{draw(TEMPLATE, PAGE).answer / 1e3:.3f} kN")
    session.choose_unit("force", "lbf")
    verdict = view.summary().splitlines()[-1]
    assert verdict.startswith("Right.") and "lbf" in verdict and "kN" not in verdict


def test_hints_come_one_at_a_time(session: Session) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    hint = button(view, "Hint")
    for number in range(1, 5):
        assert f"Hint {number} of 4" not in page_text(view)
        hint.click()
        assert f"Hint {number} of 4" in page_text(view)
    assert hint.disabled
    assert session.record.work(PLACE).hints == 4
    assert right_answer() not in page_text(view)


def test_the_solution_comes_after_a_try_or_after_giving_up(session: Session) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    assert button(view, "Give up")
    answer(view, "99 kN")
    button(view, "Show the worked solution").click()
    assert right_answer() in page_text(view) and "Common mistakes" in page_text(view)
    answer(view, right_answer())
    assert session.record.answers(PLACE)[-1].solution_seen


def test_new_numbers_begin_afresh(session: Session) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    before = view.summary()
    answer(view, "99 kN")
    button(view, "Show the worked").click()
    button(view, "New numbers").click()
    assert view.summary() != before
    assert entry(view).value == "" and "Common mistakes" not in page_text(view)
    answer(view, right_answer(1))
    assert session.record.answers(PLACE)[-1].verdict == "right"
    assert session.record.answers(PLACE)[-1].draw == 1


def test_everything_is_there_again_when_the_page_is_opened_again(
    session: Session, fresh_record: Path
) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    button(view, "New numbers").click()
    button(view, "Hint").click()
    answer(view, "99 kN")
    entry(view).value = "1,1"
    before = view.summary()

    again = QuestionView(TEMPLATE, Session(Record.open(fresh_record)), PAGE)
    assert again.summary() == before
    assert entry(again).value == "1,1"
    assert page_text(again) == page_text(view)


def test_units_follow_the_session(session: Session) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    session.choose_unit("force", "lbf")
    assert "lbf" in view.summary() and "kN" not in view.summary()
    answer(view, f"{draw(TEMPLATE, PAGE).answer / 4.4482216:.2f} lbf")
    assert "Right." in page_text(view)


def test_a_record_that_cannot_be_kept_is_said(tmp_path: Path) -> None:
    view = QuestionView(TEMPLATE, Session(Record.open(tmp_path)), PAGE)
    assert "forgotten when this page is closed" in page_text(view)
    answer(view, right_answer())
    assert "Right." in page_text(view)


@every_question
def test_every_question_can_be_worked_through(question: object, session: Session) -> None:
    view = QuestionView(question, session, PAGE)  # type: ignore[arg-type]
    for _ in range(4):
        button(view, "Hint").click()
    button(view, "Give up").click()
    for word in ("nan", "zoo", "Traceback", "None"):
        assert word not in page_text(view)
    for name in ("force", "length", "mass"):
        session.choose_unit(name, {"force": "lbf", "length": "ft", "mass": "lb"}[name])
    assert "Worked solution" in page_text(view)


def test_controls_have_names_and_feedback_is_announced(session: Session) -> None:
    view = QuestionView(TEMPLATE, session, PAGE)
    for widget in everything_on(view):
        if isinstance(widget, widgets.Text | widgets.Button):
            assert widget.description.strip()
    assert 'role="status"' in page_text(view)


def test_the_solution_edition_shows_the_same_numbers_with_the_answer(session: Session) -> None:
    question, solved = (
        QuestionView(TEMPLATE, session, PAGE).summary(),
        SolutionView(draw(TEMPLATE, PAGE), session).summary(),
    )
    assert solved.startswith(question)
    assert right_answer() in solved and "Common mistakes" in solved


def test_numbers_that_belong_to_something_larger_change_only_from_there(session: Session) -> None:
    told: list[int] = []
    view = QuestionView(
        TEMPLATE,
        session,
        PAGE,
        checked=lambda: told.append(1),
        numbers=lambda number: draw(TEMPLATE, "of the situation", number),
    )
    words = [w.description for w in everything_on(view) if isinstance(w, widgets.Button)]
    assert "New numbers" not in words
    answer(view, Display().show(draw(TEMPLATE, "of the situation").answer, Kind.FORCE))
    assert "Right." in page_text(view)
    button(view, "solution").click()
    assert len(told) == 2
    view.take_numbers(3)
    assert session.record.work(PLACE).draw == 3
    answer(view, Display().show(draw(TEMPLATE, "of the situation", 3).answer, Kind.FORCE))
    assert "Right." in page_text(view)
