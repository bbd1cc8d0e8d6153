"""Progress on the page: lessons, mistakes, confidence against correctness, files to take away."""

import base64
from html import escape

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.teaching.buttons import button, row
from ropecalc.teaching.confidence import LEVELS
from ropecalc.teaching.practice import export
from ropecalc.teaching.practice.history import asked
from ropecalc.teaching.practice.mastery import Told, told
from ropecalc.teaching.record import Record
from ropecalc.teaching.shown import Shown


class Following(Shown):
    """Something that is counted from the record, and again after every answer on the page."""

    def __init__(self, record: Record) -> None:
        self._record = record
        self._body = widgets.HTML()
        super().__init__([self._body, row(button("Count again", self.refresh, icon="refresh"))])
        self.add_class("ropecalc-progress")
        self.refresh()

    def summary(self) -> str:
        """The lines that are shown."""
        return "\n".join(self._lines())

    def refresh(self) -> None:
        """Count again and show it."""
        self._body.value = f'<div role="status" aria-live="polite">{self._html()}</div>'

    def _lines(self) -> list[str]:
        raise NotImplementedError

    def _html(self) -> str:
        return export.bullets(self._lines())


class MasteryView(Following):
    """How far the learner is with each lesson. Young answers weigh more than old ones."""

    def _lines(self) -> list[str]:
        return [*export.mastery_lines(asked(self._record)), cautions.KNOWLEDGE_CHECK]


class MistakesView(Following):
    """The learner's last mistakes by name."""

    def _lines(self) -> list[str]:
        return export.mistake_lines(asked(self._record))


class ConfidenceView(Following):
    """How often the learner was right when sure, not sure, or guessing, lesson by lesson."""

    def _lines(self) -> list[str]:
        return export.told_lines(asked(self._record))

    def _html(self) -> str:
        past = asked(self._record)
        return _table(told(past)) if any(one.level for one in past) else super()._html()


_ROOM = " style='padding: 0 1em'"


def _table(found: tuple[Told, ...]) -> str:
    cells = {(one.lesson, one.level): f"{one.right} of {one.asked}" for one in found}
    head = "".join(f"<th scope='col'{_ROOM}>right when {words}</th>" for words in LEVELS.values())
    rows = "".join(
        f"<tr><th scope='row'>{lesson}</th>"
        + "".join(f"<td{_ROOM}>{cells.get((lesson, level), '–')}</td>" for level in LEVELS)
        + "</tr>"
        for lesson in sorted({one.lesson for one in found})
    )
    return f"<table><tr><th scope='col'>Lesson</th>{head}</tr>{rows}</table>"


class ExportView(Following):
    """Links that save the record as files; nothing leaves the machine by itself."""

    def _lines(self) -> list[str]:
        return [
            "Save your record: all answers as a table, everything as one file, or a summary to "
            "print. The files stay on this computer."
        ]

    def _html(self) -> str:
        links = "".join(
            f"<li>{_link(name, kind, text, words)}</li>"
            for name, kind, text, words in (
                ("my-answers.csv", "text/csv", export.as_csv(self._record), "All answers (CSV)"),
                (
                    "my-record.json",
                    "application/json",
                    export.as_json(self._record),
                    "The whole record (JSON)",
                ),
                (
                    "my-progress.html",
                    "text/html",
                    export.as_page(self._record),
                    "A summary to print (HTML: open it and print it)",
                ),
            )
        )
        return f"<p>{escape(self._lines()[0])}</p><ul>{links}</ul>"


def _link(name: str, kind: str, text: str, words: str) -> str:
    data = base64.b64encode(text.encode("utf-8")).decode("ascii")
    return f"<a download='{name}' href='data:{kind};charset=utf-8;base64,{data}'>{words}</a>"
