"""Anchor legs from measured places and lengths, in space and in the plane of a bridle.

::

    x out from the wall, y along the wall, z up; a leg pulls the knot towards its anchor

Three legs that do not lie in one plane are settled by statics: :func:`three_legs`. With one leg
more, or three in a plane, statics leaves a range: :func:`redundant_legs` gives the range of every
leg and, next to it, one possible sharing, that of stretching legs with their errors of length.
"""

from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from ropecalc import cautions as caution
from ropecalc.derivation import Domain, DomainError, Explanation, as_numbers
from ropecalc.mechanics import anchors
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import account, checked, named, said
from ropecalc.mechanics.straight import FLAT
from ropecalc.units import Display, Kind, Rounding

IN_SPACE = (
    "Static model with straight, weightless legs. Left out: starts, stops and snags, wind, edge "
    "damage, anchor quality, people.",
    caution.FRICTIONLESS,
    caution.AUTHORITY,
)
ROUNDING = 1e-9
"""Share of the pull below which a push is a rounding error."""


@dataclass(frozen=True)
class Legs:
    """What each of three legs carries.

    ``directions`` are unit vectors from the knot to the anchors, shape (..., 3 legs, 3 axes);
    ``tensions`` N, shape (..., 3 legs); ``pull`` N, shape (..., 3 axes); ``knot`` m where places
    were given, else None.
    """

    directions: Any
    tensions: Any
    pull: Any
    knot: Any = None
    cautions: tuple[str, ...] = IN_SPACE

    def explain(self, display: Display | None = None) -> Explanation:
        """The balance in words, for one set of legs (not arrays)."""
        display = display or Display()
        size = float(np.linalg.norm(self.pull))
        lines = [
            said(
                "Each leg pulls the knot towards its anchor; together they balance the pull, out, "
                "along the wall and upward. Three equations for three tensions.",
                r"L_1 \vec{u}_1 + L_2 \vec{u}_2 + L_3 \vec{u}_3 + \vec{F} = 0",
                law=True,
            )
        ]
        for number, (unit, tension) in enumerate(
            zip(self.directions, self.tensions, strict=True), 1
        ):
            x, y, z = unit
            lines.append(
                said(
                    f"Leg {number} points {x:+.3f} out, {y:+.3f} along, {z:+.3f} up for each metre "
                    f"of it, and carries {display.show(tension, Kind.FORCE)} "
                    f"({tension / size:.0%} of the pull).".replace("-", "−")
                )
            )
        worst = int(np.argmax(self.tensions))
        return account(
            "Three legs in space",
            lines,
            f"most loaded: leg {worst + 1} with {display.show(self.tensions[worst], Kind.FORCE)}",
            assumptions=anchors.ASSUMED,
            cautions=self.cautions,
        )


def three_legs(directions: Any, pull: Any) -> Legs:
    """Tensions of three legs that hold the force ``pull`` (N; x out, y along, z up).

    ``directions`` from the knot to the anchors, of any length, as three rows; leading axes are
    cases. A load W has the pull (0, 0, −W). Raises :class:`DomainError` when the legs lie in one
    plane or nearly (statics cannot tell them apart) or when a leg would have to push.
    """
    units, force = _units(directions, 3), vectors_of("pull", pull)
    size = np.linalg.norm(force, axis=-1)
    if not np.all(size > 0):
        raise DomainError("pull has no size; give the force on the knot in newtons.")
    if not np.all(np.abs(np.linalg.det(units)) > FLAT):
        raise DomainError(
            "The three legs lie in one plane, or nearly, so statics alone cannot share the load. "
            "Spread them further apart, or ask for the range that each leg may carry."
        )
    columns = np.swapaxes(units, -1, -2)
    tensions = np.linalg.solve(columns, -force[..., None])[..., 0]
    pushing = tensions < -ROUNDING * size[..., None]
    if np.any(pushing):
        which = int(np.argwhere(pushing)[0][-1]) + 1
        raise DomainError(
            f"Leg {which} would have to push, and a leg can only pull: the pull points outside the "
            f"three legs. Move anchor {which} or bring the pull in between the legs."
        )
    return Legs(units, np.maximum(tensions, 0.0), force)


def three_legs_at(knot: Any, anchor_places: Any, pull: Any) -> Legs:
    """The same from places in m: ``knot`` (x, y, z) and three rows of anchors."""
    at, places = vectors_of("knot", knot), places_of(anchor_places, 3)
    found = three_legs(places - at[..., None, :], pull)
    return Legs(found.directions, found.tensions, found.pull, at)


