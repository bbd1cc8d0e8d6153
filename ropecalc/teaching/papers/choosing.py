"""Which questions a blueprint takes from the bank; the same for every student of a paper."""

from collections.abc import Iterable, Iterator, Mapping
from difflib import get_close_matches
from hashlib import sha256

from ropecalc.teaching.papers.blueprint import LEVELS, Blueprint, Topic
from ropecalc.teaching.papers.trouble import PaperError
from ropecalc.teaching.questions.question import Question
from ropecalc.teaching.scenarios.content import Scenario

Bank = Mapping[int, tuple[Question, ...]]
"""Questions by the number of their lesson."""


def choose(blueprint: Blueprint, bank: Bank, source: str = "") -> tuple[Question, ...]:
    """The questions of the paper, lesson by lesson.

    Those that must be right are taken first; the seed decides on the rest. Raises
    :class:`PaperError` with every cell of the blueprint that the bank, or the list of questions
    that must be right, does not fit.
    """
    complaints = list(_complaints(blueprint, bank))
    if complaints:
        raise PaperError(source, *complaints)
    chosen: set[str] = set()
    for topic in blueprint.topics:
        for level, count in enumerate(topic.counts, 1):
            pool = _pool(topic, level, bank)
            pool.sort(
                key=lambda t: (t.key not in blueprint.must_pass, _rank(blueprint.seed, t.key))
            )
            chosen.update(t.key for t in pool[:count])
    found = tuple(t for n in sorted(bank) for t in bank[n] if t.key in chosen)
    _require_judged(blueprint, found, source)
    return found


def choose_scenarios(
    blueprint: Blueprint, scenarios: Mapping[str, Scenario], source: str = ""
) -> tuple[Scenario, ...]:
    """The scenarios of the paper, in their order: those named, or so many that the seed decides.

    Raises :class:`PaperError` for one that is not known.
    """
    if isinstance(blueprint.scenarios, int):
        wanted = sorted(scenarios, key=lambda key: _rank(f"{blueprint.seed}|scenario", key))
        wanted = wanted[: blueprint.scenarios]
    else:
        wanted = list(blueprint.scenarios)
        unknown = [key for key in wanted if key not in scenarios]
        if unknown:
            raise PaperError(
                source,
                *(f"scenarios: there is no “{key}”.{_near(key, scenarios)}" for key in unknown),
            )
    found = tuple(scenario for key, scenario in scenarios.items() if key in wanted)
    _require_judged(blueprint, tuple(t for one in found for t in one.questions), source)
    return found


def _near(key: str, known: Iterable[str]) -> str:
    """A hint at what was meant, or ""."""
    near = get_close_matches(key, list(known), 1)
    return f" Did you mean {near[0]}?" if near else ""


def as_choice(blueprint: Blueprint, chosen: tuple[Question, ...]) -> frozenset[str]:
    """The keys of the questions that are asked as a choice; the seed decides."""
    able = sorted(
        (t for t in chosen if t.has_choice and len(t.mistakes) >= _FEWEST_OPTIONS - 1),
        key=lambda t: _rank(f"{blueprint.seed}|choice", t.key),
    )
    return frozenset(t.key for t in able[: blueprint.as_choice])


_FEWEST_OPTIONS = 3


def _pool(topic: Topic, level: int, bank: Bank) -> list[Question]:
    return [t for n in topic.lessons for t in bank.get(n, ()) if t.difficulty == level]


def _rank(seed: str, key: str) -> bytes:
    return sha256(f"{seed}|{key}".encode()).digest()


def _complaints(blueprint: Blueprint, bank: Bank) -> Iterator[str]:
    home = {t.key: (n, t) for n, templates in bank.items() for t in templates}
    for topic in blueprint.topics:
        for lesson in topic.lessons:
            if lesson not in bank:
                yield (
                    f"{topic.title}: there is no lesson {lesson} with questions; there is "
                    f"{', '.join(map(str, sorted(bank)))}."
                )
    for key in blueprint.must_pass:
        if key not in home:
            yield f"must_pass: there is no question “{key}”.{_near(key, home)}"
        elif not any(home[key][0] in topic.lessons for topic in blueprint.topics):
            yield f"must_pass: {key} belongs to lesson {home[key][0]}, which is in no topic."
    for topic in blueprint.topics:
        for level, count in enumerate(topic.counts, 1):
            pool = _pool(topic, level, bank)
            must = [t.key for t in pool if t.key in blueprint.must_pass]
            name = LEVELS[level - 1]
            if len(must) > count:
                yield (
                    f"{topic.title}: must_pass needs {len(must)} {name} questions here "
                    f"({', '.join(must)}), but the topic takes only {count}."
                )
            if count > len(pool):
                yield (
                    f"{topic.title}: {count} {name} questions are wanted, but the bank has only "
                    f"{len(pool)} for its lessons."
                )


def _require_judged(blueprint: Blueprint, chosen: tuple[Question, ...], source: str) -> None:
    missing = [t.key for t in chosen if t.key not in blueprint.judged]
    if blueprint.judged and missing:
        lines = "\n".join(f"{key} = 0.7" for key in missing)
        raise PaperError(
            source,
            "these questions are on the paper but not judged. Copy the lines under [judged] and "
            f"put in for each the chance that somebody just competent gets it right:\n{lines}",
        )
