"""Four people: an edge, pulleys, throws, time, and what the team can put into a snag."""

from collections.abc import Callable
from dataclasses import replace

from sympy import exp, pi

from ropecalc import cautions
from ropecalc.mechanics import hauling
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import named
from ropecalc.mechanics.pulleys import formulas
from ropecalc.teaching.questions.bank import friction
from ropecalc.teaching.questions.bank import throw_and_time as throws
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.question import Values
from ropecalc.teaching.questions.template import Mistake
from ropecalc.teaching.scenarios import places
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario, Source

_HAUL = Given(q.HAUL_TENSION, 1.4, 1.8, 0.02, "kN")
_FRICTION = Given(q.FRICTION, 0.20, 0.28, 0.02, "")
_TURN = Given(q.TURN, 50, 70, 5, "°")
_EFFICIENCY = Given(q.SHEAVE_EFFICIENCY, 0.86, 0.94, 0.01, "")
_HEIGHT = Given(hauling.RAISE_HEIGHT, 26, 32, 1, "m")
_LONG = Given(
    named(hauling.THROW_RISE, "long_throw", "rise of a throw of the 3:1"), 3.5, 4.5, 0.5, "m"
)
_SHORT = Given(
    named(hauling.THROW_RISE, "short_throw", "rise of a throw of the 9:1"), 2.0, 2.5, 0.5, "m"
)
_LOSS = Given(hauling.RESET_LOSS, 0.2, 0.4, 0.1, "m")
_SPEED = Given(hauling.HAND_SPEED, 0.2, 0.4, 0.1, "m/s")
_RESET = Given(hauling.RESET_TIME, 15, 25, 5, "s")
_PEOPLE = Given(hauling.PEOPLE, 4, 6, 1, "")
_BURST = Given(hauling.BURST, 0.30, 0.40, 0.05, "kN")
_ABOVE = Given(named(q.LOAD, "above_edge", "tension above the edge"), 1.5, 2.6, 0.01, "kN")
_ACTUAL = Given(named(q.ADVANTAGE, "actual_advantage", "actual advantage"), 5.5, 8.5, 0.01, "")
_THROWS_3 = Given(named(hauling.THROWS, "throws_of_3", "throws with the 3:1"), 5, 14, 1, "")
_THROWS_9 = Given(named(hauling.THROWS, "throws_of_9", "throws with the 9:1"), 8, 25, 1, "")
_EDGE_OF_A_THROW = 0.08
_SAME = "reset-loss-left-out"
"""With so few throws it often gives the same number."""
_RIGHT_ANGLE_UP = Mistake(
    "a-right-angle",
    "Every edge taken for a right angle",
    "Friction goes with the angle through which the rope really turns.",
    lambda v: v.tension_behind * exp(v.friction * pi / 2),
)
_RIGHT_ANGLE_DOWN = replace(
    _RIGHT_ANGLE_UP, wrong=lambda v: v.tension_ahead * exp(-v.friction * pi / 2)
)


def _not_by_chance(values: Values) -> bool:
    """Whether a few centimetres more would not change the number of throws."""
    gain = values["throw_rise"] - values["reset_loss"]
    exact = (values["raise_height"] - values["reset_loss"]) / gain
    return _EDGE_OF_A_THROW < exact % 1 < 1 - _EDGE_OF_A_THROW


def _is(number: float) -> Callable[[Values], float]:
    """A number that the question's words fix, such as the parts of a 3:1."""
    return lambda _: number


def _throws(key: str, ratio: str, rise: Given) -> Part:
    count = _THROWS_3 if ratio == "3:1" else _THROWS_9
    return Part(
        replace(
            throws.THROWS if ratio == "9:1" else places.without(throws.THROWS, _SAME),
            key=key,
            title=f"Throws with the {ratio}",
            stem=(
                f"A raise of {{raise_height}}. In a throw of the {ratio} the load gains "
                "{throw_rise}, and each reset gives {reset_loss} back. How many throws does it "
                "take?"
            ),
            givens=(_HEIGHT, Given(hauling.THROW_RISE, rise.low, rise.high, rise.step, "m"), _LOSS),
            usable=_not_by_chance,
            must_pass=False,
        ),
        take={"throw_rise": rise.name},
        gives=count,
    )


def _time(key: str, ratio: str, count: Given) -> Part:
    advantage = 3 if ratio == "3:1" else 9
    take: dict[str, Source] = {"throws": count.name, "advantage": _is(advantage)}
    return Part(
        replace(
            throws.TIME,
            key=key,
            title=f"Time with the {ratio}",
            stem=(
                "The team raises {raise_height} with an advantage by travel of {advantage}. It "
                "walks {hand_speed}, needs {throws} throws, loses {reset_loss} at each reset, and "
                "a reset takes {reset_time}. How long does the raise take?"
            ),
            givens=(
                _HEIGHT,
                Given(q.TRAVEL_ADVANTAGE, advantage, advantage, 1, ""),
                _SPEED,
                Given(hauling.THROWS, count.low, count.high, 1, ""),
                _LOSS,
                _RESET,
            ),
            must_pass=False,
        ),
        take=take,
        after=(count.name,),
    )


