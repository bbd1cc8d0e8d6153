"""The drawing beside a question: it shows what is given, tells nothing else, and can be read."""

import io
import xml.etree.ElementTree as ET
from itertools import combinations
from math import tan

import pytest
from reportlab.pdfgen.canvas import Canvas

from ropecalc.teaching.placing import Box
from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.diagrams import DIAGRAMS, parts, picture_of
from ropecalc.teaching.questions.diagrams.flowable import PrintedPicture
from ropecalc.teaching.questions.diagrams.picture import Disc, Picture, Trace, Words, extent
from ropecalc.teaching.questions.diagrams.sheet import Sheet
from ropecalc.teaching.questions.diagrams.svg import beside, img, svg
from ropecalc.teaching.questions.draw import Draw, draw
from ropecalc.units import Display

_DRAWS = 40
_WIDEST, _TALLEST = 400.0, 290.0
_SMALLEST_TYPE = 9.0
WITHOUT: dict[str, str] = {}
"""Questions that need no drawing, each with the reason."""
_OTHER_UNITS = Display(force="lbf", length="ft", mass="lb", angle="rad")

drawn_questions = pytest.mark.parametrize("key", DIAGRAMS)


def _draws(key: str) -> list[Draw]:
    return [draw(BANK[key], "drawing", number) for number in range(_DRAWS)]


def _picture(drawn: Draw, display: Display | None = None) -> Picture:
    picture = picture_of(drawn, display or Display())
    assert picture is not None
    return picture


def _shown(picture: Picture) -> str:
    return " | ".join(words.text for words in picture.words)


def _overlap(one: Box, other: Box) -> bool:
    return (
        min(one[2], other[2]) > max(one[0], other[0]) + 0.01
        and min(one[3], other[3]) > max(one[1], other[1]) + 0.01
    )


def test_every_question_has_a_drawing_or_a_reason() -> None:
    assert set(BANK) == set(DIAGRAMS) | set(WITHOUT)
    assert not set(DIAGRAMS) & set(WITHOUT)


@drawn_questions
def test_every_given_value_is_shown_and_something_is_asked(key: str) -> None:
    for drawn in _draws(key):
        shown = _shown(_picture(drawn))
        for given in drawn.template.givens:
            value = given.show(drawn.values[given.name], Display())
            assert value in shown, (given.name, shown)
        assert "?" in shown


@drawn_questions
def test_the_answer_is_not_shown_unless_a_given_happens_to_read_alike(key: str) -> None:
    for drawn in _draws(key):
        template = drawn.template
        givens = {g.show(drawn.values[g.name], Display()) for g in template.givens}
        answer = template.shown(drawn.values, drawn.answer, Display())
        pieces = {words.text for words in _picture(drawn).words}
        assert answer not in pieces - givens, (answer, pieces)


@drawn_questions
def test_words_lie_inside_the_frame_clear_of_each_other_and_large_enough(key: str) -> None:
    for drawn in _draws(key):
        picture = _picture(drawn)
        assert picture.width <= _WIDEST and picture.height <= _TALLEST
        for words in picture.words:
            left, bottom, right, top = words.box
            assert left >= 0 and bottom >= 0, words
            assert right <= picture.width and top <= picture.height, words
            assert words.size >= _SMALLEST_TYPE
        for one, other in combinations(picture.words, 2):
            assert not _overlap(one.box, other.box), (drawn.values, one.text, other.text)


@drawn_questions
def test_everything_drawn_lies_inside_the_frame(key: str) -> None:
    for drawn in _draws(key):
        picture = _picture(drawn)
        for mark in picture.marks:
            points = [mark.centre] if isinstance(mark, Disc) else mark.points
            for x, y in points:
                assert 0 <= x <= picture.width and 0 <= y <= picture.height


@drawn_questions
def test_both_outputs_come(key: str) -> None:
    for drawn in _draws(key)[:3]:
        picture = _picture(drawn)
        root = ET.fromstring(svg(picture))
        texts = [e.text for e in root.iter("{http://www.w3.org/2000/svg}text")]
        assert texts == [words.text for words in picture.words]
        page = io.BytesIO()
        canvas = Canvas(page)
        printed = PrintedPicture(picture, ("Helvetica", "Helvetica-Bold"))
        printed.drawOn(canvas, 50, 50)
        canvas.save()
        assert page.getvalue().startswith(b"%PDF") and printed.width <= 241


@drawn_questions
def test_the_alternative_text_tells_the_givens_and_what_is_asked(key: str) -> None:
    drawn = draw(BANK[key], "drawing")
    for display in (Display(), _OTHER_UNITS):
        alternative = _picture(drawn, display).alternative
        for given in drawn.template.givens:
            assert given.show(drawn.values[given.name], display) in alternative
        for _, meaning, _ in wording.givens(drawn, display):
            assert meaning in alternative
        assert drawn.template.asked in alternative


@drawn_questions
def test_units_follow_the_reader(key: str) -> None:
    drawn = draw(BANK[key], "drawing")
    shown = _shown(_picture(drawn, _OTHER_UNITS))
    for given in drawn.template.givens:
        assert given.show(drawn.values[given.name], _OTHER_UNITS) in shown


def test_angles_are_drawn_as_given() -> None:
    template = BANK["two-equal-legs"]
    for number in range(5):
        drawn = draw(template, "angles", number)
        half = drawn.values["leg_angle"] / 2
        picture = _picture(drawn)
        legs = [m.points for m in picture.marks if isinstance(m, Trace) and m.stroke == parts.ROPE]
        assert len(legs) == 2
        for (x0, y0), (x1, y1) in legs:
            assert abs(x1 - x0) / (y1 - y0) == pytest.approx(tan(half))


def test_words_find_room_beside_each_other() -> None:
    sheet = Sheet()
    for text in ("one", "two", "three", "four"):
        sheet.label(text, (0.0, 0.0))
    boxes = [words.box for words in sheet.picture("").words]
    assert len(boxes) == 4
    assert not any(_overlap(a, b) for a, b in combinations(boxes, 2))


def test_text_is_measured_as_wide_as_the_typeface_makes_it() -> None:
    wide, high = extent("2.3 kN", 100.0)
    # DejaVu Sans: 2, ., 3, space, k, N are 63.6, 31.8, 63.6, 31.8, 57.9, 74.8 hundredths of an em
    assert wide == pytest.approx(323.5, abs=0.5)
    assert 90 < high < 120
    assert Words("a", (10.0, 10.0), 12.0).box[0] < 10.0 < Words("a", (10.0, 10.0), 12.0).box[2]


def test_an_alternative_text_cannot_break_the_page() -> None:
    sheet = Sheet()
    sheet.label('<b> & "quoted"', (0.0, 0.0))
    picture = sheet.picture('A "<script>" & more')
    assert ET.fromstring(svg(picture)) is not None
    assert "<script>" not in img(picture)
    assert beside("words", None) == "words"
