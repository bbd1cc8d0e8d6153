"""What a load cell reads at a named place, and what may be concluded from its reading.

::

    far line  --(o)= strand 4 - hub       Lines and strands of a tensioner in series are counted
                `-= strand 3 -(o)         from the device: strand 1 runs into it, strands 1 and 2
    near line --(o)= strand 2 -'          are the two sides of the near line's travelling pulley.
                `-= strand 1 - device

A cell measures the part that it is built into and nothing else. In a tensioner each sheave on the
way costs tension, in a direction that depends on how the rope moved last: while rope is taken in,
the strands nearer to the device carry more; after letting out, less. Handing the strand over to
the progress capture lets a little rope back. After taking in, that turns the friction round at
some sheaves and not at others, so that one reading then tells only a range; so it does where
nobody wrote down what moved last.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import (
    NOT_NEGATIVE,
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
from ropecalc.mechanics import guiding
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.friction import Band
from ropecalc.mechanics.manners import account, checked, named, one_case, said, single
from ropecalc.mechanics.tensioner import COUNTED, NEAR_LINE, line_name, whole_lines
from ropecalc.units import Display, Kind, Rounding

WRITE_DOWN = (
    "Read the cells after the strand is handed over to the progress capture, because handing over "
    "lets a little rope back. Write down with each reading where the cell is, which way the "
    "tensioner moved last, and whether the strand has been handed over since."
)
_READ = (
    "A cell that samples slowly misses peaks, and its error is a share of its full scale, not of "
    "its reading.",
    cautions.STATIC,
    cautions.AUTHORITY,
)
_TENSIONER = (
    WRITE_DOWN,
    "Sheave efficiency varies with rope, load, water and dirt: enter what you measured.",
    *_READ,
)


# --- what the weight must be -----------------------------------------------------------------


@derive(
    "Weight from the readings of the haul line and the track lines",
    given=(q.HAUL_TENSION, q.TRACK_TENSION, q.HAUL_ELEVATION, q.GROUND_DEPRESSION),
    result=q.LOAD,
    assumptions=(
        "Haul line and track lines come from the same high directional.",
        "The haul reading is that at the litter, and the track reading that of all lines together.",
        "The track lines run freely through the litter's pulley: equal tension on both sides.",
    ),
    cautions=_READ,
)
def weight_from_readings(argument: Argument) -> Step:
    """Weight W in N that the two readings and the two angles go together with."""
    haul, track, up, down, load = argument.symbols(
        q.HAUL_TENSION, q.TRACK_TENSION, q.HAUL_ELEVATION, q.GROUND_DEPRESSION, q.LOAD
    )
    sin = argument.sympy.sin
    return argument.law(
        "Upward balance: haul line and upper track legs lift, the ground legs pull down.",
        load,
        (haul + track) * sin(up) - track * sin(down),
    )


# --- errors ------------------------------------------------------------------------------------


@derive(
    "Error of a reading from the error of full scale",
    given=(q.FULL_SCALE, q.CELL_ERROR, q.READING),
    result=q.READING_ERROR,
    assumptions=("The cell's error is the same anywhere on its scale.",),
    conditions=(
        Condition(
            "The reading must lie within the full scale of the cell.",
            "Change the reading or use a larger cell.",
            lambda v: v["reading"] <= v["full_scale"],
        ),
    ),
    cautions=_READ,
    source="the definition of an error of full scale",
)
def full_scale_error(argument: Argument) -> Step:
    """Error as a share of the reading: large where a large cell reads a small force."""
    full, share, reading, error = argument.symbols(
        q.FULL_SCALE, q.CELL_ERROR, q.READING, q.READING_ERROR
    )
    either = argument.law(
        "The same error in newtons, as a share of the reading and as a share of full scale.",
        error * reading,
        share * full,
    )
    return argument.solve("Solve for the share of the reading.", either, error)


_ANGLES = (q.HAUL_ELEVATION, q.GROUND_DEPRESSION)
_SENSITIVE = (
    "For small errors of the angle; close to the straight line even a small one is large. Use "
    "tension_band there.",
    cautions.NEAR_DIRECTIONAL,
    *_READ,
)


@derive(
    "Sensitivity of the line's tension to the haul elevation",
    given=_ANGLES,
    between=(q.LOAD, q.TRACK_TENSION, q.HAUL_TENSION),
    result=q.HAUL_SENSITIVITY,
    assumptions=guiding.track_tension.assumptions,
    conditions=(guiding.LEGS_OPEN,),
    cautions=_SENSITIVE,
)
def haul_sensitivity(argument: Argument) -> Step:
    """Relative change of the tension per radian of haul elevation: negative, steeper is less."""
    up, down = argument.symbols(*_ANGLES)
    found = _sensitivity(argument, up, q.HAUL_SENSITIVITY)
    tan, cot = argument.sympy.tan, argument.sympy.cot
    return argument.rewrite("In tangent and cotangent.", found, -tan(up) - cot(up - down))


@derive(
    "Sensitivity of the line's tension to the ground depression",
    given=_ANGLES,
    between=(q.LOAD, q.TRACK_TENSION, q.HAUL_TENSION),
    result=q.GROUND_SENSITIVITY,
    assumptions=guiding.track_tension.assumptions,
    conditions=(guiding.LEGS_OPEN,),
    cautions=_SENSITIVE,
)
def ground_sensitivity(argument: Argument) -> Step:
    """Relative change of the tension per radian of ground depression."""
    up, down = argument.symbols(*_ANGLES)
    found = _sensitivity(argument, down, q.GROUND_SENSITIVITY)
    return argument.rewrite("In the cotangent.", found, argument.sympy.cot(up - down))


def _sensitivity(argument: Argument, angle: Any, wanted: Variable) -> Step:
    """The logarithmic derivative of the tension by ``angle``: its relative change per radian."""
    tension = guiding.track_tension.argue(argument)
    logarithm = argument.combine(
        "The logarithm turns a relative change into a difference.", argument.sympy.log, tension
    )
    return argument.differentiate(
        "So the slope of the logarithm by this angle is the relative change per radian.",
        logarithm,
        angle,
        argument.symbol(wanted),
    )


ANGLE_ERROR = Variable(
    "angle_error", r"\epsilon_\alpha", "error of the haul elevation", Kind.ANGLE,
    Domain(0.0, np.pi / 4), Range(np.radians(0.5), np.radians(3), np.radians(2)), in_si=True,
)  # fmt: skip
TENSION_ERROR = Variable(
    "tension_error", r"p_\mathrm{T}", "share by which the tension may be off", Kind.RATIO,
    NOT_NEGATIVE, Range(0, 1, 0.15),
)  # fmt: skip


@derive(
    "Error of the line's tension from an error of the haul elevation",
    given=(*_ANGLES, ANGLE_ERROR),
    between=(q.LOAD, q.TRACK_TENSION, q.HAUL_TENSION, q.HAUL_SENSITIVITY),
    result=TENSION_ERROR,
    assumptions=haul_sensitivity.assumptions,
    conditions=haul_sensitivity.conditions,
    cautions=_SENSITIVE,
)
def error_from_angle(argument: Argument) -> Step:
    """Share by which the tension may be off if the haul elevation may be off by a small angle."""
    slope = haul_sensitivity.argue(argument)
    change = argument.law(
        "A small error of the angle changes the tension by so many times the error in radians; a "
        "leg that is steeper than read means less tension, a flatter one more.",
        argument.symbol(TENSION_ERROR),
        -argument.symbol(q.HAUL_SENSITIVITY) * argument.symbol(ANGLE_ERROR),
    )
    put_in = argument.substitute("Put the sensitivity in.", change, slope)
    up, down, error = argument.symbols(*_ANGLES, ANGLE_ERROR)
    tan, cot = argument.sympy.tan, argument.sympy.cot
    return argument.rewrite("Gather the signs.", put_in, error * (tan(up) + cot(up - down)))


@dataclass(frozen=True)
class TensionBand:
    """The line's tension in N with angles known only within an error.

    ``most`` is None where the errors reach the straight line, so that no tension is too high.
    """

    nominal: float
    least: float
    most: float | None
    cautions: tuple[str, ...] = (cautions.NEAR_DIRECTIONAL, *_READ)

    @property
    def too_sensitive(self) -> bool:
        """Whether the errors change the tension by more than half: do not rely on the number."""
        return self.most is None or self.most > 1.5 * self.nominal

    def show(self, display: Display) -> str:
        """The band in words and in the reader's units; its ends are rounded outwards."""
        nominal = display.show(self.nominal, Kind.FORCE)
        least = display.show(self.least, Kind.FORCE, rounding=Rounding.DOWN)
        if self.most is None:
            return (
                f"{nominal}, at least {least}, and without an upper limit: within your errors the "
                "litter may be on the straight line from directional to hub. Do not use this "
                "number; change the geometry."
            )
        most = display.show(self.most, Kind.FORCE, rounding=Rounding.UP)
        text = f"{nominal} ({least} to {most} with your errors)."
        if self.too_sensitive:
            return f"{text} Too sensitive: do not use this number; change the geometry."
        return text


