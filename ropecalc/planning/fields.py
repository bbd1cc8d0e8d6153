"""Every entry of a site file, once: the reader, the form and the survey sheet all follow it.

A field is one ``key = "value unit"`` in one table of the file. The letters are those drawn in
the survey sheet's cross-section.
"""

from dataclasses import dataclass
from enum import StrEnum

from ropecalc.units import Kind


class Need(StrEnum):
    """Whether a field must be there."""

    REQUIRED = "required"
    OPTIONAL = "optional"


class Sign(StrEnum):
    """Which values a field allows."""

    ANY = "any"
    NOT_NEGATIVE = "zero or more"
    POSITIVE = "more than zero"


@dataclass(frozen=True)
class Field:
    """One entry: where it stands, what it measures (None: plain text), and how to measure it.

    ``accuracy`` is the blank on the survey sheet that asks how well it was measured.
    """

    table: str
    key: str
    kind: Kind | None
    label: str
    example: str
    sign: Sign = Sign.ANY
    need: Need = Need.REQUIRED
    letter: str = ""
    help: str = ""

    @property
    def path(self) -> str:
        """How the field is named to the reader, e.g. ``[hub] offset``."""
        return f"[{self.table}] {self.key}"


_L, _F = Kind.LENGTH, Kind.FORCE
_POS, _NN, _OPT = Sign.POSITIVE, Sign.NOT_NEGATIVE, Need.OPTIONAL

FIELDS: tuple[Field, ...] = (
    Field("site", "name", None, "Name of the site", "Upper Heron Wall"),
    Field(
        "site",
        "datum",
        None,
        "Datum: where offsets and heights start",
        "foot of the wall",
        need=_OPT,
        help="Offsets count outwards from a plumb line, heights upwards from a mark.",
    ),
    Field("site", "surveyed_on", None, "Date of the survey", "2026-05-14", need=_OPT),
    Field(
        "haul_directional",
        "offset",
        _L,
        "Haul directional: offset",
        "0.4 m",
        letter="D",
        help="The point where the haul line last leaves something at the top.",
    ),
    Field("haul_directional", "height", _L, "Haul directional: height", "32 m", letter="D"),
    Field(
        "track_directional",
        "offset",
        _L,
        "Track directional: offset",
        "0.4 m",
        need=_OPT,
        letter="A",
        help="Leave both out if the track line runs through the haul directional.",
    ),
    Field(
        "track_directional",
        "height",
        _L,
        "Track directional: height",
        "32 m",
        need=_OPT,
        letter="A",
    ),
    Field(
        "hub",
        "offset",
        _L,
        "Hub: offset",
        "40 m",
        letter="B",
        help="The ground anchor out in front, for a tag line or the track lines.",
    ),
    Field("hub", "height", _L, "Hub: height", "0.5 m", letter="B"),
    Field(
        "load",
        "mass",
        Kind.MASS,
        "Mass of everything that hangs",
        "200 kg",
        _POS,
        help="Litter, patient, attendant, everything carried; wet if it may get wet.",
    ),
    Field(
        "litter",
        "bridle",
        _L,
        "Bridle: master attachment point down to the body",
        "1.0 m",
        _POS,
        letter="a",
    ),
    Field(
        "litter",
        "half_width",
        _L,
        "Half width of the body, towards the wall",
        "0.35 m",
        _NN,
        letter="w",
        help="From below the master attachment point to whatever reaches nearest to the wall.",
    ),
    Field(
        "litter",
        "height",
        _L,
        "Height of the body below the bridle",
        "0.6 m",
        _POS,
        letter="h",
        help="Count an attendant hanging at the litter.",
    ),
    Field(
        "litter",
        "clearance",
        _L,
        "Clearance between body and rock",
        "0.3 m",
        _NN,
        letter="c",
        help="Measured level, straight out from the rock; so is the lines' clearance.",
    ),
    Field(
        "raise",
        "start_height",
        _L,
        "Height of the master attachment point at the start",
        "2 m",
        letter="P",
    ),
    Field(
        "raise",
        "guidance_ends",
        _L,
        "Height where guidance ends",
        "29.5 m",
        letter="E",
        help="Edge attendants take over there; it must lie below both directionals.",
    ),
    Field("raise", "station_spacing", _L, "Height between stations", "2 m", _POS),
    Field(
        "raise",
        "line_clearance",
        _L,
        "Clearance between lines and rock",
        "0.3 m",
        _NN,
        letter="r",
    ),
    Field(
        "raise",
        "guided_by",
        None,
        "Guided by",
        "track line",
        need=_OPT,
        help="Track line, tag line or attendant. The other two are worked out for comparison.",
    ),
    Field(
        "limits",
        "track_tension",
        _F,
        "Limit: track lines together",
        "2.5 kN",
        _POS,
        _OPT,
        help="Your own figure, from your equipment and your authority.",
    ),
    Field("limits", "tag_tension", _F, "Limit: tag line", "2.5 kN", _POS, _OPT),
    Field("limits", "haul_tension", _F, "Limit: haul line", "2.5 kN", _POS, _OPT),
    Field("limits", "hub_uplift", _F, "Limit: upward pull on the hub", "2.5 kN", _POS, _OPT),
    Field("limits", "push", _F, "Limit: outward push of an attendant", "2.5 kN", _POS, _OPT),
)
"""In the order of the site file."""

EDGE_FIELDS: tuple[Field, ...] = (
    Field(
        "protected_edge",
        "height",
        _L,
        "Protected edge: height of a surveyed point",
        "25 m",
        help="The haul line may bear here, on edge protection.",
    ),
    Field(
        "protected_edge",
        "friction",
        Kind.RATIO,
        "Protected edge: friction coefficient",
        "0.3",
        _NN,
        help="Between your rope and your edge protection; measure it or ask its maker.",
    ),
)
"""The entries of each ``[[protected_edge]]``."""

WALL_KEYS = ("unit", "points", "file")
TABLES = (*dict.fromkeys(field.table for field in FIELDS), "wall", "protected_edge")


def field_at(table: str, key: str) -> Field:
    """The field ``[table] key``; KeyError if there is none."""
    for field in (*FIELDS, *EDGE_FIELDS):
        if (field.table, field.key) == (table, key):
            return field
    raise KeyError(f"[{table}] {key}")
