"""An interactive figure: pure arithmetic, a picture that follows it, and a thin shell of widgets.

A :class:`Figure` says what it is made of: controls, ``compute`` (values in SI to a frozen
result, no widgets), a picture (artists updated from a result, no physics) and ``summary`` (the
result in words). :class:`Panel` owns the widgets of one figure for one learner and nothing else.
"""

import logging
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from html import escape
from typing import Any, Protocol

import ipywidgets as widgets

from ropecalc.teaching.buttons import button
from ropecalc.teaching.canvas import Canvas
from ropecalc.teaching.keyed import find
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown, table_html, table_text
from ropecalc.teaching.shown import Table as Table
from ropecalc.teaching.sliders import Control, QuantitySlider
from ropecalc.units import Display

_log = logging.getLogger(__name__)
_log.addHandler(logging.NullHandler())  # a page shows a sentence; tests look into the log

Values = Mapping[str, Any]
"""What the controls say: a float in SI for each slider, an option's key for each choice."""

LOCKED = "Sliders and numbers can be used once you have predicted or skipped."
_SKIPPED = "skipped"
FAILED = (
    "This figure could not be worked out for these settings. That is a fault of the course, not "
    "of your settings: change one of them, or press “Back to the start”."
)


@dataclass(frozen=True)
class Choice:
    """A choice among ``options``: pairs of key and words."""

    key: str
    label: str
    options: tuple[tuple[str, str], ...]
    default: str


@dataclass(frozen=True)
class Outcome:
    """What a prediction is compared with: which choice is right, and the computed reason."""

    right: int
    sentence: str


@dataclass(frozen=True)
class Prediction:
    """A question before the first reveal; ``outcome`` computes the answer, it is not typed in."""

    question: str
    choices: tuple[str, ...]
    outcome: Callable[[Display], Outcome]


@dataclass(frozen=True)
class Look:
    """How a result is to be drawn: units, and whether forces and numbers are shown."""

    display: Display
    forces: bool = True
    numbers: bool = True


def _none_idle(_: Values) -> Mapping[str, str]:
    return {}


class Picture(Protocol):
    """Artists on a canvas that follow a result."""

    @property
    def canvas(self) -> Canvas:
        """Where the artists live."""

    def update(self, result: Any, look: Look) -> None:
        """Move every artist to where ``result`` puts it."""


@dataclass(frozen=True)
class Figure:
    """One interactive figure. ``alternative`` says in a line what the picture shows.

    ``forces_label`` is what stands beside the tick that shows the free body, and ``forces_first``
    whether it is ticked at first. ``table`` gives the same result as a table under the words.
    ``reading`` says how to read the picture. Controls that are not ``first`` (by key; nothing
    named: all are) wait behind "More settings". ``idle`` gives, for controls that cannot change
    anything at the present values, the reason by key.
    """

    key: str
    title: str
    alternative: str
    prediction: Prediction
    controls: tuple[Control | Choice, ...]
    compute: Callable[[Values], Any]
    picture: Callable[[], Picture]
    summary: Callable[[Any, Display], str]
    cautions: tuple[str, ...]
    table: Callable[[Any, Display], Table] | None = None
    forces_label: str = "Show the forces on the litter"
    forces_first: bool = True
    reading: tuple[str, ...] = ()
    first: tuple[str, ...] = ()
    idle: Callable[[Values], Mapping[str, str]] = _none_idle

    @property
    def start(self) -> dict[str, Any]:
        """The default of every control."""
        return {control.key: control.default for control in self.controls}


