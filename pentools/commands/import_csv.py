"""``pentools import``: a table of old jobs taken over."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from pentools.exits import EXIT_FINDINGS, EXIT_OK
from pentools.record.bench import Bench

if TYPE_CHECKING:
    from pentools.books.exchange.importing import Imported

__all__ = ["arguments", "run"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("file", metavar="FILE.csv", help="comma-separated values; the first line names the columns")
    command.add_argument(
        "--mapping",
        metavar="FILE.toml",
        required=True,
        help="which column goes into which field (docs/bench.md shows one)",
    )
    command.add_argument(
        "--write", action="store_true", help="lay the jobs on the bench; without it they are only looked at"
    )
    command.add_argument("--json", action="store_true", help="print the report as JSON")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Take the table over, or look what would be taken, and say it row by row."""
    from pentools.books.exchange.importing import import_table
    from pentools.record.bench import open_bench_folder

    bench = open_bench_folder(bench.folder, create=True) if given.write else bench
    done = import_table(bench, given.file, given.mapping, write=given.write)
    if given.json:
        say(json.dumps(_json(done), ensure_ascii=False, indent=2))
    else:
        for line in _in_words(done):
            say(line)
    return EXIT_FINDINGS if done.faults else EXIT_OK


def _in_words(done: Imported) -> list[str]:
    lines = [
        f"Row {one.row}: {one.job}, {one.entries} {'entry' if one.entries == 1 else 'entries'}." for one in done.taken
    ]
    lines += [f"Row {row}: it is here already, in {job}." for row, job in done.there]
    lines += [f"Row {f.row}{f', {f.column}' if f.column else ''}: refused. {f.why}" for f in done.faults]
    if done.unused:
        columns = ", ".join(f"{name} ({count} filled)" for name, count in done.unused.items())
        lines.append(f"Columns that go nowhere: {columns}.")
    jobs, refused = len({one.job for one in done.taken}), len({f.row for f in done.faults})
    lines.append(
        f"{len(done.taken)} rows {'taken' if done.wrote else 'can be taken'}, {jobs} {'job' if jobs == 1 else 'jobs'}; "
        f"{len(done.there)} here already; {refused} refused."
    )
    if not done.wrote:
        lines.append("Nothing was written. To lay them on the bench, say it once more with --write.")
    return lines


def _json(done: Imported) -> dict[str, Any]:
    return {
        "wrote": done.wrote,
        "taken": [{"row": one.row, "job": one.job, "entries": one.entries} for one in done.taken],
        "there": [{"row": row, "job": job} for row, job in done.there],
        "refused": [{"row": fault.row, "column": fault.column, "why": fault.why} for fault in done.faults],
        "unused": dict(done.unused),
    }
