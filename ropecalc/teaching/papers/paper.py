"""One student's paper: the questions with this student's numbers, and the code on its front."""

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from hashlib import sha256
from typing import Any

from ropecalc.teaching.keyed import find
from ropecalc.teaching.papers.blueprint import Blueprint
from ropecalc.teaching.papers.choosing import as_choice
from ropecalc.teaching.questions.draw import Draw, draw, restored
from ropecalc.teaching.questions.question import Question, Values
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.scenarios.content import Judged, Scenario
from ropecalc.teaching.scenarios.situation import Situation, draw_for_paper
from ropecalc.units import Display

RIGHT = ""
"""Stands for the right answer among the options of a choice; all others are mistakes' keys."""
LETTERS = "ABCDEFGH"
GOES_ON = (
    "Whatever you found before, go on with the numbers given here; they differ on purpose from "
    "what earlier parts ask for."
)
"""Stands above a part of a scenario that takes over what an earlier part asked for."""
LONGEST_TEXT = 4000
"""How many characters of an answer to an open question are kept."""
_CODE_LETTERS = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"  # none that reads like another
CODE = re.compile(f"[{_CODE_LETTERS}]{{4}}-[{_CODE_LETTERS}]{{4}}")
"""What the code of a paper looks like."""


@dataclass(frozen=True)
class Item:
    """A question on a paper. ``options`` are empty where the answer is to be written.

    Otherwise they stand in the order in which they are offered: :data:`RIGHT`, or the key of the
    mistake whose number is shown. ``offered`` are the numbers (SI) that a paper was handed out
    with, in the same order; a paper that was just made has none and shows what it computes.
    """

    drawn: Draw
    options: tuple[str, ...] = ()
    must_pass: bool = False
    offered: tuple[float, ...] = field(default=(), compare=False)

    @property
    def template(self) -> Question:
        """The question without its numbers."""
        return self.drawn.template

    def option_value(self, option: str) -> float:
        """What is shown for ``option``, SI."""
        if self.offered:
            return self.offered[self.options.index(option)]
        return self.drawn.answer if option == RIGHT else self.drawn.mistaken[option]

    @property
    def right_letter(self) -> str:
        """The letter of the right option; "" where the answer is to be written."""
        return LETTERS[self.options.index(RIGHT)] if self.options else ""


@dataclass(frozen=True)
class PaperScenario:
    """A scenario on a paper: its story with ``values`` (SI), and where its parts begin.

    Its parts are the paper's questions from number ``first`` on; its open questions come after
    them.
    """

    scenario: Scenario
    values: Values
    first: int

    @property
    def last(self) -> int:
        """The number of the question that is its last part."""
        return self.first + len(self.scenario.parts) - 1

    def story(self, display: Display) -> str:
        """The story with its numbers."""
        return Situation(self.scenario, 0, self.values).story(display)

    def goes_on(self, number: int) -> bool:
        """Whether question ``number`` is a part that goes on with what earlier ones asked for."""
        return self.first <= number <= self.last and bool(
            self.scenario.parts[number - self.first].after
        )


@dataclass(frozen=True)
class Paper:
    """A paper as it is handed out, with all that marking needs and nothing of the seed.

    ``confidence`` is whether the student may say how sure they are; it is no part of the code.
    """

    title: str
    student: str
    minutes: int
    items: tuple[Item, ...]
    formula_sheet: bool = True
    scenarios: tuple[PaperScenario, ...] = ()
    confidence: bool = False

    @property
    def open_questions(self) -> tuple[Judged, ...]:
        """What is judged by hand, in order."""
        return tuple(judged for one in self.scenarios for judged in one.scenario.judged)

    @property
    def code(self) -> str:
        """Eight letters that no other paper has; they tell nothing about the answers."""
        return version_code(self)


class OtherOptionsError(ValueError):
    """A kept choice offers other options than this release has for its question."""


