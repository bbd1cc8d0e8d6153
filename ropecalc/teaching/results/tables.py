"""Grades and figures as tables (CSV, for any spreadsheet) and as a page of text."""

import csv
import io
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from ropecalc import cautions
from ropecalc.planning.files import UTF8_MARK, write_all
from ropecalc.teaching.confidence import LEVELS
from ropecalc.teaching.papers.issue import Issue
from ropecalc.teaching.papers.making import REPORT, WRITTEN
from ropecalc.teaching.papers.paper import Item, Paper, by_hand
from ropecalc.teaching.results.analysis import ClassFigures, ItemFigures, analyse
from ropecalc.teaching.results.grading import PaperResult, Standing, grade, standing
from ropecalc.teaching.results.returns import Problem, Return, read_returns
from ropecalc.teaching.results.sureness import anything_said, sure_mistakes, sureness
from ropecalc.teaching.scenarios.content import Judged
from ropecalc.units import Display

Cell = str | int | float
Row = Sequence[Cell]


@dataclass(frozen=True)
class Marked:
    """A class's returned papers, marked. ``figures`` are None where nothing came back."""

    issue: Issue
    returns: tuple[Return, ...]
    results: tuple[PaperResult, ...]
    problems: tuple[Problem, ...]
    figures: ClassFigures | None

    @property
    def missing(self) -> tuple[str, ...]:
        """Students whose paper did not come back, or not in a way that could be used."""
        back = {result.paper.student for result in self.results}
        return tuple(p.student for p in self.issue.papers if p.student not in back)

    def standing(self, result: PaperResult) -> Standing:
        """Where ``result`` lies against the pass mark and its borderline."""
        error = self.figures.error if self.figures else None
        return standing(result, self.issue.pass_mark, error)


def mark_returns(issue: Issue, paths: Iterable[Path]) -> Marked:
    """Read and mark the returns in ``paths``."""
    returns, problems = read_returns(paths, issue)
    results = tuple(grade(one.paper, one.answers, one.sure) for one in returns)
    figures = analyse(results) if results else None
    return Marked(issue, returns, results, problems, figures)


def write_results(marked: Marked, folder: Path) -> tuple[Path, ...]:
    """Write grades, questions, mistakes (CSV) and a report (text) into ``folder``.

    Where students said how sure they were, a table of that is written as well, and where there are
    open questions, a text with everybody's answers to them.
    """
    folder.mkdir(parents=True, exist_ok=True)
    contents: dict[str | Path, str | bytes] = {
        folder / "grades.csv": _csv(grades_table(marked)),
        folder / "questions.csv": _csv(questions_table(marked)),
        folder / "mistakes.csv": _csv(mistakes_table(marked)),
        folder / REPORT: report(marked) + "\n",
    }
    if anything_said(marked.results):
        contents[folder / "confidence.csv"] = _csv(confidence_table(marked))
    if _open(marked):
        contents[folder / WRITTEN] = written_text(marked)
    write_all(contents)
    return tuple(Path(path) for path in contents)


def grades_table(marked: Marked) -> list[Row]:
    """One row a student: marks, standing, what had to be right and was not, each verdict."""
    count = len(marked.issue.papers[0].items) if marked.issue.papers else 0
    head = ["student", "code", "marks", "of", "standing", "must-pass missed"]
    by_hand = [f"points {n} (of {len(one.points)})" for n, one in _open(marked)]
    rows: list[Row] = [[*head, *(str(n) for n in range(1, count + 1)), *by_hand]]
    points = {one.paper.code: one.points for one in marked.returns}
    for result in marked.results:
        paper = result.paper
        rows.append(
            [
                paper.student,
                paper.code,
                result.marks,
                len(result.items),
                marked.standing(result),
                " ".join(map(str, result.missed)),
                *(item.mistake or item.verdict or "blank" for item in result.items),
                *(points[paper.code].get(n, "") for n, _ in _open(marked)),
            ]
        )
    return rows + [[student, "", "", count, "not returned", ""] for student in marked.missing]


def _open(marked: Marked) -> list[tuple[int, Judged]]:
    """The open questions with their numbers; every paper of an examination has the same."""
    papers = marked.issue.papers[:1]
    return [
        (number, judged)
        for paper in papers
        for number, judged in enumerate(paper.open_questions, len(paper.items) + 1)
    ]


