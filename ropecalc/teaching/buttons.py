"""A button of the course's pages: as wide as its words, and it does one thing."""

from collections.abc import Callable

import ipywidgets as widgets


def button(label: str, act: Callable[[], object], icon: str = "") -> widgets.Button:
    """A button that says ``label`` and calls ``act`` when it is pressed."""
    made = widgets.Button(description=label, icon=icon, layout={"width": "auto"})
    made.on_click(lambda _: act())
    return made


def row(*buttons: widgets.Button) -> widgets.HBox:
    """Buttons side by side and no wider than their words, below each other on a narrow page."""
    return widgets.HBox(buttons, layout={"flex_flow": "row wrap"})
