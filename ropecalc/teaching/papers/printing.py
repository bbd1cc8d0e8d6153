"""Papers and keys as PDF, to be printed on A4 or Letter; the same bytes whenever made again."""

import io
from collections.abc import Iterable, Iterator, Mapping, Sequence
from html import escape
from pathlib import Path
from typing import Any

import matplotlib as mpl
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import inch, mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import (
    CondPageBreak,
    Flowable,
    HRFlowable,
    KeepTogether,
    PageBreak,
    Paragraph,
    SimpleDocTemplate,
    Spacer,
    Table,
    TableStyle,
)

from ropecalc import cautions
from ropecalc.derivation import Derivation
from ropecalc.teaching.confidence import LEVELS
from ropecalc.teaching.lessons import LESSONS
from ropecalc.teaching.papers.paper import GOES_ON, LETTERS, Item, Paper, by_hand
from ropecalc.teaching.papers.print_formula import FormulaError, PrintedFormula
from ropecalc.teaching.questions import wording
from ropecalc.teaching.questions.bank import LESSON_OF
from ropecalc.teaching.questions.diagrams import picture_of
from ropecalc.teaching.questions.diagrams.flowable import POINTS, PrintedPicture
from ropecalc.teaching.questions.passage import Passage
from ropecalc.teaching.scenarios.content import Judged
from ropecalc.teaching.survey_page import PAPERS
from ropecalc.units import Display

SIZES = {name: (wide * inch, high * inch) for name, (wide, high) in PAPERS.items()}
_MARGIN = 18 * mm
_SKETCH_ROOM = 34 * mm
_LINES_TO_WRITE = 20
_WIDE = 168 * mm
_SMALL = 0.8 * POINTS
_INDENT = 6 * mm
_FONT, _BOLD = "DejaVuSans", "DejaVuSans-Bold"


def paper_pdf(paper: Paper, size: str = "a4", display: Display | None = None) -> bytes:
    """What the student gets: questions with room for a sketch, an answer sheet, the formulas.

    Raises ValueError for a size of paper that is not known.
    """
    display = display or Display()
    story: list[Flowable] = [
        Paragraph(escape(paper.title), _STYLES["title"]),
        Paragraph(
            f"{paper.minutes} minutes. Write each answer with its unit, or its letters, on the "
            "answer sheet at the end; a sketch of the forces earns no mark but finds mistakes.",
            _STYLES["text"],
        ),
        Spacer(1, 4 * mm),
    ]
    for number, item in enumerate(paper.items, 1):
        story += _told(paper, number, display)
        goes_on = any(one.goes_on(number) for one in paper.scenarios)
        story += _question(number, item, display, goes_on)
    for number, judged in _open_questions(paper):
        story += _open_question(number, judged)
    story += [PageBreak(), *_answer_sheet(paper, display)]
    if paper.formula_sheet:
        story += [PageBreak(), *_formulas(paper)]
    return _built(story, paper, size, f"{paper.title}, paper {paper.code}")


def key_pdf(paper: Paper, size: str = "a4", display: Display | None = None) -> bytes:
    """What the instructor gets: every answer and its worked solution with this paper's numbers."""
    display = display or Display()
    story: list[Flowable] = [
        Paragraph(f"Key: {escape(paper.title)}", _STYLES["title"]),
        _key_table(paper, display),
        Spacer(1, 6 * mm),
    ]
    for number, item in enumerate(paper.items, 1):
        story += _told(paper, number, display)
        story += _solution(number, item, display)
    for number, judged in _open_questions(paper):
        story += _rubric(number, judged)
    return _built(story, paper, size, f"Key of {paper.title}, paper {paper.code}")


# --- the student's part -----------------------------------------------------------------------


def _question(number: int, item: Item, display: Display, goes_on: bool) -> list[Flowable]:
    picture = _picture(item, display)
    room = _WIDE - (picture.width if picture else 0.0)
    parts: list[Flowable] = [
        *([Paragraph(escape(GOES_ON), _STYLES["small"])] if goes_on else []),
        Paragraph(escape(wording.stem(item.drawn, display)), _STYLES["text"]),
        *_givens(item, display, room),
        *_particulars(item, display),
    ]
    if item.options:
        parts.append(Paragraph(_options(item, display), _STYLES["options"]))
    else:
        asked = escape(item.template.asked)
        parts.append(Paragraph(f"{asked}: ____________________", _STYLES["text"]))
    title = Paragraph(f"{number}. {escape(item.template.title)}", _STYLES["heading"])
    parts.append(Spacer(1, _SKETCH_ROOM))
    return [KeepTogether([title, *_beside(parts, picture)])]


