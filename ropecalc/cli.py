"""The `ropecalc` command.

Each sub-command is one function in `COMMANDS`. It adds its parser and names the function
that runs it; that function imports what it needs, so that `ropecalc --help` stays quick.
What a user can put right is raised as `ValueError` or `OSError` and printed as one line.
"""

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from ropecalc import __version__

if TYPE_CHECKING:
    from ropecalc.teaching.papers.making import Wishes

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


def plan(add: AddParser) -> None:
    """`ropecalc plan`: work out a raise from a site file."""
    parser = add(
        "plan",
        help="work out a raise, station by station, from a site file",
        epilog="Exit status: 0 done; 1 done, but the litter can be held nowhere; 2 the site or "
        "the wishes could not be used.",
    )
    parser.add_argument("site", metavar="SITE.toml", help="the surveyed site")
    parser.add_argument("--json", action="store_true", help="print JSON (SI) instead of tables")
    parser.add_argument("--csv", metavar="FILE", help="also write the stations as CSV (SI)")
    parser.add_argument("--picture", metavar="FILE", help="also draw it: .png, .svg or .pdf")
    parser.add_argument(
        "--units", default="kN,m,kg", help="units of the tables and the picture, e.g. lbf,ft,lb"
    )
    parser.set_defaults(run=_run_plan)


def _run_plan(options: argparse.Namespace) -> int:
    from ropecalc.planning.export import plan_as_csv, plan_as_json
    from ropecalc.planning.files import check_destination, same_file, write_all
    from ropecalc.planning.raise_plan import plan_raise
    from ropecalc.planning.report import read_display, text_report
    from ropecalc.planning.site_file import read_site

    display = read_display(options.units)
    if options.picture:
        from ropecalc.teaching.plan_picture import picture, picture_format

        file_format = picture_format(options.picture)
    site = read_site(options.site)
    for path in filter(None, (options.csv, options.picture)):
        check_destination(path, site.read_from)
    if options.csv and options.picture and same_file(options.csv, options.picture):
        raise ValueError(f"{options.csv}: --csv and --picture name one file. Name two.")
    found = plan_raise(site)
    files: dict[str, str | bytes] = {}
    if options.csv:
        files[options.csv] = plan_as_csv(found)
    if options.picture:
        files[options.picture] = picture(found, display, file_format)
    text = plan_as_json(found) if options.json else text_report(found, display)
    write_all(files)
    _print(text)
    return 1 if found.governing is None else 0


def survey_sheet(add: AddParser) -> None:
    """`ropecalc survey-sheet`: a page to take to the cliff."""
    parser = add("survey-sheet", help="write a printable sheet of what to measure at a site")
    parser.add_argument("pdf", metavar="OUT.pdf", help="the file to write")
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4")
    parser.set_defaults(run=_run_survey_sheet)


def _run_survey_sheet(options: argparse.Namespace) -> int:
    from ropecalc.planning.files import check_destination, write_whole
    from ropecalc.teaching.survey_page import survey_page

    if not options.pdf.lower().endswith(".pdf"):
        raise ValueError(
            f"{options.pdf}: the sheet is written as PDF. End the file's name in .pdf."
        )
    check_destination(options.pdf)
    write_whole(options.pdf, survey_page(options.paper))
    return _print(f"Wrote {options.pdf}: one page, {options.paper}.\n")


def papers(add: AddParser) -> None:
    """`ropecalc papers`: one paper and one key for each student of a class."""
    parser = add("papers", help="write a paper and a key for each student of a class")
    parser.add_argument("blueprint", metavar="BLUEPRINT.toml", help="what the paper asks")
    parser.add_argument("class_list", metavar="CLASS.csv", help="one student or pseudonym a line")
    parser.add_argument("folder", metavar="FOLDER", help="where to write; new, or without papers")
    _add_print_options(parser)
    parser.set_defaults(run=_run_papers)


def _add_print_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4")
    parser.add_argument("--no-pdf", action="store_true", help="notebooks only")
    parser.add_argument("--units", default="kN,m,kg", help="units on paper, e.g. lbf,ft,lb")


def _wishes(options: argparse.Namespace) -> "Wishes":
    from ropecalc.planning.report import read_display
    from ropecalc.teaching.papers.making import Wishes

    return Wishes(options.paper, not options.no_pdf, read_display(options.units))


def _run_papers(options: argparse.Namespace) -> int:
    from ropecalc.teaching.papers.blueprint import read_blueprint
    from ropecalc.teaching.papers.class_list import read_class_list
    from ropecalc.teaching.papers.making import HANDOUTS, KEYS, make_issue, write_papers

    wishes = _wishes(options)
    blueprint = read_blueprint(options.blueprint)
    students = read_class_list(options.class_list)
    issue = make_issue(blueprint, students, source=options.blueprint)
    folder = Path(options.folder)
    write_papers(issue, folder, wishes, _progress)
    return _print(
        f"{len(issue.papers)} papers in {folder / HANDOUTS}, keys in {folder / KEYS}.\n"
        "Keep this folder: papers are marked and printed again from it.\n"
    )


