"""``pentools review``: a year at the bench."""

from __future__ import annotations

import argparse
from collections.abc import Callable

from pentools.commands.learned import add_forms, tell
from pentools.record.bench import Bench

__all__ = ["arguments", "run"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("year", metavar="YEAR", type=int, help="such as 2026")
    add_forms(command)


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Say what came in, how it ended, and what its jobs teach."""
    from pentools.answers.books import BenchAnswer
    from pentools.books.learning.year import year_on

    return tell(BenchAnswer(year_on(given.year, bench)), f"The year {given.year} at the bench", given, say)
