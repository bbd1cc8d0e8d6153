"""What the printed survey sheet asks for, in the order of the site file."""

from dataclasses import dataclass

from ropecalc import cautions
from ropecalc.planning.fields import EDGE_FIELDS, FIELDS, Field, Need

WALL_ROWS = 14
"""Lines for surveyed points on the sheet."""


@dataclass(frozen=True)
class SheetRow:
    """One line to fill in; ``letter`` as in the sketch, ``measured`` if an accuracy is asked."""

    letter: str
    label: str
    optional: bool
    measured: bool


@dataclass(frozen=True)
class SheetGroup:
    """Lines under one heading."""

    title: str
    rows: tuple[SheetRow, ...]


_TITLES = {
    "site": "Site",
    "haul_directional": "Haul directional (D)",
    "track_directional": "Track directional (A), if another point",
    "hub": "Hub (B)",
    "load": "Load",
    "litter": "Litter",
    "raise": "Raise",
    "protected_edge": "Protected edge, if the haul line may bear on it",
    "limits": "Limits, if any: your own figures",
}

_SHORT = {
    ("site", "datum"): "datum: where it is",
    ("site", "surveyed_on"): "date of the survey",
    ("load", "mass"): "mass of all that hangs",
    ("litter", "bridle"): "bridle, P to the body",
    ("litter", "half_width"): "half width of the body",
    ("litter", "height"): "height of the body",
    ("litter", "clearance"): "clearance of the body",
    ("raise", "start_height"): "height of P at the start",
    ("raise", "guidance_ends"): "height where guidance ends",
    ("raise", "station_spacing"): "height between stations",
    ("raise", "line_clearance"): "clearance of the lines",
    ("raise", "guided_by"): "track line, tag line, attendant",
    ("protected_edge", "height"): "height of a wall point",
    ("protected_edge", "friction"): "friction coefficient",
    ("limits", "track_tension"): "track lines together",
    ("limits", "tag_tension"): "tag line",
    ("limits", "haul_tension"): "haul line",
    ("limits", "hub_uplift"): "upward pull on the hub",
    ("limits", "push"): "push of an attendant",
}
"""Words short enough for a narrow column; where there is none the key is."""

STEPS = (
    "Hang a plumb line and mark a height: the datum. Offsets count out from the line, heights up "
    "from the mark. Use one unit of length throughout.",
    "Survey every corner of the wall from the foot up (1, 2, 3, ...): tips, roofs, the lip. Above "
    "an outcrop as well as below it.",
    "Write beside each measurement how far it may be off. Near the directional and around an "
    "outcrop 0.2 m can change a tension by half: measure those best.",
)

SHEET_CAUTIONS = (
    "Work near an edge only as your authority having jurisdiction allows, secured.",
    cautions.STATIC,
    cautions.AUTHORITY,
)


def sheet_groups() -> tuple[SheetGroup, ...]:
    """All lines of the sheet except the wall's points."""
    fields = [f for f in FIELDS if f.table != "limits"]
    fields += [*EDGE_FIELDS, *(f for f in FIELDS if f.table == "limits")]
    tables = dict.fromkeys(field.table for field in fields)
    return tuple(
        SheetGroup(_TITLES[table], tuple(_row(field) for field in fields if field.table == table))
        for table in tables
    )


def _row(field: Field) -> SheetRow:
    return SheetRow(
        letter=field.letter,
        label=_SHORT.get((field.table, field.key), field.key),
        optional=field.need is Need.OPTIONAL,
        measured=field.kind is not None and field.table not in ("limits", "protected_edge"),
    )
