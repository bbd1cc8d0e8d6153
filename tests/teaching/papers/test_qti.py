"""Packages for learning platforms, read and marked by a general reader of the standard.

The reader (pyslet) knows nothing of this course: it takes the items out of the package, gives
them answers and runs their response processing. What it finds is compared with the course's own
marking of the same answers.
"""

import io
import itertools
import logging
import math
import re
import zipfile
from collections.abc import Mapping
from dataclasses import replace
from typing import Any
from xml.etree import ElementTree as ET

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pyslet.imscpv1p2 import ManifestDocument
from pyslet.qtiv2.variables import ItemSessionState
from pyslet.qtiv2.xml import QTIDocument

from ropecalc import cautions
from ropecalc.mechanics import anchors
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.papers.issue import Issue
from ropecalc.teaching.papers.making import make_issue
from ropecalc.teaching.papers.paper import GOES_ON, RIGHT, Item, Paper
from ropecalc.teaching.papers.qti import MOST_VARIANTS, class_package, paper_package
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.applied import Applied
from ropecalc.teaching.questions.bank import BANK
from ropecalc.teaching.questions.diagrams import picture_of
from ropecalc.teaching.questions.draw import draw, restored
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.knob import Knob
from ropecalc.teaching.questions.marking import Verdict, mark
from ropecalc.teaching.questions.ordering import Ordering
from ropecalc.teaching.questions.setting import RigTask, WrongRelation
from ropecalc.teaching.questions.template import Template
from ropecalc.teaching.questions.wanted import Wanted
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.units import Display
from tests.teaching.papers.examples import BANK as SMALL
from tests.teaching.papers.examples import blueprint, issue
from tests.teaching.papers.qti_grammar import faults

pytestmark = pytest.mark.filterwarnings("ignore::DeprecationWarning:pyslet")
QTI = "{http://www.imsglobal.org/xsd/imsqti_v2p1}"
PACKAGING = "{http://www.imsglobal.org/xsd/imscp_v1p1}"
CLASS: Issue = issue("Ada B.", "heron-2", "heron-3")
PAPER = CLASS.papers[0]
SCENARIO = next(iter(SCENARIOS.values()))
IMPERIAL = Display(force="lbf", length="ft", mass="lb")
NUMBERS = [question for question in BANK.values() if isinstance(question, Template)]
ORDERS = [question for question in BANK.values() if isinstance(question, Ordering)][:3]
RIGS = [t for t in BANK.values() if isinstance(t, RigTask) and len(t.knobs) == 1][:3]
SAMPLE = {t.key: t for t in (*{t.kind: t for t in NUMBERS}.values(), *NUMBERS[::8])}
"""Numbers of every kind and from every part of the bank."""
MIXED = Paper("Mixed", "ada", 90, tuple(Item(draw(t, "rain")) for t in SAMPLE.values()))


def files(package: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(package)) as opened:
        assert opened.testzip() is None
        return {name: opened.read(name) for name in opened.namelist()}


def read(document: bytes) -> Any:
    """A document as the outside reader has it; an element out of place is an error there."""
    found = QTIDocument()
    found.read(io.BytesIO(document))
    return found.root


def outcomes(item: Any, answer: str | list[str] | None) -> tuple[float, str | None]:
    """The score and the name of the feedback that the item itself gives to ``answer``."""
    state = ItemSessionState(item)
    state.begin_session()
    if answer is not None:
        state["RESPONSE"].set_value(answer)
    state.end_attempt()
    return state["SCORE"].value, state["FEEDBACK"].value


def told(document: bytes) -> dict[str, str]:
    """What each feedback says; no two have one name."""
    found = list(ET.fromstring(document).iter(f"{QTI}modalFeedback"))
    said = {one.attrib["identifier"]: "".join(one.itertext()).strip() for one in found}
    assert len(said) == len(found)
    return said


