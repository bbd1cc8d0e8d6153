"""How papers and their marking grow with the class: 100 students against 1,000.

Run as a plain script; it prints processor times, memory and ratios and asserts nothing about
time. A class ten times as large should take about ten times as long and no more memory for each
student.
"""

import json
import resource
import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from ropecalc.teaching.papers.blueprint import Blueprint, Topic
from ropecalc.teaching.papers.issue import Issue
from ropecalc.teaching.papers.making import RETURNS, Wishes, make_issue, write_papers
from ropecalc.teaching.papers.paper import Paper
from ropecalc.teaching.papers.printing import key_pdf, paper_pdf
from ropecalc.teaching.questions.bank import BY_LESSON
from ropecalc.teaching.questions.diagrams import picture_of
from ropecalc.teaching.results.returns import find_returns
from ropecalc.teaching.results.tables import mark_returns, write_results
from ropecalc.units import Display

SMALL, LARGE = 100, 1000


def blueprint() -> Blueprint:
    """Two questions of every lesson, as far as there are."""
    topics = []
    for lesson, templates in BY_LESSON.items():
        counts = [0, 0, 0]
        for template in templates[:2]:
            counts[template.difficulty - 1] += 1
        topics.append(Topic(f"lesson {lesson}", (lesson,), (counts[0], counts[1], counts[2])))
    return Blueprint("Bench", 50, "bench", tuple(topics), pass_mark=0.7)


def measured(students: int, folder: Path) -> dict[str, float]:
    """Seconds for making and marking, and the peak of this process's memory so far in MB."""
    names = tuple(f"s{number:05}" for number in range(students))
    begin = time.process_time()
    issue = make_issue(blueprint(), names)
    write_papers(issue, folder, Wishes(printed=False))
    made = time.process_time()
    hand_in(issue, folder)
    handed = time.process_time()
    marked = mark_returns(issue, find_returns(folder / RETURNS))
    write_results(marked, folder / "results")
    done = time.process_time()
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e3  # so far, in MB
    assert len(marked.results) == students
    return {"making": made - begin, "marking": done - handed, "memory": peak}


def hand_in(issue: Issue, folder: Path) -> None:
    """Everybody answers: the first half of each paper right, the rest one mistake."""
    display = Display()
    for paper in issue.papers:
        answers = {}
        for number, item in enumerate(paper.items, 1):
            value = item.drawn.answer
            if number > len(paper.items) // 2 and item.template.mistakes:
                value = item.drawn.mistaken[item.template.mistakes[0].key]
            answers[str(number)] = item.drawn.shown(value, display)
        path = folder / RETURNS / f"{paper.student}.json"
        sure = dict.fromkeys(answers, "sure")
        content = {"code": paper.code, "answers": answers, "sure": sure}
        path.write_text(json.dumps(content), encoding="utf-8")


def main() -> None:
    """Print both classes side by side, and what printing one paper takes."""
    with tempfile.TemporaryDirectory() as place:
        measured(2, Path(place) / "warm")  # formulas are compiled once, whatever the class
        small, large = (measured(n, Path(place) / str(n)) for n in (SMALL, LARGE))
    print(f"Papers and marking, {SMALL} and {LARGE} students")
    for name, unit in (("making", "s"), ("marking", "s"), ("memory", "MB")):
        ratio = large[name] / small[name]
        print(f"  {name}: {small[name]:.1f} {unit} and {large[name]:.1f} {unit}, ratio {ratio:.1f}")
    print(f"  marking over making: {large['marking'] / large['making']:.2f}")
    print_one()


def print_one() -> None:
    """Print what one paper and its key take, and that twice as many questions take twice that."""
    paper = make_issue(blueprint(), ("one",)).papers[0]
    half = replace(paper, items=paper.items[: len(paper.items) // 2])
    printed(paper)  # fonts and formulas are set up once, whatever the paper
    times = [printed(one) for one in (half, paper)]
    counts = [len(one.items) for one in (half, paper)]
    pictures = sum(picture_of(item.drawn, Display()) is not None for item in paper.items)
    print(f"Printing one paper and its key, {pictures} of {counts[1]} questions with a picture")
    print(f"  {counts[0]} questions: {times[0]:.1f} s, {counts[1]} questions: {times[1]:.1f} s")


def printed(paper: Paper) -> float:
    """Seconds for printing ``paper`` and its key."""
    begin = time.process_time()
    paper_pdf(paper)
    key_pdf(paper)
    return time.process_time() - begin


if __name__ == "__main__":
    main()
