"""The 2:1 in series on several track lines: one tensioner rope, and lines that share unequally.

::

     line 1      line 2 ... line n       every track line ends at a line pulley (o below);
       |           |          |          one rope runs from the hub over line pulley 1, back over
       o           o          o          a pulley at the hub, over line pulley 2, ..., and from
      / \\         / \\        / \\         line pulley n into the device
    hub  (o)-----/   (o)-...-/   device

    strands s_1 (at the hub) ... s_2n (at the device); S_1 is the track line at the tensioner's
    device, the most loaded one while rope is taken in (line n of the rope's own count)

A rope that moves over a sheave loses tension: behind it only the efficiency e of what is ahead.
Two sheaves lie between neighbouring lines. Taking in, the line at the device carries most;
letting out, the far one. Held, the lines remember what moved last: anything in between.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import (
    NOT_NEGATIVE,
    POSITIVE,
    Argument,
    Condition,
    Domain,
    DomainError,
    Explanation,
    Range,
    Step,
    Variable,
    derive,
)
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.friction import Band, Direction
from ropecalc.mechanics.manners import account, checked, said
from ropecalc.units import Display, Kind

LINES = Variable(
    "lines", "n", "number of track lines in series", Kind.RATIO, Domain(1.0, 20.0), Range(1, 4, 2)
)
EFFECTIVE_LINES = Variable(
    "effective_lines",
    r"n_\mathrm{eff}",
    "tension of all lines together over that of the most loaded line",
    Kind.RATIO,
    POSITIVE,  # at least 1 and at most the number of lines, but for rounding in the last digit
    Range(1, 4, 1.8),
)
WORST_LINE = Variable(
    "worst_line",
    "S_1",
    "tension of the line at the tensioner",
    Kind.FORCE,
    q.TRACK_TENSION.domain,
    Range(50, 5000, 900),
)


@derive(
    "Lines in series: how many lines' worth they are while rope is taken in",
    given=(q.SHEAVE_EFFICIENCY, LINES),
    between=(WORST_LINE, q.TRACK_TENSION),
    result=EFFECTIVE_LINES,
    assumptions=(
        "The track lines are one rope, tensioned at one end and made fast at the other.",
        "The rope is moving towards the tensioner (taking in) at every sheave.",
        "Two sheaves of the same efficiency lie between neighbouring lines.",
        "The litter's own pulleys turn without friction.",
    ),
    cautions=(
        "When the rope moves the other way the lines share the other way round; at rest the shares "
        "lie anywhere in between.",
        cautions.COMMON_HUB,
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    source="derived here from the tension lost at each sheave",
)
def effective_lines(argument: Argument) -> Step:
    """All track lines together over the most loaded one, while rope is taken in.

    Between 1 and the number of lines; the most loaded line is the one at the tensioner. Between
    whole numbers of lines the formula merely joins them up. Holds while the rope moves towards
    the tensioner; with an efficiency of 1 it is the number of lines.
    """
    efficiency, lines, worst = argument.symbols(q.SHEAVE_EFFICIENCY, LINES, WORST_LINE)
    together, effective = argument.symbols(q.TRACK_TENSION, EFFECTIVE_LINES)
    sp = argument.sympy
    index = sp.Symbol("k", integer=True, nonnegative=True)
    added = sp.summation(efficiency ** (2 * index), (index, 0, lines - 1)).subs(
        sp.Eq(efficiency**2, 1), sp.Eq(efficiency, 1)
    )  # sympy adds the case without friction, in which each line counts in full
    total = argument.law(
        "Each further line carries the square of the efficiency times the line before it: a "
        "geometric series, added up here.",
        together,
        worst * added,
    )
    ratio = argument.law(
        "Count all lines together in units of the most loaded one.", effective, together / worst
    )
    return argument.substitute("Put the sum in: its tension drops out.", ratio, total)


CEILING = Variable(
    "ceiling",
    r"n_\infty",
    "number of lines' worth that no number of lines exceeds",
    Kind.RATIO,
    Domain(1.0, float("inf"), low_open=True),
    Range(1.2, 20, 5),
)


@derive(
    "Lines in series: what no number of lines exceeds",
    given=(q.SHEAVE_EFFICIENCY,),
    between=(LINES, EFFECTIVE_LINES),
    result=CEILING,
    assumptions=effective_lines.assumptions,
    conditions=(
        Condition(
            "With an efficiency of 1 there is no ceiling: every further line counts in full.",
            "Enter an efficiency less than 1.",
            lambda v: v["efficiency"] < 1.0,
        ),
    ),
    cautions=effective_lines.cautions,
    source=effective_lines.source,
)
def lines_ceiling(argument: Argument) -> Step:
    """What the effective number of lines approaches as ever more lines are added.

    For efficiencies below 1; with 1 nothing bounds it.
    """
    efficiency, lines = argument.symbols(q.SHEAVE_EFFICIENCY, LINES)
    effective, ceiling = argument.symbols(EFFECTIVE_LINES, CEILING)
    power = efficiency ** (2 * lines)
    worth = argument.law(
        "Lines in series are worth this much of the most loaded one (see lines in series).",
        effective,
        effective_lines.expression.args[-1].expr,  # the branch with friction comes last
    )
    return argument.solved(
        "With ever more lines the power dies away, because the efficiency is less than 1.",
        ceiling,
        worth.equation.rhs.subs(power, 0),
    )


DEVICE_PULL = Variable(
    "device_pull",
    "P",
    "tension of the strand at the device",
    Kind.FORCE,
    q.TRACK_TENSION.domain,
    Range(100, 1500, 500),
)
PLAY = Variable(
    "play",
    "d",
    "distance of a line pulley from the hub",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0, 15, 6),
)
TAKE_IN = Variable(
    "take_in",
    r"\Delta_\mathrm{t}",
    "length by which each track line has to come in",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0, 20, 12),
)
LINE_STRETCH = Variable(
    "line_stretch",
    r"\Delta_\mathrm{s}",
    "stretch of each track line that has to be taken in as well",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0, 3, 1),
)
ROPE_TAIL = Variable(
    "rope_tail", "t", "rope beyond the device", Kind.LENGTH, NOT_NEGATIVE, Range(0, 10, 6)
)
LINE_RATE = Variable(
    "line_rate",
    "v",
    "speed at which each track line comes in, in m/s",
    Kind.RATIO,
    NOT_NEGATIVE,
    Range(0, 0.3, 0.05),
)
LINE_TARGET = Variable(
    "line_tension",
    "T",
    "tension wanted in every track line",
    Kind.FORCE,
    POSITIVE,
    Range(100, 3000, 1000),
)
SHEAVE = q.SHEAVE_EFFICIENCY
NO_BACKUP = (
    "Lines in series share a load; they do not back each other up. The tensioner rope, its "
    "tie-off, the device and the hub are single points: if one fails, every line goes slack."
)
_ASSUMED = (
    "One rope from the hub over a pulley on every track line and into the device.",
    "Every sheave has the same efficiency and both its strands are parallel.",
    "Nothing slips at grabs or in the device.",
)
_CAUTIONS = (NO_BACKUP, cautions.COMMON_HUB, cautions.STATIC, cautions.AUTHORITY)


@dataclass(frozen=True)
class SeriesTensioner:
    """The series tensioner under a device pull, in N; hauling means taking rope in.

    ``strands`` from the hub to the device; ``lines`` far to near; ``shares`` of the total;
    ``tie_off``, ``hub_pulleys`` (far to near) and ``device_pull`` are what the hub's parts carry,
    ``total`` what all lines put on the hub together. ``effective`` is the total over the most
    loaded line. Each is one value while the rope moves and a band when it is held.
    """

    direction: Direction
    efficiency: Any
    device_pull: Any
    strands: tuple[Band, ...]
    lines: tuple[Band, ...]
    shares: tuple[Band, ...]
    hub_pulleys: tuple[Band, ...]
    total: Band
    effective: Band
    cautions: tuple[str, ...] = _CAUTIONS

    @property
    def tie_off(self) -> Band:
        """What the rope's end at the hub carries."""
        return self.strands[0]

    def explain(self, display: Display | None = None) -> Explanation:
        """Line by line in words, for single values (not arrays)."""
        if np.ndim(self.total.low):
            raise DomainError(
                "an explanation takes single numbers, not arrays. Choose one pull and efficiency."
            )
        display = display or Display()
        first = {
            Direction.HAULING: "Taking in, the rope moves towards the device: each strand further "
            "from it carries the efficiency times the one before.",
            Direction.LOWERING: "Letting out, the rope moves away from the device: each strand "
            "further from it carries more, divided by the efficiency.",
            Direction.HOLDING: "Held, neighbouring strands may differ either way by up to the "
            "efficiency: the lines remember what moved last.",
        }
        lines = [said(first[self.direction], law=True)]
        for number, (line, share) in enumerate(zip(self.lines, self.shares, strict=True), 1):
            lines.append(
                said(
                    f"Line {number} carries both strands at its pulley: "
                    f"{line.show(Kind.FORCE, display)}, {_percent(share)} of all lines.",
                    f"T_{{{number}}} = s_{{{2 * number - 1}}} + s_{{{2 * number}}}",
                )
            )
        lines.append(said(f"The tied-off end carries {self.tie_off.show(Kind.FORCE, display)}."))
        for number, pull in enumerate(self.hub_pulleys, 1):
            lines.append(
                said(
                    f"The hub pulley between lines {number} and {number + 1} carries "
                    f"{pull.show(Kind.FORCE, display)}."
                )
            )
        lines.append(
            said(
                f"All lines together, and so the hub: {self.total.show(Kind.FORCE, display)}; "
                f"worth {self.effective.show(Kind.RATIO, display)} times the most loaded line."
            )
        )
        return account(
            f"Series tensioner on {len(self.lines)} lines",
            lines,
            f"{self.direction}: all lines together {self.total.show(Kind.FORCE, display)}",
            assumptions=_ASSUMED,
            cautions=self.cautions,
            source="worked out here strand by strand",
        )


