"""Questions on a whole raise: margins that can be stated, where to stop, rope for the lines."""

from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import raise_limits, strength
from ropecalc.teaching.questions.template import Given, Mistake, Template, Tolerance

_TWO_PER_CENT = Tolerance(relative=0.02)
_HIGHER = Given(q.LOAD_UNCERTAINTY, 0.1, 0.6, 0.05, "")
_WEAKER = Given(q.STRENGTH_UNCERTAINTY, 0.0, 0.2, 0.05, "")
_STRENGTH = Given(q.COMPONENT_STRENGTH, 4.0, 15.0, 0.5, "kN")

HONEST_MARGIN = Template(
    key="raise-honest-margin",
    title="A margin that can be stated",
    stem=(
        "The weakest part of a track line holds {strength}. At the governing station it is "
        "computed to carry {component_load}, and the load may be higher by a share of "
        "{load_uncertainty}, the strength lower by a share of {strength_uncertainty}. What margin "
        "can be stated?"
    ),
    asked="Margin, both uncertainties counted",
    givens=(_STRENGTH, Given(q.COMPONENT_LOAD, 0.8, 3.0, 0.1, "kN"), _HIGHER, _WEAKER),
    derivation=strength.margin,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "uncertainty-left-out",
            "The uncertainty left out",
            "Then the margin is one that the load may already have used up.",
            lambda v: v.strength / v.component_load,
        ),
        Mistake(
            "uncertainty-on-the-wrong-side",
            "The uncertainty counted in favour",
            "An error makes the load higher or the strength lower, whichever is worse.",
            lambda v: v.strength * (1 + v.load_uncertainty) / v.component_load,
        ),
        Mistake(
            "share-taken-off-the-margin",
            "The share taken off the margin",
            "The share belongs to the load: multiply the load by it, then divide.",
            lambda v: v.strength / v.component_load - v.load_uncertainty - v.strength_uncertainty,
        ),
    ),
    difficulty=3,
    objective="state a margin that counts what you do not know",
)

STOP_VALUE = Template(
    key="raise-stop-value",
    title="Where to stop",
    stem=(
        "The weakest part of a track line holds {strength}; it may be weaker by a share of "
        "{strength_uncertainty}. You ask for a margin of {margin}, and what the line carries may "
        "be higher than the cell shows by a share of {load_uncertainty}. At which reading in that "
        "line do you stop?"
    ),
    asked="Reading at which to stop",
    givens=(_STRENGTH, _HIGHER, _WEAKER, Given(q.MARGIN, 3.0, 8.0, 0.5, "")),
    derivation=raise_limits.stop_value,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "uncertainty-left-out",
            "The uncertainty left out",
            "The line may carry more than the cell shows, and hold less than you think.",
            lambda v: v.strength / v.margin,
        ),
        Mistake(
            "stop-at-the-strength",
            "The strength itself taken, with the uncertainty off",
            "At that reading nothing of the margin is left.",
            lambda v: v.strength * (1 - v.strength_uncertainty) / (1 + v.load_uncertainty),
        ),
        Mistake(
            "uncertainty-on-the-wrong-side",
            "The uncertainty counted in favour",
            "Stop earlier for what you do not know, not later.",
            lambda v: v.strength * (1 + v.load_uncertainty) / v.margin,
        ),
    ),
    difficulty=2,
    objective="say at which reading to stop",
)

TRACK_ROPE = Template(
    key="raise-track-rope",
    title="Rope for one track line",
    stem=(
        "A track line runs {setback} from its tie-off to the directional. Over the whole raise the "
        "longest way from the directional past the litter to the hub is {track_length}; at that "
        "moment the rope grab is {gap} from the hub. A tail of {line_tail} is to be tied back. How "
        "much rope does the line need?"
    ),
    asked="Length of rope for the line",
    givens=(
        Given(raise_limits.SETBACK, 4, 20, 1, "m"),
        Given(q.TRACK_LENGTH, 45, 90, 1, "m"),
        Given(raise_limits.GAP, 2, 15, 1, "m"),
        Given(raise_limits.LINE_TAIL, 5, 20, 1, "m"),
    ),
    derivation=raise_limits.track_rope,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "setback-forgotten",
            "The piece behind the directional forgotten",
            "The line is tied off behind the edge, and that piece is rope, too.",
            lambda v: v.track_length - v.gap + v.line_tail,
        ),
        Mistake(
            "gap-added",
            "The gap to the hub added",
            "The line ends at its grab. From there to the hub runs the tensioner, not the line.",
            lambda v: v.setback + v.track_length + v.gap + v.line_tail,
        ),
        Mistake(
            "no-tail",
            "The tail forgotten",
            "Without a tail nothing can be tied back.",
            lambda v: v.setback + v.track_length - v.gap,
        ),
    ),
    difficulty=2,
    objective="find how long a track line has to be",
)

QUESTIONS = (HONEST_MARGIN, STOP_VALUE, TRACK_ROPE)
"""This module's questions, in the order of the lesson."""
