"""Redirects and the high directional: how hard a head is pulled, and which way its frame falls."""

import math
from collections.abc import Mapping

from ropecalc import cautions
from ropecalc.mechanics import frames, redirects, vectors
from ropecalc.mechanics.frames import FRAME
from ropecalc.mechanics.holding import Hold, Method, Point, Rig, hold
from ropecalc.teaching.facts import Fact, Quantity
from ropecalc.teaching.figures.frame_lean import FRAME_LEAN
from ropecalc.teaching.lessons.content import LessonContent, TeachingNotes
from ropecalc.teaching.questions.bank import high_directional as bank
from ropecalc.units import Kind

_MASS = 200.0
_HEIGHT, _REACH, _BACK_FOOT = 2.0, 0.3, 1.5
_BACK = math.radians(28)
_OUT, _UP, _LIP = 2.5, 27.0, 30.0
_GUY, _SPREAD = math.radians(40), math.radians(20)
"""The example of this lesson: a frame on the lip of the Upper Heron Wall, the litter just above
the outcrop, held off by track lines."""


def _weight() -> float:
    return float(vectors.weight(mass=_MASS))


def _held() -> Hold:
    head = Point(_REACH, _LIP + _HEIGHT)
    return hold(Method.TRACK, Rig(head, head, Point(40.0, 0.5)), _weight(), _OUT, _UP)


def _lean() -> float:
    return float(
        redirects.head_lean(front_depression=_held().haul_elevation, back_depression=_BACK)
    )


def _pull(tension: float) -> float:
    """Pull on the head of lines that carry ``tension`` together."""
    angle = math.pi - _held().haul_elevation - _BACK
    return float(redirects.redirect_resultant(strand_tension=tension, strand_angle=angle))


def _together() -> float:
    """Haul line and track lines on the head."""
    held = _held()
    return _pull(held.haul_tension + held.line_tension)


def _parts() -> tuple[float, float]:
    """Inward and downward part of the pull of all lines."""
    return _together() * math.sin(_lean()), _together() * math.cos(_lean())


def _guy() -> float:
    inward, down = _parts()
    return float(
        frames.guy_in_front(
            inward_pull=inward,
            downward_pull=down,
            head_height=_HEIGHT,
            head_reach=_REACH,
            guy_depression=_GUY,
        )
    )


def _leg(guy: float) -> float:
    _, down = _parts()
    return float(
        frames.leg_compression(
            downward_pull=down,
            guy_tension=guy,
            guy_depression=_GUY,
            head_height=_HEIGHT,
            head_reach=_REACH,
            leg_half_spread=_SPREAD,
        )
    )


def _known() -> Mapping[str, float]:
    """The example's values by the names under which derivations ask for them."""
    held, (inward, down) = _held(), _parts()
    return {
        "load": _weight(),
        "strand_tension": held.haul_tension,
        "strand_angle": math.pi - held.haul_elevation - _BACK,
        "front_depression": held.haul_elevation,
        "back_depression": _BACK,
        "haul_elevation": held.haul_elevation,
        "ground_depression": held.ground_depression,
        "head_height": _HEIGHT,
        "head_reach": _REACH,
        "lean": _lean(),
        "inward_pull": inward,
        "downward_pull": down,
        "guy_depression": _GUY,
        "guy_tension": _guy(),
        "leg_half_spread": _SPREAD,
    }


def _example() -> Mapping[str, Quantity]:
    return {
        "mass": (_MASS, Kind.MASS),
        "weight": (_weight(), Kind.FORCE),
        "up": (_UP, Kind.LENGTH),
        "out": (_OUT, Kind.LENGTH),
        "height": (_HEIGHT, Kind.LENGTH),
        "reach": (_REACH, Kind.LENGTH),
        "back": (_BACK, Kind.ANGLE, 2),
        "haul": (_held().haul_tension, Kind.FORCE),
        "front": (_held().haul_elevation, Kind.ANGLE),
        "open": (math.pi - _held().haul_elevation - _BACK, Kind.ANGLE),
    }


def _three_angles() -> Mapping[str, Quantity]:
    tension = 2000.0
    pulls = {
        name: float(
            redirects.redirect_resultant(strand_tension=tension, strand_angle=math.radians(angle))
        )
        for name, angle in (("none", 0.0), ("third", 120.0), ("wide", 160.0))
    }
    return {
        "tension": (tension, Kind.FORCE),
        "wide_angle": (math.radians(160.0), Kind.ANGLE),
        "third_angle": (math.radians(120.0), Kind.ANGLE),
        **{name: (pull, Kind.FORCE) for name, pull in pulls.items()},
    }


def _counted() -> Mapping[str, Quantity]:
    return {
        "haul": (_held().haul_tension, Kind.FORCE),
        "track": (_held().line_tension, Kind.FORCE),
        "alone": (_pull(_held().haul_tension), Kind.FORCE),
        "both": (_together(), Kind.FORCE),
        "times": (_together() / _weight(), Kind.RATIO),
        "lean": (_lean(), Kind.ANGLE),
    }


def _lands() -> Mapping[str, Quantity]:
    place = frames.landing(head_height=_HEIGHT, head_reach=_REACH, lean=_lean())
    return {
        "lean": (_lean(), Kind.ANGLE),
        "place": (float(place), Kind.LENGTH, 2),
        "depth": (_BACK_FOOT, Kind.LENGTH),
    }


def _guyed() -> Mapping[str, Quantity]:
    inward, _ = _parts()
    guy = _guy()
    return {
        "angle": (_GUY, Kind.ANGLE, 2),
        "guy": (guy, Kind.FORCE),
        "inward": (inward, Kind.FORCE),
        "spread": (_SPREAD, Kind.ANGLE, 2),
        "without": (_leg(0.0), Kind.FORCE),
        "with": (_leg(guy), Kind.FORCE),
    }


