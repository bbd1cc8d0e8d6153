"""Sentences whose numbers the library computes, so that prose never carries a typed-in result."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from html import escape

import ipywidgets as widgets

from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown
from ropecalc.units import Display, Kind

Quantity = tuple[float, Kind]


@dataclass(frozen=True)
class Fact:
    """A sentence with ``{places}`` and a function that gives each place its SI value and kind."""

    key: str
    sentence: str
    compute: Callable[[], Mapping[str, Quantity]]

    def text(self, display: Display) -> str:
        """The sentence with its numbers in the reader's units."""
        return self.sentence.format(
            **{name: _shown(*quantity, display) for name, quantity in self.compute().items()}
        )


def _shown(value: float, kind: Kind, display: Display) -> str:
    """A place in a sentence: distances without trailing zeros, as one would say them."""
    text = display.show(value, kind)
    number, gap, unit = text.partition(" ")
    if kind is Kind.LENGTH and "." in number:
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
        session.on_units(lambda _: self._refresh())
        self._refresh()

    def summary(self) -> str:
        """The sentence."""
        return self._fact.text(self._session.display)

    def _refresh(self) -> None:
        self._line.value = f"<p>{escape(self.summary())}</p>"
