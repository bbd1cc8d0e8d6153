"""The weakest part of a line against parts that are loaded one by one until one of them lets go."""

import pytest

from ropecalc.mechanics.line_margin import line_margin
from ropecalc.mechanics.strength import Component, weakest_link

GIVEN = {
    "near_line": 1500.0,
    "breaking_strength": 30_000.0,
    "termination": 0.7,
    "grab_strength": 8000.0,
    "pulley_strength": 36_000.0,
    "device_strength": 6000.0,
    "efficiency": 0.9,
}


@pytest.mark.parametrize(
    ("change", "weakest"),
    [
        ({}, "grab"),
        ({"device_strength": 3500.0}, "device"),
        ({"breaking_strength": 9000.0}, "rope"),
        ({"pulley_strength": 5000.0}, "pulley"),
    ],
)
def test_raised_in_small_steps_the_weakest_part_goes_first(
    change: dict[str, float], weakest: str
) -> None:
    given = GIVEN | change
    factor = 0.0
    while True:
        factor += 1e-3
        line = factor * given["near_line"]
        strand = line / 2
        for _ in range(60):  # the strand behind the sheave is the efficiency times the device's
            strand = line - given["efficiency"] * strand
        gone = [
            name
            for name, held, carried in (
                ("rope", given["breaking_strength"] * given["termination"], line),
                ("grab", given["grab_strength"], line),
                ("pulley", given["pulley_strength"], line),
                ("device", given["device_strength"], line / (1 + given["efficiency"])),
            )
            if carried > held
        ]
        if gone:
            break
    assert gone == [weakest]
    assert line_margin(**given) == pytest.approx(factor, abs=2e-3)


def test_it_is_that_of_the_table_of_components() -> None:
    parts = [
        Component("rope", 21_000.0, 1500.0),
        Component("grab", 8000.0, 1500.0),
        Component("pulley", 36_000.0, 1500.0),
        Component("device", 6000.0, 1500.0 / 1.9),
    ]
    link = weakest_link(parts, load_uncertainty=0.0, strength_uncertainty=0.0, required=4.0)
    assert line_margin(**GIVEN) == pytest.approx(float(link.least))
