"""A raise plan on a page: what governs, the picture, the tables, the cautions."""

import base64
from collections.abc import Sequence
from html import escape
from pathlib import Path

import ipywidgets as widgets

from ropecalc import __version__
from ropecalc.planning.raise_plan import RaisePlan, plan_raise
from ropecalc.planning.report import (
    OUTSIDE_MARK,
    Table,
    Wording,
    alternatives_table,
    column_meanings,
    governing_line,
    heading,
    notes,
    station_table,
    summary_lines,
)
from ropecalc.planning.site_file import read_site
from ropecalc.teaching.plan_picture import picture
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown
from ropecalc.units import Display

_STYLE = """<style>
.ropecalc-plan table {border-collapse: collapse; font-size: 13px; margin: 8px 0;}
.ropecalc-plan th, .ropecalc-plan td {padding: 2px 9px; text-align: right; white-space: nowrap;}
.ropecalc-plan th {border-bottom: 1px solid currentColor; vertical-align: bottom;}
.ropecalc-plan tr.governs td {font-weight: bold; background: rgba(179, 71, 0, 0.12);}
.ropecalc-plan tr.outside td:first-child {color: #b00020; font-weight: bold;}
.ropecalc-plan .scroll {overflow-x: auto;}
.ropecalc-plan img {max-width: 100%; height: auto; background: white;}
.ropecalc-plan ul {margin: 4px 0;}
</style>"""


def show_plan(site: str | Path, session: Session | None = None) -> "PlanView | Trouble":
    """The plan of the site file at ``site``, to be looked at on a page.

    Without a ``session`` the view brings its own choice of units. A relative name is looked for
    from the page's folder and from the course folder above it. A file that cannot be used gives
    a sentence instead of a plan.
    """
    try:
        plan = plan_raise(read_site(find_file(site)))
    except ValueError as error:
        return Trouble(str(error))
    if session is not None:
        return PlanView(plan, session)
    session = Session(Record.open())
    return PlanView(plan, session, session.unit_chooser())


def find_file(name: str | Path) -> Path:
    """Where ``name`` is: as given, or in the folder above, where the course's folders are."""
    path = Path(name)
    above = Path("..") / path
    return above if not path.is_absolute() and not path.exists() and above.exists() else path


class Trouble(Shown):
    """A sentence that says what is wrong and what to do, in place of a result."""

    def __init__(self, sentence: str) -> None:
        self.sentence = sentence
        super().__init__([widgets.HTML(f'<p role="alert">{escape(sentence)}</p>')])

    def summary(self) -> str:
        """The sentence."""
        return self.sentence


class PlanView(Shown):
    """A plan in the reader's units; it follows when they choose others.

    Whatever is ``above`` (a choice of units, say) is shown first.
    """

    def __init__(self, plan: RaisePlan, session: Session, *above: widgets.Widget) -> None:
        self.plan = plan
        self._session = session
        self._page = widgets.HTML(plan_html(plan, session.display))
        super().__init__([*above, self._page])
        self.until_closed(session.on_units(self._draw))

    def show(self, plan: RaisePlan) -> None:
        """Show another plan in place of this one."""
        self.plan = plan
        self._draw(self._session.display)

    def _draw(self, display: Display) -> None:
        self._page.value = plan_html(self.plan, display)

    def summary(self) -> str:
        """What governs, and every method over the whole raise, in plain words."""
        return plan_summary(self.plan, self._session.display)


def plan_summary(plan: RaisePlan, display: Display) -> str:
    """The plan in a few lines of plain text."""
    words = Wording(display)
    lines = [*heading(plan, words).splitlines()[:2], governing_line(plan, words)]
    lines += summary_lines(plan.summary(), words)[1:]
    return "\n".join(line.strip().removeprefix("> ") for line in lines)


def plan_html(plan: RaisePlan, display: Display) -> str:
    """The plan as the inside of a page."""
    words = Wording(display)
    drawn = base64.b64encode(picture(plan, display, "png", dpi=110)).decode("ascii")
    title, *about = heading(plan, words).splitlines()
    governs, *explained = notes(plan, words)
    other = ("Tension and push by the other two ways, on the same path.",)
    parts = [
        f"{_STYLE}<div class='ropecalc-plan'>",
        f"<h3>{escape(title)}</h3>",
        _paragraphs(about),
        f"<p><b>{escape(governs.removeprefix('> '))}</b></p>",
        f"<img alt='{escape(plan_summary(plan, display), quote=True)}' "
        f"src='data:image/png;base64,{drawn}'>",
        _table(station_table(plan, words), "Stations, top of the raise first"),
        _list(("What the columns mean", *column_meanings(plan, words))),
        _paragraphs(explained),
        *(_list(summary_lines(summary, words)) for summary in plan.summaries[:1]),
        "<details><summary>The other ways of holding the litter</summary>",
        _paragraphs(other),
        _table(alternatives_table(plan, words), "The other ways, station by station"),
        *(_list(summary_lines(summary, words)) for summary in plan.summaries[1:]),
        "</details>",
        "<p><b>Cautions</b></p>",
        _list(("", *plan.cautions)),
        _paragraphs(
            [
                f"Made with ropecalc {__version__} from {Path(plan.site.source).name}. "
                "To be checked on site by a qualified person before use."
            ]
        ),
        "</div>",
    ]
    return "".join(parts)


def _paragraphs(lines: Sequence[str]) -> str:
    return "".join(f"<p>{escape(line)}</p>" for line in lines)


def _list(lines: Sequence[str]) -> str:
    """A first line (if any) with the others as points below it."""
    head, *points = lines
    title = f"<p><b>{escape(head)}</b></p>" if head else ""
    return title + "<ul>" + "".join(f"<li>{escape(p.strip())}</li>" for p in points) + "</ul>"


def _table(table: Table, caption: str) -> str:
    heads = "".join(
        f"<th scope='col'>{escape(upper)}<br>{escape(lower)}</th>" for upper, lower in table.heads
    )
    rows = []
    for row in table.rows:
        marks = {">": "governs", OUTSIDE_MARK: "outside"}
        names = " ".join(name for mark, name in marks.items() if mark in row[0])
        governs = f" class='{names}'" if names else ""
        rows.append(f"<tr{governs}>" + "".join(f"<td>{escape(c)}</td>" for c in row) + "</tr>")
    return (
        f"<div class='scroll'><table aria-label='{escape(caption)}'><thead><tr>{heads}</tr></thead>"
        f"<tbody>{''.join(rows)}</tbody></table></div>"
    )
