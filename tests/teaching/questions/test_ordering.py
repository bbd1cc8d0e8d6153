"""An order as an answer: how it is read, marked, offered, explained, and given on the page."""

from dataclasses import replace

import ipywidgets as widgets
import pytest

from ropecalc.teaching.lesson import Lesson
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.bank import orderings, rigs
from ropecalc.teaching.questions.draw import draw, restored
from ropecalc.teaching.questions.marking import Verdict, mark
from ropecalc.teaching.questions.order_line import OrderLine
from ropecalc.teaching.questions.order_marking import read_order
from ropecalc.teaching.questions.ordering import LETTERS, Ordering, Ranked, WrongOrder
from ropecalc.teaching.questions.question import Listeners
from ropecalc.teaching.questions.question_view import QuestionView, SolutionView
from ropecalc.teaching.record import Place, Record
from ropecalc.teaching.session import Session
from ropecalc.units import Display
from tests.teaching.questions.every import every_ordering

LEGS = orderings.LEG_TENSIONS
DRAWN = draw(LEGS, "here")
RIGHT = DRAWN.answer.split()
PAGE = "exercise:test"
AMERICAN = Display("lbf", "ft", "lb")


@pytest.mark.parametrize(
    "text",
    ["C A B D", "cabd", "c,a,b,d", "C; A; B; D.", "C < A < B < D", "c then a, b and d", "C-A-B-D"],
)
def test_letters_are_read_kindly(text: str) -> None:
    assert read_order(text, "ABCD", "smallest") == list("CABD")


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("C A B", "D is missing"),
        ("C A B D A", "A stands 2 times"),
        ("C A B E", "no “E”"),
        ("1.5 kN", "no “1”"),
        ("C > A > B > D", "two ways"),
        ("C _ _ D", "place 2"),
        ("A" * 200, "200 characters"),
        ("", "A is missing"),
    ],
)
def test_what_is_no_order_is_said_with_an_example(text: str, told: str) -> None:
    marked = mark(DRAWN, text)
    assert marked.verdict is Verdict.UNREADABLE and told in marked.feedback
    assert "for example B C D A" in marked.feedback and "smallest first" in marked.feedback


@every_ordering
def test_the_right_order_and_each_mistake_are_recognised(ordering: Ordering) -> None:
    for number in range(20):
        drawn = draw(ordering, "marks", number)
        marked = mark(drawn, drawn.answer.lower().replace(" ", ", "))
        assert marked.verdict is Verdict.RIGHT and marked.reading == drawn.answer
        assert ordering.reason in marked.feedback
        for key, wrong in drawn.mistaken.items():
            marked = mark(drawn, wrong)
            assert (marked.verdict, marked.mistake) == (Verdict.MISTAKE, key)
            assert ordering.mistake(key).why in marked.feedback


def unnamed() -> Ordering:
    """The legs without their mistakes, so that any order may be tried."""
    return replace(LEGS, mistakes=())


def test_one_exchanged_pair_is_named_and_the_wrong_way_round_is_told() -> None:
    drawn = restored(unnamed(), DRAWN.values)
    assert drawn.answer.split() == RIGHT
    exchanged = [RIGHT[0], RIGHT[2], RIGHT[1], RIGHT[3]]
    marked = mark(drawn, " ".join(exchanged))
    assert marked.verdict is Verdict.WRONG
    assert f"Only {RIGHT[2]} and {RIGHT[1]} are exchanged" in marked.feedback
    marked = mark(drawn, " ".join(RIGHT[::-1]))
    assert marked.verdict is Verdict.SIGN and "wrong way round" in marked.feedback
    mixed = [RIGHT[2], RIGHT[0], RIGHT[3], RIGHT[1]]
    marked = mark(drawn, " ".join(mixed))
    assert marked.verdict is Verdict.WRONG and "exchanged" not in marked.feedback


def test_near_values_a_right_mistake_and_two_alike_are_refused() -> None:
    # A force of 1000, 1155, 1414 and 2000 N in a leg.
    values = {f"load_{n}": 2000.0 for n in range(1, 5)}
    apart = {f"leg_angle_{n}": angle for n, angle in enumerate((0.0, 1.047, 1.571, 2.094), 1)}

    def one(key: str, *numbers: float) -> WrongOrder:
        return WrongOrder(key, "T", "W.", lambda v: numbers)

    def made(*mistakes: WrongOrder) -> Ordering:
        return replace(LEGS, mistakes=mistakes)

    assert made(one("a", 2, 1, 3, 4)).suits(values | apart)
    assert not made(one("a", 1, 2, 3, 4)).suits(values | apart), "gives the right order"
    assert not made(one("a", 2, 1, 3, 4), one("b", 9, 1, 10, 11)).suits(values | apart)
    assert not made(one("a", 2, 2.005, 3, 4)).suits(values | apart), "no order at all"
    assert not made(one("a", 2, float("nan"), 3, 4)).suits(values | apart)
    near = apart | {"leg_angle_2": 0.75}  # 1074 N, within 8 % of 1000 N
    assert not made(one("a", 2, 1, 3, 4)).suits(values | near)


def test_what_is_offered_follows_from_the_numbers_alone() -> None:
    again = restored(LEGS, dict(DRAWN.values))
    assert again.answer == DRAWN.answer
    assert LEGS.offered(again.values) == LEGS.offered(DRAWN.values)
    drawn = [draw(LEGS, "s", n).values for n in range(40)]
    seen = {tuple(thing.words for thing in LEGS.offered(values)) for values in drawn}
    assert len(seen) > 10