def in_package(paper: Paper, display: Display) -> list[tuple[Item, bytes]]:
    found = files(paper_package(paper, display))
    return [(item, found[f"items/q{n:02d}.xml"]) for n, item in enumerate(paper.items, 1)]


def numbers(item: Item, display: Display) -> Mapping[str, float]:
    """The right number and every mistake's, in the unit that the item asks for."""
    unit = display.unit(item.template.kind)
    return {
        option: item.option_value(option) / unit.factor for option in (RIGHT, *item.drawn.mistaken)
    }


@pytest.mark.parametrize("display", [Display(), IMPERIAL], ids=["SI", "lbf"])
def test_numbers_are_marked_from_the_package_alone(display: Display) -> None:
    for item, document in in_package(MIXED, display):
        outside, said = read(document), told(document)
        for option, number in numbers(item, display).items():
            score, feedback = outcomes(outside, f"{number:.9g}")
            if option == RIGHT:
                assert (score, feedback) == (1.0, "right"), item.template.key
                assert said["right"].startswith("Right.")
            else:
                assert (score, feedback) == (0.0, f"mistake-{option}"), item.template.key
                assert item.template.mistake(option).why in said[f"mistake-{option}"]
        assert outcomes(outside, "-7.77e9") == (0.0, "wrong")
        assert outcomes(outside, None) == (0.0, None)


SOME = in_package(MIXED, Display())[::3]
OFF = st.floats(-0.2, 0.2) | st.sampled_from((0.0, -2.0, 1e3 - 1, 1 / 0.3048 - 1, 99.0))
"""By which share a number is off; also the other sign and other units."""


@settings(max_examples=60, deadline=None)
@given(st.integers(0, len(SOME) - 1), OFF, st.integers(0, 9))
def test_a_number_near_the_answer_or_a_mistake_is_marked_as_the_course_marks_it(
    which: int, off: float, near: int
) -> None:
    item, document = SOME[which]
    of = list(numbers(item, Display()).values())
    number = of[near % len(of)] * (1 + off)
    unit = Display().unit(item.template.kind)
    ours = mark(item.drawn, f"{number:.9g} {unit.symbol}")
    score, feedback = outcomes(read(document), f"{number:.9g}")
    assert score == float(ours.verdict is Verdict.RIGHT)
    named = f"mistake-{ours.mistake}" if ours.mistake else ours.verdict
    assert feedback is not None and feedback.removesuffix("-2") == named
    if ours.verdict in (Verdict.RIGHT, Verdict.MISTAKE, Verdict.SIGN):
        assert told(document)[feedback] == ours.feedback


def test_a_rougher_way_that_the_course_accepts_is_right_with_its_own_sentence() -> None:
    drawn = draw(next(question for question in NUMBERS if question.accepted), "rain")
    (_, document), *_ = in_package(Paper("Rough", "ada", 5, (Item(drawn),)), Display())
    unit = Display().unit(drawn.template.kind)
    for way, rough in drawn.template.approximated(drawn.values):
        score, feedback = outcomes(read(document), f"{rough / unit.factor:.9g}")
        assert score == 1.0 and feedback == "right-2"
        assert way.note in told(document)[feedback]


def test_a_choice_is_marked_and_explained_from_the_package_alone() -> None:
    chosen = [pair for pair in in_package(PAPER, Display()) if pair[0].options]
    assert len(chosen) == 2
    for item, document in chosen:
        outside, said = read(document), told(document)
        shown = [c.text for c in ET.fromstring(document).iter(f"{QTI}simpleChoice")]
        for letter, option, text in zip("ABCDEFGH", item.options, shown, strict=False):
            assert text == Display().show(item.option_value(option), item.template.kind)
            if option == RIGHT:
                assert outcomes(outside, letter) == (1.0, "right")
                assert said["right"].startswith("Right.")
            else:
                assert outcomes(outside, letter) == (0.0, f"mistake-{option}")
                assert item.template.mistake(option).why in said[f"mistake-{option}"]
        assert outcomes(outside, None) == (0.0, None)