def _picture(item: Item, display: Display, scale: float = POINTS) -> Flowable | None:
    picture = picture_of(item.drawn, display)
    return PrintedPicture(picture, (_FONT, _BOLD), scale) if picture else None


def _beside(parts: list[Flowable], picture: Flowable | None) -> list[Flowable]:
    """``parts`` with the drawing to their right."""
    if picture is None:
        return parts
    table = Table(
        [[parts, picture]], colWidths=[_WIDE - picture.width, picture.width], hAlign="LEFT"
    )
    table.setStyle(_PAIR)
    return [table]


def _particulars(item: Item, display: Display) -> list[Flowable]:
    lines = wording.particulars(item.drawn, display)
    return [Paragraph(escape(line), _STYLES["listed"]) for line in lines]


def _givens(item: Item, display: Display, room: float) -> list[Flowable]:
    rows = [
        [_formula(symbol, 9.0), Paragraph(escape(meaning), _STYLES["small"]), shown]
        for symbol, meaning, shown in wording.givens(item.drawn, display)
    ]
    if not rows:
        return []
    meaning = min(96 * mm, room - 40 * mm)
    table = Table(rows, colWidths=[14 * mm, meaning, 26 * mm], hAlign="LEFT")
    table.setStyle(_PLAIN)
    return [table]


def _options(item: Item, display: Display) -> str:
    """Letters and numbers in a row, each number on the line of its letter."""
    shown = [item.drawn.shown(item.option_value(option), display) for option in item.options]
    return "&nbsp;&nbsp;&nbsp; ".join(
        f"<b>{letter}</b>&nbsp;{escape(words).replace(' ', '&nbsp;')}"
        for letter, words in zip(LETTERS, shown, strict=False)
    )


def _told(paper: Paper, number: int, display: Display) -> list[Flowable]:
    """The story of the scenario that begins with question ``number``; nothing if none does."""
    found: list[Flowable] = []
    for told in paper.scenarios:
        if told.first == number:
            head = f"{told.scenario.title}: questions {told.first} to {told.last}"
            found += [
                CondPageBreak(60 * mm),
                Paragraph(escape(head), _STYLES["title"]),
                Paragraph(escape(told.story(display)), _STYLES["text"]),
                Spacer(1, 4 * mm),
            ]
    return found


def _open_questions(paper: Paper) -> Iterator[tuple[int, Judged]]:
    """Each open question with its number; they follow all others."""
    return enumerate(paper.open_questions, len(paper.items) + 1)


def _open_question(number: int, judged: Judged) -> list[Flowable]:
    lines = Table([[""]] * _LINES_TO_WRITE, colWidths=[_WIDE], rowHeights=8 * mm, hAlign="LEFT")
    lines.setStyle(_LINED)
    parts: list[Flowable] = [
        Paragraph(f"{number}. {escape(judged.title)}", _STYLES["heading"]),
        Paragraph(escape(judged.question), _STYLES["text"]),
        Paragraph(escape(f"{by_hand(judged)} Write here."), _STYLES["small"]),
        lines,
    ]
    return [KeepTogether(parts)]


def _answer_sheet(paper: Paper, display: Display) -> list[Flowable]:
    asks = paper.confidence
    sure = [", ".join(LEVELS.values())] if asks else []
    rows = [["", "answer", "unit or letter", *(["how sure: circle, or leave"] if asks else [])]]
    for number, item in enumerate(paper.items, 1):
        how = "letter" if item.options else item.template.on_paper(display)
        rows.append([str(number), "", how, *sure])
    for number, judged in _open_questions(paper):
        rows.append(
            [
                str(number),
                f"by hand, of {len(judged.points)} points:",
                "leave empty",
                *([""] if asks else []),
            ]
        )
    widths = [12 * mm, 68 * mm, 40 * mm, *([48 * mm] if asks else [])]
    table = Table(rows, colWidths=widths, rowHeights=8.4 * mm, repeatRows=1)
    table.setStyle(_GRID)
    return [
        Paragraph("Answer sheet", _STYLES["title"]),
        Paragraph(f"{escape(paper.student)}, paper {paper.code}", _STYLES["text"]),
        Spacer(1, 4 * mm),
        table,
    ]