FOUR_PEOPLE = Scenario(
    key="four-people",
    number=7,
    title="Four people",
    story=(
        "Four people have to bring a litter up the Lower Heron Wall in Tamarack Gorge. At the "
        "hardest place the haul line carries {haul_tension} below the edge, over which it turns "
        "through {turn}; rope and edge have a coefficient of friction of {friction}. All pulleys "
        "have an efficiency of {efficiency}. The raise is {raise_height}. A 3:1 gains {long_throw} "
        "in a throw, a 9:1 (a 3:1 on a 3:1) {short_throw}; each reset gives {reset_loss} back and "
        "takes {reset_time}. The team walks {hand_speed}. If the litter catches, {people} excited "
        "people may pull, {burst_per_person} each."
    ),
    givens=(
        _HAUL,
        _FRICTION,
        _TURN,
        _EFFICIENCY,
        _HEIGHT,
        _LONG,
        _SHORT,
        _LOSS,
        _SPEED,
        _RESET,
        _PEOPLE,
        _BURST,
    ),
    parts=(
        Part(
            replace(
                friction.EDGE_RAISING,
                mistakes=(
                    *places.mistakes_of(friction.EDGE_RAISING, "coefficient-added"),
                    _RIGHT_ANGLE_UP,
                ),
                key="four-people-edge-raising",
                title="Above the edge, raising",
                stem=(
                    "The load's side carries {tension_behind}, the rope turns through {turn} over "
                    "the edge, and the coefficient of friction is {friction}. What tension is "
                    "above the edge while the team raises?"
                ),
                givens=(Given(q.TENSION_BEHIND, 1.4, 1.8, 0.02, "kN"), _FRICTION, _TURN),
                must_pass=False,
            ),
            take={"tension_behind": "haul_tension"},
            gives=_ABOVE,
        ),
        Part(
            replace(
                friction.EDGE_LOWERING,
                mistakes=(
                    *places.mistakes_of(friction.EDGE_LOWERING, "coefficient-taken-off"),
                    _RIGHT_ANGLE_DOWN,
                ),
                key="four-people-edge-lowering",
                title="Above the edge, lowering",
                stem=(
                    "The same rope, the same edge: a turn of {turn}, a coefficient of {friction}, "
                    "and {tension_ahead} on the load's side. What tension is above the edge while "
                    "it is lowered?"
                ),
                givens=(_FRICTION, _TURN, Given(q.TENSION_AHEAD, 1.4, 1.8, 0.02, "kN")),
                must_pass=False,
            ),
            take={"tension_ahead": "haul_tension"},
        ),
        Part(
            replace(
                friction.RAISING,
                key="four-people-hands-3",
                title="Hands on a 3:1",
                stem=(
                    "A simple {parts}:1 pulls on the {load} above the edge. Every pulley has an "
                    "efficiency of {efficiency}, and the haul strand leaves the travelling pulley. "
                    "How hard must the team pull?"
                ),
                givens=(
                    Given(q.LOAD, 1.5, 2.6, 0.01, "kN"),
                    _EFFICIENCY,
                    Given(q.PARTS, 3, 3, 1, ""),
                ),
                must_pass=False,
            ),
            take={"load": "above_edge", "parts": _is(3)},
            after=("above_edge",),
        ),
        Part(
            replace(
                places.without(friction.STACKED, "stages-added"),
                key="four-people-advantage-9",
                title="What a 9:1 is worth",
                stem=(
                    "A simple {second_parts}:1 pulls on the haul strand of a simple "
                    "{first_parts}:1. All pulleys have an efficiency of {efficiency}. What is the "
                    "actual advantage while hauling?"
                ),
                givens=(
                    _EFFICIENCY,
                    Given(formulas.FIRST_STAGE, 3, 3, 1, ""),
                    Given(formulas.SECOND_STAGE, 3, 3, 1, ""),
                ),
                must_pass=False,
            ),
            take={"first_parts": _is(3), "second_parts": _is(3)},
            gives=_ACTUAL,
        ),
        _throws("four-people-throws-3", "3:1", _LONG),
        _throws("four-people-throws-9", "9:1", _SHORT),
        _time("four-people-time-3", "3:1", _THROWS_3),
        _time("four-people-time-9", "9:1", _THROWS_9),
        Part(
            replace(
                throws.SNAG,
                key="four-people-snag",
                title="Into a snag",
                stem=(
                    "The litter catches while {people} people haul on the 9:1 with an actual "
                    "advantage of {advantage}, and for a moment each of them pulls "
                    "{burst_per_person}. With what force do they pull at the snag, if the edge is "
                    "left out?"
                ),
                givens=(_PEOPLE, _BURST, Given(q.ADVANTAGE, 5.5, 8.5, 0.01, "")),
                must_pass=False,
            ),
            take={"advantage": "actual_advantage"},
            after=("actual_advantage",),
        ),
    ),
    judged=(
        Judged(
            key="four-people-recommend",
            title="What would you rig?",
            question=(
                "Which system do you recommend for these four people, and why? What tells the "
                "team that the litter has caught, and what do they do then?"
            ),
            points=(
                "Compare the hand force with what four people can keep up: the 3:1 asks for "
                "nearly all of them, the 9:1 for about two.",
                "The 9:1 has more throws and resets and takes much longer, so an answer says which "
                "of force and time matters here.",
                "Protection or a pulley at the edge saves more than another stage, because the "
                "edge multiplies every pull.",
                "The higher the advantage, the less the team feels of a snag: a few people on a "
                "9:1 reach forces that break something.",
                "A snag shows as a haul cell that rises while the litter gains no height; a caller "
                "who sees the litter stops the haul at once.",
                "After the stop the haul is eased before anybody looks for the cause, and nobody "
                "adds people or pulleys to pull it free.",
            ),
        ),
    ),
    lessons=(4, 5, 6),
    cautions=(cautions.AUTHORITY, cautions.STATIC),
)
