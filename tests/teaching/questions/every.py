"""Every question template of the course, found rather than listed."""

import importlib
import pkgutil
from collections.abc import Iterable

import pytest

from ropecalc.teaching.exercises import EXERCISES
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.questions import bank
from ropecalc.teaching.questions.template import Template


def _templates() -> Iterable[Template]:
    for module in pkgutil.walk_packages(bank.__path__, f"{bank.__name__}."):
        for value in vars(importlib.import_module(module.name)).values():
            if isinstance(value, Template):
                yield value
    for exercise in EXERCISES.values():
        yield from exercise.questions
    for lesson in LESSONS.values():
        yield from (*lesson.questions, *lesson.myths)


TEMPLATES = tuple({id(template): template for template in _templates()}.values())
"""Those in the bank's modules, and any that a lesson or an exercise has from elsewhere."""

every_template = pytest.mark.parametrize("template", TEMPLATES, ids=lambda t: t.key)
