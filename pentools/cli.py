"""The command line: it parses, calls one function, and turns the outcome into words and an exit code."""

from __future__ import annotations

import argparse
import importlib
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

from pentools.commands import COMMANDS
from pentools.errors import HoldError, InputError, PentoolsError, RecordError
from pentools.exits import EXIT_FINDINGS, EXIT_HELD, EXIT_INPUT, EXIT_OK, EXIT_RECORD

if TYPE_CHECKING:
    from pentools.answers.asking import Answer
    from pentools.record.bench import Bench
    from pentools.sums import Sum

__all__ = ["main"]

_EXIT_CODES = (
    (InputError, EXIT_INPUT),
    (HoldError, EXIT_HELD),
    (RecordError, EXIT_RECORD),
    (PentoolsError, EXIT_RECORD),
)
_CHECK = """\
List what is missing or odd in a job. Without a job every job on the bench is looked at: pentools check --bench.
Nothing is changed, but with --mend: lines that cannot be read are then set aside beside the record, the record as it
was is kept too, and the job's folder and record are made yours alone. Nothing is ever deleted.
"""
_RAW = argparse.RawDescriptionHelpFormatter
_EPILOG = """\
The bench folder holds the jobs, each in a folder of its own. It is --bench DIR, else the environment variable
PENTOOLS_BENCH, else pen-bench in your home folder. It and a commented bench.toml are made when first needed.

exit codes: 0 all well; 1 the job has warnings (check); 2 something typed cannot be used;
            3 a file or a job cannot be read or written; 4 a hold point stands in the way
"""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command.

    Parameters
    ----------
    arguments : sequence of str or None
        The words after the program's name; the process's own by default.

    Returns
    -------
    int
        The exit code, as the help lists them.
    """
    words = list(sys.argv[1:] if arguments is None else arguments)
    try:
        parsed = _parser(words).parse_args(words)
        code: int = parsed.run(parsed)
    except PentoolsError as error:
        print(f"pentools: {error}", file=sys.stderr)  # noqa: T201 - a command line speaks
        return next(code for kind, code in _EXIT_CODES if isinstance(error, kind))
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        return EXIT_OK
    return code


class _Parser(argparse.ArgumentParser):
    """An argument parser whose complaints point to the help."""

    def error(self, message: str) -> NoReturn:
        self.exit(EXIT_INPUT, f"{self.prog}: {message}. Try: {self.prog} --help\n")


def _parser(words: Sequence[str]) -> argparse.ArgumentParser:
    parser = _Parser(
        prog="pentools",
        description="A notebook for each fountain pen you restore: measure, judge, record, and write it up.",
        epilog=_EPILOG,
        formatter_class=_RAW,
    )
    from pentools import __version__

    parser.add_argument("--version", action="version", version=f"pentools {__version__}")
    parser.add_argument("--bench", metavar="DIR", help="the bench folder, here or after the command")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True, parser_class=_Parser)

    _add_commands(commands)
    _add_bench_commands(commands, words)
    sums = commands.add_parser(
        "sums",
        help="one calculation without a job",
        description="One calculation without a job. Several values in one option are separated by a semicolon.",
        formatter_class=_RAW,
    )
    _add_sums(sums, words)
    return parser


def _add_commands(commands: Any) -> None:
    """The commands about jobs; each takes a bench, all but the demonstration a job."""

    def add(name: str, text: str, run: Callable[[argparse.Namespace], int]) -> argparse.ArgumentParser:
        command: argparse.ArgumentParser = commands.add_parser(name, help=text, description=text, formatter_class=_RAW)
        _add_bench(command, "the bench folder (see: pentools --help)")
        if name == "open":
            command.add_argument("job", metavar="JOB", nargs="?", help="the job's name; left out, the bench itself")
        elif name not in ("demo", "starter"):
            command.add_argument("job", metavar="JOB", help="the job's name, such as 2026-014-green-piston")
        command.set_defaults(run=run)
        return command

    command = add("new", "start a job: its folder, its notebook, an empty record", _new)
    for option, metavar, text in (
        ("--continues", "OLDJOB", "the same pen comes back: take over what an older job on this bench knows of it"),
        ("--with", "OTHERJOB", "it came in a parcel with that job's pen: owner, yes and posting are taken over"),
    ):
        command.add_argument(option, metavar=metavar, default="", help=text)
    command = add(
        "open", "open a job's sheet, or the bench with all its pens, in the browser, on this machine only", _open
    )
    command.add_argument("--no-browser", action="store_true", help="print the address instead of opening a browser")
    command.add_argument("--port", type=int, default=0, help="port to serve on (default: a free one)")
    _add_check(commands)
    command = add("writeup", "write the job's pages, each one self-contained HTML file", _writeup)
    forms = command.add_mutually_exclusive_group()
    forms.add_argument(
        "--only", action="append", metavar="FORM", help="one form, such as letter, record or story; may be repeated"
    )
    forms.add_argument(
        "--for",
        dest="audience",
        type=lambda word: {"client": "owner", "blog": "everybody"}.get(word, word),  # what they were called before
        choices=("owner", "everybody", "both"),
        default="both",
        help="whose forms (default: both)",
    )
    command.add_argument(
        "--anyway",
        metavar="REASON",
        default="",
        help="why words of the owner's or the bench's may stand on a page for everybody; it goes into the record",
    )
    command.add_argument(
        "--pdf",
        action="store_true",
        help="as PDF too, beside each HTML file (needs the extra: pip install 'pentools[pdf]')",
    )
    command.add_argument(
        "--paper", type=str.casefold, choices=("a4", "letter"), help="for this once (default: what bench.toml says)"
    )
    command = add("merge", "take over the entries of another copy of a job's record", _merge)
    command.add_argument(
        "other", metavar="FILE", help="the other record.jsonl, such as a synced folder's conflicted copy"
    )
    command = add("starter", "lay a file that opens the bench when it is double-clicked", _starter)
    command.add_argument(
        "folder", metavar="FOLDER", nargs="?", help="where to lay it (default: the desktop, else home)"
    )
    command = add("demo", "lay the sample pen's job on the bench, write its pages, and say what it draws", _demo)
    command.add_argument("--year", action="store_true", help="lay a year of fifteen short jobs on the bench instead")


def _add_check(commands: Any) -> None:
    """The check: of one job, or of all on the bench where none is named."""
    text = "list what is missing or odd in a job, or in every job on the bench"
    command = commands.add_parser("check", help=text, description=_CHECK, formatter_class=_RAW)
    command.add_argument("job", metavar="JOB", nargs="?", help="the job's name; left out, every job is checked")
    command.add_argument(
        "--bench",
        metavar="DIR",
        nargs="?",
        action=_BenchIfNamed,
        default=argparse.SUPPRESS,
        help="the bench folder; without DIR the usual one",
    )
    command.add_argument("--all", action="store_true", help="every job on the bench, as without JOB")
    command.add_argument(
        "--mend", action="store_true", help="set aside what cannot be read and make the job's files private"
    )
    command.set_defaults(run=_check)


def _add_bench_commands(commands: Any, words: Sequence[str]) -> None:
    """The commands over all pens; only the one that is asked for is loaded."""
    for name, (module, text) in COMMANDS.items():
        command = commands.add_parser(name, help=text, description=text, formatter_class=_RAW)
        _add_bench(command, "the bench folder (see: pentools --help)")
        if name in words:
            chosen = importlib.import_module(module)
            chosen.arguments(command)
            command.set_defaults(run=lambda given, chosen=chosen: chosen.run(given, _bench(given), _say))


class _BenchIfNamed(argparse.Action):
    """Takes the bench folder where one stands after the option, and leaves the one named before otherwise."""

    def __call__(self, _: object, given: argparse.Namespace, values: Any, __: str | None = None) -> None:
        if values is not None:
            given.bench = values


def _add_bench(command: argparse.ArgumentParser, text: str) -> None:
    # left out, it does not overwrite the one that stands before the command
    command.add_argument("--bench", metavar="DIR", default=argparse.SUPPRESS, help=text)


def _add_sums(parser: argparse.ArgumentParser, words: Sequence[str]) -> None:
    from pentools.sums import SUMS, find

    _add_bench(parser, "the bench whose facts fill what is not said (see: pentools --help)")
    kinds = parser.add_subparsers(title="sums", metavar="SUM", required=True, parser_class=_Parser)
    listed = "sums" in words and not any(key in words for key in SUMS)
    for key in SUMS:
        if key not in words:  # only the sum that is asked for is loaded, unless all are to be listed
            line = _percent(find(key).summary.partition(". ")[0]) if listed else None
            kinds.add_parser(key, add_help=False, help=line) if line else kinds.add_parser(key, add_help=False)
            continue
        chosen = find(key)
        command = kinds.add_parser(
            key,
            description=_percent(f"{chosen.title}. {chosen.summary}"),
            epilog=_percent(f"example:\n  {chosen.example}") if chosen.example else "",
            formatter_class=_RAW,
        )
        _add_fields(command, chosen)
        command.add_argument("--json", action="store_true", help="print the whole result as JSON")
        command.add_argument(
            "--drawing", metavar="FILE", help="write its drawing, if it has one, to a file: .svg, .html or .pdf"
        )
        _add_bench(command, "the bench whose facts fill what is not said")
        command.set_defaults(run=_sum, sum_key=key)


def _add_fields(command: argparse.ArgumentParser, chosen: Sum) -> None:
    for field in chosen.fields:
        text = "; ".join(part for part in (field.label, field.hint) if part)
        if field.choices:
            text += " [" + ", ".join(value for value, _ in field.choices) + "]"
        if field.default:
            text += f" (default: {field.default})"
        text = _percent(text)
        if field.name == chosen.positional:
            command.add_argument(field.name, metavar=field.name.upper(), help=text)
        elif field.kind == "yes-no":
            command.add_argument(field.option, metavar="yes|no", nargs="?", const="yes", help=text)
        elif field.kind in ("items", "quantities"):
            command.add_argument(field.option, metavar="TEXT", action="append", help=text)
        else:
            command.add_argument(field.option, metavar="TEXT", help=text)


def _percent(text: str) -> str:
    """A text as the parser's help wants it, where a per cent sign begins a placeholder."""
    return text.replace("%", "%%")