def series_tensioner(
    direction: str, *, device_pull: Any, lines: int, efficiency: Any
) -> SeriesTensioner:
    """Line tensions, shares and hub loads of the series tensioner (scalars or arrays).

    ``device_pull`` N on the strand at the device, ``lines`` a whole number from 1 to 20,
    ``efficiency`` of each sheave (0 < e ≤ 1). Hauling is taking in. Raises
    :class:`DomainError` for an unknown direction or values out of range.
    """
    way = Direction.of(direction)
    count = _whole(lines)
    pull, e = checked((DEVICE_PULL, device_pull), (SHEAVE, efficiency))

    def chain(ratio: Any) -> list[Any]:
        """Strands from the hub to the device, each ``ratio`` times the next one."""
        return [pull * ratio ** (2 * count - j) for j in range(1, 2 * count + 1)]

    ends = {
        Direction.HAULING: (e, e),
        Direction.LOWERING: (1 / e, 1 / e),
        Direction.HOLDING: (e, 1 / e),
    }[way]
    low, high = (chain(ratio) for ratio in ends)
    strands = tuple(Band(a, b) for a, b in zip(low, high, strict=True))

    def added(parts: Sequence[Band]) -> Band:
        return Band(sum(p.low for p in parts), sum(p.high for p in parts))

    shares = tuple(_share(way, count, number, e) for number in range(1, count + 1))
    least = np.maximum.reduce([np.asarray(s.low) for s in shares])
    worst = np.maximum.reduce([np.asarray(s.high) for s in shares])
    most_effective = count if way is Direction.HOLDING else 1 / least
    return SeriesTensioner(
        way,
        e,
        pull,
        strands,
        tuple(added(strands[2 * i : 2 * i + 2]) for i in range(count)),
        shares,
        tuple(added(strands[2 * i + 1 : 2 * i + 3]) for i in range(count - 1)),
        added(strands),
        Band(_plain(1 / worst), _plain(most_effective)),
    )


