"""Margins against published ratings and a chain that is searched by hand."""

from math import inf, nan

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ropecalc.derivation import DomainError
from ropecalc.mechanics.strength import (
    LIMITS,
    Component,
    margin,
    terminated_strength,
    weakest_link,
)
from ropecalc.units import Display

SETTINGS = settings(derandomize=True, deadline=None, max_examples=60)
EXACT = {"load_uncertainty": 0.0, "strength_uncertainty": 0.0}
strengths = st.floats(1e3, 1e5)
loads = st.floats(50, 2e4)


def chain(tension: float = 1500.0) -> list[Component]:
    """One track line in a 2:1 while rope is taken in, sheave efficiency 0.9."""
    return [
        Component("rope at its knot", terminated_strength(breaking_strength=30e3, termination=0.7),
                  tension),
        Component("rope grab", 8e3, tension),
        Component("travelling pulley", 36e3, tension),
        Component("descent-control device", 6e3, tension / 1.9),
    ]  # fmt: skip


def test_published_ratings() -> None:
    # Lysons and Mann 1967 (USFS PNW-39), as quoted in a forestry note: 79.6 kips, factor 3, 26.5
    factor = margin(strength=79.6e3, component_load=26.53e3, **EXACT)
    assert factor == pytest.approx(3.0, abs=0.005)
    # EN 1891:1998, as quoted in summaries of it: type A, 22 kN plain and 15 kN with its knots
    knotted = terminated_strength(breaking_strength=22e3, termination=0.68)
    assert knotted == pytest.approx(15e3, rel=0.005)


def test_independent_calculation_made_for_this_project() -> None:
    found = weakest_link(chain())
    assert found.least == pytest.approx(5.33, abs=0.005)
    assert found.components[found.weakest].name == "rope grab"
    assert found.margins == pytest.approx((14.0, 8e3 / 1500, 24.0, 7.6))
    assert weakest_link(chain(), load_uncertainty=0.3).least == pytest.approx(4.1, abs=0.005)


@SETTINGS
@given(strengths, loads, st.floats(0, 2), st.floats(0, 0.9))
def test_the_least_strength_holds_the_largest_load_that_many_times(
    strength: float, load: float, more: float, less: float
) -> None:
    factor = margin(
        strength=strength, component_load=load, load_uncertainty=more, strength_uncertainty=less
    )
    worst_load, worst_strength = load + more * load, strength - less * strength
    assert factor * worst_load == pytest.approx(worst_strength, rel=1e-12)
    assert factor <= margin(strength=strength, component_load=load, **EXACT) * (1 + 1e-12)


@SETTINGS
@given(st.lists(st.tuples(strengths, loads), min_size=1, max_size=6), st.floats(0, 1))
def test_the_least_is_the_one_that_fails_first(
    pairs: list[tuple[float, float]], more: float
) -> None:
    """Loads grown together until the first one reaches its strength."""
    parts = [Component(f"part {i}", *pair) for i, pair in enumerate(pairs)]
    found = weakest_link(parts, load_uncertainty=more)
    grown = found.least * (1 + more)
    reached = [load * grown / strength for strength, load in pairs]
    assert max(reached) == pytest.approx(1.0, rel=1e-9)
    assert reached[found.weakest] == pytest.approx(1.0, rel=1e-9)


def test_of_equals_the_first_is_named() -> None:
    found = weakest_link([Component("one", 10e3, 1e3), Component("two", 20e3, 2e3)])
    assert found.weakest == 0 and found.least == pytest.approx(10.0)


def test_what_is_not_loaded_does_not_govern() -> None:
    idle = Component("belay", 0.5e3, 0.0)
    found = weakest_link([idle, Component("line", 12e3, 2e3)], required=5.0)
    assert found.least == pytest.approx(6.0) and found.weakest == 1 and found.inside is True
    assert found.margins == (inf, pytest.approx(6.0))
    text = found.explain().as_text()
    assert "belay: 0.50 kN, not loaded." in text and "line: 12 kN over 2.0 kN, factor 6." in text
    assert found.explain().result.startswith("weakest: line, factor 6")
    with pytest.raises(DomainError, match=r"No component is loaded\. Give at least one the load"):
        weakest_link([idle, Component("line", 12e3, np.zeros(2))])
    with pytest.raises(DomainError, match="belay: The strength of the component is 0"):
        weakest_link([Component("belay", 0.0, 0.0), Component("line", 12e3, 2e3)])


def test_along_a_raise_a_component_may_be_idle_at_places() -> None:
    parts = [
        Component("line", 12e3, np.array([0.0, 1e3, 0.0])),
        Component("hub", 15e3, np.array([0.0, 2e3, 3e3])),
    ]
    found = weakest_link(parts, required=6.0)
    assert found.least.tolist() == [inf, 7.5, 5.0]
    assert found.weakest.tolist() == [-1, 1, 1]
    assert found.inside.tolist() == [True, True, False]
    assert found.margins[0].tolist() == [inf, 12.0, inf]


