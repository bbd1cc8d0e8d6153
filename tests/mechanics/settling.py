"""Let a litter settle on elastic ropes by looking for the lowest energy: an independent oracle.

What the library derives starts from balances of forces at a point. Nothing of that is used here:
no force, no angle, no sine or cosine, no equation of equilibrium and no derivative of one. A rope
is a length and a stiffness, a place has an energy, and a general-purpose search (Nelder and Mead's
simplex, which only compares energies) walks downhill until nothing is lower. Tensions are then
read off the stretch. If the statics are right, they give the same tensions at the place where the
litter came to rest, however stiff or soft the ropes are.

Rope energy is that of a linear spring that cannot push: ``EA / (2 L) * max(0, stretch)**2``.
"""

import math
from dataclasses import dataclass

import numpy as np
from scipy.optimize import minimize

from ropecalc.mechanics.holding import Point


@dataclass(frozen=True)
class Rope:
    """An elastic rope from the litter to ``ends``: one end for a plain line.

    With two ends it is one rope that runs freely past the litter, from the first end to the
    second. ``length`` is unstretched, in m; ``stiffness`` is EA in N.
    """

    ends: tuple[Point, ...]
    length: float
    stiffness: float

    def stretch(self, x: float, z: float) -> float:
        """How much longer than unstretched it has to be, in m; 0 when it hangs slack."""
        needed = sum(math.hypot(end.x - x, end.z - z) for end in self.ends)
        return max(0.0, needed - self.length)

    def energy(self, x: float, z: float) -> float:
        """Energy stored in the stretch, in J."""
        return 0.5 * self.stiffness / self.length * self.stretch(x, z) ** 2

    def tension(self, x: float, z: float) -> float:
        """Tension that goes with the stretch (Hooke), in N."""
        return self.stiffness / self.length * self.stretch(x, z)


@dataclass(frozen=True)
class Rest:
    """Where the litter came to rest, and the tension of each rope there."""

    x: float
    z: float
    tensions: tuple[float, ...]


def settle(
    load: float, ropes: tuple[Rope, ...], start: tuple[float, float], push: float = 0.0
) -> Rest:
    """The place of least energy of a weight on ropes, with an optional steady level push.

    The energy is convex (stretch is a convex function of the place), so the lowest place is the
    only resting place and the start does not matter.
    """
    place = np.array(start, dtype=float)

    def energy(at: np.ndarray) -> float:
        x, z = float(at[0]), float(at[1])
        fallen = load * (z - place[1]) - push * (x - place[0])
        return fallen + sum(rope.energy(x, z) for rope in ropes)

    size = 1.0
    for _ in range(12):  # each round starts where the last one ended, with a smaller simplex
        corners = place + size * np.array([[0.0, 0.0], [1.0, 0.2], [-0.3, 1.0]])
        found = minimize(
            energy,
            place,
            method="Nelder-Mead",
            options={
                "initial_simplex": corners,
                "xatol": 1e-11,
                "fatol": 1e-13,
                "maxfev": 4000,
            },
        )
        moved = math.hypot(*(found.x - place))
        place = found.x
        size = min(0.3 * size, max(10 * moved, 1e-6))
        if moved < 1e-10:
            break
    x, z = float(place[0]), float(place[1])
    return Rest(x, z, tuple(rope.tension(x, z) for rope in ropes))
