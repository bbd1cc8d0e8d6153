"""A course page as a learner meets it: it runs by itself, answers, and leaves no trace."""

import json
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from ropecalc.teaching.notebooks import course_notebooks

OpenPage = Callable[..., Page]

TRIAL = "lessons/trial.ipynb"
START = "lessons/00_start.ipynb"
COURSE = Path(__file__).parents[2]
PAGES = [path.relative_to(COURSE).as_posix() for path in course_notebooks(COURSE)]


def contents(folder: Path) -> dict[str, bytes]:
    """Every file of the course, by name; Jupyter's own checkpoints are not the course."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and ".ipynb_checkpoints" not in path.parts
    }


def results(page: Page) -> Locator:
    """What the cells show; their code is in the page too, hidden."""
    return page.locator(".jp-OutputArea")


def scrolled(page: Page) -> float:
    top: float = page.locator(".jp-WindowedPanel-outer:visible").evaluate("e => e.scrollTop")
    return top


def test_page_runs_by_itself_and_shows_no_code(open_page: OpenPage) -> None:
    page = open_page(TRIAL)
    expect(page.get_by_role("heading", name="A trial page")).to_be_visible()
    expect(page.get_by_role("slider", name="Load, kg")).to_be_visible()
    expect(results(page).get_by_text("The last cell has run.")).to_be_attached()
    expect(page.locator(".cm-editor:visible")).to_have_count(0)
    expect(page.locator(".jp-InputPrompt:visible, .jp-OutputPrompt:visible")).to_have_count(0)
    expect(page.locator(".jp-NotebookPanel-toolbar:visible")).to_have_count(0)
    expect(page.locator(".jp-Dialog")).to_have_count(0)
    assert scrolled(page) == 0


def test_slider_moves_by_keyboard(open_page: OpenPage) -> None:
    page = open_page(TRIAL)
    page.get_by_role("slider", name="Load, kg").focus()
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    expect(page.get_by_text("The load is 130 kg.")).to_be_visible()
    page.keyboard.press("ArrowDown")
    expect(page.get_by_text("The load is 120 kg.")).to_be_visible()


def test_keyboard_focus_can_be_seen(open_page: OpenPage) -> None:
    page = open_page(TRIAL)
    handle = page.get_by_role("slider", name="Load, kg")
    handle.focus()
    page.keyboard.press("ArrowRight")
    outline = handle.evaluate("e => getComputedStyle(e).outline")
    assert re.search(r"solid 3px|3px.*solid", outline), outline


def test_picture_is_described(open_page: OpenPage) -> None:
    page = open_page(TRIAL)
    expect(page.get_by_role("img", name="A white square.")).to_be_attached()


def test_answering_leaves_the_files_alone(open_page: OpenPage, server) -> None:
    before = contents(server.folder)
    page = open_page(TRIAL)
    page.get_by_role("slider", name="Load, kg").focus()
    page.keyboard.press("ArrowRight")
    expect(page.get_by_text("The load is 110 kg.")).to_be_visible()
    page.keyboard.press("Control+s")
    page.get_by_role("menuitem", name="File").click()
    page.locator(".lm-Menu-item[data-command='docmanager:save']").click()
    expect(page.locator(".lm-mod-current.jp-mod-dirty")).to_have_count(0)
    page.locator(".lm-TabBar-tab.lm-mod-current .lm-TabBar-tabCloseIcon:visible").first.click()
    expect(page.locator(".jp-NotebookPanel")).to_have_count(0)
    expect(page.locator(".jp-Dialog")).to_have_count(0)
    assert contents(server.folder) == before


def test_keys_and_clicks_cannot_change_the_page(open_page: OpenPage) -> None:
    page = open_page(TRIAL)
    cells = page.locator(".jp-Notebook-cell")
    count = cells.count()
    text = cells.first.inner_text()
    cells.first.click()
    for key in ("d", "d", "x", "a", "b", "v", "m", "y", "Delete", "Enter", "Shift+Enter"):
        page.keyboard.press(key)
    page.locator(".jp-MarkdownCell p").first.dblclick()
    page.locator(".jp-MarkdownCell p").first.click(button="right")
    expect(cells).to_have_count(count)
    expect(page.locator(".cm-editor:visible, .lm-Menu:visible")).to_have_count(0)
    assert cells.first.inner_text() == text


def test_altered_page_waits_to_be_asked(open_page: OpenPage, server) -> None:
    altered = server.folder / "lessons" / "altered.ipynb"
    page_file = json.loads((server.folder / TRIAL).read_text(encoding="utf-8"))
    page_file["cells"][-1]["source"] = ["print('Something else has run.')"]
    altered.write_text(json.dumps(page_file), encoding="utf-8")
    try:
        page = open_page("lessons/altered.ipynb", state="untrusted")
        expect(page.get_by_text("not as the course delivered it")).to_be_visible()
        page.wait_for_timeout(2000)
        expect(results(page).get_by_text("Something else has run.")).to_have_count(0)
        expect(page.locator(".cm-editor:visible")).to_have_count(0)
        page.get_by_role("button", name="Run this page").click()
        expect(results(page).get_by_text("Something else has run.")).to_be_attached(timeout=30_000)
        expect(page.get_by_role("slider", name="Load, kg")).to_be_visible()
    finally:
        altered.unlink()


def test_failing_page_says_what_to_do(open_page: OpenPage, server) -> None:
    """A page whose cell raises shows a sentence and no report of the error."""
    broken = server.folder / "lessons" / "broken.ipynb"
    page_file = json.loads((server.folder / TRIAL).read_text(encoding="utf-8"))
    page_file["cells"][1]["source"] = ["raise ValueError('this is meant for editors')"]
    broken.write_text(json.dumps(page_file), encoding="utf-8")
    try:
        page = open_page("lessons/broken.ipynb", state="untrusted")
        page.get_by_role("button", name="Run this page").click()
        expect(page.get_by_text("could not be worked out")).to_be_visible(timeout=30_000)
        expect(page.get_by_role("button", name="Start this page afresh")).to_be_visible()
        assert "Traceback" not in page.locator(".jp-Notebook").inner_text()
        assert "meant for editors" not in page.locator(".jp-Notebook").inner_text()
    finally:
        broken.unlink()


def test_page_says_when_no_kernel_starts(page: Page, server, complaints: list[str]) -> None:
    refuse = {"status": 500, "body": json.dumps({"message": "no room"})}
    page.route(
        "**/api/sessions*",
        lambda route: (
            route.fulfill(**refuse) if route.request.method == "POST" else route.fallback()
        ),
    )
    page.goto(server.url(TRIAL))
    page.get_by_role("button", name="Ok").click(timeout=30_000)
    expect(page.get_by_text("This page could not be started.")).to_be_visible()
    complaints.clear()


def test_page_says_when_its_kernel_has_died(open_page: OpenPage, server) -> None:
    page = open_page(TRIAL)
    server.kill_kernels()
    expect(page.get_by_text("What computes this page has stopped")).to_be_visible(timeout=30_000)
    page.get_by_role("button", name="Ok").click()
    page.get_by_role("button", name="Start this page afresh").click()
    expect(page.locator("[data-ropecalc=ready]")).to_be_attached(timeout=30_000)
    page.get_by_role("slider", name="Load, kg").focus()
    page.keyboard.press("ArrowRight")
    expect(page.get_by_text("The load is 110 kg.")).to_be_visible()


def test_page_can_be_started_afresh(open_page: OpenPage) -> None:
    page = open_page(TRIAL)
    page.get_by_role("slider", name="Load, kg").focus()
    page.keyboard.press("ArrowRight")
    expect(page.get_by_text("The load is 110 kg.")).to_be_visible()
    page.get_by_role("menuitem", name="View").click()
    page.get_by_text("Start this page afresh").click()
    expect(page.get_by_text("The load is 100 kg.")).to_be_visible(timeout=30_000)
    expect(page.locator("[data-ropecalc=ready]")).to_be_attached(timeout=30_000)


@pytest.mark.parametrize("place", [".jp-OutputArea", ".jp-RenderedMarkdown"])
def test_links_open_in_the_same_window(open_page: OpenPage, place: str) -> None:
    page = open_page(TRIAL)
    page.locator(f"{place} a:has-text('start page')").click()
    expect(page.locator(".lm-TabBar-tab.lm-mod-current:has-text('00_start')")).to_be_visible()
    expect(page.locator(".jp-NotebookPanel")).to_have_count(2)
    assert len(page.context.pages) == 1
    ready = page.locator(".jp-NotebookPanel:not(.lm-mod-hidden)[data-ropecalc=ready]")
    expect(ready).to_be_attached(timeout=30_000)


def test_editor_can_reveal_the_code_and_is_asked_to_save(open_page: OpenPage) -> None:
    page = open_page(TRIAL)
    page.get_by_role("menuitem", name="View").click()
    page.get_by_text("Show the code of this page (for editors)").click()
    expect(page.locator(".cm-editor:visible").first).to_be_visible()
    expect(page.locator(".jp-NotebookPanel-toolbar")).to_be_visible()
    page.locator(".cm-content:visible").first.click()
    page.keyboard.type("# a remark\n")
    expect(page.locator(".lm-TabBar-tab.jp-mod-dirty")).to_be_visible()
    page.locator(".lm-TabBar-tab.lm-mod-current .lm-TabBar-tabCloseIcon:visible").first.click()
    page.get_by_role("button", name="Discard").click()
    expect(page.locator(".jp-NotebookPanel")).to_have_count(0)


def test_the_code_can_be_revealed_while_the_page_runs(open_page: OpenPage, server) -> None:
    """What the run says when it ends belongs to a page that is read, no longer to this one."""
    slow = server.folder / "lessons" / "slow.ipynb"
    page_file = json.loads((server.folder / TRIAL).read_text(encoding="utf-8"))
    page_file["cells"][-1]["source"] = ["import time; time.sleep(6); print('Slept well.')"]
    slow.write_text(json.dumps(page_file), encoding="utf-8")
    try:
        page = open_page("lessons/slow.ipynb", state="untrusted")
        page.get_by_role("button", name="Run this page").click()
        expect(page.get_by_role("slider", name="Load, kg")).to_be_visible(timeout=30_000)
        expect(page.locator("[data-ropecalc=preparing]")).to_be_attached()
        page.get_by_role("menuitem", name="View").click()
        page.get_by_text("Show the code of this page (for editors)").click()
        expect(page.locator(".cm-editor:visible").first).to_be_visible()
        expect(results(page).get_by_text("Slept well.")).to_be_attached(timeout=30_000)
        page.wait_for_timeout(500)
        expect(page.locator("[data-ropecalc]")).to_have_count(0)
        expect(page.locator(".ropecalc-notice")).to_have_count(0)
    finally:
        slow.unlink()


@pytest.mark.parametrize("path", PAGES)
def test_every_page_of_the_course_opens(open_page: OpenPage, path: str) -> None:
    """It runs by itself, shows no code, and whatever takes the keyboard has a name."""
    page = open_page(path)
    expect(page.locator(".cm-editor:visible")).to_have_count(0)
    expect(page.locator("h1:visible").first).to_be_visible()
    expect(page.locator(".jupyter-widgets-error-widget")).to_have_count(0)
    assert unnamed(page) == []
    assert scrolled(page) == 0


def unnamed(page: Page) -> list[str]:
    """The sliders, fields, buttons and pictures that a screen reader could not name."""
    found: list[str] = page.locator(".jp-Notebook").evaluate(
        """root => [...root.querySelectorAll(
             '.jp-OutputArea :is([role=slider], input, select, textarea, button, img)')]
           .filter(e => e.offsetParent !== null && e.type !== 'hidden')
           .filter(e => !(e.getAttribute('aria-label') || e.getAttribute('aria-labelledby')
             || e.title || e.alt || e.textContent.trim()
             || [...(e.labels ?? [])].some(label => label.textContent.trim())))
           .map(e => e.outerHTML.slice(0, 200))"""
    )
    return found
