"""What QTI 2.1 says of the elements that our packages use: attributes, and children in order.

Written by hand from the standard's information model, for its schemas cannot be had offline. It
is stricter than the schemas (nothing that we do not use is in it), and no replacement for them.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from xml.etree import ElementTree as ET

SCHEMA_LOCATION = "{http://www.w3.org/2001/XMLSchema-instance}schemaLocation"
LANGUAGE = "{http://www.w3.org/XML/1998/namespace}lang"
IDENTIFIER = re.compile(r"[A-Za-z_][A-Za-z0-9_.\-]*")


@dataclass(frozen=True)
class Allowed:
    """``children`` is a regular expression over their names, each with a space behind it."""

    children: str = ""
    required: str = ""
    optional: str = ""
    text: bool = False


_EXPRESSION = "(and|or|not|isNull|match|gte|lte|sum|ordered|baseValue|variable|correct) "
_CONDITION = f"{_EXPRESSION}(setOutcomeValue )*"
GRAMMAR = {
    "assessmentItem": Allowed(
        "responseDeclaration (outcomeDeclaration )+itemBody (responseProcessing )?"
        "(modalFeedback )*",
        "identifier title adaptive timeDependent",
        f"toolName toolVersion {LANGUAGE} {SCHEMA_LOCATION}",
    ),
    "responseDeclaration": Allowed("(correctResponse )?", "identifier cardinality baseType"),
    "outcomeDeclaration": Allowed(
        "(defaultValue )?", "identifier cardinality", "baseType normalMaximum normalMinimum"
    ),
    "correctResponse": Allowed("(value )+"),
    "defaultValue": Allowed("(value )+"),
    "value": Allowed(text=True),
    "itemBody": Allowed(
        "((p|div|rubricBlock|choiceInteraction|orderInteraction|extendedTextInteraction) )*"
    ),
    "extendedTextInteraction": Allowed(required="responseIdentifier", optional="expectedLines"),
    "div": Allowed("((p|div) )*"),
    "p": Allowed("((img|textEntryInteraction) )*", text=True),
    "img": Allowed(required="src alt", optional="width height"),
    "textEntryInteraction": Allowed(
        required="responseIdentifier", optional="expectedLength patternMask"
    ),
    "choiceInteraction": Allowed(
        "(prompt )?(simpleChoice )+", "responseIdentifier shuffle maxChoices"
    ),
    "orderInteraction": Allowed("(prompt )?(simpleChoice )+", "responseIdentifier shuffle"),
    "prompt": Allowed(text=True),
    "simpleChoice": Allowed(required="identifier", text=True),
    "responseProcessing": Allowed("(responseCondition )*"),
    "responseCondition": Allowed("responseIf (responseElseIf )*(responseElse )?"),
    "responseIf": Allowed(_CONDITION),
    "responseElseIf": Allowed(_CONDITION),
    "and": Allowed(f"({_EXPRESSION})+"),
    "or": Allowed(f"({_EXPRESSION})+"),
    "not": Allowed(_EXPRESSION),
    "isNull": Allowed(_EXPRESSION),
    "match": Allowed(_EXPRESSION * 2),
    "gte": Allowed(_EXPRESSION * 2),
    "lte": Allowed(_EXPRESSION * 2),
    "ordered": Allowed(f"({_EXPRESSION})*"),
    "sum": Allowed("(testVariables |variable )+"),
    "baseValue": Allowed(required="baseType", text=True),
    "variable": Allowed(required="identifier"),
    "correct": Allowed(required="identifier"),
    "testVariables": Allowed(required="variableIdentifier", optional="includeCategory"),
    "setOutcomeValue": Allowed(_EXPRESSION, "identifier"),
    "modalFeedback": Allowed("(p )*", "outcomeIdentifier identifier showHide", "title"),
    "assessmentTest": Allowed(
        "(outcomeDeclaration )*(timeLimits )?(testPart )+(outcomeProcessing )?(testFeedback )*",
        "identifier title",
        f"toolName toolVersion {SCHEMA_LOCATION}",
    ),
    "timeLimits": Allowed(optional="minTime maxTime allowLateSubmission"),
    "testPart": Allowed(
        "(itemSessionControl )?(timeLimits )?(assessmentSection )+",
        "identifier navigationMode submissionMode",
    ),
    "itemSessionControl": Allowed(
        optional="maxAttempts showFeedback allowReview showSolution allowSkipping"
    ),
    "assessmentSection": Allowed(
        "(selection )?(ordering )?(rubricBlock )*((assessmentItemRef|assessmentSection) )*",
        "identifier title visible",
    ),
    "selection": Allowed(required="select"),
    "rubricBlock": Allowed("(p )*", "view"),
    "assessmentItemRef": Allowed(required="identifier href", optional="category"),
    "outcomeProcessing": Allowed("(setOutcomeValue )*"),
    "testFeedback": Allowed(
        "(p )*", "access outcomeIdentifier showHide identifier", optional="title"
    ),
}
VOCABULARY = {
    "cardinality": {"single", "ordered"},
    "baseType": {"float", "identifier", "boolean", "string"},
    "showHide": {"show", "hide"},
    "view": {"candidate", "scorer"},
    "access": {"atEnd"},
    "navigationMode": {"linear", "nonlinear"},
    "submissionMode": {"individual", "simultaneous"},
    **{name: {"true", "false"} for name in ("shuffle", "visible", "adaptive", "timeDependent")},
}


def faults(root: ET.Element, namespace: str) -> Iterator[str]:
    """What the standard does not allow in ``root`` and below it."""
    for element in root.iter():
        tag = element.tag.removeprefix(namespace)
        allowed = GRAMMAR.get(tag)
        if allowed is None:
            yield f"{tag} is no element known here"
            continue
        children = "".join(f"{child.tag.removeprefix(namespace)} " for child in element)
        if not re.fullmatch(allowed.children, children):
            yield f"{tag} holds {children or 'nothing'}"
        words = "".join([element.text or "", *(child.tail or "" for child in element)])
        if words.strip() and not allowed.text:
            yield f"{tag} holds words"
        required, given = set(allowed.required.split()), set(element.attrib)
        if not required <= given <= required | set(allowed.optional.split()):
            yield f"{tag} has the attributes {sorted(given)}"
        for name, said in element.attrib.items():
            if said not in VOCABULARY.get(name, {said}):
                yield f"{tag} says {name}={said}"
            if name.lower().endswith("identifier") and not IDENTIFIER.fullmatch(said):
                yield f"{tag} is called {said}"
