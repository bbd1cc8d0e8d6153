"""Plans on paper: rounded against the user, in any units, with nothing left out."""

import pytest

from ropecalc.mechanics.holding import Method
from ropecalc.planning.raise_plan import Comparison, Peak, Verdict, plan_raise
from ropecalc.planning.report import (
    SENSITIVE_MARK,
    Wording,
    beside_the_headline,
    column_meanings,
    comparison_line,
    governing_line,
    read_display,
    station_table,
    text_report,
)
from ropecalc.planning.site import Limits
from ropecalc.units import Display, QuantityError, Rounding
from tests.planning.building import make_site, outcrop

SI = Wording(Display())
UNITS = {"m", "kN"}
IMPERIAL = Wording(Display(force="lbf", length="ft", mass="lb"))


@pytest.mark.parametrize(
    ("newtons", "shown"),
    [(1149.6, "1.2"), (1100.0, "1.1"), (1100.1, "1.2"), (987.2, "0.99"), (9.3, "0.01"), (0, "0")],
)
def test_forces_go_up(newtons: float, shown: str) -> None:
    assert SI.force(newtons) == shown


def test_forces_go_up_in_pounds() -> None:
    assert IMPERIAL.force(4.4482216152605 * 251) == "260"
    assert IMPERIAL.force(4.4482216152605 * 3.2) == "4"


@pytest.mark.parametrize(
    ("metres", "up", "down"),
    [(2.01, "2.1", "2.0"), (12.3, "13", "12"), (0.04, "0.1", "0.0"), (-0.04, "−0.1", "−0.1")],
)
def test_rope_goes_up_and_room_goes_down(metres: float, up: str, down: str) -> None:
    assert SI.rope(metres) == up
    assert SI.rope(metres, Rounding.DOWN) == down


def test_rope_keeps_its_sign_and_is_never_shortened() -> None:
    assert SI.rope(-2.31) == "−2.4"
    assert SI.rope(-12.3) == "−13"
    assert SI.rope(0.0) == "0"


def test_angles_are_whole_degrees_and_never_minus_nothing() -> None:
    assert SI.angle(-0.001) == "0"
    assert SI.angle(-0.02) == "−1"
    assert SI.angle(1.0) == "57"
    assert SI.angle(None) == "-"
    assert Wording(Display(angle="rad")).angle(-0.004) == "0.00"


def test_small_units_feign_no_precision() -> None:
    for unit, offset, height in (
        ("mm", "2400", "26600"),
        ("cm", "240", "2660"),
        ("in", "93", "1047.2"),
    ):
        words = Wording(Display(length=unit))
        assert (words.offset(2.351), words.height(26.6)) == (offset, height)


@pytest.mark.parametrize(
    ("comparison", "line"),
    [
        (
            Comparison("haul line", 3000.0, Peak(1999.0, 20.0), Verdict.INSIDE, False),
            "Haul line: largest 2.0 kN (at 20.00 m); inside the limit you entered (3 kN).",
        ),
        (
            Comparison("haul line", 3000.0, Peak(1999.0, 20.0), Verdict.TOO_SENSITIVE, True),
            "Haul line: largest of those with a number 2.0 kN (at 20.00 m); too sensitive to "
            "compare (3 kN).",
        ),
        (
            Comparison("tag line", None, None, Verdict.NO_LIMIT, True),
            "Tag line: no value to rely on; no limit entered.",
        ),
    ],
)
def test_a_largest_value_says_what_it_leaves_out(comparison: Comparison, line: str) -> None:
    assert comparison_line(comparison, SI) == line


def test_a_limit_is_not_kept_where_the_litter_is_not_held() -> None:
    limits = Limits(track_tension=1e6, haul_tension=1e6, push=1e6)
    plan = plan_raise(make_site(outcrop(25.0, tip=4.0), hub=(14.0, 0.5), limits=limits))
    assert plan.summary().gaps and not plan.summary(Method.ATTENDANT).gaps
    assert Verdict.INSIDE not in {c.verdict for c in plan.summary().comparisons}
    assert plan.summary(Method.ATTENDANT).comparisons[0].verdict is Verdict.INSIDE