_FACTS = (
    Fact(
        "the-example",
        "The example on this page: {mass}, which weigh {weight}, hang {out} out from the wall at a "
        "height of {up}. The frame's head stands {height} above the lip and {reach} out past its "
        "front feet. Behind it the lines run down to the team at {back} below the horizontal. The "
        "haul line rises {front} to the head, so that its strands open to {open} there, and "
        "carries {haul}.",
        _example,
    ),
    Fact(
        "three-angles",
        "A rope with {tension} through a free pulley pulls its anchor with {none} where both "
        "strands run side by side, with {third} where they open to {third_angle}, and with only "
        "{wide} at {wide_angle}.",
        _three_angles,
    ),
    Fact(
        "all-lines",
        "The haul line carries {haul}, and counted alone it pulls the head with {alone}. The track "
        "lines carry {track} over the same head. All together pull it with {both}, {times} times "
        "the weight, leaning {lean} inward.",
        _counted,
        after_prediction=True,
    ),
    Fact(
        "where-it-lands",
        "A lean of {lean} brings the line of action down {place} behind the front feet. A frame "
        "whose back feet stand {depth} behind stands; one that has only its two front legs falls "
        "back.",
        _lands,
        after_prediction=True,
    ),
    Fact(
        "the-guy",
        "On two legs, with all lines counted, a guy led out on the cliff side at {angle} below the "
        "horizontal has to hold {guy}; the inward pull is {inward}. It also presses the legs: from "
        "{without} to {with} in each, if they spread {spread} to either side.",
        _guyed,
    ),
)

_FIELD_MASS, _FIELD_ANGLE = 80.0, 70.0


def _cell_on_a_redirect() -> Mapping[str, Quantity]:
    load = float(vectors.weight(mass=_FIELD_MASS))
    angle = math.radians(_FIELD_ANGLE)
    free = redirects.redirect_resultant(strand_tension=load, strand_angle=angle)
    efficiency = 0.85
    hauled = redirects.unequal_redirect_pull(
        front_tension=load,
        back_tension=load / efficiency,
        front_depression=math.pi / 2,
        back_depression=math.pi / 2 - angle,
    )
    return {
        "mass": (_FIELD_MASS, Kind.MASS),
        "angle": (angle, Kind.ANGLE, 2),
        "free": (float(free), Kind.FORCE, 2),
        "efficiency": (efficiency, Kind.RATIO, 2),
        "hauled": (float(hauled), Kind.FORCE, 2),
    }


def _string_and_plumb() -> Mapping[str, Quantity]:
    back = math.radians(90 - _FIELD_ANGLE)
    lean = redirects.head_lean(front_depression=math.pi / 2, back_depression=back)
    return {
        "back": (back, Kind.ANGLE, 2),
        "lean": (float(lean), Kind.ANGLE, 2),
    }


_NOTES = TeachingNotes(
    timing=(
        (5, "A pulley on a cord between two people: they feel the pull as a third opens the cord."),
        (
            10,
            "The figure: everybody says which way the head is pulled; then move the back feet in.",
        ),
        (15, "The line of action on the board, to scale; then the guy by moments about the feet."),
        (
            10,
            "The quick checks, alone; then, in the table, the station that leans least.",
        ),
    ),
    board=(
        "The frame from the side on level ground; front feet, back feet, head. No ropes.",
        "One line over the head: two strands as arrows of the same length, and their sum.",
        "The line of action, drawn on down to the ground; see which feet it passes.",
        "The two-legged frame: its feet as a hinge. Pull, reach, guy: three moments.",
    ),
    field=(
        Fact(
            "cell-on-a-redirect",
            "Hang {mass} of test weight on a rope over a pulley with a load cell between pulley "
            "and anchor, nobody below. Lead the rope away so that its strands open to {angle}. "
            "Without friction the cell would read {free}. Raise the weight steadily: with a pulley "
            "of efficiency {efficiency} (an illustrative value: measure yours) about {hauled}.",
            _cell_on_a_redirect,
        ),
        Fact(
            "string-and-plumb-line",
            "The back strand then runs {back} below the horizontal. Sight along cell and sling "
            "with a plumb line beside them: they should lean about {lean} towards the haul side, "
            "a little more while the weight is raised.",
            _string_and_plumb,
        ),
    ),
)

HIGH_DIRECTIONAL = LessonContent(
    number=3,
    key="high-directional",
    file="03_high_directional",
    example=_known,
    title="Redirects and the high directional",
    figures=(FRAME_LEAN,),
    derivations=(
        redirects.redirect_resultant,
        redirects.head_lean,
        redirects.combined_head_pull,
        frames.landing,
        frames.guy_in_front,
        frames.leg_compression,
    ),
    facts=_FACTS,
    questions=(
        bank.REDIRECT,
        bank.LEAN,
        bank.LANDING,
        bank.HEAD_WITH_TRACK,
        bank.GUY,
    ),
    myths=(
        bank.REDIRECT,
        bank.LEAN,
        bank.LEGS,
    ),
    words=(
        "redirect",
        "high-directional",
        "resultant",
        "head",
        "lean",
        "line-of-action",
        "footprint",
        "guy",
    ),
    notes=_NOTES,
    cautions=(
        cautions.AUTHORITY,
        FRAME[0],
        "Count every line that runs through the head, and for the catch the belay as well.",
        cautions.STATIC,
        cautions.FRICTIONLESS,
    ),
)
