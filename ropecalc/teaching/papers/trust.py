"""Which papers may run by themselves: those that hold nothing but what their numbers give.

A paper comes from an instructor's machine, so no list of delivered pages can name it. But every
cell of it follows from the questions it carries; one that holds more, or any output, is left
untrusted, and the course page says so instead of running it.
"""

import json
from pathlib import Path
from typing import Any

from ropecalc.teaching.papers.paper_notebook import KIND, foreign_code

FOLDER = "papers"
"""Where a student puts a paper, in the course's folder."""


def papers_in(course: Path) -> tuple[Path, ...]:
    """The notebooks in the course's folder for papers, sorted."""
    found = (course / FOLDER).glob("*.ipynb")
    return tuple(sorted(path for path in found if path.is_file()))


def is_plain_paper(document: Any) -> bool:
    """Whether a notebook (as read from JSON) is a paper and nothing else."""
    try:
        kind = document["metadata"]["ropecalc"]["kind"]
        shown = [cell["outputs"] for cell in document["cells"] if cell["cell_type"] == "code"]
    except (KeyError, TypeError):
        return False
    return kind == KIND and not any(shown) and not foreign_code(document)


def sign_papers(course: Path) -> tuple[Path, ...]:
    """Tell Jupyter to trust the plain papers in ``course``; return them."""
    papers = papers_in(course)
    if not papers:
        return ()
    import nbformat

    from ropecalc.teaching.notebooks import notary

    signer = notary()
    signed = []
    for path in papers:
        try:
            content = path.read_text(encoding="utf-8")
            plain = is_plain_paper(json.loads(content))
        except (OSError, ValueError, RecursionError):
            continue
        if plain:
            signer.sign(nbformat.reads(content, as_version=4))
            signed.append(path)
    return tuple(signed)
