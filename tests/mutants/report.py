"""What a run found, in words: the score, and why each survivor is harmless."""

import datetime
import importlib.metadata
import platform
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from tests.mutants.choice import Mutant

WANTED = 0.90

Key = tuple[str, str, str, str]


@dataclass(frozen=True)
class Outcome:
    """A mutant that was tried."""

    mutant: Mutant
    killed: bool


def read_reasons(path: Path) -> dict[Key, str]:
    """Why survivors are harmless, as written down by whoever looked at them."""
    entries = tomllib.loads(path.read_text("utf-8")).get("survivor", [])
    return {(e["module"], e["function"], e["before"], e["after"]): e["reason"] for e in entries}


def score(outcomes: Sequence[Outcome]) -> float:
    """The share of mutants that were killed."""
    return sum(o.killed for o in outcomes) / len(outcomes)


def unexplained(outcomes: Sequence[Outcome], reasons: Mapping[Key, str]) -> list[Mutant]:
    """Survivors that nobody has given a reason for."""
    return [o.mutant for o in outcomes if not o.killed and o.mutant.key not in reasons]


def as_markdown(
    outcomes: Sequence[Outcome],
    sizes: Mapping[str, int],
    reasons: Mapping[Key, str],
    seed: int,
    first_try: str,
) -> str:
    """The whole report."""
    versions = ", ".join(f"{n} {importlib.metadata.version(n)}" for n in ("cosmic-ray", "pytest"))
    killed = sum(o.killed for o in outcomes)
    lines = [
        "# Mutants",
        "",
        "One small change is made to a module, and its own tests are run: they should fail "
        "(`make mutants` repeats this; DEVELOPERS.md says how).",
        "",
        f"{datetime.date.today().isoformat()}, Python {platform.python_version()}, {versions}; "
        f"seed {seed}; {len(outcomes)} mutants out of {sum(sizes.values())}.",
        "",
        f"**{killed} of {len(outcomes)} killed: {100 * killed / len(outcomes):.1f} %.** "
        f"Wanted: {100 * WANTED:.0f} %.",
        "",
        first_try,
        "",
        "A seed that was never tried gives a score that flatters nobody: "
        '`make mutants ARGS="--seed N"`. Write its first result into `first_tries.toml`.',
        "",
        "| module | possible | tried | killed | survived |",
        "|---|---:|---:|---:|---:|",
    ]
    for module, size in sizes.items():
        own = [o for o in outcomes if o.mutant.module == module]
        dead = sum(o.killed for o in own)
        lines.append(
            f"| {module.removeprefix('ropecalc/')} | {size} | {len(own)} | {dead} "
            f"| {len(own) - dead} |"
        )
    lines += ["", "## Survivors, and why each is harmless", ""]
    for outcome in sorted(outcomes, key=lambda o: (o.mutant.module, o.mutant.line)):
        if not outcome.killed:
            lines += _survivor(outcome.mutant, reasons.get(outcome.mutant.key, "NOT EXPLAINED"))
    return "\n".join(lines)


def _survivor(mutant: Mutant, reason: str) -> list[str]:
    return [
        f"`{mutant.module}`, line {mutant.line}, in `{mutant.function}`:",
        "",
        "```diff",
        f"- {mutant.before}",
        f"+ {mutant.after}",
        "```",
        "",
        reason,
        "",
    ]
