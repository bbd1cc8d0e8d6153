"""Readings against ropes followed from sheave to sheave, random friction and finite differences."""

from math import inf, radians

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ropecalc.derivation import DomainError
from ropecalc.mechanics import guiding
from ropecalc.mechanics.holding import Method, hold
from ropecalc.mechanics.measurement import (
    WRITE_DOWN,
    CellPlace,
    LastMove,
    Tensioner,
    across_sheave,
    cell_reading,
    compare_readings,
    error_from_angle,
    full_scale_error,
    ground_sensitivity,
    haul_sensitivity,
    line_from_strand,
    line_let_out,
    line_reading,
    rope_ahead_of_redirect,
    strand_reading,
    tension_band,
    total_from_strand,
    weight_from_readings,
)
from ropecalc.units import Display, Kind, Rounding
from tests.mechanics.cases import CASE, CASE_LOAD, solve_balance, trials

SETTINGS = settings(derandomize=True, deadline=None, max_examples=60)
A, B = radians(66.251), radians(35.248)
CRUX = {"haul_elevation": A, "ground_depression": B}
UNKNOWN = LastMove.NOT_RECORDED


# --- weight ----------------------------------------------------------------------------------


def test_the_weight_comes_back_from_balances_in_coordinates() -> None:
    checked = 0
    for trial in trials(20, 40, 5, apart=False):
        haul, track = solve_balance(Method.TRACK, trial.rig, trial.load, trial.x, trial.z)
        held = hold(Method.TRACK, trial.rig, trial.load, trial.x, trial.z)
        keep = (held.reach == 0) & (haul > 1) & (track > 1) & (track < 50 * trial.load)
        weight = weight_from_readings(
            haul_tension=haul[keep],
            track_tension=track[keep],
            haul_elevation=held.haul_elevation.data[keep],
            ground_depression=held.ground_depression.data[keep],
        )
        np.testing.assert_allclose(weight, trial.load, rtol=1e-7)
        checked += keep.sum()
    assert checked > 100


def test_two_cells_and_a_weight_calculated_independently_for_this_project() -> None:
    weight = weight_from_readings(
        haul_tension=1620.0,
        track_tension=880.0 + 720.0,
        haul_elevation=radians(66),
        ground_depression=radians(35),
    )
    assert weight == pytest.approx(2020, abs=5)


# --- errors ----------------------------------------------------------------------------------


def test_full_scale_error_of_a_small_reading() -> None:
    # calculated independently for this project
    error = full_scale_error(full_scale=40e3, cell_error=0.01, reading=1500.0)
    assert error == pytest.approx(0.267, abs=5e-4)
    far = full_scale_error(full_scale=40e3, cell_error=0.01, reading=720.0)
    assert far == pytest.approx(0.56, abs=0.005)
    assert full_scale_error(full_scale=5e3, cell_error=0.02, reading=5e3) == pytest.approx(0.02)
    with pytest.raises(DomainError, match="within the full scale"):
        full_scale_error(full_scale=5e3, cell_error=0.02, reading=5001.0)


@SETTINGS
@given(st.floats(0.2, 1.5), st.floats(-1.2, 1.2))
def test_sensitivities_are_the_slopes_of_the_tension(up: float, down: float) -> None:
    if not 0.05 < up - down < 3.0:
        return
    step = 1e-6

    def relative(d_up: float, d_down: float) -> float:
        high, low = (
            guiding.track_tension(
                load=1.0, haul_elevation=up + s * d_up, ground_depression=down + s * d_down
            )
            for s in (1, -1)
        )
        return (high - low) / (high + low) / step

    values = {"haul_elevation": up, "ground_depression": down}
    assert haul_sensitivity(**values) == pytest.approx(relative(step, 0), rel=1e-4, abs=1e-4)
    assert ground_sensitivity(**values) == pytest.approx(relative(0, step), rel=1e-4, abs=1e-4)
    assert haul_sensitivity(**values) < 0


