"""The glossary: every term, the team's own word for it, and the words of one lesson in a box."""

import base64
from functools import partial
from html import escape
from typing import Any

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.teaching.buttons import button
from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.glossary import TERMS, Term
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown
from ropecalc.teaching.team_words import (
    keep_team_word,
    team_word,
    words_as_file,
    words_from_file,
)

FILE = "team-words.toml"
KEPT = (
    "Texts, pictures and questions keep the course's words, so that they mean the same to everyone."
)


class WordsBox(Shown):
    """Some terms with their meanings, folded away; a team's own word stands beside the course's."""

    def __init__(self, keys: tuple[str, ...], record: Record) -> None:
        own = {key: team_word(record, key) for key in keys}
        self._lines = [_line(TERMS[key], word) for key, word in own.items()]
        self._note = KEPT if any(own.values()) else ""
        items = "".join(
            f"<li><b>{escape(words)}:</b> {escape(meaning)}</li>" for words, meaning in self._lines
        )
        note = f"<p>{escape(self._note)}</p>" if self._note else ""
        super().__init__(
            [
                widgets.HTML(
                    "<details><summary>Words on this page</summary>"
                    f"<ul>{items}</ul>{note}</details>"
                )
            ]
        )
        self.add_class("ropecalc-words")

    def summary(self) -> str:
        """One line a term, and what the team's words change."""
        lines = [f"{words}: {meaning}" for words, meaning in self._lines]
        return "\n".join([*lines, self._note] if self._note else lines)


def _line(term: Term, team: str) -> tuple[str, str]:
    return (f"{term.word} (your team: {team})" if team else term.word, term.meaning)


class GlossaryView(Shown):
    """Every term with its meaning and a box for the team's own word; kept as it is typed."""

    def __init__(self, session: Session) -> None:
        self._record = session.record
        self._boxes = {key: self._box(term) for key, term in TERMS.items()}
        self._said = widgets.HTML()
        self._file = widgets.HTML()
        self._upload = widgets.FileUpload(
            accept=".toml", description="Take over a team's words", layout={"width": "auto"}
        )
        self._upload.observe(lambda change: self._take_over(change["new"]), names="value")
        rows = [
            widgets.HBox(
                [box, widgets.HTML(_meaning(TERMS[key]))], layout={"align_items": "center"}
            )
            for key, box in self._boxes.items()
        ]
        tools = widgets.HBox(
            [self._upload, button("Back to the course's words", self._reset, icon="undo")],
            layout={"flex_flow": "row wrap"},
        )
        super().__init__([*rows, self._file, tools, self._said])
        self.add_class("ropecalc-glossary")
        self._show()

    def summary(self) -> str:
        """One line a term."""
        return "\n".join(
            f"{words}: {meaning}"
            for words, meaning in (
                _line(term, team_word(self._record, key)) for key, term in TERMS.items()
            )
        )

    def _box(self, term: Term) -> widgets.Text:
        box = widgets.Text(
            value=team_word(self._record, term.key),
            description=term.word,
            placeholder="your team's word",
            continuous_update=False,
            layout={"width": "430px", "flex": "0 0 auto"},
            style={"description_width": "190px"},
        )
        box.observe(partial(self._typed, term.key), names="value")
        return box

    def _typed(self, key: str, change: Any) -> None:
        try:
            keep_team_word(self._record, key, change["new"])
        except ValueError as error:
            self._say(str(error))
            return
        self._show()
        word = team_word(self._record, key)
        course = TERMS[key].word
        self._say(f"Kept: {course} is “{word}”." if word else f"{course}: the course's word.")

    def _take_over(self, files: Any) -> None:
        for file in files:
            try:
                words = words_from_file(bytes(file["content"]))
                for key, word in words.items():
                    keep_team_word(self._record, key, word)
            except ValueError as error:
                self._say(str(error))
                return
            self._show()
            self._say(f"{len(words)} of your team's words were taken over.")

    def _reset(self) -> None:
        for key in TERMS:
            keep_team_word(self._record, key, "")
        self._show()
        self._say("The course's words again.")

    def _show(self) -> None:
        """Every box and the file as the record has them."""
        for key, box in self._boxes.items():
            box.value = team_word(self._record, key)
        data = base64.b64encode(words_as_file(self._record).encode()).decode("ascii")
        self._file.value = (
            f"<p><a download='{FILE}' href='data:application/toml;base64,{data}'>Save your team's "
            "words as a file</a> to hand on. Others open this page and take it over.</p>"
        )

    def _say(self, words: str) -> None:
        self._said.value = f'<p role="status" aria-live="polite">{escape(words)}</p>'


def _meaning(term: Term) -> str:
    return f'<p style="margin: 0 0 0 12px; line-height: 1.35">{escape(term.meaning)}</p>'


class GlossaryPage(CoursePage):
    """The page of words for one learner."""

    def __init__(self, session: Session) -> None:
        super().__init__(session, (cautions.AUTHORITY,))

    def terms(self) -> GlossaryView:
        """Every term of the course."""
        return GlossaryView(self._session)


def open_glossary() -> GlossaryPage:
    """The glossary for the learner of this machine."""
    return GlossaryPage(Session(Record.open()))
