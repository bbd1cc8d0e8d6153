"""A question of a paper as an item of the open standard QTI 2.1.

What is right, and in which window each named mistake lies, stands in the item's response
processing, so a platform marks as the course does. A number is asked in one named unit and typed
alone. The standard's numbers have a decimal point; the pattern of the entry lets a platform turn
a comma down while it is typed, so that none is cut off and misread.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import singledispatch
from xml.etree import ElementTree as ET

from ropecalc import __version__, cautions
from ropecalc.teaching.papers.paper import LETTERS, RIGHT, Item
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.diagrams.picture import Picture
from ropecalc.teaching.questions.marking import mark
from ropecalc.teaching.questions.template import Template
from ropecalc.units import Display, Unit

NAMESPACE = "http://www.imsglobal.org/xsd/imsqti_v2p1"
INSTANCE = "http://www.w3.org/2001/XMLSchema-instance"
MUST_PASS = "must be right"
"""How the title of an item says that nobody passes without it."""

_ANSWER, _SCORE, _FEEDBACK = "RESPONSE", "SCORE", "FEEDBACK"
_RIGHT, _WRONG = "right", "wrong"
_NUMBER = r"[+\-]?[0-9]*(\.[0-9]*)?([eE][+\-]?[0-9]*)?"
"""Also fits a number half typed, since some platforms look at every key."""
_NOT_KNOWN = (
    "Not right, and none of the mistakes that this question knows. Make a sketch with the given "
    "quantities in it and work it out once more."
)


@dataclass(frozen=True)
class Reason:
    """A sentence a learner is told after an answer, under the name the processing gives it."""

    name: str
    heading: str
    sentence: str


@dataclass(frozen=True)
class Interaction:
    """What depends on how an answer is given: its type, the key, the body, the rules, the words."""

    kind: str
    cardinality: str
    base_type: str
    key: tuple[str, ...]
    body: ET.Element
    rules: ET.Element
    reasons: tuple[Reason, ...]


def item_title(number: int, item: Item) -> str:
    """The number and title of ``item``, and whether it must be right."""
    must = f" ({MUST_PASS})" if item.must_pass else ""
    return f"{number}. {item.template.title}{must}"


def item_document(
    name: str, title: str, item: Item, display: Display, picture: Picture | None
) -> ET.Element:
    """The item called ``name`` in its package; ``display`` says the units.

    ``picture`` is expected beside it, in the file :func:`picture_file` names.
    """
    asked = interaction(item.template, item, display)
    root = ET.Element(
        "assessmentItem",
        document_attributes()
        | {
            "identifier": name,
            "title": title,
            "adaptive": "false",
            "timeDependent": "false",
            "xml:lang": "en",
        },
    )
    root.append(_response(asked))
    root.append(outcome(_SCORE, "float", "0", normalMaximum="1", normalMinimum="0"))
    root.append(outcome("MAXSCORE", "float", "1"))
    root.append(outcome(_FEEDBACK, "identifier"))
    body = ET.SubElement(root, "itemBody")
    body.extend(_situation(item, display))
    if picture is not None:
        body.append(_shown(picture, picture_file(name)))
    body.append(asked.body)
    body.append(paragraph(cautions.KNOWLEDGE_CHECK))
    root.append(asked.rules)
    root.extend(_told(reason) for reason in asked.reasons)
    return root


def picture_file(name: str) -> str:
    """The file of the picture of the item called ``name``, in the item's own folder."""
    return f"{name}.svg"


# --- parts that the test shares ---------------------------------------------------------------


def document_attributes() -> dict[str, str]:
    """What every document of the standard carries."""
    return {
        "xmlns": NAMESPACE,
        "xmlns:xsi": INSTANCE,
        "xsi:schemaLocation": f"{NAMESPACE} {NAMESPACE}.xsd",
        "toolName": "ropecalc",
        "toolVersion": __version__,
    }


def element(tag: str, *inside: ET.Element | str, **attributes: str) -> ET.Element:
    """An element with either parts or a text in it."""
    made = ET.Element(tag, attributes)
    for part in inside:
        if isinstance(part, str):
            made.text = part
        else:
            made.append(part)
    return made


def paragraph(text: str) -> ET.Element:
    """A paragraph of plain text."""
    return element("p", text)


def outcome(name: str, base_type: str, start: str = "", **attributes: str) -> ET.Element:
    """The declaration of an outcome, with the value it starts from if there is one."""
    declared = element(
        "outcomeDeclaration",
        identifier=name,
        cardinality="single",
        baseType=base_type,
        **attributes,
    )
    if start:
        declared.append(element("defaultValue", element("value", start)))
    return declared


def value(base_type: str, text: str) -> ET.Element:
    """A constant in a rule."""
    return element("baseValue", text, baseType=base_type)


def variable(name: str) -> ET.Element:
    """A variable in a rule."""
    return element("variable", identifier=name)


def assign(name: str, to: ET.Element) -> ET.Element:
    """The rule that gives an outcome its value."""
    return element("setOutcomeValue", to, identifier=name)


# --- the question -----------------------------------------------------------------------------


def _response(asked: Interaction) -> ET.Element:
    key = element("correctResponse", *(element("value", one) for one in asked.key))
    return element(
        "responseDeclaration",
        key,
        identifier=_ANSWER,
        cardinality=asked.cardinality,
        baseType=asked.base_type,
    )