def three_legs_of_lengths(anchor_places: Any, lengths: Any, pull: Any) -> Legs:
    """The same from three anchors and the ``lengths`` of their legs (m); the knot is found.

    Of the two places where the three lengths meet, the one on the side that the pull points to.
    Raises :class:`DomainError` when the lengths do not meet. One case at a time.
    """
    places = places_of(anchor_places, 3)
    (size,) = checked((named(q.LEG_LENGTH, "lengths", "length of a leg"), lengths))
    force = vectors_of("pull", pull)
    if places.ndim != 2 or np.shape(size) != (3,):
        raise DomainError("Give three anchors, each with x, y and z, and three lengths.")
    first, second, third = places
    along, across = second - first, third - first
    base = float(np.linalg.norm(along))
    normal = np.cross(along, across)
    if not np.linalg.norm(normal) > FLAT * max(base, float(np.linalg.norm(across))) ** 2:
        raise DomainError(
            "The three anchors lie in one line, or nearly, so the lengths do not fix the knot. "
            "Move one anchor to the side."
        )
    # the knot in axes of the anchors' plane (trilateration)
    one = along / base
    depth = normal / np.linalg.norm(normal)
    two = np.cross(depth, one)
    p, r = float(one @ across), float(two @ across)
    u = (size[0] ** 2 - size[1] ** 2 + base**2) / (2 * base)
    v = (size[0] ** 2 - size[2] ** 2 + p**2 + r**2 - 2 * p * u) / (2 * r)
    rest = size[0] ** 2 - u**2 - v**2
    if not rest > 0:
        raise DomainError(
            "Legs of these lengths do not meet: at least one is too short, or so long that it "
            "hangs slack. Check the lengths and the places of the anchors."
        )
    side = 1.0 if depth @ force > 0 else -1.0
    knot = first + u * one + v * two + side * np.sqrt(rest) * depth
    return three_legs_at(knot, places, force)


# --- more legs than statics can tell apart ---------------------------------------------------


@dataclass(frozen=True)
class SharedLegs:
    """Legs that share a load: what each may carry, and what each does if all stretch alike.

    ``least`` and ``most`` N are the ends of each leg's range over every way of sharing that
    balances the pull. ``stretched`` N is the sharing of elastic legs with the given errors of
    length, ``sunk`` m how far their knot moves along the pull.
    """

    least: tuple[float, ...]
    most: tuple[float, ...]
    stretched: tuple[float, ...]
    sunk: float
    cautions: tuple[str, ...] = (
        "Statics alone does not settle how these legs share. The stretched values hold only for "
        "these lengths and this stiffness; size each leg and its anchor for its whole range.",
        *IN_SPACE,
    )

    def explain(self, display: Display | None = None) -> Explanation:
        """Range and sharing, leg by leg."""
        display = display or Display()

        def show(force: float, rounding: Rounding = Rounding.NEAREST) -> str:
            return display.show(force, Kind.FORCE, rounding=rounding)

        lines = [
            said(
                "There are more legs than equations of balance, so many ways of sharing hold the "
                "pull. The range of a leg runs from the least to the most that it carries in any "
                "of them.",
                law=True,
            ),
            said(
                "Stretch picks one: the knot settles where the stretched legs balance the pull; "
                f"here it moves {display.show(self.sunk, Kind.LENGTH)} along the pull."
            ),
        ]
        for number, (low, high, now) in enumerate(
            zip(self.least, self.most, self.stretched, strict=True), 1
        ):
            slack = " (slack)" if now == 0 else ""
            lines.append(
                said(
                    f"Leg {number}: anywhere from {show(low, Rounding.DOWN)} to "
                    f"{show(high, Rounding.UP)}; with this stretch and these lengths "
                    f"{show(now)}{slack}."
                )
            )
        worst = show(max(self.most), Rounding.UP)
        return account(
            "Legs that share a load",
            lines,
            f"any one leg may have to carry up to {worst}",
            assumptions=anchors.ASSUMED,
            cautions=self.cautions,
        )


def redundant_legs(
    knot: Any, anchor_places: Any, pull: Any, *, stiffness: Any, length_errors: Any = 0.0
) -> SharedLegs:
    """How two or more legs may share ``pull`` (N), and how they do when they stretch.

    ``knot`` (x, y, z) m where the legs would be just taut, ``anchor_places`` one row a leg (m),
    ``stiffness`` N for each leg or for all (force to double its length if it stayed linear),
    ``length_errors`` m by which each leg is longer (positive) than just taut. One case at a time.
    Raises :class:`DomainError` when no sharing balances the pull.
    """
    at, force = vectors_of("knot", knot), vectors_of("pull", pull)
    places = places_of(anchor_places, None)
    if at.ndim != 1 or force.ndim != 1 or places.ndim != 2:
        raise DomainError("Give one knot, one pull and one row of anchors at a time.")
    units = _units(places - at, None)
    errors = named(q.X, "length_errors", "error of length of a leg")
    stiff, extra = checked((_STIFFNESS, stiffness), (errors, length_errors))
    count = len(places)
    try:
        stiff, extra = np.broadcast_to(stiff, count), np.broadcast_to(extra, count)
    except ValueError:
        raise DomainError(
            f"stiffness and length_errors must be one number or {count} numbers, one a leg."
        ) from None
    reach = np.linalg.norm(places - at, axis=1)
    lengths = reach + extra
    if not np.all(lengths > 0) or np.any(lengths > 2 * reach):
        raise DomainError(
            "length_errors shorten a leg to nothing or double it; check them, they are in metres."
        )
    least, most = _ranges(units, force)
    place = _settled(at, places, lengths, stiff, force)
    stretched = _tensions(place, places, lengths, stiff)
    sunk = float((place - at) @ force / np.linalg.norm(force))
    return SharedLegs(tuple(least), tuple(most), tuple(map(float, stretched)), sunk)