def test_an_ordering_must_draw_what_it_needs_and_order_three_things_at_least() -> None:
    with pytest.raises(ValueError, match="needs"):
        replace(LEGS, givens=LEGS.givens[1:])
    two = tuple(Ranked("w", thing.by) for thing in LEGS.things[:2])
    with pytest.raises(ValueError, match="3 to 8"):
        replace(LEGS, givens=LEGS.givens[:4], things=two)


@every_ordering
def test_hints_and_solution(ordering: Ordering) -> None:
    drawn = draw(ordering, "hints")
    hints = wording.hints(drawn, Display())
    assert len(hints) == 3 and not hints[0].latex and hints[1].latex and hints[2].latex
    for display in (Display(), AMERICAN):
        *steps, last = wording.solution(drawn, display)
        assert last.words.startswith(f"In order, the {ordering.first} first: {drawn.answer}. ")
        lettered = [step.words[:2] for step in steps[-len(ordering.things) :]]
        assert lettered == [f"{letter}." for letter in LETTERS[: len(ordering.things)]]
    common = wording.common_mistakes(drawn, Display())
    for mistake, passage in zip(ordering.mistakes, common, strict=True):
        assert passage.words.startswith(f"{mistake.title}: {drawn.mistaken[mistake.key]}.")
    assert wording.assumptions(drawn) and ordering.symbols


# --- on the page -------------------------------------------------------------------------------


@pytest.fixture
def session() -> Session:
    return Session(Record.open())


def everything_on(view: widgets.Widget) -> list[widgets.Widget]:
    return [view, *(w for child in getattr(view, "children", ()) for w in everything_on(child))]


def places(view: widgets.Widget) -> list[widgets.Dropdown]:
    return [w for w in everything_on(view) if isinstance(w, widgets.Dropdown)]


def page_text(view: widgets.Widget) -> str:
    return " ".join(
        w.value for w in everything_on(view) if isinstance(w, widgets.HTML | widgets.HTMLMath)
    )


def press(view: widgets.Widget, words: str) -> None:
    for found in everything_on(view):
        if isinstance(found, widgets.Button) and words in found.description:
            found.click()


def test_an_order_is_chosen_place_by_place_kept_and_marked(session: Session) -> None:
    view = QuestionView(LEGS, session, PAGE)
    drawn = draw(LEGS, PAGE)
    lists = places(view)
    assert [box.description for box in lists] == [
        "Place 1 (smallest)", "Place 2", "Place 3", "Place 4 (largest)",
    ]  # fmt: skip
    press(view, "Check")
    assert "Nothing has been answered yet. Choose one for each place" in page_text(view)
    for box, letter in zip(lists[:2], drawn.answer.split(), strict=False):
        box.value = letter
    press(view, "Check")
    assert "Nothing stands at place 3 yet" in page_text(view)
    again = QuestionView(LEGS, Session(Record.open()), PAGE)
    assert [box.value for box in places(again)][:2] == drawn.answer.split()[:2]
    for box, letter in zip(places(again), drawn.answer.split(), strict=True):
        box.value = letter
    press(again, "Check")
    assert f"Read as {drawn.answer}. Right." in page_text(again)
    kept = Record.open().answers(Place(PAGE, LEGS.key))
    assert [(a.verdict, a.reading) for a in kept][-1] == ("right", drawn.answer)


def test_units_change_the_words_and_leave_the_choice(session: Session) -> None:
    view = QuestionView(LEGS, session, PAGE)
    places(view)[0].value = "B"
    session.choose_unit("force", "lbf")
    assert places(view)[0].value == "B"
    assert "lbf" in places(view)[0].options[1][0]
    assert view._entry.value == "B _ _ _"


def test_new_numbers_bring_new_things_and_nothing_chosen(session: Session) -> None:
    view = QuestionView(LEGS, session, PAGE)
    before = places(view)[0].options
    places(view)[0].value = "B"
    press(view, "New numbers")
    assert places(view)[0].options != before
    assert not any(box.value for box in places(view))
    assert session.record.work(Place(PAGE, LEGS.key)).draft == ""


def test_a_strange_draft_is_nothing_chosen() -> None:
    heard: list[str] = []
    line = OrderLine(LEGS, DRAWN.values, "Q <b> 7", Display(), Listeners(heard.append))
    assert line.value == "" and heard == []
    line.value = "C A"
    assert line.value == "C A _ _" and heard == ["C A _ _"]


def test_a_lesson_can_ask_for_an_order_or_a_rig_as_a_quick_check(session: Session) -> None:
    content = replace(LESSONS["anchors"], questions=(LEGS, rigs.LEG_ANGLE))
    lesson = Lesson(content, session)
    for question in content.questions:
        view = lesson.question(question.key)
        drawn = draw(question, content.page)
        view._entry.value = drawn.shown(drawn.answer, Display())
        press(view, "Check")
        assert "Right." in page_text(view)
        assert session.record.answers(Place(content.page, question.key))


def test_the_solution_edition_tells_the_order(session: Session) -> None:
    view = SolutionView(draw(LEGS, PAGE), session)
    assert "In order, the smallest first" in view.summary()
    assert view.summary().startswith(LEGS.title)
