"""Slip against coordinates, virtual work, energy on the arc and a litter that settles by itself."""

from dataclasses import dataclass
from math import radians

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.holding import Method, Point, Reach, Rig, hold
from ropecalc.mechanics.slip import (
    Arc,
    Slipped,
    line_length,
    outward_balance,
    slip_along_arc,
    slip_inward,
    slip_to_reach,
    slipped,
)
from ropecalc.mechanics.stretch import BOTH_BOUNDS, ELASTIC
from ropecalc.units import STANDARD_GRAVITY, Display
from tests.mechanics.cases import CASE, CASE_LOAD, distance, pulls, solve_balance
from tests.mechanics.settling import Rope, settle

SETTINGS = settings(derandomize=True, deadline=None, max_examples=40)
HELD_BY_A_LINE = [Method.TAG, Method.TRACK]
A, B = radians(66.251), radians(35.248)


@dataclass(frozen=True)
class Held:
    method: Method
    rig: Rig
    load: float
    x: float
    z: float


@st.composite
def held_litters(draw: st.DrawFn) -> Held:
    number = lambda low, high: draw(st.floats(low, high))  # noqa: E731
    top = Point(number(0, 1), number(15, 45))
    track = top
    if draw(st.booleans()):
        track = Point(top.x + number(0, 0.5), top.z + number(0, 2))
    hub = Point(number(15, 70), number(-4, 5))
    z = number(5.5, 0.9 * top.z)
    limit = (hub.x - top.x) * (top.z - z) / (top.z - hub.z)
    x = top.x + number(0.1, 0.8) * limit
    held = Held(draw(st.sampled_from(HELD_BY_A_LINE)), rig := Rig(top, track, hub),
                number(800, 3000), x, z)  # fmt: skip
    assume(hold(held.method, rig, held.load, x, z).reach is Reach.HELD)
    return held


def rope_to(held: Held, x: float, z: float) -> float:
    """Length of the holding line by Pythagoras alone."""
    ground = distance(x, z, held.rig.hub)
    if held.method is Method.TRACK:
        ground += distance(x, z, held.rig.track_directional)
    return float(ground)


def ends(held: Held) -> tuple[Point, ...]:
    hub = held.rig.hub
    return (hub,) if held.method is Method.TAG else (held.rig.track_directional, hub)


# --- small slips -----------------------------------------------------------------------------


def test_independent_calculation_made_for_this_project() -> None:
    assert slip_along_arc(slip=1.0, haul_elevation=A, ground_depression=B) == pytest.approx(
        1.941, abs=5e-4
    )
    moved = slip_along_arc(slip=0.2, haul_elevation=radians(58), ground_depression=radians(36))
    assert moved == pytest.approx(0.534, abs=5e-4)


@SETTINGS
@given(held_litters())
def test_a_very_small_slip_is_the_formula(held: Held) -> None:
    assume(held.method is Method.TAG or held.rig.track_directional == held.rig.haul_directional)
    at = hold(held.method, held.rig, held.load, held.x, held.z)
    angles = {"haul_elevation": at.haul_elevation, "ground_depression": at.ground_depression}
    slip = 1e-6
    exact = slipped(held.method, held.rig, held.load, held.x, held.z, slip=slip, stiffness=5e4)
    assert exact.rigid.along_arc == pytest.approx(slip_along_arc(slip=slip, **angles), rel=1e-3)
    assert exact.rigid.inward == pytest.approx(slip_inward(slip=slip, **angles), rel=1e-3)


@SETTINGS
@given(held_litters())
def test_virtual_work(held: Held) -> None:
    """What the line gives out times its tension is the weight times the height lost."""
    slip = 1e-6
    after = slipped(held.method, held.rig, held.load, held.x, held.z, slip=slip, stiffness=5e4)
    lost = held.z - after.rigid.z
    assert after.before.line_tension * slip == pytest.approx(held.load * lost, rel=1e-3)


