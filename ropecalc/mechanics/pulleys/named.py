"""Common pulley systems by the names the trade uses, built from data like any other.

Stage by stage: a traveller (a grab on the load's own rope, or a pulley tied to it) is pulled by
n strands; the next stage pulls the haul strand of the one before. Each stage has an anchor of its
own, placed one gap and one throw further back, so that nothing collides before its throw is over.
"""

import re
from dataclasses import dataclass, field
from types import MappingProxyType

from ropecalc.derivation import DomainError
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named, single
from ropecalc.mechanics.pulleys.system import Body, Role, Rope, System, Visit, gripped, over, tied
from ropecalc.mechanics.tensioner import whole_lines

_STAGES = MappingProxyType(
    {
        "1:1": (1,),
        "2:1": (2,),
        "3:1": (3,),
        "4:1": (4,),
        "5:1": (5,),
        "6:1": (3, 2),
        "9:1": (3, 3),
    }
)
_COMPLEX = "complex 5:1"
_EXAMPLES = "“3:1”, “6:1”, “2:1 on 3:1”, “piggy-back 4:1”, “complex 5:1”"


def common_systems() -> tuple[str, ...]:
    """The names that :func:`common_system` knows; besides "n:1 on m:1" for n and m up to 9."""
    return (*_STAGES, "2:1 on 3:1", "3:1 on 2:1", "piggy-back 4:1", _COMPLEX)


def common_system(
    name: str, *, redirect: bool = False, height: float = 30.0, throw: float = 4.0, gap: float = 1.0
) -> System:
    """The system the trade calls ``name``.

    ``"4:1"`` and the like are simple; ``"6:1"`` is a 2:1 pulling on a 3:1, ``"9:1"`` a 3:1 on a
    3:1, ``"piggy-back 4:1"`` a 2:1 on a 2:1, ``"simple n:1"`` has n strands at one traveller (n up
    to 10), ``"n:1 on m:1"`` is any two simple ones, and
    ``"complex 5:1"`` a 3:1 whose haul strand turns back at a grab on the strand between anchor and
    traveller. With ``redirect`` the haul strand turns once more at the last anchor.

    ``height`` m is the distance of the load beyond the first traveller's start, ``throw`` m the
    traveller's room to its anchor, ``gap`` m the room behind an anchor. Raises
    :class:`DomainError` for a name or a length that makes no sense.
    """
    high, far, behind = single(
        *(
            (named(q.CLEARANCE, n, m), value)
            for n, m, value in (
                ("height", "distance of the load beyond the traveller", height),
                ("throw", "room of the traveller up to its anchor", throw),
                ("gap", "room behind an anchor", gap),
            )
        )
    )
    text = str(name).strip().lower()
    if text == _COMPLEX:
        return _complex(high, far, behind, redirect)
    title = text + (" with a redirect" if redirect else "")
    return _stages(title, _stages_of(text), high, far, behind, redirect)


def series_tensioner_system(lines: int, *, play: float = 6.0, height: float = 30.0) -> System:
    """The 2:1 in series on ``lines`` track lines: one rope over a pulley on each line in turn.

    The rope runs from the device over travelling pulley 1, back over a pulley at the hub, over
    travelling pulley 2 and so on, and from the last one to its tied-off end at the hub. Lines are
    counted from the device: 1 is the near line. The track lines hold the load together. ``play`` m
    is each travelling pulley's distance from the hub. Raises :class:`DomainError` unless ``lines``
    is a whole number from 1 to 20.
    """
    far, high = single(
        (q.PLAY, play),
        (
            named(q.CLEARANCE, "height", "distance of the load beyond the travelling pulleys"),
            height,
        ),
    )
    numbers = range(1, whole_lines(lines) + 1)
    bodies = [Body("hub", Role.ANCHOR, 0.0), Body("load", Role.LOAD, far + high)]
    bodies += [Body(f"travelling pulley {i}", Role.PULLEY, far) for i in numbers]
    bodies.append(Body("device", Role.HAND, -1.0))
    visits: list[Visit] = [tied("device")]
    for i in numbers:
        visits += [over(f"travelling pulley {i}"), over("hub")]
    ropes = [Rope("tensioner rope", (*visits[:-1], tied("hub")))]
    ropes += [
        Rope(f"track line {i}", (tied("load"), tied(f"travelling pulley {i}"))) for i in numbers
    ]
    return System(f"series tensioner on {lines} lines", tuple(bodies), tuple(ropes))


