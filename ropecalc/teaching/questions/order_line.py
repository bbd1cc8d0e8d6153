"""Where an order is given: one list to choose from for each place, by keyboard like any other."""

from collections.abc import Callable
from typing import TYPE_CHECKING

import ipywidgets as widgets

from ropecalc.teaching.questions.order_marking import BLANK
from ropecalc.teaching.questions.question import Listeners, Values
from ropecalc.teaching.questions.settling import after_the_last_move
from ropecalc.units import Display

if TYPE_CHECKING:
    from ropecalc.teaching.questions.ordering import Ordering

_NONE = "choose"


class OrderLine(widgets.VBox):
    """A list for each place of ``question``; together they say the letters in order."""

    def __init__(
        self,
        question: "Ordering",
        values: Values,
        text: str,
        display: Display,
        listeners: Listeners,
    ) -> None:
        self._question = question
        self._values = values
        self._listeners = listeners
        self._places = [self._place(number) for number in range(len(question.things))]
        super().__init__(self._places, layout={"width": "100%", "overflow": "visible"})
        self.show(display)
        self._put(text)

    @property
    def value(self) -> str:
        """The letters in order, :data:`BLANK` where none is chosen; "" if none is anywhere."""
        letters = [place.value for place in self._places]
        return " ".join(letter or BLANK for letter in letters) if any(letters) else ""

    @value.setter
    def value(self, text: str) -> None:
        self._put(text)
        self._listeners.changed(self.value)

    def _put(self, text: str) -> None:
        self._moving = True
        letters = text.split()
        for number, place in enumerate(self._places):
            known = [letter for _, letter in place.options]
            letter = letters[number] if number < len(letters) else ""
            place.value = letter if letter in known else ""
        self._moving = False

    def settled(self, act: Callable[[], object]) -> None:
        """Call ``act`` once the last choice has come."""
        after_the_last_move(act)

    def show(self, display: Display) -> None:
        """Say the things in the reader's units."""
        self._moving = True
        said = self._question.particulars(self._values, display)
        for place in self._places:
            kept = place.value
            place.options = [(_NONE, ""), *((line, line[0]) for line in said)]
            place.value = kept or ""
        self._moving = False

    def _place(self, number: int) -> widgets.Dropdown:
        ends = {0: self._question.first, len(self._question.things) - 1: self._question.last}
        end = f" ({ends[number]})" if number in ends else ""
        made = widgets.Dropdown(
            options=[(_NONE, "")],
            value="",
            description=f"Place {number + 1}{end}",
            layout={"width": "640px", "max_width": "100%"},
            style={"description_width": "140px"},
        )
        made.observe(self._chosen, names="value")
        return made

    def _chosen(self, _: object) -> None:
        if not self._moving:
            self._listeners.changed(self.value)
