"""The forces on a held litter as named arrows, in the order of their closed polygon."""

import math

from ropecalc.mechanics.holding import Hold, Method
from ropecalc.teaching.drawing import HAUL, PUSH, TAG, TRACK, WEIGHT, Place, Stroke, neat
from ropecalc.units import Display, Kind

Pull = tuple[str, float, Place, Stroke]
"""Name, size in N, direction (x, z) of length 1, look."""

_LINE = {Method.ATTENDANT: PUSH, Method.TAG: TAG, Method.TRACK: TRACK}


def line_stroke(method: Method) -> Stroke:
    """How the line that holds the litter off looks."""
    return _LINE[method]


def pulls_on_litter(load: float, held: Hold) -> list[Pull]:
    """The forces on a litter of weight ``load`` (N) that is held at one point; they add to nothing.

    In the order weight, what holds off (ground leg first), haul line.
    """
    method = held.method
    pulls: list[Pull] = [("weight", load, (0.0, -1.0), WEIGHT)]
    if method is Method.ATTENDANT:
        pulls.append(("push", held.push, (1.0, 0.0), PUSH))
    else:
        ground = (math.cos(held.ground_depression), -math.sin(held.ground_depression))
        name = "tag line" if method is Method.TAG else "track, ground leg"
        pulls.append((name, held.line_tension, ground, line_stroke(method)))
    if method is Method.TRACK:
        leg = (-math.cos(held.track_elevation), math.sin(held.track_elevation))
        pulls.append(("track, upper leg", held.line_tension, leg, TRACK))
    up = (-math.cos(held.haul_elevation), math.sin(held.haul_elevation))
    pulls.append(("haul", held.haul_tension, up, HAUL))
    return pulls


def neat_force(most: float, display: Display) -> tuple[float, str]:
    """The largest neat force (N) in the reader's unit that is not above ``most``, and its words."""
    amount = display.si(neat(display.value(most, Kind.FORCE)), Kind.FORCE)
    return amount, display.show(amount, Kind.FORCE, 1)
