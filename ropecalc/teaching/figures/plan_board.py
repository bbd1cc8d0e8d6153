"""The whole raise on one board: the planner's path, where it takes most, and what that asks for.

Everything comes from the planner, :func:`~ropecalc.planning.raise_plan.plan_raise`, for one of the
two surveyed walls of the course, with the sliders in place of what a survey would say. A plan
takes longer than a slider's move may, so plans that were made are kept.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics.friction import Direction
from ropecalc.mechanics.holding import Hold, Method, Point, Rig, hold
from ropecalc.mechanics.redirects import HeadLine, HeadLoad, head_load
from ropecalc.mechanics.strength import margin
from ropecalc.mechanics.stretch import stretch
from ropecalc.mechanics.tensioner import NO_BACKUP, TensionerRope, tensioner_rope
from ropecalc.mechanics.tensioner_lines import all_lines, most_loaded_line
from ropecalc.planning.raise_plan import (
    BELAY,
    SURVEY_ONLY,
    Peak,
    Place,
    RaisePlan,
    Station,
    Verdict,
    plan_raise,
)
from ropecalc.planning.site import Site
from ropecalc.planning.site_file import read_site
from ropecalc.teaching.canvas import INK, Canvas
from ropecalc.teaching.course import find_course
from ropecalc.teaching.drawing import (
    FAINT,
    GROUND_FACE,
    HAUL,
    LIMIT,
    ROCK_FACE,
    THIN,
    TRACK,
    WARNING,
    Area,
    Arrow,
    Dot,
    Frame,
    Hub,
    Label,
    Labels,
    Litter,
    Notice,
    Rope,
    ScaleBar,
    Stroke,
)
from ropecalc.teaching.drawing import Place as Spot
from ropecalc.teaching.figures.free_body import neat_force, pulls_on_litter
from ropecalc.teaching.figures.length_axes import LengthAxes, LengthAxis, every
from ropecalc.teaching.figures.sensitivity import too_sensitive, too_sensitive_words
from ropecalc.teaching.figures.words import say
from ropecalc.teaching.panel import (
    LOCKED,
    Choice,
    Figure,
    Look,
    Outcome,
    Prediction,
    Table,
    Values,
)
from ropecalc.teaching.sliders import Control
from ropecalc.units import Display, Kind, Rounding, plain, round_figures

UPPER, LOWER = "upper-heron-wall", "lower-heron-wall"
BACK = math.radians(30.0)
"""How steeply the lines run down behind the head (rad below the horizontal)."""
STIFFNESS, LEAST_PLAY, TAIL = 50_000.0, 1.0, 6.0
"""Of the ropes (EA, N), and what is left to the hub and beyond the device (m)."""
LET_OUT = "let out, slowly"
"""Said of a station to which tensioner rope has to go out."""
_KEPT_PLANS = 256


@dataclass(frozen=True)
class Row:
    """One station: what the planner found there, and what it means for rope and head.

    Forces in N, None where the litter is not held or the number cannot be relied on. ``feed`` is
    tensioner rope through the device since the last station, in m; negative if let out.
    """

    station: Station
    held: bool
    sensitive: bool
    total: float | None
    near: float | None
    haul: float | None
    uplift: float | None
    feed: float | None
    head: HeadLoad | None


@dataclass(frozen=True)
class Board:
    """One setting worked out.

    ``plan`` is None where the site cannot be planned; ``trouble`` then says why. ``here`` is the
    place on the path that is looked at, ``held`` the balance there. ``line_margin`` and
    ``hub_margin`` are for the governing station, with the uncertainty that was entered; None
    where there is nothing to rely on. ``line_stop`` is the tension of one line up to which the
    margin that was asked for is kept, ``allowed`` and ``hub_allowed`` the total of all lines up to
    which it is kept in the lines and at the hub. ``fastest`` is tensioner rope per length
    raised where it runs fastest.
    """

    trouble: str
    plan: RaisePlan | None
    count: int
    efficiency: float
    uncertainty: float
    asked: float
    rows: tuple[Row, ...]
    here: Place | None
    held: Hold | None
    sensitive_here: bool
    line_margin: float | None
    hub_margin: float | None
    line_stop: float
    allowed: float
    hub_allowed: float
    rope: TensionerRope | None
    fastest: float | None

    @property
    def governing(self) -> Row | None:
        """The row of the governing station."""
        plan = self.plan
        if plan is None or plan.governing is None:
            return None
        return next((r for r in self.rows if r.station == plan.governing), None)

    @property
    def peak(self) -> Peak | None:
        """The largest total track tension that can be relied on."""
        return self.plan.summary().effort if self.plan else None

    @property
    def head(self) -> tuple[Row, HeadLoad] | None:
        """The station at which the head carries most."""
        loaded = [(row, row.head) for row in self.rows if row.head is not None]
        return max(loaded, key=lambda pair: pair[1].pull.high, default=None)

    def verdict(self, found: float | None) -> Verdict:
        """A margin against the one that was asked for."""
        if self.plan is None:
            return Verdict.NOTHING
        summary = self.plan.summary()
        if found is not None and found < self.asked:
            return Verdict.OUTSIDE
        if summary.sensitive:
            return Verdict.TOO_SENSITIVE
        if found is None:
            return Verdict.NOTHING
        return Verdict.PARTLY if summary.gaps else Verdict.INSIDE


@lru_cache(maxsize=2)
def _surveyed(key: str) -> Site:
    return read_site(find_course(None) / "sites" / f"{key}.toml")


@lru_cache(maxsize=_KEPT_PLANS)
def _planned(key: str, out: float, hub: float, mass: float, clearance: float) -> RaisePlan:
    """The planner's answer for a surveyed wall with the sliders' values put in."""
    site = _surveyed(key)
    top = Point(out, site.rig.haul_directional.z)
    changed = replace(
        site,
        rig=Rig(top, top, Point(hub, site.rig.hub.z)),
        litter=replace(site.litter, mass=mass, clearance=clearance),
        lift=replace(site.lift, line_clearance=clearance, guided_by=Method.TRACK),
    )
    return plan_raise(changed)


def compute(values: Values) -> Board:
    """Work out one setting of the controls (SI)."""
    count, efficiency = round(values["lines"]), values["efficiency"]
    plan, trouble = None, ""
    try:
        plan = _planned(
            *(values[key] for key in ("site", "directional", "hub", "mass", "clearance"))
        )
    except ValueError as error:  # no course folder, or a site that cannot be planned
        trouble = str(error)
    rows = tuple(_rows(plan, count, efficiency)) if plan else ()
    share = values["uncertainty"]
    ends = {"load_uncertainty": share, "strength_uncertainty": 0.0}
    peak = plan.summary().effort if plan else None
    most = 1.0 / (values["margin"] * (1 + share))
    line_margin = hub_margin = None
    if peak is not None and peak.value > 0:
        near = _near(peak.value, count, efficiency)
        line_margin = float(margin(strength=values["line"], component_load=near, **ends))
        hub_margin = float(margin(strength=values["holds"], component_load=peak.value, **ends))
    here = _nearest(plan, values["look"]) if plan else None
    held, shaky = _balance(plan, here) if plan and here else (None, False)
    return Board(
        trouble=trouble,
        plan=plan,
        count=count,
        efficiency=efficiency,
        uncertainty=share,
        asked=values["margin"],
        rows=rows,
        here=here,
        held=held,
        sensitive_here=shaky,
        line_margin=line_margin,
        hub_margin=hub_margin,
        line_stop=values["line"] * most,
        allowed=float(
            all_lines(near_line=values["line"] * most, efficiency=efficiency, lines=float(count))
        ),
        hub_allowed=values["holds"] * most,
        rope=_rope(plan, peak, count, efficiency) if plan else None,
        fastest=_fastest(rows),
    )


def _rows(plan: RaisePlan, count: int, efficiency: float) -> list[Row]:
    rows = []
    for station in plan.stations:
        way = station.way(Method.TRACK)
        total = way.line_tension if way.held and not way.sensitive else None
        near = head = None
        if total is not None:
            near = _near(total, count, efficiency)
            head = _head(way.haul_tension, total, way.haul_elevation, efficiency)
        rows.append(
            Row(
                station=station,
                held=way.held,
                sensitive=way.sensitive,
                total=total,
                near=near,
                haul=way.haul_tension if total is not None else None,
                uplift=way.hub_uplift if total is not None else None,
                feed=None if station.take_in is None else 2 * count * station.take_in,
                head=head,
            )
        )
    return rows


def _near(total: float, count: int, efficiency: float) -> float:
    """What the most loaded line carries just pulled in; nothing where nothing is needed."""
    if total <= 0:
        return 0.0
    return float(most_loaded_line(track_tension=total, efficiency=efficiency, lines=float(count)))


def _head(
    haul: float | None, track: float, elevation: float | None, efficiency: float
) -> HeadLoad | None:
    """Haul line, hauled, and track lines, made fast behind it, through one head."""
    if haul is None or elevation is None:
        return None
    lines = [HeadLine("haul line", Direction.HAULING, haul, elevation, BACK)]
    if track > 0:
        lines.append(HeadLine("track lines", Direction.HOLDING, track, elevation, BACK))
    try:
        return head_load(lines, efficiency=efficiency)
    except DomainError:
        return None


def _rope(
    plan: RaisePlan, peak: Peak | None, count: int, efficiency: float
) -> TensionerRope | None:
    if plan.track_play is None or peak is None:
        return None
    near = _near(peak.value, count, efficiency)
    longest = max(station.track_length for station in plan.stations)
    longer = 0.0  # where the litter hangs plumb all the way, nothing pulls on the lines
    if near > 0:
        longer = float(stretch(rope_tension=near, rope_length=longest, stiffness=STIFFNESS))
    return tensioner_rope(
        count, least_play=LEAST_PLAY, take_in=plan.track_play, line_stretch=longer, tail=TAIL
    )


def _fastest(rows: tuple[Row, ...]) -> float | None:
    rates = [
        row.feed / (row.station.height - before.station.height)
        for before, row in pairwise(rows)
        if row.feed is not None
    ]
    return max(rates, default=None)


def _nearest(plan: RaisePlan, height: float) -> Place:
    return min(plan.trace, key=lambda place: abs(place.height - height))


def _balance(plan: RaisePlan, here: Place) -> tuple[Hold, bool]:
    """The balance at one place of the path, and whether it cannot be relied on."""
    held = hold(Method.TRACK, plan.site.rig, plan.load, here.offset, here.height)
    if not held.reach.possible:
        return held, False
    return held, bool(
        too_sensitive(Method.TRACK, plan.site.rig, plan.load, here.offset, here.height)
    )


# --- in words ---------------------------------------------------------------------------------

_NAMES = {UPPER: "Upper Heron Wall", LOWER: "Lower Heron Wall"}


def _shows(display: Display, kind: Kind, figures: int = 3) -> Callable[[float], str]:
    return lambda si: say(display, si, kind, figures)


def _factor(value: float) -> str:
    """A margin, rounded down: against the learner."""
    return plain(round_figures(value, 2, Rounding.DOWN))


def summary(result: Board, display: Display) -> str:
    """The plan and its margins in plain sentences."""
    plan = result.plan
    if plan is None:
        return f"This raise cannot be planned. {_ended(result.trouble)}"
    length, force = _shows(display, Kind.LENGTH), _shows(display, Kind.FORCE)
    site = plan.site
    words = (
        f"{site.name}, {say(display, site.litter.mass, Kind.MASS)}, directionals "
        f"{length(site.rig.haul_directional.x)} out, hub {length(site.rig.hub.x)} out, "
        f"{length(site.litter.clearance)} of clearance; {_lines(result.count)}, sheave efficiency "
        f"{display.show(result.efficiency, Kind.RATIO, 2)}."
    )
    words += _governs(result, force, length)
    words += _gaps(plan, length)
    words += _margins(result)
    words += _demands(result, display)
    return words + _look(result, display)


def _ended(sentence: str) -> str:
    return sentence if sentence.endswith(".") else sentence + "."


def _lines(count: int) -> str:
    return "one track line" if count == 1 else f"{count} track lines in series"


def _governs(result: Board, force: Callable[[float], str], length: Callable[[float], str]) -> str:
    peak, row = result.peak, result.governing
    shaky = result.plan is not None and result.plan.summary().sensitive
    if peak is None:
        return " At no height is there a track tension to rely on."
    if peak.value <= 0:
        return " At no height that can be relied on do the track lines have to hold anything off."
    words = (
        f" The largest track tension to rely on is {force(peak.value)}, at {length(peak.height)}"
    )
    if row is not None and row.near is not None and abs(row.station.height - peak.height) < 0.01:
        words += (
            f": that station governs. The litter is {length(row.station.offset)} out there because "
            f"of {_because(row.station)}, and the most loaded line carries {force(row.near)}"
        )
    words += "."
    if shaky:
        words += (
            " At other heights the tension is too sensitive to be relied on: change the rig or end "
            "the guidance lower."
        )
    return words


def _because(station: Station) -> str:
    cause = station.demand.cause.value
    return "hanging plumb" if cause == "plumb" else f"the room that the {cause} needs"


def _gaps(plan: RaisePlan, length: Callable[[float], str]) -> str:
    gaps = plan.summary().gaps
    if not gaps:
        return ""
    first = gaps[0]
    return (
        f" From {length(first.low)} to {length(first.high)} track lines do not hold the litter on "
        f"this path. {_ended(first.reach.sentence or 'It asks for more room.')}"
    )


def _margins(result: Board) -> str:
    if result.line_margin is None or result.hub_margin is None:
        return " There are no margins to state."
    share = f"{100 * result.uncertainty:.0f} %"
    line, hub = result.verdict(result.line_margin), result.verdict(result.hub_margin)
    return (
        f" With loads up to {share} higher the margin is {_factor(result.line_margin)} in the most "
        f"loaded line ({line}) and {_factor(result.hub_margin)} at the hub ({hub}); you asked for "
        f"{plain(round_figures(result.asked, 2))}."
    )


def _demands(result: Board, display: Display) -> str:
    length, force = _shows(display, Kind.LENGTH), _shows(display, Kind.FORCE)
    words = ""
    if result.rope is not None and result.fastest is not None:
        words += (
            f" The tensioner rope has to be {length(result.rope.needed)} long, and "
            f"{length(result.rope.through_device)} of it run through the device, up to "
            f"{plain(round_figures(result.fastest, 2, Rounding.UP))} times as fast as the litter "
            f"rises. That leaves {length(LEAST_PLAY)} to the hub and {length(TAIL)} of tail, for "
            f"ropes of stiffness {force(STIFFNESS)}."
        )
    if any(row.feed is not None and row.feed < 0 for row in result.rows):
        words += " On the way up the tensioner also has to be let out, slowly: see the table."
    head = result.head
    if head is not None:
        row, load = head
        way = "inwards" if load.lean.high >= 0 else "outwards"
        words += (
            f" While hauling, the head carries at most {force(load.pull.high)}, at "
            f"{length(row.station.height)}, {say(display, abs(load.lean.high), Kind.ANGLE)} "
            f"{way} from plumb, with lines that fall {say(display, BACK, Kind.ANGLE)} behind it."
        )
    return words


def _look(result: Board, display: Display) -> str:
    if result.here is None or result.held is None:
        return ""
    length, force = _shows(display, Kind.LENGTH), _shows(display, Kind.FORCE)
    where = f" At {length(result.here.height)}, {length(result.here.offset)} out"
    if not result.held.reach.possible:
        return f"{where}: {_ended(result.held.reach.sentence)}"
    if result.sensitive_here:
        return f"{where}: {too_sensitive_words(display)}"
    return (
        f"{where}, the track lines together carry {force(result.held.line_tension)} and the haul "
        f"line {force(result.held.haul_tension)}."
    )


def table(result: Board, display: Display) -> Table:
    """The stations."""
    if result.plan is None:
        return ()

    def length(value: float) -> str:
        return _unbroken(say(display, value, Kind.LENGTH))

    def shown(value: float | None) -> str:
        return "" if value is None else _unbroken(say(display, value, Kind.FORCE))

    rows = [
        (
            "Height",
            "Out",
            "Tensioner rope since last",
            "Track lines together",
            "Most loaded line",
            "Haul line",
            "Uplift at hub",
            "Head",
            "Note",
        )
    ]
    for row in reversed(result.rows):
        feed = ""
        if row.feed is not None:
            feed = ("in " if row.feed >= 0 else "out ") + length(abs(row.feed))
        rows.append(
            (
                length(row.station.height),
                length(row.station.offset),
                feed,
                shown(row.total),
                shown(row.near),
                shown(row.haul),
                shown(row.uplift),
                shown(row.head.pull.high if row.head else None),
                _note(result, row),
            )
        )
    return tuple(rows)


def _unbroken(quantity: str) -> str:
    """A number that no line break parts from its unit."""
    return quantity.replace(" ", "\N{NO-BREAK SPACE}")


def _note(result: Board, row: Row) -> str:
    if not row.held:
        return "not held"
    if row.sensitive:
        return "too sensitive"
    notes = []
    plan = result.plan
    if row is result.governing:
        notes.append("governs")
    if plan is not None and row.station == plan.stations[-1]:
        notes.append("guidance ends")
    if row.feed is not None and row.feed < 0:
        notes.append(LET_OUT)
    if row.total is not None and row.total > min(result.allowed, result.hub_allowed):
        notes.append("outside the limits you entered")
    return ", ".join(notes)


# --- the picture ------------------------------------------------------------------------------

_WIDTH, _HEIGHT = 940, 640
_LEFT, _RIGHT, _LOW = -7.0, 76.0, -3.0
_PATH = Stroke("#00735a", 1.8)


class PlanBoardPicture:
    """The artists of the figure."""

    def __init__(self) -> None:
        self.canvas = Canvas(_WIDTH, _HEIGHT)
        self._section = _Section(self.canvas)
        self._effort = _Effort(self.canvas, self._section.axes)
        self._close = _CloseUp(self.canvas)
        self._margins = _Margins(self.canvas)

    def update(self, result: Board, look: Look) -> None:
        """Follow ``result``."""
        self._section.update(result, look)
        self._effort.update(result, look)
        self._close.update(result, look)
        self._margins.update(result, look)


class _Dots:
    """Any number of small marks."""

    def __init__(self, canvas: Canvas, axes: Axes, face: str, size: float, marker: str) -> None:
        self._marks = canvas.moving(
            Line2D([], [], ls="none", marker=marker, ms=size, mfc=face, mec=face, zorder=6)
        )
        axes.add_line(self._marks)

    def place(self, places: list[Spot]) -> None:
        """Sit at ``places``; none shows nothing."""
        self._marks.set_data([p[0] for p in places], [p[1] for p in places])


def _rock(site: Site, left: float, right: float = 0.0) -> list[Spot]:
    """The wall's outline with the rock behind it, from ``left``; ``right`` shifts it."""
    wall = [(p.offset - right, p.height) for p in site.wall.points]
    return [*wall, (left, wall[-1][1]), (left, wall[0][1] - 20), (wall[0][0], wall[0][1] - 20)]