def test_two_degrees_calculated_independently_for_this_project() -> None:
    change = haul_sensitivity(haul_elevation=radians(56), ground_depression=radians(37))
    assert -change * radians(2) == pytest.approx(0.153, abs=5e-4)
    for derivation in (haul_sensitivity, ground_sensitivity):
        with pytest.raises(DomainError, match="steeper than the ground leg"):
            derivation(haul_elevation=0.5, ground_depression=0.5)


def band(**changes: float) -> object:
    values = {"load": CASE_LOAD, **CRUX, "haul_error": radians(2), "ground_error": radians(1)}
    return tension_band(**{**values, **changes})


@SETTINGS
@given(
    st.floats(0.3, 1.5), st.floats(-1.0, 1.1), st.floats(0, 0.15), st.floats(0, 0.15),
    st.integers(0, 1000),
)  # fmt: skip
def test_no_angles_within_the_errors_give_more_or_less(
    up: float, down: float, up_error: float, down_error: float, seed: int
) -> None:
    if up - down < 0.02:
        return
    found = tension_band(
        load=1000.0,
        haul_elevation=up,
        ground_depression=down,
        haul_error=up_error,
        ground_error=down_error,
    )
    rng = np.random.default_rng(seed)
    ups = np.clip(up + up_error * rng.uniform(-1, 1, 400), 0, np.pi / 2)
    downs = down + down_error * rng.uniform(-1, 1, 400)
    tensions = 1000.0 * np.cos(ups) / np.sin(ups - downs)
    crosses = (ups <= downs).any()
    assert tensions[ups > downs].min() >= found.least - 1e-6
    if crosses:
        assert found.most is None
    elif found.most is not None:
        assert tensions.max() <= found.most + 1e-6
        corner = 1000.0 * max(
            np.cos(up - up_error) / np.sin(up - up_error - d)
            for d in (down - down_error, down + down_error)
        )
        assert found.most == pytest.approx(corner, rel=1e-9)
    assert found.least <= found.nominal
    assert found.most is None or found.most >= found.nominal


def test_the_least_tension_with_the_ground_leg_square_to_the_haul_leg() -> None:
    found = tension_band(
        load=1000.0, haul_elevation=radians(60), ground_depression=radians(-30),
        haul_error=0.0, ground_error=radians(5),
    )  # fmt: skip
    assert found.least == pytest.approx(500.0)
    assert found.nominal == pytest.approx(500.0)
    assert found.most == pytest.approx(500.0 / np.cos(radians(5)))


def test_bands_in_words() -> None:
    found = band()
    assert not found.too_sensitive
    assert found.show(Display()) == "1.53 kN (1.29 kN to 1.82 kN with your errors)."  # outwards
    assert found.show(Display(force="lbf")).startswith("345 lbf (292 lbf to 408 lbf")
    exact = band(haul_error=0.0, ground_error=0.0)
    assert (exact.least, exact.most) == pytest.approx((exact.nominal, exact.nominal))
    wide = band(haul_error=radians(10))
    assert wide.most is not None and wide.too_sensitive
    assert wide.show(Display()).endswith("Too sensitive: do not use this number; change the "
                                         "geometry.")  # fmt: skip
    open_end = band(haul_error=radians(32))
    assert open_end.most is None and open_end.too_sensitive
    text = open_end.show(Display())
    assert text.startswith("1.53 kN, at least 0 kN, and without an upper limit")
    assert open_end.least == 0.0 < band(haul_error=radians(23.7)).least
    assert text.endswith("Do not use this number; change the geometry.")
    with pytest.raises(DomainError, match="haul_error"):
        band(haul_error=-0.1)
    with pytest.raises(DomainError, match="ground_error"):
        band(ground_error=-0.1)
    with pytest.raises(DomainError, match="steeper than the ground leg"):
        band(ground_depression=A)


def test_half_as_much_again_is_still_a_number() -> None:
    edges = [band(haul_error=radians(d / 10)) for d in range(0, 120)]
    for found in edges:
        assert found.most is not None
        assert found.too_sensitive is (found.most / found.nominal > 1.5)
    assert {found.too_sensitive for found in edges} == {True, False}


