"""Numbers for a pulley system: the hand's pull, every strand, anchor, connector and grab.

Moving, the direction settles every tension. Held, friction at each sheave may help either way by
itself, so each tension lies in a band. As long as no combination of helping sheaves locks the
system, every tension goes steadily up or down with the ratio at each single sheave; so the ends
of its band are found among the combinations in which every sheave helps fully one way or the
other.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from typing import Any

import numpy as np

from ropecalc.derivation import DomainError, Explanation
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.friction import Band, Direction
from ropecalc.mechanics.manners import account, checked, said
from ropecalc.mechanics.pulleys.cautions import ASSUMPTIONS, CAUTIONS, SOURCE
from ropecalc.mechanics.pulleys.system import Attachment, How, Role, System, balance_row
from ropecalc.mechanics.pulleys.tensions import count_tensions, efficiencies
from ropecalc.mechanics.pulleys.travel import Travel, travel
from ropecalc.units import Display, Kind

Array = np.ndarray[Any, Any]
MOST_FREE_SHEAVES = 10
"""With more sheaves at rest there are too many combinations to try."""


@dataclass(frozen=True)
class Forces:
    """What a system's parts carry, in N, each as a :class:`Band` (one value while it moves).

    ``strands`` by strand name, ``connectors`` by attachment name: the pull of the rope there
    (both strands at a pulley, as a vector sum where it was given an angle; at a grab the
    difference that it has to grip). ``anchors``, ``pulleys`` and ``grabs`` add up everything at
    a body: at an anchor the sum of all its connectors as vectors.
    """

    system: System
    direction: Direction
    load: Any
    efficiencies: Mapping[str, Any]
    hand_pull: Band
    strands: Mapping[str, Band]
    connectors: Mapping[str, Band]
    anchors: Mapping[str, Band]
    grabs: Mapping[str, Band]
    travel: Travel
    cautions: tuple[str, ...] = CAUTIONS

    @property
    def advantage(self) -> Band:
        """Load over hand's pull; held, from the least to the most friction can make of it."""
        return Band(self.load / self.hand_pull.high, self.load / self.hand_pull.low)

    @property
    def ideal_advantage(self) -> float:
        """Without friction; the same as the travel ratio."""
        return float(self.travel.ratio)

    @property
    def efficiency(self) -> Band:
        """Hauling: work out over work in. Otherwise simply advantage over travel ratio."""
        ratio = self.ideal_advantage
        return Band(self.advantage.low / ratio, self.advantage.high / ratio)

    @cached_property
    def _single(self) -> bool:
        return all(isinstance(v, float) for v in (self.load, *self.efficiencies.values()))

    def explain(self, display: Display | None = None) -> Explanation:
        """The count with its numbers; held, the two counts' ends of the band (single values only).

        Raises :class:`DomainError` for arrays.
        """
        display = display or Display()
        if not self._single:
            raise DomainError(
                "an explanation takes single numbers, not arrays. Ask forces() for one load and "
                "one efficiency."
            )
        if self.direction is not Direction.HOLDING:
            counted = count_tensions(self.system, self.direction)
            return counted.explain(display, load=self.load, efficiency=self.efficiencies)
        lines = [
            said("Hauled, every sheave takes; lowered, every sheave gives.", law=True),
        ]
        for way in (Direction.HAULING, Direction.LOWERING):
            one = forces(self.system, way, load=self.load, efficiency=self.efficiencies)
            lines.append(said(f"{way.capitalize()}: the hand pulls "
                              f"{one.hand_pull.show(Kind.FORCE, display)}."))  # fmt: skip
        lines.append(
            said(
                "At rest each sheave may help either way, whatever moved last: anything in "
                "between holds."
            )
        )
        for name, band in self.strands.items():
            lines.append(said(f"{name}: {band.show(Kind.FORCE, display)}."))
        return account(
            f"{self.system.name}: held",
            lines,
            f"Pull of the hand, held: {self.hand_pull.show(Kind.FORCE, display)}",
            assumptions=ASSUMPTIONS,
            cautions=self.cautions,
            source=SOURCE,
        )


