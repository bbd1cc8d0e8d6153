"""The shell around a figure: units, prediction, faults, and what a page may not show."""

import logging
import struct
import zlib
from dataclasses import replace
from typing import Any

import ipywidgets as widgets
import numpy as np
import pytest

from ropecalc.teaching.canvas import Canvas
from ropecalc.teaching.drawing import HAUL, Label, Labels, Rope, neat
from ropecalc.teaching.figures import FIGURES
from ropecalc.teaching.panel import (
    FAILED,
    LOCKED,
    Choice,
    Figure,
    Look,
    Outcome,
    Panel,
    Prediction,
    Values,
)
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind


class _Picture:
    def __init__(self) -> None:
        self.canvas = Canvas(200, 100)
        axes = self.canvas.axes(10, 10, 180, 80)
        axes.set_xlim(0, 10)
        axes.set_ylim(0, 10)
        self._line = Rope(self.canvas, axes, HAUL)
        self._labels = Labels(self.canvas, axes, 1)

    def update(self, result: float, look: Look) -> None:
        self._line.place((0, 0), (result, 5))
        words = look.display.show(result, Kind.LENGTH) if look.numbers else "?"
        self._labels.write([Label(words if look.forces else "", (5, 5))])


def _compute(values: Values) -> float:
    if values["length"] > 9.5:
        raise RuntimeError("a fault at one end of one slider")
    return float(values["length"]) * (2.0 if values["way"] == "double" else 1.0)


def _outcome(display: Display) -> Outcome:
    return Outcome(right=1, sentence=f"It is {display.show(2.0, Kind.LENGTH)}.")


FIGURE = Figure(
    key="trial",
    title="A trial",
    alternative="a line",
    prediction=Prediction("which?", ("one", "two"), _outcome),
    controls=(
        Control("length", "Length", Kind.LENGTH, 0.4, 10, 0.1, 2.5),
        Control("pull", "Pull", Kind.FORCE, 1000, 6000, 100, 2000),
        Choice("way", "Way", (("single", "Single"), ("double", "Double")), "single"),
    ),
    compute=_compute,
    picture=_Picture,
    summary=lambda result, display: f"Length {display.show(result, Kind.LENGTH)}.",
    cautions=("First caution.", "Second <caution>."),
)


@pytest.fixture
def session() -> Session:
    return Session(Record.in_memory())


@pytest.fixture
def panel(session: Session) -> Panel:
    made = Panel(FIGURE, session)
    made.predict(None)
    return made


def _inside(widget: Any) -> list[Any]:
    """The widget and everything in it."""
    return [widget, *(w for child in getattr(widget, "children", ()) for w in _inside(child))]


def _texts(panel: Panel) -> str:
    return "\n".join(w.value for w in _inside(panel) if isinstance(w, widgets.HTML))


def _slider(panel: Panel, label: str) -> widgets.FloatSlider:
    return next(w for w in _inside(panel) if getattr(w, "description", "").startswith(label))


def _button(panel: Panel, words: str) -> widgets.Button:
    return next(
        w for w in _inside(panel) if isinstance(w, widgets.Button) and w.description == words
    )


def test_numbers_come_after_the_prediction(session: Session) -> None:
    panel = Panel(FIGURE, session)
    before = panel.png
    assert LOCKED in _texts(panel)
    assert "Length 2.50 m" not in _texts(panel)
    assert _slider(panel, "Length").disabled
    _button(panel, "two").click()
    assert "Length 2.50 m" in _texts(panel)
    assert not _slider(panel, "Length").disabled
    assert panel.png != before


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("one", "You said: one. Balance gives: two. It is 2.00 m."),
        ("two", "You said: two. Balance gives the same. It is 2.00 m."),
        ("Skip", "Skipped. It is 2.00 m."),
    ],
)
def test_the_prediction_is_compared_with_balance(session: Session, words: str, said: str) -> None:
    panel = Panel(FIGURE, session)
    _button(panel, words).click()
    assert said in _texts(panel)


def test_a_move_changes_picture_and_words(panel: Panel) -> None:
    before = panel.png
    panel.move("length", 4.0)
    assert panel.png != before
    assert panel.summary() == "Length 4.00 m."
    assert "Length 4.00 m." in _texts(panel)
    panel.move("way", "double")
    assert panel.summary() == "Length 8.00 m."


