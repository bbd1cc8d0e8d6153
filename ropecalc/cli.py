"""The `ropecalc` command.

Each sub-command is one function in `COMMANDS`. It adds its parser and names the function
that runs it; that function imports what it needs, so that `ropecalc --help` stays quick.
What a user can put right is raised as `ValueError` or `OSError` and printed as one line.
"""

import argparse
import sys
from collections.abc import Callable, Sequence

from ropecalc import __version__

AddParser = Callable[..., argparse.ArgumentParser]
"""`add_parser` of argparse's sub-parsers: takes the command's name and its help."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line `arguments` (default: the process's own); return the exit code.

    0: done. 1: done, with a finding the command reports. 2: the input could not be used.
    """
    options = _parser().parse_args(arguments)
    try:
        code: int = options.run(options)
    except (ValueError, OSError) as error:
        print(f"ropecalc {options.command}: {error}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        return 130
    return code


def course(add: AddParser) -> None:
    """`ropecalc course`: open the course in the browser."""
    parser = add("course", help="open the course in your browser")
    parser.add_argument("--folder", help="the course folder (the one that holds 'lessons')")
    parser.add_argument("--port", type=int, help="the port to listen on (default: a free one)")
    parser.add_argument("--no-browser", action="store_true", help="only print the address")
    parser.set_defaults(run=_run_course)


def _run_course(options: argparse.Namespace) -> int:
    from ropecalc.teaching.course import open_course

    return open_course(options.folder, port=options.port, browser=not options.no_browser)


COMMANDS: tuple[Callable[[AddParser], None], ...] = (course,)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="ropecalc",
        description="Forces in vertical rope-rescue raises: a course, and a planner.",
        epilog="Results support qualified judgement; they never replace it.",
    )
    parser.add_argument("--version", action="version", version=f"ropecalc {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for command in COMMANDS:
        command(commands.add_parser)
    return parser


if __name__ == "__main__":
    sys.exit(main())
