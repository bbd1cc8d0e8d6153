"""The course page on planning: two walls side by side, a plan, the form, the survey sheet."""

import base64
from collections.abc import Sequence
from html import escape
from pathlib import Path

import ipywidgets as widgets

from ropecalc import cautions
from ropecalc.planning.raise_plan import RaisePlan, plan_raise
from ropecalc.planning.report import Wording, beside_the_headline, governing_line
from ropecalc.planning.site_file import read_site
from ropecalc.teaching.page import CautionsView, UnitsView
from ropecalc.teaching.plan_view import PlanView, Trouble, find_file, show_plan
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.shown import Shown
from ropecalc.teaching.site_form import SiteForm, open_site_form
from ropecalc.teaching.survey_page import PAPERS, paper_name, survey_page
from ropecalc.units import Display, plain, round_figures


def open_plan_page() -> "PlanPage":
    """The page "Plan a raise" for the learner whose record this is."""
    return PlanPage(Session(Record.open()))


class PlanPage:
    """What the lines of the page ask for; all of it in the same units."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def units(self) -> UnitsView:
        """The choice of units."""
        return UnitsView(self._session)

    def cautions(self) -> CautionsView:
        """What to keep in mind on this page."""
        return CautionsView((cautions.AUTHORITY, cautions.STATIC, cautions.NEAR_DIRECTIONAL))

    def compare(self, *sites: str) -> "ComparisonView | Trouble":
        """What governs at each of several sites, one below the other."""
        try:
            plans = tuple(plan_raise(read_site(find_file(site))) for site in sites)
        except ValueError as error:
            return Trouble(str(error))
        return ComparisonView(plans, self._session)

    def plan(self, site: str) -> PlanView | Trouble:
        """The plan of one site file."""
        return show_plan(site, self._session)

    def form(self, folder: str | Path = "sites") -> SiteForm:
        """The form for a site of the reader's own."""
        return open_site_form(folder, self._session)

    def survey_sheet(self) -> "SurveySheetView":
        """The survey sheet, to be saved and printed."""
        return SurveySheetView()


class ComparisonView(Shown):
    """What governs at several sites, in a few lines each."""

    def __init__(self, plans: tuple[RaisePlan, ...], session: Session) -> None:
        self._plans = plans
        self._session = session
        self._text = widgets.HTML()
        super().__init__([self._text])
        self.until_closed(session.on_units(self._draw))
        self._draw(session.display)

    def summary(self) -> str:
        """Each site's name and what governs there."""
        sites = [
            "\n".join([plan.site.name, *lines])
            for plan, lines in zip(self._plans, self._lines(), strict=True)
        ]
        return "\n".join([*sites, how_much_harder(self._plans)]).strip()

    def _lines(self) -> list[list[str]]:
        words = Wording(self._session.display)
        return [
            [
                governing_line(plan, words).removeprefix("> "),
                *beside_the_headline(plan, words),
            ]
            for plan in self._plans
        ]

    def _draw(self, _: Display) -> None:
        parts = []
        for plan, lines in zip(self._plans, self._lines(), strict=True):
            items = "".join(f"<li>{escape(line)}</li>" for line in lines)
            parts.append(f"<p><b>{escape(plan.site.name)}</b></p><ul>{items}</ul>")
        parts.append(f"<p>{escape(how_much_harder(self._plans))}</p>")
        self._text.value = f"<details><summary>After your guess</summary>{''.join(parts)}</details>"


def how_much_harder(plans: Sequence[RaisePlan]) -> str:
    """How many times as much holding the litter takes at the hardest site as at the easiest.

    Empty where some site has no largest effort to rely on, or there are fewer than two.
    """
    largest = [(plan.summary().effort, plan.site.name) for plan in plans]
    efforts = sorted((peak.value, name) for peak, name in largest if peak is not None)
    if len(efforts) < max(2, len(plans)) or efforts[0][0] <= 0:
        return ""
    (least, easy), (most, hard) = efforts[0], efforts[-1]
    times = plain(round_figures(most / least, 2))
    return f"At its hardest, holding the litter takes {times} times as much at {hard} as at {easy}."


class SurveySheetView(Shown):
    """Links that save the survey sheet, one for each paper."""

    def __init__(self) -> None:
        links = []
        for paper in PAPERS:
            data = base64.b64encode(survey_page(paper)).decode("ascii")
            links.append(
                f"<a download='survey-sheet-{paper}.pdf' "
                f"href='data:application/pdf;base64,{data}'>"
                f"Survey sheet, {paper_name(paper)} (PDF)</a>"
            )
        super().__init__([widgets.HTML(f"<p>{' &nbsp; '.join(links)}</p>")])

    def summary(self) -> str:
        """What can be saved here."""
        return "The survey sheet as a PDF to print, on A4 or Letter paper."
