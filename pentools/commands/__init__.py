"""Commands that need no job, each in a module of its own; only the one that is asked for is loaded.

A module has ``arguments(command)``, which says what the command takes, and ``run(given, bench, say)``, which does it and
returns an exit code of `pentools.exits`.
"""

from __future__ import annotations

__all__ = ["COMMANDS"]

COMMANDS: dict[str, tuple[str, str]] = {
    "ledger": (
        "pentools.commands.ledger",
        "show every job in tables, or write them as CSV, a workbook, Parquet or JSON",
    ),
    "learned": (
        "pentools.commands.learned",
        "say what the bench's own jobs teach: time, filling, seals, rates, returns, success",
    ),
    "queue": ("pentools.commands.queue", "list every pen on the bench: what it waits for, what is next and by when"),
    "quote": (
        "pentools.commands.quote",
        "say what a job is likely to take and to cost, from the bench's own like jobs",
    ),
    "archive": ("pentools.commands.archive", "put a job into one zip, each file with its checksum"),
    "invoice": ("pentools.commands.invoice", "give a pen's invoice its number, and write it as a page and as a table"),
    "import": ("pentools.commands.import_csv", "take over a table of old jobs (CSV), each row a job"),
    "review": ("pentools.commands.review", "say how a year at the bench went, with charts as a page"),
    "sheet": ("pentools.commands.sheet", "write the sheet that a nib is tried on, to print at true size"),
    "stock": (
        "pentools.commands.stock",
        "say what is left in the drawer, what to order, what is too old, which pens got a lot, and which tools there are",
    ),
    "unarchive": (
        "pentools.commands.unarchive",
        "open an archived job again, or take it over into the one that is here",
    ),
    "unite": ("pentools.commands.unite", "take over the jobs of another bench: new ones copied, the same ones merged"),
    "find": (
        "pentools.commands.find",
        "find pens by words, system, material, part and sizes: what was fitted, what failed",
    ),
    "wanted": (
        "pentools.commands.wanted",
        "list the parts that jobs wait for, and that would replace what only holds for now, over every pen",
    ),
}
"""Name of a command -> its module, and what it does in one line."""