def tension_band(
    *,
    load: float,
    haul_elevation: float,
    ground_depression: float,
    haul_error: float,
    ground_error: float,
) -> TensionBand:
    """The line's tension where each angle may be off by its error in rad, either way (exact).

    Raises :class:`DomainError` where the angles themselves hold no litter and for negative errors.
    A haul leg is taken to be no steeper than plumb, whatever the error.
    """
    width = named(q.TURN, "haul_error", "error of the haul elevation")
    load, haul_elevation, ground_depression, up_error, down_error = single(
        (q.LOAD, load),
        (q.HAUL_ELEVATION, haul_elevation),
        (q.GROUND_DEPRESSION, ground_depression),
        (width, haul_error),
        (named(width, "ground_error", "error of the ground depression"), ground_error),
    )
    nominal = guiding.track_tension(
        load=load, haul_elevation=haul_elevation, ground_depression=ground_depression
    )
    up = np.clip([haul_elevation - up_error, haul_elevation + up_error], 1e-12, np.pi / 2)
    edge = np.pi / 2 - 1e-12
    down = np.clip([ground_depression - down_error, ground_depression + down_error], -edge, edge)
    corners = guiding.track_tension.masked(
        load=load, haul_elevation=up[:, None], ground_depression=down[None, :]
    )
    reaches_line = bool(np.ma.getmaskarray(corners).any())
    square_to_haul = float(np.clip(up[1] - np.pi / 2, down[0], down[1]))  # there it is least
    least = guiding.track_tension(
        load=load, haul_elevation=float(up[1]), ground_depression=square_to_haul
    )
    if up[1] == np.pi / 2:  # a plumb haul line carries all of the load
        least = 0.0
    most = None if reaches_line else float(corners.max())
    return TensionBand(nominal=nominal, least=least, most=most)