class _Section:
    """The whole cross-section true to scale, with the path of the litter."""

    def __init__(self, canvas: Canvas) -> None:
        self.axes = axes = canvas.axes(52, 364, 530, 250)
        axes.set_xlim(_LEFT, _RIGHT)
        axes.set_ylim(_LOW, _LOW + (_RIGHT - _LEFT) * 250 / 530)
        axes.set_title("The raise, true to scale", fontsize=10.5, loc="left")
        self._numbers = LengthAxes(
            canvas,
            axes,
            LengthAxis("out from the datum", _RIGHT, every(20, 50)),
            LengthAxis("height", 36.0, every(10, 20)),
        )
        self._ground = Area(canvas, axes, GROUND_FACE, zorder=1)
        self._rock = Area(canvas, axes, ROCK_FACE)
        self._ends = Rope(canvas, axes, FAINT)
        self._straight = Rope(canvas, axes, LIMIT)
        self._path = Rope(canvas, axes, _PATH, 5)
        self._stops = _Dots(canvas, axes, _PATH.color, 4, "o")
        self._bad = _Dots(canvas, axes, WARNING.color, 8, "x")
        self._frame = Frame(canvas, axes)
        self._haul, self._track = Rope(canvas, axes, HAUL), Rope(canvas, axes, TRACK)
        self._litter, self._hub = Dot(canvas, axes), Hub(canvas, axes)
        self._labels = Labels(canvas, axes, 5, 9)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 60)

    def update(self, result: Board, look: Look) -> None:
        """Follow ``result``."""
        self._numbers.follow(look.display)
        plan = result.plan
        moving = (self._ground, self._rock, self._ends, self._straight, self._path, self._haul)
        for part in (*moving, self._track, self._litter, self._hub, self._frame):
            part.hide()
        self._notice.say("" if plan else "No plan: the words below say why.")
        if plan is None:
            self._stops.place([])
            self._bad.place([])
            self._labels.write([])
            return
        rig, foot = plan.site.rig, plan.site.wall.foot - 0.3
        hub, top = (rig.hub.x, rig.hub.z), (rig.haul_directional.x, rig.haul_directional.z)
        self._ground.place(
            (0, foot), (hub[0], hub[1] - 0.2), (95, hub[1] - 0.2), (95, -30), (0, -30)
        )
        self._rock.place(*_rock(plan.site, -20.0))
        self._frame.place(plan.site.wall.top, top, top)
        self._hub.place(*hub)
        self._straight.place(top, hub)
        self._ends.place((_LEFT, plan.site.lift.guidance_ends), (16, plan.site.lift.guidance_ends))
        shown = [] if not look.numbers else [s for s in plan.stations]
        if look.numbers:
            self._path.place(*((p.offset, p.height) for p in plan.trace))
        held = [s for s in shown if s.way(Method.TRACK).held]
        self._stops.place([(s.offset, s.height) for s in held])
        self._bad.place([(s.offset, s.height) for s in shown if s not in held])
        labels = [Label("hub", hub, towards=(0.2, 1)), Label("directionals", top, towards=(1, 0.4))]
        at = (15.0, plan.site.lift.guidance_ends)
        labels.append(Label("guidance ends", at, THIN.color, (1, -0.2)))
        lines = [[top, hub]]
        if result.here is not None and look.numbers:
            here = (result.here.offset, result.here.height)
            self._haul.place(here, top)
            self._track.place(top, here, hub)
            self._litter.place(*here)
            lines += [[top, here, hub]]
            labels.append(Label("litter", here, towards=(-1, -0.05)))
        self._labels.write(labels, lines)