@pytest.mark.parametrize("question", ORDERS, ids=lambda question: question.key)
def test_an_order_is_marked_and_explained_from_the_package_alone(question: Ordering) -> None:
    item = Item(draw(question, "rain"))
    (_, document), *_ = in_package(Paper("Order", "ada", 5, (item,)), Display())
    outside, said = read(document), told(document)
    letters = question.answer(item.drawn.values).split()
    offered = [c.text for c in ET.fromstring(document).iter(f"{QTI}simpleChoice")]
    assert tuple(offered) == question.particulars(item.drawn.values, Display())
    seen = set()
    for order in itertools.permutations(letters):
        ours = mark(item.drawn, " ".join(order), Display())
        score, feedback = outcomes(outside, list(order))
        assert score == float(ours.verdict is Verdict.RIGHT)
        assert feedback is not None
        if feedback != "wrong":
            assert said[feedback] == ours.feedback
        seen.add(feedback.partition("-")[0])
    assert seen >= {"right", "mistake", "sign"}
    assert outcomes(outside, None) == (0.0, None)


LEGS = RigTask(
    key="two-legs-spread",
    title="How far two legs may stand apart",
    stem="The load weighs {load}.",
    asked="An angle at which a leg carries between 0.6 and 0.7 of the load",
    givens=(Given(q.LOAD, 2.0, 3.0, 0.1, "kN"),),
    knobs=(Knob(Given(q.LEG_ANGLE, 10, 150, 1, "°"), 140, "the angle between the legs"),),
    words="The legs stand {leg_angle} apart.",
    wanted=(
        Wanted(
            (Applied(anchors.two_leg_anchor),), lambda v: 0.6 * v["load"], lambda v: 0.7 * v["load"]
        ),
    ),
    mistakes=(
        WrongRelation(
            "whole-angle",
            "The whole angle taken for half of it",
            "Each leg is half the angle off.",
            lambda v: v.load / 2 / np.cos(v.leg_angle),
        ),
    ),
    reason="The wider, the more.",
    difficulty=1,
    objective="spread two legs",
)


def test_a_setting_is_typed_and_right_inside_the_band_alone() -> None:
    (_, document), *_ = in_package(Paper("Legs", "ada", 5, (Item(draw(LEGS, "rain")),)), Display())
    outside, said = read(document), told(document)
    least, most = (2 * math.degrees(math.acos(0.5 / share)) for share in (0.6, 0.7))
    for degrees, expected in (
        (least - 0.001, (0.0, "wrong")),
        (least + 0.001, (1.0, "right")),
        (most - 0.001, (1.0, "right")),
        (most + 0.001, (0.0, "wrong")),
        (least / 2 - 0.001, (0.0, "wrong")),
        (least / 2 + 0.001, (0.0, "mistake-whole-angle")),
        (most / 2 - 0.001, (0.0, "mistake-whole-angle")),
        (200.0, (0.0, "wrong")),
    ):
        assert outcomes(outside, f"{degrees:.6f}") == expected
    assert said["right"] == "Right. The wider, the more."
    key = ET.fromstring(document).find(f".//{QTI}correctResponse/{QTI}value")
    assert key is not None and outcomes(outside, key.text) == (1.0, "right")
    (line,) = LEGS.particulars({"load": 2e3}, Display())
    assert line in "".join(ET.fromstring(document).itertext())


@pytest.mark.parametrize("task", RIGS, ids=lambda task: task.key)
def test_a_task_of_the_bank_is_marked_as_the_course_marks_it(task: RigTask) -> None:
    item = Item(draw(task, "rain"))
    (_, document), *_ = in_package(Paper("Rig", "ada", 5, (item,)), IMPERIAL)
    outside, [knob] = read(document), task.knobs
    unit, seen = IMPERIAL.unit(knob.grid.variable.kind), set()
    for stop in knob.stops[::3]:
        number = f"{stop / unit.factor:.9g}"
        ours = mark(item.drawn, f"{number} {unit.symbol}", IMPERIAL)
        expected = f"mistake-{ours.mistake}" if ours.mistake else ours.verdict.value
        assert outcomes(outside, number) == (float(expected == "right"), expected)
        seen.add(expected)
    assert {"right", "wrong"} < seen


