"""A paper from the instructor's folder to the student's screen and back to its marks."""

import os
from collections.abc import Callable
from pathlib import Path

import nbformat
from playwright.sync_api import Page, expect

from ropecalc.teaching.papers.issue import Issue
from ropecalc.teaching.papers.making import make_issue
from ropecalc.teaching.papers.paper_notebook import paper_notebook
from ropecalc.teaching.results.tables import mark_returns
from ropecalc.units import Display
from tests.browser.conftest import Server
from tests.teaching.papers.examples import BANK, blueprint

OpenPage = Callable[..., Page]
WRITING_MS = 20_000
"""How long a busy machine may take over the file; what writes notebooks is imported only then."""


def picture(page: Page, name: str) -> None:
    folder = os.environ.get("ROPECALC_PICTURES")
    if folder:
        page.set_viewport_size({"width": 1366, "height": 5200})
        page.wait_for_timeout(500)
        page.screenshot(path=str(Path(folder) / f"{name}.png"))


def handed_out(folder: Path) -> Issue:
    issue = make_issue(blueprint(), ("heron-7",), BANK)
    (folder / "papers").mkdir(exist_ok=True)
    nbformat.write(paper_notebook(issue.papers[0]), folder / "papers" / "paper-heron-7.ipynb")
    return issue


def test_a_student_writes_a_paper_and_it_is_marked(open_page: OpenPage, server: Server) -> None:
    issue = handed_out(server.folder)
    start = open_page("lessons/00_start.ipynb")
    expect(start.get_by_text("paper-heron-7.ipynb: ready to be opened.")).to_be_visible()
    page = open_page("papers/paper-heron-7.ipynb")
    items = issue.papers[0].items
    questions = page.locator(".ropecalc-question")
    expect(questions).to_have_count(len(items))
    number = next(n for n, item in enumerate(items) if not item.options)
    choice = next(n for n, item in enumerate(items) if item.options)
    shown = Display().show(items[number].drawn.answer, items[number].template.kind)
    entry = questions.nth(number).get_by_role("textbox")
    entry.fill(shown)
    entry.press("Enter")
    expect(questions.nth(number)).to_contain_text(f"Kept: {shown}")
    questions.nth(choice).get_by_role("radio").nth(1).check()
    expect(questions.nth(choice)).to_contain_text("Kept: B")
    page.get_by_role("button", name="Hand in").click()
    expect(page.locator(".ropecalc-hand-in")).to_contain_text(
        "Written: handed-in-heron-7-", timeout=WRITING_MS
    )
    returns = sorted((server.folder / "papers").glob("handed-in-*.ipynb"))
    marked = mark_returns(issue, returns)
    assert marked.problems == ()
    (result,) = marked.results
    assert result.items[number].right
    assert result.items[choice].text == "B"
    assert "Traceback" not in page.locator(".jp-Notebook").inner_text()


def test_a_scenario_is_told_its_parts_stand_open_and_an_answer_is_written(
    open_page: OpenPage, server: Server
) -> None:
    (paper,) = make_issue(blueprint(scenarios=["high-outcrop"]), ("heron-8",), BANK).papers
    (server.folder / "papers").mkdir(exist_ok=True)
    nbformat.write(paper_notebook(paper), server.folder / "papers" / "paper-heron-8.ipynb")
    open_page("lessons/00_start.ipynb")  # which lets Jupyter trust the paper
    page = open_page("papers/paper-heron-8.ipynb")
    (told,) = paper.scenarios
    expect(page.locator(".ropecalc-situation")).to_contain_text(told.story(Display())[:60])
    questions = page.locator(".ropecalc-question")
    expect(questions).to_have_count(len(paper.items) + 1)
    expect(questions.nth(told.first + 2)).to_contain_text("go on with the numbers given here")
    last = questions.last
    last.get_by_label("Your answer").fill("A second line spares the lines, not the hub.")
    last.get_by_label("Your answer").press("Tab")
    expect(last).to_contain_text("What you wrote is kept.")
    picture(page, "paper-scenario")
    page.get_by_role("button", name="Hand in").click()
    expect(page.locator(".ropecalc-hand-in")).to_contain_text(
        "Written: handed-in-heron-8-", timeout=WRITING_MS
    )
    (handed,) = (server.folder / "papers").glob("handed-in-heron-8-*.ipynb")
    answers = nbformat.read(handed, as_version=4).metadata["ropecalc"]["answers"]
    assert answers[str(len(paper.items) + 1)].startswith("A second line")


def test_a_paper_put_there_while_the_course_is_open_says_how_it_is_started(
    open_page: OpenPage, server: Server
) -> None:
    open_page("lessons/00_start.ipynb")
    (paper,) = make_issue(blueprint(), ("heron-9",), BANK).papers
    (server.folder / "papers").mkdir(exist_ok=True)
    nbformat.write(paper_notebook(paper), server.folder / "papers" / "paper-heron-9.ipynb")
    page = open_page("papers/paper-heron-9.ipynb", state="untrusted")
    expect(page.get_by_text("The course has not yet looked at this paper")).to_be_visible()
    expect(page.locator(".ropecalc-question")).to_have_count(0)
    start = open_page("lessons/00_start.ipynb")
    start.get_by_role("button", name="Look again").click()
    expect(start.get_by_text("paper-heron-9.ipynb: ready to be opened.")).to_be_visible()
    page = open_page("papers/paper-heron-9.ipynb")
    expect(page.locator(".ropecalc-question")).to_have_count(len(paper.items))
