"""A paper as a notebook: what it asks and its code, never a seed or a key.

Every cell of it follows from its metadata, so it can be told from an altered one without running
anything: :func:`foreign_code` builds the cells anew and compares.
"""

from collections.abc import Mapping
from typing import Any

from ropecalc import __version__, cautions
from ropecalc.teaching.papers.paper import CODE, Paper, scenario_as_document

KIND = "paper"
_HOW = (
    "Type a number with its unit, choose letters, or move sliders; it is kept at once. You see "
    "your marks when the papers come back. At the end press **Hand in**."
)

_MOST_QUESTIONS = 500
"""No paper asks more; one that says it does is not built anew only to see that it differs."""


def paper_notebook(paper: Paper, answers: Mapping[int, str] | None = None) -> Any:
    """The notebook of ``paper``; with ``answers`` (by question number), as it is handed in."""
    return notebook_of(describe(paper), answers)


def notebook_of(
    described: Mapping[str, Any],
    answers: Mapping[int, str] | None = None,
    sure: Mapping[int, str] | None = None,
) -> Any:
    """The notebook that carries ``described``, perhaps with ``answers``.

    ``sure`` is how sure the student is of an answer, by the question's number.
    """
    from nbformat import v4  # slow to import, and no page needs it to open

    ours: dict[str, Any] = {"kind": KIND, "paper": dict(described)}
    if answers is not None:
        ours["answers"] = {str(number): text for number, text in sorted(answers.items())}
    if sure:
        ours["sure"] = {str(number): level for number, level in sorted(sure.items())}
    return v4.new_notebook(
        cells=_cells(described),
        metadata={
            "kernelspec": {
                "display_name": "Python 3 (ipykernel)",
                "language": "python",
                "name": "python3",
            },
            "language_info": {"name": "python"},
            "ropecalc": ours,
        },
    )


def as_text(page: Any) -> str:
    """A notebook as its file holds it."""
    import nbformat

    return str(nbformat.writes(page)) + "\n"


def describe(paper: Paper) -> dict[str, Any]:
    """What the notebook carries: the questions with their numbers, in SI."""
    return {
        "title": paper.title,
        "student": paper.student,
        "code": paper.code,
        "minutes": paper.minutes,
        "formula_sheet": paper.formula_sheet,
        "made_with": __version__,
        "items": [
            {
                "question": item.template.key,
                "values": dict(item.drawn.values),
                "options": [f"{item.option_value(option):.9g}" for option in item.options],
            }
            for item in paper.items
        ],
        **_scenarios(paper),
        **({"confidence": True} if paper.confidence else {}),
    }


def _scenarios(paper: Paper) -> dict[str, Any]:
    """Nothing for a paper without scenarios."""
    if not paper.scenarios:
        return {}
    told = [scenario_as_document(one) for one in paper.scenarios]
    return {"scenarios": told, "open_questions": len(paper.open_questions)}


def _cells(described: Mapping[str, Any]) -> list[Any]:
    title, code, minutes = (str(described.get(k, "")) for k in ("title", "code", "minutes"))
    from nbformat.v4 import new_code_cell as new_code
    from nbformat.v4 import new_markdown_cell as new_text

    cells = [
        new_text(f"# {title}\n\nPaper {code}, {minutes} minutes.\n\n{_HOW}"),
        new_code(
            f'from ropecalc.teaching import open_paper\npaper = open_paper("{code}")\npaper.units()'
        ),
    ]
    items = described.get("items")
    count = len(items) if isinstance(items, list) else 0
    told = [one["first"] for one in described.get("scenarios", ())]
    for number in range(1, count + 1):
        if number in told:
            cells.append(new_code(f"paper.scenario({told.index(number) + 1})"))
        cells.append(new_code(f"paper.question({number})"))
    for number in range(count + 1, count + 1 + int(described.get("open_questions", 0))):
        cells.append(new_code(f"paper.open_question({number})"))
    cells += [new_code("paper.hand_in()"), new_text(cautions.KNOWLEDGE_CHECK)]
    for number, cell in enumerate(cells):
        cell["id"] = f"paper-{number}"
    return cells


def foreign_code(document: Any) -> bool:
    """Whether a notebook (as read from JSON) holds any code but that of its paper."""
    try:
        described = document["metadata"]["ropecalc"]["paper"]
        if not CODE.fullmatch(described["code"]):  # it goes into a cell
            return True
        opened = described.get("open_questions", 0)
        if type(opened) is not int or len(described["items"]) + opened > _MOST_QUESTIONS:
            return True
        own = [_source(cell) for cell in _cells(described) if cell["cell_type"] == "code"]
        found = [_source(cell) for cell in document["cells"] if cell["cell_type"] != "markdown"]
    except (KeyError, TypeError, ValueError, AttributeError):
        return True
    return own != found


def _source(cell: Any) -> str:
    source = cell["source"]
    return source if isinstance(source, str) else "".join(source)
