"""The lesson in a real browser: guess, move sliders by keyboard, answer, come back.

With `ROPECALC_PICTURES` set to a folder, the pictures of the README are written there.
"""

import os
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

OpenPage = Callable[..., Page]
LESSON = "lessons/08_holding_a_litter_off.ipynb"
PANEL = ".ropecalc-panel"


def source(picture: Locator) -> str:
    return str(picture.get_attribute("src"))


def kilonewtons(panel: Locator, name: str) -> float:
    found = re.search(rf"{name} ([\d.]+) kN", panel.inner_text())
    assert found, panel.inner_text()
    return float(found[1])


def revealed(page: Page, number: int) -> Locator:
    panel = page.locator(PANEL).nth(number)
    panel.get_by_role("button", name="Skip").click()
    expect(panel).not_to_contain_text("appear once you have predicted or skipped")
    return panel


def moved(panel: Locator, label: str, key: str, times: int) -> None:
    """Press ``key`` on the slider called ``label`` and wait for the picture to follow."""
    before = source(panel.locator("img"))
    slider = panel.locator(".widget-slider", has_text=label).get_by_role("slider")
    slider.focus()
    for _ in range(times):
        slider.press(key)
    expect(panel.locator("img")).not_to_have_attribute("src", before)


def test_a_slider_moved_by_keyboard_changes_number_and_picture(open_page: OpenPage) -> None:
    page = open_page(LESSON)
    panel = revealed(page, 0)
    before = kilonewtons(panel, "tag line tension")
    moved(panel, "Litter, out from the wall", "ArrowRight", 3)
    expect(panel).not_to_contain_text(f"tag line tension {before:.2f} kN")
    assert kilonewtons(panel, "tag line tension") > before


def test_the_map_follows_its_outcrop_and_says_what_is_impossible(open_page: OpenPage) -> None:
    page = open_page(LESSON)
    panel = revealed(page, 1)
    moved(panel, "Outcrop tip, height", "ArrowLeft", 5)
    text = panel.inner_text()
    assert "Outcrop tip" in text
    assert "nan" not in text.lower().split()


def test_other_units_are_followed_by_everything_on_the_page(open_page: OpenPage) -> None:
    page = open_page(LESSON)
    panel = revealed(page, 0)
    page.locator(".widget-dropdown select").first.select_option(label="pounds-force (lbf)")
    try:
        expect(panel).to_contain_text("lbf")
        expect(page.locator(".ropecalc-fact").nth(1)).to_contain_text("lbf")
    finally:
        page.locator(".widget-dropdown select").first.select_option(label="kilonewtons (kN)")
        expect(panel).not_to_contain_text("lbf")


def test_a_working_unfolds_and_takes_the_readers_numbers(open_page: OpenPage) -> None:
    page = open_page(LESSON)
    working = page.locator(".ropecalc-working").first
    working.get_by_role("button", name="All steps").click()
    expect(working.locator("li")).to_have_count(7)
    working.get_by_label("with numbers").check()
    expect(working.get_by_role("slider").first).to_be_visible()
    expect(working).to_contain_text("Outward push of the attendant")


def test_no_code_is_seen(open_page: OpenPage) -> None:
    page = open_page(LESSON)
    assert "open_lesson" not in page.locator(".jp-Notebook").inner_text()
    expect(page.locator(".jp-Notebook .jp-InputArea-editor:visible")).to_have_count(0)


@pytest.mark.parametrize(
    ("path", "place", "name"),
    [
        (LESSON, f"{PANEL} >> nth=0", "lesson.png"),
        ("lessons/plan_a_raise.ipynb", ".jp-OutputArea img >> nth=0", "plan.png"),
    ],
)
def test_the_pictures_of_the_readme_can_be_taken(
    open_page: OpenPage, tmp_path: Path, path: str, place: str, name: str
) -> None:
    page = open_page(path)
    page.set_viewport_size({"width": 1366, "height": 3000})
    if path == LESSON:
        revealed(page, 0)
    folder = Path(os.environ.get("ROPECALC_PICTURES") or tmp_path)
    folder.mkdir(parents=True, exist_ok=True)
    page.locator(place).screenshot(path=folder / name)
    assert (folder / name).stat().st_size > 20_000
