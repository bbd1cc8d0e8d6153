"""Every figure at every end of its sliders: no fault, no empty words, no number that is none."""

import itertools
import re
from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np
import pytest

from ropecalc.teaching import drawing
from ropecalc.teaching.figures import FIGURES
from ropecalc.teaching.panel import Choice, Figure, Look, Panel
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display

every_figure = pytest.mark.parametrize("figure", FIGURES.values(), ids=lambda f: f.key)
pytestmark = pytest.mark.usefixtures("no_faults")
US = Display(force="lbf", length="ft", mass="lb")
NO_NUMBER = re.compile(r"\b(nan|inf|None|masked)\b|--|Traceback|\{|\}", re.IGNORECASE)


def ends(control: Control | Choice) -> list[Any]:
    """Lowest, start and highest value, or every option."""
    if isinstance(control, Choice):
        return [key for key, _ in control.options]
    return [control.low, control.default, control.high]


def grid(control: Control | Choice) -> list[Any]:
    """Values all along a slider."""
    if isinstance(control, Choice):
        return ends(control)
    return [float(v) for v in np.linspace(control.low, control.high, 13)]


def one_at_a_time(figure: Figure) -> Iterator[dict[str, Any]]:
    """The start with one control moved along its range."""
    for control in figure.controls:
        for value in grid(control):
            yield figure.start | {control.key: value}


def corners(control: Control | Choice) -> list[Any]:
    """Lowest and highest value, or every option; the start between is tried one at a time."""
    return ends(control) if isinstance(control, Choice) else [control.low, control.high]


def two_at_a_time(figure: Figure) -> Iterator[dict[str, Any]]:
    """The start with any two controls at their ends."""
    for one, other in itertools.combinations(figure.controls, 2):
        for a, b in itertools.product(corners(one), corners(other)):
            yield figure.start | {one.key: a, other.key: b}


def three_with_method(figure: Figure) -> Iterator[dict[str, Any]]:
    """For a figure with a choice: each option with any two sliders at their ends."""
    for choice in (c for c in figure.controls if isinstance(c, Choice)):
        for key, _ in choice.options:
            for values in two_at_a_time(figure):
                yield values | {choice.key: key}


class Written(list[str]):
    """Everything that the pictures' labels and notices were asked to say."""


@pytest.fixture
def written(monkeypatch: pytest.MonkeyPatch) -> Written:
    texts = Written()
    write, say = drawing.Labels.write, drawing.Notice.say

    def writing(self: Any, labels: Any, *args: Any, **kwargs: Any) -> None:
        texts.extend(label.text for label in labels)
        write(self, labels, *args, **kwargs)

    def saying(self: Any, sentence: str) -> None:
        texts.append(sentence)
        say(self, sentence)

    monkeypatch.setattr(drawing.Labels, "write", writing)
    monkeypatch.setattr(drawing.Notice, "say", saying)
    return texts


def check_words(text: str, where: dict[str, Any]) -> None:
    assert not NO_NUMBER.search(text), f"{text!r} at {where}"


@every_figure
@pytest.mark.parametrize("display", [Display(), US], ids=["SI", "US"])
def test_every_slider_all_along(figure: Figure, display: Display, written: Written) -> None:
    picture = figure.picture()
    for values in one_at_a_time(figure):
        result = figure.compute(values)
        written.clear()
        picture.update(result, Look(display))
        assert picture.canvas.png().startswith(b"\x89PNG")
        for text in written:
            check_words(text, values)
        summary = figure.summary(result, display)
        assert len(summary) > 40
        assert summary.endswith(".")
        check_words(summary, values)


@every_figure
def test_any_two_sliders_at_their_ends(figure: Figure, written: Written) -> None:
    picture = figure.picture()
    for values in (*two_at_a_time(figure), *three_with_method(figure)):
        result = figure.compute(values)
        check_words(figure.summary(result, Display()), values)
        written.clear()
        picture.update(result, Look(Display()))
        for text in written:
            check_words(text, values)


@every_figure
def test_every_control_changes_picture_and_words(figure: Figure) -> None:
    """From some setting that differs from the start in one control at most."""
    panel = Panel(figure, Session(Record.in_memory()))
    panel.predict(None)

    def put(values: Mapping[str, Any]) -> None:
        for key, value in values.items():
            panel.move(key, value)

    for control in figure.controls:
        seen = {"picture": False, "words": False}
        for start in one_at_a_time(figure):
            if all(seen.values()):
                break
            put(start)
            picture, words = panel.png, panel.summary()
            panel.move(control.key, next(v for v in ends(control) if v != start[control.key]))
            seen["picture"] |= panel.png != picture
            seen["words"] |= panel.summary() != words
        assert all(seen.values()), f"{control.key}: {seen}"


@every_figure
def test_the_force_arrows_can_be_shown_and_hidden(figure: Figure) -> None:
    result, picture = figure.compute(figure.start), figure.picture()
    seen = []
    for forces in (True, False, True):
        picture.update(result, Look(Display(), forces=forces))
        seen.append(picture.canvas.png())
    assert seen[0] != seen[1]
    assert seen[0] == seen[2]


@every_figure
def test_the_same_settings_give_the_same_picture_and_words(figure: Figure) -> None:
    made = []
    for _ in range(2):
        panel = Panel(figure, Session(Record.in_memory()))
        panel.predict(0)
        panel.move(figure.controls[-1].key, ends(figure.controls[-1])[0])
        panel.back_to_start()
        made.append((panel.png, panel.summary()))
    assert made[0] == made[1]


@every_figure
def test_hidden_until_predicted(figure: Figure, written: Written) -> None:
    picture = figure.picture()
    picture.update(figure.compute(figure.start), Look(Display(), forces=False, numbers=False))
    assert written
    for text in written:
        assert not re.search(r"\d (kN|lbf)|°", text), text


@every_figure
def test_no_label_covers_another_at_the_start(figure: Figure) -> None:
    picture = figure.picture()
    picture.update(figure.compute(figure.start), Look(Display()))
    boxes = [
        (*artist._corner, *artist._image.shape[1::-1])
        for artist in picture.canvas._moving
        if isinstance(artist, drawing.Stamp) and artist.get_visible()
    ]
    assert len(boxes) > 5
    canvas = picture.canvas
    for left, bottom, wide, high in boxes:
        assert left >= 0
        assert bottom >= 0
        assert left + wide <= canvas.width
        assert bottom + high <= canvas.height
    for (x, y, w, h), (p, q, r, s) in itertools.combinations(boxes, 2):
        assert x + w <= p + 1 or p + r <= x + 1 or y + h <= q + 1 or q + s <= y + 1


@every_figure
def test_the_predicted_choice_is_computed(figure: Figure) -> None:
    outcome = figure.prediction.outcome(US)
    assert 0 <= outcome.right < len(figure.prediction.choices)
    assert "lbf" in outcome.sentence
    check_words(outcome.sentence, {})


@every_figure
def test_defaults_lie_on_their_sliders(figure: Figure) -> None:
    keys = [c.key for c in figure.controls]
    assert len(set(keys)) == len(keys)
    assert max(len(c.label) for c in figure.controls) <= 28  # more is cut off beside the slider
    for control in figure.controls:
        if isinstance(control, Control):
            assert control.low <= control.default <= control.high
            steps = (control.default - control.low) / control.step
            assert abs(steps - round(steps)) < 1e-6
        else:
            assert control.default in ends(control)