# --- cells in a tensioner in series ------------------------------------------------------------


@derive(
    "The line beside a cell in the device's strand, after letting out",
    given=(q.READING, q.SHEAVE_EFFICIENCY),
    between=(q.TENSION_AHEAD,),
    result=NEAR_LINE,
    assumptions=(
        "The cell is in the strand at the device; the other strand of the near line lies beyond "
        "its travelling pulley.",
        "Rope was let out last, over that pulley; both strands are parallel.",
    ),
    cautions=_TENSIONER,
    source="derived here from the tension lost at each sheave",
)
def line_let_out(argument: Argument) -> Step:
    """Tension in N of the near line if rope was let out last: the most that the reading allows."""
    reading, efficiency = argument.symbols(q.READING, q.SHEAVE_EFFICIENCY)
    ahead, line = argument.symbols(q.TENSION_AHEAD, NEAR_LINE)
    lost = argument.law(
        "Letting out, the rope ran away from the device: the strand beyond the pulley lies ahead, "
        "and the cell's strand carries only the efficiency times that.",
        reading,
        efficiency * ahead,
    )
    other = argument.solve("The strand beyond the pulley.", lost, ahead)
    both = argument.law("The line carries both strands.", line, reading + ahead)
    return argument.substitute("Put the other strand in.", both, other)


