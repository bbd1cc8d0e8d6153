"""One learner at one page: their units and their record.

The session is made when a page is opened and handed to everything on it; when the learner
chooses other units, everything that observes ``display`` follows, and the choice is kept in the
learner's record for the next page.
"""

from collections.abc import Callable
from typing import Any

import ipywidgets as widgets
import traitlets

from ropecalc.teaching.record import Record
from ropecalc.units import Display, Kind, units_of

_CHOICES = {
    "force": ("kN", "kgf", "lbf"),
    "length": ("m", "ft"),
    "mass": ("kg", "lb"),
}
_LABELS = {"force": "Forces in", "length": "Lengths in", "mass": "Masses in"}


class Session(traitlets.HasTraits):
    """A learner's choices (``display``) and their ``record`` with its ``notice``.

    ``display`` and ``notice`` can be observed.
    """

    display = traitlets.Instance(Display)
    notice = traitlets.Unicode()

    def __init__(self, record: Record) -> None:
        self.record = record
        saved = {kind: record.setting(f"unit.{kind}") for kind in _CHOICES}
        known = {
            kind: symbol
            for kind, symbol in saved.items()
            if symbol is not None and symbol in _CHOICES[kind]
        }
        super().__init__(display=Display(**known), notice=record.notice)
        record.on_notice(lambda notice: setattr(self, "notice", notice))

    def choose_unit(self, kind: str, symbol: str) -> None:
        """Show all numbers of ``kind`` ("force", "length", "mass") in ``symbol`` from now on."""
        chosen = {k: getattr(self.display, k) for k in _CHOICES} | {kind: symbol}
        self.record.keep_setting(f"unit.{kind}", symbol)
        self.display = Display(**chosen)

    def on_units(self, follow: Callable[[Display], Any]) -> Callable[[], None]:
        """Call ``follow`` with the new display whenever the learner changes units.

        Returns what ends it: a view that can be replaced hands it to ``Shown.until_closed``.
        """
        return self._on("display", follow)

    def on_notice(self, follow: Callable[[str], Any]) -> Callable[[], None]:
        """Call ``follow`` with the record's notice whenever it changes; "" is none.

        Returns what ends it.
        """
        return self._on("notice", follow)

    def _on(self, name: str, follow: Callable[[Any], Any]) -> Callable[[], None]:
        def tell(change: dict[str, Any]) -> None:
            follow(change["new"])

        self.observe(tell, names=name)
        return lambda: self.unobserve(tell, names=name)

    def unit_chooser(self) -> widgets.HBox:
        """Three drop-downs: forces, lengths, masses."""
        boxes = []
        for kind, symbols in _CHOICES.items():
            names = {u.symbol: f"{u.words} ({u.symbol})" for u in units_of(Kind(kind))}
            box = widgets.Dropdown(
                options=[(names[s], s) for s in symbols],
                value=getattr(self.display, kind),
                description=_LABELS[kind],
                layout={"width": "270px"},
                style={"description_width": "85px"},
            )
            box.observe(
                lambda change, kind=kind: self.choose_unit(kind, change["new"]), names="value"
            )
            boxes.append(box)
        return widgets.HBox(boxes, layout={"flex_flow": "row wrap"})
