"""A paper, or all papers of a class, as a package of the open standard QTI 2.1 for a platform.

A package is a zip: a manifest, one test and its items; the same bytes whenever made again. That
of a student holds their paper. That of a class asks the same questions with the numbers of all
papers, of which the platform draws one set for each learner; it names nobody. Both hold the
answers: they are for the instructor, like the key.
"""

import io
import json
import zipfile
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from hashlib import sha256
from xml.etree import ElementTree as ET

from ropecalc import cautions
from ropecalc.teaching.papers.paper import Item, Paper, item_as_document
from ropecalc.teaching.papers.qti_item import (
    MUST_PASS,
    item_document,
    item_title,
    picture_file,
)
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
from ropecalc.teaching.questions.diagrams import picture_of
from ropecalc.teaching.questions.diagrams.svg import svg
from ropecalc.units import Display

MOST_VARIANTS = 40
"""How many variants of a question go into the package of a class; platforms slow down with more."""
_MANIFEST, _TEST, _FOLDER = "imsmanifest.xml", "test.xml", "items/"
_PACKAGING = "http://www.imsglobal.org/xsd/imscp_v1p1"
_LEARNING_OBJECT = "http://ltsc.ieee.org/xsd/LOM"
_CATEGORY = "must-pass"
_LONG_AGO = (1980, 1, 1, 0, 0, 0)  # the earliest date a zip can hold


@dataclass(frozen=True)
class Slot:
    """One place of a test: the question's number, and the items of which a learner gets one."""

    number: int
    variants: tuple[Item, ...]

    @property
    def named(self) -> tuple[tuple[str, Item], ...]:
        """Each variant with the name its file has in the package."""
        if len(self.variants) == 1:
            return ((f"q{self.number:02d}", self.variants[0]),)
        return tuple(
            (f"q{self.number:02d}-{variant:03d}", item)
            for variant, item in enumerate(self.variants, 1)
        )


@dataclass(frozen=True)
class Assessment:
    """What becomes a package: title, minutes and slots; ``name`` is the test's identifier."""

    name: str
    title: str
    minutes: int
    slots: tuple[Slot, ...]


def paper_package(paper: Paper, display: Display | None = None) -> bytes:
    """The package of one student's paper, with their own numbers and the paper's code."""
    slots = tuple(Slot(number, (item,)) for number, item in enumerate(paper.items, 1))
    title = f"{paper.title}, paper {paper.code}"
    made = Assessment(f"paper-{paper.code}", title, paper.minutes, slots)
    return _package(made, display or Display(), paper.code)


def class_package(papers: Sequence[Paper], display: Display | None = None) -> bytes:
    """One package for everybody: each question with the numbers of ``papers``.

    Those of the first :data:`MOST_VARIANTS` are enough that neighbours can hardly copy.
    Raises :class:`PaperError` where the papers do not ask the same, or there is none.
    """
    if not papers:
        raise PaperError("", "There is no paper left to export.")
    if len({_asks(paper) for paper in papers}) > 1:
        raise PaperError("", "The papers do not ask the same questions. Export them one by one.")
    first, taken = papers[0], papers[:MOST_VARIANTS]
    slots = tuple(
        Slot(number, _distinct(items))
        for number, items in enumerate(zip(*(p.items for p in taken), strict=True), 1)
    )
    digest = sha256(json.dumps([p.code for p in taken]).encode()).hexdigest()
    made = Assessment(f"class-{digest[:12]}", first.title, first.minutes, slots)
    return _package(made, display or Display())


def _asks(paper: Paper) -> tuple[object, ...]:
    return (
        paper.title,
        paper.minutes,
        *((item.template.key, bool(item.options), item.must_pass) for item in paper.items),
    )


def _distinct(items: Iterable[Item]) -> tuple[Item, ...]:
    return tuple({json.dumps(item_as_document(item)): item for item in items}.values())


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
    must = sum(slot.variants[0].must_pass for slot in assessment.slots)
    root = document("assessmentTest", identifier=assessment.name, title=assessment.title)
    root.append(outcome("SCORE", "float", "0", normalMaximum=str(len(assessment.slots))))
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
    """References to a slot's items; several are a section of which one is drawn."""
    references = [_reference(name, item) for name, item in slot.named]
    if len(references) == 1:
        yield references[0]
        return
    yield element(
        "assessmentSection",
        element("selection", select="1"),
        *references,
        identifier=f"q{slot.number:02d}",
        title=item_title(slot.number, slot.variants[0]),
        visible="false",
    )


def _reference(name: str, item: Item) -> ET.Element:
    category = {"category": _CATEGORY} if item.must_pass else {}
    return element("assessmentItemRef", identifier=name, href=_file(name), **category)


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
    """An item with its files: the document, and its picture if it has one."""

    name: str
    title: str
    item: Item
    files: dict[str, bytes]


def _content(number: int, name: str, item: Item, display: Display) -> _Content:
    title, picture = item_title(number, item), picture_of(item.drawn, display)
    files = {_file(name): written(item_document(name, title, item, display, picture))}
    if picture is not None:
        files[_FOLDER + picture_file(name)] = svg(picture).encode("utf-8")
    return _Content(name, title, item, files)


def _package(assessment: Assessment, display: Display, remark: str = "") -> bytes:
    """The zip; ``remark`` stands in it uncompressed, so that the file can be found by it."""
    contents = [
        _content(slot.number, name, item, display)
        for slot in assessment.slots
        for name, item in slot.named
    ]
    files = {
        _MANIFEST: written(_manifest(assessment.name, assessment.title, contents)),
        _TEST: written(_test(assessment)),
    }
    for content in contents:
        files |= content.files
    return _zipped(files, remark)


def _file(name: str) -> str:
    return f"{_FOLDER}{name}.xml"


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
                        content.title,
                        f"After this you can {content.item.template.objective}.",
                        *([MUST_PASS] if content.item.must_pass else []),
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
