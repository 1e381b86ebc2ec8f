"""``pentools queue``: every pen on the bench, what it waits for, what is next and by when."""

from __future__ import annotations

import argparse
import datetime as dt
import json
from collections.abc import Callable

from pentools.days import read_day
from pentools.exits import EXIT_OK
from pentools.record.bench import Bench

__all__ = ["arguments", "run"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("--on", metavar="DATE", default="", help="as of that day (default: now)")
    command.add_argument("--why", action="store_true", help="say why each hold point stands")
    command.add_argument("--json", action="store_true", help="print every job as JSON, those that ended too")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Say where every pen stands, what can be worked on first."""
    from pentools.books.queue.queue import queue_on
    from pentools.books.queue.words import as_json, in_lines

    order = bench.text("bench", "date_order")
    on = dt.date.fromisoformat(read_day(given.on, "--on", order=order)) if given.on else dt.datetime.now().astimezone()
    today = on.date() if isinstance(on, dt.datetime) else on
    lines = queue_on(bench, on)
    if given.json:
        shown = {"on": today.isoformat(), "jobs": [as_json(line) for line in lines]}
        say(json.dumps(shown, ensure_ascii=False, indent=2))
        return EXIT_OK
    for text in in_lines(lines, today, why=given.why):
        say(text)
    return EXIT_OK
