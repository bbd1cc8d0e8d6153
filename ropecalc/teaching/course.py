"""Opening the course: JupyterLab on its start page, with the course's own settings.

The settings and the JupyterLab extension are handed over when the server starts, from the
package's folder `lab`; nothing is installed into the reader's Jupyter.
"""

import os
import socket
import tempfile
from pathlib import Path

START = "lessons/00_start.ipynb"
"""The page the course opens on, from the course folder."""

_LAB = Path(__file__).parent / "lab"
_ADDRESS = "127.0.0.1"


def open_course(folder: str | None, *, port: int | None, browser: bool) -> int:
    """Serve the course in `folder` until interrupted; return the exit code.

    `folder` None looks for the course here, above here, and beside the package. `port` None
    takes a free one. `browser` False prints the address only. Raises `ValueError` if there is
    no course in the folder or the port is not to be had.
    """
    from ropecalc.teaching.notebooks import sign_delivered
    from ropecalc.teaching.papers.trust import sign_papers

    course = find_course(folder)
    if port is not None:
        _require_free(port)
    sign_delivered(course)
    sign_papers(course)
    with tempfile.TemporaryDirectory(prefix="ropecalc-", ignore_cleanup_errors=True) as workspace:
        _serve(course, port, browser, workspace)
    return 0


def find_course(folder: str | None) -> Path:
    """The course folder: `folder` itself, or the nearest that holds the start page."""
    if folder is not None:
        course = Path(folder).expanduser().resolve()
        if not (course / START).is_file():
            raise ValueError(
                f"there is no course in {course}: name the folder that holds {START} with --folder"
            )
        return course
    here = Path.cwd()
    for candidate in (here, *here.parents, Path(__file__).parents[2]):
        if (candidate / START).is_file():
            return candidate.resolve()
    raise ValueError(
        f"there is no course in {here}: start this command in the folder that holds {START}, "
        "or name that folder with --folder"
    )


def settings(course: Path, port: int | None, browser: bool, workspace: str) -> list[str]:
    """JupyterLab's command-line options for the course."""
    options = {
        "ServerApp.root_dir": course,
        "ServerApp.ip": _ADDRESS,
        "ServerApp.open_browser": browser,
        "ServerApp.answer_yes": True,  # one Ctrl+C is enough
        "ServerApp.allow_root": True,  # containers and class servers run as root, on loopback only
        "Application.log_level": "ERROR",
        # Also for what the server says to a page's kernel, on this machine.
        "KernelManager.transport_encryption": "auto",
        "LabApp.default_url": f"/lab/tree/{START}",
        "LabApp.extra_labextensions_path": _LAB / "labextensions",
        # A new start opens the start page only, and not every page left open the last time.
        "LabApp.workspaces_dir": workspace,
        # Neither news nor updates nor a catalogue of extensions is asked for on the network.
        "LabApp.check_for_updates_class": "jupyterlab.NeverCheckForUpdate",
        "LabApp.extension_manager": "readonly",
    }
    if port is not None:
        options |= {"ServerApp.port": port, "ServerApp.port_retries": 0}
    return [f"--{name}={value}" for name, value in options.items()]


def _serve(course: Path, port: int | None, browser: bool, workspace: str) -> None:
    from jupyterlab.labapp import LabApp

    earlier = os.environ.get("JUPYTER_CONFIG_PATH")
    os.environ["JUPYTER_CONFIG_PATH"] = os.pathsep.join(
        [str(_LAB / "config"), *([earlier] if earlier else [])]
    )
    # The kernel is the Python that runs the course, whatever else the reader has installed.
    os.environ["JUPYTER_PREFER_ENV_PATH"] = "1"
    server = LabApp.initialize_server(argv=settings(course, port, browser, workspace))
    # Jupyter would give the same address again, in a longer message.
    server.log.addFilter(lambda entry: "copy and paste" not in entry.getMessage())
    server.io_loop.add_callback(lambda: _tell(server.display_url.split()[0]))
    server.start()


def _tell(address: str) -> None:
    print(
        f"The course is at\n\n    {address}\n\n"
        "Open that address if no browser opens by itself. Leave this window open while you\n"
        "work; press Ctrl+C here to stop the course. Your answers are kept.",
        flush=True,
    )


def _require_free(port: int) -> None:
    if not 1 <= port <= 65535:
        raise ValueError(f"port {port} is no port: give a number from 1 to 65535")
    with socket.socket() as probe:
        # Without this a port just given up by another server counts as taken for a minute.
        if os.name == "posix":
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((_ADDRESS, port))
        except OSError:
            raise ValueError(
                f"port {port} is taken by another program, or not open to you: leave --port "
                "out, or name another number"
            ) from None
