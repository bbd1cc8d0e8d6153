"""The line in which an answer is typed."""

import asyncio
from collections.abc import Callable

import ipywidgets as widgets

from ropecalc.teaching.questions.question import Listeners
from ropecalc.units import Display, Kind

_UNCHANGED_AFTER = 0.4  # seconds
_EXAMPLES = {Kind.RATIO: "a number, for example 0.5", Kind.ANGLE: "for example 30°"}


class Entry(widgets.Text):
    """One line of text that tells when it was changed and when Enter was pressed.

    The text arrives here when the learner leaves the line or presses Enter, not at every key: a
    text still on its way while it is checked would be marked without its last digits. At Enter
    the browser announces the key first and sends the text after it. So Enter counts when the new
    text has come, or after a moment in which none came (it is still the same text then).
    """

    def __init__(self, text: str, kind: Kind, display: Display, listeners: Listeners) -> None:
        super().__init__(
            value=text,
            description="Your answer",
            continuous_update=False,
            layout={"width": "360px"},
            style={"description_width": "initial"},
        )
        self._kind = kind
        self._listeners = listeners
        self._waiting: asyncio.TimerHandle | None = None
        self.observe(self._when_changed, "value")
        self.on_msg(self._when_told)
        self.show(display)

    def settled(self, act: Callable[[], object]) -> None:
        """Call ``act`` at once: who presses a button has left the line, and the text has come."""
        act()

    def show(self, display: Display) -> None:
        """Give an example in the reader's units."""
        self.placeholder = _EXAMPLES.get(
            self._kind, f"for example 1.5 {display.unit(self._kind).symbol}"
        )

    def _when_changed(self, change: dict[str, str]) -> None:
        self._listeners.changed(change["new"])
        if self._waiting is not None:
            self._waiting.cancel()
            self._enter()

    def _when_told(self, _: widgets.Widget, content: object, _buffers: object) -> None:
        if not (isinstance(content, dict) and content.get("event") == "submit"):
            return
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:  # outside a kernel nothing is on its way
            self._enter()
            return
        if self._waiting is not None:
            self._waiting.cancel()
        self._waiting = loop.call_later(_UNCHANGED_AFTER, self._enter)

    def _enter(self) -> None:
        self._waiting = None
        self._listeners.entered()