_READS = "The cell reads"
_CARRY = "All track lines together carry"


class LastMove(StrEnum):
    """What the tensioner's rope did last. There is no default anywhere.

    ``TAKEN_IN`` and ``LET_OUT`` mean that rope ran that way over every sheave, so that each
    travelling pulley moved, and that none has run back since: one value. Handing the strand over
    to the progress capture lets a little back. After taking in, that makes it ``HANDED_OVER``, a
    range, until the rope runs again; so ``TAKEN_IN`` is only for a strand that is still moving,
    or held by the hand that took it in. After letting out, handing over changes nothing.
    """

    TAKEN_IN = "taken in"
    HANDED_OVER = "handed over"
    LET_OUT = "let out"
    NOT_RECORDED = "not recorded"

    @classmethod
    def of(cls, value: str) -> "LastMove":
        """The one spelled ``value``; :class:`DomainError` names the choices if none is."""
        try:
            return cls(value)
        except ValueError:
            raise DomainError(
                f"last_move is {value!r}; it must be 'taken in', 'handed over', 'let out' or 'not "
                "recorded'. Say which way the tensioner moved last, or that its strand has been "
                "handed over to the progress capture after taking in: friction remembers it."
            ) from None

    @property
    def why(self) -> str:
        """What this says about the strands."""
        return _WHY[self]


_WHY = {
    LastMove.TAKEN_IN: (
        "Rope was taken in last, over every sheave, and the hand that took it in still holds it, "
        "so strands nearer to the device carry more. Once the strand is handed over to the "
        "progress capture, only a range is known: ask for 'handed over'."
    ),
    LastMove.HANDED_OVER: (
        "Rope was taken in, and handing the strand over to the progress capture let a little "
        "back, so friction has turned round at some sheaves and not at others."
    ),
    LastMove.LET_OUT: (
        "Rope was let out last, over every sheave, so strands nearer to the device carry less. "
        "Handing over to the progress capture lets out a little more and changes nothing. If only "
        "a little was let out, ask for 'handed over'."
    ),
    LastMove.NOT_RECORDED: (
        "Nobody wrote down which way the rope moved last, so friction at each sheave may help "
        "either way."
    ),
}


@dataclass(frozen=True)
class Tensioner:
    """A tensioner in series: number of track lines, and the efficiency of each sheave."""

    lines: int
    efficiency: float

    def __post_init__(self) -> None:
        whole_lines(self.lines)
        checked((q.SHEAVE_EFFICIENCY, self.efficiency))
        if np.ndim(self.efficiency):
            raise DomainError("efficiency is an array; give one efficiency for all sheaves.")

    @property
    def strands(self) -> int:
        """How many strands there are: two for each line."""
        return 2 * self.lines

    def check_strand(self, strand: int) -> int:
        """``strand`` if there is one of that number, counted from the device."""
        return _number("strand", strand, self.strands, "strands are counted from the device")

    def check_line(self, line: int) -> int:
        """``line`` if there is one of that number, counted from the device."""
        return _number("line", line, self.lines, "lines are counted from the device")

    def ratios(self, strand: int, last_move: LastMove, *, low: bool) -> Any:
        """Least (or greatest) tension that each strand can have over that of ``strand``.

        Handed over or not recorded, anything that friction can hold is taken to be possible.
        """
        sheaves = np.arange(1.0, self.strands + 1) - self.check_strand(strand)
        if last_move is LastMove.TAKEN_IN:
            return self.efficiency**sheaves
        if last_move is LastMove.LET_OUT:
            return self.efficiency**-sheaves
        between = np.abs(sheaves)
        return self.efficiency ** (between if low else -between)


