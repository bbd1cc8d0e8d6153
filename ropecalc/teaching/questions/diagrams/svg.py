"""A picture as SVG for the page: crisp at any size, with its alternative text."""

from base64 import b64encode
from html import escape

from ropecalc.teaching.drawing import Stroke
from ropecalc.teaching.placing import Place
from ropecalc.teaching.questions.diagrams.picture import Disc, Picture, Trace, Words

FRAME_FACE, FRAME_EDGE = "#fff6d8", "#8a6d00"
_ON_SCREEN = 1.15
"""How much larger than drawn, so that its words are hardly smaller than those of the page."""
_FAMILY = "DejaVu Sans, Verdana, sans-serif"


def img(picture: Picture) -> str:
    """The picture as an HTML element that carries it whole."""
    data = b64encode(svg(picture).encode("utf-8")).decode("ascii")
    wide = picture.width * _ON_SCREEN
    return (
        f'<img alt="{escape(picture.alternative, quote=True)}" width="{wide:.0f}" '
        f'style="max-width:100%;height:auto;background:white" '
        f'src="data:image/svg+xml;base64,{data}">'
    )


def beside(words: str, picture: Picture | None) -> str:
    """HTML with the picture to its right, or below it on a narrow page."""
    if picture is None:
        return words
    return (
        '<div style="display:flex;flex-wrap:wrap;align-items:flex-start;gap:4px 24px">'
        f'<div style="flex:1 1 300px;max-width:640px">{words}</div>'
        f'<div style="flex:0 1 auto">{img(picture)}</div></div>'
    )


def svg(picture: Picture) -> str:
    """The picture as an SVG document."""
    tall = picture.height
    marks = [_disc(m, tall) if isinstance(m, Disc) else _trace(m, tall) for m in picture.marks]
    words = [_words(w, tall) for w in picture.words]
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(picture.width)}" '
        f'height="{_n(tall)}" viewBox="0 0 {_n(picture.width)} {_n(tall)}" role="img" '
        f'font-family="{_FAMILY}" text-anchor="middle" stroke-linejoin="round">'
        f"<title>{escape(picture.alternative)}</title>"
        f'<rect width="100%" height="100%" fill="white"/>{"".join(marks)}{"".join(words)}</svg>'
    )


def _trace(trace: Trace, tall: float) -> str:
    points = " ".join(_at(point, tall) for point in trace.points)
    shape = "polygon" if trace.closed else "polyline"
    return f'<{shape} points="{points}" {_look(trace.stroke, trace.fill)}/>'


def _disc(disc: Disc, tall: float) -> str:
    x, y = disc.centre
    return (
        f'<circle cx="{_n(x)}" cy="{_n(tall - y)}" r="{_n(disc.radius)}" '
        f"{_look(disc.stroke, disc.fill)}/>"
    )


def _words(words: Words, tall: float) -> str:
    left, bottom, right, top = words.box
    ground = (
        f'<rect x="{_n(left)}" y="{_n(tall - top)}" width="{_n(right - left)}" '
        f'height="{_n(top - bottom)}" rx="4" fill="{FRAME_FACE}" stroke="{FRAME_EDGE}"/>'
        if words.framed
        else ""
    )
    weight = ' font-weight="bold"' if words.bold else ""
    return (
        f'{ground}<text x="{_n(words.middle[0])}" y="{_n(tall - words.start[1])}" '
        f'font-size="{_n(words.size)}" fill="{words.color}"{weight}>{escape(words.text)}</text>'
    )


def _look(stroke: Stroke | None, fill: str | None) -> str:
    look = f'fill="{fill}"' if fill else 'fill="none"'
    if stroke is None:
        return look
    look += f' stroke="{stroke.color}" stroke-width="{_n(stroke.width)}"'
    lengths = dashes(stroke)
    if lengths:
        look += f' stroke-dasharray="{" ".join(map(_n, lengths))}"'
    return look


def dashes(stroke: Stroke) -> tuple[float, ...]:
    """Lengths of dashes and gaps in pixels; none for a line that is drawn through."""
    if stroke.style == "-":
        return ()
    return tuple(length * stroke.width for length in stroke.style[1])


def _at(point: Place, tall: float) -> str:
    return f"{_n(point[0])},{_n(tall - point[1])}"


def _n(number: float) -> str:
    return f"{number:.1f}".removesuffix(".0")
