"""From an answer's text to a verdict and a sentence that helps. Nothing is shown or kept here.

How that is done lies with the kind of the question; see
:mod:`~ropecalc.teaching.questions.question`.
"""

from ropecalc.teaching.questions.draw import Draw
from ropecalc.teaching.questions.verdict import Marked, Verdict
from ropecalc.units import Display

__all__ = ["Marked", "Verdict", "mark"]


def mark(drawn: Draw, text: str, display: Display | None = None) -> Marked:
    """Mark ``text`` as the answer to ``drawn``; ``display`` is for the numbers in the feedback."""
    return drawn.template.mark(drawn.values, text, display or Display())