class _Effort:
    """Total track tension by height, beside the section and at its scale of heights."""

    def __init__(self, canvas: Canvas, beside: Axes) -> None:
        self._axes = axes = canvas.axes(640, 364, 276, 250, share_height=beside)
        axes.set_xlim(0, 1)
        axes.set_xticks([])
        axes.tick_params(labelleft=False)
        axes.set_title("Track lines together, by height", fontsize=10.5, loc="left")
        self._further = Rope(canvas, axes, FAINT, 3)
        self._curve = Rope(canvas, axes, Stroke(TRACK.color, 2.2), 4)
        self._limit, self._hub = Rope(canvas, axes, WARNING, 3), Rope(canvas, axes, LIMIT, 3)
        self._stops = _Dots(canvas, axes, TRACK.color, 4, "o")
        self._peak = _Dots(canvas, axes, "#f4b63f", 9, "o")
        self._level = Rope(canvas, axes, THIN, 2)
        self._bar = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 4, 9)
        self._notice = Notice(canvas, axes, 0.5, 0.5, 30)

    def update(self, result: Board, look: Look) -> None:
        """Follow ``result``."""
        for part in (self._further, self._curve, self._limit, self._hub, self._level, self._bar):
            part.hide()
        self._stops.place([])
        self._peak.place([])
        self._labels.write([])
        plan = result.plan
        self._notice.say(LOCKED if not look.numbers else "" if plan else "No plan.")
        if plan is None or not look.numbers:
            return
        effort = np.array([np.nan if p.effort is None else p.effort for p in plan.trace])
        further = np.array(
            [np.nan if p.effort_further is None else p.effort_further for p in plan.trace]
        )
        heights = np.array([p.height for p in plan.trace])
        relied = [row.total for row in result.rows if row.total is not None]
        room = 1.25 * max([1.0, *relied, *([result.peak.value] if result.peak else [])])
        limits = (result.allowed, result.hub_allowed)
        room = max([room, *(1.15 * x for x in limits if x < 2.5 * room)])
        self._further.trace(np.ma.masked_invalid(further) / room, heights)
        self._curve.trace(np.ma.masked_invalid(effort) / room, heights)
        self._stops.place(
            [(r.total / room, r.station.height) for r in result.rows if r.total is not None]
        )
        labels, lines = [], []
        for rope, limit, words, colour in (
            (self._limit, limits[0], "limit of\nthe lines", WARNING.color),
            (self._hub, limits[1], "limit of\nthe hub", LIMIT.color),
        ):
            if limit < room:
                rope.place((limit / room, _LOW), (limit / room, 60.0))
                at = (limit / room, 8.0 if words.endswith("hub") else 14.0)
                labels.append(Label(words, at, colour, (1, 0)))
                lines.append([(limit / room, _LOW), (limit / room, 60.0)])
        if result.peak is not None:
            at = (result.peak.value / room, result.peak.height)
            self._peak.place([at])
            words = (
                f"{say(look.display, result.peak.value, Kind.FORCE)}\nat "
                f"{say(look.display, result.peak.height, Kind.LENGTH)}"
            )
            labels.insert(0, Label(words, at, INK, (0.4, 1), True))
        if result.here is not None:
            self._level.place((0.0, result.here.height), (1.0, result.here.height))
        fine = [(float(x), float(z)) for x, z in zip(effort / room, heights, strict=True)]
        lines.append([p for p in fine if math.isfinite(p[0])][::6])
        amount, said = neat_force(0.28 * room, look.display)
        self._bar.place(0.05, _LOW + 1.0, amount / room, 0.6, said)
        self._labels.write(labels, [line for line in lines if len(line) > 1])


