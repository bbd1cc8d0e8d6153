"""The learner's record: settings, answers and unfinished work, in one SQLite file.

The file belongs to the learner and lies outside the course: answering never changes a notebook.
Every change is a transaction of its own, on the disk before the page says so; a kernel killed at
any moment loses nothing that was answered. What cannot be kept on disk is kept in memory, and
:attr:`Record.notice` says so in a sentence for the page. As soon as the disk takes it, what was
kept in memory follows.
"""

import os
import sqlite3
from collections.abc import Callable
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

PATH_VARIABLE = "ROPECALC_RECORD"
"""The environment variable that names another file for the record."""

SCHEMA = 2
_APPLICATION = 0x726F7065  # "rope": tells a learner's record from any other SQLite file
_WAIT = 5.0  # seconds to wait for another page that is writing at this moment
_BRIEFLY = 0.2  # ... and where a first wait was in vain
_TRIES = 3  # how often a write that found the file locked is tried before memory must do
_LOCKED = (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)
_Change = tuple[str, tuple[Any, ...]]  # a statement and its values
_TABLES = """
CREATE TABLE IF NOT EXISTS settings (key TEXT PRIMARY KEY, value TEXT NOT NULL);
CREATE TABLE IF NOT EXISTS answers (
    number INTEGER PRIMARY KEY,
    at TEXT NOT NULL, page TEXT NOT NULL, question TEXT NOT NULL, draw INTEGER NOT NULL,
    text TEXT NOT NULL, reading TEXT NOT NULL, verdict TEXT NOT NULL, mistake TEXT NOT NULL,
    hints INTEGER NOT NULL, solution_seen INTEGER NOT NULL
);
CREATE INDEX IF NOT EXISTS answers_of_place ON answers (page, question, draw);
CREATE TABLE IF NOT EXISTS work (
    page TEXT NOT NULL, question TEXT NOT NULL, draw INTEGER NOT NULL,
    draft TEXT NOT NULL, hints INTEGER NOT NULL, solution_seen INTEGER NOT NULL,
    PRIMARY KEY (page, question)
);
CREATE TABLE IF NOT EXISTS confidence (
    page TEXT NOT NULL, question TEXT NOT NULL, draw INTEGER NOT NULL, level TEXT NOT NULL,
    PRIMARY KEY (page, question, draw)
);
"""
# Schema 2 added "confidence"; a record of schema 1 gets the table, empty, when it is opened.
_COPIED = ("settings", "work", "answers", "confidence")  # the newest last: an old file lacks it


@dataclass(frozen=True)
class Place:
    """Where a question stands: the page (a lesson's or exercise's key) and the question's key."""

    page: str
    question: str


@dataclass(frozen=True)
class Answer:
    """One checked answer.

    ``text`` is what was typed, ``reading`` what it was read as, ``verdict`` the marker's word and
    ``mistake`` the key of the mistake that was recognised ("" if none). ``hints`` and
    ``solution_seen`` tell how much help had been taken by then.
    """

    draw: int
    text: str
    reading: str
    verdict: str
    mistake: str = ""
    hints: int = 0
    solution_seen: bool = False
    at: str = ""


@dataclass(frozen=True)
class Work:
    """Where the learner is at one place: which draw, what is typed, what has been shown."""

    draw: int = 0
    draft: str = ""
    hints: int = 0
    solution_seen: bool = False


def record_path() -> Path:
    """Where the record lies: ``ROPECALC_RECORD`` if set, else the reader's own data folder."""
    named = os.environ.get(PATH_VARIABLE)
    if named:
        return Path(named).expanduser()
    from platformdirs import user_data_path

    return user_data_path("ropecalc", appauthor=False) / "record.sqlite"


