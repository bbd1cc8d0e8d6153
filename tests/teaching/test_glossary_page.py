"""The glossary on the page, and the words of a lesson."""

from collections.abc import Iterator
from typing import Any

import ipywidgets as widgets
import pytest

from ropecalc.teaching.glossary import TERMS
from ropecalc.teaching.glossary_page import GlossaryPage, GlossaryView, WordsBox
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.team_words import LONGEST, team_word


@pytest.fixture
def session() -> Iterator[Session]:
    record = Record.in_memory()
    yield Session(record)
    record.close()


@pytest.fixture
def view(session: Session) -> GlossaryView:
    return GlossaryPage(session).terms()


def inside(widget: Any) -> list[Any]:
    return [widget, *(w for child in getattr(widget, "children", ()) for w in inside(child))]


def box(view: GlossaryView, word: str) -> widgets.Text:
    return next(w for w in inside(view) if isinstance(w, widgets.Text) and w.description == word)


def said(view: GlossaryView) -> str:
    return str(view.children[-1].value)


def test_every_term_has_its_meaning_and_a_box(view: GlossaryView) -> None:
    assert len(view.summary().splitlines()) == len(TERMS)
    for term in TERMS.values():
        assert f"{term.word}: {term.meaning}" in view.summary()
        assert box(view, term.word).value == ""


def test_a_word_that_is_typed_is_kept_and_shown_in_the_lessons(
    view: GlossaryView, session: Session
) -> None:
    box(view, "hub").value = "<b>nest</b>"
    assert "is “&lt;b&gt;nest&lt;/b&gt;”" in said(view)
    assert "hub (your team: <b>nest</b>): " in view.summary()
    words = WordsBox(("hub", "belay"), session.record)
    assert words.summary().startswith("hub (your team: <b>nest</b>): The ground anchor")
    assert "&lt;b&gt;nest" in words.children[0].value
    for text in (words.summary(), words.children[0].value):
        assert "keep the course&#x27;s words" in text or "keep the course's words" in text
    assert "keep the course" not in WordsBox(("belay",), session.record).summary()
    box(view, "hub").value = ""
    assert "the course&#x27;s word" in said(view)
    assert "your team" not in view.summary()


def test_too_long_a_word_is_refused_and_the_old_one_stays(
    view: GlossaryView, session: Session
) -> None:
    box(view, "hub").value = "nest"
    box(view, "hub").value = "x" * (LONGEST + 1)
    assert "longer than" in said(view)
    assert team_word(session.record, "hub") == "nest"


def test_a_file_is_taken_over_whole_or_not_at_all(view: GlossaryView, session: Session) -> None:
    view._take_over(({"content": memoryview(b"[words]\nhub = 'nest'\nbelay = 'safety'\n")},))
    assert "2 of your team" in said(view)
    assert box(view, "belay").value == "safety"
    view._take_over(({"content": memoryview(b"nonsense")},))
    assert "Nothing was changed" in said(view)
    assert team_word(session.record, "hub") == "nest"
    view._reset()
    assert box(view, "belay").value == ""
    assert team_word(session.record, "hub") == ""


@pytest.mark.parametrize("lesson", LESSONS.values(), ids=lambda lesson: lesson.key)
def test_a_lesson_names_terms_that_there_are(lesson) -> None:
    assert set(lesson.words) <= set(TERMS)
    assert 4 <= len(lesson.words) == len(set(lesson.words))
