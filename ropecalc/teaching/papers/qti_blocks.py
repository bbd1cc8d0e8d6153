"""Which questions of a paper stay together in a package: the parts of one scenario.

They share numbers, so a platform that draws variants must draw all of them at once.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ropecalc.teaching.papers.paper import GOES_ON, Paper, PaperScenario
from ropecalc.teaching.papers.qti_item import Asked, MarkedItem, OpenItem
from ropecalc.units import Display

Block = tuple[Asked, ...]
"""Questions that share their numbers; most stand alone."""


@dataclass(frozen=True)
class Slot:
    """One place of a test, and the variants of its block, of which a learner gets one."""

    variants: tuple[Block, ...]

    @property
    def name(self) -> str:
        """After its first question."""
        return f"q{self.variants[0][0].number:02d}"

    @property
    def named(self) -> tuple[tuple[tuple[str, Asked], ...], ...]:
        """The variants, each question with the name of its item."""
        several = len(self.variants) > 1
        return tuple(
            tuple(
                (f"q{asked.number:02d}" + (f"-{variant:03d}" if several else ""), asked)
                for asked in block
            )
            for variant, block in enumerate(self.variants, 1)
        )


def slots(papers: Sequence[Paper], display: Display) -> tuple[Slot, ...]:
    """The places of a test that asks what ``papers`` ask; the same variant is in it once.

    Raises ValueError where they do not ask the same.
    """
    in_papers = [tuple(_blocks(paper, display)) for paper in papers]
    asked = {
        (paper.title, paper.minutes, tuple(tuple(one.asks for one in block) for block in found))
        for paper, found in zip(papers, in_papers, strict=True)
    }
    if len(asked) != 1:
        raise ValueError("the papers do not ask the same questions")
    return tuple(Slot(_distinct(variants)) for variants in zip(*in_papers, strict=True))


def _distinct(variants: Sequence[Block]) -> tuple[Block, ...]:
    return tuple({tuple(one.identity for one in block): block for block in variants}.values())


def _blocks(paper: Paper, display: Display) -> Iterator[Block]:
    begins = {told.first: told for told in paper.scenarios}
    open_number = len(paper.items) + 1
    number = 1
    while number <= len(paper.items):
        told = begins.get(number)
        if told is None:
            yield (MarkedItem(number, paper.items[number - 1]),)
            number += 1
        else:
            yield _scenario(paper, told, open_number, display)
            open_number += len(told.scenario.judged)
            number = told.last + 1


def _scenario(paper: Paper, told: PaperScenario, open_number: int, display: Display) -> Block:
    """A scenario's parts, then its open questions; the story stands above each of them."""
    story = (f"{told.scenario.title}.", told.story(display))
    numbers = range(told.first, told.last + 1)
    parts = (
        MarkedItem(n, paper.items[n - 1], (*story, GOES_ON) if told.goes_on(n) else story)
        for n in numbers
    )
    judged = (OpenItem(n, one, story) for n, one in enumerate(told.scenario.judged, open_number))
    return (*parts, *judged)
