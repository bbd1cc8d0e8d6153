"""What is typed gets a fair verdict, and never a crash."""

import pytest

from ropecalc.teaching.questions.bank import along_the_raise, forces, holding_off, margins
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.marking import Verdict, mark
from ropecalc.teaching.questions.template import Template
from ropecalc.units import Display, Kind, units_of
from tests.teaching.questions.every import TEMPLATES, every_template

TRACK = draw(holding_off.TRACK_TENSION, "marking")


def typed(value: float, kind: Kind, unit: str | None = None) -> str:
    found = next(u for u in units_of(kind) if unit is None or u.symbol == unit)
    return f"{value / found.factor:.8f} {found.symbol}"


@every_template
def test_the_answer_is_right_in_every_unit(template: Template) -> None:
    drawn = draw(template, "marking")
    for unit in units_of(template.kind):
        marked = mark(drawn, typed(drawn.answer, template.kind, unit.symbol))
        assert marked.verdict is Verdict.RIGHT, (unit, marked)
        assert marked.reading.endswith(unit.symbol)


@every_template
def test_what_the_solution_shows_is_right(template: Template) -> None:
    for number in range(25):
        drawn = draw(template, "shown", number)
        for display in (Display(), Display(force="lbf", length="ft")):
            shown = display.show(drawn.answer, template.kind)
            assert mark(drawn, shown).verdict is Verdict.RIGHT


@every_template
def test_each_mistake_is_recognised_by_name(template: Template) -> None:
    for number in range(25):
        drawn = draw(template, "mistakes", number)
        for key, value in drawn.mistaken.items():
            marked = mark(drawn, typed(value, template.kind))
            assert (marked.verdict, marked.mistake) == (Verdict.MISTAKE, key)
            assert template.mistake(key).why in marked.feedback


@every_template
def test_the_tolerance_ends_where_it_says(template: Template) -> None:
    drawn = draw(template, "tolerance")
    margin = template.tolerance.margin(drawn.answer)
    for side in (-1, 1):
        inside = mark(drawn, typed(drawn.answer + side * 0.98 * margin, template.kind))
        outside = mark(drawn, typed(drawn.answer + side * 1.02 * margin, template.kind))
        assert inside.verdict is Verdict.RIGHT
        assert outside.verdict is not Verdict.RIGHT


@every_template
def test_the_opposite_sign_is_told(template: Template) -> None:
    drawn = draw(template, "sign")
    assert abs(drawn.answer) > template.tolerance.margin(drawn.answer)
    marked = mark(drawn, typed(-drawn.answer, template.kind))
    if any(wrong == pytest.approx(-drawn.answer) for wrong in drawn.mistaken.values()):
        assert marked.verdict is Verdict.MISTAKE  # which says more than the sign
        return
    assert marked.verdict is Verdict.SIGN
    assert "opposite direction" in marked.feedback


@pytest.mark.parametrize("unit", ["N", "kgf", "lbf"])
def test_a_right_number_with_the_wrong_unit_is_told_apart(unit: str) -> None:
    number = Display(force=unit).number(TRACK.answer, Kind.FORCE, 5)
    marked = mark(TRACK, f"{number} kN")
    assert marked.verdict is Verdict.UNIT
    assert f"Write it with {unit}" in marked.feedback


def test_per_cent_and_plain_numbers_are_told_apart() -> None:
    drawn = draw(along_the_raise.TAKE_IN, "per cent")
    assert mark(drawn, f"{drawn.answer * 100:.4f} %").verdict is Verdict.RIGHT
    marked = mark(drawn, f"{drawn.answer * 100:.4f}")
    assert marked.verdict is Verdict.UNIT
    assert "in per cent, not as a plain number" in marked.feedback


@pytest.mark.parametrize("text", ["1,155", "1.155"])
def test_a_missing_unit_is_asked_for(text: str) -> None:
    marked = mark(TRACK, text)
    assert marked.verdict is Verdict.UNIT
    assert "has no unit" in marked.feedback


@pytest.mark.parametrize("text", ["2 m", "2 kg", "2 °"])
def test_a_unit_of_another_kind_is_told(text: str) -> None:
    assert mark(TRACK, text).verdict is Verdict.UNIT


def test_the_comma_is_a_decimal_mark_and_the_reading_says_so() -> None:
    assert mark(TRACK, "1,155 kN").reading == "1.155 kN"
    assert mark(TRACK, "-1.155 kN").reading == "−1.155 kN"
    degrees = draw(holding_off.TAG_ON_THE_RAIL, "marking")
    assert mark(degrees, "20 deg").reading == "20°"


@pytest.mark.parametrize(
    "text",
    [
        "",
        "   ",
        "nan kN",
        "inf kN",
        "-inf",
        "1e400 kN",
        "1e3 kN",
        "1,155.00 kN",
        "1.155,00 kN",
        "1 000 N",
        "1/2 kN",
        "__import__('os').system('true')",
        "<script>alert(1)</script>",
        "9" * 5000,
        "9" * 100_000 + " kN",
        "kN",
        "1 kN kN",
        "１２ furlongs",
        "\x00",
        "1\n2",
        "{load}",
        "%s %n",
    ],
)
@every_template
def test_what_cannot_be_read_is_said_in_words(template: Template, text: str) -> None:
    marked = mark(draw(template, "hostile"), text)
    assert marked.verdict in (Verdict.UNREADABLE, Verdict.UNIT)
    assert marked.feedback.endswith(".") and len(marked.feedback) < 300
    assert "Traceback" not in marked.feedback and "nan" not in marked.reading.lower()


@pytest.mark.parametrize("text", ["9" * 35 + " kN", "0 kN", "0.0000001 kN", "−9999999999 N"])
def test_extreme_numbers_are_just_wrong(text: str) -> None:
    assert mark(TRACK, text).verdict in (Verdict.WRONG, Verdict.UNIT)


def test_feedback_to_a_wrong_answer_does_not_give_the_answer_away() -> None:
    answer = Display().number(TRACK.answer, Kind.FORCE)
    for text in ("7.77 kN", "7.77", typed(-TRACK.answer, Kind.FORCE)):
        assert answer not in mark(TRACK, text).feedback
    for value in TRACK.mistaken.values():
        assert answer not in mark(TRACK, typed(value, Kind.FORCE)).feedback


@pytest.mark.parametrize("question", [forces.WEIGHT, forces.POUNDS, forces.KILOGRAMS])
def test_ten_for_gravity_is_right_in_lesson_one_and_it_is_said(question: Template) -> None:
    for number in range(10):
        drawn = draw(question, "ten", number)
        exact, rough = drawn.answer, drawn.answer * 10 / 9.80665
        if question is forces.KILOGRAMS:
            rough = drawn.answer * 9.80665 / 10
        marked = mark(drawn, typed(rough, question.kind))
        assert marked.verdict is Verdict.RIGHT
        assert "You took 10 for g" in marked.feedback
        assert Display().show(exact, question.kind) in marked.feedback
        assert "10 for g" not in mark(drawn, typed(exact, question.kind)).feedback
        for off in (0.955, 1.045):
            assert mark(drawn, typed(exact * off, question.kind)).verdict is not Verdict.RIGHT


def test_no_other_lesson_takes_ten_for_gravity() -> None:
    assert {t.key for t in TEMPLATES if t.accepted} == {
        forces.WEIGHT.key,
        forces.POUNDS.key,
        forces.KILOGRAMS.key,
    }
    drawn = draw(margins.HUB_SLIDES, "ten")
    marked = mark(drawn, typed(drawn.answer * 10 / 9.80665, Kind.FORCE))
    assert "10 for g" not in marked.feedback