# --- cells in a tensioner --------------------------------------------------------------------


def followed(system: Tensioner, move: LastMove, device: float) -> np.ndarray:
    """Every strand from the device on, one sheave at a time."""
    tensions = [device]
    while len(tensions) < 2 * system.lines:
        behind = tensions[-1] * system.efficiency
        tensions.append(behind if move is LastMove.TAKEN_IN else tensions[-1] / system.efficiency)
    return np.array(tensions)


def at_rest(system: Tensioner, rng: np.random.Generator) -> np.ndarray:
    """A random state that friction can hold: neighbours anywhere between e and 1/e apart."""
    limit = -np.log(system.efficiency)
    steps = rng.uniform(-limit, limit, 2 * system.lines - 1)
    steps = np.where(rng.uniform(size=steps.size) < 0.3, np.sign(steps) * limit, steps)
    return np.exp(np.concatenate([[0.0], np.cumsum(steps)])) * rng.uniform(200, 900)


def lines_of(strands: np.ndarray) -> np.ndarray:
    return strands.reshape(-1, 2).sum(axis=1)


def close(found: object, low: float, high: float | None = None) -> None:
    assert found.low == pytest.approx(low, rel=1e-9)  # type: ignore[attr-defined]
    assert found.high == pytest.approx(low if high is None else high, rel=1e-9)  # type: ignore[attr-defined]


@pytest.mark.parametrize("lines", [1, 2, 3, 4])
@pytest.mark.parametrize("move", [LastMove.TAKEN_IN, LastMove.LET_OUT])
def test_after_a_recorded_movement_one_reading_tells_all(lines: int, move: LastMove) -> None:
    system = Tensioner(lines, 0.87)
    strands = followed(system, move, 640.0)
    total = strands.sum()
    for strand in range(1, system.strands + 1):
        reading = strands[strand - 1]
        found = total_from_strand(system, reading=reading, strand=strand, last_move=move)
        close(found.band, total)
        back = strand_reading(system, track_tension=total, strand=strand, last_move=move)
        close(back.band, reading)
        for line in range(1, lines + 1):
            part = line_from_strand(
                system, reading=reading, strand=strand, line=line, last_move=move
            )
            close(part.band, lines_of(strands)[line - 1])
    for line in range(1, lines + 1):
        found = line_reading(system, track_tension=total, line=line, last_move=move)
        close(found.band, lines_of(strands)[line - 1])


@pytest.mark.parametrize("lines", [1, 2, 3])
def test_whatever_friction_holds_lies_in_the_bands_and_reaches_their_ends(lines: int) -> None:
    system = Tensioner(lines, 0.85)
    rng = np.random.default_rng(lines)
    states = [at_rest(system, rng) for _ in range(4000)]
    near = {"rel": 2e-2}

    def compare(found: object, values: np.ndarray) -> None:
        low, high = found.low, found.high  # type: ignore[attr-defined]
        assert values.min() >= low * (1 - 1e-9) and values.max() <= high * (1 + 1e-9)
        if lines < 3:
            assert values.min() == pytest.approx(low, **near)
            assert values.max() == pytest.approx(high, **near)

    for strand in range(1, system.strands + 1):
        scaled = np.array([state / state[strand - 1] for state in states])
        values = {"reading": 1.0, "strand": strand, "last_move": UNKNOWN}
        compare(total_from_strand(system, **values).band, scaled.sum(axis=1))
        for line in range(1, lines + 1):
            chosen = scaled[:, 2 * line - 2 : 2 * line].sum(axis=1)
            compare(line_from_strand(system, line=line, **values).band, chosen)
    shares = np.array([state / state.sum() for state in states])
    for strand in range(1, system.strands + 1):
        found = strand_reading(system, track_tension=1.0, strand=strand, last_move=UNKNOWN)
        compare(found.band, shares[:, strand - 1])
    for line in range(1, lines + 1):
        found = line_reading(system, track_tension=1.0, line=line, last_move=UNKNOWN)
        compare(found.band, shares[:, 2 * line - 2 : 2 * line].sum(axis=1))


