"""The orderings of the bank: each order against one that no derivation has a part in."""

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise
from math import acos, asin, atan2, cos, hypot, sin, sqrt

import numpy as np
import pytest
from scipy.optimize import brentq

from ropecalc.teaching.questions.draw import Draw, candidate, draw, suits
from ropecalc.teaching.questions.ordering import LETTERS, Ordering
from ropecalc.units import STANDARD_GRAVITY, Display
from tests.teaching.questions.every import ORDERINGS, every_ordering

Numbers = Callable[[Mapping[str, float]], Sequence[float]]


def four(value: Callable[..., float], *names: str, count: int = 4) -> Numbers:
    """``value`` of each thing's own quantities."""
    return lambda v: [value(*(v[f"{n}_{i}"] for n in names)) for i in range(1, count + 1)]


def pulls(directions: Sequence[float], load: float) -> np.ndarray:
    """How hard ropes that leave at these angles above the horizontal pull to hold ``load``."""
    rows = [[cos(a) for a in directions], [sin(a) for a in directions]]
    return np.asarray(np.linalg.solve(np.array(rows), [0.0, load]))


def leg(load: float, angle: float) -> float:
    up = np.pi / 2
    return float(pulls([up - angle / 2, up + angle / 2], load)[0])


def redirect(tension: float, angle: float) -> float:
    return float(abs(tension * (1 + np.exp(1j * angle))))


def hands(load: float, strands: float, passed: float) -> float:
    """Count strand by strand from a hand that pulls with one."""
    carried, strand = 0.0, 1.0
    for _ in range(round(strands)):
        carried, strand = carried + strand, strand * passed
    return load / carried


def half_span(span: float, sag: float, load: float) -> float:
    rises = atan2(sag, span / 2)
    return float(pulls([rises, np.pi - rises], load)[0])


def line(v: Mapping[str, float], x: float, z: float, x_d: float, z_d: float, x_b: float) -> float:
    haul, ground = atan2(z_d - z, x_d - x), atan2(v["z_B"] - z, x_b - x)
    return float(pulls([haul, ground], v["load"])[1])


def stations(v: Mapping[str, float]) -> list[float]:
    places = [(v[f"x_{i}"], v[f"z_{i}"]) for i in range(1, 5)]
    return [line(v, x, z, v["x_D"], v["z_D"], v["x_B"]) for x, z in places]


def remedies(v: Mapping[str, float]) -> list[float]:
    x, z, x_d, z_d, x_b = (v[name] for name in ("x", "z", "x_D", "z_D", "x_B"))
    return [
        line(v, x, z, x_d, z_d, v["x_B_far"]),
        line(v, x, z, v["x_D_out"], z_d, x_b),
        line(v, x, z, x_d, v["z_D_high"], x_b),
        line(v, x, z, x_d, z_d, x_b),
    ]


def tensioner(v: Mapping[str, float]) -> list[float]:
    """Walk along the rope from the device, pulley by pulley."""
    found = []
    for reading, passed in (
        (v["device_pull_in"], v["efficiency"]),
        (v["device_pull_out"], 1 / v["efficiency"]),
    ):
        strands = [reading]
        for _ in range(5):
            strands.append(strands[-1] * passed)
        found += [strands[0] + strands[1], strands[4] + strands[5]]
    return found


def swing(leg_length: float, off: float) -> float:
    return sqrt(2 * STANDARD_GRAVITY * leg_length * (1 - cos(asin(off / leg_length))))


def slipped(down: float, slip: float, up: float) -> float:
    """Turn the haul leg until the ground leg has grown by a thousandth of the slip."""
    directional = np.array([-20 * cos(up), 20 * sin(up)])
    hub = np.array([50 * cos(down), -50 * sin(down)])

    def litter(turn: float) -> np.ndarray:
        return directional + 20 * np.array([cos(-up - turn), sin(-up - turn)])

    def too_long(turn: float) -> float:
        return float(np.linalg.norm(hub - litter(turn)) - 50 - slip / 1000)

    return float(-litter(brentq(too_long, 0, 0.01))[0] * 1000)


