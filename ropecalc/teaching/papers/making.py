"""An examination's folder: papers and keys written into it, one made again, one student removed.

`handouts` holds what students get, `keys` what they must not see, `issue.json` what was asked of
whom. Nothing else about a student is kept.
"""

import csv
import io
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from ropecalc.planning.files import UTF8_MARK, write_whole
from ropecalc.teaching.papers.blueprint import Blueprint
from ropecalc.teaching.papers.choosing import Bank, choose, choose_scenarios
from ropecalc.teaching.papers.class_list import file_name, separator
from ropecalc.teaching.papers.issue import FILE, Issue, pass_mark, read_issue, write_issue
from ropecalc.teaching.papers.paper import Paper, make_paper
from ropecalc.teaching.papers.paper_notebook import as_text, paper_notebook
from ropecalc.teaching.papers.qti import class_package, paper_package
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.bank import BANK, BY_LESSON
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.units import Display

HANDOUTS, KEYS, RETURNS, RESULTS = "handouts", "keys", "returns", "results"
REPORT, WRITTEN = "report.txt", "open-answers.txt"
"""The page of results, and what was written to open questions; they name students in their
sentences, and marking writes them again."""
Progress = Callable[[int, int], object]
"""Called with how many papers are done, and of how many."""


@dataclass(frozen=True)
class Wishes:
    """How papers are written: the size of the paper, whether to print at all, the units."""

    size: str = "a4"
    printed: bool = True
    display: Display = field(default_factory=Display)


def _quiet(done: int, total: int) -> None:
    """Nobody is told."""


def make_issue(
    blueprint: Blueprint, students: tuple[str, ...], bank: Bank = BY_LESSON, source: str = ""
) -> Issue:
    """Everybody's paper. Raises :class:`PaperError` where blueprint and bank do not fit."""
    chosen = choose(blueprint, bank, source)
    scenarios = choose_scenarios(blueprint, SCENARIOS, source)
    papers = tuple(make_paper(blueprint, chosen, student, scenarios) for student in students)
    asked = (*chosen, *(part for one in scenarios for part in one.questions))
    return Issue(blueprint.title, pass_mark(blueprint, asked), papers)


def write_papers(
    issue: Issue, folder: Path, wishes: Wishes | None = None, progress: Progress = _quiet
) -> None:
    """Write ``issue`` with all papers and keys into ``folder``, which is made if need be.

    Raises :class:`PaperError` where papers were written before: those may be in students' hands.
    """
    if (folder / FILE).exists():
        raise PaperError(
            str(folder), "holds papers already. Name another folder, or delete this one yourself."
        )
    try:
        for part in (HANDOUTS, KEYS, RETURNS):
            (folder / part).mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise PaperError(str(folder), f"cannot be made ({error.strerror}).") from None
    write_issue(issue, folder)
    for done, paper in enumerate(issue.papers, 1):
        write_paper(paper, folder, wishes or Wishes())
        progress(done, len(issue.papers))


def write_paper(paper: Paper, folder: Path, wishes: Wishes) -> tuple[Path, ...]:
    """Write one student's notebook, paper and key (again) and return the files."""
    name = file_name(paper.student)
    page = folder / HANDOUTS / f"paper-{name}.ipynb"
    write_whole(page, as_text(paper_notebook(paper)))
    if not wishes.printed:
        return (page,)
    from ropecalc.teaching.papers.printing import key_pdf, paper_pdf  # slow to import

    printed = folder / HANDOUTS / f"paper-{name}.pdf"
    key = folder / KEYS / f"key-{name}.pdf"
    write_whole(printed, paper_pdf(paper, wishes.size, wishes.display))
    write_whole(key, key_pdf(paper, wishes.size, wishes.display))
    return page, printed, key


def write_again(folder: Path, student: str, wishes: Wishes) -> tuple[Path, ...]:
    """One student's files from what was kept. Raises :class:`PaperError` in words."""
    return write_paper(_paper(read_issue(folder, BANK), student, folder), folder, wishes)


def export_package(folder: Path, student: str = "", display: Display | None = None) -> Path:
    """Write a package for a learning platform beside the keys, for it holds the answers.

    It is that of ``student``, or without a name that of the whole class. Raises
    :class:`PaperError` in words.
    """
    issue = read_issue(folder, BANK)
    if student:
        path = folder / KEYS / _platform_name(student)
        content = paper_package(_paper(issue, student, folder), display)
    else:
        path = folder / KEYS / "class-platform.zip"
        content = class_package(issue.papers, display)
    write_whole(path, content)
    return path


def _platform_name(student: str) -> str:
    return f"platform-{file_name(student)}.zip"


def _paper(issue: Issue, student: str, folder: Path) -> Paper:
    try:
        return issue.paper(student)
    except KeyError as error:
        raise PaperError(str(folder), str(error.args[0])) from None


# --- removing a student -----------------------------------------------------------------------


def forget(folder: Path, student: str) -> tuple[Path, ...]:
    """Remove everything about ``student`` from the examination's folder; return what changed.

    Their papers, keys and returns are deleted, their rows taken out of tables, their paper out
    of the kept issue. Raises :class:`PaperError` for a folder or student that is not known.
    """
    issue = read_issue(folder, BANK)
    paper = _paper(issue, student, folder)
    changed = [*_files_about(paper, folder)]
    for path in changed:
        path.unlink()
    for path in sorted(folder.rglob("*.csv")):
        if _without_rows(path, paper):
            changed.append(path)
    return (*changed, write_issue(issue.without(student), folder))


def _files_about(paper: Paper, folder: Path) -> Iterator[Path]:
    name = file_name(paper.student)
    written = {f"paper-{name}.ipynb", f"paper-{name}.pdf", f"key-{name}.pdf", REPORT, WRITTEN}
    written.add(_platform_name(paper.student))
    for path in sorted(folder.rglob("*")):
        if not path.is_file() or path.suffix == ".csv" or path.name == FILE:
            continue
        if path.name in written or paper.code.encode() in path.read_bytes():
            yield path


def _without_rows(path: Path, paper: Paper) -> bool:
    """Take out of a table the rows with the student's name or code; whether there were any."""
    text = path.read_text(encoding="utf-8-sig", errors="replace")
    delimiter = separator(text)
    rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter))
    kept = [row for row in rows if not {paper.student, paper.code} & {c.strip() for c in row}]
    if len(kept) == len(rows):
        return False
    out = io.StringIO(newline="")
    out.write(UTF8_MARK if path.read_bytes().startswith(UTF8_MARK.encode()) else "")
    csv.writer(out, delimiter=delimiter).writerows(kept)
    write_whole(path, out.getvalue())
    return True