@pytest.mark.parametrize("lines", [3, 4])
def test_the_ends_of_the_bands_by_trying_all_extreme_states(lines: int) -> None:
    system = Tensioner(lines, 0.8)
    corners = np.array(np.meshgrid(*[[0.8, 1.25]] * (system.strands - 1))).reshape(
        system.strands - 1, -1
    )
    states = np.concatenate([np.ones((1, corners.shape[1])), np.cumprod(corners, axis=0)])
    for strand in range(1, system.strands + 1):
        total = states.sum(axis=0) / states[strand - 1]
        found = total_from_strand(system, reading=1.0, strand=strand, last_move=UNKNOWN)
        close(found.band, total.min(), total.max())
        share = 1 / total
        found = strand_reading(system, track_tension=1.0, strand=strand, last_move=UNKNOWN)
        close(found.band, share.min(), share.max())
        for line in range(1, lines + 1):
            chosen = states[2 * line - 2 : 2 * line].sum(axis=0) / states[strand - 1]
            found = line_from_strand(
                system, reading=1.0, strand=strand, line=line, last_move=UNKNOWN
            )
            close(found.band, chosen.min(), chosen.max())
    for line in range(1, lines + 1):
        chosen = states[2 * line - 2 : 2 * line].sum(axis=0) / states.sum(axis=0)
        found = line_reading(system, track_tension=1.0, line=line, last_move=UNKNOWN)
        close(found.band, chosen.min(), chosen.max())


def test_handed_over_one_reading_tells_only_a_range() -> None:
    """Three lines, 0.9, 500 N at the device: from all sheaves taking to all of them giving."""
    system = Tensioner(3, 0.9)
    total = {"reading": 500.0, "strand": 1}
    held = total_from_strand(system, last_move="taken in", **total).band
    handed = total_from_strand(system, last_move="handed over", **total).band
    let = total_from_strand(system, last_move="let out", **total).band
    assert (held.low, held.high) == pytest.approx((2343, 2343), abs=0.5)
    assert (handed.low, handed.high) == pytest.approx((2343, 3968), abs=0.5)
    assert let.high == pytest.approx(handed.high)
    for place, number in ((CellPlace.STRAND, 2), (CellPlace.TRACK_LINE, 3)):
        asked = {"haul_tension": 0.0, "track_tension": 2500.0, "number": number}
        one, other = (
            cell_reading(place, system, last_move=move, **asked)
            for move in ("handed over", "not recorded")
        )
        assert one == other and one.width > 100.0


def test_independent_calculation_made_for_this_project() -> None:
    two = Tensioner(2, 0.9)
    far = line_from_strand(two, reading=1.0, strand=1, line=2, last_move="not recorded")
    assert (far.band.low, far.band.high) == pytest.approx((1.54, 2.61), abs=0.005)
    near = line_from_strand(two, reading=1.0, strand=1, line=1, last_move="not recorded")
    close(near.band, 1.9, 1 + 1 / 0.9)
    device = line_from_strand(
        Tensioner(2, 0.85), reading=800.0, strand=1, line=1, last_move="not recorded"
    )
    assert device.band.high == pytest.approx(1740, abs=5)
    three = Tensioner(3, 0.85)
    shown = {
        LastMove.TAKEN_IN: (1200.0, 867.0, 626.4, 2693.4),
        LastMove.LET_OUT: (1411.8, 1954.0, 2704.5, 6070.2),
    }
    for move, expected in shown.items():
        found = [
            line_from_strand(three, reading=648.6, strand=1, line=n, last_move=move).band.low
            for n in (1, 2, 3)
        ]
        found.append(total_from_strand(three, reading=648.6, strand=1, last_move=move).band.low)
        assert found == pytest.approx(expected, rel=2e-4)
    heavy = line_reading(two, track_tension=1533.5, line=1, last_move=LastMove.TAKEN_IN)
    light = line_reading(two, track_tension=1533.5, line=2, last_move=LastMove.TAKEN_IN)
    assert (heavy.band.high, light.band.high) == pytest.approx((850, 690), abs=5)


