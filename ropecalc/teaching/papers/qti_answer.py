"""How a question of a paper is answered and marked on a learning platform, by its kind.

What is right, and what the course says to each mistake it knows, becomes an ordered list of rules
in the item itself, so a platform marks as the course does. A number is asked in one named unit
and typed alone. The standard's numbers have a decimal point; the pattern of the entry lets a
platform turn a comma down while it is typed, so that none is read as the end of the number.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import singledispatch
from itertools import groupby
from xml.etree import ElementTree as ET

from ropecalc.teaching.papers.paper import LETTERS, RIGHT, Item
from ropecalc.teaching.papers.qti_xml import assign, element, paragraph, value, variable
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.marking import Marked, Verdict, mark
from ropecalc.teaching.questions.number_marking import Window, windows
from ropecalc.teaching.questions.ordering import Ordering
from ropecalc.teaching.questions.question import Question, Values
from ropecalc.teaching.questions.setting import RigTask
from ropecalc.teaching.questions.template import Template
from ropecalc.units import Display, Unit

ANSWER, SCORE, FEEDBACK = "RESPONSE", "SCORE", "FEEDBACK"
"""The item's variables: what was answered, the mark, the name of what the learner is told."""

_NUMBER = r"[+\-]?[0-9]*(\.[0-9]*)?([eE][+\-]?[0-9]*)?"
"""Also fits a number half typed, since some platforms look at every key."""
_HALVINGS = 16
"""Between two stops of a control this leaves a hundred-thousandth of a step."""
_HEADINGS = {
    Verdict.RIGHT: "Right",
    Verdict.SIGN: "Almost",
    Verdict.UNIT: "Another unit",
    Verdict.WRONG: "Not right",
}


@dataclass(frozen=True)
class Reason:
    """What a learner is told after an answer, under the name that the rules give it."""

    name: str
    heading: str
    sentence: str
    right: bool = False


@dataclass(frozen=True)
class Rule:
    """The answers for which ``when`` holds get a mark if the reason says right, and the reason."""

    when: ET.Element
    reason: Reason


@dataclass(frozen=True)
class Interaction:
    """The type of the answer, the right one, where it is given, and the rules, tried in order.

    An answer that no rule holds for is wrong, and told ``otherwise``.
    """

    cardinality: str
    base_type: str
    key: tuple[str, ...]
    body: ET.Element
    rules: tuple[Rule, ...]
    otherwise: Reason

    @property
    def reasons(self) -> tuple[Reason, ...]:
        """All that may be told."""
        return (*(rule.reason for rule in self.rules), self.otherwise)

    def declaration(self) -> ET.Element:
        """The declaration of the answer."""
        return element(
            "responseDeclaration",
            element("correctResponse", *(element("value", one) for one in self.key)),
            identifier=ANSWER,
            cardinality=self.cardinality,
            baseType=self.base_type,
        )

    def processing(self) -> ET.Element:
        """The rules, as the standard writes them; nothing is told where nothing was answered."""
        answered = element("not", element("isNull", variable(ANSWER)))
        condition = element("responseCondition")
        for rule in (*self.rules, Rule(answered, self.otherwise)):
            branch = element("responseElseIf" if len(condition) else "responseIf", rule.when)
            if rule.reason.right:
                branch.append(assign(SCORE, value("float", "1")))
            branch.append(assign(FEEDBACK, value("identifier", rule.reason.name)))
            condition.append(branch)
        return element("responseProcessing", condition)


@singledispatch
def interaction(question: object, item: Item, _display: Display) -> Interaction:
    """How ``item``, which asks ``question``, is answered and marked.

    Raises :class:`PaperError` for a kind of question that platforms cannot ask.
    """
    raise _refused(item, f"{type(question).__name__} is no kind of question known there")


def _refused(item: Item, why: str) -> PaperError:
    return PaperError(
        "",
        f"“{item.template.title}” cannot be asked on a learning platform: {why}. "
        "Make papers without it.",
    )


@interaction.register
def _number(template: Template, item: Item, display: Display) -> Interaction:
    return (_choice if item.options else _entry)(template, item, display)


# --- a number is typed ------------------------------------------------------------------------


def _entry(template: Template, item: Item, display: Display) -> Interaction:
    unit = display.unit(template.kind)
    known = windows(template, item.drawn.values, unit, display)
    return Interaction(
        "single",
        "float",
        (_decimal(item.drawn.answer, unit, 6),),
        _line(f"{template.asked}, ", unit),
        tuple(_told_apart(_grouped(known, template, unit))),
        _not_known("Make a sketch with the given quantities in it and work it out once more."),
    )


