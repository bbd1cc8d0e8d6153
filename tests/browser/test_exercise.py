"""An exercise in a real browser: answer by keyboard, close, come back."""

import os
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

OpenPage = Callable[..., Page]
EXERCISE = "exercises/08_09_holding_a_litter_off.ipynb"


def picture(page: Page, name: str) -> None:
    folder = os.environ.get("ROPECALC_PICTURES")
    if folder:
        page.set_viewport_size({"width": 1366, "height": 2400})
        page.wait_for_timeout(500)
        page.screenshot(path=str(Path(folder) / f"{name}.png"))


def test_a_question_is_answered_by_keyboard_and_is_still_there(open_page: OpenPage) -> None:
    page = open_page(EXERCISE)
    question = page.locator(".ropecalc-question").first
    entry = question.get_by_label("Your answer")
    entry.click()
    picture(page, "fresh")
    page.keyboard.type("1,155 m")
    page.keyboard.press("Enter")
    status = question.get_by_role("status")
    expect(status).to_contain_text("is a length, but a force is asked for")
    entry.fill("60 kN")
    page.keyboard.press("Enter")
    expect(status).to_contain_text("Read as 60 kN")
    question.get_by_role("button", name="Hint").press("Enter")
    question.get_by_role("button", name="Hint").press("Enter")
    expect(question).to_contain_text("Hint 2 of 4")
    expect(question.locator("mjx-container").first).to_be_visible()
    picture(page, "hints")
    question.get_by_role("button", name="Show the worked solution").press("Enter")
    expect(question).to_contain_text("Common mistakes")
    picture(page, "solution")

    page = open_page(EXERCISE)
    question = page.locator(".ropecalc-question").first
    expect(question.get_by_label("Your answer")).to_have_value("60 kN")
    expect(question.get_by_role("status")).to_contain_text("Read as 60 kN")
    expect(question).to_contain_text("Hint 2 of 4")


def test_progress_follows_an_answer(open_page: OpenPage) -> None:
    page = open_page(EXERCISE)
    progress = page.locator(".ropecalc-progress").get_by_role("status")
    before = progress.inner_text()
    question = page.locator(".ropecalc-question").last
    question.get_by_label("Your answer").fill("7.77 kN")
    question.get_by_role("button", name="Check").click()
    expect(question.get_by_role("status")).to_contain_text("Not right")
    assert before.endswith("assessed by your authority.")
    expect(progress).not_to_have_text(before)
    picture(page, "last")
