"""Where a tension changes so much with a small error of position that no number is printed."""

from typing import Any

import numpy as np

from ropecalc.mechanics.holding import SENSITIVE_SHIFT, Hold, Method, Rig, hold, too_shaky
from ropecalc.units import Display, Kind


def too_sensitive_words(display: Display) -> str:
    """What is said in place of a number."""
    shift = display.show(SENSITIVE_SHIFT, Kind.LENGTH, 1)
    return (
        f"Too sensitive here: with the litter {shift} further out or in, the force that holds it "
        "off changes by more than half, or nothing holds it any more. Do not work with a number "
        "at this place."
    )


def effort(held: Hold) -> Any:
    """What keeps the litter off, in N: the push of an attendant, else the line to the hub."""
    return held.push if held.method is Method.ATTENDANT else held.line_tension


def too_sensitive(method: Method, rig: Rig, load: float, x: Any, z: Any) -> Any:
    """Whether a litter that is held at ``x``, ``z`` (m; scalars or arrays) is held too shakily.

    False where it is not held at all.
    """
    place_x, place_z = np.broadcast_arrays(np.asarray(x, float), np.asarray(z, float))
    shifts = np.array([0.0, SENSITIVE_SHIFT, -SENSITIVE_SHIFT])
    moved = hold(method, rig, load, np.add.outer(shifts, place_x), np.stack([place_z] * 3))
    here, further, nearer = np.ma.filled(effort(moved), np.nan)
    return too_shaky(load, here, further, nearer)
