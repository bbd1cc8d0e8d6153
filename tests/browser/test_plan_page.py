"""The page that plans a raise, in a real browser: a form filled in by keyboard and mouse."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

PAGE = "lessons/plan_a_raise.ipynb"


def test_a_site_is_opened_planned_refused_and_planned_again(
    open_page: Callable[..., Page],
) -> None:
    page = open_page(PAGE)
    page.mouse.move(600, 500)
    chooser = page.locator("select").filter(has_text="an empty form")
    while chooser.count() == 0:  # what is far below is drawn only when it comes into sight
        page.mouse.wheel(0, 800)
        page.wait_for_timeout(200)
    chooser.select_option("lower-heron-wall.toml")
    page.get_by_role("button", name="Open", exact=True).click()
    mass = page.get_by_label("Mass of everything that hangs")
    expect(mass).to_have_value("200 kg")

    show = page.get_by_role("button", name="Show the plan")
    mass.fill("200 kN")
    mass.press("Tab")
    show.click()
    expect(page.get_by_role("alert")).to_contain_text("is a force, but a mass is asked for")

    mass.fill("150 kg")
    mass.press("Tab")
    show.focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", name="Raise plan: Lower Heron Wall")).to_be_visible()
    expect(page.get_by_text("Load: 150 kg")).to_be_visible()
    drawing = page.get_by_role("img", name="Raise plan: Lower Heron Wall")
    assert drawing.evaluate("image => image.naturalWidth") > 500


def test_the_survey_sheet_is_saved(open_page: Callable[..., Page]) -> None:
    page = open_page(PAGE)
    page.mouse.move(600, 500)
    link = page.get_by_role("link", name="Survey sheet, A4 (PDF)")
    while link.count() == 0:
        page.mouse.wheel(0, 800)
        page.wait_for_timeout(200)
    with page.expect_download() as saved:
        link.click()
    assert saved.value.suggested_filename == "survey-sheet-a4.pdf"
    assert saved.value.path().read_bytes().startswith(b"%PDF")