def test_without_friction_every_line_carries_the_same() -> None:
    system = Tensioner(3, 1.0)
    for move in LastMove:
        close(line_reading(system, track_tension=900.0, line=2, last_move=move).band, 300.0)
        close(strand_reading(system, track_tension=900.0, strand=4, last_move=move).band, 150.0)


def test_arrays_of_readings() -> None:
    readings = np.array([400.0, 650.0, 900.0])
    system = Tensioner(2, 0.9)
    together = line_from_strand(system, reading=readings, strand=2, line=1, last_move=UNKNOWN)
    for i, reading in enumerate(readings):
        one = line_from_strand(system, reading=float(reading), strand=2, line=1, last_move=UNKNOWN)
        close(one.band, together.band.low[i], together.band.high[i])


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"strand": 0}, r"strand is 0; it must be a whole number from 1 to 4 \(strands are"),
        ({"strand": 5}, "strand is 5"),
        ({"strand": 1.0}, r"strand is 1\.0"),
        ({"strand": True}, "strand is True"),
        ({"line": 3}, r"line is 3; it must be a whole number from 1 to 2 \(lines are counted"),
        ({"line": 0}, "line is 0"),
        ({"reading": 0.0}, "The reading of the load cell is 0"),
        ({"last_move": "in"}, "last_move is 'in'; it must be 'taken in', 'handed over', 'let out'"),
    ],
)
def test_refusals(change: dict[str, object], words: str) -> None:
    values = {"reading": 700.0, "strand": 1, "line": 1, "last_move": "taken in"}
    with pytest.raises(DomainError, match=words):
        line_from_strand(Tensioner(2, 0.9), **{**values, **change})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("lines", "efficiency", "words"),
    [
        (0, 0.9, "lines is 0; it must be a whole number of track lines from 1 to 20"),
        (2.0, 0.9, r"lines is 2\.0"),
        (True, 0.9, "lines is True"),
        (2, 0.0, "efficiency"),
        (2, 1.01, "efficiency"),
        (2, np.array([0.8, 0.9]), "efficiency is an array"),
    ],
)
def test_tensioners_that_do_not_exist(lines: int, efficiency: float, words: str) -> None:
    with pytest.raises(DomainError, match=words):
        Tensioner(lines, efficiency)


def test_other_functions_check_their_values_too() -> None:
    system = Tensioner(2, 0.9)
    with pytest.raises(DomainError, match="strand is 5"):
        strand_reading(system, track_tension=1.0, strand=5, last_move="taken in")
    with pytest.raises(DomainError, match="line is 3"):
        line_reading(system, track_tension=1.0, line=3, last_move="taken in")
    for function, extra in ((strand_reading, {"strand": 1}), (line_reading, {"line": 1})):
        with pytest.raises(DomainError, match="track_tension"):
            function(system, track_tension=-1.0, last_move="taken in", **extra)
        with pytest.raises(DomainError, match="last_move"):
            function(system, track_tension=1.0, last_move="", **extra)
    with pytest.raises(DomainError, match="last_move"):
        total_from_strand(system, reading=1.0, strand=1, last_move="maybe")


