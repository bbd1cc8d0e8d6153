"""Every question of the course, found rather than listed."""

import importlib
import pkgutil
from collections.abc import Iterable

import pytest

from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.questions import bank
from ropecalc.teaching.questions.ordering import Ordering
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.questions.setting import RigTask
from ropecalc.teaching.questions.template import Template


def _questions() -> Iterable[Question]:
    for module in pkgutil.walk_packages(bank.__path__, f"{bank.__name__}."):
        for value in vars(importlib.import_module(module.name)).values():
            if isinstance(value, Template | Ordering | RigTask):
                yield value
    for exercise in EXERCISES.values():
        yield from exercise.questions
    for lesson in LESSONS.values():
        yield from (*lesson.questions, *lesson.myths)


QUESTIONS = tuple({id(question): question for question in _questions()}.values())
"""Those in the bank's modules, and any that a lesson or an exercise has from elsewhere."""
TEMPLATES = tuple(q for q in QUESTIONS if isinstance(q, Template))
"""Those that ask for a number."""
ORDERINGS = tuple(q for q in QUESTIONS if isinstance(q, Ordering))
RIG_TASKS = tuple(q for q in QUESTIONS if isinstance(q, RigTask))

every_question = pytest.mark.parametrize("question", QUESTIONS, ids=lambda q: q.key)
every_template = pytest.mark.parametrize("template", TEMPLATES, ids=lambda t: t.key)
every_rig_task = pytest.mark.parametrize("task", RIG_TASKS, ids=lambda q: q.key)
every_ordering = pytest.mark.parametrize("ordering", ORDERINGS, ids=lambda q: q.key)
