"""The weakest link: every component against the load that it carries itself.

A chain of components does not share one load. A device in a 2:1 carries about half of its line, a
hub carries all lines together, a redirect up to twice its rope. So each strength is divided by its
own load. Strengths, loads and required factors are what the user enters; none is built in.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from ropecalc import cautions
from ropecalc.derivation import (
    NOT_NEGATIVE,
    Argument,
    DomainError,
    Explanation,
    Step,
    derive,
)
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import account, checked, named, one_case, said, single
from ropecalc.units import Display, Kind, Rounding

LIMITS = (
    "Strengths are the ones you entered: rated for new equipment, pulled in its intended "
    "direction. A working load limit is not a breaking strength; do not mix the two.",
    "The factor that is required is a matter for your authority having jurisdiction. None is "
    "recommended here.",
    cautions.STATIC,
    cautions.AUTHORITY,
)


@derive(
    "Margin of a component, with uncertainty",
    given=(
        q.COMPONENT_STRENGTH,
        q.COMPONENT_LOAD,
        q.LOAD_UNCERTAINTY,
        q.STRENGTH_UNCERTAINTY,
    ),
    result=q.MARGIN,
    assumptions=(
        "The load is the one that this component carries.",
        "The worst of both uncertainties is taken: the load higher, the strength lower.",
    ),
    cautions=LIMITS,
    source="the definition of a static factor",
)
def margin(argument: Argument) -> Step:
    """Strength over load, both taken at their unfavourable end: a plain number."""
    strength, load, more, less, factor = argument.symbols(
        q.COMPONENT_STRENGTH,
        q.COMPONENT_LOAD,
        q.LOAD_UNCERTAINTY,
        q.STRENGTH_UNCERTAINTY,
        q.MARGIN,
    )
    held = argument.law(
        "The factor says how many times the largest load fits into the least strength.",
        factor * load * (1 + more),
        strength * (1 - less),
    )
    return argument.solve("Solve for the factor.", held, factor)


@derive(
    "Strength of a rope with its knot or termination",
    given=(q.BREAKING_STRENGTH, q.TERMINATION),
    result=q.COMPONENT_STRENGTH,
    assumptions=("The share is the one that you measured or were given for this rope and knot.",),
    cautions=LIMITS,
    source="the definition of a knot's efficiency",
)
def terminated_strength(argument: Argument) -> Step:
    """Strength in N that is left of a rope where its knot or termination holds it."""
    breaking, share, strength = argument.symbols(
        q.BREAKING_STRENGTH, q.TERMINATION, q.COMPONENT_STRENGTH
    )
    return argument.law("The knot leaves a share of it.", strength, breaking * share)


@dataclass(frozen=True)
class Component:
    """One component: its ``name``, its strength in N and the load in N that it carries itself.

    ``strength`` and ``load`` may be arrays that go together, for instance along a raise. A load
    of 0 is that of a component that is not loaded.
    """

    name: str
    strength: Any
    load: Any


@dataclass(frozen=True)
class WeakestLink:
    """The margins of all components, and which of them is the least.

    ``margins`` go with ``components``; infinite for one that is not loaded. ``least`` is the
    smallest margin (at each point, for arrays) and ``weakest`` the index of the component that has
    it; the first one of equals, and −1 at points of an array where nothing is loaded. ``inside`` is
    None where no required factor was entered.
    """

    components: tuple[Component, ...]
    margins: tuple[Any, ...]
    least: Any
    weakest: Any
    load_uncertainty: float
    strength_uncertainty: float
    required: float | None
    inside: Any
    cautions: tuple[str, ...] = LIMITS

    def explain(self, display: Display | None = None) -> Explanation:
        """Each component with its own load, for single values (not arrays); factors rounded down.

        Loads are shown rounded up and strengths rounded down.
        """
        one_case(self.least)
        display = display or Display()

        def factor(value: float) -> str:
            return display.number(value, Kind.RATIO, 2, Rounding.DOWN)

        def told(part: Component, value: float) -> str:
            strength = display.show(part.strength, Kind.FORCE, 2, Rounding.DOWN)
            if value == np.inf:
                return f"{part.name}: {strength}, not loaded."
            load = display.show(part.load, Kind.FORCE, 2, Rounding.UP)
            return f"{part.name}: {strength} over {load}, factor {factor(value)}."

        lines = [
            said(told(part, value))
            for part, value in zip(self.components, self.margins, strict=True)
        ]
        lines.insert(0, said("Each strength is divided by that component's own load.", law=True))
        if self.load_uncertainty or self.strength_uncertainty:
            lines.insert(
                1,
                said(
                    f"Loads may be higher by {self.load_uncertainty:.3g} of themselves and "
                    f"strengths lower by {self.strength_uncertainty:.3g}; the factors count "
                    "with both."
                ),
            )
        weakest = self.components[int(self.weakest)].name
        return account(
            "The weakest link",
            lines,
            f"weakest: {weakest}, factor {factor(self.least)}. {self.verdict}",
            cautions=self.cautions,
            source="the definition of a static factor",
        )

    @property
    def verdict(self) -> str:
        """Inside or outside the limit that was entered, in words; for single values."""
        if self.required is None:
            return "No limit entered."
        side = "Inside" if self.inside else "Outside"
        return f"{side} the limit you entered, a factor of {self.required:.6g}."


def weakest_link(
    components: Sequence[Component],
    *,
    load_uncertainty: float = 0.0,
    strength_uncertainty: float = 0.0,
    required: float | None = None,
) -> WeakestLink:
    """The margin of each component with its own load, and the least of them.

    The uncertainties are shares (0.3: loads may be 30 % higher); ``required`` is the factor that
    the user's authority asks for, if any. A component with a load of 0 does not govern. Raises
    :class:`DomainError` for no components, nameless ones or two of the same name, if none is
    loaded, and for values outside their domains.
    """
    parts = tuple(components)
    if not parts:
        raise DomainError("components is empty; give at least one component with its own load.")
    names = [part.name.strip() for part in parts]
    if not all(names):
        raise DomainError("A component has no name. Name each one, so that the weakest is known.")
    for name in names:
        if names.count(name) > 1:
            raise DomainError(f"Two components are called “{name}”. Give each its own name.")
    more, less = single(
        (q.LOAD_UNCERTAINTY, load_uncertainty), (q.STRENGTH_UNCERTAINTY, strength_uncertainty)
    )
    if required is not None:
        (required,) = single((named(q.MARGIN, "required", "factor that is required"), required))
    margins = tuple(_margin(part, more, less) for part in parts)
    table = np.stack(np.broadcast_arrays(*margins))
    least = table.min(axis=0)
    if np.all(least == np.inf):
        raise DomainError("No component is loaded. Give at least one the load that it carries.")
    enough = None if required is None else least >= required * (1 - _NOISE)
    weakest = np.where(least == np.inf, -1, table.argmin(axis=0))
    return WeakestLink(
        components=parts,
        margins=margins,
        least=least if least.ndim else float(least),
        weakest=weakest if weakest.ndim else int(weakest),
        load_uncertainty=more,
        strength_uncertainty=less,
        required=required,
        inside=None if required is None else (enough if least.ndim else bool(enough)),
    )


_NOISE = 1e-12
"""What the last digits of a quotient may be off by: no verdict hangs on it."""
_MAY_BE_IDLE = replace(q.COMPONENT_LOAD, domain=NOT_NEGATIVE)


def _margin(part: Component, more: float, less: float) -> Any:
    try:
        (load,) = checked((_MAY_BE_IDLE, part.load))
        idle = np.equal(load, 0.0)
        found = np.where(
            idle,
            np.inf,
            margin(
                strength=part.strength,
                component_load=np.where(idle, 1.0, load),
                load_uncertainty=more,
                strength_uncertainty=less,
            ),
        )
        return found if found.ndim else float(found)
    except DomainError as error:
        refusal = error

    def words(display: Display) -> str:
        return f"{part.name}: {refusal.in_units(display)}"

    raise DomainError(words, refusal.keyword)