def _number(name: str, value: int, most: int, how: str) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not 1 <= value <= most:
        raise DomainError(
            f"{name} is {value!r}; it must be a whole number from 1 to {most} ({how})."
        )
    return value


@dataclass(frozen=True)
class Inferred:
    """The range in N in which a tension lies, given another one in N and the last movement.

    ``known`` says what was given, ``given`` is its value; ``what`` says what the ``band`` is of.
    """

    what: str
    known: str
    given: Any
    last_move: LastMove
    band: Band
    cautions: tuple[str, ...] = _TENSIONER

    def explain(self, display: Display | None = None) -> Explanation:
        """The conclusion in words, for single values (not arrays)."""
        one_case(self.band.low)
        display = display or Display()
        shown = self.band.outwards(Kind.FORCE, display)
        return account(
            "What a cell in a strand tells",
            (
                said(f"{self.known} {display.show(self.given, Kind.FORCE)}."),
                said(self.last_move.why, law=True),
            ),
            f"{self.what}: {shown}",
            assumptions=("Every sheave has the same efficiency.", COUNTED),
            cautions=self.cautions,
            source="worked out here from the tension lost at each sheave",
        )


def line_from_strand(
    system: Tensioner, *, reading: Any, strand: int, line: int, last_move: str
) -> Inferred:
    """Tension of one track line from a cell in one strand (scalars or arrays of readings).

    ``strand`` and ``line`` are counted from the device; ``last_move`` is a :class:`LastMove` or its
    words. Raises :class:`DomainError` for strands,
    lines or a last movement that do not exist, and readings that are not positive.
    """
    line = system.check_line(line)
    chosen = slice(2 * line - 2, 2 * line)
    return _inferred(
        f"tension of {line_name(line, system.lines)}", system, reading, strand, last_move, chosen
    )


def total_from_strand(system: Tensioner, *, reading: Any, strand: int, last_move: str) -> Inferred:
    """Tension of all track lines together, which is the pull on the hub, from one strand's cell."""
    every = slice(None)
    return _inferred("tension of all lines together", system, reading, strand, last_move, every)


def _inferred(
    what: str, system: Tensioner, reading: Any, strand: int, last_move: str, chosen: slice
) -> Inferred:
    (reading,) = checked((q.READING, reading))
    move = LastMove.of(last_move)
    low, high = (
        reading * float(system.ratios(strand, move, low=low)[chosen].sum()) for low in (True, False)
    )
    return Inferred(what, _READS, reading, move, Band(low, high))


def strand_reading(
    system: Tensioner, *, track_tension: Any, strand: int, last_move: str
) -> Inferred:
    """What a cell in one strand reads while all track lines together carry ``track_tension`` N."""
    (total,) = checked((q.TRACK_TENSION, track_tension))
    move = LastMove.of(last_move)
    low, high = (
        total / float(system.ratios(strand, move, low=not low).sum()) for low in (True, False)
    )
    return Inferred(f"reading in strand {strand}", _CARRY, total, move, Band(low, high))


def line_reading(system: Tensioner, *, track_tension: Any, line: int, last_move: str) -> Inferred:
    """What a cell in one track line reads while all together carry ``track_tension`` N."""
    (total,) = checked((q.TRACK_TENSION, track_tension))
    move = LastMove.of(last_move)
    shares = _line_shares(system, system.check_line(line), move)
    band = Band(total * min(shares), total * max(shares))
    return Inferred(f"reading in {line_name(line, system.lines)}", _CARRY, total, move, band)


def _line_shares(system: Tensioner, line: int, move: LastMove) -> list[float]:
    """The line's shares of the total at the ends of what friction allows.

    The share is a ratio of sums of strands, so it is largest and smallest where each sheave is at
    one end of its range: all others falling (or growing) away from the line, and the line's own
    pulley either way.
    """
    if move in (LastMove.TAKEN_IN, LastMove.LET_OUT):
        strands = system.ratios(1, move, low=True)
        return [float(strands[2 * line - 2 : 2 * line].sum() / strands.sum())]
    shares = []
    for away in (system.efficiency, 1 / system.efficiency):
        for own in (system.efficiency, 1 / system.efficiency):
            nearer = sum(away**k for k in range(1, 2 * line - 1))
            further = own * sum(away**k for k in range(1, system.strands - 2 * line + 1))
            shares.append((1 + own) / (1 + own + nearer + further))
    return shares


