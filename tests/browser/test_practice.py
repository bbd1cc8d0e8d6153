"""Practice, a mock examination and the record's export, as a learner has them in a browser."""

import csv
import json
import sqlite3
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Locator, Page, expect

from ropecalc.teaching.practice import mock as mocks
from ropecalc.teaching.practice.practice_view import PAGE, place_of
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.draw import Draw, draw
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.questions.template import Template
from ropecalc.teaching.record import Record
from ropecalc.units import Display
from tests.browser.conftest import Server

OpenPage = Callable[..., Page]
PRACTICE = "lessons/practice.ipynb"
SLOW_MS = 20_000


def record_of(server: Server) -> Path:
    return server.folder.parent / "record.sqlite"


def asked_now(server: Server) -> Draw:
    """What practice asks at this moment, by the learner's record."""
    record = Record.open(record_of(server))
    try:
        question = BANK[str(record.setting("practice.question"))]
        return draw(question, PAGE, record.work(place_of(question.key)).draw)
    finally:
        record.close()


def ask(server: Server, question: Question) -> None:
    """Let practice ask ``question`` when it opens, with numbers that are fresh."""
    record = Record.open(record_of(server))
    try:
        record.keep_setting("practice.question", question.key)
    finally:
        record.close()


def numeric() -> Template:
    """A question that is answered with a number and has a mistake with a name."""
    return next(q for q in BANK.values() if isinstance(q, Template) and q.mistakes)


def answer(question: Locator, text: str) -> None:
    question.get_by_role("textbox").fill(text)
    question.get_by_role("button", name="Check").click()


def test_wrong_and_right_sure_and_next_and_back_again(open_page: OpenPage, server: Server) -> None:
    ask(server, numeric())
    page = open_page(PRACTICE)
    practice = page.locator(".ropecalc-practice")
    question = practice.locator(".ropecalc-question")
    drawn = asked_now(server)
    expect(question).to_contain_text(drawn.template.title)
    practice.get_by_role("radio", name="not sure").check()
    mistake = drawn.template.mistakes[0]
    answer(question, drawn.shown(drawn.mistaken[mistake.key], Display()))
    expect(question.get_by_role("status")).to_contain_text("✗", timeout=SLOW_MS)
    expect(practice.get_by_role("radio", name="not sure")).to_be_disabled()
    answer(question, drawn.shown(drawn.answer, Display()))
    expect(question.get_by_role("status")).to_contain_text("✓", timeout=SLOW_MS)
    practice.get_by_role("button", name="Next question").click()
    expect(question).not_to_contain_text(drawn.template.title, timeout=SLOW_MS)
    following = asked_now(server)
    expect(question).to_contain_text(following.template.title)
    expect(question).to_have_count(1)
    expect(practice.get_by_role("radio", name="not sure")).not_to_be_checked(timeout=SLOW_MS)
    page = open_page(PRACTICE)  # closed and opened again
    again = page.locator(".ropecalc-practice .ropecalc-question")
    expect(again).to_contain_text(following.template.title)
    assert asked_now(server) == following
    with sqlite3.connect(record_of(server)) as kept:
        levels = kept.execute(
            "SELECT level FROM confidence WHERE page = ? AND question = ?",
            (PAGE, drawn.template.key),
        ).fetchall()
    kept.close()
    assert levels == [("unsure",)]


def test_a_mock_is_begun_answered_finished_and_reviewed(
    open_page: OpenPage, server: Server
) -> None:
    page = open_page(PRACTICE)
    part = page.locator(".ropecalc-mock")
    part.get_by_role("button", name="Begin a mock examination").click()
    questions = part.locator(".ropecalc-question")
    expect(questions).not_to_have_count(0, timeout=SLOW_MS)
    record = Record.open(record_of(server))
    mock = mocks.kept(record)
    record.close()
    assert mock is not None
    expect(questions).to_have_count(len(mock.paper.items))
    place, item = next(
        (n, item)
        for n, item in enumerate(mock.paper.items)
        if isinstance(item.template, Template) and not item.options
    )
    right = item.drawn.shown(item.drawn.answer, Display())
    entry = questions.nth(place).get_by_role("textbox")
    entry.fill(right)
    entry.press("Enter")
    expect(questions.nth(place)).to_contain_text(f"Kept: {right}")
    part.get_by_role("button", name="How much time is left").click()
    expect(part).to_contain_text("Not answered:")
    page = open_page(PRACTICE)  # it goes on where it was
    part = page.locator(".ropecalc-mock")
    expect(part.locator(".ropecalc-question").nth(place)).to_contain_text(f"Kept: {right}")
    part.get_by_role("button", name="Finish").click()
    expect(part).to_contain_text("Press “Finish” once more")
    part.get_by_role("button", name="Finish").click()
    expect(part).to_contain_text(f"1 of {len(mock.paper.items)} right", timeout=SLOW_MS)
    expect(part.locator(".ropecalc-question")).to_have_count(0)
    reviewed = part.locator("details").nth(place)
    reviewed.locator("summary").click()
    expect(reviewed).to_contain_text(f"You answered: {right}.")
    expect(reviewed).to_contain_text("✓ right, 1 mark")
    expect(reviewed).to_contain_text("Worked solution")


def test_the_record_is_saved_as_files(open_page: OpenPage, server: Server, tmp_path: Path) -> None:
    ask(server, numeric())
    page = open_page(PRACTICE)
    question = page.locator(".ropecalc-practice .ropecalc-question")
    whole_record = page.get_by_role("link", name="The whole record (JSON)")
    before = str(whole_record.get_attribute("href"))
    answer(question, "4711 kN")
    expect(question.get_by_role("status")).to_contain_text("✗", timeout=SLOW_MS)
    expect(whole_record).not_to_have_attribute("href", before, timeout=SLOW_MS)
    saved = {}
    for words in ("All answers (CSV)", "The whole record (JSON)", "A summary to print"):
        with page.expect_download() as download:
            page.get_by_role("link", name=words).click()
        download.value.save_as(tmp_path / download.value.suggested_filename)
        saved[words] = tmp_path / download.value.suggested_filename
    table, whole, summary = saved.values()
    rows = list(csv.DictReader(table.open(encoding="utf-8", newline="")))
    assert (rows[-1]["question"], rows[-1]["text"]) == (numeric().key, "4711 kN")
    assert json.loads(whole.read_text(encoding="utf-8"))["answers"][-1]["text"] == "4711 kN"
    assert "<h1>My progress</h1>" in summary.read_text(encoding="utf-8")
