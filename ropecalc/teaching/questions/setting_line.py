"""Where a rig is set: a slider for each control, by keyboard too, and the setting in words."""

from collections.abc import Callable
from html import escape
from typing import TYPE_CHECKING

import ipywidgets as widgets

from ropecalc.teaching.questions.question import Listeners
from ropecalc.teaching.questions.setting_marking import read_setting
from ropecalc.teaching.questions.settling import after_the_last_move
from ropecalc.teaching.sliders import QuantitySlider
from ropecalc.units import Display, QuantityError

if TYPE_CHECKING:
    from ropecalc.teaching.questions.setting import RigTask

_UNTOUCHED = "Nothing is set yet."


class SettingLine(widgets.VBox):
    """The sliders of ``task``; ``value`` is "" until one was moved."""

    def __init__(self, task: "RigTask", text: str, display: Display, listeners: Listeners) -> None:
        self._task = task
        self._display = display
        self._listeners = listeners
        self._text = ""
        self._sliders = {
            knob.name: QuantitySlider(
                knob.control,
                knob.control.default,
                display,
                lambda _: self._moved(),
                layout={"width": "660px", "max_width": "100%"},
                style={"description_width": "initial"},
            )
            for knob in task.knobs
        }
        self._words = widgets.HTML()
        super().__init__(
            [*self._sliders.values(), self._words],
            layout={"width": "100%", "overflow": "visible"},
        )
        self._put(text)

    @property
    def value(self) -> str:
        """The setting as it is written down; "" while nothing was moved."""
        return self._text

    @value.setter
    def value(self, text: str) -> None:
        self._put(text)
        self._listeners.changed(self._text)

    def settled(self, act: Callable[[], object]) -> None:
        """Call ``act`` once the last move has come."""
        after_the_last_move(act)

    def show(self, display: Display) -> None:
        """The same setting in other units; what was written down stays as it was."""
        self._display = display
        for slider in self._sliders.values():
            slider.place(slider.quantity, display)
        self._say()

    def _put(self, text: str) -> None:
        """Set what ``text`` says, or where it stands at first if that cannot be read."""
        try:
            setting, _ = read_setting(self._task, text, self._display)
            self._text = text
        except QuantityError:
            setting = {knob.name: knob.control.default for knob in self._task.knobs}
            self._text = ""
        for name, slider in self._sliders.items():
            slider.place(setting[name], self._display)
        self._say()

    def _moved(self) -> None:
        self._text = self._task.shown({}, self._setting(), self._display)
        self._say()
        self._listeners.changed(self._text)

    def _setting(self) -> dict[str, float]:
        return {name: slider.quantity for name, slider in self._sliders.items()}

    def _say(self) -> None:
        said = self._task.described(self._setting(), self._display)
        untouched = "" if self._text else f" {_UNTOUCHED}"
        self._words.value = (
            f'<div role="status" aria-live="polite"><p>{escape(said + untouched)}</p></div>'
        )