def test_what_no_platform_can_ask_is_refused_in_a_sentence() -> None:
    two = replace(LEGS, knobs=(*LEGS.knobs, Knob(Given(q.DROP, 1, 9, 1, "m"), 2, "the drop")))
    paper = Paper("Two", "ada", 5, (Item(draw(LEGS, "rain")), Item(restored(two, {"load": 2e3}))))
    with pytest.raises(PaperError, match=r"legs may stand apart” cannot .* sets 2 things at once"):
        paper_package(paper)


def test_the_reader_finds_nothing_to_complain_about(caplog: pytest.LogCaptureFixture) -> None:
    for package in (paper_package(PAPER), class_package(CLASS.papers), paper_package(MIXED)):
        with caplog.at_level(logging.WARNING):
            for name, content in files(package).items():
                if name != "imsmanifest.xml":
                    read(content)
                else:
                    manifest = ManifestDocument()
                    manifest.read(io.BytesIO(content))
    assert caplog.messages == []
    broken = files(paper_package(PAPER))["items/q01.xml"].replace(b"<itemBody>", b"<itemBody><x/>")
    with pytest.raises(Exception, match="in ItemBody"):
        read(broken)


def test_every_document_keeps_to_the_standards_grammar() -> None:
    others = Paper("Others", "ada", 5, tuple(Item(draw(t, "rain")) for t in (*ORDERS, LEGS)))
    packages = [paper_package(paper) for paper in (PAPER, MIXED, others)]
    for package in (*packages, class_package(CLASS.papers)):
        for name, content in files(package).items():
            if name.endswith(".xml") and name != "imsmanifest.xml":
                assert [*faults(ET.fromstring(content), QTI)] == [], name


@pytest.mark.parametrize(
    ("written", "altered", "fault"),
    [
        (b"<itemBody>", b"<itemBody><x/>", "x is no element"),
        (b"<responseIf>", b"<responseIf><p/>", "responseIf holds"),
        (b"<responseProcessing>", b"<responseProcessing>x", "responseProcessing holds words"),
        (b'baseType="float"', b'baseType="flot"', "baseType=flot"),
        (b'cardinality="single"', b"", "attributes"),
        (b'identifier="right"', b'identifier="2 right"', "is called 2 right"),
    ],
)
def test_the_grammar_notices(written: bytes, altered: bytes, fault: str) -> None:
    document = files(paper_package(PAPER))["items/q02.xml"]
    assert written in document
    found = [*faults(ET.fromstring(document.replace(written, altered, 1)), QTI)]
    assert any(fault in one for one in found)


def test_the_entry_names_its_unit_and_turns_a_comma_down() -> None:
    for display in (Display(), IMPERIAL):
        for item, document in in_package(MIXED, display):
            body = ET.fromstring(document).find(f"{QTI}itemBody")
            assert body is not None
            words, unit = "".join(body.itertext()), display.unit(item.template.kind)
            assert f"in {unit.words} ({unit.symbol})" in words or not unit.symbol
            assert "decimal point" in words
            assert cautions.KNOWLEDGE_CHECK in words
            entry = next(body.iter(f"{QTI}textEntryInteraction"))
            for fits in ("3", "3.", "3.52", "-0.5", "+1.2e3"):
                assert re.fullmatch(entry.attrib["patternMask"], fits)
            for other in ("3,52", "3.5 kN", "1.000.000", "x"):
                assert not re.fullmatch(entry.attrib["patternMask"], other)


