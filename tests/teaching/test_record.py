"""The learner's record keeps what was answered, whatever happens to the kernel or the disk."""

import os
import signal
import sqlite3
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from ropecalc.teaching import record as record_module
from ropecalc.teaching.record import Answer, Place, Record, Work, record_path

PLACE = Place("holding", "push")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "data" / "record.sqlite"


def reopened(path: Path) -> Record:
    record = Record.open(path)
    assert record.notice == ""
    return record


def test_settings_and_work_and_answers_outlive_the_page(path: Path) -> None:
    first = reopened(path)
    first.keep_setting("unit.force", "kN")
    first.keep_setting("unit.force", "lbf")
    first.keep_work(PLACE, Work(draw=2, draft="1,1", hints=1, solution_seen=True))
    first.keep_answer(PLACE, Answer(2, "1,15 kN", "1.15 kN", "right", hints=1))
    first.keep_answer(PLACE, Answer(3, "<b>2</b>", "", "unreadable"))
    first.close()

    record = reopened(path)
    assert record.setting("unit.force") == "lbf"
    assert record.setting("unit.mass") is None
    assert record.work(PLACE) == Work(2, "1,1", 1, True)
    assert record.work(Place("holding", "other")) == Work()
    assert [a.text for a in record.answers(PLACE)] == ["1,15 kN", "<b>2</b>"]
    (kept,) = record.answers(PLACE, draw=2)
    assert (kept.reading, kept.verdict, kept.hints, kept.solution_seen) == (
        "1.15 kN",
        "right",
        1,
        False,
    )
    assert kept.at.endswith("+00:00")
    assert record.places() == (PLACE,)


def test_a_killed_kernel_loses_nothing_that_was_answered(path: Path) -> None:
    program = f"""
import sys, time
from pathlib import Path
from ropecalc.teaching.record import Answer, Place, Record
record = Record.open(Path({str(path)!r}))
for number in range(10_000):
    record.keep_answer(Place("p", "q"), Answer(number, "x", "", "right"))
    print(number, flush=True)
"""
    child = subprocess.Popen([sys.executable, "-c", program], stdout=subprocess.PIPE, text=True)
    assert child.stdout is not None
    said = [int(child.stdout.readline()) for _ in range(25)]
    os.kill(child.pid, signal.SIGKILL)
    said += [int(line) for line in child.stdout.read().splitlines()]
    child.wait()

    draws = [answer.draw for answer in reopened(path).answers(Place("p", "q"))]
    assert draws[: len(said)] == said
    assert len(draws) <= len(said) + 1


def test_two_pages_at_once(path: Path) -> None:
    program = f"""
from pathlib import Path
from ropecalc.teaching.record import Answer, Place, Record
record = Record.open(Path({str(path)!r}))
for number in range(40):
    record.keep_answer(Place("p", "q"), Answer(number, "x", "", "right"))
assert record.notice == "", record.notice
"""
    children = [subprocess.Popen([sys.executable, "-c", program]) for _ in range(2)]
    assert [child.wait() for child in children] == [0, 0]
    assert len(reopened(path).answers(Place("p", "q"))) == 80