def _line(lead: str, unit: Unit) -> ET.Element:
    """Where a number is typed; ``lead`` says what for."""
    inside = element(
        "textEntryInteraction",
        responseIdentifier=ANSWER,
        expectedLength="12",
        patternMask=_NUMBER,
    )
    wanted = f"in {unit.words} ({unit.symbol})" if unit.symbol else "as a plain number"
    line = element("p", f"{lead}{wanted}: ", inside)
    inside.tail = f" {unit.symbol}".rstrip()
    how = "Write the number alone, without its unit, with a decimal point and not a comma."
    return element("div", line, paragraph(how))


def _grouped(known: Iterable[Window], template: Template, unit: Unit) -> Iterator[Rule]:
    """One rule for each run of windows with the same reason."""
    for reason, same in groupby(known, lambda window: _why(window, template, unit)):
        ranges = [_around(window, unit) for window in same]
        yield Rule(_any(ranges), reason)


def _told_apart(rules: Iterable[Rule]) -> Iterator[Rule]:
    """The same with a number behind a name that is there already; there may be two ways to be
    right, each with its sentence."""
    times: Counter[str] = Counter()
    for rule in rules:
        name = rule.reason.name
        times[name] += 1
        again = replace(rule.reason, name=f"{name}-{times[name]}")
        yield Rule(rule.when, again if times[name] > 1 else rule.reason)


def _why(window: Window, template: Template, unit: Unit) -> Reason:
    if window.verdict is Verdict.UNIT:
        said = f"That would be right in another unit. This question asks for {unit.words}."
        return Reason(window.verdict, _HEADINGS[window.verdict], said)
    told = Marked(window.verdict, window.feedback, mistake=window.mistake)
    return _reason(told, template)


def _around(window: Window, unit: Unit) -> ET.Element:
    return _within(window.middle - window.margin, window.middle + window.margin, unit)


def _within(low: float, high: float, unit: Unit) -> ET.Element:
    """Whether the number typed lies between two SI values."""
    return element(
        "and",
        element("gte", variable(ANSWER), value("float", _decimal(low, unit))),
        element("lte", variable(ANSWER), value("float", _decimal(high, unit))),
    )


def _any(conditions: Sequence[ET.Element]) -> ET.Element:
    return conditions[0] if len(conditions) == 1 else element("or", *conditions)


def _decimal(si_value: float, unit: Unit, figures: int = 12) -> str:
    return f"{Decimal(f'{si_value / unit.factor:.{figures}g}'):f}"


# --- a number is chosen -----------------------------------------------------------------------


def _choice(template: Template, item: Item, display: Display) -> Interaction:
    unit = display.unit(template.kind)

    def rule(letter: str, option: str) -> Rule:
        typed = f"{_decimal(item.option_value(option), unit)} {unit.symbol}"
        return Rule(_is(letter), _reason(mark(item.drawn, typed, display), template))

    lettered = dict(zip(LETTERS, item.options, strict=False))
    shown = [display.show(item.option_value(option), template.kind) for option in item.options]
    first, *others = sorted(lettered.items(), key=lambda pair: pair[1] != RIGHT)
    return Interaction(
        "single",
        "identifier",
        (item.right_letter,),
        _offered("choiceInteraction", f"{template.asked}: choose one.", shown, maxChoices="1"),
        (Rule(_is_right(), rule(*first).reason), *(rule(*other) for other in others)),
        _not_known("Choose one of the numbers."),
    )


def _offered(tag: str, prompt: str, shown: Sequence[str], **attributes: str) -> ET.Element:
    """Things with their letters, to choose from or to order; they stay as they are lettered."""
    return element(
        tag,
        element("prompt", prompt),
        *(
            element("simpleChoice", one, identifier=letter)
            for letter, one in zip(LETTERS, shown, strict=False)
        ),
        responseIdentifier=ANSWER,
        shuffle="false",
        **attributes,
    )


def _is(letter: str) -> ET.Element:
    return element("match", variable(ANSWER), value("identifier", letter))


def _is_right() -> ET.Element:
    return element("match", variable(ANSWER), element("correct", identifier=ANSWER))


# --- things are put in order ------------------------------------------------------------------


