"""What stands on every page besides its subject: the choice of units, the cautions."""

from html import escape

import ipywidgets as widgets

from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown


class UnitsView(Shown):
    """The learner's choice of units, good for every page from here on.

    Here too, at the top of the page, it is said when the learner's record cannot be kept.
    """

    def __init__(self, session: Session) -> None:
        self._session = session
        parts: list[widgets.Widget] = [session.unit_chooser()]
        if session.record.notice:
            parts.append(widgets.HTML(f"<p role='status'>{escape(session.record.notice)}</p>"))
        super().__init__(parts)

    def summary(self) -> str:
        """The units in use, and what is to be known about the record."""
        shown = self._session.display
        units = (
            f"Units: forces in {shown.force}, lengths in {shown.length}, masses in {shown.mass}."
        )
        return "\n".join(line for line in (units, self._session.record.notice) if line)


class CautionsView(Shown):
    """The cautions of a page, always open."""

    def __init__(self, cautions: tuple[str, ...]) -> None:
        self._cautions = cautions
        items = "".join(f"<li>{escape(c)}</li>" for c in cautions)
        super().__init__([widgets.HTML(f"<ul>{items}</ul>")])
        self.add_class("ropecalc-cautions")

    def summary(self) -> str:
        """The cautions, one a line."""
        return "\n".join(self._cautions)