@pytest.mark.parametrize("derivation", [slip_along_arc, slip_inward])
def test_on_the_straight_line_any_slip_is_refused(derivation: object) -> None:
    with pytest.raises(DomainError, match="steeper than the ground leg"):
        derivation(slip=0.1, haul_elevation=0.6, ground_depression=0.6)  # type: ignore[operator]
    with pytest.raises(DomainError, match="slip"):
        derivation(slip=-0.1, haul_elevation=0.9, ground_depression=0.6)  # type: ignore[operator]


def test_square_legs_pass_the_slip_on_as_it_is() -> None:
    level = {"haul_elevation": radians(60), "ground_depression": radians(-30)}
    assert slip_along_arc(slip=0.3, **level) == pytest.approx(0.3)
    assert slip_inward(slip=0.3, **level) == pytest.approx(0.3 * np.sqrt(3) / 2)
    assert slip_along_arc(slip=0.0, **level) == 0.0


# --- places ----------------------------------------------------------------------------------


def test_places_calculated_independently_for_this_project() -> None:
    found = slipped(Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0, slip=0.2, stiffness=50e3)
    assert found.rigid.inward == pytest.approx(0.34, abs=0.005)
    assert found.rigid.along_arc == pytest.approx(0.37, abs=0.005)
    assert found.room == pytest.approx(1.56, abs=0.005)
    to_tip = slip_to_reach(Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0, inward=0.8)
    assert to_tip == pytest.approx(0.50, abs=0.005)
    everything = slip_to_reach(Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0, inward=2.2)
    assert everything == pytest.approx(1.56, abs=0.005)
    assert everything == pytest.approx(found.room, abs=1e-12)


@SETTINGS
@given(held_litters(), st.floats(0.01, 1.0))
def test_rigid_places_keep_the_haul_line_and_lengthen_the_other(held: Held, share: float) -> None:
    arc = Arc.from_place(held.method, held.rig, held.load, held.x, held.z)
    slip = share * arc.room
    after = slipped(held.method, held.rig, held.load, held.x, held.z, slip=slip, stiffness=5e4)
    top = held.rig.haul_directional
    kept = distance(after.rigid.x, after.rigid.z, top)
    assert kept == pytest.approx(distance(held.x, held.z, top), rel=1e-12)
    grown = rope_to(held, after.rigid.x, after.rigid.z) - rope_to(held, held.x, held.z)
    assert grown == pytest.approx(slip, abs=1e-9)
    assert after.rigid.inward == pytest.approx(held.x - after.rigid.x, abs=1e-12)
    assert after.rigid.z < held.z and after.rigid.x <= held.x
    if share < 0.99:
        haul, line = solve_balance(held.method, held.rig, held.load, after.rigid.x, after.rigid.z)
        assert after.rigid.haul_tension == pytest.approx(float(haul), rel=1e-8)
        assert after.rigid.line_tension == pytest.approx(float(line), rel=1e-8)


def test_too_much_slip_leaves_the_litter_plumb() -> None:
    for method in HELD_BY_A_LINE:
        room = Arc.from_place(method, CASE, CASE_LOAD, 2.5, 27.0).room
        for slip in (room, room + 0.5):
            after = slipped(method, CASE, CASE_LOAD, 2.5, 27.0, slip=slip, stiffness=5e4).rigid
            assert after.x == CASE.haul_directional.x
            assert after.line_tension == 0.0
            assert after.haul_tension == pytest.approx(CASE_LOAD)
            assert after.inward == pytest.approx(2.2)
        loose = slipped(method, CASE, CASE_LOAD, 2.5, 27.0, slip=room + 5.0, stiffness=5e4)
        assert loose.elastic.x == CASE.haul_directional.x
        assert loose.elastic.line_tension == 0.0