@interaction.register
def _order(question: Ordering, item: Item, display: Display) -> Interaction:
    values = item.drawn.values
    right = question.answer(values).split()

    def rule(letters: Sequence[str]) -> Rule:
        told = _reason(mark(item.drawn, " ".join(letters), display), question)
        when = _is_right() if told.right else _is_order(letters)
        near = told.name == Verdict.WRONG  # an exchanged pair, which the course names
        return Rule(when, replace(told, name="exchanged") if near else told)

    mistaken = (order.split() for order in question.mistaken(values).values())
    known = dict.fromkeys(map(tuple, (right, *mistaken, right[::-1], *_exchanged(right))))
    return Interaction(
        "ordered",
        "identifier",
        tuple(right),
        _offered(
            "orderInteraction",
            f"{question.asked}: put them in order.",
            question.particulars(values, display),
        ),
        tuple(_told_apart(rule(letters) for letters in known)),
        _not_known("Work out the value of each one."),
    )


def _exchanged(right: Sequence[str]) -> Iterator[Sequence[str]]:
    """The orders in which one pair of neighbours is exchanged."""
    for place in range(len(right) - 1):
        one, other = right[place : place + 2]
        yield [*right[:place], other, one, *right[place + 2 :]]


def _is_order(letters: Sequence[str]) -> ET.Element:
    order = element("ordered", *(value("identifier", letter) for letter in letters))
    return element("match", variable(ANSWER), order)


# --- a control is set -------------------------------------------------------------------------


@interaction.register
def _setting(task: RigTask, item: Item, display: Display) -> Interaction:
    if len(task.knobs) > 1:
        raise _refused(item, f"it sets {len(task.knobs)} things at once")
    [knob], values = task.knobs, item.drawn.values
    unit = display.unit(knob.grid.variable.kind)

    def taken(at: float) -> Reason | None:
        told = mark(item.drawn, f"{_decimal(at, unit)} {unit.symbol}", display)
        if told.verdict is Verdict.RIGHT:
            return Reason(told.verdict, _HEADINGS[told.verdict], f"Right. {task.reason}", True)
        return _reason(told, task) if told.mistake else None

    known: dict[Reason, list[ET.Element]] = {}
    for low, high, reason in _runs(taken, task, values):
        if reason is not None:
            known.setdefault(reason, []).append(_within(low, high, unit))
    label = knob.label[0].upper() + knob.label[1:]
    return Interaction(
        "single",
        "float",
        (_decimal(task.answer(values)[knob.name], unit, 6),),
        element(
            "div",
            *(paragraph(line) for line in task.particulars(values, display)),
            _line(f"{label}, ", unit),
        ),
        tuple(
            Rule(_any(known[reason]), reason)
            for reason in sorted(known, key=lambda reason: not reason.right)
        ),
        _not_known("Work out what comes of this setting."),
    )


def _runs(
    taken: Callable[[float], Reason | None], task: RigTask, values: Values
) -> Iterator[tuple[float, float, Reason | None]]:
    """The range of the task's only control, SI, in pieces of which each is taken alike.

    Where one ends is found between two stops of the control.
    """
    stops, alike = [float(stop) for stop in task.knobs[0].stops], task.alike(values)
    start = stops[0]
    for place in range(len(stops) - 1):
        if alike[place] != alike[place + 1]:
            edge = _edge(taken, stops[place], stops[place + 1])
            yield start, edge, taken(stops[place])
            start = edge
    yield start, stops[-1], taken(stops[-1])


def _edge(taken: Callable[[float], Reason | None], before: float, after: float) -> float:
    """How far what is taken of ``before`` is taken of what comes after it."""
    reason = taken(before)
    for _ in range(_HALVINGS):
        middle = (before + after) / 2
        before, after = (middle, after) if taken(middle) == reason else (before, middle)
    return before


# --- what is told -----------------------------------------------------------------------------


def _reason(told: Marked, question: Question) -> Reason:
    """What the course itself says to an answer."""
    if told.verdict is Verdict.MISTAKE:
        heading = question.mistake(told.mistake).title
        return Reason(f"mistake-{told.mistake}", heading, told.feedback)
    right = told.verdict is Verdict.RIGHT
    return Reason(told.verdict, _HEADINGS[told.verdict], told.feedback, right)


def _not_known(advice: str) -> Reason:
    said = f"Not right, and none of the mistakes that this question knows. {advice}"
    return Reason(Verdict.WRONG, _HEADINGS[Verdict.WRONG], said)
