"""How quickly a figure follows its sliders, against the same figure made with plain `interact`.

Run as a plain script; it prints ratios and asserts nothing about time. The contour map is moved
along every one of its sliders, in the panel and in a plain version (at the end of this file):
the same computation and the same picture, drawn as one would without a second thought, a new
matplotlib figure in every callback. The two take turns, so that whatever else the machine does
hits both. Measured are

- the time in Python, from a slider's value to a finished PNG;
- with Chromium and a real JupyterLab, from the key press to the new pixels. Left out, in a
  sentence, where there is no Chromium.
"""

import io
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))

from ropecalc.teaching.figures import CONTOUR_MAP
from ropecalc.teaching.figures.contour_map import LEVELS, ContourMap, rock
from ropecalc.teaching.panel import Panel
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display

COURSE = Path(__file__).parents[2]
KERNEL_AIM, SCREEN_AIM = 0.2, 0.35
MOVES, PRESSES = 8, 3
SLIDERS = [control for control in CONTOUR_MAP.controls if isinstance(control, Control)]
CHROMIUM = ("chromium", "chromium-browser", "google-chrome")
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync"]


def main() -> None:
    """Print both comparisons."""
    print(f"The figure “{CONTOUR_MAP.title}”, panel over plain interact.")
    compare("time in Python", in_python(), KERNEL_AIM)
    chromium = next((path for path in map(shutil.which, CHROMIUM) if path), None)
    if chromium is None:
        print("No Chromium: the time from key press to pixels was not measured.")
        return
    compare("key press to pixels", on_screen(chromium), SCREEN_AIM)


Times = dict[str, tuple[list[float], list[float]]]
"""For each slider the times in ms: panel, plain."""


def compare(what: str, times: Times, aim: float) -> None:
    """Print medians for each slider and the ratio over all."""
    print(f"\n{what}:")
    for key, (panel, plain) in times.items():
        quick, slow = statistics.median(panel), statistics.median(plain)
        print(f"  {key:14} {quick:6.1f} ms  {slow:6.1f} ms  {quick / slow:5.2f}")
    ratio = statistics.median(
        statistics.median(panel) / statistics.median(plain) for panel, plain in times.values()
    )
    print(f"  ratio (median of the sliders): {ratio:.2f}; aim: at most {aim}")


# --- in Python -----------------------------------------------------------------------------------


def in_python() -> Times:
    """Both versions at the same values of each slider in turn."""
    panel = Panel(CONTOUR_MAP, Session(Record.in_memory()))
    panel.predict(None)
    plain_picture(CONTOUR_MAP.start)
    times: Times = {}
    for control in SLIDERS:
        panel.back_to_start()
        times[control.key] = ([], [])
        for value in np.linspace(control.low, control.high, MOVES):
            values = CONTOUR_MAP.start | {control.key: float(value)}
            times[control.key][0].append(taken(lambda: panel.move(control.key, float(value))))  # noqa: B023
            times[control.key][1].append(taken(lambda: plain_picture(values)))  # noqa: B023
    return times


def taken(act: Callable[[], Any]) -> float:
    """How long it takes, in ms."""
    start = time.perf_counter()
    act()
    return 1000.0 * (time.perf_counter() - start)


# --- on the screen -------------------------------------------------------------------------------

PANEL_PAGE = """\
from ropecalc.teaching import open_lesson
open_lesson("along-the-raise").figure("contour-map")"""
PLAIN_PAGE = """\
from tests.bench.bench_figures import show_plain
show_plain()"""

WATCH = """() => {
  const shown = () => [...document.querySelectorAll('img.widget-image, .jp-RenderedImage img')]
    .find(img => img.naturalWidth > 400);
  const before = shown()?.src;
  window.pixels = new Promise(resolve => {
    let start;
    document.addEventListener('keydown', () => { start = performance.now(); },
      { capture: true, once: true });
    const look = new MutationObserver(() => {
      const img = shown() ?? document.querySelector('.jp-RenderedImage img');
      if (start === undefined || !img || img.src === before) return;
      look.disconnect();
      img.decode().catch(() => {}).then(() => requestAnimationFrame(
        () => requestAnimationFrame(() => resolve(performance.now() - start))));
    });
    look.observe(document.body,
      { subtree: true, childList: true, attributes: true, attributeFilter: ['src'] });
  });
}"""


