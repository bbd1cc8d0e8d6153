"""The course's pages: what a notebook's lines ask for."""

from ropecalc.teaching.exercise import open_exercise, open_solution
from ropecalc.teaching.formula_sheet import open_formula_sheet
from ropecalc.teaching.glossary_page import open_glossary
from ropecalc.teaching.instructor_page import open_instructor_page
from ropecalc.teaching.lesson import open_lesson
from ropecalc.teaching.papers.desk import open_desk
from ropecalc.teaching.papers.paper_page import open_paper
from ropecalc.teaching.plan_page import open_plan_page
from ropecalc.teaching.plan_view import show_plan
from ropecalc.teaching.practice.practice_page import open_practice
from ropecalc.teaching.scenario_page import open_scenario, open_scenario_solution
from ropecalc.teaching.site_form import open_site_form
from ropecalc.teaching.start import open_start

__all__ = [
    "open_desk",
    "open_exercise",
    "open_formula_sheet",
    "open_glossary",
    "open_instructor_page",
    "open_lesson",
    "open_paper",
    "open_plan_page",
    "open_practice",
    "open_scenario",
    "open_scenario_solution",
    "open_site_form",
    "open_solution",
    "open_start",
    "show_plan",
]
