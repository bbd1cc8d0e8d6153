"""A question that asks for a rig: move one or two controls until what is wanted holds.

What is wanted is a band for a result of the library at the place where the controls stand; any
setting inside it is right. A mistake is a wrong relation: whoever believes it finds a setting of
their own, and is known by it. A setting is kept, typed, printed and marked as a text such as
``42.5 m; 0.4 m``.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from types import SimpleNamespace
from typing import Any, ClassVar

import numpy as np

from ropecalc.derivation import Derivation, Variable
from ropecalc.teaching.keyed import by_key, find
from ropecalc.teaching.questions import explaining
from ropecalc.teaching.questions.applied import Applied
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.knob import Knob
from ropecalc.teaching.questions.passage import Passage
from ropecalc.teaching.questions.question import Listeners, NamedMistake, Values
from ropecalc.teaching.questions.setting_line import SettingLine
from ropecalc.teaching.questions.setting_marking import mark_setting
from ropecalc.teaching.questions.verdict import Marked
from ropecalc.teaching.questions.wanted import Wanted, outcome
from ropecalc.units import Display

Setting = Mapping[str, float]
"""Where the controls stand, SI, by the quantity's name."""
_LUCK = 0.35
"""A larger share of all settings would be right by luck."""
_OWN = 0.6
"""The least share of a mistake's settings that give it away."""
_FEWEST = 2
"""Fewer right settings, or a mistake's, could fall between the stops in another unit."""
_TRIALS = 4


@dataclass(frozen=True)
class WrongRelation(NamedMistake):
    """A relation that people are known to believe.

    ``wrong`` takes all quantities as attributes (``v.load``, SI), the controls and the true
    results before the last one among them, and gives what the first result wanted is mistaken
    to be. It must do so for arrays, too: use numpy's functions.
    """

    wrong: Callable[[Any], Any]


