"""The mutants that are tried: a seeded sample. A mutant is a module with one small change in it."""

import ast
import random
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from cosmic_ray.ast import ast_nodes, get_ast
from cosmic_ray.ast.ast_query import ASTQuery
from cosmic_ray.mutating import mutate_code
from cosmic_ray.plugins import get_operator, operator_names

from tests.mutants.rules import compiles, difference, hidden_spans, shares, worth_trying

SEED = 20260
PACKAGES = ("ropecalc/derivation", "ropecalc/mechanics")


@dataclass(frozen=True)
class Mutant:
    """One change: where it is, the line before and after, and how to make it again."""

    module: str
    function: str
    line: int
    before: str
    after: str
    operator: str
    occurrence: int
    source: str

    @property
    def key(self) -> tuple[str, str, str, str]:
        """What stays when lines move: enough to know a survivor again."""
        return self.module, self.function, self.before, self.after


@dataclass(frozen=True)
class Place:
    """A possible change that has not been made yet."""

    operator: str
    occurrence: int
    function: str
    start: tuple[int, int]


def modules(root: Path) -> list[str]:
    """Every module with something in it to change, by its path from ``root``."""
    found = (path for package in PACKAGES for path in sorted((root / package).rglob("*.py")))
    return [p.relative_to(root).as_posix() for p in found if places(p.read_text("utf-8"), p.name)]


def places(source: str, file_name: str) -> list[Place]:
    """All changes to ``source`` that are worth trying."""
    hidden = hidden_spans(ast.parse(source), file_name)
    nodes = list(ast_nodes(get_ast(source)))
    return [
        Place(name, occurrence, ASTQuery(node).get_definition_name() or "module", start)
        for name in operator_names()
        if worth_trying(name) and not get_operator(name).arguments()
        for operator in [get_operator(name)()]
        for occurrence, (node, start) in enumerate(
            (node, start) for node in nodes for start, _ in operator.mutation_positions(node)
        )
        if not any(low <= start < high for low, high in hidden) and not _marks_keywords(node)
    ]


def _marks_keywords(node: Any) -> bool:
    """Whether this is the bare star of a signature, which the tool takes for a product."""
    return node.parent is not None and bool(node.parent.type == "parameters")


def mutants(root: Path, module: str, seed: int) -> Iterator[Mutant]:
    """All mutants of ``module`` in an order that depends on the seed and the module alone."""
    source = (root / module).read_text("utf-8")
    candidates = places(source, Path(module).name)
    random.Random(f"{seed} {module}").shuffle(candidates)
    for place in candidates:
        changed = mutate_code(source, get_operator(place.operator)(), place.occurrence)
        if changed is None or not compiles(changed):
            continue
        line, before, after = difference(source, changed)
        yield Mutant(
            module, place.function, line, before, after, place.operator, place.occurrence, changed
        )


def sample(
    root: Path, count: int, only: list[str], seed: int
) -> tuple[list[Mutant], dict[str, int]]:
    """The seeded sample, and how many mutants each module has in all.

    ``count`` is for all modules together; of these, those are kept whose path contains one of
    ``only``.
    """
    sizes = {n: len(places((root / n).read_text("utf-8"), Path(n).name)) for n in modules(root)}
    kept = {n: share for n, share in shares(sizes, count).items() if any(o in n for o in only)}
    chosen = [
        mutant
        for name, share in kept.items()
        for mutant, _ in zip(mutants(root, name, seed), range(share), strict=False)
    ]
    return chosen, {name: sizes[name] for name in kept}
