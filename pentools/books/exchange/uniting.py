"""Two benches brought together: which job here is which job there, told by the ids of their entries, and what is taken over."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pentools.books.asked import ask_bench
from pentools.books.exchange.archive import files_of
from pentools.books.exchange.unarchive import laid_out
from pentools.books.exchange.uniting_job import Taken, take_over
from pentools.books.money.register import INVOICES, REGISTER
from pentools.errors import InputError, PentoolsError, RecordError
from pentools.record.appending import PRIVATE_FILE, what_failed
from pentools.record.bench import MOST_LETTERS, Bench, check_job_name, open_bench_folder
from pentools.record.drawer import DRAWER
from pentools.record.job import job_folder, jobs_on, open_job
from pentools.record.layout import RECORD_NAME
from pentools.record.lines import read_lines
from pentools.record.looking import bytes_of, stamp_of

__all__ = ["BenchFact", "Came", "United", "ids_on", "unite_benches"]


@dataclass(frozen=True, slots=True)
class Came:
    """What came of one job of the other bench.

    Parameters
    ----------
    theirs, here : str
        Its name there, and the job it went into here; the latter is empty where it could not be taken.
    did : str
        ``copied`` (it was only there), ``merged`` (both have it), ``the same`` (nothing new), or ``left`` (it could not be
        taken).
    taken : Taken or None
        Of a merged job, what was taken over.
    why : str
        Why it was left, or why it has another name here, as a sentence.
    """

    theirs: str
    here: str
    did: str
    taken: Taken | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class BenchFact:
    """A fact of ``bench.toml`` that differs: its place, and what each bench says."""

    place: str
    here: Any
    there: Any


@dataclass(frozen=True, slots=True)
class United:
    """What came of uniting two benches.

    Parameters
    ----------
    jobs : tuple of Came
        Every job of the other bench.
    facts : tuple of BenchFact
        Where the benches' own facts differ; nothing of them is changed. Of ``stock.csv`` and the register of invoices it is
        said that they differ.
    numbers : tuple of (str, tuple of str)
        Numbers of invoices that stand in several jobs here and are not the same invoice, each with the jobs.
    """

    jobs: tuple[Came, ...]
    facts: tuple[BenchFact, ...]
    numbers: tuple[tuple[str, tuple[str, ...]], ...] = ()


def unite_benches(bench: Bench, other: str | os.PathLike[str], *, write: bool = True) -> United:
    """Take over the jobs of another bench.

    Parameters
    ----------
    other : path
        The other bench's folder; it is only read.
    write : bool
        False to say what would be done, and do nothing.

    Returns
    -------
    United
        What came of each job. Doing it once more changes nothing.

    Raises
    ------
    InputError
        If it is this very bench, or one lies within the other.
    RecordError
        If there is no bench. A job that cannot be read or written is left and named, and stops nothing.

    Notes
    -----
    A job there is the job here that shares entries with it, whatever both are called. One of the same name that shares none
    is another pen: it is laid beside under a name of its own.
    """
    there = open_bench_folder(other)
    _refuse_same(bench, there)
    names = jobs_on(there)
    if not names:
        raise RecordError(f"There is no job in {there.folder}. Name the folder in which the jobs lie.")
    known = ids_on(bench)
    came = tuple(_take(bench, there, name, known, write) for name in names)
    facts = (*_facts(bench.facts, there.facts), *_tables(bench.folder, there.folder))
    return United(came, facts, tuple(_doubled(bench)) if write else ())


def ids_on(bench: Bench) -> dict[str, set[str]]:
    """The id of every entry on a bench, and the jobs it stands in; a record that cannot be read has none."""
    found: dict[str, set[str]] = {}
    for name in jobs_on(bench) if bench.folder.is_dir() else ():
        for id_ in _ids_in(bench.folder / name / RECORD_NAME):
            found.setdefault(id_, set()).add(name)
    return found


def _ids_in(path: Path) -> set[str]:
    try:
        return {line.id for _, line in read_lines(path.read_bytes()) if line.id}
    except OSError:
        return set()


def _refuse_same(bench: Bench, there: Bench) -> None:
    one, two = bench.folder.resolve(), there.folder.resolve()
    if not two.is_dir():
        raise RecordError(f"There is no folder {two}. Name the folder in which the other bench's jobs lie.")
    if one == two or one.is_relative_to(two) or two.is_relative_to(one):
        raise InputError("the other bench", "another folder, and neither within the other", str(two))


def _take(bench: Bench, there: Bench, name: str, known: Mapping[str, set[str]], write: bool) -> Came:
    """One job of the other bench; whatever is wrong with it stops nothing."""
    try:
        theirs = job_folder(there, name)
        if stamp_of(theirs / RECORD_NAME) is not None:
            bytes_of(theirs / RECORD_NAME)  # one that cannot be read is no job of none
        ids = _ids_in(theirs / RECORD_NAME)
        here, why = _counterpart(bench, name, ids, known)
        if here:
            taken = take_over(open_job(here, bench=bench), theirs, was=name, write=write)
            return Came(name, here, "merged" if taken.anything else "the same", taken, why)
        free = _free_name(bench, name)
        if free != name:
            why = f"Another pen’s job is called {name} here, so it was laid beside as {free}; where another job names it, as one that came back does, it still says {name}."
        if write:
            _copy(theirs, job_folder(bench, free), was=name)
        return Came(name, free, "copied", None, why)
    except PentoolsError as error:
        return Came(name, "", "left", None, str(error))
    except OSError as error:
        return Came(name, "", "left", None, f"It could not be read or written ({what_failed(error)}).")


def _counterpart(bench: Bench, name: str, ids: set[str], known: Mapping[str, set[str]]) -> tuple[str, str]:
    """The job here that is the other's job, and what to say of it; empty where there is none."""
    shared: dict[str, int] = {}
    for id_ in ids:
        for job in known.get(id_, ()):
            shared[job] = shared.get(job, 0) + 1
    if len(shared) > 1 and name not in shared:
        raise RecordError(
            f"Its entries stand in several jobs here ({', '.join(sorted(shared))}). Merge it by hand: pentools merge JOB FILE."
        )
    if shared:
        here = name if name in shared else next(iter(shared))
        return here, "" if here == name else f"Here it is called {here}."
    if (bench.folder / name).exists() and (not ids or not _ids_in(bench.folder / name / RECORD_NAME)):
        return name, ""  # on one side nothing was entered yet, so the name alone tells
    return "", ""