def test_other_units_move_no_value(panel: Panel, session: Session) -> None:
    panel.move("length", 3.3)
    before = panel.values
    for units in (("length", "ft"), ("force", "lbf"), ("force", "kgf"), ("length", "m")):
        session.choose_unit(*units)
        assert panel.values == before
    session.choose_unit("length", "ft")
    slider = _slider(panel, "Length")
    assert slider.description == "Length (ft)"
    assert slider.value == 10.8
    assert slider.min <= 0.4 / 0.3048
    assert slider.max >= 10 / 0.3048
    assert "Length 10.8 ft" in _texts(panel)
    slider.value = 10.0
    assert panel.values["length"] == pytest.approx(3.048)


def test_the_ends_of_a_slider_stay_inside_the_range_in_any_unit(
    panel: Panel, session: Session
) -> None:
    session.choose_unit("force", "lbf")
    slider = _slider(panel, "Pull")
    slider.value = slider.min
    assert panel.values["pull"] == 1000
    slider.value = slider.max
    assert panel.values["pull"] == 6000


def test_a_panel_opens_in_the_units_kept_for_the_learner(session: Session) -> None:
    session.choose_unit("length", "ft")
    panel = Panel(FIGURE, session)
    assert panel.summary() == "Length 8.20 ft."
    assert panel.values["length"] == 2.5


def test_back_to_the_start(panel: Panel) -> None:
    start, picture = panel.values, panel.png
    panel.move("length", 7.0)
    panel.move("way", "double")
    _button(panel, "Back to the start").click()
    assert panel.values == start
    assert panel.png == picture
    assert _slider(panel, "Length").value == 2.5


def test_hiding_the_forces_changes_the_picture_only(panel: Panel) -> None:
    before, words = panel.png, panel.summary()
    box = next(w for w in _inside(panel) if isinstance(w, widgets.Checkbox))
    box.value = False
    assert panel.png != before
    assert panel.summary() == words


def test_a_fault_becomes_a_sentence_and_a_log_entry(
    panel: Panel, caplog: pytest.LogCaptureFixture, capsys: pytest.CaptureFixture[str]
) -> None:
    with caplog.at_level(logging.ERROR):
        panel.move("length", 10.0)
    assert panel.summary() == FAILED
    assert "fault of the course" in _texts(panel)
    assert "RuntimeError" not in _texts(panel)
    assert any(r.exc_info and "trial" in r.getMessage() for r in caplog.records)
    assert capsys.readouterr().out == ""
    image = next(w for w in _inside(panel) if isinstance(w, widgets.Image))
    assert image.layout.visibility == "hidden"
    panel.move("length", 9.0)
    assert image.layout.visibility == "visible"
    assert "Length 9.00 m" in _texts(panel)


def test_the_first_caution_is_seen_and_the_rest_folds(panel: Panel) -> None:
    text = _texts(panel)
    assert "<summary><b>Caution.</b> First caution." in text
    assert "Second &lt;caution&gt;." in text


def test_what_notebooks_and_screen_readers_get(panel: Panel) -> None:
    assert panel._repr_mimebundle_()["text/plain"] == panel.summary()
    assert 'role="status"' in _texts(panel)
    assert 'aria-live="polite"' in _texts(panel)
    assert FIGURE.alternative in _texts(panel)
    assert not any(isinstance(w, widgets.Output) for w in _inside(panel))


def test_a_table_comes_with_the_numbers_and_goes_with_a_fault(session: Session) -> None:
    def table(result: float, display: Display) -> tuple[tuple[str, ...], ...]:
        return (("what", "how <long>"), ("rope", display.show(result, Kind.LENGTH)))

    panel = Panel(replace(FIGURE, table=table), session)
    assert "<table>" not in _texts(panel)
    panel.predict(None)
    assert "how &lt;long&gt;</th>" in _texts(panel)
    assert "<td>2.50 m</td>" in _texts(panel)
    assert panel.summary().endswith("\nwhat | how <long>\nrope | 2.50 m")
    panel.move("length", 10.0)
    assert "<table>" not in _texts(panel)


def test_the_tick_for_the_forces_is_named_by_the_figure(session: Session) -> None:
    panel = Panel(replace(FIGURE, forces_label="Show the pulls on the ring"), session)
    assert any(
        w.description == "Show the pulls on the ring"
        for w in _inside(panel)
        if isinstance(w, widgets.Checkbox)
    )


def test_every_slider_says_what_it_moves_and_in_which_unit(panel: Panel) -> None:
    sliders = [w for w in _inside(panel) if isinstance(w, widgets.FloatSlider)]
    assert [s.description for s in sliders] == ["Length (m)", "Pull (kN)"]
    assert all(s.continuous_update for s in sliders)


