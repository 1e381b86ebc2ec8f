"""The numbers of a bench's invoices: one sequence, without gaps or doubles, whoever asks for the next."""

from __future__ import annotations

import contextlib
import csv
import io
import logging
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
from filelock import FileLock, Timeout

from pentools.books.asked import Question, ask_bench
from pentools.books.cells import defused
from pentools.errors import RecordError
from pentools.record.appending import PRIVATE_FILE, append_block, what_failed
from pentools.record.stages.job.money_kinds import INVOICE

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.job import Job

__all__ = ["INVOICES", "REGISTER", "NumberGiven", "heal", "numbers_given", "sequence_held"]

REGISTER = "invoices.csv"
LOCK_SECONDS = 30.0
_HEAD = ("place", "number", "date", "job", "total")
_log = logging.getLogger(__name__)


class NumberGiven(msgspec.Struct, frozen=True):
    """A number that was given: its place in the sequence, as it is written, its day, its job, and what it came to."""

    place: int
    number: str
    given_on: str
    job: str
    total: str


class _Given(msgspec.Struct, frozen=True):
    invoices: tuple[NumberGiven, ...]


def _given(job: Job) -> _Given:
    """Every number that was ever given in a job: what was withdrawn or corrected since has used it all the same."""
    found = []
    for entry in job.record.entries:
        if (entry.stage, entry.kind) == (INVOICE.stage, INVOICE.key):
            place, texts = entry.data.get("place"), [entry.data.get(name) for name in ("number", "given_on", "total")]
            if isinstance(place, int) and not isinstance(place, bool):
                number, day, total = ("" if text is None else str(text) for text in texts)
                found.append(NumberGiven(place, number, day, job.name, total))
    return _Given(tuple(found))


INVOICES = Question("invoices", _Given, _given)


@contextlib.contextmanager
def sequence_held(bench: Bench) -> Iterator[None]:
    """Keep every other program from giving a number meanwhile.

    Raises
    ------
    RecordError
        If another program holds the sequence for long, or the bench cannot be written to.
    """
    lock = FileLock(bench.folder / ".invoices.lock", timeout=LOCK_SECONDS, mode=PRIVATE_FILE)
    try:
        lock.acquire()
    except Timeout as error:
        raise RecordError(
            f"Another program has been giving an invoice its number for {LOCK_SECONDS:.0f} s. Try again; no number was used."
        ) from error
    except OSError as error:
        raise RecordError(f"{bench.folder} cannot be written to ({what_failed(error)}). No number was used.") from error
    try:
        yield
    finally:
        lock.release()


def numbers_given(bench: Bench) -> tuple[NumberGiven, ...]:
    """Every number that was given, in the order of the sequence: those in the records, and those in the register.

    The register knows of jobs that were moved away, the records of one that could not be written into the register.
    """
    found = {one.place: one for one in _listed(bench.folder / REGISTER)}
    for given in ask_bench(bench, INVOICES).answers.values():
        found |= {one.place: one for one in given.invoices}
    return tuple(found[place] for place in sorted(found))


def heal(bench: Bench, given: tuple[NumberGiven, ...]) -> None:
    """Write numbers into the register that it lacks; one that cannot be written stands in the records and is written next time."""
    path = bench.folder / REGISTER
    known = {one.place for one in _listed(path)}
    fresh = [one for one in given if one.place not in known]
    if not fresh:
        return
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    if not path.exists():
        writer.writerow(_HEAD)
    writer.writerows((one.place, defused(one.number), one.given_on, one.job, one.total) for one in fresh)
    try:
        append_block(path, text.getvalue().encode(), fresh=not path.exists())
    except OSError as error:
        _log.warning("the register of invoices was not written: %s", error)


def _listed(path: Path) -> list[NumberGiven]:
    """The lines of the register that can be read; the others are passed by."""
    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError):
        return []
    found = []
    for row in csv.reader(io.StringIO(text.replace("\0", ""))):
        if len(row) == len(_HEAD) and row[0].isascii() and row[0].isdigit() and len(row[0]) < 8:
            found.append(NumberGiven(int(row[0]), row[1].removeprefix("'"), *row[2:]))
    return found
