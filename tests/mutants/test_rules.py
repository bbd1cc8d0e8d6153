"""What the mutation tests leave out, and how the rest is shared among the modules."""

import ast
from pathlib import Path

import pytest

from tests.mutants.first_try import first_try
from tests.mutants.own_tests import EVERY_DERIVATION, suite
from tests.mutants.rules import compiles, difference, hidden_spans, shares, worth_trying

ROOT = Path(__file__).parents[2]
MODULES = [
    path.relative_to(ROOT).as_posix()
    for package in ("derivation", "mechanics")
    for path in sorted((ROOT / "ropecalc" / package).rglob("*.py"))
    if path.name != "__init__.py"
]


@pytest.mark.parametrize(
    ("operator", "worth"),
    [
        ("core/ReplaceBinaryOperator_Add_Sub", True),
        ("core/ReplaceBinaryOperator_Add_BitOr", False),
        ("core/ReplaceBinaryOperator_BitOr_BitAnd", True),
        ("core/ReplaceComparisonOperator_Lt_LtE", True),
        ("core/ReplaceComparisonOperator_Lt_Is", False),
        ("core/ReplaceComparisonOperator_Is_Eq", False),
        ("core/ReplaceUnaryOperator_Delete_Not", True),
        ("core/ReplaceUnaryOperator_USub_UAdd", False),
        ("core/NumberReplacer", True),
        ("core/RemoveDecorator", True),
    ],
)
def test_which_replacements_are_worth_trying(operator: str, worth: bool) -> None:
    assert worth_trying(operator) is worth


def _hidden(source: str, file_name: str) -> list[str]:
    spans = hidden_spans(ast.parse(source), file_name)
    return [source.splitlines()[a[0] - 1][a[1] : b[1]] for a, b in spans]


def test_annotations_are_hidden() -> None:
    assert sorted(_hidden("def f(a: int | None) -> int: return a | 1", "x.py")) == [
        "int",
        "int | None",
    ]
    assert _hidden("a: int | str = 1 | 2", "x.py") == ["int | str"]


def test_slider_ranges_are_hidden_in_the_catalogue_but_domains_are_not() -> None:
    source = "A = _angle('a', Domain(0, 1), -20, radians(30))"
    assert _hidden(source, "quantities.py") == ["'a'", "-20", "radians(30)"]
    assert _hidden(source, "anchors.py") == []
    assert _hidden("B = Domain(0, 1)", "quantities.py") == []
    assert _hidden("B = Range(0, 1, 0.5)", "anchors.py") == ["0", "1", "0.5"]


def test_the_guard_of_a_zip_is_hidden() -> None:
    assert _hidden("zip(a, b, strict=True)", "x.py") == ["True"]
    assert _hidden("f(frozen=True)", "x.py") == []


def test_what_is_no_python_is_seen() -> None:
    assert compiles("def f(a, *, b): ...")
    assert not compiles("def f(a, +, b): ...")


def test_the_line_that_differs_is_found() -> None:
    assert difference("a\n  b\nc", "a\n  d\nc") == (2, "b", "d")
    assert difference("a\n@p\nc", "a\nc") == (2, "@p", "(removed)")
    assert difference("a\n\n@p\nc", "a\nc") == (3, "@p", "(removed)")


def test_shares_are_in_proportion_with_a_few_at_least() -> None:
    assert shares({"large": 900, "small": 100, "tiny": 3}, 100) == {
        "large": 90,
        "small": 10,
        "tiny": 3,
    }
    assert shares({"large": 9990, "small": 10}, 100)["small"] == 4


@pytest.mark.parametrize("module", MODULES)
def test_every_module_has_tests_that_answer_for_it(module: str) -> None:
    own = suite(ROOT, module)
    assert all((ROOT / file).is_file() for file in own.files)
    name = Path(module).parts[2].removesuffix(".py")
    if "/mechanics/" in module:
        assert any(Path(file).name.startswith(f"test_{name}") for file in own.files)
    assert own.runs[0][0] not in (EVERY_DERIVATION, "-k")


def test_tests_of_a_longer_name_answer_for_that_name_alone() -> None:
    files = suite(ROOT, "ropecalc/mechanics/guiding.py").files
    assert "tests/mechanics/test_guiding.py" in files
    assert "tests/mechanics/test_guiding_limits.py" not in files


def test_what_a_sample_gave_before_tests_were_written_for_it_is_told() -> None:
    kept = Path(__file__).with_name("first_tries.toml")
    told = first_try(kept, 77)
    assert "401 of 436 were killed: 92.0 %" in told and "before tests were written" in told
    assert "not written down" in first_try(kept, 20260)