class Record:
    """One learner's settings and answers. Get one with :meth:`open` or :meth:`in_memory`.

    ``notice`` is "" or a sentence that the page must show; it can appear later, when the disk
    fills up while the learner works, and go again (:meth:`on_notice`).
    """

    def __init__(
        self, connection: sqlite3.Connection, notice: str = "", lost: Path | None = None
    ) -> None:
        self._connection = connection
        self._notice = notice
        self._followers: list[Callable[[str], object]] = []
        self._lost = lost  # the file that could not be written; None while it can
        self._waiting: list[_Change] = []  # what it has missed

    @property
    def notice(self) -> str:
        """What is to be known about the record, or ""."""
        return self._notice

    def on_notice(self, follow: Callable[[str], object]) -> None:
        """Call ``follow`` with the notice whenever it changes."""
        self._followers.append(follow)

    def _say(self, notice: str) -> None:
        if notice != self._notice:
            self._notice = notice
            for follow in self._followers:
                follow(notice)

    @classmethod
    def open(cls, path: Path | None = None) -> "Record":
        """The record at ``path`` (by default :func:`record_path`), made if there is none.

        Never raises: a damaged file is set aside under another name, and where nothing can be
        written the record lives in memory. Both are said in ``notice``.
        """
        path = path or record_path()
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            return cls(_connect(path))
        except _NotOursError as error:
            return cls.in_memory(str(error))
        except sqlite3.OperationalError as error:
            return cls(_copy_in_memory(path), _not_kept(path, error), path)
        except sqlite3.DatabaseError:
            return cls._set_aside(path)
        except OSError as error:
            return cls(_prepared(_open_database(":memory:")), _not_kept(path, error), path)

    @classmethod
    def in_memory(cls, notice: str = "") -> "Record":
        """A record that is forgotten when the page is closed."""
        return cls(_prepared(_open_database(":memory:")), notice)

    @classmethod
    def _set_aside(cls, path: Path) -> "Record":
        stamp = datetime.now().strftime("%Y%m%d-%H%M%S-%f")
        kept = path.with_name(f"{path.stem}-damaged-{stamp}{path.suffix}")
        with suppress(sqlite3.Error, _NotOursError):  # another page may just have done it
            return cls(_connect(path))
        try:
            # A journal belongs to its file; left behind it would be played into the new one.
            for ending in ("-journal", "-wal", "-shm"):
                with suppress(FileNotFoundError):
                    Path(f"{path}{ending}").rename(f"{kept}{ending}")
            path.rename(kept)
            return cls(
                _connect(path),
                f"Your record could not be read. It was kept as {kept.name} in {kept.parent}, "
                "and a new one was begun.",
            )
        except (OSError, sqlite3.Error, _NotOursError) as error:
            return cls.in_memory(_not_kept(path, error))

    def close(self) -> None:
        """Let go of the file."""
        self._connection.close()

    # --- settings ---

    def setting(self, key: str) -> str | None:
        """The setting kept under ``key``, or None."""
        found = self._read("SELECT value FROM settings WHERE key = ?", key)
        return None if not found else str(found[0][0])

    def keep_setting(self, key: str, value: str) -> None:
        """Keep ``value`` under ``key`` from now on."""
        self._write("INSERT OR REPLACE INTO settings VALUES (?, ?)", key, value)

    # --- work and answers ---

    def work(self, place: Place) -> Work:
        """Where the learner left off at ``place``; a fresh :class:`Work` if never there."""
        found = self._read(
            "SELECT draw, draft, hints, solution_seen FROM work WHERE page = ? AND question = ?",
            place.page,
            place.question,
        )
        if not found:
            return Work()
        draw, draft, hints, seen = found[0]
        return Work(draw, draft, hints, bool(seen))

    def keep_work(self, place: Place, work: Work) -> None:
        """Remember ``work`` as the state of ``place``."""
        self._write(
            "INSERT OR REPLACE INTO work VALUES (?, ?, ?, ?, ?, ?)",
            place.page,
            place.question,
            work.draw,
            work.draft,
            work.hints,
            work.solution_seen,
        )

    def keep_answer(self, place: Place, answer: Answer) -> None:
        """Keep a checked answer, with the time if it has none. Nothing is ever overwritten."""
        self._write(
            "INSERT INTO answers (at, page, question, draw, text, reading, verdict, mistake, "
            "hints, solution_seen) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            answer.at or datetime.now(UTC).isoformat(timespec="seconds"),
            place.page,
            place.question,
            answer.draw,
            answer.text,
            answer.reading,
            answer.verdict,
            answer.mistake,
            answer.hints,
            answer.solution_seen,
        )

    def answers(self, place: Place, draw: int | None = None) -> tuple[Answer, ...]:
        """The answers given at ``place``, oldest first; only those to ``draw`` if it is given."""
        rows = self._read(
            "SELECT draw, text, reading, verdict, mistake, hints, solution_seen, at FROM answers "
            "WHERE page = ? AND question = ? AND (? IS NULL OR draw = ?) ORDER BY number",
            place.page,
            place.question,
            draw,
            draw,
        )
        return tuple(
            Answer(draw, text, reading, verdict, mistake, hints, bool(seen), at)
            for draw, text, reading, verdict, mistake, hints, seen, at in rows
        )

    def places(self) -> tuple[Place, ...]:
        """Every place that has been answered at, in the order of the first answer."""
        rows = self._read("SELECT page, question FROM answers GROUP BY 1, 2 ORDER BY min(number)")
        return tuple(Place(*row) for row in rows)

    def history(self) -> tuple[tuple[Place, Answer], ...]:
        """Every answer with its place, oldest first."""
        rows = self._read(
            "SELECT page, question, draw, text, reading, verdict, mistake, hints, solution_seen, "
            "at FROM answers ORDER BY number"
        )
        return tuple(
            (
                Place(page, question),
                Answer(draw, text, reading, verdict, mistake, hints, bool(seen), at),
            )
            for page, question, draw, text, reading, verdict, mistake, hints, seen, at in rows
        )

    def settings(self) -> dict[str, str]:
        """Every setting by its key."""
        return dict(self._read("SELECT key, value FROM settings ORDER BY key"))

    def works(self) -> tuple[tuple[Place, Work], ...]:
        """Where the learner left off, at every place."""
        rows = self._read(
            "SELECT page, question, draw, draft, hints, solution_seen FROM work ORDER BY 1, 2"
        )
        return tuple(
            (Place(page, question), Work(draw, draft, hints, bool(seen)))
            for page, question, draw, draft, hints, seen in rows
        )

    # --- how sure the learner was ---

    def keep_confidence(self, place: Place, draw: int, level: str) -> None:
        """Keep how sure the learner is of their answer to ``draw`` at ``place``."""
        self._write(
            "INSERT OR REPLACE INTO confidence VALUES (?, ?, ?, ?)",
            place.page,
            place.question,
            draw,
            level,
        )

    def confidence(self) -> dict[tuple[Place, int], str]:
        """How sure the learner said they were, by place and draw."""
        rows = self._read("SELECT page, question, draw, level FROM confidence ORDER BY 1, 2, 3")
        return {(Place(page, question), draw): level for page, question, draw, level in rows}

    def _read(self, statement: str, *values: Any) -> list[Any]:
        try:
            return self._connection.execute(statement, values).fetchall()
        except sqlite3.Error as error:
            self._go_on_in_memory(error)
            return self._connection.execute(statement, values).fetchall()

    def _write(self, statement: str, *values: Any) -> None:
        if self._lost is not None:
            self._return_to(self._lost)
        try:
            self._commit((statement, values))
        except sqlite3.Error as error:
            self._go_on_in_memory(error)
            self._commit((statement, values))
        if self._lost is not None:
            self._waiting.append((statement, values))

    def _commit(self, *changes: _Change) -> None:
        for attempt in range(1, _TRIES + 1):
            try:
                with self._connection:
                    for statement, values in changes:
                        self._connection.execute(statement, values)
                return
            except sqlite3.OperationalError as error:
                if not _is_locked(error) or attempt == _TRIES:
                    raise

    def _return_to(self, path: Path) -> None:
        """Write what is waiting to the file, if it can be written again."""
        memory = self._connection
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            self._connection = _connect(path, _BRIEFLY)
        except (OSError, sqlite3.Error, _NotOursError):
            return
        try:
            self._commit(*self._waiting)
        except sqlite3.Error:
            self._connection.close()
            self._connection = memory
            return
        memory.close()
        self._connection.execute(f"PRAGMA busy_timeout = {_WAIT * 1000:.0f}")
        self._lost, self._waiting = None, []
        self._say("")

    def _go_on_in_memory(self, error: sqlite3.Error) -> None:
        path = Path(self._connection.execute("PRAGMA database_list").fetchone()[2])
        memory = _copy_in_memory(path)
        self._connection.close()
        self._connection = memory
        self._lost = path
        self._say(_not_kept(path, error))


