"""A plan on a page and as a picture: readable by everybody, in their units, never a traceback."""

from dataclasses import replace
from pathlib import Path

import matplotlib as mpl
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from ropecalc.mechanics.holding import Method
from ropecalc.planning.raise_plan import RaisePlan, plan_raise
from ropecalc.planning.site import Limits
from ropecalc.teaching import open_plan_page, show_plan
from ropecalc.teaching.plan_picture import STYLE, draw_plan, picture, picture_format
from ropecalc.teaching.plan_view import PlanView, Trouble, plan_html
from ropecalc.teaching.record import Record
from ropecalc.teaching.session import Session
from ropecalc.teaching.site_form import SiteForm
from ropecalc.teaching.survey_page import PAPERS, draw_survey_page, survey_page
from ropecalc.teaching.survey_page import STYLE as SHEET_STYLE
from ropecalc.units import Display
from tests.planning.building import make_site, outcrop

UPPER = Path(__file__).parents[2] / "sites" / "upper-heron-wall.toml"

PLANS = {
    "track": make_site(outcrop(25.0)),
    "tag": make_site(outcrop(25.0), guided_by=Method.TAG, edges=[(25.0, 0.3)]),
    "attendant": make_site(outcrop(6.0), guided_by=Method.ATTENDANT),
    "partly impossible": make_site(outcrop(25.0, 4.0), hub=(14.0, 0.5)),
    "never possible": make_site(outcrop(25.0, 4.0), hub=(4.5, 0.5), guidance_ends=24.0),
    "two directionals": make_site(track=(0.6, 33.5), limits=Limits(track_tension=3000.0)),
    "plumb": make_site(haul=(1.0, 32.0)),
    "hub on the other bank": make_site(outcrop(6.0), hub=(60.0, 20.0)),
    "low and long": make_site(
        ((0.0, 0.0), (0.0, 6.0)),
        haul=(0.4, 8.0),
        hub=(80.0, 0.0),
        guidance_ends=6.5,
        station_spacing=1.0,
    ),
}


def drawn(plan: RaisePlan) -> Figure:
    with mpl.rc_context(STYLE):
        return draw_plan(plan, Display())


def drawn_sheet(paper: str) -> Figure:
    with mpl.rc_context(SHEET_STYLE):
        return draw_survey_page(paper)


@pytest.fixture(params=PLANS, scope="module")
def plan(request: pytest.FixtureRequest) -> RaisePlan:
    return plan_raise(PLANS[request.param])


def test_one_line_shows_a_plan() -> None:
    view = show_plan(UPPER)
    assert isinstance(view, PlanView)
    bundle = view._repr_mimebundle_()
    assert bundle["text/plain"].startswith("Raise plan: Upper Heron Wall")
    assert "1.2 kN at 26.60 m" in bundle["text/plain"]


def test_a_file_that_cannot_be_used_is_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "bad.toml").write_text("[site]\nname = 5")
    for path, words in ((tmp_path / "none.toml", "no such file"), (tmp_path / "bad.toml", "text")):
        view = show_plan(path)
        assert isinstance(view, Trouble)
        assert words in view.summary()


def test_the_view_follows_the_readers_units() -> None:
    session = Session(Record.in_memory())
    view = show_plan(UPPER, session)
    session.choose_unit("force", "lbf")
    session.choose_unit("length", "ft")
    assert "260 lbf at 87.27 ft" in view.summary()
    assert "87.27" in view.children[-1].value


def test_the_page_says_everything_in_words(plan: RaisePlan) -> None:
    html = plan_html(plan, Display())
    for caution in plan.cautions:
        assert caution.split(".")[0] in html.replace("&#x27;", "'")
    assert "alt='Raise plan: Trial wall" in html
    assert "scope='col'" in html


def test_names_are_shown_as_text_not_as_markup() -> None:
    from dataclasses import replace

    site = replace(make_site(), name="<b>x</b>' onerror='y")
    html = plan_html(plan_raise(site), Display())
    assert "<b>x</b>" not in html
    assert "' onerror='" not in html


@pytest.mark.parametrize("ending", ["png", "svg", "pdf"])
def test_pictures_come_in_three_formats(ending: str) -> None:
    assert picture_format(f"plan.{ending.upper()}") == ending
    plan = plan_raise(PLANS["track"])
    assert len(picture(plan, Display(), ending)) > 5_000
    assert picture(plan, Display(), ending) == picture(plan, Display(), ending)


def test_no_text_runs_off_the_picture_or_over_another(plan: RaisePlan) -> None:
    figure = drawn(plan)
    renderer = FigureCanvasAgg(figure).get_renderer()
    figure.draw(renderer)
    page = figure.bbox
    boxes = []
    every = [inner for axes in figure.axes for inner in (axes, *axes.child_axes)]
    texts = [*figure.texts, *(t for axes in every for t in axes.texts)]
    texts += [t for axes in every for t in (axes.xaxis.label, axes.yaxis.label, axes._left_title)]
    for text in texts:
        if text.get_text():
            box = text.get_window_extent(renderer)
            assert page.x0 <= box.x0 and box.x1 <= page.x1, text.get_text()
            assert page.y0 <= box.y0 and box.y1 <= page.y1, text.get_text()
            boxes.append((text.get_text(), box))
    for index, (name, box) in enumerate(boxes):
        for other, second in boxes[index + 1 :]:
            assert not box.overlaps(second), f"{name!r} lies over {other!r}"


def test_the_close_view_hides_no_anchor_and_no_station(plan: RaisePlan) -> None:
    figure = drawn(plan)
    FigureCanvasAgg(figure).draw()
    section = figure.axes[0]
    (close,) = section.child_axes
    hidden = close.get_window_extent()
    rig = plan.site.rig
    points = [(rig.haul_directional.x, rig.haul_directional.z)]
    points += [(station.offset, station.height) for station in plan.stations]
    if plan.method is not Method.ATTENDANT:
        points.append((rig.hub.x, rig.hub.z))
    for point in points:
        assert not hidden.contains(*section.transData.transform(point))


