"""Units: published factors, an independent unit library, reading, rounding."""

import math
from decimal import Decimal
from fractions import Fraction

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ropecalc.units import (
    POUND,
    STANDARD_GRAVITY,
    UNITS,
    Display,
    Kind,
    QuantityError,
    Rounding,
    WrongUnitError,
    find_unit,
    from_si,
    parse_number,
    parse_quantity,
    plain,
    round_figures,
    to_si,
    units_of,
)

REPEATABLE = settings(deadline=None, derandomize=True, max_examples=300)
FINITE = st.floats(-1e9, 1e9, allow_nan=False).filter(lambda v: v == 0 or abs(v) > 1e-9)


# --- factors ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("value", "unit", "si", "tolerance"),
    [
        # NIST SP 811, appendix B.8: exact factors
        (1.0, "lbf", 4.4482216152605, 0.0),
        (1.0, "ft", 0.3048, 0.0),
        (1.0, "in", 0.0254, 0.0),
        (1.0, "lb", 0.45359237, 0.0),
        (1.0, "kgf", 9.80665, 0.0),
        # NIST SP 811, appendix B.8: rounded as printed
        (1.0, "lb", 4.535924e-1, 5e-8),
        (1.0, "°", 1.745329e-2, 5e-9),
        (360.0, "°", 6.283185, 5e-7),
        (2000.0, "lb", 907.1847, 5e-5),  # the short ton
        (2240.0, "lb", 1016.047, 5e-4),  # the long ton
        (1.0, "ft/s", 0.3048, 0.0),
        (1.0, "min", 60.0, 0.0),
    ],
)
def test_published_factors(value: float, unit: str, si: float, tolerance: float) -> None:
    assert to_si(value, unit) == pytest.approx(si, abs=tolerance, rel=1e-15)


def test_constants() -> None:
    assert STANDARD_GRAVITY == 9.80665  # NIST SP 811, exact
    assert POUND == 0.45359237  # NIST SP 811, exact


PINT = {
    "N": "newton", "kN": "kilonewton", "kgf": "kilogram_force", "lbf": "pound_force",
    "m": "meter", "cm": "centimeter", "mm": "millimeter", "ft": "foot", "in": "inch",
    "kg": "kilogram", "lb": "pound", "°": "degree", "rad": "radian",
    "m/s": "meter / second", "ft/s": "foot / second", "s": "second", "min": "minute",
}  # fmt: skip
BASE = {
    Kind.FORCE: "newton", Kind.LENGTH: "meter", Kind.MASS: "kilogram", Kind.ANGLE: "radian",
    Kind.SPEED: "meter / second", Kind.TIME: "second",
}  # fmt: skip


@pytest.mark.parametrize("symbol", PINT)
def test_every_unit_against_an_independent_library(symbol: str) -> None:
    registry = pint.UnitRegistry()
    kind = UNITS[symbol].kind
    assert UNITS[symbol].factor == pytest.approx(
        registry.Quantity(1.0, PINT[symbol]).to(BASE[kind]).magnitude, rel=1e-14
    )


def test_every_unit_with_a_dimension_is_checked() -> None:
    assert set(PINT) == {symbol for symbol, unit in UNITS.items() if unit.kind is not Kind.RATIO}
    assert to_si(5.0, "%") == 0.05


def test_sanity_in_words() -> None:
    # a tonne-force is a little under 10 kN and a kilonewton about 225 pounds-force
    assert to_si(1000, "kgf") == pytest.approx(9806.65)
    assert from_si(1000, "lbf") == pytest.approx(224.81, abs=0.005)
    assert from_si(1000, "kgf") == pytest.approx(101.97, abs=0.005)


@given(FINITE, st.sampled_from(sorted(PINT)))
@REPEATABLE
def test_there_and_back(value: float, symbol: str) -> None:
    assert from_si(to_si(value, symbol), symbol) == pytest.approx(value, rel=1e-14, abs=0)


@pytest.mark.parametrize(
    ("spelled", "symbol"),
    [
        ("KN", "kN"), (" kn ", "kN"), ("Newtons", "N"), ("lbs", "lb"), ("LBF", "lbf"),
        ("pounds-force", "lbf"), ("feet", "ft"), ("foot", "ft"), ("Meter", "m"), ("deg", "°"),
        ("degrees", "°"), ("radians", "rad"), ("per cent", "%"), ("m/m", ""), ("kilograms", "kg"),
        ("FT/S", "ft/s"), ("metres per second", "m/s"), ("meters per second", "m/s"),
        ("sec", "s"), ("second", "s"), ("minutes", "min"), ("minute", "min"),
    ],
)  # fmt: skip
def test_spellings(spelled: str, symbol: str) -> None:
    assert find_unit(spelled) is UNITS[symbol]


@pytest.mark.parametrize("nonsense", ["stone", "kNm", "k N", "m²", "°C"])
def test_unknown_units_list_the_known_ones(nonsense: str) -> None:
    with pytest.raises(QuantityError, match=r"is not a unit known here\. Use one of: N, kN, kgf"):
        find_unit(nonsense)


