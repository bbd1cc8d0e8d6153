"""What every page shows is a widget that can also say itself in plain text."""

from collections.abc import Callable, Iterable
from html import escape
from typing import Any

import ipywidgets as widgets
import traitlets


class Shown(widgets.VBox):
    """A column of widgets with a plain-text summary.

    The summary is what a screen reader, a search and the notebook tests see in place of the
    picture; it is rebuilt whenever it is asked for, so it always tells the current state.

    Whoever takes a view from the page closes it (:func:`close`); closing ends what it follows.
    """

    _endings: traitlets.List[Callable[[], None]] = traitlets.List()

    def until_closed(self, end: Callable[[], None]) -> None:
        """Call ``end`` when this view is closed, so that nothing holds on to it."""
        self._endings = [*self._endings, end]

    def close(self) -> None:
        """Let go of what this view follows."""
        endings, self._endings = self._endings, []
        for end in endings:
            end()
        super().close()

    def summary(self) -> str:
        """The state in plain words. Subclasses say what they show."""
        raise NotImplementedError

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        bundle: dict[str, Any] = super()._repr_mimebundle_(**kwargs)
        bundle["text/plain"] = self.summary()
        return bundle


def close(*gone: widgets.Widget) -> None:
    """Close widgets that were taken from the page, with all that stands in them."""
    for widget in gone:
        inside = [getattr(widget, name) for name in widget.keys]
        widget.close()
        for found in inside:
            parts = found if isinstance(found, tuple | list) else (found,)
            close(*(part for part in parts if isinstance(part, widgets.Widget)))


Table = tuple[tuple[str, ...], ...]
"""Rows of cells in the reader's words and units; the first row names the columns."""


def table_html(rows: Table) -> str:
    """``rows`` as a table; where it is wider than the page it scrolls."""
    if not rows:
        return ""
    heads = "".join(f'<th scope="col">{escape(cell)}</th>' for cell in rows[0])
    lines = ("".join(f"<td>{escape(cell)}</td>" for cell in row) for row in rows[1:])
    body = "".join(f"<tr>{line}</tr>" for line in lines)
    return (
        f'<div class="ropecalc-table" style="overflow-x: auto"><table><thead><tr>{heads}</tr>'
        f"</thead><tbody>{body}</tbody></table></div>"
    )


def table_text(rows: Table) -> list[str]:
    """``rows`` as plain lines."""
    return [" | ".join(row) for row in rows]


def status(lines: Iterable[str]) -> str:
    """Lines of text that a screen reader hears when they change; a blank one keeps its height."""
    body = "".join(f"<p>{escape(line) or '&nbsp;'}</p>" for line in lines)
    return f'<div role="status" aria-live="polite">{body}</div>'
