"""Blueprints: read whole, and everything that is wrong said at once and in words."""

from pathlib import Path
from typing import Any

import pytest

from ropecalc.teaching.papers.blueprint import parse_blueprint, read_blueprint
from ropecalc.teaching.papers.trouble import PaperError
from tests.teaching.papers.examples import DOCUMENT, blueprint


def test_a_blueprint_says_what_the_document_says() -> None:
    made = blueprint()
    assert (made.title, made.minutes, made.pass_mark) == (DOCUMENT["title"], 40, 0.75)
    assert [(t.title, t.lessons, t.counts) for t in made.topics] == [
        ("Holding off", (8,), (1, 2, 1)),
        ("Along the raise", (9,), (0, 2, 0)),
    ]
    assert made.count == 6
    assert made.formula_sheet


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({"title": ""}, "title is missing"),
        ({"minutes": "forty"}, "minutes is 'forty'"),
        ({"minutes": 0}, "from 1 to 600"),
        ({"minutes": True}, "minutes is True"),
        ({"seed": 3}, "seed is missing or no text"),
        ({"pass_mark": 75}, "a share of the marks"),
        ({"pass_mark": None}, "pass_mark is missing"),
        ({"must_pass": "haul"}, "no list of questions"),
        ({"must_pass": ["a", "a"]}, "names a question twice"),
        ({"as_choice": 7}, "only 6 questions"),
        ({"formula_sheet": "no"}, "true or false"),
        ({"judged": {"tag-tension": 70}}, "a chance from 0 to 1"),
        ({"judged": 3}, "judged is no table"),
        ({"topic": []}, "there is no topic"),
        ({"topic": [3]}, "topic 1 is no table"),
        ({"topic": [{"lessons": 8, "easy": 1}]}, "lessons = [8, 9]"),
        ({"topic": [{"lessons": [8]}]}, "ask for 0 questions"),
        ({"topic": [{"lessons": [8, 8], "easy": 1}]}, "lesson 8 is in the topics twice"),
        ({"topic": [{"lessons": [8], "easy": -1}]}, "topic 1: easy is -1"),
        ({"topic": [{"lessons": [8], "esay": 1}]}, "Did you mean easy?"),
        ({"minuts": 40}, "minuts is no entry of a blueprint. Did you mean minutes?"),
    ],
)
def test_what_is_wrong_is_named(changes: dict[str, Any], part: str) -> None:
    document = {k: v for k, v in (DOCUMENT | changes).items() if v is not None}
    with pytest.raises(PaperError) as caught:
        parse_blueprint(document, "paper.toml")
    assert part in str(caught.value)
    assert str(caught.value).startswith("paper.toml: ")


def test_everything_wrong_is_said_at_once() -> None:
    with pytest.raises(PaperError) as caught:
        parse_blueprint(DOCUMENT | {"title": "", "minutes": 0, "seed": ""}, "x")
    assert len(caught.value.complaints) == 3


def test_files_that_cannot_be_read_are_refused_in_words(tmp_path: Path) -> None:
    path = tmp_path / "paper.toml"
    with pytest.raises(PaperError, match="cannot be read"):
        read_blueprint(path)
    path.write_bytes(b"\xff\xfet\x00")
    with pytest.raises(PaperError, match="UTF-8"):
        read_blueprint(path)
    path.write_text("title = ", encoding="utf-8")
    with pytest.raises(PaperError, match="rules of TOML"):
        read_blueprint(path)
    path.write_text(
        'title = "A"\nminutes = 5\nseed = "s"\npass_mark = 1\n[[topic]]\nlessons = [8]\neasy = 1\n',
        encoding="utf-8-sig",
    )
    assert read_blueprint(path).title == "A"
