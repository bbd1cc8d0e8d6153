"""Mutation testing of the derivations and the mechanics: ``python -m tests.mutants``.

Results are kept in ``.mutants/session.sqlite``, so a run that was stopped goes on where it was. A
kill stands until its module changes; a survivor is tried again when its tests change.
"""

import argparse
import hashlib
import sys
import tempfile
import time
from pathlib import Path

from cosmic_ray.work_db import WorkDB, use_db
from cosmic_ray.work_item import MutationSpec, TestOutcome, WorkerOutcome, WorkItem, WorkResult

from tests.mutants import choice, own_tests, report, trial
from tests.mutants.choice import Mutant
from tests.mutants.first_try import first_try

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
KEPT = ROOT / ".mutants"


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="make mutants", description=__doc__)
    parser.add_argument("--count", type=int, default=400, help="how many mutants in all")
    parser.add_argument(
        "--only", nargs="*", default=[""], help="only modules with this in their path"
    )
    parser.add_argument("--seed", type=int, default=choice.SEED, help="draws another sample")
    parser.add_argument("--workers", type=int, default=2, help="how many at the same time")
    parser.add_argument("--afresh", action="store_true", help="forget earlier results")
    parser.add_argument("--write", action="store_true", help="write tests/mutants/survivors.md")
    return parser.parse_args()


def _job_id(mutant: Mutant) -> str:
    """The same as long as the changed module is the same."""
    return _digest(mutant.module, mutant.operator, mutant.source)


def _survived(suite: own_tests.Suite) -> str:
    """What is kept of a survivor: which tests it survived."""
    return "survived " + _digest(*((ROOT / file).read_text("utf-8") for file in suite.files))


def _digest(*texts: str) -> str:
    return hashlib.sha256("\0".join(texts).encode()).hexdigest()


def _add(db: WorkDB, jobs: dict[str, Mutant]) -> None:
    known = {item.job_id for item in db.work_items}
    db.add_work_items(
        WorkItem.single(
            job,
            MutationSpec(
                module_path=m.module,
                operator_name=m.operator,
                occurrence=m.occurrence,
                start_pos=(m.line, 0),
                end_pos=(m.line, 1),
                definition_name=m.function,
            ),
        )
        for job, m in jobs.items()
        if job not in known
    )


def _try_pending(db: WorkDB, jobs: dict[str, Mutant], workers: int) -> None:
    suites = {m.module: own_tests.suite(ROOT, m.module) for m in jobs.values()}
    survived = {module: _survived(suite) for module, suite in suites.items()}
    done = {
        job
        for job, result in db.results
        if job in jobs and (result.is_killed or result.output == survived[jobs[job].module])
    }
    pending = {m: job for job, m in jobs.items() if job not in done}
    print(f"{len(jobs)} mutants, {len(done)} known from earlier.", flush=True)
    if not pending:
        return
    started, count = time.monotonic(), 0

    def record(mutant: Mutant, killed: bool, said: str) -> None:
        nonlocal count
        count += 1
        outcome = TestOutcome.KILLED if killed else TestOutcome.SURVIVED
        output = said if killed else survived[mutant.module]
        diff = f"- {mutant.before}\n+ {mutant.after}"
        db.set_result(pending[mutant], WorkResult(WorkerOutcome.NORMAL, output, outcome, diff))
        if not count % 20:
            print(f"  {count} of {len(pending)} in {time.monotonic() - started:.0f} s", flush=True)

    with tempfile.TemporaryDirectory(prefix="mutants-") as folder:
        trees = [Path(folder) / f"tree{i}" for i in range(workers)]
        for tree in (Path(folder) / "original", *trees):
            trial.copy_tree(ROOT, tree)
        trial.warm_up(trees[0])
        base = trial.baseline(trees, {f for m in pending for f in suites[m.module].files})
        judged = {name for name, suite in suites.items() if base.can_judge(suite)}
        for name in sorted({m.module for m in pending} - judged):
            print(f"  {name} cannot be tried: not all of its tests can be run", flush=True)
        trial.try_all([m for m in pending if m.module in judged], trees, suites, base, record)


def main() -> int:
    """Run what is missing and say what came out; 1 if too many mutants survived."""
    options = _arguments()
    KEPT.mkdir(exist_ok=True)
    session = KEPT / "session.sqlite"
    if options.afresh:
        session.unlink(missing_ok=True)
    chosen, sizes = choice.sample(ROOT, options.count, options.only, options.seed)
    jobs = {_job_id(m): m for m in chosen}
    with use_db(session, WorkDB.Mode.create) as db:
        _add(db, jobs)
        _try_pending(db, jobs, options.workers)
        results = dict(db.results)
    outcomes = [
        report.Outcome(m, results[job].is_killed) for job, m in jobs.items() if job in results
    ]
    reasons = report.read_reasons(HERE / "harmless.toml")
    first = first_try(HERE / "first_tries.toml", options.seed)
    text = report.as_markdown(outcomes, sizes, reasons, options.seed, first)
    (HERE if options.write else KEPT).joinpath("survivors.md").write_text(text, "utf-8")
    for mutant in report.unexplained(outcomes, reasons):
        print(f"No reason is given for {mutant.module}:{mutant.line} in {mutant.function}:")
        print(f"  - {mutant.before}\n  + {mutant.after}")
    reached = report.score(outcomes)
    print(f"{sum(o.killed for o in outcomes)} of {len(outcomes)} killed: {100 * reached:.1f} %")
    if len(outcomes) < len(jobs):
        print(f"{len(jobs) - len(outcomes)} could not be tried: see above.")
    return int(reached < report.WANTED or len(outcomes) < len(jobs))


if __name__ == "__main__":
    sys.exit(main())
