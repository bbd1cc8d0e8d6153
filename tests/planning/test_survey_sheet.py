"""The survey sheet asks for everything a site file holds."""

from ropecalc.planning.fields import EDGE_FIELDS, FIELDS
from ropecalc.planning.survey_sheet import SHEET_CAUTIONS, STEPS, sheet_groups


def test_each_entry_of_a_site_file_has_its_line() -> None:
    rows = [row for group in sheet_groups() for row in group.rows]
    assert len(rows) == len(FIELDS) + len(EDGE_FIELDS)


def test_every_length_and_mass_asks_how_well_it_was_measured() -> None:
    for group in sheet_groups():
        for row in group.rows:
            assert row.measured == (
                not group.title.startswith(("Site", "Protected", "Limits"))
                and not row.label.startswith("track line, tag line")
            )


def test_labels_fit_their_column() -> None:
    assert max(len(row.label) for group in sheet_groups() for row in group.rows) <= 32


def test_cautions_are_printed_with_it() -> None:
    assert SHEET_CAUTIONS
    assert STEPS