def written_text(marked: Marked) -> str:
    """What everybody wrote to the open questions, each with the points of a good answer."""
    lines: list[str] = []
    for number, judged in _open(marked):
        lines += [f"{number}. {judged.title}", judged.question, "", by_hand(judged)]
        lines += [f"  {place}. {point}" for place, point in enumerate(judged.points, 1)]
        for one in marked.returns:
            text = one.answers.get(number, "").strip() or "(nothing)"
            lines += ["", f"--- {one.paper.student}", text]
        lines += ["", ""]
    return "\n".join(lines)


def questions_table(marked: Marked) -> list[Row]:
    """One row a question: what it is, how many were right, how hard and how telling, and flags.

    Open questions come last: they have no right and wrong, so their facility is the mean share
    of the points that were given.
    """
    head = ["number", "question", "title", "answered with", "part of"]
    rows: list[Row] = [[*head, "asked", "right", "blank", "facility", "discrimination", "flags"]]
    paper = marked.results[0].paper if marked.results else None
    if paper is None:
        return rows
    for number, (figures, item) in enumerate(zip(_items(marked), paper.items, strict=True), 1):
        rows.append(
            [
                number,
                figures.key,
                figures.title,
                _answered_with(item),
                _part_of(paper, number),
                figures.asked,
                figures.right,
                figures.blank,
                _share(figures.facility),
                _share(figures.discrimination),
                "; ".join(figures.flags),
            ]
        )
    return rows + [_open_row(marked, number, judged) for number, judged in _open(marked)]


def _answered_with(item: Item) -> str:
    """A number with its unit, letters in order, settings: as the answer sheet says it."""
    return "letter" if item.options else item.template.on_paper(Display()) or "number"


def _part_of(paper: Paper, number: int) -> str:
    """The scenario that question ``number`` is a part of; "" for none."""
    found = (told.scenario.title for told in paper.scenarios if told.first <= number <= told.last)
    return next(found, "")


def _open_row(marked: Marked, number: int, judged: Judged) -> Row:
    told = marked.issue.papers[0].scenarios
    about = next(s.scenario.title for s in told if judged in s.scenario.judged)
    blank = sum(not one.answers.get(number, "").strip() for one in marked.returns)
    given = [one.points[number] for one in marked.returns if number in one.points]
    small = marked.figures is None or marked.figures.small
    share = None if small or not given else sum(given) / (len(given) * len(judged.points))
    asked = len(marked.returns)
    about_it: Row = [number, judged.key, judged.title, "sentences", about, asked, "", blank]
    return [*about_it, _share(share), "", f"marked by hand: {len(given)} of {asked}"]


def confidence_table(marked: Marked) -> list[Row]:
    """One row a question: right and wrong answers by how sure their writers were."""
    words = [*LEVELS.values(), "not said"]
    head = [f"{how}, {what}" for how in words for what in ("right", "wrong")]
    rows: list[Row] = [["number", "question", "title", *head]]
    for number, figures in enumerate(_items(marked), 1):
        told = sureness(result.items[number - 1] for result in marked.results)
        counts = [n for one in told for n in (one.right, one.answered - one.right)]
        rows.append([number, figures.key, figures.title, *counts])
    return rows


def mistakes_table(marked: Marked) -> list[Row]:
    """One row a mistake that somebody made, the most frequent first."""
    found = [
        (count, number, item.key, key)
        for number, item in enumerate(_items(marked), 1)
        for key, count in item.mistakes
    ]
    found.sort(key=lambda one: (-one[0], one[1], one[3]))
    titles = _titles(marked)
    sure = {(one.number, one.mistake): one.students for one in sure_mistakes(marked.results)}
    rows: list[Row] = [["students", "number", "question", "mistake", "in words", "of them sure"]]
    return rows + [
        [n, place, key, m, titles[key, m], sure.get((place, m), 0)] for n, place, key, m in found
    ]


