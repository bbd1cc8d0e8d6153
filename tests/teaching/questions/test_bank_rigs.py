"""The rigs of the bank: what is right is right by another road than the derivations."""

from collections.abc import Callable, Mapping
from math import atan2, cos, pi, radians, sin, tan

import numpy as np
import pytest
from scipy.optimize import brentq

from ropecalc.teaching.questions.draw import candidate, draw, suits
from ropecalc.teaching.questions.marking import Verdict, mark
from ropecalc.teaching.questions.setting import RigTask
from ropecalc.teaching.sliders import Scale
from ropecalc.units import Display
from tests.teaching.questions.every import RIG_TASKS, every_rig_task

AMERICAN = Display("lbf", "ft", "lb")
Result = Callable[[Mapping[str, float]], float]


def pulls(directions: list[float], load: float) -> np.ndarray:
    """How hard ropes that leave at these angles above the horizontal pull to hold ``load``."""
    rows = [[cos(a) for a in directions], [sin(a) for a in directions]]
    return np.asarray(np.linalg.solve(np.array(rows), [0.0, load]))


def leg(v: Mapping[str, float]) -> float:
    half = v["leg_angle"] / 2
    return float(pulls([pi / 2 - half, pi / 2 + half], v["load"])[0])


def landing(v: Mapping[str, float]) -> float:
    """Add the two strands as arrows and follow their sum down to the ground (out is positive)."""
    strands = np.exp(-1j * v["front_depression"]) + np.exp(-1j * (pi - v["back_depression"]))
    return float(-v["head_reach"] - v["head_height"] * strands.real / -strands.imag)


def near_line(v: Mapping[str, float]) -> float:
    """The line to the hub by balance, shared strand by strand."""
    haul = atan2(v["z_D"] - v["z"], v["x_D"] - v["x"])
    ground = atan2(v["z_B"] - v["z"], v["x_B"] - v["x"])
    together = pulls([haul, ground], v["load"])[1]
    strands = [v["efficiency"] ** n for n in range(2 * round(v["lines"]))]
    return float(together * sum(strands[:2]) / sum(strands))


def reach(v: Mapping[str, float]) -> float:
    """Where the haul line points along what pulls at the litter."""
    down = v["load"] + v["line_tension"] * sin(v["ground_depression"])
    return v["drop"] * v["line_tension"] * cos(v["ground_depression"]) / down


def span(v: Mapping[str, float]) -> float:
    rise = atan2(v["sag"], v["span"] / 2)
    return float(pulls([rise, pi - rise], v["load"])[0])


def moved_in(v: Mapping[str, float]) -> float:
    """Turn the haul leg until the ground leg has grown by a thousandth of the slack."""
    up, down = v["haul_elevation"], v["ground_depression"]
    directional = np.array([-20 * cos(up), 20 * sin(up)])
    hub = np.array([50 * cos(down), -50 * sin(down)])

    def litter(turn: float) -> np.ndarray:
        return directional + 20 * np.array([cos(-up - turn), sin(-up - turn)])

    def too_long(turn: float) -> float:
        return float(np.linalg.norm(hub - litter(turn)) - 50 - v["slip"] / 1000)

    return float(-litter(brentq(too_long, 0, 0.01))[0] * 1000)


def snag(v: Mapping[str, float]) -> float:
    """Count strand by strand from hands that all pull."""
    carried, strand = 0.0, v["people"] * v["burst_per_person"]
    for _ in range(round(v["parts"])):
        carried, strand = carried + strand, strand * v["efficiency"]
    return carried


BANDS: dict[str, tuple[Result, Result, Result]] = {
    "set-leg-angle": (leg, lambda v: 0.95 * v["leg_limit"], lambda v: v["leg_limit"]),
    "set-haul-back": (landing, lambda v: v["nearest"], lambda v: v["furthest"]),
    "set-hub-distance": (near_line, lambda v: 0.88 * v["line_limit"], lambda v: v["line_limit"]),
    "set-track-tension": (reach, lambda v: v["needed"], lambda v: 1.1 * v["needed"]),
    "set-sag": (span, lambda v: 0.9 * v["span_limit"], lambda v: v["span_limit"]),
    "set-tie-back-slack": (moved_in, lambda v: 0.85 * v["room"], lambda v: v["room"]),
    "set-haul-team": (
        snag,
        lambda v: v["load"] / v["pull_per_person"] * v["burst_per_person"],
        lambda v: v["snag_limit"],
    ),
}