def _say(text: str = "") -> None:
    print(text, flush=True)  # noqa: T201 - a command line speaks


def _bench(given: argparse.Namespace) -> Bench:
    """The bench; what cannot be used of its file is said beside the answer."""
    from pentools.record.bench import open_bench_folder

    return _heard(open_bench_folder(given.bench))


def _heard(bench: Bench) -> Bench:
    for problem in bench.problems:
        print(f"pentools: {problem}", file=sys.stderr)  # noqa: T201 - a command line speaks
    return bench


def _new(given: argparse.Namespace) -> int:
    from pentools.record.came_with import start

    job = start(given.bench, given.job, continues=given.continues, came_with=getattr(given, "with"))
    _heard(job.bench)
    _say(f"{job.folder} is ready. Open its notebook with:")
    _say(f"  pentools open {job.name}{_bench_option(given)}")
    return EXIT_OK


def _open(given: argparse.Namespace) -> int:
    from pentools.lab import run_lab
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import open_job
    from pentools.record.layout import LEDGER_NOTEBOOK, lay_bench_notebook

    if given.job is None:
        folder = _heard(open_bench_folder(given.bench, create=True)).folder
        lay_bench_notebook(folder, LEDGER_NOTEBOOK)
        notebook = lay_bench_notebook(folder)
    else:
        notebook = open_job(given.job, bench=_bench(given)).notebook
    return run_lab(notebook, port=given.port, browser=not given.no_browser, say=_say)


