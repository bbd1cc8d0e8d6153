"""Numbers on the figures: few digits, nothing finer than the model, nothing that looks exact."""

from math import radians

import numpy as np
import pytest

from ropecalc.mechanics.holding import Method, Point, Rig, hold
from ropecalc.teaching.figures.sensitivity import too_sensitive
from ropecalc.teaching.figures.words import say
from ropecalc.units import Display, Kind

SI, US = Display(), Display(force="lbf", length="ft", mass="lb")


@pytest.mark.parametrize(
    ("display", "value", "kind", "figures", "words"),
    [
        (SI, 1533.4, Kind.FORCE, 3, "1.53 kN"),
        (SI, 1533.4, Kind.FORCE, 2, "1.5 kN"),
        (SI, 47.8, Kind.FORCE, 3, "48 N"),
        (SI, 0.3, Kind.FORCE, 3, "less than 1 N"),
        (SI, 0.0, Kind.FORCE, 3, "0 kN"),
        (US, 1533.4, Kind.FORCE, 3, "345 lbf"),
        (SI, 0.4, Kind.LENGTH, 3, "0.40 m"),
        (SI, 27.0, Kind.LENGTH, 3, "27.0 m"),
        (SI, radians(0.76), Kind.ANGLE, 2, "0.8°"),
        (SI, radians(148.7), Kind.ANGLE, 3, "149°"),
        (SI, radians(-16.2), Kind.ANGLE, 2, "−16°"),
    ],
)
def test_say(display: Display, value: float, kind: Kind, figures: int, words: str) -> None:
    assert say(display, value, kind, figures) == words


def test_sensitive_is_what_moving_the_litter_shows() -> None:
    rig = Rig(Point(0.3, 32.0), Point(0.3, 32.0), Point(40.0, 0.5))
    load = 1961.0
    for x in np.linspace(0.5, 6.5, 31):
        for z in (5.0, 20.0, 27.0, 30.0):
            here, out, back = (
                hold(Method.TAG, rig, load, x + shift, z) for shift in (0.0, 0.2, -0.2)
            )
            if not here.reach.possible:
                expected = False
            elif not out.reach.possible:
                expected = True
            else:
                nearer = back.line_tension if back.reach.possible else 0.0
                change = max(out.line_tension - here.line_tension, here.line_tension - nearer)
                expected = change > max(0.5 * here.line_tension, 0.1 * load)
            assert bool(too_sensitive(Method.TAG, rig, load, x, z)) is expected
