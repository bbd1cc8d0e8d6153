"""Pulley systems: refusals in words, the trade's systems, loads on their parts, what they say."""

import math
from dataclasses import replace

import numpy as np
import pytest
import sympy

from ropecalc.derivation import DomainError
from ropecalc.mechanics.pulleys import (
    Body,
    Forces,
    Role,
    Rope,
    System,
    common_system,
    common_systems,
    count_tensions,
    forces,
    gripped,
    over,
    series_tensioner_system,
    tied,
    travel,
)
from ropecalc.mechanics.redirects import redirect_resultant
from ropecalc.units import Display

LOAD = 2000.0
E = sympy.Symbol(r"\eta", positive=True)
NAMES = common_systems()


def whip(**changed: object) -> System:
    """A load on a rope over one anchor pulley, with something changed."""
    parts: dict[str, object] = {
        "name": "whip",
        "bodies": (
            Body("load", Role.LOAD, 10.0),
            Body("anchor", Role.ANCHOR, 0.0),
            Body("hand", Role.HAND, 8.0),
        ),
        "ropes": (Rope("rope", (tied("load"), over("anchor"), tied("hand"))),),
    }
    return System(**(parts | changed))  # type: ignore[arg-type]


BODIES = whip().bodies


# --- refused in words --------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        (
            {"ropes": (Rope("rope", (tied("load"), over("tree"), tied("hand"))),)},
            "there is no body called 'tree'; there are load, anchor, hand. Correct the name",
        ),
        (
            {"ropes": (*whip().ropes, Rope("spare", ()))},
            "whip, spare: the rope visits 0 bodies; it must visit at least two",
        ),
        (
            {"ropes": (*whip().ropes, Rope("spare", (tied("load"),)))},
            "the rope visits 1 bodies; it must visit at least two. Say where both its ends are",
        ),
        (
            {"bodies": (*BODIES, Body("grab", Role.GRAB, 5.0))},
            "no rope visits grab, so nobody holds it. Lead a rope to it or leave it out",
        ),
        (
            {
                "bodies": (*BODIES, Body("grab", Role.GRAB, 5.0)),
                "ropes": (*whip().ropes, Rope("sling", (tied("anchor"), tied("grab")))),
            },
            "the grab grab grips no strand. Let a rope be gripped by it",
        ),
        (
            {"ropes": (Rope("rope", (tied("load"), gripped("anchor"), tied("hand"))),)},
            "anchor is an anchor and cannot grip. Make it a grab, or tie the rope to it",
        ),
        (
            {"ropes": (Rope("rope", (over("load"), over("anchor"), tied("hand"))),)},
            "the rope is over at load at an end; tie its ends",
        ),
        (
            {"ropes": (Rope("rope", (tied("load"), tied("anchor"), tied("hand"))),)},
            "the rope is tied at anchor on its way; let it run over the body or be gripped",
        ),
        (
            {
                "ropes": (
                    Rope("rope", (tied("load"), over("hand"), tied("anchor"))),
                )
            },
            "the hand takes an end of the rope. Put it there",
        ),
        (
            {"bodies": (*BODIES, Body("load", Role.PULLEY, 3.0))},
            "two bodies are called 'load'. Give each a name of its own",
        ),
        (
            {"ropes": (*whip().ropes, *whip().ropes)},
            "two ropes are called 'rope'",
        ),
        ({"bodies": BODIES[1:]}, "there must be one load, not 0"),
        ({"bodies": BODIES[:2]}, "there must be one hand, not 0"),
        (
            {"bodies": (*BODIES, Body("other", Role.LOAD, 3.0))},
            "there must be one load, not 2. Make other loads moving pulleys or grabs",
        ),
        (
            {"bodies": (replace(BODIES[0], station=math.nan), *BODIES[1:])},
            "the station of load is nan; it must be a finite number of metres",
        ),
        (
            {"bodies": (replace(BODIES[0], station=0.0), *BODIES[1:])},
            "load and anchor are at the same station, so the strand between them has no direction",
        ),
        (
            {"ropes": (*whip().ropes, Rope("second", (tied("load"), tied("hand"))))},
            "2 rope ends come into the hand; only one can be counted from",
        ),
        (
            {"ropes": (*whip().ropes, Rope("sling", (tied("load"), tied("anchor"))))},
            "under-determined: 3 strand tensions face 2 conditions (1 sheaves, 1 bodies to "
            "balance). Ropes share a load in a way that only their stretch decides",
        ),
        (
            {
                "bodies": (*BODIES, Body("pulley", Role.PULLEY, 5.0)),
                "ropes": (
                    Rope("rope", (tied("load"), over("pulley"), over("anchor"), tied("hand"))),
                ),
            },
            "over-determined: 3 strand tensions face 4 conditions (2 sheaves, 2 bodies to "
            "balance). Some body is not held",
        ),
        (
            {"bodies": (replace(BODIES[0], station=-4.0), *BODIES[1:])},
            "rope: load to anchor would have to push, which no rope can",
        ),
        (
            {
                "bodies": (*BODIES, Body("pulley", Role.PULLEY, 5.0)),
                "ropes": (
                    Rope("rope", (tied("load"), tied("anchor"))),
                    Rope("other", (tied("pulley"), over("anchor"), tied("hand"))),
                ),
            },
            "the hand holds nothing; the anchors carry the load whatever it does",
        ),
        (
            {
                "bodies": (
                    *BODIES, Body("pulley", Role.PULLEY, 5.0), Body("ring", Role.PULLEY, 4.0)
                ),
                "ropes": (
                    Rope("rope", (tied("load"), over("anchor"), tied("anchor 2"))),
                    Rope("one", (tied("pulley"), over("anchor"), over("ring"), tied("hand"))),
                    Rope("two", (tied("pulley"), tied("load"))),
                ),
            },
            "there is no body called 'anchor 2'",
        ),
        (
            {"ropes": (Rope("rope", (tied("load"), over("anchor", angle=3.2), tied("hand"))),)},
            "is 3.2 rad; it must be from 0 (both the same way) to π",
        ),
        (
            {"ropes": (Rope("rope", (tied("load"), over("anchor", angle=-0.1), tied("hand"))),)},
            "is -0.1 rad; it must be from 0",
        ),
    ],
)  # fmt: skip
def test_what_is_inconsistent_is_refused_in_words(changed: dict[str, object], words: str) -> None:
    with pytest.raises(DomainError) as refusal:
        whip(**changed)
    assert words in str(refusal.value)


