"""An argument on the page: it unfolds step by step, with symbols or the reader's own numbers."""

from collections.abc import Collection, Mapping, Sequence
from functools import partial
from html import escape

import ipywidgets as widgets

from ropecalc.derivation import Derivation, DomainError, Explanation, Line, Variable
from ropecalc.teaching.buttons import button
from ropecalc.teaching.drawing import neat
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown
from ropecalc.teaching.sliders import Control, QuantitySlider

_FEWEST_STEPS = 100  # of a slider; its step is the round number below


class Working(Shown):
    """Shows a derivation: first its assumptions and first law, then each next step on request.

    Ticking "with numbers" opens a slider for every given quantity and writes its value into
    every step. ``start`` gives the values that the sliders begin with (SI, by name; a quantity
    it does not name begins at its usual value). Units follow the session. Assumptions in
    ``said`` stand open further up on the page; here they are folded away. ``folded`` begins
    before the first step, for what the page has argued in plain words.
    """

    def __init__(
        self,
        derivation: Derivation,
        session: Session,
        start: Mapping[str, float] | None = None,
        said: Collection[str] = (),
        *,
        folded: bool = False,
    ) -> None:
        self._derivation = derivation
        self._said = frozenset(said)
        self._session = session
        controls = [
            _control(v, (start or {}).get(v.name, v.teaching.default)) for v in derivation.given
        ]
        self._values = {control.key: control.default for control in controls}
        self._shown_steps = 0 if folded else 1
        self._sliders = {c.key: self._slider(c) for c in controls}
        where_from = widgets.HTML(
            "<p>The numbers begin with the example of this page. Move the sliders to yours.</p>"
        )
        self._number_box = widgets.VBox(
            [where_from, *self._sliders.values()], layout={"display": "none"}
        )
        self._with_numbers = widgets.Checkbox(
            description="with numbers", indent=False, layout={"width": "160px"}
        )
        self._next = button(
            "Next step", lambda: self._reveal(self._shown_steps + 1), icon="arrow-down"
        )
        self._all = button("All steps", lambda: self._reveal(len(derivation.steps)))
        self._page = widgets.HTMLMath()
        super().__init__(
            [
                self._page,
                widgets.HBox([self._next, self._all, self._with_numbers]),
                self._number_box,
            ]
        )
        self.add_class("ropecalc-working")
        self._with_numbers.observe(lambda _: self._refresh(), "value")
        self.until_closed(session.on_units(lambda _: self._relabel()))
        self._refresh()

    def summary(self) -> str:
        """The whole argument as text, with the reader's numbers in its result."""
        try:
            explanation = self._derivation.explain(self._session.display, **self._values)
        except DomainError as error:
            return error.in_units(self._session.display)
        return explanation.as_text()

    def _reveal(self, steps: int) -> None:
        self._shown_steps = min(steps, len(self._derivation.steps))
        self._refresh()

    def _slider(self, control: Control) -> QuantitySlider:
        return QuantitySlider(
            control,
            control.default,
            self._session.display,
            partial(self._move, control.key),
            continuous_update=False,
            layout={"width": "760px"},
            style={"description_width": "520px"},
        )

    def _move(self, key: str, value: float) -> None:
        self._values[key] = value
        self._refresh()

    def _relabel(self) -> None:
        """Put every slider where its SI value is, in the reader's units; no value moves."""
        for key, slider in self._sliders.items():
            slider.place(self._values[key], self._session.display)
        self._refresh()

    def _refresh(self) -> None:
        numbers = self._with_numbers.value
        everything = self._shown_steps == len(self._derivation.steps)
        folded = self._shown_steps == 0
        self._next.disabled = self._all.disabled = everything
        one_step = "none" if len(self._derivation.steps) == 1 else ""
        self._next.layout.display = self._all.layout.display = one_step
        if folded:
            self._next.layout.display, self._all.layout.display = "", "none"
        self._next.description = "The strict derivation" if folded else "Next step"
        self._number_box.layout.display = "" if numbers else "none"
        try:
            explanation = self._derivation.explain(self._session.display, **self._values)
        except DomainError as error:
            sentence = error.in_units(self._session.display)
            self._page.value = f"<p role='status'>{escape(sentence)}</p>"
            return
        self._page.value = _as_html(explanation, self._shown_steps, numbers, self._said)


def _as_html(explanation: Explanation, count: int, numbers: bool, said: Collection[str]) -> str:
    lines = explanation.lines[:count]
    left = len(explanation.lines) - count
    parts = [f"<h4>{escape(explanation.title)}</h4>"]
    parts += _assumed(explanation.assumptions, said)
    met = frozenset[str]().union(*(line.uses for line in lines))
    used = [(symbol, meaning) for symbol, meaning in explanation.meanings if symbol in met]
    if lines:
        parts.append("<p>" + ", ".join(f"${escape(s)}$ {escape(m)}" for s, m in used) + ".</p>")
        parts.append("<ol>" + "".join(_line(line, numbers) for line in lines) + "</ol>")
    if left and lines:
        parts.append(f"<p><i>{left} more step{'s' if left > 1 else ''}</i></p>")
    elif numbers:
        parts.append(f"<p role='status'><b>{escape(explanation.result)}</b></p>")
    return "".join(parts)


def _assumed(assumptions: Sequence[str], said: Collection[str]) -> list[str]:
    """What is assumed: what is new on the page is open, the rest folded away."""
    new = [each for each in assumptions if each not in said]
    known = [each for each in assumptions if each in said]
    parts = []
    if new:
        parts.append(f"<p><b>Assumed:</b> {escape(' '.join(new))}</p>")
    if known:
        summary = "Assumed as well, as further up" if new else "Assumed, as further up"
        parts.append(
            f"<details><summary>{summary}</summary><p>{escape(' '.join(known))}</p></details>"
        )
    return parts


def _line(line: Line, numbers: bool) -> str:
    mathematics = f"$${escape(line.latex)}$$"
    if numbers and line.numbers:
        mathematics += f"$${escape(line.numbers)}$$"
    return f"<li>{escape(line.sentence)}{mathematics}</li>"


def _control(variable: Variable, start: float) -> Control:
    """A slider over the variable's teaching range, widened to where it starts (SI)."""
    low, high = variable.teaching.low, variable.teaching.high
    step = neat((high - low) / _FEWEST_STEPS)
    name, kind = variable.name, variable.kind
    label = variable.meaning.partition(":")[0]  # what follows explains, and stands in the text
    return Control(name, label, kind, min(low, start), max(high, start), step, start)
