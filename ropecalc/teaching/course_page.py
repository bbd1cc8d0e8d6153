"""What the start page, lessons, exercises and solutions have in common."""

from ropecalc.teaching.page import CautionsView, UnitsView
from ropecalc.teaching.session import Session


class CoursePage:
    """A page for one learner: the choice of units at its top, the cautions at its end."""

    def __init__(self, session: Session, cautions: tuple[str, ...]) -> None:
        self._session = session
        self._cautions = cautions

    def units(self) -> UnitsView:
        """The choice of units, good for every page."""
        return UnitsView(self._session)

    def cautions(self) -> CautionsView:
        """What the page leaves out and to whom it defers."""
        return CautionsView(self._cautions)
