"""A real course in a real browser.

`open_page("lessons/x.ipynb")` opens a course page in headless Chromium as a learner would, waits
until it has run, and returns the browser's page. What the browser complains of fails the test.
"""

import json
import os
import shutil
import subprocess
import sys
import urllib.request
import uuid
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import nbformat
import psutil
import pytest
from nbformat.sign import NotebookNotary
from playwright.sync_api import Browser, Page, sync_playwright

COURSE = Path(__file__).parents[2]
PARTS = ("lessons", "exercises", "solutions", "sites")
TRIAL = Path(__file__).parent / "trial.ipynb"

CHROMIUM = ("chromium", "chromium-browser", "google-chrome")
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
HARMLESS = ("Canceled future for",)
"""What JupyterLab complains of when a kernel is ended while it waits for it."""

RUN_MS = 60_000
"""How long a page may take to run. A busy machine takes ten seconds over a large one."""


@dataclass(frozen=True)
class Server:
    """A running course: its folder, its process, its address, and the token the address needs."""

    folder: Path
    process: int
    address: str
    token: str

    def url(self, path: str) -> str:
        """Where `path` (from the course folder) opens, with no page left open from before."""
        workspace = f"lab/workspaces/{uuid.uuid4()}"
        return f"{self.address}/{workspace}/tree/{path}?token={self.token}"

    def api(self, path: str, method: str = "GET") -> object:
        """What Jupyter's own interface answers for `path`."""
        request = urllib.request.Request(
            f"{self.address}/api/{path}",
            method=method,
            headers={"Authorization": f"token {self.token}"},
        )
        with urllib.request.urlopen(request, timeout=30) as answer:
            return json.loads(answer.read() or "null")

    def kill_kernels(self) -> None:
        """End what computes the pages as a crash would, without a word to anyone."""
        for child in psutil.Process(self.process).children():
            child.kill()

    def stop_kernels(self) -> None:
        """End what computes the pages, so that many tests do not fill the memory."""
        sessions = self.api("sessions")
        assert isinstance(sessions, list)
        for session in sessions:
            self.api(f"sessions/{session['id']}", "DELETE")


@pytest.fixture(scope="session")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """The course, served by `ropecalc course` from a copy, away from the user's own Jupyter."""
    home = tmp_path_factory.mktemp("course")
    folder = home / "course"
    for part in PARTS:
        if (COURSE / part).is_dir():
            leave = shutil.ignore_patterns(".ipynb_checkpoints")
            shutil.copytree(COURSE / part, folder / part, ignore=leave)
    _deliver_trial(folder, data=home / "data")
    environment = {
        **os.environ,
        "JUPYTER_DATA_DIR": str(home / "data"),
        "JUPYTER_CONFIG_DIR": str(home / "config"),
        "JUPYTER_RUNTIME_DIR": str(home / "runtime"),
        "IPYTHONDIR": str(home / "ipython"),
        "ROPECALC_RECORD": str(home / "record.sqlite"),
    }
    command = [sys.executable, "-m", "ropecalc.cli", "course", "--no-browser"]
    with (home / "errors.txt").open("w+") as errors:
        process = subprocess.Popen(
            [*command, "--folder", str(folder)],
            env=environment,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=errors,
            text=True,
        )
        try:
            assert process.stdout is not None
            url = next((line.strip() for line in process.stdout if "http://" in line), None)
            if url is None:
                errors.seek(0)
                pytest.fail(f"the course did not start:\n{errors.read()}")
            address, token = url.split("/lab")[0], url.split("token=")[1]
            yield Server(folder, process.pid, address, token)
        finally:
            process.terminate()
            try:
                process.wait(timeout=20)
            except subprocess.TimeoutExpired:
                process.kill()


def _deliver_trial(folder: Path, data: Path) -> None:
    """Lay the harness's own page among the lessons, trusted as a delivered page is."""
    page = folder / "lessons" / TRIAL.name
    shutil.copy(TRIAL, page)
    data.mkdir(exist_ok=True)
    NotebookNotary(data_dir=str(data)).sign(nbformat.read(page, as_version=4))


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The system's Chromium, without a window."""
    found = next((path for path in map(shutil.which, CHROMIUM) if path), None)
    if found is None:
        say = (
            "no Chromium was found, so it was not tested that the pages of the course open, run "
            "and answer in a real browser"
        )
        if os.environ.get("ROPECALC_REQUIRE_BROWSER") == "1":
            pytest.fail(say)
        pytest.skip(say)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=found, args=FLAGS)
        yield browser
        browser.close()


@pytest.fixture
def complaints() -> list[str]:
    """What the browser complains of; a test that provokes a complaint clears it."""
    return []


@pytest.fixture
def page(browser: Browser, server: Server, complaints: list[str]) -> Iterator[Page]:
    """An empty browser page with nothing remembered; at the end it must have no complaints."""
    context = browser.new_context(viewport={"width": 1366, "height": 850})
    page = context.new_page()

    def note(text: str) -> None:
        if not any(known in text for known in HARMLESS):
            complaints.append(text)

    page.on("console", lambda said: note(said.text) if said.type == "error" else None)
    page.on("pageerror", lambda error: note(str(error)))
    yield page
    context.close()
    server.stop_kernels()
    assert complaints == []


OpenPage = Callable[..., Page]


@pytest.fixture
def open_page(page: Page, server: Server) -> OpenPage:
    """Open a course page by its path and wait until it is `state` (default: has run)."""

    def open_page(path: str, state: str = "ready") -> Page:
        page.goto(server.url(path))
        settled = page.locator("[data-ropecalc]:not([data-ropecalc=preparing])")
        settled.wait_for(timeout=RUN_MS)
        assert settled.get_attribute("data-ropecalc") == state, page.inner_text(".ropecalc-notice")
        return page

    return open_page
