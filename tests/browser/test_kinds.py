"""An order and a rig to be set, in a real browser and by keyboard alone."""

import os
import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Locator, Page, expect

from ropecalc.teaching.questions.bank import orderings, rigs
from ropecalc.teaching.questions.draw import draw
from ropecalc.units import from_si

OpenPage = Callable[..., Page]
EXERCISE = "exercises/02_anchors.ipynb"
PAGE = "exercise:anchors"


def picture(part: Locator, name: str) -> None:
    folder = os.environ.get("ROPECALC_PICTURES")
    if folder:
        part.page.set_viewport_size({"width": 1366, "height": 2400})
        part.scroll_into_view_if_needed()
        part.page.wait_for_timeout(500)
        part.screenshot(path=str(Path(folder) / f"{name}.png"))


def question(page: Page, title: str) -> Locator:
    return page.locator(".ropecalc-question").filter(has=page.get_by_role("heading", name=title))


def test_an_order_is_given_by_keyboard_and_is_still_there(open_page: OpenPage) -> None:
    ordering = orderings.LEG_TENSIONS
    page = open_page(EXERCISE)
    asked = question(page, ordering.title)
    picture(asked, "order-fresh")
    right = draw(ordering, PAGE).answer.split()
    asked.get_by_label("Place 1 (smallest)").focus()
    for letter in right:
        page.keyboard.type(letter)
        page.keyboard.press("Tab")
    page.keyboard.press("Enter")  # the button comes after the last list
    expect(asked.get_by_role("status").last).to_contain_text(f"Read as {' '.join(right)}. Right.")
    asked.get_by_role("button", name="Show the worked solution").press("Enter")
    expect(asked).to_contain_text("In order, the smallest first")
    picture(asked, "order-solution")
    page = open_page(EXERCISE)
    asked = question(page, ordering.title)
    expect(asked.get_by_label("Place 1 (smallest)")).to_have_value(re.compile(rf"{right[0]}\. "))
    expect(asked.get_by_role("status").last).to_contain_text("Right.")


def test_a_rig_is_set_by_keyboard_and_is_still_there(open_page: OpenPage) -> None:
    task = rigs.LEG_ANGLE
    page = open_page(EXERCISE)
    asked = question(page, task.title)
    picture(asked, "rig-fresh")
    degrees = round(from_si(draw(task, PAGE).answer["leg_angle"], "°"))
    slider = asked.get_by_role("slider")
    slider.focus()
    page.keyboard.press("ArrowRight")
    expect(asked.get_by_role("status").first).to_contain_text("The legs stand 11° apart.")
    for _ in range(degrees - 11):
        page.keyboard.press("ArrowRight")
    expect(asked.get_by_role("status").first).to_contain_text(f"The legs stand {degrees}° apart.")
    asked.get_by_role("button", name="Check").press("Enter")
    expect(asked.get_by_role("status").last).to_contain_text(f"Read as {degrees}°. Right.")
    asked.get_by_role("button", name="Show the worked solution").press("Enter")
    expect(asked).to_contain_text("Aim at the middle of what is wanted")
    picture(asked, "rig-solution")
    page = open_page(EXERCISE)
    asked = question(page, task.title)
    expect(asked.get_by_role("status").first).to_contain_text(f"The legs stand {degrees}° apart.")
    expect(asked.get_by_role("status").last).to_contain_text("Right.")
