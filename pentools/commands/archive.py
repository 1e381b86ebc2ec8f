"""``pentools archive``: a job as one zip."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable

from pentools.exits import EXIT_OK
from pentools.record.bench import Bench

__all__ = ["arguments", "run"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("job", metavar="JOB", help="the job's name")
    command.add_argument(
        "file", metavar="FILE", nargs="?", default="", help="a name that ends in .zip (default: JOB.zip)"
    )
    command.add_argument("--without-pages", action="store_true", help="leave out writeup/, which can be made again")
    command.add_argument("--json", action="store_true", help="print what went in as JSON")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Put the job into the zip and say what is in it."""
    from pentools.books.exchange.archive import archive_job
    from pentools.record.job import open_job

    job = open_job(given.job, bench=bench)
    done = archive_job(job, given.file or f"{job.name}.zip", pages=not given.without_pages)
    size = sum(line.bytes for line in done.manifest.files)
    if given.json:
        files = [{"path": line.path, "bytes": line.bytes, "sha256": line.sha256} for line in done.manifest.files]
        told = {
            "job": job.name,
            "file": str(done.path),
            "form": done.manifest.form,
            "bytes": size,
            "files": files,
            "left_out": done.left_out,
        }
        say(json.dumps(told, ensure_ascii=False, indent=2))
        return EXIT_OK
    count = len(done.manifest.files)
    say(f"{done.path}: {count} {'file' if count == 1 else 'files'}, {size / 1e6:.1f} MB, each with its checksum.")
    if done.left_out:
        say(f"Left out: {', '.join(done.left_out)}.")
    say("It is the whole job, also what is for the bench alone: for the shelf, or for whoever goes on with the work.")
    return EXIT_OK