class _NotOursError(Exception):
    """The file is in order but no record that this release can write. The text says why."""


def _is_locked(error: sqlite3.Error) -> bool:
    """Whether another page holds the file at this moment."""
    return (getattr(error, "sqlite_errorcode", 0) & 0xFF) in _LOCKED


def _open_database(name: str, wait: float | None = None) -> sqlite3.Connection:
    # A kernel may call from another thread; sqlite itself is built to be shared by threads.
    connection = sqlite3.connect(
        name, timeout=_WAIT if wait is None else wait, check_same_thread=False
    )
    connection.execute("PRAGMA synchronous = FULL")
    return connection


def _connect(path: Path, wait: float | None = None) -> sqlite3.Connection:
    connection = _open_database(str(path), wait)
    try:
        return _prepared(connection, path)
    except BaseException:
        connection.close()
        raise


def _prepared(connection: sqlite3.Connection, path: Path | None = None) -> sqlite3.Connection:
    """Check that the database is whole and ours, and lay out the tables if it is new."""
    [(condition,)] = connection.execute("PRAGMA quick_check(1)").fetchall()
    if condition != "ok":
        raise sqlite3.DatabaseError(condition)
    [(owner,)] = connection.execute("PRAGMA application_id").fetchall()
    [(version,)] = connection.execute("PRAGMA user_version").fetchall()
    [(tables,)] = connection.execute("SELECT count(*) FROM sqlite_master").fetchall()
    if tables and owner != _APPLICATION:
        raise _NotOursError(
            f"{path} is a database of another program and is left as it is. Your work on this "
            f"page is not kept. Point {PATH_VARIABLE} to another file."
        )
    if version > SCHEMA:
        raise _NotOursError(
            f"Your record {path} was written by a newer release of this course and is left as "
            "it is. Your work on this page is not kept. Use the newer release."
        )
    connection.executescript(
        f"BEGIN IMMEDIATE; PRAGMA application_id = {_APPLICATION}; PRAGMA user_version = {SCHEMA};"
        f"{_TABLES} COMMIT;"
    )
    return connection


def _copy_in_memory(path: Path) -> sqlite3.Connection:
    """A copy in memory of what can still be read at ``path``; empty if nothing can."""
    memory = _prepared(_open_database(":memory:"))
    address = f"{path.absolute().as_uri()}?mode=ro"
    with (
        suppress(sqlite3.Error),
        closing(sqlite3.connect(address, uri=True, timeout=_WAIT)) as disk,
    ):
        for table in _COPIED:
            rows = disk.execute(f"SELECT * FROM {table}").fetchall()
            if rows:
                marks = ", ".join("?" * len(rows[0]))
                memory.executemany(f"INSERT INTO {table} VALUES ({marks})", rows)
    memory.commit()
    return memory


def _not_kept(path: Path, error: Exception) -> str:
    return (
        f"Your record {path} cannot be written ({error}). You can go on, but what you answer now "
        "is forgotten when this page is closed."
    )
