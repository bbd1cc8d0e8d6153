"""A small bank's blueprint that the tests of papers share."""

from typing import Any

from ropecalc.teaching.papers.blueprint import Blueprint, parse_blueprint
from ropecalc.teaching.papers.choosing import choose
from ropecalc.teaching.papers.issue import Issue, pass_mark
from ropecalc.teaching.papers.paper import make_paper
from ropecalc.teaching.questions.bank import along_the_raise, holding_off

BANK = {8: holding_off.QUESTIONS, 9: along_the_raise.QUESTIONS}

DOCUMENT: dict[str, Any] = {
    "title": "Knowledge check, lessons 8 and 9",
    "minutes": 40,
    "seed": "heron in the rain",
    "pass_mark": 0.75,
    "as_choice": 2,
    "must_pass": ["haul-beside-track"],
    "topic": [
        {"title": "Holding off", "lessons": [8], "easy": 1, "medium": 2, "hard": 1},
        {"title": "Along the raise", "lessons": [9], "medium": 2},
    ],
}


def blueprint(**changes: Any) -> Blueprint:
    return parse_blueprint(DOCUMENT | changes, "example.toml")


def issue(*students: str, **changes: Any) -> Issue:
    plan = blueprint(**changes)
    chosen = choose(plan, BANK)
    papers = tuple(make_paper(plan, chosen, student) for student in students)
    return Issue(plan.title, pass_mark(plan, chosen), papers)
