"""A question of a paper as an item of the open standard QTI 2.1, with its files.

There are two sorts: those that the platform marks by the item's own rules, and open ones, for
which a person gives points.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Protocol
from xml.etree import ElementTree as ET

from ropecalc import cautions
from ropecalc.teaching.papers.paper import Item, by_hand, item_as_document
from ropecalc.teaching.papers.qti_answer import ANSWER, FEEDBACK, SCORE, Reason, interaction
from ropecalc.teaching.papers.qti_xml import document, element, outcome, paragraph, written
from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.diagrams import picture_of
from ropecalc.teaching.questions.diagrams.picture import Picture
from ropecalc.teaching.questions.diagrams.svg import svg
from ropecalc.teaching.scenarios.content import Judged
from ropecalc.units import Display

MUST_PASS = "must be right"
"""How the title of an item says that nobody passes without it."""
_LINES = "12"


class Asked(Protocol):
    """One question of a package: its number, what is told above it, and what it becomes."""

    @property
    def number(self) -> int:
        """Its number on the paper."""

    @property
    def title(self) -> str:
        """Number and title, and whether it must be right."""

    @property
    def about(self) -> str:
        """What it is for, in a sentence; may be ""."""

    @property
    def must_pass(self) -> bool:
        """Whether nobody passes without it."""

    @property
    def marks(self) -> int:
        """How many marks there are for it."""

    @property
    def asks(self) -> tuple[object, ...]:
        """The same on two papers if they ask the same, whatever the numbers."""

    @property
    def identity(self) -> str:
        """The same on two papers if all numbers are the same, too."""

    def files(self, name: str, display: Display) -> dict[str, bytes]:
        """The item called ``name`` as files of one folder, the document first."""


@dataclass(frozen=True)
class MarkedItem:
    """A question that the platform marks. ``lead`` is told above it, a paragraph each."""

    number: int
    item: Item
    lead: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """Number and title, and whether it must be right."""
        must = f" ({MUST_PASS})" if self.must_pass else ""
        return f"{self.number}. {self.item.template.title}{must}"

    @property
    def about(self) -> str:
        """The objective."""
        return f"After this you can {self.item.template.objective}."

    @property
    def must_pass(self) -> bool:
        """Whether nobody passes without it."""
        return self.item.must_pass

    @property
    def marks(self) -> int:
        """One."""
        return 1

    @property
    def asks(self) -> tuple[object, ...]:
        """The question, and whether it is a choice."""
        return (self.title, self.item.template.key, bool(self.item.options))

    @property
    def identity(self) -> str:
        """All numbers."""
        return json.dumps([item_as_document(self.item), self.lead])

    def files(self, name: str, display: Display) -> dict[str, bytes]:
        """The document, and the picture if there is one."""
        picture = picture_of(self.item.drawn, display)
        files = {f"{name}.xml": written(self._document(name, display, picture))}
        if picture is not None:
            files[_picture_file(name)] = svg(picture).encode("utf-8")
        return files

    def _document(self, name: str, display: Display, picture: Picture | None) -> ET.Element:
        asked = interaction(self.item.template, self.item, display)
        body = element("itemBody", *map(paragraph, self.lead), *_situation(self.item, display))
        if picture is not None:
            body.append(_shown(picture, _picture_file(name)))
        body.append(asked.body)
        body.append(paragraph(cautions.KNOWLEDGE_CHECK))
        root = _root(name, self.title, asked.declaration(), self.marks)
        root.append(outcome(FEEDBACK, "identifier"))
        root.append(body)
        root.append(asked.processing())
        root.extend(_told(reason) for reason in asked.reasons)
        return root


@dataclass(frozen=True)
class OpenItem:
    """An open question: room to write; what a good answer says is shown to who gives points."""

    number: int
    judged: Judged
    lead: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """Number and title."""
        return f"{self.number}. {self.judged.title}"

    @property
    def about(self) -> str:
        """Who marks it."""
        return by_hand(self.judged)

    @property
    def must_pass(self) -> bool:
        """Never."""
        return False

    @property
    def marks(self) -> int:
        """A point for each thing that a good answer says."""
        return len(self.judged.points)

    @property
    def asks(self) -> tuple[object, ...]:
        """The question."""
        return (self.title, self.judged.key)

    @property
    def identity(self) -> str:
        """The numbers it is about."""
        return json.dumps([self.judged.key, self.lead])

    def files(self, name: str, _display: Display) -> dict[str, bytes]:
        """The document."""
        body = element(
            "itemBody",
            *map(paragraph, (*self.lead, self.judged.question, by_hand(self.judged))),
            element("extendedTextInteraction", responseIdentifier=ANSWER, expectedLines=_LINES),
            element("rubricBlock", *map(paragraph, self.judged.points), view="scorer"),
            paragraph(cautions.KNOWLEDGE_CHECK),
        )
        answer = element(
            "responseDeclaration", identifier=ANSWER, cardinality="single", baseType="string"
        )
        root = _root(name, self.title, answer, self.marks)
        root.append(body)
        return {f"{name}.xml": written(root)}


def _picture_file(name: str) -> str:
    return f"{name}.svg"


def _root(name: str, title: str, answer: ET.Element, marks: int) -> ET.Element:
    root = document(
        "assessmentItem", identifier=name, title=title, adaptive="false", timeDependent="false"
    )
    root.set("xml:lang", "en")
    root.append(answer)
    root.append(outcome(SCORE, "float", "0", normalMaximum=str(marks), normalMinimum="0"))
    root.append(outcome("MAXSCORE", "float", str(marks)))
    return root


def _situation(item: Item, display: Display) -> Iterator[ET.Element]:
    yield paragraph(wording.stem(item.drawn, display))
    given = [f"{meaning} {shown}" for _, meaning, shown in wording.givens(item.drawn, display)]
    if given:
        yield paragraph(f"Given: {'; '.join(given)}.")


def _shown(picture: Picture, path: str) -> ET.Element:
    image = element(
        "img",
        src=path,
        alt=picture.alternative,
        width=f"{picture.width:.0f}",
        height=f"{picture.height:.0f}",
    )
    return element("p", image)


def _told(reason: Reason) -> ET.Element:
    return element(
        "modalFeedback",
        paragraph(reason.sentence),
        outcomeIdentifier=FEEDBACK,
        identifier=reason.name,
        showHide="show",
        title=reason.heading,
    )
