"""``pentools ledger``: every job on the bench in tables, shown or written for other programs."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import msgspec

from pentools.exits import EXIT_OK
from pentools.record.bench import Bench

if TYPE_CHECKING:
    import pandas as pd

    from pentools.books.tables.ledger import Ledger

__all__ = ["arguments", "run"]

Say = Callable[[str], None]
MOST_SHOWN = 40  # rows
LONGEST_SHOWN = 32  # letters of a cell
_SHORT = ("job", "pen", "system", "ending", "hours", "volume_ml", "share_filled", "released_on")
_AS_NUMBERS = msgspec.json.Encoder(decimal_format="number")


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("--table", metavar="NAME", help="which table (default: jobs; a workbook or Parquet has all)")
    command.add_argument(
        "--with-owners", action="store_true", help="say whose pen each is too (they are left out otherwise)"
    )
    way = command.add_mutually_exclusive_group()
    way.add_argument("--csv", metavar="FILE", help="write the table to FILE.csv; one of that name is replaced")
    way.add_argument("--excel", metavar="FILE", help="write the tables as sheets of FILE.xlsx")
    way.add_argument(
        "--parquet",
        metavar="DIR",
        help="write the tables to a folder (needs the extra: pip install 'pentools[columns]')",
    )
    way.add_argument("--json", action="store_true", help="print the table as JSON")


def run(given: argparse.Namespace, bench: Bench, say: Say) -> int:
    """Show the jobs, or write the tables and say where."""
    from pentools.books.tables.ledger import ledger
    from pentools.books.tables.written import write_csv, write_parquet, write_workbook

    book = ledger(bench.folder, with_owners=given.with_owners)
    table = given.table or "jobs"
    if given.csv:
        replaced = write_csv(book[table], Path(given.csv))
        say(f"{given.csv} is {'written anew' if replaced else 'written'}: {table}, {_count(book[table])}.")
    elif given.excel:
        frames = _chosen(book, given.table)
        replaced = write_workbook(frames, Path(given.excel))
        say(f"{given.excel} is {'written anew' if replaced else 'written'}: {', '.join(frames)}.")
    elif given.parquet:
        for path in write_parquet(_chosen(book, given.table), Path(given.parquet)):
            say(f"{path} is written.")
    elif given.json:
        say(_as_json(book, table))
        return EXIT_OK
    else:
        for line in _shown(book[table][list(_SHORT)] if table == "jobs" else book[table]):
            say(line)
    for name, why in book.unread.items():
        say(f"{name} cannot be read: {why}")
    return EXIT_OK


def _chosen(book: Ledger, table: str | None) -> dict[str, pd.DataFrame]:
    return {name: book[name] for name in ([table] if table else book)}


def _count(frame: pd.DataFrame) -> str:
    return "1 row" if len(frame) == 1 else f"{len(frame)} rows"


def _as_json(book: Ledger, table: str) -> str:
    from pentools.books.tables.written import plain_rows

    told = {"table": table, "rows": list(plain_rows(book[table])), "unread": book.unread}
    return msgspec.json.format(_AS_NUMBERS.encode(told), indent=2).decode()


def _shown(frame: pd.DataFrame) -> Iterator[str]:
    """The first rows as columns of text, those left out that hold nothing."""
    from pentools.books.tables.written import plain_rows
    from pentools.markup import text_columns

    if frame.empty:
        yield "There is nothing in it yet."
        return
    head = frame.head(MOST_SHOWN).dropna(axis="columns", how="all")
    rows = [tuple(_cell(value) for value in row.values()) for row in plain_rows(head)]
    yield from text_columns((tuple(str(name) for name in head), *rows))
    if len(frame) > MOST_SHOWN:
        yield f"… and {len(frame) - MOST_SHOWN} more: --csv, --excel, --parquet and --json have all of them."


def _cell(value: Any) -> str:
    from pentools.numbers import plain

    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    text = plain(value, 4) if isinstance(value, float) else " ".join(str(value).split())
    return text if len(text) <= LONGEST_SHOWN else text[: LONGEST_SHOWN - 1] + "…"