def test_an_angle_is_for_anchors_only() -> None:
    bodies = (*BODIES, Body("pulley", Role.PULLEY, 5.0))
    rope = Rope("rope", (tied("anchor"), over("pulley", angle=0.0), tied("hand")))
    with pytest.raises(
        DomainError, match="only for a pulley at an anchor; pulley is a moving pull"
    ):
        whip(bodies=bodies, ropes=(rope, Rope("sling", (tied("load"), tied("pulley")))))


def test_a_body_that_can_run_off_while_another_is_held_twice() -> None:
    bodies = (*BODIES, Body("one", Role.PULLEY, 5.0), Body("two", Role.PULLEY, 4.0))
    ropes = (
        Rope("rope", (tied("load"), tied("anchor"))),
        Rope("haul", (tied("load"), over("anchor"), tied("hand"))),
        Rope("loose", (tied("anchor"), over("one"), over("two"), tied("one"))),
    )
    with pytest.raises(DomainError, match="does not settle: a body can run off"):
        whip(bodies=bodies, ropes=ropes)


def test_a_body_is_found_by_name_or_refused() -> None:
    assert whip().body("anchor") == BODIES[1]
    with pytest.raises(DomainError, match="no body called 'x'"):
        whip().at("x")


def test_names_and_lengths_that_make_no_sense_are_refused() -> None:
    with pytest.raises(DomainError, match="'7:3' is not the name of a common system; known are"):
        common_system("7:3")
    for name in ("height", "throw", "gap"):
        with pytest.raises(DomainError, match=name):
            common_system("3:1", **{name: 0.0})
    for lines in (0, 21, 2.0, True, "2"):
        with pytest.raises(DomainError, match="whole number of track lines from 1 to 20"):
            series_tensioner_system(lines)  # type: ignore[arg-type]


