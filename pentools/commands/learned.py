"""``pentools learned``: what a bench's own jobs teach."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable
from typing import TYPE_CHECKING

from pentools.exits import EXIT_OK
from pentools.record.bench import Bench

if TYPE_CHECKING:
    from pentools.answers.books import BenchAnswer

__all__ = ["add_forms", "arguments", "run", "tell"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("--year", type=int, help="only from jobs that ended in it (default: all)")
    add_forms(command)


def add_forms(command: argparse.ArgumentParser) -> None:
    """The forms in which it is told: as JSON, or as a page with charts."""
    forms = command.add_mutually_exclusive_group()
    forms.add_argument("--json", action="store_true", help="print it as JSON: each figure with n and interval")
    forms.add_argument("--page", metavar="FILE", help="write it as a page with charts: a name that ends in .html")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Say it, chapter by chapter."""
    from pentools.answers.books import BenchAnswer
    from pentools.books.learning.learning import learned_on

    when = f" in {given.year}" if given.year is not None else ""
    return tell(BenchAnswer(learned_on(bench, given.year)), f"What the bench’s jobs teach{when}", given, say)


def tell(answer: BenchAnswer, title: str, given: argparse.Namespace, say: Callable[[str], None]) -> int:
    """Tell an answer as it was asked for: in lines, as JSON, or as a page."""
    if given.json:
        say(json.dumps(answer.data, ensure_ascii=False, indent=2, allow_nan=False))
    elif given.page is not None:
        from pentools.answers.books import HEADINGS
        from pentools.writeup.bench_page import bench_page, write_bench_page

        text = bench_page(title, answer.told.lines[0], answer.figures(), answer.tables(), HEADINGS)
        say(f"{write_bench_page(given.page, text)} is written.")
    else:
        for line in answer.told.lines:
            say(line)
    return EXIT_OK
