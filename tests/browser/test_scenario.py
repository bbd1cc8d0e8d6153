"""A scenario in a real browser: parts open in turn, and the open question is compared."""

import os
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Locator, Page, expect

from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.scenarios.situation import draw_situation
from ropecalc.units import Display

OpenPage = Callable[..., Page]
SCENARIO = SCENARIOS["high-outcrop"]
PAGE = f"exercises/{SCENARIO.file}.ipynb"


def picture(page: Page, name: str) -> None:
    folder = os.environ.get("ROPECALC_PICTURES")
    if folder:
        page.set_viewport_size({"width": 1366, "height": 3200})
        page.wait_for_timeout(500)
        page.screenshot(path=str(Path(folder) / f"{name}.png"))


def part(page: Page, letter: str) -> Locator:
    """The output that holds the part with this letter."""
    head = page.get_by_text(f"Part {letter}", exact=True)
    return page.locator(".jp-OutputArea-output").filter(has=head)


def right_answer(key: str) -> str:
    draw = draw_situation(SCENARIO, SCENARIO.page).part(key)
    return draw.shown(draw.answer, Display())


def test_a_part_opens_when_what_it_goes_on_with_is_known(open_page: OpenPage) -> None:
    page = open_page(PAGE)
    expect(part(page, "c")).to_contain_text("goes on with the result of part a and b")
    expect(part(page, "d").get_by_label("Your answer")).to_have_count(0)
    picture(page, "scenario-fresh")
    entry = part(page, "a").get_by_label("Your answer")
    entry.click()
    page.keyboard.type(right_answer("high-outcrop-haul-leg"))
    page.keyboard.press("Enter")
    expect(part(page, "a")).to_contain_text("For what follows, go on with")
    part(page, "b").get_by_role("button", name="Give up").press("Enter")
    expect(part(page, "d").get_by_label("Your answer")).to_have_count(1)
    expect(part(page, "h")).to_contain_text("goes on with the result of part d")
    picture(page, "scenario-open")


def test_an_open_answer_is_kept_and_compared(open_page: OpenPage) -> None:
    page = open_page(PAGE)
    last = part(page, "k")
    compare = last.get_by_role("button", name="Compare")
    compare.press("Enter")
    expect(last.get_by_role("status")).to_contain_text("Write your own answer first")
    expect(last.get_by_role("checkbox")).to_have_count(0)
    last.get_by_label("Your answer").fill("A second line spares the lines, not the hub.")
    compare.press("Enter")
    expect(last.get_by_role("checkbox")).to_have_count(len(SCENARIO.judged[0].points))
    last.get_by_role("checkbox").first.press("Space")
    expect(last.get_by_role("status")).to_contain_text("1 of 5 points ticked")
    picture(page, "scenario-judged")

    page = open_page(PAGE)
    last = part(page, "k")
    expect(last.get_by_label("Your answer")).to_have_value(
        "A second line spares the lines, not the hub."
    )
    expect(last.get_by_role("checkbox").first).to_be_checked()


def test_new_numbers_begin_the_whole_scenario_anew(open_page: OpenPage) -> None:
    page = open_page(PAGE)
    story = page.locator(".ropecalc-situation")
    before = story.inner_text()
    story.get_by_role("button", name="New numbers").press("Enter")
    expect(story).not_to_have_text(before)
    expect(part(page, "a")).not_to_contain_text("For what follows")
    expect(part(page, "d").get_by_label("Your answer")).to_have_count(0)