def test_directions_efficiencies_and_loads_are_checked() -> None:
    system = common_system("3:1").with_own_efficiencies()
    with pytest.raises(DomainError, match="hauling, lowering or holding"):
        forces(system, "up", load=LOAD, efficiency=0.9)
    with pytest.raises(DomainError, match="a count needs the rope to move"):
        count_tensions(system, "holding")
    for value in (0.0, 1.01, -1.0, math.nan):
        with pytest.raises(DomainError, match="efficiency"):
            forces(system, "hauling", load=LOAD, efficiency=value)
    with pytest.raises(DomainError, match="load"):
        forces(system, "hauling", load=0.0, efficiency=0.9)
    with pytest.raises(DomainError, match="they must be given for eta_2, eta_1"):
        forces(system, "hauling", load=LOAD, efficiency={"eta_1": 0.9})
    with pytest.raises(DomainError, match="eta_2"):
        forces(system, "hauling", load=LOAD, efficiency={"eta_1": 0.9, "eta_2": 1.2})


# --- the trade's systems -----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "hauled"),
    [
        ("1:1", sympy.Integer(1)),
        ("2:1", 1 + E),
        ("3:1", 1 + E + E**2),
        ("4:1", 1 + E + E**2 + E**3),
        ("5:1", (1 - E**5) / (1 - E)),
        ("6:1", (1 + E) * (1 + E + E**2)),
        ("9:1", (1 + E + E**2) ** 2),
        ("2:1 on 3:1", (1 + E) * (1 + E + E**2)),
        ("3:1 on 2:1", (1 + E) * (1 + E + E**2)),
        ("5:1 on 4:1", (1 - E**5) / (1 - E) * (1 - E**4) / (1 - E)),
        ("piggy-back 4:1", (1 + E) ** 2),
        ("piggyback 4:1", (1 + E) ** 2),
        ("Complex 5:1 ", 2 * E + 2 * E**2 + E**3),
        ("simple 6:1", (1 - E**6) / (1 - E)),
        ("simple 10:1", (1 - E**10) / (1 - E)),
    ],
)
def test_advantages_by_hand(name: str, hauled: sympy.Expr) -> None:
    """Series written down by hand; a redirect costs one more sheave and gains nothing."""
    for redirect, more in ((False, 1), (True, E)):
        system = common_system(name, redirect=redirect)
        counted = count_tensions(system, "hauling")
        assert sympy.simplify(counted.advantage - more * hauled) == 0
        assert counted.ideal_advantage == counted.travel.ratio == sympy.limit(hauled, E, 1)
        lowered = count_tensions(system, "lowering").advantage
        assert sympy.simplify(lowered - (more * hauled).subs(E, 1 / E)) == 0


def test_numbers_of_an_independent_calculation_made_for_this_project() -> None:
    def up(name: str, efficiency: float, **settings: bool) -> float:
        system = common_system(name, **settings)
        return float(forces(system, "hauling", load=LOAD, efficiency=efficiency).advantage.low)

    assert up("3:1", 0.9) == pytest.approx(2.71)
    assert up("complex 5:1", 0.9) == pytest.approx(4.149)
    assert up("complex 5:1", 0.7) == pytest.approx(2.72, abs=0.005)
    assert up("5:1", 0.7) == pytest.approx(2.77, abs=0.005)
    assert up("5:1", 0.85) == pytest.approx(3.71, abs=0.005)
    three = common_system("3:1")
    down = forces(three, "lowering", load=LOAD, efficiency=0.9)
    assert down.advantage.low == pytest.approx(3.35, abs=0.005)
    held = forces(three, "holding", load=LOAD, efficiency=0.9)
    assert (held.hand_pull.low, held.hand_pull.high) == pytest.approx((598, 738), abs=0.5)
    assert held.advantage.high == pytest.approx(down.advantage.high)


def test_the_good_pulley_belongs_next_to_the_hand() -> None:
    system = common_system("3:1").with_own_efficiencies()
    for first, second, expected in ((0.95, 0.6, 2.52), (0.6, 0.95, 2.17)):
        result = forces(system, "hauling", load=LOAD, efficiency={"eta_1": first, "eta_2": second})
        assert result.advantage.low == pytest.approx(1 + first + first * second)
        assert result.advantage.low == pytest.approx(expected, abs=0.005)


def test_own_efficiencies_are_counted_from_the_hand_on_every_rope() -> None:
    system = common_system("piggy-back 4:1").with_own_efficiencies()
    e1, e2 = sympy.symbols(r"\eta_1 \eta_2", positive=True)
    counted = count_tensions(system, "hauling")
    assert sympy.expand(counted.advantage - (1 + e1) * (1 + e2)) == 0
    first = next(a for a in system.sheaves if a.visit.efficiency == "eta_1")
    assert first.visit.body == "traveller 2"
    turned = System(
        "turned", whip().bodies, (Rope("rope", tuple(reversed(whip().ropes[0].visits))),)
    )
    assert turned.with_own_efficiencies().efficiencies == ("eta_1",)
    assert turned.with_own_efficiencies().ropes[0].visits[0].body == "hand"


