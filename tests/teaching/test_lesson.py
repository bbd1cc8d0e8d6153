"""A lesson's page: every part can be asked for, says itself in words, and follows the units."""

import math
import re
from collections.abc import Iterator
from string import Formatter

import pytest

from ropecalc.teaching.facts import FactView
from ropecalc.teaching.lesson import Lesson
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.units import Display

CONTENTS = list(LESSONS.values())
FACTS = [fact for content in CONTENTS for fact in content.facts]
MYTHS = [
    (content, question.key, mistake.key)
    for content in CONTENTS
    for question in content.myths
    for mistake in question.mistakes
]


@pytest.fixture
def session() -> Iterator[Session]:
    record = Record.in_memory()
    yield Session(record)
    record.close()


@pytest.mark.parametrize("fact", FACTS, ids=lambda value: value.key)
def test_a_fact_uses_every_number_it_computes_and_no_other(fact) -> None:
    used = {name for _, name, _, _ in Formatter().parse(fact.sentence) if name}
    assert used <= set(fact.compute())


@pytest.mark.parametrize("fact", FACTS, ids=lambda value: value.key)
def test_a_fact_follows_the_units_on_the_page(fact, session: Session) -> None:
    view = FactView(fact, session)
    before = view.summary()
    session.choose_unit("force", "lbf")
    session.choose_unit("length", "ft")
    session.choose_unit("mass", "lb")
    assert " kN" not in view.summary()
    if re.search(r"\d (kN|m)\b", before):
        assert view.summary() != before
    for word in view.summary().split():
        assert word in view.children[0].value.replace("&#x27;", "'")


@pytest.mark.parametrize("content", [c for c in CONTENTS if c.tables], ids=lambda c: c.key)
def test_a_table_has_full_rows_and_follows_the_units(content, session: Session) -> None:
    lesson = Lesson(content, session)
    views = [lesson.table(table.key) for table in content.tables]
    before = [view.summary() for view in views]
    for table in content.tables:
        rows = table.rows(session.display)
        assert len({len(row) for row in rows}) == 1
    session.choose_unit("force", "lbf")
    for view, old in zip(views, before, strict=True):
        assert view.summary() != old
        assert " kN" not in view.summary()
        for line in view.summary().splitlines():
            for cell in line.split(" | "):
                assert cell in view.children[0].value.replace("&#x27;", "'")


def test_the_edge_turn_by_turn_is_one_factor_over_and_over() -> None:
    """1 + 0.3·2·sin(½°) for each degree, against the table's e^(0.3·turn); a 3:1 adds up."""
    tables = {table.key: table.rows(Display()) for table in LESSONS["friction"].tables}
    for turn, factor, raising, lowering in tables["turn-by-turn"][1:]:
        degrees = int(turn.removesuffix("°"))
        counted = (1 + 0.3 * 2 * math.sin(math.radians(0.5))) ** degrees
        assert float(factor) == pytest.approx(counted, abs=0.007)
        assert float(raising.split()[0]) == pytest.approx(1.96133 * counted, abs=0.012)
        assert float(lowering.split()[0]) == pytest.approx(1.96133 / counted, abs=0.01)
    for way, hand in (("raising", 1.96133 / 2.71), ("lowering", 0.81 * 1.96133 / 2.71)):
        rows = {row[0]: row for row in tables[f"three-to-one-{way}"]}
        assert float(rows["the hand's strand"][3].split()[0]) == pytest.approx(hand, abs=5e-4)
        assert rows["together"][2] == "2.71"


@pytest.mark.parametrize(("content", "question", "mistake"), MYTHS)
def test_a_myth_and_the_truth_part_visibly(content, question, mistake, session) -> None:
    situation, said, true, why = Lesson(content, session).myth(question, mistake)._lines()
    assert said.rpartition("gives ")[2] != true.rpartition("gives ")[2]
    assert situation and why


@pytest.mark.parametrize("content", CONTENTS, ids=lambda content: content.key)
def test_every_part_of_a_lesson_can_be_asked_for(content, session: Session) -> None:
    lesson = Lesson(content, session)
    views = [lesson.units(), lesson.cautions()]
    views += [lesson.figure(figure.key) for figure in content.figures]
    views += [lesson.working(derivation.name) for derivation in content.derivations]
    views += [lesson.question(question.key) for question in content.questions]
    for view in views:
        text = view.summary()
        assert text.strip()
        assert "nan" not in text.lower().split()
        assert view._repr_mimebundle_()["text/plain"] == text


@pytest.mark.parametrize("content", CONTENTS, ids=lambda content: content.key)
def test_an_unknown_key_is_answered_with_the_known_ones(content, session: Session) -> None:
    lesson = Lesson(content, session)
    with pytest.raises(KeyError, match=content.figures[0].key):
        lesson.figure("nonsense")
    with pytest.raises(KeyError, match=content.derivations[0].name):
        lesson.working("nonsense")


def test_an_assumption_stands_open_where_the_page_meets_it_first(session: Session) -> None:
    lesson = Lesson(LESSONS["tensioner"], session)
    first, second, again = (
        lesson.working(name).children[0].value
        for name in ("line_taken_in", "far_over_near", "line_taken_in")
    )
    assert "<details>" not in first
    assert "<details>" in second
    assert again == first  # the same cell, run once more


def test_every_working_starts_from_what_its_page_says() -> None:
    """Where a page has an example, no derivation on it begins with numbers from elsewhere."""
    for content in CONTENTS:
        for derivation in content.derivations:
            known = {**content.example(), **content.elsewhere.get(derivation.name, {})}
            assert {v.name for v in derivation.given} <= set(known), derivation.name