def _formulas(paper: Paper) -> list[Flowable]:
    numbers = {LESSON_OF.get(item.template.key) for item in paper.items}
    numbers.update(number for told in paper.scenarios for number in told.scenario.lessons)
    lessons = [lesson for lesson in LESSONS.values() if lesson.number in numbers]
    story: list[Flowable] = [Paragraph("Formulas", _STYLES["title"])]
    for lesson in lessons:
        story.append(CondPageBreak(30 * mm))
        story.append(Paragraph(f"{lesson.number}. {escape(lesson.title)}", _STYLES["heading"]))
        story.append(_formula_table(lesson.derivations))
    letters = {
        symbol: meaning
        for lesson in lessons
        for derivation in lesson.derivations
        for symbol, meaning in _used(derivation)
    }
    story += [CondPageBreak(30 * mm), Paragraph("Letters", _STYLES["heading"])]
    return [*story, _letters(letters)]


def _used(derivation: Derivation) -> Iterator[tuple[str, str]]:
    told = derivation.explain()
    return ((s, meaning) for s, meaning in told.meanings if s in told.lines[-1].uses)


def _letters(meanings: Mapping[str, str]) -> Table:
    """Two letters with their meanings on a line."""
    cells = [
        [_formula(symbol, 9.0), Paragraph(escape(meaning), _STYLES["small"])]
        for symbol, meaning in meanings.items()
    ]
    cells += [["", ""]] * (len(cells) % 2)
    rows = [[*left, *right] for left, right in zip(cells[::2], cells[1::2], strict=True)]
    table = Table(rows or [["", "", "", ""]], colWidths=[16 * mm, 70 * mm] * 2, hAlign="LEFT")
    table.setStyle(_PLAIN)
    return table


def _formula_table(derivations: Iterable[Derivation]) -> Table:
    rows = []
    for derivation in derivations:
        last = derivation.explain().lines[-1]
        rows.append(
            [Paragraph(escape(derivation.title), _STYLES["small"]), _or_text(last.latex, last.text)]
        )
    table = Table(rows, colWidths=[78 * mm, 92 * mm], hAlign="LEFT")
    table.setStyle(TableStyle([("VALIGN", (0, 0), (-1, -1), "MIDDLE")]))
    return table


# --- the key ----------------------------------------------------------------------------------


def _key_table(paper: Paper, display: Display) -> Table:
    rows = [["", "question", "answer", ""]]
    for number, item in enumerate(paper.items, 1):
        shown = item.drawn.right(display)
        right = f"{item.right_letter}: {shown}" if item.options else shown
        must = "must be right" if item.must_pass else ""
        rows.append(
            [str(number), Paragraph(escape(item.template.title), _STYLES["small"]), right, must]
        )
    for number, judged in _open_questions(paper):
        title = Paragraph(escape(judged.title), _STYLES["small"])
        rows.append([str(number), title, "marked by hand", f"{len(judged.points)} points"])
    table = Table(rows, colWidths=[10 * mm, 92 * mm, 40 * mm, 28 * mm], repeatRows=1)
    table.setStyle(_GRID)
    return table


def _solution(number: int, item: Item, display: Display) -> list[Flowable]:
    drawn = item.drawn
    steps = wording.solution(drawn, display)
    about: list[Flowable] = [
        Paragraph(escape(wording.stem(drawn, display)), _STYLES["text"]),
        Paragraph(f"Assumed: {escape(wording.assumptions(drawn))}", _STYLES["small"]),
    ]
    title = Paragraph(f"{number}. {escape(item.template.title)}", _STYLES["heading"])
    story: list[Flowable] = [
        KeepTogether([title, *_beside(about, _picture(item, display, _SMALL))])
    ]
    for step, passage in enumerate(steps[:-1], 1):
        story += _passage(f"{step}. ", passage)
    story.append(Paragraph(f"<b>{escape(steps[-1].words)}</b>", _STYLES["text"]))
    story.append(Paragraph("Common mistakes", _STYLES["minor"]))
    for passage in wording.common_mistakes(drawn, display):
        story.append(Paragraph(f"• {escape(passage.words)}", _STYLES["small"]))
    story.append(HRFlowable(width="100%", thickness=0.4, color="#999999", spaceBefore=5))
    return story


def _rubric(number: int, judged: Judged) -> list[Flowable]:
    """What a good answer says: a point for each."""
    parts: list[Flowable] = [
        Paragraph(f"{number}. {escape(judged.title)}", _STYLES["heading"]),
        Paragraph(escape(judged.question), _STYLES["text"]),
        Paragraph(escape(by_hand(judged)), _STYLES["minor"]),
    ]
    parts += [
        Paragraph(f"{place}. {escape(point)}", _STYLES["small"])
        for place, point in enumerate(judged.points, 1)
    ]
    return [KeepTogether(parts)]


