"""A misconception beside the truth: the number that is often said, and the number balance gives."""

from html import escape

import ipywidgets as widgets

from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.template import Template
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown


class MythView(Shown):
    """One mistake of a question, met head-on with numbers; units follow the session."""

    def __init__(self, template: Template, mistake: str, session: Session) -> None:
        self._drawn = draw(template, f"myth:{mistake}")
        self._mistake = template.mistake(mistake)
        self._session = session
        self._text = widgets.HTML()
        super().__init__([self._text])
        self.add_class("ropecalc-myth")
        self.until_closed(session.on_units(lambda _: self._refresh()))
        self._refresh()

    def summary(self) -> str:
        """The situation, what is often said, what balance gives, and why."""
        return "\n".join(self._lines())

    def _lines(self) -> tuple[str, str, str, str]:
        display, drawn = self._session.display, self._drawn
        said = drawn.shown(drawn.mistaken[self._mistake.key], display)
        true = drawn.shown(drawn.answer, display)
        return (
            wording.stem(drawn, display),
            f"Often done: {self._mistake.named}. That gives {said}.",
            f"Balance gives {true}.",
            self._mistake.why,
        )

    def _refresh(self) -> None:
        situation, said, true, why = (escape(line) for line in self._lines())
        self._text.value = f"<p>{situation}</p><p>✗ {said}</p><p>✓ <b>{true}</b> {why}</p>"