@SETTINGS
@given(held_litters(), st.floats(0.0, 0.9), st.floats(4.3, 6.0))
def test_elastic_places_have_the_least_energy_on_the_arc(
    held: Held, share: float, stiff: float
) -> None:
    """No force and no balance: the lowest energy of weight and stretched line on the arc."""
    arc = Arc.from_place(held.method, held.rig, held.load, held.x, held.z)
    stiffness, slip = 10**stiff, share * arc.room
    after = slipped(
        held.method, held.rig, held.load, held.x, held.z, slip=slip, stiffness=stiffness
    )
    measured = rope_to(held, held.x, held.z)
    tension = solve_balance(held.method, held.rig, held.load, held.x, held.z)[1]
    loose = measured / (1 + float(tension) / stiffness) + slip
    top = held.rig.haul_directional
    radius = distance(held.x, held.z, top)

    def energy(angle: float) -> float:
        x, z = top.x + radius * np.sin(angle), top.z - radius * np.cos(angle)
        stretch = max(0.0, rope_to(held, x, z) - loose)
        return float(held.load * (z - held.z) + 0.5 * stiffness / loose * stretch**2)

    found = minimize_scalar(energy, bounds=(0, 1.5), method="bounded", options={"xatol": 1e-10})
    assert after.elastic.x == pytest.approx(top.x + radius * np.sin(found.x), abs=2e-4 * radius)
    assert energy(np.arcsin((after.elastic.x - top.x) / radius)) <= found.fun + 1e-7 * held.load


@pytest.mark.parametrize("method", HELD_BY_A_LINE)
@pytest.mark.parametrize("slip", [0.1, 0.4])
def test_a_litter_that_settles_by_itself(method: Method, slip: float) -> None:
    after = slipped(method, CASE, CASE_LOAD, 2.5, 27.0, slip=slip, stiffness=50e3)
    held = Held(method, CASE, CASE_LOAD, 2.5, 27.0)
    top = CASE.haul_directional
    haul_stiffness = 1e5  # its length is chosen so that it keeps the haul leg as it is
    leg = distance(2.5, 27.0, top) / (1 + after.elastic.haul_tension / haul_stiffness)
    loose = rope_to(held, 2.5, 27.0) / (1 + after.before.line_tension / 50e3) + slip
    ropes = (Rope((top,), leg, haul_stiffness), Rope(ends(held), loose, 50e3))
    rest = settle(CASE_LOAD, ropes, (2.0, 26.0))
    assert (after.elastic.x, after.elastic.z) == pytest.approx((rest.x, rest.z), abs=1e-4)
    assert after.elastic.line_tension == pytest.approx(rest.tensions[1], rel=1e-3)


@SETTINGS
@given(held_litters(), st.floats(0.01, 0.8))
def test_stiff_lines_end_at_the_rigid_place_and_soft_ones_move_less(
    held: Held, share: float
) -> None:
    slip = share * Arc.from_place(held.method, held.rig, held.load, held.x, held.z).room
    moved = [
        slipped(held.method, held.rig, held.load, held.x, held.z, slip=slip, stiffness=stiffness)
        for stiffness in (2e4, 2e5, 1e11)
    ]
    inward = [after.elastic.inward for after in moved]
    rest, before = moved[2].rigid, moved[2].before
    shorter = rope_to(held, held.x, held.z) * (before.line_tension - rest.line_tension)
    if shorter > 1.5 * slip * rest.line_tension:  # the line gives back more than the slip stretches
        assert inward[0] < inward[1] < inward[2]
        tensions = [after.elastic.line_tension for after in moved]
        assert tensions[0] > tensions[1] > tensions[2]
    assert inward[2] == pytest.approx(moved[2].rigid.inward, abs=1e-5)
    for after in moved:
        assert after.inward == max(after.rigid.inward, after.turn.inward)  # the further of the two
        assert after.turn.inward > after.elastic.inward
    assert "swing further" in slip_inward.cautions[0]


