"""From a blueprint to questions: the cells are filled exactly, or it is said why they cannot be."""

from collections import Counter
from typing import Any

import pytest

from ropecalc.teaching.papers.choosing import as_choice, choose
from ropecalc.teaching.papers.trouble import PaperError
from tests.teaching.papers.examples import BANK, blueprint

HOME = {t.key: (n, t.difficulty) for n, templates in BANK.items() for t in templates}


@pytest.mark.parametrize("seed", [f"seed {n}" for n in range(40)])
def test_every_cell_is_filled_exactly(seed: str) -> None:
    chosen = choose(blueprint(seed=seed), BANK)
    cells = Counter(HOME[t.key] for t in chosen)
    assert cells == {(8, 1): 1, (8, 2): 2, (8, 3): 1, (9, 2): 2}
    assert len({t.key for t in chosen}) == 6
    assert "haul-beside-track" in {t.key for t in chosen}
    assert [HOME[t.key][0] for t in chosen] == sorted(HOME[t.key][0] for t in chosen)


def test_the_seed_decides_and_decides_again_the_same() -> None:
    papers = {tuple(t.key for t in choose(blueprint(seed=f"{n}"), BANK)) for n in range(30)}
    assert len(papers) > 5
    assert choose(blueprint(), BANK) == choose(blueprint(), BANK)


def test_choices_are_as_many_as_wanted() -> None:
    chosen = choose(blueprint(), BANK)
    for wanted in range(7):
        assert len(as_choice(blueprint(as_choice=wanted), chosen)) == wanted


TOPIC = {"title": "T", "lessons": [8], "easy": 1}


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({"topic": [TOPIC | {"easy": 9}]}, "T: 9 easy questions are wanted, but the bank has only"),
        ({"topic": [TOPIC | {"lessons": [77]}]}, "T: there is no lesson 77"),
        ({"must_pass": ["haul-beside-trak"]}, "Did you mean haul-beside-track?"),
        ({"must_pass": ["take-in-rate"], "topic": [TOPIC]}, "lesson 9, which is in no topic"),
        (
            {"must_pass": ["tag-tension", "haul-beside-track"]},
            "Holding off: must_pass needs 2 hard questions here (tag-tension, haul-beside-track), "
            "but the topic takes only 1.",
        ),
        ({"judged": {"tag-tension": 0.6}}, "haul-beside-track = 0.7"),
    ],
)
def test_a_blueprint_that_does_not_fit_is_told_where(changes: dict[str, Any], part: str) -> None:
    small = {"as_choice": 0} if "topic" in changes else {}
    with pytest.raises(PaperError) as caught:
        choose(blueprint(**changes, **small), BANK, "p.toml")
    assert part in str(caught.value)