def _situation(item: Item, display: Display) -> Iterator[ET.Element]:
    yield paragraph(wording.stem(item.drawn, display))
    given = (f"{meaning} {shown}" for _, meaning, shown in wording.givens(item.drawn, display))
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
        outcomeIdentifier=_FEEDBACK,
        identifier=reason.name,
        showHide="show",
        title=reason.heading,
    )


@singledispatch
def interaction(question: object, item: Item, _display: Display) -> Interaction:
    """How ``item``, which asks ``question``, is answered and marked, by the question's kind."""
    raise PaperError("", f"“{item.template.title}” cannot be asked on a platform ({question!r}).")


@interaction.register
def _of_number(template: Template, item: Item, display: Display) -> Interaction:
    if item.options:
        return _choice(template, item, display)
    return _entry(template, item, display)


# --- a number ---------------------------------------------------------------------------------


def _entry(template: Template, item: Item, display: Display) -> Interaction:
    drawn = item.drawn
    unit, answer = display.unit(template.kind), drawn.answer
    margin = template.tolerance.margin(answer)
    rules = [("If", _within(answer, margin, unit), [assign(_SCORE, value("float", "1"))], _RIGHT)]
    for key, wrong in drawn.mistaken.items():
        window = template.window(answer, wrong)
        rules.append(("ElseIf", _within(wrong, window, unit), [], _name(key)))
    return Interaction(
        "textEntryInteraction",
        "single",
        "float",
        (_decimal(answer, unit, 6),),
        _line(template.asked, unit),
        _processing(rules),
        (*_reasons(template, item, display), Reason(_WRONG, "Not right", _NOT_KNOWN)),
    )


def _line(asked: str, unit: Unit) -> ET.Element:
    inside = element(
        "textEntryInteraction",
        responseIdentifier=_ANSWER,
        expectedLength="12",
        patternMask=_NUMBER,
    )
    wanted = f"in {unit.words} ({unit.symbol})" if unit.symbol else "as a plain number"
    line = element("p", f"{asked}, {wanted}: ", inside)
    inside.tail = f" {unit.symbol}".rstrip()
    how = "Write the number alone, without its unit, with a decimal point and not a comma."
    return element("div", line, paragraph(how))


def _within(middle: float, margin: float, unit: Unit) -> ET.Element:
    lowest, highest = (_decimal(middle + side * margin, unit) for side in (-1, 1))
    return element(
        "and",
        element("gte", variable(_ANSWER), value("float", lowest)),
        element("lte", variable(_ANSWER), value("float", highest)),
    )


def _decimal(si_value: float, unit: Unit, figures: int = 12) -> str:
    return f"{Decimal(f'{si_value / unit.factor:.{figures}g}'):f}"


def _processing(
    rules: Iterable[tuple[str, ET.Element, list[ET.Element], str]],
) -> ET.Element:
    """Rules tried in order: each with its condition, what it sets, and the reason it gives."""
    condition = element("responseCondition")
    for branch, when, then, reason in rules:
        feedback = assign(_FEEDBACK, value("identifier", reason))
        condition.append(element(f"response{branch}", when, *then, feedback))
    other = assign(_FEEDBACK, value("identifier", _WRONG))
    answered = element("not", element("isNull", variable(_ANSWER)))
    condition.append(element("responseElseIf", answered, other))
    return element("responseProcessing", condition)


def _reasons(template: Template, item: Item, display: Display) -> Iterator[Reason]:
    """What the course itself says to the right answer and to each mistake."""
    unit = display.unit(template.kind)

    def said(option: str) -> str:
        typed = f"{_decimal(item.option_value(option), unit, 9)} {unit.symbol}"
        return mark(item.drawn, typed, display).feedback

    yield Reason(_RIGHT, "Right", said(RIGHT))
    for mistake in template.mistakes:
        yield Reason(_name(mistake.key), mistake.title, said(mistake.key))


def _name(mistake: str) -> str:
    return f"mistake-{mistake}"


# --- a choice ---------------------------------------------------------------------------------


def _choice(template: Template, item: Item, display: Display) -> Interaction:
    letters = dict(zip(item.options, LETTERS, strict=False))
    right = element(
        "responseIf",
        element("match", variable(_ANSWER), element("correct", identifier=_ANSWER)),
        assign(_SCORE, value("float", "1")),
    )
    body = element(
        "choiceInteraction",
        element("prompt", f"{template.asked}: choose one."),
        responseIdentifier=_ANSWER,
        shuffle="false",
        maxChoices="1",
    )
    for option, letter in letters.items():
        shown = display.show(item.option_value(option), template.kind)
        body.append(element("simpleChoice", shown, identifier=letter))
    named = {_RIGHT: RIGHT} | {_name(m.key): m.key for m in template.mistakes}
    return Interaction(
        "choiceInteraction",
        "single",
        "identifier",
        (item.right_letter,),
        body,
        element(
            "responseProcessing",
            element("responseCondition", right),
            assign(_FEEDBACK, variable(_ANSWER)),
        ),
        tuple(
            Reason(letters[named[r.name]], r.heading, r.sentence)
            for r in _reasons(template, item, display)
        ),
    )