class _CloseUp:
    """The litter at the height that is looked at, with the forces on it."""

    _HALF = 4.0

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.blank(52, 24, 380, 262, "Close up, at the height you look at")
        tall = 2 * self._HALF * 262 / 380
        axes.set_xlim(-self._HALF, self._HALF)
        axes.set_ylim(-0.57 * tall, 0.43 * tall)
        self._low = -0.57 * tall
        self._rock = Area(canvas, axes, ROCK_FACE)
        self._ground = Area(canvas, axes, GROUND_FACE, zorder=1)
        self._frame = Frame(canvas, axes)
        self._haul, self._track = Rope(canvas, axes, HAUL), Rope(canvas, axes, TRACK)
        self._clear = Rope(canvas, axes, THIN, 5)
        self._litter = Litter(canvas, axes)
        self._arrows = [Arrow(canvas, axes, HAUL) for _ in range(4)]
        self._force = ScaleBar(canvas, axes)
        self._length = ScaleBar(canvas, axes)
        self._labels = Labels(canvas, axes, 6, 9)
        self._notice = Notice(canvas, axes, 0.5, 0.14, 36)

    def update(self, result: Board, look: Look) -> None:
        """Follow ``result``."""
        for arrow in self._arrows:
            arrow.hide()
        self._force.hide()
        plan, here, held = result.plan, result.here, result.held
        for part in (self._rock, self._ground, self._haul, self._track, self._clear, self._frame):
            part.hide()
        self._litter.hide()
        self._labels.write([])
        self._notice.say(self._sentence(result, look))
        if plan is None or here is None or held is None or not look.numbers:
            return
        site, x, z = plan.site, here.offset, here.height

        def seen(across: float, up: float) -> Spot:
            return (across - x, up - z)

        self._rock.place(*((a, b - z) for a, b in _rock(site, -40.0, x)))
        foot = site.wall.foot - 0.3
        self._ground.place(seen(0, foot), seen(95, foot), seen(95, -30), seen(0, -30))
        top, hub = site.rig.haul_directional, site.rig.hub
        self._frame.place(site.wall.top - z, seen(top.x, top.z), seen(top.x, top.z))
        self._haul.place((0.0, 0.0), seen(top.x, top.z))
        aside = 0.1
        self._track.place((top.x - x + aside, top.z - z), (aside, 0.0), seen(hub.x, hub.z))
        body = site.litter
        side = -(body.half_width + body.clearance)
        self._clear.place(
            (-body.clearance, 0.0), (side, -body.bridle), (side, -body.reach_down),
        )  # fmt: skip
        self._litter.place(0.0, 0.0)
        unit = 1.0 if look.display.length == "m" else look.display.si(5.0, Kind.LENGTH)
        shown = look.display.show(unit, Kind.LENGTH, 1)
        self._length.place(self._HALF - unit - 0.2, self._low + 0.15, unit, 0.1, shown)
        if look.forces and held.reach.possible and not result.sensitive_here:
            self._draw_arrows(result, held, look)

    @staticmethod
    def _sentence(result: Board, look: Look) -> str:
        if not look.numbers:
            return LOCKED
        if result.held is None:
            return "No plan."
        if not result.held.reach.possible:
            return "Track lines do not hold the litter here."
        return "Too sensitive here for numbers." if result.sensitive_here else ""

    def _draw_arrows(self, result: Board, held: Hold, look: Look) -> None:
        assert result.plan is not None
        pulls = pulls_on_litter(result.plan.load, held)
        per_metre = max(size for _, size, _, _ in pulls) / 1.9
        labels, lines = [], []
        for arrow, (name, size, direction, stroke) in zip(self._arrows, pulls, strict=False):
            reach = np.array(direction) * size / per_metre
            start = np.array([0.3, 0.0]) if name == "track, upper leg" else np.zeros(2)
            arrow.restyle(stroke)
            arrow.place(tuple(start), tuple(start + reach))
            lines.append([tuple(start), tuple(start + reach)])
            if math.hypot(*reach) > 0.25:
                words = f"{name}\n{say(look.display, size, Kind.FORCE)}"
                aside = {
                    "haul": (-1.0, 0.2),
                    "track, upper leg": (1.0, 0.3),
                    "weight": (1.0, -0.2),
                }.get(name, (1.0, 0.6))
                labels.append(Label(words, tuple(start + 0.85 * reach), stroke.color, aside, True))
        amount, said = neat_force(1.3 * per_metre, look.display)
        self._force.place(-self._HALF + 0.2, self._low + 0.15, amount / per_metre, 0.1, said)
        self._labels.write(labels, lines, [(-0.32, -1.25, 0.32, -0.85)])


