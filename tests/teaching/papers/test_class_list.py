"""Class lists as people really keep them."""

from pathlib import Path

import pytest

from ropecalc.teaching.papers.class_list import (
    LARGEST_FILE,
    LONGEST_NAME,
    MOST_STUDENTS,
    file_name,
    parse_class_list,
    read_class_list,
)
from ropecalc.teaching.papers.trouble import PaperError


@pytest.mark.parametrize(
    "text",
    [
        "ada\nbo\n",
        "Student\nada\nbo",
        "\n  ada  \n\nbo\n",
        "name;mail\nada;a@x\nbo;b@x\n",
        'id,note\n"ada","late, always"\n"bo",""\n',
        "ada\r\nbo\r\n",
    ],
)
def test_one_student_a_line(text: str) -> None:
    assert parse_class_list(text, "class") == ("ada", "bo")


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("", "names nobody"),
        ("name\n", "names nobody"),
        ("A\nA\n", "“A” is there twice"),
        ("ada b\nAda-B\n", "too like “ada b”"),
        ("x" * (LONGEST_NAME + 1), "is no name"),
        ("a\x07b", "is no name"),
        ("\n".join(f"s{n}" for n in range(MOST_STUDENTS + 1)), "at most 5000"),
    ],
)
def test_what_is_wrong_is_named(text: str, part: str) -> None:
    with pytest.raises(PaperError) as caught:
        parse_class_list(text, "class.csv")
    assert part in str(caught.value)


def test_files(tmp_path: Path) -> None:
    path = tmp_path / "class.csv"
    with pytest.raises(PaperError, match="cannot be read"):
        read_class_list(path)
    path.write_text("Ström\n王\n", encoding="utf-8-sig")
    assert read_class_list(path) == ("Ström", "王")
    path.write_bytes("Ström\n".encode("latin-1"))
    with pytest.raises(PaperError, match="UTF-8"):
        read_class_list(path)
    path.write_bytes(b"a" * (LARGEST_FILE + 1))
    with pytest.raises(PaperError, match="too large"):
        read_class_list(path)


@pytest.mark.parametrize(
    ("student", "name"),
    [("Ada B.", "ada-b"), ("../../etc", "etc"), ("…", "student"), ("Ström 7", "ström-7")],
)
def test_a_name_becomes_a_harmless_file_name(student: str, name: str) -> None:
    assert file_name(student) == name