def test_units_are_offered_by_kind() -> None:
    assert [u.symbol for u in units_of(Kind.FORCE)] == ["N", "kN", "kgf", "lbf"]
    assert {u.symbol for kind in Kind for u in units_of(kind)} == set(UNITS)


# --- reading ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("1.25 kN", 1.25, "kN"), ("1,25 kN", 1.25, "kN"), ("1,25kN", 1.25, "kN"), ("7", 7, ""),
        ("-3 °", -3, "°"), ("−3°", -3, "°"), ("+4. ft", 4, "ft"), (".5 m", 0.5, "m"),
        (",5 m", 0.5, "m"), ("  12  lbf  ", 12, "lbf"), ("1,155 kN", 1.155, "kN"),
        ("5 per cent", 5, "per cent"), ("2\u00a0kN", 2, "kN"),
    ],
)  # fmt: skip
def test_numbers_are_read(text: str, number: float, unit: str) -> None:
    assert parse_number(text) == (number, unit)


@pytest.mark.parametrize(
    "text",
    [
        "", " ", "kN", "1 155 kN", "1.2.3", "1,000.5 kN", "1e3 N", "1/2 kN", "nan", "inf kN",
        "--3", "3 - 2", "+", ".", "0x10", "1_000", "2 kN 3", "1" + " " * 20_000 + "1",
    ],
)  # fmt: skip
def test_what_could_be_misread_is_refused(text: str) -> None:
    with pytest.raises(QuantityError, match="cannot be read as one number"):
        parse_number(text)


def test_a_number_too_long_to_reckon_with_is_refused() -> None:
    with pytest.raises(QuantityError, match="more digits"):
        parse_quantity("9" * 400 + " kN", Kind.FORCE)


@pytest.mark.parametrize(
    ("text", "kind", "si"),
    [
        ("2 kN", Kind.FORCE, 2000), ("200 kgf", Kind.FORCE, 1961.33),
        ("450 lbf", Kind.FORCE, 2001.699726867), ("30,5 cm", Kind.LENGTH, 0.305),
        ("180°", Kind.ANGLE, math.pi), ("1 rad", Kind.ANGLE, 1), ("95 %", Kind.RATIO, 0.95),
        ("0.95", Kind.RATIO, 0.95), ("176 lb", Kind.MASS, 79.83225712),
        ("6 in", Kind.LENGTH, 0.1524), ("10 ft/s", Kind.SPEED, 3.048), ("2,5 min", Kind.TIME, 150),
    ],
)  # fmt: skip
def test_quantities_are_read_as_si(text: str, kind: Kind, si: float) -> None:
    value, unit = parse_quantity(text, kind)
    assert value == pytest.approx(si, rel=1e-12)
    assert unit.kind is kind


def test_mass_and_force_never_mix() -> None:
    with pytest.raises(WrongUnitError, match=r"is a mass, but a force is asked for.*means kgf"):
        parse_quantity("200 kg", Kind.FORCE)
    with pytest.raises(WrongUnitError, match=r"means lbf"):
        parse_quantity("450 lb", Kind.FORCE)
    with pytest.raises(WrongUnitError, match=r"is a force, but a mass is asked for"):
        parse_quantity("2 kN", Kind.MASS)
    with pytest.raises(WrongUnitError, match=r"is a length, but an angle is asked for"):
        parse_quantity("2 m", Kind.ANGLE)
    with pytest.raises(WrongUnitError, match=r"is an angle, but a ratio.*plain number"):
        parse_quantity("2°", Kind.RATIO)


def test_a_missing_unit_is_asked_for() -> None:
    with pytest.raises(
        WrongUnitError, match=r"has no unit. Add one of: °, rad \(this is an angle\)"
    ):
        parse_quantity("30", Kind.ANGLE)
    with pytest.raises(WrongUnitError, match=r"Add one of: m/s, ft/s \(this is a speed\)"):
        parse_quantity("3", Kind.SPEED)
    with pytest.raises(WrongUnitError, match=r"is a length, but a time is asked .* of: s, min\."):
        parse_quantity("3 m", Kind.TIME)
    with pytest.raises(QuantityError, match="Nothing has been typed"):
        parse_quantity("   ", Kind.FORCE)


@given(st.text(max_size=40))
@REPEATABLE
def test_any_text_is_read_or_refused_in_words(text: str) -> None:
    for kind in Kind:
        try:
            value, _ = parse_quantity(text, kind)
        except QuantityError as refusal:
            assert str(refusal).endswith((".", "kgf.", "lbf."))
        else:
            assert math.isfinite(value)


