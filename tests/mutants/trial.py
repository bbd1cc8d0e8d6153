"""Trying mutants: each in a fork of a process that has already imported what takes long.

A mutant is written into a copy of the tree, its tests run there, and the original is put back.
The parent imports pytest, hypothesis, numpy, scipy and sympy, but nothing of ropecalc, so that
every fork imports ropecalc from its own copy. Needs a system with fork.
"""

import compileall
import contextlib
import json
import multiprocessing
import os
import py_compile
import resource
import shutil
import signal
import sys
import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import asdict, dataclass, field
from multiprocessing.connection import wait
from multiprocessing.process import BaseProcess
from pathlib import Path

import pytest

from tests.mutants.choice import Mutant
from tests.mutants.own_tests import Suite

_COPIED = ("ropecalc", "tests", "sites", "pyproject.toml")
_OPTIONS = ("-q", "--hypothesis-seed=0", "-p", "no:cacheprovider", "-p", "no:nbval")
_MEMORY = 8 << 30
_WAIT = 10  # on a busy machine a second of computing may take ten
_SOME_FAILED, _INTERRUPTED, _NO_TESTS = 1, 2, 5
_fork = multiprocessing.get_context("fork")


@dataclass(frozen=True)
class Baseline:
    """How the tests run without a change: seconds of computing, and those that fail anyway."""

    seconds: dict[str, float] = field(default_factory=dict)
    failing: list[str] = field(default_factory=list)

    def limit(self, suite: Suite) -> int:
        """After so many seconds of computing a mutant is taken to run for ever."""
        own = [s for name, s in self.seconds.items() if name.split("::")[0] in suite.runs[0]]
        return 20 + round(4 * sum(own))

    def can_judge(self, suite: Suite) -> bool:
        """Whether all files of a suite could be read, and some test in them passes."""
        passing = {name.split("::")[0] for name in self.seconds if name not in self.failing}
        return set(suite.files) <= passing


class Order:
    """Runs the quickest tests first, leaves out what fails anyway, and keeps a record of both."""

    def __init__(self, known: Baseline) -> None:
        self.known = known
        self.seen = Baseline()

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items[:] = [item for item in items if item.nodeid not in self.known.failing]
        items.sort(key=lambda item: self.known.seconds.get(item.nodeid, 0.0))

    def pytest_runtest_logstart(self, nodeid: str) -> None:
        self.seen.seconds[nodeid] = -time.process_time()

    def pytest_runtest_logfinish(self, nodeid: str) -> None:
        self.seen.seconds[nodeid] += time.process_time()

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed and report.nodeid not in self.seen.failing:
            self.seen.failing.append(report.nodeid)


@dataclass(frozen=True)
class Trial:
    """A mutant that is being tried in ``tree``."""

    mutant: Mutant
    tree: Path
    process: BaseProcess
    deadline: float


def copy_tree(root: Path, tree: Path) -> None:
    """A copy of what the tests need, compiled so that a change is noticed however quick it is."""
    tree.mkdir(parents=True)
    for name in _COPIED:
        if (root / name).is_dir():
            shutil.copytree(
                root / name, tree / name, ignore=shutil.ignore_patterns("__pycache__", "browser")
            )
        else:
            shutil.copy2(root / name, tree / name)
    mode = py_compile.PycInvalidationMode.CHECKED_HASH
    compileall.compile_dir(tree / "ropecalc", quiet=1, invalidation_mode=mode)