def test_the_test_holds_title_time_caution_and_what_must_be_right() -> None:
    found = files(paper_package(PAPER))
    root = ET.fromstring(found["test.xml"])
    assert root.attrib["title"] == f"{PAPER.title}, paper {PAPER.code}"
    assert root.find(f"{QTI}timeLimits").attrib == {"maxTime": "2400"}  # type: ignore[union-attr]
    rubrics = ["".join(r.itertext()).strip() for r in root.iter(f"{QTI}rubricBlock")]
    assert rubrics == [cautions.KNOWLEDGE_CHECK, cautions.AUTHORITY]
    at_end = root.find(f"{QTI}testFeedback")
    assert at_end is not None and cautions.KNOWLEDGE_CHECK in "".join(at_end.itertext())
    must = [r.attrib["identifier"] for r in root.iter() if r.attrib.get("category") == "must-pass"]
    assert must == [f"q{n:02d}" for n, item in enumerate(PAPER.items, 1) if item.must_pass] != []
    title = ET.fromstring(found[f"items/{must[0]}.xml"]).attrib["title"]
    assert title == "2. Hauling beside track lines (must be right)"
    assert b"must be right" in found["imsmanifest.xml"]


def test_a_picture_lies_beside_its_item_with_its_words() -> None:
    drawn = [(item, picture_of(item.drawn, IMPERIAL)) for item in MIXED.items]
    found = files(paper_package(MIXED, IMPERIAL))
    assert any(picture is not None for _, picture in drawn)
    for number, (_, picture) in enumerate(drawn, 1):
        images = list(ET.fromstring(found[f"items/q{number:02d}.xml"]).iter(f"{QTI}img"))
        assert len(images) == (picture is not None)
        for image in images:
            assert picture is not None and image.attrib["alt"] == picture.alternative
            root = ET.fromstring(found[f"items/{image.attrib['src']}"])
            assert root.tag == "{http://www.w3.org/2000/svg}svg"
            for side in ("width", "height"):
                assert abs(float(root.attrib[side]) - int(image.attrib[side])) < 0.6


@pytest.mark.parametrize("package", [paper_package(PAPER), class_package(CLASS.papers)])
def test_manifest_test_and_items_refer_to_each_other(package: bytes) -> None:
    found = files(package)
    manifest = ET.fromstring(found["imsmanifest.xml"])
    resources = {r.attrib["identifier"]: r for r in manifest.iter(f"{PACKAGING}resource")}
    hrefs = {f.attrib["href"] for f in manifest.iter(f"{PACKAGING}file")}
    assert hrefs | {"imsmanifest.xml"} == set(found)
    items = {i: r.attrib["href"] for i, r in resources.items() if "item" in r.attrib["type"]}
    needed = {d.attrib["identifierref"] for d in resources["test"].iter(f"{PACKAGING}dependency")}
    assert needed == set(items)
    references = ET.fromstring(found["test.xml"]).iter(f"{QTI}assessmentItemRef")
    assert {r.attrib["identifier"]: r.attrib["href"] for r in references} == items
    for name, href in items.items():
        assert ET.fromstring(found[href]).attrib["identifier"] == name


def test_the_package_of_a_class_draws_one_students_numbers_for_each_question() -> None:
    found = files(class_package(CLASS.papers))
    sections = list(ET.fromstring(found["test.xml"]).iter(f"{QTI}assessmentSection"))
    drawn = [s for s in sections if s.find(f"{QTI}selection") is not None]
    assert len(drawn) == len(PAPER.items)
    for section in drawn:
        assert section.find(f"{QTI}selection").attrib == {"select": "1"}  # type: ignore[union-attr]
        variants = {
            found[r.attrib["href"]].partition(b"<responseDeclaration")[2]
            for r in section.iter(f"{QTI}assessmentItemRef")
        }
        assert len(variants) == len(CLASS.papers)
    everything = b"".join(found.values())
    for paper in CLASS.papers:
        assert paper.student.encode() not in everything and paper.code.encode() not in everything


