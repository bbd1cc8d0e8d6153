"""Frames against published values, moments in coordinates and finite elements."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ropecalc.derivation import DomainError
from ropecalc.mechanics.frames import (
    Standing,
    footing,
    frame_in_space,
    guy_behind,
    guy_in_front,
    landing,
    leg_compression,
)
from ropecalc.units import Display
from tests.mechanics.test_legs import finite_elements

often = settings(derandomize=True, deadline=None, max_examples=100)


def moment(arm, force) -> float:
    return float(arm[0] * force[1] - arm[1] * force[0])


# --- guys -------------------------------------------------------------------------------------


def test_a_utility_pole() -> None:
    # Baker & Haynes, Engineering Statics, section 3.4, example "Utility Pole": six lines of
    # 10.0 kN at 76° from the axis, guy 38° from plumb; 14.5 kN level, guy 23.6 kN
    level = 6 * 10.0 * math.cos(math.radians(76))
    guy = guy_in_front(
        inward_pull=level,
        downward_pull=1.0,
        head_height=9.0,
        head_reach=0.0,
        guy_depression=math.radians(90 - 38),
    )
    assert level == pytest.approx(14.5, abs=0.05) and guy == pytest.approx(23.6, abs=0.05)


def test_a_strut_with_a_cable_and_a_sign() -> None:
    # OpenStax, University Physics 1, check problem on a strut: 4.0 m, 600.0 N, sign of 400.0 N at
    # its end, cable to the wall 3.0 m up; 1167 N. The strut's own weight acts half at its end
    guy = guy_behind(
        inward_pull=0.0,
        downward_pull=400.0 + 600.0 / 2,
        head_height=1e-12,
        head_reach=4.0,
        guy_depression=-math.atan2(3.0, 4.0),
    )
    assert guy == pytest.approx(1167, abs=0.5)


def test_a_head_above_its_feet() -> None:
    # an independent calculation made for this project: 1.2 kN level, guy at 40°: 1.57 kN
    guy = guy_in_front(
        inward_pull=1200.0,
        downward_pull=3000.0,
        head_height=2.0,
        head_reach=0.0,
        guy_depression=math.radians(40),
    )
    assert guy == pytest.approx(1200 / math.cos(math.radians(40))) == pytest.approx(1570, abs=5)


@often
@given(
    st.floats(-2000, 3000), st.floats(500, 6000), st.floats(1, 3.5), st.floats(-0.5, 1.2),
    st.floats(-0.3, 1.1),
)  # fmt: skip
def test_moments_about_the_feet_cancel(inward, down, height, reach, angle) -> None:
    head, pull = np.array([reach, height]), np.array([-inward, -down])
    asked = {
        "inward_pull": inward,
        "downward_pull": down,
        "head_height": height,
        "head_reach": reach,
        "guy_depression": angle,
    }
    tips_back = height * inward > reach * down
    guy, side = (guy_in_front, 1) if tips_back else (guy_behind, -1)
    way = np.array([side * math.cos(angle), -math.sin(angle)])
    if side * moment(head, way) >= -1e-9:  # the guy passes the feet on the wrong side
        with pytest.raises(DomainError, match="or it cannot hold the frame"):
            guy(**asked)
        return
    tension = guy(**asked)
    assert tension >= 0
    scale = abs(moment(head, pull)) + height * down
    assert moment(head, pull) + moment(head, tension * way) == pytest.approx(0, abs=1e-9 * scale)
    along = -(pull + tension * way)  # what the frame pushes back with lies along the frame
    assert moment(head, along) == pytest.approx(0, abs=1e-9 * scale)
    if height * inward == reach * down:
        return  # on the limit either guy will do
    other = guy_behind if tips_back else guy_in_front
    with pytest.raises(DomainError, match="The pull must tip the frame"):
        other(**asked)
    if along[1] <= 0:
        return
    legs = leg_compression(
        downward_pull=down, guy_tension=tension, guy_depression=angle, head_height=height,
        head_reach=reach, leg_half_spread=0.3,
    )  # fmt: skip
    assert 2 * legs * math.cos(0.3) == pytest.approx(float(np.hypot(*along)), rel=1e-9)


def test_on_the_limit_neither_guy_has_to_pull() -> None:
    asked = {
        "inward_pull": 500.0, "downward_pull": 2000.0, "head_height": 2.0, "head_reach": 0.5,
        "guy_depression": 0.7,
    }  # fmt: skip
    assert guy_in_front(**asked) == 0.0 and guy_behind(**asked) == 0.0


def test_a_guy_loads_the_legs() -> None:
    # an independent calculation made for this project: upright, 4 kN down, legs 40° apart: 2.13 kN
    # without a guy, 2.64 kN with one
    upright = {
        "downward_pull": 4000.0, "guy_depression": math.radians(40), "head_height": 2.0,
        "head_reach": 0.0, "leg_half_spread": math.radians(20),
    }  # fmt: skip
    assert leg_compression(guy_tension=0.0, **upright) == pytest.approx(2130, abs=5)
    assert leg_compression(guy_tension=1500.0, **upright) == pytest.approx(2640, abs=6)
    with pytest.raises(DomainError, match="must press the frame down"):
        leg_compression(guy_tension=9000.0, **{**upright, "guy_depression": -0.8})


# --- where it lands ---------------------------------------------------------------------------


def test_the_line_of_action_meets_the_ground() -> None:
    rng = np.random.default_rng(67)
    height, reach = rng.uniform(0.5, 4, 500), rng.uniform(-0.5, 1.5, 500)
    inward, down = rng.uniform(-2000, 3000, 500), rng.uniform(500, 6000, 500)
    place = landing(head_height=height, head_reach=reach, lean=np.arctan2(inward, down))
    foot = np.array([-place, 0 * place]) - np.array([reach, height])  # from the head, x out
    np.testing.assert_allclose(foot[0] * -down - foot[1] * -inward, 0.0, atol=1e-8)


@pytest.mark.parametrize(
    ("inward", "back", "standing", "where", "margin"),
    [
        (1000.0, 1.5, Standing.STANDS, 0.7, 0.7),
        (1000.0, 1.0, Standing.STANDS, 0.7, 0.3),
        (1000.0, 0.7, Standing.LIMIT, 0.7, 0.0),
        (1000.0, 0.7019, Standing.LIMIT, 0.7, 0.0019),
        (1000.0, 0.6981, Standing.LIMIT, 0.7, -0.0019),
        (1000.0, 0.7021, Standing.STANDS, 0.7, 0.0021),
        (1000.0, 0.6979, Standing.TIPS_BACK, 0.7, -0.0021),
        (1000.0, 0.5, Standing.TIPS_BACK, 0.7, -0.2),
        (1000.0, 0.0, Standing.TIPS_BACK, 0.7, -0.7),
        (300.0, 1.5, Standing.LIMIT, 0.0, 0.0),
        (300.0, 0.0, Standing.LIMIT, 0.0, 0.0),
        (301.0, 1.5, Standing.LIMIT, 0.001, 0.001),
        (297.0, 1.5, Standing.TIPS_OUT, -0.003, -0.003),
        (200.0, 1.5, Standing.TIPS_OUT, -0.1, -0.1),
        (-500.0, 1.5, Standing.TIPS_OUT, -0.8, -0.8),
    ],
)
def test_footings(inward, back, standing, where, margin) -> None:
    found = footing(
        inward_pull=inward, downward_pull=2000.0, head_height=2.0, head_reach=0.3, back_foot=back
    )
    assert found.standing is standing
    assert found.landing == pytest.approx(where, abs=1e-12)
    assert found.margin == pytest.approx(margin, abs=1e-12)
    # the moment about the edge it tips over, from coordinates
    edge = -back if where > back else 0.0
    head = np.array([0.3 - edge, 2.0])
    tipping = abs(moment(head, np.array([-inward, -2000.0])))
    expected = tipping if margin < 0 else 0.0
    assert found.tipping_moment == pytest.approx(expected, abs=1e-9)


def test_footings_are_told() -> None:
    asked = {"downward_pull": 2000.0, "head_height": 2.0, "head_reach": 0.3, "back_foot": 0.5}
    back = footing(inward_pull=1000.0, **asked).explain()
    assert "0.700 m behind the front feet" in back.as_text()
    assert "falls back, towards the team. Guy it on the cliff side" in back.result
    out = footing(inward_pull=0.0, **asked).explain(Display(length="cm"))
    assert "30.0 cm in front of the front feet" in out.as_text()
    assert "falls out, over the edge. Guy it on the team's side" in out.result
    stands = footing(inward_pull=500.0, **asked).explain()
    assert "stands by itself in this plane" in stands.result
    upright = footing(**{**asked, "inward_pull": 0.0, "head_reach": 0.0, "back_foot": 0.0})
    assert upright.standing == "is at its limit" and upright.tipping_moment == 0.0
    assert "the least change makes it fall. Guy it." in upright.explain().result
    assert "sideways lean" in stands.cautions[0]


def test_footings_that_are_none_are_refused() -> None:
    asked = {
        "inward_pull": 0.0, "downward_pull": 2000.0, "head_height": 2.0, "head_reach": 0.3,
        "back_foot": 0.5,
    }  # fmt: skip
    for name, value in (("back_foot", -0.1), ("head_height", 0.0), ("downward_pull", 0.0)):
        with pytest.raises(DomainError, match=name):
            footing(**{**asked, name: value})
    with pytest.raises(DomainError, match="one case at a time"):
        footing(**{**asked, "inward_pull": np.array([1.0, 2.0])})


def test_the_head_of_the_worked_case_leans_inward_all_the_way() -> None:
    """An independent calculation made for this project: 19° to 29°, least at the outcrop."""
    from ropecalc.mechanics.holding import Method, hold
    from ropecalc.mechanics.redirects import head_lean
    from tests.mechanics.cases import CASE, CASE_LOAD

    z = np.linspace(1, 27, 60)
    held = hold(Method.TRACK, CASE, CASE_LOAD, 2.5, z)
    lean = np.degrees(
        head_lean(front_depression=held.haul_elevation.data, back_depression=math.radians(28))
    )
    assert lean.min() == pytest.approx(19, abs=0.5) and lean.argmin() == len(z) - 1
    assert lean.max() == pytest.approx(29, abs=0.5)


# --- in space ---------------------------------------------------------------------------------

HEAD, FEET = (0.3, 0.0, 2.0), [(0.0, -0.7, 0.0), (0.0, 0.7, 0.0)]


def test_the_plane_formulas_are_the_frame_in_space() -> None:
    gamma = math.atan2(2.0, 2.7)
    found = frame_in_space(HEAD, FEET, (-1500, 0, -3000), guys=[(3.0, 0, 0)])
    guy = guy_in_front(
        inward_pull=1500.0, downward_pull=3000.0, head_height=2.0, head_reach=0.3,
        guy_depression=gamma,
    )  # fmt: skip
    each = leg_compression(
        downward_pull=3000.0, guy_tension=guy, guy_depression=gamma, head_height=2.0,
        head_reach=0.3, leg_half_spread=math.atan2(0.7, math.hypot(2.0, 0.3)),
    )  # fmt: skip
    assert found.guy_tensions == pytest.approx([guy])
    assert found.compressions == pytest.approx([each, each])
    assert found.head == HEAD and found.pull == (-1500, 0, -3000)


def test_finite_elements_agree() -> None:
    """Tripods and guyed frames under pulls from all sides, by the package PyNite (see there)."""
    rng = np.random.default_rng(68)
    compared = 0
    for _ in range(12):
        feet = np.array(FEET) + rng.uniform(-0.2, 0.2, (2, 3))
        guy = (3.0, rng.uniform(-1, 1), rng.uniform(-0.5, 1.0))
        pull = (rng.uniform(-2500, -500), rng.uniform(-200, 200), -3000.0)
        expected = finite_elements(HEAD, [*feet, guy], pull)
        if max(expected[:2]) > 0 or expected[2] < 0:
            continue
        found = frame_in_space(HEAD, feet, pull, guys=[guy])
        assert found.compressions == pytest.approx([-expected[0], -expected[1]], rel=1e-5)
        assert found.guy_tensions == pytest.approx([expected[2]], rel=1e-5)
        compared += 1
    assert compared >= 6


def test_a_tripod_stands_and_a_bad_one_tips() -> None:
    feet = [(0.6, -0.7, 0.0), (0.6, 0.7, 0.0), (-0.9, 0.0, 0.0)]
    stands = frame_in_space((0, 0, 2), feet, (0, 0, -3000))
    units = np.array(feet) - [0, 0, 2]
    units /= np.linalg.norm(units, axis=1, keepdims=True)
    total = -np.array(stands.compressions) @ units + [0, 0, -3000]
    np.testing.assert_allclose(total, 0, atol=1e-9)
    assert stands.guy_tensions == ()
    with pytest.raises(DomainError, match=r"Leg 3 would be pulled off the ground.*set foot 3"):
        frame_in_space((0, 0, 2), feet, (2000, 0, -3000))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"guys": [(-3, 0, 0)]}, "The guy would have to push"),
        ({"guys": []}, r"2 legs and 0 guys: statics settles three members"),
        ({"guys": [(3, 0, 0), (-3, 0, 0)]}, "2 legs and 2 guys"),
        ({"feet": FEET[:1], "guys": [(3, 0, 0), (3, 1, 0)]}, "1 legs and 2 guys"),
        ({"guys": [(0.0, 3.0, 0.0)]}, "lie in one plane"),
        ({"guys": [HEAD]}, "has no length"),
        ({"pull": (0, 0, 0)}, "no length, or the pull no size"),
        ({"pull": (-1500, 0, math.inf)}, "pull must be three finite numbers"),
        ({"pull": (-1500, 9000, -3000)}, "Leg 1 would be pulled off"),
        ({"head": [HEAD]}, "Give one head"),
    ],
)
def test_frames_that_do_not_stand_are_refused(change, words) -> None:
    asked = {"head": HEAD, "feet": FEET, "pull": (-1500, 0, -3000), "guys": [(3, 0, 0)]} | change
    with pytest.raises(DomainError, match=words):
        frame_in_space(**asked)


def test_a_frame_in_space_is_told() -> None:
    told = frame_in_space(HEAD, FEET, (-1500, 0, -3000), guys=[(3.0, 0, 0)]).explain()
    text = told.as_text()
    assert "Leg 1 is pressed with 1.98 kN." in text and "Leg 2 is pressed with 1.98 kN." in text
    assert "Guy 1 pulls with 1.18 kN." in text
    assert told.result == "most loaded leg: 1.98 kN" and told.lines[0].is_law
    assert "feet that slip" in told.cautions[0]