class _Margins:
    """The margins at the governing station beside the one asked for, and what else is needed."""

    _WIDE, _TALL = 424, 262

    def __init__(self, canvas: Canvas) -> None:
        self._axes = axes = canvas.sheet(492, 24, self._WIDE, self._TALL, "Margins, rope and head")
        self._bars = [Area(canvas, axes, face, "none", 3) for face in (TRACK.color, HAUL.color)]
        self._asked = Rope(canvas, axes, WARNING, 4)
        self._labels = Labels(canvas, axes, 8, 9)
        self._notice = Notice(canvas, axes, 0.5, 0.72, 44)

    def update(self, result: Board, look: Look) -> None:
        """Follow ``result``."""
        for bar in self._bars:
            bar.hide()
        self._asked.hide()
        self._labels.write([])
        found = (result.line_margin, result.hub_margin)
        if not look.numbers:
            self._notice.say(LOCKED)
            return
        if found[0] is None or found[1] is None:
            self._notice.say("No margin: there is no tension to rely on.")
            return
        self._notice.say("")
        left, wide = 16.0, self._WIDE - 90
        scale = wide / max(*(m for m in found if m is not None), result.asked)
        labels = []
        for bar, name, value, level in zip(
            self._bars, ("most loaded line", "hub"), found, (188.0, 128.0), strict=True
        ):
            assert value is not None
            right = left + scale * value
            bar.place((left, level), (right, level), (right, level + 24), (left, level + 24))
            words = f"{name}: {result.verdict(value)}"
            labels.append(Label(words, (left - 6, level + 37), INK, (1, 0)))
            labels.append(Label(_factor(value), (right, level + 12), INK, (1, 0), True))
        x = left + scale * result.asked
        self._asked.place((x, 112), (x, 218))
        said = f"you asked for {plain(round_figures(result.asked, 2))}"
        labels.append(Label(said, (x, 112), WARNING.color, (-0.4, -1)))
        for words, level in zip(
            self._needs(result, look.display), (72.0, 50.0, 28.0), strict=False
        ):
            labels.append(Label(words, (left - 6, level), INK, (1, 0)))
        self._labels.write(labels)

    @staticmethod
    def _needs(result: Board, display: Display) -> list[str]:
        length = _shows(display, Kind.LENGTH)
        needs = []
        if result.rope is not None and result.fastest is not None:
            needs.append(
                f"tensioner rope {length(result.rope.needed)}, through the device "
                f"{length(result.rope.through_device)}"
            )
            times = plain(round_figures(result.fastest, 2, Rounding.UP))
            needs.append(f"rope at the device: up to {times} times as fast as the litter")
        if result.head is not None:
            row, load = result.head
            needs.append(
                f"head at most {say(display, load.pull.high, Kind.FORCE)}, "
                f"at {length(row.station.height)}"
            )
        return needs


