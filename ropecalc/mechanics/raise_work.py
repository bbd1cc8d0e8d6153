"""Who does the work of a raise: haul team, track team, and what a tag line's device burns.

Along a path the haul line grows shorter by what the haul team pulls in, the track lines by what
the track team takes in, and a tag line longer by what is paid out under tension. Each team's work
is its tension times that length, added up step by step.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import DomainError, Explanation, as_numbers
from ropecalc.mechanics.holding import Method, Rig, hold
from ropecalc.mechanics.manners import account, said
from ropecalc.units import Display

_STEPS = 400  # of each leg of a path; the sums settle to a thousandth long before


@dataclass(frozen=True)
class RaiseWork:
    """Work in J along a path: of the haul team, into the lines' tensioner, burnt at a tag device.

    ``lift`` is the weight times the height gained. Without friction haul and track team together
    do just that; beside a tag line the haul team does it alone, and what the tag device burns.
    """

    method: Method
    lift: float
    haul: float
    tensioner: float
    burnt: float
    cautions: tuple[str, ...] = cautions.EVERY_RESULT

    def explain(self, _: Display | None = None) -> Explanation:
        """The sums in words, in kilojoules."""
        haul, lift = (f"{value / 1000:.3g} kJ" for value in (self.haul, self.lift))
        other = self.tensioner if self.method is Method.TRACK else self.burnt
        who = (
            "the track team does at the tensioner"
            if self.method is Method.TRACK
            else "the tag line's device turns into heat"
        )
        return account(
            "Work of a raise",
            (
                said(f"Lifting the load by itself takes {lift}.", law=True),
                said(f"The haul team does {haul}; {who} {other / 1000:.3g} kJ."),
            ),
            f"work of the haul team: {haul}",
            assumptions=("Slow, without friction.",),
            cautions=self.cautions,
        )


def raise_work(
    method: str, rig: Rig, load: float, path: Sequence[tuple[float, float]]
) -> RaiseWork:
    """Work in J while a litter of weight ``load`` (N) goes along ``path``, places (x, z) in m.

    Straight between the places. ``method`` is a tag line or track lines; track and haul line from
    one directional. Raises :class:`DomainError` for fewer than two places, for an attendant, and
    where the litter cannot be held somewhere on the way.
    """
    method = Method.of(method)
    if method is Method.ATTENDANT:
        raise DomainError("An attendant has no line to the ground; give a tag line or track lines.")
    corners = np.asarray(as_numbers("path", path))
    if corners.ndim != 2 or corners.shape[1] != 2 or len(corners) < 2:
        raise DomainError("A path has at least two places, each with x and z in metres. Add one.")
    if rig.haul_directional != rig.track_directional:
        raise DomainError("Haul line and track lines must come from one directional here.")
    shares = np.linspace(0.0, 1.0, _STEPS + 1)
    legs = [a + shares[:, None] * (b - a) for a, b in pairwise(corners)]
    places = np.concatenate(legs)
    held = hold(method, rig, load, places[:, 0], places[:, 1])
    if np.ma.count_masked(held.haul_tension):
        at = int(np.argmax(np.ma.getmaskarray(held.haul_tension)))
        x, z = places[at]
        raise DomainError(
            f"The litter cannot be held {x:.3g} m out at {z:.3g} m, which is on this path. Choose "
            "another path or move the hub or the directional."
        )
    top, hub = rig.haul_directional, rig.hub
    up = np.hypot(places[:, 0] - top.x, places[:, 1] - top.z)
    down = np.hypot(places[:, 0] - hub.x, places[:, 1] - hub.z)
    line = up + down if method is Method.TRACK else down
    taken = _work(held.line_tension, line)
    return RaiseWork(
        method,
        lift=load * float(corners[-1, 1] - corners[0, 1]),
        haul=_work(held.haul_tension, up),
        tensioner=taken if method is Method.TRACK else 0.0,
        burnt=-taken if method is Method.TAG else 0.0,
    )


def _work(tension: "np.ma.MaskedArray", length: "np.ndarray") -> float:
    """Tension times rope taken in, by the trapezium rule."""
    middle = (tension[1:] + tension[:-1]) / 2
    return float(-(middle * np.diff(length)).sum())
