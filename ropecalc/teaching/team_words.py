"""What a team calls the glossary's terms: kept in the learner's record, handed on as a file."""

import tomllib
from collections.abc import Mapping

import tomli_w

from ropecalc.teaching.glossary import TERMS
from ropecalc.teaching.record import Record

LONGEST = 40
"""Letters that a word may have; more is a meaning, not a word."""
LARGEST_FILE = 100_000
"""Bytes; a file of words is far smaller."""
_TABLE = "words"


def team_word(record: Record, key: str) -> str:
    """What the team calls the term ``key``; empty if it uses the course's word."""
    return record.setting(_name(key)) or ""


def keep_team_word(record: Record, key: str, word: str) -> None:
    """Keep the team's word for the term ``key``; empty, or the course's word, takes it away.

    Raises ValueError in words for what is too long.
    """
    word = _tidy(word)
    record.keep_setting(_name(key), "" if word == TERMS[key].word else word)


def words_as_file(record: Record) -> str:
    """The team's words as a small text file (TOML) to hand on."""
    words = {key: team_word(record, key) for key in TERMS}
    return tomli_w.dumps({_TABLE: {key: word for key, word in words.items() if word}})


def words_from_file(content: bytes) -> Mapping[str, str]:
    """The words in such a file, by term. Raises ValueError in words for any other file."""
    if len(content) > LARGEST_FILE:
        raise ValueError("This file is too large to be a team's words. Nothing was changed.")
    try:
        words = tomllib.loads(content.decode("utf-8-sig")).get(_TABLE)
    except (UnicodeDecodeError, tomllib.TOMLDecodeError):
        words = None
    if not isinstance(words, dict) or not all(isinstance(word, str) for word in words.values()):
        raise ValueError(
            "This is not a file of a team's words. Choose one that was saved on this page. Nothing "
            "was changed."
        )
    return {key: _tidy(word) for key, word in words.items() if key in TERMS}


def _tidy(word: str) -> str:
    word = " ".join(word.split())
    if len(word) > LONGEST:
        raise ValueError(
            f"“{word[:LONGEST]}…” is longer than {LONGEST} letters. Give a word or two; the "
            "meaning stands beside it."
        )
    return word


def _name(key: str) -> str:
    return f"word.{key}"
