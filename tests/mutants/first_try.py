"""What a sample gave when it was first tried, before any test was written for what it left."""

import tomllib
from pathlib import Path


def first_try(path: Path, seed: int) -> str:
    """What the sample of ``seed`` gave before any test was written for it, in a sentence."""
    for found in tomllib.loads(path.read_text("utf-8"))["sample"]:
        if found["seed"] == seed:
            killed, tried = found["killed"], found["tried"]
            return (
                f"When this sample was first tried ({found['date']}), before tests were written "
                f"for what it left, {killed} of {tried} were killed: {100 * killed / tried:.1f} % "
                f"({found['note']}). Modules that changed since have other mutants in the sample."
            )
    return (
        "What this sample gave before tests were written for what it left was not written down, "
        "so its score flatters."
    )
