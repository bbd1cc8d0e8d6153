"""The blueprint filled in on the page says what the same file would say."""

from pathlib import Path

import pytest

from ropecalc.teaching.papers.blueprint import read_blueprint
from ropecalc.teaching.papers.blueprint_form import BlueprintForm
from ropecalc.teaching.questions.bank import BY_LESSON

COURSE = Path(__file__).parents[3]


@pytest.fixture
def form(tmp_path: Path) -> BlueprintForm:
    text = (COURSE / "exercises" / "knowledge-check.toml").read_text(encoding="utf-8")
    (tmp_path / "example.toml").write_text(text, encoding="utf-8")
    return BlueprintForm(tmp_path, "example.toml")


def said(form: BlueprintForm) -> str:
    return str(form.children[-1].value)


def test_the_example_opens_and_saves_to_the_same_blueprint(
    form: BlueprintForm, tmp_path: Path
) -> None:
    form._open()
    assert "Opened." in said(form)
    form._file.value = "mine.toml"
    form._save()
    assert "Saved:" in said(form) and "8 questions" in said(form)
    example, mine = (read_blueprint(tmp_path / name) for name in ("example.toml", "mine.toml"))
    assert (mine.title, mine.seed, mine.must_pass) == (
        example.title,
        example.seed,
        example.must_pass,
    )
    assert [t.counts for t in mine.topics] == [t.counts for t in example.topics]
    assert (mine.pass_mark, mine.as_choice) == (example.pass_mark, example.as_choice)


def test_what_is_missing_or_does_not_fit_is_told_and_nothing_saved(
    form: BlueprintForm, tmp_path: Path
) -> None:
    form._file.value = "mine.toml"
    form._save()
    assert "Not saved." in said(form) and "title is missing" in said(form)
    form._file.value = "example.toml"
    form._open()
    for box in form._counts.values():
        box.value = 0
    form._counts[8, 1].value, form._choices.value = 1, 0
    form._file.value = "mine.toml"
    form._save()
    assert "must_pass" in said(form)
    assert not (tmp_path / "mine.toml").exists()


def test_a_file_beyond_the_form_is_left_to_an_editor(form: BlueprintForm, tmp_path: Path) -> None:
    path = tmp_path / "example.toml"
    path.write_text(path.read_text(encoding="utf-8").replace("[8]", "[8, 7]"), encoding="utf-8")
    form._open()
    assert "change it in an editor" in said(form)
    form._file.value = "gone.toml"
    form._open()
    assert "cannot be read" in said(form)


def test_no_more_than_there_are_can_be_asked_for(form: BlueprintForm) -> None:
    for box in form._counts.values():
        assert box.disabled == (box.max == 0)
        assert box.description == f"of {box.max}"
    assert form.summary().endswith(".")


def test_scenarios_are_counted_in_the_form_and_named_in_an_editor(
    form: BlueprintForm, tmp_path: Path
) -> None:
    form._open()
    assert form._scenarios.value == 0
    form._scenarios.value = 1
    form._file.value = "mine.toml"
    form._save()
    assert "Scenario: " in said(form)
    assert read_blueprint(tmp_path / "mine.toml").scenarios == 1
    form._scenarios.value = 0
    form._open()
    assert form._scenarios.value == 1
    text = (tmp_path / "mine.toml").read_text(encoding="utf-8")
    named = text.replace("scenarios = 1", 'scenarios = ["high-outcrop"]')
    (tmp_path / "mine.toml").write_text(named, encoding="utf-8")
    form._open()
    assert "change it in an editor" in said(form)


def offered(form: BlueprintForm) -> set[str]:
    shown = {id(widget) for widget in form._must.children}
    return {key for key, box in form._must._boxes.items() if id(box) in shown}


def test_only_what_the_grid_asks_for_can_be_chosen_as_must_be_right(form: BlueprintForm) -> None:
    assert offered(form) == set()
    form._counts[8, 2].value = 1
    medium = {t.key for t in BY_LESSON[8] if t.difficulty == 2}
    assert medium and offered(form) == medium
    one = min(medium)
    form._must._boxes[one].value = True
    form._counts[8, 2].value = 0  # what was chosen stays in sight, and is still chosen
    assert offered(form) == {one}
    form._counts[9, 2].value = 1
    assert form.document["must_pass"] == [one]
    form._must._boxes[one].value = False
    form._counts[9, 2].value = 0
    assert offered(form) == set()


def test_the_form_says_whether_students_are_asked_how_sure_they_are(
    form: BlueprintForm, tmp_path: Path
) -> None:
    form._open()
    form._sure.value = False
    form._file.value = "mine.toml"
    form._save()
    assert not read_blueprint(tmp_path / "mine.toml").confidence
    form._sure.value = True
    form._open()
    assert not form._sure.value
