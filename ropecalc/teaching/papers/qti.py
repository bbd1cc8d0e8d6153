"""A paper, or all papers of a class, as a package of the open standard QTI 2.1 for a platform.

A package is a zip: a manifest, one test and its items; the same bytes whenever made again. That
of a student holds their paper. That of a class asks the same questions with the numbers of all
papers, of which the platform draws one set for each learner; it names nobody. Both hold the
answers: they are for the instructor, like the key.
"""

import io
import json
import zipfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from hashlib import sha256
from xml.etree import ElementTree as ET

from ropecalc import cautions
from ropecalc.teaching.papers.paper import Paper
from ropecalc.teaching.papers.qti_blocks import Slot, slots
from ropecalc.teaching.papers.qti_item import MUST_PASS, Asked
from ropecalc.teaching.papers.qti_xml import (
    INSTANCE,
    NAMESPACE,
    assign,
    document,
    element,
    outcome,
    paragraph,
    value,
    written,
)
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.units import Display

MOST_VARIANTS = 40
"""How many variants of a question go into the package of a class; platforms slow down with more."""
_MANIFEST, _TEST, _FOLDER = "imsmanifest.xml", "test.xml", "items/"
_PACKAGING = "http://www.imsglobal.org/xsd/imscp_v1p1"
_LEARNING_OBJECT = "http://ltsc.ieee.org/xsd/LOM"
_CATEGORY = "must-pass"
_LONG_AGO = (1980, 1, 1, 0, 0, 0)  # the earliest date a zip can hold


@dataclass(frozen=True)
class Assessment:
    """What becomes a package: title, minutes and slots; ``name`` is the test's identifier."""

    name: str
    title: str
    minutes: int
    slots: tuple[Slot, ...]


def paper_package(paper: Paper, display: Display | None = None) -> bytes:
    """The package of one student's paper, with their own numbers and the paper's code."""
    display = display or Display()
    title = f"{paper.title}, paper {paper.code}"
    made = Assessment(f"paper-{paper.code}", title, paper.minutes, slots((paper,), display))
    return _package(made, display, paper.code)


def class_package(papers: Sequence[Paper], display: Display | None = None) -> bytes:
    """One package for everybody: each question with the numbers of ``papers``.

    Those of the first :data:`MOST_VARIANTS` are enough that neighbours can hardly copy.

    Raises :class:`PaperError` where the papers do not ask the same, or there is none.
    """
    if not papers:
        raise PaperError("", "There is no paper left to export.")
    display, taken = display or Display(), papers[:MOST_VARIANTS]
    try:
        found = slots(taken, display)
    except ValueError as error:
        raise PaperError("", f"One package cannot hold all: {error}. Export them singly.") from None
    digest = sha256(json.dumps([p.code for p in taken]).encode()).hexdigest()
    made = Assessment(f"class-{digest[:12]}", papers[0].title, papers[0].minutes, found)
    return _package(made, display)


# --- the test ---------------------------------------------------------------------------------


def _test(assessment: Assessment) -> ET.Element:
    section = element(
        "assessmentSection",
        *(
            element("rubricBlock", paragraph(sentence), view="candidate")
            for sentence in (cautions.KNOWLEDGE_CHECK, cautions.AUTHORITY)
        ),
        *(part for slot in assessment.slots for part in _parts(slot)),
        identifier="questions",
        title=assessment.title,
        visible="true",
    )
    part = element(
        "testPart",
        element(
            "itemSessionControl",
            maxAttempts="1",
            showFeedback="true",
            allowReview="true",
            showSolution="false",
            allowSkipping="true",
        ),
        section,
        identifier="paper",
        navigationMode="nonlinear",
        submissionMode="simultaneous",
    )
    first = [asked for slot in assessment.slots for asked in slot.variants[0]]
    must = sum(asked.must_pass for asked in first)
    root = document("assessmentTest", identifier=assessment.name, title=assessment.title)
    root.append(outcome("SCORE", "float", "0", normalMaximum=str(sum(one.marks for one in first))))
    root.append(outcome("MUST_PASS", "boolean", "false"))
    root.append(outcome("CAUTION", "identifier", "shown"))
    root.append(element("timeLimits", maxTime=str(60 * assessment.minutes)))
    root.append(part)
    root.append(
        element(
            "outcomeProcessing",
            assign("SCORE", _total()),
            assign("MUST_PASS", _all_right(must)),
        )
    )
    root.append(
        element(
            "testFeedback",
            paragraph(cautions.KNOWLEDGE_CHECK),
            access="atEnd",
            outcomeIdentifier="CAUTION",
            showHide="show",
            identifier="shown",
            title="What a score says",
        )
    )
    return root