@SETTINGS
@given(held_litters(), st.floats(0.0, 4.0), st.floats(4.3, 6.0))
def test_a_sudden_slip_swings_in_until_the_energy_is_what_it_was(
    held: Held, share: float, stiff: float
) -> None:
    """Weight's and stretched line's energy, added up from places and lengths alone."""
    arc = Arc.from_place(held.method, held.rig, held.load, held.x, held.z)
    stiffness, slip = 10**stiff, share * arc.room
    after = slipped(
        held.method, held.rig, held.load, held.x, held.z, slip=slip, stiffness=stiffness
    )
    measured = rope_to(held, held.x, held.z)
    tension = solve_balance(held.method, held.rig, held.load, held.x, held.z)[1]
    loose = measured / (1 + float(tension) / stiffness) + slip

    def stretched(x: float, z: float) -> float:
        return max(0.0, rope_to(held, x, z) - loose)

    def energy(x: float, z: float) -> float:
        return float(held.load * z + 0.5 * stiffness / loose * stretched(x, z) ** 2)

    turn, top = after.turn, held.rig.haul_directional
    radius = distance(held.x, held.z, top)
    assert distance(turn.x, turn.z, top) == pytest.approx(radius, rel=1e-9)
    assert energy(turn.x, turn.z) == pytest.approx(
        energy(held.x, held.z), rel=1e-9, abs=1e-6 * held.load
    )
    between = np.linspace(np.arcsin((turn.x - top.x) / radius), arc.start, 20)[1:-1]
    for x, z in zip(
        top.x + radius * np.sin(between), top.z - radius * np.cos(between), strict=True
    ):
        assert energy(x, z) <= energy(held.x, held.z) + 1e-6 * held.load  # it gets that far
    assert turn.inward == pytest.approx(held.x - turn.x, abs=1e-12)
    assert turn.line_tension == pytest.approx(
        stiffness * stretched(turn.x, turn.z) / loose, rel=1e-6, abs=1e-3
    )


def test_no_slip_no_movement() -> None:
    after = slipped(Method.TAG, CASE, CASE_LOAD, 2.5, 27.0, slip=0.0, stiffness=5e4)
    for rest in (after.before, after.rigid, after.elastic):
        assert (rest.x, rest.z, rest.along_arc, rest.inward) == (2.5, 27.0, 0.0, 0.0)
        assert rest.line_tension == pytest.approx(1533.5, abs=0.1)
        assert all(type(v) is float for v in vars(rest).values())
    assert (after.turn.x, after.turn.inward) == pytest.approx((2.5, 0.0), abs=1e-6)
    assert all(type(v) is float for v in vars(after.turn).values())


def test_arrays_of_slips_are_the_single_ones() -> None:
    slips = np.array([[0.0, 0.2, 0.7], [1.2, 1.5, 2.0]])
    together = slipped(Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0, slip=slips, stiffness=5e4)
    assert together.rigid.x.shape == together.elastic.line_tension.shape == slips.shape
    for index, slip in np.ndenumerate(slips):
        one = slipped(Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0, slip=float(slip), stiffness=5e4)
        for bound in ("rigid", "elastic", "turn"):
            for name, value in vars(getattr(one, bound)).items():
                column = getattr(getattr(together, bound), name)
                assert column[index] == pytest.approx(value, abs=1e-9), (bound, name)
    wanted = np.array([0.1, 0.8, 2.0])
    slack = slip_to_reach(Method.TAG, CASE, CASE_LOAD, 2.5, 27.0, inward=wanted)
    back = slipped(Method.TAG, CASE, CASE_LOAD, 2.5, 27.0, slip=slack, stiffness=5e4)
    np.testing.assert_allclose(back.rigid.inward, wanted, atol=1e-9)
    single = slip_to_reach(Method.TAG, CASE, CASE_LOAD, 2.5, 27.0, inward=0.8)
    assert type(single) is float and single == pytest.approx(slack[1])


def test_outward_balance_is_the_part_of_the_forces_along_the_arc() -> None:
    rng = np.random.default_rng(4)
    x, z = rng.uniform(0.5, 9, 30), rng.uniform(1, 30, 30)
    tension = rng.uniform(0, 3000, 30)
    for method in HELD_BY_A_LINE:
        haul, pull = pulls(method, CASE, x, z)
        square = np.stack([haul[:, 1], -haul[:, 0]], axis=-1)  # quarter turn, outward
        forces = tension[:, None] * pull + np.array([0.0, -CASE_LOAD])
        expected = (forces * square).sum(axis=-1)
        np.testing.assert_allclose(
            outward_balance(method, CASE, CASE_LOAD, x, z, tension), expected, rtol=1e-9, atol=1e-6
        )
        held = Held(method, CASE, CASE_LOAD, 3.0, 20.0)
        assert line_length(method, CASE, 3.0, 20.0) == pytest.approx(rope_to(held, 3.0, 20.0))


