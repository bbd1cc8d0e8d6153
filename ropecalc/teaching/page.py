"""What stands on every page besides its subject: the choice of units, the cautions."""

from html import escape

import ipywidgets as widgets

from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown


class UnitsView(Shown):
    """The learner's choice of units, good for every page from here on.

    Here too, at the top of the page, it is said when the learner's record cannot be kept, also if
    that begins while the page is open.
    """

    def __init__(self, session: Session) -> None:
        self._session = session
        self._notice = widgets.HTML()
        self._show_notice(session.notice)
        session.on_notice(self._show_notice)
        super().__init__([session.unit_chooser(), self._notice])

    def _show_notice(self, notice: str) -> None:
        self._notice.value = f"<p role='status'>{escape(notice)}</p>" if notice else ""
        self._notice.layout.display = "" if notice else "none"

    def summary(self) -> str:
        """The units in use, and what is to be known about the record."""
        shown = self._session.display
        units = (
            f"Units: forces in {shown.force}, lengths in {shown.length}, masses in {shown.mass}."
        )
        return "\n".join(line for line in (units, self._session.notice) if line)


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
