"""The briefing card and the debrief: numbers against the plan, words that do not flatter."""

from collections.abc import Iterator

import pytest

from ropecalc.mechanics.holding import Method
from ropecalc.teaching.briefing import (
    CELL_ERROR,
    BriefingCard,
    Debrief,
    cell_rows,
    cells,
    station_rows,
)
from ropecalc.teaching.figures.plan_board import PLAN_BOARD, compute
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.units import Display, Kind, parse_quantity

START = PLAN_BOARD.start


@pytest.fixture
def session() -> Iterator[Session]:
    record = Record.in_memory()
    yield Session(record)
    record.close()


def force(text: str) -> float:
    return parse_quantity(text, Kind.FORCE)[0]


def test_cells_by_the_last_move_and_where_to_stop() -> None:
    board = compute(START)
    rows = {row[0]: row[1:] for row in cell_rows(cells(board, CELL_ERROR), Display())[1:]}
    row = board.governing
    assert row is not None and row.near is not None and row.total is not None
    near, far = rows["the near line"], rows["the far line"]
    assert row.near <= force(near[0]) <= 1.1 * row.near
    assert force(near[0]) == force(far[2])  # let out, the lines change places
    assert force(near[2]) == force(far[0])
    assert " to " in near[1]
    stop = force(near[4])
    assert stop <= START["line"] / (START["margin"] * (1 + START["uncertainty"]))
    assert stop >= 0.9 * board.line_stop
    assert row.total <= force(rows["all lines, at the hub"][0]) <= 1.1 * row.total
    assert rows["haul line, at the litter"][-1].startswith("_")


@pytest.mark.parametrize("error", [0.0, 50.0, 100.0, 250.0])
@pytest.mark.parametrize("uncertainty", [0.0, 0.1, 0.3])
def test_a_cell_that_shows_too_little_is_asked_and_stopped_in_time(
    error: float, uncertainty: float
) -> None:
    """With the true pull at what the plan counts on, the least that the cell can show counts."""
    board = compute(START | {"uncertainty": uncertainty})
    found = cells(board, error)
    for cell, row in zip(found, cell_rows(found, Display())[1:], strict=True):
        counted_on = cell.most * (1 + uncertainty)
        assert force(row[4]) <= max(0.0, counted_on - error) + 1e-6
        assert cell.too_coarse == (cell.most * uncertainty <= error)
    line = START["line"] / START["margin"]  # the pull at which the margin is used up
    assert force(cell_rows(found, Display())[1][5]) <= max(0.0, line - error) + 1e-6


def test_a_better_cell_asks_later_and_a_coarse_one_is_named(session: Session) -> None:
    card = BriefingCard(session)
    assert "A cell may be off by 0.10 kN" in card.summary()
    assert "Too coarse" not in card.summary()
    card.enter_error("0.4 kN")
    assert "Too coarse a cell for such a plan: the near line, the far line" in card.summary()
    board = compute(START)
    asked = [[cell.ask for cell in cells(board, error)] for error in (20.0, 100.0, 400.0)]
    assert asked == sorted(asked, reverse=True)


def test_an_error_that_cannot_be_read_is_said_and_the_last_one_kept(session: Session) -> None:
    card = BriefingCard(session)
    card.enter_error("50 N")
    card.enter_error("a bit")
    assert "A cell may be off by: " in card.summary()
    assert "A cell may be off by 50 N" in card.summary()
    card.enter_error("-1 kN")
    assert "without a sign" in card.summary()
    session.choose_unit("force", "lbf")  # writes the last good one into the field
    assert "without a sign" not in card.summary()
    assert "off by 12 lbf" in card.summary()


def test_stations_add_up_the_rope() -> None:
    board = compute(START)
    assert board.plan is not None
    rows = station_rows(board, Display())
    lengths = [station.track_length for station in board.plan.stations]
    for row, length in zip(rows[1:], lengths, strict=True):
        by_here = parse_quantity(row[2], Kind.LENGTH)[0]
        assert by_here == pytest.approx(4 * (lengths[0] - length), abs=0.6)
    assert [row[3] for row in rows].count("takes most") == 1
    assert [row[3] for row in rows].count("let out, slowly, to here") == 1


def test_the_card_has_places_for_names_and_defers(session: Session) -> None:
    text = BriefingCard(session).summary()
    for words in ("controller: __", "belayer: __", "qualified person", "authority", "Upper Heron"):
        assert words in text
    for words in ("safe ", "approved", "guaranteed"):
        assert words not in text.lower().replace("safety", "")
    session.choose_unit("force", "lbf")
    assert "lbf" in BriefingCard(session).summary()


def test_the_card_takes_over_the_figure(session: Session) -> None:
    values = dict(START)
    card = BriefingCard(session, lambda: values)
    values["lines"] = 1.0
    card.children[0].children[0].click()
    assert "one track line" in card.summary()
    assert "far line" not in card.summary()


def test_no_number_to_rely_on_gives_no_cells() -> None:
    board = compute(START | {"hub": 15.0})
    row = board.governing
    assert row is None or row.total is None or cells(board, CELL_ERROR)


def test_what_is_predicted_agrees_with_itself(session: Session) -> None:
    debrief = Debrief(session)
    text = debrief.summary()
    assert "go with the weight you entered" in text
    assert "do not go with" not in text
    assert "which is the same" in text


def test_a_wrong_reading_is_told(session: Session) -> None:
    debrief = Debrief(session)
    debrief.type_in("haul", "2.4 kN")
    text = debrief.summary()
    assert "do not go with" in text
    board = compute(START)
    assert board.governing is not None
    should = board.governing.station.way(Method.TRACK).haul_tension
    assert should is not None
    assert f"{100 * (2400 / should - 1):.0f} % more" in text


def test_what_cannot_be_read_is_said_and_can_be_undone(session: Session) -> None:
    debrief = Debrief(session)
    debrief.type_in("track", "a lot")
    assert debrief.summary().startswith("Reading of all track lines:")
    debrief.type_in("track", "1.1 kN")
    debrief.type_in("down", "85°")
    assert "steeper" in debrief.summary()
    debrief.fill_in()
    assert "go with the weight" in debrief.summary()


def test_units_change_what_is_filled_in(session: Session) -> None:
    debrief = Debrief(session)
    session.choose_unit("force", "lbf")
    assert "lbf" in debrief.summary()
    assert "do not go with" not in debrief.summary()
