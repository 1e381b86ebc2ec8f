"""A job: one pen's folder on the bench, with its notebook, its record, its pictures and its pages."""

from __future__ import annotations

import shutil
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pentools.errors import InputError, RecordError
from pentools.fields import Value
from pentools.record.bench import Bench, check_job_name, open_bench_folder
from pentools.record.entries import RELEASE, WITHDRAWAL, Entry, new_entry
from pentools.record.forms import F, Logged
from pentools.record.kinds import Kind, Stage
from pentools.record.registry import find_stage
from pentools.record.storage import Record
from pentools.record.view import View

__all__ = ["Job", "create_job", "job_folder", "job_in", "open_job", "shipped_folder"]

RECORD_NAME = "record.jsonl"


@dataclass(frozen=True, slots=True)
class Job:
    """One pen's job.

    Parameters
    ----------
    name : str
        The job's name, also its folder's and its notebook's.
    folder : Path
        Where it lies.
    bench : Bench
        The bench it belongs to.
    record : Record
        Its record.
    """

    name: str
    folder: Path
    bench: Bench
    record: Record
    view: View = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "view", View(self.record))

    @property
    def notebook(self) -> Path:
        """The job's notebook."""
        return self.folder / f"{self.name}.ipynb"

    def add(
        self, stage: str, kind: str, texts: Mapping[str, str], *, note: str = "", replaces: str | None = None
    ) -> Entry:
        """Read typed texts and append them as one entry.

        Parameters
        ----------
        stage, kind : str
            Where it belongs.
        texts : mapping of str to str
            Field name to typed text.
        note : str
            A remark.
        replaces : str or None
            The id of the entry that this corrects.

        Returns
        -------
        Entry
            The entry on disk.

        Raises
        ------
        InputError
            If a text cannot be used; nothing is written then.
        """
        which = find_stage(stage).kind(kind)
        for name in texts:
            which.field(name)
        values, errors = self.read(which, texts)
        if errors:
            raise next(iter(errors.values()))
        return self.save(stage, which, values, note=note, replaces=replaces)

    def read(self, kind: Kind[Any], texts: Mapping[str, str]) -> tuple[dict[str, Value], dict[str, InputError]]:
        """Read a whole form as `Kind.read` does; an amount without a currency is in the bench's own."""
        own = self.bench.text("money", "currency").upper()
        return kind.read(texts, own, self.bench.text("bench", "decimal_sign"))

    def save(
        self, stage: str, kind: Kind[Any], values: Mapping[str, Value], *, note: str = "", replaces: str | None = None
    ) -> Entry:
        """Append values that were read already."""
        return self.record.append(new_entry(stage, kind.key, kind.to_json(values), note=note, replaces=replaces))

    def withdraw(self, entry: Entry, reason: str) -> Entry:
        """Take an entry back; it stays in the file, and the reason with it.

        Parameters
        ----------
        entry : Entry
            What to take back.
        reason : str
            Why; it must not be empty.

        Returns
        -------
        Entry
            The line that withdraws it.

        Raises
        ------
        InputError
            If no reason is given.
        """
        if not reason.strip():
            raise InputError("reason", "given", reason, "Say in a few words why the entry is taken back.")
        return self.record.append(new_entry(entry.stage, WITHDRAWAL, {"reason": reason.strip()}, replaces=entry.id))

    def release(self, stage: str, hold: str, reason: str) -> Entry:
        """Release a hold point with a reason, which stays in the record.

        Parameters
        ----------
        stage : str
            The stage that is held.
        hold : str
            The hold point's key.
        reason : str
            Why the step may go on all the same; it must not be empty.

        Returns
        -------
        Entry
            The release on disk.

        Raises
        ------
        InputError
            If no reason is given.
        """
        if len(reason.split()) < 2:
            raise InputError(
                "reason", "given in a few words", reason, "The reason stays in the record and on the client's page."
            )
        return self.record.append(new_entry(stage, RELEASE, {"hold": hold, "reason": reason.strip()}))

    def log(self, kind: Kind[F]) -> tuple[Logged[F], ...]:
        """Every live entry of a kind with what it holds; one that cannot be read is passed over (`review` names it).

        Returns
        -------
        tuple of Logged
            In the order first entered; a correction stands in the place of what it corrects.
        """
        return self.view.log(kind)

    def newest(self, kind: Kind[F]) -> F:
        """What counts for a kind of which the newest stands for all; all None where there is none."""
        found = self.log(kind)
        return found[-1].values if found else kind.form()

    def stage(self, key: str) -> Stage:
        """The stage of that name."""
        return find_stage(key)