def test_a_png_decodes_to_the_drawn_pixels() -> None:
    picture = _Picture()
    picture.update(5.0, Look(Display()))
    data = picture.canvas.png()
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    width, height = struct.unpack(">II", data[16:24])
    assert (width, height) == (200, 100)
    length = struct.unpack(">I", data[33:37])[0]
    rows = np.frombuffer(zlib.decompress(data[41 : 41 + length]), np.uint8).reshape(100, 601)
    assert (rows[:, 0] == 2).all()
    pixels = np.cumsum(rows[:, 1:], axis=0, dtype=np.uint8).reshape(100, 200, 3)
    assert np.array_equal(pixels, np.asarray(picture.canvas.figure.canvas.buffer_rgba())[..., :3])
    assert (pixels[0] == 255).all()
    assert (pixels < 128).any()


@pytest.mark.parametrize(
    ("value", "expected"), [(1.0, 1.0), (1.99, 1.0), (2.0, 2.0), (0.3048, 0.2), (7.3, 5), (93, 50)]
)
def test_neat_numbers(value: float, expected: float) -> None:
    assert neat(value) == pytest.approx(expected)


def test_words_stand_upright() -> None:
    canvas = Canvas(120, 60)
    axes = canvas.axes(0, 0, 120, 60)
    axes.set_axis_off()
    Labels(canvas, axes, 1).write([Label("LLLL", (0.2, 0.5), towards=(1, 0))])
    canvas.png()
    ink = 255 - np.asarray(canvas.figure.canvas.buffer_rgba())[..., 0].astype(int)
    rows = np.flatnonzero(ink.sum(axis=1))
    middle = (rows[0] + rows[-1]) // 2
    assert ink[middle + 1 :].sum() > 1.3 * ink[:middle].sum()  # the feet of the letters are below


def test_the_verdict_follows_the_units(session: Session) -> None:
    panel = Panel(FIGURE, session)
    panel.predict(0)
    session.choose_unit("length", "ft")
    assert "You said: one. Balance gives: two. It is 6.56 ft." in _texts(panel)
    assert "2.00 m" not in _texts(panel)


@pytest.mark.parametrize(
    ("choice", "said"), [(0, "You said: one."), (1, "You said: two."), (None, "Skipped.")]
)
def test_a_prediction_is_kept_for_the_next_visit(
    session: Session, choice: int | None, said: str
) -> None:
    Panel(FIGURE, session).predict(choice)
    again = Panel(FIGURE, Session(session.record))
    assert said in _texts(again)
    assert LOCKED not in _texts(again)
    assert not _slider(again, "Length").disabled
    other = Panel(replace(FIGURE, key="other"), Session(session.record))
    assert LOCKED in _texts(other)


def test_a_prediction_that_no_longer_exists_counts_as_skipped(session: Session) -> None:
    session.record.keep_setting("prediction.trial", "7")
    assert "Skipped." in _texts(Panel(FIGURE, session))


def test_unlocking_in_other_units_leaves_nothing_of_the_locked_picture(session: Session) -> None:
    for figure in FIGURES.values():
        panel = Panel(figure, session)
        session.choose_unit("length", "ft")
        panel.predict(0)
        fresh = Panel(figure, Session(session.record))
        assert panel.png == fresh.png
        session.choose_unit("length", "m")


FOLDED = replace(
    FIGURE,
    first=("length",),
    reading=("Read it <so>.",),
    idle=lambda values: {"pull": "Nothing pulls."} if values["way"] == "double" else {},
)


def test_settings_that_matter_less_are_folded_away(session: Session) -> None:
    panel = Panel(FOLDED, session)
    grids = [w for w in _inside(panel) if isinstance(w, widgets.GridBox)]
    assert [g.layout.display for g in grids] == [None, "none"]
    assert _slider(panel, "Length") in _inside(grids[0])
    assert _slider(panel, "Pull") in _inside(grids[1])
    _button(panel, "More settings").click()
    assert grids[1].layout.display == ""
    _button(panel, "Fewer settings").click()
    assert grids[1].layout.display == "none"
    assert "<p>Read it &lt;so&gt;.</p>" in _texts(panel)


def test_what_cannot_matter_is_disabled_with_a_reason(session: Session) -> None:
    panel = Panel(FOLDED, session)
    panel.predict(None)
    assert not _slider(panel, "Pull").disabled
    panel.move("way", "double")
    assert _slider(panel, "Pull").disabled
    assert not _slider(panel, "Length").disabled
    assert "Nothing pulls." in _texts(panel)
    session.choose_unit("force", "lbf")
    assert _slider(panel, "Pull").disabled
    panel.move("way", "single")
    assert not _slider(panel, "Pull").disabled
    assert "Nothing pulls." not in _texts(panel)
