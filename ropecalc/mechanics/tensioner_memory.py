"""What a tensioner in series remembers: every strand, while rope is moved back after a move.

At each sheave the two strands stand anywhere between η and 1/η of each other; only at one end of
that range does rope pass. So after a change of direction the tensions do not jump: one sheave
after the other comes to the other end of its range, and what a line carries depends on how far the
rope was moved back. Strands and lines stretch in proportion to what they carry; the path then
consists of straight pieces, and a sheave starts or stops turning at each corner.

Counted from the device: strands 1 and 2 are the two sides of the near line's travelling pulley.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import NOT_NEGATIVE, DomainError, Range, Variable
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.friction import Direction
from ropecalc.mechanics.manners import single
from ropecalc.mechanics.tensioner import COUNTED, DEVICE_PULL, NO_BACKUP, whole_lines
from ropecalc.units import Kind

MOVED_BACK = Variable(
    "moved_back",
    r"r_\mathrm{back}",
    "rope moved back at the device",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0, 1, 0.1),
)
ASSUMED = (
    COUNTED,
    "Every sheave has the same efficiency and both its strands are parallel.",
    "The litter and the far ends of the track lines stay where they are.",
    "Ropes stretch in proportion to their tension, and the pulleys hardly change their places.",
)
CAUTIONS = (
    "How far the rope has to be moved back depends on stretch and friction: read every line, do "
    "not count hands of rope.",
    NO_BACKUP,
    cautions.STATIC,
    cautions.AUTHORITY,
)
MOST_EFFICIENT = 0.999
"""Largest efficiency for which a tensioner's memory is worked out."""
_CLOSE = 1e-9
_OUT_OF_PROPORTION = (
    "With these lengths a line or a strand is out of all proportion to the others, and what "
    "carries what cannot be told any more. Check line_length, play and device_pull."
)
_MOST_CORNERS = 400


@dataclass(frozen=True)
class Ropes:
    """Ropes of a tensioner, SI: stiffness EA in N of lines and tensioner, lengths in m."""

    lines: int
    efficiency: float
    stiffness: float
    line_length: float
    play: float

    def __post_init__(self) -> None:
        whole_lines(self.lines)
        single(
            (q.SHEAVE_EFFICIENCY, self.efficiency),
            (q.STIFFNESS, self.stiffness),
            (q.ROPE_LENGTH, self.line_length),
            (q.PLAY, self.play),
        )
        if self.efficiency > MOST_EFFICIENT:
            raise DomainError(
                f"efficiency is {self.efficiency:g}; without friction there is nothing to "
                f"remember. Enter at most {MOST_EFFICIENT:g}."
            )

    @property
    def line_spring(self) -> float:
        """Force in N for each metre by which a travelling pulley moves."""
        return self.stiffness / self.line_length

    @property
    def strand_spring(self) -> float:
        """Force in N for each metre of rope that a strand gains or loses."""
        return self.stiffness / self.play


@dataclass(frozen=True)
class Path:
    """Strands at each corner of the way back: ``moved`` in m at the device, ``strands`` in N.

    ``strands`` has a row for each corner. Where ``slack``, the rope went slack before it was moved
    as far as was asked, and the last corner is where it does.
    """

    moved: Any
    strands: Any
    slack: bool
    assumptions: tuple[str, ...] = ASSUMED
    cautions: tuple[str, ...] = CAUTIONS

    @property
    def lines(self) -> Any:
        """Tension of every line (near line first) at each corner, in N."""
        return self.strands[:, 0::2] + self.strands[:, 1::2]

    @property
    def end(self) -> Any:
        """The strands at the end of the way, in N."""
        return self.strands[-1]


def moved_back(ropes: Ropes, *, first: str, device_pull: float, moved: float) -> Path:
    """The way of the strands while rope is moved back by ``moved`` m after a long first move.

    ``first`` is hauling (rope was taken in, until the device's strand carried ``device_pull`` N,
    and is then let out) or lowering (let out first, then taken in). Raises :class:`DomainError`
    for values out of range; holding is no move.
    """
    way = Direction.of(first)
    if way is Direction.HOLDING:
        raise DomainError(
            "first is holding; it must be hauling or lowering. Say which way the rope moved first."
        )
    pull, moved = single((DEVICE_PULL, device_pull), (MOVED_BACK, moved))
    ratio = ropes.efficiency if way is Direction.HAULING else 1 / ropes.efficiency
    strands = pull * ratio ** np.arange(2.0 * ropes.lines)
    sign = -1.0 if way is Direction.HAULING else 1.0
    corners = list(_corners(ropes, strands, float(moved), sign))
    path = np.array([strands for _, strands in corners])
    gone = np.array([done for done, _ in corners])
    return Path(gone, path, slack=bool(gone[-1] < moved - _CLOSE))