def test_the_same_paper_twice_is_no_two_variants() -> None:
    names = files(class_package((PAPER, PAPER)))
    assert sorted(n for n in names if re.fullmatch(r"items/.*\.xml", n)) == [
        f"items/q{n:02d}.xml" for n in range(1, len(PAPER.items) + 1)
    ]


def test_a_large_class_needs_no_more_variants_than_platforms_bear() -> None:
    large = issue(*(f"heron-{n}" for n in range(MOST_VARIANTS + 2))).papers
    names = [n for n in files(class_package(large)) if re.fullmatch(r"items/q02-.*\.xml", n)]
    assert 0.9 * MOST_VARIANTS < len(names) <= MOST_VARIANTS
    assert class_package(large) == class_package(large[:MOST_VARIANTS])


def scenario_papers() -> tuple[Paper, ...]:
    plan = blueprint(scenarios=[SCENARIO.key], as_choice=0)
    return make_issue(plan, ("heron-1", "heron-2", "heron-3"), SMALL).papers


def test_a_scenario_stays_together_with_its_story_and_its_open_question() -> None:
    papers = scenario_papers()
    found = files(class_package(papers))
    root = ET.fromstring(found["test.xml"])
    first = papers[0].scenarios[0].first
    together = [
        [r.attrib["identifier"] for r in section.findall(f"{QTI}assessmentItemRef")]
        for section in root.iter(f"{QTI}assessmentSection")
        if "together" in section.attrib["identifier"]
    ]
    assert len(together) == len(papers)
    assert len(together[0]) == len(SCENARIO.parts) + len(SCENARIO.judged)
    for paper, names in zip(papers, together, strict=True):
        story = paper.scenarios[0].story(Display())
        for offset, name in enumerate(names):
            document = found[f"items/{name}.xml"]
            words = [p.text for p in ET.fromstring(document).iter(f"{QTI}p")]
            assert story in words
            if offset < len(SCENARIO.parts):
                item = paper.items[first - 1 + offset]
                assert (GOES_ON in words) == paper.scenarios[0].goes_on(first + offset)
                right = Display().value(item.drawn.answer, item.template.kind)  # type: ignore[attr-defined]
                assert outcomes(read(document), f"{right:.9g}") == (1.0, "right")


def test_an_open_question_is_left_to_a_person() -> None:
    paper = scenario_papers()[0]
    found = files(paper_package(paper))
    for number, judged in enumerate(paper.open_questions, len(paper.items) + 1):
        document = found[f"items/q{number:02d}.xml"]
        root = ET.fromstring(document)
        assert len(list(root.iter(f"{QTI}extendedTextInteraction"))) == 1
        scorer = next(r for r in root.iter(f"{QTI}rubricBlock") if r.attrib["view"] == "scorer")
        assert tuple(p.text for p in scorer) == judged.points
        assert root.find(f"{QTI}responseProcessing") is None
        assert [*faults(root, QTI)] == []
    test = ET.fromstring(found["test.xml"])
    total = next(o for o in test.iter(f"{QTI}outcomeDeclaration"))
    points = sum(len(judged.points) for judged in paper.open_questions)
    assert total.attrib["normalMaximum"] == str(len(paper.items) + points)


def test_papers_that_ask_something_else_go_into_no_common_package() -> None:
    other = issue("cy", title="Another").papers
    with pytest.raises(PaperError, match="do not ask the same"):
        class_package((PAPER, *other))
    with pytest.raises(PaperError, match="no paper left"):
        class_package(())


def test_the_bytes_are_the_same_each_time_and_the_papers_code_can_be_found() -> None:
    assert paper_package(PAPER) == paper_package(issue("Ada B.").papers[0])
    assert class_package(CLASS.papers) == class_package(
        issue("Ada B.", "heron-2", "heron-3").papers
    )
    assert PAPER.code.encode() in paper_package(PAPER)
    assert PAPER.student.encode() not in b"".join(files(paper_package(PAPER)).values())
