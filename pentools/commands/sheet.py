"""``pentools sheet``: the sheet that a nib is tried on."""

from __future__ import annotations

import argparse
from collections.abc import Callable

from pentools.exits import EXIT_OK
from pentools.record.bench import Bench

__all__ = ["arguments", "run"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("file", metavar="FILE", help="a name that ends in .pdf or .svg")
    command.add_argument("--paper", default="A4", help="A4 or Letter (default: A4)")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:  # noqa: ARG001 - as every command
    """Write the sheet and say how to print it."""
    from pentools.figures.nib.sheet import write_sheet

    say(f"{write_sheet(given.file, paper=given.paper)} is written. Print it at 100 %, not fitted to the page.")
    return EXIT_OK