def test_conclusions_in_words() -> None:
    system = Tensioner(2, 0.9)
    values = {"reading": 700.0, "strand": 1, "line": 2}
    unknown = line_from_strand(system, last_move="not recorded", **values).explain()
    assert "The cell reads 0.700 kN." in unknown.as_text()
    assert "Nobody wrote down which way the rope moved last" in unknown.as_text()
    assert unknown.result == "tension of the far line: 1.07 kN to 1.83 kN"
    assert any("the near line is line 1, next to the device" in a for a in unknown.assumptions)
    taken = line_from_strand(system, last_move="taken in", **values).explain()
    assert (
        "over every sheave, and the hand that took it in still holds it, so strands nearer to "
        "the device carry more. Once the strand is handed over" in taken.as_text()
    )
    assert taken.result == "tension of the far line: 1.08 kN"
    handed = line_from_strand(system, last_move="handed over", **values).explain()
    assert "let a little back, so friction has turned round at some sheaves" in handed.as_text()
    assert handed.result == unknown.result
    let = line_from_strand(system, last_move="let out", **values)
    assert "let out last, over every sheave, so strands nearer to the device carry less." in str(
        let.explain()
    )
    assert let.explain(Display(force="lbf")).result == "tension of the far line: 410 lbf"
    assert "after the strand is handed over" in WRITE_DOWN and "handed over since." in WRITE_DOWN
    assert let.explain().cautions[0] == WRITE_DOWN == let.cautions[0]
    assert let.explain().lines[1].is_law
    total = total_from_strand(system, reading=700.0, strand=1, last_move="taken in")
    assert total.what == "tension of all lines together"
    assert strand_reading(system, track_tension=9.0, strand=3, last_move=UNKNOWN).what == (
        "reading in strand 3"
    )
    expected = line_reading(system, track_tension=900.0, line=2, last_move="taken in").explain()
    assert "All track lines together carry 0.900 kN." in str(expected)
    assert expected.result == "reading in the far line: 0.403 kN"
    middle = line_reading(Tensioner(3, 0.9), track_tension=900.0, line=2, last_move="let out")
    assert middle.what == "reading in line 2"
    assert "cell reads" not in expected.as_text()
    strand = strand_reading(system, track_tension=900.0, strand=1, last_move="taken in").explain()
    assert "All track lines together carry 0.900 kN." in str(strand)


def test_across_a_sheave() -> None:
    values = {"reading": 1000.0, "efficiency": 0.8}
    close(across_sheave(last_move="taken in", **values), 800.0)
    close(across_sheave(last_move="let out", **values), 1250.0)
    for unsure in ("not recorded", "handed over"):
        held = across_sheave(last_move=unsure, **values)
        close(held, 800.0, 1250.0)
    assert held.show(Kind.FORCE, Display()) == "0.800 kN to 1.25 kN"
    many = across_sheave(
        reading=np.array([1.0, 2.0]), efficiency=np.array([0.5, 1.0]), last_move="taken in"
    )
    assert many.low.tolist() == many.high.tolist() == [0.5, 2.0]
    with pytest.raises(DomainError, match="reading"):
        across_sheave(reading=-1.0, efficiency=0.8, last_move="taken in")
    with pytest.raises(DomainError, match="efficiency"):
        across_sheave(reading=1.0, efficiency=1.1, last_move="taken in")


def test_a_cell_behind_a_redirect_reads_a_vector_sum() -> None:
    rng = np.random.default_rng(8)
    for _ in range(50):
        angle, efficiency = rng.uniform(0, 3.1), rng.uniform(0.5, 1.0)
        ahead = rng.uniform(500, 4000)
        first = ahead * np.array([1.0, 0.0])
        second = efficiency * ahead * np.array([np.cos(angle), np.sin(angle)])
        reading = float(np.linalg.norm(first + second))
        found = rope_ahead_of_redirect(reading=reading, strand_angle=angle, efficiency=efficiency)
        assert found == pytest.approx(ahead, rel=1e-9)


def test_published_redirects_turned_round() -> None:
    # angle factors of hoist-block makers: a line pull of 1000 lb loads the block with these
    for degrees, factor in ((0, 2.0), (60, 1.73), (90, 1.41), (120, 1.0), (135, 0.76)):
        found = rope_ahead_of_redirect(
            reading=1000.0 * factor, strand_angle=radians(degrees), efficiency=1.0
        )
        assert found == pytest.approx(1000.0, rel=0.011)
    # calculated independently for this project
    found = rope_ahead_of_redirect(reading=2600.0, strand_angle=radians(70), efficiency=1.0)
    assert found == pytest.approx(1590, abs=5)
    straight = {"reading": 100.0, "strand_angle": np.pi}
    assert rope_ahead_of_redirect(efficiency=0.9, **straight) == pytest.approx(1000.0)
    with pytest.raises(DomainError, match="there is no tension on the side"):
        rope_ahead_of_redirect(efficiency=1.0, **straight)  # nothing pulls on the redirect