def _share(way: Direction, count: int, number: int, e: Any) -> Band:
    """Share of line ``number`` (far to near, from 1) of all lines together.

    Held, it is largest when the strands fall off on both sides of the line and smallest when they
    rise; which of its own two strands is the higher one is tried both ways.
    """
    near, far = 2 * (count - number), 2 * (number - 1)

    def worth(inside: Any, to_far: Any, to_near: Any) -> Any:
        """The share when the line's near strand is 1 and its far strand ``inside``."""
        others = sum(to_near**k for k in range(1, near + 1))
        others = others + inside * sum(to_far**k for k in range(1, far + 1))
        return (1 + inside) / (1 + inside + others)

    if way is not Direction.HOLDING:
        inside = e if way is Direction.HAULING else 1 / e
        share = worth(inside, inside, 1 / inside)
        return Band(_plain(share), _plain(share))
    least = np.minimum(worth(e, 1 / e, 1 / e), worth(1 / e, 1 / e, 1 / e))
    most = np.maximum(worth(e, e, e), worth(1 / e, e, e))
    return Band(_plain(least), _plain(most))


@dataclass(frozen=True)
class TensionerRope:
    """Rope of a series tensioner, in m: needed altogether, and through the device."""

    needed: Any
    through_device: Any


def tensioner_rope(
    lines: int, *, least_play: Any, take_in: Any, line_stretch: Any, tail: Any
) -> TensionerRope:
    """Rope for a series tensioner on ``lines`` lines (scalars or arrays, m).

    Each line pulley must start far enough out to come in by ``take_in`` (geometry) and
    ``line_stretch``, and still end ``least_play`` from the hub; two strands run to each. Raises
    :class:`DomainError` for values out of range.
    """
    strands = 2 * _whole(lines)
    play, geometry, stretch, more = checked(
        (PLAY, least_play), (TAKE_IN, take_in), (LINE_STRETCH, line_stretch), (ROPE_TAIL, tail)
    )
    through = strands * (geometry + stretch)
    return TensionerRope(strands * play + through + more, through)