def forces(system: System, direction: str, *, load: Any, efficiency: Any) -> Forces:
    """What every part of ``system`` carries under ``load`` N, hauled, lowered or held.

    ``efficiency`` is one value (0.01 ≤ η ≤ 1) for every sheave or a mapping from the system's
    efficiency names to values; load and efficiencies may be arrays that broadcast. A sheave over
    which no rope moves may help either way even while the rest moves. Raises
    :class:`DomainError` for values out of range and where friction alone can hold the load.
    """
    way = Direction.of(direction)
    (weight,) = checked((q.LOAD, load))
    values = efficiencies(system, efficiency)
    moved = travel(system)
    tensions = _tensions(system, way, moved, values)
    scale = np.asarray(weight)[..., None]

    def band(share: Array) -> Band:
        carried = scale * share
        low, high = carried.min(axis=-1), carried.max(axis=-1)
        return Band(_plain(low), _plain(high))

    strands = [tensions[..., s.index] for s in system.strands]
    grabs = {b.name: system.at(b.name) for b in system.bodies if b.role is Role.GRAB}
    return Forces(
        system,
        way,
        weight,
        values,
        band(strands[system.hand_strand.index]),
        {_unique(system, s.index): band(strands[s.index]) for s in system.strands},
        {
            _label(system, i): band(_pull(system, a, strands))
            for i, a in enumerate(system.attachments)
        },
        {
            b.name: band(_size(sum(_vector(system, a, strands) for a in system.at(b.name))))
            for b in system.bodies
            if b.role is Role.ANCHOR
        },
        {
            name: band(_pull(system, next(a for a in at if a.visit.how is How.GRIPPED), strands))
            for name, at in grabs.items()
        },
        moved,
    )


def _tensions(system: System, way: Direction, moved: Travel, values: Mapping[str, Any]) -> Array:
    """Strand tensions over the load; last axes: combinations of free sheaves, strands."""
    held = way is Direction.HOLDING
    free = [i for i, flow in enumerate(moved.flow) if held or flow == 0]
    if len(free) > MOST_FREE_SHEAVES:
        raise DomainError(
            f"{system.name} has {len(free)} sheaves that may help either way; bands are worked out "
            f"for at most {MOST_FREE_SHEAVES}. Ask for hauling and lowering instead."
        )
    corners = np.array(list(product((-1, 1), repeat=len(free))), dtype=float)
    powers = np.ones((len(corners), len(system.sheaves)))
    for i, flow in enumerate(moved.flow):  # strand after over strand before is η to this power
        toward_end = (flow > 0) != (way is Direction.LOWERING)
        powers[:, i] = -1.0 if toward_end else 1.0
    powers[:, free] = corners
    shape = np.broadcast_shapes(*(np.shape(v) for v in values.values()))
    size = len(system.strands)
    matrix = np.zeros((*shape, len(corners), size, size))
    for i, sheave in enumerate(system.sheaves):
        assert sheave.before is not None and sheave.after is not None
        efficiency = np.asarray(values[sheave.visit.efficiency])[..., None]
        matrix[..., i, sheave.after.index] = 1.0
        matrix[..., i, sheave.before.index] = -(efficiency ** powers[:, i])
    right = np.zeros(size)
    for row, body in enumerate(system.free_bodies, len(system.sheaves)):
        matrix[..., row, :] = balance_row(system, body)
        right[row] = -1.0 if body.role is Role.LOAD else 0.0
    signs = np.sign(np.linalg.det(matrix))
    if np.any(signs != signs[..., :1]) or np.any(signs == 0):
        raise _locked(system, way)
    tensions: Array = np.linalg.solve(matrix, right[..., None])[..., 0]
    if np.any(tensions < -1e-9) or np.any(tensions[..., system.hand_strand.index] <= 0):
        raise _locked(system, way)
    return np.maximum(tensions, 0.0)


def _locked(system: System, way: Direction) -> DomainError:
    return DomainError(
        f"{system.name}, {way}: with so much friction the system can lock, so that some strand "
        "would have to push. Use better pulleys (efficiencies nearer 1) or another system."
    )


def _pull(system: System, attachment: Attachment, strands: list[Array]) -> Array:
    return _size(_vector(system, attachment, strands))


def _vector(system: System, attachment: Attachment, strands: list[Array]) -> Array:
    """Pull of the rope at one visit, (along the line, across it) on the last axis.

    At a pulley with an angle the strand beyond it is turned out of the line by that angle from
    the strand before it.
    """
    before, after, visit = attachment.before, attachment.after, attachment.visit
    parts = []
    for strand in (before, after):
        if strand is None:
            continue
        way = system.pull(strand, visit.body)
        across = 0.0
        along = float(way)
        if visit.angle is not None and strand is after and before is not None:
            along = system.pull(before, visit.body) * np.cos(visit.angle)
            across = np.sin(visit.angle)
        parts.append(strands[strand.index][..., None] * np.array([along, across]))
    return np.asarray(sum(parts))


def _size(vector: Any) -> Array:
    return np.asarray(np.hypot(vector[..., 0], vector[..., 1]))


def _plain(values: Array) -> Any:
    return float(values) if values.ndim == 0 else values


def _unique(system: System, index: int) -> str:
    """A strand's name, counted where several strands run alike."""
    names = [s.name for s in system.strands]
    return _counted(names, index)


def _label(system: System, index: int) -> str:
    return _counted([a.name for a in system.attachments], index)


def _counted(names: list[str], index: int) -> str:
    name = names[index]
    if names.count(name) == 1:
        return name
    return f"{name} ({names[: index + 1].count(name)})"