@pytest.mark.parametrize("parts", range(1, 11))
def test_a_hoist_block_table(parts: int) -> None:
    """A rigger's handbook, load over lead-line pull, bronze-bushed blocks (each costs 4.5 %)."""
    table = (0.96, 1.87, 2.75, 3.59, 4.39, 5.16, 5.90, 6.60, 7.27, 7.91)
    system = common_system(f"simple {parts}:1", redirect=True)
    result = forces(system, "hauling", load=1.0, efficiency=1 / 1.045)
    assert result.advantage.low == pytest.approx(table[parts - 1], abs=0.011)


@pytest.mark.parametrize(
    ("power", "useful", "pull"),
    [
        # Workshop Receipts, 5th series: observed ratio of useful to theoretical work, white rope
        (1, 0.90, 1.1), (2, 0.81, 0.62), (3, 0.75, 0.45), (4, 0.68, 0.37), (5, 0.615, 0.32),
        (6, 0.59, 0.28),
    ],
)  # fmt: skip
def test_observed_ratios(power: int, useful: float, pull: float) -> None:
    """What was observed lies among counts with one efficiency for all sheaves, 0.84 to 0.90."""
    system = common_system(f"simple {power}:1", redirect=True)
    result = forces(system, "hauling", load=1.0, efficiency=np.array([0.84, 0.9 + 1e-9]))
    assert result.efficiency.low[0] <= useful <= result.efficiency.low[1]
    assert result.hand_pull.low[1] <= pull + 0.02 and pull - 0.02 <= result.hand_pull.low[0]


@pytest.mark.parametrize(
    ("name", "redirect", "load", "pull"),
    [
        # Navy training manuals for builders and steelworkers, frictionless, lb: single whip,
        # runner, gun tackle, gun tackle inverted, luff tackle
        ("1:1", True, 50.0, 50.0), ("2:1", False, 100.0, 50.0), ("2:1", True, 200.0, 100.0),
        ("3:1", False, 300.0, 100.0), ("3:1", True, 600.0, 200.0),
        # Wire Rope Users Manual: 6000 lb on 4 parts, static
        ("4:1", True, 6000.0, 1500.0),
    ],
)  # fmt: skip
def test_tackles_of_the_manuals(name: str, redirect: bool, load: float, pull: float) -> None:
    system = common_system(name, redirect=redirect)
    for way in ("hauling", "lowering", "holding"):
        result = forces(system, way, load=load, efficiency=1.0)
        assert (result.hand_pull.low, result.hand_pull.high) == pytest.approx((pull, pull))


def test_tackle_friction_by_a_recovery_manual() -> None:
    """Two, three and four supporting strands: load 2T, 3T, 4T (OpenStax, College Physics, 9.5)."""
    for parts in (2, 3, 4):
        system = common_system(f"simple {parts}:1", redirect=True)
        result = forces(system, "holding", load=LOAD, efficiency=1.0)
        assert result.ideal_advantage == parts
        assert result.hand_pull.high == pytest.approx(LOAD / parts)


# --- loads on the parts ------------------------------------------------------------------------


def test_anchor_loads_of_a_three_to_one() -> None:
    plain = forces(common_system("3:1"), "holding", load=LOAD, efficiency=1.0)
    assert plain.anchors["anchor"].high == pytest.approx(2 / 3 * LOAD)
    assert plain.grabs["traveller"].high == pytest.approx(2 / 3 * LOAD)
    assert plain.connectors["main rope over traveller"].high == pytest.approx(2 / 3 * LOAD)
    assert plain.connectors["main rope gripped by traveller"].high == pytest.approx(2 / 3 * LOAD)
    assert plain.connectors["main rope tied to load"].high == pytest.approx(LOAD)
    redirected = forces(common_system("3:1", redirect=True), "hauling", load=LOAD, efficiency=1.0)
    assert redirected.anchors["anchor"].low == pytest.approx(4 / 3 * LOAD)
    assert redirected.hand_pull.low == pytest.approx(LOAD / 3)
    assert set(redirected.connectors) >= {
        "main rope over anchor (1)", "main rope over anchor (2)", "main rope tied to hand",
    }  # fmt: skip
    assert redirected.connectors["main rope over anchor (1)"].low == pytest.approx(2 / 3 * LOAD)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("redirect", [False, True])
