"""A paper as a notebook: whole, harmless, and told from an altered one without running it."""

import json
from pathlib import Path
from typing import Any

import nbformat
import pytest
from nbformat.sign import NotebookNotary

from ropecalc.teaching.papers.paper_notebook import foreign_code, paper_notebook
from ropecalc.teaching.papers.trust import FOLDER, is_plain_paper, papers_in, sign_papers
from ropecalc.units import Display
from tests.teaching.papers.examples import blueprint, issue

PAPER = issue("Ada B.").papers[0]


def document(**answers: Any) -> Any:
    return json.loads(nbformat.writes(paper_notebook(PAPER, **answers)))


def test_it_is_a_notebook_that_asks_every_question() -> None:
    page = paper_notebook(PAPER)
    nbformat.validate(page)
    text = nbformat.writes(page)
    assert text.count("paper.question(") == len(PAPER.items)
    assert PAPER.code in text and "not a certification" in text


def test_it_holds_neither_seed_nor_key() -> None:
    text = json.dumps(document(), ensure_ascii=False)
    assert blueprint().seed not in text
    for item in PAPER.items:
        if item.options:
            continue
        shown = Display().show(item.drawn.answer, item.template.kind)
        assert shown not in text
        assert f"{item.drawn.answer:.6g}" not in text
        assert not any(mistake.key in text for mistake in item.template.mistakes)


def test_its_own_code_is_not_foreign_with_or_without_answers() -> None:
    assert not foreign_code(document())
    assert not foreign_code(document(answers={1: "B"}))
    assert is_plain_paper(document())


def add_code(page: Any) -> None:
    page["cells"].append({"cell_type": "code", "source": ["import os"], "outputs": []})


def alter_code(page: Any) -> None:
    page["cells"][2]["source"] = "paper.question(1); print(1)"


def drop_code(page: Any) -> None:
    del page["cells"][2]


def raw_cell(page: Any) -> None:
    page["cells"].append({"cell_type": "raw", "source": "<script>", "outputs": []})


def code_in_the_code(page: Any) -> None:
    evil = '"); import os  #'
    page["metadata"]["ropecalc"]["paper"]["code"] = evil
    page["cells"][1]["source"] = [s.replace(PAPER.code, evil) for s in page["cells"][1]["source"]]


def no_paper(page: Any) -> None:
    del page["metadata"]["ropecalc"]["paper"]


def odd_items(page: Any) -> None:
    page["metadata"]["ropecalc"]["paper"]["items"] = 3


@pytest.mark.parametrize(
    "change", [add_code, alter_code, drop_code, raw_cell, code_in_the_code, no_paper, odd_items]
)
def test_anything_else_is_foreign(change: Any) -> None:
    page = document()
    change(page)
    assert foreign_code(page)
    assert not is_plain_paper(page)


@pytest.mark.parametrize("page", [{}, [], 3, None, {"cells": []}, {"metadata": {"ropecalc": 1}}])
def test_what_is_no_paper_at_all_is_foreign(page: Any) -> None:
    assert foreign_code(page)
    assert not is_plain_paper(page)


def test_saved_output_is_not_trusted_because_a_page_would_show_it() -> None:
    page = document()
    page["cells"][1]["outputs"] = [
        {"output_type": "display_data", "data": {"text/html": "<img onerror=...>"}, "metadata": {}}
    ]
    assert not is_plain_paper(page)


def test_only_plain_papers_are_signed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("JUPYTER_DATA_DIR", str(tmp_path / "jupyter"))
    folder = tmp_path / FOLDER
    assert sign_papers(tmp_path) == papers_in(tmp_path) == ()
    folder.mkdir()
    (folder / "good.ipynb").write_text(json.dumps(document()), encoding="utf-8")
    page = document()
    add_code(page)
    page["cells"][-1] |= {"metadata": {}, "execution_count": None, "id": "x"}
    (folder / "evil.ipynb").write_text(json.dumps(page), encoding="utf-8")
    (folder / "broken.ipynb").write_bytes(b"\xff{")
    (folder / "deep.ipynb").write_text("[" * 200_000)
    assert [p.name for p in sign_papers(tmp_path)] == ["good.ipynb"]
    assert len(papers_in(tmp_path)) == 4
    notary = NotebookNotary()
    trusted = {
        name: notary.check_signature(nbformat.read(folder / name, as_version=4))
        for name in ("good.ipynb", "evil.ipynb")
    }
    assert trusted == {"good.ipynb": True, "evil.ipynb": False}
