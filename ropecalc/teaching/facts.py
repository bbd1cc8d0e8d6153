"""Sentences whose numbers the library computes, so that prose never carries a typed-in result."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from html import escape

import ipywidgets as widgets

from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown, Table, table_html, table_text
from ropecalc.units import Display, Kind

Quantity = tuple[float, Kind] | tuple[float, Kind, int]
"""An SI value, what it measures, and how many figures to show (three unless given)."""


@dataclass(frozen=True)
class Fact:
    """A sentence with ``{places}`` and a function that gives each place its SI value and kind.

    ``after_prediction`` folds it away, because it answers what a figure asks first.
    """

    key: str
    sentence: str
    compute: Callable[[], Mapping[str, Quantity]]
    after_prediction: bool = False

    def text(self, display: Display) -> str:
        """The sentence with its numbers in the reader's units."""
        return self.sentence.format(
            **{name: _shown(display, *quantity) for name, quantity in self.compute().items()}
        )


@dataclass(frozen=True)
class FactTable:
    """A short table whose numbers the library computes; its first row names the columns."""

    key: str
    caption: str
    rows: Callable[[Display], Table]


def _shown(display: Display, value: float, kind: Kind, figures: int = 3) -> str:
    """A place in a sentence; without trailing zeros where one does not say them."""
    text = display.show(value, kind, figures)
    number, gap, unit = text.partition(" ")
    if kind in (Kind.LENGTH, Kind.MASS, Kind.RATIO) and "." in number:
        number = number.rstrip("0").rstrip(".")
    return number + gap + unit


class FactView(Shown):
    """A fact on the page; its numbers follow the units that the learner chose."""

    def __init__(self, fact: Fact, session: Session) -> None:
        self._fact = fact
        self._session = session
        self._line = widgets.HTML()
        super().__init__([self._line])
        self.add_class("ropecalc-fact")
        self.until_closed(session.on_units(lambda _: self._refresh()))
        self._refresh()

    def summary(self) -> str:
        """The sentence."""
        return self._fact.text(self._session.display)

    def _refresh(self) -> None:
        text = f"<p>{escape(self.summary())}</p>"
        if self._fact.after_prediction:
            text = f"<details><summary>After your prediction: the numbers</summary>{text}</details>"
        self._line.value = text


class FactTableView(Shown):
    """A table of facts on the page; its numbers follow the units that the learner chose."""

    def __init__(self, table: FactTable, session: Session) -> None:
        self._fact = table
        self._session = session
        self._page = widgets.HTML()
        super().__init__([self._page])
        self.add_class("ropecalc-fact")
        self.until_closed(session.on_units(lambda _: self._refresh()))
        self._refresh()

    def summary(self) -> str:
        """The caption and the rows."""
        return "\n".join([self._fact.caption, *table_text(self._fact.rows(self._session.display))])

    def _refresh(self) -> None:
        rows = table_html(self._fact.rows(self._session.display))
        self._page.value = f"<p>{escape(self._fact.caption)}</p>{rows}"