def test_everything_outside_balances_along_the_line(name: str, redirect: bool) -> None:
    """Load, anchors and hand are all that touches the outside."""
    system = common_system(name, redirect=redirect)
    for way in ("hauling", "lowering"):
        result = forces(system, way, load=LOAD, efficiency=0.83)
        hand = system.hand_strand
        other = hand.start.body if hand.end.body == "hand" else hand.end.body
        toward_load = 1 if system.hand.station > system.body(other).station else -1
        signs = {"redirect": -1}  # of the complex system: both its strands lead towards the anchor
        anchors = sum(signs.get(n, 1) * band.low for n, band in result.anchors.items())
        assert anchors == pytest.approx(LOAD + toward_load * result.hand_pull.low)


def test_an_angle_makes_the_anchors_pull_a_vector_sum() -> None:
    for angle in (0.0, 0.6, math.pi / 2, 2.5, math.pi):
        ropes = (Rope("rope", (tied("load"), over("anchor", angle=angle), tied("hand"))),)
        result = forces(whip(ropes=ropes), "hauling", load=LOAD, efficiency=1.0)
        expected = redirect_resultant(strand_tension=LOAD, strand_angle=angle)
        assert result.anchors["anchor"].low == pytest.approx(expected, abs=1e-9)
        assert result.connectors["rope over anchor"].low == pytest.approx(expected, abs=1e-9)
        rubbing = forces(whip(ropes=ropes), "hauling", load=LOAD, efficiency=0.8)
        hand = LOAD / 0.8
        sides = np.array([LOAD + hand * math.cos(angle), hand * math.sin(angle)])
        assert rubbing.anchors["anchor"].low == pytest.approx(np.linalg.norm(sides))
        counted = count_tensions(whip(ropes=ropes), "hauling")
        symbolic = float(counted.connector(1).subs(counted.symbols["eta"], 0.8))
        assert symbolic * hand == pytest.approx(np.linalg.norm(sides))


def test_an_angled_redirect_behind_other_strands_adds_up_as_vectors() -> None:
    """3:1 with its redirect on the same anchor, led off at a right angle."""
    system = common_system("3:1", redirect=True)
    visits = list(system.ropes[0].visits)
    visits[-2] = over("anchor", angle=math.pi / 2)
    bent = System("bent", system.bodies, (Rope("main rope", tuple(visits)),))
    result = forces(bent, "holding", load=3.0, efficiency=1.0)
    assert result.anchors["anchor"].high == pytest.approx(math.hypot(3.0, 1.0))


@pytest.mark.parametrize("name", [*NAMES, "simple 7:1", "4:1 on 5:1"])
def test_symbols_and_numbers_agree(name: str) -> None:
    """The count is symbolic, the forces are a linear solve; they share no arithmetic."""
    system = common_system(name, redirect=True).with_own_efficiencies()
    values = {n: 0.97 - 0.04 * i for i, n in enumerate(system.efficiencies)}
    for way in ("hauling", "lowering"):
        counted, result = count_tensions(system, way), forces(
            system, way, load=LOAD, efficiency=values
        )  # fmt: skip
        at = {counted.symbols[n]: v for n, v in values.items()}
        assert float(counted.advantage.subs(at)) == pytest.approx(result.advantage.low, rel=1e-12)
        for tension, band in zip(counted.tensions, result.strands.values(), strict=True):
            assert float(sympy.sympify(tension).subs(at)) * result.hand_pull.low == pytest.approx(
                band.low
            )
        for i, band in enumerate(result.connectors.values()):
            pull = abs(float(sympy.sympify(counted.connector(i)).subs(at)))
            assert pull * result.hand_pull.low == pytest.approx(band.low)
        assert float(counted.efficiency.subs(at)) == pytest.approx(result.efficiency.low)


def test_arrays_give_what_single_values_give() -> None:
    system = common_system("6:1")
    loads, efficiencies = np.array([[900.0], [2000.0]]), np.array([0.7, 0.9, 1.0])
    for way in ("hauling", "holding"):
        whole = forces(system, way, load=loads, efficiency=efficiencies)
        for i in range(2):
            for j in range(3):
                one = forces(
                    system, way, load=float(loads[i, 0]), efficiency=float(efficiencies[j])
                )
                assert whole.hand_pull.high[i, j] == pytest.approx(one.hand_pull.high)
                assert whole.anchors["anchor 2"].low[i, j] == pytest.approx(
                    one.anchors["anchor 2"].low
                )
                assert isinstance(one.hand_pull.high, float)
    with pytest.raises(DomainError, match="single numbers, not arrays"):
        whole.explain()


