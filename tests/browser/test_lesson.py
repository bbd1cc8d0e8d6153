"""The lesson in a real browser: guess, move sliders by keyboard, answer, come back.

With `ROPECALC_PICTURES` set to a folder, the pictures of the README are written there.
"""

import os
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.sliders import Control, QuantitySlider
from ropecalc.units import Display

OpenPage = Callable[..., Page]
LESSON = "lessons/08_holding_a_litter_off.ipynb"
ALONG = "lessons/09_along_the_raise.ipynb"
FIGURES = LESSONS["holding-off"].figures
PANEL = ".ropecalc-panel"


def source(picture: Locator) -> str:
    return str(picture.get_attribute("src"))


def kilonewtons(panel: Locator, name: str) -> float:
    found = re.search(rf"{name} ([\d.]+) kN", panel.inner_text())
    assert found, panel.inner_text()
    return float(found[1])


def revealed(page: Page, number: int) -> Locator:
    """The panel with its numbers; a prediction of an earlier visit is remembered."""
    panel = page.locator(PANEL).nth(number)
    skip = panel.get_by_role("button", name="Skip")
    if skip.is_visible():
        skip.click()
    expect(panel).not_to_contain_text("once you have predicted or skipped")
    return panel


def choose(page: Page, name: str, unit: str) -> None:
    """Choose a unit on the page, e.g. "feet (ft)" for "Lengths in"."""
    boxes = page.locator(".widget-dropdown", has_text=name)
    boxes.locator("select").select_option(label=unit)


def shown(part: Locator) -> dict[str, float]:
    """What every slider in `part` shows, by its label; a screen reader says the same."""
    read = """sliders => sliders.map(slider => {
        const handle = slider.querySelector("[role=slider]");
        const says = name => handle.getAttribute(name);
        const text = name => slider.querySelector(name).textContent;
        return [says("aria-label"), text(".widget-label"),
                says("aria-valuetext"), text(".widget-readout")];
    })"""
    found = part.locator(".widget-slider").evaluate_all(read)
    for spoken_label, label, spoken, written in found:
        assert spoken_label == label
        assert spoken == written, label
    return {label: float(written.replace("−", "-")) for _, label, _, written in found}


def expected(control: Control, display: Display, value: float) -> tuple[str, float]:
    made = QuantitySlider(control, value, display, lambda _: None).slider
    return made.description, made.value


def until_shown(part: Locator, wanted: dict[str, float]) -> None:
    """Wait until the sliders have these labels and values, and see that they stay there."""
    page, stayed = part.page, 0
    for _ in range(80):
        found = shown(part)
        same = found.keys() == wanted.keys() and found == pytest.approx(wanted, abs=0.006)
        stayed = stayed + 1 if same else 0
        if stayed == 5:
            return
        page.wait_for_timeout(100)
    assert shown(part) == pytest.approx(wanted, abs=0.006)
    pytest.fail("the sliders did not come to rest")


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
    page = open_page(ALONG)
    panel = revealed(page, 0)
    moved(panel, "Outcrop tip, height", "ArrowLeft", 5)
    text = panel.inner_text()
    assert "Outcrop tip" in text
    assert "nan" not in text.lower().split()


def test_a_locked_tensioner_lowers_and_tightens(open_page: OpenPage) -> None:
    page = open_page(ALONG)
    panel = revealed(page, 1)
    before = kilonewtons(panel, "Allow for")
    moved(panel, "Then raised by", "ArrowLeft", 2)
    expect(panel).to_contain_text("lowered by 4.00 m")
    assert kilonewtons(panel, "Allow for") > before


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


SWITCHES = (
    ("Lengths in", "feet (ft)", {"length": "ft"}),
    ("Forces in", "pounds-force (lbf)", {"force": "lbf"}),
    ("Lengths in", "metres (m)", {"length": "m"}),
    ("Masses in", "pounds (lb)", {"mass": "lb"}),
    ("Forces in", "kilonewtons (kN)", {"force": "kN"}),
    ("Masses in", "kilograms (kg)", {"mass": "kg"}),
)


def test_no_slider_moves_by_itself_when_units_change(open_page: OpenPage) -> None:
    page = open_page(LESSON)
    working = page.locator(".ropecalc-working").first
    working.get_by_label("with numbers").check()
    expect(working.get_by_role("slider").first).to_be_visible()
    before = shown(working)
    units = {"force": "kN", "length": "m", "mass": "kg"}
    panels = [revealed(page, number) for number in range(len(FIGURES))]
    for name, label, change in SWITCHES * 2:
        choose(page, name, label)
        units |= change
        for panel, figure in zip(panels, FIGURES, strict=True):
            controls = (c for c in figure.controls if isinstance(c, Control))
            until_shown(panel, dict(expected(c, Display(**units), c.default) for c in controls))
    until_shown(working, before)
    for panel, figure in zip(panels, FIGURES, strict=True):
        words = figure.summary(figure.compute(figure.start), Display())
        expect(panel).to_contain_text(words)


def test_a_moved_slider_keeps_its_place_through_other_units(open_page: OpenPage) -> None:
    page = open_page(LESSON)
    panel = revealed(page, 0)
    moved(panel, "Litter, out from the wall", "ArrowLeft", 3)
    expect(panel).to_contain_text("litter 2.20 m out")
    choose(page, "Lengths in", "feet (ft)")
    expect(panel).to_contain_text("litter 7.22 ft out")
    choose(page, "Lengths in", "metres (m)")
    expect(panel).to_contain_text("litter 2.20 m out")


def test_a_prediction_is_remembered_when_the_page_is_opened_again(open_page: OpenPage) -> None:
    revealed(open_page(LESSON), 0)
    panel = open_page(LESSON).locator(PANEL).first
    expect(panel.get_by_role("slider").first).to_be_visible()
    expect(panel).not_to_contain_text("once you have predicted or skipped")
    expect(panel.get_by_role("button", name="Skip")).to_be_hidden()


def test_more_settings_unfold_by_keyboard(open_page: OpenPage) -> None:
    page = open_page(ALONG)
    panel = revealed(page, 0)
    folded = panel.locator(".widget-slider", has_text="Efficiency of a sheave")
    expect(folded).to_be_hidden()
    switch = panel.get_by_role("button", name="More settings")
    switch.focus()
    switch.press("Enter")
    expect(folded).to_be_visible()
    expect(panel).to_contain_text("One line shares with no other")


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


def test_a_formula_wider_than_the_page_does_not_carry_the_words_away(open_page: OpenPage) -> None:
    page = open_page(ALONG)
    working = page.locator(".ropecalc-working").first
    working.get_by_role("button", name="All steps").click()
    working.get_by_label("with numbers").check()
    formulas = working.locator("mjx-container[display='true']")
    expect(formulas.first).to_be_visible()
    page.wait_for_function(
        "() => [...document.querySelector('.ropecalc-working')"
        ".querySelectorAll('mjx-container[display=true]')]"
        ".some(formula => formula.scrollWidth > formula.clientWidth)"
    )  # one of them is wider, and scrolls by itself
    wide, seen = working.evaluate("part => [part.scrollWidth, part.clientWidth]")
    assert wide <= seen + 2
