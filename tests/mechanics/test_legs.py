"""Legs from places and lengths, against published values, balances, energy and finite elements."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from Pynite import FEModel3D
from scipy.optimize import minimize

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics import anchors
from ropecalc.mechanics.legs import (
    bridle,
    redundant_legs,
    three_legs,
    three_legs_at,
    three_legs_of_lengths,
)
from ropecalc.units import Display, Kind
from tests.mechanics.settling import Rope, settle

DOWN = np.array([0.0, 0.0, -2000.0])
often = settings(derandomize=True, deadline=None, max_examples=40)
BALLOON = [(-20.0, 0.0, 0.0), (30.0, -20.0, 0.0), (0.0, 20.0, 0.0)]


def finite_elements(knot, ends, pull):
    """Axial tensions of bars hinged at both ends, by the finite-element package PyNite.

    A maintained open package for 3-D frames that structural engineers use; it assembles member
    stiffness, and knows nothing of cables. Statically determined bars do not depend on stiffness.
    """
    model = FEModel3D()
    model.add_material("bar", 1e9, 4e8, 0.3, 0.0)
    model.add_section("bar", 1e-4, 1e-9, 1e-9, 1e-9)
    model.add_node("knot", *map(float, knot))
    model.def_support("knot", False, False, False, True, True, True)
    for i, end in enumerate(ends):
        model.add_node(f"end{i}", *map(float, end))
        model.def_support(f"end{i}", True, True, True, True, True, True)
        model.add_member(f"bar{i}", f"end{i}", "knot", "bar", "bar")
        loose = (False, False, False, False, True, True)
        model.def_releases(f"bar{i}", *loose, *loose)
    for axis, force in zip(("FX", "FY", "FZ"), pull, strict=True):
        model.add_node_load("knot", axis, float(force))
    model.analyze(check_statics=False)
    return [-float(model.members[f"bar{i}"].max_axial()) for i in range(len(ends))]


def around(rng):
    """Three anchors on all sides above the knot at the origin, and a pull between them."""
    turn = rng.uniform(0, 2 * math.pi) + np.array([0.0, 2.1, 4.2]) + rng.uniform(-0.3, 0.3, 3)
    far = rng.uniform(0.5, 3.0, 3)
    places = np.stack([far * np.cos(turn), far * np.sin(turn), rng.uniform(1.0, 4.0, 3)], axis=1)
    units = places / np.linalg.norm(places, axis=1, keepdims=True)
    return places, -rng.uniform(100, 3000, 3) @ units


# --- three legs in space ----------------------------------------------------------------------


def test_a_balloon_on_three_cables() -> None:
    # Baker & Haynes, Engineering Statics, section 3.5, example "Balloon": 900 lb up at 30 ft;
    # anchors (-20,0,0), (30,0,20), (0,0,-20) with y up there; 464, 402, 309 lb
    found = three_legs_at((0, 0, 30), BALLOON, (0, 0, 900))
    assert found.tensions == pytest.approx([464, 402, 309], abs=0.5)
    assert found.knot.tolist() == [0, 0, 30]
    lengths = np.linalg.norm(np.array(BALLOON) - [0, 0, 30], axis=1)
    again = three_legs_of_lengths(BALLOON, lengths, (0, 0, 900))
    assert again.knot == pytest.approx([0, 0, 30], abs=1e-9)
    assert again.tensions == pytest.approx(found.tensions)


def test_finite_elements_agree() -> None:
    rng = np.random.default_rng(71)
    for _ in range(8):
        places, pull = around(rng)
        expected = finite_elements((0, 0, 0), places, pull)
        assert three_legs_at((0, 0, 0), places, pull).tensions == pytest.approx(expected, rel=1e-5)


@often
@given(st.integers(0, 10**6))
def test_three_legs_balance_any_pull_between_them(seed: int) -> None:
    places, pull = around(np.random.default_rng(seed))
    found = three_legs(places, pull)
    total = found.tensions @ found.directions + pull
    np.testing.assert_allclose(total, 0.0, atol=1e-9 * np.linalg.norm(pull))
    lengths = np.linalg.norm(places, axis=1)
    again = three_legs_of_lengths(places, lengths, pull)
    np.testing.assert_allclose(again.knot, 0.0, atol=1e-7)
    np.testing.assert_allclose(again.tensions, found.tensions, rtol=1e-6, atol=1e-6)


def test_many_cases_at_once() -> None:
    rng = np.random.default_rng(72)
    cases = [around(rng) for _ in range(20)]
    places, pulls = (np.array(part) for part in zip(*cases, strict=True))
    together = three_legs(places, pulls)
    assert together.tensions.shape == (20, 3)
    for i, (place, pull) in enumerate(cases):
        assert three_legs(place, pull).tensions == pytest.approx(together.tensions[i], rel=1e-12)
    assert together.pull.shape == (20, 3)


def test_three_even_legs_are_a_special_case() -> None:
    turn = np.array([0.0, 2.0, 4.0]) * math.pi / 3
    for phi in (0.1, 0.7, 1.3):
        units = np.stack(
            [np.sin(phi) * np.cos(turn), np.sin(phi) * np.sin(turn), np.full(3, np.cos(phi))], 1
        )
        each = anchors.three_leg_anchor(load=2000.0, leg_plumb_angle=phi)
        assert three_legs(units, DOWN).tensions == pytest.approx([each] * 3)


def test_what_statics_cannot_share_is_refused() -> None:
    flat = [(-1, 0, 1), (0, 0, 1), (1, 0, 1)]
    with pytest.raises(DomainError, match=r"lie in one plane, or nearly.*ask for the range"):
        three_legs(flat, DOWN)
    nearly = [(-1, 0, 1), (0, 1e-4, 1), (1, 0, 1)]
    with pytest.raises(DomainError, match="one plane"):
        three_legs(nearly, DOWN)
    assert three_legs([(-1, 0, 1), (0, 0.01, 1), (1, 0, 1)], DOWN).tensions[1] == pytest.approx(0)


@pytest.mark.parametrize("which", [0, 1, 2])
def test_a_leg_that_would_push_is_named(which: int) -> None:
    places, _ = around(np.random.default_rng(73))
    units = places / np.linalg.norm(places, axis=1, keepdims=True)
    tensions = np.full(3, 900.0)
    tensions[which] = -1.0
    with pytest.raises(DomainError, match=f"Leg {which + 1} would have to push"):
        three_legs(places, -tensions @ units)


def test_a_pull_along_one_leg_leaves_the_others_nothing() -> None:
    places, _ = around(np.random.default_rng(74))
    found = three_legs(places, -1000 * places[1] / np.linalg.norm(places[1]))
    assert found.tensions == pytest.approx([0, 1000, 0], abs=1e-9)
    assert (found.tensions >= 0).all()


@pytest.mark.parametrize(
    ("directions", "pull", "words"),
    [
        ([(0, 0, 1)] * 2, DOWN, "three rows"),
        ([(0, 1), (1, 0), (1, 1)], DOWN, "three finite numbers"),
        ([(0, 0, 1), (1, 0, 1), (0, 0, 0)], DOWN, "no length"),
        (BALLOON, (0, 0), "pull must be three finite numbers"),
        (BALLOON, (0, 0, math.nan), "pull must be three finite numbers"),
        ([(1, 0, 1), (-1, 1, 1), (-1, -1, 1)], (0, 0, 0), "pull has no size"),
    ],
)
def test_what_is_no_set_of_legs_is_refused(directions, pull, words) -> None:
    with pytest.raises(DomainError, match=words):
        three_legs(directions, pull)


def test_lengths_that_do_not_meet_are_refused() -> None:
    with pytest.raises(DomainError, match="do not meet"):
        three_legs_of_lengths(BALLOON, [5.0, 5.0, 5.0], (0, 0, 900))
    with pytest.raises(DomainError, match="in one line"):
        three_legs_of_lengths([(0, 0, 0), (1, 0, 0), (2, 0, 0)], [3, 3, 3], DOWN)
    with pytest.raises(DomainError, match="more than 0 m"):
        three_legs_of_lengths(BALLOON, [0.0, 5.0, 5.0], (0, 0, 900))
    with pytest.raises(DomainError, match="three anchors"):
        three_legs_of_lengths(BALLOON, [30.0, 30.0], (0, 0, 900))
    with pytest.raises(DomainError, match="3 rows"):
        three_legs_at((0, 0, 0), BALLOON[:2], DOWN)


def test_the_knot_hangs_on_the_side_of_the_pull() -> None:
    lengths = [36.0, 41.0, 36.0]
    above = three_legs_of_lengths(BALLOON, lengths, (0, 0, 900))
    below = three_legs_of_lengths(BALLOON, lengths, (0, 0, -900))
    assert above.knot[2] > 0 and below.knot == pytest.approx(above.knot * [1, 1, -1])
    assert below.tensions == pytest.approx(above.tensions)


def test_three_legs_are_told_in_words() -> None:
    told = three_legs_at((0, 0, 30), BALLOON, (0, 0, 900)).explain(Display(force="N"))
    text = told.as_text()
    assert told.lines[0].is_law and "three equations" in told.lines[0].sentence.lower()
    assert "Leg 1 points −0.555 out, +0.000 along, −0.832 up" in text
    assert "carries 464 N (52% of the pull)" in text
    assert told.result == "most loaded: leg 1 with 464 N"
    assert cautions.AUTHORITY in told.cautions and len(told.lines) == 4


# --- legs that share --------------------------------------------------------------------------


def row(angle: float, depth: float = 1.5) -> np.ndarray:
    side = depth * math.tan(angle)
    return np.array([(-side, 0, depth), (0, 0, depth), (side, 0, depth)])


def test_a_row_of_three_may_share_in_any_way() -> None:
    for angle in (0.2, 0.8, 1.2):
        found = redundant_legs((0, 0, 0), row(angle), DOWN, stiffness=5e4)
        outer = 1000 / math.cos(angle)
        assert found.least == pytest.approx([0, 0, 0], abs=1e-6)
        assert found.most == pytest.approx([outer, 2000, outer])


def test_stiff_legs_in_a_row_share_by_their_stretch() -> None:
    for angle in (0.1, 0.5, 1.0, 1.2):
        found = redundant_legs((0, 0, 0), row(angle), DOWN, stiffness=1e9)
        middle = anchors.middle_leg_tension(load=2000.0, outer_leg_angle=angle)
        outer = anchors.outer_leg_tension(load=2000.0, outer_leg_angle=angle)
        assert found.stretched == pytest.approx([outer, middle, outer], rel=1e-4)
        assert found.sunk == pytest.approx(middle * 1.5 / 1e9, rel=1e-4)


def lowest_energy(knot, places, pull, stiffness, errors):
    """Tensions at the place of least energy, by a search that compares energies only."""
    lengths = np.linalg.norm(places - knot, axis=1) + errors

    def stretch(at):
        return np.maximum(0.0, np.linalg.norm(places - at, axis=1) - lengths)

    def energy(at):
        return float(stiffness / lengths @ stretch(at) ** 2 / 2 - pull @ (at - knot))

    at = np.asarray(knot, float)
    for size in (0.3, 0.05, 0.01, 0.002, 1e-3, 1e-4):
        corners = at + size * np.vstack([np.zeros(3), np.eye(3)])
        at = minimize(
            energy,
            at,
            method="Nelder-Mead",
            options={"initial_simplex": corners, "xatol": 1e-12, "fatol": 1e-14, "maxfev": 5000},
        ).x
    return stiffness / lengths * stretch(at)


@pytest.mark.parametrize("count", [2, 3, 4, 5])
def test_sharing_is_the_place_of_least_energy(count: int) -> None:
    rng = np.random.default_rng(75 + count)
    for _ in range(2):
        turn = np.arange(count) * 2 * math.pi / count + rng.uniform(-0.3, 0.3, count)
        places = np.stack([np.cos(turn), np.sin(turn), rng.uniform(1, 3, count)], axis=1)
        if count == 2:
            places[1, :2] = -places[0, :2] * 1.3
        stiffness, errors = rng.uniform(3e4, 2e5, count), rng.uniform(-0.02, 0.05, count)
        found = redundant_legs((0, 0, 0), places, DOWN, stiffness=stiffness, length_errors=errors)
        expected = lowest_energy(np.zeros(3), places, DOWN, stiffness, errors)
        assert found.stretched == pytest.approx(expected, rel=2e-3, abs=4.0)


def test_a_few_centimetres_hand_one_leg_everything() -> None:
    long = redundant_legs((0, 0, 0), row(0.8), DOWN, stiffness=1e6, length_errors=[0, 0.05, 0])
    assert long.stretched[1] == 0
    assert long.stretched[0] == pytest.approx(long.stretched[2]) and long.stretched[0] > 1000
    short = redundant_legs((0, 0, 0), row(0.8), DOWN, stiffness=1e6, length_errors=[0.05, 0, 0.05])
    assert short.stretched == pytest.approx([0, 2000, 0], abs=1e-6)
    text = long.explain().as_text()
    assert "Leg 2: anywhere from 0" in text and "(slack)" in text.split("Leg 2")[1].split("\n")[0]
    assert "(slack)" not in text.split("Leg 1")[1].split("\n")[0]
    assert "any one leg may have to carry up to 2.00 kN" in text
    wide = redundant_legs((0, 0, 0), row(1.11), DOWN, stiffness=1e6)
    assert wide.most[0] == pytest.approx(1000 / math.cos(1.11)) == pytest.approx(2248.9, abs=0.1)
    assert "Leg 1: anywhere from 0 kN to 2.25 kN;" in wide.explain().as_text()
    high = redundant_legs((0, 0, 0), row(1.1061), DOWN, stiffness=1e6)
    assert 2230 < high.most[0] < 2235  # 2.23 to the nearest
    assert high.explain().result == "any one leg may have to carry up to 2.24 kN"
    assert "to 2.24 kN; with this stretch" in high.explain().as_text()
    assert "does not settle" in long.cautions[0]


def test_the_range_holds_every_corner_of_sharing() -> None:
    """Four legs in space: each three of them that can hold the pull alone are a corner."""
    rng = np.random.default_rng(76)
    for _ in range(15):
        turn = np.arange(4) * math.pi / 2 + rng.uniform(-0.3, 0.3, 4)
        places = np.stack([np.cos(turn), np.sin(turn), rng.uniform(1, 3, 4)], axis=1)
        corners = []
        for chosen in itertools.combinations(range(4), 3):
            try:
                alone = three_legs(places[list(chosen)], DOWN).tensions
            except DomainError:
                continue
            tensions = np.zeros(4)
            tensions[list(chosen)] = alone
            corners.append(tensions)
        found = redundant_legs((0, 0, 0), places, DOWN, stiffness=1e5)
        assert found.least == pytest.approx(np.min(corners, axis=0), abs=1e-6)
        assert found.most == pytest.approx(np.max(corners, axis=0), abs=1e-6)
        assert (np.array(found.stretched) <= np.array(found.most) * 1.2 + 1).all()


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"pull": (3000, 0, -10)}, "No sharing holds this pull"),
        ({"pull": (0, 0, 0)}, "no size"),
        ({"stiffness": 0.0}, "stiffness"),
        ({"stiffness": [1e4, 1e4]}, "one number or 3 numbers"),
        ({"length_errors": -5.0}, "shorten a leg to nothing"),
        ({"knot": [(0, 0, 0)]}, "one knot, one pull"),
        ({"anchor_places": [(1.0, 0, 0), (-1.0, 0, 0), (0, 0, 1.0)]}, "straight against"),
    ],
)
def test_what_cannot_share_is_refused(change, words) -> None:
    asked = {"knot": (0, 0, 0), "anchor_places": row(0.8), "pull": DOWN, "stiffness": 5e4} | change
    with pytest.raises(DomainError, match=words):
        redundant_legs(**asked)


def test_legs_stretched_nearly_straight_are_refused() -> None:
    for rise in (0.0, 1e-9, 2e-4):
        with pytest.raises(DomainError, match=r"straight against each other, or nearly|No sharing"):
            redundant_legs((0, 0, 0), [(-1.0, 0, rise), (1.0, 0, rise)], DOWN, stiffness=5e4)
    two = redundant_legs((0, 0, 0), [(-1.0, 0, 0.01), (1.0, 0, 0.01)], DOWN, stiffness=1e9)
    assert two.most == pytest.approx([1000 * math.hypot(1, 0.01) / 0.01] * 2, rel=1e-6)


# --- a bridle by its lengths ------------------------------------------------------------------


def test_strings_of_five_and_ten_centimetres() -> None:
    # OpenStax, University Physics 1, example 12.2: they meet at a right angle; the short one
    # carries twice the long one's tension
    hung = bridle(
        (0.0, 1.0), (math.hypot(0.05, 0.10), 1.0), first_length=0.05, second_length=0.10, load=1.0
    )
    assert hung.included_angle == pytest.approx(math.pi / 2)
    assert hung.tensions[0] == pytest.approx(2 * hung.tensions[1])


@often
@given(st.floats(0.2, 6), st.floats(-2, 2), st.floats(0.3, 8), st.floats(0.3, 8), st.booleans())
def test_a_bridle_settles_where_elastic_legs_do(across, rise, one, two, mirrored) -> None:
    ends = ((0.0, 10.0), (-across if mirrored else across, 10.0 + rise))
    distance = math.hypot(across, rise)
    if one + two < 1.02 * distance:
        if one + two <= distance:
            with pytest.raises(DomainError, match="do not meet"):
                bridle(*ends, first_length=one, second_length=two, load=2000.0)
        return
    hung = bridle(*ends, first_length=one, second_length=two, load=2000.0)
    x, z = hung.knot
    pulls = np.zeros(2)
    for end, length, tension in zip(ends, (one, two), hung.tensions, strict=True):
        way = np.array(end) - hung.knot
        assert np.hypot(*way) <= length * (1 + 1e-9)
        if tension > 0:
            assert np.hypot(*way) == pytest.approx(length, rel=1e-9)
            pulls += tension * way / np.hypot(*way)
    np.testing.assert_allclose(pulls, [0, 2000], atol=1e-6)
    assert (hung.included_angle is None) == (0.0 in hung.tensions)
    assert z < max(end[1] for end in ends) and math.isfinite(x)


def test_stiff_elastic_legs_hang_the_same() -> None:
    from ropecalc.mechanics.holding import Point

    hung = bridle((0.0, 3.0), (2.0, 3.4), first_length=2.0, second_length=1.5, load=2000.0)
    legs = (Rope((Point(0.0, 3.0),), 2.0, 1e7), Rope((Point(2.0, 3.4),), 1.5, 1e7))
    rest = settle(2000.0, legs, (1.0, 1.0))
    assert (rest.x, rest.z) == pytest.approx(hung.knot, abs=1e-3)
    assert rest.tensions == pytest.approx(hung.tensions, rel=2e-3)


def test_a_leg_that_is_too_long_hangs_slack() -> None:
    slack_first = bridle((0.0, 3.0), (0.2, 3.0), first_length=2.0, second_length=1.5, load=2000.0)
    assert slack_first.tensions == (0.0, 2000.0)
    assert slack_first.knot == pytest.approx((0.2, 1.5))
    assert slack_first.sentence.startswith("Leg 1 is long enough to hang slack")
    assert "below the anchor of leg 2" in slack_first.sentence
    slack_second = bridle((0.2, 3.0), (0.0, 3.0), first_length=1.5, second_length=2.0, load=9.0)
    assert slack_second.tensions == (9.0, 0.0) and slack_second.included_angle is None
    assert slack_second.sentence.startswith("Leg 2 is long enough")


def test_a_bridle_is_told_and_names_change_with_the_legs() -> None:
    one = bridle((0.0, 3.0), (2.0, 3.0), first_length=2.0, second_length=1.5, load=2000.0)
    other = bridle((2.0, 3.0), (0.0, 3.0), first_length=1.5, second_length=2.0, load=2000.0)
    assert one.knot == pytest.approx(other.knot)
    assert one.tensions == pytest.approx(other.tensions[::-1])
    assert one.included_angle == pytest.approx(other.included_angle)
    told = one.explain()
    first, second = (Display().show(t, Kind.FORCE) for t in one.tensions)
    assert told.result == f"leg 1 carries {first}, leg 2 {second}"
    assert "1.44 m out and 1.61 m up" in told.as_text()
    assert "68° apart, and the steeper one carries more." in told.as_text()


def test_equal_legs_agree_with_the_formula_from_lengths() -> None:
    hung = bridle((0.0, 3.0), (1.5, 3.0), first_length=2.0, second_length=2.0, load=2000.0)
    each = anchors.bridle_leg_tension(load=2000.0, leg_length=2.0, anchor_spacing=1.5)
    assert hung.tensions == pytest.approx((each, each))
    assert hung.sentence == "The legs stand 44° apart, and they share equally."
    near = bridle((0.0, 3.0), (1.5, 3.0), first_length=2.0, second_length=2.01, load=2000.0)
    assert abs(near.tensions[0] - near.tensions[1]) > 2.0  # more than a thousandth of the load
    assert near.sentence.endswith("the steeper one carries more.")


def test_a_bridle_that_is_none_is_refused() -> None:
    good = {"first_length": 2.0, "second_length": 1.5, "load": 2000.0}
    with pytest.raises(DomainError, match=r"together are 3\.50 m and the anchors 4\.00 m apart"):
        bridle((0, 3), (4, 3), **good)
    with pytest.raises(DomainError, match="do not meet"):
        bridle((0, 3), (3.5, 3), **good)
    with pytest.raises(DomainError, match="in one straight line, or nearly"):
        bridle((0, 3), (3.5 - 1e-9, 3), **good)
    tight = bridle((0, 3), (3.4999, 3), **good)  # the knot sinks by 1.3 cm
    assert tight.knot[1] == pytest.approx(3 - math.sqrt(2 * 1e-4 * 2.0 * 1.5 / 3.5), rel=1e-3)
    with pytest.raises(DomainError, match="first_length"):
        bridle((0, 3), (2, 3), **{**good, "first_length": -1.0})
    with pytest.raises(DomainError, match="first must be two finite numbers"):
        bridle((0, 3, 1), (2, 3), **good)
    with pytest.raises(DomainError, match="one case at a time"):
        bridle((0, 3), (2, 3), **{**good, "load": [1.0, 2.0]})


def test_a_knot_close_below_its_three_anchors_is_found() -> None:
    places = np.array([(-3.0, 0.0, 5.0), (3.0, 0.0, 5.0), (0.0, 4.0, 5.0)])
    for deep in (0.1, 0.5, 0.99, 1.5):
        knot = np.array([0.2, 1.0, 5.0 - deep])
        lengths = np.linalg.norm(places - knot, axis=1)
        found = three_legs_of_lengths(places, lengths, (0.0, 0.0, -1000.0))
        assert found.knot == pytest.approx(knot)


def test_a_leg_shortened_to_nothing_and_two_pulls_at_once_are_refused() -> None:
    places = [(-1.0, 0.0, 2.0), (1.0, 0.0, 2.0), (0.0, 0.0, 2.0)]
    asked = {"knot": (0.0, 0.0, 0.0), "anchor_places": places, "stiffness": 5e4}
    with pytest.raises(DomainError, match="shorten a leg to nothing"):
        redundant_legs(**asked, pull=(0.0, 0.0, -1e3), length_errors=[0.0, 0.0, -2.0])
    with pytest.raises(DomainError, match="shorten a leg to nothing or double it"):
        redundant_legs(**asked, pull=(0.0, 0.0, -1e3), length_errors=[0.0, 0.0, 2.5])
    with pytest.raises(DomainError, match="one pull and one row of anchors at a time"):
        redundant_legs(**asked, pull=[(0.0, 0.0, -1e3)] * 2)