def _passage(lead: str, passage: Passage) -> list[Flowable]:
    parts: list[Flowable] = [Paragraph(lead + escape(passage.words), _STYLES["text"])]
    parts += [_or_text(latex, "; ".join(passage.text), _INDENT) for latex in passage.latex]
    return [KeepTogether(parts)]


def _or_text(latex: str, text: str, indent: float = 0.0) -> Flowable:
    try:
        return PrintedFormula(latex, indent=indent)
    except FormulaError:
        return Paragraph(escape(text), _STYLES["small"])


def _formula(symbol: str, size: float) -> Flowable:
    return PrintedFormula(symbol, size)


# --- the page ---------------------------------------------------------------------------------


def _built(story: Sequence[Flowable], paper: Paper, size: str, title: str) -> bytes:
    if size.lower() not in SIZES:
        raise ValueError(f"“{size}” is no paper known here. Use one of: {', '.join(SIZES)}.")
    out = io.BytesIO()
    document = SimpleDocTemplate(
        out,
        pagesize=SIZES[size.lower()],
        leftMargin=_MARGIN,
        rightMargin=_MARGIN,
        topMargin=_MARGIN + 6 * mm,
        bottomMargin=_MARGIN + 8 * mm,
        title=title,
        author="ropecalc",
        invariant=1,
    )

    def furnish(page: Any, _: Any) -> None:
        _head_and_foot(page, paper)

    document.build(list(story), onFirstPage=furnish, onLaterPages=furnish)
    return out.getvalue()


def _head_and_foot(page: Any, paper: Paper) -> None:
    wide, high = page._pagesize
    page.saveState()
    page.setFont(_FONT, 8)
    page.drawString(_MARGIN, high - 13 * mm, f"{paper.student}")
    page.drawRightString(
        wide - _MARGIN, high - 13 * mm, f"{paper.code}   page {page.getPageNumber()}"
    )
    foot = Paragraph(escape(f"{cautions.KNOWLEDGE_CHECK} {cautions.AUTHORITY}"), _STYLES["foot"])
    _, tall = foot.wrap(wide - 2 * _MARGIN, 20 * mm)
    foot.drawOn(page, _MARGIN, 10 * mm + (8 * mm - tall) / 2)
    page.restoreState()


def _register_fonts() -> None:
    folder = Path(mpl.get_data_path()) / "fonts" / "ttf"
    for name in (_FONT, _BOLD):
        pdfmetrics.registerFont(TTFont(name, str(folder / f"{name}.ttf")))
    pdfmetrics.registerFontFamily(_FONT, normal=_FONT, bold=_BOLD, italic=_FONT, boldItalic=_BOLD)


_GRID = TableStyle(
    [
        ("FONT", (0, 0), (-1, -1), _FONT, 9),
        ("FONT", (0, 0), (-1, 0), _BOLD, 8),
        ("GRID", (0, 0), (-1, -1), 0.4, "#777777"),
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
    ]
)
_PLAIN = TableStyle(
    [
        ("FONT", (0, 0), (-1, -1), _FONT, 8.5),
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
        ("TOPPADDING", (0, 0), (-1, -1), 0.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 0.5),
    ]
)
_PAIR = TableStyle(
    [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (0, 0), 4 * mm),
        ("RIGHTPADDING", (1, 0), (1, 0), 0),
        ("TOPPADDING", (0, 0), (-1, -1), 0),
    ]
)
_LINED = TableStyle([("LINEBELOW", (0, 0), (-1, -1), 0.3, "#999999")])
_register_fonts()
_TEXT = ParagraphStyle("text", fontName=_FONT, fontSize=9.5, leading=13)
_STYLES = {
    "text": _TEXT,
    "small": ParagraphStyle("small", _TEXT, fontSize=8.5, leading=11),
    "listed": ParagraphStyle("listed", _TEXT, leftIndent=_INDENT),
    "options": ParagraphStyle("options", _TEXT, spaceBefore=4),
    "title": ParagraphStyle("title", _TEXT, fontName=_BOLD, fontSize=14, leading=18, spaceAfter=4),
    "heading": ParagraphStyle("heading", _TEXT, fontName=_BOLD, fontSize=10.5, spaceBefore=4),
    "minor": ParagraphStyle("minor", _TEXT, fontName=_BOLD, fontSize=8.5, spaceBefore=2),
    "foot": ParagraphStyle("foot", _TEXT, fontSize=6.2, leading=7.4, textColor="#555555"),
}
