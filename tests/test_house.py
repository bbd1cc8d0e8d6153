"""The house around the course: what an import costs, the command line, and `make course`."""

import os
import shutil
import signal
import socket
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Callable
from pathlib import Path

import pytest

from ropecalc import __version__
from ropecalc.cli import main

COURSE = Path(__file__).parents[1]
START = "lessons/00_start.ipynb"
HEAVY = {"sympy", "matplotlib", "ipywidgets", "IPython", "numpy", "jupyterlab"}


def imported_by(statement: str) -> set[str]:
    """The top-level modules a fresh Python holds after `statement`."""
    code = f"{statement}\nimport sys\nprint(*sorted({{n.split('.')[0] for n in sys.modules}}))"
    ran = subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True)
    return set(ran.stdout.split())


@pytest.mark.parametrize("statement", ["import ropecalc", "import ropecalc.cli"])
def test_import_is_quick(statement: str) -> None:
    assert imported_by(statement) & HEAVY == set()


def test_heavy_modules_would_be_seen() -> None:
    assert "sympy" in imported_by("import ropecalc, sympy")


def test_command_line_needs_a_command(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        main([])
    assert stop.value.code == 2
    assert "COMMAND" in capsys.readouterr().err


def test_command_line_says_its_version(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main(["--version"])
    assert __version__ in capsys.readouterr().out


def test_what_the_user_can_put_right_is_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["course", "--folder", str(tmp_path)]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert "there is no course in" in said.err


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


def _isolated(home: Path) -> dict[str, str]:
    return {
        **os.environ,
        "JUPYTER_DATA_DIR": str(home / "data"),
        "JUPYTER_CONFIG_DIR": str(home / "config"),
        "JUPYTER_RUNTIME_DIR": str(home / "runtime"),
    }


def _make_course(port: int) -> list[str]:
    return ["make", "course", f"ARGS=--no-browser --port {port}"]


def _its_command(port: int) -> list[str]:
    return [sys.executable, "-m", "ropecalc.cli", "course", "--no-browser", "--port", str(port)]


def _made() -> bool:
    """Whether `make course` has nothing to install here (it would change the Python in use)."""
    if shutil.which("make") is None or Path(sys.prefix) != COURSE / ".venv":
        return False
    return subprocess.run(["make", "-q", ".venv/course"], cwd=COURSE, check=False).returncode == 0


@pytest.mark.skipif(os.name != "posix", reason="signals a process group; not tested elsewhere")
def _press_ctrl_c(process: "subprocess.Popen[str]") -> None:
    """Without a terminal Jupyter ends by KeyboardInterrupt, which may come while code runs that
    swallows it; then it is pressed again, as anybody would."""
    for patience in (15, 15, 30):
        os.killpg(process.pid, signal.SIGINT)
        try:
            process.wait(timeout=patience)
            return
        except subprocess.TimeoutExpired:
            continue
    pytest.fail("the course goes on after Ctrl+C was pressed three times")


def test_course_opens_on_its_start_page_and_stops(tmp_path: Path) -> None:
    """The start page answers on a free port, its contents too, and Ctrl+C ends it all.

    It is `make course` where its set-up is up to date, and else the command that it runs.
    """
    port = free_port()
    command: Callable[[int], list[str]] = _make_course if _made() else _its_command
    process = subprocess.Popen(
        command(port),
        cwd=COURSE,
        env=_isolated(tmp_path),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
        start_new_session=True,
    )
    try:
        assert process.stdout is not None
        url = next(line.strip() for line in process.stdout if "http://" in line)
        address, token = url.split("/lab")[0], url.split("token=")[1]
        assert f":{port}/lab/tree/{START}" in url
        with urllib.request.urlopen(url, timeout=30) as answer:
            assert answer.status == 200
            page = answer.read().decode()
        assert "jupyter-config-data" in page
        assert "ropecalc-lab" in page  # the extension that makes pages of notebooks is served
        assert "disabledExtensions" in page
        with urllib.request.urlopen(
            f"{address}/api/contents/{START}?token={token}", timeout=30
        ) as answer:
            assert '"ropecalc": {"kind": "start"}' in answer.read().decode()
        with pytest.raises(urllib.error.HTTPError, match="403"):
            urllib.request.urlopen(f"{address}/api/contents/{START}", timeout=30)
        _press_ctrl_c(process)
    finally:
        if process.poll() is None:
            os.killpg(process.pid, signal.SIGKILL)
    with socket.socket() as probe:
        assert probe.connect_ex(("127.0.0.1", port)) != 0, "the course is still being served"
