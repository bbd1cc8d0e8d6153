"""All drawings on one page, to look at before they go to a learner.

`python -m ropecalc.teaching.questions.diagrams FILE.html [KEY ...]` draws each question (or those
named) three times.
"""

import argparse
from html import escape
from pathlib import Path

from ropecalc.planning.files import write_whole
from ropecalc.teaching.keyed import find
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.diagrams import DIAGRAMS, picture_of
from ropecalc.teaching.questions.diagrams.svg import img
from ropecalc.teaching.questions.draw import draw
from ropecalc.units import Display

_DRAWS = 3


def page(keys: list[str], display: Display) -> str:
    """The contact sheet as HTML."""
    rows = []
    for key in keys:
        pictures = (
            picture_of(draw(find(BANK, key, "question"), "", n), display) for n in range(_DRAWS)
        )
        shown = "".join(img(picture) for picture in pictures if picture is not None)
        rows.append(f"<h4>{escape(key)}</h4><div>{shown}</div>")
    style = "<style>body{font:12px sans-serif;background:#ddd}img{margin:4px}h4{margin:6px}</style>"
    return f'<!doctype html><meta charset="utf-8">{style}{"".join(rows)}'


def main() -> None:
    """Read the command line and write the page."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("keys", nargs="*")
    wishes = parser.parse_args()
    write_whole(wishes.file, page(wishes.keys or list(DIAGRAMS), Display()))


if __name__ == "__main__":
    main()