def test_the_cross_section_has_one_scale(plan: RaisePlan) -> None:
    figure = drawn(plan)
    section, effort = figure.axes[0], figure.axes[1]
    across, up = section.get_window_extent().width, section.get_window_extent().height
    left, right = section.get_xlim()
    bottom, top = section.get_ylim()
    assert across / (right - left) == pytest.approx(up / (top - bottom), rel=1e-6)
    assert effort.get_ylim() == (bottom, top)


def test_the_picture_draws_the_litter_where_it_governs() -> None:
    plan = plan_raise(PLANS["track"])
    assert plan.governing is not None
    ends = [
        (float(line.get_xdata()[-1]), float(line.get_ydata()[-1]))
        for line in drawn(plan).axes[0].lines
        if len(line.get_xdata()) == 2
    ]
    starts = [
        (float(line.get_xdata()[0]), float(line.get_ydata()[0]))
        for line in drawn(plan).axes[0].lines
        if len(line.get_xdata()) == 2
    ]
    litter = (pytest.approx(plan.governing.offset), pytest.approx(plan.governing.height))
    assert litter in starts or litter in ends


def test_haul_and_track_line_are_told_apart_where_they_run_together() -> None:
    plan = plan_raise(PLANS["track"])
    assert plan.governing is not None
    section = drawn(plan).axes[0]
    top = plan.site.rig.haul_directional
    over = [
        line
        for line in section.lines
        if line.get_zorder() == 4 and (top.x, top.z) in zip(*line.get_data(), strict=True)
    ]
    below, above = over
    assert below.get_linewidth() > 2 * above.get_linewidth()
    assert below.get_color() != above.get_color()
    assert "dotted: the body's clearance; and the straight line" in section.get_xlabel()


@pytest.mark.parametrize("paper", PAPERS)
def test_the_survey_sheet_fits_its_page(paper: str) -> None:
    figure = drawn_sheet(paper)
    renderer = FigureCanvasAgg(figure).get_renderer()
    figure.draw(renderer)
    texts = [t for axes in figure.axes for t in axes.texts if t.get_text()]
    boxes = [(t.get_text(), t.get_window_extent(renderer)) for t in texts]
    for name, box in boxes:
        assert box.x0 >= figure.bbox.x0 + 20 and box.x1 <= figure.bbox.x1 - 20, name
        assert box.y0 >= figure.bbox.y0 + 20 and box.y1 <= figure.bbox.y1 - 20, name
    for index, (name, box) in enumerate(boxes):
        for other, second in boxes[index + 1 :]:
            assert not box.overlaps(second), f"{name!r} lies over {other!r}"


def test_an_unknown_paper_is_refused() -> None:
    with pytest.raises(ValueError, match="Use one of: a4, letter"):
        survey_page("A3")


def test_the_course_page_has_all_its_parts(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(UPPER.parents[1] / "lessons")
    page = open_plan_page()
    both = page.compare("sites/lower-heron-wall.toml", "sites/upper-heron-wall.toml").summary()
    assert "Lower Heron Wall" in both
    assert "Upper Heron Wall" in both
    assert "takes 5.4 times as much at Upper Heron Wall as at Lower Heron Wall" in both
    assert "Raise plan" in page.plan("sites/upper-heron-wall.toml").summary()
    assert "no such file" in page.compare("sites/none.toml").summary()
    assert "survey sheet" in page.survey_sheet().summary()
    assert "authority" in page.cautions().summary()
    page.units().children[0].children[0].value = "kgf"
    assert "kgf" in page.plan("sites/upper-heron-wall.toml").summary()
    assert "form" in page.form().summary()


def test_the_answer_to_the_guess_is_folded_away(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(UPPER.parents[1] / "lessons")
    page = open_plan_page()
    view = page.compare("sites/lower-heron-wall.toml", "sites/upper-heron-wall.toml")
    (text,) = view.children
    assert text.value.startswith("<details><summary>After your guess</summary>")
    assert "times as much" not in page.compare("sites/upper-heron-wall.toml").summary()


@pytest.mark.parametrize("name", ["Wall $\\frac$ 5", "5 $ and $", "a\\b_{", "$x_{", "100 % & <b>"])
@pytest.mark.parametrize("ending", ["png", "svg", "pdf"])
def test_a_name_is_never_taken_for_mathematics(name: str, ending: str) -> None:
    site = replace(make_site(outcrop(25.0)), name=name, source=f"/x/{name}.toml", datum=name)
    plan = plan_raise(site)
    assert picture(plan, Display(), ending, dpi=50)
    figure = draw_plan(plan, Display())  # without the style, too
    assert name in figure.texts[0].get_text() and not figure.texts[0].get_parse_math()
    assert isinstance(PlanView(plan, Session(Record.in_memory())).summary(), str)


def test_what_cannot_be_worked_out_is_a_sentence_on_every_page(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def refuse(_: object) -> RaisePlan:
        raise ValueError("The wall leans too much. Survey it again.")

    for page in ("plan_view", "plan_page", "site_form"):
        monkeypatch.setattr(f"ropecalc.teaching.{page}.plan_raise", refuse)
    shown = [show_plan(UPPER), open_plan_page().compare(str(UPPER))]
    form = SiteForm(UPPER.parent, Session(Record.in_memory()))
    form.files.value = UPPER.name
    form.open_button.click()
    form.plan_button.click()
    for view in (*shown, form):
        assert "The wall leans too much. Survey it again." in view.summary()
