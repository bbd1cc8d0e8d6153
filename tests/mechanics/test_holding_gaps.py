"""Verdicts are told apart: by number, by name and by sentence."""

from ropecalc.mechanics.holding import Reach


def test_each_verdict_has_its_own_number_and_sentence() -> None:
    assert sorted(int(reach) for reach in Reach) == list(range(len(Reach.__members__)))
    sentences = [reach.sentence for reach in Reach]
    assert len(set(sentences)) == len(Reach.__members__)
    assert all(text[0].isupper() and text.endswith(".") for text in sentences)


def test_only_two_verdicts_are_possible() -> None:
    assert [reach for reach in Reach if reach.possible] == [Reach.HELD, Reach.PLUMB]
