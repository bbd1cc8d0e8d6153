"""All papers of one examination as the instructor keeps them: one file, without the seed.

The numbers of every paper are stored, so that it can be printed and marked again in any later
release, whatever becomes of the way in which numbers are drawn.
"""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from ropecalc import __version__
from ropecalc.planning.files import write_whole
from ropecalc.teaching.papers.blueprint import Blueprint
from ropecalc.teaching.papers.paper import (
    OtherOptionsError,
    Paper,
    item_as_document,
    item_from,
    scenario_as_document,
    scenario_from,
)
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.scenarios import PARTS

FILE = "issue.json"
FORMAT = 1


@dataclass(frozen=True)
class Issue:
    """One examination: its papers by student, and what passing takes (a share of the marks)."""

    title: str
    pass_mark: float
    papers: tuple[Paper, ...]

    def paper(self, student: str) -> Paper:
        """The paper of ``student``. Raises KeyError in words."""
        for paper in self.papers:
            if paper.student == student:
                return paper
        raise KeyError(f"nobody called “{student}” has a paper of “{self.title}”")

    def without(self, student: str) -> "Issue":
        """The same without one student's paper."""
        return replace(self, papers=tuple(p for p in self.papers if p.student != student))


def pass_mark(blueprint: Blueprint, chosen: Sequence[Question]) -> float:
    """The share of the marks that passing takes: the judges' mean where they judged."""
    if blueprint.judged:
        return sum(blueprint.judged[t.key] for t in chosen) / len(chosen)
    assert blueprint.pass_mark is not None
    return blueprint.pass_mark


def write_issue(issue: Issue, folder: Path) -> Path:
    """Write ``issue`` into ``folder`` and return the file."""
    document = {
        "format": FORMAT,
        "made_with": __version__,
        "title": issue.title,
        "pass_mark": issue.pass_mark,
        "papers": [_as_document(paper) for paper in issue.papers],
    }
    path = folder / FILE
    write_whole(path, json.dumps(document, indent=1, ensure_ascii=False) + "\n")
    return path


def _as_document(paper: Paper) -> dict[str, Any]:
    return {
        "student": paper.student,
        "code": paper.code,
        "minutes": paper.minutes,
        "formula_sheet": paper.formula_sheet,
        "items": [item_as_document(item) for item in paper.items],
        **_scenarios(paper),
        **({"confidence": True} if paper.confidence else {}),
    }


def _scenarios(paper: Paper) -> dict[str, Any]:
    """Nothing for a paper without scenarios, so that its file stays as it always was."""
    told = [scenario_as_document(one) for one in paper.scenarios]
    return {"scenarios": told} if told else {}


def read_issue(folder: Path, bank: Mapping[str, Question]) -> Issue:
    """The issue kept in ``folder``. Raises :class:`PaperError` for a file that is not one."""
    path = folder / FILE
    try:
        document = json.loads(path.read_text(encoding="utf-8"))
        if document["format"] != FORMAT:
            raise PaperError(str(path), "was written by another release of this course.")
        papers = tuple(_paper(one, document["title"], bank, path) for one in document["papers"])
        return Issue(str(document["title"]), float(document["pass_mark"]), papers)
    except OSError as error:
        raise PaperError(str(path), f"cannot be read ({error.strerror}).") from None
    except PaperError:
        raise
    except (ValueError, KeyError, TypeError, RecursionError):
        raise PaperError(
            str(path), "is damaged, or no file of papers. Take it from your backup."
        ) from None


def _paper(one: Any, title: str, bank: Mapping[str, Question], path: Path) -> Paper:
    items = []
    for entry in one["items"]:
        template = bank.get(entry["question"]) or PARTS.get(entry["question"])
        if template is None:
            raise PaperError(
                str(path),
                f"asks “{entry['question']}”, which this release does not know. Use release "
                "of the file's “made_with”.",
            )
        try:
            items.append(item_from(entry, template))
        except OtherOptionsError as error:
            raise PaperError(str(path), str(error)) from None
    told = tuple(scenario_from(entry) for entry in one.get("scenarios", ()))
    for about in told:
        asked = tuple(item.template for item in items[about.first - 1 : about.last])
        if asked != about.scenario.questions:
            raise PaperError(
                str(path),
                f"asks the scenario “{about.scenario.key}” as this release does not have it. Use "
                "the release of the file's “made_with”.",
            )
    paper = Paper(
        title,
        one["student"],
        one["minutes"],
        tuple(items),
        one["formula_sheet"],
        told,
        bool(one.get("confidence", False)),
    )
    if paper.code != one["code"]:
        raise PaperError(
            str(path), f"was altered: the paper of {paper.student} no longer fits its code."
        )
    return paper
