"""A wall from a spreadsheet: European and other separators, and every way to go wrong."""

from pathlib import Path

import pytest

from ropecalc.planning.problem import SiteError
from ropecalc.planning.survey_table import read_survey_table


def read(
    tmp_path: Path, content: str | bytes, factor: float = 1.0
) -> list[tuple[float, float, str]]:
    path = tmp_path / "wall.csv"
    path.write_bytes(content.encode("utf-8") if isinstance(content, str) else content)
    return [(p.offset, p.height, p.note) for p in read_survey_table(path, factor)]


@pytest.mark.parametrize(
    "content",
    [
        "offset,height,note\n0,0,foot\n1.5,25,tip\n",
        "offset;height;note\n0;0;foot\n1,5;25;tip\n",
        "offset;height;note\r\n0;0;foot\r\n1.5;25,0;tip\r\n",
        "\ufeffoffset,height,note\n0,0,foot\n1.5,25,tip\n",
        "Offset\tHeight\tNote\n0\t0\tfoot\n1,5\t25\ttip\n",
        "note,height,offset\n\nfoot,0,0\n,,\ntip,25,1.5\n",
        'offset,height,note\n"0","0","foot"\n"1.5","25","tip"',
    ],
)
def test_tables_that_say_the_same(tmp_path: Path, content: str) -> None:
    assert read(tmp_path, content) == [(0, 0, "foot"), (1.5, 25, "tip")]


def test_the_unit_of_the_site_file_counts(tmp_path: Path) -> None:
    assert read(tmp_path, "offset,height\n10,100\n", 0.3048) == [
        (pytest.approx(3.048), pytest.approx(30.48), "")
    ]


def test_a_true_minus_sign_is_read(tmp_path: Path) -> None:
    assert read(tmp_path, "offset,height\n−1,-2\n") == [(-1, -2, "")]


@pytest.mark.parametrize(
    ("content", "where", "words"),
    [
        ("", "", "empty"),
        ("\n\n", "", "empty"),
        ("0,0\n1,2\n", "row 1", "offset and height are expected"),
        ("offset_m,height_m\n0,0\n", "row 1", "the unit belongs in the site file"),
        ("offset,offset\n0,0\n", "row 1", "offset and height are expected"),
        ("offset,height\n0,0\n1,5,25\n", "row 3", "separate the columns with semicolons"),
        ("offset,height\n0\n", "row 2", "1 cells under 2 columns"),
        ("offset,height\n0,zwei\n", "row 2, column height", "“zwei” is not a plain number"),
        ("offset,height\n0,2 m\n", "row 2, column height", "no unit"),
        ("offset,height\n,2\n", "row 2, column offset", "the cell is empty"),
        ("offset,height\nnan,2\n", "row 2, column offset", "not a plain number"),
        ("offset,height\n0,inf\n", "row 2, column height", "not a plain number"),
        ("offset;height\n1.234,5;2\n", "row 2, column offset", "not a plain number"),
        ("offset,height\n1_0,2\n", "row 2, column offset", "not a plain number"),
        ("offset,height\n٣,2\n", "row 2, column offset", "not a plain number"),
        ('offset,height\n"0,0\n', "row 2", "quotation marks"),
        ("offset,height\n" + "0,1\n" * 201, "row 202", "more than 200 points"),
        (b"offset,height\n\xe4,1\n", "line 2", "UTF-8"),
        (b"PK\x03\x04\x00\x00offset", "", "not a text file"),
        ("offset,height\n0,0\n".encode("utf-16"), "", "UTF-16"),
    ],
)
def test_a_table_that_cannot_be_used(
    tmp_path: Path, content: str | bytes, where: str, words: str
) -> None:
    with pytest.raises(SiteError) as refused:
        read(tmp_path, content)
    text = str(refused.value)
    assert words in text
    assert "wall.csv" in text
    assert where in text
    assert "\n" not in text


def test_a_table_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(SiteError, match="no such file"):
        read_survey_table(tmp_path / "none.csv", 1.0)
    with pytest.raises(SiteError, match="folder, not a file"):
        read_survey_table(tmp_path, 1.0)


def test_a_file_too_large_is_not_read_to_its_end(tmp_path: Path) -> None:
    path = tmp_path / "wall.csv"
    with path.open("wb") as stream:
        stream.truncate(50_000_000_000)
    with pytest.raises(SiteError, match="larger than"):
        read_survey_table(path, 1.0)