def test_cells_at_named_places() -> None:
    system = Tensioner(2, 0.9)
    values = {"haul_tension": 1576.0, "track_tension": 1533.5, "last_move": "taken in"}
    close(cell_reading(CellPlace.HAUL_LINE, system, **values), 1576.0)
    close(cell_reading(CellPlace.HUB, system, **values), 1533.5)
    strands = followed(system, LastMove.TAKEN_IN, 1.0)
    strands *= 1533.5 / strands.sum()
    for number in (1, 2, 3, 4):
        close(cell_reading(CellPlace.STRAND, system, number=number, **values), strands[number - 1])
    for number in (1, 2):
        close(
            cell_reading(CellPlace.TRACK_LINE, system, number=number, **values),
            lines_of(strands)[number - 1],
        )
    for place, words in (
        (CellPlace.HAUL_LINE, "haul tension at the litter"),
        (CellPlace.TRACK_LINE, "that line alone"),
        (CellPlace.HUB, "all lines together"),
        (CellPlace.STRAND, "about half of its line"),
    ):
        assert words in place.sentence
    for place in (CellPlace.STRAND, CellPlace.TRACK_LINE):
        with pytest.raises(DomainError, match="number is missing: a cell in one"):
            cell_reading(place, system, **values)
    for place in (CellPlace.HUB, CellPlace.HAUL_LINE):
        with pytest.raises(DomainError, match="number is 1, but a cell"):
            cell_reading(place, system, number=1, **values)
        with pytest.raises(DomainError, match="last_move"):
            cell_reading(place, system, **{**values, "last_move": "?"})
        with pytest.raises(DomainError, match="haul_tension"):
            cell_reading(place, system, **{**values, "haul_tension": -1.0})


# --- do the cells agree? ---------------------------------------------------------------------


def compared(**changes: float) -> object:
    values = {
        "load": CASE_LOAD,
        "haul_reading": 1620.0,
        "track_reading": 1600.0,
        "haul_elevation": radians(66),
        "ground_depression": radians(35),
        "haul_cell_error": 400.0,
        "track_cell_error": 800.0,
    }
    return compare_readings(**{**values, **changes})


@SETTINGS
@given(st.floats(0.5, 1.5), st.floats(-1.4, 1.4), st.floats(0, 900), st.floats(0, 900))
def test_the_band_of_weights_by_the_corners_of_the_errors(
    up: float, down: float, haul_error: float, track_error: float
) -> None:
    found = compared(
        haul_elevation=up,
        ground_depression=down,
        haul_cell_error=haul_error,
        track_cell_error=track_error,
        haul_reading=6000.0,
    )
    weights = [
        weight_from_readings(
            haul_tension=6000.0 + h * haul_error,
            track_tension=1600.0 + t * track_error,
            haul_elevation=up,
            ground_depression=down,
        )
        for h in (-1, 1)
        for t in (-1, 1)
    ]
    assert (found.band.low, found.band.high) == pytest.approx((min(weights), max(weights)))


