"""A team's own words: kept, handed on as a file, and refused in words where they cannot be."""

from collections.abc import Iterator

import pytest

from ropecalc.teaching.glossary import TERMS
from ropecalc.teaching.record import Record
from ropecalc.teaching.team_words import (
    LARGEST_FILE,
    LONGEST,
    keep_team_word,
    team_word,
    words_as_file,
    words_from_file,
)


@pytest.fixture
def record() -> Iterator[Record]:
    made = Record.in_memory()
    yield made
    made.close()


def test_a_word_is_kept_tidy_and_taken_away_again(record: Record) -> None:
    assert team_word(record, "tag-line") == ""
    keep_team_word(record, "tag-line", "  tender \n line ")
    assert team_word(record, "tag-line") == "tender line"
    assert team_word(record, "track-line") == ""
    keep_team_word(record, "tag-line", TERMS["tag-line"].word)
    assert team_word(record, "tag-line") == ""


def test_the_longest_word_is_kept_and_one_letter_more_is_not(record: Record) -> None:
    keep_team_word(record, "hub", "x" * LONGEST)
    with pytest.raises(ValueError, match="longer than 40 letters"):
        keep_team_word(record, "hub", "y" * (LONGEST + 1))
    assert team_word(record, "hub") == "x" * LONGEST


def test_a_file_brings_the_words_to_another_machine(record: Record) -> None:
    keep_team_word(record, "hub", 'the "nest" ø')
    keep_team_word(record, "belay", "safety")
    words = words_from_file(words_as_file(record).encode("utf-8"))
    assert words == {"hub": 'the "nest" ø', "belay": "safety"}


def test_a_file_from_an_editor_with_a_byte_order_mark_is_read() -> None:
    content = '[words]\nhub = "nest"\nnot-a-term = "x"\n'.encode("utf-8-sig")
    assert words_from_file(content) == {"hub": "nest"}


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\xff\xfe\x00",
        b"not toml",
        b"words = 3",
        b"[words]\nhub = 3",
        b"[words]\nhub = '" + b"x" * (LONGEST + 1) + b"'",
        b"#" * (LARGEST_FILE + 1),
    ],
)
def test_any_other_file_is_refused_in_words(content: bytes) -> None:
    with pytest.raises(ValueError, match=r"changed|letters"):
        words_from_file(content)


def test_terms_say_what_they_mean_in_a_sentence() -> None:
    for key, term in TERMS.items():
        assert key == term.key
        assert term.word == term.word.strip() and len(term.word) <= LONGEST
        assert term.meaning[0].isupper() and term.meaning.endswith(".")
    words = [term.word for term in TERMS.values()]
    assert len(set(words)) == len(words)