def on_screen(chromium: str) -> Times:
    """Arrow keys on every slider of both pages in turn, in one Chromium on one JupyterLab."""
    from playwright.sync_api import sync_playwright

    times: Times = {control.key: ([], []) for control in SLIDERS}
    with served({"panel": PANEL_PAGE, "plain": PLAIN_PAGE}) as url, sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=chromium, args=FLAGS)
        size: Any = {"width": 1366, "height": 1000}
        pages = [browser.new_page(viewport=size) for _ in range(2)]
        for page, name in zip(pages, ("panel", "plain"), strict=True):
            page.goto(url(name))
            page.locator("[data-ropecalc=ready]").wait_for(timeout=120_000)
        pages[0].get_by_role("button", name="Skip").click()
        pages[0].locator(".noUi-handle").first.wait_for()
        pages[1].locator(".jp-RenderedImage img").wait_for()
        for press in range(PRESSES + 1):
            for index, control in enumerate(SLIDERS):
                for side, page in enumerate(pages):
                    page.bring_to_front()
                    handle = page.locator(".noUi-handle").nth(index)
                    handle.focus()
                    page.wait_for_timeout(120)
                    page.evaluate(WATCH)
                    at_top = handle.get_attribute("aria-valuenow") == handle.get_attribute(
                        "aria-valuemax"
                    )
                    page.keyboard.press("ArrowLeft" if at_top or press % 2 else "ArrowRight")
                    shown = page.evaluate(
                        "() => Promise.race([window.pixels, new Promise(r => "
                        "setTimeout(() => r(null), 5000))])"
                    )
                    if press and shown is not None:  # the first press warms up
                        times[control.key][side].append(float(shown))
        browser.close()
    return {key: pair for key, pair in times.items() if all(pair)}


@contextmanager
def served(pages: dict[str, str]) -> Iterator[Callable[[str], str]]:
    """A course folder with one page for each cell of code; gives a page's address by its name."""
    import nbformat
    from nbformat.sign import NotebookNotary

    with tempfile.TemporaryDirectory(prefix="ropecalc-bench-") as home:
        folder, data = Path(home) / "course", Path(home) / "data"
        (folder / "lessons").mkdir(parents=True)
        data.mkdir()
        shutil.copy(COURSE / "lessons" / "00_start.ipynb", folder / "lessons")
        notary = NotebookNotary(data_dir=str(data))
        for name, code in pages.items():
            notebook = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(code)])
            notebook.metadata["kernelspec"] = {
                "display_name": "Python 3 (ipykernel)",
                "language": "python",
                "name": "python3",
            }
            notebook.metadata["ropecalc"] = {"kind": "lesson"}
            path = folder / "lessons" / f"{name}.ipynb"
            nbformat.write(notebook, path)
            notary.sign(nbformat.read(path, as_version=4))
        environment = {
            **{key: value for key, value in os.environ.items() if key != "MPLBACKEND"},
            "JUPYTER_DATA_DIR": str(data),
            "JUPYTER_CONFIG_DIR": f"{home}/config",
            "JUPYTER_RUNTIME_DIR": f"{home}/runtime",
            "IPYTHONDIR": f"{home}/ipython",
            "ROPECALC_RECORD": f"{home}/record.sqlite",
            "PYTHONPATH": str(COURSE),
        }
        command = [sys.executable, "-m", "ropecalc.cli", "course", "--no-browser"]
        server = subprocess.Popen(
            [*command, "--folder", str(folder)],
            env=environment,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
        )
        try:
            assert server.stdout is not None
            start = next(line.strip() for line in server.stdout if "http://" in line)
            address, token = start.split("/lab")[0], start.split("token=")[1]
            yield (
                lambda name: (
                    f"{address}/lab/workspaces/{name}/tree/lessons/{name}.ipynb?token={token}"
                )
            )
        finally:
            server.terminate()
            server.wait(timeout=30)


# --- the same figure, plainly --------------------------------------------------------------------


def show_plain() -> None:
    """The figure as `interact` makes it: a new picture in every callback."""
    import ipywidgets as widgets
    import matplotlib.pyplot as plt

    sliders = {
        control.key: widgets.FloatSlider(
            min=control.low,
            max=control.high,
            step=control.step,
            value=control.default,
            description=control.key,
        )
        for control in SLIDERS
    }

    def draw(**values: float) -> None:
        result = CONTOUR_MAP.compute(values)
        plain_figure(result)
        plt.show()
        print(CONTOUR_MAP.summary(result, Display()))

    widgets.interact(draw, **sliders)


def plain_picture(values: dict[str, Any]) -> bytes:
    """One callback's work up to the PNG, as the inline pictures of a notebook are made."""
    import matplotlib.pyplot as plt

    result = CONTOUR_MAP.compute(values)
    figure = plain_figure(result)
    out = io.BytesIO()
    figure.savefig(out, format="png", bbox_inches="tight")
    plt.close(figure)
    CONTOUR_MAP.summary(result, Display())
    return out.getvalue()