def test_each_task_has_an_oracle() -> None:
    keys = [task.key for task in RIG_TASKS]
    assert len(set(keys)) == len(keys) >= 6
    assert set(BANDS) == set(keys)


@every_rig_task
def test_right_is_right_by_the_oracle(task: RigTask) -> None:
    result, low, high = BANDS[task.key]
    seen = {True: 0, False: 0}
    for number in range(12):
        drawn = draw(task, "oracle", number)
        rng = np.random.default_rng(number)
        settings = [{k.name: float(rng.choice(k.stops)) for k in task.knobs} for _ in range(12)]
        for setting in (drawn.answer, *settings):
            values = {**drawn.values, **setting}
            try:
                claimed = task.is_right(drawn.values, setting)
            except ValueError:  # no result there, as with a hub on the straight line
                continue
            found, least, most = result(values), low(values), high(values)
            if min(abs(found - least), abs(found - most)) > 2e-3 * abs(most):
                assert claimed == (least <= found <= most), (values, found)
                seen[claimed] += 1
        assert task.is_right(drawn.values, drawn.answer)
    assert all(seen.values())


@every_rig_task
def test_enough_draws_suit_and_right_is_no_luck(task: RigTask) -> None:
    good = 0
    for attempt in range(80):
        values = candidate(task, "acceptance", 0, attempt)
        if suits(task, values):
            good += 1
            start = {knob.name: knob.control.default for knob in task.knobs}
            assert not _right(task, values, start)
    assert good >= 0.15 * 80


def _right(task: RigTask, values: Mapping[str, float], setting: Mapping[str, float]) -> bool:
    try:
        return task.is_right(values, setting)
    except ValueError:
        return False


@every_rig_task
@pytest.mark.parametrize("display", [Display(), AMERICAN], ids=["metric", "american"])
def test_the_sliders_can_be_set_right_in_any_unit(task: RigTask, display: Display) -> None:
    """At least one place where a slider stops is right, and so it is as it is written down."""
    for number in range(15):
        drawn = draw(task, "stops", number)
        found = 0
        scales = [Scale.of(knob.control, display) for knob in task.knobs]
        stops = [np.arange(s.low, s.high + s.step / 2, s.step) for s in scales]
        for place in np.array(np.meshgrid(*stops)).reshape(len(stops), -1).T:
            setting = {
                knob.name: knob.control.value(float(shown), display)
                for knob, shown in zip(task.knobs, place, strict=True)
            }
            if _right(task, drawn.values, setting):
                text = drawn.shown(setting, display)
                found += mark(drawn, text, display).verdict is Verdict.RIGHT
        assert found, drawn.values


@every_rig_task
def test_words_are_complete(task: RigTask) -> None:
    for display in (Display(), AMERICAN):
        drawn = draw(task, "words")
        shown = {g.name: g.show(drawn.values[g.name], display) for g in task.givens}
        stem = task.stem.format(**shown)
        assert all(value in stem for value in shown.values())
        said = task.described(drawn.answer, display)
        assert "{" not in said and said.endswith(".")
    assert task.reason.endswith(".") and task.difficulty in (1, 2, 3)
    assert 2 <= len(task.mistakes) <= 4
    for mistake in task.mistakes:
        assert mistake.key == mistake.key.lower().replace(" ", "-")
        assert mistake.why.endswith(".") and not mistake.title.endswith(".")


def test_the_oracles_know_what_is_known() -> None:
    assert leg({"leg_angle": radians(120), "load": 1.0}) == pytest.approx(1.0)
    level = {"front_depression": radians(60), "back_depression": radians(60)}
    assert landing({**level, "head_height": 2.0, "head_reach": 0.3}) == pytest.approx(-0.3)
    lean = {"front_depression": radians(80), "back_depression": radians(20)}
    found = landing({**lean, "head_height": 2.0, "head_reach": 0.3})
    assert found == pytest.approx(2 * tan(radians(30)) - 0.3)
