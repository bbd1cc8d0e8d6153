"""A plan on paper: a table of stations, what governs, what is impossible, and the cautions.

Numbers are rounded against the user: forces, offsets and rope up, room to a limit down; forces
and rope to two figures at most. Unrounded numbers are in :mod:`ropecalc.planning.export`.
"""

import math
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from ropecalc import __version__
from ropecalc.mechanics.holding import SENSITIVE_SHIFT, Method
from ropecalc.planning.clearing import Cause, Demand
from ropecalc.planning.raise_plan import (
    Comparison,
    Gap,
    Guided,
    RaisePlan,
    Summary,
    Verdict,
)
from ropecalc.units import (
    Display,
    Kind,
    QuantityError,
    Rounding,
    find_unit,
    plain,
    round_figures,
    units_of,
)

WIDTH = 100
SENSITIVE_MARK = "too sens."
NOT_HELD = "not held"
OUTSIDE_MARK = "!"
NOTHING = "-"
EFFORT = {
    Method.TRACK: "track lines together",
    Method.TAG: "tag line",
    Method.ATTENDANT: "outward push",
}
_FINEST_LENGTH = {
    "m": Decimal("0.1"),
    "cm": Decimal(10),
    "mm": Decimal(100),
    "ft": Decimal("0.1"),
    "in": Decimal(1),
}
"""Offsets and rope are given in steps of this; surveyed heights ten times finer."""
_FINEST_FORCE = {"N": Decimal(10), "kN": Decimal("0.01"), "kgf": Decimal(1), "lbf": Decimal(1)}


