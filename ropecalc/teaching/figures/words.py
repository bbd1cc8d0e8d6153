"""Numbers as the figures print them: few digits, and none below what the model can tell."""

import math

from ropecalc.teaching.drawing import neat
from ropecalc.units import Display, Kind

_FINEST = {
    Kind.FORCE: 1.0,  # N
    Kind.LENGTH: 0.01,  # m
    Kind.ANGLE: math.radians(1.0),
    Kind.MASS: 1.0,  # kg
    Kind.RATIO: 0.01,
    Kind.SPEED: 0.01,  # m/s
    Kind.TIME: 1.0,  # s
}


def say(display: Display, si_value: float, kind: Kind, figures: int = 3) -> str:
    """A number with its unit: ``figures`` significant ones, but no digit finer than is meant.

    Three figures are the most on a page; on a picture two are enough, unless words beside it say
    the same. A force finer than about 1 N is "less than" that.
    """
    finest = neat(display.value(_FINEST[kind], kind))
    size = abs(display.value(si_value, kind))
    if size < finest / 2:
        zero = display.show(0.0, kind)
        if size < 1e-9 * finest or kind is Kind.ANGLE:
            return zero
        return "less than " + display.show(display.si(finest, kind), kind, 1)
    finer = math.floor(math.log10(size)) - math.floor(math.log10(finest)) + 1
    return display.show(si_value, kind, max(1, min(figures, finer)))