def device_feed(lines: int, *, line_rate: Any) -> Any:
    """Speed in m/s of the rope at the device when every track line comes in at ``line_rate`` m/s.

    The rate is the haul speed times the track lines' take-in per length raised
    (:func:`~ropecalc.mechanics.guiding.take_in_rate`).
    """
    strands = 2 * _whole(lines)
    (rate,) = checked((LINE_RATE, line_rate))
    return strands * rate


@dataclass(frozen=True)
class Equalising:
    """How to bring all lines to one tension: device pulls in N at the end of each move, in turn.

    Moves alternate: take in, ease, take in, ... The pulls are for line pulleys that stay where
    they are, as on track lines much stiffer than the tensioner rope. ``over_pull`` is by how much
    the near line must exceed the wanted tension in the first move: the higher value when the line
    pulleys stay, the lower one when the litter gives way so that the total stays the same.
    """

    line_tension: Any
    device_pulls: tuple[Any, ...]
    over_pull: Band
    cautions: tuple[str, ...] = (
        "Easing too far turns the imbalance round. Read every line after the strand is handed to "
        "the progress capture: handing over is a small ease, too.",
        *_CAUTIONS,
    )

    def explain(self, display: Display | None = None) -> Explanation:
        """The moves in words, for single values (not arrays)."""
        if np.ndim(self.device_pulls[0]):
            raise DomainError(
                "an explanation takes single numbers, not arrays. Choose one tension and one "
                "efficiency."
            )
        display = display or Display()
        lines = []
        for number, pull in enumerate(self.device_pulls):
            what = "Ease until" if number % 2 else "Take in until"
            done = f"line {number + 1} carries what is wanted"
            lines.append(
                said(f"{what} the device carries {display.show(pull, Kind.FORCE)}: {done}.")
            )
        more = f"{100 * self.over_pull.low:.2g} to {100 * self.over_pull.high:.2g} %"
        return account(
            f"Equalising {len(self.device_pulls)} lines",
            lines,
            f"the near line is first pulled {more} above the wanted tension",
            assumptions=(
                *_ASSUMED,
                "The line pulleys stay where they are. On stretchy lines the far ones rise a few "
                "per cent while the near one is eased.",
            ),
            cautions=self.cautions,
            source="worked out here strand by strand",
        )


def equalise(lines: int, *, line_tension: Any, efficiency: Any) -> Equalising:
    """The alternating moves after which every track line carries ``line_tension`` N.

    Each move settles one line, far to near, and turns round the friction at the pulleys nearer to
    the device; the pulleys beyond are not disturbed any more. Raises :class:`DomainError` for
    values out of range.
    """
    count = _whole(lines)
    wanted, e = checked((LINE_TARGET, line_tension), (SHEAVE, efficiency))
    pulls = []
    for number in range(1, count + 1):
        ratio = e if number % 2 else 1 / e  # strand over the next one towards the device
        near_strand = wanted / (1 + ratio)
        pulls.append(near_strand / ratio ** (2 * (count - number)))
    worth = sum(e ** (2 * k) for k in range(count))
    return Equalising(wanted, tuple(pulls), Band(count / worth - 1, e ** (-2.0 * (count - 1)) - 1))


@dataclass(frozen=True)
class LostLine:
    """After one line is lost, in m: what runs in, and the slack each other line can gain."""

    runs_in: Any
    slack: Any


def lost_line(lines: int, *, play: Any) -> LostLine:
    """What the rest gets when one of ``lines`` lines parts while its pulley is ``play`` m out.

    Its pulley runs to the hub and both its strands, 2 ``play`` of rope, run into the rest. A
    neighbour that takes all of it moves out by half of that, so a single remaining line gains
    ``play`` of slack; several share it. Raises :class:`DomainError` for a single line (nothing is
    left to hold) or values out of range.
    """
    count = _whole(lines)
    if count < 2:
        raise DomainError(
            "lines is 1; when the only line is lost nothing is left to gain slack. Take at least 2."
        )
    (far,) = checked((PLAY, play))
    return LostLine(2 * far, far)


def _whole(lines: Any) -> int:
    if isinstance(lines, bool) or not isinstance(lines, int) or not 1 <= lines <= 20:
        raise DomainError(
            f"lines is {lines!r}; it must be a whole number of track lines from 1 to 20. Change "
            "lines."
        )
    return lines


def _percent(share: Band) -> str:
    low, high = f"{100 * share.low:.0f}", f"{100 * share.high:.0f}"
    return f"{low} %" if low == high else f"{low} to {high} %"


def _plain(values: Any) -> Any:
    return float(values) if np.ndim(values) == 0 else values
