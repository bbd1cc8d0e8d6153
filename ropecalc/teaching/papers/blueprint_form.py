"""A blueprint filled in on the page, saved as the same file that an editor would write."""

from collections.abc import Callable, Collection, Mapping
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as widgets
import tomli_w

from ropecalc.planning.files import write_whole
from ropecalc.teaching.buttons import button, row
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.papers.blueprint import (
    LEVELS,
    MOST_MINUTES,
    MOST_SCENARIOS,
    Blueprint,
    parse_blueprint,
    read_blueprint,
)
from ropecalc.teaching.papers.choosing import choose, choose_scenarios
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.bank import BANK, BY_LESSON
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.shown import Shown, status

_WIDE = {"width": "560px", "max_width": "100%"}
_MUST = "<b>Must be right</b> (of what the table asks for):"
_NOTHING_ASKED = "<b>Must be right</b>: to choose from once the table above asks for questions."
_LABEL = {"description_width": "190px"}


class MustPass(widgets.VBox):
    """Boxes to tick for the questions that must be right, lesson by lesson.

    Only questions of :meth:`offer`'s lessons and levels stand here, and those that are ticked.
    """

    def __init__(self) -> None:
        self._boxes = {question.key: _tick(question) for question in BANK.values()}
        self._heads = {
            lesson: widgets.HTML(f"<b>{escape(_title(lesson))}</b>") for lesson in BY_LESSON
        }
        self._about = widgets.HTML()
        super().__init__()
        self.offer(())

    @property
    def chosen(self) -> tuple[str, ...]:
        """What is ticked, in the order of the bank."""
        return tuple(key for key, box in self._boxes.items() if box.value)

    def choose(self, keys: Collection[str]) -> None:
        """Tick ``keys`` and nothing else."""
        for key, box in self._boxes.items():
            box.value = key in keys

    def offer(self, asked: Collection[tuple[int, int]]) -> None:
        """Show the questions of these lessons and levels, and what is ticked."""
        shown: list[widgets.Widget] = []
        for lesson, questions in sorted(BY_LESSON.items()):
            boxes = [
                self._boxes[question.key]
                for question in questions
                if (lesson, question.difficulty) in asked or self._boxes[question.key].value
            ]
            shown += [self._heads[lesson], *boxes] if boxes else []
        self._about.value = _MUST if shown else _NOTHING_ASKED
        self.children = (self._about, *shown)