ORDER_ORACLES: dict[str, Numbers] = {
    "order-level-pulls": four(
        lambda up, tension: float((tension * np.exp(1j * up)).real),
        "rope_elevation",
        "rope_tension",
    ),
    "order-leg-tensions": four(leg, "load", "leg_angle"),
    "order-redirect-pulls": four(redirect, "strand_tension", "strand_angle"),
    "order-hand-travel": four(
        lambda strands, rise: sum([rise] * round(strands)), "advantage", "rise"
    ),
    "order-hand-pulls": lambda v: four(
        lambda strands, passed: hands(v["load"], strands, passed), "parts", "efficiency", count=3
    )(v),
    "order-snag-pulls": lambda v: four(
        lambda people, gain: sum([v["burst_per_person"] * gain] * round(people)),
        "people",
        "advantage",
    )(v),
    "order-span-tensions": four(half_span, "span", "sag", "load"),
    "order-stations": stations,
    "order-remedies-by-hub-load": remedies,
    "order-tensioner-lines": tensioner,
    "order-swings": four(swing, "haul_leg_length", "off_plumb"),
    "order-slips": four(slipped, "ground_depression", "slip", "haul_elevation"),
}


def test_each_ordering_has_an_oracle() -> None:
    keys = [ordering.key for ordering in ORDERINGS]
    assert len(set(keys)) == len(keys) >= 8
    assert set(ORDER_ORACLES) == set(keys)


def letters(drawn: Draw, numbers: Sequence[float]) -> str:
    """The letters by ``numbers`` of the things as the question lists them."""
    ordering = drawn.template
    assert isinstance(ordering, Ordering)
    offered = ordering.offered(drawn.values)
    order = sorted(range(len(numbers)), key=lambda place: numbers[place])
    return " ".join(LETTERS[offered.index(ordering.things[place])] for place in order)


@every_ordering
def test_the_order_holds_against_the_oracle(ordering: Ordering) -> None:
    for number in range(40):
        drawn = draw(ordering, "oracle", number)
        expected = ORDER_ORACLES[ordering.key](drawn.values)
        assert drawn.answer == letters(drawn, expected)
        values = [thing.by.value(drawn.values) for thing in ordering.things]
        assert values == pytest.approx(expected, rel=2e-3)


@every_ordering
def test_enough_draws_suit_and_all_that_suit_are_clear(ordering: Ordering) -> None:
    attempts = 200
    good = 0
    for attempt in range(attempts):
        values = candidate(ordering, "acceptance", 0, attempt)
        if not suits(ordering, values):
            continue
        good += 1
        found = sorted(thing.by.value(values) for thing in ordering.things)
        assert all(high > 1.08 * low for low, high in pairwise(found))
        orders = [ordering.answer(values), *ordering.mistaken(values).values()]
        assert len(set(orders)) == len(orders) == 1 + len(ordering.mistakes)
        offered = " ".join(LETTERS[: len(ordering.things)])
        assert ordering.answer(values) != offered
    assert good >= 0.12 * attempts


@every_ordering
@pytest.mark.parametrize("display", [Display(), Display("lbf", "ft", "lb")], ids=["SI", "US"])
def test_words_are_complete(ordering: Ordering, display: Display) -> None:
    for number in range(10):
        drawn = draw(ordering, "words", number)
        said = [ordering.stem, *ordering.particulars(drawn.values, display)]
        shown = {g.name: g.show(drawn.values[g.name], display) for g in ordering.givens}
        text = " ".join([ordering.stem.format(**shown), *said[1:]])
        assert "{" not in text
        for given in ordering.givens:
            assert shown[given.name] in text
    assert ordering.reason.endswith(".") and ordering.difficulty in (1, 2, 3)
    assert 2 <= len(ordering.mistakes) <= 4
    for mistake in ordering.mistakes:
        assert mistake.key == mistake.key.lower().replace(" ", "-")
        assert mistake.why.endswith(".") and not mistake.title.endswith(".")


@every_ordering
def test_rounded_numbers_lead_to_the_same_order(ordering: Ordering) -> None:
    """Who calculates with what the page shows is still right, in other units, too."""
    from ropecalc.units import parse_quantity

    display = Display("lbf", "ft", "lb")
    for number in range(20):
        drawn = draw(ordering, "shown", number)
        read = {
            g.name: parse_quantity(g.show(drawn.values[g.name], display), g.variable.kind)[0]
            for g in ordering.givens
        }
        assert letters(drawn, [thing.by.value(read) for thing in ordering.things]) == drawn.answer


def test_the_oracles_know_a_leg_at_120_degrees() -> None:
    assert leg(1000.0, 2 * np.pi / 3) == pytest.approx(1000.0)
    assert redirect(1.0, acos(-0.5)) == pytest.approx(1.0)
    assert hypot(swing(5.0, 5.0), 0) == pytest.approx(sqrt(2 * STANDARD_GRAVITY * 5))