# --- rounding --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("value", "figures", "rounding", "text"),
    [
        (1533.5, 3, Rounding.NEAREST, "1530"), (1533.5, 2, Rounding.UP, "1600"),
        (1533.5, 2, Rounding.DOWN, "1500"), (0.0012345, 3, Rounding.NEAREST, "0.00123"),
        (0.9996, 3, Rounding.NEAREST, "1.00"), (9.996, 3, Rounding.NEAREST, "10.0"),
        (99.5, 2, Rounding.UP, "100"), (-1.26, 2, Rounding.UP, "−1.2"),
        (-1.21, 2, Rounding.DOWN, "−1.3"), (1.2000000000000002, 2, Rounding.UP, "1.2"),
        (1.1999999999999997, 2, Rounding.DOWN, "1.2"), (0.0, 3, Rounding.UP, "0"),
        (-0.0, 3, Rounding.UP, "0"), (1.5e6, 2, Rounding.NEAREST, "1500000"),
        (2.001, 2, Rounding.UP, "2.1"), (-0.9996, 3, Rounding.NEAREST, "−1.00"),
    ],
)  # fmt: skip
def test_rounding_by_hand(value: float, figures: int, rounding: Rounding, text: str) -> None:
    assert plain(round_figures(value, figures, rounding)) == text


@given(FINITE, st.integers(1, 4))
@REPEATABLE
def test_rounding_goes_the_way_it_says(value: float, figures: int) -> None:
    nearest, up, down = (round_figures(value, figures, mode) for mode in Rounding)
    slack = Fraction(abs(value)) * Fraction(1, 10**11)
    assert Fraction(down) <= Fraction(value) + slack
    assert Fraction(up) >= Fraction(value) - slack
    assert nearest in (up, down) or up == down
    assert abs(Fraction(nearest) - Fraction(value)) <= (Fraction(up) - Fraction(down)) / 2 + slack
    for rounded in (nearest, up, down):
        assert len(rounded.normalize().as_tuple().digits) <= figures


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_not_finite_is_never_rounded(value: float) -> None:
    with pytest.raises(ValueError, match="a finite number is needed"):
        round_figures(value, 3)


def test_plain_has_no_exponent() -> None:
    assert plain(Decimal("1.2E+3")) == "1200"
    assert plain(Decimal("-5E-4")) == "−0.0005"


# --- a reader's units ------------------------------------------------------------------------


def test_display_shows_in_the_readers_units() -> None:
    american = Display(force="lbf", length="ft", mass="lb")
    assert Display().show(1961.33, Kind.FORCE) == "1.96 kN"
    assert american.show(1961.33, Kind.FORCE) == "441 lbf"
    assert american.show(0.3048, Kind.LENGTH) == "1.00 ft"
    assert american.show(90.718474, Kind.MASS) == "200 lb"
    assert american.show(math.pi / 3, Kind.ANGLE) == "60.0°"
    assert american.show(0.95, Kind.RATIO) == "0.950"
    assert american.show(3.048, Kind.SPEED) == "10.0 ft/s"
    assert american.show(90.0, Kind.TIME) == Display().show(90.0, Kind.TIME) == "90.0 s"
    assert Display().number(-1200.0, Kind.FORCE) == "−1.20"
    assert Display().latex(-1200.0, Kind.FORCE) == r"-1.20\,\mathrm{kN}"
    assert Display().latex(math.pi / 3, Kind.ANGLE) == r"60.0^\circ"
    assert Display().latex(3.0, Kind.SPEED) == r"3.00\,\mathrm{m/s}"


@pytest.mark.parametrize(
    ("length", "speed"),
    [("m", "m/s"), ("cm", "m/s"), ("mm", "m/s"), ("metres", "m/s"), ("ft", "ft/s"),
     ("in", "ft/s"), ("feet", "ft/s")],
)  # fmt: skip
def test_speeds_follow_the_unit_of_length(length: str, speed: str) -> None:
    display = Display(length=length)
    assert display.unit(Kind.SPEED).symbol == speed
    assert display.si(display.value(3.0, Kind.SPEED), Kind.SPEED) == pytest.approx(3.0)


@given(FINITE, st.sampled_from(["N", "kN", "kgf", "lbf"]))
@REPEATABLE
def test_display_there_and_back(value: float, unit: str) -> None:
    display = Display(force=unit)
    assert display.si(display.value(value, Kind.FORCE), Kind.FORCE) == pytest.approx(
        value, rel=1e-14
    )
    assert display.value(value, Kind.FORCE) == from_si(value, unit)


def test_display_refuses_a_unit_of_another_kind() -> None:
    with pytest.raises(QuantityError, match="kg is a mass, not a force"):
        Display(force="kg")
    with pytest.raises(QuantityError, match="m is a length, not an angle"):
        Display(angle="m")


def test_what_is_shown_reads_back() -> None:
    for kind in Kind:
        for unit in units_of(kind):
            chosen = kind not in (Kind.RATIO, Kind.SPEED, Kind.TIME)
            display = Display(**{kind.value: unit.symbol}) if chosen else Display()
            text = display.show(1.23, kind)
            assert parse_quantity(text, kind)[0] == pytest.approx(1.23, rel=0.01)


def test_a_plain_number_that_is_whole_is_written_without_decimals() -> None:
    display = Display()
    assert display.show(3.0, Kind.RATIO) == "3"
    assert display.latex(-12.0, Kind.RATIO) == "-12"
    assert display.number(3.001, Kind.RATIO) == "3.00"
    assert display.show(1234.0, Kind.RATIO) == "1230"
    assert display.show(3.0, Kind.LENGTH) == "3.00 m"
