r"""The 2:1 in series on several track lines: one tensioner rope, and lines that share unequally.

::

    near line     line 2       far line      every track line ends at a travelling pulley (o below);
        |           |             |          one rope runs from the device over the near line's
        o           o             o          pulley, back over a pulley at the hub, over that of the
       / \         / \           / \         next line, ..., and from the far line's pulley to its
    device (o)----/   (o)-...---/   hub      tied-off end at the hub

Everything is counted from the device: line 1 is the near line, next to it, and line n the far line,
next to the tied-off end; strands S_1 (at the device) and S_2 are the two sides of the near line's
travelling pulley, S_2n is the tied-off end. The pulley systems and the load cells count alike.

A rope that moves over a sheave loses tension: behind it only the efficiency η of what is ahead.
Two sheaves lie between neighbouring lines. Taking in, the near line carries most; letting out, the
far line. Held, the lines remember what moved last: anything in between.
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
from ropecalc.mechanics.manners import account, checked, named, one_case, said
from ropecalc.units import Display, Kind, Rounding, plain, round_figures

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
NEAR_LINE = Variable(
    "near_line",
    "T_1",
    "tension of the near line, next to the device",
    Kind.FORCE,
    q.TRACK_TENSION.domain,
    Range(50, 5000, 900),
)


@derive(
    "Lines in series: how many lines' worth they are while rope is taken in",
    given=(q.SHEAVE_EFFICIENCY, LINES),
    between=(NEAR_LINE, q.TRACK_TENSION),
    result=EFFECTIVE_LINES,
    assumptions=(
        "The tensioner rope is one rope, pulled at the device and tied off at its other end.",
        "The rope is moving towards the device (taking in) at every sheave.",
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

    Between 1 and the number of lines; the most loaded line is the near line. Between whole numbers
    of lines the formula merely joins them up. Holds while the rope moves towards the device; with
    an efficiency of 1 it is the number of lines.
    """
    efficiency, lines, near = argument.symbols(q.SHEAVE_EFFICIENCY, LINES, NEAR_LINE)
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
        near * added,
    )
    ratio = argument.law(
        "The near line is the most loaded one: count all lines together in units of it.",
        effective,
        together / near,
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
    "tail", "t", "rope beyond the device", Kind.LENGTH, NOT_NEGATIVE, Range(0, 10, 6)
)
LINE_RATE = Variable(
    "line_rate",
    "v",
    "speed at which each track line comes in",
    Kind.SPEED,
    NOT_NEGATIVE,
    Range(0, 0.3, 0.05),
)
EACH_LINE_TENSION = Variable(
    "each_line_tension",
    r"T_\mathrm{each}",
    "tension wanted in each track line",
    Kind.FORCE,
    POSITIVE,
    Range(100, 3000, 1000),
)
NO_BACKUP = (
    "Lines in series share a load; they do not back each other up. The tensioner rope, its "
    "tie-off, the device and the hub are single points: if one fails, every line goes slack."
)
COUNTED = (
    "Lines and strands are counted from the device: the near line is line 1, next to the device; "
    "the far line is next to the tied-off end."
)
_ASSUMED = (
    "One rope from the device over a travelling pulley on each track line to its tied-off end at "
    "the hub.",
    COUNTED,
    "Every sheave has the same efficiency and both its strands are parallel.",
    "Nothing slips at grabs or in the device.",
)
_CAUTIONS = (NO_BACKUP, cautions.COMMON_HUB, cautions.STATIC, cautions.AUTHORITY)


