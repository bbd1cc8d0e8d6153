"""A question of a paper as an item of the open standard QTI 2.1."""

from collections.abc import Iterator
from xml.etree import ElementTree as ET

from ropecalc import cautions
from ropecalc.teaching.papers.paper import Item
from ropecalc.teaching.papers.qti_answer import FEEDBACK, SCORE, Reason, interaction
from ropecalc.teaching.papers.qti_xml import document, element, outcome, paragraph
from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.diagrams.picture import Picture
from ropecalc.units import Display

MUST_PASS = "must be right"
"""How the title of an item says that nobody passes without it."""


def item_title(number: int, item: Item) -> str:
    """The number and title of ``item``, and whether it must be right."""
    must = f" ({MUST_PASS})" if item.must_pass else ""
    return f"{number}. {item.template.title}{must}"


def picture_file(name: str) -> str:
    """The file of the picture of the item called ``name``, in the item's own folder."""
    return f"{name}.svg"


def item_document(
    name: str, title: str, item: Item, display: Display, picture: Picture | None
) -> ET.Element:
    """The item called ``name`` in its package; ``display`` says the units.

    ``picture`` is expected beside it, in the file :func:`picture_file` names.
    """
    asked = interaction(item.template, item, display)
    root = document(
        "assessmentItem", identifier=name, title=title, adaptive="false", timeDependent="false"
    )
    root.set("xml:lang", "en")
    root.append(asked.declaration())
    root.append(outcome(SCORE, "float", "0", normalMaximum="1", normalMinimum="0"))
    root.append(outcome("MAXSCORE", "float", "1"))
    root.append(outcome(FEEDBACK, "identifier"))
    body = element("itemBody", *_situation(item, display))
    if picture is not None:
        body.append(_shown(picture, picture_file(name)))
    body.append(asked.body)
    body.append(paragraph(cautions.KNOWLEDGE_CHECK))
    root.append(body)
    root.append(asked.processing())
    root.extend(_told(reason) for reason in asked.reasons)
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
