"""How sure a learner says they are of an answer: three levels, in practice and on papers."""

import ipywidgets as widgets

LEVELS = {"sure": "sure", "unsure": "not sure", "guess": "guessing"}
"""How sure a learner can say they are: the record's word, and the page's."""


def read_level(text: object) -> str:
    """The record's word for what was typed or kept as ``text``; "" where it says none."""
    said = " ".join(str(text).lower().split())
    words = {words: level for level, words in LEVELS.items()}
    return said if said in LEVELS else words.get(said, "")


def sure_box(question: str) -> widgets.RadioButtons:
    """The choice of a level, none chosen; ``question`` is what it asks."""
    return widgets.RadioButtons(
        options=[(words, level) for level, words in LEVELS.items()],
        value=None,
        description=question,
        layout={"width": "auto"},
        style={"description_width": "initial"},
    )