def across_sheave(*, reading: Any, efficiency: Any, last_move: str) -> Band:
    """Tension in N beyond a sheave, from a cell on its other side (scalars or arrays).

    ``last_move`` says what the rope did at the cell: taken in, it moved towards the cell, so the
    far side carries less; let out, it moved away; handed over after taking in, anything in between.
    For a tie-off behind a directional, for instance.
    """
    reading, efficiency = checked((q.READING, reading), (q.SHEAVE_EFFICIENCY, efficiency))
    move = LastMove.of(last_move)
    less, more = reading * efficiency, reading / efficiency
    if move is LastMove.TAKEN_IN:
        return Band(less, less)
    return Band(more, more) if move is LastMove.LET_OUT else Band(less, more)


# --- a cell behind a redirect ------------------------------------------------------------------


@derive(
    "Rope tension from a cell between a redirect and its anchor",
    given=(q.READING, q.STRAND_ANGLE, q.SHEAVE_EFFICIENCY),
    between=(q.TENSION_BEHIND,),
    result=q.TENSION_AHEAD,
    assumptions=(
        "The cell carries the redirect alone, in line with the resultant of its two strands.",
        "The rope is moving, or was moving last, towards the strand that is found.",
    ),
    cautions=_READ,
)
def rope_ahead_of_redirect(argument: Argument) -> Step:
    """Tension in N of the strand that the rope moves towards; the other has the efficiency's share.

    The cell reads the resultant of both strands, not the tension of the rope. With an efficiency of
    1 both strands carry the same.
    """
    reading, angle, efficiency = argument.symbols(q.READING, q.STRAND_ANGLE, q.SHEAVE_EFFICIENCY)
    behind, ahead = argument.symbols(q.TENSION_BEHIND, q.TENSION_AHEAD)
    cos = argument.sympy.cos
    lost = argument.law("The sheave leaves its share behind it.", behind, efficiency * ahead)
    both = argument.law(
        "The cell carries the resultant of the two strands.",
        reading**2,
        ahead**2 + behind**2 + 2 * ahead * behind * cos(angle),
    )
    put_in = argument.substitute("Put the strand behind in.", both, lost)
    found = argument.solve("Solve for the strand ahead.", put_in, ahead)
    root = argument.sympy.sqrt(1 + 2 * efficiency * cos(angle) + efficiency**2)
    return argument.rewrite("Gather it.", found, reading / root)


# --- cells at named places -----------------------------------------------------------------------


class CellPlace(StrEnum):
    """Where a load cell is built in. "On the system" is no place: name the strand."""

    HAUL_LINE = "in the haul line at the litter"
    TRACK_LINE = "in one track line, between litter and rope grab"
    HUB = "between the hub and everything that pulls on it"
    STRAND = "in one strand of the tensioner"

    @property
    def sentence(self) -> str:
        """What a cell there measures."""
        return _WHAT_IT_READS[self]


_WHAT_IT_READS = {
    CellPlace.HAUL_LINE: (
        "It reads the haul tension at the litter; beyond an edge or a directional the haul team "
        "feels another."
    ),
    CellPlace.TRACK_LINE: "It reads that line alone, not its neighbours.",
    CellPlace.HUB: "It reads all lines together, whatever the friction in the tensioner.",
    CellPlace.STRAND: (
        "It reads that strand alone, which is about half of its line; the line itself is known "
        "only together with the last movement, and only as a range once the strand has been handed "
        "over after taking in."
    ),
}


