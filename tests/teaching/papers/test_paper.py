"""A student's paper: own numbers, own code, the same for ever, and back from the file."""

import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from ropecalc.teaching.papers.issue import FILE, Issue, pass_mark, read_issue, write_issue
from ropecalc.teaching.papers.paper import LETTERS, RIGHT, Item, Paper
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.bank import BANK as ALL
from ropecalc.teaching.questions.draw import draw
from ropecalc.teaching.questions.template import Template
from tests.teaching.papers.examples import BANK, blueprint, issue

FLAT: dict[str, Template] = {t.key: t for templates in BANK.values() for t in templates}


def test_students_get_the_same_questions_with_other_numbers() -> None:
    ada, bo = issue("ada", "bo").papers
    assert [i.template.key for i in ada.items] == [i.template.key for i in bo.items]
    assert all(a.drawn.values != b.drawn.values for a, b in zip(ada.items, bo.items, strict=True))
    assert ada.code != bo.code
    assert issue("ada").papers[0] == ada


def test_a_code_is_easy_to_write_down_and_stays() -> None:
    """The value is what this release gives; a change would orphan papers already handed out."""
    code = issue("ada").papers[0].code
    assert re.fullmatch(r"[2-9A-HJ-NP-Z]{4}-[2-9A-HJ-NP-Z]{4}", code)
    codes = {paper.code for paper in issue(*(f"s{n}" for n in range(300))).papers}
    assert len(codes) == 300


def test_a_code_changes_with_whatever_is_asked() -> None:
    paper = issue("ada").papers[0]
    item = paper.items[1]
    other = replace(item, drawn=replace(item.drawn, values={**item.drawn.values, "load": 1234.5}))
    choice = next(i for i in paper.items if i.options)
    turned = replace(choice, options=choice.options[::-1])
    swapped = tuple(turned if i is choice else i for i in paper.items)
    codes = {
        paper.code,
        replace(paper, student="Ada").code,
        replace(paper, title="B").code,
        replace(paper, items=(paper.items[0], other, *paper.items[2:])).code,
        replace(paper, items=swapped).code,
    }
    assert len(codes) == 5


def test_a_choice_offers_the_answer_once_among_the_mistakes() -> None:
    places = set()
    for paper in issue(*(f"s{n}" for n in range(40))).papers:
        for item in paper.items:
            if not item.options:
                assert item.right_letter == ""
                continue
            assert item.options.count(RIGHT) == 1
            assert set(item.options) == {RIGHT, *(m.key for m in item.template.mistakes)}
            values = [item.option_value(option) for option in item.options]
            assert len(set(values)) == len(values)
            assert item.option_value(RIGHT) == item.drawn.answer
            places.add(item.right_letter)
    assert places >= set(LETTERS[:4])


def test_judges_set_the_pass_mark() -> None:
    keys = [i.template.key for i in issue("ada").papers[0].items]
    plan = blueprint(judged=dict.fromkeys(keys, 0.5) | {keys[0]: 0.8})
    chosen = [FLAT[key] for key in keys]
    assert pass_mark(plan, chosen) == pytest.approx((5 * 0.5 + 0.8) / 6)
    assert pass_mark(blueprint(), chosen) == 0.75


def test_an_issue_is_read_back_as_it_was_and_keeps_no_seed(tmp_path: Path) -> None:
    made = issue("ada", "王 7")
    path = write_issue(made, tmp_path)
    assert read_issue(tmp_path, FLAT) == made
    assert blueprint().seed not in path.read_text(encoding="utf-8")
    assert made.without("ada").papers == made.papers[1:]
    assert made.paper("王 7") is made.papers[1]
    with pytest.raises(KeyError, match="nobody called “x”"):
        made.paper("x")


