"""Progress, mistakes and files: what stands on the page is what the record holds."""

import base64
import csv
import io
import json
import re
from pathlib import Path

import pytest

from ropecalc import cautions
from ropecalc.teaching.practice import export
from ropecalc.teaching.practice.practice_page import PracticePage
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.record import Answer, Place, Record, Work
from ropecalc.teaching.session import Session
from tests.teaching.practice.pages import Clock, button, mistaken, page_text, right

pytestmark = pytest.mark.usefixtures("no_faults")
WEIGHT = "weight-of-a-mass"


@pytest.fixture
def record() -> Record:
    return Record.in_memory()


def page(record: Record) -> PracticePage:
    return PracticePage(Session(record), Path(), Clock())


def test_everything_on_the_page_follows_an_answer(record: Record) -> None:
    one = page(record)
    progress, mistakes, sure, files = (
        one.progress(),
        one.mistakes(),
        one.confidence(),
        one.export(),
    )
    practice = one.practice()
    template = practice._question._template
    wrong, key = mistaken(practice._question._drawn)
    practice._sure.value = "sure"
    practice._question._entry.value = wrong
    button(practice, "Check").click()
    assert "on the way" in page_text(progress) and template.title in page_text(progress)
    assert template.mistake(key).named in mistakes.summary()
    assert "0 of 1" in page_text(sure) and ">right when sure</th>" in page_text(sure)
    assert wrong in links(page_text(files))["my-answers.csv"]


def test_another_page_is_counted_when_asked(record: Record) -> None:
    progress = page(record).progress()
    record.keep_answer(Place("exercise:forces", WEIGHT), Answer(0, "1", "1", "right"))
    assert "1 of" not in page_text(progress)
    button(progress, "Count again").click()
    assert "Lesson 1" in page_text(progress) and "1 of" in page_text(progress)


def links(html: str) -> dict[str, str]:
    found = re.findall(r"download='([^']+)' href='data:[^;]+;charset=utf-8;base64,([^']+)'", html)
    return {name: base64.b64decode(data).decode("utf-8") for name, data in found}


def test_the_files_carry_the_whole_record(record: Record) -> None:
    place = Place("practice", WEIGHT)
    key = BANK[WEIGHT].mistakes[0].key
    given = [
        Answer(0, "=1+1", "", "unreadable", at="2030-01-01T00:00:00+00:00"),
        Answer(0, "1,9 kN “x”", "1.9 kN", "mistake", key, 2, True, "2030-01-01T00:01:00+00:00"),
    ]
    for answer in given:
        record.keep_answer(place, answer)
    record.keep_work(place, Work(0, "−2", 2, True))
    record.keep_confidence(place, 0, "guess")
    record.keep_setting("unit.force", "lbf")
    saved = links(page_text(page(record).export()))
    assert set(saved) == {"my-answers.csv", "my-record.json", "my-progress.html"}

    table = saved["my-answers.csv"]
    assert table.startswith("\ufeff")  # so that a spreadsheet reads “°” and “−” as they are
    head, first, second = csv.reader(io.StringIO(table[1:], newline=""))
    assert tuple(head) == export.COLUMNS
    assert first[head.index("text")] == "'=1+1"
    assert dict(zip(head, second, strict=True)) == {
        "at": "2030-01-01T00:01:00+00:00",
        "page": "practice",
        "lesson": "1",
        "question": WEIGHT,
        "draw": "0",
        "text": "1,9 kN “x”",
        "reading": "1.9 kN",
        "verdict": "mistake",
        "mistake": key,
        "hints": "2",
        "solution_seen": "1",
        "sure": "guess",
    }
    whole = json.loads(saved["my-record.json"])
    assert [Answer(**{k: v for k, v in a.items() if k not in ("page", "question")})
            for a in whole["answers"]] == given  # fmt: skip
    assert whole["settings"] == {"unit.force": "lbf"}
    assert whole["work"][0]["draft"] == "−2" and whole["confidence"][0]["level"] == "guess"

    printed = saved["my-progress.html"]
    assert cautions.KNOWLEDGE_CHECK in printed and "Lesson 12" in printed
    assert "http" not in printed and "<script" not in printed


def test_what_was_typed_cannot_break_the_page(record: Record) -> None:
    record.keep_answer(Place("practice", WEIGHT), Answer(0, "'><script>", "", "wrong"))
    assert "<script" not in page_text(page(record).export())


def test_a_fresh_record_says_the_same_whenever_it_is_opened() -> None:
    said = []
    for minutes in (0, 12345):
        clock = Clock()
        clock.turn(minutes)
        one = PracticePage(Session(Record.in_memory()), Path(), clock)
        parts = (one.practice, one.confidence, one.mock, one.progress, one.mistakes, one.export)
        said.append([part().summary() for part in parts])
    assert said[0] == said[1]


def test_a_right_answer_is_no_mistake(record: Record) -> None:
    practice = page(record).practice()
    practice._question._entry.value = right(practice._question._drawn)
    button(practice, "Check").click()
    assert "None yet" in page(record).mistakes().summary()