def _parts(slot: Slot) -> Iterator[ET.Element]:
    """References to a slot's items; several variants are a section of which one is drawn."""
    variants = [[_reference(name, asked) for name, asked in variant] for variant in slot.named]
    if len(variants) == 1:
        yield from variants[0]
        return
    yield element(
        "assessmentSection",
        element("selection", select="1"),
        *(_together(slot, place, variant) for place, variant in enumerate(variants, 1)),
        identifier=slot.name,
        title=slot.variants[0][0].title,
        visible="false",
    )


def _together(slot: Slot, place: int, references: Sequence[ET.Element]) -> ET.Element:
    """What is drawn at once: an item, or a section of those that share their numbers."""
    if len(references) == 1:
        return references[0]
    return element(
        "assessmentSection",
        *references,
        identifier=f"{slot.name}-together-{place:03d}",
        title=slot.variants[0][0].title,
        visible="false",
    )


def _reference(name: str, asked: Asked) -> ET.Element:
    category = {"category": _CATEGORY} if asked.must_pass else {}
    return element("assessmentItemRef", identifier=name, href=f"{_FOLDER}{name}.xml", **category)


def _total(**only: str) -> ET.Element:
    return element("sum", element("testVariables", variableIdentifier="SCORE", **only))


def _all_right(must: int) -> ET.Element:
    """Whether every question that must be right is; true where there is none."""
    if not must:
        return value("boolean", "true")
    return element("gte", _total(includeCategory=_CATEGORY), value("float", str(must)))


# --- the package ------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Content:
    """An item of the package with its files, by their paths."""

    name: str
    asked: Asked
    files: dict[str, bytes]


def _package(assessment: Assessment, display: Display, remark: str = "") -> bytes:
    """The zip; ``remark`` stands in it uncompressed, so that the file can be found by it."""
    contents = [
        _Content(name, asked, {_FOLDER + p: c for p, c in asked.files(name, display).items()})
        for slot in assessment.slots
        for variant in slot.named
        for name, asked in variant
    ]
    files = {
        _MANIFEST: written(_manifest(assessment.name, assessment.title, contents)),
        _TEST: written(_test(assessment)),
    }
    for content in contents:
        files |= content.files
    return _zipped(files, remark)


def _manifest(name: str, title: str, contents: Sequence[_Content]) -> ET.Element:
    test = _resource("test", "imsqti_test_xmlv2p1", (_TEST,), _described(title))
    test.extend(element("dependency", identifierref=content.name) for content in contents)
    root = ET.Element(
        "manifest",
        {
            "xmlns": _PACKAGING,
            "xmlns:lom": _LEARNING_OBJECT,
            "xmlns:xsi": INSTANCE,
            "xsi:schemaLocation": f"{_PACKAGING} {_PACKAGING}.xsd {NAMESPACE} {NAMESPACE}.xsd",
            "identifier": f"package-{name}",
        },
    )
    root.append(
        element(
            "metadata",
            element("schema", "QTIv2.1 Package"),
            element("schemaversion", "1.0.0"),
            _described(title, cautions.KNOWLEDGE_CHECK),
        )
    )
    root.append(element("organizations"))
    root.append(
        element(
            "resources",
            test,
            *(
                _resource(
                    content.name,
                    "imsqti_item_xmlv2p1",
                    tuple(content.files),
                    _described(
                        content.asked.title,
                        content.asked.about,
                        *([MUST_PASS] if content.asked.must_pass else []),
                    ),
                )
                for content in contents
            ),
        )
    )
    return root


def _resource(name: str, kind: str, paths: Sequence[str], described: ET.Element) -> ET.Element:
    """A resource with its files, the document itself first."""
    return element(
        "resource",
        element("metadata", described),
        *(element("file", href=path) for path in paths),
        identifier=name,
        type=kind,
        href=paths[0],
    )


def _described(title: str, description: str = "", *keywords: str) -> ET.Element:
    """Learning-object metadata: title, description and keywords."""
    general = element("lom:general", element("lom:title", _string(title)))
    if description:
        general.append(element("lom:description", _string(description)))
    general.extend(element("lom:keyword", _string(keyword)) for keyword in keywords)
    return element("lom:lom", general)


def _string(text: str) -> ET.Element:
    return element("lom:string", text, language="en")


def _zipped(files: dict[str, bytes], remark: str) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as package:
        package.comment = remark.encode("ascii")
        for path, content in files.items():
            entry = zipfile.ZipInfo(path, _LONG_AGO)
            entry.create_system = 3  # the same on every system
            entry.external_attr = 0o644 << 16
            package.writestr(entry, content, zipfile.ZIP_DEFLATED)
    return out.getvalue()