def warm_up(tree: Path) -> None:
    """Import what the forks would otherwise import one by one."""
    # One thread for each fork, and the same examples of hypothesis each time.
    os.environ.update(OMP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1", CI="true")
    import hypothesis.strategies
    import numpy.testing
    import scipy.optimize
    import sympy

    assert hypothesis and numpy and scipy and sympy
    empty = tree / "empty"
    empty.mkdir()
    with contextlib.redirect_stdout(open(os.devnull, "w", encoding="utf-8")):
        pytest.main([*_OPTIONS, "--rootdir", str(empty), str(empty)])
    assert "ropecalc" not in sys.modules


def baseline(trees: list[Path], files: Iterable[str]) -> Baseline:
    """Run all tests that will be needed on unchanged modules.

    A test that fails without any change cannot say anything about one: it is named and left out.
    """
    shares = [tuple(sorted(files, reverse=True)[i :: len(trees)]) for i in range(len(trees))]
    running = [
        _start(tree, Suite(share, ((*share, "--continue-on-collection-errors"),)), None)
        for tree, share in zip(trees, shares, strict=True)
        if share
    ]
    base = Baseline()
    for tree, process in zip(trees, running, strict=False):
        process.join()
        part = json.loads((tree / "baseline.json").read_text("utf-8"))
        base.seconds.update(part["seconds"])
        base.failing.extend(part["failing"])
    print(f"{len(base.seconds)} tests, {sum(base.seconds.values()):.0f} s.", flush=True)
    for name in base.failing:
        print(f"  fails without any change: {name}", flush=True)
    return base


def output(tree: Path) -> str:
    """The end of what the last tests in ``tree`` printed."""
    return (tree / "output.txt").read_text("utf-8", errors="replace")[-3000:]


def try_all(
    pending: Iterable[Mutant],
    trees: list[Path],
    suites: Mapping[str, Suite],
    base: Baseline,
    record: Callable[[Mutant, bool, str], None],
) -> None:
    """Try every mutant, one in each tree at a time; ``record`` hears who was killed and how."""
    waiting, free, running = iter(pending), list(trees), list[Trial]()
    try:
        while True:
            while free and (mutant := next(waiting, None)):
                tree = free.pop()
                (tree / mutant.module).write_text(mutant.source, "utf-8")
                suite = suites[mutant.module]
                process = _start(tree, suite, base)
                deadline = time.monotonic() + _WAIT * base.limit(suite)
                running.append(Trial(mutant, tree, process, deadline))
            if not running:
                return
            wait([t.process.sentinel for t in running], timeout=1.0)
            for trial in [t for t in running if _is_over(t)]:
                late = trial.process.is_alive()
                _stop(trial.process)
                late = late or trial.process.exitcode == -signal.SIGXCPU
                running.remove(trial)
                free.append(trial.tree)
                _put_back(trial, trees)
                killed = late or trial.process.exitcode != 0
                record(trial.mutant, killed, "ran too long" if late else output(trial.tree))
    finally:
        for trial in running:
            _stop(trial.process)


def _is_over(trial: Trial) -> bool:
    return not trial.process.is_alive() or time.monotonic() > trial.deadline


def _put_back(trial: Trial, trees: list[Path]) -> None:
    original = trees[0].parent / "original" / trial.mutant.module
    shutil.copyfile(original, trial.tree / trial.mutant.module)


def _start(tree: Path, suite: Suite, base: Baseline | None) -> BaseProcess:
    process = _fork.Process(target=_run_tests, args=(tree, suite, base))
    process.start()
    return process


def _stop(process: BaseProcess) -> None:
    if process.is_alive() and process.pid:
        with contextlib.suppress(ProcessLookupError):
            os.killpg(process.pid, signal.SIGKILL)
    process.join()


def _run_tests(tree: Path, suite: Suite, base: Baseline | None) -> None:
    """In the fork: run the suite on ``tree``; exit code 0 says that all of it passed.

    Without a baseline everything is run, and what was seen becomes the baseline.
    """
    os.setsid()
    resource.setrlimit(resource.RLIMIT_AS, (_MEMORY, _MEMORY))
    if base:
        limit = base.limit(suite)
        resource.setrlimit(resource.RLIMIT_CPU, (limit, limit + 5))
    sys.dont_write_bytecode = base is not None
    elsewhere = [p for p in sys.path if Path(p) not in (Path.cwd(), Path())]
    os.chdir(tree)
    sys.path[:] = [str(tree), *elsewhere]
    for name in [n for n in sys.modules if n.split(".")[0] == "tests"]:
        del sys.modules[name]
    with open(tree / "output.txt", "w", encoding="utf-8") as file:
        os.dup2(file.fileno(), 1)
        os.dup2(file.fileno(), 2)
    order = Order(base or Baseline())
    stop_early = ("-x",) if base else ()
    allowed = {0, _NO_TESTS} if base else {0, _SOME_FAILED, _INTERRUPTED}
    for arguments in suite.runs:
        code = int(pytest.main([*_OPTIONS, *stop_early, *arguments], plugins=[order]))
        if code not in allowed:
            sys.stdout.flush()
            os._exit(code)
    loaded = sys.modules["ropecalc"].__file__ or ""
    assert Path(loaded).is_relative_to(tree), loaded
    if base is None:
        (tree / "baseline.json").write_text(json.dumps(asdict(order.seen)), "utf-8")
    os._exit(0)