def cell_reading(
    place: CellPlace,
    system: Tensioner,
    *,
    haul_tension: Any,
    track_tension: Any,
    last_move: str,
    number: int | None = None,
) -> Band:
    """What a cell at ``place`` reads, in N, for given haul tension and total track tension in N.

    ``number`` says which line or which strand, counted from the device; the other places take
    none. Raises :class:`DomainError` where it is missing or too much.
    """
    haul, track = checked((q.HAUL_TENSION, haul_tension), (q.TRACK_TENSION, track_tension))
    move = LastMove.of(last_move)
    if place in (CellPlace.HAUL_LINE, CellPlace.HUB):
        if number is not None:
            raise DomainError(f"number is {number!r}, but a cell {place} has none. Leave it out.")
        tension = haul if place is CellPlace.HAUL_LINE else track
        return Band(tension, tension)
    if number is None:
        raise DomainError(
            f"number is missing: a cell {place} needs the number of it, counted from the device."
        )
    if place is CellPlace.TRACK_LINE:
        return line_reading(system, track_tension=track, line=number, last_move=move).band
    return strand_reading(system, track_tension=track, strand=number, last_move=move).band


# --- do the cells agree? -----------------------------------------------------------------------


@dataclass(frozen=True)
class Agreement:
    """Whether haul and hub readings go with the weight that was entered (forces in N).

    ``implied`` is the weight they go with and ``band`` the range that the cells' errors allow.
    """

    load: float
    implied: float
    band: Band
    cautions: tuple[str, ...] = _READ

    @property
    def agrees(self) -> bool:
        """Whether the weight that was entered lies in the band."""
        return bool(self.band.low <= self.load <= self.band.high)

    def explain(self, display: Display | None = None) -> Explanation:
        """The comparison in words."""
        display = display or Display()
        implied, load = (display.show(v, Kind.FORCE) for v in (self.implied, self.load))
        band = self.band.outwards(Kind.FORCE, display)
        if self.agrees:
            result = (
                f"The readings go with the weight you entered, {load}. That does not prove it: any "
                f"weight from {band} would go with them too."
            )
        else:
            result = (
                f"The readings do not go with the weight you entered, {load}. Look for a wrong "
                "angle, a litter that rests on rock, a belay that carries, or a wrong weight."
            )
        return account(
            "Do the cells agree?",
            (
                said(
                    "Weight, haul tension and track tension balance upwards.",
                    r"W = (T_\mathrm{h} + T_\mathrm{t}) \cdot sin(\alpha) "
                    r"- T_\mathrm{t} \cdot sin(\beta)",
                    law=True,
                ),
                said(
                    f"The readings go with a weight of {implied}; with the cells' errors, {band}."
                ),
            ),
            result,
            assumptions=weight_from_readings.assumptions,
            cautions=self.cautions,
        )


def compare_readings(
    *,
    load: float,
    haul_reading: float,
    track_reading: float,
    haul_elevation: float,
    ground_depression: float,
    haul_cell_error: float,
    track_cell_error: float,
) -> Agreement:
    """Do the readings in N of haul line and track lines (together) go with ``load`` N?

    The cells' errors are in N, either way (full scale times its error); for several cells whose
    readings were added, add their errors. Angles in rad.
    """
    error = named(q.SIDE_PULL, "haul_cell_error", "error of the haul cell")
    load, haul, track, elevation, depression, haul_error, track_error = single(
        (q.LOAD, load),
        (named(q.HAUL_TENSION, "haul_reading", "reading of the haul cell"), haul_reading),
        (named(q.TRACK_TENSION, "track_reading", "reading of the track cells"), track_reading),
        (q.HAUL_ELEVATION, haul_elevation),
        (q.GROUND_DEPRESSION, ground_depression),
        (error, haul_cell_error),
        (named(error, "track_cell_error", "error of the track cells"), track_cell_error),
    )
    angles = {"haul_elevation": elevation, "ground_depression": depression}
    implied = weight_from_readings(haul_tension=haul, track_tension=track, **angles)
    up, down = np.sin(elevation), np.sin(depression)
    width = float(haul_error * up + track_error * abs(up - down))
    return Agreement(load=load, implied=implied, band=Band(implied - width, implied + width))