# --- held --------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", ["2:1", "3:1", "4:1", "6:1", "piggy-back 4:1", "complex 5:1"])
def test_held_bands_contain_every_mixture_of_friction(name: str) -> None:
    """Each sheave anywhere between helping fully one way or the other, drawn at random."""
    system = common_system(name).with_own_efficiencies()
    held = forces(system, "holding", load=LOAD, efficiency=0.85)
    rng = np.random.default_rng(7)
    sheaves = len(system.sheaves)
    for _ in range(40):
        mixed = rng.uniform(0.85, 1.0, sheaves)
        part = {f"eta_{i + 1}": float(v) for i, v in enumerate(mixed)}
        for way in ("hauling", "lowering"):
            one = forces(system, way, load=LOAD, efficiency=part)
            for name_, band in one.strands.items():
                around = held.strands[name_]
                assert around.low - 1e-9 <= band.low <= around.high + 1e-9
    up = forces(system, "hauling", load=LOAD, efficiency=0.85)
    down = forces(system, "lowering", load=LOAD, efficiency=0.85)
    assert held.hand_pull.high == pytest.approx(up.hand_pull.low)
    assert held.hand_pull.low == pytest.approx(down.hand_pull.low)
    assert held.hand_pull.width > 0
    perfect = forces(system, "holding", load=LOAD, efficiency=1.0)
    assert perfect.hand_pull.width == pytest.approx(0.0, abs=1e-9)


def test_too_many_sheaves_for_a_band_are_refused() -> None:
    assert forces(common_system("simple 10:1", redirect=True), "holding", load=1.0, efficiency=0.9)
    with pytest.raises(DomainError, match="11 sheaves that may help either way; bands are worked"):
        forces(series_tensioner_system(6), "holding", load=LOAD, efficiency=0.9)


def equaliser(load_station: float = 10.0) -> System:
    """A pulley on which a rope rests without moving: both its ends go to one bar."""
    return System(
        "equaliser",
        (
            Body("load", Role.LOAD, load_station),
            Body("pulley", Role.PULLEY, 6.0),
            Body("bar", Role.PULLEY, 4.0),
            Body("hand", Role.HAND, 0.0),
        ),
        (
            Rope("sling", (tied("load"), tied("pulley"))),
            Rope("loop", (tied("bar"), over("pulley"), tied("bar"))),
            Rope("haul", (tied("bar"), tied("hand"))),
        ),
    )


def test_a_sheave_over_which_nothing_moves_may_help_either_way() -> None:
    result = forces(equaliser(), "hauling", load=LOAD, efficiency=0.8)
    assert result.hand_pull.low == pytest.approx(LOAD) and result.hand_pull.width < 1e-9
    one, other = (result.strands[f"loop: {w}"] for w in ("bar to pulley", "pulley to bar"))
    assert (one.low, one.high) == pytest.approx((LOAD / 2.25, LOAD / 1.8))
    assert (other.low, other.high) == pytest.approx((LOAD / 2.25, LOAD / 1.8))
    counted = count_tensions(equaliser(), "hauling")
    assert counted.advantage == 1 and counted.travel.flow == (0,)
    assert any("no rope moves" in step.sentence for step in counted.steps)
    assert any("solved together" in step.sentence for step in counted.steps)


def test_a_system_that_locks_is_refused() -> None:
    """The anchor's strand helps the hand by W / (e + e²) when lowering: all of W at 0.618."""
    system = System(
        "locking",
        (
            Body("anchor", Role.ANCHOR, 0.0),
            Body("load", Role.LOAD, 21.0),
            Body("grab", Role.GRAB, 6.0),
            Body("hand", Role.HAND, 2.0),
        ),
        (
            Rope(
                "rope",
                (tied("hand"), gripped("grab"), over("load"), over("grab"), tied("anchor")),
            ),
        ),
    )
    assert travel(system).ratio == 2
    golden = (math.sqrt(5) - 1) / 2
    for way in ("lowering", "holding"):
        barely = forces(system, way, load=LOAD, efficiency=golden + 1e-6)
        assert 0 < barely.hand_pull.low < 1e-5 * LOAD
        for efficiency in (golden - 1e-6, 0.5):
            with pytest.raises(DomainError) as refusal:
                forces(system, way, load=LOAD, efficiency=efficiency)
            assert str(refusal.value) == (
                f"locking, {way}: with so much friction the system can lock, so that some strand "
                "would have to push. Use better pulleys (efficiencies nearer 1) or another system."
            )
    up = forces(system, "hauling", load=LOAD, efficiency=0.5)
    assert up.hand_pull.low == pytest.approx(LOAD * (1 - 0.25 / 1.5))