_STIFFNESS = replace(q.LEG_STIFFNESS, domain=Domain(1.0, 1e12))
_AGAINST = (
    "Some legs pull straight against each other, or nearly, so they could be strained without "
    "end. Leave out the legs that do not hold the pull, or bring the knot further away from the "
    "line between their anchors."
)


def _ranges(units: Any, pull: Any) -> tuple[list[float], list[float]]:
    """Least and largest tension of each leg over all sharings without a push."""
    from scipy.optimize import linprog

    size = float(np.linalg.norm(pull))
    if not size > 0:
        raise DomainError("pull has no size; give the force on the knot in newtons.")
    least: list[float] = []
    most: list[float] = []
    for leg in np.eye(len(units)):
        for sign, ends in ((1.0, least), (-1.0, most)):
            found = linprog(sign * leg, A_eq=units.T, b_eq=-pull / size, bounds=(0, None))
            if found.status == 3:
                raise DomainError(_AGAINST)
            if not found.success:
                raise DomainError(
                    "No sharing holds this pull: a leg would have to push. Move an anchor or bring "
                    "the pull in between the legs."
                )
            ends.append(max(0.0, sign * float(found.fun)) * size)
    if max(most) > size / FLAT:
        raise DomainError(_AGAINST)
    return least, most


def _tensions(at: Any, places: Any, lengths: Any, stiffness: Any) -> Any:
    reach = np.linalg.norm(places - at, axis=1)
    return np.maximum(0.0, stiffness * (reach - lengths) / lengths)


def _settled(at: Any, places: Any, lengths: Any, stiffness: Any, pull: Any) -> Any:
    """Where the knot comes to rest: the lowest energy, by Newton's steps cut short if they climb.

    Energy is convex in the place, so there is one lowest value and the start does not matter.
    """
    springs = stiffness / lengths
    size = np.linalg.norm(pull)

    def energy(place: Any) -> float:
        stretch = np.maximum(0.0, np.linalg.norm(places - place, axis=1) - lengths)
        return float(springs @ stretch**2 / 2 - pull @ (place - at))

    place = at + pull / size * (np.max(np.abs(lengths)) * size / np.min(stiffness))
    for _ in range(200):
        ways = places - place
        reach = np.linalg.norm(ways, axis=1)
        units = ways / reach[:, None]
        tension = springs * np.maximum(0.0, reach - lengths)
        slope = -tension @ units - pull
        if np.linalg.norm(slope) <= 1e-11 * size:
            break
        bend = np.eye(3) * 1e-9 * np.max(springs)
        for spring, unit, force, far in zip(springs, units, tension, reach, strict=True):
            if force > 0:
                outer = np.outer(unit, unit)
                bend = bend + spring * outer + force / far * (np.eye(3) - outer)
        step = np.linalg.solve(bend, -slope)
        step *= min(1.0, float(np.max(lengths)) / float(np.linalg.norm(step)))
        now, share = energy(place), 1.0
        while energy(place + share * step) > now + 1e-4 * share * (slope @ step) and share > 1e-10:
            share /= 2
        place = place + share * step
    return place


# --- a bridle of two legs in the plane --------------------------------------------------------


@dataclass(frozen=True)
class Bridle:
    """Two legs of given lengths under a plumb load: where the knot hangs and what they carry.

    ``knot`` (x, z) m; ``tensions`` N of the first and the second leg, 0 for one that hangs slack;
    ``included_angle`` rad between the legs, None when one is slack.
    """

    knot: tuple[float, float]
    tensions: tuple[float, float]
    included_angle: float | None
    sentence: str
    cautions: tuple[str, ...] = caution.EVERY_RESULT

    def explain(self, display: Display | None = None) -> Explanation:
        """Where the knot hangs, then the two tensions."""
        display = display or Display()
        x, z = (display.show(value, Kind.LENGTH) for value in self.knot)
        first, second = (display.show(value, Kind.FORCE) for value in self.tensions)
        return account(
            "A bridle by its lengths",
            (
                said(f"The two lengths put the knot {x} out and {z} up."),
                said(self.sentence),
            ),
            f"leg 1 carries {first}, leg 2 {second}",
            assumptions=anchors.ASSUMED,
            cautions=self.cautions,
        )


