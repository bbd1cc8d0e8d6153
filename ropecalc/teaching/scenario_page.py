"""A scenario's page and its solutions' page, for one learner."""

from ropecalc.teaching.course_page import CoursePage
from ropecalc.teaching.exercise import ExerciseProgress
from ropecalc.teaching.keyed import find
from ropecalc.teaching.record import Record
from ropecalc.teaching.scenarios import SCENARIOS
from ropecalc.teaching.scenarios.content import Scenario
from ropecalc.teaching.scenarios.desk import ScenarioDesk
from ropecalc.teaching.scenarios.views import (
    JudgedSolved,
    JudgedView,
    PartSolved,
    PartView,
    SituationView,
)
from ropecalc.teaching.session import Session


class ScenarioPage(CoursePage):
    """One scenario for one learner."""

    def __init__(self, scenario: Scenario, session: Session) -> None:
        super().__init__(session, scenario.cautions)
        self._scenario = scenario
        self._desk = ScenarioDesk(scenario, session.record)

    def situation(self) -> SituationView:
        """The story, with the numbers that all parts share."""
        return SituationView(self._desk, self._session, renewable=True)

    def part(self, key: str) -> PartView:
        """The part called ``key``, to be answered."""
        return PartView(self._scenario.part(key), self._desk, self._session)

    def judged(self, key: str) -> JudgedView:
        """The open question called ``key``."""
        return JudgedView(self._scenario.open_question(key), self._desk, self._session)

    def progress(self) -> ExerciseProgress:
        """How many parts are right."""
        view = ExerciseProgress(self._scenario, self._session)
        self._desk.on_change(view.refresh)
        return view


class ScenarioSolution(CoursePage):
    """The same, worked, for the numbers that everyone gets first."""

    def __init__(self, scenario: Scenario, session: Session) -> None:
        super().__init__(session, scenario.cautions)
        self._scenario = scenario
        self._desk = ScenarioDesk(scenario, Record.in_memory())

    def situation(self) -> SituationView:
        """The story, with the numbers that all parts share."""
        return SituationView(self._desk, self._session, renewable=False)

    def part(self, key: str) -> PartSolved:
        """The part called ``key`` with its worked solution and common mistakes."""
        return PartSolved(self._scenario.part(key), self._desk, self._session)

    def judged(self, key: str) -> JudgedSolved:
        """The open question called ``key`` with the points of a good answer."""
        return JudgedSolved(self._scenario.open_question(key), self._desk.letter(key))


def open_scenario(key: str) -> ScenarioPage:
    """The scenario called ``key`` for the learner of this machine."""
    return ScenarioPage(find(SCENARIOS, key, "scenario"), Session(Record.open()))


def open_scenario_solution(key: str) -> ScenarioSolution:
    """The worked solution of the scenario called ``key``."""
    return ScenarioSolution(find(SCENARIOS, key, "scenario"), Session(Record.open()))