def test_agreement_in_words() -> None:
    found = compared()
    assert found.agrees
    text = found.explain().as_text()
    assert "W = (T_h + T_t) * sin(alpha) - T_t * sin(beta)" in text
    assert "The readings go with a weight of 2.02 kN; with the cells' errors, 1.38 kN to" in text
    assert "go with the weight you entered, 1.96 kN. That does not prove it: any weight" in text
    assert "441 lbf" in found.explain(Display(force="lbf")).as_text()
    off = compared(load=2700.0)
    assert not off.agrees and not compared(load=1300.0).agrees
    assert "do not go with the weight you entered, 2.70 kN. Look for a wrong" in str(off.explain())
    assert off.explain().cautions == off.cautions
    exact = compared(haul_cell_error=0.0, track_cell_error=0.0)
    assert exact.band.low == exact.band.high == exact.implied
    assert compared(load=exact.implied, haul_cell_error=0.0, track_cell_error=0.0).agrees


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("load", 0.0),
        ("haul_reading", -1.0),
        ("track_reading", inf),
        ("haul_cell_error", -1.0),
        ("track_cell_error", -1.0),
        ("haul_elevation", 0.0),
    ],
)
def test_comparisons_that_are_refused(name: str, value: float) -> None:
    with pytest.raises(DomainError, match=name):
        compared(**{name: value})


def test_the_case_of_the_course_agrees_with_itself() -> None:
    held = hold(Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0)
    found = compared(
        haul_reading=held.haul_tension,
        track_reading=held.line_tension,
        haul_elevation=held.haul_elevation,
        ground_depression=held.ground_depression,
    )
    assert found.implied == pytest.approx(CASE_LOAD, rel=1e-9)


def test_ranges_are_told_with_their_ends_rounded_outwards() -> None:
    """What may be there must lie inside the range that is told."""
    system, told = Tensioner(3, 0.9), Display()
    for reading in (431.0, 513.0, 777.0):
        found = total_from_strand(system, reading=reading, strand=2, last_move="handed over")
        low = told.show(found.band.low, Kind.FORCE, rounding=Rounding.DOWN)
        high = told.show(found.band.high, Kind.FORCE, rounding=Rounding.UP)
        assert f"{low} to {high}" in found.explain(told).result
        angles = {"haul_elevation": A, "ground_depression": B}
        agreed = compare_readings(
            load=2000.0, haul_reading=reading, track_reading=900.0, haul_cell_error=33.3,
            track_cell_error=22.2, **angles,
        )  # fmt: skip
        low = told.show(agreed.band.low, Kind.FORCE, rounding=Rounding.DOWN)
        high = told.show(agreed.band.high, Kind.FORCE, rounding=Rounding.UP)
        assert f"{low} to {high}" in str(agreed.explain(told))


@pytest.mark.parametrize(("up", "down"), [(56, 37), (66, 35), (75, 10)])
def test_an_error_of_the_angle_by_a_small_step(up: int, down: int) -> None:
    def tension(angle: float) -> float:
        legs = np.array(
            [
                [-np.cos(angle), np.sin(angle)],
                [np.cos(radians(down)), -np.sin(radians(down))],
            ]
        ).T
        return float(np.linalg.solve(legs, [0.0, CASE_LOAD])[1])  # a tag line pulls alike

    at, step = radians(up), 1e-6
    per_radian = (tension(at - step) - tension(at + step)) / (2 * step) / tension(at)
    found = error_from_angle(
        haul_elevation=at, ground_depression=radians(down), angle_error=radians(2)
    )
    assert found == pytest.approx(per_radian * radians(2), rel=1e-6)


@pytest.mark.parametrize("efficiency", [0.7, 0.85, 0.92, 1.0])
def test_the_most_that_a_strand_allows_for_its_line(efficiency: float) -> None:
    system = Tensioner(lines=3, efficiency=efficiency)
    found = line_let_out(reading=800.0, efficiency=efficiency)
    band = line_from_strand(system, strand=1, reading=800.0, line=1, last_move="not recorded").band
    assert found == pytest.approx(band.high)
    assert efficiency * (found - 800.0) == pytest.approx(800.0)


def test_an_error_has_no_sign() -> None:
    asked = {"haul_elevation": 1.1, "ground_depression": 0.5}
    assert error_from_angle(**asked, angle_error=0.0) == 0.0
    with pytest.raises(DomainError, match="The error of the haul elevation is −"):
        error_from_angle(**asked, angle_error=-0.01)