def job_folder(bench: Bench, name: str) -> Path:
    """Where a job of that name lies; never outside the bench folder, not even by a link."""
    folder = bench.folder / check_job_name(name)
    if folder.exists() and folder.resolve().parent != bench.folder.resolve():
        raise InputError("job name", "the name of a folder on the bench", name, "It is a link that leads elsewhere.")
    return folder


def shipped_folder(name: str) -> Path:
    """A folder that comes with the kit: ``notebooks`` or ``sample_jobs``."""
    package = Path(__file__).resolve().parents[1]
    for candidate in (package / "_shipped" / name, package.parent / name):
        if candidate.is_dir():
            return candidate
    raise RecordError(f"The folder {name} that comes with the kit is missing. Install the kit again.")


def create_job(bench: Bench, name: str, *, sample: str | None = None) -> Job:
    """Lay out a new job on the bench.

    Parameters
    ----------
    name : str
        The new job's name.
    sample : str or None
        A sample job that comes with the kit, copied whole.

    Returns
    -------
    Job
        The job, ready to open.

    Raises
    ------
    InputError
        If the name cannot be used.
    RecordError
        If there is a job of that name already, or the folder cannot be made.
    """
    folder = job_folder(bench, name)
    if folder.exists():
        raise RecordError(f"There is already a job {name} in {bench.folder}. Open it, or choose another name.")
    source = shipped_folder("sample_jobs") / check_job_name(sample) if sample else None
    if source is not None and not source.is_dir():
        raise RecordError(f"No sample job {sample} comes with the kit.")
    try:
        if source is not None:
            shutil.copytree(source, folder, ignore=shutil.ignore_patterns("writeup", ".*"))
            if sample != name:
                (folder / f"{sample}.ipynb").rename(folder / f"{name}.ipynb")
        else:
            folder.mkdir(parents=True)
            shutil.copyfile(shipped_folder("notebooks") / "pen_job.ipynb", folder / f"{name}.ipynb")
        for part in ("photos", "scans", "writeup"):
            (folder / part).mkdir(exist_ok=True)
    except OSError as error:
        raise RecordError(f"The job cannot be laid out in {folder} ({error.strerror}).") from error
    return Job(name, folder, bench, Record.open(folder / RECORD_NAME))


def open_job(name: str, *, bench: Bench | None = None) -> Job:
    """Open a job on the bench.

    Parameters
    ----------
    name : str
        The job's name.
    bench : Bench or None
        The bench; the usual one by default.

    Returns
    -------
    Job
        The job with its record read.

    Raises
    ------
    RecordError
        If there is no such job.
    """
    where = bench or open_bench_folder()
    folder = job_folder(where, name)
    if not folder.is_dir():
        there = sorted(p.parent.name for p in where.folder.glob(f"*/{RECORD_NAME}"))
        known = f" There are: {', '.join(there)}." if there else " The bench is empty: pentools new starts a job."
        raise RecordError(f"There is no job {name} in {where.folder}.{known}")
    return Job(name, folder, where, Record.open(folder / RECORD_NAME))


def job_in(folder: Path) -> Job:
    """The job that lies in a folder (a notebook knows the folder it runs in)."""
    folder = Path(folder).resolve()
    return Job(folder.name, folder, open_bench_folder(folder.parent), Record.open(folder / RECORD_NAME))
