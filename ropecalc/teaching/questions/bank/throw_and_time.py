"""Questions on throws, resets, rope, time, people, and what a snag would feel."""

from collections.abc import Mapping

from sympy import Max, ceiling

from ropecalc.mechanics import hauling
from ropecalc.mechanics import quantities as q
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance

_HEIGHT = Given(hauling.RAISE_HEIGHT, 15, 60, 1, "m")
_RISE = Given(hauling.THROW_RISE, 2.0, 8.0, 0.5, "m")
_LOSS = Given(hauling.RESET_LOSS, 0.2, 0.6, 0.1, "m")
_TWO_PER_CENT = Tolerance(relative=0.02)
_EXACT = Tolerance(absolute=0.02)


def _not_on_the_edge(values: Mapping[str, float]) -> bool:
    """Whether a few centimetres more would not change the number of throws."""
    gain = values["throw_rise"] - values["reset_loss"]
    exact = (values["raise_height"] - values["reset_loss"]) / gain
    return 0.2 < exact % 1 < 0.8


THROWS = Template(
    key="how-many-throws",
    title="How many throws?",
    stem=(
        "A raise of {raise_height}. The system gains {throw_rise} in a throw, and each reset gives "
        "{reset_loss} back before the progress capture holds. How many throws does it take?"
    ),
    asked="Number of throws",
    givens=(_HEIGHT, _RISE, _LOSS),
    derivation=hauling.throws_needed,
    tolerance=_EXACT,
    mistakes=(
        Mistake(
            "reset-loss-left-out",
            "What the resets lose left out",
            "Each reset gives some height back, and the next throw hauls it again.",
            lambda v: ceiling(v.raise_height / v.throw_rise),
        ),
        Mistake(
            "advantage-multiplies-throws",
            "Three times as many throws, because of the advantage",
            "The rise of a throw is counted at the load; the advantage is in it already.",
            lambda v: ceiling(3 * v.raise_height / v.throw_rise),
        ),
        Mistake(
            "advantage-divides-throws",
            "A third of the throws, because of the advantage",
            "The rise of a throw is counted at the load; the advantage is in it already.",
            lambda v: ceiling(v.raise_height / (3 * v.throw_rise)),
        ),
    ),
    difficulty=1,
    objective="count the throws and resets of a raise",
    usable=_not_on_the_edge,
)


def _one_limit_is_plainly_first(values: Mapping[str, float]) -> bool:
    by_way = values["clear_way"] / values["advantage"]
    return not 0.9 < by_way / values["traveller_room"] < 1.1


THROW_ENDS = Template(
    key="what-ends-a-throw",
    title="What ends the throw?",
    stem=(
        "The haul team can walk {clear_way} in one go. It pulls on a simple {advantage}:1, whose "
        "travelling pulley can move {traveller_room} before it meets the anchor. How far does the "
        "load rise in one throw?"
    ),
    asked="Rise of the load in one throw",
    givens=(
        Given(hauling.CLEAR_WAY, 6, 30, 1, "m"),
        Given(hauling.TRAVELLER_ROOM, 2.0, 8.0, 0.5, "m"),
        Given(q.TRAVEL_ADVANTAGE, 3, 9, 1, ""),
    ),
    derivation=hauling.rise_in_a_throw,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "larger-of-both",
            "The larger of the two limits taken",
            "The throw is over as soon as either of them is used up.",
            lambda v: Max(v.clear_way / v.advantage, v.traveller_room),
        ),
        Mistake(
            "way-for-rise",
            "The way of the hands taken for the rise",
            "The hands walk the advantage times as far as the load rises.",
            lambda v: v.clear_way,
        ),
        Mistake(
            "room-divided",
            "The room divided by the advantage",
            "The travelling pulley moves with the load; only the hands move further.",
            lambda v: v.traveller_room / v.advantage,
        ),
    ),
    difficulty=2,
    objective="say what ends a throw, and how far the load has come by then",
    usable=_one_limit_is_plainly_first,
)

