"""A mock examination: what it asks, the clock, interruptions, and what comes of it."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from ropecalc import cautions
from ropecalc.teaching.papers.blueprint import read_blueprint
from ropecalc.teaching.papers.choosing import choose
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.practice import mock as mocks
from ropecalc.teaching.practice.history import asked
from ropecalc.teaching.practice.mock_view import LATE, OVER, MockView
from ropecalc.teaching.questions.bank import BANK, BY_LESSON
from ropecalc.teaching.record import Place, Record, Work
from ropecalc.teaching.session import Session
from tests.teaching.practice.pages import START, Clock, button, mistaken, page_text, right

pytestmark = pytest.mark.usefixtures("no_faults")
EXAMPLE = Path(__file__).parents[3] / "exercises" / "knowledge-check.toml"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "record.sqlite"


def view(record: Record, course: Path, clock: Clock) -> MockView:
    return MockView(Session(record), course, clock, lambda: None)


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def record() -> Record:
    return Record.in_memory()


@pytest.fixture
def running(record: Record, tmp_path: Path, clock: Clock) -> MockView:
    made = view(record, tmp_path, clock)
    button(made, "Begin").click()
    return made


def items(made: MockView) -> list:
    return [child for child in made.children if type(child).__name__ == "MockItem"]


@pytest.mark.parametrize("number", range(1, 8))
def test_the_mixed_blueprint_fits_the_bank(number: int) -> None:
    blueprint = mocks.mixed_blueprint(BY_LESSON, number)
    chosen = choose(replace(blueprint, seed="any"), BY_LESSON)
    assert len(chosen) == blueprint.count == 2 * len(BY_LESSON)
    assert set(blueprint.must_pass) <= {t.key for t in chosen}
    assert all(BANK[key].must_pass for key in blueprint.must_pass)
    assert {t.difficulty for t in chosen} == {1, 2, 3}
    assert blueprint.minutes == sum(mocks.MINUTES[t.difficulty - 1] for t in chosen)


def test_over_some_mocks_everything_that_must_be_right_is_asked() -> None:
    asked_for = {k for n in range(12) for k in mocks.mixed_blueprint(BY_LESSON, n).must_pass}
    levels = {
        (lesson, level): topic.counts[level - 1]
        for topic in mocks.mixed_blueprint(BY_LESSON).topics
        for lesson in topic.lessons
        for level in (1, 2, 3)
    }
    wanted = {
        t.key
        for lesson, templates in BY_LESSON.items()
        for t in templates
        if t.must_pass and levels[lesson, t.difficulty]
    }
    assert asked_for == wanted and wanted


def test_each_mock_has_questions_and_numbers_of_its_own() -> None:
    one, again, two = (
        mocks.begin(mocks.mixed_blueprint(BY_LESSON, n), BY_LESSON, n, START) for n in (1, 1, 2)
    )
    assert one.paper.code == again.paper.code != two.paper.code


def test_a_blueprint_whose_questions_were_judged_gives_their_mean_as_the_mark() -> None:
    keys = [t.key for t in BY_LESSON[8][:2]]
    judged = replace(read_blueprint(EXAMPLE), pass_mark=None, judged={keys[0]: 0.5, keys[1]: 0.7})
    assert mocks.begin(judged, BY_LESSON, 1, START).pass_mark == pytest.approx(0.6)


def test_what_is_kept_is_what_was_begun(record: Record) -> None:
    mock = mocks.begin(read_blueprint(EXAMPLE), BY_LESSON, 3, START)
    assert any(item.options for item in mock.paper.items)
    mocks.keep(record, mock)
    again = mocks.kept(record)
    assert again is not None and again.paper.code == mock.paper.code
    assert (again.pass_mark, again.started, again.finished) == (0.75, START, None)
    assert [i.must_pass for i in again.paper.items] == [i.must_pass for i in mock.paper.items]


@pytest.mark.parametrize("text", ["", "[]", "{}", '{"items": [{"question": "gone"}]}'])
def test_a_mock_that_cannot_be_read_is_none(record: Record, tmp_path: Path, text: str) -> None:
    record.keep_setting(mocks.SETTING, text)
    assert mocks.kept(record) is None
    assert "No mock" in view(record, tmp_path, Clock()).summary()


def test_minutes_left_count_a_begun_minute_and_end_at_nothing() -> None:
    mock = mocks.begin(mocks.mixed_blueprint(BY_LESSON), BY_LESSON, 1, START)
    clock, total = Clock(), mock.paper.minutes
    for turned, left in (
        (0, total),
        (0.5, total),
        (1, total - 1),
        (total - 2, 1),
        (0.5, 0),
        (9, 0),
    ):
        clock.turn(turned)
        assert mock.minutes_left(clock.now) == left
    assert mock.minutes_left(Clock().now.replace(year=2029)) == total  # a clock that was set back


def test_there_is_no_help_and_no_mark_before_the_end(running: MockView) -> None:
    first = items(running)[0]
    drawn = first._drawn
    first._answer.value = mistaken(drawn)[0]
    words = page_text(running)
    assert "Hint" not in words and "Not right" not in words and "Worked solution" not in words
    assert not running.summary().count("right")
    assert {b.description for b in (button(running, "How much"), button(running, "Finish"))}


def test_the_button_tells_the_time_that_is_left(running: MockView, clock: Clock) -> None:
    total = mocks.mixed_blueprint(BY_LESSON).minutes
    assert f"{total} minutes left" in page_text(running)
    clock.turn(total - 1)
    button(running, "How much").click()
    assert "1 minute left of" in page_text(running) and "Not answered: 1, 2" in page_text(running)
    clock.turn(1)
    button(running, "Time left now").click()
    assert page_text(running).count(OVER) == 1
    button(running, "How much").click()
    assert page_text(running).count(OVER) == 2


def test_after_the_time_nothing_more_is_kept(
    running: MockView, record: Record, clock: Clock
) -> None:
    first, second = items(running)[:2]
    first._answer.value = "1"
    clock.turn(1000)
    first._answer.value = "2"
    second._answer.value = "3"
    assert LATE in page_text(first) and LATE in page_text(second)
    mock = mocks.kept(record)
    assert mock is not None and list(mocks.answers(record, mock).values())[:2] == ["1", ""]


def test_killed_at_any_moment_it_goes_on_where_it_was(
    path: Path, tmp_path: Path, clock: Clock
) -> None:
    """The file is copied away while the page is open, as a kill would leave it."""
    record = Record.open(path)
    made = view(record, tmp_path, clock)
    button(made, "Begin").click()
    items(made)[0]._answer.value = "1 kN"
    items(made)[4]._answer.value = "2 kN"
    clock.turn(10)
    left = tmp_path / "killed.sqlite"
    shutil.copy(path, left)
    again = view(Record.open(left), tmp_path, clock)
    assert [item._answer.value for item in items(again)][:5] == ["1 kN", "", "", "", "2 kN"]
    assert [i.summary().split("\n")[2] for i in items(again)] == [
        i.summary().split("\n")[2] for i in items(made)
    ]
    total = mocks.mixed_blueprint(BY_LESSON).minutes
    assert f"{total - 10} minutes left" in page_text(again)


def test_the_review_marks_each_question_and_names_mistakes(
    running: MockView, record: Record
) -> None:
    shown = items(running)
    for item in shown[:-2]:
        item._answer.value = right(item._drawn)
    wrong, key = mistaken(shown[-2]._drawn)
    shown[-2]._answer.value = wrong
    button(running, "Finish").click()
    assert "once more" in page_text(running)  # the last one is blank
    button(running, "Finish").click()
    total = len(shown)
    words = running.summary()
    assert f"{total - 2} of {total} right" in words and cautions.KNOWLEDGE_CHECK in words
    mistake = shown[-2]._drawn.template.mistake(key)
    assert f"Mistake in question {total - 1}: {mistake.title}." in words
    review = page_text(running)
    assert review.count("Worked solution") == total
    assert review.count("✓") == total - 2 and "Not answered." in review
    assert len(asked(record)) == total - 1
    assert asked(record)[-1].mistake == key


def test_below_the_mark_and_what_must_be_right(running: MockView, record: Record) -> None:
    mock = mocks.kept(record)
    assert mock is not None
    must = [n for n, item in enumerate(mock.paper.items) if item.must_pass]
    for number, item in enumerate(items(running)):
        if number not in must:
            item._answer.value = right(item._drawn)
    for _ in range(2):
        button(running, "Finish").click()
    words = running.summary()
    assert f"must be right and are not: {', '.join(str(n + 1) for n in must)}." in words
    enough = 24 - len(must) >= 0.75 * 24
    assert ("The mark is reached, but not" if enough else "The mark is not reached.") in words


@pytest.mark.usefixtures("running")
def test_finishing_takes_each_answer_over_once(record: Record) -> None:
    """Also when it was interrupted between the answers and the end."""
    mock = mocks.kept(record)
    assert mock is not None
    for number, item in enumerate(mock.paper.items, 1):
        record.keep_work(mock.place(number), Work(draft=right(item.drawn)))
    mocks.finish(record, mock, START)
    mocks.finish(record, mock, START)
    assert len(record.history()) == len(mock.paper.items)
    assert {place.page for place, _ in record.history()} == {"mock:1"}


def test_the_next_mock_has_the_next_number(running: MockView, record: Record) -> None:
    for number in (2, 3):
        for _ in range(2):
            button(running, "Finish").click()
        button(running, "Begin").click()
        mock = mocks.kept(record)
        assert mock is not None and mock.number == number
        assert not any(mocks.answers(record, mock).values())
    record.keep_setting(mocks.SETTING, "unreadable")
    record.keep_work(Place("mock:7", "1"), Work(draft="1"))
    assert mocks.next_number(record) == 8


def test_a_page_opened_twice_begins_and_finishes_once(
    record: Record, tmp_path: Path, clock: Clock
) -> None:
    one, two = view(record, tmp_path, clock), view(record, tmp_path, clock)
    for made in (one, two):
        button(made, "Begin").click()
    assert mocks.kept(record).number == 1
    stale = button(two, "Finish")
    for _ in range(2):
        button(one, "Finish").click()
    ended = mocks.kept(record)
    stale.click()
    assert mocks.kept(record) == ended


def test_a_blueprint_from_a_file(record: Record, tmp_path: Path, clock: Clock) -> None:
    shutil.copy(EXAMPLE, tmp_path / "mine.toml")
    made = view(record, tmp_path, clock)
    made._file.value = "mine.toml"
    button(made, "Begin").click()
    blueprint = read_blueprint(EXAMPLE)
    assert len(items(made)) == blueprint.count and blueprint.title in made.summary()
    choices = [item for item in items(made) if item._options]
    assert len(choices) == blueprint.as_choice
    for item in choices:
        item._answer.value = "A"
    for _ in range(2):
        button(made, "Finish").click()
    assert page_text(made).count("You answered: A. ") == len(choices)


@pytest.mark.parametrize(
    "name", ["no-such-file.toml", "~nobody-of-this-name/x.toml", "broken.toml"]
)
def test_a_blueprint_that_will_not_do_is_said(
    record: Record, tmp_path: Path, clock: Clock, name: str
) -> None:
    (tmp_path / "broken.toml").write_text("title = 3")
    made = view(record, tmp_path, clock)
    made._file.value = name
    button(made, "Begin").click()
    assert "Not begun. " in page_text(made)
    assert mocks.kept(record) is None


def test_a_blueprint_that_the_bank_does_not_fit_is_refused() -> None:
    topics = tuple(
        replace(topic, counts=(0, 0, 90)) for topic in mocks.mixed_blueprint(BY_LESSON).topics
    )
    with pytest.raises(PaperError, match="90 hard questions are wanted"):
        mocks.begin(
            replace(mocks.mixed_blueprint(BY_LESSON), topics=topics, must_pass=()),
            BY_LESSON,
            1,
            START,
        )


def test_the_review_follows_the_units(running: MockView) -> None:
    for _ in range(2):
        button(running, "Finish").click()
    before = page_text(running)
    running._session.choose_unit("force", "lbf")
    after = page_text(running)
    assert " lbf" in after and after.count(" kN") < before.count(" kN")