def _progress(done: int, total: int) -> None:
    """How far it is, on a terminal only and on one line."""
    if sys.stderr.isatty():
        print(f"\r{done} of {total}", end="\n" if done == total else "", file=sys.stderr)


def paper_again(add: AddParser) -> None:
    """`ropecalc paper-again`: one student's paper and key once more."""
    parser = add("paper-again", help="write one student's paper and key again")
    parser.add_argument("folder", metavar="FOLDER", help="the examination's folder")
    parser.add_argument("student", help="as in the class list")
    _add_print_options(parser)
    parser.set_defaults(run=_run_paper_again)


def _run_paper_again(options: argparse.Namespace) -> int:
    from ropecalc.teaching.papers.making import write_again

    files = write_again(Path(options.folder), options.student, _wishes(options))
    return _print("".join(f"Wrote {path}.\n" for path in files))


def export(add: AddParser) -> None:
    """`ropecalc export`: a package for a learning platform."""
    parser = add(
        "export",
        help="write a QTI 2.1 package of papers for a learning platform",
        epilog="The package holds the answers: import it yourself and hand it to nobody. "
        "One of the whole class lets the platform draw each learner's numbers.",
    )
    parser.add_argument("folder", metavar="FOLDER", help="the examination's folder")
    parser.add_argument("student", nargs="?", default="", help="default: the whole class")
    parser.add_argument("--units", default="kN,m,kg", help="units asked for, e.g. lbf,ft,lb")
    parser.set_defaults(run=_run_export)


def _run_export(options: argparse.Namespace) -> int:
    from ropecalc.planning.report import read_display
    from ropecalc.teaching.papers.making import export_package

    display = read_display(options.units)
    return _print(f"Wrote {export_package(Path(options.folder), options.student, display)}.\n")


def mark(add: AddParser) -> None:
    """`ropecalc mark`: mark what came back."""
    parser = add(
        "mark",
        help="mark returned papers and say what the class got wrong",
        epilog="Exit status: 0 done; 1 done, but some returns could not be used; 2 nothing done.",
    )
    parser.add_argument("folder", metavar="FOLDER", help="the examination's folder")
    parser.add_argument(
        "returns",
        nargs="*",
        help="files or folders of returns (default: 'returns' in the examination's folder)",
    )
    parser.set_defaults(run=_run_mark)


def _run_mark(options: argparse.Namespace) -> int:
    from ropecalc.teaching.papers.issue import read_issue
    from ropecalc.teaching.papers.making import RESULTS, RETURNS
    from ropecalc.teaching.questions.bank import BANK
    from ropecalc.teaching.results.returns import find_returns
    from ropecalc.teaching.results.tables import mark_returns, report, write_results

    folder = Path(options.folder)
    issue = read_issue(folder, BANK)
    places = [Path(name) for name in options.returns] or [folder / RETURNS]
    paths = [p for place in places for p in (find_returns(place) if place.is_dir() else [place])]
    marked = mark_returns(issue, paths)
    files = write_results(marked, folder / RESULTS)
    written = "".join(f"Wrote {path}.\n" for path in files)
    _print(f"{report(marked)}\n\n{written}")
    return 1 if marked.problems else 0


def forget(add: AddParser) -> None:
    """`ropecalc forget`: remove a student's data from an examination."""
    parser = add("forget", help="remove everything about one student from an examination")
    parser.add_argument("folder", metavar="FOLDER", help="the examination's folder")
    parser.add_argument("student", help="as in the class list")
    parser.set_defaults(run=_run_forget)


def _run_forget(options: argparse.Namespace) -> int:
    from ropecalc.teaching.papers.making import forget as forget_student

    changed = forget_student(Path(options.folder), options.student)
    return _print("".join(f"Removed from or deleted: {path}\n" for path in changed))


def _print(text: str) -> int:
    """Write `text` to the standard output; a reader who has left is no fault."""
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        # What is still buffered must go nowhere, or Python complains when it exits.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except UnicodeEncodeError:
        encoding = sys.stdout.encoding
        sys.stdout.write(text.encode(encoding, "replace").decode(encoding))
    return 0


COMMANDS: tuple[Callable[[AddParser], None], ...] = (
    course,
    plan,
    survey_sheet,
    papers,
    paper_again,
    export,
    mark,
    forget,
)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="ropecalc",
        description="Forces in vertical rope-rescue raises: a course, a planner, and papers.",
        epilog="Results support qualified judgement; they never replace it.",
    )
    parser.add_argument("--version", action="version", version=f"ropecalc {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for command in COMMANDS:
        command(commands.add_parser)
    return parser


if __name__ == "__main__":
    sys.exit(main())