def test_offsets_go_up_to_the_next_tenth_and_heights_stay() -> None:
    assert SI.offset(2.35) == "2.4"
    assert SI.offset(2.4) == "2.4"
    assert SI.offset(12.31) == "12.4"
    assert SI.height(26.6) == "26.60"
    assert IMPERIAL.height(0.3048 * 88) == "88.00"


def test_a_limit_is_shown_as_entered_or_lower() -> None:
    assert SI.limit(6000.0) == "6 kN"
    assert SI.limit(2500.0) == "2.5 kN"
    assert Wording(Display(force="N")).limit(1000.0) == "1000 N"
    assert SI.limit(5999.9) == "5.999 kN"


def test_every_number_in_the_table_is_on_the_wrong_side_for_nobody() -> None:
    """Each printed force is at least the computed one, each printed room at most."""
    plan = plan_raise(make_site(outcrop(25.0)))
    table = station_table(plan, SI)
    columns = [upper for upper, _ in table.heads]
    for row, station in zip(table.rows, reversed(plan.stations), strict=True):
        way = station.way(Method.TRACK)
        cells = dict(zip(columns, row, strict=True))
        assert float(cells["track line"]) * 1000 >= way.line_tension - 1e-6
        assert float(cells["haul"]) * 1000 >= way.haul_tension - 1e-6
        assert float(cells["up on"]) * 1000 >= way.hub_uplift - 1e-6
        assert float(cells["offset"]) >= station.offset - 1e-9
        assert float(cells["room to"]) <= way.room + 1e-9


def test_the_report_says_what_governs_and_carries_every_caution() -> None:
    plan = plan_raise(make_site(outcrop(25.0)))
    text = text_report(plan)
    flat = " ".join(text.split())
    assert "> Largest track lines together: 1.2 kN at 26.60 m, 2.4 m out" in flat
    assert "needed for: body at 25.00 m" in flat
    for caution in plan.cautions:
        assert " ".join(caution.split()) in flat
    assert "ropecalc 0." in flat
    assert plan.site.source in flat
    assert "no limit entered" in flat
    assert "nan" not in flat.lower()


def test_lines_fit_a_page() -> None:
    text = text_report(plan_raise(make_site(outcrop(25.0), edges=[(30.0, 0.3)])))
    assert max(map(len, text.splitlines())) <= 132


def test_impossible_heights_are_named_with_their_reason() -> None:
    text = " ".join(text_report(plan_raise(make_site(outcrop(25.0, 4.0), hub=(14, 0.5)))).split())
    assert "Not possible at" in text
    assert "straight line from directional to hub" in text
    assert "is needed for: body at 25.00 m" in text
    assert "not held" in text


def test_a_raise_impossible_throughout_is_reported_in_words() -> None:
    plan = plan_raise(make_site(outcrop(25.0, 4.0), hub=(4.5, 0.5), guidance_ends=24.0))
    text = text_report(plan)
    said = text.index("There is no height at which the track line can hold the litter.")
    assert said < text.index("offset needed for")


def test_sensitive_numbers_are_not_printed() -> None:
    plan = plan_raise(make_site(guidance_ends=31.5))
    table = station_table(plan, SI)
    assert table.rows[0][3] == SENSITIVE_MARK
    text = " ".join(text_report(plan).split())
    assert "Do not use a number here; change the geometry." in text
    assert "Some heights are too sensitive for a number" in text


def test_an_attendants_plan_has_no_hub_columns() -> None:
    plan = plan_raise(make_site(guided_by=Method.ATTENDANT))
    heads = " ".join(upper for upper, _ in station_table(plan, SI).heads)
    assert "push" in heads
    assert "up on" not in heads