TIME = Template(
    key="time-of-a-raise",
    title="How long will it take?",
    stem=(
        "The team raises {raise_height} with an advantage of {advantage}. It walks {hand_speed}, "
        "needs {throws} throws, loses {reset_loss} at each reset, and a reset takes {reset_time}. "
        "How long does the raise take?"
    ),
    asked="Time of the raise",
    givens=(
        _HEIGHT,
        Given(q.TRAVEL_ADVANTAGE, 3, 9, 1, ""),
        Given(hauling.HAND_SPEED, 0.2, 0.6, 0.1, "m/s"),
        Given(hauling.THROWS, 5, 16, 1, ""),
        _LOSS,
        Given(hauling.RESET_TIME, 15, 45, 5, "s"),
    ),
    derivation=hauling.raise_time,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "resets-left-out",
            "The time of the resets left out",
            "Between the throws the team stands still and the system is pulled out again.",
            lambda v: v.advantage * (v.raise_height + (v.throws - 1) * v.reset_loss) / v.hand_speed,
        ),
        Mistake(
            "advantage-left-out",
            "The way of the hands taken for the way of the load",
            "The hands walk the advantage times as far as the load rises.",
            lambda v: (
                (v.raise_height + (v.throws - 1) * v.reset_loss) / v.hand_speed
                + (v.throws - 1) * v.reset_time
            ),
        ),
        Mistake(
            "advantage-upside-down",
            "Divided by the advantage",
            "An advantage saves force and costs way: the hands walk further, not less.",
            lambda v: (
                (v.raise_height + (v.throws - 1) * v.reset_loss) / (v.advantage * v.hand_speed)
                + (v.throws - 1) * v.reset_time
            ),
        ),
    ),
    difficulty=2,
    objective="estimate how long a raise takes",
)

ROPE = Template(
    key="haul-rope-needed",
    title="Will the rope be long enough?",
    stem=(
        "A {advantage}:1 is built in the tail of the haul rope. The raise is {raise_height}, it "
        "is {edge_setback} from the edge to the anchor, the traveller has room for "
        "{throw_rise}, and {haul_tail} of rope are to be kept beyond the hands. How long must "
        "the rope be?"
    ),
    asked="Length of the haul rope",
    givens=(
        _HEIGHT,
        Given(hauling.EDGE_SETBACK, 4, 20, 1, "m"),
        Given(q.TRAVEL_ADVANTAGE, 3, 5, 2, ""),
        _RISE,
        Given(hauling.HAUL_TAIL, 3, 10, 1, "m"),
    ),
    derivation=hauling.main_rope,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "one-strand-of-the-throw",
            "The room of the traveller counted once",
            "The rope runs back and forth through it, once for every part after the first.",
            lambda v: v.raise_height + v.edge_setback + v.throw_rise + v.haul_tail,
        ),
        Mistake(
            "system-left-out",
            "The rope in the system left out",
            "A system built in the rope's own tail takes rope itself.",
            lambda v: v.raise_height + v.edge_setback + v.haul_tail,
        ),
        Mistake(
            "everything-multiplied",
            "The whole raise multiplied by the advantage",
            "Only the length of one throw is there several times; the system is reset.",
            lambda v: v.advantage * (v.raise_height + v.edge_setback) + v.haul_tail,
        ),
    ),
    difficulty=2,
    objective="find the length of the haul rope",
)

SNAG = Template(
    key="snagged-litter",
    title="The litter has caught",
    stem=(
        "The litter catches under an outcrop while {people} people haul through an actual "
        "advantage of {advantage}. For a moment each of them can pull {burst_per_person}. With "
        "what force can they pull at the snag?"
    ),
    asked="Force at the snag",
    givens=(
        Given(hauling.PEOPLE, 3, 8, 1, ""),
        Given(hauling.BURST, 0.2, 0.5, 0.05, "kN"),
        Given(q.ADVANTAGE, 2.5, 8.0, 0.5, ""),
    ),
    derivation=hauling.snag_pull,
    tolerance=_TWO_PER_CENT,
    mistakes=(
        Mistake(
            "advantage-left-out",
            "The pull of the team taken as it is",
            "The system multiplies whatever the team pulls, for a snag as well as for a load.",
            lambda v: v.people * v.burst_per_person,
        ),
        Mistake(
            "one-person-only",
            "The pull of one person multiplied",
            "Everybody on the rope pulls.",
            lambda v: v.burst_per_person * v.advantage,
        ),
        Mistake(
            "advantage-upside-down",
            "Divided by the advantage",
            "Hauling, the load's side carries more than the hands pull.",
            lambda v: v.people * v.burst_per_person / v.advantage,
        ),
    ),
    difficulty=2,
    objective="say what a team can put into a snag before anybody notices",
    must_pass=True,
)

QUESTIONS = (
    THROWS,
    THROW_ENDS,
    TIME,
    ROPE,
    SNAG,
)
"""This module's questions, in the order of the lesson."""
