"""What the tests of practice share: a clock to turn, and finding things on a page."""

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta

import ipywidgets as widgets

from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.draw import Draw
from ropecalc.units import Display

START = datetime(2030, 1, 1, tzinfo=UTC)


@dataclass
class Clock:
    """A clock that stands until it is turned."""

    now: datetime = field(default=START)

    def __call__(self) -> datetime:
        return self.now

    def turn(self, minutes: float) -> None:
        self.now += timedelta(minutes=minutes)


def everything_on(view: widgets.Widget) -> list[widgets.Widget]:
    return [view, *(w for child in getattr(view, "children", ()) for w in everything_on(child))]


def button(view: widgets.Widget, words: str) -> widgets.Button:
    (found,) = (
        w for w in everything_on(view) if isinstance(w, widgets.Button) and words in w.description
    )
    return found


def page_text(view: widgets.Widget) -> str:
    return " ".join(
        w.value for w in everything_on(view) if isinstance(w, widgets.HTML | widgets.HTMLMath)
    )


def right(drawn: Draw) -> str:
    """What somebody writes who is right."""
    return drawn.shown(drawn.answer, Display())


def mistaken(drawn: Draw) -> tuple[str, str]:
    """What somebody types who makes the first known mistake, and its key."""
    key = BANK[drawn.template.key].mistakes[0].key
    return drawn.shown(drawn.mistaken[key], Display()), key