@dataclass(frozen=True)
class RigTask:
    """One question that is answered by setting ``knobs``.

    ``words`` tells where they stand, with a ``{place}`` for each. ``turned`` are the steps of the
    first thing wanted the other way round, from the result that is aimed at to the first knob;
    without them the worked solution tries settings. The other fields are those of a
    :class:`~ropecalc.teaching.questions.template.Template`.
    """

    has_choice: ClassVar[bool] = False

    key: str
    title: str
    stem: str
    asked: str
    givens: tuple[Given, ...]
    knobs: tuple[Knob, ...]
    words: str
    wanted: tuple[Wanted, ...]
    mistakes: tuple[WrongRelation, ...]
    reason: str
    difficulty: int
    objective: str
    turned: tuple[Applied, ...] = ()
    usable: Callable[[Values], bool] = lambda values: True
    must_pass: bool = False

    def __post_init__(self) -> None:
        there = {given.name for given in self.givens} | {knob.name for knob in self.knobs}
        for wanted in self.wanted:
            for step in wanted.steps:
                missing = set(step.draws.values()) - there
                if missing:
                    raise ValueError(f"{self.key} neither draws nor sets {sorted(missing)}")
                there = there | {step.derivation.result.name}

    def mistake(self, key: str) -> WrongRelation:
        """The mistake called ``key``."""
        return find(by_key(self.mistakes), key, "mistake")

    # --- drawing and marking ---

    def suits(self, values: Values) -> bool:
        """Whether right is no luck, and every mistake leads to settings of its own."""
        if not self.usable(values):
            return False
        right, wrong = self._on_grid(values)
        start = self._index({knob.name: knob.control.default for knob in self.knobs})
        if not _FEWEST <= right.sum() <= _LUCK * right.size or right[start]:
            return False
        for key, holds in wrong.items():
            own = holds & self._only(key, right, wrong)
            enough = own.sum() >= max(_FEWEST, _OWN * holds.sum())
            if not enough or holds[start]:
                return False
        return True

    def answer(self, values: Values) -> Setting:
        """A setting that is right: what the worked solution finds."""
        found = self._calculated(values)
        if found is not None:
            return found
        return self._middle(self._on_grid(values)[0])

    def mistaken(self, values: Values) -> dict[str, Setting]:
        """A setting that each mistake leads to, by the mistake's key."""
        right, wrong = self._on_grid(values)
        return {
            key: self._middle(holds & self._only(key, right, wrong)) for key, holds in wrong.items()
        }

    def mark(self, values: Values, text: str, display: Display) -> Marked:
        """Mark a setting."""
        return mark_setting(self, values, text, display)

    def is_right(self, values: Values, setting: Setting) -> bool:
        """Whether everything wanted holds. Raises ValueError where there is no result."""
        return all(
            bool(one.holds(known, known[one.result.name]))
            for one in self.wanted
            for known in [one.known({**values, **setting})]
        )

    def mistakes_at(self, values: Values, setting: Setting) -> list[WrongRelation]:
        """The mistakes by which ``setting`` would be right."""
        first = self.wanted[0]
        known = first.known_on_arrays({k: np.array([v]) for k, v in {**values, **setting}.items()})
        return [m for m in self.mistakes if bool(self._believed(m, first, known)[0])]

    def alike(self, values: Values) -> "np.ndarray":
        """A number for every setting of the grid; those that are taken alike have the same."""
        right, wrong = self._on_grid(values)
        own = [holds & self._only(key, right, wrong) for key, holds in wrong.items()]
        return np.select([right, *own], range(1, len(own) + 2))

    def _believed(self, mistake: WrongRelation, first: Wanted, known: Mapping[str, Any]) -> Any:
        with np.errstate(all="ignore"):
            result = np.ma.asarray(mistake.wrong(SimpleNamespace(**known)))
            held = first.holds(known, result) & np.isfinite(result)
        return np.ma.filled(held, False)

    def _on_grid(self, values: Values) -> tuple["np.ndarray", dict[str, "np.ndarray"]]:
        """For every setting of the grid: whether it is right, and by which mistake it would be."""
        axes = np.meshgrid(*(knob.stops for knob in self.knobs), indexing="ij")
        there = {knob.name: axis for knob, axis in zip(self.knobs, axes, strict=True)}
        shape = axes[0].shape
        everything: dict[str, Any] = {**{n: np.full(shape, v) for n, v in values.items()}, **there}
        right = np.ones(shape, dtype=bool)
        known = [one.known_on_arrays(everything) for one in self.wanted]
        for one, results in zip(self.wanted, known, strict=True):
            right &= np.ma.filled(one.holds(results, results[one.result.name]), False)
        first = self.wanted[0]
        return right, {m.key: self._believed(m, first, known[0]) for m in self.mistakes}

    def _only(
        self, key: str, right: "np.ndarray", wrong: Mapping[str, "np.ndarray"]
    ) -> "np.ndarray":
        """Where neither what is right nor another mistake holds."""
        others = [holds for other, holds in wrong.items() if other != key]
        return ~np.logical_or.reduce([right, *others])

    def _index(self, setting: Setting) -> tuple[int, ...]:
        return tuple(int(np.argmin(abs(knob.stops - setting[knob.name]))) for knob in self.knobs)

    def _middle(self, chosen: "np.ndarray") -> dict[str, float]:
        """The setting of the grid nearest to the middle of those that are ``chosen``."""
        places = np.argwhere(chosen)
        middle = places[np.argmin(((places - places.mean(axis=0)) ** 2).sum(axis=1))]
        return {
            knob.name: float(knob.stops[index])
            for knob, index in zip(self.knobs, middle, strict=True)
        }

    # --- how a setting is found ---

    def _held(self, values: Values) -> dict[str, float]:
        """Where the knobs after the first one are left."""
        middle = self._middle(self._on_grid(values)[0])
        return {knob.name: middle[knob.name] for knob in self.knobs[1:]}

    def _aim(self, values: Values) -> float:
        """The middle of the band."""
        first = self.wanted[0]
        start = {knob.name: knob.control.default for knob in self.knobs}
        known = first.known({**values, **start, **self._held(values)})
        return float(first.low(known) + first.high(known)) / 2

    def _calculated(self, values: Values) -> dict[str, float] | None:
        """The setting by the formulas turned round, at the nearest stop; None if not right."""
        if not self.turned:
            return None
        held, name = self._held(values), self.knobs[0].name
        try:
            exact = self._back(values, held)[name]
            stops = self.knobs[0].stops
            setting = {name: float(stops[np.argmin(abs(stops - exact))]), **held}
            return setting if self.is_right(values, setting) else None
        except ValueError:
            return None

    def _back(self, values: Values, held: Setting) -> dict[str, float]:
        known = {**values, **held, self.wanted[0].result.name: self._aim(values)}
        for step in self.turned:
            known[step.derivation.result.name] = step.value(known)
        return known

    def _trials(self, values: Values) -> list[dict[str, float]]:
        """Settings to try, the last one right: the ends of the first slider, then in between."""
        right = self.answer(values)
        name, stops = self.knobs[0].name, self.knobs[0].stops
        low, high, end = 0, len(stops) - 1, self._index(right)[0]
        tried = [low, high]
        while len(tried) < _TRIALS and high - low > 2:
            middle = (low + high) // 2
            tried.append(middle)
            low, high = (middle, high) if middle < end else (low, middle)
        places = [place for place in dict.fromkeys(tried) if place != end]
        return [{**right, name: float(stops[place])} for place in (*places, end)]

    # --- in words ---

    def shown(self, _values: Values, answer: Any, display: Display) -> str:
        """A setting as it is written down."""
        return "; ".join(knob.show(answer[knob.name], display) for knob in self.knobs)

    def described(self, setting: Setting, display: Display) -> str:
        """Where the controls stand, in words."""
        said = {knob.name: knob.show(setting[knob.name], display) for knob in self.knobs}
        return self.words.format(**said)

    def right(self, values: Values, display: Display) -> str:
        """One of the settings that are right."""
        return f"for example {self.shown(values, self.answer(values), display)}"

    def particulars(self, _values: Values, display: Display) -> tuple[str, ...]:
        """What can be set, and how it is written down."""
        lines = []
        for knob in self.knobs:
            control = knob.control
            low, high = knob.show(control.low, display), knob.show(control.high, display)
            lines.append(f"To be set: {knob.label}, {low} to {high}.")
        if len(self.knobs) > 1:
            example = self._example(display)
            lines.append(f"Write them in this order, with a semicolon, like this: {example}.")
        return tuple(lines)

    def _example(self, display: Display) -> str:
        return "; ".join(knob.show(knob.control.default, display) for knob in self.knobs)

    def how(self, display: Display) -> str:
        """Move the sliders, or write it down."""
        return f"Move a slider until what is asked holds, then check. {self.how_to_write(display)}"

    def how_to_write(self, display: Display) -> str:
        """How a setting is written down."""
        return f"A setting is written like this: {self._example(display)}."

    def on_paper(self, display: Display) -> str:
        """An example."""
        return f"like {self._example(display)}"

    def hints(self, values: Values, display: Display) -> tuple[Passage, ...]:
        """The laws in words, as equations, and what comes of the setting at first."""
        told = [derivation.explain(display) for derivation in self._derivations]
        equations = [explaining.as_equations(one) for one in told]
        start = {knob.name: knob.control.default for knob in self.knobs}
        return (
            Passage(" ".join(explaining.in_words(one).words for one in told)),
            Passage(
                "As equations.",
                tuple(line for one in equations for line in one.latex),
                tuple(line for one in equations for line in one.text),
            ),
            Passage(f"Where it stands at first. {self.tried(values, start, display)}"),
        )

    def solution(self, values: Values, display: Display) -> tuple[Passage, ...]:
        """The formulas, the way to one setting, and that it holds."""
        passages = [
            passage
            for derivation in self._derivations
            for passage in explaining.step_by_step(derivation.explain(display))
        ]
        found = self.answer(values)
        if self._calculated(values) is not None:
            passages += self._turned_round(values, display)
        else:
            passages.append(Passage("Try both ends, then halve what is left between them."))
            passages += [
                Passage(self.tried(values, setting, display)) for setting in self._trials(values)
            ]
        said = f"For example {self.shown(values, found, display)}."
        held = self.tried(values, found, display)
        return (*passages, Passage(f"{said} {held} {self.reason}"))

    def _turned_round(self, values: Values, display: Display) -> list[Passage]:
        held = self._held(values)
        known = self._back(values, held)
        result = self.wanted[0].result
        aim = display.show(known[result.name], result.kind)
        left = "".join(
            f" Leave {knob.label} at {knob.show(held[knob.name], display)}."
            for knob in self.knobs[1:]
        )
        passages = [Passage(f"Aim at the middle of what is wanted: {result.meaning} {aim}.{left}")]
        for step in self.turned:
            told = step.told(known, display)
            last = told.lines[-1]
            passages.append(
                Passage(f"{last.sentence} {told.result}.", (last.latex, last.numbers), (last.text,))
            )
        return passages

    def tried(self, values: Values, setting: Setting, display: Display) -> str:
        """What comes of ``setting``, in sentences."""
        said = [self.described(setting, display)]
        for wanted in self.wanted:
            said.append(outcome(wanted, {**values, **setting}, display))
        return " ".join(said)

    def common_mistakes(self, values: Values, display: Display) -> tuple[Passage, ...]:
        """Each mistake with a setting that it leads to."""
        mistaken = self.mistaken(values)
        return tuple(
            Passage(
                f"{one.title}: for example {self.shown(values, mistaken[one.key], display)}. "
                f"{one.why}"
            )
            for one in self.mistakes
        )

    @property
    def assumptions(self) -> str:
        """Those of all derivations, each once."""
        told = [sentence for d in self._derivations for sentence in d.assumptions]
        return " ".join(dict.fromkeys(told))

    @property
    def symbols(self) -> tuple[Variable, ...]:
        """Those of all derivations, each once."""
        return tuple(dict.fromkeys(v for d in self._derivations for v in d.variables))

    @cached_property
    def _derivations(self) -> tuple[Derivation, ...]:
        steps = [step.derivation for wanted in self.wanted for step in wanted.steps]
        return tuple({derivation.name: derivation for derivation in steps}.values())

    # --- on the screen ---

    def answer_line(
        self, _values: Values, text: str, display: Display, listeners: Listeners
    ) -> SettingLine:
        """Sliders."""
        return SettingLine(self, text, display, listeners)