def test_along_a_raise_the_weakest_may_change() -> None:
    tension = np.array([500.0, 1500.0, 3000.0])
    parts = [Component("line", 12e3, tension), Component("hub", 15e3, np.array([1e3, 1.5e3, 2e3]))]
    found = weakest_link(parts, required=6.0)
    assert found.least.tolist() == pytest.approx([15.0, 8.0, 4.0])
    assert found.weakest.tolist() == [1, 0, 0]
    assert found.inside.tolist() == [True, True, False]
    for i in range(3):
        one = weakest_link([Component(p.name, p.strength, float(p.load[i])) for p in parts])
        assert one.least == pytest.approx(found.least[i])
        assert type(one.least) is float and type(one.weakest) is int


@pytest.mark.parametrize(
    ("required", "inside", "words"),
    [
        (5.0, True, "Inside the limit you entered, a factor of 5."),
        (8e3 / 1500, True, "Inside the limit you entered, a factor of 5.33333."),
        (5.34, False, "Outside the limit you entered, a factor of 5.34."),
        (None, None, "No limit entered."),
    ],
)
def test_against_the_factor_that_was_entered(
    required: float | None, inside: bool | None, words: str
) -> None:
    found = weakest_link(chain(), required=required)
    assert found.inside is inside
    assert found.verdict == words
    assert found.explain().result.endswith(words)


@pytest.mark.parametrize("load", [2996.0, 1549.0, 1e3, 737.0])
def test_rounding_in_the_last_digits_tips_no_verdict(load: float) -> None:
    """Made to be 6 exactly; as a number of the machine it may be 5.999999999999999."""
    part = Component("grab", load * 6 * 1.3 / 0.9, load)
    doubts = {"load_uncertainty": 0.3, "strength_uncertainty": 0.1}
    found = weakest_link([part], **doubts, required=6.0)
    assert found.inside is True
    assert (
        found.explain().result.replace("6.0.", "6.").startswith("weakest: grab, factor 6. Inside")
    )
    above = weakest_link([part], **doubts, required=6.000001)
    assert above.inside is False
    along = Component("grab", part.strength, np.array([load, 1.001 * load]))
    assert weakest_link([along], **doubts, required=6.0).inside.tolist() == [True, False]


def test_the_limit_is_said_as_it_was_entered_and_the_margin_rounded_down() -> None:
    """5.04 is not inside 5.05, whatever both are when they are rounded."""
    found = weakest_link([Component("grab", 5040.0, 1000.0)], required=5.045)
    result = found.explain().result
    assert result == "weakest: grab, factor 5.0. Outside the limit you entered, a factor of 5.045."


def test_in_words_rounded_against_the_user() -> None:
    found = weakest_link(chain(1549.0), load_uncertainty=0.25, required=5.0)
    text = found.explain().as_text()
    assert "1. Each strength is divided by that component's own load." in text
    assert "2. Loads may be higher by 0.25 of themselves and strengths lower by 0;" in text
    assert "rope grab: 8.0 kN over 1.6 kN, factor 4.1." in text  # 1.549 up, 4.13 down
    assert "descent-control device: 6.0 kN over 0.82 kN, factor 5.8." in text
    assert "weakest: rope grab, factor 4.1. Outside the limit you entered" in text
    plain = weakest_link(chain()).explain(Display(force="lbf")).as_text()
    assert "may be higher" not in plain and "1700 lbf over 340 lbf" in plain
    assert "strengths lower by 0.1;" in str(
        weakest_link(chain(), strength_uncertainty=0.1).explain()
    )
    assert found.explain().cautions == LIMITS
    assert "None is recommended here." in LIMITS[1]
    assert "working load limit" in LIMITS[0]
    assert found.explain().lines[0].is_law


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ([], "components is empty"),
        ([Component(" ", 1e3, 1e2)], "has no name"),
        ([Component("a", 1e3, 1e2), Component("a ", 1e3, 1e2)], "Two components are called “a”"),
        ([Component("pulley", 0.0, 1e2)], "pulley: The strength of the component is 0 kN"),
        ([Component("pulley", 1e3, -1.0)], "pulley: The load of that component"),
        ([Component("pulley", nan, 1e2)], "pulley: The strength of the component is not"),
        ([Component("pulley", "strong", 1e2)], "pulley: strength is 'strong'"),
    ],
)
def test_refusals(parts: list[Component], words: str) -> None:
    with pytest.raises(DomainError, match=words):
        weakest_link(parts)


def test_a_refusal_names_the_component_in_the_readers_units() -> None:
    with pytest.raises(DomainError) as refusal:
        weakest_link([Component("pulley", 1e3, -444.8221615)])
    text = refusal.value.in_units(Display(force="lbf"))
    assert text.startswith("pulley: The load of that component is −100.0 lbf;")
    assert refusal.value.keyword == "component_load"


@pytest.mark.parametrize(
    ("setting", "value"),
    [
        ("load_uncertainty", -0.1),
        ("strength_uncertainty", 1.0),
        ("strength_uncertainty", -0.1),
        ("required", 0.0),
        ("required", nan),
    ],
)
def test_settings_outside_their_domains(setting: str, value: float) -> None:
    with pytest.raises(DomainError, match=setting):
        weakest_link(chain(), **{setting: value})
