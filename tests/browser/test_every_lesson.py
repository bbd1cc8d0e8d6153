"""Every lesson in a real browser: it runs, its figures come, a slider moves its picture."""

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.panel import FAILED
from tests.browser.test_lesson import PANEL, revealed, source

OpenPage = Callable[..., Page]


@pytest.mark.parametrize("lesson", LESSONS.values(), ids=lambda lesson: lesson.key)
def test_a_lesson_runs_and_a_slider_moves_its_picture(open_page: OpenPage, lesson) -> None:
    page = open_page(f"lessons/{lesson.file}.ipynb")
    expect(page.locator(PANEL)).to_have_count(len(lesson.figures))
    expect(page.locator(".ropecalc-question")).to_have_count(len(lesson.questions))
    for number in range(len(lesson.figures)):
        panel = revealed(page, number)
        before = source(panel.locator("img"))
        slider = panel.get_by_role("slider", disabled=False).first
        slider.focus()
        slider.press("ArrowRight")
        slider.press("ArrowRight")
        expect(panel.locator("img")).not_to_have_attribute("src", before)
        expect(panel).not_to_contain_text(FAILED)
    text = page.locator(".jp-Notebook").inner_text()
    assert "Traceback" not in text and not re.search(r"\wError\b", text)
    assert f"open_lesson({lesson.key!r})" not in text