def _free_name(bench: Bench, name: str) -> str:
    check_job_name(name)
    for number in range(1, 1000):
        tail = f"-{number}" if number > 1 else ""
        candidate = name[: MOST_LETTERS - len(tail)].rstrip("-._") + tail
        if not (bench.folder / candidate).exists():
            return candidate
    raise RecordError("There are too many jobs of that name here.")


def _copy(source: Path, folder: Path, *, was: str) -> None:
    """A job's folder copied whole, without pages, hidden files and links, and laid in one step."""
    names, _ = files_of(source, pages=False)
    work = Path(tempfile.mkdtemp(prefix=".new-job-", dir=folder.parent))
    try:
        for name in names:
            path = work / name
            path.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(source / name, path)
            path.chmod(PRIVATE_FILE)
        laid_out(work, folder, was=was)
    finally:
        shutil.rmtree(work, ignore_errors=True)


def _facts(here: Mapping[str, Any], there: Mapping[str, Any], place: str = "") -> Iterator[BenchFact]:
    for key in sorted({*here, *there}):
        mine, other = here.get(key), there.get(key)
        if isinstance(mine, Mapping) and isinstance(other, Mapping):
            yield from _facts(mine, other, f"{place}{key}.")
        elif mine != other:
            yield BenchFact(f"{place}{key}", mine, other)


def _tables(here: Path, there: Path) -> Iterator[BenchFact]:
    """Of the tables beside the jobs, those that are there and not the same here."""
    for name in (DRAWER, REGISTER):
        mine, other = ((folder / name).read_bytes() if (folder / name).is_file() else b"" for folder in (here, there))
        if other and mine != other:
            yield BenchFact(name, f"{len(mine.splitlines())} lines", f"{len(other.splitlines())} lines")


def _doubled(bench: Bench) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Numbers that both benches gave: they stand in several jobs, with another day or sum."""
    found: dict[str, dict[str, tuple[str, str]]] = {}
    for job, given in ask_bench(bench, INVOICES).answers.items():
        for one in given.invoices:
            found.setdefault(one.number, {})[job] = (one.given_on, one.total)
    for number, jobs in sorted(found.items()):
        if len(set(jobs.values())) > 1:
            yield number, tuple(sorted(jobs))