# --- the figure -------------------------------------------------------------------------------

CONTROLS = (
    Choice("site", "Wall", tuple(_NAMES.items()), UPPER),
    Control("directional", "Directionals, out", Kind.LENGTH, 0, 1.5, 0.1, 0.4),
    Control("hub", "Hub, out", Kind.LENGTH, 15, 70, 1, 40),
    Control("mass", "Mass that hangs", Kind.MASS, 110, 290, 5, 200),
    Control("clearance", "Clearance to the rock", Kind.LENGTH, 0.1, 0.8, 0.05, 0.3),
    Control("lines", "Track lines in series", Kind.RATIO, 1, 4, 1, 2),
    Control("efficiency", "Efficiency of each sheave", Kind.RATIO, 0.5, 0.98, 0.01, 0.9),
    Control("look", "Look at the height", Kind.LENGTH, 2, 29, 0.1, 26.6),
    Control("line", "Weakest part of one line", Kind.FORCE, 2000, 20_000, 500, 8000),
    Control("holds", "The hub holds", Kind.FORCE, 2000, 30_000, 500, 10_000),
    Control("uncertainty", "Loads may be higher by", Kind.RATIO, 0, 0.6, 0.05, 0.3),
    Control(
        "margin",
        "Margin you ask for",
        Kind.RATIO,
        1,
        12,
        0.5,
        5,
        help="Enter what your authority requires. This page recommends none.",
    ),
)