class Panel(Shown):
    """A figure with its widgets, for one learner."""

    def __init__(self, figure: Figure, session: Session) -> None:
        self._figure = figure
        self._session = session
        self._values = figure.start
        self._picture = figure.picture()
        self._prediction = session.record.setting(self._record_key)
        self._inputs = {c.key: self._input(c) for c in figure.controls}
        self._forces = widgets.Checkbox(
            value=figure.forces_first,
            description=figure.forces_label,
            indent=False,
            layout={"width": "auto"},
        )
        self._forces.observe(lambda _: self._refresh(), names="value")
        self._back = button("Back to the start", self.back_to_start, icon="undo")
        self._image = widgets.Image(
            format="png",
            layout={"width": f"{self._picture.canvas.width}px", "max_width": "100%"},
        )
        self._status = widgets.HTML(layout={"width": "auto"})
        self._table = widgets.HTML(layout={"width": "auto"})
        self._verdict = widgets.HTML()
        super().__init__(
            [
                widgets.HTML(
                    f"<h3>{escape(figure.title)}</h3>"
                    f'<p class="ropecalc-alternative">{escape(figure.alternative)}.</p>'
                    + "".join(f"<p>{escape(line)}</p>" for line in figure.reading)
                ),
                self._prediction_box(),
                self._image,
                self._controls_box(),
                self._status,
                self._table,
                widgets.HTML(_cautions_html(figure.cautions)),
            ]
        )
        self.add_class("ropecalc-panel")
        self._follow_units()
        self.until_closed(session.on_units(lambda _: self._follow_units()))

    @property
    def values(self) -> dict[str, Any]:
        """What the controls say now, in SI."""
        return dict(self._values)

    @property
    def png(self) -> bytes:
        """The picture as the learner sees it."""
        picture: bytes = self._image.value
        return picture

    def summary(self) -> str:
        """The figure at its present settings, in plain words and its table."""
        display = self._session.display
        try:
            result = self._figure.compute(self._values)
            lines = table_text(self._rows(result, display))
            return "\n".join([self._figure.summary(result, display), *lines])
        except Exception:
            _log.exception("the summary of %s failed at %s", self._figure.key, self._values)
            return FAILED

    def move(self, key: str, value: Any) -> None:
        """Set one control, as the learner would; ``value`` in SI, or an option's key."""
        made = self._input_of(key)
        if isinstance(made, QuantitySlider):
            made.move(value)
        else:
            made.value = value

    def back_to_start(self) -> None:
        """Every control at its default again."""
        self._values = self._figure.start
        self._place_inputs()
        self._refresh()

    def predict(self, choice: int | None) -> None:
        """Take the learner's prediction (None: skipped) and show the figure."""
        self._prediction = _SKIPPED if choice is None else str(choice)
        self._session.record.keep_setting(self._record_key, self._prediction)
        self._picture.canvas.forget_background()
        self._refresh()

    @property
    def _record_key(self) -> str:
        return f"prediction.{self._figure.key}"

    @property
    def _unlocked(self) -> bool:
        """Whether the learner has predicted or skipped, now or on an earlier visit."""
        return self._prediction is not None

    # --- widgets ------------------------------------------------------------------------------

    def _input_of(self, key: str) -> Any:
        return find(self._inputs, key, "control")

    def _input(self, control: Control | Choice) -> Any:
        look = {"layout": {"width": "auto"}, "style": {"description_width": "245px"}}
        moved = partial(self._moved, control.key)
        if isinstance(control, Control):
            display = self._session.display
            return QuantitySlider(control, control.default, display, moved, **look)
        made = widgets.Dropdown(
            description=control.label,
            options=[(words, key) for key, words in control.options],
            value=control.default,
            **look,
        )
        made.observe(lambda change: moved(change["new"]), names="value")
        return made

    def _prediction_box(self) -> widgets.VBox:
        prediction = self._figure.prediction
        buttons = []
        for index, words in enumerate((*prediction.choices, "Skip")):
            choice = index if index < len(prediction.choices) else None
            buttons.append(button(words, partial(self.predict, choice)))
        self._choices = widgets.HBox(buttons, layout={"flex_flow": "row wrap"})
        question = f"<p><b>Before you look:</b> {escape(prediction.question)}</p>"
        return widgets.VBox([widgets.HTML(question), self._choices, self._verdict])

    def _controls_box(self) -> widgets.VBox:
        first = self._figure.first or tuple(self._inputs)
        parts = [_grid([self._inputs[key] for key in first])]
        rest = [made for key, made in self._inputs.items() if key not in first]
        if rest:
            more = _grid(rest)
            more.layout.display = "none"
            switch = button("More settings", lambda: _unfold(switch, more), icon="caret-down")
            switch.layout.align_self = "flex-start"
            parts += [switch, more]
        row = widgets.HBox([self._forces, self._back], layout={"align_items": "center"})
        return widgets.VBox([*parts, row])

    # --- what happens ---------------------------------------------------------------------------

    def _moved(self, key: str, value: Any) -> None:
        if self._values[key] != value:
            self._values[key] = value
            self._refresh()

    def _follow_units(self) -> None:
        self._place_inputs()
        self._picture.canvas.forget_background()
        self._refresh()

    def _place_inputs(self) -> None:
        """Put every input where the SI values are, in the reader's units; nothing else moves."""
        for key, made in self._inputs.items():
            if isinstance(made, QuantitySlider):
                made.place(self._values[key], self._session.display)
            else:
                made.value = self._values[key]

    def _refresh(self) -> None:
        self._enable()
        self._show_prediction()
        display = self._session.display
        look = Look(display, self._unlocked and self._forces.value, self._unlocked)
        try:
            result = self._figure.compute(self._values)
            self._picture.update(result, look)
            png, text = self._picture.canvas.png(), self._figure.summary(result, display)
            table = table_html(self._rows(result, display))
        except Exception:
            _log.exception("%s failed at %s", self._figure.key, self._values)
            self._image.layout.visibility = "hidden"
            text, table = FAILED, ""
        else:
            self._image.layout.visibility = "visible"
            self._image.value = png
        if not self._unlocked:
            text, table = LOCKED, ""
        self._table.value = table
        self._status.value = f'<p role="status" aria-live="polite">{escape(text)}</p>'

    def _rows(self, result: Any, display: Display) -> Table:
        return self._figure.table(result, display) if self._figure.table else ()

    def _enable(self) -> None:
        """Let the inputs be moved that can change something; say why the others cannot."""
        idle = self._figure.idle(self._values)
        for key, made in self._inputs.items():
            if isinstance(made, QuantitySlider):
                made.disable(not self._unlocked or key in idle)
                made.note(idle.get(key, ""))
            else:
                made.disabled = not self._unlocked
        self._forces.disabled = self._back.disabled = not self._unlocked

    def _show_prediction(self) -> None:
        for choice_button in self._choices.children:
            choice_button.disabled = self._unlocked
        self._choices.layout.display = "none" if self._unlocked else ""
        text = f'<p role="status">{escape(self._compared())}</p>' if self._unlocked else ""
        self._verdict.value = text

    def _compared(self) -> str:
        """The learner's prediction beside what balance gives, in the reader's units."""
        prediction = self._figure.prediction
        try:
            outcome = prediction.outcome(self._session.display)
        except Exception:
            _log.exception("the prediction of %s failed", self._figure.key)
            return "The computed answer is missing; look at the figure."
        choices = dict(enumerate(prediction.choices))
        choice = next((n for n in choices if str(n) == self._prediction), None)
        if choice is None:
            return f"Skipped. {outcome.sentence}"
        said = f"You said: {choices[choice]}."
        if choice == outcome.right:
            return f"{said} Balance gives the same. {outcome.sentence}"
        return f"{said} Balance gives: {choices[outcome.right]}. {outcome.sentence}"


def _grid(inputs: list[Any]) -> widgets.GridBox:
    return widgets.GridBox(
        inputs,
        layout={
            "grid_template_columns": "repeat(auto-fill, minmax(440px, 1fr))",
            "grid_gap": "0 16px",
        },
    )


def _unfold(switch: widgets.Button, more: widgets.GridBox) -> None:
    """Show ``more``, or hide it again; the button says what it will do next."""
    hidden = more.layout.display == "none"
    more.layout.display = "" if hidden else "none"
    switch.description = "Fewer settings" if hidden else "More settings"
    switch.icon = "caret-up" if hidden else "caret-down"


def _cautions_html(cautions: tuple[str, ...]) -> str:
    first, *rest = cautions
    items = "".join(f"<li>{escape(c)}</li>" for c in rest)
    return (
        f'<details class="ropecalc-cautions"><summary><b>Caution.</b> {escape(first)} '
        f"<u>All cautions</u></summary><ul>{items}</ul></details>"
    )