@dataclass(frozen=True)
class Table:
    """Column heads (two lines each) and rows of text, ready to be set in any medium."""

    heads: tuple[tuple[str, str], ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Wording:
    """Numbers of a plan as text in the reader's units, rounded against the user."""

    display: Display

    def force(self, newtons: float | None, figures: int = 2) -> str:
        """A force, up; never finer than 10 N or so."""
        if newtons is None:
            return NOTHING
        value = self.display.value(newtons, Kind.FORCE)
        finest = _FINEST_FORCE[self.display.unit(Kind.FORCE).symbol]
        return plain(_coarser(value, figures, finest, Rounding.UP))

    def force_with_unit(self, newtons: float) -> str:
        """A force, up, with its unit."""
        return f"{self.force(newtons)} {self.display.unit(Kind.FORCE).symbol}"

    def limit(self, newtons: float) -> str:
        """A limit as it was entered, without idle zeros, never rounded up."""
        number, unit = self.display.show(newtons, Kind.FORCE, 4, Rounding.DOWN).split(" ")
        if "." in number:
            number = number.rstrip("0").rstrip(".")
        return f"{number} {unit}"

    def rope(self, metres: float | None, rounding: Rounding = Rounding.UP) -> str:
        """A length of rope or room: two figures, not finer than a tenth of a metre or foot.

        UP makes rope longer whichever way it runs: a negative length keeps its sign.
        """
        if metres is None:
            return NOTHING
        value = self.display.value(metres, Kind.LENGTH)
        if rounding is Rounding.UP and value < 0:
            return plain(-_coarser(-value, 2, self._finest_length, rounding))
        return plain(_coarser(value, 2, self._finest_length, rounding))

    def height(self, metres: float) -> str:
        """A height as it is surveyed, to the hundredth."""
        value = Decimal(repr(self.display.value(metres, Kind.LENGTH)))
        step = self._finest_length / 10
        return plain(round(value / step) * step + 0)

    def offset(self, metres: float) -> str:
        """A least offset, up to the next tenth."""
        value = self.display.value(metres, Kind.LENGTH)
        return plain(_to_multiple(value, self._finest_length, Rounding.UP))

    def angle(self, radians: float | None) -> str:
        """An angle to the nearest degree, or hundredth of a radian."""
        if radians is None:
            return NOTHING
        step = Decimal(1) if self.display.angle == "°" else Decimal("0.01")
        value = Decimal(repr(self.display.value(radians, Kind.ANGLE)))
        return plain(round(value / step) * step + 0)

    def demand(self, demand: Demand) -> str:
        """What needs the room, and where, e.g. ``haul line at 25.00 m``."""
        below = "below" if demand.cause is Cause.PLUMB else "at"
        return f"{demand.cause} {below} {self.height(demand.at.height)} {self.metre}"

    def why_not(self, why: Guided | Gap, demand: Demand) -> str:
        """Why a method does not hold the litter where the path meets ``demand``."""
        if why.unmet is not None:
            return (
                f"The {why.unmet.cause} would come too near the rock at "
                f"{self.height(why.unmet.at.height)} {self.metre}; for this method the litter "
                f"would have to be {self.offset(why.unmet.offset)} {self.metre} out."
            )
        return (
            f"{why.reach.sentence} An offset of {self.offset(demand.offset)} {self.metre} is "
            f"needed for: {self.demand(demand)}."
        )

    @property
    def too_sensitive(self) -> str:
        """What to do where a tension depends too much on the exact place."""
        return (
            f"Too sensitive: {self.shift} more or less offset changes this tension by more than "
            "half, or cannot be held at all. Do not use a number here; change the geometry."
        )

    @property
    def shift(self) -> str:
        """The distance by which the litter is moved to see how much that matters."""
        return self.display.show(SENSITIVE_SHIFT, Kind.LENGTH, 2)

    @property
    def _finest_length(self) -> Decimal:
        return _FINEST_LENGTH[self.display.unit(Kind.LENGTH).symbol]

    @property
    def radian(self) -> str:
        """The symbol of the reader's unit of angle."""
        return self.display.unit(Kind.ANGLE).symbol

    @property
    def metre(self) -> str:
        """The symbol of the reader's unit of length."""
        return self.display.unit(Kind.LENGTH).symbol

    @property
    def newton(self) -> str:
        """The symbol of the reader's unit of force."""
        return self.display.unit(Kind.FORCE).symbol


def _coarser(value: float, figures: int, finest: Decimal, rounding: Rounding) -> Decimal:
    """Rounded to ``figures``, or to a multiple of ``finest`` where that is coarser."""
    rounded = round_figures(value, figures, rounding)
    if rounded and Decimal(1).scaleb(rounded.adjusted() - figures + 1) < finest:
        return _to_multiple(value, finest, rounding)
    return rounded


def _to_multiple(value: float, step: Decimal, rounding: Rounding) -> Decimal:
    exact = Decimal(f"{value:.11e}") / step
    whole = math.ceil(exact) if rounding is Rounding.UP else math.floor(exact)
    return whole * step + 0


def read_display(text: str) -> Display:
    """The units listed in ``text``, e.g. ``lbf,ft``; those not listed stay kN, m and kg.

    Raises ValueError in words for a unit that is unknown or comes twice.
    """
    known = {kind: units_of(kind) for kind in (Kind.FORCE, Kind.LENGTH, Kind.MASS)}
    offered = "; ".join(", ".join(u.symbol for u in units) for units in known.values())
    chosen: dict[str, str] = {}
    for word in text.split(","):
        if not word.strip():
            raise ValueError(
                f"--units: a unit is missing in “{text}”. Write for example lbf,ft,lb."
            )
        try:
            unit = find_unit(word)
        except QuantityError:
            raise ValueError(
                f"--units: “{word.strip()}” is not a unit known here. Use "
                f"at most one of each kind: {offered}."
            ) from None
        if unit.kind not in known:
            raise ValueError(f"--units: {unit.symbol} is not a unit of force, length or mass.")
        if unit.kind.value in chosen:
            raise ValueError(f"--units: “{text}” names two units of {unit.kind}. Keep one.")
        chosen[unit.kind.value] = unit.symbol
    return Display(**chosen)


def text_report(plan: RaisePlan, display: Display | None = None) -> str:
    """The whole plan as plain text, in the units of ``display``."""
    words = Wording(display or Display())
    governs, *explained = notes(plan, words)
    parts = [
        heading(plan, words),
        _fold([governs]),
        _set(station_table(plan, words)),
        _fold(["The columns:", *(f"  {line}" for line in column_meanings(plan, words))]),
        _fold(explained),
        _fold(summary_lines(plan.summary(), words)),
        "Other ways of holding the litter, on the same path",
        _set(alternatives_table(plan, words)),
        *(_fold(summary_lines(summary, words)) for summary in plan.summaries[1:]),
        _fold(plan.cautions, "! "),
        f"Made with ropecalc {__version__} from {plan.site.source}. To be checked on site by a "
        "qualified person before use.",
    ]
    return "\n\n".join(part for part in parts if part) + "\n"


def heading(plan: RaisePlan, words: Wording) -> str:
    """What the plan is for, in a few lines."""
    site = plan.site
    mass = words.display.show(site.litter.mass, Kind.MASS, 3, Rounding.UP)
    lines = [
        f"Raise plan: {site.name}",
        f"Guided by: {plan.method.value}. Load: {mass}, weighing "
        f"{words.force(plan.load, figures=3)} {words.newton}.",
    ]
    if site.datum:
        lines.append(f"Datum: {site.datum}.")
    if site.surveyed_on:
        lines.append(f"Surveyed: {site.surveyed_on}.")
    return "\n".join(textwrap.fill(line, WIDTH) for line in lines)


def station_table(plan: RaisePlan, words: Wording) -> Table:
    """The stations, top of the raise first, as they lie on the wall."""
    m, n, method = words.metre, words.newton, plan.method
    rope = "take in" if method is Method.TRACK else "pay out"
    heads = [
        ("", ""),
        ("height", m),
        ("offset", m),
        ({"attendant": "push"}.get(method.value, method.value), n),
        (words.shift, "further"),
        ("haul", n),
    ]
    if plan.site.edges:
        heads.append(("haul above", f"edges {n}"))
    if method is not Method.ATTENDANT:
        heads += [
            ("up on", f"hub {n}"),
            ("legs up/", f"down {words.radian}"),
            ("between", f"legs {words.radian}"),
            (rope, m),
            ("room to", f"line {m}"),
        ]
    heads.append(("offset needed for", ""))
    rows = []
    for station in reversed(plan.stations):
        way = station.way(method)
        row = [
            ">" * (station is plan.governing) + OUTSIDE_MARK * is_outside(plan, way),
            words.height(station.height),
            words.offset(station.offset),
            _effort(way, words),
            _unless_sensitive(way, way.effort_further, words),
            _unless_sensitive(way, way.haul_tension, words),
        ]
        if plan.site.edges:
            row.append(_unless_sensitive(way, way.haul_above, words))
        if method is not Method.ATTENDANT:
            moved = station.take_in if method is Method.TRACK else station.pay_out
            row += [
                _unless_sensitive(way, way.hub_uplift, words),
                f"{words.angle(way.haul_elevation)}/{words.angle(way.ground_depression)}",
                words.angle(way.litter_angle),
                _moved(moved, rope, words),
                words.rope(way.room, Rounding.DOWN),
            ]
        rows.append((*row, words.demand(station.demand)))
    return Table(tuple(heads), tuple(rows))


def _moved(metres: float | None, direction: str, words: Wording) -> str:
    """A length of rope moved; in words where it runs against the column's ``direction``."""
    if metres is None or metres >= 0:
        return words.rope(metres)
    other = {"take in": "pay out", "pay out": "take in"}[direction]
    return f"{other} {words.rope(-metres)}"


def is_outside(plan: RaisePlan, way: Guided) -> bool:
    """Whether a result of the plan's method at one station exceeds the limit entered for it."""
    limits = [comparison.limit for comparison in plan.summary(way.method).comparisons]
    found = (way.effort, way.haul_above, way.hub_uplift)
    return not way.sensitive and any(
        limit is not None and newtons is not None and newtons > limit
        for limit, newtons in zip(limits, found, strict=False)
    )


def _effort(way: Guided, words: Wording) -> str:
    return _unless_sensitive(way, way.effort, words) if way.held else NOT_HELD


def _unless_sensitive(way: Guided, newtons: float | None, words: Wording) -> str:
    return SENSITIVE_MARK if way.sensitive else words.force(newtons)


def alternatives_table(plan: RaisePlan, words: Wording) -> Table:
    """The other two methods, station by station."""
    m, n = words.metre, words.newton
    others = [summary.method for summary in plan.summaries[1:]]
    heads = [("height", m), ("offset", m)]
    for method in others:
        heads += [
            ({"attendant": "push"}.get(method.value, method.value), n),
            ("haul with", f"it {n}"),
        ]
    rows = []
    for station in reversed(plan.stations):
        row = [words.height(station.height), words.offset(station.offset)]
        for method in others:
            way = station.way(method)
            row += [_effort(way, words), _unless_sensitive(way, way.haul_above, words)]
        rows.append(tuple(row))
    return Table(tuple(heads), tuple(rows))


def notes(plan: RaisePlan, words: Wording) -> list[str]:
    """What the table's marks mean and what governs."""
    lines = [governing_line(plan, words)]
    if any(is_outside(plan, station.way(plan.method)) for station in plan.stations):
        lines.append(f"{OUTSIDE_MARK}: outside a limit you entered.")
    if any(station.way(plan.method).sensitive for station in plan.stations):
        lines.append(f"{SENSITIVE_MARK}: {words.too_sensitive}")
    if plan.method is Method.TRACK and plan.track_play is not None:
        lines.append(
            f"Each track line: between its longest and its shortest during the raise lie "
            f"{words.rope(plan.track_play)} {words.metre} of rope. The table's column need not "
            "add up to this: each of its lengths is rounded up, and the line may run both ways."
        )
    lines.append(
        "Clearances are measured level. Forces, offsets and rope are rounded up, room to the "
        "straight line down."
    )
    return lines


def column_meanings(plan: RaisePlan, words: Wording) -> list[str]:
    """A short line for each column of the station table, in its order."""
    method, shift = plan.method, words.shift
    lines = [
        "height, offset: where the master attachment point is.",
        {
            Method.TRACK: "track line: the tension of all track lines together.",
            Method.TAG: "tag line: its tension.",
            Method.ATTENDANT: "push: the attendant's outward push.",
        }[method],
        f"{shift} further: the same, were the litter {shift} further out.",
        "haul: the haul line's tension at the litter.",
    ]
    if plan.site.edges:
        lines.append("haul above edges: its tension beyond the protected edges, while hauling.")
    if method is not Method.ATTENDANT:
        rope = "take in" if method is Method.TRACK else "pay out"
        lines += [
            "up on hub: the upward part of the pull on the hub.",
            "legs up/down: the angle of the haul leg above the horizontal, and of the leg to the "
            "hub below it.",
            "between legs: the angle between those two legs.",
            f"{rope}: the length of {'each track' if rope == 'take in' else 'tag'} line moved "
            "since the station below.",
            "room to line: the distance left, outwards, to the straight line from directional to "
            "hub.",
        ]
    return [*lines, "offset needed for: what would touch the rock first if it were nearer."]


def governing_line(plan: RaisePlan, words: Wording) -> str:
    """The station where holding the litter takes most, and every broken limit."""
    if plan.governing is None:
        return f"There is no height at which the {plan.method.value} can hold the litter."
    station = plan.governing
    way = station.way(plan.method)
    place = (
        f"at {words.height(station.height)} {words.metre}, {words.offset(station.offset)} "
        f"{words.metre} out (needed for: {words.demand(station.demand)})"
    )
    if way.sensitive:
        line = f"> Largest {EFFORT[plan.method]} {place}. {words.too_sensitive}"
        return " ".join([line, *broken_limits(plan, words)])
    assert way.effort is not None
    line = f"> Largest {EFFORT[plan.method]}: {words.force_with_unit(way.effort)} {place}."
    return " ".join([line, *broken_limits(plan, words)])


def broken_limits(plan: RaisePlan, words: Wording) -> list[str]:
    """A sentence for each result of the plan's method that is outside its limit."""
    return [
        comparison_line(comparison, words)
        for comparison in plan.summary().comparisons
        if comparison.verdict is Verdict.OUTSIDE
    ]


def beside_the_headline(plan: RaisePlan, words: Wording) -> list[str]:
    """The plan's method over the whole raise, without what :func:`governing_line` has said."""
    method = plan.summary()
    said = set(broken_limits(plan, words))
    effort = method.comparisons[0]
    governing = plan.governing
    if effort.limit is None and governing and not governing.way(plan.method).sensitive:
        said.add(comparison_line(effort, words))
    lines = (line.strip() for line in summary_lines(method, words)[1:])
    return [line for line in lines if line not in said]


def summary_lines(summary: Summary, words: Wording) -> list[str]:
    """One method over the whole raise: where it fails, its largest results, its limits."""
    lines = [f"{summary.method.value.capitalize()}, the whole raise:"]
    for gap in summary.gaps:
        span = f"{words.height(gap.low)} to {words.height(gap.high)} {words.metre}"
        if gap.low == gap.high:
            span = f"{words.height(gap.low)} {words.metre}"
        lines.append(f"  Not possible at {span}: {words.why_not(gap, gap.demand)}")
    if summary.nearest_line is not None:
        part = _to_multiple(100 * summary.nearest_line.value, Decimal(1), Rounding.UP)
        lines.append(
            f"  Nearest to the straight line from directional to hub at "
            f"{words.height(summary.nearest_line.height)} {words.metre}: {part} % of the way to it."
        )
    if summary.sensitive:
        lines.append("  Some heights are too sensitive for a number; the largest below omit them.")
    lines += [f"  {comparison_line(comparison, words)}" for comparison in summary.comparisons]
    return lines


def comparison_line(comparison: Comparison, words: Wording) -> str:
    """A largest result and how it compares with the limit entered for it."""
    largest = "no value to rely on"
    if comparison.largest is not None:
        peak = comparison.largest
        largest = (
            f"largest{' of those with a number' * comparison.partial} "
            f"{words.force_with_unit(peak.value)} (at {words.height(peak.height)} {words.metre})"
        )
    verdict = comparison.verdict.value
    if comparison.limit is not None:
        verdict += f" ({words.limit(comparison.limit)})"
    return f"{comparison.name.capitalize()}: {largest}; {verdict}."


def _set(table: Table) -> str:
    """A table in columns, numbers to the right, the last column of words to the left."""
    grid = [*zip(*table.heads, strict=True), *table.rows]
    widths = [max(len(row[column]) for row in grid) for column in range(len(table.heads))]
    words_last = table.heads[-1][0].startswith("offset needed")
    lines = []
    for row in grid:
        cells = [cell.rjust(width) for cell, width in zip(row, widths, strict=True)]
        if words_last:
            cells[-1] = row[-1]
        lines.append("  ".join(cells).rstrip())
    lines.insert(2, "-" * max(map(len, lines)))
    return "\n".join(lines)


def _fold(lines: Sequence[str], mark: str = "") -> str:
    folded = []
    for line in lines:
        indent = " " * (len(line) - len(line.lstrip()))
        folded.append(
            textwrap.fill(
                line.strip(),
                WIDTH,
                initial_indent=indent + mark,
                subsequent_indent=indent + "  ",
            )
        )
    return "\n".join(folded)