class BlueprintForm(Shown):
    """Title, time, mark, and how many questions of each lesson and level; checked when saved.

    ``saved`` is told the name of each file that is written.
    """

    def __init__(
        self, course: Path, file: str, saved: Callable[[str], object] = lambda _: None
    ) -> None:
        self._course = course
        self._saved = saved
        self._file = widgets.Text(file, description="File", layout=_WIDE, style=_LABEL)
        self._title = widgets.Text(description="Title", layout=_WIDE, style=_LABEL)
        self._seed = widgets.Text(
            description="Seed (any words)",
            layout=_WIDE,
            style=_LABEL,
            placeholder="keep to yourself",
        )
        self._minutes = _whole("Minutes", MOST_MINUTES, 40)
        self._mark = _whole("Mark to reach, %", 100, 75)
        self._choices = _whole("As a choice of numbers", 100, 0)
        self._scenarios = _whole("Scenarios on top", MOST_SCENARIOS, 0)
        self._sheet = widgets.Checkbox(True, description="formula sheet", indent=False)
        self._sure = widgets.Checkbox(
            True,
            description="students may say for each question how sure they are",
            indent=False,
            layout=_WIDE,
        )
        self._counts = {
            (lesson, level): _count(len([t for t in templates if t.difficulty == level]))
            for lesson, templates in sorted(BY_LESSON.items())
            for level in range(1, len(LEVELS) + 1)
        }
        self._must = MustPass()
        for box in self._counts.values():
            box.observe(lambda _: self._offer(), names="value")
        self._said = widgets.HTML()
        super().__init__(
            [
                self._file,
                row(button("Open the file", self._open), button("Save the blueprint", self._save)),
                self._title,
                self._seed,
                self._minutes,
                self._mark,
                self._choices,
                self._scenarios,
                self._sheet,
                self._sure,
                self._grid(),
                self._must,
                self._said,
            ]
        )
        self.add_class("ropecalc-desk")

    def summary(self) -> str:
        """What the form is for."""
        return (
            "A form for a blueprint: how many questions of each lesson and level, which must be "
            "right, time, mark and seed."
        )

    @property
    def document(self) -> Mapping[str, Any]:
        """What is filled in, as a blueprint's file has it; one topic a lesson."""
        topics = []
        for lesson in sorted(BY_LESSON):
            counts = {
                name: self._counts[lesson, level].value for level, name in enumerate(LEVELS, 1)
            }
            if any(counts.values()):
                topics.append({"title": _title(lesson), "lessons": [lesson], **counts})
        return {
            "title": self._title.value,
            "minutes": self._minutes.value,
            "seed": self._seed.value,
            "pass_mark": self._mark.value / 100,
            "must_pass": list(self._must.chosen),
            "as_choice": self._choices.value,
            "scenarios": self._scenarios.value,
            "formula_sheet": self._sheet.value,
            "confidence": self._sure.value,
            "topic": topics,
        }

    def _offer(self) -> None:
        """What must be right is chosen from the lessons and levels that the grid asks for."""
        self._must.offer({place for place, box in self._counts.items() if box.value})

    def _grid(self) -> widgets.GridBox:
        cells: list[widgets.Widget] = [widgets.HTML(f"<b>{w}</b>") for w in ("Lesson", *LEVELS)]
        for lesson in sorted(BY_LESSON):
            cells.append(widgets.HTML(escape(_title(lesson))))
            cells += [self._counts[lesson, level] for level in range(1, len(LEVELS) + 1)]
        return widgets.GridBox(
            cells, layout={"grid_template_columns": "minmax(220px, 380px) repeat(3, 110px)"}
        )

    def _save(self) -> None:
        path = self._course / self._file.value.strip()
        try:
            blueprint = parse_blueprint(self.document, self._file.value)
            chosen = choose(blueprint, BY_LESSON, self._file.value)
            scenarios = choose_scenarios(blueprint, SCENARIOS, self._file.value)
            write_whole(path, tomli_w.dumps(self.document))
        except ValueError as error:
            self._say(f"Not saved. {error}")
            return
        self._saved(self._file.value.strip())
        names = ", ".join(template.title for template in chosen)
        told = "".join(f" Scenario: {scenario.title}." for scenario in scenarios)
        self._say(f"Saved: {path}. {len(chosen)} questions: {names}.{told}")

    def _open(self) -> None:
        try:
            self._fill(read_blueprint(self._course / self._file.value.strip()))
        except ValueError as error:
            self._say(str(error))
            return
        self._say("Opened. Change it, and save it under a name of your own.")

    def _fill(self, blueprint: Blueprint) -> None:
        """Show ``blueprint``. A topic of several lessons has no place in the form."""
        joined = any(len(topic.lessons) > 1 for topic in blueprint.topics)
        if joined or blueprint.judged or not isinstance(blueprint.scenarios, int):
            raise PaperError(
                self._file.value,
                "joins lessons in one topic, judges its questions or names its scenarios; change "
                "it in an editor.",
            )
        self._title.value, self._seed.value = blueprint.title, blueprint.seed
        self._minutes.value = blueprint.minutes
        self._mark.value = round(100 * (blueprint.pass_mark or 0))
        self._choices.value, self._sheet.value = blueprint.as_choice, blueprint.formula_sheet
        self._scenarios.value = blueprint.scenarios
        self._sure.value = blueprint.confidence
        self._must.choose(blueprint.must_pass)
        for box in self._counts.values():
            box.value = 0
        for topic in blueprint.topics:
            for level, count in enumerate(topic.counts, 1):
                if (topic.lessons[0], level) in self._counts:
                    self._counts[topic.lessons[0], level].value = count
        self._offer()

    def _say(self, text: str) -> None:
        self._said.value = status(text.split("\n"))


def _tick(question: Question) -> widgets.Checkbox:
    return widgets.Checkbox(
        description=f"{question.title} ({LEVELS[question.difficulty - 1]})",
        indent=False,
        layout=_WIDE,
    )


def _whole(label: str, most: int, value: int) -> widgets.BoundedIntText:
    return widgets.BoundedIntText(
        value,
        min=0,
        max=most,
        description=label,
        layout={"width": "300px"},
        style=_LABEL,
    )


def _count(available: int) -> widgets.BoundedIntText:
    """How many of ``available`` questions are taken."""
    return widgets.BoundedIntText(
        0,
        min=0,
        max=available,
        disabled=not available,
        description=f"of {available}",
        layout={"width": "105px"},
        style={"description_width": "42px"},
    )


def _title(lesson: int) -> str:
    titles = {one.number: one.title for one in LESSONS.values()}
    return f"{lesson}. {titles.get(lesson, 'Lesson')}"
