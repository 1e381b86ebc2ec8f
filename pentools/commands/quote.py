"""``pentools quote``: what a job is likely to take and to cost, and how often such ranges held."""

from __future__ import annotations

import argparse
from collections.abc import Callable

import msgspec

from pentools.errors import InputError
from pentools.exits import EXIT_OK
from pentools.record.bench import Bench

__all__ = ["arguments", "run"]

_AS_NUMBERS = msgspec.json.Encoder(decimal_format="number")


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("job", metavar="JOB", nargs="?", help="the job's name, such as 2026-014-green-piston")
    command.add_argument(
        "--held", action="store_true", help="how often the estimates entered so far held, over all jobs"
    )
    command.add_argument("--json", action="store_true", help="print it as JSON; amounts in the bench's own currency")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Say what it is likely to take, and on which jobs that rests."""
    from pentools.books.learning.held import held_on
    from pentools.books.learning.quote import quote

    if given.held == (given.job is not None):
        raise InputError(
            "quote",
            "asked for one job, or with --held for all",
            given.job or "nothing",
            "Such as: pentools quote 2026-014-green-piston",
        )
    told = held_on(bench) if given.held else quote(given.job, bench)
    if given.json:
        say(msgspec.json.format(_AS_NUMBERS.encode(told.as_json()), indent=2).decode())
        return EXIT_OK
    for line in told.lines:
        say(line)
    return EXIT_OK