# --- the series tensioner is one of them -------------------------------------------------------


@pytest.mark.parametrize("lines", [1, 2, 3, 4])
def test_the_series_tensioner_as_data(lines: int) -> None:
    from ropecalc.mechanics.tensioner import series_tensioner

    system = series_tensioner_system(lines)
    assert travel(system).ratio == 2 * lines
    for way in ("hauling", "lowering"):
        solved = forces(system, way, load=LOAD, efficiency=0.85)
        formula = series_tensioner(
            way, device_pull=solved.hand_pull.low, lines=lines, efficiency=0.85
        )
        assert formula.total.low == pytest.approx(LOAD)
        assert solved.anchors["hub"].low == pytest.approx(LOAD - solved.hand_pull.low)
        for number, line in enumerate(formula.lines, 1):
            pulley = solved.connectors[f"track line {number} tied to travelling pulley {number}"]
            assert pulley.low == pytest.approx(line.low)


def test_lines_are_counted_from_the_device_everywhere() -> None:
    """The same state told by the data, by the tensioner and by the load cells."""
    from ropecalc.mechanics.measurement import Tensioner, line_reading, strand_reading
    from ropecalc.mechanics.tensioner import series_tensioner

    system = series_tensioner_system(3)
    rope = system.ropes[0].visits
    assert [v.body for v in rope if "pulley" in v.body] == [
        "travelling pulley 1", "travelling pulley 2", "travelling pulley 3",
    ]  # fmt: skip
    assert (rope[0].body, rope[-1].body) == ("device", "hub")
    assert system.hand_strand.index == 0
    solved = forces(system, "hauling", load=LOAD, efficiency=0.85)
    whole = series_tensioner("hauling", device_pull=solved.hand_pull.low, lines=3, efficiency=0.85)
    cells, asked = Tensioner(3, 0.85), {"track_tension": LOAD, "last_move": "taken in"}
    for number in (1, 2, 3):
        line = solved.connectors[f"track line {number} tied to travelling pulley {number}"].low
        assert whole.lines[number - 1].low == pytest.approx(line)
        assert line_reading(cells, line=number, **asked).band.low == pytest.approx(line)
    for strand, band in enumerate(list(solved.strands.values())[:6], 1):
        assert whole.strands[strand - 1].low == pytest.approx(band.low)
        assert strand_reading(cells, strand=strand, **asked).band.low == pytest.approx(band.low)
    assert whole.lines[0].low > whole.lines[2].low  # taking in, the near line carries most


# --- what it says ------------------------------------------------------------------------------


def test_the_count_of_a_three_to_one_step_by_step() -> None:
    text = count_tensions(common_system("3:1"), "hauling").explain().as_text()
    assert text.splitlines()[0] == "3:1: counting tensions, hauling"
    for line in (
        "1. Count from the hand: the haul strand carries its pull. S_1 = E",
        "2. Over traveller (main rope) the rope moves into main rope: traveller to hand: the "
        "strand behind carries the efficiency times the strand ahead. S_2 = S_1*eta",
        "3. In terms of the hand's pull. S_2 = E*eta",
        "6. traveller is in balance: what pulls it one way equals what pulls it the other. "
        "S_1 + S_2 + S_3 = S_4",
        "10. The advantage is the load over the hand's pull. k_A = W/E",
        "11. The hand's pull drops out. k_A = eta^2 + eta + 1",
        "12. So this is what the hand pulls. E = W/(eta^2 + eta + 1)",
    ):
        assert line in text
    lowered = count_tensions(common_system("3:1"), "lowering").explain().as_text()
    assert "the rope moves into main rope: anchor to traveller" in lowered
    assert "S_1 = S_2*e" in lowered


