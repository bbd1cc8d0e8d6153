"""What is taken from a page lets go of all that it followed."""

import ipywidgets as widgets
from ipywidgets.widgets.widget import _instances

from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown, close


class Follower(Shown):
    def __init__(self, session: Session) -> None:
        self.told = 0
        self._inner = widgets.Text()
        super().__init__([widgets.HBox([self._inner])])
        self.until_closed(session.on_units(lambda _: self._count()))

    def _count(self) -> None:
        self.told += 1


def test_a_closed_view_is_told_nothing_and_nothing_of_it_stays() -> None:
    before = set(_instances)
    session = Session(Record.in_memory())
    gone, stays = Follower(session), Follower(session)
    session.choose_unit("force", "lbf")
    inside = set(_instances)
    close(widgets.VBox([gone]))
    assert len(set(_instances) - before) < len(inside - before)
    session.choose_unit("force", "kN")
    assert (gone.told, stays.told) == (1, 2)
    close(gone)  # once more does no harm
    close(stays)
    session.choose_unit("force", "lbf")
    assert (gone.told, stays.told) == (1, 2)
    assert set(_instances) == before
    session.record.close()