@dataclass(frozen=True)
class SeriesTensioner:
    """The series tensioner under a device pull, in N; hauling means taking rope in.

    Everything is counted from the device: ``strands``, ``lines`` (near line first), their
    ``shares`` of the total, ``hub_pulleys``. ``device_pull``, ``hub_pulleys`` and ``tie_off`` are
    what the hub's parts carry, ``total`` what all lines put on the hub together. ``effective`` is
    the total over the most loaded line. Each is one value while the rope moves and a band when it
    is held.
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
        return self.strands[-1]

    def explain(self, display: Display | None = None) -> Explanation:
        """Line by line in words, for single values (not arrays)."""
        one_case(self.total.low)
        display = display or Display()
        first = {
            Direction.HAULING: "Taking in, the rope moves towards the device: each strand further "
            "from it carries the efficiency times the one before.",
            Direction.LOWERING: "Letting out, the rope moves away from the device: each strand "
            "further from it carries more, divided by the efficiency.",
            Direction.HOLDING: "Held, neighbouring strands may differ either way by up to the "
            "efficiency: the lines remember what moved last.",
        }
        count = len(self.lines)
        lines = [said(first[self.direction], law=True)]
        for number, (line, share) in enumerate(zip(self.lines, self.shares, strict=True), 1):
            lines.append(
                said(
                    f"{_begin(line_name(number, count))} carries both strands at its pulley: "
                    f"{line.show(Kind.FORCE, display)}, {_percent(share)} of all lines.",
                    f"T_{{{number}}} = S_{{{2 * number - 1}}} + S_{{{2 * number}}}",
                )
            )
        for number, pull in enumerate(self.hub_pulleys, 1):
            lines.append(
                said(
                    f"The hub pulley between {line_name(number, count)} and "
                    f"{line_name(number + 1, count)} carries {pull.show(Kind.FORCE, display)}."
                )
            )
        lines.append(said(f"The tied-off end carries {self.tie_off.show(Kind.FORCE, display)}."))
        lines.append(
            said(
                f"All lines together, and so the hub: {self.total.show(Kind.FORCE, display)}; "
                f"worth {self.effective.show(Kind.RATIO, display)} times the most loaded line."
            )
        )
        return account(
            f"Series tensioner on {count} lines",
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
    ``efficiency`` of each sheave (0.01 ≤ η ≤ 1). Hauling is taking in. Raises
    :class:`DomainError` for an unknown direction or values out of range.
    """
    way = Direction.of(direction)
    count = whole_lines(lines)
    pull, e = checked((DEVICE_PULL, device_pull), (q.SHEAVE_EFFICIENCY, efficiency))

    def chain(ratio: Any) -> list[Any]:
        """Strands from the device to the tied-off end, each ``ratio`` times the one before."""
        return [pull * ratio**passed for passed in range(2 * count)]

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
    """Share of line ``number`` (1 is the near line) of all lines together.

    Held, it is largest when the strands fall off on both sides of the line and smallest when they
    rise; which of its own two strands is the higher one is tried both ways.
    """
    near, far = 2 * (number - 1), 2 * (count - number)

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

    Each travelling pulley must start far enough out to come in by ``take_in`` (geometry) and
    ``line_stretch``, and still end ``least_play`` from the hub; two strands run to each. Raises
    :class:`DomainError` for values out of range.
    """
    strands = 2 * whole_lines(lines)
    least = named(q.PLAY, "least_play", "least distance of a line's travelling pulley from the hub")
    play, geometry, stretch, more = checked(
        (least, least_play), (TAKE_IN, take_in), (LINE_STRETCH, line_stretch), (ROPE_TAIL, tail)
    )
    through = strands * (geometry + stretch)
    return TensionerRope(strands * play + through + more, through)


def device_feed(lines: int, *, line_rate: Any) -> Any:
    """Speed in m/s of the rope at the device when every track line comes in at ``line_rate`` m/s.

    The rate is the haul speed times the track lines' take-in per length raised
    (:func:`~ropecalc.mechanics.guiding.take_in_rate`).
    """
    strands = 2 * whole_lines(lines)
    (rate,) = checked((LINE_RATE, line_rate))
    return strands * rate


@dataclass(frozen=True)
class Equalising:
    """How to bring each line to one tension: device pulls in N at the end of each move, in turn.

    Moves alternate: take in, ease, take in, ... The first settles the far line, the last the near
    line. The pulls are for travelling pulleys that stay where they are, as on track lines much
    stiffer than the tensioner rope. ``over_pull`` is by how much the near line must exceed the
    wanted tension in the first move: the higher value when the travelling pulleys stay, the lower
    one when the litter gives way so that the total stays the same.
    """

    each_line_tension: Any
    device_pulls: tuple[Any, ...]
    over_pull: Band
    cautions: tuple[str, ...] = (
        "Easing too far turns the imbalance round. Read every line after the strand is handed to "
        "the progress capture: handing over is a small ease, too.",
        *_CAUTIONS,
    )

    def explain(self, display: Display | None = None) -> Explanation:
        """The moves in words, for single values (not arrays)."""
        one_case(self.device_pulls[0])
        display = display or Display()
        count = len(self.device_pulls)
        lines = []
        for number, pull in enumerate(self.device_pulls):
            what = "Ease until" if number % 2 else "Take in until"
            done = f"{line_name(count - number, count)} carries what is wanted"
            lines.append(
                said(f"{what} the device carries {display.show(pull, Kind.FORCE)}: {done}.")
            )
        if self.over_pull.high > 0:
            low = plain(round_figures(100 * self.over_pull.low, 2, Rounding.DOWN))
            high = plain(round_figures(100 * self.over_pull.high, 2, Rounding.UP))
            result = (
                f"the near line is first pulled {low} to {high} % above the wanted tension: allow "
                f"for {high} % there"
            )
        else:
            result = "no over-pull is needed"
        return account(
            f"Equalising {count} lines",
            lines,
            result,
            assumptions=(
                *_ASSUMED,
                "The travelling pulleys stay where they are. On stretchy lines those further from "
                "the device rise a few per cent while the near line is eased.",
            ),
            cautions=self.cautions,
            source="worked out here strand by strand",
        )


def equalise(lines: int, *, each_line_tension: Any, efficiency: Any) -> Equalising:
    """The alternating moves after which each track line carries ``each_line_tension`` N.

    Each move settles one line, from the far line to the near line, and turns round the friction
    at the pulleys nearer to the device; the pulleys beyond are not disturbed any more. Raises
    :class:`DomainError` for values out of range.
    """
    count = whole_lines(lines)
    wanted, e = checked((EACH_LINE_TENSION, each_line_tension), (q.SHEAVE_EFFICIENCY, efficiency))
    pulls = []
    for nearer in reversed(range(count)):  # how many lines lie between the device and this one
        taking_in = (count - nearer) % 2
        ratio = e if taking_in else 1 / e  # strand over the next one towards the device
        near_strand = wanted / (1 + ratio)
        pulls.append(near_strand / ratio ** (2 * nearer))
    worth = sum(e ** (2 * k) for k in range(count))
    return Equalising(wanted, tuple(pulls), Band(count / worth - 1, e ** (-2.0 * (count - 1)) - 1))


@derive(
    "Lines in series: slack that the loss of one line gives the others",
    given=(q.PLAY, LINES),
    result=q.RELEASED,
    assumptions=(
        "The track lines are one rope, tensioned at one end; the tensioner is locked.",
        "One line parts and its travelling pulley runs in to the hub.",
        "All other lines are tight again in the end, as the litter moves in: a line with more "
        "slack than the others would hand it on to them.",
    ),
    conditions=(
        Condition(
            "At least one line must be left.",
            "Give two lines or more.",
            lambda v: v["lines"] >= 2,
        ),
    ),
    cautions=(
        "Lines tensioned by one rope are not independent: they share the load but do not back each "
        "other up. Tying back the tails limits what runs through.",
        "Friction at the sheaves can keep some of the rope from the lines further from the lost "
        "one: the litter then moves in less, but one line can hang slack while another carries "
        "more than its share.",
        cautions.REHEARSE,
        cautions.STATIC,
        cautions.AUTHORITY,
    ),
    source="derived here from the length of the tensioner rope",
)
def released_slack(argument: Argument) -> Step:
    """Slack in m that each of the other lines gains when one of n lines in series is lost.

    It does not matter which line is lost. With friction the least slack of a line, which decides
    how far the litter moves, is at most this.
    """
    play, lines, released = argument.symbols(q.PLAY, LINES, q.RELEASED)
    rope = argument.law(
        "The lost line's two strands run through to the others, and each of those needs two "
        "strands of it for its slack.",
        2 * released * (lines - 1),
        2 * play,
    )
    return argument.solve("Solve for the slack.", rope, released)


@dataclass(frozen=True)
class LostLine:
    """After one line is lost, in m: the rope that runs in, and the slack that it makes.

    ``slack`` is what each of the other lines gains (:func:`released_slack`), and so how much
    longer they are for the litter. ``most`` is what a single line gains if the others take none;
    it then hangs slack while those hold the litter where it was.
    """

    runs_in: Any
    slack: Any
    most: Any


def lost_line(lines: int, *, play: Any) -> LostLine:
    """What the rest gets when one of ``lines`` lines parts while its pulley is ``play`` m out.

    Its pulley runs to the hub and both its strands, 2 ``play`` of rope, run into the rest. Raises
    :class:`DomainError` for a single line (nothing is left to hold) or values out of range.
    """
    count = whole_lines(lines)
    if count < 2:
        raise DomainError(
            "lines is 1; when the only line is lost nothing is left to gain slack. Take at least 2."
        )
    (far,) = checked((q.PLAY, play))
    return LostLine(2 * far, released_slack(play=far, lines=count), far)


def line_name(number: int, lines: int) -> str:
    """What line ``number`` of ``lines`` is called, counted from the device."""
    if lines == 1:
        return "the only line"
    return {1: "the near line", lines: "the far line"}.get(number, f"line {number}")


def whole_lines(lines: Any) -> int:
    """``lines`` if it is a number of track lines; :class:`DomainError` otherwise."""
    if isinstance(lines, bool) or not isinstance(lines, int) or not 1 <= lines <= 20:
        raise DomainError(
            f"lines is {lines!r}; it must be a whole number of track lines from 1 to 20. Change "
            "lines."
        )
    return lines


def _begin(sentence: str) -> str:
    return sentence[0].upper() + sentence[1:]


def _percent(share: Band) -> str:
    low, high = f"{100 * share.low:.0f}", f"{100 * share.high:.0f}"
    return f"{low} %" if low == high else f"{low} to {high} %"


def _plain(values: Any) -> Any:
    return float(values) if np.ndim(values) == 0 else values