def test_a_choice_keeps_the_numbers_it_was_handed_out_with(tmp_path: Path) -> None:
    """A later release may compute another number for a mistake; the paper does not change."""
    write_issue(issue("ada"), tmp_path)
    place, item = next((n, i) for n, i in enumerate(issue("ada").papers[0].items) if i.options)

    def other_numbers(document: Any) -> None:
        kept = document["papers"][0]["items"][place]
        kept["offered"] = [1.1 * value for value in kept["offered"]]

    _altered(tmp_path, other_numbers)
    again = read_issue(tmp_path, FLAT).papers[0].items[place]
    for option in item.options:
        assert again.option_value(option) == pytest.approx(1.1 * item.option_value(option))


def test_a_file_from_before_numbers_were_kept_is_read(tmp_path: Path) -> None:
    made = issue("ada")
    write_issue(made, tmp_path)
    _altered(tmp_path, lambda d: [i.pop("offered") for i in d["papers"][0]["items"]])
    again = read_issue(tmp_path, FLAT)
    assert again == made
    for one, other in zip(again.papers[0].items, made.papers[0].items, strict=True):
        assert all(one.option_value(o) == other.option_value(o) for o in one.options)


def _altered(folder: Path, change: Any) -> None:
    document = json.loads((folder / FILE).read_text(encoding="utf-8"))
    change(document)
    (folder / FILE).write_text(json.dumps(document), encoding="utf-8")


def _other_load(document: Any) -> None:
    document["papers"][0]["items"][1]["values"]["load"] = 1000.0


def _other_question(document: Any) -> None:
    document["papers"][0]["items"][1]["question"] = "gone"


def _other_options(document: Any) -> None:
    document["papers"][0]["items"][0]["options"] = ["", "x"]


def _fewer_numbers(document: Any) -> None:
    next(i for i in document["papers"][0]["items"] if i["options"])["offered"].pop()


def _other_format(document: Any) -> None:
    document["format"] = 2


def _no_papers(document: Any) -> None:
    del document["papers"]


@pytest.mark.parametrize(
    ("change", "part"),
    [
        (_other_load, "the paper of ada no longer fits its code"),
        (_other_question, "asks “gone”"),
        (_other_options, "offers other options"),
        (_fewer_numbers, "is damaged"),
        (_other_format, "another release"),
        (_no_papers, "is damaged"),
    ],
)
def test_an_altered_issue_is_refused_in_words(tmp_path: Path, change: Any, part: str) -> None:
    write_issue(issue("ada"), tmp_path)
    _altered(tmp_path, change)
    with pytest.raises(PaperError) as caught:
        read_issue(tmp_path, FLAT)
    assert part in str(caught.value)


@pytest.mark.parametrize("content", [b"", b"[1, 2]", b"{", b"\xff\xfe", b"[" * 100_000])
def test_a_file_that_is_no_issue_is_refused_in_words(tmp_path: Path, content: bytes) -> None:
    (tmp_path / FILE).write_bytes(content)
    with pytest.raises(PaperError, match="damaged"):
        read_issue(tmp_path, FLAT)


def test_no_file_at_all_is_said(tmp_path: Path) -> None:
    with pytest.raises(PaperError, match="cannot be read"):
        read_issue(tmp_path, FLAT)


def test_an_issue_is_frozen() -> None:
    made = issue("ada")
    assert isinstance(made, Issue)
    with pytest.raises(AttributeError):
        made.title = "x"  # type: ignore[misc]


def test_a_paper_handed_out_long_ago_has_its_code_still() -> None:
    """Its code was written down when a number was the only kind of question."""
    keys = ("attendant-push", "tag-tension", "track-tension", "hub-uplift", "take-in-rate")
    items = []
    for number, key in enumerate((*keys, "two-equal-legs")):
        question = ALL[key]
        mistakes = [mistake.key for mistake in question.mistakes]
        options = ("", *mistakes) if number == 1 else ()
        items.append(Item(draw(question, "larch|Ada B.", number), options))
    assert Paper("Old paper", "Ada B.", 40, tuple(items)).code == "LRUJ-VUWA"
