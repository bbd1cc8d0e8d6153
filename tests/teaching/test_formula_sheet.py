"""The sheet of formulas says what the derivations say."""

import pytest

from ropecalc.teaching.formula_sheet import FormulaSheet
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session

SHEET = FormulaSheet(Session(Record.in_memory())).formulas()


@pytest.mark.parametrize("lesson", LESSONS.values(), ids=lambda lesson: lesson.key)
def test_every_derivation_of_a_lesson_is_on_the_sheet(lesson) -> None:
    lines = SHEET.summary().splitlines()
    start = lines.index(f"{lesson.number}. {lesson.title}") + 1
    found = lines[start : start + len(lesson.derivations)]
    for derivation, line in zip(lesson.derivations, found, strict=True):
        assert line.startswith(f"{derivation.title}: ")
        left, _, right = line.removeprefix(f"{derivation.title}: ").partition(" = ")
        assert left == derivation.result.plain_symbol()
        assert right


def test_letters_are_explained_where_they_are_used() -> None:
    for lesson, part in zip(LESSONS.values(), SHEET.children, strict=True):
        for derivation in lesson.derivations:
            for variable in (*derivation.given, derivation.result):
                if variable.symbol in derivation.explain().lines[-1].uses:
                    assert variable.meaning in part.value.replace("&#x27;", "'")