def bridle(
    first: tuple[float, float],
    second: tuple[float, float],
    *,
    first_length: float,
    second_length: float,
    load: float,
) -> Bridle:
    """Tensions of two legs from anchors at ``first`` and ``second`` ((x, z) in m).

    Lengths in m, plumb ``load`` in N. When one leg is so long that the load hangs straight below
    the other's anchor, it is slack. Raises :class:`DomainError` when the legs do not meet.
    """
    one, two, weight = checked(
        (named(q.LEG_LENGTH, "first_length", "length of leg 1"), first_length),
        (named(q.LEG_LENGTH, "second_length", "length of leg 2"), second_length),
        (q.LOAD, load),
    )
    ends = [pair_of("first", first), pair_of("second", second)]
    if any(np.ndim(value) for value in (one, two, weight)):
        raise DomainError("bridle takes single numbers; give one case at a time.")
    apart = ends[1] - ends[0]
    distance = float(np.hypot(*apart))
    for mine, length, other in ((0, one, two), (1, two, one)):
        hanging = ends[mine] - np.array([0.0, length])
        if float(np.hypot(*(hanging - ends[1 - mine]))) <= other:
            tensions = (weight, 0.0) if mine == 0 else (0.0, weight)
            return Bridle(
                (float(hanging[0]), float(hanging[1])),
                tensions,
                None,
                f"Leg {2 - mine} is long enough to hang slack: the load hangs straight below the "
                f"anchor of leg {mine + 1}, which carries all of it.",
            )
    if one + two <= distance:
        raise DomainError(
            lambda display: (
                f"The two legs together are {display.show(one + two, Kind.LENGTH)} and the anchors "
                f"{display.show(distance, Kind.LENGTH)} apart, so they do not meet below them. Use "
                "longer legs or anchors closer together."
            )
        )
    along = (distance**2 + one**2 - two**2) / (2 * distance)
    depth = np.sqrt(max(0.0, one**2 - along**2))
    unit = apart / distance
    across = np.array([unit[1], -unit[0]])
    knot = ends[0] + along * unit + depth * (across if across[1] < 0 else -across)
    ways = [(end - knot) / np.hypot(*(end - knot)) for end in ends]
    between = float(np.arccos(np.clip(ways[0] @ ways[1], -1.0, 1.0)))
    if not np.pi - between > FLAT:
        raise DomainError(
            "The two legs lie in one straight line, or nearly, so their tension has no limit. Use "
            "longer legs or anchors closer together."
        )
    first_pull, second_pull = np.linalg.solve(np.array(ways).T, [0.0, weight])
    even = abs(first_pull - second_pull) <= FLAT * weight  # lengths are not known better
    shares = "they share equally" if even else "the steeper one carries more"
    return Bridle(
        (float(knot[0]), float(knot[1])),
        (float(first_pull), float(second_pull)),
        between,
        f"The legs stand {np.degrees(between):.3g}° apart, and {shares}.",
    )


# --- reading places --------------------------------------------------------------------------


def vectors_of(name: str, value: Any) -> Any:
    array = np.asarray(as_numbers(name, value))
    if array.shape[-1:] != (3,) or not np.all(np.isfinite(array)):
        raise DomainError(f"{name} must be three finite numbers: x out, y along the wall, z up.")
    return array


def places_of(value: Any, count: int | None) -> Any:
    array = vectors_of("anchor_places", value)
    if array.ndim < 2 or (count is not None and array.shape[-2] != count):
        wanted = "one row for each leg" if count is None else f"{count} rows, one for each leg"
        raise DomainError(f"anchor_places must have {wanted}, each with x, y and z in metres.")
    return array


def _units(value: Any, count: int | None) -> Any:
    array = vectors_of("directions", value)
    if array.ndim < 2 or (count is not None and array.shape[-2] != count):
        raise DomainError("directions must have three rows, one for each leg, with x, y and z.")
    length = np.linalg.norm(array, axis=-1, keepdims=True)
    if not np.all(length > 0):
        raise DomainError("A leg has no length: its anchor lies in the knot. Check the places.")
    return array / length


def pair_of(name: str, value: Any) -> Any:
    array = np.asarray(as_numbers(name, value))
    if array.shape != (2,) or not np.all(np.isfinite(array)):
        raise DomainError(f"{name} must be two finite numbers: x out and z up, in metres.")
    return array