# --- refusals and words ----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"method": Method.ATTENDANT}, "attendant, who holds no line"),
        ({"x": 9.0}, "straight line from directional to hub"),
        ({"x": 0.3}, "straight below the haul directional"),
        ({"z": 33.0}, "at or above a directional"),
        ({"x": np.array([2.5, 3.0])}, "give one place"),
        ({"slip": -0.1}, "slips out .* must be at least"),
        ({"stiffness": 0.0}, "stiffness of the rope.* must be more than"),
        ({"slip": "much"}, "slip is 'much'"),
    ],
)
def test_refusals(change: dict[str, object], words: str) -> None:
    values = {
        "method": Method.TRACK, "rig": CASE, "load": CASE_LOAD, "x": 2.5, "z": 27.0,
        "slip": 0.2, "stiffness": 5e4,
    }  # fmt: skip
    with pytest.raises(DomainError, match=words):
        slipped(**{**values, **change})  # type: ignore[arg-type]


def test_reaching_past_plumb_is_refused() -> None:
    place = (Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0)
    assert slip_to_reach(*place, inward=0.0) == 0.0
    with pytest.raises(DomainError, match=r"The litter is 2\.20 m off plumb, and slack"):
        slip_to_reach(*place, inward=2.21)
    with pytest.raises(DomainError) as refusal:
        slip_to_reach(*place, inward=2.21)
    assert "7.22 ft off plumb" in refusal.value.in_units(Display(length="ft"))
    with pytest.raises(DomainError, match="keyword is inward"):
        slip_to_reach(*place, inward=-0.1)


def said(found: Slipped, display: Display | None = None) -> str:
    return found.explain(display).as_text()


def test_it_tells_both_bounds_in_words() -> None:
    found = slipped(Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0, slip=0.2, stiffness=50e3)
    text = said(found)
    assert "The track line carries 1.53 kN; 0.200 m of it slips out." in text
    assert "nothing stretches it moves 0.366 m along the arc, 0.340 m of it towards" in text
    assert "the line stretches it moves 0.126 m along the arc, 0.116 m of it towards" in text
    assert "can let a sudden swing go further: by a twentieth if" in text
    assert "A slip of 1.55 m would lose the whole distance out." in text
    assert "slips at once the litter swings in up to 0.232 m towards the wall before" in text
    assert text.endswith("movement towards the wall: allow 0.340 m")
    sudden = slipped(Method.TRACK, CASE, CASE_LOAD, 2.5, 27.0, slip=0.2, stiffness=2e5)
    assert "swings in up to 0.454 m towards" in said(sudden)  # it is 0.4532 m
    assert said(sudden).endswith("movement towards the wall: allow 0.454 m")
    assert said(found, Display(length="ft")).endswith("allow 1.12 ft")  # it is 1.115 ft
    assert "345 lbf; 0.656 ft" in said(found, Display(force="lbf", length="ft"))
    explanation = found.explain()
    assert explanation.cautions == found.cautions
    assert found.cautions[:2] == (ELASTIC, BOTH_BOUNDS)
    assert cautions.STRETCHING in found.cautions and cautions.STATIC not in found.cautions
    assert cautions.AUTHORITY in found.cautions and any("jerk" in c for c in found.cautions)
    assert [line.is_law for line in explanation.lines] == [False, True, False, False, False, False]


def test_a_method_by_its_words_slips_like_itself() -> None:
    place = (CASE, CASE_LOAD, 2.5, 27.0)
    by_words = slipped("tag line", *place, slip=0.1, stiffness=5e4)
    assert by_words == slipped(Method.TAG, *place, slip=0.1, stiffness=5e4)
    assert by_words.explain() == slipped(Method.TAG, *place, slip=0.1, stiffness=5e4).explain()
    assert line_length("tag line", CASE, 2.5, 27.0) == line_length(Method.TAG, CASE, 2.5, 27.0)
    with pytest.raises(DomainError, match="must be attendant, tag line or track line"):
        slipped("rope", *place, slip=0.1, stiffness=5e4)