def _outcome(display: Display) -> Outcome:
    """Where on the wall at the start of the figure the track tension is largest."""
    plan = compute({control.key: control.default for control in CONTROLS}).plan
    assert plan is not None
    peak = plan.summary().effort
    assert peak is not None
    tip = max(plan.site.wall.points, key=lambda p: (p.offset, p.height))
    furthest = max(plan.stations, key=lambda s: s.offset).height
    level, past = tip.height, tip.height + plan.site.litter.reach_down
    heights = (furthest, level, past, plan.site.lift.guidance_ends)
    right = min(range(len(heights)), key=lambda i: abs(heights[i] - peak.height))
    force, length = _shows(display, Kind.FORCE), _shows(display, Kind.LENGTH)
    tension = _nearest(plan, furthest).effort or 0.0
    return Outcome(
        right=right,
        sentence=(
            f"The track lines carry most, {force(peak.value)}, when the master attachment point is "
            f"at {length(peak.height)}; where the litter stands furthest out, at "
            f"{length(furthest)}, it is {force(tension)}. The tip of the outcrop is at "
            f"{length(tip.height)}."
        ),
    )


PLAN_BOARD = Figure(
    key="plan-board",
    title="The whole raise on one board",
    alternative=(
        "Cross-section of a surveyed wall with the path of the litter, the track tension by "
        "height, a close view with the forces, and margins as bars"
    ),
    prediction=Prediction(
        question=(
            "on the Upper Heron Wall an outcrop sticks out near the top. Track lines hold the "
            "litter off all the way up. They carry most when the master attachment point is …"
        ),
        choices=(
            "where the litter stands furthest out",
            "level with the outcrop's tip",
            "so high that the body just passes the tip",
            "where the guidance ends",
        ),
        outcome=_outcome,
    ),
    controls=CONTROLS,
    compute=compute,
    picture=PlanBoardPicture,
    summary=summary,
    table=table,
    cautions=(
        SURVEY_ONLY,
        BELAY,
        NO_BACKUP,
        cautions.COMMON_HUB,
        cautions.NEAR_DIRECTIONAL,
        *cautions.EVERY_RESULT,
    ),
    reading=(
        "Green: the path of the master attachment point, with the stations. Dots on the curve are "
        "stations, too; the faint curve is for a litter a little further out. Thin line beside "
        "the litter, close up: the room that the litter and its bridle need.",
    ),
    first=("site", "look", "directional", "hub", "mass", "clearance", "lines", "efficiency"),
)