def _check(given: argparse.Namespace) -> int:
    from pentools.record.bench import open_bench_folder
    from pentools.record.checking import check

    outcome = check(open_bench_folder(given.bench), given.job, _say, mend=given.mend)
    return EXIT_RECORD if outcome.unread else EXIT_FINDINGS if outcome.grave else EXIT_OK


def _writeup(given: argparse.Namespace) -> int:
    from pentools.record.job import open_job
    from pentools.writeup.forms import page_forms
    from pentools.writeup.write import write_pages

    bench = _bench(given)
    job = open_job(given.job, bench=bench.on_paper(given.paper) if given.paper else bench)
    wanted = [f.key for f in page_forms(given.only) if given.audience in (f.audience, "both")]
    write_pages(job, wanted, progress=_say, anyway=given.anyway, pdf=given.pdf)
    return EXIT_OK


def _merge(given: argparse.Namespace) -> int:
    from pentools.record.checking import merged_in_words
    from pentools.record.job import open_job

    job = open_job(given.job, bench=_bench(given))
    other = Path(given.other)
    report = job.record.merge(other if other.is_absolute() or other.exists() else job.folder / other)
    for line in merged_in_words(report):
        _say(line)
    return EXIT_FINDINGS if report.aside else EXIT_OK


def _starter(given: argparse.Namespace) -> int:
    from pentools.record.bench import open_bench_folder
    from pentools.starter import lay_starter

    bench = _heard(open_bench_folder(given.bench, create=True))
    place = lay_starter(bench, Path(given.folder) if given.folder else None)
    _say(f"Laid {place}. Double-click it to open the bench; it stops when its window is closed.")
    return EXIT_OK


def _demo(given: argparse.Namespace) -> int:
    from pentools.demo import lay_year, run_demo

    (lay_year if given.year else run_demo)(given.bench, say=_say, bench_option=_bench_option(given))
    return EXIT_OK


def _sum(given: argparse.Namespace) -> int:
    import json

    from pentools.answers.asking import answer_to
    from pentools.markup import text_columns
    from pentools.sums import find
    from pentools.sums.progress import shown_on

    typed = {f.name: getattr(given, f.name) for f in find(given.sum_key).fields}
    texts = {n: "; ".join(t) if isinstance(t, list) else t for n, t in typed.items() if t is not None}
    with shown_on(sys.stderr):
        answer = answer_to(given.sum_key, texts, given.bench)
    if given.drawing is not None:
        _write_drawing(answer, given.drawing)
    if given.json:
        _say(json.dumps(answer.data, ensure_ascii=False, indent=2, allow_nan=False))
        return EXIT_OK
    _say(answer.sentence)
    for line in (*answer.findings, *text_columns(answer.table)):
        _say(f"  {line}")
    return EXIT_OK


def _write_drawing(answer: Answer, path: str) -> None:
    from pentools.errors import InputError
    from pentools.writeup.one_drawing import write_drawing

    drawing = answer.figure()
    if drawing is None:
        raise InputError("drawing", "asked of an answer that draws something", path)
    write_drawing(drawing, path)


def _bench_option(given: argparse.Namespace) -> str:
    if not given.bench:
        return ""
    from shlex import quote
    from subprocess import list2cmdline

    return f" --bench {list2cmdline([given.bench]) if sys.platform == 'win32' else quote(given.bench)}"


if __name__ == "__main__":
    sys.exit(main())