def thrown(found: Slipped, rig: Rig, load: float, x: float, z: float, haul: float) -> float:
    """How far towards the wall the litter comes before it turns, by Newton and Hooke in the plane.

    All ropes stretch; ``haul`` N is the stiffness of the haul line, for which ``found`` has none.
    """
    top, here = np.array([rig.haul_directional.x, rig.haul_directional.z]), np.array([x, z])
    ends = [np.array([rig.hub.x, rig.hub.z])]
    if found.method is Method.TRACK:
        ends.append(np.array([rig.track_directional.x, rig.track_directional.z]))
    whole = sum(np.linalg.norm(end - here) for end in ends)
    loose = whole / (1 + found.before.line_tension / found.stiffness) + found.slip
    leg = np.linalg.norm(top - here) / (1 + found.before.haul_tension / haul)

    def motion(_t: float, state: np.ndarray) -> list[float]:
        legs = [end - state[:2] for end in ends]
        longs = [np.hypot(*one) for one in legs]
        tension = max(0.0, found.stiffness * (sum(longs) - loose) / loose)
        up = top - state[:2]
        long = np.hypot(*up)
        force = max(0.0, haul * (long - leg) / leg) * up / long - np.array([0.0, load])
        force = force + tension * sum(one / size for one, size in zip(legs, longs, strict=True))
        return [*state[2:], *(force * STANDARD_GRAVITY / load)]

    def turns(t: float, state: np.ndarray) -> float:
        return float(state[2]) if t > 0.02 else -1.0

    turns.terminal, turns.direction = True, 1  # type: ignore[attr-defined]
    path = solve_ivp(motion, (0, 12), [*here, 0, 0], events=turns, max_step=0.02, rtol=1e-6,
                     atol=1e-8)  # fmt: skip
    return float(x - path.y[0].min())


def spring_ratio(found: Slipped, rig: Rig, x: float, z: float, haul: float) -> float:
    """Force for a metre of the haul leg over that for a metre of the holding line."""
    leg = np.hypot(x - rig.haul_directional.x, z - rig.haul_directional.z)
    return float(haul / leg / (found.stiffness / line_length(found.method, rig, x, z)))


def test_a_haul_line_that_stretches_throws_a_twentieth_further_at_most_while_it_is_stiff() -> None:
    rng = np.random.default_rng(20)
    tried, further = 0, []
    while tried < 40:
        top = Point(0.3, rng.uniform(12, 60))
        rig = Rig(top, top, Point(rng.uniform(15, 80), rng.uniform(-5, 0.5 * top.z)))
        x, z = rng.uniform(0.8, 4.3), top.z - rng.uniform(2, 0.7 * top.z)
        method = Method.TRACK if tried % 3 else Method.TAG
        values = {"stiffness": 10 ** rng.uniform(4.2, 5.9), "slip": rng.uniform(0.05, 0.8)}
        try:
            found = slipped(method, rig, 2000.0, x, z, **values)
        except DomainError:
            continue
        leg = np.hypot(x - top.x, z - top.z)
        stiffness = values["stiffness"] / line_length(method, rig, x, z)
        haul = stiffness * leg * rng.uniform(3, 8)
        assert spring_ratio(found, rig, x, z, haul) >= 3 - 1e-9
        tried += 1
        further.append(thrown(found, rig, 2000.0, x, z, haul) / found.inward)
    assert max(further) <= 1.05
    assert max(further) > 1.0  # so it is not a bound by itself


def test_the_worst_rigs_that_were_found_throw_it_half_as_far_again() -> None:
    """Very stiff lines to the hub and a soft haul line, far down: looked for by trial."""
    worst = 0.0
    for top_z, hub, place, stiffness, strain, slack in (
        (10.044837, (16.968022, 8.315163), (3.967238, 6.240485), 587714.0, 0.00519269, 0.216599),
        (11.344899, (18.292427, 9.706641), (4.213769, 3.721787), 884147.0, 0.00659507, 0.716036),
    ):
        rig = Rig(Point(0.3, top_z), Point(0.3, top_z), Point(*hub))
        found = slipped(Method.TRACK, rig, 2000.0, *place, slip=slack, stiffness=stiffness)
        haul = found.before.haul_tension / strain
        assert spring_ratio(found, rig, *place, haul) < 3
        worst = max(worst, thrown(found, rig, 2000.0, *place, haul) / found.inward)
    assert 1.5 < worst <= 1.6
