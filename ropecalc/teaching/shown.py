"""What every page shows is a widget that can also say itself in plain text."""

from collections.abc import Iterable
from html import escape
from typing import Any

import ipywidgets as widgets


class Shown(widgets.VBox):
    """A column of widgets with a plain-text summary.

    The summary is what a screen reader, a search and the notebook tests see in place of the
    picture; it is rebuilt whenever it is asked for, so it always tells the current state.
    """

    def summary(self) -> str:
        """The state in plain words. Subclasses say what they show."""
        raise NotImplementedError

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        bundle: dict[str, Any] = super()._repr_mimebundle_(**kwargs)
        bundle["text/plain"] = self.summary()
        return bundle


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
