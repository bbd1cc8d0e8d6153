"""Units are chosen once and found again on the next page."""

import sqlite3
from pathlib import Path

from ropecalc.teaching.page import UnitsView
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.units import Display


def test_a_choice_is_told_to_every_follower_and_kept(tmp_path: Path) -> None:
    record = Record.open(tmp_path / "record.sqlite")
    session = Session(record)
    seen: list[Display] = []
    session.on_units(seen.append)
    session.choose_unit("force", "lbf")
    session.choose_unit("length", "ft")
    assert [d.force for d in seen] == ["lbf", "lbf"]
    assert seen[-1] == Display(force="lbf", length="ft")
    record.close()
    again = Record.open(tmp_path / "record.sqlite")
    assert Session(again).display == Display(force="lbf", length="ft")
    again.close()


def test_a_unit_unknown_to_this_release_is_left_aside() -> None:
    record = Record.in_memory()
    record.keep_setting("unit.force", "furlong")
    record.keep_setting("unit.length", "kg")
    assert Session(record).display == Display()
    record.close()


def test_the_drop_downs_choose() -> None:
    record = Record.in_memory()
    session = Session(record)
    force, length, mass = session.unit_chooser().children
    force.value, length.value, mass.value = "kgf", "ft", "lb"
    assert session.display == Display(force="kgf", length="ft", mass="lb")
    record.close()


def test_a_notice_that_comes_later_is_shown_on_the_page(tmp_path: Path) -> None:
    path = tmp_path / "record.sqlite"
    session = Session(Record.open(path))
    units = UnitsView(session)
    _, notice = units.children
    assert (notice.value, notice.layout.display) == ("", "none")
    with sqlite3.connect(path) as disk:  # as on a full disk
        disk.execute(
            "CREATE TRIGGER full BEFORE INSERT ON settings BEGIN "
            "SELECT RAISE(ABORT, 'disk is <full>'); END"
        )
    disk.close()
    session.choose_unit("force", "lbf")
    assert "disk is &lt;full&gt;" in notice.value and not notice.layout.display
    assert "disk is <full>" in units.summary()
    with sqlite3.connect(path) as disk:
        disk.execute("DROP TRIGGER full")
    disk.close()
    session.choose_unit("length", "ft")
    assert (notice.value, notice.layout.display) == ("", "none")
    assert Session(Record.open(path)).display == Display(force="lbf", length="ft")
