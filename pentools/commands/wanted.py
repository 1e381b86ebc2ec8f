"""``pentools wanted``: the parts that jobs wait for and that would take the place of makeshifts, over all pens."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable

from pentools.books.queue.wanted import wanted_in_words, wanted_on
from pentools.exits import EXIT_OK
from pentools.record.bench import Bench

__all__ = ["arguments", "run"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("--json", action="store_true", help="print the rows as JSON")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Say what is wanted, a line a part."""
    if given.json:
        say(json.dumps({"parts": wanted_on(bench)}, ensure_ascii=False, indent=2))
        return EXIT_OK
    for line in wanted_in_words(bench):
        say(line)
    return EXIT_OK