def test_limits_are_compared_in_words() -> None:
    plan = plan_raise(make_site(outcrop(25.0), limits=Limits(track_tension=1000.0)))
    assert "outside the limit you entered (1 kN)" in " ".join(text_report(plan).split())


def test_a_broken_limit_is_in_the_headline_and_its_rows_are_marked() -> None:
    limits = Limits(track_tension=1000.0, haul_tension=1900.0, hub_uplift=5000.0)
    plan = plan_raise(make_site(outcrop(25.0), limits=limits))
    line = governing_line(plan, SI)
    assert "Track lines together: largest 1.2 kN (at 26.60 m); outside the limit you" in line
    assert "Haul line: largest 2.0 kN" in line
    assert "hub" not in line
    for row, station in zip(station_table(plan, SI).rows, reversed(plan.stations), strict=True):
        way = station.way(Method.TRACK)
        assert way.effort is not None and way.haul_above is not None
        assert ("!" in row[0]) == (way.effort > 1000.0 or way.haul_above > 1900.0)
    assert "!: outside a limit you entered." in text_report(plan)
    assert "!: outside" not in text_report(plan_raise(make_site(outcrop(25.0))))


def test_a_line_that_runs_the_other_way_is_said_in_words() -> None:
    plan = plan_raise(make_site(outcrop(25.0)))
    table = station_table(plan, SI)
    column = [upper for upper, _ in table.heads].index("take in")
    for row, station in zip(table.rows, reversed(plan.stations), strict=True):
        moved = station.take_in
        assert row[column].startswith("pay out ") == (moved is not None and moved < 0)
        assert "−" not in row[column]


def test_the_headline_is_not_said_twice() -> None:
    plan = plan_raise(make_site(outcrop(25.0), limits=Limits(haul_tension=1900.0)))
    lines = beside_the_headline(plan, SI)
    assert [line.split(":")[0] for line in lines] == [
        "Nearest to the straight line from directional to hub at 26.60 m",
        "Upward pull on the hub",
    ]


@pytest.mark.parametrize("method", list(Method))
def test_every_column_is_explained(method: Method) -> None:
    plan = plan_raise(make_site(outcrop(25.0), guided_by=method, edges=[(25.0, 0.3)]))
    explained = " ".join(line.split(":")[0] for line in column_meanings(plan, SI))
    for upper, lower in station_table(plan, SI).heads:
        words = f"{upper.rstrip('/')} {lower}".split()
        assert all(word in explained for word in words if word.isalpha() and word not in UNITS)


@pytest.mark.parametrize("method", list(Method))
def test_every_stated_largest_value_stands_in_the_table(method: Method) -> None:
    plan = plan_raise(make_site(outcrop(25.0), guided_by=method))
    heights = {row[1] for row in station_table(plan, SI).rows}
    for comparison in plan.summary().comparisons:
        assert comparison.largest is not None
        assert SI.height(comparison.largest.height) in heights


def test_units_follow_the_reader_everywhere() -> None:
    text = text_report(plan_raise(make_site(outcrop(25.0))), IMPERIAL.display)
    assert "441 lb, weighing 441 lbf" in text
    assert "87.27 ft" in text
    assert " kN" not in text
    assert " m " not in text


def test_units_are_read_from_a_list() -> None:
    assert read_display("lbf,ft") == Display(force="lbf", length="ft")
    assert read_display("kgf") == Display(force="kgf")
    for wrong, words in (
        ("furlong", "not a unit"),
        ("kN,lbf", "two units"),
        ("°", "not a unit of"),
        ("", "a unit is missing"),
        ("kN,,m", "a unit is missing in “kN,,m”"),
        ("stone", "N, kN, kgf, lbf; m, cm, mm, ft, in; kg, lb"),
    ):
        with pytest.raises((QuantityError, ValueError), match=words):
            read_display(wrong)
