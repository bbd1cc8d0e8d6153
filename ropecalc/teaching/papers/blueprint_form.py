"""A blueprint filled in on the page, saved as the same file that an editor would write."""

from collections.abc import Mapping
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
from ropecalc.teaching.questions.bank import BANK, BY_LESSON, LESSON_OF
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.shown import Shown, status

_WIDE = {"width": "560px", "max_width": "100%"}
_LABEL = {"description_width": "190px"}


class BlueprintForm(Shown):
    """Title, time, mark, and how many questions of each lesson and level; checked when saved."""

    def __init__(self, course: Path, file: str) -> None:
        self._course = course
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
        self._counts = {
            (lesson, level): _count(len([t for t in templates if t.difficulty == level]))
            for lesson, templates in sorted(BY_LESSON.items())
            for level in range(1, len(LEVELS) + 1)
        }
        self._must = widgets.SelectMultiple(
            options=[(f"{LESSON_OF[t.key]}. {t.title}", t.key) for t in BANK.values()],
            description="Must be right",
            rows=8,
            layout=_WIDE,
            style=_LABEL,
        )
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
            "must_pass": list(self._must.value),
            "as_choice": self._choices.value,
            "scenarios": self._scenarios.value,
            "formula_sheet": self._sheet.value,
            "topic": topics,
        }

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
        self._must.value = tuple(key for key in blueprint.must_pass if key in BANK)
        for box in self._counts.values():
            box.value = 0
        for topic in blueprint.topics:
            for level, count in enumerate(topic.counts, 1):
                if (topic.lessons[0], level) in self._counts:
                    self._counts[topic.lessons[0], level].value = count

    def _say(self, text: str) -> None:
        self._said.value = status(text.split("\n"))


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