def plain_figure(result: ContourMap) -> Any:
    """Map, inset and four strips, with everything that the panel's picture shows."""
    import matplotlib.pyplot as plt

    figure, axes = plt.subplots(1, 5, figsize=(9.4, 6.4), sharey=True, width_ratios=[3, 1, 1, 1, 1])
    plain_map(axes[0], result)
    inset = axes[0].inset_axes([0.5, 0.64, 0.48, 0.32])
    plain_scene(inset, result)
    inset.set(xlim=(-1, 5.2), ylim=(result.tip.z - 3.1, result.tip.z + 3.1), xticks=[], yticks=[])
    inset.set_title(f"clearance {result.clearance:.2f} m", fontsize=9)
    along, held = result.along, result.held
    for strip, title, profile, value in zip(
        axes[1:],
        (
            "Track lines\ntogether (kN)",
            "Haul line\n(kN)",
            "Take in\n(m per m)",
            "Hub, upward\n(kN)",
        ),
        (along.line_tension, along.haul_tension, along.take_in_rate, along.hub_uplift),
        (held.line_tension, held.haul_tension, held.take_in_rate, held.hub_uplift),
        strict=True,
    ):
        scale = 1.0 if "m per m" in title else 1000.0
        strip.plot(np.ma.masked_where(~result.printable, profile) / scale, result.heights, lw=2)
        bad = ~result.printable
        left, right = strip.get_xlim()
        strip.fill_betweenx(result.heights, left, right, where=bad, color="#e9e9ee", hatch="////")
        strip.axhline(result.station.z, color="#00735a")
        strip.set_title(title, fontsize=9.5)
        strip.grid(axis="x")
        if result.reliable:
            strip.plot(value / scale, result.station.z, "o")
            strip.annotate(f"{value / scale:.2g}", (value / scale, result.station.z))
    axes[1].axvline(result.allowed / 1000.0, ls="--", color="#00735a")
    return figure


def plain_map(axes: Any, result: ContourMap) -> None:
    """Lines of equal tension behind the scene."""
    field = result.field
    share = [ratio / (1 + ratio) for ratio in LEVELS]
    lines = axes.contour(field.x, field.z, field.share, levels=share, cmap="Blues")
    axes.clabel(lines, fmt={s: f"{r:g} W" for s, r in zip(share, LEVELS, strict=True)})
    allowed = result.allowed / result.load
    allowed /= 1 + allowed
    axes.contourf(field.x, field.z, field.share, levels=[-1, allowed], colors=["#d8ecd9"])
    axes.contour(field.x, field.z, field.share, levels=[allowed], colors=["#00735a"])
    plain_scene(axes, result)
    axes.plot(result.path, result.heights, ":k")
    axes.set(xlim=(-3, 24), ylim=(-3, 37), aspect="equal")
    axes.set_xlabel("out from the wall (m)")
    axes.set_ylabel("height of the attachment point (m)")
    axes.set_title("Equal tension of all track lines together", fontsize=10)
    for text, place in (
        ("inside the limit\nyou entered", (1.2, 7)),
        ("litter", (result.station.x, result.station.z - 2.5)),
        ("path that\njust clears", (result.path[8] + 1, result.heights[8])),
    ):
        axes.annotate(text, place, fontsize=9, bbox={"fc": "white", "ec": "none", "alpha": 0.8})


def plain_scene(axes: Any, result: ContourMap) -> None:
    """Rock, ropes and litter."""
    x, z = zip(*rock(result.tip), strict=True)
    axes.fill((*x, -9, -9), (*z, 30, -9), fc="#d9d2c5", ec="#6f6656")
    rig, here = result.rig, result.station
    top, start, hub = rig.haul_directional, rig.track_directional, rig.hub
    axes.fill([0, hub.x, 90, 90, 0], [-0.3, hub.z - 0.1, hub.z, -9, -9], fc="#e6e2d6")
    axes.plot([start.x, hub.x], [start.z, hub.z], ":")
    axes.plot([top.x, here.x], [top.z, here.z], lw=3)
    axes.plot([start.x, here.x, hub.x], [start.z, here.z, hub.z], "-.", lw=2)
    axes.plot([-1.3, top.x, -0.15], [30, top.z, 30], "k")
    axes.plot([top.x, start.x], [top.z, start.z], "o", mfc="white", mec="k")
    axes.plot(here.x, here.z, "o", color="#f4b63f")
    axes.fill(here.x + np.array([-0.3, -0.25, 0.25, 0.3]), here.z - np.array([1, 1.24, 1.24, 1]))
    axes.plot([result.tip.x, result.tip.x + result.clearance], [result.tip.z, result.tip.z], "|-k")


if __name__ == "__main__":
    main()