def test_the_count_with_numbers_in_the_readers_units() -> None:
    counted = count_tensions(common_system("3:1"), "hauling")
    told = counted.explain(load=LOAD, efficiency=0.9)
    assert told.result == "Pull of the hand, hauling: 0.738 kN"
    assert r"0.738\,\mathrm{kN}" in told.lines[-1].numbers
    assert any("2.71" in line.numbers for line in told.lines)
    american = counted.explain(Display(force="lbf"), load=LOAD, efficiency={"eta": 0.9})
    assert american.result == "Pull of the hand, hauling: 166 lbf"
    assert counted.explain().result == "" and not any(x.numbers for x in counted.explain().lines)
    assert counted.explain(load=LOAD).result == "Pull of the hand, hauling: 0.667 kN"
    assert (
        r"\eta",
        "efficiency of the sheaves (main rope over anchor; main rope over traveller)",
    ) in (told.meanings)
    assert told.cautions and "snag" in " ".join(told.cautions)
    with pytest.raises(DomainError, match="single numbers"):
        counted.explain(load=LOAD, efficiency=np.array([0.8, 0.9]))
    with pytest.raises(DomainError, match="load"):
        counted.explain(load=-1.0, efficiency=0.9)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("way", ["hauling", "lowering", "holding"])
def test_every_system_explains_itself(name: str, way: str) -> None:
    result = forces(common_system(name, redirect=True), way, load=LOAD, efficiency=0.9)
    assert isinstance(result, Forces)
    told = result.explain()
    assert told.lines[0].is_law and told.cautions == result.cautions
    assert way.removesuffix("ing") in told.as_text() or way == "holding"
    assert "nan" not in told.as_text()
    if way == "holding":
        assert told.title == f"{name} with a redirect: held"
        assert told.result.startswith("Pull of the hand, held: ") and " to " in told.result
        assert "Hauling: the hand pulls" in told.as_text()


def test_travel_explains_itself() -> None:
    text = travel(common_system("3:1")).explain().as_text()
    assert "Let load rise by 1 m." in text
    first, *rest = travel(common_system("3:1")).explain().lines
    assert first.is_law and not any(line.is_law for line in rest)
    assert "traveller then moves 1 m towards the anchor." in text
    assert "main rope: load to traveller: stays as long." in text
    assert "main rope: traveller to anchor: 1 m shorter." in text
    assert text.endswith("rope through the hand: 3 m for 1 m of load")
    complex_ = travel(common_system("complex 5:1")).explain().as_text()
    assert "second grab then moves 1 m away from the anchor." in complex_
    assert "main rope: anchor to second grab: 1 m longer." in complex_
    half = System(
        "upside down",
        (
            BODIES[0],
            Body("anchor 2", Role.ANCHOR, 20.0),
            Body("pulley", Role.PULLEY, 6.0),
            Body("hand", Role.HAND, -3.0),
        ),
        (
            Rope("rope", (tied("anchor 2"), over("pulley"), tied("load"))),
            Rope("haul", (tied("pulley"), tied("hand"))),
        ),
    )
    assert "rope through the hand: 1/2 m for 1 m of load" in travel(half).explain().as_text()


def test_where_a_common_system_puts_its_bodies() -> None:
    """Each stage a throw and a gap behind the one before; a redirected hand on the load's side."""

    def places(name: str, **settings: bool) -> dict[str, float]:
        system = common_system(name, height=20.0, throw=4.0, gap=1.5, **settings)
        return {body.name: body.station for body in system.bodies}

    assert places("9:1") == {
        "load": 24.0, "anchor 1": 0.0, "traveller 1": 4.0, "anchor 2": -5.5, "traveller 2": -1.5,
        "hand": -7.0,
    }  # fmt: skip
    assert places("3:1", redirect=True) == {
        "load": 24.0, "anchor": 0.0, "traveller": 4.0, "hand": 4.0,
    }  # fmt: skip
    assert places("1:1") == {"load": 24.0, "hand": -1.5}
    assert places("complex 5:1") == {
        "load": 24.0, "anchor": 0.0, "second grab": 0.4, "traveller": 4.0, "hand": 5.5,
    }  # fmt: skip
    moved = places("complex 5:1", redirect=True)
    assert (moved["redirect"], moved["hand"]) == (5.5, -1.5)
    tensioner = series_tensioner_system(2, play=5.0, height=20.0)
    assert {b.name: b.station for b in tensioner.bodies} == {
        "hub": 0.0, "load": 25.0, "travelling pulley 1": 5.0, "travelling pulley 2": 5.0,
        "device": -1.0,
    }  # fmt: skip
