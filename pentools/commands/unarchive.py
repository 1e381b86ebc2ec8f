"""``pentools unarchive``: an archived job opened again."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable

from pentools.exits import EXIT_FINDINGS, EXIT_OK
from pentools.record.bench import Bench

__all__ = ["arguments", "run"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("file", metavar="FILE", help="the zip that pentools archive made")
    ways = command.add_mutually_exclusive_group()
    ways.add_argument("--as", dest="name", metavar="NAME", default="", help="lay it under another name")
    ways.add_argument(
        "--merge", action="store_true", help="take its entries and pictures over into the job of that name that is here"
    )
    command.add_argument("--json", action="store_true", help="print what was done as JSON")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Lay the job on the bench, or take it over into the one that is here."""
    from pentools.books.exchange.unarchive import merge_archive, unarchive_job
    from pentools.commands.unite import taken_in_words, taken_json
    from pentools.record.bench import open_bench_folder

    bench = open_bench_folder(bench.folder, create=True)
    if given.merge:
        job, taken = merge_archive(bench, given.file)
        if given.json:
            say(json.dumps({"job": job, "did": "merged", **taken_json(taken)}, ensure_ascii=False, indent=2))
        else:
            say(f"{job}: {taken_in_words(taken)}")
        return EXIT_FINDINGS if taken.aside else EXIT_OK
    opened = unarchive_job(bench, given.file, name=given.name)
    if given.json:
        told = {
            "job": opened.folder.name,
            "folder": str(opened.folder),
            "did": "laid" if opened.laid else "the same",
            "files": len(opened.manifest.files),
        }
        say(json.dumps(told, ensure_ascii=False, indent=2))
        return EXIT_OK
    if not opened.laid:
        say(f"{opened.folder.name} is here already, with the same content to the byte. Nothing was done.")
        return EXIT_OK
    say(f"{opened.folder} is laid: {len(opened.manifest.files)} files, each as its checksum says. Open it with:")
    say(f"  pentools open {opened.folder.name}")
    return EXIT_OK