def _corners(ropes: Ropes, strands: Any, moved: float, sign: float) -> Iterator[tuple[float, Any]]:
    """Rope moved so far and strands, at each corner; ends at ``moved`` or where rope goes slack."""
    done = 0.0
    yield done, strands
    for _ in range(_MOST_CORNERS):
        if moved - done <= _CLOSE:
            return
        rates = sign * _rates(ropes, strands, sign)
        step = min(moved - done, _next_corner(ropes.efficiency, strands, rates))
        strands, done = strands + step * rates, done + step
        yield done, strands
        if strands.min() <= _CLOSE * strands.max() or strands.max() < 1e-3:
            return
    raise DomainError(_OUT_OF_PROPORTION)


def _rates(ropes: Ropes, strands: Any, sign: float) -> Any:
    """How the strands change for each metre taken in (``sign`` 1) or let out (-1), in N/m.

    A sheave at the end of its range either turns, its strands then staying in that ratio, or
    stands, if its strands move away from that end. Sheaves are turned round one at a time, the
    first that disagrees, until none does.
    """
    e = ropes.efficiency
    near, far = strands[:-1], strands[1:]
    tight = _CLOSE * strands.max()
    ends = np.where(far <= e * near + tight, 1, np.where(near <= e * far + tight, -1, 0))
    turning = np.zeros(len(ends), bool)
    for _ in range(4 ** len(ends)):
        rates, passed = _solve(ropes, ends, turning)
        rates, passed = sign * rates, sign * passed
        gap = np.where(ends == 1, rates[1:] - e * rates[:-1], rates[:-1] - e * rates[1:])
        scale = np.abs(rates).max() + 1e-12
        wrong = np.where(turning, ends * passed < -1e-9, (ends != 0) & (gap < -1e-9 * scale))
        if not wrong.any():
            return sign * rates
        first = int(np.flatnonzero(wrong)[0])
        turning[first] = not turning[first]
    raise DomainError(_OUT_OF_PROPORTION)


def _solve(ropes: Ropes, ends: Any, turning: Any) -> tuple[Any, Any]:
    """Strand rates in N/m and rope over each sheave in m/m, for each metre taken in.

    Unknown are the rope that passes each turning sheave towards the device and the way of each
    travelling pulley towards the hub. A strand carries more for rope that leaves it towards the
    device, less for rope that enters it and for its pulley's way; a line carries more for that way.
    """
    count, k = 2 * ropes.lines, ropes.strand_spring
    moving = np.flatnonzero(turning)
    size = len(moving) + ropes.lines
    strands = np.zeros((count, size))  # rates as multiples of the unknowns
    taken = np.zeros(count)
    taken[0] = k
    for column, sheave in enumerate(moving):
        strands[sheave, column] -= k
        strands[sheave + 1, column] += k
    for line in range(ropes.lines):
        strands[2 * line : 2 * line + 2, len(moving) + line] -= k
    left, right = np.zeros((size, size)), np.zeros(size)
    for row, sheave in enumerate(moving):
        ahead, behind = (sheave, sheave + 1) if ends[sheave] == 1 else (sheave + 1, sheave)
        left[row] = strands[behind] - ropes.efficiency * strands[ahead]
        right[row] = ropes.efficiency * taken[ahead] - taken[behind]
    for line in range(ropes.lines):
        row, pair = len(moving) + line, slice(2 * line, 2 * line + 2)
        left[row] = strands[pair].sum(axis=0)
        left[row, row] -= ropes.line_spring
        right[row] = -taken[pair].sum()
    found = np.linalg.solve(left, right)
    passed = np.zeros(count - 1)
    passed[moving] = found[: len(moving)]
    return strands @ found + taken, passed


def _next_corner(efficiency: float, strands: Any, rates: Any) -> float:
    """How far until a sheave comes to an end of its range, or a strand to nothing."""
    tight = 1e-12 * strands.max()
    ways = [np.inf]
    for gap, rate in (
        (strands[1:] - efficiency * strands[:-1], rates[1:] - efficiency * rates[:-1]),
        (strands[:-1] - efficiency * strands[1:], rates[:-1] - efficiency * rates[1:]),
        (strands, rates),
    ):
        closing = (rate < -1e-9 * (np.abs(rates).max() + 1e-12)) & (gap > tight)
        ways += list(gap[closing] / -rate[closing])
    return float(min(ways))
