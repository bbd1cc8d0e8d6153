"""Words and typeset formulas apart, so that a page and a plain summary come from one source."""

from dataclasses import dataclass
from html import escape


@dataclass(frozen=True)
class Passage:
    """A sentence, then formulas: each one as LaTeX (without dollar signs) and as plain text."""

    words: str
    latex: tuple[str, ...] = ()
    text: tuple[str, ...] = ()

    def as_html(self) -> str:
        """For a page that typesets ``$$...$$``."""
        return escape(self.words) + "".join(f"$${escape(line)}$$" for line in self.latex)

    def as_text(self) -> str:
        """For a summary or a screen reader."""
        return " ".join((self.words, *self.text))
