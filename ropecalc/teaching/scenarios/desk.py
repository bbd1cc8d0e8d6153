"""One learner at one scenario: which numbers they have, and which parts are behind them."""

from collections.abc import Callable
from functools import cache

from ropecalc.teaching.questions.draw import Draw
from ropecalc.teaching.questions.marking import Verdict
from ropecalc.teaching.record import Place, Record, Work
from ropecalc.teaching.scenarios.content import Part, Scenario
from ropecalc.teaching.scenarios.situation import Situation, draw_situation

_SITUATION = "situation"
"""The place in the record that keeps which numbers the learner has."""
LETTERS = "abcdefghijklmnop"


class ScenarioDesk:
    """The state that the views of one scenario share; it lives in the learner's record."""

    def __init__(self, scenario: Scenario, record: Record) -> None:
        self.scenario = scenario
        self._record = record
        self._followers: list[Callable[[], None]] = []
        self._renewed: list[Callable[[int], None]] = []
        self.situation_of = cache(lambda number: draw_situation(scenario, scenario.page, number))
        self._hand_out(record.work(self.place(_SITUATION)).draw)

    @property
    def situation(self) -> Situation:
        """The situation with the numbers that the learner has now."""
        return self.situation_of(self._number)

    def place(self, key: str) -> Place:
        """Where the record keeps what belongs to ``key``."""
        return Place(self.scenario.page, key)

    def numbers(self, part: Part) -> Callable[[int], Draw]:
        """The numbers of ``part`` in each situation."""
        return lambda number: self.situation_of(number).part(part.key)

    def letter(self, key: str) -> str:
        """The letter of a part or an open question: parts first, in their order."""
        return LETTERS[self.scenario.keys.index(key)]

    def behind(self, part: Part) -> bool:
        """Whether ``part`` was answered right, or its solution opened, with these numbers."""
        place = self.place(part.key)
        return self._record.work(place).solution_seen or any(
            answer.verdict == Verdict.RIGHT for answer in self._record.answers(place, self._number)
        )

    def waits_for(self, part: Part) -> tuple[Part, ...]:
        """The earlier parts whose numbers ``part`` goes on with and that are still open."""
        givers = (self.scenario.giver(name) for name in part.after)
        return tuple(giver for giver in givers if giver and not self.behind(giver))

    def on_change(self, follow: Callable[[], None]) -> None:
        """Call ``follow`` after every answer."""
        self._followers.append(follow)

    def on_numbers(self, follow: Callable[[int], None]) -> None:
        """Call ``follow`` with the number of the draw when the learner takes new numbers."""
        self._renewed.append(follow)

    def changed(self) -> None:
        """Tell everybody that something was answered or given up."""
        for follow in self._followers:
            follow()

    def take_new_numbers(self) -> None:
        """Begin the whole scenario anew with other numbers; what was answered stays on record."""
        self._hand_out(self._number + 1)
        for follow in self._renewed:
            follow(self._number)
        self.changed()

    def _hand_out(self, number: int) -> None:
        """Every part has the same draw, also one that was left behind by an older page."""
        self._number = number
        for key in (_SITUATION, *self.scenario.keys):
            place = self.place(key)
            if self._record.work(place).draw != number:
                self._record.keep_work(place, Work(draw=number))