@pytest.mark.parametrize(
    "damage",
    [
        lambda old: b"no database at all " * 100,
        lambda old: old[: len(old) // 2],
        lambda old: old[:4096] + b"\xff" * (len(old) - 4096),
    ],
    ids=["text", "cut short", "overwritten"],
)
def test_a_damaged_file_is_set_aside_and_kept(path: Path, damage: object) -> None:
    record = reopened(path)
    record.keep_setting("a", "b" * 20_000)
    record.close()
    broken = damage(path.read_bytes())  # type: ignore[operator]
    path.write_bytes(broken)

    fresh = Record.open(path)
    (aside,) = path.parent.glob("record-damaged-*.sqlite")
    assert aside.read_bytes() == broken
    assert aside.name in fresh.notice and "could not be read" in fresh.notice
    fresh.keep_setting("a", "c")
    fresh.close()
    assert reopened(path).setting("a") == "c"


@pytest.mark.parametrize("where", ["folder", "under a file"])
def test_where_nothing_can_be_written_work_goes_on_in_memory(tmp_path: Path, where: str) -> None:
    path = tmp_path
    if where == "under a file":
        (tmp_path / "file").write_text("in the way")
        path = tmp_path / "file" / "record.sqlite"
    record = Record.open(path)
    assert "forgotten when this page is closed" in record.notice
    record.keep_answer(PLACE, Answer(0, "1", "1 kN", "right"))
    assert len(record.answers(PLACE)) == 1


def test_a_disk_that_stops_taking_writes_is_said_and_survived(path: Path) -> None:
    record = reopened(path)
    record.keep_setting("unit.force", "lbf")
    with sqlite3.connect(path) as disk:  # every further answer fails, as on a full disk
        disk.execute(
            "CREATE TRIGGER full BEFORE INSERT ON answers BEGIN "
            "SELECT RAISE(ABORT, 'disk is full'); END"
        )
    disk.close()
    record.keep_answer(PLACE, Answer(0, "1", "1 kN", "right"))
    assert "disk is full" in record.notice and "forgotten" in record.notice
    assert len(record.answers(PLACE)) == 1
    assert record.setting("unit.force") == "lbf"


def locked_by_another_page(path: Path) -> sqlite3.Connection:
    other = sqlite3.connect(path, isolation_level=None, check_same_thread=False)
    other.execute("BEGIN IMMEDIATE")
    return other


def test_a_locked_file_is_waited_for_and_then_said(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    reopened(path).keep_setting("unit.mass", "lb")
    monkeypatch.setattr(record_module, "_WAIT", 0.05)
    other = locked_by_another_page(path)
    record = Record.open(path)
    other.close()
    assert "locked" in record.notice
    assert record.setting("unit.mass") == "lb"


def test_a_file_locked_for_longer_than_one_wait_is_tried_again(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(record_module, "_WAIT", 0.4)
    record = reopened(path)
    other = locked_by_another_page(path)
    timer = threading.Timer(0.6, lambda: other.execute("COMMIT"))
    timer.start()
    record.keep_answer(PLACE, Answer(0, "1", "1 kN", "right"))
    timer.join()
    other.close()
    assert record.notice == ""
    assert len(reopened(path).answers(PLACE)) == 1


def test_what_was_kept_in_memory_follows_as_soon_as_the_file_is_free(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(record_module, "_WAIT", 0.02)
    monkeypatch.setattr(record_module, "_BRIEFLY", 0.02)
    record = reopened(path)
    record.keep_answer(PLACE, Answer(0, "before", "", "right"))
    seen: list[str] = []
    record.on_notice(seen.append)
    other = locked_by_another_page(path)
    for number in (1, 2):
        record.keep_answer(PLACE, Answer(number, "meanwhile", "", "right"))
        assert len(record.answers(PLACE)) == number + 1
    other.execute("INSERT INTO settings VALUES ('unit.force', 'lbf')")
    other.execute("COMMIT")
    other.close()
    assert "locked" in record.notice
    record.keep_answer(PLACE, Answer(3, "after", "", "right"))
    assert record.notice == "" and record.setting("unit.force") == "lbf"
    assert [bool(notice) for notice in seen] == [True, False]
    for kept in (record, reopened(path)):
        assert [answer.draw for answer in kept.answers(PLACE)] == [0, 1, 2, 3]


def test_a_folder_that_appears_later_takes_the_record(tmp_path: Path) -> None:
    (tmp_path / "disk").write_text("in the way")
    path = tmp_path / "disk" / "record.sqlite"
    record = Record.open(path)
    record.keep_setting("a", "b")
    assert "forgotten" in record.notice
    (tmp_path / "disk").unlink()
    record.keep_setting("c", "d")
    assert record.notice == ""
    kept = reopened(path)
    assert (kept.setting("a"), kept.setting("c")) == ("b", "d")


def test_a_file_that_another_page_has_just_replaced_is_not_set_aside(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path.parent.mkdir()
    path.write_bytes(b"no database at all " * 100)
    set_aside = Record._set_aside.__func__  # type: ignore[attr-defined]

    def a_moment_later(_: type[Record], damaged: Path) -> Record:
        monkeypatch.setattr(Record, "_set_aside", classmethod(set_aside))
        other = Record.open(damaged)  # the other page is quicker
        other.keep_setting("unit.mass", "lb")
        other.close()
        return Record._set_aside(damaged)

    monkeypatch.setattr(Record, "_set_aside", classmethod(a_moment_later))
    assert Record.open(path).setting("unit.mass") == "lb"
    assert len(list(path.parent.glob("record-damaged-*"))) == 1


def test_files_of_others_and_of_newer_releases_stay_untouched(tmp_path: Path) -> None:
    foreign, newer = tmp_path / "foreign.sqlite", tmp_path / "newer.sqlite"
    with sqlite3.connect(foreign) as disk:
        disk.execute("CREATE TABLE settings (something TEXT)")
    disk.close()
    reopened(newer).close()
    with sqlite3.connect(newer) as disk:
        disk.execute(f"PRAGMA user_version = {record_module.SCHEMA + 1}")
    disk.close()
    for path, words in ((foreign, "another program"), (newer, "newer release")):
        before = path.read_bytes()
        record = Record.open(path)
        record.keep_setting("a", "b")
        assert words in record.notice
        assert record.setting("a") == "b"
        assert path.read_bytes() == before


def test_the_environment_names_the_file(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("ROPECALC_RECORD", str(tmp_path / "mine.sqlite"))
    Record.open().keep_setting("a", "b")
    assert record_path().exists()
    monkeypatch.delenv("ROPECALC_RECORD")
    assert record_path().name == "record.sqlite"
    assert record_path().parent.name == "ropecalc"


def test_how_sure_a_learner_was_outlives_the_page(path: Path) -> None:
    first = reopened(path)
    first.keep_confidence(PLACE, 0, "guess")
    first.keep_confidence(PLACE, 0, "sure")
    first.keep_confidence(PLACE, 1, "unsure")
    first.close()
    assert reopened(path).confidence() == {(PLACE, 0): "sure", (PLACE, 1): "unsure"}


def first_schema(path: Path) -> None:
    """A record as the first release wrote it: no table for confidence."""
    record = reopened(path)
    record.keep_setting("unit.force", "lbf")
    record.keep_work(PLACE, Work(1, "2"))
    record.keep_answer(PLACE, Answer(0, "1", "1 kN", "right"))
    record.close()
    with sqlite3.connect(path) as disk:
        disk.execute("DROP TABLE confidence")
        disk.execute("PRAGMA user_version = 1")
    disk.close()


def test_a_record_of_the_first_release_opens_with_all_that_is_in_it(path: Path) -> None:
    first_schema(path)
    record = reopened(path)
    assert record.setting("unit.force") == "lbf" and record.work(PLACE) == Work(1, "2")
    assert len(record.answers(PLACE)) == 1 and record.confidence() == {}
    record.keep_confidence(PLACE, 0, "sure")
    record.close()
    again = reopened(path)
    assert again.confidence() == {(PLACE, 0): "sure"} and len(again.history()) == 1


def test_a_locked_record_of_the_first_release_is_copied_whole(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first_schema(path)
    monkeypatch.setattr(record_module, "_WAIT", 0.05)
    other = locked_by_another_page(path)
    record = Record.open(path)
    assert "locked" in record.notice
    assert len(record.answers(PLACE)) == 1 and record.work(PLACE) == Work(1, "2")
    record.keep_confidence(PLACE, 0, "sure")
    assert record.confidence() == {(PLACE, 0): "sure"}
    other.close()


def test_the_whole_record_can_be_read(path: Path) -> None:
    record = reopened(path)
    other = Place("exercise:x", "y")
    given = [(PLACE, Answer(0, "1", "1 kN", "wrong", "m", 2, True, "2030-01-01T00:00:00+00:00"))]
    given += [(other, Answer(1, "2", "2 kN", "right", at="2029-01-01T00:00:00+00:00"))]
    for place, answer in given:
        record.keep_answer(place, answer)
        record.keep_work(place, Work(answer.draw, answer.text))
    record.keep_setting("a", "b")
    assert record.history() == tuple(given)  # in the order of answering
    assert dict(record.works()) == {PLACE: Work(0, "1"), other: Work(1, "2")}
    assert record.settings() == {"a": "b"}
