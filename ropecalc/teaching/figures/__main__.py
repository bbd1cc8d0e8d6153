"""The pictures of every figure as files, to look at before they go to a learner.

`python -m ropecalc.teaching.figures FOLDER [KEY ...]` writes, for each figure (or those named),
its start and, one at a time, both ends of every slider and every option of every choice: the
picture as PNG and beside it the words under it as text.
"""

import argparse
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from ropecalc.planning.files import write_whole
from ropecalc.teaching.figures import FIGURES
from ropecalc.teaching.keyed import find
from ropecalc.teaching.panel import Choice, Figure, Look
from ropecalc.units import Display


def settings(figure: Figure) -> Iterator[tuple[str, dict[str, Any]]]:
    """A name for a file, and the values of the controls there."""
    yield "start", figure.start
    for control in figure.controls:
        if isinstance(control, Choice):
            ends: dict[str, Any] = {key.replace(" ", "-"): key for key, _ in control.options}
        else:
            ends = {"low": control.low, "high": control.high}
        for name, value in ends.items():
            yield f"{control.key}-{name}", figure.start | {control.key: value}


def write(figure: Figure, folder: Path, display: Display) -> list[Path]:
    """Write the figure's pictures and words into ``folder``; return the pictures' paths."""
    picture, look, written = figure.picture(), Look(display), []
    for name, values in settings(figure):
        result = figure.compute(values)
        picture.update(result, look)
        path = folder / f"{figure.key}-{name}.png"
        write_whole(path, picture.canvas.png())
        write_whole(path.with_suffix(".txt"), figure.summary(result, display) + "\n")
        written.append(path)
    return written


def main() -> None:
    """Write what the command line asks for and say how much it was."""
    parser = argparse.ArgumentParser(prog="python -m ropecalc.teaching.figures")
    parser.add_argument("folder", type=Path)
    parser.add_argument("keys", nargs="*", default=list(FIGURES))
    options = parser.parse_args()
    options.folder.mkdir(parents=True, exist_ok=True)
    for key in options.keys:
        written = write(find(FIGURES, key, "figure"), options.folder, Display())
        print(f"{key}: {len(written)} pictures in {options.folder}")


if __name__ == "__main__":
    main()