@dataclass
class _Building:
    """Bodies and ropes of a system while it is put together."""

    bodies: list[Body]
    ropes: list[Rope] = field(default_factory=list)
    rope: str = "main rope"
    visits: list[Visit] = field(default_factory=list)

    def end_rope(self) -> None:
        self.ropes.append(Rope(self.rope, tuple(self.visits)))


def _stages_of(text: str) -> tuple[int, ...]:
    text = {"piggy-back 4:1": "2:1 on 2:1", "piggyback 4:1": "2:1 on 2:1"}.get(text, text)
    if text in _STAGES:
        return _STAGES[text]
    simple = re.fullmatch(r"simple ([1-9]|10):1", text)
    if simple:
        return (int(simple[1]),)
    match = re.fullmatch(r"([2-9]):1 on ([2-9]):1", text)
    if match:
        return int(match[2]), int(match[1])
    raise DomainError(
        f"{text!r} is not the name of a common system; known are {_EXAMPLES} and “simple n:1” "
        "for n up to 10. Describe any other as a System of bodies and ropes."
    )


def _stages(
    title: str, stages: tuple[int, ...], height: float, throw: float, gap: float, redirect: bool
) -> System:
    """``stages`` from the load's end: each pulls on the haul strand of the one before."""
    several = len(stages) > 1
    made = _Building([Body("load", Role.LOAD, throw + height)], visits=[tied("load")])
    anchor_at = 0.0
    for number, parts in enumerate(stages, 1):
        suffix = f" {number}" if several else ""
        anchor, traveller = f"anchor{suffix}", f"traveller{suffix}"
        role = Role.GRAB if parts % 2 else Role.PULLEY
        if parts > 1 or redirect:
            made.bodies.append(Body(anchor, Role.ANCHOR, anchor_at))
        if parts > 1:
            made.bodies.append(Body(traveller, role, anchor_at + throw))
        if parts % 2 and parts > 1:  # the rope itself goes on: gripped, round the anchor and back
            made.visits.append(gripped(traveller))
            made.visits += [over(anchor), over(traveller)] * (parts // 2)
        elif parts > 1:  # a rope of its own, from the anchor round the traveller
            made.visits.append(tied(traveller))
            made.end_rope()
            made.rope = f"haul rope{suffix}"
            made.visits = [tied(anchor), over(traveller)]
            made.visits += [over(anchor), over(traveller)] * (parts // 2 - 1)
        last_anchor, last_at = anchor, anchor_at
        anchor_at -= throw + gap
    hand_at = last_at - gap
    if redirect:
        made.visits.append(over(last_anchor))
        hand_at = last_at + throw
    made.visits.append(tied("hand"))
    made.end_rope()
    made.bodies.append(Body("hand", Role.HAND, hand_at))
    return System(title, tuple(made.bodies), tuple(made.ropes))


def _complex(height: float, throw: float, gap: float, redirect: bool) -> System:
    """A 3:1 whose haul strand turns back at a second grab, on the strand it came from.

    The grabs close on each other at twice the load's speed, so the second one starts close to the
    anchor; the hand pulls towards the load unless the strand is redirected.
    """
    bodies: tuple[Body, ...] = (
        Body("load", Role.LOAD, throw + height),
        Body("anchor", Role.ANCHOR, 0.0),
        Body("second grab", Role.GRAB, throw / 10),
        Body("traveller", Role.GRAB, throw),
        Body("hand", Role.HAND, -gap if redirect else throw + gap),
    )
    visits = [tied("load"), gripped("traveller"), over("anchor"), gripped("second grab")]
    visits += [over("traveller"), over("second grab")]
    if redirect:
        bodies += (Body("redirect", Role.ANCHOR, throw + gap),)
        visits.append(over("redirect"))
    title = _COMPLEX + (" with a redirect" if redirect else "")
    return System(title, bodies, (Rope("main rope", (*visits, tied("hand"))),))