def item_as_document(item: Item) -> dict[str, Any]:
    """A question of a paper as files keep it."""
    return {
        "question": item.template.key,
        "values": dict(item.drawn.values),
        "options": list(item.options),
        "offered": [item.option_value(option) for option in item.options],
        "must_pass": item.must_pass,
    }


def item_from(document: Mapping[str, Any], template: Question) -> Item:
    """The question kept in ``document``. Raises :class:`OtherOptionsError` in words.

    What was offered to choose from stays, whatever this release would compute for a mistake.
    """
    options = tuple(document["options"])
    offered = tuple(float(value) for value in document.get("offered", ()))
    if options and set(options) != {RIGHT, *(mistake.key for mistake in template.mistakes)}:
        raise OtherOptionsError(
            f"offers other options for “{template.key}” than this release has. Use the release "
            "of the file's “made_with”."
        )
    if offered and len(offered) != len(options):
        raise ValueError(f"{len(options)} options with {len(offered)} numbers")
    drawn = restored(template, document["values"])
    return Item(drawn, options, bool(document["must_pass"]), offered)


def make_paper(
    blueprint: Blueprint,
    chosen: tuple[Question, ...],
    student: str,
    scenarios: tuple[Scenario, ...] = (),
) -> Paper:
    """The paper of ``student``; the same each time for the same blueprint and name."""
    seed = f"{blueprint.seed}|{student}"
    choices = as_choice(blueprint, chosen)
    items = []
    for template in chosen:
        drawn = draw(template, seed)
        options = _shuffled(template, seed) if template.key in choices else ()
        items.append(Item(drawn, options, template.key in blueprint.must_pass))
    told = []
    for scenario in scenarios:
        situation = draw_for_paper(scenario, seed)
        told.append(PaperScenario(scenario, situation.values, len(items) + 1))
        items += [Item(situation.part(part.key)) for part in scenario.parts]
    return Paper(
        blueprint.title,
        student,
        blueprint.minutes,
        tuple(items),
        blueprint.formula_sheet,
        tuple(told),
        blueprint.confidence,
    )


def by_hand(judged: Judged) -> str:
    """Who marks an open question, and what for, in a sentence."""
    return f"Marked by hand: a point for each thing said, {len(judged.points)} at most."


def scenario_as_document(told: PaperScenario) -> dict[str, Any]:
    """A scenario of a paper as files keep it."""
    return {"scenario": told.scenario.key, "values": dict(told.values), "first": told.first}


def scenario_from(document: Mapping[str, Any]) -> PaperScenario:
    """The scenario kept in ``document``. Raises KeyError in words for one that is not known."""
    scenario = find(SCENARIOS, document["scenario"], "scenario")
    values = {given.name: float(document["values"][given.name]) for given in scenario.givens}
    return PaperScenario(scenario, values, int(document["first"]))


def _shuffled(template: Question, seed: str) -> tuple[str, ...]:
    options = [RIGHT, *(mistake.key for mistake in template.mistakes)]
    return tuple(
        sorted(options, key=lambda o: sha256(f"{seed}|{template.key}|{o}".encode()).digest())
    )


def version_code(paper: Paper) -> str:
    """From what the paper asks and whom; another student's or an altered paper has another."""
    asked = [
        paper.title,
        paper.student,
        [[i.template.key, _plain(i.drawn.values), list(i.options)] for i in paper.items],
        *([s.scenario.key, _plain(s.values), s.first] for s in paper.scenarios),
    ]
    digest = sha256(json.dumps(asked, sort_keys=True).encode()).digest()
    number = int.from_bytes(digest[:5], "big")
    letters = "".join(_CODE_LETTERS[number >> (5 * place) & 31] for place in range(8))
    return f"{letters[:4]}-{letters[4:]}"


def _plain(values: Mapping[str, float]) -> dict[str, str]:
    return {name: f"{value:.9g}" for name, value in values.items()}
