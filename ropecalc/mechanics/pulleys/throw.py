"""How far a system gets before it runs out of room, and what a whole raise then takes.

A throw ends when some strand has no more length to lose, or the haul team no more ground to walk.
Then the load is parked on the progress capture, which lets it back a little, and the system is
pulled out again. The team hauls that little once more in the next throw.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc.derivation import NOT_NEGATIVE, POSITIVE, DomainError, Explanation, Range, Variable
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import account, checked, named, one_case, said, single
from ropecalc.mechanics.pulleys.cautions import CAUTIONS
from ropecalc.mechanics.pulleys.system import System
from ropecalc.mechanics.pulleys.travel import travel
from ropecalc.mechanics.tensioner import ROPE_TAIL
from ropecalc.units import Display, Kind

_ROUNDING = 1e-9
"""A throw or a person more is not asked for because of rounding in the last digits."""


def _asked(name: str, meaning: str, default: float, zero: bool = False) -> Variable:
    domain = NOT_NEGATIVE if zero else POSITIVE
    return Variable(name, name, meaning, Kind.LENGTH, domain, Range(default, default, default))


def _called(name: str, quantity: Variable) -> Variable:
    return named(quantity, name, quantity.meaning, name)


HEIGHT = _called("height", q.RAISE_HEIGHT)
RISE = _called("rise", q.THROW_RISE)
RATIO = _called("ratio", q.TRAVEL_ADVANTAGE)
PER_PERSON = _called("per_person", q.STEADY_PULL)
CLEAR = _asked("clear", "least length a strand may keep", 0.3, zero=True)
GROUND = _asked("ground", "way the haul team can walk", 12)
TAIL = named(ROPE_TAIL, "tail", "rope kept beyond the end of each rope")


@dataclass(frozen=True)
class Room:
    """How far the load rises in one throw, in m, and what ends the throw, in words."""

    rise: float
    ends: str


@dataclass(frozen=True)
class Throws:
    """A whole raise: throws and resets, rope through the hands (m) and time (s).

    ``hauled`` is what the load is pulled up altogether: the height, and once more what each reset
    lost. Numbers are whole; for arrays they are arrays of whole numbers as floats.
    """

    height: Any
    rise: Any
    reset_loss: Any
    ratio: Any
    hand_speed: Any
    reset_time: Any
    throws: Any
    resets: Any
    hauled: Any
    rope_through_hands: Any
    time: Any
    cautions: tuple[str, ...] = CAUTIONS

    def explain(self, display: Display | None = None) -> Explanation:
        """The throws, resets, rope and time in words, for single values (not arrays)."""
        one_case(self.throws, self.time)
        display = display or Display()

        def metres(value: float) -> str:
            return display.show(value, Kind.LENGTH)

        lines = (
            said(
                "Every throw but the first gives back what the reset before it lost, so the "
                "throws must cover the height and all those losses.",
                r"N\, s - (N - 1)\, \delta \ge H",
                law=True,
            ),
            said(
                f"A throw gains {metres(self.rise)} and a reset loses {metres(self.reset_loss)}: "
                f"{metres(self.height)} take the next whole number of throws.",
                r"N = \left\lceil \frac{H - \delta}{s - \delta} \right\rceil",
                rf"N = {self.throws:.0f}",
            ),
            said(f"Between {self.throws:.0f} throws lie {self.resets:.0f} resets."),
            said(
                f"The load is pulled up {metres(self.hauled)} altogether; "
                f"{metres(self.rope_through_hands)} of rope come through the hands."
            ),
            said(
                f"At {display.show(self.hand_speed, Kind.SPEED)}, and "
                f"{display.show(self.reset_time, Kind.TIME)} for each reset, that takes "
                f"{display.show(self.time, Kind.TIME)}."
            ),
        )
        return account(
            "Throws, resets and time",
            lines,
            f"{self.throws:.0f} throws, {self.resets:.0f} resets, "
            f"{display.show(self.time, Kind.TIME)}",
            assumptions=(
                "The system is pulled out fully at each reset and every reset loses the same.",
                "Sustained pull and speed; stops, changes of team and edges are not counted.",
            ),
            cautions=self.cautions,
            source="worked out here by counting rise and loss",
        )


def room(system: System, *, clear: float, ground: float | None = None) -> Room:
    """Rise of the load before a strand of ``system`` is shorter than ``clear`` m.

    ``ground`` m is the way the haul team can walk in one throw, if that may end it first. The
    system is as its stations say, pulled out fully. Raises :class:`DomainError` if there is no
    room at all or nothing ever ends the throw.
    """
    (least,) = single((CLEAR, clear))
    moved = travel(system)
    ends = []
    for strand, growth in zip(system.strands, moved.growth, strict=True):
        if growth < 0 and strand is not system.hand_strand:
            ends.append(((strand.length - least) / float(-growth), f"{strand.name} has run in"))
    if ground is not None:
        (way,) = single((GROUND, ground))
        ends.append((way / float(moved.ratio), "the haul team has no more ground to walk"))
    if not ends:
        raise DomainError(
            f"{system.name}: no strand runs in, so nothing ends the throw. Say how far the haul "
            "team can walk (ground)."
        )
    rise, why = min(ends)
    if rise <= 0:
        raise DomainError(
            f"{system.name}: there is no room for a throw, because {why} from the start. Put the "
            "bodies further apart or reduce clear."
        )
    return Room(rise, why)


def plan_throws(
    *,
    height: Any,
    rise: Any,
    reset_loss: Any,
    ratio: Any,
    hand_speed: Any,
    reset_time: Any,
) -> Throws:
    """Throws, resets, rope through the hands and time for a raise (scalars or arrays).

    ``height`` m in throws of ``rise`` m with ``reset_loss`` m lost at each reset; ``ratio`` m of
    rope come through the hands per metre of rise, at ``hand_speed`` m/s; each reset takes
    ``reset_time`` s. Raises :class:`DomainError` when a reset loses all that a throw gains.
    """
    high, gain, loss, n, speed, pause = checked(
        (HEIGHT, height), (RISE, rise), (q.RESET_LOSS, reset_loss), (RATIO, ratio),
        (q.HAND_SPEED, hand_speed), (q.RESET_TIME, reset_time),
    )  # fmt: skip
    if np.any(np.asarray(gain) <= loss):
        raise DomainError(
            "reset_loss is at least as much as rise: each reset loses all that a throw gains. "
            "Make longer throws or reset with less loss."
        )
    exact = (np.asarray(high) - loss) / (np.asarray(gain) - loss)
    throws = np.maximum(np.ceil(exact - _ROUNDING), 1.0)
    resets = throws - 1
    hauled = high + resets * loss
    rope = n * hauled
    time = rope / speed + resets * pause
    throws, resets, hauled, rope, time = (
        float(v) if np.ndim(v) == 0 else v for v in (throws, resets, hauled, rope, time)
    )
    return Throws(high, gain, loss, n, speed, pause, throws, resets, hauled, rope, time)


def haulers(*, hand_pull: Any, per_person: Any) -> Any:
    """How many people it takes to pull ``hand_pull`` N, each steadily ``per_person`` N."""
    pull, each = checked((q.HAND_PULL, hand_pull), (PER_PERSON, per_person))
    people = np.ceil(np.asarray(pull) / each - _ROUNDING)
    return math.trunc(people) if np.ndim(people) == 0 else people


def snag_force(*, people: Any, burst_per_person: Any, advantage: Any) -> Any:
    """Force in N that ``people`` can put into a snag through ``advantage``, without feeling it.

    The load side of the system carries this if something catches while the team pulls.
    ``burst_per_person`` N is the most one person pulls for a moment: a team that is stopped jerks
    harder than the steady pull from which :func:`haulers` counts people, so measure it or take it
    high. ``advantage`` is load over hand's pull, hauling; pulleys better than their
    efficiencies say come near the advantage without friction, which is the bound. What the team's
    own movement adds when the rope stops dead is not in it.
    """
    n, each, gain = checked(
        (q.PEOPLE, people), (q.BURST, burst_per_person), (q.ADVANTAGE, advantage)
    )
    return n * each * gain


def rope_needed(system: System, *, tail: float) -> Mapping[str, float]:
    """Length in m of each rope of ``system``, pulled out as its stations say, plus ``tail`` each.

    Let the stations be those with the load at its lowest and the system fully pulled out: no
    strand other than the hand's gets longer from there than the rope that runs in elsewhere.
    """
    (more,) = single((TAIL, tail))
    lengths = {rope.name: more for rope in system.ropes}
    for strand in system.strands:
        lengths[strand.rope] += strand.length
    return lengths