def report(marked: Marked) -> str:
    """What an instructor reads first: standings, common mistakes, suspect questions, problems."""
    issue, results = marked.issue, marked.results
    lines = [issue.title, f"{len(results)} of {len(issue.papers)} papers came back."]
    if marked.missing:
        lines.append(f"Not returned or not usable: {', '.join(marked.missing)}.")
    lines += [f"! {problem.source} {problem.sentence}" for problem in marked.problems]
    lines += [f"! {one.source} {note}" for one in marked.returns for note in one.notes]
    if marked.figures:
        lines += ["", *_standings(marked, marked.figures), "", *_mistakes(marked)]
        lines += _sure(marked)
        flagged = [(n, i) for n, i in enumerate(marked.figures.items, 1) if i.flags]
        lines += [f"Question {n} ({i.title}): {'; '.join(i.flags)}." for n, i in flagged]
        lines += _to_be_marked(marked)
    return "\n".join([*lines, "", cautions.KNOWLEDGE_CHECK])


def _to_be_marked(marked: Marked) -> list[str]:
    """Whose open questions still wait for points."""
    lines = []
    for number, judged in _open(marked):
        waiting = [one.paper.student for one in marked.returns if number not in one.points]
        lines.append(
            f"Question {number} ({judged.title}) is marked by hand and counts no marks here."
            + (f" Without points: {', '.join(waiting)}." if waiting else "")
        )
    if lines:
        lines.append(
            f"Read the answers in {WRITTEN}. To keep points, put a table with the columns “code” "
            "and “points” with the question's number among the returned papers, and mark again."
        )
    return lines


def _standings(marked: Marked, figures: ClassFigures) -> list[str]:
    total = len(marked.results[0].items)
    wanted = marked.issue.pass_mark * total
    lines = [f"Mark to reach: {wanted:.3g} of {total}. Mean of the class: {figures.mean:.3g}."]
    if figures.small:
        lines.append(
            "The class is too small for shares and correlations; counts are given instead, and "
            "no borderline band is known."
        )
    elif figures.error is not None and figures.reliability is not None:
        lines.append(
            f"Reliability {figures.reliability:.2f}; a score is uncertain by about "
            f"{figures.error:.2g} marks. Within that of the mark a result is borderline: decide "
            "by a talk or in practice."
        )
    for where in Standing:
        names = [r.paper.student for r in marked.results if marked.standing(r) is where]
        if names:
            lines.append(f"{where.capitalize()}: {', '.join(names)}.")
    for result in marked.results:
        if result.missed:
            numbers = ", ".join(map(str, result.missed))
            lines.append(f"{result.paper.student} missed what must be right: question {numbers}.")
    return lines


def _mistakes(marked: Marked) -> list[str]:
    rows = mistakes_table(marked)[1:6]
    if not rows:
        return ["No known mistake was made."]
    lines = ["The most frequent mistakes:"]
    return lines + [
        f"- {row[0]} of {len(marked.results)}, question {row[1]}: {row[4]}" for row in rows
    ]


def _sure(marked: Marked) -> list[str]:
    """How sure the class was, and first of all what it was sure of and wrong."""
    if not anything_said(marked.results):
        return []
    told = sureness(one for result in marked.results for one in result.items)
    shares = [f"{LEVELS[one.level]} {one.right} of {one.answered}" for one in told if one.level]
    lines = ["", f"Right, by how sure they said they were: {', '.join(shares)}."]
    found = sure_mistakes(marked.results)
    if not found:
        return [*lines, "Nobody who was sure was wrong.", ""]
    titles, keys = _titles(marked), [item.key for item in _items(marked)]
    lines.append("Sure and wrong (nobody asks about what they do not doubt; begin with these):")
    lines += [
        f"- {one.students}, question {one.number}: "
        + titles.get((keys[one.number - 1], one.mistake), "wrong in no way known by name")
        for one in found
    ]
    return [*lines, ""]


def _items(marked: Marked) -> tuple[ItemFigures, ...]:
    return marked.figures.items if marked.figures else ()


def _titles(marked: Marked) -> dict[tuple[str, str], str]:
    return {
        (item.template.key, mistake.key): mistake.title
        for result in marked.results[:1]
        for item in result.paper.items
        for mistake in item.template.mistakes
    }


def _share(value: float | None) -> Cell:
    return "" if value is None else round(value, 2)


def _csv(rows: Iterable[Row]) -> str:
    out = io.StringIO(newline="")
    out.write(UTF8_MARK)
    csv.writer(out).writerows([[_harmless(cell) for cell in row] for row in rows])
    return out.getvalue()


def _harmless(cell: Cell) -> Cell:
    """A cell that no spreadsheet takes for a formula."""
    return f"'{cell}" if isinstance(cell, str) and cell[:1] in ("=", "+", "-", "@") else cell
